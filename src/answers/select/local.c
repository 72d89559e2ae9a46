/* One place by itself: sets of values in the order of their least cost. The cheapest values of a set are tried; where a
 * check is not good enough with them, what it hung on is learned, and the set parts into those sets in which at least
 * one of these is otherwise. So every combination that is cheaper than the first good one was ruled out. */
#include "answers/select/select_internal.h"

#include <string.h>

/* A set of combinations: of each variable of the place some values. */
struct state {
    values *domain;
    uint32_t *value; /* the cheapest of each */
    struct total total;
};
struct heap {
    struct state **items;
    size_t n, capacity;
};

static int compare_totals(const struct total *a, const struct total *b)
{
    if (a->cost != b->cost) return a->cost < b->cost ? -1 : 1;
    return (a->options > b->options) - (a->options < b->options);
}

int gw_compare_ties(const struct search *s, const struct place *p, const uint32_t *a, const uint32_t *b)
{
    for (size_t i = 0; i < p->n; i++) {
        const enum var_kind kind = s->vars[p->vars[i]].kind;
        if (kind == VAR_HEAVIEST || a[i] == b[i]) continue;
        /* an option that stands earlier in the file goes before a later one; a make-up of its own before others */
        return kind == VAR_OPTION ? (a[i] > b[i] ? -1 : 1) : (a[i] < b[i] ? -1 : 1);
    }
    return 0;
}

static bool before(const struct search *s, const struct place *p, const struct state *a, const struct state *b)
{
    const int order = compare_totals(&a->total, &b->total);
    return order ? order < 0 : gw_compare_ties(s, p, a->value, b->value) < 0;
}

static void push(struct search *s, const struct place *p, struct heap *h, struct state *state)
{
    h->items = gw_grow(s->arena, h->items, h->n, &h->capacity, sizeof(struct state *));
    size_t i = h->n++;
    for (; i && before(s, p, state, h->items[(i - 1) / 2]); i = (i - 1) / 2) h->items[i] = h->items[(i - 1) / 2];
    h->items[i] = state;
}

static struct state *pop(const struct search *s, const struct place *p, struct heap *h)
{
    if (!h->n) return NULL;
    struct state *first = h->items[0], *last = h->items[--h->n];
    size_t i = 0;
    for (size_t child = 1; child < h->n; child = 2 * i + 1) {
        if (child + 1 < h->n && before(s, p, h->items[child + 1], h->items[child])) child++;
        if (!before(s, p, h->items[child], last)) break;
        h->items[i] = h->items[child];
        i = child;
    }
    if (h->n) h->items[i] = last;
    return first;
}

/* The values of a variable by cost, then options taken, then as ties are told. */
static bool cheaper(const struct price *a, const struct price *b, enum var_kind kind)
{
    if (a->cost != b->cost) return a->cost < b->cost;
    return a->options < b->options && kind != VAR_HEAVIEST;
}

/* False: a variable has no value left. */
static bool settle(const struct search *s, const struct place *p, struct state *state)
{
    state->total = (struct total){p->fixed, 0};
    for (size_t i = 0; i < p->n; i++) {
        const struct var *v = &s->vars[p->vars[i]];
        uint32_t best = v->n;
        for (uint32_t k = 0; k < v->n; k++)
            if ((state->domain[i] >> k & 1) &&
                (best == v->n || cheaper(&p->prices[i][k], &p->prices[i][best], v->kind)))
                best = k;
        if (best == v->n) return false;
        state->value[i] = best;
        state->total.cost += p->prices[i][best].cost;
        state->total.options += p->prices[i][best].options;
    }
    return true;
}

static struct state *new_state(struct search *s, const struct place *p, const values *domain)
{
    struct state *state = gw_alloc(s->arena, 1, sizeof *state);
    state->domain = gw_alloc(s->arena, p->n + 1, sizeof *state->domain);
    state->value = gw_alloc(s->arena, p->n + 1, sizeof *state->value);
    memcpy(state->domain, domain, p->n * sizeof *domain);
    return state;
}

static bool holds(const struct nogood *g, const uint32_t *value)
{
    for (size_t i = 0; i < g->n; i++)
        if (value[g->literals[i].var] != g->literals[i].value) return false;
    return true;
}

static const struct nogood *violated(const struct nogoods *all, const uint32_t *value)
{
    for (size_t i = all->n; i-- > 0;)
        if (holds(&all->items[i], value)) return &all->items[i];
    return NULL;
}

/* The set without the combinations that the nogood rules out, in parts that have none in common. */
static void part(struct search *s, const struct place *p, struct heap *h, const struct state *state,
                 const struct nogood *g)
{
    values *domain = gw_alloc(s->arena, p->n + 1, sizeof *domain);
    memcpy(domain, state->domain, p->n * sizeof *domain);
    for (size_t i = 0; i < g->n; i++) {
        const uint32_t var = g->literals[i].var;
        const values own = (values)1 << g->literals[i].value;
        const values others = domain[var] & ~own;
        if (!others) continue;
        domain[var] = others;
        struct state *next = new_state(s, p, domain);
        if (settle(s, p, next)) push(s, p, h, next);
        domain[var] = own;
    }
}

/* Every check that looks at this place alone; what is not good enough is learned. False: something was. */
static bool satisfies(struct search *s, size_t place, const struct state *state)
{
    struct place *p = &s->at[place];
    const gw_option_set taken = gw_search_set(s, place, state->value);
    const size_t before = p->nogoods.n;
    s->examined++;
    if (!gw_offer_with(&s->offers, taken)) {
        struct seen all = {NULL, &(const struct gw_reads){0}, ~(gw_option_set)0};
        gw_learn(s, &p->nogoods, place, &all, state->value);
        return false;
    }
    for (size_t i = 0; i < p->n_demands; i++) {
        const struct seen seen = gw_search_see(s, p->demands[i].place, p->demands[i].demand, taken);
        const struct gw_check *check = seen.finding->demand->check;
        if (gw_good_enough(s, seen.finding) || seen.reads->beyond || check->path) continue;
        gw_learn(s, &p->nogoods, place, &seen, state->value);
    }
    return p->nogoods.n == before;
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
    struct heap heap = {0};
    struct state *state = new_state(s, p, domains);
    if (settle(s, p, state)) push(s, p, &heap, state);
    while ((state = pop(s, p, &heap)) && !must_stop(s)) {
        const struct nogood *g = violated(&p->nogoods, state->value);
        if (!g && satisfies(s, place, state)) {
            *out = (struct local){true, state->total, state->value};
            return;
        }
        if (!g) g = violated(&p->nogoods, state->value);
        part(s, p, &heap, state, g);
    }
}

const struct local *gw_solve_place(struct search *s, size_t place, const values *domains)
{
    struct place *p = &s->at[place];
    const size_t size = p->n ? p->n * sizeof *domains : 1;
    void **known = gw_memo_at(&p->solved, s->arena, domains, size);
    if (*known) return *known;
    struct local *local = gw_alloc(s->arena, 1, sizeof *local);
    solve(s, place, local, domains);
    if (!s->stopped) *gw_memo_at(&p->solved, s->arena, domains, size) = local;
    return local;
}
