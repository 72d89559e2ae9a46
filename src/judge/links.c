/* The chain of links: a test that does not reach an element is replaced by calculation only where every link of its
 * wall is shown. */
#include "judge_internal.h"

#include <string.h>

/* The links of one wall, or of one opening framed on its own. */
struct chain {
    const struct gw_wall_lines *lines;
    const struct gw_finding *worst; /* a failure, then what is not shown, then the most used */
    size_t n;
};

struct chains {
    struct chain *items;
    size_t n, capacity, last;
};

/* Elements of a wall follow each other, so the last one is nearly always the right one. */
static struct chain *chain_of(struct chains *chains, const struct gw_wall_lines *lines, struct gw_arena *arena)
{
    if (chains->n && chains->items[chains->last].lines == lines) return &chains->items[chains->last];
    size_t i = 0;
    while (i < chains->n && chains->items[i].lines != lines) i++;
    chains->last = i;
    if (i < chains->n) return &chains->items[i];
    chains->items = gw_grow(arena, chains->items, chains->n, &chains->capacity, sizeof *chains->items);
    chains->items[chains->n++] = (struct chain){.lines = lines};
    return &chains->items[i];
}

static bool worse(const struct gw_finding *a, const struct gw_finding *b)
{
    static const int rank[] = {[GW_FAIL] = 3, [GW_NOT_SHOWN] = 2, [GW_PASS] = 1, [GW_NOT_REQUIRED] = 0};
    if (!b || rank[a->verdict] != rank[b->verdict]) return !b || rank[a->verdict] > rank[b->verdict];
    return gw_given(a->utilisation) && !(a->utilisation <= b->utilisation);
}

static void gather(struct chains *chains, const struct gw_finding *findings, size_t n, struct gw_arena *arena)
{
    for (size_t i = 0; i < n; i++) {
        const struct gw_finding *f = &findings[i];
        if (!f->demand->element || !gw_check_of(f->demand)->link) continue;
        struct chain *chain = chain_of(chains, f->demand->element->lines, arena);
        chain->n++;
        if (worse(f, chain->worst)) chain->worst = f;
    }
}

static void show(struct gw_finding *f, const struct chain *chain, struct gw_arena *arena)
{
    const struct gw_finding *w = chain->worst;
    if (!w) return;
    const char *at = gw_format(arena, "%s at %s", w->demand->check, w->demand->where);
    if (w->verdict == GW_NOT_SHOWN) {
        f->message = gw_format(arena, "%s; by calculation a link is missing: %s: %s", f->message, at, w->message);
        return;
    }
    f->verdict = w->verdict;
    f->evidence = GW_BY_CALCULATION;
    f->utilisation = w->utilisation;
    f->required = f->provided = GW_ABSENT;
    f->direction = w->direction;
    f->message = gw_format(arena, "by calculation, every link of it; %s governs (the test does not reach it: %s)", at,
                           f->message);
    gw_used_merge(&f->used, &w->used);
}

void gw_judge_by_links(struct gw_finding *findings, size_t n, const struct gw_judging *j)
{
    struct chains chains = {.n = 0};
    gather(&chains, findings, n, j->model->arena);
    for (size_t i = 0; i < n; i++) {
        struct gw_finding *f = &findings[i];
        bool untested = f->verdict == GW_NOT_SHOWN && strcmp(f->demand->check, "structural") == 0;
        if (untested && f->demand->status == GW_PASS)
            show(f, chain_of(&chains, f->demand->element->lines, j->model->arena), j->model->arena);
    }
}
