/* What stands before and after the figures of a page: seen first, assumed, not checked, made from. */
#include "support.h"

#include "galeward/report.h"

#define PLACE                                                                                                          \
    "galeward: 1\nunits: us\nproject: {name: Heads, number: 26-7}\ncodes: {building: ibc-2021, wind: asce7-16}\n"      \
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"                                                                 \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "lites: {a: {layers: [{glass: 6 mm, treatment: annealed}]}}\n"
#define WALL(name)                                                                                                     \
    "  - {name: " name ", width: 20 ft, floors: [0 ft], top: 9 ft, ends: [none, none],\n"                              \
    "     columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}\n"
static const char TWO_WALLS[] = PLACE "walls:\n" WALL("s") WALL("n") "requirements: {water: 6 psf}\n";

static const char *page_of(struct world *w, bool all, enum gw_units shown)
{
    struct gw_text text;
    struct gw_report report;
    struct gw_results results;
    gw_results_of(&results, &w->arena, &w->answer, shown);
    results.all = all;
    const struct gw_result result = gw_result_check(&results);
    gw_report_init(&report, &w->arena);
    result.page(&report, &result);
    gw_text_init(&text, &w->arena);
    gw_render_text(&text, &report, false);
    return text.at;
}

static unsigned times(const char *text, const char *part)
{
    unsigned n = 0;
    for (const char *at = strstr(text, part); at; at = strstr(at + 1, part)) n++;
    return n;
}

static void assert_says(const char *text, const char *part)
{
    if (!strstr(text, part)) fail_msg("'%s' is missing in:\n%s", part, text);
}

/* A requirement below the site's stands before the project's own line, once for both walls, and among the warnings. */
static void below_the_site_comes_first(void **state)
{
    struct world *w = *state;
    struct gw_results results;
    must_judge(w, TWO_WALLS);
    const char *text = page_of(w, false, GW_US);
    const char *said = strstr(text, "- Water, wall s (at worst of 2): the project asks 6 psf");
    const char *head = strstr(text, "Project 26-7, risk category II, ibc-2021, asce7-16\nSite: ");
    assert_non_null(said);
    assert_non_null(head);
    assert_true(said < head);
    assert_says(page_of(w, false, GW_SI), "the project asks 287.3 Pa");
    gw_results_of(&results, &w->arena, &w->answer, GW_US);
    assert_int_equal(results.warnings.n, 1);
    assert_string_equal(results.warnings.items[0]->code, "below_site");
    assert_true(results.warnings.items[0]->line > 0);
}

/* Said once of both walls, with what decides before what does not; asked for, each wall has its own line. */
static void assumptions_are_merged(void **state)
{
    struct world *w = *state;
    must_judge(w, TWO_WALLS);
    const char *text = page_of(w, false, GW_US), *all = page_of(w, true, GW_US);
    assert_int_equal(times(text, "splices: not given"), 1);
    assert_says(text, "- walls s, n: splices: not given");
    assert_true(strstr(text, "splices: not given") < strstr(text, "inward_height: top"));
    assert_int_equal(times(text, "- options: inward_height: top"), 0);
    assert_int_equal(times(all, "splices: not given"), 2);
    assert_int_equal(times(all, "- options: inward_height: top"), 1);
}

#define SYSTEM(name, transom)                                                                                          \
    "galeward: 1\nsystem: {name: " name ", kind: stick, glazing: captured}\n"                                          \
    "mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 6 in, web: 0.125 in, flange: 0.125 in}}\n"                 \
    "transom: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 6 in, web: 0.125 in, flange: 0.125 in}" transom "}\n"

