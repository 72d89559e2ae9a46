/* Blast: the published polynomials against a second set, the response of a lite against closed forms and another
 * integrator, the comparison of ratings, what holds the glass. */
#include "support.h"

#include "galeward/blast.h"
#include "tables_data.h"

static const double PSI = 6894.757293168361;

static int setup(void **state)
{
    struct gw_engine *engine = malloc(sizeof *engine);
    if (!engine) return -1;
    gw_engine_init(engine, gw_tables_standard(), NULL);
    engine->workspace = malloc(GW_PLATE_WORKSPACE);
    *state = engine;
    return engine->workspace ? 0 : -1;
}

static int teardown(void **state)
{
    struct gw_engine *engine = *state;
    free(engine->workspace);
    free(engine);
    return 0;
}
#define ENGINE_TEST(function) cmocka_unit_test_setup_teardown(function, setup, teardown)

/* Load ---------------------------------------------------------------------------------------------------------------
 */

static double quantity(struct gw_engine *engine, enum gw_blast_quantity which, double z, double charge)
{
    double value = GW_ABSENT;
    assert_int_equal(gw_blast_quantity(&value, which, z, charge, engine), GW_OK);
    return value;
}

/* Kingery and Bulmash 1984, decimal logarithms: log Y = sum k_i U^i, U = a + b log Z; kPa, kPa-ms/kg^(1/3). */
static double older_set(double z, double a, double b, const double *k, int n)
{
    double u = a + b * log10(z), sum = 0;
    while (n-- > 0) sum = sum * u + k[n];
    return pow(10, sum);
}

static void agrees_with_the_older_polynomials(void **state)
{
    static const double pressure[] = {3.402832176,  -2.210308706, -0.218536586, 0.895319589, 0.249890098,  -0.569249437,
                                      -0.117916824, 0.224131161,  0.024562026,  -0.0455116,  -0.001909307, 0.003614712};
    static const double impulse[] = {2.705880581, -0.949516093, 0.112136119, -0.025065918};
    double worst_pressure = 0, worst_impulse = 0;
    for (double z = 0.0675; z <= 40; z *= 1.003) {
        const double p = older_set(z, -0.240657323, 1.366377192, pressure, 12) * 1000;
        const double i = older_set(z, -0.246208805, 1.334220499, impulse, 4);
        worst_pressure = fmax(worst_pressure, fabs(quantity(*state, GW_BLAST_REFLECTED_PRESSURE, z, 1) / p - 1));
        worst_impulse = fmax(worst_impulse, fabs(quantity(*state, GW_BLAST_REFLECTED_IMPULSE, z, 1) / i - 1));
    }
    printf("against the polynomials of 1984: pressure %.2e, impulse %.2e\n", worst_pressure, worst_impulse);
    fflush(stdout);
    assert_true(worst_pressure <= 0.0105); /* 1.0 % as rounded */
    assert_true(worst_impulse <= 0.00025); /* 0.02 % as rounded */
}

/* Of a plane shock in air that reflects: from the incident peak alone. Within 1 % up to 23.8, where the incident
 * pressure's last row begins, a straight line 0.7 % above the row before: 1.5 % from there. */
static void agrees_with_the_shock_relation_far_off(void **state)
{
    const double p0 = 101325;
    for (double z = 5; z <= 40; z *= 1.02) {
        const double s = quantity(*state, GW_BLAST_INCIDENT_PRESSURE, z, 1);
        const double want = 2 * s * (7 * p0 + 4 * s) / (7 * p0 + s);
        assert_near(quantity(*state, GW_BLAST_REFLECTED_PRESSURE, z, 1) / want, 1, z < 23.8 ? 0.01 : 0.015);
    }
}

