/* Whether the reports behind ratings and stated capacities hold. */
#include "causes.h"

#include "base/tolerance.h"
#include "galeward/day.h"
#include "judge/by_set.h"

#include "tables_data.h"

#include <ctype.h>
#include <string.h>

#define EVERY_TEST UINT32_MAX

struct cause *gw_cause_add(struct causes *out, struct reviewing *r, const char *item, size_t report)
{
    out->items = gw_grow(r->arena, out->items, out->n, &out->capacity, sizeof *out->items);
    struct cause *c = &out->items[out->n++];
    *c = (struct cause){.item = item,
                        .report = report,
                        .none = GW_A_REMARK,
                        .most = GW_IT_FAILS,
                        .offered = {NO_PART, NO_PART},
                        .accepted = {NO_PART, NO_PART}};
    return c;
}

/* What does not hold: all ratings that name it, and stated capacities. */
static struct cause *voiding(struct causes *out, struct reviewing *r, const char *item, size_t report)
{
    struct cause *c = gw_cause_add(out, r, item, report);
    c->tests = EVERY_TEST;
    c->capacities = EVERY_CAPACITY;
    c->gone = true;
    return c;
}

/* What is not known of a report is asked: not shown, and never a failure. */
static struct cause *asking(struct causes *out, struct reviewing *r, const char *item, size_t report)
{
    struct cause *c = voiding(out, r, item, report);
    c->most = GW_IT_IS_NOT_SHOWN;
    return c;
}

/* Ratings by a name go by that. */
static void add_named(struct gw_text *out, struct reviewing *r, size_t report)
{
    for (size_t i = 0; i < r->ratings.n; i++) {
        const struct gw_rating *rating = r->ratings.items[i];
        if (rating->name && rating->report && gw_report_index(r, rating->report) == report)
            gw_text_addf(out, "%s%s", out->length ? ", " : "", rating->name);
    }
}

const char *gw_ratings_words(struct reviewing *r, size_t report, unsigned tests)
{
    struct gw_text out;
    const struct named_report *n = &r->reports.items[report];
    gw_text_init(&out, r->arena);
    for (const struct gw_choice *c = gw_test_choices; c->name; c++)
        if (c->value != GW_TEST_OTHER && (n->tests & tests & (1u << c->value)))
            gw_text_addf(&out, "%s%s", out.length ? ", " : "", c->name);
    if (n->tests & tests & (1u << GW_TEST_OTHER)) add_named(&out, r, report);
    for (size_t i = 0; i < n->stated.n && tests == EVERY_TEST; i++)
        gw_text_addf(&out, "%s%s", out.length ? ", " : "", n->stated.items[i]);
    return out.length ? out.at : "nothing";
}

/* Evidence that counts ----------------------------------------------------------------------------------------------
 */

/* The project's rule for structural, water and air; a row's for all. */
bool gw_takes_test_alone(const struct reviewing *r, const struct gw_demand *d)
{
    const struct gw_requirements *q = r->ask->model->project.requirements;
    if (d->row && d->row->evidence.n) {
        const struct gw_evidence_asked asked = gw_evidence_asked(r->ask, d);
        return asked.test && !asked.calculation;
    }
    if (strcmp(d->check->id, "structural") == 0) {
        const struct gw_evidence_asked asked = gw_evidence_asked(r->ask, d);
        return asked.test && !asked.calculation && !asked.any;
    }
    if (strcmp(d->check->id, "water") == 0) return q && q->water && q->water->evidence.n;
    return strcmp(d->check->id, "air") == 0 && q && q->air && q->air->evidence.n;
}

/* Standards ------------------------------------------------------------------------------------------------------- */

static const char *past_blanks(const char *at) { return at + strspn(at, " -"); }

/* E330, E 330, E-330 are one designation; it stands by itself: E330 is none of E3301. */
static bool begins_with(const char *at, const char *code)
{
    for (code = past_blanks(code); *code; code = past_blanks(code + 1), at++) {
        at = past_blanks(at);
        if (toupper((unsigned char)*at) != toupper((unsigned char)*code)) return false;
    }
    return !isdigit((unsigned char)*at);
}

