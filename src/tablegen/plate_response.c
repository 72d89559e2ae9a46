/* Generator of tables/plate_response.yaml: solves the plate's equations at the points that the table's polynomials
 * interpolate, then measures the table against solutions elsewhere. Run by 'make response'; takes a minute. It reads
 * the table with the program's own code, which names the rows: a new row needs its id in the old file first.
 *
 * plate_response OUTPUT */
#include "glass/glass_internal.h"

#include "galeward/arena.h"
#include "galeward/text.h"
#include "tables_data.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { TERMS = GW_PLATE_TERMS_MOST, PIECES_MOST = 12, DEGREE_MOST = 16, ROWS_MOST = 7 };
enum { NODES_MOST = PIECES_MOST * DEGREE_MOST + 1, CHECKS = 600 };
static const double ASPECT_MOST = 5, Q_MOST = 1e4, LOAD_SCALE = 5, POISSONS_RATIO = 0.22, FLAW_EXPONENT = 7;
static const double NO_LOAD = 1e-5; /* q* in the place of zero, where only the ratios to it are wanted */

/* A solution and what the rows hold of it. */
struct sample {
    const struct plate_field *field;
    struct gw_plate_solution out;
    double aspect, q;
    struct plate_peak corner, on_long, on_short; /* `corner` goes on from the load before */
    double axis[3];
};

static double deflection(const struct sample *s) { return log(s->out.deflection / s->q); }
static double mean_deflection(const struct sample *s) { return log(s->out.mean_deflection / s->q); }
static double risk(const struct sample *s) { return log(s->out.risk) / FLAW_EXPONENT - log(s->q); }
static double edge_slope(const struct sample *s) { return log(s->out.edge_slope / s->q); }
static double center_x(const struct sample *s) { return log(gw_plate_components_at(s->field, 0, 0, 1).x / s->q); }
static double center_y(const struct sample *s) { return log(gw_plate_components_at(s->field, 0, 0, 1).y / s->q); }
static double long_edge(const struct sample *s) { return log(s->on_long.value / s->q); }
static double short_edge(const struct sample *s) { return log(s->on_short.value / s->q); }
static double long_edge_place(const struct sample *s) { return s->on_long.x; }
static double short_edge_place(const struct sample *s) { return s->on_short.y; }
static double axis_1(const struct sample *s) { return s->axis[0]; }
static double axis_2(const struct sample *s) { return s->axis[1]; }
static double axis_3(const struct sample *s) { return s->axis[2]; }
static double corner(const struct sample *s) { return log(s->corner.value / s->q); }
static double corner_x(const struct sample *s) { return s->corner.x; }
static double corner_y(const struct sample *s) { return s->corner.y; }

/* Rows of one layout. Ranges beyond those in which the rows can govern, never within them. */
static const struct region {
    double aspect[2], q[2];
    int x_pieces, x_degree, y_pieces, y_degree;
    struct {
        const char *id;
        double (*value)(const struct sample *);
    } rows[ROWS_MOST];
} REGIONS[] = {
    {{1, 5},
     {0, 1e4},
     2,
     7,
     5,
     7,
     {{"deflection", deflection},
      {"mean-deflection", mean_deflection},
      {"edge-slope", edge_slope},
      {"center-x", center_x},
      {"center-y", center_y},
      {"long-edge", long_edge}}},
    {{1, 5}, {0, 1e4}, 3, 8, 5, 7, {{"risk", risk}}},
    {{1, 5}, {3000, 1e4}, 1, 6, 1, 6, {{"short-edge", short_edge}, {"short-edge-place", short_edge_place}}},
    {{1, 5}, {300, 1e4}, 1, 6, 1, 6, {{"long-edge-place", long_edge_place}}},
    {{1, 3.3}, {25, 1600}, 1, 11, 2, 7, {{"axis-1", axis_1}, {"axis-2", axis_2}, {"axis-3", axis_3}}},
    {{1, 2}, {60, 400}, 1, 7, 1, 8, {{"corner", corner}, {"corner-x", corner_x}, {"corner-y", corner_y}}},
    {{1, 2.8},
     {350, 1050},
     1,
     7,
     1,
     7,
     {{"corner-high", corner}, {"corner-high-x", corner_x}, {"corner-high-y", corner_y}}},
};
enum { REGIONS_COUNT = sizeof REGIONS / sizeof *REGIONS };

