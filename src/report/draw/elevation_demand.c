/* What the wind asks of a wall's lites: bands of pressure, the same for all walls, its figures by row and zone. */
#include "report/draw/elevation.h"
#include "report/draw/pictures.h"
#include "report/page.h"

#include <math.h>
#include <string.h>

enum { BANDS = 5 };
/* Lightest to darkest; hatches lean away from the wall outward, towards it inward. Distances of colors and of gray were
 * measured; docs/methods.md says how. */
static const char *const OUTWARD[BANDS] = {"#f5eef9", "#dcc3e9", "#be97d4", "#8453a3", "#562e70"};
static const char *const INWARD[BANDS] = {"#e5f4ef", "#9ed8c8", "#56b69f", "#067662", "#00493c"};
#define HATCH(angle_, color_, white_)                                                                                  \
    {                                                                                                                  \
        {.angle = 0, .spacing = 0}, {angle_, 7.6, 0.7, color_, false, false}, {angle_, 3.8, 1, color_, false, false},  \
            {angle_, 6, 1.5, white_, false, false},                                                                    \
        {                                                                                                              \
            .angle = 0, .spacing = 0                                                                                   \
        }                                                                                                              \
    }
static const struct gw_pattern OUTWARD_HATCH[BANDS] = HATCH(45, "#562e70", "#ffffff");
static const struct gw_pattern INWARD_HATCH[BANDS] = HATCH(-45, "#00493c", "#ffffff");

static const size_t DARKEST_FIRST[BANDS] = {4, 3, 2, 1, 0};

struct bands {
    const struct wall_picture *of;
    struct sheet text;  /* of figures */
    double least, step; /* Pa */
    struct elevation_class classes[BANDS];
    size_t n;
};

static double pressure(const struct bands *b, const struct gw_element *e)
{
    return b->of->inward ? e->inward_asd.pa : -e->outward_asd.pa;
}

/* Round limits, at most five bands over all walls of the result. */
static void set_limits(struct bands *b, enum gw_units shown)
{
    static const double psf[] = {1, 2, 2.5, 5, 10, 20, 50, 100, 200}, kpa[] = {0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10};
    const struct gw_takeoff *t = b->of->results->answer->takeoff;
    const double unit = 1 / gw_quantity_shown(gw_units_standard(), GW_PRESSURE, shown, 1);
    const double *steps = shown == GW_SI ? kpa : psf;
    const size_t n = shown == GW_SI ? sizeof kpa / sizeof *kpa : sizeof psf / sizeof *psf;
    double least = INFINITY, most = 0;
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind != GW_LITE || !gw_given(pressure(b, e))) continue;
        least = fmin(least, pressure(b, e));
        most = fmax(most, pressure(b, e));
    }
    size_t i = 0;
    if (!isfinite(least)) least = 0;
    while (i + 1 < n && floor(most / (steps[i] * unit)) - floor(least / (steps[i] * unit)) >= BANDS) i++;
    b->step = steps[i] * unit;
    b->least = floor(least / b->step) * b->step;
    b->n = (size_t)fmin(floor(most / b->step) - floor(least / b->step) + 1, BANDS);
}

static const char *limit(struct bands *b, enum gw_units shown, size_t i)
{
    struct gw_text text;
    gw_text_init(&text, b->text.arena);
    gw_text_number(&text, gw_quantity_shown(gw_units_standard(), GW_PRESSURE, shown, b->least + b->step * (double)i),
                   4);
    return text.at;
}

static void set_classes(struct bands *b, enum gw_units shown)
{
    for (size_t i = 0; i < b->n; i++) {
        const struct gw_pattern *hatch = &(b->of->inward ? INWARD_HATCH : OUTWARD_HATCH)[i];
        b->classes[i] = (struct elevation_class){
            .name = gw_format(b->text.arena, "%s to %s", limit(b, shown, i), limit(b, shown, i + 1)),
            .look = {.fill = (b->of->inward ? INWARD : OUTWARD)[i], .pattern = hatch->spacing > 0 ? hatch : NULL},
            .dark = i + 2 >= BANDS};
    }
}

static size_t class_of(const void *context, const struct gw_element *e)
{
    const struct bands *b = context;
    const double p = pressure(b, e);
    const double band = gw_given(p) ? floor((p - b->least) / b->step + 1e-9) : 0;
    return band < 0 ? 0 : band >= (double)b->n ? b->n - 1 : (size_t)band;
}

/* The greatest of a zone, 0: of both; inward or outward. */
static void put_greatest(struct gw_text *out, const struct bands *b, const struct gw_element *const *lites, size_t n,
                         int zone)
{
    double most = GW_ABSENT;
    for (size_t i = 0; i < n; i++)
        if (!zone || lites[i]->zone == zone) most = fmax(most, pressure(b, lites[i]));
    gw_add_bare(out, GW_PRESSURE, b->text.shown, most, UP);
}

static void cell(struct gw_text *out, const void *context, const struct gw_element *const *lites, size_t n,
                 size_t column)
{
    put_greatest(out, context, lites, n, column ? 5 : 4);
}

