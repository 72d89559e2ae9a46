/* Shared by the files of src/debris only. */
#ifndef GALEWARD_DEBRIS_INTERNAL_H
#define GALEWARD_DEBRIS_INTERNAL_H

#include "galeward/debris.h"

#include "tables_data.h"

/* Limits hold to a billionth: a speed or height converted from its unit is not exactly the limit. */
static const double DEBRIS_HAIR = 1e-9;
static inline bool debris_reaches(double value, double limit) { return value >= limit * (1 - DEBRIS_HAIR); }
static inline bool debris_within(double value, double limit) { return value <= limit * (1 + DEBRIS_HAIR); }

/* The edition's row; refuses none. */
const struct gw_debris_region *gw_debris_region_row(enum gw_debris_edition edition, struct gw_engine *engine);
/* On `row`'s side of its limits? */
bool gw_debris_in_zone(const struct gw_debris_zone *row, double speed);

#endif
