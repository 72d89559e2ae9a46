/* Frame, joints and sealant on the wall, by hand; rules of readings: docs/methods.md. */
#include "item_support.h"

#define POCKET "drift: {path: racking, side_gap: 3/8 in, end_gap: 1/2 in, bite: 1/2 in}\n"
#define STACK "stack_joint: {width: 1.75 in, least_gap: 1/4 in, engagement: 1.5 in, least_overlap: 1/2 in}\n"
#define MOVES "movement: {live_load: 1/2 in, coldest: -10 degF, hottest: 160 degF}\n"

static double kelvin(double fahrenheit) { return (fahrenheit + 459.67) / 1.8; }

static struct gw_item_result joint(struct world *w, enum gw_item_id item, double value, double low, double high)
{
    const struct gw_spot spot = spot_at(w, GW_ON_JOINT, 0, -1);
    struct gw_as_read read = nothing_read();
    read.of[item].number = value * IN;
    read.temperature_least = kelvin(low);
    read.temperature_most = kelvin(high);
    return judge_at(w, item, &spot, &read);
}

/* 23.6e-6 of a piece of 156 in for so many degF. */
static double thermal(double fahrenheit) { return 23.6e-6 * 156 * fahrenheit / 1.8; }

/* At 70 degF the metal still warms by 90 and cools by 80: closes 1/2 + 0.1841, opens 1/2 + 0.1636 in. So from 0.934 to
 * 1.75 + 1.5 - 0.5 - 0.6636 = 2.086 in. */
static void joint_at_its_temperature(void **state)
{
    struct world *w = *state;
    hang(w, QUIET MOVES, "captured", STACK);
    const double closes = 0.5 + thermal(90), opens = 0.5 + thermal(80);
    struct gw_item_result r = joint(w, GW_ITEM_joint_width, 1.75, 70, 70);
    assert_item(r, GW_ITEM_WITHIN);
    assert_near(r.limit.at_least, (0.25 + closes) * IN, 1e-9);
    assert_near(r.limit.at_most, (1.75 + 1.5 - 0.5 - opens) * IN, 1e-9);
    assert_near(r.remaining, 1.0 / opens, 1e-9);
    assert_string_equal(r.mechanism, "opening");
    r = joint(w, GW_ITEM_joint_width, 0.9, 70, 70);
    assert_item(r, GW_ITEM_NOT_MET);
    assert_near(r.remaining, 0.65 / closes, 1e-9);
    r = joint(w, GW_ITEM_joint_width, 2.2, 70, 70);
    assert_item(r, GW_ITEM_NOT_MET);
    assert_near(r.remaining, (1.5 + 1.75 - 2.2 - 0.5) / opens, 1e-9);
    r = joint(w, GW_ITEM_joint_width, 0.2, 70, 70); /* less than it is to keep */
    assert_item(r, GW_ITEM_NOT_MET);
}

/* The same gap is enough on a hot day and too little on a cold one; of a range each end counts at its worse. */
static void joint_on_another_day(void **state)
{
    struct world *w = *state;
    hang(w, QUIET MOVES, "captured", STACK);
    struct gw_item_result r = joint(w, GW_ITEM_joint_width, 0.9, 110, 110);
    assert_item(r, GW_ITEM_WITHIN);
    assert_near(r.remaining, 0.65 / (0.5 + thermal(50)), 1e-9);
    r = joint(w, GW_ITEM_joint_width, 0.9, 60, 110);
    assert_item(r, GW_ITEM_NOT_MET);
    assert_near(r.remaining, 0.65 / (0.5 + thermal(100)), 1e-9);
    r = joint(w, GW_ITEM_joint_width, 2.0, 60, 110);
    assert_near(r.remaining, 0.75 / (0.5 + thermal(120)), 1e-9);
}

static void joint_without_what_it_hangs_on(void **state)
{
    struct world *w = *state;
    hang(w, QUIET MOVES, "captured", STACK);
    struct gw_item_result r = judge_number(w, GW_ITEM_joint_width, 0, -1, 1.75 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "at what temperature of the metal");
    world_close(w);
    world_open(w);
    hang(w, QUIET MOVES, "captured", "stack_joint: {width: 1.75 in, least_gap: 1/4 in}\n");
    r = joint(w, GW_ITEM_joint_width, 1.75, 70, 70);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "how far is the leg engaged");
    r = joint(w, GW_ITEM_joint_width, 0.9, 70, 70);
    assert_item(r, GW_ITEM_NOT_MET);
    world_close(w);
    world_open(w);
    hang(w, QUIET, "captured", STACK);
    r = joint(w, GW_ITEM_joint_width, 1.75, 70, 70);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "live load");
}

