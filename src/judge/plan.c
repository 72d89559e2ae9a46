/* A candidate with what is chosen at each place. */
#include "galeward/plan.h"

#include "judge/glass_lite.h"
#include "judge/judge_internal.h"

#include <string.h>

/* Places ---------------------------------------------------------------------------------------------------------- */

/* The roof line cuts the member that the element belongs to. */
static bool is_cut(const struct gw_element *e)
{
    const struct gw_grid_layer *layer = &e->grid->layers[e->sort];
    return layer->cut && layer->strips[e->strip].member == layer->cut_member;
}

/* The piece of mullion begins below the roof line. */
static bool stands_below(const struct gw_element *e)
{
    const struct gw_wall_lines *l = e->lines;
    double foot = l->bottom;
    for (size_t i = 0; i < l->n_splices; i++)
        if (l->splices[i] <= e->bottom + GW_HAIR_M) foot = l->splices[i];
    return gw_below_roof(l, foot);
}

static bool counts_above(const struct gw_element *e)
{
    return e->parapet && !is_cut(e) && !(e->kind == GW_MULLION && stands_below(e));
}

static size_t place_of(struct gw_plan_places *out, struct gw_arena *arena, const struct gw_element *e)
{
    const struct gw_plan_place here = {e->wall, e->grid->elevation, e->zone, counts_above(e)};
    for (size_t i = out->n; i-- > 0;) {
        const struct gw_plan_place *p = &out->items[i];
        if (p->elevation == here.elevation && p->zone == here.zone && p->parapet == here.parapet) return i;
    }
    out->items = gw_grow(arena, out->items, out->n, &out->capacity, sizeof *out->items);
    out->items[out->n] = here;
    return out->n++;
}

static void note_types(struct gw_plan_places *out, const struct gw_model *model, const struct gw_takeoff *t,
                       struct gw_arena *arena)
{
    const size_t types = model->project.lites.n;
    bool *stands = gw_alloc(arena, out->n * types + 1, sizeof *stands);
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        const struct gw_lite_type *type = e->kind == GW_LITE && e->lite ? gw_model_lite(model, e->lite) : NULL;
        if (type) stands[out->of[i] * types + (size_t)(type - model->project.lites.items)] = true;
    }
    out->stands = stands;
}

void gw_plan_places_of(struct gw_plan_places *out, const struct gw_model *model, const struct gw_takeoff *t,
                       struct gw_arena *arena)
{
    size_t *of = gw_alloc(arena, t->elements.n + 1, sizeof *of);
    *out = (struct gw_plan_places){.of = of};
    for (size_t i = 0; i < t->elements.n; i++) of[i] = place_of(out, arena, &t->elements.items[i]);
    note_types(out, model, t, arena);
}

bool gw_demand_is_at(const struct gw_demand *d, const struct gw_ask *ask, const struct gw_plan_places *places,
                     size_t place)
{
    const struct gw_project *project = &ask->model->project;
    if (d->element) return places->of[d->element->index] == place;
    if (d->wall) return strcmp(places->items[place].wall, d->wall->wall) == 0;
    return !d->lite || places->stands[place * project->lites.n + (size_t)(d->lite - project->lites.items)];
}

/* Make-ups -------------------------------------------------------------------------------------------------------- */

const struct gw_lite_type *gw_lite_numbered(const struct gw_lite_type *type, unsigned number)
{
    return number ? type->alternatives.items[number - 1].as : type;
}

/* kg/m2 times g; a weight that is not known is above all others. */
static double weight_of(const struct gw_lite_type *type, const struct gw_model *model)
{
    struct gw_engine engine;
    struct gw_make_up make_up;
    gw_engine_init(&engine, model->tables, NULL);
    if (!type->layers.n || gw_make_up_from(&make_up, type->layers.items, type->layers.n, &engine) != GW_OK)
        return HUGE_VAL;
    return gw_make_up_weight(&make_up, &engine);
}

/* Of the make-ups that stand on a wall; a type that stands nowhere on it counts as its own. */
static void keep_heavier(const struct gw_lite_type **kept, const struct gw_lite_type *type,
                         const struct gw_model *model)
{
    if (!*kept || (*kept != type && weight_of(type, model) > weight_of(*kept, model))) *kept = type;
}

void gw_plan_chosen(struct gw_chosen *out, const struct gw_plan *plan, const struct gw_model *model,
                    struct gw_arena *arena)
{
    const struct gw_plan_places *places = plan->places;
    const size_t n = model->project.lites.n;
    size_t walls = 0;
    for (size_t p = 0; p < places->n; p++)
        if (places->items[p].elevation >= walls) walls = places->items[p].elevation + 1;
    const struct gw_lite_type **lites = gw_alloc(arena, places->n * n + 1, sizeof *lites),
                              **heaviest = gw_alloc(arena, walls * n + 1, sizeof *heaviest);
    for (size_t p = 0; p < places->n; p++)
        for (size_t i = 0; i < n; i++) {
            const struct gw_lite_type *type =
                gw_lite_numbered(&model->project.lites.items[i], plan->choices[p].lites[i]);
            lites[p * n + i] = type;
            if (places->stands[p * n + i]) keep_heavier(&heaviest[places->items[p].elevation * n + i], type, model);
        }
    for (size_t i = 0; i < walls * n; i++)
        if (!heaviest[i]) heaviest[i] = &model->project.lites.items[i % n];
    *out = (struct gw_chosen){.place_of = places->of, .lites = lites, .heaviest = heaviest};
}

