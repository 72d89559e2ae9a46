#!/bin/sh
# Wrong files, each with its exact diagnostics and places.
#   NAME.project.yaml  run as: demand NAME.project.yaml
#   NAME.system.yaml   the one candidate of a good project
#   NAME.schedule.csv  the openings of a good project
#   NAME.case.json     run as: calc wind < NAME.case.json
# NAME.expected holds what the program says on standard error (calc: standard output). Exit code: 2 (calc: 1); warnings
# (NAME starts with warn-): 0. GW_UPDATE=1 rewrites the expectations: review the diff like code.
program=$(cd "$(dirname "$1")" && pwd)/$(basename "$1")
cd "$(dirname "$0")/bad" || exit 1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
passed=0 failed=0

judge() { # name, wanted exit code, exit code, output
    if [ -n "${GW_UPDATE:-}" ]; then cp "$4" "$1.expected"; fi
    if [ "$2" != "$3" ]; then
        echo "bad: $1: exit code $3, wanted $2"; failed=$((failed + 1)); cat "$4"
    elif ! diff -u "$1.expected" "$4" >"$work/diff" 2>&1; then
        echo "bad: $1: not the expected diagnostics"; cat "$work/diff"; failed=$((failed + 1))
    else
        passed=$((passed + 1))
    fi
}
wanted() { case $1 in warn-*) echo 0 ;; *) echo 2 ;; esac; }

for f in *.project.yaml; do
    name=${f%.project.yaml}
    "$program" demand "$f" >/dev/null 2>"$work/out"
    judge "$name" "$(wanted "$name")" $? "$work/out"
done
for f in *.system.yaml; do
    name=${f%.system.yaml}
    sed "s/CANDIDATE/$f/" good/candidate.yaml >"./.run.yaml"
    "$program" demand .run.yaml >/dev/null 2>"$work/out"
    status=$?
    rm -f .run.yaml
    judge "$name" "$(wanted "$name")" $status "$work/out"
done
for f in *.schedule.csv; do
    name=${f%.schedule.csv}
    sed "s/SCHEDULE/$f/" good/schedule.yaml >"./.run.yaml"
    "$program" demand .run.yaml >/dev/null 2>"$work/out"
    status=$?
    rm -f .run.yaml
    judge "$name" "$(wanted "$name")" $status "$work/out"
done
for f in *.case.json; do
    name=${f%.case.json}
    "$program" calc wind <"$f" >"$work/out" 2>&1
    judge "$name" 1 $? "$work/out"
done

# What cannot lie in a folder of text files.
special() { # name, file to read, expected line
    "$program" demand "$2" >/dev/null 2>"$work/out"
    status=$?
    if [ $status = 2 ] && grep -qF "$3" "$work/out"; then
        passed=$((passed + 1))
    else
        echo "bad: $1: exit $status"; cat "$work/out"; failed=$((failed + 1))
    fi
}
mkdir "$work/folder"
special directory "$work/folder" "cannot read the file: it is a directory"
special no-such-file "$work/none.yaml" "cannot read the file: No such file or directory"
head -c 17000000 /dev/zero | tr '\0' '#' >"$work/large.yaml"
special too-large "$work/large.yaml" "cannot read the file: larger than 16 MiB"
printf 'galeward: "1\000"\n' >"$work/zero.yaml"
special zero-byte "$work/zero.yaml" "zero.yaml:1:13: error: not valid YAML: control characters are not allowed"
printf '\377\376g\000' >"$work/utf16.yaml"
special utf-16 "$work/utf16.yaml" "the file is UTF-16: save it as UTF-8"
printf 'galeward: 1\nproject: {name: "\303("}\n' >"$work/utf8.yaml"
special not-utf-8 "$work/utf8.yaml" "utf8.yaml:2:18: error: not UTF-8 text"
: >"$work/empty.yaml"
special empty "$work/empty.yaml" "the file is empty"
awk 'BEGIN { for (i = 0; i < 70; i++) printf "["; print "" }' >"$work/deep.yaml"
special deep "$work/deep.yaml" "nested deeper than 64 levels"
if [ "$(id -u)" != 0 ]; then
    : >"$work/locked.yaml"; chmod 000 "$work/locked.yaml"
    special unreadable "$work/locked.yaml" "cannot read the file: Permission denied"
fi
echo "bad: $passed passed, $failed failed"
[ $failed = 0 ]
