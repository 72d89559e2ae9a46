/* The response table: Chebyshev polynomials in x = ln(aspect) and y = ln(1 + q* / scale), each over one of the pieces
 * that a row's range is cut into. Neighboring pieces interpolate the same points of their common border, so that a
 * row is continuous. Stresses and deflections are held as logarithms of their ratio to q*; the largest stress is the
 * largest of its branches. */
#include "glass/glass_internal.h"

#include "tables_data.h"

enum { DEGREE_MOST = 16 };
#define ROW(id) (&tables->plate_response[GW_ROW_PLATE_RESPONSE_##id])

/* One coordinate: where the table is read, and the polynomials there, kept for rows whose range is cut alike. */
struct axis {
    double at, least, most, pieces, degree;
    size_t piece, terms;
    double value[DEGREE_MOST + 1]; /* T_0, T_1, ... in the piece */
};

struct spot {
    struct axis x, y;
};

static bool covers(const struct gw_plate_response *row, const struct spot *s)
{
    return s->x.at >= row->x_least && s->x.at <= row->x_most && s->y.at >= row->y_least && s->y.at <= row->y_most;
}

static void settle(struct axis *a, double least, double most, double pieces, double degree)
{
    if (a->pieces == pieces && a->degree == degree && a->least == least && a->most == most) return;
    const double scaled = (a->at - least) / (most - least) * pieces;
    const int last = (int)pieces - 1, floor = (int)scaled, piece = floor < last ? floor : last;
    const double t = 2 * (scaled - piece) - 1;
    a->least = least, a->most = most, a->pieces = pieces, a->degree = degree;
    a->piece = (size_t)piece;
    a->terms = (size_t)degree + 1;
    a->value[0] = 1;
    a->value[1] = t;
    for (size_t k = 2; k < a->terms; k++) a->value[k] = 2 * t * a->value[k - 1] - a->value[k - 2];
}

static double look_up(struct spot *s, const struct gw_plate_response *row)
{
    settle(&s->x, row->x_least, row->x_most, row->x_pieces, row->x_degree);
    settle(&s->y, row->y_least, row->y_most, row->y_pieces, row->y_degree);
    const size_t n = s->x.terms, m = s->y.terms, piece = s->x.piece * (size_t)row->y_pieces + s->y.piece;
    const double *c = row->coefficients + piece * n * m, *along = s->y.value;
    double sum = 0;
    for (size_t i = 0; i < n; i++, c += m) {
        double part[4] = {0, 0, 0, 0}; /* four sums at a time do not wait for each other */
        size_t j = 0;
        for (; j + 4 <= m; j += 4)
            for (size_t k = 0; k < 4; k++) part[k] += c[j + k] * along[j + k];
        for (; j < m; j++) part[0] += c[j] * along[j];
        sum += s->x.value[i] * (part[0] + part[1] + (part[2] + part[3]));
    }
    return sum;
}

/* A branch of the largest stress: ln(S/q*) and its place. */
struct branch {
    double log_stress, x, y;
};

/* Along the short axis the stress over that of the center is 1 + c1 u + c2 u^2 + c3 u^3, u the square of the place. */
static void leave_center(struct branch *best, struct spot *at, double center, const struct gw_tables *tables)
{
    if (!covers(ROW(AXIS_1), at)) return;
    const double c1 = look_up(at, ROW(AXIS_1));
    if (!(c1 > 0)) return; /* the center is the top */
    const double c2 = look_up(at, ROW(AXIS_2)), c3 = look_up(at, ROW(AXIS_3));
    const double root = c2 * c2 - 3 * c1 * c3;
    if (!(root >= 0)) return;
    const double u = c1 / (sqrt(root) - c2);
    const double log_stress = center + log1p(u * (c1 + u * (c2 + u * c3)));
    if (u > 0 && log_stress > best->log_stress) *best = (struct branch){log_stress, 0, sqrt(u)};
}

