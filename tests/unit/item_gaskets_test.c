/* Gaskets as they were read: length, corners, places. */
#include "support.h"

#include "galeward/inspect.h"

static const char PROJECT[] = "galeward: 1\nproject: {name: Read}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
                              "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
                              "walls: [{name: s, width: 10 ft, floors: [0 ft], top: 9 ft, ends: [none, none],\n"
                              "  columns: {count: 2, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"
                              "site: {basic_wind_speed: 115 mph, exposure: C}\nlites: {a: {}}\ncandidates: [x.yaml]\n";
static const char SYSTEM[] = "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n";

static struct gw_item_result judged(struct world *w, enum gw_item_id item, struct gw_item_value value)
{
    struct gw_item_result r;
    struct gw_as_read read;
    const struct gw_spot spot = {.wall = "s",
                                 .column = 1,
                                 .story = 1,
                                 .row = 1,
                                 .line = GW_NO_INTEGER,
                                 .edge = GW_EDGE_LEFT,
                                 .grid = gw_takeoff_wall(&w->takeoff, "s")};
    gw_as_read_clear(&read);
    read.of[item] = value;
    gw_item_judge(&r, &w->ask, gw_item_of(item), &spot, &read, &w->model.systems.items[0]);
    return r;
}

static void hang(struct world *w, const char *system)
{
    put_file(w, "x.yaml", system);
    must_judge(w, PROJECT);
}

/* Cut 1 to 2 % longer than its groove; a stretched one shrinks back. */
static void a_gasket_is_never_stretched(void **state)
{
    static const struct {
        double excess;
        enum gw_item_verdict verdict;
    } rows[] = {{0.01, GW_ITEM_WITHIN},  {0.02, GW_ITEM_WITHIN}, {0.005, GW_ITEM_UNKNOWN},
                {0.03, GW_ITEM_UNKNOWN}, {0, GW_ITEM_UNKNOWN},   {-0.002, GW_ITEM_NOT_MET}};
    struct world *w = *state;
    hang(w, SYSTEM);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const struct gw_item_result r = judged(w, GW_ITEM_gasket_excess, (struct gw_item_value){rows[i].excess, 0});
        assert_int_equal(r.verdict, rows[i].verdict);
        assert_int_equal(r.limit.basis, GW_LIMIT_PRACTICE);
        assert_true(!gw_given(r.remaining));
    }
    const struct gw_item_result good = judged(w, GW_ITEM_gasket_excess, (struct gw_item_value){0.015, 0});
    assert_false(gw_said(&good.message));
}

static void the_systems_own_excess(void **state)
{
    struct world *w = *state;
    hang(w, gw_format(&w->arena, "%sinstallation: {gasket_excess: {at_most: 0.04}}\n", SYSTEM));
    const struct gw_item_result r = judged(w, GW_ITEM_gasket_excess, (struct gw_item_value){0.03, 0});
    assert_int_equal(r.verdict, GW_ITEM_WITHIN);
    assert_int_equal(r.limit.basis, GW_LIMIT_SYSTEM);
}

/* An outer corner leaves water to the pocket, an inner one lets it in: which one it is decides. */
static void corners_and_places_ask_which(void **state)
{
    struct world *w = *state;
    hang(w, SYSTEM);
    const struct gw_item_result corner = judged(w, GW_ITEM_gasket_corner, (struct gw_item_value){GW_ABSENT, 2});
    assert_int_equal(corner.verdict, GW_ITEM_UNKNOWN);
    assert_non_null(strstr(words(&corner.message), "which gasket is open"));
    const struct gw_item_result place = judged(w, GW_ITEM_gasket_place, (struct gw_item_value){GW_ABSENT, 2});
    assert_int_equal(place.verdict, GW_ITEM_UNKNOWN);
    assert_non_null(strstr(words(&place.message), "which gasket stands where"));
    const struct gw_item_result sound = judged(w, GW_ITEM_gasket_corner, (struct gw_item_value){GW_ABSENT, 1});
    assert_int_equal(sound.verdict, GW_ITEM_WITHIN);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(a_gasket_is_never_stretched),
        WORLD_TEST(the_systems_own_excess),
        WORLD_TEST(corners_and_places_ask_which),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
