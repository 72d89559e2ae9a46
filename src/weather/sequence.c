/* The tests of a laboratory mock-up in their order, with their pressures. */
#include "weather_internal.h"

/* What the steps draw on, worked out once. */
struct plan {
    struct gw_sequence_case in;
    struct gw_proof_result proof;
    double water, drift, after_proof, wet; /* Pa, m, m, s */
};

static enum gw_status plan_water(struct plan *plan, struct gw_engine *engine)
{
    struct gw_water_result required;
    const struct gw_water_case in = {
        .positive = plan->in.positive, .rule = plan->in.rule, .share = GW_ABSENT, .floor = GW_ABSENT, .cap = GW_ABSENT};
    const struct gw_water_spray *spray = &engine->tables->water_spray[GW_ROW_WATER_SPRAY_SPRAY];
    plan->wet = GW_USE(engine, spray)->steady_s;
    plan->water = plan->in.water;
    if (gw_given(plan->water)) return weather_positive("water_pressure", plan->water, engine);
    enum gw_status status = gw_required_water(&required, &in, engine);
    plan->water = required.pressure;
    return status;
}

static enum gw_status plan_air(struct plan *plan, struct gw_engine *engine)
{
    const struct gw_air_default *usual = &engine->tables->air_default[GW_ROW_AIR_DEFAULT_CURTAIN_WALL];
    if (gw_given(plan->in.air_leakage) != gw_given(plan->in.air_at))
        return gw_refuse(engine, GW_MISSING, gw_given(plan->in.air_at) ? "air_leakage" : "air_pressure",
                         "a leakage means nothing without its pressure: give both or neither");
    if (gw_given(plan->in.air_at)) {
        enum gw_status status = weather_positive("air_pressure", plan->in.air_at, engine);
        return status ? status : weather_positive("air_leakage", plan->in.air_leakage, engine);
    }
    plan->in.air_at = GW_USE(engine, usual)->at_pa;
    plan->in.air_leakage = usual->leakage_m_s;
    return GW_OK;
}

static enum gw_status plan_sway(struct plan *plan, struct gw_engine *engine)
{
    const struct gw_sway_test *row = &engine->tables->sway_test[GW_ROW_SWAY_TEST_MOCK_UP];
    plan->drift = plan->in.drift;
    plan->after_proof = GW_ABSENT;
    if (!gw_given(plan->drift) && gw_given(plan->in.story_height)) {
        plan->drift = row->drift * plan->in.story_height;
        GW_STEP(engine, "drift", GW_LENGTH, plan->drift, row->row.source, "f*h", {"f", row->drift, GW_RATIO},
                {"h", plan->in.story_height, GW_LENGTH});
    }
    if (!gw_given(plan->drift)) return GW_OK;
    enum gw_status status = weather_positive("drift", plan->drift, engine);
    if (status) return status;
    plan->after_proof = GW_USE(engine, row)->after_proof * plan->drift;
    GW_STEP(engine, "displacement", GW_LENGTH, plan->after_proof, row->row.source, "f*d",
            {"f", row->after_proof, GW_RATIO}, {"d", plan->drift, GW_LENGTH});
    return GW_OK;
}

static enum gw_status make_plan(struct plan *plan, const struct gw_sequence_case *in, struct gw_engine *engine)
{
    *plan = (struct plan){.in = *in};
    const struct gw_proof_case proof = {
        .positive = in->positive, .negative = in->negative, .span = in->span, .rule = in->rule};
    enum gw_status status = gw_proof(&plan->proof, &proof, engine);
    if (!status) status = plan_water(plan, engine);
    if (!status) status = plan_air(plan, engine);
    if (!status) status = plan_sway(plan, engine);
    return status;
}

static bool wanted(const struct plan *plan, enum gw_sequence_when when)
{
    switch (when) {
    case GW_WHEN_DYNAMIC:
        return plan->in.dynamic == GW_YES;
    case GW_WHEN_SWAY:
        return gw_given(plan->drift);
    case GW_WHEN_THERMAL:
        return plan->in.thermal == GW_YES;
    case GW_WHEN_ALWAYS:
    case GW_WHEN_UNSET:
        break;
    }
    return true;
}

static void load_step(struct gw_sequence_step *step, double pressure, double hold, double limit)
{
    step->pressure = pressure;
    step->hold = hold;
    step->limit = limit;
}

static void fill(struct gw_sequence_step *step, const struct plan *plan)
{
    const struct gw_proof_result *proof = &plan->proof;
    switch (step->test) {
    case GW_STEP_PRELOAD:
        load_step(step, proof->preload, proof->hold, GW_ABSENT);
        break;
    case GW_STEP_AIR:
        step->pressure = plan->in.air_at;
        step->leakage = plan->in.air_leakage;
        break;
    case GW_STEP_WATER:
    case GW_STEP_DYNAMIC:
        load_step(step, plan->water, plan->wet, GW_ABSENT);
        break;
    case GW_STEP_DESIGN_IN:
        load_step(step, plan->in.positive.pa, proof->hold, proof->deflection_limit);
        break;
    case GW_STEP_DESIGN_OUT:
        load_step(step, -plan->in.negative.pa, proof->hold, proof->deflection_limit);
        break;
    case GW_STEP_PROOF_IN:
        load_step(step, proof->proof_positive, proof->hold, proof->set_limit);
        break;
    case GW_STEP_PROOF_OUT:
        load_step(step, -proof->proof_negative, proof->hold, proof->set_limit);
        break;
    case GW_STEP_SWAY:
        step->displacement = plan->drift;
        break;
    case GW_STEP_SAFETY:
        step->displacement = plan->after_proof;
        break;
    case GW_STEP_THERMAL:
    case GW_STEP_UNSET:
        break;
    }
}

enum gw_status gw_test_sequence(struct gw_sequence *out, const struct gw_sequence_case *in, struct gw_engine *engine)
{
    struct plan plan;
    out->n = 0;
    enum gw_status status = make_plan(&plan, in, engine);
    if (status) return status;
    for (size_t i = 0; i < GW_N_MOCKUP_SEQUENCE && out->n < GW_SEQUENCE_STEPS; i++) {
        const struct gw_mockup_sequence *row = &engine->tables->mockup_sequence[i];
        if (!wanted(&plan, (enum gw_sequence_when)row->when)) continue;
        struct gw_sequence_step *step = &out->steps[out->n++];
        *step = (struct gw_sequence_step){.test = (enum gw_sequence_test)row->step,
                                          .method = GW_USE(engine, row)->method,
                                          .again = (enum gw_bool)row->again};
        step->pressure = step->hold = step->displacement = step->leakage = step->limit = GW_ABSENT;
        fill(step, &plan);
    }
    return GW_OK;
}
