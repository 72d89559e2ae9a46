/* The system that is offered: against the accepted one, by its evidence, and by what the checks then say. */
#include "causes.h"

#include <string.h>

/* All looks of a review, judged at once. */
struct looks {
    struct look *items;
    size_t n, capacity;
};

static size_t add_look(struct looks *looks, struct reviewing *r, struct look look)
{
    looks->items = gw_grow(r->arena, looks->items, looks->n, &looks->capacity, sizeof *looks->items);
    looks->items[looks->n] = look;
    return looks->n++;
}

/* The offer with all that reports state of their specimens. */
static struct look claimed(struct reviewing *r)
{
    struct look look = gw_look_of(r->judged);
    look.facts = true;
    look.other = r->substituted;
    return look;
}

static void void_by(struct voided *out, const struct cause *c)
{
    out->tests[c->report] |= c->tests;
    if (c->capacities > out->capacities[c->report]) out->capacities[c->report] = c->capacities;
}

/* Evidence -------------------------------------------------------------------------------------------------------- */

static void look_at_cause(struct cause *c, struct cause_looks *out, const struct look *base, struct looks *looks,
                          struct reviewing *r)
{
    struct look look = *base;
    if (c->fact) {
        look.favored = c->fact;
        look.report = c->report;
        out->favored = add_look(looks, r, look);
    }
    if (!c->tests && !c->capacities) return;
    c->out = gw_nothing_voided(r);
    void_by(&c->out, c);
    look = *base;
    look.out = &c->out;
    out->voided = add_look(looks, r, look);
}

/* Looks that others are held against: the offer as claimed and as evidenced, the accepted system as it is and with what
 * reports state recorded; NO_PART: nothing is offered otherwise. */
struct bases {
    size_t claimed, evidenced, accepted, recorded;
    size_t reported, named; /* the offer without what of reports does not hold, and without what names none */
};

struct measured {
    struct cause *cause;
    struct effect effect;
};

static struct gw_message where_of(struct reviewing *r, const struct cause *c)
{
    const struct named_report *n = &r->reports.items[c->report];
    return GW_SAY(r->arena, "report {} (of {})", gw_of_text(n->name),
                  gw_of_text(gw_ratings_words(r, c->report, UINT32_MAX)));
}

static enum gw_evidence evidence_of(const struct reviewing *r, const struct cause *c)
{
    const struct named_report *n = &r->reports.items[c->report];
    if (!n->entry) return GW_EVIDENCE_NONE;
    return n->entry->place == GW_BY_COMPUTING ? GW_BY_CALCULATION : GW_BY_TEST;
}

/* At the rating that names a report which is not there; else at its entry. */
static const struct gw_node *node_of(const struct reviewing *r, const struct cause *c)
{
    const struct named_report *n = &r->reports.items[c->report];
    if (n->entry) return n->entry->node;
    for (size_t i = 0; i < r->ratings.n; i++) {
        const struct gw_rating *rating = r->ratings.items[i];
        if (rating->report && gw_words_alike(rating->report, n->name)) return rating->node;
    }
    const struct gw_node *at = n->stated.n ? gw_node_get(r->judged->node, n->stated.items[0]) : NULL;
    return at ? at : r->judged->node;
}

static void tell_cause(struct reviewing *r, const struct measured *m, const struct gw_finding *without,
                       const struct gw_finding *evidenced)
{
    const struct cause *c = m->cause;
    enum gw_consequence consequence = gw_consequence_of(&m->effect, c->none);
    /* that another rating is too low alone is no failure of what the missing evidence was of */
    if (consequence == GW_IT_FAILS && !m->effect.computed) consequence = GW_IT_IS_NOT_SHOWN;
    if (consequence < c->most) consequence = c->most;
    struct gw_comment *out = gw_comment_add(r, c->item, r->reports.items[c->report].name, consequence);
    gw_comment_effect(out, &m->effect);
    /* nothing gets worse without it: what else shows it stands there, and the claim is still to be shown */
    if (c->gone && !m->effect.n) out->effect = gw_without_it(r, c, without, evidenced);
    /* evidence that does not hold is none, even where something else shows the wall */
    if (consequence == GW_A_REMARK && (c->tests || c->capacities || c->fact)) out->disposition = GW_CORRECTIONS_NOTED;
    out->where = where_of(r, c);
    out->submitted = c->submitted;
    out->needed = c->needed;
    out->basis = c->basis;
    out->ask = c->ask;
    out->evidence = evidence_of(r, c);
    gw_comment_at(out, node_of(r, c));
}