static const struct gw_element *worst_lite(const struct bands *b)
{
    const struct gw_takeoff *t = b->of->results->answer->takeoff;
    const struct gw_wall_grid *g = b->of->grid;
    const struct gw_element *worst = NULL;
    for (size_t i = g->first_element; i < g->first_element + g->n_elements; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind != GW_LITE || !gw_given(pressure(b, e))) continue;
        if (!worst || pressure(b, e) > pressure(b, worst)) worst = e;
    }
    return worst;
}

/* Its derivation where the report has it, else what prints it. */
static const char *steps_of(const struct bands *b, const struct gw_element *e)
{
    const struct gw_derivations *all = &b->of->results->derivations;
    const bool first = all->list.n && !all->list.items[0].finding && all->list.items[0].element == e;
    return gw_format(b->text.arena, "%sexplain %s", first && !b->of->inward ? "D1, or " : "", e->id);
}

/* Lites of the wall whose figure is printed alike. */
static long as_much(const struct bands *b, const struct gw_element *most)
{
    const struct gw_wall_grid *g = b->of->grid;
    const int digits = gw_dim_info(GW_PRESSURE)->decimals[b->text.shown];
    const double printed = gw_printed(GW_PRESSURE, b->text.shown, pressure(b, most), digits, UP);
    long n = 0;
    for (size_t i = g->first_element; i < g->first_element + g->n_elements; i++) {
        const struct gw_element *e = &b->of->results->answer->takeoff->elements.items[i];
        if (e->kind == GW_LITE && gw_given(pressure(b, e)) &&
            gw_printed(GW_PRESSURE, b->text.shown, pressure(b, e), digits, UP) >= printed)
            n += e->count;
    }
    return n;
}

static struct elevation_flag flag_of(const struct bands *b, const struct gw_element *e)
{
    struct gw_text text;
    gw_text_init(&text, b->text.arena);
    gw_add_bare(&text, GW_PRESSURE, b->text.shown, pressure(b, e), UP);
    gw_text_addf(&text, " %s", gw_dim_info(GW_PRESSURE)->shown[b->text.shown]);
    const long n = as_much(b, e);
    const char *more = n > e->count ? gw_format(b->text.arena, "%ld lites take as much; first: ", n) : "";
    return (struct elevation_flag){
        .element = e,
        .first = gw_format(b->text.arena, "worst %s, lite: %s", b->of->inward ? "inward" : "outward", text.at),
        .second = gw_format(
            b->text.arena, "%s%s, column%s %s, zone %d%s; by %s. Steps: %s", more, e->lite ? e->lite : e->mark,
            strpbrk(e->columns, ",-") ? "s" : "", e->columns, e->zone, e->parapet ? ", above the roof" : "",
            gw_pressure_source_text(b->text.arena, b->of->inward ? &e->inward_by : &e->outward_by), steps_of(b, e))};
}

/* Its bands end where the next whole step is. */
static const char *described(struct bands *b, const char *unit)
{
    const struct gw_wall_grid *g = b->of->grid;
    return gw_format(b->text.arena,
                     "Elevation of wall %s, %s: %s pressures on its lites in %zu band%s, from %s to %s %s, "
                     "allowable-stress level.",
                     g->wall, gw_elevation_size(b->text.arena, g), b->of->inward ? "inward" : "outward", b->n,
                     b->n == 1 ? "" : "s", limit(b, b->text.shown, 0), limit(b, b->text.shown, b->n), unit);
}

enum gw_status gw_draw_elevation_demand(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                        struct gw_engine *engine)
{
    static const char *const heads[][2] = {{"zone 4", ""}, {"zone 5", ""}};
    struct bands b = {.of = of, .text = {.arena = canvas->arena, .shown = shown}};
    const char *way = b.of->inward ? "Inward" : "Outward", *unit = gw_dim_info(GW_PRESSURE)->shown[shown];
    struct elevation e = {.takeoff = b.of->results->answer->takeoff, .grid = b.of->grid, .context = &b};
    struct elevation_flag flag;
    (void)engine;
    set_limits(&b, shown);
    set_classes(&b, shown);
    const struct gw_element *worst = worst_lite(&b);
    if (worst) flag = flag_of(&b, worst);
    e.title = gw_format(canvas->arena, "Wall %s: %s pressure", gw_safe(canvas->arena, b.of->grid->wall),
                        b.of->inward ? "inward" : "outward");
    e.second = gw_project_line(canvas->arena, b.of->results);
    e.caption = gw_format(canvas->arena, "%s pressure on the lites, %s, allowable-stress level (0.6 W)", way, unit);
    e.note = "The fill is the band; the figures beside each row are the greatest of its zone, rounded up.";
    e.described = described(&b, unit);
    e.key = gw_format(canvas->arena, "%s %s", way, unit);
    e.classes = b.classes, e.n_classes = b.n, e.class_of = class_of;
    e.order = DARKEST_FIRST + (BANDS - b.n);
    e.heads = heads, e.n_columns = 2, e.cell = cell;
    e.flags = &flag, e.n_flags = worst ? 1 : 0;
    gw_draw_elevation(canvas, &e, shown);
    return GW_OK;
}
