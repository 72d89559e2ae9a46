/* Bending strength of steel tubes. */
#include "bending_support.h"

static void steel_tubes(void **state)
{
    (void)state;
    const struct gw_tube nominal = inches(2, 4, 0.25, 0.25), design = inches(2, 4, 0.2325, 0.2325);
    const struct gw_bending in = tube_case(GW_METAL_A500_C, &nominal, 1), thin = tube_case(GW_METAL_A500_C, &design, 1);
    const struct gw_bending_result out = strength(&in);
    /* Z of sharp corners less four of 2 t outside and t inside: 7/6 t^3 + 3 (1 - pi/4) t^2 (2 - 2 t) each, t in inches
     */
    const double t = 0.2325, corner = 7.0 / 6 * t * t * t + 3 * (1 - 0.7853981633974483) * t * t * (2 - 2 * t);
    near_to(out.allowable, (thin.plastic - 4 * corner * IN * IN * IN) * 50 * KSI / 1.67, 1e-9);
    near_to(out.shear_allowable, 0.6 * 50 * KSI * 2 * (4 - 3 * t) * t * IN * IN / 1.67, 1e-9);
    assert_string_equal(out.governing, "yielding");
    assert_true(isnan(out.rupture));
    double last = INFINITY;
    for (double length = 1; length < 30; length += 1.3) {
        const struct gw_bending longer = tube_case(GW_METAL_A500_C, &nominal, length);
        const double now = strength(&longer).allowable;
        assert_true(now <= last);
        last = now;
    }
    assert_true(last < 0.95 * out.allowable);
}

/* Walls on both sides of the limits of compact tubes: 1.12 and 2.42 times sqrt(E/Fy), 31.8 and 68.7 for A36. */
static void steel_compact_limits(void **state)
{
    (void)state;
    const double root = sqrt(29000 / 36.0), t = 0.1;
    for (int side = -1; side <= 1; side += 2) {
        const struct gw_tube flange = inches(2 * t + (1.12 * root + 0.01 * side) * t, 4, t, t),
                             web = inches(2, 2 * t + (2.42 * root + 0.01 * side) * t, t, t);
        const struct gw_bending a = tube_case(GW_METAL_A36, &flange, 1), b = tube_case(GW_METAL_A36, &web, 1);
        if (side < 0) strength(&a), strength(&b);
        else refuse(&a, GW_OUTSIDE_METHOD, "tube"), refuse(&b, GW_OUTSIDE_METHOD, "tube");
    }
}

static void steel_refused(void **state)
{
    (void)state;
    struct gw_bending in = stocky(GW_METAL_A36, 5e-5, 4e-5);
    struct gw_bending_result out = strength(&in);
    near_to(out.allowable, 36 * KSI * 5e-5 / 1.67, 1e-12);
    in.compact = false;
    assert_true(!gw_given(strength(&in).allowable));
    in.compact = true;
    in.unbraced_length = 1;
    assert_true(!gw_given(strength(&in).allowable));
    in.welded = true, refuse(&in, GW_BAD_VALUE, "welded"), in.welded = false;
    in.metal = GW_METAL_STAINLESS_304, refuse(&in, GW_OUTSIDE_METHOD, "alloy");
    in = stocky(GW_METAL_A36, 8e-5, 4e-5); /* Z of twice S: not more than 1.5 S */
    near_to(strength(&in).allowable, 1.5 * 36 * KSI * 4e-5 / 1.67, 1e-12);
    const struct gw_tube slender = inches(4, 10, 0.1, 0.1), thick = inches(0.5, 12, 0.25, 0.24),
                         narrow = inches(0.5, 4, 0.11, 0.11);
    in = tube_case(GW_METAL_A36, &slender, 1), refuse(&in, GW_OUTSIDE_METHOD, "tube");
    in = tube_case(GW_METAL_A36, &thick, 1), refuse(&in, GW_OUTSIDE_METHOD, "tube");  /* no room for its corners */
    in = tube_case(GW_METAL_A36, &narrow, 1), refuse(&in, GW_OUTSIDE_METHOD, "tube"); /* walls too thick for J */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(steel_tubes),
        cmocka_unit_test(steel_compact_limits),
        cmocka_unit_test(steel_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
