/* A lite under blast: the pairs of peak pressure and impulse that just break it, with the demand and a rating. */
#include "galeward/svg.h"

#include "report/drawings.h"
#include "report/page.h"

#include "tables_data.h"

#include <math.h>
#include <string.h>

/* The page, in pixels. */
static const double PAGE = 760, MARGIN = 30, LEFT = 92, PLOT = 460, BELOW = 56, FOOT_GAP = 18;

static const struct gw_svg_font TITLE = {.size = 18, .bold = true};
static const struct gw_svg_font PLAIN = {.size = 12, .color = GW_SVG_SOFT};
static const struct gw_svg_font FOOT = {.size = 11, .color = GW_SVG_SOFT};
static const struct gw_svg_font REGION = {.size = 13, .color = GW_SVG_SOFT, .plate = true};

static const struct gw_svg_look WHOLE = {.fill = "#e6eef5"};
static const struct gw_svg_look CURVE = {.line = GW_SVG_BLUE, .width = 2.2};
static const struct gw_svg_look LIMIT = {.line = GW_SVG_BLUE, .width = 1, .dashes = "5 4"};
static const struct gw_svg_look SAME = {.line = GW_SVG_SOFT, .width = 1, .dashes = "2 3"};
static const struct gw_svg_look DEMAND = {.fill = GW_SVG_ORANGE, .line = GW_SVG_INK, .width = 1.2};
static const struct gw_svg_look COVERED = {.line = GW_SVG_PLUM, .width = 1};
static const struct gw_svg_look RATING = {.fill = GW_SVG_PAPER, .line = GW_SVG_PLUM, .width = 2.2};

enum { POINTS = 81 };
struct sheet {
    struct gw_svg svg;
    struct gw_arena *arena;
    enum gw_units shown;
    struct gw_response_chart chart;
    double pressure_unit, impulse_unit; /* Pa, Pa s: one of the axis's unit */
    const char *pressure_name, *impulse_name;
    struct gw_point curve[POINTS + 2]; /* impulse, pressure in the axes' units; the first two lead in from the left */
    double top;                        /* of the data area */
};

/* Blast is spoken of in psi and kPa, not in the units of wind. */
static void choose_units(struct sheet *s)
{
    s->pressure_name = s->shown == GW_US ? "psi" : "kPa";
    s->impulse_name = s->shown == GW_US ? "psi-ms" : "kPa-ms";
    s->pressure_unit =
        gw_unit_find(gw_units_standard(), GW_PRESSURE, s->pressure_name, strlen(s->pressure_name))->factor;
    s->impulse_unit = gw_unit_find(gw_units_standard(), GW_IMPULSE, s->impulse_name, strlen(s->impulse_name))->factor;
}

static struct gw_point place(const struct sheet *s, struct gw_blast_pair pair)
{
    return (struct gw_point){pair.impulse / s->impulse_unit, pair.pressure / s->pressure_unit};
}

static bool is_given(struct gw_blast_pair pair) { return gw_given(pair.pressure) && gw_given(pair.impulse); }

/* Axes wide enough for the bends of the curve and for every mark. */
static struct gw_plot plot_of(const struct sheet *s)
{
    const double before = 0.4, after = 40, room = 1.6;
    const struct gw_response_chart *c = &s->chart;
    struct gw_point low = place(s, c->least), high = low;
    low.x *= before, low.y *= before, high.x *= after, high.y *= after;
    const struct gw_blast_pair marks[] = {c->demand, c->rating};
    for (size_t i = 0; i < 2; i++) {
        const struct gw_point at = place(s, marks[i]);
        if (!is_given(marks[i])) continue;
        low = (struct gw_point){fmin(low.x, at.x / room), fmin(low.y, at.y / room)};
        high = (struct gw_point){fmax(high.x, at.x * room), fmax(high.y, at.y * room)};
    }
    return (struct gw_plot){
        .left = LEFT,
        .top = s->top,
        .width = PAGE - MARGIN - LEFT,
        .height = PLOT,
        .x = {low.x, high.x, true, gw_format(s->arena, "Reflected impulse, %s", s->impulse_name)},
        .y = {low.y, high.y, true, gw_format(s->arena, "Peak reflected pressure, %s", s->pressure_name)}};
}

/* Durations from far shorter to far longer than the period, so that both ends lie on the asymptotes. */
static enum gw_status find_curve(struct sheet *s, const struct gw_plot *plot, struct gw_engine *engine)
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

