/* What the reports share: cells that carry quantities, the page's head and foot. */
#ifndef REPORT_PARTS_H
#define REPORT_PARTS_H

#include "galeward/report.h"

/* A column of a table; `dim` other than a ratio puts its unit in the header. */
struct heading {
    const char *title;
    bool right;
    enum gw_dim dim;
};

struct page {
    struct gw_report *report;
    struct gw_arena *arena;
    const struct gw_results *results;
    enum gw_units shown;
};

/* Figures that a person designs to are rounded to the safe side: a demand up, a capacity down. */
enum rounding { NEAREST, UP, DOWN };

struct page gw_page_of(struct gw_report *report, const struct gw_results *results);
void gw_page_table(struct page *page, const char *caption, const struct heading *headings, size_t n);
void gw_page_cell(struct page *page, const char *text);
void gw_page_count(struct page *page, long value);
/* A bare number; empty where absent. */
void gw_page_quantity(struct page *page, enum gw_dim dim, double si, enum rounding rounding);
void gw_page_utilization(struct page *page, double value);
void gw_add_utilization(struct gw_text *out, double value);
/* Four digits; with the unit: "38.2 psf". */
void gw_add_figure(struct gw_text *out, double value, enum rounding rounding);
void gw_add_quantity(struct gw_text *out, enum gw_dim dim, enum gw_units shown, double si, enum rounding rounding);
const char *gw_quantity_text(struct page *page, enum gw_dim dim, double si, enum rounding rounding);
const char *gw_height_band(struct page *page, double bottom, double top);

enum gw_tone gw_verdict_tone(enum gw_verdict verdict);
bool gw_is_not_built(const char *message);

/* Element groups ordered by wall (in the file's order), kind, zone and parapet. */
struct ordered {
    const struct gw_element *element;
    size_t wall, index;
};
struct ordered *gw_order_elements(struct gw_arena *arena, const struct gw_takeoff *takeoff);
bool gw_same_band(const struct ordered *a, const struct ordered *b);

void gw_page_head(struct page *page, const char *what);
void gw_page_buildings(struct page *page);
/* Warnings, assumptions, what rests on memory or practice, what is not checked, the caution. */
void gw_page_foot(struct page *page, const struct gw_used *rows);
/* Adds what the elements, the demands and, where asked, the verdicts rest on. */
void gw_page_rows(struct gw_used *rows, struct page *page, bool verdicts);
const char *gw_caution_text(void);
const char *gw_correction_text(struct gw_arena *arena, const struct gw_correction *correction);

void gw_csv_cell(struct gw_text *out, const char *text, bool first);

#endif
