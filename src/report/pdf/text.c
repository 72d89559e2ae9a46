/* Words on pages. */
#include "report/pdf/pdf.h"

#define FAMILY "Open Sans, DejaVu Sans"
const struct pdf_style pdf_body = {9.5, PDF_REGULAR, GW_INK, FAMILY, false};
const struct pdf_style pdf_small = {8, PDF_REGULAR, GW_INK, FAMILY, false};

PangoLayout *pdf_layout(struct pdf *pdf, const char *text, const struct pdf_style *style, double width)
{
    static const PangoWeight weights[] = {PANGO_WEIGHT_NORMAL, PANGO_WEIGHT_SEMIBOLD, PANGO_WEIGHT_BOLD};
    PangoLayout *layout = pango_layout_new(pdf->letters);
    PangoFontDescription *font = pango_font_description_new();
    pango_font_description_set_family_static(font, style->family ? style->family : FAMILY);
    pango_font_description_set_absolute_size(font, style->size * PANGO_SCALE);
    pango_font_description_set_weight(font, weights[style->weight]);
    pango_font_description_set_style(font, style->italic ? PANGO_STYLE_ITALIC : PANGO_STYLE_NORMAL);
    pango_layout_set_font_description(layout, font);
    pango_font_description_free(font);
    pango_layout_set_auto_dir(layout, FALSE);
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    pango_layout_set_width(layout, width > 0 ? (int)(width * PANGO_SCALE) : -1);
    pango_layout_set_text(layout, gw_safe(pdf->arena, text), -1);
    return layout;
}

double pdf_layout_height(PangoLayout *layout)
{
    int height;
    pango_layout_get_size(layout, NULL, &height);
    return (double)height / PANGO_SCALE;
}

double pdf_text_width(struct pdf *pdf, const char *text, const struct pdf_style *style)
{
    int width;
    PangoLayout *layout = pdf_layout(pdf, text, style, 0);
    pango_layout_get_size(layout, &width, NULL);
    g_object_unref(layout);
    return (double)width / PANGO_SCALE;
}

double pdf_most_of_a_cell(void)
{
    const double head = 80; /* of the table, in several lines */
    return pdf_bottom() - pdf_top() - head;
}

void pdf_keep_within(PangoLayout *layout, double height)
{
    if (pango_layout_get_width(layout) < 0) return;
    pango_layout_set_height(layout, (int)(height * PANGO_SCALE));
    pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
}

void pdf_put_line(struct pdf *pdf, double x, double y, double width, const char *text, const struct pdf_style *style)
{
    PangoLayout *layout = pdf_layout(pdf, text, style, width);
    pdf_keep_within(layout, 0);
    pdf_color(pdf, style->color);
    cairo_move_to(pdf->cr, x, y);
    pango_cairo_show_layout(pdf->cr, layout);
    g_object_unref(layout);
}

double pdf_put(struct pdf *pdf, double x, double y, double width, const char *text, const struct pdf_style *style,
               bool right)
{
    PangoLayout *layout = pdf_layout(pdf, text, style, width);
    pdf_keep_within(layout, pdf_most_of_a_cell());
    if (right) pango_layout_set_alignment(layout, PANGO_ALIGN_RIGHT);
    pdf_color(pdf, style->color);
    cairo_move_to(pdf->cr, x, y);
    pango_cairo_show_layout(pdf->cr, layout);
    const double height = pdf_layout_height(layout);
    g_object_unref(layout);
    return height;
}

void pdf_paragraph(struct pdf *pdf, double indent, const char *text, const struct pdf_style *style)
{
    PangoLayout *layout = pdf_layout(pdf, text, style, pdf_width() - indent);
    PangoLayoutIter *at = pango_layout_get_iter(layout);
    do {
        PangoRectangle line;
        pango_layout_iter_get_line_extents(at, NULL, &line);
        const double height = (double)line.height / PANGO_SCALE;
        const double base = (double)(pango_layout_iter_get_baseline(at) - line.y) / PANGO_SCALE;
        pdf_need(pdf, height);
        pdf_color(pdf, style->color);
        cairo_move_to(pdf->cr, pdf_left() + indent + (double)line.x / PANGO_SCALE, pdf->y + base);
        pango_cairo_show_layout_line(pdf->cr, pango_layout_iter_get_line_readonly(at));
        pdf->y += height;
    } while (pango_layout_iter_next_line(at));
    pango_layout_iter_free(at);
    g_object_unref(layout);
}
