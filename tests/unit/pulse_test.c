/* The response of a lite to a blast, against closed forms and another integrator. */
#include "blast_support.h"

static struct gw_lite lite_of(double width, double height, double nominal, enum gw_treatment treatment)
{
    struct gw_lite lite = {
        .width = width, .height = height, .temperature = GW_ABSENT, .probability = GW_ABSENT, .edges = 4};
    lite.make_up.n_panes = 1;
    lite.make_up.panes[0] = (struct gw_pane){.plies = {{nominal, treatment, false}}, .n_plies = 1};
    return lite;
}

static struct gw_blast_curve curve_of(struct gw_engine *engine, double width, double height, double nominal)
{
    struct gw_blast_curve curve;
    const struct gw_lite lite = lite_of(width, height, nominal, GW_ANNEALED);
    assert_int_equal(gw_blast_curve(&curve, &lite, false, engine), GW_OK);
    return curve;
}

static struct gw_blast_response respond(struct gw_engine *engine, const struct gw_blast_curve *curve, double pressure,
                                        double impulse)
{
    struct gw_blast_response out;
    assert_int_equal(gw_blast_respond(&out, curve, (struct gw_blast_pair){pressure, impulse}, engine), GW_OK);
    return out;
}

/* Largest of the undamped linear oscillator under a triangular pulse, x over P/k, by its closed form in time. */
static double closed_form(double duration_over_period)
{
    const double w = 4 * acos(0), d = duration_over_period;
    double most = 0;
    for (double t = 0; t < fmax(d, 0) + 1; t += 1e-5) {
        const double x = t <= d ? 1 - cos(w * t) + sin(w * t) / (w * d) - t / d
                                : (sin(w * t) - sin(w * (t - d))) / (w * d) - cos(w * t);
        most = fmax(most, x);
    }
    return most;
}

static void linear_response_is_the_closed_form(void **state)
{
    const struct {
        double ratio, known;
    } points[] = {{0.1, 0.311}, {0.2, 0.601}, {1, 1.550}, {5, 1.902}, {10, 1.951},
                  {0.03, 0},    {0.371, 0},   {0.6, 0},   {2.3, 0}};
    const struct gw_blast_curve curve = curve_of(*state, 1.37, 2.385, 0.006);
    const double pressure = 1e-4 * curve.unit; /* q* 0.0005: linear */
    for (size_t i = 0; i < sizeof points / sizeof *points; i++) {
        const double duration = points[i].ratio * curve.period;
        const struct gw_blast_response r = respond(*state, &curve, pressure, pressure * duration / 2);
        assert_near(r.load_factor, closed_form(points[i].ratio), 2e-7);
        if (points[i].known > 0) assert_near(r.load_factor, points[i].known, 0.0006);
        assert_false(r.breaks);
        assert_near(r.equivalent, r.load_factor * pressure, 1e-12);
    }
}

/* The period: by the linear plate of the handbook (deflections of the center and mean, Navier's series for the mass).
 */
static void period_of_a_linear_plate(void **state)
{
    const struct gw_blast_curve curve = curve_of(*state, 1, 1, 0.006);
    const double e = 71.7e9, t = 5.56e-3, mean_coefficient = 0.01944, center_coefficient = 0.04639, mass = 2500 * t;
    double mean = 0, square = 0, center = 0;
    for (int m = 1; m < 100; m += 2)
        for (int n = 1; n < 100; n += 2) {
            const double w = 1 / (m * n * pow(m * m + n * n, 2.0));
            mean += w * 4 / (acos(-1) * acos(-1) * m * n);
            square += w * w / 4;
            center += w * ((m + n) / 2 % 2 ? 1 : -1);
        }
    const double stiffness = e * t * t * t / mean_coefficient, motion = square / (mean * mean);
    assert_near(curve.mass, mass, 1e-9);
    assert_near(curve.period, 4 * acos(0) * sqrt(motion * mass / stiffness), 5e-4 * curve.period);
    assert_near(mean / center, mean_coefficient / center_coefficient, 2e-4);
    assert_near(curve.load_mass_factor, square / (mean * center), 5e-4);
}

