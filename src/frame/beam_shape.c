/* A solved beam: its state anywhere, and its extremes at the roots of the pieces' polynomials. */
#include "frame/beam_internal.h"

#include <string.h>

struct gw_beam_point gw_beam_on_piece(const struct gw_beam_piece *piece, double distance)
{
    const struct gw_beam_point *a = &piece->start;
    const double s = distance, q = piece->load_from, k = (piece->load_to - q) / beam_piece_length(piece);
    const double turn = s * (a->moment + s * (a->shear / 2 - s * (q / 6 + s * k / 24)));
    const double drop = s * s * (a->moment / 2 + s * (a->shear / 6 - s * (q / 24 + s * k / 120)));
    return (struct gw_beam_point){.shear = a->shear - s * (q + s * k / 2),
                                  .moment = a->moment + s * (a->shear - s * (q / 2 + s * k / 6)),
                                  .slope = a->slope - turn / piece->stiffness,
                                  .deflection = a->deflection + s * a->slope - drop / piece->stiffness};
}

static double clipped(const struct gw_beam_result *beam, double x)
{
    return fmin(fmax(x, 0), beam->pieces[beam->n_pieces - 1].to);
}

/* A place that rounding puts beside a jump is on it. */
static bool is_at(const struct gw_beam_result *beam, double x, double place)
{
    return fabs(x - place) <= GW_HAIR * beam->pieces[beam->n_pieces - 1].to;
}

struct gw_beam_point gw_beam_at(const struct gw_beam_result *beam, double x, enum gw_beam_side side)
{
    const double length = beam->pieces[beam->n_pieces - 1].to;
    size_t i = 0;
    if (!(x >= -GW_HAIR * length && x <= length * (1 + GW_HAIR)))
        return (struct gw_beam_point){GW_ABSENT, GW_ABSENT, GW_ABSENT, GW_ABSENT};
    x = clipped(beam, x);
    while (i + 1 < beam->n_pieces &&
           (x > beam->pieces[i].to || (side == GW_BEAM_AFTER && is_at(beam, x, beam->pieces[i].to))))
        i++;
    while (side == GW_BEAM_BEFORE && i > 0 && is_at(beam, x, beam->pieces[i].from)) i--;
    const double distance = x - beam->pieces[i].from;
    return gw_beam_on_piece(&beam->pieces[i], fmin(fmax(distance, 0), beam_piece_length(&beam->pieces[i])));
}

/* Roots of polynomials
 * ---------------------------------------------------------------------------------------------------
 */

enum { DEGREE = 4 };
struct polynomial {
    double c[DEGREE + 1]; /* of s^0, s^1, ... */
    int degree;
};

static double value_of(const struct polynomial *p, double s)
{
    double value = 0;
    for (int i = p->degree; i >= 0; i--) value = value * s + p->c[i];
    return value;
}

/* Between two places of different sign: halved until the doubles end. */
static double bisect(const struct polynomial *p, double low, double high)
{
    const bool rises = value_of(p, low) < 0;
    for (;;) {
        const double middle = low + (high - low) / 2;
        if (!(middle > low && middle < high)) return middle;
        if ((value_of(p, middle) < 0) == rises) low = middle;
        else high = middle;
    }
}

/* Where the polynomial changes its sign inside 0..end: one place at most between two roots of its derivative. */
static int roots_of(const struct polynomial *p, double end, double roots[DEGREE])
{
    struct polynomial derivative = {.degree = p->degree - 1};
    double turns[DEGREE], low = 0;
    if (p->degree == 0) return 0;
    for (int i = 0; i < p->degree; i++) derivative.c[i] = (i + 1) * p->c[i + 1];
    const int n_turns = roots_of(&derivative, end, turns);
    int n = 0;
    for (int i = 0; i <= n_turns; i++) {
        const double high = i < n_turns ? turns[i] : end, a = value_of(p, low), b = value_of(p, high);
        if ((a < 0 && b > 0) || (a > 0 && b < 0)) roots[n++] = bisect(p, low, high);
        low = high;
    }
    return n;
}

static struct polynomial load_on(const struct gw_beam_piece *piece)
{
    return (struct polynomial){{piece->load_from, (piece->load_to - piece->load_from) / beam_piece_length(piece)}, 1};
}

