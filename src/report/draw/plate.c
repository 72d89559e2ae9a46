/* A loaded plate: contours of its deflection and of the largest tension of its unloaded face, beside each other, or one
 * above the other where the plate is wide. */
#include "report/draw/drawings.h"
#include "report/draw/field.h"
#include "report/draw/sheet.h"

#include <math.h>
#include <string.h>

/* The page, in pixels. */
static const double GAP = 30;    /* between panels */
static const double BESIDE = 30; /* for the height's dimension line, left of the plate */
static const double TALLEST = 400, TALLEST_STACKED = 290;
static const double STACKED_FROM = 1.6; /* width over height */

struct plate_sheet {
    struct sheet page;
    const struct plate_drawing *drawing;
    const struct gw_plate_case *plate; /* of the thickness for stress */
    struct gw_plate_case bent;         /* the same plate, of the thickness for deflection */
    struct gw_plate_result result;     /* for stress */
    double deflection_most;            /* m */
    int nx, ny;
    double *deflection, *stress;  /* SI, then in the units shown */
    double column, width, height; /* of a panel; of the plate, all on the page */
    bool stacked;
};

struct panel {
    const char *title, *largest; /* the words under the title */
    const char *mark;            /* the value at the mark */
    double *values;
    double x, y; /* of the largest value: m from the center, x >= 0, y >= 0 */
};

/* Steps short enough for the peaks beside the corners, about equal both ways, even so that the center is a point. */
static void choose_grid(struct plate_sheet *s)
{
    enum { LONG_SIDE = 160, LEAST = 40 };
    const double aspect = s->plate->width / s->plate->height;
    const int across = 2 * (int)lround(fmin(aspect, 1) * LONG_SIDE / 2);
    const int up = 2 * (int)lround(fmin(1 / aspect, 1) * LONG_SIDE / 2);
    s->nx = 1 + (across < LEAST ? LEAST : across);
    s->ny = 1 + (up < LEAST ? LEAST : up);
}

static void to_shown(double *values, int n, enum gw_dim dim, enum gw_units shown)
{
    for (int i = 0; i < n; i++) values[i] = gw_quantity_shown(gw_units_standard(), dim, shown, values[i]);
}

static bool one_thickness(const struct plate_sheet *s) { return s->bent.thickness == s->plate->thickness; }

static enum gw_status solve(struct plate_sheet *s, struct gw_engine *engine)
{
    if (!(s->plate->pressure > 0))
        return gw_refuse(engine, GW_BAD_VALUE, "pressure", "a drawing needs a pressure above zero");
    choose_grid(s);
    const int n = s->nx * s->ny;
    const bool alike = one_thickness(s);
    s->deflection = gw_alloc(s->page.arena, (size_t)n, sizeof(double));
    s->stress = gw_alloc(s->page.arena, (size_t)n, sizeof(double));
    struct gw_plate_result bent;
    enum gw_status status = gw_plate_sample(&bent, &s->bent, s->nx, s->ny, s->deflection, s->stress, engine);
    s->result = bent;
    if (!status && !alike) status = gw_plate_sample(&s->result, s->plate, s->nx, s->ny, NULL, s->stress, engine);
    if (status) return status;
    s->deflection_most = bent.deflection;
    to_shown(s->deflection, n, GW_THICKNESS, s->page.shown);
    to_shown(s->stress, n, GW_STRESS, s->page.shown);
    return GW_OK;
}

/* The true aspect ratio within the room of a panel. */
static void lay_out(struct plate_sheet *s)
{
    const double aspect = s->plate->width / s->plate->height;
    s->stacked = aspect >= STACKED_FROM;
    s->column = s->stacked ? SHEET_LIVE : (SHEET_LIVE - GAP) / 2;
    const double widest = s->column - BESIDE, tallest = s->stacked ? TALLEST_STACKED : TALLEST;
    s->height = fmin(tallest, widest / aspect);
    s->width = s->height * aspect;
}

