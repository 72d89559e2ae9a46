/* The list of what stands on a page; where labels have room. Plots: plot.c. */
#include "galeward/canvas.h"
#include "report/long_names.h"

#include "galeward/table.h"
#include "tables_data.h"

#include <math.h>
#include <string.h>

static const double LEADING = 1.35; /* line distance over font size */
/* Letters lie within this of the base line, parts of their size; plates stand so far off. */
static const double ASCENT = 0.8, DESCENT = 0.25, PLATE_MARGIN = 2;

void gw_canvas_init(struct gw_canvas *canvas, struct gw_arena *arena)
{
    *canvas = (struct gw_canvas){.arena = arena, .title = "", .description = ""};
}

static struct gw_drawn *add(struct gw_canvas *canvas, enum gw_shape_kind kind, const struct gw_look *look)
{
    canvas->shapes = gw_grow(canvas->arena, canvas->shapes, canvas->n, &canvas->capacity, sizeof *canvas->shapes);
    struct gw_drawn *shape = &canvas->shapes[canvas->n++];
    *shape = (struct gw_drawn){.kind = kind};
    if (look) shape->look = *look;
    return shape;
}

static struct gw_point *copied(struct gw_arena *arena, const struct gw_point *points, size_t n)
{
    struct gw_point *copy = gw_alloc(arena, n, sizeof *copy);
    if (n) memcpy(copy, points, n * sizeof *copy);
    return copy;
}

static struct gw_drawn *add_points(struct gw_canvas *canvas, enum gw_shape_kind kind, const struct gw_point *points,
                                   size_t n, const struct gw_look *look)
{
    struct gw_drawn *shape = add(canvas, kind, look);
    shape->points = copied(canvas->arena, points, n);
    shape->n = n;
    return shape;
}

void gw_canvas_line(struct gw_canvas *canvas, struct gw_point from, struct gw_point to, const struct gw_look *look)
{
    add_points(canvas, GW_SHAPE_POLYLINE, (const struct gw_point[]){from, to}, 2, look);
}

void gw_canvas_polyline(struct gw_canvas *canvas, const struct gw_point *points, size_t n, const struct gw_look *look)
{
    add_points(canvas, GW_SHAPE_POLYLINE, points, n, look);
}

void gw_canvas_polygon(struct gw_canvas *canvas, const struct gw_point *points, size_t n, const struct gw_look *look)
{
    add_points(canvas, GW_SHAPE_POLYGON, points, n, look);
}

void gw_canvas_rectangle(struct gw_canvas *canvas, const struct gw_box *box, const struct gw_look *look)
{
    const struct gw_point corners[] = {{box->left, box->top}, {box->right, box->bottom}};
    add_points(canvas, GW_SHAPE_RECTANGLE, corners, 2, look);
}

void gw_canvas_circle(struct gw_canvas *canvas, struct gw_point center, double radius, const struct gw_look *look)
{
    add_points(canvas, GW_SHAPE_CIRCLE, &center, 1, look)->radius = radius;
}

void gw_canvas_outlines(struct gw_canvas *canvas, const struct gw_outline *outlines, size_t n,
                        const struct gw_look *look)
{
    struct gw_outline *copy = gw_alloc(canvas->arena, n, sizeof *copy);
    struct gw_drawn *shape = add(canvas, GW_SHAPE_OUTLINES, look);
    for (size_t i = 0; i < n; i++)
        copy[i] = (struct gw_outline){copied(canvas->arena, outlines[i].points, outlines[i].n), outlines[i].n};
    shape->outlines = copy;
    shape->n_outlines = n;
}

void gw_canvas_clip(struct gw_canvas *canvas, const struct gw_box *box)
{
    add(canvas, GW_SHAPE_CLIP, NULL)->box = *box;
}

void gw_canvas_clip_end(struct gw_canvas *canvas) { add(canvas, GW_SHAPE_CLIP_END, NULL); }

void gw_canvas_keep(struct gw_canvas *canvas, const struct gw_box *box)
{
    add(canvas, GW_SHAPE_KEPT, NULL)->box = *box;
}

/* Letters
 * -----------------------------------------------------------------------------------------------------------------
 */

