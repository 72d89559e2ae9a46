/* What blocks a candidate without a plan. One wall of 10 x 10 ft under 60 psf; a screw of the middle vertical takes
 * 5 ft x 9 in x 60 psf = 225 lb of 600/3 = 200 lb, and 6 in apart 150 lb; ends of transoms of 10 lb are far too weak.
 */
#include "support.h"

#include "galeward/select.h"

static const char PROJECT[] =
    "galeward: 1\nunits: us\nproject: {name: S}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\npressures: given\n"
    "given: [{building: low, zone: 4, area: 0.1 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1},\n"
    "  {building: low, zone: 4, area: 900 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1}]\n"
    "lites: {a: {}}\ncandidates: [x.yaml]\n"
    "walls: [{name: t, width: 10 ft, floors: [0 ft], top: 10 ft, ends: [none, none],\n"
    "  columns: {count: 2, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n";
/* A second wall, whose columns of 1 ft give its screws a fifth. */
static const char TWO_WALLS[] =
    "galeward: 1\nunits: us\nproject: {name: S}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\npressures: given\n"
    "given: [{building: low, zone: 4, area: 0.1 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1},\n"
    "  {building: low, zone: 4, area: 900 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1}]\n"
    "lites: {a: {}}\ncandidates: [x.yaml]\n"
    "walls:\n  - {name: t, width: 10 ft, floors: [0 ft], top: 10 ft, ends: [none, none],\n"
    "     columns: {count: 2, width: 5 ft}, rows: [{height: rest, lite: a}]}\n"
    "  - {name: n, width: 5 ft, floors: [0 ft], top: 5 ft, ends: [none, none],\n"
    "     columns: {count: 5, width: 1 ft}, rows: [{height: rest, lite: a}]}\n";

#define SYSTEM                                                                                                         \
    "galeward: 1\nunits: us\nsystem: {name: X, kind: stick, glazing: captured}\ncost: 50 per ft2\n"                    \
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 5/16 in, hole: 0.281 in}\n"                           \
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "          \
    "report: L-8, tested_pullout: 600 lb}\n"

static const struct gw_bid *bid_of(struct world *w, const char *system, const char *project)
{
    struct gw_bids *bids = gw_alloc(&w->arena, 1, sizeof *bids);
    struct gw_arena scratch;
    put_file(w, "x.yaml", system);
    must_take_off(w, project);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_arena_init(&scratch, gw_system_host());
    gw_select(bids, &w->ask, &(const struct gw_select_limits){.scratch = &scratch, .recompute = true});
    gw_arena_release(&scratch); /* nothing that was found stands in it */
    assert_int_equal(bids->items.items[0].verdict, GW_FAIL);
    return &bids->items.items[0];
}

static void assert_blocked(const struct gw_blocked *got, const char *check, const char *choice)
{
    assert_string_equal(got->finding->demand->check->id, check);
    assert_int_equal(got->finding->verdict, GW_FAIL);
    assert_true(!got->choice == !choice);
    if (choice) assert_string_equal(got->choice, choice);
}

/* 20 lb are no more enough than 10; the screws, which the other option mends, block nothing. */
static void beyond_every_choice(void **state)
{
    const struct gw_bid *bid =
        bid_of(*state,
               SYSTEM "transom_connection: {capacity: 10 lb, report: L-5}\noptions:\n"
                      "  - {name: closer, change: {screw: {spacing: 6 in}}, of: screw, cost: 0.4 each}\n"
                      "  - {name: clips, change: {transom_connection: {capacity: 20 lb}}, of: wall}\n",
               PROJECT);
    assert_int_equal(bid->blocked.n, 1);
    assert_blocked(&bid->blocked.items[0], "transom_connection", NULL);
    assert_string_equal(bid->blocked.items[0].nearest, "clips"); /* told by the 20 lb that it gives */
    assert_near(bid->blocked.items[0].finding->provided, 20 * 4.4482216152605, 1e-6);
}

/* What makes it worse is no best choice. */
static void nothing_is_nearest(void **state)
{
    const struct gw_bid *bid = bid_of(*state,
                                      SYSTEM "transom_connection: {capacity: 10 lb, report: L-5}\noptions:\n"
                                             "  - {name: weaker, change: {transom_connection: {capacity: 5 lb}}}\n",
                                      PROJECT);
    const struct gw_blocked *ends = NULL;
    for (size_t i = 0; i < bid->blocked.n; i++)
        if (strcmp(bid->blocked.items[i].finding->demand->check->id, "transom_connection") == 0)
            ends = &bid->blocked.items[i];
    assert_non_null(ends);
    assert_string_equal(ends->nearest, "");
    assert_near(ends->finding->provided, 10 * 4.4482216152605, 1e-6);
}