/* What has no room on its line stands beside it: the width below, the height above the plate's left edge. */
static void dimensions(struct plate_sheet *s, const struct gw_box *a)
{
    const double below = a->bottom + 22, beside = a->left - 10;
    const char *width = gw_sheet_given(&s->page, GW_LENGTH, s->plate->width);
    const char *height = gw_sheet_given(&s->page, GW_LENGTH, s->plate->height);
    const struct gw_lettering outside = {.size = GW_LABEL_SIZE};
    if (!gw_canvas_dimension(s->page.canvas, (struct gw_point){a->left, below}, (struct gw_point){a->right, below},
                             width))
        gw_sheet_put(&s->page, (struct gw_point){a->right + 8, below + 4}, 0, 1, &outside, width,
                     gw_format(s->page.arena, "width %s", width));
    if (!gw_canvas_dimension(s->page.canvas, (struct gw_point){beside, a->bottom}, (struct gw_point){beside, a->top},
                             height))
        gw_sheet_put(&s->page, (struct gw_point){a->right + 8, (a->top + a->bottom) / 2}, 15, 3, &outside, height,
                     gw_format(s->page.arena, "height %s", height));
}

enum { MARKS_MOST = 8 };

static int add_mirrored(struct gw_point *out, double x, double y, const struct gw_box *a)
{
    const double NONE = 0.5; /* pixels: on the axis */
    const double middle_x = (a->left + a->right) / 2, middle_y = (a->top + a->bottom) / 2;
    int n = 0;
    for (int k = 0; k < 4; k++) {
        const bool left = k % 2, low = k / 2;
        if ((left && x < NONE) || (low && y < NONE)) continue;
        out[n++] = (struct gw_point){middle_x + (left ? -x : x), middle_y + (low ? y : -y)};
    }
    return n;
}

/* The place and its mirror images, the one in the upper right quarter first. A square has its diagonals as well. */
static int mark_places(struct gw_point out[MARKS_MOST], const struct plate_sheet *s, const struct panel *panel,
                       const struct gw_box *a)
{
    const double scale = s->width / s->plate->width, x = panel->x * scale, y = panel->y * scale;
    const bool square = fabs(s->width - s->height) < 0.05, off = fabs(x - y) >= 0.5;
    int n = add_mirrored(out, x, y, a);
    if (square && off) n += add_mirrored(out + n, y, x, a);
    return n;
}

static void draw_marks(struct plate_sheet *s, const struct gw_point *places, int n)
{
    const double r = 4;
    for (int i = 0; i < n; i++) {
        const struct gw_point p = places[i];
        gw_canvas_circle(s->page.canvas, p, r,
                         &(struct gw_look){.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_MEDIUM});
        gw_canvas_circle(s->page.canvas, p, 1.3, &(struct gw_look){.fill = GW_INK});
    }
}

static const struct gw_lettering PEAK = {.size = GW_LABEL_SIZE, .bold = true, .plate = true};

/* Places for the peak's value: over, under, left and right of its mark within the plate, aslant, else beside the plate
 * as far as its panel goes. */
struct spot {
    struct gw_point at;
    enum gw_align align;
};

static bool find_spot(struct spot *out, const struct plate_sheet *s, struct gw_point mark, const struct field_map *map,
                      double end, const char *text)
{
    const double off = 10, middle = 0.36 * PEAK.size, under = off + PEAK.size;
    const struct gw_box *a = &map->area;
    const struct spot spots[] = {
        {{mark.x, mark.y - off}, GW_ALIGN_MIDDLE},           {{mark.x - off, mark.y + middle}, GW_ALIGN_END},
        {{mark.x, mark.y + under}, GW_ALIGN_MIDDLE},         {{mark.x + off, mark.y + middle}, GW_ALIGN_START},
        {{mark.x - off, mark.y + under}, GW_ALIGN_END},      {{mark.x - off, mark.y + 2 * under}, GW_ALIGN_END},
        {{a->right + off, mark.y + middle}, GW_ALIGN_START}, {{a->right + off, mark.y + under}, GW_ALIGN_START}};
    enum { SPOTS = sizeof spots / sizeof *spots, INSIDE = SPOTS - 2 };
    for (int i = 0; i < SPOTS; i++) {
        struct gw_lettering font = PEAK;
        font.align = spots[i].align;
        const struct gw_box box = gw_lettering_box(&font, spots[i].at, text);
        const bool within = box.left >= a->left && box.right <= (i < INSIDE ? a->right : end) && box.top >= a->top &&
                            box.bottom <= a->bottom;
        *out = spots[i];
        if (within && gw_canvas_is_free(s->page.canvas, &box)) return true;
    }
    return false;
}