/* An incident pressure taken for the reflected one would show as a ratio of 1. */
static void reflected_is_not_incident(void **state)
{
    const struct {
        double z, ratio, digits;
    } known[] = {{40, 2.01, 0.01}, {10, 2.1, 0.05}, {5, 2.3, 0.05}, {3, 2.9, 0.1}, {2, 3.7, 0.05}, {1, 6.0, 0.05}};
    for (size_t i = 0; i < sizeof known / sizeof *known; i++) {
        const double r = quantity(*state, GW_BLAST_REFLECTED_PRESSURE, known[i].z, 1);
        const double s = quantity(*state, GW_BLAST_INCIDENT_PRESSURE, known[i].z, 1);
        assert_near(r / s, known[i].ratio, known[i].digits);
    }
}

/* At one scaled distance: pressures stay, impulses and times grow with the cube root of the charge. */
static void scales_with_the_cube_root(void **state)
{
    const double z = 3.7, factor = cbrt(343.0);
    for (int q = GW_BLAST_REFLECTED_PRESSURE; q <= GW_BLAST_ARRIVAL; q++) {
        const bool pressure = q == GW_BLAST_REFLECTED_PRESSURE || q == GW_BLAST_INCIDENT_PRESSURE;
        const double one = quantity(*state, (enum gw_blast_quantity)q, z, 1);
        const double many = quantity(*state, (enum gw_blast_quantity)q, z, 343);
        assert_near(many / one, pressure ? 1 : factor, 1e-12);
    }
}

/* As printed, with rounded coefficients, rows do not meet exactly: reflected pressures to 0.1 %, the others to 1 %, but
 * the incident impulse at 2.38, where the two rows as printed are 2.4 % apart. */
static void rows_join(void **state)
{
    const struct gw_blast_polynomial *rows = gw_tables_standard()->blast_polynomial;
    int joins = 0;
    for (size_t i = 0; i + 1 < GW_N_BLAST_POLYNOMIAL; i++) {
        if (rows[i].quantity != rows[i + 1].quantity) continue;
        const double border = rows[i].most;
        const enum gw_blast_quantity q = (enum gw_blast_quantity)rows[i].quantity;
        assert_near(rows[i + 1].least, border, 0);
        const double gap = quantity(*state, q, border * (1 + 1e-8), 1) / quantity(*state, q, border, 1) - 1;
        printf("%s: %.2e\n", rows[i + 1].row.id, gap);
        fflush(stdout);
        assert_true(fabs(gap) <= (q == GW_BLAST_REFLECTED_PRESSURE ? 0.0015
                                  : q == GW_BLAST_INCIDENT_IMPULSE ? 0.025
                                                                   : 0.015));
        joins++;
    }
    assert_int_equal(joins, 9);
}

static void refuses_outside_each_range(void **state)
{
    static const struct {
        enum gw_blast_quantity quantity;
        double least, most;
    } ranges[] = {{GW_BLAST_REFLECTED_PRESSURE, 0.06, 40},  {GW_BLAST_REFLECTED_IMPULSE, 0.06, 40},
                  {GW_BLAST_INCIDENT_PRESSURE, 0.2, 198.5}, {GW_BLAST_INCIDENT_IMPULSE, 0.2, 158.7},
                  {GW_BLAST_POSITIVE_DURATION, 0.2, 40},    {GW_BLAST_ARRIVAL, 0.06, 40}};
    struct gw_engine *engine = *state;
    for (size_t i = 0; i < sizeof ranges / sizeof *ranges; i++) {
        double value = -1;
        assert_int_equal(gw_blast_quantity(&value, ranges[i].quantity, ranges[i].least * 0.999, 5, engine),
                         GW_OUTSIDE_METHOD);
        assert_non_null(strstr(told(&engine->fault), "m/kg^(1/3)"));
        assert_int_equal(gw_blast_quantity(&value, ranges[i].quantity, ranges[i].most * 1.001, 5, engine),
                         GW_OUTSIDE_METHOD);
        assert_near(value, -1, 0);
        assert_true(quantity(engine, ranges[i].quantity, ranges[i].least, 5) > 0);
        assert_true(quantity(engine, ranges[i].quantity, ranges[i].most, 5) > 0);
    }
}

