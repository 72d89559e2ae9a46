/* What a racking test shows of the glass, captured or bonded: for the checks of story drift. */
#ifndef GALEWARD_JUDGE_RACKING_H
#define GALEWARD_JUDGE_RACKING_H

#include "judge/check.h"

/* A bead holds some of its edges: such a lite has no clearance in a pocket. */
bool gw_is_bonded(const struct gw_system *system);
/* A sway rating against what glass must not fall out at, the whole story's drift; it shows nothing unless the test was
 * dynamic and its specimen covers the lite, its make-up, its room and its story. */
void gw_test_racking(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_rating *rating);

#endif
