/* Plots on a canvas: axes with round numbers, curves, areas, marks, a key. */
#ifndef GALEWARD_PLOT_H
#define GALEWARD_PLOT_H

#include "galeward/canvas.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Round values of an axis. `decimals` prints each of them exactly; log axes have minor ticks without a number. */
enum { GW_TICKS_MOST = 64 };
struct gw_ticks {
    double values[GW_TICKS_MOST];
    bool minor[GW_TICKS_MOST];
    size_t n;
    int decimals;
};
/* Multiples of 1, 2 or 5 times a power of ten inside low..high, at most wanted + 1 of them (wanted 1 to 60). */
void gw_ticks_linear(struct gw_ticks *out, double low, double high, int wanted);
/* The powers of ten, with 2 to 9 times them as minor ticks; numbers at 1, 2 and 5 where the range is less than two
 * decades. 0 < low < high. */
void gw_ticks_log(struct gw_ticks *out, double low, double high);
/* Of an axis so long, pixels, with one number every so many of them. */
struct gw_axis;
void gw_ticks_axis(struct gw_ticks *out, const struct gw_axis *axis, double length, double apart);

/* A plot maps data to a rectangle of the page. low < high; 0 < low where logarithmic. */
struct gw_axis {
    double low, high;
    bool logarithmic;
    const char *label; /* with its unit; NULL: none */
};
struct gw_plot {
    double left, top, width,
        height; /* of the data area; numbers stand left of and below it, labels at the axes' ends */
    struct gw_axis x, y;
};
/* False where a logarithmic axis has no place for the value. Outside the area is a place too. */
bool gw_plot_place(struct gw_point *out, const struct gw_plot *plot, double x, double y);
/* Pixels that the numbers of the y axis take, with their ticks. */
double gw_plot_beside(const struct gw_plot *plot, struct gw_arena *arena);
/* Frame, grid lines, ticks, numbers and labels. */
void gw_plot_open(struct gw_canvas *canvas, const struct gw_plot *plot);
/* Cut off at the data area; broken where a point has no place or is not a number. */
void gw_plot_curve(struct gw_canvas *canvas, const struct gw_plot *plot, const struct gw_point *points, size_t n,
                   const struct gw_look *look);
/* The area between the curve and y = base. */
void gw_plot_area(struct gw_canvas *canvas, const struct gw_plot *plot, const struct gw_point *points, size_t n,
                  double base, const struct gw_look *look);
/* Marks; those outside the area are left out, and their number is returned. */
size_t gw_plot_marks(struct gw_canvas *canvas, const struct gw_plot *plot, const struct gw_point *points, size_t n,
                     double radius, const struct gw_look *look);

struct gw_key_entry {
    const char *text;
    struct gw_look look;
    bool mark; /* a circle instead of a line */
};
/* One entry below the other from the upper left corner, broken to the width; returns the lower end. */
double gw_canvas_key(struct gw_canvas *canvas, struct gw_point at, double width, const struct gw_key_entry *entries,
                     size_t n);

#ifdef __cplusplus
}
#endif

#endif
