/* Glass in its pocket and on its blocks, by hand; rules of readings: docs/methods.md. */
#include "item_support.h"

#include "tables_data.h"

#define POCKET "drift: {path: racking, side_gap: 3/8 in, end_gap: 1/2 in, bite: 1/2 in}\n"
#define DRIFTS(inches) SITE(", seismic: {category: D, sds: 1.0, story_drift: " inches " in}")

/* Lite a in a frame that racks: of 3 in over 13 ft it gets 6/13, times 1.25: 1.7308 in. It has 2 c1 + 2 c2 6/5: drawn
 * 1.95; with one side of 1/4 in c1 is 5/16: 1.825, 1.0544 of it; with 1/8 in 1.70, 0.9822. More than drawn is no more.
 */
static void clearance_against_drift(void **state)
{
    struct world *w = *state;
    hang(w, DRIFTS("3"), "captured", POCKET);
    const double asked = 1.25 * 3 * 6 / 13;
    struct gw_item_result r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_LEFT, 0.25 * IN);
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(r.remaining, 1.825 / asked, 1e-9);
    assert_string_equal(r.mechanism, "drift");
    assert_near(r.limit.at_least, 0.375 * IN, 1e-12);
    assert_int_equal(r.limit.basis, GW_LIMIT_SYSTEM);
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_LEFT, 0.125 * IN);
    assert_item(r, GW_ITEM_NOT_MET);
    assert_near(r.remaining_worst, 1.70 / asked, 1e-9);
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_LEFT, 0.4375 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    assert_near(r.remaining, 1.95 / asked, 1e-9);
    /* at the head c2 is (0.4 + 0.5) / 2 */
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_HEAD, 0.4 * IN);
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(r.remaining, (0.75 + 0.9 * 6 / 5) / asked, 1e-9);
}

/* Where no drift is asked the cold is left: 14.6e-6 of half the width, of all the height, 100 K: 0.0438, 0.1051 in. */
static void clearance_in_the_cold(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", POCKET);
    struct gw_item_result r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_RIGHT, 0.125 * IN);
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(r.remaining_worst, 0.125 / (14.6e-6 * 30 * 100), 1e-6);
    assert_near(r.remaining, 2 * r.remaining_worst, 1e-6);
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_RIGHT, 0);
    assert_item(r, GW_ITEM_NOT_MET);
    assert_says(r, "the glass touches metal");
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_HEAD, 0.0625 * IN); /* 1.19 at one end, 0.59 at the other */
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "how cold does it get");
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_HEAD, 0.03 * IN);
    assert_item(r, GW_ITEM_NOT_MET);
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_SILL, 0.125 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "setting blocks");
}

/* 4 in ask 2.3077 of the 1.95 in that are drawn: a test may still show it, so nothing is lost to what was read. */
static void clearance_short_as_drawn(void **state)
{
    struct world *w = *state;
    hang(w, DRIFTS("4"), "captured", POCKET);
    struct gw_item_result r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_LEFT, 0.375 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "short as drawn too");
    assert_says(r, "drift at which glass falls out");
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_LEFT, 0.25 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
}

/* What earthquakes there are is not said: nothing holds outside its limit. */
static void clearance_without_seismic_data(void **state)
{
    struct world *w = *state;
    hang(w, SITE(""), "captured", POCKET);
    const struct gw_item_result r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_LEFT, 0.25 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "seismic design category");
}

/* 4 in: 2.3077 in of the lite, more than its 1.95; a test to 5 in with as much room shows it, and no longer where there
 * is less. */
#define SWAY                                                                                                           \
    "ratings: [{test: sway, kind: dynamic, drift: 5 in, report: R-9, tested: {lite_width: 5 ft, lite_height: 6 ft,\n"  \
    "  make_up: a, side_gap: 3/8 in, end_gap: 1/2 in, bite: 1/2 in, story_height: 13 ft}}]\n"
static void clearance_of_a_test(void **state)
{
    struct world *w = *state;
    hang(w, DRIFTS("4"), "captured", POCKET SWAY);
    struct gw_item_result r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_LEFT, 0.375 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_LEFT, 0.25 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "R-9 recorded a side gap of 0.375 in, here 0.3125 in");
    r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_LEFT, 0.48 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "R-9 recorded a bite of 0.5 in, here 0.48 in");
    r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_LEFT, 0.5 * IN);
    assert_item(r, GW_ITEM_WITHIN);
}

