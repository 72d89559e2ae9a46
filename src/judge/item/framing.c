/* Frame and anchors: where they stand. */
#include "base/tolerance.h"
#include "judge/items.h"
#include "judge/lite_drift.h"
#include "judge/racking.h"

#include "tables_data.h"

static void no_more(struct gw_item_limit *out, double most, struct gw_message note)
{
    out->at_most = most;
    out->basis = GW_LIMIT_PRACTICE;
    out->note = note;
}

static const struct gw_install_length *length_row(struct gw_ask *ask, int which)
{
    return GW_USE(&ask->engine, &ask->model->tables->install_length[which]);
}

static bool is_above(struct gw_ask *ask, const struct gw_item *item, const struct gw_spot *spot,
                     const struct gw_as_read *read, const struct gw_system *system)
{
    struct gw_item_limit limit;
    gw_item_limit_at(&limit, ask, item, spot, system);
    return read->of[item->id].number > limit.at_most * (1 + GW_HAIR);
}

/* What checks of clearance and bite take for granted is a frame within practice. A limit of the system's own may be
 * wider: between the two the glass tells, and within both nothing is to be computed, said so. */
static bool is_taken_for_granted(struct gw_left *out, struct gw_ask *ask, const struct gw_item *item,
                                 const struct gw_spot *spot, const struct gw_as_read *read,
                                 const struct gw_system *system)
{
    struct gw_item_limit practice = {.at_most = GW_ABSENT};
    item->does->limit(&practice, ask, spot, system);
    const double value = read->of[item->id].number;
    if (!(value <= practice.at_most * (1 + GW_HAIR)) || is_above(ask, item, spot, read, system)) return false;
    out->remark = GW_SAY(ask->arena, "within the {} of practice, which clearance and bite as drawn take for granted",
                         gw_item_limit_shown(item->id, practice.at_most, -1));
    return true;
}

static bool states_gaps(const struct gw_system *system)
{
    const struct gw_drift_spec *d = gw_part(system, drift);
    return d && !gw_is_bonded(system) && gw_given(d->side_gap) && gw_given(d->end_gap);
}

/* In a limit that is wider than practice: a system that states its gaps states what they bear; of one that states none
 * what is not known of the glass decides. */
static void decide_within(struct gw_left *out, struct gw_ask *ask, const struct gw_item *item,
                          const struct gw_spot *spot, const struct gw_as_read *read, const struct gw_system *system)
{
    if (!gw_said(&out->unknown) || is_above(ask, item, spot, read, system)) return;
    out->undecided = !states_gaps(system);
    if (!out->undecided) out->unknown = (struct gw_message){0};
    out->remark = GW_PLAINLY(
        !out->undecided        ? "in the system's own limit, wider than practice, beside the gaps that it states"
        : gw_is_bonded(system) ? "in the system's own limit, which is wider than practice; bonded glass has no gaps "
                                 "that bear it"
                               : "in the system's own limit, which is wider than what clearance and bite as drawn "
                                 "take for granted, and no gaps are stated (drift: side_gap, end_gap)");
}

/* A member out of its place takes room and bite from the glass beside it: what was read of those there tells. */
static void by_the_glass(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_as_read *read, const struct gw_system *system, bool bite, const char *question)
{
    if (system->system->glazing == GW_SILICONE) {
        gw_left_unknown(out, GW_PLAINLY("the glass beside it is bonded: was it so before, or has its bead sheared "
                                        "since? Measure the joints there, and ask the manufacturer how far a bead may "
                                        "shear (silicone: shear_strain)"));
        return;
    }
    const bool known = gw_was_read(read, GW_ITEM_edge_clearance) && (!bite || gw_was_read(read, GW_ITEM_glass_bite));
    if (!known) {
        gw_left_unknown(out, GW_PLAINLY(question));
        return;
    }
    gw_item_edge_clearance.does->left(out, ask, spot, read, system);
    if (bite) gw_item_glass_bite.does->left(out, ask, spot, read, system);
}

