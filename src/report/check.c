/* What each candidate answers: first who passes and why the others do not, then each candidate, then what the figures
 * rest on. */
#include "report/check.h"
#include "report/draw/pictures.h"
#include "report/results.h"
#include "report/sheets.h"

#include <string.h>

/* What the figure that governs a candidate rests on. */
static void weak_verdicts(struct page *page)
{
    const struct gw_judgement *j = &page->results->answer->judgement;
    struct resting *figures = gw_alloc(page->arena, j->summaries.n + 1, sizeof *figures);
    for (size_t i = 0; i < j->summaries.n; i++) {
        const struct gw_summary *s = &j->summaries.items[i];
        figures[i] = (struct resting){s->candidate->name, s->governing ? s->governing->used : NULL};
    }
    gw_page_recalled_first(page, figures, j->summaries.n);
}

static void what_follows(struct page *page)
{
    gw_report_line(page->report,
                   page->results->all
                       ? "Below: each candidate with every row, then recalled rows, assumptions, sources, what is not "
                         "checked."
                       : "Below: each candidate, then recalled rows, assumptions, sources, what is not checked. --all "
                         "adds every note and row.");
}

static void of_all(struct page *page, const struct verdict_story *stories)
{
    const struct gw_derivations *steps = &page->results->derivations;
    gw_report_section(page->report, GW_PART_ANSWERS, "Of every candidate");
    if (steps->list.n && !steps->list.items[0].finding)
        gw_report_line(page->report, "How the greatest pressure on a lite comes about: D1.");
    gw_check_not_asked(page, &stories[0]);
    weak_verdicts(page);
}

/* The candidate that a picture tells most of: the first that fails, else that is not shown, else the first. */
static const struct gw_summary *telling(const struct gw_judgement *j)
{
    const struct gw_summary *out = NULL;
    for (size_t i = 0; i < j->summaries.n; i++)
        if (!out || gw_verdict_rank(j->summaries.items[i].verdict) > gw_verdict_rank(out->verdict))
            out = &j->summaries.items[i];
    return out;
}

/* Where it is decided: the wall of what governs. */
static void picture(struct page *page)
{
    const struct gw_summary *s = telling(&page->results->answer->judgement);
    const struct gw_finding *f = s ? gw_deciding(s->governing) : NULL;
    const struct gw_element *e = f ? f->demand->element : NULL;
    if (!page->report->pictures || !s) return;
    const char *name = gw_picture_word(page->arena, s->candidate->name);
    const struct gw_pictures *all = &page->results->pictures;
    for (size_t i = 0; i < all->n; i++) {
        const char *wanted =
            gw_format(page->arena, "elevation:%s:%s", e ? gw_picture_word(page->arena, e->wall) : "", name);
        const bool here = e ? strcmp(all->items[i].name, wanted) == 0 : strstr(all->items[i].name, name) != NULL;
        if (!here) continue;
        gw_report_figure(page->report, &all->items[i].figure);
        return;
    }
}

static const char *const SAYS[][2] = {[GW_NOT_SHOWN] = {"is not shown", "are not shown"},
                                      [GW_PASS] = {"passes", "pass"},
                                      [GW_FAIL] = {"fails", "fail"},
                                      [GW_NOT_REQUIRED] = {"is asked nothing", "are asked nothing"}};

/* "Curlew 200 passes. 9 fail.": those of a verdict by name where they are few. */
static void lead_of(struct gw_text *out, struct page *page, enum gw_verdict verdict)
{
    enum { FEW = 2 };
    const struct gw_judgement *j = &page->results->answer->judgement;
    const char *names[FEW] = {NULL};
    size_t n = 0;
    for (size_t i = 0; i < j->summaries.n; i++) {
        if (j->summaries.items[i].verdict != verdict) continue;
        if (n < FEW) names[n] = j->summaries.items[i].candidate->name;
        n++;
    }
    if (!n) return;
    if (out->length) gw_text_add(out, " ");
    if (n <= FEW) gw_add_names(out, names, n);
    else gw_text_addf(out, "%zu", n);
    gw_text_addf(out, " %s.", SAYS[verdict][n > 1]);
}

/* In one or two sentences, where the page is to be filed. */
static void lead(struct page *page)
{
    enum { MANY = 4 };
    static const enum gw_verdict order[] = {GW_PASS, GW_NOT_SHOWN, GW_FAIL, GW_NOT_REQUIRED};
    const struct gw_judgement *j = &page->results->answer->judgement;
    struct gw_text text;
    if (!page->report->pictures || !j->summaries.n) return;
    gw_text_init(&text, page->arena);
    for (size_t i = 0; i < sizeof order / sizeof *order && j->summaries.n > MANY; i++) lead_of(&text, page, order[i]);
    for (size_t i = 0; i < j->summaries.n && j->summaries.n <= MANY; i++) {
        const struct gw_summary *s = &j->summaries.items[i];
        gw_text_addf(&text, "%s%s %s.", i ? " " : "", s->candidate->name, SAYS[s->verdict][0]);
    }
    gw_report_lead(page->report, text.at);
}

/* How near to its limits, with what was chosen. Of many candidates only the one that the first page is about is drawn
 * by itself: what their screws and glass do is drawn once for like ones, after them. */
static void candidate_pictures(struct page *page, const struct gw_summary *of)
{
    enum { FEW = 3 };
    const struct gw_judgement *j = &page->results->answer->judgement;
    const struct gw_pictures *all = &page->results->pictures;
    const struct gw_system *candidate = of->candidate;
    const bool few = j->summaries.n <= FEW;
    const char *name = gw_picture_word(page->arena, candidate->name);
    if (few || of == telling(j)) gw_page_picture(page, all, gw_format(page->arena, "use:%s", name));
    gw_page_plan_pictures(page, all, candidate);
    if (few || of == telling(j)) gw_page_picture(page, all, gw_format(page->arena, "section:%s", name));
    if (few) gw_page_screws(page, candidate);
    gw_page_details(page, candidate);
    if (few) gw_page_blast(page, candidate);
    else if (of == &j->summaries.items[j->summaries.n - 1]) gw_page_shared_pictures(page);
}

static void check_page(struct gw_report *report, const struct gw_result *result)
{
    struct page page = gw_page_of(report, result->value);
    const struct gw_judgement *j = &page.results->answer->judgement;
    struct verdict_story *stories = gw_alloc(page.arena, j->summaries.n + 1, sizeof *stories);
    size_t at = 0;
    for (size_t i = 0; i < j->summaries.n; i++) gw_story_of(&stories[i], &page, &j->summaries.items[i], &at);
    gw_page_rest(&page, "check");
    gw_page_head(&page, "Candidates");
    lead(&page);
    gw_page_chosen(&page);
    gw_check_first(&page, stories, j->summaries.n);
    picture(&page);
    if (j->summaries.n) what_follows(&page);
    else
        gw_report_line(report,
                       "No candidates are listed: nothing is shown. Add 'candidates: [a system file]' to the project.");
    for (size_t i = 0; i < j->summaries.n; i++) {
        gw_check_one(&page, &stories[i]);
        candidate_pictures(&page, &j->summaries.items[i]);
    }
    if (j->summaries.n) of_all(&page, stories);
    gw_page_derivations(&page);
    gw_page_foot(&page, &page.results->used);
}

struct gw_result gw_result_check(const struct gw_results *results)
{
    return (struct gw_result){.shown = results->shown,
                              .record = &gw_results_record,
                              .value = results,
                              .rows = "verdicts",
                              .sheet = gw_sheet_of_verdicts,
                              .pictures = &results->pictures,
                              .page = check_page};
}
