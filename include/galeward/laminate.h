/* Laminated glass of two plies: effective thicknesses from the shear that the interlayer transfers.
 *
 * Derived for simply supported beams, two plies, linear (ASTM E1300 appendix on effective thickness); for plates and
 * large deflections an approximation. Use the deflection thickness for deflection and each ply's stress thickness for
 * its stress, in formulas of monolithic glass. Plies by minimum thickness, interlayer by nominal. */
#ifndef GALEWARD_LAMINATE_H
#define GALEWARD_LAMINATE_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_interlayer { GW_INTERLAYER_UNSET, GW_INTERLAYER_PVB, GW_INTERLAYER_IONOPLAST, GW_INTERLAYER_OTHER };

struct gw_laminate {
    double plies[2];      /* m, outer and inner */
    double interlayer;    /* m */
    double shear_modulus; /* Pa; or by material, duration and temperature */
    enum gw_interlayer material;
    double duration;    /* s */
    double temperature; /* K */
    double length;      /* m, the shorter bending length: short side of a four-sided lite, span of a two-sided one */
    double elastic_modulus; /* Pa; absent: that of the table */
};

struct gw_laminate_result {
    double shear_modulus; /* Pa, used */
    double gamma;         /* 0 layered ... 1 monolithic */
    double deflection;    /* m, effective thickness */
    double stress[2];     /* m, of each ply */
};

/* Refuses a modulus that is neither given nor in the table: warmer or longer than its rows. */
enum gw_status gw_laminate_thickness(struct gw_laminate_result *out, const struct gw_laminate *in,
                                     struct gw_engine *engine);

/* The interlayer's modulus at the next warmer and next longer row of its table: never stiffer than the case. */
enum gw_status gw_interlayer_modulus(double *out, enum gw_interlayer material, double duration, double temperature,
                                     struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
