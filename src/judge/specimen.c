#include "judge/specimen.h"

#include "base/fields.h"
#include "base/tolerance.h"
#include "judge/coverage.h"
#include "judge/glass_lite.h"

#include "tables_data.h"

#include <string.h>

void gw_compare(struct gw_ask *ask, const struct gw_compared *one)
{
    struct gw_comparisons *c = ask->trace ? ask->compared : NULL;
    if (!c) return;
    for (size_t i = 0; i < c->list.n; i++) {
        struct gw_compared *other = &c->list.items[i];
        if (strcmp(other->what, one->what) != 0) continue;
        if (other->holds && (one->needed > other->needed || !one->holds)) *other = *one;
        return;
    }
    c->list.items = gw_grow(ask->arena, c->list.items, c->list.n, &c->capacity, sizeof *one);
    c->list.items[c->list.n++] = *one;
}

void gw_compare_number(struct gw_ask *ask, const char *what, enum gw_dim dim, double tested, double needed, bool holds)
{
    gw_compare(ask,
               &(struct gw_compared){.what = what, .dim = dim, .tested = tested, .needed = needed, .holds = holds});
}

void gw_compare_words(struct gw_ask *ask, const char *what, const char *tested, const char *needed, bool holds)
{
    const struct gw_compared one = {.what = what,
                                    .tested = GW_ABSENT,
                                    .needed = GW_ABSENT,
                                    .tested_as = tested,
                                    .needed_as = needed,
                                    .holds = holds};
    gw_compare(ask, &one);
}

void gw_specimen_add(struct gw_ask *ask, struct gw_message *why, struct gw_message one)
{
    if (!gw_said(&one)) return;
    *why = gw_said(why) ? gw_say_both(ask->arena, why, "; ", &one) : one;
}

bool gw_specimen_alike(struct gw_ask *ask, const struct gw_message *a, const struct gw_message *b)
{
    struct gw_text left, right;
    gw_text_init(&left, ask->arena);
    gw_text_init(&right, ask->arena);
    gw_message_shape(&left, a);
    gw_message_shape(&right, b);
    return left.length == right.length && memcmp(left.at, right.at, left.length) == 0;
}

struct gw_message gw_specimen_short_of(struct gw_ask *ask, const struct gw_dimension *dimensions, size_t n)
{
    struct gw_message why = {0};
    for (size_t i = 0; i < n; i++) {
        const struct gw_dimension *d = &dimensions[i];
        gw_compare_number(ask, d->name, GW_LENGTH, d->tested, d->needed, d->tested >= d->needed - GW_HAIR_M);
        if (!gw_given(d->tested))
            gw_specimen_add(
                ask, &why,
                GW_SAY(ask->arena, "the report records no {}; ask the manufacturer for it", gw_of_text(d->name)));
        else if (d->tested < d->needed - GW_HAIR_M)
            gw_specimen_add(ask, &why,
                            GW_SAY(ask->arena, "tested {} {}, here {}", gw_of_text(d->name),
                                   gw_of_quantity(GW_LENGTH, d->tested), gw_of_quantity(GW_LENGTH, d->needed)));
    }
    return why;
}

bool gw_same_make_up(const struct gw_ask *ask, const struct gw_tested_lite *lite, const struct gw_lite_type *type)
{
    return gw_layers_alike(ask->model->tables, lite->layers.items, lite->layers.n, type->layers.items, type->layers.n);
}

bool gw_is_type(const struct gw_lite_type *a, const struct gw_lite_type *b)
{
    return a == b || (a && b && a->layers.items == b->layers.items && strcmp(a->name, b->name) == 0);
}

bool gw_made_alike(const struct gw_ask *ask, const char *named, const struct gw_lite_type *here)
{
    const struct gw_lite_type *type = gw_model_tested_lite(ask->model, named);
    if (!type || !here || gw_is_type(type, here)) return type && here;
    if (!type->layers.n) return false;
    struct gw_tested_lite lite = {.width = GW_ABSENT};
    lite.layers.items = type->layers.items, lite.layers.n = type->layers.n;
    return gw_same_make_up(ask, &lite, here);
}

