/* Blast: the comparison of ratings, what holds the glass. */
#include "blast_support.h"

static enum gw_bool compare(double p, double i, enum gw_hazard hazard, enum gw_condition condition)
{
    const struct gw_blast_performance demand = {{4 * PSI, 0.028 * PSI}, GW_HAZARD_LOW, GW_CONDITION_UNSET};
    const struct gw_blast_performance rating = {{p * PSI, i * PSI / 1000}, hazard, condition};
    struct gw_blast_verdict out;
    gw_blast_compare(&out, &demand, &rating);
    assert_non_null(out.why);
    return out.meets;
}

static void both_numbers_are_met(void **state)
{
    (void)state;
    assert_int_equal(compare(4, 28, GW_HAZARD_LOW, GW_CONDITION_UNSET), GW_YES);
    assert_int_equal(compare(6, 41, GW_HAZARD_NO_BREAK, GW_CONDITION_UNSET), GW_YES);
    assert_int_equal(compare(10, 27.9, GW_HAZARD_MINIMAL, GW_CONDITION_UNSET), GW_NO); /* more pressure, less impulse */
    assert_int_equal(compare(3.9, 89, GW_HAZARD_MINIMAL, GW_CONDITION_UNSET), GW_NO);
    assert_int_equal(compare(4, 28, GW_HAZARD_HIGH, GW_CONDITION_UNSET), GW_NO);
    assert_int_equal(compare(4, 28, GW_HAZARD_UNSET, GW_CONDITION_UNSET), GW_UNSAID);
    assert_int_equal(compare(4, 28, GW_HAZARD_UNSET, GW_CONDITION_2), GW_UNSAID); /* the scales do not translate */
    assert_int_equal(compare(3, 28, GW_HAZARD_UNSET, GW_CONDITION_2), GW_NO);
    assert_int_equal(compare(GW_ABSENT, 28, GW_HAZARD_LOW, GW_CONDITION_UNSET), GW_UNSAID);
    assert_int_equal(compare(GW_ABSENT, 20, GW_HAZARD_LOW, GW_CONDITION_UNSET), GW_NO);
    assert_false(gw_blast_covers((struct gw_blast_pair){10, 1}, (struct gw_blast_pair){4, 2}));
    assert_true(gw_blast_covers((struct gw_blast_pair){10, 2}, (struct gw_blast_pair){4, 2}));
}

static void demands_left_open(void **state)
{
    (void)state;
    struct gw_blast_verdict out;
    const struct gw_blast_performance rating = {{5e4, 500}, GW_HAZARD_NO_HAZARD, GW_CONDITION_3A};
    struct gw_blast_performance demand = {{4e4, 300}, GW_HAZARD_UNSET, GW_CONDITION_UNSET};
    gw_blast_compare(&out, &demand, &rating);
    assert_int_equal(out.meets, GW_UNSAID);
    assert_near(out.pressure_use, 0.8, 1e-12);
    assert_near(out.impulse_use, 0.6, 1e-12);
    demand.condition = GW_CONDITION_3A;
    gw_blast_compare(&out, &demand, &rating);
    assert_int_equal(out.meets, GW_YES);
    demand.condition = GW_CONDITION_2;
    gw_blast_compare(&out, &demand, &rating);
    assert_int_equal(out.meets, GW_NO);
    demand.load.impulse = GW_ABSENT;
    gw_blast_compare(&out, &demand, &rating);
    assert_int_equal(out.meets, GW_UNSAID);
}

static void protection(void **state)
{
    const enum gw_hazard admitted[] = {GW_HAZARD_LOW, GW_HAZARD_VERY_LOW, GW_HAZARD_MINIMAL, GW_HAZARD_NO_HAZARD};
    enum gw_hazard hazard;
    for (int i = 0; i < 4; i++) {
        assert_int_equal(
            gw_blast_admitted(&hazard, (enum gw_protection_level)(GW_BLAST_PROTECTION_VERY_LOW + i), *state), GW_OK);
        assert_int_equal(hazard, admitted[i]);
    }
    assert_int_equal(gw_blast_admitted(&hazard, GW_BLAST_PROTECTION_UNSET, *state), GW_MISSING);
}

static double attachment(struct gw_engine *engine, enum gw_blast_criteria criteria, double load, double resistance)
{
    double value = GW_ABSENT;
    const struct gw_blast_support in = {criteria, 20 * 0.0254, 30 * 0.0254, load * PSF, resistance * PSF};
    assert_int_equal(gw_blast_attachment(&value, &in, engine), GW_OK);
    return value / PSF;
}

/* A small strong lite: anchors for twice the 3-second load where the edition asks for the glass would be far too weak.
 */
