/* Clamping plates: against the three-moment equations, ends, limits. */
#include "fastener_support.h"

enum { SPANS_MOST = 12 };

/* The three-moment equations by elimination, each support's own. */
static void solve_moments(double m[SPANS_MOST + 1], int spans, double w, double s, double a)
{
    double upper[SPANS_MOST + 1] = {0}, right[SPANS_MOST + 1] = {0};
    m[0] = m[spans] = w * a * a / 2;
    for (int i = 1; i < spans; i++) {
        const double before = i == 1 ? 0 : upper[i - 1], known = i == 1 ? m[0] : right[i - 1];
        const double load = w * s * s / 2 - (i == spans - 1 ? m[spans] : 0);
        upper[i] = 1 / (4 - before);
        right[i] = (load - known) / (4 - before);
    }
    for (int i = spans - 1; i > 0; i--) m[i] = right[i] - (i == spans - 1 ? 0 : upper[i] * m[i + 1]);
}

static const struct gw_plate_section SECTION = {3.4e-7,    1.1e-9,    GW_ABSENT,
                                                GW_ABSENT, GW_ABSENT, {205e6, 172e6, 69.6e9, GW_ABSENT}};

static struct gw_pressure_plate_case clamped(double spacing, double length, double end)
{
    return (struct gw_pressure_plate_case){.pressure = 2137,
                                           .width_left = 1.31,
                                           .width_right = 1.73,
                                           .spacing = spacing,
                                           .length = length,
                                           .end_distance = end,
                                           .gasket_load = GW_ABSENT,
                                           .preload = GW_ABSENT,
                                           .screw_allowable = GW_ABSENT,
                                           .chase_tested = GW_ABSENT,
                                           .safety_factor = GW_ABSENT,
                                           .section = &SECTION};
}

static struct gw_pressure_plate_result plate_of(const struct gw_pressure_plate_case *in)
{
    struct gw_engine engine = start();
    struct gw_pressure_plate_result out;
    enum gw_status status = gw_pressure_plate(&out, in, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

struct expected {
    double moment, tension, deflection, total;
};

static struct expected expect_beam(const double *m, int spans, double w, double s, double a)
{
    struct expected e = {0};
    for (int i = 0; i <= spans; i++) {
        double reaction = i == 0 || i == spans ? w * a : 0;
        if (i > 0) reaction += w * s / 2 + (m[i] - m[i - 1]) / s;
        if (i < spans) reaction += w * s / 2 + (m[i] - m[i + 1]) / s;
        e.total += reaction;
        e.moment = fmax(e.moment, m[i]);
        e.tension = fmax(e.tension, reaction);
        if (i < spans) e.deflection = fmax(e.deflection, 5 * w * pow(s, 4) / 384 - (m[i] + m[i + 1]) * s * s / 16);
    }
    return e;
}

static void plate_equals_the_three_moment_equations(void **state)
{
    (void)state;
    const double s = 0.2286, w = 2137 * (1.31 + 1.73) / 2, stiffness = 69.6e9 * 1.1e-9;
    const double ends[] = {0, 0.0381, 0.0762, 0.1};
    for (int spans = 1; spans <= SPANS_MOST; spans++)
        for (size_t i = 0; i < COUNT_OF(ends); i++) {
            double m[SPANS_MOST + 1];
            const struct gw_pressure_plate_case in = clamped(s, spans * s + 2 * ends[i], ends[i]);
            const struct gw_pressure_plate_result out = plate_of(&in);
            solve_moments(m, spans, w, s, ends[i]);
            const struct expected e = expect_beam(m, spans, w, s, ends[i]);
            assert_near(e.total, w * in.length, 1e-6);
            assert_int_equal(out.fasteners, spans + 1);
            assert_near(out.moment, e.moment, 1e-8 * e.moment);
            assert_near(out.tension_most, e.tension, 1e-8 * e.tension);
            assert_near(out.deflection * stiffness, e.deflection, 1e-8 * fabs(e.deflection) + 1e-12);
        }
}

/* At s/sqrt(6) the ends do as the middle does: every moment equal, the plate level over its end screw. */
static void ends_of_equal_moment(void **state)
{
    (void)state;
    const double s = 9 * IN, equal = s / sqrt(6), w = 2137 * 1.52;
    struct gw_pressure_plate_case in = clamped(s, GW_ABSENT, equal);
    struct gw_pressure_plate_result out = plate_of(&in);
    assert_near(out.end_equal_moment / IN, 3.67, 0.005);
    assert_near(out.moment, w * s * s / 12, 1e-9);
    assert_near(out.moment_end, out.moment, 1e-9);
    assert_near(out.tension_most, w * s, 1e-9);
    assert_near(out.deflection_end, w * pow(equal, 4) / (8 * 69.6e9 * 1.1e-9), 1e-9 * out.deflection_end);
    in.end_distance = 3 * IN; /* practice: on the safe side of it */
    out = plate_of(&in);
    assert_true(out.moment_end < w * s * s / 12);
    in.end_distance = 4 * IN;
    out = plate_of(&in);
    assert_near(out.moment, out.moment_end, 0);
    in.end_distance = GW_ABSENT;
    out = plate_of(&in);
    assert_near(out.tension_most, out.tension, 0);
    assert_true(isnan(out.moment_end));
}

static void plate_is_linear_in_pressure(void **state)
{
    (void)state;
    struct gw_pressure_plate_case in = clamped(0.22, 2.9, 0.05);
    const struct gw_pressure_plate_result one = plate_of(&in);
    in.pressure *= 1.73;
    const struct gw_pressure_plate_result other = plate_of(&in);
    const double a[] = {one.line_load, one.gasket_left, one.gasket_right, one.tension,   one.tension_most,
                        one.moment,    one.moment_end,  one.stress,       one.deflection};
    const double b[] = {other.line_load, other.gasket_left, other.gasket_right, other.tension,   other.tension_most,
                        other.moment,    other.moment_end,  other.stress,       other.deflection};
    for (size_t i = 0; i < COUNT_OF(a); i++) assert_near(b[i], 1.73 * a[i], 1e-9 * fabs(b[i]));
    assert_near(one.gasket_left + one.gasket_right, one.line_load, 1e-9); /* no clamping: suction alone */
}

static void plate_without_a_test_is_not_shown(void **state)
{
    (void)state;
    struct gw_plate_section section = SECTION;
    struct gw_pressure_plate_case in = clamped(0.2286, GW_ABSENT, GW_ABSENT);
    section.thickness = 0.00635;
    section.arm = 0.022;
    in.section = &section;
    in.screw_allowable = 2800;
    struct gw_pressure_plate_result out = plate_of(&in);
    assert_true(isnan(out.utilization) && isnan(out.chase) && !out.governing);
    assert_int_equal(out.n_notes, 1);
    assert_non_null(strstr(out.notes[0], "chase_tested"));
    in.chase_tested = 3 * out.tension_most;
    out = plate_of(&in);
    assert_near(out.utilization, 1, 1e-12);
    assert_string_equal(out.governing, "chase");
    in.preload = 2.5 * out.tension_most; /* 3.5 of 3 */
    out = plate_of(&in);
    assert_string_equal(out.governing, "chase under preload");
    assert_near(out.utilization, 3.5 / 3, 1e-12);
    in.screw_allowable = GW_ABSENT;
    assert_true(isnan(plate_of(&in).utilization));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(plate_equals_the_three_moment_equations),
        cmocka_unit_test(ends_of_equal_moment),
        cmocka_unit_test(plate_is_linear_in_pressure),
        cmocka_unit_test(plate_without_a_test_is_not_shown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
