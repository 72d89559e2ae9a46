/* Pages of a PDF while they are set. Lengths are points, y down from the upper edge of the page. */
#ifndef REPORT_PDF_PDF_H
#define REPORT_PDF_PDF_H

#include "galeward/pdf.h"
#include "report/math.h"

#include <pango/pangocairo.h>

enum pdf_weight { PDF_REGULAR, PDF_SEMIBOLD, PDF_BOLD };
struct pdf_style {
    double size;
    enum pdf_weight weight;
    const char *color; /* "#16191d" */
    const char *family;
    bool italic;
};
extern const struct pdf_style pdf_body, pdf_small;

struct pdf {
    struct gw_arena *arena;
    const struct gw_report *report;
    enum gw_units shown;
    struct gw_engine *engine;
    cairo_surface_t *surface;
    cairo_t *cr;
    PangoContext *letters;        /* of true widths: nothing is fitted to pixels */
    double y;                     /* where the next line begins */
    int page, pages;              /* from 1; how many there are, 0 while that is found out */
    int outline;                  /* bookmark of the last section */
    bool bookmarks;               /* and links: not while pages are counted */
    const char *tag;              /* of the block that is set now, for those who have it read to them; NULL: none */
    long derivations;             /* that the report has: D1, D2 ... */
    const struct gw_block *small; /* drawn small on the first page; whole where the first part ends */
};

/* Live area. */
double pdf_left(void);
double pdf_width(void);
double pdf_top(void);
double pdf_bottom(void);

/* pages.c */
void pdf_new_page(struct pdf *pdf);
/* A new page where less than that is left of this one. */
void pdf_need(struct pdf *pdf, double height);
void pdf_color(struct pdf *pdf, const char *color);
void pdf_rule(struct pdf *pdf, double y, double width, const char *color);
/* text.c: a layout of that width (0: one line), which the caller frees. */
PangoLayout *pdf_layout(struct pdf *pdf, const char *text, const struct pdf_style *style, double width);
double pdf_layout_height(PangoLayout *layout);
double pdf_text_width(struct pdf *pdf, const char *text, const struct pdf_style *style);
/* Of a paragraph over the whole width. */
double pdf_text_height(struct pdf *pdf, const char *text, const struct pdf_style *style);
double pdf_height_within(struct pdf *pdf, const char *text, const struct pdf_style *style, double width);
/* Words of whatever length, cut off with dots where they would be higher than that: a name has no end. */
void pdf_keep_within(PangoLayout *layout, double height);
double pdf_most_of_a_cell(void); /* as high as a page has room for */
/* In one line. */
void pdf_put_line(struct pdf *pdf, double x, double y, double width, const char *text, const struct pdf_style *style);
/* Makes what names a derivation lead to it: words that stand, or will stand, at that place. */
void pdf_links(struct pdf *pdf, PangoLayout *layout, double x, double y);
/* At a place, within a cell; its height. */
double pdf_put(struct pdf *pdf, double x, double y, double width, const char *text, const struct pdf_style *style,
               bool right);
/* From y on, over pages where it must. */
void pdf_paragraph(struct pdf *pdf, double indent, const char *text, const struct pdf_style *style);
/* table.c, steps.c, drawing.c */
enum { PDF_TABLE_START = 70 }; /* pt, a table's caption, head and first row */
void pdf_table(struct pdf *pdf, const struct gw_block *table);
void pdf_step(struct pdf *pdf, const struct gw_equation *equation);
void pdf_figure(struct pdf *pdf, const struct gw_block *block);
void pdf_canvas(struct pdf *pdf, const struct gw_canvas *canvas, double x, double y, double scale);
/* math.c: what it takes above and below its base line; drawn there. */
struct pdf_box {
    double width, above, below;
};
struct pdf_box pdf_math_box(struct pdf *pdf, const struct gw_math *math, double size);
void pdf_math_draw(struct pdf *pdf, const struct gw_math *math, double size, double x, double y);

#endif
