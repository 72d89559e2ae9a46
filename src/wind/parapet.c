/* Parapets: both load cases, and each skin against the inside of a hollow one. */
#include "wind_internal.h"

static enum gw_status check_number(struct gw_engine *engine, const char *key, double value)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "the top of the parapet is needed");
    if (!(value > 0)) return gw_refuse(engine, GW_BAD_VALUE, key, "must be above zero");
    return GW_OK;
}

static enum gw_status check(const struct wind_run *run, const struct gw_wind_parapet_limits *limits)
{
    const struct gw_wind_parapet *parapet = run->in->parapet;
    enum gw_status status = check_number(run->engine, "parapet.top", parapet->top);
    if (status != GW_OK) return status;
    if (gw_given(parapet->height) && !(parapet->height > 0))
        return gw_refuse(run->engine, GW_BAD_VALUE, "parapet.height", "must be above zero");
    if (gw_given(parapet->gcpi) && parapet->gcpi < 0)
        return gw_refuse(run->engine, GW_BAD_VALUE, "parapet.gcpi", "is a magnitude, must not be negative");
    if (wind_at_most(wind_roof_slope(run->in), limits->slope_rad)) return GW_OK;
    return gw_refuse(run->engine, GW_OUTSIDE_METHOD, "roof_slope",
                     "a parapet takes the coefficients of a flat roof, which go up to a slope of {}",
                     gw_of_quantity(GW_ANGLE, limits->slope_rad));
}

bool gw_wind_corners_calmed(const struct wind_run *run)
{
    const struct gw_wind_parapet_limits *limits =
        &run->engine->tables->wind_parapet_limits[GW_ROW_WIND_PARAPET_LIMITS_PARAPET];
    const struct gw_wind_parapet *parapet = run->in->parapet;
    if (!parapet) return false;
    double height = gw_given(parapet->height) ? parapet->height : parapet->top - run->in->mean_roof_height;
    return parapet->perimeter == GW_YES && wind_at_most(limits->perimeter_height_m, height);
}

/* The roof's corner reaches by its own figure, not by the wall's strip; a high parapet all round calms it. */
static int roof_zone(const struct wind_run *run)
{
    const char *clause = gw_wind_clause(run, GW_ROW_WIND_CLAUSES_PARAPET);
    const double reach = gw_wind_roof_reach(run, run->out->zone_width), distance = run->in->parapet->corner_distance;
    const char *why = "farther from the corner than c_3: beside roof zone 2";
    int zone = 2;
    if (gw_wind_corners_calmed(run)) {
        why = "parapet all round and high enough: roof zone 3 counts as zone 2";
    } else if (!gw_given(distance)) {
        gw_wind_note(run, "GC_p,roof", clause,
                     "corner_distance of the parapet not given: taken beside the roof's corner (zone 3)");
        return 3;
    } else if (wind_below(distance, reach)) {
        why = "nearer to the corner than c_3: beside roof zone 3";
        zone = 3;
    }
    if (gw_given(distance))
        GW_TRACE_SAY(run->engine, "GC_p,roof", clause, "{} from the corner: {}", gw_of_quantity(GW_LENGTH, distance),
                     gw_of_text(why));
    else gw_trace_note(run->engine, "GC_p,roof", clause, why);
    return zone;
}

/* `with_kd`: the edition has K_d here and not in q. */
struct parapet_pressure {
    double q, kd;
    bool with_kd;
};

/* One of its pressures, by the names of its steps. */
struct parapet_names {
    const char *symbol, *of, *raw, *first, *second;
    bool adds;
};

/* q_p (first - second), both coefficients on faces that push the same way when signs differ. */
static double design(const struct wind_run *run, const struct parapet_names *names, const struct parapet_pressure *at,
                     double first, double second)
{
    double factor = at->with_kd ? at->kd : 1, p = at->q * factor * (names->adds ? first + second : first - second);
    const char *with = names->adds ? "q_p*K_d*(g_1+g_2)" : "q_p*K_d*(g_1-g_2)",
               *without = names->adds ? "q_p*(g_1+g_2)" : "q_p*(g_1-g_2)";
    GW_STEP(run->engine, names->raw, GW_PRESSURE, p, gw_wind_clause(run, GW_ROW_WIND_CLAUSES_PARAPET),
            at->with_kd ? with : without, {"q_p", at->q, GW_PRESSURE}, {"K_d", at->kd, GW_RATIO},
            {names->first, first, GW_RATIO}, {names->second, second, GW_RATIO});
    return gw_wind_at_least_minimum(run, names->symbol, names->of, p);
}

static const struct parapet_names WINDWARD = {"p_windward",  "p=p_net,windward", "p_net,windward",
                                              "g_1=GC_p,in", "g_2=GC_p,roof",    false},
                                  LEEWARD = {"p_leeward",   "p=p_net,leeward", "p_net,leeward",
                                             "g_1=GC_p,in", "g_2=GC_p,out",    false},
                                  SKIN_IN = {"p_skin,in",   "p=p_net,skin,in", "p_net,skin,in",
                                             "g_1=GC_p,in", "g_2=GC_pi,skin",  true},
                                  SKIN_OUT = {"p_skin,out",   "p=p_net,skin,out", "p_net,skin,out",
                                              "g_1=GC_p,out", "g_2=GC_pi,skin",   false};

enum gw_status gw_wind_parapet(const struct wind_run *run, struct gw_parapet_result *out)
{
    static const struct wind_names at_top = {"K_p", "K_zt,p", "q_p", "K_z=K_p", "K_zt=K_zt,p", "p"};
    const struct gw_wind_parapet_limits *limits =
        &run->engine->tables->wind_parapet_limits[GW_ROW_WIND_PARAPET_LIMITS_PARAPET];
    gw_used_add(&run->engine->used, &limits->row);
    enum gw_status status = check(run, limits);
    if (status != GW_OK) return status;
    const struct gw_wind_velocity *velocity = gw_wind_velocity_row(run);
    struct wind_level level;
    if (!velocity || !gw_wind_level_at(run, run->in->parapet->top, run->out->ke, &at_top, &level))
        return run->engine->fault.status;
    const struct parapet_pressure at = {level.q, velocity->kd, velocity->kd_in_pressure == GW_YES};
    double positive = run->out->gcp_positive, negative = run->out->gcp_negative;
    double roof = gw_wind_roof_gcp(run, roof_zone(run), run->out->effective_area);
    double inside = gw_given(run->in->parapet->gcpi) ? run->in->parapet->gcpi : 0;
    out->qp = level.q;
    out->windward_net = design(run, &WINDWARD, &at, positive, roof);
    out->leeward_net = design(run, &LEEWARD, &at, positive, negative);
    out->skin_positive = design(run, &SKIN_IN, &at, positive, inside);
    out->skin_negative = design(run, &SKIN_OUT, &at, negative, inside);
    return GW_OK;
}
