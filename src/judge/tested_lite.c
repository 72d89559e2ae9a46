/* Which lites one specimen reaches: size, support, hold of the edges, make-up. */
#include "judge/coverage.h"
#include "judge/glass_lite.h"
#include "judge/specimen.h"

#include "base/fields.h"
#include "base/tolerance.h"

#include <string.h>

static struct gw_message short_of_one(struct gw_ask *ask, const struct gw_tested_lite *lite, const struct gw_element *e,
                                      const struct gw_lite_type *type, bool named_alike)
{
    const struct gw_dimension d[] = {{"lite width", lite->width, e->width}, {"lite height", lite->height, e->pane}};
    const struct gw_message size = gw_specimen_short_of(ask, d, COUNT(d));
    const int edges = lite->support == GW_NO_INTEGER ? 4 : lite->support;
    if (type) gw_compare_number(ask, "edges held", GW_RATIO, edges, type->support, edges == type->support);
    if (gw_said(&size)) return size;
    if (type && edges != type->support)
        return GW_SAY(ask->arena, "tested on {} edges, here held on {}", gw_of_count(edges),
                      gw_of_count(type->support));
    if (ask->system && !gw_held_alike(lite->hold, ask->system->system->glazing))
        return GW_PLAINLY("its edges were held otherwise than the system holds them");
    const bool alike = named_alike || (type && lite->layers.n && gw_same_make_up(lite, type));
    if (type && type->layers.n)
        gw_compare_words(ask, "make-up",
                         alike            ? "the same"
                         : lite->layers.n ? "another"
                                          : "not recorded",
                         type->name, alike);
    if (named_alike) return (struct gw_message){0};
    if (!lite->layers.n) return GW_PLAINLY("the report records no make-up of its lites; ask the manufacturer for it");
    if (type && type->layers.n && !gw_same_make_up(lite, type))
        return GW_SAY(ask->arena, "tested with another make-up than {}", gw_of_text(type->name));
    return (struct gw_message){0};
}

/* The short form: one lite, whose make-up is that of a lite type by its name. */
static struct gw_message short_of_named(struct gw_ask *ask, const struct gw_tested *t, const struct gw_element *e,
                                        const struct gw_lite_type *type)
{
    const struct gw_lite_type *named = t->make_up ? gw_model_lite(ask->model, t->make_up) : NULL;
    struct gw_tested_lite lite = {.width = t->lite_width, .height = t->lite_height, .support = GW_NO_INTEGER};
    if (named) lite.layers.items = named->layers.items, lite.layers.n = named->layers.n;
    if (t->layers.n) lite.layers.items = t->layers.items, lite.layers.n = t->layers.n;
    if (t->make_up && type && gw_given(lite.width) && !gw_made_alike(ask, t->make_up, type))
        return GW_SAY(ask->arena, "tested with make-up {}, here {}", gw_of_text(t->make_up), gw_of_text(type->name));
    return short_of_one(ask, &lite, e, type, named && named == type);
}

struct gw_message gw_specimen_short_of_lite(struct gw_ask *ask, const struct gw_rating *rating,
                                            const struct gw_element *e)
{
    const struct gw_tested *t = rating->tested;
    const struct gw_lite_type *type = gw_type_of(ask, e);
    struct gw_message first = {0};
    if (!t) return GW_PLAINLY(GW_NO_SPECIMEN);
    if (!t->lites.n) return short_of_named(ask, t, e, type);
    const size_t before = ask->compared ? ask->compared->list.n : 0;
    for (size_t i = 0; i < t->lites.n; i++) {
        const struct gw_tested_lite *lite = &t->lites.items[i];
        if (ask->compared && i) ask->compared->list.n = before; /* the lite before was another one */
        if (lite->component && !gw_same_component(&(struct gw_rating){.component = lite->component}, e->component))
            continue;
        const struct gw_message one = short_of_one(ask, lite, e, type, false);
        if (!gw_said(&one)) return one;
        if (!gw_said(&first)) first = one;
    }
    return gw_said(&first) ? first : GW_PLAINLY("the report records no lite of this component");
}
