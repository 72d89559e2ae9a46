/* A report as Markdown with pipe tables. */
#include "galeward/report.h"

#include <string.h>

static void put_escaped(struct gw_text *out, const char *text)
{
    for (; *text; text++) {
        if (strchr("\\`*<|", *text)) gw_text_add(out, "\\");
        gw_text_bytes(out, *text == '\n' ? " " : text, 1);
    }
}

static void put_table(struct gw_text *out, const struct gw_block *table)
{
    if (*table->text) {
        put_escaped(out, table->text);
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

static void put_block(struct gw_text *out, const struct gw_block *block)
{
    if (block->kind == GW_TABLE) {
        put_table(out, block);
        return;
    }
    if (block->kind == GW_HEADING) {
        gw_text_repeat(out, '#', (size_t)block->level);
        gw_text_add(out, " ");
    }
    if (block->kind == GW_ITEM) gw_text_add(out, "- ");
    put_escaped(out, block->text);
    gw_text_add(out, "\n");
}

void gw_render_markdown(struct gw_text *out, const struct gw_report *report)
{
    for (size_t i = 0; i < report->n; i++) {
        bool same_list = i && report->blocks[i].kind == GW_ITEM && report->blocks[i - 1].kind == GW_ITEM;
        if (i && !same_list) gw_text_add(out, "\n");
        put_block(out, &report->blocks[i]);
    }
}
