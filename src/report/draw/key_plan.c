/* The walls of each building from above: edge zones solid along the outline, corners by word, a ledger of all of it. */
#include "report/draw/key_plan.h"

#include "report/draw/pictures.h"
#include "report/draw/sheet.h"
#include "report/page.h"

#include <math.h>
#include <string.h>

/* Pixels: 2 mm; words beside; joined shapes at most, all and each; a number's radius. */
static const double BAND = 7.6, BESIDE = 145, HIGH = 260, LEAST_HIGH = 150, FLAG = SHEET_FLAG;
/* So far down may another shape begin, and another row beyond the first: what is higher than a page is printed smaller.
 */
static const double SHAPES_END = 560, ROWS_END = 850;
static const struct gw_lettering PLAIN = {.size = GW_LABEL_SIZE};
static const struct gw_lettering BOLD = {.size = GW_LABEL_SIZE, .bold = true};
static const struct gw_lettering LIGHT = {.size = GW_LABEL_SIZE, .color = GW_INK2};
static const struct gw_lettering HEAD_RIGHT = {.size = GW_LABEL_SIZE, .color = GW_INK2, .align = GW_ALIGN_END};
static const struct gw_lettering RIGHT = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_END};
static const struct gw_look EDGE = {.fill = GW_INK};
static const struct gw_pattern LEANS[] = {{45, 6, 0.7, GW_INK, false, false}, {-45, 6, 0.7, GW_INK, false, false}};
static const struct gw_look BEYOND = {.line = GW_INK, .width = GW_LINE_THIN, .dashes = "4 3"};

enum { TOLD = 40, ROWS = 12 }; /* walls in words; rows whatever the height */
/* A shape on the page. */
struct frame {
    struct sheet *sheet;
    const struct plan_shape *shape;
    double px;            /* a meter */
    struct gw_point zero; /* of its x = 0, y = 0 */
    struct gw_box box;    /* its reach */
};

static struct gw_point on_page(const struct frame *f, struct gw_point m)
{
    return (struct gw_point){f->zero.x + m.x * f->px, f->zero.y - m.y * f->px};
}

/* On the page: along a wall from its left end, and to its outside. */
struct ways {
    struct gw_point along, out;
    bool upright;
};
static struct ways ways_of(const struct plan_wall *w)
{
    const double dx = w->to.x - w->from.x, dy = w->to.y - w->from.y, length = hypot(dx, dy);
    const struct gw_point along = {dx / length, -dy / length};
    return (struct ways){along, {-along.y, along.x}, fabs(along.y) > 0.5};
}

static struct gw_point off(struct gw_point at, const struct ways *way, double along, double out)
{
    return (struct gw_point){at.x + way->along.x * along + way->out.x * out,
                             at.y + way->along.y * along + way->out.y * out};
}

static struct gw_box box_of(struct gw_point a, struct gw_point b)
{
    return (struct gw_box){fmin(a.x, b.x), fmin(a.y, b.y), fmax(a.x, b.x), fmax(a.y, b.y)};
}

/* Words ------------------------------------------------------------------------------------------------------------ */

const char *gw_plan_end_words(const struct sheet *sheet, const struct gw_wall_grid *g, bool left, bool meets)
{
    const double corner = left ? g->left_corner : g->right_corner;
    const char *other = left ? g->left_meets : g->right_meets;
    if (!gw_given(corner)) return (left ? g->goes_on_left : g->goes_on_right) ? "goes on" : "reentrant";
    if (corner > 0) return gw_format(sheet->arena, "corner at %s", gw_sheet_place(sheet, corner));
    if (!meets || !other) return "corner";
    return gw_format(sheet->arena, "corner with %s", gw_sheet_name(sheet, gw_safe(sheet->arena, other)));
}

/* Walls ------------------------------------------------------------------------------------------------------------ */

static void fill(const struct frame *f, const struct plan_wall *w, const struct ways *way, double from, double to,
                 const struct gw_look *look)
{
    const struct gw_point start = on_page(f, w->from);
    if (!(to > from)) return;
    const struct gw_box box = box_of(off(start, way, from * f->px, 0), off(start, way, to * f->px, -BAND));
    gw_canvas_rectangle(f->sheet->canvas, &box, look);
    gw_canvas_keep(f->sheet->canvas, &box);
}

