/* A canvas on a page: its shapes in their order, words as words. */
#include "report/draw/sheet.h"
#include "report/long_names.h"
#include "report/pdf/pdf.h"

#include <math.h>
#include <string.h>

static const double PI = 3.14159265358979323846;
static const double PX = 0.75; /* points a pixel */

static void path_of(cairo_t *cr, const struct gw_point *points, size_t n, bool closed)
{
    for (size_t i = 0; i < n; i++) (i ? cairo_line_to : cairo_move_to)(cr, points[i].x, points[i].y);
    if (closed) cairo_close_path(cr);
}

static void outline_of(cairo_t *cr, const struct gw_drawn *s)
{
    cairo_new_path(cr);
    switch (s->kind) {
    case GW_SHAPE_RECTANGLE:
        cairo_rectangle(cr, s->points[0].x, s->points[0].y, s->points[1].x - s->points[0].x,
                        s->points[1].y - s->points[0].y);
        return;
    case GW_SHAPE_CIRCLE:
        cairo_arc(cr, s->points[0].x, s->points[0].y, s->radius, 0, 2 * PI);
        cairo_close_path(cr);
        return;
    case GW_SHAPE_OUTLINES:
        for (size_t i = 0; i < s->n_outlines; i++) path_of(cr, s->outlines[i].points, s->outlines[i].n, true);
        return;
    default:
        path_of(cr, s->points, s->n, s->kind == GW_SHAPE_POLYGON);
        return;
    }
}

/* Lines or dots over the box of the path, cut off at it. */
static void hatch_lines(cairo_t *cr, const struct gw_pattern *p, double reach)
{
    const int n = (int)ceil(reach / p->spacing);
    for (int i = -n; i <= n; i++) {
        cairo_move_to(cr, -reach, p->spacing * i);
        cairo_line_to(cr, reach, p->spacing * i);
    }
    for (int i = -n; p->crossed && i <= n; i++) {
        cairo_move_to(cr, p->spacing * i, -reach);
        cairo_line_to(cr, p->spacing * i, reach);
    }
    cairo_stroke(cr);
}

static void hatch_dots(cairo_t *cr, const struct gw_pattern *p, double reach)
{
    const int n = (int)ceil(reach / p->spacing);
    for (int i = -n; i <= n; i++)
        for (int k = -n; k <= n; k++) {
            cairo_new_sub_path(cr);
            cairo_arc(cr, p->spacing * i, p->spacing * k, p->width / 2, 0, 2 * PI);
        }
    cairo_fill(cr);
}

static void hatch(struct pdf *pdf, const struct gw_drawn *s)
{
    const struct gw_pattern *p = s->look.pattern;
    cairo_t *cr = pdf->cr;
    double left, top, right, bottom;
    outline_of(cr, s);
    cairo_path_extents(cr, &left, &top, &right, &bottom);
    cairo_save(cr);
    cairo_clip(cr);
    cairo_translate(cr, (left + right) / 2, (top + bottom) / 2);
    cairo_rotate(cr, -p->angle * PI / 180);
    pdf_color(pdf, p->color);
    cairo_set_line_width(cr, p->width);
    const double reach = hypot(right - left, bottom - top) / 2 + p->spacing;
    (p->dots ? hatch_dots : hatch_lines)(cr, p, reach);
    cairo_restore(cr);
}

static void set_dashes(cairo_t *cr, const char *dashes)
{
    enum { MOST = 8 };
    double list[MOST];
    int n = 0;
    for (const char *at = dashes; at && *at && n < MOST;) {
        const size_t used = gw_read_number(at, strlen(at), &list[n]);
        at += used ? used : 1;
        n += used > 0;
    }
    cairo_set_dash(cr, list, n, 0);
}

static void shape(struct pdf *pdf, const struct gw_drawn *s)
{
    cairo_t *cr = pdf->cr;
    outline_of(cr, s);
    cairo_set_fill_rule(cr, CAIRO_FILL_RULE_EVEN_ODD);
    if (s->look.fill) {
        pdf_color(pdf, s->look.fill);
        cairo_fill(cr);
    }
    if (s->look.pattern) hatch(pdf, s);
    if (!s->look.line) return;
    outline_of(cr, s);
    pdf_color(pdf, s->look.line);
    cairo_set_line_width(cr, s->look.width);
    cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
    set_dashes(cr, s->look.dashes);
    cairo_stroke(cr);
    cairo_set_dash(cr, NULL, 0, 0);
}

