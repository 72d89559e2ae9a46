/* The least-cost plan of each candidate. */
#include "answers/select/select_internal.h"

#include <math.h>
#include <stdlib.h>

struct job {
    struct gw_bids *out;
    struct gw_ask *ask;
    const struct gw_select_limits *limits;
    const struct gw_quantities *quantities;
    const struct gw_shared_list *shared;
    struct gw_finding *whole;
};

static void find_touching(struct search *s)
{
    static const char *const parts[] = {
#define GW_PART_NAME(part) #part,
        GW_SYSTEM_PARTS(GW_PART_NAME)};
    for (size_t i = 0; i < GW_SYSTEM_PART_COUNT; i++) s->touching[i] = gw_options_touching(s->candidate, parts[i]);
    for (size_t i = 0; i < s->candidate->options.n; i++)
        if (s->candidate->options.items[i].once > 0) s->priced_once |= gw_option_bit(i);
}

static size_t count_walls(const struct gw_plan_places *places)
{
    size_t n = 0;
    for (size_t p = 0; p < places->n; p++)
        if (places->items[p].elevation >= n) n = places->items[p].elevation + 1;
    return n;
}

static void own_make_ups(struct search *s)
{
    const struct gw_lite_type *types = s->ask->model->project.lites.items;
    for (size_t i = 0; i < s->places->n * s->n_types; i++) s->lites[i] = &types[i % s->n_types];
    for (size_t i = 0; i < s->n_walls * s->n_types; i++) s->heaviest[i] = &types[i % s->n_types];
}

static void start(struct search *s, const struct job *job, const struct gw_system *candidate, bool everywhere)
{
    struct gw_arena *arena = job->limits->scratch ? job->limits->scratch : job->ask->arena;
    const size_t types = job->ask->model->project.lites.n;
    *s = (struct search){.ask = job->ask,
                         .arena = arena,
                         .demands = &job->out->demands,
                         .places = &job->out->places,
                         .shared = job->shared,
                         .candidate = candidate,
                         .limits = job->limits,
                         .whole = job->whole,
                         .quantities = job->quantities,
                         .by_mass = job->out->by_mass,
                         .n_types = types,
                         .n_walls = count_walls(&job->out->places),
                         .everywhere = everywhere};
    gw_offers_init(&s->offers, job->ask->model, candidate, job->ask->arena);
    s->lites = gw_alloc(arena, s->places->n * types + 1, sizeof *s->lites);
    s->heaviest = gw_alloc(arena, s->n_walls * types + 1, sizeof *s->heaviest);
    own_make_ups(s);
    s->chosen = (struct gw_chosen){.place_of = s->places->of, .lites = s->lites, .heaviest = s->heaviest};
    s->known = gw_alloc(arena, s->demands->demands.n + 1, sizeof *s->known);
    find_touching(s);
}

/* What was learned of "good enough" is of one sort of it, and of what is looked at. */
void gw_search_begin(struct search *s)
{
    s->n_vars = 0;
    s->across = (struct nogoods){0};
    gw_search_vars(s, s->quantities, s->by_mass);
}

struct gw_plan_choice *gw_search_choices(const struct search *s, const struct local *const *best)
{
    struct gw_plan_choice *choices = gw_alloc(s->ask->arena, s->places->n + 1, sizeof *choices);
    for (size_t p = 0; p < s->places->n; p++) {
        unsigned *lites = gw_alloc(s->ask->arena, s->n_types + 1, sizeof *lites);
        const size_t at = s->at_of[p];
        for (size_t i = 0; best && i < s->at[at].n; i++) {
            const struct var *v = &s->vars[s->at[at].vars[i]];
            const uint32_t value = best[at]->value[i];
            if (v->kind == VAR_LITE) lites[v->index] = value;
            if (v->kind == VAR_OPTION && value) choices[p].options |= gw_option_bit(v->index);
        }
        choices[p].lites = lites;
    }
    return choices;
}

static void keep_plan(struct gw_bid *out, const struct search *s, const struct local *const *best)
{
    out->plan = (struct gw_plan){s->candidate, s->places, gw_search_choices(s, best)};
    for (size_t p = 0; p < s->places->n; p++)
        out->places.items[p].quantities.screws = gw_search_screws_at(s, p, out->plan.choices[p].options);
}

/* What a search found: at each place the choices by its variables. */
struct found {
    bool any;
    const struct local **best;
    money once, bound;
};

static struct found look(struct search *s, enum gw_verdict need)
{
    struct found out = {.best = gw_alloc(s->ask->arena, s->places->n + 1, sizeof *out.best)};
    s->need = need;
    gw_search_begin(s);
    out.any = gw_search_plan(s, out.best, &out.once, &out.bound);
    return out;
}

