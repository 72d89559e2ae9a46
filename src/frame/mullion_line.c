/* The mullions of a wall under their patterns of load. */
#include "galeward/mullion_line.h"

#include "base/tolerance.h"

#include <string.h>

struct line {
    const struct gw_mullion_wall *wall;
    const struct gw_mullion_stretch *stretches;
    size_t n;
    struct gw_beam_result *room;
    struct gw_engine *engine;
    double supports[GW_BEAM_SUPPORTS], hinges[GW_BEAM_HINGES];
    struct gw_beam_load loads[GW_MULLION_STRETCHES];
    struct gw_beam_segment segment;
    struct gw_beam beam;
};

/* Where pieces meet --------------------------------------------------------------------------------------------------
 */

static size_t joint_count(const struct gw_mullion_wall *w) { return w->n_splices ? w->n_splices : w->n_anchors; }

static double joint_at(const struct gw_mullion_wall *w, size_t i)
{
    return w->n_splices ? w->splices[i] : w->anchors[i];
}

/* Without splices pieces meet at every anchor but the ends, past which an overhang goes on. */
static bool is_joint(const struct gw_mullion_wall *w, size_t i)
{
    const double x = joint_at(w, i);
    const bool end = !w->n_splices && (i == 0 || i + 1 == w->n_anchors);
    return !end && x > w->bottom + GW_HAIR_M && x < w->top - GW_HAIR_M;
}

/* Goes through the pieces from the bottom: `joint` is 0 before the first one, `low` the wall's bottom. */
static bool next_piece(const struct gw_mullion_wall *w, size_t *joint, double *low, double *high)
{
    const size_t n = joint_count(w);
    if (*joint > n) return false;
    if (*joint > 0) *low = *high;
    while (*joint < n && !is_joint(w, *joint)) (*joint)++;
    *high = *joint < n ? joint_at(w, *joint) : w->top;
    (*joint)++;
    return true;
}

/* Above the lower height, up to the other. */
static size_t floors_in(const double *floors, size_t n, double low, double high)
{
    size_t passed = 0;
    for (size_t i = 0; i < n; i++) passed += floors[i] > low + GW_HAIR_M && floors[i] < high + GW_HAIR_M;
    return passed;
}

void gw_mullion_longest(struct gw_mullion_piece *out, const struct gw_mullion_wall *wall, const double *floors,
                        size_t n_floors)
{
    double low = wall->bottom, high = low;
    *out = (struct gw_mullion_piece){0, 1};
    for (size_t joint = 0; next_piece(wall, &joint, &low, &high);) {
        const size_t passed = floors_in(floors, n_floors, low, high);
        out->length = fmax(out->length, high - low);
        if (passed > out->stories) out->stories = passed;
    }
}

double gw_mullion_piece_at(const struct gw_mullion_wall *wall, double height)
{
    double longest = 0, low = wall->bottom, high = low;
    for (size_t joint = 0; next_piece(wall, &joint, &low, &high);)
        if (height > low - GW_HAIR_M && height < high + GW_HAIR_M) longest = fmax(longest, high - low);
    return longest;
}

/* What bears the pieces ----------------------------------------------------------------------------------------------
 */

static bool holds(const struct gw_mullion_wall *w, size_t anchor, double low, double high)
{
    return w->anchors[anchor] > low - GW_HAIR_M && w->anchors[anchor] < high + GW_HAIR_M;
}

/* The free anchor that bears the piece: the lowest of those told, else the top one; n_anchors: none. */
static size_t bearer(const struct gw_mullion_bearing *out, const struct gw_mullion_wall *w, const bool *dead,
                     double low, double high)
{
    size_t found = w->n_anchors;
    for (size_t i = 0; i < w->n_anchors; i++) {
        if (!holds(w, i, low, high) || out[i].piece > 0 || (dead && !dead[i])) continue;
        if (!dead || found == w->n_anchors) found = i;
    }
    return found;
}

/* The anchors that bear dead load and found no piece of their own share one with another anchor. */
static void bear_twice(struct gw_mullion_bearing *out, const struct gw_mullion_wall *w, const bool *dead, double low,
                       double high)
{
    bool shared = false;
    for (size_t i = 0; i < w->n_anchors; i++) {
        if (!holds(w, i, low, high) || !dead[i] || out[i].piece > 0) continue;
        out[i] = (struct gw_mullion_bearing){high - low, GW_BORNE_TWICE, low, true};
        shared = true;
    }
    for (size_t i = 0; shared && i < w->n_anchors; i++)
        if (holds(w, i, low, high) && dead[i]) out[i].borne = GW_BORNE_TWICE;
}

