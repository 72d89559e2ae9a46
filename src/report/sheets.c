/* What a spreadsheet gets in the units of people: a row a record, as pages round it, the unit in the heading. */
#include "report/sheets.h"

#include "galeward/sensitivity.h"

#include "report/inspect.h"
#include "report/results.h"
#include "report/view.h"

static const struct view_column ELEMENT_COLUMNS[] = {
    COLUMN("id", "id"),
    COLUMN("wall", "wall"),
    COLUMN("building", "building"),
    COLUMN("kind", "kind"),
    COLUMN("mark", "mark"),
    COLUMN("columns", "columns"),
    COLUMN("component", "component"),
    COLUMN("lite", "lite"),
    COLUMN("count", "count"),
    COLUMN("width", "width"),
    COLUMN("height", "height"),
    COLUMN("bottom", "bottom"),
    COLUMN("top", "top"),
    COLUMN("elevation", "elevation"),
    COLUMN("span", "span"),
    COLUMN("zone", "zone"),
    COLUMN("parapet", "parapet"),
    COLUMN("place unknown", "place_unknown"),
    COLUMN("corner distance", "corner_distance"),
    COLUMN("effective area", "effective_area"),
    COLUMN("inward", "inward", .rounding = UP),
    COLUMN("outward", "outward", .rounding = UP),
    COLUMN("inward ASD", "inward_asd", .rounding = UP),
    COLUMN("outward ASD", "outward_asd", .rounding = UP),
    COLUMN("governs", "governs"),
    COLUMN("basis", "basis_for_people"),
};
static const struct view ELEMENTS = VIEW(&gw_element_record, ELEMENT_COLUMNS);

static const struct view_column VERDICT_COLUMNS[] = {
    COLUMN("candidate", "candidate"),
    COLUMN("check", "check"),
    COLUMN("name", "name"),
    COLUMN("verdict", "verdict"),
    COLUMN("utilization", "utilisation", .use = true),
    COLUMN("evidence", "evidence"),
    COLUMN("element", "element"),
    COLUMN("demand", "required_bare"),
    COLUMN("capacity", "provided_bare"),
    COLUMN("unit", "unit_for_people"),
    COLUMN("direction", "direction"),
    COLUMN("basis", "basis_for_people"),
    COLUMN("message", "message"),
    COLUMN("link check", "link_check"),
    COLUMN("link element", "link_element"),
};
static const struct view VERDICTS = VIEW(&gw_finding_record, VERDICT_COLUMNS);

static const struct view_column FLIP_COLUMNS[] = {
    COLUMN("table", "table"),
    COLUMN("row", "row"),
    COLUMN("column", "column"),
    COLUMN("share", "share"),
    COLUMN("candidate", "candidate"),
    COLUMN("check", "check"),
    COLUMN("element", "element"),
    COLUMN("count", "count"),
    COLUMN("verdict was", "verdict_was"),
    COLUMN("verdict", "verdict"),
    COLUMN("utilization was", "utilisation_was", .use = true),
    COLUMN("utilization", "utilisation", .use = true),
};
static const struct view FLIPS = VIEW(&gw_flip_record, FLIP_COLUMNS);

static const struct view_column READING_COLUMNS[] = {
    COLUMN("row", "row"),
    COLUMN("place", "place"),
    COLUMN("element", "element"),
    COLUMN("item", "item"),
    COLUMN("value", "value_bare"),
    COLUMN("at least", "at_least_bare"),
    COLUMN("at most", "at_most_bare"),
    COLUMN("unit", "unit_for_people"),
    COLUMN("limit", "limit"),
    COLUMN("limit basis", "limit_basis"),
    COLUMN("verdict", "verdict"),
    COLUMN("remaining", "remaining", .rounding = DOWN),
    COLUMN("remaining worst", "remaining_worst", .rounding = DOWN),
    COLUMN("required", "required"),
    COLUMN("mechanism", "mechanism"),
    COLUMN("message", "message"),
    COLUMN("action", "action"),
    COLUMN("by", "by"),
    COLUMN("date", "date"),
    COLUMN("point", "point"),
    COLUMN("closed by", "closed_by"),
    COLUMN("duplicate of", "duplicate_of"),
};
static const struct view READINGS = VIEW(&gw_inspected_record, READING_COLUMNS);

static struct page page_in(struct gw_report *report, const struct gw_result *result)
{
    return (struct page){report, report->arena, NULL, result->shown};
}

void gw_sheet_of_elements(struct gw_report *report, const struct gw_result *result)
{
    struct page page = page_in(report, result);
    const struct gw_results *results = result->value;
    const struct gw_takeoff *t = results->answer->takeoff;
    gw_view_sheet(&page, &ELEMENTS, t->elements.items, t->elements.n);
}

void gw_sheet_of_verdicts(struct gw_report *report, const struct gw_result *result)
{
    struct page page = page_in(report, result);
    const struct gw_results *results = result->value;
    const struct gw_judgement *j = &results->answer->judgement;
    gw_view_sheet(&page, &VERDICTS, j->findings.items, j->findings.n);
}

void gw_sheet_of_flips(struct gw_report *report, const struct gw_result *result)
{
    struct page page = page_in(report, result);
    const struct gw_sensitivity *s = result->value;
    gw_view_sheet(&page, &FLIPS, s->flips.items, s->flips.n);
}

void gw_sheet_of_readings(struct gw_report *report, const struct gw_result *result)
{
    struct page page = page_in(report, result);
    const struct gw_inspected_results *results = result->value;
    const struct gw_inspection *in = results->inspection;
    gw_view_sheet(&page, &READINGS, in->rows.items, in->rows.n);
}
