/* A lite under blast: the pairs of peak pressure and impulse that just break it, with the demand and a rating. */
#include "galeward/model.h"
#include "galeward/plot.h"
#include "report/draw/drawings.h"
#include "report/draw/sheet.h"
#include "report/page.h"

#include "tables_data.h"

#include <math.h>
#include <string.h>

/* The page, in pixels. */
static const double PLOT = 400, ABOVE = 34, BELOW = 50;

static const struct gw_lettering REGION = {.size = 13.5, .bold = true, .color = GW_INK2, .plate = true};

static const struct gw_look WHOLE = {.fill = GW_PANEL};
static const struct gw_look CURVE = {.line = GW_INK, .width = GW_LINE_HEAVY};
static const struct gw_look LIMIT = {.line = GW_INK, .width = GW_LINE_THIN, .dashes = "8 4"};
static const struct gw_look SAME = {.line = GW_INK, .width = GW_LINE_MEDIUM, .dashes = "2 3"};
static const struct gw_look DEMAND = {.fill = GW_INK, .line = GW_PAPER, .width = GW_LINE_MEDIUM};
static const struct gw_look COVERED = {.line = GW_INK, .width = GW_LINE_MEDIUM, .dashes = "10 3 2 3"};
static const struct gw_look RATING = {.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_BOLD};

enum { POINTS = 81 };
struct chart_sheet {
    struct sheet page;
    struct gw_response_chart chart;
    const struct isodamage_drawing *of;
    bool curved;                        /* there is a curve */
    double pressure_unit, impulse_unit; /* Pa, Pa s: one of the axis's unit */
    const char *pressure_name, *impulse_name;
    struct gw_point curve[POINTS + 2]; /* impulse, pressure in the axes' units; the first two lead in from the left */
};

/* Blast is spoken of in psi and kPa, not in the units of wind. */
static void choose_units(struct chart_sheet *s)
{
    s->pressure_name = s->page.shown == GW_US ? "psi" : "kPa";
    s->impulse_name = s->page.shown == GW_US ? "psi-ms" : "kPa-ms";
    s->pressure_unit =
        gw_unit_find(gw_units_standard(), GW_PRESSURE, s->pressure_name, strlen(s->pressure_name))->factor;
    s->impulse_unit = gw_unit_find(gw_units_standard(), GW_IMPULSE, s->impulse_name, strlen(s->impulse_name))->factor;
}

static struct gw_point place(const struct chart_sheet *s, struct gw_blast_pair pair)
{
    return (struct gw_point){pair.impulse / s->impulse_unit, pair.pressure / s->pressure_unit};
}

static bool is_given(struct gw_blast_pair pair) { return gw_given(pair.pressure) && gw_given(pair.impulse); }

/* Axes wide enough for the bends of the curve and for every mark. */
static struct gw_plot plot_of(const struct chart_sheet *s, double top)
{
    const double before = 0.4, after = 40, room = 1.6, around = 10;
    const struct gw_response_chart *c = &s->chart;
    struct gw_point low = place(s, s->curved ? c->least : c->demand), high = low;
    low.x *= s->curved ? before : 1 / around, low.y *= s->curved ? before : 1 / around;
    high.x *= s->curved ? after : around, high.y *= s->curved ? after : around;
    const struct gw_blast_pair marks[] = {c->demand, c->rating};
    for (size_t i = 0; i < 2; i++) {
        const struct gw_point at = place(s, marks[i]);
        if (!is_given(marks[i])) continue;
        low = (struct gw_point){fmin(low.x, at.x / room), fmin(low.y, at.y / room)};
        high = (struct gw_point){fmax(high.x, at.x * room), fmax(high.y, at.y * room)};
    }
    struct gw_plot plot = {
        .top = top,
        .height = PLOT,
        .x = {low.x, high.x, true, gw_format(s->page.arena, "Reflected impulse, %s", s->impulse_name)},
        .y = {low.y, high.y, true, gw_format(s->page.arena, "Peak reflected pressure, %s", s->pressure_name)}};
    plot.left = SHEET_MARGIN + gw_plot_beside(&plot, s->page.arena);
    plot.width = SHEET_MARGIN + SHEET_LIVE - plot.left;
    return plot;
}

