/* Sections of pockets, joints and weeps: words on the page, none on another; lengths to the scale that the sheet names;
 * figures those of the records and of the checks; what is not stated said so. */
#include "drawing.h"

#include "report/draw/pictures.h"

struct drawn {
    struct gw_results results;
    struct gw_answer answer;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
};

static void judge_file(struct drawn *d, struct world *w, const char *path, enum gw_units shown)
{
    *d = (struct drawn){.answer = {0}};
    gw_diags_init(&w->diags, &w->arena);
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, path, NULL, 0));
    judge(w, &d->results, &d->answer, &d->takeoff, &d->ask, shown);
}

static bool is_detail(const char *name)
{
    return strncmp(name, "pocket:", 7) == 0 || strncmp(name, "joint:", 6) == 0 || strncmp(name, "weep:", 5) == 0;
}

static const char *text_with(const struct gw_canvas *canvas, const char *words)
{
    for (size_t i = 0; i < canvas->n; i++)
        if (canvas->shapes[i].kind == GW_SHAPE_TEXT && strstr(canvas->shapes[i].text, words))
            return canvas->shapes[i].text;
    return NULL;
}

static const double PAGE = 250 * 96 / 25.4;

/* Every shape on the sheet; the sheet on a page, or it says that it is higher. */
static void check_sheet(const struct gw_canvas *canvas, const char *name)
{
    check_words(canvas, name);
    for (size_t i = 0; i < canvas->n; i++)
        for (size_t k = 0; k < canvas->shapes[i].n; k++) {
            const struct gw_point p = canvas->shapes[i].points[k];
            if (!(p.x >= 0 && p.x <= canvas->width && p.y >= 0 && p.y <= canvas->height))
                fail_msg("%s: a shape leaves the sheet at %g, %g", name, p.x, p.y);
        }
    if (canvas->height > PAGE && !text_with(canvas, "higher than a page"))
        fail_msg("%s: %g high", name, canvas->height);
    if (texts_with(canvas, "No room above")) fail_msg("%s: %s", name, text_with(canvas, "No room above"));
}

static size_t draw_details(struct world *w, const struct gw_results *results, enum gw_units shown)
{
    size_t n = 0;
    for (size_t i = 0; i < results->pictures.n; i++) {
        const struct gw_picture *p = &results->pictures.items[i];
        struct gw_canvas canvas;
        if (!is_detail(p->name)) continue;
        gw_canvas_init(&canvas, &w->arena);
        assert_int_equal(p->figure.draw(&canvas, p->figure.of, shown, NULL), GW_OK);
        check_sheet(&canvas, p->name);
        assert_true(canvas.description && *canvas.description);
        n++;
    }
    return n;
}

static void demos_are_drawn(void **state)
{
    struct world *w = *state;
    struct drawn d;
    static const char *const demos[] = {"projects/tern-street.yaml", "projects/gull-point.yaml"};
    for (size_t i = 0; i < 2; i++)
        for (int shown = GW_US; shown <= GW_SI; shown++) {
            judge_file(&d, w, demos[i], (enum gw_units)shown);
            const size_t of = d.answer.judgement.summaries.n;
            assert_int_equal(draw_details(w, &d.results, (enum gw_units)shown),
                             of * (w->model.project.lites.n + 2 * d.takeoff.n_walls));
        }
}

/* To scale --------------------------------------------------------------------------------------------------------- */

/* Pixels a meter, by the ratio that the sheet names. */
static double scale_of(const struct gw_canvas *canvas)
{
    const char *said = text_with(canvas, "letter. Dashed");
    double drawn = 0, real = 0;
    assert_non_null(said);
    for (const char *at = said; *at; at++)
        if (sscanf(at, "%lf:%lf", &drawn, &real) == 2) return drawn / real * 96 / 0.0254;
    fail_msg("no scale in '%s'", said);
    return 0;
}

/* Pixels of the dimension line that ends before those words, ticks and tail left out. */
static double dimension(const struct gw_canvas *canvas, const char *words)
{
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *t = &canvas->shapes[i];
        if (t->kind != GW_SHAPE_TEXT || strcmp(t->text, words) != 0) continue;
        for (size_t k = 0; k < i; k++) {
            const struct gw_drawn *s = &canvas->shapes[k];
            if (s->kind != GW_SHAPE_POLYLINE || s->n != 2 || s->points[0].y != s->points[1].y) continue;
            if (fabs(s->points[1].x + 4 - t->points[0].x) < 1e-6 && fabs(s->points[0].y - t->points[0].y) < 6)
                return s->points[1].x - 6 - s->points[0].x;
        }
    }
    fail_msg("no dimension '%s'", words);
    return 0;
}

