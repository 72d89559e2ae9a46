/* Steps of a derivation: number, symbol, formula, values, result; its clause below. A piece that has no room begins the
 * next line. */
#include "report/pdf/pdf.h"

#include <math.h>

static const double SIZE = 10.5, INDENT = 24, SPACE = 5;
static const struct pdf_style NUMBER = {8, PDF_REGULAR, GW_INK2, NULL, false},
                              CLAUSE = {8, PDF_REGULAR, GW_INK2, NULL, false},
                              NOTE = {9, PDF_REGULAR, GW_INK, NULL, false};

enum { PIECES = 4 };
struct line {
    const struct gw_math *pieces[PIECES];
    unsigned n;
};

static struct gw_math *equals(struct pdf *pdf, struct gw_math *math)
{
    struct gw_math *row = gw_alloc(pdf->arena, 1, sizeof *row), *sign = gw_alloc(pdf->arena, 1, sizeof *sign);
    *sign = (struct gw_math){.kind = GW_M_OPERATOR, .text = "=", .next = math};
    *row = (struct gw_math){.kind = GW_M_ROW, .parts = {sign}};
    return row;
}

static struct gw_math *result(struct pdf *pdf, const struct gw_equation *e)
{
    struct gw_math *number = gw_math_number(pdf->arena, e->result), *unit;
    if (!*e->unit) return equals(pdf, number);
    struct gw_math *row = gw_alloc(pdf->arena, 1, sizeof *row);
    unit = gw_alloc(pdf->arena, 1, sizeof *unit);
    *unit = (struct gw_math){.kind = GW_M_UPRIGHT, .text = gw_format(pdf->arena, "\u2009%s", e->unit)};
    number->next = unit;
    *row = (struct gw_math){.kind = GW_M_ROW, .parts = {number}};
    return equals(pdf, row);
}

static struct line pieces_of(struct pdf *pdf, const struct gw_equation *e)
{
    struct line out = {.n = 0};
    if (*e->symbol) out.pieces[out.n++] = gw_math_symbol(pdf->arena, e->symbol);
    if (*e->formula) {
        out.pieces[out.n++] = equals(pdf, gw_math_formula(pdf->arena, e->step));
        out.pieces[out.n++] = equals(pdf, gw_math_values(pdf->arena, e->step, e->shown));
    }
    if (*e->result) out.pieces[out.n++] = result(pdf, e);
    return out;
}

/* Of pieces i to j, which stand on one line. */
static void put_line(struct pdf *pdf, const struct line *line, const struct pdf_box *boxes, unsigned i, unsigned j)
{
    double above = 0, below = 0, x = pdf_left() + INDENT;
    for (unsigned k = i; k < j; k++) above = fmax(above, boxes[k].above), below = fmax(below, boxes[k].below);
    if (i) x += 2 * SPACE;
    for (unsigned k = i; k < j; k++) {
        pdf_color(pdf, GW_INK);
        pdf_math_draw(pdf, line->pieces[k], SIZE, x, pdf->y + above);
        x += boxes[k].width + SPACE;
    }
    pdf->y += above + below + 2;
}

static void put_pieces(struct pdf *pdf, const struct line *line)
{
    struct pdf_box boxes[PIECES];
    double height = 0;
    for (unsigned i = 0; i < line->n; i++) {
        boxes[i] = pdf_math_box(pdf, line->pieces[i], SIZE);
        height += boxes[i].above + boxes[i].below;
    }
    pdf_need(pdf, height + 2 * CLAUSE.size);
    for (unsigned i = 0; i < line->n;) {
        unsigned j = i + 1;
        double width = boxes[i].width;
        while (j < line->n && width + SPACE + boxes[j].width <= pdf_width() - INDENT - 2 * SPACE)
            width += SPACE + boxes[j++].width;
        put_line(pdf, line, boxes, i, j);
        i = j;
    }
}

void pdf_step(struct pdf *pdf, const struct gw_equation *e)
{
    const struct line line = pieces_of(pdf, e);
    pdf_need(pdf, 3 * SIZE);
    const double top = pdf->y;
    const int page = pdf->page;
    put_pieces(pdf, &line);
    pdf_put(pdf, pdf_left(), page == pdf->page ? top : pdf_top(), INDENT, gw_format(pdf->arena, "%zu", e->number),
            &NUMBER, false);
    if (*e->note) pdf_paragraph(pdf, INDENT, e->note, &NOTE);
    if (*e->clause) pdf_paragraph(pdf, INDENT, e->clause, &CLAUSE);
    pdf->y += 2;
    pdf_rule(pdf, pdf->y, 0.4, GW_FAINT);
    pdf->y += 4;
}
