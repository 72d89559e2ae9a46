/* One place by itself. The cheapest values that no nogood rules out are tried; where a check is not good enough with
 * them, what it hung on is learned, and the next cheapest are tried. So every combination that is cheaper than the
 * first good one was ruled out.
 *
 * Variables that no nogood ties together, directly or by others, are cheapest each group by itself. Of a group, sets of
 * values stand in the order of their cheapest; one that a nogood rules out parts into those sets in which at least one
 * of its values is otherwise. */
#include "answers/select/select_internal.h"

#include <string.h>

/* Variables tied together, in the order of ties, and what ties them. */
struct group {
    size_t *vars;
    size_t n;
    const struct nogood **nogoods;
    size_t n_nogoods;
};
/* What is worked with while one place is solved. */
struct solving {
    struct search *s;
    const struct place *p;
    const values *domains;
    size_t *group_of, *slot_of; /* by variable of the place */
    struct group *groups;
};

/* A set of combinations: of each variable of the group some values. */
struct state {
    values *domain;
    uint32_t *value; /* the cheapest of each */
    struct total total;
};
struct heap {
    struct state **items;
    size_t n, capacity;
};

/* An option that stands earlier in the file goes before a later one; a make-up of its own before others. */
static int compare_values(enum var_kind kind, uint32_t a, uint32_t b)
{
    if (kind == VAR_HEAVIEST || kind == VAR_SHARED || a == b) return 0;
    return kind == VAR_OPTION ? (a > b ? -1 : 1) : (a < b ? -1 : 1);
}

int gw_compare_ties(const struct search *s, const struct place *p, const uint32_t *a, const uint32_t *b)
{
    for (size_t i = 0; i < p->n; i++) {
        const int order = compare_values(s->vars[p->vars[i]].kind, a[i], b[i]);
        if (order) return order;
    }
    return 0;
}

static bool before(const struct solving *w, const struct group *g, const struct state *a, const struct state *b)
{
    if (a->total.cost != b->total.cost) return a->total.cost < b->total.cost;
    if (a->total.options != b->total.options) return a->total.options < b->total.options;
    for (size_t i = 0; i < g->n; i++) {
        const int order = compare_values(w->s->vars[w->p->vars[g->vars[i]]].kind, a->value[i], b->value[i]);
        if (order) return order < 0;
    }
    return false;
}

static void push(const struct solving *w, const struct group *g, struct heap *h, struct state *state)
{
    h->items = gw_grow(w->s->arena, h->items, h->n, &h->capacity, sizeof(struct state *));
    size_t i = h->n++;
    for (; i && before(w, g, state, h->items[(i - 1) / 2]); i = (i - 1) / 2) h->items[i] = h->items[(i - 1) / 2];
    h->items[i] = state;
}

static struct state *pop(const struct solving *w, const struct group *g, struct heap *h)
{
    if (!h->n) return NULL;
    struct state *first = h->items[0], *last = h->items[--h->n];
    size_t i = 0;
    for (size_t child = 1; child < h->n; child = 2 * i + 1) {
        if (child + 1 < h->n && before(w, g, h->items[child + 1], h->items[child])) child++;
        if (!before(w, g, h->items[child], last)) break;
        h->items[i] = h->items[child];
        i = child;
    }
    if (h->n) h->items[i] = last;
    return first;
}

/* The values of a variable by cost, then options taken, then as ties are told. */
static bool cheaper(const struct price *prices, uint32_t a, uint32_t b, const struct var *v)
{
    if (v->kind == VAR_HEAVIEST) return a == v->likely;
    if (prices[a].cost != prices[b].cost) return prices[a].cost < prices[b].cost;
    return prices[a].options < prices[b].options;
}

static const money *costs_by_spacing(const struct place *p, size_t var)
{
    return p->by_spacing ? p->by_spacing[var] : NULL;
}

