#include "report/draw_field.h"

#include <math.h>

void gw_field_measure(struct field_map *map)
{
    /* A level this near to an end of the range would trace rounding noise or enclose a speck. */
    const double LOW_END = 0.02, HIGH_END = 0.005;
    const int n = map->grid.nx * map->grid.ny;
    struct gw_ticks ticks;
    map->low = map->high = map->grid.values[0];
    for (int i = 1; i < n; i++) {
        map->low = fmin(map->low, map->grid.values[i]);
        map->high = fmax(map->high, map->grid.values[i]);
    }
    const double range = map->high - map->low;
    map->n = 0;
    gw_ticks_linear(&ticks, map->low, map->high, FIELD_LEVELS - 1);
    map->decimals = ticks.decimals;
    for (size_t i = 0; i < ticks.n; i++)
        if (ticks.values[i] > map->low + LOW_END * range && ticks.values[i] < map->high - HIGH_END * range)
            map->levels[map->n++] = ticks.values[i];
}

static struct gw_point on_page(const struct field_map *map, struct gw_point p)
{
    const struct box *a = &map->area;
    return (struct gw_point){a->left + p.x / (map->grid.nx - 1) * (a->right - a->left),
                             a->bottom - p.y / (map->grid.ny - 1) * (a->bottom - a->top)};
}

static const char *shade(char out[GW_SVG_COLOR_SIZE], const struct field_map *map, int band)
{
    return gw_svg_shade(out, map->scale, map->n ? (double)band / map->n : 0);
}

static const double THIN = 0.12; /* pixels: less than what is printed */

static struct gw_point *copy_to_page(struct gw_arena *arena, const struct field_map *map,
                                     const struct contour_ring *ring)
{
    struct gw_point *points = gw_alloc(arena, ring->n, sizeof *points);
    for (size_t i = 0; i < ring->n; i++) points[i] = on_page(map, ring->points[i]);
    return points;
}

static void fill_region(struct gw_svg *svg, const struct field_map *map, const struct contour *contour, int band)
{
    char color[GW_SVG_COLOR_SIZE];
    gw_svg_shape_open(svg, &(struct gw_svg_look){.fill = shade(color, map, band)});
    for (size_t i = 0; i < contour->n; i++) {
        struct gw_point *points = copy_to_page(svg->out->arena, map, &contour->rings[i]);
        gw_svg_shape_ring(svg, points, gw_contour_thin(points, contour->rings[i].n, THIN));
    }
    gw_svg_shape_close(svg);
}

/* The pieces of a ring that are not along the border. */
static void draw_ring(struct gw_svg *svg, const struct field_map *map, const struct contour_ring *ring)
{
    const struct gw_svg_look look = {.line = GW_SVG_INK, .width = 0.6};
    const struct gw_point *p = ring->points;
    struct gw_point *piece = gw_alloc(svg->out->arena, ring->n + 1, sizeof *piece);
    size_t start = 0, used = 0;
    while (start < ring->n && !gw_contour_on_border(&map->grid, p[start], p[(start + 1) % ring->n])) start++;
    for (size_t k = 1; k <= ring->n; k++) {
        const struct gw_point from = p[(start + k) % ring->n], to = p[(start + k + 1) % ring->n];
        if (!used) piece[used++] = on_page(map, from);
        const bool border = gw_contour_on_border(&map->grid, from, to);
        if (!border) piece[used++] = on_page(map, to);
        if (!border && k < ring->n) continue;
        if (used > 1) gw_svg_polyline(svg, piece, gw_contour_thin(piece, used, THIN), &look);
        used = 0;
    }
}

/* Placing the numbers. */
struct placing {
    struct gw_svg *svg;
    const struct field_map *map;
    const struct contour *contours; /* by level */
    struct box *taken;
    size_t n_taken;
    struct gw_svg_font font;
};

static bool inside(const struct box *outer, const struct box *b)
{
    return b->left > outer->left && b->right < outer->right && b->top > outer->top && b->bottom < outer->bottom;
}

/* Distance of two boxes; 0 where they overlap. */
static double apart(const struct box *a, const struct box *b)
{
    const double x = fmax(fmax(a->left - b->right, b->left - a->right), 0);
    const double y = fmax(fmax(a->top - b->bottom, b->top - a->bottom), 0);
    return hypot(x, y);
}

/* Distance of a place to the lines of the other levels, as far as `most`. */
static double clearance(const struct placing *p, struct gw_point at, int level, double most)
{
    double least = most * most;
    for (int k = 0; k < p->map->n; k++)
        for (size_t r = 0; k != level && r < p->contours[k].n; r++)
            for (size_t i = 0; i < p->contours[k].rings[r].n; i++) {
                const struct gw_point other = on_page(p->map, p->contours[k].rings[r].points[i]);
                const double x = other.x - at.x, y = other.y - at.y;
                least = fmin(least, x * x + y * y);
            }
    return sqrt(least);
}

static struct box box_at(struct gw_point at, double width, double height)
{
    return (struct box){at.x - width / 2, at.y - height / 2, at.x + width / 2, at.y + height / 2};
}