/* A long lite moves as a one-way strip: its factors bound those of plates (handbook 0.78; the parabola of fourth order
 * has 0.7874), and a square has the least. */
static void load_mass_factors(void **state)
{
    const double beam = (31.0 / 630) / (1.0 / 5) / (5.0 / 16), square = curve_of(*state, 1, 1, 0.006).load_mass_factor;
    const double longest = curve_of(*state, 5, 1, 0.006).load_mass_factor;
    assert_near(beam, 0.78, 0.01);
    assert_true(square < longest && longest < beam);
    assert_near(square, 0.67, 0.06); /* handbook, rounded, of an assumed shape; the solution's shape gives 0.63 */
}

/* The static curve by bisection in the plate's table and central differences in time: nothing of the engine's. */
static double mean_at(double q, double aspect)
{
    struct gw_plate_solution s;
    assert_true(gw_plate_response(&s, aspect, q, GW_PLATE_MEAN, gw_tables_standard()));
    return s.mean_deflection;
}

static double load_at(double mean, double aspect)
{
    double low = 0, high = 9999;
    for (int i = 0; i < 50; i++) {
        const double middle = (low + high) / 2;
        if (mean_at(middle, aspect) < mean) low = middle;
        else high = middle;
    }
    return (low + high) / 2;
}

/* The motion factor of the true shapes under load: area mean of (dw / d mean w)^2, from pairs of sampled fields. */
enum { SHAPES = 9 };

struct shapes {
    double q[SHAPES], motion[SHAPES];
};

static double sampled_motion(struct gw_engine *engine, const struct gw_blast_curve *c, double pressure)
{
    enum { N = 41 };
    static double low[N * N], high[N * N];
    struct gw_plate_result out;
    struct gw_plate_case in = {.width = c->width,
                               .height = c->height,
                               .thickness = c->thickness,
                               .pressure = pressure,
                               .elastic_modulus = GW_ABSENT,
                               .poissons_ratio = GW_ABSENT,
                               .terms = GW_NO_INTEGER};
    assert_int_equal(gw_plate_sample(&out, &in, N, N, low, NULL, engine), GW_OK);
    in.pressure *= 1.01;
    assert_int_equal(gw_plate_sample(&out, &in, N, N, high, NULL, engine), GW_OK);
    double mean = 0, square = 0;
    for (int i = 0; i < N; i++)
        for (int j = 0; j < N; j++) { /* Simpson's rule */
            const double weight = (i % (N - 1) ? 2 + 2 * (i % 2) : 1) * (j % (N - 1) ? 2 + 2 * (j % 2) : 1);
            const double rise = high[j * N + i] - low[j * N + i];
            mean += weight * rise;
            square += weight * rise * rise;
        }
    const double points = 9.0 * (N - 1) * (N - 1);
    return square / points / pow(mean / points, 2);
}

static double per_q(const struct gw_blast_curve *c)
{
    return c->unit / gw_tables_standard()->plate_response_range[0].load_scale;
}

static void find_shapes(struct shapes *out, struct gw_engine *engine, const struct gw_blast_curve *c)
{
    for (int i = 0; i < SHAPES; i++) {
        out->q[i] = 0.1 * pow(4, i);
        out->motion[i] = sampled_motion(engine, c, out->q[i] * per_q(c));
    }
}

static double motion_at(const struct shapes *s, double q)
{
    int i = 0;
    if (q <= s->q[0]) return s->motion[0];
    while (i < SHAPES - 2 && q > s->q[i + 1]) i++;
    return s->motion[i] + (s->motion[i + 1] - s->motion[i]) * log(q / s->q[i]) / log(s->q[i + 1] / s->q[i]);
}

/* Without `shapes` the motion factor is the curve's; with them it is that of the load, and Lagrange's equation has a
 * term in its derivative. */
