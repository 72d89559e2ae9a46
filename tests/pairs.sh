#!/bin/sh
# sh tests/pairs.sh PROGRAM: pairs of submittal and readings in tests/pairs, in which nothing is wrong, then with each fault of their
# list. From the root of the sources.
program=$1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
passed=0 failed=0

say() { # what, got, right: one of several, between semicolons
    if printf '%s\n' "$3" | tr ';' '\n' | sed 's/^ *//; s/ *$//' | grep -qxF -- "$2"; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "pairs: $1: $2, right is $3"
    fi
}

# The gravest comment; the first one.
review() {
    "$program" review "$work/project.yaml" "$work/submittal.yaml" --format json >"$work/out" 2>"$work/err"
    [ -s "$work/out" ] || { head -3 "$work/err"; return; }
    word=$(awk -F'"' '$2 == "consequence" { print $4; exit }' "$work/out")
    "$program" review "$work/project.yaml" "$work/submittal.yaml" >"$work/page" 2>/dev/null
    case $word in
    fails | "not shown") grep -q " passes, as claimed" "$work/page" && word="$word under a headline that passes" ;;
    esac
    echo "${word:-no comment}"
}

# item: the worst verdict of its readings; no item: of all.
inspect() {
    "$program" inspect "$work/project.yaml" "$work/readings.csv" --format json >"$work/out" 2>"$work/err"
    awk -F'"' -v item="$1" '$2 == "item" { here = !item || $4 == item }
        $2 == "verdict" && here && $4 != "within" { worst = $4 }
        $2 == "verdict" && here { any = 1 }
        END { print !any ? "no reading" : worst ? worst : "within" }' "$work/out"
}

# file: FROM becomes TO at its first place in a line with LINE
change() {
    awk 'BEGIN { from = ENVIRON["FROM"]; to = ENVIRON["TO"]; line = ENVIRON["LINE"] }
        !done && (line == "" || index($0, line)) && (at = index($0, from)) {
            $0 = substr($0, 1, at - 1) to substr($0, at + length(from)); done = 1
        }
        { print }
        END { if (!done) print "pairs: not there: " from > "/dev/stderr" }' "$1" >"$work/changed" && mv "$work/changed" "$1"
}

fault() { # what, from, to, right
    cp "$pair"/* "$work" && cp "$pair/system.yaml" "$work/offer.yaml"
    FROM=$2 TO=$(printf '%b' "$3") LINE=
    export FROM TO LINE
    case $1 in
    reading)
        grep -v ",$2," "$pair/readings.csv" >"$work/readings.csv"
        row=$(grep ",$2," "$pair/readings.csv" || grep ",field_water," "$pair/readings.csv")
        echo "$row" | awk -F, -v OFS=, -v item="$2" -v value="$3" '{ $8 = item; $9 = value; print }' >>"$work/readings.csv"
        say "$1 $2 $3" "$(inspect "$2")" "$4"
        return ;;
    report\ *)
        LINE="{id: ${1#report },"
        if [ "$2" = gone ]; then
            grep -vF "$LINE" "$pair/submittal.yaml" >"$work/submittal.yaml"
        else
            change "$work/submittal.yaml"
        fi ;;
    *) change "$work/$1.yaml" ;;
    esac
    say "$1 $2 -> $3" "$(review)" "$4"
}

for pair in tests/pairs/*; do
    cp "$pair"/* "$work" && cp "$pair/system.yaml" "$work/offer.yaml"
    say "$pair, the submittal" "$(review)" "no comment"
    say "$pair, the readings" "$(inspect)" within
    grep -v '^#' "$pair/faults" >"$work/list"
    while IFS= read -r line; do
        what=${line%% | *} rest=${line#* | }
        from=${rest%% |*} rest=${rest#*| }
        to=${rest%%| *} right=${rest#*| }
        fault "$what" "$from" "${to% }" "$right"
    done <"$work/list"
done
echo "pairs: $passed passed, $failed failed"
[ "$failed" = 0 ]
