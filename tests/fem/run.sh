#!/bin/sh
# sh tests/fem/run.sh BUILD: the plate by an independent finite-element program, as tests/reference/plate-fem.yaml. From the
# repository root. q* 0.01 is the linear limit, which shows that supports and pressure are what they should be. The two
# thick plates deflect by 0.04 of the short side.
build=$1
work=$build/fem
thickness=0.002
if ! command -v ccx >/dev/null; then
    echo "fem: ccx is not installed; Debian: apt-get install --no-install-recommends calculix-ccx" >&2
    exit 1
fi

cases() {
    for aspect in 1 1.6 3 5; do
        for q_star in 0.01 20 150 800; do
            for mesh in 16 24 32; do echo "$aspect $q_star $thickness $mesh"; done
        done
    done
    echo "1 800 0.0061 16"
    echo "5 800 0.0083 16"
}

# One case, by name of its files: the solver wants them in the folder it runs in.
solve() {
    name=$work/$(echo "$*" | tr ' ' '-')
    "$build/tests/fem_deck" write "$@" >"$name.inp" || return 1
    (cd "$work" && ccx "$(basename "$name")") >"$name.log" 2>&1 || { echo "fem: see $name.log" >&2; return 1; }
    "$build/tests/fem_deck" read "$@" "$name.frd" >"$name.yaml" && echo "fem: a/b $1, q* $2, t/b $3, mesh $4 x $4"
}

if [ "$2" = case ]; then
    shift 2
    solve "$@"
    exit
fi
mkdir -p "$work"
cases | xargs -P "${JOBS:-2}" -L 1 sh "$0" "$build" case || exit 1
{
    cat <<'END'
# Written by 'make fem': the plate by CalculiX, a general-purpose finite-element program that shares nothing with the one
# tested here: S8R shells, large deflection, pressure that follows the surface, edges simply supported and free in plane.
# Three meshes a case: a difference that falls with the mesh is the mesh's. Tolerances: docs/methods.md, tests/fem/deck.c.
cases:
END
    cases | tr ' ' '-' | while read -r name; do cat "$work/$name.yaml"; done
} >tests/reference/plate-fem.yaml
echo "fem: tests/reference/plate-fem.yaml written; run 'make docs' for the verification record"
