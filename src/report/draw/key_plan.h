/* Walls seen from above: which of them lie at right angles to each other, as far as their ends say so. */
#ifndef REPORT_DRAW_KEY_PLAN_H
#define REPORT_DRAW_KEY_PLAN_H

#include "galeward/canvas.h"
#include "galeward/takeoff.h"

/* m, y up; seen from above, so that the outside lies right of whoever walks from a wall's left end to its right one. */
struct plan_wall {
    const struct gw_wall_grid *grid;
    size_t number; /* from 1, in the project's order */
    struct gw_point from, to;
};
/* Walls of one building that meet at named corners; one alone where nothing says how it lies. */
struct plan_shape {
    const struct gw_building *building;
    struct plan_wall *walls; /* each meets the next one by its right end */
    size_t n;
    bool ring;           /* and the last one the first */
    struct gw_box reach; /* m, with corners beyond its ends; top is the greatest y */
};
struct plan_layout {
    GW_LIST(struct plan_shape) shapes; /* by building, in the project's order */
    GW_LIST(const char *) apart;       /* why walls whose corners are named stand alone all the same */
};
void gw_plan_layout(struct plan_layout *out, struct gw_arena *arena, const struct gw_takeoff *takeoff);

/* "corner with north", "corner at 4 ft", "reentrant"; `meets`: with the wall's name. */
struct sheet;
const char *gw_plan_end_words(const struct sheet *sheet, const struct gw_wall_grid *grid, bool left, bool meets);
/* m, of the edge zone beside that end; 0: there is none. */
double gw_plan_edge(const struct gw_wall_grid *grid, bool left);
/* m, to the corner beyond that end from which an edge zone reaches the wall; 0: there is none. */
double gw_plan_beyond(const struct gw_wall_grid *grid, bool left);
double gw_plan_width(const struct gw_wall_grid *grid);

#endif
