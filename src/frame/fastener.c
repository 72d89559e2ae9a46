/* Metals, safety factors, strength of the fastener itself. */
#include "fastener_internal.h"

#include "tables_data.h"

#include <string.h>

static const char TENSION_CLAUSE[] = "tension on the thread's stress area";
static const char SHEAR_CLAUSE[] = "shear on the thread's root area";
static const char BOLT_CLAUSE[] = "AISC 360 J3.6";
static const char INTERACTION_CLAUSE[] = "AAMA TIR-A9, combined tension and shear";

enum gw_status gw_fastener_positive(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (value > 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must be positive", gw_of_text(key));
}

enum gw_status gw_fastener_magnitude(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (value >= 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must be a magnitude", gw_of_text(key));
}

enum gw_status gw_fastener_positive_if_given(const char *key, double value, struct gw_engine *engine)
{
    return gw_given(value) ? gw_fastener_positive(key, value, engine) : GW_OK;
}

enum gw_status gw_fastener_magnitude_if_given(const char *key, double value, struct gw_engine *engine)
{
    return gw_given(value) ? gw_fastener_magnitude(key, value, engine) : GW_OK;
}

enum gw_status gw_fastener_alloy(struct gw_metal_strength *out, const char *alloy, struct gw_engine *engine)
{
    for (size_t i = 0; alloy && i < GW_N_ALUMINUM_STRENGTH; i++) {
        const struct gw_aluminum_strength *row = &engine->tables->aluminum_strength[i];
        if (strcmp(row->row.id, alloy) != 0) continue;
        gw_used_add(&engine->used, &row->row);
        *out = (struct gw_metal_strength){row->ultimate_pa, row->yield_pa,
                                          engine->tables->aluminum_modulus[0].elastic_modulus_pa, row->up_to_m};
        return GW_OK;
    }
    return gw_refuse(engine, GW_BAD_VALUE, "alloy",
                     "'{}' is not an alloy of the table (6063-T5, 6063-T6, 6061-T6, 6005A-T61, 6105-T5): give its "
                     "strengths",
                     gw_of_text(alloy ? alloy : ""));
}

enum gw_status gw_fastener_grade(struct gw_metal_strength *out, const char *grade, double diameter,
                                 struct gw_engine *engine)
{
    bool known = false;
    for (size_t i = 0; grade && i < GW_N_FASTENER_METAL; i++) {
        const struct gw_fastener_metal *row = &engine->tables->fastener_metal[i];
        if (strcmp(row->grade, grade) != 0) continue;
        known = true;
        if (diameter < row->least_m * (1 - GW_HAIR) || diameter > row->greatest_m * (1 + GW_HAIR)) continue;
        gw_used_add(&engine->used, &row->row);
        *out = (struct gw_metal_strength){row->ultimate_pa, row->yield_pa, GW_ABSENT, GW_ABSENT};
        return GW_OK;
    }
    if (known)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "diameter",
                         "the standard of grade {} has no strength for this diameter: give ultimate",
                         gw_of_text(grade));
    return gw_refuse(engine, GW_BAD_VALUE, "grade",
                     "'{}' is not one of stainless_cw, stainless_a, stainless_af, grade_2, grade_5, a307, a325",
                     gw_of_text(grade ? grade : ""));
}

static double safety(int row, struct gw_engine *engine)
{
    return GW_USE(engine, &engine->tables->fastener_safety[row])->factor;
}

double gw_screw_safety(struct gw_engine *engine) { return safety(GW_ROW_FASTENER_SAFETY_SCREW, engine); }

double gw_bolt_safety(struct gw_engine *engine) { return safety(GW_ROW_FASTENER_SAFETY_BOLT, engine); }

double gw_screw_tension(double ultimate, double area, double safety_factor, struct gw_engine *engine)
{
    const double allowable = ultimate * area / safety_factor;
    GW_STEP(engine, "T_a", GW_FORCE, allowable, TENSION_CLAUSE, "F_u*A_s/SF", {"F_u", ultimate, GW_STRESS},
            {"A_s|A", area, GW_SECTION_AREA}, {"SF", safety_factor, GW_RATIO});
    return allowable;
}

double gw_screw_shear(double ultimate, double area, double safety_factor, struct gw_engine *engine)
{
    const double allowable = ultimate * area / (sqrt(3) * safety_factor);
    GW_STEP(engine, "V_a", GW_FORCE, allowable, SHEAR_CLAUSE, "F_u*A_r/(sqrt(3)*SF)", {"F_u", ultimate, GW_STRESS},
            {"A_r|A", area, GW_SECTION_AREA}, {"SF", safety_factor, GW_RATIO});
    return allowable;
}

static double bolt_strength(const char *symbol, int row, double diameter, double ultimate, struct gw_engine *engine)
{
    const double share = GW_USE(engine, &engine->tables->steel_bolt[row])->share;
    const double factor = safety(GW_ROW_FASTENER_SAFETY_STEEL_BOLT, engine), pi = 3.14159265358979323846;
    const double allowable = share * ultimate * pi / 4 * diameter * diameter / factor;
    GW_STEP(engine, symbol, GW_FORCE, allowable, BOLT_CLAUSE, "c*F_u*0.785398163*D^2/Omega", {"c", share, GW_RATIO},
            {"F_u", ultimate, GW_STRESS}, {"D", diameter, GW_THICKNESS}, {"Omega", factor, GW_RATIO});
    return allowable;
}

void gw_steel_bolt(struct gw_bolt_strength *out, double diameter, double ultimate, struct gw_engine *engine)
{
    out->tension = bolt_strength("T_a", GW_ROW_STEEL_BOLT_TENSION, diameter, ultimate, engine);
    out->shear = bolt_strength("V_a", GW_ROW_STEEL_BOLT_SHEAR_THREADS, diameter, ultimate, engine);
}

double gw_fastener_interaction(double tension, double tension_allowable, double shear, double shear_allowable,
                               struct gw_engine *engine)
{
    const double t = tension / tension_allowable, v = shear / shear_allowable, sum = t * t + v * v;
    GW_STEP(engine, "interaction", GW_RATIO, sum, INTERACTION_CLAUSE, "(T/T_a)^2+(V/V_a)^2", {"T", tension, GW_FORCE},
            {"T_a", tension_allowable, GW_FORCE}, {"V", shear, GW_FORCE}, {"V_a", shear_allowable, GW_FORCE});
    return sum;
}
