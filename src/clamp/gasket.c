/* The glass edge between two gaskets, under suction. */
#include "clamp/clamp_internal.h"

#include "tables_data.h"

static const char EDGE[] = "glass edge between two gaskets";

static enum gw_status check(const struct gw_gasket_case *in, struct gw_engine *engine)
{
    enum gw_status status = gw_clamp_positive("edge_load", in->edge_load, engine);
    if (!status && !gw_given(in->pressure))
        status = gw_refuse(engine, GW_MISSING, "pressure", "{} is needed", gw_of_text("pressure"));
    if (!status) status = gw_clamp_not_below_zero("pressure", in->pressure, engine);
    if (!status) status = gw_clamp_positive("lite_width", in->lite_width, engine);
    if (status) return status;
    if (gw_given(in->retained) && !(in->retained > 0 && in->retained <= 1))
        return gw_refuse(engine, GW_BAD_VALUE, "retained", "retained is what is left of 1: 0.8 or 80 %");
    if (gw_given(in->stiffness_share) && !(in->stiffness_share >= 0 && in->stiffness_share <= 1))
        return gw_refuse(engine, GW_BAD_VALUE, "stiffness_share", "the inner gasket's share of both is 0 to 1");
    return GW_OK;
}

enum gw_status gw_gasket_load(struct gw_gasket_result *out, const struct gw_gasket_case *in, struct gw_engine *engine)
{
    *out = (struct gw_gasket_result){
        .edge_load_later = GW_ABSENT, .suction_edge = GW_ABSENT, .inner = GW_ABSENT, .outer = GW_ABSENT};
    const enum gw_status status = check(in, engine);
    if (status) return status;
    const struct gw_clamp_practice *practice = &engine->tables->clamp_practice[GW_ROW_CLAMP_PRACTICE_PLATE];
    const double share =
        gw_given(in->stiffness_share) ? in->stiffness_share : GW_USE(engine, practice)->stiffness_share;
    const double retained = gw_given(in->retained) ? in->retained : 1;
    out->edge_load_later = retained * in->edge_load;
    GW_STEP(engine, "g_1", GW_SHEAR_FLOW, out->edge_load_later, EDGE, "R*g_0", {"R", retained, GW_RATIO},
            {"g_0", in->edge_load, GW_SHEAR_FLOW});
    out->suction_edge = in->pressure * in->lite_width / 2;
    GW_STEP(engine, "w", GW_SHEAR_FLOW, out->suction_edge, EDGE, "p*b/2", {"p", in->pressure, GW_STRESS},
            {"b", in->lite_width, GW_THICKNESS});
    out->inner = out->edge_load_later - share * out->suction_edge;
    GW_STEP(engine, "g_inner", GW_SHEAR_FLOW, out->inner, EDGE, "g_1-k*w", {"g_1", out->edge_load_later, GW_SHEAR_FLOW},
            {"k", share, GW_RATIO}, {"w", out->suction_edge, GW_SHEAR_FLOW});
    out->outer = out->edge_load_later + (1 - share) * out->suction_edge;
    GW_STEP(engine, "g_outer", GW_SHEAR_FLOW, out->outer, EDGE, "g_1+(1-k)*w",
            {"g_1", out->edge_load_later, GW_SHEAR_FLOW}, {"k", share, GW_RATIO},
            {"w", out->suction_edge, GW_SHEAR_FLOW});
    out->inner_opens = !(out->inner > 0);
    return GW_OK;
}
