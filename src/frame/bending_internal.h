/* What the files of src/frame that find bending strengths share. */
#ifndef GALEWARD_BENDING_INTERNAL_H
#define GALEWARD_BENDING_INTERNAL_H

#include "galeward/bending.h"

void gw_bending_note(struct gw_bending_result *out, const char *text);
enum gw_status gw_bending_positive(const char *key, double value, struct gw_engine *engine);
/* Nominal over its safety factor, as a step named `symbol`. */
double gw_bending_allow(const char *symbol, const char *clause, double nominal, double safety,
                        struct gw_engine *engine);

/* Each sets its nominal moment in `out`, or leaves it absent and says why in a note. */
enum gw_status gw_bending_local(struct gw_bending_result *out, const struct gw_bending *in,
                                const struct gw_alloy *alloy, struct gw_engine *engine);
enum gw_status gw_bending_lateral(struct gw_bending_result *out, const struct gw_bending *in,
                                  const struct gw_alloy *alloy, struct gw_engine *engine);
/* Nominal shear force of all webs. */
enum gw_status gw_bending_shear(struct gw_bending_result *out, const struct gw_bending *in,
                                const struct gw_alloy *alloy, struct gw_engine *engine);
enum gw_status gw_bending_steel(struct gw_bending_result *out, const struct gw_bending *in, struct gw_engine *engine);

#endif
