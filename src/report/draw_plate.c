/* A loaded plate: contours of its deflection and of the largest tension of its unloaded face, beside each other, or one
 * above the other where the plate is wide. */
#include "report/draw_field.h"
#include "report/drawings.h"
#include "report/page.h"

#include <math.h>

/* The page, in pixels. */
static const double PAGE = 940, MARGIN = 30, GAP = 30; /* width; round it; between panels */
static const double PANEL_HEAD = 44, PANEL_FOOT = 88, FOOT_GAP = 14;
static const double BESIDE = 34; /* for the height's dimension line, left of the plate */
static const double TALLEST = 440, TALLEST_STACKED = 340;
static const double STACKED_FROM = 2; /* width over height */

static const struct gw_svg_font TITLE = {.size = 18, .bold = true};
static const struct gw_svg_font PLAIN = {.size = 12, .color = GW_SVG_SOFT};
static const struct gw_svg_font PANEL_TITLE = {.size = 14, .bold = true};
static const struct gw_svg_font FOOT = {.size = 11, .color = GW_SVG_SOFT};

struct sheet {
    struct gw_svg svg;
    struct gw_arena *arena;
    enum gw_units shown;
    const struct plate_words *words;
    const struct gw_plate_case *plate; /* of the thickness for stress */
    struct gw_plate_case bent;         /* the same plate, of the thickness for deflection */
    struct gw_plate_result result;     /* for stress */
    double deflection_most;            /* m */
    int nx, ny;
    double *deflection, *stress;  /* SI, then in the units shown */
    double head;                  /* where the panels begin */
    double column, width, height; /* of a panel; of the plate, all on the page */
    bool stacked;
};

struct panel {
    const char *title, *largest; /* the words under the title */
    const char *mark;            /* the value at the mark */
    double *values;
    enum gw_dim dim;
    enum gw_svg_scale scale;
    double x, y; /* of the largest value: m from the center, x >= 0, y >= 0 */
};

static const char *measure(const struct sheet *s, enum gw_dim dim, double si)
{
    struct gw_text text;
    gw_text_init(&text, s->arena);
    gw_quantity_print(&text, gw_units_standard(), dim, s->shown, si);
    return text.at;
}

/* A result, to which a person may design: four digits, rounded up. */
static const char *demand(const struct sheet *s, enum gw_dim dim, double si)
{
    struct gw_text text;
    gw_text_init(&text, s->arena);
    gw_add_quantity(&text, dim, s->shown, si, UP);
    return text.at;
}

/* Steps short enough for the peaks beside the corners, about equal both ways, even so that the center is a point. */
static void choose_grid(struct sheet *s)
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

static bool one_thickness(const struct sheet *s) { return s->bent.thickness == s->plate->thickness; }

static enum gw_status solve(struct sheet *s, struct gw_engine *engine)
{
    if (!(s->plate->pressure > 0))
        return gw_refuse(engine, GW_BAD_VALUE, "pressure", "a drawing needs a pressure above zero");
    choose_grid(s);
    const int n = s->nx * s->ny;
    const bool alike = one_thickness(s);
    s->deflection = gw_alloc(s->arena, (size_t)n, sizeof(double));
    s->stress = gw_alloc(s->arena, (size_t)n, sizeof(double));
    struct gw_plate_result bent;
    enum gw_status status = gw_plate_sample(&bent, &s->bent, s->nx, s->ny, s->deflection, s->stress, engine);
    s->result = bent;
    if (!status && !alike) status = gw_plate_sample(&s->result, s->plate, s->nx, s->ny, NULL, s->stress, engine);
    if (status) return status;
    s->deflection_most = bent.deflection;
    to_shown(s->deflection, n, GW_THICKNESS, s->shown);
    to_shown(s->stress, n, GW_STRESS, s->shown);
    return GW_OK;
}

/* The true aspect ratio within the room of a panel. */
static void lay_out(struct sheet *s)
{
    const double aspect = s->plate->width / s->plate->height, whole = PAGE - 2 * MARGIN;
    s->stacked = aspect >= STACKED_FROM;
    s->column = s->stacked ? whole : (whole - GAP) / 2;
    const double widest = s->column - BESIDE, tallest = s->stacked ? TALLEST_STACKED : TALLEST;
    s->height = fmin(tallest, widest / aspect);
    s->width = s->height * aspect;
}

static double panel_height(const struct sheet *s) { return PANEL_HEAD + s->height + PANEL_FOOT; }

