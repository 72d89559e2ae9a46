/* Reads what a drawing says: its words, its shapes, from the list that every backend writes. */
#ifndef GALEWARD_TESTS_DRAWING_H
#define GALEWARD_TESTS_DRAWING_H

#include "support.h"

#include "galeward/report.h"

/* Words stand on the page, none on another, none too small to be read. */
static inline void check_words(const struct gw_canvas *canvas, const char *what)
{
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *a = &canvas->shapes[i];
        if (a->kind != GW_SHAPE_TEXT) continue;
        if (!(a->box.left >= 0 && a->box.top >= 0 && a->box.right <= canvas->width && a->box.bottom <= canvas->height))
            fail_msg("%s: '%s' leaves the page", what, a->text);
        if (a->lettering.size < GW_LABEL_SIZE) fail_msg("%s: '%s' is too small", what, a->text);
        for (size_t k = 0; k < i; k++) {
            const struct gw_drawn *b = &canvas->shapes[k];
            if (b->kind == GW_SHAPE_TEXT && a->box.left < b->box.right && b->box.left < a->box.right &&
                a->box.top < b->box.bottom && b->box.top < a->box.bottom)
                fail_msg("%s: '%s' lies on '%s'", what, a->text, b->text);
        }
    }
}

/* How many texts hold these words. */
static inline size_t texts_with(const struct gw_canvas *canvas, const char *words)
{
    size_t n = 0;
    for (size_t i = 0; i < canvas->n; i++)
        n += canvas->shapes[i].kind == GW_SHAPE_TEXT && strstr(canvas->shapes[i].text, words) != NULL;
    return n;
}

/* Everything of a result, judged. */
static inline void judge(struct world *w, struct gw_results *results, struct gw_answer *answer,
                         struct gw_takeoff *takeoff, struct gw_ask *ask, enum gw_units shown)
{
    assert_true(gw_takeoff_run(takeoff, &w->model, &w->arena, &w->diags));
    gw_ask_init(ask, &w->model, takeoff, &w->arena);
    gw_answer_check(answer, ask);
    gw_results_of(results, &w->arena, answer, shown);
}

/* One picture of them, drawn and read; it is there. */
static inline void draw_named(struct gw_canvas *canvas, struct gw_arena *arena, const struct gw_pictures *pictures,
                              const char *name, enum gw_units shown)
{
    const struct gw_picture *p = gw_picture_named(pictures, name);
    struct gw_engine engine;
    if (!p) fail_msg("no picture '%s'", name);
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    gw_canvas_init(canvas, arena);
    assert_int_equal(p->figure.draw(canvas, p->figure.of, shown, &engine), GW_OK);
    check_words(canvas, name);
    assert_true(canvas->title && *canvas->title && canvas->description && *canvas->description);
}

#endif
