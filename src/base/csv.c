/* Comma- or semicolon-separated rows to nodes with places, so that a schedule is loaded like any other record. */
#include "galeward/document.h"

#include <string.h>

struct csv {
    struct gw_arena *arena;
    const struct gw_source *source;
    struct gw_diags *diags;
    size_t at;
    unsigned line, column;
    char separator, line_end;
    bool broken; /* an open quote ate the rest of the file */
};

static bool at_end(const struct csv *c) { return c->at >= c->source->length; }

static char peek(const struct csv *c) { return at_end(c) ? '\0' : c->source->text[c->at]; }

static void step(struct csv *c)
{
    char was = c->source->text[c->at++];
    if (was == c->line_end) {
        c->line++;
        c->column = 1;
    } else {
        c->column += ((unsigned char)peek(c) & 0xC0) != 0x80 || at_end(c);
    }
}

static void read_quoted(struct csv *c, struct gw_text *text)
{
    unsigned line = c->line, column = c->column;
    step(c);
    while (!at_end(c)) {
        if (peek(c) == '"') {
            step(c);
            if (peek(c) != '"') return;
        }
        gw_text_bytes(text, c->source->text + c->at, 1);
        step(c);
    }
    c->broken = true;
    gw_diag_add(c->diags, GW_ERROR, "syntax", NULL, c->source, line, column, "a quote that is never closed");
}

static bool ends_cell(const struct csv *c)
{
    return at_end(c) || peek(c) == c->separator || peek(c) == '\n' || peek(c) == '\r';
}

static void trim(struct gw_text *text)
{
    while (text->length && strchr(" \t", text->at[text->length - 1])) text->at[--text->length] = '\0';
}

/* A quote opens a quoted cell only at the cell's start: 5'-6" in the middle of a cell is an inch mark. */
static struct gw_node *read_cell(struct csv *c)
{
    while (peek(c) == ' ' || (peek(c) == '\t' && c->separator != '\t')) step(c);
    struct gw_node *node = gw_alloc(c->arena, 1, sizeof *node);
    *node = (struct gw_node){.kind = GW_SCALAR, .line = c->line, .column = c->column, .source = c->source};
    struct gw_text text;
    gw_text_init(&text, c->arena);
    node->quoted = peek(c) == '"';
    if (node->quoted) read_quoted(c, &text);
    while (!ends_cell(c)) {
        gw_text_bytes(&text, c->source->text + c->at, 1);
        step(c);
    }
    trim(&text);
    node->text = text.at;
    node->length = text.length;
    return node;
}

/* The cells of one line, as a list; the line end is eaten. */
static struct gw_node *read_row(struct csv *c)
{
    struct gw_node *first = NULL, **end = &first;
    for (;;) {
        *end = read_cell(c);
        end = &(*end)->next;
        if (at_end(c) || peek(c) != c->separator) break;
        step(c);
    }
    if (peek(c) == '\r') step(c);
    if (peek(c) == '\n') step(c);
    return first;
}

static char find_separator(const struct gw_source *source, size_t from)
{
    const char *line = source->text + from;
    size_t length = 0, commas = 0, semicolons = 0;
    while (from + length < source->length && line[length] != '\n') {
        commas += line[length] == ',';
        semicolons += line[length] == ';';
        length++;
    }
    return semicolons > commas ? ';' : ',';
}

static bool is_blank(const struct gw_node *cells)
{
    for (; cells; cells = cells->next)
        if (cells->length) return false;
    return true;
}

static struct gw_node *row_mapping(struct csv *c, const struct gw_node *header, struct gw_node *cells)
{
    struct gw_node *row = gw_alloc(c->arena, 1, sizeof *row), **end = &row->first;
    *row = (struct gw_node){.kind = GW_MAPPING, .line = cells->line, .column = cells->column, .source = c->source};
    while (cells) {
        struct gw_node *next = cells->next;
        if (!header) {
            if (cells->length) gw_diag_node(c->diags, GW_ERROR, "syntax", NULL, cells, "a cell beyond the last header");
        } else if (header->key && cells->length) {
            cells->key = header->key;
            cells->key_line = cells->line;
            cells->key_column = cells->column;
            cells->next = NULL;
            *end = cells;
            end = &cells->next;
            row->count++;
        }
        header = header ? header->next : NULL;
        cells = next;
    }
    return row;
}

static void name_columns(struct csv *c, struct gw_node *header, const char *(*rename)(void *, const char *),
                         void *context)
{
    for (struct gw_node *h = header; h; h = h->next) {
        h->key = rename(context, h->text);
        for (const struct gw_node *other = header; h->key && other != h; other = other->next)
            if (other->key && strcmp(other->key, h->key) == 0)
                gw_diag_node(c->diags, GW_ERROR, "duplicate_key", h->key, h, "two columns give '%s'", h->key);
    }
}

struct gw_node *gw_csv_draft(struct gw_arena *arena, const struct gw_source *source,
                             const char *(*rename)(void *context, const char *header), void *context,
                             struct gw_diags *diags, const struct gw_node **first)
{
    struct csv c = {.arena = arena, .source = source, .diags = diags, .line = 1, .column = 1};
    c.line_end = gw_source_line_end(source);
    c.at = gw_source_mark(source);
    c.separator = find_separator(source, c.at);
    struct gw_node *rows = gw_alloc(arena, 1, sizeof *rows), **end = &rows->first;
    *rows = (struct gw_node){.kind = GW_SEQUENCE, .line = 1, .column = 1, .source = source};
    if (at_end(&c)) gw_diag_add(diags, GW_ERROR, "empty", NULL, source, 1, 1, "the file is empty");
    struct gw_node *header = at_end(&c) ? NULL : read_row(&c);
    *first = header;
    name_columns(&c, header, rename, context);
    while (!at_end(&c)) {
        struct gw_node *cells = read_row(&c);
        if (c.broken || is_blank(cells)) continue;
        *end = row_mapping(&c, header, cells);
        end = &(*end)->next;
        rows->count++;
    }
    return rows;
}

struct gw_node *gw_csv_read(struct gw_arena *arena, const struct gw_source *source,
                            const char *(*rename)(void *context, const char *header), void *context,
                            struct gw_diags *diags)
{
    const struct gw_node *header;
    size_t errors = diags->errors;
    struct gw_node *rows = gw_csv_draft(arena, source, rename, context, diags, &header);
    return diags->errors == errors ? rows : NULL;
}
