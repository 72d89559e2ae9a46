/* Beams: equilibrium, their own conditions, superposition, mirror image, units, virtual work. */
#include "beam_support.h"

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

/* Of the whole beam what the solution says; of two parts the larger is that of the whole; no place within exceeds it.
 */
static void parts_have_their_own_extremes(void **state)
{
    (void)state;
    struct sample s;
    static struct gw_beam_result r;
    draw_from(104);
    for (int i = 0; i < 300; i++) {
        any_stable(&s, &r);
        const double length = s.beam.length, cut = draw(0.1, 0.9) * length, moment = largest_moment(&r);
        const double shear = r.shear_max.value, slack = 1e-9 * (moment + shear * length);
        const struct gw_beam_forces whole = gw_beam_forces_between(&r, 0, length);
        const struct gw_beam_forces low = gw_beam_forces_between(&r, 0, cut),
                                    high = gw_beam_forces_between(&r, cut, length);
        assert_near(fabs(whole.shear.value), shear, slack / length);
        assert_near(whole.moment_max.value, r.moment_max.value, slack);
        assert_near(whole.moment_min.value, r.moment_min.value, slack);
        assert_near(fmax(fabs(low.shear.value), fabs(high.shear.value)), shear, slack / length);
        assert_near(fmax(low.moment_max.value, high.moment_max.value), r.moment_max.value, slack);
        assert_near(fmin(low.moment_min.value, high.moment_min.value), r.moment_min.value, slack);
        for (double x = cut; x < length; x += 0.037 * length) {
            const struct gw_beam_point at = gw_beam_at(&r, x, GW_BEAM_AFTER);
            assert_true(fabs(at.shear) <= fabs(high.shear.value) + slack / length);
            assert_true(at.moment <= high.moment_max.value + slack && at.moment >= high.moment_min.value - slack);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(is_in_equilibrium),
        cmocka_unit_test(meets_its_conditions),
        cmocka_unit_test(superposes),
        cmocka_unit_test(mirrors),
        cmocka_unit_test(units_do_not_matter),
        cmocka_unit_test(does_virtual_work),
        cmocka_unit_test(parts_have_their_own_extremes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