struct row {
    const char *id;
    struct gw_plate_response as;
    double *coefficients;
};

struct generator {
    struct gw_arena arena;
    void *workspace;
    struct plate_field field;
    struct sample sample;
    struct row rows[REGIONS_COUNT * ROWS_MOST];
    size_t n_rows;
};

static void solve(struct generator *g, double aspect, double q)
{
    const struct gw_plate_problem in = {aspect, q, POISSONS_RATIO, FLAW_EXPONENT, TERMS, false};
    struct sample *s = &g->sample;
    if (!gw_plate_solve(&s->out, &in, g->workspace)) {
        fprintf(stderr, "no solution at aspect %g, q* %g\n", aspect, q);
        exit(1);
    }
    gw_plate_open_field(&g->field, g->workspace, &in);
    s->field = &g->field;
    s->aspect = aspect;
    s->q = q;
}

static double along_edge(const struct plate_field *f, bool is_long, double place)
{
    return is_long ? gw_plate_stress_at(f, place, 1, 1).first : gw_plate_stress_at(f, 1, place, 1).first;
}

/* Largest along the edge y = 1 (or x = 1): the best of a row of points, then of ever finer rows about it. */
static struct plate_peak top_of_edge(const struct plate_field *f, bool is_long)
{
    enum { POINTS = 200, FINER = 8, ROUNDS = 12 };
    double best = 0, value = 0, from = 0, step = 1.0 / POINTS;
    for (int round = 0; round < ROUNDS; round++) {
        const int points = round ? FINER : POINTS;
        for (int k = 0; k <= points; k++) {
            double place = fmin(fmax(from + k * step, 0), 1), here = along_edge(f, is_long, place);
            if (here > value) best = place, value = here;
        }
        from = best - step;
        step *= 2.0 / FINER;
    }
    return (struct plate_peak){is_long ? best : 1, is_long ? 1 : best, value};
}

/* The interior top beside the corner; from the lowest load on it is followed from load to load. */
static void follow_corner(struct sample *s, bool first)
{
    struct plate_peak *peak = &s->corner;
    if (first) *peak = (struct plate_peak){0.95, 0.92, 0};
    peak->value = gw_plate_stress_at(s->field, peak->x, peak->y, 1).first;
    gw_plate_walk_uphill(s->field, peak, 2e-3, 1);
}

/* sigma_y along the short axis over that of the center, as a polynomial in the square of the place through four points
 * of it. */
static void expand_axis(struct sample *s)
{
    const double u[3] = {0.06, 0.18, 0.3}, center = gw_plate_components_at(s->field, 0, 0, 1).y;
    double v[3];
    for (int i = 0; i < 3; i++) v[i] = (gw_plate_components_at(s->field, 0, sqrt(u[i]), 1).y / center - 1) / u[i];
    double first = (v[1] - v[0]) / (u[1] - u[0]), second = (v[2] - v[1]) / (u[2] - u[1]);
    s->axis[2] = (second - first) / (u[2] - u[0]);
    s->axis[1] = first - s->axis[2] * (u[0] + u[1]);
    s->axis[0] = v[0] - u[0] * (s->axis[1] + s->axis[2] * u[0]);
}

static double load_coordinate(double q) { return log1p(q / LOAD_SCALE); }

/* Points of all pieces, neighbors sharing their border. */
static size_t nodes(double *out, double least, double most, int pieces, int degree)
{
    size_t n = 0;
    for (int p = 0; p < pieces; p++)
        for (int k = p ? 1 : 0; k <= degree; k++)
            out[n++] = least + (most - least) * (p + (1 - cos(PI * k / degree)) / 2) / pieces;
    return n;
}