/* Two reports that each stand for the other: what both together leave open is said of either. */
static void share_rest(struct reviewing *r, struct measured *list, size_t n, const struct effect *all)
{
    const size_t demands = r->bench.judgement.demands.n;
    bool rest = false;
    for (size_t i = 0; i < demands; i++) {
        bool known = !all->at[i];
        for (size_t k = 0; k < n && !known; k++) known = list[k].effect.at && list[k].effect.at[i];
        rest = rest || !known;
    }
    for (size_t k = 0; rest && k < n; k++) {
        const struct cause *c = list[k].cause;
        if ((!c->tests && !c->capacities) || list[k].effect.n) continue;
        list[k].effect = *all;
        list[k].effect.said =
            GW_SAY(r->arena, "together with the other evidence that does not hold: {}", gw_of_message(&all->said));
    }
}

/* What one part would lose by itself counts where the whole offer loses it too: other parts may make up for it. */
static const struct gw_finding *lost_by_all(struct reviewing *r, const struct gw_finding *part,
                                            const struct gw_finding *accepted, const struct gw_finding *offered)
{
    const size_t n = r->bench.judgement.demands.n;
    struct gw_finding *out = gw_alloc(r->arena, n + 1, sizeof *out);
    for (size_t i = 0; i < n; i++)
        out[i] = gw_verdict_rank(offered[i].verdict) > gw_verdict_rank(accepted[i].verdict) ? part[i] : accepted[i];
    return out;
}

static const struct gw_finding *where_it_counts(struct reviewing *r, const struct cause *c,
                                                const struct gw_finding *without, const struct gw_finding *with)
{
    const size_t n = r->bench.judgement.demands.n;
    struct gw_finding *out = gw_alloc(r->arena, n + 1, sizeof *out);
    for (size_t i = 0; i < n; i++)
        out[i] = !c->counts || c->counts(r, &r->bench.judgement.demands.items[i]) ? without[i] : with[i];
    return out;
}

static const struct gw_finding *of_look(const struct reviewing *r, size_t look, size_t base)
{
    return gw_bench_findings(&r->bench, look == NO_PART ? base : look);
}

/* What a substitution loses already hides what the evidence loses: of that, what it loses in the accepted system. */
static void measure_alone(struct measured *m, struct reviewing *r, size_t claimed, size_t recorded)
{
    const struct cause_looks *looks = &m->cause->accepted;
    const struct gw_finding *was = of_look(r, looks->favored, recorded);
    struct effect alone;
    gw_effect_of(&alone, r, was,
                 lost_by_all(r, where_it_counts(r, m->cause, of_look(r, looks->voided, recorded), was), was,
                             gw_bench_findings(&r->bench, claimed)),
                 r->bench.judgement.demands.n);
    if (gw_verdict_rank(alone.worst) <= gw_verdict_rank(m->effect.worst)) return;
    m->effect = alone;
    m->effect.said = GW_SAY(r->arena, "by itself, in the accepted system: {}", gw_of_message(&alone.said));
}

static void tell_evidence(struct reviewing *r, const struct causes *causes, const struct bases *at)
{
    const size_t n = r->bench.judgement.demands.n;
    const struct gw_finding *as_claimed = gw_bench_findings(&r->bench, at->claimed);
    struct measured *list = gw_alloc(r->arena, causes->n + 1, sizeof *list);
    struct effect all;
    for (size_t i = 0; i < causes->n; i++) {
        struct cause *c = &causes->items[i];
        list[i].cause = c;
        const struct gw_finding *was = of_look(r, c->offered.favored, at->claimed);
        gw_effect_of(&list[i].effect, r, was, where_it_counts(r, c, of_look(r, c->offered.voided, at->claimed), was),
                     n);
    }
    gw_effect_of(&all, r, as_claimed, gw_bench_findings(&r->bench, at->reported), n);
    share_rest(r, list, causes->n, &all);
    for (size_t i = 0; i < causes->n; i++) {
        list[i].cause->unsaid = list[i].cause->answered && !list[i].effect.n;
        if (list[i].cause->unsaid) continue;
        if (list[i].cause->fact) gw_comment_tells(r, &list[i].effect);
        if (at->recorded != NO_PART) measure_alone(&list[i], r, at->claimed, at->recorded);
        tell_cause(r, &list[i], of_look(r, list[i].cause->offered.voided, at->claimed),
                   gw_bench_findings(&r->bench, at->evidenced));
    }
}

