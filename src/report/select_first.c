/* The first page of choosing: who passes, as offered or with what is chosen, at which cost, how near to failing. */
#include "base/fields.h"
#include "base/tolerance.h"
#include "report/check.h"
#include "report/how_found.h"
#include "report/margins.h"
#include "report/results.h"
#include "report/select.h"
#include "report/view.h"

#include <string.h>

/* The table -------------------------------------------------------------------------------------------------------- */

struct rank_row {
    const struct selection *selection;
    const char *cost, *mass, *use, *governs, *questions, *confirm, *everywhere, *saves;
};
static const struct gw_field RANK_ROW[] = {
    FIELD(gw_system, "candidate", name, GW_T_TEXT, THROUGH3(rank_row, selection, selection, bid, gw_bid, candidate)),
    FIELD(gw_bid, "verdict", verdict, GW_T_WORD, .word = gw_verdict_loud,
          THROUGH2(rank_row, selection, selection, bid)),
    F(rank_row, cost, GW_T_TEXT),
    F(rank_row, mass, GW_T_TEXT),
    F(rank_row, use, GW_T_TEXT),
    F(rank_row, governs, GW_T_TEXT),
    F(rank_row, questions, GW_T_TEXT),
    F(rank_row, confirm, GW_T_TEXT),
    F(rank_row, everywhere, GW_T_TEXT),
    F(rank_row, saves, GW_T_TEXT),
};
static const struct gw_record RANK_RECORD = RECORD("rank", rank_row, RANK_ROW, .help = "a candidate and its plan");
static const struct view_column RANK_COLUMNS[] = {
    COLUMN("Candidate", "candidate"),
    COLUMN("Verdict", "verdict", .tone = gw_verdict_tone),
    COLUMN("Cost", "cost", .right = true),
    COLUMN("Mass", "mass", .right = true),
    COLUMN("Use", "use", .right = true),
    COLUMN("Governs", "governs"),
    COLUMN("Questions", "questions", .right = true),
    COLUMN("To confirm", "confirm", .right = true),
    COLUMN("Same everywhere", "everywhere", .right = true),
    COLUMN("Saved", "saves", .right = true),
};
static const struct view RANKS = VIEW(&RANK_RECORD, RANK_COLUMNS);

const char *gw_select_mass(struct page *page, double kg)
{
    struct gw_text out;
    if (!gw_given(kg)) return "not known";
    gw_text_init(&out, page->arena);
    gw_text_fixed(&out, gw_quantity_shown(gw_units_standard(), GW_MASS, page->shown, kg), 0);
    gw_text_addf(&out, " %s", gw_dim_info(GW_MASS)->shown[page->shown]);
    return out.at;
}

static const char *what_governs(struct page *page, const struct gw_bid *bid)
{
    const struct gw_finding *f = gw_deciding(bid->summary.governing);
    if (gw_said(&bid->summary.held)) return gw_message_text(page->arena, &bid->summary.held, page->shown);
    return f ? gw_format(page->arena, "%s%s", gw_check_name(f->demand), gw_at_text(page, f)) : "nothing is asked";
}

static const char *count_text(struct page *page, size_t n) { return gw_format(page->arena, "%zu", n); }

static struct rank_row rank_of(struct page *page, const struct selections *s, const struct selection *one,
                               const struct verdict_story *story)
{
    const struct gw_bid *bid = one->bid;
    const bool mass = s->bids->by_mass, plan = gw_given(bid->cost);
    const double saved = mass ? bid->everywhere_mass - bid->mass : bid->saving;
    const bool same = gw_given(bid->everywhere_cost);
    return (struct rank_row){.selection = one,
                             .cost = mass   ? ""
                                     : plan ? gw_cost_text(page->arena, bid->cost)
                                            : "no plan",
                             .mass = gw_select_mass(page, bid->mass),
                             .use =
                                 bid->summary.governing ? gw_use_text(page, gw_deciding(bid->summary.governing)) : "",
                             .governs = what_governs(page, bid),
                             .questions = count_text(page, story->questions.n + gw_stated_words(page, story).n),
                             .confirm = count_text(page, gw_confirm_words(page, story).n),
                             .everywhere = !plan   ? ""
                                           : !same ? "none"
                                           : mass  ? gw_select_mass(page, bid->everywhere_mass)
                                                   : gw_cost_text(page->arena, bid->everywhere_cost),
                             .saves = !plan || !same ? ""
                                      : mass         ? gw_select_mass(page, saved)
                                                     : gw_cost_text(page->arena, saved)};
}

