/* Any bytes as a project file: load, take off, judge. Nothing may crash, leak or give a pressure that is not a number.
 *
 * make fuzz        60 s of libFuzzer from the corpus (clang)
 * FUZZ_REPLAY      a plain main that feeds the files named on the command line, for any compiler */
#include "galeward/judge.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { LARGEST = 4096, MOST_LITES = 20000 };

/* A wall of a million columns is slow, not wrong; and a file of the fuzzer's choosing must not open others. */
static bool is_small(const struct gw_model *model)
{
    double lites = 0;
    for (size_t i = 0; i < model->project.walls.n; i++) {
        const struct gw_wall *w = &model->project.walls.items[i];
        double rows = 1;
        for (size_t k = 0; k < w->rows.n; k++) rows += (double)w->rows.items[k].rows.n;
        lites += w->width * rows * (double)w->floors.n +
                 (w->columns->count > 0 ? w->columns->count : (double)w->columns->widths.n);
    }
    return lites < MOST_LITES;
}

static void check_numbers(const struct gw_takeoff *takeoff)
{
    for (size_t i = 0; i < takeoff->elements.n; i++) {
        const struct gw_element *e = &takeoff->elements.items[i];
        if (e->outside) continue;
        if (!isfinite(e->inward.pa) || !isfinite(e->outward.pa) || !(e->effective_area > 0) || e->count <= 0) abort();
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    struct gw_arena arena;
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    struct gw_judgement judgement;
    if (size > LARGEST || memmem(data, size, "candidates", 10) || memmem(data, size, "openings", 8)) return 0;
    gw_arena_init(&arena, NULL);
    gw_diags_init(&diags, &arena);
    const struct gw_source *source = gw_source_from(&arena, "fuzz", gw_strndup(&arena, (const char *)data, size), size);
    bool good = gw_model_load_source(&model, &arena, &diags, source, NULL, 0);
    if (good && is_small(&model) && gw_takeoff_run(&takeoff, &model, &arena, &diags)) {
        check_numbers(&takeoff);
        gw_judge(&judgement, &model, &takeoff);
    }
    struct gw_text text;
    gw_text_init(&text, &arena);
    for (size_t i = 0; i < diags.n; i++) gw_diag_print(&text, &diags.items[i]);
    gw_arena_release(&arena);
    return 0;
}

#ifdef FUZZ_REPLAY
static int replay(const char *path)
{
    static uint8_t data[LARGEST + 1];
    FILE *file = fopen(path, "rb");
    if (!file) return 1;
    size_t n = fread(data, 1, sizeof data, file);
    if (fclose(file)) return 1;
    return LLVMFuzzerTestOneInput(data, n);
}

int main(int argc, char **argv)
{
    int failed = 0;
    for (int i = 1; i < argc; i++) failed += replay(argv[i]) != 0;
    printf("fuzz corpus: %d files replayed, %d failed\n", argc - 1, failed);
    return failed != 0;
}
#endif
