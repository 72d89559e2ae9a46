/* The words of every drawing: each on the page, none on another, none too small, whatever the case and its names. */
#include "support.h"

#include "galeward/calc.h"
#include "galeward/report.h"

static void check_words(const struct gw_canvas *canvas, const char *what)
{
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *a = &canvas->shapes[i];
        if (a->kind != GW_SHAPE_TEXT) continue;
        if (!(a->box.left >= 0 && a->box.top >= 0 && a->box.right <= canvas->width && a->box.bottom <= canvas->height))
            fail_msg("%s: '%s' leaves the page", what, a->text);
        if (a->lettering.size < GW_LABEL_SIZE) fail_msg("%s: '%s' is too small", what, a->text);
        for (size_t k = 0; k < i; k++) {
            const struct gw_drawn *b = &canvas->shapes[k];
            if (b->kind != GW_SHAPE_TEXT) continue;
            if (a->box.left < b->box.right && b->box.left < a->box.right && a->box.top < b->box.bottom &&
                b->box.top < a->box.bottom)
                fail_msg("%s: '%s' lies on '%s'", what, a->text, b->text);
        }
    }
}

static void put_on(struct world *w, struct gw_canvas *canvas, const char *kind, const char *yaml, enum gw_units shown)
{
    struct gw_engine engine;
    struct gw_calc_answer answer;
    gw_canvas_init(canvas, &w->arena);
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    if (gw_calc_find(kind)->workspace) engine.workspace = gw_alloc(&w->arena, 1, gw_calc_find(kind)->workspace);
    if (!gw_calc_run(&answer, &w->arena, gw_calc_find(kind), node_of(w, yaml), gw_tables_standard(), shown))
        fail_msg("%s: %s", yaml, answer.error);
    const enum gw_status status = gw_drawing_find(kind)->draw(canvas, &answer, shown, &engine);
    if (status) fail_msg("%s: %s", yaml, told(&engine.fault));
}

static void check(struct world *w, const char *kind, const char *yaml)
{
    for (int shown = GW_US; shown <= GW_SI; shown++) {
        struct gw_canvas canvas;
        put_on(w, &canvas, kind, yaml, (enum gw_units)shown);
        assert_true(canvas.n > 10 && canvas.width > 0 && canvas.height > 0);
        check_words(&canvas, yaml);
    }
}

static const char *const NAMES[] = {
    "W1",
    "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
    "the lite beside the stair on the ninth floor, third from the left <when seen from outside> & as scheduled",
    "\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\"
    "u7389"
    "\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\"
    "u7389"
    "\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389\\u7389",
};
enum { N_NAMES = sizeof NAMES / sizeof *NAMES };

static void named(struct world *w, const char *kind, const char *rest)
{
    for (size_t i = 0; i < N_NAMES; i++) check(w, kind, gw_format(&w->arena, "{id: \"%s\", %s}", NAMES[i], rest));
}

static void plates(void **state)
{
    struct world *w = *state;
    static const char *const sizes[] = {"width: 3 m, height: 0.61 m",  "width: 0.5 m, height: 2.5 m",
                                        "width: 2.5 m, height: 2.5 m", "width: 10 mm, height: 12 mm",
                                        "width: 4 m, height: 2.45 m",  "width: 3.4 m, height: 2.1 m"};
    static const char *const loads[] = {"thickness: 5.56 mm, pressure: 3 kPa",
                                        "thickness: 5.56 mm, pressure: 0.00123 Pa",
                                        "thickness: 15.56 mm, pressure: 12 kPa, edges: straight"};
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++)
        for (size_t k = 0; k < sizeof loads / sizeof *loads; k++)
            check(w, "plate", gw_format(&w->arena, "{%s, %s}", sizes[i], loads[k]));
    named(w, "plate", "width: 1.1 m, height: 1.7 m, thickness: 9.02 mm, pressure: 1 kPa");
}

