#!/bin/sh
# The pictures of the demo projects and the page that shows them, into a folder: sh docs/gallery.sh build/galeward docs
# A line of the list: file | what it is | how it was made (what stands after 'galeward').
program=$1
into=$2
mkdir -p "$into/gallery"
page=$into/gallery.md
cat >"$page" <<'END'
# Gallery

Drawings of the demo projects, as `make gallery` writes them. Each is one command; `--drawing list` names all that a result has. The same drawings
stand in the pages that `-o FILE.html` and `-o FILE.pdf` write, to scale on A4 and letter.
END
grep -v '^#' docs/gallery.list | while IFS='|' read -r file title command; do
    file=$(echo $file)
    title=$(echo "$title" | sed 's/^ *//; s/ *$//')
    command=$(echo "$command" | sed 's/^ *//; s/ *$//')
    [ -n "$file" ] || continue
    eval "\"\$program\" $command --format svg" >"$into/gallery/$file.svg" 2>/dev/null
    [ -s "$into/gallery/$file.svg" ] || { echo "gallery: nothing is drawn by: $command" >&2; exit 1; }
    printf '\n## %s\n\n```sh\ngaleward %s -o picture.svg\n```\n\n![%s](gallery/%s.svg)\n' "$title" "$command" "$title" "$file" >>"$page"
done
