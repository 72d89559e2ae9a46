#!/bin/sh
# The generated pages are those that the program makes now, and the man page is well formed.
program=$1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
mkdir "$work/docs"
sh docs/generate.sh "$program" "$work/docs" || exit 1
sh docs/gallery.sh "$program" "$work/docs" || exit 1
failed=0
for file in "$work"/docs/gallery.md "$work"/docs/gallery/*.svg; do
    cmp -s "$file" "docs/${file#"$work"/docs/}" || { echo "docs/${file#"$work"/docs/} is stale: make gallery"; failed=1; }
done
for file in docs/gallery/*.svg; do
    [ -e "$work/$file" ] || { echo "$file is none of docs/gallery.list"; failed=1; }
done
for page in fields.md verification.md; do
    diff -u "docs/$page" "$work/docs/$page" >"$work/diff" || { echo "docs/$page is stale: make docs"; head -20 "$work/diff"; failed=1; }
done
# The README's three blocks of output are the first lines of what the program prints.
block() { awk -v want="$1" '/^```text/ { n++; on = 1; next } /^```/ { on = 0 } on && n == want' README.md; }
readme() { # block number, command
    block "$1" >"$work/block"
    "$program" "$2" projects/tern-street.yaml 2>&1 | head -n "$(wc -l <"$work/block")" >"$work/now"
    diff "$work/block" "$work/now" || { echo "README.md: the output of '$2' is stale"; failed=1; }
}
readme 1 demand
readme 2 check
readme 3 select
if command -v mandoc >/dev/null; then
    mandoc -Tlint -Werror docs/galeward.1 || failed=1
fi
[ $failed = 0 ] && echo "docs: the generated pages and blocks are current"
exit $failed
