/* Movement of joints: the three sums, thermal movement, slots, and the mistakes that are easily made. */
#include "support.h"

static const double IN = 0.0254;
#define COUNT(array) (sizeof(array) / sizeof *(array))

static struct gw_engine engine_new(void)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    return engine;
}

static struct gw_movement_result sum_of(const struct gw_movement_item *items, size_t n, double least_gap)
{
    struct gw_engine engine = engine_new();
    struct gw_movement_result out;
    assert_int_equal(gw_movement_sum(&out, items, n, least_gap, 0.01, &engine), GW_OK);
    return out;
}

static bool noted(const char *const *notes, unsigned n, const char *part)
{
    for (unsigned i = 0; i < n; i++)
        if (strstr(notes[i], part)) return true;
    return false;
}

/* A repeatable spread of numbers from 0 up to 1. */
static double spread(unsigned *state)
{
    *state = *state * 1664525u + 1013904223u;
    return (*state >> 8) / (double)(1u << 24);
}

static void three_sums_in_order(void **state)
{
    (void)state;
    unsigned seed = 7;
    for (int round = 0; round < 200; round++) {
        struct gw_movement_item items[7], turned[7];
        for (size_t i = 0; i < COUNT(items); i++) {
            items[i] =
                (struct gw_movement_item){NULL, 0.02 * spread(&seed), (enum gw_direction)(1 + (int)(3 * spread(&seed))),
                                          spread(&seed) < 0.5 ? GW_MOVEMENT : GW_TOLERANCE};
            turned[COUNT(items) - 1 - i] = items[i];
        }
        struct gw_movement_result r = sum_of(items, COUNT(items), 0.006), back = sum_of(turned, COUNT(items), 0.006);
        assert_true(r.closing.srss <= r.closing.mixed + 1e-15 && r.closing.mixed <= r.closing.arithmetic + 1e-15);
        assert_true(r.opening.srss <= r.opening.mixed + 1e-15 && r.opening.mixed <= r.opening.arithmetic + 1e-15);
        assert_near(r.joint.mixed, r.closing.mixed + 0.006, 1e-15);
        assert_near(r.engagement.srss, r.opening.srss + 0.01, 1e-15);
        assert_near(back.closing.mixed, r.closing.mixed, 1e-14);
        assert_near(back.opening.srss, r.opening.srss, 1e-14);
        items[3].value += 0.001; /* more of anything never helps */
        struct gw_movement_result more = sum_of(items, COUNT(items), 0.006);
        assert_true(more.closing.mixed >= r.closing.mixed - 1e-15);
        assert_true(more.opening.mixed >= r.opening.mixed - 1e-15);
        assert_true(more.closing.mixed + more.opening.mixed > r.closing.mixed + r.opening.mixed);
    }
}

/* Live load and temperature may come together: neither usable sum takes the root of their squares. */
static void correlated_movements_add(void **state)
{
    (void)state;
    const struct gw_movement_item items[] = {{"live load", 0.75 * IN, GW_CLOSES, GW_MOVEMENT},
                                             {"thermal", 0.18 * IN, GW_BOTH_WAYS, GW_MOVEMENT}};
    struct gw_movement_result r = sum_of(items, COUNT(items), 0);
    assert_near(r.closing.mixed, 0.93 * IN, 1e-15);
    assert_near(r.closing.arithmetic, 0.93 * IN, 1e-15);
    assert_near(r.closing.srss, sqrt(0.75 * 0.75 + 0.18 * 0.18) * IN, 1e-15);
    assert_near(r.opening.mixed, 0.18 * IN, 1e-15);
    assert_true(noted(r.notes, r.n_notes, "independent random items only"));
}