static void put_beyond(const struct frame *f, const struct plan_wall *w, const struct ways *way, bool left)
{
    const double far = gw_plan_beyond(w->grid, left) * f->px * (left ? -1 : 1);
    const struct gw_point end = on_page(f, left ? w->from : w->to), corner = off(end, way, far, 0);
    if (!(fabs(far) > 0)) return;
    gw_canvas_line(f->sheet->canvas, end, corner, &BEYOND);
    gw_canvas_line(f->sheet->canvas, corner, off(corner, way, 0, -BAND), &BEYOND);
}

static void put_wall(const struct frame *f, const struct plan_wall *w, size_t i)
{
    const struct ways way = ways_of(w);
    const double width = gw_plan_width(w->grid), left = gw_plan_edge(w->grid, true),
                 right = fmax(width - gw_plan_edge(w->grid, false), left);
    const struct gw_look middle = {.fill = GW_PAPER, .pattern = &LEANS[i % 2]};
    fill(f, w, &way, left, right, &middle);
    fill(f, w, &way, 0, left, &EDGE);
    fill(f, w, &way, right, width, &EDGE);
    gw_canvas_line(f->sheet->canvas, on_page(f, w->from), on_page(f, w->to),
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
    put_beyond(f, w, &way, true);
    put_beyond(f, w, &way, false);
}

/* Dimensions: strips and what is between them, then the sum -------------------------------------------------------- */

/* Between two places along a wall, m, on a line that far outside; nothing where its words have no room. */
static void measure(const struct frame *f, const struct plan_wall *w, double from, double to, double out, bool edge)
{
    const struct ways way = ways_of(w);
    const struct gw_point start = on_page(f, w->from);
    struct gw_point a = off(start, &way, from * f->px, out), b = off(start, &way, to * f->px, out);
    const char *words = gw_sheet_place(f->sheet, to - from);
    const double room = (to - from) * f->px;
    if (way.upright ? a.y < b.y : a.x > b.x) {
        const struct gw_point swap = a;
        a = b, b = swap;
    }
    if (edge && gw_lettering_width(&PLAIN, words) > room && fabs(to - from - w->grid->strip) < 1e-9) words = "a";
    if (gw_lettering_width(&PLAIN, words) <= room) gw_canvas_dimension(f->sheet->canvas, a, b, words);
}

static void put_dimensions(const struct frame *f, const struct plan_wall *w)
{
    const struct ways way = ways_of(w);
    const bool words_out = way.upright ? way.out.x < 0 : way.out.y < 0; /* words stand above a line or left of it */
    const double near = words_out ? 10 : 24, next = near + 22, width = gw_plan_width(w->grid);
    const double left = gw_plan_edge(w->grid, true), right = fmax(width - gw_plan_edge(w->grid, false), left);
    if (left > 0) measure(f, w, 0, left, near, true);
    if (right > left && (left > 0 || right < width)) measure(f, w, left, right, near, false);
    if (right < width) measure(f, w, right, width, near, true);
    if (f->shape->n > 1) measure(f, w, 0, width, next, false);
}

/* Names and ends --------------------------------------------------------------------------------------------------- */

static const char *short_name(const struct sheet *sheet, const struct gw_wall_grid *g)
{
    return gw_sheet_name(sheet, gw_safe(sheet->arena, g->wall));
}

/* Inside, at the middle of its wall, or beside it where another wall stands there. */
static struct gw_point number_place(const struct frame *f, const struct plan_wall *w, const struct ways *way)
{
    static const double shifts[] = {0, -18, 18, -36, 36}, depths[] = {0, 20, 40};
    enum { SHIFTS = sizeof shifts / sizeof *shifts, PLACES = SHIFTS * sizeof depths / sizeof *depths };
    const double room = FLAG + 1, in = -BAND - FLAG - 5;
    const struct gw_point a = on_page(f, w->from), b = on_page(f, w->to), middle = {(a.x + b.x) / 2, (a.y + b.y) / 2};
    for (size_t i = 0; i < PLACES; i++) {
        const struct gw_point at = off(middle, way, shifts[i % SHIFTS], in - depths[i / SHIFTS]);
        const struct gw_box box = {at.x - room, at.y - room, at.x + room, at.y + room};
        if (gw_canvas_is_free(f->sheet->canvas, &box)) return at;
    }
    return off(middle, way, 0, in);
}

static void put_number(const struct frame *f, const struct plan_wall *w)
{
    const struct ways way = ways_of(w);
    const struct gw_point at = number_place(f, w, &way);
    const bool before = way.upright && way.out.x > 0; /* the inside is at the left */
    const struct gw_lettering font = {
        .size = GW_LABEL_SIZE, .bold = true, .align = before ? GW_ALIGN_END : GW_ALIGN_START};
    const struct gw_point words = {at.x + (before ? -1 : 1) * (FLAG + 6), at.y + 0.36 * GW_LABEL_SIZE};
    const char *name = short_name(f->sheet, w->grid);
    const struct gw_box box = gw_lettering_box(&font, words, name),
                        around = {at.x - FLAG, at.y - FLAG, at.x + FLAG, at.y + FLAG};
    gw_sheet_number(f->sheet, at, w->number);
    const bool inside = box.left > f->box.left + BAND && box.right < f->box.right - BAND && box.top > f->box.top &&
                        box.bottom < f->box.bottom;
    if (inside && gw_canvas_is_free(f->sheet->canvas, &box)) gw_canvas_text(f->sheet->canvas, words, &font, name);
    gw_canvas_keep(f->sheet->canvas, &around);
}

/* An end of the outline: the words go on along the wall. */
static void put_end(const struct frame *f, const struct plan_wall *w, bool left)
{
    const struct ways way = ways_of(w);
    const double far = (gw_plan_beyond(w->grid, left) * f->px + 8) * (left ? -1 : 1);
    struct gw_lettering font = PLAIN;
    struct gw_point at = off(on_page(f, left ? w->from : w->to), &way, far, 0);
    const double toward = (left ? -1 : 1) * way.along.x;
    font.align = way.upright ? GW_ALIGN_MIDDLE : toward < 0 ? GW_ALIGN_END : GW_ALIGN_START;
    if (way.upright) at.y += (left ? -1 : 1) * way.along.y > 0 ? GW_LABEL_SIZE : 0;
    gw_canvas_text(f->sheet->canvas, at, &font, gw_plan_end_words(f->sheet, w->grid, left, false));
}

/* Where two walls meet: outside, across the corner. */
static void put_corner(const struct frame *f, const struct plan_wall *w)
{
    const struct ways way = ways_of(w);
    const struct gw_point at = off(on_page(f, w->to), &way, 6, 6);
    const bool right = way.along.x + way.out.x > 0, below = way.along.y + way.out.y > 0;
    const struct gw_lettering font = {.size = GW_LABEL_SIZE, .align = right ? GW_ALIGN_START : GW_ALIGN_END};
    gw_canvas_text(f->sheet->canvas, (struct gw_point){at.x, at.y + (below ? 0.8 * GW_LABEL_SIZE : 0)}, &font,
                   "corner");
}

static void put_shape(const struct frame *f)
{
    const struct plan_shape *s = f->shape;
    for (size_t i = 0; i < s->n; i++) put_wall(f, &s->walls[i], i);
    for (size_t i = 0; i < s->n; i++) put_dimensions(f, &s->walls[i]);
    for (size_t i = 0; i < s->n; i++)
        if (i + 1 < s->n || s->ring) put_corner(f, &s->walls[i]);
    if (!s->ring) put_end(f, &s->walls[0], true);
    if (!s->ring) put_end(f, &s->walls[s->n - 1], false);
    for (size_t i = 0; s->n > 1 && i < s->n; i++) put_number(f, &s->walls[i]);
}

/* Shapes under each other ------------------------------------------------------------------------------------------ */

static double joined(const struct plan_layout *layout)
{
    double n = 0;
    for (size_t i = 0; i < layout->shapes.n; i++) n += layout->shapes.items[i].n > 1;
    return n;
}

static double ratio_for(const struct plan_layout *layout)
{
    static const double ratios[] = {50, 100, 150, 200, 250, 300, 400, 500, 600, 750, 1000, 1500, 2000, 3000, 5000};
    const double px = 96 / 0.0254, wide = SHEET_LIVE - 2 * BESIDE,
                 high = fmax(HIGH / fmax(joined(layout), 1), LEAST_HIGH);
    double least = 0;
    for (size_t i = 0; i < layout->shapes.n; i++) {
        const struct plan_shape *s = &layout->shapes.items[i];
        least = fmax(least,
                     fmax((s->reach.right - s->reach.left) * px / wide, (s->reach.top - s->reach.bottom) * px / high));
    }
    for (size_t i = 0; i < sizeof ratios / sizeof *ratios; i++)
        if (ratios[i] >= least) return ratios[i];
    return ceil(least);
}

static struct frame frame_at(struct sheet *sheet, const struct plan_shape *s, double px, double top)
{
    const double left = SHEET_MARGIN + BESIDE;
    struct frame f = {.sheet = sheet, .shape = s, .px = px};
    f.zero = (struct gw_point){left - s->reach.left * px, top + s->reach.top * px};
    f.box = (struct gw_box){left, top, left + (s->reach.right - s->reach.left) * px,
                            top + (s->reach.top - s->reach.bottom) * px};
    return f;
}

/* A wall alone: number and name above it; the base line after it. */
static double put_strip(struct sheet *sheet, const struct plan_shape *s, double px, double top)
{
    const struct frame f = frame_at(sheet, s, px, top + 22 + BAND);
    const struct gw_wall_grid *g = s->walls->grid;
    const struct gw_point at = {SHEET_MARGIN + FLAG + 1, top + FLAG + 1};
    gw_sheet_number(sheet, at, s->walls->number);
    gw_canvas_text(sheet->canvas, (struct gw_point){at.x + FLAG + 6, at.y + 0.36 * GW_LABEL_SIZE}, &BOLD,
                   gw_format(sheet->arena, "%s, %s", short_name(sheet, g), gw_sheet_place(sheet, gw_plan_width(g))));
    put_shape(&f);
    const bool measured = gw_plan_edge(g, true) > 0 || gw_plan_edge(g, false) > 0;
    return f.box.bottom + (measured ? 42 : 20);
}

static double put_joined(struct sheet *sheet, const struct plan_shape *s, double px, double top)
{
    const double room = 54;
    const bool top_wall = s->n > 2, low_end = s->n == 4 && !s->ring;
    const struct frame f = frame_at(sheet, s, px, top + (top_wall ? room : 16));
    put_shape(&f);
    return f.box.bottom + room + (low_end ? 4 : 0);
}

static const char *building_words(const struct sheet *sheet, const struct gw_wall_grid *g)
{
    const char *name = gw_sheet_name(sheet, gw_safe(sheet->arena, g->building->name));
    return gw_given(g->strip) && g->strip > 0
               ? gw_format(sheet->arena, "%s: edge zones a = %s wide", name, gw_sheet_place(sheet, g->strip))
               : gw_format(sheet->arena, "%s: the width of its edge zones is not known", name);
}

static double put_shapes(struct sheet *sheet, const struct plan_layout *layout, double px, double top)
{
    const struct gw_building *building = NULL;
    double y = top;
    size_t i = 0;
    for (; i < layout->shapes.n && y < SHAPES_END; i++) {
        const struct plan_shape *s = &layout->shapes.items[i];
        if (s->building != building)
            y = gw_sheet_caption(sheet, (struct gw_point){SHEET_MARGIN, y + 8}, SHEET_LIVE,
                                 building_words(sheet, s->walls->grid), NULL);
        building = s->building;
        y = s->n > 1 ? put_joined(sheet, s, px, y) : put_strip(sheet, s, px, y - 8);
    }
    if (i == layout->shapes.n) return y;
    const char *more = gw_format(sheet->arena, "And %zu more, as the list below says.", layout->shapes.n - i);
    return gw_sheet_lines(sheet, y + 10, &more, 1);
}

/* The list --------------------------------------------------------------------------------------------------------- */

static const double NUMBER_X = 0, NAME_X = 26, WIDTH_X = 218, LEFT_X = 228, EDGE_X = 414, MIDDLE_X = 480, OTHER_X = 546,
                    RIGHT_X = 558;

static const char *length_or_none(const struct sheet *sheet, double m)
{
    return m > 0 ? gw_sheet_place(sheet, m) : "none";
}

static void put_at(const struct sheet *sheet, double x, double y, const struct gw_lettering *font, const char *words)
{
    gw_canvas_text(sheet->canvas, (struct gw_point){SHEET_MARGIN + x, y}, font, words);
}

/* Of a strip; where both overlap the wall is all of it. */
static const char *strip_words(const struct sheet *sheet, double strip, double other, double width)
{
    return strip > 0 && strip + other > width + 1e-9 ? "all" : length_or_none(sheet, strip);
}

static double put_row(const struct sheet *sheet, const struct plan_wall *w, double y)
{
    const struct gw_wall_grid *g = w->grid;
    const double left = gw_plan_edge(g, true), right = gw_plan_edge(g, false), width = gw_plan_width(g);
    const struct gw_point name = {SHEET_MARGIN + NAME_X, y}, first = {SHEET_MARGIN + LEFT_X, y},
                          last = {SHEET_MARGIN + RIGHT_X, y};
    put_at(sheet, NUMBER_X, y, &BOLD, gw_format(sheet->arena, "%zu", w->number));
    put_at(sheet, WIDTH_X, y, &RIGHT, gw_sheet_place(sheet, width));
    put_at(sheet, EDGE_X, y, &RIGHT, strip_words(sheet, left, right, width));
    put_at(sheet, MIDDLE_X, y, &RIGHT, length_or_none(sheet, width - left - right > 1e-9 ? width - left - right : 0));
    put_at(sheet, OTHER_X, y, &RIGHT, strip_words(sheet, right, left, width));
    double next = gw_canvas_paragraph(sheet->canvas, name, WIDTH_X - NAME_X - 64, &PLAIN, short_name(sheet, g));
    next = fmax(next, gw_canvas_paragraph(sheet->canvas, first, EDGE_X - LEFT_X - 64, &PLAIN,
                                          gw_plan_end_words(sheet, g, true, true)));
    return fmax(next, gw_canvas_paragraph(sheet->canvas, last, SHEET_LIVE - RIGHT_X, &PLAIN,
                                          gw_plan_end_words(sheet, g, false, true))) +
           2;
}

static double put_heads(const struct sheet *sheet, double y)
{
    const double next = y + 1.3 * GW_LABEL_SIZE;
    put_at(sheet, NAME_X, next, &LIGHT, "Wall");
    put_at(sheet, WIDTH_X, next, &HEAD_RIGHT, "width");
    put_at(sheet, LEFT_X, next, &LIGHT, "left end");
    put_at(sheet, EDGE_X, y, &HEAD_RIGHT, "zone 5");
    put_at(sheet, EDGE_X, next, &HEAD_RIGHT, "left");
    put_at(sheet, MIDDLE_X, next, &HEAD_RIGHT, "zone 4");
    put_at(sheet, OTHER_X, y, &HEAD_RIGHT, "zone 5");
    put_at(sheet, OTHER_X, next, &HEAD_RIGHT, "right");
    put_at(sheet, RIGHT_X, next, &LIGHT, "right end");
    gw_canvas_line(sheet->canvas, (struct gw_point){SHEET_MARGIN, next + 6},
                   (struct gw_point){SHEET_MARGIN + SHEET_LIVE, next + 6},
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_MEDIUM});
    return next + 6 + 1.4 * GW_LABEL_SIZE;
}

