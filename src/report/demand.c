/* What the site asks: one page by wall, kind and zone; then every group. */
#include "report/demand.h"
#include "base/fields.h"

#include "base/tolerance.h"

#include "report/results.h"
#include "report/sheets.h"
#include "report/view.h"

#include <stdlib.h>
#include <string.h>

/* Pressures by wall ------------------------------------------------------------------------------------------------ */

static bool same_band(const void *left, const void *right)
{
    const struct gw_element *a = left, *b = right;
    return a->kind == b->kind && a->zone == b->zone && a->parapet == b->parapet && strcmp(a->wall, b->wall) == 0;
}

/* The greater of two; whatever is given is greater than what is not. */
static double greater(double a, double b) { return !gw_given(a) || b > a ? b : a; }

void gw_widen_band(void *into, const void *row, bool first)
{
    struct gw_element *band = into;
    const struct gw_element *e = row;
    if (first) return;
    band->count += e->count;
    band->bottom = fmin(band->bottom, e->bottom);
    band->top = fmax(band->top, e->top);
    band->inward.pa = greater(band->inward.pa, e->inward.pa);
    band->inward_asd.pa = greater(band->inward_asd.pa, e->inward_asd.pa);
    band->outward_asd.pa = -greater(-band->outward_asd.pa, -e->outward_asd.pa);
    if (!gw_given(band->outward.pa) || e->outward.pa < band->outward.pa) {
        band->outward = e->outward;
        band->governs = e->governs;
    }
}

static const struct view_column BAND_COLUMNS[] = {
    COLUMN("Kind", "kind"),
    COLUMN("Zone", "zone_in_full"),
    COLUMN("From - to", "extent", .dim = GW_LENGTH, .right = true),
    COLUMN("Count", "count"),
    COLUMN("Inward", "inward", .rounding = UP),
    COLUMN("Outward", "outward", .rounding = UP),
    COLUMN("ASD in", "inward_asd", .rounding = UP),
    COLUMN("ASD out", "outward_asd", .rounding = UP),
    COLUMN("Governs", "governs"),
};
static const struct view BANDS = VIEW(&gw_element_record, BAND_COLUMNS, .same = same_band, .merge = gw_widen_band);

static void wall_tables(struct page *page)
{
    size_t n = page->results->answer->takeoff->elements.n;
    const struct ordered *items = gw_order_elements(page->arena, page->results->answer->takeoff);
    const void **rows = gw_alloc(page->arena, n + 1, sizeof(const void *));
    for (size_t i = 0; i < n; i++) rows[i] = items[i].element;
    for (size_t i = 0, next; i < n; i = next) {
        const struct gw_element *e = items[i].element;
        for (next = i + 1; next < n && items[next].wall == items[i].wall;) next++;
        const char *building = e->building ? e->building->name : "";
        gw_view_table(page, gw_format(page->arena, "Wall %s, building %s", e->wall, building), &BANDS, rows + i,
                      next - i);
    }
}

static void unknown_places(struct page *page)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    if (!t->no_offset && !t->no_sill && !t->no_wall) return;
    gw_report_line(
        page->report,
        gw_format(page->arena,
                  "Place unknown: %ld openings without an offset and %ld without a wall (taken in the edge zone), "
                  "%ld without a sill (taken at the top of the building).",
                  t->no_offset, t->no_wall, t->no_sill));
}

/* Framing, tests --------------------------------------------------------------------------------------------------- */

/* Each pair once. */
static void add_shared(struct gw_text *out, const struct gw_element *e, const char *with)
{
    if (with && strcmp(e->id, with) < 0) gw_text_addf(out, "%s%s with %s", out->length ? ", " : "", e->id, with);
}

static void say_shared(struct page *page, const struct gw_text *pairs)
{
    if (pairs->length)
        gw_report_line(page->report, gw_format(page->arena,
                                               "Counted in both walls that meet at a corner, each row one "
                                               "face of the same ones: %s.",
                                               pairs->at));
}

