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
# The README's blocks of output are the first lines of what the program prints.
sh docs/readme.sh "$program" "$work/README.md"
diff -u README.md "$work/README.md" >"$work/diff" || { echo "README.md is stale: make docs"; head -20 "$work/diff"; failed=1; }
if command -v mandoc >/dev/null; then
    mandoc -Tlint -Werror docs/galeward.1 || failed=1
fi
[ $failed = 0 ] && echo "docs: the generated pages and blocks are current"
exit $failed