/* Durations from far shorter to far longer than the period, so that both ends lie on the asymptotes. */
static enum gw_status find_curve(struct chart_sheet *s, const struct gw_plot *plot, struct gw_engine *engine)
{
    const struct gw_response_chart *c = &s->chart;
    const double high_p = plot->y.high * s->pressure_unit, high_i = plot->x.high * s->impulse_unit;
    const double shortest = 2 * c->least.impulse / high_p, longest = 2 * high_i / c->least.pressure;
    struct gw_blast_pair pairs[POINTS];
    const enum gw_status status = gw_blast_isodamage(pairs, POINTS, c->curve, shortest, longest, engine);
    if (status) return status;
    for (size_t i = 0; i < POINTS; i++) s->curve[i + 2] = place(s, pairs[i]);
    const double top = fmax(plot->y.high, s->curve[2].y);
    s->curve[0] = (struct gw_point){plot->x.low, top};
    s->curve[1] = (struct gw_point){s->curve[2].x, top};
    return GW_OK;
}

static void draw_limits(struct chart_sheet *s, const struct gw_plot *plot)
{
    const struct gw_point least = place(s, s->chart.least);
    const struct gw_point upright[] = {{least.x, plot->y.low}, {least.x, plot->y.high}};
    const struct gw_point level[] = {{plot->x.low, least.y}, {plot->x.high, least.y}};
    gw_plot_curve(s->page.canvas, plot, upright, 2, &LIMIT);
    gw_plot_curve(s->page.canvas, plot, level, 2, &LIMIT);
}

/* From the demand along its own duration to the curve. */
static void draw_margin(struct chart_sheet *s, const struct gw_plot *plot)
{
    const struct gw_point ends[] = {place(s, s->chart.demand), place(s, s->chart.breaking)};
    if (is_given(s->chart.breaking)) gw_plot_curve(s->page.canvas, plot, ends, 2, &SAME);
}

static const char *number(const struct chart_sheet *s, double value, enum rounding rounding)
{
    struct gw_text text;
    gw_text_init(&text, s->page.arena);
    gw_add_figure(&text, value, rounding);
    return text.at;
}

static const char *pair_text(const struct chart_sheet *s, struct gw_blast_pair pair, enum rounding rounding)
{
    const struct gw_point at = place(s, pair);
    return gw_format(s->page.arena, "%s %s, %s %s", number(s, at.y, rounding), s->pressure_name,
                     number(s, at.x, rounding), s->impulse_name);
}

/* Words
 * -------------------------------------------------------------------------------------------------------------------
 */

/* No label lies on the line between the two, in data. */
static void keep_line(struct chart_sheet *s, const struct gw_plot *plot, struct gw_point from, struct gw_point to)
{
    const double half = 2, part = 4; /* pixels */
    struct gw_point a, b;
    if (!gw_plot_place(&a, plot, from.x, from.y) || !gw_plot_place(&b, plot, to.x, to.y)) return;
    const double dx = b.x - a.x, dy = b.y - a.y, length = fmin(hypot(dx, dy), plot->width + plot->height);
    const int parts = 1 + (int)(length / part);
    for (int i = 0; i < parts; i++) {
        const struct gw_point p = {a.x + dx * i / parts, a.y + dy * i / parts};
        const struct gw_point q = {a.x + dx * (i + 1) / parts, a.y + dy * (i + 1) / parts};
        gw_canvas_keep(s->page.canvas, &(struct gw_box){fmin(p.x, q.x) - half, fmin(p.y, q.y) - half,
                                                        fmax(p.x, q.x) + half, fmax(p.y, q.y) + half});
    }
}

