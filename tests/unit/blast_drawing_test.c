/* The plane of pressure and impulse of a project's lite: its marks are the demand and the rating, its curve breaks it.
 */
#include "drawing.h"

#include "report/draw/pictures.h"
#include "report/page.h"

static const char PROJECT[] =
    "galeward: 1\nunits: us\nproject: {name: Blasts, risk_category: II}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
    "site: {basic_wind_speed: 120 mph, exposure: B, hurricane_prone: false, blast: %s}\n"
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
    "walls: [{name: \"%s\", building: low, width: 9 ft, floors: [0 ft], top: 12 ft, ends: [none, none],\n"
    "  columns: [4 ft, 5 ft], rows: [{height: 4 ft, lite: a}, {height: rest, lite: a}]}]\n"
    "lites: {a: {layers: [%s]}}\ncandidates: [x.yaml]\n";
static const char SYSTEM[] = "galeward: 1\nsystem: {name: \"%s\", kind: stick, glazing: captured}\nratings: [%s]\n";
static const char PANE[] = "{glass: 8 mm, treatment: heat_strengthened}";
static const char UNIT[] = "{glass: 6 mm, treatment: tempered}, {cavity: 12 mm}, {glass: 6 mm, treatment: tempered}";
static const char PAIR[] = "{pressure: 4 psi, impulse: 28 psi-ms, hazard: low}";

struct blasted {
    struct gw_results results;
    struct gw_answer answer;
    struct gw_canvas canvas;
};

static void draw_of(struct blasted *out, struct world *w, const char *blast, const char *layers, const char *ratings,
                    const char *names[2], enum gw_units shown)
{
    *out = (struct blasted){.answer = {0}};
    w->n_files = 0;
    put_file(w, "x.yaml", gw_format(&w->arena, SYSTEM, names[1], ratings));
    must_load(w, gw_format(&w->arena, PROJECT, blast, names[0], layers));
    judge(w, &out->results, &out->answer, &w->takeoff, &w->ask, shown);
    draw_named(&out->canvas, &w->arena, &out->results.pictures, "blast", shown);
}

static const char *const PLAIN[2] = {"b", "X"};

/* Of the marks of the plane: what they stand on, on the page; `fill` tells demand from rating. */
static bool mark(struct gw_point *out, const struct gw_canvas *canvas, const char *fill)
{
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *s = &canvas->shapes[i];
        if (s->kind != GW_SHAPE_CIRCLE || s->radius < 5.9 || strcmp(s->look.fill, fill) != 0) continue;
        *out = s->points[0];
        return true;
    }
    return false;
}

/* 6 psi and 42 psi-ms are 1.5 times 4 and 28: on logarithmic axes as far to the right as up, by their decades. */
static void marks_stand_at_both_figures(void **state)
{
    struct world *w = *state;
    struct blasted b;
    struct gw_point demand, rating;
    draw_of(&b, w, PAIR, PANE,
            "{test: blast, pressure: 6 psi, impulse: 42 psi-ms, hazard: very_low, report: X-1, tested: {lite_width: 5 "
            "ft, lite_height: 8 ft, make_up: a}}",
            (const char **)(uintptr_t)PLAIN, GW_US);
    assert_true(mark(&demand, &b.canvas, GW_INK) && mark(&rating, &b.canvas, GW_PAPER));
    assert_true(rating.x > demand.x && rating.y < demand.y);
    assert_in_range(texts_with(&b.canvas, "4 psi, 28 psi-ms"), 2, 9);
    assert_in_range(texts_with(&b.canvas, "6 psi, 42 psi-ms"), 1, 9);
    assert_in_range(texts_with(&b.canvas, "rating X-1"), 1, 2);
    assert_int_equal(texts_with(&b.canvas, "pass:"), 1);
}