/* A tolerance can be met on either side; one that is given one way only is said to be so. */
static void tolerances_go_both_ways(void **state)
{
    (void)state;
    const struct gw_movement_item unsaid[] = {{NULL, 3e-3, GW_DIRECTION_UNSET, GW_TOLERANCE},
                                              {NULL, 4e-3, GW_DIRECTION_UNSET, GW_TOLERANCE}};
    struct gw_movement_result r = sum_of(unsaid, COUNT(unsaid), 0);
    assert_near(r.closing.arithmetic, 7e-3, 1e-15);
    assert_near(r.opening.arithmetic, 7e-3, 1e-15);
    assert_near(r.closing.mixed, 5e-3, 1e-15);
    assert_near(r.opening.mixed, 5e-3, 1e-15);
    assert_false(noted(r.notes, r.n_notes, "one direction only"));
    const struct gw_movement_item one[] = {{NULL, 3e-3, GW_CLOSES, GW_TOLERANCE}};
    r = sum_of(one, 1, 0);
    assert_near(r.opening.arithmetic, 0, 0);
    assert_true(noted(r.notes, r.n_notes, "one direction only"));
}

static void what_a_budget_needs(void **state)
{
    (void)state;
    struct gw_engine engine = engine_new();
    struct gw_movement_result out;
    struct gw_movement_item item = {NULL, 0.01, GW_CLOSES, GW_MOVEMENT_UNSET};
    assert_int_equal(gw_movement_sum(&out, &item, 1, 0, GW_ABSENT, &engine), GW_MISSING);
    assert_string_equal(engine.fault.key, "kind");
    item.kind = GW_MOVEMENT, item.direction = GW_DIRECTION_UNSET;
    assert_int_equal(gw_movement_sum(&out, &item, 1, 0, GW_ABSENT, &engine), GW_MISSING);
    assert_string_equal(engine.fault.key, "direction");
    item.direction = GW_CLOSES, item.value = -0.01;
    assert_int_equal(gw_movement_sum(&out, &item, 1, 0, GW_ABSENT, &engine), GW_BAD_VALUE);
    item.value = 0.01;
    assert_int_equal(gw_movement_sum(&out, &item, 1, GW_ABSENT, GW_ABSENT, &engine), GW_MISSING);
    assert_int_equal(gw_movement_sum(&out, &item, 1, 0.005, GW_ABSENT, &engine), GW_OK);
    assert_false(gw_given(out.engagement.mixed));
}

/* Thermal ------------------------------------------------------------------------------------------------------------
 */

static struct gw_thermal_case bar(double length, double hottest, double coldest, double warmest, double coolest)
{
    return (struct gw_thermal_case){.length = length,
                                    .material = GW_EXPANDS_ALUMINUM,
                                    .expansion_per_k = GW_ABSENT,
                                    .hottest = hottest,
                                    .coldest = coldest,
                                    .set_warmest = warmest,
                                    .set_coldest = coolest};
}

