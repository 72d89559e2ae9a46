#!/bin/sh
# sh docs/readme.sh PROGRAM [OUT]: puts the first lines of what the program prints now into the README's blocks of output,
# one block a command, in this order; writes OUT instead of README.md where it is named.
program=$1 out=${2:-README.md}
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
n=0
while read -r arguments; do
    n=$((n + 1))
    # shellcheck disable=SC2086
    "$program" $arguments </dev/null >"$work/$n" 2>&1
done <<'END'
demand projects/tern-street.yaml
check projects/tern-street.yaml
select projects/tern-street.yaml
review projects/tern-street.yaml projects/submittals/tern-street-02.yaml
inspect projects/tern-street.yaml projects/readings/tern-street-plates.csv --system systems/heron.yaml
END
awk -v work="$work" '
    /^```text/ { n++; on = 1; print; next }
    /^```/ { on = 0 }
    on { if ((getline line < (work "/" n)) > 0) print line; next }
    { print }' README.md >"$work/readme" && cat "$work/readme" >"$out"
