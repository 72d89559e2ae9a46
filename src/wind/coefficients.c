/* External pressure: which figure, effective area, (GC_p). */
#include "wind_internal.h"

static bool alternative_permitted(const struct gw_wind_case *in, const struct gw_wind_figure *figure)
{
    bool slender = !gw_given(in->least_width) ||
                   !wind_at_most(in->mean_roof_height / in->least_width, figure->alternative_slenderness);
    return !slender && wind_below(in->mean_roof_height, figure->alternative_height_m);
}

bool gw_wind_alternative_refused(const struct gw_wind_case *in, const struct gw_tables *tables)
{
    const struct gw_wind_figure *figure = &tables->wind_figure[GW_ROW_WIND_FIGURE_WALL];
    return in->alternative_60_90 == GW_YES && !wind_at_most(in->mean_roof_height, figure->low_height_m) &&
           !alternative_permitted(in, figure);
}

int gw_wind_figure_clause(const struct wind_run *run)
{
    return run->low ? GW_ROW_WIND_CLAUSES_LOW_FIGURE : GW_ROW_WIND_CLAUSES_HIGH_FIGURE;
}

static void figure_by_height(const struct wind_run *run, const char *clause, const char *why)
{
    GW_TRACE_SAY(run->engine, "GC_p", clause, "mean roof height {}: {}",
                 gw_of_quantity(GW_LENGTH, run->in->mean_roof_height), gw_of_text(why));
}

void gw_wind_choose_figure(struct wind_run *run)
{
    const struct gw_wind_figure *figure = &run->engine->tables->wind_figure[GW_ROW_WIND_FIGURE_WALL];
    gw_used_add(&run->engine->used, &figure->row);
    const char *low = gw_wind_clause(run, GW_ROW_WIND_CLAUSES_LOW_FIGURE),
               *high = gw_wind_clause(run, GW_ROW_WIND_CLAUSES_HIGH_FIGURE);
    run->low = wind_at_most(run->in->mean_roof_height, figure->low_height_m);
    if (run->low) {
        figure_by_height(run, low, "the figure for low buildings; q_h at every height, for both signs");
        return;
    }
    if (run->in->alternative_60_90 == GW_YES) {
        run->low = run->alternative = alternative_permitted(run->in, figure);
        gw_wind_note(run, "GC_p", high,
                     run->low ? "the alternative for buildings of middle height: coefficients of the low figure; "
                                "inward with the larger of q_z and q_h, outward with q_h"
                              : "the alternative for buildings of middle height is not permitted here (height, or "
                                "height over width)");
        if (run->low) return;
    }
    figure_by_height(run, high, "the figure for high buildings; q_z inward, q_h outward");
}

double gw_wind_area(const struct wind_run *run, double span, double width)
{
    const struct gw_wind_area *rule = &run->engine->tables->wind_area[GW_ROW_WIND_AREA_WALL];
    gw_used_add(&run->engine->used, &rule->row);
    double area = span * fmax(width, span / rule->span_divisor);
    GW_STEP(run->engine, "A", GW_AREA, area, gw_wind_clause(run, GW_ROW_WIND_CLAUSES_AREA), "L*max(w, L/n)",
            {"L", span, GW_LENGTH}, {"w", width, GW_LENGTH}, {"n", rule->span_divisor, GW_RATIO});
    return area;
}

/* One line of a figure: flat, falling with the logarithm of the area, flat again. */
struct line {
    double area_1, gcp_1, area_2, gcp_2;
};

static double line_at(const struct wind_run *run, const char *symbol, const struct line *line, double area,
                      const char *clause)
{
    if (area <= line->area_1 || area >= line->area_2) {
        double end = area <= line->area_1 ? line->gcp_1 : line->gcp_2;
        GW_STEP(run->engine, symbol, GW_RATIO, end, clause, "g", {"g", end, GW_RATIO});
        return end;
    }
    double gcp =
        line->gcp_1 + (line->gcp_2 - line->gcp_1) * log10(area / line->area_1) / log10(line->area_2 / line->area_1);
    GW_STEP(run->engine, symbol, GW_RATIO, gcp, clause, "g_1+(g_2-g_1)*log10(A/A_1)/log10(A_2/A_1)",
            {"g_1", line->gcp_1, GW_RATIO}, {"g_2", line->gcp_2, GW_RATIO}, {"A", area, GW_AREA},
            {"A_1", line->area_1, GW_AREA}, {"A_2", line->area_2, GW_AREA});
    return gcp;
}

static bool is_reduced(const struct wind_run *run)
{
    const struct gw_wind_flat_roof *flat = &run->engine->tables->wind_flat_roof[GW_ROW_WIND_FLAT_ROOF_WALL];
    return run->low && wind_at_most(wind_roof_slope(run->in), flat->slope_rad);
}

