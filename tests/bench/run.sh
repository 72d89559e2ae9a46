#!/bin/sh
# sh tests/bench/run.sh BUILD: start-up, the demo project, a tower of 50,000 lites, eleven walls of growing height, the choice of options on one to eleven walls, the plate, the calc stream. From the repository root.
build=$1
bench=$build/tests/bench
program=$build/galeward
cases=$(mktemp) || exit 3
walls=$(mktemp -d) || exit 3
trap 'rm -rf "$cases" "$walls"' EXIT
result=0

milliseconds() {
    awk -v t="$1" 'BEGIN { printf "%.2f ms", t * 1000 }'
}

# title, runs, input, command...
timed() {
    title=$1
    shift
    if time=$("$bench" time "$@"); then
        echo "$title: $(milliseconds "$time") (median of $1)"
    else
        echo "$title: FAILED"
        result=1
    fi
}

# folder: a wall of 60 x 60 bays, 100,000 readings of whole places and as many of stories alone
readings() {
    cp tests/golden/inspect/stint.yaml "$1/stint.yaml"
    awk '/^walls:/ { f = "0 ft"; for (i = 1; i < 60; i++) f = f ", " 13 * i " ft"
            print "walls: [{name: quay, building: court, width: 300 ft, floors: [" f "], top: 780 ft, ends: [corner, none],"
            print "  columns: {count: 60, width: 5 ft}, rows: [{height: 3 ft, lite: spandrel}, {height: rest, lite: vision}]}]"
            skip = 1; next }
        /^[a-z]/ { skip = 0 }
        !skip { sub(/39 ft/, "780 ft"); print }' tests/golden/inspect/stint-court.yaml >"$1/readings.yaml"
    for part in 0 1; do
        awk -v part=$part 'BEGIN {
            n = split("screw_torque screw_spacing glass_bite edge_clearance weep_length squareness", items, " ")
            split("head sill left right", edges, " ")
            print "wall,column,story,row,edge,item,value"
            for (i = 0; i < 100000; i++) {
                k = i * 7919 % 100003; item = items[1 + k % n]
                value = item == "screw_torque" ? 60 + k % 61 " in-lb" : item == "screw_spacing" ? 6 + k % 29 / 4 " in" : \
                    item == "weep_length" ? 1 + k % 9 / 4 " in" : (8 + k % 33) / 64 " in"
                edge = item == "squareness" ? "" : item == "weep_length" ? "sill" : edges[1 + int(k / 7) % 4]
                place = part ? "," 1 + int(k / 11) % 60 ",," : 1 + k % 60 "," 1 + int(k / 60) % 60 "," 1 + int(k / 13) % 2 "," edge
                print "quay," place "," item "," value } }' >"$1/readings-$part.csv"
    done
    timed "inspect of 100,000 readings of whole places" 3 /dev/null "$program" inspect "$1/readings.yaml" "$1/readings-0.csv"
    timed "inspect of 100,000 readings of stories alone" 3 /dev/null "$program" inspect "$1/readings.yaml" "$1/readings-1.csv"
}

timed "start-up (--version)" 51 /dev/null "$program" --version
if [ -f projects/tern-street.yaml ]; then
    timed "check of projects/tern-street.yaml" 21 /dev/null "$program" check projects/tern-street.yaml
    timed "demand of projects/tern-street.yaml" 21 /dev/null "$program" demand projects/tern-street.yaml
fi
"$bench" tower || result=1
"$build/tests/bench_walls" "$walls" 10 20 40 || result=1
"$build/tests/bench_walls" "$walls" select 1x40 4x40 11x10 11x20 11x40 || result=1
readings "$walls"
"$bench" plate || result=1
"$bench" table || result=1

# kind, word for the bench, cases
stream() {
    n=$3
    "$bench" "$2" "$n" >"$cases"
    if time=$("$bench" time 3 "$cases" "$program" calc "$1"); then
        awk -v k="$1" -v t="$time" -v n="$n" 'BEGIN { printf "calc %s: %d cases in %.3f s, %.0f cases a second\n", k, n, t, n / t }'
    else
        echo "calc $1: FAILED"
        result=1
    fi
}
stream wind cases 100000
stream plate plates 100000
stream lite lites 20000
exit "$result"