static double halved_at_ends(int k, int n) { return k % n ? 1 : 0.5; }

/* One piece's coefficients of T_i T_j from its values at the points, which stand `stride` apart along x. */
static void interpolate(double *out, const double *values, size_t stride, int n, int m)
{
    for (int a = 0; a <= n; a++)
        for (int b = 0; b <= m; b++) {
            double sum = 0;
            for (int i = 0; i <= n; i++)
                for (int j = 0; j <= m; j++) {
                    double weight = halved_at_ends(i, n) * halved_at_ends(j, m);
                    /* the points run upward: k-th at -cos(pi k/n) */
                    double shape = cos(PI * a * (n - i) / n) * cos(PI * b * (m - j) / m);
                    sum += weight * shape * values[(size_t)i * stride + (size_t)j];
                }
            out[a * (m + 1) + b] = sum * 4 / n / m * halved_at_ends(a, n) * halved_at_ends(b, m);
        }
}

/* Twelve decimals: far below the table's error, so that borders still match in a search by load. */
static double rounded(double value) { return round(value * 1e12) / 1e12; }

static void finish_row(struct generator *g, const struct region *r, size_t which, const double *values, size_t loads)
{
    struct row *row = &g->rows[g->n_rows++];
    const size_t piece = (size_t)(r->x_degree + 1) * (size_t)(r->y_degree + 1);
    const size_t count = (size_t)r->x_pieces * (size_t)r->y_pieces;
    row->id = r->rows[which].id;
    row->coefficients = gw_alloc(&g->arena, count * piece, sizeof(double));
    for (int p = 0; p < r->x_pieces; p++)
        for (int q = 0; q < r->y_pieces; q++)
            interpolate(row->coefficients + (size_t)(p * r->y_pieces + q) * piece,
                        values + (size_t)(p * r->x_degree) * loads + (size_t)(q * r->y_degree), loads, r->x_degree,
                        r->y_degree);
    for (size_t i = 0; i < count * piece; i++) row->coefficients[i] = rounded(row->coefficients[i]);
    row->as = (struct gw_plate_response){.x_least = log(r->aspect[0]),
                                         .x_most = log(r->aspect[1]),
                                         .x_pieces = r->x_pieces,
                                         .x_degree = r->x_degree,
                                         .y_least = load_coordinate(r->q[0]),
                                         .y_most = load_coordinate(r->q[1]),
                                         .y_pieces = r->y_pieces,
                                         .y_degree = r->y_degree,
                                         .coefficients = row->coefficients,
                                         .n_coefficients = count * piece};
}

static void fill_region(struct generator *g, const struct region *r)
{
    double x[NODES_MOST], y[NODES_MOST];
    const size_t aspects = nodes(x, log(r->aspect[0]), log(r->aspect[1]), r->x_pieces, r->x_degree);
    const size_t loads = nodes(y, load_coordinate(r->q[0]), load_coordinate(r->q[1]), r->y_pieces, r->y_degree);
    double *values = gw_alloc(&g->arena, ROWS_MOST * aspects * loads, sizeof *values);
    for (size_t i = 0; i < aspects; i++)
        for (size_t j = 0; j < loads; j++) {
            solve(g, fmin(exp(x[i]), ASPECT_MOST), fmax(NO_LOAD, fmin(LOAD_SCALE * expm1(y[j]), Q_MOST)));
            g->sample.on_long = top_of_edge(&g->field, true);
            g->sample.on_short = top_of_edge(&g->field, false);
            expand_axis(&g->sample);
            follow_corner(&g->sample, j == 0);
            for (size_t k = 0; k < ROWS_MOST && r->rows[k].id; k++)
                values[(k * aspects + i) * loads + j] = r->rows[k].value(&g->sample);
        }
    for (size_t k = 0; k < ROWS_MOST && r->rows[k].id; k++) finish_row(g, r, k, values + k * aspects * loads, loads);
}

