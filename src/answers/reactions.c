/* The schedule of reactions: what every group of anchors hands to the structure. */
#include "galeward/answers.h"
#include "judge/corner.h"

static struct gw_reaction reaction_of(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_anchor_load load;
    gw_anchor_load_of(&load, ask, e);
    const struct gw_element *twin = gw_corner_twin(ask->takeoff, e);
    return (struct gw_reaction){.element = e,
                                .inward = load.inward,
                                .outward = load.outward,
                                .inward_strength = load.inward_strength,
                                .outward_strength = load.outward_strength,
                                .area = load.area,
                                .cut = load.cut,
                                .shared_with = twin ? twin->id : NULL,
                                .fault = load.fault};
}

/* The part above the roof line is told with the part below. */
void gw_find_reactions(struct gw_answer *out, struct gw_ask *ask)
{
    size_t capacity = 0;
    for (size_t i = 0; i < ask->takeoff->elements.n; i++) {
        const struct gw_element *e = &ask->takeoff->elements.items[i];
        if (e->kind != GW_ANCHOR || e->outside) continue;
        const struct gw_reaction r = reaction_of(ask, e);
        if (r.cut && e->parapet) continue;
        out->reactions.items =
            gw_grow(ask->arena, out->reactions.items, out->reactions.n, &capacity, sizeof *out->reactions.items);
        out->reactions.items[out->reactions.n++] = r;
    }
}
