/* Walls from above: they lie as the file says and no further; strips are the edge zones of the take-off. */
#include "drawing.h"

#include "report/draw/key_plan.h"
#include "report/draw/pictures.h"
#include "report/page.h"

static const char BUILDING[] =
    "buildings: [{name: main, roof_height: 20 ft, least_width: 90 ft, enclosure: enclosed}]\n";

/* Each wall: name, feet, ends. */
static const char *project(struct world *w, const char *walls[][3], size_t n)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_addf(&text,
                 "galeward: 1\nunits: us\nproject: {name: Ring, risk_category: II}\ncodes: {building: ibc-2021}\n"
                 "site: {basic_wind_speed: 120 mph, exposure: B, hurricane_prone: false}\n%swalls:\n",
                 BUILDING);
    for (size_t i = 0; i < n; i++)
        gw_text_addf(
            &text,
            "  - {name: \"%s\", building: main, width: %s ft, floors: [0 ft], top: 12 ft, ends: [%s], columns: "
            "{count: 2, width: %g ft}, rows: [{height: rest, lite: v}]}\n",
            walls[i][0], walls[i][1], walls[i][2], strtod(walls[i][1], NULL) / 2);
    gw_text_add(&text, "lites: {v: {layers: [{glass: 6 mm, treatment: tempered}]}}\n");
    return text.at;
}

static void lay_out(struct plan_layout *out, struct world *w, struct gw_takeoff *t, const char *walls[][3], size_t n)
{
    must_load(w, project(w, walls, n));
    assert_true(gw_takeoff_run(t, &w->model, &w->arena, &w->diags));
    gw_plan_layout(out, &w->arena, t);
}

static void a_ring_that_closes_is_laid_out(void **state)
{
    struct world *w = *state;
    const char *walls[][3] = {{"s", "100", "{corner: w}, {corner: e}"},
                              {"n", "100", "corner, {corner: w}"},
                              {"e", "60", "corner, {corner: n}"},
                              {"w", "60", "corner, corner"}};
    struct plan_layout layout;
    struct gw_takeoff t;
    lay_out(&layout, w, &t, walls, 4);
    assert_int_equal(layout.shapes.n, 1);
    assert_int_equal(layout.apart.n, 0);
    const struct plan_shape *s = layout.shapes.items;
    assert_true(s->ring && s->n == 4);
    assert_string_equal(s->walls[1].grid->wall, "e");
    assert_near(s->walls[1].to.x, 100 * 0.3048, 1e-9);
    assert_near(s->walls[1].to.y, 60 * 0.3048, 1e-9);
    assert_near(s->walls[3].to.y, 0, 1e-9);
    assert_near(s->reach.right - s->reach.left, 100 * 0.3048, 1e-9);
}

/* What cannot stand at right angles is not bent until it does. */
static void what_does_not_fit_stands_apart(void **state)
{
    struct world *w = *state;
    const char *open[][3] = {{"s", "100", "{corner: w}, {corner: e}"},
                             {"e", "60", "corner, {corner: n}"},
                             {"n", "90", "corner, {corner: w}"},
                             {"w", "60", "corner, corner"}};
    const char *three[][3] = {
        {"s", "100", "{corner: w}, {corner: e}"}, {"e", "60", "corner, {corner: w}"}, {"w", "60", "corner, corner"}};
    const char *five[][3] = {{"a", "100", "none, {corner: b}"},
                             {"b", "60", "corner, {corner: c}"},
                             {"c", "90", "corner, {corner: d}"},
                             {"d", "50", "corner, {corner: e}"},
                             {"e", "20", "corner, none"}};
    const char *across[][3] = {{"a", "100", "none, {corner: b}"},
                               {"b", "60", "corner, {corner: c}"},
                               {"c", "80", "corner, {corner: d}"},
                               {"d", "70", "corner, none"}};
    struct {
        const char *(*walls)[3];
        size_t n;
        const char *why;
    } cases[] = {{open, 4, "do not close"}, {three, 3, "cross"}, {five, 5, "cross"}, {across, 4, "cross"}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct plan_layout layout;
        struct gw_takeoff t;
        lay_out(&layout, w, &t, cases[i].walls, cases[i].n);
        assert_int_equal(layout.shapes.n, cases[i].n);
        assert_int_equal(layout.apart.n, 1);
        assert_non_null(strstr(layout.apart.items[0], cases[i].why));
    }
}

/* A wall that only says corner meets nobody; three round a court stand as a U. */
static void corners_without_names_join_nothing(void **state)
{
    struct world *w = *state;
    const char *alone[][3] = {{"s", "100", "corner, corner"}, {"e", "60", "corner, corner"}};
    const char *court[][3] = {
        {"a", "100", "none, {corner: b}"}, {"b", "60", "corner, {corner: c}"}, {"c", "40", "corner, reentrant"}};
    struct plan_layout layout;
    struct gw_takeoff t;
    lay_out(&layout, w, &t, alone, 2);
    assert_int_equal(layout.shapes.n, 2);
    assert_int_equal(layout.apart.n, 0);
    lay_out(&layout, w, &t, court, 3);
    assert_int_equal(layout.shapes.n, 1);
    assert_false(layout.shapes.items[0].ring);
    assert_near(layout.shapes.items[0].walls[2].to.x, 60 * 0.3048, 1e-9);
}

