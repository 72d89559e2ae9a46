/* What the reference cases of members and screws do not reach: what is not known stays unknown, also in 'check'. */
#include "galeward/member_strength.h"
#include "galeward/share.h"
#include "support.h"

static const double KSI = 6894757.293168, INCH4 = 4.162314256e-7;

/* A part whose strength is not known leaves the whole unknown; the other one does not stand in for it. */
static void an_unknown_part_is_not_left_out(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_share_limit limit;
    struct gw_share_strength parts[] = {{10100 * KSI, 8 * INCH4, GW_ABSENT}, {29000 * KSI, 2.5 * INCH4, 3000}};
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    assert_int_equal(gw_share_allowable(&limit, parts, 2, &engine), GW_OK);
    assert_false(gw_given(limit.moment));
    assert_near(limit.equivalent_inertia, (8 + 29.0 / 10.1 * 2.5) * INCH4, 1e-15);
    parts[0].allowable = 1e9;
    assert_int_equal(gw_share_allowable(&limit, parts, 2, &engine), GW_OK);
    assert_int_equal(limit.governs, 1);
    parts[1].inertia = 0;
    assert_int_equal(gw_share_allowable(&limit, parts, 2, &engine), GW_BAD_VALUE);
}

/* Stated properties say nothing of the other axis, of shear, of the twist of steel. */
static void stated_properties_say_no_more(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_member_strength m;
    struct gw_member_section in = {.metal = GW_METAL_A36,
                                   .unbraced_length = GW_ABSENT,
                                   .allowable_moment = 4000,
                                   .inertia_x = 8 * INCH4,
                                   .inertia_y = GW_ABSENT,
                                   .torsion = GW_ABSENT};
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    assert_int_equal(gw_member_strength(&m, &in, &engine), GW_OK);
    assert_near(m.stiffness, 29000 * KSI * 8 * INCH4, 1e-3);
    assert_false(gw_given(m.moment_y) || gw_given(m.shear) || gw_given(m.shear_y) || gw_given(m.shear_modulus));
    in.metal = GW_METAL_UNSET;
    assert_int_equal(gw_member_strength(&m, &in, &engine), GW_MISSING);
}

/* In 'check' --------------------------------------------------------------------------------------------------------
 */

#define WALL                                                                                                           \
    "galeward: 1\nproject: {name: Known}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                               \
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"                                                                 \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "lites: {a: {layers: [{glass: 6 mm, treatment: tempered}]}}\ncandidates: [x.yaml]\n"                               \
    "walls: [{name: s, columns: {count: 4, width: 5 ft}, width: 20 ft, floors: [0 ft], top: 12 ft, ends: [none, "      \
    "none], rows: [{height: rest, lite: a}], screws: {spacing: 9 in}}]\n"

static const struct gw_finding *judged(struct world *w, const char *check, enum gw_kind kind, const char *system)
{
    put_file(w, "x.yaml",
             gw_format(&w->arena, "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n%s\n", system));
    must_judge(w, WALL);
    for (size_t i = 0; i < w->takeoff.elements.n; i++)
        if (w->takeoff.elements.items[i].kind == kind) return finding(w, check, w->takeoff.elements.items[i].id);
    fail();
    return NULL;
}

#define SCREW(size)                                                                                                    \
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 0.25 in}\n"                                           \
    "screw: {diameter: " size ", threads_per_inch: 11, thread: spaced, hold: chase, ultimate: 100 ksi, "               \
    "head_diameter: 1/2 in, tested_pullout: 2000 lb}\n"

/* Plate and thread are strong enough; of the screw itself nothing is known without its minor diameter. */
static void a_screw_of_no_known_size_shows_nothing(void **state)
{
    struct world *w = *state;
    const struct gw_finding *f = judged(w, "screw", GW_SCREW, SCREW("0.3 in"));
    assert_int_equal(f->verdict, GW_NOT_SHOWN);
    assert_non_null(strstr(words(&f->message), "tension of the screw"));
}

/* The same member of two metals: deflections go with 29000 and 28000 ksi. */
static void stainless_steel_bends_by_its_own_modulus(void **state)
{
    struct world *w = *state;
#define STATED(alloy) "mullion: {alloy: " alloy ", inertia_x: 8 in4, allowable_moment: 90000 in-lb}\n"
    const double carbon = judged(w, "mullion_deflection", GW_MULLION, STATED("A36"))->provided;
    const double stainless = judged(w, "mullion_deflection", GW_MULLION, STATED("\"304\""))->provided;
    assert_near(stainless / carbon, 29.0 / 28, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_unknown_part_is_not_left_out),
        cmocka_unit_test(stated_properties_say_no_more),
        WORLD_TEST(a_screw_of_no_known_size_shows_nothing),
        WORLD_TEST(stainless_steel_bends_by_its_own_modulus),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
