/* Where every place by itself has a choice and no plan has all of them: a least set of checks that no plan satisfies
 * together, each with a plan that satisfies the others, and the rule of the options that keeps the places apart. */
#include "answers/select/select_internal.h"

#include <string.h>

struct agreeing {
    struct search *s;
    const bool *before; /* by demand: told already */
    bool *aside;
    const struct gw_check **checks;
    const struct gw_finding **worst; /* of each with nothing chosen; NULL: it passes so */
    bool *asked;
    size_t n;
    gw_option_set named; /* options of the choices that are told */
    bool *make_ups;      /* by lite type: one is told */
};

static const struct gw_check *check_of(const struct search *s, size_t demand)
{
    return s->demands->demands.items[demand].check;
}

static bool is_asked(const struct agreeing *a, const struct gw_check *check)
{
    for (size_t i = 0; i < a->n; i++)
        if (a->checks[i] == check) return a->asked[i];
    return false;
}

/* The cheapest plan with which none of the checks that are asked fails; NULL: there is none, or it was stopped. */
static const struct local **solve(struct agreeing *a, bool all)
{
    struct search *s = a->s;
    money once, bound;
    const struct local **best = gw_alloc(s->arena, s->n_at + 1, sizeof *best);
    for (size_t i = 0; i < s->demands->demands.n; i++)
        a->aside[i] = a->before[i] || (!all && !is_asked(a, check_of(s, i)));
    s->aside = a->aside;
    gw_search_begin(s);
    return gw_search_plan(s, best, &once, &bound) ? best : NULL;
}

static void list_check(struct agreeing *a, const struct gw_check *check)
{
    for (size_t i = 0; i < a->n; i++)
        if (a->checks[i] == check) return;
    a->checks[a->n++] = check;
}

/* Those from whose failures something was learned: no other rules out a plan. */
static void list_checks(struct agreeing *a)
{
    const struct search *s = a->s;
    size_t most = s->across.n + 1;
    for (size_t p = 0; p < s->n_at; p++) most += s->at[p].nogoods.n;
    a->checks = gw_alloc(s->arena, most, sizeof *a->checks);
    a->worst = gw_alloc(s->arena, most, sizeof *a->worst);
    a->asked = gw_alloc(s->arena, most, sizeof *a->asked);
    for (size_t p = 0; p < s->n_at; p++)
        for (size_t i = 0; i < s->at[p].nogoods.n; i++)
            if (s->at[p].nogoods.items[i].why) list_check(a, s->at[p].nogoods.items[i].why->demand->check);
    for (size_t i = 0; i < s->across.n; i++) list_check(a, s->across.items[i].why->demand->check);
}

static const struct gw_finding *gravest(const struct agreeing *a, const struct gw_finding *findings,
                                        const struct gw_check *check)
{
    const struct gw_finding *worst = NULL;
    for (size_t i = 0; i < a->s->demands->demands.n; i++)
        if (!a->before[i] && check_of(a->s, i) == check && !gw_good_enough(a->s, &findings[i]) &&
            (!worst || gw_graver(&findings[i], worst)))
            worst = &findings[i];
    return worst;
}

/* Of equally small sets the one with the graver checks: the others are done without first. */
static void find_least(struct agreeing *a, const struct gw_finding *findings)
{
    for (size_t i = 0; i < a->n; i++) a->worst[i] = gravest(a, findings, a->checks[i]);
    gw_order_by_gravity(a->checks, a->worst, a->n);
    for (size_t i = 0; i < a->n; i++) a->asked[i] = true;
    for (size_t i = 0; i < a->n && !a->s->stopped; i++) {
        a->asked[i] = false;
        if (solve(a, false)) a->asked[i] = true;
    }
}

static size_t place_of(const struct search *s, const struct gw_demand *d)
{
    if (d->element) return s->places->of[d->element->index];
    for (size_t p = 0; p < s->places->n; p++)
        if (gw_demand_is_at(d, s->ask, s->places, p)) return p;
    return 0;
}

static void note_choice(struct agreeing *a, const struct gw_plan *plan, size_t place)
{
    a->named |= plan->choices[place].options;
    for (size_t i = 0; i < a->s->n_types; i++) a->make_ups[i] = a->make_ups[i] || plan->choices[place].lites[i];
}

