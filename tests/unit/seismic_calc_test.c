/* Seismic cases through calc in both systems of units; small rules. */
#include "seismic_support.h"

static double answer(struct world *w, const char *kind, const char *yaml, const char *key)
{
    struct gw_text out;
    struct gw_calc_answer a;
    double value = GW_ABSENT;
    gw_text_init(&out, &w->arena);
    const struct gw_calc_kind *k = gw_calc_find(kind);
    bool good = gw_calc_case(&out, &w->arena, k, node_of(w, yaml), gw_tables_standard());
    if (!good) print_error("%s\n", out.at);
    assert_true(good && gw_calc_run(&a, &w->arena, k, node_of(w, yaml), gw_tables_standard(), GW_UNITS_NONE));
    const char *text = text_at(node_of(w, out.at), key);
    assert_int_equal(gw_read_number(text, strlen(text), &value), strlen(text));
    return value;
}

static void units_do_not_matter(void **state)
{
    struct world *w = *state;
    double us =
        answer(w, "seismic_force",
               "{units: us, edition: asce7-16, sds: 1, weight: 100, height_ratio: 0.4, importance: 1, part: fasteners}",
               "force_n");
    double si =
        answer(w, "seismic_force",
               "{units: si, edition: asce7-16, sds: 1, weight: 444.82216152605, height_ratio: 0.4, importance: 1, "
               "part: fasteners}",
               "force_n");
    assert_near(us, si, 1e-8);
    assert_near(us, 90 * LB, 1e-8); /* 0.4 x 1.25 x 1.8 */
    us = answer(w, "clearance", "{units: us, lite_width: 5, lite_height: 6, side_gap: 3/8, end_gap: 1/2}",
                "clearance_drift_m");
    si = answer(w, "clearance", "{units: si, lite_width: 1.524, lite_height: 1.8288, side_gap: 9.525, end_gap: 12.7}",
                "clearance_drift_m");
    assert_near(us, si, 1e-12);
    us = answer(w, "silicone_racking",
                "{units: us, drift_in_lite: 0.73, lite_width: 5, lite_height: 6, thickness: 3/8}", "strain_corner");
    si = answer(w, "silicone_racking",
                "{units: si, drift_in_lite: 18.542, lite_width: 1.524, lite_height: 1.8288, thickness: 9.525}",
                "strain_corner");
    assert_near(us, si, 1e-11);
}

/* Without a distribution the two heights mean even racking, and the answer says so. */
static void racking_is_said(void **state)
{
    struct world *w = *state;
    static const char lite[] =
        "lite_width: 60 in, lite_height: 72 in, side_gap: 3/8 in, end_gap: 1/2 in, drift: 1.56 in, "
        "importance: 1.5, story_height: 156 in, frame_height: 73 in";
    struct gw_text out;
    gw_text_init(&out, &w->arena);
    assert_true(gw_calc_case(&out, &w->arena, gw_calc_find("clearance"), node_of(w, gw_format(&w->arena, "{%s}", lite)),
                             gw_tables_standard()));
    assert_non_null(strstr(out.at, "no distribution given"));
    assert_non_null(strstr(out.at, "\"passes_with_importance\":true"));
    assert_non_null(strstr(out.at, "\"passes\":null"));
    gw_text_init(&out, &w->arena);
    assert_true(
        gw_calc_case(&out, &w->arena, gw_calc_find("clearance"),
                     node_of(w, gw_format(&w->arena, "{%s, distribution: all_in_lite, edition: asce7-22}", lite)),
                     gw_tables_standard()));
    assert_null(strstr(out.at, "no distribution given"));
    assert_non_null(strstr(out.at, "\"passes_with_importance\":false"));
    assert_non_null(strstr(out.at, "\"passes_without_importance\":true"));
    assert_non_null(strstr(out.at, "\"passes\":false"));
}

/* The importance taken out is the importance put in; z/h stays between grade and roof. */
static void small_rules(void **state)
{
    struct gw_engine engine;
    (void)state;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    assert_near(gw_drift_without_importance(0.0375, 1.25, &engine), 0.03, 1e-15);
    assert_near(gw_drift_of_ratio(0.012, 4.2, &engine), 0.0504, 1e-15);
    assert_near(gw_height_ratio(7.2, 24), 0.3, 1e-15);
    assert_near(gw_height_ratio(-2, 24), 0, 0);
    assert_near(gw_height_ratio(25, 24), 1, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(small_rules),
        WORLD_TEST(units_do_not_matter),
        WORLD_TEST(racking_is_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
