/* Results of 'calc' for people: pages and lines of a spreadsheet beside the JSON of the same case. */
#include "support.h"

#include "galeward/calc_page.h"

static const char WIND[] =
    "{id: a, edition: asce7-16, basic_wind_speed: 115 mph, exposure: C, mean_roof_height: 40 ft, "
    "least_width: 80 ft, enclosure: enclosed, effective_area: 50 ft2, zone: 5}";
static const char STRENGTH[] =
    "{alloy: 6063-T6, tube: {width: 2.5 in, depth: 6 in, flange: 0.125 in, web: 0.125 in}, unbraced_length: 12 ft}";

static const char *written(struct world *w, const char *format, const char *kind, const char *yaml, enum gw_units shown,
                           bool first)
{
    struct gw_engine none = {.tables = gw_tables_standard()};
    struct gw_text out;
    struct gw_calc_answer *answer = gw_alloc(&w->arena, 1, sizeof *answer);
    const struct gw_calc_kind *k = gw_calc_find(kind);
    gw_text_init(&out, &w->arena);
    gw_calc_run(answer, &w->arena, k, node_of(w, yaml), gw_tables_standard(), shown);
    const struct gw_result result = gw_result_calc(&w->arena, k, answer, first, shown);
    assert_int_equal(gw_format_named(format)->render(&out, &result, &none, false), GW_OK);
    return out.at;
}

static double json_number(struct world *w, const char *kind, const char *yaml, const char *key)
{
    struct gw_text out;
    double value = GW_ABSENT;
    gw_text_init(&out, &w->arena);
    assert_true(gw_calc_case(&out, &w->arena, gw_calc_find(kind), node_of(w, yaml), gw_tables_standard()));
    const char *text = text_at(node_of(w, out.at), key);
    assert_int_equal(gw_read_number(text, strlen(text), &value), strlen(text));
    return value;
}

/* The cell of the first line of data under that heading; no cell here holds a comma. */
static double cell(const char *csv, const char *heading)
{
    const char *line = strchr(csv, '\n') + 1;
    double value = GW_ABSENT;
    for (const char *at = csv; *at && *at != '\n'; at += strcspn(at, ",\n") + 1, line += strcspn(line, ",\n") + 1)
        if (strncmp(at, heading, strlen(heading)) == 0 && strchr(",\n", at[strlen(heading)])) {
            assert_int_equal(gw_read_number(line, strcspn(line, ",\n"), &value), strcspn(line, ",\n"));
            return value;
        }
    fail_msg("no heading '%s' in %s", heading, csv);
    return value;
}

static void a_demand_is_rounded_up(void **state)
{
    struct world *w = *state;
    const char *us = written(w, "csv", "wind", WIND, GW_US, true);
    const double psf = gw_unit_find(gw_units_standard(), GW_PRESSURE, "psf", 3)->factor;
    const char *keys[][2] = {{"pressure positive psf", "pressure_positive_pa"},
                             {"pressure negative psf", "pressure_negative_pa"},
                             {"ASD negative psf", "asd_negative_pa"}};
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        double shown = fabs(cell(us, keys[i][0])), exact = fabs(json_number(w, "wind", WIND, keys[i][1])) / psf;
        assert_true(shown >= exact * (1 - 1e-9) && shown <= exact * (1 + 1e-3));
    }
}

static void a_capacity_is_rounded_down(void **state)
{
    struct world *w = *state;
    const char *us = written(w, "csv", "member_strength", STRENGTH, GW_US, true);
    const double factor = gw_unit_find(gw_units_standard(), GW_MOMENT, "in-lb", 5)->factor;
    double shown = cell(us, "moment in-lb"), exact = json_number(w, "member_strength", STRENGTH, "moment_nm") / factor;
    assert_true(shown <= exact * (1 + 1e-9) && shown >= exact * (1 - 1e-3));
}

static void si_is_exact(void **state)
{
    struct world *w = *state;
    const char *si = written(w, "csv", "wind", WIND, GW_SI, true);
    assert_near(cell(si, "pressure_negative_pa"), json_number(w, "wind", WIND, "pressure_negative_pa"), 1e-6);
    assert_near(cell(si, "zone_width_m"), json_number(w, "wind", WIND, "zone_width_m"), 1e-12);
}

static size_t commas(const char *line)
{
    size_t n = 0;
    for (; *line && *line != '\n'; line++) n += *line == ',';
    return n;
}

/* Headings once; a case that failed has its line too, with as many cells. */
static void lines_have_equal_cells(void **state)
{
    struct world *w = *state;
    const char *first = written(w, "csv", "wind", WIND, GW_US, true);
    const char *next = written(w, "csv", "wind", WIND, GW_US, false);
    const char *bad = written(w, "csv", "wind", "{id: b, edition: asce7-16, exposure: C}", GW_US, false);
    assert_string_equal(strchr(first, '\n') + 1, next);
    assert_int_equal(commas(first), commas(next));
    assert_int_equal(commas(first), commas(bad));
    assert_int_equal(strncmp(bad, "b,,", 3), 0);
    assert_non_null(strstr(bad, "missing: "));
}

static void a_page_says_what_was_wrong(void **state)
{
    struct world *w = *state;
    const char *yaml = "{id: c, width: 1 m, height: 9 m, thickness: 6 mm, pressure: 1 kPa}";
    const char *page = written(w, "text", "plate", yaml, GW_US, true);
    assert_non_null(strstr(page, "Case c\n"));
    assert_non_null(strstr(page, "outside_method: height: "));
    page = written(w, "text", "wind", WIND, GW_US, true);
    assert_non_null(strstr(page, "zone width"));
    assert_null(strstr(page, "_pa"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_demand_is_rounded_up, world_setup, world_teardown),
        cmocka_unit_test_setup_teardown(a_capacity_is_rounded_down, world_setup, world_teardown),
        cmocka_unit_test_setup_teardown(si_is_exact, world_setup, world_teardown),
        cmocka_unit_test_setup_teardown(lines_have_equal_cells, world_setup, world_teardown),
        cmocka_unit_test_setup_teardown(a_page_says_what_was_wrong, world_setup, world_teardown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
