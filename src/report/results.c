/* What every result carries besides its figures, and demands that ask the same in one group. */
#include "report/results.h"
#include "report/page.h"

#include "base/fields.h"

#include <string.h>

static const struct gw_assumption *correction(struct gw_arena *arena, const struct gw_correction *c)
{
    struct gw_assumption *out = gw_alloc(arena, 1, sizeof *out);
    *out = (struct gw_assumption){.where = "assume",
                                  .text = GW_SAY(arena, "correction to the tables: {}/{} {} = {}: {} ({})",
                                                 gw_of_text(c->table), gw_of_text(c->row), gw_of_text(c->column),
                                                 gw_of_text(c->value), gw_of_text(c->reason), gw_of_text(c->by)),
                                  .decides = true};
    return out;
}

static void add_assumptions(struct gw_results *out, struct gw_arena *arena)
{
    const struct gw_assumptions *lists[] = {&out->answer->model->assumptions, &out->answer->takeoff->assumptions};
    const struct gw_project *project = &out->answer->model->project;
    size_t corrections = project->assume.n, n = corrections + lists[0]->n + lists[1]->n;
    out->assumptions.items = gw_alloc(arena, n + 1, sizeof(const struct gw_assumption *));
    for (size_t i = 0; i < corrections; i++)
        out->assumptions.items[out->assumptions.n++] = correction(arena, &project->assume.items[i]);
    for (size_t k = 0; k < COUNT(lists); k++)
        for (size_t i = 0; i < lists[k]->n; i++) out->assumptions.items[out->assumptions.n++] = &lists[k]->items[i];
}

/* A remark of the take-off was told in the units of the file: again in the reader's. */
static const struct gw_diag *as_shown(const struct gw_results *out, struct gw_arena *arena, const struct gw_diag *d)
{
    const struct gw_takeoff *t = out->answer->takeoff;
    const enum gw_units file = out->answer->model->project.units;
    for (size_t i = 0; i < t->remarks.n; i++) {
        const struct gw_message *said = &t->remarks.items[i];
        if (strcmp(d->message, gw_message_text(arena, said, file ? file : GW_US)) != 0) continue;
        struct gw_diag *again = gw_alloc(arena, 1, sizeof *again);
        *again = *d;
        again->message = gw_message_text(arena, said, out->shown);
        return again;
    }
    return d;
}

/* What judging found, as a warning of the file. */
static const struct gw_diag *below_site(const struct gw_results *out, struct gw_arena *arena,
                                        const struct gw_below_site *below)
{
    struct gw_diag *d = gw_alloc(arena, 1, sizeof *d);
    *d = (struct gw_diag){.severity = GW_WARNING,
                          .code = "below_site",
                          .key = below->row ? "requires" : "requirements",
                          .message = gw_message_text(arena, &below->said, out->shown)};
    if (!below->node) return d;
    d->source = below->node->source;
    d->line = below->node->line;
    d->column = below->node->column;
    return d;
}

static void add_warnings(struct gw_results *out, struct gw_arena *arena)
{
    const struct gw_diags *diags = out->answer->model->diags;
    const struct gw_answer *answer = out->answer;
    out->warnings.items = gw_alloc(arena, diags->n + answer->below_site.n + 1, sizeof(const struct gw_diag *));
    for (size_t i = 0; i < answer->below_site.n; i++)
        out->warnings.items[out->warnings.n++] = below_site(out, arena, &answer->below_site.items[i]);
    for (size_t i = 0; i < diags->n; i++)
        if (diags->items[i].severity == GW_WARNING)
            out->warnings.items[out->warnings.n++] = as_shown(out, arena, &diags->items[i]);
}

/* But for the last bits of a double. */
static bool same_number(double a, double b)
{
    if (!gw_given(a) || !gw_given(b)) return gw_given(a) == gw_given(b);
    return fabs(a - b) <= 1e-12 * fmax(fabs(a), fabs(b));
}

