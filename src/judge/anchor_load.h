/* What an anchor hands to the structure, for the check of anchors and the schedule of reactions. */
#ifndef GALEWARD_JUDGE_ANCHOR_LOAD_H
#define GALEWARD_JUDGE_ANCHOR_LOAD_H

#include "judge/line.h"

/* Wind both ways at both levels, N, magnitudes, and the wall that hangs on it. At an outside corner: of each face. */
struct gw_anchor_load {
    double inward, outward;                   /* allowable-stress level */
    double inward_strength, outward_strength; /* strength level */
    double area;             /* m2, the piece that hangs on it times the width carried: for the dead load; 0: slotted */
    bool cut;                /* with the part above the roof line */
    struct gw_message fault; /* not said; else why the reactions are absent */
};
/* Marks the rows used, and derives where that is wanted. */
void gw_anchor_load_of(struct gw_anchor_load *out, struct gw_ask *ask, const struct gw_element *e);

/* Asks what bears the piece that is held here where that is not told, or told twice: a limit that is not known. */
void gw_ask_bearing(struct gw_capacity *out, const struct gw_element *e);

/* Heaviest glass of the lites of the element's wall, at a corner of both walls, Pa: what a wall can weigh; absent where
 * a make-up is not known. */
double gw_heaviest_glass(struct gw_ask *ask, const struct gw_element *e);
/* Asks what the framing weighs: of the system, or with options that change its metal. */
struct gw_message gw_ask_frame_weight(struct gw_ask *ask, const struct gw_system *system);
/* One load of an anchor with the dead load at once, each against its own allowable: a limit whose use is both, told of
 * the part that uses more. */
struct gw_anchor_parts {
    double load, allowable, dead, dead_allowable; /* N */
    enum gw_load_direction direction;             /* of the load */
    enum gw_interaction interaction;
    struct gw_message load_words, dead_words;
};
void gw_anchor_together(struct gw_capacity *out, struct gw_ask *ask, const struct gw_anchor_parts *parts);
/* What the system says of the element's anchor: at an outside corner the corner's, at a jamb of a unitized wall, where
 * one unit alone hangs, that of one; NULL. And under which key. */
const struct gw_anchor_spec *gw_anchor_of(const struct gw_system *system, const struct gw_element *e);
const char *gw_anchor_key(const struct gw_system *system, const struct gw_element *e);

#endif
