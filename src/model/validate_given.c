/* Rows of pressures from the structural drawings against each other: two that say different things of one place would
 * leave the choice to their order. */
#include "model_internal.h"

#include "galeward/wind.h"

#include <string.h>

static bool same_area(const struct gw_given_row *a, const struct gw_given_row *b)
{
    return fabs(a->area - b->area) <= 1e-6 * a->area;
}

/* Where both heights end at once, or neither has an end. */
static bool same_height(const struct gw_given_row *a, const struct gw_given_row *b)
{
    if (gw_given(a->up_to) != gw_given(b->up_to)) return false;
    return !gw_given(a->up_to) || gw_same_length(a->up_to, b->up_to);
}

/* A row without a building speaks of every one. */
static bool same_building(const struct gw_given_row *a, const struct gw_given_row *b)
{
    return !a->building || !b->building || strcmp(a->building, b->building) == 0;
}

static bool one_family(const struct gw_given_row *a, const struct gw_given_row *b)
{
    return a->zone == b->zone && same_building(a, b) && same_height(a, b);
}

static double strength(const struct gw_model *model, enum gw_level level, double pa)
{
    struct gw_engine engine;
    gw_engine_init(&engine, model->tables, NULL);
    return level == GW_LEVEL_ASD ? gw_to_strength((struct gw_asd){pa}, &engine).pa : pa;
}

/* +1: `a` is more than `b`, -1: less. */
static int weighed(const struct gw_model *model, const struct gw_given_row *a, double pa, const struct gw_given_row *b,
                   double pb)
{
    const double hair = 1e-6, one = strength(model, a->level, pa), other = strength(model, b->level, pb);
    return one > other * (1 + hair) ? 1 : one < other * (1 - hair) ? -1 : 0;
}

static void tell_alike(struct gw_model *model, const struct gw_given_row *row, const struct gw_given_row *first)
{
    const bool differ = weighed(model, row, row->inward, first, first->inward) ||
                        weighed(model, row, row->outward, first, first->outward);
    const bool everywhere = !row->building != !first->building;
    const char *where = gw_format(model->arena, "zone %d and %s%s", row->zone, gw_shown(model, GW_AREA, row->area),
                                  everywhere ? " (a row without a building speaks of all)" : "");
    if (differ)
        gw_diag_node(model->diags, GW_ERROR, "duplicate", "given", row->node,
                     "lines %u and %u give different pressures for %s: which one holds? Leave one of them out",
                     first->node->line, row->node->line, where);
    else
        gw_diag_node(model->diags, GW_NOTE, "duplicate", "given", row->node, "lines %u and %u say the same of %s",
                     first->node->line, row->node->line, where);
}

static void warn_rise(struct gw_model *model, const struct gw_given_row *row, const struct gw_given_row *below,
                      bool inward)
{
    const double now = inward ? row->inward : row->outward, before = inward ? below->inward : below->outward;
    const char *key = inward ? "inward" : "outward";
    if (weighed(model, row, now, below, before) <= 0) return;
    gw_diag_node(model->diags, GW_WARNING, "implausible", key, gw_at_key(row->node, key),
                 "zone %d, '%s': %s for %s is more than %s for %s (line %u); pressures fall as areas grow: were two "
                 "cells exchanged?",
                 row->zone, key, gw_shown(model, GW_PRESSURE, now), gw_shown(model, GW_AREA, row->area),
                 gw_shown(model, GW_PRESSURE, before), gw_shown(model, GW_AREA, below->area), below->node->line);
}

static bool whole(const struct gw_given_row *row)
{
    return row->node && row->zone != GW_NO_INTEGER && row->level && gw_given(row->area) && gw_given(row->inward) &&
           gw_given(row->outward);
}

/* The row of the next smaller area. */
static const struct gw_given_row *row_below(const struct gw_given *given, const struct gw_given_row *row)
{
    const struct gw_given_row *below = NULL;
    for (size_t i = 0; i < given->rows.n; i++) {
        const struct gw_given_row *other = &given->rows.items[i];
        if (!whole(other) || !one_family(other, row) || same_area(other, row) || other->area > row->area) continue;
        if (!below || other->area > below->area) below = other;
    }
    return below;
}

void gw_validate_given(struct gw_model *model)
{
    const struct gw_given *given = model->project.given;
    for (size_t i = 0; given && i < given->rows.n; i++) {
        const struct gw_given_row *row = &given->rows.items[i], *below;
        if (row->building) gw_check_building(model, row->node, row->building);
        if (!whole(row)) continue;
        for (size_t k = 0; k < i; k++) {
            const struct gw_given_row *first = &given->rows.items[k];
            if (!whole(first) || !one_family(first, row) || !same_area(first, row)) continue;
            tell_alike(model, row, first);
            break;
        }
        below = row_below(given, row);
        if (!below) continue;
        warn_rise(model, row, below, true);
        warn_rise(model, row, below, false);
    }
}
