/* All places together. Each is solved by itself within the values that are left; what they share must come out alike,
 * what is paid once is paid or done without, and the plan as a whole must satisfy the checks that look along load paths
 * or at other places. Where one of these is not so the set of plans parts in two or more that have no plan in common.
 */
#include "answers/select/select_internal.h"

#include "judge/judge_internal.h"

#include <string.h>

struct node {
    values *domain;            /* by variable */
    gw_option_set paid;        /* options whose single cost is in `total` */
    const struct local **best; /* by place */
    struct total total;        /* no plan of this node costs less */
    bool relaxed;              /* false: `best` and `total` are those of the set that it is a part of */
};
struct queue {
    struct node **items;
    size_t n, capacity;
};

static int compare_nodes(const struct search *s, const struct node *a, const struct node *b)
{
    if (a->total.cost != b->total.cost) return a->total.cost < b->total.cost ? -1 : 1;
    if (a->total.options != b->total.options) return a->total.options < b->total.options ? -1 : 1;
    for (size_t p = 0; p < s->n_at; p++) {
        const int order = gw_compare_ties(s, &s->at[p], a->best[p]->value, b->best[p]->value);
        if (order) return order;
    }
    return (int)b->relaxed - (int)a->relaxed; /* what is as good already needs no look at the other */
}

static void push(struct search *s, struct queue *q, struct node *node)
{
    q->items = gw_grow(s->arena, q->items, q->n, &q->capacity, sizeof(struct node *));
    size_t i = q->n++;
    for (; i && compare_nodes(s, node, q->items[(i - 1) / 2]) < 0; i = (i - 1) / 2) q->items[i] = q->items[(i - 1) / 2];
    q->items[i] = node;
}

static struct node *pop(const struct search *s, struct queue *q)
{
    if (!q->n) return NULL;
    struct node *first = q->items[0], *last = q->items[--q->n];
    size_t i = 0;
    for (size_t child = 1; child < q->n; child = 2 * i + 1) {
        if (child + 1 < q->n && compare_nodes(s, q->items[child + 1], q->items[child]) < 0) child++;
        if (compare_nodes(s, q->items[child], last) >= 0) break;
        q->items[i] = q->items[child];
        i = child;
    }
    if (q->n) q->items[i] = last;
    return first;
}

/* Each place by itself; false: one has no good combination left. */
static bool relax(struct search *s, struct node *node)
{
    node->relaxed = true;
    values *own = gw_alloc(s->arena, s->n_vars + 1, sizeof *own);
    node->best = gw_alloc(s->arena, s->n_at + 1, sizeof *node->best);
    node->total = (struct total){0, 0};
    for (size_t i = 0; i < s->candidate->options.n; i++)
        if (node->paid >> i & 1) node->total.cost += gw_to_money(s->candidate->options.items[i].once);
    for (size_t p = 0; p < s->n_at; p++) {
        const struct place *at = &s->at[p];
        for (size_t i = 0; i < at->n; i++) own[i] = node->domain[at->vars[i]];
        const struct local *local = gw_solve_place(s, p, own);
        if (!local->found) return false;
        node->best[p] = local;
        node->total.cost += local->total.cost;
        node->total.options += local->total.options;
    }
    return true;
}

static struct node *copy_of(struct search *s, const struct node *node)
{
    struct node *out = gw_alloc(s->arena, 1, sizeof *out);
    out->paid = node->paid;
    out->best = node->best;
    out->total = node->total;
    out->domain = gw_alloc(s->arena, s->n_vars + 1, sizeof *out->domain);
    memcpy(out->domain, node->domain, s->n_vars * sizeof *out->domain);
    return out;
}

/* A shared variable whose places chose differently: one node a value. */
static bool part_by_disagreement(struct search *s, struct queue *q, const struct node *node)
{
    uint32_t *value = gw_alloc(s->arena, s->n_vars + 1, sizeof *value);
    bool *met = gw_alloc(s->arena, s->n_vars + 1, sizeof *met);
    for (size_t p = 0; p < s->n_at; p++)
        for (size_t i = 0; i < s->at[p].n; i++) {
            const size_t var = s->at[p].vars[i];
            const uint32_t here = node->best[p]->value[i];
            if (!met[var]) value[var] = here;
            const bool differs = met[var] && value[var] != here;
            met[var] = true;
            if (!differs) continue;
            for (uint32_t k = 0; k < s->vars[var].n; k++) {
                if (!(node->domain[var] >> k & 1)) continue;
                struct node *next = copy_of(s, node);
                next->domain[var] = (values)1 << k;
                push(s, q, next);
            }
            return true;
        }
    return false;
}

