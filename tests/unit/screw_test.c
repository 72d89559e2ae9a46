/* Screws and the metal around them: regimes, limits, what must not be mixed up. */
#include "fastener_support.h"

static struct gw_screw screw(enum gw_thread thread, double diameter, double per_inch)
{
    return (struct gw_screw){thread, diameter * IN, IN / per_inch, GW_ABSENT, GW_ABSENT};
}

static struct gw_metal_strength alloy(const char *name)
{
    struct gw_engine engine = start();
    struct gw_metal_strength metal;
    assert_int_equal(gw_fastener_alloy(&metal, name, &engine), GW_OK);
    return metal;
}

static double pullout(const struct gw_screw *s, double engagement, const struct gw_metal_strength *metal)
{
    struct gw_engine engine = start();
    double out = GW_ABSENT;
    enum gw_status status = gw_screw_pullout(&out, s, engagement, metal, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

static enum gw_status pullout_status(const struct gw_screw *s, double engagement, const struct gw_metal_strength *metal,
                                     const char **key)
{
    struct gw_engine engine = start();
    double out = -1;
    enum gw_status status = gw_screw_pullout(&out, s, engagement, metal, &engine);
    if (status) assert_near(out, -1, 0);
    *key = engine.fault.key;
    return status;
}

/* Every size of the table. */
static const struct {
    enum gw_thread thread;
    double diameter, per_inch;
} SIZES[] = {{GW_THREAD_COARSE, 0.190, 24}, {GW_THREAD_COARSE, 0.190, 32},  {GW_THREAD_COARSE, 0.216, 24},
             {GW_THREAD_COARSE, 0.250, 20}, {GW_THREAD_COARSE, 0.3125, 18}, {GW_THREAD_COARSE, 0.375, 16},
             {GW_THREAD_COARSE, 0.500, 13}, {GW_THREAD_SPACED, 0.190, 16},  {GW_THREAD_SPACED, 0.216, 14},
             {GW_THREAD_SPACED, 0.250, 14}};

static const char *const ALLOYS[] = {"6063-T5", "6063-T6", "6061-T6", "6005A-T61", "6105-T5"};

static void joints_of(double joints[2], size_t i)
{
    const bool spaced = SIZES[i].thread == GW_THREAD_SPACED;
    joints[0] = (spaced ? 2 / SIZES[i].per_inch : 0.125) * IN;
    joints[1] = (spaced ? 4 / SIZES[i].per_inch : 0.250) * IN;
}

/* Tests of drilled-in screws lie below the formula on both sides of its step, so none is left; screws wider than the
 * tested ones have no value below 1/8 in. */
static void pullout_is_continuous(void **state)
{
    (void)state;
    const double hair = 1e-7;
    for (size_t i = 0; i < COUNT_OF(SIZES); i++)
        for (size_t k = 0; k < COUNT_OF(ALLOYS); k++) {
            const struct gw_screw s = screw(SIZES[i].thread, SIZES[i].diameter, SIZES[i].per_inch);
            const struct gw_metal_strength metal = alloy(ALLOYS[k]);
            double joints[2];
            joints_of(joints, i);
            for (size_t j = 0; j < 2; j++) {
                if (SIZES[i].diameter > 0.25 && joints[j] < 0.126 * IN) continue;
                const double below = pullout(&s, joints[j] * (1 - hair), &metal);
                const double above = pullout(&s, joints[j] * (1 + hair), &metal);
                assert_near(above, below, 1e-6 * below);
                assert_near(pullout(&s, joints[j], &metal), below, 1e-6 * below);
            }
            const double thin[] = {0.0625 * IN, 0.080 * IN, 0.09375 * IN, 0.125 * IN};
            for (size_t j = 0; j < COUNT_OF(thin) && SIZES[i].diameter <= 0.25; j++) {
                const double below = pullout(&s, thin[j] * (1 - hair), &metal);
                assert_near(pullout(&s, thin[j] * (1 + hair), &metal), below, 1e-6 * below);
            }
        }
}

static void pullout_grows_with_engagement(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(SIZES); i++)
        for (size_t k = 0; k < COUNT_OF(ALLOYS); k++) {
            const struct gw_screw s = screw(SIZES[i].thread, SIZES[i].diameter, SIZES[i].per_inch);
            const struct gw_metal_strength metal = alloy(ALLOYS[k]);
            const double least = SIZES[i].diameter > 0.25 ? 0.125 * IN : 0.060 * IN;
            double last = 0;
            for (int n = 0; n <= 300; n++) {
                const double now = pullout(&s, least + (0.375 * IN - least) * n / 300, &metal);
                assert_true(now > last);
                last = now;
            }
        }
}

static void pullout_is_linear_in_the_metal(void **state)
{
    (void)state;
    const struct gw_metal_strength once = {211e6, 163e6, GW_ABSENT, GW_ABSENT},
                                   twice = {422e6, 326e6, GW_ABSENT, GW_ABSENT};
    for (size_t i = 0; i < COUNT_OF(SIZES); i++) {
        const struct gw_screw s = screw(SIZES[i].thread, SIZES[i].diameter, SIZES[i].per_inch);
        for (double l = SIZES[i].diameter > 0.25 ? 0.126 : 0.063; l < 0.375; l += 0.0137)
            assert_near(pullout(&s, l * IN, &twice), 2 * pullout(&s, l * IN, &once), 1e-6);
    }
}

static void pullout_ends_where_it_says(void **state)
{
    (void)state;
    const struct gw_screw coarse = screw(GW_THREAD_COARSE, 0.25, 20), spaced = screw(GW_THREAD_SPACED, 0.216, 14);
    const struct gw_screw fine = screw(GW_THREAD_COARSE, 0.25, 28), dense = screw(GW_THREAD_SPACED, 0.19, 26);
    const struct gw_metal_strength metal = alloy("6063-T6"), bare = {GW_ABSENT, GW_ABSENT, GW_ABSENT, GW_ABSENT};
    const char *key;
    assert_int_equal(pullout_status(&coarse, 0.0599 * IN, &metal, &key), GW_OUTSIDE_METHOD);
    assert_string_equal(key, "engagement");
    assert_int_equal(pullout_status(&coarse, 0.3751 * IN, &metal, &key), GW_OUTSIDE_METHOD);
    assert_int_equal(pullout_status(&spaced, 0.0379 * IN, &metal, &key), GW_OUTSIDE_METHOD);
    assert_int_equal(pullout_status(&coarse, 0.060 * IN, &metal, &key), GW_OK);
    assert_int_equal(pullout_status(&coarse, 9.525e-3, &metal, &key), GW_OK); /* 0.375 in in another unit */
    assert_int_equal(pullout_status(&fine, 0.125 * IN, &metal, &key), GW_OK);
    assert_int_equal(pullout_status(&fine, 0.130 * IN, &metal, &key), GW_MISSING);
    assert_string_equal(key, "stripping_area");
    assert_int_equal(pullout_status(&dense, 0.1 * IN, &metal, &key), GW_OUTSIDE_METHOD);
    assert_string_equal(key, "threads_per_inch");
    assert_int_equal(pullout_status(&coarse, 0.1 * IN, &bare, &key), GW_MISSING);
    assert_string_equal(key, "metal_yield");
    assert_int_equal(pullout_status(&coarse, GW_ABSENT, &metal, &key), GW_MISSING);
    assert_int_equal(pullout_status(&coarse, -1, &metal, &key), GW_BAD_VALUE);
}

/* A stripping area that is given stands before the table's, in rupture and between. */
static void given_stripping_area_counts(void **state)
{
    (void)state;
    struct gw_screw s = screw(GW_THREAD_COARSE, 0.25, 20);
    const struct gw_metal_strength metal = alloy("6063-T6");
    const double table = pullout(&s, 0.3 * IN, &metal);
    s.stripping = 0.539 * IN;
    assert_near(pullout(&s, 0.3 * IN, &metal), table, 1e-6);
    s.stripping = 0.270 * IN;
    assert_near(pullout(&s, 0.3 * IN, &metal), table * 0.270 / 0.539, 1e-6);
}

/* Extruded 6061-T6 has 38 ksi; a plate's 42 would overstate rupture by a tenth. */
static void extruded_6061_is_38(void **state)
{
    (void)state;
    const struct gw_screw s = screw(GW_THREAD_COARSE, 0.25, 20);
    const struct gw_metal_strength metal = alloy("6061-T6");
    assert_near(metal.ultimate, 38 * KSI, 1);
    assert_near(pullout(&s, 0.25 * IN, &metal) / LB, 0.58 * 0.539 * 0.25 * 38000, 0.01);
}

/* Tension on the stress area, shear on the smaller root area over sqrt(3). */
static void areas_are_not_swapped(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(SIZES); i++) {
        struct gw_engine engine = start();
        struct gw_screw_result out;
        struct gw_screw_case in = {.screw = screw(SIZES[i].thread, SIZES[i].diameter, SIZES[i].per_inch)};
        in.engagement = in.edge_distance = in.yield = in.tested_tension = in.tested_shear = GW_ABSENT;
        in.safety_factor = in.metal_safety_factor = in.demand_tension = in.demand_shear = GW_ABSENT;
        in.head.diameter = in.head.hole = GW_ABSENT;
        in.ultimate = 100 * KSI;
        assert_int_equal(gw_screw_solve(&out, &in, &engine), GW_OK);
        if (SIZES[i].thread == GW_THREAD_COARSE) assert_true(out.areas.tension > 1.1 * out.areas.root);
        else assert_near(out.areas.tension, out.areas.root, 0);
        assert_near(out.tension, in.ultimate * out.areas.tension / 3, 1e-6);
        assert_near(out.shear * sqrt(3), in.ultimate * out.areas.root / 3, 1e-6);
    }
}

