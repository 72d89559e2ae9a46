/* The performance requirements of a project as rows of a requirement set. */
#include "galeward/specify.h"

#include "base/tolerance.h"
#include "tables_data.h"

#include <string.h>

/* Rows ------------------------------------------------------------------------------------------------------------ */

struct rows {
    struct gw_specification *out;
    struct gw_ask *ask;
    size_t capacity;
};

static struct gw_required *add_row(struct rows *rows, const char *check)
{
    struct gw_requirement_set *set = &rows->out->set;
    set->requires.items =
        gw_grow(rows->ask->arena, set->requires.items, set->requires.n, &rows->capacity, sizeof *set->requires.items);
    struct gw_required *row = &set->requires.items[set->requires.n++];
    gw_record_clear(&gw_required_record, row);
    row->check = check;
    return row;
}

/* A single item as a list. */
static void submit(struct gw_required *row, struct gw_ask *ask, const char *what)
{
    row->submit.items = gw_alloc(ask->arena, 1, sizeof(const char *));
    row->submit.items[0] = what;
    row->submit.n = 1;
}

/* The project's own rule, or none: a set asks for no other evidence than the project does. */
static void copy_evidence(struct gw_required *row, int *items, size_t n)
{
    row->evidence.items = items;
    row->evidence.n = n;
}

static bool takes(const struct gw_required *row, enum gw_evidence_rule rule)
{
    for (size_t i = 0; i < row->evidence.n; i++)
        if (row->evidence.items[i] == (int)rule) return true;
    return !row->evidence.n;
}

/* What the evidence is, no less and no more. */
static const char *structural_submit(const struct gw_required *row)
{
    const bool calculation = takes(row, GW_ASKS_CALCULATION), test = takes(row, GW_ASKS_TEST);
    if (!calculation) return "test report";
    if (row->of == GW_SET_FRAMING)
        return test ? "test report, or calculation of framing and anchors" : "calculation of framing and anchors";
    return test ? "test report, or calculation" : "calculation of glass, framing and anchors";
}

static void structural_rows(struct rows *rows)
{
    const struct gw_requirements *r = rows->ask->model->project.requirements;
    for (size_t i = 0; i < rows->out->pressures.n; i++) {
        const struct gw_specified_pressure *p = &rows->out->pressures.items[i];
        const struct gw_element *e = p->first;
        if (!(p->inward_asd > 0) && !(p->outward_asd > 0)) continue;
        struct gw_required *row = add_row(rows, "structural");
        row->wall = e->wall;
        row->zone = e->zone;
        row->part = e->parapet ? GW_ABOVE_ROOF : GW_BELOW_ROOF;
        row->of = p->framing ? GW_SET_FRAMING : GW_SET_OF_UNSET;
        row->inward = p->inward_asd;
        row->outward = p->outward_asd;
        row->level = GW_LEVEL_ASD;
        row->test = gw_check_find("structural")->clause;
        if (r && r->structural) copy_evidence(row, r->structural->evidence.items, r->structural->evidence.n);
        submit(row, rows->ask, structural_submit(row));
    }
}

static bool same(double a, double b) { return fabs(a - b) <= GW_HAIR * fabs(a); }

static bool same_demand(const struct gw_demand *a, const struct gw_demand *b)
{
    return same(gw_term_of(a, 0)->value, gw_term_of(b, 0)->value) && (!gw_given(a->at) || same(a->at, b->at));
}

/* Whether all walls and components are asked for the same. */
static bool alike_everywhere(const struct gw_judgement *j, const struct gw_demand *first)
{
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (d->check == first->check && (d->state != GW_ASKED || !same_demand(first, d))) return false;
    }
    return true;
}

static void set_value(struct gw_required *row, const struct gw_demand *d)
{
    const double value = gw_term_of(d, 0)->value;
    if (strcmp(row->check, "water") == 0) row->pressure = value;
    else row->leakage = value;
    row->at = d->at;
}

