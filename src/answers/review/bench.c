/* Judging a system under several looks at once: as it is, and with one thing or another altered. */
#include "review_internal.h"

#include <string.h>

struct look gw_look_of(const struct gw_system *base)
{
    return (struct look){.base = base, .part = NO_PART, .mullion_depth = GW_ABSENT};
}

struct voided gw_nothing_voided(struct reviewing *r)
{
    return (struct voided){gw_alloc(r->arena, r->reports.n + 1, sizeof(unsigned)),
                           gw_alloc(r->arena, r->reports.n + 1, sizeof(enum out_of_use)), false};
}

/* Options --------------------------------------------------------------------------------------------------------- */

/* The same options by name, as another file numbers them; what it has not is left out, as it cannot be taken. */
static gw_option_set renumbered(gw_option_set set, const struct gw_system *from, const struct gw_system *to)
{
    gw_option_set out = 0;
    for (size_t i = 0; i < from->options.n; i++)
        for (size_t k = 0; (set & gw_option_bit(i)) && k < to->options.n; k++)
            if (strcmp(from->options.items[i].name, to->options.items[k].name) == 0) out |= gw_option_bit(k);
    return out;
}

const struct gw_system *gw_with_options(struct reviewing *r, const struct gw_system *base, gw_option_set set)
{
    struct gw_model *model = gw_alloc(r->arena, 1, sizeof *model);
    struct gw_diags *diags = gw_alloc(r->arena, 1, sizeof *diags);
    struct gw_system *made = gw_alloc(r->arena, 1, sizeof *made);
    *model = *r->ask->model;
    gw_diags_init(diags, r->arena);
    model->arena = r->arena;
    model->diags = diags;
    return gw_system_with(made, model, base, set) ? made : NULL;
}

size_t gw_options_used(struct reviewing *r, const struct gw_system *base, gw_option_set **sets)
{
    const size_t places = r->planned ? r->planned->plan.places->n : 0;
    gw_option_set *out = gw_alloc(r->arena, places + 1, sizeof *out);
    size_t n = 1; /* none of them */
    for (size_t p = 0; p < places; p++) {
        const gw_option_set set = renumbered(r->planned->plan.choices[p].options, r->planned->plan.candidate, base);
        bool known = false;
        for (size_t i = 0; i < n; i++) known = known || out[i] == set;
        if (!known) out[n++] = set;
    }
    *sets = out;
    return n;
}

static gw_option_set options_at(const struct reviewing *r, size_t place)
{
    return renumbered(r->planned->plan.choices[place].options, r->planned->plan.candidate, r->judged);
}

/* Without any option it stands where a place takes none. */
static bool stands(const struct reviewing *r, gw_option_set set)
{
    bool any = !r->planned;
    for (size_t p = 0; r->planned && p < r->planned->plan.places->n; p++) any = any || options_at(r, p) == set;
    return any;
}

static void add_ratings(struct reviewing *r, const struct gw_system *system)
{
    for (size_t i = 0; i < system->ratings.n; i++) {
        const struct gw_rating *rating = &system->ratings.items[i];
        bool known = false;
        for (size_t k = 0; k < r->ratings.n; k++) known = known || r->ratings.items[k]->node == rating->node;
        if (known) continue;
        r->ratings.items =
            gw_grow(r->arena, r->ratings.items, r->ratings.n, &r->ratings.capacity, sizeof *r->ratings.items);
        r->ratings.items[r->ratings.n++] = rating;
    }
}

void gw_find_built(struct reviewing *r)
{
    gw_option_set *sets;
    const size_t n = gw_options_used(r, r->judged, &sets);
    r->built.items = gw_alloc(r->arena, n + 1, sizeof *r->built.items);
    for (size_t i = 0; i < n; i++) {
        const struct gw_system *with = stands(r, sets[i]) ? gw_with_options(r, r->judged, sets[i]) : NULL;
        if (with) r->built.items[r->built.n++] = (struct built){sets[i], with};
    }
    if (!r->built.n) r->built.items[r->built.n++] = (struct built){0, r->judged};
    for (size_t i = 0; i < r->built.n; i++) add_ratings(r, r->built.items[i].system);
}

const struct gw_system *gw_built_at(const struct reviewing *r, const struct gw_element *e)
{
    const gw_option_set set = r->planned ? options_at(r, r->planned->plan.places->of[e->index]) : 0;
    for (size_t i = 0; i < r->built.n; i++)
        if (r->built.items[i].set == set) return r->built.items[i].system;
    return r->judged;
}

/* Looks ----------------------------------------------------------------------------------------------------------- */

static struct gw_system *looked_at(struct reviewing *r, const struct look *look, gw_option_set set)
{
    const struct gw_system *base = gw_with_options(r, look->base, set), *offered = r->judged;
    if (!base) return NULL;
    if (look->part != NO_PART && set) offered = gw_with_options(r, r->judged, renumbered(set, look->base, r->judged));
    struct gw_system *out = gw_alloc(r->arena, 1, sizeof *out);
    *out = *base;
    gw_alter(r, out, offered ? offered : r->judged, look);
    return out;
}