static void dimensions(struct sheet *s, const struct box *a)
{
    const double below = a->bottom + 24, beside = a->left - 12;
    gw_svg_dimension(&s->svg, (struct gw_point){a->left, below}, (struct gw_point){a->right, below},
                     measure(s, GW_LENGTH, s->plate->width));
    gw_svg_dimension(&s->svg, (struct gw_point){beside, a->bottom}, (struct gw_point){beside, a->top},
                     measure(s, GW_LENGTH, s->plate->height));
}

/* Where the value is written: over a mark at the center; else left of it, or right of a plate too narrow for that. */
static struct gw_point mark_words(const struct gw_point at, const struct box *a, struct gw_svg_font *font,
                                  const char *text, struct box *room)
{
    const double width = gw_svg_text_width(text, font), beside = 9;
    const double middle = (a->left + a->right) / 2;
    struct gw_point p = {at.x - beside, at.y + 0.35 * font->size};
    font->anchor = GW_SVG_END;
    if (width + 2 * beside > a->right - a->left) {
        p.x = a->right + beside;
        font->anchor = GW_SVG_START;
    } else if (p.x - width < middle - width / 2) {
        p = (struct gw_point){at.x, at.y - 8};
        font->anchor = GW_SVG_MIDDLE;
    }
    p.y = fmax(p.y, a->top + font->size);
    const double left = font->anchor == GW_SVG_START ? p.x : font->anchor == GW_SVG_END ? p.x - width : p.x - width / 2;
    *room = (struct box){left - 3, p.y - font->size, left + width + 3, p.y + 0.3 * font->size};
    return p;
}

enum { MARKS_MOST = 8 };

static int add_mirrored(struct gw_point *out, double x, double y, const struct box *a)
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
static int mark_places(struct gw_point out[MARKS_MOST], const struct sheet *s, const struct panel *panel,
                       const struct box *a)
{
    const double scale = s->width / s->plate->width, x = panel->x * scale, y = panel->y * scale;
    const bool square = fabs(s->width - s->height) < 0.05, off = fabs(x - y) >= 0.5;
    int n = add_mirrored(out, x, y, a);
    if (square && off) n += add_mirrored(out + n, y, x, a);
    return n;
}

static void draw_marks(struct sheet *s, const struct gw_point *places, int n)
{
    for (int i = 0; i < n; i++) {
        gw_svg_circle(&s->svg, places[i], 4,
                      &(struct gw_svg_look){.fill = GW_SVG_PAPER, .line = GW_SVG_INK, .width = 1.4});
        gw_svg_circle(&s->svg, places[i], 1.3, &(struct gw_svg_look){.fill = GW_SVG_INK});
    }
}

static void draw_panel(struct sheet *s, const struct panel *panel, double left, double top)
{
    const double plate_left = left + BESIDE + (s->column - BESIDE - s->width) / 2, plate_top = top + PANEL_HEAD;
    const struct box area = {plate_left, plate_top, plate_left + s->width, plate_top + s->height};
    struct field_map map = {.grid = {panel->values, s->nx, s->ny}, .area = area, .scale = panel->scale};
    struct gw_svg_font font = {.size = 12, .bold = true, .plate = true};
    struct gw_point places[MARKS_MOST];
    struct box kept_free[MARKS_MOST + 1];
    const int n = mark_places(places, s, panel, &area);
    const struct gw_point words = mark_words(places[0], &area, &font, panel->mark, &kept_free[0]);
    for (int i = 0; i < n; i++)
        kept_free[i + 1] = (struct box){places[i].x - 5, places[i].y - 5, places[i].x + 5, places[i].y + 5};
    gw_svg_text(&s->svg, (struct gw_point){left, top + 14}, &PANEL_TITLE, panel->title);
    gw_svg_text(&s->svg, (struct gw_point){left, top + 31}, &PLAIN, panel->largest);
    gw_field_measure(&map);
    gw_field_draw(&s->svg, &map, kept_free, (size_t)n + 1);
    draw_marks(s, places, n);
    gw_svg_text(&s->svg, words, &font, panel->mark);
    dimensions(s, &area);
    gw_field_scale(&s->svg, &map, (struct gw_point){left + BESIDE, area.bottom + 42}, s->column - BESIDE);
}

static const char *stress_place(const struct sheet *s)
{
    const double NONE = 0.0005, x = s->result.place[0], y = s->result.place[1]; /* m */
    const char *across = measure(s, GW_LENGTH, x), *up = measure(s, GW_LENGTH, y);
    if (x < NONE && y < NONE) return "at the center";
    if (y < NONE) return gw_format(s->arena, "%s beside the center", across);
    if (x < NONE) return gw_format(s->arena, "%s above or below the center", up);
    return gw_format(s->arena, "%s beside and %s above or below the center", across, up);
}