/* What the leg was found engaged by goes before what is drawn: 1 in, to keep 1/2 in, opens 0.6636 in. */
static void engagement(void **state)
{
    struct world *w = *state;
    hang(w, QUIET MOVES, "captured", STACK);
    const double opens = 0.5 + thermal(80);
    struct gw_item_result r = joint(w, GW_ITEM_splice_engagement, 1.2, 70, 70);
    assert_item(r, GW_ITEM_WITHIN);
    assert_near(r.limit.at_least, (0.5 + opens) * IN, 1e-9);
    assert_near(r.remaining, 0.7 / opens, 1e-9);
    r = joint(w, GW_ITEM_splice_engagement, 1, 70, 70);
    assert_item(r, GW_ITEM_NOT_MET);
    const struct gw_spot spot = spot_at(w, GW_ON_JOINT, 0, -1);
    struct gw_as_read read = nothing_read();
    read.of[GW_ITEM_joint_width].number = 1.75 * IN;
    read.of[GW_ITEM_splice_engagement].number = 1 * IN;
    read.temperature_least = read.temperature_most = kelvin(70);
    r = judge_at(w, GW_ITEM_joint_width, &spot, &read);
    assert_item(r, GW_ITEM_NOT_MET);
    assert_near(r.remaining, 0.5 / opens, 1e-9);
}

/* Diagonals of 5 x 6 ft, 93.72 in, that differ by 1/4 in: the head stands 0.1953 in beside the sill. Of 1.95 in of room
 * 1.7547 are left for 1.7308 in of drift; of 1/2 in 1.5595. */