static double put_list(struct sheet *sheet, const struct plan_layout *layout, size_t walls, double top)
{
    double y = put_heads(sheet, top);
    size_t n = 0;
    for (size_t i = 0; i < layout->shapes.n; i++)
        for (size_t k = 0; k < layout->shapes.items[i].n && (n < ROWS || y < ROWS_END); k++, n++)
            y = put_row(sheet, &layout->shapes.items[i].walls[k], y);
    if (n == walls) return y - GW_LABEL_SIZE + 4;
    const char *more = gw_format(sheet->arena, "And %zu more walls of the project file.", walls - n);
    return gw_sheet_lines(sheet, y, &more, 1) - GW_LABEL_SIZE + 4;
}

/* The sheet -------------------------------------------------------------------------------------------------------- */

static bool any_alone(const struct plan_layout *layout)
{
    for (size_t i = 0; i < layout->shapes.n; i++)
        if (layout->shapes.items[i].n == 1) return true;
    return false;
}

static const char *how(const struct plan_layout *layout)
{
    const bool alone = any_alone(layout), any = joined(layout) > 0;
    if (any && alone)
        return "Walls whose corners name each other meet at right angles here; how the others lie is not said in the "
               "file, so that each is a strip of its own, its outside below.";
    return any ? "Walls whose corners name each other meet at right angles here; their hatch lies inside the outline."
               : "How the walls lie to each other is not said in the file (ends: {corner: name}), so that each is a "
                 "strip of its own, outside below.";
}

