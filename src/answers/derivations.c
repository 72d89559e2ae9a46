/* The derivations that a report brings with it: of the greatest pressure, and of what decides each candidate. */
#include "galeward/explain.h"

static const struct gw_element *greatest_outward(const struct gw_takeoff *takeoff)
{
    const struct gw_element *out = NULL;
    for (size_t i = 0; i < takeoff->elements.n; i++) {
        const struct gw_element *e = &takeoff->elements.items[i];
        if (e->kind == GW_LITE && gw_given(e->outward.pa) && (!out || e->outward.pa < out->outward.pa)) out = e;
    }
    return out;
}

static void add(struct gw_derivations *out, struct gw_ask *ask, const struct gw_judgement *judgement,
                const struct gw_element *element, const struct gw_finding *finding)
{
    struct gw_explanation *x = gw_alloc(ask->arena, 1, sizeof *x);
    struct gw_derivation *d = &out->list.items[out->list.n];
    gw_explain(x, ask, judgement, element);
    *d = (struct gw_derivation){finding, element, x, NULL};
    for (size_t i = 0; finding && i < x->links.n; i++) {
        const struct gw_finding *f = &x->links.items[i].finding;
        if (f->candidate == finding->candidate && f->demand->check == finding->demand->check)
            d->link = &x->links.items[i];
    }
    out->list.n += !finding || d->link;
}

void gw_find_derivations(struct gw_derivations *out, struct gw_ask *ask, const struct gw_takeoff *takeoff,
                         const struct gw_judgement *judgement)
{
    const struct gw_element *worst = greatest_outward(takeoff);
    out->list.items = gw_alloc(ask->arena, 2 * judgement->summaries.n + 1, sizeof *out->list.items);
    out->list.n = 0;
    if (worst) add(out, ask, judgement, worst, NULL);
    for (size_t i = 0; i < judgement->summaries.n; i++) {
        const struct gw_finding *f = gw_deciding(judgement->summaries.items[i].governing), *link = f ? f->link : NULL;
        if (f && f->demand->element) add(out, ask, judgement, f->demand->element, f);
        if (link && link->demand->element) add(out, ask, judgement, link->demand->element, link);
    }
}
