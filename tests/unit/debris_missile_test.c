/* Wind-borne debris: zones, missiles, cycles. */
#include "debris_support.h"

/* Zone and missile ------------------------------------------------------------------------------------------------ */

/* The zones as sentences, in mph. */
static int zone_of(double v, bool near, double shift)
{
    const double first = 130 - shift;
    if (v < first) return 0;
    if (v < first + 10) return 1;
    if (v > first + 30) return 4;
    if (near) return 3;
    return v < first + 20 ? 2 : 3;
}

static void zones_by_speed_and_coast(void **state)
{
    (void)state;
    static const double miles[] = {0, 0.5, 1, 1.0001, 3, 80};
    const enum gw_debris_edition editions[] = {GW_DEBRIS_ASCE7_05, GW_DEBRIS_ASCE7_10, GW_DEBRIS_ASCE7_16,
                                               GW_DEBRIS_ASCE7_22};
    for (int e = 0; e < 4; e++)
        for (int k = 0; k < 6; k++)
            for (double v = 95; v <= 200; v += 0.5) {
                struct gw_engine engine = an_engine();
                int zone = 0, want = zone_of(v, miles[k] <= 1, e == 0 ? 20 : 0);
                enum gw_status status = gw_debris_zone(&zone, editions[e], v * MPH, miles[k] * MI, GW_NO, &engine);
                assert_int_equal(status, want ? GW_OK : GW_OUTSIDE_METHOD);
                if (want) assert_int_equal(zone, want);
            }
}

static enum gw_missile level(int zone, enum gw_protection protection, double feet)
{
    struct gw_engine engine = an_engine();
    enum gw_missile missile = GW_MISSILE_UNSET;
    assert_int_equal(gw_debris_missile(&missile, zone, protection, feet * FT, &engine), GW_OK);
    return missile;
}

static void levels_at_thirty_feet(void **state)
{
    (void)state;
    const double hair = 1e-6;
    const enum gw_missile low[] = {GW_MISSILE_C, GW_MISSILE_C, GW_MISSILE_D, GW_MISSILE_D};
    const enum gw_missile enhanced[] = {GW_MISSILE_D, GW_MISSILE_D, GW_MISSILE_E, GW_MISSILE_E};
    for (int zone = 1; zone <= 4; zone++) {
        assert_int_equal(level(zone, GW_PROTECTION_BASIC, 30), low[zone - 1]);
        assert_int_equal(level(zone, GW_PROTECTION_BASIC, 30 + hair), GW_MISSILE_A);
        assert_int_equal(level(zone, GW_PROTECTION_ENHANCED, 30), enhanced[zone - 1]);
        assert_int_equal(level(zone, GW_PROTECTION_ENHANCED, 30 + hair), GW_MISSILE_D); /* not the small one */
    }
    struct gw_engine engine = an_engine();
    enum gw_missile missile;
    assert_int_equal(gw_debris_missile(&missile, 5, GW_PROTECTION_BASIC, 3, &engine), GW_BAD_VALUE);
    assert_int_equal(gw_debris_missile(&missile, 2, GW_PROTECTION_NONE, 3, &engine), GW_BAD_VALUE);
}

/* A lite from 25 to 35 ft is low: its lowest edge counts, not its middle. */
static void lowest_edge_counts(void **state)
{
    (void)state;
    struct gw_debris_case in = a_case();
    in.height = 29.9 * FT;
    assert_int_equal(solve(&in).size, GW_LARGE_MISSILE);
    in.height = 31 * FT;
    assert_int_equal(solve(&in).size, GW_SMALL_MISSILE);
}

/* 130 mph: zone 1 of strength-level speeds, zone 3 of nominal ones. */
static void speeds_of_two_levels(void **state)
{
    (void)state;
    struct gw_debris_case in = a_case();
    in.basic_wind_speed = 130 * MPH;
    assert_int_equal(solve(&in).wind_zone, 1);
    in.edition = GW_DEBRIS_ASCE7_05;
    assert_int_equal(solve(&in).wind_zone, 3);
}

static double severity(const struct gw_debris_result *out) { return out->required == GW_YES ? out->energy : 0; }

/* More wind, nearer to the coast, lower, a higher category: never less of a missile. */
static void demand_is_monotone(void **state)
{
    (void)state;
    draw_from(41);
    for (int i = 0; i < 20000; i++) {
        struct gw_debris_case in = a_case();
        in.edition = (enum gw_debris_edition)(GW_DEBRIS_ASCE7_05 + (int)draw(0, 4));
        in.basic_wind_speed = draw(90, 190) * MPH;
        in.coast_distance = draw(0, 3) * MI;
        in.risk_category = (enum gw_risk)(GW_RISK_I + (int)draw(0, 4));
        in.height = draw(0, 120) * FT;
        in.exposure_d_at_shore = draw(0, 1) < 0.5 ? GW_YES : GW_NO;
        if (draw(0, 1) < 0.5) in.aggregate_roof_height = draw(5, 90) * FT;
        const struct gw_debris_result base = solve(&in);
        struct gw_debris_case more = in;
        more.basic_wind_speed *= draw(1, 1.2);
        struct gw_debris_result out = solve(&more);
        assert_true(severity(&out) >= severity(&base));
        more = in;
        more.coast_distance *= draw(0, 1);
        out = solve(&more);
        assert_true(severity(&out) >= severity(&base));
        more = in;
        more.height *= draw(0, 1);
        out = solve(&more);
        assert_true(severity(&out) >= severity(&base));
        if (in.risk_category == GW_RISK_IV) continue;
        more = in;
        more.risk_category++;
        out = solve(&more);
        assert_true(severity(&out) >= severity(&base));
    }
}