static void take(struct gw_bid *out, struct search *s, const struct job *job, const struct found *found)
{
    money cost = found->once;
    keep_plan(out, s, found->best);
    for (size_t p = 0; p < s->places->n; p++) {
        const money here =
            gw_place_cost(s, &out->plan, p, &job->quantities[p], job->out->by_mass, found->best[s->at_of[p]]->value);
        cost += here;
        out->places.items[p].cost = gw_of_money(here);
    }
    out->verdict = s->need;
    out->once = gw_of_money(found->once);
    out->cost = gw_of_money(cost);
}

/* kg: framing by its stated weight, and glass. */
static void add_mass(struct gw_bid *out, const struct job *job, struct search *s)
{
    const struct gw_model *model = job->ask->model;
    out->mass = 0;
    for (size_t p = 0; p < s->places->n; p++) {
        const struct gw_quantities *q = &job->quantities[p];
        const struct gw_plan_choice *c = &out->plan.choices[p];
        out->mass += gw_frame_mass(gw_offer_with(&s->offers, c->options), model, q->wall_area);
        for (size_t i = 0; i < s->n_types; i++)
            if (q->lite_area[i] > 0)
                out->mass +=
                    gw_lite_mass(gw_lite_numbered(&model->project.lites.items[i], c->lites[i]), model, q->lite_area[i]);
    }
}

/* First with one choice in every place, which is a plan too should the search of all be stopped. False: no plan was
 * found. */
static bool find_plan(struct search *s, struct search *same, const struct job *job, struct gw_bid *out,
                      enum gw_verdict need)
{
    const struct found everywhere = look(same, need);
    if (everywhere.any) take(out, same, job, &everywhere);
    if (everywhere.any && job->out->by_mass) {
        add_mass(out, job, same);
        out->everywhere_mass = out->mass;
    }
    out->everywhere_cost = everywhere.any ? out->cost : GW_ABSENT;
    const struct found own = look(s, need);
    if (own.any) take(out, s, job, &own);
    out->bound = gw_of_money(own.bound);
    out->complete = !s->stopped && !same->stopped;
    if (everywhere.any) out->saving = out->everywhere_cost - out->cost;
    return own.any || everywhere.any;
}

static void judge_whole(struct gw_bid *out, const struct job *job, struct search *s)
{
    const size_t n = job->out->demands.demands.n;
    out->findings = gw_alloc(s->ask->arena, n + 1, sizeof *out->findings);
    gw_judge_plan(out->findings, &out->summary, &job->out->demands, job->ask, &out->plan, &s->offers);
    for (size_t i = 0; i < n; i++) {
        const struct gw_finding *f = &out->findings[i];
        if (!f->demand->element) continue;
        struct gw_selected *place = &out->places.items[s->places->of[f->demand->element->index]];
        if (f->verdict != GW_NOT_REQUIRED && gw_graver(f, place->governing)) place->governing = f;
    }
}

/* With nothing chosen anywhere. */
static void judge_offered(struct gw_bid *out, const struct job *job, struct search *s)
{
    const size_t n = job->out->demands.demands.n;
    const struct gw_plan plan = {s->candidate, s->places, gw_search_choices(s, NULL)};
    struct gw_finding *findings = gw_alloc(s->ask->arena, n + 1, sizeof *findings);
    gw_judge_plan(findings, &out->offered, &job->out->demands, job->ask, &plan, &s->offers);
}

static void add_all_that_fail(struct gw_bid *out, const struct job *job)
{
    struct gw_arena *arena = job->ask->arena;
    const size_t n = job->out->demands.demands.n;
    out->blocked.items = gw_alloc(arena, n + 1, sizeof *out->blocked.items);
    out->blocked_together = !job->ask->takeoff->too_low;
    for (size_t i = 0; i < n; i++) {
        const struct gw_finding *f = &out->findings[i];
        if (f->verdict != GW_FAIL || f->demand->check->path) continue;
        const struct gw_element *e = f->demand->element;
        const size_t place = e ? job->out->places.of[e->index] : 0;
        out->blocked.items[out->blocked.n++] = (struct gw_blocked){
            .finding = f, .place = e ? &job->out->places.items[place] : NULL, .choice = "", .together = true};
    }
}

/* `findings` are those of nothing chosen. */
static void add_blocked(struct gw_bid *out, const struct job *job, struct search *s)
{
    if (!job->ask->takeoff->too_low) gw_search_blocked(out, s);
    if (!out->blocked.n) add_all_that_fail(out, job);
}