static bool names(const char *text, const char *code)
{
    for (const char *at = text; *at; at++) {
        const bool starts = at == text || !isalnum((unsigned char)at[-1]);
        if (starts && begins_with(at, code)) return true;
    }
    return false;
}

/* A designation of the text, "E331" or "501.1", stands in the other one too. */
static bool shares_designation(struct reviewing *r, const char *text, const char *other)
{
    static const char marks[] = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz.";
    for (size_t n; *text; text += n) {
        n = strspn(text, marks);
        const char *word = gw_strndup(r->arena, text, n);
        if (n > 2 && strpbrk(word, "0123456789") && names(other, word)) return true;
        n += strcspn(text + n, marks);
    }
    return false;
}

static bool a_row_asks_for(struct reviewing *r, const struct gw_rating *rating, const char *standard)
{
    const struct gw_requirement_set *set = r->ask->model->set;
    for (size_t i = 0; set && i < set->requires.n; i++) {
        const struct gw_required *row = &set->requires.items[i];
        if (row->test && strcmp(row->check, gw_check_of_test(rating->test)) == 0 &&
            shares_designation(r, row->test, standard))
            return true;
    }
    return false;
}

static const char *kind_word(const struct gw_rating *rating)
{
    if (rating->test != GW_TEST_SWAY || rating->kind == GW_SWAY_UNSET) return "";
    return rating->kind == GW_SWAY_STATIC ? "static" : "dynamic";
}

/* By the table, or by what a row of the set asks for. `standard` NULL: none is said. `needed`: the table's, as words;
 * empty: none is asked for. */
static bool right_standard(struct reviewing *r, const struct gw_rating *rating, const char *standard,
                           struct gw_text *needed)
{
    const struct gw_report_standard *rows = r->ask->model->tables->report_standard;
    const char *test = gw_choice_name(gw_test_choices, (int)rating->test), *kind = kind_word(rating);
    bool right = false;
    for (size_t i = 0; i < GW_N_REPORT_STANDARD; i++) {
        if (strcmp(rows[i].test, test) != 0 || (*kind && strcmp(rows[i].kind, kind) != 0)) continue;
        gw_text_addf(needed, "%s%s", needed->length ? " or " : "", rows[i].code);
        right = right || (standard && names(standard, rows[i].code));
    }
    return !needed->length || right || (standard && a_row_asks_for(r, rating, standard));
}

/* "E331 for the rating water; E283 or TAS 202 for the rating air", of ratings that another standard stands behind, or
 * none that is said. */
static unsigned wrong_standard(struct reviewing *r, size_t report, const char *standard, struct gw_text *all)
{
    unsigned wrong = 0;
    struct gw_text needed;
    for (size_t i = 0; i < r->ratings.n; i++) {
        const struct gw_rating *rating = r->ratings.items[i];
        gw_text_init(&needed, r->arena);
        if (!rating->report || gw_report_index(r, rating->report) != report) continue;
        if (right_standard(r, rating, standard, &needed) || (wrong & 1u << rating->test)) continue;
        wrong |= 1u << rating->test;
        gw_text_addf(all, "%s%s for the rating %s", all->length ? "; " : "", needed.at,
                     gw_choice_name(gw_test_choices, (int)rating->test));
    }
    return wrong;
}

static void check_standard(struct causes *out, struct reviewing *r, size_t report)
{
    const struct gw_submitted_report *e = r->reports.items[report].entry;
    struct gw_text needed;
    gw_text_init(&needed, r->arena);
    if (e->place == GW_BY_COMPUTING) return;
    const unsigned wrong = wrong_standard(r, report, e->standard, &needed);
    if (!wrong) return;
    struct cause *c =
        e->standard ? gw_cause_add(out, r, "report_standard", report) : asking(out, r, "report_standard", report);
    c->tests = wrong;
    c->capacities = NO_CAPACITY;
    c->gone = true;
    c->submitted =
        e->standard ? GW_SAY(r->arena, "by {}", gw_of_text(e->standard)) : GW_PLAINLY("by which standard is not said");
    c->needed = GW_SAY(r->arena, "a report by {}", gw_of_text(needed.at));
    c->basis = GW_PLAINLY("a rating is shown by the test that it names");
    if (!e->standard) c->ask = GW_PLAINLY("by which standard was it tested? Ask the manufacturer");
}

