/* Screws that were read otherwise than a rating recorded them: what the rating still shows. */
#include "item_screws_support.h"

/* The estimator's check of the system as it was read, at the lite beside the line. */
static enum gw_verdict checked(const char *project, const char *system)
{
    struct world other;
    struct line line;
    world_open(&other);
    hang(&other, &line, project, system);
    const enum gw_verdict verdict = finding(&other, "structural", line.spot.lite->id)->verdict;
    world_close(&other);
    return verdict;
}

static void a_rating_of_other_screws_shows_nothing(void **state)
{
    struct world *w = *state;
    struct line line;
    hang(w, &line, PROJECT BY_TEST, SYSTEM SCREW CLAMP TESTED);
    assert_int_equal(finding(w, "structural", line.spot.lite->id)->verdict, GW_PASS);
    assert_verdict(judged(w, &line, GW_ITEM_screw_spacing, 9 * IN), GW_ITEM_WITHIN);
    const struct gw_item_result r = judged(w, &line, GW_ITEM_screw_spacing, 12 * IN);
    assert_verdict(r, GW_ITEM_UNKNOWN);
    assert_says(r.message, "L-9: tested with screws 9 in apart, here 12 in");
    assert_int_equal(checked(PROJECT BY_TEST, SYSTEM SCREW_WITH(", spacing: 12 in") CLAMP TESTED), GW_NOT_SHOWN);
}

static void calculation_takes_its_place_where_it_may(void **state)
{
    struct world *w = *state;
    struct line line;
    hang(w, &line, PROJECT, SYSTEM SCREW CLAMP TESTED);
    const struct gw_item_result r = judged(w, &line, GW_ITEM_screw_spacing, 12 * IN);
    assert_verdict(r, GW_ITEM_OUTSIDE_HOLDS);
    assert_says(r.message, "its test shows nothing here");
    assert_int_equal(checked(PROJECT, SYSTEM SCREW_WITH(", spacing: 12 in") CLAMP TESTED), GW_PASS);
    assert_verdict(judged(w, &line, GW_ITEM_screw_spacing, 48 * IN), GW_ITEM_NOT_MET);
    assert_int_equal(checked(PROJECT, SYSTEM SCREW_WITH(", spacing: 48 in") CLAMP TESTED), GW_FAIL);
}

/* No specimen was held by a shorter thread: its test shows no screw of half the engagement. */
static void a_short_screw_was_not_tested(void **state)
{
    struct world *w = *state;
    struct line line;
    hang(w, &line, PROJECT BY_TEST, SYSTEM STRONG_SCREW CLAMP TESTED);
    assert_verdict(judged(w, &line, GW_ITEM_screw_length, 1.5625 * IN), GW_ITEM_WITHIN);
    const struct gw_item_result r = judged(w, &line, GW_ITEM_screw_length, 1.4375 * IN);
    assert_verdict(r, GW_ITEM_UNKNOWN);
    assert_says(r.message, "L-9 covers it as described, by screws that more thread held");
    /* a taper and 1/64 in of the chase's 7/16 in: 1/28 of 4000/3 lb is 47.6 lb */
    assert_verdict(judged(w, &line, GW_ITEM_screw_length, 1.203125 * IN), GW_ITEM_NOT_MET);
}

/* What debris asks, tests alone show: a specimen whose plate was fastened closer is another. */
static void an_impact_rating_of_other_screws_shows_nothing(void **state)
{
    struct world *w = *state;
    struct line line;
    const char *const rating =
        "ratings: [{test: impact, positive: 90 psf, negative: 90 psf, missile: D, wind_zone: 4, "
        "cycles: 9000, report: L-12, bite: 1/2 in, tested: {lite_width: 5 ft, lite_height: 9 ft, "
        "fastening: {spacing: 9 in}}}]\n";
    const char *const project =
        "galeward: 1\nproject: {name: Read}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
        "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
        "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 9 ft, ends: [corner, none],\n"
        "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"
        "site: {basic_wind_speed: 150 mph, exposure: C, coast_distance: 1/2 mile, impact: {bite: 1/2 in}}\n"
        "lites: {a: {layers: [{glass: 12 mm, treatment: annealed}]}}\ncandidates: [x.yaml]\n";
    hang(w, &line, project, gw_format(&w->arena, SYSTEM SCREW CLAMP "%s", rating));
    assert_int_equal(finding(w, "debris", line.spot.lite->id)->verdict, GW_PASS);
    const struct gw_item_result r = judged(w, &line, GW_ITEM_screw_spacing, 12 * IN);
    assert_verdict(r, GW_ITEM_UNKNOWN);
    assert_says(r.message, "L-12: tested with screws 9 in apart, here 12 in");
}

