/* The series of the plate on three edges: its conditions, equation, balance, limits. */
#include "three_edges_support.h"

static struct gw_three_edge_point at(double ratio, double nu, double x, double y)
{
    struct gw_three_edge_point p;
    gw_three_edge_at(&p, ratio, nu, x, y, GW_THREE_EDGE_TERMS);
    return p;
}

static const double RATIOS[] = {0.5, 0.73, 1, 1.37, 2, 4, 9};

static const double POISSON[] = {0, 0.22, 0.3, 0.45};

/* What each edge must not have. The moment's series falls with 1/m^3, the reaction's with 1/m^2. */
static void boundary_residuals(void **state)
{
    (void)state;
    for (EACH(i, RATIOS))
        for (EACH(k, POISSON))
            for (double u = 0.07; u < 1; u += 0.31) {
                const double a = RATIOS[i], nu = POISSON[k];
                struct gw_three_edge_point held = at(a, nu, u, 0), side = at(a, nu, 0, u * a), open = at(a, nu, u, a);
                assert_near(held.deflection, 0, 1e-15);
                assert_near(held.stress_x, 0, 1e-14);
                assert_near(held.stress_y, 0, 1e-14);
                assert_near(side.deflection, 0, 1e-15);
                assert_near(side.stress_x, 0, 1e-14);
                assert_near(open.stress_y, 0, 1e-14);
                assert_near(open.reaction_y, 0, 1e-13);
                assert_true(fabs(open.stress_x) > 0.05);
                assert_true(fabs(held.reaction_y) > 0.1);
            }
}

/* lap^2 w = 12 (1 - nu^2) in these units, by differences of the deflection alone. */
static double bilaplacian(double ratio, double nu, double x, double y, double h)
{
    static const struct {
        int i, j;
        double weight;
    } stencil[] = {{0, 0, 20}, {1, 0, -8},  {-1, 0, -8}, {0, 1, -8}, {0, -1, -8}, {1, 1, 2}, {1, -1, 2},
                   {-1, 1, 2}, {-1, -1, 2}, {2, 0, 1},   {-2, 0, 1}, {0, 2, 1},   {0, -2, 1}};
    double sum = 0;
    for (EACH(k, stencil))
        sum += stencil[k].weight * at(ratio, nu, x + stencil[k].i * h, y + stencil[k].j * h).deflection;
    return sum / pow(h, 4);
}

static void satisfies_the_plate_equation(void **state)
{
    (void)state;
    for (double x = 0.29; x < 0.6; x += 0.13)
        for (double y = 0.31; y < 0.8; y += 0.17) {
            double coarse = bilaplacian(1.1, 0.22, x, y, 0.04), fine = bilaplacian(1.1, 0.22, x, y, 0.02);
            double want = 12 * (1 - 0.22 * 0.22);
            assert_near((4 * fine - coarse) / 3, want, 2e-4 * want);
        }
}

/* The held edges and the four corners carry the load: that of the terms taken, whose share of the uniform one is
 * (8/pi^2) SUM 1/m^2. Simpson's rule, few terms, so that it is exact. */
enum { FEW = 20 };

static double integral(double ratio, double nu, bool side)
{
    enum { PANELS = 4000 };
    const double length = side ? ratio : 1;
    double sum = 0;
    for (int i = 0; i <= PANELS; i++) {
        double u = length * i / PANELS, weight = i == 0 || i == PANELS ? 1 : i % 2 ? 4 : 2;
        struct gw_three_edge_point p;
        gw_three_edge_at(&p, ratio, nu, side ? 0 : u, side ? u : 0, FEW);
        sum += weight * (side ? p.reaction_x : p.reaction_y);
    }
    return sum * length / PANELS / 3;
}

static void supports_carry_the_load(void **state)
{
    (void)state;
    const double ratios[] = {0.5, 1, 2.3}, nu = 0.22, pi = acos(-1.0);
    double share = 0;
    for (int m = 1; m < 2 * FEW; m += 2) share += 8 / (pi * pi * m * m);
    for (EACH(i, ratios)) {
        const double a = ratios[i];
        struct gw_three_edge_point held, open;
        gw_three_edge_at(&held, a, nu, 0, 0, FEW);
        gw_three_edge_at(&open, a, nu, 0, a, FEW);
        double sides = 2 * integral(a, nu, true), corners = 2 * (open.corner - held.corner);
        assert_near(sides + integral(a, nu, false) + corners, share * a, 1e-8);
        assert_true(corners < -0.05 * a); /* they hold the plate down: it is no small part */
    }
}

