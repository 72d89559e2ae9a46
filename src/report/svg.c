/* SVG text: the page, shapes, words. Plots: plot.c. */
#include "galeward/svg.h"

#include <math.h>
#include <string.h>

static const char *const FONTS = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif";
static const double LEADING = 1.35; /* line distance over font size */

/* To a tenth of a pixel, without a needless ".0". */
static void put(struct gw_svg *svg, double value)
{
    char out[GW_NUMBER_SIZE];
    size_t length = gw_print_fixed(out, value, 1);
    if (length > 2 && memcmp(out + length - 2, ".0", 2) == 0) length -= 2;
    gw_text_bytes(svg->out, out, length);
}

static void attribute(struct gw_svg *svg, const char *name, double value)
{
    gw_text_addf(svg->out, " %s=\"", name);
    put(svg, value);
    gw_text_add(svg->out, "\"");
}

static void put_point(struct gw_svg *svg, struct gw_point p)
{
    put(svg, p.x);
    gw_text_add(svg->out, ",");
    put(svg, p.y);
}

static void words(struct gw_svg *svg, const char *text)
{
    for (; *text; text++) {
        const unsigned char c = (unsigned char)*text;
        if (c == '<') gw_text_add(svg->out, "&lt;");
        else if (c == '>') gw_text_add(svg->out, "&gt;");
        else if (c == '&') gw_text_add(svg->out, "&amp;");
        else if (c == '"') gw_text_add(svg->out, "&quot;");
        else if (c < ' ' && c != '\t' && c != '\n') gw_text_add(svg->out, "\xEF\xBF\xBD");
        else gw_text_bytes(svg->out, text, 1);
    }
}

static void look_of(struct gw_svg *svg, const struct gw_svg_look *look)
{
    gw_text_addf(svg->out, " fill=\"%s\"", look->fill ? look->fill : "none");
    if (!look->line) return;
    gw_text_addf(svg->out, " stroke=\"%s\" stroke-width=\"", look->line);
    gw_text_number(svg->out, look->width, 3);
    gw_text_add(svg->out, "\"");
    if (look->dashes) gw_text_addf(svg->out, " stroke-dasharray=\"%s\"", look->dashes);
}

void gw_svg_open(struct gw_svg *svg, struct gw_text *out, double width, double height, const char *title,
                 const char *description)
{
    *svg = (struct gw_svg){out, width, height, 0};
    gw_text_add(out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\"");
    attribute(svg, "width", width);
    attribute(svg, "height", height);
    gw_text_add(out, " viewBox=\"0 0 ");
    put(svg, width);
    gw_text_add(out, " ");
    put(svg, height);
    gw_text_addf(out, "\" role=\"img\" aria-labelledby=\"title desc\" font-family=\"%s\">\n<title id=\"title\">",
                 FONTS);
    words(svg, title);
    gw_text_add(out, "</title>\n<desc id=\"desc\">");
    words(svg, description);
    gw_text_add(out, "</desc>\n");
    gw_svg_rectangle(svg, 0, 0, width, height, &(struct gw_svg_look){.fill = GW_SVG_PAPER});
}

void gw_svg_close(struct gw_svg *svg) { gw_text_add(svg->out, "</svg>\n"); }

static void end(struct gw_svg *svg, const struct gw_svg_look *look)
{
    look_of(svg, look);
    gw_text_add(svg->out, "/>\n");
}

void gw_svg_line(struct gw_svg *svg, struct gw_point from, struct gw_point to, const struct gw_svg_look *look)
{
    gw_text_add(svg->out, "<line");
    attribute(svg, "x1", from.x);
    attribute(svg, "y1", from.y);
    attribute(svg, "x2", to.x);
    attribute(svg, "y2", to.y);
    end(svg, look);
}

static void point_list(struct gw_svg *svg, const char *element, const struct gw_point *points, size_t n,
                       const struct gw_svg_look *look)
{
    gw_text_addf(svg->out, "<%s points=\"", element);
    for (size_t i = 0; i < n; i++) {
        if (i) gw_text_add(svg->out, " ");
        put_point(svg, points[i]);
    }
    gw_text_add(svg->out, "\"");
    if (look->line) gw_text_add(svg->out, " stroke-linejoin=\"round\"");
    end(svg, look);
}

