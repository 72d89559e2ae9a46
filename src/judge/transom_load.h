/* What a transom carries: what its lites shed to it under wind, and the glass that rests on it. */
#ifndef GALEWARD_JUDGE_TRANSOM_LOAD_H
#define GALEWARD_JUDGE_TRANSOM_LOAD_H

#include "judge/member.h"

#include "galeward/shedding.h"

/* Of lites whose edge on it is so long: a transom, or the screws of one. */
struct gw_shed_case gw_shed_along(const struct gw_element *e, double edge, double pressure);
struct gw_shed_case gw_shed_to(const struct gw_element *e, double pressure);
/* Weight of the lite that rests on it, N; absent: its glass is not known. */
double gw_weight_resting_on(struct gw_ask *ask, const struct gw_element *e);
extern const char gw_unknown_weight[];
extern const char gw_unknown_line_of_weight[]; /* its eccentricity */

struct gw_carried {
    struct gw_member_strength member;
    struct gw_rail_result dead;
    double weight; /* N, of the glass that rests on it */
};
/* False: what is missing is in `out`; `about_y` is looked up where glass rests on it, and `lacking` asks for it. */
bool gw_carried_by(struct gw_carried *c, struct gw_capacity *out, struct gw_ask *ask, const struct gw_element *e,
                   const struct gw_member_spec *spec, double (*about_y)(const struct gw_member_strength *m),
                   const char *lacking);

#endif
