/* The elevation of a wall, seen from outside, to scale: its lites filled by one variable, figures in a ledger beside
 * the rows, what is worst called out. What the fill means is the caller's (elevation_demand.c, elevation_check.c). */
#ifndef REPORT_DRAW_ELEVATION_H
#define REPORT_DRAW_ELEVATION_H

#include "galeward/takeoff.h"
#include "report/draw/sheet.h"

/* What a fill says. */
struct elevation_class {
    const char *name; /* in the key: "30 to 40", "not shown" */
    struct gw_look look;
    const char *plate; /* words on areas that have room; NULL: none */
    enum sheet_mark mark;
    bool dark; /* lines within are white */
};
extern const struct elevation_class gw_verdict_classes[]; /* elevation_check.c: by enum gw_verdict */
extern const size_t gw_verdict_order[];                   /* of a key */
/* Something called out: a number on the drawing, its words in the list below. */
struct elevation_flag {
    const struct gw_element *element; /* at its first piece; or */
    bool placed;                      /* at this place of the wall, m from its left end and above ground */
    double x, y;
    enum sheet_mark mark; /* there instead of a dot */
    int number;           /* its own; 0: by its place in the list */
    const char *first, *second;
};
/* A place that is only marked. */
struct elevation_mark {
    double x, y;
    enum sheet_mark mark;
};
struct elevation {
    const struct gw_takeoff *takeoff;
    const struct gw_wall_grid *grid;
    const char *title, *second; /* of the sheet */
    const char *caption, *note; /* of the figure: what the fill is */
    const char *described;      /* for those who do not see it */
    const char *key;            /* before the classes: "Outward psf" */
    const void *context;
    const struct elevation_class *classes; /* NULL, and no `class_of`: a white wall */
    size_t n_classes;
    const size_t *order; /* of the key, all of the classes, darkest first; NULL: as they stand */
    size_t (*class_of)(const void *context, const struct gw_element *lite);
    /* The same where alike lites differ by their place on the wall; NULL: they do not. */
    size_t (*class_at)(const void *context, const struct gw_element *lite, size_t place);
    const char *const (*heads)[2]; /* of the ledger, two lines each */
    size_t n_columns;
    /* One figure of a row whose lites are these; nothing where there is none. */
    void (*cell)(struct gw_text *out, const void *context, const struct gw_element *const *lites, size_t n,
                 size_t column);
    const struct elevation_flag *flags;
    size_t n_flags;
    const struct elevation_mark *marks;
    size_t n_marks;
    const char *const *lines; /* below the key, a paragraph each */
    size_t n_lines;
};
/* "24 columns by 5 floors and a parapet": how large a wall is, for those who do not see it. */
const char *gw_elevation_size(struct gw_arena *arena, const struct gw_wall_grid *grid);
/* What is called out is added to `described`. */
void gw_draw_elevation(struct gw_canvas *canvas, const struct elevation *of, enum gw_units shown);

/* Where the wall stands on the page. */
struct elevation_frame {
    const struct elevation *of;
    struct sheet *sheet;
    double ratio, px; /* 1 : ratio; pixels a meter */
    struct gw_box wall;
    bool every_line, every_tenth; /* detail: each column and row; each floor and each tenth column; else fifth floors */
};
double gw_elevation_x(const struct elevation_frame *f, double m);
double gw_elevation_y(const struct elevation_frame *f, double m);

/* elevation_areas.c: like neighbors as one area; a test can count them. */
struct elevation_area {
    size_t class_;
    int zone;
    bool parapet;
    size_t from, to;  /* places, the last not in it */
    size_t low, high; /* strips, the same */
};
struct elevation_areas {
    struct elevation_area *items;
    size_t n, capacity;
};
struct elevation_areas gw_elevation_areas(const struct elevation *of, struct gw_arena *arena);
void gw_elevation_fill(const struct elevation_frame *f, const struct elevation_areas *areas);
void gw_elevation_plates(const struct elevation_frame *f, const struct elevation_areas *areas);
/* elevation_ledger.c: rows and floors named at the left, figures at the right. */
void gw_elevation_ledger(const struct elevation_frame *f);
/* elevation_notes.c: flags with their list, the key, the bar of scale; the base line after them. */
void gw_elevation_flags(const struct elevation_frame *f);
double gw_elevation_foot(const struct elevation_frame *f, const struct elevation_areas *areas, double top);

#endif
