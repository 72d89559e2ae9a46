/* The first screen of the page of candidates: verdicts, why, by how much, where, what to ask whom. */
#include "base/fields.h"
#include "base/tolerance.h"
#include "report/check.h"
#include "report/how_found.h"
#include "report/results.h"
#include "report/view.h"

#include <math.h>
#include <string.h>

/* The table ----------------------------------------------------------------------------------------------------------
 */

struct verdict_row {
    const struct gw_summary *summary;
    const char *own; /* its verdict besides the project's glass, where that fails for all */
    const char *governs, *use, *required, *provided, *where;
};
static const struct gw_field VERDICT_ROW[] = {
    F(verdict_row, summary, GW_T_RECORD, .record = &gw_summary_record, .flags = GW_FLAT),
    F(verdict_row, own, GW_T_TEXT),
    F(verdict_row, governs, GW_T_TEXT),
    FIELD(verdict_row, "its_use", use, GW_T_TEXT),
    FIELD(verdict_row, "asked", required, GW_T_TEXT),
    FIELD(verdict_row, "has", provided, GW_T_TEXT),
    F(verdict_row, where, GW_T_TEXT),
};
static const struct gw_record VERDICT_ROW_RECORD =
    RECORD("verdict", verdict_row, VERDICT_ROW, .help = "a candidate's verdict");
static const struct view_column VERDICT_COLUMNS[] = {
    COLUMN("Candidate", "candidate"),         COLUMN("Verdict", "verdict_loud", .tone = gw_verdict_tone),
    COLUMN("Use", "its_use", .right = true),  COLUMN("Required", "asked", .right = true),
    COLUMN("Provided", "has", .right = true), COLUMN("Where", "where"),
    COLUMN("What governs", "governs"),
};
static const struct view VERDICTS = VIEW(&VERDICT_ROW_RECORD, VERDICT_COLUMNS);
static const struct view_column BESIDE_COLUMNS[] = {
    COLUMN("Candidate", "candidate"),
    COLUMN("Verdict", "verdict_loud", .tone = gw_verdict_tone),
    COLUMN("But for the glass", "own"),
    COLUMN("Use", "its_use", .right = true),
    COLUMN("Required", "asked", .right = true),
    COLUMN("Provided", "has", .right = true),
    COLUMN("Where", "where"),
    COLUMN("What governs", "governs"),
};
static const struct view BESIDE_GLASS = VIEW(&VERDICT_ROW_RECORD, BESIDE_COLUMNS);

/* The project's glass ------------------------------------------------------------------------------------------------
 */

/* It fails by glass that the project chose, whoever the candidate is. */
static bool by_glass(const struct gw_finding *f)
{
    const struct gw_finding *root = f->link && f->link->verdict == f->verdict ? f->link : f;
    return f->verdict == GW_FAIL && root->demand->check->own_glass;
}

static bool glass_fails_all(const struct verdict_story *stories, size_t n)
{
    size_t failing = 0;
    for (size_t i = 0; i < n; i++)
        for (size_t k = 0; k < stories[i].n; k++)
            if (by_glass(&stories[i].findings[k])) {
                failing++;
                break;
            }
    return n && failing == n;
}

/* What governs of the candidate's own; NULL: nothing else is asked. */
static const struct gw_finding *own_governing(const struct verdict_story *story)
{
    const struct gw_finding *worst = NULL;
    for (size_t i = 0; i < story->n; i++)
        if (!by_glass(&story->findings[i]) && gw_graver(&story->findings[i], worst)) worst = &story->findings[i];
    return worst;
}

static enum gw_verdict own_verdict(const struct verdict_story *story)
{
    const struct gw_finding *f = own_governing(story);
    if (gw_said(&story->summary->held) && (!f || f->verdict != GW_FAIL)) return GW_NOT_SHOWN;
    return f ? f->verdict : GW_NOT_REQUIRED;
}

/* A test's pressure that shows nothing here. */
static const char *has_text(struct page *page, const struct gw_finding *f)
{
    const char *has = gw_provided_text(page, f);
    const bool tested = f->verdict == GW_NOT_SHOWN && f->demand->check->path && *has;
    return tested ? gw_format(page->arena, "tested %s", has) : has;
}

