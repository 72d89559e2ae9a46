/* What stands below and upon an elevation: flags and their list, the key of its fills, the bar of scale. */
#include "report/draw/elevation.h"
#include "report/long_names.h"

#include <math.h>
#include <string.h>

enum { HEAD_CHARACTERS = 160, WORDS = 480 };       /* of an entry of the list: names have no end */
static const double FLAG = SHEET_FLAG, MARGIN = 2; /* pixels: radius; room kept round it */
static const struct gw_lettering BOLD = {.size = GW_LABEL_SIZE, .bold = true};
static const struct gw_lettering PLAIN = {.size = GW_LABEL_SIZE, .color = GW_INK2};

static struct gw_box round_box(struct gw_point at)
{
    const double r = FLAG + MARGIN;
    return (struct gw_box){at.x - r, at.y - r, at.x + r, at.y + r};
}

static bool inside(const struct gw_box *box, const struct gw_box *within)
{
    return box->left >= within->left && box->right <= within->right && box->top >= within->top &&
           box->bottom <= within->bottom;
}

/* A flag on the page, and the leader to what it is of. */
struct placed_flag {
    struct gw_point dot, at;
    size_t number;
    enum sheet_mark mark;
};
enum { MOST_FLAGS = 32 };
struct placed_flags {
    struct placed_flag list[MOST_FLAGS];
    size_t n;
};