static struct gw_blast_load load_of(struct gw_engine *engine, double charge, double standoff, double angle)
{
    struct gw_blast_load out;
    const struct gw_blast_case in = {charge, standoff, angle};
    assert_int_equal(gw_blast_load(&out, &in, engine), GW_OK);
    return out;
}

static void oblique(void **state)
{
    const double right_angle = acos(0);
    const struct gw_blast_load normal = load_of(*state, 137, 23.85, GW_ABSENT);
    assert_near(normal.face_pressure, normal.reflected_pressure, 0);
    assert_near(normal.face_impulse, normal.reflected_impulse, 0);
    const struct gw_blast_load grazing = load_of(*state, 137, 23.85, right_angle);
    assert_near(grazing.face_pressure / grazing.incident_pressure, 1, 1e-12);
    assert_near(grazing.face_impulse / grazing.incident_impulse, 1, 1e-12);
    /* Falls to where cos t = P_s/(P_r + P_s), and rises a little to grazing. */
    const double turn = acos(normal.incident_pressure / (normal.incident_pressure + normal.reflected_pressure));
    double last = INFINITY;
    for (double angle = 0; angle < turn; angle += 0.1) {
        const struct gw_blast_load at = load_of(*state, 137, 23.85, angle);
        assert_true(at.face_pressure < last && at.face_impulse <= normal.reflected_impulse);
        assert_near(at.reflected_pressure, normal.reflected_pressure, 0);
        last = at.face_pressure;
    }
    assert_true(load_of(*state, 137, 23.85, turn + 0.1).face_pressure >
                load_of(*state, 137, 23.85, turn).face_pressure);
    /* cos 60 deg = 1/2 */
    assert_near(load_of(*state, 137, 23.85, acos(0.5)).face_pressure,
                0.25 * normal.reflected_pressure + 0.25 * normal.incident_pressure, 1e-9 * normal.reflected_pressure);
}

static void refuse_burst(struct gw_engine *engine, double charge, double standoff, double angle, enum gw_status want,
                         const char *key)
{
    struct gw_blast_load out;
    const struct gw_blast_case in = {charge, standoff, angle};
    assert_int_equal(gw_blast_load(&out, &in, engine), want);
    assert_string_equal(engine->fault.key, key);
}

static void refused_bursts(void **state)
{
    refuse_burst(*state, 100, 0.2, GW_ABSENT, GW_OUTSIDE_METHOD, "standoff");
    refuse_burst(*state, 100, 190, GW_ABSENT, GW_OUTSIDE_METHOD, "standoff");
    refuse_burst(*state, 100, 20, 1.6, GW_OUTSIDE_METHOD, "angle");
    refuse_burst(*state, 100, 20, -0.1, GW_OUTSIDE_METHOD, "angle");
    refuse_burst(*state, 100, 0.5, 0.3, GW_OUTSIDE_METHOD, "standoff"); /* Z 0.11: no incident wave for the angle */
    refuse_burst(*state, 0, 20, GW_ABSENT, GW_BAD_VALUE, "charge");
    refuse_burst(*state, 100, 0, GW_ABSENT, GW_BAD_VALUE, "standoff");
    refuse_burst(*state, GW_ABSENT, 20, GW_ABSENT, GW_MISSING, "charge");
    refuse_burst(*state, 100, GW_ABSENT, GW_ABSENT, GW_MISSING, "standoff");
}

/* Nearer than 0.2 the reflected pair stands alone, and nothing is made up beside it. */
static void near_bursts(void **state)
{
    const struct gw_blast_load out = load_of(*state, 8, 0.3, GW_ABSENT);
    assert_near(out.scaled_distance, 0.15, 1e-12);
    assert_true(out.reflected_pressure > 0 && out.reflected_impulse > 0 && out.arrival > 0);
    assert_false(gw_given(out.incident_pressure) || gw_given(out.incident_impulse) || gw_given(out.positive_duration));
    assert_int_equal(out.n_notes, 3);
}