struct gw_message gw_made_otherwise(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e)
{
    const struct gw_tested *t = rating->tested;
    const struct gw_lite_type *here = gw_type_of(ask, e);
    struct gw_tested_lite one = {.width = GW_ABSENT};
    bool recorded = t && t->layers.n > 0, alike = false;
    if (!t || !here) return (struct gw_message){0};
    if (t->make_up && !gw_made_alike(ask, t->make_up, here))
        return GW_SAY(ask->arena, "tested with make-up {}, here {}", gw_of_text(t->make_up), gw_of_text(here->name));
    one.layers.items = t->layers.items, one.layers.n = t->layers.n;
    alike = recorded && gw_same_make_up(ask, &one, here);
    for (size_t i = 0; i < t->lites.n; i++) {
        recorded = recorded || t->lites.items[i].layers.n;
        alike = alike || (t->lites.items[i].layers.n && gw_same_make_up(ask, &t->lites.items[i], here));
    }
    if (!here->layers.n || !recorded || alike || t->make_up) return (struct gw_message){0};
    return GW_SAY(ask->arena, "tested with another make-up than {}", gw_of_text(here->name));
}

bool gw_held_alike(const struct gw_tested_hold *hold, enum gw_glazing glazing)
{
    const enum gw_edge_hold as = glazing == GW_SILICONE ? GW_EDGE_SILICONE : GW_EDGE_PLATE;
    if (!hold || glazing == GW_MIXED) return true;
    const enum gw_edge_hold edges[] = {hold->all, hold->head, hold->sill, hold->left, hold->right};
    for (size_t i = 0; i < COUNT(edges); i++)
        if (edges[i] && edges[i] != as) return false;
    return true;
}

struct gw_message gw_specimen_fastened(struct gw_ask *ask, const struct gw_tested_fastening *t, double spacing)
{
    const struct gw_screw_spec *screw = ask->system ? gw_part(ask->system, screw) : NULL;
    const struct gw_size_spelling *rows = ask->model->tables->size_spelling;
    const double end = ask->system ? gw_screw_end_distance(ask->system) : GW_ABSENT,
                 place = rows[GW_ROW_SIZE_SPELLING_PLACE].apart_m, thick = rows[GW_ROW_SIZE_SPELLING_SCREW].apart_m;
    struct gw_message why = {0};
    if (!t)
        return GW_PLAINLY("the report records no spacing of its screws; ask the manufacturer for it (tested: "
                          "fastening)");
    gw_compare_number(ask, "spacing of screws", GW_THICKNESS, t->spacing, spacing, t->spacing >= spacing - place);
    if (screw && gw_given(t->diameter))
        gw_compare(ask, &(struct gw_compared){.what = "diameter of screws",
                                              .dim = GW_THICKNESS,
                                              .tested = t->diameter,
                                              .needed = screw->diameter,
                                              .at_most = true,
                                              .holds = t->diameter <= screw->diameter + thick});
    if (t->spacing < spacing - place)
        why = GW_SAY(ask->arena, "tested with screws {} apart, here {}", gw_of_quantity(GW_THICKNESS, t->spacing),
                     gw_of_quantity(GW_THICKNESS, spacing));
    if (t->end_distance < end - place)
        gw_specimen_add(ask, &why,
                        GW_SAY(ask->arena, "tested with screws {} from the end of the plate, here {}",
                               gw_of_quantity(GW_THICKNESS, t->end_distance), gw_of_quantity(GW_THICKNESS, end)));
    if (screw && gw_given(t->diameter) && t->diameter > screw->diameter + thick)
        gw_specimen_add(ask, &why,
                        GW_SAY(ask->arena, "tested with screws of {}, here {}",
                               gw_of_quantity(GW_THICKNESS, t->diameter),
                               gw_of_quantity(GW_THICKNESS, screw->diameter)));
    return why;
}

