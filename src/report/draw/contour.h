/* Contours of a field on a regular grid, by marching squares. */
#ifndef REPORT_CONTOUR_H
#define REPORT_CONTOUR_H

#include "galeward/canvas.h"

/* nx x ny values, row by row from the lower left corner; nx, ny >= 2. */
struct contour_grid {
    const double *values;
    int nx, ny;
};

/* Closed outlines in grid steps, x 0..nx-1 and y 0..ny-1. */
struct contour {
    struct gw_outline *rings;
    size_t n, capacity;
};

/* Outlines of the region where the value is at least `level`, the region on their left: round its outside
 * counter-clockwise, round a hole clockwise. Where the region meets the grid's border, they run along it. Straight
 * between the nodes; where a cell has the level on all four sides, its mean decides which corners belong together. */
void gw_contour_trace(struct contour *out, struct gw_arena *arena, const struct contour_grid *grid, double level);

/* Whether an outline from `a` to `b` only follows the border: no contour line there. */
bool gw_contour_on_border(const struct contour_grid *grid, struct gw_point a, struct gw_point b);
/* Leaves out points that lie within `tolerance` of the line through their neighbors that stay; the ends stay. Returns
 * how many are left, at the front. */
size_t gw_contour_thin(struct gw_point *points, size_t n, double tolerance);

#endif
