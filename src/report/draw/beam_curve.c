/* One strip of a beam's sheet: shear, bending moment or deflection along it, with every span's peaks. */
#include "report/draw/beam_sheet.h"

#include <math.h>
#include <stdlib.h>

static const double CURVE = 90, ROOM = 38; /* pixels: of the curve; above and below it, for labels */
static const double ROW = 17, OVER = 9, UNDER = 18;

struct peak {
    double x, value;
    bool placed; /* its place is said */
    enum gw_align align;
};
struct strip {
    struct beam_sheet *sheet;
    enum beam_curve kind;
    enum gw_dim dim;
    struct gw_point *points; /* x in m, value */
    size_t n;
    double high, low; /* of the values: at least 0, at most 0 */
    double zero, scale;
    struct peak *peaks;
    size_t n_peaks;
};

static double value_of(const struct strip *s, const struct gw_beam_point *p)
{
    return s->kind == BEAM_SHEAR ? p->shear : s->kind == BEAM_MOMENT ? p->moment : p->deflection;
}

static double down(const struct strip *s, double value) { return s->zero + s->scale * value; }

static bool meets_words(const struct gw_canvas *canvas, const struct gw_box *box)
{
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_box *b = &canvas->shapes[i].box;
        const bool meets = b->left < box->right && box->left < b->right && b->top < box->bottom && box->top < b->bottom;
        if (canvas->shapes[i].kind == GW_SHAPE_TEXT && meets) return true;
    }
    return false;
}

static void reach(struct strip *s, double value)
{
    s->high = fmax(s->high, value);
    s->low = fmin(s->low, value);
}

static void trace(struct strip *s)
{
    enum { ALONG = 240 };
    const struct gw_beam_result *r = s->sheet->result;
    s->points = gw_alloc(s->sheet->page.arena, ALONG + 4 * GW_BEAM_PIECES, sizeof *s->points);
    for (size_t i = 0; i < r->n_pieces; i++) {
        const struct gw_beam_piece *p = &r->pieces[i];
        const int n = 1 + (int)((p->to - p->from) / s->sheet->beam->length * ALONG);
        for (int k = 0; k <= n; k++) {
            const double x = p->from + (p->to - p->from) * k / n;
            const struct gw_beam_point at = gw_beam_at(r, x, k < n ? GW_BEAM_AFTER : GW_BEAM_BEFORE);
            s->points[s->n++] = (struct gw_point){x, value_of(s, &at)};
            reach(s, value_of(s, &at));
        }
    }
}

/* Peaks
 * -------------------------------------------------------------------------------------------------------------------
 */

/* Spans that meet share what they have in common. */
static void add_peak(struct strip *s, struct peak peak)
{
    const double most = fmax(s->high, -s->low), near = 1e-6 * s->sheet->beam->length;
    if (fabs(peak.value) < 1e-3 * most) return;
    for (size_t i = 0; i < s->n_peaks; i++)
        if (fabs(s->peaks[i].x - peak.x) <= near && fabs(s->peaks[i].value - peak.value) <= 1e-6 * most) return;
    s->peaks[s->n_peaks++] = peak;
}

static void shear_peaks(struct strip *s, const struct bay *bay)
{
    const struct gw_beam_result *r = s->sheet->result;
    const struct gw_beam_extreme most = gw_beam_forces_between(r, bay->from, bay->to).shear;
    const double near = 1e-6 * s->sheet->beam->length;
    const double first = gw_beam_at(r, bay->from, GW_BEAM_AFTER).shear;
    const double last = gw_beam_at(r, bay->to, GW_BEAM_BEFORE).shear;
    const bool is_first = most.at <= bay->from + near, is_last = most.at >= bay->to - near;
    add_peak(s, (struct peak){most.at, most.value, true,
                              is_first  ? GW_ALIGN_START
                              : is_last ? GW_ALIGN_END
                                        : GW_ALIGN_MIDDLE});
    if (!is_first) add_peak(s, (struct peak){bay->from, first, false, GW_ALIGN_START});
    if (!is_last) add_peak(s, (struct peak){bay->to, last, false, GW_ALIGN_END});
}

