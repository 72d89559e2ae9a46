/* One element's pressure, step by step, as an engineer writes it. */
#include "galeward/calc.h"
#include "report/parts.h"
#include "report/results.h"

#include <string.h>

#define COUNT(array) (sizeof(array) / sizeof *(array))

static void head(struct page *page, const struct gw_element *e)
{
    const char *what = *e->mark ? gw_format(page->arena, " (%s)", e->mark) : "";
    gw_report_heading(page->report, 1, gw_format(page->arena, "%s: %s%s", e->id, gw_kind_names[e->kind], what));
    gw_report_line(page->report,
                   gw_format(page->arena, "Project %s, wall %s, building %s, %ld of these, columns %s",
                             page->results->model->project.project->name, e->wall,
                             e->building ? e->building->name : "?", e->count, *e->columns ? e->columns : "-"));
    gw_report_line(page->report, gw_format(page->arena, "%s wide, %s high, from %s to %s above ground, zone %d%s%s",
                                           gw_quantity_text(page, GW_LENGTH, e->width, NEAREST),
                                           gw_quantity_text(page, GW_LENGTH, e->height, NEAREST),
                                           gw_quantity_text(page, GW_LENGTH, e->bottom, NEAREST),
                                           gw_quantity_text(page, GW_LENGTH, e->top, NEAREST), e->zone,
                                           e->parapet ? ", above the roof line" : "",
                                           e->place_unknown ? ", place unknown: taken at the worst" : ""));
    if (gw_given(e->corner_distance))
        gw_report_line(page->report, gw_format(page->arena, "Nearest outside corner: %s",
                                               gw_quantity_text(page, GW_LENGTH, e->corner_distance, NEAREST)));
    gw_report_line(page->report, gw_format(page->arena, "Effective wind area: %s",
                                           gw_quantity_text(page, GW_AREA, e->effective_area, NEAREST)));
}

/* "GC_pi = g" says no more than the value does. */
static bool is_plain_value(const struct gw_step *step)
{
    return step->n_args == 1 && strcmp(step->formula, step->args[0].name) == 0;
}

static const char *step_text(struct page *page, const struct gw_step *step, size_t number)
{
    struct gw_text text;
    const char *unit = gw_dim_info(step->dim)->shown[page->shown];
    gw_text_init(&text, page->arena);
    gw_text_addf(&text, "%zu. ", number);
    if (!step->formula) {
        gw_text_addf(&text, "%s%s%s", step->symbol ? step->symbol : "", step->symbol && *step->symbol ? ": " : "",
                     step->note ? step->note : "");
    } else {
        gw_text_addf(&text, "%s = ", step->symbol);
        if (!is_plain_value(step)) {
            gw_text_addf(&text, "%s = ", step->formula);
            gw_step_substituted(&text, step, page->shown);
            gw_text_add(&text, " = ");
        }
        gw_text_number(&text, gw_quantity_shown(gw_units_standard(), step->dim, page->shown, step->value), 6);
        if (*unit) gw_text_addf(&text, " %s", unit);
    }
    if (step->clause && *step->clause) gw_text_addf(&text, "   [%s]", step->clause);
    return text.at;
}

static void steps(struct page *page, const char *heading, const struct gw_trace *trace)
{
    gw_report_heading(page->report, 2, heading);
    for (size_t i = 0; i < trace->n; i++) gw_report_line(page->report, step_text(page, &trace->steps[i], i + 1));
}

static void level(struct page *page, const char *name, double inward, double outward)
{
    if (!gw_given(inward) && !gw_given(outward)) return;
    gw_page_cell(page, name);
    gw_page_quantity(page, GW_PRESSURE, inward, UP);
    gw_page_quantity(page, GW_PRESSURE, outward, UP);
}

static void design_values(struct page *page, const struct gw_element *e)
{
    static const struct heading headings[] = {
        {.title = "Level"}, {"Inward", true, GW_PRESSURE}, {"Outward", true, GW_PRESSURE}};
    gw_report_heading(page->report, 2, "Design pressures");
    gw_page_table(page, "", headings, COUNT(headings));
    level(page, "strength (1.0 W)", e->inward.pa, e->outward.pa);
    level(page, "allowable stress (0.6 W)", e->inward_asd.pa, e->outward_asd.pa);
    bool framing = e->kind == GW_MULLION || e->kind == GW_TRANSOM;
    if (framing) level(page, "deflection", e->inward_deflection, e->outward_deflection);
    gw_report_line(page->report, gw_format(page->arena, "Governs: %s", e->governs));
}

/* The glass of a lite under the load that governs it; `derived` holds its steps and the rows that it used. */
struct glass_derived {
    enum gw_status status;
    struct gw_glass_judged judged;
    struct gw_lite_result result;
    struct gw_trace trace;
    struct gw_engine engine;
};

static bool derive_glass(struct glass_derived *d, struct gw_arena *arena, const struct gw_model *model,
                         const struct gw_element *e)
{
    const struct gw_lite_type *type = e->lite ? gw_model_lite(model, e->lite) : NULL;
    if (e->kind != GW_LITE || !type || !type->layers.n || e->outside) return false;
    gw_trace_init(&d->trace, arena);
    gw_engine_init(&d->engine, model->tables, NULL);
    d->engine.workspace = gw_alloc_bare(arena, GW_PLATE_WORKSPACE);
    d->status = gw_judge_glass(&d->judged, model, e, type, &d->engine);
    if (d->status != GW_OK) return true;
    d->engine.trace = &d->trace;
    d->status =
        gw_lite_assess(&d->result, &d->judged.lite, &d->judged.demand.loads[d->judged.verdict.governing], &d->engine);
    return true;
}