/* The same site in miles and feet, and in metric units. */
static void units_do_not_matter(void **state)
{
    struct world *w = *state;
    static const char us[] = "{edition: asce7-16, basic_wind_speed: 150 mph, coast_distance: 1 mi, risk_category: IV, "
                             "height: 30 ft, hurricane_prone: true}";
    static const char si[] = "{edition: asce7-16, basic_wind_speed: 67.056 m/s, coast_distance: 1.609344 km, "
                             "risk_category: IV, height: 9.144 m, hurricane_prone: true}";
    struct gw_text a, b;
    gw_text_init(&a, &w->arena);
    gw_text_init(&b, &w->arena);
    assert_true(gw_calc_case(&a, &w->arena, gw_calc_find("debris"), node_of(w, us), gw_tables_standard()));
    assert_true(gw_calc_case(&b, &w->arena, gw_calc_find("debris"), node_of(w, si), gw_tables_standard()));
    assert_string_equal(a.at, b.at);
    assert_non_null(strstr(a.at, "\"wind_zone\":3"));
}

/* Momentum by hand: pounds over 32.174 times feet a second, in lbf s, to the printed digits. */
static void missiles_carry(void **state)
{
    (void)state;
    static const struct {
        enum gw_missile missile;
        double momentum, energy; /* lbf s, ft lb */
    } all[] = {{GW_MISSILE_A, 0.0178, 1.16},
               {GW_MISSILE_B, 3.11, 77.7},
               {GW_MISSILE_C, 5.59, 112},
               {GW_MISSILE_D, 13.99, 350},
               {GW_MISSILE_E, 22.4, 895}};
    for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
        struct gw_debris_result out = {.missile = all[i].missile};
        struct gw_engine engine = an_engine();
        gw_debris_describe(&out, &engine);
        assert_near(out.momentum / 4.4482216152605, all[i].momentum, 0.004 * all[i].momentum);
        assert_near(out.energy / 1.3558179483314004, all[i].energy, 0.004 * all[i].energy);
    }
}

static void absent_and_wrong_values(void **state)
{
    (void)state;
    struct gw_debris_case in = a_case();
    in.edition = GW_DEBRIS_UNSET;
    refused(&in, GW_MISSING, "edition");
    in = a_case();
    in.height = GW_ABSENT;
    refused(&in, GW_MISSING, "height");
    in.height = -1;
    refused(&in, GW_BAD_VALUE, "height");
    in = a_case();
    in.basic_wind_speed = INFINITY;
    refused(&in, GW_BAD_VALUE, "basic_wind_speed");
    in = a_case();
    in.risk_category = GW_RISK_UNSET;
    refused(&in, GW_MISSING, "risk_category");
    in = a_case();
    in.coast_distance = GW_ABSENT; /* 155 mph: zone 3 on either side of the mile */
    assert_int_equal(solve(&in).wind_zone, 3);
    in.basic_wind_speed = 149 * MPH;
    refused(&in, GW_MISSING, "coast_distance");
    in = a_case();
    in.hurricane_prone = GW_NO;
    in.high_velocity_zone = GW_YES;
    refused(&in, GW_BAD_VALUE, "hurricane_prone");
}

/* Cycles ---------------------------------------------------------------------------------------------------------- */

static void cycles_of_both_schedules(void **state)
{
    (void)state;
    struct gw_cycles impact, fatigue;
    struct gw_engine engine = an_engine();
    const struct gw_asd in = {1234.5}, out = {2345.6};
    assert_int_equal(gw_debris_cycles(&impact, in, out, GW_CYCLES_IMPACT, &engine), GW_OK);
    assert_int_equal(gw_debris_cycles(&fatigue, in, out, GW_CYCLES_FATIGUE, &engine), GW_OK);
    int inward = 0, outward = 0;
    for (size_t i = 0; i < impact.n; i++) {
        const struct gw_cycle_step *step = &impact.steps[i];
        *(step->direction == GW_CYCLE_INWARD ? &inward : &outward) += step->cycles;
        assert_true(step->low < step->high);
        assert_true(step->high <= (step->direction == GW_CYCLE_INWARD ? in.pa : out.pa) * (1 + 1e-12));
    }
    assert_int_equal(impact.n, 8);
    assert_int_equal(inward, 4500);
    assert_int_equal(outward, 4500);
    assert_int_equal(fatigue.total, 671);
    assert_int_equal(fatigue.n, 3);
    assert_near(fatigue.steps[2].high, 1.3 * out.pa, 1e-9);
    assert_int_equal(gw_debris_cycles_total(GW_CYCLES_IMPACT, &engine), 9000);
    assert_int_equal(gw_debris_cycles(&impact, in, (struct gw_asd){-3}, GW_CYCLES_IMPACT, &engine), GW_BAD_VALUE);
    assert_int_equal(gw_debris_cycles(&impact, in, out, GW_CYCLES_UNSET, &engine), GW_MISSING);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(zones_by_speed_and_coast), cmocka_unit_test(levels_at_thirty_feet),
        cmocka_unit_test(lowest_edge_counts),       cmocka_unit_test(speeds_of_two_levels),
        cmocka_unit_test(demand_is_monotone),       WORLD_TEST(units_do_not_matter),
        cmocka_unit_test(missiles_carry),           cmocka_unit_test(absent_and_wrong_values),
        cmocka_unit_test(cycles_of_both_schedules),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