static struct polynomial shear_on(const struct gw_beam_piece *piece)
{
    const struct polynomial q = load_on(piece);
    return (struct polynomial){{piece->start.shear, -q.c[0], -q.c[1] / 2}, 2};
}

/* Less the slope of a chord. */
static struct polynomial slope_on(const struct gw_beam_piece *piece, double chord)
{
    const struct polynomial v = shear_on(piece);
    const double k = -piece->stiffness;
    return (struct polynomial){
        {piece->start.slope - chord, piece->start.moment / k, v.c[0] / 2 / k, v.c[1] / 6 / k, v.c[2] / 12 / k}, 4};
}

/* Extremes
 * ---------------------------------------------------------------------------------------------------------------
 *
 * What differs by rounding alone is equal, and of equal ones the first along the beam is named. */
static const double ROUNDING = 1e-11;

static void offer(struct gw_beam_extreme *best, double sign, double value, double at, double size)
{
    if (fabs(value) <= ROUNDING * size) value = 0;
    if (sign * value > sign * best->value + ROUNDING * size) *best = (struct gw_beam_extreme){value, at};
}

/* Nothing was offered yet. */
static const struct gw_beam_extreme LOWEST = {-INFINITY, 0}, HIGHEST = {INFINITY, 0};

struct sizes {
    double shear, moment;
};

static struct sizes sizes_of(const struct gw_beam_result *out)
{
    struct sizes most = {0, 0};
    for (size_t i = 0; i < out->n_pieces; i++) {
        const struct gw_beam_point a = out->pieces[i].start,
                                   b = gw_beam_on_piece(&out->pieces[i], beam_piece_length(&out->pieces[i]));
        most.shear = fmax(most.shear, fmax(fabs(a.shear), fabs(b.shear)));
        most.moment = fmax(most.moment, fmax(fabs(a.moment), fabs(b.moment)));
    }
    return most;
}

/* Start, end and the roots of a derivative. */
static int candidates(double places[DEGREE + 2], const struct gw_beam_piece *piece, const struct polynomial *derivative)
{
    const double end = beam_piece_length(piece);
    int n = roots_of(derivative, end, places + 1);
    places[0] = 0;
    places[n + 1] = end;
    return n + 2;
}

/* The end is exactly the end. */
static double place_on(const struct gw_beam_piece *piece, double distance)
{
    return distance >= beam_piece_length(piece) ? piece->to : piece->from + distance;
}

static void moments_on(struct gw_beam_extreme *largest, struct gw_beam_extreme *least,
                       const struct gw_beam_piece *piece, const struct sizes *most)
{
    double places[DEGREE + 2];
    const struct polynomial shear = shear_on(piece);
    const int n = candidates(places, piece, &shear);
    for (int i = 0; i < n; i++) {
        const double moment = gw_beam_on_piece(piece, places[i]).moment, at = place_on(piece, places[i]);
        offer(largest, 1, moment, at, most->moment);
        offer(least, -1, moment, at, most->moment);
    }
}

static void forces_on(struct gw_beam_result *out, const struct gw_beam_piece *piece, const struct sizes *most)
{
    double places[DEGREE + 2];
    const struct polynomial load = load_on(piece);
    const int n = candidates(places, piece, &load);
    for (int i = 0; i < n; i++)
        offer(&out->shear_max, 1, fabs(gw_beam_on_piece(piece, places[i]).shear), place_on(piece, places[i]),
              most->shear);
    moments_on(&out->moment_max, &out->moment_min, piece, most);
}

/* Both ways from the line through (from, start) with a slope, between two places. */
struct line {
    double from, to, start, slope;
};
struct both {
    struct gw_beam_extreme with, against;
};

/* The part of the piece inside the line's range, as a piece of its own. */
static bool part_of(struct gw_beam_piece *part, const struct gw_beam_piece *piece, const struct line *line)
{
    const double from = fmax(piece->from, line->from), to = fmin(piece->to, line->to);
    if (!(to > from)) return false;
    const double slope = (piece->load_to - piece->load_from) / beam_piece_length(piece);
    *part = (struct gw_beam_piece){.from = from,
                                   .to = to,
                                   .stiffness = piece->stiffness,
                                   .load_from = piece->load_from + slope * (from - piece->from),
                                   .load_to = piece->load_from + slope * (to - piece->from),
                                   .start = gw_beam_on_piece(piece, from - piece->from)};
    return true;
}