void gw_svg_polyline(struct gw_svg *svg, const struct gw_point *points, size_t n, const struct gw_svg_look *look)
{
    point_list(svg, "polyline", points, n, look);
}

void gw_svg_polygon(struct gw_svg *svg, const struct gw_point *points, size_t n, const struct gw_svg_look *look)
{
    point_list(svg, "polygon", points, n, look);
}

void gw_svg_rectangle(struct gw_svg *svg, double left, double top, double width, double height,
                      const struct gw_svg_look *look)
{
    gw_text_add(svg->out, "<rect");
    attribute(svg, "x", left);
    attribute(svg, "y", top);
    attribute(svg, "width", width);
    attribute(svg, "height", height);
    end(svg, look);
}

void gw_svg_circle(struct gw_svg *svg, struct gw_point center, double radius, const struct gw_svg_look *look)
{
    gw_text_add(svg->out, "<circle");
    attribute(svg, "cx", center.x);
    attribute(svg, "cy", center.y);
    attribute(svg, "r", radius);
    end(svg, look);
}

void gw_svg_shape_open(struct gw_svg *svg, const struct gw_svg_look *look)
{
    gw_text_add(svg->out, "<path fill-rule=\"evenodd\" stroke-linejoin=\"round\"");
    look_of(svg, look);
    gw_text_add(svg->out, " d=\"");
}

void gw_svg_shape_ring(struct gw_svg *svg, const struct gw_point *points, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        gw_text_add(svg->out, i ? " " : "M");
        put_point(svg, points[i]);
    }
    if (n) gw_text_add(svg->out, "Z");
}

void gw_svg_shape_close(struct gw_svg *svg) { gw_text_add(svg->out, "\"/>\n"); }

void gw_svg_clip_open(struct gw_svg *svg, double left, double top, double width, double height)
{
    gw_text_addf(svg->out, "<clipPath id=\"clip%d\">", ++svg->clips);
    gw_svg_rectangle(svg, left, top, width, height, &(struct gw_svg_look){.fill = GW_SVG_INK});
    gw_text_addf(svg->out, "</clipPath>\n<g clip-path=\"url(#clip%d)\">\n", svg->clips);
}

void gw_svg_clip_close(struct gw_svg *svg) { gw_text_add(svg->out, "</g>\n"); }

/* Mean widths of a usual sans-serif's narrow, plain and wide characters, in its size. */
static double width_of(char c)
{
    if (strchr(" .,:;'|!()[]ijlIft-/r", c)) return 0.35;
    if (strchr("mwMW%@", c)) return 0.92;
    return c >= 'A' && c <= 'Z' ? 0.7 : 0.57;
}

static double span_width(const char *text, size_t length, const struct gw_svg_font *font)
{
    double sum = 0;
    for (size_t i = 0; i < length; i++)
        if (((unsigned char)text[i] & 0xC0) != 0x80) sum += width_of(text[i]);
    return sum * font->size * (font->bold ? 1.06 : 1);
}

double gw_svg_text_width(const char *text, const struct gw_svg_font *font)
{
    return span_width(text, strlen(text), font);
}

/* Font sizes leave descenders and capitals this far from the base line. */
static const double ASCENT = 0.85, DESCENT = 0.27, PLATE_MARGIN = 2;

static void plate_behind(struct gw_svg *svg, struct gw_point at, const struct gw_svg_font *font, const char *text)
{
    const double width = gw_svg_text_width(text, font) + 2 * PLATE_MARGIN, size = font->size;
    const double back = font->anchor == GW_SVG_START ? PLATE_MARGIN : font->anchor == GW_SVG_MIDDLE ? width / 2 : width;
    gw_text_add(svg->out, "<g fill-opacity=\"0.85\">");
    gw_svg_rectangle(svg, at.x - back, at.y - ASCENT * size, width, (ASCENT + DESCENT) * size,
                     &(struct gw_svg_look){.fill = GW_SVG_PAPER});
    gw_text_add(svg->out, "</g>\n");
}

