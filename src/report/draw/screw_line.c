/* A line of plate screws: what pulls at each, as arrows to one scale, and what clamps it, as bars beside that. */
#include "galeward/plot.h"
#include "report/draw/pictures.h"
#include "report/draw/sheet.h"
#include "report/page.h"

#include <math.h>
#include <string.h>

enum { SCREWS = 8, ALIKE = 5 };
static const double ARROW = 64, PLATE = 12, CHART = 150, BAR = 18, AXIS = 52; /* pixels */
static const struct gw_lettering PLAIN = {.size = GW_LABEL_SIZE};
static const struct gw_lettering LIGHT = {.size = GW_LABEL_SIZE, .color = GW_INK2};
static const struct gw_lettering RIGHT = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_END};
static const struct gw_lettering HEAD = {.size = GW_LABEL_SIZE, .color = GW_INK2, .align = GW_ALIGN_END};
static const struct gw_lettering MIDDLE = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_MIDDLE};
static const struct gw_look OUTLINE = {.line = GW_INK, .width = GW_LINE_BOLD};
static const struct gw_look THIN = {.line = GW_INK, .width = GW_LINE_THIN};
static const struct gw_pattern RANGE_HATCH = {45, 4, 0.7, GW_INK, false, false},
                               PULL_DOTS = {0, 5, 1.7, GW_INK, true, false};
static const struct gw_look SURE = {.fill = GW_INK, .line = GW_INK, .width = GW_LINE_THIN};
static const struct gw_look RANGE = {.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_THIN, .pattern = &RANGE_HATCH};
static const struct gw_look PULL = {.fill = GW_PANEL, .line = GW_INK, .width = GW_LINE_THIN, .pattern = &PULL_DOTS};
static const struct gw_look NEEDED = {.line = GW_INK, .width = GW_LINE_BOLD, .dashes = "5 3"};

static const struct gw_look CASING = {.line = GW_PAPER, .width = GW_LINE_HEAVY};

/* One screw, or several that are alike. */
struct drawn_screw {
    const char *name, *under; /* in the list; below its bars */
    const struct gw_screw_line *line;
    double pull;
    double x;    /* pixels */
    bool listed; /* the first of those that are alike */
};
struct drawing {
    struct sheet *sheet;
    const struct screws_picture *of;
    struct gw_screw_line line; /* the one that the verdict is of */
    struct drawn_screw screws[SCREWS];
    size_t n, more;    /* more: rows that have no room */
    double most;       /* N, on the axis */
    double per_newton; /* pixels of an arrow */
};

static const char *force(const struct drawing *d, double newtons, enum rounding rounding)
{
    struct gw_text text;
    gw_text_init(&text, d->sheet->arena);
    gw_add_quantity(&text, GW_FORCE, d->sheet->shown, newtons, rounding);
    return text.length ? text.at : "not known";
}

static const char *distance(const struct drawing *d, double m)
{
    struct gw_text text;
    gw_text_init(&text, d->sheet->arena);
    gw_add_quantity(&text, GW_THICKNESS, d->sheet->shown, m, NEAREST);
    return text.length ? text.at : "not known";
}

static const char *share(const struct drawing *d, double value)
{
    struct gw_text text;
    gw_text_init(&text, d->sheet->arena);
    if (isinf(value)) return "no suction";
    if (!gw_given(value)) return "not known";
    gw_text_fixed(&text, floor(value * 100 + 1e-9) / 100, 2);
    return text.at;
}

/* Which screws ----------------------------------------------------------------------------------------------------- */

static double clamp_at(const struct gw_screw_line *l, int end) { return l->bottomed ? 0 : l->left[end]; }

/* Of the clamp that is least left, over the suction. */
static double over_suction(const struct drawn_screw *s)
{
    const double clamp = clamp_at(s->line, 0);
    if (!gw_given(clamp) || !gw_given(s->pull)) return GW_ABSENT;
    return s->pull > 0 ? clamp / s->pull : (double)INFINITY;
}

static void add(struct drawing *d, const struct drawn_screw *screw)
{
    if (d->n == SCREWS) d->more++;
    else d->screws[d->n++] = *screw;
}

/* As it is described: from the end of a plate inward. */
static void described_line(struct drawing *d)
{
    const struct gw_screw_line *l = &d->line;
    const bool end = l->end_pull > l->pull;
    if (end) add(d, &(struct drawn_screw){"the last screw", "last", l, l->end_pull, 0, true});
    for (int i = end; i < ALIKE; i++)
        add(d, &(struct drawn_screw){end ? "every other screw" : "each screw", "", l, l->pull, 0, i == end});
}

