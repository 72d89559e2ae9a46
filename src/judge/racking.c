#include "judge/racking.h"

#include "judge/drift.h"
#include "judge/glass_lite.h"

#include <string.h>

bool gw_is_bonded(const struct gw_system *system) { return system->system->glazing != GW_CAPTURED; }

static struct gw_message not_recorded(struct gw_ask *ask, const char *name)
{
    return GW_SAY(ask->arena, "the report records no {}; ask the manufacturer for it", gw_of_text(name));
}

/* The lite: no larger in area, no lower for its width. */
static struct gw_message of_size(struct gw_ask *ask, const struct gw_tested *t, const struct gw_element *e)
{
    if (!gw_given(t->lite_width)) return not_recorded(ask, "lite width");
    if (!gw_given(t->lite_height)) return not_recorded(ask, "lite height");
    const double tested = t->lite_width * t->lite_height, here = e->width * e->pane;
    if (here > tested * (1 + GW_HAIR))
        return GW_SAY(ask->arena, "tested a lite of {}, here {}", gw_of_quantity(GW_AREA, tested),
                      gw_of_quantity(GW_AREA, here));
    if (e->pane * t->lite_width < t->lite_height * e->width * (1 - GW_HAIR))
        return GW_SAY(ask->arena, "tested a lite {} wide and {} high, here {} and {}: lower for its width",
                      gw_of_quantity(GW_LENGTH, t->lite_width), gw_of_quantity(GW_LENGTH, t->lite_height),
                      gw_of_quantity(GW_LENGTH, e->width), gw_of_quantity(GW_LENGTH, e->pane));
    return (struct gw_message){0};
}

static bool same(double a, double b) { return (!gw_given(a) && !gw_given(b)) || fabs(a - b) <= GW_HAIR_M; }

/* 6 mm and 1/4 in are one designation. */
static bool same_glass(const struct gw_tables *tables, double a, double b)
{
    const struct gw_glass_thickness *row = gw_given(a) && gw_given(b) ? gw_glass_designation(tables, a) : NULL;
    return row ? row == gw_glass_designation(tables, b) : same(a, b);
}

static bool same_layers(const struct gw_tables *tables, const struct gw_layer *a, size_t n,
                        const struct gw_lite_type *b)
{
    if (!b || n != b->layers.n) return false;
    for (size_t i = 0; i < n; i++) {
        const struct gw_layer *x = &a[i], *y = &b->layers.items[i];
        if (!same_glass(tables, x->glass, y->glass) || x->treatment != y->treatment || !same(x->cavity, y->cavity) ||
            x->interlayer != y->interlayer || !same(x->thickness, y->thickness))
            return false;
    }
    return true;
}

static struct gw_message of_glass(struct gw_ask *ask, const struct gw_tested *t, const struct gw_element *e)
{
    if (!t->layers.n && !t->make_up) return not_recorded(ask, "make-up of the glass");
    if (!gw_glazed_type(ask->model, e)) return GW_PLAINLY("which glass is in it? Ask the architect (lites: layers)");
    if (t->layers.n ? same_layers(ask->model->tables, t->layers.items, t->layers.n, gw_glazed_type(ask->model, e))
                    : strcmp(t->make_up, e->lite) == 0)
        return (struct gw_message){0};
    if (t->layers.n) return GW_SAY(ask->arena, "tested with other glass than {}", gw_of_text(e->lite));
    return GW_SAY(ask->arena, "tested with make-up {}, here {}", gw_of_text(t->make_up), gw_of_text(e->lite));
}

/* What the lite has here, no less than tested. */
struct room {
    const char *name, *key;
    double tested, here; /* m */
};

static struct gw_message of_room(struct gw_ask *ask, const struct room *rooms, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        const struct room *r = &rooms[i];
        if (!gw_given(r->tested)) return not_recorded(ask, r->name);
        if (!gw_given(r->here))
            return GW_SAY(ask->arena, "what is the {} here? Ask the manufacturer ({})", gw_of_text(r->name),
                          gw_of_text(r->key));
        if (r->here < r->tested * (1 - GW_HAIR))
            return GW_SAY(ask->arena, "tested {} {}, here {}", gw_of_text(r->name),
                          gw_of_quantity(GW_THICKNESS, r->tested), gw_of_quantity(GW_THICKNESS, r->here));
    }
    return (struct gw_message){0};
}

