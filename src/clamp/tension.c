/* Torque to tension, and what suction leaves of it. */
#include "clamp/clamp_internal.h"

#include "tables_data.h"

static const char LAW[] = "T = K D F";
static const char LINE[] = "suction on the plate";

static enum gw_status check(const struct gw_clamp_case *in, struct gw_engine *engine)
{
    const struct {
        const char *key;
        double value;
    } given[] = {{"torque_later", in->torque_later},
                 {"forming_torque", in->forming_torque},
                 {"forming_torque_later", in->forming_torque_later}},
      positive[] = {{"diameter", in->diameter}, {"nut_factor", in->nut_factor}, {"torque", in->torque}},
      with[] = {{"pressure", in->pressure}, {"spacing", in->spacing}, {"tributary_width", in->tributary_width}};
    enum gw_status status = GW_OK;
    for (int i = 0; i < 3 && !status; i++) status = gw_clamp_positive(positive[i].key, positive[i].value, engine);
    for (int i = 0; i < 3 && !status; i++) status = gw_clamp_not_below_zero(given[i].key, given[i].value, engine);
    for (int i = 0; i < 3 && !status && gw_given(in->pressure); i++)
        status = gw_clamp_positive(with[i].key, with[i].value, engine);
    if (!status && gw_given(in->safety_factor)) status = gw_clamp_positive("safety_factor", in->safety_factor, engine);
    if (status || !gw_given(in->retained)) return status;
    if (gw_given(in->torque_later))
        return gw_refuse(engine, GW_BAD_VALUE, "retained", "give retained or torque_later, not both");
    if (in->retained > 0 && in->retained <= 1) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, "retained", "retained is what is left of 1: 0.8 or 80 %");
}

static double tension(const char *symbol, const struct gw_clamp_case *in, double torque, double forming,
                      struct gw_engine *engine)
{
    const double f = fmax(torque - forming, 0) / (in->nut_factor * in->diameter);
    GW_STEP(engine, symbol, GW_FORCE, f, LAW, "max(T-T_p, 0)/(K*D)", {"T", torque, GW_BENDING},
            {"T_p", forming, GW_BENDING}, {"K", in->nut_factor, GW_RATIO}, {"D", in->diameter, GW_THICKNESS});
    return f;
}

/* What is left: by a torque read later, or by the share that is. */
static void find_later(struct gw_clamp_result *out, const struct gw_clamp_case *in, double forming,
                       struct gw_engine *engine)
{
    const double later = gw_given(in->forming_torque_later) ? in->forming_torque_later : forming;
    if (gw_given(in->torque_later)) {
        out->preload_later = tension("F_1", in, in->torque_later, later, engine);
        out->retained = out->preload > 0 ? out->preload_later / out->preload : GW_ABSENT;
        if (out->preload > 0)
            GW_STEP(engine, "R", GW_RATIO, out->retained, LAW, "F_1/F_0", {"F_1", out->preload_later, GW_FORCE},
                    {"F_0", out->preload, GW_FORCE});
        return;
    }
    out->retained = in->retained;
    if (!gw_given(in->retained)) return;
    out->preload_later = out->preload * in->retained;
    GW_STEP(engine, "F_1", GW_FORCE, out->preload_later, LAW, "R*F_0", {"R", in->retained, GW_RATIO},
            {"F_0", out->preload, GW_FORCE});
}

static void find_ratios(struct gw_clamp_result *out, double left, struct gw_engine *engine)
{
    out->ratio_start = out->preload / out->suction;
    GW_STEP(engine, "r_0", GW_RATIO, out->ratio_start, LINE, "F_0/N", {"F_0", out->preload, GW_FORCE},
            {"N", out->suction, GW_FORCE});
    if (gw_given(out->preload_later)) {
        out->ratio_later = out->preload_later / out->suction;
        GW_STEP(engine, "r_1", GW_RATIO, out->ratio_later, LINE, "F_1/N", {"F_1", out->preload_later, GW_FORCE},
                {"N", out->suction, GW_FORCE});
    }
    out->screw_upper = out->preload + out->suction;
    GW_STEP(engine, "F_most", GW_FORCE, out->screw_upper, "soft joint", "F_0+N", {"F_0", out->preload, GW_FORCE},
            {"N", out->suction, GW_FORCE});
    out->clamp_lower = left - out->suction;
    GW_STEP(engine, "F_left", GW_FORCE, out->clamp_lower, "soft joint", "F-N", {"F", left, GW_FORCE},
            {"N", out->suction, GW_FORCE});
}

static void find_suction(struct gw_clamp_result *out, const struct gw_clamp_case *in, double forming,
                         struct gw_engine *engine)
{
    const struct gw_clamp_practice *practice = &engine->tables->clamp_practice[GW_ROW_CLAMP_PRACTICE_PLATE];
    const double factor = gw_given(in->safety_factor) ? in->safety_factor : GW_USE(engine, practice)->safety_factor;
    const double left = gw_given(out->preload_later) ? out->preload_later : out->preload;
    const double retained = gw_given(out->retained) ? out->retained : 1;
    out->suction = in->pressure * in->tributary_width * in->spacing;
    GW_STEP(engine, "N", GW_FORCE, out->suction, LINE, "p*b*s", {"p", in->pressure, GW_STRESS},
            {"b", in->tributary_width, GW_THICKNESS}, {"s", in->spacing, GW_THICKNESS});
    find_ratios(out, left, engine);
    if (retained > 0) {
        out->torque_required = in->nut_factor * in->diameter * factor * out->suction / retained + forming;
        GW_STEP(engine, "T_needed", GW_BENDING, out->torque_required, LAW, "K*D*S*N/R+T_p",
                {"K", in->nut_factor, GW_RATIO}, {"D", in->diameter, GW_THICKNESS}, {"S", factor, GW_RATIO},
                {"N", out->suction, GW_FORCE}, {"R", retained, GW_RATIO}, {"T_p", forming, GW_BENDING});
    }
    out->spacing_max = left / (factor * in->pressure * in->tributary_width);
    GW_STEP(engine, "s_most", GW_THICKNESS, out->spacing_max, LINE, "F/(S*p*b)", {"F", left, GW_FORCE},
            {"S", factor, GW_RATIO}, {"p", in->pressure, GW_STRESS}, {"b", in->tributary_width, GW_THICKNESS});
}

enum gw_status gw_clamp(struct gw_clamp_result *out, const struct gw_clamp_case *in, struct gw_engine *engine)
{
    *out = (struct gw_clamp_result){.preload = GW_ABSENT,
                                    .preload_later = GW_ABSENT,
                                    .retained = GW_ABSENT,
                                    .suction = GW_ABSENT,
                                    .ratio_start = GW_ABSENT,
                                    .ratio_later = GW_ABSENT,
                                    .torque_required = GW_ABSENT,
                                    .spacing_max = GW_ABSENT,
                                    .screw_upper = GW_ABSENT,
                                    .clamp_lower = GW_ABSENT};
    const enum gw_status status = check(in, engine);
    if (status) return status;
    const double forming = gw_given(in->forming_torque) ? in->forming_torque : 0;
    out->preload = tension("F_0", in, in->torque, forming, engine);
    find_later(out, in, forming, engine);
    if (gw_given(in->pressure)) find_suction(out, in, forming, engine);
    return GW_OK;
}
