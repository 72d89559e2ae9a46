/* Places of one item: what each carries, and which are alike. */
#ifndef GALEWARD_JUDGE_SPOT_LOAD_H
#define GALEWARD_JUDGE_SPOT_LOAD_H

#include "galeward/inspect.h"
#include "galeward/memo.h"

/* Suction along an edge of a lite, along a member or a line of screws (N/m), on an anchor (N): to be compared within
 * one kind. Infinite: outside the method. */
double gw_carried(struct gw_ask *ask, const struct gw_element *e);
/* By the demand that what is measured there meets: of a pocket the rain on the lite above it (m2), of a joint the
 * length that moves into it (m), whatever suction is; of all else what the element carries. The spot has its grid. */
double gw_spot_load(struct gw_ask *ask, enum gw_item_on on, const struct gw_element *e, const struct gw_spot *spot);
/* Lists the place, unless one is listed that nothing an item looks at parts from it. `alike` begins as zero, and
 * belongs to the list. */
void gw_spots_add(struct gw_spots *each, struct gw_memo *alike, struct gw_arena *arena, enum gw_item_on on,
                  const struct gw_carrying *place);

#endif
