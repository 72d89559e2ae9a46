#!/bin/sh
# sh tests/fem/beam.sh BUILD: odd beams by an independent finite-element program, as tests/reference/beam-fem.yaml. From the
# repository root.
build=$1
work=$build/fem
if ! command -v ccx >/dev/null; then
    echo "fem: ccx is not installed; Debian: apt-get install --no-install-recommends calculix-ccx" >&2
    exit 1
fi
mkdir -p "$work"
version=$(ccx -v | sed -n 's/.*[Vv]ersion *//p')
{
    cat <<'END'
# Written by 'make fem-beams': beams by CalculiX, a general-purpose finite-element program that shares nothing with the one
# tested here: B32 elements, each of them a solid. Tolerances: tests/fem/beam.c.
cases:
END
    for name in spliced overhang; do
        "$build/tests/fem_beam" write $name >"$work/beam-$name.inp" || exit 1
        (cd "$work" && ccx "beam-$name") >"$work/beam-$name.log" 2>&1 || exit 1
        "$build/tests/fem_beam" read $name "$work/beam-$name.dat" "$version" || exit 1
    done
} >"$work/beam-fem.yaml" || { echo "fem: see $work/beam-*.log" >&2; exit 1; }
mv "$work/beam-fem.yaml" tests/reference/beam-fem.yaml
echo "fem: tests/reference/beam-fem.yaml written; run 'make docs' for the verification record"
