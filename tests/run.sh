#!/bin/sh
# sh tests/run.sh BUILD test-binaries...: every unit test, then the golden files and the bad-input suite where they exist.
# Run from the repository root. Ends with "N passed, M failed"; exit 1 when anything failed.
build=$1
shift
passed=0
failed=0

run() {
    name=$1
    shift
    echo "== $name"
    if "$@"; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "== $name FAILED"
    fi
}

# The reference cases print a line a value; the failing ones and the sums are enough here.
quiet() {
    log=$build/tests/$(basename "$1").log
    "$1" >"$log" 2>&1
    status=$?
    grep -v ' PASS$' "$log"
    return "$status"
}

# A locale with a decimal comma, made here where the system has the means; without it the test says that it skips.
comma=$(pwd)/$build/locale
case $build in /*) comma=$build/locale ;; esac
if [ ! -d "$comma/de_DE.UTF-8" ] && command -v localedef >/dev/null; then
    mkdir -p "$comma"
    localedef -i de_DE -f UTF-8 "$comma/de_DE.UTF-8" >/dev/null 2>&1
fi

for test in "$@"; do
    case $test in
    *reference_test) run "$test" quiet "$test" ;;
    *base_test | *drawing_test)
        [ -d "$comma/de_DE.UTF-8" ] && set_locale="LOCPATH=$comma"
        run "$test" env ${set_locale:+"$set_locale"} "$test"
        ;;
    *) run "$test" "$test" ;;
    esac
done
run fuzz-corpus "$build/tests/fuzz_replay" tests/fuzz/corpus/*
for suite in golden bad docs; do
    [ -f "tests/$suite.sh" ] && run "tests/$suite.sh" sh "tests/$suite.sh" "$build/galeward"
done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
