/* What is exempt from the seismic checks. */
#include "seismic_support.h"

static struct gw_exemption_case glass_unknown(void)
{
    return (struct gw_exemption_case){.edition = GW_ASCE7_16,
                                      .importance = GW_ABSENT,
                                      .parapet = GW_UNSAID,
                                      .clearance_passes = GW_UNSAID,
                                      .monolithic = GW_UNSAID,
                                      .height_above_walk = GW_ABSENT,
                                      .single_thickness = GW_UNSAID,
                                      .interlayer = GW_ABSENT,
                                      .captured = GW_UNSAID,
                                      .bead = GW_ABSENT,
                                      .other_anchorage = GW_UNSAID};
}

static struct gw_exemptions exempt(const struct gw_exemption_case *in)
{
    struct gw_engine engine = engine_new();
    struct gw_exemptions out;
    assert_int_equal(gw_seismic_exemptions(&out, in, &engine), GW_OK);
    assert_true(noted(out.notes, "recalled"));
    return out;
}

static void nothing_known_exempts_nothing(void **state)
{
    (void)state;
    struct gw_exemption_case in = glass_unknown();
    struct gw_exemptions r = exempt(&in);
    for (int i = 0; i < GW_EXEMPT_COUNT; i++) {
        assert_int_equal(r.of[i].applies, GW_UNSAID);
        assert_non_null(r.of[i].condition);
        assert_non_null(r.of[i].clause);
    }
    assert_int_equal(r.chapter, GW_EXEMPT_COUNT);
    assert_int_equal(r.glass, GW_EXEMPT_COUNT);
}

static void categories_exempt(void **state)
{
    (void)state;
    struct gw_exemption_case in = glass_unknown();
    in.category = GW_SDC_A;
    assert_int_equal(exempt(&in).chapter, GW_EXEMPT_CATEGORY_A);
    in.category = GW_SDC_D;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_A].applies, GW_NO);
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].applies, GW_NO);
    in.category = GW_SDC_B;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].applies, GW_UNSAID);
    in.parapet = GW_NO;
    in.importance = 1.5;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].applies, GW_NO);
    assert_string_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].condition, "I_p is 1");
    in.importance = 1;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].applies, GW_YES);
    assert_int_equal(exempt(&in).chapter, GW_EXEMPT_CATEGORY_B);
    in.parapet = GW_YES;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].applies, GW_NO);
}

static void tempered_glass_low_down(void **state)
{
    (void)state;
    struct gw_exemption_case in = glass_unknown();
    in.treatment = GW_TEMPERED, in.monolithic = GW_YES, in.risk = GW_RISK_III, in.height_above_walk = 10 * FT;
    struct gw_exemptions r = exempt(&in);
    assert_int_equal(r.of[GW_EXEMPT_TEMPERED].applies, GW_YES);
    assert_int_equal(r.glass, GW_EXEMPT_TEMPERED);
    assert_null(r.of[GW_EXEMPT_TEMPERED].condition);
    assert_int_equal(r.of[GW_EXEMPT_LAMINATED].applies, GW_NO);
    in.height_above_walk = 10.01 * FT;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_TEMPERED].applies, GW_NO);
    in.height_above_walk = 8 * FT, in.risk = GW_RISK_IV;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_TEMPERED].applies, GW_NO);
    in.risk = GW_RISK_II, in.monolithic = GW_UNSAID;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_TEMPERED].applies, GW_UNSAID);
    in.monolithic = GW_YES, in.treatment = GW_HEAT_STRENGTHENED;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_TEMPERED].applies, GW_NO);
}

static void anchored_laminated_glass(void **state)
{
    (void)state;
    struct gw_exemption_case in = glass_unknown(), other;
    in.treatment = GW_ANNEALED, in.monolithic = GW_NO, in.single_thickness = GW_YES, in.interlayer = 0.030 * IN;
    in.captured = GW_YES, in.bead = 0.5 * IN;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_LAMINATED].applies, GW_YES);
    other = in, other.interlayer = 0.015 * IN;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_NO);
    other = in, other.bead = 0.375 * IN;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_NO);
    other.other_anchorage = GW_YES;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_YES);
    other = in, other.captured = GW_NO;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_NO);
    other = in, other.treatment = GW_TEMPERED;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_NO);
    other = in, other.single_thickness = GW_UNSAID;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_UNSAID);
    other = in, other.clearance_passes = GW_YES;
    struct gw_exemptions r = exempt(&other);
    assert_int_equal(r.of[GW_EXEMPT_CLEARANCE].applies, GW_YES);
    assert_int_equal(r.glass, GW_EXEMPT_CLEARANCE);
    other.edition = GW_EDITION_UNSET;
    struct gw_engine engine = engine_new();
    assert_int_equal(gw_seismic_exemptions(&r, &other, &engine), GW_MISSING);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nothing_known_exempts_nothing),
        cmocka_unit_test(categories_exempt),
        cmocka_unit_test(tempered_glass_low_down),
        cmocka_unit_test(anchored_laminated_glass),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