static bool is_open(const struct gw_inspected *row)
{
    return row->result && row->with && !row->closed_by && !row->duplicate_of;
}

static void add_read(struct drawing *d, struct gw_ask *ask, const struct gw_inspected *row)
{
    struct gw_screw_line *l = gw_alloc(d->sheet->arena, 1, sizeof *l);
    const char *point = row->reading->point;
    if (!gw_find_read_line(l, ask, row, d->of->inspection->system)) return;
    if (d->n == SCREWS && row == d->of->row) d->n--, d->more++; /* the worst is among those that are drawn */
    const char *name =
        point ? gw_format(d->sheet->arena, "at point %s", gw_sheet_name(d->sheet, gw_safe(d->sheet->arena, point)))
              : gw_format(d->sheet->arena, "line %zu of the sheet", (size_t)row->reading->node->line);
    const char *under = gw_format(d->sheet->arena, "%zu", d->n + 1);
    add(d, &(struct drawn_screw){name, under, l, fmax(l->pull, l->end_pull), 0, true});
}

/* The torques that were read of its screws; of none the line by what else was read there. */
static void read_line(struct drawing *d, struct gw_ask *ask)
{
    const struct gw_inspection *in = d->of->inspection;
    const struct gw_inspected *worst = d->of->row;
    for (size_t i = 0; i < in->rows.n; i++) {
        const struct gw_inspected *row = &in->rows.items[i];
        if (is_open(row) && row->thing == worst->thing && row->item->id == GW_ITEM_screw_torque) add_read(d, ask, row);
    }
    if (!d->n) add_read(d, ask, worst);
}

static bool find(struct drawing *d)
{
    const struct gw_answer *answer = d->of->results->answer;
    struct gw_ask ask;
    gw_ask_init(&ask, answer->model, answer->takeoff, d->sheet->arena);
    ask.plans = answer->plans;
    const bool found = d->of->row ? gw_find_read_line(&d->line, &ask, d->of->row, d->of->inspection->system)
                                  : gw_find_screw_line(&d->line, &ask, d->of->grid->wall, d->of->candidate);
    if (!found) return false;
    if (d->of->row) read_line(d, &ask);
    else described_line(d);
    for (size_t i = 0; i < d->n; i++) {
        const struct drawn_screw *s = &d->screws[i];
        const double clamp = clamp_at(s->line, 1);
        if (gw_given(s->pull)) d->most = fmax(d->most, s->pull * s->line->factor);
        if (gw_given(clamp)) d->most = fmax(d->most, clamp);
    }
    return true;
}

/* Where they stand on the page: to scale along a line as it is described, else side by side. */
static void place(struct drawing *d)
{
    const double left = SHEET_MARGIN + AXIS + 30, wide = SHEET_LIVE - AXIS - 70;
    const struct gw_screw_line *l = &d->line;
    const double first = gw_given(l->end_distance) ? l->end_distance : l->screws->height / 2;
    const double px = wide / (first + (ALIKE - 0.5) * l->screws->height);
    for (size_t i = 0; i < d->n; i++)
        d->screws[i].x = d->of->row ? left + wide * ((double)i + 0.5) / (double)d->n
                                    : left + (first + (double)i * l->screws->height) * px;
}

/* The plate with its arrows ---------------------------------------------------------------------------------------- */

