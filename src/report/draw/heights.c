/* Pressure against height: outward to the left of zero, inward to the right, in the middle of the wall a solid line, at
 * its edges a dashed one. Figures stand beside their step, each with a letter for what it comes from. */
#include "report/draw/heights.h"
#include "report/draw/sheet.h"
#include "report/page.h"

#include <math.h>
#include <string.h>

static const double NAMES = 92, COLUMN = 64, HIGH = 520, LEAST_ROW = 15; /* pixels */
static const struct gw_lettering PLAIN = {.size = GW_LABEL_SIZE, .color = GW_INK2};
static const struct gw_lettering BOLD = {.size = GW_LABEL_SIZE, .bold = true};
static const struct gw_lettering HEAD = {.size = GW_LABEL_SIZE, .bold = true, .align = GW_ALIGN_END};
static const struct gw_lettering FIGURE = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_END};
static const struct gw_lettering MIDDLE = {.size = GW_LABEL_SIZE, .color = GW_INK2, .align = GW_ALIGN_MIDDLE};
/* By zone; where both go together the dashes of the edges show upon the thinner line. */
static const struct gw_look LINES[HEIGHTS_ZONES] = {{.line = GW_INK, .width = GW_LINE_MEDIUM},
                                                    {.line = GW_INK, .width = GW_LINE_HEAVY, .dashes = "15.1 6"}};
static const char *const ZONES[HEIGHTS_ZONES] = {"zone 4", "zone 5"}, *const WAYS[] = {"outward", "inward"};

enum { CAUSES = 24 };
struct chart {
    struct sheet *sheet;
    const struct wall_picture *of;
    struct height_steps steps;
    bool has[HEIGHTS_ZONES];
    double bottom, top;      /* m */
    double most[2], scale;   /* Pa by way; pixels a Pa */
    double zero, head, sole; /* on the page: x of zero, y of top and bottom */
    const char *causes[CAUSES];
    size_t n_causes;
};

static double down(const struct chart *c, double m)
{
    return c->sole - (m - c->bottom) / (c->top - c->bottom) * (c->sole - c->head);
}

static double across(const struct chart *c, enum heights_way way, double pa)
{
    return c->zero + (way == HEIGHTS_INWARD ? pa : -pa) * c->scale;
}

/* Causes ----------------------------------------------------------------------------------------------------------- */

/* The velocity pressure that the standard takes there, and whether its least pressure stands instead. */
static const char *computed_from(const struct chart *c, const struct gw_element *e, enum heights_way way)
{
    const struct gw_model *model = c->of->results->answer->model;
    struct gw_wind_case in;
    struct gw_wind_parapet parapet;
    struct gw_wind_result r;
    if (e->parapet) return "q at the parapet's top";
    gw_takeoff_case(model, e, &in, &parapet);
    const bool top = gw_given(in.height) && fabs(in.height - e->top) < 1e-6;
    const char *q = way == HEIGHTS_OUTWARD || !gw_given(in.height) ? "q at the roof"
                    : top                                          ? "q at its top"
                                                                   : "q at its middle";
    if (gw_takeoff_derive(model, e, NULL, &r) != GW_OK) return q;
    const bool least = way == HEIGHTS_INWARD ? r.positive.pa > r.raw_positive.pa : r.negative.pa < r.raw_negative.pa;
    return least ? "the least pressure of the standard" : q;
}

static const char *cause_of(const struct chart *c, const struct gw_element *e, enum heights_way way)
{
    const struct gw_project *project = &c->of->results->answer->model->project;
    const struct gw_pressure_source *by = way == HEIGHTS_INWARD ? &e->inward_by : &e->outward_by;
    struct gw_text text;
    gw_text_init(&text, c->sheet->arena);
    if (by->by) gw_text_add(&text, gw_pressure_source_text(c->sheet->arena, by));
    else
        gw_text_addf(&text, "%s, %s", gw_choice_name(gw_edition_choices, (int)project->codes->wind),
                     computed_from(c, e, way));
    gw_text_add(&text, ", area ");
    gw_add_quantity(&text, GW_AREA, c->sheet->shown, e->effective_area, NEAREST);
    return text.at;
}

