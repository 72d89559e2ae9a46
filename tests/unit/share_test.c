/* Sharing between two parts of a member: hand figures, balance, the usual mistakes. */
#include "bending_support.h"

static struct gw_share two_parts(void)
{
    struct gw_share s = {.moment = 60 * KIP_IN,
                         .n_parts = 2,
                         .shear = GW_ABSENT,
                         .gap = GW_ABSENT,
                         .span = GW_ABSENT,
                         .per_gap = GW_ABSENT};
    s.parts[0] = (struct gw_share_part){10100 * KSI, 8 * pow(IN, 4), 2.67 * pow(IN, 3), 2 * IN * IN, 0.03, GW_ABSENT};
    s.parts[1] =
        (struct gw_share_part){29000 * KSI, 2.5 * pow(IN, 4), 1.25 * pow(IN, 3), 1.4 * IN * IN, 0.05, GW_ABSENT};
    return s;
}

static struct gw_share_result share(const struct gw_share *in)
{
    struct gw_share_result out;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    enum gw_status status = gw_share_moment(&out, in, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

/* Parts that are not joined for shear: their distance counts for nothing. Joined, it does. */
static void mistake_sum_as_composite(void **state)
{
    (void)state;
    struct gw_share in = two_parts();
    const double sum = (8 + 29.0 / 10.1 * 2.5) * pow(IN, 4);
    const struct gw_share_result apart = share(&in);
    near_to(apart.equivalent_inertia, sum, 1e-12);
    in.parts[1].centroid = 0.25;
    near_to(share(&in).equivalent_inertia, sum, 1e-12);
    in.parts[1].centroid = in.parts[0].centroid;
    in.composite = true;
    const struct gw_share_result together = share(&in);
    near_to(together.equivalent_inertia, sum, 1e-12); /* one on the other: no difference */
    in.parts[1].centroid += 0.02;
    const struct gw_share_result joined = share(&in);
    const double a = 2, b = 29.0 / 10.1 * 1.4;
    near_to(joined.equivalent_inertia, sum + a * b / (a + b) * IN * IN * 0.02 * 0.02, 1e-12);
}

static void moments_and_deflections_add_up(void **state)
{
    (void)state;
    struct gw_share in = two_parts();
    in.n_parts = 3;
    in.parts[2] = (struct gw_share_part){70e9, 3.1e-7, 9e-6, 1e-3, 0.1, GW_ABSENT};
    for (int composite = 0; composite < 2; composite++) {
        in.composite = composite;
        in.shear = composite ? 1234 : GW_ABSENT;
        const struct gw_share_result out = share(&in);
        double shares = 0, moment = 0, axial = 0;
        for (int i = 0; i < 3; i++) {
            shares += out.shares[i];
            moment += out.moments[i];
            if (composite) moment -= out.axial[i] * (in.parts[i].centroid - out.neutral_axis);
            if (composite) axial += out.axial[i];
            /* one curvature */
            near_to(out.moments[i] / (in.parts[i].elastic_modulus * in.parts[i].inertia),
                    in.moment / (in.parts[0].elastic_modulus * out.equivalent_inertia), 1e-12);
        }
        assert_near(shares, 1, 1e-12);
        near_to(moment, in.moment, 1e-12);
        assert_near(axial, 0, 1e-9);
    }
}

/* Part 1 at the contact moment has just deflected by the gap; beyond it the moment is continuous. */
static void gaps_close(void **state)
{
    (void)state;
    struct gw_share in = two_parts();
    in.gap = 0.0013;
    in.span = 3.7;
    const double ei = in.parts[0].elastic_modulus * in.parts[0].inertia, m0 = share(&in).contact_moment;
    const double load = 8 * m0 / (3.7 * 3.7);
    near_to(5 * load * pow(3.7, 4) / (384 * ei), in.gap, 1e-12);
    in.moment = m0 * (1 + 1e-9);
    const struct gw_share_result at = share(&in);
    near_to(at.moments[0], m0, 1e-8);
    assert_near(at.moments[1], 0, 1e-6 * m0);
    in.moment = 10 * m0;
    const struct gw_share_result loose = share(&in);
    near_to(loose.moments[0] + loose.moments[1], in.moment, 1e-12);
    in.gap = 0;
    const struct gw_share_result tight = share(&in);
    assert_true(loose.moments[0] > tight.moments[0]);
    in.gap = in.span = GW_ABSENT;
    near_to(tight.moments[0], share(&in).moments[0], 1e-12);
    in.gap = 0.0013;
    in.per_gap = m0 / 0.0013;
    near_to(share(&in).contact_moment, m0, 1e-12);
}

static void interlock_forces_balance(void **state)
{
    (void)state;
    struct gw_share in = two_parts();
    in.parts[0].load = 913, in.parts[1].load = 0;
    const struct gw_share_result out = share(&in);
    assert_near(out.interlock[0] + out.interlock[1], 0, 1e-9);
    near_to(out.interlock[0], 913 * out.shares[1], 1e-12); /* it keeps its own share */
    in.parts[1].load = -913;
    near_to(share(&in).interlock[0], 913.0, 1e-12);
}

static void refuse_share(const struct gw_share *in, enum gw_status status, const char *key)
{
    struct gw_share_result out;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    assert_int_equal(gw_share_moment(&out, in, &engine), status);
    assert_string_equal(engine.fault.key, key);
}

static void wrong_shares_are_refused(void **state)
{
    (void)state;
    const struct gw_share good = two_parts();
    struct gw_share in = good;
    in.moment = -1, refuse_share(&in, GW_BAD_VALUE, "moment"), in = good;
    in.moment = GW_ABSENT, refuse_share(&in, GW_MISSING, "moment"), in = good;
    in.n_parts = 0, refuse_share(&in, GW_OUTSIDE_METHOD, "parts"), in = good;
    in.parts[1].inertia = 0, refuse_share(&in, GW_BAD_VALUE, "inertia"), in = good;
    in.span = 3, refuse_share(&in, GW_MISSING, "gap"), in = good;
    in.gap = 0.001, refuse_share(&in, GW_MISSING, "span"), in = good;
    in.gap = 0.001, in.span = 3, in.per_gap = 5, refuse_share(&in, GW_BAD_VALUE, "span"), in = good;
    in.gap = -0.001, in.span = 3, refuse_share(&in, GW_BAD_VALUE, "gap"), in = good;
    in.gap = 0.001, in.span = 3, in.composite = true, refuse_share(&in, GW_BAD_VALUE, "gap"), in = good;
    in.shear = 3, refuse_share(&in, GW_BAD_VALUE, "shear"), in = good;
    in.parts[0].load = 3, refuse_share(&in, GW_MISSING, "loads"), in = good;
    in.parts[0].load = in.parts[1].load = 3, in.composite = true, refuse_share(&in, GW_BAD_VALUE, "loads"), in = good;
    in.composite = true, in.parts[0].area = GW_ABSENT, refuse_share(&in, GW_MISSING, "area"), in = good;
    in.composite = true, in.parts[0].centroid = GW_ABSENT, refuse_share(&in, GW_MISSING, "centroid");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(mistake_sum_as_composite),
        cmocka_unit_test(moments_and_deflections_add_up),
        cmocka_unit_test(gaps_close),
        cmocka_unit_test(interlock_forces_balance),
        cmocka_unit_test(wrong_shares_are_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