/* The lite moves sideways by 1/8 in, where side blocks hold it, to the 3/8 in opposite; the frame outgrows it:
 * 14.6e-6 of 60 in, 100 K: 0.0876 in; set at 40 to 80 degF and to 150 degF 61.1 K, 0.0535 in. A bow of 1 in would take
 * 0.04 in more. */
#define TEMPERATE "movement: {coldest: -10 degF, hottest: 150 degF, set_coldest: 40 degF, set_warmest: 80 degF}\n"
static void bite_by_hand(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", POCKET);
    struct gw_item_result r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_LEFT, 0.16 * IN);
    assert_item(r, GW_ITEM_NOT_MET); /* 0.125 + 0.0438 */
    assert_string_equal(r.mechanism, "bite");
    r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_SILL, 0.4 * IN); /* nothing lifts it */
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_LEFT, 0.45 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "how warm does it get");
    r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_LEFT, 0.5 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_HEAD, 0.38 * IN); /* it stands: no gap to move by */
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_HEAD, 0.37 * IN); /* less than three quarters */
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "gasket");
}

static void bite_at_known_temperatures(void **state)
{
    struct world *w = *state;
    hang(w, QUIET TEMPERATE, "captured", POCKET);
    struct gw_item_result r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_LEFT, 0.45 * IN);
    const double leaves = 0.375 + 14.6e-6 * 60 * 110 / 1.8;
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    assert_true(r.remaining_worst < 0.45 / leaves && r.remaining_worst > 0.45 / (leaves + 0.04));
    /* a gap of 1/4 in here is one of 1/2 in opposite */
    const struct gw_spot spot = spot_at(w, GW_ON_EDGE, 2, GW_EDGE_LEFT);
    struct gw_as_read read = nothing_read();
    read.of[GW_ITEM_glass_bite].number = 0.45 * IN;
    read.of[GW_ITEM_edge_clearance].number = 0.25 * IN;
    r = judge_at(w, GW_ITEM_glass_bite, &spot, &read);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "side blocks");
}

/* Set between 40 and 80 degF the frame of a lite of 5 ft grows by 0.0535 in at most: 0.125 + 0.0535 = 0.1785 in even
 * where side blocks hold it; halfway 0.125 + 0.0268 = 0.152 would do. Of the cold 14.6e-6 x 30 in x 50 K = 0.0219 in at
 * a side. */
static void short_at_the_bad_end_of_what_is_stated(void **state)
{
    struct world *w = *state;
    hang(w, QUIET TEMPERATE, "captured", POCKET);
    struct gw_item_result r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_LEFT, 0.17 * IN);
    assert_item(r, GW_ITEM_NOT_MET);
    assert_true(r.remaining > 1 && r.remaining_worst < 0.17 / 0.4285);
    assert_says(r, "enough at the good end of the ranges: how warm was the metal when this lite was set");
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_LEFT, 0.016 * IN);
    assert_item(r, GW_ITEM_NOT_MET);
    assert_near(r.remaining_worst, 0.016 / (14.6e-6 * 30 * 50), 1e-3);
    assert_says(r, "how warm was the metal when this lite was set");
    hang(w, QUIET, "captured", POCKET); /* no temperatures: they are asked */
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_LEFT, 0.03 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "how cold does it get");
}

/* A frame that racks may lift it by the 1/2 in at its head. */
static void bite_where_the_frame_racks(void **state)
{
    struct world *w = *state;
    hang(w, DRIFTS("1"), "captured", POCKET);
    const struct gw_item_result r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_SILL, 0.4 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
}

/* An impact rating names its bite, a blast rating none: less than drawn takes both away. */
#define IMPACT                                                                                                         \
    "ratings: [{test: impact, missile: D, wind_zone: 3, positive: 90 psf, negative: 90 psf, bite: 1/2 in,\n"           \
    "  report: I-7, tested: {lite_width: 5 ft, lite_height: 7 ft}}]\n"
