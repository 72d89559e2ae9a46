/* Pressures of a specification: of each wall, zone and part, and what they would be at other effective areas. */
#include "galeward/specify.h"

#include "tables_data.h"

#include <stdlib.h>
#include <string.h>

static bool is_framing(const struct gw_element *e)
{
    return e->kind == GW_MULLION || e->kind == GW_TRANSOM || e->kind == GW_ANCHOR;
}

static bool same_place(const struct gw_element *a, const struct gw_element *b)
{
    return a->zone == b->zone && a->parapet == b->parapet && strcmp(a->wall, b->wall) == 0;
}

static struct gw_specified_pressure *find(struct gw_specification *out, const struct gw_element *e, bool framing)
{
    for (size_t i = out->pressures.n; i-- > 0;) {
        struct gw_specified_pressure *p = &out->pressures.items[i];
        if (p->framing == framing && same_place(p->first, e)) return p;
    }
    return NULL;
}

static struct gw_specified_pressure *find_or_add(struct gw_specification *out, struct gw_ask *ask, size_t *capacity,
                                                 const struct gw_element *e, bool framing)
{
    struct gw_specified_pressure *p = find(out, e, framing);
    if (p) return p;
    out->pressures.items =
        gw_grow(ask->arena, out->pressures.items, out->pressures.n, capacity, sizeof *out->pressures.items);
    p = &out->pressures.items[out->pressures.n++];
    *p = (struct gw_specified_pressure){.first = e,
                                        .framing = framing,
                                        .bottom = e->bottom,
                                        .top = e->top,
                                        .least_area = e->effective_area,
                                        .greatest_area = e->effective_area,
                                        .inward = GW_ABSENT,
                                        .outward = GW_ABSENT,
                                        .inward_asd = GW_ABSENT,
                                        .outward_asd = GW_ABSENT};
    return p;
}

/* With who says it. */
static void take_greater(double *most, struct gw_pressure_source *by, double pa, const struct gw_pressure_source *own)
{
    if (!gw_given(pa) || (gw_given(*most) && *most >= fmax(pa, 0))) return;
    *most = fmax(pa, 0);
    *by = *own;
}

/* fmax and fmin leave out what is absent. */
static void take(struct gw_specified_pressure *p, const struct gw_element *e)
{
    p->count += e->count;
    p->bottom = fmin(p->bottom, e->bottom);
    p->top = fmax(p->top, e->top);
    p->least_area = fmin(p->least_area, e->effective_area);
    p->greatest_area = fmax(p->greatest_area, e->effective_area);
    if (e->outside) return;
    take_greater(&p->inward, &p->inward_by, e->inward.pa, &e->inward_by);
    take_greater(&p->outward, &p->outward_by, -e->outward.pa, &e->outward_by);
    p->inward_asd = fmax(p->inward_asd, fmax(e->inward_asd.pa, 0));
    p->outward_asd = fmax(p->outward_asd, fmax(-e->outward_asd.pa, 0));
}

/* The element at another area, as the method or the project's own table has it. */
static void take_at(struct gw_area_pressure *a, const struct gw_model *model, const struct gw_element *e)
{
    struct gw_element at = *e;
    at.effective_area = a->area;
    if (e->outside || gw_takeoff_again(model, &at) != GW_OK) return;
    take_greater(&a->inward, &a->inward_by, at.inward.pa, &at.inward_by);
    take_greater(&a->outward, &a->outward_by, -at.outward.pa, &at.outward_by);
    a->inward_asd = fmax(a->inward_asd, fmax(at.inward_asd.pa, 0));
    a->outward_asd = fmax(a->outward_asd, fmax(-at.outward_asd.pa, 0));
}

static bool belongs(const struct gw_specified_pressure *p, const struct gw_element *e)
{
    return (p->framing ? is_framing(e) : e->kind == GW_LITE) && same_place(p->first, e);
}

static void find_areas(struct gw_specified_pressure *p, struct gw_ask *ask)
{
    const struct gw_tables *tables = ask->model->tables;
    p->areas.items = gw_alloc(ask->arena, GW_N_AREA_STEP, sizeof *p->areas.items);
    p->areas.n = GW_N_AREA_STEP;
    for (size_t k = 0; k < GW_N_AREA_STEP; k++) {
        gw_used_add(&ask->engine.used, &tables->area_step[k].row);
        p->areas.items[k] = (struct gw_area_pressure){.area = tables->area_step[k].area_m2,
                                                      .inward = GW_ABSENT,
                                                      .outward = GW_ABSENT,
                                                      .inward_asd = GW_ABSENT,
                                                      .outward_asd = GW_ABSENT};
    }
    for (size_t i = 0; i < ask->takeoff->elements.n; i++) {
        const struct gw_element *e = &ask->takeoff->elements.items[i];
        if (!belongs(p, e)) continue;
        for (size_t k = 0; k < p->areas.n; k++) take_at(&p->areas.items[k], ask->model, e);
    }
}

