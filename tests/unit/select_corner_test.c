/* What two walls that meet by name share is counted and paid for once. Two walls of 10 ft, s of 8 ft with two columns
 * of 4 ft, t of 10 ft with two of 5 ft, under 60 psf; what the option is for is the screws, what its cost counts are
 * the mullions. A screw of the middle vertical of t takes 5 ft x 9 in x 60 psf = 225 lb of 600/3 = 200 lb, and 6 in
 * apart 150 lb; one of s takes 180 lb. */
#include "support.h"

#include "galeward/select.h"

#define HEAD                                                                                                           \
    "galeward: 1\nunits: us\nproject: {name: S}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                        \
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"                                                                 \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\npressures: given\n"        \
    "given: [{building: low, zone: 4, area: 0.1 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1},\n"     \
    "  {building: low, zone: 4, area: 900 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1},\n"           \
    "  {building: low, zone: 5, area: 0.1 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1},\n"           \
    "  {building: low, zone: 5, area: 900 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1}]\n"           \
    "lites: {a: {}}\ncandidates: [x.yaml]\nwalls:\n"
#define WALL(name, width, end, columns)                                                                                \
    "  - {name: " name ", width: " width ", floors: [0 ft], top: 10 ft, ends: " end                                    \
    ", columns: {count: 2, width: " columns "}, rows: [{height: rest, lite: a}]}\n"
#define FIRST(width, columns) WALL("s", width, "[none, {corner: t}]", columns)
#define SECOND(width, columns) WALL("t", width, "[{corner: s}, none]", columns)

#define SYSTEM                                                                                                         \
    "galeward: 1\nunits: us\nsystem: {name: X, kind: stick, glazing: captured}\ncost: 50 per ft2\n"                    \
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 5/16 in, hole: 0.281 in}\n"                           \
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "          \
    "report: L-8, tested_pullout: 600 lb}\n"                                                                           \
    "options:\n  - {name: closer, change: {screw: {spacing: 6 in}}, of: mullion, cost: 1 per ft}\n"

static const struct gw_bid *bid_of(struct world *w, const char *system, const char *project)
{
    struct gw_bids *bids = gw_alloc(&w->arena, 1, sizeof *bids);
    put_file(w, "x.yaml", system);
    must_take_off(w, project);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_select(bids, &w->ask, &(const struct gw_select_limits){.recompute = true});
    assert_int_equal(bids->items.n, 1);
    assert_int_equal(bids->items.items[0].places.n, 2);
    assert_true(bids->shares_corners);
    return &bids->items.items[0];
}

static void assert_counts(const struct gw_selected *place, const char *wall, double mullions, long anchors)
{
    assert_string_equal(place->place->wall, wall);
    assert_near(place->quantities.mullion_length, mullions * 0.3048, 1e-9);
    assert_int_equal(place->quantities.anchors, anchors);
}

/* Of three mullions of 10 ft each, with an anchor at the floor and one at the head, one is of both: 30 and 20 ft, 6
 * and 4. */
static void the_second_alone_takes_it(void **state)
{
    const struct gw_bid *bid = bid_of(*state, SYSTEM, HEAD FIRST("8 ft", "4 ft") SECOND("10 ft", "5 ft"));
    const struct gw_selected *s = &bid->places.items[0], *t = &bid->places.items[1];
    assert_counts(s, "s", 30, 6);
    assert_counts(t, "t", 20, 4);
    assert_int_equal(s->options.n, 0);
    assert_int_equal(t->options.n, 1);
    assert_near(t->options.items[0].quantity, 30 * 0.3048, 1e-9); /* with the corner's */
    assert_near(bid->cost, 80 * 50 + 100 * 50 + 30, 1e-5);
}

static void the_first_alone_takes_it(void **state)
{
    const struct gw_bid *bid = bid_of(*state, SYSTEM, HEAD FIRST("10 ft", "5 ft") SECOND("8 ft", "4 ft"));
    assert_int_equal(bid->places.items[0].options.n, 1);
    assert_int_equal(bid->places.items[1].options.n, 0);
    assert_near(bid->cost, 80 * 50 + 100 * 50 + 30, 1e-5);
}

/* 30 and 20 ft: each wall by itself has 30. */
static void both_take_it(void **state)
{
    const struct gw_bid *bid = bid_of(*state, SYSTEM, HEAD FIRST("10 ft", "5 ft") SECOND("10 ft", "5 ft"));
    assert_int_equal(bid->places.items[0].options.n, 1);
    assert_int_equal(bid->places.items[1].options.n, 1);
    assert_near(bid->places.items[1].options.items[0].quantity, 20 * 0.3048, 1e-9);
    assert_near(bid->cost, 2 * 100 * 50 + 50, 1e-5);
    assert_near(bid->everywhere_cost, bid->cost, 1e-5);
    assert_near(bid->bound, bid->cost, 1e-5);
}

/* A lower wall shares what it reaches: 30 ft beside 3 x 6 ft without the corner's 6 ft. Its one floor is that of the
 * other; the other's anchor at 10 ft is its own. */
static void a_lower_wall_shares_its_height(void **state)
{
    static const char lower[] =
        "  - {name: t, width: 10 ft, floors: [0 ft], top: 6 ft, ends: [{corner: s}, none], columns: {count: 2, width: "
        "5 ft}, rows: [{height: rest, lite: a}]}\n";
    struct world *w = *state;
    const struct gw_bid *bid = bid_of(w, SYSTEM, gw_format(&w->arena, "%s%s", HEAD FIRST("8 ft", "4 ft"), lower));
    assert_near(bid->places.items[0].quantities.mullion_length, 30 * 0.3048, 1e-9);
    assert_near(bid->places.items[1].quantities.mullion_length, 12 * 0.3048, 1e-9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {WORLD_TEST(the_second_alone_takes_it), WORLD_TEST(the_first_alone_takes_it),
                                       WORLD_TEST(both_take_it), WORLD_TEST(a_lower_wall_shares_its_height)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