/* With the moments at its ends, of which only one may be the least. */
static void moment_peaks(struct strip *s, const struct bay *bay)
{
    const struct gw_beam_result *r = s->sheet->result;
    const struct gw_beam_forces f = gw_beam_forces_between(r, bay->from, bay->to);
    const double first = gw_beam_at(r, bay->from, GW_BEAM_AFTER).moment;
    const double last = gw_beam_at(r, bay->to, GW_BEAM_BEFORE).moment;
    if (f.moment_max.value > 0) add_peak(s, (struct peak){f.moment_max.at, f.moment_max.value, true, GW_ALIGN_MIDDLE});
    if (f.moment_min.value < 0) add_peak(s, (struct peak){f.moment_min.at, f.moment_min.value, true, GW_ALIGN_MIDDLE});
    add_peak(s, (struct peak){bay->from, first, true, GW_ALIGN_MIDDLE});
    add_peak(s, (struct peak){bay->to, last, true, GW_ALIGN_MIDDLE});
}

static void deflection_peak(struct strip *s, const struct bay *bay)
{
    const struct gw_beam_extreme e = gw_beam_deflection_between(s->sheet->result, bay->from, bay->to);
    add_peak(s, (struct peak){e.at, e.value, true, GW_ALIGN_MIDDLE});
}

static int by_size(const void *a, const void *b)
{
    const struct peak *p = a, *q = b;
    const float x = (float)fabs(p->value), y = (float)fabs(q->value); /* rounding noise must not choose */
    if (x > y || x < y) return x > y ? -1 : 1;
    return p->x < q->x ? -1 : p->x > q->x;
}

/* The largest are first to find a place. */
static void find_peaks(struct strip *s)
{
    enum { OF_A_BAY = 4 };
    s->peaks = gw_alloc(s->sheet->page.arena, OF_A_BAY * s->sheet->n_bays, sizeof *s->peaks);
    for (size_t i = 0; i < s->sheet->n_bays; i++) {
        const struct bay *bay = &s->sheet->bays[i];
        if (s->kind == BEAM_SHEAR) shear_peaks(s, bay);
        else if (s->kind == BEAM_MOMENT) moment_peaks(s, bay);
        else deflection_peak(s, bay);
    }
    qsort(s->peaks, s->n_peaks, sizeof *s->peaks, by_size);
}

/* To a label that stands some rows away, where no words lie between. */
static void draw_leader(struct strip *s, struct gw_point peak)
{
    const double clear = 4, half = 1;
    struct gw_canvas *canvas = s->sheet->page.canvas;
    const struct gw_box label = canvas->shapes[canvas->n - 1].box;
    const bool below = label.top > peak.y;
    const double from = peak.y + (below ? clear : -clear), to = below ? label.top : label.bottom;
    const struct gw_box line = {peak.x - half, fmin(from, to), peak.x + half, fmax(from, to)};
    if (fabs(to - from) < ROW / 2 || meets_words(canvas, &line)) return;
    gw_canvas_line(canvas, (struct gw_point){peak.x, from}, (struct gw_point){peak.x, to},
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_THIN});
    gw_canvas_keep(canvas, &line);
}

static void draw_peak(struct strip *s, const struct peak *p)
{
    const struct sheet *page = &s->sheet->page;
    const struct gw_point at = {beam_across(s->sheet, p->x), down(s, p->value)};
    const bool below = at.y > s->zero;
    struct gw_lettering font = gw_sheet_label;
    const char *place = gw_sheet_place(page, p->x), *value = gw_sheet_demand(page, s->dim, p->value);
    const char *said = gw_format(page->arena, "%s at %s", value, place);
    font.align = p->align;
    if (p->placed)
        gw_canvas_circle(page->canvas, at, 3.2,
                         &(struct gw_look){.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_MEDIUM});
    const struct gw_point first = {at.x, at.y + (below ? UNDER : -OVER)};
    if (gw_sheet_put(&s->sheet->page, first, below ? ROW : -ROW, 3, &font, p->placed ? said : value, said))
        draw_leader(s, at);
}

/* The curve
 * ----------------------------------------------------------------------------------------------------------------
 */

/* No label lies on the curve or between it and its line. */
static void keep_curve(struct strip *s)
{
    for (size_t i = 0; i + 1 < s->n; i++) {
        const double a = down(s, s->points[i].y), b = down(s, s->points[i + 1].y), z = s->zero;
        const struct gw_box slice = {beam_across(s->sheet, s->points[i].x), fmin(z, fmin(a, b)),
                                     beam_across(s->sheet, s->points[i + 1].x), fmax(z, fmax(a, b))};
        gw_canvas_keep(s->sheet->page.canvas, &slice);
    }
}

