/* Which kinds of 'calc' can be drawn, and how. */
#include "report/drawings.h"

#include <string.h>

static enum gw_status plate(struct gw_text *out, const struct gw_calc_answer *answer, enum gw_units shown,
                            struct gw_engine *engine)
{
    return draw_plate(out, answer->in, &(struct plate_words){"Plate", ""}, shown, engine);
}

static enum gw_status lite(struct gw_text *out, const struct gw_calc_answer *answer, enum gw_units shown,
                           struct gw_engine *engine)
{
    struct gw_plate_case governing;
    const char *layer;
    if (!gw_lite_plate(&governing, &layer, answer->in, answer->out))
        return gw_refuse(engine, GW_MISSING, "pressure", "a drawing shows the lite under a pressure: give one");
    const struct plate_words words = {
        gw_format(out->arena, "Lite, %s", layer),
        "The layer that governs the lite, of the minimum thickness, under its share of the pressure."};
    return draw_plate(out, &governing, &words, shown, engine);
}

static const struct gw_drawing DRAWINGS[] = {
    {"plate", "contours of deflection and of the largest tension of the unloaded face", plate},
    {"lite", "contours of deflection and of the largest tension of the layer that governs, under its share", lite},
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
