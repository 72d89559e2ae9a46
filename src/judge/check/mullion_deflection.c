/* Mullions under wind: deflection between their supports. */
#include "judge/checks.h"
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
    gw_demand_limit(out, ask, GW_THICKNESS,
                    solved ? gw_framing_limit(ask->model, e->span, e->overhang, &ask->engine) : GW_ABSENT,
                    solved ? s->forces.deflection : GW_ABSENT);
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_element *e = d->element;
    const struct gw_stretch *s = gw_stretch_of(ask, e);
    struct gw_member_strength m;
    struct gw_message question;
    if (!gw_mullion_of(&m, &question, ask, system, e) || gw_said(&s->fault))
        gw_capacity_unknown(out, gw_said(&s->fault) ? s->fault : question);
    else if (e->corner && !gw_given(m.inertia_y))
        gw_capacity_unknown(out, GW_PLAINLY("a corner mullion bends both ways: its inertia about y is not known; ask "
                                            "the manufacturer (corner_mullion: inertia_y)"));
    else {
        const double stiffness =
            e->corner ? gw_combine_stiffness(m.stiffness, m.elastic_modulus, m.inertia_y) : m.stiffness;
        gw_capacity_limit(out, 0, 0, gw_mullion_deflection(&s->forces, stiffness, &ask->engine),
                          GW_PLAINLY("under wind"));
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
        .demand = demand, .capacity = capacity, .test = gw_test_link, .route = GW_RATING_OR_LIMITS}};