static void draw_panels(struct sheet *s)
{
    const char *deflection = demand(s, GW_THICKNESS, s->deflection_most);
    const char *stress = demand(s, GW_STRESS, s->result.stress_max);
    const char *length_unit = gw_dim_info(GW_THICKNESS)->shown[s->shown];
    const char *stress_unit = gw_dim_info(GW_STRESS)->shown[s->shown];
    const struct panel first = {gw_format(s->arena, "Deflection, %s", length_unit),
                                gw_format(s->arena, "largest %s, at the center", deflection),
                                deflection,
                                s->deflection,
                                GW_THICKNESS,
                                GW_SVG_BLUES,
                                0,
                                0};
    const struct panel second = {
        gw_format(s->arena, "Largest principal stress, unloaded face (tension positive), %s", stress_unit),
        gw_format(s->arena, "largest %s, %s", stress, stress_place(s)),
        stress,
        s->stress,
        GW_STRESS,
        GW_SVG_BROWNS,
        s->result.place[0],
        s->result.place[1]};
    draw_panel(s, &first, MARGIN, s->head);
    if (s->stacked) draw_panel(s, &second, MARGIN, s->head + panel_height(s));
    else draw_panel(s, &second, MARGIN + s->column + GAP, s->head);
}

static const char *title_of(const struct sheet *s)
{
    const char *thick = gw_format(s->arena, "%s thick", measure(s, GW_THICKNESS, s->plate->thickness));
    if (!one_thickness(s))
        thick = gw_format(s->arena, "%s for stress and %s for deflection", thick,
                          measure(s, GW_THICKNESS, s->bent.thickness));
    return gw_format(s->arena, "%s: %s by %s, %s, under %s", s->words->name, measure(s, GW_LENGTH, s->plate->width),
                     measure(s, GW_LENGTH, s->plate->height), thick, measure(s, GW_PRESSURE, s->plate->pressure));
}

static const char *method_of(const struct sheet *s)
{
    const bool straight = s->plate->edges == GW_PLATE_STRAIGHT;
    return gw_format(s->arena,
                     "%s%sFour edges simply supported, %s; large deflection, direct solution, %d by %d terms.",
                     s->words->more, *s->words->more ? " " : "",
                     straight ? "held straight in plane" : "free to slide in plane", s->result.terms, s->result.terms);
}

/* The notes of the result, then the caution. Returns the lower end; measures only where `svg` is NULL. */
static double draw_foot(struct sheet *s, struct gw_svg *svg, double top)
{
    struct gw_point at = {MARGIN, top};
    const double width = PAGE - 2 * MARGIN;
    for (unsigned i = 0; i < s->result.n_notes; i++)
        at.y = gw_svg_paragraph(svg, at, width, &FOOT, gw_format(s->arena, "Note: %s.", s->result.notes[i]));
    return gw_svg_paragraph(svg, at, width, &FOOT, gw_caution_text());
}

/* Returns the lower end; measures only where `svg` is NULL. */
static double draw_method(struct gw_svg *svg, const char *method)
{
    return gw_svg_paragraph(svg, (struct gw_point){MARGIN, 54}, PAGE - 2 * MARGIN, &PLAIN, method);
}

static void draw_sheet(struct sheet *s, struct gw_text *out)
{
    const char *title = title_of(s), *method = method_of(s);
    s->head = draw_method(NULL, method) + 6;
    const double foot = s->head + panel_height(s) * (s->stacked ? 2 : 1) + FOOT_GAP;
    const char *description =
        gw_format(s->arena,
                  "Contours of deflection, largest %s at the center, and of the largest principal stress of the "
                  "unloaded face, largest %s, %s. %s",
                  demand(s, GW_THICKNESS, s->deflection_most), demand(s, GW_STRESS, s->result.stress_max),
                  stress_place(s), method);
    gw_svg_open(&s->svg, out, PAGE, draw_foot(s, NULL, foot) + 6, title, description);
    gw_svg_text(&s->svg, (struct gw_point){MARGIN, 34}, &TITLE, title);
    draw_method(&s->svg, method);
    draw_panels(s);
    draw_foot(s, &s->svg, foot);
    gw_svg_close(&s->svg);
}

enum gw_status gw_draw_plate(struct gw_text *out, const struct gw_plate_case *plate, double deflection_thickness,
                             const struct plate_words *words, enum gw_units shown, struct gw_engine *engine)
{
    struct sheet sheet = {.arena = out->arena, .shown = shown, .words = words, .plate = plate, .bent = *plate};
    sheet.bent.thickness = deflection_thickness;
    enum gw_status status = solve(&sheet, engine);
    if (status) return status;
    lay_out(&sheet);
    draw_sheet(&sheet, out);
    return GW_OK;
}
