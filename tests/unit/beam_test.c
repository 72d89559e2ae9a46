/* Beams and members: against finite elements of the test's own, virtual work and sampling; equilibrium, superposition,
 * mirror image, units; 45-degree shedding; limits; refusals. */
#include "support.h"

#include "galeward/member.h"

/* Beams with everything at multiples of a grid's step
 * -------------------------------------------------------------------
 */

enum { GRID = 24, MOST = 8 };
struct sample {
    struct gw_beam beam;
    double supports[MOST], clamps[MOST], hinges[MOST];
    struct gw_beam_load loads[2 * MOST];
    struct gw_beam_segment segments[MOST];
};

static double step_of(const struct sample *s) { return s->beam.length / GRID; }
static int index_of(const struct sample *s, double x) { return (int)lround(x / step_of(s)); }

static bool holds(const double *list, size_t n, double x)
{
    for (size_t i = 0; i < n; i++)
        if (fabs(list[i] - x) < 1e-9) return true;
    return false;
}

static struct gw_beam_load any_load(double step)
{
    const int kind = pick(4), from = pick(GRID), to = from + 1 + pick(GRID - from);
    if (kind == 0) return (struct gw_beam_load){GW_BEAM_FORCE, from * step, 0, draw(-700, 2300), 0};
    if (kind == 1) return (struct gw_beam_load){GW_BEAM_COUPLE, from * step, 0, draw(-900, 900), 0};
    return (struct gw_beam_load){GW_BEAM_SPREAD, from * step, to * step, draw(-300, 1700), draw(-300, 1700)};
}

static void any_places(struct sample *s)
{
    struct gw_beam *b = &s->beam;
    const double step = step_of(s);
    const int supports = 1 + pick(5), hinges = pick(4);
    for (int i = 0; i <= GRID; i++) {
        const double x = i * step;
        const bool end = i == 0 || i == GRID;
        if (draw(0, 1) < supports / (double)GRID || (end && pick(2))) {
            if (pick(4) == 0 && b->n_clamps < MOST) s->clamps[b->n_clamps++] = x;
            else if (b->n_supports < MOST) s->supports[b->n_supports++] = x;
        }
        if (!end && draw(0, 1) < hinges / (double)GRID && b->n_hinges < MOST && !holds(s->clamps, b->n_clamps, x))
            s->hinges[b->n_hinges++] = x;
    }
}

static void any_loads(struct sample *s)
{
    const int n = 1 + pick(6);
    for (int i = 0; i < n; i++) {
        const struct gw_beam_load load = any_load(step_of(s));
        const bool bad = load.kind == GW_BEAM_COUPLE && holds(s->hinges, s->beam.n_hinges, load.from);
        if (!bad) s->loads[s->beam.n_loads++] = load;
    }
}

static void any_segments(struct sample *s)
{
    const int n = 1 + pick(3);
    for (int i = 0, at = 0; i < n && at < GRID; i++) {
        at = i + 1 == n ? GRID : at + 1 + pick(GRID - at);
        s->segments[s->beam.n_segments++] =
            (struct gw_beam_segment){at * step_of(s), draw(40e9, 210e9), draw(5e-7, 9e-6)};
    }
}

static void own_lists(struct sample *s)
{
    s->beam.supports = s->supports;
    s->beam.clamps = s->clamps;
    s->beam.hinges = s->hinges;
    s->beam.loads = s->loads;
    s->beam.segments = s->segments;
}

/* May be unstable, or without support. */
static void any_beam(struct sample *s)
{
    memset(s, 0, sizeof *s);
    s->beam.length = draw(2, 17);
    own_lists(s);
    any_places(s);
    any_loads(s);
    any_segments(s);
}

static enum gw_status solve(struct gw_beam_result *out, const struct gw_beam *beam, struct gw_engine *engine)
{
    gw_engine_init(engine, gw_tables_standard(), NULL);
    return gw_beam_solve(out, beam, engine);
}

