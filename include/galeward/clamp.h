/* The clamp of pressure plates: torque to tension, gaskets and suction, the length of screws, and how it ages.
 *
 * Pure; SI. What a gasket under a plate keeps of its clamp falls in proportion to the logarithm of time, from the start
 * that the table names (1 h after installation): retained(t) = 1 - k log10(t / start). One reading of what is left, at
 * its age, fixes k; between readings at the temperature of the wall as it was. A retorque starts the line anew, with
 * its own time. */
#ifndef GALEWARD_CLAMP_H
#define GALEWARD_CLAMP_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

enum { GW_RELAXATION_NOTES = 2 };

struct gw_relaxation_case {
    double retained, age; /* a reading: what is left of the clamp at first, above 0 to 1, and when, s */
    double rate;          /* or the loss per decade of time, of the clamp at first */
    double time;          /* s since installation: when is asked */
};
struct gw_relaxation_result {
    double rate;     /* per decade */
    double retained; /* at `time` */
    const char *notes[GW_RELAXATION_NOTES];
    unsigned n_notes;
};

/* GW_MISSING: neither a reading nor a rate. GW_BAD_VALUE: both, or a value that is no share or no time.
 * GW_OUTSIDE_METHOD: a reading not after the start, a time before it, a line that has come to nothing at that time. */
enum gw_status gw_relaxation(struct gw_relaxation_result *out, const struct gw_relaxation_case *in,
                             struct gw_engine *engine);

/* Tension of one plate screw from its torque, and what suction leaves of it.
 *
 * T = K D F above the torque that forms the thread. The tension is a range as nut factor and forming torque are: one
 * call an end. A torque on a bottomed screw is no tension (gw_screw_length), and no torque tells the load on a gasket
 * (gw_gasket_load). */
struct gw_clamp_case {
    double diameter;             /* m */
    double nut_factor;           /* K */
    double torque;               /* Nm, read or set at installation */
    double torque_later;         /* Nm, read later; absent: none */
    double forming_torque;       /* Nm, that forms the thread; 0: a tapped thread */
    double forming_torque_later; /* Nm, at the later reading; absent: as at first */
    double retained;             /* instead of a later torque: what is left of the tension at first, above 0 to 1 */
    double spacing;              /* m, between screws */
    double tributary_width;      /* m, of suction on the plate; with `pressure` */
    double pressure;             /* Pa, suction, magnitude; absent: the tension alone */
    double safety_factor;        /* against suction; absent: by the table */
};
struct gw_clamp_result {
    double preload, preload_later;   /* N; later: absent without a later torque or `retained` */
    double retained;                 /* later over first */
    double suction;                  /* N, on each screw */
    double ratio_start, ratio_later; /* tension over suction, no safety factor in it */
    double torque_required;          /* Nm, at installation: the factor is kept by what is left later */
    double spacing_max;              /* m, that keeps the factor by what is left later, else by the tension at first */
    double screw_upper;              /* N, where the joint is soft: tension and suction */
    double clamp_lower;              /* N, left on the plate, not less than; below 0: it lifts */
};
/* GW_MISSING, GW_BAD_VALUE: what is needed, what is no such value. A torque that does no more than form the thread is
 * no tension: 0. */
enum gw_status gw_clamp(struct gw_clamp_result *out, const struct gw_clamp_case *in, struct gw_engine *engine);

/* The glass edge between two gaskets that press it, under suction on its lite. */
struct gw_gasket_case {
    double edge_load;       /* N/m, on the edge of the glass at installation */
    double retained;        /* what is left of it; absent: all */
    double pressure;        /* Pa, suction, magnitude */
    double lite_width;      /* m, across the edge: half of its suction goes to either side */
    double stiffness_share; /* of the inner gasket in both; absent: by the table */
};
struct gw_gasket_result {
    double edge_load_later; /* N/m */
    double suction_edge;    /* N/m */
    double inner, outer;    /* N/m, on each gasket under suction; at 0 or below it is open */
    bool inner_opens;
};
enum gw_status gw_gasket_load(struct gw_gasket_result *out, const struct gw_gasket_case *in, struct gw_engine *engine);

/* Whether a screw through plate and stack clamps, or stands on the bottom of its chase, or hardly reaches it. */
struct gw_screw_length_case {
    double length, plate, stack,
        chase;                  /* m, under the head; of the plate; between plate and chase; depth of the chase */
    double tip;                 /* m, of the screw that does not hold: its taper; absent: 0 */
    double engagement_required; /* m; absent: none is asked */
};
struct gw_screw_length_result {
    double tip_clearance; /* m; at 0 or below it is bottomed: full torque and no clamp */
    bool bottomed;
    double engagement;              /* m, of full thread; 0: it does not reach */
    enum gw_bool engagement_enough; /* unsaid: none is asked */
};
enum gw_status gw_screw_length(struct gw_screw_length_result *out, const struct gw_screw_length_case *in,
                               struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