static void depart(struct both *both, const struct gw_beam_result *beam, const struct line *line, double size)
{
    struct gw_beam_piece part;
    double places[DEGREE + 2];
    for (size_t i = 0; i < beam->n_pieces; i++) {
        if (!part_of(&part, &beam->pieces[i], line)) continue;
        const struct polynomial slope = slope_on(&part, line->slope);
        const int n = candidates(places, &part, &slope);
        for (int k = 0; k < n; k++) {
            const double at = place_on(&part, places[k]), chord = line->start + line->slope * (at - line->from);
            const double departure = gw_beam_on_piece(&part, places[k]).deflection - chord;
            offer(&both->with, 1, departure, at, size);
            offer(&both->against, -1, departure, at, size);
        }
    }
}

/* The second round knows how large they are, and so what rounding is. */
static struct both departures(const struct gw_beam_result *beam, const struct line *line)
{
    struct both rough = {LOWEST, HIGHEST}, both = rough;
    depart(&rough, beam, line, 0);
    depart(&both, beam, line, fmax(rough.with.value, -rough.against.value));
    return both;
}

static struct gw_beam_extreme larger(const struct both *both)
{
    const double more = -both->against.value * (1 - ROUNDING);
    return both->with.value >= more ? both->with : both->against;
}

void gw_beam_find_extremes(struct gw_beam_result *out)
{
    const struct sizes most = sizes_of(out);
    const struct line axis = {0, out->pieces[out->n_pieces - 1].to, 0, 0};
    out->shear_max = out->moment_max = LOWEST;
    out->moment_min = HIGHEST;
    for (size_t i = 0; i < out->n_pieces; i++) forces_on(out, &out->pieces[i], &most);
    const struct both both = departures(out, &axis);
    out->deflection_max = larger(&both);
    out->deflection_back = out->deflection_max.value < 0 ? both.with : both.against;
}

struct gw_beam_extreme gw_beam_deflection_between(const struct gw_beam_result *beam, double from, double to)
{
    const struct line axis = {clipped(beam, from), clipped(beam, to), 0, 0};
    const struct both both = departures(beam, &axis);
    return larger(&both);
}

struct gw_beam_extreme gw_beam_from_chord(const struct gw_beam_result *beam, double from, double to)
{
    struct line chord = {clipped(beam, from), clipped(beam, to), 0, 0};
    chord.start = gw_beam_at(beam, chord.from, GW_BEAM_AFTER).deflection;
    chord.slope = (gw_beam_at(beam, chord.to, GW_BEAM_BEFORE).deflection - chord.start) / (chord.to - chord.from);
    const struct both both = departures(beam, &chord);
    return larger(&both);
}

static void shears_on(struct both *both, const struct gw_beam_piece *piece, const struct sizes *most)
{
    double places[DEGREE + 2];
    const struct polynomial load = load_on(piece);
    const int n = candidates(places, piece, &load);
    for (int i = 0; i < n; i++) {
        const double shear = gw_beam_on_piece(piece, places[i]).shear, at = place_on(piece, places[i]);
        offer(&both->with, 1, shear, at, most->shear);
        offer(&both->against, -1, shear, at, most->shear);
    }
}

struct gw_beam_forces gw_beam_forces_between(const struct gw_beam_result *beam, double from, double to)
{
    const struct sizes most = sizes_of(beam);
    const struct line axis = {clipped(beam, from), clipped(beam, to), 0, 0};
    struct both shear = {LOWEST, HIGHEST}, moment = shear;
    struct gw_beam_piece part;
    for (size_t i = 0; i < beam->n_pieces; i++) {
        if (!part_of(&part, &beam->pieces[i], &axis)) continue;
        moments_on(&moment.with, &moment.against, &part, &most);
        shears_on(&shear, &part, &most);
    }
    return (struct gw_beam_forces){larger(&shear), moment.with, moment.against};
}
