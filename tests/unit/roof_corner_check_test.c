/* Members at the roof line and at corners, at the level of 'check', by hand. */
#include "framing_check_support.h"

static void must_ask(const struct gw_finding *f, const char *part)
{
    if (f->verdict != GW_NOT_SHOWN || !strstr(words(&f->message), part))
        print_error("%s at %s: %s: %s\n", f->demand->check->id, f->demand->where, gw_verdict_name(f->verdict),
                    words(&f->message));
    assert_int_equal(f->verdict, GW_NOT_SHOWN);
    assert_non_null(strstr(words(&f->message), part));
}

/* The roof line -----------------------------------------------------------------------------------------------------
 */

#define PARAPET CODES("2021") SITE BUILDING("roof_height: 40 ft, parapet_height: 4 ft") GIVEN MONOLITHIC CANDIDATE

#define SCREWED                                                                                                        \
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 0.25 in}\n"                                           \
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "          \
    "tested_pullout: 2000 lb}\n"

/* A span from 20 to 44 ft over a roof at 40: both parts know that it is one member of 24 ft. */
static void a_span_across_the_roof_line_is_one_member(void **state)
{
    struct world *w = *state;
    judge(w,
          gw_format(&w->arena, "%s%s", PARAPET,
                    WALL("floors: [0 ft, 20 ft], anchors: [0 ft, 20 ft, 44 ft], top: 44 ft, " PLAIN_ENDS)),
          "mullion: " TUBE "\nratings: [{test: structural, positive: 900 psf, negative: 900 psf, report: L-1, tested: "
          "{module: 5 ft, span: 20 ft, lite_width: 5 ft, lite_height: 20 ft, make_up: a}}]\n");
    const struct gw_element *low = element(w, GW_MULLION, "interior", 20),
                            *high = element(w, GW_MULLION, "interior", 40);
    assert_near(low->span / FT, 24, 1e-9);
    assert_near(high->span / FT, 24, 1e-9);
    assert_near(low->height / FT, 20, 1e-9);
    const struct gw_finding *a = finding(w, "mullion", low->id), *b = finding(w, "mullion", high->id);
    assert_int_equal(a->evidence, GW_BY_CALCULATION); /* a test over 20 ft does not reach it */
    assert_near(a->required, b->required, 1e-9 * b->required);
    /* Inward: 30 psf on 20 ft and the parapet's on 4: R at 20 ft = (w1 20 x 14 + w2 4 x 2) / 24, M = R^2/(2 w1). */
    const double w1 = fmax(low->inward_asd.pa, 0) * low->width, w2 = high->inward_asd.pa * high->width;
    const double r = (w1 * 20 * 14 + w2 * 4 * 2) / 24 * FT, top = r / w1;
    const double v1 = -low->outward_asd.pa * low->width, v2 = -high->outward_asd.pa * high->width;
    const double q = (v1 * 20 * 14 + v2 * 4 * 2) / 24 * FT;
    assert_true(top < 20 * FT && q / v1 < 20 * FT);
    assert_near(a->required, fmax(r * r / (2 * w1), q * q / (2 * v1)), 1e-6 * a->required);
    /* The pane that the line cuts is one pane of 24 ft. */
    assert_near(element(w, GW_LITE, "a", 20)->pane / FT, 24, 1e-9);
    assert_non_null(
        strstr(words(&of(w, "screw", GW_SCREW, "vertical", 20)->message), "tested lite height 20 ft, here 24 ft"));
}

/* 20 ft of wall and 4 ft of parapet past the roof anchor: p_1 L/2 + p_2 (a + a^2/(2 L)); the anchor below keeps all of
 * its load though the parapet would relieve it. */