static void symmetric_about_the_middle(void **state)
{
    (void)state;
    for (double x = 0.03; x < 0.5; x += 0.11) {
        struct gw_three_edge_point left = at(0.87, 0.22, x, 0.41), right = at(0.87, 0.22, 1 - x, 0.41);
        assert_near(left.deflection, right.deflection, 1e-14);
        assert_near(left.stress_x, right.stress_x, 1e-13);
        assert_near(left.stress_y, right.stress_y, 1e-13);
        assert_near(left.stress_xy, -right.stress_xy, 1e-13);
    }
}

/* At the middle of the free edge the signs alternate: the error is below the first term left out. */
static void series_converges(void **state)
{
    (void)state;
    struct gw_three_edge_point best, now;
    gw_three_edge_at(&best, 1.3, 0.22, 0.5, 1.3, 2000);
    double before = INFINITY;
    for (int terms = 5; terms <= 320; terms *= 4) {
        gw_three_edge_at(&now, 1.3, 0.22, 0.5, 1.3, terms);
        double error = fabs(now.stress_x / best.stress_x - 1);
        assert_true(error < before / 30); /* (4)^3 = 64 in the limit */
        before = error;
    }
    now = at(1.3, 0.22, 0.5, 1.3);
    assert_near(now.stress_x, best.stress_x, 1e-7);
    assert_near(now.deflection, best.deflection, 1e-11);
    gw_three_edge_at(&best, 0.5, 0.22, 0, 0, 4000); /* the corner's twist, where no sign alternates */
    assert_near(at(0.5, 0.22, 0, 0).stress_xy, best.stress_xy, 2e-5);
}

/* A long plate: nothing overflows, the free end no longer knows of the held one, the middle is a cylinder. */
static void long_plates_reach_their_limits(void **state)
{
    (void)state;
    struct gw_three_edge ten, more;
    gw_three_edge(&ten, 10, 0.22);
    for (double ratio = 30; ratio < 1e9; ratio *= 1e3) {
        gw_three_edge(&more, ratio, 0.22);
        assert_near(more.alpha, ten.alpha, 1e-12);
        assert_near(more.beta, ten.beta, 1e-10);
        struct gw_three_edge_point middle = at(ratio, 0.22, 0.5, ratio / 2);
        assert_near(middle.deflection, 5.0 / 32 * (1 - 0.22 * 0.22), 1e-11);
        assert_near(middle.stress_x, 0.75, 1e-6);
        assert_near(middle.stress_y, 0.22 * 0.75, 1e-6);
        assert_near(middle.stress_xy, 0, 1e-12);
    }
}

static void largest_stress_is_the_largest(void **state)
{
    (void)state;
    for (EACH(i, RATIOS))
        for (EACH(k, POISSON)) {
            const double a = RATIOS[i], nu = POISSON[k];
            struct gw_three_edge found;
            gw_three_edge(&found, a, nu);
            double largest = 0;
            for (int x = 0; x <= 20; x++)
                for (int y = 0; y <= 60; y++) {
                    struct gw_three_edge_point p;
                    gw_three_edge_at(&p, a, nu, x / 40.0, a * y / 60, 40);
                    double radius = hypot((p.stress_x - p.stress_y) / 2, p.stress_xy);
                    largest = fmax(largest, fabs(p.stress_x + p.stress_y) / 2 + radius);
                }
            assert_true(found.largest >= largest * (1 - 1e-5));
            assert_true(found.largest <= largest * 1.001);
            assert_true(found.largest >= found.beta);
            /* It is the middle of the free edge, over the whole range of the method. */
            assert_near(found.x, 0.5, 1e-12);
            assert_near(found.y, a, 1e-12);
        }
}

static void grows_with_the_ratio(void **state)
{
    (void)state;
    struct gw_three_edge last = {0}, now;
    for (double ratio = 0.5; ratio < 3; ratio += 0.13) {
        gw_three_edge(&now, ratio, 0.22);
        assert_true(now.alpha > last.alpha);
        assert_true(now.beta > last.beta);
        last = now;
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(boundary_residuals),
        cmocka_unit_test(satisfies_the_plate_equation),
        cmocka_unit_test(supports_carry_the_load),
        cmocka_unit_test(symmetric_about_the_middle),
        cmocka_unit_test(series_converges),
        cmocka_unit_test(long_plates_reach_their_limits),
        cmocka_unit_test(largest_stress_is_the_largest),
        cmocka_unit_test(grows_with_the_ratio),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
