#!/bin/sh
# sh docs/readme.sh PROGRAM: puts the first lines of what the program prints now into the README's three blocks of output.
program=$1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
"$program" demand projects/tern-street.yaml >"$work/1"
"$program" check projects/tern-street.yaml >"$work/2"
"$program" select projects/tern-street.yaml >"$work/3"
awk -v work="$work" '
    /^```text/ { n++; on = 1; print; next }
    /^```/ { on = 0 }
    on { if ((getline line < (work "/" n)) > 0) print line; next }
    { print }' README.md >"$work/readme" && cat "$work/readme" >README.md