/* The lite that is judged without a rating is the one whose pairs are drawn: the larger. */
static void its_curve_is_the_lite_s(void **state)
{
    struct world *w = *state;
    struct blasted b;
    struct gw_judged_blast judged;
    struct gw_text pair;
    const struct gw_finding *worst = NULL;
    struct gw_point rating;
    draw_of(&b, w, PAIR, PANE, "", (const char **)(uintptr_t)PLAIN, GW_US);
    const struct gw_judgement *j = &b.answer.judgement;
    for (size_t i = 0; i < j->findings.n; i++) {
        const struct gw_finding *f = &j->findings.items[i];
        if (strcmp(f->demand->check->id, "blast") == 0 && gw_graver(f, worst)) worst = f;
    }
    assert_non_null(worst);
    assert_near(worst->demand->element->width, 5 * FT, 1e-9);
    assert_near(worst->demand->element->pane, 8 * FT, 1e-9);
    gw_judge_blast(&judged, &w->ask, worst);
    assert_non_null(judged.curve);
    assert_null(judged.rating);
    assert_near(judged.response.use, worst->utilization, 1e-9 * worst->utilization);
    assert_near(2 * judged.breaking.impulse / judged.breaking.pressure, 2 * 28.0 / 4 / 1000, 1e-6); /* as long */
    assert_in_range(texts_with(&b.canvas, worst->demand->element->id), 1, 2);
    gw_text_init(&pair, &w->arena);
    gw_text_add(&pair, "breaks at ");
    gw_add_figure(&pair, judged.breaking.pressure / 6894.757293168361, DOWN);
    gw_text_add(&pair, " psi");
    assert_int_equal(texts_with(&b.canvas, pair.at), 1);
    assert_false(mark(&rating, &b.canvas, GW_PAPER));
}

/* An insulating unit has no curve unless its inner pane is to take it alone: said, and both marks stand all the same.
 */
static void without_a_curve_it_is_said(void **state)
{
    struct world *w = *state;
    struct blasted b;
    struct gw_point demand, rating;
    draw_of(&b, w, PAIR, UNIT, "{test: blast, pressure: 3 psi, impulse: 40 psi-ms, report: X-2}",
            (const char **)(uintptr_t)PLAIN, GW_SI);
    assert_in_range(texts_with(&b.canvas, "No pairs that break it are drawn"), 1, 1);
    assert_true(mark(&demand, &b.canvas, GW_INK) && mark(&rating, &b.canvas, GW_PAPER));
    assert_true(rating.x > demand.x && rating.y > demand.y);
    assert_int_equal(texts_with(&b.canvas, "breaks at"), 0);
    draw_of(&b, w, "{pressure: 4 psi, impulse: 28 psi-ms, hazard: low, unit: inner_alone}", UNIT, "",
            (const char **)(uintptr_t)PLAIN, GW_SI);
    assert_int_equal(texts_with(&b.canvas, "breaks at"), 1);
}

/* From near and light to far and heavy, whatever the names. */
static void demands_and_names_of_all_sizes(void **state)
{
    struct world *w = *state;
    static const char *const blasts[] = {"{charge: 5 kg, standoff: 40 m, hazard: low}",
                                         "{pressure: 80 psi, impulse: 600 psi-ms}",
                                         "{pressure: 0.02 psi, impulse: 0.1 psi-ms}"};
    static const char *names[2] = {"<b>WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
                                   "the system beside the stair, <as seen> & scheduled, with a long name"};
    for (size_t i = 0; i < 3; i++)
        for (int shown = GW_US; shown <= GW_SI; shown++) {
            struct blasted b;
            draw_of(&b, w, blasts[i], PANE,
                    "{test: blast, pressure: 6 psi, impulse: 42 psi-ms, report: \"WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW\"}",
                    names, (enum gw_units)shown);
        }
}

/* Asked for none, there is none. */
static void no_demand_no_drawing(void **state)
{
    struct world *w = *state;
    struct gw_results results;
    struct gw_answer answer = {0};
    put_file(w, "x.yaml", gw_format(&w->arena, SYSTEM, "X", ""));
    must_load(w, gw_format(&w->arena, PROJECT, "none", "b", PANE));
    judge(w, &results, &answer, &w->takeoff, &w->ask, GW_US);
    assert_null(gw_picture_named(&results.pictures, "blast"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(marks_stand_at_both_figures), WORLD_TEST(its_curve_is_the_lite_s),
        WORLD_TEST(without_a_curve_it_is_said),  WORLD_TEST(demands_and_names_of_all_sizes),
        WORLD_TEST(no_demand_no_drawing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
