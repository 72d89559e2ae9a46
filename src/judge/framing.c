/* The mullion of an element as one beam from the wall's bottom to its top: anchors hold it, splices are hinges.
 *
 * Where a wall names no splices its mullions are spliced at every anchor (simple spans). Each stretch carries its own
 * pressure, uniform: a two-way lite sheds no more than that. Both directions, each twice: all of it loaded, and without
 * the load that would relieve the element (overhangs beside a span, spans beside an overhang). */
#include "judge_internal.h"

#include <string.h>

static const double HAIR = 1e-6; /* m */

struct line {
    double supports[GW_BEAM_SUPPORTS], hinges[GW_BEAM_HINGES];
    struct gw_beam_load loads[GW_BEAM_SUPPORTS + 4];
    struct gw_beam_segment segment;
    struct gw_beam beam;
};

/* Where pieces meet: at splices; without any, at every anchor but the ends, past which an overhang goes on. */
static bool is_joint(const struct gw_wall_lines *l, size_t i)
{
    double x = l->n_splices ? l->splices[i] : l->anchors[i];
    bool end = !l->n_splices && (i == 0 || i + 1 == l->n_anchors);
    return !end && x > l->bottom + HAIR && x < l->top - HAIR;
}

static size_t joint_count(const struct gw_wall_lines *l) { return l->n_splices ? l->n_splices : l->n_anchors; }

static double joint_at(const struct gw_wall_lines *l, size_t i) { return l->n_splices ? l->splices[i] : l->anchors[i]; }

static bool set_line(struct line *line, const struct gw_wall_lines *l)
{
    if (l->n_anchors > GW_BEAM_SUPPORTS || joint_count(l) > GW_BEAM_HINGES) return false;
    line->segment = (struct gw_beam_segment){l->top - l->bottom, 1, 1};
    line->beam = (struct gw_beam){.length = l->top - l->bottom,
                                  .supports = line->supports,
                                  .n_supports = l->n_anchors,
                                  .hinges = line->hinges,
                                  .loads = line->loads,
                                  .segments = &line->segment,
                                  .n_segments = 1};
    for (size_t i = 0; i < l->n_anchors; i++) line->supports[i] = l->anchors[i] - l->bottom;
    for (size_t i = 0; i < joint_count(l); i++)
        if (is_joint(l, i)) line->hinges[line->beam.n_hinges++] = joint_at(l, i) - l->bottom;
    return true;
}

/* Loads of one direction ----------------------------------------------------------------------------------------------
 */

enum { INWARD, OUTWARD, DIRECTIONS };

static double pressure_of(const struct gw_element *e, int direction)
{
    return direction == INWARD ? fmax(e->inward_asd.pa, 0) : fmax(-e->outward_asd.pa, 0);
}

/* Another stretch of the same mullions. */
static bool same_mullion(const struct gw_element *a, const struct gw_element *b)
{
    return a->kind == b->kind && a->zone == b->zone && a->corner == b->corner && fabs(a->width - b->width) < HAIR &&
           strcmp(a->mark, b->mark) == 0;
}

/* Whether a load on one stretch bends the other: not past a joint over an anchor; splices elsewhere pass it on. */
static bool reaches(const struct gw_element *a, const struct gw_element *b)
{
    const double low = fmin(a->top, b->top), high = fmax(a->bottom, b->bottom);
    for (size_t i = 0; i < joint_count(a->lines) && !a->lines->n_splices; i++) {
        double x = joint_at(a->lines, i);
        if (is_joint(a->lines, i) && x > low - HAIR && x < high + HAIR) return false;
    }
    return true;
}

static bool add_load(struct line *line, const struct gw_element *o, int direction)
{
    double force = pressure_of(o, direction) * o->width, bottom = o->lines->bottom;
    if (line->beam.n_loads == sizeof line->loads / sizeof *line->loads) return false;
    line->loads[line->beam.n_loads++] =
        (struct gw_beam_load){GW_BEAM_SPREAD, o->bottom - bottom, o->top - bottom, force, force};
    return true;
}

/* NULL, or why there is no answer. Elements of a wall stand together in the list. */
static const char *add_loads(struct line *line, const struct gw_judging *j, const struct gw_element *e, int direction,
                             bool all)
{
    const struct gw_element *first = j->takeoff->elements.items, *end = first + j->takeoff->elements.n, *from = e;
    line->beam.n_loads = 0;
    while (from > first && from[-1].lines == e->lines) from--;
    for (const struct gw_element *o = from; o < end && o->lines == e->lines; o++) {
        if (!same_mullion(o, e) || (!all && o->overhang != e->overhang)) continue;
        if (o->outside && reaches(o, e))
            return gw_format(j->model->arena,
                             "%s, and its piece of mullion reaches to here; ask the structural "
                             "engineer for the pressure at %s",
                             o->outside, o->id);
        if (!o->outside && !add_load(line, o, direction))
            return "outside the method: more stretches than a beam here can have";
    }
    return NULL;
}

/* What the stretch feels ------------------------------------------------------------------------------------------- */

