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

for test in "$@"; do
    case $test in
    *reference_test) run "$test" quiet "$test" ;;
    *) run "$test" "$test" ;;
    esac
done
for suite in golden bad; do
    [ -f "tests/$suite.sh" ] && run "tests/$suite.sh" sh "tests/$suite.sh" "$build/galeward"
done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
