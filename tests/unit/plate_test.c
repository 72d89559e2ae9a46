/* The plate solver: linear limit, symmetry, refinement, order of results, what it refuses. */
#include "support.h"

#include "galeward/plate.h"
#include "tables_data.h"

static struct gw_plate_solution solve(double aspect, double q_star, int terms)
{
    struct gw_plate_solution out;
    void *workspace = malloc(gw_plate_workspace(terms ? terms : GW_PLATE_TERMS_MOST));
    const struct gw_plate_problem in = {aspect, q_star, 0.22, 7, terms, false};
    assert_non_null(workspace);
    assert_true(gw_plate_solve(&out, &in, workspace));
    free(workspace);
    assert_true(out.residual < 1e-8);
    return out;
}

static enum gw_status run(struct gw_plate_result *out, struct gw_engine *engine, const struct gw_plate_case *in)
{
    gw_engine_init(engine, gw_tables_standard(), NULL);
    engine->workspace = malloc(GW_PLATE_WORKSPACE);
    assert_non_null(engine->workspace);
    enum gw_status status = gw_plate(out, in, engine);
    free(engine->workspace);
    return status;
}

static struct gw_plate_case lite(double width, double height, double thickness, double pressure)
{
    return (struct gw_plate_case){width,     height,        thickness,       pressure,      GW_ABSENT,
                                  GW_ABSENT, GW_PLATE_FREE, GW_PLATE_DIRECT, GW_NO_INTEGER, 0};
}

static void workspace_is_large_enough(void **state)
{
    (void)state;
    assert_true(gw_plate_workspace(GW_PLATE_TERMS_MOST) <= GW_PLATE_WORKSPACE);
    assert_true(gw_plate_workspace(GW_PLATE_TERMS_LEAST) < gw_plate_workspace(GW_PLATE_TERMS_MOST));
}

/* Deflection and stress in proportion, J with the seventh power. */
static void small_loads_are_linear(void **state)
{
    (void)state;
    const double aspects[] = {1, 1.7, 3, 5};
    for (size_t i = 0; i < 4; i++) {
        struct gw_plate_solution one = solve(aspects[i], 1e-4, 0), two = solve(aspects[i], 2e-4, 0);
        assert_near(two.deflection / one.deflection, 2, 1e-8);
        assert_near(two.stress_max / one.stress_max, 2, 1e-4);
        assert_near(two.risk / one.risk, 128, 1e-2);
        assert_near(one.stress_x, 0, 1e-12);
        assert_near(one.stress_y, 0, 1e-12);
    }
}

/* Square plate, the double sine series summed here. */
static void square_plate_equals_the_series(void **state)
{
    (void)state;
    const double pi = acos(-1.0);
    double sum = 0, volume = 0;
    for (int m = 1; m < 200; m += 2)
        for (int n = 1; n < 200; n += 2) {
            double square = (double)(m * m + n * n), term = 1 / (m * n * square * square);
            sum += ((m + n) / 2 % 2 ? 1 : -1) * term;
            volume += term / (m * n);
        }
    double scale = 16 / pow(pi, 6) * 12 * (1 - 0.22 * 0.22);
    struct gw_plate_solution s = solve(1, 1e-3, 10);
    assert_near(s.deflection / 1e-3, scale * sum, 1e-7);
    assert_near(s.mean_deflection / 1e-3, scale * volume * 4 / (pi * pi), 1e-7);
}

static void width_and_height_may_be_exchanged(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_plate_result one, two;
    struct gw_plate_case upright = lite(1.2, 1.9, 0.00556, 4000), lying = lite(1.9, 1.2, 0.00556, 4000);
    assert_int_equal(run(&one, &engine, &upright), GW_OK);
    assert_int_equal(run(&two, &engine, &lying), GW_OK);
    assert_near(one.deflection, two.deflection, 0);
    assert_near(one.stress_max, two.stress_max, 0);
    assert_near(one.risk, two.risk, 0);
    assert_near(one.place[0], two.place[1], 0);
    assert_near(one.place[1], two.place[0], 0);
    assert_near(one.volume, one.mean_deflection * 1.2 * 1.9, 1e-12);
}

/* The number of terms taken by itself against four more. */
static void refinement_changes_little(void **state)
{
    (void)state;
    const double aspects[] = {1, 1.6, 3, 5}, loads[] = {10, 60, 150, 300, 1000, 2000};
    for (size_t i = 0; i < 4; i++)
        for (size_t k = 0; k < 6; k++) {
            struct gw_plate_solution coarse = solve(aspects[i], loads[k], 0);
            struct gw_plate_solution fine = solve(aspects[i], loads[k], coarse.terms + 4);
            assert_near(coarse.deflection / fine.deflection, 1, 1e-4);
            assert_near(coarse.mean_deflection / fine.mean_deflection, 1, 1e-4);
            assert_near(coarse.stress_center / fine.stress_center, 1, 1e-3);
            assert_near(coarse.stress_max / fine.stress_max, 1, 1e-3);
            assert_near(coarse.stress_loaded_face / fine.stress_loaded_face, 1, 1.5e-3);
            assert_near(coarse.risk / fine.risk, 1, 1e-3);
        }
}

