/* Drift of stories, and what of it reaches a lite. */
#include "seismic_support.h"

static struct gw_drift_case story(enum gw_risk risk)
{
    return (struct gw_drift_case){.drift = GW_ABSENT,
                                  .drift_with_importance = GW_ABSENT,
                                  .importance = GW_ABSENT,
                                  .risk = risk,
                                  .structure = GW_DRIFT_OTHER,
                                  .story_height = 3.9,
                                  .redundancy = GW_ABSENT};
}

static struct gw_drift_result drift_of(const struct gw_drift_case *in)
{
    struct gw_engine engine = engine_new();
    struct gw_drift_result out;
    assert_int_equal(gw_story_drift(&out, in, &engine), GW_OK);
    return out;
}

/* I_e belongs once into D_pI, also when the engineer's drift came with it. */
static void importance_is_counted_once(void **state)
{
    (void)state;
    for (int risk = GW_RISK_I; risk <= GW_RISK_IV; risk++) {
        struct gw_drift_case plain = story((enum gw_risk)risk), counted = plain;
        plain.drift = 0.041;
        struct gw_drift_result first = drift_of(&plain);
        assert_near(first.drift_with_importance, 0.041 * first.importance, 1e-12);
        counted.drift_with_importance = first.drift_with_importance;
        struct gw_drift_result again = drift_of(&counted);
        assert_near(again.drift_with_importance, first.drift_with_importance, 1e-12);
        assert_near(again.drift, 0.041, 1e-12);
        struct gw_engine engine = engine_new();
        struct gw_fallout_result fallout;
        assert_int_equal(gw_fallout(&fallout, again.drift_with_importance, GW_ABSENT, &engine), GW_OK);
        assert_near(fallout.required, 1.25 * first.importance * 0.041, 1e-12);
    }
}

static void allowable_drift_falls_with_risk(void **state)
{
    (void)state;
    for (int structure = GW_DRIFT_LOW_RISE; structure <= GW_DRIFT_OTHER; structure++) {
        double last = INFINITY;
        for (int risk = GW_RISK_I; risk <= GW_RISK_IV; risk++) {
            struct gw_drift_case in = story((enum gw_risk)risk);
            in.structure = (enum gw_drift_structure)structure;
            struct gw_drift_result r = drift_of(&in);
            assert_true(r.allowable <= last);
            assert_true(r.allowable >= 0.007 && r.allowable <= 0.025);
            assert_near(r.drift, r.allowable * 3.9, 1e-12);
            last = r.allowable;
            in.redundancy = 1.3;
            assert_near(drift_of(&in).drift, r.drift / 1.3, 1e-12);
            in.drift = 0.03; /* the engineer's governs over the table */
            assert_near(drift_of(&in).drift, 0.03, 0);
            assert_false(gw_given(drift_of(&in).allowable));
        }
    }
}

static void rows_not_seen_say_so(void **state)
{
    (void)state;
    struct gw_drift_case in = story(GW_RISK_III);
    assert_false(noted(drift_of(&in).notes, "was not seen in the standard itself"));
    in.structure = GW_DRIFT_MASONRY;
    assert_true(noted(drift_of(&in).notes, "was not seen in the standard itself"));
}

static void connections_allow_half_an_inch(void **state)
{
    (void)state;
    struct gw_drift_case in = story(GW_RISK_IV);
    in.drift = 0.2 * IN;
    assert_near(drift_of(&in).connection, 0.5 * IN, 1e-12);
    in.drift = 0.4 * IN;
    assert_near(drift_of(&in).connection, 0.6 * IN, 1e-12);
}

static void what_a_drift_needs(void **state)
{
    (void)state;
    const struct {
        struct gw_drift_case in;
        enum gw_status status;
        const char *key;
    } cases[] = {
        {{.drift = 1, .drift_with_importance = 1, .importance = 1}, GW_BAD_VALUE, "drift_with_importance"},
        {{.drift = 0.1, .drift_with_importance = GW_ABSENT, .importance = GW_ABSENT}, GW_MISSING, "risk_category"},
        {{.drift = GW_ABSENT, .drift_with_importance = GW_ABSENT, .importance = 1}, GW_MISSING, "drift"},
        {{.drift = GW_ABSENT, .drift_with_importance = GW_ABSENT, .importance = 1, .structure = GW_DRIFT_OTHER},
         GW_MISSING,
         "risk_category"},
        {{.drift = -0.1, .drift_with_importance = GW_ABSENT, .importance = 1}, GW_BAD_VALUE, "drift"},
    };
    for (EACH(i, cases)) {
        struct gw_engine engine = engine_new();
        struct gw_drift_result out;
        assert_int_equal(gw_story_drift(&out, &cases[i].in, &engine), cases[i].status);
        assert_string_equal(engine.fault.key, cases[i].key);
    }
}