static void squareness(void **state)
{
    struct world *w = *state;
    hang(w, SITE(", seismic: {category: D, sds: 1.0, story_drift: 3 in}"), "captured", POCKET);
    const double skew = 0.25 * hypot(60, 72) / 120, asked = 1.25 * 3 * 6 / 13;
    struct gw_item_result r = judge_number(w, GW_ITEM_squareness, 2, -1, 0.125 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    r = judge_number(w, GW_ITEM_squareness, 2, -1, 0.25 * IN);
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(r.remaining, (1.95 - skew) / asked, 1e-9);
    r = judge_number(w, GW_ITEM_squareness, 2, -1, 0.5 * IN);
    assert_item(r, GW_ITEM_NOT_MET);
    assert_near(r.remaining, (1.95 - 2 * skew) / asked, 1e-9);
    r = judge_number(w, GW_ITEM_squareness, 2, -1, 1.5 * IN); /* more than both sides: the ends give too */
    assert_near(r.remaining, (1.95 - 6 * skew) / asked, 1e-9);
    world_close(w);
    world_open(w);
    hang(w, QUIET, "captured", POCKET);
    r = judge_number(w, GW_ITEM_squareness, 2, -1, 0.5 * IN);
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(r.remaining, 1.95 / (2 * skew), 1e-9);
}

/* A test whose specimen had all of its room shows nothing where the opening has taken some. */
static void squareness_of_a_test(void **state)
{
    struct world *w = *state;
    hang(w, SITE(", seismic: {category: D, sds: 1.0, story_drift: 4 in}"), "captured",
         POCKET
         "ratings: [{test: sway, kind: dynamic, drift: 5 in, report: R-9, tested: {lite_width: 5 ft, lite_height: "
         "6 ft,\n  make_up: a, side_gap: 3/8 in, end_gap: 1/2 in, bite: 1/2 in, story_height: 13 ft}}]\n");
    struct gw_item_result r = judge_number(w, GW_ITEM_squareness, 2, -1, 0.125 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    r = judge_number(w, GW_ITEM_squareness, 2, -1, 0.25 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "R-9 recorded a side gap");
}

/* 1/8 in over 12 ft: 0.1354 in over 13 ft, 0.0521 in over 5 ft. Out of it the glass beside it tells. */
static void plumb_and_level(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", POCKET);
    struct gw_item_result r = judge_number(w, GW_ITEM_plumb, 0, -1, 0.135 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    assert_near(r.limit.at_most, 0.125 * 13 / 12 * IN, 1e-9);
    r = judge_number(w, GW_ITEM_plumb, 0, -1, 0.14 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "edge clearance and bite");
    r = judge_number(w, GW_ITEM_location, 0, -1, 0.3 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    struct gw_spot spot = spot_at(w, GW_ON_EDGE, 2, GW_EDGE_LEFT);
    struct gw_as_read read = nothing_read();
    read.of[GW_ITEM_plumb].number = 0.3 * IN;
    read.of[GW_ITEM_edge_clearance].number = 0.375 * IN;
    read.of[GW_ITEM_glass_bite].number = 0.5 * IN;
    r = judge_at(w, GW_ITEM_plumb, &spot, &read);
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    read.of[GW_ITEM_glass_bite].number = 0.1 * IN;
    r = judge_at(w, GW_ITEM_plumb, &spot, &read);
    assert_item(r, GW_ITEM_NOT_MET);
}

static void own_tolerance_goes_before(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", POCKET "installation: {plumb: {at_most: 1/4 in}}\n");
    const struct gw_item_result r = judge_number(w, GW_ITEM_plumb, 0, -1, 0.2 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    assert_int_equal(r.limit.basis, GW_LIMIT_SYSTEM);
}

static void anchors(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", "");
    struct gw_item_result r = judge_word(w, GW_ITEM_anchor_fastened, 1);
    assert_item(r, GW_ITEM_WITHIN);
    for (int word = 2; word <= 3; word++) {
        r = judge_word(w, GW_ITEM_anchor_fastened, word);
        assert_item(r, GW_ITEM_NOT_MET);
    }
    r = judge_word(w, GW_ITEM_anchor_fastened, 4);
    assert_item(r, GW_ITEM_UNKNOWN);
    r = judge_number(w, GW_ITEM_anchor_clearance, 0, -1, 2 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    r = judge_number(w, GW_ITEM_anchor_clearance, 0, -1, 1.5 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    r = judge_number(w, GW_ITEM_member_offset, 0, -1, 0.04 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
}

/* Moves 1/4 in, takes a quarter: 1 in; without that 1/4 in at least. */
static void sealant_width(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", "perimeter: {movement: 1/4 in, capability: 0.25}\n");
    struct gw_item_result r = judge_number(w, GW_ITEM_sealant_width, 2, GW_EDGE_HEAD, 1 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    assert_near(r.limit.at_least, IN, 1e-12);
    r = judge_number(w, GW_ITEM_sealant_width, 2, GW_EDGE_HEAD, 0.75 * IN);
    assert_item(r, GW_ITEM_NOT_MET);
    assert_near(r.remaining, 0.75, 1e-9);
    world_close(w);
    world_open(w);
    hang(w, QUIET, "captured", "");
    r = judge_number(w, GW_ITEM_sealant_width, 2, GW_EDGE_HEAD, 0.25 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    r = judge_number(w, GW_ITEM_sealant_width, 2, GW_EDGE_HEAD, 0.2 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "perimeter: movement, capability");
}

/* Half of 3/4 in, 1/16 in either way; of a joint that was not measured 1/4 to 1/2 in. */
static void sealant_depth(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", "");
    const struct gw_spot spot = spot_at(w, GW_ON_SEALANT, 2, GW_EDGE_HEAD);
    struct gw_as_read read = nothing_read();
    read.of[GW_ITEM_sealant_width].number = 0.75 * IN;
    read.of[GW_ITEM_sealant_depth].number = 0.4375 * IN;
    struct gw_item_result r = judge_at(w, GW_ITEM_sealant_depth, &spot, &read);
    assert_item(r, GW_ITEM_WITHIN);
    assert_near(r.limit.at_least, 0.3125 * IN, 1e-12);
    read.of[GW_ITEM_sealant_depth].number = 0.48 * IN;
    r = judge_at(w, GW_ITEM_sealant_depth, &spot, &read);
    assert_item(r, GW_ITEM_UNKNOWN);
    r = judge_number(w, GW_ITEM_sealant_depth, 2, GW_EDGE_HEAD, 0.48 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    r = judge_number(w, GW_ITEM_sealant_depth, 2, GW_EDGE_HEAD, 0.2 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
}

static void sealant_words(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", "");
    const struct gw_spot spot = spot_at(w, GW_ON_SEALANT, 2, GW_EDGE_HEAD);
    struct gw_as_read read = nothing_read();
    read.of[GW_ITEM_substrate].word = 2;
    struct gw_item_result r = judge_at(w, GW_ITEM_substrate, &spot, &read);
    assert_item(r, GW_ITEM_UNKNOWN);
    read.of[GW_ITEM_sealant_adhesion].word = 1;
    r = judge_at(w, GW_ITEM_substrate, &spot, &read);
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    read.of[GW_ITEM_sealant_adhesion].word = 2;
    r = judge_at(w, GW_ITEM_substrate, &spot, &read);
    assert_item(r, GW_ITEM_NOT_MET);
    r = judge_at(w, GW_ITEM_sealant_adhesion, &spot, &read);
    assert_item(r, GW_ITEM_NOT_MET);
    read.of[GW_ITEM_air_barrier].word = 2;
    r = judge_at(w, GW_ITEM_air_barrier, &spot, &read);
    assert_item(r, GW_ITEM_NOT_MET);
    read.of[GW_ITEM_air_barrier].word = 1;
    r = judge_at(w, GW_ITEM_air_barrier, &spot, &read);
    assert_item(r, GW_ITEM_WITHIN);
}

int main(void)
{
    const struct CMUnitTest tests[] = {WORLD_TEST(joint_at_its_temperature),
                                       WORLD_TEST(joint_on_another_day),
                                       WORLD_TEST(joint_without_what_it_hangs_on),
                                       WORLD_TEST(engagement),
                                       WORLD_TEST(squareness),
                                       WORLD_TEST(squareness_of_a_test),
                                       WORLD_TEST(plumb_and_level),
                                       WORLD_TEST(own_tolerance_goes_before),
                                       WORLD_TEST(anchors),
                                       WORLD_TEST(sealant_width),
                                       WORLD_TEST(sealant_depth),
                                       WORLD_TEST(sealant_words)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
