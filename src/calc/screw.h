/* What cases of 'galeward calc' say of a screw and of the metal round it. */
#ifndef GALEWARD_CALC_SCREW_H
#define GALEWARD_CALC_SCREW_H

#include "kinds.h"

#include "galeward/fastener.h"

#define SIZE LIMITS(0.0001, 0.1)
#define STRENGTH LIMITS(1e6, 1e10)
#define SCREW_FIELDS(struct_)                                                                                          \
    NUM(struct_, diameter, GW_THICKNESS, .flags = GW_REQUIRED, SIZE, .help = "nominal"),                               \
        NUM(struct_, threads_per_inch, GW_RATIO, .flags = GW_REQUIRED, LIMITS(1, 120), .help = "a count"),             \
        PICK(struct_, thread, gw_thread_choices, .flags = GW_REQUIRED, .help = "coarse or spaced"),                    \
        NUM(struct_, minor_diameter, GW_THICKNESS, SIZE, .help = "smallest, of a spaced thread; absent: the size's"),  \
        NUM(struct_, head_diameter, GW_THICKNESS, SIZE, .help = "head or washer; absent: no pull-over"),               \
        PICK(struct_, head, gw_head_choices, .help = "flat, hex_washer or countersunk; absent: flat"),                 \
        F(struct_, grade, GW_T_TEXT,                                                                                   \
          .help = "of the screw: stainless_cw, stainless_a, stainless_af, grade_2, grade_5, a307, a325"),              \
        NUM(struct_, ultimate, GW_STRESS, STRENGTH, .help = "tensile strength of the screw; absent: the grade's"),     \
        NUM(struct_, safety_factor, GW_RATIO, LIMITS(1, 10), .help = "absent: the screw's, 3.0")

extern const struct gw_choice gw_head_choices[];

/* An alloy's strengths, each replaced by the one given. */
enum gw_status gw_case_metal(struct gw_metal_strength *out, const char *alloy, double ultimate, double yield,
                             struct gw_engine *engine);
/* Strengths of the screw itself: the grade's, where they are not given. */
enum gw_status gw_case_screw(double *ultimate, double *yield, const char *grade, double diameter,
                             struct gw_engine *engine);
double gw_pitch(double threads_per_inch); /* m */

#endif
