/* What must hold whatever the numbers: monotony, independence of units, given and tested pressures, no hidden state. */
#include "support.h"

static struct gw_wind_case any_case(void)
{
    struct gw_wind_case in = empty_case();
    in.edition = (enum gw_edition)(GW_ASCE7_10 + pick(3));
    in.exposure = (enum gw_exposure)(GW_EXPOSURE_B + pick(3));
    in.enclosure = (enum gw_enclosure)(GW_ENCLOSED + pick(4));
    in.exposure_b_floor = (enum gw_floor_rule)(GW_FLOOR_EDITION + pick(3));
    in.basic_wind_speed = draw(40, 90);
    in.mean_roof_height = draw(3, 250);
    in.height = in.mean_roof_height * draw(0.05, 1);
    in.least_width = draw(5, 120);
    in.effective_area = exp(draw(-3, 5));
    in.zone = 4 + pick(2);
    in.roof_slope = draw(0, 0.5);
    in.alternative_60_90 = pick(2) ? GW_YES : GW_NO;
    if (pick(2)) in.elevation = draw(0, 3000);
    return in;
}

enum { CASES = 20000 };

/* Not above, but for the last bits. */
static void assert_at_most(double less, double more, const struct gw_wind_case *in)
{
    if (less <= more * (1 + 1e-12) + 1e-12) return;
    print_error("edition %d exposure %d h %.17g z %.17g A %.17g V %.17g: %.17g above %.17g\n", (int)in->edition,
                (int)in->exposure, in->mean_roof_height, in->height, in->effective_area, in->basic_wind_speed, less,
                more);
    fail();
}

static void pressures_fall_with_area(void **state)
{
    (void)state;
    draw_from(11);
    for (int i = 0; i < CASES; i++) {
        struct gw_wind_case in = any_case();
        const struct gw_wind_result small = wind_of(&in);
        in.effective_area *= draw(1, 5);
        const struct gw_wind_result large = wind_of(&in);
        assert_at_most(large.raw_positive.pa, small.raw_positive.pa, &in);
        assert_at_most(-large.raw_negative.pa, -small.raw_negative.pa, &in);
        assert_at_most(large.positive.pa, small.positive.pa, &in);
        assert_at_most(-large.negative.pa, -small.negative.pa, &in);
    }
}

static void pressures_rise_with_speed(void **state)
{
    (void)state;
    draw_from(12);
    for (int i = 0; i < CASES; i++) {
        struct gw_wind_case in = any_case();
        const struct gw_wind_result slow = wind_of(&in);
        double factor = draw(1, 1.5);
        in.basic_wind_speed *= factor;
        const struct gw_wind_result fast = wind_of(&in);
        assert_at_most(slow.positive.pa, fast.positive.pa, &in);
        assert_at_most(-slow.negative.pa, -fast.negative.pa, &in);
        assert_near(fast.raw_positive.pa, slow.raw_positive.pa * factor * factor, 1e-9 * fast.raw_positive.pa);
    }
}

static void inward_rises_with_height(void **state)
{
    (void)state;
    draw_from(13);
    for (int i = 0; i < CASES; i++) {
        struct gw_wind_case in = any_case();
        const struct gw_wind_result low = wind_of(&in);
        in.height = fmin(in.mean_roof_height, in.height * draw(1, 3));
        const struct gw_wind_result high = wind_of(&in);
        assert_at_most(low.qz, high.qz, &in);
        assert_at_most(low.positive.pa, high.positive.pa, &in);
        assert_near(high.negative.pa, low.negative.pa, 0);
    }
}

/* Within one figure: buildings up to 60 ft, and above 90 ft. */
static void both_rise_with_roof_height(void **state)
{
    (void)state;
    draw_from(14);
    for (int i = 0; i < CASES; i++) {
        struct gw_wind_case in = any_case();
        bool low_rise = pick(2);
        in.height = GW_ABSENT;
        in.mean_roof_height = low_rise ? draw(3, 10) : draw(30, 200);
        const struct gw_wind_result low = wind_of(&in);
        in.mean_roof_height *= draw(1, 1.8);
        const struct gw_wind_result high = wind_of(&in);
        assert_at_most(low.qh, high.qh, &in);
        assert_at_most(low.positive.pa, high.positive.pa, &in);
        assert_at_most(-low.negative.pa, -high.negative.pa, &in);
    }
}

static void zone_5_is_not_below_zone_4(void **state)
{
    (void)state;
    draw_from(15);
    for (int i = 0; i < CASES; i++) {
        struct gw_wind_case in = any_case();
        in.zone = 4;
        const struct gw_wind_result middle = wind_of(&in);
        in.zone = 5;
        const struct gw_wind_result edge = wind_of(&in);
        assert_near(edge.positive.pa, middle.positive.pa, 0);
        assert_at_most(-middle.negative.pa, -edge.negative.pa, &in);
    }
}

