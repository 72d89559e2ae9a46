/* What a specification asks of a wall: one fill a requirement, its number on it, its figures in the key. */
#include "report/draw/elevation.h"
#include "report/draw/pictures.h"
#include "report/page.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { ROWS = 5 };
/* Darkest to lightest, as outward pressure elsewhere: the greatest is the darkest. */
static const struct gw_pattern SECOND = {45, 6, 1.5, "#ffffff", false, false},
                               THIRD = {45, 3.8, 1, "#562e70", false, false},
                               FOURTH = {45, 7.6, 0.7, "#562e70", false, false};
static const struct elevation_class LOOKS[ROWS] = {{.look = {.fill = "#562e70"}, .dark = true},
                                                   {.look = {.fill = "#8453a3", .pattern = &SECOND}, .dark = true},
                                                   {.look = {.fill = "#be97d4", .pattern = &THIRD}},
                                                   {.look = {.fill = "#dcc3e9", .pattern = &FOURTH}},
                                                   {.look = {.fill = "#f5eef9"}}};

struct specified_wall {
    const struct specified_picture *of;
    struct gw_arena *arena;
    enum gw_units shown;
    const struct gw_specified_pressure *rows[ROWS]; /* of lites; by what they ask outward, the greatest first */
    size_t n;
    struct elevation_class classes[ROWS + 1];
};

static bool is_row(const struct specified_wall *s, const struct gw_specified_pressure *p)
{
    return !p->framing && p->first->grid == s->of->grid && gw_given(p->outward_asd);
}

static bool before(const struct gw_specified_pressure *a, const struct gw_specified_pressure *b)
{
    return a->outward_asd > b->outward_asd;
}

static void gather(struct specified_wall *s)
{
    const struct gw_specification *spec = s->of->specification;
    for (size_t i = 0; i < spec->pressures.n && s->n < ROWS; i++) {
        size_t at = s->n;
        if (!is_row(s, &spec->pressures.items[i])) continue;
        for (; at && before(&spec->pressures.items[i], s->rows[at - 1]); at--) s->rows[at] = s->rows[at - 1];
        s->rows[at] = &spec->pressures.items[i];
        s->n++;
    }
}

static const char *id_of(const struct gw_specified_pressure *p) { return p->row ? p->row->id : "not known"; }

static const char *figures(const struct specified_wall *s, const struct gw_specified_pressure *p)
{
    struct gw_text text;
    gw_text_init(&text, s->arena);
    gw_add_bare(&text, GW_PRESSURE, s->shown, p->inward_asd, UP);
    gw_text_add(&text, " in, ");
    gw_add_bare(&text, GW_PRESSURE, s->shown, p->outward_asd, UP);
    gw_text_addf(&text, " out");
    return text.at;
}

static const char *words_of(const struct specified_wall *s, const struct gw_specified_pressure *p)
{
    return gw_format(s->arena, "%s, zone %d%s: %s", id_of(p), p->first->zone,
                     p->first->parapet ? " above the roof line" : "", figures(s, p));
}

static void set_classes(struct specified_wall *s)
{
    for (size_t i = 0; i < s->n; i++) {
        s->classes[i] = LOOKS[i];
        s->classes[i].name = words_of(s, s->rows[i]);
        s->classes[i].plate = id_of(s->rows[i]);
    }
    s->classes[s->n] = (struct elevation_class){.name = "no row asks it", .look = {.fill = GW_PAPER}};
}

static size_t class_of(const void *context, const struct gw_element *e)
{
    const struct specified_wall *s = context;
    for (size_t i = 0; i < s->n; i++)
        if (s->rows[i]->first->zone == e->zone && s->rows[i]->first->parapet == e->parapet) return i;
    return s->n;
}

static void cell(struct gw_text *out, const void *context, const struct gw_element *const *lites, size_t n,
                 size_t column)
{
    const struct specified_wall *s = context;
    double most = GW_ABSENT;
    for (size_t i = 0; i < n; i++)
        if (lites[i]->zone == (column ? 5 : 4)) most = fmax(most, -lites[i]->outward_asd.pa);
    gw_add_bare(out, GW_PRESSURE, s->shown, most, UP);
}

static const char *described(const struct specified_wall *s)
{
    struct gw_text text;
    const struct gw_wall_grid *g = s->of->grid;
    gw_text_init(&text, s->arena);
    gw_text_addf(&text, "Elevation of wall %s, %s, with the pressures that are specified.%s", g->wall,
                 gw_elevation_size(s->arena, g), s->n ? " By requirement:" : " No pressure is known here.");
    for (size_t i = 0; i < s->n; i++) gw_text_addf(&text, "%s %s", i ? ";" : "", words_of(s, s->rows[i]));
    if (s->n)
        gw_text_addf(&text, " %s, allowable-stress level. The greatest is %s.",
                     gw_dim_info(GW_PRESSURE)->shown[s->shown], words_of(s, s->rows[0]));
    return text.at;
}

enum gw_status gw_draw_elevation_specify(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                         struct gw_engine *engine)
{
    static const char *const heads[][2] = {{"zone 4", "out"}, {"zone 5", "out"}};
    struct specified_wall s = {.of = of, .arena = canvas->arena, .shown = shown};
    const char *unit = gw_dim_info(GW_PRESSURE)->shown[shown];
    (void)engine;
    gather(&s);
    set_classes(&s);
    const struct elevation e = {
        .takeoff = s.of->results->answer->takeoff,
        .grid = s.of->grid,
        .context = &s,
        .title =
            gw_format(canvas->arena, "Wall %s: pressures that are specified", gw_safe(canvas->arena, s.of->grid->wall)),
        .second = gw_project_line(canvas->arena, s.of->results),
        .caption = gw_format(canvas->arena, "Requirements of wind pressure, %s, allowable-stress level (0.6 W)", unit),
        .note = "The fill is the requirement; the figures beside each row are what its lites take outward, rounded up.",
        .described = described(&s),
        .key = gw_format(canvas->arena, "Required, %s", unit),
        .classes = s.classes,
        .n_classes = s.n + 1,
        .class_of = class_of,
        .heads = heads,
        .n_columns = 2,
        .cell = cell};
    gw_draw_elevation(canvas, &e, shown);
    return GW_OK;
}

void gw_pictures_of_specification(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                                  const struct gw_specification *specification)
{
    const struct gw_takeoff *t = results->answer->takeoff;
    *out = (struct gw_pictures){.n = 0};
    for (size_t i = 0; i < t->n_walls; i++) {
        struct specified_picture *kept = gw_alloc(arena, 1, sizeof *kept);
        *kept = (struct specified_picture){results, specification, t->grids.items[i]};
        const char *title = gw_format(arena, "Wall %s: pressures that are specified, by zone", kept->grid->wall);
        gw_picture_add(out, arena, gw_format(arena, "specified:%s", gw_picture_word(arena, kept->grid->wall)),
                       &(struct gw_figure){title, title, gw_draw_elevation_specify, kept});
    }
    for (size_t i = 0; i < results->pictures.n; i++)
        gw_picture_add(out, arena, results->pictures.items[i].name, &results->pictures.items[i].figure);
}
