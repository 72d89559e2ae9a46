/* What gets worse from one judgement to another, and how it is said. */
#include "review_internal.h"

#include <string.h>

/* Demands of one check that went from one verdict to one other. */
struct turn {
    const struct gw_check *check;
    const char *name;
    enum gw_verdict was, is;
    size_t n;
    const struct gw_finding *first;
};
struct turns {
    struct turn *items;
    size_t n, capacity;
};
enum { MOST_SAID = 4 };

static bool same_name(const char *a, const char *b) { return a && b ? strcmp(a, b) == 0 : a == b; }

static bool is_turn(const struct turn *t, const struct gw_finding *was, const struct gw_finding *is)
{
    return t->check == is->demand->check && same_name(t->name, is->demand->name) && t->was == was->verdict &&
           t->is == is->verdict;
}

size_t gw_places_of(const struct reviewing *r, const struct gw_finding *f)
{
    const struct gw_element *e = f->demand->element;
    if (!e) return 1;
    if (f->share) return (size_t)f->share;
    return (size_t)(e->corner && !e->parapet ? gw_pieces_once(r->ask->takeoff, e) : e->count);
}

static void turn(struct turns *turns, struct reviewing *r, const struct gw_finding *was, const struct gw_finding *is)
{
    size_t at = 0;
    while (at < turns->n && !is_turn(&turns->items[at], was, is)) at++;
    if (at == turns->n) {
        turns->items = gw_grow(r->arena, turns->items, turns->n, &turns->capacity, sizeof *turns->items);
        turns->items[turns->n++] = (struct turn){is->demand->check, is->demand->name, was->verdict, is->verdict, 0, is};
    }
    struct turn *t = &turns->items[at];
    t->n += gw_places_of(r, is);
    if (gw_graver(is, t->first)) t->first = is;
}

static struct gw_message one_turn(struct reviewing *r, const struct turn *t)
{
    const char *name = t->name ? t->name : t->check->id;
    const struct gw_message at = t->n > 1 ? GW_SAY(r->arena, "{} places, at worst {}", gw_of_count((long)t->n),
                                                   gw_of_text(t->first->demand->where))
                                          : GW_SAY(r->arena, "{}", gw_of_text(t->first->demand->where));
    return GW_SAY(r->arena, "{}: {} becomes {} ({})", gw_of_text(name), gw_of_text(gw_verdict_name(t->was)),
                  gw_of_text(gw_verdict_name(t->is)), gw_of_message(&at));
}

/* The gravest first, then in the order of the checks. */
static struct gw_message all_turns(struct reviewing *r, const struct turns *turns)
{
    struct gw_message said = {0};
    size_t told = 0;
    for (int rank = gw_verdict_rank(GW_FAIL); rank > 0; rank--)
        for (size_t i = 0; i < turns->n; i++) {
            if (gw_verdict_rank(turns->items[i].is) != rank || told++ >= MOST_SAID) continue;
            const struct gw_message one = one_turn(r, &turns->items[i]);
            said = gw_say_both(r->arena, &said, "; ", &one);
        }
    if (told <= MOST_SAID) return said;
    return GW_SAY(r->arena, "{}; and {} more", gw_of_message(&said), gw_of_count((long)(told - MOST_SAID)));
}

static void add_place(struct effect *out, struct reviewing *r, size_t *capacity, const char *where)
{
    for (size_t i = 0; i < out->places.n; i++)
        if (strcmp(out->places.items[i], where) == 0) return;
    out->places.items = gw_grow(r->arena, out->places.items, out->places.n, capacity, sizeof *out->places.items);
    out->places.items[out->places.n++] = where;
}

void gw_effect_of(struct effect *out, struct reviewing *r, const struct gw_finding *was, const struct gw_finding *is,
                  size_t n)
{
    bool *at = gw_alloc(r->arena, n + 1, sizeof *at);
    struct turns turns = {.n = 0};
    size_t capacity = 0;
    *out = (struct effect){.worst = GW_PASS, .at = at};
    for (size_t i = 0; i < n; i++) {
        if (gw_verdict_rank(is[i].verdict) <= gw_verdict_rank(was[i].verdict) || is[i].verdict == GW_PASS) continue;
        at[i] = true;
        out->n++;
        turn(&turns, r, &was[i], &is[i]);
        add_place(out, r, &capacity, is[i].demand->where);
        if (gw_verdict_rank(is[i].verdict) > gw_verdict_rank(out->worst)) out->worst = is[i].verdict;
        if (gw_graver(&is[i], out->first)) out->first = &is[i];
        out->computed = out->computed || (is[i].verdict == GW_FAIL && is[i].evidence == GW_BY_CALCULATION);
    }
    out->said = all_turns(r, &turns);
}

enum gw_consequence gw_consequence_of(const struct effect *effect, enum gw_consequence none)
{
    return effect->worst == GW_FAIL ? GW_IT_FAILS : effect->worst == GW_NOT_SHOWN ? GW_IT_IS_NOT_SHOWN : none;
}

void gw_comment_tells(struct reviewing *r, const struct effect *effect)
{
    for (size_t i = 0; effect->at && i < r->bench.judgement.demands.n; i++)
        r->explained[i] = r->explained[i] || effect->at[i];
}
