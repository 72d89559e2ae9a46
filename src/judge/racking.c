#include "judge/racking.h"

#include "judge/coverage.h"
#include "judge/drift.h"
#include "judge/glass_lite.h"
#include "tables_data.h"

#include <string.h>

bool gw_is_bonded(const struct gw_system *system) { return system->system->glazing != GW_CAPTURED; }

static struct gw_message not_recorded(struct gw_ask *ask, const char *name)
{
    return GW_SAY(ask->arena, "the report records no {}; ask the manufacturer for it", gw_of_text(name));
}

/* One lite of a specimen: of its list, or the one of the short form, whose make-up may be a lite type's name. */
struct specimen {
    double width, height; /* m */
    const struct gw_layer *layers;
    size_t n;
    const char *make_up;
};

/* How far a frame racks per unit of room before its lite touches it on two sides: with side gaps c1 and end gaps c2
 * the lite slides and turns until the drift is 2 c1 (1 + h c2 / (b c1)), over its height 2 c1 / h + 2 c2 / b. A bead
 * that shears by s all round takes 2 s / h + 2 s / b in the same way. */
static double racks(double side, double end, double width, double height) { return side / height + end / width; }

/* No larger in area, no lower for its width, and no sooner at its frame, with equal room and with that tested. */
static struct gw_message of_size(struct gw_ask *ask, const struct gw_tested *t, const struct specimen *s,
                                 const struct gw_element *e)
{
    if (!gw_given(s->width)) return not_recorded(ask, "lite width");
    if (!gw_given(s->height)) return not_recorded(ask, "lite height");
    const double tested = s->width * s->height, here = e->width * e->pane, least = 1 - GW_HAIR;
    const bool gaps = !gw_is_bonded(ask->system) && gw_given(t->side_gap) && gw_given(t->end_gap);
    const double side = gaps ? t->side_gap : 1, end = gaps ? t->end_gap : 1;
    const struct gw_value width = gw_of_quantity(GW_LENGTH, s->width), height = gw_of_quantity(GW_LENGTH, s->height),
                          own_width = gw_of_quantity(GW_LENGTH, e->width),
                          own_height = gw_of_quantity(GW_LENGTH, e->pane);
    if (here > tested * (1 + GW_HAIR))
        return GW_SAY(ask->arena, "tested a lite of {}, here {}", gw_of_quantity(GW_AREA, tested),
                      gw_of_quantity(GW_AREA, here));
    if (e->pane * s->width < s->height * e->width * least)
        return GW_SAY(ask->arena, "tested a lite {} wide and {} high, here {} and {}: lower for its width", width,
                      height, own_width, own_height);
    if (racks(1, 1, e->width, e->pane) < racks(1, 1, s->width, s->height) * least ||
        racks(side, end, e->width, e->pane) < racks(side, end, s->width, s->height) * least)
        return GW_SAY(ask->arena,
                      "tested a lite {} wide and {} high, here {} and {}: it meets its frame at less drift for its "
                      "height (1 / height + 1 / width is less)",
                      width, height, own_width, own_height);
    return (struct gw_message){0};
}

static struct gw_message of_glass(struct gw_ask *ask, const struct specimen *s, const struct gw_element *e)
{
    const struct gw_lite_type *here = gw_glazed_type(ask, e);
    if (!s->n && !s->make_up) return not_recorded(ask, "make-up of the glass");
    if (!here) return GW_PLAINLY("which glass is in it? Ask the architect (lites: layers)");
    if (s->n ? gw_layers_alike(ask->model->tables, s->layers, s->n, here->layers.items, here->layers.n)
             : gw_made_alike(ask, s->make_up, here))
        return (struct gw_message){0};
    if (s->n) return GW_SAY(ask->arena, "tested with other glass than {}", gw_of_text(e->lite));
    return GW_SAY(ask->arena, "tested with make-up {}, here {}", gw_of_text(s->make_up), gw_of_text(e->lite));
}

