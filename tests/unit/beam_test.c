/* Beams: extremes against samples; refusals, rooms and traces. */
#include "beam_support.h"

struct highest {
    double shear, moment, sag, rise, drop;
};

static struct highest sampled(const struct gw_beam_result *r, double length, int n)
{
    struct highest most = {0, 0, 0, 0, 0};
    for (int i = 0; i <= n; i++)
        for (int side = 0; side < 2; side++) {
            const struct gw_beam_point p = gw_beam_at(r, length * i / n, (enum gw_beam_side)side);
            most.shear = fmax(most.shear, fabs(p.shear));
            most.sag = fmax(most.sag, p.moment);
            most.moment = fmin(most.moment, p.moment);
            most.drop = fmax(most.drop, p.deflection);
            most.rise = fmin(most.rise, p.deflection);
        }
    return most;
}

/* No sample is beyond them, and the finest come close; each is the value at its place. */
static void extremes_bound_the_samples(void **state)
{
    (void)state;
    struct sample s;
    static struct gw_beam_result r;
    draw_from(107);
    for (int i = 0; i < 200; i++) {
        any_stable(&s, &r);
        const struct highest most = sampled(&r, s.beam.length, 160 * GRID);
        const double m = largest_moment(&r), y = fabs(r.deflection_max.value);
        const double drop = fmax(r.deflection_max.value, r.deflection_back.value);
        const double rise = fmin(r.deflection_max.value, r.deflection_back.value);
        assert_true(most.shear <= r.shear_max.value * (1 + 1e-10));
        assert_true(most.sag <= r.moment_max.value + 1e-10 * m && most.moment >= r.moment_min.value - 1e-10 * m);
        assert_true(most.drop <= drop + 1e-10 * y && most.rise >= rise - 1e-10 * y);
        assert_near(most.shear, r.shear_max.value, 1e-3 * r.shear_max.value);
        assert_near(most.sag, r.moment_max.value, 1e-3 * m);
        assert_near(most.moment, r.moment_min.value, 1e-3 * m);
        assert_near(most.drop, drop, 1e-3 * y);
        assert_near(most.rise, rise, 1e-3 * y);
        assert_near(gw_beam_at(&r, r.deflection_max.at, GW_BEAM_AFTER).deflection, r.deflection_max.value, 1e-10 * y);
        const double after = gw_beam_at(&r, r.moment_max.at, GW_BEAM_AFTER).moment;
        const double before = gw_beam_at(&r, r.moment_max.at, GW_BEAM_BEFORE).moment;
        assert_near(fmin(fabs(after - r.moment_max.value), fabs(before - r.moment_max.value)), 0, 1e-10 * m);
    }
}

static void chords_bound_the_samples(void **state)
{
    (void)state;
    struct sample s;
    static struct gw_beam_result r;
    draw_from(108);
    for (int i = 0; i < 300; i++) {
        any_stable(&s, &r);
        const double from = draw(0, 0.6) * s.beam.length, to = from + draw(0.05, 0.4) * s.beam.length;
        const double a = gw_beam_at(&r, from, GW_BEAM_AFTER).deflection,
                     b = gw_beam_at(&r, to, GW_BEAM_AFTER).deflection;
        const struct gw_beam_extreme far = gw_beam_from_chord(&r, from, to);
        double most = 0;
        for (int k = 0; k <= 2000; k++) {
            const double t = k / 2000.0, y = gw_beam_at(&r, from + t * (to - from), GW_BEAM_AFTER).deflection;
            most = fmax(most, fabs(y - a - t * (b - a)));
        }
        assert_true(most <= fabs(far.value) * (1 + 1e-9) + 1e-14);
        assert_near(most, fabs(far.value), 2e-3 * fabs(far.value) + 1e-14);
        assert_true(far.at >= from && far.at <= to);
    }
}

