/* The tests of a laboratory mock-up, in their order. */
#include "galeward/answers.h"
#include "judge/drift.h"

static bool is_exempt(const struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_ask own = *ask;
    struct gw_demand unused = {0};
    return gw_is_exempt(&unused, &own, e);
}

/* The greatest drift of a story behind a lite, as the structural engineer gives it or the structure's row allows it;
 * absent: no racking in the sequence, or, where it is asked for, why it is not known. */
static double racking(struct gw_answer *out, struct gw_ask *ask)
{
    const struct gw_seismic *s = gw_seismic_of(ask);
    double worst = GW_ABSENT;
    if (!s || s->category == GW_SDC_A) return worst;
    const bool given = gw_given(s->story_drift) || gw_given(s->story_drift_ratio);
    for (size_t i = 0; i < ask->takeoff->elements.n; i++) {
        const struct gw_element *e = &ask->takeoff->elements.items[i];
        struct gw_drift_result r;
        if (e->kind != GW_LITE || (!given && is_exempt(ask, e))) continue;
        gw_engine_init(&ask->engine, ask->model->tables, NULL);
        if (gw_drift_of(&r, ask, e) == GW_OK) worst = fmax(worst, r.drift); /* leaves out an absent one */
        else out->racking_fault = gw_fault_message(ask);
    }
    if (gw_given(worst)) out->racking_fault = (struct gw_message){0};
    return worst;
}

static void set_requirements(struct gw_sequence_case *in, const struct gw_requirements *r)
{
    if (r && r->water) {
        in->water = r->water->pressure;
        if (r->water->rule) in->rule = r->water->rule;
        in->dynamic = r->water->dynamic;
    }
    if (!r || !r->air) return;
    in->air_leakage = r->air->leakage;
    in->air_at = r->air->at;
}

/* The greatest pressures of the walls below the roof, on the greatest span. */
void gw_find_mock_up(struct gw_answer *out, struct gw_ask *ask)
{
    struct gw_sequence_case in = {.rule = GW_WATER_CURTAIN_WALL,
                                  .water = GW_ABSENT,
                                  .air_leakage = GW_ABSENT,
                                  .air_at = GW_ABSENT,
                                  .dynamic = GW_UNSAID,
                                  .thermal = GW_UNSAID,
                                  .story_height = GW_ABSENT};
    for (size_t i = 0; i < ask->takeoff->elements.n; i++) {
        const struct gw_element *e = &ask->takeoff->elements.items[i];
        if (e->kind == GW_LITE && !e->outside && e->parapet) {
            out->above_roof_inward = fmax(out->above_roof_inward, e->inward_asd.pa);
            out->above_roof_outward = fmax(out->above_roof_outward, -e->outward_asd.pa);
        }
        if (e->outside || e->parapet) continue;
        if (e->kind == GW_MULLION && !e->overhang) in.span = fmax(in.span, e->span);
        if (e->kind != GW_LITE) continue;
        in.positive.pa = fmax(in.positive.pa, e->inward_asd.pa);
        in.negative.pa = fmax(in.negative.pa, -e->outward_asd.pa);
    }
    in.drift = racking(out, ask);
    gw_engine_init(&ask->engine, ask->model->tables, NULL);
    set_requirements(&in, ask->model->project.requirements);
    if (gw_test_sequence(&out->mock_up, &in, &ask->engine) == GW_OK) return;
    out->mock_up.n = 0;
    out->mock_up_fault = gw_fault_message(ask);
}
