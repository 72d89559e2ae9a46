/* Axes: round tick values, the way from data to the page, curves and marks. */
#include "galeward/plot.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Exact up to 10^22: by multiplication, not by the library's pow. */
static double ten_to(int power)
{
    double value = 1;
    for (int i = 0; i < abs(power); i++) value *= 10;
    return power < 0 ? 1 / value : value;
}

/* Largest k with 10^k <= value. */
static int decade_below(double value)
{
    int k = (int)floor(log10(value));
    while (ten_to(k) > value) k--;
    while (ten_to(k + 1) <= value) k++;
    return k;
}

/* A range's end that misses a tick by rounding alone still has it. */
static const double SLACK = 1e-9;

void gw_ticks_linear(struct gw_ticks *out, double low, double high, int wanted)
{
    *out = (struct gw_ticks){.n = 0};
    if (!(high > low) || !isfinite(high - low) || wanted < 1 || wanted > GW_TICKS_MOST - 4) return;
    const double raw = (high - low) / wanted * (1 - SLACK);
    int k = decade_below(raw), times = 1;
    while (times * ten_to(k) < raw) times = times == 1 ? 2 : times == 2 ? 5 : 10;
    if (times == 10) {
        times = 1;
        k++;
    }
    const double step = times * ten_to(k), slack = SLACK * (high - low);
    out->decimals = k < 0 ? -k : 0;
    const double first = ceil((low - slack) / step);
    while (out->n < GW_TICKS_MOST) {
        const double i = first + (double)out->n;
        if (!(i * step <= high + slack)) return;
        out->values[out->n++] = k < 0 ? i * times / ten_to(-k) : i * step; /* the double nearest to the number */
    }
}

static void add_log_tick(struct gw_ticks *out, double value, bool minor)
{
    if (out->n == GW_TICKS_MOST) return;
    out->minor[out->n] = minor;
    out->values[out->n++] = value;
}

void gw_ticks_log(struct gw_ticks *out, double low, double high)
{
    enum { DECADES_WITH_MINOR = 6, DECADES_MOST = 50 };
    *out = (struct gw_ticks){.n = 0};
    if (!(low > 0) || !(high > low) || !isfinite(high)) return;
    const int first = decade_below(low), last = decade_below(high * (1 + SLACK));
    const bool few = high / low < 100, minor = last - first <= DECADES_WITH_MINOR;
    const int every = 1 + (last - first) / DECADES_MOST;
    for (int k = first; k <= last; k += every)
        for (int times = 1; times <= (minor ? 9 : 1); times++) {
            const double value = k < 0 ? times / ten_to(-k) : times * ten_to(k);
            if (value < low * (1 - SLACK) || value > high * (1 + SLACK)) continue;
            const bool numbered = times == 1 || (few && (times == 2 || times == 5));
            add_log_tick(out, value, !numbered);
            if (numbered && k < 0 && out->decimals < -k) out->decimals = -k;
        }
}

/* 0 at the low end of the axis, 1 at the high one. */
static bool part_of(double *out, const struct gw_axis *axis, double value)
{
    if (!isfinite(value) || (axis->logarithmic && !(value > 0))) return false;
    *out = axis->logarithmic ? log(value / axis->low) / log(axis->high / axis->low)
                             : (value - axis->low) / (axis->high - axis->low);
    return isfinite(*out);
}

bool gw_plot_place(struct gw_point *out, const struct gw_plot *plot, double x, double y)
{
    double across, up;
    if (!part_of(&across, &plot->x, x) || !part_of(&up, &plot->y, y)) return false;
    *out = (struct gw_point){plot->left + across * plot->width, plot->top + (1 - up) * plot->height};
    return true;
}

static const double TICK = 4, BESIDE_TICK = 3;
static const struct gw_lettering NUMBER = {.size = GW_LABEL_SIZE};

void gw_ticks_axis(struct gw_ticks *out, const struct gw_axis *axis, double length, double apart)
{
    const int wanted = (int)fmin(fmax(length / apart, 2), 20);
    if (axis->logarithmic) gw_ticks_log(out, axis->low, axis->high);
    else gw_ticks_linear(out, axis->low, axis->high, wanted);
}

/* The decimals of one number on a log axis are its own: 0.01, 1, 100. */
static const char *number_of(struct gw_arena *arena, const struct gw_axis *axis, const struct gw_ticks *ticks,
                             double value)
{
    const double PLAIN_BELOW = 1e7;
    struct gw_text text;
    gw_text_init(&text, arena);
    if (axis->logarithmic && !(value >= 1 && value < PLAIN_BELOW)) gw_text_number(&text, value, 3);
    else if (axis->logarithmic) gw_text_fixed(&text, value, 0);
    else gw_text_fixed(&text, value, ticks->decimals);
    return text.at;
}

