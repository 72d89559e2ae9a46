/* What every result carries besides its figures, and demands that ask the same in one group. */
#include "report/results.h"

#include "base/fields.h"

#include <string.h>

static const struct gw_assumption *correction(struct gw_arena *arena, const struct gw_correction *c)
{
    struct gw_assumption *out = gw_alloc(arena, 1, sizeof *out);
    *out = (struct gw_assumption){"assume", gw_format(arena, "correction to the tables: %s/%s %s = %s: %s (%s)",
                                                      c->table, c->row, c->column, c->value, c->reason, c->by)};
    return out;
}

static void add_assumptions(struct gw_results *out, struct gw_arena *arena)
{
    const struct gw_assumptions *lists[] = {&out->model->assumptions, &out->takeoff->assumptions};
    size_t corrections = out->model->project.assume.n, n = corrections + lists[0]->n + lists[1]->n;
    out->assumptions.items = gw_alloc(arena, n + 1, sizeof(const struct gw_assumption *));
    for (size_t i = 0; i < corrections; i++)
        out->assumptions.items[out->assumptions.n++] = correction(arena, &out->model->project.assume.items[i]);
    for (size_t k = 0; k < COUNT(lists); k++)
        for (size_t i = 0; i < lists[k]->n; i++) out->assumptions.items[out->assumptions.n++] = &lists[k]->items[i];
}

static void add_warnings(struct gw_results *out, struct gw_arena *arena)
{
    const struct gw_diags *diags = out->model->diags;
    out->warnings.items = gw_alloc(arena, diags->n + 1, sizeof(const struct gw_diag *));
    for (size_t i = 0; i < diags->n; i++)
        if (diags->items[i].severity == GW_WARNING) out->warnings.items[out->warnings.n++] = &diags->items[i];
}

/* But for the last bits of a double. */
static bool same_number(double a, double b)
{
    if (!gw_given(a) || !gw_given(b)) return gw_given(a) == gw_given(b);
    return fabs(a - b) <= 1e-12 * fmax(fabs(a), fabs(b));
}

/* Of elements: what is asked is the same. */
static bool alike(const struct gw_demand *a, const struct gw_demand *b)
{
    bool same = a->check == b->check && a->state == b->state && a->terms.n == b->terms.n;
    for (unsigned i = 0; i < a->terms.n && same; i++)
        same = gw_term_of(a, i)->dim == gw_term_of(b, i)->dim &&
               same_number(gw_term_of(a, i)->value, gw_term_of(b, i)->value);
    return same && gw_message_same(&a->message, &b->message);
}

static struct gw_demand_group *new_group(struct gw_results *out, struct gw_arena *arena, size_t *capacity,
                                         const struct gw_demand *d)
{
    out->demands.items = gw_grow(arena, out->demands.items, out->demands.n, capacity, sizeof *out->demands.items);
    struct gw_demand_group *group = &out->demands.items[out->demands.n++];
    *group = (struct gw_demand_group){.demand = d};
    return group;
}

/* A check's demands follow each other: the groups of this check begin at `from`. */
static struct gw_demand_group *group_of(struct gw_results *out, struct gw_arena *arena, size_t *capacity, size_t from,
                                        const struct gw_demand *d)
{
    for (size_t i = out->demands.n; i-- > from;)
        if (alike(out->demands.items[i].demand, d)) return &out->demands.items[i];
    return new_group(out, arena, capacity, d);
}

static void add_element(struct gw_demand_group *group, struct gw_arena *arena, const char *id)
{
    group->elements.items =
        gw_grow(arena, group->elements.items, group->elements.n, &group->capacity, sizeof(const char *));
    group->elements.items[group->elements.n++] = id;
}

/* What the element itself does not say: all but its pressures. */
static bool is_more_than_pressure(const struct gw_demand *d) { return !d->element || gw_said(&d->summary); }

static void group_demands(struct gw_results *out, struct gw_arena *arena)
{
    size_t capacity = 0, from = 0;
    const struct gw_check *check = NULL;
    for (size_t i = 0; i < out->answer->judgement.demands.n; i++) {
        const struct gw_demand *d = &out->answer->judgement.demands.items[i];
        if (!is_more_than_pressure(d)) continue;
        if (d->check != check) from = out->demands.n;
        check = d->check;
        if (d->element) add_element(group_of(out, arena, &capacity, from, d), arena, d->element->id);
        else new_group(out, arena, &capacity, d);
    }
}

void gw_results_of(struct gw_results *out, struct gw_arena *arena, const struct gw_answer *answer, enum gw_units shown)
{
    *out = (struct gw_results){.model = answer->model, .takeoff = answer->takeoff, .answer = answer, .shown = shown};
    add_assumptions(out, arena);
    add_warnings(out, arena);
    out->mock_up.items = answer->mock_up.steps;
    out->mock_up.n = answer->mock_up.n;
    group_demands(out, arena);
}