static void small_lites_govern_anchors(void **state)
{
    struct gw_engine *engine = *state;
    assert_near(attachment(engine, GW_BLAST_UFC_2007, 50, 680), 680, 1e-9);
    assert_near(attachment(engine, GW_BLAST_UFC_2007, 50, 680) * 20 * 30 / 144, 2833, 0.5); /* lb on the lite */
    assert_near(attachment(engine, GW_BLAST_UFC_2007, 50, 90), 100, 1e-9);
    assert_near(attachment(engine, GW_BLAST_UFC_2012, 50, 680), 1360, 1e-9);
    assert_near(attachment(engine, GW_BLAST_F2248_03, 50, 680), 100, 1e-9);
    assert_near(attachment(engine, GW_BLAST_UFC_2003, GW_ABSENT, GW_ABSENT) * PSF, 75000, 1e-6);
    double value;
    struct gw_blast_support in = {GW_BLAST_UFC_2007, 1, 1, 50 * PSF, GW_ABSENT};
    assert_int_equal(gw_blast_attachment(&value, &in, engine), GW_MISSING);
    assert_string_equal(engine->fault.key, "glass_resistance");
    in = (struct gw_blast_support){GW_BLAST_UFC_2003, 1.2, 2.4, GW_ABSENT, GW_ABSENT};
    assert_int_equal(gw_blast_attachment(&value, &in, engine), GW_OK);
    assert_near(value, 30000, 1e-9);
    in.height = 2.6; /* 3.12 m2 */
    assert_int_equal(gw_blast_attachment(&value, &in, engine), GW_OUTSIDE_METHOD);
    in.criteria = GW_BLAST_F2248_09;
    assert_int_equal(gw_blast_attachment(&value, &in, engine), GW_OUTSIDE_METHOD);
}

static void edges_and_beads(void **state)
{
    double span_over, pressure;
    struct gw_blast_bead bead;
    struct gw_engine *engine = *state;
    struct gw_blast_support in = {GW_BLAST_F2248_03, 1, 1, 2400, 5000};
    assert_int_equal(gw_blast_edge_limit(&span_over, &pressure, &in, engine), GW_OK);
    assert_near(span_over, 160, 0);
    assert_near(pressure, 2400, 1e-9);
    in.criteria = GW_BLAST_UFC_2012;
    assert_int_equal(gw_blast_edge_limit(&span_over, &pressure, &in, engine), GW_OK);
    assert_near(span_over, 60, 0);
    assert_near(pressure, 10000, 1e-9);
    in.criteria = GW_BLAST_UFC_2003;
    assert_int_equal(gw_blast_edge_limit(&span_over, &pressure, &in, engine), GW_OUTSIDE_METHOD);
    assert_int_equal(gw_blast_bead(&bead, GW_BLAST_F2248_09, 0.006, engine), GW_OK);
    assert_near(bead.least, 0.010, 1e-12); /* the floor */
    assert_near(bead.most, 0.012, 1e-12);
    assert_int_equal(gw_blast_bead(&bead, GW_BLAST_F2248_03, 0.006, engine), GW_OK);
    assert_near(bead.least, 0.006, 1e-12); /* had no floor */
    assert_int_equal(gw_blast_bead(&bead, GW_BLAST_F2248_09, 0.012, engine), GW_OK);
    assert_near(bead.least, 0.012, 1e-12);
    assert_near(bead.thickness, 0.005, 1e-12);
    assert_int_equal(gw_blast_bead(&bead, GW_BLAST_UFC_2003, 0.006, engine), GW_OK);
    assert_near(bead.least, 0.0095, 1e-12);
    assert_near(bead.dry, 0.025, 1e-12);
    assert_false(gw_given(bead.most));
    assert_int_equal(gw_blast_bead(&bead, GW_BLAST_UFC_2012, 0.006, engine), GW_OUTSIDE_METHOD);
}

static void scales_are_whole(void **state)
{
    (void)state;
    const struct gw_tables *t = gw_tables_standard();
    assert_int_equal(GW_N_BLAST_CONDITION, GW_CONDITION_5);
    assert_int_equal(GW_N_BLAST_HAZARD, GW_HAZARD_HIGH);
    for (int i = 0; i < GW_CONDITION_5; i++) assert_int_equal(t->blast_condition[i].condition, i + 1);
    for (int i = 0; i < GW_HAZARD_HIGH; i++) assert_int_equal(t->blast_hazard[i].hazard, i + 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        ENGINE_TEST(both_numbers_are_met),       ENGINE_TEST(demands_left_open), ENGINE_TEST(protection),
        ENGINE_TEST(small_lites_govern_anchors), ENGINE_TEST(edges_and_beads),   ENGINE_TEST(scales_are_whole),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