/* Larger is better, negative is no place. In whole pixels: rounding noise must not choose between mirrored places. */
static double score(const struct placing *p, struct gw_point at, const struct box *b, int level)
{
    const double FAR = 45, CLEAR = 14, NEAREST = 3;
    double nearest = FAR;
    if (!inside(&p->map->area, b)) return -1;
    for (size_t i = 0; i < p->n_taken; i++) nearest = fmin(nearest, apart(b, &p->taken[i]));
    if (nearest < NEAREST) return -1;
    return floor(nearest / 3) + 2 * floor(clearance(p, at, level, CLEAR));
}

static bool larger_than(const struct placing *p, const struct contour_ring *ring, double width, double height)
{
    struct gw_point least = on_page(p->map, ring->points[0]), most = least;
    for (size_t i = 1; i < ring->n; i++) {
        const struct gw_point at = on_page(p->map, ring->points[i]);
        least = (struct gw_point){fmin(least.x, at.x), fmin(least.y, at.y)};
        most = (struct gw_point){fmax(most.x, at.x), fmax(most.y, at.y)};
    }
    return most.x - least.x > width || most.y - least.y > height;
}

/* Only in the lower right quarter: the fields are symmetrical, and the marks' words stand elsewhere. */
static void number_level(struct placing *p, int level)
{
    const struct box *area = &p->map->area;
    struct gw_text text;
    struct box best_box = {0, 0, 0, 0};
    double best = -1;
    gw_text_init(&text, p->svg->out->arena);
    gw_text_fixed(&text, p->map->levels[level], p->map->decimals);
    const double width = gw_svg_text_width(text.at, &p->font) + 4, height = p->font.size * 1.2;
    for (size_t r = 0; r < p->contours[level].n; r++) {
        const struct contour_ring *ring = &p->contours[level].rings[r];
        if (!larger_than(p, ring, width, 2 * height)) continue;
        for (size_t i = 0; i < ring->n; i += 2) {
            const struct gw_point at = on_page(p->map, ring->points[i]);
            if (at.x < (area->left + area->right) / 2 || at.y < (area->top + area->bottom) / 2) continue;
            const struct box b = box_at(at, width, height);
            const double s = score(p, at, &b, level);
            if (s <= best) continue;
            best = s;
            best_box = b;
        }
    }
    if (best < 0) return;
    p->taken[p->n_taken++] = best_box;
    const struct gw_point middle = {(best_box.left + best_box.right) / 2, (best_box.top + best_box.bottom) / 2};
    gw_svg_text(p->svg, (struct gw_point){middle.x, middle.y + 0.35 * p->font.size}, &p->font, text.at);
}

void gw_field_draw(struct gw_svg *svg, const struct field_map *map, const struct box *kept_free, size_t n)
{
    const struct box *a = &map->area;
    struct contour contours[FIELD_LEVELS];
    struct placing placing = {svg,      map,
                              contours, gw_alloc(svg->out->arena, n + FIELD_LEVELS, sizeof(struct box)),
                              n,        {.size = 10, .anchor = GW_SVG_MIDDLE, .plate = true}};
    char color[GW_SVG_COLOR_SIZE];
    for (size_t i = 0; i < n; i++) placing.taken[i] = kept_free[i];
    for (int k = 0; k < map->n; k++) gw_contour_trace(&contours[k], svg->out->arena, &map->grid, map->levels[k]);
    gw_svg_rectangle(svg, a->left, a->top, a->right - a->left, a->bottom - a->top,
                     &(struct gw_svg_look){.fill = shade(color, map, 0)});
    for (int k = 0; k < map->n; k++) fill_region(svg, map, &contours[k], k + 1);
    for (int k = 0; k < map->n; k++)
        for (size_t r = 0; r < contours[k].n; r++) draw_ring(svg, map, &contours[k].rings[r]);
    gw_svg_rectangle(svg, a->left, a->top, a->right - a->left, a->bottom - a->top,
                     &(struct gw_svg_look){.line = GW_SVG_INK, .width = 1.2});
    for (int k = map->n; k-- > 0;) number_level(&placing, k);
}

void gw_field_scale(struct gw_svg *svg, const struct field_map *map, struct gw_point at, double width)
{
    const double HEIGHT = 12, range = map->high - map->low;
    const struct gw_svg_font font = {.size = 10.5, .anchor = GW_SVG_MIDDLE};
    double left = at.x, free_from = 0;
    for (int k = 0; k <= map->n; k++) {
        char color[GW_SVG_COLOR_SIZE];
        const double end = k < map->n ? at.x + (map->levels[k] - map->low) / range * width : at.x + width;
        struct gw_text number;
        gw_svg_rectangle(svg, left, at.y, end - left, HEIGHT, &(struct gw_svg_look){.fill = shade(color, map, k)});
        left = end;
        if (k == map->n) break;
        gw_text_init(&number, svg->out->arena);
        gw_text_fixed(&number, map->levels[k], map->decimals);
        gw_svg_line(svg, (struct gw_point){end, at.y}, (struct gw_point){end, at.y + HEIGHT + 3},
                    &(struct gw_svg_look){.line = GW_SVG_INK, .width = 0.6});
        const double half = gw_svg_text_width(number.at, &font) / 2;
        if (end - half < free_from) continue; /* no room for this one */
        free_from = end + half + 3;
        gw_svg_text(svg, (struct gw_point){end, at.y + HEIGHT + 13}, &font, number.at);
    }
    gw_svg_rectangle(svg, at.x, at.y, width, HEIGHT, &(struct gw_svg_look){.line = GW_SVG_INK, .width = 0.8});
}