/* On a page with derivations also where its steps are, else who gives the figures. */
static const char *governs_text(struct page *page, const struct gw_finding *f)
{
    const char *titled = gw_titled(page, f), *steps = gw_steps_of(page, f);
    if (!page->report->pictures) return titled;
    if (steps) return gw_format(page->arena, "%s. Steps: %s", titled, steps);
    if (f->evidence == GW_EVIDENCE_NONE) return titled;
    return gw_format(page->arena, "%s, given by %s", titled, gw_evidence_name(f->evidence));
}

static struct verdict_row verdict_row(struct page *page, const struct verdict_story *story, bool glass)
{
    const struct gw_summary *s = story->summary;
    const struct gw_finding *f = gw_deciding(glass ? own_governing(story) : s->governing);
    if (gw_said(&s->held) && !glass)
        return (struct verdict_row){.summary = s, .governs = gw_message_text(page->arena, &s->held, page->shown)};
    if (!f) return (struct verdict_row){.summary = s, .governs = "nothing is asked"};
    return (struct verdict_row){.summary = s,
                                .governs = governs_text(page, f),
                                .use = gw_use_text(page, f),
                                .required = gw_required_text(page, f),
                                .provided = has_text(page, f),
                                .where = gw_where_text(page, f->demand)};
}

/* Of many candidates on a first page that a picture is to stand on. */
static const enum gw_verdict BEST_FIRST[] = {GW_PASS, GW_NOT_SHOWN, GW_FAIL, GW_NOT_REQUIRED};

/* "And 4 more below, each in its part. Their steps: D5, D6." */
static void say_others(struct page *page, const struct verdict_story *stories, size_t n, const struct verdict_row *rows,
                       size_t shown)
{
    struct gw_text steps;
    gw_text_init(&steps, page->arena);
    for (size_t i = 0; i < n; i++) {
        bool there = false;
        for (size_t k = 0; k < shown; k++) there = there || rows[k].summary == stories[i].summary;
        const char *own = there ? NULL : gw_derivations_of(page, stories[i].summary->candidate);
        if (own) gw_text_addf(&steps, "%s%s", steps.length ? ", " : " Their steps: ", own);
    }
    gw_report_line(page->report, gw_format(page->arena, "And %zu more below, each in its part.%s%s", n - shown,
                                           steps.at, steps.length ? "." : ""));
}

static void verdicts(struct page *page, const struct verdict_story *stories, size_t n)
{
    struct verdict_row *rows = gw_alloc(page->arena, n + 1, sizeof *rows);
    const bool glass = glass_fails_all(stories, n);
    const size_t room = 2 * (size_t)GW_FIRST_LINES, most = gw_is_short(page) && n > room ? room : n;
    size_t shown = 0;
    for (size_t r = 0; r < sizeof BEST_FIRST / sizeof *BEST_FIRST; r++)
        for (size_t i = 0; i < n && shown < most; i++) {
            if (most < n ? stories[i].summary->verdict != BEST_FIRST[r] : r > 0) continue;
            rows[shown] = verdict_row(page, &stories[i], glass);
            if (glass) rows[shown].own = gw_verdict_loud((int)own_verdict(&stories[i]));
            shown++;
        }
    gw_view_list(page,
                 "Use is required over provided; of a limit, what is here over the limit. Up to 1.00 passes. Not shown "
                 "is never a "
                 "pass.",
                 glass ? &BESIDE_GLASS : &VERDICTS, rows, shown);
    if (shown < n) say_others(page, stories, n, rows, shown);
}

/* Why ----------------------------------------------------------------------------------------------------------------
 */

/* "443.5 lb asked, 390 lb provided"; "" without both. */
static const char *figures(struct page *page, const struct gw_finding *f)
{
    const char *asked = gw_required_text(page, f), *has = gw_provided_text(page, f);
    if (!*asked || !*has) return "";
    const char *way = f->direction ? gw_load_direction_name(f->direction) : "";
    return f->at_most ? gw_format(page->arena, "%s, %s%s%s", asked, has, *way ? " " : "", way)
                      : gw_format(page->arena, "%s%s%s provided, %s asked", has, *way ? " " : "", way, asked);
}