static struct gw_blast_demand no_demand(void)
{
    return (struct gw_blast_demand){{GW_ABSENT, GW_ABSENT}, {GW_ABSENT, GW_ABSENT, GW_ABSENT}, GW_BLAST_LEVEL_UNSET};
}

static void where_a_demand_comes_from(void **state)
{
    struct gw_blast_pair pair;
    struct gw_blast_demand d = no_demand();
    assert_int_equal(gw_blast_find_load(&pair, &d, *state), GW_MISSING);
    d.load.pressure = 27579;
    assert_int_equal(gw_blast_find_load(&pair, &d, *state), GW_MISSING);
    d.load.impulse = 193.05;
    assert_int_equal(gw_blast_find_load(&pair, &d, *state), GW_OK);
    assert_near(pair.pressure, 27579, 0);
    assert_near(pair.impulse, 193.05, 0);
    d.level = GW_BLAST_LEVEL_C;
    assert_int_equal(gw_blast_find_load(&pair, &d, *state), GW_BAD_VALUE);
    d = no_demand();
    d.level = GW_BLAST_LEVEL_C;
    assert_int_equal(gw_blast_find_load(&pair, &d, *state), GW_OK);
    assert_near(pair.pressure, 576 * PSF, 1e-6);  /* 4 psi, not 4 psf */
    assert_near(pair.impulse, 0.028 * PSI, 1e-9); /* psi-ms, not psi-s */
    d.level = GW_BLAST_LEVEL_D;
    assert_int_equal(gw_blast_find_load(&pair, &d, *state), GW_OK);
    assert_near(pair.pressure, 10 * PSI, 1e-6);
    assert_near(pair.impulse, 0.089 * PSI, 1e-9);
    d = no_demand();
    d.burst = (struct gw_blast_case){137, 23.85, 0.7};
    assert_int_equal(gw_blast_find_load(&pair, &d, *state), GW_OK);
    assert_near(pair.pressure, load_of(*state, 137, 23.85, 0.7).face_pressure, 0);
    assert_near(pair.impulse, load_of(*state, 137, 23.85, 0.7).face_impulse, 0);
    d.load.pressure = 1;
    assert_int_equal(gw_blast_find_load(&pair, &d, *state), GW_BAD_VALUE);
}

/* Response -----------------------------------------------------------------------------------------------------------
 */

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

/* Levels -------------------------------------------------------------------------------------------------------------
 */

static enum gw_bool compare(double p, double i, enum gw_hazard hazard, enum gw_condition condition)
{
    const struct gw_blast_performance demand = {{4 * PSI, 0.028 * PSI}, GW_HAZARD_LOW, GW_CONDITION_UNSET};
    const struct gw_blast_performance rating = {{p * PSI, i * PSI / 1000}, hazard, condition};
    struct gw_blast_verdict out;
    gw_blast_compare(&out, &demand, &rating);
    assert_non_null(out.why);
    return out.meets;
}

static void both_numbers_are_met(void **state)
{
    (void)state;
    assert_int_equal(compare(4, 28, GW_HAZARD_LOW, GW_CONDITION_UNSET), GW_YES);
    assert_int_equal(compare(6, 41, GW_HAZARD_NO_BREAK, GW_CONDITION_UNSET), GW_YES);
    assert_int_equal(compare(10, 27.9, GW_HAZARD_MINIMAL, GW_CONDITION_UNSET), GW_NO); /* more pressure, less impulse */
    assert_int_equal(compare(3.9, 89, GW_HAZARD_MINIMAL, GW_CONDITION_UNSET), GW_NO);
    assert_int_equal(compare(4, 28, GW_HAZARD_HIGH, GW_CONDITION_UNSET), GW_NO);
    assert_int_equal(compare(4, 28, GW_HAZARD_UNSET, GW_CONDITION_UNSET), GW_UNSAID);
    assert_int_equal(compare(4, 28, GW_HAZARD_UNSET, GW_CONDITION_2), GW_UNSAID); /* the scales do not translate */
    assert_int_equal(compare(3, 28, GW_HAZARD_UNSET, GW_CONDITION_2), GW_NO);
    assert_int_equal(compare(GW_ABSENT, 28, GW_HAZARD_LOW, GW_CONDITION_UNSET), GW_UNSAID);
    assert_int_equal(compare(GW_ABSENT, 20, GW_HAZARD_LOW, GW_CONDITION_UNSET), GW_NO);
    assert_false(gw_blast_covers((struct gw_blast_pair){10, 1}, (struct gw_blast_pair){4, 2}));
    assert_true(gw_blast_covers((struct gw_blast_pair){10, 2}, (struct gw_blast_pair){4, 2}));
}

