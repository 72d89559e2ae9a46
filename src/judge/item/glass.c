/* Glass between its faces: thickness, face clearance. */
#include "base/tolerance.h"
#include "judge/items.h"
#include "judge/lite_room.h"

#include "tables_data.h"

static bool is_below(const struct gw_item_limit *limit, double value)
{
    return value < limit->at_least * (1 - GW_HAIR);
}

static const char *without_pocket(const struct gw_ask *ask, const struct gw_system *system)
{
    (void)ask;
    return system->system->glazing == GW_SILICONE ? "the glass is bonded all round: it stands in no pocket" : NULL;
}

/* Thickness -------------------------------------------------------------------------------------------------------- */

/* The pocket nearest to the lite's own thickness; a lite whose glass is not known has none. */
static void thickness_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                            const struct gw_system *system)
{
    const struct gw_glazing_pocket *rule = &ask->model->tables->glazing_pocket[0];
    const double *taken = gw_part(system, pocket).items, drawn = gw_lite_thickness(ask, spot->lite);
    double nearest = GW_ABSENT;
    for (size_t i = 0; i < gw_part(system, pocket).n && gw_given(drawn); i++)
        if (!(fabs(taken[i] - drawn) >= fabs(nearest - drawn))) nearest = taken[i];
    const bool own = gw_given(nearest);
    if (!own) nearest = drawn;
    if (!gw_given(nearest)) return;
    gw_used_add(&ask->engine.used, &rule->row);
    out->at_least = nearest - rule->tolerance_m;
    out->at_most = nearest + rule->tolerance_m;
    out->basis = own ? GW_LIMIT_SYSTEM : GW_LIMIT_PRACTICE;
    out->note = GW_SAY(ask->arena, own ? "the system's pocket for {}, and what its gaskets take up" : "{} as drawn",
                       gw_of_quantity(GW_THICKNESS, nearest));
}

/* Whatever holds the glass was made for a thickness: nothing here computes what another one does to it. */
static void thickness_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_as_read *read, const struct gw_system *system)
{
    struct gw_item_limit limit;
    const double thickness = read->of[GW_ITEM_glass_thickness].number;
    gw_item_limit_at(&limit, ask, &gw_item_glass_thickness, spot, system);
    if (!is_below(&limit, thickness) && !(thickness > limit.at_most * (1 + GW_HAIR))) return;
    gw_left_unknown(
        out,
        GW_PLAINLY(without_pocket(ask, system)
                       ? "do bead, blocks and what stands under the glass take that thickness: ask the manufacturer"
                       : "which thicknesses does the gasket take: ask the manufacturer (pocket)"));
}

/* Face clearance --------------------------------------------------------------------------------------------------- */

static void face_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                       const struct gw_system *system)
{
    const struct gw_install_length *row = &ask->model->tables->install_length[GW_ROW_INSTALL_LENGTH_FACE_CLEARANCE];
    (void)spot;
    (void)system;
    gw_used_add(&ask->engine.used, &row->row);
    out->at_least = row->least_m;
    out->basis = GW_LIMIT_PRACTICE;
}

static void face_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                      const struct gw_as_read *read, const struct gw_system *system)
{
    struct gw_item_limit limit;
    const double gap = read->of[GW_ITEM_face_clearance].number;
    out->lost = !(gap > 0);
    if (out->lost) out->remark = GW_PLAINLY("the glass touches metal");
    gw_item_limit_at(&limit, ask, &gw_item_face_clearance, spot, system);
    if (is_below(&limit, gap) || gap > limit.at_most * (1 + GW_HAIR))
        gw_left_unknown(out, GW_PLAINLY("what squeeze does the gasket take: ask the manufacturer; measure the other "
                                        "face"));
}

/* Rows ------------------------------------------------------------------------------------------------------------- */

const struct gw_item gw_item_glass_thickness = {
    .id = GW_ITEM_glass_thickness,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_LITE,
    .hold = false,
    .how = "caliper at the edge",
    .prevents = "too much or too little pressure on the edge",
    .clause = "common practice, no source",
    .if_missed = "does what holds the glass take that thickness",
    .does = &(const struct gw_item_functions){.limit = thickness_limit, .left = thickness_left}};
const struct gw_item gw_item_face_clearance = {
    .id = GW_ITEM_face_clearance,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_EDGE,
    .hold = false,
    .how = "gauge at each face",
    .prevents = "a gasket too tight or too loose",
    .clause = "GANA Glazing Manual, recalled",
    .if_missed = "measure the other face",
    .does = &(const struct gw_item_functions){.without = without_pocket, .limit = face_limit, .left = face_left}};