/* Nothing but the test shows screws whose pull-out nobody states. */
static void nothing_else_shows_it(void **state)
{
    struct world *w = *state;
    struct line line;
    const char *const screw = "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi%s}\n";
    hang(w, &line, PROJECT,
         gw_format(&w->arena, SYSTEM CLAMP TESTED "%s", gw_format(&w->arena, screw, ", head_diameter: 1/2 in")));
    const struct gw_item_result r = judged(w, &line, GW_ITEM_screw_spacing, 12 * IN);
    assert_verdict(r, GW_ITEM_UNKNOWN);
    assert_says(r.message, "L-9");
    assert_int_equal(
        checked(PROJECT, gw_format(&w->arena, SYSTEM CLAMP TESTED "%s",
                                   gw_format(&w->arena, screw, ", head_diameter: 1/2 in, spacing: 12 in"))),
        GW_NOT_SHOWN);
}

/* A reading goes before what the wall says, as a changed wall would. */
static void a_reading_goes_before_the_wall(void **state)
{
    struct world *w = *state;
    struct line line;
    struct gw_finding f;
    struct gw_demand d;
    hang(w, &line,
         "galeward: 1\nproject: {name: Read}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
         "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
         "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 9 ft, screws: {spacing: 6 in}, ends: [corner, none],\n"
         "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"
         "site: {basic_wind_speed: 115 mph, exposure: C}\n"
         "lites: {a: {layers: [{glass: 12 mm, treatment: annealed}]}}\ncandidates: [x.yaml]\n",
         SYSTEM SCREW CLAMP);
    const struct gw_item_result r = judged(w, &line, GW_ITEM_screw_spacing, 12 * IN);
    assert_near(r.limit.at_most, 6 * IN, 1e-12);
    assert_int_equal(r.limit.basis, GW_LIMIT_PROJECT);
    assert_near(r.remaining_worst, 594.2857 * LB / (pull(w, &line) * 2), 1e-4);
    const struct gw_system *as_read = gw_system_as_read(&w->ask, &line.spot, &line.read, &w->model.systems.items[0]);
    gw_judge_element(&f, &d, &w->ask, gw_check_find("screw"), line.spot.screws, as_read);
    assert_near(f.required, 2 * pull(w, &line), 1e-9);
}

/* A horizontal on the roof line: two parts of one line of screws, each with its own suction. One reading after another
 * leaves nothing of the last. */
static void readings_do_not_depend_on_their_order(void **state)
{
    struct world *w = *state;
    struct line line;
    hang(w, &line,
         "galeward: 1\nproject: {name: Read}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
         "buildings: [{name: low, roof_height: 9 ft, parapet_height: 4 ft, least_width: 80 ft, enclosure: enclosed}]\n"
         "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 13 ft, ends: [none, none],\n"
         "  columns: {count: 4, width: 5 ft}, rows: [{height: 9 ft, lite: a}, {height: rest, lite: a}]}]\n"
         "site: {basic_wind_speed: 115 mph, exposure: C}\n"
         "lites: {a: {layers: [{glass: 12 mm, treatment: annealed}]}}\ncandidates: [x.yaml]\n",
         SYSTEM SCREW CLAMP);
    line.spot.edge = GW_EDGE_HEAD;
    line.spot.screws = gw_takeoff_edge(&w->takeoff, "s", 3, 1, 1, GW_EDGE_HEAD, true);
    assert_non_null(gw_takeoff_other_part(&w->takeoff, line.spot.screws));
    const double expected = 594.2857 * LB / pull(w, &line);
    assert_near(judged(w, &line, GW_ITEM_screw_spacing, 9 * IN).remaining_worst, expected, 1e-4);
    assert_near(judged(w, &line, GW_ITEM_screw_spacing, 18 * IN).remaining_worst, expected / 2, 0.05 * expected);
    const struct gw_system *system = &w->model.systems.items[0];
    const struct gw_system *const one_after_the_other[] = {gw_system_as_read(&w->ask, &line.spot, &line.read, system),
                                                           system};
    struct gw_finding f;
    struct gw_demand d;
    for (size_t i = 0; i < 2; i++)
        gw_judge_element(&f, &d, &w->ask, gw_check_find("screw"), line.spot.screws, one_after_the_other[i]);
    assert_near(f.required, pull(w, &line), 1e-9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(a_rating_of_other_screws_shows_nothing),
        WORLD_TEST(calculation_takes_its_place_where_it_may),
        WORLD_TEST(a_short_screw_was_not_tested),
        WORLD_TEST(an_impact_rating_of_other_screws_shows_nothing),
        WORLD_TEST(nothing_else_shows_it),
        WORLD_TEST(a_reading_goes_before_the_wall),
        WORLD_TEST(readings_do_not_depend_on_their_order),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
