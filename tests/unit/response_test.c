/* The response table: near the equations at points that it does not interpolate, continuous, growing with the load. */
#include "support.h"

#include "galeward/plate.h"
#include "tables_data.h"

static const double RANGE = 1e4, LEAST = 0.02;

/* Terms with which the equations are nearer to their limit than the table is meant to be. */
static struct gw_plate_solution equations(double aspect, double q_star)
{
    struct gw_plate_solution out;
    void *workspace = malloc(GW_PLATE_WORKSPACE);
    const struct gw_plate_problem in = {aspect, q_star, 0.22, 7, q_star < 100 ? 12 : 16, false};
    assert_non_null(workspace);
    assert_true(gw_plate_solve(&out, &in, workspace));
    free(workspace);
    return out;
}

static struct gw_plate_solution table(double aspect, double q_star)
{
    struct gw_plate_solution out = {0};
    assert_true(gw_plate_response(&out, aspect, q_star, GW_PLATE_ALL, gw_tables_standard()));
    return out;
}

/* What the answers are by their logarithms, the risk as a stress. */
enum { W, MEAN, RISK, SLOPE, CENTER, LARGEST, LOADED, QUANTITIES, RESISTANCE = QUANTITIES, ALL };
static void logs(double out[QUANTITIES], const struct gw_plate_solution *s)
{
    out[W] = log(s->deflection);
    out[MEAN] = log(s->mean_deflection);
    out[RISK] = log(s->risk) / 7;
    out[SLOPE] = log(s->edge_slope);
    out[CENTER] = log(s->stress_center);
    out[LARGEST] = log(s->stress_max);
    out[LOADED] = log(s->stress_loaded_face);
}

/* ln of the load at which the table has this risk. */
static double load_of_risk(double aspect, double risk)
{
    double low = log(LEAST / 10), high = log(RANGE);
    for (int i = 0; i < 60; i++) {
        double middle = (low + high) / 2;
        if (table(aspect, exp(middle)).risk < risk) low = middle;
        else high = middle;
    }
    return (low + high) / 2;
}

/* `error` is the certificate's row; above plate_limits' q_star_corner the solution itself is good to 1 % beside
 * corners. */
static const struct bound {
    const char *name;
    size_t error, error_corner;
    double aim, aim_corner;
} BOUNDS[ALL] = {
    [W] = {"deflection", GW_ROW_PLATE_RESPONSE_ERROR_DEFLECTION, GW_ROW_PLATE_RESPONSE_ERROR_DEFLECTION, 1e-3, 1e-3},
    [MEAN] = {"mean deflection", GW_ROW_PLATE_RESPONSE_ERROR_MEAN_DEFLECTION,
              GW_ROW_PLATE_RESPONSE_ERROR_MEAN_DEFLECTION, 1e-3, 1e-3},
    [RISK] = {"J^(1/7)", GW_ROW_PLATE_RESPONSE_ERROR_RISK_ROOT, GW_ROW_PLATE_RESPONSE_ERROR_RISK_ROOT, 5e-5, 5e-5},
    [SLOPE] = {"edge slope", GW_ROW_PLATE_RESPONSE_ERROR_EDGE_SLOPE, GW_ROW_PLATE_RESPONSE_ERROR_EDGE_SLOPE, 1e-3,
               1e-3},
    [CENTER] = {"stress, center", GW_ROW_PLATE_RESPONSE_ERROR_STRESS_CENTER, GW_ROW_PLATE_RESPONSE_ERROR_STRESS_CENTER,
                1e-3, 1e-3},
    [LARGEST] = {"stress, largest", GW_ROW_PLATE_RESPONSE_ERROR_STRESS_MAX,
                 GW_ROW_PLATE_RESPONSE_ERROR_STRESS_MAX_CORNER, 1e-3, 1e-2},
    [LOADED] = {"stress, loaded face", GW_ROW_PLATE_RESPONSE_ERROR_STRESS_LOADED_FACE,
                GW_ROW_PLATE_RESPONSE_ERROR_STRESS_LOADED_FACE_CORNER, 5e-3, 1e-2},
    [RESISTANCE] = {"load at given risk", GW_ROW_PLATE_RESPONSE_ERROR_LOAD_RESISTANCE,
                    GW_ROW_PLATE_RESPONSE_ERROR_LOAD_RESISTANCE, 2e-3, 2e-3},
};

struct worst {
    double error, aspect, q_star;
};

static void note(struct worst worst[2][ALL], int quantity, double error, double aspect, double q_star)
{
    struct worst *w = &worst[q_star > gw_tables_standard()->plate_limits[0].q_star_corner][quantity];
    if (!(fabs(error) <= w->error)) *w = (struct worst){fabs(error), aspect, q_star};
}

