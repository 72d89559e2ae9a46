/* The structural test against the wind pressure of lites and mullions. */
#include "judge/checks.h"
#include "judge/coverage.h"

#include "tables_data.h"

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_pressures p = {GW_ABSENT, GW_ABSENT};
    const bool known = gw_demand_wind(out, ask, place->element, &p);
    gw_demand_term(out, ask, GW_PRESSURE, GW_INWARD, known ? p.inward : GW_ABSENT);
    gw_demand_term(out, ask, GW_PRESSURE, GW_OUTWARD, known ? p.outward : GW_ABSENT);
}

/* Nothing recorded says that the specimen was larger. */
static bool no_larger(const struct gw_tested *t, const struct gw_element *e)
{
    if (e->kind == GW_MULLION) return !(t->module > e->width) && !(t->span > e->span);
    bool any = !t->lites.n && !(t->lite_width > e->width) && !(t->lite_height > e->pane);
    for (size_t i = 0; i < t->lites.n; i++)
        any = any || (t->lites.items[i].width <= e->width && t->lites.items[i].height <= e->pane);
    return any;
}

/* A failure recorded of a specimen no larger than the element speaks against it, over the proof factor. */
static bool failed(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e)
{
    const struct gw_both_ways *at = rating->failed_at;
    const struct gw_tested *t = rating->tested;
    const double proof = ask->model->tables->proof_loads[GW_ROW_PROOF_LOADS_E330].proof;
    const struct gw_pressures p = gw_pressures_on(ask, e);
    if (!at || !t || !(at->positive < p.inward * proof || at->negative < p.outward * proof)) return false;
    return no_larger(t, e);
}

static void test(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    const struct gw_element *e = d->element;
    out->applies = rating->test == GW_TEST_STRUCTURAL && gw_same_component(rating, e->component);
    if (!out->applies) return;
    const struct gw_pressures proved = gw_proved(ask, rating);
    out->provided[0] = proved.inward;
    out->provided[1] = proved.outward;
    out->why =
        e->kind == GW_LITE ? gw_specimen_short_of_lite(ask, rating, e) : gw_specimen_short_of_mullion(ask, rating, e);
    out->covers = !gw_said(&out->why);
    out->foreign = !out->covers;
    if (!failed(ask, rating, e)) return;
    out->adverse = true;
    out->foreign = false;
    out->met = GW_NO;
    out->why = GW_PLAINLY("the specimen failed below the proof of what is asked here");
}

const struct gw_check gw_check_structural = {.id = "structural",
                                             .title = "Structural test against wind pressure",
                                             .clause = "ASTM E330",
                                             .scope = GW_PER_ELEMENT,
                                             .kinds = GW_KIND_BIT(GW_LITE) | GW_KIND_BIT(GW_MULLION),
                                             .path = true,
                                             .does = &(const struct gw_functions){.demand = demand, .test = test}};