static const char *water_test(const struct gw_ask *ask, const struct gw_requirements *r)
{
    const char *steady = gw_check_find("water")->clause;
    const struct gw_mockup_sequence *dynamic = &ask->model->tables->mockup_sequence[GW_ROW_MOCKUP_SEQUENCE_DYNAMIC];
    return r && r->water && r->water->dynamic == GW_YES ? gw_format(ask->arena, "%s, %s", steady, dynamic->method)
                                                        : steady;
}

/* One row where every wall is asked for the same, else one a wall and component. */
static void wall_rows(struct rows *rows, const char *check)
{
    const struct gw_judgement *j = &rows->out->answer->judgement;
    const struct gw_requirements *r = rows->ask->model->project.requirements;
    const bool water = strcmp(check, "water") == 0;
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (strcmp(d->check->id, check) != 0 || d->state != GW_ASKED) continue;
        const bool all = alike_everywhere(j, d);
        struct gw_required *row = add_row(rows, check);
        set_value(row, d);
        row->test = water ? water_test(rows->ask, r) : d->check->clause;
        if (water && r && r->water) copy_evidence(row, r->water->evidence.items, r->water->evidence.n);
        if (!water && r && r->air) copy_evidence(row, r->air->evidence.items, r->air->evidence.n);
        submit(row, rows->ask, "test report, with its joints and the order of its tests");
        if (all) return;
        row->wall = d->where;
        row->component = d->component == GW_FIXED ? GW_COMPONENT_UNSET : d->component;
    }
}

static void named_rows(struct rows *rows)
{
    const struct gw_judgement *j = &rows->out->answer->judgement;
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (!d->name || d->state != GW_ASKED) continue;
        struct gw_required *row = add_row(rows, "other");
        row->name = d->name;
        if (d->at_most) row->at_most = gw_term_of(d, 0)->value;
        else row->at_least = gw_term_of(d, 0)->value;
        submit(row, rows->ask, "report or certificate of the rating");
    }
}

/* Missiles of a wall change with height alone: one row each, with the heights of its lites' lowest edges. */
static struct gw_required *missile_row(struct rows *rows, size_t from, const struct gw_demand *d)
{
    const struct gw_element *e = d->element;
    struct gw_requirement_set *set = &rows->out->set;
    for (size_t i = from; i < set->requires.n; i++) {
        struct gw_required *row = &set->requires.items[i];
        if (strcmp(row->wall, e->wall) == 0 && row->missile == d->hazard->missile &&
            (row->wind_zone == d->hazard->wind_zone || d->hazard->wind_zone == GW_NO_ZONE))
            return row;
    }
    struct gw_required *row = add_row(rows, "debris");
    row->wall = e->wall;
    row->missile = d->hazard->missile;
    if (d->hazard->wind_zone > 0) row->wind_zone = d->hazard->wind_zone;
    row->from = row->to = e->bottom;
    row->test = d->check->clause;
    submit(row, rows->ask, "test report, with missile, cycles, bite and make-up");
    return row;
}

/* The walls agree, each in a row of its own: one row for all of them. */
static void merge_missiles(struct gw_requirement_set *set, size_t from, bool everywhere)
{
    const struct gw_required *first = &set->requires.items[from];
    for (size_t i = from; i < set->requires.n; i++)
        if (set->requires.items[i].missile != first->missile || set->requires.items[i].wind_zone != first->wind_zone)
            return;
    if (!everywhere || from == set->requires.n) return;
    set->requires.n = from + 1;
    set->requires.items[from].wall = NULL;
    set->requires.items[from].from = set->requires.items[from].to = GW_ABSENT;
}

static void debris_rows(struct rows *rows)
{
    const struct gw_judgement *j = &rows->out->answer->judgement;
    const size_t from = rows->out->set.requires.n;
    bool everywhere = true;
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (strcmp(d->check->id, "debris") != 0) continue;
        everywhere = everywhere && d->state == GW_ASKED;
        if (d->state != GW_ASKED) continue;
        struct gw_required *row = missile_row(rows, from, d);
        row->from = fmin(row->from, d->element->bottom);
        row->to = fmax(row->to, d->element->bottom);
    }
    merge_missiles(&rows->out->set, from, everywhere);
}

