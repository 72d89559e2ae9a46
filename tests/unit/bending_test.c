/* Bending strength: hand figures, limits, monotony, the usual mistakes, what must be refused. */
#include "bending_support.h"

/* 6061-T6 and 6005A-T61 rupture before they yield: 19.49 ksi on Z. 6063 yields first. */
static void mistake_yielding_for_rupture(void **state)
{
    (void)state;
    const double z = 5.3e-5;
    for (EACH(i, ALUMINUM)) {
        const struct gw_bending in = stocky(ALUMINUM[i], z, z / 1.2);
        const struct gw_bending_result out = strength(&in);
        const bool soft = i < 2;
        assert_string_equal(out.governing, soft ? "yielding" : "rupture");
        if (!soft) near_to(out.allowable, z * 38 * KSI / 1.95, 1e-12);
        if (!soft) assert_true(out.allowable < 0.93 * z * 35 * KSI / 1.65);
    }
}

/* A stocky web reaches 1.5 Fcy (1.3 in 2010), so a compact tube's weighted average is Z Fcy but for the flanges' own
 * bending. */
static void mistake_web_plateau(void **state)
{
    (void)state;
    const struct gw_tube tube = inches(3, 4, 0.25, 0.25);
    const struct gw_bending in = tube_case(GW_METAL_6063_T6, &tube, 0);
    const struct gw_bending_result out = strength(&in);
    near_to(out.web_stress, 1.5 * 25 * KSI, 1e-12);
    near_to(out.nominal_local, in.plastic * 25 * KSI, 2e-3);
    assert_true(out.nominal_local > in.plastic * 25 * KSI);
}

/* The line of lateral buckling starts from the yielding moment, on Z, not from S Fcy. */
static void mistake_elastic_modulus_in_yielding(void **state)
{
    (void)state;
    const struct gw_tube tube = inches(2.5, 6, 0.125, 0.125);
    const struct gw_bending in = tube_case(GW_METAL_6063_T6, &tube, 1e-6);
    const struct gw_bending_result out = strength(&in);
    near_to(out.nominal_lateral, in.plastic * 25 * KSI, 1e-3);
    assert_true(out.nominal_lateral > 1.2 * in.modulus_compression * 25 * KSI);
}

/* Cc and the flanges go by the compressive yield strength; only Fty changed here. */
static void mistake_tensile_yield_in_constants(void **state)
{
    (void)state;
    struct gw_tables *tables = malloc(gw_tables_size());
    const struct gw_tube tube = inches(2.5, 6, 0.125, 0.125);
    const struct gw_bending in = tube_case(GW_METAL_6063_T6, &tube, 100 * IN);
    const struct gw_bending_result want = strength(&in);
    memcpy(tables, gw_tables_standard(), gw_tables_size());
    tables->aluminum_strength[GW_ROW_ALUMINUM_STRENGTH_6063_T6].yield_pa = 28 * KSI;
    tables->aluminum_ratio[GW_ROW_ALUMINUM_RATIO_COMPRESSIVE_YIELD].value = 25 / 28.0;
    struct gw_bending_result got = by_tables(&in, tables);
    near_to(got.slenderness_limit, want.slenderness_limit, 1e-12);
    near_to(got.nominal_local, want.nominal_local, 1e-12);
    tables->aluminum_ratio[GW_ROW_ALUMINUM_RATIO_COMPRESSIVE_YIELD].value = 24 / 28.0;
    got = by_tables(&in, tables);
    assert_true(got.slenderness_limit > want.slenderness_limit * 1.01);
    free(tables);
}

/* The editions' Cb: 1.131 and 1.136 for uniform load on a simple span. The elastic moment grows with it. */
static void mistake_editions_mixed(void **state)
{
    (void)state;
    const struct gw_tube tube = inches(2.5, 6, 0.125, 0.125);
    struct gw_bending in = tube_case(GW_METAL_6063_T6, &tube, 100 * IN);
    const double moments[] = {1000, 750, 1000, 750};
    memcpy(in.quarter_moments, moments, sizeof moments);
    assert_near(strength(&in).cb, 1.1313708, 1e-6); /* 4/sqrt(12.5) */
    assert_int_not_equal(gw_used_weakest(&engine.used), GW_BASIS_NONE);
    in.edition = GW_ADM_2015;
    assert_near(strength(&in).cb, 12.5 / 11, 1e-12);
    const double even[] = {1000, 1000, 1000, 1000};
    memcpy(in.quarter_moments, even, sizeof even);
    assert_near(strength(&in).cb, 1, 1e-12);
    in.edition = GW_ADM_2020;
    assert_near(strength(&in).cb, 1, 1e-12);
}

