/* Alloys: buckling constants and strengths by thickness, retyped and by hand. */
#include "bending_support.h"

/* As printed in handbooks, ksi; the published ones of the member from a worked example for Fcy 35. */
static void buckling_constants(void **state)
{
    (void)state;
    static const struct {
        enum gw_metal metal;
        enum gw_buckling kind;
        double b, d, c;
    } cases[] = {
        {GW_METAL_6061_T6, GW_BUCKLING_MEMBER, 39.37, 0.2458, 65.67},
        {GW_METAL_6063_T6, GW_BUCKLING_MEMBER, 27.64, 0.1446, 78.4},
        {GW_METAL_6063_T5, GW_BUCKLING_MEMBER, 17.35, 0.0719, 98.9},
        {GW_METAL_6061_T6, GW_BUCKLING_FLAT, 45.00, 0.3004, 61.4},
        {GW_METAL_6063_T6, GW_BUCKLING_FLAT, 31.39, 0.1750, 73.6},
        {GW_METAL_6063_T5, GW_BUCKLING_FLAT, 19.52, 0.0858, 93.3},
        {GW_METAL_6061_T6, GW_BUCKLING_BENDING, 66.82, 0.6657, 66.9},
        {GW_METAL_6063_T6, GW_BUCKLING_BENDING, 46.12, 0.3816, 80.6},
        {GW_METAL_6063_T5, GW_BUCKLING_BENDING, 28.31, 0.1836, 102.8},
        {GW_METAL_6061_T6, GW_BUCKLING_SHEAR, 26.14, 0.1330, 80.6},
        {GW_METAL_6063_T6, GW_BUCKLING_SHEAR, 18.22, 0.0774, 96.5},
        {GW_METAL_6063_T5, GW_BUCKLING_SHEAR, 11.33, 0.0379, 122.4},
    };
    for (EACH(i, cases)) {
        const struct gw_buckling_constants k = constants(cases[i].metal, false, cases[i].kind);
        assert_near(k.b / KSI, cases[i].b, 0.0055);
        assert_near(k.d / KSI, cases[i].d, 0.000055);
        assert_near(k.c, cases[i].c, 0.06);
    }
    const struct gw_buckling_constants column = constants(GW_METAL_6061_T6, false, GW_BUCKLING_MEMBER);
    assert_near((column.b - column.d * 9.05) / 1.95 / KSI, 19.05, 0.005); /* the same example's column stress */
}

/* Long-published allowable stress of flanges on both edges, ksi: intercept and slope over 1.65. */
static void single_line_formulas(void **state)
{
    (void)state;
    static const struct {
        enum gw_metal metal;
        double intercept, slope;
    } cases[] = {{GW_METAL_6061_T6, 27.3, 0.291}, {GW_METAL_6063_T6, 19.0, 0.170}, {GW_METAL_6063_T5, 11.8, 0.083}};
    for (EACH(i, cases)) {
        const struct gw_buckling_constants k = constants(cases[i].metal, false, GW_BUCKLING_FLAT);
        assert_near(k.b / KSI / 1.65, cases[i].intercept, 0.05);
        assert_near(1.6 * k.d / KSI / 1.65, cases[i].slope, 0.0006);
    }
}

/* Metal beside a weld buckles by the constants of annealed metal. */
static void welded_constants(void **state)
{
    (void)state;
    const struct gw_buckling_constants k = constants(GW_METAL_6063_T6, true, GW_BUCKLING_MEMBER);
    assert_near(k.b / KSI, 8 * (1 + sqrt(8 / 1000.0)), 1e-9);
    assert_near(k.d / KSI, k.b / KSI / 20 * sqrt(6 * k.b / KSI / 10100), 1e-9);
    assert_near(k.c, 2 * k.b / (3 * k.d), 1e-9);
}

static enum gw_status find(enum gw_metal metal, double thickness, bool welded, struct gw_alloy *out)
{
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    return gw_alloy_find(out, metal, thickness, welded, &engine);
}

