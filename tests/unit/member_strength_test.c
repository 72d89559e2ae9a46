/* What the reference cases of members do not reach: what is not known stays unknown. */
#include "galeward/member_strength.h"
#include "galeward/share.h"
#include "support.h"

static const double KSI = 6894757.293168, INCH4 = 4.162314256e-7;

/* A part whose strength is not known leaves the whole unknown; the other one does not stand in for it. */
static void an_unknown_part_is_not_left_out(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_share_limit limit;
    struct gw_share_strength parts[] = {{10100 * KSI, 8 * INCH4, GW_ABSENT}, {29000 * KSI, 2.5 * INCH4, 3000}};
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    assert_int_equal(gw_share_allowable(&limit, parts, 2, &engine), GW_OK);
    assert_false(gw_given(limit.moment));
    assert_near(limit.equivalent_inertia, (8 + 29.0 / 10.1 * 2.5) * INCH4, 1e-15);
    parts[0].allowable = 1e9;
    assert_int_equal(gw_share_allowable(&limit, parts, 2, &engine), GW_OK);
    assert_int_equal(limit.governs, 1);
    parts[1].inertia = 0;
    assert_int_equal(gw_share_allowable(&limit, parts, 2, &engine), GW_BAD_VALUE);
}

/* Stated properties say nothing of the other axis, of shear, of the twist of steel. */
static void stated_properties_say_no_more(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_member_strength m;
    struct gw_member_section in = {.metal = GW_METAL_A36,
                                   .unbraced_length = GW_ABSENT,
                                   .allowable_moment = 4000,
                                   .inertia_x = 8 * INCH4,
                                   .inertia_y = GW_ABSENT,
                                   .torsion = GW_ABSENT};
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    assert_int_equal(gw_member_strength(&m, &in, &engine), GW_OK);
    assert_near(m.stiffness, 29000 * KSI * 8 * INCH4, 1e-3);
    assert_false(gw_given(m.moment_y) || gw_given(m.shear) || gw_given(m.shear_y) || gw_given(m.shear_modulus));
    in.metal = GW_METAL_UNSET;
    assert_int_equal(gw_member_strength(&m, &in, &engine), GW_MISSING);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_unknown_part_is_not_left_out),
        cmocka_unit_test(stated_properties_say_no_more),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
