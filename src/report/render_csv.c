/* A report's tables as comma-separated values. */
#include "galeward/report.h"
#include "report/parts.h"

#include <string.h>

void gw_csv_cell(struct gw_text *out, const char *text, bool first)
{
    if (!first) gw_text_add(out, ",");
    if (!text[strcspn(text, ",;\"\r\n")]) {
        gw_text_add(out, text);
        return;
    }
    gw_text_add(out, "\"");
    for (; *text; text++) gw_text_bytes(out, *text == '"' ? "\"\"" : text, *text == '"' ? 2 : 1);
    gw_text_add(out, "\"");
}

static void put_table(struct gw_text *out, const struct gw_block *table)
{
    if (!table->n_columns) return;
    for (size_t c = 0; c < table->n_columns; c++) gw_csv_cell(out, table->columns[c].title, c == 0);
    gw_text_add(out, "\n");
    for (size_t i = 0; i < table->n_cells; i++) {
        gw_csv_cell(out, table->cells[i].text, i % table->n_columns == 0);
        if ((i + 1) % table->n_columns == 0) gw_text_add(out, "\n");
    }
}

void gw_render_csv(struct gw_text *out, const struct gw_report *report)
{
    bool first = true;
    for (size_t i = 0; i < report->n; i++) {
        if (report->blocks[i].kind != GW_TABLE) continue;
        if (!first) gw_text_add(out, "\n");
        first = false;
        put_table(out, &report->blocks[i]);
    }
}
