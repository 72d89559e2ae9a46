/* The page of a review: the verdict, what fails and why, what is not shown and whom to ask; then every comment, what is
 * complete, what stands below. */
#include "report/review.h"
#include "report/draw/pictures.h"
#include "report/results.h"
#include "report/view.h"

#include <ctype.h>
#include <string.h>

static const char *words(struct page *page, const struct gw_message *m)
{
    return gw_message_text(page->arena, m, page->shown);
}

static bool is_open(const struct gw_comment *c) { return c->status != GW_COMMENT_CLOSED; }

/* The first screen ------------------------------------------------------------------------------------------------- */

static const char *system_words(struct page *page, const struct gw_review *r)
{
    static const char *const says[] = {[GW_NOT_SHOWN] = "is not shown",
                                       [GW_PASS] = "passes",
                                       [GW_FAIL] = "fails",
                                       [GW_NOT_REQUIRED] = "is asked nothing"};
    if (!r->judged) return "No system is known.";
    const char *claimed = says[r->as_claimed.verdict], *shown = says[r->as_evidenced.verdict];
    if (r->as_evidenced.verdict == GW_PASS && gw_review_worst(r) <= GW_IT_IS_NOT_SHOWN)
        return gw_format(page->arena,
                         "%s passes by its own file and reports alone: what else was submitted, as the comments say, "
                         "does not.",
                         r->judged->name);
    if (claimed == shown)
        return gw_format(page->arena, "%s %s, as claimed and by the evidence that holds.", r->judged->name, claimed);
    return gw_format(page->arena, "%s %s as claimed, and %s by the evidence that holds.", r->judged->name, claimed,
                     shown);
}

static void verdict(struct page *page, const struct gw_review *r)
{
    const enum gw_consequence worst = gw_review_worst(r);
    static const char *const sentences[] = {
        [GW_IT_FAILS] = "The submittal fails.",
        [GW_IT_IS_NOT_SHOWN] = "The submittal is not shown: nothing fails, and something is open.",
        [GW_IT_DIFFERS] = "The submittal differs from what was specified or accepted; nothing fails.",
        [GW_A_REMARK] = "The submittal raises remarks alone.",
        [GW_CONSEQUENCES] = "The submittal raises no comment."};
    const char *disposition = gw_choice_name(gw_disposition_choices, (int)r->disposition);
    gw_report_lead(page->report, gw_format(page->arena, "%c%s. %s", toupper((unsigned char)disposition[0]),
                                           disposition + 1, sentences[worst]));
    gw_report_line(page->report, gw_format(page->arena, "Why: %s.", words(page, &r->because)));
    gw_report_line(page->report, system_words(page, r));
}

/* "report_pages" as people say it. */
static const char *item_words(struct page *page, const char *item)
{
    char *said = gw_strdup(page->arena, item);
    for (char *c = said; *c; c++)
        if (*c == '_') *c = ' ';
    return said;
}

/* "Comment 3, report pages, L-1041: submitted a summary; needed the complete report" */
static const char *short_words(struct page *page, const struct gw_comment *c)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    gw_text_addf(&out, "Comment %d, %s, %s: submitted %s", c->number, item_words(page, c->item), words(page, &c->where),
                 words(page, &c->submitted));
    if (gw_said(&c->needed)) gw_text_addf(&out, "; needed %s", words(page, &c->needed));
    if (gw_is_short(page)) gw_text_addf(&out, " (%s)", gw_choice_name(gw_disposition_choices, (int)c->disposition));
    if (gw_said(&c->effect) && !gw_is_short(page)) gw_text_addf(&out, ". Effect: %s", words(page, &c->effect));
    return out.at;
}

/* What it does may be a question too. */
static const char *asking_words(struct page *page, const struct gw_comment *c)
{
    const char *said = short_words(page, c);
    const size_t n = strlen(said);
    return gw_format(page->arena, "%s%s Ask: %s", said, n && said[n - 1] == '?' ? "" : ".", words(page, &c->ask));
}

static void first_comments(struct page *page, const struct gw_review *r, enum gw_consequence consequence,
                           const char *title)
{
    size_t n = 0;
    if (!r->counts[consequence]) return;
    gw_report_section(page->report, GW_PART_FIRST, title);
    for (size_t i = 0; i < r->comments.n; i++) {
        const struct gw_comment *c = &r->comments.items[i];
        if (!is_open(c) || c->consequence != consequence || (n++ >= GW_FIRST_LINES && gw_is_short(page))) continue;
        const bool asks = consequence == GW_IT_IS_NOT_SHOWN && gw_said(&c->ask);
        gw_report_item(page->report, asks ? asking_words(page, c) : short_words(page, c));
    }
    if (n > GW_FIRST_LINES && gw_is_short(page))
        gw_report_line(page->report, gw_format(page->arena, "And %zu more below.", n - GW_FIRST_LINES));
}

/* Comments --------------------------------------------------------------------------------------------------------- */

static const char *const LOUD[] = {"FAILS", "NOT SHOWN", "DIFFERS", "REMARK"};

static void said(struct page *page, const char *term, const struct gw_message *m)
{
    if (gw_said(m)) gw_report_definition(page->report, term, words(page, m));
}