static void safety_factors_of_screws_and_bolts(void **state)
{
    (void)state;
    struct gw_engine engine = start();
    struct gw_bolt_strength bolt;
    assert_near(gw_screw_safety(&engine), 3.0, 0);
    assert_near(gw_bolt_safety(&engine), 1.95, 0);
    gw_steel_bolt(&bolt, 0.5 * IN, 120 * KSI, &engine);
    assert_near(bolt.tension / LB, 0.75 * 120000 * 0.1963495 / 2, 0.1);
    assert_near(bolt.shear / LB, 0.45 * 120000 * 0.1963495 / 2, 0.1);
    assert_int_equal(gw_used_weakest(&engine.used), GW_MEMORY);
}

/* A chase is no tapped hole: no value comes without a test. */
static void seats_without_a_formula_want_a_test(void **state)
{
    (void)state;
    static const char *const keys[] = {"chase_tested", "slot_tested", "spline_tested"};
    for (int seat = GW_SEAT_CHASE; seat <= GW_SEAT_SPLINE; seat++) {
        struct gw_engine engine = start();
        double out = -1;
        assert_int_equal(gw_tested_strength(&out, (enum gw_screw_seat)seat, GW_ABSENT, GW_ABSENT, &engine), GW_MISSING);
        assert_near(out, -1, 0);
        assert_string_equal(engine.fault.key, keys[seat]);
        assert_non_null(strstr(told(&engine.fault), "give the tested nominal strength"));
        assert_int_equal(gw_tested_strength(&out, (enum gw_screw_seat)seat, 6600, GW_ABSENT, &engine), GW_OK);
        assert_near(out, 2200, 1e-9);
        assert_int_equal(gw_tested_strength(&out, (enum gw_screw_seat)seat, 6600, 2.5, &engine), GW_OK);
        assert_near(out, 2640, 1e-9);
        assert_int_equal(gw_tested_strength(&out, (enum gw_screw_seat)seat, 0, GW_ABSENT, &engine), GW_BAD_VALUE);
    }
}