static void grid_line(struct gw_canvas *canvas, struct gw_point from, struct gw_point to)
{
    gw_canvas_line(canvas, from, to, &(struct gw_look){.line = GW_FAINT, .width = GW_LINE_THIN});
}

static void tick_mark(struct gw_canvas *canvas, struct gw_point from, struct gw_point to)
{
    gw_canvas_line(canvas, from, to, &(struct gw_look){.line = GW_RULE, .width = GW_LINE_THIN});
}

/* A number that another one leaves no room for is left out. */
static void number(struct gw_canvas *canvas, struct gw_point at, enum gw_align align, const char *words)
{
    struct gw_lettering font = NUMBER;
    font.align = align;
    gw_canvas_label(canvas, at, 0, 1, &(struct gw_box){0, 0, INFINITY, INFINITY}, &font, words);
}

static void tick_x(struct gw_canvas *canvas, const struct gw_plot *plot, const struct gw_ticks *ticks, size_t i)
{
    const double bottom = plot->top + plot->height, length = ticks->minor[i] ? TICK / 2 : TICK;
    struct gw_point at;
    if (!gw_plot_place(&at, plot, ticks->values[i], plot->y.low)) return;
    if (!ticks->minor[i]) grid_line(canvas, (struct gw_point){at.x, plot->top}, (struct gw_point){at.x, bottom});
    tick_mark(canvas, (struct gw_point){at.x, bottom}, (struct gw_point){at.x, bottom + length});
    if (ticks->minor[i]) return;
    number(canvas, (struct gw_point){at.x, bottom + TICK + NUMBER.size}, GW_ALIGN_MIDDLE,
           number_of(canvas->arena, &plot->x, ticks, ticks->values[i]));
}

static void tick_y(struct gw_canvas *canvas, const struct gw_plot *plot, const struct gw_ticks *ticks, size_t i)
{
    const double length = ticks->minor[i] ? TICK / 2 : TICK;
    struct gw_point at;
    if (!gw_plot_place(&at, plot, plot->x.low, ticks->values[i])) return;
    if (!ticks->minor[i]) grid_line(canvas, at, (struct gw_point){plot->left + plot->width, at.y});
    tick_mark(canvas, (struct gw_point){plot->left - length, at.y}, at);
    if (ticks->minor[i]) return;
    number(canvas, (struct gw_point){plot->left - TICK - BESIDE_TICK, at.y + 0.36 * NUMBER.size}, GW_ALIGN_END,
           number_of(canvas->arena, &plot->y, ticks, ticks->values[i]));
}

static const double APART_X = 60, APART_Y = 40;

double gw_plot_beside(const struct gw_plot *plot, struct gw_arena *arena)
{
    struct gw_ticks ticks;
    double widest = 0;
    gw_ticks_axis(&ticks, &plot->y, plot->height, APART_Y);
    for (size_t i = 0; i < ticks.n; i++) {
        const char *words = number_of(arena, &plot->y, &ticks, ticks.values[i]);
        if (!ticks.minor[i]) widest = fmax(widest, gw_lettering_width(&NUMBER, words));
    }
    return widest + TICK + BESIDE_TICK;
}

/* Labels stand at the axes' ends: above the left one, below the right end of the lower one. */
static void axis_labels(struct gw_canvas *canvas, const struct gw_plot *plot)
{
    const struct gw_lettering start = {.size = GW_LABEL_SIZE, .color = GW_INK2};
    struct gw_lettering last = start;
    const struct gw_point above = {plot->left - gw_plot_beside(plot, canvas->arena), plot->top - 10};
    const struct gw_point below = {plot->left + plot->width, plot->top + plot->height + TICK + 2.5 * NUMBER.size};
    last.align = GW_ALIGN_END;
    if (plot->x.label) gw_canvas_text(canvas, below, &last, plot->x.label);
    if (plot->y.label) gw_canvas_text(canvas, above, &start, plot->y.label);
}

static struct gw_box area_of(const struct gw_plot *plot)
{
    return (struct gw_box){plot->left, plot->top, plot->left + plot->width, plot->top + plot->height};
}

void gw_plot_open(struct gw_canvas *canvas, const struct gw_plot *plot)
{
    struct gw_ticks ticks;
    gw_ticks_axis(&ticks, &plot->x, plot->width, APART_X);
    for (size_t i = 0; i < ticks.n; i++) tick_x(canvas, plot, &ticks, i);
    gw_ticks_axis(&ticks, &plot->y, plot->height, APART_Y);
    for (size_t i = 0; i < ticks.n; i++) tick_y(canvas, plot, &ticks, i);
    const struct gw_box area = area_of(plot);
    gw_canvas_rectangle(canvas, &area, &(struct gw_look){.line = GW_RULE, .width = GW_LINE_THIN});
    axis_labels(canvas, plot);
}

