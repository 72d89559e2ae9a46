/* Framing members of a system: their strength from the keys of the file, the limits of their deflection, stated
 * capacities. */
#ifndef GALEWARD_JUDGE_MEMBER_H
#define GALEWARD_JUDGE_MEMBER_H

#include "judge/check.h"

#include "galeward/member_strength.h"

/* A member over a span; `who` names its key in the question. False: `question` says what is missing, whom to ask; its
 * stiffness may be known all the same. */
bool gw_member_of(struct gw_member_strength *out, struct gw_message *question, struct gw_ask *ask,
                  const struct gw_member_spec *spec, double span, const char *who);
/* Why its strength about y is not known: outside the method, else `lacking`. */
struct gw_message gw_unknown_about_y(struct gw_ask *ask, const struct gw_member_strength *strength,
                                     const char *lacking);
/* Deflection limit of framing over glass under wind, with the project's cap, m. */
double gw_framing_limit(const struct gw_model *model, double span, bool overhang, struct gw_engine *engine);
/* m, of the edge of glass by the building code, whatever its length; infinite: it caps none. */
double gw_edge_cap(struct gw_ask *ask);
/* The deflection under wind that is nearest to its limit: the member's from the line of its supports, or, where the
 * building code caps it, that of the edge of glass from the line through its own ends. */
struct gw_framing_bend {
    double limit;       /* m */
    double response;    /* of it, with E I of 1 N m2 */
    double edge;        /* m, length of that edge; absent: the member's own deflection */
    const char *clause; /* of the cap; NULL: the member's own limit */
};
/* Of a mullion or transom, from what it feels with E I of 1 N m2. */
struct gw_framing_bend gw_framing_bend(struct gw_ask *ask, const struct gw_element *e, double deflection,
                                       double moment);
/* The same for a capacity, whose demand has derived the limit. */
struct gw_framing_bend gw_framing_bend_again(struct gw_ask *ask, const struct gw_element *e, double deflection,
                                             double moment);
/* m, with E I of `stiffness`; derives it. */
double gw_framing_bent(const struct gw_framing_bend *bend, double stiffness, struct gw_engine *engine);
/* "under wind", or which edge and which cap. */
struct gw_message gw_framing_bend_message(struct gw_ask *ask, const struct gw_framing_bend *bend);
/* In a member's strength against failure; 0: it is stated, and its factor is not. */
double gw_member_safety(struct gw_ask *ask, const struct gw_member_spec *spec);
/* What its strength is evidence of: a tube is calculated, a stated moment as good as its report; and which limit state
 * it is, with the report. */
enum gw_evidence gw_member_evidence(const struct gw_member_spec *spec);
struct gw_message gw_member_governing(struct gw_ask *ask, const struct gw_member_spec *spec,
                                      const struct gw_member_strength *strength);
/* "capacity by L-1041" */
struct gw_message gw_stated_by(struct gw_ask *ask, const struct gw_capacity_spec *spec);

/* The last half mullion of a unitized wall, at an end that is no corner, and its anchors: one unit alone is there. */
bool gw_is_half(const struct gw_system *system, const struct gw_element *e);
/* The mullion of an element: at an outside corner the corner's, at a jamb of a unitized wall its half; NULL. */
const struct gw_member_spec *gw_mullion_spec(const struct gw_system *system, const struct gw_element *e);
bool gw_mullion_of(struct gw_member_strength *out, struct gw_message *question, struct gw_ask *ask,
                   const struct gw_system *system, const struct gw_element *e);

#endif