static void put_arrow(const struct drawing *d, const struct drawn_screw *s, double plate)
{
    struct gw_canvas *canvas = d->sheet->canvas;
    const double half = 4, head = 9, length = s->pull * d->per_newton, tip = plate - length;
    const struct gw_point point[] = {{s->x, tip}, {s->x + half, tip + head}, {s->x - half, tip + head}};
    if (!(length > 0)) return;
    gw_canvas_line(canvas, (struct gw_point){s->x, plate}, (struct gw_point){s->x, fmin(tip + head, plate)},
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
    gw_canvas_polygon(canvas, point, 3, &(struct gw_look){.fill = GW_INK});
    gw_canvas_text(canvas, (struct gw_point){s->x, tip - 5}, &MIDDLE, force(d, s->pull, UP));
}

static void put_break(const struct drawing *d, double x, double top)
{
    const struct gw_look white = {.line = GW_PAPER, .width = GW_LINE_HEAVY};
    for (int i = 0; i < 2; i++) {
        const struct gw_point low = {x + 4 * i - 3, top + PLATE + 4}, high = {x + 4 * i + 3, top - 4};
        gw_canvas_line(d->sheet->canvas, low, high, &white);
        gw_canvas_line(d->sheet->canvas, low, high, &THIN);
    }
}

static void measure(const struct drawing *d, double from, double to, double y, const char *what, double m)
{
    const char *words = distance(d, m);
    if (gw_lettering_width(&PLAIN, words) <= to - from)
        gw_canvas_dimension(d->sheet->canvas, (struct gw_point){from, y}, (struct gw_point){to, y}, words);
    else gw_sheet_list(d->sheet, gw_format(d->sheet->arena, "%s %s", what, words));
}

/* End distance and spacing of a line as it is described. */
static void put_dimensions(const struct drawing *d, double left, double y)
{
    const struct gw_screw_line *l = &d->line;
    if (gw_given(l->end_distance)) measure(d, left, d->screws[0].x, y, "end distance", l->end_distance);
    if (d->n > 1) measure(d, d->screws[0].x, d->screws[1].x, y, "spacing", l->screws->height);
}

static double put_plate(struct drawing *d, double top)
{
    struct gw_canvas *canvas = d->sheet->canvas;
    const double plate = top + ARROW + 22, left = SHEET_MARGIN + AXIS + 30, right = SHEET_MARGIN + SHEET_LIVE - 20;
    double most = 0;
    for (size_t i = 0; i < d->n; i++)
        if (gw_given(d->screws[i].pull)) most = fmax(most, d->screws[i].pull);
    d->per_newton = most > 0 ? ARROW / most : 0;
    const struct gw_look fill = {.fill = GW_PANEL, .line = OUTLINE.line, .width = OUTLINE.width};
    gw_canvas_rectangle(canvas, &(struct gw_box){left, plate, right, plate + PLATE}, &fill);
    for (size_t i = 0; i < d->n; i++) {
        const struct drawn_screw *s = &d->screws[i];
        gw_canvas_rectangle(canvas, &(struct gw_box){s->x - 2, plate - 3, s->x + 2, plate + PLATE + 12},
                            &(struct gw_look){.fill = GW_INK});
        if (gw_given(s->pull)) put_arrow(d, s, plate - 3);
    }
    put_break(d, right, plate);
    if (d->of->row || !gw_given(d->line.end_distance)) put_break(d, left, plate);
    if (d->of->row) return plate + PLATE + 16;
    put_dimensions(d, left, plate + PLATE + 34);
    return gw_sheet_missed(d->sheet, plate + PLATE + 40);
}

/* Bars ------------------------------------------------------------------------------------------------------------- */

static double height_of(const struct drawing *d, double newtons) { return newtons / d->most * CHART; }

static void put_bar(const struct drawing *d, double x, double bottom, double from, double to,
                    const struct gw_look *look)
{
    if (!(to > from)) return;
    gw_canvas_rectangle(d->sheet->canvas,
                        &(struct gw_box){x, bottom - height_of(d, to), x + BAR, bottom - height_of(d, from)}, look);
}

static void put_pair(const struct drawing *d, const struct drawn_screw *s, double bottom)
{
    const double least = clamp_at(s->line, 0), most = clamp_at(s->line, 1), gap = 2;
    if (gw_given(least) && gw_given(most)) {
        put_bar(d, s->x - BAR - gap, bottom, least, most, &RANGE);
        put_bar(d, s->x - BAR - gap, bottom, 0, least, &SURE);
    }
    if (!gw_given(s->pull)) return;
    put_bar(d, s->x + gap, bottom, 0, s->pull, &PULL);
    const double needed = bottom - height_of(d, s->pull * s->line->factor), over = 5;
    const struct gw_point from = {s->x - BAR - gap - over, needed}, to = {s->x + BAR + gap + over, needed};
    if (s->pull > 0) {
        gw_canvas_line(d->sheet->canvas, from, to, &CASING);
        gw_canvas_line(d->sheet->canvas, from, to, &NEEDED);
    }
    gw_canvas_text(d->sheet->canvas, (struct gw_point){s->x, bottom + 15}, &MIDDLE, s->under);
}

static void put_axis(const struct drawing *d, double bottom)
{
    struct gw_ticks ticks;
    struct gw_canvas *canvas = d->sheet->canvas;
    const double unit = gw_quantity_shown(gw_units_standard(), GW_FORCE, d->sheet->shown, 1);
    const double x = SHEET_MARGIN + AXIS, right = SHEET_MARGIN + SHEET_LIVE;
    gw_ticks_linear(&ticks, 0, d->most * unit, 5);
    for (size_t i = 0; i < ticks.n; i++) {
        struct gw_text text;
        const double y = bottom - height_of(d, ticks.values[i] / unit);
        gw_text_init(&text, d->sheet->arena);
        gw_text_fixed(&text, ticks.values[i], ticks.decimals);
        gw_canvas_line(canvas, (struct gw_point){x, y}, (struct gw_point){right, y},
                       &(struct gw_look){.line = GW_FAINT, .width = GW_LINE_FINE});
        gw_canvas_line(canvas, (struct gw_point){x - 4, y}, (struct gw_point){x, y}, &THIN);
        gw_canvas_text(canvas, (struct gw_point){x - 7, y + 0.36 * GW_LABEL_SIZE}, &RIGHT, text.at);
    }
    gw_canvas_line(canvas, (struct gw_point){x, bottom}, (struct gw_point){x, bottom - CHART - 4}, &THIN);
    gw_canvas_line(canvas, (struct gw_point){x, bottom}, (struct gw_point){right, bottom}, &OUTLINE);
    gw_canvas_text(canvas, (struct gw_point){x + 4, bottom - CHART - 10}, &LIGHT,
                   gw_dim_info(GW_FORCE)->shown[d->sheet->shown]);
}

static double put_bars(struct drawing *d, double top)
{
    const double bottom = top + CHART + 20;
    if (!(d->most > 0)) return top;
    put_axis(d, bottom);
    for (size_t i = 0; i < d->n; i++) put_pair(d, &d->screws[i], bottom);
    return bottom + 24;
}

static double put_key(const struct drawing *d, double top)
{
    const char *const names[] = {"clamp that is sure", "up to the good ends of the ranges", "suction"};
    const struct gw_look *const looks[] = {&SURE, &RANGE, &PULL};
    struct gw_canvas *canvas = d->sheet->canvas;
    const bool clamped = gw_given(clamp_at(d->screws[0].line, 0));
    const double swatch = 27, high = 13.6, gap = 6;
    double x = SHEET_MARGIN;
    for (size_t i = clamped ? 0 : 2; i < sizeof names / sizeof *names; i++) {
        gw_canvas_rectangle(canvas, &(struct gw_box){x, top, x + swatch, top + high}, looks[i]);
        gw_canvas_text(canvas, (struct gw_point){x + swatch + gap, top + high - 3}, &PLAIN, names[i]);
        x += swatch + gap + gw_lettering_width(&PLAIN, names[i]) + 2 * gap;
    }
    gw_canvas_line(canvas, (struct gw_point){x, top + high / 2}, (struct gw_point){x + swatch, top + high / 2},
                   &NEEDED);
    gw_canvas_text(canvas, (struct gw_point){x + swatch + gap, top + high - 3}, &PLAIN,
                   gw_format(d->sheet->arena, "needed: %s suction", share(d, d->line.factor)));
    return top + high + 14;
}

/* The list --------------------------------------------------------------------------------------------------------- */

static const double COLUMNS[] = {262, 336, 410, 486, 562, 680};
enum { LIST_COLUMNS = 6 };

static double put_heads(const struct drawing *d, double y)
{
    static const char *const heads[LIST_COLUMNS][2] = {{"", "torque"},    {"carries", "of plate"},
                                                       {"", "suction"},   {"clamp", "least"},
                                                       {"clamp", "most"}, {"least clamp", "over suction"}};
    struct gw_canvas *canvas = d->sheet->canvas;
    for (size_t i = 0; i < LIST_COLUMNS; i++)
        for (int row = 0; row < 2; row++)
            gw_canvas_text(canvas, (struct gw_point){SHEET_MARGIN + COLUMNS[i], y + row * 1.3 * GW_LABEL_SIZE}, &HEAD,
                           heads[i][row]);
    const double under = y + 1.3 * GW_LABEL_SIZE + 6;
    gw_canvas_text(canvas, (struct gw_point){SHEET_MARGIN, under - 6}, &LIGHT, "Screw");
    gw_canvas_line(canvas, (struct gw_point){SHEET_MARGIN, under}, (struct gw_point){SHEET_MARGIN + SHEET_LIVE, under},
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_MEDIUM});
    return under + 1.4 * GW_LABEL_SIZE;
}

