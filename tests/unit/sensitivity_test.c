/* Which verdicts a recalled number decides.
 *
 * Four lites of 5 x 9 ft, 3 mm heat strengthened, in a wall without corners: 115 mph use 19.22 of 21.85 psf, so 120 mph
 * use 0.8796 (120/115)^2 = 0.9577 of the strength, which is in proportion to the type factor of heat-strengthened
 * glass, 2.0. A tenth less of it makes 0.9577/0.9 = 1.064, which fails; at 115 mph it makes 0.977, which passes. */
#include "support.h"

#include "galeward/sensitivity.h"

static const char PROJECT[] = "galeward: 1\nproject: {name: Moved}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
                              "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
                              "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 9 ft, ends: [none, none],\n"
                              "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"
                              "lites: {a: {layers: [{glass: 3 mm, treatment: heat_strengthened}]}}\n"
                              "candidates: [x.yaml]\n";
static const char SYSTEM[] = "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n";

static void find(struct world *w, const char *more, struct gw_sensitivity *out)
{
    struct gw_arena scratch;
    put_file(w, "x.yaml", SYSTEM);
    must_judge(w, gw_format(&w->arena, "%s%s", PROJECT, more));
    gw_answer_check(&w->answer, &w->ask);
    gw_arena_init(&scratch, gw_system_host());
    gw_find_sensitivity(out, &w->answer, &w->arena, &scratch);
    gw_arena_release(&scratch);
    out->shown = GW_US;
}

static const char *written(struct world *w, const struct gw_sensitivity *s, const char *format)
{
    struct gw_text text;
    struct gw_engine engine;
    const struct gw_result result = gw_result_sensitivity(s);
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    gw_text_init(&text, &w->arena);
    assert_int_equal(gw_format_named(format)->render(&text, &result, &engine, false), GW_OK);
    return text.at;
}

static void a_tenth_less_of_a_factor_fails(void **state)
{
    struct world *w = *state;
    struct gw_sensitivity s;
    find(w, "site: {basic_wind_speed: 120 mph, exposure: C}\n", &s);
    assert_int_equal(s.flips.n, 2); /* the load path of the lite, structural, and its glass */
    assert_string_equal(s.flips.items[0].check, "structural");
    assert_int_equal(s.flips.items[0].is, GW_FAIL);
    const struct gw_flip *f = &s.flips.items[1];
    assert_string_equal(f->row->table, "glass_type_factor");
    assert_string_equal(f->row->id, "heat-strengthened");
    assert_string_equal(f->column, "short_factor");
    assert_near(f->share, 0.9, 0);
    assert_string_equal(f->candidate, "X");
    assert_string_equal(f->check, "glass");
    assert_int_equal(f->was, GW_PASS);
    assert_int_equal(f->is, GW_FAIL);
    assert_near(f->was_utilization, 0.9577, 0.001);
    assert_int_equal(f->count, 4);
    assert_near(f->utilization, f->was_utilization / 0.9, 1e-6);
    assert_int_equal(s.unmatched, 0);
    assert_int_equal(s.unmoved.n, 0);
    static const char *const formats[] = {"text", "md", "json", "csv"};
    for (size_t i = 0; i < sizeof formats / sizeof *formats; i++) {
        assert_non_null(strstr(written(w, &s, formats[i]), "short_factor"));
        assert_non_null(strstr(written(w, &s, formats[i]), "fail"));
    }
}

static void nothing_flips_with_room(void **state)
{
    struct world *w = *state;
    struct gw_sensitivity s;
    find(w, "site: {basic_wind_speed: 115 mph, exposure: C}\n", &s);
    assert_int_equal(s.flips.n, 0);
    assert_true(s.values > 0);
    assert_non_null(strstr(written(w, &s, "text"), "Nothing flips."));
}

/* A row that the project corrects is no longer recalled; the correction stands while other rows are moved. */
static void a_corrected_row_stands(void **state)
{
    struct world *w = *state;
    struct gw_sensitivity plain, s;
    find(w, "site: {basic_wind_speed: 120 mph, exposure: C}\n", &plain);
    find(
        w,
        "site: {basic_wind_speed: 120 mph, exposure: C}\n"
        "assume: [{table: glass_type_factor, row: heat-strengthened, column: short_factor, value: 1.98, by: E, reason: "
        "seen}]\n",
        &s);
    assert_int_equal(s.rows, plain.rows - 1);
    for (size_t i = 0; i < s.flips.n; i++) assert_string_not_equal(s.flips.items[i].row->table, "glass_type_factor");
    /* 0.9577 x 2.0/1.98 = 0.967; the flaw model's n makes 20^(1/14.4 - 1/16) = 1.021 of it at most: still a pass */
    assert_int_equal(s.flips.n, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {WORLD_TEST(a_tenth_less_of_a_factor_fails), WORLD_TEST(nothing_flips_with_room),
                                       WORLD_TEST(a_corrected_row_stands)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
