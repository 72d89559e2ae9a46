/* A CSV sheet to a list of records. */
#include "galeward/sheet.h"

#include "base/fields.h"
#include "base/spelling.h"

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

/* "Width (in)", "width_mm", "Width, ft": where the unit of the field begins, and its length; NULL: there is none. */
static const char *unit_of_header(const struct gw_field *field, const char *header, size_t *length)
{
    size_t end = strlen(header), from;
    if (field->type != GW_T_NUMBER || end < 2) return NULL;
    const char closing = header[end - 1];
    const bool bracketed = closing == ')' || closing == ']';
    end -= bracketed;
    for (from = end; from && !strchr(bracketed ? "([" : ",_ ", header[from - 1]);) from--;
    if (!from) return NULL;
    *length = end - from;
    return gw_unit_written(gw_units_standard(), field->dim, header + from, *length) ? header + from : NULL;
}

/* The header is the one wanted, but for capitals, spaces, hyphens, '_' and a unit at its end. */
static bool is_header(const struct gw_field *field, const char *wanted, const char *header)
{
    char bare[64];
    size_t length;
    if (gw_words_alike(wanted, header)) return true;
    const char *unit = unit_of_header(field, header, &length);
    if (!unit || (size_t)(unit - header) >= sizeof bare) return false;
    size_t n = (size_t)(unit - header);
    while (n && strchr("([, _", header[n - 1])) n--;
    memcpy(bare, header, n);
    bare[n] = '\0';
    return gw_words_alike(wanted, bare);
}

/* Another word that people head the column with. */
static bool is_also_header(const struct gw_field *field, const char *header)
{
    const struct gw_also *also = field->choices ? NULL : field->also;
    for (; also && also->word; also++)
        if (gw_words_alike(also->word, header)) return true;
    return false;
}

