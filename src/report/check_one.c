/* A candidate, merged: what fails, what is missing, what its tests do not reach, what passes, what is not required. */
#include "base/fields.h"
#include "report/check.h"
#include "report/how_found.h"
#include "report/results.h"
#include "report/view.h"

#include <string.h>

/* Causes -------------------------------------------------------------------------------------------------------------
 */

struct cause_row {
    const char *checks, *use, *required, *provided, *why;
};
static const struct gw_field CAUSE_ROW[] = {
    F(cause_row, checks, GW_T_TEXT),   F(cause_row, use, GW_T_TEXT), F(cause_row, required, GW_T_TEXT),
    F(cause_row, provided, GW_T_TEXT), F(cause_row, why, GW_T_TEXT),
};
static const struct gw_record CAUSE_ROW_RECORD = RECORD("cause", cause_row, CAUSE_ROW, .help = "like findings");

static const struct view_column FAIL_COLUMNS[] = {
    COLUMN("Fails", "checks"),
    COLUMN("Use", "use", .right = true),
    COLUMN("Required", "required", .right = true),
    COLUMN("Provided", "provided", .right = true),
    COLUMN("Why, where", "why"),
};
static const struct view FAILS = VIEW(&CAUSE_ROW_RECORD, FAIL_COLUMNS);
static const struct view_column MISSING_COLUMNS[] = {
    COLUMN("Not shown", "checks"),
    COLUMN("What is missing, whom to ask, where", "why"),
};
static const struct view MISSING = VIEW(&CAUSE_ROW_RECORD, MISSING_COLUMNS);
static const struct view_column UNTESTED_COLUMNS[] = {
    COLUMN("Its tests do not show", "checks"),
    COLUMN("Why, where", "why"),
};
static const struct view UNTESTED = VIEW(&CAUSE_ROW_RECORD, UNTESTED_COLUMNS);

/* Where tables have captions that say what they are. */
static const char *caption(struct page *page, const char *what) { return page->report->pictures ? what : ""; }

static const char RATED[] = "Provided by a test or a statement: as its report or the system's file gives it.";

static void causes(struct page *page, const char *what, const struct view *view, const struct causes *causes)
{
    struct cause_row *rows = gw_alloc(page->arena, causes->n + 1, sizeof *rows);
    for (size_t i = 0; i < causes->n; i++) {
        const struct cause *c = causes->items[i];
        rows[i] = (struct cause_row){
            .checks = gw_checks_words(page, c),
            .use = gw_use_text(page, c->worst),
            .required = gw_required_text(page, c->worst),
            .provided = gw_provided_text(page, c->worst),
            .why = gw_format(page->arena, "%s%s", gw_cause_words(page, c), gw_where_words(page, c, true))};
    }
    gw_view_list(page, caption(page, what), view, rows, causes->n);
    if (view == &FAILS && causes->n) gw_page_how_found(page, causes->items[0]->worst->demand->element, RATED);
}

/* Passes -------------------------------------------------------------------------------------------------------------
 */

struct pass_row {
    const struct gw_finding *governing; /* of those that pass */
    const struct gw_finding *any;       /* of the check */
    bool required;                      /* somewhere */
    bool asked;                         /* somewhere, of whatever system */
};
static const struct gw_field PASS_ROW[] = {
    F(pass_row, governing, GW_T_RECORD, .record = &gw_finding_record, .flags = GW_FLAT),
};
static const struct gw_record PASS_ROW_RECORD = RECORD("pass", pass_row, PASS_ROW, .help = "what passes of a check");
static const struct view_column PASS_COLUMNS[] = {
    COLUMN("Passes", "check_name"),
    COLUMN("Use", "use", .right = true),
    COLUMN("Required", "required", .right = true),
    COLUMN("Provided", "provided", .right = true),
    COLUMN("Evidence", "evidence"),
    COLUMN("Governs at", "place"),
};
static const struct view PASSES = VIEW(&PASS_ROW_RECORD, PASS_COLUMNS);

struct pass_rows {
    struct pass_row *items;
    size_t n, capacity, last;
};