/* The peak in its box before the contours, so that they keep clear of it; its words after them. */
static void draw_field(struct plate_sheet *s, const struct panel *panel, const struct field_map *map, double end)
{
    struct gw_point places[MARKS_MOST];
    struct spot spot;
    const int n = mark_places(places, s, panel, &map->area);
    for (int i = 0; i < n; i++)
        gw_canvas_keep(s->page.canvas,
                       &(struct gw_box){places[i].x - 5, places[i].y - 5, places[i].x + 5, places[i].y + 5});
    const bool found = find_spot(&spot, s, places[0], map, end, panel->mark);
    struct gw_lettering font = PEAK;
    font.align = spot.align;
    const struct gw_box box = gw_lettering_box(&font, spot.at, panel->mark);
    if (found) gw_canvas_keep(s->page.canvas, &box);
    gw_field_draw(s->page.canvas, map);
    draw_marks(s, places, n);
    if (found) gw_canvas_text(s->page.canvas, spot.at, &font, panel->mark);
}

/* Returns the lower end. */
static double draw_panel(struct plate_sheet *s, const struct panel *panel, double left, double top)
{
    const double plate_left = left + BESIDE + (s->column - BESIDE - s->width) / 2;
    const struct gw_box area = {plate_left, top, plate_left + s->width, top + s->height};
    struct field_map map = {.grid = {panel->values, s->nx, s->ny}, .area = area};
    gw_field_measure(&map);
    draw_field(s, panel, &map, left + s->column);
    dimensions(s, &area);
    return gw_field_scale(s->page.canvas, &map, (struct gw_point){left + BESIDE, area.bottom + 36},
                          s->column - BESIDE - 20);
}

static const char *stress_place(const struct plate_sheet *s)
{
    const double NONE = 0.0005, x = s->result.place[0], y = s->result.place[1]; /* m */
    const char *across = gw_sheet_place(&s->page, x), *up = gw_sheet_place(&s->page, y);
    if (x < NONE && y < NONE) return "at the center";
    if (y < NONE) return gw_format(s->page.arena, "%s beside the center", across);
    if (x < NONE) return gw_format(s->page.arena, "%s above or below the center", up);
    return gw_format(s->page.arena, "%s beside and %s above or below the center", across, up);
}

static double caption(struct plate_sheet *s, const struct panel *panel, double left, double top)
{
    return gw_sheet_caption(&s->page, (struct gw_point){left, top}, s->column, panel->title, panel->largest);
}

static double draw_pair(struct plate_sheet *s, const struct panel panels[2], double top)
{
    const double left = SHEET_MARGIN, right = left + (s->stacked ? 0 : s->column + GAP);
    const double first = caption(s, &panels[0], left, top);
    if (!s->stacked) {
        const double y = fmax(first, caption(s, &panels[1], right, top)) - 6;
        const double foot = draw_panel(s, &panels[0], left, y); /* one after the other: what is drawn keeps its order */
        return fmax(foot, draw_panel(s, &panels[1], right, y));
    }
    const double y = draw_panel(s, &panels[0], left, first - 6) + 24;
    return draw_panel(s, &panels[1], left, caption(s, &panels[1], left, y) - 6);
}

static const char *limit_of(const struct plate_sheet *s)
{
    const double limit = s->drawing->deflection_limit;
    if (!gw_given(limit)) return "no limit is asked";
    return gw_format(s->page.arena, "limit %s", gw_sheet_capacity(&s->page, GW_THICKNESS, limit));
}

