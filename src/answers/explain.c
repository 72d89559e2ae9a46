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

/* The glass has its own derivation, whoever the candidate is. */
static void explain_links(struct gw_explanation *out, struct gw_arena *arena, const struct gw_model *model,
                          const struct gw_takeoff *takeoff, const struct gw_judgement *judgement)
{
    for (size_t i = 0; judgement && i < judgement->findings.n; i++) {
        const struct gw_finding *f = &judgement->findings.items[i];
        struct gw_explained_link link;
        if (f->demand->element != out->element || strcmp(f->demand->check, "glass") == 0) continue;
        gw_trace_init(&link.trace, arena);
        if (!gw_judge_derive(&link.finding, model, takeoff, judgement, f, &link.trace)) continue;
        out->links.items = gw_grow(arena, out->links.items, out->links.n, &out->links_capacity, sizeof link);
        out->links.items[out->links.n++] = link;
        gw_used_merge(&out->used, &link.finding.used);
    }
}

void gw_explain(struct gw_explanation *out, struct gw_arena *arena, const struct gw_model *model,
                const struct gw_takeoff *takeoff, const struct gw_judgement *judgement,
                const struct gw_element *element)
{
    struct gw_wind_result pressure;
    *out = (struct gw_explanation){.element = element, .used = element->used};
    gw_trace_init(&out->trace, arena);
    out->status = gw_takeoff_derive(model, element, &out->trace, &pressure);
    out->glass = explain_glass(arena, model, element);
    if (out->glass) gw_used_merge(&out->used, &out->glass->engine.used);
    explain_links(out, arena, model, takeoff, judgement);
}