/* Findings of a check mostly follow each other, so the row of the one before is tried first. */
static struct pass_row *row_of(struct page *page, struct pass_rows *rows, const struct gw_finding *f)
{
    if (rows->n && gw_same_check(rows->items[rows->last].any->demand, f->demand)) return &rows->items[rows->last];
    size_t i = 0;
    while (i < rows->n && !gw_same_check(rows->items[i].any->demand, f->demand)) i++;
    if (i == rows->n) {
        rows->items = gw_grow(page->arena, rows->items, rows->n, &rows->capacity, sizeof *rows->items);
        rows->items[rows->n++] = (struct pass_row){.any = f};
    }
    rows->last = i;
    return &rows->items[i];
}

static void gather(struct page *page, struct pass_rows *rows, const struct verdict_story *story)
{
    for (size_t i = 0; i < story->n; i++) {
        const struct gw_finding *f = &story->findings[i];
        struct pass_row *row = row_of(page, rows, f);
        row->required = row->required || f->verdict != GW_NOT_REQUIRED;
        row->asked = row->asked || f->demand->state != GW_NOT_ASKED;
        if (f->verdict == GW_PASS && gw_graver(f, row->governing)) row->governing = f;
    }
}

/* The first row of an element. */
static const struct gw_element *example(const void *const *rows, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        const struct pass_row *row = rows[i];
        if (row->governing->demand->element) return row->governing->demand->element;
    }
    return NULL;
}

static void passes(struct page *page, const struct pass_rows *rows)
{
    const void **shown = gw_alloc(page->arena, rows->n + 1, sizeof(const void *));
    size_t n = 0;
    for (size_t i = 0; i < rows->n; i++)
        if (rows->items[i].governing) shown[n++] = &rows->items[i];
    gw_view_table(page, caption(page, "What passes, where it is nearest to its limit"), &PASSES, shown, n);
    if (n) gw_page_how_found(page, example(shown, n), RATED);
}

/* Checks that are not required by one reason: the one that stands at `i` and those after it. */
static void add_reason(struct gw_text *out, struct page *page, const struct pass_rows *rows, bool *left, size_t i)
{
    const struct gw_message *why = &rows->items[i].any->message;
    size_t n = 0;
    for (size_t k = i; k < rows->n; k++) {
        if (!left[k] || !gw_message_same(&rows->items[k].any->message, why)) continue;
        gw_text_addf(out, "%s%s", n++ ? ", " : "", gw_check_name(rows->items[k].any->demand));
        left[k] = false;
    }
    gw_text_addf(out, " (%s)", gw_message_text(page->arena, why, page->shown));
}

/* `asked`: that the system has no part of; else that nobody is asked for. */
static void not_required(struct page *page, const struct pass_rows *rows, bool asked, const char *lead)
{
    struct gw_text out;
    bool *left = gw_alloc(page->arena, rows->n + 1, sizeof *left);
    gw_text_init(&out, page->arena);
    for (size_t i = 0; i < rows->n; i++) left[i] = !rows->items[i].required && rows->items[i].asked == asked;
    for (size_t i = 0; i < rows->n; i++) {
        if (!left[i]) continue;
        gw_text_add(&out, out.length ? "; " : lead);
        add_reason(&out, page, rows, left, i);
    }
    if (out.length) gw_report_line(page->report, gw_format(page->arena, "%s.", out.at));
}

void gw_check_not_asked(struct page *page, const struct verdict_story *story)
{
    struct pass_rows rows = {0};
    gather(page, &rows, story);
    not_required(page, &rows, false, "Not required of any candidate: ");
}

/* Another asks the same besides more: the last of its questions is all of this one's. */
static bool asked_with_more(const char *const *said, size_t n, size_t i)
{
    const char *lead = strstr(said[i], "to confirm: ");
    if (!lead) return false;
    const char *question = lead + strlen("to confirm: ");
    for (size_t k = 0; k < n; k++)
        if (k != i && strlen(said[k]) > strlen(said[i]) && strstr(said[k], question) &&
            strncmp(said[k], said[i], (size_t)(question - said[i])) == 0)
            return true;
    return false;
}