static void demands_left_open(void **state)
{
    (void)state;
    struct gw_blast_verdict out;
    const struct gw_blast_performance rating = {{5e4, 500}, GW_HAZARD_NO_HAZARD, GW_CONDITION_3A};
    struct gw_blast_performance demand = {{4e4, 300}, GW_HAZARD_UNSET, GW_CONDITION_UNSET};
    gw_blast_compare(&out, &demand, &rating);
    assert_int_equal(out.meets, GW_UNSAID);
    assert_near(out.pressure_use, 0.8, 1e-12);
    assert_near(out.impulse_use, 0.6, 1e-12);
    demand.condition = GW_CONDITION_3A;
    gw_blast_compare(&out, &demand, &rating);
    assert_int_equal(out.meets, GW_YES);
    demand.condition = GW_CONDITION_2;
    gw_blast_compare(&out, &demand, &rating);
    assert_int_equal(out.meets, GW_NO);
    demand.load.impulse = GW_ABSENT;
    gw_blast_compare(&out, &demand, &rating);
    assert_int_equal(out.meets, GW_UNSAID);
}

static void protection(void **state)
{
    const enum gw_hazard admitted[] = {GW_HAZARD_LOW, GW_HAZARD_VERY_LOW, GW_HAZARD_MINIMAL, GW_HAZARD_NO_HAZARD};
    enum gw_hazard hazard;
    for (int i = 0; i < 4; i++) {
        assert_int_equal(
            gw_blast_admitted(&hazard, (enum gw_protection_level)(GW_BLAST_PROTECTION_VERY_LOW + i), *state), GW_OK);
        assert_int_equal(hazard, admitted[i]);
    }
    assert_int_equal(gw_blast_admitted(&hazard, GW_BLAST_PROTECTION_UNSET, *state), GW_MISSING);
}

static double attachment(struct gw_engine *engine, enum gw_blast_criteria criteria, double load, double resistance)
{
    double value = GW_ABSENT;
    const struct gw_blast_support in = {criteria, 20 * 0.0254, 30 * 0.0254, load * PSF, resistance * PSF};
    assert_int_equal(gw_blast_attachment(&value, &in, engine), GW_OK);
    return value / PSF;
}

/* A small strong lite: anchors for twice the 3-second load where the edition asks for the glass would be far too weak.
 */
static void small_lites_govern_anchors(void **state)
{
    struct gw_engine *engine = *state;
    assert_near(attachment(engine, GW_BLAST_UFC_2007, 50, 680), 680, 1e-9);
    assert_near(attachment(engine, GW_BLAST_UFC_2007, 50, 680) * 20 * 30 / 144, 2833, 0.5); /* lb on the lite */
    assert_near(attachment(engine, GW_BLAST_UFC_2007, 50, 90), 100, 1e-9);
    assert_near(attachment(engine, GW_BLAST_UFC_2012, 50, 680), 1360, 1e-9);
    assert_near(attachment(engine, GW_BLAST_F2248_03, 50, 680), 100, 1e-9);
    assert_near(attachment(engine, GW_BLAST_UFC_2003, GW_ABSENT, GW_ABSENT) * PSF, 75000, 1e-6);
    double value;
    struct gw_blast_support in = {GW_BLAST_UFC_2007, 1, 1, 50 * PSF, GW_ABSENT};
    assert_int_equal(gw_blast_attachment(&value, &in, engine), GW_MISSING);
    assert_string_equal(engine->fault.key, "glass_resistance");
    in = (struct gw_blast_support){GW_BLAST_UFC_2003, 1.2, 2.4, GW_ABSENT, GW_ABSENT};
    assert_int_equal(gw_blast_attachment(&value, &in, engine), GW_OK);
    assert_near(value, 30000, 1e-9);
    in.height = 2.6; /* 3.12 m2 */
    assert_int_equal(gw_blast_attachment(&value, &in, engine), GW_OUTSIDE_METHOD);
    in.criteria = GW_BLAST_F2248_09;
    assert_int_equal(gw_blast_attachment(&value, &in, engine), GW_OUTSIDE_METHOD);
}

