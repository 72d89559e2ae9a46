/* Elevations of walls: what they say is what the take-off has; words on the page, none on another; large walls draw
 * areas, not lites. */
#include "drawing.h"
#include "report/draw/elevation.h"
#include "report/draw/pictures.h"
#include "report/page.h"

/* What a narrow page puts below the drawing stands in the drawing: classes of the key as they are there, what is called
 * out by its first word. */
static void check_told(const struct gw_canvas *canvas, const char *name)
{
    const bool is_wall = strncmp(name, "elevation:", 10) == 0;
    if (is_wall && !canvas->n_told) fail_msg("%s: nothing is told of its key", name);
    for (size_t i = 0; i < canvas->n_told; i++) {
        const struct gw_told *t = &canvas->told[i];
        const char *words =
            strstr(t->words, ": ") ? gw_strndup(canvas->arena, t->words, strcspn(t->words, " :")) : t->words;
        if (!texts_with(canvas, words)) fail_msg("%s: '%s' is not in the drawing", name, words);
        if (t->swatch) check_words(t->swatch, name);
        if (t->swatch) assert_true(t->swatch->n > 0);
    }
}

/* Beside the answer on a first page: within a third of it, words on none. */
static void check_small(struct world *w, const struct gw_picture *p, enum gw_units shown)
{
    struct gw_canvas canvas;
    gw_canvas_init(&canvas, &w->arena);
    canvas.on_page = canvas.small = true;
    assert_int_equal(p->figure.draw(&canvas, p->figure.of, shown, NULL), GW_OK);
    check_words(&canvas, p->name);
    assert_true(canvas.height < 350);
}

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
        check_told(&canvas, p->name);
        if (strncmp(p->name, "elevation:", 10) == 0) check_small(w, p, shown);
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

/* Which of the words a text is; n: none. */
static size_t index_of(const char *const *words, size_t n, const char *text)
{
    size_t i = 0;
    while (i < n && strcmp(words[i], text) != 0) i++;
    return i;
}

/* Words of the key in the order in which they follow its head; how many there are. */
static size_t key_in_order(const struct gw_canvas *canvas, const char *head, const char *const *words, size_t n)
{
    size_t found = 0, last = 0;
    bool begun = false;
    for (size_t i = 0; i < canvas->n; i++) {
        if (canvas->shapes[i].kind != GW_SHAPE_TEXT) continue;
        const size_t at = begun ? index_of(words, n, canvas->shapes[i].text) : n;
        begun = begun || strcmp(canvas->shapes[i].text, head) == 0;
        if (at == n) continue;
        assert_true(!found || at > last);
        last = at;
        found++;
    }
    return found;
}

/* From what needs action to what is settled, and from most pressure to least. */
static void keys_go_from_dark_to_light(void **state)
{
    struct world *w = *state;
    static const char *const verdicts[] = {"fail", "not shown", "pass", "not required"};
    static const char *const bands[] = {"80 to 90", "70 to 80", "60 to 70", "50 to 60",
                                        "40 to 50", "30 to 40", "20 to 30"};
    struct gw_results results;
    struct gw_answer answer = {0};
    struct gw_canvas canvas;
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, "projects/tern-street.yaml", NULL, 0));
    judge(w, &results, &answer, &w->takeoff, &w->ask, GW_US);
    draw_named(&canvas, &w->arena, &results.pictures, "elevation:east:plover-60", GW_US);
    assert_in_range(key_in_order(&canvas, "Verdict", verdicts, 4), 2, 4);
    draw_named(&canvas, &w->arena, &results.pictures, "elevation:east:outward", GW_US);
    assert_in_range(key_in_order(&canvas, "Outward psf", bands, 7), 2, 5);
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

/* What a specification asks, and what a review finds -------------------------------------------------------------- */

