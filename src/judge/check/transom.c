/* Transoms: bending by wind about x and by the weight of the glass about y at once; shear under wind; twist by the
 * weight beside the shear center with both. */
#include "judge/checks.h"
#include "judge/coverage.h"
#include "judge/transom_load.h"

#include "galeward/combine.h"

enum { MOMENT, SHEAR };

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_pressures p = {GW_ABSENT, GW_ABSENT};
    const bool known = gw_demand_wind(out, ask, place->element, &p);
    const struct gw_shed_case shed = gw_shed_to(place->element, gw_greater(p));
    const enum gw_load_direction direction = p.inward >= p.outward ? GW_INWARD : GW_OUTWARD;
    gw_demand_term(out, ask, GW_MOMENT, direction, known ? gw_shed_moment(&shed, &ask->engine) : GW_ABSENT);
    gw_demand_term(out, ask, GW_FORCE, direction, known ? gw_shed_reaction(&shed, &ask->engine) : GW_ABSENT);
}

static double strength_about_y(const struct gw_member_strength *m) { return m->moment_y; }

/* The blocks hand the weight to a line beside the shear center: each twists the length between it and its end. */
static void add_twist(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                      const struct gw_carried *c, double eccentricity, double bending)
{
    if (!gw_given(eccentricity)) {
        gw_capacity_instead(out, GW_MOMENT, 0, GW_ABSENT, GW_PLAINLY(gw_unknown_line_of_weight));
        return;
    }
    const double torque = c->weight / 2 * eccentricity, wind = gw_term_of(d, SHEAR)->value;
    if (!(torque > 0)) return;
    if (!gw_given(c->member.torque)) {
        gw_capacity_instead(out, GW_MOMENT, torque, GW_ABSENT,
                            GW_PLAINLY("the weight of the glass twists the transom: what torque does it take? Ask the "
                                       "manufacturer (transom: tube, or allowable_torque)"));
        return;
    }
    GW_STEP(&ask->engine, "T", GW_BENDING, torque, "weight on one block beside the shear center", "D/2*e",
            {"D", c->weight, GW_FORCE}, {"e", eccentricity, GW_THICKNESS});
    const double shear = gw_given(c->member.shear) ? wind / c->member.shear : 0, twist = torque / c->member.torque;
    if (gw_given(c->member.shear))
        GW_STEP(&ask->engine, "u_v", GW_RATIO, shear, "shear under wind", "R/V_a", {"R|R", wind, GW_FORCE},
                {"V_a|Va", c->member.shear, GW_FORCE});
    GW_STEP(&ask->engine, "u_t", GW_RATIO, twist, "twist by the weight", "T/T_a", {"T", torque, GW_BENDING},
            {"T_a", c->member.torque, GW_BENDING});
    const double use = gw_combine_twist(bending, shear, twist, &ask->engine);
    gw_capacity_limit(out, MOMENT, out->n, gw_term_of(d, MOMENT)->value / use,
                      GW_PLAINLY("twist by the weight of the glass beside the shear center, with bending and shear"))
        ->use = use;
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    struct gw_carried c;
    if (!gw_carried_by(&c, out, ask, d->element, gw_part(system, transom), strength_about_y,
                       "the transom carries glass: its strength about y is not known; ask the manufacturer (transom: "
                       "tube)"))
        return;
    const struct gw_message governing = gw_member_governing(ask, gw_part(system, transom), &c.member);
    const struct gw_message bending =
        GW_SAY(ask->arena, "bending by wind and by the weight of the glass at once: {}", gw_of_message(&governing));
    out->evidence = gw_member_evidence(gw_part(system, transom));
    const double wind = gw_term_of(d, MOMENT)->value;
    struct gw_limit *limit = gw_capacity_limit(out, MOMENT, 0, c.member.moment, bending);
    limit->safety = gw_member_safety(ask, gw_part(system, transom));
    if (c.weight > 0) { /* what is left for the wind */
        limit->use = gw_combine_bending(wind, c.member.moment, c.dead.moment, c.member.moment_y, &ask->engine);
        limit->provided = wind / limit->use;
    }
    if (gw_given(c.member.shear))
        gw_capacity_limit(out, SHEAR, 1, c.member.shear, GW_PLAINLY("shear of the webs under wind"))->safety =
            gw_member_safety(ask, gw_part(system, transom));
    if (c.weight > 0) add_twist(out, ask, d, &c, gw_part(system, transom)->eccentricity, limit->use);
}

const struct gw_check gw_check_transom = {
    .id = "transom",
    .title = "Transoms: bending by wind and glass weight",
    .clause = "Aluminum Design Manual F",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_TRANSOM),
    .link = true,
    .does = &(const struct gw_functions){
        .demand = demand, .capacity = capacity, .test = gw_test_transom, .route = GW_RATING_OR_LIMITS}};