static double side_of(struct gw_point a, struct gw_point b, struct gw_point p)
{
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

static bool cross(const struct placed_flag *a, const struct placed_flag *b)
{
    return side_of(a->dot, a->at, b->dot) * side_of(a->dot, a->at, b->at) < 0 &&
           side_of(b->dot, b->at, a->dot) * side_of(b->dot, b->at, a->at) < 0;
}

/* How near a leader passes. */
static double distance_from(const struct placed_flag *leader, struct gw_point p)
{
    const double dx = leader->at.x - leader->dot.x, dy = leader->at.y - leader->dot.y;
    const double along = ((p.x - leader->dot.x) * dx + (p.y - leader->dot.y) * dy) / (dx * dx + dy * dy);
    const double t = fmin(1, fmax(0, along));
    return hypot(leader->dot.x + t * dx - p.x, leader->dot.y + t * dy - p.y);
}

static bool is_clear(const struct placed_flags *all, const struct placed_flag *flag)
{
    for (size_t i = 0; i < all->n; i++) {
        const struct placed_flag *other = &all->list[i];
        if (cross(flag, other) || distance_from(flag, other->at) < FLAG || distance_from(other, flag->at) < FLAG)
            return false;
    }
    return true;
}

/* Leaders lie under the numbers. */
static void draw_flags(const struct elevation_frame *f, const struct placed_flags *all)
{
    struct gw_canvas *canvas = f->sheet->canvas;
    for (size_t i = 0; i < all->n; i++) {
        const struct placed_flag *p = &all->list[i];
        gw_canvas_line(canvas, p->dot, p->at, &(struct gw_look){.line = GW_PAPER, .width = GW_LINE_HEAVY});
        gw_canvas_line(canvas, p->dot, p->at, &(struct gw_look){.line = GW_INK, .width = GW_LINE_THIN});
    }
    for (size_t i = 0; i < all->n; i++) {
        const struct placed_flag *p = &all->list[i];
        if (p->mark) gw_mark_draw(canvas, p->dot, p->mark);
        else
            gw_canvas_circle(canvas, p->dot, 2,
                             &(struct gw_look){.fill = GW_INK, .line = GW_PAPER, .width = GW_LINE_THIN});
        gw_sheet_number(f->sheet, p->at, p->number);
    }
}

static size_t number_of(const struct elevation_frame *f, size_t i)
{
    return f->of->flags[i].number > 0 ? (size_t)f->of->flags[i].number : i + 1;
}

/* Where the element's first piece stands, on the page; false: its place is not known. */
static bool dot_of(const struct elevation_frame *f, const struct elevation_flag *flag, struct gw_point *out)
{
    const struct gw_element *e = flag->element;
    if (flag->placed) {
        *out = (struct gw_point){gw_elevation_x(f, flag->x), gw_elevation_y(f, flag->y)};
        return true;
    }
    struct gw_pieces pieces = gw_takeoff_pieces(f->of->takeoff, e);
    struct gw_rectangle r;
    if (!gw_pieces_next(&pieces, &r) || !r.placed) return false;
    *out = (struct gw_point){gw_elevation_x(f, r.x + r.width / 2), gw_elevation_y(f, r.y + r.height / 2)};
    return true;
}

/* The nearest free place round the dot whose leader meets no other; else the nearest free one. */
static bool calm_place(const struct elevation_frame *f, const struct placed_flags *all, struct placed_flag *flag)
{
    static const double distances[] = {36, 52, 70, 92, 120};
    static const double ways[][2] = {{0.9, 0.44}, {-0.9, 0.44}, {0.9, -0.44}, {-0.9, -0.44},
                                     {0, 1},      {0, -1},      {1, 0},       {-1, 0}};
    struct placed_flag found = *flag;
    bool any = false;
    for (size_t d = 0; d < sizeof distances / sizeof *distances; d++)
        for (size_t w = 0; w < sizeof ways / sizeof *ways; w++) {
            const struct gw_point dot = flag->dot;
            flag->at = (struct gw_point){dot.x + ways[w][0] * distances[d], dot.y + ways[w][1] * distances[d]};
            const struct gw_box box = round_box(flag->at);
            if (!inside(&box, &f->wall) || !gw_canvas_is_free(f->sheet->canvas, &box)) continue;
            if (is_clear(all, flag)) return true;
            if (!any) found = *flag;
            any = true;
        }
    *flag = found;
    return any;
}

static void place_flag(const struct elevation_frame *f, struct placed_flags *all, size_t i)
{
    struct placed_flag flag = {.number = number_of(f, i), .mark = f->of->flags[i].mark};
    if (all->n == MOST_FLAGS || !dot_of(f, &f->of->flags[i], &flag.dot) || !calm_place(f, all, &flag)) return;
    const struct gw_box box = round_box(flag.at);
    gw_canvas_keep(f->sheet->canvas, &box);
    all->list[all->n++] = flag;
}

void gw_elevation_flags(const struct elevation_frame *f)
{
    for (size_t i = 0; i < f->of->n_marks; i++) {
        const struct elevation_mark *m = &f->of->marks[i];
        const struct gw_point at = {gw_elevation_x(f, m->x), gw_elevation_y(f, m->y)};
        const struct gw_box box = round_box(at);
        gw_mark_draw(f->sheet->canvas, at, m->mark);
        gw_canvas_keep(f->sheet->canvas, &box);
    }
    struct placed_flags all = {.n = 0};
    for (size_t i = 0; i < f->of->n_flags; i++) place_flag(f, &all, i);
    draw_flags(f, &all);
}

static const char *in_short(const struct gw_canvas *canvas, const char *text, int most)
{
    return gw_beginning(canvas->arena, gw_shortened(canvas->arena, canvas->long_names, text), most);
}

/* The list, in two columns. */
static double put_list(const struct elevation_frame *f, double top)
{
    struct gw_canvas *canvas = f->sheet->canvas;
    const double half = SHEET_LIVE / 2.0, indent = 3 * FLAG;
    double y[2] = {top, top};
    for (size_t i = 0; i < f->of->n_flags; i++) {
        const size_t side = i % 2;
        const double x = SHEET_MARGIN + half * (double)side;
        const struct gw_point at = {x + FLAG + 1, y[side] + FLAG};
        const struct elevation_flag *flag = &f->of->flags[i];
        gw_sheet_number(f->sheet, at, number_of(f, i));
        const struct gw_point words = {x + indent, y[side] + GW_LABEL_SIZE};
        double next = gw_canvas_paragraph(canvas, words, half - indent - MARGIN, &BOLD,
                                          in_short(canvas, flag->first, HEAD_CHARACTERS));
        next = gw_canvas_paragraph(canvas, (struct gw_point){words.x, next}, half - indent - MARGIN, &PLAIN,
                                   in_short(canvas, flag->second, WORDS));
        y[side] = next - GW_LABEL_SIZE + 6;
    }
    return fmax(y[0], y[1]);
}

static bool occurs(const struct elevation_areas *areas, size_t class_)
{
    for (size_t i = 0; i < areas->n; i++)
        if (areas->items[i].class_ == class_) return true;
    return false;
}

/* Swatches of what occurs, darkest first. */
static double put_key(const struct elevation_frame *f, const struct elevation_areas *areas, double top)
{
    struct gw_canvas *canvas = f->sheet->canvas;
    const double swatch = 27, height = 13.6, gap = 6, end = SHEET_MARGIN + SHEET_LIVE;
    struct gw_point at = {SHEET_MARGIN, top + GW_LABEL_SIZE};
    if (!f->of->n_classes) return top;
    gw_canvas_text(canvas, at, &BOLD, f->of->key);
    at.x += gw_lettering_width(&BOLD, f->of->key) + 2 * gap;
    for (size_t i = 0; i < f->of->n_classes; i++) {
        const size_t class_ = f->of->order ? f->of->order[i] : i;
        const struct elevation_class *c = &f->of->classes[class_];
        const double words = swatch + gap + (c->mark ? 16 : 0);
        const double width = words + gw_lettering_width(&PLAIN, c->name) + 2 * gap;
        if (!occurs(areas, class_)) continue;
        if (at.x + width > end) at = (struct gw_point){SHEET_MARGIN, at.y + 1.6 * GW_LABEL_SIZE};
        struct gw_look look = c->look;
        look.line = GW_INK;
        look.width = GW_LINE_FINE;
        gw_canvas_rectangle(canvas, &(struct gw_box){at.x, at.y - height + 3, at.x + swatch, at.y + 3}, &look);
        gw_mark_draw(canvas, (struct gw_point){at.x + swatch + gap + 5, at.y - 4}, c->mark);
        gw_canvas_text(canvas, (struct gw_point){at.x + words, at.y}, &(struct gw_lettering){.size = GW_LABEL_SIZE},
                       c->name);
        at.x += width;
    }
    return at.y + GW_LABEL_SIZE;
}

static double round_length(double most)
{
    const double power = pow(10, floor(log10(most))), steps[] = {5, 2, 1};
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        if (steps[i] * power <= most) return steps[i] * power;
    return power;
}

/* Three boxes of a round length, at the right. */
static double put_scale(const struct elevation_frame *f, double top)
{
    enum { BOXES = 3 };
    struct gw_canvas *canvas = f->sheet->canvas;
    const double MOST = 80, height = 4;
    const double unit = 1 / gw_quantity_shown(gw_units_standard(), GW_LENGTH, f->sheet->shown, 1);
    const double step = round_length(MOST / (f->px * unit)), width = step * unit * f->px;
    const double left = SHEET_MARGIN + SHEET_LIVE - BOXES * width - 30;
    const struct gw_lettering label = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_MIDDLE};
    for (int i = 0; i <= BOXES; i++) {
        struct gw_text text;
        const double x = left + width * i;
        const struct gw_look look = {.fill = i % 2 ? GW_PAPER : GW_INK, .line = GW_INK, .width = GW_LINE_THIN};
        if (i < BOXES) gw_canvas_rectangle(canvas, &(struct gw_box){x, top, x + width, top + height}, &look);
        gw_text_init(&text, canvas->arena);
        gw_text_number(&text, step * i, 4);
        if (i == BOXES) gw_text_addf(&text, " %s", gw_dim_info(GW_LENGTH)->shown[f->sheet->shown]);
        gw_canvas_text(canvas, (struct gw_point){x, top + height + GW_LABEL_SIZE}, &label, text.at);
    }
    return top + height + 2 * GW_LABEL_SIZE;
}

