/* Any bytes as a project file: load, take off, judge. Nothing may crash, leak or give a pressure that is not a number.
 * There are no files, so that a schedule or a candidate that is named is not there. */
#include "fuzz.h"

#include "galeward/plan.h"

enum { MOST_LITES = 20000 };

/* A wall of a million columns is slow, not wrong. */
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

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    struct gw_arena arena;
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_answer answer;
    struct gw_plans *plans;
    if (size > FUZZ_LARGEST) return 0;
    gw_arena_init(&arena, NULL);
    gw_diags_init(&diags, &arena);
    bool good = gw_model_load_source(&model, &arena, &diags, fuzz_source(&arena, data, size), NULL, 0);
    if (good && is_small(&model) && gw_takeoff_run(&takeoff, &model, &arena, &diags) &&
        gw_plans_read(&plans, &model, &takeoff, &arena)) {
        fuzz_check_takeoff(&takeoff);
        gw_ask_init(&ask, &model, &takeoff, &arena);
        ask.plans = plans;
        gw_answer_check(&answer, &ask);
    }
    fuzz_print(&diags);
    gw_arena_release(&arena);
    return 0;
}
