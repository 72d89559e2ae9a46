/* Entries of two results: their values, and which of them are the same entry. */
#include "report/against.h"

#include "base/fields.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Names -------------------------------------------------------------------------------------------------------------
 */

static int by_name(const void *a, const void *b)
{
    const struct named *x = a, *y = b;
    const int order = strcmp(x->name, y->name);
    return order ? order : (x->index > y->index) - (x->index < y->index);
}

void gw_names_sort(struct names *names)
{
    if (names->n) qsort(names->items, names->n, sizeof *names->items, by_name);
}

const struct named *gw_names_find(const struct names *names, const char *name)
{
    size_t low = 0, high = names->n;
    while (low < high) {
        const size_t middle = low + (high - low) / 2;
        const int order = strcmp(names->items[middle].name, name);
        if (!order) return &names->items[middle];
        if (order < 0) low = middle + 1;
        else high = middle;
    }
    return NULL;
}

/* Columns and values ------------------------------------------------------------------------------------------------
 */

static void add_columns(struct columns *out, struct gw_arena *arena, const struct gw_record *record,
                        const struct gw_field *flat)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        if (!gw_field_is_written(field)) continue;
        if (field->flags & GW_FLAT) {
            add_columns(out, arena, field->record, field);
            continue;
        }
        struct gw_text key;
        gw_text_init(&key, arena);
        gw_field_json_key(&key, field);
        out->items = gw_grow(arena, out->items, out->n, &out->capacity, sizeof *out->items);
        out->items[out->n++] = (struct column){flat, field, key.at};
    }
}

struct columns gw_columns_of(struct gw_arena *arena, const struct gw_record *record)
{
    struct columns columns = {0};
    add_columns(&columns, arena, record, NULL);
    return columns;
}

static const struct column *column_named(const struct columns *columns, const char *key)
{
    for (size_t i = 0; i < columns->n; i++)
        if (strcmp(columns->items[i].key, key) == 0) return &columns->items[i];
    return NULL;
}

struct gw_either gw_column_value(const struct comparison *c, const struct column *column, const void *item)
{
    const struct gw_field *field = column->field;
    const void *base = column->flat ? gw_field_struct(column->flat, gw_field_at(column->flat, item)) : item;
    const void *at = gw_field_at(field, base);
    struct gw_either value = {.number = GW_ABSENT};
    if (gw_field_is_absent(field, at)) return value;
    if (field->type == GW_T_NUMBER) value.number = *(const double *)at;
    else if (field->type == GW_T_INTEGER) value.number = *(const int *)at;
    else if (field->type == GW_T_COUNT) value.number = (double)*(const long *)at;
    else if (field->type == GW_T_BOOL) value.words = *(const enum gw_bool *)at == GW_YES ? "true" : "false";
    else if (field->type == GW_T_YES_NO) value.words = *(const bool *)at ? "true" : "false";
    else value.words = gw_field_words(c->arena, field, at, GW_SI);
    if (!isfinite(value.number)) value.number = GW_ABSENT; /* null, as it is written */
    return value;
}

/* Keys that hold the name of an element. */
static bool names_element(const char *key)
{
    static const char *const keys[] = {"element", "link_element", "governing_element", "shared_with"};
    for (size_t i = 0; i < COUNT(keys); i++)
        if (strcmp(keys[i], key) == 0) return true;
    return false;
}

static const char *name_now(const struct comparison *c, const char *then)
{
    const struct named *found = gw_names_find(&c->renamed, then);
    return found ? c->takeoff->elements.items[found->index].id : then;
}

struct gw_either gw_row_value(const struct comparison *c, const struct columns *columns, const struct row *row,
                              const char *key)
{
    const bool is_element = names_element(key);
    struct gw_either value = {.number = GW_ABSENT};
    if (strcmp(key, GW_FILE_NAME) == 0) {
        const char *file = gw_row_value(c, columns, row, "file").words, *last = file ? strrchr(file, '/') : NULL;
        value.words = last ? last + 1 : file;
    } else if (row->was) {
        const struct gw_json_value *json = gw_json_get(row->was, key);
        value = (struct gw_either){gw_json_double(json), gw_json_words(json)};
    } else {
        const struct column *column = column_named(columns, key);
        if (column) value = gw_column_value(c, column, row->now);
    }
    if (row->element && strcmp(key, "element") == 0) value.words = row->element;
    if (is_element && row->was && value.words) value.words = name_now(c, value.words);
    return value;
}

