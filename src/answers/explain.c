#include "galeward/explain.h"

#include "judge/check.h"

#include <string.h>

#define SETTLE(trace, ...)                                                                                             \
    gw_trace_settle(trace, (const double[]){__VA_ARGS__}, sizeof((const double[]){__VA_ARGS__}) / sizeof(double))

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
    if (g->status == GW_OK) SETTLE(&g->trace, g->result.resistance, g->result.utilization, g->result.deflection);
    else gw_trace_settle(&g->trace, NULL, 0);
    return g;
}

/* The glass has its own derivation, whoever the candidate is; what stands on the links is told by them. */
static bool is_told(const struct gw_finding *f, const struct gw_element *e)
{
    const struct gw_demand *d = f->demand;
    return d->element == e && d->state == GW_ASKED && !d->check->own_glass && !d->check->path;
}

static void settle_finding(struct gw_trace *trace, const struct gw_finding *f)
{
    const struct gw_demand *d = f->demand;
    SETTLE(trace, f->required, f->provided, f->utilization, gw_term_of(d, 0)->value, gw_term_of(d, 1)->value,
           gw_term_of(d, 2)->value, gw_term_of(d, 3)->value);
}

/* The load and what takes it, though a test is enough. */
static void calculate_beside(struct gw_explained_link *link, struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_finding *f = &link->finding;
    if (f->evidence != GW_BY_TEST || !f->demand->check->does->capacity) return;
    struct gw_demand *demand = gw_alloc(ask->arena, 1, sizeof *demand);
    link->calculated = gw_alloc(ask->arena, 1, sizeof *link->calculated);
    gw_trace_init(&link->calculation, ask->arena);
    ask->trace = &link->calculation;
    gw_judge_limits(link->calculated, demand, ask, f->demand->check, e, f->candidate);
    ask->trace = NULL;
    settle_finding(&link->calculation, link->calculated);
}

static void explain_links(struct gw_explanation *out, struct gw_ask *ask, const struct gw_judgement *judgement)
{
    for (size_t i = 0; i < judgement->findings.n; i++) {
        const struct gw_finding *f = &judgement->findings.items[i];
        struct gw_demand *demand = gw_alloc(ask->arena, 1, sizeof *demand);
        struct gw_explained_link link;
        if (!is_told(f, out->element)) continue;
        link = (struct gw_explained_link){.calculated = NULL};
        gw_trace_init(&link.trace, ask->arena);
        ask->trace = &link.trace;
        ask->compared = &link.compared;
        gw_judge_element(&link.finding, demand, ask, f->demand->check, out->element, f->candidate);
        ask->trace = NULL;
        ask->compared = NULL;
        settle_finding(&link.trace, &link.finding);
        calculate_beside(&link, ask, out->element);
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
    SETTLE(&out->trace, element->inward.pa, element->outward.pa, element->inward_asd.pa, element->outward_asd.pa,
           element->inward_deflection, element->outward_deflection);
    out->glass = explain_glass(ask->arena, ask->model, element);
    if (out->glass) gw_used_merge(&out->used, &out->glass->engine.used);
    explain_links(out, ask, judgement);
}
