/* Which lites one specimen reaches: size, support, hold of the edges, make-up. */
#include "judge/coverage.h"
#include "judge/glass_lite.h"
#include "judge/specimen.h"

#include "base/fields.h"
#include "base/tolerance.h"

#include <string.h>

/* What a tested lite lacks of one here: each thing said, so that one asks once. */
struct lack {
    struct gw_message why;
    unsigned n;
    double size; /* the lesser of its dimensions over that here; absent */
};

static void add(struct lack *out, struct gw_ask *ask, struct gw_message one)
{
    gw_specimen_add(ask, &out->why, one);
    out->n += gw_said(&one);
}

static void lack_of_make_up(struct lack *out, struct gw_ask *ask, const struct gw_tested_lite *lite,
                            const struct gw_lite_type *type, bool named_alike)
{
    const bool alike = named_alike || (type && lite->layers.n && gw_same_make_up(ask, lite, type));
    if (type && type->layers.n)
        gw_compare_words(ask, "make-up",
                         alike            ? "the same"
                         : lite->layers.n ? "another"
                                          : "not recorded",
                         type->name, alike);
    if (named_alike) return;
    if (!lite->layers.n)
        add(out, ask, GW_PLAINLY("the report records no make-up of its lites; ask the manufacturer for it"));
    else if (type && type->layers.n && !alike)
        add(out, ask, GW_SAY(ask->arena, "tested with another make-up than {}", gw_of_text(type->name)));
}

static struct lack lack_of_one(struct gw_ask *ask, const struct gw_tested_lite *lite, const struct gw_element *e,
                               const struct gw_lite_type *type, bool named_alike)
{
    const struct gw_dimension d[] = {{"lite width", lite->width, e->width}, {"lite height", lite->height, e->pane}};
    const int edges = lite->support == GW_NO_INTEGER ? 4 : lite->support;
    struct lack out = {.n = 0, .size = fmin(lite->width / e->width, lite->height / e->pane)};
    for (size_t i = 0; i < COUNT(d); i++) add(&out, ask, gw_specimen_short_of(ask, &d[i], 1));
    if (type) gw_compare_number(ask, "edges held", GW_RATIO, edges, type->support, edges == type->support);
    if (type && edges != type->support)
        add(&out, ask,
            GW_SAY(ask->arena, "tested on {} edges, here held on {}", gw_of_count(edges), gw_of_count(type->support)));
    if (ask->system && !gw_held_alike(lite->hold, ask->system->system->glazing)) {
        gw_compare_words(ask, "hold of the edges", "otherwise", "as the system holds them", false);
        add(&out, ask, GW_PLAINLY("its edges were held otherwise than the system holds them"));
    }
    lack_of_make_up(&out, ask, lite, type, named_alike);
    return out;
}

/* The short form: one lite, whose make-up is that of a lite type by its name. */
static struct gw_message short_of_named(struct gw_ask *ask, const struct gw_tested *t, const struct gw_element *e,
                                        const struct gw_lite_type *type)
{
    const struct gw_lite_type *named = t->make_up ? gw_model_tested_lite(ask->model, t->make_up) : NULL;
    struct gw_tested_lite lite = {.width = t->lite_width, .height = t->lite_height, .support = GW_NO_INTEGER};
    if (named) lite.layers.items = named->layers.items, lite.layers.n = named->layers.n;
    if (t->layers.n) lite.layers.items = t->layers.items, lite.layers.n = t->layers.n;
    if (t->make_up && type && gw_given(lite.width) && !gw_made_alike(ask, t->make_up, type))
        return GW_SAY(ask->arena, "tested with make-up {}, here {}", gw_of_text(t->make_up), gw_of_text(type->name));
    return lack_of_one(ask, &lite, e, type, named && gw_is_type(named, type)).why;
}

/* Fewer things are missing; of as many the larger lite, whose size is recorded. */
static bool nearer(const struct lack *a, const struct lack *b)
{
    if (a->n != b->n) return a->n < b->n;
    return a->size > b->size || (gw_given(a->size) && !gw_given(b->size));
}

/* What the nearest of its lites was compared by, as if there were no other. */
static void keep_compared(struct gw_ask *ask, const struct gw_comparisons *nearest)
{
    for (size_t i = 0; i < nearest->list.n; i++) gw_compare(ask, &nearest->list.items[i]);
}

struct gw_message gw_specimen_short_of_lite(struct gw_ask *ask, const struct gw_rating *rating,
                                            const struct gw_element *e)
{
    const struct gw_tested *t = rating->tested;
    const struct gw_lite_type *type = gw_type_of(ask, e);
    struct gw_comparisons *all = ask->compared, nearest_compared = {.rating = NULL};
    struct lack nearest = {.n = 0};
    bool any = false;
    if (!t) return GW_PLAINLY(GW_NO_SPECIMEN);
    if (!t->lites.n) return short_of_named(ask, t, e, type);
    for (size_t i = 0; i < t->lites.n; i++) {
        const struct gw_tested_lite *lite = &t->lites.items[i];
        struct gw_comparisons *own = gw_alloc(ask->arena, 1, sizeof *own);
        if (lite->component && !gw_same_component(&(struct gw_rating){.component = lite->component}, e->component))
            continue;
        if (all) ask->compared = own;
        const struct lack one = lack_of_one(ask, lite, e, type, false);
        if (any && !nearer(&one, &nearest)) continue;
        nearest = one;
        nearest_compared = *own;
        any = true;
    }
    ask->compared = all;
    keep_compared(ask, &nearest_compared);
    return any ? nearest.why : GW_PLAINLY("the report records no lite of this component");
}