static void keep_lines(struct chart_sheet *s, const struct gw_plot *plot)
{
    const struct gw_response_chart *c = &s->chart;
    const struct gw_point least = place(s, c->least), rating = place(s, c->rating);
    for (size_t i = 0; s->curved && i + 1 < POINTS + 2; i++) keep_line(s, plot, s->curve[i], s->curve[i + 1]);
    if (s->curved) {
        keep_line(s, plot, (struct gw_point){least.x, plot->y.low}, (struct gw_point){least.x, plot->y.high});
        keep_line(s, plot, (struct gw_point){plot->x.low, least.y}, (struct gw_point){plot->x.high, least.y});
    }
    if (is_given(c->breaking)) keep_line(s, plot, place(s, c->demand), place(s, c->breaking));
    if (!is_given(c->rating)) return;
    keep_line(s, plot, (struct gw_point){plot->x.low, rating.y}, rating);
    keep_line(s, plot, rating, (struct gw_point){rating.x, plot->y.low});
}

static void keep_mark(struct chart_sheet *s, const struct gw_plot *plot, struct gw_blast_pair pair)
{
    const double half = 7;
    const struct gw_point at = place(s, pair);
    struct gw_point p;
    if (gw_plot_place(&p, plot, at.x, at.y))
        gw_canvas_keep(s->page.canvas, &(struct gw_box){p.x - half, p.y - half, p.x + half, p.y + half});
}

static bool lies_in(const struct gw_plot *plot, const struct gw_box *box)
{
    return box->left > plot->left && box->right < plot->left + plot->width && box->top > plot->top &&
           box->bottom < plot->top + plot->height;
}

/* To words that found no place near their mark. */
static void lead(struct chart_sheet *s, struct gw_point from, struct gw_point to)
{
    const double radius = 7, length = hypot(to.x - from.x, to.y - from.y), part = radius / length;
    const struct gw_point start = {from.x + part * (to.x - from.x), from.y + part * (to.y - from.y)};
    gw_canvas_line(s->page.canvas, start, to, &(struct gw_look){.line = GW_PAPER, .width = GW_LINE_HEAVY});
    gw_canvas_line(s->page.canvas, start, to, &(struct gw_look){.line = GW_INK, .width = GW_LINE_THIN});
}

/* Beside a place on the page: right, left, above and below, the nearest that is free in the plot. */
static bool write_beside(struct chart_sheet *s, const struct gw_plot *plot, struct gw_point at,
                         const struct gw_lettering *lettering, const char *text, bool leads)
{
    enum { AWAY = 12, NEAR = 18 };
    const double off = 13, row = 9;
    for (int i = 0; i < AWAY; i++)
        for (int side = 0; side < 4; side++) {
            struct gw_lettering font = *lettering;
            const bool left = side / 2, above = side % 2 == 0;
            const double y = at.y + 0.36 * font.size + (above ? -1 : 1) * i * row;
            const struct gw_point p = {at.x + (left ? -off : off), y};
            font.align = left ? GW_ALIGN_END : GW_ALIGN_START;
            const struct gw_box box = gw_lettering_box(&font, p, text);
            if (!lies_in(plot, &box) || !gw_canvas_is_free(s->page.canvas, &box)) continue;
            if (leads && i * row > NEAR) lead(s, at, (struct gw_point){p.x, (box.top + box.bottom) / 2});
            gw_canvas_text(s->page.canvas, p, &font, text);
            return true;
        }
    return false;
}

/* What finds no place stands in the key. */
static void label(struct chart_sheet *s, const struct gw_plot *plot, struct gw_blast_pair pair, const char *text)
{
    static const struct gw_lettering font = {.size = GW_LABEL_SIZE, .bold = true, .plate = true};
    const struct gw_point at = place(s, pair);
    struct gw_point p;
    if (gw_plot_place(&p, plot, at.x, at.y)) write_beside(s, plot, p, &font, text, true);
}

