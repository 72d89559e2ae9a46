/* What sections share: scale, materials, dimensions. */
#include "report/draw/details.h"

#include <math.h>
#include <string.h>

static const struct gw_pattern STEEL = {45, 5.3, 1.7, GW_INK, false, false};
static const struct gw_pattern GASKET = {45, 3.8, GW_LINE_FINE, GW_INK, false, true};
static const struct gw_pattern SILICONE = {0, 4.5, 1.5, GW_INK, true, false};
static const char DASHES[] = "5 3";
const struct gw_look gw_detail_cut = {.fill = GW_INK, .line = GW_INK, .width = GW_LINE_BOLD};
const struct gw_look gw_detail_seen = {.line = GW_INK, .width = GW_LINE_THIN};
const struct gw_look gw_detail_dashed = {.line = GW_INK, .width = GW_LINE_THIN, .dashes = DASHES};
const struct gw_look gw_detail_steel = {.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_MEDIUM, .pattern = &STEEL};
const struct gw_look gw_detail_glass = {.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_BOLD};
const struct gw_look gw_detail_gasket = {.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_BOLD, .pattern = &GASKET};
const struct gw_look gw_detail_silicone = {
    .fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_BOLD, .pattern = &SILICONE};
const struct gw_look gw_detail_center = {.line = GW_INK, .width = GW_LINE_THIN, .dashes = "15 3 2 3"};
static const struct gw_look CASING = {.line = GW_PAPER, .width = GW_LINE_HEAVY};
static const struct gw_look THIN = {.line = GW_INK, .width = GW_LINE_THIN};
static const struct gw_lettering NAME = {.size = GW_LABEL_SIZE};

struct gw_look gw_detail_metal(enum gw_metal alloy)
{
    return gw_metal_is_steel(alloy) ? gw_detail_steel : gw_detail_cut;
}

/* Place and scale -------------------------------------------------------------------------------------------------- */

void gw_detail_open(struct detail *d, struct gw_canvas *canvas, const struct candidate_picture *of, enum gw_units shown)
{
    const struct gw_answer *answer = of->results->answer;
    *d = (struct detail){.results = of->results, .candidate = of->candidate, .system = of->candidate};
    gw_sheet_open(&d->sheet, canvas, shown);
    gw_ask_init(&d->ask, answer->model, answer->takeoff, canvas->arena);
    d->ask.plans = answer->plans;
}

void gw_detail_at(struct detail *d, const struct gw_element *element)
{
    struct gw_planned *planned = gw_planned_of(&d->ask, d->candidate);
    if (!planned || !planned->chosen || !element) return;
    const struct gw_system *offered = gw_planned_offer(planned, element);
    planned->make_ups.place = planned->plan.places->of[element->index];
    d->ask.choice = &planned->make_ups;
    if (offered) d->system = offered;
}

void gw_detail_scale(struct detail *d, double wide, double high, double wide_px, double high_px)
{
    static const struct {
        double times;
        const char *name;
    } scales[] = {{10, "10:1"}, {5, "5:1"},    {2, "2:1"},     {1, "1:1"},     {0.5, "1:2"},
                  {0.2, "1:5"}, {0.1, "1:10"}, {0.05, "1:20"}, {0.02, "1:50"}, {0.01, "1:100"}};
    const double inch = 96 / 0.0254;
    size_t i = 0;
    while (i + 1 < sizeof scales / sizeof *scales &&
           (wide * inch * scales[i].times > wide_px || high * inch * scales[i].times > high_px))
        i++;
    for (int k = 0; k < d->coarser && i + 1 < sizeof scales / sizeof *scales; k++) i++;
    d->px = inch * scales[i].times;
    d->scale = d->coarser < 0
                   ? gw_format(d->sheet.arena, "%s (as a file; higher than a page, so smaller there)", scales[i].name)
                   : gw_format(d->sheet.arena, "%s on A4 and letter", scales[i].name);
}

void gw_detail_to_fit(struct gw_canvas *canvas, void (*draw)(struct gw_canvas *, const void *, enum gw_units, int),
                      const void *of, enum gw_units shown)
{
    enum { STEPS = 2 };
    const double page = 250 * 96 / 25.4; /* what A4 and letter both hold */
    for (int coarser = 0; coarser <= STEPS; coarser++) {
        canvas->n = 0;
        draw(canvas, of, shown, coarser);
        if (canvas->height <= page) return;
    }
    canvas->n = 0;
    draw(canvas, of, shown, -1);
}

/* Materials -------------------------------------------------------------------------------------------------------- */