static size_t uprights_of(const struct gw_canvas *canvas, double length)
{
    size_t n = 0;
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *s = &canvas->shapes[i];
        if (s->kind == GW_SHAPE_POLYLINE && s->n == 2 && s->points[0].x == s->points[1].x)
            n += fabs(fabs(s->points[0].y - s->points[1].y) - length) < 0.01;
    }
    return n;
}

/* Of rectangles as wide: all their heights. */
static double heights_of(const struct gw_canvas *canvas, double width)
{
    double sum = 0;
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *s = &canvas->shapes[i];
        if (s->kind == GW_SHAPE_RECTANGLE && fabs(s->points[1].x - s->points[0].x - width) < 1e-9)
            sum += s->points[1].y - s->points[0].y;
    }
    return sum;
}

static bool has_height(const struct gw_canvas *canvas, double height)
{
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *s = &canvas->shapes[i];
        if (s->kind == GW_SHAPE_RECTANGLE && fabs(s->points[1].y - s->points[0].y - height) < 1e-6) return true;
    }
    return false;
}

static void pockets_are_to_scale(void **state)
{
    struct world *w = *state;
    struct drawn d;
    struct gw_canvas canvas;
    judge_file(&d, w, "projects/tern-street.yaml", GW_US);
    draw_named(&canvas, &w->arena, &d.results.pictures, "pocket:vision:heron-75", GW_US);
    const struct gw_system *heron = &w->model.systems.items[0];
    const double px = scale_of(&canvas);
    assert_near(dimension(&canvas, "bite 0.625 in"), heron->drift->bite * px, 1e-6);
    assert_near(dimension(&canvas, "edge clearance 0.375 in"), heron->drift->side_gap * px, 1e-6);
    assert_true(has_height(&canvas, 0.008 * px));
    assert_true(has_height(&canvas, 0.006 * px));
    assert_true(has_height(&canvas, 0.012 * px));
    assert_true(has_height(&canvas, heron->pressure_plate->thickness * px));
    assert_true(has_height(&canvas, heron->mullion->tube->flange * px));
    assert_int_equal(texts_with(&canvas, "gasket: face"), 2);
    /* a system without figures of its pocket: none is drawn */
    draw_named(&canvas, &w->arena, &d.results.pictures, "pocket:vision:plover-60", GW_US);
    assert_int_equal(texts_with(&canvas, "bite: not stated"), 1);
    assert_int_equal(texts_with(&canvas, "edge clearance: not stated"), 1);
    assert_true(has_height(&canvas, 0.008 * scale_of(&canvas)));
}

static const struct gw_finding *of_check(const struct gw_judgement *j, const struct gw_system *s, const char *check)
{
    for (size_t i = 0; i < j->findings.n; i++)
        if (j->findings.items[i].candidate == s && strcmp(j->findings.items[i].demand->check->id, check) == 0)
            return &j->findings.items[i];
    fail_msg("no finding of %s", check);
    return NULL;
}

/* The wall's joint is the check's where there is one wall; its parts add up to what is required, on the page too. */
static void joints_are_the_checks(void **state)
{
    struct world *w = *state;
    struct drawn d;
    judge_file(&d, w, "projects/gull-point.yaml", GW_US);
    const struct gw_wall_grid *g = d.takeoff.grids.items[0];
    assert_int_equal(d.takeoff.n_walls, 1);
    for (size_t c = 0; c < w->model.systems.n; c++) {
        const struct gw_system *s = &w->model.systems.items[c];
        struct gw_judged_joint *joint = gw_alloc(&w->arena, 1, sizeof *joint);
        gw_judge_joint(joint, &d.ask, g, s);
        assert_false(gw_said(&joint->fault));
        assert_int_equal(joint->limits.n, 2);
        const struct gw_finding *f = of_check(&d.answer.judgement, s, "movement");
        bool worst = false;
        for (int i = 0; i < 2; i++) {
            const struct gw_weighed *l = &joint->limits.items[i];
            worst = worst || (l->verdict == f->verdict && fabs(l->required - f->required) < 1e-12 &&
                              fabs(l->provided - f->provided) < 1e-12);
        }
        assert_true(worst);
        struct gw_canvas canvas;
        draw_named(&canvas, &w->arena, &d.results.pictures,
                   gw_format(&w->arena, "joint:seaward:%s", gw_picture_word(&w->arena, s->name)), GW_US);
        const double px = scale_of(&canvas);
        assert_near(heights_of(&canvas, 34), (joint->limits.items[0].required + joint->limits.items[1].required) * px,
                    1e-6);
        assert_in_range(uprights_of(&canvas, s->stack_joint->width * px), 1, 2);
        assert_in_range(uprights_of(&canvas, s->stack_joint->engagement * px), 1, 2);
    }
}

