/* The load path: a test that does not reach an element is replaced by calculation only where every link of its wall is
 * shown. */
#include "judge_internal.h"

/* The links of one wall, or of one opening framed on its own. */
struct chain {
    const struct gw_finding *worst; /* a failure, then what is not shown, then the most used */
};

static struct chain *chain_of(struct gw_memo *chains, const struct gw_wall_lines *lines, struct gw_arena *arena)
{
    void **chain = gw_memo_at(chains, arena, &lines, sizeof lines);
    if (!*chain) *chain = gw_alloc(arena, 1, sizeof(struct chain));
    return *chain;
}

static void gather(struct gw_memo *chains, const struct gw_finding *findings, size_t n, struct gw_arena *arena)
{
    for (size_t i = 0; i < n; i++) {
        const struct gw_finding *f = &findings[i];
        if (!f->demand->element || !f->demand->check->link) continue;
        struct chain *chain = chain_of(chains, f->demand->element->lines, arena);
        if (gw_graver(f, chain->worst)) chain->worst = f;
    }
}

static void show(struct gw_finding *f, const struct chain *chain, struct gw_ask *ask)
{
    const struct gw_finding *w = chain->worst;
    if (!w) return;
    const struct gw_value check = gw_of_text(w->demand->check->id), where = gw_of_text(w->demand->where);
    f->link = w;
    if (w->verdict == GW_NOT_SHOWN) {
        f->message = GW_SAY(ask->arena, "{}; by calculation a link is missing: {} at {}: {}",
                            gw_of_message(&f->message), check, where, gw_of_message(&w->message));
        return;
    }
    f->verdict = w->verdict;
    f->evidence = GW_BY_CALCULATION;
    f->utilization = w->utilization;
    f->required = f->provided = GW_ABSENT;
    f->direction = w->direction;
    f->message =
        GW_SAY(ask->arena, "by calculation, every link of it; {} at {} governs (the test does not reach it: {})", check,
               where, gw_of_message(&f->message));
    ask->engine.used = *f->used;
    f->used = gw_ask_close(ask, w->used);
}

void gw_judge_paths(struct gw_finding *findings, size_t n, struct gw_ask *ask)
{
    struct gw_memo chains = {.n = 0};
    gather(&chains, findings, n, ask->arena);
    for (size_t i = 0; i < n; i++) {
        struct gw_finding *f = &findings[i];
        const struct gw_demand *d = f->demand;
        if (d->check->path && d->state == GW_ASKED && f->verdict == GW_NOT_SHOWN)
            show(f, chain_of(&chains, d->element->lines, ask->arena), ask);
    }
}
