/* Captions of tables on pages that are filed: what each says, how many rows, how it is rounded. */
#include "report/captions.h"

#include <ctype.h>
#include <string.h>

/* "Heron 75: PASS (checks at places: ...)": up to the bracket. */
static const char *heading_words(struct gw_report *report, const char *heading)
{
    const char *bracket = strstr(heading, " (");
    return bracket ? gw_strndup(report->arena, heading, (size_t)(bracket - heading)) : heading;
}

/* ", by part"; nothing where the first column is a number's. */
static void add_first_column(struct gw_text *out, const struct gw_block *table)
{
    const char *title = table->columns[0].title;
    if (!*title || strchr(title, '.') || strcmp(title, "What") == 0) return;
    const bool name = isupper((unsigned char)title[1]);
    gw_text_addf(out, ", by %c%s", name ? title[0] : (char)tolower((unsigned char)title[0]), title + 1);
}

static void add_words(struct gw_text *out, const char *words)
{
    const size_t length = strlen(words);
    gw_text_addf(out, "%s%s", words, length && words[length - 1] == '.' ? " " : ": ");
}

static const char *caption_of(struct gw_report *report, const struct gw_block *table, const char *heading)
{
    struct gw_text out, what;
    const size_t rows = table->n_cells / table->n_columns;
    gw_text_init(&out, report->arena);
    gw_text_init(&what, report->arena);
    gw_text_add(&what, *table->text ? table->text : heading_words(report, heading));
    if (!*table->text) add_first_column(&what, table);
    add_words(&out, what.at);
    gw_text_addf(&out, "%zu row%s.", rows, rows == 1 ? "" : "s");
    if (table->rounds && !strstr(table->text, "ounded"))
        gw_text_add(&out, " Demands and use are rounded up, capacities down.");
    return out.at;
}

void gw_report_captions(struct gw_report *report)
{
    const char *heading = "";
    for (size_t i = 0; i < report->n; i++) {
        struct gw_block *block = &report->blocks[i];
        if (block->kind == GW_HEADING) heading = block->text;
        if (block->kind == GW_TABLE && block->n_columns) block->text = caption_of(report, block, heading);
    }
}