/* By hand: couple on a simple span, shear -C/L, moment jumps by C; a force makes the shear jump. */
static void sides_of_a_jump(void **state)
{
    (void)state;
    const double supports[] = {0, 4.1};
    const struct gw_beam_segment segment = {4.1, 70e9, 2e-6};
    const struct gw_beam_load loads[] = {{GW_BEAM_COUPLE, 1.3, 0, 820, 0}, {GW_BEAM_FORCE, 2.7, 0, 410, 0}};
    const struct gw_beam beam = {.length = 4.1,
                                 .supports = supports,
                                 .n_supports = 2,
                                 .loads = loads,
                                 .n_loads = 2,
                                 .segments = &segment,
                                 .n_segments = 1};
    static struct gw_beam_result r;
    must_solve(&r, &beam);
    const double left = -820 / 4.1 + 410 * 1.4 / 4.1;
    assert_near(r.reactions[0], left, 1e-9);
    assert_near(gw_beam_at(&r, 1.3, GW_BEAM_BEFORE).moment, left * 1.3, 1e-9);
    assert_near(gw_beam_at(&r, 1.3, GW_BEAM_AFTER).moment, left * 1.3 + 820, 1e-9);
    assert_near(gw_beam_at(&r, 2.7, GW_BEAM_BEFORE).shear, left, 1e-9);
    assert_near(gw_beam_at(&r, 2.7, GW_BEAM_AFTER).shear, left - 410, 1e-9);
    assert_false(gw_given(gw_beam_at(&r, 4.2, GW_BEAM_AFTER).moment));
    assert_false(gw_given(gw_beam_at(&r, -0.1, GW_BEAM_AFTER).moment));
    assert_true(gw_given(gw_beam_at(&r, 4.1, GW_BEAM_AFTER).moment));
}

/* Long rows of spans settle to fixed-ended ones: no digits are lost along the way. */
static void long_beams_keep_their_digits(void **state)
{
    (void)state;
    double supports[GW_BEAM_SUPPORTS];
    for (int i = 0; i < GW_BEAM_SUPPORTS; i++) supports[i] = 3.137 * i;
    const double length = supports[GW_BEAM_SUPPORTS - 1], w = 1283, l = 3.137;
    const struct gw_beam_segment segment = {length, 69.6e9, 3.35e-6};
    const struct gw_beam_load load = {GW_BEAM_SPREAD, 0, length, w, w};
    const struct gw_beam beam = {.length = length,
                                 .supports = supports,
                                 .n_supports = GW_BEAM_SUPPORTS,
                                 .loads = &load,
                                 .n_loads = 1,
                                 .segments = &segment,
                                 .n_segments = 1};
    static struct gw_beam_result r;
    must_solve(&r, &beam);
    assert_near(r.reactions[15], w * l, 1e-7 * w * l); /* what is left of the ends falls by 0.268 a span */
    assert_near(gw_beam_at(&r, supports[15], GW_BEAM_AFTER).moment, -w * l * l / 12, 1e-7 * w * l * l);
    assert_near(gw_beam_at(&r, 15.5 * l, GW_BEAM_AFTER).deflection, w * pow(l, 4) / (384 * 69.6e9 * 3.35e-6), 1e-9);
    for (int i = 0; i < GW_BEAM_SUPPORTS; i++)
        assert_near(r.reactions[i], r.reactions[GW_BEAM_SUPPORTS - 1 - i], 1e-10 * w * l);
}

