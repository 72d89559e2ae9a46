#include "report/draw/field.h"

#include "galeward/plot.h"

#include <math.h>

/* Levels inside the range; false where there are more than there is room for. */
static bool take_levels(struct field_map *map, const struct gw_ticks *ticks)
{
    /* A level this near to an end of the range would trace rounding noise or enclose a speck. */
    const double LOW_END = 0.02, HIGH_END = 0.005, range = map->high - map->low;
    map->n = 0;
    map->decimals = ticks->decimals;
    for (size_t i = 0; i < ticks->n; i++) {
        const double level = ticks->values[i];
        if (!(level > map->low + LOW_END * range && level < map->high - HIGH_END * range)) continue;
        if (map->n == FIELD_LEVELS) return false;
        map->levels[map->n++] = level;
    }
    return true;
}

/* The finest round step that gives no more lines than there is room for. */
void gw_field_measure(struct field_map *map)
{
    const int n = map->grid.nx * map->grid.ny;
    struct gw_ticks ticks;
    map->low = map->high = map->grid.values[0];
    for (int i = 1; i < n; i++) {
        map->low = fmin(map->low, map->grid.values[i]);
        map->high = fmax(map->high, map->grid.values[i]);
    }
    for (int wanted = 2 * FIELD_LEVELS; wanted > 0; wanted--) {
        gw_ticks_linear(&ticks, map->low, map->high, wanted);
        if (take_levels(map, &ticks)) return;
    }
}

static struct gw_point on_page(const struct field_map *map, struct gw_point p)
{
    const struct gw_box *a = &map->area;
    return (struct gw_point){a->left + p.x / (map->grid.nx - 1) * (a->right - a->left),
                             a->bottom - p.y / (map->grid.ny - 1) * (a->bottom - a->top)};
}

static const char *shade(struct gw_arena *arena, const struct field_map *map, int band)
{
    return gw_canvas_gray(arena, map->n ? (double)band / map->n : 0);
}

static const double THIN = 0.12; /* pixels: less than what is printed */

static const char *number_of(struct gw_arena *arena, const struct field_map *map, double level)
{
    enum { PLAIN_DECIMALS = 5 };
    struct gw_text text;
    gw_text_init(&text, arena);
    if (map->decimals > PLAIN_DECIMALS) gw_text_number(&text, level, 3);
    else gw_text_fixed(&text, level, map->decimals);
    return text.at;
}

/* Where the line of a level is interrupted for its number. */
struct gap {
    bool cut;
    struct gw_box box;
    const char *text;
};
struct drawing {
    struct gw_canvas *canvas;
    const struct field_map *map;
    struct contour contours[FIELD_LEVELS]; /* by level */
    struct gap gaps[FIELD_LEVELS];
};

static void fill_region(struct drawing *d, int level)
{
    const struct contour *contour = &d->contours[level];
    struct gw_outline *rings = gw_alloc(d->canvas->arena, contour->n, sizeof *rings);
    for (size_t i = 0; i < contour->n; i++) {
        rings[i] = (struct gw_outline){gw_alloc(d->canvas->arena, contour->rings[i].n, sizeof(struct gw_point)),
                                       contour->rings[i].n};
        for (size_t k = 0; k < rings[i].n; k++) rings[i].points[k] = on_page(d->map, contour->rings[i].points[k]);
        rings[i].n = gw_contour_thin(rings[i].points, rings[i].n, THIN);
    }
    gw_canvas_outlines(d->canvas, rings, contour->n,
                       &(struct gw_look){.fill = shade(d->canvas->arena, d->map, level + 1)});
}

/* Lines
 * -------------------------------------------------------------------------------------------------------------------
 */

/* One coordinate of the part of a segment that lies in the box. */
static void narrow(double from, double by, double low, double high, double *enter, double *leave)
{
    if (by == 0) {
        if (from < low || from > high) *enter = INFINITY;
        return;
    }
    const double a = (low - from) / by, b = (high - from) / by;
    *enter = fmax(*enter, fmin(a, b));
    *leave = fmin(*leave, fmax(a, b));
}

static bool crosses(const struct gw_box *box, struct gw_point a, struct gw_point b, double *enter, double *leave)
{
    *enter = 0;
    *leave = 1;
    narrow(a.x, b.x - a.x, box->left, box->right, enter, leave);
    narrow(a.y, b.y - a.y, box->top, box->bottom, enter, leave);
    return *enter < *leave;
}

