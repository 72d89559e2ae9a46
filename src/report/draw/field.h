/* A field over a rectangle as contours with their values, and the scale that goes with it. */
#ifndef REPORT_DRAW_FIELD_H
#define REPORT_DRAW_FIELD_H

#include "report/draw/contour.h"

enum { FIELD_LEVELS = 7 };
struct field_map {
    struct contour_grid grid; /* values in the unit shown */
    struct gw_box area;       /* where it lies on the page */
    double low, high;         /* of the values */
    double levels[FIELD_LEVELS];
    int n, decimals; /* of the levels */
};

/* Sets low, high and round levels. */
void gw_field_measure(struct field_map *map);
/* Keeps clear of what is on the canvas. A line on which no number fits goes without: the scale has them. */
void gw_field_draw(struct gw_canvas *canvas, const struct field_map *map);
/* Of that width; the lower end. */
double gw_field_scale(struct gw_canvas *canvas, const struct field_map *map, struct gw_point at, double width);

#endif