/* The gaps of a pocket and how deep the glass sits in it; the two sides of a bead. */
static struct gw_message of_edges(struct gw_ask *ask, const struct gw_tested *t)
{
    const struct gw_drift_spec *d = ask->system->drift;
    const struct gw_silicone_spec *s = ask->system->silicone;
    const struct room pocket[] = {{"side gap", "drift: side_gap", t->side_gap, d ? d->side_gap : GW_ABSENT},
                                  {"end gap", "drift: end_gap", t->end_gap, d ? d->end_gap : GW_ABSENT},
                                  {"bite", "drift: bite", t->bite, d ? d->bite : GW_ABSENT}};
    const struct room bead[] = {
        {"bite of the bead", "silicone: bite", t->bite, s ? s->bite : GW_ABSENT},
        {"thickness of the bead", "silicone: thickness", t->bead_thickness, s ? s->thickness : GW_ABSENT}};
    return gw_is_bonded(ask->system) ? of_room(ask, bead, 2) : of_room(ask, pocket, 3);
}

/* No more drift over the height of its story than was tested. */
static struct gw_message of_story(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e,
                                  double required)
{
    const double tested = rating->tested->story_height, here = gw_story_height(ask, e);
    if (!gw_given(tested)) return not_recorded(ask, "height of the story");
    if (!gw_given(here))
        return GW_PLAINLY("how high is the story round an opening of the schedule? Ask the architect (site: seismic: "
                          "story_height)");
    if (required * tested <= rating->drift * here * (1 + GW_HAIR) || rating->drift < required)
        return (struct gw_message){0};
    return GW_SAY(ask->arena, "tested {} of a story of {}, here {} of {}: more for its height",
                  gw_of_quantity(GW_THICKNESS, rating->drift), gw_of_quantity(GW_LENGTH, tested),
                  gw_of_quantity(GW_THICKNESS, required), gw_of_quantity(GW_LENGTH, here));
}

static struct gw_message shortfall(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e,
                                   double required)
{
    const struct gw_tested *t = rating->tested;
    if (!t) return GW_PLAINLY("the report's tested dimensions are not given; ask the manufacturer for them");
    struct gw_message why = of_size(ask, t, e);
    if (!gw_said(&why)) why = of_glass(ask, t, e);
    if (!gw_said(&why)) why = of_edges(ask, t);
    if (!gw_said(&why)) why = of_story(ask, rating, e, required);
    return why;
}

/* Why a rating says nothing about what falls out. */
static struct gw_message other_kind(struct gw_ask *ask, const struct gw_rating *rating)
{
    if (rating->kind == GW_SWAY_DYNAMIC) return (struct gw_message){0};
    if (rating->kind == GW_SWAY_STATIC)
        return GW_SAY(ask->arena,
                      "a static test to {} shows the wall in service, not when glass falls out: ask the manufacturer "
                      "for a dynamic one (AAMA 501.6)",
                      gw_of_quantity(GW_THICKNESS, rating->drift));
    return GW_SAY(
        ask->arena,
        "is {} a static drift of the story (AAMA 501.4), or the one at which glass fell out (AAMA 501.6)? Ask "
        "the manufacturer (kind: static or dynamic)",
        gw_of_quantity(GW_THICKNESS, rating->drift));
}

void gw_test_racking(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_rating *rating)
{
    struct gw_fallout_result fallout;
    out->applies = rating->test == GW_TEST_SWAY && gw_given(rating->drift) && gw_same_component(rating, d->component);
    if (!out->applies) return;
    const bool known = gw_fallout(&fallout, gw_term_of(d, 0)->value, rating->drift, &ask->engine) == GW_OK;
    out->required = known ? fallout.required : GW_ABSENT;
    if (rating->kind == GW_SWAY_DYNAMIC) out->provided[0] = rating->drift;
    out->why = known ? other_kind(ask, rating) : gw_fault_message(ask);
    if (!gw_said(&out->why)) out->why = shortfall(ask, rating, d->element, fallout.required);
    out->covers = !gw_said(&out->why);
    out->foreign = !out->covers;
    if (!out->covers) return;
    out->met = fallout.passes;
    out->why = GW_PLAINLY("drift of a story at which glass falls out");
}
