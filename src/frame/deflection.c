/* Deflection limits of framing that supports glass, and the section that a simple span needs. */
#include "frame/member_internal.h"

static const struct gw_framing_deflection *row_for(double span, const struct gw_tables *tables)
{
    const struct gw_framing_deflection *rows = tables->framing_deflection;
    size_t i = 0;
    /* A span that misses the end of a row's range by rounding alone still lies in it. */
    while (i + 1 < GW_N_FRAMING_DEFLECTION && !(span <= rows[i].span_at_most_m * (1 + GW_HAIR))) i++;
    return &rows[i];
}

double gw_deflection_limit(double span, bool cantilever, bool capped, struct gw_engine *engine)
{
    const struct gw_framing_cantilever *longer = &engine->tables->framing_cantilever[0];
    const struct gw_framing_deflection_cap *cap = &engine->tables->framing_deflection_cap[0];
    double counted = span;
    if (cantilever) {
        gw_used_add(&engine->used, &longer->row);
        counted = longer->lengths * span;
        GW_STEP(engine, "L", GW_BEAM_LENGTH, counted, longer->clause, "n*l", {"n", longer->lengths, GW_RATIO},
                {"l", span, GW_BEAM_LENGTH});
    }
    const struct gw_framing_deflection *row = GW_USE(engine, row_for(counted, engine->tables));
    double limit = counted / row->span_over + row->plus_m;
    GW_STEP(engine, "y_limit", GW_BEAM_LENGTH, limit, row->clause, "L/n+c", {"L", counted, GW_BEAM_LENGTH},
            {"n", row->span_over, GW_RATIO}, {"c", row->plus_m, GW_BEAM_LENGTH});
    if (!capped) return limit;
    gw_used_add(&engine->used, &cap->row);
    GW_STEP(engine, "y_limit", GW_BEAM_LENGTH, fmin(limit, cap->deflection_m), cap->clause, "min(y_limit, c)",
            {"y_limit", limit, GW_BEAM_LENGTH}, {"c", cap->deflection_m, GW_BEAM_LENGTH});
    return fmin(limit, cap->deflection_m);
}

double gw_edge_of_simple_span(double deflection, double length, double span)
{
    const double share = length / span * (length / span);
    return deflection * share * (6 - share) / 5;
}

double gw_edge_under_moment(double moment, double length) { return fabs(moment) * length * length / 8; }

void gw_simple_span(struct gw_simple_span *out, double line_load, double span, double stiffness)
{
    const double w = line_load, l = span;
    *out = (struct gw_simple_span){w * l * l / 8, w * l / 2, 5 * w * l * l * l * l / 384 / stiffness};
}

double gw_required_inertia(double line_load, double span, double elastic_modulus, double deflection,
                           struct gw_engine *engine)
{
    const double inertia = 5 * line_load * pow(span, 4) / (384 * elastic_modulus * deflection);
    GW_STEP(engine, "I_required", GW_BEAM_INERTIA, inertia, "simple span, uniform load", "5*w*L^4/(384*E*y)",
            {"w", line_load, GW_LINE_LOAD}, {"L", span, GW_BEAM_LENGTH}, {"E", elastic_modulus, GW_BEAM_STRESS},
            {"y", deflection, GW_BEAM_LENGTH});
    return inertia;
}

double gw_required_modulus(double line_load, double span, double allowable_stress, struct gw_engine *engine)
{
    const double modulus = line_load * span * span / (8 * allowable_stress);
    GW_STEP(engine, "S_required", GW_BEAM_MODULUS, modulus, "simple span, uniform load", "w*L^2/(8*f)",
            {"w", line_load, GW_LINE_LOAD}, {"L", span, GW_BEAM_LENGTH}, {"f", allowable_stress, GW_BEAM_STRESS});
    return modulus;
}

/* One span or overhang. */
struct bay {
    double from, to;
    bool cantilever;
    double deflection, limit, used;
};

static void measure(struct bay *bay, const struct gw_member *in, const struct gw_member_result *out,
                    struct gw_engine *engine)
{
    bay->deflection = gw_beam_deflection_between(&out->solution, bay->from, bay->to).value;
    bay->limit = gw_deflection_limit(bay->to - bay->from, bay->cantilever, in->capped, engine);
    bay->used = fabs(bay->deflection) / bay->limit;
}

/* Bay i of n + 1: before the first support, between them, after the last; false where there is none. */
static bool find_bay(struct bay *bay, const struct gw_member_result *out, size_t i)
{
    const struct gw_beam_result *beam = &out->solution;
    const size_t n = beam->n_supports;
    *bay = (struct bay){.from = i ? beam->supports[i - 1] : 0, .to = i < n ? beam->supports[i] : out->beam.length};
    bay->cantilever = i == 0 || i == n;
    return bay->to > bay->from;
}

void gw_member_limit(struct gw_member_result *out, const struct gw_member *in, struct gw_engine *engine)
{
    struct gw_trace *trace = engine->trace;
    struct bay bay, worst = {.used = -1};
    engine->trace = NULL; /* only the bay that governs is derived */
    for (size_t i = 0; i <= out->solution.n_supports; i++) {
        if (!find_bay(&bay, out, i)) continue;
        measure(&bay, in, out, engine);
        if (bay.used > worst.used * (1 + GW_HAIR)) worst = bay;
    }
    engine->trace = trace;
    measure(&worst, in, out, engine);
    out->limit_span = worst.to - worst.from;
    out->limit_deflection = worst.deflection;
    out->limit = worst.limit;
    out->utilization = worst.used;
    GW_STEP(engine, "use", GW_RATIO, worst.used, "deflection over its limit", "abs(y)/y_limit",
            {"y", worst.deflection, GW_BEAM_LENGTH}, {"y_limit", worst.limit, GW_BEAM_LENGTH});
    if (in->n_segments != 1) return;
    out->inertia_required = worst.used * in->segments[0].inertia;
    GW_STEP(engine, "I_required", GW_BEAM_INERTIA, out->inertia_required, "deflection over its limit", "use*I",
            {"use", worst.used, GW_RATIO}, {"I", in->segments[0].inertia, GW_BEAM_INERTIA});
}