/* Bytes of the character at `text`; what is no UTF-8 counts singly. */
static size_t character(const char *text, size_t length, unsigned long *code)
{
    const size_t used = gw_utf8_read(text, length, code);
    if (used) return used;
    *code = 0xFFFD;
    return 1;
}

static double letter_width(const struct gw_letter_width *row, unsigned long code)
{
    enum { ASCII = 0x20, LATIN = 0xA0 };
    if (code >= ASCII && code - ASCII < row->n_ascii) return row->ascii[code - ASCII];
    if (code >= LATIN && code - LATIN < row->n_latin) return row->latin[code - LATIN];
    return row->other;
}

static double span_width(const struct gw_lettering *lettering, const char *text, size_t length)
{
    const double THOUSAND = 1000;
    const struct gw_letter_width *row = &gw_tables_standard()->letter_width[lettering->bold];
    double sum = 0;
    for (size_t i = 0; i < length;) {
        unsigned long code;
        i += character(text + i, length - i, &code);
        sum += letter_width(row, code);
    }
    return sum * lettering->size / THOUSAND;
}

double gw_lettering_width(const struct gw_lettering *lettering, const char *text)
{
    return span_width(lettering, text, strlen(text));
}

struct gw_box gw_lettering_box(const struct gw_lettering *lettering, struct gw_point at, const char *text)
{
    const double width = gw_lettering_width(lettering, text), size = lettering->size;
    const double margin = lettering->plate ? PLATE_MARGIN : 0;
    const double before = margin + (lettering->align == GW_ALIGN_START    ? 0
                                    : lettering->align == GW_ALIGN_MIDDLE ? width / 2
                                                                          : width);
    const double after = width + 2 * margin - before, above = ASCENT * size + margin, below = DESCENT * size + margin;
    if (lettering->upward) return (struct gw_box){at.x - above, at.y - after, at.x + below, at.y + before};
    return (struct gw_box){at.x - before, at.y - above, at.x + after, at.y + below};
}

void gw_canvas_text(struct gw_canvas *canvas, struct gw_point at, const struct gw_lettering *lettering,
                    const char *text)
{
    const char *said = gw_shortened(canvas->arena, canvas->long_names, text);
    const char *safe = gw_safe(canvas->arena, gw_strdup(canvas->arena, said));
    const struct gw_box box = gw_lettering_box(lettering, at, safe);
    if (!*text) return;
    if (lettering->plate) gw_canvas_rectangle(canvas, &box, &(struct gw_look){.fill = GW_PAPER});
    struct gw_drawn *shape = add_points(canvas, GW_SHAPE_TEXT, &at, 1, NULL);
    shape->lettering = *lettering;
    shape->text = safe;
    shape->box = box;
}

/* Bytes of a word that fit, one character at least. */
static size_t word_part(const struct gw_lettering *lettering, const char *text, size_t length, double width)
{
    size_t fits = 0;
    while (fits < length) {
        unsigned long code;
        const size_t next = fits + character(text + fits, length - fits, &code);
        if (fits && span_width(lettering, text, next) > width) return fits;
        fits = next;
    }
    return length;
}

/* Bytes of the first line: whole words as long as they fit. */
static size_t line_length(const struct gw_lettering *lettering, const char *text, double width)
{
    size_t fits = strcspn(text, " ");
    if (span_width(lettering, text, fits) > width) return word_part(lettering, text, fits, width);
    for (;;) {
        size_t next = fits + strspn(text + fits, " ");
        if (!text[next]) return fits;
        next += strcspn(text + next, " ");
        if (span_width(lettering, text, next) > width) return fits;
        fits = next;
    }
}

double gw_canvas_paragraph(struct gw_canvas *canvas, struct gw_point at, double width,
                           const struct gw_lettering *lettering, const char *text)
{
    text = gw_shortened(canvas->arena, canvas->long_names, text);
    while (*text) {
        const size_t length = line_length(lettering, text, width);
        gw_canvas_text(canvas, at, lettering, gw_strndup(canvas->arena, text, length));
        at.y += LEADING * lettering->size;
        text += length;
        text += strspn(text, " ");
    }
    return at.y;
}

