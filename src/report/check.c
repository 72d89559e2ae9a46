/* What each candidate answers: a line, a row a check, and the groups that fail or are not shown. */
#include "report/check.h"
#include "base/fields.h"
#include "report/results.h"
#include "report/sheets.h"
#include "report/view.h"

#include <string.h>

/* A row a check -------------------------------------------------------------------------------------------------- */

struct check_row {
    const struct gw_finding *governing;
    long counts[4];
};

#define COUNTED(key_, verdict_)                                                                                        \
    {                                                                                                                  \
        .key = key_, .type = GW_T_COUNT, .offset = offsetof(struct check_row, counts[verdict_])                        \
    }
static const struct gw_field CHECK_ROW[] = {
    F(check_row, governing, GW_T_RECORD, .record = &gw_finding_record, .flags = GW_FLAT),
    COUNTED("pass", GW_PASS),
    COUNTED("fail", GW_FAIL),
    COUNTED("not_shown", GW_NOT_SHOWN),
};
static const struct gw_record CHECK_ROW_RECORD =
    RECORD("check", check_row, CHECK_ROW, .help = "one check of a candidate");

static const struct view_column CHECK_COLUMNS[] = {
    COLUMN("Check", "check_name"),
    COLUMN("Verdict", "verdict", .tone = gw_verdict_tone),
    COLUMN("Use", "utilisation", .use = true),
    COLUMN("Required", "required", .right = true),
    COLUMN("Provided", "provided", .right = true),
    COLUMN("Evidence", "evidence"),
    COLUMN("Pass", "pass"),
    COLUMN("Fail", "fail"),
    COLUMN("Not shown", "not_shown"),
    COLUMN("Why", "message"),
};
static const struct view CHECKS = VIEW(&CHECK_ROW_RECORD, CHECK_COLUMNS);

struct check_rows {
    struct check_row *items;
    size_t n, capacity, last;
};

static bool same_check(const struct gw_demand *a, const struct gw_demand *b)
{
    return a->check == b->check && strcmp(gw_check_name(a), gw_check_name(b)) == 0;
}

/* Findings of a check mostly follow each other, so the row of the one before is tried first. */
static struct check_row *row_of(struct page *page, struct check_rows *rows, const struct gw_finding *f)
{
    if (rows->n && same_check(rows->items[rows->last].governing->demand, f->demand)) return &rows->items[rows->last];
    size_t i = 0;
    while (i < rows->n && !same_check(rows->items[i].governing->demand, f->demand)) i++;
    if (i == rows->n) {
        rows->items = gw_grow(page->arena, rows->items, rows->n, &rows->capacity, sizeof *rows->items);
        rows->items[rows->n++] = (struct check_row){.governing = f};
    }
    rows->last = i;
    return &rows->items[i];
}

/* Checks that rest on the same rows share a line. */
static void weak_figures(struct page *page, const struct check_rows *rows)
{
    struct resting *figures = gw_alloc(page->arena, rows->n + 1, sizeof *figures);
    for (size_t i = 0; i < rows->n; i++) {
        const struct gw_finding *f = rows->items[i].governing;
        figures[i] = (struct resting){gw_check_name(f->demand), f->verdict == GW_NOT_REQUIRED ? NULL : f->used};
    }
    gw_page_recalled(page, "Recalled, not yet confirmed -", figures, rows->n);
}

static void check_table(struct page *page, const struct check_rows *rows)
{
    gw_view_list(page, "", &CHECKS, rows->items, rows->n);
    if (page->results->sources) weak_figures(page, rows);
}

/* Three figures to a line; a candidate without the data has no line. */
static const struct view_column REACH_COLUMNS[] = {
    COLUMN("How far it goes, by calculation", "place"),
    COLUMN("Mullion span", "mullion_span", .rounding = DOWN),
    COLUMN("at width", "at_width"),
    COLUMN("Width", "mullion_width", .rounding = DOWN),
    COLUMN("at span", "at_span"),
    COLUMN("Screw spacing", "screw_spacing", .rounding = DOWN, .dim = GW_THICKNESS),
    COLUMN("at width", "screw_width"),
};
static const struct view REACHES = VIEW(&gw_reach_record, REACH_COLUMNS);

static void reach(struct page *page, const struct gw_system *candidate)
{
    const struct gw_answer *j = page->results->answer;
    const void **rows = gw_alloc(page->arena, j->reaches.n + 1, sizeof(const void *));
    size_t n = 0;
    for (size_t i = 0; i < j->reaches.n; i++)
        if (j->reaches.items[i].candidate == candidate) rows[n++] = &j->reaches.items[i];
    gw_view_table(page, "", &REACHES, rows, n);
}

/* The first of what is to be asked; all of it stands in the data. */
static void requests(struct page *page, const struct gw_system *candidate)
{
    enum { SHOWN = 8 };
    const struct gw_answer *a = page->results->answer;
    size_t all = 0;
    for (size_t i = 0; i < a->missing.n; i++) {
        const struct gw_request *r = &a->missing.items[i];
        if (r->candidate != candidate || ++all > SHOWN) continue;
        if (all == 1) gw_report_heading(page->report, 3, "What to ask");
        const char *about = r->first ? gw_check_name(r->first->demand) : "given pressures";
        gw_report_item(page->report, gw_format(page->arena, "%s: %s (%ld place%s)", about,
                                               gw_message_text(page->arena, &r->question, page->shown), r->places,
                                               r->places == 1 ? "" : "s"));
    }
    if (all > SHOWN) gw_report_line(page->report, gw_format(page->arena, "And %zu more, in the data.", all - SHOWN));
}

