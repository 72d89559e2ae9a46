/* A canvas as SVG text. */
#include "galeward/svg.h"

#include "report/markup.h"

#include <string.h>

static const char *const FONTS = "'Open Sans', 'Noto Sans', 'Segoe UI', Roboto, Arial, 'DejaVu Sans', sans-serif";

/* To a tenth of a pixel, without a needless ".0". */
static void put(struct gw_text *out, double value)
{
    char number[GW_NUMBER_SIZE];
    size_t length = gw_print_fixed(number, value, 1);
    if (length > 2 && memcmp(number + length - 2, ".0", 2) == 0) length -= 2;
    gw_text_bytes(out, number, length);
}

static void attribute(struct gw_text *out, const char *name, double value)
{
    gw_text_addf(out, " %s=\"", name);
    put(out, value);
    gw_text_add(out, "\"");
}

static void put_points(struct gw_text *out, const struct gw_point *points, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        if (i) gw_text_add(out, " ");
        put(out, points[i].x);
        gw_text_add(out, ",");
        put(out, points[i].y);
    }
}

static void look_of(struct gw_text *out, const struct gw_look *look)
{
    gw_text_addf(out, " fill=\"%s\"", look->fill ? look->fill : "none");
    if (!look->line) return;
    gw_text_addf(out, " stroke=\"%s\" stroke-width=\"", look->line);
    gw_text_number(out, look->width, 3);
    gw_text_add(out, "\"");
    if (look->dashes) gw_text_addf(out, " stroke-dasharray=\"%s\"", look->dashes);
}

static void end(struct gw_text *out, const struct gw_look *look)
{
    look_of(out, look);
    gw_text_add(out, "/>\n");
}

static void line(struct gw_text *out, const struct gw_drawn *shape)
{
    gw_text_add(out, "<line");
    attribute(out, "x1", shape->points[0].x);
    attribute(out, "y1", shape->points[0].y);
    attribute(out, "x2", shape->points[1].x);
    attribute(out, "y2", shape->points[1].y);
    end(out, &shape->look);
}

static void point_list(struct gw_text *out, const struct gw_drawn *shape)
{
    gw_text_addf(out, "<%s points=\"", shape->kind == GW_SHAPE_POLYGON ? "polygon" : "polyline");
    put_points(out, shape->points, shape->n);
    gw_text_add(out, shape->look.line ? "\" stroke-linejoin=\"round\"" : "\"");
    end(out, &shape->look);
}

static void rectangle(struct gw_text *out, const struct gw_box *box, const struct gw_look *look)
{
    gw_text_add(out, "<rect");
    attribute(out, "x", box->left);
    attribute(out, "y", box->top);
    attribute(out, "width", box->right - box->left);
    attribute(out, "height", box->bottom - box->top);
    end(out, look);
}

static void circle(struct gw_text *out, const struct gw_drawn *shape)
{
    gw_text_add(out, "<circle");
    attribute(out, "cx", shape->points[0].x);
    attribute(out, "cy", shape->points[0].y);
    attribute(out, "r", shape->radius);
    end(out, &shape->look);
}

static void outlines(struct gw_text *out, const struct gw_drawn *shape)
{
    gw_text_add(out, "<path fill-rule=\"evenodd\" stroke-linejoin=\"round\"");
    look_of(out, &shape->look);
    gw_text_add(out, " d=\"");
    for (size_t i = 0; i < shape->n_outlines; i++) {
        if (!shape->outlines[i].n) continue;
        gw_text_add(out, "M");
        put_points(out, shape->outlines[i].points, shape->outlines[i].n);
        gw_text_add(out, "Z");
    }
    gw_text_add(out, "\"/>\n");
}

static void clip(struct gw_text *out, const struct gw_drawn *shape, const char *prefix, int number)
{
    gw_text_addf(out, "<clipPath id=\"%sclip%d\">", prefix, number);
    rectangle(out, &shape->box, &(struct gw_look){.fill = GW_INK});
    gw_text_addf(out, "</clipPath>\n<g clip-path=\"url(#%sclip%d)\">\n", prefix, number);
}

/* Patterns ---------------------------------------------------------------------------------------------------------
 */

static void stroke(struct gw_text *out, const struct gw_pattern *p, const char *path)
{
    gw_text_addf(out, "<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"", path, p->color);
    gw_text_number(out, p->width, 3);
    gw_text_add(out, "\"/>");
}

static void define_pattern(struct gw_text *out, struct gw_arena *arena, const struct gw_pattern *p, const char *prefix,
                           size_t number)
{
    struct gw_text size, half;
    gw_text_init(&size, arena);
    gw_text_init(&half, arena);
    gw_text_number(&size, p->spacing, 4);
    gw_text_number(&half, p->spacing / 2, 4);
    gw_text_addf(out, "<pattern id=\"%sfill%zu\" patternUnits=\"userSpaceOnUse\" width=\"%s\" height=\"%s\"", prefix,
                 number, size.at, size.at);
    gw_text_add(out, " patternTransform=\"rotate(");
    gw_text_number(out, -p->angle, 4);
    gw_text_add(out, ")\">");
    if (p->dots) {
        gw_text_addf(out, "<circle cx=\"%s\" cy=\"%s\" fill=\"%s\" r=\"", half.at, half.at, p->color);
        gw_text_number(out, p->width / 2, 3);
        gw_text_add(out, "\"/>");
    } else {
        stroke(out, p, gw_format(arena, "M0,%sH%s", half.at, size.at));
        if (p->crossed) stroke(out, p, gw_format(arena, "M%s,0V%s", half.at, size.at));
    }
    gw_text_add(out, "</pattern>\n");
}

/* The first shape that has the same. */
static size_t pattern_of(const struct gw_canvas *canvas, size_t shape)
{
    size_t i = 0;
    while (canvas->shapes[i].look.pattern != canvas->shapes[shape].look.pattern) i++;
    return i;
}

static void define_patterns(struct gw_text *out, const struct gw_canvas *canvas, const char *prefix)
{
    bool any = false;
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_pattern *p = canvas->shapes[i].look.pattern;
        if (!p || pattern_of(canvas, i) != i) continue;
        if (!any) gw_text_add(out, "<defs>");
        any = true;
        define_pattern(out, canvas->arena, p, prefix, i);
    }
    if (any) gw_text_add(out, "</defs>\n");
}

