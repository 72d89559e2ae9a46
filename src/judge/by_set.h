/* A requirement set in the place of what the site asks, but for its pressures, which the take-off has scaled. */
#ifndef GALEWARD_JUDGE_BY_SET_H
#define GALEWARD_JUDGE_BY_SET_H

#include "judge/check.h"

/* Whether a row of the set asks for this check anywhere. */
bool gw_set_speaks_of(const struct gw_model *model, const struct gw_check *check);
/* The demand as its row has it; without a row as it was found. */
void gw_require(struct gw_demand *out, struct gw_ask *ask);

/* Evidence that counts for a demand: of its row under a set, else by the project. */
struct gw_evidence_asked {
    bool any; /* no rule: whatever shows it */
    bool test, calculation;
};
struct gw_evidence_asked gw_evidence_asked(const struct gw_ask *ask, const struct gw_demand *demand);
/* What passes by evidence that the row does not take is not shown. */
void gw_ask_evidence(struct gw_finding *finding, struct gw_ask *ask);

#endif
