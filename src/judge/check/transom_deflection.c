/* Transoms: deflection under wind, and under the weight of the glass that rests on them. */
#include "judge/checks.h"
#include "judge/coverage.h"
#include "judge/transom_load.h"

/* With E I of 1: the capacity derives the real one. */
static double response_of(struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_shed_case shed = gw_shed_to(e, fmax(fabs(e->inward_deflection), fabs(e->outward_deflection)));
    struct gw_engine untold = ask->engine;
    untold.trace = NULL;
    return gw_shed_deflection(&shed, 1, 1, &untold);
}

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_element *e = place->element;
    struct gw_pressures p;
    struct gw_framing_bend bend = {.limit = GW_ABSENT, .response = GW_ABSENT};
    if (gw_demand_wind(out, ask, e, &p)) bend = gw_framing_bend(ask, e, response_of(ask, e), GW_ABSENT);
    gw_demand_limit(out, ask, GW_THICKNESS, bend.limit, bend.response);
}

static double dead_limit(const struct gw_ask *ask, const struct gw_rail_result *dead)
{
    const struct gw_framing_rules *rules = ask->model->project.framing;
    return rules && gw_given(rules->dead_load_limit) ? rules->dead_load_limit : dead->deflection_limit;
}

static double inertia_about_y(const struct gw_member_strength *m) { return m->inertia_y; }

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_element *e = d->element;
    struct gw_carried c;
    if (!gw_carried_by(&c, out, ask, e, gw_part(system, transom), inertia_about_y,
                       "the transom carries glass: ask the manufacturer for its inertia about y (transom: inertia_y)"))
        return;
    const struct gw_shed_case shed = gw_shed_to(e, fmax(fabs(e->inward_deflection), fabs(e->outward_deflection)));
    const double modulus = c.member.elastic_modulus;
    const struct gw_framing_bend bend = gw_framing_bend_again(ask, e, response_of(ask, e), GW_ABSENT);
    gw_capacity_limit(out, 0, 0, gw_shed_deflection(&shed, modulus, c.member.stiffness / modulus, &ask->engine),
                      gw_framing_bend_message(ask, &bend));
    if (c.weight > 0)
        gw_capacity_instead(out, GW_THICKNESS, dead_limit(ask, &c.dead), c.dead.deflection,
                            GW_PLAINLY("under the weight of the glass"));
    const double eccentricity = gw_part(system, transom)->eccentricity;
    if (!(c.weight > 0) || (gw_given(eccentricity) && !(eccentricity > 0))) return;
    gw_capacity_instead(out, GW_ANGLE, c.dead.twist_limit, c.dead.twist,
                        GW_PLAINLY(gw_given(c.dead.twist)    ? "twist by the weight of the glass"
                                   : !gw_given(eccentricity) ? gw_unknown_line_of_weight
                                                             : "the weight of the glass twists the transom: ask the "
                                                               "manufacturer (transom: torsion_constant)"));
}

const struct gw_check gw_check_transom_deflection = {
    .id = "transom_deflection",
    .title = "Transoms: deflection",
    .clause = "IBC 1604.3.7, 2403.3",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_TRANSOM),
    .link = true,
    .does = &(const struct gw_functions){
        .demand = demand, .capacity = capacity, .test = gw_test_transom_deflection, .route = GW_RATING_OR_LIMITS}};