static void strengths_by_thickness(void **state)
{
    (void)state;
    struct gw_alloy a;
    assert_int_equal(find(GW_METAL_6063_T5, 0.5 * IN, false, &a), GW_OK);
    assert_near(a.yield / KSI, 16, 1e-9);
    assert_int_equal(find(GW_METAL_6063_T5, 0.501 * IN, false, &a), GW_OK);
    assert_near(a.yield / KSI, 15, 1e-9);
    assert_int_equal(find(GW_METAL_6063_T5, 1.001 * IN, false, &a), GW_OUTSIDE_METHOD);
    assert_string_equal(engine.fault.key, "thickness");
    assert_int_equal(find(GW_METAL_6063_T5, GW_ABSENT, false, &a), GW_MISSING);
    assert_int_equal(find(GW_METAL_6061_T6, GW_ABSENT, false, &a), GW_OK);
    assert_int_equal(find(GW_METAL_6061_T6, GW_ABSENT, true, &a), GW_MISSING); /* beside a weld it depends on it */
    assert_int_equal(find(GW_METAL_6061_T6, 0.375 * IN, true, &a), GW_OK);
    assert_near(a.yield / KSI, 15, 1e-9);
    assert_int_equal(find(GW_METAL_6061_T6, 0.376 * IN, true, &a), GW_OK);
    assert_near(a.yield / KSI, 11, 1e-9);
    assert_int_equal(find(GW_METAL_6105_T5, 0.1 * IN, true, &a), GW_OUTSIDE_METHOD);
    assert_string_equal(engine.fault.key, "welded");
    assert_int_equal(find(GW_METAL_A36, 0.1 * IN, false, &a), GW_BAD_VALUE);
    assert_int_equal(find(GW_METAL_6105_T5, 0.1 * IN, false, &a), GW_OK);
    assert_int_equal(gw_used_weakest(&engine.used), GW_MEMORY);
}

/* The tables retyped: ultimate and yield strength, plain and beside a weld, ksi; 0: not known. */
static void strengths_retyped(void **state)
{
    (void)state;
    static const double plain[][2] = {{22, 16}, {30, 25}, {38, 35}, {38, 35}, {38, 35}};
    static const double welded[][2] = {{17, 8}, {17, 8}, {24, 15}, {24, 13}, {0, 0}};
    struct gw_alloy a;
    for (EACH(i, ALUMINUM)) {
        assert_int_equal(find(ALUMINUM[i], 0.125 * IN, false, &a), GW_OK);
        assert_near(a.ultimate / KSI, plain[i][0], 1e-9);
        assert_near(a.yield / KSI, plain[i][1], 1e-9);
        assert_near(a.shear_yield / KSI, plain[i][1] / sqrt(3), 1e-9);
        assert_int_equal(a.temper, GW_TEMPER_AGED);
        if (!(welded[i][0] > 0)) continue;
        assert_int_equal(find(ALUMINUM[i], 0.125 * IN, true, &a), GW_OK);
        assert_near(a.ultimate / KSI, welded[i][0], 1e-9);
        assert_near(a.yield / KSI, welded[i][1], 1e-9);
        assert_int_equal(a.temper, GW_TEMPER_ANNEALED);
    }
    static const double steel[][2] = {{36, 58}, {46, 58}, {50, 62}, {50, 65}, {50, 65}, {30, 75}, {30, 75}};
    for (EACH(i, steel)) {
        const struct gw_steel_strength *row = &gw_tables_standard()->steel_strength[i];
        assert_int_equal(row->grade, GW_METAL_A36 + (int)i);
        assert_near(row->yield_pa / KSI, steel[i][0], 1e-9);
        assert_near(row->ultimate_pa / KSI, steel[i][1], 1e-9);
    }
}

/* Steel is 29/10.1 = 2.871 times as stiff as aluminum, not 3, and aluminum has 10,100 ksi, not 10,000. */
static void mistake_modular_ratio(void **state)
{
    (void)state;
    const struct gw_tables *t = gw_tables_standard();
    const double aluminum = t->aluminum_modulus[0].elastic_modulus_pa,
                 steel = t->steel_modulus[GW_ROW_STEEL_MODULUS_CARBON].elastic_modulus_pa;
    assert_near(aluminum / KSI, 10100, 1e-6);
    assert_near(steel / aluminum, 2.8713, 0.00005);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(buckling_constants), cmocka_unit_test(single_line_formulas),
        cmocka_unit_test(welded_constants),   cmocka_unit_test(strengths_by_thickness),
        cmocka_unit_test(strengths_retyped),  cmocka_unit_test(mistake_modular_ratio),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
