/* Proof tests and the order of a mock-up. */
#include "weather_support.h"

/* Proof ----------------------------------------------------------------------------------------------------------- */

static struct gw_proof_result proof(double span, enum gw_water_rule rule)
{
    struct gw_proof_result out;
    struct gw_engine engine = an_engine();
    const struct gw_proof_case in = {{1900}, {2850}, span, rule, GW_PROOF_UNSET};
    assert_int_equal(gw_proof(&out, &in, &engine), GW_OK);
    return out;
}

static void deflection_changes_rule_at_13_6(void **state)
{
    (void)state;
    const double at = 162 * 0.0254;
    const double low = proof(at, GW_WATER_CURTAIN_WALL).deflection_limit;
    const double high = proof(at * (1 + 1e-6), GW_WATER_CURTAIN_WALL).deflection_limit;
    assert_near(low, at / 175, 1e-12);
    assert_near(high, at / 240 + 0.00635, 1e-7);
    assert_true(fabs(high - low) < 0.001 * low);
    assert_near(proof(at * 2, GW_WATER_AW).deflection_limit, at * 2 / 175, 1e-12); /* a class has one rule */
    assert_false(gw_given(proof(at, GW_WATER_R).deflection_limit));
    assert_false(gw_given(proof(at, GW_WATER_LC).deflection_limit));
}

static void set_and_loads(void **state)
{
    (void)state;
    static const double set[] = {0.004, 0.004, 0.003, 0.002, 0.002};
    for (int i = 0; i < 5; i++) {
        const struct gw_proof_result out = proof(3.7, (enum gw_water_rule)(GW_WATER_R + i));
        assert_near(out.set_limit, set[i] * 3.7, 1e-12);
        assert_near(out.preload, 950, 1e-9); /* of the positive pressure */
        assert_near(out.proof_positive, 2850, 1e-9);
        assert_near(out.proof_negative, 4275, 1e-9);
    }
    struct gw_proof_result out;
    struct gw_engine engine = an_engine();
    struct gw_proof_case in = {{1900}, {-2850}, 3.7, GW_WATER_AW, GW_PROOF_E330};
    assert_int_equal(gw_proof(&out, &in, &engine), GW_BAD_VALUE);
    in.negative.pa = 2850;
    in.span = 0;
    assert_int_equal(gw_proof(&out, &in, &engine), GW_BAD_VALUE);
    in.span = 3.7;
    in.rule = GW_WATER_UNSET;
    assert_int_equal(gw_proof(&out, &in, &engine), GW_MISSING);
}

/* Sequence -------------------------------------------------------------------------------------------------------- */

static struct gw_sequence sequence(enum gw_bool dynamic, enum gw_bool thermal, double drift)
{
    struct gw_sequence out;
    struct gw_engine engine = an_engine();
    const struct gw_sequence_case in = {.positive = {1900},
                                        .negative = {2850},
                                        .span = 3.7,
                                        .rule = GW_WATER_CURTAIN_WALL,
                                        .water = GW_ABSENT,
                                        .air_leakage = GW_ABSENT,
                                        .air_at = GW_ABSENT,
                                        .dynamic = dynamic,
                                        .thermal = thermal,
                                        .drift = drift,
                                        .story_height = GW_ABSENT};
    assert_int_equal(gw_test_sequence(&out, &in, &engine), GW_OK);
    return out;
}

static bool disturbs(enum gw_sequence_test test)
{
    return test == GW_STEP_DESIGN_OUT || test == GW_STEP_SWAY || test == GW_STEP_THERMAL;
}

/* Whatever is left out: after each load, racking and thermal cycling comes air and water again, and proof comes last.
 */
static void every_disturbance_is_followed_by_water(void **state)
{
    (void)state;
    for (int bits = 0; bits < 8; bits++) {
        const struct gw_sequence all =
            sequence(bits & 1 ? GW_YES : GW_NO, bits & 2 ? GW_YES : GW_NO, bits & 4 ? 0.037 : GW_ABSENT);
        size_t proofs = 0;
        assert_int_equal(all.n, 9 + (bits & 1 ? 1 : 0) + (bits & 2 ? 3 : 0) + (bits & 4 ? 4 : 0));
        for (size_t i = 0; i < all.n; i++) {
            const enum gw_sequence_test test = all.steps[i].test;
            proofs += test == GW_STEP_PROOF_IN || test == GW_STEP_PROOF_OUT;
            if (test == GW_STEP_WATER || test == GW_STEP_AIR) assert_int_equal(proofs, 0);
            if (!disturbs(test)) continue;
            assert_int_equal(all.steps[i + 1].test, GW_STEP_AIR);
            assert_int_equal(all.steps[i + 2].test, GW_STEP_WATER);
            assert_int_equal(all.steps[i + 2].again, GW_YES);
        }
        assert_int_equal(proofs, 2);
        assert_int_equal(all.steps[0].test, GW_STEP_PRELOAD);
        assert_int_equal(all.steps[all.n - 1].test, bits & 4 ? GW_STEP_SAFETY : GW_STEP_PROOF_OUT);
        if (bits & 4) assert_near(all.steps[all.n - 1].displacement, 1.5 * 0.037, 1e-12);
    }
}

static void sequence_follows_the_project(void **state)
{
    (void)state;
    struct gw_sequence out;
    struct gw_engine engine = an_engine();
    struct gw_sequence_case in = {.positive = {1900},
                                  .negative = {2850},
                                  .span = 3.7,
                                  .rule = GW_WATER_CURTAIN_WALL,
                                  .water = 575,
                                  .air_leakage = 0.0003,
                                  .air_at = 75,
                                  .drift = GW_ABSENT,
                                  .story_height = 3.9};
    assert_int_equal(gw_test_sequence(&out, &in, &engine), GW_OK);
    for (size_t i = 0; i < out.n; i++) {
        const struct gw_sequence_step *step = &out.steps[i];
        if (step->test == GW_STEP_WATER) assert_near(step->pressure, 575, 0);
        if (step->test == GW_STEP_AIR) assert_near(step->pressure, 75, 0);
        if (step->test == GW_STEP_AIR) assert_near(step->leakage, 0.0003, 0);
        if (step->test == GW_STEP_SWAY) assert_near(step->displacement, 0.039, 1e-12);
    }
    in.air_at = GW_ABSENT;
    assert_int_equal(gw_test_sequence(&out, &in, &engine), GW_MISSING);
    in.air_leakage = GW_ABSENT;
    in.drift = -0.01;
    assert_int_equal(gw_test_sequence(&out, &in, &engine), GW_BAD_VALUE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(deflection_changes_rule_at_13_6),
        cmocka_unit_test(set_and_loads),
        cmocka_unit_test(every_disturbance_is_followed_by_water),
        cmocka_unit_test(sequence_follows_the_project),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
