/* Edges of the glass in their pocket: clearance and bite, which share its depth. */
#include "judge/checks.h"
#include "judge/glass_lite.h"
#include "judge/items.h"
#include "judge/joint_budget.h"
#include "judge/lite_drift.h"

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

/* A drawing says no edge: its clearance is of the edge whose gap it is. Below 0: of neither, or of either. */
static int edge_drawn(const struct gw_system *system, double gap)
{
    const struct gw_drift_spec *d = gw_part(system, drift);
    if (!d || fabs(d->side_gap - d->end_gap) <= GW_HAIR_DRAWN * gap) return -1;
    if (fabs(gap - d->side_gap) <= GW_HAIR_DRAWN * gap) return GW_EDGE_LEFT;
    return fabs(gap - d->end_gap) <= GW_HAIR_DRAWN * gap ? GW_EDGE_HEAD : -1;
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

static const char *without_pocket(const struct gw_ask *ask, const struct gw_system *system)
{
    (void)ask;
    return system->system->glazing == GW_SILICONE ? "the glass is bonded all round: it stands in no pocket" : NULL;
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

/* The gap at the opposite edge, which the lite can close: the widest that was read there or that the bite leaves which
 * was, else as drawn, and what is missing at this one. */
static double gap_opposite(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                           const struct gw_system *system, double bite)
{
    const double drawn = drawn_gap(spot, system), read_here = read->of[GW_ITEM_edge_clearance].number;
    const double gap = gw_given(drawn) ? drawn : practice_gap(ask, spot->lite);
    const int opposite = gw_edge_opposite(spot->edge);
    const double across = opposite >= 0 ? gw_wide_gap(read, opposite, system) : GW_ABSENT;
    if (gw_given(across)) return across;
    const bool follows = !gw_given(read_here) && spot->edge >= 0;
    const double here = follows ? gw_gap_left_by(bite, spot->edge, system) : read_here;
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
                      const struct gw_as_read *read, const struct gw_system *system, double bite)
{
    const struct gw_edge_block_free *row = &ask->model->tables->edge_block_free[0];
    const bool stays =
        spot->edge == GW_EDGE_HEAD || (spot->edge == GW_EDGE_SILL && !gw_may_drift(ask, spot->lite, system));
    *least = *most = stays ? 0 : gap_opposite(ask, spot, read, system, bite);
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
    if (!goes_away(&least, &most, ask, spot, read, system, bite)) {
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

/* Less than the gasket was drawn to bear on. */
static bool keeps_too_little(struct gw_ask *ask, double bite, double drawn)
{
    return bite < GW_USE(&ask->engine, &ask->model->tables->bite_kept[0])->share * drawn * (1 - GW_HAIR);
}

/* Gap -------------------------------------------------------------------------------------------------------------- */

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

/* What such a gap leaves of the story's drift, and in the cold. */
static void gap_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                     const struct gw_system *system, double gap)
{
    struct gw_item_limit limit;
    gw_left_by_room(out, ask, spot, read, system);
    gw_item_limit_at(&limit, ask, &gw_item_edge_clearance, spot, system);
    if (is_below(&limit, gap)) left_in_the_cold(out, ask, spot, read, gap);
}

/* Depth: what the gap takes of a pocket its bite has not ------------------------------------------------------------
 */

/* A lite whose gap here is `gap` and whose bite follows: where the gap opposite was not read it is as much narrower,
 * one side's gain being the other's loss. Short even between side blocks, or less than the gasket was drawn to bear on,
 * or than a rating recorded where `rated`; by gaps that were read on both sides also where no side blocks hold it. */
static bool bite_is_short(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                          const struct gw_system *system, double gap, bool rated)
{
    const double bite = gw_pocket_depth(spot->edge, system) - gap, drawn = drawn_gap(spot, system);
    const int opposite = gw_edge_opposite(spot->edge);
    const bool both = opposite >= 0 && gw_given(gw_wide_gap(read, opposite, system));
    struct gw_as_read as_it_follows = *read;
    struct gw_left left = {0};
    if (!(bite > 0) || keeps_too_little(ask, bite, pocket_bite(system))) return true;
    if (opposite >= 0 && !both) as_it_follows.edges[opposite].widest = fmax(2 * drawn - gap, 0);
    stays_in_pocket(&left, ask, spot, &as_it_follows, system, bite);
    if (rated) gw_left_by_tests_of_bite(&left, ask, spot->lite, system, bite, true);
    bool is_short = gw_said(&left.taken);
    for (unsigned i = 0; i < left.n; i++) is_short = is_short || left.list[i].bad < 1 - GW_HAIR;
    return is_short || (both && gw_left_is_open(&left));
}

static struct gw_message more_than_deep(struct gw_ask *ask, double gap, double bite, double depth)
{
    return GW_SAY(ask->arena,
                  "a gap of {} and a bite of {} are more than the {} of the pocket: which of the two is right, or is "
                  "that pocket deeper?",
                  gw_of_quantity(GW_THICKNESS, gap), gw_of_quantity(GW_THICKNESS, bite),
                  gw_of_quantity(GW_THICKNESS, depth));
}

/* Of a bite that is drawn with a gap: the two are more than any pocket that the gap may stand in. */
static bool contradicts(struct gw_left *out, struct gw_ask *ask, const struct gw_system *system, double bite,
                        double gap)
{
    const struct gw_drift_spec *d = gw_part(system, drift);
    const int edge = edge_drawn(system, gap);
    const double depth = edge < 0 ? d->bite + fmax(d->side_gap, d->end_gap) : gw_pocket_depth(edge, system);
    const double spelled = 2 * ask->model->tables->size_spelling[GW_ROW_SIZE_SPELLING_PLACE].apart_m; /* of either */
    if (bite + gap <= depth + spelled * (1 + GW_HAIR_DRAWN)) return false;
    out->undecided = true;
    gw_left_unknown(out, more_than_deep(ask, gap, bite, depth));
    return true;
}

/* Of a bite that was read with a gap: the two are more than the pocket, by more than readings differ, or the gap would
 * leave too little. */
static void pocket_is_used_up(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                              const struct gw_as_read *read, const struct gw_system *system, double bite, double gap)
{
    const struct gw_reading_spread *spread = &ask->model->tables->reading_spread[GW_ROW_READING_SPREAD_POCKET];
    const double depth = gw_pocket_depth(spot->edge, system);
    const bool apart = bite + gap > depth + spread->apart_m * (1 + GW_HAIR);
    if (bite + gap <= depth * (1 + GW_HAIR)) return;
    if (!apart && !bite_is_short(ask, spot, read, system, gap, false)) return;
    if (apart) gw_used_add(&ask->engine.used, &spread->row);
    out->undecided = true;
    gw_left_unknown(out, more_than_deep(ask, gap, bite, depth));
}

/* Of a bite above the drawn one, in a pocket that is known to be so deep: judged by the gap that it leaves, as if that
 * had been read. */
static void by_its_gap(struct gw_left *out, struct gw_ask *ask, const struct gw_left *left, double depth, double gap)
{
    gw_left_append(out, ask, left);
    if (!gw_left_is_open(left)) return;
    out->undecided = out->undecided || gw_said(&left->unknown);
    out->short_by = "in its own limit, short by the gap that it leaves";
    out->remark = GW_SAY(ask->arena, "in a pocket of {} it leaves a gap of {}", gw_of_quantity(GW_THICKNESS, depth),
                         gw_of_quantity(GW_THICKNESS, gap));
}

/* Of a bite without its gap. Where it leaves none, or of a drawing, whose edge nobody says, too little: asked. */
static void gap_follows(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                        const struct gw_as_read *read, const struct gw_system *system, double bite)
{
    const double depth = gw_pocket_depth(spot->edge, system), gap = fmax(depth - bite, 0);
    struct gw_as_read follows = *read;
    struct gw_left left = {0};
    const bool any = gap > GW_HAIR * depth;
    if (bite <= pocket_bite(system) * (1 + GW_HAIR)) return;
    follows.of[GW_ITEM_edge_clearance].number = gap;
    if (any) gap_left(&left, ask, spot, &follows, system, gap);
    if (any && spot->edge >= 0) {
        by_its_gap(out, ask, &left, depth, gap);
        return;
    }
    bool is_short = !any;
    for (unsigned i = 0; i < left.n; i++) is_short = is_short || left.list[i].bad < 1 - GW_HAIR;
    if (!is_short) return;
    out->undecided = true;
    gw_left_unknown(out, GW_SAY(ask->arena, "in a pocket of {} it leaves a gap of {}: {}",
                                gw_of_quantity(GW_THICKNESS, depth), gw_of_quantity(GW_THICKNESS, gap),
                                gw_of_text(read->drawn ? "what edge clearance is drawn with it?"
                                                       : "measure the edge clearance there")));
}

/* False: of that state nothing else can be told. */
static bool shares_the_pocket(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                              const struct gw_as_read *read, const struct gw_system *system, double bite)
{
    const double here = read->of[GW_ITEM_edge_clearance].number;
    const double widest = spot->edge < 0 ? here : fmax(here, read->edges[spot->edge].widest);
    if (!gw_given(gw_pocket_depth(spot->edge, system))) return true;
    if (gw_given(widest) && read->drawn) return !contradicts(out, ask, system, bite, widest);
    if (gw_given(widest)) pocket_is_used_up(out, ask, spot, read, system, bite, widest);
    else gap_follows(out, ask, spot, read, system, bite);
    return true;
}

/* Of a gap above the drawn one: the bite that it leaves. */
static void bite_is_used_up(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                            const struct gw_as_read *read, const struct gw_system *system, double gap)
{
    const double depth = gw_pocket_depth(spot->edge, system), bite = read->of[GW_ITEM_glass_bite].number;
    const bool fits = bite + gap <= depth * (1 + GW_HAIR);
    if (fits || !bite_is_short(ask, spot, read, system, gap, !gw_given(bite))) return;
    out->undecided = true;
    gw_left_unknown(out, gw_given(bite) ? more_than_deep(ask, gap, bite, depth)
                                        : GW_SAY(ask->arena, "in a pocket of {} it leaves a bite of {}: {}",
                                                 gw_of_quantity(GW_THICKNESS, depth),
                                                 gw_of_quantity(GW_THICKNESS, fmax(depth - gap, 0)),
                                                 gw_of_text(read->drawn ? "what bite is drawn with it?"
                                                                        : "measure the bite there, and the gap "
                                                                          "opposite")));
}

/* The lite may go by such a gap out of the bite that was read opposite. */
static void leaves_opposite(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                            const struct gw_as_read *read, const struct gw_system *system, double gap)
{
    struct gw_spot across = *spot;
    struct gw_as_read there = *read;
    struct gw_left left = {0};
    across.edge = gw_edge_opposite(spot->edge);
    if (across.edge < 0 || !gw_given(read->edges[across.edge].bite)) return;
    there.of[GW_ITEM_edge_clearance].number = read->edges[across.edge].gap;
    there.edges[spot->edge].widest = gap;
    stays_in_pocket(&left, ask, &across, &there, system, read->edges[across.edge].bite);
    if (!gw_left_is_open(&left)) return;
    out->undecided = true;
    gw_left_unknown(out, GW_SAY(ask->arena,
                                "the lite may go so far out of the {} of bite that was read opposite: do side blocks "
                                "keep it from moving?",
                                gw_of_quantity(GW_THICKNESS, read->edges[across.edge].bite)));
}

static void takes_bite(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                       const struct gw_as_read *read, const struct gw_system *system, double gap)
{
    const double depth = gw_pocket_depth(spot->edge, system);
    if (!gw_given(depth) || depth - gap >= pocket_bite(system) * (1 - GW_HAIR)) return;
    leaves_opposite(out, ask, spot, read, system, gap);
    bite_is_used_up(out, ask, spot, read, system, gap);
}

/* Bite, judged ------------------------------------------------------------------------------------------------------
 */

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
    if (keeps_too_little(ask, bite, limit.at_least))
        gw_left_unknown(out, GW_PLAINLY("how much of the glass does the gasket need to bear on? Ask the manufacturer"));
    if (system->system->glazing == GW_MIXED)
        gw_left_unknown(out, GW_PLAINLY("is that edge held by a plate or by a bead?"));
    else if (!shares_the_pocket(out, ask, spot, read, system, bite)) return;
    stays_in_pocket(out, ask, spot, read, system, bite);
}

/* Edge clearance --------------------------------------------------------------------------------------------------- */

static void at_edge(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                    const struct gw_system *system)
{
    const double gap = read->of[GW_ITEM_edge_clearance].number;
    gap_left(out, ask, spot, read, system, gap);
    takes_bite(out, ask, spot, read, system, gap);
}

/* Between the gaps at the sides and at the ends it is short of one of them, and nobody says which. */
static void as_drawn(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                     const struct gw_system *system)
{
    const struct gw_drift_spec *d = gw_part(system, drift);
    const double gap = read->of[GW_ITEM_edge_clearance].number;
    const bool between = d && gap > fmin(d->side_gap, d->end_gap) && gap < fmax(d->side_gap, d->end_gap);
    struct gw_spot there = *spot;
    there.edge = edge_drawn(system, gap);
    if (there.edge >= 0) gw_item_limit_at(&out->limit, ask, &gw_item_edge_clearance, &there, system);
    if (there.edge >= 0 || !between) {
        at_edge(out, ask, &there, read, system);
        return;
    }
    out->undecided = true;
    gw_left_unknown(out, GW_SAY(ask->arena,
                                "at which edge of the glass is it? The system has {} at its sides, {} at its head and "
                                "sill",
                                gw_of_quantity(GW_THICKNESS, d->side_gap), gw_of_quantity(GW_THICKNESS, d->end_gap)));
}

static void clearance_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_as_read *read, const struct gw_system *system)
{
    const double gap = read->of[GW_ITEM_edge_clearance].number;
    if (!(gap > 0)) {
        out->lost = true;
        out->remark = GW_PLAINLY("the glass touches metal");
        return;
    }
    if (!spot->lite) {
        gw_left_unknown(out, GW_PLAINLY(WHICH_LITE));
        return;
    }
    if (read->drawn && spot->edge < 0) as_drawn(out, ask, spot, read, system);
    else at_edge(out, ask, spot, read, system);
}

/* Rows ------------------------------------------------------------------------------------------------------------- */

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