void gw_mullion_bearings(struct gw_mullion_bearing *out, const struct gw_mullion_wall *wall, const bool *dead)
{
    double low = wall->bottom, high = low;
    for (size_t i = 0; i < wall->n_anchors; i++)
        out[i] = (struct gw_mullion_bearing){.borne = GW_BORNE_ONCE, .told = dead};
    for (size_t joint = 0; next_piece(wall, &joint, &low, &high);) {
        const size_t i = bearer(out, wall, dead, low, high);
        if (i < wall->n_anchors) {
            out[i].piece = high - low;
            out[i].from = low;
        }
        for (size_t k = 0; i == wall->n_anchors && k < i; k++)
            if (holds(wall, k, low, high)) out[k].borne = GW_BORNE_BY_NONE;
    }
    low = high = wall->bottom;
    for (size_t joint = 0; dead && next_piece(wall, &joint, &low, &high);) bear_twice(out, wall, dead, low, high);
}

/* What moves into a joint -------------------------------------------------------------------------------------------
 */

struct piece {
    double low, high;     /* its ends */
    double first, last;   /* its lowest and its top anchor; absent: none */
    double lower, higher; /* the lowest and the highest anchor that bear it; absent: none */
};

static struct piece piece_of(const struct gw_mullion_wall *w, const struct gw_mullion_bearing *b, double low,
                             double high)
{
    struct piece p = {low, high, GW_ABSENT, GW_ABSENT, GW_ABSENT, GW_ABSENT};
    for (size_t i = 0; i < w->n_anchors; i++) {
        const double at = w->anchors[i];
        if (!holds(w, i, low, high)) continue;
        if (!gw_given(p.first)) p.first = at;
        p.last = at;
        if (!(b[i].piece > 0) || fabs(b[i].from - low) > GW_HAIR_M) continue;
        if (!gw_given(p.lower)) p.lower = at;
        p.higher = at;
    }
    return p;
}

/* Stories between two heights: one more than the floors between them. */
static size_t stories_between(const double *floors, size_t n, double low, double high)
{
    return 1 + floors_in(floors, n, low, high - 2 * GW_HAIR_M);
}

/* The pieces below and above, as far as they are from what bears them. */
static struct gw_mullion_joint joint_by_bearing(const struct piece *below, const struct piece *above,
                                                const double *floors, size_t n)
{
    const double from = gw_given(below->lower) ? below->lower : below->low,
                 to = gw_given(above->higher) ? above->higher : above->high;
    return (struct gw_mullion_joint){below->high, to - from, stories_between(floors, n, from, to), true};
}

/* One piece moves, the other stands still at the joint. */
static void one_alone(struct gw_mullion_joint *joint, double low, double high, const double *floors, size_t n)
{
    const size_t passed = floors_in(floors, n, low, high);
    joint->length = fmax(joint->length, high - low);
    if (passed > joint->stories) joint->stories = passed;
}

static struct gw_mullion_joint meet(const struct piece *below, const struct piece *above, bool told,
                                    const double *floors, size_t n)
{
    struct gw_mullion_joint joint = joint_by_bearing(below, above, floors, n);
    joint.told = told;
    if (told) return joint;
    one_alone(&joint, gw_given(below->first) ? below->first : below->low, joint.at, floors, n);
    one_alone(&joint, joint.at, gw_given(above->last) ? above->last : above->high, floors, n);
    return joint;
}

size_t gw_mullion_joints(struct gw_mullion_joint *out, const struct gw_mullion_wall *wall,
                         const struct gw_mullion_bearing *bearings, const double *floors, size_t n_floors)
{
    const bool told = wall->n_anchors && bearings[0].told;
    double low = wall->bottom, high = low;
    struct piece below = {0};
    size_t n = 0;
    for (size_t joint = 0, i = 0; next_piece(wall, &joint, &low, &high); i++) {
        const struct piece piece = piece_of(wall, bearings, low, high);
        if (i && out) out[n] = meet(&below, &piece, told, floors, n_floors);
        n += i > 0;
        below = piece;
    }
    return n;
}

/* The beam and its loads
 * ---------------------------------------------------------------------------------------------- */

