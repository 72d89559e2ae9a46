/* What a price assumes, one sentence each: what the project waives or asks less of, defaults that decide, what is left
 * out, and of each candidate what fails, what evidence is missing, what its passes rest on. */
#include "galeward/plan.h"
#include "report/check.h"
#include "report/qualifications.h"
#include "report/results.h"

#include <string.h>

struct qualifying {
    struct gw_qualifications *out;
    struct page page;
    const struct gw_system *candidate; /* NULL: of the whole bid */
    int number;                        /* of the last sentence */
};

static void add(struct qualifying *q, const char *kind, const char *text)
{
    struct gw_qualifications *out = q->out;
    out->items.items = gw_grow(q->page.arena, out->items.items, out->items.n, &out->capacity, sizeof *out->items.items);
    out->items.items[out->items.n++] = (struct gw_qualification){++q->number, q->candidate, kind, text};
}

/* Of the whole bid ------------------------------------------------------------------------------------------------- */

/* The sheet of a row, unless one before it names that too. */
static const char *new_sheet(const struct gw_given *given, size_t at)
{
    const char *sheet = given->rows.items[at].source;
    for (size_t i = 0; i < at && sheet; i++) {
        const char *other = given->rows.items[i].source;
        if (other && strcmp(other, sheet) == 0) return NULL;
    }
    return sheet;
}

/* "; pressures given by S-001, S-002"; "" */
static const char *given_by(struct qualifying *q)
{
    const struct gw_given *given = q->page.results->answer->model->project.given;
    struct gw_text out;
    gw_text_init(&out, q->page.arena);
    for (size_t i = 0; given && i < given->rows.n; i++) {
        const char *sheet = new_sheet(given, i);
        if (sheet) gw_text_addf(&out, "%s%s", out.length ? ", " : "; pressures given by ", sheet);
    }
    return given && !out.length ? "; given pressures" : out.length ? out.at : "";
}

static void what_it_is_for(struct qualifying *q)
{
    add(q, "site",
        gw_format(q->page.arena, "The price is for the site as the project states it: %s; %s%s.",
                  gw_site_words(&q->page), gw_codes_words(&q->page), given_by(q)));
}

static void what_set_it_goes_by(struct qualifying *q)
{
    const struct gw_requirement_set *set = q->page.results->answer->model->set;
    const char *number = set && set->requirement_set ? set->requirement_set->number : NULL;
    if (set)
        add(q, "set",
            gw_format(q->page.arena,
                      "The price goes by the requirement set%s%s where it has a row, not by the site's own demands.",
                      number ? " " : "", number ? number : ""));
    if (set && gw_given(set->report_age))
        add(q, "set",
            gw_format(
                q->page.arena,
                "The set counts no report older than %s, which is judged where a submittal gives their dates: the "
                "price takes the reports as they stand.",
                gw_node_get(set->node, "report_age")->text));
}

static void what_is_waived(struct qualifying *q)
{
    const struct gw_answer *a = q->page.results->answer;
    for (size_t i = 0; i < a->model->waivers.n; i++)
        add(q, "waived", gw_format(q->page.arena, "The price takes as agreed: %s.", a->model->waivers.items[i].text));
    for (size_t i = 0; i < a->takeoff->remarks.n; i++)
        add(q, "waived",
            gw_format(q->page.arena, "The price takes as agreed: %s.",
                      gw_message_text(q->page.arena, &a->takeoff->remarks.items[i], q->page.shown)));
    for (size_t i = 0; i < a->below_site.n; i++)
        add(q, "below the site",
            gw_format(q->page.arena, "The price is for what is required, which is less than the site asks: %s.",
                      gw_message_text(q->page.arena, &a->below_site.items[i].said, q->page.shown)));
}

/* What is waived has its own sentence. */
static bool is_waived(const struct gw_model *model, const struct gw_demand *d)
{
    return gw_model_waives(model) && strcmp(d->check->id, "debris") == 0;
}

/* Of a check of which nothing is asked anywhere the first demand; NULL. Links come and go with the framing that is
 * drawn: nobody leaves them out. Moves past the check. */
static const struct gw_demand *asked_nowhere(const struct gw_judgement *j, size_t *at)
{
    const struct gw_demand *first = &j->demands.items[*at];
    bool asked = false;
    for (; *at < j->demands.n && gw_same_check(&j->demands.items[*at], first); ++*at)
        asked = asked || j->demands.items[*at].state != GW_NOT_ASKED;
    return asked || first->check->link ? NULL : first;
}

/* Those from `at` on that are left out by one reason; they leave the list. */
static const char *left_out(struct page *page, const struct gw_demand **rest, size_t n, size_t at)
{
    const struct gw_message *why = &rest[at]->message;
    struct gw_text out;
    gw_text_init(&out, page->arena);
    for (size_t i = at; i < n; i++) {
        if (!rest[i] || !gw_message_same(&rest[i]->message, why)) continue;
        gw_text_addf(&out, "%s%s", out.length ? ", " : "", gw_check_name(rest[i]));
        rest[i] = NULL;
    }
    gw_text_addf(&out, " (%s)", gw_message_text(page->arena, why, page->shown));
    return out.at;
}

