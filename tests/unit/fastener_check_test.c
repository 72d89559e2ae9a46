/* Screws, plates, bolts, beads and what a test shows of rails, at the level of 'check', by hand. */
#include "framing_check_support.h"

/* For a YAML file; never by printf, whose point goes with the locale. */
static const char *shown(struct world *w, double value)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_number(&text, value, 12);
    return text.at;
}

/* A tapping screw has a factor of 3.0 on its tested strength and on the formula; 1/4-20 in 1/8 in of 6063-T6: 1.2 x
 * 0.25 x 0.125 x 25 ksi = 937.5 lb nominal. 42 psf on 5 ft by 9 in. */
static void screws_have_a_factor_of_three(void **state)
{
    (void)state;
    static const struct {
        const char *hold;
        double nominal;
    } cases[] = {{"hold: chase, tested_pullout: 1500 lb", 1500},
                 {"hold: tapped, alloy: 6063-T6, engagement: 0.125 in", 937.5},
                 {"hold: tapped, tested_pullout: 840 lb", 840}};
    for (size_t i = 0; i < 3; i++) {
        struct world w;
        world_open(&w);
        judge(&w, PROJECT("floors: [0 ft], top: 12 ft, screws: {spacing: 9 in}"),
              gw_format(&w.arena,
                        "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 0.25 in}\n"
                        "screw: {diameter: 1/4 in, threads_per_inch: 20, ultimate: 100 ksi, head_diameter: 1/2 in, %s}",
                        cases[i].hold));
        const struct gw_finding *f = NULL;
        for (size_t k = 0; k < w.answer.judgement.findings.n; k++) {
            const struct gw_finding *one = &w.answer.judgement.findings.items[k];
            bool run =
                strcmp(one->demand->check->id, "screw") == 0 && strcmp(one->demand->element->mark, "vertical") == 0;
            if (run && one->demand->element->width > 4 * FT) f = one;
        }
        assert_non_null(f);
        assert_near(f->provided / LB, cases[i].nominal / 3, 1e-3);
        assert_near(f->required / LB, 42 * 5 * 0.75, 1e-6);
        world_close(&w);
    }
}

/* 6063-T5 is weaker above 1/2 in: 15 ksi there, 16 below; bending of the plate by yielding of its elastic modulus. */
static void strength_goes_with_the_thickness(void **state)
{
    (void)state;
    static const struct {
        const char *thickness;
        double yield; /* ksi */
    } cases[] = {{"0.5 in", 16}, {"0.625 in", 15}};
    for (size_t i = 0; i < 2; i++) {
        struct world w;
        world_open(&w);
        judge(
            &w, PROJECT("floors: [0 ft], top: 12 ft"),
            gw_format(&w.arena, "pressure_plate: {alloy: 6063-T5, width: 2.25 in, thickness: %s}", cases[i].thickness));
        assert_near(finding(&w, "plate", "s/screw/1")->provided / KSI, cases[i].yield / 1.65, 1e-6);
        world_close(&w);
    }
}

/* 13 ft stories of 10 psf: 1950 lb in, 2730 out, 650 dead at 4 in: 2600 in-lb on 5 in: 2730 + 520 = 3250 lb. */
static void bolts_take_the_couple_of_the_weight(void **state)
{
    struct world *w = *state;
    judge(w, PROJECT("floors: [0 ft, 13 ft], top: 26 ft"),
          "frame_weight: 6.92913 psf\n" /* with 3.07087 of glass */
          "anchor: {inward: 9000 lb, outward: 9000 lb, dead: 9000 lb, eccentricity: 4 in, bolt_arm: 5 in, bolts: 1, "
          "bolt_tension: 4000 lb, bolt_shear: 4000 lb}");
    const struct gw_reaction *r = reaction(w, "interior", 6.5);
    assert_near(r->inward / LB, 1950, 1e-6);
    assert_near(r->outward / LB, 2730, 1e-6);
    assert_near(r->outward_strength / LB, 2730 / 0.6, 1e-6);
    assert_near(r->area / FT2 * 10, 650, 1e-6);
    const struct gw_finding *f = of(w, "anchor", GW_ANCHOR, "interior", 6.5);
    assert_near(f->required / LB, 3250, 0.01);
    assert_near(f->provided / LB, 3250 / (3900.0 / 4000), 0.01); /* of 4000, beside 650 lb of shear */
    assert_non_null(strstr(words(&f->message), "bolt"));
}

