/* Drawings as a list of what stands on the page, which a backend writes: galeward/svg.h. Plots: galeward/plot.h.
 *
 * Page coordinates are pixels (96 to the inch) from the upper left corner, y down; every shape must have finite ones.
 * Width and height may be set until the page is written. The box of each text is kept, measured by the widest font of
 * the stack (table letter_width): whoever draws can look for a free place, and a test can prove that nothing overlaps
 * and nothing leaves the page.
 *
 *   struct gw_canvas canvas;
 *   gw_canvas_init(&canvas, &arena);
 *   canvas.title = "Member", canvas.description = "Moment along the span";
 *   gw_canvas_line(&canvas, from, to, &(struct gw_look){.line = GW_INK, .width = GW_LINE_THIN});
 *   if (!gw_canvas_label(&canvas, at, step, 3, &font, "634 N-m")) ... no place was free ...
 *   canvas.width = 640, canvas.height = 480;
 *   gw_svg_write(&text, &canvas);
 *
 * Paper is white, whatever the screen; shapes differ by line and pattern before they differ by color. */
#ifndef GALEWARD_CANVAS_H
#define GALEWARD_CANVAS_H

#include "galeward/text.h"

#ifdef __cplusplus
extern "C" {
#endif

#define GW_PAPER "#ffffff"
#define GW_PANEL "#f3f5f7" /* inset, areas under a curve */
#define GW_INK "#16191d"   /* text, outlines: contrast 17.6 on paper */
#define GW_INK2 "#4a5159"  /* units, captions: 8.0 */
#define GW_RULE "#6f7780"  /* axes: 4.5 */
#define GW_FAINT "#c9ced4" /* grids; never carries meaning */
#define GW_INK_FAIL "#6c0e0d"
#define GW_INK_PASS "#056b90"
#define GW_INK_ASK "#734600"
#define GW_INK_NONE "#66707a"

/* Widths of lines, pixels: 0.18, 0.25, 0.35, 0.5 and 0.9 mm. */
#define GW_LINE_FINE 0.7
#define GW_LINE_THIN 1.0
#define GW_LINE_MEDIUM 1.3
#define GW_LINE_BOLD 1.9
#define GW_LINE_HEAVY 3.4

struct gw_point {
    double x, y;
};
struct gw_box {
    double left, top, right, bottom;
};
/* Closed; the last point is not the first again. */
struct gw_outline {
    struct gw_point *points;
    size_t n;
};

/* Lines, or dots on a square grid, over a fill. Angle: degrees from the horizontal, counterclockwise as seen ("/" is
 * 45). */
struct gw_pattern {
    double angle, spacing, width; /* pixels; of dots the width is their diameter */
    const char *color;
    bool dots, crossed; /* crossed: lines the other way as well */
};

/* A NULL color is not drawn. */
struct gw_look {
    const char *fill, *line;
    double width;                     /* of the line, pixels */
    const char *dashes;               /* "6 3"; NULL: solid */
    const struct gw_pattern *pattern; /* over the fill, of closed shapes; outlives the canvas; NULL: none */
};

enum gw_align { GW_ALIGN_START, GW_ALIGN_MIDDLE, GW_ALIGN_END };
#define GW_LABEL_SIZE 12.0 /* no text is smaller */
struct gw_lettering {
    double size;       /* pixels */
    const char *color; /* NULL: GW_INK */
    enum gw_align align;
    bool bold, upward; /* upward: turned to read from below to above */
    bool plate;        /* on a white plate, to be read over a drawing */
};

enum gw_shape_kind {
    GW_SHAPE_POLYLINE,
    GW_SHAPE_POLYGON,
    GW_SHAPE_RECTANGLE, /* points: two corners */
    GW_SHAPE_CIRCLE,    /* one point, radius */
    GW_SHAPE_OUTLINES,  /* one shape of several outlines, holes among them (even-odd) */
    GW_SHAPE_TEXT,      /* one point: the end of the base line that `align` names */
    GW_SHAPE_KEPT,      /* only a box, where no label may stand */
    GW_SHAPE_CLIP,      /* what follows is cut off at the box ... */
    GW_SHAPE_CLIP_END   /* ... until here */
};
struct gw_drawn {
    enum gw_shape_kind kind;
    struct gw_look look;
    const struct gw_point *points;
    size_t n;
    double radius;
    const struct gw_outline *outlines;
    size_t n_outlines;
    struct gw_lettering lettering;
    const char *text;
    struct gw_box box; /* text, kept, clip */
};

/* What a key or a list of the drawing says, for pages that are narrower than it: they put it below as text. */
struct gw_told {
    const struct gw_canvas *swatch; /* as the drawing has it; NULL: none */
    const char *words;
};

/* galeward/report.h: names that stand by their beginnings alone. */
struct gw_long_names;
struct gw_canvas {
    struct gw_arena *arena;
    double width, height;
    const char *title, *description;        /* for screen readers and tooltips as well */
    const struct gw_long_names *long_names; /* NULL: every name is whole */
    bool on_page;                           /* of a report, whose cautions count for it */
    bool small;                             /* beside the answer on a first page: at a smaller scale, with less on it */
    struct gw_drawn *shapes;                /* in the order of drawing */
    size_t n, capacity;
    struct gw_told *told; /* NULL: nothing but what stands in the description */
    size_t n_told, told_capacity;
};
/* What is given to the canvas is copied into the arena. */
void gw_canvas_init(struct gw_canvas *canvas, struct gw_arena *arena);

void gw_canvas_line(struct gw_canvas *canvas, struct gw_point from, struct gw_point to, const struct gw_look *look);
void gw_canvas_polyline(struct gw_canvas *canvas, const struct gw_point *points, size_t n, const struct gw_look *look);
void gw_canvas_polygon(struct gw_canvas *canvas, const struct gw_point *points, size_t n, const struct gw_look *look);
void gw_canvas_rectangle(struct gw_canvas *canvas, const struct gw_box *box, const struct gw_look *look);
void gw_canvas_circle(struct gw_canvas *canvas, struct gw_point center, double radius, const struct gw_look *look);
void gw_canvas_outlines(struct gw_canvas *canvas, const struct gw_outline *outlines, size_t n,
                        const struct gw_look *look);
void gw_canvas_clip(struct gw_canvas *canvas, const struct gw_box *box);
void gw_canvas_clip_end(struct gw_canvas *canvas);
void gw_canvas_keep(struct gw_canvas *canvas, const struct gw_box *box);

/* The swatch outlives the canvas. */
void gw_canvas_tell(struct gw_canvas *canvas, const struct gw_canvas *swatch, const char *words);

/* An upper bound, as the reader's font is not known. */
double gw_lettering_width(const struct gw_lettering *lettering, const char *text);
struct gw_box gw_lettering_box(const struct gw_lettering *lettering, struct gw_point at, const char *text);
void gw_canvas_text(struct gw_canvas *canvas, struct gw_point at, const struct gw_lettering *lettering,
                    const char *text);
/* Lines broken at blanks to fit `width`, and within a word that is wider; the first at `at`. Returns the base line
 * after the last. */
double gw_canvas_paragraph(struct gw_canvas *canvas, struct gw_point at, double width,
                           const struct gw_lettering *lettering, const char *text);
/* Whether no text and no kept box lies there. */
bool gw_canvas_is_free(const struct gw_canvas *canvas, const struct gw_box *box);
/* At the first of `tries` places, `step` apart downward, that is free within the box, moved sideways into it; false,
 * and nothing drawn, where none is. */
bool gw_canvas_label(struct gw_canvas *canvas, struct gw_point at, double step, int tries, const struct gw_box *within,
                     const struct gw_lettering *lettering, const char *text);
/* A dimension line with end ticks and its label above; one that is wider than the line, or has no free place, is left
 * out, and false returned. `to` lies right of or above `from`. */
bool gw_canvas_dimension(struct gw_canvas *canvas, struct gw_point from, struct gw_point to, const char *label);

/* From paper (0) to the darkest gray on which ink is read (1): for bands of a field. */
const char *gw_canvas_gray(struct gw_arena *arena, double fraction);

#ifdef __cplusplus
}
#endif

#endif
