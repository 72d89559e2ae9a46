/* An elevation on its sheet: scale, wall, lines, zones, what is below it. */
#include "report/draw/elevation.h"

#include <math.h>

static const double LEFT = 116, WIDE = 461, HIGH = 560,
                    SMALL_HIGH = 130; /* pixels: names at the left; the wall at most */
static const struct gw_lettering MIDDLE = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_MIDDLE};
static const struct gw_lettering ZONE = {.size = GW_LABEL_SIZE, .bold = true, .align = GW_ALIGN_MIDDLE};
static const struct gw_look ROOF = {.line = GW_INK, .width = GW_LINE_BOLD, .dashes = "22.7 3 1.9 3 1.9 3"};
static const struct gw_look LIMIT = {.line = GW_INK, .width = GW_LINE_MEDIUM, .dashes = "15.1 3 1.9 3"};
static const struct gw_look CASING = {.line = GW_PAPER, .width = GW_LINE_HEAVY};

double gw_elevation_x(const struct elevation_frame *f, double m) { return f->wall.left + m * f->px; }

double gw_elevation_y(const struct elevation_frame *f, double m)
{
    return f->wall.bottom - (m - f->of->grid->lines.bottom) * f->px;
}

static double width_of(const struct elevation *of) { return of->grid->x[of->grid->n_columns]; }

/* The first of the usual scales at which the wall fits. */
static double scale_for(const struct elevation *of, bool small)
{
    static const double ratios[] = {50, 100, 150, 200, 250, 300, 400, 500, 600, 750, 1000, 1500, 2000, 3000, 5000};
    const double px = 96 / 0.0254, height = of->grid->lines.top - of->grid->lines.bottom,
                 high = small ? SMALL_HIGH : HIGH;
    for (size_t i = 0; i < sizeof ratios / sizeof *ratios; i++)
        if (width_of(of) * px / ratios[i] <= WIDE && height * px / ratios[i] <= high) return ratios[i];
    return ceil(fmax(width_of(of) / WIDE, height / high) * px);
}

static double least_column(const struct gw_wall_grid *grid)
{
    double least = INFINITY;
    for (size_t i = 0; i < grid->n_columns; i++) least = fmin(least, grid->x[i + 1] - grid->x[i]);
    return least;
}

static double least_row(const struct gw_wall_grid *grid)
{
    const struct gw_grid_layer *layer = &grid->layers[GW_SORT_LITE];
    double least = INFINITY;
    for (size_t i = 0; i < layer->n_strips; i++) least = fmin(least, layer->strips[i].top - layer->strips[i].bottom);
    return least;
}

static void set_frame(struct elevation_frame *f, double top)
{
    const double EVERY = 3 * 96 / 25.4, TENTH = 1.5 * 96 / 25.4, PX = 96 / 0.0254;
    const struct gw_wall_grid *grid = f->of->grid;
    f->ratio = scale_for(f->of, f->sheet->canvas->small);
    f->px = PX / f->ratio;
    f->every_line = least_column(grid) * f->px >= EVERY && least_row(grid) * f->px >= EVERY / 2;
    f->every_tenth = least_column(grid) * f->px >= TENTH;
    f->wall.left = SHEET_MARGIN + LEFT;
    f->wall.right = f->wall.left + width_of(f->of) * f->px;
    f->wall.top = top;
    f->wall.bottom = top + (grid->lines.top - grid->lines.bottom) * f->px;
}

static void cased(const struct elevation_frame *f, struct gw_point from, struct gw_point to, const struct gw_look *look)
{
    gw_canvas_line(f->sheet->canvas, from, to, &CASING);
    gw_canvas_line(f->sheet->canvas, from, to, look);
}

/* Where the edge zone beside an outside corner ends, m; absent: there is none in this wall. */
static double limit_of(const struct elevation *of, bool left)
{
    const double corner = left ? of->grid->left_corner : of->grid->right_corner, within = of->grid->strip - corner;
    if (!gw_given(corner) || !(within > 0) || within >= width_of(of)) return GW_ABSENT;
    return left ? within : width_of(of) - within;
}

static void zone_name(const struct elevation_frame *f, double from, double to, const char *name)
{
    const double x = gw_elevation_x(f, (from + to) / 2);
    if ((to - from) * f->px < gw_lettering_width(&ZONE, name)) return;
    gw_canvas_text(f->sheet->canvas, (struct gw_point){x, f->wall.top - 5}, &ZONE, name);
}

