/* Mullions under wind: deflection between their supports. */
#include "judge/checks.h"
#include "judge/coverage.h"
#include "judge/line.h"
#include "judge/member.h"

#include "galeward/combine.h"

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_element *e = place->element;
    struct gw_pressures p;
    const bool known = gw_demand_wind(out, ask, e, &p);
    const struct gw_stretch *s = known ? gw_stretch_of(ask, e) : NULL;
    const bool solved = s && !gw_said(&s->fault);
    struct gw_framing_bend bend = {.limit = GW_ABSENT, .response = GW_ABSENT};
    if (solved) bend = gw_framing_bend(ask, e, s->forces.deflection, s->forces.moment);
    gw_demand_limit(out, ask, GW_THICKNESS, bend.limit, bend.response);
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_element *e = d->element;
    const struct gw_stretch *s = gw_stretch_of(ask, e);
    struct gw_member_strength m = {.stiffness = GW_ABSENT};
    struct gw_message question;
    const bool known = gw_mullion_of(&m, &question, ask, system, e) || gw_given(m.stiffness); /* however strong */
    if (!known || gw_said(&s->fault)) gw_capacity_unknown(out, gw_said(&s->fault) ? s->fault : question);
    else if (e->corner && !gw_given(m.inertia_y))
        gw_capacity_unknown(out, GW_PLAINLY("a corner mullion bends both ways: its inertia about y is not known; ask "
                                            "the manufacturer (corner_mullion: inertia_y)"));
    else {
        const double stiffness =
            e->corner ? gw_combine_stiffness(m.stiffness, m.elastic_modulus, m.inertia_y) : m.stiffness;
        const struct gw_framing_bend bend = gw_framing_bend_again(ask, e, s->forces.deflection, s->forces.moment);
        const double bent = gw_mullion_deflection(&s->forces, stiffness, &ask->engine);
        gw_capacity_limit(out, 0, 0, bend.clause ? gw_framing_bent(&bend, stiffness, &ask->engine) : bent,
                          gw_framing_bend_message(ask, &bend));
    }
}

const struct gw_check gw_check_mullion_deflection = {
    .id = "mullion_deflection",
    .title = "Mullions: deflection under wind",
    .clause = "IBC 1604.3.7, 2403.3",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_MULLION),
    .link = true,
    .does = &(const struct gw_functions){
        .demand = demand, .capacity = capacity, .test = gw_test_mullion_deflection, .route = GW_RATING_OR_LIMITS}};
