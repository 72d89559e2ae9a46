/* Lites on three edges, two and one: formulas, limits, refusals. */
#include "three_edges_support.h"

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

int main(void)
{
    const struct CMUnitTest tests[] = {
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
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