/* The wind on half of the lesser side: 42 psf x 5 ft / 2 over 20 psi: 0.4375 in. */
static void the_bite_goes_by_the_lesser_side(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: silicone}\nsilicone: {bite: 0.4 in}\n");
    must_judge(w, PROJECT("floors: [0 ft], top: 12 ft"));
    const struct gw_finding *f = finding(w, "silicone", "s/lite/1");
    assert_near(f->required / INCH, 42 * 2.5 / 144 * 12 / 20, 1e-6);
    assert_int_equal(f->verdict, GW_FAIL);
}

/* A wind test says nothing of the weight of glass, however heavy its own was: the rail under a lite is calculated too.
 */
static void a_test_shows_a_rail_only_where_no_glass_rests(void **state)
{
    (void)state;
    static const char *const sections[] = {"", "transom: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 6 in, flange: "
                                               "0.125 in, web: 0.125 in}, eccentricity: 1 in}\n"};
    for (size_t i = 0; i < 2; i++) {
        struct world w;
        world_open(&w);
        judge(&w, PROJECT("floors: [0 ft], top: 12 ft"),
              gw_format(&w.arena,
                        "%sratings: [{test: structural, positive: 60 psf, negative: 60 psf, report: L-1, tested: "
                        "{transom: {span: 5 ft, above: 12 ft, below: 12 ft}}}]",
                        sections[i]));
        const struct gw_finding *sill = of(&w, "transom", GW_TRANSOM, "sill", 0),
                                *head = of(&w, "transom", GW_TRANSOM, "head", 6);
        assert_int_equal(sill->verdict, i == 0 ? GW_NOT_SHOWN : GW_PASS);
        assert_int_equal(sill->evidence, i == 0 ? GW_EVIDENCE_NONE : GW_BY_CALCULATION);
        assert_int_equal(sill->wind_tested, i == 1);
        assert_int_equal(head->verdict, GW_PASS);
        assert_int_equal(head->evidence, GW_BY_TEST);
        world_close(&w);
    }
}

/* One simple span of that height, 5 ft modules. */
static bool mullion_passes(double span_ft)
{
    struct world w;
    world_open(&w);
    judge(&w,
          gw_format(&w.arena, PROJECT("floors: [0 ft], top: %s ft, anchors: [0 ft, %s ft]"), shown(&w, span_ft),
                    shown(&w, span_ft)),
          "mullion: " TUBE);
    const struct gw_element *e = element(&w, GW_MULLION, "interior", 0);
    bool passes = finding(&w, "mullion", e->id)->verdict == GW_PASS &&
                  finding(&w, "mullion_deflection", e->id)->verdict == GW_PASS;
    world_close(&w);
    return passes;
}

/* The span that the search gives is where the checks themselves turn. */
static void the_reach_is_where_the_checks_turn(void **state)
{
    struct world *w = *state;
    judge(w, PROJECT("floors: [0 ft], top: 12 ft, anchors: [0 ft, 12 ft]"), "mullion: " TUBE);
    const struct gw_reach *r = NULL;
    for (size_t i = 0; i < w->answer.reaches.n; i++)
        if (w->answer.reaches.items[i].zone == 4) r = &w->answer.reaches.items[i];
    assert_non_null(r);
    assert_near(r->at_width, 5 * FT, 1e-9);
    assert_true(mullion_passes(r->span / FT * 0.995));
    assert_false(mullion_passes(r->span / FT * 1.005));
    /* By hand where deflection governs: 5 w L^4/(384 E I) = L/175. */
    double line = 42 * 5 * LB / FT, inertia = TUBE_INERTIA * pow(INCH, 4), modulus = 10100 * KSI;
    double by_hand = cbrt(384 * modulus * inertia / (5 * 175 * line));
    assert_near(r->span, by_hand, 0.002 * by_hand);
    assert_false(gw_given(r->spacing)); /* no screws are known */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(screws_have_a_factor_of_three),
        cmocka_unit_test(strength_goes_with_the_thickness),
        WORLD_TEST(bolts_take_the_couple_of_the_weight),
        WORLD_TEST(the_bite_goes_by_the_lesser_side),
        cmocka_unit_test(a_test_shows_a_rail_only_where_no_glass_rests),
        WORLD_TEST(the_reach_is_where_the_checks_turn),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
