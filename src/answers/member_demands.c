/* What any manufacturer's framing must bring: moment, shear and the inertia that keeps the limit. */
#include "galeward/alloy.h"
#include "galeward/answers.h"
#include "galeward/combine.h"
#include "judge/corner.h"
#include "judge/transom_load.h"

struct felt {
    double moment, shear, deflection; /* deflection with E I of 1 N m2 */
};

static bool mullion_feels(struct felt *out, struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_stretch *s = gw_stretch_of(ask, e);
    *out = (struct felt){s->forces.moment, s->forces.shear, s->forces.deflection};
    return !gw_said(&s->fault);
}

static void transom_feels(struct felt *out, struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_shed_case shed = gw_shed_to(e, gw_greater(gw_pressures_on(ask, e)));
    *out = (struct felt){gw_shed_moment(&shed, &ask->engine), gw_shed_reaction(&shed, &ask->engine),
                         gw_shed_deflection(&shed, 1, 1, &ask->engine)};
}

static bool demand_of(struct gw_member_demand *out, struct gw_ask *ask, const struct gw_element *e)
{
    struct felt felt = {GW_ABSENT, GW_ABSENT, GW_ABSENT};
    const double aluminum = gw_metal_moduli(GW_METAL_6063_T6, &ask->engine).elastic;
    bool known = true;
    if (e->kind == GW_MULLION) known = mullion_feels(&felt, ask, e);
    else transom_feels(&felt, ask, e);
    const struct gw_element *twin = gw_corner_twin(ask->takeoff, e);
    const struct gw_framing_bend bend = gw_framing_bend(ask, e, felt.deflection, felt.moment);
    *out = (struct gw_member_demand){.element = e,
                                     .moment = felt.moment,
                                     .shear = felt.shear,
                                     .deflection_limit = bend.limit,
                                     .shared_with = twin ? twin->id : NULL,
                                     .inertia = gw_inertia_for(bend.response, aluminum, bend.limit)};
    return known;
}

void gw_find_member_demands(struct gw_answer *out, struct gw_ask *ask)
{
    size_t capacity = 0;
    for (size_t i = 0; i < ask->takeoff->elements.n; i++) {
        const struct gw_element *e = &ask->takeoff->elements.items[i];
        struct gw_member_demand one;
        if ((e->kind != GW_MULLION && e->kind != GW_TRANSOM) || e->outside || !demand_of(&one, ask, e)) continue;
        out->members.items =
            gw_grow(ask->arena, out->members.items, out->members.n, &capacity, sizeof *out->members.items);
        out->members.items[out->members.n++] = one;
    }
}
