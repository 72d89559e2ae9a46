/* Where two walls meet by name: the mullion of the corner and its anchors are one of each. They are counted with the
 * wall that the project names first; an option that counts them is paid for them once, whichever side takes it. */
#include "answers/select/select_internal.h"

#include "base/tolerance.h"

#include "judge/corner.h"
#include "judge/line.h"

static struct gw_shared *shared_of(struct gw_shared_list *out, struct gw_arena *arena, size_t first, size_t second)
{
    for (size_t i = 0; i < out->n; i++)
        if (out->items[i].first == first && out->items[i].second == second) return &out->items[i];
    out->items = gw_grow(arena, out->items, out->n, &out->capacity, sizeof *out->items);
    out->items[out->n] = (struct gw_shared){.first = first, .second = second};
    return &out->items[out->n++];
}

/* Of a mullion: the stretches of the other wall beside it, if that wall is named first. */
static void share_mullion(struct gw_shared_list *out, struct gw_ask *ask, const struct gw_plan_places *places,
                          const struct gw_element *e)
{
    struct gw_corner_search search = gw_corner_of(ask, e);
    struct gw_corner_line line;
    if (!gw_corner_next(&search, &line) || line.grid->elevation >= e->grid->elevation) return;
    const struct gw_grid_layer *layer = &line.grid->layers[GW_SORT_MULLION];
    for (size_t i = 0; i < layer->n_strips; i++) {
        const struct gw_grid_strip *strip = &layer->strips[i];
        const double beside = fmin(strip->top, e->top) - fmax(strip->bottom, e->bottom);
        if (!(beside > GW_HAIR_M)) continue;
        const size_t other = layer->groups[i * layer->axis->n_classes + layer->axis->class_of[line.line]];
        shared_of(out, ask->arena, places->of[other], places->of[e->index])->mullion_length +=
            (double)e->count * beside;
    }
}

/* At unlike heights they are two. */
static void share_anchor(struct gw_shared_list *out, struct gw_ask *ask, const struct gw_plan_places *places,
                         const struct gw_element *e)
{
    const struct gw_element *twin = gw_corner_twin(ask->takeoff, e);
    if (!twin || twin->grid->elevation >= e->grid->elevation || gw_is_upper_part(ask->takeoff, e)) return;
    if (fabs(gw_anchor_level(twin) - gw_anchor_level(e)) > GW_HAIR_M) return;
    shared_of(out, ask->arena, places->of[twin->index], places->of[e->index])->anchors += e->count;
}

void gw_share_corners(struct gw_shared_list *out, struct gw_quantities *q, struct gw_ask *ask,
                      const struct gw_plan_places *places)
{
    *out = (struct gw_shared_list){0};
    for (size_t i = 0; i < ask->takeoff->elements.n; i++) {
        const struct gw_element *e = &ask->takeoff->elements.items[i];
        if (!e->meets) continue;
        if (e->kind == GW_MULLION) share_mullion(out, ask, places, e);
        if (e->kind == GW_ANCHOR) share_anchor(out, ask, places, e);
    }
    for (size_t i = 0; i < out->n; i++) {
        q[out->items[i].second].mullion_length -= out->items[i].mullion_length;
        q[out->items[i].second].anchors -= out->items[i].anchors;
    }
}

struct gw_quantities gw_apart(const struct gw_quantities *q, const struct gw_shared_list *shared, size_t place)
{
    struct gw_quantities out = *q;
    for (size_t i = 0; i < shared->n; i++) {
        if (shared->items[i].first != place) continue;
        out.mullion_length -= shared->items[i].mullion_length;
        out.anchors -= shared->items[i].anchors;
    }
    return out;
}

struct gw_quantities gw_counted_at(const struct gw_quantities *q, const struct gw_shared_list *shared,
                                   const struct gw_plan *plan, size_t place, size_t option)
{
    struct gw_quantities out = *q;
    for (size_t i = 0; i < shared->n; i++) {
        const struct gw_shared *s = &shared->items[i];
        if (s->second != place || (plan->choices[s->first].options & gw_option_bit(option))) continue;
        out.mullion_length += s->mullion_length;
        out.anchors += s->anchors;
    }
    return out;
}

double gw_shared_quantity(const struct gw_shared *s, const struct gw_system_option *o)
{
    if (o->of == GW_COUNTS_MULLION) return s->mullion_length;
    return o->of == GW_COUNTS_ANCHOR ? (double)s->anchors : 0;
}
