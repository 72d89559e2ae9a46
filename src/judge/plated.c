#include "judge/plated.h"

#include "judge/transom_load.h"

const struct gw_element *gw_screw_across(struct gw_ask *ask, const struct gw_element *e)
{
    const bool horizontal = e->above > 0 || e->below > 0;
    const struct gw_element *other = horizontal ? gw_takeoff_other_part(ask->takeoff, e) : NULL;
    return other && ask->system ? gw_as_fastened(ask, ask->system, other) : other;
}

/* Of what loads the middle of a horizontal at height z, this side of the roof line. */
static double shed_width(struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_shed_case in = gw_shed_along(e, e->edge, 1);
    const double z = e->lines->levels[e->grid->layers[e->sort].strips[e->strip].member];
    struct gw_shed_reach reach;
    gw_shed_reach(&reach, &in, &ask->engine);
    if (!gw_screw_across(ask, e)) {
        const double both = reach.above + reach.below;
        GW_STEP(&ask->engine, "b", GW_THICKNESS, both, "both lites at midspan", "b_1+b_2",
                {"b_1|b_", reach.above, GW_THICKNESS}, {"b_2|b_", reach.below, GW_THICKNESS});
        return both;
    }
    const double low = z - reach.below, high = z + reach.above,
                 own = fmax(e->parapet ? high - fmax(low, e->bottom) : fmin(high, e->top) - low, 0);
    GW_FOUND(&ask->engine, "b", GW_THICKNESS, own, "roof line", "what of it lies on this side",
             {"b_above", reach.above, GW_THICKNESS}, {"b_below", reach.below, GW_THICKNESS});
    return own;
}

struct gw_screw_side gw_screw_side_of(struct gw_ask *ask, const struct gw_element *e)
{
    const double width = gw_given(e->edge) ? shed_width(ask, e) : e->width;
    return (struct gw_screw_side){gw_pressures_on(ask, e).outward, width, e->height};
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

/* Beyond the end distance of equal moments the overhang lifts the screws beside it and loads its own. */
double gw_end_screw_pull(struct gw_ask *ask, const struct gw_element *e, const struct gw_system *system, double pull)
{
    struct gw_pressure_plate_result r;
    const double spacing = e->height, end = gw_screw_end_distance(system);
    const struct gw_pressure_plate_case in = {.pressure = 1,
                                              .width_left = pull / spacing,
                                              .width_right = pull / spacing,
                                              .spacing = spacing,
                                              .length = GW_ABSENT,
                                              .end_distance = end,
                                              .gasket_load = GW_ABSENT,
                                              .preload = GW_ABSENT,
                                              .screw_allowable = GW_ABSENT,
                                              .chase_tested = GW_ABSENT,
                                              .safety_factor = GW_ABSENT};
    if (!gw_given(end) || !(end > spacing / sqrt(6)) || !(pull > 0)) return 0;
    return gw_pressure_plate(&r, &in, &ask->engine) == GW_OK ? r.tension_most : 0;
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
