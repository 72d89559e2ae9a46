/* Strength of glass under uniform pressure, four edges held: the surface-flaw failure model on the nonlinear plate.
 *
 * B = k (ab)^(1-m) (E t^2)^m (td/60 s)^(m/n) J,  probability of breakage P = 1 - exp(-B)   [ASTM E1300 appendices]
 * All of it for annealed glass and for minimum thicknesses; type factors and make-ups: lite.h. */
#ifndef GALEWARD_GLASS_H
#define GALEWARD_GLASS_H

#include "galeward/plate.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_treatment { GW_TREATMENT_UNSET, GW_ANNEALED, GW_HEAT_STRENGTHENED, GW_TEMPERED };

struct gw_glass_thickness;
/* Row of a nominal designation given in mm or in inches (m); NULL where the standard has none. */
const struct gw_glass_thickness *gw_glass_designation(const struct gw_tables *tables, double nominal);
/* Minimum thickness of a nominal designation given in mm or in inches; refuses one that is not in the table. */
enum gw_status gw_glass_minimum(double *out, double nominal, struct gw_engine *engine);
/* Probability of breakage under a pressure (Pa, magnitude) for a duration (s); engine->workspace as for gw_plate. */
enum gw_status gw_glass_breakage(double *out, double width, double height, double thickness, double pressure,
                                 double duration, struct gw_engine *engine);
/* The pressure at a probability of breakage, found by secant steps. */
enum gw_status gw_glass_load(double *out, double width, double height, double thickness, double duration,
                             double probability, struct gw_engine *engine);
/* Dead load of glass of a nominal thickness, Pa on its face laid flat. */
double gw_glass_weight(double nominal, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
