/* What the list of tests asks of the demands of hazards. */
#ifndef GALEWARD_JUDGE_HAZARDS_H
#define GALEWARD_JUDGE_HAZARDS_H

#include "galeward/debris.h"
#include "judge/check.h"

/* "then cycled inward 3500 of 10 psf to 20 psf, ...; outward ..." */
struct gw_message gw_say_cycles(struct gw_ask *ask, const struct gw_cycles *cycles);
/* Of glass when the story drifts: its term is the drift with importance. */
bool gw_is_story_drift(const struct gw_demand *demand);

#endif