static char letter_of(struct chart *c, const struct gw_element *e, enum heights_way way)
{
    const char *cause = cause_of(c, e, way);
    size_t i = 0;
    while (i < c->n_causes && strcmp(c->causes[i], cause) != 0) i++;
    if (i == c->n_causes && i < CAUSES) c->causes[c->n_causes++] = cause;
    return i < c->n_causes ? (char)('a' + (int)i) : '\0';
}

static double put_causes(struct chart *c, double top)
{
    struct gw_canvas *canvas = c->sheet->canvas;
    const double half = SHEET_LIVE / 2.0, indent = 18;
    double y[2] = {top + GW_LABEL_SIZE, top + GW_LABEL_SIZE};
    for (size_t i = 0; i < c->n_causes; i++) {
        const size_t side = i % 2;
        const struct gw_point at = {SHEET_MARGIN + half * (double)side, y[side]};
        gw_canvas_text(canvas, at, &BOLD, gw_format(canvas->arena, "%c", 'a' + (int)i));
        y[side] = gw_canvas_paragraph(canvas, (struct gw_point){at.x + indent, at.y}, half - indent - 8, &PLAIN,
                                      c->causes[i]);
    }
    return fmax(y[0], y[1]) - GW_LABEL_SIZE / 2;
}

/* Lines ------------------------------------------------------------------------------------------------------------ */

static void put_line(struct chart *c, enum heights_way way, enum heights_zone zone)
{
    struct gw_point *points = gw_alloc(c->sheet->arena, 2 * c->steps.n + 1, sizeof *points);
    size_t n = 0;
    for (size_t i = 0; i <= c->steps.n; i++) {
        const struct height_step *s = i < c->steps.n ? &c->steps.items[i] : NULL;
        const struct gw_element *e = s ? s->worst[way][zone] : NULL;
        if (!e && n) gw_canvas_polyline(c->sheet->canvas, points, n, &LINES[zone]);
        if (!e) n = 0;
        else {
            const double x = across(c, way, gw_heights_pressure(e, way));
            points[n++] = (struct gw_point){x, down(c, s->bottom)};
            points[n++] = (struct gw_point){x, down(c, s->top)};
        }
    }
}

static double round_step(double most)
{
    enum { TICKS = 4 };
    const double power = pow(10, floor(log10(most / TICKS))), steps[] = {1, 2, 5, 10};
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        if (most / (steps[i] * power) <= TICKS + 1) return steps[i] * power;
    return 10 * power;
}

static void put_tick(struct chart *c, enum heights_way way, double shown, double unit)
{
    struct gw_text text;
    const double x = across(c, way, shown * unit);
    gw_text_init(&text, c->sheet->arena);
    gw_text_number(&text, shown, 4);
    gw_canvas_line(c->sheet->canvas, (struct gw_point){x, c->head}, (struct gw_point){x, c->sole},
                   &(struct gw_look){.line = GW_FAINT, .width = GW_LINE_FINE});
    gw_canvas_line(c->sheet->canvas, (struct gw_point){x, c->sole}, (struct gw_point){x, c->sole + 5},
                   &(struct gw_look){.line = GW_RULE, .width = GW_LINE_THIN});
    const struct gw_point at = {x, c->sole + 6 + GW_LABEL_SIZE};
    const struct gw_box box = gw_lettering_box(&MIDDLE, at, text.at);
    if (gw_canvas_is_free(c->sheet->canvas, &box)) gw_canvas_text(c->sheet->canvas, at, &MIDDLE, text.at);
}