/* The least that an option which counts screws costs with any spacing that the set has. */
static money least_by_spacing(const struct solving *w, const struct state *state, const money *costs)
{
    const struct place *p = w->p;
    money least = costs[0];
    for (size_t i = 0; i < p->n_spaced; i++) {
        const values domain = state->domain[w->slot_of[p->spaced[i]]];
        if (!(domain & 1)) return costs[1 + i];
        if ((domain >> 1 & 1) && costs[1 + i] < least) least = costs[1 + i];
    }
    return least;
}

/* False: a variable has no value left. */
static bool settle(const struct solving *w, const struct group *g, struct state *state)
{
    const struct place *p = w->p;
    state->total = (struct total){0, 0};
    for (size_t i = 0; i < g->n; i++) {
        const struct var *v = &w->s->vars[p->vars[g->vars[i]]];
        const money *counted = costs_by_spacing(p, g->vars[i]);
        const struct price *prices = p->prices[g->vars[i]];
        const struct price either[] = {prices[0], {counted ? least_by_spacing(w, state, counted) : 0, 1}};
        uint32_t best = v->n;
        if (counted) prices = either;
        for (uint32_t k = 0; k < v->n; k++)
            if ((state->domain[i] >> k & 1) && (best == v->n || cheaper(prices, k, best, v))) best = k;
        if (best == v->n) return false;
        state->value[i] = best;
        state->total.cost += prices[best].cost;
        state->total.options += prices[best].options;
    }
    return true;
}

static struct state *new_state(const struct solving *w, const struct group *g, const values *domain)
{
    struct state *state = gw_alloc(w->s->arena, 1, sizeof *state);
    state->domain = gw_alloc(w->s->arena, g->n + 1, sizeof *state->domain);
    state->value = gw_alloc(w->s->arena, g->n + 1, sizeof *state->value);
    memcpy(state->domain, domain, g->n * sizeof *domain);
    return state;
}

static bool holds(const struct solving *w, const struct nogood *g, const uint32_t *value)
{
    for (size_t i = 0; i < g->n; i++)
        if (value[w->slot_of[g->literals[i].var]] != g->literals[i].value) return false;
    return true;
}

static const struct nogood *violated(const struct solving *w, const struct group *g, const uint32_t *value)
{
    for (size_t i = g->n_nogoods; i-- > 0;)
        if (holds(w, g->nogoods[i], value)) return g->nogoods[i];
    return NULL;
}

/* Which of those that space screws is taken: 0 none, else its number from 1. */
static size_t spacing_of(const struct solving *w, const uint32_t *value)
{
    for (size_t i = 0; i < w->p->n_spaced; i++)
        if (value[w->slot_of[w->p->spaced[i]]]) return 1 + i;
    return 0;
}

/* An option that counts screws costs more by the spacing that the values have than the set's total has it. */
static bool costs_more(const struct solving *w, const struct group *g, const struct state *state)
{
    for (size_t i = 0; i < g->n; i++) {
        const money *counted = costs_by_spacing(w->p, g->vars[i]);
        if (counted && state->value[i] && counted[spacing_of(w, state->value)] != least_by_spacing(w, state, counted))
            return true;
    }
    return false;
}

/* The values of those that space screws: with them the total is what the values cost. */
static struct nogood spacing_alone(const struct solving *w, const uint32_t *value)
{
    struct literal *literals = gw_alloc(w->s->arena, w->p->n_spaced + 1, sizeof *literals);
    for (size_t i = 0; i < w->p->n_spaced; i++)
        literals[i] = (struct literal){(uint32_t)w->p->spaced[i], value[w->slot_of[w->p->spaced[i]]]};
    return (struct nogood){literals, w->p->n_spaced, NULL};
}

/* The set without the combinations that the nogood rules out, in parts that have none in common; these by themselves
 * where they are not ruled out but cost more. */
