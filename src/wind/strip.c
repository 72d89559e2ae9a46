/* Width a of the edge strip at building corners. */
#include "wind_internal.h"

/* The cap of later editions for a wide, low building; NULL: none. */
static const struct gw_wind_strip_cap *cap_of(const struct wind_run *run)
{
    const struct gw_wind_case *in = run->in;
    for (size_t i = 0; i < GW_N_WIND_STRIP_CAP; i++) {
        const struct gw_wind_strip_cap *cap = &run->engine->tables->wind_strip_cap[i];
        if (cap->edition == (int)in->edition && wind_at_most(wind_roof_slope(in), cap->slope_rad) &&
            !wind_at_most(in->least_width, cap->width_m))
            return cap;
    }
    return NULL;
}

/* Whether the cap stands in the figure for cladding is not certain: the wider strip is safe. */
static double capped(const struct wind_run *run, double width, const char *clause)
{
    const struct gw_wind_strip_cap *cap = cap_of(run);
    const double height = run->in->mean_roof_height;
    if (!cap || width <= cap->height_share * height) return width;
    if (run->in->strip_cap != GW_STRIP_CAP_EDITION) {
        gw_wind_note(run, "a", clause,
                     "edge strip: the cap for wide, low buildings is not applied; the strip may be wider than needed");
        return width;
    }
    gw_used_add(&run->engine->used, &cap->row);
    gw_wind_note(run, "a", clause, "edge strip: the cap for wide, low buildings is applied, as asked for");
    const double least = cap->height_share * height;
    GW_STEP(run->engine, "a", GW_LENGTH, least, clause, "min(a, r*h_roof)", {"a", width, GW_LENGTH},
            {"r", cap->height_share, GW_RATIO}, {"h_roof", height, GW_LENGTH});
    return least;
}

static double low_strip(const struct wind_run *run, const struct gw_wind_strip *rule, const char *clause)
{
    double width = run->in->least_width, height = run->in->mean_roof_height;
    double smaller = fmin(rule->width_share * width, rule->height_share * height);
    double a = fmax(fmax(smaller, rule->least_share * width), rule->least_m);
    GW_STEP(run->engine, "a", GW_LENGTH, a, clause, "max(max(min(s*B, r*h_roof), t*B), a_least)",
            {"s", rule->width_share, GW_RATIO}, {"B", width, GW_LENGTH}, {"r", rule->height_share, GW_RATIO},
            {"h_roof", height, GW_LENGTH}, {"t", rule->least_share, GW_RATIO}, {"a_least", rule->least_m, GW_LENGTH});
    return capped(run, a, clause);
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

/* A building whose height and width are known. */
static bool strip_run(struct wind_run *run)
{
    const struct gw_wind_case *in = run->in;
    if (!gw_given(in->mean_roof_height) || !gw_given(in->least_width)) {
        const char *key = gw_given(in->least_width) ? "mean_roof_height" : "least_width";
        gw_refuse(run->engine, GW_MISSING, key, "the width of the edge strip needs mean_roof_height and least_width");
        return false;
    }
    gw_wind_choose_figure(run);
    return true;
}

double gw_wind_zone_width(const struct gw_wind_case *in, struct gw_engine *engine)
{
    struct wind_run run = {.engine = engine, .in = in};
    return strip_run(&run) ? gw_wind_strip(&run) : GW_ABSENT;
}

bool gw_wind_strip_capped(const struct gw_wind_case *in, struct gw_engine *engine)
{
    struct wind_run run = {.engine = engine, .in = in};
    struct gw_wind_case uncapped = *in;
    uncapped.strip_cap = GW_STRIP_CAP_NONE;
    run.in = &uncapped;
    if (!strip_run(&run) || !run.low) return false;
    const struct gw_wind_strip_cap *cap = cap_of(&run);
    return cap && gw_wind_strip(&run) > cap->height_share * in->mean_roof_height;
}

static const struct gw_wind_roof_corner *roof_corner_row(const struct wind_run *run)
{
    const struct gw_wind_roof_corner *rows = run->engine->tables->wind_roof_corner;
    if (!run->low) return &rows[GW_ROW_WIND_ROOF_CORNER_HIGH];
    if (run->in->edition == GW_ASCE7_10) return &rows[GW_ROW_WIND_ROOF_CORNER_ASCE7_10_LOW];
    if (run->in->edition == GW_ASCE7_16) return &rows[GW_ROW_WIND_ROOF_CORNER_ASCE7_16_LOW];
    return &rows[GW_ROW_WIND_ROOF_CORNER_ASCE7_22_LOW];
}

double gw_wind_roof_reach(const struct wind_run *run, double strip)
{
    const struct gw_wind_roof_corner *row = roof_corner_row(run);
    const char *clause =
        gw_wind_clause(run, run->low ? GW_ROW_WIND_CLAUSES_ROOF_LOW_FIGURE : GW_ROW_WIND_CLAUSES_HIGH_FIGURE);
    gw_used_add(&run->engine->used, &row->row);
    if (gw_given(row->height_share)) {
        const double height = run->in->mean_roof_height, reach = row->height_share * height;
        GW_STEP(run->engine, "c_3", GW_LENGTH, reach, clause, "r*h_roof", {"r", row->height_share, GW_RATIO},
                {"h_roof", height, GW_LENGTH});
        return reach;
    }
    const double reach = row->strip_share * strip;
    GW_STEP(run->engine, "c_3", GW_LENGTH, reach, clause, "n*a", {"n", row->strip_share, GW_RATIO},
            {"a", strip, GW_LENGTH});
    return reach;
}

double gw_wind_roof_corner(const struct gw_wind_case *in, struct gw_engine *engine)
{
    struct wind_run run = {.engine = engine, .in = in};
    if (!strip_run(&run)) return GW_ABSENT;
    return gw_wind_corners_calmed(&run) ? 0 : gw_wind_roof_reach(&run, gw_wind_strip(&run));
}
