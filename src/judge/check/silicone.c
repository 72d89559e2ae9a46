/* Structural silicone: the bite under suction. */
#include "judge/checks.h"

#include "galeward/silicone.h"

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_pressures p = {GW_ABSENT, GW_ABSENT};
    gw_demand_wind(out, ask, place->element, &p);
    gw_demand_term(out, ask, GW_PRESSURE, GW_OUTWARD, p.outward);
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_silicone_spec *s = system->silicone;
    struct gw_silicone_result r;
    if (!s) {
        gw_capacity_unknown(
            out, GW_PLAINLY("how wide is the bite of the structural silicone? Ask the manufacturer (silicone: bite)"));
        return;
    }
    const struct gw_silicone_case in = {.width = d->element->width,
                                        .height = d->element->pane,
                                        .pressure = gw_term_of(d, 0)->value,
                                        .allowable = s->design_stress,
                                        .weight = GW_ABSENT,
                                        .dead_allowable = GW_ABSENT,
                                        .movement = GW_ABSENT,
                                        .strain = GW_ABSENT,
                                        .bite = GW_ABSENT,
                                        .thickness = GW_ABSENT};
    if (gw_silicone(&r, &in, &ask->engine) != GW_OK) gw_capacity_unknown(out, gw_fault_message(ask));
    else
        gw_capacity_instead(out, GW_THICKNESS, r.bite_wind, s->bite,
                            GW_PLAINLY("bite under suction; weight on setting blocks"));
}

const struct gw_check gw_check_silicone = {
    .id = "silicone",
    .title = "Structural silicone: bite",
    .clause = "ASTM C1401",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_LITE),
    .link = true,
    .does = &(const struct gw_functions){.demand = demand, .without = gw_without_bead, .capacity = capacity}};
