/* The drawing of plate screws: its bars and figures are what the judge has of that line. */
#include "drawing.h"

#include "galeward/inspection.h"
#include "report/draw/pictures.h"
#include "report/page.h"

enum { BAR = 18 }; /* pixels */
enum part { SURE, RANGE, PULL };

static bool is_bar(const struct gw_drawn *s, enum part part)
{
    if (s->kind != GW_SHAPE_RECTANGLE || fabs(s->points[1].x - s->points[0].x - BAR) > 1e-6) return false;
    if (!s->look.pattern) return part == SURE;
    return s->look.pattern->dots ? part == PULL : part == RANGE;
}

/* The n-th bar of its sort, in pixels of height; 0: there is none. */
static double bar(const struct gw_canvas *canvas, enum part part, size_t n)
{
    for (size_t i = 0; i < canvas->n; i++)
        if (is_bar(&canvas->shapes[i], part) && n-- == 0)
            return canvas->shapes[i].points[1].y - canvas->shapes[i].points[0].y;
    return 0;
}

static size_t bars(const struct gw_canvas *canvas, enum part part)
{
    size_t n = 0;
    for (size_t i = 0; i < canvas->n; i++) n += is_bar(&canvas->shapes[i], part);
    return n;
}

static void must_say(struct world *w, const struct gw_canvas *canvas, double newtons, enum gw_units shown,
                     enum rounding rounding)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_add_quantity(&text, GW_FORCE, shown, newtons, rounding);
    assert_in_range(texts_with(canvas, text.at), 1, 20);
}

/* By the item that is judged of the same line: its own way to what is left. */
static void check_left(struct world *w, const struct gw_screw_line *l)
{
    struct gw_item_result r;
    struct gw_as_read read;
    gw_as_read_clear(&read);
    gw_item_judge(&r, &w->ask, gw_item_of(GW_ITEM_screw_spacing), &l->spot, &read, l->system);
    assert_non_null(r.mechanism);
    assert_near(l->result.remaining_worst, r.remaining_worst, 1e-12);
    if (strcmp(r.mechanism, "clamp") != 0) return;
    const double pull = fmax(l->pull, l->end_pull);
    assert_near(l->left[0] / pull, r.remaining_worst, 1e-9 * r.remaining_worst);
    assert_near(l->left[1] / pull, r.remaining, 1e-9 * r.remaining);
}

static void check_drawn(struct world *w, const struct gw_results *results, const char *wall,
                        const struct gw_system *candidate, enum gw_units shown)
{
    struct gw_screw_line l;
    struct gw_canvas canvas;
    assert_true(gw_find_screw_line(&l, &w->ask, wall, candidate));
    draw_named(&canvas, &w->arena, &results->pictures,
               gw_format(&w->arena, "screws:%s:%s", gw_picture_word(&w->arena, wall),
                         gw_picture_word(&w->arena, candidate->name)),
               shown);
    const bool end = l.end_pull > l.pull, known = gw_given(l.left[0]);
    assert_int_equal(bars(&canvas, PULL), 5);
    assert_int_equal(bars(&canvas, SURE), known ? 5 : 0);
    must_say(w, &canvas, l.pull, shown, UP);
    if (end) must_say(w, &canvas, l.end_pull, shown, UP);
    if (end) assert_near(bar(&canvas, PULL, 0) / bar(&canvas, PULL, 1), l.end_pull / l.pull, 1e-6);
    check_left(w, &l);
    if (!known) {
        assert_in_range(texts_with(&canvas, "not known"), 1, 20);
        return;
    }
    must_say(w, &canvas, l.left[0], shown, DOWN);
    must_say(w, &canvas, l.left[1], shown, DOWN);
    assert_near(bar(&canvas, SURE, 1) / bar(&canvas, PULL, 1), l.left[0] / l.pull, 1e-6);
    assert_near(bar(&canvas, RANGE, 1) / bar(&canvas, PULL, 1), (l.left[1] - l.left[0]) / l.pull, 1e-6);
}

static size_t check_all(struct world *w, enum gw_units shown)
{
    struct gw_results results;
    struct gw_answer answer = {0};
    size_t n = 0;
    judge(w, &results, &answer, &w->takeoff, &w->ask, shown);
    for (size_t c = 0; c < w->model.systems.n; c++)
        for (size_t i = 0; i < w->takeoff.n_walls && gw_has_plate_screws(&w->model.systems.items[c]); i++, n++)
            check_drawn(w, &results, w->takeoff.grids.items[i]->wall, &w->model.systems.items[c], shown);
    return n;
}

