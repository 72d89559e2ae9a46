# Commands are shown with V=1; another build folder with B=folder.
# make          library and program in build/
# make demo     set up, build, run the demo project
# make test     set up, build, run every test
# make gallery the pictures of docs/gallery.md
# make asan lint cov bench install uninstall clean docs
# make fuzz     FUZZ_SECONDS (60) of fuzzing for each target (clang)
# make test-browser  the reports in headless Chromium, driven from tests/browser (Debian: chromium nodejs npm poppler-utils)
# make response the table of plate solutions into tables/; a minute
# make fem      plate and beams by a finite-element program (Debian: calculix-ccx) into tests/reference; 12 minutes
# make fem-beams the beams alone; seconds
B ?= build
CC ?= cc
ifeq ($(origin CC),default)
CC = gcc
endif
CXX ?= c++
PREFIX ?= /usr/local
VERSION = 0.1.0
WARN = -Wall -Wextra -Wconversion -Wshadow -Wstrict-prototypes -Wmissing-prototypes -Wpointer-arith -Wundef -Wvla -Werror
CFLAGS ?= -O2 -g
STD = -std=c11 -D_POSIX_C_SOURCE=200809L -ffp-contract=off -DGW_VERSION='"$(VERSION)"'
INC = -Iinclude -Isrc -I$(B)/gen
LIBS = -lyaml -ljansson -lm
ALL = $(STD) $(WARN) $(CFLAGS) $(EXTRA) $(INC)