/* What of two systems decides alike is said once; a length that is given is not assumed. */
static void unbraced_lengths_are_said(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", SYSTEM("X", ", unbraced_length: 2 ft, block_offset: 15 in"));
    put_file(w, "y.yaml", SYSTEM("Y", ", unbraced_length: 2 ft"));
    put_file(w, "z.yaml", SYSTEM("Z", ""));
    must_judge(w, PLACE "walls:\n" WALL("s") "candidates: [x.yaml, y.yaml, z.yaml]\n");
    const char *text = page_of(w, false, GW_US);
    assert_says(text, "- systems X, Y: mullion: unbraced_length not given");
    assert_says(text, "- system Z: mullion, transom: unbraced_length not given");
    assert_says(text, "- systems Y, Z: transom: block_offset not given");
}

static void not_checked_by_whom(void **state)
{
    struct world *w = *state;
    must_judge(w, TWO_WALLS);
    const char *text = page_of(w, false, GW_US), *all = page_of(w, true, GW_US);
    assert_int_equal(times(text, "- thermal stress"), 0);
    assert_int_equal(times(text, "- safety glazing"), 0);
    assert_says(all, "- safety glazing: the architect");
}

/* By ASCE 7-22 in Risk Category III tornado loads may govern: that is no item of a list among others. */
static void what_may_govern_stands_alone(void **state)
{
    struct world *w = *state;
    must_judge(w,
               "galeward: 1\nproject: {name: Heads, risk_category: III}\ncodes: {building: ibc-2024, wind: asce7-22}\n"
               "site: {basic_wind_speed: 115 mph, exposure: C}\n"
               "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
               "lites: {a: {layers: [{glass: 6 mm, treatment: annealed}]}}\nwalls:\n" WALL("s"));
    const char *text = page_of(w, false, GW_US);
    assert_says(text, "- tornado loads: this project");
    assert_int_equal(times(text, "ornado loads"), 1);
}

static void the_foot_says_what_it_was_made_from(void **state)
{
    struct world *w = *state;
    must_judge(w, TWO_WALLS);
    const struct gw_input *input = &w->model.inputs.items[0];
    const char *us = page_of(w, false, GW_US), *si = page_of(w, false, GW_SI);
    assert_says(us, gw_format(&w->arena, "%s (%.8s)", input->file, input->sha256));
    assert_says(us, "Demands and use are rounded up, capacities down.");
    assert_says(us, "L/175 up to a span of 13.5 ft");
    assert_says(si, "L/175 up to a span of 4.115 m");
    assert_says(us, "IBC 2018 1604.3.7");
}

static void openings_are_told_by_their_mark(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    struct gw_results results;
    struct gw_engine engine;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n");
    put_file(w, "s.csv",
             "mark,wall,width,height,sill,offset,lite\nW1,north,5 ft,6 ft,10 ft,75 ft,a\n"
             "W2,north,5 ft,6 ft,10 ft,60 ft,a\nW3,north,5 ft,6 ft,10 ft,40 ft,a\n");
    must_judge(w, PLACE "elevations: [{name: north, building: low, width: 80 ft, ends: [corner, corner]}]\n"
                        "openings: s.csv\ncandidates: [x.yaml]\n");
    const char *page = page_of(w, true, GW_US);
    assert_says(page, "north: mullions W2, W3, zone 4");
    assert_says(page, "north: lite W1, zone 5");
    assert_says(page, " (W1)");
    gw_results_of(&results, &w->arena, &w->answer, GW_US);
    const struct gw_result result = gw_result_check(&results);
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    gw_text_init(&text, &w->arena);
    assert_int_equal(gw_format_named("csv")->render(&text, &result, &engine, false), GW_OK);
    assert_says(text.at, "X,structural,W1,not shown");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(below_the_site_comes_first),     WORLD_TEST(assumptions_are_merged),
        WORLD_TEST(unbraced_lengths_are_said),      WORLD_TEST(not_checked_by_whom),
        WORLD_TEST(what_may_govern_stands_alone),   WORLD_TEST(the_foot_says_what_it_was_made_from),
        WORLD_TEST(openings_are_told_by_their_mark)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