/* " by 14 %"; from twice the limit on "at 2.31 times the limit". */
static const char *margin(struct page *page, double use)
{
    if (!gw_given(use) || isinf(use) || use <= 1) return "";
    if (use >= 2) {
        struct gw_text out;
        gw_text_init(&out, page->arena);
        gw_add_utilization(&out, use);
        return gw_format(page->arena, " at %s times the limit", out.at);
    }
    const long percent = (long)ceil((use - 1) * 100 - 1e-7);
    return gw_format(page->arena, " by %ld %%", percent);
}

/* A sentence of which candidates are the subject: those of which the same is said share it. */
struct sentence {
    const char *verb, *verbs, *words; /* "fails", "fail" */
    bool leads, told;                 /* the first that is said of a candidate */
    GW_LIST(const char *) names;
    size_t capacity;
};

struct telling {
    struct page *page;
    bool glass; /* of the project fails for all: told by itself */
    struct gw_memo known;
    struct sentence **items;
    size_t n, capacity;
    const struct verdict_story *last; /* that something was said of */
};

static void say(struct telling *t, const struct verdict_story *story, const char *verb, const char *verbs,
                const char *words)
{
    struct gw_arena *arena = t->page->arena;
    const char *key = gw_format(arena, "%s|%s", verb, words);
    void **at = gw_memo_at(&t->known, arena, key, strlen(key));
    struct sentence *s = *at;
    if (!s) {
        *at = s = gw_alloc(arena, 1, sizeof *s);
        s->verb = verb, s->verbs = verbs, s->words = words;
        t->items = gw_grow(arena, t->items, t->n, &t->capacity, sizeof(struct sentence *));
        t->items[t->n++] = s;
    }
    s->leads = s->leads || story != t->last;
    t->last = story;
    s->names.items = gw_grow(arena, s->names.items, s->names.n, &s->capacity, sizeof *s->names.items);
    s->names.items[s->names.n++] = story->summary->candidate->name;
}

static void tell_one(struct telling *t, struct sentence *s)
{
    struct gw_text out;
    s->told = true;
    gw_text_init(&out, t->page->arena);
    gw_add_names(&out, s->names.items, s->names.n);
    gw_text_addf(&out, " %s: %s", s->names.n == 1 ? s->verb : s->verbs, s->words);
    gw_report_item(t->page->report, out.at);
}

/* A page with a picture on it has room for few: one of each candidate goes before what else is said of it, which its
 * own part below repeats. */
static void tell(struct telling *t)
{
    const size_t most = gw_is_short(t->page) ? GW_FIRST_LINES : t->n;
    size_t told = 0, leads = 0;
    for (size_t i = 0; i < t->n; i++) leads += t->items[i]->leads;
    for (size_t i = 0; i < t->n && told < most; i++) {
        if (t->n > most && !t->items[i]->leads && told + leads >= most) continue;
        leads -= t->items[i]->leads;
        tell_one(t, t->items[i]);
        told++;
    }
    if (told < t->n)
        gw_report_line(t->page->report,
                       gw_format(t->page->arena, "And %zu more below, with each candidate.", t->n - told));
}

const char *gw_failure_words(struct page *page, const struct cause *c)
{
    const struct gw_finding *f = c->worst;
    const char *words = gw_cause_words(page, c), *both = f->link ? "" : figures(page, f);
    return gw_format(page->arena, "%s: %s%s%s%s%s", gw_titled(page, f), both, *both && *words ? " (" : "", words,
                     *both && *words ? ")" : "", gw_where_words(page, c, false));
}

static void say_failure(struct telling *t, const struct verdict_story *story, const struct cause *c)
{
    struct gw_arena *arena = t->page->arena;
    const char *by = margin(t->page, c->worst->utilization);
    say(t, story, gw_format(arena, "fails%s", by), gw_format(arena, "fail%s", by), gw_failure_words(t->page, c));
}

static bool is_glass(const struct cause *c) { return c->worst->demand->check->own_glass; }

static void why_fails(struct telling *t, const struct verdict_story *story, size_t shown)
{
    const struct causes *all = &story->fails;
    size_t told = 0;
    for (size_t i = 0; i < all->n; i++) {
        if (t->glass && is_glass(all->items[i])) continue;
        if (told++ < shown) say_failure(t, story, all->items[i]);
    }
    if (told > shown)
        say(t, story, "fails besides", "fail besides", gw_format(t->page->arena, "%zu more below", told - shown));
}