static void draw_limits(struct sheet *s, const struct gw_plot *plot)
{
    const struct gw_point least = place(s, s->chart.least);
    const struct gw_point upright[] = {{least.x, plot->y.low}, {least.x, plot->y.high}};
    const struct gw_point level[] = {{plot->x.low, least.y}, {plot->x.high, least.y}};
    gw_plot_curve(&s->svg, plot, upright, 2, &LIMIT);
    gw_plot_curve(&s->svg, plot, level, 2, &LIMIT);
}

/* From the demand along its own duration to the curve. */
static void draw_margin(struct sheet *s, const struct gw_plot *plot)
{
    const struct gw_point ends[] = {place(s, s->chart.demand), place(s, s->chart.breaking)};
    if (is_given(s->chart.breaking)) gw_plot_curve(&s->svg, plot, ends, 2, &SAME);
}

/* Beside the upright limit and in the lower left corner, where demands and ratings are rare. */
static void draw_regions(struct sheet *s, const struct gw_plot *plot)
{
    const double off = 12;
    const struct gw_point least = place(s, s->chart.least);
    struct gw_point corner;
    gw_plot_place(&corner, plot, least.x, least.y);
    gw_svg_text(&s->svg, (struct gw_point){corner.x + off, plot->top + off + REGION.size}, &REGION, "breaks");
    gw_svg_text(&s->svg, (struct gw_point){plot->left + off, plot->top + plot->height - off}, &REGION, "stays whole");
}

static const char *number(const struct sheet *s, double value, enum rounding rounding)
{
    struct gw_text text;
    gw_text_init(&text, s->arena);
    gw_add_figure(&text, value, rounding);
    return text.at;
}

static const char *pair_text(const struct sheet *s, struct gw_blast_pair pair, enum rounding rounding)
{
    const struct gw_point at = place(s, pair);
    return gw_format(s->arena, "%s %s, %s %s", number(s, at.y, rounding), s->pressure_name, number(s, at.x, rounding),
                     s->impulse_name);
}

/* A value beside its mark, on the side where there is room. */
static void label(struct sheet *s, const struct gw_plot *plot, struct gw_blast_pair pair, const char *text, bool above)
{
    const struct gw_point at = place(s, pair);
    struct gw_svg_font font = {.size = 12, .bold = true, .plate = true};
    struct gw_point p;
    if (!gw_plot_place(&p, plot, at.x, at.y)) return;
    const bool left = p.x + 12 + gw_svg_text_width(text, &font) > plot->left + plot->width;
    font.anchor = left ? GW_SVG_END : GW_SVG_START;
    gw_svg_text(&s->svg, (struct gw_point){p.x + (left ? -11 : 11), p.y + (above ? -8 : 18)}, &font, text);
}

/* What a rating covers: up to its pressure and its impulse. */
static void draw_rating(struct sheet *s, const struct gw_plot *plot)
{
    const struct gw_point at = place(s, s->chart.rating);
    const struct gw_point corner[] = {{plot->x.low, at.y}, at, {at.x, plot->y.low}};
    gw_plot_curve(&s->svg, plot, corner, 3, &COVERED);
    gw_plot_marks(&s->svg, plot, &at, 1, 6.5, &RATING);
}

/* The line to the curve leaves the demand upward where the glass stays whole, else downward: the words go the other
 * way, or out of the way of a rating's. */
static void draw_marks(struct sheet *s, const struct gw_plot *plot)
{
    const struct gw_response_chart *c = &s->chart;
    const struct gw_point demand = place(s, c->demand);
    const bool rated = is_given(c->rating);
    const bool above = rated ? c->demand.pressure > c->rating.pressure : c->breaks;
    if (rated) draw_rating(s, plot);
    gw_plot_marks(&s->svg, plot, &demand, 1, 5, &DEMAND);
    label(s, plot, c->demand, gw_format(s->arena, "demand: %s", pair_text(s, c->demand, UP)), above);
    if (rated) label(s, plot, c->rating, gw_format(s->arena, "rating: %s", pair_text(s, c->rating, DOWN)), !above);
}

static double draw_legend(struct sheet *s, double top)
{
    struct gw_legend_entry entries[5] = {
        {gw_format(s->arena, "just breaks: static strength %s %s at the probability",
                   number(s, s->chart.curve->capacity / s->pressure_unit, DOWN), s->pressure_name),
         CURVE, false},
        {gw_format(s->arena, "its limits: very long and very short pulses (%s)", pair_text(s, s->chart.least, DOWN)),
         LIMIT, false},
        {gw_format(s->arena, "pulses as long as the demand's; breaks at %s", pair_text(s, s->chart.breaking, DOWN)),
         SAME, false},
        {s->chart.breaks ? "demand: the glass breaks" : "demand: the glass stays whole", DEMAND, true},
        {"rating: covers what lies within its lines", RATING, true},
    };
    return gw_svg_legend(&s->svg, (struct gw_point){LEFT, top}, entries, is_given(s->chart.rating) ? 5 : 4);
}

