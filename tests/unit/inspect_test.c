/* Exact limits of a share; sizes of samples; what the sheet of an inspection holds. */
#include "support.h"

#include "galeward/inspection.h"
#include "galeward/plan.h"
#include "tables_data.h"

/* Two-sided 95 % limits as R. Newcombe printed them, Statistics in Medicine 17 (1998) 857, table I, method 5 (exact
 * Clopper-Pearson); recalled. The rest: x = 0 and x = n have the closed form 1 - 0.025^(1/n); 5 of 10 by symmetry, and
 * 1 of 10, 2 of 20 as in tables of exact binomial limits (Documenta Geigy), recalled. */
static void published_limits(void **state)
{
    static const struct {
        long outside, n;
        double least, most;
    } cases[] = {{81, 263, 0.2527, 0.3676}, {15, 148, 0.0578, 0.1617}, {0, 20, 0, 0.1684},     {1, 29, 0.0009, 0.1776},
                 {1, 10, 0.0025, 0.4450},   {5, 10, 0.1871, 0.8129},   {2, 20, 0.0123, 0.3170}};
    const double printed = 0.5e-4 * 1.01;
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        double least, most;
        gw_binomial_limits(&least, &most, cases[i].outside, cases[i].n, 0.025);
        assert_near(least, cases[i].least, printed);
        assert_near(most, cases[i].most, printed);
    }
}

/* None of n: one-sided 1 - 0.05^(1/n), the rule of three in the limit; all of n its mirror; large n keeps the tail. */
static void closed_forms(void **state)
{
    static const long sizes[] = {1, 29, 59, 149, 1000, 100000};
    (void)state;
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        const double n = (double)sizes[i], want = -expm1(log(0.05) / n);
        double least, most;
        gw_binomial_limits(&least, &most, 0, sizes[i], 0.05);
        assert_near(most / want, 1, 1e-12);
        assert_true(least == 0);
        gw_binomial_limits(&least, &most, sizes[i], sizes[i], 0.05);
        assert_near(least, 1 - want, 1e-12);
        assert_true(most == 1);
    }
    double least, most;
    gw_binomial_limits(&least, &most, 50000, 100000, 0.025);
    assert_near(0.5 - least, most - 0.5, 1e-9);
    assert_near(most - 0.5, 1.959964 * sqrt(0.25 / 1e5), 1e-5); /* the normal limit, and half a step */
}

/* ln 0.05 / ln(1 - p): 29, 59, 149. */
static void sizes_of_samples(void **state)
{
    (void)state;
    assert_int_equal(gw_sample_size(0.10, 0.95), 29);
    assert_int_equal(gw_sample_size(0.05, 0.95), 59);
    assert_int_equal(gw_sample_size(0.02, 0.95), 149);
    assert_int_equal(gw_sample_size(0.5, 0.5), 1);
}

#define WALL_ALONE                                                                                                     \
    "galeward: 1\nunits: us\nproject: {name: W}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                        \
    "site: {basic_wind_speed: 115, exposure: C}\n"                                                                     \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 40 ft, floors: [0 ft, 12 ft], top: 24 ft, ends: [corner, corner],\n"                     \
    "  columns: {count: 8, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"                                          \
    "lites: {a: {layers: [{glass: 6 mm, treatment: tempered}]}}\n"
#define WALL WALL_ALONE "candidates: [x.yaml]\n"

/* Stages follow each other; a limit of the system's own goes before any other; small walls are looked at whole. */
static void sheet_of_a_wall(void **state)
{
    struct world *w = *state;
    struct gw_inspection_sheet sheet;
    bool found = false;
    put_file(w, "x.yaml",
             "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n"
             "installation: {screw_spacing: {at_most: 8 in}}\n");
    must_take_off(w, WALL);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_inspection_sheet(&sheet, &w->ask, &w->model.systems.items[0]);
    assert_true(sheet.items.n > 20);
    for (size_t i = 0; i < sheet.items.n; i++) {
        const struct gw_sheet_item *row = &sheet.items.items[i];
        if (i) assert_true(row->item->stage >= sheet.items.items[i - 1].item->stage);
        if (row->item->on == GW_ON_LITE) {
            assert_int_equal(row->places, 16);
            assert_int_equal(row->sample, 16);
            assert_string_equal(words(&row->how_many), "all 16");
        }
        if (row->item->id != GW_ITEM_screw_spacing) continue;
        found = true;
        assert_int_equal(row->most.limit.basis, GW_LIMIT_SYSTEM);
        assert_near(row->most.limit.at_most, 8 * 0.0254, 1e-12);
        assert_int_equal(row->places, 9 * 2 + 8 * 3);
    }
    assert_true(found);
    assert_true(sheet.places.n > sheet.items.n);
}

static bool uses(const struct world *w, const struct gw_used *used, const struct gw_row *row)
{
    for (unsigned i = 0; gw_used_next(used, &i); i++)
        if (gw_table_row_at(w->model.tables, i) == row) return true;
    return false;
}

