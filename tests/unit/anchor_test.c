/* Anchors, structural silicone, sealant joints: combinations, the fasteners' own force, proportions of beads. */
#include "support.h"

#include "galeward/anchor.h"
#include "galeward/silicone.h"

static const double IN = 0.0254, PSI = 6894.757293168361;

static struct gw_engine start(void)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    return engine;
}

static struct gw_anchor_case anchor(double eccentricity)
{
    return (struct gw_anchor_case){.pressure_in = 1437,
                                   .pressure_out = 2011,
                                   .wall_weight = 479,
                                   .spacing = 1.53,
                                   .tributary_height = 3.97,
                                   .eccentricity = eccentricity,
                                   .bolt_arm = 0.127,
                                   .bolts = 2,
                                   .prying = GW_ABSENT,
                                   .clip_arm = GW_ABSENT};
}

static struct gw_anchor_loads loads(double in, double out, double body, double fasteners)
{
    return (struct gw_anchor_loads){{in}, {out}, body, fasteners, GW_ABSENT};
}

static struct gw_anchor_reactions reactions_of(const struct gw_anchor_case *in)
{
    struct gw_engine engine = start();
    struct gw_anchor_reactions out;
    assert_int_equal(gw_anchor_reactions(&out, in, &engine), GW_OK);
    return out;
}

static struct gw_anchor_combined combined_of(const struct gw_anchor_case *in, const struct gw_anchor_loads *l,
                                             enum gw_design design)
{
    struct gw_engine engine = start();
    struct gw_anchor_combined out;
    assert_int_equal(gw_anchor_combine(&out, in, l, design, &engine), GW_OK);
    return out;
}

static void reactions_are_linear(void **state)
{
    (void)state;
    struct gw_anchor_case in = anchor(0.1);
    const struct gw_anchor_reactions one = reactions_of(&in);
    in.pressure_in *= 1.7;
    in.pressure_out *= 1.7;
    in.wall_weight *= 1.7;
    const struct gw_anchor_reactions more = reactions_of(&in);
    assert_near(more.in, 1.7 * one.in, 1e-9);
    assert_near(more.bolt_tension, 1.7 * one.bolt_tension, 1e-9);
    assert_near(more.dead_moment, 1.7 * one.dead_moment, 1e-9);
    assert_near(one.bolt_tension, (one.out + one.dead * 0.1 / 0.127) / 2, 1e-9);
    in.spacing *= 1.3;
    assert_near(reactions_of(&in).dead, 1.3 * more.dead, 1e-9);
}

static void prying_and_clips(void **state)
{
    (void)state;
    struct gw_anchor_case in = anchor(0.1);
    const struct gw_anchor_reactions plain = reactions_of(&in);
    in.prying = 1.25;
    in.clip_arm = 0.06;
    const struct gw_anchor_reactions out = reactions_of(&in);
    assert_near(out.bolt_tension, 1.25 * plain.bolt_tension, 1e-9);
    assert_near(out.clip_moment, 0.06 * plain.out, 1e-9);
    assert_true(isnan(plain.clip_moment));
}

/* A slotted anchor holds no weight: no shear, no couple. */
static void wind_anchors_carry_no_weight(void **state)
{
    (void)state;
    struct gw_anchor_case in = anchor(0.1);
    in.carries = GW_CARRIES_WIND;
    in.bolt_arm = GW_ABSENT;
    const struct gw_anchor_reactions out = reactions_of(&in);
    assert_near(out.dead, 0, 0);
    assert_near(out.bolt_shear, 0, 0);
    assert_near(out.bolt_tension, out.out / 2, 1e-9);
}

static void weight_inside_relieves_to_nothing(void **state)
{
    (void)state;
    struct gw_anchor_case in = anchor(-0.5);
    in.pressure_out = 100;
    assert_near(reactions_of(&in).bolt_tension, 0, 0);
}