/* An option with a single cost that is used and not yet paid: it is paid, or done without. */
static bool part_by_single_cost(struct search *s, struct queue *q, const struct node *node)
{
    for (size_t p = 0; p < s->n_at; p++)
        for (size_t i = 0; i < s->at[p].n; i++) {
            const struct var *v = &s->vars[s->at[p].vars[i]];
            const bool due = v->kind == VAR_OPTION && node->best[p]->value[i] && (s->priced_once >> v->index & 1) &&
                             !(node->paid >> v->index & 1);
            if (!due) continue;
            struct node *with = copy_of(s, node), *without = copy_of(s, node);
            with->paid |= gw_option_bit(v->index);
            for (size_t k = 0; k < s->n_vars; k++)
                if (s->vars[k].kind == VAR_OPTION && s->vars[k].index == v->index) without->domain[k] &= 1;
            push(s, q, with);
            push(s, q, without);
            return true;
        }
    return false;
}

/* The plan as a whole -----------------------------------------------------------------------------------------------
 */

static bool holds(const struct search *s, const struct node *node, const struct nogood *g)
{
    for (size_t i = 0; i < g->n; i++) {
        const uint32_t var = g->literals[i].var, place = var / (uint32_t)s->n_vars, own = var % (uint32_t)s->n_vars;
        const struct place *p = &s->at[place];
        for (size_t k = 0; k < p->n; k++)
            if (p->vars[k] == own && node->best[place]->value[k] != g->literals[i].value) return false;
    }
    return true;
}

static const struct nogood *violated(const struct search *s, const struct node *node)
{
    for (size_t i = 0; i < s->across.n; i++)
        if (holds(s, node, &s->across.items[i])) return &s->across.items[i];
    return NULL;
}

/* Literals of one finding at one place, in variables of the whole: place x n_vars + variable. */
static size_t literals_of(const struct search *s, const struct node *node, size_t place, const struct seen *seen,
                          struct literal *out, size_t n)
{
    const struct place *p = &s->at[place];
    for (size_t i = 0; i < p->n; i++) {
        const struct var *v = &s->vars[p->vars[i]];
        const bool lite = v->kind == VAR_LITE && (seen->reads->beyond || (seen->reads->lites >> v->index % 64 & 1));
        const bool heavy = v->kind == VAR_HEAVIEST && seen->reads->weights &&
                           (seen->reads->weights >> v->index % 64 & 1) && (seen->reads->walls >> v->wall % 64 & 1);
        const bool option = v->kind == VAR_OPTION && (seen->relevant >> v->index & 1);
        if (!lite && !heavy && !option) continue;
        const uint32_t name = (uint32_t)(place * s->n_vars + p->vars[i]);
        bool known = false;
        for (size_t k = 0; k < n && !known; k++) known = out[k].var == name;
        if (!known) out[n++] = (struct literal){name, node->best[place]->value[i]};
    }
    return n;
}

struct gathering {
    struct search *s;
    const struct node *node;
    struct literal *literals;
    size_t n;
};

static gw_option_set taken_at(struct search *s, const struct node *node, size_t place)
{
    return gw_search_set(s, place, node->best[place]->value);
}

/* What looked at another place hung on the make-ups of every place of its wall. */
static void gather_wall(struct gathering *g, size_t place, const struct seen *seen)
{
    struct search *s = g->s;
    g->n = literals_of(s, g->node, s->at_of[place], seen, g->literals, g->n);
    for (size_t p = 0; p < s->places->n; p++) {
        const struct seen there = {seen->finding, seen->reads, 0};
        if (s->places->items[p].elevation == s->places->items[place].elevation)
            g->n = literals_of(s, g->node, s->at_of[p], &there, g->literals, g->n);
    }
}

static void gather(void *user, size_t demand)
{
    struct gathering *g = user;
    struct search *s = g->s;
    const size_t place = s->places->of[s->demands->demands.items[demand].element->index];
    const struct seen seen = gw_search_see(s, place, demand, taken_at(s, g->node, s->at_of[place]));
    if (seen.reads->beyond) gather_wall(g, place, &seen);
    else g->n = literals_of(s, g->node, s->at_of[place], &seen, g->literals, g->n);
}

