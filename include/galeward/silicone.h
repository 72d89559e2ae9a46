/* Structural silicone between glass and frame, and sealant joints. Allowable-stress level. Pure. */
#ifndef GALEWARD_SILICONE_H
#define GALEWARD_SILICONE_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

struct gw_silicone_case {
    double width, height;   /* m, of the largest lite */
    double pressure;        /* Pa, suction, magnitude */
    double allowable;       /* Pa; absent: the table's; above it needs the manufacturer's approval, said in a note */
    double weight;          /* N, that the bead carries; absent or 0: on setting blocks */
    double dead_allowable;  /* Pa; absent: the table's */
    double movement;        /* m, differential between glass and frame along the bead; absent: 0 */
    double strain;          /* of the sealant at `allowable`; wanted with a movement */
    double bite, thickness; /* m, as offered; absent: design only */
};
enum { GW_SILICONE_NOTES = 4 };
struct gw_silicone_result {
    double bite_wind, bite_dead, thickness_movement; /* m, not rounded; absent where nothing asks */
    double bite, thickness;                          /* m, designed, rounded up */
    double aspect;                                   /* bite/thickness as designed */
    double stress_wind, stress_dead, strain;         /* Pa, Pa, ratio: of the bead offered, else as designed */
    double utilization;                              /* largest of those over their allowables */
    enum gw_bool fits;     /* bite at least the thickness and at most its multiple, thickness at least the least */
    const char *governing; /* of the utilization: "wind", "dead", "movement" */
    const char *notes[GW_SILICONE_NOTES];
    unsigned n_notes;
};
enum gw_status gw_silicone(struct gw_silicone_result *out, const struct gw_silicone_case *in, struct gw_engine *engine);

/* Pa: the suction that a bead of that bite takes on a lite; `allowable` absent: the table's. Nothing is refused. */
double gw_silicone_suction(double bite, double allowable, double width, double height, struct gw_engine *engine);

struct gw_joint_case {
    double movement;   /* m, total in one direction from the installed width */
    double capability; /* of the installed width, 0.25 for class 25 */
    double tolerance;  /* m */
    double slip;       /* m, along the joint; absent: none */
};
struct gw_joint_result {
    double width, depth; /* m, not rounded */
    double extension;    /* m, of the sealant by the slip */
};
enum gw_status gw_sealant_joint(struct gw_joint_result *out, const struct gw_joint_case *in, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