/* What of the check fails with that plan, gravest. */
static void tell(struct gw_bid *out, struct agreeing *a, const struct gw_check *check, const struct local *const *best)
{
    struct search *s = a->s;
    struct gw_summary summary;
    struct gw_finding *findings = gw_alloc(s->ask->arena, s->demands->demands.n + 1, sizeof *findings);
    const struct gw_plan plan = {s->candidate, s->places, gw_search_choices(s, best)};
    gw_judge_plan(findings, &summary, s->demands, s->ask, &plan, &s->offers);
    const struct gw_finding *found = gravest(a, findings, check);
    if (!found) return;
    const size_t place = place_of(s, found->demand);
    note_choice(a, &plan, place);
    gw_add_blocked(out, s->ask->arena,
                   (struct gw_blocked){.finding = found,
                                       .place = found->demand->element ? &s->places->items[place] : NULL,
                                       .choice = gw_choice_words(&plan, place, s->ask->model, s->ask->arena),
                                       .together = true});
}

/* The rule ----------------------------------------------------------------------------------------------------------
 */

static void add_words(struct gw_text *out, const char *words)
{
    gw_text_addf(out, "%s%s", out->length ? "; " : "", words);
}

static const char *part_words(enum gw_choose choose)
{
    return choose == GW_CHOOSE_WALL ? "on all of a wall or nowhere on it (choose: wall)"
                                    : "on all walls or on none (choose: project)";
}

static void add_parts(struct gw_text *out, const struct agreeing *a, enum gw_choose choose)
{
    const struct gw_system *c = a->s->candidate;
    struct gw_text names;
    gw_text_init(&names, a->s->ask->arena);
    for (size_t i = 0; i < c->options.n; i++)
        if ((a->named & gw_option_bit(i)) && c->options.items[i].choose == choose)
            gw_text_addf(&names, "%s'%s'", names.length ? ", " : "", c->options.items[i].name);
    if (names.length) add_words(out, gw_format(a->s->ask->arena, "%s: taken %s", names.at, part_words(choose)));
}

static void add_exclusions(struct gw_text *out, const struct agreeing *a)
{
    const struct gw_system *c = a->s->candidate;
    for (size_t i = 0; i < c->options.n; i++)
        for (size_t k = 0; k < i; k++) {
            const struct gw_system_option *x = &c->options.items[k], *y = &c->options.items[i];
            const bool both = (a->named & gw_option_bit(i)) && (a->named & gw_option_bit(k));
            if (!both || !gw_options_exclude(c, i, k)) continue;
            const bool group = x->group && y->group && strcmp(x->group, y->group) == 0;
            add_words(out, gw_format(a->s->ask->arena, "at most one of '%s' and '%s' is taken (%s%s)", x->name, y->name,
                                     group ? "group: " : "they change the same", group ? x->group : ""));
        }
}

static void add_make_ups(struct gw_text *out, const struct agreeing *a)
{
    for (size_t i = 0; i < a->s->n_types; i++) {
        const struct gw_lite_type *type = &a->s->ask->model->project.lites.items[i];
        if (!a->make_ups[i] || type->choose == GW_CHOOSE_ZONE) continue;
        add_words(out,
                  gw_format(a->s->ask->arena, "%s has one make-up on %s", type->name,
                            type->choose == GW_CHOOSE_WALL ? "a wall (choose: wall)" : "all walls (choose: project)"));
    }
}

static const char *rule_of(const struct agreeing *a)
{
    struct gw_text out;
    gw_text_init(&out, a->s->ask->arena);
    add_parts(&out, a, GW_CHOOSE_PROJECT);
    add_parts(&out, a, GW_CHOOSE_WALL);
    add_exclusions(&out, a);
    add_make_ups(&out, a);
    return out.length ? out.at : "";
}

void gw_search_agreement(struct gw_bid *out, struct search *s, const bool *before)
{
    const size_t n = s->demands->demands.n, known = out->blocked.n;
    struct agreeing a = {.s = s,
                         .before = before,
                         .aside = gw_alloc(s->arena, n + 1, sizeof *a.aside),
                         .make_ups = gw_alloc(s->arena, s->n_types + 1, sizeof *a.make_ups)};
    const bool plan = solve(&a, true) != NULL;
    if (!plan && !s->stopped) {
        list_checks(&a);
        find_least(&a, out->findings);
        for (size_t i = a.n; i-- > 0 && !s->stopped;) {
            if (!a.asked[i]) continue;
            a.asked[i] = false;
            const struct local *const *best = solve(&a, false);
            if (best) tell(out, &a, a.checks[i], best);
            a.asked[i] = true;
        }
    }
    if (s->stopped) out->blocked.n = known;
    s->aside = NULL;
    if (out->blocked.n == known) return;
    out->blocked_together = true;
    out->blocked_rule = rule_of(&a);
}
