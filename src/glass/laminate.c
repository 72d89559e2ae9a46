/* Effective thicknesses of two-ply laminated glass. */
#include "galeward/laminate.h"

#include "base/tolerance.h"

#include "tables_data.h"

static const char CLAUSE[] = "ASTM E1300 effective thickness";

static bool reaches(const struct gw_interlayer_modulus *row, enum gw_interlayer material, double duration,
                    double temperature)
{
    return row->material == (int)material && row->temperature_k >= temperature * (1 - GW_HAIR) &&
           row->duration_s >= duration * (1 - GW_HAIR);
}

/* Moduli fall with warmth and time: of the rows that are as warm and as long, the stiffest is the nearest one. */
static const struct gw_interlayer_modulus *nearest_row(const struct gw_tables *tables, enum gw_interlayer material,
                                                       double duration, double temperature)
{
    const struct gw_interlayer_modulus *best = NULL;
    for (size_t i = 0; i < GW_N_INTERLAYER_MODULUS; i++) {
        const struct gw_interlayer_modulus *row = &tables->interlayer_modulus[i];
        if (!reaches(row, material, duration, temperature)) continue;
        if (!best || row->modulus_pa > best->modulus_pa) best = row;
    }
    return best;
}

enum gw_status gw_interlayer_modulus(double *out, enum gw_interlayer material, double duration, double temperature,
                                     struct gw_engine *engine)
{
    if (material == GW_INTERLAYER_UNSET || !gw_given(duration) || !gw_given(temperature))
        return gw_refuse(engine, GW_MISSING, "interlayer.shear_modulus",
                         "give shear_modulus, or material, duration and temperature");
    const struct gw_interlayer_modulus *row = nearest_row(engine->tables, material, duration, temperature);
    if (!row)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "interlayer.temperature",
                         "warmer or longer than the table of this interlayer: give shear_modulus from test data");
    gw_used_add(&engine->used, &row->row);
    gw_trace_found(engine, "G", GW_STRESS, row->modulus_pa, row->row.source,
                   "from the table, at the next warmer and next longer row", NULL, 0);
    *out = row->modulus_pa;
    return GW_OK;
}

static enum gw_status check(const struct gw_laminate *in, struct gw_engine *engine)
{
    const struct {
        const char *key;
        double value;
    } numbers[] = {{"plies", in->plies[0]},
                   {"plies", in->plies[1]},
                   {"interlayer.thickness", in->interlayer},
                   {"length", in->length}};
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        if (!gw_given(numbers[i].value)) return gw_refuse(engine, GW_MISSING, numbers[i].key, "is not given");
        if (!(numbers[i].value > 0)) return gw_refuse(engine, GW_BAD_VALUE, numbers[i].key, "must be above zero");
    }
    return GW_OK;
}

/* The share of full composite action. */
static double shear_transfer(const struct gw_laminate *in, double modulus, double glass, double hs, double inertia,
                             struct gw_engine *engine)
{
    const struct gw_laminate_rule *rule = &engine->tables->laminate_rule[GW_ROW_LAMINATE_RULE_TWO_PLIES];
    double gamma =
        1 / (1 + rule->factor * glass * inertia * in->interlayer / (modulus * hs * hs * in->length * in->length));
    GW_STEP(engine, "Gamma", GW_RATIO, gamma, CLAUSE, "1/(1+c*(E/G)*I_s*h_v/(h_s^2*a^2))",
            {"c", rule->factor, GW_RATIO}, {"E", glass, GW_STRESS}, {"G", modulus, GW_STRESS},
            {"I_s", inertia, GW_SECTION_MODULUS}, {"h_v", in->interlayer, GW_THICKNESS}, {"h_s", hs, GW_THICKNESS},
            {"a", in->length, GW_THICKNESS});
    return gamma;
}

enum gw_status gw_laminate_thickness(struct gw_laminate_result *out, const struct gw_laminate *in,
                                     struct gw_engine *engine)
{
    enum gw_status status = check(in, engine);
    if (status != GW_OK) return status;
    const struct gw_laminate_rule *rule = &engine->tables->laminate_rule[GW_ROW_LAMINATE_RULE_TWO_PLIES];
    double glass = gw_given(in->elastic_modulus) ? in->elastic_modulus : rule->glass_modulus_pa;
    gw_used_add(&engine->used, &rule->row);
    out->shear_modulus = in->shear_modulus;
    if (!gw_given(in->shear_modulus))
        status = gw_interlayer_modulus(&out->shear_modulus, in->material, in->duration, in->temperature, engine);
    if (status != GW_OK) return status;
    if (!(out->shear_modulus > 0))
        return gw_refuse(engine, GW_BAD_VALUE, "interlayer.shear_modulus", "must be above zero");
    double h1 = in->plies[0], h2 = in->plies[1], hs = (h1 + h2) / 2 + in->interlayer;
    double hs1 = hs * h1 / (h1 + h2), hs2 = hs * h2 / (h1 + h2);
    double inertia = h1 * hs2 * hs2 + h2 * hs1 * hs1;
    double gamma = shear_transfer(in, out->shear_modulus, glass, hs, inertia, engine);
    double cube = h1 * h1 * h1 + h2 * h2 * h2 + 12 * gamma * inertia;
    out->gamma = gamma;
    out->deflection = cbrt(cube);
    out->stress[0] = sqrt(cube / (h1 + 2 * gamma * hs2));
    out->stress[1] = sqrt(cube / (h2 + 2 * gamma * hs1));
    GW_STEP(engine, "h_ef,w", GW_THICKNESS, out->deflection, CLAUSE, "(h_1^3+h_2^3+12*Gamma*I_s)^(1/3)",
            {"h_1|t", h1, GW_THICKNESS}, {"h_2|t", h2, GW_THICKNESS}, {"Gamma", gamma, GW_RATIO},
            {"I_s", inertia, GW_SECTION_MODULUS});
    GW_STEP(engine, "h_1,ef", GW_THICKNESS, out->stress[0], CLAUSE, "(h_ef^3/(h_1+2*Gamma*h_s2))^(1/2)",
            {"h_ef", out->deflection, GW_THICKNESS}, {"h_1|t", h1, GW_THICKNESS}, {"Gamma", gamma, GW_RATIO},
            {"h_s2", hs2, GW_THICKNESS});
    GW_STEP(engine, "h_2,ef", GW_THICKNESS, out->stress[1], CLAUSE, "(h_ef^3/(h_2+2*Gamma*h_s1))^(1/2)",
            {"h_ef", out->deflection, GW_THICKNESS}, {"h_2|t", h2, GW_THICKNESS}, {"Gamma", gamma, GW_RATIO},
            {"h_s1", hs1, GW_THICKNESS});
    return GW_OK;
}