static void edges_and_beads(void **state)
{
    double span_over, pressure;
    struct gw_blast_bead bead;
    struct gw_engine *engine = *state;
    struct gw_blast_support in = {GW_BLAST_F2248_03, 1, 1, 2400, 5000};
    assert_int_equal(gw_blast_edge_limit(&span_over, &pressure, &in, engine), GW_OK);
    assert_near(span_over, 160, 0);
    assert_near(pressure, 2400, 1e-9);
    in.criteria = GW_BLAST_UFC_2012;
    assert_int_equal(gw_blast_edge_limit(&span_over, &pressure, &in, engine), GW_OK);
    assert_near(span_over, 60, 0);
    assert_near(pressure, 10000, 1e-9);
    in.criteria = GW_BLAST_UFC_2003;
    assert_int_equal(gw_blast_edge_limit(&span_over, &pressure, &in, engine), GW_OUTSIDE_METHOD);
    assert_int_equal(gw_blast_bead(&bead, GW_BLAST_F2248_09, 0.006, engine), GW_OK);
    assert_near(bead.least, 0.010, 1e-12); /* the floor */
    assert_near(bead.most, 0.012, 1e-12);
    assert_int_equal(gw_blast_bead(&bead, GW_BLAST_F2248_03, 0.006, engine), GW_OK);
    assert_near(bead.least, 0.006, 1e-12); /* had no floor */
    assert_int_equal(gw_blast_bead(&bead, GW_BLAST_F2248_09, 0.012, engine), GW_OK);
    assert_near(bead.least, 0.012, 1e-12);
    assert_near(bead.thickness, 0.005, 1e-12);
    assert_int_equal(gw_blast_bead(&bead, GW_BLAST_UFC_2003, 0.006, engine), GW_OK);
    assert_near(bead.least, 0.0095, 1e-12);
    assert_near(bead.dry, 0.025, 1e-12);
    assert_false(gw_given(bead.most));
    assert_int_equal(gw_blast_bead(&bead, GW_BLAST_UFC_2012, 0.006, engine), GW_OUTSIDE_METHOD);
}

static void scales_are_whole(void **state)
{
    (void)state;
    const struct gw_tables *t = gw_tables_standard();
    assert_int_equal(GW_N_BLAST_CONDITION, GW_CONDITION_5);
    assert_int_equal(GW_N_BLAST_HAZARD, GW_HAZARD_HIGH);
    for (int i = 0; i < GW_CONDITION_5; i++) assert_int_equal(t->blast_condition[i].condition, i + 1);
    for (int i = 0; i < GW_HAZARD_HIGH; i++) assert_int_equal(t->blast_hazard[i].hazard, i + 1);
}

/* Through calc: units ------------------------------------------------------------------------------------------------
 */

static const struct gw_node *result_of(struct world *w, const char *kind, const char *yaml)
{
    struct gw_text out;
    gw_text_init(&out, &w->arena);
    gw_calc_case(&out, &w->arena, gw_calc_find(kind), node_of(w, yaml), gw_tables_standard());
    return node_of(w, out.at);
}

static double number_at(const struct gw_node *result, const char *key)
{
    double value = GW_ABSENT;
    const char *text = text_at(result, key);
    if (gw_read_number(text, strlen(text), &value) != strlen(text)) print_error("%s: '%s'\n", key, text);
    return value;
}

