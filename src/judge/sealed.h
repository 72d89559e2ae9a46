/* Which edges of lites have a joint of sealant. */
#ifndef GALEWARD_JUDGE_SEALED_H
#define GALEWARD_JUDGE_SEALED_H

#include "galeward/inspect.h"

/* Round the wall, but not where it goes on or at a corner that another wall shares, whose mullion stands there; of a
 * window wall at every slab besides; a bead and the weather seal before it stand at any edge. Column and row from 0,
 * the edge an enum gw_edge. */
bool gw_has_sealant(const struct gw_ask *ask, const struct gw_wall_grid *grid, size_t column, size_t row, int edge);
/* How many such edges the grid has. */
long gw_sealed_edges(const struct gw_ask *ask, const struct gw_wall_grid *grid);

#endif