static void part(const struct solving *w, const struct group *g, struct heap *h, const struct state *state,
                 const struct nogood *out, bool ruled_out)
{
    values *domain = gw_alloc(w->s->arena, g->n + 1, sizeof *domain);
    memcpy(domain, state->domain, g->n * sizeof *domain);
    for (size_t i = 0; i < out->n; i++) {
        const size_t slot = w->slot_of[out->literals[i].var];
        const values own = (values)1 << out->literals[i].value;
        const values others = domain[slot] & ~own;
        if (!others) continue;
        domain[slot] = others;
        struct state *next = new_state(w, g, domain);
        if (settle(w, g, next)) push(w, g, h, next);
        domain[slot] = own;
    }
    if (ruled_out) return;
    struct state *these = new_state(w, g, domain);
    if (settle(w, g, these)) push(w, g, h, these);
}

/* The cheapest values of a group that none of its nogoods rules out; NULL: there are none. */
static const struct state *cheapest_of_group(const struct solving *w, const struct group *g)
{
    struct heap heap = {0};
    values *domain = gw_alloc(w->s->arena, g->n + 1, sizeof *domain);
    for (size_t i = 0; i < g->n; i++) domain[i] = w->domains[g->vars[i]];
    struct state *state = new_state(w, g, domain);
    if (settle(w, g, state)) push(w, g, &heap, state);
    while ((state = pop(w, g, &heap))) {
        const struct nogood *out = violated(w, g, state->value);
        if (!out && !costs_more(w, g, state)) break;
        const struct nogood spacing = out ? *out : spacing_alone(w, state->value);
        part(w, g, &heap, state, &spacing, out != NULL);
    }
    return state;
}

/* Groups ---------------------------------------------------------------------------------------------------------- */

/* Some combination within the domains has all its values. */
static bool applies(const struct solving *w, const struct nogood *g)
{
    for (size_t i = 0; i < g->n; i++)
        if (!(w->domains[g->literals[i].var] >> g->literals[i].value & 1)) return false;
    return true;
}

static size_t leader_of(const struct solving *w, size_t var)
{
    while (w->group_of[var] != var) var = w->group_of[var] = w->group_of[w->group_of[var]];
    return var;
}

static void tie_both(const struct solving *w, size_t x, size_t y)
{
    const size_t a = leader_of(w, x), b = leader_of(w, y);
    w->group_of[a < b ? b : a] = a < b ? a : b;
}

/* What counts screws with all that space them. */
static void tie_spacings(const struct solving *w)
{
    for (size_t i = 0; i < w->p->n; i++)
        for (size_t k = 0; costs_by_spacing(w->p, i) && k < w->p->n_spaced; k++) tie_both(w, i, w->p->spaced[k]);
}

/* Each group has its first variable's number. */
static void tie(const struct solving *w)
{
    const struct nogoods *all = &w->p->nogoods;
    for (size_t i = 0; i < w->p->n; i++) w->group_of[i] = i;
    for (size_t i = 0; i < all->n; i++) {
        const struct nogood *g = &all->items[i];
        if (!applies(w, g)) continue;
        for (size_t k = 1; k < g->n; k++) tie_both(w, g->literals[0].var, g->literals[k].var);
    }
    tie_spacings(w);
}

static void list_groups(const struct solving *w)
{
    const struct place *p = w->p;
    memset(w->groups, 0, (p->n + 1) * sizeof *w->groups);
    for (size_t i = 0; i < p->n; i++) {
        struct group *g = &w->groups[leader_of(w, i)];
        if (!g->vars) g->vars = gw_alloc(w->s->arena, p->n - i, sizeof *g->vars);
        w->slot_of[i] = g->n;
        g->vars[g->n++] = i;
    }
    for (size_t i = 0; i < p->nogoods.n; i++) {
        const struct nogood *out = &p->nogoods.items[i];
        if (!out->n || !applies(w, out)) continue;
        struct group *g = &w->groups[leader_of(w, out->literals[0].var)];
        if (!g->nogoods) g->nogoods = gw_alloc(w->s->arena, p->nogoods.n - i, sizeof *g->nogoods);
        g->nogoods[g->n_nogoods++] = out;
    }
}