static void refuses_with_reasons(void **state)
{
    struct world *w = *state;
    static const struct {
        const char *kind, *in, *key, *says;
    } cases[] = {
        {"beam", "length: 3 m, supports: [1 m]", "supports", "from 0 m to 3 m is held at fewer than two points"},
        {"beam", "length: 9 m, supports: [0 m, 4 m, 9 m], hinges: [1 m, 3 m]", "hinges", "from 0 m to 1 m"},
        {"beam", "length: 3 m", "supports", "no support"},
        {"beam", "length: 3 m, clamps: [0 m], supports: [3 m], hinges: [3 m]", "hinges", "joins nothing"},
        {"beam", "length: 3 m, clamps: [1 m], hinges: [1 m]", "hinges", "clamp at 1 m"},
        {"beam", "length: 3 m, supports: [0 m, 3.5 m]", "supports", "3.5 m is not on the beam, which is 3 m long"},
        {"beam", "length: 3 m, supports: [2 m, 1 m]", "supports", "1 m stands after 2 m"},
        {"beam", "length: 3 m, supports: [0 m, 0.2 mm]", "supports", "1/10000 of the length"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_calc_answer answer;
        const char *yaml =
            gw_format(&w->arena, "{%s, elastic_modulus: 70 GPa, inertia: 1e6 mm4, loads: [{at: 0.5 m, force: 1 N}]}",
                      cases[i].in);
        assert_false(gw_calc_run(&answer, &w->arena, gw_calc_find(cases[i].kind), node_of(w, yaml),
                                 gw_tables_standard(), GW_UNITS_NONE));
        if (!strstr(answer.error, cases[i].says)) print_error("%s: %s\n", cases[i].in, answer.error);
        assert_non_null(strstr(answer.error, cases[i].says));
        assert_string_equal(answer.error_key, cases[i].key);
    }
}

/* No later step of the same name, in words or not. */
static bool ends_its_sum(const struct gw_trace *trace, const struct gw_step *step)
{
    for (const struct gw_step *later = step + 1; later < trace->steps + trace->n; later++)
        if (strcmp(later->symbol, step->symbol) == 0) return false;
    return true;
}

/* The same answer, bit for bit, with a derivation and without; every step of random beams evaluates (trace_test
 * evaluates those of the reference cases). */
/* What lies behind the used part of a list is nobody's. */
static void assert_same(const struct gw_beam_result *a, const struct gw_beam_result *b)
{
    assert_int_equal(a->n_supports, b->n_supports);
    assert_int_equal(a->n_pieces, b->n_pieces);
    assert_memory_equal(a->supports, b->supports, a->n_supports * sizeof *a->supports);
    assert_memory_equal(a->reactions, b->reactions, a->n_supports * sizeof *a->reactions);
    assert_memory_equal(a->couples, b->couples, a->n_supports * sizeof *a->couples);
    assert_memory_equal(a->pieces, b->pieces, a->n_pieces * sizeof *a->pieces);
}

static void assert_same_extremes(const struct gw_beam_result *a, const struct gw_beam_result *b)
{
    assert_memory_equal(&a->shear_max, &b->shear_max, sizeof a->shear_max);
    assert_memory_equal(&a->moment_max, &b->moment_max, sizeof a->moment_max);
    assert_memory_equal(&a->moment_min, &b->moment_min, sizeof a->moment_min);
    assert_memory_equal(&a->deflection_max, &b->deflection_max, sizeof a->deflection_max);
    assert_memory_equal(&a->deflection_back, &b->deflection_back, sizeof a->deflection_back);
}

/* Nor does a solution hang on what lay in the room before, and the pieces are those of the whole solution. */
static void room_is_left_as_it_is(void **state)
{
    (void)state;
    struct sample s;
    static struct gw_beam_result plain, again, pieces;
    struct gw_engine engine;
    draw_from(111);
    for (int i = 0; i < 200; i++) {
        any_stable(&s, &plain);
        memset(&again, 0xa5, sizeof again);
        gw_engine_init(&engine, gw_tables_standard(), NULL);
        assert_int_equal(gw_beam_solve(&again, &s.beam, &engine), GW_OK);
        assert_same(&plain, &again);
        assert_same_extremes(&plain, &again);
        memset(&pieces, 0x5a, sizeof pieces);
        assert_int_equal(gw_beam_solve_pieces(&pieces, &s.beam, &engine), GW_OK);
        assert_same(&plain, &pieces);
        assert_false(gw_given(pieces.moment_max.value));
        assert_false(gw_given(pieces.deflection_back.at));
    }
}

static void traces_change_nothing(void **state)
{
    struct world *w = *state;
    struct sample s;
    static struct gw_beam_result plain, traced;
    int sums = 0;
    draw_from(110);
    for (int i = 0; i < 200; i++) {
        struct gw_trace trace;
        struct gw_engine engine;
        any_stable(&s, &plain);
        gw_trace_init(&trace, &w->arena);
        gw_engine_init(&engine, gw_tables_standard(), &trace);
        assert_int_equal(gw_beam_solve(&traced, &s.beam, &engine), GW_OK);
        assert_same(&plain, &traced);
        assert_same_extremes(&plain, &traced);
        assert_true(trace.n > 0);
        const struct gw_step *last = NULL;
        for (size_t k = 0; k < trace.n; k++)
            if (trace.steps[k].formula && strcmp(trace.steps[k].symbol, "M_max") == 0) last = &trace.steps[k];
        sums += last != NULL && ends_its_sum(&trace, last);
        if (last && ends_its_sum(&trace, last))
            assert_near(last->value, plain.moment_max.value, 1e-9 * largest_moment(&plain));
    }
    assert_true(sums > 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(extremes_bound_the_samples),
        cmocka_unit_test(chords_bound_the_samples),
        cmocka_unit_test(sides_of_a_jump),
        cmocka_unit_test(long_beams_keep_their_digits),
        WORLD_TEST(refuses_with_reasons),
        WORLD_TEST(room_is_left_as_it_is),
        WORLD_TEST(traces_change_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