static void demos(void **state)
{
    struct world *w = *state;
    static const char *const files[] = {"projects/tern-street.yaml", "projects/gull-point.yaml"};
    for (int shown = GW_US; shown <= GW_SI; shown++)
        for (size_t i = 0; i < 2; i++) {
            gw_diags_init(&w->diags, &w->arena);
            assert_true(gw_model_load(&w->model, &w->arena, &w->diags, files[i], NULL, 0));
            assert_in_range(check_all(w, (enum gw_units)shown), 2, 12);
        }
}

/* Beyond 0.41 of the spacing the plate's end loads its last screw; a wide spacing makes short bars of clamp. */
static void ends_and_wide_lines(void **state)
{
    struct world *w = *state;
    static const double ends[] = {0.05, 0.15, 0.4}, spacings[] = {0.15, 0.2286, 0.6};
    for (size_t i = 0; i < 3; i++) {
        gw_diags_init(&w->diags, &w->arena);
        assert_true(gw_model_load(&w->model, &w->arena, &w->diags, "projects/tern-street.yaml", NULL, 0));
        for (size_t c = 0; c < w->model.systems.n; c++) {
            struct gw_screw_spec *screw = (struct gw_screw_spec *)(uintptr_t)w->model.systems.items[c].screw;
            if (!screw) continue;
            screw->end_distance = ends[i];
            screw->spacing = spacings[i];
        }
        assert_in_range(check_all(w, i == 1 ? GW_SI : GW_US), 2, 12);
    }
}

static void read_sheet(struct world *w, struct gw_inspection *out, const char *text)
{
    static struct gw_readings readings;
    const char *sheet = put_file(w, "read.csv", text);
    gw_diags_init(&w->diags, &w->arena);
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, "projects/tern-street.yaml", NULL, 0));
    assert_true(gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags));
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    const struct gw_source *source = gw_source_read(&w->arena, sheet, &w->diags);
    assert_non_null(source);
    assert_true(gw_readings_read(&readings, &w->model, source));
    gw_inspect(out, &w->ask, &readings, gw_readings_system(&w->model, "projects/systems/heron.yaml"));
}

/* The figures of the drawing are those by which the row was judged. */
static void check_read(struct world *w, const struct gw_inspection *in, const struct gw_results *results,
                       const char *name, size_t screws)
{
    struct gw_pictures pictures;
    struct gw_canvas canvas;
    gw_pictures_of_readings(&pictures, &w->arena, results, in);
    draw_named(&canvas, &w->arena, &pictures, name, GW_US);
    assert_int_equal(bars(&canvas, PULL), screws);
    for (size_t i = 0; i < in->rows.n; i++) {
        const struct gw_inspected *row = &in->rows.items[i];
        struct gw_screw_line l;
        if (row->item->id != GW_ITEM_screw_torque || screws == 1) continue;
        assert_true(gw_find_read_line(&l, &w->ask, row, in->system));
        if (strcmp(row->result->mechanism, "clamp") == 0) /* else its torque is too much for it */
            assert_near(l.left[0] / fmax(l.pull, l.end_pull), row->result->remaining_worst, 1e-9);
        if (screws > i) must_say(w, &canvas, l.left[0], GW_US, DOWN);
    }
}

static void lines_as_they_were_read(void **state)
{
    struct world *w = *state;
    struct gw_inspection in;
    struct gw_results results;
    struct gw_answer answer = {0};
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_add(&text, "wall,column,story,row,edge,line,point,item,value,date,installed,by,note\n");
    static const int torques[] = {97, 80, 45, 140, 95, 95, 95, 95, 95, 20};
    for (int i = 0; i < 10; i++)
        gw_text_addf(&text, "east,6,3,2,left,,%d,screw_torque,%d in-lb,2027-05-04,2027-05-04,A,\n", i + 1, torques[i]);
    gw_text_add(&text,
                "north,2,2,2,left,,\"<b>here & there, a place with a long name\",screw_head,gap,2027-05-04,,A,\n");
    gw_text_add(&text, "plant room,2,1,1,left,,,screw_spacing,24 in,2027-05-04,,A,\n");
    read_sheet(w, &in, text.at);
    answer.model = &w->model;
    answer.takeoff = &w->takeoff;
    gw_results_of(&results, &w->arena, &answer, GW_US);
    check_read(w, &in, &results, "screws:east", 8); /* of ten, the worst is the last of the sheet */
    check_read(w, &in, &results, "screws:north", 1);
    check_read(w, &in, &results, "screws:plant-room", 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(demos),
        WORLD_TEST(ends_and_wide_lines),
        WORLD_TEST(lines_as_they_were_read),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
