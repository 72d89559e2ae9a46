/* One demand against one system: the best that its ratings show, with what calculation says. */
#include "judge/by_set.h"
#include "judge/outcome.h"

#include "tables_data.h"

#include <string.h>

/* Ratings ------------------------------------------------------------------------------------------------------------
 */

static struct gw_outcome weigh_term(const struct gw_showing *s, const struct gw_demand *d, unsigned term)
{
    const struct gw_term *t = gw_term_of(d, term);
    const bool own = term == 0 && gw_given(s->required);
    struct gw_outcome o = {.evidence = GW_BY_TEST,
                           .required = own ? s->required : t->value,
                           .provided = s->provided[term],
                           .dim = t->dim,
                           .direction = t->direction};
    if (gw_given(s->low.asked)) {
        o.required = s->low.asked;
        o.provided = s->low.held;
        o.dim = s->low.dim;
        o.direction = s->low.direction;
    }
    o.use = gw_use_of(o.required, o.provided, d->at_most);
    o.verdict = gw_verdict_of(o.use, s->met);
    if (!gw_given(o.provided) && s->met == GW_UNSAID)
        o.message = GW_PLAINLY("the rating gives no value for this direction");
    return o;
}

/* A number below the demand fails whatever the size tested; a sufficient one shows nothing beyond the tested size. */
static struct gw_outcome weigh(const struct gw_showing *s, const struct gw_demand *d)
{
    struct gw_outcome o = weigh_term(s, d, 0);
    if (d->terms.n > 1) {
        struct gw_outcome second = weigh_term(s, d, 1);
        if (gw_outcome_graver(&second, &o)) o = second;
    }
    const bool unreached = !s->covers && (o.verdict == GW_PASS || d->at_most || s->foreign);
    if (unreached) o.verdict = GW_NOT_SHOWN;
    /* a proviso of a pass says nothing about numbers that fail */
    const bool proviso = s->covers && !s->adverse && o.verdict != GW_PASS && s->met == GW_UNSAID;
    if (gw_said(&s->why) && !proviso) o.message = s->why;
    if (s->covers && !s->adverse && o.verdict == GW_PASS) o.confirm = gw_said(&s->why) ? s->why : s->confirm;
    o.covers = s->covers;
    o.adverse = s->adverse;
    o.presumed = s->presumed;
    o.as_stiff = gw_given(s->as_stiff) ? s->as_stiff : o.provided;
    o.weight = s->weight;
    o.how = s->how;
    o.proof = s->proof;
    o.unmeasured = s->unmeasured;
    return o;
}

/* Of two ratings the one that shows more; one that speaks against the system goes before all, and along a load path one
 * that covers and is short before one that covers nothing. */
static bool shows_more(const struct gw_outcome *a, const struct gw_outcome *b, bool path)
{
    if (a->adverse != b->adverse) return a->adverse;
    if (a->adverse) return a->presumed != b->presumed ? b->presumed : gw_outcome_graver(a, b);
    if (path && a->covers != b->covers) return a->covers;
    const int left = gw_verdict_rank(a->verdict), right = gw_verdict_rank(b->verdict);
    if (a->foreign != b->foreign) return b->foreign;
    if (left != right) return left < right;
    /* where neither shows it, a statement does not stand for a report, whose gaps can be asked about */
    const bool named = a->rating->report != NULL;
    if (a->verdict == GW_NOT_SHOWN && named != (b->rating->report != NULL)) return named;
    if (a->verdict == GW_NOT_SHOWN && a->own_component != b->own_component) return a->own_component;
    if (a->verdict == GW_PASS && a->evidence != b->evidence) return a->evidence == GW_BY_TEST;
    return a->use < b->use || (gw_given(a->use) && !gw_given(b->use));
}

/* A statement outweighs no calculation, and shows nothing to who asks for a test. */
static void doubt_statement(struct gw_outcome *o, struct gw_ask *ask, const struct gw_demand *d)
{
    o->evidence = GW_BY_STATEMENT;
    o->unmeasured = GW_PLAINLY("a statement outweighs no calculation; ask the manufacturer for the report");
    if (!d->by_report || o->verdict == GW_FAIL) return;
    const struct gw_message report = gw_ask_for_report(ask, d->check);
    o->verdict = GW_NOT_SHOWN;
    o->message = gw_said(&o->message) ? gw_say_both(ask->arena, &report, "; ", &o->message) : report;
}