static const struct view_column REACTION_COLUMNS[] = {
    COLUMN("Anchors", "place"),
    COLUMN("From - to", "extent", .dim = GW_LENGTH),
    COLUMN("Count", "count"),
    COLUMN("In 0.6 W", "inward_asd", .rounding = UP),
    COLUMN("Out 0.6 W", "outward_asd", .rounding = UP),
    COLUMN("In 1.0 W", "inward", .rounding = UP),
    COLUMN("Out 1.0 W", "outward", .rounding = UP),
    COLUMN("Carries", "carries"),
    COLUMN("Wall", "area"),
};
static const struct view REACTIONS = VIEW(&gw_reaction_record, REACTION_COLUMNS);

static void reactions(struct page *page)
{
    const struct gw_answer *answer = page->results->answer;
    if (!answer->reactions.n) return;
    gw_report_heading(page->report, 2, "Reactions of the anchors under wind, each");
    gw_view_list(page, "", &REACTIONS, answer->reactions.items, answer->reactions.n);
    gw_report_line(page->report,
                   "Wall: the piece of mullion that hangs on the anchor, 0 where it is slotted; its dead load is "
                   "that area times the weight of framing and glass. At an outside corner: of each face. "
                   "An anchor that the roof line cuts is listed once, with both of its parts; one whose "
                   "load the method does not give has no figures.");
    struct gw_text shared;
    gw_text_init(&shared, page->arena);
    for (size_t i = 0; i < answer->reactions.n; i++)
        add_shared(&shared, answer->reactions.items[i].element, answer->reactions.items[i].shared_with);
    say_shared(page, &shared);
}

static bool same_row(const struct gw_element *a, const struct gw_element *b)
{
    return same_band(a, b) && strcmp(a->mark, b->mark) == 0;
}

/* Of like members of a wall the one that needs most; the result file has them all. */
static bool needs_most(const struct gw_answer *answer, size_t at)
{
    const struct gw_member_demand *own = &answer->members.items[at];
    for (size_t i = 0; i < answer->members.n; i++) {
        const struct gw_member_demand *other = &answer->members.items[i];
        if (i == at || !same_row(own->element, other->element)) continue;
        if (other->inertia > own->inertia || (i < at && !(own->inertia > other->inertia))) return false;
    }
    return true;
}

static const struct view_column MEMBER_COLUMNS[] = {
    COLUMN("Members", "member_place"),
    COLUMN("From - to", "extent", .dim = GW_LENGTH),
    COLUMN("Count", "count"),
    COLUMN("Moment", "moment_asd", .rounding = UP, .dim = GW_BENDING),
    COLUMN("Shear", "shear_asd", .rounding = UP),
    COLUMN("Deflection limit", "deflection_limit", .rounding = DOWN, .dim = GW_THICKNESS),
    COLUMN("I of aluminum", "inertia_needed", .rounding = UP),
};
static const struct view MEMBERS = VIEW(&gw_member_record, MEMBER_COLUMNS);

static void members(struct page *page)
{
    const struct gw_answer *answer = page->results->answer;
    const void **rows = gw_alloc(page->arena, answer->members.n + 1, sizeof(const void *));
    size_t n = 0;
    for (size_t i = 0; i < answer->members.n; i++)
        if (needs_most(answer, i)) rows[n++] = &answer->members.items[i];
    if (!n) return;
    gw_report_heading(page->report, 2, "What framing must bring under wind (0.6 W)");
    gw_view_table(page, "", &MEMBERS, rows, n);
    gw_report_line(page->report, "Of like members of a wall the one that needs most. Section modulus needed: the "
                                 "moment over the allowable stress of the alloy. A corner "
                                 "mullion takes both faces: the moment about each axis.");
    struct gw_text shared;
    gw_text_init(&shared, page->arena);
    for (size_t i = 0; i < answer->members.n; i++)
        add_shared(&shared, answer->members.items[i].element, answer->members.items[i].shared_with);
    say_shared(page, &shared);
}