static void blast_row(struct rows *rows)
{
    const struct gw_judgement *j = &rows->out->answer->judgement;
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (strcmp(d->check->id, "blast") != 0 || d->state != GW_ASKED) continue;
        struct gw_required *row = add_row(rows, "blast");
        row->pressure = d->hazard->blast.pressure;
        row->impulse = d->hazard->blast.impulse;
        row->hazard = rows->ask->model->project.site->blast->hazard;
        row->test = d->check->clause;
        submit(row, rows->ask, "test report, or analysis by a blast specialist");
        return;
    }
}

/* The greatest drift of any story; under the set a lower one keeps its share of it. */
static void drift_row(struct rows *rows)
{
    const struct gw_judgement *j = &rows->out->answer->judgement;
    double greatest = 0;
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (strcmp(d->check->id, "seismic_glass") == 0 && d->state == GW_ASKED)
            greatest = fmax(greatest, gw_term_of(d, 0)->value);
    }
    if (!(greatest > 0)) return;
    struct gw_required *row = add_row(rows, "seismic_glass");
    row->drift = greatest;
    row->test = rows->ask->model->tables->mockup_sequence[GW_ROW_MOCKUP_SEQUENCE_SWAY].method;
    submit(row, rows->ask, "clearances of the glass, or racking test report");
}

static void number_rows(struct rows *rows)
{
    struct gw_requirement_set *set = &rows->out->set;
    for (size_t i = 0; i < set->requires.n; i++)
    set->requires.items[i].id = gw_format(rows->ask->arena, "R-%02zu", i + 1);
}

/* By the order of the pressures that have a row. */
static void join_rows(struct gw_specification *out)
{
    size_t next = 0;
    for (size_t i = 0; i < out->pressures.n; i++) {
        struct gw_specified_pressure *p = &out->pressures.items[i];
        p->row = p->inward_asd > 0 || p->outward_asd > 0 ? &out->set.requires.items[next++] : NULL;
    }
}

void gw_specify_rows(struct gw_specification *out, struct gw_ask *ask)
{
    struct rows rows = {out, ask, 0};
    structural_rows(&rows);
    wall_rows(&rows, "air");
    wall_rows(&rows, "water");
    drift_row(&rows);
    debris_rows(&rows);
    blast_row(&rows);
    named_rows(&rows);
    number_rows(&rows);
    join_rows(out);
}

/* The head of the set ---------------------------------------------------------------------------------------------- */

/* Candidates are not what a set is made from: the project comes first, then its schedule. */
static void fill_head(struct gw_specification *out, const struct gw_ask *ask, enum gw_units shown)
{
    const struct gw_model *model = ask->model;
    const struct gw_info *info = model->project.project;
    struct gw_set_head *head = gw_alloc(ask->arena, 1, sizeof *head);
    const size_t n = model->inputs.n < 1 ? 0 : model->project.openings ? 2 : 1;
    *head = (struct gw_set_head){.project = info->name, .number = info->number, .version = GW_VERSION};
    head->inputs.items = gw_alloc(ask->arena, n + 1, sizeof *head->inputs.items);
    for (size_t i = 0; i < n && i < model->inputs.n; i++)
        head->inputs.items[head->inputs.n++] =
            (struct gw_set_input){model->inputs.items[i].file, model->inputs.items[i].sha256};
    out->set =
        (struct gw_requirement_set){.galeward = 1, .units = shown, .requirement_set = head, .report_age = GW_ABSENT};
}

/* Tests ----------------------------------------------------------------------------------------------------------- */

/* The longest span between two anchors of the wall; NULL: of any wall. */
static double longest_span(const struct gw_takeoff *t, const struct gw_wall_grid *grid)
{
    double span = 0;
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind == GW_MULLION && !e->overhang && (!grid || e->grid->elevation == grid->elevation))
            span = fmax(span, e->span);
    }
    return span;
}

