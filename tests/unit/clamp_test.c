/* Clamp with time: what the engine refuses of callers that no field table guards, and its notes. */
#include "support.h"

#include "galeward/clamp.h"

static const double HOUR = 3600, YEAR = 8760 * 3600.0;

static struct gw_relaxation_case reading(double retained, double age, double time)
{
    return (struct gw_relaxation_case){.retained = retained, .age = age, .rate = GW_ABSENT, .time = time};
}

static struct gw_relaxation_case known(double rate, double time)
{
    return (struct gw_relaxation_case){.retained = GW_ABSENT, .age = GW_ABSENT, .rate = rate, .time = time};
}

static enum gw_status solve(struct gw_relaxation_result *out, struct gw_relaxation_case in, struct gw_engine *engine)
{
    gw_engine_init(engine, gw_tables_standard(), NULL);
    return gw_relaxation(out, &in, engine);
}

static void refusals(void **state)
{
    (void)state;
    const double nan = GW_ABSENT, inf = (double)INFINITY;
    const struct {
        struct gw_relaxation_case in;
        enum gw_status status;
        const char *key;
    } cases[] = {
        {known(0.05, nan), GW_MISSING, "time"},
        {known(0.05, 0), GW_BAD_VALUE, "time"},
        {known(0.05, -YEAR), GW_BAD_VALUE, "time"},
        {known(0.05, inf), GW_BAD_VALUE, "time"},
        {known(-0.05, YEAR), GW_BAD_VALUE, "rate"},
        {known(inf, YEAR), GW_BAD_VALUE, "rate"},
        {known(0.05, 0.9 * HOUR), GW_OUTSIDE_METHOD, "time"},
        {known(0.5, YEAR), GW_OUTSIDE_METHOD, "time"},
        {reading(0, YEAR, YEAR), GW_BAD_VALUE, "retained"},
        {reading(1.01, YEAR, YEAR), GW_BAD_VALUE, "retained"},
        {reading(nan, YEAR, YEAR), GW_MISSING, "retained"},
        {reading(0.8, nan, YEAR), GW_MISSING, "age"},
        {reading(0.8, -1, YEAR), GW_BAD_VALUE, "age"},
        {reading(0.8, HOUR, YEAR), GW_OUTSIDE_METHOD, "age"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_engine engine;
        struct gw_relaxation_result out;
        assert_int_equal(solve(&out, cases[i].in, &engine), cases[i].status);
        assert_string_equal(engine.fault.key, cases[i].key);
        assert_true(isnan(out.retained) || !(out.retained > 0));
    }
}

static void reading_and_rate_agree(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_relaxation_result by_reading, by_rate;
    for (double age = 2 * HOUR; age < 30 * YEAR; age *= 3.7) {
        assert_int_equal(solve(&by_reading, reading(0.83, age, 1.9 * age), &engine), GW_OK);
        assert_int_equal(solve(&by_rate, known(by_reading.rate, 1.9 * age), &engine), GW_OK);
        assert_near(by_rate.retained, by_reading.retained, 1e-14);
        /* Ten times the time costs one rate, wherever one starts. */
        assert_int_equal(solve(&by_reading, known(0.05, age), &engine), GW_OK);
        assert_int_equal(solve(&by_rate, known(0.05, 10 * age), &engine), GW_OK);
        assert_near(by_reading.retained - by_rate.retained, 0.05, 1e-14);
    }
    assert_int_equal(solve(&by_reading, reading(1, YEAR, 20 * YEAR), &engine), GW_OK);
    assert_near(by_reading.rate, 0, 0);
    assert_near(by_reading.retained, 1, 0);
}

static void far_beyond_a_reading_is_said(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_relaxation_result out;
    assert_int_equal(solve(&out, reading(0.8, YEAR, 9 * YEAR), &engine), GW_OK);
    assert_int_equal(out.n_notes, 1);
    assert_int_equal(solve(&out, reading(0.8, YEAR, 11 * YEAR), &engine), GW_OK);
    assert_int_equal(out.n_notes, 2);
    assert_non_null(strstr(out.notes[1], "more than a decade"));
    assert_int_equal(gw_used_weakest(&engine.used), GW_PRACTICE); /* of the line */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(refusals),
        cmocka_unit_test(reading_and_rate_agree),
        cmocka_unit_test(far_beyond_a_reading_is_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
