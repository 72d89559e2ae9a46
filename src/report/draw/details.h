/* What the sections of a pocket, a joint and a weep share: one scale, materials by their patterns, names by leaders,
 * what is provided against what is required in a ledger. What no record states is dashed. */
#ifndef REPORT_DRAW_DETAILS_H
#define REPORT_DRAW_DETAILS_H

#include "galeward/inspect.h"
#include "galeward/plan.h"
#include "report/draw/pictures.h"
#include "report/draw/sheet.h"

enum { DETAIL_NAMES = 20, DETAIL_ROWS = 20, DETAIL_OPEN = 16 };

/* One line of the ledger. */
struct detail_row {
    const char *name;
    const char *provided, *required; /* NULL: not stated, not known */
    bool plain;                      /* `provided` tells both */
    enum sheet_mark mark;
    const char *verdict, *how; /* how: NULL: no more to say */
};
/* A name and the point that it is of. */
struct detail_name {
    struct gw_point at;
    const char *words;
};
struct detail_names {
    struct detail_name items[DETAIL_NAMES];
    size_t n;
    double width; /* pixels, of the column; 0: as usual */
};
struct detail {
    struct sheet sheet;
    const struct gw_results *results;
    const struct gw_system *candidate;
    const struct gw_system *system; /* with what is chosen at the place */
    struct gw_ask ask;
    int coarser; /* steps of scale below the largest that fits beside the names; below 0: no page holds the sheet */
    double px;   /* pixels a meter */
    const char *scale; /* "1:2" */
    struct detail_names left, right;
    struct detail_row rows[DETAIL_ROWS];
    size_t n_rows;
    const char *open[DETAIL_OPEN]; /* what is not stated, with the question */
    size_t n_open;
};

/* An ask of its own, with what the results' plans choose. */
void gw_detail_open(struct detail *d, struct gw_canvas *canvas, const struct candidate_picture *of,
                    enum gw_units shown);
/* The candidate as it is offered there from now on. */
void gw_detail_at(struct detail *d, const struct gw_element *element);
/* Draws a sheet, at a smaller scale where it is higher than a page: what a page makes smaller has lost its scale. */
void gw_detail_to_fit(struct gw_canvas *canvas,
                      void (*draw)(struct gw_canvas *canvas, const void *of, enum gw_units shown, int coarser),
                      const void *of, enum gw_units shown);
/* The largest scale of drafting at which so many meters fit into so many pixels. */
void gw_detail_scale(struct detail *d, double wide, double high, double wide_px, double high_px);

/* Lines and materials. A look that is dashed: not stated, or schematic. */
extern const struct gw_look gw_detail_cut, gw_detail_seen, gw_detail_dashed, gw_detail_steel, gw_detail_glass,
    gw_detail_gasket, gw_detail_silicone, gw_detail_center;
struct gw_look gw_detail_metal(enum gw_metal alloy);
/* A pane whose right or upper end goes on: two short strokes are its material. */
void gw_detail_pane(struct gw_canvas *canvas, const struct gw_box *box, bool upright);
/* Where a part goes on past the drawing: a thin line with a kink. */
void gw_detail_break(struct gw_canvas *canvas, struct gw_point from, struct gw_point to);
/* A dimension whose words stand after its end; its extension lines begin at `feet`, and are cased. */
void gw_detail_across(struct detail *d, double left, double right, double y, double feet, const char *words);
void gw_detail_upright(struct detail *d, double top, double bottom, double x, double feet, const char *words);
/* An arrow with a filled head along the points. */
void gw_detail_flow(struct gw_canvas *canvas, const struct gw_point *points, size_t n);

void gw_detail_name(struct detail_names *names, double x, double y, const char *words);
void gw_detail_name_once(struct detail_names *names, double x, double y, const char *words);
/* "heat_strengthened": "heat strengthened"; figures kept on one line with their units. */
const char *gw_detail_word(struct gw_arena *arena, const char *word);
const char *gw_detail_glued(struct gw_arena *arena, const char *words);
/* In a column between two heights, in the order of their points, a leader each; the base line after the last. */
double gw_detail_put_names(struct detail *d, struct detail_names *names, bool right, double top);
enum { DETAIL_COLUMN = 168 }; /* pixels, of names */

void gw_detail_row(struct detail *d, struct detail_row row);
void gw_detail_ask(struct detail *d, const char *question);
/* A length as it was stated; NULL: it is not. */
const char *gw_detail_stated(const struct detail *d, double si);
/* The same of an item. */
const char *gw_detail_value(const struct detail *d, enum gw_item_id item, double si);
const char *gw_detail_needed(const struct detail *d, double si);
const char *gw_detail_said(const struct detail *d, const struct gw_message *message);
/* An item at a place, with a value of the system's own; what it is held to there is its required side. */
void gw_detail_item(struct detail *d, const char *name, enum gw_item_id item, const struct gw_spot *spot,
                    const struct gw_as_read *read, const struct gw_system *system);
/* A value of the system's own against the item's limit for a system that states none; nothing else is judged. */
void gw_detail_practice(struct detail *d, const char *name, enum gw_item_id item, const struct gw_spot *spot,
                        double value, const struct gw_system *without_own);
enum sheet_mark gw_detail_mark(enum gw_verdict verdict);
enum sheet_mark gw_detail_item_mark(enum gw_item_verdict verdict);
/* "5/8 in ≥ 1/2 in" */
const char *gw_detail_figures(struct gw_arena *arena, const struct detail_row *row);
/* Ledger, what is not stated, foot. */
void gw_detail_close(struct detail *d, double top);

#endif