static void lites(void **state)
{
    struct world *w = *state;
    named(w, "lite",
          "width: 60 in, height: 71 in, pressure: 60 psf, pressure_out: 75 psf, deflection_ratio: 90, layers: [{glass: "
          "6 mm, treatment: heat_strengthened, frit: yes}, {cavity: 12 mm}, {glass: 6 mm, treatment: annealed}, "
          "{interlayer: pvb, thickness: 0.060 in}, {glass: 6 mm, treatment: annealed}, {cavity: 12 mm}, {glass: 8 mm, "
          "treatment: tempered}]");
    check(w, "lite",
          "{width: 0.3 m, height: 1.4 m, pressure_out: 90 kPa, deflection_limit: 0.2 mm, layers: [{glass: 3 "
          "mm, treatment: annealed}]}");
    check(w, "lite",
          "{width: 2 m, height: 1 m, pressure: 2 kPa, thicknesses: [6 mm, 8 mm, 10 mm], treatments: "
          "[annealed, tempered], lightest_of: [{layers: [{glass: 6 mm, treatment: annealed}]}]}");
}

static const char *spans(struct world *w, size_t n, double length, const char *more)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_add(&text, "length: ");
    gw_text_number(&text, length, 6);
    gw_text_add(&text, " m, supports: [");
    for (size_t i = 0; i <= n; i++) {
        gw_text_add(&text, i ? ", " : "");
        gw_text_number(&text, i == n ? length : length * (double)i / (double)n, 6);
        gw_text_add(&text, " m");
    }
    gw_text_addf(&text, "], %s", more);
    return text.at;
}

static void beams(void **state)
{
    struct world *w = *state;
    static const size_t numbers[] = {1, 2, 3, 7, 20, 100};
    const char *stiff = "elastic_modulus: 70 GPa, inertia: 8e6 mm4";
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        const char *level = gw_format(&w->arena, "loads: [{from: 0 m, to: 0.9 m, start: 123456.789 N/m}], %s", stiff);
        check(w, "beam", gw_format(&w->arena, "{%s}", spans(w, numbers[i], 1, level)));
        level = gw_format(&w->arena, "loads: [{from: 0 m, to: 900 m, start: 1e-7 N/m, end: 3e9 N/m}], %s", stiff);
        check(w, "beam", gw_format(&w->arena, "{%s}", spans(w, numbers[i], 1000, level)));
    }
    named(w, "beam",
          "length: 13 m, supports: [0.8 m, 4.4 m, 8 m], clamps: [13 m], hinges: [5.2 m, 9 m], loads: [{from: 0 m, to: "
          "6 m, start: 0.4 N/mm, end: 2 N/mm}, {from: 6 m, to: 13 m, start: 1.2 N/mm}, {at: 0 m, force: 2 kN}, {at: "
          "10.5 m, force: -1.4 kN}, {at: 2.5 m, moment: 800 N-m}], elastic_modulus: 70 GPa, inertia: 8e6 mm4");
    check(w, "beam",
          gw_format(&w->arena, "{length: 2 m, supports: [0 m, 2 m], loads: [{at: 1 m, force: 0 N}], %s}", stiff));
}

static void forces_side_by_side(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_add(&text, "{length: 10 m, supports: [0 m, 10 m], elastic_modulus: 70 GPa, inertia: 8e6 mm4, loads: [");
    for (int i = 0; i < 40; i++)
        gw_text_addf(&text, "%s{at: %d.%d m, %s: %d.5 %s}", i ? ", " : "", i / 4, 25 * (i % 4),
                     i % 3 ? "force" : "moment", i % 2 ? 1000 + i : -1000 - i, i % 3 ? "N" : "N-m");
    gw_text_add(&text, "]}");
    check(w, "beam", text.at);
}

