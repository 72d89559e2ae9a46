/* Headings, lines and tables, in order. */
#include "galeward/report.h"

void gw_report_init(struct gw_report *report, struct gw_arena *arena) { *report = (struct gw_report){.arena = arena}; }

static struct gw_block *add(struct gw_report *report, enum gw_block_kind kind, const char *text)
{
    report->blocks = gw_grow(report->arena, report->blocks, report->n, &report->capacity, sizeof *report->blocks);
    struct gw_block *block = &report->blocks[report->n++];
    *block = (struct gw_block){.kind = kind, .text = gw_strdup(report->arena, text ? text : "")};
    return block;
}

void gw_report_heading(struct gw_report *report, int level, const char *text)
{
    add(report, GW_HEADING, text)->level = level;
}

void gw_report_line(struct gw_report *report, const char *text) { add(report, GW_LINE, text); }

void gw_report_item(struct gw_report *report, const char *text) { add(report, GW_ITEM, text); }

void gw_report_table(struct gw_report *report, const char *caption, const struct gw_report_column *columns, size_t n)
{
    struct gw_block *block = add(report, GW_TABLE, caption);
    block->columns = columns;
    block->n_columns = n;
}

void gw_report_toned(struct gw_report *report, enum gw_tone tone, const char *text)
{
    if (!report->n || report->blocks[report->n - 1].kind != GW_TABLE) return;
    struct gw_block *table = &report->blocks[report->n - 1];
    table->cells = gw_grow(report->arena, table->cells, table->n_cells, &table->capacity, sizeof *table->cells);
    table->cells[table->n_cells++] = (struct gw_cell){gw_strdup(report->arena, text ? text : ""), tone};
}

void gw_report_cell(struct gw_report *report, const char *text) { gw_report_toned(report, GW_PLAIN, text); }