LIB_SRC = $(filter-out src/tablegen/% src/cli/% src/report/pdf/%,$(wildcard src/*/*.c src/*/*/*.c))
CLI_SRC = $(wildcard src/cli/*.c)
# Objects of their own, which the library does without: they stand before it when the program is linked.
ifeq ($(shell pkg-config --exists pangocairo cairo-pdf 2>/dev/null && echo yes),yes)
PDF_SRC = $(wildcard src/report/pdf/*.c)
PDF_CFLAGS := $(patsubst -I%,-isystem %,$(shell pkg-config --cflags pangocairo cairo-pdf))
PDF_LIBS := $(shell pkg-config --libs pangocairo cairo-pdf)
endif
PDF_OBJ = $(PDF_SRC:%.c=$(B)/%.o)
$(PDF_OBJ): INC += $(PDF_CFLAGS)
GEN_SRC = src/tablegen/tablegen.c src/cli/host.c src/base/arena.c src/base/text.c src/base/safe.c src/base/document.c src/base/yaml.c src/base/units.c src/base/slope.c src/base/spelling.c
LIB_OBJ = $(LIB_SRC:%.c=$(B)/%.o) $(B)/gen/tables_data.o
CLI_OBJ = $(CLI_SRC:%.c=$(B)/%.o)
GEN_OBJ = $(GEN_SRC:%.c=$(B)/%.o)
TABLES = tables/units.yaml $(filter-out tables/units.yaml,$(sort $(wildcard tables/*.yaml)))
TEST_SRC = $(wildcard tests/unit/*_test.c)
TESTS = $(TEST_SRC:tests/unit/%.c=$(B)/tests/%)
FUZZ_SRC = $(wildcard tests/fuzz/fuzz_*.c)
REPLAYS = $(FUZZ_SRC:tests/fuzz/fuzz_%.c=$(B)/tests/replay_%)
PROGRAM = $(CC) $(ALL) -MMD -MP -MF $@.d -MT $@ -o $@

ifeq ($(V),1)
Q =
say = @true
else
Q = @
say = @echo " "
endif

.DEFAULT_GOAL = all
.DELETE_ON_ERROR:
.PHONY: all gallery setup demo test check test-browser asan lint cov fuzz fuzzers tools bench fem fem-beams install uninstall clean docs golden response FORCE
all: $(B)/galeward $(B)/libgaleward.a

# A file that holds a value of this Makefile, rewritten only when the value is another one: what depends on it is made
# again after other flags, and after a source or a table was added or deleted.
quoted = '$(subst ','\'',$(strip $1))'
define kept
ifneq ($$(shell cat $(B)/$1 2>/dev/null),$$(strip $$($2)))
$(B)/$1: FORCE
endif
$(B)/$1:
	@mkdir -p $$(@D); printf '%s\n' $$(call quoted,$$($2)) >$$@
endef
COMPILER = $(CC) $(ALL)
$(eval $(call kept,.flags,COMPILER))
$(eval $(call kept,.tables,TABLES))
$(eval $(call kept,.library,LIB_OBJ))
PARTS = $(CLI_OBJ) $(PDF_OBJ)
$(eval $(call kept,.program,PARTS))

$(B)/tablegen: $(GEN_OBJ)
	$(say) link $@
	$(Q)$(CC) $(ALL) -o $@ $^ -lyaml -lm

# The header changes with the columns, not with every cell: it is replaced only where it is another one.
$(B)/gen/.made: $(B)/tablegen $(TABLES) $(B)/.tables
	@mkdir -p $(B)/gen/new
	$(say) tables $(B)/gen
	$(Q)$(B)/tablegen $(B)/gen/new $(TABLES)
	@for f in tables_data.h tables_data.c; do cmp -s $(B)/gen/new/$$f $(B)/gen/$$f || cp $(B)/gen/new/$$f $(B)/gen/$$f || exit 1; done
	@touch $@
GENERATED = $(B)/gen/tables_data.h $(B)/gen/tables_data.c
$(GENERATED): $(B)/gen/.made
	@:
ifneq ($(words $(wildcard $(GENERATED))),2)
$(B)/gen/.made: FORCE
endif

$(B)/gen/tables_data.o: $(B)/gen/tables_data.c $(B)/.flags
	$(say) compile $<
	$(Q)$(CC) $(ALL) -MMD -MP -c -o $@ $<

# The generator is made before there is a generated header; everything else after it.
$(filter-out $(GEN_OBJ),$(LIB_OBJ) $(CLI_OBJ) $(PDF_OBJ)): | $(B)/gen/tables_data.h
$(B)/%.o: %.c $(B)/.flags
	@mkdir -p $(@D)
	$(say) compile $<
	$(Q)$(CC) $(ALL) -MMD -MP -c -o $@ $<

$(B)/libgaleward.a: $(LIB_OBJ) $(B)/.library
	@rm -f $@
	$(say) archive $@
	$(Q)$(AR) rcs $@ $(LIB_OBJ)

$(B)/galeward: $(CLI_OBJ) $(PDF_OBJ) $(B)/libgaleward.a $(B)/.program
	$(say) link $@
	$(Q)$(CC) $(ALL) -o $@ $(CLI_OBJ) $(PDF_OBJ) $(B)/libgaleward.a $(LIBS) $(PDF_LIBS)

# Tests and the bench read files as the program does.
$(B)/tests/%: tests/unit/%.c $(B)/src/cli/host.o $(B)/libgaleward.a
	@mkdir -p $(@D)
	$(say) build $@
	$(Q)$(PROGRAM) -Itests/unit $< $(B)/src/cli/host.o $(B)/libgaleward.a -lcmocka $(LIBS)

setup:
	@sh .ci/setup

demo: setup
	@$(MAKE) --no-print-directory all
	@sh tests/demo.sh $(B)/galeward

test: setup
	@$(MAKE) --no-print-directory check
check: all $(TESTS) $(REPLAYS)
	@CC='$(CC)' CXX='$(CXX)' EXTRA='$(EXTRA)' sh tests/run.sh $(B) $(TESTS) $(REPLAYS)

test-browser: all
	@sh tests/browser/run.sh $(B)/galeward $(B)

# Rewrites the plate's response table by solving the plate some two thousand times; only after a change of the solver.
response: $(B)/plate_response
	$(say) solve tables/plate_response.yaml
	$(Q)$(B)/plate_response $(B)/plate_response.yaml && mv $(B)/plate_response.yaml tables/plate_response.yaml
$(B)/plate_response: src/tablegen/plate_response.c $(B)/libgaleward.a
	$(say) build $@
	$(Q)$(PROGRAM) $< $(B)/libgaleward.a $(LIBS)
golden: all $(B)/tests/bad_test
	@GW_UPDATE=1 sh tests/golden.sh $(B)/galeward
	@GW_UPDATE=1 $(B)/tests/bad_test >$(B)/tests/bad_test.log 2>&1 || { cat $(B)/tests/bad_test.log; exit 1; }
docs: all $(B)/tests/reference_test
	@sh docs/generate.sh $(B)/galeward
	@sh docs/readme.sh $(B)/galeward

gallery: all
	@sh docs/gallery.sh $(B)/galeward docs

asan:
	$(MAKE) B=$(B)/asan EXTRA='-O1 -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer' check
# clang-tidy is the slow one: a few files a process, JOBS at once.
JOBS ?= 2
lint: all
	clang-format --dry-run -Werror $$(git ls-files '*.c' '*.h')
	printf '%s\n' $(LIB_SRC) $(CLI_SRC) | xargs -P $(JOBS) -n 8 sh -c 'clang-tidy --quiet "$$@" -- $(TIDY) 2>/dev/null' tidy
	cppcheck --quiet -j $(JOBS) --error-exitcode=1 --enable=warning,portability --inline-suppr --suppress=uninitvar --suppress=returnDanglingLifetime --std=c11 $(INC) -DGW_VERSION='"0"' src # both false: 2.10 reads filled buffers and borrowed rows wrongly
TIDY = $(subst '"$(VERSION)"',\"$(VERSION)\",$(STD)) $(INC)
cov:
	$(MAKE) B=$(B)/cov EXTRA='-O0 --coverage' check
	lcov --quiet --capture --directory $(B)/cov --base-directory . --no-external --output-file $(B)/cov/all.info 2>/dev/null
	lcov --quiet --remove $(B)/cov/all.info '*/tests/*' '*/gen/*' '*/tablegen/*' --output-file $(B)/cov/src.info 2>/dev/null
	lcov --summary $(B)/cov/src.info 2>/dev/null
# The whole library is built for the fuzzer, in a folder of its own; what it finds goes there too.
FUZZ_SECONDS ?= 60
FUZZERS = $(FUZZ_SRC:tests/fuzz/fuzz_%.c=$(B)/fuzz_%)
fuzz:
	$(MAKE) B=$(B)/fuzz CC=clang EXTRA='-O1 -fno-omit-frame-pointer -fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all' fuzzers
	@for name in $(FUZZ_SRC:tests/fuzz/fuzz_%.c=%); do mkdir -p $(B)/fuzz/corpus/$$name && \
	    $(B)/fuzz/fuzz_$$name -max_total_time=$(FUZZ_SECONDS) -max_len=4096 -timeout=10 -rss_limit_mb=2048 -print_final_stats=1 \
	    -artifact_prefix=$(B)/fuzz/$$name- $(B)/fuzz/corpus/$$name tests/fuzz/$$name || exit 1; done
fuzzers: $(FUZZERS)
$(B)/fuzz_%: tests/fuzz/fuzz_%.c $(B)/libgaleward.a
	$(say) build $@
	$(Q)$(PROGRAM) -fsanitize=fuzzer $< $(B)/libgaleward.a $(LIBS)
$(B)/tests/replay_%: tests/fuzz/fuzz_%.c $(B)/libgaleward.a
	@mkdir -p $(@D)
	$(say) build $@
	$(Q)$(PROGRAM) -DFUZZ_REPLAY $< $(B)/libgaleward.a $(LIBS)
# What no test builds.
tools: $(B)/tests/bench $(B)/tests/bench_walls $(B)/tests/fem_deck $(B)/tests/fem_beam $(B)/plate_response
bench: all $(B)/tests/bench $(B)/tests/bench_walls
	@sh tests/bench/run.sh $(B)
$(B)/tests/bench: tests/bench/bench.c
$(B)/tests/bench_walls: tests/bench/walls.c
$(B)/tests/bench $(B)/tests/bench_walls: $(B)/src/cli/host.o $(B)/libgaleward.a
	@mkdir -p $(@D)
	$(say) build $@
	$(Q)$(PROGRAM) $(filter %.c,$^) $(filter %.o,$^) $(B)/libgaleward.a $(LIBS)
fem: fem-beams $(B)/tests/fem_deck
	@sh tests/fem/run.sh $(B)
fem-beams: $(B)/tests/fem_beam
	@sh tests/fem/beam.sh $(B)
$(B)/tests/fem_%: tests/fem/%.c $(B)/.flags
	@mkdir -p $(@D)
	$(say) build $@
	$(Q)$(PROGRAM) $< -lm

# The archive is the only form of the library, so 'pkg-config --libs' alone names what it needs.
TO = $(DESTDIR)$(PREFIX)
HEADERS = $(wildcard include/galeward/*.h)
install: all
	install -d $(TO)/bin $(TO)/lib/pkgconfig $(TO)/include/galeward $(TO)/share/man/man1
	install -m 755 $(B)/galeward $(TO)/bin
	install -m 644 $(B)/libgaleward.a $(TO)/lib
	install -m 644 $(HEADERS) $(TO)/include/galeward
	install -m 644 docs/galeward.1 $(TO)/share/man/man1
	printf '%s\n' 'prefix=$(PREFIX)' 'libdir=$${prefix}/lib' 'includedir=$${prefix}/include' '' 'Name: galeward' \
	    'Description: Judges curtain walls by wind, glass, framing, earthquake, debris, blast, water and air' \
	    'Version: $(VERSION)' 'Libs: -L$${libdir} -lgaleward $(LIBS)' 'Cflags: -I$${includedir}' >$(TO)/lib/pkgconfig/galeward.pc
uninstall:
	rm -f $(TO)/bin/galeward $(TO)/lib/libgaleward.a $(TO)/lib/pkgconfig/galeward.pc $(TO)/share/man/man1/galeward.1
	rm -f $(HEADERS:include/%=$(TO)/include/%)
	if test -d $(TO)/include/galeward; then rmdir $(TO)/include/galeward; fi
clean:
	rm -rf $(B)

-include $(patsubst %.o,%.d,$(LIB_OBJ) $(CLI_OBJ) $(PDF_OBJ) $(GEN_OBJ)) $(wildcard $(B)/*.d $(B)/tests/*.d)