static const char *described(struct sheet *sheet, const struct plan_layout *layout)
{
    struct gw_text text;
    gw_text_init(&text, sheet->arena);
    gw_text_add(&text, "Walls from above, with their edge zones:");
    for (size_t i = 0; i < layout->shapes.n && i < TOLD; i++)
        for (size_t k = 0; k < layout->shapes.items[i].n; k++) {
            const struct gw_wall_grid *g = layout->shapes.items[i].walls[k].grid;
            gw_text_addf(&text, " %s, %s, %s to %s.", short_name(sheet, g), gw_sheet_place(sheet, gw_plan_width(g)),
                         gw_plan_end_words(sheet, g, true, true), gw_plan_end_words(sheet, g, false, true));
        }
    return text.at;
}

/* Of names that are cut in the drawing the whole. */
static double put_whole_names(struct sheet *sheet, const struct gw_takeoff *t, double y)
{
    for (size_t i = 0; i < t->n_walls && i < TOLD && y < 2 * ROWS_END; i++) {
        const char *name = gw_safe(sheet->arena, t->grids.items[i]->wall);
        if (strcmp(name, short_name(sheet, t->grids.items[i])) == 0) continue;
        const char *words = gw_format(sheet->arena, "Wall %zu: %s", i + 1, name);
        y = gw_sheet_lines(sheet, y, &words, 1);
    }
    return y;
}