static double other_integrator(const struct gw_blast_curve *c, const struct shapes *shapes, double pressure,
                               double impulse, double step)
{
    const double aspect = fmax(c->width, c->height) / fmin(c->width, c->height), t = c->thickness;
    const double duration = 2 * impulse / pressure;
    double v = 0, speed = 0, resistance = 0;
    for (double time = 0;; time += step) {
        const double q = load_at(v / t, aspect), more = q * 1.02 + 0.01;
        const double motion = shapes ? motion_at(shapes, q) : c->motion;
        const double slope =
            shapes ? (motion_at(shapes, more) - motion) / ((mean_at(more, aspect) - mean_at(q, aspect)) * t) : 0;
        const double force = pressure * fmax(0, 1 - time / duration) - q * per_q(c);
        const double gained = step * (force / c->mass - slope * speed * speed / 2) / motion;
        const double next = speed + (time > 0 ? gained : gained / 2); /* velocities at half steps */
        if (next < 0) return resistance;
        speed = next;
        v += speed * step;
        resistance = load_at(v / t, aspect) * per_q(c);
    }
}

static const double PAIRS[][2] = {{3100, 41}, {6400, 118}, {31000, 95}, {3100, 400}};

enum { PAIRS_COUNT = sizeof PAIRS / sizeof *PAIRS };

static void another_integrator(void **state)
{
    const struct gw_blast_curve curve = curve_of(*state, 1.37, 2.06, 0.006);
    for (size_t i = 0; i < PAIRS_COUNT; i++) {
        const struct gw_blast_response r = respond(*state, &curve, PAIRS[i][0], PAIRS[i][1]);
        const double got = other_integrator(&curve, NULL, PAIRS[i][0], PAIRS[i][1], r.time / 800);
        printf("R_max %.6g, by the other %.6g\n", r.equivalent, got);
        fflush(stdout);
        assert_near(got / r.equivalent, 1, 5e-5);    /* second order in the step */
        assert_true(r.equivalent > 20 * curve.unit); /* far from linear */
        assert_true(fabs(r.energy_residual) < 1e-7);
    }
}

/* What the assumption of one shape is worth: the shapes of the plate under load in its place. */
static void one_shape_or_many(void **state)
{
    struct shapes shapes;
    const struct gw_blast_curve curve = curve_of(*state, 1.37, 2.06, 0.006);
    find_shapes(&shapes, *state, &curve);
    assert_near(shapes.motion[0], curve.motion, 2e-4 * curve.motion); /* Navier's series and the plate's equations */
    for (size_t i = 0; i < PAIRS_COUNT; i++) {
        const struct gw_blast_response r = respond(*state, &curve, PAIRS[i][0], PAIRS[i][1]);
        const double got = other_integrator(&curve, &shapes, PAIRS[i][0], PAIRS[i][1], r.time / 800);
        printf("R_max %.6g, with the shapes under load %.6g: %+.1f %%\n", r.equivalent, got,
               100 * (got / r.equivalent - 1));
        fflush(stdout);
        assert_near(got / r.equivalent, 1, 0.05);
    }
}

/* Work and strain energy by the plate's table alone, trapezoids in the load. */
static double strain_energy(const struct gw_blast_curve *c, double resistance)
{
    enum { STEPS = 4000 };
    const double aspect = fmax(c->width, c->height) / fmin(c->width, c->height), q = resistance / per_q(c);
    double sum = 0, before = 0;
    for (int i = 1; i <= STEPS; i++) {
        const double mean = mean_at(q * i / STEPS, aspect);
        sum += q * (i - 0.5) / STEPS * per_q(c) * (mean - before) * c->thickness;
        before = mean;
    }
    return sum;
}