/* Under a flat roof the wall coefficients of the low figure are reduced, both signs; those inside are not. */
static double under_flat_roof(const struct wind_run *run, const char *symbol, double gcp, const char *clause)
{
    const struct gw_wind_flat_roof *flat = &run->engine->tables->wind_flat_roof[GW_ROW_WIND_FLAT_ROOF_WALL];
    gw_used_add(&run->engine->used, &flat->row);
    if (!is_reduced(run)) return gcp;
    if (!gw_given(run->in->roof_slope))
        gw_wind_note(run, symbol, clause, "roof_slope not given: taken as flat, which reduces the wall coefficients");
    double reduced = flat->factor * gcp;
    GW_STEP(run->engine, symbol, GW_RATIO, reduced, clause, "f_flat*GC_fig", {"f_flat", flat->factor, GW_RATIO},
            {"GC_fig", gcp, GW_RATIO});
    return reduced;
}

static size_t wall_line(const struct wind_run *run, enum wind_sign sign)
{
    if (sign == WIND_POSITIVE) return run->low ? GW_ROW_WIND_WALL_GCP_LOW_POSITIVE : GW_ROW_WIND_WALL_GCP_HIGH_POSITIVE;
    if (run->in->zone == 4)
        return run->low ? GW_ROW_WIND_WALL_GCP_LOW_NEGATIVE_4 : GW_ROW_WIND_WALL_GCP_HIGH_NEGATIVE_4;
    return run->low ? GW_ROW_WIND_WALL_GCP_LOW_NEGATIVE_5 : GW_ROW_WIND_WALL_GCP_HIGH_NEGATIVE_5;
}

double gw_wind_wall_gcp(const struct wind_run *run, enum wind_sign sign, double area)
{
    const struct gw_wind_wall_gcp *row = &run->engine->tables->wind_wall_gcp[wall_line(run, sign)];
    const struct line line = {row->area_1_m2, row->gcp_1, row->area_2_m2, row->gcp_2};
    const char *symbol = sign == WIND_POSITIVE ? "GC_p,in" : "GC_p,out",
               *of_figure = sign == WIND_POSITIVE ? "GC_fig,in" : "GC_fig,out",
               *clause = gw_wind_clause(run, gw_wind_figure_clause(run));
    gw_used_add(&run->engine->used, &row->row);
    const char *before = gw_trace_at(run->engine, sign == WIND_POSITIVE ? "in" : "out");
    double gcp = line_at(run, is_reduced(run) ? of_figure : symbol, &line, area, clause);
    if (run->low) gcp = under_flat_roof(run, symbol, gcp, clause);
    gw_trace_at(run->engine, before);
    return gcp;
}

static size_t roof_line(const struct wind_run *run, int zone)
{
    bool edge = zone == 2;
    if (!run->low) return edge ? GW_ROW_WIND_ROOF_GCP_HIGH_2 : GW_ROW_WIND_ROOF_GCP_HIGH_3;
    if (run->in->edition == GW_ASCE7_10)
        return edge ? GW_ROW_WIND_ROOF_GCP_ASCE7_10_LOW_2 : GW_ROW_WIND_ROOF_GCP_ASCE7_10_LOW_3;
    if (run->in->edition == GW_ASCE7_16)
        return edge ? GW_ROW_WIND_ROOF_GCP_ASCE7_16_LOW_2 : GW_ROW_WIND_ROOF_GCP_ASCE7_16_LOW_3;
    return edge ? GW_ROW_WIND_ROOF_GCP_ASCE7_22_LOW_2 : GW_ROW_WIND_ROOF_GCP_ASCE7_22_LOW_3;
}

double gw_wind_roof_gcp(const struct wind_run *run, int zone, double area)
{
    const struct gw_wind_roof_gcp *row = &run->engine->tables->wind_roof_gcp[roof_line(run, zone)];
    const struct line line = {row->area_1_m2, row->gcp_1, row->area_2_m2, row->gcp_2};
    int figure = run->low ? GW_ROW_WIND_CLAUSES_ROOF_LOW_FIGURE : GW_ROW_WIND_CLAUSES_HIGH_FIGURE;
    gw_used_add(&run->engine->used, &row->row);
    return line_at(run, "GC_p,roof", &line, area, gw_wind_clause(run, figure));
}

bool gw_wind_low_figure(const struct gw_wind_case *in, struct gw_engine *engine)
{
    struct wind_run run = {.engine = engine, .in = in};
    if (!gw_given(in->mean_roof_height)) {
        gw_refuse(engine, GW_MISSING, "mean_roof_height", "mean_roof_height is not given");
        return false;
    }
    gw_wind_choose_figure(&run);
    return run.low;
}

double gw_wind_effective_area(double span, double width, struct gw_engine *engine)
{
    const struct gw_wind_case in = {.edition = GW_EDITION_UNSET};
    const struct wind_run run = {.engine = engine, .in = &in};
    return gw_wind_area(&run, span, width);
}
