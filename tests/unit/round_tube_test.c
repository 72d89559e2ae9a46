/* Tubes with round corners. */
#include "support.h"

#include "galeward/section.h"

static const double PI = 3.14159265358979323846;

static struct gw_engine engine;

#define near_to(got, want, relative) assert_near(got, want, (relative)*fabs(want))

enum { ARC = 200 };

/* The outline of a rectangle with its center at the origin whose corners are quarters of ellipses. */
static void rounded(struct gw_section_point points[4 * ARC], double width, double depth, double a, double b)
{
    for (int i = 0; i < 4 * ARC; i++) {
        const int quarter = i / ARC;
        const double angle = PI / 2 * (quarter + (double)(i % ARC) / (ARC - 1));
        const double x = quarter == 0 || quarter == 3 ? 1 : -1, y = quarter < 2 ? 1 : -1;
        points[i] =
            (struct gw_section_point){x * (width / 2 - a) + a * cos(angle), y * (depth / 2 - b) + b * sin(angle)};
    }
}

/* Round corners against the same outline as a polygon, walls alike and not. */
static void round_corners(void **state)
{
    (void)state;
    static struct gw_section_point outside[4 * ARC], inside[4 * ARC];
    const struct gw_tube tubes[] = {{0.05, 0.15, 0.006, 0.006, 0.012}, {0.08, 0.2, 0.009, 0.005, 0.018}};
    for (size_t i = 0; i < 2; i++) {
        const struct gw_tube *t = &tubes[i];
        const struct gw_polygon outline = {outside, 4 * ARC}, hole = {inside, 4 * ARC};
        rounded(outside, t->width, t->depth, t->corner, t->corner);
        rounded(inside, t->width - 2 * t->web, t->depth - 2 * t->flange, t->corner - t->web, t->corner - t->flange);
        struct gw_section want, got;
        gw_engine_init(&engine, gw_tables_standard(), NULL);
        assert_int_equal(gw_section_polygon(&want, &outline, &hole, 1, &engine), GW_OK);
        assert_int_equal(gw_section_tube(&got, t, &engine), GW_OK);
        near_to(got.area, want.area, 1e-5);
        near_to(got.inertia_x, want.inertia_x, 1e-5);
        near_to(got.inertia_y, want.inertia_y, 1e-5);
        near_to(got.plastic_x, want.plastic_x, 1e-5);
        near_to(got.plastic_y, want.plastic_y, 1e-5);
        near_to(got.modulus_top, want.modulus_top, 1e-5);
    }
    struct gw_section out;
    struct gw_tube t = {0.05, 0.15, 0.006, 0.006, 0.0059};
    assert_int_equal(gw_section_tube(&out, &t, &engine), GW_BAD_VALUE);
    t.corner = 0.0251;
    assert_int_equal(gw_section_tube(&out, &t, &engine), GW_OUTSIDE_METHOD);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(round_corners)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