static void lopsided_sections_have_no_cb(void **state)
{
    (void)state;
    struct gw_bending in = stocky(GW_METAL_6063_T6, 5e-5, 4e-5);
    in.unbraced_length = 3;
    in.elastic_moment = 4000;
    in.cb = 1.3;
    in.compression_flange_share = 0.5;
    const struct gw_bending_result even = strength(&in);
    in.compression_flange_share = 0.1;
    const struct gw_bending_result lopsided = strength(&in);
    assert_near(even.cb, 1.3, 1e-12);
    assert_near(lopsided.cb, 1, 1e-12);
    assert_true(lopsided.lateral < even.lateral);
    assert_int_equal(lopsided.n_notes, even.n_notes + 1);
}

/* The closed formula's 2.3 is pi^(1/2) (E/G)^(1/4) rounded up from 2.263. */
static void closed_and_open_forms_agree(void **state)
{
    (void)state;
    struct gw_bending in = stocky(GW_METAL_6063_T6, 5e-5, 4e-5);
    in.unbraced_length = 3.1;
    in.inertia_y = 9.8e-7;
    in.torsion = 2.4e-6;
    in.warping = 0;
    in.profile = GW_PROFILE_CLOSED;
    const struct gw_bending_result closed = strength(&in);
    in.profile = GW_PROFILE_OPEN;
    const struct gw_bending_result open = strength(&in);
    near_to(closed.slenderness / open.slenderness, 2.3 / (sqrt(acos(-1)) * pow(10100.0 / 3800, 0.25)), 1e-9);
    in.profile = GW_PROFILE_UNSET;
    in.elastic_moment = acos(-1) / 3.1 * KSI * sqrt(10100.0 * 9.8e-7 * 3800 * 2.4e-6);
    near_to(strength(&in).slenderness, open.slenderness, 1e-9);
}

static void strength_falls_with_length(void **state)
{
    (void)state;
    const struct gw_tube shapes[] = {inches(2.5, 6, 0.125, 0.125), inches(2, 8, 0.094, 0.07), inches(1, 10, 0.2, 0.15)};
    for (EACH(m, ALUMINUM))
        for (EACH(s, shapes)) {
            double last = INFINITY;
            for (double length = 0; length < 20; length += 0.31) {
                const struct gw_bending in = tube_case(ALUMINUM[m], &shapes[s], length);
                const struct gw_bending_result out = strength(&in);
                assert_true(out.lateral < last);
                assert_true(out.lateral <= out.yielding * (1 + 1e-12));
                assert_true(out.allowable <= out.lateral && out.allowable <= out.rupture && out.allowable <= out.local);
                last = out.lateral;
            }
        }
}

/* Thinner walls never have stronger elements, through all three branches; the branches meet within half a percent. */
static void stress_falls_with_slenderness(void **state)
{
    (void)state;
    for (EACH(m, ALUMINUM))
        for (int welded = 0; welded < 2; welded++) {
            if (welded && ALUMINUM[m] == GW_METAL_6105_T5) continue;
            double flange = INFINITY, web = INFINITY, shear = INFINITY;
            for (double t = 0.3; t > 0.02; t *= 0.99) {
                const struct gw_tube tube = inches(3, 6, t, t);
                struct gw_bending in = tube_case(ALUMINUM[m], &tube, 1);
                in.torsion = 1e-6;
                in.welded = welded;
                const struct gw_bending_result out = strength(&in);
                assert_true(out.flange_stress <= flange && out.flange_stress > 0.97 * (isinf(flange) ? 0 : flange));
                assert_true(out.web_stress <= web && out.web_stress > 0.97 * (isinf(web) ? 0 : web));
                assert_true(out.shear_stress <= shear && out.shear_stress > 0.96 * (isinf(shear) ? 0 : shear));
                flange = out.flange_stress, web = out.web_stress, shear = out.shear_stress;
            }
            assert_true(flange < 8 * KSI && shear < 3 * KSI); /* the last branch was reached */
        }
}

