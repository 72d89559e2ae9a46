/* Width a of the edge strip at building corners. */
#include "wind_internal.h"

/* Later editions let the strip of a wide, low building be narrower, perhaps; the wider one is safe. */
static void note_cap(const struct wind_run *run, double width, const char *clause)
{
    const struct gw_wind_case *in = run->in;
    for (size_t i = 0; i < GW_N_WIND_STRIP_CAP; i++) {
        const struct gw_wind_strip_cap *cap = &run->engine->tables->wind_strip_cap[i];
        if (cap->edition != (int)in->edition) continue;
        bool wide_and_flat =
            wind_at_most(wind_roof_slope(in), cap->slope_rad) && !wind_at_most(in->least_width, cap->width_m);
        if (wide_and_flat && width > cap->height_share * in->mean_roof_height)
            gw_wind_note(
                run, "a", clause,
                "edge strip: the cap for wide, low buildings is not applied; the strip may be wider than needed");
    }
}

static double low_strip(const struct wind_run *run, const struct gw_wind_strip *rule, const char *clause)
{
    double width = run->in->least_width, height = run->in->mean_roof_height;
    double smaller = fmin(rule->width_share * width, rule->height_share * height);
    double a = fmax(fmax(smaller, rule->least_share * width), rule->least_m);
    GW_STEP(run->engine, "a", GW_LENGTH, a, clause, "max(max(min(s*B, r*h), t*B), a_least)",
            {"s", rule->width_share, GW_RATIO}, {"B", width, GW_LENGTH}, {"r", rule->height_share, GW_RATIO},
            {"h", height, GW_LENGTH}, {"t", rule->least_share, GW_RATIO}, {"a_least", rule->least_m, GW_LENGTH});
    note_cap(run, a, clause);
    return a;
}

static double high_strip(const struct wind_run *run, const struct gw_wind_strip *rule, const char *clause)
{
    double width = run->in->least_width, a = fmax(rule->width_share * width, rule->least_m);
    GW_STEP(run->engine, "a", GW_LENGTH, a, clause, "max(s*B, a_least)", {"s", rule->width_share, GW_RATIO},
            {"B", width, GW_LENGTH}, {"a_least", rule->least_m, GW_LENGTH});
    return a;
}

double gw_wind_strip(const struct wind_run *run)
{
    const struct gw_wind_strip *rule =
        &run->engine->tables->wind_strip[run->low ? GW_ROW_WIND_STRIP_LOW : GW_ROW_WIND_STRIP_HIGH];
    const char *clause = gw_wind_clause(run, gw_wind_figure_clause(run));
    gw_used_add(&run->engine->used, &rule->row);
    return run->low ? low_strip(run, rule, clause) : high_strip(run, rule, clause);
}

double gw_wind_zone_width(const struct gw_wind_case *in, struct gw_engine *engine)
{
    struct wind_run run = {.engine = engine, .in = in};
    if (!gw_given(in->mean_roof_height) || !gw_given(in->least_width)) {
        const char *key = gw_given(in->least_width) ? "mean_roof_height" : "least_width";
        gw_refuse(engine, GW_MISSING, key, "the width of the edge strip needs mean_roof_height and least_width");
        return GW_ABSENT;
    }
    run.low = gw_wind_choose_figure(&run);
    return gw_wind_strip(&run);
}
