/* A report as Markdown with pipe tables. */
#include "galeward/report.h"

#include <ctype.h>
#include <string.h>

static bool is_word(char c) { return isalnum((unsigned char)c) || (unsigned char)c >= 0x80; }

/* Inside a word an underscore is one, and a lone ampersand too. */
static bool is_special(const char *text, char before)
{
    if (*text == '_') return !is_word(before) || !is_word(text[1]);
    if (*text == '&') return text[1] == '#' || isalpha((unsigned char)text[1]);
    return strchr("\\`*<|[]~", *text);
}

static void put_escaped(struct gw_text *out, const char *text)
{
    for (char before = ' '; *text; before = *text++) {
        if (is_special(text, before)) gw_text_add(out, "\\");
        gw_text_bytes(out, text, 1);
    }
}

/* A line that would begin a heading, a quote or a list. */
static void put_start(struct gw_text *out, const char *text)
{
    size_t digits = strspn(text, "0123456789");
    if (*text && strchr("#>+-=", *text)) gw_text_add(out, "\\");
    if (digits && (text[digits] == '.' || text[digits] == ')') && text[digits + 1] == ' ') {
        gw_text_bytes(out, text, digits);
        gw_text_add(out, "\\");
        text += digits;
    }
    put_escaped(out, text);
}

static void put_table(struct gw_text *out, const struct gw_block *table)
{
    if (*table->text) {
        put_start(out, table->text);
        gw_text_add(out, "\n\n");
    }
    for (size_t c = 0; c < table->n_columns; c++) {
        gw_text_add(out, "| ");
        put_escaped(out, table->columns[c].title);
        gw_text_add(out, " ");
    }
    gw_text_add(out, "|\n");
    if (!table->n_columns) return;
    for (size_t c = 0; c < table->n_columns; c++) gw_text_add(out, table->columns[c].right ? "|---:" : "|---");
    gw_text_add(out, "|\n");
    for (size_t i = 0; i < table->n_cells; i++) {
        gw_text_add(out, "| ");
        put_escaped(out, table->cells[i].text);
        gw_text_add(out, (i + 1) % table->n_columns ? " " : " |\n");
    }
}

static void put_heading(struct gw_text *out, const struct gw_block *block)
{
    gw_text_repeat(out, '#', (size_t)block->level);
    gw_text_add(out, " ");
    put_start(out, block->text);
    gw_text_add(out, "\n");
}

static void put_line(struct gw_text *out, const char *before, const char *text, const char *after)
{
    gw_text_add(out, before);
    put_start(out, text);
    gw_text_add(out, after);
}

static void put_block(struct gw_text *out, const struct gw_block *block, struct gw_arena *arena)
{
    switch (block->kind) {
    case GW_HEADING:
        put_heading(out, block);
        return;
    case GW_TABLE:
        put_table(out, block);
        return;
    case GW_LINE:
        put_line(out, "", block->text, "\n");
        return;
    case GW_ITEM:
        put_line(out, block->level ? gw_format(arena, "%d. ", block->level) : "- ", block->text, "\n");
        return;
    case GW_EQUATION:
        put_escaped(out, gw_equation_text(arena, &block->equation)); /* its number makes it an item */
        gw_text_add(out, "\n");
        return;
    case GW_FIGURE:
        put_line(out, "**", block->figure.title, "** ");
        put_line(out, "", block->figure.alternative, "\n");
        return;
    case GW_DEFINITION:
        put_line(out, "- **", block->text, "**: ");
        put_line(out, "", block->meaning, "\n");
        return;
    case GW_PAGE_BREAK:
        gw_text_add(out, "---\n");
        return;
    }
}

static bool is_of_list(const struct gw_block *block) { return block->kind == GW_ITEM || block->kind == GW_DEFINITION; }

void gw_render_markdown(struct gw_text *out, const struct gw_report *report)
{
    for (size_t i = 0; i < report->n; i++) {
        const struct gw_block *block = &report->blocks[i];
        bool same_list = i && is_of_list(block) && (block - 1)->kind == block->kind;
        if (i && !same_list) gw_text_add(out, "\n");
        put_block(out, block, report->arena);
    }
}