/* Systems with options -------------------------------------------------------------------------------------------- */

void gw_offers_init(struct gw_offers *out, const struct gw_model *model, const struct gw_system *base,
                    struct gw_arena *arena)
{
    *out = (struct gw_offers){.base = base, .model = gw_alloc(arena, 1, sizeof *out->model)};
    *out->model = *model;
    out->model->arena = arena;
}

struct gw_system *gw_offer_with(struct gw_offers *offers, gw_option_set taken)
{
    struct gw_arena *arena = offers->model->arena;
    void **known = gw_memo_at(&offers->made, arena, &taken, sizeof taken);
    struct gw_system *made = *known;
    if (made) return made->name ? made : NULL;
    *known = made = gw_alloc(arena, 1, sizeof *made);
    gw_diags_init(&offers->diags, arena);
    offers->model->diags = &offers->diags;
    if (!gw_system_with(made, offers->model, offers->base, taken)) made->name = NULL;
    return made->name ? made : NULL;
}

/* Judging --------------------------------------------------------------------------------------------------------- */

/* Anew where it hangs on a make-up that is chosen. */
static const struct gw_demand *demand_here(struct gw_ask *ask, const struct gw_demand *d)
{
    const struct gw_place place = {
        .where = d->where, .element = d->element, .component = d->component, .lite = d->lite};
    if (!d->reads.lites && !d->reads.weights) return d;
    struct gw_demand *again = gw_alloc(ask->arena, 1, sizeof *again);
    gw_judge_demand(again, ask, d->check, &place);
    return again;
}

/* What the project settles before any place is looked at, it settles whatever is chosen. */
static bool is_settled(const struct gw_demand *d) { return d->state != GW_ASKED && !d->element && !d->lite; }

void gw_judge_at(struct gw_finding *out, struct gw_ask *ask, const struct gw_demand *demand,
                 const struct gw_system *candidate, struct gw_system *offered, struct gw_chosen *chosen, size_t place,
                 struct gw_reads *reads)
{
    chosen->place = place;
    ask->choice = chosen;
    ask->system = NULL;
    *out = (struct gw_finding){.candidate = candidate, .offered = offered};
    out->demand = is_settled(demand) ? demand : demand_here(ask, demand);
    *reads = out->demand->reads;
    ask->reads = offered->reads = reads;
    gw_fasten(out, ask);
    gw_find(out, ask);
    ask->reads = offered->reads = NULL;
    ask->choice = NULL;
}

/* With every choice within it: the gravest. */
static void judge_everywhere(struct gw_finding *out, struct gw_ask *ask, const struct gw_demand *d,
                             const struct gw_plan *plan, struct gw_offers *offers, struct gw_chosen *chosen)
{
    bool any = false;
    for (size_t p = 0; p < plan->places->n; p++) {
        struct gw_finding here;
        struct gw_reads reads;
        if (!gw_demand_is_at(d, ask, plan->places, p)) continue;
        gw_judge_at(&here, ask, d, plan->candidate, gw_offer_with(offers, plan->choices[p].options), chosen, p, &reads);
        if (!any || gw_graver(&here, out)) *out = here;
        any = true;
        if (!reads.parts && !reads.lites) break; /* the same wherever it is looked at */
    }
    if (any) return;
    struct gw_reads reads;
    gw_judge_at(out, ask, d, plan->candidate, gw_offer_with(offers, 0), chosen, 0, &reads);
}

void gw_find_by_plan(struct gw_finding *findings, const struct gw_judgement *demands, struct gw_ask *ask,
                     const struct gw_plan *plan, struct gw_offers *offers, struct gw_chosen *chosen)
{
    for (size_t i = 0; i < demands->demands.n; i++) {
        const struct gw_demand *d = &demands->demands.items[i];
        struct gw_reads reads;
        if (!d->element) {
            judge_everywhere(&findings[i], ask, d, plan, offers, chosen);
            continue;
        }
        const size_t place = plan->places->of[d->element->index];
        gw_judge_at(&findings[i], ask, d, plan->candidate, gw_offer_with(offers, plan->choices[place].options), chosen,
                    place, &reads);
    }
}

void gw_judge_plan(struct gw_finding *findings, struct gw_summary *summary, const struct gw_judgement *demands,
                   struct gw_ask *ask, const struct gw_plan *plan, struct gw_offers *offers)
{
    const size_t n = demands->demands.n;
    struct gw_chosen chosen;
    gw_plan_chosen(&chosen, plan, ask->model, ask->arena);
    gw_find_by_plan(findings, demands, ask, plan, offers, &chosen);
    gw_judge_leaning(findings, n, ask, &chosen);
    *summary = (struct gw_summary){.candidate = plan->candidate};
    gw_summarize(summary, findings, n, ask->takeoff->too_low);
}
