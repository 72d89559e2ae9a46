/* Which kinds of 'calc' can be drawn, and how. */
#include "report/draw/drawings.h"
#include "galeward/model.h"
#include "report/page.h"

#include <math.h>
#include <string.h>

static const char *const *notes_of(size_t *n, const char *kind, const struct gw_calc_answer *answer)
{
    return gw_calc_find(kind)->notes(answer->out, n);
}

/* NULL: none. */
static const char *mark_of(const struct gw_calc_answer *answer)
{
    return answer->id && *answer->id ? answer->id : NULL;
}

static enum gw_status plate(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct gw_calc_answer *answer = of;
    const struct gw_plate_case *in = answer->in;
    const struct plate_drawing drawing = {.name = "Plate",
                                          .id = mark_of(answer),
                                          .plate = in,
                                          .deflection_thickness = in->thickness,
                                          .deflection_limit = GW_ABSENT};
    return gw_draw_plate(canvas, &drawing, shown, engine);
}

/* A lite: what it is, each load with its use, its limit, and what of it is drawn. */
static void add_pressure(struct gw_text *out, enum gw_units shown, double pressure, enum rounding rounding)
{
    gw_add_quantity(out, GW_PRESSURE, shown, fabs(pressure), rounding);
}

static const char *make_up_line(struct gw_arena *arena, const struct gw_lite_chart *chart, enum gw_units shown,
                                const struct gw_tables *tables)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_text_add(&text, "Make-up, outside to inside: ");
    gw_layers_say(&text, chart->layers, chart->n_layers, shown, tables);
    gw_text_add(&text, ".");
    return text.at;
}

static void add_load(struct gw_text *text, const struct gw_lite_result *r, bool governs, enum gw_units shown)
{
    gw_text_addf(text, "%s ", r->load.name);
    add_pressure(text, shown, r->load.pressure, UP);
    gw_text_add(text, " of ");
    add_pressure(text, shown, r->resistance, DOWN);
    gw_text_add(text, ", use ");
    gw_add_utilization(text, r->utilization);
    if (governs) gw_text_add(text, ", governs");
}

static const char *loads_line(struct gw_arena *arena, const struct gw_lite_verdict *verdict, enum gw_units shown)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_text_add(&text, "Strength: ");
    for (int i = 0; i < verdict->n; i++) {
        if (i) gw_text_add(&text, "; ");
        add_load(&text, &verdict->results[i], i == verdict->governing, shown);
    }
    if (verdict->n == 1)
        gw_text_addf(&text, "; %s not asked", verdict->results[0].load.pressure < 0 ? "inward" : "outward");
    gw_text_add(&text, ".");
    return text.at;
}

static const char *limit_line(struct gw_arena *arena, const struct gw_lite_chart *chart, enum gw_units shown)
{
    struct gw_text text;
    double most = 0;
    if (!gw_given(chart->deflection_limit)) return "Deflection: no limit is asked.";
    for (int i = 0; i < chart->verdict->n; i++) most = fmax(most, fabs(chart->verdict->results[i].deflection));
    gw_text_init(&text, arena);
    gw_text_add(&text, "Deflection of the center: ");
    gw_add_quantity(&text, GW_THICKNESS, shown, most, UP);
    gw_text_add(&text, " of ");
    gw_add_quantity(&text, GW_THICKNESS, shown, chart->deflection_limit, DOWN);
    gw_text_add(&text, ", use ");
    gw_add_utilization(&text, chart->verdict->deflection_use);
    gw_text_add(&text, ".");
    return text.at;
}

static const char *verdict_line(struct gw_arena *arena, const struct gw_lite_verdict *verdict)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_text_addf(&text, "%s: strength %s, use ", verdict->passes ? "pass" : "fail",
                 verdict->results[verdict->governing].load.name);
    gw_add_utilization(&text, verdict->strength_use);
    if (gw_given(verdict->deflection_use)) {
        gw_text_add(&text, "; deflection, use ");
        gw_add_utilization(&text, verdict->deflection_use);
    }
    gw_text_add(&text, ".");
    return text.at;
}

static enum gw_status lite(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct gw_calc_answer *answer = of;
    struct gw_plate_case governing;
    struct gw_lite_chart chart;
    double thickness;
    const char *pane;
    enum gw_status status = gw_lite_plate(&governing, &thickness, &pane, answer->in, answer->out, engine);
    if (status != GW_OK) return status;
    gw_lite_chart(&chart, canvas->arena, answer->in, answer->out);
    const struct gw_lite_result *r = &chart.verdict->results[chart.verdict->governing];
    const char *lines[] = {make_up_line(canvas->arena, &chart, shown, engine->tables),
                           loads_line(canvas->arena, chart.verdict, shown), limit_line(canvas->arena, &chart, shown),
                           gw_format(canvas->arena, "Shown: the pane that governs (%s), under its part of the %s load.",
                                     pane, r->load.name)};
    const struct plate_drawing drawing = {.name = "Lite",
                                          .id = mark_of(answer),
                                          .plate = &governing,
                                          .deflection_thickness = thickness,
                                          .lines = lines,
                                          .n_lines = sizeof lines / sizeof *lines,
                                          .verdict = verdict_line(canvas->arena, chart.verdict),
                                          .passes = chart.verdict->passes,
                                          .deflection_limit = chart.deflection_limit};
    return gw_draw_plate(canvas, &drawing, shown, engine);
}

static enum gw_status beam(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct gw_calc_answer *answer = of;
    struct beam_drawing drawing = {.name = "Beam", .id = mark_of(answer)};
    gw_answer_beam(&drawing.beam, &drawing.result, answer->out);
    drawing.notes = notes_of(&drawing.n_notes, "beam", answer);
    gw_draw_beam(canvas, &drawing, shown, engine);
    return GW_OK;
}

static enum gw_status member(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct gw_calc_answer *answer = of;
    struct gw_member_chart chart;
    struct beam_drawing drawing = {.name = "Member", .id = mark_of(answer), .member = &chart};
    gw_member_chart(&chart, answer->in, answer->out);
    gw_answer_beam(&drawing.beam, &drawing.result, answer->out);
    drawing.notes = notes_of(&drawing.n_notes, "member", answer);
    gw_draw_beam(canvas, &drawing, shown, engine);
    return GW_OK;
}

static enum gw_status response(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct gw_calc_answer *answer = of;
    struct gw_response_chart chart;
    gw_response_chart(&chart, answer->in, answer->out);
    const struct isodamage_drawing drawing = {.chart = &chart, .id = mark_of(answer)};
    return gw_draw_isodamage(canvas, &drawing, shown, engine);
}

static const struct gw_drawing DRAWINGS[] = {
    {"plate", "contours of deflection and of the largest tension of the unloaded face", plate},
    {"lite", "contours of deflection and of the largest tension of the layer that governs, under its share", lite},
    {"beam", "loads and reactions, shear, bending moment, deflection, span by span", beam},
    {"member", "loads and reactions, shear, bending moment, deflection with its limit, span by span", member},
    {"response", "pairs of peak pressure and impulse that break the lite, with the demand and a rating", response},
};

const struct gw_drawing *gw_drawings(size_t *n)
{
    *n = sizeof DRAWINGS / sizeof *DRAWINGS;
    return DRAWINGS;
}

const struct gw_drawing *gw_drawing_find(const char *kind)
{
    for (size_t i = 0; i < sizeof DRAWINGS / sizeof *DRAWINGS; i++)
        if (strcmp(DRAWINGS[i].kind, kind) == 0) return &DRAWINGS[i];
    return NULL;
}