/* "lites.vision, lites.spandrel": those that a cause concerns. */
static const char *lites_of(struct page *page, const struct cause *c)
{
    const struct gw_model *model = page->results->answer->model;
    const struct gw_takeoff *takeoff = page->results->answer->takeoff;
    struct gw_text out;
    gw_text_init(&out, page->arena);
    for (size_t i = 0; i < model->project.lites.n; i++) {
        const char *name = model->project.lites.items[i].name;
        bool here = false;
        for (size_t k = 0; k < takeoff->elements.n && c->at.seen && !here; k++) {
            const struct gw_element *e = &takeoff->elements.items[k];
            here = c->at.seen[k] && e->kind == GW_LITE && e->lite && strcmp(e->lite, name) == 0;
        }
        for (size_t k = 0; k < c->at.named.n && !here; k++) here = strcmp(c->at.named.items[k], name) == 0;
        if (here) gw_text_addf(&out, "%slites.%s", out.length ? ", " : "", name);
    }
    return out.length ? out.at : "lites";
}

/* Once for all of them, in the words of the first. */
static void tell_glass(struct page *page, const struct verdict_story *first)
{
    for (size_t i = 0; i < first->fails.n; i++) {
        const struct cause *c = first->fails.items[i];
        if (!is_glass(c)) continue;
        const char *words = gw_cause_words(page, c), *both = figures(page, c->worst);
        gw_report_item(
            page->report,
            gw_format(page->arena, "The project's glass fails, for every system,%s: %s: %s%s%s%s%s; change %s",
                      margin(page, c->worst->utilization), gw_titled(page, c->worst), both, *both && *words ? " (" : "",
                      words, *both && *words ? ")" : "", gw_where_words(page, c, false), lites_of(page, c)));
    }
}

/* What a test shows falls short of what is asked, though it is not this that decides. */
static const char *short_test(struct page *page, const struct gw_finding *f)
{
    if (!f->demand->check->path || f->verdict != GW_NOT_SHOWN || !(f->utilization > 1) || f->at_most) return "";
    return gw_format(page->arena, "tested %s, here %s %s at %s; ", gw_provided_text(page, f), gw_required_text(page, f),
                     gw_load_direction_name(f->direction), gw_where_text(page, f->demand));
}

/* Of what stands on links: the reason why its tests do not reach that concerns most places, but those `told`. */
static const struct cause *next_reason(const struct verdict_story *story, const bool *told, size_t *at)
{
    const struct cause *best = NULL;
    for (size_t i = 0; i < story->untested.n; i++) {
        const struct cause *c = story->untested.items[i];
        if (told[i] || !c->path || c->stated || (best && gw_places_count(&c->at) <= gw_places_count(&best->at)))
            continue;
        best = c;
        *at = i;
    }
    return best;
}

static void why_not_shown(struct telling *t, const struct verdict_story *story)
{
    const size_t asked = story->questions.n;
    const int reasons = gw_is_short(t->page) ? 1 : 3;
    bool *told = gw_alloc(t->page->arena, story->untested.n + 1, sizeof *told);
    struct page *page = t->page;
    const struct cause *c;
    struct gw_text out;
    size_t at;
    gw_text_init(&out, page->arena);
    gw_text_add(&out, short_test(page, t->glass ? own_governing(story) : story->summary->governing));
    for (int i = 0; i < reasons && (c = next_reason(story, told, &at)) != NULL; i++) {
        told[at] = true;
        gw_text_addf(&out, "%s (%s); ", gw_cause_words(page, c), gw_kinds_words(page, &c->at));
    }
    if (next_reason(story, told, &at)) gw_text_add(&out, "more below; ");
    gw_text_addf(&out, "%zu question%s open", asked, asked == 1 ? " is" : "s are");
    say(t, story, "is not shown", "are not shown", out.at);
}

static bool nearer(const struct gw_finding *a, const struct gw_finding *b)
{
    return !b || a->utilization > b->utilization;
}