static void asymptotes(void **state)
{
    const struct gw_blast_curve curve = curve_of(*state, 1.37, 2.06, 0.006);
    struct gw_blast_pair least, pair;
    assert_int_equal(gw_blast_asymptotes(&least, &curve, *state), GW_OK);
    const double energy = strain_energy(&curve, curve.capacity);
    const double deflection = mean_at(curve.capacity / per_q(&curve), 2.06 / 1.37) * curve.thickness;
    assert_near(least.impulse, sqrt(2 * curve.motion * curve.mass * energy), 1e-5 * least.impulse);
    assert_near(least.pressure, energy / deflection, 1e-5 * least.pressure);
    assert_true(least.pressure < curve.capacity / 2); /* the curve of the plate stiffens */
    assert_int_equal(gw_blast_breaking(&pair, &curve, 1e-3 * curve.period, *state), GW_OK);
    assert_near(pair.impulse / least.impulse, 1, 1e-4);
    assert_int_equal(gw_blast_breaking(&pair, &curve, 1e3 * curve.period, *state), GW_OK);
    assert_near(pair.pressure / least.pressure, 1, 2e-3);
    /* Just below either limit nothing of the other breaks it. */
    assert_false(respond(*state, &curve, 0.999 * least.pressure, 1e5 * least.impulse).breaks);
    assert_false(respond(*state, &curve, 1e4 * least.pressure, 0.999 * least.impulse).breaks);
    assert_true(respond(*state, &curve, 1.002 * least.pressure, 1e5 * least.impulse).breaks);
    assert_true(respond(*state, &curve, 1e4 * least.pressure, 1.002 * least.impulse).breaks);
}

static void isodamage_curve(void **state)
{
    enum { N = 23 };
    struct gw_blast_pair pairs[N];
    const struct gw_blast_curve curve = curve_of(*state, 0.83, 1.91, 0.01);
    assert_int_equal(gw_blast_isodamage(pairs, N, &curve, curve.period / 50, curve.period * 50, *state), GW_OK);
    for (int i = 0; i < N; i++) {
        assert_near(respond(*state, &curve, pairs[i].pressure, pairs[i].impulse).use, 1, 1e-6);
        assert_near(gw_blast_duration(pairs[i]), curve.period / 50 * pow(2500, i / (N - 1.0)), 1e-9);
        assert_false(respond(*state, &curve, 0.999 * pairs[i].pressure, pairs[i].impulse).breaks);
        assert_true(respond(*state, &curve, 1.001 * pairs[i].pressure, 1.001 * pairs[i].impulse).breaks);
        if (!i) continue;
        assert_true(pairs[i].pressure < pairs[i - 1].pressure);
        assert_true(pairs[i].impulse > pairs[i - 1].impulse);
    }
}

static void grows_with_pressure_and_impulse(void **state)
{
    const struct gw_blast_curve curve = curve_of(*state, 1.37, 2.06, 0.006);
    for (double impulse = 5; impulse < 400; impulse *= 1.7) {
        double last = 0;
        for (double pressure = 200; pressure < 60000; pressure *= 1.23) {
            const struct gw_blast_response r = respond(*state, &curve, pressure, impulse);
            if (!gw_given(r.equivalent)) break; /* beyond the plate's solution, and broken */
            assert_true(r.equivalent > last);
            assert_true(respond(*state, &curve, pressure, 1.01 * impulse).equivalent > r.equivalent);
            assert_true(fabs(r.energy_residual) < 1e-6);
            last = r.equivalent;
        }
    }
}

static void turned_lites_are_alike(void **state)
{
    const struct gw_blast_curve upright = curve_of(*state, 0.83, 1.91, 0.01), wide = curve_of(*state, 1.91, 0.83, 0.01);
    assert_near(upright.period, wide.period, 1e-12);
    const double one = respond(*state, &upright, 9000, 120).equivalent;
    assert_near(one, respond(*state, &wide, 9000, 120).equivalent, 1e-8 * one);
}

static void insulating_units(void **state)
{
    struct gw_blast_curve curve, inner;
    struct gw_engine *engine = *state;
    struct gw_lite unit = lite_of(1.37, 2.06, 0.006, GW_ANNEALED), alone = lite_of(1.37, 2.06, 0.01, GW_ANNEALED);
    unit.make_up.n_panes = 2;
    unit.make_up.panes[1] = alone.make_up.panes[0];
    unit.make_up.gaps[0] = 0.012;
    assert_int_equal(gw_blast_curve(&curve, &unit, false, engine), GW_OUTSIDE_METHOD);
    assert_string_equal(engine->fault.key, "layers");
    assert_int_equal(gw_blast_curve(&curve, &unit, true, engine), GW_OK);
    assert_int_equal(gw_blast_curve(&inner, &alone, false, engine), GW_OK);
    assert_near(curve.capacity, inner.capacity, 0);
    assert_near(curve.period, inner.period, 0);
    assert_near(curve.passed_on, 2 * 9.02 / (9.02 + 5.56), 1e-12);
    assert_false(gw_given(inner.passed_on));
}