void gw_detail_pane(struct gw_canvas *canvas, const struct gw_box *box, bool upright)
{
    const double thick = upright ? box->right - box->left : box->bottom - box->top, arm = fmin(4, thick / 4);
    const double x = upright ? (box->left + box->right) / 2 : box->left + 0.6 * (box->right - box->left);
    const double y = upright ? box->top + 0.4 * (box->bottom - box->top) : (box->top + box->bottom) / 2;
    gw_canvas_rectangle(canvas, box, &(struct gw_look){.fill = GW_PAPER});
    if (upright) {
        const struct gw_point edge[] = {
            {box->left, box->top}, {box->left, box->bottom}, {box->right, box->bottom}, {box->right, box->top}};
        gw_canvas_polyline(canvas, edge, 4, &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
    } else {
        const struct gw_point edge[] = {
            {box->right, box->top}, {box->left, box->top}, {box->left, box->bottom}, {box->right, box->bottom}};
        gw_canvas_polyline(canvas, edge, 4, &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
    }
    for (int i = -1; i <= 1; i += 2) {
        const struct gw_point at = {x + (upright ? 0 : 4 * i), y + (upright ? 4 * i : 0)};
        gw_canvas_line(canvas, (struct gw_point){at.x - arm, at.y + arm}, (struct gw_point){at.x + arm, at.y - arm},
                       &THIN);
    }
}

void gw_detail_break(struct gw_canvas *canvas, struct gw_point from, struct gw_point to)
{
    const double x = (from.x + to.x) / 2, y = (from.y + to.y) / 2, length = hypot(to.x - from.x, to.y - from.y);
    if (!(length > 0)) return;
    const double ux = (to.x - from.x) / length, uy = (to.y - from.y) / length, kink = 5;
    const struct gw_point points[] = {from,
                                      {x - kink * ux, y - kink * uy},
                                      {x - kink / 2 * ux - kink * uy, y - kink / 2 * uy + kink * ux},
                                      {x + kink / 2 * ux + kink * uy, y + kink / 2 * uy - kink * ux},
                                      {x + kink * ux, y + kink * uy},
                                      to};
    gw_canvas_polyline(canvas, points, sizeof points / sizeof *points, &CASING);
    gw_canvas_polyline(canvas, points, sizeof points / sizeof *points, &THIN);
}

/* Dimensions ------------------------------------------------------------------------------------------------------- */

static void cased(struct gw_canvas *canvas, struct gw_point from, struct gw_point to)
{
    gw_canvas_line(canvas, from, to, &CASING);
    gw_canvas_line(canvas, from, to, &THIN);
}

static void slant(struct gw_canvas *canvas, struct gw_point at)
{
    const double tick = 2.7;
    gw_canvas_line(canvas, (struct gw_point){at.x - tick, at.y + tick}, (struct gw_point){at.x + tick, at.y - tick},
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_MEDIUM});
}

static void words_at(struct detail *d, struct gw_point at, const char *words)
{
    gw_sheet_put(&d->sheet, at, 14, 2, &NAME, words, words);
}

void gw_detail_across(struct detail *d, double left, double right, double y, double feet, const char *words)
{
    struct gw_canvas *canvas = d->sheet.canvas;
    const double past = feet > y ? -3 : 3, off = feet > y ? -2.3 : 2.3, x[] = {left, right};
    for (int i = 0; i < 2; i++) cased(canvas, (struct gw_point){x[i], feet + off}, (struct gw_point){x[i], y + past});
    gw_canvas_line(canvas, (struct gw_point){left, y}, (struct gw_point){right + 6, y}, &THIN);
    for (int i = 0; i < 2; i++) slant(canvas, (struct gw_point){x[i], y});
    const double wide = gw_lettering_width(&NAME, words), base = y + 0.36 * GW_LABEL_SIZE;
    const bool fits = right + 10 + wide <= SHEET_MARGIN + SHEET_LIVE;
    words_at(d, (struct gw_point){fits ? right + 10 : left - 8 - wide, base}, words);
}

void gw_detail_upright(struct detail *d, double top, double bottom, double x, double feet, const char *words)
{
    struct gw_canvas *canvas = d->sheet.canvas;
    const double past = feet > x ? -3 : 3, off = feet > x ? -2.3 : 2.3, y[] = {top, bottom};
    for (int i = 0; i < 2; i++) cased(canvas, (struct gw_point){feet + off, y[i]}, (struct gw_point){x + past, y[i]});
    gw_canvas_line(canvas, (struct gw_point){x, bottom}, (struct gw_point){x, top}, &THIN);
    for (int i = 0; i < 2; i++) slant(canvas, (struct gw_point){x, y[i]});
    if (words) words_at(d, (struct gw_point){x + 6, (top + bottom) / 2 + 0.36 * GW_LABEL_SIZE}, words);
}

void gw_detail_flow(struct gw_canvas *canvas, const struct gw_point *points, size_t n)
{
    const struct gw_look line = {.line = GW_INK, .width = GW_LINE_BOLD};
    const struct gw_point to = points[n - 1], from = points[n - 2];
    const double length = hypot(to.x - from.x, to.y - from.y), head = 10, half = 3.8;
    if (!(length > 0)) return;
    const double ux = (to.x - from.x) / length, uy = (to.y - from.y) / length;
    const struct gw_point neck = {to.x - head * ux, to.y - head * uy};
    const struct gw_point tip[] = {
        to, {neck.x - half * uy, neck.y + half * ux}, {neck.x + half * uy, neck.y - half * ux}};
    struct gw_point *shaft = gw_alloc(canvas->arena, n, sizeof *shaft);
    for (size_t i = 0; i + 1 < n; i++) shaft[i] = points[i];
    shaft[n - 1] = neck;
    gw_canvas_polyline(canvas, shaft, n, &(struct gw_look){.line = GW_PAPER, .width = 4.2});
    gw_canvas_polyline(canvas, shaft, n, &line);
    gw_canvas_polygon(canvas, tip, 3, &(struct gw_look){.fill = GW_INK});
}

const char *gw_detail_word(struct gw_arena *arena, const char *word)
{
    char *out = gw_strndup(arena, word, strlen(word));
    for (char *c = out; *c; c++)
        if (*c == '_') *c = ' ';
    return out;
}

const char *gw_detail_glued(struct gw_arena *arena, const char *words)
{
    static const char hard[] = "\xc2\xa0";
    struct gw_text out;
    gw_text_init(&out, arena);
    for (const char *c = words; *c; c++) {
        const bool after_figure = *c == ' ' && c > words && c[-1] >= '0' && c[-1] <= '9';
        if (after_figure) gw_text_add(&out, hard);
        else gw_text_bytes(&out, c, 1);
    }
    return out.at;
}

/* Names ------------------------------------------------------------------------------------------------------------ */

void gw_detail_name(struct detail_names *names, double x, double y, const char *words)
{
    if (names->n < DETAIL_NAMES) names->items[names->n++] = (struct detail_name){{x, y}, words};
}

void gw_detail_name_once(struct detail_names *names, double x, double y, const char *words)
{
    for (size_t i = 0; i < names->n; i++)
        if (strcmp(names->items[i].words, words) == 0) return;
    gw_detail_name(names, x, y, words);
}

static void by_height(struct detail_names *names)
{
    for (size_t i = 1; i < names->n; i++)
        for (size_t k = i; k > 0 && names->items[k].at.y < names->items[k - 1].at.y; k--) {
            const struct detail_name other = names->items[k];
            names->items[k] = names->items[k - 1];
            names->items[k - 1] = other;
        }
}

static double column_of(const struct detail_names *names) { return names->width > 0 ? names->width : DETAIL_COLUMN; }

/* How high and how wide words are in a column. */
static double measure(struct detail *d, const char *words, double column, double *wide)
{
    struct gw_canvas trial;
    gw_canvas_init(&trial, d->sheet.arena);
    const double high = gw_canvas_paragraph(&trial, (struct gw_point){0, 0}, column, &NAME, words);
    *wide = 0;
    for (size_t i = 0; i < trial.n; i++) *wide = fmax(*wide, gw_lettering_width(&NAME, trial.shapes[i].text));
    return high;
}

/* Each as near to its point as those above let it; then up again, where those below are pushed down. */
static void spread(struct detail *d, const struct detail_names *names, double *y, double top)
{
    const double gap = 3;
    double from = top, high[DETAIL_NAMES], wide;
    for (size_t i = 0; i < names->n; i++) {
        high[i] = measure(d, names->items[i].words, column_of(names), &wide) + gap;
        y[i] = fmax(from, names->items[i].at.y - 0.64 * GW_LABEL_SIZE);
        from = y[i] + high[i];
    }
    for (size_t pass = 0; pass < names->n; pass++)
        for (size_t i = names->n; i-- > 0;) {
            const double above = i ? y[i - 1] + high[i - 1] : top;
            const double middle = names->items[i].at.y - 0.64 * GW_LABEL_SIZE;
            const double crowd = i + 1 < names->n && y[i + 1] > names->items[i + 1].at.y ? 9 : 0;
            y[i] = fmax(above, fmin(y[i], middle - crowd));
        }
}

double gw_detail_put_names(struct detail *d, struct detail_names *names, bool right, double top)
{
    struct gw_canvas *canvas = d->sheet.canvas;
    double y[DETAIL_NAMES], end = top;
    for (size_t i = 0; i < names->n; i++)
        names->items[i].words = gw_detail_glued(d->sheet.arena, names->items[i].words);
    const double column = column_of(names), x = right ? SHEET_MARGIN + SHEET_LIVE - column : SHEET_MARGIN;
    by_height(names);
    spread(d, names, y, top);
    for (size_t i = 0; i < names->n; i++) {
        const struct detail_name *name = &names->items[i];
        double words;
        measure(d, name->words, column, &words);
        const double knee = right ? x - 12 : x + words + 12, foot = right ? x - 4 : x + words + 4,
                     level = y[i] + GW_LABEL_SIZE * 0.64;
        const struct gw_point leader[] = {name->at, {knee, level}, {foot, level}};
        gw_canvas_polyline(canvas, leader, 3, &(struct gw_look){.line = GW_PAPER, .width = GW_LINE_HEAVY});
        gw_canvas_polyline(canvas, leader, 3, &THIN);
        gw_canvas_circle(canvas, name->at, 1.9, &(struct gw_look){.fill = GW_INK, .line = GW_PAPER, .width = 0.8});
        const double next =
            gw_canvas_paragraph(canvas, (struct gw_point){x, y[i] + GW_LABEL_SIZE}, column, &NAME, name->words);
        end = fmax(end, next - GW_LABEL_SIZE);
    }
    return end;
}
