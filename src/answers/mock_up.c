/* The tests of a laboratory mock-up, in their order. */
#include "galeward/answers.h"
#include "judge/drift.h"

/* The story drift that the structural engineer gives, for the tallest story; absent: no racking in the sequence. */
static double racking(struct gw_ask *ask)
{
    const struct gw_seismic *s = gw_seismic_of(ask);
    double tallest = GW_ABSENT;
    if (!s || s->category == GW_SDC_A) return GW_ABSENT;
    for (size_t i = 0; i < ask->takeoff->elements.n; i++)
        tallest = fmax(tallest, gw_story_height(ask, &ask->takeoff->elements.items[i])); /* leaves out absent ones */
    return gw_given(s->story_drift) ? s->story_drift : gw_drift_of_ratio(s->story_drift_ratio, tallest, &ask->engine);
}

static void set_requirements(struct gw_sequence_case *in, const struct gw_requirements *r)
{
    if (r && r->water) {
        in->water = r->water->pressure;
        if (r->water->rule) in->rule = r->water->rule;
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
        if (e->outside || e->parapet) continue;
        if (e->kind == GW_MULLION && !e->overhang) in.span = fmax(in.span, e->span);
        if (e->kind != GW_LITE) continue;
        in.positive.pa = fmax(in.positive.pa, e->inward_asd.pa);
        in.negative.pa = fmax(in.negative.pa, -e->outward_asd.pa);
    }
    gw_engine_init(&ask->engine, ask->model->tables, NULL);
    in.drift = racking(ask);
    set_requirements(&in, ask->model->project.requirements);
    if (gw_test_sequence(&out->mock_up, &in, &ask->engine) == GW_OK) return;
    out->mock_up.n = 0;
    out->mock_up_fault = gw_fault_message(ask);
}
