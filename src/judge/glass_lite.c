#include "judge/glass_lite.h"

#include "judge/judge_internal.h"

/* By element, as far as worked out. */
struct gw_glass_memory {
    const struct gw_glass_judged **judged;
    const struct gw_used **used;
};

static const struct gw_glass_rules *rules_of(const struct gw_model *model)
{
    static const struct gw_glass_rules none = {.deflection_limit = GW_ABSENT,
                                               .deflection_ratio = GW_ABSENT,
                                               .probability = GW_ABSENT,
                                               .interlayer_temperature = GW_ABSENT};
    return model->project.glass ? model->project.glass : &none;
}

const struct gw_lite_type *gw_glazed_type(const struct gw_model *model, const struct gw_element *e)
{
    const struct gw_lite_type *type = e->lite ? gw_model_lite(model, e->lite) : NULL;
    return type && type->layers.n ? type : NULL;
}

/* The lite takes the element's whole rectangle: no smaller than the clear opening. */
enum gw_status gw_lite_of(struct gw_lite *out, const struct gw_model *model, const struct gw_element *e,
                          const struct gw_lite_type *type, struct gw_engine *engine)
{
    const struct gw_glass_rules *rules = rules_of(model);
    *out = (struct gw_lite){.width = e->width,
                            .height = e->pane,
                            .edges = type->support,
                            .span = type->span,
                            .finish = type->edge_finish,
                            .temperature = rules->interlayer_temperature,
                            .probability = rules->probability,
                            .edition = model->project.codes->glass,
                            .route = rules->route,
                            .climate = rules->sealing && rules->service.n,
                            .use_only = true};
    enum gw_status status = gw_make_up_from(&out->make_up, type->layers.items, type->layers.n, engine);
    if (status == GW_OK && out->climate) status = gw_air_from(&out->sealing, rules->sealing, "sealing", engine);
    return status;
}

static void keep_most_bent(struct gw_glass_judged *out, const struct gw_lite_verdict *v, bool first)
{
    for (int i = 0; i < v->n; i++) {
        if (!(first && i == 0) && !(v->results[i].deflection > out->bent.deflection)) continue;
        out->bent = v->results[i];
        out->bent_load = i;
    }
}

/* Under every state of the gas in service; the worst for strength and the worst for deflection are kept. */
static enum gw_status judge_states(struct gw_glass_judged *out, const struct gw_glass_rules *rules,
                                   struct gw_engine *engine)
{
    struct gw_lite lite = out->lite;
    for (size_t i = 0; i < rules->service.n; i++) {
        struct gw_lite_verdict v;
        enum gw_status status = gw_air_from(&lite.service, &rules->service.items[i], "service", engine);
        if (status == GW_OK) status = gw_lite_check(&v, &lite, &out->demand, engine);
        if (status != GW_OK) return status;
        keep_most_bent(out, &v, i == 0);
        if (i && !(v.strength_use > out->verdict.strength_use)) continue;
        out->verdict = v;
        out->lite.service = lite.service;
    }
    return GW_OK;
}

enum gw_status gw_judge_glass(struct gw_glass_judged *out, const struct gw_model *model, const struct gw_element *e,
                              const struct gw_lite_type *type, struct gw_engine *engine)
{
    const struct gw_glass_rules *rules = rules_of(model);
    enum gw_status status = gw_lite_of(&out->lite, model, e, type, engine);
    if (status != GW_OK) return status;
    out->demand = (struct gw_lite_demand){.loads = {{"inward wind", fmax(e->inward_asd.pa, 0), GW_ABSENT},
                                                    {"outward wind", fmin(e->outward_asd.pa, 0), GW_ABSENT}},
                                          .n = 2,
                                          .deflection_limit = gw_lite_deflection_limit(
                                              rules->deflection_limit, rules->deflection_ratio, e->width, e->pane)};
    if (out->lite.climate && out->lite.make_up.n_panes > 1) return judge_states(out, rules, engine);
    out->lite.climate = false;
    status = gw_lite_check(&out->verdict, &out->lite, &out->demand, engine);
    if (status == GW_OK) keep_most_bent(out, &out->verdict, true);
    return status;
}

void gw_use_plate_workspace(struct gw_ask *ask)
{
    struct gw_judge_memory *m = ask->memory;
    if (!m->workspace) m->workspace = gw_alloc_bare(ask->arena, GW_PLATE_WORKSPACE);
    ask->engine.workspace = m->workspace;
}

static struct gw_glass_memory *memory_of(struct gw_ask *ask)
{
    const size_t n = ask->takeoff->elements.n + 1;
    if (ask->memory->glass) return ask->memory->glass;
    struct gw_glass_memory *m = gw_alloc(ask->arena, 1, sizeof *m);
    *m = (struct gw_glass_memory){gw_alloc(ask->arena, n, sizeof *m->judged), gw_alloc(ask->arena, n, sizeof *m->used)};
    return ask->memory->glass = m;
}

/* In an engine of its own, so that what is remembered brings its rows along. */
static const struct gw_glass_judged *work_out(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e,
                                              const struct gw_lite_type *type, const struct gw_used **used)
{
    struct gw_ask own = *ask;
    struct gw_glass_judged *one = gw_alloc(ask->arena, 1, sizeof *one);
    own.trace = NULL;
    gw_ask_open(&own);
    gw_use_plate_workspace(&own);
    const enum gw_status status = gw_judge_glass(one, ask->model, e, type, &own.engine);
    const struct gw_message why = gw_fault_message(&own);
    *used = gw_ask_close(&own, NULL);
    if (status == GW_OK) return one;
    gw_demand_unknown(out, GW_SAY(ask->arena, "lite {}: {}", gw_of_text(type->name), gw_of_message(&why)));
    return NULL;
}

const struct gw_glass_judged *gw_glass_of(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_lite_type *type = gw_glazed_type(ask->model, e);
    const struct gw_used *used = NULL;
    if (!gw_pressures_known(out, ask, e)) return NULL;
    if (!type) {
        gw_demand_unknown(out, GW_PLAINLY("which glass is in it? Ask the architect (lites: layers)"));
        return NULL;
    }
    struct gw_glass_memory *m = memory_of(ask);
    const bool kept = gw_is_taken_off(ask, e);
    const struct gw_glass_judged *one = kept ? m->judged[e->index] : NULL;
    if (one) used = m->used[e->index];
    else one = work_out(out, ask, e, type, &used);
    if (kept && one) {
        m->judged[e->index] = one;
        m->used[e->index] = used;
    }
    if (one) gw_used_merge(&ask->engine.used, used);
    return one;
}
