#include "judge/lite_drift.h"

#include "judge/checks.h"
#include "judge/items.h"
#include "judge/racking.h"

#include "base/tolerance.h"
#include "galeward/seismic.h"

bool gw_left_is_open(const struct gw_left *left)
{
    bool open = left->lost || left->undecided || gw_said(&left->unknown) || gw_said(&left->taken);
    for (unsigned i = 0; i < left->n; i++) open = open || left->list[i].bad < left->list[i].required * (1 - GW_HAIR);
    return open;
}

double gw_skew_of(const struct gw_element *lite, double difference)
{
    return difference * hypot(lite->width, lite->pane) / (2 * lite->width);
}

/* Room ------------------------------------------------------------------------------------------------------------- */

double gw_pocket_depth(int edge, const struct gw_system *system)
{
    const struct gw_drift_spec *d = gw_part(system, drift);
    const bool side = edge == GW_EDGE_LEFT || edge == GW_EDGE_RIGHT;
    if (!d || system->system->glazing == GW_SILICONE) return GW_ABSENT;
    return d->bite + (edge < 0 ? fmin(d->side_gap, d->end_gap) : side ? d->side_gap : d->end_gap);
}

double gw_gap_left_by(double bite, int edge, const struct gw_system *system)
{
    const double depth = gw_pocket_depth(edge, system), gap = depth - bite;
    return system->system->glazing != GW_MIXED && gap > GW_HAIR * depth ? gap : GW_ABSENT;
}

double gw_narrow_gap(const struct gw_as_read *read, int edge, const struct gw_system *system)
{
    const struct gw_edge_read *e = &read->edges[edge];
    return gw_given(e->gap) ? e->gap : gw_gap_left_by(e->deepest, edge, system);
}

double gw_wide_gap(const struct gw_as_read *read, int edge, const struct gw_system *system)
{
    const struct gw_edge_read *e = &read->edges[edge];
    return gw_given(e->widest) ? e->widest : gw_gap_left_by(e->bite, edge, system);
}

/* One that was read of no edge may be any; absent. */
static double gap_at(const struct gw_spot *spot, const struct gw_as_read *read, int edge,
                     const struct gw_system *system)
{
    const double own = read->of[GW_ITEM_edge_clearance].number, there = gw_narrow_gap(read, edge, system);
    if (gw_given(own) && spot->edge == edge) return own;
    return spot->edge < 0 ? fmin(own, there) : there; /* fmin takes what is given */
}

/* Of two opposite edges; one that nobody read is as drawn, and one above that counts as drawn: one side's gain is the
 * other's loss. Absent: none was read. */
static double average(double drawn, double a, double b)
{
    if (!gw_given(drawn) || (!gw_given(a) && !gw_given(b))) return GW_ABSENT;
    return (fmin(drawn, a) + fmin(drawn, b)) / 2;
}

static struct gw_room room_of(const struct gw_spot *spot, const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_drift_spec *drawn = gw_part(system, drift);
    struct gw_room room = {GW_ABSENT, GW_ABSENT, GW_ABSENT};
    double gap[4];
    if (!drawn) return room;
    for (int edge = GW_EDGE_HEAD; edge <= GW_EDGE_RIGHT; edge++) gap[edge] = gap_at(spot, read, edge, system);
    room.side_gap = average(drawn->side_gap, gap[GW_EDGE_LEFT], gap[GW_EDGE_RIGHT]);
    room.end_gap = average(drawn->end_gap, gap[GW_EDGE_HEAD], gap[GW_EDGE_SILL]);
    return room;
}

/* A lite in a frame that is out of square has slid and turned before it drifts: 2 c1 (1 + h c2 / (b c1)) is less by the
 * skew. First the sides give, then the ends. False: it has met its frame. */
static bool less_skew(struct gw_room *room, const struct gw_room *from, const struct gw_drift_spec *drawn,
                      const struct gw_element *lite, double skew)
{
    const double side = gw_given(from->side_gap) ? from->side_gap : drawn->side_gap;
    const double end = gw_given(from->end_gap) ? from->end_gap : drawn->end_gap;
    *room = (struct gw_room){fmax(side - skew / 2, 0), end, GW_ABSENT};
    if (skew / 2 > side) room->end_gap -= (skew / 2 - side) * lite->width / lite->pane;
    return room->end_gap >= 0;
}

/* Of an opening that was read as out of square, beyond what clearances as drawn take for granted; else 0. */
static double skew_read(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                        const struct gw_system *system)
{
    const struct gw_drift_spec *d = gw_part(system, drift);
    const double difference = read->of[GW_ITEM_squareness].number;
    struct gw_item_limit practice = {.at_most = GW_ABSENT};
    if (!d || !gw_given(d->side_gap) || !gw_given(d->end_gap) || gw_is_bonded(system)) return 0;
    gw_item_squareness.does->limit(&practice, ask, spot, system);
    return difference > practice.at_most * (1 + GW_HAIR) ? gw_skew_of(spot->lite, difference) : 0;
}

void gw_left_append(struct gw_left *out, struct gw_ask *ask, const struct gw_left *more)
{
    for (unsigned i = 0; i < more->n; i++) out->list[out->n++] = more->list[i];
    if (gw_said(&more->unknown)) gw_left_unknown(out, more->unknown);
    if (gw_said(&more->taken)) out->taken = gw_say_both(ask->arena, &out->taken, "; ", &more->taken);
    out->undecided = out->undecided || more->undecided;
}