/* Every combination from its factors, both designs. */
static void combinations_by_hand(void **state)
{
    (void)state;
    static const struct {
        enum gw_design design;
        const char *names[5];
        double dead[5], wind[5], seismic[5];
    } designs[] = {{GW_DESIGN_ASD,
                    {"D", "D + 0.6 W", "0.6 D + 0.6 W", "D + 0.7 E", "0.6 D + 0.7 E"},
                    {1, 1, 0.6, 1, 0.6},
                    {0, 0.6, 0.6, 0, 0},
                    {0, 0, 0, 0.7, 0.7}},
                   {GW_DESIGN_LRFD,
                    {"1.4 D", "1.2 D + 1.0 W", "0.9 D + 1.0 W", "1.2 D + 1.0 E", "0.9 D + 1.0 E"},
                    {1.4, 1.2, 0.9, 1.2, 0.9},
                    {0, 1, 1, 0, 0},
                    {0, 0, 0, 1, 1}}};
    const struct gw_anchor_case in = anchor(0.1);
    const struct gw_anchor_loads l = loads(1900, 2600, 1388, 4337);
    const double area = 1.53 * 3.97, dead = 479 * area;
    for (size_t d = 0; d < 2; d++) {
        const struct gw_anchor_combined out = combined_of(&in, &l, designs[d].design);
        assert_int_equal(out.n, 5);
        for (size_t i = 0; i < 5; i++) {
            const struct gw_anchor_combination *c = &out.each[i];
            const double wind = designs[d].wind[i], e = designs[d].seismic[i], f = designs[d].dead[i];
            assert_string_equal(c->name, designs[d].names[i]);
            assert_near(c->in, wind * 1900 * area + e * 1388, 1e-6);
            assert_near(c->out, wind * 2600 * area + e * 1388, 1e-6);
            assert_near(c->dead, f * dead, 1e-6);
            assert_near(c->bolt_tension, (wind * 2600 * area + e * 4337 + f * dead * 0.1 / 0.127) / 2, 1e-6);
            assert_near(c->bolt_shear, f * dead / 2, 1e-6);
        }
    }
}

/* The fasteners' seismic force is not the body's: with light wind it governs the bolts and nothing else. */
static void fasteners_have_a_force_of_their_own(void **state)
{
    (void)state;
    const struct gw_anchor_case in = anchor(0);
    const struct gw_anchor_loads light = loads(200, 200, 1388, 4337), equal = loads(200, 200, 1388, 1388);
    const struct gw_anchor_combined out = combined_of(&in, &light, GW_DESIGN_LRFD);
    assert_near(out.bolt_tension, 4337 / 2.0, 1e-9);
    assert_near(out.out, 1388, 1e-9);
    assert_string_equal(out.each[out.worst].name, "1.2 D + 1.0 E");
    assert_true(out.bolt_tension > 3 * combined_of(&in, &equal, GW_DESIGN_LRFD).bolt_tension);
    struct gw_engine engine = start();
    struct gw_anchor_combined refused;
    const struct gw_anchor_loads body = loads(200, 200, 1388, GW_ABSENT), bolts = loads(200, 200, GW_ABSENT, 4337);
    assert_int_equal(gw_anchor_combine(&refused, &in, &body, GW_DESIGN_LRFD, &engine), GW_MISSING);
    assert_string_equal(engine.fault.key, "seismic_fasteners");
    assert_int_equal(gw_anchor_combine(&refused, &in, &bolts, GW_DESIGN_LRFD, &engine), GW_MISSING);
    assert_string_equal(engine.fault.key, "seismic_body");
    assert_int_equal(gw_anchor_combine(&refused, &in, &light, GW_DESIGN_UNSET, &engine), GW_MISSING);
}

static void without_seismic_three_combinations(void **state)
{
    (void)state;
    const struct gw_anchor_case in = anchor(0.1);
    const struct gw_anchor_loads l = loads(1900, 2600, GW_ABSENT, GW_ABSENT);
    const struct gw_anchor_combined asd = combined_of(&in, &l, GW_DESIGN_ASD);
    const struct gw_anchor_combined lrfd = combined_of(&in, &l, GW_DESIGN_LRFD);
    assert_int_equal(asd.n, 3);
    assert_int_equal(lrfd.n, 3);
    assert_near(asd.out / lrfd.out, 0.6, 1e-12); /* the two levels are not to be mixed */
    assert_true(lrfd.bolt_tension > asd.bolt_tension);
}

