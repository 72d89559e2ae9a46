/* Steady pressure of a vented cavity: the same air passes the vents and the inner leaks. */
#include "weather_internal.h"

static enum gw_status check(const struct gw_equalization_case *in, double exponent, struct gw_engine *engine)
{
    const struct gw_cavity_exponent *row = &engine->tables->cavity_exponent[GW_ROW_CAVITY_EXPONENT_VENTS];
    enum gw_status status = weather_positive("vent_to_leak", in->vent_to_leak, engine);
    if (!status) status = weather_positive("exponent", exponent, engine);
    if (!status && gw_given(in->pressure) && !isfinite(in->pressure))
        status = gw_refuse(engine, GW_BAD_VALUE, "pressure", "pressure must be finite");
    if (status) return status;
    if (exponent < row->least || exponent > row->most)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "exponent",
                         "air through openings goes with the pressure to the power 0.5 (orifice) to 1 (laminar)");
    if (gw_given(in->target_share) && !(in->target_share > 0 && in->target_share < 1))
        return gw_refuse(engine, GW_BAD_VALUE, "target_share", "a share lies between 0 and 1");
    return GW_OK;
}

static void find_share(struct gw_equalization_result *out, const struct gw_equalization_case *in, double n,
                       struct gw_engine *engine)
{
    out->cladding_share = 1 / (1 + pow(in->vent_to_leak, 1 / n));
    out->cavity_share = 1 - out->cladding_share;
    GW_STEP(engine, "s", GW_RATIO, out->cladding_share, "continuity of steady flow", "1/(1+R^(1/n))",
            {"R", in->vent_to_leak, GW_RATIO}, {"n", n, GW_RATIO});
    if (!gw_given(in->pressure)) return;
    out->cladding = out->cladding_share * in->pressure;
    GW_STEP(engine, "p_cladding", GW_PRESSURE, out->cladding, "continuity of steady flow", "s*p",
            {"s", out->cladding_share, GW_RATIO}, {"p", in->pressure, GW_PRESSURE});
}

enum gw_status gw_equalization(struct gw_equalization_result *out, const struct gw_equalization_case *in,
                               struct gw_engine *engine)
{
    const struct gw_cavity_exponent *row =
        GW_USE(engine, &engine->tables->cavity_exponent[GW_ROW_CAVITY_EXPONENT_VENTS]);
    const double n = gw_given(in->exponent) ? in->exponent : row->usual;
    out->cladding = out->vent_to_leak_needed = GW_ABSENT;
    enum gw_status status = check(in, n, engine);
    if (status) return status;
    find_share(out, in, n, engine);
    if (!gw_given(in->target_share)) return GW_OK;
    out->vent_to_leak_needed = pow(1 / in->target_share - 1, n);
    GW_STEP(engine, "R_needed", GW_RATIO, out->vent_to_leak_needed, "continuity of steady flow", "(1/s-1)^n",
            {"s", in->target_share, GW_RATIO}, {"n", n, GW_RATIO});
    return GW_OK;
}
