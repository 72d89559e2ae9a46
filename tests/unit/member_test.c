/* Members of a wall: 45-degree shedding, true widths, anchors, limits of deflection, sections required. */
#include "beam_support.h"

static const struct gw_beam_segment MULLION = {4.31, 69.6e9, 3.35e-6};

static struct gw_member mullion(const double *heights, size_t n, double width, double pressure)
{
    return (struct gw_member){.orientation = GW_VERTICAL,
                              .shedding = GW_TWO_WAY,
                              .span = MULLION.to,
                              .pressure = pressure,
                              .left = {width, heights, n},
                              .right = {width, heights, n},
                              .segments = &MULLION,
                              .n_segments = 1};
}

static void must_member(struct gw_member_result *out, const struct gw_member *in)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    enum gw_status status = gw_member_solve(out, in, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
}

/* At a rail as under uniform load; inside a lite less, by how much follows from its shape. */
static void rails_keep_the_uniform_moment(void **state)
{
    (void)state;
    const double heights[] = {0.62, 1.93, 0.47, 1.29}, b = 1.17, p = 1437, w = p * b;
    const struct gw_member in = mullion(heights, 4, b, p);
    static struct gw_member_result r;
    must_member(&r, &in);
    double bottom = 0;
    for (int i = 0; i < 4; i++) {
        const double h = heights[i], top = bottom + h, middle = bottom + h / 2;
        const double less = h >= b ? w * b * b / 24 : w * h * h * (3 - 2 * h / b) / 24;
        assert_near(gw_beam_at(&r.solution, top, GW_BEAM_AFTER).moment, w * top * (MULLION.to - top) / 2, 1e-9 * w);
        assert_near(gw_beam_at(&r.solution, middle, GW_BEAM_AFTER).moment,
                    w * middle * (MULLION.to - middle) / 2 - less, 1e-9 * w);
        bottom = top;
    }
    assert_near(r.solution.reactions[0], w * MULLION.to / 2, 1e-9 * w);
    assert_near(r.solution.reactions[1], w * MULLION.to / 2, 1e-9 * w);
    assert_int_equal(r.n_rails, 5);
    assert_int_equal(r.n_edges, 8);
}

/* Whatever the lites: pressure times the tributary area, which is half of each. Fails when the rails are left out, and
 * when a third of the span stands for the width. */
static void members_carry_pressure_times_area(void **state)
{
    (void)state;
    static struct gw_member_result r;
    draw_from(109);
    for (int i = 0; i < 300; i++) {
        double left[5], right[3], sum = 0;
        for (int k = 0; k < 5; k++) sum += left[k] = draw(0.2, 2);
        for (int k = 0; k < 5; k++) left[k] *= MULLION.to / sum;
        right[0] = draw(0.3, 1);
        right[1] = draw(0.3, 2);
        right[2] = MULLION.to - right[0] - right[1];
        struct gw_member in = mullion(left, 5, draw(0.4, 2.5), draw(500, 4000));
        in.right = (struct gw_lite_column){pick(3) ? draw(0.4, 2.5) : 0, right, 3};
        must_member(&r, &in);
        const double load = in.pressure * in.span * (in.left.width + in.right.width) / 2;
        assert_near(r.solution.reactions[0] + r.solution.reactions[1], load, 1e-9 * load);
        in.shedding = GW_UNIFORM;
        must_member(&r, &in);
        assert_near(r.solution.reactions[0] + r.solution.reactions[1], load, 1e-9 * load);
        assert_int_equal(r.n_rails, 0);
    }
}

/* Span 14 ft, module 4 ft: the width loaded is 4 ft, not the 4.67 ft of the effective area. */
static void width_is_the_true_one(void **state)
{
    (void)state;
    const struct gw_beam_segment segment = {14 * FT, 69.6e9, 3.35e-6};
    struct gw_member in = mullion(NULL, 0, 4 * FT, 30 * PSF);
    static struct gw_member_result r;
    in.span = 14 * FT;
    in.segments = &segment;
    in.shedding = GW_UNIFORM;
    must_member(&r, &in);
    assert_near(r.solution.reactions[0] / 4.4482216152605, 30 * 4 * 14 / 2.0, 1e-6);
}

