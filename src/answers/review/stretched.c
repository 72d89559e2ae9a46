/* A wall as the drawings have it, where they have it wider or taller than it was taken off. */
#include "stretched.h"

#include <string.h>

static const double *scaled(struct gw_arena *arena, const double *values, size_t n, double foot, double factor)
{
    double *out = gw_alloc(arena, n + 1, sizeof *out);
    for (size_t i = 0; i < n; i++) out[i] = foot + (values[i] - foot) * factor;
    return out;
}

static double lifted(double height, double foot, double factor) { return foot + (height - foot) * factor; }

static void stretch_lines(struct gw_arena *arena, struct gw_wall_lines *l, double up)
{
    const double foot = l->bottom;
    l->anchors = scaled(arena, l->anchors, l->n_anchors, foot, up);
    l->splices = scaled(arena, l->splices, l->n_splices, foot, up);
    l->levels = scaled(arena, l->levels, l->n_levels, foot, up);
    l->floors = scaled(arena, l->floors, l->n_floors, foot, up);
    l->top = lifted(l->top, foot, up);
    l->roof = lifted(l->roof, foot, up);
}

static struct gw_wall_grid *stretched_grid(struct gw_arena *arena, const struct gw_wall_grid *grid, double up)
{
    struct gw_wall_grid *out = gw_alloc(arena, 1, sizeof *out);
    const double foot = grid->lines.bottom;
    *out = *grid;
    stretch_lines(arena, &out->lines, up);
    for (int s = 0; s < GW_SORT_COUNT; s++) {
        struct gw_grid_layer *layer = &out->layers[s];
        struct gw_grid_strip *strips = gw_alloc(arena, layer->n_strips + 1, sizeof *strips);
        for (size_t i = 0; i < layer->n_strips; i++) {
            strips[i] = layer->strips[i];
            strips[i].bottom = lifted(strips[i].bottom, foot, up);
            strips[i].top = lifted(strips[i].top, foot, up);
        }
        layer->strips = strips;
    }
    return out;
}

/* Sizes of what stands up: mullions and anchors; of what lies across: everything. */
static void stretch_element(struct gw_element *e, const struct gw_wall_grid *grid, double up, double across)
{
    const double foot = e->lines->bottom;
    const bool stands = e->kind == GW_MULLION || e->kind == GW_ANCHOR, screws = e->kind == GW_SCREW;
    e->grid = grid;
    e->lines = &grid->lines;
    e->bottom = lifted(e->bottom, foot, up);
    e->top = lifted(e->top, foot, up);
    e->elevation = lifted(e->elevation, foot, up);
    if (stands) {
        e->height *= up;
        e->span *= up;
    }
    if (e->kind == GW_TRANSOM) e->span *= across;
    if (screws) e->edge *= across;
    /* screws of horizontals carry a width that stands up */
    if (!screws || e->sort == GW_SORT_MULLION_SCREW) e->width *= across;
}

/* An opening is as high as its mullions span: what lies across it stands so much further apart. */
static void stretch_up(struct gw_element *e, double up)
{
    if (e->kind == GW_LITE || e->kind == GW_TRANSOM) e->height *= up;
    if (e->kind == GW_SCREW && e->sort != GW_SORT_MULLION_SCREW) e->width *= up;
    e->pane *= up;
    e->above *= up;
    e->below *= up;
}

const struct gw_takeoff *gw_takeoff_stretched(struct gw_arena *arena, const struct gw_takeoff *takeoff,
                                              const char *wall, double up, double across)
{
    struct gw_takeoff *out = gw_alloc(arena, 1, sizeof *out);
    const struct gw_wall_grid **grids = gw_alloc(arena, takeoff->grids.n + 1, sizeof *grids);
    bool any = false;
    *out = *takeoff;
    out->elements.items = gw_alloc(arena, takeoff->elements.n + 1, sizeof *out->elements.items);
    memcpy(out->elements.items, takeoff->elements.items, takeoff->elements.n * sizeof *out->elements.items);
    for (size_t i = 0; i < takeoff->grids.n; i++) {
        const struct gw_wall_grid *own = takeoff->grids.items[i];
        const bool is_it = strcmp(own->wall, wall) == 0;
        grids[i] = is_it ? stretched_grid(arena, own, up) : own;
        any = any || is_it;
        for (size_t k = 0; is_it && k < own->n_elements; k++) {
            struct gw_element *e = &out->elements.items[own->first_element + k];
            stretch_element(e, grids[i], up, across);
            if (own->opening) stretch_up(e, up);
        }
    }
    out->grids.items = grids;
    return any ? out : NULL;
}
