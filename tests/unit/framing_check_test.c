/* Mullions and transoms at the level of 'check': deflection, line loads, continuity. Expected figures by hand, in US
 * units, from statics and the section's own formulas; the wind is given, so that it stays out of the way. */
#include "framing_check_support.h"

/* Deflection level --------------------------------------------------------------------------------------------------
 */

/* Framing that holds glass deflects under 0.6 W, never 0.42 W, whatever the edition: 210 lb/ft over 12 ft. */
static void deflection_takes_the_whole_design_wind(void **state)
{
    (void)state;
    static const char *const editions[] = {CODES("2012"), CODES("2015"), CODES("2018"), CODES("2021")};
    const double by_hand = 5 * 17.5 * pow(144, 4) / (384 * 10.1e6 * TUBE_INERTIA); /* in */
    for (size_t i = 0; i < 4; i++) {
        struct world w;
        world_open(&w);
        const char *wall = WALL("floors: [0 ft], top: 12 ft, " PLAIN_ENDS);
        judge(&w,
              gw_format(&w.arena, "%s%s%s%s", editions[i], SITE BUILDING("roof_height: 75 ft") GIVEN,
                        MONOLITHIC CANDIDATE, wall),
              "mullion: " TUBE);
        const struct gw_finding *f = of(&w, "mullion_deflection", GW_MULLION, "interior", 0);
        assert_near(f->provided / INCH, by_hand, 1e-6);
        const double limit = i < 3 ? 0.75 : 144.0 / 175; /* one lite high: the older editions cap its edge */
        assert_near(f->required / INCH, limit, 1e-9);
        assert_int_equal(f->verdict, by_hand <= limit ? GW_PASS : GW_FAIL);
        world_close(&w);
    }
}

/* 13 ft 6 in still goes by L/175; above it L/240 + 1/4 in; a cantilever counts twice its length. */
static void limits_at_the_boundary(void **state)
{
    struct world *w = *state;
    judge(w,
          PROJECT("floors: [0 ft, 13 ft 6 in, 27 ft 1 in], anchors: [0 ft, 13 ft 6 in, 27 ft 1 in], top: 29 ft 1 in"),
          "mullion: " TUBE);
    assert_near(member(w, element(w, GW_MULLION, "interior", 0))->deflection_limit / INCH, 162.0 / 175, 1e-9);
    assert_near(member(w, element(w, GW_MULLION, "interior", 13.5))->deflection_limit / INCH, 163.0 / 240 + 0.25, 2e-3);
    assert_near(member(w, element(w, GW_MULLION, "interior", 27 + 1.0 / 12))->deflection_limit / INCH, 2 * 24.0 / 175,
                1e-9);
}

/* Line loads --------------------------------------------------------------------------------------------------------
 */

/* A third of the span is an area for the coefficient, not a width that is loaded: 3 ft bays over 24 ft. */
static void a_third_of_the_span_is_not_a_loaded_width(void **state)
{
    struct world *w = *state;
    judge(w,
          CODES("2021") SITE BUILDING("roof_height: 75 ft") GIVEN MONOLITHIC CANDIDATE
          "walls: [{name: s, columns: {count: 4, width: 3 ft}, width: 12 ft, floors: [0 ft], top: 24 ft, " PLAIN_ENDS
          "}]\n",
          "mullion: " TUBE);
    const struct gw_element *e = element(w, GW_MULLION, "interior", 0);
    assert_near(e->effective_area / FT2, 24 * 8, 1e-6);
    assert_near(member(w, e)->moment / LB_FT, 42 * 3 * 24.0 * 24 / 8, 1e-6);
    assert_near(member(w, e)->shear / LB, 42 * 3 * 12, 1e-6);
    assert_near(reaction(w, "interior", 0)->outward / LB, 42 * 3 * 12, 1e-6);
}

/* Rails give their reactions back to the mullion: with a rail at midheight its moment is that of the uniform load; each
 * rail takes a triangle or trapezoid from above and one from below, 42 psf: lites of 5 x 6 ft give w L^2/12, w = 105.
 */