/* Minimum, signs and levels. */
static void bounds_of_every_case(void **state)
{
    (void)state;
    draw_from(16);
    for (int i = 0; i < CASES; i++) {
        const struct gw_wind_case in = any_case();
        const struct gw_wind_result r = wind_of(&in);
        assert_true(r.positive.pa >= 16 * PSF * (1 - 1e-12));
        assert_true(r.negative.pa <= -16 * PSF * (1 - 1e-12));
        assert_near(r.asd_positive.pa, 0.6 * r.positive.pa, 1e-9);
        assert_near(r.asd_negative.pa, 0.6 * r.negative.pa, 1e-9);
        assert_true(r.zone_width >= 3 * FT * (1 - 1e-12));
    }
}

/* US and SI project files -------------------------------------------------------------------------------------------
 */

static const char US_PROJECT[] =
    "galeward: 1\nunits: us\nproject: {name: Twice}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
    "site: {basic_wind_speed: 130, exposure: C, elevation: 300,\n"
    "  topography: {shape: ridge, height: 100, half_length: 250, distance: 50}}\n"
    "buildings: [{name: main, roof_height: 100, least_width: 90, enclosure: partially_enclosed, highest_opening: 50,\n"
    "  internal_volume: 900000, opening_area: 200, parapet_height: 4, roof_slope: 2}]\n"
    "walls: [{name: east, width: 30, floors: [0, 50], top: 104, ends: [corner, {corner_at: 4}],\n"
    "  columns: {count: 6, width: 5}, rows: [{height: 10, lite: a}, {height: rest, lite: a}], screws: {spacing: 12}}]\n"
    "lites: {a: {layers: [{glass: 0.25}]}}\n"
    "given: [{zone: 5, area: 10, inward: 60, outward: 150, level: strength, source: S-1}]\n";
static const char SI_PROJECT[] =
    "galeward: 1\nunits: si\nproject: {name: Twice}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
    "site: {basic_wind_speed: 58.1152, exposure: C, elevation: 91.44,\n"
    "  topography: {shape: ridge, height: 30.48, half_length: 76.2, distance: 15.24}}\n"
    "buildings: [{name: main, roof_height: 30.48, least_width: 27.432, enclosure: partially_enclosed,\n"
    "  highest_opening: 15.24, internal_volume: 25485.1619328, opening_area: 18.580608, parapet_height: 1.2192,\n"
    "  roof_slope: 2}]\n"
    "walls: [{name: east, width: 9.144, floors: [0, 15.24], top: 31.6992, ends: [corner, {corner_at: 1.2192}],\n"
    "  columns: {count: 6, width: 1.524}, rows: [{height: 3.048, lite: a}, {height: rest, lite: a}],\n"
    "  screws: {spacing: 304.8}}]\n"
    "lites: {a: {layers: [{glass: 6.35}]}}\n"
    "given: [{zone: 5, area: 0.9290304, inward: 2872.8155388201504, outward: 7182.038847050376, level: strength,\n"
    "  source: S-1}]\n";

static void assert_same_element(const struct gw_element *a, const struct gw_element *b)
{
    const double hair = 1e-9;
    assert_string_equal(a->id, b->id);
    assert_string_equal(a->governs, b->governs);
    assert_int_equal(a->count, b->count);
    assert_int_equal(a->zone, b->zone);
    assert_near(a->width, b->width, hair);
    assert_near(a->top, b->top, hair);
    assert_near(a->effective_area, b->effective_area, hair * b->effective_area);
    assert_near(a->inward.pa, b->inward.pa, hair * b->inward.pa);
    assert_near(a->outward.pa, b->outward.pa, -hair * b->outward.pa);
}

static void assert_same_takeoff(const struct gw_takeoff *a, const struct gw_takeoff *b)
{
    assert_int_equal(a->elements.n, b->elements.n);
    assert_true(a->elements.n > 0);
    for (size_t i = 0; i < a->elements.n; i++) assert_same_element(&a->elements.items[i], &b->elements.items[i]);
    assert_int_equal(a->differences.n, b->differences.n);
}

static void us_and_si_give_the_same(void **state)
{
    struct world *us = *state, si;
    world_open(&si);
    must_take_off(us, US_PROJECT);
    must_take_off(&si, SI_PROJECT);
    assert_same_takeoff(&us->takeoff, &si.takeoff);
    world_close(&si);
}

/* Given pressures and the wind tunnel --------------------------------------------------------------------------------
 */

#define PLAIN                                                                                                          \
    "galeward: 1\nproject: {name: Given}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                               \
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"                                                                 \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 9 ft, ends: [corner, none],\n"                               \
    "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\nlites: {a: {}}\n"

