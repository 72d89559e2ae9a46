/* Water: shares, floors and caps; site tests; heads. */
#include "weather_support.h"

/* Required water -------------------------------------------------------------------------------------------------- */

static struct gw_water_case water_case(double psf, enum gw_water_rule rule)
{
    return (struct gw_water_case){
        .positive = {psf * PSF}, .rule = rule, .share = GW_ABSENT, .floor = GW_ABSENT, .cap = GW_ABSENT};
}

static struct gw_water_result required(const struct gw_water_case *in)
{
    struct gw_water_result out;
    struct gw_engine engine = an_engine();
    assert_int_equal(gw_required_water(&out, in, &engine), GW_OK);
    return out;
}

static double water_psf(double psf, enum gw_water_rule rule, enum gw_water_region region)
{
    struct gw_water_case in = water_case(psf, rule);
    in.region = region;
    return required(&in).pressure / PSF;
}

/* 15 % or 20 %, floor and cap, by class; numbers of the standard written out here. */
static void shares_floors_caps(void **state)
{
    (void)state;
    static const struct {
        enum gw_water_rule rule;
        double share, floor, cap;
    } rows[] = {{GW_WATER_R, 0.15, 2.90, 12},
                {GW_WATER_LC, 0.15, 3.75, 12},
                {GW_WATER_CW, 0.15, 4.50, 12},
                {GW_WATER_AW, 0.20, 8.00, 12},
                {GW_WATER_CURTAIN_WALL, 0.20, 6.24, 15}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const double at_floor = rows[i].floor / rows[i].share, at_cap = rows[i].cap / rows[i].share;
        assert_near(water_psf(at_floor * 0.7, rows[i].rule, GW_WATER_US), rows[i].floor, 1e-9);
        assert_near(water_psf(at_floor * 1.1, rows[i].rule, GW_WATER_US), rows[i].floor * 1.1, 1e-9);
        assert_near(water_psf(at_cap * 0.97, rows[i].rule, GW_WATER_US), rows[i].cap * 0.97, 1e-9);
        assert_near(water_psf(at_cap * 1.9, rows[i].rule, GW_WATER_US), rows[i].cap, 1e-9);
        assert_near(water_psf(at_cap * 1.9, rows[i].rule, GW_WATER_CANADA), 720 / PSF, 1e-9);
    }
}

static void governs_on_either_side(void **state)
{
    (void)state;
    struct gw_water_case in = water_case(40 - 1e-6, GW_WATER_AW);
    assert_int_equal(required(&in).governs, GW_BY_FLOOR);
    in = water_case(40 + 1e-6, GW_WATER_AW);
    assert_int_equal(required(&in).governs, GW_BY_SHARE);
    in = water_case(60 - 1e-6, GW_WATER_AW);
    assert_int_equal(required(&in).governs, GW_BY_SHARE);
    in = water_case(60 + 1e-6, GW_WATER_AW);
    assert_int_equal(required(&in).governs, GW_BY_CAP);
}

static void water_grows_with_pressure(void **state)
{
    (void)state;
    draw_from(51);
    for (int i = 0; i < 20000; i++) {
        struct gw_water_case in = water_case(draw(0, 120), (enum gw_water_rule)(GW_WATER_R + (int)draw(0, 5)));
        const struct gw_water_result less = required(&in);
        in.positive.pa *= draw(1, 2);
        const struct gw_water_result more = required(&in);
        assert_true(more.pressure >= less.pressure);
        assert_true(less.pressure >= less.floor && more.pressure <= more.cap);
    }
}

static void water_refusals(void **state)
{
    (void)state;
    struct gw_water_result out;
    struct gw_engine engine = an_engine();
    struct gw_water_case in = water_case(30, GW_WATER_UNSET);
    assert_int_equal(gw_required_water(&out, &in, &engine), GW_MISSING);
    in = water_case(-30, GW_WATER_AW); /* suction */
    assert_int_equal(gw_required_water(&out, &in, &engine), GW_BAD_VALUE);
    in = water_case(30, GW_WATER_CURTAIN_WALL);
    in.floor = 15.1 * PSF;
    assert_int_equal(gw_required_water(&out, &in, &engine), GW_BAD_VALUE);
    assert_string_equal(engine.fault.key, "floor");
    in.floor = 15 * PSF; /* both at the cap: one pressure for all */
    assert_int_equal(gw_required_water(&out, &in, &engine), GW_OK);
    assert_near(out.pressure, 15 * PSF, 1e-9);
}

