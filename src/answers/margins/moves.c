/* The inputs that usually move in a job, as settings of the project's file. */
#include "answers/margins/margins_internal.h"

#include "base/tolerance.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { DIGITS = 15 }; /* so that columns still add up to the wall */

static void put(struct moves *out, struct gw_arena *arena, const char *setting)
{
    out->settings = gw_grow(arena, out->settings, out->n, &out->capacity, sizeof *out->settings);
    out->settings[out->n++] = setting;
}

static const char *meters(struct gw_arena *arena, double m)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_text_number(&text, m, DIGITS);
    gw_text_add(&text, " m");
    return text.at;
}

/* "walls.east"; by number where the name has a mark that paths have. */
static const char *item(struct gw_arena *arena, const char *list, const char *name, size_t index)
{
    if (name && *name && !strpbrk(name, ".=")) return gw_format(arena, "%s.%s", list, name);
    return gw_format(arena, "%s.%zu", list, index + 1);
}

/* Wind ------------------------------------------------------------------------------------------------------------- */

static double wind_speed(const struct gw_model *model, double factor)
{
    return model->project.site ? model->project.site->basic_wind_speed * factor : GW_ABSENT;
}

static void put_wind_speed(struct moves *out, const struct gw_model *model, struct gw_arena *arena, double factor)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_text_add(&text, "site.basic_wind_speed=");
    gw_text_number(&text, wind_speed(model, factor), DIGITS);
    gw_text_add(&text, " m/s");
    put(out, arena, text.at);
}

static double tunnel_factor(const struct gw_model *model, double factor)
{
    (void)model;
    return factor;
}

static void put_tunnel_factor(struct moves *out, const struct gw_model *model, struct gw_arena *arena, double factor)
{
    (void)model;
    (void)arena;
    out->pressures = factor;
}

/* Stories ---------------------------------------------------------------------------------------------------------- */

static double roof_of(const struct gw_model *model, const struct gw_wall *wall)
{
    const struct gw_building *building = gw_model_building(model, wall->building);
    return building && gw_given(building->roof_height) ? building->roof_height : HUGE_VAL;
}

/* What stands above the roof line keeps its distance from it. */
static double lifted(double height, double roof, double factor)
{
    return height <= roof ? height * factor : roof * factor + (height - roof);
}

static double story_height(const struct gw_model *model, double factor)
{
    double tallest = 0;
    for (size_t w = 0; w < model->project.walls.n; w++) {
        const struct gw_wall *wall = &model->project.walls.items[w];
        const size_t n = wall->floors.n;
        for (size_t i = 1; i < n; i++) tallest = fmax(tallest, wall->floors.items[i] - wall->floors.items[i - 1]);
        if (n) tallest = fmax(tallest, fmin(wall->top, roof_of(model, wall)) - wall->floors.items[n - 1]);
    }
    return tallest > 0 ? tallest * factor : GW_ABSENT;
}

static void put_heights(struct moves *out, struct gw_arena *arena, const char *path, const double *heights, size_t n,
                        double roof, double factor)
{
    struct gw_text text;
    if (!n) return;
    gw_text_init(&text, arena);
    gw_text_addf(&text, "%s=[", path);
    for (size_t i = 0; i < n; i++)
        gw_text_addf(&text, "%s%s", i ? ", " : "", meters(arena, lifted(heights[i], roof, factor)));
    gw_text_add(&text, "]");
    put(out, arena, text.at);
}

static void put_anchors(struct moves *out, struct gw_arena *arena, const char *path, const struct gw_wall *wall,
                        double roof, double factor)
{
    struct gw_text text;
    if (!wall->anchors.n) return;
    gw_text_init(&text, arena);
    gw_text_addf(&text, "%s.anchors=[", path);
    for (size_t i = 0; i < wall->anchors.n; i++) {
        const struct gw_wall_anchor *a = &wall->anchors.items[i];
        gw_text_addf(&text, "%s{at: %s", i ? ", " : "", meters(arena, lifted(a->at, roof, factor)));
        for (size_t k = 0; k < a->carries.n; k++)
            gw_text_addf(&text, "%s%s%s", k ? ", " : ", carries: [",
                         a->carries.items[k] == GW_ANCHOR_WIND ? "wind" : "dead", k + 1 == a->carries.n ? "]" : "");
        gw_text_add(&text, "}");
    }
    gw_text_add(&text, "]");
    put(out, arena, text.at);
}

static void put_story_height(struct moves *out, const struct gw_model *model, struct gw_arena *arena, double factor)
{
    const struct gw_project *p = &model->project;
    for (size_t i = 0; i < p->buildings.n; i++) {
        const struct gw_building *b = &p->buildings.items[i];
        if (gw_given(b->roof_height))
            put(out, arena,
                gw_format(arena, "%s.roof_height=%s", item(arena, "buildings", b->name, i),
                          meters(arena, b->roof_height * factor)));
    }
    for (size_t i = 0; i < p->walls.n; i++) {
        const struct gw_wall *w = &p->walls.items[i];
        const char *path = item(arena, "walls", w->name, i);
        const double roof = roof_of(model, w);
        put_heights(out, arena, gw_format(arena, "%s.floors", path), w->floors.items, w->floors.n, roof, factor);
        put_heights(out, arena, gw_format(arena, "%s.splices", path), w->splices.items, w->splices.n, roof, factor);
        put_anchors(out, arena, path, w, roof, factor);
        if (gw_given(w->top))
            put(out, arena, gw_format(arena, "%s.top=%s", path, meters(arena, lifted(w->top, roof, factor))));
    }
}

/* Modules ---------------------------------------------------------------------------------------------------------- */

static size_t columns_of(const struct gw_wall *wall)
{
    if (!wall->columns) return 0;
    return wall->columns->widths.n ? wall->columns->widths.n : (size_t)wall->columns->count;
}

