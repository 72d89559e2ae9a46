/* What drawings are made of: ticks, marching squares, the SVG text, labels, plots. */
#include "written_support.h"

#include "galeward/plot.h"
#include "report/draw/contour.h"

static const double PI = 3.14159265358979323846;

static void same_ticks(const struct gw_ticks *ticks, const double *wanted, size_t n, int decimals)
{
    assert_int_equal(ticks->n, n);
    assert_int_equal(ticks->decimals, decimals);
    for (size_t i = 0; i < n; i++) assert_true(ticks->values[i] == wanted[i]); /* the very double of the number */
}
#define assert_ticks(ticks, decimals, ...)                                                                             \
    same_ticks(&(ticks), (const double[]){__VA_ARGS__}, sizeof((const double[]){__VA_ARGS__}) / sizeof(double),        \
               decimals)

static void linear_ticks_are_round(void **state)
{
    (void)state;
    struct gw_ticks t;
    gw_ticks_linear(&t, 0, 0.63, 8);
    assert_ticks(t, 1, 0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6);
    gw_ticks_linear(&t, -0.031, 0.047, 4);
    assert_ticks(t, 2, -0.02, 0, 0.02, 0.04);
    gw_ticks_linear(&t, 37, 3187, 7);
    assert_ticks(t, 0, 500, 1000, 1500, 2000, 2500, 3000);
    gw_ticks_linear(&t, 2e6, 1e7, 5);
    assert_ticks(t, 0, 2e6, 4e6, 6e6, 8e6, 1e7);
    gw_ticks_linear(&t, 0.1, 0.3, 2); /* both ends, though 0.3 - 0.1 is not 0.2 */
    assert_ticks(t, 1, 0.1, 0.2, 0.3);
    for (int wanted = 1; wanted <= 60; wanted++) {
        gw_ticks_linear(&t, 0.0137, 9.61, wanted);
        assert_true(t.n >= 1 || wanted == 1);
        assert_true(t.n <= (size_t)wanted + 1);
    }
}

static void ticks_of_no_range_are_none(void **state)
{
    (void)state;
    struct gw_ticks t;
    gw_ticks_linear(&t, 3, 3, 5);
    assert_int_equal(t.n, 0);
    gw_ticks_linear(&t, 0, NAN, 5);
    assert_int_equal(t.n, 0);
    gw_ticks_log(&t, 0, 10);
    assert_int_equal(t.n, 0);
    gw_ticks_log(&t, 10, 1);
    assert_int_equal(t.n, 0);
    gw_ticks_linear(&t, 0, INFINITY, 5);
    assert_int_equal(t.n, 0);
}

static size_t count_major(const struct gw_ticks *t)
{
    size_t n = 0;
    for (size_t i = 0; i < t->n; i++) n += !t->minor[i];
    return n;
}

static void log_ticks_are_decades(void **state)
{
    (void)state;
    struct gw_ticks t;
    gw_ticks_log(&t, 0.01, 1000);
    assert_int_equal(count_major(&t), 6);
    assert_int_equal(t.n, 5 * 9 + 1);
    assert_true(t.values[0] == 0.01 && t.values[1] == 0.02 && t.minor[1] && t.values[9] == 0.1 && !t.minor[9]);
    assert_true(t.values[t.n - 1] == 1000);
    gw_ticks_log(&t, 3, 70);
    assert_int_equal(t.n, 7 + 7);         /* 3 to 9, 10 to 70 */
    assert_int_equal(count_major(&t), 4); /* 5, 10, 20, 50 */
    gw_ticks_log(&t, 1e-200, 1e200);      /* thinned out, and never more than there is room for */
    assert_true(t.n > 10 && t.n <= GW_TICKS_MOST && t.values[t.n - 1] > 1e190);
}

/* Twice the area, positive where the ring runs counter-clockwise. */
static double area2(const struct gw_outline *ring)
{
    double sum = 0;
    for (size_t i = 0; i < ring->n; i++) {
        const struct gw_point a = ring->points[i], b = ring->points[(i + 1) % ring->n];
        sum += a.x * b.y - a.y * b.x;
    }
    return sum;
}