/* The program's tables with the new rows in them. */
static struct gw_tables *new_tables(struct generator *g)
{
    struct gw_tables *tables = gw_alloc(&g->arena, 1, gw_tables_size());
    memcpy(tables, gw_tables_standard(), gw_tables_size());
    tables->plate_response_range[0].aspect = ASPECT_MOST;
    tables->plate_response_range[0].q_star = Q_MOST;
    tables->plate_response_range[0].load_scale = LOAD_SCALE;
    tables->plate_response_range[0].poissons_ratio = POISSONS_RATIO;
    tables->plate_response_range[0].flaw_exponent = FLAW_EXPONENT;
    for (size_t i = 0; i < GW_N_PLATE_RESPONSE; i++)
        for (size_t k = 0; k < g->n_rows; k++) {
            struct gw_plate_response *row = &tables->plate_response[i];
            if (strcmp(row->row.id, g->rows[k].id) != 0) continue;
            const struct gw_row head = row->row;
            *row = g->rows[k].as;
            row->row = head;
        }
    return tables;
}

/* The largest error of a quantity and where. */
struct error {
    const char *id;
    double largest, aspect, q_star;
};
enum {
    DEFLECTION,
    MEAN,
    RISK,
    RESISTANCE,
    CENTER,
    LARGEST,
    LARGEST_CORNER,
    LOADED,
    LOADED_CORNER,
    SLOPE,
    PLACE,
    ERRORS
};

static void note(struct error *e, const struct sample *s, double error)
{
    if (!(fabs(error) > e->largest)) return;
    e->largest = fabs(error);
    e->aspect = s->aspect;
    e->q_star = s->q;
}

/* By how much the stress at the table's place falls short of the largest. */
static double place_error(const struct sample *s, const struct gw_plate_solution *got)
{
    return 1 - gw_plate_stress_at(s->field, got->stress_x, got->stress_y, 1).first / s->out.stress_max;
}

/* Error of the load at which the risk is what it is here: that of J^(1/m) over its slope in ln q*. */
static double resistance_error(const struct sample *s, double risk_error, double risk_here,
                               const struct gw_tables *tables)
{
    const double nearby = 0.99;
    struct gw_plate_solution below;
    if (!gw_plate_response(&below, s->aspect, s->q * nearby, GW_PLATE_RISK, tables)) exit(1);
    return risk_error * log(nearby) * FLAW_EXPONENT / log(below.risk / risk_here);
}

static void compare(struct error *e, const struct sample *s, const struct gw_tables *tables)
{
    struct gw_plate_solution got = {0};
    const struct gw_plate_solution *want = &s->out;
    if (!gw_plate_response(&got, s->aspect, s->q, GW_PLATE_ALL, tables)) exit(1);
    const double of_risk = pow(got.risk / want->risk, 1 / FLAW_EXPONENT) - 1;
    const bool beyond = s->q > gw_tables_standard()->plate_limits[0].q_star_corner;
    note(&e[DEFLECTION], s, got.deflection / want->deflection - 1);
    note(&e[MEAN], s, got.mean_deflection / want->mean_deflection - 1);
    note(&e[RISK], s, of_risk);
    note(&e[RESISTANCE], s, resistance_error(s, of_risk, got.risk, tables));
    note(&e[CENTER], s, got.stress_center / want->stress_center - 1);
    note(&e[beyond ? LARGEST_CORNER : LARGEST], s, got.stress_max / want->stress_max - 1);
    note(&e[beyond ? LOADED_CORNER : LOADED], s, got.stress_loaded_face / want->stress_loaded_face - 1);
    note(&e[SLOPE], s, got.edge_slope / want->edge_slope - 1);
    note(&e[PLACE], s, place_error(s, &got));
}

/* Points spread evenly by the fractions of two irrational numbers; none is a node. A third of them where the branches
 * of the stress meet. */
