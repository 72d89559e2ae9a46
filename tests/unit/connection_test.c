/* Ends of horizontals: groups by hand, splines, rails. */
#include "fastener_support.h"

static const struct gw_fastener_place FOUR[] = {{0.02, 0.03}, {0.06, 0.03}, {0.02, -0.01}, {0.06, -0.01}};

static struct gw_connection_case block(double wind, double dead, double x, double y)
{
    return (struct gw_connection_case){.kind = GW_SHEAR_BLOCK,
                                       .wind = wind,
                                       .dead = dead,
                                       .load = {x, y},
                                       .fasteners = FOUR,
                                       .n_fasteners = 4,
                                       .diameter = GW_ABSENT,
                                       .allowable = GW_ABSENT,
                                       .tested = GW_ABSENT,
                                       .safety_factor = GW_ABSENT};
}

static struct gw_connection_result connection_of(const struct gw_connection_case *in)
{
    struct gw_engine engine = start();
    struct gw_connection_result out;
    assert_int_equal(gw_connection(&out, in, &engine), GW_OK);
    return out;
}

static void groups_by_hand(void **state)
{
    (void)state;
    struct gw_connection_case in = block(800, 300, 0.04, 0.01); /* through the middle */
    struct gw_connection_result out = connection_of(&in);
    assert_near(out.fastener, hypot(800, 300) / 4, 1e-9);
    assert_near(out.resultant, hypot(800, 300), 1e-9);
    in = block(0, 300, -0.03, 0.01); /* 70 mm outside: 21 Nm on four at 28.28 mm */
    out = connection_of(&in);
    const double turn = 21 / (4 * 0.0008);
    assert_near(out.moment, 21, 1e-9);
    assert_near(out.fastener, hypot(turn * 0.02, turn * 0.02 + 75), 1e-9);
    in = block(1600, 600, -0.03, 0.05);
    const struct gw_connection_case half = block(800, 300, -0.03, 0.05), mirrored = block(1600, 600, -0.03, -0.03);
    out = connection_of(&in);
    assert_near(out.fastener, 2 * connection_of(&half).fastener, 1e-9);
    assert_near(out.fastener, connection_of(&mirrored).fastener, 1e-9); /* wind acts both ways */
}

static void a_spline_is_no_shear_block(void **state)
{
    (void)state;
    struct gw_engine engine = start();
    struct gw_connection_result out;
    struct gw_connection_case in = block(800, 300, 0.04, 0.01);
    in.kind = GW_SCREW_SPLINE;
    assert_int_equal(gw_connection(&out, &in, &engine), GW_MISSING);
    assert_string_equal(engine.fault.key, "spline_tested");
    in.allowable = 900;
    assert_int_equal(gw_connection(&out, &in, &engine), GW_BAD_VALUE);
    in.allowable = GW_ABSENT;
    in.tested = 2700;
    out = connection_of(&in);
    assert_near(out.allowable, 900, 1e-9);
    in.kind = GW_RAIL_END_UNSET;
    assert_int_equal(gw_connection(&out, &in, &engine), GW_MISSING);
}

static struct gw_rail_result rail_of(double weight, double span, double offset)
{
    struct gw_engine engine = start();
    struct gw_rail_result out;
    const struct gw_rail_case in = {weight, span, offset, 69.6e9, 4.9e-7, 26.2e9, 3.3e-7, 0.0254};
    assert_int_equal(gw_rail_dead_load(&out, &in, &engine), GW_OK);
    return out;
}

static void horizontals_by_handbook(void **state)
{
    (void)state;
    const double w = 871, l = 1.527, ei = 69.6e9 * 4.9e-7;
    assert_near(rail_of(w, l, l / 2).deflection, w * l * l * l / (48 * ei), 1e-12); /* both blocks in the middle */
    assert_near(rail_of(w, l, l / 2).moment, w * l / 4, 1e-9);
    assert_near(rail_of(w, l, l / 4).deflection, 11 * (w / 2) * l * l * l / (384 * ei), 1e-12);
    assert_near(rail_of(w, l, GW_ABSENT).deflection, rail_of(w, l, l / 4).deflection, 0);
    assert_near(rail_of(2 * w, l, 0.2).twist, 2 * rail_of(w, l, 0.2).twist, 1e-15);
    assert_near(rail_of(w, l, 0.3).twist, w / 2 * 0.0254 * 0.3 / (26.2e9 * 3.3e-7), 1e-15);
    assert_near(rail_of(w, 0.9, 0.2).deflection_limit, 0.9 / 360, 1e-15);
    assert_near(rail_of(w, 2.9, 0.5).deflection_limit, IN / 8, 1e-15);
    assert_int_equal(rail_of(w, 2.9, 0.5).n_notes, 0);
    assert_int_equal(rail_of(w, 2.9, 0.3).n_notes, 1); /* nearer than an eighth */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(groups_by_hand),
        cmocka_unit_test(a_spline_is_no_shear_block),
        cmocka_unit_test(horizontals_by_handbook),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