static struct gw_message of_one(struct gw_ask *ask, const struct gw_tested *t, const struct specimen *s,
                                const struct gw_element *e)
{
    const struct gw_message why = of_size(ask, t, s, e);
    return gw_said(&why) ? why : of_glass(ask, s, e);
}

/* One lite of the specimen that reaches this one; all of them stood until the first fell out. */
static struct gw_message of_lites(struct gw_ask *ask, const struct gw_tested *t, const struct gw_element *e)
{
    const struct specimen flat = {t->lite_width, t->lite_height, t->layers.items, t->layers.n, t->make_up};
    struct gw_message first = {0};
    if (!t->lites.n) return of_one(ask, t, &flat, e);
    for (size_t i = 0; i < t->lites.n; i++) {
        const struct gw_tested_lite *lite = &t->lites.items[i];
        const struct specimen s = {lite->width, lite->height, lite->layers.items, lite->layers.n, NULL};
        if (lite->component && !gw_same_component(&(struct gw_rating){.component = lite->component}, e->component))
            continue;
        const struct gw_message why = of_one(ask, t, &s, e);
        if (!gw_said(&why)) return why;
        if (!gw_said(&first)) first = why;
    }
    return gw_said(&first) ? first : GW_PLAINLY("the report records no lite of this component");
}

/* What the lite has here, no less than tested. */
struct room {
    const char *name, *key;
    double tested, here; /* m */
    double spelled;      /* m, by which one size differs in inches and in whole millimeters */
};

static struct gw_message of_room(struct gw_ask *ask, const struct room *rooms, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        const struct room *r = &rooms[i];
        if (!gw_given(r->tested)) return not_recorded(ask, r->name);
        if (!gw_given(r->here))
            return GW_SAY(ask->arena, "what is the {} here? Ask the manufacturer ({})", gw_of_text(r->name),
                          gw_of_text(r->key));
        if (r->here < r->tested * (1 - GW_HAIR) - r->spelled)
            return GW_SAY(ask->arena, "tested {} {}, here {}", gw_of_text(r->name),
                          gw_of_quantity(GW_THICKNESS, r->tested), gw_of_quantity(GW_THICKNESS, r->here));
    }
    return (struct gw_message){0};
}

/* The gaps of a pocket and how deep the glass sits in it; the two sides of a bead. */
static struct gw_message of_edges(struct gw_ask *ask, const struct gw_tested *t)
{
    const struct gw_drift_spec *d = gw_part(ask->system, drift);
    const struct gw_silicone_spec *s = gw_part(ask->system, silicone);
    const double spelled = ask->model->tables->size_spelling[GW_ROW_SIZE_SPELLING_PLACE].apart_m;
    const struct room pocket[] = {{"side gap", "drift: side_gap", t->side_gap, d ? d->side_gap : GW_ABSENT, 0},
                                  {"end gap", "drift: end_gap", t->end_gap, d ? d->end_gap : GW_ABSENT, 0},
                                  {"bite", "drift: bite", t->bite, d ? d->bite : GW_ABSENT, spelled}};
    const struct room bead[] = {
        {"bite of the bead", "silicone: bite", t->bite, s ? s->bite : GW_ABSENT, spelled},
        {"thickness of the bead", "silicone: thickness", t->bead_thickness, s ? s->thickness : GW_ABSENT, 0}};
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
                  gw_of_capacity(GW_THICKNESS, rating->drift), gw_of_quantity(GW_LENGTH, tested),
                  gw_of_demand(GW_THICKNESS, required), gw_of_quantity(GW_LENGTH, here));
}

static struct gw_message shortfall(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e,
                                   double required)
{
    const struct gw_tested *t = rating->tested;
    if (!t) return GW_PLAINLY("the report's tested dimensions are not given; ask the manufacturer for them");
    struct gw_message why = of_lites(ask, t, e);
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
