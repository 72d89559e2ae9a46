/* What blocks a candidate without a plan: at each place that has no choice by itself, the checks each of which fails in
 * every choice there; without such, a least set of checks that no choice satisfies together: leave one out, and some
 * choice satisfies the others, with which that one fails. */
#include "answers/select/select_internal.h"

#include <string.h>

struct trial {
    struct search *s;
    size_t place;
    struct place whole; /* as the search left it */
    const struct gw_check **checks;
    bool *asked; /* by check */
    size_t n;
};

static const struct gw_check *check_of(const struct search *s, const struct placed_demand *d)
{
    return s->demands->demands.items[d->demand].check;
}

static bool is_asked(const struct trial *t, const struct gw_check *check)
{
    for (size_t i = 0; i < t->n; i++)
        if (t->checks[i] == check) return t->asked[i];
    return false;
}

static const struct local *solve(struct search *s, size_t place)
{
    const struct place *p = &s->at[place];
    values *domains = gw_alloc(s->arena, p->n + 1, sizeof *domains);
    for (size_t i = 0; i < p->n; i++) domains[i] = ((values)1 << s->vars[p->vars[i]].n) - 1;
    return gw_solve_place(s, place, domains);
}

/* The cheapest values with which none of the checks that are asked fails; NULL: there are none, or it was stopped. */
static const uint32_t *satisfy(struct trial *t)
{
    struct search *s = t->s;
    struct place *p = &s->at[t->place];
    *p = t->whole;
    p->nogoods = (struct nogoods){0};
    p->solved = (struct gw_memo){0};
    p->good = NULL;
    p->n_hard = p->n_demands = 0;
    p->demands = gw_alloc(s->arena, t->whole.n_demands + 1, sizeof *p->demands);
    for (size_t i = 0; i < t->whole.nogoods.n; i++) { /* rules of the options alone */
        const struct nogood *g = &t->whole.nogoods.items[i];
        if (!g->why) gw_add_nogood(s, &p->nogoods, g->literals, g->n, NULL);
    }
    for (size_t i = 0; i < t->whole.n_demands; i++)
        if (is_asked(t, check_of(s, &t->whole.demands[i]))) p->demands[p->n_demands++] = t->whole.demands[i];
    const struct local *local = solve(s, t->place);
    *p = t->whole;
    return local->found ? local->value : NULL;
}

static void ask_all(struct trial *t, bool asked)
{
    for (size_t i = 0; i < t->n; i++) t->asked[i] = asked;
}

/* Those from whose failures something was learned there: no other rules out a choice. */
static void list_checks(struct trial *t)
{
    const struct nogoods *learned = &t->whole.nogoods;
    t->checks = gw_alloc(t->s->arena, learned->n + 1, sizeof *t->checks);
    t->asked = gw_alloc(t->s->arena, learned->n + 1, sizeof *t->asked);
    for (size_t i = 0; i < learned->n; i++) {
        const struct gw_finding *why = learned->items[i].why;
        size_t k = 0;
        while (why && k < t->n && t->checks[k] != why->demand->check) k++;
        if (why && k == t->n) t->checks[t->n++] = why->demand->check;
    }
}

/* The gravest failure of a check with these values. */
static const struct gw_finding *failure(struct trial *t, const struct gw_check *check, const uint32_t *value)
{
    struct search *s = t->s;
    const struct place *p = &s->at[t->place];
    const struct gw_finding *worst = NULL;
    const gw_option_set taken = gw_search_set(s, t->place, value);
    for (size_t i = 0; i < p->n_demands; i++) {
        if (check_of(s, &p->demands[i]) != check) continue;
        const struct seen seen = gw_search_see(s, p->demands[i].place, p->demands[i].demand, taken);
        const bool fails = !seen.reads->beyond && !gw_good_enough(s, seen.finding);
        if (fails && (!worst || gw_graver(seen.finding, worst))) worst = seen.finding;
    }
    return worst;
}

static const char *words_of(struct trial *t, const uint32_t *value)
{
    struct search *s = t->s;
    const struct place *p = &s->at[t->place];
    struct gw_plan_choice *choices = gw_alloc(s->arena, s->places->n + 1, sizeof *choices);
    unsigned *lites = gw_alloc(s->arena, s->n_types + 1, sizeof *lites);
    for (size_t i = 0; i < s->places->n; i++) choices[i].lites = lites;
    struct gw_plan_choice *here = &choices[p->members[0]];
    for (size_t i = 0; i < p->n; i++) {
        const struct var *v = &s->vars[p->vars[i]];
        if (v->kind == VAR_LITE) lites[v->index] = value[i];
        if (v->kind == VAR_OPTION && value[i]) here->options |= gw_option_bit(v->index);
    }
    const struct gw_plan plan = {s->candidate, s->places, choices};
    return gw_choice_words(&plan, p->members[0], s->ask->model, s->ask->arena);
}

static void add(struct gw_bid *out, struct trial *t, size_t check, const uint32_t *value, const char *choice)
{
    struct search *s = t->s;
    const struct gw_finding *found = value ? failure(t, t->checks[check], value) : NULL;
    if (!found) return;
    struct gw_finding *kept = gw_alloc(s->ask->arena, 1, sizeof *kept);
    *kept = *found;
    out->blocked.items =
        gw_grow(s->ask->arena, out->blocked.items, out->blocked.n, &out->blocked_room, sizeof *out->blocked.items);
    out->blocked.items[out->blocked.n++] =
        (struct gw_blocked){kept, &s->places->items[s->at[t->place].members[0]], choice};
}

/* Each that fails by itself whatever is chosen, with the cheapest choice there. */
static bool add_alone(struct gw_bid *out, struct trial *t)
{
    const size_t before = out->blocked.n;
    ask_all(t, false);
    const uint32_t *least = satisfy(t);
    for (size_t i = 0; i < t->n; i++) {
        t->asked[i] = true;
        if (!satisfy(t)) add(out, t, i, least, NULL);
        t->asked[i] = false;
    }
    return out->blocked.n > before;
}

static void add_together(struct gw_bid *out, struct trial *t)
{
    ask_all(t, true);
    for (size_t i = 0; i < t->n; i++) {
        t->asked[i] = false;
        if (satisfy(t)) t->asked[i] = true;
    }
    for (size_t i = 0; i < t->n; i++) {
        if (!t->asked[i]) continue;
        t->asked[i] = false;
        const uint32_t *others = satisfy(t);
        if (others) add(out, t, i, others, words_of(t, others));
        t->asked[i] = true;
    }
}

void gw_search_blocked(struct gw_bid *out, struct search *s)
{
    for (size_t a = 0; a < s->n_at && !s->stopped; a++) {
        if (solve(s, a)->found) continue;
        struct trial t = {.s = s, .place = a, .whole = s->at[a]};
        list_checks(&t);
        if (!add_alone(out, &t)) add_together(out, &t);
    }
    if (s->stopped) out->blocked.n = 0; /* what was not found may be there */
}
