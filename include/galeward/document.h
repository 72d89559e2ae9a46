/* YAML, JSON and CSV text as trees of nodes that know their place, and what is said about them. */
#ifndef GALEWARD_DOCUMENT_H
#define GALEWARD_DOCUMENT_H

#include "galeward/text.h"

#ifdef __cplusplus
extern "C" {
#endif

struct gw_source {
    const char *name; /* as the user wrote it */
    const char *text;
    size_t length;
};

enum gw_node_kind { GW_SCALAR, GW_SEQUENCE, GW_MAPPING };

/* A sequence's children are its items. A mapping's children are its values, each with its key beside it. */
struct gw_node {
    enum gw_node_kind kind;
    bool quoted;
    unsigned line, column; /* from 1; columns count code points */
    const struct gw_source *source;
    const char *text; /* scalar: NUL-terminated, no NUL inside */
    size_t length;
    struct gw_node *first, *next;
    const char *key; /* in a mapping: this value's key, with its place */
    unsigned key_line, key_column;
    size_t count;
};

/* A note says how a value was read where nobody would read it otherwise; it is printed and not repeated in results. */
enum gw_severity { GW_ERROR, GW_WARNING, GW_NOTE };

/* One finding. `code` is a short constant word ("unknown_key"); `key` the field it concerns, or "". */
struct gw_diag {
    enum gw_severity severity;
    const char *code, *key, *message;
    const struct gw_source *source;
    unsigned line, column;
};

struct gw_diags {
    struct gw_arena *arena;
    struct gw_diag *items;
    size_t n, capacity, errors, dropped; /* beyond GW_DIAG_LIMIT only counted */
    bool refused;                        /* a file that the system would not read: no fault of the input */
};

enum { GW_DIAG_LIMIT = 200, GW_DEPTH_LIMIT = 64, GW_FILE_LIMIT = 16 * 1024 * 1024 };

/* A finding that says the same of the same place as an earlier one (through an alias) is left out. */
void gw_diags_init(struct gw_diags *diags, struct gw_arena *arena);
void gw_diag_add(struct gw_diags *diags, enum gw_severity severity, const char *code, const char *key,
                 const struct gw_source *source, unsigned line, unsigned column, const char *format, ...)
    __attribute__((format(printf, 8, 9)));
/* At the node's value, or at its key. */
#define gw_diag_node(diags, severity, code, key, node, ...)                                                            \
    gw_diag_add(diags, severity, code, key, (node)->source, (node)->line, (node)->column, __VA_ARGS__)
#define gw_diag_key(diags, severity, code, node, ...)                                                                  \
    gw_diag_add(diags, severity, code, (node)->key, (node)->source, (node)->key_line, (node)->key_column, __VA_ARGS__)
/* By file, as first met, and place. */
void gw_diags_sort(struct gw_diags *diags);
/* "file:line:column: error: ..." with the source line and a caret. */
void gw_diag_print(struct gw_text *out, const struct gw_diag *diag);

/* Whole file, or standard input for "-", into the arena, read by its host; NULL after a diagnostic. */
const struct gw_source *gw_source_read(struct gw_arena *arena, const char *path, struct gw_diags *diags);
/* The same up to another size than GW_FILE_LIMIT; `limit` in MiB. */
const struct gw_source *gw_source_read_most(struct gw_arena *arena, const char *path, unsigned limit,
                                            struct gw_diags *diags);
const struct gw_source *gw_source_from(struct gw_arena *arena, const char *name, const char *text, size_t length);

/* The root, or NULL after a diagnostic. Refuses what design says a file may not hold: duplicate keys, a second
 * document, aliases that nest or cycle, nesting beyond GW_DEPTH_LIMIT, bytes that are not UTF-8, an empty file. */
struct gw_node *gw_yaml_read(struct gw_arena *arena, const struct gw_source *source, struct gw_diags *diags);
/* The same, but duplicate keys do not cost the tree, so that its other faults can be found in the same run. */
struct gw_node *gw_yaml_draft(struct gw_arena *arena, const struct gw_source *source, struct gw_diags *diags);
/* The same of JSON (RFC 8259), whose root is an object or a list. A number is kept to the letter. */
struct gw_node *gw_json_read(struct gw_arena *arena, const struct gw_source *source, struct gw_diags *diags);
/* A sequence of mappings, one a row, keyed by the header row. `rename(context, header)` gives the key, or NULL to
 * leave the column out. */
struct gw_node *gw_csv_read(struct gw_arena *arena, const struct gw_source *source,
                            const char *(*rename)(void *context, const char *header), void *context,
                            struct gw_diags *diags);
/* The same, but faults do not cost the rows. `*header` is the first of the header's cells, NULL for an empty file;
 * their `count` is how many cells below each are not empty. Commas, semicolons or tabs part the cells, whichever name
 * the most columns in the header. That is the first line, or below titles the only one that names two columns or more.
 */
struct gw_node *gw_csv_draft(struct gw_arena *arena, const struct gw_source *source,
                             const char *(*rename)(void *context, const char *header), void *context,
                             struct gw_diags *diags, const struct gw_node **header);
/* Bytes of a byte order mark at the start, which is no part of the text: 3 or 0. */
size_t gw_source_mark(const struct gw_source *source);
/* What ends the lines of the text: '\n', or '\r' where it has none. */
char gw_source_line_end(const struct gw_source *source);
/* Is the text UTF-8 without zero bytes? Says where it is not. */
bool gw_source_check(const struct gw_source *source, struct gw_diags *diags);

const struct gw_node *gw_node_get(const struct gw_node *mapping, const char *key);
/* The child of a mapping, made where there is none: an empty mapping. */
struct gw_node *gw_node_child(struct gw_arena *arena, struct gw_node *mapping, const char *key);
/* Puts a value where the node stands, read as YAML when it begins with '{' or '['; false where that is no YAML. */
bool gw_node_put(struct gw_arena *arena, struct gw_node *node, const char *value);
/* Sets a scalar by a dotted path, making mappings on the way; through a sequence it sets every item. The value is
 * read as YAML when it begins with '{' or '['. False where the path runs into a scalar. */
bool gw_node_set(struct gw_arena *arena, struct gw_node *root, const char *path, const char *value);

#ifdef __cplusplus
}
#endif

#endif