static void compare(struct worst worst[2][ALL], double aspect, double q_star)
{
    double got[QUANTITIES], want[QUANTITIES];
    struct gw_plate_solution by_table = table(aspect, q_star), solved = equations(aspect, q_star);
    logs(got, &by_table);
    logs(want, &solved);
    for (int i = 0; i < QUANTITIES; i++) note(worst, i, got[i] - want[i], aspect, q_star);
    if (q_star < 0.9 * RANGE) note(worst, RESISTANCE, load_of_risk(aspect, solved.risk) - log(q_star), aspect, q_star);
}

/* Within the aims; and the certificate, measured at other points, tells the truth to a factor of two. */
static void check(struct worst worst[2][ALL])
{
    const struct gw_plate_response_error *certificate = gw_tables_standard()->plate_response_error;
    for (int i = 0; i < ALL; i++)
        for (int beyond = 0; beyond < 2; beyond++) {
            const struct bound *b = &BOUNDS[i];
            const struct worst *w = &worst[beyond][i];
            printf("%-20s %s: %.1e at aspect %.3f, q* %.4g\n", b->name, beyond ? "q* above 5000" : "q* up to 5000",
                   w->error, w->aspect, w->q_star);
            fflush(stdout);
            assert_true(w->error <= (beyond ? b->aim_corner : b->aim));
            assert_true(w->error <= 2 * certificate[beyond ? b->error_corner : b->error].error);
        }
}

/* Spread by the fractions of irrational numbers other than the certificate's; a third of them where branches meet. */
static void near_the_equations(void **state)
{
    (void)state;
    enum { POINTS = 120 };
    static struct worst worst[2][ALL];
    for (int i = 1; i <= POINTS; i++) {
        double x = fmod(i * sqrt(2), 1), y = fmod(i * sqrt(3), 1);
        if (i % 3) compare(worst, exp(x * log(5)), LEAST * exp(y * log(RANGE / LEAST)));
        else compare(worst, 1 + 2.2 * x, 30 * exp(y * log(50)));
    }
    check(worst);
}

/* The place, where the stress of no other place comes near. */
static void place_of_the_largest(void **state)
{
    (void)state;
    const struct {
        double aspect, q_star, x, y;
    } at[] = {{1.7, 40, 0, 0},          {1.25, 80, 0, 0.3437},  {1.5, 120, 0, 0.2996}, {1.1, 200, 0.9556, 0.9517},
              {2.4, 700, 0.975, 0.949}, {1.25, 1200, 0.948, 1}, {4, 4000, 0.973, 1},   {5, 9900, 1, 0.9075}};
    for (size_t i = 0; i < sizeof at / sizeof *at; i++) {
        struct gw_plate_solution got = table(at[i].aspect, at[i].q_star);
        assert_near(got.stress_x, at[i].x, 0.01);
        assert_near(got.stress_y, at[i].y, 0.01);
    }
}

static void at_the_ends(void **state)
{
    (void)state;
    double got[QUANTITIES], want[QUANTITIES];
    const double aspects[] = {1, 5}, loads[] = {1e-3, 7, 1e4};
    for (int i = 0; i < 2; i++)
        for (int k = 0; k < 3; k++) {
            struct gw_plate_solution by_table = table(aspects[i], loads[k]), solved = equations(aspects[i], loads[k]);
            logs(got, &by_table);
            logs(want, &solved);
            for (int j = 0; j < QUANTITIES; j++) assert_near(got[j], want[j], loads[k] > 5000 ? 1e-2 : 1e-3);
        }
    struct gw_plate_solution none = table(2.3, 0);
    assert_near(none.deflection, 0, 0);
    assert_near(none.stress_max, 0, 0);
    assert_near(none.risk, 0, 0);
}

/* With the load nothing falls and nothing jumps, at no border of pieces and at no change of branch. */
static void grows_steadily_with_the_load(void **state)
{
    (void)state;
    const double step = 1e-3,
                 fastest = 1.6; /* of the logarithms; J^(1/7) may outrun the load where the corner takes over */
    for (double aspect = 1; aspect <= 5; aspect += 0.173) {
        double last[QUANTITIES], now[QUANTITIES];
        struct gw_plate_solution s = table(aspect, LEAST);
        logs(last, &s);
        for (double q = LEAST * exp(step); q < RANGE; q *= exp(step)) {
            s = table(aspect, q);
            logs(now, &s);
            for (int i = 0; i < QUANTITIES; i++) {
                assert_true(now[i] > last[i]);
                assert_true(now[i] < last[i] + fastest * step);
            }
            memcpy(last, now, sizeof now);
        }
    }
}

