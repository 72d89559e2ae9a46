/* Axes: round tick values, the way from data to the page, curves and marks. */
#include "galeward/svg.h"

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

static const double NUMBER_SIZE = 11, LABEL_SIZE = 12, TICK = 4;

/* About one number every so many pixels. */
static void axis_ticks(struct gw_ticks *out, const struct gw_axis *axis, double length, double apart)
{
    const int wanted = (int)fmin(fmax(length / apart, 2), 20);
    if (axis->logarithmic) gw_ticks_log(out, axis->low, axis->high);
    else gw_ticks_linear(out, axis->low, axis->high, wanted);
}

/* The decimals of one number on a log axis are its own: 0.01, 1, 100. */
static const char *number_of(struct gw_svg *svg, const struct gw_axis *axis, const struct gw_ticks *ticks, double value)
{
    const double PLAIN_BELOW = 1e7;
    struct gw_text text;
    gw_text_init(&text, svg->out->arena);
    if (axis->logarithmic && !(value >= 1 && value < PLAIN_BELOW)) gw_text_number(&text, value, 3);
    else if (axis->logarithmic) gw_text_fixed(&text, value, 0);
    else gw_text_fixed(&text, value, ticks->decimals);
    return text.at;
}

static void tick_x(struct gw_svg *svg, const struct gw_plot *plot, const struct gw_ticks *ticks, size_t i)
{
    const struct gw_svg_look grid = {.line = GW_SVG_FAINT, .width = ticks->minor[i] ? 0.4 : 0.8};
    const struct gw_svg_look mark = {.line = GW_SVG_INK, .width = 1};
    const double bottom = plot->top + plot->height;
    struct gw_point at;
    if (!gw_plot_place(&at, plot, ticks->values[i], plot->y.low)) return;
    gw_svg_line(svg, (struct gw_point){at.x, plot->top}, (struct gw_point){at.x, bottom}, &grid);
    if (ticks->minor[i]) return;
    gw_svg_line(svg, (struct gw_point){at.x, bottom}, (struct gw_point){at.x, bottom + TICK}, &mark);
    gw_svg_text(svg, (struct gw_point){at.x, bottom + TICK + NUMBER_SIZE},
                &(struct gw_svg_font){.size = NUMBER_SIZE, .anchor = GW_SVG_MIDDLE},
                number_of(svg, &plot->x, ticks, ticks->values[i]));
}

/* Returns the width of its number. */
static double tick_y(struct gw_svg *svg, const struct gw_plot *plot, const struct gw_ticks *ticks, size_t i)
{
    const struct gw_svg_look grid = {.line = GW_SVG_FAINT, .width = ticks->minor[i] ? 0.4 : 0.8};
    const struct gw_svg_look mark = {.line = GW_SVG_INK, .width = 1};
    const struct gw_svg_font font = {.size = NUMBER_SIZE, .anchor = GW_SVG_END};
    struct gw_point at;
    if (!gw_plot_place(&at, plot, plot->x.low, ticks->values[i])) return 0;
    gw_svg_line(svg, at, (struct gw_point){plot->left + plot->width, at.y}, &grid);
    if (ticks->minor[i]) return 0;
    const char *number = number_of(svg, &plot->y, ticks, ticks->values[i]);
    gw_svg_line(svg, (struct gw_point){plot->left - TICK, at.y}, at, &mark);
    gw_svg_text(svg, (struct gw_point){plot->left - TICK - 2, at.y + 0.35 * NUMBER_SIZE}, &font, number);
    return gw_svg_text_width(number, &font);
}