static struct gw_thermal_result heat(const struct gw_thermal_case *in)
{
    struct gw_engine engine = engine_new();
    struct gw_thermal_result out;
    enum gw_status status = gw_thermal_movement(&out, in, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

static double answer(struct world *w, const char *yaml, const char *list)
{
    struct gw_text out;
    double value = GW_ABSENT;
    gw_text_init(&out, &w->arena);
    bool good = gw_calc_case(&out, &w->arena, gw_calc_find("movement"), node_of(w, yaml), gw_tables_standard());
    if (!good) print_error("%s\n", out.at);
    assert_true(good);
    const struct gw_node *node = gw_node_get(node_of(w, out.at), list);
    if (node->kind == GW_SEQUENCE) node = node->first;
    assert_int_equal(gw_read_number(node->text, node->length, &value), node->length);
    return value;
}

/* 80 degF of difference are 44.4 K. The coefficient per K times 80 would give 0.44 in for these 240 in. */
static void coefficient_per_kelvin(void **state)
{
    struct world *w = *state;
    static const char form[] =
        "{thermal: [{length: 240 in, material: aluminum, hottest: %s, coldest: %s, set_warmest: %s, "
        "set_coldest: %s}], least_gap: 0 in}";
    double us = answer(w, gw_format(&w->arena, form, "120 degF", "40 degF", "40 degF", "40 degF"), "thermal_growth_m");
    assert_near(us, 240 * IN * 13.1e-6 * 80, 0.003 * us); /* as a handbook in degF has it; it rounds to three digits */
    assert_true(us < 0.26 * IN);
    double si = answer(w,
                       gw_format(&w->arena, form, "48.88888888888889 degC", "4.444444444444445 degC",
                                 "4.444444444444445 degC", "4.444444444444445 degC"),
                       "thermal_growth_m");
    assert_near(us, si, 1e-12);
}

/* The whole range one way, or each way from the set temperature: only one of them is asked for. */
static void movement_from_the_set_temperature(void **state)
{
    (void)state;
    struct gw_thermal_case in = bar(4, 340, 250, 300, 280);
    struct gw_thermal_result r = heat(&in), unknown;
    assert_near(r.rise, 60, 1e-12);
    assert_near(r.fall, 50, 1e-12);
    assert_near(r.growth, 23.6e-6 * 4 * 60, 1e-15);
    assert_near(r.shrinkage, 23.6e-6 * 4 * 50, 1e-15);
    in.set_warmest = in.set_coldest = GW_ABSENT;
    unknown = heat(&in);
    assert_near(unknown.rise, 90, 1e-12);
    assert_near(unknown.fall, 90, 1e-12);
    assert_true(noted(unknown.notes, unknown.n_notes, "whole range is taken each way"));
    for (double set = 250; set <= 340; set += 10) { /* what is unknown is never less than what may be known */
        in.set_warmest = in.set_coldest = set;
        r = heat(&in);
        assert_true(r.growth <= unknown.growth && r.shrinkage <= unknown.shrinkage);
        assert_near(r.rise + r.fall, 90, 1e-9);
    }
    in = bar(4, GW_ABSENT, GW_ABSENT, GW_ABSENT, GW_ABSENT);
    r = heat(&in);
    assert_near(r.rise * 1.8, 180, 1e-9);
    assert_true(noted(r.notes, r.n_notes, "usual range"));
}

static void what_a_bar_needs(void **state)
{
    (void)state;
    const struct gw_thermal_case cases[] = {bar(GW_ABSENT, 300, 280, 290, 290), bar(1, 300, GW_ABSENT, 290, 290),
                                            bar(1, 300, 280, 290, GW_ABSENT), bar(1, 280, 300, 290, 290),
                                            bar(1, GW_ABSENT, GW_ABSENT, 290, 290)};
    const char *keys[] = {"length", "coldest", "set_coldest", "coldest", "hottest"};
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct gw_engine engine = engine_new();
        struct gw_thermal_result out;
        assert_int_not_equal(gw_thermal_movement(&out, &cases[i], &engine), GW_OK);
        assert_string_equal(engine.fault.key, keys[i]);
    }
    struct gw_engine engine = engine_new();
    struct gw_thermal_result out;
    struct gw_thermal_case in = bar(1, 300, 280, 290, 290);
    in.material = GW_EXPANDS_UNSET;
    assert_int_equal(gw_thermal_movement(&out, &in, &engine), GW_MISSING);
    in.expansion_per_k = 1e-5;
    assert_int_equal(gw_thermal_movement(&out, &in, &engine), GW_OK);
    assert_int_equal(out.n_notes, 0);
    in.material = GW_EXPANDS_GLASS;
    assert_int_equal(gw_thermal_movement(&out, &in, &engine), GW_BAD_VALUE);
}

/* Joints and anchors -------------------------------------------------------------------------------------------------
 */

static void stack_joint_from_a_project(void **state)
{
    (void)state;
    struct gw_engine engine = engine_new();
    struct gw_movement_item items[GW_JOINT_ITEMS];
    const double set = 294;
    struct gw_thermal_case mullion = bar(156 * IN, set + 50, set - 50, set, set);
    struct gw_thermal_result warm = heat(&mullion);
    struct gw_stack_joint in = {.live_above = 0.75 * IN,
                                .live_below = GW_ABSENT,
                                .shortening = 0.125 * IN,
                                .rebound = GW_ABSENT,
                                .thermal = &warm,
                                .stories = GW_ABSENT,
                                .fabrication = 0.0625 * IN,
                                .erection = 0.125 * IN};
    size_t n = gw_joint_items(items, &in, &engine);
    assert_int_equal(n, 6);
    struct gw_movement_result r = sum_of(items, n, 0.25 * IN);
    assert_near(r.closing.arithmetic, 1.247 * IN, 0.001 * IN);
    assert_near(r.closing.mixed, 1.199 * IN, 0.001 * IN);
    assert_near(r.opening.mixed, 0.324 * IN, 0.001 * IN);
    assert_near(r.joint.arithmetic, 1.497 * IN, 0.001 * IN);
    in.live_below = 0.6 * IN; /* the floor below goes down alone: the joint opens by that */
    in.stories = 2;           /* a piece over two stories takes the shortening of both */
    in.fabrication = in.erection = GW_ABSENT;
    n = gw_joint_items(items, &in, &engine);
    assert_int_equal(n, 7);
    struct gw_movement_result more = sum_of(items, n, 0.25 * IN);
    assert_near(more.closing.mixed, r.closing.mixed + 0.125 * IN, 1e-12); /* the usual tolerances are those above */
    assert_near(more.opening.mixed, r.opening.mixed + 0.6 * IN, 1e-12);
    in.rebound = 0.001;
    assert_int_equal(gw_joint_items(items, &in, &engine), GW_JOINT_ITEMS);
}

static void floors_and_slots(void **state)
{
    (void)state;
    struct gw_engine engine = engine_new();
    double length;
    assert_int_equal(gw_floor_movement(&length, 30 * FT, GW_ABSENT, &engine), GW_OK);
    assert_near(length, 1.0 * IN, 1e-12);
    assert_int_equal(gw_floor_movement(&length, 30 * FT, 480, &engine), GW_OK);
    assert_near(length, 0.75 * IN, 1e-12);
    assert_int_equal(gw_floor_movement(&length, GW_ABSENT, 480, &engine), GW_MISSING);
    assert_int_equal(gw_anchor_slot(&length, 0.5 * IN, 0.75 * IN, 0.25 * IN, &engine), GW_OK);
    assert_near(length, 2.5 * IN, 1e-12);
    assert_int_equal(gw_anchor_slot(&length, 0.5 * IN, -0.1, 0, &engine), GW_BAD_VALUE);
    assert_int_equal(gw_anchor_slot(&length, 0, 0.1, 0, &engine), GW_BAD_VALUE);
}

static void units_do_not_matter(void **state)
{
    struct world *w = *state;
    double us =
        answer(w,
               "{units: us, items: [{value: 1/2, direction: close, kind: movement}, {value: 1/8, kind: tolerance}, "
               "{value: 1/16, kind: tolerance}], least_gap: 1/4}",
               "joint_mixed_m");
    double si = answer(w,
                       "{units: si, items: [{value: 12.7, direction: close, kind: movement}, {value: 3.175, kind: "
                       "tolerance}, {value: 1.5875, kind: tolerance}], least_gap: 6.35}",
                       "joint_mixed_m");
    assert_near(us, si, 1e-12);
    assert_near(us, (0.75 + hypot(0.125, 0.0625)) * IN, 1e-11);
}

static void too_many_pieces(void **state)
{
    struct world *w = *state;
    struct gw_text yaml, out;
    gw_text_init(&yaml, &w->arena);
    gw_text_init(&out, &w->arena);
    gw_text_add(&yaml, "{least_gap: 1 mm, thermal: [");
    for (int i = 0; i < 5; i++) gw_text_add(&yaml, "{length: 1 m, material: glass}, ");
    gw_text_add(&yaml, "]}");
    assert_false(gw_calc_case(&out, &w->arena, gw_calc_find("movement"), node_of(w, yaml.at), gw_tables_standard()));
    assert_non_null(strstr(out.at, "outside_method"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(three_sums_in_order),
        cmocka_unit_test(correlated_movements_add),
        cmocka_unit_test(tolerances_go_both_ways),
        cmocka_unit_test(what_a_budget_needs),
        WORLD_TEST(coefficient_per_kelvin),
        cmocka_unit_test(movement_from_the_set_temperature),
        cmocka_unit_test(what_a_bar_needs),
        cmocka_unit_test(stack_joint_from_a_project),
        cmocka_unit_test(floors_and_slots),
        WORLD_TEST(units_do_not_matter),
        WORLD_TEST(too_many_pieces),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
