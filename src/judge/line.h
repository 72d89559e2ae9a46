/* The mullions of a wall as beams, for the checks that lean on them. */
#ifndef GALEWARD_JUDGE_LINE_H
#define GALEWARD_JUDGE_LINE_H

#include "judge/check.h"

#include "galeward/mullion_line.h"

/* What one stretch of mullion feels under the pressures of its wall, allowable-stress level. */
struct gw_stretch {
    struct gw_mullion_forces forces;
    enum gw_load_direction direction; /* of the moment */
    struct gw_message fault;          /* not said; else why there are no figures */
};
/* Worked out once an element of the take-off. */
const struct gw_stretch *gw_stretch_of(struct gw_ask *ask, const struct gw_element *e);
/* The same once more where a derivation is wanted: the direction and pattern of the largest moment. */
void gw_stretch_derive(struct gw_ask *ask, const struct gw_element *e);

/* What the beam hands to an anchor. False: `why` says why there is nothing. */
bool gw_anchor_holds(struct gw_mullion_anchor *out, struct gw_message *why, struct gw_ask *ask,
                     const struct gw_element *e);
/* What hangs on it. */
const struct gw_mullion_bearing *gw_anchor_bearing(const struct gw_element *e);
/* The spans of its piece differ by no more than 5 % from each other. */
bool gw_equal_spans(const struct gw_element *e, double most);
/* Of the anchor that the element is, m above ground. */
double gw_anchor_level(const struct gw_element *e);
struct gw_mullion_piece gw_longest_piece(const struct gw_wall_lines *l);
/* Its joints between pieces of mullion, from the bottom up; kept. */
const struct gw_mullion_joint *gw_joints_of(size_t *n, struct gw_ask *ask, const struct gw_wall_lines *l);

#endif
