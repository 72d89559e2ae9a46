/* The clamp of pressure plates as it ages.
 *
 * Pure; SI. What a gasket under a plate keeps of its clamp falls in proportion to the logarithm of time, from the start
 * that the table names (1 h after installation): retained(t) = 1 - k log10(t / start). One reading of what is left, at
 * its age, fixes k; between readings at the temperature of the wall as it was. A retorque starts the line anew, with
 * its own time. */
#ifndef GALEWARD_CLAMP_H
#define GALEWARD_CLAMP_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

enum { GW_RELAXATION_NOTES = 2 };

struct gw_relaxation_case {
    double retained, age; /* a reading: what is left of the clamp at first, above 0 to 1, and when, s */
    double rate;          /* or the loss per decade of time, of the clamp at first */
    double time;          /* s since installation: when is asked */
};
struct gw_relaxation_result {
    double rate;     /* per decade */
    double retained; /* at `time` */
    const char *notes[GW_RELAXATION_NOTES];
    unsigned n_notes;
};

/* GW_MISSING: neither a reading nor a rate. GW_BAD_VALUE: both, or a value that is no share or no time.
 * GW_OUTSIDE_METHOD: a reading not after the start, a time before it, a line that has come to nothing at that time. */
enum gw_status gw_relaxation(struct gw_relaxation_result *out, const struct gw_relaxation_case *in,
                             struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