static void what_mends_one_breaks_the_other(void **state)
{
    const struct gw_bid *bid =
        bid_of(*state,
               SYSTEM "transom_connection: {capacity: 900 lb, report: L-5}\noptions:\n"
                      "  - {name: closer, change: {screw: {spacing: 6 in}, transom_connection: {capacity: 10 lb}}}\n",
               PROJECT);
    assert_int_equal(bid->blocked.n, 2);
    const bool first = strcmp(bid->blocked.items[0].finding->demand->check->id, "screw") == 0;
    assert_blocked(&bid->blocked.items[!first], "screw", "");
    assert_blocked(&bid->blocked.items[first], "transom_connection", "closer");
    assert_near(bid->blocked.items[!first].finding->utilization, 225.0 / 200, 1e-6);
}

static void a_group_allows_one(void **state)
{
    const struct gw_bid *bid =
        bid_of(*state,
               SYSTEM "transom_connection: {capacity: 10 lb, report: L-5}\noptions:\n"
                      "  - {name: closer, change: {screw: {spacing: 6 in}}, of: screw, cost: 0.4 each, group: g}\n"
                      "  - {name: clips, change: {transom_connection: {capacity: 900 lb}}, of: wall, group: g}\n"
                      "  - {name: idle, change: {frame_weight: 3 psf}, of: wall}\n",
               PROJECT);
    assert_int_equal(bid->blocked.n, 2);
    const bool first = strcmp(bid->blocked.items[0].finding->demand->check->id, "screw") == 0;
    assert_blocked(&bid->blocked.items[!first], "screw", "clips");
    assert_blocked(&bid->blocked.items[first], "transom_connection", "closer");
    assert_false(bid->blocked_together);
}

/* Of two walls the one with wide columns alone needs closer screws, and breaks nothing of the other. */
static void a_place_with_a_choice_is_not_named(void **state)
{
    const struct gw_bid *bid =
        bid_of(*state, SYSTEM "options:\n  - {name: longer, change: {screw: {tested_pullout: 630 lb}}}\n", TWO_WALLS);
    assert_int_equal(bid->blocked.n, 1);
    assert_blocked(&bid->blocked.items[0], "screw", NULL);
    assert_string_equal(bid->blocked.items[0].place->wall, "t");
}

/* Noise, of which a rating tells what the whole lets through. */
#define NOISE "requirements: {other: [{name: stc, at_least: 35}]}\n"
#define LOUD "ratings: [{test: other, name: stc, value: 30, report: L-3}]\n"
#define QUIET "{ratings: [{test: other, name: stc, value: 36, report: L-4}]}"

static const char *project_with(struct world *w, const char *project, const char *requirements)
{
    return gw_format(&w->arena, "%s%s", project, requirements);
}

/* What no option mends hides nothing of what blocks each choice besides. */
static void what_blocks_all_hides_nothing(void **state)
{
    const struct gw_bid *bid =
        bid_of(*state,
               SYSTEM LOUD "transom_connection: {capacity: 10 lb, report: L-5}\noptions:\n"
                           "  - {name: closer, change: {screw: {spacing: 6 in}}, of: screw, cost: 0.4 each, group: g}\n"
                           "  - {name: clips, change: {transom_connection: {capacity: 900 lb}}, of: wall, group: g}\n",
               project_with(*state, PROJECT, NOISE));
    assert_int_equal(bid->blocked.n, 3);
    assert_blocked(&bid->blocked.items[0], "other", NULL);
    assert_null(bid->blocked.items[0].nearest);
    const bool first = strcmp(bid->blocked.items[1].finding->demand->check->id, "screw") == 0;
    assert_blocked(&bid->blocked.items[1 + !first], "screw", "clips");
    assert_blocked(&bid->blocked.items[1 + first], "transom_connection", "closer");
    assert_false(bid->blocked_together);
}

/* The screws, 225 of 200 lb, and the ends of transoms, 187.5 of 10 lb, are mended by one option, which lets noise in:
 * either stands against the noise, and the ends lack far more. */
