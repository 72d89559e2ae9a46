/* How the loads of members, fasteners and anchors act together: what a link feels from the parts that load it, and what
 * two allowables leave where both act at once. Every rule is linear in its loads and derives itself. SI, pure;
 * magnitudes; nothing is refused: what is absent makes the answer absent. */
#ifndef GALEWARD_COMBINE_H
#define GALEWARD_COMBINE_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How two parts of an allowable act on one link at once. The straight sum holds for anything; a report of the link's
 * capacities can give another rule. */
enum gw_interaction {
    GW_INTERACTION_UNSET,     /* the straight sum */
    GW_INTERACTION_NONE,      /* each for itself */
    GW_INTERACTION_LINEAR,    /* a + b */
    GW_INTERACTION_ELLIPTIC,  /* sqrt(a^2 + b^2) */
    GW_INTERACTION_STEEL_BOLT /* tension and shear of a steel bolt: (a + b)/1.3, neither above 1 alone (AISC 360 J3.7)
                               */
};
/* The use of both parts at once, at most 1. It grows with the loads: the inverse is the part of both loads that is
 * taken. */
double gw_combine_uses(double a, double b, enum gw_interaction how, struct gw_engine *engine);

/* Members ------------------------------------------------------------------------------------------------------------
 */

/* Bending both ways at once: M_x/M_ax + M_y/M_ay, at most 1. Without M_y nothing need be known of M_ay. */
double gw_combine_bending(double moment_x, double allowable_x, double moment_y, double allowable_y,
                          struct gw_engine *engine);
/* Bending with shear and twist in flat walls, from the uses of each alone: u_b^2 + (u_v + u_t)^2, at most 1; the answer
 * is its root, which grows with the loads. */
double gw_combine_twist(double bending, double shear, double twist, struct gw_engine *engine);
/* A corner mullion takes both faces at once: of its own face's moment (GW_BENDING) or shear (GW_FORCE), while the other
 * face's is `other` times as large (1: alike), it takes 1/(1/x + other/y), or 1/(other/x + 1/y) where that is less:
 * which face bends it about which axis is not told. */
double gw_combine_faces(double allowable_x, double allowable_y, double other, enum gw_dim dim,
                        struct gw_engine *engine);
/* Either face of it deflects by its own stiffness, N m2: the lesser one counts. */
double gw_combine_stiffness(double stiffness_x, double elastic_modulus, double inertia_y);
/* A splice there hands on both faces' shears, taken as added: N; `other`: 0 where there is no corner. */
double gw_combine_splice(double shear, double other);
/* The end of a horizontal: its wind reaction, and across it half the weight of the glass that rests on it. */
double gw_combine_end(double reaction, double weight, struct gw_engine *engine);
/* Of the glass on a horizontal, N: its weight per area, Pa, times its width and height, m. */
double gw_resting_weight(double per_area, double width, double height, struct gw_engine *engine);
/* m4, so that a member which deflects by `deflection` with E I of 1 N m2 keeps its limit, m. */
double gw_inertia_for(double deflection, double elastic_modulus, double limit);

/* Screws and plates --------------------------------------------------------------------------------------------------
 */

/* What one screw of a plate holds of one group of elements; the roof line splits one row of screws into two. */
struct gw_screw_side {
    double pressure, width, spacing; /* Pa suction, m, m */
};
/* N; `other`: NULL where the roof line does not cut the row. */
double gw_screw_pull(const struct gw_screw_side *own, const struct gw_screw_side *other, struct gw_engine *engine);
/* m: the width that loads the plate under `own` pressure as both sides do. */
double gw_plate_load_width(const struct gw_screw_side *own, const struct gw_screw_side *other);

/* Anchors ------------------------------------------------------------------------------------------------------------
 */

/* Heights of wall on the anchor's own side of the roof line and across it (mullion_line.h), m, with their pressures of
 * one level and direction, Pa; below 0: the other direction, which counts for nothing. */
struct gw_anchor_side {
    double height, pressure;
};
/* N. `symbol`: of the step. */
double gw_anchor_wind(const char *symbol, double width, const struct gw_anchor_side *own,
                      const struct gw_anchor_side *across, struct gw_engine *engine);
/* Weight of what hangs on it or moves with it, N, of wall of `per_area`, Pa: a width and the longest piece that can
 * hang on it ("D"), or the heights whose wind it takes ("W"). At an outside corner per_area is both faces'. */
double gw_anchor_weight(double per_area, double width, double piece, struct gw_engine *engine);
double gw_anchor_mass(double per_area, double width, double height, struct gw_engine *engine);
/* `faces`: by the wall of one face, 1 where there is no corner, 2 where the other face has as much on it. */
double gw_corner_weight(double per_area, double faces);

/* An earthquake at an anchor, allowable-stress level, 0.7 E; wind does not act with it. Out of the plane it moves the
 * mass that wind loads; along the slab edge and down what hangs on the anchor. One at a time. */
struct gw_anchor_quake_case {
    double coefficient; /* F_p over the weight, strength level, of the fasteners */
    double sds;
    double mass, weight; /* N: gw_anchor_mass, gw_anchor_weight */
};
struct gw_anchor_quake {
    double out_of_plane, along, down; /* N; down: with the dead load and the vertical force */
};
void gw_anchor_quake(struct gw_anchor_quake *out, const struct gw_anchor_quake_case *in, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
