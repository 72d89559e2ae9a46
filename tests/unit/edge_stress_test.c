/* Allowable stresses at the edges of glass. */
#include "three_edges_support.h"

static enum gw_status edge(double *out, struct gw_engine *engine, enum gw_treatment treatment,
                           enum gw_edge_finish finish, double duration, double probability)
{
    gw_engine_init(engine, gw_tables_standard(), NULL);
    return gw_edge_allowable(out, treatment, finish, duration, probability, engine);
}

static const double DAY = 86400;

static void edges_of_the_table(void **state)
{
    (void)state;
    static const double want[3][3] = {{16.6e6, 18.3e6, 20e6}, {0, 36.5e6, 36.5e6}, {0, 73e6, 73e6}};
    static const double surface[3] = {23.3e6, 46.6e6, 93.1e6};
    struct gw_engine engine;
    double got;
    for (int t = 0; t < 3; t++) {
        enum gw_treatment treatment = (enum gw_treatment)(GW_ANNEALED + t);
        for (int f = 0; f < 3; f++) {
            enum gw_status status =
                edge(&got, &engine, treatment, (enum gw_edge_finish)(GW_CLEAN_CUT + f), GW_ABSENT, GW_ABSENT);
            if (want[t][f] > 0) {
                assert_int_equal(status, GW_OK);
                assert_near(got, want[t][f], 1e-3);
                assert_int_equal(gw_used_weakest(&engine.used), GW_MEMORY);
            } else {
                assert_int_equal(status, GW_OUTSIDE_METHOD);
                assert_string_equal(engine.fault.key, "edge_finish");
            }
        }
        assert_int_equal(gw_surface_allowable(&got, treatment, GW_ABSENT, 0.008, &engine), GW_OK);
        assert_near(got, surface[t], 1e-3);
    }
}

static void allowables_fall_with_duration(void **state)
{
    (void)state;
    struct gw_engine engine;
    double got;
    assert_int_equal(edge(&got, &engine, GW_ANNEALED, GW_SEAMED, 1, GW_ABSENT), GW_OK);
    assert_near(got, 18.3e6, 1e-3); /* not more for less than 3 s */
    assert_int_equal(edge(&got, &engine, GW_ANNEALED, GW_SEAMED, 30 * DAY, GW_ABSENT), GW_OK);
    assert_near(got, 18.3e6 * pow(3 / (30 * DAY), 1.0 / 16), 1e-3);
    assert_int_equal(edge(&got, &engine, GW_HEAT_STRENGTHENED, GW_POLISHED, 4, GW_ABSENT), GW_OK);
    assert_near(got, 36.5e6 * 1.3 / 2, 1e-3);
    assert_int_equal(edge(&got, &engine, GW_TEMPERED, GW_POLISHED, 30 * DAY, GW_ABSENT), GW_OK);
    assert_near(got, 73e6 * 3 / 4, 1e-3);
    assert_int_equal(gw_surface_allowable(&got, GW_TEMPERED, 60, GW_ABSENT, &engine), GW_OK);
    assert_near(got, 93.1e6 * 3 / 4, 1e-3);
    assert_int_equal(edge(&got, &engine, GW_ANNEALED, GW_SEAMED, 400 * DAY, GW_ABSENT), GW_OK);
}

static void allowables_refused(void **state)
{
    (void)state;
    struct gw_engine engine;
    double got = -1;
    const struct {
        enum gw_treatment treatment;
        enum gw_edge_finish finish;
        double duration, probability;
        enum gw_status status;
        const char *key;
    } cases[] = {
        {GW_TREATMENT_UNSET, GW_SEAMED, 3, 0.008, GW_MISSING, "treatment"},
        {GW_ANNEALED, GW_EDGE_FINISH_UNSET, 3, 0.008, GW_MISSING, "edge_finish"},
        {GW_ANNEALED, GW_SEAMED, 0, 0.008, GW_BAD_VALUE, "duration"},
        {GW_ANNEALED, GW_SEAMED, 3, 0.001, GW_OUTSIDE_METHOD, "probability"},
        {GW_TEMPERED, GW_SEAMED, 31 * DAY, 0.008, GW_OUTSIDE_METHOD, "duration"},
        {GW_HEAT_STRENGTHENED, GW_CLEAN_CUT, 3, 0.008, GW_OUTSIDE_METHOD, "edge_finish"},
    };
    for (EACH(i, cases)) {
        assert_int_equal(
            edge(&got, &engine, cases[i].treatment, cases[i].finish, cases[i].duration, cases[i].probability),
            cases[i].status);
        assert_string_equal(engine.fault.key, cases[i].key);
        assert_non_null(engine.fault.format);
        assert_near(got, -1, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(edges_of_the_table),
        cmocka_unit_test(allowables_fall_with_duration),
        cmocka_unit_test(allowables_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
