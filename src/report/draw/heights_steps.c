/* Which lite of a height takes most, in the middle of the wall and at its edges. */
#include "report/draw/heights.h"

double gw_heights_pressure(const struct gw_element *e, enum heights_way way)
{
    return way == HEIGHTS_INWARD ? e->inward_asd.pa : -e->outward_asd.pa;
}

static void take_worst(struct height_step *step, const struct gw_element *e)
{
    for (int way = 0; way < HEIGHTS_WAYS; way++) {
        const struct gw_element **worst = &step->worst[way][e->zone == 5 ? HEIGHTS_EDGE : HEIGHTS_MIDDLE];
        const double own = gw_heights_pressure(e, (enum heights_way)way);
        if (!gw_given(own)) continue;
        if (!*worst || own > gw_heights_pressure(*worst, (enum heights_way)way)) *worst = e;
    }
}

static bool belongs(const struct height_step *step, const struct gw_grid_strip *strip)
{
    return step->first == strip->story && step->parapet == strip->parapet;
}

struct height_steps gw_height_steps(struct gw_arena *arena, const struct wall_picture *of, bool by_floor)
{
    const struct gw_takeoff *takeoff = of->results->answer->takeoff;
    const struct gw_grid_layer *layer = &of->grid->layers[GW_SORT_LITE];
    const size_t classes = layer->axis->n_classes;
    struct height_steps out = {gw_alloc(arena, layer->n_strips + 1, sizeof *out.items), 0};
    for (size_t i = 0; i < layer->n_strips; i++) {
        const struct gw_grid_strip *strip = &layer->strips[i];
        struct height_step *step = out.n ? &out.items[out.n - 1] : NULL;
        if (!step || !by_floor || !belongs(step, strip)) {
            step = &out.items[out.n++];
            *step = (struct height_step){
                .bottom = strip->bottom, .first = strip->story, .last = strip->story, .parapet = strip->parapet};
        }
        step->top = strip->top;
        for (size_t k = 0; k < classes; k++) take_worst(step, &takeoff->elements.items[layer->groups[i * classes + k]]);
    }
    return out;
}