static void rails_are_loaded_and_relieve_nothing(void **state)
{
    struct world *w = *state;
    judge(w,
          CODES("2021") SITE BUILDING("roof_height: 75 ft") GIVEN MONOLITHIC CANDIDATE WALL(
              "floors: [0 ft], top: 12 ft, ends: [none, none], rows: [{height: 6 ft, lite: a}, {height: rest, lite: "
              "a}]"),
          "mullion: " TUBE);
    const struct gw_element *rail = element(w, GW_TRANSOM, "intermediate", 3);
    assert_near(member(w, element(w, GW_MULLION, "interior", 0))->moment / LB_FT, 210 * 144.0 / 8, 1e-6);
    assert_near(member(w, rail)->moment / LB_FT, 2 * 105 * 25.0 / 12, 1e-6);
    assert_near(member(w, rail)->shear / LB, 2 * 105 * 5.0 / 4, 1e-6);
    assert_near(member(w, element(w, GW_TRANSOM, "sill", 0))->moment / LB_FT, 105 * 25.0 / 12, 1e-6);
}

/* A lite held at head and sill alone loads them evenly with half its height: 42 x 3 over 5 ft, from both sides. */
static void two_edges_load_the_rails_evenly(void **state)
{
    struct world *w = *state;
    judge(w,
          CODES("2021") SITE BUILDING("roof_height: 75 ft") GIVEN CANDIDATE
          "lites: {a: {support: 2, span: height, layers: [{glass: 12 mm, treatment: tempered}]}}\n" WALL(
              "floors: [0 ft], top: 12 ft, ends: [none, none], rows: [{height: 6 ft, lite: a}, {height: rest, lite: "
              "a}]"),
          "mullion: " TUBE);
    const struct gw_member_demand *rail = member(w, element(w, GW_TRANSOM, "intermediate", 3));
    assert_near(rail->moment / LB_FT, 42 * 6 * 25.0 / 8, 1e-6);
    assert_near(rail->shear / LB, 42 * 6 * 2.5, 1e-6);
}

/* Continuity --------------------------------------------------------------------------------------------------------
 */

/* One piece over two stories of 12 ft, 210 lb/ft: 1.25 w L at the middle, w L^2/8 over it; joints at every floor: w L.
 */
static void the_middle_support_of_two_spans(void **state)
{
    (void)state;
    static const struct {
        const char *project;
        double middle, end, piece;
    } cases[] = {{PROJECT("floors: [0 ft, 12 ft], anchors: [0 ft, 12 ft, 24 ft], splices: [24 ft], top: 24 ft"), 1.25,
                  0.375, 24},
                 {PROJECT("floors: [0 ft, 12 ft], anchors: [0 ft, 12 ft, 24 ft], top: 24 ft"), 1, 0.5, 12}};
    for (size_t i = 0; i < 2; i++) {
        struct world w;
        world_open(&w);
        judge(&w, cases[i].project, STATED);
        for (int k = 0; k < 2; k++)
            assert_near(member(&w, element(&w, GW_MULLION, "interior", 12 * k))->moment / LB_FT, 210 * 144.0 / 8, 1e-6);
        assert_near(reaction(&w, "interior", 6)->outward / LB, cases[i].middle * 210 * 12, 1e-6);
        assert_near(reaction(&w, "interior", 0)->outward / LB, cases[i].end * 210 * 12, 1e-6);
        assert_near(reaction(&w, "interior", 18)->outward / LB, cases[i].end * 210 * 12, 1e-6);
        /* Each piece hangs on its top anchor. */
        assert_near(reaction(&w, "interior", 0)->area, 0, 0);
        assert_near(reaction(&w, "interior", 6)->area / FT2, i == 0 ? 0 : 5 * cases[i].piece, 1e-6);
        assert_near(reaction(&w, "interior", 18)->area / FT2, 5 * cases[i].piece, 1e-6);
        world_close(&w);
    }
}

