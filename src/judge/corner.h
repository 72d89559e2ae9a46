/* Outside corners: the wall that meets this one loads the same mullion and the same anchors. Where it is not named, the
 * other face is this one once more, or another corner end of the building that nobody names, where that is more. */
#ifndef GALEWARD_JUDGE_CORNER_H
#define GALEWARD_JUDGE_CORNER_H

#include "judge/anchor_load.h"

/* Goes through the lines of mullions that may stand at the corner of an element: the one of the wall that is named, or
 * the others of the building.
 *
 *     struct gw_corner_search search = gw_corner_of(ask, e);
 *     struct gw_corner_line line;
 *     while (gw_corner_next(&search, &line)) ... */
struct gw_corner_line {
    const struct gw_wall_grid *grid;
    size_t line; /* of the grid, from 0 */
};
/* The line of the wall that is named at a line of a grid; false: nobody is. */
bool gw_corner_met(struct gw_corner_line *out, const struct gw_takeoff *takeoff, const struct gw_wall_grid *grid,
                   size_t line);
struct gw_corner_search {
    const struct gw_takeoff *takeoff;
    const struct gw_element *e;
    size_t at;
};
struct gw_corner_search gw_corner_of(const struct gw_ask *ask, const struct gw_element *e);
bool gw_corner_next(struct gw_corner_search *search, struct gw_corner_line *out);

/* What the other face brings to a stretch of mullion; nothing where the element is at no corner. */
struct gw_corner_face {
    double moment, shear, splice_shear; /* about the axis of that face */
    const char *wall;                   /* whose it is; NULL: this face once more */
    struct gw_message fault;            /* not said; else why it is not known */
};
struct gw_corner_face gw_corner_face_of(struct gw_ask *ask, const struct gw_element *e);

/* Of an anchor that takes as much of each face at once: the greater face's reactions into `load`. */
void gw_corner_load(struct gw_anchor_load *load, struct gw_ask *ask, const struct gw_element *e);
/* The wall of both faces over that of this one; 1 where there is no corner. */
double gw_corner_faces(struct gw_ask *ask, const struct gw_element *e);

/* The same mullion or anchor told once more, as an element of the wall that is named; NULL: of no other wall. */
const struct gw_element *gw_corner_twin(const struct gw_takeoff *takeoff, const struct gw_element *e);
/* ", corner: ..." for a limit; "" where there is no corner. */
struct gw_message gw_corner_words(struct gw_ask *ask, const struct gw_element *e, const char *wall);

#endif
