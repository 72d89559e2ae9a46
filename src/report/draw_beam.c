/* A solved beam: its loads and what holds it, its bending moment, its deflection, one above the other. */
#include "galeward/beam.h"
#include "report/draw_field.h"
#include "report/drawings.h"
#include "report/page.h"

#include <math.h>

/* The page, in pixels. */
static const double PAGE = 940, MARGIN = 30, SIDE = 70; /* SIDE: from the page's edge to the beam's ends */
static const double PANEL_TITLE = 20;                   /* from a panel's top to its title's base line */
static const double LOAD_HEIGHT = 64, FORCE_HEIGHT = 84, REACTION_HEIGHT = 34, SUPPORT_HEIGHT = 13;
static const double ABOVE = 150, BELOW = 130; /* the beam's axis in its panel */
static const double CURVE_HEIGHT = 150, CURVE_PANEL = 232;

static const struct gw_svg_font TITLE = {.size = 18, .bold = true};
static const struct gw_svg_font PLAIN = {.size = 12, .color = GW_SVG_SOFT};
static const struct gw_svg_font PANEL = {.size = 14, .bold = true};
static const struct gw_svg_font FOOT = {.size = 11, .color = GW_SVG_SOFT};
static const struct gw_svg_font LABEL = {.size = 12, .anchor = GW_SVG_MIDDLE, .plate = true};

