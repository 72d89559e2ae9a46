#ifndef GALEWARD_REVIEW_STRETCHED_H
#define GALEWARD_REVIEW_STRETCHED_H

#include "review_internal.h"

/* The take-off with one wall, and openings of that name, as if its mullions spanned so many times as far (`up`), or
 * stood so many times as far apart (`across`), under the pressures that it has: those of a larger area are no greater.
 * Openings are as high as their mullions span, lites of a wall are not. Elements keep their numbers. NULL: nothing is
 * by that name. */
const struct gw_takeoff *gw_takeoff_stretched(struct gw_arena *arena, const struct gw_takeoff *takeoff,
                                              const char *wall, double up, double across);

#endif