static struct gw_outcome test_by(struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    struct gw_showing s = {.required = GW_ABSENT,
                           .provided = {GW_ABSENT, GW_ABSENT},
                           .met = GW_UNSAID,
                           .low = {.asked = GW_ABSENT, .held = GW_ABSENT},
                           .proof = GW_ABSENT,
                           .as_stiff = GW_ABSENT};
    if (gw_is_altered(ask, d, rating)) return (struct gw_outcome){.rating = NULL};
    gw_ask_open(ask);
    gw_trace_group(&ask->engine, "What its test shows");
    d->check->does->test(&s, ask, d, rating);
    if (!s.applies) return (struct gw_outcome){.rating = NULL};
    struct gw_outcome o = weigh(&s, d);
    o.rating = rating;
    o.foreign = s.foreign;
    o.own_component = (rating->component ? rating->component : GW_FIXED) == d->component;
    if (!rating->report) doubt_statement(&o, ask, d);
    o.used = gw_ask_close(ask, d->used);
    return o;
}

/* May `other` take `rating`'s place: another report of a specimen that nothing recorded tells from its own. The results
 * of one report are a series, of which the greatest counts; what was mended since leaves the earlier report behind. */
static bool may_govern(const struct gw_rating *other, const struct gw_rating *rating)
{
    if (other == rating || other->test != rating->test || (rating->mended && !other->mended)) return false;
    if (other->report && rating->report && strcmp(other->report, rating->report) == 0) return false;
    return gw_same_specimen(other->tested, rating->tested);
}

static bool shows_less(const struct gw_outcome *a, const struct gw_outcome *b)
{
    if (!a->rating || a->foreign || b->adverse) return false;
    if (a->verdict != b->verdict) return a->verdict == GW_FAIL;
    /* a statement that is good enough takes no report's place */
    if (a->verdict == GW_PASS && a->evidence == GW_BY_STATEMENT && b->evidence == GW_BY_TEST) return false;
    return a->verdict != GW_NOT_SHOWN && a->use > b->use;
}

/* What a rating says, or in its place the least of the reports of the same specimen. */
static struct gw_outcome governed(struct gw_ask *ask, const struct gw_demand *d, const struct gw_system *system,
                                  size_t i)
{
    const struct gw_rating *rating = &gw_part(system, ratings).items[i];
    struct gw_outcome o = test_by(ask, d, rating);
    for (size_t k = 0; o.rating && !d->check->does->levels && k < gw_part(system, ratings).n; k++) {
        if (!may_govern(&gw_part(system, ratings).items[k], rating)) continue;
        const struct gw_outcome other = test_by(ask, d, &gw_part(system, ratings).items[k]);
        if (shows_less(&other, &o)) o = other;
    }
    o.beside = o.rating && o.rating != rating ? rating : NULL;
    return o;
}

/* A statement that records no specimen is none of another report's. */
static void say_beside(struct gw_outcome *o, struct gw_ask *ask)
{
    if (!o->beside->report && !o->beside->tested) return;
    const struct gw_message why =
        GW_SAY(ask->arena,
               "{} shows more of a specimen that nothing recorded tells from this one: the lower governs, unless the "
               "report says what was mended (mended)",
               gw_of_text(gw_report_name(o->beside)));
    o->message = gw_said(&o->message) ? gw_say_both(ask->arena, &o->message, "; ", &why) : why;
}

/* The best of the ratings; false: none applies. Only the one that is taken leaves its derivation. */
static bool best_rating(struct gw_outcome *best, struct gw_ask *ask, const struct gw_demand *d,
                        const struct gw_system *system)
{
    struct gw_trace *trace = ask->trace;
    *best = (struct gw_outcome){.rating = NULL};
    if (!d->check->does->test) return false;
    ask->trace = NULL;
    for (size_t i = 0; i < gw_part(system, ratings).n; i++) {
        struct gw_outcome o = governed(ask, d, system, i);
        const bool named = best->rating && o.rating == best->rating && o.beside;
        if (o.rating && (!best->rating || named || shows_more(&o, best, d->check->path))) *best = o;
    }
    ask->trace = trace;
    if (!best->rating) return false;
    const struct gw_rating *beside = best->beside;
    if (trace) *best = test_by(ask, d, best->rating);
    if (trace && ask->compared) ask->compared->rating = best->rating;
    best->beside = beside;
    if (beside) say_beside(best, ask);
    return true;
}