static double legend_height(const struct sheet *s) { return 17 * (is_given(s->chart.rating) ? 5 : 4); }

static const char *length_text(const struct sheet *s, enum gw_dim dim, double si)
{
    struct gw_text text;
    gw_text_init(&text, s->arena);
    gw_quantity_print(&text, gw_units_standard(), dim, s->shown, si);
    return text.at;
}

static const char *title_of(const struct sheet *s)
{
    return gw_format(s->arena, "Lite %s by %s under blast", length_text(s, GW_LENGTH, s->chart.curve->width),
                     length_text(s, GW_LENGTH, s->chart.curve->height));
}

static const char *method_of(const struct sheet *s, struct gw_engine *engine)
{
    const double probability =
        gw_given(s->chart.probability) ? s->chart.probability : engine->tables->glass_load[0].probability;
    struct gw_text layers;
    gw_text_init(&layers, s->arena);
    gw_layers_say(&layers, s->chart.layers, s->chart.n_layers, s->shown, engine->tables);
    return gw_format(s->arena,
                     "%s. Pairs of peak reflected pressure and reflected impulse of a triangular pulse under which the "
                     "glass just breaks, at a probability of %s. Period of small oscillations %s ms.",
                     layers.at, number(s, probability, NEAREST), number(s, 1000 * s->chart.curve->period, NEAREST));
}

/* Returns the lower end; measures only where `svg` is NULL. */
static double draw_head(struct gw_svg *svg, const char *method)
{
    return gw_svg_paragraph(svg, (struct gw_point){MARGIN, 54}, PAGE - 2 * MARGIN, &PLAIN, method);
}

static double draw_foot(const struct sheet *s, struct gw_svg *svg, double top)
{
    struct gw_point at = {MARGIN, top};
    const double width = PAGE - 2 * MARGIN;
    for (size_t i = 0; i < s->chart.n_notes; i++)
        at.y = gw_svg_paragraph(svg, at, width, &FOOT, gw_format(s->arena, "Note: %s.", s->chart.notes[i]));
    return gw_svg_paragraph(svg, at, width, &FOOT, gw_caution_text());
}

static void draw_sheet(struct sheet *s, struct gw_text *out, const struct gw_plot *plot, const char *method)
{
    const double legend = plot->top + plot->height + BELOW, foot = legend + legend_height(s) + FOOT_GAP;
    const char *title = title_of(s);
    const char *description = gw_format(s->arena, "%s Demand %s: %s.", method, pair_text(s, s->chart.demand, UP),
                                        s->chart.breaks ? "the glass breaks" : "the glass stays whole");
    gw_svg_open(&s->svg, out, PAGE, draw_foot(s, NULL, foot) + 6, title, description);
    gw_svg_text(&s->svg, (struct gw_point){MARGIN, 34}, &TITLE, title);
    draw_head(&s->svg, method);
    gw_plot_area(&s->svg, plot, s->curve, POINTS + 2, plot->y.low, &WHOLE);
    gw_plot_open(&s->svg, plot);
    draw_limits(s, plot);
    draw_margin(s, plot);
    gw_plot_curve(&s->svg, plot, s->curve + 1, POINTS + 1, &CURVE);
    draw_regions(s, plot);
    draw_marks(s, plot);
    draw_legend(s, legend);
    draw_foot(s, &s->svg, foot);
    gw_svg_close(&s->svg);
}

enum gw_status gw_draw_isodamage(struct gw_text *out, const struct gw_response_chart *chart, enum gw_units shown,
                                 struct gw_engine *engine)
{
    struct sheet s = {.arena = out->arena, .shown = shown, .chart = *chart};
    if (!is_given(chart->least))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "layers",
                         "the strength of the lite lies beyond the plate's solution: "
                         "there is no curve to draw");
    choose_units(&s);
    const char *method = method_of(&s, engine);
    s.top = draw_head(NULL, method) + 8;
    const struct gw_plot plot = plot_of(&s);
    const enum gw_status status = find_curve(&s, &plot, engine);
    if (!status) draw_sheet(&s, out, &plot, method);
    return status;
}