static struct gw_point between(struct gw_point a, struct gw_point b, double part)
{
    return (struct gw_point){a.x + part * (b.x - a.x), a.y + part * (b.y - a.y)};
}

struct stroke {
    struct gw_canvas *canvas;
    struct gw_look look;
    struct gw_point *points;
    size_t n;
};

static void finish(struct stroke *stroke)
{
    const size_t n = stroke->n;
    if (n > 1)
        gw_canvas_polyline(stroke->canvas, stroke->points, gw_contour_thin(stroke->points, n, THIN), &stroke->look);
    stroke->n = 0;
}

static void go(struct stroke *stroke, struct gw_point from, struct gw_point to)
{
    if (!stroke->n) stroke->points[stroke->n++] = from;
    stroke->points[stroke->n++] = to;
}

static void go_round(struct stroke *stroke, const struct gap *gap, struct gw_point from, struct gw_point to)
{
    double enter, leave;
    if (!gap->cut || !crosses(&gap->box, from, to, &enter, &leave)) {
        go(stroke, from, to);
        return;
    }
    if (enter > 0) go(stroke, from, between(from, to, enter));
    finish(stroke);
    if (leave < 1) go(stroke, between(from, to, leave), to);
}

/* Of a ring what is not along the border and not in the gap; each third line is a heavy one. */
static void draw_ring(struct drawing *d, int level, const struct gw_outline *ring)
{
    const struct gw_point *p = ring->points;
    struct stroke stroke = {d->canvas,
                            {.line = GW_INK, .width = level % 3 == 2 ? GW_LINE_BOLD : GW_LINE_THIN},
                            gw_alloc(d->canvas->arena, ring->n + 2, sizeof *stroke.points),
                            0};
    size_t start = 0;
    while (start < ring->n && !gw_contour_on_border(&d->map->grid, p[start], p[(start + 1) % ring->n])) start++;
    for (size_t k = 0; k < ring->n; k++) {
        const struct gw_point from = p[(start + k) % ring->n], to = p[(start + k + 1) % ring->n];
        if (gw_contour_on_border(&d->map->grid, from, to)) finish(&stroke);
        else go_round(&stroke, &d->gaps[level], on_page(d->map, from), on_page(d->map, to));
    }
    finish(&stroke);
}

/* Numbers
 * -----------------------------------------------------------------------------------------------------------------
 */

static const struct gw_lettering NUMBER = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_MIDDLE};

static bool inside(const struct gw_box *outer, const struct gw_box *b)
{
    return b->left > outer->left && b->right < outer->right && b->top > outer->top && b->bottom < outer->bottom;
}

static bool holds(const struct gw_box *box, struct gw_point p)
{
    return p.x > box->left && p.x < box->right && p.y > box->top && p.y < box->bottom;
}

static struct gw_box wider(const struct gw_box *box, double by)
{
    return (struct gw_box){box->left - by, box->top - by, box->right + by, box->bottom + by};
}

/* Whether the line of another level runs through the box. */
static bool meets_other(const struct drawing *d, const struct gw_box *box, int level)
{
    for (int k = 0; k < d->map->n; k++)
        for (size_t r = 0; k != level && r < d->contours[k].n; r++)
            for (size_t i = 0; i < d->contours[k].rings[r].n; i++)
                if (holds(box, on_page(d->map, d->contours[k].rings[r].points[i]))) return true;
    return false;
}

/* How far round the box is free of other lines and labels, in steps, as far as `MOST`; 0: no place. In whole pixels:
 * rounding noise must not choose between mirrored places. */
static int room_round(const struct drawing *d, const struct gw_box *box, int level)
{
    enum { STEP = 3, MOST = 5 };
    int room = 0;
    if (!inside(&d->map->area, box)) return 0;
    for (int i = 1; i <= MOST; i++) {
        const struct gw_box around = wider(box, i * STEP - STEP / 2.0);
        if (!gw_canvas_is_free(d->canvas, &around) || meets_other(d, &around, level)) break;
        room = i;
    }
    return room;
}

struct search {
    struct gw_box best;
    int room;
};