static struct gw_message lacking(struct gw_ask *ask, const struct gw_demand *d, const struct gw_outcome *tested)
{
    const struct gw_value report = gw_of_text(gw_report_name(tested->rating));
    if (gw_said(&tested->message)) return GW_SAY(ask->arena, "{}: {}", report, gw_of_message(&tested->message));
    if (d->at_most)
        return GW_SAY(ask->arena, "{}: it shows {}, here {} at most", report,
                      gw_of_demand(tested->dim, tested->provided), gw_of_capacity(tested->dim, tested->required));
    return GW_SAY(ask->arena, "{}: it shows {}, here {} is asked", report,
                  gw_of_capacity(tested->dim, tested->provided), gw_of_demand(tested->dim, tested->required));
}

/* Why the other ratings do not show it either, each by itself. */
static const struct gw_gaps *gaps_of_others(struct gw_ask *ask, const struct gw_demand *d,
                                            const struct gw_system *system, const struct gw_outcome *best)
{
    struct gw_trace *trace = ask->trace;
    struct gw_gaps *out = NULL;
    ask->trace = NULL;
    for (size_t i = 0; best->verdict != GW_PASS && !best->adverse && i < gw_part(system, ratings).n; i++) {
        const struct gw_rating *rating = &gw_part(system, ratings).items[i];
        if (rating == best->rating) continue;
        const struct gw_outcome o = test_by(ask, d, rating);
        if (!o.rating || o.verdict == GW_PASS) continue;
        if (!out) {
            out = gw_alloc(ask->arena, 1, sizeof *out);
            out->list.items = gw_alloc(ask->arena, gw_part(system, ratings).n, sizeof *out->list.items);
        }
        out->list.items[out->list.n++] = (struct gw_gap){lacking(ask, d, &o), !rating->report};
    }
    ask->trace = trace;
    return out;
}

/* A pass names the reports of other specimens that are short. */
static void name_short_ones(struct gw_outcome *best, struct gw_ask *ask, const struct gw_demand *d,
                            const struct gw_system *system)
{
    struct gw_trace *trace = ask->trace;
    ask->trace = NULL;
    for (size_t i = 0; best->verdict == GW_PASS && !d->check->does->levels && i < gw_part(system, ratings).n; i++) {
        const struct gw_rating *rating = &gw_part(system, ratings).items[i];
        if (rating == best->rating) continue;
        const struct gw_outcome o = test_by(ask, d, rating);
        if (!o.rating || o.foreign || o.verdict != GW_FAIL) continue;
        const struct gw_message one =
            GW_SAY(ask->arena, "{} is short, {} of {}; {} is followed: confirm that its specimen is the one built",
                   gw_of_text(gw_report_name(rating)),
                   d->at_most ? gw_of_demand(o.dim, o.provided) : gw_of_capacity(o.dim, o.provided),
                   d->at_most ? gw_of_capacity(o.dim, o.required) : gw_of_demand(o.dim, o.required),
                   gw_of_text(gw_report_name(best->rating)));
        best->remark = gw_said(&best->remark) ? gw_say_both(ask->arena, &best->remark, "; ", &one) : one;
    }
    ask->trace = trace;
}

static struct gw_message report_message(struct gw_ask *ask, const struct gw_outcome *o)
{
    const char *report = gw_report_name(o->rating);
    if (!gw_said(&o->message)) return GW_PLAINLY(report);
    return GW_SAY(ask->arena, "{}: {}", gw_of_text(report), gw_of_message(&o->message));
}

static struct gw_message unrated(struct gw_ask *ask, const struct gw_demand *d)
{
    const struct gw_check *check = d->check;
    if (check->does->unrated) return GW_PLAINLY(check->does->unrated);
    if (d->name)
        return GW_SAY(ask->arena, "no {} rating; ask the manufacturer for a report of it", gw_of_text(d->name));
    const bool own = d->component == GW_VENT || d->component == GW_DOOR;
    return GW_SAY(ask->arena, "no {} rating{}; ask the manufacturer for a report by {}", gw_of_text(check->id),
                  gw_of_text(own ? " of this component" : ""), gw_of_text(check->clause));
}

