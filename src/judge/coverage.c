/* What a structural test reaches: the first recorded dimension that is missing or too small. */
#include "judge_internal.h"

#include <string.h>

struct dimension {
    const char *name;
    double tested, needed; /* m */
};

static struct gw_message short_of(struct gw_ask *ask, const struct dimension *dimensions, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        const struct dimension *d = &dimensions[i];
        if (!gw_given(d->tested))
            return GW_SAY(ask->arena, "the report records no {}; ask the manufacturer for it", gw_of_text(d->name));
        if (d->tested < d->needed - GW_HAIR_M)
            return GW_SAY(ask->arena, "tested {} {}, here {}", gw_of_text(d->name),
                          gw_of_quantity(GW_LENGTH, d->tested), gw_of_quantity(GW_LENGTH, d->needed));
    }
    return (struct gw_message){0};
}

static struct gw_message of_lite(struct gw_ask *ask, const struct gw_tested *t, const struct gw_element *e)
{
    const struct dimension d[] = {{"lite width", t->lite_width, e->width}, {"lite height", t->lite_height, e->pane}};
    const struct gw_message size = short_of(ask, d, 2);
    if (gw_said(&size) || !t->make_up || !e->lite || strcmp(t->make_up, e->lite) == 0) return size;
    return GW_SAY(ask->arena, "tested with make-up {}, here {}", gw_of_text(t->make_up), gw_of_text(e->lite));
}

static struct gw_message of_mullion(struct gw_ask *ask, const struct gw_tested *t, const struct gw_element *e)
{
    if (e->parapet)
        return GW_PLAINLY("framing above the roof carries both skins of the parapet: a wall test does not show it; ask "
                          "for a calculation");
    if (e->corner) return GW_PLAINLY("a corner mullion takes both faces: a flat specimen does not show it");
    if (e->overhang) {
        const struct dimension d[] = {{"overhang", t->overhang, e->span}, {"module", t->module, e->width}};
        return short_of(ask, d, 2);
    }
    const struct dimension d[] = {{"span", t->span, e->span}, {"module", t->module, e->width}};
    const struct gw_message size = short_of(ask, d, 2);
    if (gw_said(&size) || t->spans >= e->spans) return size;
    return GW_SAY(ask->arena, "tested over {} span{}, here {}", gw_of_count(t->spans),
                  gw_of_text(t->spans == 1 ? "" : "s"), gw_of_count(e->spans));
}

static struct gw_message of_transom(struct gw_ask *ask, const struct gw_tested *t, const struct gw_element *e)
{
    const struct dimension d[] = {{"module", t->module, e->span},
                                  {"lite height", t->lite_height, fmax(e->above, e->below)}};
    const struct gw_message size = short_of(ask, d, 2);
    if (gw_said(&size) || !t->make_up || !e->rests || strcmp(t->make_up, e->rests->name) == 0) return size;
    return GW_SAY(ask->arena, "tested under the weight of make-up {}, here {}", gw_of_text(t->make_up),
                  gw_of_text(e->rests->name));
}

/* A screw carries half a lite on each side, so the lites tested are to be no narrower than what it carries. */
static struct gw_message of_screw(struct gw_ask *ask, const struct gw_tested *t, const struct gw_element *e)
{
    const struct dimension d[] = {{"lite width", t->lite_width, e->width}, {"lite height", t->lite_height, e->width}};
    return short_of(ask, d, 2);
}

static const char NO_DIMENSIONS[] = "the report's tested dimensions are not given; ask the manufacturer for them";

struct gw_message gw_lite_shortfall(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e)
{
    return rating->tested ? of_lite(ask, rating->tested, e) : GW_PLAINLY(NO_DIMENSIONS);
}

struct gw_message gw_shortfall(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e)
{
    if (!rating->tested) return GW_PLAINLY(NO_DIMENSIONS);
    switch (e->kind) {
    case GW_LITE:
        return of_lite(ask, rating->tested, e);
    case GW_MULLION:
        return of_mullion(ask, rating->tested, e);
    case GW_TRANSOM:
        return of_transom(ask, rating->tested, e);
    case GW_SCREW:
        return of_screw(ask, rating->tested, e);
    case GW_ANCHOR:
    case GW_KIND_COUNT:
        break;
    }
    return GW_PLAINLY("a laboratory holds the specimen by anchors of its own");
}

void gw_test_link(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                  const struct gw_rating *rating)
{
    const struct gw_element *e = demand->element;
    out->applies = rating->test == GW_TEST_STRUCTURAL && gw_same_component(rating, e->component);
    if (!out->applies) return;
    const struct gw_pressures p = gw_pressures_on(ask, e);
    out->why = gw_shortfall(ask, rating, e);
    out->covers = !gw_said(&out->why);
    out->met = rating->positive >= p.inward && rating->negative >= p.outward ? GW_YES : GW_NO;
}