static const char *field_of_header(void *context, const char *header)
{
    const struct gw_sheet_layout *sheet = context;
    for (size_t i = 0; i < sheet->record->n; i++) {
        const struct gw_field *field = &sheet->record->fields[i];
        if (!field->key || !*header) continue;
        const char *wanted = header_of(sheet, field->key);
        if (is_header(field, wanted, header)) return field->key;
        if (wanted == field->key && is_also_header(field, header)) return field->key;
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
            found = found || (h->key && strcmp(h->key, c->key) == 0) || strcmp(h->text, c->header) == 0;
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

static const struct gw_node *column_of(const struct gw_node *header, const char *key)
{
    for (; header; header = header->next)
        if (header->key && strcmp(header->key, key) == 0) return header;
    return NULL;
}

/* A field that no column gives and that the header may have meant: a letter or two off. */
static const char *near_miss(const struct gw_sheet_layout *sheet, const struct gw_node *header, const char *text)
{
    enum { LONG = 5 };
    for (size_t i = 0; i < sheet->record->n; i++) {
        const char *key = sheet->record->fields[i].key;
        if (!key || column_of(header, key)) continue;
        struct gw_nearest nearest;
        gw_nearest_start(&nearest, text);
        nearest.least = strlen(text) < LONG ? 2 : 3;
        gw_nearest_offer(&nearest, key);
        if (nearest.best) return key;
    }
    return NULL;
}

/* As a spreadsheet heads it: A to Z, then AA. */
static const char *column_letters(struct gw_arena *arena, size_t column)
{
    enum { LETTERS = 26 };
    const char *last = gw_format(arena, "%c", (char)('A' + (column - 1) % LETTERS));
    if (column <= LETTERS) return last;
    return gw_format(arena, "%s%s", column_letters(arena, (column - 1) / LETTERS), last);
}

static void add_item(struct gw_text *list, const char *item)
{
    gw_text_addf(list, "%s%s", list->length ? ", " : "", item);
}

/* Columns with something in them that no field takes. */
static void note_unread(const struct gw_sheet_layout *sheet, const struct gw_node *header, struct gw_load *load)
{
    struct gw_text others, unnamed;
    size_t column = 1;
    gw_text_init(&others, load->arena);
    gw_text_init(&unnamed, load->arena);
    for (const struct gw_node *h = header; h; h = h->next, column++) {
        if (h->key && is_also_header(gw_record_field(sheet->record, h->key), h->text))
            gw_diag_node(load->diags, GW_NOTE, "read_as", h->key, h, "'%s' is read as %s", h->text, h->key);
        if (h->key || !h->count) continue;
        const char *meant = h->length ? near_miss(sheet, header, h->text) : NULL;
        if (meant)
            gw_diag_node(load->diags, GW_WARNING, "unread", meant, h, "column '%s' is not read; did you mean '%s'?",
                         h->text, meant);
        else if (h->length) add_item(&others, gw_format(load->arena, "'%s'", h->text));
        else add_item(&unnamed, gw_format(load->arena, "%zu (%s)", column, column_letters(load->arena, column)));
    }
    if (others.length)
        gw_diag_node(load->diags, GW_NOTE, "unread", NULL, header, "columns that are not read: %s", others.at);
    if (unnamed.length)
        gw_diag_node(load->diags, GW_NOTE, "unread", NULL, header, "columns without a header, not read: %s",
                     unnamed.at);
}

enum { FIELDS = 64 };

/* What is known of a sheet while its rows are loaded. */
struct reading {
    const struct gw_sheet_layout *sheet;
    const struct gw_node *header;
    struct gw_load *load;
    const char *units[FIELDS];                  /* of bare numbers, that the header of the field's column names */
    bool took[FIELDS];                          /* that a bare number took it */
    const struct gw_node *blank[FIELDS], *date; /* first row without, first cell with one */
    size_t n_blank[FIELDS], n_dates;
    bool any_unit;
};

static void start_reading(struct reading *r)
{
    for (size_t i = 0; i < r->sheet->record->n && i < FIELDS; i++) {
        const struct gw_field *field = &r->sheet->record->fields[i];
        const struct gw_node *column = field->key ? column_of(r->header, field->key) : NULL;
        size_t length;
        const char *unit = column ? unit_of_header(field, column->text, &length) : NULL;
        if (unit) r->units[i] = gw_strndup(r->load->arena, unit, length);
        r->any_unit = r->any_unit || unit;
    }
}

/* "60" below "Width (in)" is 60 in, whatever the file's bare numbers are. */
static void take_unit(struct reading *r, const struct gw_field *field, struct gw_node *cell)
{
    const size_t i = (size_t)(field - r->sheet->record->fields);
    if (!r->units[i] || strspn(cell->text, "0123456789./ -+") != cell->length) return;
    r->took[i] = true;
    cell->text = gw_format(r->load->arena, "%s %s", cell->text, r->units[i]);
    cell->length = strlen(cell->text);
}

/* A default that a cell left empty takes, in a column that is there to say it. */
static void note_blanks(struct reading *r, const struct gw_node *row)
{
    for (size_t i = 0; i < r->sheet->record->n && i < FIELDS; i++) {
        const struct gw_field *field = &r->sheet->record->fields[i];
        if (!field->fallback || gw_node_get(row, field->key) || !column_of(r->header, field->key)) continue;
        if (!r->n_blank[i]++) r->blank[i] = row;
    }
}

/* A cell's key is its field's own, as field_of_header gave it. */
static const struct gw_field *field_of_cell(const struct gw_record *record, const struct gw_node *cell)
{
    for (size_t i = 0; i < record->n; i++)
        if (record->fields[i].key == cell->key) return &record->fields[i];
    return NULL;
}

static void look_at_row(struct reading *r, struct gw_node *row)
{
    for (struct gw_node *cell = row->first; cell; cell = cell->next) {
        const struct gw_field *field = field_of_cell(r->sheet->record, cell);
        if (!field) continue;
        if (r->any_unit && field->type == GW_T_NUMBER) take_unit(r, field, cell);
        const bool text = field->type == GW_T_TEXT && !(field->flags & GW_DATE);
        if (text && gw_is_date(cell->text) && !r->n_dates++) r->date = cell;
    }
    note_blanks(r, row);
}

static void tell_units(struct reading *r)
{
    struct gw_text list;
    gw_text_init(&list, r->load->arena);
    for (size_t i = 0; i < r->sheet->record->n && i < FIELDS; i++)
        if (r->took[i])
            add_item(&list,
                     gw_format(r->load->arena, "'%s'", column_of(r->header, r->sheet->record->fields[i].key)->text));
    if (list.length)
        gw_diag_node(r->load->diags, GW_NOTE, "header", NULL, r->header,
                     "bare numbers are in the unit of their header: %s", list.at);
}

static void tell(struct reading *r)
{
    tell_units(r);
    for (size_t i = 0; i < r->sheet->record->n && i < FIELDS; i++) {
        const struct gw_field *field = &r->sheet->record->fields[i];
        if (r->n_blank[i])
            gw_diag_node(r->load->diags, GW_WARNING, "default", field->key, r->blank[i],
                         "'%s' is empty in %zu row%s, this the first: %s is taken",
                         column_of(r->header, field->key)->text, r->n_blank[i], r->n_blank[i] == 1 ? "" : "s",
                         field->fallback);
    }
    if (r->n_dates)
        gw_diag_node(
            r->load->diags, GW_WARNING, "date", r->date->key, r->date,
            "'%s' may be a date that a spreadsheet made of a text such as 1-4%s: make the column text there and "
            "enter it again",
            r->date->text, r->n_dates > 1 ? gw_format(r->load->arena, " (%zu cells)", r->n_dates) : "");
}

/* "Subtotal ground floor": one of the words, alone or before others. */
static bool begins_with_word(const char *const *words, size_t n, const char *text)
{
    for (size_t i = 0; i < n; i++) {
        size_t length = strlen(words[i]), k = 0;
        while (k < length && (text[k] | 0x20) == (words[i][k] | 0x20)) k++;
        if (k == length && !((text[k] | 0x20) >= 'a' && (text[k] | 0x20) <= 'z')) return true;
    }
    return false;
}

/* "Total,,,24": sums below the rows, which give none of the numbers that every row needs. */
static bool is_totals(const struct gw_record *record, const struct gw_node *row)
{
    static const char *const words[] = {"total",       "totals", "subtotal", "sub total", "sub-total",
                                        "grand total", "sum",    "note",     "notes"};
    const struct gw_node *first = row->first;
    if (!first || !strchr("tTsSgGnN", first->text[0])) return false;
    bool is = begins_with_word(words, COUNT(words), first->text);
    for (size_t i = 0; is && i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        if (field->type == GW_T_NUMBER && (field->flags & GW_REQUIRED) && gw_node_get(row, field->key)) return false;
    }
    return is;
}

/* What the rows above it count, down from the last row of totals; false: one of them is no number. */
static bool count_above(const struct gw_record *record, const struct gw_node *rows, const struct gw_node *totals,
                        bool all, double *sum)
{
    *sum = 0;
    for (const struct gw_node *row = rows->first; row && row != totals; row = row->next) {
        const struct gw_node *cell = gw_node_get(row, "count");
        double number = 1;
        if (is_totals(record, row)) {
            if (!all) *sum = 0;
            continue;
        }
        if (cell && gw_read_number(cell->text, cell->length, &number) != cell->length) return false;
        *sum += number;
    }
    return true;
}

static void tell_totals(struct reading *r, const struct gw_node *rows, const struct gw_node *row)
{
    const struct gw_node *cell = gw_node_get(row, "count");
    const char first = (char)(row->first->text[0] | 0x20);
    double said, sum, since;
    gw_diag_node(r->load->diags, GW_NOTE, "totals", NULL, row, "a row of %s: not read",
                 first == 'n' ? "notes" : "totals");
    if (!cell || first == 'n' || gw_read_number(cell->text, cell->length, &said) != cell->length) return;
    const struct gw_record *record = r->sheet->record;
    if (!count_above(record, rows, row, true, &sum) || !count_above(record, rows, row, false, &since)) return;
    if (!(sum > 0) || fabs(said - sum) < 0.5 || fabs(said - since) < 0.5) return;
    gw_diag_node(r->load->diags, GW_WARNING, "totals", "count", cell,
                 "this row of totals says %s, the rows above it add up to %ld", cell->text,
                 lround(first == 's' ? since : sum));
}

static void load_rows(struct gw_sheet_rows *out, struct reading *r, struct gw_node *rows)
{
    const struct gw_record *record = r->sheet->record;
    char *items = gw_alloc(r->load->arena, rows->count + 1, record->size);
    out->items = items;
    out->rows = gw_alloc(r->load->arena, rows->count + 1, sizeof *out->rows);
    start_reading(r);
    for (struct gw_node *row = rows->first; row; row = row->next) {
        if (is_totals(record, row)) {
            tell_totals(r, rows, row);
            continue;
        }
        look_at_row(r, row);
        out->rows[out->n].node = row;
        out->rows[out->n].good = gw_record_load(r->load, record, row, "this row", items + out->n * record->size);
        out->n++;
    }
    tell(r);
}

bool gw_sheet_read(struct gw_sheet_rows *out, const struct gw_sheet_layout *sheet, const struct gw_source *source,
                   struct gw_load *load)
{
    struct gw_sheet_layout context = *sheet;
    const size_t before = load->diags->errors;
    *out = (struct gw_sheet_rows){.n = 0};
    if (!gw_source_check(source, load->diags)) return false;
    const struct gw_node *header;
    struct gw_node *rows = gw_csv_draft(load->arena, source, field_of_header, &context, load->diags, &header);
    const size_t read = load->diags->errors;
    if (!header) return false;
    check_named(sheet, header, load);
    if (load->diags->errors == read) check_header(sheet, header, load);
    if (load->diags->errors != read) return false;
    note_unread(sheet, header, load);
    struct reading reading = {.sheet = sheet, .header = header, .load = load};
    load_rows(out, &reading, rows);
    if (!out->n && read == before)
        gw_diag_node(load->diags, GW_ERROR, "empty", NULL, header, "the %s has no %s below its header", sheet->what,
                     sheet->rows);
    return load->diags->errors == before;
}