static const char *torque_of(const struct drawing *d, const struct gw_screw_line *l)
{
    struct gw_text text;
    gw_text_init(&text, d->sheet->arena);
    gw_add_quantity(&text, GW_MOMENT, d->sheet->shown, l->torque, NEAREST);
    return text.length ? text.at : "not known";
}

static double put_screw(const struct drawing *d, const struct drawn_screw *s, double y)
{
    const struct gw_screw_line *l = s->line;
    const char *cells[LIST_COLUMNS] = {torque_of(d, l),
                                       distance(d, l->screws->height),
                                       force(d, s->pull, UP),
                                       force(d, clamp_at(l, 0), DOWN),
                                       force(d, clamp_at(l, 1), DOWN),
                                       share(d, over_suction(s))};
    const char *name = d->of->row ? gw_format(d->sheet->arena, "%s: %s", s->under, s->name) : s->name;
    const double next = gw_canvas_paragraph(d->sheet->canvas, (struct gw_point){SHEET_MARGIN, y}, 190, &PLAIN, name);
    for (size_t i = 0; i < LIST_COLUMNS; i++)
        gw_canvas_text(d->sheet->canvas, (struct gw_point){SHEET_MARGIN + COLUMNS[i], y}, &RIGHT, cells[i]);
    return fmax(next, y + 1.4 * GW_LABEL_SIZE);
}