static const char *torque_condemned(struct world *w, const char *stop)
{
    struct gw_inspection_sheet sheet;
    put_file(w, "x.yaml",
             gw_format(&w->arena,
                       "galeward: 1\nunits: us\nsystem: {name: X, kind: stick, glazing: captured}\n"
                       "pressure_plate: {alloy: 6063-T6, width: 2.5 in, thickness: 0.25 in, hole: 0.281 in}\n"
                       "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, "
                       "head_diameter: 1/2 in, tested_pullout: 2400 lb, report: R, spacing: 9 in}\n"
                       "clamp: {nut_factor: 0.25, forming_torque: 20 in-lb, stop: %s, retained: 0.75}\n"
                       "gasket: {edge_load: [5 lb/in, 9 lb/in], stiffness_share: 0.6}\n",
                       stop));
    must_take_off(w, WALL);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_inspection_sheet(&sheet, &w->ask, &w->model.systems.items[0]);
    /* what condemns a limit is among the sheet's sources: what an edge of glass takes, the factor asked of a clamp */
    assert_int_equal(uses(w, &sheet.used, &w->model.tables->glass_edge[GW_ROW_GLASS_EDGE_MOST].row), *stop == 'f');
    assert_true(uses(w, &sheet.used, &w->model.tables->clamp_practice[GW_ROW_CLAMP_PRACTICE_PLATE].row));
    for (size_t i = 0; i < sheet.items.n; i++)
        if (sheet.items.items[i].item->id == GW_ITEM_screw_torque) return words(&sheet.items.items[i].most.condemns);
    fail();
    return NULL;
}

/* By hand: 100 in-lb less 20 over 0.25 x 0.25 in are 1280 lb, on 9 in and two edges 71.1 lb/in, where glass takes 10:
 * 0.141. At 95 in-lb, the other end, 1200 lb, 66.7 lb/in and 0.15: the worse is said. */
static void limit_that_its_own_value_fails(void **state)
{
    const char *said = torque_condemned(*state, "false");
    assert_non_null(strstr(said, "at 100 in-lb edge has 0.141 of what it needs"));
}
static void limit_over_a_stop(void **state) { assert_string_equal(torque_condemned(*state, "true"), ""); }

static const char X[] = "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n";

/* A project without candidates: the file named is hung; with some, nothing is loaded besides. */
static void system_without_candidates(void **state)
{
    struct world *w = *state;
    const char *path = put_file(w, "x.yaml", X);
    must_load(w, WALL_ALONE);
    assert_true(gw_readings_hang(&w->model, path));
    const struct gw_system *hung = gw_readings_system(&w->model, path);
    assert_non_null(hung);
    assert_string_equal(hung->name, "X");
    assert_true(gw_readings_hang(&w->model, "absent.yaml"));
    assert_int_equal(w->model.systems.n, 1);
    assert_null(gw_readings_system(&w->model, "absent.yaml"));
}

static void the_project_names_its_system(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", X);
    must_load(w, WALL_ALONE "readings: {system: x.yaml}\n");
    assert_true(gw_readings_hang(&w->model, NULL));
    assert_non_null(gw_readings_system(&w->model, NULL));
}

static void system_that_is_not_there(void **state)
{
    struct world *w = *state;
    must_load(w, WALL_ALONE);
    assert_true(gw_readings_hang(&w->model, NULL));
    assert_null(gw_readings_system(&w->model, NULL));
    assert_false(gw_readings_hang(&w->model, "absent.yaml"));
}

/* A fall as a number, and as people say it; what is none is an error at its cell. */
static void falls(void **state)
{
    static const struct {
        const char *text;
        double slope; /* absent: refused */
    } cases[] = {{"1/48", 1.0 / 48},
                 {"-1/48", -1.0 / 48},
                 {"0.02", 0.02},
                 {"1/4 in per ft", 1.0 / 48},
                 {"-1/4 in per ft", -1.0 / 48},
                 {"20 mm per m", 0.02},
                 {"1/4 in per 12 in", 1.0 / 48},
                 {"1/4 in per 0 ft", NAN},
                 {"1/4 per ft", NAN},
                 {"1/4 in per psf", NAN},
                 {"1:7", 1.0 / 7},
                 {"-1:20", -1.0 / 20},
                 {"1 in 7", 1.0 / 7},
                 {"1 1/2 : 12", 1.0 / 8},
                 {"1:7.14", 1 / 7.14},
                 {"1:0", NAN},
                 {"1:", NAN},
                 {":7", NAN},
                 {"1 in:7", NAN},
                 {"45 deg", 1},
                 {"89 deg", NAN},
                 {"4 ft per ft", NAN}};
    struct world *w = *state;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n");
    must_take_off(w, WALL);
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_readings readings;
        const char *csv = gw_format(&w->arena, "item,value\nsill_slope,%s\n", cases[i].text);
        const bool good = gw_readings_read(&readings, &w->model, gw_source_from(&w->arena, "r.csv", csv, strlen(csv)));
        assert_int_equal(good, !isnan(cases[i].slope));
        if (good) assert_near(readings.rows.items[0].value.number, cases[i].slope, 1e-12);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_limits),
        cmocka_unit_test(closed_forms),
        cmocka_unit_test(sizes_of_samples),
        WORLD_TEST(sheet_of_a_wall),
        WORLD_TEST(limit_that_its_own_value_fails),
        WORLD_TEST(limit_over_a_stop),
        WORLD_TEST(falls),
        WORLD_TEST(system_without_candidates),
        WORLD_TEST(the_project_names_its_system),
        WORLD_TEST(system_that_is_not_there),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
