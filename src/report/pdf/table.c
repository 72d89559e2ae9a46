/* Tables: columns as wide as their words where there is room, else the widest give way; the head on each page. */
#include "report/draw/sheet.h"
#include "report/pdf/pdf.h"

#include <math.h>
#include <string.h>

enum { COLUMNS = 24 };
static const double GAP = 9, PAD = 2.6, MARK = 9, INDENT = 14;
static const struct pdf_style HEAD = {8, PDF_SEMIBOLD, GW_INK2, NULL, false},
                              CELL = {8, PDF_REGULAR, GW_INK, NULL, false},
                              NAME = {8, PDF_SEMIBOLD, GW_INK, NULL, false},
                              CAPTION = {8, PDF_REGULAR, GW_INK2, NULL, false};

static enum sheet_mark mark_of(enum gw_tone tone)
{
    static const enum sheet_mark marks[] = {[GW_PLAIN] = MARK_NONE,
                                            [GW_GOOD] = MARK_SETTLED,
                                            [GW_BAD] = MARK_STOP,
                                            [GW_DOUBTFUL] = MARK_ASK,
                                            [GW_IN_HAND] = MARK_IN_HAND};
    return marks[tone];
}

static struct pdf_style style_of(const struct gw_cell *cell, size_t column)
{
    struct pdf_style style = column ? CELL : NAME;
    if (cell->tone) style.weight = PDF_SEMIBOLD, style.color = gw_mark_ink(mark_of(cell->tone));
    return style;
}

static void widths(struct pdf *pdf, const struct gw_block *t, double *out)
{
    double room = pdf_width() + GAP, sum = 0;
    for (size_t c = 0; c < t->n_columns; c++) {
        out[c] = t->columns[c].below ? 0 : pdf_text_width(pdf, t->columns[c].title, &HEAD);
        room -= t->columns[c].below ? 0 : GAP;
    }
    for (size_t i = 0; i < t->n_cells; i++) {
        if (t->columns[i % t->n_columns].below) continue;
        const struct pdf_style style = style_of(&t->cells[i], i % t->n_columns);
        const double mark = t->cells[i].tone ? MARK : 0;
        out[i % t->n_columns] = fmax(out[i % t->n_columns], pdf_text_width(pdf, t->cells[i].text, &style) + mark);
    }
    for (size_t c = 0; c < t->n_columns; c++) sum += out[c] += t->columns[c].below ? 0 : 0.5;
    /* the widest gives way until all have room */
    for (int tries = 0; tries < 200 && sum > room; tries++) {
        size_t widest = 0;
        double second = 0;
        for (size_t c = 1; c < t->n_columns; c++)
            if (out[c] > out[widest]) widest = c;
        for (size_t c = 0; c < t->n_columns; c++)
            if (c != widest) second = fmax(second, out[c]);
        const double to = fmax(out[widest] - (sum - room), fmin(second, out[widest] - 4));
        sum -= out[widest] - to;
        out[widest] = to;
    }
}

static void head(struct pdf *pdf, const struct gw_block *t, const double *width)
{
    double x = pdf_left(), height = 0;
    for (size_t c = 0; c < t->n_columns; c++) {
        if (!t->columns[c].below)
            height = fmax(height, pdf_put(pdf, x, pdf->y, width[c], t->columns[c].title, &HEAD, t->columns[c].right));
        x += width[c] + GAP;
    }
    pdf->y += height + PAD;
    pdf_rule(pdf, pdf->y, 1.1, GW_RULE);
    pdf->y += PAD;
}

static double row_height(struct pdf *pdf, const struct gw_block *t, const struct gw_cell *row, const double *width)
{
    double height = CELL.size;
    for (size_t c = 0; c < t->n_columns; c++) {
        if (t->columns[c].below) continue;
        const struct pdf_style style = style_of(&row[c], c);
        PangoLayout *layout = pdf_layout(pdf, row[c].text, &style, width[c] - (row[c].tone ? MARK : 0));
        pdf_keep_within(layout, pdf_most_of_a_cell());
        height = fmax(height, pdf_layout_height(layout));
        g_object_unref(layout);
    }
    return height;
}

static void put_mark(struct pdf *pdf, double x, double y, enum gw_tone tone)
{
    struct gw_canvas canvas;
    gw_canvas_init(&canvas, pdf->arena);
    gw_mark_draw(&canvas, (struct gw_point){6, 6}, mark_of(tone));
    pdf_canvas(pdf, &canvas, x, y, 0.6);
}

