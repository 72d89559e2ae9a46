/* Shared by the files that assess a lite: lite.c, standard.c, principles.c. */
#ifndef GLASS_LITE_INTERNAL_H
#define GLASS_LITE_INTERNAL_H

#include "galeward/lite.h"

/* A lite under one load, with everything that was left open filled in. */
struct assessment {
    const struct gw_lite *in;
    struct gw_lite_load load;
    double probability;
    bool is_short;                               /* the load lasts no longer than the standard's short duration */
    double stress_thickness[GW_PANES][GW_PLIES]; /* effective, of each ply */
    struct gw_engine *engine;
    struct gw_lite_result *out;
};

/* Effective thicknesses of every pane; both routes need them. */
enum gw_status gw_lite_find_thicknesses(struct assessment *a);
/* A group of the derivation. */
#define GW_LITE_PRINCIPLES "First principles: plies and cavities as they share the load"
/* The place of a pane's steps in the derivation; NULL where there is only one. */
const char *gw_pane_place(int pane, int panes);
enum gw_status gw_lite_by_standard(const struct assessment *a);
enum gw_status gw_lite_by_principles(const struct assessment *a);
enum gw_status gw_lite_find_resistance(const struct assessment *a); /* of first principles, by search */

/* Glass type factor of a single pane and the duration of the load that it multiplies. */
enum gw_status gw_lite_single_factor(double *factor, double *base_duration, enum gw_treatment treatment,
                                     const struct assessment *a);
/* Strength left under ceramic frit; refuses annealed glass. */
enum gw_status gw_lite_frit_factor(double *factor, const struct gw_ply *ply, struct gw_engine *engine);
enum gw_treatment gw_lite_weakest(const struct gw_pane *pane);
struct gw_plate_case gw_lite_plate_case(const struct gw_lite *in, double thickness, double pressure, unsigned want);
bool gw_lite_is_long(const struct assessment *a); /* the load lasts as long as the long type factors hold for */
void gw_lite_note(struct gw_lite_result *out, const char *constant);

#endif
