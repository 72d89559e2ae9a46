/* Which verdicts recalled numbers decide. A moved number may move the edge strips and so the groups of elements: what
 * is compared is the verdict at each place, not at each group. */
#include "galeward/sensitivity.h"
#include "galeward/plan.h"

#include <string.h>

static const double SHARES[] = {0.9, 1.1};

/* The judgement before any move, by candidate and demand, and the demands by check and element. */
struct base {
    const struct gw_answer *answer;
    const struct gw_finding **findings; /* [system * n_demands + demand] */
    unsigned *of_element;               /* [check * n_elements + element]: its demand and one; 0: none */
    size_t n_demands, n_elements;
};

struct moving {
    struct gw_sensitivity *out;
    struct base base;
    struct gw_arena *arena, *scratch;
    struct gw_tables *tables;
    const struct gw_row *row;
    const struct gw_column *column;
    double share;
    size_t first; /* of this move's flips */
};

/* A project on moved tables. */
struct trial {
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_judgement judgement;
};

static size_t index_of(const struct gw_check *check)
{
    size_t n, i = 0;
    const struct gw_check *const *list = gw_check_list(&n);
    while (i < n && list[i] != check) i++;
    return i;
}

static void open_base(struct base *b, const struct gw_answer *answer, struct gw_arena *arena)
{
    const struct gw_judgement *j = &answer->judgement;
    size_t n_checks;
    gw_check_list(&n_checks);
    *b = (struct base){.answer = answer, .n_demands = j->demands.n, .n_elements = answer->takeoff->elements.n};
    b->findings = gw_alloc(arena, answer->model->systems.n * b->n_demands + 1, sizeof(const struct gw_finding *));
    b->of_element = gw_alloc(arena, n_checks * b->n_elements + 1, sizeof *b->of_element);
    for (size_t i = 0; i < j->findings.n; i++) {
        const struct gw_finding *f = &j->findings.items[i];
        const size_t system = (size_t)(f->candidate - answer->model->systems.items);
        b->findings[system * b->n_demands + (size_t)(f->demand - j->demands.items)] = f;
    }
    for (size_t i = 0; i < b->n_demands; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (d->element) b->of_element[index_of(d->check) * b->n_elements + d->element->index] = (unsigned)i + 1;
    }
}

/* Flips -------------------------------------------------------------------------------------------------------------
 */

static const char *name_of(const struct gw_demand *d) { return d->name ? d->name : d->check->id; }

static bool same_flip(const struct gw_flip *flip, const struct gw_finding *before, enum gw_verdict is)
{
    return flip->was == before->verdict && flip->is == is && flip->candidate == before->candidate->name &&
           strcmp(flip->check, name_of(before->demand)) == 0;
}

static void compare(struct moving *m, const struct gw_finding *before, const struct gw_finding *after, long count)
{
    struct gw_sensitivity *out = m->out;
    if (before->verdict == after->verdict) return;
    for (size_t i = m->first; i < out->flips.n; i++) {
        if (!same_flip(&out->flips.items[i], before, after->verdict)) continue;
        out->flips.items[i].count += count;
        return;
    }
    out->flips.items =
        gw_grow(m->arena, out->flips.items, out->flips.n, &out->flips_capacity, sizeof *out->flips.items);
    out->flips.items[out->flips.n++] = (struct gw_flip){.row = m->row,
                                                        .column = m->column->name,
                                                        .share = m->share,
                                                        .candidate = before->candidate->name,
                                                        .check = name_of(before->demand),
                                                        .where = before->demand->where,
                                                        .count = count,
                                                        .was = before->verdict,
                                                        .is = after->verdict,
                                                        .was_utilization = before->utilization,
                                                        .utilization = after->utilization};
}

/* Where the element stood: at a place of its wall; an opening of a schedule by its id. */
static const struct gw_element *element_before(const struct gw_takeoff *before, const struct gw_element *e,
                                               size_t member)
{
    const struct gw_grid_axis *axis = e->grid->layers[e->sort].axis;
    if (e->grid->opening) return gw_takeoff_find(before, e->id);
    return gw_takeoff_held(before, before->grids.items[e->grid->index], e->sort,
                           axis->members[axis->first[e->place_class] + member], (e->bottom + e->top) / 2);
}

static const struct gw_finding *finding_before(const struct base *b, const struct gw_finding *after, size_t system,
                                               const struct gw_element *e)
{
    const unsigned demand = e ? b->of_element[index_of(after->demand->check) * b->n_elements + e->index] : 0;
    return demand ? b->findings[system * b->n_demands + demand - 1] : NULL;
}

static void compare_element(struct moving *m, const struct gw_finding *after, size_t system)
{
    const struct gw_element *e = after->demand->element;
    const struct gw_grid_axis *axis = e->grid->layers[e->sort].axis;
    const size_t n = e->grid->opening ? 1 : axis->first[e->place_class + 1] - axis->first[e->place_class];
    for (size_t i = 0; i < n; i++) {
        const struct gw_element *place = element_before(m->base.answer->takeoff, e, i);
        const struct gw_finding *before = finding_before(&m->base, after, system, place);
        if (before) compare(m, before, after, e->count / (long)n);
        else m->out->unmatched++;
    }
}

static bool same_text(const char *a, const char *b) { return a == b || (a && b && strcmp(a, b) == 0); }