static void the_roof_anchor_takes_the_overhang_with_its_lever(void **state)
{
    struct world *w = *state;
    judge(w, gw_format(&w->arena, "%s%s", PARAPET, WALL("floors: [0 ft, 20 ft], top: 44 ft, " PLAIN_ENDS)), STATED);
    const struct gw_element *below = element(w, GW_ANCHOR, "interior", 30),
                            *above = element(w, GW_ANCHOR, "interior", 40);
    assert_true(above->inward_asd.pa > 1.2 * below->inward_asd.pa);
    const double hold = 4 + 16.0 / 40;
    const struct gw_reaction *r = reaction(w, "interior", 30);
    assert_near(r->inward, 5 * FT2 * (below->inward_asd.pa * 10 + above->inward_asd.pa * hold), 1e-6 * r->inward);
    assert_near(r->outward, -5 * FT2 * (below->outward_asd.pa * 10 + above->outward_asd.pa * hold), 1e-6 * r->outward);
    assert_near(r->area / FT2, 5 * 24, 1e-9);
    assert_near(reaction(w, "interior", 10)->outward / LB, 42 * 5 * 20, 1e-6);
    /* Over the anchor: p a^2/2. */
    const struct gw_element *tip = element(w, GW_MULLION, "interior", 40);
    const double most = fmax(tip->inward_asd.pa, -tip->outward_asd.pa) * tip->width;
    assert_near(member(w, tip)->moment, most * 16 * FT2 / 2, 1e-6 * most);
    assert_near(member(w, tip)->deflection_limit / INCH, 2 * 48.0 / 175, 1e-9);
}

/* Lites 5 ft wide give the middle of the rail at 38 ft what lies from 35.5 to 40.5 ft: a screw of its plate has both
 * parts, whichever group it is read in. */
static void screws_of_a_rail_at_the_roof_line(void **state)
{
    struct world *w = *state;
    judge(w,
          gw_format(&w->arena, "%s%s", PARAPET,
                    WALL("floors: [0 ft, 38 ft], top: 44 ft, screws: {spacing: 9 in}, " PLAIN_ENDS)),
          SCREWED);
    const struct gw_element *low = element(w, GW_SCREW, "horizontal", 19),
                            *high = element(w, GW_SCREW, "horizontal", 40);
    const double by_hand = 0.75 * FT * (-low->outward_asd.pa * 4.5 * FT - high->outward_asd.pa * 0.5 * FT);
    const struct gw_finding *a = finding(w, "screw", low->id), *b = finding(w, "screw", high->id);
    assert_near(a->required, by_hand, 1e-6 * by_hand);
    assert_near(b->required, by_hand, 1e-6 * by_hand);
    /* Plate: w s^2/12 over b t^2/6. */
    const double stress = by_hand * 0.75 * FT / 12 / (2.25 * 0.0625 / 6 * pow(INCH, 3));
    assert_near(finding(w, "plate", low->id)->required, stress, 1e-6 * stress);
    assert_near(finding(w, "plate", high->id)->required, stress, 1e-6 * stress);
}

/* A parapet without a pressure leaves what hangs together with it not shown, never without its load. */
static void a_stretch_without_a_pressure_is_not_left_out(void **state)
{
    struct world *w = *state;
    judge(w,
          gw_format(&w->arena, "%s%s",
                    CODES("2021") SITE BUILDING("roof_height: 40 ft, parapet_height: 4 ft, roof_slope: 30 deg")
                        GIVEN MONOLITHIC CANDIDATE,
                    WALL("floors: [0 ft, 20 ft], top: 44 ft, " PLAIN_ENDS)),
          STATED "anchor: {inward: 9000 lb, outward: 9000 lb, dead: 9000 lb}\nframe_weight: 3 psf\n");
    must_ask(of(w, "mullion", GW_MULLION, "interior", 20), "ask the structural engineer");
    must_ask(of(w, "mullion_deflection", GW_MULLION, "interior", 20), "ask the structural engineer");
    must_ask(of(w, "anchor", GW_ANCHOR, "interior", 30), "outside the method");
    assert_false(gw_given(reaction(w, "interior", 30)->outward));
    /* Past the joint at 20 ft it does not matter. */
    assert_near(of(w, "mullion", GW_MULLION, "interior", 0)->required / LB_FT, 210 * 400.0 / 8, 1e-6);
    assert_near(of(w, "anchor", GW_ANCHOR, "interior", 0)->required / LB, 42 * 5 * 10, 1e-6);
}

/* Corners -----------------------------------------------------------------------------------------------------------
 */

#define CORNER                                                                                                         \
    CODES("2021")                                                                                                      \
    SITE BUILDING("roof_height: 75 ft") GIVEN MONOLITHIC CANDIDATE WALL(                                               \
        "floors: [0 ft, 12 ft], top: 24 ft, ends: [corner, {corner_at: 3 ft}], rows: [{height: rest, lite: a}]")

#define CORNER_TUBE "{alloy: 6063-T6, inertia_x: 20 in4, inertia_y: 5 in4, allowable_moment: 60000 in-lb}"

