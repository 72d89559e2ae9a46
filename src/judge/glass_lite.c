#include "judge/glass_lite.h"

#include "judge/judge_internal.h"

/* Remembered by its make-up, its size and the pressures on it. */
struct known_lite {
    struct gw_glass_judged judged;
    const struct gw_used *used;
};

static const struct gw_glass_rules *rules_of(const struct gw_model *model)
{
    static const struct gw_glass_rules none = {.deflection_limit = GW_ABSENT,
                                               .deflection_ratio = GW_ABSENT,
                                               .probability = GW_ABSENT,
                                               .interlayer_temperature = GW_ABSENT};
    return model->project.glass ? model->project.glass : &none;
}

static uint64_t bit_of(size_t number) { return (uint64_t)1 << number % 64; }

static const struct gw_lite_type *lite_at(const struct gw_ask *ask, const struct gw_lite_type *type, size_t place)
{
    const size_t i = (size_t)(type - ask->model->project.lites.items);
    const struct gw_chosen *c = ask->choice;
    if (ask->reads) ask->reads->lites |= bit_of(i);
    if (ask->reads && c && place != c->place) ask->reads->beyond = true;
    return c ? c->lites[place * ask->model->project.lites.n + i] : type;
}

const struct gw_lite_type *gw_lite_now(const struct gw_ask *ask, const struct gw_lite_type *type)
{
    if (!type) return NULL;
    return lite_at(ask, type, ask->choice ? ask->choice->place : 0);
}

const struct gw_lite_type *gw_heaviest_now(const struct gw_ask *ask, const struct gw_wall_grid *grid,
                                           const struct gw_lite_type *type)
{
    if (!type) return NULL;
    const size_t n = ask->model->project.lites.n, i = (size_t)(type - ask->model->project.lites.items);
    if (ask->reads) {
        ask->reads->weights |= bit_of(i);
        ask->reads->walls |= bit_of(grid->elevation);
    }
    return ask->choice ? ask->choice->heaviest[grid->elevation * n + i] : type;
}

const struct gw_lite_type *gw_type_of(const struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_lite_type *type = e->lite ? gw_model_lite(ask->model, e->lite) : NULL;
    return type ? lite_at(ask, type, ask->choice ? ask->choice->place_of[e->index] : 0) : NULL;
}

const struct gw_lite_type *gw_glazed_type(const struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_lite_type *type = gw_type_of(ask, e);
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

/* In an engine of its own, so that what is remembered brings its rows along. NULL: refused, which `out` says. */
static struct known_lite *work_out(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e,
                                   const struct gw_lite_type *type)
{
    struct gw_ask own = *ask;
    struct known_lite *known = gw_alloc(ask->arena, 1, sizeof *known);
    own.trace = NULL;
    gw_ask_open(&own);
    gw_use_plate_workspace(&own);
    const enum gw_status status = gw_judge_glass(&known->judged, ask->model, e, type, &own.engine);
    const struct gw_message why = gw_fault_message(&own);
    known->used = gw_ask_close(&own, NULL);
    if (status == GW_OK) return known;
    gw_demand_unknown(out, GW_SAY(ask->arena, "lite {}: {}", gw_of_text(type->name), gw_of_message(&why)));
    return NULL;
}

const struct gw_glass_judged *gw_glass_of(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_lite_type *type = gw_glazed_type(ask, e);
    if (!gw_pressures_known(out, ask, e)) return NULL;
    if (!type) {
        gw_demand_unknown(out, GW_PLAINLY("which glass is in it? Ask the architect (lites: layers)"));
        return NULL;
    }
    const struct {
        uintptr_t type;
        double of[4];
    } key = {(uintptr_t)type, {e->width, e->pane, e->inward_asd.pa, e->outward_asd.pa}};
    struct known_lite *known = *gw_memo_at(&ask->memory->glass, ask->arena, &key, sizeof key);
    if (!known) {
        known = work_out(out, ask, e, type);
        *gw_memo_at(&ask->memory->glass, ask->arena, &key, sizeof key) = known; /* the work may have moved the table */
    }
    if (!known) return NULL;
    gw_used_merge(&ask->engine.used, known->used);
    return &known->judged;
}
