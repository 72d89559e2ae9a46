/* A slope as people write it: "1/4 in per ft", "20 mm per m", "1:48", "1 in 48", "1.2 deg" to the level. */
#ifndef GALEWARD_BASE_SLOPE_H
#define GALEWARD_BASE_SLOPE_H

#include "galeward/units.h"

/* Rise over run. False: none of these; a bare number and "2 %" are read as any ratio is. */
bool gw_slope_read(double *out, struct gw_unit_list units, const char *text, size_t length);

#endif
