/* What the drawings of calc kinds share: the page, its head and foot, figures in words, labels that are listed where
 * they have no room. */
#ifndef REPORT_DRAW_SHEET_H
#define REPORT_DRAW_SHEET_H

#include "galeward/canvas.h"
#include "galeward/units.h"

/* Pixels: what a page of A4 and of letter both hold, 180 mm, and a margin of 6 mm round it. */
enum { SHEET_MARGIN = 23, SHEET_LIVE = 680, SHEET_PAGE = SHEET_LIVE + 2 * SHEET_MARGIN };

/* Marks that go before verdicts' words: apart without their color. */
enum sheet_mark { MARK_NONE, MARK_STOP, MARK_ASK, MARK_IN_HAND, MARK_SETTLED, MARK_NOT_ASKED };
const char *gw_mark_ink(enum sheet_mark mark);
void gw_mark_draw(struct gw_canvas *canvas, struct gw_point center, enum sheet_mark mark);

struct sheet {
    struct gw_canvas *canvas;
    struct gw_arena *arena;
    enum gw_units shown;
    struct gw_box within;  /* where labels may stand: at first the live width */
    struct gw_text missed; /* labels without room: "800 N-m at 2.5 m; ..." */
};
void gw_sheet_open(struct sheet *sheet, struct gw_canvas *canvas, enum gw_units shown);
/* Title and rule; then a verdict, its mark before words in its ink; then paragraphs (NULL: skipped). Each returns the
 * base line after it. */
double gw_sheet_head(struct sheet *sheet, const char *title);
double gw_sheet_marked(struct sheet *sheet, double top, enum sheet_mark mark, const char *words);
double gw_sheet_verdict(struct sheet *sheet, double top, bool passes, const char *words);
double gw_sheet_lines(struct sheet *sheet, double top, const char *const *lines, size_t n);
/* The labels that found no room, which are then forgotten; the base line after them. */
double gw_sheet_missed(struct sheet *sheet, double top);
/* Missed labels, notes, the caution; then the size of the page is known. */
void gw_sheet_foot(struct sheet *sheet, double top, const char *const *notes, size_t n);
/* Figure or strip: its title and a second line (NULL: none) of that width; the base line after them. */
double gw_sheet_caption(struct sheet *sheet, struct gw_point at, double width, const char *title, const char *second);
void gw_sheet_rule(struct sheet *sheet, double y);

/* What was given, with the decimals of its dimension; a place, to four digits; a result, to which a person may design:
 * four digits, rounded up. */
const char *gw_sheet_given(const struct sheet *sheet, enum gw_dim dim, double si);
const char *gw_sheet_place(const struct sheet *sheet, double si);
const char *gw_sheet_demand(const struct sheet *sheet, enum gw_dim dim, double si);
const char *gw_sheet_capacity(const struct sheet *sheet, enum gw_dim dim, double si);
const char *gw_sheet_use(const struct sheet *sheet, double use);
/* A name of somebody's file, cut at 24 characters. */
const char *gw_sheet_name(const struct sheet *sheet, const char *name);

extern const struct gw_lettering gw_sheet_label; /* in the middle, on a plate */
/* As gw_canvas_label; what has no room is listed as `listed`. */
bool gw_sheet_put(struct sheet *sheet, struct gw_point at, double step, int tries, const struct gw_lettering *lettering,
                  const char *text, const char *listed);
void gw_sheet_list(struct sheet *sheet, const char *listed);

/* A number in a circle, as flags and lists have it. */
#define SHEET_FLAG 8.1 /* pixels: its radius */
void gw_sheet_number(struct sheet *sheet, struct gw_point center, size_t number);
/* Mark and words on a white plate in the middle of a box; false, and nothing drawn, where it has no room or the place
 * is taken. */
bool gw_sheet_plate(struct sheet *sheet, const struct gw_box *box, enum sheet_mark mark, const char *words);

#endif