/* The top inside the plate beside the corner: its value and its place. */
static void approach_corner(struct branch *best, struct spot *at, const struct gw_plate_response *value,
                            const struct gw_plate_response *x, const struct gw_plate_response *y)
{
    if (!covers(value, at)) return;
    const double log_stress = look_up(at, value);
    if (log_stress > best->log_stress) *best = (struct branch){log_stress, look_up(at, x), look_up(at, y)};
}

/* The largest along an edge; -INFINITY where its row does not reach: there the other edge has as much. */
static double edge(struct spot *at, const struct gw_plate_response *row)
{
    return covers(row, at) ? look_up(at, row) : -INFINITY;
}

/* Below the loads of the row of its place the edge cannot govern. */
static void reach_edges(struct branch *best, struct spot *at, const struct gw_tables *tables)
{
    if (!covers(ROW(LONG_EDGE_PLACE), at)) return;
    const double on_long = edge(at, ROW(LONG_EDGE)), on_short = edge(at, ROW(SHORT_EDGE));
    if (fmax(on_long, on_short) <= best->log_stress) return;
    if (on_long >= on_short) *best = (struct branch){on_long, look_up(at, ROW(LONG_EDGE_PLACE)), 1};
    else *best = (struct branch){on_short, 1, look_up(at, ROW(SHORT_EDGE_PLACE))};
}

/* At the center the stress across the short side is the larger one wherever the center is the top. */
static void read_largest(struct gw_plate_solution *out, struct spot *at, double q, const struct gw_tables *tables)
{
    const double center = look_up(at, ROW(CENTER_Y));
    struct branch best = {center, 0, 0};
    leave_center(&best, at, center, tables);
    approach_corner(&best, at, ROW(CORNER), ROW(CORNER_X), ROW(CORNER_Y));
    approach_corner(&best, at, ROW(CORNER_HIGH), ROW(CORNER_HIGH_X), ROW(CORNER_HIGH_Y));
    reach_edges(&best, at, tables);
    out->stress_max = q * exp(best.log_stress);
    out->stress_x = best.x;
    out->stress_y = best.y;
}

/* The loaded face has its largest stress on an edge, where only twist bends: as much as on the unloaded face. */
static void read_others(struct gw_plate_solution *out, struct spot *at, double q, const struct gw_tables *tables)
{
    out->stress_center = q * exp(fmax(look_up(at, ROW(CENTER_X)), look_up(at, ROW(CENTER_Y))));
    out->stress_loaded_face = q * exp(fmax(edge(at, ROW(LONG_EDGE)), edge(at, ROW(SHORT_EDGE))));
}

bool gw_plate_response(struct gw_plate_solution *out, double aspect, double q_star, unsigned want,
                       const struct gw_tables *tables)
{
    const struct gw_plate_response_range *range = &tables->plate_response_range[0];
    const double hair = 1e-12; /* of the aspect, which is a quotient */
    if (!(aspect >= 1 && aspect <= range->aspect * (1 + hair) && q_star >= 0 && q_star <= range->q_star)) return false;
    struct spot at;
    at.x.at = fmin(log(aspect), ROW(DEFLECTION)->x_most);
    at.y.at = fmin(log1p(q_star / range->load_scale), ROW(DEFLECTION)->y_most);
    at.x.pieces = at.y.pieces = 0; /* cut for no row yet */
    if (want & GW_PLATE_DEFLECTION) out->deflection = q_star * exp(look_up(&at, ROW(DEFLECTION)));
    if (want & GW_PLATE_MEAN) out->mean_deflection = q_star * exp(look_up(&at, ROW(MEAN_DEFLECTION)));
    if (want & GW_PLATE_RISK) out->risk = plate_power(q_star * exp(look_up(&at, ROW(RISK))), range->flaw_exponent);
    if (want & GW_PLATE_EDGE_SLOPE) out->edge_slope = q_star * exp(look_up(&at, ROW(EDGE_SLOPE)));
    if (want & GW_PLATE_STRESS) read_largest(out, &at, q_star, tables);
    if (want & GW_PLATE_OTHER_STRESS) read_others(out, &at, q_star, tables);
    return true;
}
