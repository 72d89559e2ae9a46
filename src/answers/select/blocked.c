/* What blocks a candidate without a plan: at each place that has no choice by itself, the checks each of which fails in
 * every choice there, as it is with the choice that comes nearest; and where the others are not satisfied together
 * either, a least set of them: leave one out, and some choice satisfies the others, with which that one fails. Then,
 * with all of these left aside, what keeps the places from agreeing (agree.c). */
#include "answers/select/select_internal.h"

#include <string.h>

struct trial {
    struct search *s;
    size_t place;
    struct place whole; /* as the search left it */
    const struct gw_check **checks;
    bool *asked, *told; /* by check */
    size_t n;
    struct nogoods learned; /* when last looked for a choice */
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

/* `with`: values that some of its variables must have; NULL. */
static const struct local *solve(struct search *s, size_t place, const struct nogood *with)
{
    const struct place *p = &s->at[place];
    values *domains = gw_alloc(s->arena, p->n + 1, sizeof *domains);
    for (size_t i = 0; i < p->n; i++) domains[i] = ((values)1 << s->vars[p->vars[i]].n) - 1;
    for (size_t i = 0; with && i < with->n; i++) domains[with->literals[i].var] = (values)1 << with->literals[i].value;
    return gw_solve_place(s, place, domains);
}

/* The cheapest values with which none of the checks that are asked fails; NULL: there are none, or it was stopped. */
static const uint32_t *satisfy(struct trial *t, const struct nogood *with)
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
    const struct local *local = solve(s, t->place, with);
    t->learned = p->nogoods;
    *p = t->whole;
    return local->found ? local->value : NULL;
}

static void ask_all(struct trial *t, bool asked)
{
    for (size_t i = 0; i < t->n; i++) t->asked[i] = asked;
}