static void text(struct gw_text *out, const struct gw_drawn *shape)
{
    static const char *const aligns[] = {"start", "middle", "end"};
    const struct gw_lettering *font = &shape->lettering;
    gw_text_add(out, "<text");
    attribute(out, "x", shape->points[0].x);
    attribute(out, "y", shape->points[0].y);
    attribute(out, "font-size", font->size);
    gw_text_addf(out, " fill=\"%s\"", font->color ? font->color : GW_INK);
    if (font->align) gw_text_addf(out, " text-anchor=\"%s\"", aligns[font->align]);
    if (font->bold) gw_text_add(out, " font-weight=\"600\"");
    if (font->upward) {
        gw_text_add(out, " transform=\"rotate(-90 ");
        put_points(out, shape->points, 1);
        gw_text_add(out, ")\"");
    }
    gw_text_add(out, ">");
    gw_markup_text(out, shape->text);
    gw_text_add(out, "</text>\n");
}

static void open_size(struct gw_text *out, const struct gw_canvas *canvas)
{
    gw_text_add(out, "<svg xmlns=\"http://www.w3.org/2000/svg\"");
    attribute(out, "width", canvas->width);
    attribute(out, "height", canvas->height);
    gw_text_add(out, " viewBox=\"0 0 ");
    put(out, canvas->width);
    gw_text_add(out, " ");
    put(out, canvas->height);
}

static void open_page(struct gw_text *out, const struct gw_canvas *canvas, const char *prefix)
{
    struct gw_arena *arena = canvas->arena;
    open_size(out, canvas);
    gw_text_addf(out,
                 "\" role=\"img\" aria-labelledby=\"%stitle %sdesc\" font-family=\"%s\" "
                 "style=\"font-variant-numeric: tabular-nums lining-nums\">\n<title id=\"%stitle\">",
                 prefix, prefix, FONTS, prefix);
    gw_markup_text(out, gw_safe(arena, canvas->title));
    gw_text_addf(out, "</title>\n<desc id=\"%sdesc\">", prefix);
    gw_markup_text(out, gw_safe(arena, canvas->description));
    gw_text_add(out, "</desc>\n");
    define_patterns(out, canvas, prefix);
    rectangle(out, &(struct gw_box){0, 0, canvas->width, canvas->height}, &(struct gw_look){.fill = GW_PAPER});
}

static void closed(struct gw_text *out, const struct gw_drawn *shape)
{
    const struct gw_point *p = shape->points;
    switch (shape->kind) {
    case GW_SHAPE_POLYGON:
        point_list(out, shape);
        break;
    case GW_SHAPE_RECTANGLE:
        rectangle(out, &(struct gw_box){p[0].x, p[0].y, p[1].x, p[1].y}, &shape->look);
        break;
    case GW_SHAPE_CIRCLE:
        circle(out, shape);
        break;
    default:
        outlines(out, shape);
        break;
    }
}

/* The fill, then the pattern upon it in the same outline. */
static void filled(struct gw_text *out, const struct gw_canvas *canvas, size_t i, const char *prefix)
{
    struct gw_drawn shape = canvas->shapes[i];
    if (shape.look.pattern) {
        struct gw_drawn under = shape;
        under.look.line = NULL;
        if (under.look.fill) closed(out, &under);
        shape.look.fill = gw_format(canvas->arena, "url(#%sfill%zu)", prefix, pattern_of(canvas, i));
    }
    closed(out, &shape);
}

static void put_shape(struct gw_text *out, const struct gw_canvas *canvas, size_t i, const char *prefix)
{
    const struct gw_drawn *shape = &canvas->shapes[i];
    switch (shape->kind) {
    case GW_SHAPE_POLYLINE:
        if (shape->n == 2) line(out, shape);
        else point_list(out, shape);
        break;
    case GW_SHAPE_TEXT:
        text(out, shape);
        break;
    case GW_SHAPE_CLIP:
        clip(out, shape, prefix, (int)i);
        break;
    case GW_SHAPE_CLIP_END:
        gw_text_add(out, "</g>\n");
        break;
    case GW_SHAPE_KEPT:
        break;
    default:
        filled(out, canvas, i, prefix);
        break;
    }
}

void gw_svg_inline(struct gw_text *out, const struct gw_canvas *canvas, const char *prefix)
{
    open_page(out, canvas, prefix);
    for (size_t i = 0; i < canvas->n; i++) put_shape(out, canvas, i, prefix);
    gw_text_add(out, "</svg>\n");
}

void gw_svg_swatch(struct gw_text *out, const struct gw_canvas *canvas, const char *prefix)
{
    open_size(out, canvas);
    gw_text_addf(out, "\" aria-hidden=\"true\" focusable=\"false\" font-family=\"%s\">\n", FONTS);
    define_patterns(out, canvas, prefix);
    for (size_t i = 0; i < canvas->n; i++) put_shape(out, canvas, i, prefix);
    gw_text_add(out, "</svg>");
}

void gw_svg_write(struct gw_text *out, const struct gw_canvas *canvas)
{
    gw_text_add(out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    gw_svg_inline(out, canvas, "");
}