static void what_is_not_asked(struct qualifying *q)
{
    const struct gw_judgement *j = &q->page.results->answer->judgement;
    const struct gw_demand **rest = gw_alloc(q->page.arena, j->demands.n + 1, sizeof *rest);
    struct gw_text out;
    size_t n = 0;
    gw_text_init(&out, q->page.arena);
    for (size_t at = 0; at < j->demands.n;) {
        const struct gw_demand *d = asked_nowhere(j, &at);
        if (d && !is_waived(q->page.results->answer->model, d)) rest[n++] = d;
    }
    for (size_t i = 0; i < n; i++)
        if (rest[i]) gw_text_addf(&out, "%s%s", out.length ? "; " : "", left_out(&q->page, rest, n, i));
    if (out.length)
        add(q, "not asked",
            gw_format(q->page.arena, "The price includes nothing for what is not required here: %s.", out.at));
}

/* What is assumed of a system stands with its candidate. */
static void what_is_assumed(struct qualifying *q)
{
    const struct gw_results *r = q->page.results;
    const struct gw_assumption **rest = gw_alloc(q->page.arena, r->assumptions.n + 1, sizeof *rest);
    size_t n = 0;
    for (size_t i = 0; i < r->assumptions.n; i++)
        if (r->assumptions.items[i]->decides && r->assumptions.items[i]->subject != GW_OF_SYSTEM)
            rest[n++] = r->assumptions.items[i];
    for (size_t i = 0; i < n; i++) {
        if (!rest[i]) continue;
        const bool correction = gw_is_correction(rest[i]);
        const char *lead = correction ? "The price goes by a" : "The price assumes, where the project is silent:";
        add(q, "assumed", gw_format(q->page.arena, "%s %s.", lead, gw_assumption_words(&q->page, rest, n, i)));
    }
}

static void what_is_not_checked(struct qualifying *q)
{
    const struct gw_answer *a = q->page.results->answer;
    for (size_t i = 0; i < a->not_checked.n; i++)
        if (a->not_checked.items[i].applies)
            add(q, "not checked",
                gw_format(q->page.arena, "The price includes nothing for %s: ask %s.", a->not_checked.items[i].what,
                          a->not_checked.items[i].ask));
    add(q, "not checked",
        gw_format(q->page.arena, "The price includes nothing for what was not checked; in brackets who is to say: %s.",
                  gw_not_checked_words(&q->page)));
}

/* Of a candidate --------------------------------------------------------------------------------------------------- */

static void each(struct qualifying *q, const struct causes *causes, const char *kind,
                 const char *(*words)(struct page *, const struct cause *))
{
    for (size_t i = 0; i < causes->n; i++) add(q, kind, words(&q->page, causes->items[i]));
}

static const char *names_of_options(struct qualifying *q)
{
    const struct gw_system *s = q->candidate;
    struct gw_text out;
    gw_text_init(&out, q->page.arena);
    for (size_t i = 0; i < s->options.n; i++)
        gw_text_addf(&out, "%s%s", out.length ? ", " : "", s->options.items[i].name);
    return out.length ? out.at : "";
}

/* " in zone 5 of east, zone 5 of north"; " everywhere" */
static void add_places(struct gw_text *out, const struct gw_plan *plan, const bool *there)
{
    size_t n = 0, told = 0;
    for (size_t p = 0; p < plan->places->n; p++) n += there[p];
    if (n == plan->places->n) gw_text_add(out, " everywhere");
    for (size_t p = 0; p < plan->places->n && n < plan->places->n; p++) {
        const struct gw_plan_place *place = &plan->places->items[p];
        if (there[p])
            gw_text_addf(out, "%szone %d of %s%s", told++ ? ", " : " in ", place->zone, place->wall,
                         place->parapet ? " above the roof" : "");
    }
}

static void add_option(struct gw_text *out, const struct gw_plan *plan, size_t option, bool *there)
{
    bool any = false;
    for (size_t p = 0; p < plan->places->n; p++) {
        there[p] = plan->choices[p].options & gw_option_bit(option);
        any = any || there[p];
    }
    if (!any) return;
    gw_text_addf(out, "%s%s", out->length ? "; " : "", plan->candidate->options.items[option].name);
    add_places(out, plan, there);
}

/* `lite`: of the project, by its index; `number`: of the alternative, from 1. */
static void add_make_up(struct gw_text *out, const struct gw_plan *plan, const struct gw_lite_type *type, size_t lite,
                        unsigned number, bool *there)
{
    bool any = false;
    for (size_t p = 0; p < plan->places->n; p++) {
        there[p] = plan->choices[p].lites[lite] == number;
        any = any || there[p];
    }
    if (!any) return;
    gw_text_addf(out, "%s%s: %s", out->length ? "; " : "", type->name, type->alternatives.items[number - 1].name);
    add_places(out, plan, there);
}