static double area_of(const struct contour *contour)
{
    double sum = 0;
    for (size_t i = 0; i < contour->n; i++) sum += area2(&contour->rings[i]) / 2;
    return sum;
}

enum { NX = 61, NY = 41 };

static void cone(double values[NX * NY], double x, double y)
{
    for (int j = 0; j < NY; j++)
        for (int i = 0; i < NX; i++) values[j * NX + i] = -hypot(i - x, j - y);
}

static void contour_of_a_cone_is_a_circle(void **state)
{
    struct world *w = *state;
    double values[NX * NY];
    struct contour c;
    const struct contour_grid grid = {values, NX, NY};
    cone(values, 29.3, 20.7);
    gw_contour_trace(&c, &w->arena, &grid, -13.4);
    assert_int_equal(c.n, 1);
    for (size_t i = 0; i < c.rings[0].n; i++)
        assert_near(hypot(c.rings[0].points[i].x - 29.3, c.rings[0].points[i].y - 20.7), 13.4, 0.01);
    assert_near(area_of(&c), PI * 13.4 * 13.4, 1); /* counter-clockwise: positive */
    for (int i = 0; i < NX * NY; i++) values[i] = -values[i];
    gw_contour_trace(&c, &w->arena, &grid, 13.4); /* the field without the circle: its border, and a hole */
    assert_int_equal(c.n, 2);
    assert_near(area_of(&c), (NX - 1) * (NY - 1) - PI * 13.4 * 13.4, 1);
    assert_true(area2(&c.rings[0]) * area2(&c.rings[1]) < 0);
}

static void regions_close_along_the_border(void **state)
{
    struct world *w = *state;
    double values[NX * NY];
    struct contour c;
    const struct contour_grid grid = {values, NX, NY};
    cone(values, 0, 0); /* a quarter of the circle at the corner */
    gw_contour_trace(&c, &w->arena, &grid, -17.3);
    assert_int_equal(c.n, 1);
    assert_near(area_of(&c), PI * 17.3 * 17.3 / 4, 0.3);
    double along = 0;
    for (size_t i = 0; i < c.rings[0].n; i++) {
        const struct gw_point a = c.rings[0].points[i], b = c.rings[0].points[(i + 1) % c.rings[0].n];
        if (gw_contour_on_border(&grid, a, b)) along += hypot(b.x - a.x, b.y - a.y);
    }
    assert_near(along, 2 * 17.3, 1e-9);
    gw_contour_trace(&c, &w->arena, &grid, -1000); /* everything */
    assert_int_equal(c.n, 1);
    assert_near(area_of(&c), (NX - 1) * (NY - 1), 1e-9);
    gw_contour_trace(&c, &w->arena, &grid, 0.1); /* nothing */
    assert_int_equal(c.n, 0);
    gw_contour_trace(&c, &w->arena, &grid, 0); /* one node: no area */
    assert_int_equal(c.n, 0);
}

/* Opposite corners high: apart where the mean of the cell is low, one band where it is high. */
static void saddles_follow_the_mean(void **state)
{
    struct world *w = *state;
    struct contour c;
    const double apart[] = {1, -2, -2, 1}, joined[] = {2, -1, -1, 2};
    gw_contour_trace(&c, &w->arena, &(struct contour_grid){apart, 2, 2}, 0);
    assert_int_equal(c.n, 2);
    assert_near(area_of(&c), 2 * (1.0 / 3) * (1.0 / 3) / 2, 1e-12);
    gw_contour_trace(&c, &w->arena, &(struct contour_grid){joined, 2, 2}, 0);
    assert_int_equal(c.n, 1);
    assert_near(area_of(&c), 1 - 2 * (1.0 / 3) * (1.0 / 3) / 2, 1e-12);
}

