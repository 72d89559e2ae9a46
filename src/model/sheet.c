/* A CSV sheet to a list of records. */
#include "galeward/sheet.h"

#include <string.h>

struct gw_sheet_column *gw_sheet_columns(struct gw_arena *arena, const struct gw_node *mapping, size_t *n)
{
    *n = 0;
    if (!mapping) return NULL;
    struct gw_sheet_column *columns = gw_alloc(arena, mapping->count + 1, sizeof *columns);
    for (const struct gw_node *c = mapping->first; c; c = c->next)
        if (c->kind == GW_SCALAR && c->length) columns[(*n)++] = (struct gw_sheet_column){c->key, c->text, c};
    return columns;
}

/* Of two headers for one field the later counts, as for any key given twice. */
static const char *header_of(const struct gw_sheet_layout *sheet, const char *key)
{
    const char *header = key;
    for (size_t i = 0; i < sheet->n_columns; i++)
        if (sheet->columns[i].key && strcmp(sheet->columns[i].key, key) == 0) header = sheet->columns[i].header;
    return header;
}

static const char *field_of_header(void *context, const char *header)
{
    const struct gw_sheet_layout *sheet = context;
    for (size_t i = 0; i < sheet->record->n; i++) {
        const char *key = sheet->record->fields[i].key;
        if (key && strcmp(header_of(sheet, key), header) == 0) return key;
    }
    return NULL;
}

/* Headers that are named must be there. */
static void check_named(const struct gw_sheet_layout *sheet, const struct gw_node *header, struct gw_load *load)
{
    for (size_t i = 0; i < sheet->n_columns; i++) {
        const struct gw_sheet_column *c = &sheet->columns[i];
        const struct gw_node *at = c->node ? c->node : header;
        struct gw_nearest nearest;
        gw_nearest_start(&nearest, c->header);
        bool found = false;
        for (const struct gw_node *h = header; h; h = h->next) {
            found = found || strcmp(h->text, c->header) == 0;
            gw_nearest_offer(&nearest, h->text);
        }
        if (!found)
            gw_diag_node(load->diags, GW_ERROR, "bad_value", c->key, at, "the %s has no column headed '%s'%s",
                         sheet->what, c->header, gw_nearest_question(load->arena, &nearest));
    }
}

/* A column that every row needs is missed once, not in every row. */
static void want_column(const struct gw_sheet_layout *sheet, const struct gw_node *header, const char *key,
                        struct gw_load *load)
{
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, key);
    for (const struct gw_node *h = header; h; h = h->next) {
        if (h->key && strcmp(h->key, key) == 0) return;
        if (!h->key) gw_nearest_offer(&nearest, h->text);
    }
    const char *near = gw_nearest_word(&nearest);
    gw_diag_node(load->diags, GW_ERROR, "missing", key, header,
                 "no column is headed '%s'; name the one in the project: %s: {file: ..., columns: {%s: %s}}", key,
                 sheet->rows, key, near ? near : "HEADER");
}

static void no_column_named(const struct gw_sheet_layout *sheet, const struct gw_node *header, struct gw_load *load)
{
    const char *first = NULL;
    struct gw_text needed;
    gw_text_init(&needed, load->arena);
    for (size_t i = 0; i < sheet->record->n; i++) {
        const struct gw_field *field = &sheet->record->fields[i];
        if (!(field->flags & GW_REQUIRED)) continue;
        gw_text_addf(&needed, "%s%s", first ? ", " : "", field->key);
        first = first ? first : field->key;
    }
    gw_diag_node(load->diags, GW_ERROR, "missing", first, header,
                 "the first line names no columns: it must head them %s and so on, or as '%s: columns' maps them",
                 needed.at, sheet->rows);
}

static void check_header(const struct gw_sheet_layout *sheet, const struct gw_node *header, struct gw_load *load)
{
    bool any = false;
    for (const struct gw_node *h = header; h; h = h->next) any = any || h->key;
    if (!any) {
        no_column_named(sheet, header, load);
        return;
    }
    for (size_t i = 0; i < sheet->record->n; i++)
        if (sheet->record->fields[i].flags & GW_REQUIRED)
            want_column(sheet, header, sheet->record->fields[i].key, load);
}

static void load_rows(struct gw_sheet_rows *out, const struct gw_record *record, const struct gw_node *rows,
                      struct gw_load *load)
{
    char *items = gw_alloc(load->arena, rows->count + 1, record->size);
    out->items = items;
    out->rows = gw_alloc(load->arena, rows->count + 1, sizeof *out->rows);
    for (const struct gw_node *row = rows->first; row; row = row->next, out->n++) {
        out->rows[out->n].node = row;
        out->rows[out->n].good = gw_record_load(load, record, row, "this row", items + out->n * record->size);
    }
}

bool gw_sheet_read(struct gw_sheet_rows *out, const struct gw_sheet_layout *sheet, const struct gw_source *source,
                   struct gw_load *load)
{
    struct gw_sheet_layout context = *sheet;
    const size_t before = load->diags->errors;
    *out = (struct gw_sheet_rows){.n = 0};
    if (!gw_source_check(source, load->diags)) return false;
    const struct gw_node *header,
        *rows = gw_csv_draft(load->arena, source, field_of_header, &context, load->diags, &header);
    const size_t read = load->diags->errors;
    if (!header) return false;
    check_named(sheet, header, load);
    if (load->diags->errors == read) check_header(sheet, header, load);
    if (load->diags->errors != read) return false;
    if (!rows->count && read == before)
        gw_diag_node(load->diags, GW_ERROR, "empty", NULL, header, "the %s has no %s below its header", sheet->what,
                     sheet->rows);
    load_rows(out, sheet->record, rows, load);
    return load->diags->errors == before;
}