/* Routes -------------------------------------------------------------------------------------------------------------
 */

static struct gw_outcome without_rating(struct gw_ask *ask, const struct gw_demand *d)
{
    return (struct gw_outcome){.verdict = GW_NOT_SHOWN,
                               .required = gw_term_of(d, 0)->value,
                               .provided = GW_ABSENT,
                               .use = GW_ABSENT,
                               .dim = gw_term_of(d, 0)->dim,
                               .message = unrated(ask, d),
                               .used = d->used};
}

static void ask_for_report(struct gw_outcome *o)
{
    if (o->verdict == GW_PASS && o->evidence == GW_BY_STATEMENT)
        o->remark = GW_PLAINLY("a rating that names no report is a statement: ask the manufacturer for the report");
}

static struct gw_outcome by_rating(struct gw_ask *ask, const struct gw_demand *d, const struct gw_system *system)
{
    struct gw_outcome o;
    if (best_rating(&o, ask, d, system)) {
        o.message = report_message(ask, &o);
        ask_for_report(&o);
        name_short_ones(&o, ask, d, system);
        if (d->check->path) o.gaps = gaps_of_others(ask, d, system, &o);
        return o;
    }
    return d->check->does->capacity ? gw_calculate(ask, d, system) : without_rating(ask, d);
}

/* What was measured is far less than the system's stiffness allows. */
static bool too_stiff(const struct gw_outcome *tested, const struct gw_outcome *by, const struct gw_ask *ask,
                      const struct gw_demand *d)
{
    const double most = ask->model->tables->test_rule[GW_ROW_TEST_RULE_BENT_LESS].value;
    return d->at_most && tested->dim == by->dim && by->provided > most * tested->as_stiff;
}

static struct gw_outcome other_specimen(struct gw_outcome o, struct gw_ask *ask, const struct gw_outcome *by)
{
    o.verdict = GW_NOT_SHOWN;
    o.evidence = GW_EVIDENCE_NONE;
    o.message = GW_SAY(ask->arena,
                       "as stiff as the specimen of {} it bends {}, by calculation of the same system {} ({}): ask the "
                       "manufacturer what "
                       "was tested",
                       gw_of_text(gw_report_name(o.rating)), gw_of_quantity(o.dim, o.as_stiff),
                       gw_of_quantity(by->dim, by->provided), gw_of_message(&by->message));
    return o;
}

/* What was measured under less than is asked fails what no calculation speaks for; where one does, both are asked
 * about. */
static struct gw_outcome presumed_against(struct gw_outcome o, struct gw_ask *ask, const struct gw_demand *d,
                                          const struct gw_system *system)
{
    struct gw_trace *trace = ask->trace;
    ask->trace = NULL;
    const struct gw_outcome by = gw_calculate(ask, d, system);
    ask->trace = trace;
    if (by.verdict != GW_PASS) return by.verdict == GW_FAIL && gw_outcome_graver(&by, &o) ? by : o;
    o.verdict = GW_NOT_SHOWN;
    o.evidence = GW_EVIDENCE_NONE;
    o.message =
        GW_SAY(ask->arena, "{}; by calculation of the same system it is {}: ask the manufacturer what was tested",
               gw_of_message(&o.message), gw_of_quantity(by.dim, by.provided));
    return o;
}

/* Where test and calculation of the same system disagree the verdict follows the test, said where it is seen first;
 * unless by the calculation the specimen could not have held its proof: then something else was tested. */
