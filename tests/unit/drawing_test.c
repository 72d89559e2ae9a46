/* Drawings of cases: the sampled plate, and the pictures of calc. */
#include "written_support.h"

#include "galeward/plate.h"
#include "galeward/plot.h"
#include "galeward/report.h"
#include "report/draw/contour.h"

#include <locale.h>

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