static double pullover(double diameter, double head, double thickness, const struct gw_metal_strength *metal,
                       enum gw_pullover rule)
{
    struct gw_engine engine = start();
    const struct gw_screw s = screw(GW_THREAD_SPACED, diameter, 16);
    const struct gw_screw_head h = {GW_HEAD_FLAT, rule, head * IN, (diameter + 0.013) * IN};
    const struct gw_sheet sheet = {thickness * IN, *metal};
    double out = GW_ABSENT;
    assert_int_equal(gw_screw_pullover(&out, &s, &h, &sheet, &engine), GW_OK);
    return out;
}

static void pullover_takes_yield_and_says_its_edition(void **state)
{
    (void)state;
    struct gw_metal_strength metal = alloy("6063-T6");
    const double first = pullover(0.19, 0.4, 0.125, &metal, GW_PULLOVER_UNSET);
    const double old = pullover(0.19, 0.4, 0.125, &metal, GW_PULLOVER_2010_VALLEY);
    assert_true(first / old > 2 && first / old < 3); /* not to be mixed */
    metal.ultimate *= 2;
    assert_near(pullover(0.19, 0.4, 0.125, &metal, GW_PULLOVER_2015), first, 0);
    metal.yield *= 2;
    assert_near(pullover(0.19, 0.4, 0.125, &metal, GW_PULLOVER_2015), 2 * first, 1e-9);
    for (double t = 0.03, last = 0; t < 0.3; t += 0.01) {
        const double now = pullover(0.19, 0.4, t, &metal, GW_PULLOVER_2015);
        assert_true(now > last);
        assert_true(pullover(0.19, 0.45, t, &metal, GW_PULLOVER_2015) > now);
        last = now;
    }
}