static const char *layers_text(struct page *page, const struct gw_lite_type *type)
{
    struct gw_text text;
    gw_text_init(&text, page->arena);
    gw_layers_say(&text, type->layers.items, type->layers.n, page->shown, page->results->model->tables);
    return text.at;
}

static void glass(struct page *page, const struct glass_derived *d, const struct gw_element *e)
{
    const struct gw_lite_result *r = &d->result;
    const struct gw_lite_type *type = gw_model_lite(page->results->model, e->lite);
    steps(page, gw_format(page->arena, "Glass: %s", layers_text(page, type)), &d->trace);
    if (d->status != GW_OK) {
        gw_report_line(page->report, gw_format(page->arena, "The computation stops here: %s", d->engine.fault.message));
        return;
    }
    if (!r->standard.covered)
        gw_report_line(page->report, gw_format(page->arena, "Standard's factors: %s", r->standard.why_not));
    if (!r->principles.covered)
        gw_report_line(page->report, gw_format(page->arena, "First principles: %s", r->principles.why_not));
    for (int i = 0; i < r->n_notes; i++) gw_report_line(page->report, r->notes[i]);
    gw_report_line(page->report,
                   gw_format(page->arena, "%s of %s against %s by %s: %s. The center bends %s.", r->load.name,
                             gw_quantity_text(page, GW_PRESSURE, fabs(r->load.pressure), UP),
                             gw_quantity_text(page, GW_PRESSURE, r->resistance, DOWN),
                             r->governing == GW_BASIS_STANDARD ? "the standard's factors" : "first principles", r->why,
                             gw_quantity_text(page, GW_THICKNESS, r->deflection, UP)));
}

/* Every link at the element, candidate by candidate. */
static void links(struct page *page, const struct gw_element *e, struct gw_used *used)
{
    const struct gw_results *r = page->results;
    for (size_t i = 0; r->judgement && i < r->judgement->findings.n; i++) {
        const struct gw_finding *f = &r->judgement->findings.items[i];
        struct gw_finding derived;
        struct gw_trace trace;
        if (f->demand->element != e || strcmp(f->demand->check, "glass") == 0) continue;
        gw_trace_init(&trace, page->arena);
        if (!gw_judge_derive(&derived, r->model, r->takeoff, r->judgement, f, &trace)) continue;
        steps(page, gw_format(page->arena, "%s: %s", f->candidate->name, f->demand->title), &trace);
        const char *needs = gw_quantity_text(page, derived.dim, derived.required, derived.at_most ? NEAREST : UP);
        const char *has = gw_quantity_text(page, derived.dim, derived.provided, derived.at_most ? NEAREST : DOWN);
        gw_report_line(page->report,
                       gw_format(page->arena, "%s%s%s%s%s: %s", gw_verdict_name(derived.verdict), *needs ? ", " : "",
                                 needs, *has ? " against " : "", has, derived.message));
        gw_used_merge(used, &derived.used);
    }
}

static void rows_used(struct page *page, const struct gw_used *used)
{
    static const struct heading headings[] = {
        {.title = "Table"}, {.title = "Row"}, {.title = "Basis"}, {.title = "Source"}};
    gw_report_heading(page->report, 2, "Rows of the tables that it rests on");
    gw_page_table(page, "", headings, COUNT(headings));
    for (unsigned i = 0; gw_used_next(used, &i); i++) {
        const struct gw_row *row = gw_table_row_at(page->results->model->tables, i);
        gw_page_cell(page, row->table);
        gw_page_cell(page, row->id);
        gw_report_toned(page->report, row->basis >= GW_MEMORY ? GW_DOUBTFUL : GW_PLAIN, gw_basis_name(row->basis));
        gw_page_cell(page, row->source);
    }
}

void gw_report_explain(struct gw_report *report, const struct gw_results *results, const struct gw_element *element)
{
    struct page page = gw_page_of(report, results);
    struct gw_trace trace;
    struct gw_wind_result result;
    struct gw_used rows = {.words = {0}};
    gw_trace_init(&trace, report->arena);
    enum gw_status status = gw_takeoff_derive(results->model, element, &trace, &result);
    head(&page, element);
    steps(&page, "Steps", &trace);
    if (status != GW_OK)
        gw_report_line(report, gw_format(page.arena, "The computation stops here: %s.", gw_status_code(status)));
    design_values(&page, element);
    struct glass_derived *derived = gw_alloc(report->arena, 1, sizeof *derived);
    gw_used_merge(&rows, &element->used);
    if (derive_glass(derived, report->arena, results->model, element)) {
        glass(&page, derived, element);
        gw_used_merge(&rows, &derived->engine.used);
    }
    links(&page, element, &rows);
    rows_used(&page, &rows);
    gw_page_foot(&page, &rows);
}

void gw_json_explain(struct gw_text *out, const struct gw_results *results, const struct gw_element *element)
{
    struct gw_json json;
    struct gw_trace trace;
    struct gw_wind_result result;
    struct element_out row;
    gw_trace_init(&trace, out->arena);
    gw_takeoff_derive(results->model, element, &trace, &result);
    gw_element_out_of(&row, element);
    gw_json_init(&json, out, true);
    gw_json_result(&json, results->model->project.project->name);
    gw_json_key(&json, "element");
    gw_json_open(&json, '{');
    gw_json_record(&json, &gw_element_out_record, &row, false);
    gw_json_close(&json, '}');
    gw_json_key(&json, "trace");
    gw_calc_trace(&json, &trace, GW_SI);
    struct glass_derived *derived = gw_alloc(out->arena, 1, sizeof *derived);
    if (derive_glass(derived, out->arena, results->model, element)) {
        gw_json_key(&json, "glass_trace");
        gw_calc_trace(&json, &derived->trace, GW_SI);
    }
    gw_json_close(&json, '}');
    gw_text_add(out, "\n");
}