/* The pass of a check that uses its limit most; what only repeats a link has that link's figures. */
static const struct gw_finding *nearest(const struct verdict_story *story, double below)
{
    const struct gw_finding *best = NULL;
    for (size_t i = 0; i < story->n; i++) {
        const struct gw_finding *f = &story->findings[i];
        if (f->verdict != GW_PASS || !gw_given(f->utilization) || f->utilization >= below) continue;
        if (!gw_given(f->required) || !nearer(f, best)) continue;
        best = f;
    }
    return best;
}

static const char *how_near(struct page *page, const struct gw_finding *f)
{
    const char *what = gw_titled(page, f), *at = gw_at_text(page, f);
    return fabs(f->utilization - 1) <= GW_HAIR
               ? gw_format(page->arena, "%s, rated exactly what is asked, %s%s", what, gw_required_text(page, f), at)
               : gw_format(page->arena, "%s, use %s%s", what, gw_use_text(page, f), at);
}

struct remark {
    const struct gw_finding *worst;
    long places;
};

/* Of the check that begins at `*i`; moves past it. */
static struct remark remark_of(const struct verdict_story *story, size_t *i)
{
    const struct gw_demand *first = story->findings[*i].demand;
    struct remark out = {NULL, 0};
    for (; *i < story->n && gw_same_check(story->findings[*i].demand, first); ++*i) {
        const struct gw_finding *f = &story->findings[*i];
        if (!gw_said(&f->remark)) continue;
        if (gw_graver(f, out.worst)) out.worst = f;
        out.places++;
    }
    return out;
}

static const char *remark_words(struct page *page, const struct remark *r)
{
    return gw_format(page->arena, "%s%s: %s (%ld place%s)", gw_check_name(r->worst->demand), gw_at_text(page, r->worst),
                     gw_message_text(page->arena, &r->worst->remark, page->shown), r->places,
                     r->places == 1 ? "" : "s");
}

const char *gw_next_remark(struct page *page, const struct verdict_story *story, size_t *at)
{
    while (*at < story->n) {
        const struct remark r = remark_of(story, at);
        if (r.worst) return remark_words(page, &r);
    }
    return NULL;
}

static void say_remarks(struct telling *t, const struct verdict_story *story)
{
    size_t at = 0;
    for (const char *words; (words = gw_next_remark(t->page, story, &at)) != NULL;)
        say(t, story, "remark", "remark", words);
}

void gw_check_remarks(struct page *page, const struct verdict_story *story)
{
    size_t at = 0;
    for (const char *words; (words = gw_next_remark(page, story, &at)) != NULL;)
        gw_report_item(page->report, gw_format(page->arena, "Remark - %s", words));
}

static void why_passes(struct telling *t, const struct verdict_story *story)
{
    const struct gw_finding *first = nearest(story, (double)INFINITY);
    const struct gw_finding *second = first ? nearest(story, first->utilization - GW_HAIR) : NULL;
    struct page *page = t->page;
    struct gw_text out;
    gw_text_init(&out, page->arena);
    if (!first) gw_text_add(&out, "no figure is near its limit");
    else gw_text_addf(&out, "nearest to its limit: %s", how_near(page, first));
    if (second) gw_text_addf(&out, "; then %s", how_near(page, second));
    say(t, story, "passes", "pass", out.at);
}

static void why(struct telling *t, const struct verdict_story *story, size_t shown)
{
    const struct gw_summary *s = story->summary;
    const enum gw_verdict verdict = t->glass ? own_verdict(story) : s->verdict;
    if (verdict == GW_PASS) {
        why_passes(t, story);
        say_remarks(t, story);
        return;
    }
    why_fails(t, story, shown);
    if (gw_said(&s->held))
        say(t, story, "is not shown", "are not shown", gw_message_text(t->page->arena, &s->held, t->page->shown));
    else if (verdict == GW_NOT_SHOWN) why_not_shown(t, story);
}

void gw_check_first(struct page *page, const struct verdict_story *stories, size_t n)
{
    const size_t shown = n > 4 ? 2 : 3;
    struct telling t = {.page = page, .glass = glass_fails_all(stories, n)};
    verdicts(page, stories, n);
    if (!n) return;
    gw_report_section(page->report, GW_PART_FIRST, "Why");
    if (t.glass) tell_glass(page, stories);
    for (size_t i = 0; i < n; i++) why(&t, &stories[i], shown);
    tell(&t);
    gw_check_questions(page, stories, n);
}
