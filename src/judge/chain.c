#include "judge/chain.h"

#include "base/tolerance.h"

/* Where pieces meet: at splices; without any, at every anchor but the first and the last. */
static bool joint_at(double *height, const struct gw_wall_lines *l, size_t i)
{
    const size_t n = l->n_splices ? l->n_splices : l->n_anchors;
    if (i >= n || (!l->n_splices && (i == 0 || i + 1 == n))) return false;
    *height = l->n_splices ? l->splices[i] : l->anchors[i];
    return *height > l->bottom + GW_HAIR_M && *height < l->top - GW_HAIR_M;
}

static int anchors_between(const struct gw_wall_lines *l, double low, double high)
{
    int n = 0;
    for (size_t i = 0; i < l->n_anchors; i++) n += l->anchors[i] > low - GW_HAIR_M && l->anchors[i] < high + GW_HAIR_M;
    return n;
}

static void cut(struct gw_chain *out, struct gw_arena *arena, const struct gw_wall_lines *l)
{
    double low = l->bottom, joint;
    const size_t most = l->n_splices + l->n_anchors;
    *out = (struct gw_chain){.pieces = gw_alloc(arena, most + 1, sizeof *out->pieces)};
    for (size_t i = 0; i < most; i++) {
        if (!joint_at(&joint, l, i)) continue;
        out->pieces[out->n++] = (struct gw_chain_piece){.low = low, .high = joint};
        low = joint;
    }
    out->pieces[out->n++] = (struct gw_chain_piece){.low = low, .high = l->top};
}

/* A neighbor bears an end where no anchor does. */
static bool borne_by(const struct gw_chain *c, const struct gw_wall_lines *l, size_t i, double joint, int before)
{
    return i < c->n && c->pieces[i].stands && c->pieces[i].stands < before && !anchors_between(l, joint, joint);
}

/* Pieces that stand now, on those that stood before. */
static bool step(struct gw_chain *c, const struct gw_wall_lines *l, int number)
{
    bool any = false;
    for (size_t i = 0; i < c->n; i++) {
        struct gw_chain_piece *p = &c->pieces[i];
        if (p->stands) continue;
        const bool below = i > 0 && borne_by(c, l, i - 1, p->low, number),
                   above = borne_by(c, l, i + 1, p->high, number);
        if (anchors_between(l, p->low, p->high) + below + above < 2) continue;
        p->stands = number;
        p->on_below = below && number > 1;
        p->on_above = above && number > 1;
        any = true;
    }
    return any;
}

void gw_chain_of(struct gw_chain *out, struct gw_arena *arena, const struct gw_wall_lines *lines)
{
    int number = 1;
    cut(out, arena, lines);
    while (step(out, lines, number)) number++;
    for (size_t i = 0; i < out->n; i++) { /* what stands on nothing hangs on all beside it */
        struct gw_chain_piece *p = &out->pieces[i];
        if (p->stands) continue;
        p->on_below = i > 0;
        p->on_above = i + 1 < out->n;
    }
}

struct gw_chain_hold gw_chain_held(const struct gw_chain *chain, double low, double high)
{
    struct gw_chain_hold hold = {.own_from = 0, .own_to = chain->n - 1};
    const struct gw_chain_piece *p = chain->pieces;
    while (hold.own_from < hold.own_to && p[hold.own_from].high < low + GW_HAIR_M) hold.own_from++;
    while (hold.own_to > hold.own_from && p[hold.own_to].low > high - GW_HAIR_M) hold.own_to--;
    hold.from = hold.own_from;
    hold.to = hold.own_to;
    /* a piece taken in may lean either way */
    for (size_t i = hold.own_from; i <= hold.own_to; i++) {
        size_t down = i, up = i;
        while (p[down].on_below) down--;
        while (p[up].on_above) up++;
        hold.from = down < hold.from ? down : hold.from;
        hold.to = up > hold.to ? up : hold.to;
    }
    return hold;
}

static bool leans_at(const struct gw_chain *chain, const struct gw_chain_hold *hold, size_t upper)
{
    const struct gw_chain_piece *below = &chain->pieces[upper - 1], *above = &chain->pieces[upper];
    const bool lower_in = upper - 1 >= hold->from && upper - 1 <= hold->to,
               upper_in = upper >= hold->from && upper <= hold->to;
    if (below->on_above || above->on_below) return (lower_in && below->on_above) || (upper_in && above->on_below);
    return (upper - 1 >= hold->own_from && upper - 1 <= hold->own_to) ||
           (upper >= hold->own_from && upper <= hold->own_to);
}

bool gw_chain_spliced(const struct gw_chain *chain, const struct gw_chain_hold *hold, double low, double high)
{
    for (size_t i = 1; i < chain->n; i++) {
        const double joint = chain->pieces[i].low;
        if (joint > low - GW_HAIR_M && joint < high + GW_HAIR_M && leans_at(chain, hold, i)) return true;
    }
    return false;
}
