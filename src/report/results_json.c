/* Results as JSON and as CSV, from the records of results_records.c. */
#include "report/parts.h"
#include "report/results.h"

#include <limits.h>

static int whole(long value) { return value > INT_MAX ? INT_MAX : (int)value; }

static enum gw_bool yes_no(bool value) { return value ? GW_YES : GW_NO; }

static const char *basis_of(const struct gw_used *used) { return gw_basis_name(gw_used_weakest(used)); }

static const char *component_name(enum gw_component component)
{
    return component ? gw_choice_name(gw_component_choices, (int)component) : NULL;
}

void gw_element_out_of(struct element_out *out, const struct gw_element *e)
{
    *out = (struct element_out){
        .id = e->id,
        .wall = e->wall,
        .building = e->building ? e->building->name : NULL,
        .kind = gw_kind_names[e->kind],
        .mark = e->mark,
        .columns = e->columns,
        .component = component_name(e->component),
        .lite = e->lite,
        .count = whole(e->count),
        .width = e->width,
        .height = e->height,
        .bottom = e->bottom,
        .top = e->top,
        .span = e->kind == GW_LITE || e->kind == GW_SCREW ? GW_ABSENT : e->span,
        .zone = e->zone,
        .parapet = yes_no(e->parapet),
        .place_unknown = yes_no(e->place_unknown),
        .corner_distance = e->corner_distance,
        .effective_area = e->effective_area,
        .inward = e->inward.pa,
        .outward = e->outward.pa,
        .inward_asd = e->inward_asd.pa,
        .outward_asd = e->outward_asd.pa,
        .governs = e->governs,
        .basis = basis_of(&e->used),
    };
}

void gw_verdict_out_of(struct verdict_out *out, const struct gw_finding *f)
{
    *out = (struct verdict_out){
        .candidate = f->candidate->name,
        .check = f->demand->check,
        .name = f->demand->name,
        .verdict = gw_verdict_name(f->verdict),
        .utilisation = f->utilisation,
        .evidence = gw_evidence_name(f->evidence),
        .element = f->demand->where,
        .demand = f->required,
        .capacity = f->provided,
        .unit = gw_dim_info(f->dim)->suffix,
        .direction = f->direction,
        .basis = basis_of(&f->used),
        .message = f->message,
    };
}

static void demand_out_of(struct demand_out *out, const struct gw_demand *d)
{
    static const char *const status[] = {[GW_NOT_SHOWN] = "not shown",
                                         [GW_PASS] = "required",
                                         [GW_FAIL] = "required",
                                         [GW_NOT_REQUIRED] = "not required"};
    *out = (struct demand_out){
        .check = d->check,
        .title = d->title,
        .name = d->name,
        .element = d->where,
        .status = status[d->status],
        .value = d->value,
        .value_outward = d->element ? d->value_out : GW_ABSENT,
        .at = d->dim == GW_LEAKAGE ? d->at : GW_ABSENT,
        .unit = gw_dim_info(d->dim)->suffix,
        .at_most = yes_no(d->at_most),
        .clause = d->clause,
        .basis = basis_of(&d->used),
        .message = d->message,
    };
}

static void summary_out_of(struct summary_out *out, const struct gw_summary *s)
{
    const struct gw_finding *f = s->governing;
    *out = (struct summary_out){
        .candidate = s->candidate->name,
        .verdict = gw_verdict_name(s->verdict),
        .pass = whole(s->counts[GW_PASS]),
        .fail = whole(s->counts[GW_FAIL]),
        .not_shown = whole(s->counts[GW_NOT_SHOWN]),
        .not_required = whole(s->counts[GW_NOT_REQUIRED]),
        .governing_check = f ? f->demand->check : NULL,
        .governing_element = f ? f->demand->where : NULL,
        .utilisation = f ? f->utilisation : GW_ABSENT,
    };
}

static void add_assumptions(struct results_out *out, const struct gw_assumptions *list)
{
    for (size_t i = 0; i < list->n; i++)
        out->assumptions.items[out->assumptions.n++] = (struct text_out){list->items[i].where, list->items[i].text};
}

