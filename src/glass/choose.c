/* A lite under all its loads; the lightest make-up; the greatest pressure and width. */
#include "galeward/lite.h"

#include "tables_data.h"

static const char SLOPED[] = "IBC 2404.2, sloped glass";

static double larger(double a, double b) { return gw_given(a) && !(b > a) ? a : b; }

double gw_lite_deflection_limit(double limit, double ratio, double width, double height)
{
    const double by_side = gw_given(ratio) ? fmin(width, height) / ratio : GW_ABSENT;
    return gw_given(limit) && !(by_side < limit) ? limit : by_side;
}

enum gw_status gw_lite_check(struct gw_lite_verdict *out, const struct gw_lite *in, const struct gw_lite_demand *demand,
                             struct gw_engine *engine)
{
    out->n = demand->n;
    out->governing = 0;
    out->strength_use = out->deflection_use = GW_ABSENT;
    for (int i = 0; i < demand->n; i++) {
        struct gw_lite_result *r = &out->results[i];
        enum gw_status status = gw_lite_assess(r, in, &demand->loads[i], engine);
        if (status != GW_OK) return status;
        if (!gw_given(r->utilization)) continue;
        if (i && r->utilization > out->results[out->governing].utilization) out->governing = i;
        out->strength_use = larger(r->utilization, out->strength_use);
        if (gw_given(demand->deflection_limit))
            out->deflection_use = larger(r->deflection / demand->deflection_limit, out->deflection_use);
    }
    out->passes = !(out->strength_use > 1) && !(out->deflection_use > 1);
    return GW_OK;
}

/* Slope ---------------------------------------------------------------------------------------------------------------
 */

static enum gw_status check_sloped(const struct gw_sloped *in, struct gw_engine *engine)
{
    const struct gw_glass_slope_rule *rule = GW_USE(engine, &engine->tables->glass_slope_rule[0]);
    const double upright = acos(0);
    if (!(in->slope >= 0 && in->slope <= upright))
        return gw_refuse(engine, GW_BAD_VALUE, "slope", "from 0 (flat) to 90 degrees");
    if (in->slope >= upright - rule->from_vertical_rad)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "slope",
                         "within {} of vertical glass takes the wind alone: leave slope out",
                         gw_of_quantity(GW_ANGLE, rule->from_vertical_rad));
    if (!gw_given(in->wind_in) || !gw_given(in->wind_out))
        return gw_refuse(engine, GW_MISSING, gw_given(in->wind_in) ? "pressure_out" : "pressure",
                         "sloped glass needs wind both inward and outward");
    if (!gw_given(in->snow)) return gw_refuse(engine, GW_MISSING, "snow", "the snow load on the glass; 0 if none");
    return GW_OK;
}

enum gw_status gw_lite_sloped(struct gw_lite_demand *out, const struct gw_sloped *in, struct gw_engine *engine)
{
    const struct gw_glass_duration *durations = &engine->tables->glass_duration[0];
    enum gw_status status = check_sloped(in, engine);
    if (status != GW_OK) return status;
    double dead = in->dead;
    if (in->slope > engine->tables->glass_slope_rule[0].cosine_above_rad) {
        dead *= cos(in->slope);
        gw_trace_note(engine, "D", SLOPED, "dead load times the cosine of the slope");
    }
    out->n = 0;
    for (size_t i = 0; i < GW_N_GLASS_SLOPED; i++) {
        const struct gw_glass_sloped *row = GW_USE(engine, &engine->tables->glass_sloped[i]);
        double inward = row->wind_in * in->wind_in + row->dead * dead + row->snow * in->snow;
        double load = row->wind_out > 0 ? -(row->wind_out * in->wind_out + row->dead * dead) : inward;
        GW_STEP(engine, "F_g", GW_PRESSURE, load, SLOPED, "c_i*W_i-c_o*(W_o-D)+c_d*D+c_s*S",
                {"c_i", row->wind_in, GW_RATIO}, {"W_i", in->wind_in, GW_PRESSURE}, {"c_o", row->wind_out, GW_RATIO},
                {"W_o", in->wind_out, GW_PRESSURE}, {"D", dead, GW_PRESSURE},
                {"c_d", row->wind_out > 0 ? 0 : row->dead, GW_RATIO}, {"c_s", row->snow, GW_RATIO},
                {"S", in->snow, GW_PRESSURE});
        out->loads[out->n++] = (struct gw_lite_load){
            .name = row->name, .pressure = load, .duration = row->is_long == GW_YES ? durations->long_s : GW_ABSENT};
    }
    return GW_OK;
}

/* Lightest ------------------------------------------------------------------------------------------------------------
 */

static double use_of(const struct gw_lite_verdict *v) { return larger(v->deflection_use, v->strength_use); }

static void keep(struct gw_lite_choices *out, const struct gw_lite_choice *choice)
{
    int at = out->n;
    while (at > 0 && choice->weight < out->items[at - 1].weight) at--;
    if (at == GW_CHOICES) return;
    if (out->n < GW_CHOICES) out->n++;
    for (int i = out->n - 1; i > at; i--) out->items[i] = out->items[i - 1];
    out->items[at] = *choice;
}