/* Right of the upright limit above; in the lower left corner, or the lower right one. */
static void name_regions(struct chart_sheet *s, const struct gw_plot *plot)
{
    const double off = 18, bottom = plot->top + plot->height - off;
    const struct gw_point least = place(s, s->chart.least);
    struct gw_point corner;
    if (!gw_plot_place(&corner, plot, least.x, least.y)) return;
    write_beside(s, plot, (struct gw_point){corner.x, plot->top + off}, &REGION, "breaks", false);
    if (!write_beside(s, plot, (struct gw_point){plot->left, bottom}, &REGION, "stays whole", false))
        write_beside(s, plot, (struct gw_point){plot->left + plot->width, bottom}, &REGION, "stays whole", false);
}

/* What a rating covers: up to its pressure and its impulse. */
static void draw_rating(struct chart_sheet *s, const struct gw_plot *plot)
{
    const struct gw_point at = place(s, s->chart.rating);
    const struct gw_point corner[] = {{plot->x.low, at.y}, at, {at.x, plot->y.low}};
    gw_plot_curve(s->page.canvas, plot, corner, 3, &COVERED);
    gw_plot_marks(s->page.canvas, plot, &at, 1, 6, &RATING);
}

static void draw_marks(struct chart_sheet *s, const struct gw_plot *plot)
{
    const struct gw_response_chart *c = &s->chart;
    const struct gw_point demand = place(s, c->demand);
    const bool rated = is_given(c->rating);
    if (rated) draw_rating(s, plot);
    gw_plot_marks(s->page.canvas, plot, &demand, 1, 6, &DEMAND);
    keep_lines(s, plot);
    keep_mark(s, plot, c->demand);
    if (rated) keep_mark(s, plot, c->rating);
    label(s, plot, c->demand, gw_format(s->page.arena, "demand: %s", pair_text(s, c->demand, UP)));
    if (rated) label(s, plot, c->rating, gw_format(s->page.arena, "rating: %s", pair_text(s, c->rating, DOWN)));
    if (s->curved) name_regions(s, plot);
}

static const char *whether(const struct chart_sheet *s)
{
    const char *what = s->chart.breaks ? "the glass breaks" : "the glass stays whole";
    if (!s->curved) return "what it does to the glass is not calculated";
    return s->of->verdict ? gw_format(s->page.arena, "by calculation %s", what) : what;
}

/* What there is of them. */
static double draw_key(struct chart_sheet *s, double top)
{
    struct gw_arena *arena = s->page.arena;
    const struct gw_response_chart *c = &s->chart;
    struct gw_key_entry entries[5];
    size_t n = 0;
    if (s->curved) {
        entries[n++] =
            (struct gw_key_entry){gw_format(arena, "just breaks: static strength %s %s at the probability",
                                            number(s, c->curve->capacity / s->pressure_unit, DOWN), s->pressure_name),
                                  CURVE, false};
        entries[n++] = (struct gw_key_entry){
            gw_format(arena, "its limits: very long and very short pulses (%s)", pair_text(s, c->least, DOWN)), LIMIT,
            false};
        entries[n++] = (struct gw_key_entry){
            is_given(c->breaking)
                ? gw_format(arena, "pulses as long as the demand's; breaks at %s", pair_text(s, c->breaking, DOWN))
                : "pulses as long as the demand's",
            SAME, false};
    }
    entries[n++] =
        (struct gw_key_entry){gw_format(arena, "demand %s: %s", pair_text(s, c->demand, UP), whether(s)), DEMAND, true};
    if (is_given(c->rating))
        entries[n++] = (struct gw_key_entry){gw_format(arena, "rating %s%s%s: covers what lies within its lines",
                                                       s->of->rating ? s->of->rating : "", s->of->rating ? ", " : "",
                                                       pair_text(s, c->rating, DOWN)),
                                             RATING, true};
    return gw_canvas_key(s->page.canvas, (struct gw_point){SHEET_MARGIN, top}, SHEET_LIVE, entries, n);
}

static const char *title_of(const struct chart_sheet *s)
{
    if (s->of->title) return s->of->title;
    return gw_format(s->page.arena, "Lite%s%s: %s by %s under blast", s->of->id ? " " : "",
                     s->of->id ? gw_sheet_name(&s->page, s->of->id) : "",
                     gw_sheet_given(&s->page, GW_LENGTH, s->chart.curve->width),
                     gw_sheet_given(&s->page, GW_LENGTH, s->chart.curve->height));
}