/* Location, plumb, level ------------------------------------------------------------------------------------------- */

static void location_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_system *system)
{
    (void)spot;
    (void)system;
    no_more(out, length_row(ask, GW_ROW_INSTALL_LENGTH_LOCATION)->most_m, (struct gw_message){0});
}

static void bay_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                     const struct gw_system *system)
{
    if (is_taken_for_granted(out, ask, &gw_item_location, spot, read, system)) return;
    by_the_glass(out, ask, spot, read, system, true,
                 "how much edge clearance and bite does it leave on both sides, and how wide are its joints: "
                 "measure them there");
    decide_within(out, ask, &gw_item_location, spot, read, system);
}

/* m: what runs past its last anchor is no piece of its own, unless it is spliced there: it goes on to the next anchor,
 * or to the splice before it. */
static double plumbed_length(const struct gw_element *member)
{
    const struct gw_wall_lines *l = member->lines;
    if (!member->overhang || !l || l->n_anchors < 2) return member->span;
    const bool above = member->bottom > l->anchors[l->n_anchors - 1] - GW_HAIR_M;
    const double at = above ? l->anchors[l->n_anchors - 1] : l->anchors[0];
    double length = fabs(at - (above ? l->anchors[l->n_anchors - 2] : l->anchors[1]));
    for (size_t i = 0; i < l->n_splices; i++) {
        const double from = above ? at - l->splices[i] : l->splices[i] - at;
        if (from > -GW_HAIR_M) length = fmin(length, fmax(from, 0));
    }
    return member->span + length;
}

/* In proportion to a length, up to a limit in all. */
static void line_limit(struct gw_item_limit *out, struct gw_ask *ask, double length, int which)
{
    const struct gw_install_line *row = GW_USE(&ask->engine, &ask->model->tables->install_line[which]);
    no_more(out, fmin(row->value_m * length / row->over_m, row->most_m),
            GW_SAY(ask->arena, "{} over {}, at most {} in all, for {}; texts differ: the project's own goes before",
                   gw_of_quantity(GW_THICKNESS, row->value_m), gw_of_quantity(GW_LENGTH, row->over_m),
                   gw_of_quantity(GW_THICKNESS, row->most_m), gw_of_quantity(GW_LENGTH, length)));
}

static void plumb_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                        const struct gw_system *system)
{
    (void)system;
    if (spot->member) line_limit(out, ask, plumbed_length(spot->member), GW_ROW_INSTALL_LINE_PLUMB);
}

static void level_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                        const struct gw_system *system)
{
    (void)system;
    if (spot->member) line_limit(out, ask, spot->member->span, GW_ROW_INSTALL_LINE_LEVEL);
}

/* What moves it so far beside the other end of one lite, m, is more than any room that its glass has; the lines beside
 * it may lean as much: then its frame is a parallelogram, and has most. */
static void beyond_room(struct gw_left *out, struct gw_ask *ask, const struct gw_element *lite,
                        const struct gw_system *system, double skew, bool upright)
{
    const struct gw_drift_spec *d = gw_part(system, drift);
    if (!lite || !d || !gw_given(d->side_gap) || !gw_given(d->end_gap)) return;
    const double b = lite->width, h = lite->pane;
    const double clear = upright ? 2 * (d->side_gap + d->end_gap * h / b) : 2 * (d->end_gap + d->side_gap * b / h);
    if (skew <= clear * (1 + GW_HAIR)) return;
    for (unsigned i = 0; i < out->n; i++)
        if (out->list[i].bad <= clear / skew) return;
    gw_left_by(out, "room", clear / skew, clear / skew, 1,
               GW_SAY(ask->arena, "of one lite it is {} out, and the glass has room for {} where all leans alike",
                      gw_of_quantity(GW_THICKNESS, skew), gw_of_quantity(GW_THICKNESS, clear)));
}