static void must_solve(struct gw_beam_result *out, const struct gw_beam *beam)
{
    struct gw_engine engine;
    enum gw_status status = solve(out, beam, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
}

/* The next stable one. */
static void any_stable(struct sample *s, struct gw_beam_result *out)
{
    struct gw_engine engine;
    do any_beam(s);
    while (solve(out, &s->beam, &engine) != GW_OK);
}

static double largest_moment(const struct gw_beam_result *r) { return fmax(r->moment_max.value, -r->moment_min.value); }

/* Finite elements of the test's own
 * -------------------------------------------------------------------------------------
 *
 * Deflections and slopes at the grid's nodes (two slopes at a hinge), cubic elements, loads by Gauss points: exact at
 * the nodes, by another way than the program's. */

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

static double stiffness(const struct sample *s, double x)
{
    for (size_t i = 0; i < s->beam.n_segments; i++)
        if (x < s->segments[i].to) return s->segments[i].elastic_modulus * s->segments[i].inertia;
    return 0;
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

/* Equilibrium and edges
 * ----------------------------------------------------------------------------------------------------
 */

struct resultant {
    double force, about; /* about x = 0, turning as a load behind it does */
    double size;
};

static struct resultant loads_of(const struct gw_beam *b)
{
    struct resultant sum = {0, 0, 0};
    for (size_t i = 0; i < b->n_loads; i++) {
        const struct gw_beam_load *l = &b->loads[i];
        const double h = l->to - l->from;
        double force = l->start, about = l->start * l->from;
        if (l->kind == GW_BEAM_COUPLE) force = 0, about = l->start;
        if (l->kind == GW_BEAM_SPREAD) {
            force = (l->start + l->end) / 2 * h;
            about = force * l->from + h * h / 6 * (l->start + 2 * l->end);
        }
        sum.force += force;
        sum.about += about;
        sum.size += fabs(force) + fabs(about) / b->length;
    }
    return sum;
}

static void is_in_equilibrium(void **state)
{
    (void)state;
    struct sample s;
    static struct gw_beam_result r;
    draw_from(102);
    for (int i = 0; i < 1500; i++) {
        any_stable(&s, &r);
        const struct resultant load = loads_of(&s.beam);
        double force = 0, about = 0, size = load.size;
        for (size_t k = 0; k < r.n_supports; k++) {
            force += r.reactions[k];
            about += r.reactions[k] * r.supports[k] - r.couples[k];
            size += fabs(r.reactions[k]);
        }
        assert_near(force, load.force, 1e-11 * size);
        assert_near(about, load.about, 1e-11 * size * s.beam.length);
    }
}

static void meets_its_conditions(void **state)
{
    (void)state;
    struct sample s;
    static struct gw_beam_result r;
    draw_from(103);
    for (int i = 0; i < 1500; i++) {
        any_stable(&s, &r);
        const double moment = largest_moment(&r), y = fabs(r.deflection_max.value), length = s.beam.length;
        for (size_t k = 0; k < s.beam.n_supports; k++)
            for (int side = 0; side < 2; side++)
                assert_near(gw_beam_at(&r, s.supports[k], (enum gw_beam_side)side).deflection, 0, 1e-12 * y);
        for (size_t k = 0; k < s.beam.n_clamps; k++)
            for (int side = 0; side < 2; side++)
                assert_near(gw_beam_at(&r, s.clamps[k], (enum gw_beam_side)side).slope, 0, 1e-9 * y / length);
        for (size_t k = 0; k < s.beam.n_hinges; k++)
            for (int side = 0; side < 2; side++)
                assert_near(gw_beam_at(&r, s.hinges[k], (enum gw_beam_side)side).moment, 0, 1e-11 * moment);
        for (size_t k = 1; k < r.n_pieces; k++) {
            const double x = r.pieces[k].from;
            const struct gw_beam_point a = gw_beam_at(&r, x, GW_BEAM_AFTER), b = gw_beam_at(&r, x, GW_BEAM_BEFORE);
            assert_near(a.deflection, b.deflection, 1e-11 * y);
            if (!holds(s.hinges, s.beam.n_hinges, x)) assert_near(a.slope, b.slope, 1e-9 * y / step_of(&s));
        }
    }
}

/* Same load, all at once or in two parts. */
static void superposes(void **state)
{
    (void)state;
    struct sample s;
    static struct gw_beam_result whole, first, second;
    draw_from(104);
    for (int i = 0; i < 500; i++) {
        any_stable(&s, &whole);
        struct gw_beam part = s.beam;
        part.n_loads = s.beam.n_loads / 2;
        must_solve(&first, &part);
        part.loads += part.n_loads;
        part.n_loads = s.beam.n_loads - part.n_loads;
        must_solve(&second, &part);
        const double moment = largest_moment(&first) + largest_moment(&second);
        const double y = fabs(first.deflection_max.value) + fabs(second.deflection_max.value);
        for (int k = 0; k <= 50; k++) {
            const double x = (k + 0.37) / 51 * s.beam.length;
            const struct gw_beam_point w = gw_beam_at(&whole, x, GW_BEAM_AFTER),
                                       a = gw_beam_at(&first, x, GW_BEAM_AFTER),
                                       b = gw_beam_at(&second, x, GW_BEAM_AFTER);
            assert_near(w.moment, a.moment + b.moment, 1e-10 * moment);
            assert_near(w.deflection, a.deflection + b.deflection, 1e-10 * y);
        }
    }
}

static void flip(double *to, const double *from, size_t n, double length)
{
    for (size_t i = 0; i < n; i++) to[i] = length - from[n - 1 - i];
}

/* From the other end. A couple turns the other way. */
static void mirror(struct sample *to, const struct sample *from)
{
    const double length = from->beam.length;
    *to = *from;
    own_lists(to);
    flip(to->supports, from->supports, from->beam.n_supports, length);
    flip(to->clamps, from->clamps, from->beam.n_clamps, length);
    flip(to->hinges, from->hinges, from->beam.n_hinges, length);
    for (size_t i = 0; i < from->beam.n_loads; i++) {
        const struct gw_beam_load *l = &from->loads[i];
        const bool spread = l->kind == GW_BEAM_SPREAD;
        to->loads[i] = (struct gw_beam_load){l->kind, length - (spread ? l->to : l->from), length - l->from,
                                             spread                      ? l->end
                                             : l->kind == GW_BEAM_COUPLE ? -l->start
                                                                         : l->start,
                                             l->start};
    }
    for (size_t i = 0, n = from->beam.n_segments; i < n; i++) {
        to->segments[i] = from->segments[n - 1 - i];
        to->segments[i].to = length - (i + 1 < n ? from->segments[n - 2 - i].to : 0);
    }
}

static void mirrors(void **state)
{
    (void)state;
    struct sample s, m;
    static struct gw_beam_result r, q;
    draw_from(105);
    for (int i = 0; i < 500; i++) {
        any_stable(&s, &r);
        mirror(&m, &s);
        must_solve(&q, &m.beam);
        const double moment = largest_moment(&r), y = fabs(r.deflection_max.value), length = s.beam.length;
        assert_near(largest_moment(&q), moment, 1e-10 * moment);
        assert_near(q.shear_max.value, r.shear_max.value, 1e-10 * r.shear_max.value);
        assert_near(fabs(q.deflection_max.value), y, 1e-10 * y);
        for (size_t k = 0; k < r.n_supports; k++) {
            const size_t other = r.n_supports - 1 - k;
            assert_near(q.reactions[k], r.reactions[other], 1e-10 * moment / step_of(&s));
            assert_near(q.couples[k], -r.couples[other], 1e-10 * moment);
        }
        for (int k = 0; k <= 40; k++) {
            const double x = k / 40.0 * length;
            const struct gw_beam_point a = gw_beam_at(&r, x, GW_BEAM_BEFORE),
                                       b = gw_beam_at(&q, length - x, GW_BEAM_AFTER);
            assert_near(b.moment, a.moment, 1e-10 * moment);
            assert_near(b.shear, -a.shear, 1e-10 * moment / step_of(&s));
            assert_near(b.deflection, a.deflection, 1e-10 * y);
        }
    }
}

/* The same beam with its lengths in feet and its forces in pounds. */
static void units_do_not_matter(void **state)
{
    (void)state;
    struct sample s, t;
    static struct gw_beam_result r, q;
    const double lb = 4.4482216152605;
    draw_from(106);
    for (int i = 0; i < 300; i++) {
        any_stable(&s, &r);
        t = s;
        own_lists(&t);
        t.beam.length /= FT;
        for (int k = 0; k < MOST; k++) {
            t.supports[k] /= FT, t.clamps[k] /= FT, t.hinges[k] /= FT;
            t.segments[k].to /= FT, t.segments[k].elastic_modulus *= FT2 / lb, t.segments[k].inertia /= FT2 * FT2;
        }
        for (int k = 0; k < 2 * MOST; k++) {
            const double size = s.loads[k].kind == GW_BEAM_SPREAD  ? FT / lb
                                : s.loads[k].kind == GW_BEAM_FORCE ? 1 / lb
                                                                   : 1 / (lb * FT);
            t.loads[k].from /= FT, t.loads[k].to /= FT, t.loads[k].start *= size, t.loads[k].end *= size;
        }
        must_solve(&q, &t.beam);
        const double moment = largest_moment(&r), y = fabs(r.deflection_max.value);
        assert_near(largest_moment(&q) * lb * FT, moment, 1e-10 * moment);
        assert_near(fabs(q.deflection_max.value) * FT, y, 1e-10 * y);
    }
}

/* Virtual work
 * -----------------------------------------------------------------------------------------------------------
 */

/* Moment at x of a unit force at `at` on a simple span from a to b, overhanging: a system in equilibrium, whatever else
 * holds the real beam. */
static double unit_moment(double x, double at, double a, double b)
{
    const double right = (at - a) / (b - a), left = 1 - right;
    return (x > a ? left * (x - a) : 0) + (x > b ? right * (x - b) : 0) - (x > at ? x - at : 0);
}

/* Integral of M m / (E I), piece by piece between its kinks, by Gauss points: exact for the fourth power and more. */
static double work(const struct gw_beam_result *r, double at, double a, double b)
{
    double sum = 0, kinks[GW_BEAM_PIECES + 4];
    size_t n = 0;
    kinks[n++] = at;
    kinks[n++] = a;
    kinks[n++] = b;
    for (size_t i = 0; i < r->n_pieces; i++) {
        double from = r->pieces[i].from;
        while (from < r->pieces[i].to) {
            double to = r->pieces[i].to;
            for (size_t k = 0; k < n; k++)
                if (kinks[k] > from && kinks[k] < to) to = kinks[k];
            for (int g = -1; g <= 1; g++) {
                const double x = from + (to - from) * (0.5 + 0.5 * g * sqrt(0.6));
                sum += (g ? 5.0 : 8.0) / 18 * (to - from) * gw_beam_at(r, x, GW_BEAM_AFTER).moment *
                       unit_moment(x, at, a, b) / r->pieces[i].stiffness;
            }
            from = to;
        }
    }
    return sum;
}

/* A continuous beam without hinges, of stepped stiffness: the moments do the work of the deflections, which is none at
 * a redundant support. */
static void does_virtual_work(void **state)
{
    (void)state;
    const double supports[] = {0.31, 2.9, 4.77, 8.05};
    const struct gw_beam_segment segments[] = {{1.7, 69.6e9, 3.1e-6}, {5.2, 69.6e9, 5.9e-6}, {9.43, 200e9, 1.3e-6}};
    const struct gw_beam_load loads[] = {{GW_BEAM_SPREAD, 0, 3.3, 210, 1740},
                                         {GW_BEAM_SPREAD, 2.2, 9.43, 990, 0},
                                         {GW_BEAM_FORCE, 9.1, 0, 870, 0},
                                         {GW_BEAM_COUPLE, 6.6, 0, -640, 0}};
    const struct gw_beam beam = {.length = 9.43,
                                 .supports = supports,
                                 .n_supports = 4,
                                 .loads = loads,
                                 .n_loads = 4,
                                 .segments = segments,
                                 .n_segments = 3};
    static struct gw_beam_result r;
    must_solve(&r, &beam);
    const double size = fabs(r.deflection_max.value);
    assert_true(size > 1e-3);
    assert_near(work(&r, 2.9, 0.31, 8.05), 0, 1e-12);
    assert_near(work(&r, 4.77, 0.31, 8.05), 0, 1e-12);
    for (double x = 0.05; x < 9.43; x += 0.71)
        assert_near(work(&r, x, 0.31, 8.05), gw_beam_at(&r, x, GW_BEAM_AFTER).deflection, 1e-9 * size);
}

/* Extremes
 * ---------------------------------------------------------------------------------------------------------------
 */

struct highest {
    double shear, moment, sag, rise, drop;
};

static struct highest sampled(const struct gw_beam_result *r, double length, int n)
{
    struct highest most = {0, 0, 0, 0, 0};
    for (int i = 0; i <= n; i++)
        for (int side = 0; side < 2; side++) {
            const struct gw_beam_point p = gw_beam_at(r, length * i / n, (enum gw_beam_side)side);
            most.shear = fmax(most.shear, fabs(p.shear));
            most.sag = fmax(most.sag, p.moment);
            most.moment = fmin(most.moment, p.moment);
            most.drop = fmax(most.drop, p.deflection);
            most.rise = fmin(most.rise, p.deflection);
        }
    return most;
}

/* No sample is beyond them, and the finest come close; each is the value at its place. */
static void extremes_bound_the_samples(void **state)
{
    (void)state;
    struct sample s;
    static struct gw_beam_result r;
    draw_from(107);
    for (int i = 0; i < 200; i++) {
        any_stable(&s, &r);
        const struct highest most = sampled(&r, s.beam.length, 160 * GRID);
        const double m = largest_moment(&r), y = fabs(r.deflection_max.value);
        const double drop = fmax(r.deflection_max.value, r.deflection_back.value);
        const double rise = fmin(r.deflection_max.value, r.deflection_back.value);
        assert_true(most.shear <= r.shear_max.value * (1 + 1e-10));
        assert_true(most.sag <= r.moment_max.value + 1e-10 * m && most.moment >= r.moment_min.value - 1e-10 * m);
        assert_true(most.drop <= drop + 1e-10 * y && most.rise >= rise - 1e-10 * y);
        assert_near(most.shear, r.shear_max.value, 1e-3 * r.shear_max.value);
        assert_near(most.sag, r.moment_max.value, 1e-3 * m);
        assert_near(most.moment, r.moment_min.value, 1e-3 * m);
        assert_near(most.drop, drop, 1e-3 * y);
        assert_near(most.rise, rise, 1e-3 * y);
        assert_near(gw_beam_at(&r, r.deflection_max.at, GW_BEAM_AFTER).deflection, r.deflection_max.value, 1e-10 * y);
        const double after = gw_beam_at(&r, r.moment_max.at, GW_BEAM_AFTER).moment;
        const double before = gw_beam_at(&r, r.moment_max.at, GW_BEAM_BEFORE).moment;
        assert_near(fmin(fabs(after - r.moment_max.value), fabs(before - r.moment_max.value)), 0, 1e-10 * m);
    }
}

static void chords_bound_the_samples(void **state)
{
    (void)state;
    struct sample s;
    static struct gw_beam_result r;
    draw_from(108);
    for (int i = 0; i < 300; i++) {
        any_stable(&s, &r);
        const double from = draw(0, 0.6) * s.beam.length, to = from + draw(0.05, 0.4) * s.beam.length;
        const double a = gw_beam_at(&r, from, GW_BEAM_AFTER).deflection,
                     b = gw_beam_at(&r, to, GW_BEAM_AFTER).deflection;
        const struct gw_beam_extreme far = gw_beam_from_chord(&r, from, to);
        double most = 0;
        for (int k = 0; k <= 2000; k++) {
            const double t = k / 2000.0, y = gw_beam_at(&r, from + t * (to - from), GW_BEAM_AFTER).deflection;
            most = fmax(most, fabs(y - a - t * (b - a)));
        }
        assert_true(most <= fabs(far.value) * (1 + 1e-9) + 1e-14);
        assert_near(most, fabs(far.value), 2e-3 * fabs(far.value) + 1e-14);
        assert_true(far.at >= from && far.at <= to);
    }
}

/* By hand: couple on a simple span, shear -C/L, moment jumps by C; a force makes the shear jump. */
static void sides_of_a_jump(void **state)
{
    (void)state;
    const double supports[] = {0, 4.1};
    const struct gw_beam_segment segment = {4.1, 70e9, 2e-6};
    const struct gw_beam_load loads[] = {{GW_BEAM_COUPLE, 1.3, 0, 820, 0}, {GW_BEAM_FORCE, 2.7, 0, 410, 0}};
    const struct gw_beam beam = {.length = 4.1,
                                 .supports = supports,
                                 .n_supports = 2,
                                 .loads = loads,
                                 .n_loads = 2,
                                 .segments = &segment,
                                 .n_segments = 1};
    static struct gw_beam_result r;
    must_solve(&r, &beam);
    const double left = -820 / 4.1 + 410 * 1.4 / 4.1;
    assert_near(r.reactions[0], left, 1e-9);
    assert_near(gw_beam_at(&r, 1.3, GW_BEAM_BEFORE).moment, left * 1.3, 1e-9);
    assert_near(gw_beam_at(&r, 1.3, GW_BEAM_AFTER).moment, left * 1.3 + 820, 1e-9);
    assert_near(gw_beam_at(&r, 2.7, GW_BEAM_BEFORE).shear, left, 1e-9);
    assert_near(gw_beam_at(&r, 2.7, GW_BEAM_AFTER).shear, left - 410, 1e-9);
    assert_false(gw_given(gw_beam_at(&r, 4.2, GW_BEAM_AFTER).moment));
    assert_false(gw_given(gw_beam_at(&r, -0.1, GW_BEAM_AFTER).moment));
    assert_true(gw_given(gw_beam_at(&r, 4.1, GW_BEAM_AFTER).moment));
}

/* Long rows of spans settle to fixed-ended ones: no digits are lost along the way. */
static void long_beams_keep_their_digits(void **state)
{
    (void)state;
    double supports[GW_BEAM_SUPPORTS];
    for (int i = 0; i < GW_BEAM_SUPPORTS; i++) supports[i] = 3.137 * i;
    const double length = supports[GW_BEAM_SUPPORTS - 1], w = 1283, l = 3.137;
    const struct gw_beam_segment segment = {length, 69.6e9, 3.35e-6};
    const struct gw_beam_load load = {GW_BEAM_SPREAD, 0, length, w, w};
    const struct gw_beam beam = {.length = length,
                                 .supports = supports,
                                 .n_supports = GW_BEAM_SUPPORTS,
                                 .loads = &load,
                                 .n_loads = 1,
                                 .segments = &segment,
                                 .n_segments = 1};
    static struct gw_beam_result r;
    must_solve(&r, &beam);
    assert_near(r.reactions[15], w * l, 1e-7 * w * l); /* what is left of the ends falls by 0.268 a span */
    assert_near(gw_beam_at(&r, supports[15], GW_BEAM_AFTER).moment, -w * l * l / 12, 1e-7 * w * l * l);
    assert_near(gw_beam_at(&r, 15.5 * l, GW_BEAM_AFTER).deflection, w * pow(l, 4) / (384 * 69.6e9 * 3.35e-6), 1e-9);
    for (int i = 0; i < GW_BEAM_SUPPORTS; i++)
        assert_near(r.reactions[i], r.reactions[GW_BEAM_SUPPORTS - 1 - i], 1e-10 * w * l);
}

/* Members
 * ----------------------------------------------------------------------------------------------------------------
 */

static const struct gw_beam_segment MULLION = {4.31, 69.6e9, 3.35e-6};

static struct gw_member mullion(const double *heights, size_t n, double width, double pressure)
{
    return (struct gw_member){.orientation = GW_VERTICAL,
                              .shedding = GW_TWO_WAY,
                              .span = MULLION.to,
                              .pressure = pressure,
                              .left = {width, heights, n},
                              .right = {width, heights, n},
                              .segments = &MULLION,
                              .n_segments = 1};
}

static void must_member(struct gw_member_result *out, const struct gw_member *in)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    enum gw_status status = gw_member_solve(out, in, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
}

/* At a rail as under uniform load; inside a lite less, by how much follows from its shape. */
static void rails_keep_the_uniform_moment(void **state)
{
    (void)state;
    const double heights[] = {0.62, 1.93, 0.47, 1.29}, b = 1.17, p = 1437, w = p * b;
    const struct gw_member in = mullion(heights, 4, b, p);
    static struct gw_member_result r;
    must_member(&r, &in);
    double bottom = 0;
    for (int i = 0; i < 4; i++) {
        const double h = heights[i], top = bottom + h, middle = bottom + h / 2;
        const double less = h >= b ? w * b * b / 24 : w * h * h * (3 - 2 * h / b) / 24;
        assert_near(gw_beam_at(&r.solution, top, GW_BEAM_AFTER).moment, w * top * (MULLION.to - top) / 2, 1e-9 * w);
        assert_near(gw_beam_at(&r.solution, middle, GW_BEAM_AFTER).moment,
                    w * middle * (MULLION.to - middle) / 2 - less, 1e-9 * w);
        bottom = top;
    }
    assert_near(r.solution.reactions[0], w * MULLION.to / 2, 1e-9 * w);
    assert_near(r.solution.reactions[1], w * MULLION.to / 2, 1e-9 * w);
    assert_int_equal(r.n_rails, 5);
    assert_int_equal(r.n_edges, 8);
}

/* Whatever the lites: pressure times the tributary area, which is half of each. Fails when the rails are left out, and
 * when a third of the span stands for the width. */
static void members_carry_pressure_times_area(void **state)
{
    (void)state;
    static struct gw_member_result r;
    draw_from(109);
    for (int i = 0; i < 300; i++) {
        double left[5], right[3], sum = 0;
        for (int k = 0; k < 5; k++) sum += left[k] = draw(0.2, 2);
        for (int k = 0; k < 5; k++) left[k] *= MULLION.to / sum;
        right[0] = draw(0.3, 1);
        right[1] = draw(0.3, 2);
        right[2] = MULLION.to - right[0] - right[1];
        struct gw_member in = mullion(left, 5, draw(0.4, 2.5), draw(500, 4000));
        in.right = (struct gw_lite_column){pick(3) ? draw(0.4, 2.5) : 0, right, 3};
        must_member(&r, &in);
        const double load = in.pressure * in.span * (in.left.width + in.right.width) / 2;
        assert_near(r.solution.reactions[0] + r.solution.reactions[1], load, 1e-9 * load);
        in.shedding = GW_UNIFORM;
        must_member(&r, &in);
        assert_near(r.solution.reactions[0] + r.solution.reactions[1], load, 1e-9 * load);
        assert_int_equal(r.n_rails, 0);
    }
}

/* Span 14 ft, module 4 ft: the width loaded is 4 ft, not the 4.67 ft of the effective area. */
static void width_is_the_true_one(void **state)
{
    (void)state;
    const struct gw_beam_segment segment = {14 * FT, 69.6e9, 3.35e-6};
    struct gw_member in = mullion(NULL, 0, 4 * FT, 30 * PSF);
    static struct gw_member_result r;
    in.span = 14 * FT;
    in.segments = &segment;
    in.shedding = GW_UNIFORM;
    must_member(&r, &in);
    assert_near(r.solution.reactions[0] / 4.4482216152605, 30 * 4 * 14 / 2.0, 1e-6);
}

/* The lite takes its load to all four edges: the rails beside it are not without wind. */
static void rails_carry_wind(void **state)
{
    (void)state;
    const double b = 1.5, p = 1437, heights[] = {0.8, 1.5, 2.7};
    const struct gw_beam_segment rail = {b, 69.6e9, 5e-7};
    static struct gw_member_result r;
    for (int i = 0; i < 3; i++) {
        const double h = heights[i], a = fmin(b, h) / 2;
        struct gw_member in = {.orientation = GW_HORIZONTAL,
                               .shedding = GW_TWO_WAY,
                               .span = b,
                               .pressure = p,
                               .height_above = h,
                               .height_below = 0,
                               .segments = &rail,
                               .n_segments = 1};
        must_member(&r, &in);
        assert_near(r.solution.moment_max.value, p * a * b * b / 24 * (3 - 4 * a * a / (b * b)), 1e-9);
        assert_near(r.solution.reactions[0], p * a * (b - a) / 2, 1e-9);
        /* and a vertical beside it takes from its end what it carries */
        struct gw_member vertical = mullion(&MULLION.to, 1, b, p);
        const double one[] = {h, MULLION.to - h};
        vertical.left = (struct gw_lite_column){b, one, 2};
        vertical.right = (struct gw_lite_column){.width = 0};
        static struct gw_member_result v;
        must_member(&v, &vertical);
        assert_near(v.rail_loads[0], p * a * (b - a) / 2, 1e-9);
        in.height_below = h;
        must_member(&r, &in);
        assert_near(r.solution.reactions[0], p * a * (b - a), 1e-9);
        assert_int_equal(r.n_edges, 2);
    }
}

/* The middle anchor of two spans: 1.25 w L, 3.3 times an end's; its moment is at the anchor. */
static void middle_anchor_of_two_spans(void **state)
{
    (void)state;
    const double supports[] = {0, 3.6, 7.2}, p = 1437, b = 1.5;
    const struct gw_beam_segment segment = {7.2, 69.6e9, 3.35e-6};
    struct gw_member in = mullion(NULL, 0, b, p);
    static struct gw_member_result r;
    in.shedding = GW_UNIFORM;
    in.span = 7.2;
    in.segments = &segment;
    in.supports = supports;
    in.n_supports = 3;
    in.limited = true;
    must_member(&r, &in);
    assert_near(r.solution.reactions[1], 1.25 * p * b * 3.6, 1e-8);
    assert_near(r.solution.reactions[1] / r.solution.reactions[0], 10 / 3.0, 1e-12);
    assert_near(r.solution.moment_min.at, 3.6, 1e-12);
    assert_near(r.solution.moment_min.value, -p * b * 3.6 * 3.6 / 8, 1e-8);
    assert_near(r.limit_span, 3.6, 1e-12); /* a limit is a span's, not the member's */
    assert_near(r.limit, 3.6 / 175, 1e-12);
}

/* A spliced wall is not alike from end to end: the lowest story has no splice to unload it, the highest no shear from
 * above. */
static void end_stories_differ(void **state)
{
    (void)state;
    const double l = 3.6, a = 0.6, p = 1437, b = 1.5, w = p * b;
    const double supports[] = {0, l, 2 * l, 3 * l, 4 * l, 5 * l}, hinges[] = {l + a, 2 * l + a, 3 * l + a, 4 * l + a};
    const struct gw_beam_segment segment = {5 * l, 69.6e9, 3.35e-6};
    struct gw_member in = mullion(NULL, 0, b, p);
    static struct gw_member_result r;
    in.shedding = GW_UNIFORM;
    in.span = 5 * l;
    in.segments = &segment;
    in.supports = supports, in.n_supports = 6;
    in.hinges = hinges, in.n_hinges = 4;
    must_member(&r, &in);
    /* From the top: the highest piece spans simply from its splice; each splice hands its shear to the piece below. */
    double shear = w * (l - a) / 2, anchor[5] = {0};
    for (int i = 4; i >= 1; i--) {
        anchor[i] = -shear * a - w * a * a / 2;
        assert_near(gw_beam_at(&r.solution, supports[i], GW_BEAM_AFTER).moment, anchor[i], 1e-8 * w);
        shear = i > 1 ? w * (l - a) / 2 + anchor[i] / (l - a) : shear;
    }
    const double left = w * l / 2 + anchor[1] / l;
    assert_near(r.solution.reactions[0], left, 1e-8 * w);
    assert_near(r.solution.moment_max.value, left * left / (2 * w), 1e-8 * w);
    assert_true(r.solution.moment_max.at < l); /* the lowest story governs */
    assert_true(r.solution.moment_max.value > 1.2 * w * (l - 2 * a) * (l - 2 * a) / 8);
}

static double limit_of(double span, bool cantilever, bool capped)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    const double limit = gw_deflection_limit(span, cantilever, capped, &engine);
    assert_int_not_equal(gw_used_weakest(&engine.used), GW_BASIS_NONE);
    return limit;
}

static void limits_at_their_boundary(void **state)
{
    (void)state;
    const double in = 0.0254;
    assert_near(limit_of(162 * in, false, false), 162 / 175.0 * in, 1e-12);
    assert_near(limit_of(13.5 * FT, false, false), 162 / 175.0 * in, 1e-12);
    assert_near(limit_of(162.001 * in, false, false), (162.001 / 240 + 0.25) * in, 1e-12);
    assert_near(limit_of(161 * in, false, false), 161 / 175.0 * in, 1e-12);
    /* the two halves cross at 161.54 in: above it, to 162 in, L/175 is the larger */
    assert_true(limit_of(162 * in, false, false) > (162 / 240.0 + 0.25) * in);
    assert_near(limit_of(60 * in, true, false), 120 / 175.0 * in, 1e-12);
    assert_near(limit_of(90 * in, true, false), (180 / 240.0 + 0.25) * in, 1e-12); /* doubled before the boundary */
    assert_near(limit_of(162 * in, false, true), 0.75 * in, 1e-12);
    assert_near(limit_of(100 * in, false, true), 100 / 175.0 * in, 1e-12);
}

/* An overhang is measured with twice its length, the span behind it with its own. */
static void overhangs_count_double(void **state)
{
    (void)state;
    const double supports[] = {0.9, 4.31};
    struct gw_member in = mullion(NULL, 0, 1.2, 1000);
    static struct gw_member_result r;
    in.shedding = GW_UNIFORM;
    in.supports = supports, in.n_supports = 2;
    in.limited = true;
    must_member(&r, &in);
    assert_near(r.limit_span, 0.9, 1e-9); /* its tip rises with the slope of the span */
    assert_near(r.limit, 1.8 / 175, 1e-9);
    assert_true(r.limit_deflection < 0);
    const double tip[] = {2.1, 4.31};
    in.supports = tip;
    must_member(&r, &in);
    assert_near(r.limit_span, 2.1, 1e-9);
    assert_near(r.limit, 4.2 / 240 + 0.00635, 1e-9);
    assert_near(r.limit_deflection, gw_beam_at(&r.solution, 0, GW_BEAM_AFTER).deflection, 1e-12);
}

/* Of a lite centered on a simple span under uniform load: what the middle deflects more than the lite's ends. */
static void edges_sag_from_their_own_chord(void **state)
{
    (void)state;
    const double heights[] = {1.155, 2.0, 1.155};
    struct gw_member in = mullion(heights, 3, 1.2, 1000);
    static struct gw_member_result r;
    in.shedding = GW_UNIFORM;
    must_member(&r, &in);
    const double w = 1200, l = MULLION.to, ei = 69.6e9 * 3.35e-6, x = 1.155;
    const double middle = 5 * w * pow(l, 4) / (384 * ei),
                 end = w * x * (l * l * l - 2 * l * x * x + x * x * x) / (24 * ei);
    assert_int_equal(r.n_edges, 6);
    assert_near(r.edges[1], middle - end, 1e-12);
    assert_near(r.edges[4], middle - end, 1e-12);
    assert_true(r.edges[0] < 0.5 * r.edges[1]);
}

/* 12 ft, 5 ft, 30 psf: 8.42 in4 and, at 15.15 ksi, 2.14 in3; and the section that a member asks for is that one. */
static void required_sections(void **state)
{
    (void)state;
    const double in = 0.0254, psi = 6894.757293168361, w = 30 * PSF * 5 * FT, e = 10.1e6 * psi;
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    const double inertia = gw_required_inertia(w, 12 * FT, e, limit_of(12 * FT, false, false), &engine);
    assert_near(inertia / pow(in, 4), 3.2487e-5 * 30 * 5 * 1728, 3e-4);
    assert_near(inertia / pow(in, 4), 2.27865 * 12.5 * pow(144, 3) / 10.1e6, 3e-5);
    assert_near(gw_required_modulus(w, 12 * FT, 15150 * psi, &engine) / pow(in, 3), 32400 / 15150.0, 1e-9);
    const struct gw_beam_segment segment = {12 * FT, e, 4.4e-6};
    struct gw_member member = mullion(NULL, 0, 5 * FT, 30 * PSF);
    static struct gw_member_result r;
    member.span = 12 * FT;
    member.shedding = GW_UNIFORM;
    member.segments = &segment;
    member.limited = true;
    must_member(&r, &member);
    assert_near(r.inertia_required, inertia, 1e-10 * inertia);
}

/* Refusals
 * ---------------------------------------------------------------------------------------------------------------
 */

static void refuses_with_reasons(void **state)
{
    struct world *w = *state;
    static const struct {
        const char *kind, *in, *key, *says;
    } cases[] = {
        {"beam", "length: 3 m, supports: [1 m]", "supports", "from 0 m to 3 m is held at fewer than two points"},
        {"beam", "length: 9 m, supports: [0 m, 4 m, 9 m], hinges: [1 m, 3 m]", "hinges", "from 0 m to 1 m"},
        {"beam", "length: 3 m", "supports", "no support"},
        {"beam", "length: 3 m, clamps: [0 m], supports: [3 m], hinges: [3 m]", "hinges", "joins nothing"},
        {"beam", "length: 3 m, clamps: [1 m], hinges: [1 m]", "hinges", "clamp at 1 m"},
        {"beam", "length: 3 m, supports: [0 m, 3.5 m]", "supports", "3.5 m is not on the beam, which is 3 m long"},
        {"beam", "length: 3 m, supports: [2 m, 1 m]", "supports", "1 m stands after 2 m"},
        {"beam", "length: 3 m, supports: [0 m, 0.2 mm]", "supports", "1/10000 of the length"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_calc_answer answer;
        const char *yaml =
            gw_format(&w->arena, "{%s, elastic_modulus: 70 GPa, inertia: 1e6 mm4, loads: [{at: 0.5 m, force: 1 N}]}",
                      cases[i].in);
        assert_false(
            gw_calc_run(&answer, &w->arena, gw_calc_find(cases[i].kind), node_of(w, yaml), gw_tables_standard()));
        if (!strstr(answer.error, cases[i].says)) print_error("%s: %s\n", cases[i].in, answer.error);
        assert_non_null(strstr(answer.error, cases[i].says));
        assert_string_equal(answer.error_key, cases[i].key);
    }
}

/* No later step of the same name, in words or not. */
static bool ends_its_sum(const struct gw_trace *trace, const struct gw_step *step)
{
    for (const struct gw_step *later = step + 1; later < trace->steps + trace->n; later++)
        if (strcmp(later->symbol, step->symbol) == 0) return false;
    return true;
}

/* The same answer, bit for bit, with a derivation and without; every step of random beams evaluates (trace_test
 * evaluates those of the reference cases). */
/* What lies behind the used part of a list is nobody's. */
static void assert_same(const struct gw_beam_result *a, const struct gw_beam_result *b)
{
    assert_int_equal(a->n_supports, b->n_supports);
    assert_int_equal(a->n_pieces, b->n_pieces);
    assert_memory_equal(a->supports, b->supports, a->n_supports * sizeof *a->supports);
    assert_memory_equal(a->reactions, b->reactions, a->n_supports * sizeof *a->reactions);
    assert_memory_equal(a->couples, b->couples, a->n_supports * sizeof *a->couples);
    assert_memory_equal(a->pieces, b->pieces, a->n_pieces * sizeof *a->pieces);
}

static void assert_same_extremes(const struct gw_beam_result *a, const struct gw_beam_result *b)
{
    assert_memory_equal(&a->shear_max, &b->shear_max, sizeof a->shear_max);
    assert_memory_equal(&a->moment_max, &b->moment_max, sizeof a->moment_max);
    assert_memory_equal(&a->moment_min, &b->moment_min, sizeof a->moment_min);
    assert_memory_equal(&a->deflection_max, &b->deflection_max, sizeof a->deflection_max);
    assert_memory_equal(&a->deflection_back, &b->deflection_back, sizeof a->deflection_back);
}

/* Nor does a solution hang on what lay in the room before, and the pieces are those of the whole solution. */
static void room_is_left_as_it_is(void **state)
{
    (void)state;
    struct sample s;
    static struct gw_beam_result plain, again, pieces;
    struct gw_engine engine;
    draw_from(111);
    for (int i = 0; i < 200; i++) {
        any_stable(&s, &plain);
        memset(&again, 0xa5, sizeof again);
        gw_engine_init(&engine, gw_tables_standard(), NULL);
        assert_int_equal(gw_beam_solve(&again, &s.beam, &engine), GW_OK);
        assert_same(&plain, &again);
        assert_same_extremes(&plain, &again);
        memset(&pieces, 0x5a, sizeof pieces);
        assert_int_equal(gw_beam_solve_pieces(&pieces, &s.beam, &engine), GW_OK);
        assert_same(&plain, &pieces);
        assert_false(gw_given(pieces.moment_max.value));
        assert_false(gw_given(pieces.deflection_back.at));
    }
}

static void traces_change_nothing(void **state)
{
    struct world *w = *state;
    struct sample s;
    static struct gw_beam_result plain, traced;
    int sums = 0;
    draw_from(110);
    for (int i = 0; i < 200; i++) {
        struct gw_trace trace;
        struct gw_engine engine;
        any_stable(&s, &plain);
        gw_trace_init(&trace, &w->arena);
        gw_engine_init(&engine, gw_tables_standard(), &trace);
        assert_int_equal(gw_beam_solve(&traced, &s.beam, &engine), GW_OK);
        assert_same(&plain, &traced);
        assert_same_extremes(&plain, &traced);
        assert_true(trace.n > 0);
        const struct gw_step *last = NULL;
        for (size_t k = 0; k < trace.n; k++)
            if (trace.steps[k].formula && strcmp(trace.steps[k].symbol, "M_max") == 0) last = &trace.steps[k];
        sums += last != NULL && ends_its_sum(&trace, last);
        if (last && ends_its_sum(&trace, last))
            assert_near(last->value, plain.moment_max.value, 1e-9 * largest_moment(&plain));
    }
    assert_true(sums > 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(agrees_with_elements),
        cmocka_unit_test(is_in_equilibrium),
        cmocka_unit_test(meets_its_conditions),
        cmocka_unit_test(superposes),
        cmocka_unit_test(mirrors),
        cmocka_unit_test(units_do_not_matter),
        cmocka_unit_test(does_virtual_work),
        cmocka_unit_test(extremes_bound_the_samples),
        cmocka_unit_test(chords_bound_the_samples),
        cmocka_unit_test(sides_of_a_jump),
        cmocka_unit_test(long_beams_keep_their_digits),
        cmocka_unit_test(rails_keep_the_uniform_moment),
        cmocka_unit_test(members_carry_pressure_times_area),
        cmocka_unit_test(width_is_the_true_one),
        cmocka_unit_test(rails_carry_wind),
        cmocka_unit_test(middle_anchor_of_two_spans),
        cmocka_unit_test(end_stories_differ),
        cmocka_unit_test(limits_at_their_boundary),
        cmocka_unit_test(overhangs_count_double),
        cmocka_unit_test(edges_sag_from_their_own_chord),
        cmocka_unit_test(required_sections),
        WORLD_TEST(refuses_with_reasons),
        WORLD_TEST(room_is_left_as_it_is),
        WORLD_TEST(traces_change_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
