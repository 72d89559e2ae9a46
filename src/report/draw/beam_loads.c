/* A beam's loads, what holds it, and the lengths between. */
#include "report/draw/beam_sheet.h"

#include <math.h>

static const double LOAD_HEIGHT = 48, FORCE_HEIGHT = 66, REACTION_HEIGHT = 30, SUPPORT_HEIGHT = 12;
static const double ABOVE = 108, ABOVE_SPREAD = 84, BELOW = 114,
                    UNDER = 12;                          /* round the beam's axis; under the line of lengths */
static const double ROW = 17, OVER = 7, BELOW_LINE = 15; /* of labels: apart, off what they name */

struct strip {
    struct beam_sheet *sheet;
    double axis, largest; /* the beam's line on the page; N/m */
};

/* Its head at `to`; hollow: of a reaction. */
static void arrow(struct strip *s, struct gw_point from, struct gw_point to, double width, bool hollow)
{
    const double sign = to.y > from.y ? 1 : -1, head = 4 + 2 * width, half = 1.5 + 1.2 * width;
    const struct gw_point points[] = {to, {to.x - half, to.y - sign * head}, {to.x + half, to.y - sign * head}};
    const struct gw_look line = {.line = GW_INK, .width = width};
    gw_canvas_line(s->sheet->page.canvas, from, (struct gw_point){to.x, to.y - sign * head}, &line);
    gw_canvas_polygon(s->sheet->page.canvas, points, 3,
                      &(struct gw_look){.fill = hollow ? GW_PAPER : GW_INK, .line = GW_INK, .width = 1});
}

static void keep_upright(struct strip *s, double x, double y1, double y2)
{
    const double half = 4;
    gw_canvas_keep(s->sheet->page.canvas, &(struct gw_box){x - half, fmin(y1, y2), x + half, fmax(y1, y2)});
}

/* Over its place, else beside it. */
static void label(struct strip *s, struct gw_point at, double step, double place, const char *text)
{
    enum { ROWS = 3 };
    const double off = 7;
    struct sheet *page = &s->sheet->page;
    struct gw_lettering start = gw_sheet_label, end = gw_sheet_label;
    start.align = GW_ALIGN_START;
    end.align = GW_ALIGN_END;
    if (gw_canvas_label(page->canvas, at, step, ROWS, &page->within, &gw_sheet_label, text) ||
        gw_canvas_label(page->canvas, (struct gw_point){at.x + off, at.y}, step, ROWS, &page->within, &start, text))
        return;
    gw_sheet_put(page, (struct gw_point){at.x - off, at.y}, step, ROWS, &end, text,
                 gw_format(page->arena, "%s at %s", text, gw_sheet_place(page, place)));
}

/* Load that acts down stands above the beam, load that acts up hangs below. */
static double load_edge(const struct strip *s, double load) { return s->axis - LOAD_HEIGHT * load / s->largest; }

/* Pieces whose loads lie on one straight line. */
struct stretch {
    double from, to, load_from, load_to;
};

static bool as_large(const struct strip *s, double a, double b) { return fabs(a - b) <= 1e-6 * s->largest; }

static bool goes_on(const struct strip *s, const struct stretch *t, const struct gw_beam_piece *p)
{
    const double slope = (t->load_to - t->load_from) / (t->to - t->from);
    return as_large(s, t->load_to, p->load_from) && as_large(s, t->load_to + slope * (p->to - p->from), p->load_to);
}

static size_t stretches_of(const struct strip *s, struct stretch *out)
{
    const struct gw_beam_result *r = s->sheet->result;
    size_t n = 0;
    for (size_t i = 0; i < r->n_pieces; i++) {
        const struct gw_beam_piece *p = &r->pieces[i];
        if (n && goes_on(s, &out[n - 1], p)) {
            out[n - 1].to = p->to;
            out[n - 1].load_to = p->load_to;
        } else {
            out[n++] = (struct stretch){p->from, p->to, p->load_from, p->load_to};
        }
    }
    return n;
}