enum { LABELS_MOST = 160 };
struct sheet {
    struct gw_svg svg;
    struct gw_arena *arena;
    enum gw_units shown;
    const struct gw_beam *beam;
    const struct gw_beam_result *result;
    double scale, axis;             /* pixels a meter; the beam's line on the page */
    struct box labels[LABELS_MOST]; /* places taken by words */
    size_t n_labels;
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

static double across(const struct sheet *s, double x) { return SIDE + x * s->scale; }

static bool overlaps(const struct box *a, const struct box *b)
{
    return a->left < b->right && b->left < a->right && a->top < b->bottom && b->top < a->bottom;
}

static bool is_free(const struct sheet *s, const struct box *room)
{
    for (size_t i = 0; i < s->n_labels; i++)
        if (overlaps(&s->labels[i], room)) return false;
    return s->n_labels < LABELS_MOST;
}

static struct box room_of(struct gw_point at, const char *text)
{
    const double half = gw_svg_text_width(text, &LABEL) / 2 + 3;
    return (struct box){at.x - half, at.y - LABEL.size, at.x + half, at.y + 3};
}

/* In the middle over `at`, kept on the page, in the first of three rows (away by `step` each) that is free; else
 * nowhere. */
static void label(struct sheet *s, struct gw_point at, double step, const char *text)
{
    const double half = gw_svg_text_width(text, &LABEL) / 2;
    at.x = fmin(fmax(at.x, MARGIN + half), PAGE - MARGIN - half);
    for (int row = 0; row < 3; row++) {
        if (row) at.y += step;
        const struct box room = room_of(at, text);
        if (!is_free(s, &room)) continue;
        s->labels[s->n_labels++] = room;
        gw_svg_text(&s->svg, at, &LABEL, text);
        return;
    }
}

/* The load's panel
 * -------------------------------------------------------------------------------------------------------
 */

/* Its head at `to`. */
static void arrow(struct sheet *s, struct gw_point from, struct gw_point to, const char *color, double width)
{
    const double sign = to.y > from.y ? 1 : -1, head = 4 + 2 * width, half = 1.5 + 1.2 * width;
    const struct gw_point points[] = {to, {to.x - half, to.y - sign * head}, {to.x + half, to.y - sign * head}};
    gw_svg_line(&s->svg, from, (struct gw_point){to.x, to.y - sign * head},
                &(struct gw_svg_look){.line = color, .width = width});
    gw_svg_polygon(&s->svg, points, 3, &(struct gw_svg_look){.fill = color});
}

static double load_largest(const struct sheet *s)
{
    double most = 0;
    for (size_t i = 0; i < s->result->n_pieces; i++)
        most = fmax(most, fmax(fabs(s->result->pieces[i].load_from), fabs(s->result->pieces[i].load_to)));
    return most;
}

/* Load that acts down stands above the beam, load that acts up hangs below. */
static double load_edge(const struct sheet *s, double load, double largest)
{
    return s->axis - LOAD_HEIGHT * load / largest;
}

/* Pieces whose loads lie on one straight line. */
struct stretch {
    double from, to, load_from, load_to;
};

static bool as_large(double a, double b, double largest) { return fabs(a - b) <= 1e-6 * largest; }

static bool goes_on(const struct stretch *t, const struct gw_beam_piece *p, double largest)
{
    const double slope = (t->load_to - t->load_from) / (t->to - t->from);
    return as_large(t->load_to, p->load_from, largest) &&
           as_large(t->load_to + slope * (p->to - p->from), p->load_to, largest);
}

static size_t stretches_of(struct stretch *out, const struct gw_beam_result *r, double largest)
{
    size_t n = 0;
    for (size_t i = 0; i < r->n_pieces; i++) {
        const struct gw_beam_piece *p = &r->pieces[i];
        if (n && goes_on(&out[n - 1], p, largest)) {
            out[n - 1].to = p->to;
            out[n - 1].load_to = p->load_to;
        } else {
            out[n++] = (struct stretch){p->from, p->to, p->load_from, p->load_to};
        }
    }
    return n;
}

static bool is_loaded(const struct stretch *t) { return fabs(t->load_from) + fabs(t->load_to) > 0; }

static void load_arrows(struct sheet *s, const struct stretch *t, double largest)
{
    const double apart = 26, least = 12, from = across(s, t->from), to = across(s, t->to);
    const int first = (int)ceil((from - SIDE) / apart - 0.5), last = (int)floor((to - SIDE) / apart - 0.5);
    for (int i = first; i <= last; i++) {
        const double x = SIDE + apart * (i + 0.5);
        const double edge =
            load_edge(s, t->load_from + (t->load_to - t->load_from) * (x - from) / (to - from), largest);
        if (fabs(edge - s->axis) < least) continue;
        arrow(s, (struct gw_point){x, edge}, (struct gw_point){x, s->axis + (edge < s->axis ? -2 : 2)}, GW_SVG_BLUE,
              0.8);
    }
}

static void draw_stretch(struct sheet *s, const struct stretch *t, double largest)
{
    const double from = across(s, t->from), to = across(s, t->to);
    const struct gw_point corners[] = {{from, s->axis},
                                       {from, load_edge(s, t->load_from, largest)},
                                       {to, load_edge(s, t->load_to, largest)},
                                       {to, s->axis}};
    gw_svg_polygon(&s->svg, corners, 4, &(struct gw_svg_look){.fill = "#dbe7f1"});
    gw_svg_line(&s->svg, corners[1], corners[2], &(struct gw_svg_look){.line = GW_SVG_BLUE, .width = 1.4});
    load_arrows(s, t, largest);
}

static void label_load(struct sheet *s, double x, double load, double largest)
{
    const double edge = load_edge(s, load, largest);
    if (fabs(load) < 1e-6 * largest) return;
    label(s, (struct gw_point){across(s, x), load > 0 ? edge - 6 : edge + 15}, load > 0 ? -15 : 15,
          measure(s, GW_LINE_LOAD, load));
}

static bool is_level(const struct stretch *t, double largest) { return as_large(t->load_from, t->load_to, largest); }

/* Level stretches in their middle; others where the load jumps, and at peaks, once. */
static void label_stretch(struct sheet *s, const struct stretch *all, size_t n, size_t i, double largest)
{
    const struct stretch *t = &all[i], *before = i ? t - 1 : NULL, *after = i + 1 < n ? t + 1 : NULL;
    if (is_level(t, largest)) {
        label_load(s, (t->from + t->to) / 2, t->load_from, largest);
        return;
    }
    const bool runs_on = after && as_large(after->load_from, t->load_to, largest);
    const bool peak = runs_on && !is_level(after, largest) && fabs(t->load_to) > fabs(t->load_from);
    if (!before || !as_large(before->load_to, t->load_from, largest)) label_load(s, t->from, t->load_from, largest);
    if (!runs_on || peak) label_load(s, t->to, t->load_to, largest);
}

static void draw_spread(struct sheet *s, bool words)
{
    const double largest = load_largest(s);
    struct stretch *all = gw_alloc(s->arena, s->result->n_pieces, sizeof *all);
    const size_t n = largest > 0 ? stretches_of(all, s->result, largest) : 0;
    for (size_t i = 0; i < n; i++) {
        if (!is_loaded(&all[i])) continue;
        if (words) label_stretch(s, all, n, i, largest);
        else draw_stretch(s, &all[i], largest);
    }
}

static void draw_force(struct sheet *s, double x, double force)
{
    const double sign = force > 0 ? -1 : 1, at = across(s, x);
    const struct gw_point tail = {at, s->axis + sign * FORCE_HEIGHT}, head = {at, s->axis + sign * 2};
    arrow(s, tail, head, GW_SVG_ORANGE, 1.8);
    label(s, (struct gw_point){at, tail.y + (sign < 0 ? -6 : 15)}, sign * 15, demand(s, GW_FORCE, fabs(force)));
}

/* Three quarters of a circle; clockwise where positive. */
static void draw_couple(struct sheet *s, double x, double couple)
{
    enum { ARC = 18 };
    const double radius = 17, turn = couple > 0 ? 1 : -1, pi = acos(-1.0), at = across(s, x);
    struct gw_point arc[ARC + 1];
    for (int i = 0; i <= ARC; i++) {
        const double angle = pi * (-1.25 + 1.35 * i / ARC);
        arc[i] = (struct gw_point){at + turn * radius * cos(angle), s->axis + radius * sin(angle)};
    }
    gw_svg_polyline(&s->svg, arc, ARC + 1, &(struct gw_svg_look){.line = GW_SVG_ORANGE, .width = 1.8});
    arrow(s, (struct gw_point){arc[ARC].x, arc[ARC].y - 1}, (struct gw_point){arc[ARC].x, arc[ARC].y + 6},
          GW_SVG_ORANGE, 1.8);
    label(s, (struct gw_point){at, s->axis - radius - 8}, -15, demand(s, GW_MOMENT, fabs(couple)));
}

static void draw_loads(struct sheet *s)
{
    draw_spread(s, false);
    for (size_t i = 0; i < s->beam->n_loads; i++) {
        const struct gw_beam_load *load = &s->beam->loads[i];
        if (load->kind == GW_BEAM_FORCE && fabs(load->start) > 0) draw_force(s, load->from, load->start);
        if (load->kind == GW_BEAM_COUPLE && fabs(load->start) > 0) draw_couple(s, load->from, load->start);
    }
    draw_spread(s, true);
}

static bool is_near(const struct sheet *s, double a, double b) { return fabs(a - b) <= 1e-9 * s->beam->length; }

static bool is_clamp(const struct sheet *s, double x)
{
    for (size_t i = 0; i < s->beam->n_clamps; i++)
        if (is_near(s, s->beam->clamps[i], x)) return true;
    return false;
}

static void draw_support(struct sheet *s, size_t i)
{
    const struct gw_beam_result *r = s->result;
    const double at = across(s, r->supports[i]), under = s->axis + SUPPORT_HEIGHT + 3, reaction = r->reactions[i];
    const struct gw_svg_look solid = {.fill = GW_SVG_INK};
    const struct gw_point triangle[] = {
        {at, s->axis + 2}, {at - 8, s->axis + SUPPORT_HEIGHT}, {at + 8, s->axis + SUPPORT_HEIGHT}};
    const struct gw_point near = {at, under}, far = {at, under + REACTION_HEIGHT};
    struct gw_point words = {at, far.y + 15};
    if (is_clamp(s, r->supports[i])) gw_svg_rectangle(&s->svg, at - 4, s->axis - 14, 8, 28, &solid);
    else gw_svg_polygon(&s->svg, triangle, 3, &solid);
    if (fabs(reaction) > 0) arrow(s, reaction > 0 ? far : near, reaction > 0 ? near : far, GW_SVG_PLUM, 1.8);
    label(s, words, 15, demand(s, GW_FORCE, fabs(reaction)));
    if (is_clamp(s, r->supports[i])) label(s, words, 15, demand(s, GW_MOMENT, fabs(r->couples[i])));
}

static void draw_beam_line(struct sheet *s)
{
    gw_svg_line(&s->svg, (struct gw_point){across(s, 0), s->axis},
                (struct gw_point){across(s, s->beam->length), s->axis},
                &(struct gw_svg_look){.line = GW_SVG_INK, .width = 3});
    for (size_t i = 0; i < s->result->n_supports; i++) draw_support(s, i);
    for (size_t i = 0; i < s->beam->n_hinges; i++)
        gw_svg_circle(&s->svg, (struct gw_point){across(s, s->beam->hinges[i]), s->axis}, 5,
                      &(struct gw_svg_look){.fill = GW_SVG_PAPER, .line = GW_SVG_INK, .width = 1.8});
}

/* Ends, supports and hinges with the lengths between them. */
static void draw_lengths(struct sheet *s, double y)
{
    const struct gw_beam *b = s->beam;
    double from = 0;
    while (from < b->length * (1 - 1e-9)) {
        double to = b->length;
        for (size_t i = 0; i < s->result->n_supports; i++)
            if (s->result->supports[i] > from + 1e-6 * b->length) to = fmin(to, s->result->supports[i]);
        for (size_t i = 0; i < b->n_hinges; i++)
            if (b->hinges[i] > from + 1e-6 * b->length) to = fmin(to, b->hinges[i]);
        const char *words = measure(s, GW_LENGTH, to - from);
        const bool fits = gw_svg_text_width(words, &LABEL) < (to - from) * s->scale + 6;
        gw_svg_dimension(&s->svg, (struct gw_point){across(s, from), y}, (struct gw_point){across(s, to), y},
                         fits ? words : "");
        from = to;
    }
}

static double load_panel(struct sheet *s, double top)
{
    gw_svg_text(&s->svg, (struct gw_point){MARGIN, top + PANEL_TITLE}, &PANEL,
                "Loads, and the reactions that hold them");
    s->axis = top + ABOVE;
    draw_loads(s);
    draw_beam_line(s);
    draw_lengths(s, s->axis + BELOW);
    return s->axis + BELOW + 14;
}

/* Curves
 * -----------------------------------------------------------------------------------------------------------------
 */

struct curve {
    const char *title;
    enum gw_dim dim;
    bool moment, down; /* else deflection; positive values below the line */
    const char *fill, *line;
    struct gw_beam_extreme extremes[2];
};

static double curve_value(const struct curve *c, const struct gw_beam_point *p)
{
    return c->moment ? p->moment : p->deflection;
}

/* Down the page from the line by the curve's value. */
struct trace {
    struct gw_point *points;
    size_t n;
    double high, low; /* of the values: at least 0, at most 0 */
};

static void take(struct trace *t, double x, double value)
{
    t->points[t->n++] = (struct gw_point){x, value};
    t->high = fmax(t->high, value);
    t->low = fmin(t->low, value);
}

static struct trace trace_of(const struct sheet *s, const struct curve *c)
{
    enum { ALONG = 240 };
    const struct gw_beam_result *r = s->result;
    struct trace t = {.points = gw_alloc(s->arena, ALONG + 4 * GW_BEAM_PIECES, sizeof(struct gw_point))};
    for (size_t i = 0; i < r->n_pieces; i++) {
        const struct gw_beam_piece *p = &r->pieces[i];
        const int n = 1 + (int)((p->to - p->from) / s->beam->length * ALONG);
        for (int k = 0; k <= n; k++) {
            const double x = p->from + (p->to - p->from) * k / n;
            const struct gw_beam_point at = gw_beam_at(r, x, k < n ? GW_BEAM_AFTER : GW_BEAM_BEFORE);
            take(&t, x, curve_value(c, &at));
        }
    }
    return t;
}

static void mark(struct sheet *s, const struct curve *c, const struct gw_beam_extreme *e, double zero, double scale,
                 double size)
{
    const struct gw_point at = {across(s, e->at), zero + scale * e->value};
    const bool below = scale * e->value > 0;
    if (fabs(e->value) < 1e-3 * size) return;
    gw_svg_circle(&s->svg, at, 3.2, &(struct gw_svg_look){.fill = GW_SVG_PAPER, .line = GW_SVG_INK, .width = 1.4});
    label(s, (struct gw_point){at.x, at.y + (below ? 18 : -9)}, below ? 15 : -15,
          gw_format(s->arena, "%s at %s", demand(s, c->dim, e->value), measure(s, GW_LENGTH, e->at)));
}

/* Moments over supports, where nothing else is written. */
static void mark_supports(struct sheet *s, double zero, double scale, double size)
{
    for (size_t i = 0; i < s->result->n_supports; i++) {
        const double x = s->result->supports[i];
        const double before = gw_beam_at(s->result, x, GW_BEAM_BEFORE).moment;
        const double after = gw_beam_at(s->result, x, GW_BEAM_AFTER).moment;
        const double moment = fabs(before) > fabs(after) ? before : after;
        const bool below = scale * moment > 0;
        const bool marked = is_near(s, x, s->result->moment_max.at) || is_near(s, x, s->result->moment_min.at);
        if (marked || fabs(moment) < 0.05 * size) continue;
        label(s, (struct gw_point){across(s, x), zero + scale * moment + (below ? 18 : -9)}, below ? 15 : -15,
              demand(s, GW_MOMENT, moment));
    }
}

static void draw_curve(struct sheet *s, const struct curve *c, const struct trace *t, double zero, double scale)
{
    struct gw_point *area = gw_alloc(s->arena, t->n + 2, sizeof *area);
    for (size_t i = 0; i < t->n; i++)
        area[i + 1] = (struct gw_point){across(s, t->points[i].x), zero + scale * t->points[i].y};
    area[0] = (struct gw_point){across(s, 0), zero};
    area[t->n + 1] = (struct gw_point){across(s, s->beam->length), zero};
    gw_svg_polygon(&s->svg, area, t->n + 2, &(struct gw_svg_look){.fill = c->fill});
    gw_svg_polyline(&s->svg, area, t->n + 2, &(struct gw_svg_look){.line = c->line, .width = 1.8});
    gw_svg_line(&s->svg, area[0], area[t->n + 1], &(struct gw_svg_look){.line = GW_SVG_INK, .width = 1.2});
}

/* Supports and hinges on the line, so that the eye finds them again. */
static void draw_places(struct sheet *s, double zero, double top, double bottom)
{
    const struct gw_svg_look faint = {.line = GW_SVG_FAINT, .width = 1, .dashes = "3 3"};
    for (size_t i = 0; i < s->result->n_supports; i++) {
        const double x = across(s, s->result->supports[i]);
        gw_svg_line(&s->svg, (struct gw_point){x, top}, (struct gw_point){x, bottom}, &faint);
    }
    for (size_t i = 0; i < s->beam->n_hinges; i++)
        gw_svg_circle(&s->svg, (struct gw_point){across(s, s->beam->hinges[i]), zero}, 3,
                      &(struct gw_svg_look){.fill = GW_SVG_PAPER, .line = GW_SVG_INK, .width = 1.2});
}

static double curve_panel(struct sheet *s, const struct curve *c, double top)
{
    const struct trace t = trace_of(s, c);
    const double above = c->down ? -t.low : t.high, below = c->down ? t.high : -t.low, size = above + below;
    const double scale = size > 0 ? (c->down ? 1 : -1) * CURVE_HEIGHT / size : 0;
    const double zero = top + PANEL_TITLE + 32 + (size > 0 ? CURVE_HEIGHT * above / size : CURVE_HEIGHT / 2);
    s->n_labels = 0;
    gw_svg_text(&s->svg, (struct gw_point){MARGIN, top + PANEL_TITLE}, &PANEL, c->title);
    draw_places(s, zero, top + PANEL_TITLE + 26, top + PANEL_TITLE + 38 + CURVE_HEIGHT);
    draw_curve(s, c, &t, zero, scale);
    draw_places(s, zero, zero, zero);
    for (int i = 0; i < 2; i++) mark(s, c, &c->extremes[i], zero, scale, size);
    if (c->moment) mark_supports(s, zero, scale, size);
    return top + CURVE_PANEL;
}

/* The page
 * ---------------------------------------------------------------------------------------------------------------
 */

/* Returns the lower end; measures only where `svg` is NULL. */
static double draw_foot(struct gw_svg *svg, double top)
{
    return gw_svg_paragraph(svg, (struct gw_point){MARGIN, top}, PAGE - 2 * MARGIN, &FOOT, gw_caution_text());
}

static const char *description_of(const struct sheet *s)
{
    const struct gw_beam_result *r = s->result;
    return gw_format(s->arena,
                     "Largest moment %s at %s, least %s at %s; largest deflection %s at %s; largest shear %s.",
                     demand(s, GW_MOMENT, r->moment_max.value), measure(s, GW_LENGTH, r->moment_max.at),
                     demand(s, GW_MOMENT, r->moment_min.value), measure(s, GW_LENGTH, r->moment_min.at),
                     demand(s, GW_THICKNESS, r->deflection_max.value), measure(s, GW_LENGTH, r->deflection_max.at),
                     demand(s, GW_FORCE, r->shear_max.value));
}

void gw_draw_beam(struct gw_text *out, const struct gw_beam *beam, const struct gw_beam_result *result,
                  const char *name, enum gw_units shown)
{
    struct sheet s = {.arena = out->arena, .shown = shown, .beam = beam, .result = result};
    s.scale = (PAGE - 2 * SIDE) / beam->length;
    const struct curve moment = {
        "Bending moment (sagging above the line)", GW_MOMENT, true, false, "#f6e3cf", GW_SVG_ORANGE,
        {result->moment_max, result->moment_min}};
    const struct curve deflection = {
        "Deflection (with the load below the line)",      GW_THICKNESS, false, true, "#dbe7f1", GW_SVG_BLUE,
        {result->deflection_max, result->deflection_back}};
    const char *title = gw_format(s.arena, "%s, %s long", name, measure(&s, GW_LENGTH, beam->length));
    const double first = 62, second = first + ABOVE + BELOW + 34, foot = second + 2 * CURVE_PANEL + 16;
    gw_svg_open(&s.svg, out, PAGE, draw_foot(NULL, foot) + 6, title, description_of(&s));
    gw_svg_text(&s.svg, (struct gw_point){MARGIN, 34}, &TITLE, title);
    gw_svg_text(&s.svg, (struct gw_point){MARGIN, 54}, &PLAIN, description_of(&s));
    load_panel(&s, first);
    curve_panel(&s, &deflection, curve_panel(&s, &moment, second));
    draw_foot(&s.svg, foot);
    gw_svg_close(&s.svg);
}