/* The limits of slenderness as printed in handbooks, found by search on the strength. */
static void element_limits(void **state)
{
    (void)state;
    static const struct {
        enum gw_metal metal;
        int edges;
        double first, second;
    } flanges[] = {{GW_METAL_6063_T5, 2, 25.6, 49.8}, {GW_METAL_6063_T6, 2, 22.8, 39.2},
                   {GW_METAL_6061_T6, 2, 20.8, 32.8}, {GW_METAL_6063_T5, 1, 8.2, 15.9},
                   {GW_METAL_6063_T6, 1, 7.3, 12.6},  {GW_METAL_6061_T6, 1, 6.7, 10.5}};
    for (EACH(i, flanges)) {
        struct gw_bending in = stocky(flanges[i].metal, 5e-5, 4e-5);
        in.compact = false;
        in.flange_inertia = 4e-6, in.flange_distance = 0.07;
        in.n_elements = 1;
        in.elements[0] = (struct gw_flat_element){GW_ELEMENT_COMPRESSION, 0, 0.001, flanges[i].edges, GW_ABSENT};
        in.elements[0].width = (flanges[i].first - 0.06) * 0.001;
        const double plateau = strength(&in).flange_stress;
        in.elements[0].width = (flanges[i].first + 0.06) * 0.001;
        assert_true(strength(&in).flange_stress < plateau);
        const double factor = flanges[i].edges == 2 ? 1.6 : 5;
        const struct gw_buckling_constants k = constants(flanges[i].metal, false, GW_BUCKLING_FLAT);
        in.elements[0].width = (flanges[i].second - 0.06) * 0.001;
        near_to(strength(&in).flange_stress, k.b - factor * k.d * (flanges[i].second - 0.06), 1e-12);
        in.elements[0].width = (flanges[i].second + 0.06) * 0.001;
        near_to(strength(&in).flange_stress, 2.27 * sqrt(k.b * 10100 * KSI) / (factor * (flanges[i].second + 0.06)),
                1e-12);
    }
}

/* m of webs: 0.65 in symmetry by either rule, 1.65 near uniform compression. */
static void webs_off_center(void **state)
{
    (void)state;
    struct gw_bending in = stocky(GW_METAL_6063_T6, 5e-5, 4e-5);
    in.web_inertia = 4e-6, in.web_distance = 0.07;
    in.n_elements = 1;
    in.elements[0] = (struct gw_flat_element){GW_ELEMENT_BENDING, 0.07, 0.001, 2, -1};
    const struct gw_buckling_constants k = constants(GW_METAL_6063_T6, false, GW_BUCKLING_BENDING);
    near_to(strength(&in).web_stress, k.b - 0.65 * k.d * 70, 1e-12);
    in.elements[0].stress_ratio = -1 + 1e-9;
    near_to(strength(&in).web_stress, k.b - 0.65 * k.d * 70, 1e-8);
    in.elements[0].stress_ratio = -1.6;
    near_to(strength(&in).web_stress, k.b - 1.3 / 2.6 * k.d * 70, 1e-12);
    in.elements[0].stress_ratio = 0.2;
    in.elements[0].width = 0.03;
    near_to(strength(&in).web_stress, k.b - 1.25 * k.d * 30, 1e-12);
}

/* All lengths by f: the same stresses, moments by f^3, forces by f^2. */
static void size_scales(void **state)
{
    (void)state;
    const struct gw_tube small = inches(2.5, 6, 0.094, 0.078);
    const double f = 1.37;
    const struct gw_tube large = {small.width * f, small.depth * f, small.flange * f, small.web * f, 0};
    const struct gw_bending a = tube_case(GW_METAL_6063_T6, &small, 3.3),
                            b = tube_case(GW_METAL_6063_T6, &large, 3.3 * f);
    const struct gw_bending_result one = strength(&a), two = strength(&b);
    near_to(two.allowable, one.allowable * f * f * f, 1e-12);
    near_to(two.local, one.local * f * f * f, 1e-12);
    near_to(two.shear_allowable, one.shear_allowable * f * f, 1e-12);
    near_to(two.slenderness, one.slenderness, 1e-12);
}

static void welds_weaken(void **state)
{
    (void)state;
    const struct gw_tube tube = inches(2.5, 6, 0.125, 0.125);
    for (EACH(i, ALUMINUM)) {
        struct gw_bending in = tube_case(ALUMINUM[i], &tube, 60 * IN);
        const struct gw_bending_result plain = strength(&in);
        in.welded = true;
        if (ALUMINUM[i] == GW_METAL_6105_T5) continue;
        const struct gw_bending_result welded = strength(&in);
        assert_true(welded.yielding < plain.yielding && welded.rupture < plain.rupture);
        assert_true(welded.lateral < plain.lateral && welded.shear_allowable < plain.shear_allowable);
        assert_int_equal(welded.n_notes, 1);
    }
}

