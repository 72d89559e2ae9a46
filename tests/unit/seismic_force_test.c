/* Seismic force: limits, monotony, editions, what it needs. */
#include "seismic_support.h"

static struct gw_seismic_force_case wall(enum gw_edition edition, enum gw_seismic_part part, double height_ratio)
{
    return (struct gw_seismic_force_case){.edition = edition,
                                          .sds = 0.83,
                                          .weight = 1234,
                                          .height_ratio = height_ratio,
                                          .importance = 1,
                                          .part = part,
                                          .ap = GW_ABSENT,
                                          .rp = GW_ABSENT,
                                          .car = GW_ABSENT,
                                          .rpo = GW_ABSENT,
                                          .period = GW_ABSENT,
                                          .response_modification = GW_ABSENT,
                                          .overstrength = GW_ABSENT,
                                          .structure_importance = GW_ABSENT};
}

static struct gw_seismic_force_result force_of(const struct gw_seismic_force_case *in)
{
    struct gw_engine engine = engine_new();
    struct gw_seismic_force_result out;
    enum gw_status status = gw_seismic_force(&out, in, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

static enum gw_status refusal(const struct gw_seismic_force_case *in, const char *key)
{
    struct gw_engine engine = engine_new();
    struct gw_seismic_force_result out;
    enum gw_status status = gw_seismic_force(&out, in, &engine);
    assert_int_not_equal(status, GW_OK);
    assert_string_equal(engine.fault.key, key);
    return status;
}

static const enum gw_seismic_part PARTS[] = {GW_PART_WALL_ELEMENT, GW_PART_CONNECTION_BODY, GW_PART_FASTENERS};

static void force_stays_between_its_limits(void **state)
{
    (void)state;
    int low = 0, high = 0, between = 0;
    for (EACH(e, EDITIONS))
        for (EACH(p, PARTS))
            for (double z = 0; z < 1.3; z += 0.11) {
                struct gw_seismic_force_case in = wall(EDITIONS[e], PARTS[p], z);
                in.importance = p == 2 ? 1.5 : 1;
                struct gw_seismic_force_result r = force_of(&in);
                const double unit = in.sds * in.weight * in.importance;
                assert_near(r.minimum, 0.3 * unit, 1e-9 * unit);
                assert_near(r.maximum, 1.6 * unit, 1e-9 * unit);
                assert_near(r.force, fmin(fmax(r.computed, r.minimum), r.maximum), 1e-9 * unit);
                assert_near(r.vertical, 0.2 * in.sds * in.weight, 1e-9 * unit);
                low += strcmp(r.governs, "minimum") == 0;
                high += strcmp(r.governs, "maximum") == 0;
                between += strcmp(r.governs, "formula") == 0;
            }
    assert_true(low > 0 && high > 0 && between > 0);
}

static void force_grows_with_what_drives_it(void **state)
{
    (void)state;
    for (EACH(e, EDITIONS))
        for (EACH(p, PARTS)) {
            double last = 0, before = 0;
            for (double z = 0; z < 1.05; z += 0.0999) {
                struct gw_seismic_force_case in = wall(EDITIONS[e], PARTS[p], z), more = in;
                /* Before its limits 7-22 has a step down just above grade, where R_mu goes from 1 to 1.3. */
                double force = force_of(&in).force;
                assert_true(force >= last * (1 - 1e-12));
                if (z > 0.05) assert_true(force_of(&in).computed > before);
                before = z > 0.05 ? force_of(&in).computed : 0;
                last = force;
                more.sds *= 1.7;
                assert_near(force_of(&more).force, 1.7 * force_of(&in).force, 1e-9 * force);
                more = in;
                more.weight *= 0.3;
                assert_near(force_of(&more).force, 0.3 * force_of(&in).force, 1e-9 * force);
                more = in;
                more.importance = 1.5;
                assert_near(force_of(&more).force, 1.5 * force_of(&in).force, 1e-9 * force);
            }
        }
}

static void above_the_roof_as_at_the_roof(void **state)
{
    (void)state;
    for (EACH(e, EDITIONS)) {
        struct gw_seismic_force_case roof = wall(EDITIONS[e], GW_PART_WALL_ELEMENT, 1), above = roof;
        above.height_ratio = 1.4;
        assert_near(force_of(&above).force, force_of(&roof).force, 1e-12);
        assert_true(noted(force_of(&above).notes, "above the roof"));
        assert_false(noted(force_of(&roof).notes, "above the roof"));
    }
}

/* The force that shears the connections is not the wall's: forgetting it would design them for a third. */
static void fasteners_take_their_own_force(void **state)
{
    (void)state;
    for (EACH(e, EDITIONS)) {
        struct gw_engine engine = engine_new();
        struct gw_seismic_force_case in = wall(EDITIONS[e], GW_PART_UNSET, 1);
        struct gw_seismic_forces all;
        assert_int_equal(gw_seismic_forces(&all, &in, &engine), GW_OK);
        assert_near(all.wall_element.force, all.connection_body.force, 1e-9);
        double ratio = all.fasteners.force / all.wall_element.force;
        if (EDITIONS[e] == GW_ASCE7_22) assert_near(ratio, 1.6 / (0.4 * 3.5 / 1.3 / 1.5), 1e-9);
        else assert_near(ratio, 1.25 / 1.0 * 2.5, 1e-9);
        assert_true(noted(all.wall_element.notes, "fasteners"));
        assert_true(noted(all.connection_body.notes, "fasteners"));
        assert_false(noted(all.fasteners.notes, "fasteners of the connecting system take"));
        assert_int_equal(refusal(&in, EDITIONS[e] == GW_ASCE7_22 ? "car" : "ap"), GW_MISSING);
        in.part = GW_PART_FASTENERS;
        assert_int_equal(gw_seismic_forces(&all, &in, &engine), GW_BAD_VALUE);
    }
}

static void coefficients_given_stand_before_the_table(void **state)
{
    (void)state;
    struct gw_seismic_force_case in = wall(GW_ASCE7_16, GW_PART_WALL_ELEMENT, 0.5);
    in.ap = 2.5, in.rp = 3.5;
    struct gw_seismic_force_result r = force_of(&in);
    assert_near(r.computed, 0.4 * 2.5 * 0.83 * 1234 * 2 / 3.5, 1e-6);
    assert_false(noted(r.notes, "a_p and R_p"));
    in.rp = GW_ABSENT;
    r = force_of(&in);
    assert_near(r.rp, 2.5, 0);
    assert_true(noted(r.notes, "a_p and R_p"));
    in = wall(GW_ASCE7_22, GW_PART_WALL_ELEMENT, 0.5);
    assert_true(noted(force_of(&in).notes, "C_AR and R_po of the part were not seen"));
    in.car = 1, in.rpo = 1.5;
    assert_false(noted(force_of(&in).notes, "C_AR and R_po of the part were not seen"));
    assert_true(noted(force_of(&in).notes, "the force of ASCE 7-22 was not seen"));
    in.ap = 1;
    assert_true(noted(force_of(&in).notes, "not used in asce7-22"));
}

/* A period that is not known gives the most; a short one, the same; a_1 and a_2 have no step at 0.4 s. */
static void height_factor_of_22(void **state)
{
    (void)state;
    for (double z = 0.1; z < 1.05; z += 0.3) {
        struct gw_seismic_force_case in = wall(GW_ASCE7_22, GW_PART_WALL_ELEMENT, z);
        const double unknown = force_of(&in).hf;
        double last = unknown;
        for (double period = 0.1; period < 6; period *= 1.3) {
            in.period = period;
            double hf = force_of(&in).hf;
            assert_true(hf <= last + 1e-12);
            assert_true(hf >= 1);
            if (period <= 0.4) assert_near(hf, unknown, 1e-12);
            last = hf;
        }
        in.period = 0.4 * (1 - 1e-9);
        double before = force_of(&in).hf;
        in.period = 0.4 * (1 + 1e-9);
        assert_near(force_of(&in).hf, before, 1e-7);
    }
}

static void ductility_of_22(void **state)
{
    (void)state;
    struct gw_seismic_force_case in = wall(GW_ASCE7_22, GW_PART_WALL_ELEMENT, 0.6), half;
    in.response_modification = 6, in.overstrength = 2.5, in.structure_importance = 1.25;
    assert_near(force_of(&in).rmu, sqrt(1.1 * 6 / (1.25 * 2.5)), 1e-12);
    in.response_modification = 3; /* 1.03, raised */
    assert_near(force_of(&in).rmu, 1.3, 1e-12);
    half = in;
    half.overstrength = GW_ABSENT;
    assert_int_equal(refusal(&half, "overstrength"), GW_MISSING);
    half = in;
    half.structure_importance = GW_ABSENT;
    assert_int_equal(refusal(&half, "structure_importance"), GW_MISSING);
    in.height_ratio = 0;
    assert_near(force_of(&in).rmu, 1, 0);
    assert_near(force_of(&in).hf, 1, 0);
}

static void what_a_force_needs(void **state)
{
    (void)state;
    struct gw_seismic_force_case in = wall(GW_EDITION_UNSET, GW_PART_FASTENERS, 0.6);
    assert_int_equal(refusal(&in, "edition"), GW_MISSING);
    in.edition = GW_ASCE7_16;
    in.sds = GW_ABSENT;
    assert_int_equal(refusal(&in, "sds"), GW_MISSING);
    in.sds = 0.5, in.weight = -3;
    assert_int_equal(refusal(&in, "weight"), GW_BAD_VALUE);
    in.weight = INFINITY;
    assert_int_equal(refusal(&in, "weight"), GW_BAD_VALUE);
    in.weight = 3, in.height_ratio = -0.1;
    assert_int_equal(refusal(&in, "height_ratio"), GW_BAD_VALUE);
    in.height_ratio = 0.1, in.rp = 0;
    assert_int_equal(refusal(&in, "rp"), GW_BAD_VALUE);
}

static void importance_factors(void **state)
{
    (void)state;
    struct gw_engine engine = engine_new();
    const double want[] = {1, 1, 1.25, 1.5};
    double factor;
    for (int risk = GW_RISK_I; risk <= GW_RISK_IV; risk++) {
        assert_int_equal(gw_structure_importance(&factor, (enum gw_risk)risk, &engine), GW_OK);
        assert_near(factor, want[risk - GW_RISK_I], 0);
        assert_int_equal(gw_component_importance(&factor, (enum gw_risk)risk, GW_NO, &engine), GW_OK);
        assert_near(factor, risk == GW_RISK_IV ? 1.5 : 1, 0);
        assert_int_equal(gw_component_importance(&factor, (enum gw_risk)risk, GW_YES, &engine), GW_OK);
        assert_near(factor, 1.5, 0);
    }
    assert_int_equal(gw_structure_importance(&factor, GW_RISK_UNSET, &engine), GW_MISSING);
    assert_int_equal(gw_component_importance(&factor, GW_RISK_UNSET, GW_UNSAID, &engine), GW_MISSING);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(force_stays_between_its_limits),
        cmocka_unit_test(force_grows_with_what_drives_it),
        cmocka_unit_test(above_the_roof_as_at_the_roof),
        cmocka_unit_test(fasteners_take_their_own_force),
        cmocka_unit_test(coefficients_given_stand_before_the_table),
        cmocka_unit_test(height_factor_of_22),
        cmocka_unit_test(ductility_of_22),
        cmocka_unit_test(what_a_force_needs),
        cmocka_unit_test(importance_factors),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