/* The lite takes its load to all four edges: the rails beside it are not without wind. */
static void rails_carry_wind(void **state)
{
    (void)state;
    const double b = 1.5, p = 1437, heights[] = {0.8, 1.5, 2.7};
    const struct gw_beam_segment rail = {b, 69.6e9, 5e-7};
    static struct gw_member_result r;
    for (int i = 0; i < 3; i++) {
        const double h = heights[i], a = fmin(b, h) / 2;
        struct gw_member in = {.orientation = GW_HORIZONTAL,
                               .shedding = GW_TWO_WAY,
                               .span = b,
                               .pressure = p,
                               .height_above = h,
                               .height_below = 0,
                               .segments = &rail,
                               .n_segments = 1};
        must_member(&r, &in);
        assert_near(r.solution.moment_max.value, p * a * b * b / 24 * (3 - 4 * a * a / (b * b)), 1e-9);
        assert_near(r.solution.reactions[0], p * a * (b - a) / 2, 1e-9);
        /* and a vertical beside it takes from its end what it carries */
        struct gw_member vertical = mullion(&MULLION.to, 1, b, p);
        const double one[] = {h, MULLION.to - h};
        vertical.left = (struct gw_lite_column){b, one, 2};
        vertical.right = (struct gw_lite_column){.width = 0};
        static struct gw_member_result v;
        must_member(&v, &vertical);
        assert_near(v.rail_loads[0], p * a * (b - a) / 2, 1e-9);
        in.height_below = h;
        must_member(&r, &in);
        assert_near(r.solution.reactions[0], p * a * (b - a), 1e-9);
        assert_int_equal(r.n_edges, 2);
    }
}

/* The middle anchor of two spans: 1.25 w L, 3.3 times an end's; its moment is at the anchor. */
static void middle_anchor_of_two_spans(void **state)
{
    (void)state;
    const double supports[] = {0, 3.6, 7.2}, p = 1437, b = 1.5;
    const struct gw_beam_segment segment = {7.2, 69.6e9, 3.35e-6};
    struct gw_member in = mullion(NULL, 0, b, p);
    static struct gw_member_result r;
    in.shedding = GW_UNIFORM;
    in.span = 7.2;
    in.segments = &segment;
    in.supports = supports;
    in.n_supports = 3;
    in.limited = true;
    must_member(&r, &in);
    assert_near(r.solution.reactions[1], 1.25 * p * b * 3.6, 1e-8);
    assert_near(r.solution.reactions[1] / r.solution.reactions[0], 10 / 3.0, 1e-12);
    assert_near(r.solution.moment_min.at, 3.6, 1e-12);
    assert_near(r.solution.moment_min.value, -p * b * 3.6 * 3.6 / 8, 1e-8);
    assert_near(r.limit_span, 3.6, 1e-12); /* a limit is a span's, not the member's */
    assert_near(r.limit, 3.6 / 175, 1e-12);
}

/* A spliced wall is not alike from end to end: the lowest story has no splice to unload it, the highest no shear from
 * above. */
static void end_stories_differ(void **state)
{
    (void)state;
    const double l = 3.6, a = 0.6, p = 1437, b = 1.5, w = p * b;
    const double supports[] = {0, l, 2 * l, 3 * l, 4 * l, 5 * l}, hinges[] = {l + a, 2 * l + a, 3 * l + a, 4 * l + a};
    const struct gw_beam_segment segment = {5 * l, 69.6e9, 3.35e-6};
    struct gw_member in = mullion(NULL, 0, b, p);
    static struct gw_member_result r;
    in.shedding = GW_UNIFORM;
    in.span = 5 * l;
    in.segments = &segment;
    in.supports = supports, in.n_supports = 6;
    in.hinges = hinges, in.n_hinges = 4;
    must_member(&r, &in);
    /* From the top: the highest piece spans simply from its splice; each splice hands its shear to the piece below. */
    double shear = w * (l - a) / 2, anchor[5] = {0};
    for (int i = 4; i >= 1; i--) {
        anchor[i] = -shear * a - w * a * a / 2;
        assert_near(gw_beam_at(&r.solution, supports[i], GW_BEAM_AFTER).moment, anchor[i], 1e-8 * w);
        shear = i > 1 ? w * (l - a) / 2 + anchor[i] / (l - a) : shear;
    }
    const double left = w * l / 2 + anchor[1] / l;
    assert_near(r.solution.reactions[0], left, 1e-8 * w);
    assert_near(r.solution.moment_max.value, left * left / (2 * w), 1e-8 * w);
    assert_true(r.solution.moment_max.at < l); /* the lowest story governs */
    assert_true(r.solution.moment_max.value > 1.2 * w * (l - 2 * a) * (l - 2 * a) / 8);
}

static double limit_of(double span, bool cantilever, bool capped)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    const double limit = gw_deflection_limit(span, cantilever, capped, &engine);
    assert_int_not_equal(gw_used_weakest(&engine.used), GW_BASIS_NONE);
    return limit;
}