static void weeps_are_to_scale(void **state)
{
    struct world *w = *state;
    struct drawn d;
    struct gw_canvas canvas;
    judge_file(&d, w, "projects/tern-street.yaml", GW_US);
    draw_named(&canvas, &w->arena, &d.results.pictures, "weep:east:heron-75", GW_US);
    const double px = scale_of(&canvas), inch = 0.0254 * px;
    assert_near(dimension(&canvas, "slot 2.000 in, 2 under one lite"), 2 * inch, 1e-6);
    assert_near(dimension(&canvas, "slot 2.000 in to 2.500 in"), 2 * inch, 1e-6);
    assert_near(dimension(&canvas, "offset, middle to middle, at least 6.000 in"), 6 * inch, 1e-6);
    assert_int_equal(texts_with(&canvas, "end dam: not stated"), 1);
    assert_int_equal(texts_with(&canvas, "upstand 3.500"), 1);
    draw_named(&canvas, &w->arena, &d.results.pictures, "weep:east:plover-60", GW_US);
    assert_in_range(texts_with(&canvas, "not stated"), 8, 30);
}

/* Hard cases ------------------------------------------------------------------------------------------------------- */

#define LONG "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW"
static const char HARD[] =
    "galeward: 1\nunits: us\nproject: {name: \"Hard <cases> & more\", risk_category: II}\n"
    "codes: {building: ibc-2021, wind: asce7-16}\n"
    "site: {basic_wind_speed: 140 mph, exposure: C, hurricane_prone: false, seismic: {category: D, sds: 1.0, "
    "story_drift: 1.2 in}}\n"
    "buildings: [{name: main, roof_height: 40 ft, least_width: 90 ft, enclosure: enclosed}]\n"
    "walls:\n  - {name: \"e<as>t & " LONG LONG "\", building: main, width: 40 ft, floors: [0 ft, 13 ft, 26 ft], "
    "top: 40 ft, ends: [corner, corner], columns: {count: 8, width: 5 ft}, rows: [{height: 4 ft, lite: band}, "
    "{height: rest, lite: \"<" LONG ">\"}]}\n"
    "lites:\n  \"<" LONG ">\":\n    layers: [{glass: 6 mm, treatment: tempered}, {cavity: 16 mm}, {glass: 4 mm, "
    "treatment: annealed}, {cavity: 16 mm}, {glass: 6 mm, treatment: heat_strengthened}, {interlayer: pvb, thickness: "
    "1.52 mm}, {glass: 6 mm, treatment: heat_strengthened}]\n"
    "  band: {component: spandrel}\n"
    "%srequirements: {water: 20 psf}\ncandidates: [x.yaml]\n";
static const char MOVES[] = "movement: {live_load: 3/4 in, shortening: 1/8 in, rebound: 1/16 in}\n";

