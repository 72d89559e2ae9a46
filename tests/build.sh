#!/bin/sh
# The Makefile rebuilds what a change asks for and nothing else: in a small tree with this Makefile, the real generator
# and a program of two files that prints one cell of a table.
here=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
unset MAKEFLAGS MFLAGS MAKELEVEL B CFLAGS EXTRA
cd "$here" || exit 1
failed=0

mkdir -p "$work/src/one" "$work/src/cli" "$work/tests/unit" "$work/tables"
cp -R Makefile include "$work"
for file in $(sed -n 's/^GEN_SRC = //p' Makefile); do
    mkdir -p "$work/$(dirname "$file")"
    cp "$file" "$work/$file"
    header=${file%.c}.h
    if [ -f "$header" ]; then cp "$header" "$work/$header"; fi
done
cp tables/units.yaml "$work/tables"
cd "$work" || exit 1
cat >tables/size.yaml <<'END'
tables:
  - table: size
    title: Sizes
    source: invented
    basis: practice
    columns:
      - {name: width, type: number}
    rows:
      - {id: door, width: 3}
END
cat >src/one/one.h <<'END'
#define ONE_TIMES 1
double gw_one(void);
END
cat >src/one/one.c <<'END'
#include "one/one.h"
#include "tables_data.h"
double gw_one(void)
{
    return ONE_TIMES * gw_tables_data.size[0].width;
}
END
echo 'int gw_spare(void); int gw_spare(void) { return 0; }' >src/one/spare.c
cat >src/cli/main.c <<'END'
#include "one/one.h"
#include <stdio.h>
int main(void)
{
    printf("%d\n", (int)gw_one());
    return 0;
}
END
echo '#define WANTED 3' >tests/unit/support.h
cat >tests/unit/one_test.c <<'END'
#include "one/one.h"
#include "support.h"
int main(void)
{
    return (int)gw_one() != WANTED;
}
END

sorted() { tr ' ' '\n' | sort | xargs; }
# What was compiled, linked, archived or generated, in one line. File times have the clock's steps: wait for the next.
build() {
    sleep 0.02
    "${MAKE:-make}" -j2 CFLAGS=-O0 all build/tests/one_test >log 2>&1
    status=$?
    made=$(sed -n 's/^  [a-z]* //p' log | sorted)
    [ $status = 0 ] || { cat log; echo "build: $1: make failed"; failed=1; }
}
expect() { # what was changed, what is made again, what the program prints
    build "$1"
    wanted=$(echo "$2" | sorted)
    [ "$made" = "$wanted" ] || { echo "build: $1: made '$made', wanted '$wanted'"; failed=1; }
    printed=$(build/galeward)
    [ "$printed" = "$3" ] || { echo "build: $1: the program prints '$printed', wanted '$3'"; failed=1; }
}
members() { ar t build/libgaleward.a | tr '\n' ' '; }
library="build/libgaleward.a build/galeward build/tests/one_test"

build "the first build"
expect "nothing" "" 3
sed -i.old 's/width: 3/width: 4/' tables/size.yaml
expect "a cell of a table" "build/gen build/gen/tables_data.c $library" 4
sed -i.old 's/{name: width, type: number}/&\n      - {name: height, type: number}/; s/width: 4/&, height: 7/' tables/size.yaml
expect "a column of a table" "build/gen build/gen/tables_data.c src/one/one.c $library" 4
sed -i.old 's/TIMES 1/TIMES 2/' src/one/one.h
expect "a header of the library" "src/cli/main.c src/one/one.c $library" 8
sed -i.old 's/WANTED 3/WANTED 8/' tests/unit/support.h
expect "a header of the tests" "build/tests/one_test" 8
build/tests/one_test || { echo "build: the test was not made again"; failed=1; }
touch include/galeward/arena.h
build "a header of the generator"
case $made in *build/tablegen*src/tablegen/tablegen.c*) ;; *) echo "build: a header of the generator: made '$made'"; failed=1 ;; esac
case $(members) in *spare.o*) ;; *) echo "build: spare.o is not in the archive"; failed=1 ;; esac
rm src/one/spare.c
expect "a deleted source" "$library" 8
case $(members) in *spare.o*) echo "build: spare.o is still in the archive"; failed=1 ;; esac
printf '#!/bin/sh\necho half >"$2"\nexit 1\n' >ar && chmod +x ar && touch src/one/one.c
"${MAKE:-make}" CFLAGS=-O0 AR=./ar all >log 2>&1 && { echo "build: ar failed, make did not"; failed=1; }
[ ! -e build/libgaleward.a ] || { echo "build: half an archive is left"; failed=1; }
rm tables/size.yaml
"${MAKE:-make}" CFLAGS=-O0 all >log 2>&1 && { echo "build: a deleted table is still there"; failed=1; }
"${MAKE:-make}" CFLAGS=-O0 all >log 2>&1 && { echo "build: after a failed build, files look made"; failed=1; }
[ $failed = 0 ] && echo "build: cells, columns, headers and deleted sources rebuild what uses them"
exit $failed
