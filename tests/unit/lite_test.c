/* Lites of panes and cavities: both routes, loads, choosing, the inverse searches. */
#include "support.h"

#include "galeward/lite.h"

static double workspace[GW_PLATE_WORKSPACE / sizeof(double) + 1];

static void start(struct gw_engine *engine)
{
    gw_engine_init(engine, gw_tables_standard(), NULL);
    engine->workspace = workspace;
}

static struct gw_pane mono(double nominal, enum gw_treatment treatment)
{
    return (struct gw_pane){.plies = {{nominal, treatment, false}}, .n_plies = 1};
}

static struct gw_lite lite(double width, double height, struct gw_make_up make_up)
{
    return (struct gw_lite){
        .width = width, .height = height, .make_up = make_up, .temperature = GW_ABSENT, .probability = GW_ABSENT};
}

static struct gw_make_up twin(double outer, double inner, enum gw_treatment treatment)
{
    return (struct gw_make_up){
        .panes = {mono(outer, treatment), mono(inner, treatment)}, .gaps = {0.012}, .n_panes = 2};
}

static struct gw_lite_result assess(const struct gw_lite *in, double pressure, double duration)
{
    struct gw_engine engine;
    struct gw_lite_result out;
    const struct gw_lite_load load = {"load", pressure, duration};
    start(&engine);
    assert_int_equal(gw_lite_assess(&out, in, &load, &engine), GW_OK);
    return out;
}

/* At its resistance each route is used up, and its weakest pane breaks with the probability asked for. */
static void resistance_is_where_the_use_is_one(void **state)
{
    (void)state;
    const struct gw_lite units[] = {lite(1.2, 1.8, twin(0.006, 0.006, GW_ANNEALED)),
                                    lite(1.5, 1.1, twin(0.006, 0.004, GW_ANNEALED)),
                                    lite(0.9, 2.0, (struct gw_make_up){{mono(0.008, GW_ANNEALED)}, {0}, 1})};
    for (size_t i = 0; i < 3; i++) {
        struct gw_lite_result r = assess(&units[i], GW_ABSENT, GW_ABSENT);
        struct gw_lite_result at = assess(&units[i], r.principles.resistance, GW_ABSENT);
        assert_near(at.principles.utilization, 1, 1e-5);
        assert_near(at.principles.breakage, 0.008, 1e-6);
        at = assess(&units[i], r.standard.resistance, GW_ABSENT);
        assert_near(at.standard.utilization, 1, 1e-9);
    }
}

/* A wide, thin cavity hardly couples the panes of a large lite less than the cubes do; the net loads add up. */
static void net_loads_add_up(void **state)
{
    (void)state;
    struct gw_lite in = lite(
        1.2, 1.6,
        (struct gw_make_up){.panes = {mono(0.006, GW_ANNEALED), mono(0.004, GW_ANNEALED), mono(0.008, GW_ANNEALED)},
                            .gaps = {0.012, 0.016},
                            .n_panes = 3});
    struct gw_lite_result r = assess(&in, 1500, GW_ABSENT);
    double sum = 0;
    for (int i = 0; i < 3; i++) sum += r.panes[i].principles.net;
    assert_near(sum, 1500, 1e-4);
    assert_false(r.standard.covered == false && r.principles.covered == false);
}

/* Suction mirrors pressure where the unit is symmetric and no climatic load acts. */
static void suction_mirrors_pressure(void **state)
{
    (void)state;
    struct gw_lite in = lite(1.2, 1.8, twin(0.006, 0.006, GW_TEMPERED));
    struct gw_lite_result push = assess(&in, 2000, GW_ABSENT), pull = assess(&in, -2000, GW_ABSENT);
    assert_near(push.standard.resistance, pull.standard.resistance, 1e-9);
    /* The gas is stiffer pressed than stretched: by about half the pressure over the atmosphere's. */
    assert_near(push.principles.resistance / pull.principles.resistance, 1, 0.02);
    assert_true(pull.panes[0].principles.net < 0);
    assert_true(pull.panes[0].principles.deflection < 0);
}

/* Sealed high up and cold at sea level: both panes are pressed together before any wind. */
static void climate_takes_part_of_the_resistance(void **state)
{
    (void)state;
    struct gw_lite in = lite(0.5, 0.8, twin(0.004, 0.004, GW_ANNEALED));
    struct gw_lite_result free = assess(&in, 1000, GW_ABSENT);
    in.climate = true;
    in.sealing = (struct gw_air){84000, 303.15};
    in.service = (struct gw_air){103000, 263.15};
    struct gw_lite_result cold = assess(&in, 1000, GW_ABSENT);
    assert_true(cold.principles.resistance < 0.9 * free.principles.resistance);
    assert_near(cold.standard.resistance, free.standard.resistance, 1e-9);
    assert_true(cold.panes[0].principles.net > free.panes[0].principles.net);
    assert_true(cold.panes[1].principles.net < 0);
}