/* Age ------------------------------------------------------------------------------------------------------------- */

static const double YEAR = 31536000, DAY = 86400; /* s; the year of 365 days, as files have it */

static struct gw_value years(struct reviewing *r, double seconds)
{
    struct gw_text out;
    gw_text_init(&out, r->arena);
    gw_text_number(&out, seconds / YEAR, 3);
    gw_text_add(&out, " years");
    return gw_of_text(out.at);
}

/* By the calendar. */
struct age {
    long years, days;
};

static bool older(struct age age, double limit)
{
    const double whole = floor(limit / YEAR * (1 + GW_HAIR)), rest = fmax(0, limit - whole * YEAR) / DAY;
    return (double)age.years > whole || ((double)age.years >= whole && (double)age.days > rest + GW_HAIR);
}

static struct gw_value age_words(struct reviewing *r, struct age age)
{
    const char *y = age.years == 1 ? "" : "s", *d = age.days == 1 ? "" : "s";
    if (!age.days) return gw_of_text(gw_format(r->arena, "%ld year%s", age.years, y));
    if (!age.years) return gw_of_text(gw_format(r->arena, "%ld day%s", age.days, d));
    return gw_of_text(gw_format(r->arena, "%ld year%s and %ld day%s", age.years, y, age.days, d));
}

static void no_date(struct causes *out, struct reviewing *r, size_t report, double limit)
{
    struct cause *c = asking(out, r, "report_age", report);
    c->submitted = GW_PLAINLY("no date");
    c->needed = GW_SAY(r->arena, "no older than {}", years(r, limit));
    c->basis = GW_PLAINLY("report_age of the requirement set");
    c->ask = GW_PLAINLY("of which day is the report? Ask the manufacturer");
}

static void later(struct causes *out, struct reviewing *r, size_t report, const char *date)
{
    struct cause *c = gw_cause_add(out, r, "report_age", report);
    c->submitted = GW_SAY(r->arena, "dated {}, after the submittal's {}",
                          gw_of_text(r->reports.items[report].entry->date), gw_of_text(date));
    c->needed = GW_PLAINLY("a date before the submittal's");
    c->basis = GW_PLAINLY("one of the two dates is wrong");
}

static void check_age(struct causes *out, struct reviewing *r, size_t report)
{
    const struct gw_submitted_report *e = r->reports.items[report].entry;
    const struct gw_requirement_set *set = r->ask->model->set;
    const double limit = set ? set->report_age : GW_ABSENT, old = r->ask->model->tables->report_old[0].age_s;
    struct age age;
    long day;
    const char *date = r->submittal->submittal->date;
    if (!date || !gw_day_read(&day, date)) return;
    if (!e->date || !gw_day_read(&day, e->date)) {
        if (gw_given(limit)) no_date(out, r, report, limit);
        return;
    }
    if (!gw_day_years(&age.years, &age.days, e->date, date)) {
        later(out, r, report, date);
        return;
    }
    const bool over = gw_given(limit) && older(age, limit);
    if (!over && !older(age, old)) return;
    struct cause *c = over ? voiding(out, r, "report_age", report) : gw_cause_add(out, r, "report_age", report);
    c->submitted = GW_SAY(r->arena, "of {}, {} before the submittal", gw_of_text(e->date), age_words(r, age));
    c->needed = over ? GW_SAY(r->arena, "no older than {}", years(r, limit))
                     : GW_PLAINLY("that the sections, gaskets and glass are those of the report: to be confirmed");
    c->basis = over ? GW_PLAINLY("report_age of the requirement set: an older report does not count")
                    : GW_PLAINLY("age alone voids no report");
}

/* Who, where, what ------------------------------------------------------------------------------------------------- */

