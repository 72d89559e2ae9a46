#include "galeward/explain.h"

#include "galeward/plan.h"
#include "judge/check.h"
#include "judge/judge_internal.h"

#include <string.h>

#define SETTLE(trace, ...)                                                                                             \
    gw_trace_settle(trace, (const double[]){__VA_ARGS__}, sizeof((const double[]){__VA_ARGS__}) / sizeof(double))

/* The type with the make-up that is chosen there, of the first candidate for which another than its own is. */
static const struct gw_lite_type *chosen_type(const struct gw_ask *ask, const struct gw_element *e,
                                              const struct gw_system **candidate)
{
    const struct gw_project *project = &ask->model->project;
    const struct gw_lite_type *own = e->lite ? gw_model_lite(ask->model, e->lite) : NULL;
    for (size_t c = 0; own && ask->plans && c < ask->model->systems.n; c++) {
        const struct gw_plan *plan = &ask->plans->items[c].plan;
        const unsigned number = plan->choices[plan->places->of[e->index]].lites[own - project->lites.items];
        if (!number) continue;
        *candidate = plan->candidate;
        return gw_lite_numbered(own, number);
    }
    return own;
}

static const struct gw_explained_glass *explain_glass(const struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_arena *arena = ask->arena;
    const struct gw_model *model = ask->model;
    const struct gw_system *candidate = NULL;
    const struct gw_lite_type *type = chosen_type(ask, e, &candidate);
    if (e->kind != GW_LITE || !type || !type->layers.n || e->outside) return NULL;
    struct gw_explained_glass *g = gw_alloc(arena, 1, sizeof *g);
    g->type = type;
    g->candidate = candidate;
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

/* The glass has its own derivation, whoever the candidate is; a lite has what its type is asked besides. */
static bool is_told(const struct gw_finding *f, const struct gw_element *e)
{
    const struct gw_demand *d = f->demand;
    const bool of_type = d->lite && e->kind == GW_LITE && e->lite && strcmp(d->where, e->lite) == 0;
    return (d->element == e || of_type) && d->state == GW_ASKED && !d->check->own_glass;
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

/* The findings of the candidate of the one at `at`. */
static struct gw_judgement of_candidate(const struct gw_judgement *j, size_t at)
{
    size_t begin = at, end = at;
    while (begin > 0 && j->findings.items[begin - 1].candidate == j->findings.items[at].candidate) begin--;
    while (end < j->findings.n && j->findings.items[end].candidate == j->findings.items[at].candidate) end++;
    struct gw_judgement out = {.demands_capacity = 0};
    out.findings.items = j->findings.items + begin;
    out.findings.n = end - begin;
    return out;
}

struct untested {
    struct gw_explained_link *link;
    const struct gw_finding *findings;
    struct gw_arena *arena;
};

static void keep_untested(void *user, size_t index)
{
    const struct untested *u = user;
    struct gw_explained_link *l = u->link;
    const struct gw_finding *f = &u->findings[index];
    if (!gw_said(&f->untested)) return;
    l->untested.items = gw_grow(u->arena, l->untested.items, l->untested.n, &l->untested_capacity, sizeof f);
    l->untested.items[l->untested.n++] = f;
}

/* What stands on links: the verdict along its path, and which of them no test shows. */
static void explain_path(struct gw_explained_link *link, struct gw_ask *ask, const struct gw_judgement *judgement,
                         size_t at)
{
    const struct gw_judgement own = of_candidate(judgement, at);
    const struct gw_finding *f = &judgement->findings.items[at];
    const struct gw_paths *paths = gw_paths_of(own.findings.items, own.findings.n, ask);
    struct untested u = {link, own.findings.items, ask->arena};
    gw_path_visit(paths, ask, f, keep_untested, &u);
    link->finding = *f;
}

static void explain_links(struct gw_explanation *out, struct gw_ask *ask, const struct gw_judgement *judgement)
{
    for (size_t i = 0; i < judgement->findings.n; i++) {
        const struct gw_finding *f = &judgement->findings.items[i];
        if (!is_told(f, out->element)) continue;
        struct gw_demand *demand = gw_alloc(ask->arena, 1, sizeof *demand);
        struct gw_explained_link link;
        link = (struct gw_explained_link){.calculated = NULL};
        gw_trace_init(&link.trace, ask->arena);
        ask->trace = &link.trace;
        ask->compared = &link.compared;
        if (f->demand->element)
            gw_judge_element(&link.finding, demand, ask, f->demand->check, out->element, f->candidate);
        else link.finding = *f;
        ask->trace = NULL;
        ask->compared = NULL;
        settle_finding(&link.trace, &link.finding);
        if (f->demand->check->path) explain_path(&link, ask, judgement, i);
        else calculate_beside(&link, ask, out->element);
        out->links.items = gw_grow(ask->arena, out->links.items, out->links.n, &out->links_capacity, sizeof link);
        out->links.items[out->links.n++] = link;
        gw_used_merge(&out->used, link.finding.used);
    }
}

/* With what is chosen of each candidate there. */
static void explain_lines(struct gw_explanation *out, struct gw_ask *ask)
{
    const struct gw_model *model = ask->model;
    if (out->element->kind != GW_MULLION || out->element->outside) return;
    out->lines.items = gw_alloc(ask->arena, model->systems.n + 1, sizeof(const struct gw_judged_line *));
    for (size_t c = 0; c < model->systems.n; c++) {
        struct gw_planned *planned = gw_planned_of(ask, &model->systems.items[c]);
        const struct gw_system *system = planned ? gw_planned_offer(planned, out->element) : &model->systems.items[c];
        struct gw_judged_line *line = gw_alloc(ask->arena, 1, sizeof *line);
        gw_judge_line(line, ask, out->element, system ? system : &model->systems.items[c]);
        line->system = &model->systems.items[c];
        out->lines.items[out->lines.n++] = line;
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
    out->glass = explain_glass(ask, element);
    if (out->glass) gw_used_merge(&out->used, &out->glass->engine.used);
    explain_lines(out, ask);
    explain_links(out, ask, judgement);
}
