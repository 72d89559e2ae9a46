/* Stories, their drift and what of it reaches a lite: for the checks of earthquakes and for the mock-up. */
#ifndef GALEWARD_JUDGE_DRIFT_H
#define GALEWARD_JUDGE_DRIFT_H

#include "judge/check.h"

const struct gw_seismic *gw_seismic_of(const struct gw_ask *ask);
enum gw_risk gw_risk_of(const struct gw_ask *ask);
/* What the check of the force must know, and where chapter 13 does not apply. */
extern const struct gw_need gw_seismic_needs[];
/* Of what moves with the stories: no force, so no S_DS. */
extern const struct gw_need gw_drift_needs[];
const char *gw_seismic_waived(const struct gw_model *model);
enum gw_status gw_importance_of(double *out, struct gw_ask *ask);
/* Of the chapter as a whole: category B but for parapets and components of importance. `out` then says so. */
bool gw_is_exempt(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e);

/* Floor to floor where the element stands; the last story ends at the roof, or at the head of a wall that ends below.
 * Of an opening of a schedule as the project says, or absent. The project has seismic data. */
double gw_story_height(const struct gw_ask *ask, const struct gw_element *e);
/* Of the story in which the element stands. */
enum gw_status gw_drift_of(struct gw_drift_result *out, struct gw_ask *ask, const struct gw_element *e);
/* What of a drift of the story reaches the lite, by the system's path, m. */
enum gw_status gw_drift_in_lite(double *out, struct gw_ask *ask, const struct gw_element *e,
                                const struct gw_drift_spec *spec, double drift);
/* Story drift with importance, as glass and silicone ask it. */
void gw_demand_drift(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place);

#endif