/* The cheapest values that no nogood rules out; false: there are none. */
static bool cheapest(const struct solving *w, struct local *out, uint32_t *value)
{
    const struct place *p = w->p;
    for (size_t i = 0; i < p->nogoods.n; i++)
        if (!p->nogoods.items[i].n) return false; /* whatever is chosen */
    tie(w);
    list_groups(w);
    out->total = (struct total){p->fixed, 0};
    for (size_t i = 0; i < p->n; i++) {
        const struct group *g = &w->groups[i];
        if (!g->n) continue;
        const struct state *best = cheapest_of_group(w, g);
        if (!best) return false;
        for (size_t k = 0; k < g->n; k++) value[g->vars[k]] = best->value[k];
        out->total.cost += best->total.cost;
        out->total.options += best->total.options;
    }
    return true;
}

/* Values that are looked at, and all that checks looked at in them. */
struct trial {
    struct search *s;
    size_t place;
    const uint32_t *value;
    gw_option_set taken;
    struct gw_reads reads;
};

/* Learns from the i-th demand of the place where it is not good enough; true: it was so. */
static bool rules_out(struct trial *t, size_t i)
{
    struct search *s = t->s;
    struct place *p = &s->at[t->place];
    if (s->aside && s->aside[p->demands[i].demand]) return false;
    if (s->demands->demands.items[p->demands[i].demand].check->path) return false; /* of the plan as a whole */
    const struct seen seen = gw_search_see(s, p->demands[i].place, p->demands[i].demand, t->taken);
    t->reads.lites |= seen.reads->lites;
    t->reads.weights |= seen.reads->weights;
    t->reads.walls |= seen.reads->walls;
    if (gw_good_enough(s, seen.finding) || seen.reads->beyond) return false;
    gw_learn(s, &p->nogoods, t->place, &seen, t->value);
    return true;
}

static void make_hard(struct place *p, size_t i)
{
    const struct placed_demand moved = p->demands[i];
    p->demands[i] = p->demands[p->n_hard];
    p->demands[p->n_hard++] = moved;
}

/* A guess needs no more than what decides make-ups. */
static bool decides_glass(const struct gw_demand *d) { return d->element && d->element->kind == GW_LITE; }

/* All but the hard ones, one failure of a check: the others of that check wait until it is mended. */
static bool rest_holds(struct trial *t)
{
    struct search *s = t->s;
    struct place *p = &s->at[t->place];
    const struct gw_check *failed = NULL;
    for (size_t i = p->n_hard; i < p->n_demands; i++) {
        const struct gw_demand *d = &s->demands->demands.items[p->demands[i].demand];
        const bool waits = d->check == failed || (s->guessing && !decides_glass(d));
        if (waits || !rules_out(t, i)) continue;
        failed = d->check;
        make_hard(p, i);
    }
    return !failed;
}

/* The same as values that were found good, but for what no check hung on then. */
static bool was_good(const struct place *p, const uint32_t *value)
{
    for (const struct good *g = p->good; g; g = g->next) {
        size_t i = 0;
        while (i < p->n && (!g->matters[i] || g->value[i] == value[i])) i++;
        if (i == p->n) return true;
    }
    return false;
}

static void keep_good(struct trial *t)
{
    struct search *s = t->s;
    struct place *p = &s->at[t->place];
    const struct seen all = {NULL, &t->reads, 0};
    struct good *good = gw_alloc(s->arena, 1, sizeof *good);
    uint32_t *value = gw_alloc(s->arena, p->n + 1, sizeof *value);
    bool *matters = gw_alloc(s->arena, p->n + 1, sizeof *matters);
    memcpy(value, t->value, p->n * sizeof *value);
    for (size_t i = 0; i < p->n; i++) { /* options decide besides whether there is such a system */
        const struct var *v = &s->vars[p->vars[i]];
        matters[i] = v->kind == VAR_OPTION || gw_hangs_on(&all, v);
    }
    *good = (struct good){p->good, value, matters};
    p->good = good;
}

