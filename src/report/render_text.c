/* A report for a terminal: aligned columns; the last one is wrapped, or where little room is left stands below its row,
 * so that lines do not run over the edge. */
#include "galeward/report.h"

#include <string.h>

enum { PAGE = 118, GAP = 2, LEAST_LAST = 44, BELOW = 6 };

struct page {
    struct gw_text *out;
    bool color;
};

static void paint(struct page *page, const char *code)
{
    if (page->color && code) gw_text_addf(page->out, "\033[%sm", code);
}

static const char *tone_code(enum gw_tone tone)
{
    static const char *const codes[] = {
        [GW_PLAIN] = NULL, [GW_GOOD] = "32", [GW_BAD] = "31", [GW_DOUBTFUL] = "33", [GW_IN_HAND] = "33"};
    return codes[tone];
}

/* Bytes of the piece of `text` that fits `room` columns, cut at a space where there is one. */
static size_t piece(const char *text, size_t room)
{
    size_t columns = 0, i = 0, space = 0;
    for (; text[i]; i++) {
        bool starts = ((unsigned char)text[i] & 0xC0) != 0x80;
        if (starts && columns == room) break;
        columns += starts;
        if (text[i] == ' ') space = i;
    }
    if (!text[i] || text[i] == ' ' || !space) return i;
    return space;
}

/* Words at `indent`; the first line's indent is already there. */
static void wrap(struct gw_text *out, const char *text, size_t indent)
{
    size_t room = PAGE - indent;
    for (;;) {
        size_t length = piece(text, room);
        gw_text_bytes(out, text, length);
        text += length;
        while (*text == ' ') text++;
        if (!*text) return;
        while (out->at[out->length - 1] == ' ') out->at[--out->length] = '\0';
        gw_text_add(out, "\n");
        gw_text_repeat(out, ' ', indent);
    }
}

static size_t *column_widths(const struct gw_block *table, struct gw_arena *arena)
{
    size_t *widths = gw_alloc(arena, table->n_columns + 1, sizeof *widths);
    for (size_t c = 0; c < table->n_columns; c++) widths[c] = gw_text_width(table->columns[c].title);
    for (size_t i = 0; table->n_columns && i < table->n_cells; i++) {
        size_t width = gw_text_width(table->cells[i].text), c = i % table->n_columns;
        if (width > widths[c]) widths[c] = width;
    }
    return widths;
}

struct grid {
    const struct gw_block *table;
    const size_t *widths;
    size_t before_last; /* columns taken by all but the last */
    size_t room;        /* for the last; 0: too little to wrap in */
};

static void end_line(struct page *page)
{
    struct gw_text *out = page->out;
    while (out->length && out->at[out->length - 1] == ' ') out->at[--out->length] = '\0';
    gw_text_add(out, "\n");
}

static void put_last(struct page *page, const struct grid *grid, const char *text)
{
    bool fits = grid->before_last + gw_text_width(text) <= PAGE;
    if (fits || grid->room) {
        wrap(page->out, text, fits ? 0 : grid->before_last);
        return;
    }
    end_line(page);
    gw_text_repeat(page->out, ' ', BELOW);
    wrap(page->out, text, BELOW);
}

static void put_cell(struct page *page, const struct grid *grid, size_t c, const struct gw_cell *cell)
{
    size_t width = gw_text_width(cell->text), wanted = grid->widths[c];
    bool last = c + 1 == grid->table->n_columns, right = grid->table->columns[c].right;
    if (c) gw_text_repeat(page->out, ' ', GAP);
    if (right) gw_text_repeat(page->out, ' ', wanted - width);
    paint(page, tone_code(cell->tone));
    if (last && !right) put_last(page, grid, cell->text);
    else gw_text_add(page->out, cell->text);
    paint(page, tone_code(cell->tone) ? "0" : NULL);
    if (!right && !last) gw_text_repeat(page->out, ' ', wanted - width);
}

static void put_rule(struct page *page, const struct grid *grid)
{
    for (size_t c = 0; c < grid->table->n_columns; c++) {
        bool last = c + 1 == grid->table->n_columns && !grid->table->columns[c].right;
        size_t width = grid->widths[c], most = grid->room ? grid->room : gw_text_width(grid->table->columns[c].title);
        if (c) gw_text_repeat(page->out, ' ', GAP);
        gw_text_repeat(page->out, '-', last && grid->before_last + width > PAGE ? most : width);
    }
    gw_text_add(page->out, "\n");
}

