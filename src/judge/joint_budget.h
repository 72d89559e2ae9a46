/* What closes and what opens the joints between pieces of mullion, as they are designed and as one was found. */
#ifndef GALEWARD_JUDGE_JOINT_BUDGET_H
#define GALEWARD_JUDGE_JOINT_BUDGET_H

#include "judge/check.h"

#include "galeward/mullion_line.h"

/* How a joint stands on the wall: its tolerances are in it. */
struct gw_built_joint {
    double coldest, warmest; /* K, of the metal while it was measured, from to; absent: any of the project's range */
    bool still;              /* what moves at any temperature: floors and columns alone */
};
/* `joint`: what moves into it. `built` NULL: as designed, with tolerances, at the temperatures of installation. Each
 * way at its worse. The project has its movements. */
enum gw_status gw_joint_budget(struct gw_movement_result *out, struct gw_ask *ask, const struct gw_mullion_joint *joint,
                               const struct gw_built_joint *built, double least_gap, double least_overlap);
/* What it adds up, GW_JOINT_ITEMS at most. */
enum gw_status gw_joint_parts(struct gw_movement_item *items, size_t *n, struct gw_ask *ask,
                              const struct gw_mullion_joint *joint, const struct gw_built_joint *built);
/* Floors are known to stand still, or how far they move. */
bool gw_knows_movement(const struct gw_model *model);
extern const char gw_unknown_movement[];

/* How much more than its glass so long a piece of frame grows and shrinks, both as warm as each other, m; from any
 * temperature of installation. */
enum gw_status gw_frame_about_glass(struct gw_thermal_result *out, struct gw_ask *ask, double length);

#endif
