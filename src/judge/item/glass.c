/* Glass in its pocket: bite, clearances, thickness. */
#include "judge/checks.h"
#include "judge/glass_lite.h"
#include "judge/items.h"
#include "judge/joint_budget.h"
#include "judge/lite_room.h"

#include "tables_data.h"

static const char WHICH_LITE[] = "which lite is it? Give its column, story and row";

static bool is_below(const struct gw_item_limit *limit, double value)
{
    return value < limit->at_least * (1 - GW_HAIR);
}

static bool is_side(const struct gw_spot *spot) { return spot->edge == GW_EDGE_LEFT || spot->edge == GW_EDGE_RIGHT; }

static double drawn_gap(const struct gw_spot *spot, const struct gw_system *system)
{
    const struct gw_drift_spec *d = gw_part(system, drift);
    if (!d) return GW_ABSENT;
    return spot->edge < 0 ? fmax(d->side_gap, d->end_gap) : is_side(spot) ? d->side_gap : d->end_gap;
}

static double practice_gap(struct gw_ask *ask, const struct gw_element *lite)
{
    const struct gw_glazing_room *row = gw_practice_room(ask, lite);
    return row ? row->edge_m : GW_ABSENT;
}

/* The project says how warm metal is when it is set, and in service. */
static bool set_known(const struct gw_ask *ask)
{
    const struct gw_movement_rules *m = ask->model->project.movement;
    return m && gw_given(m->coldest) && gw_given(m->hottest) && gw_given(m->set_coldest) && gw_given(m->set_warmest);
}

/* A drawing is judged by every temperature that the project lets glass be set at; of a lite that stands, nobody may
 * know how warm it was. */
static bool any_setting(const struct gw_ask *ask, const struct gw_as_read *read)
{
    return read->drawn && set_known(ask);
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

/* Edge clearance --------------------------------------------------------------------------------------------------- */

static const char *without_pocket(const struct gw_ask *ask, const struct gw_system *system)
{
    (void)ask;
    return system->system->glazing == GW_SILICONE ? "the glass is bonded all round: it stands in no pocket" : NULL;
}

static void clearance_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                            const struct gw_system *system)
{
    const double drawn = drawn_gap(spot, system);
    out->at_least = gw_given(drawn) ? drawn : practice_gap(ask, spot->lite);
    if (gw_given(out->at_least)) out->basis = gw_given(drawn) ? GW_LIMIT_SYSTEM : GW_LIMIT_PRACTICE;
}

/* How much of a gap the cold takes: the glass stands on its blocks, and about its middle. At the good end it was set
 * halfway between hot and cold. */
static void left_in_the_cold(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                             const struct gw_as_read *read, double gap)
{
    const struct gw_element *e = spot->lite;
    const double length = spot->edge == GW_EDGE_SILL ? 0 : is_side(spot) ? e->width / 2 : fmax(e->pane, e->width / 2);
    struct gw_thermal_result t;
    if (!(length > 0)) {
        gw_left_unknown(out,
                        GW_PLAINLY("is it as high as the setting blocks, and does water run off under the glass?"));
        return;
    }
    if (gw_frame_about_glass(&t, ask, length) != GW_OK) {
        gw_left_unknown(out, gw_fault_message(ask));
        return;
    }
    const bool stated = set_known(ask);
    const struct gw_needed needed = {any_setting(ask, read) ? t.shrinkage : t.shrinkage / 2,
                                     stated ? t.shrinkage : t.shrinkage / 2, t.shrinkage};
    gw_left_by_range(out, "temperature", gap, &needed,
                     GW_SAY(ask->arena,
                            "the frame shrinks by {} more than the glass; sag of the member above and sway "
                            "under wind are not in it",
                            gw_of_quantity(GW_THICKNESS, t.shrinkage)),
                     "how warm was the metal when this lite was set",
                     "how warm was the metal when the glass was set, and how cold does it get? Ask the architect "
                     "(movement: coldest, hottest, set_coldest, set_warmest)");
}

/* The gap read, the opposite one as the system has it: one side's gain is the other's loss. Absent where the system
 * states none, or the edge is no such one. */
static struct gw_room room_by(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_system *system,
                              double gap)
{
    struct gw_as_read alone;
    gw_as_read_clear(&alone);
    alone.of[GW_ITEM_edge_clearance].number = gap;
    const struct gw_drift_spec *d = gw_part(gw_system_as_read(ask, spot, &alone, system), drift);
    const bool side = d && (spot->edge < 0 || is_side(spot)), end = d && !is_side(spot);
    return (struct gw_room){side ? d->side_gap : GW_ABSENT, end ? d->end_gap : GW_ABSENT, GW_ABSENT};
}

