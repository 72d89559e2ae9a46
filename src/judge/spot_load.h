/* What a place carries: to be compared among places of one item. */
#ifndef GALEWARD_JUDGE_SPOT_LOAD_H
#define GALEWARD_JUDGE_SPOT_LOAD_H

#include "galeward/inspect.h"

/* Suction along an edge of a lite, along a member or a line of screws (N/m), on an anchor (N): to be compared within
 * one kind. Infinite: outside the method. */
double gw_carried(struct gw_ask *ask, const struct gw_element *e);
/* By the demand that what is measured there meets: of a pocket the rain on the lite above it (m2), of a joint the
 * length that moves into it (m), whatever suction is; of all else what the element carries. The spot has its grid. */
double gw_spot_load(struct gw_ask *ask, enum gw_item_on on, const struct gw_element *e, const struct gw_spot *spot);

#endif