static void zones(const struct elevation_frame *f)
{
    const double left = limit_of(f->of, true), right = limit_of(f->of, false), width = width_of(f->of);
    const double from = gw_given(left) ? left : 0, to = gw_given(right) ? right : width;
    const double limits[] = {left, right}, y = f->wall.top - 18;
    for (size_t i = 0; i < 2; i++) {
        if (!gw_given(limits[i])) continue;
        const double x = gw_elevation_x(f, limits[i]);
        cased(f, (struct gw_point){x, f->wall.top - 18}, (struct gw_point){x, f->wall.bottom}, &LIMIT);
        const double a = i ? limits[i] : 0, b = i ? width : limits[i];
        zone_name(f, a, b, "5");
        gw_canvas_dimension(f->sheet->canvas, (struct gw_point){gw_elevation_x(f, a), y},
                            (struct gw_point){gw_elevation_x(f, b), y}, gw_sheet_place(f->sheet, b - a));
    }
    if (!(to > from)) return;
    zone_name(f, from, to, gw_given(left) || gw_given(right) ? "4" : "zone 4");
    if (gw_given(left) || gw_given(right))
        gw_canvas_dimension(f->sheet->canvas, (struct gw_point){gw_elevation_x(f, from), y},
                            (struct gw_point){gw_elevation_x(f, to), y}, gw_sheet_place(f->sheet, to - from));
}

