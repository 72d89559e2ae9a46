/* Shared by the files of src/clamp only: values that a case must have. */
#ifndef GALEWARD_CLAMP_INTERNAL_H
#define GALEWARD_CLAMP_INTERNAL_H

#include "galeward/clamp.h"

/* Refuses a value that is missing, or not above 0; of the second, one that is given and below 0. */
enum gw_status gw_clamp_positive(const char *key, double value, struct gw_engine *engine);
enum gw_status gw_clamp_not_below_zero(const char *key, double value, struct gw_engine *engine);

#endif
