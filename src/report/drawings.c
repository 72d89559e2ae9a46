/* Which kinds of 'calc' can be drawn, and how. */
#include "report/drawings.h"

#include <string.h>

static enum gw_status plate(struct gw_text *out, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct gw_calc_answer *answer = of;
    const struct gw_plate_case *in = answer->in;
    return gw_draw_plate(out, in, in->thickness, &(struct plate_words){"Plate", ""}, shown, engine);
}

static enum gw_status lite(struct gw_text *out, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct gw_calc_answer *answer = of;
    struct gw_plate_case governing;
    double deflection_thickness;
    const char *pane;
    enum gw_status status = gw_lite_plate(&governing, &deflection_thickness, &pane, answer->in, answer->out, engine);
    if (status != GW_OK) return status;
    const struct plate_words words = {gw_format(out->arena, "Governing pane (%s)", pane),
                                      "The pane that governs, under its part of the load, by the route that governs."};
    return gw_draw_plate(out, &governing, deflection_thickness, &words, shown, engine);
}

static enum gw_status beam(struct gw_text *out, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct gw_calc_answer *answer = of;
    const struct gw_beam *solved;
    const struct gw_beam_result *solution;
    (void)engine;
    gw_answer_beam(&solved, &solution, answer->out);
    gw_draw_beam(out, solved, solution, "Beam", shown);
    return GW_OK;
}

static enum gw_status member(struct gw_text *out, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct gw_calc_answer *answer = of;
    const struct gw_beam *solved;
    const struct gw_beam_result *solution;
    (void)engine;
    gw_answer_beam(&solved, &solution, answer->out);
    gw_draw_beam(out, solved, solution, "Member, drawn from its lower or left end", shown);
    return GW_OK;
}

static enum gw_status response(struct gw_text *out, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct gw_calc_answer *answer = of;
    struct gw_response_chart chart;
    gw_response_chart(&chart, answer->in, answer->out);
    return gw_draw_isodamage(out, &chart, shown, engine);
}

static const struct gw_drawing DRAWINGS[] = {
    {"plate", "contours of deflection and of the largest tension of the unloaded face", plate},
    {"lite", "contours of deflection and of the largest tension of the layer that governs, under its share", lite},
    {"beam", "loads and reactions, bending moment, deflection", beam},
    {"member", "loads and reactions, bending moment, deflection", member},
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