static const char *make_up_of(const struct chart_sheet *s, struct gw_engine *engine)
{
    struct gw_text layers;
    if (!s->chart.n_layers) return NULL;
    gw_text_init(&layers, s->page.arena);
    gw_text_add(&layers, "Make-up: ");
    gw_layers_say(&layers, s->chart.layers, s->chart.n_layers, s->page.shown, engine->tables);
    gw_text_add(&layers, ".");
    return layers.at;
}

static const char *method_of(const struct chart_sheet *s, struct gw_engine *engine)
{
    const double probability =
        gw_given(s->chart.probability) ? s->chart.probability : engine->tables->glass_load[0].probability;
    if (!s->curved) return gw_format(s->page.arena, "No pairs that break it are drawn: %s.", s->of->no_curve);
    return gw_format(s->page.arena,
                     "Pairs of peak reflected pressure and reflected impulse of a triangular pulse under which the "
                     "glass just breaks, at a probability of %s. Period of small oscillations %s ms.",
                     number(s, probability, NEAREST), number(s, 1000 * s->chart.curve->period, NEAREST));
}

static double draw_chart(struct chart_sheet *s, const struct gw_plot *plot)
{
    struct gw_canvas *canvas = s->page.canvas;
    if (s->curved) gw_plot_area(canvas, plot, s->curve, POINTS + 2, plot->y.low, &WHOLE);
    gw_plot_open(canvas, plot);
    if (s->curved) {
        draw_limits(s, plot);
        draw_margin(s, plot);
        gw_plot_curve(canvas, plot, s->curve + 1, POINTS + 1, &CURVE);
    }
    draw_marks(s, plot);
    return draw_key(s, plot->top + plot->height + BELOW);
}

/* Head, what is said, the verdict; the base line after them. */
static double draw_head(struct chart_sheet *s, struct gw_engine *engine)
{
    struct gw_arena *arena = s->page.arena;
    const char *id = s->of->id;
    const bool cut = id && strlen(gw_sheet_name(&s->page, id)) < strlen(id);
    const char *demand = gw_format(arena, "Demand %s: %s.", pair_text(s, s->chart.demand, UP), whether(s));
    const char *lines[] = {cut ? gw_format(arena, "Mark: %s", id) : NULL, make_up_of(s, engine), demand,
                           method_of(s, engine)};
    const char *title = title_of(s), *verdict = s->of->verdict;
    s->page.canvas->description = gw_format(arena, "%s %s %s%s%s", lines[1] ? lines[1] : title, lines[3], demand,
                                            verdict ? " " : "", verdict ? verdict : "");
    double y = gw_sheet_lines(&s->page, gw_sheet_head(&s->page, title), s->of->said, s->of->n_said);
    if (verdict) y = gw_sheet_marked(&s->page, y, s->of->mark, verdict);
    return gw_sheet_lines(&s->page, y, lines, 4);
}

static enum gw_status draw_sheet(struct chart_sheet *s, struct gw_engine *engine)
{
    const struct gw_response_chart *c = &s->chart;
    const struct gw_plot plot = plot_of(s, draw_head(s, engine) + ABOVE);
    const enum gw_status status = s->curved ? find_curve(s, &plot, engine) : GW_OK;
    if (status) return status;
    gw_sheet_foot(&s->page, draw_chart(s, &plot), c->notes, c->n_notes);
    return GW_OK;
}

enum gw_status gw_draw_isodamage(struct gw_canvas *canvas, const struct isodamage_drawing *drawing, enum gw_units shown,
                                 struct gw_engine *engine)
{
    struct chart_sheet s = {.chart = *drawing->chart, .of = drawing, .curved = !drawing->no_curve};
    if (s.curved && !is_given(s.chart.least))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "layers",
                         "the strength of the lite lies beyond the plate's solution: "
                         "there is no curve to draw");
    gw_sheet_open(&s.page, canvas, shown);
    choose_units(&s);
    return draw_sheet(&s, engine);
}
