/* One demand against one system: the best that its ratings show, with what calculation says. */
#include "judge/by_set.h"
#include "judge/outcome.h"

#include "tables_data.h"

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
    if (gw_best_rating(&o, ask, d, system)) {
        o.message = report_message(ask, &o);
        ask_for_report(&o);
        gw_name_short_ones(&o, ask, d, system);
        if (d->check->path) o.gaps = gw_gaps_of_others(ask, d, system, &o);
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
    if (!gw_best_rating(&o, ask, d, system)) return gw_calculate(ask, d, system);
    if (o.adverse) {
        o.message = report_message(ask, &o);
        return o.presumed ? presumed_against(o, ask, d, system) : o;
    }
    if (o.verdict != GW_PASS || o.weight) {
        struct gw_outcome by = gw_calculate(ask, d, system);
        by.weight = o.verdict == GW_PASS && by.evidence == GW_BY_CALCULATION;
        if (o.verdict != GW_PASS) by.untested = gw_lacking(ask, d, &o);
        if (o.verdict == GW_FAIL && o.covers) by.too_low = too_low(o, ask, &by);
        by.gaps = gw_gaps_of_others(ask, d, system, &o);
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
    if (!gw_best_rating(&o, ask, d, system)) {
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