static struct gw_outcome against_calculation(struct gw_outcome tested, struct gw_ask *ask, const struct gw_demand *d,
                                             const struct gw_system *system)
{
    const double beyond = ask->model->tables->test_rule[GW_ROW_TEST_RULE_BEYOND_SAFETY].value;
    struct gw_trace *trace = ask->trace;
    ask->trace = NULL;
    const struct gw_outcome by = gw_calculate(ask, d, system);
    ask->trace = trace;
    if (by.verdict != GW_FAIL || !gw_given(by.use)) return tested;
    if (too_stiff(&tested, &by, ask, d)) return other_specimen(tested, ask, &by);
    const struct gw_value use = gw_of_number(by.use, 3), report = gw_of_text(gw_report_name(tested.rating));
    if (by.safety > 0 && by.use * tested.proof > beyond * by.safety) {
        struct gw_outcome o = by;
        o.verdict = GW_NOT_SHOWN;
        o.evidence = GW_EVIDENCE_NONE;
        o.message =
            GW_SAY(ask->arena,
                   "by calculation ({}) its use is {}, so the specimen of {} could not have held its proof: ask "
                   "the manufacturer what was tested",
                   gw_of_message(&by.message), use, report);
        return o;
    }
    if (gw_said(&tested.unmeasured)) {
        struct gw_outcome o = by;
        o.verdict = GW_NOT_SHOWN;
        o.evidence = GW_EVIDENCE_NONE;
        o.message = GW_SAY(ask->arena, "{}: its use is {}; {}: {}", gw_of_message(&by.message), use, report,
                           gw_of_message(&tested.unmeasured));
        return o;
    }
    tested.message = GW_SAY(ask->arena,
                            "{} covers it; by calculation of the same system ({}) its use is {}: the test "
                            "is followed",
                            report, gw_of_message(&by.message), use);
    tested.remark = tested.message;
    return tested;
}

/* What the test lacks stands before what the calculation does. */
static void add_why(struct gw_outcome *by, struct gw_ask *ask, const struct gw_outcome *tested)
{
    by->question = by->message;
    by->message = tested->verdict == GW_PASS
                      ? GW_SAY(ask->arena, "{} shows the wind, and no wind test a weight; {}",
                               gw_of_text(gw_report_name(tested->rating)), gw_of_message(&by->question))
                      : gw_say_both(ask->arena, &by->untested, "; ", &by->question);
}

/* What a short test comes to where calculation does not show more, or is not taken. */
static const struct gw_outcome *too_low(struct gw_outcome tested, struct gw_ask *ask, const struct gw_outcome *by)
{
    struct gw_outcome *out = gw_alloc(ask->arena, 1, sizeof *out);
    *out = tested;
    const struct gw_value report = gw_of_text(gw_report_name(tested.rating));
    out->message =
        by->verdict == GW_PASS
            ? GW_SAY(ask->arena, "{} is short; calculation shows it, and the project asks for a test", report)
            : GW_SAY(ask->arena, "{} is short; no complete calculation shows more: {}", report,
                     gw_of_message(&by->message));
    return out;
}

static struct gw_outcome rating_or_limits(struct gw_ask *ask, const struct gw_demand *d, const struct gw_system *system)
{
    struct gw_outcome o;
    if (!best_rating(&o, ask, d, system)) return gw_calculate(ask, d, system);
    if (o.adverse) {
        o.message = report_message(ask, &o);
        return o.presumed ? presumed_against(o, ask, d, system) : o;
    }
    if (o.verdict != GW_PASS || o.weight) {
        struct gw_outcome by = gw_calculate(ask, d, system);
        by.weight = o.verdict == GW_PASS && by.evidence == GW_BY_CALCULATION;
        if (o.verdict != GW_PASS) by.untested = lacking(ask, d, &o);
        if (o.verdict == GW_FAIL && o.covers) by.too_low = too_low(o, ask, &by);
        by.gaps = gaps_of_others(ask, d, system, &o);
        if (by.verdict == GW_NOT_SHOWN) add_why(&by, ask, &o);
        return by;
    }
    if (o.evidence == GW_BY_STATEMENT) {
        const struct gw_outcome by = gw_calculate(ask, d, system);
        if (by.verdict == GW_PASS) return by;
    }
    if (!gw_given(o.provided)) {
        o.required = o.use = GW_ABSENT;
        o.direction = GW_NO_DIRECTION;
    }
    o.message = GW_SAY(ask->arena, "{} covers it", gw_of_text(gw_report_name(o.rating)));
    if (gw_said(&o.how)) o.message = gw_say_both(ask->arena, &o.message, ": ", &o.how);
    if (gw_said(&o.confirm)) o.message = gw_say_both(ask->arena, &o.message, "; ", &o.confirm);
    return against_calculation(o, ask, d, system);
}

