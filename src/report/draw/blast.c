/* The lite that blast governs on a wall: what breaks it, what is asked, what a rating covers. */
#include "galeward/plate.h"
#include "report/draw/drawings.h"
#include "report/draw/elevation.h"
#include "report/draw/pictures.h"
#include "report/page.h"

#include <string.h>

static double size_of(const struct gw_finding *f) { return f->demand->element->width * f->demand->element->pane; }

/* The gravest on that wall (NULL: on any); of those that are alike the largest lite. NULL: blast is not asked there. */
static const struct gw_finding *governing(const struct gw_results *results, const struct gw_wall_grid *grid,
                                          const struct gw_system *candidate)
{
    const struct gw_judgement *j = &results->answer->judgement;
    const struct gw_finding *worst = NULL;
    for (size_t i = 0; i < j->findings.n; i++) {
        const struct gw_finding *f = &j->findings.items[i];
        const bool own = f->candidate == candidate && f->demand->hazard && f->demand->element &&
                         strcmp(f->demand->check->id, "blast") == 0;
        if (!own || (grid && f->demand->element->grid != grid)) continue;
        const bool alike = worst && !gw_graver(f, worst) && !gw_graver(worst, f);
        if (!worst || gw_graver(f, worst) || (alike && size_of(f) > size_of(worst))) worst = f;
    }
    return worst;
}

static const char *verdict_of(struct sheet *sheet, const struct gw_finding *f)
{
    return gw_format(sheet->arena, "%s: %s.", gw_verdict_name(f->verdict),
                     gw_message_text(sheet->arena, &f->message, sheet->shown));
}

static void chart_of(struct gw_response_chart *chart, const struct gw_judged_blast *b, const struct gw_model *model)
{
    const struct gw_blast_pair none = {GW_ABSENT, GW_ABSENT};
    *chart =
        (struct gw_response_chart){.curve = b->curve,
                                   .layers = b->type ? b->type->layers.items : NULL,
                                   .n_layers = b->type ? b->type->layers.n : 0,
                                   .probability = model->project.glass ? model->project.glass->probability : GW_ABSENT,
                                   .demand = b->demand,
                                   .breaking = b->breaking,
                                   .least = b->least,
                                   .rating = none,
                                   .breaks = b->response.breaks,
                                   .use = b->response.use,
                                   .notes = b->curve ? b->curve->notes : NULL,
                                   .n_notes = b->curve ? (size_t)b->curve->n_notes : 0};
    if (b->rating) chart->rating = (struct gw_blast_pair){b->rating->pressure, b->rating->impulse};
}

enum gw_status gw_draw_blast(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct wall_picture *p = of;
    const struct gw_answer *answer = p->results->answer;
    const struct gw_finding *f = governing(p->results, p->grid, p->candidate);
    struct sheet words = {.arena = canvas->arena, .shown = shown};
    struct gw_ask ask;
    struct gw_engine own;
    struct gw_judged_blast blast;
    struct gw_response_chart chart;
    gw_ask_init(&ask, answer->model, answer->takeoff, canvas->arena);
    ask.plans = answer->plans;
    gw_judge_blast(&blast, &ask, f);
    chart_of(&chart, &blast, answer->model);
    gw_engine_init(&own, answer->model->tables, NULL);
    own.workspace = gw_alloc_bare(canvas->arena, GW_PLATE_WORKSPACE);
    const char *said[] = {p->also,
                          gw_format(canvas->arena, "%s Lite %s, %s by %s: of this wall the one that blast governs.",
                                    gw_project_line(canvas->arena, p->results), blast.element->id,
                                    gw_sheet_given(&words, GW_LENGTH, blast.element->width),
                                    gw_sheet_given(&words, GW_LENGTH, blast.element->pane)),
                          blast.curve ? "The curve is calculated, whatever a test shows." : NULL};
    const struct isodamage_drawing drawing = {
        .chart = &chart,
        .title = gw_format(canvas->arena, "Wall %s: %s under blast", gw_safe(canvas->arena, p->grid->wall),
                           gw_safe(canvas->arena, p->candidate->name)),
        .said = said,
        .n_said = 3,
        .verdict = verdict_of(&words, f),
        .mark = gw_verdict_classes[f->verdict].mark,
        .rating = blast.rating && blast.rating->report
                      ? gw_sheet_name(&words, gw_safe(canvas->arena, blast.rating->report))
                      : NULL,
        .no_curve = blast.curve ? NULL : gw_message_text(canvas->arena, &blast.fault, shown)};
    const enum gw_status status = gw_draw_isodamage(canvas, &drawing, shown, &own);
    if (engine && status) engine->fault = own.fault;
    return status;
}

