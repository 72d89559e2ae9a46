/* Clearance of lites, and bonded lites, by another way. */
#include "seismic_support.h"

/* Clearance ----------------------------------------------------------------------------------------------------------
 */

static struct gw_clearance_result clearance_of(const struct gw_clearance_case *in)
{
    struct gw_engine engine = engine_new();
    struct gw_clearance_result out;
    assert_int_equal(gw_clearance(&out, in, &engine), GW_OK);
    return out;
}

/* The rectangle, turned, stays inside the parallelogram when its four corners do. */
static bool fits(const struct gw_clearance_case *in, double frame_angle, double turn)
{
    for (int corner = 0; corner < 4; corner++) {
        double x = (corner & 1 ? 0.5 : -0.5) * in->lite_width, y = (corner & 2 ? 0.5 : -0.5) * in->lite_height;
        double u = x * cos(turn) + y * sin(turn), v = y * cos(turn) - x * sin(turn);
        if (fabs(v) > in->lite_height / 2 + in->end_gap) return false;
        if (fabs(u - frame_angle * v) > in->lite_width / 2 + in->side_gap) return false;
    }
    return true;
}

static bool fits_somehow(const struct gw_clearance_case *in, double frame_angle)
{
    enum { STEPS = 4000 };
    for (int i = 0; i <= STEPS; i++)
        if (fits(in, frame_angle, frame_angle * i / STEPS)) return true;
    return false;
}

/* Largest drift by trying, with the geometry itself instead of its linear form. */
static double drift_by_trying(const struct gw_clearance_case *in)
{
    double good = 0, bad = 4 * (in->side_gap + in->end_gap * in->lite_height / in->lite_width) / in->lite_height;
    for (int i = 0; i < 30; i++) {
        double middle = (good + bad) / 2;
        if (fits_somehow(in, middle)) good = middle;
        else bad = middle;
    }
    return good * in->lite_height;
}

/* As the gaps shrink beside the lite the formula becomes exact. */
static void clearance_is_where_the_lite_binds(void **state)
{
    (void)state;
    const double shapes[][2] = {{1.5, 1.8}, {1.5, 1.5}, {2.2, 0.9}, {0.8, 2.4}};
    for (EACH(i, shapes)) {
        double worst[2];
        for (int fine = 0; fine < 2; fine++) {
            const double scale = fine ? 0.1 : 1;
            const struct gw_clearance_case in = {.lite_width = shapes[i][0],
                                                 .lite_height = shapes[i][1],
                                                 .side_gap = 0.009 * scale,
                                                 .end_gap = 0.012 * scale,
                                                 .drift_in_lite = GW_ABSENT};
            worst[fine] = fabs(drift_by_trying(&in) / clearance_of(&in).clearance - 1);
        }
        assert_true(worst[0] < 0.05);
        assert_true(worst[1] < 0.006);
        assert_true(worst[1] < worst[0] / 5);
    }
}

static struct gw_clearance_case lite_of_60_by_72(double drift, double importance, enum gw_edition edition)
{
    return (struct gw_clearance_case){.lite_width = 60 * IN,
                                      .lite_height = 72 * IN,
                                      .side_gap = 0.375 * IN,
                                      .end_gap = 0.5 * IN,
                                      .drift_in_lite = drift,
                                      .importance = importance,
                                      .edition = edition};
}

/* The gaps have roles: taking one for the other, or the height for the width, gives another drift. */
static void gaps_and_sides_have_roles(void **state)
{
    (void)state;
    struct gw_clearance_case in = lite_of_60_by_72(GW_ABSENT, GW_ABSENT, GW_EDITION_UNSET), other = in;
    other.side_gap = in.end_gap, other.end_gap = in.side_gap;
    assert_near(clearance_of(&in).clearance, 1.95 * IN, 1e-12);
    assert_near(clearance_of(&other).clearance, 1.90 * IN, 1e-12);
    other = in;
    other.lite_width = in.lite_height, other.lite_height = in.lite_width;
    assert_near(clearance_of(&other).clearance, (0.75 + 60.0 / 72) * IN, 1e-12);
    other.lite_width = other.lite_height;
    assert_near(clearance_of(&other).clearance, 1.75 * IN, 1e-12);
    other.side_gap = 0;
    assert_near(clearance_of(&other).clearance, 1.0 * IN, 1e-12);
}

