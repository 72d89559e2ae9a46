/* Wind-borne debris: what a rating shows. */
#include "debris_support.h"

static struct gw_impact_rating a_rating(void)
{
    return (struct gw_impact_rating){.missile = GW_MISSILE_D,
                                     .small_missile_shown = GW_UNSAID,
                                     .wind_zone = 3,
                                     .high_velocity_zone = GW_UNSAID,
                                     .positive = {2400},
                                     .negative = {3100},
                                     .width = 1.53,
                                     .height = 2.47,
                                     .bite = 0.0157,
                                     .cycles = 9000};
}

static struct gw_impact_demand a_demand(void)
{
    return (struct gw_impact_demand){.missile = GW_MISSILE_D,
                                     .wind_zone = 3,
                                     .high_velocity_zone = GW_NO,
                                     .positive = {2400},
                                     .negative = {3100},
                                     .width = 1.53,
                                     .height = 2.47,
                                     .bite = 0.0157};
}

static struct gw_impact_comparison compare(const struct gw_impact_rating *rating, const struct gw_impact_demand *demand)
{
    struct gw_impact_comparison out;
    struct gw_engine engine = an_engine();
    gw_impact_compare(&out, rating, demand, &engine);
    return out;
}

static void expect(const struct gw_impact_rating *rating, const struct gw_impact_demand *demand, enum gw_shown shown,
                   const char *part)
{
    const struct gw_impact_comparison out = compare(rating, demand);
    bool said = false;
    for (unsigned i = 0; i < out.n; i++) said = said || strstr(out.reasons[i].text, part);
    if (out.shown != shown || !said) print_error("shown %d, no reason with '%s'\n", (int)out.shown, part);
    assert_int_equal(out.shown, shown);
    assert_true(said);
}

static void rating_by_missile(void **state)
{
    (void)state;
    struct gw_impact_rating r = a_rating();
    struct gw_impact_demand d = a_demand();
    expect(&r, &d, GW_SHOWN_PROVIDED, "as tested");
    r.missile = GW_MISSILE_E;
    expect(&r, &d, GW_SHOWN_PROVIDED, "as tested");
    r.missile = GW_MISSILE_C;
    expect(&r, &d, GW_BELOW, "less than the one asked");
    r.missile = GW_MISSILE_A;
    expect(&r, &d, GW_BELOW, "less than the one asked");
    r.missile = GW_MISSILE_B;
    expect(&r, &d, GW_UNSHOWN, "skylights");
    r.missile = GW_MISSILE_UNSET;
    expect(&r, &d, GW_UNSHOWN, "names no missile");
    d.missile = GW_MISSILE_A;
    r.missile = GW_MISSILE_E;
    expect(&r, &d, GW_UNSHOWN, "does not by itself show the small one");
    r.small_missile_shown = GW_YES;
    expect(&r, &d, GW_SHOWN_PROVIDED, "stand for the small one");
    r.missile = GW_MISSILE_A;
    expect(&r, &d, GW_SHOWN_PROVIDED, "as tested");
}

static void rating_by_zone(void **state)
{
    (void)state;
    struct gw_impact_rating r = a_rating();
    struct gw_impact_demand d = a_demand();
    r.wind_zone = 2; /* level and impacts are the same up to zone 3 */
    expect(&r, &d, GW_SHOWN_PROVIDED, "lower wind zone");
    d.wind_zone = 4;
    r.wind_zone = 3;
    expect(&r, &d, GW_UNSHOWN, "struck twice");
    r.wind_zone = GW_NO_ZONE;
    expect(&r, &d, GW_UNSHOWN, "struck twice");
    r.wind_zone = 4;
    expect(&r, &d, GW_SHOWN_PROVIDED, "as tested");
    d.high_velocity_zone = GW_YES;
    expect(&r, &d, GW_UNSHOWN, "tests of its own");
    r.high_velocity_zone = GW_YES;
    expect(&r, &d, GW_SHOWN_PROVIDED, "as tested");
}

static void rating_by_pressure_size_and_bite(void **state)
{
    (void)state;
    const struct gw_impact_demand d = a_demand();
    struct gw_impact_rating r = a_rating();
    r.positive.pa = 2399.9;
    expect(&r, &d, GW_BELOW, "inward pressure cycled");
    r = a_rating();
    r.negative.pa = 3099;
    expect(&r, &d, GW_BELOW, "outward pressure cycled");
    r.negative.pa = GW_ABSENT;
    expect(&r, &d, GW_UNSHOWN, "no outward pressure");
    r = a_rating();
    r.cycles = 671;
    expect(&r, &d, GW_UNSHOWN, "fatigue schedule");
    r = a_rating();
    r.width = 2.47; /* turned: large enough only on its side */
    r.height = 1.53;
    expect(&r, &d, GW_UNSHOWN, "larger than the one tested");
    r.height = GW_ABSENT;
    expect(&r, &d, GW_UNSHOWN, "size is not given");
    r = a_rating();
    r.bite = 0.0158;
    expect(&r, &d, GW_UNSHOWN, "bite is less");
    r.bite = GW_ABSENT;
    expect(&r, &d, GW_UNSHOWN, "tested glass bite");
    r = a_rating();
    r.missile = GW_MISSILE_C; /* a failure outweighs what is not shown */
    r.bite = GW_ABSENT;
    expect(&r, &d, GW_BELOW, "less than the one asked");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rating_by_missile),
        cmocka_unit_test(rating_by_zone),
        cmocka_unit_test(rating_by_pressure_size_and_bite),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