#define LITE "width: 1.2 m, height: 1.8 m, layers: [{glass: 6 mm, treatment: annealed}]"

static void units_do_not_matter(void **state)
{
    struct world *w = *state;
    const struct gw_node *si = result_of(w, "blast", "{charge: 45.359237 kg, standoff: 30.48 m, angle: 30 deg}");
    const struct gw_node *us = result_of(w, "blast", "{units: us, charge: 100, standoff: 100, angle: 30 deg}");
    const char *const keys[] = {"reflected_pressure_pa", "reflected_impulse_pa_s", "arrival_s", "face_pressure_pa"};
    for (size_t i = 0; i < 4; i++) assert_near(number_at(us, keys[i]) / number_at(si, keys[i]), 1, 1e-10);
    si = result_of(w, "response", "{" LITE ", pressure: 27.579029 kPa, impulse: 193.0532 Pa-s}");
    us = result_of(w, "response", "{" LITE ", pressure: 4 psi, impulse: 28 psi-ms}");
    const struct gw_node *psf = result_of(w, "response", "{" LITE ", pressure: 576 psf, impulse: 28 psi-ms}");
    assert_near(number_at(us, "deflection_max_m") / number_at(si, "deflection_max_m"), 1, 1e-6);
    assert_near(number_at(psf, "deflection_max_m") / number_at(us, "deflection_max_m"), 1, 1e-12);
    assert_near(number_at(us, "duration_s"), 0.014, 1e-12);
}

/* A bare number of a US file is psf, as for wind: 4 for 4 psi is said to be implausible. */
static void pounds_per_square_foot_for_inch(void **state)
{
    struct world *w = *state;
    const struct gw_node *r = result_of(w, "response", "{units: us, " LITE ", pressure: 4, impulse: 28}"), *note;
    bool warned = false;
    for (note = gw_node_get(r, "notes")->first; note; note = note->next)
        if (strstr(note->text, "pressure") && strstr(note->text, "psf")) warned = true;
    assert_true(warned);
    assert_near(number_at(r, "pressure_pa"), 4 * PSF, 1e-9);
}

/* Everything that a chart or a project shows says whose load it is, and that an engineer signs. */
static void cautions_are_there(void **state)
{
    struct world *w = *state;
    const char *const cases[][2] = {{"blast", "{charge: 100 kg, standoff: 15 m}"},
                                    {"response", "{" LITE ", pressure: 4 psi, impulse: 28 psi-ms}"},
                                    {"response", "{" LITE ", pressure: 400 Pa, impulse: 10 Pa-s}"}};
    for (size_t i = 0; i < 3; i++) {
        const struct gw_node *first = gw_node_get(result_of(w, cases[i][0], cases[i][1]), "notes")->first;
        assert_non_null(strstr(first->text, "security consultant"));
        assert_non_null(strstr(first->text, "licensed engineer"));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        ENGINE_TEST(agrees_with_the_older_polynomials),
        ENGINE_TEST(agrees_with_the_shock_relation_far_off),
        ENGINE_TEST(reflected_is_not_incident),
        ENGINE_TEST(scales_with_the_cube_root),
        ENGINE_TEST(rows_join),
        ENGINE_TEST(refuses_outside_each_range),
        ENGINE_TEST(oblique),
        ENGINE_TEST(refused_bursts),
        ENGINE_TEST(near_bursts),
        ENGINE_TEST(where_a_demand_comes_from),
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
        ENGINE_TEST(both_numbers_are_met),
        ENGINE_TEST(demands_left_open),
        ENGINE_TEST(protection),
        ENGINE_TEST(small_lites_govern_anchors),
        ENGINE_TEST(edges_and_beads),
        ENGINE_TEST(scales_are_whole),
        WORLD_TEST(units_do_not_matter),
        WORLD_TEST(pounds_per_square_foot_for_inch),
        WORLD_TEST(cautions_are_there),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