/* Rows --------------------------------------------------------------------------------------------------------------
 */

static void add_row(const struct comparison *c, struct rows *rows, struct row row)
{
    rows->items = gw_grow(c->arena, rows->items, rows->n, &rows->capacity, sizeof *rows->items);
    rows->items[rows->n++] = row;
}

static void add_now(const struct comparison *c, struct rows *rows, const void *item, const struct gw_field *elements)
{
    const struct gw_many *many = elements ? gw_field_at(elements, item) : NULL;
    for (size_t i = 0; many && i < many->n; i++)
        add_row(c, rows, (struct row){.now = item, .element = ((const char *const *)many->items)[i]});
    if (!many || !many->n) add_row(c, rows, (struct row){.now = item});
}

struct rows gw_rows_now(const struct comparison *c, const struct gw_field *list, const void *holder)
{
    const struct gw_many *many = gw_field_at(list, holder);
    const struct gw_field *elements = gw_record_field(list->record, "elements");
    struct rows rows = {0};
    for (size_t i = 0; many && i < many->n; i++) add_now(c, &rows, gw_field_item(list, many, i), elements);
    rows.partner = gw_alloc(c->arena, rows.n + 1, sizeof *rows.partner);
    return rows;
}

/* Which elements share an entry may be another matter in the units of another reader: each has a row. */
struct rows gw_rows_was(const struct comparison *c, const struct gw_json_value *list)
{
    struct rows rows = {0};
    for (size_t i = 0; i < gw_json_count(list); i++) {
        const struct gw_json_value *entry = gw_json_item(list, i), *elements = gw_json_get(entry, "elements");
        for (size_t k = 0; k < gw_json_count(elements); k++)
            add_row(c, &rows, (struct row){.was = entry, .element = gw_json_words(gw_json_item(elements, k))});
        if (!gw_json_count(elements)) add_row(c, &rows, (struct row){.was = entry});
    }
    rows.partner = gw_alloc(c->arena, rows.n + 1, sizeof *rows.partner);
    return rows;
}

/* Pairs -------------------------------------------------------------------------------------------------------------
 */

/* Numbers with the digits that a result has. */
static const char *identity(const struct comparison *c, const struct columns *columns, const struct row *row,
                            const char *const *keys)
{
    enum { DIGITS = 12 };
    struct gw_text text;
    gw_text_init(&text, c->arena);
    for (; *keys; keys++) {
        const struct gw_either value = gw_row_value(c, columns, row, *keys);
        if (value.words) gw_text_add(&text, value.words);
        if (gw_given(value.number)) gw_text_number(&text, value.number, DIGITS);
        gw_text_add(&text, "\n");
    }
    return text.at;
}

static struct names unpaired(const struct comparison *c, const struct columns *columns, const struct rows *rows,
                             const char *const *keys)
{
    struct names names = {.items = gw_alloc(c->arena, rows->n + 1, sizeof *names.items)};
    for (size_t i = 0; i < rows->n; i++)
        if (!rows->partner[i]) names.items[names.n++] = (struct named){identity(c, columns, &rows->items[i], keys), i};
    gw_names_sort(&names);
    return names;
}

void gw_rows_pair(const struct comparison *c, const struct columns *columns, struct rows *now, struct rows *was,
                  const char *const *keys)
{
    const struct names a = unpaired(c, columns, now, keys), b = unpaired(c, columns, was, keys);
    size_t i = 0, k = 0;
    while (i < a.n && k < b.n) {
        const int order = strcmp(a.items[i].name, b.items[k].name);
        if (!order) {
            now->partner[a.items[i].index] = b.items[k].index + 1;
            was->partner[b.items[k].index] = a.items[i].index + 1;
        }
        i += order <= 0;
        k += order >= 0;
    }
}
