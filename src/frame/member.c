/* From lites and pressure to the loads of a member, and the member as a beam. */
#include "frame/member_internal.h"

#include "galeward/shedding.h"

static const char SHEDDING[] = "45-degree lines from the corners", TRIBUTARY[] = "half of each lite";

/* Loads
 * ------------------------------------------------------------------------------------------------------------------
 */

static void add_load(struct gw_member_result *out, const struct gw_beam_load *load)
{
    out->loads[out->beam.n_loads++] = *load; /* check_columns() has seen to the room */
}

static void add_spread(struct gw_member_result *out, double from, double to, double start, double end)
{
    if (to - from > out->beam.length * GW_HAIR_DRAWN)
        add_load(out, &(struct gw_beam_load){GW_BEAM_SPREAD, from, to, start, end});
}

/* Up over a ramp, level, and down: along one edge of a lite. */
static void add_edge(struct gw_member_result *out, double from, double to, double ramp, double peak)
{
    add_spread(out, from, from + ramp, 0, peak);
    add_spread(out, from + ramp, to - ramp, peak, peak);
    add_spread(out, to - ramp, to, peak, 0);
}

static void add_rail(struct gw_member_result *out, double level, double force)
{
    size_t i = 0;
    while (i < out->n_rails && out->rail_levels[i] < level - GW_HAIR_DRAWN * out->beam.length) i++;
    if (i == out->n_rails || out->rail_levels[i] > level + GW_HAIR_DRAWN * out->beam.length) {
        for (size_t k = out->n_rails++; k > i; k--) {
            out->rail_levels[k] = out->rail_levels[k - 1];
            out->rail_loads[k] = out->rail_loads[k - 1];
        }
        out->rail_levels[i] = level;
        out->rail_loads[i] = 0;
    }
    out->rail_loads[i] += force;
}

static void peak_step(struct gw_engine *engine, double peak, double pressure, double b, double h)
{
    GW_STEP(engine, "q", GW_LINE_LOAD, peak, SHEDDING, "p*min(b, h)/2", {"p", pressure, GW_BEAM_STRESS},
            {"b", b, GW_BEAM_LENGTH}, {"h", h, GW_BEAM_LENGTH});
}

/* One lite beside a vertical: its edge's load, and half of what its head and sill give to their rails. */
static void shed_lite(struct gw_member_result *out, const struct gw_member *in, double from, double to, double width,
                      struct gw_engine *engine)
{
    const double height = to - from, ramp = gw_shed_ramp(height, width), peak = in->pressure * ramp;
    const double rail = gw_shed_end(peak, width, ramp);
    peak_step(engine, peak, in->pressure, width, height);
    GW_STEP(engine, "T", GW_FORCE, rail, SHEDDING, "q*(b-min(b, h)/2)/2", {"q", peak, GW_LINE_LOAD},
            {"b", width, GW_BEAM_LENGTH}, {"h", height, GW_BEAM_LENGTH});
    add_edge(out, from, to, ramp, peak);
    add_rail(out, from, rail);
    add_rail(out, to, rail);
}

/* The upper end of lite i; the last one's is the member's. */
static double top_of(const struct gw_lite_column *column, size_t i, double from, double span)
{
    return i + 1 == column->n ? span : from + column->heights[i];
}

static bool same_height(double a, double b) { return fabs(a - b) <= GW_HAIR_DRAWN * b; }

/* A lite of this size was shed before: earlier on this side, or on the left with the same width. */
static bool seen_before(const struct gw_member *in, const struct gw_lite_column *column, size_t i)
{
    for (size_t k = 0; k < i; k++)
        if (same_height(column->heights[k], column->heights[i])) return true;
    if (column == &in->left || !same_height(in->left.width, column->width)) return false;
    for (size_t k = 0; k < in->left.n; k++)
        if (same_height(in->left.heights[k], column->heights[i])) return true;
    return false;
}

