/* Which piece of a mullion bears which: pieces between splices as a chain of hinged beams. */
#ifndef GALEWARD_JUDGE_CHAIN_H
#define GALEWARD_JUDGE_CHAIN_H

#include "judge/check.h"

/* A piece stands by itself on two anchors. One with fewer hangs its end shear on the tip of a neighbor that stands, by
 * the splice between them; a neighbor's load that it receives makes no piece lean. */
struct gw_chain_piece {
    double low, high; /* m above ground */
    int stands;       /* from 1: after so many steps from pieces that stand by themselves; 0: not at all */
    bool on_below, on_above;
};
struct gw_chain {
    struct gw_chain_piece *pieces; /* from the bottom */
    size_t n;
};
/* What bears a height range: the pieces that hold it, and those that these lean on in turn. */
struct gw_chain_hold {
    size_t from, to; /* pieces, `to` included: one run of them */
    size_t own_from, own_to;
};

void gw_chain_of(struct gw_chain *out, struct gw_arena *arena, const struct gw_wall_lines *lines);
struct gw_chain_hold gw_chain_held(const struct gw_chain *chain, double low, double high);
/* Whether what is held so leans on a splice between these heights. One on which neither neighbor leans (both stand, or
 * an anchor holds it) belongs to both. */
bool gw_chain_spliced(const struct gw_chain *chain, const struct gw_chain_hold *hold, double low, double high);

#endif