/* Similar in shape: strengths go with the square of the size. */
static void pullover_and_bearing_scale_with_the_square(void **state)
{
    (void)state;
    struct gw_engine engine = start();
    const struct gw_metal_strength metal = {211e6, 163e6, GW_ABSENT, GW_ABSENT};
    const double k = 1.371;
    double one, other;
    const struct gw_sheet small = {0.083 * IN, metal}, large = {0.083 * k * IN, metal};
    assert_near(pullover(0.19 * k, 0.4 * k, 0.083 * k, &metal, GW_PULLOVER_2015),
                k * k * pullover(0.19, 0.4, 0.083, &metal, GW_PULLOVER_2015), 1e-6);
    assert_int_equal(gw_screw_bearing(&one, 0.19 * IN, 0.33 * IN, &small, &engine), GW_OK);
    assert_int_equal(gw_screw_bearing(&other, 0.19 * k * IN, 0.33 * k * IN, &large, &engine), GW_OK);
    assert_near(other, k * k * one, 1e-6);
    assert_near(gw_screw_tilting(0.19 * k, 0.083 * k, 211e6, &engine),
                k * k * gw_screw_tilting(0.19, 0.083, 211e6, &engine), 1e-3);
}

static void bearing_is_capped_and_slots_bear_less(void **state)
{
    (void)state;
    struct gw_engine engine = start();
    const struct gw_sheet sheet = {0.125 * IN, alloy("6063-T6")};
    double near, far, slot;
    assert_int_equal(gw_screw_bearing(&near, 0.25 * IN, 0.5 * IN, &sheet, &engine), GW_OK);
    assert_int_equal(gw_screw_bearing(&far, 0.25 * IN, 5 * IN, &sheet, &engine), GW_OK);
    assert_near(far, near, 1e-9);
    assert_int_equal(gw_slot_bearing(&slot, 0.25 * IN, 5 * IN, &sheet, &engine), GW_OK);
    assert_near(slot, far * 1.33 / 2, 1e-6);
    assert_int_equal(gw_screw_bearing(&near, 0.25 * IN, 0.374 * IN, &sheet, &engine), GW_OUTSIDE_METHOD);
    assert_string_equal(engine.fault.key, "edge_distance");
}

/* A whole case through the records, by the words that a person writes. */
static const struct gw_node *calc(struct world *w, const char *kind, const char *yaml)
{
    struct gw_text out;
    gw_text_init(&out, &w->arena);
    gw_calc_case(&out, &w->arena, gw_calc_find(kind), node_of(w, yaml), gw_tables_standard());
    return node_of(w, gw_strndup(&w->arena, out.at, out.length));
}

static double number(const struct gw_node *result, const char *key)
{
    double value = GW_ABSENT;
    const char *text = text_at(result, key);
    gw_read_number(text, strlen(text), &value);
    return value;
}

static void units_do_not_matter(void **state)
{
    struct world *w = *state;
    static const char us[] =
        "{units: us, diameter: 0.25, threads_per_inch: 20, thread: coarse, engagement: 0.188, alloy: "
        "6063-T6, head_diameter: 0.5, sheet: {thickness: 0.2, alloy: 6061-T6}, edge_distance: 0.41, "
        "ultimate: 100 ksi, tension: 100, shear: 70}";
    static const char si[] =
        "{units: si, diameter: 6.35, threads_per_inch: 20, thread: coarse, engagement: 4.7752, alloy: "
        "6063-T6, head_diameter: 12.7, sheet: {thickness: 5.08, alloy: 6061-T6}, edge_distance: "
        "10.414, ultimate: 689.4757293168361 MPa, tension: 444.82216152605, shear: 311.375513068235}";
    static const char *const keys[] = {"tension_area_m2",     "root_area_m2",        "tension_allowable_n",
                                       "shear_allowable_n",   "pullout_allowable_n", "pullover_allowable_n",
                                       "bearing_allowable_n", "tilting_allowable_n", "interaction",
                                       "utilisation"};
    const struct gw_node *a = calc(w, "screw", us), *b = calc(w, "screw", si);
    for (size_t i = 0; i < COUNT_OF(keys); i++)
        assert_near(number(b, keys[i]), number(a, keys[i]), 1e-9 * number(a, keys[i]));
}