static void draw_curve(struct strip *s)
{
    struct gw_canvas *canvas = s->sheet->page.canvas;
    struct gw_point *area = gw_alloc(canvas->arena, s->n + 2, sizeof *area);
    for (size_t i = 0; i < s->n; i++)
        area[i + 1] = (struct gw_point){beam_across(s->sheet, s->points[i].x), down(s, s->points[i].y)};
    area[0] = (struct gw_point){beam_across(s->sheet, 0), s->zero};
    area[s->n + 1] = (struct gw_point){beam_across(s->sheet, s->sheet->beam->length), s->zero};
    gw_canvas_polygon(canvas, area, s->n + 2, &(struct gw_look){.fill = GW_PANEL});
    gw_canvas_polyline(canvas, area, s->n + 2, &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
    gw_canvas_line(canvas, area[0], area[s->n + 1], &(struct gw_look){.line = GW_RULE, .width = GW_LINE_THIN});
    keep_curve(s);
}

/* Limits
 * ------------------------------------------------------------------------------------------------------------------
 */

/* A limit so far beyond the largest deflection would leave no curve to see. */
static const double FAR = 6;

static bool is_shown(const struct strip *s, const struct bay *bay, double most)
{
    return s->kind == BEAM_DEFLECTION && gw_given(bay->limit) && bay->limit <= FAR * most;
}

static double signed_limit(const struct strip *s, const struct bay *bay)
{
    return copysign(bay->limit, gw_beam_deflection_between(s->sheet->result, bay->from, bay->to).value);
}

static bool meets_curve(const struct strip *s, const struct gw_box *box)
{
    for (size_t i = 0; i < s->n; i++) {
        const double x = beam_across(s->sheet, s->points[i].x), y = down(s, s->points[i].y);
        if (x >= box->left && x <= box->right && y >= box->top && y <= box->bottom) return true;
    }
    return false;
}

/* At an end of its line, beyond it; `rows` away at most. */
static bool name_outside(struct sheet *page, const struct gw_box *line, bool below, int rows, const char *words)
{
    const double off = 3, y = below ? line->bottom + UNDER - off : line->top - OVER + off, step = below ? ROW : -ROW;
    struct gw_lettering start = gw_sheet_label, end = gw_sheet_label;
    start.align = GW_ALIGN_START;
    end.align = GW_ALIGN_END;
    return gw_canvas_label(page->canvas, (struct gw_point){line->right - off, y}, step, rows, &page->within, &end,
                           words) ||
           gw_canvas_label(page->canvas, (struct gw_point){line->left + off, y}, step, rows, &page->within, &start,
                           words);
}

/* Where the curve goes beyond its limit: on a plate in the area under the curve, off the curve itself. */
static bool name_inside(struct strip *s, const struct gw_box *line, bool below, const char *words)
{
    enum { PLACES = 24 };
    const double off = 3, y = below ? line->bottom + UNDER - off : line->top - OVER + off;
    for (int i = PLACES; i >= 0; i--) {
        const struct gw_point at = {line->left + (line->right - line->left) * i / PLACES, y};
        const struct gw_box box = gw_lettering_box(&gw_sheet_label, at, words);
        if (box.left < line->left || box.right > line->right) continue;
        if (meets_curve(s, &box) || meets_words(s->sheet->page.canvas, &box)) continue;
        gw_canvas_text(s->sheet->page.canvas, at, &gw_sheet_label, words);
        return true;
    }
    return false;
}

/* And whether it lies below the undeflected axis. */
static struct gw_box limit_line(const struct strip *s, const struct bay *bay, bool *below)
{
    const double half = 1, y = down(s, signed_limit(s, bay));
    *below = y > s->zero;
    return (struct gw_box){beam_across(s->sheet, bay->from), y - half, beam_across(s->sheet, bay->to), y + half};
}

static void draw_limit(struct strip *s, const struct bay *bay)
{
    struct gw_canvas *canvas = s->sheet->page.canvas;
    bool below;
    const struct gw_box line = limit_line(s, bay, &below);
    const double y = (line.top + line.bottom) / 2;
    gw_canvas_line(canvas, (struct gw_point){line.left, y}, (struct gw_point){line.right, y},
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_MEDIUM, .dashes = "6 3"});
    gw_canvas_keep(canvas, &line);
}