/* The spacing of every plate of a wall is one. */
static double spacing_on(struct gw_ask *ask, const struct gw_wall_grid *grid)
{
    const struct gw_grid_layer *l = &grid->layers[GW_SORT_MULLION_SCREW];
    const double spacing = ask->system ? gw_screw_spacing(ask->system, grid) : GW_ABSENT;
    return gw_given(spacing) ? spacing : ask->takeoff->elements.items[l->groups[0]].height;
}

/* m, of the screws that a specimen had of which nothing is recorded: the system's own as it was submitted, else the
 * take-off's; from the end practice's. */
static struct gw_tested_fastening fastened_then(struct gw_ask *ask, const struct gw_rating *rating,
                                                const struct gw_element *e)
{
    const struct gw_plate_fastening *practice = &ask->model->tables->plate_fastening[GW_ROW_PLATE_FASTENING_END];
    const struct gw_grid_layer *l = &e->grid->layers[GW_SORT_MULLION_SCREW];
    const struct gw_screw_spec *screw = gw_part(ask->system, screw);
    if (ask->system->screw_then) screw = ask->system->screw_then;
    if (rating->screw_then) screw = rating->screw_then;
    struct gw_tested_fastening t = {.diameter = GW_ABSENT,
                                    .spacing = screw ? screw->spacing : GW_ABSENT,
                                    .end_distance = screw ? screw->end_distance : GW_ABSENT};
    if (!gw_given(t.spacing)) t.spacing = ask->takeoff->elements.items[l->groups[0]].height;
    if (gw_given(t.end_distance)) return t;
    t.end_distance = practice->distance_m;
    if (gw_screw_end_distance(ask->system) > t.end_distance) gw_used_add(&ask->engine.used, &practice->row);
    return t;
}

/* Screws that stand farther apart, or from the end, than when the report was submitted, which says nothing of them. */
static struct gw_message loosened(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e)
{
    const struct gw_tested_fastening *t = rating->tested ? rating->tested->fastening : NULL,
                                     then = fastened_then(ask, rating, e);
    const double spacing = spacing_on(ask, e->grid), end = gw_screw_end_distance(ask->system);
    const bool apart = !t && then.spacing < spacing - GW_HAIR_M,
               far = !(t && gw_given(t->end_distance)) && then.end_distance < end - GW_HAIR_M;
    if (!apart && !far) return (struct gw_message){0};
    return GW_SAY(
        ask->arena,
        "the report records no {}, and the system that was submitted with it has them {} {}, here {}: ask the "
        "manufacturer how the specimen was fastened (tested: fastening)",
        gw_of_text(apart ? "spacing of its screws" : "distance of its screws from the end of the plate"),
        gw_of_quantity(GW_THICKNESS, apart ? then.spacing : then.end_distance), gw_of_text(apart ? "apart" : "from it"),
        gw_of_quantity(GW_THICKNESS, apart ? spacing : end));
}

struct gw_message gw_specimen_pressed_otherwise(struct gw_ask *ask, const struct gw_rating *rating,
                                                const struct gw_wall_grid *grid)
{
    const struct gw_tested_fastening *t = rating->tested ? rating->tested->fastening : NULL;
    const bool plated = ask->system && ask->system->system->glazing != GW_SILICONE;
    if (!plated || !t || !grid || !grid->layers[GW_SORT_MULLION_SCREW].n_strips) return (struct gw_message){0};
    return gw_specimen_fastened(ask, t, spacing_on(ask, grid));
}

struct gw_message gw_specimen_fastened_otherwise(struct gw_ask *ask, const struct gw_rating *rating,
                                                 const struct gw_element *e)
{
    const struct gw_tested_fastening *t = rating->tested ? rating->tested->fastening : NULL;
    const bool plated = ask->system && ask->system->system->glazing != GW_SILICONE;
    if (!plated) return (struct gw_message){0};
    const struct gw_message why = t ? gw_specimen_fastened(ask, t, spacing_on(ask, e->grid)) : (struct gw_message){0};
    return gw_said(&why) ? why : loosened(ask, rating, e);
}
