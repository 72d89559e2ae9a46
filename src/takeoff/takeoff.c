#include "takeoff_internal.h"

#include <string.h>

const char *const gw_kind_names[GW_KIND_COUNT] = {"lite", "mullion", "transom", "screw", "anchor"};

static void add_grid(struct gw_builder *b, const struct gw_grid *grid)
{
    b->grid = grid;
    b->lines = NULL;
    gw_grid_elements(b);
}

static void add_openings(struct gw_builder *b)
{
    for (size_t i = 0; i < b->model->openings.n && !b->failed; i++) {
        const struct gw_opening *opening = &b->model->openings.items[i];
        struct gw_grid grid;
        if (gw_grid_from_opening(&grid, b, opening)) add_grid(b, &grid);
        if (!gw_given(opening->offset)) b->takeoff->no_offset += opening->count;
        if (!gw_given(opening->sill)) b->takeoff->no_sill += opening->count;
    }
}

bool gw_takeoff_run(struct gw_takeoff *out, const struct gw_model *model, struct gw_arena *arena,
                    struct gw_diags *diags)
{
    struct gw_builder b = {.model = model, .takeoff = out, .arena = arena, .diags = diags};
    size_t errors = diags->errors;
    *out = (struct gw_takeoff){.diags = diags};
    for (size_t i = 0; i < model->project.walls.n && !b.failed; i++) {
        struct gw_grid grid;
        if (gw_grid_from_wall(&grid, &b, &model->project.walls.items[i])) add_grid(&b, &grid);
    }
    add_openings(&b);
    gw_group_finish(&b);
    for (size_t i = 0; i < out->differences.n; i++)
        out->differences.items[i].element = gw_takeoff_find(out, out->differences.items[i].id);
    return diags->errors == errors;
}

const struct gw_element *gw_takeoff_find(const struct gw_takeoff *takeoff, const char *id)
{
    for (size_t i = 0; i < takeoff->elements.n; i++)
        if (strcmp(takeoff->elements.items[i].id, id) == 0) return &takeoff->elements.items[i];
    return NULL;
}