static void members(void **state)
{
    struct world *w = *state;
    named(w, "member",
          "orientation: vertical, span: 11 m, supports: [0.5 m, 4.1 m, 7.7 m], hinges: [4.6 m], pressure: 1.4 kPa, "
          "shedding: uniform, left: {width: 1.5 m, heights: [3.5 m, 3.5 m, 4 m]}, right: {width: 1.2 m, heights: [11 "
          "m]}, elastic_modulus: 70 GPa, inertia: 4.2e6 mm4");
    static const char *const inertias[] = {"1 mm4", "9.35 in4", "1e12 mm4"};
    for (size_t i = 0; i < 3; i++)
        check(w, "member",
              gw_format(&w->arena,
                        "{orientation: vertical, span: 24 ft, supports: [0 ft, 12 ft, 24 ft], hinges: [14 ft], "
                        "pressure: 30 psf, shedding: two_way, left: {width: 5 ft, heights: [30 in, 84 in, 6 ft, 102 "
                        "in]}, right: {width: 0 ft}, elastic_modulus: 10100 ksi, inertia: %s}",
                        inertias[i]));
    check(w, "member",
          "{orientation: horizontal, span: 5 ft, pressure: 300 psf, shedding: two_way, height_above: 7 ft, "
          "height_below: 2 ft, elastic_modulus: 10100 ksi, inertia: 0.35 in4, cap: yes}");
}

static void responses(void **state)
{
    struct world *w = *state;
    static const char *const demands[] = {
        "pressure: 4 psi, impulse: 28 psi-ms, rated_pressure: 5 psi, rated_impulse: 25 psi-ms",
        "pressure: 4 psi, impulse: 28 psi-ms, rated_pressure: 4 psi, rated_impulse: 28 psi-ms",
        "pressure: 0.1 psi, impulse: 0.5 psi-ms", "pressure: 900 psi, impulse: 9000 psi-ms"};
    const char *lite = "width: 4 ft, height: 6 ft, probability: 0.5, layers: [{glass: 1/4 in, treatment: "
                       "heat_strengthened}, {interlayer: pvb, thickness: 0.060 in}, {glass: 1/4 in, treatment: "
                       "heat_strengthened}]";
    for (size_t i = 0; i < sizeof demands / sizeof *demands; i++)
        check(w, "response", gw_format(&w->arena, "{%s, %s}", lite, demands[i]));
    named(w, "response", gw_format(&w->arena, "%s, %s", lite, demands[0]));
}

/* The check itself must see what it is there for. */
static void overlaps_would_be_seen(void **state)
{
    struct world *w = *state;
    struct gw_canvas canvas;
    const struct gw_lettering font = {.size = GW_LABEL_SIZE};
    gw_canvas_init(&canvas, &w->arena);
    gw_canvas_text(&canvas, (struct gw_point){10, 20}, &font, "one");
    const struct gw_box one = canvas.shapes[0].box;
    assert_false(gw_canvas_is_free(&canvas, &one));
    assert_true(one.right - one.left > 15 && one.bottom - one.top > 10);
    /* Digits are of one width, in every font of the stack; bold is wider; the box turns with the text. */
    assert_near(gw_lettering_width(&font, "1111"), gw_lettering_width(&font, "8888"), 1e-9);
    const struct gw_lettering bold = {.size = GW_LABEL_SIZE, .bold = true};
    assert_true(gw_lettering_width(&bold, "8888") > gw_lettering_width(&font, "8888"));
    const struct gw_lettering upward = {.size = GW_LABEL_SIZE, .upward = true};
    const struct gw_box turned = gw_lettering_box(&upward, (struct gw_point){10, 20}, "one");
    assert_near(turned.bottom - turned.top, one.right - one.left, 1e-9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(plates),
        WORLD_TEST(lites),
        WORLD_TEST(beams),
        WORLD_TEST(members),
        WORLD_TEST(responses),
        WORLD_TEST(forces_side_by_side),
        WORLD_TEST(overlaps_would_be_seen),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