/* Only the jamb that stands at the corner; the other stops 3 ft short of it. */
static void one_jamb_of_two_is_a_corner(void **state)
{
    struct world *w = *state;
    judge(w, CORNER,
          STATED "corner_mullion: {alloy: 6063-T6, tube: {width: 5 in, depth: 6 in, flange: 0.125 in, web: 0.25 in}}\n"
                 "splice: {capacity: 5000 lb}\nframe_weight: 6.92913 psf\n"
                 "anchor: {inward: 9000 lb, outward: 9000 lb, dead: 9000 lb}\n"
                 "corner_anchor: {inward: 9000 lb, outward: 9000 lb, dead: 700 lb}\n");
    int corners = 0, jambs = 0;
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind != GW_MULLION || strcmp(e->mark, "jamb") != 0) continue;
        jambs++;
        assert_int_equal(e->count, 1);
        assert_string_equal(e->columns, e->corner ? "1" : "5");
        corners += e->corner;
        const struct gw_finding *f = finding(w, "mullion", e->id), *s = finding(w, "splice", e->id);
        assert_near(f->required / LB_FT, 105 * 144.0 / 8, 1e-6);
        assert_int_equal(strstr(words(&f->message), "corner") != NULL, e->corner);
        assert_near(s->required / LB, (e->corner ? 2 : 1) * 105 * 6, 1e-6);
    }
    assert_int_equal(jambs, 4);
    assert_int_equal(corners, 2);
    /* 10 psf of wall, a piece of 12 ft, half a bay of each face: 600 lb against 700, beside 1260 lb of 9000. */
    const struct gw_finding *a = of(w, "anchor", GW_ANCHOR, "jamb", 6);
    assert_true(a->demand->element->corner);
    assert_near(a->required / LB, 600, 0.01);
    assert_int_equal(a->verdict, GW_PASS);
}

/* It bends both ways: the weaker stiffness for deflection, and what is not known is asked for. */
static void a_corner_bends_both_ways(void **state)
{
    (void)state;
    struct world w;
    world_open(&w);
    judge(&w, CORNER, STATED "corner_mullion: " CORNER_TUBE);
    const double by_hand = 5 * 8.75 * pow(144, 4) / (384 * 10.1e6 * 5);
    assert_near(finding(&w, "mullion_deflection", "s/mullion/1")->provided / INCH, by_hand, 1e-6);
    must_ask(finding(&w, "mullion", "s/mullion/1"), "about y");
    must_ask(finding(&w, "anchor", "s/anchor/1"), "corner_anchor");
    must_ask(finding(&w, "splice", "s/mullion/1"), "splice");
    world_close(&w);
    world_open(&w);
    judge(&w, CORNER, STATED "corner_mullion: {alloy: 6063-T6, inertia_x: 20 in4, allowable_moment: 60000 in-lb}");
    must_ask(finding(&w, "mullion_deflection", "s/mullion/1"), "inertia_y");
    world_close(&w);
}

/* An opening whose place is unknown takes the worst pressure, but its jambs are its own. */
static void an_opening_is_no_corner(void **state)
{
    struct world *w = *state;
    put_file(w, "o.csv", "mark,building,width,height,count,lite\nW1,low,5 ft,12 ft,3,a\n");
    judge(w, CODES("2021") SITE BUILDING("roof_height: 75 ft") GIVEN MONOLITHIC CANDIDATE "openings: o.csv\n",
          STATED "anchor: {inward: 900 lb, outward: 900 lb, dead: 900 lb}\nframe_weight: 3 psf\n");
    const struct gw_finding *f = of(w, "mullion", GW_MULLION, "W1", 63), *a = of(w, "anchor", GW_ANCHOR, "W1", 63);
    assert_false(f->demand->element->corner);
    assert_near(f->required / LB_FT, 42 * 2.5 * 144.0 / 8, 1e-6);
    assert_near(a->required / LB, 42 * 2.5 * 6, 1e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(a_span_across_the_roof_line_is_one_member),
        WORLD_TEST(the_roof_anchor_takes_the_overhang_with_its_lever),
        WORLD_TEST(screws_of_a_rail_at_the_roof_line),
        WORLD_TEST(a_stretch_without_a_pressure_is_not_left_out),
        WORLD_TEST(one_jamb_of_two_is_a_corner),
        cmocka_unit_test(a_corner_bends_both_ways),
        WORLD_TEST(an_opening_is_no_corner),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