static void changes_steadily_with_the_aspect(void **state)
{
    (void)state;
    const double step = 1e-3, fastest = 5;
    for (double q = LEAST; q < RANGE; q *= 1.7) {
        double last[QUANTITIES], now[QUANTITIES];
        struct gw_plate_solution s = table(1, q);
        logs(last, &s);
        for (double aspect = exp(step); aspect < 5; aspect *= exp(step)) {
            s = table(aspect, q);
            logs(now, &s);
            for (int i = 0; i < QUANTITIES; i++) assert_near(now[i], last[i], fastest * step);
            memcpy(last, now, sizeof now);
        }
    }
}

/* A search by load needs more than small jumps: neighboring pieces agree to the digits of the coefficients. */
static void pieces_meet(void **state)
{
    (void)state;
    const struct gw_tables *tables = gw_tables_standard();
    const struct gw_plate_response *row = &tables->plate_response[GW_ROW_PLATE_RESPONSE_RISK];
    double below[QUANTITIES], above[QUANTITIES];
    for (size_t r = 0; r < GW_N_PLATE_RESPONSE; r++, row = &tables->plate_response[r % GW_N_PLATE_RESPONSE])
        for (int k = 1; k < (int)row->y_pieces; k++)
            for (double aspect = 1; aspect < 5; aspect += 0.37) {
                double y = row->y_least + (row->y_most - row->y_least) * k / row->y_pieces;
                double q = tables->plate_response_range[0].load_scale * expm1(y);
                struct gw_plate_solution one = table(aspect, q * (1 - 1e-11)), two = table(aspect, q * (1 + 1e-11));
                logs(below, &one);
                logs(above, &two);
                for (int i = 0; i < QUANTITIES; i++) assert_near(below[i], above[i], 3e-10);
            }
}

static void rows_are_whole(void **state)
{
    (void)state;
    for (size_t i = 0; i < GW_N_PLATE_RESPONSE; i++) {
        const struct gw_plate_response *row = &gw_tables_standard()->plate_response[i];
        double numbers = row->x_pieces * row->y_pieces * (row->x_degree + 1) * (row->y_degree + 1);
        assert_near((double)row->n_coefficients, numbers, 0);
        assert_true(row->x_degree >= 1 && row->x_degree <= 16 && row->y_degree >= 1 && row->y_degree <= 16);
        assert_true(row->x_least < row->x_most && row->y_least < row->y_most);
    }
}

/* Fills what is wanted, and that as a call for everything does. */
static void what_is_wanted(void **state)
{
    (void)state;
    const struct gw_plate_solution untouched = {-1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -7, -7};
    for (unsigned want = 0; want <= GW_PLATE_ALL; want++) {
        struct gw_plate_solution out = untouched, all = table(1.4, 333);
        assert_true(gw_plate_response(&out, 1.4, 333, want, gw_tables_standard()));
        assert_near(out.deflection, want & GW_PLATE_DEFLECTION ? all.deflection : -1, 0);
        assert_near(out.mean_deflection, want & GW_PLATE_MEAN ? all.mean_deflection : -1, 0);
        assert_near(out.risk, want & GW_PLATE_RISK ? all.risk : -1, 0);
        assert_near(out.stress_max, want & GW_PLATE_STRESS ? all.stress_max : -1, 0);
        assert_near(out.stress_center, want & GW_PLATE_OTHER_STRESS ? all.stress_center : -1, 0);
        assert_near(out.stress_loaded_face, want & GW_PLATE_OTHER_STRESS ? all.stress_loaded_face : -1, 0);
        assert_near(out.edge_slope, want & GW_PLATE_EDGE_SLOPE ? all.edge_slope : -1, 0);
        assert_int_equal(out.terms, -7);
    }
}

static void refuse(double aspect, double q_star)
{
    struct gw_plate_solution out = {.deflection = -1};
    assert_false(gw_plate_response(&out, aspect, q_star, GW_PLATE_ALL, gw_tables_standard()));
    assert_near(out.deflection, -1, 0);
}

static void outside(void **state)
{
    (void)state;
    refuse(0.999, 10);
    refuse(5.001, 10);
    refuse(2, 10001);
    refuse(2, -1);
    refuse(GW_ABSENT, 10);
    refuse(2, GW_ABSENT);
    refuse(2, INFINITY);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(near_the_equations),
        cmocka_unit_test(place_of_the_largest),
        cmocka_unit_test(at_the_ends),
        cmocka_unit_test(grows_steadily_with_the_load),
        cmocka_unit_test(changes_steadily_with_the_aspect),
        cmocka_unit_test(pieces_meet),
        cmocka_unit_test(rows_are_whole),
        cmocka_unit_test(what_is_wanted),
        cmocka_unit_test(outside),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
