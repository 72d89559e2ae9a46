/* Boxes of formulas: measured, then drawn in the order in which they are read. Parts of the size: a script is 0.7 of
 * it, raised by 0.36 or lowered by 0.18; a bar 0.05 thick lies on the axis, 0.25 above the base line. */
#include "report/pdf/pdf.h"

#include <math.h>
#include <string.h>

static const double SCRIPT = 0.7, RAISE = 0.36, LOWER = 0.18, BAR = 0.05, AXIS = 0.25, AROUND = 0.22, PAD = 0.12;

static struct pdf_style style_of(const struct gw_math *math, double size)
{
    return (struct pdf_style){size, PDF_REGULAR, GW_INK, "STIX, STIXGeneral, DejaVu Serif",
                              math->kind == GW_M_QUANTITY};
}

static PangoLayout *letters(struct pdf *pdf, const struct gw_math *math, double size)
{
    const struct pdf_style style = style_of(math, size);
    return pdf_layout(pdf, math->text, &style, 0);
}

static struct pdf_box letter_box(struct pdf *pdf, const struct gw_math *math, double size)
{
    PangoRectangle ink, logical;
    PangoLayout *layout = letters(pdf, math, size);
    const double base = (double)pango_layout_get_baseline(layout) / PANGO_SCALE;
    pango_layout_get_extents(layout, &ink, &logical);
    g_object_unref(layout);
    const double top = (double)ink.y / PANGO_SCALE, height = (double)ink.height / PANGO_SCALE;
    const double around = math->kind == GW_M_OPERATOR ? 2 * AROUND * size
                          : math->kind == GW_M_COMMA  ? AROUND * size
                                                      : 0;
    return (struct pdf_box){(double)logical.width / PANGO_SCALE + around, fmax(base - top, 0.5 * size),
                            fmax(top + height - base, 0)};
}

static struct pdf_box beside(struct pdf_box a, struct pdf_box b)
{
    return (struct pdf_box){a.width + b.width, fmax(a.above, b.above), fmax(a.below, b.below)};
}

static struct pdf_box row_box(struct pdf *pdf, const struct gw_math *math, double size)
{
    struct pdf_box out = {0, 0, 0};
    for (const struct gw_math *part = math->parts[0]; part; part = part->next)
        out = beside(out, pdf_math_box(pdf, part, size));
    return out;
}

static struct pdf_box fraction_box(struct pdf *pdf, const struct gw_math *math, double size)
{
    const struct pdf_box n = pdf_math_box(pdf, math->parts[0], size), d = pdf_math_box(pdf, math->parts[1], size);
    const double gap = PAD * size;
    return (struct pdf_box){fmax(n.width, d.width) + 2 * gap, AXIS * size + gap + n.above + n.below,
                            d.above + d.below + gap - AXIS * size};
}

static struct pdf_box script_box(struct pdf *pdf, const struct gw_math *math, double size)
{
    struct pdf_box out = pdf_math_box(pdf, math->parts[0], size), part = {0, 0, 0};
    double width = 0;
    if (math->parts[1]) {
        part = pdf_math_box(pdf, math->parts[1], SCRIPT * size);
        out.below = fmax(out.below, part.below + LOWER * size);
        width = part.width;
    }
    if (math->parts[2]) {
        part = pdf_math_box(pdf, math->parts[2], SCRIPT * size);
        out.above = fmax(out.above, part.above + fmax(RAISE * size, out.above - 0.4 * size));
        width = fmax(width, part.width);
    }
    out.width += width + 0.03 * size;
    return out;
}

static double bracket_width(const struct gw_math *math, double size)
{
    return (math->text[0] == '|' ? 0.22 : 0.3) * size;
}

struct pdf_box pdf_math_box(struct pdf *pdf, const struct gw_math *math, double size)
{
    struct pdf_box out;
    switch (math->kind) {
    case GW_M_ROW:
        return row_box(pdf, math, size);
    case GW_M_TIMES:
        return (struct pdf_box){0.08 * size, 0, 0};
    case GW_M_APPLY:
        return (struct pdf_box){0, 0, 0};
    case GW_M_FRACTION:
        return fraction_box(pdf, math, size);
    case GW_M_SCRIPT:
        return script_box(pdf, math, size);
    case GW_M_ROOT:
        out = pdf_math_box(pdf, math->parts[0], size);
        return (struct pdf_box){out.width + 0.75 * size, out.above + 0.2 * size, out.below};
    case GW_M_BRACKETS:
        out = pdf_math_box(pdf, math->parts[0], size);
        out.width += 2 * bracket_width(math, size);
        out.above = fmax(out.above, 0.72 * size) + 0.06 * size;
        out.below = fmax(out.below, 0.2 * size) + 0.06 * size;
        return out;
    default:
        return letter_box(pdf, math, size);
    }
}

/* Drawing ---------------------------------------------------------------------------------------------------------- */

