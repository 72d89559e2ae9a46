#!/bin/sh
# sh tests/bench/run.sh BUILD: start-up, the demo project, a tower of 50,000 lites, eleven walls of growing height, the choice of options on one to eleven walls, the plate, the calc stream. From the repository root.
build=$1
bench=$build/tests/bench
program=$build/galeward
cases=$(mktemp) || exit 3
walls=$(mktemp -d) || exit 3
trap 'rm -rf "$cases" "$walls"' EXIT
result=0

milliseconds() {
    awk -v t="$1" 'BEGIN { printf "%.2f ms", t * 1000 }'
}

# title, runs, input, command...
timed() {
    title=$1
    shift
    if time=$("$bench" time "$@"); then
        echo "$title: $(milliseconds "$time") (median of $1)"
    else
        echo "$title: FAILED"
        result=1
    fi
}

timed "start-up (--version)" 51 /dev/null "$program" --version
if [ -f projects/tern-street.yaml ]; then
    timed "check of projects/tern-street.yaml" 21 /dev/null "$program" check projects/tern-street.yaml
    timed "demand of projects/tern-street.yaml" 21 /dev/null "$program" demand projects/tern-street.yaml
fi
"$bench" tower || result=1
"$build/tests/bench_walls" "$walls" 10 20 40 || result=1
"$build/tests/bench_walls" "$walls" select 1x40 4x40 11x10 11x20 11x40 || result=1
"$bench" plate || result=1
"$bench" table || result=1

# kind, word for the bench, cases
stream() {
    n=$3
    "$bench" "$2" "$n" >"$cases"
    if time=$("$bench" time 3 "$cases" "$program" calc "$1"); then
        awk -v k="$1" -v t="$time" -v n="$n" 'BEGIN { printf "calc %s: %d cases in %.3f s, %.0f cases a second\n", k, n, t, n / t }'
    else
        echo "calc $1: FAILED"
        result=1
    fi
}
stream wind cases 100000
stream plate plates 100000
stream lite lites 20000
exit "$result"
