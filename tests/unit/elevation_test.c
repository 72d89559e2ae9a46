/* Elevations of walls: what they say is what the take-off has; words on the page, none on another; large walls draw
 * areas, not lites. */
#include "drawing.h"
#include "report/draw/elevation.h"

static size_t draw_all(struct world *w, enum gw_units shown)
{
    struct gw_results results;
    struct gw_answer answer = {0};
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    judge(w, &results, &answer, &takeoff, &ask, shown);
    size_t shapes = 0;
    for (size_t i = 0; i < results.pictures.n; i++) {
        const struct gw_picture *p = &results.pictures.items[i];
        struct gw_canvas canvas;
        gw_canvas_init(&canvas, &w->arena);
        assert_int_equal(p->figure.draw(&canvas, p->figure.of, shown, NULL), GW_OK);
        check_words(&canvas, p->name);
        assert_true(canvas.description && *canvas.description);
        if (canvas.n > shapes) shapes = canvas.n;
    }
    assert_true(results.pictures.n > 0);
    return shapes;
}

static void demos_are_drawn(void **state)
{
    struct world *w = *state;
    static const char *const demos[] = {"projects/tern-street.yaml", "projects/gull-point.yaml"};
    for (size_t i = 0; i < 2; i++)
        for (int shown = GW_US; shown <= GW_SI; shown++) {
            gw_diags_init(&w->diags, &w->arena);
            assert_true(gw_model_load(&w->model, &w->arena, &w->diags, demos[i], NULL, 0));
            draw_all(w, (enum gw_units)shown);
        }
}

static size_t parity(const void *context, const struct gw_element *e)
{
    (void)context;
    return e->zone == 5 ? 1 : e->parapet ? 2 : 0;
}

/* The areas are the lites: every place and strip once, no area over a zone's limit or the roof line. */
static void areas_hold_every_lite_once(void **state)
{
    struct world *w = *state;
    struct gw_takeoff takeoff;
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, "projects/tern-street.yaml", NULL, 0));
    assert_true(gw_takeoff_run(&takeoff, &w->model, &w->arena, &w->diags));
    for (size_t i = 0; i < takeoff.n_walls; i++) {
        const struct gw_wall_grid *g = takeoff.grids.items[i];
        const struct elevation of = {.takeoff = &takeoff, .grid = g, .class_of = parity};
        const struct elevation_areas areas = gw_elevation_areas(&of, &w->arena);
        const struct gw_grid_layer *layer = &g->layers[GW_SORT_LITE];
        long panes = 0, taken = 0;
        for (size_t a = 0; a < areas.n; a++)
            panes += (long)((areas.items[a].to - areas.items[a].from) * (areas.items[a].high - areas.items[a].low));
        for (size_t e = g->first_element; e < g->first_element + g->n_elements; e++)
            if (takeoff.elements.items[e].kind == GW_LITE) taken += takeoff.elements.items[e].count;
        assert_int_equal(panes, (long)(layer->n_strips * g->n_columns));
        assert_int_equal(panes, taken);
        if (panes > 100) assert_true(areas.n < (size_t)panes / 4);
    }
}

static const char *tower(struct world *w, int columns, int floors, const char *name)
{
    struct gw_text levels;
    gw_text_init(&levels, &w->arena);
    for (int i = 0; i < floors; i++) gw_text_addf(&levels, "%s%d ft", i ? ", " : "", 13 * i);
    return gw_format(
        &w->arena,
        "galeward: 1\nunits: us\nproject: {name: Tower, risk_category: II}\ncodes: {building: ibc-2021}\n"
        "site: {basic_wind_speed: 120 mph, exposure: B, hurricane_prone: false}\n"
        "buildings: [{name: main, roof_height: %d ft, least_width: 200 ft, enclosure: enclosed}]\n"
        "walls:\n  - name: \"%s\"\n    building: main\n    width: %d ft\n    floors: [%s]\n    top: %d ft\n"
        "    ends: [corner, corner]\n    columns: {count: %d, width: 5 ft}\n"
        "    rows: [{height: 4 ft, lite: spandrel}, {height: rest, lite: vision}]\n"
        "lites:\n  vision: {layers: [{glass: 6 mm, treatment: heat_strengthened}]}\n"
        "  spandrel: {layers: [{glass: 6 mm, treatment: tempered}], component: spandrel}\n",
        13 * floors, name, 5 * columns, levels.at, 13 * floors, columns);
}

/* 80 columns by 40 floors: a page of areas; 300 by 90, 54,000 lites: no more than that. Names of any length. */
static void large_walls_draw_areas(void **state)
{
    struct world *w = *state;
    static const struct {
        int columns, floors;
        const char *name;
    } walls[] = {{80, 40, "east"},
                 {300, 90, "east"},
                 {1, 1, "e"},
                 {3, 60, "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW"},
                 {40, 2, "<the wall & its stair, seen from outside>"}};
    for (size_t i = 0; i < sizeof walls / sizeof *walls; i++) {
        const char *yaml = tower(w, walls[i].columns, walls[i].floors, walls[i].name);
        must_load(w, yaml);
        assert_in_range(draw_all(w, GW_US), 10, 1500);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(demos_are_drawn),
        WORLD_TEST(areas_hold_every_lite_once),
        WORLD_TEST(large_walls_draw_areas),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