/* Of a wall, a lite type, a name, the project. */
static void compare_other(struct moving *m, const struct gw_finding *after, size_t system)
{
    const struct base *b = &m->base;
    const struct gw_demand *d = after->demand;
    for (size_t i = 0; i < b->n_demands; i++) {
        const struct gw_demand *x = &b->answer->judgement.demands.items[i];
        const struct gw_finding *before = b->findings[system * b->n_demands + i];
        if (x->element || x->check != d->check || !before) continue;
        if (!same_text(x->where, d->where) || !same_text(x->name, d->name) || x->component != d->component) continue;
        compare(m, before, after, 1);
        return;
    }
    m->out->unmatched++;
}

static void compare_all(struct moving *m, const struct trial *t)
{
    for (size_t i = 0; i < t->judgement.findings.n; i++) {
        const struct gw_finding *f = &t->judgement.findings.items[i];
        const size_t system = (size_t)(f->candidate - t->model.systems.items);
        if (f->demand->element) compare_element(m, f, system);
        else compare_other(m, f, system);
    }
}

/* Moves -------------------------------------------------------------------------------------------------------------
 */

static void refused(struct moving *m, const struct gw_diags *diags)
{
    struct gw_sensitivity *out = m->out;
    const char *why = "refused";
    for (size_t i = diags->n; i-- > 0;)
        if (diags->items[i].severity == GW_ERROR) why = diags->items[i].message;
    out->unmoved.items =
        gw_grow(m->arena, out->unmoved.items, out->unmoved.n, &out->unmoved_capacity, sizeof *out->unmoved.items);
    out->unmoved.items[out->unmoved.n++] =
        (struct gw_unmoved){m->row, m->column->name, gw_strdup(m->arena, why), m->share};
}

static void try_it(struct moving *m)
{
    struct trial *t = gw_alloc(m->scratch, 1, sizeof *t);
    struct gw_plans *plans;
    gw_diags_init(&t->diags, m->scratch);
    m->first = m->out->flips.n;
    if (gw_model_reload(&t->model, m->base.answer->model, m->scratch, &t->diags, m->tables) &&
        gw_takeoff_run(&t->takeoff, &t->model, m->scratch, &t->diags) &&
        gw_plans_read(&plans, &t->model, &t->takeoff, m->scratch)) {
        gw_ask_init(&t->ask, &t->model, &t->takeoff, m->scratch);
        t->ask.plans = plans;
        gw_judge(&t->judgement, &t->ask);
        compare_all(m, t);
    } else {
        refused(m, &t->diags);
    }
    gw_arena_rewind(m->scratch);
}

/* In the table's own unit: a tenth of 50 degrees Celsius is 5 kelvin. */
static double moved(const struct gw_column *column, double value, double share)
{
    const char *name = column->unit ? column->unit : "";
    const struct gw_unit *unit = gw_unit_find(gw_units_standard(), column->dim, name, strlen(name));
    if (!unit) return value * share;
    return (value - unit->offset) / unit->factor * share * unit->factor + unit->offset;
}

static bool is_moved(const struct gw_column *column, const struct gw_row *row)
{
    if (column->type != GW_COLUMN_NUMBER || column->key) return false;
    const double value = *(const double *)(const void *)((const char *)row + column->offset);
    return gw_given(value) && fabs(value) > 0;
}

static void move(struct moving *m)
{
    const char *standard = (const char *)gw_tables_standard(), *cell = (const char *)m->row + m->column->offset;
    double *at = (double *)(void *)((char *)m->tables + (cell - standard));
    const double value = *at;
    for (size_t i = 0; i < sizeof SHARES / sizeof *SHARES; i++) {
        m->share = SHARES[i];
        *at = moved(m->column, value, m->share);
        try_it(m);
    }
    *at = value;
}

static void move_row(struct moving *m)
{
    const struct gw_table *table = gw_table_find(m->row->table);
    long n = 0;
    for (size_t c = 0; c < table->n_columns; c++) {
        m->column = &table->columns[c];
        if (!is_moved(m->column, m->row)) continue;
        move(m);
        n++;
    }
    m->out->rows += n > 0;
    m->out->words += n == 0;
    m->out->values += n;
}

void gw_find_sensitivity(struct gw_sensitivity *out, const struct gw_answer *answer, struct gw_arena *arena,
                         struct gw_arena *scratch)
{
    struct gw_used behind = {.words = {0}};
    struct moving m = {.out = out, .arena = arena, .scratch = scratch, .tables = gw_alloc(arena, 1, gw_tables_size())};
    *out = (struct gw_sensitivity){.project = answer->model->project.project->name};
    memcpy(m.tables, gw_tables_standard(), gw_tables_size());
    open_base(&m.base, answer, arena);
    for (size_t i = 0; i < answer->judgement.findings.n; i++) {
        const struct gw_finding *f = &answer->judgement.findings.items[i];
        if (f->verdict != GW_NOT_REQUIRED) gw_used_merge(&behind, f->used);
    }
    for (unsigned i = 0; gw_used_next(&behind, &i); i++) {
        m.row = gw_table_row_at(gw_tables_standard(), i);
        const bool corrected = gw_table_row_at(answer->model->tables, i)->source != m.row->source;
        if (m.row->basis == GW_MEMORY && !corrected) move_row(&m);
    }
}
