/* What the site asks: by wall, height and zone; glass, framing, anchors, tests. */
#include "report/demand.h"
#include "base/fields.h"

#include "report/draw/pictures.h"
#include "report/how_found.h"
#include "report/results.h"
#include "report/sheets.h"
#include "report/view.h"

#include <string.h>

static const struct view_column MOCK_UP_COLUMNS[] = {
    COLUMN("Step", NULL),
    COLUMN("Test", "test_and_again"),
    COLUMN("Method", "method"),
    COLUMN("Pressure", "magnitude", .dim = GW_PRESSURE, .right = true),
    COLUMN("Leakage at most", "leakage"),
    COLUMN("Racking", "racking", .rounding = UP, .dim = GW_THICKNESS),
    COLUMN("Limit", "limit", .rounding = DOWN, .dim = GW_THICKNESS),
};
static const struct view MOCK_UP = VIEW(&gw_mock_up_record, MOCK_UP_COLUMNS);

static const struct view_column APART_COLUMNS[] = {COLUMN("Test", "title"), COLUMN("Method", "method"),
                                                   COLUMN("Asked", "asked")};
static const struct view APART = VIEW(&gw_test_apart_record, APART_COLUMNS);

/* With the decimals that tables of pressures have, so that one figure reads one way. */
static const char *as_in_tables(struct page *page, double pressure)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    gw_add_bare(&out, GW_PRESSURE, page->shown, pressure, UP);
    gw_text_addf(&out, " %s", gw_dim_info(GW_PRESSURE)->shown[page->shown]);
    return out.at;
}

/* What the sequence leaves out: racking of an unknown drift, what stands above the roof line. */
static void left_out(struct page *page)
{
    const struct gw_answer *a = page->results->answer;
    if (gw_said(&a->racking_fault))
        gw_report_line(page->report, gw_format(page->arena, "Racking (AAMA 501.4) belongs to it, not shown: %s",
                                               gw_message_text(page->arena, &a->racking_fault, page->shown)));
    if (a->above_roof_inward > 0 || a->above_roof_outward > 0)
        gw_report_line(
            page->report,
            gw_format(page->arena,
                      "Not in it: lites above the roof line, up to %s inward and %s outward (allowable-stress "
                      "level); where a parapet is tested too, it is by these.",
                      as_in_tables(page, a->above_roof_inward), as_in_tables(page, a->above_roof_outward)));
}

void gw_page_apart_table(struct page *page)
{
    const struct gw_answer *a = page->results->answer;
    gw_view_list(page, "", &APART, a->apart.items, a->apart.n);
}

static void apart(struct page *page)
{
    gw_report_section(page->report, GW_PART_DEMANDS, "Tests of specimens of their own");
    gw_page_apart_table(page);
    if (page->report->pictures)
        gw_report_line(page->report, "What is asked of them is as their methods and the project's file give it.");
}

/* The pressure that such a step is a multiple of; absent: none. */
static double design_of(const struct gw_sequence *all, const struct gw_sequence_step *step)
{
    const bool outward = step->test == GW_STEP_PROOF_OUT;
    const enum gw_sequence_test design = outward ? GW_STEP_DESIGN_OUT : GW_STEP_DESIGN_IN;
    if (!outward && step->test != GW_STEP_PROOF_IN && step->test != GW_STEP_PRELOAD) return GW_ABSENT;
    for (size_t i = 0; i < all->n; i++)
        if (all->steps[i].test == design) return fabs(all->steps[i].pressure);
    return GW_ABSENT;
}

/* Who multiplies the printed pressure must come out at the printed proof, or below it. */
static struct gw_sequence as_multiplied(const struct page *page, const struct gw_sequence *all)
{
    struct gw_sequence out = *all;
    for (size_t i = 0; i < out.n; i++) {
        struct gw_sequence_step *step = &out.steps[i];
        const double design = design_of(all, step);
        if (design > 0)
            step->pressure = copysign(gw_times_printed(GW_PRESSURE, page->shown, fabs(step->pressure) / design, design),
                                      step->pressure);
    }
    return out;
}

void gw_page_mock_up_table(struct page *page)
{
    const struct gw_answer *answer = page->results->answer;
    if (gw_said(&answer->mock_up_fault)) {
        gw_report_line(page->report, gw_format(page->arena, "Not shown: %s",
                                               gw_message_text(page->arena, &answer->mock_up_fault, page->shown)));
        return;
    }
    struct gw_sequence *steps = gw_alloc(page->arena, 1, sizeof *steps);
    *steps = as_multiplied(page, &answer->mock_up);
    gw_view_list(page, "", &MOCK_UP, steps->steps, steps->n);
    gw_report_line(page->report,
                   "At the greatest pressures of the walls below the roof line, on the greatest span. Limit: "
                   "deflection at the design pressure, permanent set after proof.");
    left_out(page);
}

static void mock_up(struct page *page)
{
    gw_report_section(page->report, GW_PART_DEMANDS, "Tests of a laboratory mock-up, in their order");
    gw_page_mock_up_table(page);
    gw_page_how_found(page, NULL,
                      "Limits are the standards' own; what is asked of air and water stands under Other "
                      "demands.");
}