enum gw_status gw_draw_key_plan(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct wall_picture *p = of;
    const struct gw_takeoff *t = p->results->answer->takeoff;
    struct plan_layout layout;
    struct sheet sheet;
    (void)engine;
    gw_sheet_open(&sheet, canvas, shown);
    gw_plan_layout(&layout, canvas->arena, t);
    canvas->description = described(&sheet, &layout);
    const double ratio = ratio_for(&layout);
    const char *lines[] = {
        gw_format(canvas->arena, "%s Seen from above. Scale 1:%.0f on A4 and letter.",
                  gw_project_line(canvas->arena, p->results), ratio),
        how(&layout),
        "North is not in the file: up is not north. Solid: zone 5. Hatched: zone 4. Corner at: so far beyond "
        "the end."};
    double y = gw_sheet_lines(&sheet, gw_sheet_head(&sheet, "Key plan: walls and their edge zones"), lines, 3);
    y = put_shapes(&sheet, &layout, 96 / 0.0254 / ratio, y);
    y = gw_sheet_lines(&sheet, y + 8, layout.apart.items, layout.apart.n);
    y = put_list(&sheet, &layout, t->n_walls, y + 8);
    gw_sheet_foot(&sheet, put_whole_names(&sheet, t, y + 8), NULL, 0);
    return GW_OK;
}
