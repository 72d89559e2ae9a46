/* Elements to the stretches of the frame engine; its answers are kept by element. */
#include "judge/line.h"

#include "judge/judge_internal.h"
#include "judge/member.h"

/* What the anchors of a wall's lines hold, or why it is not known. */
struct held {
    struct gw_mullion_anchor *anchors;
    struct gw_message fault;
};

struct gw_line_memory {
    const struct gw_stretch **stretches; /* by element, as far as worked out */
    struct gw_beam_result *room;
    struct gw_memo held;   /* by the lines of the wall; a corner asks of many walls in turn */
    struct gw_memo joints; /* the same */
};

static struct gw_line_memory *memory_of(struct gw_ask *ask)
{
    struct gw_line_memory *m = ask->memory->lines;
    if (m) return m;
    m = ask->memory->lines = gw_alloc(ask->arena, 1, sizeof *m);
    m->stretches = gw_alloc(ask->arena, ask->takeoff->elements.n + 1, sizeof(const struct gw_stretch *));
    m->room = gw_alloc_bare(ask->arena, sizeof *m->room);
    return m;
}

static struct gw_mullion_wall wall_of(const struct gw_wall_lines *l)
{
    return (struct gw_mullion_wall){.bottom = l->bottom,
                                    .top = l->top,
                                    .roof = l->has_roof ? l->roof : (double)INFINITY,
                                    .anchors = l->anchors,
                                    .splices = l->splices,
                                    .n_anchors = l->n_anchors,
                                    .n_splices = l->n_splices};
}

/* Stretches ----------------------------------------------------------------------------------------------------------
 */

static struct gw_mullion_stretch stretch_of(const struct gw_element *e)
{
    return (struct gw_mullion_stretch){.from = e->bottom,
                                       .to = e->top,
                                       .member_from = e->parapet ? e->top - e->span : e->bottom,
                                       .member_to = e->parapet ? e->top : e->bottom + e->span,
                                       .inward = e->outside ? GW_ABSENT : fmax(e->inward_asd.pa, 0) * e->width,
                                       .outward = e->outside ? GW_ABSENT : fmax(-e->outward_asd.pa, 0) * e->width,
                                       .overhang = e->overhang};
}

/* The pieces of the same mullion lines, from the bottom; a changed copy stands in its own place. */
struct alike {
    struct gw_mullion_wall wall;
    struct gw_mullion_stretch stretches[GW_MULLION_STRETCHES];
    const struct gw_element *elements[GW_MULLION_STRETCHES];
    size_t n, own;
    bool too_many;
};

static void find_alike(struct alike *out, const struct gw_ask *ask, const struct gw_element *e)
{
    const size_t n = gw_takeoff_stack(e);
    *out = (struct alike){.wall = wall_of(e->lines), .own = e->strip, .too_many = n > GW_MULLION_STRETCHES};
    for (size_t i = 0; i < n && !out->too_many; i++) {
        const struct gw_element *o = i == e->strip ? e : gw_takeoff_stacked(ask->takeoff, e, i);
        out->stretches[i] = stretch_of(o);
        out->elements[i] = o;
    }
    out->n = out->too_many ? 0 : n;
}

static struct gw_message unknown_beside(const struct gw_ask *ask, const struct gw_element *o)
{
    return GW_SAY(ask->arena,
                  "{}, and its piece of mullion reaches to here; ask the structural engineer for the pressure at {}",
                  gw_of_message(o->outside), gw_of_text(o->id));
}

static struct gw_stretch found(const struct gw_ask *ask, const struct alike *alike,
                               const struct gw_mullion_forces *forces, struct gw_message fault)
{
    struct gw_stretch s = {.forces = *forces, .fault = fault};
    if (!gw_said(&fault) && forces->unknown) s.fault = unknown_beside(ask, alike->elements[forces->unknown - 1]);
    if (forces->pattern) s.direction = gw_mullion_outward(forces->pattern) ? GW_OUTWARD : GW_INWARD;
    return s;
}