/* What is not given leaves its part absent, and no allowable moment. */
static void unknown_parts_stay_absent(void **state)
{
    (void)state;
    struct gw_bending in = stocky(GW_METAL_6063_T6, 5e-5, 4e-5);
    in.compact = false;
    in.unbraced_length = 2;
    struct gw_bending_result out = strength(&in);
    assert_true(gw_given(out.yielding) && gw_given(out.rupture));
    assert_true(!gw_given(out.local) && !gw_given(out.lateral) && !gw_given(out.allowable));
    assert_null(out.governing);
    assert_int_equal(out.n_notes, 4); /* local, lateral, shear, so none allowable */
    in.plastic = GW_ABSENT;
    out = strength(&in);
    assert_true(!gw_given(out.yielding) && !gw_given(out.rupture));
    in = stocky(GW_METAL_6063_T6, 5e-5, 4e-5);
    in.unbraced_length = 2;
    in.profile = GW_PROFILE_OPEN;
    in.inertia_y = 1e-6;
    in.torsion = 1e-9;
    assert_true(!gw_given(strength(&in).lateral)); /* wants the warping constant */
    in.warping = 1e-10;
    assert_true(gw_given(strength(&in).allowable));
}

static void wrong_cases_are_refused(void **state)
{
    (void)state;
    const struct gw_bending good = stocky(GW_METAL_6063_T6, 5e-5, 4e-5);
    struct gw_bending in = good;
    in.metal = GW_METAL_UNSET, refuse(&in, GW_MISSING, "alloy"), in = good;
    in.unbraced_length = GW_ABSENT, refuse(&in, GW_MISSING, "unbraced_length"), in = good;
    in.unbraced_length = -1, refuse(&in, GW_BAD_VALUE, "unbraced_length"), in = good;
    in.plastic = 3e-5, refuse(&in, GW_BAD_VALUE, "plastic_modulus_x"), in = good;
    in.cb = 0.99, refuse(&in, GW_BAD_VALUE, "cb"), in = good;
    in.cb = 1.1, in.quarter_moments[0] = 1, refuse(&in, GW_BAD_VALUE, "cb"), in = good;
    in.quarter_moments[0] = 1, refuse(&in, GW_BAD_VALUE, "quarter_moments"), in = good;
    in.compression_flange_share = 1.1, refuse(&in, GW_BAD_VALUE, "compression_flange_share"), in = good;
    in.torsion = 0, refuse(&in, GW_BAD_VALUE, "torsion_constant"), in = good;
    in.warping = -1, refuse(&in, GW_BAD_VALUE, "warping_constant"), in = good;
    in.webs = 1, refuse(&in, GW_BAD_VALUE, "webs"), in = good;
    in.n_elements = 1;
    refuse(&in, GW_MISSING, "elements");
    in.elements[0] = (struct gw_flat_element){GW_ELEMENT_COMPRESSION, 0.01, 0.001, 2, GW_ABSENT};
    refuse(&in, GW_MISSING, "flange_inertia");
    in.flange_inertia = 1e-6;
    refuse(&in, GW_MISSING, "flange_distance");
    in.flange_distance = 0.05;
    strength(&in);
    in.web_inertia = 1e-6, in.web_distance = 0.05;
    refuse(&in, GW_MISSING, "elements"); /* of the web */
    in.elements[0].edges = 3;
    refuse(&in, GW_BAD_VALUE, "elements");
    in.elements[0] = (struct gw_flat_element){GW_ELEMENT_BENDING, 0.01, 0.001, 2, 1};
    refuse(&in, GW_OUTSIDE_METHOD, "elements");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(mistake_yielding_for_rupture),
        cmocka_unit_test(mistake_web_plateau),
        cmocka_unit_test(mistake_elastic_modulus_in_yielding),
        cmocka_unit_test(mistake_tensile_yield_in_constants),
        cmocka_unit_test(mistake_editions_mixed),
        cmocka_unit_test(lopsided_sections_have_no_cb),
        cmocka_unit_test(closed_and_open_forms_agree),
        cmocka_unit_test(strength_falls_with_length),
        cmocka_unit_test(stress_falls_with_slenderness),
        cmocka_unit_test(element_limits),
        cmocka_unit_test(webs_off_center),
        cmocka_unit_test(size_scales),
        cmocka_unit_test(welds_weaken),
        cmocka_unit_test(unknown_parts_stay_absent),
        cmocka_unit_test(wrong_cases_are_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
