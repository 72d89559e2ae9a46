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
    struct gw_text cell; /* room for one cell at a time */
    bool broken;         /* an open quote ate the rest of the file */
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

static const char NO_BREAK_SPACE[] = "\xC2\xA0";

/* Without the spaces at the end, those of web pages and word processors too. */
static size_t trimmed(const char *text, size_t n)
{
    for (;;) {
        const bool wide = n > 1 && memcmp(text + n - 2, NO_BREAK_SPACE, 2) == 0;
        if (!wide && !(n && strchr(" \t", text[n - 1]))) return n;
        n -= wide ? 2 : 1;
    }
}

static void skip_spaces(struct csv *c)
{
    for (;;) {
        const bool wide = c->source->length - c->at > 1 && memcmp(c->source->text + c->at, NO_BREAK_SPACE, 2) == 0;
        if (wide) step(c);
        else if (peek(c) != ' ' && !(peek(c) == '\t' && c->separator != '\t')) return;
        step(c);
    }
}

/* A quote opens a quoted cell only at the cell's start: 5'-6" in the middle of a cell is an inch mark. */
static struct gw_node *read_cell(struct csv *c)
{
    skip_spaces(c);
    struct gw_node *node = gw_alloc(c->arena, 1, sizeof *node);
    *node = (struct gw_node){.kind = GW_SCALAR, .line = c->line, .column = c->column, .source = c->source};
    struct gw_text *quoted = &c->cell;
    if (!quoted->arena) gw_text_init(quoted, c->arena);
    quoted->length = 0;
    node->quoted = peek(c) == '"';
    if (node->quoted) read_quoted(c, quoted);
    const size_t from = c->at;
    while (!ends_cell(c)) step(c);
    const char *text = c->source->text + from;
    size_t length = c->at - from;
    if (node->quoted) {
        gw_text_bytes(quoted, text, length);
        text = quoted->at;
        length = quoted->length;
    }
    node->length = trimmed(text, length);
    node->text = gw_strndup(c->arena, text, node->length);
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

static bool is_blank(const struct gw_node *cells)
{
    for (; cells; cells = cells->next)
        if (cells->length) return false;
    return true;
}

static struct gw_node *row_mapping(struct csv *c, struct gw_node *header, struct gw_node *cells)
{
    struct gw_node *row = gw_alloc(c->arena, 1, sizeof *row), **end = &row->first;
    *row = (struct gw_node){.kind = GW_MAPPING, .line = cells->line, .column = cells->column, .source = c->source};
    while (cells) {
        struct gw_node *next = cells->next;
        if (header) header->count += cells->length > 0;
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

typedef const char *(*renaming)(void *context, const char *header);

/* The rows of a file as far as a header may stand below titles. */
struct search {
    renaming rename;
    void *context;
    struct gw_diags unheard;     /* of rows that are no rows under this separator */
    struct csv found;            /* before the header, with its separator */
    const struct gw_node *cells; /* of the header */
    size_t named;                /* of its cells are columns; 0: no header yet */
    unsigned rival;              /* line of another row that names columns, or 0 */
};

static size_t count_named(const struct search *s, const struct gw_node *cells)
{
    size_t n = 0;
    for (; cells; cells = cells->next) n += s->rename(s->context, cells->text) != NULL;
    return n;
}

static bool same_cells(const struct gw_node *a, const struct gw_node *b)
{
    for (; a && b; a = a->next, b = b->next)
        if (strcmp(a->text, b->text) != 0) return false;
    return !a && !b;
}

static size_t count_cells(const struct gw_node *cells)
{
    size_t n = 0;
    for (; cells; cells = cells->next) n++;
    return n;
}

/* A row as a header: better than the same line in fewer columns, a rival of another line. */
static void weigh(struct search *s, const struct csv *before, const struct gw_node *cells, size_t least)
{
    const size_t named = count_named(s, cells);
    if (named < least) return;
    const bool same_line = s->cells && s->found.line == before->line;
    const bool better = named > s->named || (named == s->named && count_cells(cells) > count_cells(s->cells));
    if (!s->cells || (same_line && better)) {
        s->found = *before;
        s->cells = cells;
        s->named = named;
    } else if (!same_line && !s->rival && !same_cells(cells, s->cells)) {
        s->rival = before->line;
    }
}

static const char SEPARATORS[] = {',', ';', '\t'};

/* Rows `from` to `to`, under each separator. */
static void search_rows(struct search *s, const struct csv *start, size_t from, size_t to, size_t least)
{
    for (size_t k = 0; k < sizeof SEPARATORS; k++) {
        struct csv c = *start;
        c.separator = SEPARATORS[k];
        c.diags = &s->unheard;
        for (size_t row = 0; row < to && !at_end(&c) && !c.broken; row++) {
            const struct csv before = c;
            const struct gw_node *cells = read_row(&c);
            if (row >= from && !c.broken) weigh(s, &before, cells, least);
        }
    }
}

/* The first row, where it names two columns; else the only one below that does; else the first, whatever it names. */
static void find_header(struct csv *c, renaming rename, void *context)
{
    enum { TITLES = 40, ENOUGH = 2 };
    struct search s = {.rename = rename, .context = context};
    const struct csv start = *c;
    gw_diags_init(&s.unheard, c->arena);
    search_rows(&s, &start, 0, 1, ENOUGH);
    const bool at_once = s.cells;
    if (!at_once) search_rows(&s, &start, 1, TITLES, ENOUGH);
    if (!s.cells) search_rows(&s, &start, 0, 1, 0);
    struct gw_diags *diags = c->diags;
    *c = s.cells ? s.found : start;
    c->diags = diags;
    if (s.rival && !at_once)
        gw_diag_add(diags, GW_ERROR, "header", NULL, c->source, s.rival, 1,
                    "this line and line %u both name columns: one of them heads the rows; take the other out",
                    s.found.line);
    else if (s.named >= ENOUGH && !at_once)
        gw_diag_add(diags, GW_NOTE, "header", NULL, c->source, c->line, 1,
                    "the columns are headed in line %u; what stands above is not read", c->line);
}

/* A header that comes again, as at the head of a page. */
static bool is_repeated(struct csv *c, const struct gw_node *header, const struct gw_node *cells)
{
    if (!same_cells(cells, header)) return false;
    gw_diag_node(c->diags, GW_NOTE, "header", NULL, cells, "the header again: not read as a row");
    return true;
}

struct gw_node *gw_csv_draft(struct gw_arena *arena, const struct gw_source *source, renaming rename, void *context,
                             struct gw_diags *diags, const struct gw_node **first)
{
    struct csv c = {.arena = arena, .source = source, .diags = diags, .line = 1, .column = 1, .separator = ','};
    c.line_end = gw_source_line_end(source);
    c.at = gw_source_mark(source);
    struct gw_node *rows = gw_alloc(arena, 1, sizeof *rows), **end = &rows->first;
    *rows = (struct gw_node){.kind = GW_SEQUENCE, .line = 1, .column = 1, .source = source};
    if (at_end(&c)) gw_diag_add(diags, GW_ERROR, "empty", NULL, source, 1, 1, "the file is empty");
    else find_header(&c, rename, context);
    struct gw_node *header = at_end(&c) ? NULL : read_row(&c);
    *first = header;
    name_columns(&c, header, rename, context);
    while (!at_end(&c)) {
        struct gw_node *cells = read_row(&c);
        if (c.broken || is_blank(cells) || is_repeated(&c, header, cells)) continue;
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
