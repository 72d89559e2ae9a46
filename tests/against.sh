#!/bin/sh
# sh tests/against.sh PROGRAM: '--against' of 'check' and 'demand': what differs from a result, and what is no result.
# From the root of the sources.
program=$1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
passed=0 failed=0

# title, exit code, text that the output has, arguments...
try() {
    title=$1 code=$2 text=$3
    shift 3
    "$program" "$@" >"$work/out" 2>&1
    status=$?
    if [ $status = "$code" ] && grep -qF -- "$text" "$work/out"; then
        passed=$((passed + 1))
        return
    fi
    failed=$((failed + 1))
    echo "against: $title: exit code $status, wanted $code and '$text'"
    head -20 "$work/out"
}
# title, text that the output before has not
lacks() {
    if grep -qF -- "$2" "$work/out"; then
        failed=$((failed + 1))
        echo "against: $1: says '$2'"
    else
        passed=$((passed + 1))
    fi
}

cp -r projects "$work/projects"
for project in tern-street gull-point; do
    for command in check demand; do
        for units in us si; do
            file=$work/$project-$command-$units.json
            "$program" $command projects/$project.yaml --units $units -o "$file" 2>"$work/err"
            for now in us si; do
                try "$project $command $units against $now" 0 "Nothing differs" \
                    $command projects/$project.yaml --units $now --against "$file"
            done
        done
    done
done
bid=$work/tern-street-check-us.json
try "the same files elsewhere" 0 "Nothing differs" check "$work/projects/tern-street.yaml" --against "$bid"
try "on standard input" 0 "Nothing differs" check projects/tern-street.yaml --against - <"$bid"
try "the same as JSON" 0 '"changes": []' check projects/tern-street.yaml --against "$bid" --format json

# An addendum: more wind.
sed 's/basic_wind_speed: [0-9]* mph/basic_wind_speed: 145 mph/' projects/tern-street.yaml >"$work/projects/tern-street.yaml"
windy=$work/projects/tern-street.yaml
if cmp -s "$windy" projects/tern-street.yaml; then
    failed=$((failed + 1))
    echo "against: the demo's wind speed was not changed"
fi
try "the file is named" 1 "tern-street.yaml: changed" check "$windy" --against "$bid"
lacks "the systems are the same" "heron-75.yaml: changed"
try "a verdict flips" 1 "Candidates whose verdict changed" check "$windy" --against "$bid"
try "pressures change" 1 "Demands and pressures" demand "$windy" --against "$work/tern-street-demand-si.json"
lacks "no element is new or gone" "New, or gone"
lacks "no verdicts in a demand" "Verdicts"
try "as CSV" 1 "what,where,candidate,check,direction,key,was,is" check "$windy" --against "$bid" --format csv
try "a verdict as CSV" 1 "verdict,pass,fail" check "$windy" --against "$bid" --format csv
try "as JSON" 1 '"key": "sha256"' check "$windy" --against "$bid" --format json
try "a setting" 1 "The same bytes in every file" check projects/tern-street.yaml --set exposure=B --against "$bid"

try "its schema" 0 '"what"' schema changes

# Less than the tolerance is the same, more is not.
number=$(grep -m 1 -o '"inward_pa": [0-9.]*' "$work/gull-point-demand-us.json" | cut -d' ' -f2)
for part in 1.0000000005:0 1.000000002:1; do
    awk -v n="$number" -v by="${part%:*}" 'BEGIN { OFMT = CONVFMT = "%.12g" }
        !done && $0 ~ "\"inward_pa\": " n "," { sub("\"inward_pa\": " n, "\"inward_pa\": " sprintf("%.12g", n * by)); done = 1 } { print }' \
        "$work/gull-point-demand-us.json" >"$work/near.json"
    try "times ${part%:*}" "${part#*:}" "differs" demand projects/gull-point.yaml --against "$work/near.json"
done

# An element more, and the numbers of those after it another: only the new one is told.
cat >"$work/small.yaml" <<'END'
galeward: 1
units: us
project: {name: Small}
codes: {building: ibc-2021, wind: asce7-16}
site: {basic_wind_speed: 115, exposure: C}
buildings: [{name: main, roof_height: 40, least_width: 80, enclosure: enclosed}]
lites: {vision: {layers: [{glass: 6 mm, treatment: tempered}, {cavity: 12 mm}, {glass: 6 mm, treatment: tempered}]}}
walls:
  - {name: a, width: 40, top: 24, ends: [corner, corner], columns: [5, 5, 5, 5, 5, 5, 5, 5], rows: [{height: rest, lite: vision}], floors: [0, 12]}