/* A line far outside is cut by the viewer; these limits only keep the numbers printable. */
static struct gw_point bounded(const struct gw_plot *plot, struct gw_point p)
{
    const double x = 10 * plot->width, y = 10 * plot->height;
    return (struct gw_point){fmin(fmax(p.x, plot->left - x), plot->left + plot->width + x),
                             fmin(fmax(p.y, plot->top - y), plot->top + plot->height + y)};
}

/* From points[*at] on: places of the next unbroken piece. */
static size_t next_piece(struct gw_point *places, const struct gw_plot *plot, const struct gw_point *points, size_t n,
                         size_t *at)
{
    size_t used = 0;
    while (*at < n && !gw_plot_place(&places[0], plot, points[*at].x, points[*at].y)) ++*at;
    while (*at < n && gw_plot_place(&places[used], plot, points[*at].x, points[*at].y)) {
        places[used] = bounded(plot, places[used]);
        used++;
        ++*at;
    }
    return used;
}

void gw_plot_curve(struct gw_canvas *canvas, const struct gw_plot *plot, const struct gw_point *points, size_t n,
                   const struct gw_look *look)
{
    struct gw_point *places = gw_alloc(canvas->arena, n + 1, sizeof *places);
    size_t at = 0, used;
    const struct gw_box area = area_of(plot);
    gw_canvas_clip(canvas, &area);
    while ((used = next_piece(places, plot, points, n, &at)) > 0) gw_canvas_polyline(canvas, places, used, look);
    gw_canvas_clip_end(canvas);
}

void gw_plot_area(struct gw_canvas *canvas, const struct gw_plot *plot, const struct gw_point *points, size_t n,
                  double base, const struct gw_look *look)
{
    struct gw_point *places = gw_alloc(canvas->arena, n + 2, sizeof *places);
    struct gw_point foot = {plot->left, plot->top + plot->height}; /* stays for the zero of a log axis */
    size_t at = 0, used;
    gw_plot_place(&foot, plot, plot->x.low, base);
    foot = bounded(plot, foot);
    const struct gw_box area = area_of(plot);
    gw_canvas_clip(canvas, &area);
    while ((used = next_piece(places, plot, points, n, &at)) > 0) {
        places[used] = (struct gw_point){places[used - 1].x, foot.y};
        places[used + 1] = (struct gw_point){places[0].x, foot.y};
        gw_canvas_polygon(canvas, places, used + 2, look);
    }
    gw_canvas_clip_end(canvas);
}

size_t gw_plot_marks(struct gw_canvas *canvas, const struct gw_plot *plot, const struct gw_point *points, size_t n,
                     double radius, const struct gw_look *look)
{
    const double slack = 0.5;
    size_t outside = 0;
    for (size_t i = 0; i < n; i++) {
        struct gw_point at;
        bool there = gw_plot_place(&at, plot, points[i].x, points[i].y);
        there = there && at.x >= plot->left - slack && at.x <= plot->left + plot->width + slack &&
                at.y >= plot->top - slack && at.y <= plot->top + plot->height + slack;
        if (there) gw_canvas_circle(canvas, at, radius, look);
        else outside++;
    }
    return outside;
}

double gw_canvas_key(struct gw_canvas *canvas, struct gw_point at, double width, const struct gw_key_entry *entries,
                     size_t n)
{
    const double sample = 27, gap = 7, between = 3, middle = 0.3 * GW_LABEL_SIZE, half = 6;
    const struct gw_lettering font = {.size = GW_LABEL_SIZE};
    double line = at.y + GW_LABEL_SIZE;
    for (size_t i = 0; i < n; i++) {
        const struct gw_point from = {at.x, line - middle}, to = {at.x + sample, line - middle};
        const struct gw_box swatch = {from.x, from.y - half, to.x, from.y + half};
        if (entries[i].mark)
            gw_canvas_circle(canvas, (struct gw_point){at.x + sample / 2, from.y}, 5, &entries[i].look);
        else if (entries[i].look.fill) gw_canvas_rectangle(canvas, &swatch, &entries[i].look);
        else gw_canvas_line(canvas, from, to, &entries[i].look);
        line = between + gw_canvas_paragraph(canvas, (struct gw_point){at.x + sample + gap, line}, width - sample - gap,
                                             &font, entries[i].text);
    }
    return line;
}
