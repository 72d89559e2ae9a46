/* What every fuzz target shares. A target includes this last of all and defines the entry that libFuzzer calls.
 *
 * make fuzz        FUZZ_SECONDS of libFuzzer for each target, from its corpus tests/fuzz/NAME (clang)
 * FUZZ_REPLAY      a plain main that feeds the files named on the command line, for any compiler */
#ifndef GALEWARD_TESTS_FUZZ_H
#define GALEWARD_TESTS_FUZZ_H

#include "galeward/answers.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { FUZZ_LARGEST = 4096 };

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static inline const struct gw_source *fuzz_source(struct gw_arena *arena, const uint8_t *data, size_t size)
{
    return gw_source_from(arena, "fuzz", gw_strndup(arena, (const char *)data, size), size);
}

/* Printing is fuzzed with the rest. */
static inline void fuzz_print(const struct gw_diags *diags)
{
    struct gw_text text;
    gw_text_init(&text, diags->arena);
    for (size_t i = 0; i < diags->n; i++) gw_diag_print(&text, &diags->items[i]);
}

static inline void fuzz_require(bool holds, const char *what)
{
    if (holds) return;
    fprintf(stderr, "fuzz: not so: %s\n", what);
    abort();
}

/* Every element on the building has finite pressures, an area and a count. */
static inline void fuzz_check_takeoff(const struct gw_takeoff *takeoff)
{
    for (size_t i = 0; i < takeoff->elements.n; i++) {
        const struct gw_element *e = &takeoff->elements.items[i];
        if (e->outside) continue;
        fuzz_require(isfinite(e->inward.pa) && isfinite(e->outward.pa), "pressures are numbers");
        fuzz_require(e->effective_area > 0 && e->count > 0, "elements have area and count");
    }
}

#ifdef FUZZ_REPLAY
static int replay(const char *path)
{
    static uint8_t data[FUZZ_LARGEST + 1];
    FILE *file = fopen(path, "rb");
    if (!file) return 1;
    size_t n = fread(data, 1, sizeof data, file);
    if (fclose(file) || n == 0 || n > FUZZ_LARGEST) return 1;
    return LLVMFuzzerTestOneInput(data, n);
}

int main(int argc, char **argv)
{
    int failed = 0;
    for (int i = 1; i < argc; i++) {
        int wrong = replay(argv[i]) != 0;
        if (wrong) printf("not replayed: %s\n", argv[i]);
        failed += wrong;
    }
    printf("fuzz corpus: %d files replayed, %d failed\n", argc - 1 - failed, failed);
    return failed || argc < 2;
}
#endif

#endif