static void limits_at_their_boundary(void **state)
{
    (void)state;
    const double in = 0.0254;
    assert_near(limit_of(162 * in, false, false), 162 / 175.0 * in, 1e-12);
    assert_near(limit_of(13.5 * FT, false, false), 162 / 175.0 * in, 1e-12);
    assert_near(limit_of(162.001 * in, false, false), (162.001 / 240 + 0.25) * in, 1e-12);
    assert_near(limit_of(161 * in, false, false), 161 / 175.0 * in, 1e-12);
    /* the two halves cross at 161.54 in: above it, to 162 in, L/175 is the larger */
    assert_true(limit_of(162 * in, false, false) > (162 / 240.0 + 0.25) * in);
    assert_near(limit_of(60 * in, true, false), 120 / 175.0 * in, 1e-12);
    assert_near(limit_of(90 * in, true, false), (180 / 240.0 + 0.25) * in, 1e-12); /* doubled before the boundary */
    assert_near(limit_of(162 * in, false, true), 0.75 * in, 1e-12);
    assert_near(limit_of(100 * in, false, true), 100 / 175.0 * in, 1e-12);
}

/* An overhang is measured with twice its length, the span behind it with its own. */
static void overhangs_count_double(void **state)
{
    (void)state;
    const double supports[] = {0.9, 4.31};
    struct gw_member in = mullion(NULL, 0, 1.2, 1000);
    static struct gw_member_result r;
    in.shedding = GW_UNIFORM;
    in.supports = supports, in.n_supports = 2;
    in.limited = true;
    must_member(&r, &in);
    assert_near(r.limit_span, 0.9, 1e-9); /* its tip rises with the slope of the span */
    assert_near(r.limit, 1.8 / 175, 1e-9);
    assert_true(r.limit_deflection < 0);
    const double tip[] = {2.1, 4.31};
    in.supports = tip;
    must_member(&r, &in);
    assert_near(r.limit_span, 2.1, 1e-9);
    assert_near(r.limit, 4.2 / 240 + 0.00635, 1e-9);
    assert_near(r.limit_deflection, gw_beam_at(&r.solution, 0, GW_BEAM_AFTER).deflection, 1e-12);
}

/* Of a lite centered on a simple span under uniform load: what the middle deflects more than the lite's ends. */
static void edges_sag_from_their_own_chord(void **state)
{
    (void)state;
    const double heights[] = {1.155, 2.0, 1.155};
    struct gw_member in = mullion(heights, 3, 1.2, 1000);
    static struct gw_member_result r;
    in.shedding = GW_UNIFORM;
    must_member(&r, &in);
    const double w = 1200, l = MULLION.to, ei = 69.6e9 * 3.35e-6, x = 1.155;
    const double middle = 5 * w * pow(l, 4) / (384 * ei),
                 end = w * x * (l * l * l - 2 * l * x * x + x * x * x) / (24 * ei);
    assert_int_equal(r.n_edges, 6);
    assert_near(r.edges[1], middle - end, 1e-12);
    assert_near(r.edges[4], middle - end, 1e-12);
    assert_true(r.edges[0] < 0.5 * r.edges[1]);
}

/* 12 ft, 5 ft, 30 psf: 8.42 in4 and, at 15.15 ksi, 2.14 in3; and the section that a member asks for is that one. */
static void required_sections(void **state)
{
    (void)state;
    const double in = 0.0254, psi = 6894.757293168361, w = 30 * PSF * 5 * FT, e = 10.1e6 * psi;
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    const double inertia = gw_required_inertia(w, 12 * FT, e, limit_of(12 * FT, false, false), &engine);
    assert_near(inertia / pow(in, 4), 3.2487e-5 * 30 * 5 * 1728, 3e-4);
    assert_near(inertia / pow(in, 4), 2.27865 * 12.5 * pow(144, 3) / 10.1e6, 3e-5);
    assert_near(gw_required_modulus(w, 12 * FT, 15150 * psi, &engine) / pow(in, 3), 32400 / 15150.0, 1e-9);
    const struct gw_beam_segment segment = {12 * FT, e, 4.4e-6};
    struct gw_member member = mullion(NULL, 0, 5 * FT, 30 * PSF);
    static struct gw_member_result r;
    member.span = 12 * FT;
    member.shedding = GW_UNIFORM;
    member.segments = &segment;
    member.limited = true;
    must_member(&r, &member);
    assert_near(r.inertia_required, inertia, 1e-10 * inertia);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rails_keep_the_uniform_moment),  cmocka_unit_test(members_carry_pressure_times_area),
        cmocka_unit_test(width_is_the_true_one),          cmocka_unit_test(rails_carry_wind),
        cmocka_unit_test(middle_anchor_of_two_spans),     cmocka_unit_test(end_stories_differ),
        cmocka_unit_test(limits_at_their_boundary),       cmocka_unit_test(overhangs_count_double),
        cmocka_unit_test(edges_sag_from_their_own_chord), cmocka_unit_test(required_sections),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
