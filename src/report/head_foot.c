/* The head and the foot of every report: what it is about, and what it does not say. */
#include "report/page.h"

#include <ctype.h>
#include <string.h>

const char *gw_site_words(struct page *page)
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
    return gw_format(page->arena, "basic wind speed %s, exposure %s%s%s",
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

/* "risk category II, ibc-2021, asce7-16" */
const char *gw_codes_words(struct page *page)
{
    const struct gw_project *project = &page->results->answer->model->project;
    const char *edition = gw_choice_name(gw_edition_choices, (int)project->codes->wind);
    return gw_format(page->arena, "risk category %s, %s, %s",
                     gw_choice_name(gw_risk_choices, (int)project->project->risk_category),
                     gw_choice_name(gw_building_code_choices, (int)project->codes->building),
                     *edition ? edition : "wind edition by the building code");
}

/* A page that is filed begins with its reader's question. */
static const char *question(const char *what)
{
    static const char *const of[][2] = {{"Candidates", "which system on offer answers the wall?"},
                                        {"Wind demand", "what does the site ask of the wall?"},
                                        {"Choice", "what passes at the least cost?"},
                                        {"Performance requirements", "what must the wall show?"},
                                        {"Inspection", "does what is hung still hold?"},
                                        {"Inspection sheet", "what is to be measured on the wall?"}};
    for (size_t i = 0; i < sizeof of / sizeof *of; i++)
        if (strcmp(of[i][0], what) == 0) return of[i][1];
    return *what && what[strlen(what) - 1] == '?' ? what : NULL;
}

void gw_page_rest(struct page *page, const char *command)
{
    const struct gw_model *model = page->results->answer->model;
    if (!page->report->pictures || page->results->all || !model->inputs.n) return;
    page->report->rest =
        gw_format(page->arena, "galeward %s %s -o %s.txt", command, model->inputs.items[0].file, command);
}

void gw_page_head(struct page *page, const char *what)
{
    const struct gw_info *info = page->results->answer->model->project.project;
    const char *asked = page->report->pictures ? question(what) : NULL;
    gw_report_heading(page->report, 1,
                      asked ? gw_format(page->arena, "%s: %s", info->name, asked)
                            : gw_format(page->arena, "%s: %s", what, info->name));
    waivers(page);
    gw_report_line(page->report, gw_format(page->arena, "Project %s%s%s", info->number ? info->number : "",
                                           info->number ? ", " : "", gw_codes_words(page)));
    gw_report_line(page->report, gw_format(page->arena, "Site: %s", gw_site_words(page)));
    if (page->results->date) gw_report_line(page->report, gw_format(page->arena, "Run on %s", page->results->date));
}

static void warnings(struct page *page)
{
    const struct gw_results *r = page->results;
    if (r->warnings.n) gw_report_section(page->report, GW_PART_INPUTS, "Warnings");
    for (size_t i = 0; i < r->warnings.n; i++) {
        const struct gw_diag *d = r->warnings.items[i];
        const char *place = d->source && d->line ? gw_format(page->arena, "%s:%u: ", d->source->name, d->line) : "";
        gw_report_item(page->report, gw_format(page->arena, "%s%s", place, d->message));
    }
}

const char *gw_caution_text(void)
{
    return "Results are for selection and review. Wind speed, exposure, code edition and local amendments are for the "
           "authority having jurisdiction and the registered design professional to confirm. Test ratings hold for the "
           "tested configuration. Blast, impact and seismic checks do not replace a licensed engineer's.";
}

/* "a, b (the architect); c (the glass supplier)": by whom to ask, in the order in which they first stand there. */
const char *gw_not_checked_words(struct page *page)
{
    const struct gw_answer *a = page->results->answer;
    struct gw_text text;
    gw_text_init(&text, page->arena);
    for (size_t i = 0; i < a->not_checked.n; i++) {
        const char *whom = a->not_checked.items[i].ask;
        bool before = a->not_checked.items[i].applies;
        for (size_t k = 0; k < i && !before; k++)
            before = !a->not_checked.items[k].applies && strcmp(a->not_checked.items[k].ask, whom) == 0;
        if (before) continue;
        const char *between = text.length ? "; " : "";
        for (size_t k = i; k < a->not_checked.n; k++) {
            const struct gw_not_checked *row = &a->not_checked.items[k];
            if (row->applies || strcmp(row->ask, whom) != 0) continue;
            gw_text_addf(&text, "%s%s", between, row->what);
            between = ", ";
        }
        gw_text_addf(&text, " (%s)", whom);
    }
    return text.at;
}

static void not_checked_item(struct page *page, const struct gw_not_checked *row)
{
    gw_report_item(page->report, gw_format(page->arena, "%s: %s", row->what, row->ask));
}

static void not_checked(struct page *page)
{
    const struct gw_answer *a = page->results->answer;
    const bool all = page->results->all;
    gw_report_section(page->report, GW_PART_NOT_CHECKED, "Not checked here");
    for (size_t i = 0; i < a->not_checked.n; i++)
        if (all || a->not_checked.items[i].applies) not_checked_item(page, &a->not_checked.items[i]);
    if (!all) gw_report_line(page->report, gw_format(page->arena, "%s.", sentence(page, gw_not_checked_words(page))));
}

/* "tern-street.yaml (1a2b3c4d), systems/heron.yaml (5e6f7a8b)" */
static const char *inputs(struct page *page)
{
    enum { SHORT = 8 };
    const struct gw_model *model = page->results->answer->model;
    struct gw_text text;
    gw_text_init(&text, page->arena);
    for (size_t i = 0; i < model->inputs.n; i++)
        gw_text_addf(&text, "%s%s (%.*s)", i ? ", " : "", model->inputs.items[i].file, SHORT,
                     model->inputs.items[i].sha256);
    return text.at;
}

const char *gw_made_from(struct page *page)
{
    return gw_format(page->arena,
                     "galeward " GW_VERSION " from %s; in brackets the beginning of "
                     "each file's SHA-256.",
                     inputs(page));
}

static void made_by(struct page *page)
{
    const struct gw_model *model = page->results->answer->model;
    const struct gw_message limit = gw_framing_rule(model, page->arena);
    gw_report_section(page->report, GW_PART_CAUTIONS, "Made by");
    gw_report_line(page->report, gw_made_from(page));
    gw_report_line(page->report, gw_format(page->arena, "Demands and use are rounded up, capacities down. %s.",
                                           sentence(page, gw_message_text(page->arena, &limit, page->shown))));
}

/* Names of which the page has the beginnings. */
static void whole_names(struct page *page)
{
    const struct gw_long_names names = page->report->long_names;
    page->report->long_names = (struct gw_long_names){.n = 0};
    for (size_t i = 0; i < names.n; i++)
        gw_report_item(page->report, gw_format(page->arena, "Whole: %s", names.items[i].text));
    page->report->long_names = names;
}

void gw_page_foot(struct page *page, const struct gw_used *rows)
{
    warnings(page);
    gw_page_assumptions(page);
    gw_page_sources(page, rows);
    not_checked(page);
    gw_report_section(page->report, GW_PART_CAUTIONS, "Caution");
    gw_report_line(page->report, gw_caution_text());
    made_by(page);
    whole_names(page);
}
