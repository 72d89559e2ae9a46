/* A CSV sheet as a list of records: the schedule of openings, or any other sheet whose rows a record describes. */
#ifndef GALEWARD_SHEET_H
#define GALEWARD_SHEET_H

#include "galeward/record.h"

#ifdef __cplusplus
extern "C" {
#endif

/* A column whose header is not its field's key. */
struct gw_sheet_column {
    const char *key, *header;
    const struct gw_node *node; /* where that is said, for faults; NULL: nowhere in a file */
};

/* What a sheet holds. A field without a column of its own takes the column that its key heads; columns that are no
 * field's are left out. */
struct gw_sheet_layout {
    const struct gw_record *record; /* of a row; its required fields must have columns */
    const char *what, *rows;        /* for messages: "schedule" and "openings", which is also the key that names it */
    const struct gw_sheet_column *columns;
    size_t n_columns;
};

struct gw_sheet_row {
    const struct gw_node *node; /* its line */
    bool good;                  /* no fault in it */
};

struct gw_sheet_rows {
    void *items; /* records, n of them, cleared where a cell is empty or wrong */
    struct gw_sheet_row *rows;
    size_t n;
};

/* The columns that a mapping {field: header} names; what is no text is left to its record to find fault with. */
struct gw_sheet_column *gw_sheet_columns(struct gw_arena *arena, const struct gw_node *mapping, size_t *n);

/* Reads the rows below the header with the load's units and preset; memory is the load's arena. Every fault of every
 * row is reported; a sheet without a header, or without a needed column, or with a column named that it does not have,
 * has no rows. True when there was no fault. */
bool gw_sheet_read(struct gw_sheet_rows *out, const struct gw_sheet_layout *sheet, const struct gw_source *source,
                   struct gw_load *load);

#ifdef __cplusplus
}
#endif

#endif
