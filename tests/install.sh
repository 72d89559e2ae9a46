#!/bin/sh
# sh tests/install.sh PROGRAM: installs into a temporary prefix; a stranger's program builds as C and as C++ by what
# pkg-config says alone, runs, and prints the pressure that the program itself prints; uninstall leaves nothing.
build=$(dirname "$1")
here=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
cd "$here" || exit 1

fail() {
    echo "install: $*"
    exit 1
}

# The library's own flags beyond the standard (a sanitizer, say) must be met by what links it.
compile() { # language, standard, compiler...
    language=$1 standard=$2
    shift 2
    flags=$(PKG_CONFIG_PATH=$work/usr/lib/pkgconfig pkg-config --cflags galeward) || fail "pkg-config does not find it"
    libs=$(PKG_CONFIG_PATH=$work/usr/lib/pkgconfig pkg-config --libs galeward)
    "$@" "-std=$standard" -Wall -Wextra -Wpedantic -Werror ${EXTRA:-} -x "$language" tests/consumer/consumer.c -x none \
        $flags $libs -o "$work/consumer-$language" || fail "the $language program does not build"
    (cd / && "$work/consumer-$language") >"$work/out" 2>&1 || { cat "$work/out"; fail "the $language program fails"; }
    diff -u tests/consumer/expected "$work/out" || fail "the $language program prints something else"
}

make -s B="$build" PREFIX="$work/usr" install >"$work/log" 2>&1 || { cat "$work/log"; fail "make install"; }
# shellcheck disable=SC2086
compile c c11 ${CC:-cc}
# shellcheck disable=SC2086
compile c++ c++11 ${CXX:-c++}
"$work/usr/bin/galeward" --version >/dev/null || fail "the installed program does not run"

make -s B="$build" PREFIX="$work/usr" uninstall >"$work/log" 2>&1 || { cat "$work/log"; fail "make uninstall"; }
left=$(find "$work/usr" ! -type d)
[ -z "$left" ] || fail "left after uninstall: $left"
make -s B="$build" DESTDIR="$work/stage" PREFIX=/opt/galeward install >"$work/log" 2>&1 || { cat "$work/log"; fail "make install into DESTDIR"; }
grep -qx 'prefix=/opt/galeward' "$work/stage/opt/galeward/lib/pkgconfig/galeward.pc" || fail "DESTDIR shows in galeward.pc"
echo "install: C and C++ programs build, run and agree"
