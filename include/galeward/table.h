/* The numbers that come from outside: rows of tables/, each with its source, compiled in by src/tablegen. */
#ifndef GALEWARD_TABLE_H
#define GALEWARD_TABLE_H

#include "galeward/units.h"

#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

/* How well a number is known, best first: seen in its source or a reproduction of it; computed here; seen in another's
 * reading of the source (a national code's table, an open implementation that cites the clause, a secondary
 * description); recalled; without a source. */
enum gw_basis { GW_BASIS_NONE, GW_PUBLISHED, GW_DERIVED, GW_SECOND_HAND, GW_MEMORY, GW_PRACTICE };
const char *gw_basis_name(enum gw_basis basis);

/* First member of every generated row. */
struct gw_row {
    const char *table, *id;
    enum gw_basis basis;
    unsigned index; /* among the rows of all tables, in their order */
    const char *source;
};

enum gw_column_type { GW_COLUMN_NUMBER, GW_COLUMN_TEXT, GW_COLUMN_SYMBOL, GW_COLUMN_NUMBERS };

/* A column of lists: two members in the row, `const double *NAME; size_t n_NAME;`, laid out as here. */
struct gw_numbers {
    const double *items;
    size_t n;
};

struct gw_column {
    const char *name; /* without the unit */
    enum gw_column_type type;
    enum gw_dim dim;
    const char *unit; /* as written in the table */
    size_t offset;    /* in the row: double, const char *, int, or a struct gw_numbers */
    bool key;         /* a number by which a row is found, or that goes with another: no value to doubt alone */
};

struct gw_table {
    const char *name, *title;
    const struct gw_column *columns;
    size_t n_columns, n_rows, row_size, offset; /* offset of the first row in struct gw_tables */
    unsigned first;                             /* index of the first row */
};

/* All rows, as one struct that a project can copy and correct; its definition is generated ("tables_data.h"). */
struct gw_tables;
const struct gw_tables *gw_tables_standard(void);
size_t gw_tables_size(void);
/* The list of tables, for listing and for corrections. */
const struct gw_table *gw_table_list(size_t *n);
const struct gw_table *gw_table_find(const char *name);
const struct gw_row *gw_table_row(const struct gw_tables *tables, const struct gw_table *table, size_t i);
struct gw_unit_list gw_units_standard(void);

/* The row with that index, below the number of rows; `tables` may be a project's corrected copy. */
const struct gw_row *gw_table_row_at(const struct gw_tables *tables, unsigned index);

/* The set of rows that a result rests on, by index: exact, without order. All zero is empty. The limit is checked
 * against the number of rows when the tables are compiled. */
enum { GW_USED_LIMIT = 1024, GW_USED_WORD = 64 };
struct gw_used {
    uint64_t words[GW_USED_LIMIT / GW_USED_WORD];
};
void gw_used_add(struct gw_used *used, const struct gw_row *row);
void gw_used_remove(struct gw_used *used, const struct gw_row *row);
void gw_used_merge(struct gw_used *used, const struct gw_used *more);
/* Moves `index` to the first used row at or after it; false where none is left. All rows, in the tables' order:
 * for (unsigned i = 0; gw_used_next(used, &i); i++) ... gw_table_row_at(tables, i) */
bool gw_used_next(const struct gw_used *used, unsigned *index);
/* GW_BASIS_NONE of an empty set. A project's correction does not change a row's basis. */
enum gw_basis gw_used_weakest(const struct gw_used *used);

#ifdef __cplusplus
}
#endif

#endif