/* The lite of 5 x 9 ft in the zone: computed +29.32 psf, -32.02 in zone 4, -37.01 in zone 5. */
static const struct gw_element *lite_of(struct world *w, const char *more, int zone)
{
    must_take_off(w, gw_format(&w->arena, "%s%s", PLAIN, more));
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind == GW_LITE && e->zone == zone) return e;
    }
    fail();
    return NULL;
}

struct override {
    const char *more;
    int zone;
    double inward, outward; /* psf, strength; 0: as computed */
    const char *governs;
};

static const struct override OVERRIDES[] = {
    {"", 4, 0, 0, "asce7-16"},
    {"given: [{zone: 4, area: 10 ft2, inward: 40 psf, outward: 45 psf, level: strength, source: S}]", 4, 40, -45,
     "given S"},
    {"given: [{zone: 4, area: 10 ft2, inward: 40 psf, outward: 20 psf, level: strength, source: S}]", 4, 40, 0,
     "given S, inward"},
    {"given: [{zone: 4, area: 10 ft2, inward: 20 psf, outward: 45 psf, level: strength, source: S}]", 4, 0, -45,
     "given S, outward"},
    {"given: [{zone: 4, area: 10 ft2, inward: 20 psf, outward: 20 psf, level: strength, source: S}]", 4, 0, 0,
     "asce7-16"},
    {"given: [{zone: 4, area: 10 ft2, inward: 20 psf, outward: 20 psf, level: strength, source: S}]\npressures: given",
     4, 20, -20, "given S"},
    {"given: [{zone: 4, area: 10 ft2, inward: 24 psf, outward: 27 psf, level: asd, source: S}]", 4, 40, -45, "given S"},
    {"given: [{zone: 5, area: 10 ft2, inward: 40 psf, outward: 45 psf, level: strength, source: S}]", 4, 0, 0,
     "asce7-16"},
    {"given: [{zone: 4, area: 10 ft2, up_to: 8 ft, inward: 40 psf, outward: 45 psf, level: strength, source: S}]", 4, 0,
     0, "asce7-16"},
    /* 45 ft2: the row of 20 ft2 serves, not that of 10 nor that of 50. */
    {"given: [{zone: 4, area: 10 ft2, inward: 60 psf, outward: 60 psf, level: strength, source: A},\n"
     "  {zone: 4, area: 50 ft2, inward: 40 psf, outward: 40 psf, level: strength, source: C},\n"
     "  {zone: 4, area: 20 ft2, inward: 50 psf, outward: 50 psf, level: strength, source: B}]",
     4, 50, -50, "given B"},
    /* Below every row the smallest. */
    {"given: [{zone: 4, area: 500 ft2, inward: 40 psf, outward: 40 psf, level: strength, source: A},\n"
     "  {zone: 4, area: 50 ft2, inward: 50 psf, outward: 50 psf, level: strength, source: B}]",
     4, 50, -50, "given B"},
    /* Of rows limited in height the lowest that reaches. */
    {"given: [{zone: 4, area: 10 ft2, up_to: 30 ft, inward: 60 psf, outward: 60 psf, level: strength, source: A},\n"
     "  {zone: 4, area: 10 ft2, up_to: 9 ft, inward: 50 psf, outward: 50 psf, level: strength, source: B},\n"
     "  {zone: 4, area: 10 ft2, inward: 70 psf, outward: 70 psf, level: strength, source: C}]",
     4, 50, -50, "given B"},
    {"wind_tunnel: [{zone: 4, inward: 27 psf, outward: 30 psf, level: strength, source: T}]", 4, 27, -30,
     "wind tunnel T"},
    {"wind_tunnel: [{zone: 4, inward: 60 psf, outward: 70 psf, level: strength, source: T}]", 4, 60, -70,
     "wind tunnel T"},
    {"wind_tunnel: [{zone: 4, inward: 36 psf, outward: 42 psf, level: asd, source: T}]", 4, 60, -70, "wind tunnel T"},
    {"wind_tunnel: [{zone: 5, inward: 27 psf, outward: 30 psf, level: strength, source: T}]", 4, 0, 0, "asce7-16"},
};

static void given_and_tested_pressures(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof OVERRIDES / sizeof *OVERRIDES; i++) {
        const struct override *o = &OVERRIDES[i];
        struct world w;
        world_open(&w);
        const struct gw_element *e = lite_of(&w, o->more, o->zone);
        struct gw_wind_result r;
        assert_int_equal(gw_takeoff_derive(&w.model, e, NULL, &r), GW_OK);
        if (strcmp(e->governs, o->governs) != 0) print_error("%s\n", o->more);
        assert_string_equal(e->governs, o->governs);
        assert_near(e->inward.pa, fabs(o->inward) > 0 ? o->inward * PSF : r.positive.pa, 1e-6);
        assert_near(e->outward.pa, fabs(o->outward) > 0 ? o->outward * PSF : r.negative.pa, 1e-6);
        assert_near(e->outward_asd.pa, 0.6 * e->outward.pa, 1e-9);
        world_close(&w);
    }
}

