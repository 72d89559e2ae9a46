/* Stresses that edges and surfaces of glass may reach. */
#include "galeward/support.h"

#include "base/tolerance.h"

#include "tables_data.h"

static const double DAY = 86400; /* s */

static enum gw_status check(enum gw_treatment treatment, double duration, double probability, struct gw_engine *engine)
{
    const struct gw_glass_load *usual = &engine->tables->glass_load[0];
    if (treatment == GW_TREATMENT_UNSET)
        return gw_refuse(engine, GW_MISSING, "treatment", "how the glass is heat treated");
    if (gw_given(probability) && !(fabs(probability - usual->probability) <= usual->probability * GW_HAIR))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "probability",
                         "allowable stresses are stated for a breakage probability of {} in 1000 only",
                         gw_of_number(1000 * usual->probability, 4));
    if (gw_given(duration) && !(duration > 0)) return gw_refuse(engine, GW_BAD_VALUE, "duration", "must be above zero");
    return GW_OK;
}

static double annealed_factor(double duration, struct gw_engine *engine)
{
    const struct gw_glass_flaws *flaws = GW_USE(engine, &engine->tables->glass_flaws[0]);
    const double usual = engine->tables->glass_load[0].duration_s;
    const double factor = pow(usual / duration, 1 / flaws->n);
    GW_STEP(engine, "c_d", GW_RATIO, factor, flaws->row.source, "(t_3/t_d)^(1/n)", {"t_3", usual, GW_TIME},
            {"t_d", duration, GW_TIME}, {"n", flaws->n, GW_RATIO});
    return factor;
}

/* Between the short and the long duration the long factor, which is the lower one. */
static enum gw_status treated_factor(double *out, enum gw_treatment treatment, double duration,
                                     struct gw_engine *engine)
{
    const struct gw_glass_duration *rule = &engine->tables->glass_duration[0];
    if (duration > rule->long_s * (1 + GW_HAIR))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "duration",
                         "allowable stresses of heat-treated glass are known up to {} days",
                         gw_of_number(rule->long_s / DAY, 4));
    for (size_t i = 0; i < GW_N_GLASS_TYPE_FACTOR; i++) {
        const struct gw_glass_type_factor *row = &engine->tables->glass_type_factor[i];
        if (row->treatment != (int)treatment) continue;
        gw_used_add(&engine->used, &row->row);
        *out = row->long_factor / row->short_factor;
        GW_STEP(engine, "c_d", GW_RATIO, *out, row->row.source, "GTF_long/GTF_short",
                {"GTF_long", row->long_factor, GW_RATIO}, {"GTF_short", row->short_factor, GW_RATIO});
        return GW_OK;
    }
    return gw_refuse(engine, GW_MISSING, "treatment", "no glass type factor for this treatment");
}

static enum gw_status for_duration(double *out, double stress, enum gw_treatment treatment, double duration,
                                   const char *symbol, const struct gw_row *row, struct gw_engine *engine)
{
    double factor = 1;
    enum gw_status status = GW_OK;
    gw_used_add(&engine->used, row);
    if (gw_given(duration) && duration > engine->tables->glass_load[0].duration_s * (1 + GW_HAIR)) {
        if (treatment == GW_ANNEALED) factor = annealed_factor(duration, engine);
        else status = treated_factor(&factor, treatment, duration, engine);
    }
    if (status) return status;
    *out = stress * factor;
    GW_STEP(engine, symbol, GW_STRESS, *out, row->source, "f_3*c_d", {"f_3", stress, GW_STRESS},
            {"c_d", factor, GW_RATIO});
    return GW_OK;
}

enum gw_status gw_edge_allowable(double *out, enum gw_treatment treatment, enum gw_edge_finish finish, double duration,
                                 double probability, struct gw_engine *engine)
{
    enum gw_status status = check(treatment, duration, probability, engine);
    if (status) return status;
    if (finish == GW_EDGE_FINISH_UNSET)
        return gw_refuse(engine, GW_MISSING, "edge_finish", "how the free edges are finished");
    for (size_t i = 0; i < GW_N_GLASS_EDGE_STRESS; i++) {
        const struct gw_glass_edge_stress *row = &engine->tables->glass_edge_stress[i];
        if (row->treatment != (int)treatment || row->finish != (int)finish) continue;
        return for_duration(out, row->stress_pa, treatment, duration, "f_edge", &row->row, engine);
    }
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "edge_finish",
                     "heat-treated glass has no value for a clean-cut edge: it is seamed or polished before treatment");
}

enum gw_status gw_surface_allowable(double *out, enum gw_treatment treatment, double duration, double probability,
                                    struct gw_engine *engine)
{
    enum gw_status status = check(treatment, duration, probability, engine);
    if (status) return status;
    for (size_t i = 0; i < GW_N_GLASS_SURFACE_STRESS; i++) {
        const struct gw_glass_surface_stress *row = &engine->tables->glass_surface_stress[i];
        if (row->treatment == (int)treatment)
            return for_duration(out, row->stress_pa, treatment, duration, "f_surface", &row->row, engine);
    }
    return gw_refuse(engine, GW_MISSING, "treatment", "no surface stress for this treatment");
}
