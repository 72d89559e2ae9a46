/* Structural test: preload, proof, permanent set, deflection at design pressure. */
#include "weather_internal.h"

#include "galeward/member.h"

static const struct gw_proof_loads *protocol_row(enum gw_proof_protocol protocol, struct gw_engine *engine)
{
    const enum gw_proof_protocol wanted = protocol == GW_PROOF_UNSET ? GW_PROOF_E330 : protocol;
    for (size_t i = 0; i < GW_N_PROOF_LOADS; i++)
        if (engine->tables->proof_loads[i].protocol == (int)wanted)
            return GW_USE(engine, &engine->tables->proof_loads[i]);
    gw_refuse(engine, GW_BAD_VALUE, "protocol", "no such protocol");
    return NULL;
}

static const struct gw_proof_class *class_row(enum gw_water_rule rule, struct gw_engine *engine)
{
    for (size_t i = 0; i < GW_N_PROOF_CLASS; i++)
        if (engine->tables->proof_class[i].class == (int)rule) return GW_USE(engine, &engine->tables->proof_class[i]);
    gw_refuse(engine, GW_MISSING, "basis", "whose permanent set and deflection is not given");
    return NULL;
}

static void load(struct gw_proof_result *out, const struct gw_proof_case *in, const struct gw_proof_loads *row,
                 struct gw_engine *engine)
{
    out->hold = row->hold_s;
    out->preload = row->preload * in->positive.pa;
    out->proof_positive = row->proof * in->positive.pa;
    out->proof_negative = row->proof * in->negative.pa;
    GW_STEP(engine, "p_preload", GW_PRESSURE, out->preload, row->clause, "f*p", {"f", row->preload, GW_RATIO},
            {"p", in->positive.pa, GW_PRESSURE});
    GW_STEP(engine, "p_proof", GW_PRESSURE, out->proof_positive, row->clause, "f*p", {"f", row->proof, GW_RATIO},
            {"p", in->positive.pa, GW_PRESSURE});
    GW_STEP(engine, "p_proof_out", GW_PRESSURE, out->proof_negative, row->clause, "f*p", {"f", row->proof, GW_RATIO},
            {"p", in->negative.pa, GW_PRESSURE});
}

/* Both branches give the same, to a tenth of a percent, where they meet. */
static void limit_deflection(struct gw_proof_result *out, double span, const struct gw_proof_class *row,
                             struct gw_engine *engine)
{
    const struct gw_framing_deflection *rule =
        &engine->tables->framing_deflection[GW_ROW_FRAMING_DEFLECTION_UP_TO_13_FT_6_IN];
    out->deflection_limit = GW_ABSENT;
    if (row->deflects != GW_YES) {
        gw_trace_note(engine, "deflection", row->row.source, "this class reports the deflection without a limit");
        return;
    }
    if (row->long_span == GW_YES) {
        out->deflection_limit = gw_deflection_limit(span, false, false, engine);
        return;
    }
    gw_used_add(&engine->used, &rule->row);
    out->deflection_limit = span / rule->span_over;
    GW_STEP(engine, "w_limit", GW_LENGTH, out->deflection_limit, rule->clause, "L/r", {"L", span, GW_LENGTH},
            {"r", rule->span_over, GW_RATIO});
}

enum gw_status gw_proof(struct gw_proof_result *out, const struct gw_proof_case *in, struct gw_engine *engine)
{
    enum gw_status status = weather_magnitude("pressure_positive", in->positive.pa, engine);
    if (!status) status = weather_magnitude("pressure_negative", in->negative.pa, engine);
    if (!status) status = weather_positive("span", in->span, engine);
    if (status) return status;
    const struct gw_proof_loads *protocol = protocol_row(in->protocol, engine);
    const struct gw_proof_class *row = protocol ? class_row(in->rule, engine) : NULL;
    if (!row) return engine->fault.status;
    load(out, in, protocol, engine);
    out->set_limit = row->set * in->span;
    GW_STEP(engine, "set", GW_LENGTH, out->set_limit, row->row.source, "s*L", {"s", row->set, GW_RATIO},
            {"L", in->span, GW_LENGTH});
    limit_deflection(out, in->span, row, engine);
    out->framing_limit = gw_deflection_limit(in->span, false, false, engine);
    return GW_OK;
}
