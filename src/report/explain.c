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

static void steps(struct page *page, const struct gw_trace *trace)
{
    gw_report_heading(page->report, 2, "Steps");
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

static void rows_used(struct page *page, const struct gw_element *e)
{
    static const struct heading headings[] = {
        {.title = "Table"}, {.title = "Row"}, {.title = "Basis"}, {.title = "Source"}};
    gw_report_heading(page->report, 2, "Rows of the tables that it rests on");
    gw_page_table(page, "", headings, COUNT(headings));
    for (unsigned i = 0; i < e->used.n; i++) {
        const struct gw_row *row = e->used.rows[i];
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
    struct row_set rows = {0};
    gw_trace_init(&trace, report->arena);
    enum gw_status status = gw_takeoff_derive(results->model, element, &trace, &result);
    head(&page, element);
    steps(&page, &trace);
    if (status != GW_OK)
        gw_report_line(report, gw_format(page.arena, "The computation stops here: %s.", gw_status_code(status)));
    design_values(&page, element);
    rows_used(&page, element);
    gw_row_set_add(&rows, page.arena, &element->used);
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
    gw_json_close(&json, '}');
    gw_text_add(out, "\n");
}