static const struct view_column MOCK_UP_COLUMNS[] = {
    COLUMN("Step", NULL),
    COLUMN("Test", "test_and_again"),
    COLUMN("Method", "method"),
    COLUMN("Pressure", "pressure"),
    COLUMN("Leakage at most", "leakage"),
    COLUMN("Racking", "racking", .dim = GW_THICKNESS),
    COLUMN("Limit", "limit", .dim = GW_THICKNESS),
};
static const struct view MOCK_UP = VIEW(&gw_mock_up_record, MOCK_UP_COLUMNS);

static void mock_up(struct page *page)
{
    const struct gw_answer *answer = page->results->answer;
    gw_report_heading(page->report, 2, "Tests of a laboratory mock-up, in their order");
    if (gw_said(&answer->mock_up_fault)) {
        gw_report_line(page->report, gw_format(page->arena, "Not shown: %s",
                                               gw_message_text(page->arena, &answer->mock_up_fault, page->shown)));
        return;
    }
    gw_view_list(page, "", &MOCK_UP, page->results->mock_up.items, page->results->mock_up.n);
    gw_report_line(page->report,
                   "At the greatest pressures of the walls below the roof line, on the greatest span. Limit: "
                   "deflection at the design pressure, permanent set after proof.");
}

/* Given pressures ------------------------------------------------------------------------------------------------ */

/* Differences of one zone, size and direction: the worst of them, for all. */
struct difference_line {
    const struct gw_difference *worst;
    long count;
};

static bool percent(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_difference *d = ((const struct difference_line *)thing)->worst;
    const double hundred = 100;
    (void)shown;
    gw_text_fixed(out, hundred * d->excess, 0);
    gw_text_addf(out, " %%%s", d->excess < 0 ? ", too low" : "");
    return true;
}

static const struct gw_field DIFFERENCE_LINE[] = {
    F(difference_line, count, GW_T_COUNT),
    {.key = "percent", .type = GW_T_SAID, .say = percent},
    F(difference_line, worst, GW_T_RECORD, .record = &gw_difference_record, .flags = GW_FLAT),
};
static const struct gw_record DIFFERENCE_LINE_RECORD =
    RECORD("line", difference_line, DIFFERENCE_LINE, .help = "differences of one zone, size and direction");

static bool same_size(const void *left, const void *right)
{
    const struct gw_difference *a = ((const struct difference_line *)left)->worst,
                               *b = ((const struct difference_line *)right)->worst;
    return a->element->zone == b->element->zone && a->element->building == b->element->building &&
           strcmp(a->direction, b->direction) == 0 && strcmp(a->source, b->source) == 0 &&
           fabs(a->element->effective_area - b->element->effective_area) <= GW_HAIR * a->element->effective_area;
}

static void take_difference(void *into, const void *row, bool first)
{
    struct difference_line *line = into;
    if (!first) line->count += ((const struct difference_line *)row)->count;
}

static int by_excess(const void *left, const void *right)
{
    const struct gw_difference *a = ((const struct difference_line *)left)->worst,
                               *b = ((const struct difference_line *)right)->worst;
    const int order = (a->excess > b->excess) - (a->excess < b->excess);
    return order ? order : (a > b) - (a < b);
}

static const struct view_column DIFFERENCE_COLUMNS[] = {COLUMN("Worst element", "element"),
                                                        COLUMN("Count", "count"),
                                                        COLUMN("Zone", "zone"),
                                                        COLUMN("Area", "effective_area"),
                                                        COLUMN("Direction", "direction"),
                                                        COLUMN("Computed", "computed", .rounding = UP),
                                                        COLUMN("Given", "given"),
                                                        COLUMN("Given is", "percent", .right = true),
                                                        COLUMN("Source", "source")};
static const struct view DIFFERENCES =
    VIEW(&DIFFERENCE_LINE_RECORD, DIFFERENCE_COLUMNS, .same = same_size, .merge = take_difference);

