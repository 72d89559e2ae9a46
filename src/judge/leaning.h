/* What an element leans on: the elements along its load path to the structure. */
#ifndef GALEWARD_JUDGE_LEANING_H
#define GALEWARD_JUDGE_LEANING_H

#include "judge/check.h"

struct gw_leans {
    const struct gw_element *on;
    long pieces;       /* of the element's pieces that lean on it */
    bool splice;       /* of a stretch of mullion: on a splice in it too */
    uint64_t *members; /* which of the element's pieces, a bit each; of a lite alone */
};
struct gw_leaning {
    struct gw_leans *items;
    size_t n, capacity;
    size_t words;  /* of `members`; 0: none are kept */
    size_t walked; /* piece of the lite that is being looked at */
};
/* Of a lite: itself, the screws and plates of its edges, the transoms at its head and sill, the piece of mullion at
 * each jamb with its anchors, and where that piece does not stand on anchors of its own, the splice in which it rests
 * and the piece beyond with its anchors, piece by piece until one stands. Of a mullion: its piece alike. Worked out
 * once an element of the take-off. */
const struct gw_leaning *gw_leaning_of(struct gw_ask *ask, const struct gw_element *e);
/* The lites at the edges that an element of framing or a screw holds. */
void gw_lites_beside(struct gw_leaning *out, struct gw_ask *ask, const struct gw_element *e);

#endif
