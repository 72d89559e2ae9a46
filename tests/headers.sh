#!/bin/sh
# sh tests/headers.sh PROGRAM: every external name of the archive begins with gw_; every public header stands alone, in C
# and in C++, and gives its functions C names there.
build=$(dirname "$1")
failed=0
names=$(nm -g --defined-only "$build/libgaleward.a" | awk 'NF == 3 { print $3 }')
[ "$(echo "$names" | wc -l)" -gt 100 ] || { echo "headers: nm shows no names"; failed=1; }
# Coverage and sanitizers add names of their own, all with two leading underscores.
foreign=$(echo "$names" | grep -vE '^(gw_|__)')
[ -z "$foreign" ] || { echo "headers: external names without gw_:" $foreign; failed=1; }

compiles() { # header, command...
    header=$1
    shift
    echo "#include \"galeward/$header\"" | "$@" -Iinclude -Wall -Wextra -Wpedantic -Werror -fsyntax-only - ||
        { echo "headers: $header does not stand alone: $*"; failed=1; }
}
n=0
for path in include/galeward/*.h; do
    header=${path#include/galeward/}
    # shellcheck disable=SC2086
    compiles "$header" ${CC:-cc} -std=c11 -x c
    # shellcheck disable=SC2086
    compiles "$header" ${CXX:-c++} -std=c++11 -x c++
    grep -q '^extern "C" {' "$path" || { echo "headers: $header lacks extern \"C\""; failed=1; }
    n=$((n + 1))
done
[ $failed = 0 ] && echo "headers: $n stand alone in C and C++; every external name begins with gw_"
exit $failed