enum gw_status gw_lite_lightest(struct gw_lite_choices *out, const struct gw_lite *like, const struct gw_make_up *list,
                                size_t n, const struct gw_lite_demand *demand, struct gw_engine *engine)
{
    struct gw_lite lite = *like;
    lite.use_only = true;
    *out = (struct gw_lite_choices){.n = 0};
    for (size_t i = 0; i < n; i++) {
        struct gw_lite_choice choice = {.index = (int)i};
        lite.make_up = list[i];
        enum gw_status status = gw_lite_check(&choice.verdict, &lite, demand, engine);
        out->tried++;
        if (status == GW_OUTSIDE_METHOD) {
            out->refused++;
            continue;
        }
        if (status != GW_OK) return status;
        choice.weight = gw_make_up_weight(&list[i], engine);
        choice.use = use_of(&choice.verdict);
        if (choice.verdict.passes) keep(out, &choice);
        else out->failed++;
    }
    return GW_OK;
}

/* Greatest ------------------------------------------------------------------------------------------------------------
 */

enum { BISECTIONS = 40 };

/* The lower resistance of the routes that may govern: which of them does under the load given may change with it. */
static double strength(const struct gw_lite_result *r, enum gw_glass_route asked)
{
    const bool standard = r->standard.covered && !(asked == GW_ROUTE_PRINCIPLES && r->principles.covered);
    const bool principles = r->principles.covered && !(asked == GW_ROUTE_STANDARD && r->standard.covered);
    return fmin(standard ? r->standard.resistance : INFINITY, principles ? r->principles.resistance : INFINITY);
}

static enum gw_status bend(double *deflection, double pressure, const struct gw_lite *in,
                           const struct gw_lite_load *load, struct gw_engine *engine)
{
    struct gw_lite_result r;
    const struct gw_lite_load at = {load->name, pressure, load->duration};
    enum gw_status status = gw_lite_assess(&r, in, &at, engine);
    if (status == GW_OK) *deflection = r.deflection;
    return status;
}

/* A climatic load may leave nothing. From a pressure that the limit allows on, deflection grows: bisection up to the
 * strength. */
enum gw_status gw_lite_greatest_pressure(double *out, const struct gw_lite *in, const struct gw_lite_load *load,
                                         double deflection_limit, struct gw_engine *engine)
{
    struct gw_lite_result r;
    struct gw_lite lite = *in;
    const double sign = load->pressure < 0 ? -1 : 1;
    double low = 0, high, deflection;
    lite.use_only = false;
    enum gw_status status = gw_lite_assess(&r, &lite, load, engine);
    if (status != GW_OK) return status;
    *out = high = strength(&r, in->route);
    if (!gw_given(deflection_limit)) return GW_OK;
    lite.use_only = true;
    status = bend(&deflection, sign * high, &lite, load, engine);
    if (status != GW_OK || deflection <= deflection_limit) return status;
    status = bend(&deflection, 0, &lite, load, engine);
    if (status == GW_OK && deflection > deflection_limit) high = 0;
    for (int i = 0; i < BISECTIONS && status == GW_OK && high > 0; i++) {
        double middle = (low + high) / 2;
        status = bend(&deflection, sign * middle, &lite, load, engine);
        if (deflection <= deflection_limit) low = middle;
        else high = middle;
    }
    *out = low;
    return status;
}

/* What the method does not reach does not take the demand. */
static bool takes(double width, const struct gw_lite *in, const struct gw_lite_demand *demand, enum gw_status *status,
                  struct gw_engine *engine)
{
    struct gw_lite_verdict v;
    struct gw_lite lite = *in;
    lite.width = width;
    lite.use_only = true;
    *status = gw_lite_check(&v, &lite, demand, engine);
    const bool passes = *status == GW_OK && v.passes;
    if (*status == GW_OUTSIDE_METHOD) *status = GW_OK;
    return passes;
}

/* In steps of a tenth over all widths that the plate solution covers: under a climatic load a narrow, stiff unit may
 * fail where a wider one passes. Then bisection between the widest that passes and the next. */
enum gw_status gw_lite_greatest_width(double *out, const struct gw_lite *in, const struct gw_lite_demand *demand,
                                      struct gw_engine *engine)
{
    const double step = 1.1, most = gw_lite_widest(in, engine);
    const int steps = (int)ceil(2 * log(most / in->height) / log(step)); /* from height/5 to 5 heights */
    double low = 0, high = 0;
    enum gw_status status = GW_OK;
    for (int i = 0; i <= steps && status == GW_OK; i++) {
        double width = i < steps ? in->height * in->height / most * pow(step, i) : most;
        if (takes(width, in, demand, &status, engine)) low = width, high = 0;
        else if (low > 0 && !(high > 0)) high = width;
    }
    for (int i = 0; i < BISECTIONS && high > 0 && status == GW_OK; i++) {
        double middle = (low + high) / 2;
        if (takes(middle, in, demand, &status, engine)) low = middle;
        else high = middle;
    }
    *out = low;
    return status;
}

double gw_lite_widest(const struct gw_lite *in, const struct gw_engine *engine)
{
    return in->height * engine->tables->plate_limits[0].aspect;
}