void gw_plot_open(struct gw_svg *svg, const struct gw_plot *plot)
{
    const struct gw_svg_font label = {.size = LABEL_SIZE, .anchor = GW_SVG_MIDDLE};
    struct gw_svg_font upward = label;
    struct gw_ticks ticks;
    double widest = 0;
    upward.upward = true;
    axis_ticks(&ticks, &plot->x, plot->width, 45);
    for (size_t i = 0; i < ticks.n; i++) tick_x(svg, plot, &ticks, i);
    axis_ticks(&ticks, &plot->y, plot->height, 40);
    for (size_t i = 0; i < ticks.n; i++) widest = fmax(widest, tick_y(svg, plot, &ticks, i));
    gw_svg_rectangle(svg, plot->left, plot->top, plot->width, plot->height,
                     &(struct gw_svg_look){.line = GW_SVG_INK, .width = 1});
    const struct gw_point below = {plot->left + plot->width / 2, plot->top + plot->height + TICK + NUMBER_SIZE + 18};
    const struct gw_point beside = {plot->left - TICK - widest - 8, plot->top + plot->height / 2};
    if (plot->x.label) gw_svg_text(svg, below, &label, plot->x.label);
    if (plot->y.label) gw_svg_text(svg, beside, &upward, plot->y.label);
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

void gw_plot_curve(struct gw_svg *svg, const struct gw_plot *plot, const struct gw_point *points, size_t n,
                   const struct gw_svg_look *look)
{
    struct gw_point *places = gw_alloc(svg->out->arena, n + 1, sizeof *places);
    size_t at = 0, used;
    gw_svg_clip_open(svg, plot->left, plot->top, plot->width, plot->height);
    while ((used = next_piece(places, plot, points, n, &at)) > 0) gw_svg_polyline(svg, places, used, look);
    gw_svg_clip_close(svg);
}

void gw_plot_area(struct gw_svg *svg, const struct gw_plot *plot, const struct gw_point *points, size_t n, double base,
                  const struct gw_svg_look *look)
{
    struct gw_point *places = gw_alloc(svg->out->arena, n + 2, sizeof *places);
    struct gw_point foot = {plot->left, plot->top + plot->height}; /* stays for the zero of a log axis */
    size_t at = 0, used;
    gw_plot_place(&foot, plot, plot->x.low, base);
    foot = bounded(plot, foot);
    gw_svg_clip_open(svg, plot->left, plot->top, plot->width, plot->height);
    while ((used = next_piece(places, plot, points, n, &at)) > 0) {
        places[used] = (struct gw_point){places[used - 1].x, foot.y};
        places[used + 1] = (struct gw_point){places[0].x, foot.y};
        gw_svg_polygon(svg, places, used + 2, look);
    }
    gw_svg_clip_close(svg);
}

size_t gw_plot_marks(struct gw_svg *svg, const struct gw_plot *plot, const struct gw_point *points, size_t n,
                     double radius, const struct gw_svg_look *look)
{
    const double slack = 0.5;
    size_t outside = 0;
    for (size_t i = 0; i < n; i++) {
        struct gw_point at;
        bool there = gw_plot_place(&at, plot, points[i].x, points[i].y);
        there = there && at.x >= plot->left - slack && at.x <= plot->left + plot->width + slack &&
                at.y >= plot->top - slack && at.y <= plot->top + plot->height + slack;
        if (there) gw_svg_circle(svg, at, radius, look);
        else outside++;
    }
    return outside;
}

double gw_svg_legend(struct gw_svg *svg, struct gw_point at, const struct gw_legend_entry *entries, size_t n)
{
    const double line = 17, sample = 26;
    const struct gw_svg_font font = {.size = LABEL_SIZE};
    for (size_t i = 0; i < n; i++) {
        const double middle = at.y + ((double)i + 0.5) * line;
        const struct gw_point from = {at.x, middle}, to = {at.x + sample, middle}, center = {at.x + sample / 2, middle};
        if (entries[i].mark) gw_svg_circle(svg, center, 4, &entries[i].look);
        else if (entries[i].look.fill) gw_svg_rectangle(svg, at.x, middle - 5, sample, 10, &entries[i].look);
        else gw_svg_line(svg, from, to, &entries[i].look);
        gw_svg_text(svg, (struct gw_point){at.x + sample + 7, middle + 0.35 * LABEL_SIZE}, &font, entries[i].text);
    }
    return at.y + (double)n * line;
}