static void more_load_more_probability(void **state)
{
    (void)state;
    struct gw_lite in = lite(1.2, 1.8, twin(0.006, 0.006, GW_HEAT_STRENGTHENED));
    double before = 0, first = 0;
    for (double p = 500; p < 6000; p *= 1.3) {
        struct gw_lite_result r = assess(&in, p, GW_ABSENT);
        assert_true(r.principles.breakage > before);
        assert_true(r.standard.breakage > first);
        before = r.principles.breakage;
        first = r.standard.breakage;
    }
}

/* Stiffer interlayers bring the plies together: between layered and one thickness. */
static void interlayers_lie_between_the_limits(void **state)
{
    (void)state;
    struct gw_lite in = lite(1.2, 1.8, (struct gw_make_up){.n_panes = 1});
    struct gw_pane *pane = &in.make_up.panes[0];
    *pane = (struct gw_pane){.plies = {{0.006, GW_ANNEALED, false}, {0.006, GW_ANNEALED, false}}, .n_plies = 2};
    double before = 0;
    const double moduli[] = {1e3, 1e5, 1e6, 1e7, 1e9};
    for (size_t i = 0; i < 5; i++) {
        pane->bonds[0] = (struct gw_bond){0.00152, GW_INTERLAYER_OTHER, moduli[i]};
        struct gw_lite_result r = assess(&in, 1000, GW_ABSENT);
        double h = r.panes[0].principles.deflection_thickness;
        assert_true(h > before && h > 0.0070 && h < 2 * 0.00556 + 0.00152);
        before = h;
    }
}

static struct gw_lite_demand demand_of(double pressure, double limit)
{
    return (struct gw_lite_demand){.loads = {{"inward", pressure, GW_ABSENT}, {"outward", -pressure, GW_ABSENT}},
                                   .n = 2,
                                   .deflection_limit = limit};
}

/* The choice agrees with trying every make-up in turn. */
static void lightest_is_the_lightest_that_passes(void **state)
{
    (void)state;
    const double nominal[] = {0.004, 0.012, 0.005, 0.010, 0.006, 0.008};
    struct gw_make_up list[6];
    struct gw_engine engine;
    struct gw_lite_choices found;
    struct gw_lite like = lite(1.3, 1.9, (struct gw_make_up){.n_panes = 0});
    const struct gw_lite_demand demand = demand_of(3000, 0.015);
    start(&engine);
    for (size_t i = 0; i < 6; i++) list[i] = twin(nominal[i], nominal[i], GW_HEAT_STRENGTHENED);
    assert_int_equal(gw_lite_lightest(&found, &like, list, 6, &demand, &engine), GW_OK);
    assert_int_equal(found.n, 3);
    assert_int_equal(found.tried, 6);
    for (int i = 0; i < found.n; i++) {
        assert_true(found.items[i].use <= 1);
        if (i) assert_true(found.items[i].weight > found.items[i - 1].weight);
    }
    for (int i = 0; i < 6; i++) {
        struct gw_lite_verdict v;
        like.make_up = list[i];
        assert_int_equal(gw_lite_check(&v, &like, &demand, &engine), GW_OK);
        bool lighter = gw_make_up_weight(&list[i], &engine) < found.items[0].weight * (1 - 1e-9);
        if (lighter) assert_false(v.passes);
    }
    assert_true(found.failed >= 1); /* the thinnest at least */
}

static void greatest_width_is_where_it_stops_passing(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_lite_verdict v;
    struct gw_lite in = lite(1, 1.8, twin(0.006, 0.006, GW_ANNEALED));
    const struct gw_lite_demand demand = demand_of(2500, GW_ABSENT);
    double width;
    start(&engine);
    assert_int_equal(gw_lite_greatest_width(&width, &in, &demand, &engine), GW_OK);
    assert_true(width > 0.5 && width < 4);
    in.width = width * 0.999;
    assert_int_equal(gw_lite_check(&v, &in, &demand, &engine), GW_OK);
    assert_true(v.passes);
    in.width = width * 1.001;
    assert_int_equal(gw_lite_check(&v, &in, &demand, &engine), GW_OK);
    assert_false(v.passes);
}