/* By wall, as the take-off has them; below the roof line first, lites before framing, zone 4 before 5. */
static int by_place(const void *left, const void *right)
{
    const struct gw_specified_pressure *a = left, *b = right;
    const struct gw_element *x = a->first, *y = b->first;
    if (x->grid->elevation != y->grid->elevation) return x->grid->elevation < y->grid->elevation ? -1 : 1;
    if (x->parapet != y->parapet) return x->parapet ? 1 : -1;
    if (a->framing != b->framing) return a->framing ? 1 : -1;
    return (x->zone > y->zone) - (x->zone < y->zone);
}

/* Lites; then framing above the roof line, which takes both skins at once, and where no lite stands. */
void gw_specify_pressures(struct gw_specification *out, struct gw_ask *ask)
{
    const struct gw_takeoff *t = ask->takeoff;
    size_t capacity = 0;
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind == GW_LITE) take(find_or_add(out, ask, &capacity, e, false), e);
    }
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (is_framing(e) && (e->parapet || !find(out, e, false))) take(find_or_add(out, ask, &capacity, e, true), e);
    }
    if (out->pressures.n) qsort(out->pressures.items, out->pressures.n, sizeof *out->pressures.items, by_place);
    for (size_t i = 0; i < out->pressures.n; i++) find_areas(&out->pressures.items[i], ask);
}

/* What is open ----------------------------------------------------------------------------------------------------- */

static bool same_question(const struct gw_open_question *q, const char *check, const struct gw_message *said)
{
    return strcmp(q->check, check) == 0 && gw_message_same(&q->question, said);
}

static void ask_once(struct gw_specification *out, struct gw_ask *ask, size_t *capacity,
                     const struct gw_open_question *question)
{
    for (size_t i = out->questions.n; i-- > 0;) {
        if (!same_question(&out->questions.items[i], question->check, &question->question)) continue;
        out->questions.items[i].places += question->places;
        return;
    }
    out->questions.items =
        gw_grow(ask->arena, out->questions.items, out->questions.n, capacity, sizeof *out->questions.items);
    out->questions.items[out->questions.n++] = *question;
}

static void ask_writer(struct gw_specification *out, struct gw_ask *ask, size_t *capacity, const char *check,
                       const char *question)
{
    ask_once(out, ask, capacity, &(struct gw_open_question){check, "project", GW_PLAINLY(question), 1});
}

/* Where the wind is not known no share of it is taken, and its walls ask for themselves. */
static void ask_for_water(struct gw_specification *out, struct gw_ask *ask, size_t *capacity)
{
    const struct gw_judgement *j = &out->answer->judgement;
    bool known = false, unknown = false;
    for (size_t i = 0; i < j->demands.n; i++) {
        if (strcmp(j->demands.items[i].check->id, "water") != 0) continue;
        known = known || j->demands.items[i].state == GW_ASKED;
        unknown = unknown || j->demands.items[i].state == GW_NOT_KNOWN;
    }
    if (!known && unknown) return;
    ask_writer(out, ask, capacity, "water",
               unknown ? "which test pressure? Where the wind is known its usual share is taken (requirements: water)"
                       : "which test pressure? The usual share of the wind pressure is taken (requirements: water)");
}

/* What the writer alone decides, where the project does not say it. */
static void writers_choices(struct gw_specification *out, struct gw_ask *ask, size_t *capacity)
{
    const struct gw_requirements *r = ask->model->project.requirements;
    if (!r || !r->structural || !r->structural->evidence.n)
        ask_writer(out, ask, capacity, "structural",
                   "is a test asked for, or does a calculation count too? Without a word either counts (requirements: "
                   "structural: evidence)");
    if (!r || !r->air)
        ask_writer(out, ask, capacity, "air",
                   "which leakage at which pressure? The usual limit is taken (requirements: air)");
    if (!r || !r->water || !gw_given(r->water->pressure)) ask_for_water(out, ask, capacity);
    if (!r || !r->water || r->water->dynamic == GW_UNSAID)
        ask_writer(out, ask, capacity, "water", "is the dynamic test asked for too? (requirements: water: dynamic)");
    for (size_t i = 0; i < out->set.requires.n; i++) {
        const struct gw_required *row = &out->set.requires.items[i];
        if (row->name && !row->test)
            ask_writer(out, ask, capacity, "other",
                       gw_format(ask->arena, "by which test or calculation is %s shown? None is named for it (%s)",
                                 row->name, row->id));
    }
}

void gw_specify_questions(struct gw_specification *out, struct gw_ask *ask)
{
    const struct gw_judgement *j = &out->answer->judgement;
    size_t capacity = 0;
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (d->state != GW_NOT_KNOWN) continue;
        ask_once(out, ask, &capacity,
                 &(struct gw_open_question){d->check->id, d->where, d->message, d->element ? d->element->count : 1});
    }
    writers_choices(out, ask, &capacity);
}
