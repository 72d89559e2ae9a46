/* Wind-borne debris: limits of the region and of its height, from both sides. */
#include "debris_support.h"

static bool has_note(const struct gw_debris_result *out, const char *part)
{
    for (unsigned i = 0; i < out->n_notes; i++)
        if (strstr(out->notes[i], part)) return true;
    return false;
}

/* Region ---------------------------------------------------------------------------------------------------------- */

static bool in_region(enum gw_debris_edition edition, double mph, double miles, enum gw_bool exposure_d)
{
    struct gw_debris_case in = a_case();
    in.edition = edition;
    in.basic_wind_speed = mph * MPH;
    in.coast_distance = miles * MI;
    in.exposure_d_at_shore = exposure_d;
    return solve(&in).region == GW_YES;
}

/* Limits written out here, not read from the table: 110 and 120 nominal, 130 and 140 strength level. */
static void limits_of_the_region(void **state)
{
    (void)state;
    static const struct {
        enum gw_debris_edition edition;
        double shore, anywhere;
        bool exposure;
    } editions[] = {{GW_DEBRIS_ASCE7_05, 110, 120, false},
                    {GW_DEBRIS_ASCE7_10, 130, 140, false},
                    {GW_DEBRIS_ASCE7_16, 130, 140, false},
                    {GW_DEBRIS_ASCE7_22, 130, 140, true}};
    const double hair = 1e-6;
    for (size_t i = 0; i < sizeof editions / sizeof *editions; i++) {
        const enum gw_debris_edition e = editions[i].edition;
        const double shore = editions[i].shore, anywhere = editions[i].anywhere;
        assert_true(in_region(e, shore, 1, GW_YES));
        assert_false(in_region(e, shore - hair, 1, GW_YES));
        assert_false(in_region(e, shore, 1 + hair, GW_YES));
        assert_false(in_region(e, anywhere - hair, 1 + hair, GW_YES));
        assert_true(in_region(e, anywhere, 400, GW_YES));
        assert_true(in_region(e, anywhere, 400, GW_NO));
        assert_int_equal(in_region(e, shore, 1, GW_NO), !editions[i].exposure);
        assert_true(in_region(e, shore, 1, GW_UNSAID));
    }
}

static void what_is_not_said_protects(void **state)
{
    (void)state;
    struct gw_debris_case in = a_case();
    in.hurricane_prone = GW_UNSAID;
    struct gw_debris_result out = solve(&in);
    assert_int_equal(out.required, GW_YES);
    assert_true(has_note(&out, "hurricane_prone is not given"));
    in.edition = GW_DEBRIS_ASCE7_22;
    in.basic_wind_speed = 133 * MPH;
    out = solve(&in);
    assert_int_equal(out.required, GW_YES);
    assert_true(has_note(&out, "exposure_d_at_shore is not given"));
    in.basic_wind_speed = 143 * MPH; /* counts anywhere: the shore's exposure does not matter */
    out = solve(&in);
    assert_false(has_note(&out, "exposure_d"));
    in.basic_wind_speed = 95 * MPH; /* no region anywhere: nothing was assumed */
    out = solve(&in);
    assert_int_equal(out.required, GW_NO);
    assert_int_equal(out.n_notes, 0);
}

/* Maps in m/s are rounded: 58 m/s stands for 130 mph, 58.1 m/s, and is taken so; what is within the rounding is
 * doubted. */
static void metric_maps_are_doubted(void **state)
{
    (void)state;
    struct gw_debris_case in = a_case();
    in.basic_wind_speed = 58;
    struct gw_debris_result out = solve(&in);
    assert_int_equal(out.region, GW_YES);
    assert_true(has_note(&out, "taken as that limit"));
    assert_near(out.limit, 130 * MPH, 1e-9);
    in.basic_wind_speed = 57.8;
    out = solve(&in);
    assert_int_equal(out.region, GW_NO);
    assert_true(has_note(&out, "metric maps are rounded"));
    assert_near(out.limit, 130 * MPH, 1e-9);
    in.basic_wind_speed = 130 * MPH;
    out = solve(&in);
    assert_int_equal(out.region, GW_YES);
    assert_false(has_note(&out, "metric maps are rounded"));
    assert_false(has_note(&out, "taken as that limit"));
    in.basic_wind_speed = 67; /* 150 mph printed, 67.06 m/s */
    in.coast_distance = 5 * MI;
    out = solve(&in);
    assert_int_equal(out.wind_zone, 3);
    assert_true(has_note(&out, "taken as that limit"));
    in.basic_wind_speed = 66.9;
    out = solve(&in);
    assert_int_equal(out.wind_zone, 2);
    assert_true(has_note(&out, "metric maps are rounded"));
}