static void load_arrows(struct strip *s, const struct stretch *t)
{
    const double apart = 26, least = 12, from = beam_across(s->sheet, t->from), to = beam_across(s->sheet, t->to);
    const int first = (int)ceil((from - BEAM_SIDE) / apart - 0.5), last = (int)floor((to - BEAM_SIDE) / apart - 0.5);
    for (int i = first; i <= last; i++) {
        const double x = BEAM_SIDE + apart * (i + 0.5);
        const double edge = load_edge(s, t->load_from + (t->load_to - t->load_from) * (x - from) / (to - from));
        if (fabs(edge - s->axis) < least) continue;
        arrow(s, (struct gw_point){x, edge}, (struct gw_point){x, s->axis + (edge < s->axis ? -2 : 2)}, 1, false);
    }
}

/* No label lies on the load. */
static void keep_stretch(struct strip *s, const struct gw_point corners[4])
{
    enum { PARTS = 24 };
    const double dx = (corners[2].x - corners[1].x) / PARTS, dy = (corners[2].y - corners[1].y) / PARTS;
    for (int i = 0; i < PARTS; i++) {
        const double a = corners[1].y + dy * i, b = a + dy, left = corners[1].x + dx * i;
        const struct gw_box slice = {left, fmin(s->axis, fmin(a, b)), left + dx, fmax(s->axis, fmax(a, b))};
        gw_canvas_keep(s->sheet->page.canvas, &slice);
    }
}

static void draw_stretch(struct strip *s, const struct stretch *t)
{
    const double from = beam_across(s->sheet, t->from), to = beam_across(s->sheet, t->to);
    const struct gw_point corners[] = {
        {from, s->axis}, {from, load_edge(s, t->load_from)}, {to, load_edge(s, t->load_to)}, {to, s->axis}};
    gw_canvas_polygon(s->sheet->page.canvas, corners, 4, &(struct gw_look){.fill = GW_PANEL});
    gw_canvas_line(s->sheet->page.canvas, corners[1], corners[2],
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_MEDIUM});
    load_arrows(s, t);
    keep_stretch(s, corners);
}

static void label_load(struct strip *s, double x, double load)
{
    const double edge = load_edge(s, load);
    const bool above = load > 0;
    if (fabs(load) < 1e-6 * s->largest) return;
    label(s, (struct gw_point){beam_across(s->sheet, x), above ? edge - OVER : edge + BELOW_LINE}, above ? -ROW : ROW,
          x, gw_sheet_given(&s->sheet->page, GW_LINE_LOAD, load));
}

static bool is_level(const struct strip *s, const struct stretch *t) { return as_large(s, t->load_from, t->load_to); }

/* Level stretches in their middle; others where the load jumps, and at peaks, once. */
static void label_stretch(struct strip *s, const struct stretch *all, size_t n, size_t i)
{
    const struct stretch *t = &all[i], *before = i ? t - 1 : NULL, *after = i + 1 < n ? t + 1 : NULL;
    if (is_level(s, t)) {
        label_load(s, (t->from + t->to) / 2, t->load_from);
        return;
    }
    const bool runs_on = after && as_large(s, after->load_from, t->load_to);
    const bool peak = runs_on && !is_level(s, after) && fabs(t->load_to) > fabs(t->load_from);
    if (!before || !as_large(s, before->load_to, t->load_from)) label_load(s, t->from, t->load_from);
    if (!runs_on || peak) label_load(s, t->to, t->load_to);
}

static void draw_spread(struct strip *s, bool words)
{
    struct stretch *all = gw_alloc(s->sheet->page.arena, s->sheet->result->n_pieces, sizeof *all);
    const size_t n = s->largest > 0 ? stretches_of(s, all) : 0;
    for (size_t i = 0; i < n; i++) {
        if (!(fabs(all[i].load_from) + fabs(all[i].load_to) > 0)) continue;
        if (words) label_stretch(s, all, n, i);
        else draw_stretch(s, &all[i]);
    }
}

static struct gw_point tail_of(const struct strip *s, const struct gw_beam_load *load)
{
    return (struct gw_point){beam_across(s->sheet, load->from), s->axis + (load->start > 0 ? -1 : 1) * FORCE_HEIGHT};
}

static void draw_force(struct strip *s, const struct gw_beam_load *load)
{
    const struct gw_point tail = tail_of(s, load), head = {tail.x, s->axis + (load->start > 0 ? -2 : 2)};
    arrow(s, tail, head, GW_LINE_BOLD, false);
    keep_upright(s, tail.x, tail.y, head.y);
}

static const double COUPLE_RADIUS = 16;