static const char *places_words(struct page *page, const struct gw_comment *c)
{
    enum { MOST = 12 };
    struct gw_text out;
    gw_text_init(&out, page->arena);
    for (size_t i = 0; i < c->places.n && (page->results->all || i < MOST); i++)
        gw_text_addf(&out, "%s%s", i ? ", " : "", c->places.items[i]);
    if (!page->results->all && c->places.n > MOST)
        gw_text_addf(&out, ", and %zu more groups of like ones (--all names them)", c->places.n - MOST);
    return out.at;
}

static void comment(struct page *page, const struct gw_comment *c)
{
    const char *disposition = gw_choice_name(gw_disposition_choices, (int)c->disposition);
    gw_report_heading(page->report, 3,
                      gw_format(page->arena, "%d. %s, %s: %s", c->number, item_words(page, c->item), c->subject,
                                is_open(c) ? LOUD[c->consequence] : "closed"));
    gw_report_line(page->report,
                   is_open(c)
                       ? gw_format(page->arena, "%s; %s", disposition, gw_comment_status_name(c->status))
                       : gw_format(page->arena, "was: %s; %s", gw_consequence_name(c->consequence), disposition));
    said(page, "where", &c->where);
    said(page, "submitted", &c->submitted);
    said(page, "needed", &c->needed);
    said(page, "why", &c->basis);
    said(page, "effect", &c->effect);
    said(page, "ask", &c->ask);
    if (c->places.n > 1) gw_report_definition(page->report, "places", places_words(page, c));
    if (c->line)
        gw_report_definition(
            page->report, "stands in",
            gw_format(page->arena, "%s, line %u", gw_path_without_detours(page->arena, c->file), c->line));
    if (c->decision)
        gw_report_definition(page->report, "decided by",
                             gw_format(page->arena, "%s: %s", c->decision->by, c->decision->reason));
}

static void comments(struct page *page, const struct gw_review *r)
{
    bool closed = false;
    if (r->comments.n) gw_report_section(page->report, GW_PART_ANSWERS, "Comments");
    for (size_t i = 0; i < r->comments.n; i++) {
        if (!is_open(&r->comments.items[i]) && !closed) gw_report_section(page->report, GW_PART_ANSWERS, "Closed");
        closed = closed || !is_open(&r->comments.items[i]);
        comment(page, &r->comments.items[i]);
    }
}

static void complete(struct page *page, const struct gw_review *r)
{
    if (r->complete.n) gw_report_section(page->report, GW_PART_ANSWERS, "Complete, without comment");
    for (size_t i = 0; i < r->complete.n; i++) {
        const struct gw_complete *c = &r->complete.items[i];
        gw_report_item(page->report, gw_format(page->arena, "%s, %s: %s", item_words(page, c->item), c->subject,
                                               words(page, &c->said)));
    }
}

static void confirm(struct page *page, const struct gw_review *r)
{
    static const char lead[] = "to confirm: ";
    if (r->confirm.n) gw_report_section(page->report, GW_PART_ANSWERS, "To be confirmed; no verdict hangs on it");
    for (size_t i = 0; i < r->confirm.n; i++) {
        const struct gw_complete *c = &r->confirm.items[i];
        const char *said = words(page, &c->said);
        if (strncmp(said, lead, strlen(lead)) == 0) said += strlen(lead); /* the heading says so */
        gw_report_item(page->report, gw_format(page->arena, "%s, %s: %s", c->item, c->subject, said));
    }
}

static void deviations(struct page *page, const struct gw_review *r)
{
    const struct gw_submittal *s = r->submittal;
    if (s->deviations.n)
        gw_report_section(page->report, GW_PART_ANSWERS, "Deviations, as the submitter wrote them; not judged");
    for (size_t i = 0; i < s->deviations.n; i++) gw_report_item(page->report, s->deviations.items[i]);
}

/* Where the comments have their places. */
static void pictures(struct page *page, const struct gw_pictures *all)
{
    enum { FEW = 4 };
    for (size_t i = 0; page->report->pictures && all && i < all->n && i < FEW; i++)
        gw_report_figure(page->report, &all->items[i].figure);
}

static const char *title(struct page *page, const struct gw_submittal *s)
{
    const struct gw_submittal_head *h = s->submittal;
    const char *revision = h->revision == GW_NO_INTEGER ? "" : gw_format(page->arena, ", revision %d", h->revision);
    if (page->report->pictures)
        return gw_format(page->arena, "does submittal %s%s answer what is asked?", h->number, revision);
    return gw_format(page->arena, "Review of submittal %s%s", h->number, revision);
}

void gw_review_page(struct gw_report *report, const struct gw_result *result)
{
    const struct gw_reviewed *reviewed = result->value;
    const struct gw_review *r = reviewed->review;
    const struct gw_submittal_head *h = r->submittal->submittal;
    struct page page = gw_page_of(report, reviewed->results);
    gw_page_head(&page, title(&page, r->submittal));
    if (h->title || h->date)
        gw_report_line(report, gw_format(page.arena, "%s%s%s", h->title ? h->title : "",
                                         h->title && h->date ? ", " : "", h->date ? h->date : ""));
    verdict(&page, r);
    first_comments(&page, r, GW_IT_FAILS, "What fails");
    first_comments(&page, r, GW_IT_IS_NOT_SHOWN, "What is not shown, and whom to ask");
    pictures(&page, result->pictures);
    comments(&page, r);
    confirm(&page, r);
    complete(&page, r);
    deviations(&page, r);
    gw_page_foot(&page, &reviewed->results->used);
}