static void clearance_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_as_read *read, const struct gw_system *system)
{
    const double gap = read->of[GW_ITEM_edge_clearance].number;
    struct gw_item_limit limit;
    if (!(gap > 0)) {
        out->lost = true;
        out->remark = GW_PLAINLY("the glass touches metal");
        return;
    }
    if (!spot->lite) {
        gw_left_unknown(out, GW_PLAINLY(WHICH_LITE));
        return;
    }
    const struct gw_room room = room_by(ask, spot, system, gap);
    gw_left_by_drift(out, ask, spot->lite, system, &room);
    gw_item_limit_at(&limit, ask, &gw_item_edge_clearance, spot, system);
    if (is_below(&limit, gap)) left_in_the_cold(out, ask, spot, read, gap);
}

/* Bite ------------------------------------------------------------------------------------------------------------- */

static double pocket_bite(const struct gw_system *system)
{
    const struct gw_drift_spec *d = gw_part(system, drift);
    return d ? d->bite : GW_ABSENT;
}

static double bead_bite(const struct gw_system *system)
{
    const struct gw_silicone_spec *s = gw_part(system, silicone);
    return s && system->system->glazing != GW_CAPTURED ? s->bite : GW_ABSENT;
}

/* Where some edges are bonded, the larger: which of them this one is is not known. */
static void bite_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                       const struct gw_system *system)
{
    const bool bonded = system->system->glazing == GW_SILICONE;
    const double drawn = bonded ? bead_bite(system) : fmax(pocket_bite(system), bead_bite(system));
    const struct gw_glazing_room *row = bonded || gw_given(drawn) ? NULL : gw_practice_room(ask, spot->lite);
    out->at_least = row ? row->bite_m : drawn;
    if (gw_given(out->at_least)) out->basis = row ? GW_LIMIT_PRACTICE : GW_LIMIT_SYSTEM;
}

/* The gap at the opposite edge, which the lite can close: as drawn, and what was missing at this one. */
static double gap_opposite(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                           const struct gw_system *system)
{
    const double drawn = drawn_gap(spot, system), here = read->of[GW_ITEM_edge_clearance].number;
    const double gap = gw_given(drawn) ? drawn : practice_gap(ask, spot->lite);
    return gw_given(here) && here < gap ? 2 * gap - here : gap;
}

/* How far a bowed lite draws its edges in: the chord of a half wave is shorter by (pi w)^2 / 4 L. Absent: `out` asks
 * for its glass. */
static double drawn_in(struct gw_left *out, struct gw_ask *ask, const struct gw_element *lite, double length)
{
    struct gw_demand d = {.message = {0}};
    const struct gw_glass_judged *g = gw_glass_of(&d, ask, lite);
    if (g) return pow(acos(-1) * g->bent.deflection, 2) / (4 * length);
    gw_left_unknown(out, d.message);
    return GW_ABSENT;
}

/* How far the lite may go towards the opposite edge, m: sideways until its side blocks stop it, or where there are none
 * until it meets its pocket; up only where the frame racks; down it stands. False: its room is not known. */
static bool goes_away(double *least, double *most, struct gw_ask *ask, const struct gw_spot *spot,
                      const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_edge_block_free *row = &ask->model->tables->edge_block_free[0];
    const bool stays =
        spot->edge == GW_EDGE_HEAD || (spot->edge == GW_EDGE_SILL && !gw_may_drift(ask, spot->lite, system));
    *least = *most = stays ? 0 : gap_opposite(ask, spot, read, system);
    if (stays || !gw_given(*most)) return stays;
    gw_used_add(&ask->engine.used, &row->row);
    *least = spot->edge == GW_EDGE_SILL ? 0 : fmin(*most, row->free_m);
    return true;
}

/* Facts that somebody could read, or state. How far a frame that racks lifts the lite nothing here computes. */
static const char *what_decides(const struct gw_spot *spot, bool stated)
{
    if (spot->edge == GW_EDGE_SILL)
        return "how far is the lite lifted where its frame racks? Ask for a racking test, or measure the clearance at "
               "its "
               "head";
    if (spot->edge == GW_EDGE_HEAD)
        return "how warm was the metal when the glass was set, and how warm does it get? Ask the architect (movement: "
               "coldest, hottest, set_coldest, set_warmest)";
    return stated ? "do side blocks keep the lite from moving?"
                  : "do side blocks keep the lite from moving? How warm was the metal when the glass was set, and how "
                    "warm does it get (movement: coldest, hottest, set_coldest, set_warmest)?";
}

