/* Words on pages. */
#include "report/links.h"
#include "report/pdf/pdf.h"

#include <string.h>

#define FAMILY "Open Sans, DejaVu Sans"
enum { LINE = 200 }; /* pt, of running text; cells are narrower */
const struct pdf_style pdf_body = {9.5, PDF_REGULAR, GW_INK, FAMILY, false};
const struct pdf_style pdf_small = {8, PDF_REGULAR, GW_INK, FAMILY, false};

static void add_attribute(PangoAttrList *list, PangoAttribute *attribute, size_t from, size_t to)
{
    attribute->start_index = (guint)from;
    attribute->end_index = (guint)to;
    pango_attr_list_insert(list, attribute);
}

/* What leads somewhere is told by its color, as on the screen. */
static void color_links(const struct pdf *pdf, PangoAttrList *list, const char *text)
{
    static const guint16 RED = 0x1b1b, GREEN = 0x4f4f, BLUE = 0x8f8f;
    struct gw_reference to;
    for (size_t at = 0; gw_next_reference(&to, text, at, pdf->derivations); at = to.end)
        add_attribute(list, pango_attr_foreground_new(RED, GREEN, BLUE), to.at, to.end);
}

/* A figure and its unit, or another short word after it, stay on one line. */
static void keep_units(PangoAttrList *list, const char *text)
{
    enum { SHORT = 4 };
    for (size_t i = 1; text[i - 1] && text[i]; i++)
        if (text[i] == ' ' && g_ascii_isdigit(text[i - 1]) && strcspn(text + i + 1, " ,;:.)") <= SHORT)
            add_attribute(list, pango_attr_allow_breaks_new(FALSE), i - 1, i + 2);
}

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
    const char *shown = pango_layout_get_text(layout);
    PangoAttrList *list = pango_attr_list_new();
    color_links(pdf, list, shown);
    if (width > LINE) keep_units(list, shown);
    pango_layout_set_attributes(layout, list);
    pango_attr_list_unref(list);
    return layout;
}

/* A rectangle on the page, whatever the drawing in which it lies is scaled by. */
static void link_to(struct pdf *pdf, long number, double x, double y, double width, double height)
{
    struct gw_text said;
    const double numbers[] = {x, y, width, height};
    gw_text_init(&said, pdf->arena);
    gw_text_addf(&said, "dest='D%ld' rect=[", number);
    for (size_t i = 0; i < 4; i++) {
        if (i) gw_text_add(&said, " ");
        gw_text_fixed(&said, numbers[i], 1);
    }
    gw_text_add(&said, "]");
    cairo_tag_begin(pdf->cr, CAIRO_TAG_LINK, said.at);
    cairo_tag_end(pdf->cr, CAIRO_TAG_LINK);
}

/* Links of one line, whose upper left corner is at x, y. */
static void line_links(struct pdf *pdf, const char *text, PangoLayoutLine *line, double x, double y, double height)
{
    struct gw_reference to;
    const size_t begin = (size_t)line->start_index, end = begin + (size_t)line->length;
    for (size_t at = begin; at < end && gw_next_reference(&to, text, at, pdf->derivations); at = to.end) {
        int left, right;
        if (to.at >= end) return;
        pango_layout_line_index_to_x(line, (int)to.at, FALSE, &left);
        pango_layout_line_index_to_x(line, (int)to.end, FALSE, &right);
        double x0 = x + (double)left / PANGO_SCALE, y0 = y, width = (double)(right - left) / PANGO_SCALE, high = height;
        cairo_user_to_device(pdf->cr, &x0, &y0);
        cairo_user_to_device_distance(pdf->cr, &width, &high);
        link_to(pdf, to.number, x0, y0, width, high);
    }
}

void pdf_links(struct pdf *pdf, PangoLayout *layout, double x, double y)
{
    const char *text = pango_layout_get_text(layout);
    struct gw_reference any;
    if (!pdf->bookmarks || !gw_next_reference(&any, text, 0, pdf->derivations)) return;
    PangoLayoutIter *at = pango_layout_get_iter(layout);
    do {
        PangoRectangle line;
        pango_layout_iter_get_line_extents(at, NULL, &line);
        line_links(pdf, text, pango_layout_iter_get_line_readonly(at), x + (double)line.x / PANGO_SCALE,
                   y + (double)line.y / PANGO_SCALE, (double)line.height / PANGO_SCALE);
    } while (pango_layout_iter_next_line(at));
    pango_layout_iter_free(at);
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

double pdf_text_height(struct pdf *pdf, const char *text, const struct pdf_style *style)
{
    return pdf_height_within(pdf, text, style, pdf_width());
}

double pdf_height_within(struct pdf *pdf, const char *text, const struct pdf_style *style, double width)
{
    PangoLayout *layout = pdf_layout(pdf, text, style, width);
    const double height = pdf_layout_height(layout);
    g_object_unref(layout);
    return height;
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
    pdf_links(pdf, layout, x, y);
    const double height = pdf_layout_height(layout);
    g_object_unref(layout);
    return height;
}

enum { SHORT = 4 }; /* lines */

void pdf_paragraph(struct pdf *pdf, double indent, const char *text, const struct pdf_style *style)
{
    PangoLayout *layout = pdf_layout(pdf, text, style, pdf_width() - indent);
    PangoLayoutIter *at = pango_layout_get_iter(layout);
    /* a short one is not parted, so that no line of it stands alone */
    if (pango_layout_get_line_count(layout) <= SHORT) pdf_need(pdf, pdf_layout_height(layout));
    do {
        PangoRectangle line;
        pango_layout_iter_get_line_extents(at, NULL, &line);
        const double height = (double)line.height / PANGO_SCALE;
        const double base = (double)(pango_layout_iter_get_baseline(at) - line.y) / PANGO_SCALE;
        pdf_need(pdf, height);
        pdf_color(pdf, style->color);
        cairo_move_to(pdf->cr, pdf_left() + indent + (double)line.x / PANGO_SCALE, pdf->y + base);
        pango_cairo_show_layout_line(pdf->cr, pango_layout_iter_get_line_readonly(at));
        if (pdf->bookmarks)
            line_links(pdf, pango_layout_get_text(layout), pango_layout_iter_get_line_readonly(at),
                       pdf_left() + indent + (double)line.x / PANGO_SCALE, pdf->y, height);
        pdf->y += height;
    } while (pango_layout_iter_next_line(at));
    pango_layout_iter_free(at);
    g_object_unref(layout);
}