void gw_svg_text(struct gw_svg *svg, struct gw_point at, const struct gw_svg_font *font, const char *text)
{
    static const char *const anchors[] = {"start", "middle", "end"};
    if (font->plate && !font->upward) plate_behind(svg, at, font, text);
    gw_text_add(svg->out, "<text");
    attribute(svg, "x", at.x);
    attribute(svg, "y", at.y);
    attribute(svg, "font-size", font->size);
    gw_text_addf(svg->out, " fill=\"%s\"", font->color ? font->color : GW_SVG_INK);
    if (font->anchor) gw_text_addf(svg->out, " text-anchor=\"%s\"", anchors[font->anchor]);
    if (font->bold) gw_text_add(svg->out, " font-weight=\"bold\"");
    if (font->upward) {
        gw_text_add(svg->out, " transform=\"rotate(-90 ");
        put_point(svg, at);
        gw_text_add(svg->out, ")\"");
    }
    gw_text_add(svg->out, ">");
    words(svg, text);
    gw_text_add(svg->out, "</text>\n");
}

/* Bytes of the first line: whole words as long as they fit, one word at least. */
static size_t line_length(const char *text, double width, const struct gw_svg_font *font)
{
    size_t fits = strcspn(text, " ");
    for (;;) {
        size_t next = fits + strspn(text + fits, " ");
        if (!text[next]) return fits;
        next += strcspn(text + next, " ");
        if (span_width(text, next, font) > width) return fits;
        fits = next;
    }
}

double gw_svg_paragraph(struct gw_svg *svg, struct gw_point at, double width, const struct gw_svg_font *font,
                        const char *text)
{
    while (*text) {
        size_t length = line_length(text, width, font);
        if (svg) gw_svg_text(svg, at, font, gw_strndup(svg->out->arena, text, length));
        at.y += LEADING * font->size;
        text += length;
        text += strspn(text, " ");
    }
    return at.y;
}

void gw_svg_dimension(struct gw_svg *svg, struct gw_point from, struct gw_point to, const char *label)
{
    const struct gw_svg_look look = {.line = GW_SVG_SOFT, .width = 0.8};
    const bool upright = fabs(to.y - from.y) > fabs(to.x - from.x);
    const double tick = 4;
    const struct gw_svg_font font = {.size = 12, .anchor = GW_SVG_MIDDLE, .upward = upright};
    struct gw_point middle = {(from.x + to.x) / 2, (from.y + to.y) / 2};
    gw_svg_line(svg, from, to, &look);
    gw_svg_line(svg, (struct gw_point){from.x - tick, from.y + tick}, (struct gw_point){from.x + tick, from.y - tick},
                &look);
    gw_svg_line(svg, (struct gw_point){to.x - tick, to.y + tick}, (struct gw_point){to.x + tick, to.y - tick}, &look);
    if (upright) middle.x -= 5;
    else middle.y -= 5;
    gw_svg_text(svg, middle, &font, label);
}

const char *gw_svg_shade(char out[GW_SVG_COLOR_SIZE], enum gw_svg_scale scale, double fraction)
{
    static const int STOPS[][3][3] = {
        [GW_SVG_BLUES] = {{240, 246, 249}, {124, 176, 209}, {22, 66, 112}},
        [GW_SVG_BROWNS] = {{252, 246, 236}, {231, 164, 97}, {117, 47, 22}},
    };
    static const char digits[] = "0123456789abcdef";
    const double at = 2 * fmin(fmax(fraction, 0), 1);
    const int part = at >= 1;
    out[0] = '#';
    for (int c = 0; c < 3; c++) {
        const int from = STOPS[scale][part][c], to = STOPS[scale][part + 1][c];
        const int value = from + (int)lround((to - from) * (at - part));
        out[1 + 2 * c] = digits[value / 16];
        out[2 + 2 * c] = digits[value % 16];
    }
    out[7] = '\0';
    return out;
}