static bool answers_alone(const struct reviewing *r, const struct gw_rating *rating)
{
    const struct gw_judgement *j = &r->out->answer->judgement;
    for (size_t i = 0; rating->test != GW_TEST_UNSET && i < j->demands.n; i++)
        if (gw_takes_test_alone(r, &j->demands.items[i]) && gw_rating_answers(&j->demands.items[i], rating))
            return true;
    return false;
}

/* Those of its ratings that answer where a test alone is taken. */
static unsigned tests_alone(const struct reviewing *r, size_t report)
{
    unsigned out = 0;
    for (size_t i = 0; i < r->ratings.n; i++) {
        const struct gw_rating *rating = r->ratings.items[i];
        const bool of_it = rating->report && gw_report_index(r, rating->report) == report;
        if (of_it && answers_alone(r, rating)) out |= 1u << rating->test;
    }
    return out;
}

static void check_by(struct causes *out, struct reviewing *r, size_t report)
{
    const enum gw_report_by by = r->reports.items[report].entry->by;
    if (by == GW_BY_INDEPENDENT) return;
    struct cause *c = gw_cause_add(out, r, "report_by", report);
    c->tests = tests_alone(r, report);
    c->counts = gw_takes_test_alone;
    c->submitted = by == GW_BY_MANUFACTURER ? GW_PLAINLY("by the manufacturer") : GW_PLAINLY("by whom is not known");
    c->needed = GW_PLAINLY("a report of an independent laboratory or engineer");
    c->basis = c->tests ? GW_PLAINLY("the project takes a test alone (evidence: test), which is to be independent")
                        : GW_PLAINLY("the project takes other evidence too");
    if (c->tests) c->none = GW_IT_IS_NOT_SHOWN;
    if (by != GW_BY_MANUFACTURER) c->ask = GW_PLAINLY("who tested? Ask the manufacturer");
}

static bool states(const struct named_report *n, const char *key)
{
    for (size_t i = 0; i < n->stated.n; i++)
        if (strcmp(n->stated.items[i], key) == 0) return true;
    return false;
}

static bool is_a_clip(const struct gw_system *system)
{
    return system->transom_connection && system->transom_connection->hold == GW_END_CLIP;
}

/* Other capacities may be calculated. */
static void check_computed(struct causes *out, struct reviewing *r, size_t report)
{
    const struct named_report *n = &r->reports.items[report];
    if (!n->tests && !n->tested_capacities) return;
    struct cause *c = gw_cause_add(out, r, "report_place", report);
    c->tests = EVERY_TEST;
    c->capacities = TESTED_CAPACITIES;
    c->submitted = GW_PLAINLY("a calculation");
    c->needed = n->tests ? GW_PLAINLY("a test report of the rating")
                         : GW_PLAINLY("a test of that capacity: no formula gives it");
    c->basis = n->tests ? GW_PLAINLY("no calculation stands for a rating: what can be calculated the checks calculate")
                        : GW_PLAINLY("the checks ask for a test of it");
    if (states(n, "transom_connection") && !is_a_clip(r->judged))
        c->ask = GW_PLAINLY("are the transoms' ends held by a clip, which can be calculated (transom_connection: hold: "
                            "clip), or by screws in a spline or a chase, which a test alone shows?");
}

static void check_place(struct causes *out, struct reviewing *r, size_t report)
{
    const struct named_report *n = &r->reports.items[report];
    struct cause *c;
    switch (n->entry->place) {
    case GW_IN_LABORATORY:
        return;
    case GW_IN_THE_FIELD:
        c = voiding(out, r, "report_place", report);
        c->submitted = GW_PLAINLY("a test in the field");
        c->needed = n->tests ? GW_PLAINLY("a laboratory's test of the rating")
                             : GW_PLAINLY("a laboratory's test of that capacity");
        c->basis = GW_PLAINLY("a test on one building shows what was built there");
        return;
    case GW_BY_COMPUTING:
        check_computed(out, r, report);
        return;
    default:
        c = asking(out, r, "report_place", report);
        c->submitted = GW_PLAINLY("where it was tested is not said");
        c->needed = GW_PLAINLY("a laboratory's test");
        c->basis = GW_PLAINLY("a test in the field or a calculation shows no rating");
        c->ask = GW_PLAINLY("was it tested in a laboratory? Ask the manufacturer");
    }
}