static void certify(struct generator *g, struct error *errors)
{
    struct gw_tables *tables = new_tables(g);
    const double first = 0.7548776662466927, second = 0.5698402909980532, least = 0.02;
    for (int i = 1; i <= CHECKS; i++) {
        double x = fmod(i * first, 1), y = fmod(i * second, 1);
        if (i % 3) solve(g, exp(x * log(ASPECT_MOST)), least * exp(y * log(Q_MOST / least)));
        else solve(g, 1 + 2.2 * x, 30 * exp(y * log(50)));
        compare(errors, &g->sample, tables);
    }
}

static const char HEAD[] =
    "# The plate's response as polynomials, written by 'make response' (src/tablegen/plate_response.c): do not edit. A "
    "row "
    "is\n"
    "# the sum of coefficients c_ij T_i T_j, Chebyshev polynomials, in x = ln(aspect) and y = ln(1 + q*/load_scale). "
    "Its\n"
    "# range is cut into equal pieces, those along y running faster in the list, and within a piece j; each piece has\n"
    "# polynomials of its own. What the rows hold: deflection, mean-deflection, edge-slope: ln of it over q*, as in "
    "struct\n"
    "# gw_plate_solution; risk: ln of J^(1/m) over q*; center-x, center-y, long-edge, short-edge, corner, corner-high: "
    "ln of\n"
    "# S/q* of that branch of the stress; -x, -y, -place: where it is, over the half-side; axis-1 to axis-3: sigma_y "
    "along\n"
    "# the short axis over that of the center is 1 + sum of axis-k u^k, u the square of the place.\ntables:\n";

static const char RANGE[] =
    "  - table: plate_response_range\n"
    "    title: What the plate's response table holds for\n"
    "    source: \"von Karman plate equations, solved with so many terms each way and interpolated\"\n"
    "    basis: derived\n"
    "    columns:\n"
    "      - {name: aspect, type: number}\n      - {name: q_star, type: number}\n"
    "      - {name: load_scale, type: number}\n      - {name: poissons_ratio, type: number}\n"
    "      - {name: flaw_exponent, type: number}\n      - {name: terms, type: number}\n"
    "    rows:\n      - {id: four-edges";

static const char ERRORS_HEAD[] =
    "\n  # At points that no polynomial interpolates, against solutions with the same terms. `-corner`: above\n"
    "  # plate_limits' q_star_corner, where the solution itself is good to 1 % only. risk-root: of J^(1/m);\n"
    "  # load-resistance: of the load with the same risk; stress-place: what the stress there lacks of the largest.\n"
    "  - table: plate_response_error\n"
    "    title: Largest error of the plate's response table, and where\n"
    "    source: \"measured by 'make response' at 600 points, aspect 1 to 5, q* 0.02 to 10 000; a third of "
    "them where branches meet\"\n"
    "    basis: derived\n"
    "    columns:\n      - {name: error, type: number}\n      - {name: aspect, type: number}\n"
    "      - {name: q_star, type: number}\n"
    "    rows:\n";

static const char ROWS_HEAD[] =
    "\n  - table: plate_response\n"
    "    title: Response of a plate on four edges, polynomials in ln(aspect) and ln(1 + q*/load_scale)\n"
    "    source: \"von Karman plate equations, solved and interpolated by 'make response'\"\n"
    "    basis: derived\n"
    "    columns:\n"
    "      - {name: x_least, type: number}\n      - {name: x_most, type: number}\n"
    "      - {name: x_pieces, type: number}\n      - {name: x_degree, type: number}\n"
    "      - {name: y_least, type: number}\n      - {name: y_most, type: number}\n"
    "      - {name: y_pieces, type: number}\n      - {name: y_degree, type: number}\n"
    "      - {name: coefficients, type: numbers}\n"
    "    rows:\n";

static void member(struct gw_text *out, const char *key, double value, int digits)
{
    gw_text_addf(out, ", %s: ", key);
    gw_text_number(out, value, digits);
}