/* Along a ring, but only right of and below the middle, or everywhere. */
static void search_ring(const struct drawing *d, int level, const struct gw_outline *ring, bool quarter,
                        struct search *found)
{
    const struct gw_box *a = &d->map->area;
    const double half = gw_lettering_width(&NUMBER, d->gaps[level].text) / 2 + 2, high = NUMBER.size / 2;
    for (size_t i = 0; i < ring->n; i += 2) {
        const struct gw_point at = on_page(d->map, ring->points[i]);
        if (quarter && (at.x < (a->left + a->right) / 2 || at.y < (a->top + a->bottom) / 2)) continue;
        const struct gw_box box = {at.x - half, at.y - high, at.x + half, at.y + high};
        const int room = room_round(d, &box, level);
        if (room > found->room) *found = (struct search){box, room};
    }
}

/* A ring that its own number would hide goes without. */
static bool is_long(const struct drawing *d, int level, const struct gw_outline *ring)
{
    const double least = 3 * gw_lettering_width(&NUMBER, d->gaps[level].text);
    double length = 0;
    for (size_t i = 0; i + 1 < ring->n; i++) {
        const struct gw_point a = on_page(d->map, ring->points[i]), b = on_page(d->map, ring->points[i + 1]);
        length += hypot(b.x - a.x, b.y - a.y);
    }
    return length > least;
}

static void number_level(struct drawing *d, int level)
{
    struct search found = {{0, 0, 0, 0}, 0};
    d->gaps[level].text = number_of(d->canvas->arena, d->map, d->map->levels[level]);
    for (int quarter = 1; quarter >= 0 && !found.room; quarter--)
        for (size_t r = 0; r < d->contours[level].n; r++)
            if (is_long(d, level, &d->contours[level].rings[r]))
                search_ring(d, level, &d->contours[level].rings[r], quarter, &found);
    if (!found.room) return;
    d->gaps[level].cut = true;
    d->gaps[level].box = found.best;
    gw_canvas_keep(d->canvas, &found.best);
}

static void write_number(struct drawing *d, const struct gap *gap)
{
    const struct gw_point middle = {(gap->box.left + gap->box.right) / 2, (gap->box.top + gap->box.bottom) / 2};
    if (gap->cut)
        gw_canvas_text(d->canvas, (struct gw_point){middle.x, middle.y + 0.36 * NUMBER.size}, &NUMBER, gap->text);
}

void gw_field_draw(struct gw_canvas *canvas, const struct field_map *map)
{
    struct drawing *d = gw_alloc(canvas->arena, 1, sizeof *d);
    d->canvas = canvas;
    d->map = map;
    for (int k = 0; k < map->n; k++) gw_contour_trace(&d->contours[k], canvas->arena, &map->grid, map->levels[k]);
    for (int k = map->n; k-- > 0;) number_level(d, k);
    gw_canvas_rectangle(canvas, &map->area, &(struct gw_look){.fill = shade(canvas->arena, map, 0)});
    for (int k = 0; k < map->n; k++) fill_region(d, k);
    for (int k = 0; k < map->n; k++)
        for (size_t r = 0; r < d->contours[k].n; r++) draw_ring(d, k, &d->contours[k].rings[r]);
    gw_canvas_rectangle(canvas, &map->area, &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
    for (int k = 0; k < map->n; k++) write_number(d, &d->gaps[k]);
}

double gw_field_scale(struct gw_canvas *canvas, const struct field_map *map, struct gw_point at, double width)
{
    const double HEIGHT = 13.6, TICK = 3, range = map->high - map->low;
    const struct gw_box within = {at.x - 20, at.y, at.x + width + 20, INFINITY};
    const struct gw_box whole = {at.x, at.y, at.x + width, at.y + HEIGHT};
    double left = at.x;
    for (int k = 0; k <= map->n; k++) {
        const double end = k < map->n ? at.x + (map->levels[k] - map->low) / range * width : at.x + width;
        gw_canvas_rectangle(canvas, &(struct gw_box){left, at.y, end, at.y + HEIGHT},
                            &(struct gw_look){.fill = shade(canvas->arena, map, k)});
        left = end;
        if (k == map->n) break;
        gw_canvas_line(canvas, (struct gw_point){end, at.y}, (struct gw_point){end, at.y + HEIGHT + TICK},
                       &(struct gw_look){.line = GW_INK, .width = GW_LINE_THIN});
        gw_canvas_label(canvas, (struct gw_point){end, at.y + HEIGHT + TICK + NUMBER.size}, 0, 1, &within, &NUMBER,
                        number_of(canvas->arena, map, map->levels[k]));
    }
    gw_canvas_rectangle(canvas, &whole, &(struct gw_look){.line = GW_INK, .width = GW_LINE_THIN});
    return at.y + HEIGHT + TICK + 1.3 * NUMBER.size;
}