static void errors_fall_with_the_terms(void **state)
{
    (void)state;
    double before = INFINITY;
    struct gw_plate_solution best = solve(1.5, 800, 16);
    for (int n = 6; n <= 12; n += 2) {
        double error = fabs(solve(1.5, 800, n).risk / best.risk - 1);
        assert_true(error < before / 2);
        before = error;
    }
}

static void results_grow_with_the_load(void **state)
{
    (void)state;
    const double aspects[] = {1, 1.3, 2.2, 5};
    for (size_t i = 0; i < 4; i++) {
        struct gw_plate_solution last = {0};
        for (double q = 0.01; q < 1e4; q *= 2.7) {
            struct gw_plate_solution now = solve(aspects[i], q, 0);
            assert_true(now.deflection > last.deflection);
            assert_true(now.mean_deflection > last.mean_deflection);
            assert_true(now.stress_max > last.stress_max);
            assert_true(now.stress_max >= now.stress_center);
            assert_true(now.risk > last.risk);
            assert_true(now.edge_slope > last.edge_slope);
            last = now;
        }
    }
}

static void whole_range_converges(void **state)
{
    (void)state;
    for (double aspect = 1; aspect <= 5; aspect += 0.8) {
        solve(aspect, 1e4, 0);
        for (int n = GW_PLATE_TERMS_LEAST; n <= GW_PLATE_TERMS_MOST; n += 5) solve(aspect, 1e4, n);
    }
}

/* Straight edges hold more: less deflection; without load in plane the linear limit is the same. */
static void straight_edges_are_stiffer(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_plate_result free_edges, straight_edges;
    for (double pressure = 1; pressure < 20000; pressure *= 30) {
        struct gw_plate_case one = lite(1.5, 1, 0.006, pressure), two = one;
        two.edges = GW_PLATE_STRAIGHT;
        assert_int_equal(run(&free_edges, &engine, &one), GW_OK);
        assert_int_equal(run(&straight_edges, &engine, &two), GW_OK);
        assert_true(straight_edges.deflection < free_edges.deflection);
        if (pressure > 1) continue;
        assert_near(straight_edges.deflection / free_edges.deflection, 1, 1e-4);
        assert_near(straight_edges.stress_max / free_edges.stress_max, 1, 1e-2);
    }
}

/* No number comes out of steps that did not converge. */
static void what_does_not_converge_is_refused(void **state)
{
    (void)state;
    struct gw_plate_solution out;
    void *workspace = malloc(gw_plate_workspace(8));
    const struct gw_plate_problem in = {1, 1e9, 0.22, 7, 8, true};
    assert_non_null(workspace);
    assert_false(gw_plate_solve(&out, &in, workspace));
    assert_near(out.deflection, 0, 0);
    assert_near(out.stress_max, 0, 0);
    free(workspace);
}

/* c for m = 7 at several ratios of the principal stresses. */
static void biaxial_correction(void **state)
{
    (void)state;
    const double ratio[] = {1, 0.75, 0.5, 0.25, 0, -0.25, -0.5, -1, -3};
    const double c[] = {1, 0.90019, 0.84642, 0.81808, 0.79987, 0.78638, 0.77569, 0.75930, 0.72180};
    for (size_t i = 0; i < 9; i++) assert_near(pow(gw_biaxial_mean(2, 2 * ratio[i], 7), 1.0 / 7) / 2, c[i], 6e-6);
    assert_near(gw_biaxial_mean(-1, -2, 7), 0, 0);
    assert_near(gw_biaxial_mean(0, -2, 7), 0, 0);
    assert_near(gw_biaxial_mean(3, 3, 9), pow(3, 9), 1e-8);
}

static void no_load_no_deflection(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_plate_result out;
    struct gw_plate_case in = lite(1, 2, 0.006, 0);
    assert_int_equal(run(&out, &engine, &in), GW_OK);
    assert_near(out.deflection, 0, 0);
    assert_near(out.risk, 0, 0);
}

static void refuse(struct gw_plate_case in, enum gw_status status, const char *key)
{
    struct gw_engine engine;
    struct gw_plate_result out;
    assert_int_equal(run(&out, &engine, &in), status);
    assert_string_equal(engine.fault.key, key);
    assert_non_null(engine.fault.format);
}