/* All of 1.56 in goes into the lite: without I_e the clearance of 1.95 in just does, with it it does not. */
static void the_edition_decides(void **state)
{
    (void)state;
    for (EACH(e, EDITIONS)) {
        struct gw_clearance_case in = lite_of_60_by_72(1.56 * IN, 1.5, EDITIONS[e]);
        struct gw_clearance_result r = clearance_of(&in);
        assert_near(r.required_without, 1.95 * IN, 1e-12);
        assert_near(r.required_with_importance, 2.925 * IN, 1e-12);
        assert_int_equal(r.passes_without, GW_YES);
        assert_int_equal(r.passes_with_importance, GW_NO);
        assert_int_equal(r.passes, EDITIONS[e] == GW_ASCE7_10 ? GW_YES : GW_NO);
        assert_near(r.fallout_required, 2.925 * IN, 1e-12);
        assert_true(noted(r.notes, "recalled to differ between editions"));
        in.drift_in_lite = 0.73 * IN;
        assert_int_equal(clearance_of(&in).passes, GW_YES);
        in.drift_in_lite = 1.5601 * IN;
        assert_int_equal(clearance_of(&in).passes_without, GW_NO);
    }
    struct gw_clearance_case in = lite_of_60_by_72(1.56 * IN, 1.5, GW_EDITION_UNSET);
    assert_int_equal(clearance_of(&in).passes, GW_UNSAID);
    in.drift_in_lite = GW_ABSENT;
    assert_int_equal(clearance_of(&in).passes_without, GW_UNSAID);
    assert_false(gw_given(clearance_of(&in).required_without));
}

static void fallout_against_a_test(void **state)
{
    (void)state;
    struct gw_engine engine = engine_new();
    struct gw_fallout_result r;
    assert_int_equal(gw_fallout(&r, 2 * IN, 2.5 * IN, &engine), GW_OK);
    assert_int_equal(r.passes, GW_YES);
    assert_int_equal(gw_fallout(&r, 2 * IN, 2.4999 * IN, &engine), GW_OK);
    assert_int_equal(r.passes, GW_NO);
    assert_int_equal(gw_fallout(&r, 0, 0.49 * IN, &engine), GW_OK); /* half an inch at least */
    assert_int_equal(r.passes, GW_NO);
    assert_int_equal(gw_fallout(&r, 0.1 * IN, GW_ABSENT, &engine), GW_OK);
    assert_near(r.required, 0.5 * IN, 1e-12);
    assert_int_equal(r.passes, GW_UNSAID);
    assert_int_equal(gw_fallout(&r, GW_ABSENT, 1, &engine), GW_MISSING);
    assert_int_equal(gw_fallout(&r, 0.1, -1, &engine), GW_BAD_VALUE);
}

/* Bonded lites -------------------------------------------------------------------------------------------------------
 */

static struct gw_racking_result racking_of(double drift, double width, double height, double thickness)
{
    const struct gw_racking_case in = {drift, width, height, thickness};
    struct gw_engine engine = engine_new();
    struct gw_racking_result out;
    assert_int_equal(gw_silicone_racking(&out, &in, &engine), GW_OK);
    return out;
}

/* Shear energy of the bead, over its stiffness: the square of the slip between frame and lite, summed over the
 * perimeter, for a lite that turns by `turn` and moves by (right, up). */
static double bead_energy(double width, double height, double angle, double turn, double right, double up)
{
    enum { PIECES = 400 };
    double sum = 0;
    for (int side = 0; side < 4; side++)
        for (int i = 0; i < PIECES; i++) {
            double along = (i + 0.5) / PIECES - 0.5, x, y, length;
            if (side < 2) x = along * width, y = (side ? 0.5 : -0.5) * height, length = width / PIECES;
            else x = (side == 2 ? -0.5 : 0.5) * width, y = along * height, length = height / PIECES;
            double slip_x = angle * y - (turn * y + right), slip_y = 0 - (-turn * x + up);
            sum += (slip_x * slip_x + slip_y * slip_y) * length;
        }
    return sum;
}

