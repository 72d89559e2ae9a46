/* Items of weeps and pockets against hand calculations.
 *
 * Lites of 5 x 10 ft, 50 ft2. The pocket of the first case: one slot of 2 x 1/4 in under 1/2 in of water to its middle
 * (5/8 in deep) passes 4.40 A sqrt(h) = 4.40 x 0.5 x sqrt(0.5) = 1.56 gpm; rain of 5 gal/(h ft2) on 50 ft2, a tenth of
 * it let in, brings 0.417 gpm: 3.7 times as much (3.736 with the constants unrounded). */
#include "item_water_support.h"

static const double RATIO = 3.736;

/* Weeps ------------------------------------------------------------------------------------------------------------ */

/* The case at the head, hand calculation: 3.7 with one slot where the system has two. */
static void one_slot_of_two_drains_still(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", DRAINED(""));
    judge_number(&p, GW_ITEM_weep_count, 1, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(p.result.remaining_worst, 3.7, 0.05);
    assert_near(p.result.remaining_worst, RATIO, 1e-3);
    assert_near(p.result.limit.at_least, 2, 0);
    assert_int_equal(p.result.limit.basis, GW_LIMIT_SYSTEM);
    assert_string_equal(p.result.mechanism, "flow");
    says(&p, "the pocket equalized");
    says(&p, "the system's share");
    number(&p, GW_ITEM_weep_count, 2);
    judge(&p, GW_ITEM_weep_count, GW_ITEM_WITHIN);
    assert_near(p.result.remaining_worst, 2 * RATIO, 2e-3);
    close_place(&p);
}

/* Two slots of a fifth of the length pass 2 x 0.2 x 3.736 = 1.49; of a tenth 0.75. */
static void short_slots(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", DRAINED(""));
    judge_number(&p, GW_ITEM_weep_length, 0.4 * INCH, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(p.result.remaining_worst, 0.4 * RATIO, 2e-3);
    judge_number(&p, GW_ITEM_weep_length, 0.2 * INCH, GW_ITEM_NOT_MET);
    assert_near(p.result.remaining_worst, 0.2 * RATIO, 2e-3);
    judge_number(&p, GW_ITEM_weep_length, 0, GW_ITEM_NOT_MET);
    judge_number(&p, GW_ITEM_weep_count, 0, GW_ITEM_NOT_MET);
    assert_near(p.result.remaining_worst, 0, 0);
    close_place(&p);
}

/* Net head, not gross (error-prone points: weep flow with gross instead of net head). 12 psf hold up 2.31 in. */
static void a_pocket_that_is_not_equalized(void **state)
{
    static const char *const systems[] = {DRAINED(", equalized: no"), DRAINED("")};
    (void)state;
    for (int i = 0; i < 2; i++) {
        struct place p;
        open_place(&p, "12 psf", systems[i]);
        p.read.pocket_open = i == 1;
        judge_number(&p, GW_ITEM_weep_count, 2, GW_ITEM_NOT_MET);
        assert_near(p.result.remaining_worst, 0, 0);
        says(&p, "12 psf");
        says(&p, i == 0 ? "the limit, not the work" : "short by what else was read there");
        close_place(&p);
    }
}

/* 1 psf holds up 0.1923 in: 0.3077 in of 0.5 in are left, so sqrt(0.6154) = 0.7845 of the flow. */
static void part_of_the_head_is_left(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "1 psf", DRAINED(", equalized: no"));
    judge_number(&p, GW_ITEM_weep_count, 1, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(p.result.remaining_worst, 0.7845 * RATIO, 2e-3);
    close_place(&p);
}

/* Each of these readings opens the pocket (rule: equalized only while its plugs, corners, joints and weeps are). */
static void what_opens_the_pocket(void **state)
{
    static const struct {
        enum gw_item_id item;
        const char *word;
    } cases[] = {{GW_ITEM_joint_plug, "missing"},      {GW_ITEM_joint_plug, "loose"},
                 {GW_ITEM_frame_joint, "open"},        {GW_ITEM_gasket_corner, "open"},
                 {GW_ITEM_weep_clear, "no"},           {GW_ITEM_cover_weep_clear, "no"},
                 {GW_ITEM_sealant_under_cover, "yes"}, {GW_ITEM_weep_place, "pocket_head"},
                 {GW_ITEM_blocks_and_weeps, "covered"}};
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct place p;
        open_place(&p, "12 psf", DRAINED(""));
        word(&p, cases[i].item, cases[i].word);
        judge_number(&p, GW_ITEM_weep_count, 2, GW_ITEM_NOT_MET);
        says(&p, "short by what else was read there");
        says_not(&p, "the limit, not the work");
        close_place(&p);
    }
}

/* Without a share of the system: 5 to 25 % by practice; one slot: 2 x 3.736 = 7.47 at best, 0.4 x 3.736 = 1.49 at
 * worst; half a slot 0.747 at worst. */
static void the_share_is_a_range_of_practice(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", "drainage: {slots: 2, slot_length: 2 in, slot_height: 1/4 in, pocket_depth: 5/8 in}");
    judge_number(&p, GW_ITEM_weep_count, 1, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(p.result.remaining, 2 * RATIO, 2e-3);
    assert_near(p.result.remaining_worst, 0.4 * RATIO, 2e-3);
    says(&p, "25 % let in, a share of practice");
    judge_number(&p, GW_ITEM_weep_length, INCH, GW_ITEM_NOT_MET);
    says(&p, "what share of the rain do the outer seals let in");
    says_not(&p, "nut factor");
    close_place(&p);
}

/* Slots of 0.5 x 2 mm: tension along their edges, 2 x 0.0728 / 9802 x (1/0.5 + 1/2) per mm, holds 37 mm; 5/8 in stand
 * there. */
static void surface_tension_closes_a_slot(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", DRAINED(""));
    number(&p, GW_ITEM_weep_length, 0.002);
    judge_number(&p, GW_ITEM_weep_height, 0.0005, GW_ITEM_NOT_MET);
    assert_near(p.result.remaining_worst, 0, 0);
    says(&p, "surface tension");
    close_place(&p);
}

/* A slot of 3 in where water stands 5/8 in deep: as one of 5/8 in, half of it above the middle: 2 slots pass 4.40 x 2.5
 * x sqrt(0.3125) = 6.15 gpm, 14.77 times 0.4167. */
static void a_slot_higher_than_the_water(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", DRAINED(""));
    judge_number(&p, GW_ITEM_weep_height, 3 * INCH, GW_ITEM_WITHIN);
    assert_near(p.result.remaining_worst, 14.77, 0.01);
    close_place(&p);
}

static void what_is_not_known_is_asked(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", "drainage: {slots: 2, slot_length: 2 in, slot_height: 1/4 in}");
    judge_number(&p, GW_ITEM_weep_count, 1, GW_ITEM_UNKNOWN);
    says(&p, "how deep can water stand in the pocket");
    close_place(&p);
    open_place(&p, "12 psf", DRAINED(""));
    p.spot.lite = NULL;
    judge_number(&p, GW_ITEM_weep_count, 1, GW_ITEM_UNKNOWN);
    says(&p, "which lite");
    close_place(&p);
    open_place(&p, "12 psf",
               "drainage: {slots: 2, slot_length: 2 in, slot_height: 1/4 in, pocket_depth: 5/8 in, leak_share: 0}");
    judge_number(&p, GW_ITEM_weep_count, 1, GW_ITEM_UNKNOWN);
    close_place(&p);
}

/* Without a system's figures: two slots of 5 x 9 mm (guidance on setting blocks). */
static void least_sizes_of_practice(void **state)
{
    static const struct {
        enum gw_item_id item;
        double least;
    } cases[] = {{GW_ITEM_weep_count, 2}, {GW_ITEM_weep_length, 0.009}, {GW_ITEM_weep_height, 0.005}};
    (void)state;
    for (size_t i = 0; i < 3; i++) {
        struct place p;
        open_place(&p, "12 psf", "");
        judge_number(&p, cases[i].item, cases[i].least, GW_ITEM_WITHIN);
        assert_int_equal(p.result.limit.basis, GW_LIMIT_PRACTICE);
        judge_number(&p, cases[i].item, cases[i].least / 2, GW_ITEM_UNKNOWN);
        close_place(&p);
    }
}

/* The spandrel of 5 x 5 ft under the vision lite of 50 ft2: twice the ratio. Of a place said in part the larger lite
 * counts, although more suction acts on the edges of the smaller one. */
static void the_area_is_that_of_the_lite(void **state)
{
    struct place p;
    struct gw_message why = {0};
    (void)state;
    open_place(&p, "12 psf", DRAINED(""));
    p.spot.row = 1;
    p.spot.lite = gw_takeoff_at(&p.world.takeoff, "w", 2, 1, 1);
    judge_number(&p, GW_ITEM_weep_count, 1, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(p.result.remaining_worst, 2 * RATIO, 2e-3);
    p.spot = gw_spot_on("w");
    p.spot.column = 2;
    assert_true(gw_spot_find(&p.spot, &why, &p.world.ask, GW_ON_POCKET));
    assert_true(p.spot.worst);
    judge(&p, GW_ITEM_weep_count, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(p.result.remaining_worst, RATIO, 2e-3);
    close_place(&p);
}

/* A system that states the most alone leaves the least as it was: its drainage's two. */
static void one_side_of_the_system(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", DRAINED("") "\ninstallation: {weep_count: {at_most: 4}}");
    judge_number(&p, GW_ITEM_weep_count, 1, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(p.result.limit.at_least, 2, 0);
    judge_number(&p, GW_ITEM_weep_count, 5, GW_ITEM_OUTSIDE_HOLDS);
    close_place(&p);
}

/* The derivation says both ends, each by its name, and settles. */
static void the_derivation_of_a_flow(void **state)
{
    struct place p;
    struct gw_trace trace;
    (void)state;
    open_place(&p, "12 psf",
               "drainage: {slots: 2, slot_length: 2 in, slot_height: 1/4 in, pocket_depth: 5/8 in, "
               "equalized: no}");
    gw_trace_init(&trace, &p.world.arena);
    p.world.ask.trace = &trace;
    judge_number(&p, GW_ITEM_weep_count, 1, GW_ITEM_NOT_MET);
    gw_trace_settle(&trace, &p.result.remaining_worst, 1);
    assert_true(trace.n > 0);
    close_place(&p);
}

/* Openings of a schedule drain like lites of a wall: 50 ft2 of the larger one; a vent by openings of its own. */
static void openings_and_vents(void **state)
{
    struct place p;
    struct gw_message why = {0};
    (void)state;
    open_place(&p, "12 psf", DRAINED(""));
    put_file(&p.world, "s.csv",
             "mark,wall,width,height,sill,lite\nA,n,5 ft,10 ft,3 ft,a\nB,n,5 ft,5 ft,3 ft,a\n"
             "V,v,5 ft,5 ft,3 ft,vent\n");
    must_take_off(
        &p.world,
        "galeward: 1\nproject: {name: Punched}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
        "site: {basic_wind_speed: 115 mph, exposure: C}\n"
        "buildings: [{name: b, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
        "elevations: [{name: n, width: 80 ft, ends: [none, none]}, {name: v, width: 80 ft, ends: [none, none]}]\n"
        "openings: s.csv\nlites: {a: {}, vent: {component: vent}}\ncandidates: [x.yaml]\n");
    gw_ask_init(&p.world.ask, &p.world.model, &p.world.takeoff, &p.world.arena);
    p.spot = gw_spot_on("n");
    assert_true(gw_spot_find(&p.spot, &why, &p.world.ask, GW_ON_POCKET));
    judge_number(&p, GW_ITEM_weep_count, 1, GW_ITEM_OUTSIDE_HOLDS);
    assert_near(p.result.remaining_worst, RATIO, 2e-3);
    p.spot = gw_spot_on("v");
    assert_true(gw_spot_find(&p.spot, &why, &p.world.ask, GW_ON_POCKET));
    judge_number(&p, GW_ITEM_weep_count, 1, GW_ITEM_UNKNOWN);
    says(&p, "openings of its own");
    close_place(&p);
}

/* Words ------------------------------------------------------------------------------------------------------------ */

static void words_that_leave_nothing(void **state)
{
    static const struct {
        enum gw_item_id item;
        const char *wrong, *sound, *says;
    } cases[] = {{GW_ITEM_weep_place, "pocket_head", "pocket_bottom", "head of the pocket below"},
                 {GW_ITEM_weep_clear, "no", "yes", "blocked"},
                 {GW_ITEM_joint_plug, "missing", "bedded", "loses its pressure"},
                 {GW_ITEM_frame_joint, "open", "sealed", "past the pocket"},
                 {GW_ITEM_cover_weep_clear, "no", "yes", "blocks the plate's"}};
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct place p;
        open_place(&p, "12 psf", DRAINED(""));
        judge_word(&p, cases[i].item, cases[i].sound, GW_ITEM_WITHIN);
        judge_word(&p, cases[i].item, cases[i].wrong, GW_ITEM_NOT_MET);
        assert_true(isnan(p.result.remaining) && isnan(p.result.remaining_worst));
        assert_null(p.result.mechanism);
        says(&p, cases[i].says);
        assert_true(gw_said(&p.result.action));
        judge_word(&p, cases[i].item, "unknown", GW_ITEM_UNKNOWN);
        close_place(&p);
    }
}

/* Loose: no head is left at 12 psf; at 1 psf the weeps drain, and where the water goes past the plug is not known. */
static void a_loose_plug_never_holds(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", DRAINED(""));
    judge_word(&p, GW_ITEM_joint_plug, "loose", GW_ITEM_NOT_MET);
    close_place(&p);
    open_place(&p, "1 psf", DRAINED(""));
    judge_word(&p, GW_ITEM_joint_plug, "loose", GW_ITEM_UNKNOWN);
    says(&p, "run past the plug");
    close_place(&p);
}

static void sealant_and_the_way_out(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", DRAINED(""));
    judge_word(&p, GW_ITEM_sealant_under_cover, "no", GW_ITEM_WITHIN);
    judge_word(&p, GW_ITEM_sealant_under_cover, "yes", GW_ITEM_NOT_MET);
    says(&p, "are the cover's weeps free");
    word(&p, GW_ITEM_cover_weep_clear, "yes");
    judge(&p, GW_ITEM_sealant_under_cover, GW_ITEM_UNKNOWN);
    says(&p, "run out of its weeps");
    judge_number(&p, GW_ITEM_weep_count, 2, GW_ITEM_WITHIN);
    word(&p, GW_ITEM_cover_weep_clear, "no");
    judge(&p, GW_ITEM_sealant_under_cover, GW_ITEM_NOT_MET);
    says(&p, "no way out");
    close_place(&p);
}

/* Cover ------------------------------------------------------------------------------------------------------------ */

/* Plate's slot 2 in, cover's 1 in: clear of each other from 1 1/2 in between their middles. */
static void slots_in_line(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", DRAINED(""));
    judge_number(&p, GW_ITEM_weep_offset, 0.9 * INCH, GW_ITEM_NOT_MET); /* the plate's own half is enough for that */
    says(&p, "straight through");
    judge_number(&p, GW_ITEM_weep_offset, 1.4 * INCH, GW_ITEM_UNKNOWN);
    says(&p, "how long are the slots");
    number(&p, GW_ITEM_cover_weep_length, INCH);
    judge_number(&p, GW_ITEM_weep_offset, 1.4 * INCH, GW_ITEM_NOT_MET);
    assert_true(isnan(p.result.remaining));
    judge_number(&p, GW_ITEM_weep_offset, 1.5 * INCH, GW_ITEM_WITHIN);
    assert_near(p.result.limit.at_least / INCH, 1.5, 1e-9);
    assert_int_equal(p.result.limit.basis, GW_LIMIT_GEOMETRY);
    number(&p, GW_ITEM_weep_length, 3 * INCH); /* as read, not as the system has it */
    judge_number(&p, GW_ITEM_weep_offset, 1.5 * INCH, GW_ITEM_NOT_MET);
    close_place(&p);
}

/* A system that asks 4 in: nearer is unknown, for no figure tells what splashes over. */
static void an_offset_of_the_system(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", DRAINED("") "\ninstallation: {weep_offset: {at_least: 4 in}}");
    number(&p, GW_ITEM_cover_weep_length, INCH);
    judge_number(&p, GW_ITEM_weep_offset, 3 * INCH, GW_ITEM_UNKNOWN);
    says(&p, "nearer than the system asks");
    judge_number(&p, GW_ITEM_weep_offset, 1 * INCH, GW_ITEM_NOT_MET);
    judge_number(&p, GW_ITEM_weep_offset, 4 * INCH, GW_ITEM_WITHIN);
    close_place(&p);
}

static void slots_of_the_cover(void **state)
{
    struct place p;
    (void)state;
    open_place(&p, "12 psf", DRAINED("") "\ninstallation: {cover_weep_length: {at_least: 2 in}}");
    judge_number(&p, GW_ITEM_cover_weep_length, 2 * INCH, GW_ITEM_WITHIN);
    judge_number(&p, GW_ITEM_cover_weep_length, 1 * INCH, GW_ITEM_UNKNOWN);
    judge_number(&p, GW_ITEM_cover_weep_length, 0, GW_ITEM_NOT_MET);
    close_place(&p);
}

/* Plates and covers are of captured glass; pockets of silicone systems where they say so; end dams of all. */
static void systems_without(void **state)
{
    static const char *const drained[] = {"", DRAINED("")};
    (void)state;
    for (int i = 0; i < 2; i++) {
        struct place p;
        open_glazed(&p, "12 psf", "silicone", drained[i]);
        const struct gw_system *system = system_of(&p);
        assert_true((i == 0) == (gw_item_without(gw_item_of(GW_ITEM_weep_place), &p.world.ask, system) != NULL));
        assert_non_null(gw_item_without(gw_item_of(GW_ITEM_sealant_under_cover), &p.world.ask, system));
        assert_true((i == 0) == (gw_item_without(gw_item_of(GW_ITEM_weep_clear), &p.world.ask, system) != NULL));
        assert_null(gw_item_without(gw_item_of(GW_ITEM_end_dam_height), &p.world.ask, system));
        assert_null(gw_item_without(gw_item_of(GW_ITEM_joint_plug), &p.world.ask, system));
        close_place(&p);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_slot_of_two_drains_still),
        cmocka_unit_test(short_slots),
        cmocka_unit_test(a_pocket_that_is_not_equalized),
        cmocka_unit_test(part_of_the_head_is_left),
        cmocka_unit_test(what_opens_the_pocket),
        cmocka_unit_test(the_share_is_a_range_of_practice),
        cmocka_unit_test(surface_tension_closes_a_slot),
        cmocka_unit_test(a_slot_higher_than_the_water),
        cmocka_unit_test(what_is_not_known_is_asked),
        cmocka_unit_test(least_sizes_of_practice),
        cmocka_unit_test(the_area_is_that_of_the_lite),
        cmocka_unit_test(one_side_of_the_system),
        cmocka_unit_test(the_derivation_of_a_flow),
        cmocka_unit_test(openings_and_vents),
        cmocka_unit_test(words_that_leave_nothing),
        cmocka_unit_test(a_loose_plug_never_holds),
        cmocka_unit_test(sealant_and_the_way_out),
        cmocka_unit_test(slots_in_line),
        cmocka_unit_test(an_offset_of_the_system),
        cmocka_unit_test(slots_of_the_cover),
        cmocka_unit_test(systems_without),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