static void a_hopeless_load_has_no_width(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_lite in = lite(1, 3, twin(0.003, 0.003, GW_ANNEALED));
    const struct gw_lite_demand demand = demand_of(14000, 0.001);
    double width = 1;
    start(&engine);
    assert_int_equal(gw_lite_greatest_width(&width, &in, &demand, &engine), GW_OK);
    assert_near(width, 0, 1e-12);
}

/* Mixed treatments of a triple unit have no factor in the standard; the cavities still answer. */
static void unlike_triples_rest_on_first_principles(void **state)
{
    (void)state;
    struct gw_lite in = lite(
        1, 1.5,
        (struct gw_make_up){.panes = {mono(0.006, GW_TEMPERED), mono(0.004, GW_ANNEALED), mono(0.006, GW_TEMPERED)},
                            .gaps = {0.012, 0.012},
                            .n_panes = 3});
    struct gw_lite_result r = assess(&in, 1000, GW_ABSENT);
    assert_false(r.standard.covered);
    assert_true(r.principles.covered);
    assert_int_equal(r.governing, GW_ROUTE_PRINCIPLES);
    assert_true(strlen(told(&r.standard.why_not)) > 20);
}

/* With no pressure on it, a lite is governed as one whose pressure is not said. */
static void nothing_acts(void **state)
{
    (void)state;
    struct gw_lite units[] = {lite(1.2, 1.5, (struct gw_make_up){{mono(0.006, GW_ANNEALED)}, {0}, 1}),
                              lite(0.15, 0.15, twin(0.006, 0.006, GW_TEMPERED)),
                              lite(1.2, 1.8, twin(0.006, 0.005, GW_ANNEALED))};
    for (size_t i = 0; i < 3; i++) {
        struct gw_lite_result unsaid = assess(&units[i], GW_ABSENT, GW_ABSENT);
        units[i].use_only = true;
        struct gw_lite_result none = assess(&units[i], 0, GW_ABSENT);
        assert_int_equal(none.governing, unsaid.governing);
        assert_string_equal(none.why, unsaid.why);
        assert_near(none.resistance / unsaid.resistance, 1, 1e-6);
        assert_near(none.utilization, 0, 1e-12);
    }
    assert_non_null(strstr(assess(&units[0], 0, GW_ABSENT).why, "agree"));
    assert_non_null(strstr(assess(&units[1], 0, GW_ABSENT).why, "cavity"));
}

static struct gw_lite in_climate(struct gw_lite in, double sealed_at, double sealed, double at, double now)
{
    in.climate = true;
    in.sealing = (struct gw_air){sealed_at, sealed};
    in.service = (struct gw_air){at, now};
    return in;
}

/* The climate decides at a small pressure, the factors at a large one: the greatest pressure passes by both. */
static void the_greatest_pressure_passes(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_make_up unit = twin(0.006, 0.004, GW_HEAT_STRENGTHENED);
    unit.panes[0] = mono(0.006, GW_ANNEALED);
    unit.gaps[0] = 0.016;
    const struct gw_lite in = in_climate(lite(0.6, 0.9, unit), 83500, 293.15, 101200, 253.15);
    const double signs[] = {1, -1};
    start(&engine);
    for (size_t i = 0; i < 2; i++) {
        const struct gw_lite_load load = {"wind", signs[i] * 1200, GW_ABSENT};
        struct gw_lite_demand demand = {.loads = {load}, .n = 1, .deflection_limit = GW_ABSENT};
        struct gw_lite_verdict v;
        double greatest;
        assert_int_equal(gw_lite_greatest_pressure(&greatest, &in, &load, GW_ABSENT, &engine), GW_OK);
        demand.loads[0].pressure = signs[i] * greatest * 0.999;
        assert_int_equal(gw_lite_check(&v, &in, &demand, &engine), GW_OK);
        assert_true(v.passes);
        demand.loads[0].pressure = signs[i] * greatest * 1.001;
        assert_int_equal(gw_lite_check(&v, &in, &demand, &engine), GW_OK);
        assert_false(v.passes);
    }
    assert_int_equal(assess(&in, -1200, GW_ABSENT).governing, GW_ROUTE_PRINCIPLES);
}