static const char *const SYSTEMS[] = {
    "system: {name: \"Deep <pocket> " LONG "\", kind: stick, glazing: captured}\npocket: [2 1/4 in]\n"
    "mullion: {alloy: 6063-T6, tube: {width: 6 in, depth: 8 in, flange: 1/2 in, web: 3/8 in}}\n"
    "transom: {alloy: 6063-T6, tube: {width: 6 in, depth: 8 in, flange: 1/2 in, web: 3/8 in}}\n"
    "pressure_plate: {alloy: A36, width: 4 in, thickness: 1/2 in}\n"
    "screw: {diameter: 3/8 in, threads_per_inch: 16, hold: tapped, ultimate: 100 ksi, engagement: 1/2 in}\n"
    "drift: {path: racking, side_gap: 3/4 in, end_gap: 1 in, bite: 1 3/4 in}\n"
    "stack_joint: {width: 1/4 in, least_gap: 1/16 in, engagement: 3/8 in, least_overlap: 1/8 in}\n"
    "clamp: {stack: 1 in, chase: 1 in}\n"
    "drainage: {slots: 3, slot_length: 4 in, slot_height: 1/2 in, pocket_depth: 1 in, upstand: 6 in}\n"
    "installation: {cover_weep_length: {at_least: 3 in}, weep_offset: {at_least: 12 in}, end_dam_height: {at_least: 3 "
    "in}, sill_slope: {at_least: 0.2}, face_clearance: {at_least: 3/16 in}}\n",
    "system: {name: B, kind: unitized, glazing: silicone}\n"
    "silicone: {bite: 7/8 in, thickness: 3/8 in, shear_strain: 0.5, edge_seal: {bite: 1/2 in}}\n"
    "drift: {path: racking}\nstack_joint: {width: 3 in, least_gap: 1/2 in}\n",
    "system: {name: Nothing, kind: stick, glazing: captured}\n",
    "system: {name: Mixed, kind: stick, glazing: mixed}\npocket: [1 in, 2 in]\nsilicone: {bite: 1/2 in}\n"
    "pressure_plate: {alloy: 6063-T6, width: 2 1/4 in, thickness: 1/4 in}\n"
    "drift: {path: racking, side_gap: 1/16 in, end_gap: 1/16 in, bite: 1/4 in}\n"
    "drainage: {slots: 1, slot_length: 5 mm, slot_height: 2 mm, pocket_depth: 1/16 in, upstand: 1/2 in, leak_share: "
    "1}\n",
    "system: {name: Small, kind: window_wall, glazing: captured}\n"
    "pressure_plate: {alloy: A36, width: 1 in, thickness: 1/16 in}\ndrift: {path: racking, bite: 3/16 in}\n"
    "screw: {diameter: 1/8 in, threads_per_inch: 32, hold: tapped, ultimate: 100 ksi}\n"
    "drainage: {slot_height: 1/16 in}\ninstallation: {cover_weep_length: {at_most: 12 in}, weep_offset: {at_least: 20 "
    "in}}\n"};

static void hard_cases_are_drawn(void **state)
{
    struct world *w = *state;
    for (size_t i = 0; i < sizeof SYSTEMS / sizeof *SYSTEMS; i++)
        for (int moves = 0; moves < 2; moves++)
            for (int shown = GW_US; shown <= GW_SI; shown++) {
                struct drawn d = {.answer = {0}};
                w->n_files = 0;
                gw_diags_init(&w->diags, &w->arena);
                put_file(w, "x.yaml", gw_format(&w->arena, "galeward: 1\nunits: us\n%s", SYSTEMS[i]));
                must_load(w, gw_format(&w->arena, HARD, moves ? MOVES : ""));
                judge(w, &d.results, &d.answer, &d.takeoff, &d.ask, (enum gw_units)shown);
                assert_int_equal(draw_details(w, &d.results, (enum gw_units)shown), 4);
            }
}

/* A joint of which the file keeps silent is drawn dashed, and asked for. */
static void silence_is_said(void **state)
{
    struct world *w = *state;
    struct drawn d = {.answer = {0}};
    struct gw_canvas canvas;
    put_file(w, "x.yaml", gw_format(&w->arena, "galeward: 1\nunits: us\n%s", SYSTEMS[2]));
    must_load(w, gw_format(&w->arena, HARD, MOVES));
    judge(w, &d.results, &d.answer, &d.takeoff, &d.ask, GW_US);
    draw_named(&canvas, &w->arena, &d.results.pictures, "joint", GW_US);
    assert_int_equal(texts_with(&canvas, "joint: not stated"), 1);
    assert_int_equal(texts_with(&canvas, "engagement: not stated"), 1);
    assert_in_range(texts_with(&canvas, "stack_joint"), 1, 4);
    draw_named(&canvas, &w->arena, &d.results.pictures, "pocket", GW_US);
    assert_int_equal(texts_with(&canvas, "pressure plate: not stated"), 1);
    assert_int_equal(texts_with(&canvas, "screw: not stated"), 1);
    draw_named(&canvas, &w->arena, &d.results.pictures, "weep", GW_US);
    assert_int_equal(texts_with(&canvas, "upstand: not stated"), 1);
    assert_int_equal(texts_with(&canvas, "offset: not stated"), 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {WORLD_TEST(demos_are_drawn),       WORLD_TEST(pockets_are_to_scale),
                                       WORLD_TEST(joints_are_the_checks), WORLD_TEST(weeps_are_to_scale),
                                       WORLD_TEST(hard_cases_are_drawn),  WORLD_TEST(silence_is_said)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
