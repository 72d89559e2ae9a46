/* What one demand comes to with what is chosen at its place, remembered by what it was worked out from; and what is
 * learned where it is not good enough. */
#include "answers/select/select_internal.h"

#include <string.h>

/* A make-up that was looked at: by its place in `lites` of the place, or in `heaviest`. */
struct looked_at {
    bool heaviest;
    size_t slot;
    const struct gw_lite_type *type;
};
struct known {
    struct known *next;
    struct gw_reads reads;
    gw_option_set relevant, taken;
    const struct looked_at *make_ups;
    size_t n;
    struct gw_finding finding;
};

static bool has_bit(uint64_t set, size_t number) { return set >> number % 64 & 1; }

/* Every make-up that a set of marks may stand for. */
static size_t list_make_ups(const struct search *s, const struct gw_reads *r, size_t place, struct looked_at *out)
{
    size_t n = 0;
    for (size_t i = 0; i < s->n_types; i++) {
        const size_t slot = place * s->n_types + i;
        if (has_bit(r->lites, i)) out[n++] = (struct looked_at){false, i, s->lites[slot]};
        for (size_t w = 0; has_bit(r->weights, i) && w < s->n_walls; w++)
            if (has_bit(r->walls, w))
                out[n++] = (struct looked_at){true, w * s->n_types + i, s->heaviest[w * s->n_types + i]};
    }
    return n;
}

static bool still_so(const struct search *s, const struct known *k, size_t place, gw_option_set taken)
{
    if ((taken & k->relevant) != k->taken) return false;
    for (size_t i = 0; i < k->n; i++) {
        const struct looked_at *m = &k->make_ups[i];
        const struct gw_lite_type *now = m->heaviest ? s->heaviest[m->slot] : s->lites[place * s->n_types + m->slot];
        if (now != m->type) return false;
    }
    return true;
}

static gw_option_set relevant_to(const struct search *s, const struct gw_reads *r)
{
    gw_option_set out = 0;
    for (size_t i = 0; i < GW_SYSTEM_PART_COUNT; i++)
        if (r->parts >> i & 1) out |= s->touching[i];
    return out;
}

static void work_out(struct search *s, struct known *k, size_t place, size_t demand, gw_option_set taken)
{
    struct gw_system *offered = gw_offer_with(&s->offers, taken);
    gw_judge_at(&k->finding, s->ask, &s->demands->demands.items[demand], s->candidate, offered, &s->chosen, place,
                &k->reads);
}

static bool same_bits(double a, double b)
{
    uint64_t x, y;
    memcpy(&x, &a, sizeof x);
    memcpy(&y, &b, sizeof y);
    return x == y;
}

/* A test: the same again, to the bit. */
static void work_out_again(struct search *s, const struct known *k, size_t place, size_t demand, gw_option_set taken)
{
    struct known again = {.next = NULL};
    work_out(s, &again, place, demand, taken);
    const bool same = again.finding.verdict == k->finding.verdict && again.finding.evidence == k->finding.evidence &&
                      same_bits(again.finding.utilization, k->finding.utilization) &&
                      same_bits(again.finding.provided, k->finding.provided) &&
                      same_bits(again.finding.required, k->finding.required);
    s->mismatches += !same;
}

struct seen gw_search_see(struct search *s, size_t place, size_t demand, gw_option_set taken)
{
    struct looked_at *room;
    for (struct known *k = s->known[demand]; k; k = k->next)
        if (still_so(s, k, place, taken)) {
            if (s->limits->recompute) work_out_again(s, k, place, demand, taken);
            return (struct seen){&k->finding, &k->reads, k->relevant};
        }
    struct known *k = gw_alloc(s->arena, 1, sizeof *k);
    work_out(s, k, place, demand, taken);
    k->relevant = relevant_to(s, &k->reads);
    k->taken = taken & k->relevant;
    if (k->reads.beyond) return (struct seen){&k->finding, &k->reads, k->relevant}; /* not to be told by this place */
    room = gw_alloc(s->arena, s->n_types * (1 + s->n_walls) + 1, sizeof *room);
    k->n = list_make_ups(s, &k->reads, place, room);
    k->make_ups = room;
    k->next = s->known[demand];
    s->known[demand] = k;
    return (struct seen){&k->finding, &k->reads, k->relevant};
}

bool gw_good_enough(const struct search *s, const struct gw_finding *f)
{
    return f->verdict == GW_PASS || f->verdict == GW_NOT_REQUIRED ||
           (s->need == GW_NOT_SHOWN && f->verdict == GW_NOT_SHOWN);
}

/* What is learned ------------------------------------------------------------------------------------------------- */

void gw_add_nogood(struct search *s, struct nogoods *nogoods, const struct literal *literals, size_t n,
                   const struct gw_finding *why)
{
    static const struct literal none = {UINT32_MAX, 0};
    const void *key = n ? (const void *)literals : &none;
    void **known = gw_memo_at(&nogoods->known, s->arena, key, n ? n * sizeof *literals : sizeof none);
    if (*known) return;
    struct literal *kept = gw_alloc(s->arena, n + 1, sizeof *kept);
    memcpy(kept, literals, n * sizeof *literals);
    *known = kept;
    nogoods->items = gw_grow(s->arena, nogoods->items, nogoods->n, &nogoods->capacity, sizeof *nogoods->items);
    nogoods->items[nogoods->n++] = (struct nogood){kept, n, why};
}

bool gw_hangs_on(const struct seen *seen, const struct var *v)
{
    switch (v->kind) {
    case VAR_OPTION:
        return seen->relevant >> v->index & 1;
    case VAR_LITE:
        return has_bit(seen->reads->lites, v->index);
    case VAR_SHARED:
        return false;
    default:
        return has_bit(seen->reads->weights, v->index) && has_bit(seen->reads->walls, v->wall);
    }
}

void gw_learn(struct search *s, struct nogoods *nogoods, size_t place, const struct seen *seen, const uint32_t *value)
{
    const struct place *p = &s->at[place];
    struct literal *literals = gw_alloc(s->arena, p->n + 1, sizeof *literals);
    size_t n = 0;
    for (size_t i = 0; i < p->n; i++)
        if (gw_hangs_on(seen, &s->vars[p->vars[i]])) literals[n++] = (struct literal){(uint32_t)i, value[i]};
    gw_add_nogood(s, nogoods, literals, n, seen->finding);
}

gw_option_set gw_search_set(struct search *s, size_t place, const uint32_t *value)
{
    const struct place *p = &s->at[place];
    const struct gw_lite_type *types = s->ask->model->project.lites.items;
    gw_option_set taken = 0;
    for (size_t i = 0; i < p->n; i++) {
        const struct var *v = &s->vars[p->vars[i]];
        if (v->kind == VAR_SHARED) continue;
        if (v->kind == VAR_OPTION) {
            if (value[i]) taken |= gw_option_bit(v->index);
            continue;
        }
        const struct gw_lite_type *type = gw_lite_numbered(&types[v->index], value[i]);
        for (size_t m = 0; v->kind == VAR_LITE && m < p->n_members; m++)
            s->lites[p->members[m] * s->n_types + v->index] = type;
        if (v->kind == VAR_HEAVIEST) s->heaviest[v->wall * s->n_types + v->index] = type;
    }
    return taken;
}
