/* Pressure plates and the screws that hold them: what both checks ask. */
#ifndef GALEWARD_JUDGE_PLATED_H
#define GALEWARD_JUDGE_PLATED_H

#include "judge/check.h"

#include "galeward/combine.h"

/* Suction on a screw's own length of plate: N, with the part across the roof line. */
void gw_demand_screw(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place);
/* Of a horizontal what its lites give to the middle of its length; of a vertical half of the lites beside it. */
struct gw_screw_side gw_screw_side_of(struct gw_ask *ask, const struct gw_element *e);
/* The part of a horizontal's screws on the other side of the roof line; NULL. Those of a vertical stand one above the
 * other, each on one side. */
const struct gw_element *gw_screw_across(struct gw_ask *ask, const struct gw_element *e);
/* N, of the screw that the overhang of the plate beyond it loads most, from that of a screw between two others; 0: the
 * end is not known, or so near that it loads no screw more. */
double gw_end_screw_pull(struct gw_ask *ask, const struct gw_element *e, const struct gw_system *system, double pull);
/* N, at which the thread of a screw strips, without a factor: as tested, else of a tapped one by formula; absent:
 * neither is known. Defined with the check of screws. */
double gw_thread_strips_at(struct gw_ask *ask, const struct gw_system *system);
/* Why a system has none, or NULL. */
const char *gw_without_plates(const struct gw_system *system);
enum gw_status gw_metal_strength_of(struct gw_metal_strength *out, enum gw_metal alloy, double thickness,
                                    struct gw_engine *engine);

#endif
