/* The mullions of a wall as beams: elements to the stretches of the frame engine, its answers kept by element. */
#include "judge_internal.h"

#include "galeward/mullion_line.h"

#include <string.h>

static const double HAIR = 1e-6; /* m */

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

static struct gw_beam_result *room_of(struct gw_judging *j)
{
    if (!j->beam) j->beam = gw_alloc(j->model->arena, 1, sizeof *j->beam);
    return j->beam;
}

/* Stretches ----------------------------------------------------------------------------------------------------------
 */

/* Another stretch of the same mullions. */
static bool same_mullion(const struct gw_element *a, const struct gw_element *b)
{
    return a->kind == b->kind && a->zone == b->zone && a->corner == b->corner && fabs(a->width - b->width) < HAIR &&
           strcmp(a->mark, b->mark) == 0;
}

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

/* The mullions of one wall that are loaded alike. */
struct alike {
    struct gw_mullion_wall wall;
    struct gw_mullion_stretch *stretches;
    const struct gw_element **elements;
    size_t n;
};

struct gw_wall_elements gw_elements_beside(const struct gw_judging *j, const struct gw_element *e)
{
    const struct gw_element *first = &j->takeoff->elements.items[e->grid->first_element];
    return (struct gw_wall_elements){first, first + e->grid->n_elements};
}

static void find_alike(struct alike *out, struct gw_judging *j, const struct gw_element *e)
{
    const struct gw_wall_elements beside = gw_elements_beside(j, e);
    *out = (struct alike){.wall = wall_of(e->lines)};
    for (const struct gw_element *o = beside.from; o < beside.end; o++) out->n += same_mullion(o, e);
    out->stretches = gw_alloc(j->model->arena, out->n, sizeof *out->stretches);
    out->elements = gw_alloc(j->model->arena, out->n, sizeof(const struct gw_element *));
    out->n = 0;
    for (const struct gw_element *o = beside.from; o < beside.end; o++) {
        if (!same_mullion(o, e)) continue;
        out->stretches[out->n] = stretch_of(o);
        out->elements[out->n++] = o;
    }
}

static const char *unknown_text(const struct gw_judging *j, const struct gw_element *o)
{
    return gw_format(j->model->arena,
                     "%s, and its piece of mullion reaches to here; ask the structural "
                     "engineer for the pressure at %s",
                     o->outside, o->id);
}

static void keep(struct gw_stretch *s, const struct gw_judging *j, const struct alike *alike, size_t i,
                 const struct gw_mullion_forces *forces, const char *fault)
{
    *s = (struct gw_stretch){.forces = *forces, .direction = "", .fault = fault};
    if (!fault && forces->unknown) s->fault = unknown_text(j, alike->elements[forces->unknown - 1]);
    if (forces->pattern) s->direction = gw_mullion_outward(forces->pattern) ? "outward" : "inward";
    j->stretches[alike->elements[i] - j->takeoff->elements.items] = s;
}

static void find_stretches(struct gw_judging *j, const struct gw_element *e)
{
    struct gw_engine engine;
    struct alike alike;
    find_alike(&alike, j, e);
    struct gw_mullion_forces *forces = gw_alloc(j->model->arena, alike.n, sizeof *forces);
    struct gw_stretch *kept = gw_alloc(j->model->arena, alike.n, sizeof *kept);
    gw_engine_init(&engine, j->model->tables, NULL);
    enum gw_status status = gw_mullion_line(forces, &alike.wall, alike.stretches, alike.n, room_of(j), &engine);
    const char *fault = status == GW_OK ? NULL : gw_fault_of(j, &engine);
    for (size_t i = 0; i < alike.n; i++) keep(&kept[i], j, &alike, i, &forces[i], fault);
}

const struct gw_stretch *gw_stretch_of(struct gw_judging *j, const struct gw_element *e)
{
    const size_t at = (size_t)(e - j->takeoff->elements.items);
    if (!j->stretches)
        j->stretches = gw_alloc(j->model->arena, j->takeoff->elements.n, sizeof(const struct gw_stretch *));
    if (!j->stretches[at]) find_stretches(j, e);
    return j->stretches[at];
}

/* The same once more with its derivation: the direction and pattern of the largest moment. */
void gw_stretch_derive(struct gw_judging *j, const struct gw_element *e)
{
    struct gw_engine engine;
    struct alike alike;
    const struct gw_stretch *s = gw_stretch_of(j, e);
    size_t i = 0;
    if (!j->trace || s->fault) return;
    find_alike(&alike, j, e);
    while (alike.elements[i] != e) i++;
    gw_engine_init(&engine, j->model->tables, j->trace);
    gw_mullion_derive(&s->forces, &alike.wall, alike.stretches, alike.n, i, room_of(j), &engine);
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

struct gw_mullion_piece gw_longest_piece(const struct gw_wall_lines *l)
{
    const struct gw_mullion_wall wall = wall_of(l);
    struct gw_mullion_piece longest;
    gw_mullion_longest(&longest, &wall, l->floors, l->n_floors);
    return longest;
}

struct gw_wall_anchors {
    const struct gw_wall_lines *lines;
    struct gw_mullion_anchor of[GW_BEAM_SUPPORTS];
    const char *fault;
};

/* Elements of a wall stand together in the list, so one wall is kept. */
const char *gw_anchor_holds(struct gw_mullion_anchor *out, struct gw_judging *j, const struct gw_element *e)
{
    if (!j->anchors) j->anchors = gw_alloc(j->model->arena, 1, sizeof *j->anchors);
    struct gw_wall_anchors *a = j->anchors;
    const struct gw_mullion_wall wall = wall_of(e->lines);
    if (a->lines != e->lines) {
        struct gw_engine engine;
        gw_engine_init(&engine, j->model->tables, NULL);
        a->lines = e->lines;
        a->fault = gw_mullion_anchors(a->of, &wall, room_of(j), &engine) == GW_OK ? NULL : gw_fault_of(j, &engine);
    }
    const size_t at = anchor_in(e);
    const double height = e->lines->anchors[at];
    *out = a->fault ? (struct gw_mullion_anchor){.piece = gw_mullion_piece_at(&wall, height)} : a->of[at];
    return a->fault;
}