/* The lite goes towards the opposite edge, the frame grows away from it, and wind bows it. At the good end side blocks
 * hold it and it was set halfway between hot and cold. */
static void stays_in_pocket(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                            const struct gw_as_read *read, const struct gw_system *system, double bite)
{
    const struct gw_element *e = spot->lite;
    const double length = is_side(spot) ? e->width : spot->edge < 0 ? fmax(e->width, e->pane) : e->pane;
    const double bow = drawn_in(out, ask, e, is_side(spot) || spot->edge < 0 ? e->width : e->pane);
    struct gw_thermal_result t = {.growth = 0};
    double least, most;
    if (!goes_away(&least, &most, ask, spot, read, system)) {
        gw_left_unknown(out, GW_PLAINLY("how much room has the glass at its edges? Ask the manufacturer (drift: "
                                        "side_gap, end_gap)"));
        return;
    }
    if (!gw_given(bow)) return;
    if (spot->edge != GW_EDGE_SILL && gw_frame_about_glass(&t, ask, length) != GW_OK) {
        gw_left_unknown(out, gw_fault_message(ask));
        return;
    }
    const bool stated = set_known(ask);
    const struct gw_needed needed = {least + bow + (any_setting(ask, read) ? t.growth : t.growth / 2),
                                     least + bow + (stated ? t.growth : t.growth / 2), most + bow + t.growth};
    gw_left_by_range(
        out, "bite", bite, &needed,
        GW_SAY(
            ask->arena,
            "the lite leaves the pocket by up to {} of the gap opposite, {} as it bows under wind and {} as the frame "
            "grows",
            gw_of_quantity(GW_THICKNESS, most), gw_of_quantity(GW_THICKNESS, bow),
            gw_of_quantity(GW_THICKNESS, t.growth)),
        "how warm was the metal when this lite was set", what_decides(spot, stated));
}

static void bite_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                      const struct gw_as_read *read, const struct gw_system *system)
{
    const double bite = read->of[GW_ITEM_glass_bite].number;
    const struct gw_room room = {GW_ABSENT, GW_ABSENT, bite};
    struct gw_item_limit limit;
    if (!spot->lite) {
        gw_left_unknown(out, GW_PLAINLY(WHICH_LITE));
        return;
    }
    gw_item_limit_at(&limit, ask, &gw_item_glass_bite, spot, system);
    gw_left_by_tests_of_bite(out, ask, spot->lite, system, bite, is_below(&limit, bite));
    if (system->system->glazing == GW_SILICONE) {
        gw_left_by_check(out, ask, "silicone", &gw_check_silicone, spot->lite, gw_with_room(ask, system, &room));
        return;
    }
    if (bite < GW_USE(&ask->engine, &ask->model->tables->bite_kept[0])->share * limit.at_least * (1 - GW_HAIR))
        gw_left_unknown(out, GW_PLAINLY("how much of the glass does the gasket need to bear on? Ask the manufacturer"));
    if (system->system->glazing == GW_MIXED)
        gw_left_unknown(out, GW_PLAINLY("is that edge held by a plate or by a bead?"));
    stays_in_pocket(out, ask, spot, read, system, bite);
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
    .if_missed = "does the gasket take that thickness",
    .does = &(const struct gw_item_functions){
        .limit = thickness_limit, .then = "which thicknesses does the gasket take: ask the manufacturer (pocket)"}};
const struct gw_item gw_item_glass_bite = {
    .id = GW_ITEM_glass_bite,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_EDGE,
    .hold = true,
    .how = "gauge in the pocket, before the plate covers it",
    .prevents = "glass is pulled out; the edge seal shows",
    .clause = "GANA Glazing Manual, recalled",
    .if_missed = "measure the other edges of that lite",
    .does = &(const struct gw_item_functions){.limit = bite_limit, .left = bite_left}};
const struct gw_item gw_item_edge_clearance = {
    .id = GW_ITEM_edge_clearance,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_EDGE,
    .hold = true,
    .how = "gauge, metal to glass, before the plate covers it",
    .prevents = "metal breaks the glass when the frame racks",
    .clause = "GANA Glazing Manual, as quoted by a trade article",
    .if_missed = "measure the opposite edge",
    .does =
        &(const struct gw_item_functions){.without = without_pocket, .limit = clearance_limit, .left = clearance_left}};
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