/* All but those of load paths, which are of the plan as a whole. */
static void list_checks(struct trial *t)
{
    const struct place *p = &t->whole;
    t->checks = gw_alloc(t->s->arena, p->n_demands + 1, sizeof *t->checks);
    t->asked = gw_alloc(t->s->arena, p->n_demands + 1, sizeof *t->asked);
    t->told = gw_alloc(t->s->arena, p->n_demands + 1, sizeof *t->told);
    for (size_t i = 0; i < p->n_demands; i++) {
        const struct gw_check *check = check_of(t->s, &p->demands[i]);
        size_t k = 0;
        while (k < t->n && t->checks[k] != check) k++;
        if (k == t->n && !check->path) t->checks[t->n++] = check;
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

void gw_add_blocked(struct gw_bid *out, struct gw_arena *arena, struct gw_blocked blocked)
{
    out->blocked.items =
        gw_grow(arena, out->blocked.items, out->blocked.n, &out->blocked_room, sizeof *out->blocked.items);
    out->blocked.items[out->blocked.n++] = blocked;
}

static void add(struct gw_bid *out, struct trial *t, const struct gw_finding *found, const char *choice,
                const char *nearest)
{
    struct search *s = t->s;
    struct gw_finding *kept = gw_alloc(s->ask->arena, 1, sizeof *kept);
    *kept = *found;
    gw_add_blocked(out, s->ask->arena,
                   (struct gw_blocked){.finding = kept,
                                       .place = &s->places->items[s->at[t->place].members[0]],
                                       .choice = choice,
                                       .nearest = nearest});
}

/* What the check hung on, and nothing else. */
static const char *words_of_these(struct trial *t, const struct nogood *these)
{
    uint32_t *value = gw_alloc(t->s->arena, t->whole.n + 1, sizeof *value);
    for (size_t i = 0; i < these->n; i++) value[these->literals[i].var] = these->literals[i].value;
    return words_of(t, value);
}

/* Fails whatever is chosen: told as it is with the choice that comes nearest, of all that were tried. */
static void add_nearest(struct gw_bid *out, struct trial *t, size_t check)
{
    const struct nogoods tried = t->learned;
    const struct gw_finding *best = NULL;
    const struct nogood *with = NULL;
    for (size_t i = 0; i < t->n; i++) t->asked[i] = false;
    for (size_t i = 0; i < tried.n; i++) {
        const struct nogood *these = &tried.items[i];
        const uint32_t *value = these->why ? satisfy(t, these) : NULL;
        const struct gw_finding *found = value ? failure(t, t->checks[check], value) : NULL;
        if (!found || (best && !gw_graver(best, found))) continue;
        best = found;
        with = these;
    }
    if (best) add(out, t, best, NULL, with->n ? words_of_these(t, with) : NULL);
}

/* Each that fails by itself whatever is chosen. */
static void add_alone(struct gw_bid *out, struct trial *t)
{
    for (size_t i = 0; i < t->n; i++) {
        ask_all(t, false);
        t->asked[i] = true;
        if (satisfy(t, NULL)) continue;
        t->told[i] = true;
        add_nearest(out, t, i);
    }
}

void gw_order_by_gravity(const struct gw_check **checks, const struct gw_finding **worst, size_t n)
{
    for (size_t i = 1; i < n; i++)
        for (size_t k = i; k && worst[k - 1] && (!worst[k] || gw_graver(worst[k - 1], worst[k])); k--) {
            const struct gw_check *check = checks[k];
            const struct gw_finding *found = worst[k];
            checks[k] = checks[k - 1], worst[k] = worst[k - 1];
            checks[k - 1] = check, worst[k - 1] = found;
        }
}

/* By what fails with the cheapest choice, so that of equally small sets the graver checks remain. */
static void put_grave_last(struct trial *t)
{
    const struct gw_finding **worst = gw_alloc(t->s->arena, t->n + 1, sizeof *worst);
    size_t n = 0;
    for (size_t i = 0; i < t->n; i++)
        if (!t->told[i]) t->checks[n++] = t->checks[i];
    t->n = n;
    ask_all(t, false);
    const uint32_t *least = satisfy(t, NULL);
    for (size_t i = 0; least && i < n; i++) worst[i] = failure(t, t->checks[i], least);
    gw_order_by_gravity(t->checks, worst, n);
}

static void add_together(struct gw_bid *out, struct trial *t)
{
    ask_all(t, true);
    for (size_t i = 0; i < t->n; i++) {
        t->asked[i] = false;
        if (satisfy(t, NULL)) t->asked[i] = true;
    }
    for (size_t i = t->n; i-- > 0;) { /* the gravest first */
        if (!t->asked[i]) continue;
        t->asked[i] = false;
        const uint32_t *others = satisfy(t, NULL);
        const struct gw_finding *found = others ? failure(t, t->checks[i], others) : NULL;
        if (found) add(out, t, found, words_of(t, others), NULL);
        t->asked[i] = true;
    }
}

/* Those of the place whose checks were told, one of a wall or of the project wherever it is asked; where a set was
 * told, all of the place's own: it has no choice, and says so. */
static void leave_aside(const struct trial *t, size_t first, const struct gw_bid *out, bool *aside)
{
    bool set = false;
    for (size_t k = first; k < out->blocked.n; k++) set = set || out->blocked.items[k].choice;
    for (size_t i = 0; i < t->whole.n_demands; i++) {
        const size_t demand = t->whole.demands[i].demand;
        if (set && t->s->demands->demands.items[demand].element) aside[demand] = true;
        for (size_t k = first; k < out->blocked.n; k++)
            if (out->blocked.items[k].finding->demand->check == check_of(t->s, &t->whole.demands[i]))
                aside[demand] = true;
    }
}

static void add_of_place(struct gw_bid *out, struct search *s, size_t place, bool *aside)
{
    const size_t first = out->blocked.n;
    struct trial t = {.s = s, .place = place, .whole = s->at[place]};
    list_checks(&t);
    add_alone(out, &t);
    put_grave_last(&t);
    ask_all(&t, true);
    if (!satisfy(&t, NULL)) add_together(out, &t);
    leave_aside(&t, first, out, aside);
}

void gw_search_blocked(struct gw_bid *out, struct search *s)
{
    bool *aside = gw_alloc(s->arena, s->demands->demands.n + 1, sizeof *aside);
    for (size_t a = 0; a < s->n_at && !s->stopped; a++)
        if (!solve(s, a, NULL)->found) add_of_place(out, s, a, aside);
    if (s->stopped) out->blocked.n = 0; /* what was not found may be there */
    else gw_search_agreement(out, s, aside);
}