static void take_point(struct gw_stretch *s, const struct gw_beam_result *b, double x)
{
    const enum gw_beam_side sides[] = {GW_BEAM_AFTER, GW_BEAM_BEFORE};
    for (int i = 0; i < 2; i++) {
        struct gw_beam_point p = gw_beam_at(b, x, sides[i]);
        s->moment = fmax(s->moment, fabs(p.moment)); /* fmax leaves out what lies off the beam */
        s->shear = fmax(s->shear, fabs(p.shear));
    }
}

/* Its own ends, the ends of the pieces within, and where the shear is zero. */
static void take_range(struct gw_stretch *s, const struct gw_beam_result *b, double from, double to)
{
    take_point(s, b, from);
    take_point(s, b, to);
    for (size_t i = 0; i < b->n_pieces; i++) {
        const struct gw_beam_piece *p = &b->pieces[i];
        if (p->to < from || p->from > to) continue;
        if (p->from > from) take_point(s, b, p->from);
        double turn = p->load_from > 0 ? p->from + p->start.shear / p->load_from : from;
        if (turn > fmax(p->from, from) && turn < fmin(p->to, to)) take_point(s, b, turn);
    }
    s->deflection = fmax(s->deflection, fabs(gw_beam_deflection_between(b, from, to).value));
}

static void take_joints(struct gw_stretch *s, const struct gw_beam_result *b, const struct gw_wall_lines *l,
                        double from, double to)
{
    for (size_t i = 0; i < joint_count(l); i++) {
        double x = joint_at(l, i) - l->bottom;
        if (!is_joint(l, i) || x < from - HAIR || x > to + HAIR) continue;
        struct gw_stretch at = {0};
        take_point(&at, b, x);
        s->splice_shear = fmax(s->splice_shear, at.shear);
    }
}

/* From the wall's bottom: the whole member, where the roof line cuts it. */
static void member_range(const struct gw_element *e, double *from, double *to)
{
    *from = (e->parapet ? e->top - e->span : e->bottom) - e->lines->bottom;
    *to = (e->parapet ? e->top : e->bottom + e->span) - e->lines->bottom;
}

static const char *find_stretch(struct gw_stretch *s, struct gw_judging *j, const struct gw_element *e)
{
    struct line line;
    struct gw_engine engine;
    double from, to;
    member_range(e, &from, &to);
    if (!j->beam) j->beam = gw_alloc(j->model->arena, 1, sizeof *j->beam);
    if (!set_line(&line, e->lines)) return "outside the method: more anchors or splices than a beam here can have";
    for (int i = 0; i < 2 * DIRECTIONS; i++) {
        gw_engine_init(&engine, j->model->tables, NULL);
        const char *fault = add_loads(&line, j, e, i / 2, i % 2 == 0);
        if (fault) return fault;
        if (gw_beam_solve(j->beam, &line.beam, &engine) != GW_OK) return gw_fault_of(j, &engine);
        struct gw_stretch one = {0};
        take_range(&one, j->beam, from, to);
        take_joints(&one, j->beam, e->lines, from, to);
        if (one.moment > s->moment) {
            s->direction = i / 2 == INWARD ? "inward" : "outward";
            s->pattern = i;
        }
        s->moment = fmax(s->moment, one.moment);
        s->shear = fmax(s->shear, one.shear);
        s->splice_shear = fmax(s->splice_shear, one.splice_shear);
        s->deflection = fmax(s->deflection, one.deflection);
    }
    return NULL;
}

const struct gw_stretch *gw_stretch_of(struct gw_judging *j, const struct gw_element *e)
{
    const size_t at = (size_t)(e - j->takeoff->elements.items);
    if (!j->stretches)
        j->stretches = gw_alloc(j->model->arena, j->takeoff->elements.n, sizeof(const struct gw_stretch *));
    if (j->stretches[at]) return j->stretches[at];
    struct gw_stretch *s = gw_alloc(j->model->arena, 1, sizeof *s);
    s->direction = "";
    s->fault = find_stretch(s, j, e);
    return j->stretches[at] = s;
}

/* The same once more with its derivation: the direction and pattern of the largest moment. */
void gw_stretch_derive(struct gw_judging *j, const struct gw_element *e)
{
    struct line line;
    struct gw_engine engine;
    const struct gw_stretch *s = gw_stretch_of(j, e);
    if (!j->trace || s->fault || !set_line(&line, e->lines)) return;
    gw_engine_init(&engine, j->model->tables, j->trace);
    if (add_loads(&line, j, e, s->pattern / 2, s->pattern % 2 == 0)) return;
    gw_trace_note(&engine, "w", "line loads",
                  "each stretch: its own pressure times the width carried; x from the wall's bottom");
    for (size_t i = 0; i < line.beam.n_loads; i++)
        GW_STEP(&engine, "w", GW_LINE_LOAD, line.loads[i].start, "line loads", "w",
                {"w", line.loads[i].start, GW_LINE_LOAD});
    gw_beam_solve(j->beam, &line.beam, &engine);
    GW_STEP(&engine, "M", GW_BENDING, s->moment, "largest moment in the stretch", "M", {"M", s->moment, GW_BENDING});
}