static bool same_terms(const struct gw_demand *a, const struct gw_demand *b)
{
    if (a->terms.n != b->terms.n) return false;
    for (size_t i = 0; i < a->terms.n; i++) {
        const struct gw_term *x = &a->terms.items[i], *y = &b->terms.items[i];
        if (x->dim != y->dim || x->direction != y->direction || !same_number(x->value, y->value) ||
            !same_number(x->response, y->response))
            return false;
    }
    return true;
}

/* Of elements: what is asked is the same, and reads the same; it may differ in the last bits of a double. */
static bool alike(const struct gw_demand_group *group, const struct gw_demand *d, const char *words)
{
    const struct gw_demand *first = group->demand;
    return first->check == d->check && first->state == d->state && same_terms(first, d) &&
           strcmp(group->words, words) == 0;
}

static struct gw_demand_group *new_group(struct gw_results *out, struct gw_arena *arena, size_t *capacity,
                                         const struct gw_demand *d, const char *words)
{
    out->demands.items = gw_grow(arena, out->demands.items, out->demands.n, capacity, sizeof *out->demands.items);
    struct gw_demand_group *group = &out->demands.items[out->demands.n++];
    *group = (struct gw_demand_group){.demand = d, .words = words};
    return group;
}

/* A check's demands follow each other: the groups of this check begin at `from`. Like ones lie near each other, so a
 * few are looked at: those that were missed have an entry of their own. */
static struct gw_demand_group *group_of(struct gw_results *out, struct gw_arena *arena, size_t *capacity, size_t from,
                                        const struct gw_demand *d)
{
    enum { LOOKED_AT = 32 };
    const char *words = gw_message_text(arena, &d->message, out->shown);
    for (size_t i = out->demands.n; i-- > from && out->demands.n - i <= LOOKED_AT;)
        if (alike(&out->demands.items[i], d, words)) return &out->demands.items[i];
    return new_group(out, arena, capacity, d, words);
}

static void add_element(struct gw_demand_group *group, struct gw_arena *arena, const char *id)
{
    group->elements.items =
        gw_grow(arena, group->elements.items, group->elements.n, &group->capacity, sizeof(const char *));
    group->elements.items[group->elements.n++] = id;
}

/* The element itself says its pressures. */
static bool is_more_than_pressure(const struct gw_demand *d)
{
    if (!d->element || d->hazard || gw_said(&d->summary) || (d->state != GW_ASKED && gw_said(&d->message))) return true;
    for (size_t i = 0; i < d->terms.n; i++)
        if (d->terms.items[i].dim != GW_PRESSURE || !d->terms.items[i].direction) return true;
    return false;
}

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
        else new_group(out, arena, &capacity, d, "");
    }
}

static void add_rows(struct gw_results *out, struct gw_arena *arena)
{
    const struct gw_judgement *judgement = &out->answer->judgement;
    size_t capacity = 0;
    for (size_t i = 0; i < out->answer->takeoff->elements.n; i++)
        gw_used_merge(&out->used, &out->answer->takeoff->elements.items[i].used);
    for (size_t i = 0; i < judgement->demands.n; i++) gw_used_merge(&out->used, judgement->demands.items[i].used);
    for (size_t i = 0; i < judgement->findings.n; i++) gw_used_merge(&out->used, judgement->findings.items[i].used);
    for (unsigned i = 0; gw_used_next(&out->used, &i); i++) {
        const struct gw_row *row = gw_table_row_at(out->answer->model->tables, i);
        if (!gw_is_weak(row->basis)) continue;
        out->weak.items = gw_grow(arena, out->weak.items, out->weak.n, &capacity, sizeof(const struct gw_row *));
        out->weak.items[out->weak.n++] = row;
    }
}

void gw_results_of(struct gw_results *out, struct gw_arena *arena, const struct gw_answer *answer, enum gw_units shown)
{
    *out = (struct gw_results){.answer = answer, .shown = shown};
    out->mock_up.items = answer->mock_up.steps;
    out->mock_up.n = answer->mock_up.n;
    add_assumptions(out, arena);
    add_warnings(out, arena);
    group_demands(out, arena);
    add_rows(out, arena);
    gw_pictures_of(&out->pictures, arena, out);
}
