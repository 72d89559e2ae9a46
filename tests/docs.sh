#!/bin/sh
# The generated pages are those that the program makes now, and the man page is well formed.
program=$1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
mkdir "$work/docs"
sh docs/generate.sh "$program" "$work/docs" || exit 1
failed=0
for page in fields.md verification.md; do
    diff -u "docs/$page" "$work/docs/$page" >"$work/diff" || { echo "docs/$page is stale: make docs"; head -20 "$work/diff"; failed=1; }
done
if command -v mandoc >/dev/null; then
    mandoc -Tlint -Werror docs/galeward.1 || failed=1
fi
exit $failed