static void put_table(struct page *page, const struct gw_block *table, struct gw_arena *arena)
{
    struct grid grid = {.table = table, .widths = column_widths(table, arena)};
    for (size_t c = 0; c + 1 < table->n_columns; c++) grid.before_last += grid.widths[c] + GAP;
    if (grid.before_last + LEAST_LAST <= PAGE) grid.room = PAGE - grid.before_last;
    if (*table->text) {
        wrap(page->out, table->text, 0);
        gw_text_add(page->out, "\n");
    }
    for (size_t c = 0; c < table->n_columns; c++) {
        struct gw_cell title = {table->columns[c].title, GW_PLAIN};
        put_cell(page, &grid, c, &title);
    }
    end_line(page);
    put_rule(page, &grid);
    for (size_t i = 0; table->n_columns && i < table->n_cells; i++) {
        put_cell(page, &grid, i % table->n_columns, &table->cells[i]);
        if ((i + 1) % table->n_columns == 0) end_line(page);
    }
}

static void put_heading(struct page *page, const struct gw_block *block)
{
    paint(page, "1");
    gw_text_add(page->out, block->text);
    paint(page, "0");
    gw_text_add(page->out, "\n");
    if (block->level > 2) return;
    gw_text_repeat(page->out, block->level == 1 ? '=' : '-', gw_text_width(block->text));
    gw_text_add(page->out, "\n");
}

static void put_line(struct page *page, const struct gw_block *block, struct gw_arena *arena)
{
    const bool item = block->kind == GW_ITEM;
    const char *before = !item ? "" : block->level ? gw_format(arena, "%d. ", block->level) : "- ";
    gw_text_add(page->out, before);
    wrap(page->out, block->text, gw_text_width(before));
    gw_text_add(page->out, "\n");
}

/* The first line at the left, the others below it indented. */
static void put_hanging(struct page *page, const char *text, size_t indent)
{
    const size_t first = piece(text, PAGE);
    gw_text_bytes(page->out, text, first);
    text += first;
    while (*text == ' ') text++;
    end_line(page);
    if (!*text) return;
    gw_text_repeat(page->out, ' ', indent);
    wrap(page->out, text, indent);
    gw_text_add(page->out, "\n");
}

static void put_words(struct page *page, const char *text)
{
    wrap(page->out, text, 0);
    gw_text_add(page->out, "\n");
}

/* One line where it fits; else a line to each side of an equation, aligned on its signs, and the clause in one of them
 * or below. */
static void put_equation(struct page *page, const struct gw_equation *e, struct gw_arena *arena)
{
    const char *whole = gw_equation_text(arena, e);
    const char *head = gw_format(arena, "%zu. %s", e->number, e->symbol);
    const size_t indent = gw_text_width(head) + 1;
    if (gw_text_width(whole) <= PAGE || !*e->formula || indent > PAGE / 3) {
        put_hanging(page, whole, BELOW);
        return;
    }
    put_words(page, gw_format(arena, "%s = %s", head, e->formula));
    gw_text_repeat(page->out, ' ', indent);
    wrap(page->out,
         gw_format(arena, "= %s = %s%s%s   [%s]", e->substituted, e->result, *e->unit ? " " : "", e->unit, e->clause),
         indent);
    gw_text_add(page->out, "\n");
}

static void put_definition(struct page *page, const struct gw_block *block)
{
    put_words(page, block->text);
    gw_text_repeat(page->out, ' ', BELOW);
    wrap(page->out, block->meaning, BELOW);
    gw_text_add(page->out, "\n");
}

static void put_block(struct page *page, const struct gw_block *block, struct gw_arena *arena)
{
    switch (block->kind) {
    case GW_HEADING:
        put_heading(page, block);
        return;
    case GW_TABLE:
        put_table(page, block, arena);
        return;
    case GW_LINE:
    case GW_ITEM:
        put_line(page, block, arena);
        return;
    case GW_EQUATION:
        put_equation(page, &block->equation, arena);
        return;
    case GW_FIGURE:
        put_words(page, gw_format(arena, "Figure: %s. %s", block->figure.title, block->figure.alternative));
        return;
    case GW_DEFINITION:
        put_definition(page, block);
        return;
    case GW_PAGE_BREAK:
        gw_text_add(page->out, "\f");
        return;
    }
}

void gw_render_text(struct gw_text *out, const struct gw_report *report, bool color)
{
    struct page page = {out, color};
    for (size_t i = 0; i < report->n; i++) {
        const struct gw_block *block = &report->blocks[i], *previous = i ? block - 1 : NULL;
        bool apart = previous && (block->kind == GW_HEADING || block->kind == GW_TABLE || previous->kind == GW_TABLE);
        if (apart && !(previous->kind == GW_HEADING && block->kind == GW_TABLE)) gw_text_add(out, "\n");
        put_block(&page, block, report->arena);
    }
}