static double draw_panels(struct plate_sheet *s, double top)
{
    struct gw_arena *arena = s->page.arena;
    const char *deflection = gw_sheet_demand(&s->page, GW_THICKNESS, s->deflection_most);
    const char *stress = gw_sheet_demand(&s->page, GW_STRESS, s->result.stress_max);
    const char *length_unit = gw_dim_info(GW_THICKNESS)->shown[s->page.shown];
    const char *stress_unit = gw_dim_info(GW_STRESS)->shown[s->page.shown];
    const struct panel panels[] = {{gw_format(arena, "Deflection, %s", length_unit),
                                    gw_format(arena, "largest %s, at the center; %s", deflection, limit_of(s)),
                                    deflection, s->deflection, 0, 0},
                                   {gw_format(arena, "Largest tension of the unloaded face, %s", stress_unit),
                                    gw_format(arena, "largest principal stress %s, %s", stress, stress_place(s)),
                                    stress, s->stress, s->result.place[0], s->result.place[1]}};
    return draw_pair(s, panels, top);
}

static const char *title_of(const struct plate_sheet *s)
{
    const char *id = s->drawing->id;
    return gw_format(s->page.arena, "%s%s%s: %s by %s", s->drawing->name, id ? " " : "",
                     id ? gw_sheet_name(&s->page, id) : "", gw_sheet_given(&s->page, GW_LENGTH, s->plate->width),
                     gw_sheet_given(&s->page, GW_LENGTH, s->plate->height));
}

static const char *method_of(const struct plate_sheet *s)
{
    const bool straight = s->plate->edges == GW_PLATE_STRAIGHT;
    const struct sheet *page = &s->page;
    const char *thick = gw_format(page->arena, "%s thick", gw_sheet_given(page, GW_THICKNESS, s->plate->thickness));
    if (!one_thickness(s))
        thick = gw_format(page->arena, "%s for stress and %s for deflection", thick,
                          gw_sheet_given(page, GW_THICKNESS, s->bent.thickness));
    return gw_format(page->arena,
                     "Drawn: %s, under %s. Four edges simply supported, %s; large deflection, direct solution, %d by "
                     "%d terms.",
                     thick, gw_sheet_demand(page, GW_PRESSURE, s->plate->pressure),
                     straight ? "held straight in plane" : "free to slide in plane", s->result.terms, s->result.terms);
}

static void draw_sheet(struct plate_sheet *s)
{
    enum { LINES_MOST = 8 };
    const struct plate_drawing *d = s->drawing;
    const char *lines[LINES_MOST], *id = d->id, *method = method_of(s);
    size_t n = 0;
    lines[n++] =
        id && strlen(gw_sheet_name(&s->page, id)) < strlen(id) ? gw_format(s->page.arena, "Mark: %s", id) : NULL;
    for (size_t i = 0; i < d->n_lines && n + 1 < LINES_MOST; i++) lines[n++] = d->lines[i];
    lines[n++] = method;
    s->page.canvas->description =
        gw_format(s->page.arena,
                  "Contours of deflection, largest %s at the center, and of the largest principal stress of the "
                  "unloaded face, largest %s, %s. %s",
                  gw_sheet_demand(&s->page, GW_THICKNESS, s->deflection_most),
                  gw_sheet_demand(&s->page, GW_STRESS, s->result.stress_max), stress_place(s), method);
    double top = gw_sheet_head(&s->page, title_of(s));
    if (d->verdict) top = gw_sheet_verdict(&s->page, top, d->passes, d->verdict);
    top = gw_sheet_lines(&s->page, top, lines, n);
    gw_sheet_foot(&s->page, draw_panels(s, top + 12) + 8, s->result.notes, s->result.n_notes);
}

enum gw_status gw_draw_plate(struct gw_canvas *canvas, const struct plate_drawing *drawing, enum gw_units shown,
                             struct gw_engine *engine)
{
    struct plate_sheet s = {.drawing = drawing, .plate = drawing->plate, .bent = *drawing->plate};
    gw_sheet_open(&s.page, canvas, shown);
    s.bent.thickness = drawing->deflection_thickness;
    enum gw_status status = solve(&s, engine);
    if (status) return status;
    lay_out(&s);
    draw_sheet(&s);
    return GW_OK;
}