static void add_remarks(struct results_out *out, struct gw_arena *arena, const struct gw_results *results)
{
    const struct gw_model *model = results->model;
    size_t corrections = model->project.assume.n,
           n = corrections + model->assumptions.n + results->takeoff->assumptions.n;
    out->assumptions.items = gw_alloc(arena, n + 1, sizeof *out->assumptions.items);
    for (size_t i = 0; i < corrections; i++)
        out->assumptions.items[out->assumptions.n++] =
            (struct text_out){"assume", gw_correction_text(arena, &model->project.assume.items[i])};
    add_assumptions(out, &model->assumptions);
    add_assumptions(out, &results->takeoff->assumptions);
    out->warnings.items = gw_alloc(arena, model->diags->n + 1, sizeof *out->warnings.items);
    for (size_t i = 0; i < model->diags->n; i++) {
        const struct gw_diag *d = &model->diags->items[i];
        if (d->severity == GW_WARNING) out->warnings.items[out->warnings.n++] = (struct text_out){d->key, d->message};
    }
    const struct gw_not_checked *list = gw_not_checked_list(&out->not_checked.n, model);
    out->not_checked.items = gw_alloc(arena, out->not_checked.n + 1, sizeof *out->not_checked.items);
    for (size_t i = 0; i < out->not_checked.n; i++)
        out->not_checked.items[i] = (struct text_out){list[i].what, list[i].ask};
}

static void add_framing(struct results_out *out, struct gw_arena *arena, const struct gw_judgement *j)
{
    out->reactions.items = gw_alloc(arena, j->reactions.n + 1, sizeof *out->reactions.items);
    out->reactions.n = j->reactions.n;
    for (size_t i = 0; i < j->reactions.n; i++) {
        const struct gw_reaction *r = &j->reactions.items[i];
        const struct gw_element *e = r->element;
        out->reactions.items[i] = (struct reaction_out){e->id,
                                                        e->wall,
                                                        e->mark,
                                                        whole(e->count),
                                                        e->zone,
                                                        r->inward,
                                                        r->outward,
                                                        r->inward_strength,
                                                        r->outward_strength,
                                                        r->area};
    }
    out->members.items = gw_alloc(arena, j->members.n + 1, sizeof *out->members.items);
    out->members.n = j->members.n;
    for (size_t i = 0; i < j->members.n; i++) {
        const struct gw_member_demand *m = &j->members.items[i];
        const struct gw_element *e = m->element;
        out->members.items[i] = (struct member_out){e->id,
                                                    e->kind == GW_MULLION ? "mullion" : "transom",
                                                    e->wall,
                                                    e->mark,
                                                    whole(e->count),
                                                    e->zone,
                                                    m->moment,
                                                    m->shear,
                                                    m->deflection_limit,
                                                    m->inertia};
    }
}

static void add_mock_up(struct results_out *out, struct gw_arena *arena, const struct gw_sequence *mock_up)
{
    out->mock_up.items = gw_alloc(arena, mock_up->n + 1, sizeof *out->mock_up.items);
    out->mock_up.n = mock_up->n;
    for (size_t i = 0; i < mock_up->n; i++) {
        const struct gw_sequence_step *s = &mock_up->steps[i];
        out->mock_up.items[i] = (struct step_out){gw_choice_name(gw_sequence_test_choices, (int)s->test),
                                                  s->method,
                                                  s->again,
                                                  s->pressure,
                                                  s->leakage,
                                                  s->displacement,
                                                  s->limit};
    }
}

static void add_reaches(struct results_out *out, struct gw_arena *arena, const struct gw_judgement *j)
{
    out->reaches.items = gw_alloc(arena, j->reaches.n + 1, sizeof *out->reaches.items);
    out->reaches.n = j->reaches.n;
    for (size_t i = 0; i < j->reaches.n; i++) {
        const struct gw_reach *r = &j->reaches.items[i];
        out->reaches.items[i] = (struct reach_out){r->candidate->name, r->zone,    r->span,    r->at_width,
                                                   r->width,           r->at_span, r->spacing, r->screw_width};
    }
}

