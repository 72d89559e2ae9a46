/* Drawings: ticks, marching squares, the SVG text, plots, the sampled plate and its picture. */
#include "support.h"

#include "galeward/plate.h"
#include "galeward/plot.h"
#include "galeward/report.h"
#include "galeward/svg.h"
#include "report/draw/contour.h"

#include <locale.h>

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

static struct gw_canvas opened(struct world *w)
{
    struct gw_canvas canvas;
    gw_canvas_init(&canvas, &w->arena);
    canvas.width = 200;
    canvas.height = 100.5;
    return canvas;
}

static struct gw_text written(struct world *w, const struct gw_canvas *canvas)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_svg_write(&text, canvas);
    return text;
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

static size_t count_of(const char *text, const char *word)
{
    size_t n = 0;
    for (; (text = strstr(text, word)); text++) n++;
    return n;
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

static struct gw_plate_case pane(double width, double height)
{
    return (struct gw_plate_case){width,     height,        0.00556,        2130,          GW_ABSENT,
                                  GW_ABSENT, GW_PLATE_FREE, GW_PLATE_TABLE, GW_NO_INTEGER, 0};
}

static void engine_with_memory(struct world *w, struct gw_engine *engine)
{
    gw_engine_init(engine, gw_tables_standard(), NULL);
    engine->workspace = gw_alloc(&w->arena, 1, GW_PLATE_WORKSPACE);
}

enum { PX = 31, PY = 41 };

static void samples_agree_with_the_result(void **state)
{
    struct world *w = *state;
    struct gw_engine engine;
    struct gw_plate_result r, turned;
    struct gw_plate_case in = pane(1.237, 1.731);
    double deflection[PX * PY], stress[PX * PY], over[PX * PY];
    engine_with_memory(w, &engine);
    assert_int_equal(gw_plate_sample(&r, &in, PX, PY, deflection, stress, &engine), GW_OK);
    assert_string_equal(r.method, "direct"); /* though the case asked for the table */
    const int center = PY / 2 * PX + PX / 2;
    double most = 0, sum = 0;
    assert_near(deflection[center], r.deflection, 1e-12);
    assert_near(stress[center], r.stress_center, 1e-3);
    for (int j = 0; j < PY; j++)
        for (int i = 0; i < PX; i++) {
            const double weight = (i == 0 || i == PX - 1 ? 0.5 : 1) * (j == 0 || j == PY - 1 ? 0.5 : 1);
            most = fmax(most, stress[j * PX + i]);
            sum += weight * deflection[j * PX + i];
            assert_true(deflection[j * PX + i] == deflection[(PY - 1 - j) * PX + PX - 1 - i]);
            assert_true(stress[j * PX + i] == stress[j * PX + PX - 1 - i]);
        }
    for (int i = 0; i < PX; i++) assert_near(deflection[i], 0, 1e-15); /* the lower edge */
    assert_true(most <= r.stress_max * (1 + 1e-9) && most > 0.97 * r.stress_max);
    assert_near(sum / ((PX - 1) * (PY - 1)), r.mean_deflection, 2e-3 * r.mean_deflection); /* trapezoids */
    in = pane(1.731, 1.237);                                                               /* lying: the same, turned */
    assert_int_equal(gw_plate_sample(&turned, &in, PY, PX, NULL, over, &engine), GW_OK);
    for (int j = 0; j < PY; j++)
        for (int i = 0; i < PX; i++) assert_near(over[i * PY + j], stress[j * PX + i], 1);
}

static void samples_refuse_and_rest(void **state)
{
    struct world *w = *state;
    struct gw_engine engine;
    struct gw_plate_result r;
    struct gw_plate_case in = pane(1.237, 1.731);
    double values[] = {9, 9, 9, 9, 9, 9};
    engine_with_memory(w, &engine);
    assert_int_equal(gw_plate_sample(&r, &in, 1, 3, values, NULL, &engine), GW_BAD_VALUE);
    in.height = 12;
    assert_int_equal(gw_plate_sample(&r, &in, 2, 3, values, NULL, &engine), GW_OUTSIDE_METHOD);
    assert_true(values[0] == 9);
    in = pane(1.237, 1.731);
    in.pressure = 0;
    assert_int_equal(gw_plate_sample(&r, &in, 2, 3, values, NULL, &engine), GW_OK);
    for (int i = 0; i < 6; i++) assert_true(values[i] == 0);
}

static bool answer_of(struct world *w, struct gw_calc_answer *answer, const char *kind, const char *yaml)
{
    return gw_calc_run(answer, &w->arena, gw_calc_find(kind), node_of(w, yaml), gw_tables_standard(), GW_UNITS_NONE);
}

static struct gw_text drawn(struct world *w, const char *kind, const char *yaml, enum gw_units shown)
{
    struct gw_engine engine;
    struct gw_calc_answer answer;
    struct gw_canvas canvas;
    gw_canvas_init(&canvas, &w->arena);
    engine_with_memory(w, &engine);
    assert_true(answer_of(w, &answer, kind, yaml));
    enum gw_status status = gw_drawing_find(kind)->draw(&canvas, &answer, shown, &engine);
    if (status) print_error("%s\n", told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return written(w, &canvas);
}

static const char *const LITE = "{width: 60 in, height: 71 in, basis: standard, pressure: 60 psf, layers: [{glass: 6 "
                                "mm, treatment: heat_strengthened}, "
                                "{cavity: 12 mm}, {glass: 8 mm, treatment: annealed}]}";

/* What the picture shows of a lite is what the case answers. */
static void the_lite_is_drawn_under_its_share(void **state)
{
    struct world *w = *state;
    struct gw_engine engine;
    struct gw_calc_answer answer;
    struct gw_plate_case plate;
    struct gw_plate_result result;
    struct gw_text json;
    const char *layer;
    double bending;
    engine_with_memory(w, &engine);
    assert_true(answer_of(w, &answer, "lite", LITE));
    assert_int_equal(gw_lite_plate(&plate, &bending, &layer, answer.in, answer.out, &engine), GW_OK);
    assert_string_equal(layer, "lite 2");
    assert_true(bending == plate.thickness);
    assert_int_equal(gw_plate(&result, &plate, &engine), GW_OK);
    gw_text_init(&json, &w->arena);
    assert_true(gw_calc_case(&json, &w->arena, gw_calc_find("lite"), node_of(w, LITE), gw_tables_standard()));
    const struct gw_node *said = node_of(w, json.at);
    double deflection, stress;
    const char *text = text_at(said, "deflection_m");
    assert_true(gw_read_number(text, strlen(text), &deflection) > 0);
    text = text_at(said, "stress_max_pa");
    assert_true(gw_read_number(text, strlen(text), &stress) > 0);
    assert_near(result.deflection, deflection, 2e-3 * deflection); /* a response table may stand behind the answer */
    assert_near(result.stress_max, stress, 1e-2 * stress);
    const char *without = "{width: 60 in, height: 71 in, layers: [{glass: 6 mm, treatment: annealed}]}";
    assert_true(answer_of(w, &answer, "lite", without));
    assert_int_equal(gw_lite_plate(&plate, &bending, &layer, answer.in, answer.out, &engine), GW_MISSING);
    struct gw_canvas canvas = opened(w);
    assert_int_equal(gw_drawing_find("lite")->draw(&canvas, &answer, GW_US, &engine), GW_MISSING);
    assert_int_equal(canvas.n, 0);
}

/* The number after the first of some words. */
static double number_after(const char *text, const char *part)
{
    double value = GW_ABSENT;
    const char *at = strstr(text, part);
    assert_non_null(at);
    at += strlen(part);
    assert_true(gw_read_number(at, strlen(at), &value) > 0);
    return value;
}

/* The drawing's words against the answer. By the thickness for stress the plate would seem stiffer: 10.26 mm to 9.20 mm
 * here by first principles, 11.91 mm by the standard's factors. */
static void a_laminate_bends_by_its_thickness_for_deflection(void **state)
{
    struct world *w = *state;
    static const char *const bases[] = {"standard", "first_principles"};
    for (size_t i = 0; i < 2; i++) {
        const char *lite =
            gw_format(&w->arena,
                      "{width: 60 in, height: 90 in, basis: %s, pressure: 30 psf, layers: [{glass: 6 mm, treatment: "
                      "tempered}, {interlayer: pvb, thickness: 0.060 in}, {glass: 6 mm, treatment: tempered}]}",
                      bases[i]);
        struct gw_text json, svg = drawn(w, "lite", lite, GW_SI);
        gw_text_init(&json, &w->arena);
        assert_true(gw_calc_case(&json, &w->arena, gw_calc_find("lite"), node_of(w, lite), gw_tables_standard()));
        const double bent = number_after(json.at, "\"deflection_m\":");
        const double drawn_mm = number_after(svg.at, "Contours of deflection, largest ");
        assert_near(drawn_mm, bent * 1e3, 2e-3 * drawn_mm);
        assert_non_null(strstr(svg.at, "thick for stress and"));
    }
}

static void a_case_with_an_error_says_which(void **state)
{
    struct world *w = *state;
    struct gw_calc_answer answer;
    assert_false(answer_of(w, &answer, "plate", "{width: 1 m, height: 9 m, thickness: 6 mm, pressure: 1 kPa}"));
    assert_string_equal(answer.error_code, "outside_method");
    assert_string_equal(answer.error_key, "height");
    assert_non_null(strstr(answer.error, "limit of 5"));
    assert_null(gw_drawing_find("wind"));
}

static void drawings_do_not_follow_the_locale(void **state)
{
    struct world *w = *state;
    struct gw_text plain = drawn(w, "lite", LITE, GW_SI);
    assert_non_null(strstr(plain.at, "1.524 m by 1.803 m"));
    assert_int_equal(count_of(plain.at, "<svg"), 1);
    assert_string_equal(plain.at + plain.length - 7, "</svg>\n");
    struct gw_text again = drawn(w, "lite", LITE, GW_SI);
    assert_string_equal(plain.at, again.at);
    if (!setlocale(LC_ALL, "de_DE.UTF-8")) {
        print_message("no locale with a decimal comma here\n");
        skip();
    }
    struct gw_text comma = drawn(w, "lite", LITE, GW_SI);
    setlocale(LC_ALL, "C");
    assert_string_equal(plain.at, comma.at);
}

/* Wide, tall, square, and both ways of holding the edges; every picture keeps its marks on the page. */
static void every_shape_is_drawn(void **state)
{
    struct world *w = *state;
    static const char *const cases[] = {
        "{width: 3 m, height: 0.61 m, thickness: 5.56 mm, pressure: 3 kPa}",
        "{width: 0.5 m, height: 2.5 m, thickness: 15.56 mm, pressure: 3 kPa}",
        "{width: 2.5 m, height: 2.5 m, thickness: 5 mm, pressure: 4 kPa, edges: straight}",
        "{width: 1.1 m, height: 1.7 m, thickness: 9.02 mm, pressure: 1 Pa}",
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_text text = drawn(w, "plate", cases[i], i % 2 ? GW_US : GW_SI);
        assert_true(text.length < 100000);
        assert_null(strstr(text.at, "nan"));
        assert_true(count_of(text.at, "<path") >= 6); /* bands of both panels */
        for (const char *at = text.at; (at = strstr(at, "<circle cx=\"")); at++) {
            double x;
            assert_true(gw_read_number(at + 12, 20, &x) > 0);
            assert_true(x > 0 && x < 726);
        }
    }
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
        WORLD_TEST(samples_agree_with_the_result),
        WORLD_TEST(samples_refuse_and_rest),
        WORLD_TEST(the_lite_is_drawn_under_its_share),
        WORLD_TEST(a_laminate_bends_by_its_thickness_for_deflection),
        WORLD_TEST(a_case_with_an_error_says_which),
        WORLD_TEST(drawings_do_not_follow_the_locale),
        WORLD_TEST(every_shape_is_drawn),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
