/* What the pages share: figures as people read them, the page's head and foot. */
#ifndef REPORT_PAGE_H
#define REPORT_PAGE_H

#include "galeward/report.h"

struct page {
    struct gw_report *report;
    struct gw_arena *arena;
    const struct gw_results *results;
    enum gw_units shown;
};
struct page gw_page_of(struct gw_report *report, const struct gw_results *results);

/* A first page on which a picture is to stand has room for so many sentences of a kind; what is cut stands below. */
enum { GW_FIRST_LINES = 3 };
static inline bool gw_is_short(const struct page *page) { return page->report->pictures && !page->results->all; }

/* Figures that a person designs to are rounded to the safe side: a demand up, a capacity down. */
enum rounding { NEAREST, UP, DOWN };

/* figures.c. Bare: with the decimals that the dimension has; nothing where absent. */
void gw_add_bare(struct gw_text *out, enum gw_dim dim, enum gw_units shown, double si, enum rounding rounding);
/* Four digits; with the unit: "38.2 psf"; nothing where absent. */
void gw_add_figure(struct gw_text *out, double value, enum rounding rounding);
void gw_add_quantity(struct gw_text *out, enum gw_dim dim, enum gw_units shown, double si, enum rounding rounding);
const char *gw_quantity_text(struct page *page, enum gw_dim dim, double si, enum rounding rounding);
/* "120 lb"; where the candidate's is not to be above it "limit 1 in" and "here 1.182 in"; "" where absent. */
const char *gw_as_required(struct page *page, const struct gw_finding *finding);
const char *gw_as_provided(struct page *page, const struct gw_finding *finding);
/* A cost as the files have it, whole or to the cent, so that printed parts add to the printed sum; "" where absent. */
const char *gw_cost_text(struct gw_arena *arena, double cost);
/* "0.99", rounded up; "none provided" of an infinity. */
void gw_add_utilization(struct gw_text *out, double value);
/* "3.00 - 16.00": heights above ground. */
void gw_add_extent(struct gw_text *out, enum gw_units shown, double bottom, double top);
/* "3.0 to 16.0", "16.0": heights above ground, with a decimal less than a length has. */
void gw_add_heights(struct gw_text *out, enum gw_units shown, double low, double high);
/* "51.0 / 30.6": a pressure at strength and at allowable-stress level, up; nothing where absent. */
void gw_add_levels(struct gw_text *out, enum gw_units shown, double strength, double asd);
/* The number that stands on the page with so many decimals. */
double gw_printed(enum gw_dim dim, enum gw_units shown, double si, int decimals, enum rounding rounding);
/* SI: so many times what a table prints of it, rounded up: whoever multiplies the printed figure finds no more. */
double gw_times_printed(enum gw_dim dim, enum gw_units shown, double factor, double si);
/* A basis as people read it: "recalled" for what rests on memory. Of struct gw_used: the weakest of its rows. */
const char *gw_basis_words(enum gw_basis basis);
bool gw_say_basis(struct gw_text *out, const void *used, enum gw_units shown);
bool gw_is_weak(enum gw_basis basis); /* recalled, or common practice */

enum gw_tone gw_verdict_tone(int verdict);
enum gw_tone gw_basis_tone(int basis);

/* Element groups ordered by wall (in the file's order), kind, zone and parapet. */
struct ordered {
    const struct gw_element *element;
    size_t wall, index;
};
struct ordered *gw_order_elements(struct gw_arena *arena, const struct gw_takeoff *takeoff);

/* assumptions.c: what is said of another wall or building does not concern the element. */
bool gw_concerns_element(const struct gw_assumption *a, const struct gw_answer *answer, const struct gw_element *e);

/* explain.c: the derivations that a report brings with it. */
void gw_page_derivations(struct page *page);

/* head_foot.c */
/* Sheets are read and filed: long tables hold the worst, the page of text that the command writes holds the rest. */
void gw_page_rest(struct page *page, const char *command);
void gw_page_head(struct page *page, const char *what);
/* Warnings, assumptions, how much is recalled (or all that is, by its sources), what is not checked, the caution, what
 * the page was made from and by which rules. */
void gw_page_foot(struct page *page, const struct gw_used *rows);
const char *gw_caution_text(void);
const char *gw_site_words(struct page *page);  /* "basic wind speed 130 mph, exposure C, ..." */
const char *gw_codes_words(struct page *page); /* "risk category II, ibc-2021, asce7-16" */
const char *gw_made_from(struct page *page);   /* the version, the files with their hashes */
/* "a, b (the architect); c (the glass supplier)": what is not checked, by whom to ask. */
const char *gw_not_checked_words(struct page *page);

/* chosen.c: with which plan candidates were judged, or that they are as offered where there is a choice. */
void gw_page_chosen(struct page *page);
bool gw_has_choices(const struct gw_model *model); /* options of a system, or make-ups of a lite */
void gw_page_chosen_at(struct page *page, const struct gw_element *element);

/* assumptions.c: alike ones merged, those that decide first; all of them, one a line, where that is asked for. */
void gw_page_assumptions(struct page *page);
/* "walls east, north: splices: not given: ...": the one at `index`, and those after it that say the same, which leave
 * the list. */
bool gw_is_correction(const struct gw_assumption *assumption); /* of the tables */
const char *gw_assumption_words(struct page *page, const struct gw_assumption **rest, size_t n, size_t index);

/* recalled.c: a figure and the rows behind it (NULL: none). Figures that rest on the same recalled rows share a line,
 * "LEAD name, name: TITLE (table: row, row); TITLE (table: row)". */
struct resting {
    const char *name;
    const struct gw_used *used;
};
void gw_page_recalled(struct page *page, const char *lead, const struct resting *figures, size_t n);
/* One line for all of them: whose figures rest on recalled rows, what the first is about, how many more. */
void gw_page_recalled_first(struct page *page, const struct resting *figures, size_t n);
/* "TITLE (table: row, row); TITLE (table: row)": what is recalled of them; "". */
const char *gw_recalled_words(struct page *page, const struct gw_used *used);
void gw_page_sources(struct page *page, const struct gw_used *rows);

/* render_sarif.c: SARIF 2.1.0. */
void gw_render_sarif(struct gw_text *out, const struct gw_log *log);
/* Without "folder/..". */
const char *gw_path_without_detours(struct gw_arena *arena, const char *path);

/* render_yaml.c: a record on one line, as our own files have it, exact. */
void gw_yaml_flow(struct gw_text *out, const struct gw_record *record, const void *value, enum gw_units shown);

/* render_csv.c: a list of records, one a line, as exact as JSON: SI, the keys with their units in the header. */
/* A cell, with the comma before it where it is not the line's first. */
void gw_csv_cell(struct gw_text *out, const char *text, bool first);
void gw_csv_records(struct gw_text *out, const struct gw_field *list, const void *value);

#endif
