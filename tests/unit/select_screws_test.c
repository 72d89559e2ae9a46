/* Screws of a place counted by hand: a wall of 10 x 10 ft with two columns of one lite each. Its plates: four of 60 in
 * along horizontals, three of 120 in along verticals. 60 psf outward on any area. */
#include "support.h"

#include "galeward/select.h"

#define HEAD                                                                                                           \
    "galeward: 1\nunits: us\nproject: {name: S}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                        \
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"                                                                 \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\npressures: given\n"        \
    "given: [{building: low, zone: 4, area: 0.1 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1},\n"     \
    "  {building: low, zone: 4, area: 900 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1}]\n"           \
    "lites: {a: {}}\ncandidates: [x.yaml]\n"                                                                           \
    "walls: [{name: t, width: 10 ft, floors: [0 ft], top: 10 ft, ends: [none, none],\n"                                \
    "  columns: {count: 2, width: 5 ft}, rows: [{height: rest, lite: a}]"
static const char SILENT[] = HEAD "}]\n", TWELVE[] = HEAD ", screws: {spacing: 12 in}}]\n";

#define SYSTEM                                                                                                         \
    "galeward: 1\nunits: us\nsystem: {name: X, kind: stick, glazing: captured}\ncost: 50 per ft2\n"                    \
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 5/16 in, hole: 0.281 in}\n"
#define SCREW                                                                                                          \
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "          \
    "report: L-8, tested_pullout: "

static const struct gw_bid *bid_of(struct world *w, struct gw_bids *bids, const char *system, const char *project)
{
    put_file(w, "x.yaml", system);
    must_take_off(w, project);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_select(bids, &w->ask, &(const struct gw_select_limits){.recompute = true});
    assert_int_equal(bids->items.n, 1);
    return &bids->items.items[0];
}

static void assert_count(void **state, const char *system, const char *project, long wanted)
{
    struct gw_bids bids;
    const struct gw_bid *bid = bid_of(*state, &bids, system, project);
    long n = 0;
    for (size_t p = 0; p < bid->places.n; p++) n += bid->places.items[p].quantities.screws;
    assert_int_equal(n, wanted);
}

/* 60/9 and 120/9 in, up: 4 x 7 + 3 x 14. */
static void nobody_says(void **state) { assert_count(state, SYSTEM SCREW "3000 lb}\n", SILENT, 70); }

/* 4 x 10 + 3 x 20. */
static void the_system_says(void **state)
{
    assert_count(state, SYSTEM SCREW "3000 lb, spacing: 6 in}\n", SILENT, 100);
}

/* (60 - 4)/6 and (120 - 4)/6 in, up, and one more: 4 x 11 + 3 x 21. */
static void with_its_ends(void **state)
{
    assert_count(state, SYSTEM SCREW "3000 lb, spacing: 6 in, end_distance: 2 in}\n", SILENT, 107);
}

/* (60 - 2)/9 and (120 - 2)/9 in, up, and one more: 4 x 8 + 3 x 15. */
static void ends_alone(void **state) { assert_count(state, SYSTEM SCREW "3000 lb, end_distance: 1 in}\n", SILENT, 77); }

/* 4 x 5 + 3 x 10. */
static void the_wall_goes_before(void **state)
{
    assert_count(state, SYSTEM SCREW "3000 lb, spacing: 6 in}\n", TWELVE, 50);
}

/* The wall says how far apart, not how far from the end: (60 - 4)/12 and (120 - 4)/12 in, up, and one more:
 * 4 x 6 + 3 x 11. */
static void of_the_wall_with_the_systems_ends(void **state)
{
    assert_count(state, SYSTEM SCREW "3000 lb, spacing: 6 in, end_distance: 2 in}\n", TWELVE, 57);
}

/* The roof line at 4.5 ft cuts each vertical, whose plate is one all the same: 4 x 5 + 3 x 10 of 12 in, where its parts
 * of 54 and 66 in would hold 5 and 6; and 107 as above, where they would hold (54 - 5)/6 and (66 - 5)/6, up, and one
 * more each: 10 and 12 for 21. */
static const char *cut_at_roof(struct world *w, const char *project)
{
    static const char own[] = "roof_height: 40 ft";
    const char *roof = strstr(project, own);
    return gw_format(&w->arena, "%.*sroof_height: 4.5 ft, parapet_height: 5.5 ft%s", (int)(roof - project), project,
                     roof + sizeof own - 1);
}

static const char *cut_by_the_roof(struct world *w) { return cut_at_roof(w, SILENT); }

/* In 'demand' too: 5 of the 10 of each vertical stand below, 5 above. */
static void the_take_off_counts_whole_runs(void **state)
{
    struct world *w = *state;
    long n[2] = {0, 0};
    put_file(w, "x.yaml", SYSTEM);
    must_take_off(w, cut_at_roof(w, TWELVE));
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->sort == GW_SORT_MULLION_SCREW) n[e->parapet] += e->count;
    }
    assert_int_equal(n[0], 3 * 5);
    assert_int_equal(n[1], 3 * 5);
}

