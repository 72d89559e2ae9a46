/* Anchors of a curtain wall to the structure: reactions, load combinations, bolts, slots. Pure.
 *
 * An anchor that carries dead load holds the wall up and in; a slotted one only in and out. */
#ifndef GALEWARD_ANCHOR_H
#define GALEWARD_ANCHOR_H

#include "galeward/combine.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_carries { GW_CARRIES_UNSET, GW_CARRIES_DEAD_AND_WIND, GW_CARRIES_WIND };
enum gw_design { GW_DESIGN_UNSET, GW_DESIGN_ASD, GW_DESIGN_LRFD };

struct gw_anchor_case {
    enum gw_carries carries;          /* unset: dead and wind */
    double pressure_in, pressure_out; /* Pa, magnitudes, of one level */
    double wall_weight;               /* Pa, per area of wall */
    double spacing, tributary_height; /* m */
    double eccentricity;              /* m, weight outside of the anchor's bearing; minus: inside */
    double bolt_arm;                  /* m, lever arm of the bolts */
    int bolts;
    double prying;   /* ratio of the bolt's pull to that without prying; absent: 1 */
    double clip_arm; /* m, from the bolts to the bend of a clip; absent: none */
};
/* Of the pressures and the weight as given: no factors. */
struct gw_anchor_reactions {
    double in, out, dead; /* N */
    double dead_moment;   /* Nm */
    double bolt_tension;  /* N, each: outward and the couple of the dead load; not below 0 */
    double bolt_shear;    /* N, each: the dead load */
    double clip_moment;   /* Nm, largest of in and out */
};
enum gw_status gw_anchor_reactions(struct gw_anchor_reactions *out, const struct gw_anchor_case *in,
                                   struct gw_engine *engine);

/* N: the outward reaction that the bolts take beside that dead load, each up to `allowable`; 0 where the dead load
 * alone is too much. Of the case its eccentricity, bolt_arm, bolts, prying count. */
double gw_anchor_bolts_take(const struct gw_anchor_case *in, double dead, double allowable, struct gw_engine *engine);

/* Bolts in tension and shear at once: D, D + 0.6 W and 0.6 D + 0.6 W, both directions of the wind, the couple of the
 * weight in each. The reactions are of allowable-stress level already, N, magnitudes. Of the case its eccentricity,
 * bolt_arm, bolts, prying count. */
struct gw_anchor_bolt_case {
    double inward, outward, dead;
    double tension, shear;           /* allowable of one bolt, N; shear absent: nothing is said of it */
    enum gw_interaction interaction; /* of both */
};
struct gw_anchor_bolts {
    const char *name; /* of the combination that uses most */
    bool inward;      /* its wind */
    double tension, shear, use;
};
void gw_anchor_bolts(struct gw_anchor_bolts *out, const struct gw_anchor_bolt_case *loads,
                     const struct gw_anchor_case *in, struct gw_engine *engine);

/* Combinations: wind at strength level in place of the pressures of the case, seismic forces of one anchor at strength
 * level, out of the plane, both ways. Fasteners of the connection have a force of their own, several times that of the
 * body: one without the other is refused. */
struct gw_anchor_loads {
    struct gw_strength in, out;             /* magnitudes */
    double seismic_body, seismic_fasteners; /* N; absent: none */
    double seismic_vertical; /* N, magnitude, down with the dead load and up where it relieves; absent: 0 */
};
enum { GW_ANCHOR_COMBINATIONS = 5 };
struct gw_anchor_combination {
    const char *name;                /* "1.2 D + 1.0 W" */
    double in, out, dead;            /* N */
    double bolt_tension, bolt_shear; /* N, each */
};
struct gw_anchor_combined {
    struct gw_anchor_combination each[GW_ANCHOR_COMBINATIONS];
    unsigned n, worst;                              /* the largest bolt tension */
    double in, out, dead, bolt_tension, bolt_shear; /* N, largest of all */
};
enum gw_status gw_anchor_combine(struct gw_anchor_combined *out, const struct gw_anchor_case *in,
                                 const struct gw_anchor_loads *loads, enum gw_design design, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
