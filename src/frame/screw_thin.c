/* Pull-out from thin metal. The formula is made for a pilot hole; the point of a self-drilling screw makes a larger
 * one, and tests in 1/16 in reached 0.62 to 0.71 of it. No file says how the hole was made, so thin metal takes the
 * lower of the formula and the tests, and where no test reaches nothing but a test of the screw. */
#include "fastener_internal.h"

#include "tables_data.h"

/* The smallest tested diameter that is no smaller: the larger the screw, the less of the formula it reached. */
static const struct gw_screw_pullout_thin *row_of(const struct gw_screw *screw, const struct gw_tables *tables)
{
    for (size_t i = 0; i < GW_N_SCREW_PULLOUT_THIN; i++)
        if (screw->diameter <= tables->screw_pullout_thin[i].diameter_m * (1 + SCREW_ROUNDING))
            return &tables->screw_pullout_thin[i];
    return NULL;
}

/* On the lines from `thin` over `thicker` to the formula's own at `full`. */
static double factor_at(const struct gw_screw_pullout_thin *row, double engagement, double full_factor)
{
    const bool low = engagement < row->thicker_m;
    const double from = low ? row->thin_m : row->thicker_m, to = low ? row->thicker_m : row->full_m;
    const double at_from = low ? row->thin_factor : row->thicker_factor,
                 at_to = low ? row->thicker_factor : full_factor;
    return at_from + (at_to - at_from) * (engagement - from) / (to - from);
}

bool gw_screw_in_thin_metal(double engagement, const struct gw_tables *tables)
{
    return engagement < tables->screw_pullout_thin[0].full_m * (1 - GW_HAIR);
}

enum gw_status gw_screw_pullout_thin(double *nominal, const struct gw_screw *screw, double engagement,
                                     const struct gw_metal_strength *metal, double full_factor,
                                     struct gw_engine *engine)
{
    const struct gw_screw_pullout_thin *row = row_of(screw, engine->tables);
    if (!row)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "engagement",
                         "in metal below {} the pull-out formula is unsafe for drilled-in screws, and no test of this "
                         "diameter was seen: thicker metal, or the manufacturer's test",
                         gw_of_quantity(GW_THICKNESS, engine->tables->screw_pullout_thin[0].full_m));
    if (engagement < row->least_m * (1 - GW_HAIR))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "engagement",
                         "in metal below {} the pull-out formula is unsafe for drilled-in screws, and no test was "
                         "seen: thicker metal, or the manufacturer's test",
                         gw_of_quantity(GW_THICKNESS, row->least_m));
    const double factor = factor_at(GW_USE(engine, row), engagement, full_factor);
    const double tested = factor * screw->diameter * engagement * metal->yield;
    if (tested >= *nominal) return GW_OK;
    *nominal = tested;
    GW_STEP(engine, "R_n", GW_FORCE, tested, row->row.source, "c_t*D*L_e*F_ty", {"c_t", factor, GW_RATIO},
            {"D", screw->diameter, GW_THICKNESS}, {"L_e", engagement, GW_THICKNESS},
            {"F_ty|Fty", metal->yield, GW_STRESS});
    return GW_OK;
}
