#!/bin/sh
# sh tests/files.sh build/galeward: what is read and what is written, and what happens where the system refuses.
program=$(cd "$(dirname "$1")" && pwd)/$(basename "$1")
project=$(pwd)/projects/tern-street.yaml
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
passed=0 failed=0

expect() { # what, wanted exit code, exit code, words that standard error must hold (in ./err), or ""
    if [ "$2" != "$3" ]; then
        echo "files: $1: exit code $3, wanted $2"; cat err; failed=$((failed + 1))
    elif [ -n "$4" ] && ! grep -qF "$4" err; then
        echo "files: $1: not said: $4"; cat err; failed=$((failed + 1))
    elif [ -z "$4" ] && [ -s err ]; then
        echo "files: $1: nothing should be said"; cat err; failed=$((failed + 1))
    else
        passed=$((passed + 1))
    fi
}
holds() { # what, condition that must be true
    if eval "$2"; then passed=$((passed + 1)); else
        echo "files: $1: not so: $2"; ls -la; failed=$((failed + 1))
    fi
}
no_temporary() { holds "$1: no temporary is left" '[ -z "$(find . -name ".galeward-*")" ]'; }

"$program" demand "$project" >whole 2>err || { echo "files: the demo project does not run"; exit 1; }
case='{"edition": "asce7-16", "basic_wind_speed": "115 mph", "exposure": "C", "mean_roof_height": "40 ft", "least_width": "80 ft", "enclosure": "enclosed", "effective_area": "50 ft2", "zone": 5}'
i=0
while [ $i -lt 40 ]; do echo "$case"; i=$((i + 1)); done >cases

# A file is written whole, or its earlier content stays.
mkdir files && cd files && cp ../whole ../cases . || exit 1
echo mine >out.txt.part
"$program" demand "$project" -o out.txt 2>err
expect "a new file" 0 $? ""
holds "a new file" 'cmp -s out.txt whole'
holds "somebody's FILE.part" '[ "$(cat out.txt.part)" = mine ]'
(umask 027; "$program" demand "$project" -o masked.txt) 2>err
holds "a new file's mode" '[ "$(ls -l masked.txt | cut -c1-10)" = -rw-r----- ]'
echo old >kept.txt; chmod 664 kept.txt
(umask 077; "$program" demand "$project" -o kept.txt) 2>err
expect "an old file" 0 $? ""
holds "an old file" 'cmp -s kept.txt whole'
holds "an old file's mode" '[ "$(ls -l kept.txt | cut -c1-10)" = -rw-rw-r-- ]'
mkdir far; echo old >far/target; ln -s far/target link; ln -s far/none dangling
"$program" demand "$project" --format text -o link 2>err
expect "a symbolic link" 0 $? ""
holds "a symbolic link" '[ -h link ] && cmp -s far/target whole'
"$program" demand "$project" --format text -o dangling 2>err
expect "a link to nothing" 0 $? ""
holds "a link to nothing" '[ -h dangling ] && cmp -s far/none whole'
ln -s round round
"$program" demand "$project" --format text -o round 2>err
expect "a link to itself" 3 $? "cannot write 'round'"
"$program" demand "$project" -o none/out.txt 2>err
expect "no such folder" 3 $? "cannot write 'none/out.txt': No such file or directory"
"$program" demand "$project" --format text -o far 2>err
expect "a folder" 3 $? "cannot write 'far': Is a directory"
"$program" calc wind -o out.json <cases 2>err
expect "a stream" 0 $? ""
holds "a stream" '[ "$(wc -l <out.json)" = 40 ]'
no_temporary "written files"

# What is read is not written over, by whatever name.
mkdir own; cp -r "$(dirname "$project")"/systems own; cd own || exit 1
printf 'mark,width,height\nW1,5 ft,6 ft\n' >marks.sheet
sed '/^  - name: plant room/,/^lites:/{/^lites:/!d}' "$project" >own.yaml; echo 'openings: marks.sheet' >>own.yaml
sed -i 's/{name: penthouse.*//; s/^  - *$//' own.yaml
ln own.yaml twin.txt; ln -s marks.sheet bound.txt; cp -r . ../own.before
for output in ./own.yaml twin.txt bound.txt marks.sheet systems/heron.yaml; do
    for call in demand check explain "check --vary exposure=B,C"; do
        set -- $call
        "$program" "$1" own.yaml $2 $3 --format text -o "$output" 2>err >told
        expect "$call -o $output" 2 $? "$output is read by this project: name another file after -o"
    done
done
"$program" demand - --format text -o own.yaml <own.yaml 2>err
expect "standard input is a file" 2 $? "own.yaml is read by this project"
rm -f told err
holds "nothing is written over" 'diff -r . ../own.before >/dev/null'
cd ..; rm -rf own own.before
cp cases own.jsonl
"$program" calc wind -o own.jsonl <own.jsonl 2>err
expect "a stream over itself" 2 $? "own.jsonl is read by this command"
holds "a stream over itself" 'cmp -s cases own.jsonl'

# The disk is full; a limit of sizes.
for arguments in "demand $project --format text" "calc wind"; do
    "$program" $arguments <cases 2>err >/dev/full
    expect "$arguments: full standard output" 3 $? "cannot write to standard output: No space left on device"
    "$program" $arguments -o /dev/full <cases 2>err
    expect "$arguments: full device" 3 $? "cannot write '/dev/full': No space left on device"
    holds "the device is still one" '[ -c /dev/full ]'
    "$program" $arguments <cases 2>err >&-
    expect "$arguments: closed standard output" 3 $? "cannot write to standard output: Bad file descriptor"
    echo old >limited
    (ulimit -f 1; "$program" $arguments -o limited) <cases 2>err
    expect "$arguments: a limit of file sizes" 3 $? "cannot write 'limited': File too large"
    holds "the earlier file" '[ "$(cat limited)" = old ]'
    no_temporary "$arguments"