/* Anchors ------------------------------------------------------------------------------------------------------------
 */

/* The anchor that the element's stretch of wall hangs on. */
static size_t anchor_in(const struct gw_element *e)
{
    size_t best = 0;
    double middle = (e->bottom + e->top) / 2;
    for (size_t i = 1; i < e->lines->n_anchors; i++)
        if (fabs(e->lines->anchors[i] - middle) < fabs(e->lines->anchors[best] - middle)) best = i;
    return best;
}

double gw_anchor_level(const struct gw_element *e) { return e->lines->anchors[anchor_in(e)]; }

/* Reactions of every anchor of one wall under 1 N/m on each stretch alone. */
struct gw_influence {
    const struct gw_wall_lines *lines;
    double from[GW_BEAM_SUPPORTS + 3], to[GW_BEAM_SUPPORTS + 3]; /* heights above ground */
    double reactions[GW_BEAM_SUPPORTS + 3][GW_BEAM_SUPPORTS];
    size_t n;
    const char *fault;
};

static void add_stretch(struct gw_influence *f, double from, double to)
{
    const double roof = f->lines->roof;
    if (!(to > from + HAIR)) return;
    if (from < roof - HAIR && to > roof + HAIR) {
        add_stretch(f, from, roof);
        from = roof;
    }
    f->from[f->n] = from;
    f->to[f->n++] = to;
}

static void find_influence(struct gw_influence *f, struct gw_judging *j, const struct gw_wall_lines *l)
{
    struct line line;
    struct gw_engine engine;
    *f = (struct gw_influence){.lines = l};
    if (!set_line(&line, l)) {
        f->fault = "outside the method: more anchors or splices than a beam here can have";
        return;
    }
    add_stretch(f, l->bottom, l->anchors[0]);
    for (size_t i = 1; i < l->n_anchors; i++) add_stretch(f, l->anchors[i - 1], l->anchors[i]);
    add_stretch(f, l->anchors[l->n_anchors - 1], l->top);
    line.beam.n_loads = 1;
    for (size_t i = 0; i < f->n && !f->fault; i++) {
        line.loads[0] = (struct gw_beam_load){GW_BEAM_SPREAD, f->from[i] - l->bottom, f->to[i] - l->bottom, 1, 1};
        gw_engine_init(&engine, j->model->tables, NULL);
        if (gw_beam_solve(j->beam, &line.beam, &engine) != GW_OK) f->fault = gw_fault_of(j, &engine);
        for (size_t a = 0; a < l->n_anchors && !f->fault; a++) f->reactions[i][a] = j->beam->reactions[a];
    }
}

/* The longest piece of mullion that the anchor at x can carry: which of its anchors bears a piece is not told. */
static double longest_piece(const struct gw_wall_lines *l, double x)
{
    double longest = 0, low = l->bottom;
    for (size_t i = 0; i <= joint_count(l); i++) {
        bool last = i == joint_count(l);
        if (!last && !is_joint(l, i)) continue;
        double high = last ? l->top : joint_at(l, i);
        if (x > low - HAIR && x < high + HAIR) longest = fmax(longest, high - low);
        low = high;
    }
    return longest;
}

static size_t floors_in(const struct gw_wall_lines *l, double low, double high)
{
    size_t n = 0;
    for (size_t i = 0; i < l->n_floors; i++) n += l->floors[i] > low + HAIR && l->floors[i] < high + HAIR;
    return n;
}

struct gw_piece gw_longest_piece(const struct gw_wall_lines *l)
{
    struct gw_piece longest = {0, 1};
    double low = l->bottom;
    for (size_t i = 0; i <= joint_count(l); i++) {
        bool last = i == joint_count(l);
        if (!last && !is_joint(l, i)) continue;
        double high = last ? l->top : joint_at(l, i);
        size_t floors = floors_in(l, low, high);
        longest.length = fmax(longest.length, high - low);
        if (floors > longest.stories) longest.stories = floors;
        low = high;
    }
    return longest;
}

/* Elements of a wall stand together in the list, so one wall is kept. */
const char *gw_anchor_holds(struct gw_anchor_share *out, struct gw_judging *j, const struct gw_element *e)
{
    const struct gw_wall_lines *l = e->lines;
    const size_t a = anchor_in(e);
    *out = (struct gw_anchor_share){.piece = longest_piece(l, l->anchors[a])};
    if (!j->beam) j->beam = gw_alloc(j->model->arena, 1, sizeof *j->beam);
    if (!j->influence) j->influence = gw_alloc(j->model->arena, 1, sizeof *j->influence);
    if (j->influence->lines != l) find_influence(j->influence, j, l);
    const struct gw_influence *f = j->influence;
    for (size_t i = 0; i < f->n && !f->fault; i++) {
        bool past_end = f->to[i] < l->anchors[0] + HAIR || f->from[i] > l->anchors[l->n_anchors - 1] - HAIR;
        bool relieves = past_end && f->reactions[i][a] < 0;
        double *part = f->from[i] < l->roof - HAIR ? &out->below : &out->above;
        if (!relieves) *part += f->reactions[i][a];
    }
    return f->fault;
}