/* The floor is 0.8 of what Zone 4 would be, in Zone 5 too. */
static void tunnel_floor(void **state)
{
    (void)state;
    for (int zone = 4; zone <= 5; zone++) {
        struct world w;
        struct gw_wind_case in;
        struct gw_wind_parapet unused;
        world_open(&w);
        const char *tunnel = gw_format(
            &w.arena, "wind_tunnel: [{zone: %d, inward: 10 psf, outward: 10 psf, level: strength, source: T}]", zone);
        const struct gw_element *e = lite_of(&w, tunnel, zone);
        gw_takeoff_case(&w.model, e, &in, &unused);
        in.zone = 4;
        const struct gw_wind_result zone_4 = wind_of(&in);
        assert_string_equal(e->governs, "wind tunnel T, code floor");
        assert_near(e->inward.pa, 0.8 * zone_4.positive.pa, 1e-9);
        assert_near(e->outward.pa, 0.8 * zone_4.negative.pa, 1e-9);
        world_close(&w);
    }
}

static void differences_above_5_percent_are_listed(void **state)
{
    struct world *w = *state;
    /* computed +29.32, -32.02: 30 psf is 2.3 % more, 34 psf 6 % more */
    const struct gw_element *e =
        lite_of(w, "given: [{zone: 4, area: 10 ft2, inward: 30 psf, outward: 34 psf, level: strength, source: S}]", 4);
    size_t found = 0;
    for (size_t i = 0; i < w->takeoff.differences.n; i++) {
        const struct gw_difference *d = &w->takeoff.differences.items[i];
        if (d->element != e) continue;
        found++;
        assert_string_equal(d->direction, "outward");
        assert_near(d->given, -34 * PSF, 1e-6);
        assert_near(d->computed / PSF, -32.02, 0.01);
    }
    assert_int_equal(found, 1);
}

/* No hidden state ---------------------------------------------------------------------------------------------------
 */

static void two_models_interleaved(void **state)
{
    struct world *a = *state, b, alone;
    world_open(&b);
    world_open(&alone);
    must_load(a, US_PROJECT);
    must_load(&b,
              PLAIN "assume: [{table: wind_velocity, row: asce7-16, column: kd, value: '0.5', reason: r, by: b}]\n");
    assert_true(gw_takeoff_run(&a->takeoff, &a->model, &a->arena, &a->diags));
    assert_true(gw_takeoff_run(&b.takeoff, &b.model, &b.arena, &b.diags));
    gw_ask_init(&b.ask, &b.model, &b.takeoff, &b.arena);
    gw_answer_check(&b.answer, &b.ask);
    gw_ask_init(&a->ask, &a->model, &a->takeoff, &a->arena);
    gw_answer_check(&a->answer, &a->ask);
    must_take_off(&alone, US_PROJECT);
    assert_same_takeoff(&a->takeoff, &alone.takeoff);
    assert_int_equal(a->answer.judgement.demands.n > 0, 1);
    world_close(&alone);
    world_close(&b);
}

/* A correction changes its project only. */
static void corrections_stay_in_their_project(void **state)
{
    struct world *w = *state, plain;
    world_open(&plain);
    const struct gw_element *e =
        lite_of(w, "assume: [{table: wind_velocity, row: asce7-16, column: kd, value: '1.7', reason: r, by: b}]", 4);
    const struct gw_element *usual = lite_of(&plain, "", 4);
    assert_near(e->inward.pa, 2 * usual->inward.pa, 1e-9 * e->inward.pa);
    world_close(&plain);
}

static void same_input_same_bits(void **state)
{
    (void)state;
    draw_from(17);
    for (int i = 0; i < 1000; i++) {
        const struct gw_wind_case in = any_case();
        const struct gw_wind_result a = wind_of(&in), b = wind_of(&in);
        assert_memory_equal(&a.positive, &b.positive, sizeof a.positive);
        assert_memory_equal(&a.negative, &b.negative, sizeof a.negative);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pressures_fall_with_area),
        cmocka_unit_test(pressures_rise_with_speed),
        cmocka_unit_test(inward_rises_with_height),
        cmocka_unit_test(both_rise_with_roof_height),
        cmocka_unit_test(zone_5_is_not_below_zone_4),
        cmocka_unit_test(bounds_of_every_case),
        WORLD_TEST(us_and_si_give_the_same),
        cmocka_unit_test(given_and_tested_pressures),
        cmocka_unit_test(tunnel_floor),
        WORLD_TEST(differences_above_5_percent_are_listed),
        WORLD_TEST(two_models_interleaved),
        WORLD_TEST(corrections_stay_in_their_project),
        cmocka_unit_test(same_input_same_bits),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
