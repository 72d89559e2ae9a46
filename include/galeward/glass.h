/* Strength of one monolithic lite on four edges: the surface-flaw failure model on the nonlinear plate solution, and
 * the standard's glass type factors on top of it.
 *
 * B = k (ab)^(1-m) (E t^2)^m (td/60 s)^(m/n) J,  probability of breakage P = 1 - exp(-B)   [ASTM E1300 appendices]
 * Load resistance = load of the failure model for annealed glass x glass type factor. Insulating and laminated make-ups
 * are not built yet. */
#ifndef GALEWARD_GLASS_H
#define GALEWARD_GLASS_H

#include "galeward/plate.h"

enum gw_treatment { GW_TREATMENT_UNSET, GW_ANNEALED, GW_HEAT_STRENGTHENED, GW_TEMPERED };

struct gw_lite {
    double width, height; /* m, clear opening */
    double nominal;       /* m, thickness designation */
    enum gw_treatment treatment;
    enum gw_treatment other; /* of the other lite of a double insulating unit; UNSET: a single lite */
    double share;            /* LSF, the part of the unit's load that this lite takes; 1 for a single one */
    double duration;         /* s; absent: the standard's short duration */
    double probability;      /* absent: the standard's */
    double pressure;         /* Pa, magnitude; absent: strength only */
};

struct gw_lite_result {
    double thickness;        /* m, minimum of the designation */
    double nonfactored_load; /* Pa, annealed, at the duration and probability */
    double type_factor;
    double share;                  /* LSF */
    double load_resistance;        /* Pa on the whole unit: NFL x GTF / LSF */
    double weight;                 /* Pa on the face of a horizontal lite */
    double deflection, stress_max; /* m, Pa, at the pressure; absent without one */
    double breakage;               /* probability at the pressure */
    double utilisation;            /* pressure over load resistance */
    bool beyond_charts;            /* the standard's charts end below this load */
};

/* The workspace is the plate's: GW_PLATE_WORKSPACE bytes at engine->workspace. */
enum gw_status gw_lite_strength(struct gw_lite_result *out, const struct gw_lite *in, struct gw_engine *engine);

/* Shares of two lites by the cubes of their minimum thicknesses. */
void gw_glass_shares(double out[2], const double thickness[2], struct gw_engine *engine);
/* Minimum thickness of a nominal designation given in mm or in inches; refuses one that is not in the table. */
enum gw_status gw_glass_minimum(double *out, double nominal, struct gw_engine *engine);
/* Annealed glass of that (minimum) thickness: probability under a pressure, and the pressure at a probability. */
enum gw_status gw_glass_breakage(double *out, double width, double height, double thickness, double pressure,
                                 double duration, struct gw_engine *engine);
enum gw_status gw_glass_load(double *out, double width, double height, double thickness, double duration,
                             double probability, struct gw_engine *engine);

#endif
