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

/* Lites below the roof line by whether their wind is known. */
struct below_roof {
    size_t known, unknown;
};

static void take_element(struct gw_sequence_case *in, struct below_roof *below, struct gw_answer *out,
                         const struct gw_element *e)
{
    if (e->kind == GW_LITE && !e->outside && e->parapet) {
        out->above_roof_inward = fmax(out->above_roof_inward, e->inward_asd.pa);
        out->above_roof_outward = fmax(out->above_roof_outward, -e->outward_asd.pa);
    }
    if (e->parapet) return;
    if (e->kind == GW_MULLION && !e->overhang) in->span = fmax(in->span, e->span);
    if (e->kind != GW_LITE) return;
    if (e->outside) {
        below->unknown++;
        return;
    }
    below->known++;
    in->positive.pa = fmax(in->positive.pa, e->inward_asd.pa);
    in->negative.pa = fmax(in->negative.pa, -e->outward_asd.pa);
}

/* Not said: there is what it takes. */
static struct gw_message without_mock_up(const struct below_roof *below, const struct gw_sequence_case *in)
{
    if (!below->known && below->unknown)
        return GW_PLAINLY("the wind on the lites below the roof line is outside the method: which pressures do they "
                          "take? Ask the structural engineer (pressures)");
    if (!below->known)
        return GW_PLAINLY("no lite stands below the roof line, whose pressures and spans a mock-up takes");
    if (!(in->span > 0)) return GW_PLAINLY("no mullion below the roof line spans between two anchors");
    return (struct gw_message){0};
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
    struct below_roof below = {0};
    for (size_t i = 0; i < ask->takeoff->elements.n; i++)
        take_element(&in, &below, out, &ask->takeoff->elements.items[i]);
    in.drift = racking(out, ask);
    out->mock_up_fault = without_mock_up(&below, &in);
    if (gw_said(&out->mock_up_fault)) return;
    gw_engine_init(&ask->engine, ask->model->tables, NULL);
    set_requirements(&in, ask->model->project.requirements);
    if (gw_test_sequence(&out->mock_up, &in, &ask->engine) == GW_OK) return;
    out->mock_up.n = 0;
    out->mock_up_fault = gw_fault_message(ask);
}
