/* Ends of transoms: the wind reaction with half of the glass. */
#include "judge/checks.h"
#include "judge/coverage.h"
#include "judge/transom_load.h"

#include "galeward/combine.h"

enum { WIND, WEIGHT };

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_element *e = place->element;
    struct gw_pressures p = {GW_ABSENT, GW_ABSENT};
    const bool known = gw_demand_wind(out, ask, e, &p);
    const struct gw_shed_case shed = gw_shed_to(e, gw_greater(p));
    gw_demand_term(out, ask, GW_FORCE, GW_NO_DIRECTION, known ? gw_shed_reaction(&shed, &ask->engine) : GW_ABSENT);
    gw_demand_term(out, ask, GW_FORCE, GW_NO_DIRECTION, gw_weight_resting_on(ask, e));
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_capacity_spec *spec = gw_part(system, transom_connection);
    const double wind = gw_term_of(d, WIND)->value, weight = gw_term_of(d, WEIGHT)->value;
    if (!spec)
        gw_capacity_unknown(out, GW_PLAINLY("what does the end of the transom take? Ask the manufacturer for a test: a "
                                            "screw spline or a chase has no formula (transom_connection: capacity)"));
    else if (!gw_given(weight)) gw_capacity_unknown(out, GW_PLAINLY(gw_unknown_weight));
    else {
        out->evidence = gw_stated_evidence(spec->report);
        gw_capacity_instead(out, GW_FORCE, gw_combine_end(wind, weight, &ask->engine), spec->capacity,
                            gw_stated_by(ask, spec));
    }
}

const struct gw_check gw_check_transom_connection = {
    .id = "transom_connection",
    .title = "Ends of transoms",
    .clause = "manufacturer's test",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_TRANSOM),
    .link = true,
    .does = &(const struct gw_functions){
        .demand = demand, .capacity = capacity, .test = gw_test_transom, .route = GW_RATING_OR_LIMITS}};
