#!/bin/sh
# sh tests/units.sh build/galeward: a result in SI says nothing in US units but what others wrote so. Each line below is a
# phrase (an extended regular expression) that stands in some result, and why; one that no result needs is a failure too.
program=$1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
passed=0 failed=0
cat >"$work/allowed" <<'ALLOWED'
lb lumber, 2x4, at [0-9]+ ft/s: [0-9.]+ kg at [0-9.]+ m/s # the standard's name of a missile, with what it is in SI
2 g steel balls at 130 ft/s, three salvos of ten: 0\.002 kg at 39\.62 m/s # the same
13 psf per inch # weight of glass as the building code has it, a source
Table 3, (above|at most) 30 ft # where a row of the standard's table holds, a source
Fcy 35 ksi # names a published example, a source
ALLOWED
sed 's/ # .*//' "$work/allowed" >"$work/phrases"
units='psf|psi|ksi|ft[234]?|in[234]?|mph|lbf?|kip|kips|degF|cfm(/ft2)?|ft/s2?|ft-lb|in-lb|kip-in|lb/in|lb/ft[23]?|psi-ms|lbf-s|per ft2?'
: >"$work/all"

look() { # name, arguments...: an exit code of 1 is a verdict
    name=$1
    shift
    "$program" "$@" --units si --format md >"$work/out" 2>"$work/err"
    if [ $? -gt 1 ] || [ -s "$work/err" ]; then
        echo "units: $name"; cat "$work/err"; failed=$((failed + 1))
        return
    fi
    cat "$work/out" >>"$work/all"
    set --
    while read -r phrase; do set -- "$@" -e "s@$phrase@@g"; done <"$work/phrases"
    sed -E "$@" "$work/out" >"$work/ours" || exit 1
    if grep -nE "(^|[^A-Za-z])[0-9.]+ ?($units)($|[^A-Za-z0-9])|[0-9]'-[0-9]" "$work/ours" >"$work/left"; then
        echo "units: $name says in US units:"; head -20 "$work/left"; failed=$((failed + 1))
    else
        passed=$((passed + 1))
    fi
}

for project in projects/*.yaml; do
    for command in demand check; do look "$command $project" "$command" "$project"; done
    # one element of each kind and wall
    "$program" explain "$project" | sed -n 's|^\(.*/[a-z]*/[0-9]*\)  .*|\1|p' | awk -F/ '!seen[$1 $2]++' >"$work/elements"
    while read -r element; do look "explain $project $element" explain "$project" "$element" --all; done <"$work/elements"
done
while read -r phrase; do
    grep -qE "$phrase" "$work/all" || { echo "units: no result needs: $phrase"; failed=$((failed + 1)); }
done <"$work/phrases"
echo "units: $passed passed, $failed failed"
[ $failed = 0 ]