/* An ordinary Category III building takes its region from the Category II map. */
static void category_iii_has_two_maps(void **state)
{
    (void)state;
    struct gw_debris_case in = a_case();
    in.risk_category = GW_RISK_III;
    in.basic_wind_speed = 138 * MPH;
    struct gw_debris_result out = solve(&in);
    assert_int_equal(out.region, GW_YES);
    assert_true(has_note(&out, "Category II map"));
    in.region_wind_speed = 129 * MPH;
    out = solve(&in);
    assert_int_equal(out.region, GW_NO);
    in.region_wind_speed = 131 * MPH;
    in.basic_wind_speed = 141 * MPH;
    out = solve(&in);
    assert_int_equal(out.region, GW_YES);
    assert_int_equal(out.wind_zone, 3); /* 131 mph would be zone 1 */
    assert_true(has_note(&out, "the wind zone goes by basic_wind_speed"));
    in.health_care = GW_YES;
    refused(&in, GW_BAD_VALUE, "region_wind_speed");
    in.health_care = GW_UNSAID;
    in.edition = GW_DEBRIS_ASCE7_05; /* one map for all */
    refused(&in, GW_BAD_VALUE, "region_wind_speed");
}

static void maps_by_category(void **state)
{
    (void)state;
    static const char *const figures[][4] = {{"ASCE 7-10 Figure 26.5-1A", "ASCE 7-10 Figure 26.5-1A",
                                              "ASCE 7-10 Figure 26.5-1B", "ASCE 7-10 Figure 26.5-1B"},
                                             {"ASCE 7-16 Figure 26.5-1B", "ASCE 7-16 Figure 26.5-1B",
                                              "ASCE 7-16 Figure 26.5-1C", "ASCE 7-16 Figure 26.5-1D"},
                                             {"ASCE 7-22 Figure 26.5-1B", "ASCE 7-22 Figure 26.5-1B",
                                              "ASCE 7-22 Figure 26.5-1C", "ASCE 7-22 Figure 26.5-1D"}};
    for (int e = 0; e < 3; e++)
        for (int k = 0; k < 4; k++) {
            struct gw_engine engine = an_engine();
            const enum gw_risk risk = k == 0 ? GW_RISK_II : k == 3 ? GW_RISK_IV : GW_RISK_III;
            bool borrowed;
            const char *figure =
                gw_debris_map((enum gw_debris_edition)(GW_DEBRIS_ASCE7_10 + e), risk, k == 2, &borrowed, &engine);
            assert_string_equal(figure, figures[e][k]);
            assert_int_equal(borrowed, k == 1);
        }
}

/* Relief ---------------------------------------------------------------------------------------------------------- */

static bool asked(double height, double gravel)
{
    struct gw_debris_case in = a_case();
    in.height = height * FT;
    in.aggregate_roof_height = gravel < 0 ? GW_ABSENT : gravel * FT;
    return solve(&in).required == GW_YES;
}

/* More than 60 ft above ground and more than 30 ft above gravel: both, and more. */
static void relief_takes_both(void **state)
{
    (void)state;
    const double hair = 1e-5;
    assert_true(asked(60, -1));
    assert_false(asked(60 + hair, -1));
    assert_true(asked(60 + hair, 30 + 2 * hair)); /* above 60, not above the gravel by 30 */
    assert_false(asked(60 + hair, 30));
    assert_true(asked(59, 10)); /* far above the gravel, not above 60 */
    assert_true(asked(130, 100));
    assert_false(asked(130 + hair, 100));
}

/* Category I and height relieve; not in the high-velocity zone. */
static void high_velocity_zone_has_no_relief(void **state)
{
    (void)state;
    for (int risk = GW_RISK_I; risk <= GW_RISK_IV; risk++)
        for (double height = 3; height < 700; height *= 1.7) {
            struct gw_debris_case in = a_case();
            in.risk_category = (enum gw_risk)risk;
            in.height = height * FT;
            in.basic_wind_speed = 90 * MPH; /* no trigger by speed */
            in.coast_distance = 30 * MI;
            in.high_velocity_zone = GW_YES;
            const struct gw_debris_result out = solve(&in);
            assert_int_equal(out.required, GW_YES);
            assert_int_equal(out.missile, height <= 30 ? GW_MISSILE_D : GW_MISSILE_A);
            assert_int_equal(out.impacts, height <= 30 ? 2 : GW_NO_ZONE);
            assert_int_equal(out.wind_zone, GW_NO_ZONE);
            assert_int_equal(has_note(&out, "2023 Florida"), risk == GW_RISK_IV);
            in.high_velocity_zone = GW_NO;
            assert_int_equal(solve(&in).required, GW_NO);
        }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(limits_of_the_region),
        cmocka_unit_test(what_is_not_said_protects),
        cmocka_unit_test(metric_maps_are_doubted),
        cmocka_unit_test(category_iii_has_two_maps),
        cmocka_unit_test(maps_by_category),
        cmocka_unit_test(relief_takes_both),
        cmocka_unit_test(high_velocity_zone_has_no_relief),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