static size_t specified_shapes(struct world *w, enum gw_units shown)
{
    struct gw_results results;
    struct gw_answer answer = {0};
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_specification spec;
    struct gw_pictures pictures;
    struct gw_canvas canvas;
    size_t shapes = 0;
    judge(w, &results, &answer, &takeoff, &ask, shown);
    gw_specify(&spec, &answer, &ask, shown);
    gw_pictures_of_specification(&pictures, &w->arena, &results, &spec);
    for (size_t i = 0; i < takeoff.n_walls; i++) {
        assert_int_equal(strncmp(pictures.items[i].name, "specified:", 10), 0);
        draw_named(&canvas, &w->arena, &pictures, pictures.items[i].name, shown);
        assert_int_equal(texts_with(&canvas, "no row asks it"), 0);
        for (size_t k = 0; k < spec.pressures.n; k++) {
            const struct gw_specified_pressure *p = &spec.pressures.items[k];
            struct gw_text text;
            if (p->framing || !p->row || p->first->grid != takeoff.grids.items[i]) continue;
            gw_text_init(&text, &w->arena);
            gw_add_bare(&text, GW_PRESSURE, shown, p->inward_asd, UP);
            gw_text_add(&text, " in, ");
            gw_add_bare(&text, GW_PRESSURE, shown, p->outward_asd, UP);
            gw_text_add(&text, " out");
            const char *named = gw_format(&w->arena, "%s, zone %d%s: %s", p->row->id, p->first->zone,
                                          p->first->parapet ? " above the roof line" : "", text.at);
            assert_int_equal(texts_with(&canvas, named), 1);
            assert_non_null(strstr(canvas.description, named));
        }
        if (canvas.n > shapes) shapes = canvas.n;
    }
    return shapes;
}

static void what_is_specified_is_in_the_key(void **state)
{
    struct world *w = *state;
    static const char *const demos[] = {"projects/tern-street.yaml", "projects/gull-point.yaml"};
    for (size_t i = 0; i < 2; i++)
        for (int shown = GW_US; shown <= GW_SI; shown++) {
            gw_diags_init(&w->diags, &w->arena);
            assert_true(gw_model_load(&w->model, &w->arena, &w->diags, demos[i], NULL, 0));
            specified_shapes(w, (enum gw_units)shown);
        }
    must_load(w, tower(w, 300, 90, "<the wall & its stair, seen from outside>"));
    assert_in_range(specified_shapes(w, GW_US), 10, 1500);
}

struct reviewed_world {
    struct gw_results results;
    struct gw_answer answer;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_submittal submittal;
    struct gw_review review;
    struct gw_pictures pictures;
};

static void review_file(struct reviewed_world *r, struct world *w, const char *path)
{
    *r = (struct reviewed_world){.answer = {0}};
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, "projects/tern-street.yaml", NULL, 0));
    assert_true(gw_submittal_load(&r->submittal, &w->model, path));
    judge(w, &r->results, &r->answer, &r->takeoff, &r->ask, GW_US);
    gw_review_submittal(&r->review, &r->ask, &r->answer, &r->submittal, NULL);
    gw_pictures_of_review(&r->pictures, &w->arena, &r->results, &r->review);
}

/* The number of a comment: on a flag and in the list under it, or in one of the sentences beside; never both. */
static size_t check_number(const struct gw_canvas *canvas, struct gw_arena *arena, const struct gw_comment *c)
{
    const char *number = gw_format(arena, "%d", c->number);
    size_t alone = 0, said = 0;
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *s = &canvas->shapes[i];
        if (s->kind == GW_SHAPE_TEXT && s->lettering.bold && strcmp(s->text, number) == 0 &&
            s->lettering.align == GW_ALIGN_MIDDLE && s->points[0].y > 200)
            alone++;
    }
    const char *listed = gw_format(arena, "%d %s: ", c->number, gw_consequence_name(c->consequence));
    const char *flagged = gw_format(arena, " %d, %s: ", c->number, gw_consequence_name(c->consequence));
    said = strstr(canvas->description, alone ? flagged : listed) != NULL;
    const char *elsewhere = strstr(canvas->description, "On other walls: ");
    if (elsewhere && strstr(elsewhere, number)) said = 1;
    if (alone) assert_int_equal(alone, 2);
    assert_int_equal(said, 1);
    return alone / 2;
}

static void comments_stand_once(void **state)
{
    struct world *w = *state;
    struct reviewed_world *r = gw_alloc(&w->arena, 1, sizeof *r);
    static const char *const files[] = {"projects/submittals/tern-street-02.yaml",
                                        "projects/submittals/tern-street-02-revision-2.yaml"};
    for (size_t f = 0; f < 2; f++) {
        struct gw_canvas canvas;
        review_file(r, w, files[f]);
        assert_true(r->pictures.n > 0);
        for (size_t i = 0; i < r->pictures.n; i++) {
            draw_named(&canvas, &w->arena, &r->pictures, r->pictures.items[i].name, GW_US);
            size_t flags = 0;
            for (size_t k = 0; k < r->review.comments.n; k++)
                flags += check_number(&canvas, &w->arena, &r->review.comments.items[k]);
            assert_in_range(flags, 1, 8);
        }
    }
}