/* "steel insert in zone 5 of east, zone 5 of north; vision: thinner outer pane in zone 4 of east" */
static const char *chosen_words(struct qualifying *q, const struct gw_plan *plan)
{
    const struct gw_project *project = &q->page.results->answer->model->project;
    bool *there = gw_alloc(q->page.arena, plan->places->n + 1, sizeof *there);
    struct gw_text out;
    gw_text_init(&out, q->page.arena);
    for (size_t i = 0; i < plan->candidate->options.n; i++) add_option(&out, plan, i, there);
    for (size_t i = 0; i < project->lites.n; i++)
        for (unsigned number = 1; number <= project->lites.items[i].alternatives.n; number++)
            add_make_up(&out, plan, &project->lites.items[i], i, number, there);
    return out.length ? out.at : "nothing besides";
}

/* By a plan, or as the file has it; one without options has nothing to tell. */
static void what_is_chosen(struct qualifying *q)
{
    const struct gw_answer *a = q->page.results->answer;
    const struct gw_planned *planned = a->plans ? &a->plans->items[q->candidate - a->model->systems.items] : NULL;
    if (planned && planned->chosen)
        add(q, "plan",
            gw_format(q->page.arena, "The price is for this choice%s%s: %s; else as the files have it.",
                      a->model->plan_file ? " by " : "", a->model->plan_file ? a->model->plan_file : "",
                      chosen_words(q, &planned->plan)));
    else if (q->candidate->options.n)
        add(q, "plan", gw_format(q->page.arena, "The price includes none of the options: %s.", names_of_options(q)));
}

static const char *of_failure(struct page *page, const struct cause *c)
{
    return gw_format(page->arena, "The price does not include mending what fails: %s.", gw_failure_words(page, c));
}

static const char *of_question(struct page *page, const struct cause *c)
{
    return gw_format(page->arena, "The price assumes that what is not shown yet holds: %s%s.", gw_cause_words(page, c),
                     gw_where_words(page, c, false));
}

static const char *of_confirmed(struct page *page, const struct cause *c)
{
    const char *words = gw_cause_words(page, c);
    const bool asks = *words && words[strlen(words) - 1] == '?';
    return gw_format(page->arena, "The price relies on the evidence for %s; %s%s", gw_checks_words(page, c), words,
                     asks ? "" : ".");
}

static const char *of_stated(struct page *page, const struct cause *c)
{
    return gw_format(page->arena, "The price relies on a statement for %s: %s.", gw_checks_words(page, c),
                     gw_cause_words(page, c));
}

static void what_it_rests_on(struct qualifying *q, const struct verdict_story *story)
{
    struct causes confirmed = {.n = 0}, stated = {.n = 0};
    size_t at = 0;
    gw_gather_stated(&stated, &q->page, story);
    each(q, &stated, "statement", of_stated);
    gw_gather_confirmed(&confirmed, &q->page, story);
    each(q, &confirmed, "to confirm", of_confirmed);
    for (const char *words; (words = gw_next_remark(&q->page, story, &at)) != NULL;)
        add(q, "remark", gw_format(q->page.arena, "The price relies on this reading of the evidence: %s.", words));
}

static void what_is_assumed_of_it(struct qualifying *q)
{
    const struct gw_results *r = q->page.results;
    for (size_t i = 0; i < r->assumptions.n; i++) {
        const struct gw_assumption *a = r->assumptions.items[i];
        if (!a->decides || a->subject != GW_OF_SYSTEM || !a->name || strcmp(a->name, q->candidate->name) != 0) continue;
        add(q, "assumed",
            gw_format(q->page.arena, "The price assumes, where the system's file is silent: %s.",
                      gw_message_text(q->page.arena, &a->text, q->page.shown)));
    }
}

static void what_is_recalled(struct qualifying *q, const struct gw_summary *s)
{
    const char *rows = s->governing ? gw_recalled_words(&q->page, s->governing->used) : "";
    if (*rows)
        add(q, "recalled",
            gw_format(q->page.arena,
                      "The price assumes that recalled numbers, not seen in their source, are right; on them rests "
                      "what governs, %s: %s.",
                      gw_titled(&q->page, s->governing), rows));
}

static void of_candidate(struct qualifying *q, const struct verdict_story *story)
{
    q->candidate = story->summary->candidate;
    what_is_chosen(q);
    each(q, &story->fails, "fails", of_failure);
    each(q, &story->questions, "open", of_question);
    what_it_rests_on(q, story);
    what_is_assumed_of_it(q);
    what_is_recalled(q, story->summary);
}

void gw_qualify(struct gw_qualifications *out, struct gw_arena *arena, const struct gw_results *results)
{
    struct qualifying q = {.out = out, .page = {.arena = arena, .results = results, .shown = results->shown}};
    const struct gw_judgement *j = &results->answer->judgement;
    size_t at = 0;
    *out = (struct gw_qualifications){.results = results};
    what_it_is_for(&q);
    what_set_it_goes_by(&q);
    what_is_waived(&q);
    what_is_not_asked(&q);
    what_is_assumed(&q);
    what_is_not_checked(&q);
    const int shared = q.number;
    for (size_t i = 0; i < j->summaries.n; i++) {
        struct verdict_story story;
        gw_story_of(&story, &q.page, &j->summaries.items[i], &at);
        q.number = shared;
        of_candidate(&q, &story);
    }
}
