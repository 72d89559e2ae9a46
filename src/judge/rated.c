/* What the ratings of one system show of one demand: the best of them, and what the others lack. */
#include "judge/outcome.h"

#include <string.h>

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
    o.lesser = s->lesser;
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
    if (a->lesser != b->lesser) return b->lesser;
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

static struct gw_showing nothing_shown(void)
{
    return (struct gw_showing){.required = GW_ABSENT,
                               .provided = {GW_ABSENT, GW_ABSENT},
                               .met = GW_UNSAID,
                               .low = {.asked = GW_ABSENT, .held = GW_ABSENT},
                               .proof = GW_ABSENT,
                               .as_stiff = GW_ABSENT};
}

/* A test of what is not built here counts as if it were not there; of several levels it is still the one that was asked
 * for, so that none of a lesser level is taken for the answer. */
static struct gw_outcome of_another(struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    struct gw_showing s = nothing_shown();
    struct gw_outcome o = {.rating = NULL};
    if (!d->check->does->levels) return o;
    gw_ask_open(ask);
    d->check->does->test(&s, ask, d, rating);
    if (!s.applies || s.lesser) return o;
    o = weigh_term(&s, d, 0);
    o.verdict = GW_NOT_SHOWN;
    o.evidence = GW_EVIDENCE_NONE;
    o.provided = o.use = GW_ABSENT;
    o.foreign = true;
    o.rating = rating;
    o.message = GW_PLAINLY("it is no evidence of what is built here");
    o.used = gw_ask_close(ask, d->used);
    return o;
}

static struct gw_outcome test_by(struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    struct gw_showing s = nothing_shown();
    if (gw_is_altered(ask, d, rating)) return of_another(ask, d, rating);
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

bool gw_best_rating(struct gw_outcome *best, struct gw_ask *ask, const struct gw_demand *d,
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
    const struct gw_rating *taken = best->rating, *beside = best->beside;
    if (!taken) return false;
    if (trace) *best = test_by(ask, d, taken);
    if (trace && ask->compared) ask->compared->rating = taken;
    best->beside = beside;
    if (beside) say_beside(best, ask);
    return true;
}

struct gw_message gw_lacking(struct gw_ask *ask, const struct gw_demand *d, const struct gw_outcome *tested)
{
    const struct gw_value report = gw_of_text(gw_report_name(tested->rating));
    if (gw_said(&tested->message)) return GW_SAY(ask->arena, "{}: {}", report, gw_of_message(&tested->message));
    if (d->at_most)
        return GW_SAY(ask->arena, "{}: it shows {}, here {} at most", report,
                      gw_of_demand(tested->dim, tested->provided), gw_of_capacity(tested->dim, tested->required));
    return GW_SAY(ask->arena, "{}: it shows {}, here {} is asked", report,
                  gw_of_capacity(tested->dim, tested->provided), gw_of_demand(tested->dim, tested->required));
}

const struct gw_gaps *gw_gaps_of_others(struct gw_ask *ask, const struct gw_demand *d, const struct gw_system *system,
                                        const struct gw_outcome *best)
{
    struct gw_trace *trace = ask->trace;
    struct gw_gaps *out = NULL;
    ask->trace = NULL;
    const struct gw_rating *all = gw_part(system, ratings).items;
    const size_t n = all && best->verdict != GW_PASS && !best->adverse ? gw_part(system, ratings).n : 0;
    for (size_t i = 0; i < n; i++) {
        const struct gw_rating *rating = &all[i];
        if (rating == best->rating) continue;
        const struct gw_outcome o = test_by(ask, d, rating);
        if (!o.rating || o.verdict == GW_PASS) continue;
        if (!out) {
            out = gw_alloc(ask->arena, 1, sizeof *out);
            out->list.items = gw_alloc(ask->arena, gw_part(system, ratings).n, sizeof *out->list.items);
        }
        out->list.items[out->list.n++] = (struct gw_gap){gw_lacking(ask, d, &o), !rating->report};
    }
    ask->trace = trace;
    return out;
}

void gw_name_short_ones(struct gw_outcome *best, struct gw_ask *ask, const struct gw_demand *d,
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
