/* A field over a rectangle as filled contours with numbers on the lines, and the scale that goes with it. */
#ifndef REPORT_DRAW_FIELD_H
#define REPORT_DRAW_FIELD_H

#include "report/contour.h"

struct box {
    double left, top, right, bottom; /* page */
};

enum { FIELD_LEVELS = 12 };
struct field_map {
    struct contour_grid grid; /* values in the unit shown */
    struct box area;          /* where it lies on the page */
    enum gw_svg_scale scale;
    double low, high; /* of the values */
    double levels[FIELD_LEVELS];
    int n, decimals; /* of the levels */
};

/* Sets low, high and round levels. */
void gw_field_measure(struct field_map *map);
/* The boxes are kept free of numbers. A line on which no number fits goes without: the scale has them. */
void gw_field_draw(struct gw_svg *svg, const struct field_map *map, const struct box *kept_free, size_t n);
void gw_field_scale(struct gw_svg *svg, const struct field_map *map, struct gw_point at, double width);

#endif