static void put_axis(struct chart *c)
{
    struct gw_canvas *canvas = c->sheet->canvas;
    const double unit = 1 / gw_quantity_shown(gw_units_standard(), GW_PRESSURE, c->sheet->shown, 1);
    const double step = round_step(fmax(c->most[0], c->most[1]) / unit);
    const struct gw_look axis = {.line = GW_RULE, .width = GW_LINE_THIN};
    for (int way = 0; way < HEIGHTS_WAYS; way++)
        for (int i = way; step * i * unit <= c->most[way]; i++) put_tick(c, (enum heights_way)way, step * i, unit);
    gw_canvas_line(canvas, (struct gw_point){across(c, HEIGHTS_OUTWARD, c->most[0]), c->sole},
                   (struct gw_point){across(c, HEIGHTS_INWARD, c->most[1]), c->sole}, &axis);
    const char *in = gw_dim_info(GW_PRESSURE)->shown[c->sheet->shown];
    gw_canvas_label(canvas, (struct gw_point){across(c, HEIGHTS_INWARD, c->most[1]) + 10, c->sole + 6 + GW_LABEL_SIZE},
                    0, 1, &c->sheet->within, &BOLD, in);
    gw_canvas_line(canvas, (struct gw_point){c->zero, c->head - 20}, (struct gw_point){c->zero, c->sole},
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_MEDIUM});
    gw_canvas_text(canvas, (struct gw_point){c->zero - 8, c->head - 8}, &HEAD, "outward");
    gw_canvas_text(canvas, (struct gw_point){c->zero + 8, c->head - 8}, &BOLD, "inward");
}

/* Levels ----------------------------------------------------------------------------------------------------------- */

static void put_level(struct chart *c, double height, const char *name, const char *dashes)
{
    struct gw_canvas *canvas = c->sheet->canvas;
    const double y = down(c, height), right = SHEET_MARGIN + SHEET_LIVE;
    const struct gw_point at = {SHEET_MARGIN, y - 5};
    const char *words = gw_format(canvas->arena, "%s, %s", name, gw_sheet_place(c->sheet, height));
    const struct gw_box box = gw_lettering_box(&PLAIN, at, words);
    if (!gw_canvas_is_free(canvas, &box)) return;
    gw_canvas_text(canvas, at, &PLAIN, words);
    gw_canvas_line(canvas, (struct gw_point){SHEET_MARGIN, y}, (struct gw_point){right, y},
                   &(struct gw_look){.line = dashes ? GW_INK : GW_FAINT,
                                     .width = dashes ? GW_LINE_BOLD : GW_LINE_FINE,
                                     .dashes = dashes});
}

static void put_levels(struct chart *c)
{
    const struct gw_wall_lines *lines = &c->of->grid->lines;
    if (lines->has_roof && lines->roof > lines->bottom && lines->roof < lines->top)
        put_level(c, lines->roof, "Roof", "22.7 3 1.9 3 1.9 3");
    put_level(c, lines->top, "Top", NULL);
    for (size_t i = 0; i < lines->n_floors; i++)
        put_level(c, lines->floors[i], gw_format(c->sheet->arena, "Floor %zu", i + 1), NULL);
}

/* Ledger ----------------------------------------------------------------------------------------------------------- */

/* Steps that one row of figures tells of, by way and zone. */
struct ledger_row {
    size_t from, to;
    const char *cells[HEIGHTS_WAYS][HEIGHTS_ZONES];
};

static const char *cell_of(struct chart *c, size_t from, size_t to, enum heights_way way, enum heights_zone zone)
{
    const struct gw_element *worst = NULL;
    struct gw_text text;
    for (size_t i = from; i < to; i++) {
        const struct gw_element *e = c->steps.items[i].worst[way][zone];
        if (e && (!worst || gw_heights_pressure(e, way) > gw_heights_pressure(worst, way))) worst = e;
    }
    if (!worst) return "";
    gw_text_init(&text, c->sheet->arena);
    gw_add_bare(&text, GW_PRESSURE, c->sheet->shown, gw_heights_pressure(worst, way), UP);
    const char letter = letter_of(c, worst, way);
    if (letter) gw_text_addf(&text, " %c", letter);
    return text.at;
}