/* Not said: there is what a proof takes. */
static struct gw_message without_proof(const struct gw_specification *out, double span)
{
    bool known = false;
    for (size_t i = 0; i < out->pressures.n; i++)
        known = known || (!out->pressures.items[i].framing && gw_given(out->pressures.items[i].inward_asd));
    if (!known) return GW_PLAINLY("no pressure of article 2 is known for a lite");
    if (!(span > 0)) return GW_PLAINLY("no mullion spans between two anchors, which the permanent set is measured on");
    return (struct gw_message){0};
}

static bool same_proof(const struct gw_specified_pressure *a, const struct gw_specified_pressure *b)
{
    return a->framing == b->framing && a->first->parapet == b->first->parapet &&
           a->first->grid->elevation == b->first->grid->elevation;
}

/* Of the wall and part that begins there; `longest` where no mullion of its own spans. */
static bool find_proof(struct gw_specification *out, struct gw_ask *ask, size_t at, double longest)
{
    const struct gw_specified_pressure *p = &out->pressures.items[at];
    const double own = longest_span(ask->takeoff, p->first->grid);
    struct gw_proof_case in = {.rule = GW_WATER_CURTAIN_WALL, .span = own > 0 ? own : longest};
    struct gw_proof_result r;
    bool known = false;
    for (size_t i = at; i < out->pressures.n; i++) {
        const struct gw_specified_pressure *q = &out->pressures.items[i];
        if (!same_proof(p, q)) continue;
        known = known || gw_given(q->inward_asd);
        in.positive.pa = fmax(in.positive.pa, q->inward_asd);
        in.negative.pa = fmax(in.negative.pa, q->outward_asd);
    }
    if (!known) return true;
    if (gw_proof(&r, &in, &ask->engine) != GW_OK) return false;
    out->proofs.items[out->proofs.n++] =
        (struct gw_specified_proof){.first = p->first,
                                    .framing = p->framing,
                                    .inward = r.proof_positive,
                                    .outward = r.proof_negative,
                                    .set_limit = own > 0 && !p->first->parapet ? r.set_limit : GW_ABSENT};
    return true;
}

static void find_proofs(struct gw_specification *out, struct gw_ask *ask)
{
    const double longest = longest_span(ask->takeoff, NULL);
    out->proof_fault = without_proof(out, longest);
    if (gw_said(&out->proof_fault)) return;
    out->proofs.items = gw_alloc(ask->arena, out->pressures.n + 1, sizeof *out->proofs.items);
    for (size_t i = 0; i < out->pressures.n; i++) {
        bool told = false;
        for (size_t k = 0; k < i; k++) told = told || same_proof(&out->pressures.items[k], &out->pressures.items[i]);
        if (told || find_proof(out, ask, i, longest)) continue;
        out->proof_fault = gw_fault_kept(ask->arena, &ask->engine.fault);
        return;
    }
}

static void find_field_tests(struct gw_specification *out, struct gw_ask *ask)
{
    bool below;
    out->field_water = out->field_leakage = GW_ABSENT;
    for (size_t i = 0; i < out->set.requires.n; i++) {
        const struct gw_required *row = &out->set.requires.items[i];
        if (strcmp(row->check, "water") == 0)
            out->field_water = fmax(out->field_water, gw_field_water(row->pressure, &below, &ask->engine));
        if (strcmp(row->check, "air") == 0)
            out->field_leakage = fmax(out->field_leakage, gw_field_air(row->leakage, &ask->engine));
    }
}

void gw_specify(struct gw_specification *out, const struct gw_answer *answer, struct gw_ask *ask, enum gw_units shown)
{
    *out = (struct gw_specification){.answer = answer};
    gw_engine_init(&ask->engine, ask->model->tables, NULL);
    fill_head(out, ask, shown);
    gw_specify_pressures(out, ask);
    gw_specify_rows(out, ask);
    find_proofs(out, ask);
    find_field_tests(out, ask);
    gw_specify_questions(out, ask);
    gw_used_merge(&out->used, &ask->engine.used);
}
