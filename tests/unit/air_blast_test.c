/* The load of a blast: the published polynomials against a second set, ranges, angles. */
#include "blast_support.h"

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
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
