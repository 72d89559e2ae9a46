/* The pressure plate between two screws. */
#include "judge/checks.h"
#include "judge/coverage.h"
#include "judge/plated.h"

#include "tables_data.h"

static enum gw_status bend(struct gw_pressure_plate_result *out, struct gw_ask *ask, const struct gw_element *e,
                           const struct gw_system *system)
{
    const struct gw_element *o = gw_screw_across(ask, e);
    const struct gw_screw_side own = gw_screw_side_of(ask, e), other = gw_screw_side_of(ask, o ? o : e);
    const double suction = own.pressure, width = gw_plate_load_width(&own, o ? &other : NULL);
    const struct gw_plate_spec *p = gw_part(system, pressure_plate);
    struct gw_plate_section section;
    gw_plate_flat(&section, p->width, p->hole, p->thickness);
    const enum gw_status status = gw_metal_strength_of(&section.metal, p->alloy, p->thickness, &ask->engine);
    const struct gw_pressure_plate_case in = {.pressure = suction,
                                              .width_left = width,
                                              .width_right = width,
                                              .spacing = e->height,
                                              .length = GW_ABSENT,
                                              .end_distance = gw_screw_end_distance(system),
                                              .gasket_load = GW_ABSENT,
                                              .preload = GW_ABSENT,
                                              .screw_allowable = GW_ABSENT,
                                              .chase_tested = GW_ABSENT,
                                              .safety_factor = GW_ABSENT,
                                              .section = &section};
    return status == GW_OK ? gw_pressure_plate(out, &in, &ask->engine) : status;
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    struct gw_pressure_plate_result r;
    if (!gw_part(system, pressure_plate))
        gw_capacity_unknown(
            out, GW_PLAINLY("which pressure plate? Ask the manufacturer (pressure_plate: alloy, width, thickness)"));
    else if (bend(&r, ask, d->element, system) != GW_OK) gw_capacity_unknown(out, gw_fault_message(ask));
    else
        gw_capacity_instead(out, GW_STRESS, r.stress, r.stress_allowable,
                            GW_PLAINLY("bending of the plate between screws"))
            ->safety = ask->model->tables->fastener_safety[GW_ROW_FASTENER_SAFETY_FLAT_YIELD].factor;
}

const struct gw_check gw_check_plate = {.id = "plate",
                                        .title = "Pressure plate between screws",
                                        .clause = "Aluminum Design Manual F",
                                        .scope = GW_PER_ELEMENT,
                                        .kinds = GW_KIND_BIT(GW_SCREW),
                                        .link = true,
                                        .does = &(const struct gw_functions){.demand = gw_demand_screw,
                                                                             .without = gw_without_plates,
                                                                             .capacity = capacity,
                                                                             .test = gw_test_edges,
                                                                             .route = GW_RATING_OR_LIMITS}};