static enum gw_status set_line(struct line *line)
{
    const struct gw_mullion_wall *w = line->wall;
    if (!w->n_anchors) return gw_refuse(line->engine, GW_MISSING, "anchors", "which anchors hold the mullions?");
    if (w->n_anchors > GW_BEAM_SUPPORTS || joint_count(w) > GW_BEAM_HINGES)
        return gw_refuse(line->engine, GW_OUTSIDE_METHOD, "anchors",
                         "more anchors or splices than a beam here can have");
    line->segment = (struct gw_beam_segment){w->top - w->bottom, 1, 1};
    line->beam = (struct gw_beam){.length = w->top - w->bottom,
                                  .supports = line->supports,
                                  .n_supports = w->n_anchors,
                                  .hinges = line->hinges,
                                  .loads = line->loads,
                                  .segments = &line->segment,
                                  .n_segments = 1};
    for (size_t i = 0; i < w->n_anchors; i++) line->supports[i] = w->anchors[i] - w->bottom;
    for (size_t i = 0; i < joint_count(w); i++)
        if (is_joint(w, i)) line->hinges[line->beam.n_hinges++] = joint_at(w, i) - w->bottom;
    return GW_OK;
}

static bool known(const struct gw_mullion_stretch *s) { return gw_given(s->inward) && gw_given(s->outward); }

static bool loads_all(enum gw_mullion_pattern pattern) { return pattern == GW_INWARD_ALL || pattern == GW_OUTWARD_ALL; }

/* Everything, or overhangs alone, or spans alone. */
static enum gw_status add_loads(struct line *line, enum gw_mullion_pattern pattern, bool overhangs)
{
    const double bottom = line->wall->bottom;
    line->beam.n_loads = 0;
    for (size_t i = 0; i < line->n; i++) {
        const struct gw_mullion_stretch *s = &line->stretches[i];
        const double force = gw_mullion_outward(pattern) ? s->outward : s->inward;
        if (!known(s) || (!loads_all(pattern) && s->overhang != overhangs)) continue;
        if (line->beam.n_loads == GW_MULLION_STRETCHES)
            return gw_refuse(line->engine, GW_OUTSIDE_METHOD, "stretches", "more stretches than a beam here can have");
        line->loads[line->beam.n_loads++] =
            (struct gw_beam_load){GW_BEAM_SPREAD, s->from - bottom, s->to - bottom, force, force};
    }
    return GW_OK;
}

/* Whether a load on one stretch bends the other: not past a joint over an anchor; splices elsewhere pass it on. */
static bool bends(const struct gw_mullion_wall *w, const struct gw_mullion_stretch *a,
                  const struct gw_mullion_stretch *b)
{
    const double low = fmin(a->to, b->to), high = fmax(a->from, b->from);
    if (w->n_splices) return true;
    for (size_t i = 0; i < joint_count(w); i++) {
        const double x = joint_at(w, i);
        if (is_joint(w, i) && x > low - GW_HAIR_M && x < high + GW_HAIR_M) return false;
    }
    return true;
}

static void find_unknown(struct gw_mullion_forces *out, const struct line *line)
{
    for (size_t k = line->n; k-- > 0;) {
        if (known(&line->stretches[k])) continue;
        for (size_t i = 0; i < line->n; i++)
            if (bends(line->wall, &line->stretches[k], &line->stretches[i])) out[i].unknown = k + 1;
    }
}

/* What a stretch feels -----------------------------------------------------------------------------------------------
 */

static void take_point(struct gw_mullion_forces *s, const struct gw_beam_result *b, double x)
{
    const enum gw_beam_side sides[] = {GW_BEAM_AFTER, GW_BEAM_BEFORE};
    for (int i = 0; i < 2; i++) {
        const struct gw_beam_point p = gw_beam_at(b, x, sides[i]);
        s->moment = fmax(s->moment, fabs(p.moment)); /* fmax leaves out what lies off the beam */
        s->shear = fmax(s->shear, fabs(p.shear));
    }
}

/* Its own ends, the ends of the pieces within, and where the shear is zero. */
static void take_range(struct gw_mullion_forces *s, const struct gw_beam_result *b, double from, double to)
{
    take_point(s, b, from);
    take_point(s, b, to);
    for (size_t i = 0; i < b->n_pieces; i++) {
        const struct gw_beam_piece *p = &b->pieces[i];
        if (p->to < from || p->from > to) continue;
        if (p->from > from) take_point(s, b, p->from);
        const double turn = p->load_from > 0 ? p->from + p->start.shear / p->load_from : from;
        if (turn > fmax(p->from, from) && turn < fmin(p->to, to)) take_point(s, b, turn);
    }
    s->deflection = fmax(s->deflection, fabs(gw_beam_deflection_between(b, from, to).value));
}