static double put_list(const struct drawing *d, double top)
{
    double y = put_heads(d, top + GW_LABEL_SIZE);
    for (size_t i = 0; i < d->n; i++)
        if (d->screws[i].listed) y = put_screw(d, &d->screws[i], y);
    if (!d->more) return y - GW_LABEL_SIZE + 4;
    const char *more = gw_format(d->sheet->arena, "And %zu more of that line.", d->more);
    return gw_sheet_lines(d->sheet, y, &more, 1) - GW_LABEL_SIZE + 4;
}

/* Words ------------------------------------------------------------------------------------------------------------ */

static enum sheet_mark mark_of(const struct drawing *d)
{
    static const enum sheet_mark marks[] = {[GW_ITEM_UNKNOWN] = MARK_ASK,
                                            [GW_ITEM_WITHIN] = MARK_SETTLED,
                                            [GW_ITEM_OUTSIDE_HOLDS] = MARK_IN_HAND,
                                            [GW_ITEM_NOT_MET] = MARK_STOP};
    const enum gw_item_verdict v = d->line.result.verdict;
    if (d->of->row) return marks[d->of->row->verdict];
    return gw_said(&d->line.unknown) && v != GW_ITEM_NOT_MET ? MARK_ASK : marks[v];
}

static const char *least_of(const struct drawing *d, const struct gw_item_result *r)
{
    return gw_format(d->sheet->arena, "Least is left of the %s: %s of what is asked there; %s is needed.", r->mechanism,
                     share(d, r->remaining_worst), share(d, r->required));
}

/* Of a row what the page says of it. */
static const char *read_verdict(const struct drawing *d)
{
    const struct gw_inspected *row = d->of->row;
    const char *what =
        gw_format(d->sheet->arena, "%s, %s", gw_item_verdict_name(row->verdict), gw_item_kinds[row->item->id].title);
    if (row->result->mechanism) return gw_format(d->sheet->arena, "%s. %s", what, least_of(d, row->result));
    return gw_format(d->sheet->arena, "%s: %s.", what,
                     gw_message_text(d->sheet->arena, &row->message, d->sheet->shown));
}

static const char *verdict_of(const struct drawing *d)
{
    const struct gw_item_result *r = &d->line.result;
    const char *unknown =
        gw_said(&d->line.unknown) ? gw_message_text(d->sheet->arena, &d->line.unknown, d->sheet->shown) : NULL;
    if (d->of->row) return read_verdict(d);
    if (!r->mechanism) return gw_format(d->sheet->arena, "Not known: %s.", unknown ? unknown : "what holds them");
    return unknown ? gw_format(d->sheet->arena, "%s The clamp is not known: %s.", least_of(d, r), unknown)
                   : least_of(d, r);
}

static const char *place_of(const struct drawing *d)
{
    struct gw_text text;
    gw_text_init(&text, d->sheet->arena);
    gw_text_add(&text, d->of->row ? "Read at " : "Where most is carried: ");
    gw_spot_say(&text, &d->line.spot);
    gw_text_addf(&text, " (%s).", d->line.screws->id);
    return text.at;
}