/* What changes no verdict and must be seen first: of each check the one nearest to its limit. */
static void remarks(struct page *page, size_t begin, size_t end)
{
    const struct gw_judgement *j = &page->results->answer->judgement;
    for (size_t i = begin; i < end;) {
        const struct gw_finding *worst = NULL, *first = &j->findings.items[i];
        long places = 0;
        for (; i < end && same_check(j->findings.items[i].demand, first->demand); i++) {
            const struct gw_finding *f = &j->findings.items[i];
            if (!gw_said(&f->remark)) continue;
            if (gw_graver(f, worst)) worst = f;
            places++;
        }
        if (!worst) continue;
        gw_report_item(page->report,
                       gw_format(page->arena, "Remark - %s at %s: %s (%ld place%s)", gw_check_name(worst->demand),
                                 worst->demand->where, gw_message_text(page->arena, &worst->remark, page->shown),
                                 places, places == 1 ? "" : "s"));
    }
}

/* A candidate ----------------------------------------------------------------------------------------------------- */

static const char *headline(struct page *page, const struct gw_summary *s)
{
    if (gw_said(&s->held))
        return gw_format(page->arena, "%s: %s: %s (at these %ld pass, %ld fail, %ld not required)", s->candidate->name,
                         gw_verdict_loud((int)s->verdict), gw_message_text(page->arena, &s->held, page->shown),
                         s->counts[GW_PASS], s->counts[GW_FAIL], s->counts[GW_NOT_REQUIRED]);
    return gw_format(page->arena, "%s: %s (%ld pass, %ld fail, %ld not shown, %ld not required)", s->candidate->name,
                     gw_verdict_loud((int)s->verdict), s->counts[GW_PASS], s->counts[GW_FAIL], s->counts[GW_NOT_SHOWN],
                     s->counts[GW_NOT_REQUIRED]);
}

static void edge_only(struct page *page, const struct trouble *troubles, size_t n)
{
    size_t failed = 0;
    for (size_t i = 0; i < n; i++) {
        const struct gw_element *e = troubles[i].finding->demand->element;
        if (troubles[i].finding->verdict != GW_FAIL) continue;
        if (!e || e->zone != 5) return;
        failed++;
    }
    if (failed) gw_report_line(page->report, "It fails in the edge strips (zone 5) only.");
}

/* Findings stand by candidate; `*at` moves past this one's. */
static void candidate(struct page *page, const struct gw_summary *s, size_t *at)
{
    const struct gw_judgement *j = &page->results->answer->judgement;
    struct check_rows rows = {0};
    size_t begin = *at, n = 0;
    while (*at < j->findings.n && j->findings.items[*at].candidate == s->candidate) ++*at;
    struct trouble *troubles = gw_alloc(page->arena, *at - begin + 1, sizeof *troubles);
    for (size_t i = begin; i < *at; i++) {
        const struct gw_finding *f = &j->findings.items[i];
        struct check_row *row = row_of(page, &rows, f);
        row->counts[f->verdict]++;
        if (gw_graver(f, row->governing)) row->governing = f;
        if (gw_verdict_rank(f->verdict) > gw_verdict_rank(GW_PASS))
            troubles[n++] = (struct trouble){.finding = f, .check = rows.last, .index = i};
    }
    gw_report_heading(page->report, 2, headline(page, s));
    edge_only(page, troubles, n);
    remarks(page, begin, *at);
    requests(page, s->candidate);
    check_table(page, &rows);
    reach(page, s->candidate);
    gw_page_troubles(page, troubles, n);
}

static const struct view_column SUMMARY_COLUMNS[] = {
    COLUMN("Candidate", "candidate"),
    COLUMN("Verdict", "verdict_loud", .tone = gw_verdict_tone),
    COLUMN("Pass", "pass"),
    COLUMN("Fail", "fail"),
    COLUMN("Not shown", "not_shown"),
    COLUMN("Governing check", "check_name"),
    COLUMN("at", "governing_element"),
    COLUMN("Use", "utilisation", .use = true),
};
static const struct view SUMMARIES = VIEW(&gw_summary_record, SUMMARY_COLUMNS);

/* On the first screen: what the figure that governs a candidate rests on. */
static void weak_verdicts(struct page *page)
{
    const struct gw_judgement *j = &page->results->answer->judgement;
    struct resting *figures = gw_alloc(page->arena, j->summaries.n + 1, sizeof *figures);
    for (size_t i = 0; i < j->summaries.n; i++) {
        const struct gw_summary *s = &j->summaries.items[i];
        figures[i] = (struct resting){s->candidate->name, s->governing ? s->governing->used : NULL};
    }
    gw_page_recalled(page, "Recalled rows behind what governs", figures, j->summaries.n);
}

static void check_page(struct gw_report *report, const struct gw_result *result)
{
    struct page page = gw_page_of(report, result->value);
    const struct gw_judgement *j = &page.results->answer->judgement;
    size_t at = 0;
    gw_page_head(&page, "Candidates");
    gw_view_list(&page, "Use is required over provided: up to 1.00 passes. Not shown is never a pass.", &SUMMARIES,
                 j->summaries.items, j->summaries.n);
    weak_verdicts(&page);
    if (!j->summaries.n)
        gw_report_line(report,
                       "No candidates are listed: nothing is shown. Add 'candidates: [a system file]' to the project.");
    for (size_t i = 0; i < j->summaries.n; i++) candidate(&page, &j->summaries.items[i], &at);
    gw_page_foot(&page, &page.results->used);
}

struct gw_result gw_result_check(const struct gw_results *results)
{
    return (struct gw_result){.shown = results->shown,
                              .record = &gw_results_record,
                              .value = results,
                              .rows = "verdicts",
                              .sheet = gw_sheet_of_verdicts,
                              .page = check_page};
}