static void set_cells(struct chart *c, struct ledger_row *row)
{
    for (int way = 0; way < HEIGHTS_WAYS; way++)
        for (int zone = 0; zone < HEIGHTS_ZONES; zone++)
            row->cells[way][zone] = cell_of(c, row->from, row->to, (enum heights_way)way, (enum heights_zone)zone);
}

static bool same_cells(const struct ledger_row *a, const struct ledger_row *b)
{
    for (int way = 0; way < HEIGHTS_WAYS; way++)
        for (int zone = 0; zone < HEIGHTS_ZONES; zone++)
            if (strcmp(a->cells[way][zone], b->cells[way][zone]) != 0) return false;
    return true;
}

/* x of the end of a column: outward 5, 4 before the chart, inward 4, 5 behind it. */
static double column(const struct chart *c, enum heights_way way, enum heights_zone zone)
{
    const double left = SHEET_MARGIN + NAMES + COLUMN, right = SHEET_MARGIN + SHEET_LIVE;
    (void)c;
    if (way == HEIGHTS_OUTWARD) return zone == HEIGHTS_EDGE ? left : left + COLUMN;
    return zone == HEIGHTS_EDGE ? right : right - COLUMN;
}

static void put_row(struct chart *c, const struct ledger_row *row)
{
    const double y = (down(c, c->steps.items[row->from].bottom) + down(c, c->steps.items[row->to - 1].top)) / 2 +
                     0.36 * GW_LABEL_SIZE;
    for (int way = 0; way < HEIGHTS_WAYS; way++)
        for (int zone = 0; zone < HEIGHTS_ZONES; zone++)
            if (row->cells[way][zone] && *row->cells[way][zone])
                gw_canvas_text(c->sheet->canvas,
                               (struct gw_point){column(c, (enum heights_way)way, (enum heights_zone)zone), y}, &FIGURE,
                               row->cells[way][zone]);
}

/* Steps with equal figures share a row; so do those that are too low for one each, of which the greatest stands. */
static void put_ledger(struct chart *c)
{
    struct ledger_row row = {0}, next;
    for (size_t i = 0; i < c->steps.n; i = next.to, row = next) {
        next = (struct ledger_row){.from = i, .to = i + 1};
        while (next.to < c->steps.n &&
               down(c, c->steps.items[i].bottom) - down(c, c->steps.items[next.to - 1].top) < LEAST_ROW)
            next.to++;
        set_cells(c, &next);
        if (row.to && same_cells(&row, &next)) next.from = row.from;
        else if (row.to) put_row(c, &row);
    }
    put_row(c, &row);
}

static void put_heads(struct chart *c)
{
    const double sample = 40;
    for (int way = 0; way < HEIGHTS_WAYS; way++)
        for (int zone = 0; zone < HEIGHTS_ZONES; zone++) {
            const double x = column(c, (enum heights_way)way, (enum heights_zone)zone);
            if (!c->has[zone]) continue;
            gw_canvas_text(c->sheet->canvas, (struct gw_point){x, c->head - 24}, &HEAD, ZONES[zone]);
            gw_canvas_line(c->sheet->canvas, (struct gw_point){x - sample, c->head - 14},
                           (struct gw_point){x, c->head - 14}, &LINES[zone]);
        }
}

/* The whole -------------------------------------------------------------------------------------------------------- */

static void measure(struct chart *c)
{
    const double left = SHEET_MARGIN + NAMES + 2 * COLUMN + 14, right = SHEET_MARGIN + SHEET_LIVE - 2 * COLUMN - 4;
    for (size_t i = 0; i < c->steps.n; i++)
        for (int way = 0; way < HEIGHTS_WAYS; way++)
            for (int zone = 0; zone < HEIGHTS_ZONES; zone++) {
                const struct gw_element *e = c->steps.items[i].worst[way][zone];
                if (!e) continue;
                c->has[zone] = true;
                c->most[way] = fmax(c->most[way], gw_heights_pressure(e, (enum heights_way)way));
            }
    const double sum = c->most[0] + c->most[1];
    c->scale = sum > 0 ? (right - left) / sum : 0;
    c->zero = left + c->most[0] * c->scale;
}

