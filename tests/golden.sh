#!/bin/sh
# Exact outputs. Each line of tests/golden/commands: NAME, wanted exit code, arguments. GW_UPDATE=1 rewrites them.
program=$1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
passed=0 failed=0
while read -r name code arguments; do
    case $name in '' | '#'*) continue ;; esac
    eval "\"$program\" $arguments" >"$work/out" 2>&1
    status=$?
    if [ -n "${GW_UPDATE:-}" ]; then cp "$work/out" "tests/golden/$name"; fi
    if [ $status != "$code" ]; then
        echo "golden: $name: exit code $status, wanted $code"; cat "$work/out"; failed=$((failed + 1))
    elif ! diff -u "tests/golden/$name" "$work/out" >"$work/diff" 2>&1; then
        echo "golden: $name differs"; head -40 "$work/diff"; failed=$((failed + 1))
    else
        passed=$((passed + 1))
    fi
done <tests/golden/commands
if command -v xmllint >/dev/null; then
    for drawing in tests/golden/*.svg; do
        if xmllint --noout "$drawing"; then passed=$((passed + 1)); else failed=$((failed + 1)); fi
    done
else
    echo "golden: no xmllint here: the drawings are not parsed"
fi
echo "golden: $passed passed, $failed failed"
[ $failed = 0 ]