static void wrong_anchors_are_refused(void **state)
{
    (void)state;
    struct gw_anchor_reactions out;
    struct gw_anchor_case cases[6];
    static const char *const keys[] = {"pressure_out", "spacing", "bolts", "bolt_arm", "prying", "eccentricity"};
    static const enum gw_status wanted[] = {GW_BAD_VALUE, GW_MISSING,   GW_BAD_VALUE,
                                            GW_MISSING,   GW_BAD_VALUE, GW_MISSING};
    for (size_t i = 0; i < 6; i++) cases[i] = anchor(0.1);
    cases[0].pressure_out = -3;
    cases[1].spacing = GW_ABSENT;
    cases[2].bolts = 0;
    cases[3].bolt_arm = GW_ABSENT;
    cases[4].prying = 0.5;
    cases[5].eccentricity = GW_ABSENT;
    for (size_t i = 0; i < 6; i++) {
        struct gw_engine engine = start();
        assert_int_equal(gw_anchor_reactions(&out, &cases[i], &engine), wanted[i]);
        assert_string_equal(engine.fault.key, keys[i]);
    }
}

/* Movement and tolerance go each way. */
static void slots_take_both_ways(void **state)
{
    (void)state;
    struct gw_engine engine = start();
    double slot;
    assert_int_equal(gw_anchor_slot(&slot, 0.0127, 0.019, 0.006, &engine), GW_OK);
    assert_near(slot, 0.0127 + 2 * 0.025, 1e-15);
}

/* Silicone -----------------------------------------------------------------------------------------------------------
 */

static struct gw_silicone_case bead(double width, double height, double pressure)
{
    return (struct gw_silicone_case){.width = width,
                                     .height = height,
                                     .pressure = pressure,
                                     .allowable = GW_ABSENT,
                                     .weight = GW_ABSENT,
                                     .dead_allowable = GW_ABSENT,
                                     .movement = GW_ABSENT,
                                     .strain = GW_ABSENT,
                                     .bite = GW_ABSENT,
                                     .thickness = GW_ABSENT};
}

static struct gw_silicone_result silicone_of(const struct gw_silicone_case *in)
{
    struct gw_engine engine = start();
    struct gw_silicone_result out;
    assert_int_equal(gw_silicone(&out, in, &engine), GW_OK);
    return out;
}

static bool whole_steps(double value, double step) { return fabs(value / step - round(value / step)) < 1e-6; }

/* Whatever is asked of it, a designed bead is within its proportions, on its steps, and not overused. */
static void designed_beads_hold_and_fit(void **state)
{
    (void)state;
    for (double q = 150; q < 6000; q *= 1.37)
        for (double side = 0.4; side < 2.6; side += 0.31)
            for (double movement = 0; movement < 0.011; movement += 0.0021)
                for (double weight = 0; weight < 2000; weight += 613) {
                    struct gw_silicone_case in = bead(side, 1.83, q);
                    in.movement = movement;
                    in.strain = 0.17;
                    in.weight = weight;
                    const struct gw_silicone_result out = silicone_of(&in);
                    assert_int_equal(out.fits, GW_YES);
                    assert_true(out.utilization <= 1 + 1e-9);
                    assert_true(out.aspect >= 1 - 1e-9 && out.aspect <= 3 + 1e-9);
                    assert_true(whole_steps(out.bite, IN / 8) && whole_steps(out.thickness, IN / 16));
                    assert_true(out.thickness >= IN / 4 - 1e-12);
                    assert_true(out.bite >= out.bite_wind - 1e-12);
                }
}

static void the_short_side_counts_and_bite_is_linear(void **state)
{
    (void)state;
    const struct gw_silicone_case tall = bead(1.37, 2.61, 1931), flat = bead(2.61, 1.37, 1931);
    const struct gw_silicone_case strong = bead(1.37, 2.61, 2 * 1931.0), longer = bead(1.37, 3.5, 1931);
    const double bite = silicone_of(&tall).bite_wind;
    assert_near(bite, 1931 * 1.37 / 2 / (20 * PSI), 1e-12);
    assert_near(silicone_of(&flat).bite_wind, bite, 1e-15);
    assert_near(silicone_of(&longer).bite_wind, bite, 1e-15);
    assert_near(silicone_of(&strong).bite_wind, 2 * bite, 1e-12);
}