/* Every check that looks at this place alone. False: something was learned. */
static bool satisfies(struct search *s, size_t place, const uint32_t *value)
{
    struct place *p = &s->at[place];
    struct trial t = {.s = s, .place = place, .value = value};
    bool good = true;
    if (!s->limits->recompute && was_good(p, value)) return true;
    s->examined++;
    t.taken = gw_search_set(s, place, value);
    if (!gw_offer_with(&s->offers, t.taken)) {
        struct seen all = {NULL, &(const struct gw_reads){0}, ~(gw_option_set)0};
        gw_learn(s, &p->nogoods, place, &all, value);
        return false;
    }
    for (size_t i = 0; i < p->n_hard; i++) good = !rules_out(&t, i) && good;
    good = good && rest_holds(&t);
    if (good && !s->guessing) keep_good(&t);
    return good;
}

static bool must_stop(struct search *s)
{
    const long most = s->limits->most > 0 ? s->limits->most : 1000000;
    if (s->limits->tell) s->limits->tell(s->limits->user, s->examined);
    if (s->examined >= most || (s->limits->stop && s->limits->stop(s->limits->user))) s->stopped = true;
    return s->stopped;
}

static void solve(struct search *s, size_t place, struct local *out, const values *domains)
{
    struct place *p = &s->at[place];
    struct solving w = {.s = s, .p = p, .domains = domains};
    uint32_t *value = gw_alloc(s->arena, p->n + 1, sizeof *value);
    w.group_of = gw_alloc(s->arena, p->n + 1, sizeof *w.group_of);
    w.slot_of = gw_alloc(s->arena, p->n + 1, sizeof *w.slot_of);
    w.groups = gw_alloc(s->arena, p->n + 1, sizeof *w.groups);
    while (!must_stop(s) && cheapest(&w, out, value)) {
        if (!satisfies(s, place, value)) continue;
        out->found = true;
        out->value = value;
        return;
    }
}

const struct local *gw_solve_place(struct search *s, size_t place, const values *domains)
{
    struct place *p = &s->at[place];
    const size_t size = p->n ? p->n * sizeof *domains : 1;
    const struct local *known = *gw_memo_at(&p->solved, s->arena, domains, size);
    if (known) return known;
    struct local *local = gw_alloc(s->arena, 1, sizeof *local);
    solve(s, place, local, domains);
    if (!s->stopped) *gw_memo_at(&p->solved, s->arena, domains, size) = local;
    return local;
}

static void note_lites(struct search *s, const struct place *p, const uint32_t *value)
{
    const struct gw_lite_type *types = s->ask->model->project.lites.items;
    for (size_t i = 0; i < p->n; i++) {
        const struct var *lite = &s->vars[p->vars[i]];
        for (size_t m = 0; lite->kind == VAR_LITE && m < p->n_members; m++) {
            const size_t wall = s->places->items[p->members[m]].elevation;
            const size_t at = gw_search_var(s, p, VAR_HEAVIEST, lite->index, wall);
            if (at == p->n) continue;
            struct var *heaviest = &s->vars[p->vars[at]];
            const struct gw_lite_type *type = &types[lite->index];
            const double now = gw_lite_mass(gw_lite_numbered(type, heaviest->likely), s->ask->model, 1),
                         here = gw_lite_mass(gw_lite_numbered(type, value[i]), s->ask->model, 1);
            if (here > now) heaviest->likely = value[i];
        }
    }
}

void gw_guess_heaviest(struct search *s, const values *domains)
{
    values *own = gw_alloc(s->arena, s->n_vars + 1, sizeof *own);
    s->guessing = true;
    for (size_t a = 0; a < s->n_at && !s->stopped; a++) {
        struct local local = {.found = false};
        for (size_t i = 0; i < s->at[a].n; i++) own[i] = domains[s->at[a].vars[i]];
        solve(s, a, &local, own);
        if (local.found) note_lites(s, &s->at[a], local.value);
    }
    s->guessing = false;
}