static void name_limit(struct strip *s, const struct bay *bay)
{
    struct sheet *page = &s->sheet->page;
    bool below;
    const struct gw_box line = limit_line(s, bay, &below);
    const char *words = gw_format(page->arena, "limit %s", gw_sheet_capacity(page, GW_THICKNESS, bay->limit));
    if (name_outside(page, &line, below, 1, words) || name_inside(s, &line, below, words) ||
        name_outside(page, &line, below, 3, words))
        return;
    gw_sheet_list(page, gw_format(page->arena, "%s from %s to %s", words, gw_sheet_place(page, bay->from),
                                  gw_sheet_place(page, bay->to)));
}

static const char *second_line(const struct strip *s, double most)
{
    struct gw_text text;
    const struct sheet *page = &s->sheet->page;
    size_t far = 0;
    if (s->kind != BEAM_DEFLECTION) return NULL;
    gw_text_init(&text, page->arena);
    for (size_t i = 0; i < s->sheet->n_bays; i++) {
        const struct bay *bay = &s->sheet->bays[i];
        if (!gw_given(bay->limit) || is_shown(s, bay, most)) continue;
        gw_text_addf(&text, "%s%s %s to %s: %s", far ? "; " : "Limits beyond the strip, ",
                     bay->overhang ? "overhang" : "span", gw_sheet_place(page, bay->from),
                     gw_sheet_place(page, bay->to), gw_sheet_capacity(page, GW_THICKNESS, bay->limit));
        far++;
    }
    return far ? text.at : NULL;
}

void gw_beam_places(struct beam_sheet *s, double zero, double top, double bottom)
{
    const struct gw_look faint = {.line = GW_FAINT, .width = GW_LINE_THIN};
    for (size_t i = 0; i < s->result->n_supports; i++) {
        const double x = beam_across(s, s->result->supports[i]);
        gw_canvas_line(s->page.canvas, (struct gw_point){x, top}, (struct gw_point){x, bottom}, &faint);
    }
    for (size_t i = 0; i < s->beam->n_hinges; i++)
        gw_canvas_circle(s->page.canvas, (struct gw_point){beam_across(s, s->beam->hinges[i]), zero}, 3.5,
                         &(struct gw_look){.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_MEDIUM});
}

static double set_scale(struct strip *s, double top)
{
    const bool falls = s->kind == BEAM_DEFLECTION; /* positive values below the line */
    const double above = falls ? -s->low : s->high, below = falls ? s->high : -s->low, size = above + below;
    s->scale = size > 0 ? (falls ? 1 : -1) * CURVE / size : 0;
    s->zero = top + ROOM + (size > 0 ? CURVE * above / size : CURVE / 2);
    return top + 2 * ROOM + CURVE;
}

double gw_beam_curve_strip(struct beam_sheet *sheet, enum beam_curve kind, double top)
{
    static const char *const titles[] = {"Shear", "Bending moment, sagging above the line",
                                         "Deflection, with the load below the line"};
    static const enum gw_dim dims[] = {GW_FORCE, GW_MOMENT, GW_THICKNESS};
    struct strip s = {.sheet = sheet, .kind = kind, .dim = dims[kind]};
    trace(&s);
    find_peaks(&s);
    const double most = fmax(s.high, -s.low);
    for (size_t i = 0; i < sheet->n_bays; i++)
        if (is_shown(&s, &sheet->bays[i], most)) reach(&s, signed_limit(&s, &sheet->bays[i]));
    const double head = gw_sheet_caption(&sheet->page, (struct gw_point){SHEET_MARGIN, top}, SHEET_LIVE, titles[kind],
                                         second_line(&s, most));
    const double end = set_scale(&s, head - 10);
    gw_beam_places(sheet, s.zero, head - 2, end - 2);
    draw_curve(&s);
    gw_beam_places(sheet, s.zero, s.zero, s.zero);
    sheet->page.within.top = head - 10;
    sheet->page.within.bottom = end - 1;
    for (size_t i = 0; i < sheet->n_bays; i++)
        if (is_shown(&s, &sheet->bays[i], most)) draw_limit(&s, &sheet->bays[i]);
    for (size_t i = 0; i < s.n_peaks; i++) draw_peak(&s, &s.peaks[i]);
    for (size_t i = 0; i < sheet->n_bays; i++)
        if (is_shown(&s, &sheet->bays[i], most)) name_limit(&s, &sheet->bays[i]);
    return gw_sheet_missed(&sheet->page, end);
}