/* Coordinate by coordinate, each step to the bottom of the parabola through three points. */
static double turn_of_least_energy(double width, double height, double angle)
{
    double at[3] = {0.1 * angle, 0.3 * angle * height, -0.2 * angle * height};
    const double step[3] = {0.3 * angle, 0.2 * angle * height, 0.2 * angle * height};
    for (int round = 0; round < 8; round++)
        for (int k = 0; k < 3; k++) {
            double energy[3], start = at[k];
            for (int i = 0; i < 3; i++) {
                at[k] = start + (i - 1) * step[k];
                energy[i] = bead_energy(width, height, angle, at[0], at[1], at[2]);
            }
            at[k] = start + step[k] * (energy[0] - energy[2]) / (2 * (energy[0] - 2 * energy[1] + energy[2]));
        }
    assert_near(at[1], 0, 1e-6 * angle * height); /* it turns about its middle */
    assert_near(at[2], 0, 1e-6 * angle * height);
    return at[0];
}

static void bonded_lite_turns_by_least_energy(void **state)
{
    (void)state;
    const double shapes[][2] = {{1.5, 1.5}, {1.5, 2.1}, {2.7, 1.1}, {0.6, 3.0}, {1.0, 1.01}};
    for (EACH(i, shapes)) {
        const double width = shapes[i][0], height = shapes[i][1];
        struct gw_racking_result r = racking_of(0.01 * height, width, height, 0.01);
        assert_near(r.frame_angle, 0.01, 1e-15);
        assert_near(r.lite_rotation, turn_of_least_energy(width, height, 0.01), 1e-5 * 0.01);
        double here = bead_energy(width, height, 0.01, r.lite_rotation, 0, 0);
        assert_true(bead_energy(width, height, 0.01, 0, 0, 0) > here);    /* not at rest */
        assert_true(bead_energy(width, height, 0.01, 0.01, 0, 0) > here); /* not with the sides */
    }
}

static void bonded_lite_at_its_limits(void **state)
{
    (void)state;
    struct gw_racking_result square = racking_of(0.02, 1.3, 1.3, 0.008);
    assert_near(square.lite_rotation, square.frame_angle / 2, 1e-15);
    assert_near(square.slip_horizontal, square.slip_vertical, 1e-15);
    /* Head and sill change places with the sides: the two turns add up to the frame's angle. */
    double tall = racking_of(0.018, 1.1, 1.8, 0.01).lite_rotation,
           wide = racking_of(0.011, 1.8, 1.1, 0.01).lite_rotation;
    assert_near(tall + wide, 0.01, 1e-15);
    assert_true(tall > wide); /* a tall lite goes with its sides */
    assert_near(racking_of(0.05, 0.02, 5, 0.01).lite_rotation, 0.01, 1e-5);
    struct gw_racking_result once = racking_of(0.02, 1.1, 1.8, 0.01), twice = racking_of(0.04, 1.1, 1.8, 0.01);
    assert_near(twice.slip_corner, 2 * once.slip_corner, 1e-15);
    assert_near(racking_of(0.02, 1.1, 1.8, 0.02).strain_corner, once.strain_corner / 2, 1e-12);
    assert_near(once.slip_corner, hypot(once.slip_horizontal, once.slip_vertical), 1e-15);
    assert_near(once.extension_corner, sqrt(0.01 * 0.01 + pow(once.slip_corner, 2)) / 0.01 - 1, 1e-12);
    assert_true(once.extension_corner < once.strain_corner);
    assert_near(racking_of(0, 1.1, 1.8, 0.01).strain_corner, 0, 0);
    const struct gw_racking_case large = {0.19, 1.1, 1.8, 0.01};
    struct gw_engine engine = engine_new();
    assert_int_equal(gw_silicone_racking(&once, &large, &engine), GW_OUTSIDE_METHOD);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(clearance_is_where_the_lite_binds),
        cmocka_unit_test(gaps_and_sides_have_roles),
        cmocka_unit_test(the_edition_decides),
        cmocka_unit_test(fallout_against_a_test),
        cmocka_unit_test(bonded_lite_turns_by_least_energy),
        cmocka_unit_test(bonded_lite_at_its_limits),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
