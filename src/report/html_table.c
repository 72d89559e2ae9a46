/* A table of a page: a caption, heads, rows that a narrow screen shows as cards. */
#include "report/markup.h"
#include "report/render_html.h"

#include <string.h>

/* A square with a cross; a diamond with a question; a triangle with an exclamation; a circle with a tick. */
void gw_html_mark(struct gw_text *out, enum gw_tone tone)
{
    static const char *const marks[] = {
        [GW_PLAIN] = NULL,
        [GW_BAD] =
            "<path d=\"M0 0H12V12H0ZM2.6 3.6 5 6 2.6 8.4 3.6 9.4 6 7 8.4 9.4 9.4 8.4 7 6 9.4 3.6 8.4 2.6 6 5 3.6 "
            "2.6Z\" fill=\"currentColor\" fill-rule=\"evenodd\"/>",
        [GW_DOUBTFUL] = "<path d=\"M6 .8 11.2 6 6 11.2.8 6Z\" fill=\"none\" stroke=\"currentColor\" "
                        "stroke-width=\"1.2\"/><path d=\"M4.6 4.8Q4.7 3.4 6 3.4T7.4 4.8Q7.4 5.6 6 6.3V7M6 8.1V9\" "
                        "fill=\"none\" stroke=\"currentColor\" stroke-width=\"1.1\"/>",
        [GW_IN_HAND] = "<path d=\"M6 .8 11.4 11H.6Z\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"1.2\"/>"
                       "<path d=\"M6 4.4V7.4M6 8.4V9.6\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"1.1\"/>",
        [GW_GOOD] =
            "<circle cx=\"6\" cy=\"6\" r=\"5.3\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"1.2\"/>"
            "<path d=\"M3.4 6.2 5.3 8.1 8.7 4.2\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"1.4\"/>"};
    if (marks[tone])
        gw_text_addf(out, "<svg viewBox=\"0 0 12 12\" aria-hidden=\"true\" focusable=\"false\">%s</svg>", marks[tone]);
}

static const char *tone_class(enum gw_tone tone)
{
    static const char *const classes[] = {
        [GW_PLAIN] = "", [GW_GOOD] = "v good", [GW_BAD] = "v bad", [GW_DOUBTFUL] = "v doubt", [GW_IN_HAND] = "v doubt"};
    return classes[tone];
}

static void head(struct html *html, const struct gw_block *table)
{
    gw_text_add(html->out, "<thead><tr>");
    for (size_t c = 0; c < table->n_columns; c++) {
        gw_text_addf(html->out, "<th scope=\"col\"%s>", table->columns[c].right ? " class=\"n\"" : "");
        gw_markup_text(html->out, table->columns[c].title);
        gw_text_add(html->out, "</th>");
    }
    gw_text_add(html->out, "</tr></thead>\n");
}

static void cell(struct html *html, const struct gw_block *table, const struct gw_cell *cell, size_t column)
{
    const char *tone = tone_class(cell->tone), *number = table->columns[column].right ? "n" : "";
    const bool names = !column && *cell->text;
    gw_text_add(html->out, names ? "<th scope=\"row\"" : "<td");
    if (*tone || *number) gw_text_addf(html->out, " class=\"%s%s%s\"", number, *tone && *number ? " " : "", tone);
    if (column && *cell->text) {
        gw_text_add(html->out, " data-of=\"");
        gw_markup_text(html->out, table->columns[column].title);
        gw_text_add(html->out, "\"");
    }
    gw_text_add(html->out, ">");
    if (*cell->text) gw_html_mark(html->out, cell->tone);
    gw_html_words(html, cell->text);
    gw_text_add(html->out, names ? "</th>" : "</td>");
}

void gw_html_table(struct html *html, const struct gw_block *table)
{
    enum { CARD_COLUMNS = 7 };
    if (!table->n_columns) return;
    const int number = ++html->tables;
    const bool cards = table->n_columns <= CARD_COLUMNS;
    gw_text_addf(html->out, "<div class=\"wide%s\" role=\"region\" tabindex=\"0\" aria-label=\"Table %d",
                 cards ? "" : " moves", number);
    if (*table->text) gw_text_add(html->out, ": ");
    gw_markup_text(html->out, table->text);
    gw_text_addf(html->out, "\"><table%s>\n", cards ? " class=\"cards\"" : "");
    if (*table->text) {
        gw_text_add(html->out, "<caption>");
        gw_markup_text(html->out, table->text);
        gw_text_add(html->out, "</caption>\n");
    }
    head(html, table);
    gw_text_add(html->out, "<tbody>\n");
    for (size_t i = 0; i < table->n_cells; i++) {
        const size_t column = i % table->n_columns;
        if (!column) gw_text_add(html->out, "<tr>");
        cell(html, table, &table->cells[i], column);
        if (column + 1 == table->n_columns) gw_text_add(html->out, "</tr>\n");
    }
    gw_text_add(html->out, "</tbody></table></div>\n");
}
