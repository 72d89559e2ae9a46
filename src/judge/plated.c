#include "judge/plated.h"

const struct gw_element *gw_screw_across(const struct gw_ask *ask, const struct gw_element *e)
{
    const bool horizontal = e->above > 0 || e->below > 0;
    return horizontal ? gw_takeoff_other_part(ask->takeoff, e) : NULL;
}

struct gw_screw_side gw_screw_side_of(struct gw_ask *ask, const struct gw_element *e)
{
    return (struct gw_screw_side){gw_pressures_on(ask, e).outward, e->width, e->height};
}

void gw_demand_screw(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_element *e = place->element, *o = gw_screw_across(ask, e);
    struct gw_pressures p = {GW_ABSENT, GW_ABSENT};
    const bool known = gw_demand_wind(out, ask, e, &p) && (!o || gw_pressures_known(out, ask, o));
    if (!known) {
        gw_demand_term(out, ask, GW_FORCE, GW_OUTWARD, GW_ABSENT);
        return;
    }
    const struct gw_screw_side own = gw_screw_side_of(ask, e), other = gw_screw_side_of(ask, o ? o : e);
    gw_demand_term(out, ask, GW_FORCE, GW_OUTWARD, gw_screw_pull(&own, o ? &other : NULL, &ask->engine));
}

const char *gw_without_plates(const struct gw_system *system)
{
    return system->system->glazing == GW_SILICONE ? "the glass is held by silicone, not by a pressure plate" : NULL;
}

enum gw_status gw_metal_strength_of(struct gw_metal_strength *out, enum gw_metal alloy, double thickness,
                                    struct gw_engine *engine)
{
    struct gw_alloy found;
    const enum gw_status status = gw_alloy_find(&found, alloy, thickness, false, engine);
    *out = (struct gw_metal_strength){.ultimate = found.ultimate,
                                      .yield = found.yield,
                                      .elastic_modulus = found.elastic_modulus,
                                      .thickness = GW_ABSENT};
    return status;
}