static void take_joints(struct gw_mullion_forces *s, const struct gw_beam_result *b, const struct gw_mullion_wall *w,
                        double from, double to)
{
    for (size_t i = 0; i < joint_count(w); i++) {
        const double x = joint_at(w, i) - w->bottom;
        if (x < from - GW_HAIR_M || x > to + GW_HAIR_M || !is_joint(w, i)) continue;
        struct gw_mullion_forces at = {.moment = 0};
        take_point(&at, b, x);
        s->splice_shear = fmax(s->splice_shear, at.shear);
    }
}

static void take(struct gw_mullion_forces *s, const struct line *line, const struct gw_mullion_stretch *stretch,
                 enum gw_mullion_pattern pattern)
{
    struct gw_mullion_forces one = {.moment = 0};
    const double bottom = line->wall->bottom, from = stretch->member_from - bottom, to = stretch->member_to - bottom;
    take_range(&one, line->room, from, to);
    take_joints(&one, line->room, line->wall, from, to);
    if (one.moment > s->moment) s->pattern = pattern;
    s->moment = fmax(s->moment, one.moment);
    s->shear = fmax(s->shear, one.shear);
    s->splice_shear = fmax(s->splice_shear, one.splice_shear);
    s->deflection = fmax(s->deflection, one.deflection);
}

/* The line -----------------------------------------------------------------------------------------------------------
 */

/* All loads are solved for all stretches, the other patterns for spans and for overhangs. */
static enum gw_status take_pattern(struct gw_mullion_forces *out, struct line *line, enum gw_mullion_pattern pattern,
                                   bool overhangs)
{
    const bool all = loads_all(pattern);
    size_t asked = 0;
    for (size_t i = 0; i < line->n; i++) asked += !out[i].unknown && (all || line->stretches[i].overhang == overhangs);
    if (!asked || (all && overhangs)) return GW_OK;
    enum gw_status status = add_loads(line, pattern, overhangs);
    if (status == GW_OK) status = gw_beam_solve_pieces(line->room, &line->beam, line->engine);
    if (status != GW_OK) return status;
    for (size_t i = 0; i < line->n; i++)
        if (!out[i].unknown && (all || line->stretches[i].overhang == overhangs))
            take(&out[i], line, &line->stretches[i], pattern);
    return GW_OK;
}

enum gw_status gw_mullion_line(struct gw_mullion_forces *out, const struct gw_mullion_wall *wall,
                               const struct gw_mullion_stretch *stretches, size_t n, struct gw_beam_result *room,
                               struct gw_engine *engine)
{
    struct line line = {.wall = wall, .stretches = stretches, .n = n, .room = room, .engine = engine};
    enum gw_status status = set_line(&line);
    if (status != GW_OK) return status;
    for (size_t i = 0; i < n; i++) out[i] = (struct gw_mullion_forces){.moment = 0};
    find_unknown(out, &line);
    for (int i = GW_INWARD_ALL; i < GW_MULLION_PATTERNS && status == GW_OK; i++) {
        status = take_pattern(out, &line, (enum gw_mullion_pattern)i, false);
        if (status == GW_OK) status = take_pattern(out, &line, (enum gw_mullion_pattern)i, true);
    }
    return status;
}

double gw_mullion_deflection(const struct gw_mullion_forces *of, double stiffness, struct gw_engine *engine)
{
    static const char clause[] = "mullion as a beam over its wall";
    const double one = 1; /* N m2, as EI: their ratio has no unit */
    GW_FOUND(engine, "d_1", GW_BEAM_LENGTH, of->deflection, clause,
             "the beam's deflection with E I of EI_1, 1 N m2 (EI in N m2 in both systems of units): solved over the "
             "whole wall",
             {"EI_1", one, GW_RATIO});
    GW_STEP(engine, "d", GW_BEAM_LENGTH, of->deflection / stiffness, clause, "d_1*EI_1/EI",
            {"d_1", of->deflection, GW_BEAM_LENGTH}, {"EI_1", one, GW_RATIO}, {"EI", stiffness, GW_RATIO});
    return of->deflection / stiffness;
}

