/* The structural test against the wind pressure of lites and mullions. */
#include "judge/checks.h"

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_pressures p = {GW_ABSENT, GW_ABSENT};
    const bool known = gw_demand_wind(out, ask, place->element, &p);
    gw_demand_term(out, ask, GW_PRESSURE, GW_INWARD, known ? p.inward : GW_ABSENT);
    gw_demand_term(out, ask, GW_PRESSURE, GW_OUTWARD, known ? p.outward : GW_ABSENT);
}

static void test(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    const struct gw_element *e = d->element;
    out->applies = rating->test == GW_TEST_STRUCTURAL && gw_same_component(rating, e->component);
    if (!out->applies) return;
    out->provided[0] = rating->positive;
    out->provided[1] = rating->negative;
    out->why = gw_shortfall(ask, rating, e);
    out->covers = !gw_said(&out->why);
    out->foreign = e->corner || (e->parapet && e->kind == GW_MULLION);
    if (out->covers && e->kind == GW_LITE && !rating->tested->make_up)
        out->why = GW_PLAINLY("provided that the tested make-up, reinforcement and fastening are like the project's: "
                              "the report's make-up is not recorded");
}

const struct gw_check gw_check_structural = {.id = "structural",
                                             .title = "Structural test against wind pressure",
                                             .clause = "ASTM E330",
                                             .scope = GW_PER_ELEMENT,
                                             .kinds = GW_KIND_BIT(GW_LITE) | GW_KIND_BIT(GW_MULLION),
                                             .path = true,
                                             .does = &(const struct gw_functions){.demand = demand, .test = test}};