/* Spliced 2 ft above each floor. From the top: the piece of 50 to 60 ft spans 10 ft, 1050 lb and 2625 ft-lb; it hangs
 * on the overhang below: M = 210 x 2 + 2 V over the anchor, V = 1050 - M/10 at the next splice: 2520 ft-lb and 798 lb,
 * 2016 and 848.4, 2116.8 and 838.32, 2096.64: the end stories are not the steady state, 2100 and 840. */
static void splices_beyond_the_anchors(void **state)
{
    struct world *w = *state;
    judge(w, PROJECT("floors: [0 ft, 12 ft, 24 ft, 36 ft, 48 ft], splices: [14 ft, 26 ft, 38 ft, 50 ft], top: 60 ft"),
          STATED "splice: {capacity: 1000 lb}");
    const struct {
        double floor, moment, splice;
    } stories[] = {{48, 2625, 1050}, {36, 2520, 798}, {24, 2116.8, 848.4}, {12, 2116.8, 838.32}};
    for (size_t i = 0; i < sizeof stories / sizeof *stories; i++) {
        const struct gw_finding *f = of(w, "mullion", GW_MULLION, "interior", stories[i].floor),
                                *s = of(w, "splice", GW_MULLION, "interior", stories[i].floor);
        assert_near(f->required / LB_FT, stories[i].moment, 1e-6);
        assert_near(s->required / LB, stories[i].splice, 1e-6);
        assert_int_equal(s->verdict, stories[i].splice > 1000 ? GW_FAIL : GW_PASS);
    }
    /* Without a splice: 12 ft less the overhang's couple. R = 1260 - 2096.64/12 = 1085.28; M = R^2/(2 w) = 2804.4. */
    assert_near(of(w, "mullion", GW_MULLION, "interior", 0)->required / LB_FT, 1085.28 * 1085.28 / 420, 1e-6);
    assert_int_equal(of(w, "splice", GW_MULLION, "interior", 0)->verdict, GW_NOT_REQUIRED);
}

/* A reinforced mullion shares by stiffness: 8.0 in4 of aluminum and 2.5 of steel, 80.8 and 72.5 of E I; the part used
 * up first limits both. Never the sum of the moduli. */
static void inserts_share_by_stiffness(void **state)
{
    struct world *w = *state;
    judge(w, PROJECT("floors: [0 ft], top: 12 ft"),
          "mullion: {alloy: 6063-T6, inertia_x: 8 in4, allowable_moment: 40000 in-lb,\n"
          "  insert: {metal: steel, inertia_x: 2.5 in4, section_modulus_x: 1.25 in3, yield: 36 ksi}}\n");
    const double aluminum = 10.1e6 * 8, steel = 29e6 * 2.5, all = aluminum + steel;
    const double by_steel = 36000 / 1.67 * 1.25 * all / steel, by_aluminum = 40000 * all / aluminum;
    assert_true(by_steel < by_aluminum);
    const struct gw_finding *f = of(w, "mullion", GW_MULLION, "interior", 0),
                            *d = of(w, "mullion_deflection", GW_MULLION, "interior", 0);
    assert_near(f->provided / (LB * INCH), by_steel, 1e-3);
    assert_non_null(strstr(words(&f->message), "insert"));
    assert_near(d->provided / INCH, 5 * 17.5 * pow(144, 4) / (384 * all), 1e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(deflection_takes_the_whole_design_wind),
        WORLD_TEST(limits_at_the_boundary),
        WORLD_TEST(a_third_of_the_span_is_not_a_loaded_width),
        WORLD_TEST(rails_are_loaded_and_relieve_nothing),
        WORLD_TEST(two_edges_load_the_rails_evenly),
        cmocka_unit_test(the_middle_support_of_two_spans),
        WORLD_TEST(splices_beyond_the_anchors),
        WORLD_TEST(inserts_share_by_stiffness),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