static const char *method_of(struct gw_plate_case in)
{
    struct gw_engine engine;
    struct gw_plate_result out;
    assert_int_equal(run(&out, &engine, &in), GW_OK);
    bool table = strcmp(out.method, "table") == 0;
    assert_int_equal(table, isnan(out.residual));
    assert_int_equal(table, out.terms == GW_NO_INTEGER);
    assert_int_equal(table, out.iterations == 0);
    return out.method;
}

/* The table unless something keeps it from answering: then the equations, or a refusal where the table was asked for.
 */
static void table_where_it_reaches(void **state)
{
    (void)state;
    struct gw_plate_case plain = lite(1, 2, 0.006, 1000);
    assert_string_equal(method_of(plain), "direct");
    plain.method = GW_PLATE_METHOD_UNSET;
    assert_string_equal(method_of(plain), "table");
    struct gw_plate_case terms = plain, edges = plain, poisson = plain;
    terms.terms = 9;
    edges.edges = GW_PLATE_STRAIGHT;
    poisson.poissons_ratio = 0.23;
    assert_string_equal(method_of(terms), "direct");
    assert_string_equal(method_of(edges), "direct");
    assert_string_equal(method_of(poisson), "direct");
    plain.method = terms.method = edges.method = poisson.method = GW_PLATE_TABLE;
    assert_string_equal(method_of(plain), "table");
    refuse(terms, GW_OUTSIDE_METHOD, "terms");
    refuse(edges, GW_OUTSIDE_METHOD, "edges");
    refuse(poisson, GW_OUTSIDE_METHOD, "poissons_ratio");
}

/* The exponent and the table's range are rows that a project may correct. */
static void corrected_rows_turn_the_table_off(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_plate_result out;
    struct gw_plate_case in = lite(1, 2, 0.006, 1000);
    struct gw_tables *tables = malloc(gw_tables_size());
    assert_non_null(tables);
    in.method = GW_PLATE_METHOD_UNSET;
    for (int i = 0; i < 2; i++) {
        memcpy(tables, gw_tables_standard(), gw_tables_size());
        if (i) tables->plate_response_range[0].q_star = 1;
        else tables->glass_flaws[0].m = 6;
        gw_engine_init(&engine, tables, NULL);
        engine.workspace = malloc(GW_PLATE_WORKSPACE);
        assert_int_equal(gw_plate(&out, &in, &engine), GW_OK);
        assert_string_equal(out.method, "direct");
        in.method = GW_PLATE_TABLE;
        assert_int_equal(gw_plate(&out, &in, &engine), GW_OUTSIDE_METHOD);
        assert_string_equal(engine.fault.key, "method");
        in.method = GW_PLATE_METHOD_UNSET;
        free(engine.workspace);
    }
    free(tables);
}

static void refusals(void **state)
{
    (void)state;
    struct gw_plate_case terms = lite(1, 2, 0.006, 1000), poisson = terms;
    terms.terms = 40;
    poisson.poissons_ratio = 0.5;
    refuse(terms, GW_BAD_VALUE, "terms");
    refuse(poisson, GW_BAD_VALUE, "poissons_ratio");
    refuse(lite(1, 5.1, 0.006, 1000), GW_OUTSIDE_METHOD, "height");
    refuse(lite(3, 4, 0.006, 1e5), GW_OUTSIDE_METHOD, "pressure");
    refuse(lite(0, 4, 0.006, 1e3), GW_BAD_VALUE, "width");
    refuse(lite(1, GW_ABSENT, 0.006, 1e3), GW_MISSING, "height");
    refuse(lite(1, 1, 0.006, GW_ABSENT), GW_MISSING, "pressure");
    refuse(lite(1, 1, 0.006, -1), GW_BAD_VALUE, "pressure");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(workspace_is_large_enough),
        cmocka_unit_test(small_loads_are_linear),
        cmocka_unit_test(square_plate_equals_the_series),
        cmocka_unit_test(width_and_height_may_be_exchanged),
        cmocka_unit_test(refinement_changes_little),
        cmocka_unit_test(errors_fall_with_the_terms),
        cmocka_unit_test(results_grow_with_the_load),
        cmocka_unit_test(whole_range_converges),
        cmocka_unit_test(straight_edges_are_stiffer),
        cmocka_unit_test(what_does_not_converge_is_refused),
        cmocka_unit_test(biaxial_correction),
        cmocka_unit_test(no_load_no_deflection),
        cmocka_unit_test(table_where_it_reaches),
        cmocka_unit_test(corrected_rows_turn_the_table_off),
        cmocka_unit_test(refusals),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