/* Reports that nothing is said of. */
static void list_complete(struct reviewing *r, const struct causes *causes)
{
    for (size_t i = 0; i < r->reports.n; i++) {
        const struct named_report *n = &r->reports.items[i];
        bool said = !n->entry;
        for (size_t k = 0; k < causes->n; k++)
            said = said || (causes->items[k].report == i && !causes->items[k].unsaid);
        if (said) continue;
        const bool used = n->tests || n->capacities;
        gw_complete_add(r, "report", n->name,
                        used ? GW_SAY(r->arena, "complete, of the {} that name it: {}",
                                      gw_of_text(!n->tests       ? "capacities"
                                                 : n->capacities ? "ratings and capacities"
                                                                 : "ratings"),
                                      gw_of_text(gw_ratings_words(r, i, UINT32_MAX)))
                             : GW_PLAINLY("listed; no rating and no stated capacity names it"));
    }
}

/* The whole ------------------------------------------------------------------------------------------------------- */

static void look_at_substitutions(struct looks *looks, struct reviewing *r, const struct substitutions *s)
{
    for (size_t i = 0; i < s->n; i++) {
        struct look look = gw_look_of(r->accepted);
        look.part = s->items[i].part;
        look.other = s->items[i].other;
        add_look(looks, r, look);
    }
}

static void tell_substitutions(struct reviewing *r, const struct substitutions *s, size_t accepted, size_t offered)
{
    for (size_t i = 0; i < s->n; i++) {
        struct effect effect;
        const struct gw_finding *was = gw_bench_findings(&r->bench, accepted);
        const struct gw_finding *is =
            lost_by_all(r, gw_bench_findings(&r->bench, accepted + 1 + i), was, gw_bench_findings(&r->bench, offered));
        gw_effect_of(&effect, r, was, is, r->bench.judgement.demands.n);
        const struct gw_system *systems = r->bench.model.systems.items;
        gw_tell_substitution(r, &s->items[i], &effect, &systems[accepted], &systems[accepted + 1 + i]);
        gw_comment_tells(r, &effect);
    }
    if (r->accepted && r->accepted != r->judged && !s->n)
        gw_complete_add(r, "offer", r->judged->name, GW_PLAINLY("key by key the accepted system, costs aside"));
}

static void judge(struct reviewing *r, const struct looks *looks)
{
    gw_bench_judge(r, &r->bench, r->ask->model, r->ask->takeoff, looks->items, looks->n);
    r->explained = gw_alloc(r->arena, r->bench.judgement.demands.n + 1, sizeof *r->explained);
    r->stated = gw_alloc(r->arena, r->bench.judgement.demands.n + 1, sizeof *r->stated);
}

/* What the project takes somewhere and the offer has not is left out where it is judged. */
static void tell_options(struct reviewing *r)
{
    const struct gw_plan *plan = r->planned ? &r->planned->plan : NULL;
    for (size_t i = 0; plan && i < plan->candidate->options.n; i++) {
        const char *name = plan->candidate->options.items[i].name;
        bool taken = false, has = false;
        for (size_t p = 0; p < plan->places->n; p++) taken = taken || (plan->choices[p].options & gw_option_bit(i));
        for (size_t k = 0; k < r->judged->options.n; k++)
            has = has || strcmp(r->judged->options.items[k].name, name) == 0;
        if (!taken || has) continue;
        struct gw_comment *c = gw_comment_add(r, "option", name, GW_IT_DIFFERS);
        c->submitted = GW_PLAINLY("no such option");
        c->needed = GW_SAY(r->arena, "{}, which the project's plan takes", gw_of_text(name));
        c->basis = GW_PLAINLY("chosen in the project, or by --plan; the checks judge the offer without it");
        gw_comment_at(c, r->judged->node);
    }
}