/* Of a candidate that is not shown a plan is the cheapest with which nothing fails. */
static bool has_unshown_plan(const struct selections *s)
{
    for (size_t i = 0; i < s->items.n; i++) {
        const struct gw_bid *bid = s->items.items[i].bid;
        if (gw_given(bid->cost) && bid->verdict != GW_PASS) return true;
    }
    return false;
}

static const char *ranking_caption(struct page *page, const struct selections *s)
{
    const char *unshown = has_unshown_plan(s) ? " (of one that is not shown: none fails)" : "";
    if (s->bids->by_mass)
        return gw_format(page->arena,
                         "No costs are given: each plan is the lightest with which every check passes%s. Give the "
                         "system, its options and the lites a 'cost' to choose by that.",
                         unshown);
    return gw_format(page->arena,
                     "Each plan is the cheapest with which every check passes%s, place by place; costs as the files "
                     "have them. Mass: of metal and glass. Questions: what holds back a verdict for want of an answer, "
                     "and reports behind statements. To confirm: conditions of its tests that nobody stated.",
                     unshown);
}

static void ranking(struct page *page, const struct selections *s, const struct verdict_story *stories)
{
    struct rank_row *rows = gw_alloc(page->arena, s->items.n + 1, sizeof *rows);
    for (size_t i = 0; i < s->items.n; i++) rows[i] = rank_of(page, s, &s->items.items[i], &stories[i]);
    gw_view_list(page, ranking_caption(page, s), &RANKS, rows, s->items.n);
    if (s->items.n) gw_page_how_planned(page);
}

/* As offered ------------------------------------------------------------------------------------------------------- */

static void add_name(struct gw_text *out, size_t *n, const char *lead, const char *name)
{
    gw_text_addf(out, "%s%s%s", *n ? ", " : out->length ? "; " : "", *n ? "" : lead, name);
    ++*n;
}

/* "options: steel insert, screwed clip; make-ups: vision: thinner outer pane"; "": nothing is chosen anywhere. */
static const char *taken_words(struct page *page, const struct gw_bid *bid)
{
    const struct gw_project *project = &page->results->answer->model->project;
    struct gw_text out;
    size_t options = 0, make_ups = 0;
    gw_text_init(&out, page->arena);
    for (size_t i = 0; i < bid->candidate->options.n; i++) {
        bool taken = false;
        for (size_t p = 0; p < bid->places.n; p++) taken |= (bid->plan.choices[p].options & gw_option_bit(i)) != 0;
        if (taken) add_name(&out, &options, "options: ", bid->candidate->options.items[i].name);
    }
    for (size_t t = 0; t < project->lites.n; t++)
        for (size_t a = 0; a < project->lites.items[t].alternatives.n; a++) {
            bool taken = false;
            for (size_t p = 0; p < bid->places.n; p++) taken |= bid->plan.choices[p].lites[t] == a + 1;
            if (taken)
                add_name(&out, &make_ups, "make-ups: ",
                         gw_format(page->arena, "%s: %s", project->lites.items[t].name,
                                   project->lites.items[t].alternatives.items[a].name));
        }
    return out.length ? out.at : "";
}