static void thinning_keeps_the_shape(void **state)
{
    (void)state;
    enum { N = 400 };
    struct gw_point points[N], whole[N];
    for (int i = 0; i < N; i++) points[i] = whole[i] = (struct gw_point){i, 30 * sin(i / 40.0)};
    const size_t n = gw_contour_thin(points, N, 0.1);
    assert_true(n > 10 && n < N / 4);
    assert_true(points[n - 1].x == N - 1);
    size_t at = 0;
    for (int i = 0; i < N; i++) {
        while (points[at + 1].x < whole[i].x) at++;
        const double part = (whole[i].x - points[at].x) / (points[at + 1].x - points[at].x);
        assert_near(points[at].y + part * (points[at + 1].y - points[at].y), whole[i].y, 0.1 * sqrt(2));
    }
    /* There and back again on one line: the turning point stays. */
    struct gw_point back[] = {{0, 0}, {1, 0}, {2, 0}, {3, 0}, {2, 0}, {1, 0}};
    assert_int_equal(gw_contour_thin(back, 6, 0.1), 3);
    assert_true(back[1].x == 3);
}

static void svg_text_is_escaped_and_short(void **state)
{
    struct world *w = *state;
    struct gw_canvas canvas = opened(w);
    canvas.title = "a < b & \"c\"";
    canvas.description = "x > y\x01";
    gw_canvas_line(&canvas, (struct gw_point){0.04, -0.04}, (struct gw_point){10.26, 99.96},
                   &(struct gw_look){.line = GW_INK, .width = 0.75});
    gw_canvas_text(&canvas, (struct gw_point){5, 6}, &(struct gw_lettering){.size = 12}, "5'-6\" <&>");
    struct gw_text text = written(w, &canvas);
    assert_non_null(strstr(text.at, "<title id=\"title\">a &lt; b &amp; &quot;c&quot;</title>"));
    assert_non_null(strstr(text.at, "<desc id=\"desc\">x &gt; y\xEF\xBF\xBD</desc>"));
    assert_non_null(strstr(text.at, "role=\"img\""));
    assert_non_null(strstr(text.at, "width=\"200\" height=\"100.5\" viewBox=\"0 0 200 100.5\""));
    assert_non_null(strstr(text.at, "<line x1=\"0\" y1=\"0\" x2=\"10.3\" y2=\"100\" fill=\"none\" stroke=\"#16191d\" "
                                    "stroke-width=\"0.75\"/>"));
    assert_non_null(strstr(text.at, ">5'-6&quot; &lt;&amp;&gt;</text>"));
}

static void paragraphs_break_at_blanks_and_in_long_words(void **state)
{
    struct world *w = *state;
    struct gw_canvas canvas = opened(w);
    const struct gw_lettering font = {.size = 10};
    const struct gw_point at = {10, 20};
    const double end = gw_canvas_paragraph(&canvas, at, 90, &font, "one two three four five six seven eight nine ten");
    assert_true(canvas.n >= 3 && canvas.n <= 6);
    assert_near(end, 20 + 13.5 * (double)canvas.n, 1e-9);
    const size_t before = canvas.n;
    gw_canvas_paragraph(&canvas, at, 30, &font, "unbreakable \xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9");
    assert_true(canvas.n >= before + 4);
    for (size_t i = 0; i < canvas.n; i++) {
        assert_true(canvas.shapes[i].box.right - canvas.shapes[i].box.left <= 90);
        assert_null(strstr(canvas.shapes[i].text, "\xEF\xBF\xBD")); /* no character was cut in two */
    }
    gw_canvas_paragraph(&canvas, at, 1, &font, "ab"); /* one character at least */
    assert_string_equal(canvas.shapes[canvas.n - 1].text, "b");
}

static void grays_go_from_paper_to_dark(void **state)
{
    struct world *w = *state;
    double before = 300;
    for (int i = 0; i <= 7; i++) {
        const char *color = gw_canvas_gray(&w->arena, i / 7.0);
        assert_true(color[0] == '#' && strspn(color + 1, "0123456789abcdef") == 6);
        const double green = (double)(strtoul(color + 1, NULL, 16) >> 8 & 255);
        assert_true(green < before - 5);
        before = green;
    }
}

