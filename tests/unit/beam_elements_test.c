/* Beams against finite elements of the test's own: deflections and slopes at the grid's nodes (two slopes at a hinge),
 * cubic elements, loads by Gauss points: exact at the nodes, by another way than the program's. */
#include "beam_support.h"

static int index_of(const struct sample *s, double x) { return (int)lround(x / step_of(s)); }

enum { UNKNOWNS = 3 * (GRID + 1) };

struct elements {
    double a[UNKNOWNS][UNKNOWNS], right[UNKNOWNS];
    int before[GRID + 1], after[GRID + 1], n; /* unknowns of the slopes on both sides of a node */
};

static void number_unknowns(struct elements *e, const struct sample *s)
{
    e->n = GRID + 1;
    for (int i = 0; i <= GRID; i++) {
        e->before[i] = e->after[i] = e->n++;
        if (holds(s->hinges, s->beam.n_hinges, i * step_of(s))) e->after[i] = e->n++;
    }
}

static double intensity(const struct sample *s, double x)
{
    double q = 0;
    for (size_t i = 0; i < s->beam.n_loads; i++) {
        const struct gw_beam_load *l = &s->loads[i];
        if (l->kind == GW_BEAM_SPREAD && x > l->from && x < l->to)
            q += l->start + (l->end - l->start) * (x - l->from) / (l->to - l->from);
    }
    return q;
}

static void add_element(struct elements *e, const struct sample *s, int i)
{
    const double h = step_of(s), ei = stiffness(s, (i + 0.5) * h) / (h * h * h);
    const int at[4] = {i, e->after[i], i + 1, e->before[i + 1]};
    const double k[4][4] = {{12, 6 * h, -12, 6 * h},
                            {6 * h, 4 * h * h, -6 * h, 2 * h * h},
                            {-12, -6 * h, 12, -6 * h},
                            {6 * h, 2 * h * h, -6 * h, 4 * h * h}};
    for (int r = 0; r < 4; r++)
        for (int c = 0; c < 4; c++) e->a[at[r]][at[c]] += ei * k[r][c];
    for (int g = -1; g <= 1; g++) { /* three points: exact to the fifth power */
        const double t = 0.5 + 0.5 * g * sqrt(0.6), weight = (g ? 5.0 : 8.0) / 18 * h * intensity(s, (i + t) * h);
        const double shape[4] = {1 - 3 * t * t + 2 * t * t * t, h * t * (1 - t) * (1 - t), t * t * (3 - 2 * t),
                                 h * t * t * (t - 1)};
        for (int r = 0; r < 4; r++) e->right[at[r]] += weight * shape[r];
    }
}

static void hold(struct elements *e, int row)
{
    for (int c = 0; c < e->n; c++) e->a[row][c] = e->a[c][row] = 0;
    e->a[row][row] = 1;
    e->right[row] = 0;
}

/* False for a mechanism. Rows scaled by the root of the diagonal first. */
static bool eliminate(struct elements *e)
{
    double scale[UNKNOWNS];
    for (int i = 0; i < e->n; i++) scale[i] = 1 / sqrt(e->a[i][i]);
    for (int r = 0; r < e->n; r++) {
        e->right[r] *= scale[r];
        for (int c = 0; c < e->n; c++) e->a[r][c] *= scale[r] * scale[c];
    }
    for (int r = 0; r < e->n; r++) {
        if (!(e->a[r][r] > 1e-10)) return false;
        for (int k = r + 1; k < e->n; k++) {
            const double factor = e->a[k][r] / e->a[r][r];
            for (int c = r; c < e->n; c++) e->a[k][c] -= factor * e->a[r][c];
            e->right[k] -= factor * e->right[r];
        }
    }
    for (int r = e->n - 1; r >= 0; r--) {
        for (int c = r + 1; c < e->n; c++) e->right[r] -= e->a[r][c] * e->right[c];
        e->right[r] /= e->a[r][r];
    }
    for (int i = 0; i < e->n; i++) e->right[i] *= scale[i];
    return true;
}

static bool by_elements(struct elements *e, const struct sample *s)
{
    memset(e, 0, sizeof *e);
    number_unknowns(e, s);
    for (int i = 0; i < GRID; i++) add_element(e, s, i);
    for (size_t i = 0; i < s->beam.n_loads; i++) {
        const int node = index_of(s, s->loads[i].from);
        if (s->loads[i].kind == GW_BEAM_FORCE) e->right[node] += s->loads[i].start;
        if (s->loads[i].kind == GW_BEAM_COUPLE) e->right[e->before[node]] += s->loads[i].start;
    }
    for (size_t i = 0; i < s->beam.n_supports; i++) hold(e, index_of(s, s->supports[i]));
    for (size_t i = 0; i < s->beam.n_clamps; i++) {
        hold(e, index_of(s, s->clamps[i]));
        hold(e, e->before[index_of(s, s->clamps[i])]);
    }
    return eliminate(e);
}

static void compare_with_elements(const struct sample *s, const struct gw_beam_result *r, const struct elements *e)
{
    const double size = fabs(r->deflection_max.value), turn = size / step_of(s);
    for (int i = 0; i <= GRID; i++) {
        const double x = i * step_of(s);
        const struct gw_beam_point a = gw_beam_at(r, x, GW_BEAM_AFTER), b = gw_beam_at(r, x, GW_BEAM_BEFORE);
        assert_near(a.deflection, e->right[i], 1e-7 * size);
        assert_near(b.deflection, e->right[i], 1e-7 * size);
        assert_near(i < GRID ? a.slope : b.slope, e->right[e->after[i]], 1e-7 * turn);
        assert_near(i > 0 ? b.slope : a.slope, e->right[e->before[i]], 1e-7 * turn);
    }
}

/* Every beam that the elements cannot hold is refused, and no other. */
static void agrees_with_elements(void **state)
{
    (void)state;
    struct sample s;
    static struct gw_beam_result r;
    static struct elements e;
    struct gw_engine engine;
    int stable = 0, unstable = 0, indeterminate = 0;
    draw_from(101);
    for (int i = 0; i < 3000; i++) {
        any_beam(&s);
        const bool moves = !by_elements(&e, &s);
        enum gw_status status = solve(&r, &s.beam, &engine);
        if (s.beam.n_supports + s.beam.n_clamps == 0) assert_int_equal(status, GW_MISSING);
        else assert_int_equal(status, moves ? GW_OUTSIDE_METHOD : GW_OK);
        if (status) {
            unstable++;
            continue;
        }
        stable++;
        indeterminate += s.beam.n_supports + 2 * s.beam.n_clamps > 2 + s.beam.n_hinges;
        compare_with_elements(&s, &r, &e);
    }
    print_message("%d beams, %d of them indeterminate; %d refused\n", stable, indeterminate, unstable);
    assert_true(stable > 1000 && indeterminate > 500 && unstable > 500);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(agrees_with_elements),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