static void differences(struct page *page)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    if (!t->differences.n) return;
    struct difference_line *lines = gw_alloc(page->arena, t->differences.n, sizeof *lines);
    for (size_t i = 0; i < t->differences.n; i++)
        lines[i] = (struct difference_line){&t->differences.items[i], t->differences.items[i].element->count};
    qsort(lines, t->differences.n, sizeof *lines, by_excess);
    gw_report_heading(page->report, 2, "Given pressures that differ by more than 5 %");
    gw_view_list(page, "Strength level; a line for each zone and effective area, of its worst element. Too low first.",
                 &DIFFERENCES, lines, t->differences.n);
}

/* The whole -------------------------------------------------------------------------------------------------------- */

static const struct view_column GROUP_COLUMNS[] = {
    COLUMN("Group", "id"),
    COLUMN("Count", "count"),
    COLUMN("Width", "width"),
    COLUMN("Height", "height"),
    COLUMN("From - to", "extent", .dim = GW_LENGTH, .right = true),
    COLUMN("Zone", "zone_in_short"),
    COLUMN("Area", "effective_area"),
    COLUMN("In", "inward", .rounding = UP),
    COLUMN("Out", "outward", .rounding = UP),
    COLUMN("ASD in", "inward_asd", .rounding = UP),
    COLUMN("ASD out", "outward_asd", .rounding = UP),
    COLUMN("Columns", "columns"),
};
static const struct view GROUPS = VIEW(&gw_element_record, GROUP_COLUMNS);

static void every_group(struct page *page)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    gw_report_heading(page->report, 2, "Every group");
    gw_report_line(page->report, "Zone: p is above the roof line, ? is a place unknown and taken at its worst. "
                                 "Area is the effective wind area.");
    gw_view_list(page, "", &GROUPS, t->elements.items, t->elements.n);
}

static const struct view_column BUILDING_COLUMNS[] = {
    COLUMN("Building", "name"),          COLUMN("Roof height", "roof_height"), COLUMN("Least width", "least_width"),
    COLUMN("Parapet", "parapet_height"), COLUMN("Roof slope", "roof_slope"),   COLUMN("Enclosure", "enclosure"),
};
static const struct view BUILDINGS = VIEW(&gw_building_record, BUILDING_COLUMNS);

static void demand_page(struct gw_report *report, const struct gw_result *result)
{
    struct page page = gw_page_of(report, result->value);
    const struct gw_project *project = &page.results->answer->model->project;
    gw_page_head(&page, "Wind demand");
    gw_view_list(&page, "", &BUILDINGS, project->buildings.items, project->buildings.n);
    gw_report_heading(report, 2, "Pressures by wall");
    gw_report_line(
        report,
        "Worst of each row. Inward and outward: strength level; ASD: allowable-stress level. Outward is negative.");
    unknown_places(&page);
    wall_tables(&page);
    gw_page_other_demands(&page);
    members(&page);
    reactions(&page);
    mock_up(&page);
    differences(&page);
    every_group(&page);
    gw_page_foot(&page, &page.results->used);
}

struct gw_result gw_result_demand(const struct gw_results *results)
{
    return (struct gw_result){.shown = results->shown,
                              .record = &gw_demand_results_record,
                              .value = results,
                              .rows = "elements",
                              .sheet = gw_sheet_of_elements,
                              .page = demand_page};
}

static const struct view_column NAME_COLUMNS[] = {COLUMN("Element", "id"), COLUMN("Kind", "kind"),
                                                  COLUMN("Count", "count"), COLUMN("Zone", "zone"),
                                                  COLUMN("Columns", "columns")};
static const struct view NAMES = VIEW(&gw_element_record, NAME_COLUMNS);

static void names_page(struct gw_report *report, const struct gw_result *result)
{
    struct page page = gw_page_of(report, result->value);
    const struct gw_takeoff *t = page.results->answer->takeoff;
    gw_view_list(&page, "Give one of these to 'explain'.", &NAMES, t->elements.items, t->elements.n);
}

struct gw_result gw_result_elements(const struct gw_results *results)
{
    struct gw_result result = gw_result_demand(results);
    result.rows = NULL;
    result.sheet = NULL;
    result.page = names_page;
    return result;
}
