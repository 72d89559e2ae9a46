/* The glass of an element, for every check that asks about it. */
#ifndef GALEWARD_JUDGE_GLASS_LITE_H
#define GALEWARD_JUDGE_GLASS_LITE_H

#include "judge/check.h"

/* The element's lite type, where its glass is known; NULL. */
const struct gw_lite_type *gw_glazed_type(const struct gw_ask *ask, const struct gw_element *e);
/* What stands in the place of a lite type of the project, and the heaviest that does on that wall; NULL of NULL. */
const struct gw_lite_type *gw_lite_now(const struct gw_ask *ask, const struct gw_lite_type *type);
const struct gw_lite_type *gw_heaviest_now(const struct gw_ask *ask, const struct gw_wall_grid *grid,
                                           const struct gw_lite_type *type);
/* The type that an element has, as it stands there; with or without layers; NULL. */
const struct gw_lite_type *gw_type_of(const struct gw_ask *ask, const struct gw_element *e);
/* The lite of an element by the project's rules; the state of the gas in service is left to the caller. */
enum gw_status gw_lite_of(struct gw_lite *out, const struct gw_model *model, const struct gw_element *e,
                          const struct gw_lite_type *type, struct gw_engine *engine);
/* The judged lite, worked out once an element; NULL: `out` says why it is not known. Marks the rows used. */
const struct gw_glass_judged *gw_glass_of(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e);
/* Memory of the plate solver, for `ask->engine`. */
void gw_use_plate_workspace(struct gw_ask *ask);

#endif