static void refused_lites(void **state)
{
    struct gw_blast_curve curve;
    struct gw_blast_response out;
    struct gw_blast_pair pair;
    struct gw_engine *engine = *state;
    struct gw_lite lite = lite_of(1.37, 2.06, 0.006, GW_ANNEALED);
    lite.edges = 2;
    assert_int_equal(gw_blast_curve(&curve, &lite, false, engine), GW_OUTSIDE_METHOD);
    lite = lite_of(1.37, 2.06, 0.006, GW_TREATMENT_UNSET);
    assert_int_equal(gw_blast_curve(&curve, &lite, false, engine), GW_MISSING);
    lite = lite_of(0.4, 2.06, 0.006, GW_ANNEALED);
    assert_int_equal(gw_blast_curve(&curve, &lite, false, engine), GW_OUTSIDE_METHOD);
    curve = curve_of(engine, 1.37, 2.06, 0.006);
    const struct gw_blast_pair bad[] = {{0, 10}, {-1, 10}, {1000, 0}, {1000, INFINITY}};
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
        assert_int_equal(gw_blast_respond(&out, &curve, bad[i], engine), GW_BAD_VALUE);
    assert_int_equal(gw_blast_respond(&out, &curve, (struct gw_blast_pair){GW_ABSENT, 1}, engine), GW_MISSING);
    assert_int_equal(gw_blast_respond(&out, &curve, (struct gw_blast_pair){1, GW_ABSENT}, engine), GW_MISSING);
    assert_int_equal(gw_blast_breaking(&pair, &curve, 0, engine), GW_BAD_VALUE);
}

/* So strong and thin that it would bend beyond the plate's solution before it breaks: what lies beyond is not guessed.
 */
static void strength_beyond_the_solution(void **state)
{
    struct gw_blast_curve curve;
    struct gw_blast_response out;
    struct gw_blast_pair pair;
    const struct gw_lite lite = lite_of(2.9, 3.1, 0.003, GW_TEMPERED);
    assert_int_equal(gw_blast_curve(&curve, &lite, false, *state), GW_OK);
    assert_true(curve.break_at > curve.end);
    assert_int_equal(gw_blast_asymptotes(&pair, &curve, *state), GW_OUTSIDE_METHOD);
    assert_int_equal(gw_blast_breaking(&pair, &curve, 0.01, *state), GW_OUTSIDE_METHOD);
    assert_false(respond(*state, &curve, 500, 10).breaks);
    assert_int_equal(gw_blast_respond(&out, &curve, (struct gw_blast_pair){1e6, 2000}, *state), GW_OUTSIDE_METHOD);
}

/* Beyond the solution, but broken long before. */
static void broken_beyond_the_solution(void **state)
{
    const struct gw_blast_curve curve = curve_of(*state, 1.37, 2.06, 0.006);
    const struct gw_blast_response r = respond(*state, &curve, 1e6, 3000);
    assert_true(r.breaks);
    assert_false(gw_given(r.deflection) || gw_given(r.equivalent) || gw_given(r.load_factor) || gw_given(r.use));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        ENGINE_TEST(linear_response_is_the_closed_form),
        ENGINE_TEST(period_of_a_linear_plate),
        ENGINE_TEST(load_mass_factors),
        ENGINE_TEST(another_integrator),
        ENGINE_TEST(one_shape_or_many),
        ENGINE_TEST(asymptotes),
        ENGINE_TEST(isodamage_curve),
        ENGINE_TEST(grows_with_pressure_and_impulse),
        ENGINE_TEST(turned_lites_are_alike),
        ENGINE_TEST(insulating_units),
        ENGINE_TEST(refused_lites),
        ENGINE_TEST(strength_beyond_the_solution),
        ENGINE_TEST(broken_beyond_the_solution),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