/* Key and list once more, for pages that are too narrow to show the drawing whole. */
static const struct gw_canvas *swatch_of(struct gw_arena *arena, const struct elevation_class *c)
{
    struct gw_canvas *swatch = gw_alloc(arena, 1, sizeof *swatch);
    const double wide = 27, high = 16;
    struct gw_look look = c->look;
    look.line = GW_INK;
    look.width = GW_LINE_FINE;
    gw_canvas_init(swatch, arena);
    swatch->width = wide + (c->mark ? 20 : 2);
    swatch->height = high;
    gw_canvas_rectangle(swatch, &(struct gw_box){1, 1, wide, high - 1}, &look);
    gw_mark_draw(swatch, (struct gw_point){wide + 10, high / 2}, c->mark);
    return swatch;
}

static const struct gw_canvas *number_swatch(struct gw_arena *arena, size_t number)
{
    struct gw_canvas *swatch = gw_alloc(arena, 1, sizeof *swatch);
    struct sheet sheet = {.canvas = swatch, .arena = arena};
    gw_canvas_init(swatch, arena);
    swatch->width = swatch->height = 2 * FLAG + 2;
    gw_sheet_number(&sheet, (struct gw_point){FLAG + 1, FLAG + 1}, number);
    return swatch;
}

static void tell(const struct elevation_frame *f, const struct elevation_areas *areas)
{
    struct gw_canvas *canvas = f->sheet->canvas;
    if (f->of->n_classes) gw_canvas_tell(canvas, NULL, f->of->key);
    for (size_t i = 0; i < f->of->n_classes; i++) {
        const size_t class_ = f->of->order ? f->of->order[i] : i;
        const struct elevation_class *c = &f->of->classes[class_];
        if (occurs(areas, class_)) gw_canvas_tell(canvas, swatch_of(canvas->arena, c), c->name);
    }
    for (size_t i = 0; i < f->of->n_flags; i++) {
        const struct elevation_flag *flag = &f->of->flags[i];
        gw_canvas_tell(canvas, number_swatch(canvas->arena, number_of(f, i)),
                       gw_format(canvas->arena, "%s: %s", in_short(canvas, flag->first, HEAD_CHARACTERS),
                                 in_short(canvas, flag->second, WORDS)));
    }
}

double gw_elevation_foot(const struct elevation_frame *f, const struct elevation_areas *areas, double top)
{
    double y = f->of->n_flags && !f->sheet->canvas->small ? put_list(f, top) : top;
    tell(f, areas);
    y = put_key(f, areas, y + 4);
    y = gw_sheet_lines(f->sheet, y + (f->of->n_lines ? 6 : 0), f->of->lines, f->of->n_lines);
    return f->sheet->canvas->small ? y - 5 : put_scale(f, y);
}