static void learn_across(struct search *s, const struct node *node, const struct gw_paths *paths,
                         const struct gw_finding *findings, size_t demand, const struct gw_finding *why)
{
    struct gathering g = {s, node, NULL, 0};
    size_t most = 1;
    for (size_t p = 0; p < s->n_at; p++) most += s->at[p].n;
    g.literals = gw_alloc(s->arena, most, sizeof *g.literals);
    gather(&g, demand);
    if (why->demand->check->path) gw_path_visit(paths, s->ask, &findings[demand], gather, &g);
    gw_add_nogood(s, &s->across, g.literals, g.n, why);
}

/* Every check with what is chosen everywhere; what is not good enough is learned. False: something was. */
static bool satisfies(struct search *s, const struct node *node)
{
    const size_t n = s->demands->demands.n, before = s->across.n;
    struct gw_finding *findings = s->whole;
    s->examined++;
    gw_option_set *taken = gw_alloc(s->arena, s->n_at + 1, sizeof *taken);
    for (size_t p = 0; p < s->n_at; p++) taken[p] = taken_at(s, node, p);
    for (size_t i = 0; i < n; i++) {
        const struct gw_demand *d = &s->demands->demands.items[i];
        findings[i] = (struct gw_finding){.candidate = s->candidate, .demand = d, .verdict = GW_PASS};
        if (!d->element) continue; /* settled place by place */
        const size_t place = s->places->of[d->element->index];
        findings[i] = *gw_search_see(s, place, i, taken[s->at_of[place]]).finding;
        if (s->aside && s->aside[i]) findings[i].verdict = GW_PASS; /* what leans on it holds as far as it goes */
    }
    s->ask->choice = &s->chosen;
    const struct gw_paths *paths = gw_paths_of(findings, n, s->ask);
    gw_judge_paths(findings, n, s->ask, paths);
    s->ask->choice = NULL;
    for (size_t i = 0; i < n; i++) {
        if (gw_good_enough(s, &findings[i]) || (s->aside && s->aside[i])) continue;
        struct gw_finding *why = gw_alloc(s->arena, 1, sizeof *why);
        *why = findings[i];
        why->link = NULL; /* which stands in the room of the next plan */
        learn_across(s, node, paths, findings, i, why);
    }
    return s->across.n == before;
}

static void part_by_nogood(struct search *s, struct queue *q, const struct node *node, const struct nogood *g)
{
    struct node *kept = copy_of(s, node);
    for (size_t i = 0; i < g->n; i++) {
        const size_t var = g->literals[i].var % s->n_vars;
        const values own = (values)1 << g->literals[i].value, others = kept->domain[var] & ~own;
        if (!others) continue;
        struct node *next = copy_of(s, kept);
        next->domain[var] = others;
        push(s, q, next);
        kept->domain[var] = own;
    }
}

static struct node *root(struct search *s)
{
    struct node *node = gw_alloc(s->arena, 1, sizeof *node);
    node->domain = gw_alloc(s->arena, s->n_vars + 1, sizeof *node->domain);
    for (size_t i = 0; i < s->n_vars; i++) node->domain[i] = ((values)1 << s->vars[i].n) - 1;
    return node;
}

bool gw_search_plan(struct search *s, const struct local **best, money *once, money *bound)
{
    struct queue queue = {0};
    struct node *node = root(s);
    gw_guess_heaviest(s, node->domain);
    if (relax(s, node)) push(s, &queue, node);
    while (!s->stopped && (node = pop(s, &queue))) {
        *bound = node->total.cost;
        if (!node->relaxed) {
            if (relax(s, node)) push(s, &queue, node);
            continue;
        }
        if (part_by_disagreement(s, &queue, node) || part_by_single_cost(s, &queue, node)) continue;
        const struct nogood *g = violated(s, node);
        if (!g && satisfies(s, node)) {
            memcpy(best, node->best, s->n_at * sizeof *best);
            *once = 0;
            for (size_t i = 0; i < s->candidate->options.n; i++)
                if (node->paid >> i & 1) *once += gw_to_money(s->candidate->options.items[i].once);
            return true;
        }
        if (!g) g = violated(s, node);
        part_by_nogood(s, &queue, node, g);
    }
    return false;
}
