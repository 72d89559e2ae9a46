/* Lites on three edges, two and one: the series of the three-edge plate, the formulas, limits, refusals. */
#include "support.h"

#include "galeward/support.h"

static struct gw_three_edge_point at(double ratio, double nu, double x, double y)
{
    struct gw_three_edge_point p;
    gw_three_edge_at(&p, ratio, nu, x, y, GW_THREE_EDGE_TERMS);
    return p;
}

static const double RATIOS[] = {0.5, 0.73, 1, 1.37, 2, 4, 9};
static const double POISSON[] = {0, 0.22, 0.3, 0.45};
#define EACH(i, list)                                                                                                  \
    size_t i = 0;                                                                                                      \
    i < sizeof(list) / sizeof *(list);                                                                                 \
    i++

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

/* Cases --------------------------------------------------------------------------------------------------------------
 */

static struct gw_support_case lite(int edges, double span, double breadth, double thickness, double pressure)
{
    return (struct gw_support_case){.edges = edges,
                                    .span = span,
                                    .breadth = breadth,
                                    .thickness = thickness,
                                    .stress_thickness = GW_ABSENT,
                                    .pressure = pressure,
                                    .elastic_modulus = GW_ABSENT,
                                    .poissons_ratio = GW_ABSENT,
                                    .edge_allowable = GW_ABSENT,
                                    .surface_allowable = GW_ABSENT};
}

