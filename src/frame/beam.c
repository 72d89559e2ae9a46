/* Cuts a beam into pieces and solves it. */
#include "frame/beam_internal.h"

#include <stdlib.h>
#include <string.h>

/* Pieces --------------------------------------------------------------------------------------------------------------
 */

/* Supports and clamps may name one place twice, and both ends are always there: a few more than pieces. */
enum { CUTS = GW_BEAM_PIECES + GW_BEAM_SUPPORTS + 3 };
struct cuts {
    double at[CUTS];
    size_t n;
};

static void cut(struct cuts *cuts, double x) { cuts->at[cuts->n++] = x; }

static int by_place(const void *a, const void *b)
{
    const double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* One of each; the ends are exactly the ends. */
static void merge(struct cuts *cuts, const struct gw_beam *in)
{
    size_t n = 0;
    qsort(cuts->at, cuts->n, sizeof *cuts->at, by_place);
    for (size_t i = 0; i < cuts->n; i++) {
        double x = cuts->at[i];
        if (beam_same(in, x, 0)) x = 0;
        if (beam_same(in, x, in->length)) x = in->length;
        if (!n || !beam_same(in, x, cuts->at[n - 1])) cuts->at[n++] = x;
    }
    cuts->n = n;
    cuts->at[0] = 0;
    cuts->at[n - 1] = in->length;
}

static void find_cuts(struct cuts *cuts, const struct gw_beam *in)
{
    cuts->n = 0;
    cut(cuts, 0);
    cut(cuts, in->length);
    for (size_t i = 0; i < in->n_supports; i++) cut(cuts, in->supports[i]);
    for (size_t i = 0; i < in->n_clamps; i++) cut(cuts, in->clamps[i]);
    for (size_t i = 0; i < in->n_hinges; i++) cut(cuts, in->hinges[i]);
    for (size_t i = 0; i + 1 < in->n_segments; i++) cut(cuts, in->segments[i].to);
    for (size_t i = 0; i < in->n_loads; i++) {
        cut(cuts, in->loads[i].from);
        if (in->loads[i].kind == GW_BEAM_SPREAD) cut(cuts, in->loads[i].to);
    }
    merge(cuts, in);
}

static double stiffness_at(const struct gw_beam *in, double x)
{
    size_t i = 0;
    while (i + 1 < in->n_segments && in->segments[i].to <= x) i++;
    return in->segments[i].elastic_modulus * in->segments[i].inertia;
}

/* Exact at both ends of the load. */
static double intensity(const struct gw_beam_load *load, double x)
{
    if (x >= load->to) return load->end;
    return load->start + (load->end - load->start) * ((x - load->from) / (load->to - load->from));
}

static void add_spread(struct gw_beam_piece *piece, const struct gw_beam_load *load)
{
    const double middle = (piece->from + piece->to) / 2;
    if (middle < load->from || middle > load->to) return;
    piece->load_from += intensity(load, piece->from);
    piece->load_to += intensity(load, piece->to);
}

static void add_point(struct beam_run *run, const struct gw_beam_load *load)
{
    size_t i = 0;
    while (i < run->out->n_pieces && !beam_same(run->in, run->out->pieces[i].from, load->from)) i++;
    *(load->kind == GW_BEAM_FORCE ? &run->forces[i] : &run->couples[i]) += load->start;
}

static void make_pieces(struct beam_run *run, const struct cuts *cuts)
{
    struct gw_beam_result *out = run->out;
    const struct gw_beam *in = run->in;
    out->n_pieces = cuts->n - 1;
    for (size_t i = 0; i <= out->n_pieces; i++) run->forces[i] = run->couples[i] = 0;
    for (size_t i = 0; i < out->n_pieces; i++) {
        const double from = cuts->at[i], to = cuts->at[i + 1];
        out->pieces[i] = (struct gw_beam_piece){.from = from, .to = to, .stiffness = stiffness_at(in, (from + to) / 2)};
        for (size_t k = 0; k < in->n_loads; k++)
            if (in->loads[k].kind == GW_BEAM_SPREAD) add_spread(&out->pieces[i], &in->loads[k]);
    }
    for (size_t k = 0; k < in->n_loads; k++)
        if (in->loads[k].kind != GW_BEAM_SPREAD) add_point(run, &in->loads[k]);
}

/* Nodes ---------------------------------------------------------------------------------------------------------------
 */

static bool among(const struct gw_beam *in, double x, const double *places, size_t n)
{
    for (size_t i = 0; i < n; i++)
        if (beam_same(in, x, places[i])) return true;
    return false;
}

static enum gw_status make_nodes(struct beam_run *run, const struct cuts *cuts)
{
    const struct gw_beam *in = run->in;
    size_t n_supports = 0;
    for (size_t i = 0; i < cuts->n; i++) {
        struct beam_node node = {.at = cuts->at[i], .piece = i};
        node.clamp = among(in, node.at, in->clamps, in->n_clamps);
        node.support = node.clamp || among(in, node.at, in->supports, in->n_supports);
        node.hinge = among(in, node.at, in->hinges, in->n_hinges);
        n_supports += node.support;
        if (n_supports > GW_BEAM_SUPPORTS)
            return gw_refuse(run->engine, GW_OUTSIDE_METHOD, "supports", "a beam takes at most {} supports and clamps",
                             gw_of_count(GW_BEAM_SUPPORTS));
        if (node.support || node.hinge || i == 0 || i + 1 == cuts->n) run->nodes[run->n_nodes++] = node;
    }
    return GW_OK;
}

/* Along the pieces
 * -----------------------------------------------------------------------------------------------------
 */

/* From `state` just after the start of field f, with or without its loads, to just before its end. Keeps the states at
 * the starts of the pieces where `keep`. */
static struct gw_beam_point march(struct beam_run *run, size_t f, struct gw_beam_point state, bool loaded, bool keep)
{
    const size_t first = run->nodes[f].piece, end = run->nodes[f + 1].piece;
    for (size_t i = first; i < end; i++) {
        struct gw_beam_piece piece = run->out->pieces[i];
        if (!loaded) piece.load_from = piece.load_to = 0;
        if (loaded && i > first) {
            state.shear -= run->forces[i];
            state.moment += run->couples[i];
        }
        piece.start = state;
        if (keep) run->out->pieces[i] = piece;
        state = gw_beam_on_piece(&piece, beam_piece_length(&piece));
    }
    return state;
}

/* A field as a simple beam: shears and slopes at both ends, 0 before and 1 behind, by its load, by a unit moment at its
 * start and by one at its end. */
struct field {
    double length, shear[2], slope[2], by_start[2], by_end[2];
};

static void simple_slopes(struct beam_run *run, size_t f, struct gw_beam_point start, bool loaded, double slopes[2])
{
    const struct gw_beam_point end = march(run, f, start, loaded, false);
    slopes[0] = -end.deflection / (run->nodes[f + 1].at - run->nodes[f].at);
    slopes[1] = slopes[0] + end.slope;
}

static struct field field_of(struct beam_run *run, size_t f)
{
    struct field field = {.length = run->nodes[f + 1].at - run->nodes[f].at};
    struct gw_beam_point load = march(run, f, (struct gw_beam_point){.shear = 0}, true, false);
    field.shear[0] = -load.moment / field.length;
    field.shear[1] = field.shear[0] + load.shear;
    simple_slopes(run, f, (struct gw_beam_point){.shear = field.shear[0]}, true, field.slope);
    simple_slopes(run, f, (struct gw_beam_point){.shear = -1 / field.length, .moment = 1}, false, field.by_start);
    simple_slopes(run, f, (struct gw_beam_point){.shear = 1 / field.length}, false, field.by_end);
    return field;
}

/* The equations
 * --------------------------------------------------------------------------------------------------------
 *
 * Three unknowns a node: the moments before and after it, and its deflection over (length^2 / first stiffness), so that
 * all are moments. Equations reach one node to either side: a band matrix. */

enum {
    PER_NODE = 3,
    BEFORE = 0,
    AFTER = 1,
    DEFLECTION = 2,
    REACH = 5,
    FAR = 2 * REACH, /* with the rows that pivoting brings up */
    BAND = REACH + FAR + 1,
    ROWS = PER_NODE * BEAM_NODES
};
struct equations {
    double a[ROWS][BAND]; /* column c of row r at c - r + REACH */
    double right[ROWS];
    size_t n;
};

static double *entry(struct equations *e, size_t row, size_t column) { return &e->a[row][column + REACH - row]; }

/* sign * (shear at the start or end of field f) * length, into the row. */
static void add_shear(struct equations *e, size_t row, const struct beam_run *run, const struct field *field, size_t f,
                      bool at_end, double sign)
{
    const double length = run->in->length, arm = sign * length / field->length;
    *entry(e, row, PER_NODE * f + AFTER) -= arm;
    *entry(e, row, PER_NODE * (f + 1) + BEFORE) += arm;
    e->right[row] -= sign * length * field->shear[at_end];
}

/* sign * (slope at the start or end of field f) * first stiffness / length. */
static void add_slope(struct equations *e, size_t row, const struct beam_run *run, const struct field *field, size_t f,
                      bool at_end, double sign)
{
    const double arm = sign * run->in->length / field->length;
    const double scale = sign * run->out->pieces[0].stiffness / run->in->length;
    *entry(e, row, PER_NODE * f + DEFLECTION) -= arm;
    *entry(e, row, PER_NODE * (f + 1) + DEFLECTION) += arm;
    *entry(e, row, PER_NODE * f + AFTER) += scale * field->by_start[at_end];
    *entry(e, row, PER_NODE * (f + 1) + BEFORE) += scale * field->by_end[at_end];
    e->right[row] -= scale * field->slope[at_end];
}

/* No moment beyond an end, nor on either side of a hinge; a clamp keeps its slopes; elsewhere only a couple makes the
 * moment jump, and the slopes of both sides are one. */
static void moment_equations(struct equations *e, const struct beam_run *run, const struct field *fields, size_t i)
{
    const struct beam_node *node = &run->nodes[i];
    const bool first = i == 0, last = i + 1 == run->n_nodes;
    const size_t row = PER_NODE * i;
    if (node->clamp || node->hinge || first) {
        if (node->clamp && !first) add_slope(e, row, run, &fields[i - 1], i - 1, true, 1);
        else *entry(e, row, row + BEFORE) = 1;
    } else if (last) {
        *entry(e, row, row + AFTER) = 1;
    } else {
        add_slope(e, row, run, &fields[i - 1], i - 1, true, -1);
        add_slope(e, row, run, &fields[i], i, false, 1);
    }
    if (node->clamp && !last) {
        add_slope(e, row + 1, run, &fields[i], i, false, 1);
    } else if (node->clamp || node->hinge) {
        *entry(e, row + 1, row + AFTER) = 1;
    } else {
        *entry(e, row + 1, row + AFTER) = 1;
        *entry(e, row + 1, row + BEFORE) = -1;
        e->right[row + 1] = run->couples[node->piece];
    }
}

/* A support does not move; elsewhere the shears of both sides differ by the force on the node. */
static void deflection_equation(struct equations *e, const struct beam_run *run, const struct field *fields, size_t i)
{
    const size_t row = PER_NODE * i + DEFLECTION;
    if (run->nodes[i].support) {
        *entry(e, row, row) = 1;
        return;
    }
    e->right[row] = -run->forces[run->nodes[i].piece] * run->in->length;
    if (i > 0) add_shear(e, row, run, &fields[i - 1], i - 1, true, -1);
    if (i + 1 < run->n_nodes) add_shear(e, row, run, &fields[i], i, false, 1);
}

/* Each row's largest entry becomes 1. */
static void scale_row(struct equations *e, size_t row)
{
    double largest = 0;
    for (size_t k = 0; k < BAND; k++) largest = fmax(largest, fabs(e->a[row][k]));
    for (size_t k = 0; k < BAND; k++) e->a[row][k] /= largest;
    e->right[row] /= largest;
}

static void swap_rows(struct equations *e, size_t a, size_t b, size_t from, size_t to)
{
    for (size_t c = from; c <= to; c++) {
        const double kept = *entry(e, a, c);
        *entry(e, a, c) = *entry(e, b, c);
        *entry(e, b, c) = kept;
    }
    const double kept = e->right[a];
    e->right[a] = e->right[b];
    e->right[b] = kept;
}

static size_t least(size_t a, size_t b) { return a < b ? a : b; }

/* Partial pivoting. False where a pivot is lost in rounding. */
static bool eliminate(struct equations *e)
{
    const double LOST = 1e-13;
    for (size_t r = 0; r < e->n; r++) {
        const size_t lowest = least(r + REACH, e->n - 1), farthest = least(r + FAR, e->n - 1);
        size_t pivot = r;
        for (size_t k = r + 1; k <= lowest; k++)
            if (fabs(*entry(e, k, r)) > fabs(*entry(e, pivot, r))) pivot = k;
        if (!(fabs(*entry(e, pivot, r)) > LOST)) return false;
        if (pivot != r) swap_rows(e, r, pivot, r, farthest);
        for (size_t k = r + 1; k <= lowest; k++) {
            const double factor = *entry(e, k, r) / *entry(e, r, r);
            for (size_t c = r; c <= farthest && factor != 0; c++) *entry(e, k, c) -= factor * *entry(e, r, c);
            e->right[k] -= factor * e->right[r];
        }
    }
    return true;
}

static void substitute(struct equations *e)
{
    for (size_t r = e->n; r-- > 0;) {
        for (size_t c = r + 1; c <= least(r + FAR, e->n - 1); c++) e->right[r] -= *entry(e, r, c) * e->right[c];
        e->right[r] /= *entry(e, r, r);
    }
}

/* What is zero by its equation is zero to the last bit. */
static void take_node(struct beam_run *run, const struct equations *e, size_t i)
{
    struct beam_node *node = &run->nodes[i];
    const double *unknowns = &e->right[PER_NODE * i], length = run->in->length;
    node->before = i == 0 || node->hinge ? 0 : unknowns[BEFORE];
    node->after = i + 1 == run->n_nodes || node->hinge ? 0 : unknowns[AFTER];
    node->deflection = node->support ? 0 : unknowns[DEFLECTION] * length * length / run->out->pieces[0].stiffness;
}

static enum gw_status solve_nodes(struct beam_run *run, const struct field *fields)
{
    struct equations e;
    e.n = PER_NODE * run->n_nodes;
    memset(e.a, 0, e.n * sizeof *e.a);
    memset(e.right, 0, e.n * sizeof *e.right);
    for (size_t i = 0; i < run->n_nodes; i++) {
        moment_equations(&e, run, fields, i);
        deflection_equation(&e, run, fields, i);
    }
    for (size_t r = 0; r < e.n; r++) scale_row(&e, r);
    if (!eliminate(&e))
        return gw_refuse(run->engine, GW_OUTSIDE_METHOD, "supports",
                         "spans or stiffnesses differ by too much: the digits of the equations do not carry them");
    substitute(&e);
    for (size_t i = 0; i < run->n_nodes; i++) take_node(run, &e, i);
    return GW_OK;
}

/* The answer
 * -----------------------------------------------------------------------------------------------------------
 */

static void fill_fields(struct beam_run *run, const struct field *fields, size_t n_nodes)
{
    for (size_t f = 0; f + 1 < n_nodes; f++) {
        struct beam_node *a = &run->nodes[f], *b = &run->nodes[f + 1];
        const double moments = (b->before - a->after) / fields[f].length;
        a->shear_after = moments + fields[f].shear[0];
        b->shear_before = moments + fields[f].shear[1];
        const double slope = (b->deflection - a->deflection) / fields[f].length + fields[f].slope[0] +
                             fields[f].by_start[0] * a->after + fields[f].by_end[0] * b->before;
        march(run, f, (struct gw_beam_point){a->shear_after, a->after, slope, a->deflection}, true, true);
    }
}

/* What is left when parts of this size cancel but for rounding is nothing. */
static double settled(double sum, double parts) { return fabs(sum) <= 1e-13 * parts ? 0 : sum; }

static void fill_reactions(struct beam_run *run)
{
    struct gw_beam_result *out = run->out;
    for (size_t i = 0; i < run->n_nodes; i++) {
        const struct beam_node *node = &run->nodes[i];
        const double force = run->forces[node->piece], couple = run->couples[node->piece];
        const double shear = node->shear_after - node->shear_before, moment = node->after - node->before;
        if (!node->support) continue;
        const double forces = fabs(node->shear_after) + fabs(node->shear_before) + fabs(force);
        out->supports[out->n_supports] = node->at;
        out->reactions[out->n_supports] = settled(shear + force, forces);
        out->couples[out->n_supports] =
            node->clamp ? settled(moment - couple, fabs(node->after) + fabs(node->before) + fabs(couple)) : 0;
        out->n_supports++;
    }
}

/* The lists of the run and of the answer hold many times what most beams need: only what is used is cleared. */
static enum gw_status solve(struct beam_run *run)
{
    struct field fields[BEAM_NODES];
    struct cuts cuts;
    enum gw_status status = gw_beam_check(run->in, run->engine);
    if (status) return status;
    run->out->n_supports = run->n_nodes = 0;
    find_cuts(&cuts, run->in);
    make_pieces(run, &cuts);
    status = make_nodes(run, &cuts);
    if (!status) status = gw_beam_check_stable(run);
    if (status) return status;
    const size_t n_nodes = run->n_nodes;
    for (size_t f = 0; f + 1 < n_nodes; f++) fields[f] = field_of(run, f);
    status = solve_nodes(run, fields);
    if (status) return status;
    fill_fields(run, fields, n_nodes);
    fill_reactions(run);
    return GW_OK;
}

static void start(struct beam_run *run, struct gw_beam_result *out, const struct gw_beam *in, struct gw_engine *engine)
{
    const struct gw_beam_extreme none = {GW_ABSENT, GW_ABSENT};
    run->in = in;
    run->out = out;
    run->engine = engine;
    out->shear_max = out->moment_max = out->moment_min = out->deflection_max = out->deflection_back = none;
}

enum gw_status gw_beam_solve(struct gw_beam_result *out, const struct gw_beam *in, struct gw_engine *engine)
{
    struct beam_run run;
    start(&run, out, in, engine);
    enum gw_status status = solve(&run);
    if (status) return status;
    gw_beam_find_extremes(out);
    gw_beam_steps(&run);
    return GW_OK;
}

enum gw_status gw_beam_solve_pieces(struct gw_beam_result *out, const struct gw_beam *in, struct gw_engine *engine)
{
    struct beam_run run;
    start(&run, out, in, engine);
    return solve(&run);
}