/* Of a wall with more comments than flags each is still said; names of any length are cut, and stand on the page. */
static void many_comments_are_listed(void **state)
{
    enum { MANY = 30, LENGTH = 3000 };
    struct world *w = *state;
    struct reviewed_world *r = gw_alloc(&w->arena, 1, sizeof *r);
    struct gw_canvas canvas;
    char *name = gw_alloc(&w->arena, LENGTH, 1);
    memset(name, 'W', LENGTH - 1);
    review_file(r, w, "projects/submittals/tern-street-02.yaml");
    struct gw_comment *items = gw_alloc(&w->arena, MANY, sizeof *items);
    static const char *const places[] = {"east, zone 5", "A-1: east, zone 4", "east/lite/1", "north", "nowhere"};
    for (int i = 0; i < MANY; i++)
        items[i] = (struct gw_comment){.number = i + 1,
                                       .item = "screw_spacing",
                                       .subject = name,
                                       .where = GW_SAY(&w->arena, "{}", gw_of_text(places[i % 5])),
                                       .submitted = GW_SAY(&w->arena, "{}", gw_of_text(name)),
                                       .consequence = (enum gw_consequence)(i % GW_CONSEQUENCES)};
    r->review.comments.items = items;
    r->review.comments.n = MANY;
    gw_pictures_of_review(&r->pictures, &w->arena, &r->results, &r->review);
    draw_named(&canvas, &w->arena, &r->pictures, "comments:east", GW_US);
    assert_int_equal(texts_with(&canvas, "18 have a place here"), 1);
    assert_non_null(
        strstr(canvas.description, "More comments have places here: 13, 16, 17, 18, 21, 22, 23, 26, 27, 28."));
    assert_non_null(strstr(canvas.description, "On other walls: 4, 9, 14, 19, 24, 29."));
    assert_non_null(strstr(canvas.description, "Without a place on a wall: 5 fails: "));
}

/* A wall each; what is measured, and the place as the table has it. */
static void inspections_begin_on_the_wall(void **state)
{
    struct world *w = *state;
    struct reviewed_world *r = gw_alloc(&w->arena, 1, sizeof *r);
    struct gw_inspection_sheet *sheet = gw_alloc(&w->arena, 1, sizeof *sheet);
    struct gw_pictures pictures;
    struct gw_canvas canvas;
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, "projects/tern-street.yaml", NULL, 0));
    judge(w, &r->results, &r->answer, &r->takeoff, &r->ask, GW_US);
    gw_inspection_sheet(sheet, &r->ask, &w->model.systems.items[0]);
    gw_pictures_of_sheet(&pictures, &w->arena, &r->results, sheet);
    assert_int_equal(pictures.n, r->takeoff.n_walls);
    for (size_t i = 0; i < pictures.n; i++) {
        draw_named(&canvas, &w->arena, &pictures, pictures.items[i].name, GW_US);
        assert_true(texts_with(&canvas, "story") > 0);
        assert_true(texts_with(&canvas, gw_item_kinds[sheet->items.items[0].item->id].title) > 0 || i > 0);
    }
    /* the first of the sheet's places is flagged where it is said to be */
    draw_named(&canvas, &w->arena, &pictures, pictures.items[0].name, GW_SI);
    const struct gw_wall_grid *grid = r->takeoff.grids.items[0];
    double x, y;
    assert_true(gw_elevation_spot(grid, &sheet->items.items[0].most.spot, &x, &y));
    assert_true(x >= 0 && x <= grid->x[grid->n_columns] && y >= grid->lines.bottom && y <= grid->lines.top);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(demos_are_drawn),
        WORLD_TEST(areas_hold_every_lite_once),
        WORLD_TEST(keys_go_from_dark_to_light),
        WORLD_TEST(large_walls_draw_areas),
        WORLD_TEST(what_is_specified_is_in_the_key),
        WORLD_TEST(comments_stand_once),
        WORLD_TEST(many_comments_are_listed),
        WORLD_TEST(inspections_begin_on_the_wall),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