static struct gw_outcome limits_then_rating(struct gw_ask *ask, const struct gw_demand *d,
                                            const struct gw_system *system)
{
    struct gw_outcome short_one = gw_calculate(ask, d, system), o;
    if (short_one.verdict != GW_FAIL) return short_one;
    if (!best_rating(&o, ask, d, system)) {
        const struct gw_message ask_for = unrated(ask, d);
        short_one.verdict = GW_NOT_SHOWN;
        short_one.evidence = GW_EVIDENCE_NONE;
        short_one.use = GW_ABSENT;
        short_one.message = gw_say_both(ask->arena, &short_one.message, ": ", &ask_for);
        return short_one;
    }
    const struct gw_message by_test = report_message(ask, &o);
    ask_for_report(&o);
    o.message = gw_say_both(ask->arena, &short_one.message, "; ", &by_test);
    ask->engine.used = *short_one.used;
    o.used = gw_ask_close(ask, o.used);
    return o;
}

static void keep(struct gw_finding *f, const struct gw_outcome *o)
{
    f->verdict = o->verdict;
    f->evidence = o->evidence;
    f->direction = o->direction;
    f->required = o->required;
    f->provided = o->provided;
    f->dim = o->dim;
    f->utilization = o->use;
    f->message = o->message;
    f->remark = o->remark;
    f->question = o->question;
    f->untested = o->untested;
    f->gaps = o->gaps;
    f->confirm = o->verdict == GW_PASS && o->rating ? o->confirm : (struct gw_message){0};
    f->adverse = o->adverse;
    f->wind_tested = o->weight;
    f->used = o->used;
}

static void keep_too_low(struct gw_finding *f, struct gw_ask *ask, const struct gw_outcome *tested)
{
    struct gw_finding *rated = gw_alloc(ask->arena, 1, sizeof *rated);
    *rated = *f;
    keep(rated, tested);
    rated->as_rated = true;
    f->rated = rated;
}

/* Not asked, not known, or no part of the system; false: it is to be compared. */
static bool settled(struct gw_outcome *o, const struct gw_demand *d, const struct gw_system *system)
{
    const char *without = d->check->does->without ? d->check->does->without(system) : NULL;
    *o = (struct gw_outcome){.verdict = d->state == GW_NOT_KNOWN ? GW_NOT_SHOWN : GW_NOT_REQUIRED,
                             .required = GW_ABSENT,
                             .provided = GW_ABSENT,
                             .use = GW_ABSENT,
                             .dim = gw_term_of(d, 0)->dim,
                             .message = d->message,
                             .used = d->used};
    if (d->state != GW_ASKED) return true;
    if (without) o->message = GW_PLAINLY(without);
    return without != NULL;
}

void gw_find(struct gw_finding *f, struct gw_ask *ask)
{
    static struct gw_outcome (*const routes[])(struct gw_ask *, const struct gw_demand *, const struct gw_system *) = {
        [GW_BY_RATING] = by_rating,
        [GW_RATING_OR_LIMITS] = rating_or_limits,
        [GW_LIMITS_THEN_RATING] = limits_then_rating};
    const struct gw_demand *d = f->demand;
    struct gw_outcome o;
    const struct gw_system *system = f->offered ? f->offered : f->candidate;
    ask->system = system;
    if (!settled(&o, d, system)) o = routes[d->check->does->route](ask, d, system);
    f->at_most = d->at_most;
    keep(f, &o);
    if (o.too_low) keep_too_low(f, ask, o.too_low);
    gw_ask_evidence(f, ask);
}

void gw_find_by_limits(struct gw_finding *f, struct gw_ask *ask)
{
    struct gw_outcome o;
    ask->system = f->candidate;
    if (!settled(&o, f->demand, f->candidate)) o = gw_calculate(ask, f->demand, f->candidate);
    f->at_most = f->demand->at_most;
    keep(f, &o);
}

void gw_find_each_limit(struct gw_weighed_limits *out, const struct gw_finding *f, struct gw_ask *ask)
{
    struct gw_outcome o;
    ask->system = f->candidate;
    *out = (struct gw_weighed_limits){.n = 0};
    if (!settled(&o, f->demand, f->candidate)) {
        gw_calculate_each(out, ask, f->demand, f->candidate);
        return;
    }
    out->verdict = o.verdict;
    out->message = o.message;
}
