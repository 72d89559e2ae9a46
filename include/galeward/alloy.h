/* Metals of framing: minimum strengths of extrusions and steels, buckling constants of aluminum. */
#ifndef GALEWARD_ALLOY_H
#define GALEWARD_ALLOY_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_metal {
    GW_METAL_UNSET,
    GW_METAL_6063_T5,
    GW_METAL_6063_T6,
    GW_METAL_6061_T6,
    GW_METAL_6005A_T61,
    GW_METAL_6105_T5,
    GW_METAL_A36,
    GW_METAL_A500_B,
    GW_METAL_A500_C,
    GW_METAL_A992,
    GW_METAL_A572_50,
    GW_METAL_STAINLESS_304,
    GW_METAL_STAINLESS_316
};
bool gw_metal_is_steel(enum gw_metal metal);
/* Metals of one family have one density. */
enum gw_metal_family { GW_FAMILY_UNKNOWN, GW_FAMILY_ALUMINUM, GW_FAMILY_STEEL, GW_FAMILY_STAINLESS };
enum gw_metal_family gw_metal_family(enum gw_metal metal);

/* Aged: T5 to T9. Annealed: O, H, T1 to T4, and metal affected by welding. */
enum gw_temper { GW_TEMPER_UNSET, GW_TEMPER_AGED, GW_TEMPER_ANNEALED };
enum gw_buckling { GW_BUCKLING_MEMBER, GW_BUCKLING_FLAT, GW_BUCKLING_BENDING, GW_BUCKLING_SHEAR };
enum gw_steel { GW_STEEL_CARBON, GW_STEEL_STAINLESS };

struct gw_alloy {
    enum gw_temper temper;                                  /* of the buckling constants */
    double ultimate, yield, compressive_yield, shear_yield; /* Pa: Ftu, Fty, Fcy, Fsy */
    double elastic_modulus, shear_modulus;                  /* Pa */
    double tension_coefficient;                             /* kt */
};

/* Strengths for the thickest metal of the section, m; absent: only where they do not depend on it. `welded`: those of
 * the weld-affected zone. Refuses thicker metal than the table holds, and welds of an alloy whose strength is not
 * known.
 */
enum gw_status gw_alloy_find(struct gw_alloy *out, enum gw_metal metal, double thickness, bool welded,
                             struct gw_engine *engine);

/* Elastic constants, Pa, which do not hang on temper or thickness. Shear: of aluminum; of steel absent. */
struct gw_moduli {
    double elastic, shear;
};
struct gw_moduli gw_metal_moduli(enum gw_metal metal, struct gw_engine *engine);

/* B - D x slenderness, up to the slenderness C. k1, k2: the hyperbola of flat elements, else absent. */
struct gw_buckling_constants {
    double b, d, c; /* Pa, Pa, ratio */
    double k1, k2;
};
void gw_alloy_buckling(struct gw_buckling_constants *out, const struct gw_alloy *alloy, enum gw_buckling buckling,
                       struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