/* Three quarters of a circle; clockwise where positive. */
static void draw_couple(struct strip *s, const struct gw_beam_load *load)
{
    enum { ARC = 18 };
    const double turn = load->start > 0 ? 1 : -1, pi = acos(-1.0), at = beam_across(s->sheet, load->from);
    const double r = COUPLE_RADIUS;
    struct gw_point arc[ARC + 1];
    for (int i = 0; i <= ARC; i++) {
        const double angle = pi * (-1.25 + 1.35 * i / ARC);
        arc[i] = (struct gw_point){at + turn * r * cos(angle), s->axis + r * sin(angle)};
    }
    gw_canvas_polyline(s->sheet->page.canvas, arc, ARC + 1, &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
    arrow(s, (struct gw_point){arc[ARC].x, arc[ARC].y - 1}, (struct gw_point){arc[ARC].x, arc[ARC].y + 6}, GW_LINE_BOLD,
          false);
    gw_canvas_keep(s->sheet->page.canvas, &(struct gw_box){at - r, s->axis - r, at + r, s->axis + r});
}

static void draw_singles(struct strip *s)
{
    for (size_t i = 0; i < s->sheet->beam->n_loads; i++) {
        const struct gw_beam_load *load = &s->sheet->beam->loads[i];
        if (load->kind == GW_BEAM_FORCE && fabs(load->start) > 0) draw_force(s, load);
        if (load->kind == GW_BEAM_COUPLE && fabs(load->start) > 0) draw_couple(s, load);
    }
}

static void label_singles(struct strip *s)
{
    const struct sheet *page = &s->sheet->page;
    for (size_t i = 0; i < s->sheet->beam->n_loads; i++) {
        const struct gw_beam_load *load = &s->sheet->beam->loads[i];
        const struct gw_point tail = tail_of(s, load);
        const bool down = load->start > 0;
        if (load->kind == GW_BEAM_FORCE && fabs(load->start) > 0)
            label(s, (struct gw_point){tail.x, tail.y + (down ? -OVER : BELOW_LINE)}, down ? -ROW : ROW, load->from,
                  gw_sheet_demand(page, GW_FORCE, fabs(load->start)));
        if (load->kind == GW_BEAM_COUPLE && fabs(load->start) > 0)
            label(s, (struct gw_point){tail.x, s->axis - COUPLE_RADIUS - OVER}, -ROW, load->from,
                  gw_sheet_demand(page, GW_MOMENT, fabs(load->start)));
    }
}

static bool is_clamp(const struct strip *s, double x)
{
    const struct gw_beam *beam = s->sheet->beam;
    for (size_t i = 0; i < beam->n_clamps; i++)
        if (fabs(beam->clamps[i] - x) <= 1e-9 * beam->length) return true;
    return false;
}

static void draw_support(struct strip *s, size_t i)
{
    const struct gw_beam_result *r = s->sheet->result;
    struct gw_canvas *canvas = s->sheet->page.canvas;
    const double at = beam_across(s->sheet, r->supports[i]), under = s->axis + SUPPORT_HEIGHT + 3;
    const struct gw_look solid = {.fill = GW_INK};
    const struct gw_point triangle[] = {
        {at, s->axis + 2}, {at - 7, s->axis + SUPPORT_HEIGHT}, {at + 7, s->axis + SUPPORT_HEIGHT}};
    const struct gw_point near = {at, under}, far = {at, under + REACTION_HEIGHT};
    const bool up = r->reactions[i] > 0;
    if (is_clamp(s, r->supports[i]))
        gw_canvas_rectangle(canvas, &(struct gw_box){at - 4, s->axis - 13, at + 4, s->axis + 13}, &solid);
    else gw_canvas_polygon(canvas, triangle, 3, &solid);
    if (fabs(r->reactions[i]) > 0) arrow(s, up ? far : near, up ? near : far, GW_LINE_MEDIUM, true);
    keep_upright(s, at, s->axis - 13, far.y);
}

static void label_support(struct strip *s, size_t i)
{
    const struct gw_beam_result *r = s->sheet->result;
    const double place = r->supports[i];
    const struct gw_point at = {beam_across(s->sheet, place), s->axis + SUPPORT_HEIGHT + REACTION_HEIGHT + 3 + ROW};
    label(s, at, ROW, place, gw_sheet_demand(&s->sheet->page, GW_FORCE, fabs(r->reactions[i])));
    if (is_clamp(s, place)) label(s, at, ROW, place, gw_sheet_demand(&s->sheet->page, GW_MOMENT, fabs(r->couples[i])));
}

static void draw_beam_line(struct strip *s)
{
    const struct beam_sheet *sheet = s->sheet;
    const double left = beam_across(sheet, 0), right = beam_across(sheet, sheet->beam->length);
    gw_canvas_line(sheet->page.canvas, (struct gw_point){left, s->axis}, (struct gw_point){right, s->axis},
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_HEAVY});
    gw_canvas_keep(sheet->page.canvas, &(struct gw_box){left, s->axis - 6, right, s->axis + 6});
    for (size_t i = 0; i < sheet->result->n_supports; i++) draw_support(s, i);
    for (size_t i = 0; i < sheet->beam->n_hinges; i++)
        gw_canvas_circle(sheet->page.canvas, (struct gw_point){beam_across(sheet, sheet->beam->hinges[i]), s->axis}, 5,
                         &(struct gw_look){.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_BOLD});
}