static void write_range(struct gw_text *out)
{
    gw_text_add(out, RANGE);
    member(out, "aspect", ASPECT_MOST, 6);
    member(out, "q_star", Q_MOST, 6);
    member(out, "load_scale", LOAD_SCALE, 6);
    member(out, "poissons_ratio", POISSONS_RATIO, 6);
    member(out, "flaw_exponent", FLAW_EXPONENT, 6);
    member(out, "terms", TERMS, 6);
    gw_text_add(out, "}\n");
}

static void write_errors(struct gw_text *out, const struct error *errors)
{
    gw_text_add(out, ERRORS_HEAD);
    for (int i = 0; i < ERRORS; i++) {
        gw_text_addf(out, "      - {id: %s", errors[i].id);
        member(out, "error", errors[i].largest, 2);
        member(out, "aspect", errors[i].aspect, 4);
        member(out, "q_star", errors[i].q_star, 4);
        gw_text_add(out, "}\n");
    }
}

static void write_row(struct gw_text *out, const struct row *row)
{
    const struct gw_plate_response *r = &row->as;
    const size_t width = 110;
    size_t line;
    gw_text_addf(out, "      - {id: %s", row->id);
    member(out, "x_least", r->x_least, 17);
    member(out, "x_most", r->x_most, 17);
    member(out, "x_pieces", r->x_pieces, 17);
    member(out, "x_degree", r->x_degree, 17);
    member(out, "y_least", r->y_least, 17);
    member(out, "y_most", r->y_most, 17);
    member(out, "y_pieces", r->y_pieces, 17);
    member(out, "y_degree", r->y_degree, 17);
    gw_text_add(out, ", coefficients: [");
    line = out->length - width; /* begin a new one */
    for (size_t i = 0; i < r->n_coefficients; i++) {
        if (i) gw_text_add(out, ",");
        if (out->length >= line + width) {
            gw_text_add(out, "\n          ");
            line = out->length;
        }
        gw_text_number(out, r->coefficients[i], 14);
    }
    gw_text_add(out, "]}\n");
}

static void write_all(struct generator *g, const struct error *errors, const char *path)
{
    struct gw_text out;
    gw_text_init(&out, &g->arena);
    gw_text_add(&out, HEAD);
    write_range(&out);
    write_errors(&out, errors);
    gw_text_add(&out, ROWS_HEAD);
    for (size_t i = 0; i < g->n_rows; i++) write_row(&out, &g->rows[i]);
    FILE *file = fopen(path, "w");
    bool good = file && fwrite(out.at, 1, out.length, file) == out.length;
    if ((file && fclose(file)) || !good) {
        perror(path);
        exit(1);
    }
}

int main(int argc, char **argv)
{
    static struct generator g;
    static struct error errors[ERRORS] = {[DEFLECTION] = {.id = "deflection"},
                                          [MEAN] = {.id = "mean-deflection"},
                                          [RISK] = {.id = "risk-root"},
                                          [RESISTANCE] = {.id = "load-resistance"},
                                          [CENTER] = {.id = "stress-center"},
                                          [LARGEST] = {.id = "stress-max"},
                                          [LARGEST_CORNER] = {.id = "stress-max-corner"},
                                          [LOADED] = {.id = "stress-loaded-face"},
                                          [LOADED_CORNER] = {.id = "stress-loaded-face-corner"},
                                          [SLOPE] = {.id = "edge-slope"},
                                          [PLACE] = {.id = "stress-place"}};
    if (argc != 2) return 2;
    gw_arena_init(&g.arena, NULL);
    g.workspace = gw_alloc(&g.arena, 1, GW_PLATE_WORKSPACE);
    for (size_t i = 0; i < REGIONS_COUNT; i++) fill_region(&g, &REGIONS[i]);
    certify(&g, errors);
    write_all(&g, errors, argv[1]);
    gw_arena_release(&g.arena);
    return 0;
}
