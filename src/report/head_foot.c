/* The head and the foot of every report: what it is about, and what it does not say. */
#include "report/page.h"

#include <ctype.h>
#include <string.h>

static const char *site_line(struct page *page)
{
    const struct gw_site *site = page->results->answer->model->project.site;
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

static const char *sentence(struct page *page, const char *text)
{
    return gw_format(page->arena, "%c%s", toupper((unsigned char)*text), text + 1);
}

static void seen_first(struct page *page, const char *text)
{
    gw_report_item(page->report, gw_format(page->arena, "%s.", sentence(page, text)));
}

/* Waived against the code, pressures or requirements below the site's: before anything that could be read without it.
 */
static void waivers(struct page *page)
{
    const struct gw_answer *answer = page->results->answer;
    for (size_t i = 0; i < answer->model->waivers.n; i++) seen_first(page, answer->model->waivers.items[i].text);
    for (size_t i = 0; i < answer->takeoff->remarks.n; i++)
        seen_first(page, gw_message_text(page->arena, &answer->takeoff->remarks.items[i], page->shown));
    for (size_t i = 0; i < answer->below_site.n; i++)
        seen_first(page, gw_message_text(page->arena, &answer->below_site.items[i].said, page->shown));
}

/* "Project 24-117, risk category II, ibc-2021, asce7-16" */
static const char *project_line(struct page *page)
{
    const struct gw_project *project = &page->results->answer->model->project;
    const struct gw_info *info = project->project;
    const char *edition = gw_choice_name(gw_edition_choices, (int)project->codes->wind);
    return gw_format(page->arena, "Project %s%srisk category %s, %s, %s", info->number ? info->number : "",
                     info->number ? ", " : "", gw_choice_name(gw_risk_choices, (int)info->risk_category),
                     gw_choice_name(gw_building_code_choices, (int)project->codes->building),
                     *edition ? edition : "wind edition by the building code");
}

void gw_page_head(struct page *page, const char *what)
{
    const struct gw_info *info = page->results->answer->model->project.project;
    gw_report_heading(page->report, 1, gw_format(page->arena, "%s: %s", what, info->name));
    waivers(page);
    gw_report_line(page->report, project_line(page));
    gw_report_line(page->report, site_line(page));
    if (page->results->date) gw_report_line(page->report, gw_format(page->arena, "Run on %s", page->results->date));
}

static void warnings(struct page *page)
{
    const struct gw_results *r = page->results;
    if (r->warnings.n) gw_report_heading(page->report, 2, "Warnings");
    for (size_t i = 0; i < r->warnings.n; i++) {
        const struct gw_diag *d = r->warnings.items[i];
        const char *place = d->source && d->line ? gw_format(page->arena, "%s:%u: ", d->source->name, d->line) : "";
        gw_report_item(page->report, gw_format(page->arena, "%s%s", place, d->message));
    }
}

static bool is_correction(const struct gw_assumption *a) { return strcmp(a->where, "assume") == 0; }

static void assumptions(struct page *page)
{
    const struct gw_results *r = page->results;
    gw_report_heading(page->report, 2, "Assumptions");
    for (size_t i = 0; i < r->assumptions.n; i++) {
        const struct gw_assumption *a = r->assumptions.items[i];
        bool placed = *a->where && !is_correction(a);
        gw_report_item(page->report, gw_format(page->arena, "%s%s%s", placed ? a->where : "", placed ? ": " : "",
                                               gw_message_text(page->arena, &a->text, page->shown)));
    }
    if (!r->assumptions.n) gw_report_line(page->report, "None: every value was given.");
}

const char *gw_caution_text(void)
{
    return "Results are for selection and review. Wind speed, exposure, code edition and local amendments are for the "
           "authority having jurisdiction and the registered design professional to confirm. Test ratings hold for the "
           "tested configuration. Blast, impact and seismic checks do not replace a licensed engineer's.";
}

void gw_page_foot(struct page *page, const struct gw_used *rows)
{
    const struct gw_answer *answer = page->results->answer;
    warnings(page);
    assumptions(page);
    gw_page_sources(page, rows);
    gw_report_heading(page->report, 2, "Not checked here");
    for (size_t i = 0; i < answer->not_checked.n; i++)
        gw_report_item(page->report, gw_format(page->arena, "%s: %s", answer->not_checked.items[i].what,
                                               answer->not_checked.items[i].ask));
    gw_report_heading(page->report, 2, "Caution");
    gw_report_line(page->report, gw_caution_text());
}