/* The judge asks the same engine: a given floor above the rule's own cap is not cut to the cap. */
static void judge_shows_no_floor_above_cap(void **state)
{
    struct world *w = *state;
    must_judge(w, "galeward: 1\nproject: {name: Wet}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
                  "site: {basic_wind_speed: 115 mph, exposure: C}\nlites: {a: {}}\n"
                  "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
                  "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 9 ft, ends: [corner, none],\n"
                  "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"
                  "requirements: {water: {floor: 20 psf}}\n");
    bool found = false;
    for (size_t i = 0; i < w->answer.judgement.demands.n; i++) {
        const struct gw_demand *demand = &w->answer.judgement.demands.items[i];
        if (strcmp(demand->check->id, "water") != 0) continue;
        found = true;
        assert_int_equal(demand->state, GW_NOT_KNOWN);
        assert_non_null(strstr(words(&demand->message), "floor lies above its cap"));
    }
    assert_true(found);
}

/* On site and after the load -------------------------------------------------------------------------------------- */

static void site_tests_show_less(void **state)
{
    (void)state;
    static const struct {
        double tested;
        enum gw_bool on_site, repeated;
        enum gw_water_evidence shows;
        const char *why;
    } cases[] = {
        {12, GW_NO, GW_YES, GW_WATER_SHOWS, ""},
        {12, GW_NO, GW_UNSAID, GW_WATER_PROVIDED, "does not say"},
        {12, GW_NO, GW_NO, GW_WATER_SHOWS_NOT, "only before the structural load"},
        {11.9, GW_NO, GW_YES, GW_WATER_BELOW, "below the required"},
        {11.9, GW_UNSAID, GW_YES, GW_WATER_BELOW, "below the required"},
        {8, GW_YES, GW_UNSAID, GW_WATER_SHOWS_NOT, "reduced pressure of site tests does not show the full one"},
        {7.9, GW_YES, GW_UNSAID, GW_WATER_SHOWS_NOT, "below the reduced pressure"},
        {12, GW_YES, GW_UNSAID, GW_WATER_SHOWS, ""},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_engine engine = an_engine();
        const char *why = NULL;
        const struct gw_water_test test = {cases[i].tested * PSF, 12 * PSF, cases[i].on_site, cases[i].repeated};
        assert_int_equal(gw_water_test_shows(&why, &test, &engine), cases[i].shows);
        assert_non_null(strstr(why, cases[i].why));
        assert_int_equal(*why == 0, *cases[i].why == 0);
    }
}

static void field_pressures(void **state)
{
    (void)state;
    struct gw_engine engine = an_engine();
    bool below;
    assert_near(gw_field_water(300, &below, &engine), 200, 1e-9);
    assert_false(below);
    assert_near(gw_field_water(299, &below, &engine), 299 * 2.0 / 3, 1e-9);
    assert_true(below);
    assert_near(gw_field_air(0.0003048, &engine), 0.0004572, 1e-12);
}

/* Air streams: 6.24, 8, 10, 12, 15 psf, rounded as printed by hand from 0.00256 V^2. */
static void air_streams(void **state)
{
    (void)state;
    static const double psf[] = {6.24, 8, 10, 12, 15}, mph[] = {49.4, 55.9, 62.5, 68.5, 76.5};
    for (int i = 0; i < 5; i++) {
        struct gw_engine engine = an_engine();
        assert_near(gw_dynamic_water_speed(psf[i] * PSF, &engine) / MPH, mph[i], 0.06);
    }
}

/* Head ------------------------------------------------------------------------------------------------------------ */

static void heads_and_upstands(void **state)
{
    (void)state;
    struct gw_engine engine = an_engine();
    const double inch = 0.0254;
    assert_near(gw_water_head(5.2 * PSF, &engine), inch, 1e-9);
    assert_near(gw_water_pressure(gw_water_head(432.1, &engine), &engine), 432.1, 1e-9);
    /* 12 psf: 2.3077 in; a fifth is more than a quarter inch. 3 psf: 0.5769 in; a quarter inch is more. */
    assert_near(gw_upstand_needed(12 * PSF, &engine), 1.2 * 12 / 5.2 * inch, 1e-9);
    assert_near(gw_upstand_needed(3 * PSF, &engine), (3 / 5.2 + 0.25) * inch, 1e-9);
    const double needed = gw_upstand_needed(12 * PSF, &engine);
    assert_int_equal(gw_upstand_enough(needed, 12 * PSF, &engine), GW_YES);
    assert_int_equal(gw_upstand_enough(needed * (1 - 1e-6), 12 * PSF, &engine), GW_NO);
    assert_near(gw_capillary_slot(0.001, &engine), 0.0149, 0.00005);
    assert_near(gw_capillary_slot(0.003, &engine), 0.0050, 0.00005);
    assert_near(gw_capillary_hole(0.0095, &engine), 0.0031, 0.00005);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(shares_floors_caps),        cmocka_unit_test(governs_on_either_side),
        cmocka_unit_test(water_grows_with_pressure), cmocka_unit_test(water_refusals),
        WORLD_TEST(judge_shows_no_floor_above_cap),  cmocka_unit_test(site_tests_show_less),
        cmocka_unit_test(field_pressures),           cmocka_unit_test(air_streams),
        cmocka_unit_test(heads_and_upstands),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
