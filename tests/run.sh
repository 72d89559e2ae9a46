#!/bin/sh
# sh tests/run.sh BUILD test-programs...: every unit test, each fuzz target over its corpus, then the suites in shell. From the root of the
# sources, where nothing is written. What fails is shown whole; the closing lines of each program, then
# "N passed, M failed", stand at the end. Exit 1 when anything failed.
build=$1
shift
passed=0 failed=0
logs=$build/tests/logs
mkdir -p "$logs"
: >"$logs/summary"

# Read by the sanitizers' runtime alone.
LSAN_OPTIONS="suppressions=$(pwd)/tests/lsan.supp:print_suppressions=0"
export LSAN_OPTIONS

run() { # name, command...
    name=$1
    shift
    if "$@" >"$logs/$name" 2>&1; then
        passed=$((passed + 1))
        echo "  ok     $name"
    else
        failed=$((failed + 1))
        cat "$logs/$name"
        echo "  FAILED $name"
    fi
    { echo "== $name"; grep -E '^\[(==========|  PASSED  |  FAILED  |  SKIPPED )\] [0-9]+ test' "$logs/$name" || tail -1 "$logs/$name"; } >>"$logs/summary"
}

# A locale with a decimal comma, made here where the system has the means; without it the tests say that they skip.
case $build in /*) comma=$build/locale ;; *) comma=$(pwd)/$build/locale ;; esac
if [ ! -d "$comma/de_DE.UTF-8" ] && command -v localedef >/dev/null; then
    mkdir -p "$comma"
    localedef -i de_DE -f UTF-8 "$comma/de_DE.UTF-8" >/dev/null 2>&1
fi
[ -d "$comma/de_DE.UTF-8" ] && locale="LOCPATH=$comma"

for test in "$@"; do
    name=$(basename "$test")
    case $name in
    replay_*) run "$name" "$test" tests/fuzz/"${name#replay_}"/* ;;
    *) run "$name" env ${locale:+"$locale"} "$test" ;;
    esac
done
for suite in golden against pairs units files sheets docs build headers install; do run "$suite" sh "tests/$suite.sh" "$build/galeward"; done
echo "$passed passed, $failed failed" >>"$logs/summary"
cat "$logs/summary"
[ "$failed" -eq 0 ]