static void shed_column(struct gw_member_result *out, const struct gw_member *in, const struct gw_lite_column *column,
                        struct gw_engine *engine)
{
    struct gw_trace *trace = engine->trace;
    double from = 0;
    if (!(column->width > 0)) return;
    for (size_t i = 0; i < column->n; i++) {
        const double to = top_of(column, i, from, in->span);
        if (seen_before(in, column, i)) engine->trace = NULL; /* lites of one size are derived once */
        shed_lite(out, in, from, to, column->width, engine);
        engine->trace = trace;
        from = to;
    }
}

static void load_vertical(struct gw_member_result *out, const struct gw_member *in, struct gw_engine *engine)
{
    const double left = in->left.width, right = in->right.width;
    if (in->shedding == GW_UNIFORM) {
        const double w = in->pressure * (left + right) / 2;
        GW_STEP(engine, "w", GW_LINE_LOAD, w, TRIBUTARY, "p*(b1+b2)/2", {"p", in->pressure, GW_BEAM_STRESS},
                {"b1", left, GW_BEAM_LENGTH}, {"b2", right, GW_BEAM_LENGTH});
        add_spread(out, 0, in->span, w, w);
        return;
    }
    shed_column(out, in, &in->left, engine);
    shed_column(out, in, &in->right, engine);
    for (size_t i = 0; i < out->n_rails; i++)
        add_load(out, &(struct gw_beam_load){GW_BEAM_FORCE, out->rail_levels[i], 0, out->rail_loads[i], 0});
}

static void load_horizontal(struct gw_member_result *out, const struct gw_member *in, struct gw_engine *engine)
{
    const double heights[2] = {in->height_above, in->height_below};
    if (in->shedding == GW_UNIFORM) {
        const double w = in->pressure * (heights[0] + heights[1]) / 2;
        GW_STEP(engine, "w", GW_LINE_LOAD, w, TRIBUTARY, "p*(h1+h2)/2", {"p", in->pressure, GW_BEAM_STRESS},
                {"h1", heights[0], GW_BEAM_LENGTH}, {"h2", heights[1], GW_BEAM_LENGTH});
        add_spread(out, 0, in->span, w, w);
        return;
    }
    for (int i = 0; i < 2; i++) {
        const double ramp = gw_shed_ramp(in->span, heights[i]);
        if (!(heights[i] > 0)) continue;
        peak_step(engine, in->pressure * ramp, in->pressure, in->span, heights[i]);
        add_edge(out, 0, in->span, ramp, in->pressure * ramp);
    }
}

/* Checks
 * -----------------------------------------------------------------------------------------------------------------
 */

static enum gw_status check_column(const struct gw_member *in, const struct gw_lite_column *column, const char *key,
                                   struct gw_engine *engine)
{
    double sum = 0;
    if (!(column->width >= 0 && isfinite(column->width)))
        return gw_refuse(engine, GW_MISSING, key,
                         "a vertical needs the width of the lites {} of it; 0 where there are none", gw_of_text(key));
    if (column->n > GW_MEMBER_LITES)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, key, "{} lites on one side; a member takes at most {}",
                         gw_of_count((long)column->n), gw_of_count(GW_MEMBER_LITES));
    for (size_t i = 0; i < column->n; i++) {
        if (!(column->heights[i] > 0 && isfinite(column->heights[i])))
            return gw_refuse(engine, GW_BAD_VALUE, key, "heights must be positive");
        sum += column->heights[i];
    }
    if (column->n == 0 && column->width > 0 && in->shedding == GW_TWO_WAY)
        return gw_refuse(engine, GW_MISSING, key, "two-way shedding needs the heights of the lites on the {}",
                         gw_of_text(key));
    if (column->n && !(fabs(sum - in->span) <= GW_HAIR_DRAWN * in->span))
        return gw_refuse(engine, GW_BAD_VALUE, key, "the heights on the {} do not add up to the span", gw_of_text(key));
    return GW_OK;
}