/* Of the torque: whose it is, and how much of its clamp is left. */
static const char *torque_words(const struct drawing *d)
{
    const struct gw_screw_line *l = &d->line;
    const char *none = d->of->row && !l->torque_read ? "No torque was read of it. " : "";
    if (l->bottomed) return "A screw that stands on the bottom of its chase takes its torque and clamps nothing.";
    if ((d->of->row && l->torque_read) || !gw_given(l->left[0])) return NULL;
    return gw_format(
        d->sheet->arena,
        "%sClamp from the least torque that is asked, %s: %s to %s on that day by the ranges of nut factor "
        "and forming torque; %s of it is left when it is to hold.",
        none, torque_of(d, l), force(d, l->told[0], DOWN), force(d, l->told[1], DOWN), share(d, l->share));
}

static const char *end_words(const struct drawing *d)
{
    if (d->of->row || gw_given(d->line.end_distance)) return NULL;
    return "How far the last screw stands from the end of its plate is not in the file: it counts as any other.";
}

static const char *title_of(const struct drawing *d)
{
    const struct gw_system *system = d->of->row ? d->of->inspection->system : d->of->candidate;
    return gw_format(d->sheet->arena, "Wall %s: screws of the pressure plate, %s",
                     gw_safe(d->sheet->arena, d->of->grid->wall), gw_safe(d->sheet->arena, system->name));
}

static double draw(struct drawing *d, double y)
{
    static const char *const notes[] = {
        "Arrows and bars each to one scale, allowable-stress level. Drawn lying, from the end of a plate; suction "
        "pulls the plate outward.",
        "Arrows and bars each to one scale, allowable-stress level. The screws that were read, side by side: not to "
        "scale along the plate."};
    place(d);
    y = gw_sheet_caption(d->sheet, (struct gw_point){SHEET_MARGIN, y + 8}, SHEET_LIVE,
                         "Suction on each screw, and the clamp that is left against it", notes[d->of->row != NULL]);
    y = put_bars(d, put_plate(d, y));
    return put_list(d, put_key(d, y + 4));
}

enum gw_status gw_draw_screws(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    struct sheet sheet;
    struct drawing d = {.sheet = &sheet, .of = of};
    (void)engine;
    gw_sheet_open(&sheet, canvas, shown);
    double y = gw_sheet_head(&sheet, title_of(&d));
    if (!find(&d)) {
        const char *none = "No line of screws of the take-off stands there.";
        canvas->description = none;
        gw_sheet_foot(&sheet, gw_sheet_lines(&sheet, y, &none, 1), NULL, 0);
        return GW_OK;
    }
    const char *lines[] = {gw_project_line(canvas->arena, d.of->results), d.of->also, place_of(&d), torque_words(&d),
                           end_words(&d)};
    y = gw_sheet_marked(&sheet, gw_sheet_lines(&sheet, y, lines, 5), mark_of(&d), verdict_of(&d));
    canvas->description = gw_format(canvas->arena, "%s. %s %s", canvas->title, lines[2], verdict_of(&d));
    gw_sheet_foot(&sheet, draw(&d, y) + 8, NULL, 0);
    return GW_OK;
}

/* As printed, but for the names. */
bool gw_screws_alike(struct gw_arena *arena, const struct gw_results *results, const struct gw_finding *a,
                     const struct gw_finding *b)
{
    struct gw_text said[2];
    for (int i = 0; i < 2; i++) {
        const struct gw_finding *f = i ? b : a;
        const struct screws_picture of = {
            .results = results, .grid = f->demand->element->grid, .candidate = f->candidate};
        struct sheet sheet = {.arena = arena};
        struct drawing d = {.sheet = &sheet, .of = &of};
        gw_text_init(&said[i], arena);
        if (!find(&d)) continue;
        const char *torque = torque_words(&d), *end = end_words(&d);
        gw_text_addf(&said[i], "%s %s %s %s %s %s %s %s", place_of(&d), torque ? torque : "", end ? end : "",
                     verdict_of(&d), force(&d, d.line.pull, UP), force(&d, d.line.end_pull, UP),
                     force(&d, clamp_at(&d.line, 0), DOWN), force(&d, clamp_at(&d.line, 1), DOWN));
    }
    return strcmp(said[0].at, said[1].at) == 0;
}