/* Of the types whose make-up is another in this bench, what stands everywhere is that. */
static const unsigned *lites_chosen(struct reviewing *r, const struct bench *b, size_t place)
{
    const struct gw_project *own = &r->ask->model->project, *here = &b->model.project;
    unsigned *out = gw_alloc(r->arena, own->lites.n + 1, sizeof *out);
    for (size_t i = 0; i < own->lites.n; i++)
        if (own->lites.items[i].layers.items == here->lites.items[i].layers.items)
            out[i] = r->planned->plan.choices[place].lites[i];
    return out;
}

static void plan_look(struct reviewing *r, struct bench *b, struct gw_planned *planned, const struct look *look,
                      struct gw_system *system)
{
    const struct gw_plan *own = &r->planned->plan;
    struct gw_plan_choice *choices = gw_alloc(r->arena, own->places->n + 1, sizeof *choices);
    gw_option_set *sets;
    const size_t n = gw_options_used(r, look->base, &sets);
    for (size_t p = 0; p < own->places->n; p++)
        choices[p] = (struct gw_plan_choice){renumbered(own->choices[p].options, own->candidate, look->base),
                                             lites_chosen(r, b, p)};
    planned->chosen = true;
    planned->plan = (struct gw_plan){system, own->places, choices};
    gw_offers_init(&planned->offers, &b->model, system, r->arena);
    for (size_t i = 0; i < n; i++) {
        struct gw_system *made = sets[i] ? looked_at(r, look, sets[i]) : system;
        /* a key without padding: the set itself */
        if (made) *gw_memo_at(&planned->offers.made, r->arena, &sets[i], sizeof sets[i]) = made;
    }
    gw_plan_chosen(&planned->make_ups, &planned->plan, &b->model, r->arena);
}

static void plan_looks(struct reviewing *r, struct bench *b)
{
    struct gw_plans *plans = gw_alloc(r->arena, 1, sizeof *plans);
    plans->places = *r->planned->plan.places;
    plans->items = gw_alloc(r->arena, b->n + 1, sizeof *plans->items);
    for (size_t i = 0; i < b->n; i++) plan_look(r, b, &plans->items[i], &b->looks[i], &b->model.systems.items[i]);
    b->ask.plans = plans;
}

static void set_up(struct reviewing *r, struct bench *b, const struct gw_model *model, const struct gw_takeoff *takeoff,
                   const struct look *looks, size_t n)
{
    *b = (struct bench){.model = *model, .takeoff = takeoff, .looks = looks, .n = n};
    b->model.systems.items = gw_alloc(r->arena, n + 1, sizeof *b->model.systems.items);
    b->model.systems.n = n;
    for (size_t i = 0; i < n; i++) b->model.systems.items[i] = *looked_at(r, &looks[i], 0);
    gw_ask_init(&b->ask, &b->model, takeoff, r->arena);
    if (r->planned) plan_looks(r, b);
}

void gw_bench_judge(struct reviewing *r, struct bench *b, const struct gw_model *model,
                    const struct gw_takeoff *takeoff, const struct look *looks, size_t n)
{
    set_up(r, b, model, takeoff, looks, n);
    gw_judge(&b->judgement, &b->ask);
}

/* With what is drawn otherwise standing among what is not, things lean on each other anew. */
bool gw_bench_judge_partly(struct effect *out, struct reviewing *r, const struct gw_takeoff *takeoff,
                           const struct look *look, bool (*is_other)(const void *user, const struct gw_element *e),
                           const void *user)
{
    struct bench *own = gw_alloc(r->arena, 1, sizeof *own), *other = gw_alloc(r->arena, 1, sizeof *other);
    set_up(r, own, r->ask->model, r->ask->takeoff, r->bench.looks, 1);
    set_up(r, other, r->ask->model, takeoff, look, 1);
    gw_judge_apart(&own->judgement, &own->ask);
    gw_judge_apart(&other->judgement, &other->ask);
    const size_t n = own->judgement.demands.n;
    struct gw_finding *findings = own->judgement.findings.items;
    if (other->judgement.demands.n != n) return false;
    for (size_t i = 0; i < n; i++) {
        const struct gw_element *e = findings[i].demand->element;
        if (e && is_other(user, e)) findings[i] = other->judgement.findings.items[i];
    }
    const struct gw_planned *planned = gw_planned_of(&own->ask, &own->model.systems.items[0]);
    gw_judge_leaning(findings, n, &own->ask, planned ? &planned->make_ups : NULL);
    gw_effect_of(out, r, gw_bench_findings(&r->bench, 0), findings, n);
    return true;
}

const struct gw_finding *gw_bench_findings(const struct bench *b, size_t look)
{
    return &b->judgement.findings.items[look * b->judgement.demands.n];
}