static void bite_of_an_impact_test(void **state)
{
    struct world *w = *state;
    hang(w, SITE(", seismic: {category: A}, hurricane_prone: true, impact: {missile: D, wind_zone: 3, bite: 1/2 in}"),
         "captured", POCKET IMPACT);
    struct gw_item_result r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_HEAD, 0.45 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "I-7 recorded a bite of 0.5 in, here 0.45 in");
    r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_HEAD, 0.5 * IN);
    assert_item(r, GW_ITEM_WITHIN);
}

#define BLAST                                                                                                          \
    "ratings: [{test: blast, pressure: 4 psi, impulse: 28 psi-ms, hazard: very_low, report: B-2, tested: {lites: [\n"  \
    "  {width: 5 ft, height: 7 ft, support: 4, hold: plate, component: fixed, layers: [{glass: 6 mm, treatment: "      \
    "tempered},\n    {cavity: 12 mm}, {glass: 6 mm, treatment: tempered}]}]}}]\n"
static void bite_of_a_blast_test(void **state)
{
    struct world *w = *state;
    hang(w, SITE(", seismic: {category: A}, blast: {pressure: 4 psi, impulse: 28 psi-ms, hazard: low}"), "captured",
         POCKET BLAST);
    struct gw_item_result r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_HEAD, 0.45 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "B-2 records no bite");
    r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_HEAD, 0.5 * IN);
    assert_item(r, GW_ITEM_WITHIN);
}

/* Without the system's own: 1/2 in of units. */
static void bite_of_practice(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", "");
    const struct gw_item_result r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_LEFT, 0.5 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    assert_near(r.limit.at_least, 0.5 * IN, 1e-12);
    assert_int_equal(r.limit.basis, GW_LIMIT_PRACTICE);
}

/* Suction on half of the 60 in at 20 psi; the bite at least as wide as the bead is thick, 3/8 in. */
static void bite_of_a_bead(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "silicone", "silicone: {bite: 5/8 in, thickness: 3/8 in, edge_seal: {bite: 5/8 in}}\n");
    struct gw_item_result r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_LEFT, 0.55 * IN);
    const struct gw_element *e = spot_at(w, GW_ON_LITE, 2, -1).lite;
    const double needed = -e->outward_asd.pa * 30 * IN / (20 * 6894.757293168);
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(r.remaining, fmin(0.55 * IN / needed, 0.55 / 0.375), 1e-6);
    r = judge_number(w, GW_ITEM_glass_bite, 2, GW_EDGE_LEFT, 0.1 * IN);
    assert_item(r, GW_ITEM_NOT_MET);
    assert_string_equal(r.mechanism, "silicone");
    r = judge_number(w, GW_ITEM_edge_clearance, 2, GW_EDGE_LEFT, 0.25 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "bonded all round");
}