static struct gw_lite_drift_result share_of(enum gw_drift_path path, double drift, double slip)
{
    const struct gw_lite_drift_case in = {
        .path = path, .drift = drift, .story_height = 3.962, .frame_height = 1.854, .slip = slip, .unit_width = 1.47};
    struct gw_engine engine = engine_new();
    struct gw_lite_drift_result out;
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_OK);
    return out;
}

/* The drift of the story is not that of the lite, and the paths agree where they meet. */
static void share_of_the_lite(void **state)
{
    (void)state;
    const double drift = 0.0396, whole = share_of(GW_PATH_ALL_IN_LITE, drift, GW_ABSENT).in_lite;
    const double racked = share_of(GW_PATH_RACKING, drift, GW_ABSENT).in_lite;
    assert_near(whole, drift, 0);
    assert_near(racked, drift * 1.854 / 3.962, 1e-12);
    assert_true(racked < 0.5 * whole);
    assert_near(share_of(GW_PATH_SLIDING_HEAD, drift, 0).in_lite, racked, 1e-12);
    assert_near(share_of(GW_PATH_SLIDING_HEAD, drift, drift).in_lite, 0, 0);
    assert_near(share_of(GW_PATH_SLIDING_HEAD, drift, 1).slip, drift, 0);
    double last = racked;
    for (double slip = 0.005; slip < drift; slip += 0.005) {
        struct gw_lite_drift_result r = share_of(GW_PATH_SLIDING_HEAD, drift, slip);
        assert_near(r.slip, slip, 0);
        assert_true(r.in_lite < last);
        last = r.in_lite;
    }
    assert_near(share_of(GW_PATH_SLIDING, drift, GW_ABSENT).in_lite, 0, 0);
    assert_near(share_of(GW_PATH_SLIDING, drift, GW_ABSENT).slip, drift, 0);
    assert_near(share_of(GW_PATH_TILTING, drift, GW_ABSENT).in_lite, 0, 0);
}

/* Two units turned each about its lower left corner, by the rotation itself: how far points that touched have parted
 * along the joint. */
static void tilting_units_slip_along_their_joint(void **state)
{
    (void)state;
    const double height = 3.962, width = 1.47;
    for (double drift = 0.001; drift < 0.08; drift *= 3) {
        struct gw_lite_drift_result r = share_of(GW_PATH_TILTING, drift, GW_ABSENT);
        double angle = asin(drift / height), middle = height / 2;
        double left_unit = -sin(-angle) * width + cos(angle) * middle; /* right edge of the left unit */
        double right_unit = cos(angle) * middle;                       /* left edge of the right one */
        assert_near(r.joint_slip, left_unit - right_unit, 1e-9);
        assert_near(r.lift, width * sin(angle), 1e-9);
        assert_near(r.angle, angle, 0.001 * angle);
    }
}

static void what_a_share_needs(void **state)
{
    (void)state;
    struct gw_engine engine = engine_new();
    struct gw_lite_drift_result out;
    struct gw_lite_drift_case in = {.path = GW_PATH_RACKING,
                                    .drift = 0.03,
                                    .story_height = 3,
                                    .frame_height = 3.1,
                                    .slip = GW_ABSENT,
                                    .unit_width = GW_ABSENT};
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_OUTSIDE_METHOD);
    in.frame_height = 3;
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_OK);
    assert_near(out.in_lite, 0.03, 1e-15);
    in.path = GW_PATH_SLIDING_HEAD;
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_MISSING);
    assert_string_equal(engine.fault.key, "slip");
    in.path = GW_PATH_TILTING;
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_MISSING);
    assert_string_equal(engine.fault.key, "unit_width");
    in.path = GW_PATH_UNSET;
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_MISSING);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(importance_is_counted_once),
        cmocka_unit_test(allowable_drift_falls_with_risk),
        cmocka_unit_test(rows_not_seen_say_so),
        cmocka_unit_test(connections_allow_half_an_inch),
        cmocka_unit_test(what_a_drift_needs),
        cmocka_unit_test(share_of_the_lite),
        cmocka_unit_test(tilting_units_slip_along_their_joint),
        cmocka_unit_test(what_a_share_needs),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