static void words(struct pdf *pdf, const struct gw_drawn *s)
{
    const struct gw_lettering *font = &s->lettering;
    const struct pdf_style style = {font->size, font->bold ? PDF_SEMIBOLD : PDF_REGULAR,
                                    font->color ? font->color : GW_INK, NULL, false};
    PangoLayout *layout = pdf_layout(pdf, s->text, &style, 0);
    int width;
    pango_layout_get_size(layout, &width, NULL);
    const double own = (double)width / PANGO_SCALE, base = (double)pango_layout_get_baseline(layout) / PANGO_SCALE;
    const double back = font->align == GW_ALIGN_START ? 0 : font->align == GW_ALIGN_MIDDLE ? own / 2 : own;
    cairo_save(pdf->cr);
    cairo_translate(pdf->cr, s->points[0].x, s->points[0].y);
    if (font->upward) cairo_rotate(pdf->cr, -PI / 2);
    pdf_color(pdf, style.color);
    cairo_move_to(pdf->cr, -back, -base);
    pango_cairo_show_layout(pdf->cr, layout);
    pdf_links(pdf, layout, -back, -base);
    cairo_restore(pdf->cr);
    g_object_unref(layout);
}

void pdf_canvas(struct pdf *pdf, const struct gw_canvas *canvas, double x, double y, double scale)
{
    cairo_t *cr = pdf->cr;
    cairo_save(cr);
    cairo_translate(cr, x, y);
    cairo_scale(cr, scale, scale);
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *s = &canvas->shapes[i];
        if (s->kind == GW_SHAPE_KEPT) continue;
        if (s->kind == GW_SHAPE_TEXT) words(pdf, s);
        else if (s->kind == GW_SHAPE_CLIP_END) cairo_restore(cr);
        else if (s->kind == GW_SHAPE_CLIP) {
            cairo_save(cr);
            cairo_rectangle(cr, s->box.left, s->box.top, s->box.right - s->box.left, s->box.bottom - s->box.top);
            cairo_clip(cr);
        } else shape(pdf, s);
    }
    cairo_restore(cr);
}

static const double ROUNDING = 1e-6; /* pt, of what was made to fit */

/* The page has margins of its own. */
static double above(double scale) { return SHEET_MARGIN * scale * 0.8; }
static double below(double scale) { return SHEET_MARGIN * scale / 2; }
static double height_at(const struct gw_canvas *canvas, double scale)
{
    return canvas->height * scale - above(scale) - below(scale);
}

/* To scale, but within a page; on the first one a little smaller, where that keeps it there. */
static double scale_on(const struct pdf *pdf, const struct gw_canvas *canvas)
{
    const double least = 0.75, scale = fmin(PX, (pdf_bottom() - pdf_top()) / canvas->height);
    const double room = (pdf_bottom() - pdf->y) / height_at(canvas, scale);
    return pdf->page == 1 && room < 1 && room >= least ? room * scale : scale;
}

static bool has_room(const struct pdf *pdf, const struct gw_canvas *canvas)
{
    return pdf->y + height_at(canvas, scale_on(pdf, canvas)) <= pdf_bottom() + ROUNDING;
}

/* The first page has room for the small one, where the large one has none there. */
static bool draw_small(struct gw_canvas *out, struct pdf *pdf, const struct gw_block *block)
{
    if (pdf->page != 1 || pdf->small) return false;
    const bool drawn = gw_draw_figure(out, pdf->report, &block->figure, true, pdf->shown, pdf->engine) == GW_OK;
    if (!drawn || !has_room(pdf, out)) return false;
    pdf->small = block;
    return true;
}

/* To scale: the live width of a drawing's sheet is that of the page. What is higher than a page is made smaller. */
void pdf_figure(struct pdf *pdf, const struct gw_block *block)
{
    const struct gw_figure *figure = &block->figure;
    static const struct pdf_style title = {9.5, PDF_SEMIBOLD, GW_INK, NULL, false};
    struct gw_canvas canvas, small;
    if (gw_draw_figure(&canvas, pdf->report, figure, false, pdf->shown, pdf->engine) != GW_OK) {
        pdf_paragraph(pdf, 0, figure->title, &title);
        pdf_paragraph(pdf, 0, figure->alternative, &pdf_body);
        return;
    }
    if (!has_room(pdf, &canvas) && draw_small(&small, pdf, block)) canvas = small;
    const double scale = scale_on(pdf, &canvas);
    pdf_need(pdf, height_at(&canvas, scale) - ROUNDING);
    pdf_canvas(pdf, &canvas, pdf_left() - SHEET_MARGIN * scale, pdf->y - above(scale), scale);
    pdf->y += height_at(&canvas, scale) + below(scale) + 8;
}