static void add_lists(struct results_out *out, struct gw_arena *arena, const struct gw_results *results)
{
    const struct gw_takeoff *t = results->takeoff;
    const struct gw_judgement *j = results->judgement;
    out->elements.items = gw_alloc(arena, t->elements.n + 1, sizeof *out->elements.items);
    for (size_t i = 0; i < t->elements.n; i++) gw_element_out_of(&out->elements.items[i], &t->elements.items[i]);
    out->elements.n = t->elements.n;
    out->demands.items = gw_alloc(arena, j->demands.n + 1, sizeof *out->demands.items);
    for (size_t i = 0; i < j->demands.n; i++)
        if (!j->demands.items[i].element) demand_out_of(&out->demands.items[out->demands.n++], &j->demands.items[i]);
    add_framing(out, arena, j);
    add_mock_up(out, arena, &j->mock_up);
    add_reaches(out, arena, j);
    out->verdicts.items = gw_alloc(arena, j->findings.n + 1, sizeof *out->verdicts.items);
    for (size_t i = 0; i < j->findings.n; i++) gw_verdict_out_of(&out->verdicts.items[i], &j->findings.items[i]);
    out->verdicts.n = j->findings.n;
    out->summaries.items = gw_alloc(arena, j->summaries.n + 1, sizeof *out->summaries.items);
    for (size_t i = 0; i < j->summaries.n; i++) summary_out_of(&out->summaries.items[i], &j->summaries.items[i]);
    out->summaries.n = j->summaries.n;
}

static void results_of(struct results_out *out, struct gw_arena *arena, const struct gw_results *results)
{
    const struct gw_model *model = results->model;
    *out = (struct results_out){
        .galeward = 1, .version = GW_VERSION, .project = model->project.project->name, .caution = gw_caution_text()};
    out->inputs.items = gw_alloc(arena, model->n_inputs + 1, sizeof *out->inputs.items);
    for (size_t i = 0; i < model->n_inputs; i++)
        out->inputs.items[i] = (struct input_out){model->inputs[i].file, model->inputs[i].sha256};
    out->inputs.n = model->n_inputs;
    add_remarks(out, arena, results);
    add_lists(out, arena, results);
}

void gw_json_results(struct gw_text *out, const struct gw_results *results, bool verdicts)
{
    struct gw_json json;
    struct results_out all;
    results_of(&all, out->arena, results);
    gw_json_init(&json, out, true);
    gw_json_open(&json, '{');
    gw_json_record(&json, verdicts ? &gw_results_record : &gw_demand_results_record, &all, false);
    gw_json_close(&json, '}');
    gw_text_add(out, "\n");
}

static void csv_header(struct gw_text *out, const struct gw_record *record)
{
    for (size_t i = 0; i < record->n; i++) {
        if (i) gw_text_add(out, ",");
        gw_field_json_key(out, &record->fields[i]);
    }
    gw_text_add(out, "\n");
}

static void csv_field(struct gw_text *out, const struct gw_field *field, const void *record, bool first)
{
    const void *at = (const char *)record + field->offset;
    const char *text = field->type == GW_T_TEXT ? *(const char *const *)at : NULL;
    if (field->type == GW_T_BOOL) text = *(const enum gw_bool *)at == GW_YES ? "true" : "false";
    gw_csv_cell(out, text ? text : "", first);
    if (field->type == GW_T_INTEGER) gw_text_addf(out, "%d", *(const int *)at);
    if (field->type == GW_T_NUMBER && isfinite(*(const double *)at)) gw_text_number(out, *(const double *)at, 12);
}

static void csv_row(struct gw_text *out, const struct gw_record *record, const void *value)
{
    for (size_t i = 0; i < record->n; i++) csv_field(out, &record->fields[i], value, i == 0);
    gw_text_add(out, "\n");
}

void gw_csv_results(struct gw_text *out, const struct gw_results *results, bool verdicts)
{
    csv_header(out, verdicts ? &gw_verdict_out_record : &gw_element_out_record);
    for (size_t i = 0; verdicts && i < results->judgement->findings.n; i++) {
        struct verdict_out row;
        gw_verdict_out_of(&row, &results->judgement->findings.items[i]);
        csv_row(out, &gw_verdict_out_record, &row);
    }
    for (size_t i = 0; !verdicts && i < results->takeoff->elements.n; i++) {
        struct element_out row;
        gw_element_out_of(&row, &results->takeoff->elements.items[i]);
        csv_row(out, &gw_element_out_record, &row);
    }
}