/* 6 + 12 + 6 mm is 24 mm, nominal; the pocket for 1 in takes 1/16 in either way. */
static void thickness(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", "pocket: [1/4 in, 1 in]\n");
    struct gw_item_result r = judge_number(w, GW_ITEM_glass_thickness, 2, -1, 1.06 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    assert_near(r.limit.at_least, 0.9375 * IN, 1e-12);
    r = judge_number(w, GW_ITEM_glass_thickness, 2, -1, 1.07 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "gasket");
}

/* Lite b, 35 ft2: 3.5 in of each block by its area, 4 in at least. The same rule in both systems of units. */
static void block_length(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", "");
    assert_near(gw_tables_standard()->setting_block[0].per_area, 0.027, 0.0005);
    assert_near(gw_tables_standard()->setting_block[0].per_area * FT2, 0.1 * IN, 1e-12);
    struct gw_item_result r = judge_number(w, GW_ITEM_setting_block_length, 1, -1, 3.6 * IN);
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(r.remaining, 3.6 / 3.5, 1e-9);
    assert_near(r.limit.at_least, 4 * IN, 1e-12);
    r = judge_number(w, GW_ITEM_setting_block_length, 1, -1, 3.4 * IN);
    assert_item(r, GW_ITEM_NOT_MET);
    r = judge_number(w, GW_ITEM_setting_block_length, 1, -1, 4 * IN);
    assert_item(r, GW_ITEM_WITHIN);
}

/* Of 60 in: 15 in, out to 7.5 in. At 18 in the rail bends more: the corner of the glass may be half of the mullion's
 * 2.5 in from the rail's end, so as with blocks at 19.25 in. */
#define RAIL                                                                                                           \
    "mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 6 in, flange: 0.125 in, web: 0.125 in}}\n"                 \
    "transom: {alloy: 6063-T6, eccentricity: 0 in, %stube: {width: 2.5 in, depth: 6 in, flange: 0.125 in, web: "       \
    "0.125 in}}\n"
static void block_place(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", gw_format(&w->arena, RAIL, ""));
    struct gw_item_result r = judge_number(w, GW_ITEM_setting_block_place, 2, -1, 12 * IN);
    assert_item(r, GW_ITEM_WITHIN);
    assert_near(r.limit.at_most, 15 * IN, 1e-12);
    assert_near(r.limit.at_least, 7.5 * IN, 1e-12);
    r = judge_number(w, GW_ITEM_setting_block_place, 2, -1, 5 * IN);
    assert_item(r, GW_ITEM_UNKNOWN);
    assert_says(r, "nearer to the corner");
    r = judge_number(w, GW_ITEM_setting_block_place, 2, -1, 18 * IN);
    assert_item(r, GW_ITEM_OUTSIDE_HOLDS);
    const double remaining = r.remaining;
    const char *const rail = gw_takeoff_edge(&w->takeoff, "s", 1, 2, 2, GW_EDGE_SILL, false)->id;
    world_close(w);
    world_open(w);
    hang(w, QUIET, "captured", gw_format(&w->arena, RAIL, "block_offset: 19.25 in, "));
    (void)rail;
    const char *const again = gw_takeoff_edge(&w->takeoff, "s", 1, 2, 2, GW_EDGE_SILL, false)->id;
    const double use =
        fmax(finding(w, "transom", again)->utilization, finding(w, "transom_deflection", again)->utilization);
    assert_near(remaining, 1 / use, 1e-9);
}

static void blocks(void **state)
{
    struct world *w = *state;
    hang(w, QUIET, "captured", "");
    struct gw_item_result r = judge_number(w, GW_ITEM_setting_block_hardness, 2, -1, 85);
    assert_item(r, GW_ITEM_WITHIN);
    r = judge_number(w, GW_ITEM_setting_block_hardness, 2, -1, 70);
    assert_item(r, GW_ITEM_UNKNOWN);
    r = judge_number(w, GW_ITEM_edge_block_hardness, 2, -1, 65);
    assert_item(r, GW_ITEM_WITHIN);
    r = judge_number(w, GW_ITEM_setting_block_width, 2, -1, 24e-3 - IN / 16);
    assert_item(r, GW_ITEM_WITHIN);
    r = judge_number(w, GW_ITEM_setting_block_width, 2, -1, 20e-3);
    assert_item(r, GW_ITEM_UNKNOWN);
    r = judge_word(w, GW_ITEM_blocks_and_weeps, 2);
    assert_item(r, GW_ITEM_NOT_MET);
    r = judge_word(w, GW_ITEM_blocks_and_weeps, 1);
    assert_item(r, GW_ITEM_WITHIN);
    r = judge_word(w, GW_ITEM_blocks_and_weeps, 3);
    assert_item(r, GW_ITEM_UNKNOWN);
}

int main(void)
{
    const struct CMUnitTest tests[] = {WORLD_TEST(clearance_against_drift),
                                       WORLD_TEST(clearance_in_the_cold),
                                       WORLD_TEST(clearance_short_as_drawn),
                                       WORLD_TEST(clearance_without_seismic_data),
                                       WORLD_TEST(clearance_of_a_test),
                                       WORLD_TEST(bite_by_hand),
                                       WORLD_TEST(bite_where_the_frame_racks),
                                       WORLD_TEST(bite_at_known_temperatures),
                                       WORLD_TEST(short_at_the_bad_end_of_what_is_stated),
                                       WORLD_TEST(bite_of_an_impact_test),
                                       WORLD_TEST(bite_of_a_blast_test),
                                       WORLD_TEST(bite_of_practice),
                                       WORLD_TEST(bite_of_a_bead),
                                       WORLD_TEST(thickness),
                                       WORLD_TEST(block_length),
                                       WORLD_TEST(block_place),
                                       WORLD_TEST(blocks)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
