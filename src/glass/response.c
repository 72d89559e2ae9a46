/* The response table: Chebyshev polynomials in x = ln(aspect) and y = ln(1 + q* / scale), each over one of the pieces
 * that a row's range is cut into. Neighboring pieces interpolate the same points of their common border, so that a
 * row is continuous. Stresses and deflections are held as logarithms of their ratio to q*; the largest stress is the
 * largest of its branches. */
#include "glass/glass_internal.h"

#include "tables_data.h"

enum { DEGREE_MOST = 16 };
#define ROW(id) (&tables->plate_response[GW_ROW_PLATE_RESPONSE_##id])

/* Where the table is read, and the polynomials there; rows of one layout share them. */
struct spot {
    double x, y;
    const struct gw_plate_response *layout; /* the row that the rest was worked out for */
    size_t first;                           /* its piece's first coefficient */
    double along_x[DEGREE_MOST + 1], along_y[DEGREE_MOST + 1];
};

static bool covers(const struct gw_plate_response *row, const struct spot *at)
{
    return at->x >= row->x_least && at->x <= row->x_most && at->y >= row->y_least && at->y <= row->y_most;
}

static bool is_alike(const struct gw_plate_response *a, const struct gw_plate_response *b)
{
    return a->x_least == b->x_least && a->x_most == b->x_most && a->y_least == b->y_least && a->y_most == b->y_most &&
           a->x_pieces == b->x_pieces && a->y_pieces == b->y_pieces && a->x_degree == b->x_degree &&
           a->y_degree == b->y_degree;
}

/* Values of T_0 ... T_degree at `at`, in its piece of the range; which piece. */
static size_t chebyshev(double *out, double at, double least, double most, double pieces, int degree)
{
    const double scaled = (at - least) / (most - least) * pieces;
    const int last = (int)pieces - 1, floor = (int)scaled, piece = floor < last ? floor : last;
    const double t = 2 * (scaled - piece) - 1;
    out[0] = 1;
    out[1] = t;
    for (int k = 2; k <= degree; k++) out[k] = 2 * t * out[k - 1] - out[k - 2];
    return (size_t)piece;
}

static void settle(struct spot *at, const struct gw_plate_response *row)
{
    const int x_degree = (int)row->x_degree, y_degree = (int)row->y_degree;
    size_t x_piece = chebyshev(at->along_x, at->x, row->x_least, row->x_most, row->x_pieces, x_degree);
    size_t y_piece = chebyshev(at->along_y, at->y, row->y_least, row->y_most, row->y_pieces, y_degree);
    at->first = (x_piece * (size_t)row->y_pieces + y_piece) * (size_t)((x_degree + 1) * (y_degree + 1));
    at->layout = row;
}

static double look_up(struct spot *at, const struct gw_plate_response *row)
{
    if (!at->layout || !is_alike(at->layout, row)) settle(at, row);
    const int n = (int)row->x_degree + 1, m = (int)row->y_degree + 1;
    const double *c = row->coefficients + at->first;
    double sum = 0;
    for (int i = 0; i < n; i++, c += m) {
        double even = 0, odd = 0;
        int j = 0;
        for (; j + 2 <= m; j += 2) {
            even += c[j] * at->along_y[j];
            odd += c[j + 1] * at->along_y[j + 1];
        }
        if (j < m) even += c[j] * at->along_y[j];
        sum += at->along_x[i] * (even + odd);
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
    struct spot at = {.x = fmin(log(aspect), ROW(DEFLECTION)->x_most),
                      .y = fmin(log1p(q_star / range->load_scale), ROW(DEFLECTION)->y_most)};
    if (want & GW_PLATE_DEFLECTION) out->deflection = q_star * exp(look_up(&at, ROW(DEFLECTION)));
    if (want & GW_PLATE_MEAN) out->mean_deflection = q_star * exp(look_up(&at, ROW(MEAN_DEFLECTION)));
    if (want & GW_PLATE_RISK) out->risk = plate_power(q_star * exp(look_up(&at, ROW(RISK))), range->flaw_exponent);
    if (want & GW_PLATE_EDGE_SLOPE) out->edge_slope = q_star * exp(look_up(&at, ROW(EDGE_SLOPE)));
    if (want & GW_PLATE_STRESS) read_largest(out, &at, q_star, tables);
    if (want & GW_PLATE_OTHER_STRESS) read_others(out, &at, q_star, tables);
    return true;
}