/* Lites beside a line in that story, which leans evenly. */
static void leans(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_system *system,
                  double lean)
{
    const struct gw_element *lite, *most = NULL;
    if (!spot->member || !spot->grid || spot->line == GW_NO_INTEGER || spot->story == GW_NO_INTEGER) return;
    for (int column = spot->line; column <= spot->line + 1; column++)
        for (int row = 1; column > 0 && (lite = gw_takeoff_at(ask->takeoff, spot->wall, column, spot->story, row));
             row++)
            if (!most || lite->pane > most->pane) most = lite;
    if (most) beyond_room(out, ask, most, system, lean * fmin(most->pane / plumbed_length(spot->member), 1), true);
}

static void plumb_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                       const struct gw_as_read *read, const struct gw_system *system)
{
    if (is_taken_for_granted(out, ask, &gw_item_plumb, spot, read, system)) return;
    leans(out, ask, spot, system, read->of[GW_ITEM_plumb].number);
    by_the_glass(out, ask, spot, read, system, true,
                 "how much edge clearance and bite is left along it: measure at its top and at its foot");
    decide_within(out, ask, &gw_item_plumb, spot, read, system);
}

static void level_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                       const struct gw_as_read *read, const struct gw_system *system)
{
    if (is_taken_for_granted(out, ask, &gw_item_level, spot, read, system)) return;
    beyond_room(out, ask, spot->lite, system, read->of[GW_ITEM_level].number, false);
    by_the_glass(out, ask, spot, read, system, false,
                 "how much edge clearance is left at both ends, and to which end does water run: measure there");
    decide_within(out, ask, &gw_item_level, spot, read, system);
}

/* Squareness ------------------------------------------------------------------------------------------------------- */

static void square_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_system *system)
{
    (void)spot;
    (void)system;
    no_more(out, length_row(ask, GW_ROW_INSTALL_LENGTH_SQUARENESS)->most_m, (struct gw_message){0});
}

static void square_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                        const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_drift_spec *d = gw_part(system, drift);
    const struct gw_element *e = spot->lite;
    if (is_taken_for_granted(out, ask, &gw_item_squareness, spot, read, system)) return;
    if (e && gw_is_bonded(system)) {
        gw_left_by_skewed_bead(out, ask, e, system, gw_skew_of(e, read->of[GW_ITEM_squareness].number));
        out->undecided = gw_said(&out->unknown);
        return;
    }
    if (!e || !d || !gw_given(d->side_gap) || !gw_given(d->end_gap)) {
        gw_left_unknown(out, GW_PLAINLY("how much room has the glass at its corners: measure the edge clearance there, "
                                        "or ask the manufacturer (drift: side_gap, end_gap)"));
        decide_within(out, ask, &gw_item_squareness, spot, read, system);
        return;
    }
    const double skew = gw_skew_of(e, read->of[GW_ITEM_squareness].number);
    const double clear = 2 * (d->side_gap + d->end_gap * e->pane / e->width);
    gw_left_by(out, "room", clear / skew, clear / skew, 1,
               GW_SAY(ask->arena, "its head stands {} beside its sill, the glass has room for {}",
                      gw_of_quantity(GW_THICKNESS, skew), gw_of_quantity(GW_THICKNESS, clear)));
    gw_left_by_room(out, ask, spot, read, system);
}

/* Offsets, anchors ------------------------------------------------------------------------------------------------- */

static void offset_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_system *system)
{
    const bool corner = spot->member && spot->member->corner;
    (void)system;
    no_more(out,
            length_row(ask, corner ? GW_ROW_INSTALL_LENGTH_OFFSET_CORNER : GW_ROW_INSTALL_LENGTH_OFFSET_FLUSH)->most_m,
            GW_PLAINLY(corner ? "at a corner" : "a flush joint"));
}

static void clearance_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                            const struct gw_system *system)
{
    const struct gw_structure_out *far = GW_USE(&ask->engine, &ask->model->tables->structure_out[0]);
    (void)spot;
    (void)system;
    out->at_least = length_row(ask, GW_ROW_INSTALL_LENGTH_ANCHOR_CLEARANCE)->least_m;
    out->basis = GW_LIMIT_PRACTICE;
    out->note = GW_SAY(ask->arena,
                       "where the structure stands; on a drawing besides it how far that may stand out, "
                       "{} of a concrete frame is normal",
                       gw_of_quantity(GW_THICKNESS, far->out_m));
}