/* The whole -------------------------------------------------------------------------------------------------------- */

static const struct view_column GROUP_COLUMNS[] = {
    COLUMN("Group", "id"),
    COLUMN("Count", "count"),
    COLUMN("Size", "size", .dim = GW_LENGTH, .right = true),
    COLUMN("From - to", "heights", .dim = GW_LENGTH, .right = true),
    COLUMN("At", "own_height", .dim = GW_LENGTH, .right = true),
    COLUMN("Zone", "zone_in_short"),
    COLUMN("Area", "effective_area"),
    COLUMN("In", "inward_levels", .dim = GW_PRESSURE, .right = true),
    COLUMN("Out", "outward_levels", .dim = GW_PRESSURE, .right = true),
    COLUMN("Columns", "columns"),
};
static const struct view GROUPS = VIEW(&gw_element_record, GROUP_COLUMNS);

static void every_group(struct page *page)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    gw_report_section(page->report, GW_PART_DEMANDS, "Every group");
    gw_report_line(page->report,
                   "Size: width and height carried, of screws their spacing. At: height of a transom or an anchor "
                   "itself. Zone: p is above the roof line, ? is a place unknown and taken at its worst. Area is the "
                   "effective wind area. In and out: strength / allowable-stress level.");
    gw_view_list(page, "", &GROUPS, t->elements.items, t->elements.n);
    gw_page_how_found(page, t->elements.n ? &t->elements.items[0] : NULL,
                      "Given pressures stand there with their source.");
}

static const struct view_column BUILDING_COLUMNS[] = {
    COLUMN("Building", "name"),          COLUMN("Roof height", "roof_height"), COLUMN("Least width", "least_width"),
    COLUMN("Parapet", "parapet_height"), COLUMN("Roof slope", "roof_slope"),   COLUMN("Enclosure", "enclosure"),
};
static const struct view BUILDINGS = VIEW(&gw_building_record, BUILDING_COLUMNS);

/* What is asked most, in a sentence, where the page is to be filed. */
static void lead(struct page *page)
{
    const struct gw_derivations *all = &page->results->derivations;
    const struct gw_derivation *d = all->list.n && !all->list.items[0].finding ? &all->list.items[0] : NULL;
    if (!page->report->pictures || !d) return;
    const double outward = -d->element->outward.pa, asd = -d->element->outward_asd.pa;
    gw_report_lead(page->report, gw_format(page->arena,
                                           "The most is asked of %s: %s outward at strength level, %s at "
                                           "allowable-stress level.",
                                           d->element->id, gw_quantity_text(page, GW_PRESSURE, outward, UP),
                                           gw_quantity_text(page, GW_PRESSURE, asd, UP)));
    gw_report_line(page->report, "Its steps: D1.");
}

/* Of what is asked most, else of the first wall. */
static void first_picture(struct page *page)
{
    const struct gw_derivations *all = &page->results->derivations;
    const char *wall = all->list.n ? gw_picture_word(page->arena, all->list.items[0].element->wall) : NULL;
    const char *name = wall ? gw_format(page->arena, "elevation:%s:outward", wall) : "elevation";
    gw_page_picture(page, &page->results->pictures, name);
}

/* Each wall both ways and by height, of a few walls. */
static void pictures(struct page *page)
{
    enum { FEW = 12 };
    const struct gw_pictures *all = &page->results->pictures;
    gw_page_picture(page, all, "plan");
    for (size_t i = 0; i < all->n && i < FEW && page->report->pictures; i++)
        gw_page_picture(page, all, all->items[i].name);
    if (page->report->pictures && all->n > FEW)
        gw_report_line(page->report, "More walls: --drawing list names their drawings, -o FILE.svg --drawing NAME "
                                     "writes one.");
}

static void demand_page(struct gw_report *report, const struct gw_result *result)
{
    struct page page = gw_page_of(report, result->value);
    const struct gw_project *project = &page.results->answer->model->project;
    gw_page_rest(&page, "demand");
    gw_page_head(&page, "Wind demand");
    lead(&page);
    gw_view_list(&page, page.report->pictures ? "Buildings" : "", &BUILDINGS, project->buildings.items,
                 project->buildings.n);
    first_picture(&page);
    gw_page_walls(&page);
    pictures(&page);
    gw_page_glass(&page);
    gw_page_members(&page);
    gw_page_reactions(&page);
    gw_page_other_demands(&page);
    mock_up(&page);
    apart(&page);
    gw_page_given(&page);
    if (page.results->all) every_group(&page);
    gw_page_derivations(&page);
    gw_page_foot(&page, &page.results->used);
}

struct gw_result gw_result_demand(const struct gw_results *results)
{
    return (struct gw_result){.shown = results->shown,
                              .record = &gw_demand_results_record,
                              .value = results,
                              .rows = "elements",
                              .sheet = gw_sheet_of_elements,
                              .pictures = &results->pictures,
                              .page = demand_page};
}
