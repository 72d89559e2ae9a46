# Commands are shown with V=1.
# make          library and program in build/
# make demo     set up, build, run the demo project
# make test     set up, build, run every test
# make asan lint cov bench install clean docs
# make response the table of plate solutions into tables/; a minute
# make fem      plate and beams by a finite-element program (Debian: calculix-ccx) into tests/reference; 12 minutes
# make fem-beams the beams alone; seconds
B ?= build
CC ?= cc
ifeq ($(origin CC),default)
CC = gcc
endif
PREFIX ?= /usr/local
VERSION = 0.1.0
WARN = -Wall -Wextra -Wconversion -Wshadow -Wstrict-prototypes -Wmissing-prototypes -Wpointer-arith -Wundef -Wvla -Werror
CFLAGS ?= -O2 -g
STD = -std=c11 -D_POSIX_C_SOURCE=200809L -ffp-contract=off -DGW_VERSION='"$(VERSION)"'
INC = -Iinclude -Isrc -I$(B)/gen
LIBS = -lyaml -lm
ALL = $(STD) $(WARN) $(CFLAGS) $(EXTRA) $(INC)

LIB_SRC = $(filter-out src/tablegen/% src/cli/%,$(wildcard src/*/*.c))
CLI_SRC = $(wildcard src/cli/*.c)
GEN_SRC = src/tablegen/tablegen.c src/cli/host.c src/base/arena.c src/base/text.c src/base/document.c src/base/yaml.c src/base/units.c
LIB_OBJ = $(LIB_SRC:%.c=$(B)/%.o) $(B)/gen/tables_data.o
CLI_OBJ = $(CLI_SRC:%.c=$(B)/%.o)
TABLES = tables/units.yaml $(filter-out tables/units.yaml,$(sort $(wildcard tables/*.yaml)))
TEST_SRC = $(wildcard tests/unit/*_test.c)
TESTS = $(TEST_SRC:tests/unit/%.c=$(B)/tests/%)

ifeq ($(V),1)
Q =
say = @true
else
Q = @
say = @echo " "
endif

.DEFAULT_GOAL = all
.PHONY: all setup demo test check asan lint cov fuzz bench fem fem-beams install uninstall clean docs golden response FORCE
all: $(B)/galeward $(B)/libgaleward.a

$(B)/.flags: FORCE
	@mkdir -p $(B); echo '$(CC) $(ALL)' | cmp -s - $@ || echo '$(CC) $(ALL)' > $@

$(B)/tablegen: $(GEN_SRC) include/galeward/*.h $(B)/.flags
	$(say) build $@
	$(Q)$(CC) $(ALL) -o $@ $(GEN_SRC) -lyaml -lm

$(B)/gen/tables_data.h: $(B)/tablegen $(TABLES)
	@mkdir -p $(B)/gen
	$(say) tables $(B)/gen
	$(Q)$(B)/tablegen $(B)/gen $(TABLES)
$(B)/gen/tables_data.c: $(B)/gen/tables_data.h
	@touch $@

$(B)/gen/tables_data.o: $(B)/gen/tables_data.c
	$(say) compile $<
	$(Q)$(CC) $(ALL) -c -o $@ $<

$(B)/%.o: %.c $(B)/.flags | $(B)/gen/tables_data.h
	@mkdir -p $(@D)
	$(say) compile $<
	$(Q)$(CC) $(ALL) -MMD -MP -c -o $@ $<

$(B)/libgaleward.a: $(LIB_OBJ)
	@rm -f $@
	$(say) archive $@
	$(Q)ar rcs $@ $^

$(B)/galeward: $(CLI_OBJ) $(B)/libgaleward.a
	$(say) link $@
	$(Q)$(CC) $(ALL) -o $@ $(CLI_OBJ) $(B)/libgaleward.a $(LIBS)

$(B)/tests/%: tests/unit/%.c $(B)/src/cli/host.o $(B)/libgaleward.a tests/unit/support.h
	@mkdir -p $(@D)
	$(say) build $@
	$(Q)$(CC) $(ALL) -Itests/unit -o $@ $< $(B)/src/cli/host.o $(B)/libgaleward.a -lcmocka $(LIBS)

setup:
	@sh .ci/setup

demo: setup
	@$(MAKE) --no-print-directory all
	@sh tests/demo.sh $(B)/galeward

test: setup
	@$(MAKE) --no-print-directory check
check: all $(TESTS) $(B)/tests/fuzz_replay
	@sh tests/run.sh $(B) $(TESTS)

# Rewrites the plate's response table by solving the plate some two thousand times; only after a change of the solver.
response: $(B)/libgaleward.a
	$(say) build $(B)/plate_response
	$(Q)$(CC) $(ALL) -o $(B)/plate_response src/tablegen/plate_response.c $(B)/libgaleward.a $(LIBS)
	$(say) solve tables/plate_response.yaml
	$(Q)$(B)/plate_response $(B)/plate_response.yaml && mv $(B)/plate_response.yaml tables/plate_response.yaml
golden: all
	@GW_UPDATE=1 sh tests/golden.sh $(B)/galeward
docs: all $(B)/tests/reference_test
	@sh docs/generate.sh $(B)/galeward
	@sh docs/readme.sh $(B)/galeward

asan:
	$(MAKE) B=build/asan EXTRA='-O1 -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer' check
lint: all
	clang-format --dry-run -Werror $$(git ls-files '*.c' '*.h')
	clang-tidy --quiet $(LIB_SRC) $(CLI_SRC) -- $(STD) $(INC)
	cppcheck --quiet --error-exitcode=1 --enable=warning,portability --inline-suppr --suppress=uninitvar --suppress=returnDanglingLifetime --std=c11 $(INC) -DGW_VERSION='"0"' src # both false: 2.10 reads filled buffers and borrowed rows wrongly
	@for h in include/galeward/*.h; do echo "#include \"$$h\"" | $(CC) $(STD) $(WARN) $(INC) -I. -fsyntax-only -x c - || exit 1; done
cov:
	$(MAKE) B=build/cov EXTRA='-O0 --coverage' check
	lcov --quiet --capture --directory build/cov --base-directory . --no-external --output-file build/cov/all.info 2>/dev/null
	lcov --quiet --remove build/cov/all.info '*/tests/*' '*/gen/*' '*/tablegen/*' --output-file build/cov/src.info 2>/dev/null
	lcov --summary build/cov/src.info 2>/dev/null
FUZZ_SECONDS ?= 60
fuzz: all
	@mkdir -p build/fuzz/corpus
	clang $(STD) -D_GNU_SOURCE -g -O1 -fsanitize=fuzzer,address,undefined -Iinclude -I$(B)/gen -o build/fuzz/project tests/fuzz/fuzz_project.c $(filter-out src/report/%,$(LIB_SRC)) $(B)/gen/tables_data.c $(LIBS)
	build/fuzz/project -max_total_time=$(FUZZ_SECONDS) -max_len=4096 -timeout=10 -rss_limit_mb=2048 -print_final_stats=1 build/fuzz/corpus tests/fuzz/corpus
$(B)/tests/fuzz_replay: tests/fuzz/fuzz_project.c $(B)/libgaleward.a
	@mkdir -p $(@D)
	$(say) build $@
	$(Q)$(CC) $(ALL) -D_GNU_SOURCE -DFUZZ_REPLAY -o $@ $< $(B)/libgaleward.a $(LIBS)
bench: all
	@mkdir -p $(B)/tests
	@$(CC) $(ALL) -o $(B)/tests/bench tests/bench/bench.c $(B)/src/cli/host.o $(B)/libgaleward.a $(LIBS)
	@$(CC) $(ALL) -o $(B)/tests/bench_walls tests/bench/walls.c $(B)/src/cli/host.o $(B)/libgaleward.a $(LIBS)
	@sh tests/bench/run.sh $(B)
fem: fem-beams
	@mkdir -p $(B)/tests
	$(Q)$(CC) $(ALL) -o $(B)/tests/deck tests/fem/deck.c -lm
	@sh tests/fem/run.sh $(B)
fem-beams:
	@mkdir -p $(B)/tests
	$(Q)$(CC) $(ALL) -o $(B)/tests/fem_beam tests/fem/beam.c -lm
	@sh tests/fem/beam.sh $(B)

install: all
	install -d $(DESTDIR)$(PREFIX)/bin $(DESTDIR)$(PREFIX)/lib/pkgconfig $(DESTDIR)$(PREFIX)/include/galeward $(DESTDIR)$(PREFIX)/share/man/man1
	install -m 755 $(B)/galeward $(DESTDIR)$(PREFIX)/bin
	install -m 644 $(B)/libgaleward.a $(DESTDIR)$(PREFIX)/lib
	install -m 644 include/galeward/*.h $(DESTDIR)$(PREFIX)/include/galeward
	install -m 644 docs/galeward.1 $(DESTDIR)$(PREFIX)/share/man/man1
	printf 'prefix=%s\nlibdir=$${prefix}/lib\nincludedir=$${prefix}/include\n\nName: galeward\nDescription: Wind pressures and ratings of curtain walls\nVersion: %s\nLibs: -L$${libdir} -lgaleward\nLibs.private: %s\nCflags: -I$${includedir}\n' '$(PREFIX)' '$(VERSION)' '$(LIBS)' > $(DESTDIR)$(PREFIX)/lib/pkgconfig/galeward.pc
clean:
	rm -rf build

-include $(LIB_OBJ:.o=.d) $(CLI_OBJ:.o=.d)
