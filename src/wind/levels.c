/* Strength level, allowable-stress level, deflection: the only conversions, and the least design pressure. */
#include "wind_internal.h"

static const struct gw_wind_levels *level_row(struct gw_engine *engine, size_t i)
{
    const struct gw_wind_levels *row = &engine->tables->wind_levels[i];
    return GW_USE(engine, row);
}

struct gw_asd gw_to_asd(struct gw_strength p, struct gw_engine *engine)
{
    const struct gw_wind_levels *level = level_row(engine, GW_ROW_WIND_LEVELS_ALLOWABLE_STRESS);
    struct gw_asd asd = {level->share * p.pa};
    GW_STEP(engine, "p_asd", GW_PRESSURE, asd.pa, level->clause, "f_W*p", {"f_W", level->share, GW_RATIO},
            {"p", p.pa, GW_PRESSURE});
    return asd;
}

struct gw_strength gw_to_strength(struct gw_asd p, struct gw_engine *engine)
{
    const struct gw_wind_levels *level = level_row(engine, GW_ROW_WIND_LEVELS_ALLOWABLE_STRESS);
    struct gw_strength strength = {p.pa / level->share};
    GW_STEP(engine, "p_given", GW_PRESSURE, strength.pa, level->clause, "p_given,asd/f_W",
            {"p_given,asd", p.pa, GW_PRESSURE}, {"f_W", level->share, GW_RATIO});
    return strength;
}

/* An unknown code allows nothing. */
static const struct gw_code_deflection *reduction_allowed(enum gw_building_code code, struct gw_engine *engine)
{
    for (size_t i = 0; i < GW_N_CODE_DEFLECTION; i++) {
        const struct gw_code_deflection *row = &engine->tables->code_deflection[i];
        if (row->code == (int)code && row->deflection_042 == GW_YES) return GW_USE(engine, row);
    }
    return NULL;
}

double gw_wind_deflection_pa(struct gw_strength p, enum gw_building_code code, bool supports_glass,
                             struct gw_engine *engine)
{
    const struct gw_code_deflection *allowed = supports_glass ? NULL : reduction_allowed(code, engine);
    const struct gw_wind_levels *level =
        level_row(engine, allowed ? GW_ROW_WIND_LEVELS_DEFLECTION : GW_ROW_WIND_LEVELS_DEFLECTION_WITH_GLASS);
    const char *clause = allowed ? allowed->clause : level->clause;
    double pressure = level->share * p.pa;
    GW_STEP(engine, "p_defl", GW_PRESSURE, pressure, clause, "f_W*p", {"f_W", level->share, GW_RATIO},
            {"p", p.pa, GW_PRESSURE});
    return pressure;
}

double gw_wind_at_least_minimum(const struct wind_run *run, const char *symbol, const char *of, double pressure)
{
    const struct gw_wind_minimum *row = &run->engine->tables->wind_minimum[GW_ROW_WIND_MINIMUM_CLADDING];
    gw_used_add(&run->engine->used, &row->row);
    double least = row->pressure_pa;
    double design = pressure < 0 ? fmin(pressure, -least) : fmax(pressure, least);
    GW_STEP(run->engine, symbol, GW_PRESSURE, design, gw_wind_clause(run, GW_ROW_WIND_CLAUSES_MINIMUM),
            pressure < 0 ? "min(p, -p_least)" : "max(p, p_least)", {of, pressure, GW_PRESSURE},
            {"p_least", least, GW_PRESSURE});
    return design;
}