static void list_places(struct gw_bid *out, const struct job *job)
{
    const struct gw_plan_places *places = &job->out->places;
    out->places.items = gw_alloc(job->ask->arena, places->n + 1, sizeof *out->places.items);
    out->places.n = places->n;
    for (size_t p = 0; p < places->n; p++)
        out->places.items[p] =
            (struct gw_selected){.place = &places->items[p], .quantities = job->quantities[p], .cost = GW_ABSENT};
}

static void select_one(struct gw_bid *out, const struct job *job, const struct gw_system *candidate)
{
    struct search s, same;
    start(&s, job, candidate, false);
    start(&same, job, candidate, true);
    same.known = s.known; /* what a check came to is the same in both */
    gw_search_screws(&s);
    same.screws = s.screws;
    same.spacing = s.spacing;
    *out = (struct gw_bid){.candidate = candidate,
                           .cost = GW_ABSENT,
                           .everywhere_cost = GW_ABSENT,
                           .saving = GW_ABSENT,
                           .everywhere_mass = GW_ABSENT};
    list_places(out, job);
    bool found = !job->ask->takeoff->too_low && find_plan(&s, &same, job, out, GW_PASS);
    if (!found && !s.stopped && !same.stopped) found = find_plan(&s, &same, job, out, GW_NOT_SHOWN);
    if (!found) {
        keep_plan(out, &s, NULL);
        out->verdict = s.stopped || same.stopped ? GW_NOT_SHOWN : GW_FAIL;
    }
    out->examined = s.examined + same.examined;
    out->mismatches = s.mismatches + same.mismatches;
    judge_whole(out, job, &s);
    judge_offered(out, job, &s);
    add_mass(out, job, &s);
    gw_itemize(out, job->ask->model, job->shared, job->ask->arena);
    if (out->verdict == GW_FAIL) add_blocked(out, job, &s);
    if (job->limits->scratch) gw_arena_rewind(job->limits->scratch);
}

/* Glass alone is no mass of a wall: whose framing has no known weight stands behind those whose has. */
static void rank_by_mass(struct gw_bid *bid)
{
    if (gw_given(bid->cost)) bid->cost = gw_given(bid->mass) ? bid->mass : HUGE_VAL;
}

/* What was counted so far is mass. */
static void settle_masses(struct gw_bid *bid)
{
    bid->bound = bid->bound < GW_MASS_UNKNOWN ? fmax(bid->bound, 0) : GW_ABSENT;
    if (!gw_given(bid->cost)) return;
    bid->cost = 0;
    if (gw_given(bid->everywhere_cost)) bid->everywhere_cost = bid->saving = 0;
    for (size_t p = 0; p < bid->places.n; p++) bid->places.items[p].cost = 0;
}

static int best_first(const void *left, const void *right)
{
    const struct gw_bid *a = left, *b = right;
    const int x = gw_verdict_rank(a->verdict), y = gw_verdict_rank(b->verdict);
    if (x != y) return x - y;
    if (a->cost < b->cost || a->cost > b->cost) return a->cost < b->cost ? -1 : 1;
    return (a->candidate > b->candidate) - (a->candidate < b->candidate); /* as the file has them */
}

void gw_select(struct gw_bids *out, struct gw_ask *ask, const struct gw_select_limits *limits)
{
    *out = (struct gw_bids){.model = ask->model, .takeoff = ask->takeoff};
    gw_judge_demands(&out->demands, ask);
    gw_plan_places_of(&out->places, ask->model, ask->takeoff, ask->arena);
    out->by_mass = !gw_anything_priced(ask->model);
    struct gw_quantities *quantities = gw_alloc(ask->arena, out->places.n + 1, sizeof *quantities);
    struct gw_shared_list shared;
    gw_quantities_of(quantities, ask, &out->places);
    gw_share_corners(&shared, quantities, ask, &out->places);
    out->shares_corners = shared.n > 0;
    struct gw_finding *whole = gw_alloc(ask->arena, out->demands.demands.n + 1, sizeof *whole);
    const struct job job = {out, ask, limits, quantities, &shared, whole};
    out->items.n = ask->model->systems.n;
    out->items.items = gw_alloc(ask->arena, out->items.n + 1, sizeof *out->items.items);
    for (size_t i = 0; i < out->items.n; i++) select_one(&out->items.items[i], &job, &ask->model->systems.items[i]);
    gw_list_unpriced(out, ask->arena);
    for (size_t i = 0; out->by_mass && i < out->items.n; i++) rank_by_mass(&out->items.items[i]);
    qsort(out->items.items, out->items.n, sizeof *out->items.items, best_first);
    for (size_t i = 0; out->by_mass && i < out->items.n; i++) settle_masses(&out->items.items[i]);
}