static void labels_take_the_first_free_place(void **state)
{
    struct world *w = *state;
    struct gw_canvas canvas = opened(w);
    const struct gw_lettering font = {.size = 12, .align = GW_ALIGN_MIDDLE};
    const struct gw_box page = {0, 0, 200, 100};
    const struct gw_point at = {2, 30};
    assert_true(gw_canvas_label(&canvas, at, 20, 3, &page, &font, "first"));
    assert_near(canvas.shapes[0].box.left, 0, 1e-9); /* moved onto the page */
    assert_true(gw_canvas_label(&canvas, at, 20, 3, &page, &font, "first"));
    assert_near(canvas.shapes[1].points[0].y, 50, 1e-9);
    gw_canvas_keep(&canvas, &(struct gw_box){0, 60, 200, 61});
    assert_false(gw_canvas_label(&canvas, at, 20, 3, &page, &font, "first"));
    assert_true(gw_canvas_label(&canvas, at, 20, 4, &page, &font, "first"));
    assert_false(gw_canvas_label(&canvas, (struct gw_point){100, 99}, 20, 9, &page, &font, "beyond"));
    assert_false(
        gw_canvas_label(&canvas, at, 20, 9, &page, &font, "much wider than the two hundred pixels of the page"));
}

static void plots_map_both_kinds_of_axes(void **state)
{
    (void)state;
    const struct gw_plot plot = {50, 20, 300, 200, {1, 1000, true, NULL}, {-5, 15, false, NULL}};
    struct gw_point p;
    assert_true(gw_plot_place(&p, &plot, 10, 0));
    assert_near(p.x, 150, 1e-9);
    assert_near(p.y, 170, 1e-9); /* up the page is down in y */
    assert_false(gw_plot_place(&p, &plot, 0, 0));
    assert_false(gw_plot_place(&p, &plot, -3, 0));
    assert_false(gw_plot_place(&p, &plot, 5, NAN));
}

static void plots_break_and_cut_curves(void **state)
{
    struct world *w = *state;
    struct gw_canvas canvas = opened(w);
    const struct gw_plot plot = {50, 20, 300, 200, {1, 1000, true, "impulse, psi-ms"}, {0.1, 100, true, "psi"}};
    const struct gw_point points[] = {{2, 1}, {20, 5}, {0, 7}, {30, 2}, {1e300, 40}};
    const struct gw_look look = {.line = GW_INK, .width = 2};
    gw_plot_open(&canvas, &plot);
    struct gw_text text = written(w, &canvas);
    assert_int_equal(count_of(text.at, "<text"), 4 + 4 + 2); /* decades and the two labels */
    assert_non_null(strstr(text.at, ">0.1</text>"));
    assert_non_null(strstr(text.at, ">1000</text>"));
    const size_t lines = canvas.n;
    gw_plot_curve(&canvas, &plot, points, 5, &look);
    assert_int_equal(canvas.n - lines, 4); /* two pieces, clipped: zero has no place on a log axis */
    assert_int_equal(gw_plot_marks(&canvas, &plot, points, 5, 3, &look), 2);
    gw_plot_area(&canvas, &plot, points, 5, 0, &look);
    const struct gw_key_entry entries[] = {{"breaks", look, false}, {"case", look, true}};
    assert_true(gw_canvas_key(&canvas, (struct gw_point){60, 30}, 100, entries, 2) > 60);
    text = written(w, &canvas);
    assert_null(strstr(text.at, "nan"));
    assert_null(strstr(text.at, "inf"));
    assert_int_equal(count_of(text.at, "<clipPath"), 2);
    assert_int_equal(count_of(text.at, "<g"), count_of(text.at, "</g>"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(linear_ticks_are_round),
        cmocka_unit_test(ticks_of_no_range_are_none),
        cmocka_unit_test(log_ticks_are_decades),
        WORLD_TEST(contour_of_a_cone_is_a_circle),
        WORLD_TEST(regions_close_along_the_border),
        WORLD_TEST(saddles_follow_the_mean),
        cmocka_unit_test(thinning_keeps_the_shape),
        WORLD_TEST(svg_text_is_escaped_and_short),
        WORLD_TEST(paragraphs_break_at_blanks_and_in_long_words),
        WORLD_TEST(grays_go_from_paper_to_dark),
        WORLD_TEST(labels_take_the_first_free_place),
        cmocka_unit_test(plots_map_both_kinds_of_axes),
        WORLD_TEST(plots_break_and_cut_curves),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