static void of_equal_sets_the_graver(void **state)
{
    const struct gw_bid *bid =
        bid_of(*state,
               SYSTEM "transom_connection: {capacity: 10 lb, report: L-5}\n"
                      "ratings: [{test: other, name: stc, value: 36, report: L-4}]\noptions:\n"
                      "  - {name: open, change: {screw: {spacing: 6 in}, transom_connection: {capacity: 900 lb}, "
                      "ratings: [{test: other, name: stc, value: 30, report: L-3}]}}\n",
               project_with(*state, PROJECT, NOISE));
    assert_int_equal(bid->blocked.n, 2);
    const bool first = strcmp(bid->blocked.items[0].finding->demand->check->id, "other") == 0;
    assert_blocked(&bid->blocked.items[!first], "other", "open");
    assert_blocked(&bid->blocked.items[first], "transom_connection", "");
}

/* Glass of 3/8 in, 4.9 psf. Middle transoms of the second wall take 60 x 2 x 4 / 2 = 240 lb of wind and 39 lb of glass,
 * together 243 lb of 234, and its screws 180 lb; sills of the first 187.5 lb and 122 lb, together 224 lb. So one wall
 * needs the one option and the other the other, of which the project takes one. */
static const char *two_needs(struct world *w, const char *requirements)
{
    const char *lites = strstr(TWO_WALLS, "{a: {}}"), *second = strstr(TWO_WALLS, "  - {name: n");
    return gw_format(
        &w->arena, "%.*s%s%.*s%s%s", (int)(lites - TWO_WALLS), TWO_WALLS,
        "{a: {layers: [{glass: 3/8 in, treatment: tempered}]}}", (int)(second - lites - 7), lites + 7,
        "  - {name: n, width: 8 ft, floors: [0 ft], top: 8 ft, ends: [none, none],\n"
        "     columns: {count: 2, width: 4 ft}, rows: [{height: 4 ft, lite: a}, {height: rest, lite: a}]}\n",
        requirements);
}
#define TWO_OPTIONS                                                                                                    \
    "transom_connection: {capacity: 234 lb, report: L-5}\noptions:\n"                                                  \
    "  - {name: closer, change: {screw: {spacing: 6 in}}, of: screw, group: g, choose: project}\n"                     \
    "  - {name: clips, change: {transom_connection: {capacity: 900 lb}}, of: wall, group: g, choose: project}\n"

static void assert_apart(const struct gw_bid *bid, size_t at)
{
    assert_true(bid->blocked_together);
    assert_int_equal(bid->blocked.n, at + 2);
    const bool first = strcmp(bid->blocked.items[at].finding->demand->check->id, "screw") == 0;
    const struct gw_blocked *screw = &bid->blocked.items[at + !first], *ends = &bid->blocked.items[at + first];
    assert_blocked(screw, "screw", "clips");
    assert_blocked(ends, "transom_connection", "closer");
    assert_true(screw->together && ends->together);
    assert_string_equal(screw->place->wall, "t");
    assert_string_equal(ends->place->wall, "n");
    assert_string_equal(bid->blocked_rule,
                        "'closer', 'clips': taken on all walls or on none (choose: project); at most "
                        "one of 'closer' and 'clips' is taken (group: g)");
}

/* Noise, which an option mends wherever it is wanted, is no part of it. */
static void places_that_must_agree(void **state)
{
    assert_apart(bid_of(*state,
                        SYSTEM LOUD TWO_OPTIONS "  - {name: quiet, change: " QUIET ", of: wall, cost: 1 per ft2}\n",
                        two_needs(*state, NOISE)),
                 0);
}

static void places_that_must_agree_besides(void **state)
{
    const struct gw_bid *bid = bid_of(*state, SYSTEM LOUD TWO_OPTIONS, two_needs(*state, NOISE));
    assert_blocked(&bid->blocked.items[0], "other", NULL);
    size_t alone = 0;
    while (alone < bid->blocked.n && !bid->blocked.items[alone].together) alone++;
    for (size_t i = 0; i < alone; i++) assert_blocked(&bid->blocked.items[i], "other", NULL);
    assert_apart(bid, alone);
}

int main(void)
{
    const struct CMUnitTest tests[] = {WORLD_TEST(beyond_every_choice),
                                       WORLD_TEST(what_mends_one_breaks_the_other),
                                       WORLD_TEST(a_group_allows_one),
                                       WORLD_TEST(a_place_with_a_choice_is_not_named),
                                       WORLD_TEST(places_that_must_agree),
                                       WORLD_TEST(nothing_is_nearest),
                                       WORLD_TEST(what_blocks_all_hides_nothing),
                                       WORLD_TEST(of_equal_sets_the_graver),
                                       WORLD_TEST(places_that_must_agree_besides)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