static struct words words_of(struct page *page, const struct causes *all)
{
    struct words out = {.items = gw_alloc(page->arena, all->n + 1, sizeof *out.items), .n = all->n};
    for (size_t i = 0; i < all->n; i++)
        out.items[i] =
            gw_format(page->arena, "%s: %s", gw_checks_words(page, all->items[i]), gw_cause_words(page, all->items[i]));
    return out;
}

struct words gw_confirm_words(struct page *page, const struct verdict_story *story)
{
    struct causes all = {.n = 0};
    gw_gather_confirmed(&all, page, story);
    const struct words said = words_of(page, &all);
    struct words out = {.items = gw_alloc(page->arena, said.n + 1, sizeof *out.items)};
    for (size_t i = 0; i < said.n; i++)
        if (!asked_with_more(said.items, said.n, i)) out.items[out.n++] = said.items[i];
    return out;
}

struct words gw_stated_words(struct page *page, const struct verdict_story *story)
{
    struct causes all = {.n = 0};
    gw_gather_stated(&all, page, story);
    return words_of(page, &all);
}

static void confirm(struct page *page, const struct verdict_story *story)
{
    const struct words said = gw_confirm_words(page, story);
    for (size_t i = 0; i < said.n; i++) gw_report_item(page->report, said.items[i]);
}

/* Reaches ------------------------------------------------------------------------------------------------------------
 */

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
    gw_view_table(page, caption(page, "How far it goes by calculation, as the wall is"), &REACHES, rows, n);
    if (n)
        gw_page_how_found(page, NULL,
                          "Each is the value at which use is 1: give it by --set, or in the project, to see "
                          "its steps.");
}

/* With --sources: what each check's gravest figure rests on; checks that rest on the same rows share a line. */
static void recalled(struct page *page, const struct verdict_story *story)
{
    struct resting *figures = gw_alloc(page->arena, story->n + 1, sizeof *figures);
    size_t n = 0;
    for (size_t i = 0; i < story->n;) {
        const struct gw_finding *first = &story->findings[i], *worst = first;
        for (; i < story->n && gw_same_check(story->findings[i].demand, first->demand); i++)
            if (gw_graver(&story->findings[i], worst)) worst = &story->findings[i];
        if (worst->verdict != GW_NOT_REQUIRED)
            figures[n++] = (struct resting){gw_check_name(first->demand), worst->used};
    }
    gw_page_recalled(page, "Recalled, not yet confirmed -", figures, n);
}

static const char *headline(struct page *page, const struct gw_summary *s)
{
    if (gw_said(&s->held))
        return gw_format(page->arena, "%s: %s: %s (at these %ld pass, %ld fail, %ld not required)", s->candidate->name,
                         gw_verdict_loud((int)s->verdict), gw_message_text(page->arena, &s->held, page->shown),
                         s->counts[GW_PASS], s->counts[GW_FAIL], s->counts[GW_NOT_REQUIRED]);
    return gw_format(page->arena, "%s: %s (checks at places: %ld pass, %ld fail, %ld not shown, %ld not required)",
                     s->candidate->name, gw_verdict_loud((int)s->verdict), s->counts[GW_PASS], s->counts[GW_FAIL],
                     s->counts[GW_NOT_SHOWN], s->counts[GW_NOT_REQUIRED]);
}

void gw_check_one(struct page *page, const struct verdict_story *story)
{
    struct pass_rows rows = {0};
    gw_report_section(page->report, GW_PART_ANSWERS, headline(page, story->summary));
    confirm(page, story);
    if (story->summary->verdict != GW_PASS) gw_check_remarks(page, story);
    causes(page, "What fails, where and why", &FAILS, &story->fails);
    causes(page, "What is not shown, whom to ask", &MISSING, &story->questions);
    causes(page, "What its tests do not show, and calculation does", &UNTESTED, &story->untested);
    gather(page, &rows, story);
    passes(page, &rows);
    not_required(page, &rows, true, "Not required: ");
    if (page->results->sources) recalled(page, story);
    reach(page, story->summary->candidate);
    if (page->results->all) gw_check_rows(page, story);
}
