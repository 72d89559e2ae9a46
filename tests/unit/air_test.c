/* Cavities that are to be equalized, and leakage. */
#include "weather_support.h"

/* Cavities -------------------------------------------------------------------------------------------------------- */

static struct gw_equalization_result share_of(double ratio, double exponent, double target)
{
    struct gw_equalization_result out;
    struct gw_engine engine = an_engine();
    const struct gw_equalization_case in = {ratio, exponent, GW_ABSENT, target};
    assert_int_equal(gw_equalization(&out, &in, &engine), GW_OK);
    return out;
}

static void screens_and_ratios(void **state)
{
    (void)state;
    static const double ratio[] = {1, 2, 3, 5, 7, 10, 25, 40};
    static const double percent[] = {50, 20, 10, 3.8, 2.0, 0.99, 0.16, 0.06};
    static const double digit[] = {0.5, 0.5, 0.5, 0.05, 0.05, 0.005, 0.005, 0.005};
    for (int i = 0; i < 8; i++)
        assert_near(100 * share_of(ratio[i], GW_ABSENT, GW_ABSENT).cladding_share, percent[i], digit[i]);
    draw_from(71);
    for (int i = 0; i < 2000; i++) {
        const double r = exp(draw(-2, 4)), n = draw(0.5, 1);
        const struct gw_equalization_result out = share_of(r, n, GW_ABSENT);
        assert_near(out.cladding_share + out.cavity_share, 1, 1e-15);
        assert_true(share_of(r * 1.01, n, GW_ABSENT).cladding_share < out.cladding_share);
        assert_near(share_of(r, n, out.cladding_share).vent_to_leak_needed, r, 1e-9 * r);
        /* The same flow through both: vents at the outer part, leaks at the inner one. */
        assert_near(r * pow(out.cladding_share, n), pow(out.cavity_share, n), 1e-9 * pow(out.cavity_share, n));
    }
}

static void equalization_refusals(void **state)
{
    (void)state;
    struct gw_equalization_result out;
    struct gw_engine engine = an_engine();
    struct gw_equalization_case in = {3, 1.01, GW_ABSENT, GW_ABSENT};
    assert_int_equal(gw_equalization(&out, &in, &engine), GW_OUTSIDE_METHOD);
    in = (struct gw_equalization_case){0, GW_ABSENT, GW_ABSENT, GW_ABSENT};
    assert_int_equal(gw_equalization(&out, &in, &engine), GW_BAD_VALUE);
    in = (struct gw_equalization_case){3, GW_ABSENT, GW_ABSENT, 1};
    assert_int_equal(gw_equalization(&out, &in, &engine), GW_BAD_VALUE);
}

/* Air ------------------------------------------------------------------------------------------------------------- */

static enum gw_air_evidence air(double tested, double at, double limit, double limit_at)
{
    struct gw_engine engine = an_engine();
    const struct gw_air_claim claim = {tested, at, limit, limit_at};
    return gw_air_shows(NULL, &claim, &engine);
}

static void air_shows_one_way(void **state)
{
    (void)state;
    assert_int_equal(air(0.06, 300, 0.06, 75), GW_AIR_SHOWS);
    assert_int_equal(air(0.06, 75, 0.06, 300), GW_AIR_TOO_SOFT);
    assert_int_equal(air(0.07, 75, 0.06, 300), GW_AIR_SHOWS); /* fails for certain */
    assert_int_equal(air(0.07, 300, 0.06, 75), GW_AIR_TOO_HARD);
    assert_int_equal(air(0.06, 300, 0.06, 6.24 * PSF), GW_AIR_SHOWS); /* the same test in two units */
    assert_int_equal(air(0.06, 6.24 * PSF, 0.06, 300), GW_AIR_SHOWS);
    assert_int_equal(air(0.07, 300, 0.06, 6.24 * PSF), GW_AIR_SHOWS);
    assert_int_equal(air(0.06, 290, 0.06, 300), GW_AIR_TOO_SOFT);
    struct gw_engine engine = an_engine();
    double estimate;
    const struct gw_air_claim claim = {0.06, 75, 0.06, 300};
    gw_air_shows(&estimate, &claim, &engine);
    assert_near(estimate, 0.148, 0.0005);
    assert_near(gw_air_convert(0.06, 75, 300, 0.5, &engine), 0.12, 1e-12);
    assert_near(gw_air_convert(gw_air_convert(0.3, 75, 300, 0.8, &engine), 300, 75, 0.8, &engine), 0.3, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(screens_and_ratios),
        cmocka_unit_test(equalization_refusals),
        cmocka_unit_test(air_shows_one_way),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