static void outline(const struct elevation_frame *f)
{
    const struct gw_wall_lines *lines = &f->of->grid->lines;
    struct gw_canvas *canvas = f->sheet->canvas;
    for (size_t i = 1; i < lines->n_floors; i++) {
        const double y = gw_elevation_y(f, lines->floors[i]);
        if (f->every_line)
            gw_canvas_line(canvas, (struct gw_point){f->wall.left, y}, (struct gw_point){f->wall.right, y},
                           &(struct gw_look){.line = GW_INK, .width = GW_LINE_MEDIUM});
    }
    if (lines->has_roof && lines->roof > lines->bottom && lines->roof < lines->top) {
        const double y = gw_elevation_y(f, lines->roof);
        cased(f, (struct gw_point){f->wall.left - 12, y}, (struct gw_point){f->wall.right + 6, y}, &ROOF);
    }
    gw_canvas_rectangle(canvas, &f->wall, &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
    gw_canvas_line(canvas, (struct gw_point){f->wall.left - 12, f->wall.bottom},
                   (struct gw_point){f->wall.right + 6, f->wall.bottom},
                   &(struct gw_look){.line = GW_INK, .width = 2.6});
}

/* The ends first, then each fifth, of many each tenth, where there is room. */
static void number(const struct elevation_frame *f, size_t i, double y)
{
    const struct gw_wall_grid *grid = f->of->grid;
    const char *text = gw_format(f->sheet->arena, "%zu", i + 1);
    const struct gw_point at = {gw_elevation_x(f, (grid->x[i] + grid->x[i + 1]) / 2), y};
    struct gw_box box = gw_lettering_box(&MIDDLE, at, text);
    box.left -= 2, box.right += 2;
    if (gw_canvas_is_free(f->sheet->canvas, &box)) gw_canvas_text(f->sheet->canvas, at, &MIDDLE, text);
}

static void numbers(const struct elevation_frame *f, double y)
{
    enum { MANY = 40, FEW_STEP = 5, MANY_STEP = 10 };
    const size_t n = f->of->grid->n_columns, step = n > MANY ? MANY_STEP : FEW_STEP;
    number(f, 0, y);
    number(f, n - 1, y);
    for (size_t i = step - 1; i + 1 < n; i += step) number(f, i, y);
}

static const char *columns_words(const struct elevation_frame *f)
{
    const struct gw_wall_grid *grid = f->of->grid;
    const double width = width_of(f->of), each = width / (double)grid->n_columns;
    bool same = true;
    for (size_t i = 0; i < grid->n_columns; i++) same = same && fabs(grid->x[i + 1] - grid->x[i] - each) < 1e-4;
    const char *sum = gw_sheet_place(f->sheet, width);
    if (grid->n_columns == 1) return sum;
    return same ? gw_format(f->sheet->arena, "%zu columns of %s = %s", grid->n_columns, gw_sheet_place(f->sheet, each),
                            sum)
                : gw_format(f->sheet->arena, "%zu columns, %s", grid->n_columns, sum);
}

/* Columns from the left, and how wide they are together; the base line after them. */
static double columns(const struct elevation_frame *f)
{
    const double y = f->wall.bottom + 15, chain = y + 22;
    numbers(f, y);
    if (f->sheet->canvas->small) return y + 6;
    const struct gw_point from = {f->wall.left, chain}, to = {f->wall.right, chain};
    const char *words = columns_words(f);
    if (gw_canvas_dimension(f->sheet->canvas, from, to, words)) return chain + 16;
    const double half = gw_lettering_width(&MIDDLE, words) / 2, below = chain + 14; /* the line has no room for them */
    gw_canvas_text(f->sheet->canvas, (struct gw_point){fmax((from.x + to.x) / 2, SHEET_MARGIN + half), below}, &MIDDLE,
                   words);
    return below + 14;
}

const char *gw_elevation_size(struct gw_arena *arena, const struct gw_wall_grid *grid)
{
    const struct gw_wall_lines *lines = &grid->lines;
    const bool parapet = lines->has_roof && lines->roof > lines->bottom && lines->roof < lines->top;
    return gw_format(arena, "%zu column%s by %zu floor%s%s", grid->n_columns, grid->n_columns == 1 ? "" : "s",
                     lines->n_floors, lines->n_floors == 1 ? "" : "s", parapet ? " and a parapet" : "");
}

/* What it is, how large, what it shows; then the exceptions. */
static const char *in_words(struct gw_arena *arena, const struct elevation *of)
{
    struct gw_text out;
    gw_text_init(&out, arena);
    gw_text_add(&out, of->described);
    for (size_t i = 0; i < of->n_flags; i++) {
        const struct elevation_flag *flag = &of->flags[i];
        gw_text_addf(&out, "%s %zu, %s: %s", i ? ";" : " Called out:", flag->number > 0 ? (size_t)flag->number : i + 1,
                     flag->first, flag->second);
    }
    if (of->n_flags) gw_text_add(&out, ".");
    return out.at;
}

/* The words of a first page say what is worst, and the whole drawing has the rest; numbers of comments are the page's.
 */
static struct elevation as_small(const struct elevation *of)
{
    struct elevation small = *of;
    small.n_lines = small.n_columns = 0;
    if (small.n_flags && !small.flags[0].number) small.n_flags = 0;
    return small;
}

static double head(struct sheet *sheet, const struct elevation *of)
{
    struct gw_canvas *canvas = sheet->canvas;
    double y = gw_sheet_head(sheet, of->title);
    const char *scale = gw_format(canvas->arena, "%s Seen from outside. Scale 1:%.0f on A4 and letter.", of->second,
                                  scale_for(of, canvas->small));
    if (canvas->small) {
        const char *one = gw_format(canvas->arena, "%s. Seen from outside, 1:%.0f.", of->caption, scale_for(of, true));
        return gw_sheet_lines(sheet, y - 3, &one, 1) - 5;
    }
    y = gw_sheet_lines(sheet, y, &scale, 1);
    return gw_sheet_caption(sheet, (struct gw_point){SHEET_MARGIN, y + 8}, SHEET_LIVE, of->caption, of->note);
}

void gw_draw_elevation(struct gw_canvas *canvas, const struct elevation *whole, enum gw_units shown)
{
    const struct elevation small = as_small(whole), *of = canvas->small ? &small : whole;
    struct sheet sheet;
    gw_sheet_open(&sheet, canvas, shown);
    canvas->description = in_words(canvas->arena, of);
    struct elevation_frame f = {.of = of, .sheet = &sheet};
    set_frame(&f, head(&sheet, of) + (canvas->small ? 28 : 44));
    const struct elevation_areas areas = gw_elevation_areas(of, canvas->arena);
    gw_elevation_fill(&f, &areas);
    outline(&f);
    zones(&f);
    const double below = columns(&f);
    gw_elevation_ledger(&f);
    gw_elevation_plates(&f, &areas);
    gw_elevation_flags(&f);
    const double foot = gw_elevation_foot(&f, &areas, below);
    gw_sheet_foot(&sheet, foot, NULL, 0);
}