static void tilting_only_where_the_thread_is_no_thicker(void **state)
{
    struct world *w = *state;
    static const char form[] =
        "{diameter: 1/4 in, threads_per_inch: 20, thread: coarse, engagement: %s, alloy: 6063-T6, "
        "edge_distance: 1 in, sheet: {thickness: 0.125 in, alloy: 6063-T6}}";
    const struct gw_node *thin = calc(w, "screw", gw_format(&w->arena, form, "0.125 in"));
    const struct gw_node *thick = calc(w, "screw", gw_format(&w->arena, form, "0.126 in"));
    assert_true(number(thin, "tilting_nominal_n") > 0);
    assert_string_equal(text_at(thick, "tilting_nominal_n"), "null");
}

/* One unknown link and nothing is shown. */
static void use_wants_every_link(void **state)
{
    struct world *w = *state;
    static const char base[] = "{diameter: 1/4 in, threads_per_inch: 20, thread: coarse, tension: 100 lb%s}";
    static const struct {
        const char *more;
        bool shown;
    } cases[] = {
        {"", false},
        {", ultimate: 100 ksi", false},
        {", engagement: 1/8 in, alloy: 6063-T6", false},
        {", ultimate: 100 ksi, engagement: 1/8 in, alloy: 6063-T6", true},
        {", ultimate: 100 ksi, engagement: 1/8 in, alloy: 6063-T6, shear: 50 lb", false},
        {", ultimate: 100 ksi, engagement: 1/8 in, alloy: 6063-T6, sheet: {thickness: 1/8 in, alloy: 6063-T6}", false},
        {", ultimate: 100 ksi, engagement: 1/8 in, alloy: 6063-T6, head_diameter: 1/2 in, shear: 50 lb, "
         "edge_distance: 1/2 in, sheet: {thickness: 1/8 in, alloy: 6063-T6}",
         true}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        const struct gw_node *r = calc(w, "screw", gw_format(&w->arena, base, cases[i].more));
        assert_null(gw_node_get(r, "error"));
        assert_int_equal(number(r, "utilisation") > 0, cases[i].shown);
        assert_int_equal(gw_node_get(r, "notes")->count > 0, !cases[i].shown);
    }
}

static void grades_by_size(void **state)
{
    (void)state;
    struct gw_engine engine = start();
    struct gw_metal_strength metal;
    assert_int_equal(gw_fastener_grade(&metal, "stainless_cw", 0.19 * IN, &engine), GW_OK);
    assert_int_equal(gw_used_weakest(&engine.used), GW_PRACTICE); /* below the standard's sizes */
    engine = start();
    assert_int_equal(gw_fastener_grade(&metal, "stainless_cw", 0.25 * IN, &engine), GW_OK);
    assert_int_equal(gw_used_weakest(&engine.used), GW_PUBLISHED);
    assert_near(metal.ultimate, 100 * KSI, 1);
    assert_int_equal(gw_fastener_grade(&metal, "stainless_cw", 0.75 * IN, &engine), GW_OK);
    assert_near(metal.ultimate, 85 * KSI, 1);
    assert_int_equal(gw_fastener_grade(&metal, "stainless_cw", 0.7 * IN, &engine), GW_OUTSIDE_METHOD);
    assert_int_equal(gw_fastener_grade(&metal, "grade_8", 0.5 * IN, &engine), GW_BAD_VALUE);
    assert_int_equal(gw_fastener_grade(&metal, NULL, 0.5 * IN, &engine), GW_BAD_VALUE);
    assert_int_equal(gw_fastener_alloy(&metal, NULL, &engine), GW_BAD_VALUE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pullout_is_continuous),
        cmocka_unit_test(pullout_grows_with_engagement),
        cmocka_unit_test(pullout_is_linear_in_the_metal),
        cmocka_unit_test(pullout_ends_where_it_says),
        cmocka_unit_test(given_stripping_area_counts),
        cmocka_unit_test(extruded_6061_is_38),
        cmocka_unit_test(areas_are_not_swapped),
        cmocka_unit_test(safety_factors_of_screws_and_bolts),
        cmocka_unit_test(seats_without_a_formula_want_a_test),
        cmocka_unit_test(pullover_takes_yield_and_says_its_edition),
        cmocka_unit_test(pullover_and_bearing_scale_with_the_square),
        cmocka_unit_test(bearing_is_capped_and_slots_bear_less),
        WORLD_TEST(units_do_not_matter),
        WORLD_TEST(tilting_only_where_the_thread_is_no_thicker),
        WORLD_TEST(use_wants_every_link),
        cmocka_unit_test(grades_by_size),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