/* Rows ------------------------------------------------------------------------------------------------------------- */

const struct gw_item gw_item_location = {
    .id = GW_ITEM_location,
    .stage = GW_STAGE_ANCHORS,
    .on = GW_ON_MEMBER,
    .hold = false,
    .how = "tape from the grid line",
    .prevents = "joints too small or too large",
    .clause = "guide of curtain wall installation, recalled",
    .if_missed = "measure the joint that it makes",
    .does = &(const struct gw_item_functions){.limit = location_limit, .left = bay_left}};
const struct gw_item gw_item_anchor_clearance = {
    .id = GW_ITEM_anchor_clearance,
    .stage = GW_STAGE_ANCHORS,
    .on = GW_ON_ANCHOR,
    .hold = false,
    .how = "tape from the frame to the structure",
    .prevents = "no room to adjust the frame",
    .clause = "texts on detailing",
    .if_missed = "how far out is the structure along that floor",
    .does = &(const struct gw_item_functions){
        .limit = clearance_limit,
        .then = "how much adjustment is left at that anchor, and does its bracket still reach"}};
const struct gw_item gw_item_anchor_fastened = {.id = GW_ITEM_anchor_fastened,
                                                .stage = GW_STAGE_ANCHORS,
                                                .on = GW_ON_ANCHOR,
                                                .hold = true,
                                                .how = "eye, wrench: bolts, shims, welds as drawn and locked",
                                                .prevents = "slip, or a dropped wall",
                                                .clause = "common practice, no source",
                                                .if_missed = "look at the anchors beside it and above",
                                                .does = &(const struct gw_item_functions){.then = NULL}};
const struct gw_item gw_item_plumb = {.id = GW_ITEM_plumb,
                                      .stage = GW_STAGE_FRAME,
                                      .on = GW_ON_MULLION,
                                      .hold = true,
                                      .how = "level or laser over the whole length",
                                      .prevents = "covers misfit, uneven bite, lost clearance for drift",
                                      .clause = "guide of curtain wall installation, recalled",
                                      .if_missed = "measure bite and clearance along it",
                                      .does =
                                          &(const struct gw_item_functions){.limit = plumb_limit, .left = plumb_left}};
const struct gw_item gw_item_level = {.id = GW_ITEM_level,
                                      .stage = GW_STAGE_FRAME,
                                      .on = GW_ON_HORIZONTAL,
                                      .hold = true,
                                      .how = "level over the whole length",
                                      .prevents = "water runs to one end; racked glass",
                                      .clause = "guide of curtain wall installation, recalled",
                                      .if_missed = "measure clearance at both ends",
                                      .does =
                                          &(const struct gw_item_functions){.limit = level_limit, .left = level_left}};
const struct gw_item gw_item_squareness = {
    .id = GW_ITEM_squareness,
    .stage = GW_STAGE_FRAME,
    .on = GW_ON_LITE,
    .hold = true,
    .how = "both diagonals of the opening",
    .prevents = "corners of the glass on metal",
    .clause = "common practice, no source",
    .if_missed = "measure clearance at the corners",
    .does = &(const struct gw_item_functions){.limit = square_limit, .left = square_left}};
const struct gw_item gw_item_member_offset = {
    .id = GW_ITEM_member_offset,
    .stage = GW_STAGE_FRAME,
    .on = GW_ON_MEMBER,
    .hold = false,
    .how = "straight edge and gauge",
    .prevents = "gaskets bridge, joints leak",
    .clause = "guide of curtain wall installation, recalled",
    .if_missed = "look at the gasket there",
    .does = &(const struct gw_item_functions){.limit = offset_limit,
                                              .then = "does the gasket lie on both members: look at it there"}};
