/* The head and the foot of every report: what it is about, and what it does not say. */
#include "report/parts.h"

#include <string.h>

static const char *site_line(struct page *page)
{
    const struct gw_site *site = page->results->model->project.site;
    const char *ground =
        gw_given(site->elevation)
            ? gw_format(page->arena, ", ground at %s", gw_quantity_text(page, GW_LENGTH, site->elevation, NEAREST))
            : "";
    const char *hill = "";
    if (site->topography)
        hill = gw_format(page->arena, ", %s: height %s, distance from the crest %s",
                         gw_choice_name(gw_shape_choices, (int)site->topography->shape),
                         gw_quantity_text(page, GW_LENGTH, site->topography->height, NEAREST),
                         gw_quantity_text(page, GW_LENGTH, site->topography->distance, NEAREST));
    return gw_format(page->arena, "Site: basic wind speed %s, exposure %s%s%s",
                     gw_quantity_text(page, GW_SPEED, site->basic_wind_speed, NEAREST),
                     gw_choice_name(gw_exposure_choices, (int)site->exposure), ground, hill);
}

void gw_page_head(struct page *page, const char *what)
{
    const struct gw_project *project = &page->results->model->project;
    const struct gw_info *info = project->project;
    const char *edition = gw_choice_name(gw_edition_choices, (int)project->codes->wind);
    gw_report_heading(page->report, 1, gw_format(page->arena, "%s: %s", what, info->name));
    gw_report_line(page->report,
                   gw_format(page->arena, "Project %s%srisk category %s", info->number ? info->number : "",
                             info->number ? ", " : "", gw_choice_name(gw_risk_choices, (int)info->risk_category)));
    gw_report_line(page->report, gw_format(page->arena, "Codes: %s, %s",
                                           gw_choice_name(gw_building_code_choices, (int)project->codes->building),
                                           *edition ? edition : "wind edition by the building code"));
    gw_report_line(page->report, site_line(page));
}

void gw_page_buildings(struct page *page)
{
    static const struct heading headings[] = {
        {.title = "Building"},        {"Roof height", true, GW_LENGTH}, {"Least width", true, GW_LENGTH},
        {"Parapet", true, GW_LENGTH}, {"Roof slope", true, GW_ANGLE},   {.title = "Enclosure"}};
    const struct gw_project *project = &page->results->model->project;
    gw_page_table(page, "", headings, sizeof headings / sizeof *headings);
    for (size_t i = 0; i < project->buildings.n; i++) {
        const struct gw_building *b = &project->buildings.items[i];
        gw_page_cell(page, b->name);
        gw_page_quantity(page, GW_LENGTH, b->roof_height, NEAREST);
        gw_page_quantity(page, GW_LENGTH, b->least_width, NEAREST);
        gw_page_quantity(page, GW_LENGTH, b->parapet_height, NEAREST);
        gw_page_quantity(page, GW_ANGLE, b->roof_slope, NEAREST);
        gw_page_cell(page, gw_choice_name(gw_enclosure_choices, (int)b->enclosure));
    }
}

const char *gw_correction_text(struct gw_arena *arena, const struct gw_correction *c)
{
    return gw_format(arena, "correction to the tables: %s/%s %s = %s: %s (%s)", c->table, c->row, c->column, c->value,
                     c->reason, c->by);
}

static void warnings(struct page *page)
{
    const struct gw_diags *diags = page->results->model->diags;
    bool any = false;
    for (size_t i = 0; i < diags->n; i++) {
        const struct gw_diag *d = &diags->items[i];
        if (d->severity != GW_WARNING) continue;
        if (!any) gw_report_heading(page->report, 2, "Warnings");
        any = true;
        const char *place = d->source && d->line ? gw_format(page->arena, "%s:%u: ", d->source->name, d->line) : "";
        gw_report_item(page->report, gw_format(page->arena, "%s%s", place, d->message));
    }
}