static struct gw_support_result solve(const struct gw_support_case *in)
{
    struct gw_engine engine;
    struct gw_support_result out;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    enum gw_status status = gw_support_solve(&out, in, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

static void results_are_linear(void **state)
{
    (void)state;
    for (int edges = 1; edges <= 3; edges++) {
        struct gw_support_case one = lite(edges, 0.93, 1.37, 0.01189, 217), two = one;
        two.pressure *= 2.7;
        struct gw_support_result a = solve(&one), b = solve(&two);
        assert_near(b.deflection / a.deflection, 2.7, 1e-12);
        assert_near(b.stress_edge / a.stress_edge, 2.7, 1e-12);
        assert_near(b.stress_surface / a.stress_surface, 2.7, 1e-12);
        if (edges > 1) assert_near(b.pullout / a.pullout, 2.7 * 2.7, 1e-12);
        one.pressure = 0;
        assert_near(solve(&one).deflection, 0, 0);
    }
}

/* All lengths by f, pressure and modulus by g: deflection by f, stress by g. */
static void units_do_not_matter(void **state)
{
    (void)state;
    const double f = 39.3700787, g = 1 / 6894.757293;
    for (int edges = 1; edges <= 3; edges++) {
        struct gw_support_case si = lite(edges, 0.93, 1.37, 0.01189, 217), us = si;
        si.elastic_modulus = 71.7e9;
        us.elastic_modulus = 71.7e9 * g;
        us.span *= f, us.breadth *= f, us.thickness *= f, us.pressure *= g;
        struct gw_support_result a = solve(&si), b = solve(&us);
        assert_near(b.deflection / a.deflection, f, 1e-10 * f);
        assert_near(b.stress_edge / a.stress_edge, g, 1e-10 * g);
    }
}

static void beams_equal_the_closed_forms(void **state)
{
    (void)state;
    const double q = 731, l = 0.93, t = 0.00902, e = 71.7e9, inertia = t * t * t / 12, modulus = t * t / 6;
    struct gw_support_case two = lite(2, l, 2.2, t, q), one = lite(1, 0.5, GW_ABSENT, t, q);
    struct gw_support_result beam = solve(&two), cantilever = solve(&one);
    assert_near(beam.deflection, 5 * q * pow(l, 4) / (384 * e * inertia), 1e-14);
    assert_near(beam.stress_edge, q * l * l / 8 / modulus, 1e-5);
    assert_near(beam.stress_surface, beam.stress_edge, 0);
    assert_near(beam.deflection_cylindrical, beam.deflection * (1 - 0.22 * 0.22), 1e-15);
    assert_near(beam.stress_edge_bound, 1.12 * beam.stress_edge, 1e-5);
    assert_near(cantilever.deflection, q * pow(0.5, 4) / (8 * e * inertia), 1e-14);
    assert_near(cantilever.stress_edge, q * 0.5 * 0.5 / 2 / modulus, 1e-5);
    assert_true(isnan(cantilever.pullout));
    assert_true(isnan(cantilever.stress_edge_bound));
    two.breadth = 0.9; /* narrower than the span */
    assert_true(isnan(solve(&two).deflection_cylindrical));
    two.poissons_ratio = 0.3; /* beyond the range of the bound */
    assert_true(isnan(solve(&two).stress_edge_bound));
}

/* The bound covers what small-deflection theory alone adds at the edge of a wide strip. */
static void bound_covers_a_wide_strip(void **state)
{
    (void)state;
    struct gw_three_edge wide;
    struct gw_support_case two = lite(2, 1.1, 2.2, 0.00902, 311);
    struct gw_support_result out = solve(&two);
    gw_three_edge(&wide, 50, 0.22);
    double plate = wide.beta * 311 * pow(1.1 / 0.00902, 2);
    assert_true(plate > out.stress_edge * 1.05);
    assert_true(plate < out.stress_edge_bound);
}

static void laminates_take_two_thicknesses(void **state)
{
    (void)state;
    for (int edges = 1; edges <= 3; edges++) {
        struct gw_support_case plain = lite(edges, 0.93, 1.37, 0.0101, 217), both = plain;
        both.stress_thickness = 0.0117;
        struct gw_support_result a = solve(&plain), b = solve(&both);
        assert_near(b.deflection, a.deflection, 0);
        assert_near(b.stress_edge / a.stress_edge, pow(0.0101 / 0.0117, 2), 1e-12);
        assert_near(b.stress_surface / a.stress_surface, pow(0.0101 / 0.0117, 2), 1e-12);
    }
}

static void three_edges_take_the_series(void **state)
{
    (void)state;
    struct gw_three_edge plate;
    struct gw_support_case in = lite(3, 1.1, 1.3, 0.01189, 811);
    struct gw_support_result out = solve(&in);
    gw_three_edge(&plate, 1.1 / 1.3, 0.22);
    assert_near(out.deflection, plate.alpha * 811 * pow(1.3, 4) / (71.7e9 * pow(0.01189, 3)), 1e-14);
    assert_near(out.stress_edge, plate.beta * 811 * pow(1.3 / 0.01189, 2), 1e-5);
    assert_near(out.surface_place[0], 0.65, 1e-12);
    assert_near(out.surface_place[1], 1.1, 1e-12);
}

/* At the limit pressure the governing stress is its allowable; where the method ends, one step more is refused. */
static void limit_pressures_are_reached(void **state)
{
    (void)state;
    for (int edges = 1; edges <= 3; edges++) {
        struct gw_support_case in = lite(edges, 0.61, 0.83, 0.00902, GW_ABSENT);
        in.edge_allowable = 9.1e6;
        in.surface_allowable = 23.3e6;
        struct gw_support_result limit = solve(&in);
        assert_string_equal(limit.governing, "edge");
        assert_true(isnan(limit.deflection));
        assert_true(isnan(limit.utilization));
        in.pressure = limit.limit_pressure;
        struct gw_support_result there = solve(&in);
        assert_near(there.stress_edge, 9.1e6, 1e-2);
        assert_near(there.utilization, 1, 1e-9);
        if (edges > 1) assert_near(limit.limit_pressure_bound, limit.limit_pressure / 1.12, 1e-6);

        in.surface_allowable = 8e6;
        in.pressure = GW_ABSENT;
        limit = solve(&in);
        assert_string_equal(limit.governing, "surface");
        in.pressure = limit.limit_pressure;
        assert_near(solve(&in).stress_surface, 8e6, 1e-2);
    }
}

static void refuse(struct gw_support_case in, enum gw_status status, const char *key, const char *names)
{
    struct gw_engine engine;
    struct gw_support_result out;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    assert_int_equal(gw_support_solve(&out, &in, &engine), status);
    assert_string_equal(engine.fault.key, key);
    if (!strstr(told(&engine.fault), names)) print_error("%s\n", told(&engine.fault));
    assert_non_null(strstr(told(&engine.fault), names));
}

static void the_method_ends_where_it_says(void **state)
{
    (void)state;
    const double limits[] = {0.1 * 1.83, 0.05 * 1.83, 3 * 0.00292};
    const char *const names[] = {" 10 % of the span", " 5 % of the span", "3 thicknesses"};
    for (int edges = 1; edges <= 3; edges++) {
        struct gw_support_case in = lite(edges, 1.83, 1.91, 0.00292, GW_ABSENT);
        in.edge_allowable = 1e9;
        in.surface_allowable = 1e9;
        struct gw_support_result limit = solve(&in);
        assert_string_equal(limit.governing, "method");
        assert_int_equal(limit.n_notes, 2);
        in.pressure = limit.limit_pressure;
        assert_near(solve(&in).deflection, limits[edges - 1], 1e-9);
        in.pressure *= 1.0001;
        refuse(in, GW_OUTSIDE_METHOD, "pressure", names[edges - 1]);
    }
}

static void wrong_cases_are_refused(void **state)
{
    (void)state;
    struct gw_support_case half = lite(3, 1, 1, 0.01, 100), poisson = half, bare = half, laminate = half;
    half.edge_allowable = 1e6;
    poisson.poissons_ratio = 0.5;
    bare.pressure = GW_ABSENT;
    laminate.stress_thickness = 0;
    refuse(half, GW_MISSING, "edge_allowable", "both");
    refuse(poisson, GW_BAD_VALUE, "poissons_ratio", "0.5");
    refuse(bare, GW_MISSING, "pressure", "needed");
    refuse(laminate, GW_BAD_VALUE, "stress_thickness", "positive");
    refuse(lite(3, 0.49, 1, 0.01, 100), GW_OUTSIDE_METHOD, "span", "50 %");
    refuse(lite(3, 1, GW_ABSENT, 0.01, 100), GW_MISSING, "breadth", "needed");
    refuse(lite(2, 1, -1, 0.01, 100), GW_BAD_VALUE, "breadth", "positive");
    refuse(lite(4, 1, 1, 0.01, 100), GW_OUTSIDE_METHOD, "edges", "plate");
    refuse(lite(0, 1, 1, 0.01, 100), GW_BAD_VALUE, "edges", "1, 2 or 3");
    refuse(lite(2, GW_ABSENT, 1, 0.01, 100), GW_MISSING, "span", "needed");
    refuse(lite(2, 1, 1, 0, 100), GW_BAD_VALUE, "thickness", "positive");
    refuse(lite(2, 1, 1, 0.01, -1), GW_BAD_VALUE, "pressure", "magnitude");
    refuse(lite(1, 1, 1, 0.01, INFINITY), GW_BAD_VALUE, "pressure", "magnitude");
    solve(&(struct gw_support_case){3, 0.5, 1, 0.01, 0.01, 100, 70e9, 0.22, GW_ABSENT, GW_ABSENT});
}

static void edges_draw_in(void **state)
{
    (void)state;
    /* A parabola of sag w: its length exceeds the chord by 8 w^2/(3 L), to the fourth order in w/L. */
    const double w = 0.021, l = 1.7, s = 4 * w / l;
    double length = l / 2 * (sqrt(1 + s * s) + asinh(s) / s);
    assert_near(gw_edge_pullout(w, l), (length - l) / 2, 1e-3 * gw_edge_pullout(w, l));
    assert_near(gw_edge_pullout(2 * w, l), 4 * gw_edge_pullout(w, l), 1e-15);
}

/* Allowable stresses -------------------------------------------------------------------------------------------------
 */

static enum gw_status edge(double *out, struct gw_engine *engine, enum gw_treatment treatment,
                           enum gw_edge_finish finish, double duration, double probability)
{
    gw_engine_init(engine, gw_tables_standard(), NULL);
    return gw_edge_allowable(out, treatment, finish, duration, probability, engine);
}

static const double DAY = 86400;

static void edges_of_the_table(void **state)
{
    (void)state;
    static const double want[3][3] = {{16.6e6, 18.3e6, 20e6}, {0, 36.5e6, 36.5e6}, {0, 73e6, 73e6}};
    static const double surface[3] = {23.3e6, 46.6e6, 93.1e6};
    struct gw_engine engine;
    double got;
    for (int t = 0; t < 3; t++) {
        enum gw_treatment treatment = (enum gw_treatment)(GW_ANNEALED + t);
        for (int f = 0; f < 3; f++) {
            enum gw_status status =
                edge(&got, &engine, treatment, (enum gw_edge_finish)(GW_CLEAN_CUT + f), GW_ABSENT, GW_ABSENT);
            if (want[t][f] > 0) {
                assert_int_equal(status, GW_OK);
                assert_near(got, want[t][f], 1e-3);
                assert_int_equal(gw_used_weakest(&engine.used), GW_MEMORY);
            } else {
                assert_int_equal(status, GW_OUTSIDE_METHOD);
                assert_string_equal(engine.fault.key, "edge_finish");
            }
        }
        assert_int_equal(gw_surface_allowable(&got, treatment, GW_ABSENT, 0.008, &engine), GW_OK);
        assert_near(got, surface[t], 1e-3);
    }
}

static void allowables_fall_with_duration(void **state)
{
    (void)state;
    struct gw_engine engine;
    double got;
    assert_int_equal(edge(&got, &engine, GW_ANNEALED, GW_SEAMED, 1, GW_ABSENT), GW_OK);
    assert_near(got, 18.3e6, 1e-3); /* not more for less than 3 s */
    assert_int_equal(edge(&got, &engine, GW_ANNEALED, GW_SEAMED, 30 * DAY, GW_ABSENT), GW_OK);
    assert_near(got, 18.3e6 * pow(3 / (30 * DAY), 1.0 / 16), 1e-3);
    assert_int_equal(edge(&got, &engine, GW_HEAT_STRENGTHENED, GW_POLISHED, 4, GW_ABSENT), GW_OK);
    assert_near(got, 36.5e6 * 1.3 / 2, 1e-3);
    assert_int_equal(edge(&got, &engine, GW_TEMPERED, GW_POLISHED, 30 * DAY, GW_ABSENT), GW_OK);
    assert_near(got, 73e6 * 3 / 4, 1e-3);
    assert_int_equal(gw_surface_allowable(&got, GW_TEMPERED, 60, GW_ABSENT, &engine), GW_OK);
    assert_near(got, 93.1e6 * 3 / 4, 1e-3);
    assert_int_equal(edge(&got, &engine, GW_ANNEALED, GW_SEAMED, 400 * DAY, GW_ABSENT), GW_OK);
}

static void allowables_refused(void **state)
{
    (void)state;
    struct gw_engine engine;
    double got = -1;
    const struct {
        enum gw_treatment treatment;
        enum gw_edge_finish finish;
        double duration, probability;
        enum gw_status status;
        const char *key;
    } cases[] = {
        {GW_TREATMENT_UNSET, GW_SEAMED, 3, 0.008, GW_MISSING, "treatment"},
        {GW_ANNEALED, GW_EDGE_FINISH_UNSET, 3, 0.008, GW_MISSING, "edge_finish"},
        {GW_ANNEALED, GW_SEAMED, 0, 0.008, GW_BAD_VALUE, "duration"},
        {GW_ANNEALED, GW_SEAMED, 3, 0.001, GW_OUTSIDE_METHOD, "probability"},
        {GW_TEMPERED, GW_SEAMED, 31 * DAY, 0.008, GW_OUTSIDE_METHOD, "duration"},
        {GW_HEAT_STRENGTHENED, GW_CLEAN_CUT, 3, 0.008, GW_OUTSIDE_METHOD, "edge_finish"},
    };
    for (EACH(i, cases)) {
        assert_int_equal(
            edge(&got, &engine, cases[i].treatment, cases[i].finish, cases[i].duration, cases[i].probability),
            cases[i].status);
        assert_string_equal(engine.fault.key, cases[i].key);
        assert_non_null(engine.fault.format);
        assert_near(got, -1, 0);
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
        cmocka_unit_test(results_are_linear),
        cmocka_unit_test(units_do_not_matter),
        cmocka_unit_test(beams_equal_the_closed_forms),
        cmocka_unit_test(bound_covers_a_wide_strip),
        cmocka_unit_test(laminates_take_two_thicknesses),
        cmocka_unit_test(three_edges_take_the_series),
        cmocka_unit_test(limit_pressures_are_reached),
        cmocka_unit_test(the_method_ends_where_it_says),
        cmocka_unit_test(wrong_cases_are_refused),
        cmocka_unit_test(edges_draw_in),
        cmocka_unit_test(edges_of_the_table),
        cmocka_unit_test(allowables_fall_with_duration),
        cmocka_unit_test(allowables_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
