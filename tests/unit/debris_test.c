/* Wind-borne debris: limits of region, zone and height from both sides; what a rating shows. */
#include "support.h"

static const double MI = 1609.344;

static struct gw_engine an_engine(void)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    return engine;
}

/* A site in the middle of everything: region, zone 3, basic, low. */
static struct gw_debris_case a_case(void)
{
    struct gw_debris_case in;
    gw_record_clear(gw_calc_find("debris")->input, &in);
    in.edition = GW_DEBRIS_ASCE7_16;
    in.basic_wind_speed = 155 * MPH;
    in.coast_distance = 0.4 * MI;
    in.risk_category = GW_RISK_II;
    in.height = 17 * FT;
    in.hurricane_prone = GW_YES;
    return in;
}

static struct gw_debris_result solve(const struct gw_debris_case *in)
{
    struct gw_debris_result out;
    struct gw_engine engine = an_engine();
    enum gw_status status = gw_debris(&out, in, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

static void refused(const struct gw_debris_case *in, enum gw_status status, const char *key)
{
    struct gw_debris_result out;
    struct gw_engine engine = an_engine();
    assert_int_equal(gw_debris(&out, in, &engine), status);
    assert_string_equal(engine.fault.key, key);
    assert_non_null(engine.fault.format);
}

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

/* Maps in m/s are rounded: 58 m/s stands for 130 mph and is less. */
static void metric_maps_are_doubted(void **state)
{
    (void)state;
    struct gw_debris_case in = a_case();
    in.basic_wind_speed = 58;
    struct gw_debris_result out = solve(&in);
    assert_int_equal(out.region, GW_NO);
    assert_true(has_note(&out, "metric maps are rounded"));
    in.basic_wind_speed = 130 * MPH;
    out = solve(&in);
    assert_int_equal(out.region, GW_YES);
    assert_false(has_note(&out, "metric maps are rounded"));
    in.basic_wind_speed = 67; /* 150 mph printed */
    in.coast_distance = 5 * MI;
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

/* Ratings --------------------------------------------------------------------------------------------------------- */

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
        cmocka_unit_test(limits_of_the_region),
        cmocka_unit_test(what_is_not_said_protects),
        cmocka_unit_test(metric_maps_are_doubted),
        cmocka_unit_test(category_iii_has_two_maps),
        cmocka_unit_test(maps_by_category),
        cmocka_unit_test(relief_takes_both),
        cmocka_unit_test(high_velocity_zone_has_no_relief),
        cmocka_unit_test(zones_by_speed_and_coast),
        cmocka_unit_test(levels_at_thirty_feet),
        cmocka_unit_test(lowest_edge_counts),
        cmocka_unit_test(speeds_of_two_levels),
        cmocka_unit_test(demand_is_monotone),
        WORLD_TEST(units_do_not_matter),
        cmocka_unit_test(missiles_carry),
        cmocka_unit_test(absent_and_wrong_values),
        cmocka_unit_test(cycles_of_both_schedules),
        cmocka_unit_test(rating_by_missile),
        cmocka_unit_test(rating_by_zone),
        cmocka_unit_test(rating_by_pressure_size_and_bite),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