END
sed 's/^walls:/walls:\n  - {name: b, width: 20, top: 12, ends: [corner, corner], columns: [5, 5, 5, 5], rows: [{height: rest, lite: vision}], floors: [0]}/' \
    "$work/small.yaml" >"$work/larger.yaml"
"$program" demand "$work/small.yaml" -o "$work/small.json" 2>"$work/err" || cat "$work/err"
"$program" demand "$work/larger.yaml" -o "$work/larger.json" 2>"$work/err" || cat "$work/err"
try "a wall more" 1 "b     lite" demand "$work/larger.yaml" --against "$work/small.json"
lacks "nothing else changed" "Demands and pressures"
try "a wall less" 1 "gone" demand "$work/small.yaml" --against "$work/larger.json"
lacks "nothing is new" "  new "
sed 's/columns: \[5, 5,/columns: [4, 6,/' "$work/small.yaml" >"$work/other.yaml"
try "other columns" 1 "New, or gone" demand "$work/other.yaml" --against "$work/small.json"

# Whose version it is.
sed 's/"version": "[^"]*"/"version": "0.0.9"/; s/"corner_distance_m"/"corner"/' "$bid" >"$work/older.json"
try "another version" 0 "warning: written by version 0.0.9" check projects/tern-street.yaml --against "$work/older.json"
sed 's/"galeward": 1/"galeward": 2/' "$bid" >"$work/newer.json"
try "a newer format" 2 "newer version" check projects/tern-street.yaml --against "$work/newer.json"
try "of demand" 2 "a result of 'demand', not of 'check'" check projects/tern-street.yaml --against "$work/tern-street-demand-us.json"
try "of check" 2 "a result of 'check', not of 'demand'" demand projects/tern-street.yaml --against "$bid"
"$program" explain projects/tern-street.yaml east/lite/1 -o "$work/explain.json" 2>/dev/null
try "of explain" 2 "no result of 'check'" check projects/tern-street.yaml --against "$work/explain.json"
"$program" check projects/tern-street.yaml --against "$work/older.json" -o "$work/itself.json" 2>/dev/null
try "of --against" 2 "no result of 'check'" check projects/tern-street.yaml --against "$work/itself.json"

# No result: never a crash, never a line of the file.
wrong() { # title, text; the file is $work/wrong.json
    try "$1" 2 "$2" demand projects/gull-point.yaml --against "$work/wrong.json"
    lacks "$1" "secret"
}
echo 'secret: 1' >"$work/wrong.json"
wrong "YAML" "not valid JSON"
: >"$work/wrong.json"
wrong "empty" "the file is empty"
head -c 20000 "$work/gull-point-demand-us.json" >"$work/wrong.json"
wrong "truncated" "not valid JSON"
awk 'BEGIN { for (i = 0; i < 100000; i++) printf "[" }' >"$work/wrong.json"
wrong "deep" "nested deeper"
echo '{"galeward": 1, "secret": 1, "galeward": 1}' >"$work/wrong.json"
wrong "twice" "'galeward' is given twice"
echo '{"galeward": 1e999, "version": "secret"}' >"$work/wrong.json"
wrong "a huge number" "a number beyond"
echo '{"galeward": 123456789012345678901234567890, "version": "secret"}' >"$work/wrong.json"
wrong "a long number" "newer version"
echo '{"version": "secret"}' >"$work/wrong.json"
wrong "not ours" "no result of this program"
echo '["secret"]' >"$work/wrong.json"
wrong "a list" "no result of this program"
echo '{"galeward": 1, "version": "secret", "inputs": [1], "elements": "secret"}' >"$work/wrong.json"
wrong "no list of elements" "lists no elements"
echo '{"galeward": 1, "version": "0.1.0", "inputs": [1, null], "elements": [3, {"id": 4}, {"id": "x", "zone": "y"}, []], "demands": [{"elements": [1, null], "terms": [5]}]}' >"$work/wrong.json"
try "entries of other kinds" 1 "gone" demand projects/gull-point.yaml --against "$work/wrong.json"
printf '{"galeward": 1, "version": "\377"}' >"$work/wrong.json"
wrong "not UTF-8" "not UTF-8"
try "no file" 2 "cannot read the file" demand projects/gull-point.yaml --against "$work/none.json"
try "with --vary" 2 "not with --vary" check projects/gull-point.yaml --vary exposure=B,C --against "$bid"
try "with --sensitivity" 2 "--sensitivity or --qualifications" check projects/gull-point.yaml --sensitivity --against "$bid"
cp "$bid" "$work/kept.json"
try "over the result" 2 "is read by --against" check projects/tern-street.yaml --against "$work/kept.json" -o "$work/kept.json"
try "both from standard input" 2 "either the project or the result" demand - --against - <projects/gull-point.yaml

echo "against: $passed passed, $failed failed"
[ $failed = 0 ]