/* Of a submittal of drawings or glass alone the accepted system was reviewed before. */
static bool speaks_of_system(const struct reviewing *r)
{
    return r->submittal->offered_system || r->submittal->reports.n;
}

static struct look without(struct look look, const struct voided *out)
{
    look.out = out;
    return look;
}

static bool names_none(const struct reviewing *r)
{
    for (size_t i = 0; speaks_of_system(r) && i < r->ratings.n; i++)
        if (!r->ratings.items[i]->report) return true;
    return false;
}

/* A rating that names no report is worth no more than one whose report is not there. */
static void look_at_statements(struct bases *at, struct looks *looks, struct reviewing *r, const struct voided *reports)
{
    struct voided *out = gw_alloc(r->arena, 2, sizeof *out);
    const struct look offer = looks->items[at->claimed];
    out[0] = gw_nothing_voided(r);
    out[1] = *reports;
    out[0].unnamed = out[1].unnamed = true;
    at->named = add_look(looks, r, without(offer, &out[0]));
    at->evidenced = add_look(looks, r, without(offer, &out[1]));
}

static void look_at_all(struct bases *at, struct looks *looks, struct reviewing *r, const struct substitutions *s,
                        const struct causes *causes)
{
    struct look offer = claimed(r), recorded = gw_look_of(r->accepted);
    struct voided *reports = gw_alloc(r->arena, 1, sizeof *reports);
    *reports = gw_nothing_voided(r);
    for (size_t i = 0; i < causes->n; i++) void_by(reports, &causes->items[i]);
    recorded.facts = true;
    *at = (struct bases){.accepted = NO_PART, .recorded = NO_PART};
    at->claimed = add_look(looks, r, offer); /* the first: others lean on it */
    at->evidenced = at->reported = add_look(looks, r, without(offer, reports));
    at->named = at->claimed;
    if (names_none(r)) look_at_statements(at, looks, r, reports);
    if (s->n) {
        at->accepted = add_look(looks, r, gw_look_of(r->accepted));
        look_at_substitutions(looks, r, s);
        at->recorded = add_look(looks, r, recorded);
    }
    for (size_t i = 0; i < causes->n; i++) {
        struct cause *c = &causes->items[i];
        look_at_cause(c, &c->offered, &offer, looks, r);
        if (s->n) look_at_cause(c, &c->accepted, &recorded, looks, r);
    }
}

/* What stands on a statement alone, since the report behind it does not hold, is not shown by evidence that does. */
static void doubt_statements(struct reviewing *r, const struct bases *at)
{
    const struct gw_finding *claimed = gw_bench_findings(&r->bench, at->claimed),
                            *evidenced = gw_bench_findings(&r->bench, at->evidenced);
    if (r->out->as_evidenced.verdict != GW_PASS) return;
    for (size_t i = 0; i < r->bench.judgement.demands.n; i++)
        if (evidenced[i].verdict == GW_PASS && evidenced[i].evidence == GW_BY_STATEMENT &&
            claimed[i].evidence != GW_BY_STATEMENT)
            r->out->as_evidenced.verdict = GW_NOT_SHOWN;
}

void gw_review_systems(struct reviewing *r)
{
    struct substitutions substitutions;
    struct causes causes = {.n = 0};
    struct looks looks = {.n = 0};
    struct bases at;
    gw_find_built(r);
    gw_find_substitutions(&substitutions, r);
    if (speaks_of_system(r)) {
        gw_find_named_reports(r);
        gw_find_causes(&causes, r);
    }
    look_at_all(&at, &looks, r, &substitutions, &causes);
    judge(r, &looks);
    r->out->as_claimed = r->bench.judgement.summaries.items[at.claimed];
    r->out->as_evidenced = r->bench.judgement.summaries.items[at.evidenced];
    doubt_statements(r, &at);
    tell_options(r);
    tell_substitutions(r, &substitutions, at.accepted, at.claimed);
    tell_evidence(r, &causes, &at);
    list_complete(r, &causes);
    if (speaks_of_system(r)) gw_tell_unnamed(r);
    if (speaks_of_system(r))
        gw_tell_checks(r, &(struct told_by){gw_bench_findings(&r->bench, at.claimed),
                                            gw_bench_findings(&r->bench, at.reported),
                                            gw_bench_findings(&r->bench, at.named)});
}
