/* The page of many candidates draws once what is alike, and leaves nobody out. */
#include "drawing.h"

#include "report/draw/pictures.h"
#include "report/page.h"

enum { MANY = 24 };

struct shown {
    const struct gw_figure *items[MANY];
    size_t n;
};

static bool is_kind(const struct gw_figure *figure, bool blast)
{
    return blast ? figure->draw == gw_draw_blast : figure->draw == gw_draw_screws;
}

static void figures_of(struct shown *out, const struct gw_report *report, bool blast)
{
    out->n = 0;
    for (size_t i = 0; i < report->n; i++) {
        const struct gw_block *b = &report->blocks[i];
        if (b->kind != GW_FIGURE || !is_kind(&b->figure, blast)) continue;
        assert_true(out->n < MANY);
        out->items[out->n++] = &b->figure;
    }
}

static const char *words_of(struct world *w, const struct gw_figure *figure)
{
    struct gw_canvas canvas;
    struct gw_text out;
    gw_canvas_init(&canvas, &w->arena);
    assert_int_equal(figure->draw(&canvas, figure->of, GW_US, NULL), GW_OK);
    check_words(&canvas, figure->title);
    gw_text_init(&out, &w->arena);
    for (size_t i = 0; i < canvas.n; i++)
        if (canvas.shapes[i].kind == GW_SHAPE_TEXT) gw_text_addf(&out, "%s ", canvas.shapes[i].text);
    return out.at;
}

/* What follows the project's line and what the report is called by: the same in all of a group. */
static const char *verdict_in(struct world *w, const char *words, bool blast)
{
    const char *from = strstr(words, blast ? "Make-up:" : "Least is left");
    assert_non_null(from);
    const char *end = strstr(from, blast ? "rating" : "Suction on each");
    return end ? gw_strndup(&w->arena, from, (size_t)(end - from)) : from;
}

static void report_of(struct world *w, struct gw_report *report, struct gw_results *results, struct gw_answer *answer,
                      const char *path)
{
    const bool good = gw_model_load(&w->model, &w->arena, &w->diags, path, NULL, 0) &&
                      gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags);
    assert_true(good);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_answer_check(answer, &w->ask);
    gw_results_of(results, &w->arena, answer, GW_US);
    const struct gw_result result = gw_result_check(results);
    gw_report_init(report, &w->arena);
    report->pictures = true;
    result.page(report, &result);
}

/* Each candidate is in the title or among those that have the same figures, once; its own drawing says the same. */
static void check_kind(struct world *w, const struct gw_report *report, const struct gw_results *results, bool blast)
{
    struct shown shown;
    figures_of(&shown, report, blast);
    assert_in_range(shown.n, 1, 2);
    for (size_t c = 0; c < w->model.systems.n; c++) {
        const char *name = w->model.systems.items[c].name;
        const char *own =
            gw_format(&w->arena, "%s:seaward:%s", blast ? "blast" : "screws", gw_picture_word(&w->arena, name));
        size_t n = 0;
        for (size_t i = 0; i < shown.n; i++) {
            const char *words = words_of(w, shown.items[i]);
            if (!strstr(words, name)) continue;
            n++;
            const char *alone = words_of(w, &gw_picture_named(&results->pictures, own)->figure);
            assert_string_equal(verdict_in(w, words, blast), verdict_in(w, alone, blast));
        }
        assert_int_equal(n, 1);
    }
}

static void like_candidates_share_a_drawing(void **state)
{
    struct world *w = *state;
    struct gw_report report;
    struct gw_results results;
    struct gw_answer answer;
    report_of(w, &report, &results, &answer, "projects/gull-point.yaml");
    check_kind(w, &report, &results, true);
    check_kind(w, &report, &results, false);
}

/* A rating that fails is not hidden behind those that pass. */
static void the_gravest_stands_first(void **state)
{
    struct world *w = *state;
    struct gw_report report;
    struct gw_results results;
    struct gw_answer answer;
    struct shown shown;
    report_of(w, &report, &results, &answer, "projects/gull-point.yaml");
    figures_of(&shown, &report, true);
    assert_int_equal(shown.n, 2);
    assert_non_null(strstr(words_of(w, shown.items[0]), "fail: A-405"));
    assert_null(strstr(words_of(w, shown.items[0]), "The same figures"));
    assert_non_null(strstr(words_of(w, shown.items[1]), "The same figures: Dunlin 110, "));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(like_candidates_share_a_drawing),
        WORLD_TEST(the_gravest_stands_first),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