/* Ends, supports and hinges with the lengths between them. */
static void draw_lengths(struct strip *s, double y)
{
    struct beam_sheet *sheet = s->sheet;
    const struct gw_beam *b = sheet->beam;
    double from = 0;
    while (from < b->length * (1 - 1e-9)) {
        double to = b->length;
        for (size_t i = 0; i < sheet->result->n_supports; i++)
            if (sheet->result->supports[i] > from + 1e-6 * b->length) to = fmin(to, sheet->result->supports[i]);
        for (size_t i = 0; i < b->n_hinges; i++)
            if (b->hinges[i] > from + 1e-6 * b->length) to = fmin(to, b->hinges[i]);
        const char *words = gw_sheet_place(&sheet->page, to - from);
        const struct gw_point left = {beam_across(sheet, from), y}, right = {beam_across(sheet, to), y};
        if (!gw_canvas_dimension(sheet->page.canvas, left, right, words))
            gw_sheet_list(&sheet->page,
                          gw_format(sheet->page.arena, "%s from %s to %s", words, gw_sheet_place(&sheet->page, from),
                                    gw_sheet_place(&sheet->page, to)));
        from = to;
    }
}

/* Only what occurs. */
static const char *key_of(const struct beam_sheet *s)
{
    struct gw_text text;
    gw_text_init(&text, s->page.arena);
    gw_text_add(&text, "Hollow arrows: reactions.");
    if (s->result->n_supports > s->beam->n_clamps) gw_text_add(&text, " Triangle: support.");
    if (s->beam->n_clamps) gw_text_add(&text, " Bar: support that holds rotation.");
    if (s->beam->n_hinges) gw_text_add(&text, " Circle: splice that carries no moment.");
    return text.at;
}

static bool has_singles(const struct gw_beam *beam)
{
    for (size_t i = 0; i < beam->n_loads; i++)
        if (beam->loads[i].kind != GW_BEAM_SPREAD && fabs(beam->loads[i].start) > 0) return true;
    return false;
}

double gw_beam_load_strip(struct beam_sheet *sheet, double top)
{
    const struct gw_beam_result *r = sheet->result;
    const double head = gw_sheet_caption(&sheet->page, (struct gw_point){SHEET_MARGIN, top}, SHEET_LIVE,
                                         "Loads, and the reactions that hold them", key_of(sheet));
    struct strip s = {.sheet = sheet, .axis = head + (has_singles(sheet->beam) ? ABOVE : ABOVE_SPREAD)};
    for (size_t i = 0; i < r->n_pieces; i++)
        s.largest = fmax(s.largest, fmax(fabs(r->pieces[i].load_from), fabs(r->pieces[i].load_to)));
    draw_spread(&s, false);
    draw_singles(&s);
    draw_beam_line(&s);
    draw_lengths(&s, s.axis + BELOW);
    sheet->page.within.top = head - 10;
    sheet->page.within.bottom = s.axis + BELOW - 3;
    label_singles(&s);
    for (size_t i = 0; i < r->n_supports; i++) label_support(&s, i);
    draw_spread(&s, true);
    return gw_sheet_missed(&sheet->page, s.axis + BELOW + UNDER);
}