static enum gw_status check_vertical(const struct gw_member *in, struct gw_engine *engine)
{
    enum gw_status status = check_column(in, &in->left, "left", engine);
    if (!status) status = check_column(in, &in->right, "right", engine);
    if (!status && in->left.width + in->right.width <= 0)
        status = gw_refuse(engine, GW_BAD_VALUE, "left", "there is no glass on either side: nothing loads the member");
    return status;
}

static enum gw_status check_horizontal(const struct gw_member *in, struct gw_engine *engine)
{
    if (!(in->height_above >= 0 && isfinite(in->height_above)))
        return gw_refuse(engine, GW_MISSING, "height_above", "height_above is needed; 0 where there is no glass");
    if (!(in->height_below >= 0 && isfinite(in->height_below)))
        return gw_refuse(engine, GW_MISSING, "height_below", "height_below is needed; 0 where there is no glass");
    if (in->height_above + in->height_below > 0) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, "height_above",
                     "there is no glass above or below: nothing loads the member");
}

static enum gw_status check(const struct gw_member *in, struct gw_engine *engine)
{
    if (!(in->span > 0 && isfinite(in->span))) return gw_refuse(engine, GW_BAD_VALUE, "span", "span must be positive");
    if (!(in->pressure >= 0 && isfinite(in->pressure)))
        return gw_refuse(engine, GW_BAD_VALUE, "pressure", "pressure must be a magnitude");
    if (in->orientation == GW_ORIENTATION_UNSET || in->shedding == GW_SHEDDING_UNSET)
        return gw_refuse(engine, GW_MISSING, in->orientation ? "shedding" : "orientation",
                         "orientation and shedding are needed");
    return in->orientation == GW_VERTICAL ? check_vertical(in, engine) : check_horizontal(in, engine);
}

/* The member
 * -------------------------------------------------------------------------------------------------------------
 */

static void make_beam(struct gw_member_result *out, const struct gw_member *in)
{
    const bool held = in->n_supports + in->n_clamps > 0;
    out->ends[0] = 0;
    out->ends[1] = in->span;
    out->beam = (struct gw_beam){.length = in->span,
                                 .supports = held ? in->supports : out->ends,
                                 .n_supports = held ? in->n_supports : 2,
                                 .clamps = in->clamps,
                                 .n_clamps = in->n_clamps,
                                 .hinges = in->hinges,
                                 .n_hinges = in->n_hinges,
                                 .segments = in->segments,
                                 .n_segments = in->n_segments,
                                 .loads = out->loads};
}

static void edges_of_column(struct gw_member_result *out, const struct gw_lite_column *column, double span)
{
    double from = 0;
    if (!(column->width > 0)) return;
    for (size_t i = 0; i < column->n; i++) {
        const double to = top_of(column, i, from, span);
        out->edges[out->n_edges++] = gw_beam_from_chord(&out->solution, from, to).value;
        from = to;
    }
}

static void find_edges(struct gw_member_result *out, const struct gw_member *in)
{
    const double heights[2] = {in->height_above, in->height_below};
    if (in->orientation == GW_VERTICAL) {
        edges_of_column(out, &in->left, in->span);
        edges_of_column(out, &in->right, in->span);
        return;
    }
    for (int i = 0; i < 2; i++)
        if (heights[i] > 0) out->edges[out->n_edges++] = gw_beam_from_chord(&out->solution, 0, in->span).value;
}

enum gw_status gw_member_solve(struct gw_member_result *out, const struct gw_member *in, struct gw_engine *engine)
{
    enum gw_status status = check(in, engine);
    if (status) return status;
    out->n_rails = out->n_edges = 0;
    out->limit_span = out->limit_deflection = out->limit = out->utilization = out->inertia_required = GW_ABSENT;
    make_beam(out, in);
    if (in->orientation == GW_VERTICAL) load_vertical(out, in, engine);
    else load_horizontal(out, in, engine);
    status = gw_beam_solve(&out->solution, &out->beam, engine);
    if (status) return status;
    find_edges(out, in);
    if (in->limited) gw_member_limit(out, in, engine);
    return GW_OK;
}