done
(cat /dev/zero | tr '\0' '\n' | sed "s/.*/$case/" | "$program" calc wind 2>err; echo $? >code) | head -n 1 >/dev/null
expect "a reader that went away" 3 "$(cat code)" ""
mkfifo pipe
timeout 20 cat pipe >through &
reader=$!
"$program" demand "$project" --format text -o pipe 2>err
expect "a named pipe" 0 $? ""
wait $reader
holds "a named pipe" '[ -p pipe ] && cmp -s through whole'

# A signal in the middle of a stream.
echo old >stopped
for signal in TERM HUP; do
    mkfifo feed
    ("$program" calc wind -o stopped <feed 2>/dev/null & echo $! >pid; exec 3>feed; cat cases >&3
        tries=0
        while [ -z "$(find . -name '.galeward-*')" ] && [ $tries -lt 100 ]; do sleep 0.05; tries=$((tries + 1)); done
        find . -name '.galeward-*' >seen
        kill -$signal "$(cat pid)"; wait "$(cat pid)"; echo $? >code) 2>/dev/null
    holds "$signal: there was a temporary" '[ -s seen ]'
    holds "$signal: it ended by the signal" '[ "$(cat code)" -gt 128 ]'
    holds "$signal: the earlier file" '[ "$(cat stopped)" = old ]'
    no_temporary "$signal"
    rm feed
done

# An argument that nothing reads is refused, by every command.
for call in "new project system" "demand $project $project" "check $project $project" "explain $project east/lite/1 x" \
    "calc wind cases.jsonl" "calc --list wind" "tables wind_terrain gust" "schema project system" "--version now" \
    "--help check demand"; do
    "$program" $call >told 2>err
    expect "surplus: $call" 2 $? "galeward: '"
    holds "surplus: $call: nothing is answered" '[ ! -s told ]'
done

# Only files are read, and standard input as '-'.
"$program" demand none.yaml 2>err >/dev/null
expect "no project" 2 $? "none.yaml: error: cannot read the file: No such file or directory"
"$program" demand far 2>err >/dev/null
expect "a folder as project" 2 $? "cannot read the file: it is a directory"
"$program" demand pipe 2>err >/dev/null
expect "a pipe as project" 2 $? "cannot read the file: it is a named pipe"
"$program" demand /dev/zero 2>err >/dev/null
expect "a device as project" 2 $? "cannot read the file: it is a device"
"$program" demand - <far 2>err >/dev/null
expect "a folder as standard input" 3 $? "<stdin>: error: cannot read the file: Is a directory"
"$program" demand - <&- 2>err >/dev/null
expect "closed standard input" 3 $? "<stdin>: error: cannot read the file: Bad file descriptor"
echo old >out.json
"$program" calc wind -o out.json <far 2>err
expect "a stream from a folder" 3 $? "cannot read standard input: Is a directory"
holds "a stream from a folder" '[ "$(cat out.json)" = old ]'
"$program" calc plate -o out.svg <far 2>err
expect "a drawing from a folder" 3 $? "cannot read standard input: Is a directory"
sed 's/^candidates:.*/candidates: [pipe]/' "$project" >piped.yaml
"$program" demand piped.yaml 2>err >/dev/null
expect "a pipe as candidate" 2 $? "'pipe': cannot read the file: it is a named pipe"
if [ "$(id -u)" != 0 ]; then
    : >locked.yaml; chmod 000 locked.yaml
    "$program" demand locked.yaml 2>err >/dev/null
    expect "a project that may not be read" 3 $? "cannot read the file: Permission denied"
    echo old >locked.txt; chmod 444 locked.txt
    "$program" demand "$project" -o locked.txt 2>err
    expect "a file that may not be written" 3 $? "cannot write 'locked.txt': Permission denied"
fi

# Bytes that are no text, in a stream: each at its line and column, and none passed over.
printf '{"id": 1}\n{"edition": "a\000b"}\n{"edition": "\303("}\n---\n\000\n' | "$program" calc wind >told 2>err
expect "a stream of no text" 1 $? ""
holds "a case for each" '[ "$(wc -l <told)" = 4 ]'
holds "a zero byte" 'sed -n 2p told | grep -q "\"line\":2,\"column\":15"'
holds "no UTF-8" 'sed -n 3p told | grep -q "not UTF-8 text[^\"]*\",\"line\":3,\"column\":14"'
holds "a zero byte alone" 'sed -n 4p told | grep -q "\"line\":5,\"column\":1"'
echo "{\"id\": [123456789012345678, true, null, {\"a\": \"1\"}], ${case#?}" | "$program" calc wind 2>err >told
holds "an id to the letter" 'grep -qF "{\"id\":[123456789012345678,true,null,{\"a\":\"1\"}],\"" told'

# Memory runs out: said, and 3. The libraries for PDF need some 25 MB of addresses before it begins. A sanitizer needs more than any limit.
if ! grep -q __asan_init "$program"; then
    short=0
    for limit in 4500 5000 6000 7000 8000 10000 12000 16000 24000 28000 32000 36000 40000 44000; do
        (ulimit -v $limit 2>/dev/null || exit 0; "$program" check "$project") >/dev/null 2>err
        status=$?
        grep -q 'galeward: out of memory' err && short=$((short + 1)) && expect "$limit KiB of memory" 3 $status "out of memory"
        [ $status -lt 128 ] || [ ! -s err ] || expect "$limit KiB of memory" 3 $status "out of memory"
    done
    holds "memory ran out somewhere" '[ $short -gt 0 ]'
fi
echo "files: $passed passed, $failed failed"
[ $failed = 0 ]
