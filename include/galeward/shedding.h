/* What lites give to a horizontal that is as long as they are wide and simply held at both ends: bending, end reaction,
 * deflection. Closed forms, linear in the pressure; a horizontal held or stepped otherwise is a `member`.
 *
 * A lite on four edges gives each edge the load inside the 45-degree lines from its corners: a triangle where it is at
 * least as high as wide, else a trapezoid. Held at head and sill it gives half of itself to each, evenly; on three
 * edges or one the horizontal may take all of it. Held at the jambs alone it gives less than it would at 45 degrees,
 * which is what is taken. SI, pure; magnitudes; nothing is refused. */
#ifndef GALEWARD_SHEDDING_H
#define GALEWARD_SHEDDING_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_held_edges { GW_HELD_ALL_ROUND, GW_HELD_HEAD_AND_SILL, GW_HELD_JAMBS, GW_HELD_OTHERWISE };
struct gw_shed_lite {
    double height; /* m; 0: no glass on this side */
    enum gw_held_edges held;
};
struct gw_shed_case {
    double span, pressure; /* m, Pa */
    struct gw_shed_lite above, below;
};

/* Nm at midspan; N at one end; m at midspan, of E in Pa and I in m4. Each derives itself, lite by lite. */
double gw_shed_moment(const struct gw_shed_case *in, struct gw_engine *engine);
double gw_shed_reaction(const struct gw_shed_case *in, struct gw_engine *engine);
double gw_shed_deflection(const struct gw_shed_case *in, double elastic_modulus, double inertia,
                          struct gw_engine *engine);

/* m: heights of the lites above and below that load the middle of the horizontal, where the line load is greatest: half
 * of the lite's shorter side at 45 degrees. What holds a short length of it, a screw or a plate between two, feels that
 * load. Derives itself. */
struct gw_shed_reach {
    double above, below;
};
void gw_shed_reach(struct gw_shed_reach *out, const struct gw_shed_case *in, struct gw_engine *engine);

/* The load of a lite on four edges along one of them, `along`, with the other way `across`: it rises evenly over the
 * ramp, m, stays, and falls alike; per pascal its height is the ramp's length. The reaction at one end for any
 * height. */
static inline double gw_shed_ramp(double along, double across) { return fmin(along, across) / 2; }
static inline double gw_shed_end(double height, double along, double ramp) { return height * (along - ramp) / 2; }

#ifdef __cplusplus
}
#endif

#endif