/* Rows where each has room for its figures, else floors. */
static void set_steps(struct chart *c, double top)
{
    const struct gw_wall_lines *lines = &c->of->grid->lines;
    c->bottom = lines->bottom, c->top = lines->top;
    c->steps = gw_height_steps(c->sheet->arena, c->of, false);
    double least = INFINITY;
    for (size_t i = 0; i < c->steps.n; i++)
        if (!c->steps.items[i].parapet) least = fmin(least, c->steps.items[i].top - c->steps.items[i].bottom);
    const double wanted = LEAST_ROW / least * (c->top - c->bottom) * 1.02;
    c->head = top;
    c->sole = top + fmin(HIGH, fmax(wanted, HIGH / 2));
    if (wanted > HIGH) c->steps = gw_height_steps(c->sheet->arena, c->of, true);
}

static const char *greatest(const struct chart *c, enum heights_way way, enum heights_zone zone)
{
    double most = GW_ABSENT;
    for (size_t i = 0; i < c->steps.n; i++) {
        const struct gw_element *e = c->steps.items[i].worst[way][zone];
        if (e) most = fmax(most, gw_heights_pressure(e, way));
    }
    return gw_sheet_demand(c->sheet, GW_PRESSURE, most);
}

static const char *described(const struct chart *c)
{
    struct gw_text text;
    gw_text_init(&text, c->sheet->arena);
    gw_text_addf(&text, "Wall %s, %s to %s above ground, %zu steps of pressure with height, allowable-stress level.",
                 gw_safe(c->sheet->arena, c->of->grid->wall), gw_sheet_place(c->sheet, c->bottom),
                 gw_sheet_place(c->sheet, c->top), c->steps.n);
    for (int way = 0; way < HEIGHTS_WAYS; way++)
        for (int zone = 0; zone < HEIGHTS_ZONES; zone++)
            if (c->has[zone])
                gw_text_addf(&text, " %s %s up to %s.", ZONES[zone], WAYS[way],
                             greatest(c, (enum heights_way)way, (enum heights_zone)zone));
    if (!c->has[HEIGHTS_EDGE]) gw_text_add(&text, " It has no edge zone.");
    return text.at;
}

enum gw_status gw_draw_heights(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    struct sheet sheet;
    struct chart c = {.sheet = &sheet, .of = of};
    (void)engine;
    gw_sheet_open(&sheet, canvas, shown);
    const char *lines[] = {gw_format(canvas->arena, "%s Of each height the lite that takes most.",
                                     gw_project_line(canvas->arena, c.of->results))};
    double y = gw_sheet_head(
        &sheet, gw_format(canvas->arena, "Wall %s: pressure against height", gw_safe(canvas->arena, c.of->grid->wall)));
    y = gw_sheet_lines(&sheet, y, lines, 1);
    y = gw_sheet_caption(&sheet, (struct gw_point){SHEET_MARGIN, y + 8}, SHEET_LIVE,
                         gw_format(canvas->arena, "Pressure on the lites, %s, allowable-stress level (0.6 W)",
                                   gw_dim_info(GW_PRESSURE)->shown[shown]),
                         "Figures are the steps', rounded up; the letter says below what each comes from.");
    set_steps(&c, y + 36);
    measure(&c);
    put_axis(&c);
    put_levels(&c);
    for (int way = 0; way < HEIGHTS_WAYS; way++)
        for (int zone = 0; zone < HEIGHTS_ZONES; zone++) put_line(&c, (enum heights_way)way, (enum heights_zone)zone);
    put_heads(&c);
    put_ledger(&c);
    canvas->description = described(&c);
    gw_sheet_foot(&sheet, put_causes(&c, c.sole + 40), NULL, 0);
    return GW_OK;
}
