/* A system against a demand by calculation: its limits, the gravest of which governs. */
#include "judge/outcome.h"

double gw_use_of(double required, double provided, bool at_most)
{
    const double part = at_most ? provided : required, whole = at_most ? required : provided;
    if (!gw_given(part) || !gw_given(whole)) return GW_ABSENT;
    if (whole > 0) return part / whole;
    return part > 0 ? (double)INFINITY : 0;
}

enum gw_verdict gw_verdict_of(double use, enum gw_bool met)
{
    if (met != GW_UNSAID) return met == GW_YES ? GW_PASS : GW_FAIL;
    if (!gw_given(use)) return GW_NOT_SHOWN;
    return use <= 1 + GW_HAIR ? GW_PASS : GW_FAIL;
}

bool gw_outcome_graver(const struct gw_outcome *a, const struct gw_outcome *b)
{
    const int left = gw_verdict_rank(a->verdict), right = gw_verdict_rank(b->verdict);
    if (left != right) return left > right;
    return gw_given(a->use) && !(a->use <= b->use);
}

static struct gw_outcome weigh_limit(const struct gw_limit *l, const struct gw_demand *d)
{
    const struct gw_term *t = gw_term_of(d, l->term);
    const bool own = gw_given(l->required);
    struct gw_outcome o = {.evidence = GW_BY_CALCULATION,
                           .required = own ? l->required : t->value,
                           .provided = l->provided,
                           .dim = own ? l->dim : t->dim,
                           .direction = l->turned ? l->direction : t->direction,
                           .message = l->message};
    o.use = gw_given(l->use) ? l->use : gw_use_of(o.required, o.provided, d->at_most);
    if (l->met != GW_UNSAID && !gw_given(l->use)) o.use = GW_ABSENT;
    o.verdict = gw_verdict_of(o.use, l->met);
    o.safety = l->safety;
    return o;
}

/* The limits of one group act together: their uses add up, and what is left of the first one's capacity is shown. */
static struct gw_outcome weigh_group(const struct gw_capacity *c, const struct gw_demand *d, unsigned first)
{
    struct gw_outcome o = weigh_limit(&c->limits[first], d);
    for (unsigned i = first + 1; i < c->n; i++) {
        if (c->limits[i].group != c->limits[first].group) continue;
        o.use += weigh_limit(&c->limits[i], d).use;
        o.provided = o.required / o.use;
        o.verdict = gw_verdict_of(o.use, GW_UNSAID);
    }
    return o;
}

static bool leads_group(const struct gw_capacity *c, unsigned i)
{
    for (unsigned k = 0; k < i; k++)
        if (c->limits[k].group == c->limits[i].group) return false;
    return true;
}

/* The gravest group. What is not known of a limit is asked, unless another one fails already. */
static struct gw_outcome weigh_limits(const struct gw_capacity *c, const struct gw_demand *d)
{
    struct gw_outcome worst = {.verdict = GW_NOT_SHOWN, .required = GW_ABSENT, .provided = GW_ABSENT, .use = GW_ABSENT};
    const struct gw_limit *asked = NULL;
    bool any = false;
    for (unsigned i = 0; i < c->n; i++) {
        if (!gw_given(c->limits[i].provided)) {
            asked = asked ? asked : &c->limits[i];
            continue;
        }
        if (!leads_group(c, i)) continue;
        struct gw_outcome o = weigh_group(c, d, i);
        if (!any || gw_outcome_graver(&o, &worst)) worst = o;
        any = true;
    }
    if (asked && worst.verdict != GW_FAIL) {
        worst.verdict = GW_NOT_SHOWN;
        worst.evidence = GW_EVIDENCE_NONE;
        worst.message = asked->message;
    } else {
        worst.evidence = c->evidence;
        if (c->open) worst.verdict = GW_NOT_SHOWN;
    }
    return worst;
}

struct gw_outcome gw_calculate(struct gw_ask *ask, const struct gw_demand *d, const struct gw_system *system)
{
    struct gw_capacity c = {.evidence = GW_BY_CALCULATION};
    struct gw_outcome o = {.verdict = GW_NOT_SHOWN,
                           .required = GW_ABSENT,
                           .provided = GW_ABSENT,
                           .use = GW_ABSENT,
                           .dim = gw_term_of(d, 0)->dim};
    gw_ask_open(ask);
    gw_trace_group(&ask->engine, "What it takes");
    d->check->does->capacity(&c, ask, d, system);
    if (c.state == GW_CAPACITY_KNOWN) o = weigh_limits(&c, d);
    else o.message = c.message;
    if (c.state == GW_CAPACITY_NOT_CONCERNED) o.verdict = GW_NOT_REQUIRED;
    o.used = gw_ask_close(ask, d->used);
    return o;
}

void gw_weigh_each(struct gw_weighed_limits *out, const struct gw_capacity *c, const struct gw_demand *d)
{
    out->verdict = c->state == GW_CAPACITY_NOT_CONCERNED ? GW_NOT_REQUIRED : GW_NOT_SHOWN;
    out->message = c->message;
    for (unsigned i = 0; c->state == GW_CAPACITY_KNOWN && i < c->n && out->n < GW_WEIGHED; i++) {
        if (!leads_group(c, i)) continue;
        struct gw_outcome o = weigh_group(c, d, i);
        const struct gw_limit *l = &c->limits[i]; /* what is asked for without a number requires none */
        if (!gw_given(l->provided) && !gw_given(l->required)) o.required = GW_ABSENT;
        out->items[out->n++] = (struct gw_weighed){o.message, o.dim, o.required, o.provided, o.verdict};
    }
}

void gw_calculate_each(struct gw_weighed_limits *out, struct gw_ask *ask, const struct gw_demand *d,
                       const struct gw_system *system)
{
    struct gw_capacity c = {.evidence = GW_BY_CALCULATION};
    gw_ask_open(ask);
    d->check->does->capacity(&c, ask, d, system);
    gw_weigh_each(out, &c, d);
}