/* The nearest whole number; halves make more columns. */
static size_t columns_at(const struct gw_wall *wall, double factor)
{
    const double n = floor((double)columns_of(wall) / factor + 0.5);
    return n < 1 ? 1 : (size_t)n;
}

static double widest_now(const struct gw_wall *wall)
{
    double widest = wall->columns->width;
    for (size_t i = 0; i < wall->columns->widths.n; i++)
        if (!(widest >= wall->columns->widths.items[i])) widest = wall->columns->widths.items[i];
    return widest;
}

/* A factor of one leaves columns as they are, of whatever widths. */
static bool stays(double factor) { return factor > 1 - GW_HAIR && factor < 1 + GW_HAIR; }

static double module(const struct gw_model *model, double factor)
{
    double widest = 0;
    for (size_t i = 0; i < model->project.walls.n; i++) {
        const struct gw_wall *w = &model->project.walls.items[i];
        if (!columns_of(w)) continue;
        widest = fmax(widest, stays(factor) ? widest_now(w) : w->width / (double)columns_at(w, factor));
    }
    return widest > 0 ? widest : GW_ABSENT;
}

static void put_module(struct moves *out, const struct gw_model *model, struct gw_arena *arena, double factor)
{
    for (size_t i = 0; i < model->project.walls.n; i++) {
        const struct gw_wall *w = &model->project.walls.items[i];
        if (!columns_of(w)) continue;
        const size_t n = columns_at(w, factor);
        put(out, arena,
            gw_format(arena, "%s.columns={count: %zu, width: %s}", item(arena, "walls", w->name, i), n,
                      meters(arena, w->width / (double)n)));
    }
}

/* Words ------------------------------------------------------------------------------------------------------------ */

static int exposure(const struct gw_model *model, size_t index)
{
    (void)index;
    return model->project.site ? (int)model->project.site->exposure : 0;
}

static void put_exposure(struct moves *out, const struct gw_model *model, struct gw_arena *arena, size_t index,
                         const char *word)
{
    (void)model;
    (void)index;
    put(out, arena, gw_format(arena, "site.exposure=%s", word));
}

static int edition(const struct gw_model *model, size_t index)
{
    (void)index;
    return model->project.codes ? (int)model->project.codes->wind : 0;
}

static void put_edition(struct moves *out, const struct gw_model *model, struct gw_arena *arena, size_t index,
                        const char *word)
{
    (void)model;
    (void)index;
    put(out, arena, gw_format(arena, "codes.wind=%s", word));
}

static int enclosure(const struct gw_model *model, size_t index)
{
    return (int)model->project.buildings.items[index].enclosure;
}

static void put_enclosure(struct moves *out, const struct gw_model *model, struct gw_arena *arena, size_t index,
                          const char *word)
{
    const char *path = item(arena, "buildings", model->project.buildings.items[index].name, index);
    put(out, arena, gw_format(arena, "%s.enclosure=%s", path, word));
}

const struct moved_number gw_moved_numbers[] = {
    {"wind speed", GW_SPEED, false, wind_speed, put_wind_speed},
    {"story height", GW_LENGTH, false, story_height, put_story_height},
    {"module", GW_LENGTH, true, module, put_module},
    {"tunnel factor", GW_RATIO, false, tunnel_factor, put_tunnel_factor},
};
const size_t gw_n_moved_numbers = sizeof gw_moved_numbers / sizeof *gw_moved_numbers;
const struct moved_word gw_moved_words[] = {
    {"exposure", gw_exposure_choices, false, exposure, put_exposure},
    {"edition", gw_edition_choices, false, edition, put_edition},
    {"enclosure", gw_enclosure_choices, true, enclosure, put_enclosure},
};
const size_t gw_n_moved_words = sizeof gw_moved_words / sizeof *gw_moved_words;

/* Factors ---------------------------------------------------------------------------------------------------------- */

enum { STEPS = 8 }; /* to half, and to double: a twelfth each */

static int nearest_first(const void *left, const void *right)
{
    const double a = fabs(log(*(const double *)left)), b = fabs(log(*(const double *)right));
    return (a > b) - (a < b);
}

static size_t without_doubles(double *at, size_t n)
{
    size_t kept = 0;
    for (size_t i = 0; i < n; i++)
        if (!kept || fabs(at[i] - at[kept - 1]) > GW_HAIR) at[kept++] = at[i];
    return kept;
}

/* One for each number of columns of each wall. */
static size_t whole_factors(double *at, const struct gw_model *model, bool up)
{
    size_t n = 0;
    for (size_t i = 0; i < model->project.walls.n; i++) {
        const size_t now = columns_of(&model->project.walls.items[i]);
        for (size_t k = (now + 1) / 2; now && k <= 2 * now; k++)
            if (k && k != now && (k < now) == up) at[n++] = (double)now / (double)k;
    }
    qsort(at, n, sizeof *at, nearest_first);
    return without_doubles(at, n);
}

static size_t most_factors(const struct gw_model *model)
{
    size_t n = STEPS;
    for (size_t i = 0; i < model->project.walls.n; i++) n += 2 * columns_of(&model->project.walls.items[i]) + 1;
    return n;
}

struct tried_factors gw_tried_factors(const struct moved_number *number, const struct gw_model *model,
                                      struct gw_arena *arena, bool up)
{
    struct tried_factors out = {.at = gw_alloc(arena, most_factors(model), sizeof *out.at)};
    if (number->whole) {
        out.n = whole_factors(out.at, model, up);
        return out;
    }
    for (int i = 1; i <= STEPS; i++) out.at[out.n++] = pow(2, (up ? 1.0 : -1.0) * i / STEPS);
    return out;
}