/* All stretches of the line at once. */
static struct gw_stretch *work_out(struct gw_ask *ask, struct alike *alike, const struct gw_element *e)
{
    struct gw_ask own = *ask;
    struct gw_mullion_forces forces[GW_MULLION_STRETCHES] = {{0}};
    struct gw_message fault = {0};
    find_alike(alike, ask, e);
    struct gw_stretch *all = gw_alloc(ask->arena, alike->n + 1, sizeof *all);
    gw_engine_init(&own.engine, ask->model->tables, NULL);
    if (alike->too_many) fault = GW_PLAINLY("outside the method: more stretches than a beam here can have");
    else if (gw_mullion_line(forces, &alike->wall, alike->stretches, alike->n, memory_of(ask)->room, &own.engine) !=
             GW_OK)
        fault = gw_fault_message(&own);
    for (size_t i = 0; i < alike->n; i++) all[i] = found(ask, alike, &forces[i], fault);
    if (!alike->n) all[0] = found(ask, alike, &forces[0], fault);
    return all;
}

const struct gw_stretch *gw_stretch_of(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_line_memory *m = memory_of(ask);
    const bool kept = gw_is_taken_off(ask, e);
    struct alike alike;
    if (kept && m->stretches[e->index]) return m->stretches[e->index];
    const struct gw_stretch *all = work_out(ask, &alike, e), *own = alike.n ? &all[alike.own] : all;
    for (size_t i = 0; i < alike.n && kept; i++) m->stretches[alike.elements[i]->index] = &all[i];
    if (kept) m->stretches[e->index] = own;
    return own;
}

void gw_stretch_derive(struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_stretch *s = gw_stretch_of(ask, e);
    struct alike alike;
    if (!ask->engine.trace || gw_said(&s->fault)) return;
    find_alike(&alike, ask, e);
    gw_mullion_derive(&s->forces, &alike.wall, alike.stretches, alike.n, alike.own, memory_of(ask)->room, &ask->engine);
}

void gw_judge_line(struct gw_judged_line *out, struct gw_ask *ask, const struct gw_element *e,
                   const struct gw_system *system)
{
    const struct gw_stretch *s = gw_stretch_of(ask, e);
    const struct gw_framing_rules *rules = ask->model->project.framing;
    struct gw_member_strength m = {.stiffness = GW_ABSENT};
    struct gw_ask own = *ask;
    struct alike alike;
    *out = (struct gw_judged_line){.system = system,
                                   .direction = s->direction,
                                   .bottom = e->lines->bottom,
                                   .cap = rules ? rules->deflection_cap : GW_ABSENT,
                                   .fault = s->fault};
    if (gw_said(&s->fault)) return;
    if (!s->forces.pattern) {
        out->fault = GW_PLAINLY("nothing bends it");
        return;
    }
    gw_engine_init(&own.engine, ask->model->tables, NULL);
    gw_mullion_of(&m, &out->unknown, &own, system, e);
    out->stiff = gw_given(m.stiffness) && !e->corner;
    if (e->corner) out->unknown = GW_PLAINLY("at a corner the mullion bends both ways");
    find_alike(&alike, ask, e);
    if (gw_mullion_solved(&out->line, &out->result, &s->forces, &alike.wall, alike.stretches, alike.n, alike.own,
                          out->stiff ? m.stiffness : 1, &own.engine) != GW_OK)
        out->fault = gw_fault_message(&own);
}

/* Anchors ------------------------------------------------------------------------------------------------------------
 */

/* The anchor that the element's stretch of wall hangs on. */
static size_t anchor_in(const struct gw_element *e)
{
    const struct gw_wall_lines *l = e->lines;
    const double middle = (e->bottom + e->top) / 2;
    size_t low = 0, high = l->n_anchors; /* they rise: those below `low` stand below the middle, from `high` on not */
    while (low < high) {
        const size_t at = low + (high - low) / 2;
        if (l->anchors[at] < middle) low = at + 1;
        else high = at;
    }
    if (low == l->n_anchors) return low ? low - 1 : 0;
    return low && middle - l->anchors[low - 1] <= l->anchors[low] - middle ? low - 1 : low;
}