/* Places
 * ------------------------------------------------------------------------------------------------------------------
 */

static bool overlap(const struct gw_box *a, const struct gw_box *b)
{
    return a->left < b->right && b->left < a->right && a->top < b->bottom && b->top < a->bottom;
}

bool gw_canvas_is_free(const struct gw_canvas *canvas, const struct gw_box *box)
{
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *shape = &canvas->shapes[i];
        const bool takes = shape->kind == GW_SHAPE_TEXT || shape->kind == GW_SHAPE_KEPT;
        if (takes && overlap(&shape->box, box)) return false;
    }
    return true;
}

static const double AROUND = 2; /* half a millimeter beside a label */

bool gw_canvas_label(struct gw_canvas *canvas, struct gw_point at, double step, int tries, const struct gw_box *within,
                     const struct gw_lettering *lettering, const char *text)
{
    struct gw_box box = gw_lettering_box(lettering, at, text);
    if (box.right - box.left > within->right - within->left) return false;
    at.x += fmax(within->left - box.left, 0) - fmax(box.right - within->right, 0);
    const double first = at.y;
    for (int i = 0; i < tries; i++) {
        at.y = first + i * step;
        box = gw_lettering_box(lettering, at, text);
        const struct gw_box room = {box.left - AROUND, box.top, box.right + AROUND, box.bottom};
        if (box.top < within->top || box.bottom > within->bottom || !gw_canvas_is_free(canvas, &room)) continue;
        gw_canvas_text(canvas, at, lettering, text);
        return true;
    }
    return false;
}

/* Ticks stand at 45 degrees. */
static void dimension_lines(struct gw_canvas *canvas, struct gw_point from, struct gw_point to)
{
    const double tick = 3;
    const struct gw_look line = {.line = GW_INK, .width = GW_LINE_THIN};
    const struct gw_look slant = {.line = GW_INK, .width = GW_LINE_MEDIUM};
    gw_canvas_line(canvas, from, to, &line);
    gw_canvas_line(canvas, (struct gw_point){from.x - tick, from.y + tick},
                   (struct gw_point){from.x + tick, from.y - tick}, &slant);
    gw_canvas_line(canvas, (struct gw_point){to.x - tick, to.y + tick}, (struct gw_point){to.x + tick, to.y - tick},
                   &slant);
}

bool gw_canvas_dimension(struct gw_canvas *canvas, struct gw_point from, struct gw_point to, const char *label)
{
    const double off = 5;
    const bool upright = fabs(to.y - from.y) > fabs(to.x - from.x);
    const struct gw_lettering font = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_MIDDLE, .upward = upright};
    struct gw_point middle = {(from.x + to.x) / 2, (from.y + to.y) / 2};
    dimension_lines(canvas, from, to);
    if (upright) middle.x -= off;
    else middle.y -= off;
    const struct gw_box box = gw_lettering_box(&font, middle, label);
    const double room = upright ? from.y - to.y : to.x - from.x, wide = gw_lettering_width(&font, label);
    if (wide > room || !gw_canvas_is_free(canvas, &box)) return false;
    gw_canvas_text(canvas, middle, &font, label);
    return true;
}

const char *gw_canvas_gray(struct gw_arena *arena, double fraction)
{
    static const int PALE[] = {255, 255, 255}, DARK[] = {176, 183, 191}; /* ink on the darker: 8.7 */
    static const char digits[] = "0123456789abcdef";
    char out[8] = "#";
    for (int c = 0; c < 3; c++) {
        const int value = PALE[c] + (int)lround((DARK[c] - PALE[c]) * fmin(fmax(fraction, 0), 1));
        out[1 + 2 * c] = digits[value / 16];
        out[2 + 2 * c] = digits[value % 16];
    }
    return gw_strdup(arena, out);
}

void gw_canvas_tell(struct gw_canvas *canvas, const struct gw_canvas *swatch, const char *words)
{
    canvas->told = gw_grow(canvas->arena, canvas->told, canvas->n_told, &canvas->told_capacity, sizeof *canvas->told);
    canvas->told[canvas->n_told++] = (struct gw_told){swatch, gw_strndup(canvas->arena, words, strlen(words))};
}