static void assumption_items(struct page *page, const struct gw_assumptions *list)
{
    for (size_t i = 0; i < list->n; i++) {
        const struct gw_assumption *a = &list->items[i];
        gw_report_item(page->report, gw_format(page->arena, "%s%s%s", a->where, *a->where ? ": " : "", a->text));
    }
}

static void assumptions(struct page *page)
{
    const struct gw_model *model = page->results->model;
    const struct gw_assumptions *own = &page->results->takeoff->assumptions;
    gw_report_heading(page->report, 2, "Assumptions");
    for (size_t i = 0; i < model->project.assume.n; i++)
        gw_report_item(page->report, gw_correction_text(page->arena, &model->project.assume.items[i]));
    assumption_items(page, &model->assumptions);
    assumption_items(page, own);
    if (!model->assumptions.n && !own->n && !model->project.assume.n)
        gw_report_line(page->report, "None: every value was given.");
}

static bool is_weak(const struct gw_row *row) { return row->basis == GW_MEMORY || row->basis == GW_PRACTICE; }

static bool alike(const struct gw_row *a, const struct gw_row *b)
{
    return strcmp(a->table, b->table) == 0 && a->basis == b->basis && strcmp(a->source, b->source) == 0;
}

/* The ids of the rows from `index` on that share table, basis and source with its row; they leave `rest`. */
static const char *ids_alike(struct page *page, struct gw_used *rest, unsigned index)
{
    const struct gw_tables *tables = page->results->model->tables;
    const struct gw_row *first = gw_table_row_at(tables, index);
    struct gw_text ids;
    gw_text_init(&ids, page->arena);
    for (unsigned i = index; gw_used_next(rest, &i); i++) {
        const struct gw_row *row = gw_table_row_at(tables, i);
        if (!alike(row, first)) continue;
        gw_text_addf(&ids, "%s%s", ids.length ? ", " : "", row->id);
        gw_used_remove(rest, row);
    }
    return ids.at;
}

static void weak_rows(struct page *page, const struct gw_used *rows)
{
    struct gw_used rest = *rows;
    bool any = false;
    for (unsigned i = 0; gw_used_next(&rest, &i); i++) {
        const struct gw_row *row = gw_table_row_at(page->results->model->tables, i);
        if (!is_weak(row)) continue;
        if (!any) gw_report_heading(page->report, 2, "Rests on memory or practice (to be confirmed)");
        any = true;
        gw_report_item(page->report, gw_format(page->arena, "%s: %s / %s (%s)", gw_basis_name(row->basis), row->table,
                                               ids_alike(page, &rest, i), row->source));
    }
}

const char *gw_caution_text(void)
{
    return "Results are for selection and review. Wind speed, exposure, code edition and local amendments are for the "
           "authority having jurisdiction and the registered design professional to confirm. Test ratings hold for the "
           "tested configuration. Blast, impact and seismic checks do not replace a licensed engineer's.";
}

void gw_page_foot(struct page *page, const struct gw_used *rows)
{
    size_t n;
    const struct gw_not_checked *list = gw_not_checked_list(&n, page->results->model);
    warnings(page);
    assumptions(page);
    weak_rows(page, rows);
    gw_report_heading(page->report, 2, "Not checked here");
    for (size_t i = 0; i < n; i++)
        gw_report_item(page->report, gw_format(page->arena, "%s: %s", list[i].what, list[i].ask));
    gw_report_heading(page->report, 2, "Caution");
    gw_report_line(page->report, gw_caution_text());
}

void gw_page_rows(struct gw_used *rows, struct page *page, bool verdicts)
{
    const struct gw_takeoff *takeoff = page->results->takeoff;
    const struct gw_judgement *judgement = page->results->judgement;
    for (size_t i = 0; i < takeoff->elements.n; i++) gw_used_merge(rows, &takeoff->elements.items[i].used);
    for (size_t i = 0; i < judgement->demands.n; i++) gw_used_merge(rows, &judgement->demands.items[i].used);
    for (size_t i = 0; verdicts && i < judgement->findings.n; i++)
        gw_used_merge(rows, &judgement->findings.items[i].used);
}