static struct gw_left drifts(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_system *system,
                             const struct gw_room *room)
{
    struct gw_left left = {0};
    gw_left_by_drift(&left, ask, spot->lite, system, room);
    return left;
}

void gw_left_by_room(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                     const struct gw_system *system)
{
    const struct gw_drift_spec *drawn = gw_part(system, drift);
    const struct gw_room none = {GW_ABSENT, GW_ABSENT, GW_ABSENT}, gaps = room_of(spot, read, system);
    const double skew = skew_read(ask, spot, read, system);
    const struct gw_left by_gaps = drifts(ask, spot, system, &gaps);
    struct gw_room room;
    if (!(skew > 0)) {
        gw_left_append(out, ask, &by_gaps);
        return;
    }
    const bool turns = less_skew(&room, &none, drawn, spot->lite, skew);
    const struct gw_left by_skew = drifts(ask, spot, system, turns ? &room : &none);
    if (gw_left_is_open(&by_gaps)) gw_left_append(out, ask, &by_gaps);
    if (turns && gw_left_is_open(&by_skew)) gw_left_append(out, ask, &by_skew);
    if (!turns || gw_left_is_open(&by_gaps) || gw_left_is_open(&by_skew)) return;
    const bool both_turn = less_skew(&room, &gaps, drawn, spot->lite, skew);
    const struct gw_left by_both = drifts(ask, spot, system, both_turn ? &room : &none);
    out->undecided = out->undecided || !both_turn || gw_left_is_open(&by_both);
    if (!out->undecided) gw_left_append(out, ask, &by_both);
    else
        gw_left_unknown(out, GW_PLAINLY("is that gap less because the opening is out of square, or besides? Measure "
                                        "it at both ends of the edge, and at the edge opposite"));
}

/* Beads ------------------------------------------------------------------------------------------------------------ */

static const char BONDED_WHEN[] = "was the opening out of square before the glass was bonded? If not, its bead has "
                                  "sheared by as much";

/* How far the bead shears at a corner, over its thickness; absent: its angle is none of the small ones. */
static double strain_of(struct gw_ask *ask, const struct gw_element *lite, const struct gw_silicone_spec *bead,
                        double skew)
{
    const struct gw_racking_case in = {skew, lite->width, lite->pane, bead->thickness};
    struct gw_racking_result r;
    return gw_silicone_racking(&r, &in, &ask->engine) == GW_OK ? r.strain_corner : GW_ABSENT;
}

/* The story's drift that is left of a test's whose lite was as far out of square; a specimen that says too little of
 * its story and its lites shows nothing. */
static double drift_less(const struct gw_rating *rating, double skew)
{
    const struct gw_tested *t = rating->tested;
    double lite = t ? t->lite_height : GW_ABSENT;
    for (size_t i = 0; t && i < t->lites.n; i++) lite = fmin(lite, t->lites.items[i].height);
    const double less = t ? skew * t->story_height / lite : GW_ABSENT;
    return gw_given(less) ? fmax(rating->drift - less, 0) : 0;
}

/* Racking tests by what their drift leaves, and the shear that the bead has left. */
static const struct gw_system *with_less(struct gw_ask *ask, const struct gw_system *system,
                                         const struct gw_silicone_spec *bead, double strain, double skew)
{
    struct gw_system *copy = gw_alloc(ask->arena, 1, sizeof *copy);
    struct gw_rating *ratings = gw_alloc(ask->arena, system->ratings.n + 1, sizeof *ratings);
    struct gw_silicone_spec *silicone = gw_alloc(ask->arena, 1, sizeof *silicone);
    *copy = *system;
    *silicone = *bead;
    silicone->shear_strain -= strain;
    for (size_t i = 0; i < system->ratings.n; i++) {
        ratings[i] = system->ratings.items[i];
        if (ratings[i].test == GW_TEST_SWAY) ratings[i].drift = drift_less(&ratings[i], skew);
    }
    copy->ratings.items = ratings;
    copy->silicone = silicone;
    return copy;
}

void gw_left_by_skewed_bead(struct gw_left *out, struct gw_ask *ask, const struct gw_element *lite,
                            const struct gw_system *system, double skew)
{
    const struct gw_silicone_spec *bead = gw_part(system, silicone);
    const bool known = bead && system->system->glazing == GW_SILICONE && gw_given(bead->thickness);
    const double strain = known ? strain_of(ask, lite, bead, skew) : GW_ABSENT;
    if (!gw_given(strain) || !gw_given(bead->shear_strain)) {
        gw_left_unknown(out, GW_PLAINLY(BONDED_WHEN));
        return;
    }
    const struct gw_needed needed = {0, 0, strain};
    gw_left_by_range(out, "bead", bead->shear_strain, &needed,
                     GW_SAY(ask->arena,
                            "its head stands {} beside its sill, which shears a bead that was there by {} of its "
                            "thickness",
                            gw_of_quantity(GW_THICKNESS, skew), gw_of_quantity(GW_RATIO, strain)),
                     BONDED_WHEN, BONDED_WHEN);
    if (strain >= bead->shear_strain) return;
    const struct gw_system *less = with_less(ask, system, bead, strain, skew);
    const struct gw_message asks = GW_PLAINLY(BONDED_WHEN);
    gw_left_by_either(out, ask, "drift", &gw_check_seismic_glass, lite, system, less, asks);
    gw_left_by_either(out, ask, "shear of the bead", &gw_check_seismic_silicone, lite, system, less, asks);
}
