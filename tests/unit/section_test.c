/* Sections: closed formulas against polygons and center lines, what must not matter, what must be refused. */
#include "support.h"

#include "galeward/section.h"

static const double PI = 3.14159265358979323846;

static struct gw_engine engine;

static struct gw_section tube_of(double width, double depth, double flange, double web)
{
    struct gw_section out;
    const struct gw_tube tube = {width, depth, flange, web, 0};
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    enum gw_status status = gw_section_tube(&out, &tube, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

static enum gw_status try_polygon(struct gw_section *out, const struct gw_polygon *outline,
                                  const struct gw_polygon *voids, size_t n)
{
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    return gw_section_polygon(out, outline, voids, n, &engine);
}

static struct gw_section polygon_of(const struct gw_polygon *outline, const struct gw_polygon *voids, size_t n)
{
    struct gw_section out;
    enum gw_status status = try_polygon(&out, outline, voids, n);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

static enum gw_status try_strips(struct gw_section *out, const struct gw_strip *strips, size_t n)
{
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    return gw_section_strips(out, strips, n, &engine);
}

static struct gw_section strips_of(const struct gw_strip *strips, size_t n)
{
    struct gw_section out;
    enum gw_status status = try_strips(&out, strips, n);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

#define near_to(got, want, relative) assert_near(got, want, (relative)*fabs(want))

static void rectangle(struct gw_section_point points[4], double x, double y, double width, double depth)
{
    points[0] = (struct gw_section_point){x, y};
    points[1] = (struct gw_section_point){x + width, y};
    points[2] = (struct gw_section_point){x + width, y + depth};
    points[3] = (struct gw_section_point){x, y + depth};
}

static void turn_round(struct gw_section_point *points, size_t n)
{
    for (size_t i = 0; i < n / 2; i++) {
        const struct gw_section_point p = points[i];
        points[i] = points[n - 1 - i];
        points[n - 1 - i] = p;
    }
}

/* An odd shape without any symmetry, and two voids. */
enum { ODD = 7 };
static const struct gw_section_point ODD_POINTS[ODD] = {{0.0013, 0.0021}, {0.0617, -0.0042}, {0.0731, 0.0388},
                                                        {0.0502, 0.0461}, {0.0489, 0.1013},  {0.0153, 0.1177},
                                                        {-0.0093, 0.0629}};
static const struct gw_section_point HOLE_A[3] = {{0.011, 0.013}, {0.031, 0.011}, {0.022, 0.037}};
static const struct gw_section_point HOLE_B[4] = {{0.014, 0.061}, {0.037, 0.058}, {0.033, 0.081}, {0.017, 0.089}};

/* Tubes -------------------------------------------------------------------------------------------------------------
 */

static void tubes_equal_polygons(void **state)
{
    (void)state;
    const double sizes[][4] = {
        {0.0635, 0.1524, 0.0032, 0.0025}, {0.0381, 0.2133, 0.0061, 0.0019}, {0.09, 0.05, 0.004, 0.011}};
    for (size_t i = 0; i < 3; i++) {
        const double b = sizes[i][0], h = sizes[i][1], tf = sizes[i][2], tw = sizes[i][3];
        struct gw_section_point out[4], in[4];
        rectangle(out, -7.1, 3.3, b, h);
        rectangle(in, -7.1 + tw, 3.3 + tf, b - 2 * tw, h - 2 * tf);
        const struct gw_polygon outline = {out, 4}, hole = {in, 4};
        const struct gw_section t = tube_of(b, h, tf, tw), p = polygon_of(&outline, &hole, 1);
        near_to(p.area, t.area, 1e-11);
        near_to(p.inertia_x, t.inertia_x, 1e-11);
        near_to(p.inertia_y, t.inertia_y, 1e-11);
        near_to(p.plastic_x, t.plastic_x, 1e-11);
        near_to(p.plastic_y, t.plastic_y, 1e-11);
        near_to(p.modulus_top, t.modulus_top, 1e-11);
        near_to(p.modulus_left, t.modulus_left, 1e-11);
        assert_near(p.inertia_xy, 0, 0);
        assert_true(isnan(p.torsion)); /* refused, not guessed */
        assert_int_equal(p.cells, -1);
    }
}

/* Two rectangles, each with its own centroid and the distance to the axis. */
static void tube_by_parallel_axes(void **state)
{
    (void)state;
    const struct gw_section t = tube_of(0.0635, 0.1524, 0.0047, 0.0031);
    const double arm = (0.1524 - 0.0047) / 2, web = 0.1524 - 2 * 0.0047;
    const double want =
        2 * (0.0635 * pow(0.0047, 3) / 12 + 0.0635 * 0.0047 * arm * arm) + 2 * 0.0031 * pow(web, 3) / 12;
    near_to(t.inertia_x, want, 1e-12);
    near_to(t.plastic_x, 2 * (0.0635 * 0.0047 * arm + 2 * 0.0031 * web / 2 * web / 4), 1e-12);
    near_to(gw_section_modulus_x(&t), t.inertia_x / 0.0762, 1e-12);
    near_to(gw_section_modulus_y(&t), t.inertia_y / 0.03175, 1e-12);
}

/* Finite differences of the stress function, extrapolated: what Bredt's formula leaves out, within the stated limit. */
static void bredt_is_low_by_what_it_says(void **state)
{
    (void)state;
    static const double cases[][5] = {{1, 1, 0.05, 0.05, 0.0439306},
                                      {1, 1, 0.1, 0.1, 0.0770742},
                                      {1, 1, 0.2, 0.2, 0.118106},
                                      {1, 2.4, 0.05, 0.05, 0.153179},
                                      {1, 3, 0.1, 0.1, 0.368388}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const struct gw_section t = tube_of(cases[i][0], cases[i][1], cases[i][3], cases[i][2]);
        assert_true(t.torsion < cases[i][4]);
        assert_true(t.torsion > (1 - 0.6 * cases[i][2]) * cases[i][4] - 0.02 * cases[i][4]);
    }
    const struct gw_section thick = tube_of(1, 1, 0.21, 0.21); /* 0.21/0.79 is beyond a quarter */
    assert_true(isnan(thick.torsion));
    assert_int_equal(thick.n_notes, 1);
}

/* Polygons ----------------------------------------------------------------------------------------------------------
 */

static void circles_reach_their_formulas(void **state)
{
    (void)state;
    enum { N = 720 };
    struct gw_section_point points[N];
    const double r = 0.0431, corner = r / sqrt(sin(2 * PI / N) / (2 * PI / N)); /* the same area as the circle */
    for (int i = 0; i < N; i++)
        points[i] = (struct gw_section_point){0.3 + corner * cos(2 * PI * i / N), -0.2 + corner * sin(2 * PI * i / N)};
    const struct gw_polygon circle = {points, N};
    const struct gw_section s = polygon_of(&circle, NULL, 0);
    near_to(s.area, PI * r * r, 1e-9);
    near_to(s.inertia_x, PI * pow(r, 4) / 4, 1e-4);
    near_to(s.inertia_y, PI * pow(r, 4) / 4, 1e-4);
    near_to(s.plastic_x, 4 * pow(r, 3) / 3, 1e-4);
    assert_near(s.centroid.x, 0.3, 1e-12);
    assert_near(s.centroid.y, -0.2, 1e-12);
}

static void plastic_axis_halves_a_tee(void **state)
{
    (void)state;
    /* Flange 80 x 12 above a stem 8 x 70: the flange holds more than half, so the axis lies in it. */
    const struct gw_section_point tee[8] = {{-0.004, 0},   {0.004, 0},     {0.004, 0.07}, {0.04, 0.07},
                                            {0.04, 0.082}, {-0.04, 0.082}, {-0.04, 0.07}, {-0.004, 0.07}};
    const struct gw_polygon outline = {tee, 8};
    const struct gw_section s = polygon_of(&outline, NULL, 0);
    const double area = 0.08 * 0.012 + 0.008 * 0.07, axis = 0.082 - area / 2 / 0.08;
    const double above = 0.08 * pow(0.082 - axis, 2) / 2;
    const double below = 0.08 * pow(axis - 0.07, 2) / 2 + 0.008 * 0.07 * (axis - 0.035);
    near_to(s.plastic_x, above + below, 1e-12);
    assert_true(s.plastic_x > gw_section_modulus_x(&s));
    near_to(s.plastic_y, 0.012 * 0.08 * 0.08 / 4 + 0.07 * 0.008 * 0.008 / 4, 1e-12);
}

/* Two lumps joined by a web so thin that the half line may lie anywhere in it. */
static void plastic_axis_in_a_gap(void **state)
{
    (void)state;
    struct gw_section_point out[4], in[4];
    rectangle(out, 0, 0, 0.05, 0.1);
    rectangle(in, 1e-6, 0.01, 0.05 - 2e-6, 0.08);
    const struct gw_polygon outline = {out, 4}, hole = {in, 4};
    near_to(polygon_of(&outline, &hole, 1).plastic_x, 0.05 * 0.01 * 0.09 + 2 * 1e-6 * 0.04 * 0.04, 1e-9);
}

static struct gw_section moved(double angle, double dx, double dy, double scale)
{
    struct gw_section_point a[ODD], b[3], c[4];
    const struct gw_section_point *const from[] = {ODD_POINTS, HOLE_A, HOLE_B};
    struct gw_section_point *const to[] = {a, b, c};
    const size_t n[] = {ODD, 3, 4};
    for (size_t k = 0; k < 3; k++)
        for (size_t i = 0; i < n[k]; i++) {
            const struct gw_section_point p = from[k][i];
            to[k][i].x = dx + scale * (p.x * cos(angle) - p.y * sin(angle));
            to[k][i].y = dy + scale * (p.x * sin(angle) + p.y * cos(angle));
        }
    const struct gw_polygon outline = {a, ODD}, voids[] = {{b, 3}, {c, 4}};
    return polygon_of(&outline, voids, 2);
}

static void place_does_not_matter(void **state)
{
    (void)state;
    const struct gw_section s = moved(0, 0, 0, 1), far = moved(0, 9.7, -8.3, 1);
    near_to(far.area, s.area, 1e-11);
    near_to(far.inertia_x, s.inertia_x, 1e-10);
    near_to(far.inertia_xy, s.inertia_xy, 1e-10);
    near_to(far.plastic_y, s.plastic_y, 1e-10);
    near_to(far.modulus_right, s.modulus_right, 1e-10);
    assert_near(far.centroid.x - s.centroid.x, 9.7, 1e-12);
}

/* Mohr's circle: sum and principal values stay, the major axis turns along. */
static void rotation_keeps_principal_axes(void **state)
{
    (void)state;
    const struct gw_section s = moved(0, 0, 0, 1);
    for (double angle = -1.3; angle < 1.4; angle += 0.37) {
        const struct gw_section r = moved(angle, 0.1, 0.2, 1);
        const double c = cos(angle), d = sin(angle);
        near_to(r.inertia_x + r.inertia_y, s.inertia_x + s.inertia_y, 1e-11);
        near_to(r.principal_major, s.principal_major, 1e-11);
        near_to(r.principal_minor, s.principal_minor, 1e-11);
        near_to(r.inertia_x, s.inertia_x * c * c + s.inertia_y * d * d + 2 * s.inertia_xy * c * d, 1e-10);
        assert_near(sin(r.principal_angle - s.principal_angle - angle), 0, 1e-9);
    }
}

static void size_scales(void **state)
{
    (void)state;
    const double f = 39.37007874;
    const struct gw_section s = moved(0, 0, 0, 1), in = moved(0, 0, 0, f);
    near_to(in.area, s.area * f * f, 1e-11);
    near_to(in.inertia_x, s.inertia_x * pow(f, 4), 1e-11);
    near_to(in.plastic_x, s.plastic_x * pow(f, 3), 1e-11);
    near_to(in.modulus_bottom, s.modulus_bottom * pow(f, 3), 1e-11);
}

static void order_and_direction_do_not_matter(void **state)
{
    (void)state;
    const struct gw_section want = moved(0, 0, 0, 1);
    for (unsigned k = 0; k < 16; k++) {
        struct gw_section_point a[ODD], b[3], c[4];
        memcpy(a, ODD_POINTS, sizeof a), memcpy(b, HOLE_A, sizeof b), memcpy(c, HOLE_B, sizeof c);
        if (k & 1) turn_round(a, ODD);
        if (k & 2) turn_round(b, 3);
        if (k & 4) turn_round(c, 4);
        const struct gw_polygon outline = {a, ODD}, one[] = {{b, 3}, {c, 4}}, other[] = {{c, 4}, {b, 3}};
        const struct gw_section s = polygon_of(&outline, k & 8 ? other : one, 2);
        near_to(s.area, want.area, 1e-12);
        near_to(s.inertia_x, want.inertia_x, 1e-12);
        near_to(s.inertia_xy, want.inertia_xy, 1e-11);
        near_to(s.plastic_x, want.plastic_x, 1e-12);
    }
}

static void refuse_polygon(const struct gw_section_point *points, size_t n, const struct gw_polygon *voids,
                           size_t n_voids, const char *key, const char *says)
{
    struct gw_section out;
    const struct gw_polygon outline = {points, n};
    assert_int_equal(try_polygon(&out, &outline, voids, n_voids), GW_BAD_VALUE);
    assert_string_equal(engine.fault.key, key);
    if (!strstr(told(&engine.fault), says)) print_error("%s\n", told(&engine.fault));
    assert_non_null(strstr(told(&engine.fault), says));
}

static void wrong_polygons_are_refused(void **state)
{
    (void)state;
    struct gw_section_point square[4], inside[4], touching[4], around[4], other[4];
    rectangle(square, 0, 0, 1, 1);
    rectangle(inside, 0.2, 0.2, 0.3, 0.3);
    rectangle(touching, 0, 0.2, 0.3, 0.3);
    rectangle(around, -1, -1, 3, 3);
    rectangle(other, 0.25, 0.25, 0.1, 0.1);
    const struct gw_section_point closed[5] = {{0, 0}, {1, 0}, {1, 1}, {0, 1}, {0, 0}},
                                  bow[4] = {{0, 0}, {1, 1}, {1, 0}, {0, 1}},
                                  spike[5] = {{0, 0}, {2, 0}, {1, 0}, {1, 1}, {0, 1}},
                                  slit[8] = {{0, 0}, {2, 0}, {2, 2}, {1, 2}, {1, 1}, {1, 2}, {0, 2}, {0, 1}};
    const struct gw_polygon touches = {touching, 4}, outside = {around, 4}, nested[] = {{inside, 4}, {other, 4}},
                            nested_back[] = {{other, 4}, {inside, 4}};
    refuse_polygon(square, 2, NULL, 0, "outline", "three points");
    refuse_polygon(closed, 5, NULL, 0, "outline", "not given again");
    refuse_polygon(bow, 4, NULL, 0, "outline", "edges 1 and 3");
    refuse_polygon(spike, 5, NULL, 0, "outline", "fold back");
    refuse_polygon(slit, 8, NULL, 0, "outline", "fold back");
    refuse_polygon(square, 4, &touches, 1, "voids", "touches the outline");
    refuse_polygon(square, 4, &outside, 1, "voids", "outside");
    refuse_polygon(square, 4, nested, 2, "voids", "in one another");
    refuse_polygon(square, 4, nested_back, 2, "voids", "in one another");
}

/* Thin walls --------------------------------------------------------------------------------------------------------
 */

static struct gw_strip wall(double x0, double y0, double x1, double y1, double t)
{
    return (struct gw_strip){{x0, y0}, {x1, y1}, t};
}

static void channels_twist_about_the_textbook_point(void **state)
{
    (void)state;
    for (double b = 0.021; b < 0.09; b += 0.017) {
        const double h = 0.113, t = 0.0021;
        const struct gw_strip strips[] = {wall(b, 0, 0, 0, t), wall(0, h, 0, 0, t), wall(0, h, b, h, t)};
        const struct gw_section s = strips_of(strips, 3);
        assert_near(s.shear_center.x, -3 * b * b / (h + 6 * b), 1e-12);
        assert_near(s.shear_center.y, h / 2, 1e-12);
        near_to(s.torsion, (2 * b + h) * pow(t, 3) / 3, 1e-12);
        near_to(s.warping, t * pow(b, 3) * h * h * (3 * b + 2 * h) / (12 * (6 * b + h)), 1e-9);
        assert_int_equal(s.cells, 0);
    }
}

/* Angles and tees twist about the point where their walls meet, and do not warp along them. */
static void angles_twist_about_their_corner(void **state)
{
    (void)state;
    const struct gw_strip angle[] = {wall(0.3, 0.1, 0.38, 0.1, 0.003), wall(0.3, 0.1, 0.27, 0.19, 0.002)};
    const struct gw_section s = strips_of(angle, 2);
    assert_near(s.shear_center.x, 0.3, 1e-10);
    assert_near(s.shear_center.y, 0.1, 1e-10);
    assert_near(s.warping, 0, 1e-6 * s.area * pow(0.1, 4));
}

/* The slit tube: its shear center lies 2 r from the middle, away from the slit. */
static void slit_tube(void **state)
{
    (void)state;
    enum { N = 60 };
    struct gw_strip strips[N];
    const double r = 0.05, t = 0.001;
    for (int i = 0; i < N; i++)
        strips[i] = wall(r * cos(2 * PI * i / N), r * sin(2 * PI * i / N), r * cos(2 * PI * (i + 1) / N),
                         r * sin(2 * PI * (i + 1) / N), t);
    strips[N - 1].to.x += 1e-4; /* beside the first joint: open */
    const struct gw_section open = strips_of(strips, N);
    assert_int_equal(open.cells, 0);
    near_to(open.shear_center.x, -2 * r, 0.01);
    near_to(open.torsion, 2 * PI * r * pow(t, 3) / 3, 0.01);
    strips[N - 1].to.x -= 1e-4;
    const struct gw_section closed = strips_of(strips, N);
    assert_int_equal(closed.cells, 1);
    near_to(closed.torsion, 2 * PI * pow(r, 3) * t, 0.01);
    assert_true(isnan(closed.warping));
    assert_near(closed.shear_center.x, 0, 1e-12);
}

static void center_lines_of_tubes_equal_bredt(void **state)
{
    (void)state;
    const double b = 0.0635, h = 0.1524, tf = 0.0047, tw = 0.0021, x = (b - tw) / 2, y = (h - tf) / 2;
    const struct gw_strip strips[] = {wall(-x, -y, x, -y, tf), wall(x, y, x, -y, tw), wall(x, y, -x, y, tf),
                                      wall(-x, -y, -x, y, tw)};
    const struct gw_section s = strips_of(strips, 4), t = tube_of(b, h, tf, tw);
    near_to(s.torsion, t.torsion, 1e-12);
    near_to(s.area, t.area, 1e-12); /* what overlaps outside equals the notch */
    near_to(s.inertia_x, t.inertia_x, 0.01);
    near_to(s.plastic_x, t.plastic_x, 0.01);
}

/* A wall between two like cells carries no flow: the torsion is that of the ring. A fin adds L t^3/3. */
static void cells_and_fins(void **state)
{
    (void)state;
    const double t = 0.002;
    const struct gw_strip strips[] = {wall(0, 0, 0.04, 0, t),       wall(0.04, 0, 0.08, 0, t),
                                      wall(0.08, 0, 0.08, 0.05, t), wall(0.08, 0.05, 0.04, 0.05, t),
                                      wall(0.04, 0.05, 0, 0.05, t), wall(0, 0.05, 0, 0, t),
                                      wall(0.04, 0, 0.04, 0.05, t), wall(0.08, 0.05, 0.11, 0.05, t)};
    const struct gw_section ring = strips_of(strips, 6), two = strips_of(strips, 7), fin = strips_of(strips, 8);
    assert_int_equal(two.cells, 2);
    near_to(two.torsion, ring.torsion, 1e-12);
    near_to(ring.torsion, 4 * pow(0.08 * 0.05, 2) / (0.26 / t), 1e-12);
    near_to(fin.torsion - two.torsion, 0.03 * pow(t, 3) / 3, 1e-6);
}

/* Order, direction and place of the walls. */
static void walls_in_any_order(void **state)
{
    (void)state;
    struct gw_strip more[7] = {wall(0.05, 0, 0.02, 0, 0.003),    wall(0.02, 0, 0, 0, 0.003),
                               wall(0, 0, 0, 0.03, 0.002),       wall(0, 0.08, 0.03, 0.08, 0.004),
                               wall(0, 0.03, 0.02, 0.03, 0.002), wall(0.02, 0.03, 0.02, 0, 0.002),
                               wall(0, 0.08, 0, 0.03, 0.002)};
    const struct gw_section want = strips_of(more, 7);
    for (int i = 0; i < 7; i++) {
        const struct gw_strip first = more[0];
        for (int k = 0; k < 6; k++) more[k] = more[k + 1];
        more[6] = (struct gw_strip){first.to, first.from, first.thickness};
        const struct gw_section s = strips_of(more, 7);
        near_to(s.torsion, want.torsion, 1e-11);
        near_to(s.inertia_xy, want.inertia_xy, 1e-10);
        assert_near(s.shear_center.x, want.shear_center.x, 1e-12);
        assert_near(s.shear_center.y, want.shear_center.y, 1e-12);
    }
    assert_int_equal(want.cells, 1);
    for (int i = 0; i < 7; i++) { /* turned by a right angle: x to y */
        more[i].from = (struct gw_section_point){-more[i].from.y + 1, more[i].from.x - 2};
        more[i].to = (struct gw_section_point){-more[i].to.y + 1, more[i].to.x - 2};
    }
    const struct gw_section turned = strips_of(more, 7);
    near_to(turned.torsion, want.torsion, 1e-10);
    assert_near(turned.shear_center.x, 1 - want.shear_center.y, 1e-10);
    assert_near(turned.shear_center.y, want.shear_center.x - 2, 1e-10);
    near_to(turned.inertia_x, want.inertia_y, 1e-10);
}

static void refuse_strips(const struct gw_strip *strips, size_t n, const char *says)
{
    struct gw_section out;
    assert_int_not_equal(try_strips(&out, strips, n), GW_OK);
    assert_string_equal(engine.fault.key, "walls");
    if (!strstr(told(&engine.fault), says)) print_error("%s\n", told(&engine.fault));
    assert_non_null(strstr(told(&engine.fault), says));
}

static void wrong_walls_are_refused(void **state)
{
    (void)state;
    const struct gw_strip crossing[] = {wall(0, 0, 1, 1, 0.01), wall(0, 1, 1, 0, 0.01)},
                          tee[] = {wall(0, 0, 1, 0, 0.01), wall(0.5, 0, 0.5, 1, 0.01)},
                          apart[] = {wall(0, 0, 1, 0, 0.01), wall(0, 1, 1, 1, 0.01)},
                          twice[] = {wall(0, 0, 1, 0, 0.01), wall(1, 0, 0, 0, 0.01)}, none[] = {wall(0, 0, 0, 0, 0.01)},
                          flat[] = {wall(0, 0, 1, 0, 0)};
    refuse_strips(crossing, 2, "cross");
    refuse_strips(tee, 2, "split it");
    refuse_strips(apart, 2, "not all connected");
    refuse_strips(twice, 2, "are one");
    refuse_strips(none, 1, "no length");
    refuse_strips(flat, 1, "positive");
    refuse_strips(none, 0, "no walls");
}

static void thick_walls_have_no_torsion_constant(void **state)
{
    (void)state;
    const struct gw_strip thin[] = {wall(0, 0, 0.1, 0, 0.01)}, thick[] = {wall(0, 0, 0.1, 0, 0.0101)};
    near_to(strips_of(thin, 1).torsion, 0.1 * 1e-6 / 3, 1e-12);
    assert_true(isnan(strips_of(thick, 1).torsion));
    assert_near(strips_of(thin, 1).shear_center.x, 0.05, 1e-12);
}

static void walls_must_be_the_outlines(void **state)
{
    (void)state;
    struct gw_section_point out[4], in[4];
    rectangle(out, 0, 0, 0.05, 0.1);
    rectangle(in, 0.002, 0.003, 0.046, 0.094);
    const struct gw_polygon outline = {out, 4}, hole = {in, 4};
    struct gw_strip walls[] = {wall(0.001, 0.0015, 0.049, 0.0015, 0.003), wall(0.049, 0.0015, 0.049, 0.0985, 0.002),
                               wall(0.049, 0.0985, 0.001, 0.0985, 0.003), wall(0.001, 0.0985, 0.001, 0.0015, 0.002)};
    struct gw_section s = polygon_of(&outline, &hole, 1);
    assert_int_equal(gw_section_walls(&s, walls, 4, &engine), GW_OK);
    near_to(s.torsion, tube_of(0.05, 0.1, 0.003, 0.002).torsion, 1e-9);
    walls[1].thickness = 0.003;
    assert_int_equal(gw_section_walls(&s, walls, 4, &engine), GW_BAD_VALUE);
    assert_non_null(strstr(told(&engine.fault), "10 %"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(tubes_equal_polygons),
        cmocka_unit_test(tube_by_parallel_axes),
        cmocka_unit_test(bredt_is_low_by_what_it_says),
        cmocka_unit_test(circles_reach_their_formulas),
        cmocka_unit_test(plastic_axis_halves_a_tee),
        cmocka_unit_test(plastic_axis_in_a_gap),
        cmocka_unit_test(place_does_not_matter),
        cmocka_unit_test(rotation_keeps_principal_axes),
        cmocka_unit_test(size_scales),
        cmocka_unit_test(order_and_direction_do_not_matter),
        cmocka_unit_test(wrong_polygons_are_refused),
        cmocka_unit_test(channels_twist_about_the_textbook_point),
        cmocka_unit_test(angles_twist_about_their_corner),
        cmocka_unit_test(slit_tube),
        cmocka_unit_test(center_lines_of_tubes_equal_bredt),
        cmocka_unit_test(cells_and_fins),
        cmocka_unit_test(walls_in_any_order),
        cmocka_unit_test(wrong_walls_are_refused),
        cmocka_unit_test(thick_walls_have_no_torsion_constant),
        cmocka_unit_test(walls_must_be_the_outlines),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