static double height_below(struct pdf *pdf, const struct gw_block *t, const struct gw_cell *cells)
{
    double height = 0;
    for (size_t c = 0; c < t->n_columns; c++) {
        if (!t->columns[c].below || !*cells[c].text) continue;
        PangoLayout *layout = pdf_layout(pdf, cells[c].text, &CELL, pdf_width() - INDENT);
        pdf_keep_within(layout, pdf_most_of_a_cell() / 2);
        height += pdf_layout_height(layout) + PAD;
        g_object_unref(layout);
    }
    return height;
}

/* Sentences under the row. */
static void put_below(struct pdf *pdf, const struct gw_block *t, const struct gw_cell *cells)
{
    for (size_t c = 0; c < t->n_columns; c++)
        if (t->columns[c].below && *cells[c].text)
            pdf->y += PAD + pdf_put(pdf, pdf_left() + INDENT, pdf->y + PAD, pdf_width() - INDENT, cells[c].text, &CELL,
                                    false);
}

static double whole_row(struct pdf *pdf, const struct gw_block *t, const struct gw_cell *cells, const double *width)
{
    return row_height(pdf, t, cells, width) + height_below(pdf, t, cells) + 2 * PAD;
}

static void put_cell(struct pdf *pdf, const struct gw_block *t, const struct gw_cell *cell, size_t column, double x,
                     double width)
{
    const struct pdf_style style = style_of(cell, column);
    const double mark = cell->tone && *cell->text ? MARK : 0;
    if (mark > 0) put_mark(pdf, x, pdf->y + 1.6, cell->tone);
    if (*cell->text) pdf_put(pdf, x + mark, pdf->y, width - mark, cell->text, &style, t->columns[column].right);
}

/* The last row takes the one before it along: none stands alone on a page. */
static bool needs_page(struct pdf *pdf, const struct gw_block *t, size_t at, const double *width)
{
    const double own = whole_row(pdf, t, &t->cells[at], width), room = pdf_bottom() - pdf->y;
    const size_t next = at + t->n_columns;
    if (own > room) return true;
    if (!at || next + t->n_columns != t->n_cells) return false;
    const double both = own + whole_row(pdf, t, &t->cells[next], width);
    return both > room && both < pdf_most_of_a_cell();
}

static void row(struct pdf *pdf, const struct gw_block *t, size_t at, const double *width)
{
    const struct gw_cell *cells = &t->cells[at];
    const double height = row_height(pdf, t, cells, width);
    double x = pdf_left();
    if (needs_page(pdf, t, at, width)) {
        pdf_new_page(pdf);
        head(pdf, t, width);
    }
    for (size_t c = 0; c < t->n_columns; c++) {
        if (!t->columns[c].below) put_cell(pdf, t, &cells[c], c, x, width[c]);
        x += width[c] + GAP;
    }
    pdf->y += height;
    put_below(pdf, t, cells);
    pdf->y += PAD;
    pdf_rule(pdf, pdf->y, 0.4, GW_FAINT);
    pdf->y += PAD;
}

/* Its caption, its head and two rows stay together; all of a short one. */
static double beginning(struct pdf *pdf, const struct gw_block *t, const double *width)
{
    const double caption = *t->text ? pdf_text_height(pdf, t->text, &CAPTION) : 0, head = 30;
    const double most = (pdf_bottom() - pdf_top()) / 4;
    double height = 0, two = 0;
    for (size_t i = 0, n = 0; i + t->n_columns <= t->n_cells && height <= most; i += t->n_columns) {
        height += whole_row(pdf, t, &t->cells[i], width);
        if (++n <= 2) two = height;
    }
    return caption + head + (height <= most ? height : fmin(two, most));
}

void pdf_table(struct pdf *pdf, const struct gw_block *t)
{
    double width[COLUMNS];
    if (!t->n_columns || t->n_columns > COLUMNS) return;
    widths(pdf, t, width);
    pdf_need(pdf, fmax(PDF_TABLE_START, beginning(pdf, t, width)));
    if (*t->text) pdf_paragraph(pdf, 0, t->text, &CAPTION);
    pdf->y += PAD;
    pdf_need(pdf, 40);
    head(pdf, t, width);
    for (size_t i = 0; i + t->n_columns <= t->n_cells; i += t->n_columns) row(pdf, t, i, width);
    pdf->y += 6;
}