static void a_run_that_the_roof_line_cuts(void **state)
{
    assert_count(state, SYSTEM SCREW "3000 lb, spacing: 12 in}\n", cut_by_the_roof(*state), 50);
}

static void a_cut_run_with_its_ends(void **state)
{
    assert_count(state, SYSTEM SCREW "3000 lb, spacing: 6 in, end_distance: 2 in}\n", cut_by_the_roof(*state), 107);
}

/* A screw of the middle vertical takes 5 ft x 9 in x 60 psf = 225 lb of 600/3 = 200 lb; 6 in apart 150 lb. What it
 * costs counts those 6 in apart: 100 x 0.4. */
static void an_option_costs_by_its_own(void **state)
{
    struct gw_bids bids;
    const struct gw_bid *bid =
        bid_of(*state, &bids,
               SYSTEM SCREW
               "600 lb}\noptions: [{name: closer, change: {screw: {spacing: 6 in}}, of: screw, cost: 0.4 each}]\n",
               SILENT);
    assert_int_equal(bid->verdict, GW_NOT_SHOWN);
    assert_int_equal(bid->places.items[0].options.n, 1);
    assert_int_equal(bid->places.items[0].quantities.screws, 100);
    assert_near(bid->places.items[0].options.items[0].quantity, 100, 0);
    assert_near(bid->cost, 100 * 50 + 100 * 0.4, 1e-6);
}

/* Clips are needed and cost 1 each: 70 of them with the better thread at 20 beside are cheaper than 100 with closer
 * screws that cost nothing. By the screws of the take-off closer screws would be. */
static void another_costs_by_what_is_taken(void **state)
{
    struct gw_bids bids;
    const struct gw_bid *bid = bid_of(
        *state, &bids,
        SYSTEM SCREW "600 lb}\ntransom_connection: {capacity: 10 lb, report: L-5}\noptions:\n"
                     "  - {name: closer, change: {screw: {spacing: 6 in}}, of: screw, cost: 0 each}\n"
                     "  - {name: thread, change: {screw: {tested_pullout: 900 lb}}, of: wall, cost: 0.2 per ft2}\n"
                     "  - {name: clips, change: {transom_connection: {capacity: 9000 lb}}, of: screw, cost: 1 each}\n",
        SILENT);
    const struct gw_selected *place = &bid->places.items[0];
    assert_int_equal(place->options.n, 2);
    assert_string_equal(place->options.items[0].option->name, "thread");
    assert_string_equal(place->options.items[1].option->name, "clips");
    assert_int_equal(place->quantities.screws, 70);
    assert_near(bid->cost, 100 * 50 + 20 + 70, 1e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(nobody_says),
        WORLD_TEST(the_take_off_counts_whole_runs),
        WORLD_TEST(the_system_says),
        WORLD_TEST(with_its_ends),
        WORLD_TEST(ends_alone),
        WORLD_TEST(the_wall_goes_before),
        WORLD_TEST(of_the_wall_with_the_systems_ends),
        WORLD_TEST(a_run_that_the_roof_line_cuts),
        WORLD_TEST(a_cut_run_with_its_ends),
        WORLD_TEST(an_option_costs_by_its_own),
        WORLD_TEST(another_costs_by_what_is_taken),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
