#include "galeward/explain.h"

#include <string.h>

static const struct gw_explained_glass *explain_glass(struct gw_arena *arena, const struct gw_model *model,
                                                      const struct gw_element *e)
{
    const struct gw_lite_type *type = e->lite ? gw_model_lite(model, e->lite) : NULL;
    if (e->kind != GW_LITE || !type || !type->layers.n || e->outside) return NULL;
    struct gw_explained_glass *g = gw_alloc(arena, 1, sizeof *g);
    g->type = type;
    gw_trace_init(&g->trace, arena);
    gw_engine_init(&g->engine, model->tables, NULL);
    g->engine.workspace = gw_alloc_bare(arena, GW_PLATE_WORKSPACE);
    g->status = gw_judge_glass(&g->judged, model, e, type, &g->engine);
    if (g->status != GW_OK) return g;
    g->engine.trace = &g->trace;
    g->status =
        gw_lite_assess(&g->result, &g->judged.lite, &g->judged.demand.loads[g->judged.verdict.governing], &g->engine);
    return g;
}

/* The glass has its own derivation, whoever the candidate is; what stands on the links is told by them. */
static bool is_told(const struct gw_finding *f, const struct gw_element *e)
{
    const struct gw_demand *d = f->demand;
    return d->element == e && d->state == GW_ASKED && !d->check->own_glass && !d->check->path;
}

static void explain_links(struct gw_explanation *out, struct gw_ask *ask, const struct gw_judgement *judgement)
{
    for (size_t i = 0; i < judgement->findings.n; i++) {
        const struct gw_finding *f = &judgement->findings.items[i];
        struct gw_demand *demand = gw_alloc(ask->arena, 1, sizeof *demand);
        struct gw_explained_link link;
        if (!is_told(f, out->element)) continue;
        gw_trace_init(&link.trace, ask->arena);
        ask->trace = &link.trace;
        gw_judge_element(&link.finding, demand, ask, f->demand->check, out->element, f->candidate);
        ask->trace = NULL;
        out->links.items = gw_grow(ask->arena, out->links.items, out->links.n, &out->links_capacity, sizeof link);
        out->links.items[out->links.n++] = link;
        gw_used_merge(&out->used, link.finding.used);
    }
}

void gw_explain(struct gw_explanation *out, struct gw_ask *ask, const struct gw_judgement *judgement,
                const struct gw_element *element)
{
    struct gw_wind_result pressure;
    *out = (struct gw_explanation){.element = element, .used = element->used};
    gw_trace_init(&out->trace, ask->arena);
    out->status = gw_takeoff_derive(ask->model, element, &out->trace, &pressure);
    out->glass = explain_glass(ask->arena, ask->model, element);
    if (out->glass) gw_used_merge(&out->used, &out->glass->engine.used);
    explain_links(out, ask, judgement);
}