/* What is solid, in meters by what is drawn, is what the take-off has as edge zones. */
static void check_strips(const struct gw_canvas *canvas, const struct gw_takeoff *t, double ratio)
{
    double solid = 0, want = 0;
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *s = &canvas->shapes[i];
        if (s->kind != GW_SHAPE_RECTANGLE || !s->look.fill || strcmp(s->look.fill, GW_INK) != 0) continue;
        solid += fabs((s->points[1].x - s->points[0].x) * (s->points[1].y - s->points[0].y)) / 7.6; /* 2 mm */
    }
    for (size_t i = 0; i < t->n_walls; i++) {
        const struct gw_wall_grid *g = t->grids.items[i];
        const double width = g->x[g->n_columns];
        const double left = gw_given(g->left_corner) ? fmax(g->strip - g->left_corner, 0) : 0;
        const double right = gw_given(g->right_corner) ? fmax(g->strip - g->right_corner, 0) : 0;
        want += fmin(left + right, width);
    }
    assert_near(solid * ratio * 0.0254 / 96, want, 1e-6 * want);
}

static double ratio_of(const struct gw_canvas *canvas)
{
    for (size_t i = 0; i < canvas->n; i++) {
        const char *at = canvas->shapes[i].kind == GW_SHAPE_TEXT ? strstr(canvas->shapes[i].text, "Scale 1:") : NULL;
        if (at) return strtod(at + strlen("Scale 1:"), NULL);
    }
    fail_msg("no scale");
    return 0;
}

static void check_drawn(struct world *w, enum gw_units shown)
{
    struct gw_results results;
    struct gw_answer answer = {0};
    struct gw_takeoff t;
    struct gw_ask ask;
    struct gw_canvas canvas;
    size_t circles = 0;
    judge(w, &results, &answer, &t, &ask, shown);
    draw_named(&canvas, &w->arena, &results.pictures, "plan", shown);
    for (size_t i = 0; i < canvas.n; i++) circles += canvas.shapes[i].kind == GW_SHAPE_CIRCLE;
    assert_int_equal(circles, t.n_walls);
    check_strips(&canvas, &t, ratio_of(&canvas));
    for (size_t i = 0; i < t.n_walls; i++) {
        struct gw_text width;
        gw_text_init(&width, &w->arena);
        gw_add_quantity(&width, GW_LENGTH, shown, t.grids.items[i]->x[t.grids.items[i]->n_columns], NEAREST);
        assert_in_range(texts_with(&canvas, width.at), 1, 20);
    }
}

static void plans_of_demos_and_hard_ones(void **state)
{
    struct world *w = *state;
    static const char *const demos[] = {"projects/tern-street.yaml", "projects/gull-point.yaml"};
    const char *hard[][3] = {{"<b>WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW", "12",
                              "{corner_at: 4 ft}, {corner: \"x, y & z, a long one\"}"},
                             {"x, y & z, a long one", "400", "corner, {corner: e}"},
                             {"e", "30", "corner, {corner_at: 1 ft}"},
                             {"goes on", "6", "none, none"},
                             {"short", "1", "{corner_at: 2 ft}, {corner_at: 100 ft}"}};
    const char *few[][3] = {{"s", "600", "corner, corner"}, {"t", "2", "corner, reentrant"}};
    for (int shown = GW_US; shown <= GW_SI; shown++) {
        for (size_t i = 0; i < 2; i++) {
            gw_diags_init(&w->diags, &w->arena);
            assert_true(gw_model_load(&w->model, &w->arena, &w->diags, demos[i], NULL, 0));
            check_drawn(w, (enum gw_units)shown);
        }
        must_load(w, project(w, hard, 5));
        check_drawn(w, (enum gw_units)shown);
        must_load(w, project(w, few, 2));
        check_drawn(w, (enum gw_units)shown);
    }
}

/* Of many walls the first are drawn, more are listed, and the rest is counted; a wall shorter than both of its strips
 * is all edge zone. */
static void many_walls_are_counted(void **state)
{
    struct world *w = *state;
    enum { MANY = 34 };
    const char *walls[MANY][3];
    struct gw_results results;
    struct gw_answer answer = {0};
    struct gw_takeoff t;
    struct gw_ask ask;
    struct gw_canvas canvas;
    size_t circles = 0, whole = 0;
    for (int i = 0; i < MANY; i++) {
        walls[i][0] = gw_format(&w->arena, "wall %d", i);
        walls[i][1] = gw_format(&w->arena, "%d", 6 + 3 * i);
        walls[i][2] = i % 2 ? "none, reentrant" : "corner, corner";
    }
    must_load(w, project(w, walls, MANY));
    judge(w, &results, &answer, &t, &ask, GW_US);
    draw_named(&canvas, &w->arena, &results.pictures, "plan", GW_US);
    for (size_t i = 0; i < canvas.n; i++) {
        circles += canvas.shapes[i].kind == GW_SHAPE_CIRCLE;
        whole += canvas.shapes[i].kind == GW_SHAPE_TEXT && strcmp(canvas.shapes[i].text, "all") == 0;
    }
    assert_in_range(circles, 6, MANY - 1);
    assert_int_equal(texts_with(&canvas, gw_format(&w->arena, "And %zu more, as the list", MANY - circles)), 1);
    assert_int_equal(texts_with(&canvas, "more walls of the project file"), 1);
    assert_in_range(whole, 2, 6); /* two figures each, of walls below two strips of 8 ft */
    assert_true(canvas.height < 1000);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(a_ring_that_closes_is_laid_out),
        WORLD_TEST(what_does_not_fit_stands_apart),
        WORLD_TEST(corners_without_names_join_nothing),
        WORLD_TEST(plans_of_demos_and_hard_ones),
        WORLD_TEST(many_walls_are_counted),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