/* A bead of just the thickness that the movement asks for stretches to just the strain. */
static void movement_is_used_up_at_its_thickness(void **state)
{
    (void)state;
    struct gw_silicone_case in = bead(1.37, 2.61, 931);
    in.movement = 0.0047;
    in.strain = 0.13;
    in.thickness = silicone_of(&in).thickness_movement;
    in.bite = 1.2 * in.thickness;
    const struct gw_silicone_result out = silicone_of(&in);
    assert_near(out.strain, 0.13, 1e-12);
    assert_true(out.utilization >= 1 - 1e-12);
    in.strain = GW_ABSENT;
    struct gw_engine engine = start();
    struct gw_silicone_result refused;
    assert_int_equal(gw_silicone(&refused, &in, &engine), GW_MISSING);
    assert_string_equal(engine.fault.key, "strain");
}

static void offered_beads_out_of_shape_are_said(void **state)
{
    (void)state;
    const struct {
        double bite, thickness;
        enum gw_bool fits;
    } cases[] = {{0.5, 0.25, GW_YES},  {0.75, 0.25, GW_YES}, {0.76, 0.25, GW_NO},
                 {0.25, 0.25, GW_YES}, {0.25, 0.3, GW_NO},   {0.5, 0.24, GW_NO}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_silicone_case in = bead(1.1, 1.4, 700);
        in.bite = cases[i].bite * IN;
        in.thickness = cases[i].thickness * IN;
        assert_int_equal(silicone_of(&in).fits, cases[i].fits);
    }
}

static void high_stresses_need_approval(void **state)
{
    (void)state;
    struct gw_silicone_case in = bead(1.1, 1.4, 700);
    const unsigned quiet = silicone_of(&in).n_notes;
    in.allowable = 30 * PSI;
    assert_int_equal(silicone_of(&in).n_notes, quiet + 1);
    in.allowable = 30.1 * PSI;
    struct gw_engine engine = start();
    struct gw_silicone_result out;
    assert_int_equal(gw_silicone(&out, &in, &engine), GW_OUTSIDE_METHOD);
    assert_string_equal(engine.fault.key, "allowable");
}

static void joints_widen_with_movement(void **state)
{
    (void)state;
    struct gw_joint_result one, two, out;
    struct gw_engine engine = start();
    const struct gw_joint_case a = {0.0047, 0.25, 0.003, GW_ABSENT}, b = {0.0047, 0.5, 0.003, 0.004};
    const struct gw_joint_case low = {0.0047, 0.12, 0.003, GW_ABSENT}, percent = {0.0047, 25, 0.003, GW_ABSENT};
    assert_int_equal(gw_sealant_joint(&one, &a, &engine), GW_OK);
    assert_int_equal(gw_sealant_joint(&two, &b, &engine), GW_OK);
    assert_near(one.width, 0.0047 * 4 + 0.003, 1e-15);
    assert_near(two.width, 0.0047 * 2 + 0.003, 1e-15);
    assert_near(two.extension, hypot(two.width, 0.004) - two.width, 1e-15);
    assert_near(two.depth, IN / 4, 1e-12);
    assert_true(isnan(one.extension));
    assert_int_equal(gw_sealant_joint(&out, &low, &engine), GW_OUTSIDE_METHOD);
    assert_int_equal(gw_sealant_joint(&out, &percent, &engine), GW_BAD_VALUE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reactions_are_linear),
        cmocka_unit_test(prying_and_clips),
        cmocka_unit_test(wind_anchors_carry_no_weight),
        cmocka_unit_test(weight_inside_relieves_to_nothing),
        cmocka_unit_test(combinations_by_hand),
        cmocka_unit_test(fasteners_have_a_force_of_their_own),
        cmocka_unit_test(without_seismic_three_combinations),
        cmocka_unit_test(wrong_anchors_are_refused),
        cmocka_unit_test(slots_take_both_ways),
        cmocka_unit_test(designed_beads_hold_and_fit),
        cmocka_unit_test(the_short_side_counts_and_bite_is_linear),
        cmocka_unit_test(movement_is_used_up_at_its_thickness),
        cmocka_unit_test(offered_beads_out_of_shape_are_said),
        cmocka_unit_test(high_stresses_need_approval),
        cmocka_unit_test(joints_widen_with_movement),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