static const char *offered_words(struct page *page, const struct gw_bid *bid)
{
    static const char *const says[] = {[GW_NOT_SHOWN] = "is not shown",
                                       [GW_PASS] = "passes",
                                       [GW_FAIL] = "fails",
                                       [GW_NOT_REQUIRED] = "is asked nothing"};
    const struct gw_summary *s = &bid->offered;
    const struct gw_finding *f = gw_deciding(s->governing);
    if (s->verdict != GW_FAIL || !f || gw_said(&s->held))
        return gw_format(page->arena, "as offered %s", says[s->verdict]);
    const char *use = gw_use_text(page, f);
    return gw_format(page->arena, "as offered fails (%s%s%s%s)", gw_check_name(f->demand), gw_at_text(page, f),
                     *use ? ", use " : "", use);
}

static const char *planned_words(struct page *page, const struct gw_bid *bid)
{
    const char *taken = taken_words(page, bid);
    const bool same = bid->verdict == bid->offered.verdict;
    if (bid->verdict == GW_FAIL) return "; no choice passes";
    if (!gw_given(bid->cost)) return "; no plan was found so far";
    if (!*taken) return "; its plan takes nothing else";
    return gw_format(page->arena, "; %s with what its plan takes - %s",
                     same                      ? "the same"
                     : bid->verdict == GW_PASS ? "it passes only"
                                               : "it is not shown, nor fails,",
                     taken);
}

/* "glass at north/lite/6; water at east": of each check that passes with the use printed as 1.00 its worst place. */
static const char *at_limit(struct page *page, const struct gw_bid *bid)
{
    const double nothing_left = 0.99; /* the next use, rounded up to two decimals, is 1.00 */
    const struct gw_judgement *j = &page->results->answer->judgement;
    struct gw_text out;
    gw_text_init(&out, page->arena);
    for (size_t i = 0; bid->findings && i < j->demands.n; i++) {
        const struct gw_finding *worst = &bid->findings[i];
        if (i && gw_same_check(&j->demands.items[i - 1], worst->demand)) continue;
        for (size_t k = i; k < j->demands.n && gw_same_check(&j->demands.items[k], &j->demands.items[i]); k++)
            if (!(worst->utilization >= bid->findings[k].utilization)) worst = &bid->findings[k];
        if (worst->verdict != GW_PASS || worst->link || !(worst->utilization > nothing_left * (1 + GW_HAIR))) continue;
        gw_text_addf(&out, "%s%s%s", out.length ? "; " : "", gw_check_name(worst->demand), gw_at_text(page, worst));
    }
    return out.length ? out.at : "";
}

/* Two lines each. */
bool gw_is_told_first(const struct page *page, size_t i) { return !gw_is_short(page) || 2 * i < GW_FIRST_LINES; }

void gw_tell_offered(struct page *page, const struct gw_bid *bid)
{
    gw_report_item(page->report, gw_format(page->arena, "%s %s%s", bid->candidate->name, offered_words(page, bid),
                                           planned_words(page, bid)));
    const char *full = at_limit(page, bid);
    const char *least = bid->margins ? gw_least_margins(page, bid->margins, *full ? 2 : 3) : "";
    if (*full || *least)
        gw_report_item(page->report, gw_format(page->arena, "%s, its least margins with its plan: %s%s%s%s",
                                               bid->candidate->name, *full ? "nothing left (use 1.00) at " : "", full,
                                               *full && *least ? "; it "
                                               : *full         ? ""
                                                               : "it ",
                                               least));
}

void gw_select_first(struct page *page, const struct selections *s, const struct verdict_story *stories)
{
    ranking(page, s, stories);
    if (s->items.n)
        gw_report_line(page->report, gw_is_short(page)
                                         ? "As offered: without options, each lite with its own make-up."
                                         : "As offered: without options, and the project's lites with their own "
                                           "make-ups; so does 'check' judge where it is given no plan.");
    for (size_t i = 0; i < s->items.n && gw_is_told_first(page, i); i++) gw_tell_offered(page, s->items.items[i].bid);
    if (s->items.n && !gw_is_told_first(page, s->items.n - 1))
        gw_report_line(page->report, "The others as offered: below, with each.");
}
