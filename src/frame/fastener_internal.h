/* Inside of the fasteners, anchors and silicone: checks of inputs that all share. */
#ifndef FASTENER_INTERNAL_H
#define FASTENER_INTERNAL_H

#include "base/tolerance.h"
#include "galeward/fastener.h"

static const double SCREW_ROUNDING = 0.002; /* people round diameters; sizes are far apart */

/* screw_thin.c: whether an engagement is so short that tests of drilled-in screws are asked; then `nominal`, of the
 * formula, becomes theirs where it is lower. `full_factor`: of D L F_y at the end of that range. */
bool gw_screw_in_thin_metal(double engagement, const struct gw_tables *tables);
enum gw_status gw_screw_pullout_thin(double *nominal, const struct gw_screw *screw, double engagement,
                                     const struct gw_metal_strength *metal, double full_factor,
                                     struct gw_engine *engine);

/* Each refuses, with the key, what is absent (GW_MISSING) or not of the range (GW_BAD_VALUE). */
enum gw_status gw_fastener_positive(const char *key, double value, struct gw_engine *engine);
enum gw_status gw_fastener_magnitude(const char *key, double value, struct gw_engine *engine); /* 0 is allowed */
/* The same, where the value may be absent. */
enum gw_status gw_fastener_positive_if_given(const char *key, double value, struct gw_engine *engine);
enum gw_status gw_fastener_magnitude_if_given(const char *key, double value, struct gw_engine *engine);

/* Notes are constant strings; more than there is room for cannot happen by the counts in the headers. */
static inline void fastener_note(const char **notes, unsigned *n, unsigned room, const char *text)
{
    if (*n < room) notes[(*n)++] = text;
}

#endif