static void draw_letters(struct pdf *pdf, const struct gw_math *math, double size, double x, double y)
{
    PangoLayout *layout = letters(pdf, math, size);
    const double base = (double)pango_layout_get_baseline(layout) / PANGO_SCALE;
    const double before = math->kind == GW_M_OPERATOR ? AROUND * size : 0;
    cairo_move_to(pdf->cr, x + before, y - base);
    pango_cairo_show_layout(pdf->cr, layout);
    g_object_unref(layout);
}

static void draw_row(struct pdf *pdf, const struct gw_math *math, double size, double x, double y)
{
    for (const struct gw_math *part = math->parts[0]; part; part = part->next) {
        pdf_math_draw(pdf, part, size, x, y);
        x += pdf_math_box(pdf, part, size).width;
    }
}

static void draw_fraction(struct pdf *pdf, const struct gw_math *math, double size, double x, double y)
{
    const struct pdf_box n = pdf_math_box(pdf, math->parts[0], size), d = pdf_math_box(pdf, math->parts[1], size);
    const double gap = PAD * size, width = fmax(n.width, d.width) + 2 * gap, axis = y - AXIS * size;
    pdf_math_draw(pdf, math->parts[0], size, x + (width - n.width) / 2, axis - gap - n.below);
    cairo_set_line_width(pdf->cr, BAR * size);
    cairo_move_to(pdf->cr, x + gap / 2, axis);
    cairo_line_to(pdf->cr, x + width - gap / 2, axis);
    cairo_stroke(pdf->cr);
    pdf_math_draw(pdf, math->parts[1], size, x + (width - d.width) / 2, axis + gap + d.above);
}

static void draw_script(struct pdf *pdf, const struct gw_math *math, double size, double x, double y)
{
    const struct pdf_box base = pdf_math_box(pdf, math->parts[0], size);
    pdf_math_draw(pdf, math->parts[0], size, x, y);
    x += base.width + 0.03 * size;
    if (math->parts[1]) pdf_math_draw(pdf, math->parts[1], SCRIPT * size, x, y + LOWER * size);
    if (math->parts[2])
        pdf_math_draw(pdf, math->parts[2], SCRIPT * size, x, y - fmax(RAISE * size, base.above - 0.4 * size));
}

static void draw_root(struct pdf *pdf, const struct gw_math *math, double size, double x, double y)
{
    const struct pdf_box in = pdf_math_box(pdf, math->parts[0], size);
    const double top = y - in.above - 0.12 * size, bottom = y + in.below, foot = x + 0.32 * size,
                 from = x + 0.55 * size;
    cairo_set_line_width(pdf->cr, BAR * size);
    cairo_move_to(pdf->cr, x + 0.08 * size, y - 0.3 * size);
    cairo_line_to(pdf->cr, foot, bottom);
    cairo_line_to(pdf->cr, from, top);
    cairo_line_to(pdf->cr, from + in.width + 0.15 * size, top);
    cairo_stroke(pdf->cr);
    pdf_math_draw(pdf, math->parts[0], size, x + 0.62 * size, y);
}

/* A curve as high as what it holds, so that it grows without another font. */
static void draw_bracket(struct pdf *pdf, char kind, double x, double width, double top, double bottom, double size)
{
    const double side = kind == '(' ? x + 0.85 * width : x + 0.15 * width,
                 bulge = kind == '(' ? x + 0.15 * width : x + 0.85 * width, third = (bottom - top) / 3.2;
    cairo_set_line_width(pdf->cr, 1.3 * BAR * size);
    if (kind == '|') {
        cairo_move_to(pdf->cr, x + width / 2, top);
        cairo_line_to(pdf->cr, x + width / 2, bottom);
    } else {
        cairo_move_to(pdf->cr, side, top);
        cairo_curve_to(pdf->cr, bulge, top + third, bulge, bottom - third, side, bottom);
    }
    cairo_stroke(pdf->cr);
}

static void draw_brackets(struct pdf *pdf, const struct gw_math *math, double size, double x, double y)
{
    const struct pdf_box own = pdf_math_box(pdf, math, size);
    const double width = bracket_width(math, size);
    draw_bracket(pdf, math->text[0], x, width, y - own.above, y + own.below, size);
    pdf_math_draw(pdf, math->parts[0], size, x + width, y);
    draw_bracket(pdf, math->text[1], x + own.width - width, width, y - own.above, y + own.below, size);
}

void pdf_math_draw(struct pdf *pdf, const struct gw_math *math, double size, double x, double y)
{
    switch (math->kind) {
    case GW_M_ROW:
        draw_row(pdf, math, size, x, y);
        return;
    case GW_M_TIMES:
    case GW_M_APPLY:
        return;
    case GW_M_FRACTION:
        draw_fraction(pdf, math, size, x, y);
        return;
    case GW_M_SCRIPT:
        draw_script(pdf, math, size, x, y);
        return;
    case GW_M_ROOT:
        draw_root(pdf, math, size, x, y);
        return;
    case GW_M_BRACKETS:
        draw_brackets(pdf, math, size, x, y);
        return;
    default:
        draw_letters(pdf, math, size, x, y);
        return;
    }
}
