/* Framing members of a system: their strength from the keys of the file, the limits of their deflection, stated
 * capacities. */
#ifndef GALEWARD_JUDGE_MEMBER_H
#define GALEWARD_JUDGE_MEMBER_H

#include "judge/check.h"

#include "galeward/member_strength.h"

/* A member over a span; `who` names its key in the question. False: `question` says what is missing, whom to ask. */
bool gw_member_of(struct gw_member_strength *out, struct gw_message *question, struct gw_ask *ask,
                  const struct gw_member_spec *spec, double span, const char *who);
/* Deflection limit of framing over glass under wind, with the project's cap, m. */
double gw_framing_limit(const struct gw_model *model, double span, bool overhang, struct gw_engine *engine);
/* "capacity by L-1041" */
struct gw_message gw_stated_by(struct gw_ask *ask, const struct gw_capacity_spec *spec);

/* The mullion of an element: at an outside corner the corner's. */
bool gw_mullion_of(struct gw_member_strength *out, struct gw_message *question, struct gw_ask *ask,
                   const struct gw_system *system, const struct gw_element *e);

#endif
