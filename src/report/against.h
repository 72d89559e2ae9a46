/* The entries of a list in two results, brought together: what is computed is read through its records, what was
 * written by the keys that these records give it, so that the two need no common form. */
#ifndef REPORT_AGAINST_H
#define REPORT_AGAINST_H

#include "galeward/against.h"

#include "base/json_read.h"

/* A key of a list's entries, and the field that holds it, perhaps of a record that stands flat in theirs. */
struct column {
    const struct gw_field *flat, *field;
    const char *key;
};
struct columns {
    struct column *items;
    size_t n, capacity;
};

/* An entry of either side, the other's pointer NULL. `element`: which of its elements; NULL: its own says it. */
struct row {
    const void *now;
    const struct gw_json_value *was;
    const char *element;
};
struct rows {
    struct row *items;
    size_t n, capacity;
    size_t *partner; /* 1 + its index on the other side; 0: there is none */
};

/* Names in order, to be found. */
struct named {
    const char *name;
    size_t index;
};
struct names {
    struct named *items;
    size_t n;
};

struct comparison {
    struct gw_arena *arena;
    struct gw_against *out;
    const struct gw_takeoff *takeoff;
    const struct gw_json_value *root;
    struct names elements; /* of now, by their ids */
    struct names renamed;  /* ids of then, of the elements of now */
    bool judged, good;
    struct gw_diags *diags;
    const struct gw_source *source;
};

/* against_match.c */
void gw_names_sort(struct names *names);
const struct named *gw_names_find(const struct names *names, const char *name);
struct columns gw_columns_of(struct gw_arena *arena, const struct gw_record *record);
struct rows gw_rows_now(const struct comparison *c, const struct gw_field *list, const void *holder);
struct rows gw_rows_was(const struct comparison *c, const struct gw_json_value *list);
/* As a key: the last part of `file`, which stands elsewhere for whoever works elsewhere. */
#define GW_FILE_NAME "file name"
/* The value of a key on the row's side; of elements then, by their names now. */
struct gw_either gw_row_value(const struct comparison *c, const struct columns *columns, const struct row *row,
                              const char *key);
struct gw_either gw_column_value(const struct comparison *c, const struct column *column, const void *item);
/* Pairs rows that no pass before paired and whose values of these keys (NULL ends them) are the same; alike ones in
 * their order. */
void gw_rows_pair(const struct comparison *c, const struct columns *columns, struct rows *now, struct rows *was,
                  const char *const *keys);
#endif