const struct gw_mullion_bearing *gw_anchor_bearing(const struct gw_element *e)
{
    return &e->lines->bearings[anchor_in(e)];
}

bool gw_equal_spans(const struct gw_element *e, double most)
{
    const struct gw_wall_lines *l = e->lines;
    const double middle = (e->bottom + e->top) / 2;
    double low = l->bottom, high = l->top, last = GW_ABSENT, at = GW_ABSENT;
    for (size_t i = 0; i < l->n_splices; i++) {
        if (l->splices[i] <= middle) low = fmax(low, l->splices[i]);
        else high = fmin(high, l->splices[i]);
    }
    for (size_t i = 0; i < l->n_anchors; i++) {
        const double anchor = l->anchors[i], span = anchor - at;
        if (anchor < low - GW_HAIR_M || anchor > high + GW_HAIR_M) continue;
        if (fabs(span - last) > most * fmin(span, last)) return false; /* not of the first one, whose last is absent */
        last = span;
        at = anchor;
    }
    return true;
}

double gw_anchor_level(const struct gw_element *e) { return e->lines->anchors[anchor_in(e)]; }

struct gw_mullion_piece gw_longest_piece(const struct gw_wall_lines *l)
{
    const struct gw_mullion_wall wall = wall_of(l);
    struct gw_mullion_piece longest;
    gw_mullion_longest(&longest, &wall, l->floors, l->n_floors);
    return longest;
}

struct joints {
    size_t n;
    struct gw_mullion_joint *items;
};

const struct gw_mullion_joint *gw_joints_of(size_t *n, struct gw_ask *ask, const struct gw_wall_lines *l)
{
    struct joints **kept = (struct joints **)gw_memo_at(&memory_of(ask)->joints, ask->arena, &l, sizeof l);
    const struct gw_mullion_wall wall = wall_of(l);
    if (!*kept) {
        struct joints *j = *kept = gw_alloc(ask->arena, 1, sizeof *j);
        j->n = gw_mullion_joints(NULL, &wall, l->bearings, l->floors, l->n_floors);
        j->items = gw_alloc(ask->arena, j->n + 1, sizeof *j->items);
        gw_mullion_joints(j->items, &wall, l->bearings, l->floors, l->n_floors);
    }
    *n = (*kept)->n;
    return (*kept)->items;
}

static const struct held *held_on(struct gw_ask *ask, const struct gw_wall_lines *lines)
{
    struct gw_line_memory *m = memory_of(ask);
    struct held **kept = (struct held **)gw_memo_at(&m->held, ask->arena, &lines, sizeof lines);
    const struct held *found = *kept;
    if (found) return found;
    const struct gw_mullion_wall wall = wall_of(lines);
    struct gw_ask own = *ask;
    struct held *held = *kept = gw_alloc(ask->arena, 1, sizeof *held);
    held->anchors = gw_alloc(ask->arena, lines->n_anchors + 1, sizeof *held->anchors);
    gw_engine_init(&own.engine, ask->model->tables, NULL);
    if (gw_mullion_anchors(held->anchors, &wall, m->room, &own.engine) != GW_OK) held->fault = gw_fault_message(&own);
    return held;
}

bool gw_anchor_holds(struct gw_mullion_anchor *out, struct gw_message *why, struct gw_ask *ask,
                     const struct gw_element *e)
{
    const struct held *held = held_on(ask, e->lines);
    const bool known = !gw_said(&held->fault);
    *out = known ? held->anchors[anchor_in(e)] : (struct gw_mullion_anchor){.piece = 0};
    *why = held->fault;
    return known;
}
