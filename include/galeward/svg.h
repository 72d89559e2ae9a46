/* Drawings as SVG text: shapes on a page, and plots with axes.
 *
 * Page coordinates are pixels from the upper left corner, y down; every shape must have finite ones. Coordinates are
 * printed to a tenth of a pixel, so that rounding noise of a computation does not show; the same calls give the same
 * bytes in every locale.
 *
 *   struct gw_svg svg;
 *   gw_svg_open(&svg, &text, 640, 480, "Member", "Moment along the span");
 *   struct gw_plot plot = {.left = 60, .top = 40, .width = 540, .height = 380,
 *                          .x = {0, 12, false, "ft"}, .y = {0, 45000, false, "in-lb"}};
 *   gw_plot_open(&svg, &plot);
 *   gw_plot_curve(&svg, &plot, points, n, &(struct gw_svg_look){.line = GW_SVG_BLUE, .width = 2});
 *   gw_svg_close(&svg);
 *
 * The ready colors differ in lightness as well as in hue: they stay apart in gray and to color-blind eyes. */
#ifndef GALEWARD_SVG_H
#define GALEWARD_SVG_H

#include "galeward/text.h"

#ifdef __cplusplus
extern "C" {
#endif

#define GW_SVG_PAPER "#ffffff"
#define GW_SVG_INK "#1c2329"   /* text, outlines */
#define GW_SVG_SOFT "#5b6670"  /* second text, dimension lines */
#define GW_SVG_FAINT "#d3d9dd" /* grid lines */
#define GW_SVG_BLUE "#1f5a92"
#define GW_SVG_ORANGE "#d9822b"
#define GW_SVG_PLUM "#6a2c5b"
#define GW_SVG_GREEN "#7fb069"

struct gw_point {
    double x, y;
};

struct gw_svg {
    struct gw_text *out;
    double width, height;
    int clips; /* clipping areas so far: their names */
};

/* A NULL color is not drawn. */
struct gw_svg_look {
    const char *fill, *line;
    double width;       /* of the line, pixels */
    const char *dashes; /* "6 3"; NULL: solid */
};

enum gw_svg_anchor { GW_SVG_START, GW_SVG_MIDDLE, GW_SVG_END };
struct gw_svg_font {
    double size;       /* pixels */
    const char *color; /* NULL: GW_SVG_INK */
    enum gw_svg_anchor anchor;
    bool bold, upward; /* upward: turned to read from below to above */
    bool plate;        /* on a pale plate, to be read over a drawing */
};

/* Title and description are for screen readers and tooltips as well. */
void gw_svg_open(struct gw_svg *svg, struct gw_text *out, double width, double height, const char *title,
                 const char *description);
void gw_svg_close(struct gw_svg *svg);

void gw_svg_line(struct gw_svg *svg, struct gw_point from, struct gw_point to, const struct gw_svg_look *look);
void gw_svg_polyline(struct gw_svg *svg, const struct gw_point *points, size_t n, const struct gw_svg_look *look);
void gw_svg_polygon(struct gw_svg *svg, const struct gw_point *points, size_t n, const struct gw_svg_look *look);
void gw_svg_rectangle(struct gw_svg *svg, double left, double top, double width, double height,
                      const struct gw_svg_look *look);
void gw_svg_circle(struct gw_svg *svg, struct gw_point center, double radius, const struct gw_svg_look *look);
/* One shape of several outlines, holes among them (even-odd): open, then each outline, then close. */
void gw_svg_shape_open(struct gw_svg *svg, const struct gw_svg_look *look);
void gw_svg_shape_ring(struct gw_svg *svg, const struct gw_point *points, size_t n);
void gw_svg_shape_close(struct gw_svg *svg);
/* What follows is cut off at the rectangle, until the end. */
void gw_svg_clip_open(struct gw_svg *svg, double left, double top, double width, double height);
void gw_svg_clip_close(struct gw_svg *svg);

/* `at` is the end of the base line that `anchor` names. Characters that XML cannot hold become U+FFFD. */
void gw_svg_text(struct gw_svg *svg, struct gw_point at, const struct gw_svg_font *font, const char *text);
/* Lines broken at blanks to fit `width`, the first at `at`; returns the base line after the last. A NULL `svg` draws
 * nothing and only measures. */
double gw_svg_paragraph(struct gw_svg *svg, struct gw_point at, double width, const struct gw_svg_font *font,
                        const char *text);
/* An upper estimate, as the reader's font is not known. */
double gw_svg_text_width(const char *text, const struct gw_svg_font *font);
/* A dimension line with end ticks and its label in the middle; `to` lies right of or above `from`. */
void gw_svg_dimension(struct gw_svg *svg, struct gw_point from, struct gw_point to, const char *label);

/* Color scales from pale to dark, for fields: fraction from 0 to 1. Writes "#rrggbb" and returns it. */
enum gw_svg_scale { GW_SVG_BLUES, GW_SVG_BROWNS };
enum { GW_SVG_COLOR_SIZE = 8 };
const char *gw_svg_shade(char out[GW_SVG_COLOR_SIZE], enum gw_svg_scale scale, double fraction);

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

/* A plot maps data to a rectangle of the page. low < high; 0 < low where logarithmic. */
struct gw_axis {
    double low, high;
    bool logarithmic;
    const char *label; /* with its unit; NULL: none */
};
struct gw_plot {
    double left, top, width, height; /* of the data area; axis numbers and labels stand left of and below it */
    struct gw_axis x, y;
};
/* False where a logarithmic axis has no place for the value. Outside the area is a place too. */
bool gw_plot_place(struct gw_point *out, const struct gw_plot *plot, double x, double y);
/* Frame, grid lines, ticks, numbers and labels. */
void gw_plot_open(struct gw_svg *svg, const struct gw_plot *plot);
/* Cut off at the data area; broken where a point has no place or is not a number. */
void gw_plot_curve(struct gw_svg *svg, const struct gw_plot *plot, const struct gw_point *points, size_t n,
                   const struct gw_svg_look *look);
/* The area between the curve and y = base. */
void gw_plot_area(struct gw_svg *svg, const struct gw_plot *plot, const struct gw_point *points, size_t n, double base,
                  const struct gw_svg_look *look);
/* Marks; those outside the area are left out, and their number is returned. */
size_t gw_plot_marks(struct gw_svg *svg, const struct gw_plot *plot, const struct gw_point *points, size_t n,
                     double radius, const struct gw_svg_look *look);

struct gw_legend_entry {
    const char *text;
    struct gw_svg_look look;
    bool mark; /* a circle instead of a line */
};
/* One entry a line from the upper left corner; returns the lower end. */
double gw_svg_legend(struct gw_svg *svg, struct gw_point at, const struct gw_legend_entry *entries, size_t n);

#ifdef __cplusplus
}
#endif

#endif