/* In the cold the thin outer pane is drawn in beyond the limit; suction would relieve it. */
static void the_climate_alone_may_bend_too_far(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_make_up unit = twin(0.003, 0.010, GW_TEMPERED);
    unit.gaps[0] = 0.02;
    const struct gw_lite in = in_climate(lite(1.2, 1.4, unit), 95000, 303.15, 103000, 253.15);
    const struct gw_lite_load suction = {"wind", -2000, GW_ABSENT};
    const double limit = 0.9 * assess(&in, 0, GW_ABSENT).deflection;
    double greatest = 1;
    assert_true(assess(&in, -1000, GW_ABSENT).deflection < limit);
    start(&engine);
    assert_int_equal(gw_lite_greatest_pressure(&greatest, &in, &suction, limit, &engine), GW_OK);
    assert_near(greatest, 0, 1e-12);
}

/* Narrow units are stiff: the climate breaks them where wider ones pass. */
static void narrow_units_are_not_always_the_strong_ones(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_lite_verdict v;
    struct gw_make_up unit = twin(0.004, 0.004, GW_ANNEALED);
    unit.gaps[0] = 0.02;
    struct gw_lite in = in_climate(lite(0.35, 1.2, unit), 101325, 293.15, 74700, 313.15);
    const struct gw_lite_demand demand = demand_of(1000, GW_ABSENT);
    double width;
    start(&engine);
    assert_int_equal(gw_lite_check(&v, &in, &demand, &engine), GW_OK);
    assert_false(v.passes);
    assert_int_equal(gw_lite_greatest_width(&width, &in, &demand, &engine), GW_OK);
    assert_true(width > 0.5);
    in.width = width * 0.999;
    assert_int_equal(gw_lite_check(&v, &in, &demand, &engine), GW_OK);
    assert_true(v.passes);
    in.width = width * 1.001;
    assert_int_equal(gw_lite_check(&v, &in, &demand, &engine), GW_OK);
    assert_false(v.passes);
}

/* A lite that spans its width: the linear beam ends before the strength does, and the width with it. */
static void the_method_bounds_the_width(void **state)
{
    (void)state;
    struct gw_engine engine;
    struct gw_lite in = lite(1, 1.2, (struct gw_make_up){{mono(0.006, GW_TEMPERED)}, {0}, 1});
    const struct gw_lite_demand demand = demand_of(1000, GW_ABSENT);
    double width;
    in.edges = 2;
    in.span = GW_SPAN_WIDTH;
    in.finish = GW_SEAMED;
    start(&engine);
    assert_int_equal(gw_lite_greatest_width(&width, &in, &demand, &engine), GW_OK);
    /* 5 q L^4/(32 E t^3) = L/20 */
    assert_near(width, cbrt(32 * 71.7e9 * pow(0.00556, 3) / (5 * 1000 * 20.0)), 1e-3);
}

/* Of the ply that governs, and of what makes it govern. */
static void reasons(void **state)
{
    (void)state;
    struct gw_lite in = lite(1.35, 1.2, twin(0.004, 0.004, GW_ANNEALED));
    assert_non_null(strstr(assess(&in, 200, 720 * 3600.0).why, "over 30 days"));
    in = in_climate(lite(1.35, 1.2, (struct gw_make_up){{mono(0.004, GW_ANNEALED)}, {0}, 1}), 95000, 303, 103000, 253);
    assert_non_null(strstr(assess(&in, 200, GW_ABSENT).why, "agree"));
    in.make_up.panes[0] = (struct gw_pane){.plies = {{0.006, GW_ANNEALED, false}, {0.006, GW_ANNEALED, false}},
                                           .bonds = {{0.00152, GW_INTERLAYER_PVB, GW_ABSENT}},
                                           .n_plies = 2};
    assert_non_null(strstr(assess(&in, 200, GW_ABSENT).why, "interlayer"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(resistance_is_where_the_use_is_one),
        cmocka_unit_test(net_loads_add_up),
        cmocka_unit_test(suction_mirrors_pressure),
        cmocka_unit_test(climate_takes_part_of_the_resistance),
        cmocka_unit_test(more_load_more_probability),
        cmocka_unit_test(interlayers_lie_between_the_limits),
        cmocka_unit_test(lightest_is_the_lightest_that_passes),
        cmocka_unit_test(greatest_width_is_where_it_stops_passing),
        cmocka_unit_test(a_hopeless_load_has_no_width),
        cmocka_unit_test(unlike_triples_rest_on_first_principles),
        cmocka_unit_test(nothing_acts),
        cmocka_unit_test(the_greatest_pressure_passes),
        cmocka_unit_test(the_climate_alone_may_bend_too_far),
        cmocka_unit_test(narrow_units_are_not_always_the_strong_ones),
        cmocka_unit_test(the_method_bounds_the_width),
        cmocka_unit_test(reasons),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
