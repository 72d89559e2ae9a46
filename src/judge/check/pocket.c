/* Whether a lite type's overall thickness fits a pocket of the system. */
#include "judge/checks.h"
#include "judge/glass_lite.h"

#include "tables_data.h"

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_lite_type *type = gw_lite_now(ask, place->lite);
    const double thickness = gw_layers_thickness(type->layers.items, type->layers.n);
    gw_demand_term(out, ask, GW_THICKNESS, GW_NO_DIRECTION, thickness);
    if (!type->layers.n) gw_demand_unknown(out, GW_PLAINLY("which glass is in it? Ask the architect (lites: layers)"));
    else if (!gw_given(thickness))
        gw_demand_unknown(out, GW_PLAINLY("how thick is the interlayer? Ask the glass supplier (lites: thickness)"));
    else out->message = GW_PLAINLY("overall, nominal");
}

static double nearest_pocket(const struct gw_system *system, double needed)
{
    const double *taken = gw_part(system, pocket).items;
    double nearest = GW_ABSENT;
    for (size_t i = 0; i < gw_part(system, pocket).n; i++)
        if (!(fabs(taken[i] - needed) >= fabs(nearest - needed))) nearest = taken[i];
    return nearest;
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_glazing_pocket *rule = &ask->model->tables->glazing_pocket[0];
    const double needed = gw_term_of(d, 0)->value, nearest = nearest_pocket(system, needed);
    if (!gw_given(nearest) && system->system->glazing == GW_SILICONE) {
        gw_capacity_not_concerned(out, GW_PLAINLY("bonded all round, and no pocket is stated"));
        return;
    }
    gw_used_add(&ask->engine.used, &rule->row);
    if (!gw_given(nearest)) {
        gw_capacity_unknown(
            out, GW_PLAINLY("which overall glass thicknesses does the pocket take? Ask the manufacturer (pocket)"));
        return;
    }
    const bool fits = fabs(nearest - needed) <= rule->tolerance_m * (1 + GW_HAIR);
    const struct gw_message taken =
        GW_SAY(ask->arena, "the nearest of the system's pockets, within {} either way; face clearance to be confirmed",
               gw_of_quantity(GW_THICKNESS, rule->tolerance_m));
    struct gw_limit *limit =
        gw_capacity_limit(out, 0, 0, nearest, fits ? taken : GW_PLAINLY("no pocket of the system takes this make-up"));
    limit->met = fits ? GW_YES : GW_NO;
    out->evidence = GW_BY_STATEMENT;
}

const struct gw_check gw_check_pocket = {.id = "pocket",
                                         .title = "Glass thickness in the glazing pocket",
                                         .clause = "system data",
                                         .scope = GW_PER_LITE_TYPE,
                                         .does = &(const struct gw_functions){.demand = demand, .capacity = capacity}};