static void check_system(struct causes *out, struct reviewing *r, size_t report)
{
    const struct gw_submitted_report *e = r->reports.items[report].entry;
    if (e->system && gw_words_alike(e->system, r->judged->name)) return;
    struct cause *c = e->system ? voiding(out, r, "report_system", report) : asking(out, r, "report_system", report);
    c->submitted = e->system ? GW_SAY(r->arena, "of the system {}", gw_of_text(e->system))
                             : GW_PLAINLY("of which system is not said");
    c->needed = GW_SAY(r->arena, "a report of {}", gw_of_text(r->judged->name));
    c->basis = GW_PLAINLY("a report shows the system that was tested, and no other");
    if (!e->system) c->ask = GW_PLAINLY("which system was tested? Ask the manufacturer");
}

static void check_pages(struct causes *out, struct reviewing *r, size_t report)
{
    const struct gw_submitted_report *e = r->reports.items[report].entry;
    if (e->pages == GW_PAGES_COMPLETE) return;
    const bool summary = e->pages == GW_PAGES_SUMMARY;
    struct cause *c = summary ? voiding(out, r, "report_pages", report) : asking(out, r, "report_pages", report);
    c->submitted = summary ? GW_PLAINLY("a summary") : GW_PLAINLY("whether every page is there is not known");
    c->needed = GW_PLAINLY("the complete report");
    c->basis = GW_PLAINLY("what was tested, and how it held, stands on its pages");
    if (summary) return;
    c->ask = GW_PLAINLY("is the report complete? Ask the manufacturer for every page");
}

static void missing_report(struct causes *out, struct reviewing *r, size_t report)
{
    struct cause *c = voiding(out, r, "report_missing", report);
    c->submitted = GW_SAY(r->arena, "nothing: named by {}, and not among the reports",
                          gw_of_text(gw_ratings_words(r, report, EVERY_TEST)));
    c->needed = GW_SAY(r->arena, "report {}, every page", gw_of_text(r->reports.items[report].name));
    c->basis = GW_PLAINLY("a rating is shown by its report");
    c->ask = GW_SAY(r->arena, "is there a report {}? Ask the manufacturer for every page of it",
                    gw_of_text(r->reports.items[report].name));
}

static void check_report(struct causes *out, struct reviewing *r, size_t report)
{
    const struct named_report *n = &r->reports.items[report];
    if (!n->entry) {
        missing_report(out, r, report);
        return;
    }
    if (!n->tests && !n->capacities) return; /* nothing rests on it */
    check_place(out, r, report);
    check_system(out, r, report);
    check_pages(out, r, report);
    check_by(out, r, report);
    check_standard(out, r, report);
    check_age(out, r, report);
    gw_find_fact_causes(out, r, report);
}

/* A limit that cannot be held to is asked about. */
static void ask_for_date(struct reviewing *r)
{
    const struct gw_requirement_set *set = r->ask->model->set;
    if (!set || !gw_given(set->report_age) || r->submittal->submittal->date) return;
    struct gw_comment *c = gw_comment_add(r, "report_age", "submittal", GW_IT_IS_NOT_SHOWN);
    c->submitted = GW_PLAINLY("no date of the submittal");
    c->needed = GW_SAY(r->arena, "reports no older than {} on its day", years(r, set->report_age));
    c->basis = GW_PLAINLY("report_age of the requirement set");
    c->ask = GW_PLAINLY("of which day is the submittal (submittal: date)?");
    gw_comment_at(c, r->submittal->node);
}

void gw_find_causes(struct causes *out, struct reviewing *r)
{
    *out = (struct causes){.n = 0};
    ask_for_date(r);
    for (size_t i = 0; i < r->reports.n; i++) check_report(out, r, i);
    /* A claim that does not hold is no kinder than one of which that is not known, whatever else shows the wall; where
     * nothing asks for it, nothing rests on it. */
    for (size_t i = 0; i < out->n; i++)
        if (out->items[i].gone && gw_cause_is_asked(r, &out->items[i])) out->items[i].none = GW_IT_IS_NOT_SHOWN;
}