void gw_pictures_of_blast(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                          const struct gw_system *candidate)
{
    const struct gw_takeoff *t = results->answer->takeoff;
    if (!governing(results, NULL, candidate)) return;
    for (size_t i = 0; i < t->n_walls; i++) {
        const struct gw_wall_grid *grid = t->grids.items[i];
        struct wall_picture *kept = gw_alloc(arena, 1, sizeof *kept);
        *kept = (struct wall_picture){results, grid, candidate, false, NULL};
        if (!governing(results, grid, candidate)) continue;
        const char *title = gw_format(arena, "Wall %s: %s under blast", grid->wall, candidate->name);
        gw_picture_add(out, arena,
                       gw_format(arena, "blast:%s:%s", gw_picture_word(arena, grid->wall),
                                 gw_picture_word(arena, candidate->name)),
                       &(struct gw_figure){title, title, gw_draw_blast, kept});
    }
}

const struct gw_finding *gw_worst_of_blast(const struct gw_results *results, const struct gw_system *candidate)
{
    return governing(results, NULL, candidate);
}

static bool same(double a, double b) { return (!gw_given(a) && !gw_given(b)) || !(a < b || a > b); }

static bool same_pair(struct gw_blast_pair a, struct gw_blast_pair b)
{
    return gw_given(a.pressure) == gw_given(b.pressure) && same(a.pressure, b.pressure) && same(a.impulse, b.impulse);
}

/* Lite, demand, curve and what a rating covers; whose report says so may differ. */
bool gw_blast_alike(struct gw_arena *arena, const struct gw_results *results, const struct gw_finding *a,
                    const struct gw_finding *b)
{
    const struct gw_answer *answer = results->answer;
    const struct gw_finding *of[] = {a, b};
    struct gw_judged_blast blast[2];
    struct gw_response_chart chart[2];
    for (int i = 0; i < 2; i++) {
        struct gw_ask ask;
        gw_ask_init(&ask, answer->model, answer->takeoff, arena);
        ask.plans = answer->plans;
        gw_judge_blast(&blast[i], &ask, of[i]);
        chart_of(&chart[i], &blast[i], answer->model);
    }
    return a->verdict == b->verdict && a->message.format == b->message.format && blast[0].element == blast[1].element &&
           blast[0].type == blast[1].type && !blast[0].curve == !blast[1].curve && chart[0].breaks == chart[1].breaks &&
           gw_message_same(&blast[0].fault, &blast[1].fault) && same_pair(chart[0].demand, chart[1].demand) &&
           same_pair(chart[0].breaking, chart[1].breaking) && same_pair(chart[0].least, chart[1].least) &&
           same_pair(chart[0].rating, chart[1].rating);
}

void gw_blast_figure(struct gw_figure *out, struct gw_arena *arena, const struct gw_results *results,
                     const struct gw_finding *of, const char *also)
{
    struct wall_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    *kept = (struct wall_picture){results, of->demand->element->grid, of->candidate, false, also};
    const char *title = gw_format(arena, "Wall %s: %s under blast", kept->grid->wall, of->candidate->name);
    *out = (struct gw_figure){title, title, gw_draw_blast, kept};
}

void gw_page_blast(struct page *page, const struct gw_system *candidate)
{
    const struct gw_finding *f = page->report->pictures ? governing(page->results, NULL, candidate) : NULL;
    if (f)
        gw_page_picture(page, &page->results->pictures,
                        gw_format(page->arena, "blast:%s:%s", gw_picture_word(page->arena, f->demand->element->wall),
                                  gw_picture_word(page->arena, candidate->name)));
}
