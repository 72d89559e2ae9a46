/* Insulating units: sealed cavities between lites of large deflection, by the gas law.
 *
 * Each cavity keeps p V / T. The volume that each lite sweeps follows from the plate solution, so load sharing,
 * climatic load and both lites' stresses come out together. Positive pressure acts toward indoors; two or three lites,
 * four edges. */
#ifndef GALEWARD_CAVITY_H
#define GALEWARD_CAVITY_H

#include "galeward/plate.h"

#ifdef __cplusplus
extern "C" {
#endif

enum { GW_CAVITY_LITES = 3 };

struct gw_cavity {
    double width, height;              /* m */
    double thickness[GW_CAVITY_LITES]; /* m, minimum, from outside to inside */
    double gaps[GW_CAVITY_LITES - 1];  /* m, at sealing */
    int n_lites;
    double pressure_outdoor, pressure_indoor; /* Pa on the outer and on the inner lite, toward indoors */
    double atmospheric_pressure, temperature; /* Pa, K, in service */
    double sealing_pressure, sealing_temperature;
};

struct gw_cavity_result {
    double gauge[GW_CAVITY_LITES - 1];                               /* Pa above the atmosphere */
    double net[GW_CAVITY_LITES];                                     /* Pa on each lite, toward indoors */
    double deflection[GW_CAVITY_LITES], stress_max[GW_CAVITY_LITES]; /* m toward indoors; Pa */
    double share[GW_CAVITY_LITES]; /* of the applied pressure; absent when none is applied */
    int iterations;
    double residual; /* of the gas law, relative */
};

/* engine->workspace: GW_PLATE_WORKSPACE bytes. Refuses what the plate refuses, and a state that did not converge. */
enum gw_status gw_cavity_solve(struct gw_cavity_result *out, const struct gw_cavity *in, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