enum gw_status gw_mullion_derive(const struct gw_mullion_forces *of, const struct gw_mullion_wall *wall,
                                 const struct gw_mullion_stretch *stretches, size_t n, size_t i,
                                 struct gw_beam_result *room, struct gw_engine *engine)
{
    struct line line = {.wall = wall, .stretches = stretches, .n = n, .room = room, .engine = engine};
    enum gw_status status = set_line(&line);
    if (status == GW_OK) status = add_loads(&line, of->pattern, stretches[i].overhang);
    if (status != GW_OK) return status;
    GW_TRACE_SAY(engine, "w", "line loads",
                 "over {} from the wall's bottom, each stretch its own pressure times the width carried: loads: {}",
                 gw_of_quantity(GW_LENGTH, line.beam.length), gw_of_count((long)line.beam.n_loads));
    for (size_t k = 0; k < line.beam.n_loads; k++)
        GW_STEP(engine, "w", GW_LINE_LOAD, line.loads[k].start, "line loads", "w",
                {"w", line.loads[k].start, GW_LINE_LOAD});
    status = gw_beam_solve(room, &line.beam, engine);
    if (status == GW_OK)
        GW_STEP(engine, "M", GW_BENDING, of->moment, "largest moment in the stretch", "M",
                {"M", of->moment, GW_BENDING});
    return status;
}

enum gw_status gw_mullion_solved(struct gw_mullion_beam *out, struct gw_beam_result *result,
                                 const struct gw_mullion_forces *of, const struct gw_mullion_wall *wall,
                                 const struct gw_mullion_stretch *stretches, size_t n, size_t i, double stiffness,
                                 struct gw_engine *engine)
{
    struct line line = {.wall = wall, .stretches = stretches, .n = n, .room = result, .engine = engine};
    enum gw_status status = set_line(&line);
    if (status == GW_OK) status = add_loads(&line, of->pattern, stretches[i].overhang);
    if (status != GW_OK) return status;
    line.segment.elastic_modulus = stiffness;
    out->beam = line.beam;
    memcpy(out->supports, line.supports, sizeof out->supports);
    memcpy(out->hinges, line.hinges, sizeof out->hinges);
    memcpy(out->loads, line.loads, sizeof out->loads);
    out->segment = line.segment;
    out->beam.supports = out->supports;
    out->beam.hinges = out->hinges;
    out->beam.loads = out->loads;
    out->beam.segments = &out->segment;
    return gw_beam_solve(result, &out->beam, engine);
}

/* Anchors ------------------------------------------------------------------------------------------------------------
 */

/* From the reactions under 1 N/m on one stretch of wall. */
static enum gw_status share_stretch(struct gw_mullion_anchor *out, struct line *line, double from, double to)
{
    const struct gw_mullion_wall *w = line->wall;
    const bool past_end = to < w->anchors[0] + GW_HAIR_M || from > w->anchors[w->n_anchors - 1] - GW_HAIR_M;
    line->beam.n_loads = 1;
    line->loads[0] = (struct gw_beam_load){GW_BEAM_SPREAD, from - w->bottom, to - w->bottom, 1, 1};
    enum gw_status status = gw_beam_solve_pieces(line->room, &line->beam, line->engine);
    for (size_t i = 0; i < w->n_anchors && status == GW_OK; i++) {
        const double reaction = line->room->reactions[i];
        const bool relieves = past_end && reaction < 0;
        double *part = from < w->roof - GW_HAIR_M ? &out[i].below : &out[i].above;
        if (!relieves) *part += reaction;
    }
    return status;
}

static enum gw_status share_cut(struct gw_mullion_anchor *out, struct line *line, double from, double to)
{
    const double roof = line->wall->roof;
    if (!(to > from + GW_HAIR_M)) return GW_OK;
    if (!(from < roof - GW_HAIR_M && to > roof + GW_HAIR_M)) return share_stretch(out, line, from, to);
    enum gw_status status = share_stretch(out, line, from, roof);
    return status == GW_OK ? share_stretch(out, line, roof, to) : status;
}

enum gw_status gw_mullion_anchors(struct gw_mullion_anchor *out, const struct gw_mullion_wall *wall,
                                  struct gw_beam_result *room, struct gw_engine *engine)
{
    struct line line = {.wall = wall, .room = room, .engine = engine};
    enum gw_status status = set_line(&line);
    if (status != GW_OK) return status;
    for (size_t i = 0; i < wall->n_anchors; i++)
        out[i] = (struct gw_mullion_anchor){.piece = gw_mullion_piece_at(wall, wall->anchors[i])};
    for (size_t i = 0; i <= wall->n_anchors && status == GW_OK; i++)
        status = share_cut(out, &line, i ? wall->anchors[i - 1] : wall->bottom,
                           i < wall->n_anchors ? wall->anchors[i] : wall->top);
    return status;
}
