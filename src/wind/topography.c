/* Wind speed-up over ridges, escarpments and hills: K_zt. */
#include "wind_internal.h"

enum gw_status gw_wind_check_topography(const struct gw_topography *t, struct gw_engine *engine)
{
    if (t->shape == GW_SHAPE_UNSET)
        return gw_refuse(engine, GW_MISSING, "topography.shape", "shape of the feature is not given");
    if (!gw_given(t->height))
        return gw_refuse(engine, GW_MISSING, "topography.height", "height of the feature is not given");
    if (!gw_given(t->half_length))
        return gw_refuse(engine, GW_MISSING, "topography.half_length",
                         "distance from the crest to half the height is not given");
    if (!gw_given(t->distance))
        return gw_refuse(engine, GW_MISSING, "topography.distance", "distance from the crest is not given");
    if (!(t->height > 0)) return gw_refuse(engine, GW_BAD_VALUE, "topography.height", "must be above zero");
    if (!(t->half_length > 0)) return gw_refuse(engine, GW_BAD_VALUE, "topography.half_length", "must be above zero");
    if (!(t->distance >= 0))
        return gw_refuse(engine, GW_BAD_VALUE, "topography.distance", "must not be negative; use side");
    return GW_OK;
}

static const struct gw_wind_topography *height_multiplier_row(const struct wind_run *run, const struct gw_topography *t)
{
    const struct gw_tables *tables = run->engine->tables;
    for (size_t i = 0; i < GW_N_WIND_TOPOGRAPHY; i++) {
        const struct gw_wind_topography *row = &tables->wind_topography[i];
        if (row->shape == (int)t->shape && row->exposure == (int)run->in->exposure) return GW_USE(run->engine, row);
    }
    gw_refuse(run->engine, GW_MISSING, "exposure", "exposure is not given");
    return NULL;
}

static const struct gw_wind_topography_shape *shape_row(const struct wind_run *run, const struct gw_topography *t)
{
    const struct gw_tables *tables = run->engine->tables;
    for (size_t i = 0; i < GW_N_WIND_TOPOGRAPHY_SHAPE; i++) {
        const struct gw_wind_topography_shape *row = &tables->wind_topography_shape[i];
        if (row->shape == (int)t->shape) return GW_USE(run->engine, row);
    }
    gw_refuse(run->engine, GW_MISSING, "topography.shape", "shape of the feature is not given");
    return NULL;
}

static double least_feature_height(const struct wind_run *run)
{
    const struct gw_tables *tables = run->engine->tables;
    for (size_t i = 0; i < GW_N_WIND_TOPOGRAPHY_HEIGHT; i++) {
        const struct gw_wind_topography_height *row = &tables->wind_topography_height[i];
        if (row->exposure == (int)run->in->exposure) return GW_USE(run->engine, row)->height_m;
    }
    return 0; /* no exposure: refused with the multipliers */
}

/* Why the feature does not count; NULL where it does. */
static const char *reason_not_to_count(const struct wind_run *run, const struct gw_topography *t,
                                       const struct gw_wind_topography_limits *limits)
{
    if (t->conditions_met == GW_NO) return "topography: the site conditions for applying it are not met, K_zt = 1";
    if (wind_below(t->height / t->half_length, limits->slope_least))
        return "topography: the feature is less steep (H/L_h) than those that count, K_zt = 1";
    if (wind_below(t->height, least_feature_height(run)))
        return "topography: the feature is lower than those that count in this exposure, K_zt = 1";
    return NULL;
}

static void note_assumptions(const struct wind_run *run, const struct gw_topography *t, const char *clause)
{
    if (t->conditions_met == GW_UNSAID)
        gw_wind_note(run, "K_zt", clause, "topography: the site conditions that are not numbers are taken as met");
    if (t->side == GW_SIDE_UNSET)
        gw_wind_note(run, "K_zt", clause,
                     "topography: side not given, taken as downwind of the crest, where the effect reaches farther");
}

/* A feature steeper than the steepest covered counts as long as that one would be. */
static double feature_length(const struct wind_run *run, const struct gw_topography *t,
                             const struct gw_wind_topography_limits *limits, const char *clause)
{
    if (wind_at_most(t->height / t->half_length, limits->slope_most)) return t->half_length;
    double length = t->height / limits->slope_most;
    GW_STEP(run->engine, "L_h", GW_LENGTH, length, clause, "H/s", {"H", t->height, GW_LENGTH},
            {"s", limits->slope_most, GW_RATIO});
    return length;
}

/* (1 + K_1 K_2 K_3)^2 */
static double factor(const struct wind_run *run, const char *symbol, const struct gw_topography *t, double length,
                     double z, const char *clause)
{
    struct gw_engine *engine = run->engine;
    const struct gw_wind_topography *multiplier = height_multiplier_row(run, t);
    const struct gw_wind_topography_shape *shape = multiplier ? shape_row(run, t) : NULL;
    if (!shape) return GW_ABSENT;
    double mu = t->side == GW_UPWIND ? shape->mu_upwind : shape->mu_downwind;
    double k1 = multiplier->c1 * t->height / length;
    double k2 = fmax(0, 1 - t->distance / (mu * length));
    double k3 = exp(-shape->gamma * z / length);
    double root = 1 + k1 * k2 * k3, kzt = root * root;
    GW_STEP(engine, "K_1", GW_RATIO, k1, clause, "C_1*H/L_h", {"C_1", multiplier->c1, GW_RATIO},
            {"H", t->height, GW_LENGTH}, {"L_h", length, GW_LENGTH});
    GW_STEP(engine, "K_2", GW_RATIO, k2, clause, "max(0, 1-x/(mu*L_h))", {"x", t->distance, GW_LENGTH},
            {"mu", mu, GW_RATIO}, {"L_h", length, GW_LENGTH});
    GW_STEP(engine, "K_3", GW_RATIO, k3, clause, "exp(-gamma*z/L_h)", {"gamma", shape->gamma, GW_RATIO},
            {"z", z, GW_LENGTH}, {"L_h", length, GW_LENGTH});
    GW_STEP(engine, symbol, GW_RATIO, kzt, clause, "(1+K_1*K_2*K_3)^2", {"K_1", k1, GW_RATIO}, {"K_2", k2, GW_RATIO},
            {"K_3", k3, GW_RATIO});
    return kzt;
}

double gw_wind_kzt_of_run(const struct wind_run *run, const char *symbol, const struct gw_topography *t, double z)
{
    const char *clause = gw_wind_clause(run, GW_ROW_WIND_CLAUSES_KZT);
    if (!t) {
        gw_trace_note(run->engine, symbol, clause, "no topographic feature given: K_zt = 1");
        return 1;
    }
    if (gw_wind_check_topography(t, run->engine) != GW_OK) return GW_ABSENT;
    const struct gw_wind_topography_limits *limits =
        &run->engine->tables->wind_topography_limits[GW_ROW_WIND_TOPOGRAPHY_LIMITS_SLOPE];
    gw_used_add(&run->engine->used, &limits->row);
    const char *reason = reason_not_to_count(run, t, limits);
    if (reason) {
        gw_wind_note(run, symbol, clause, reason);
        return 1;
    }
    note_assumptions(run, t, clause);
    return factor(run, symbol, t, feature_length(run, t, limits, clause), z, clause);
}

double gw_wind_kzt(const struct gw_topography *topography, enum gw_exposure exposure, double z,
                   struct gw_engine *engine)
{
    const struct gw_wind_case in = {.exposure = exposure};
    const struct wind_run run = {.engine = engine, .in = &in};
    return gw_wind_kzt_of_run(&run, "K_zt", topography, z);
}
