/* Tables that people read: views of records. A view names fields; their values, units and words come from the record.
 */
#ifndef REPORT_VIEW_H
#define REPORT_VIEW_H

#include "report/page.h"

struct view_column {
    const char *heading;
    const char *key; /* of the record's field, or of a record that stands flat in it; NULL: the row's number */
    enum rounding rounding;
    enum gw_dim
        dim;    /* other than a ratio: shown as this, where the field has another or none; its unit is in the heading */
    bool right; /* words to the right too */
    bool use;   /* a utilization: two decimals, up */
    enum gw_tone (*tone)(int value); /* of a verdict, a basis */
};
/* COLUMN("Inward", "inward", .rounding = UP) */
#define COLUMN(heading_, key_, ...)                                                                                    \
    {                                                                                                                  \
        .heading = heading_, .key = key_, __VA_ARGS__                                                                  \
    }

struct view {
    const struct gw_record *record;
    const struct view_column *columns;
    size_t n;
    /* Rows that are alike become one, in the place of the first; NULL: each stands for itself. `merge` takes `row` into
     * `into`, a copy of the first that was taken into itself. */
    bool (*same)(const void *a, const void *b);
    void (*merge)(void *into, const void *row, bool first);
    /* How bad a row is: of a long table on a sheet (gw_report.rest) only the worst stand. NULL: the first. */
    double (*badness)(const void *row);
};
#define VIEW(record_, columns_, ...)                                                                                   \
    {                                                                                                                  \
        .record = record_, .columns = columns_, .n = sizeof(columns_) / sizeof *(columns_), __VA_ARGS__                \
    }

/* The table with a row for each of `rows`, pointers to the record's struct; none without rows. */
void gw_view_table(struct page *page, const char *caption, const struct view *view, const void *const *rows, size_t n);
/* The same of a list of structs. */
void gw_view_list(struct page *page, const char *caption, const struct view *view, const void *items, size_t n);
/* The same for a spreadsheet: its headings stand without rows too. */
void gw_view_sheet(struct page *page, const struct view *view, const void *items, size_t n);
/* Pointers to the items of a list. */
const void *const *gw_view_rows(struct gw_arena *arena, const void *items, size_t n, size_t size);

#endif
