/* Openings of a schedule against the walls that they stand in, and against each other. */
#include "model_internal.h"

#include <stdlib.h>
#include <string.h>

#define FAULT(model, node, key, ...)                                                                                   \
    gw_diag_node((model)->diags, GW_ERROR, "bad_value", key, gw_at_key(node, key), __VA_ARGS__)

static void unknown_wall(struct gw_model *model, const struct gw_opening *o)
{
    const struct gw_project *p = &model->project;
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, o->wall);
    for (size_t i = 0; i < p->walls.n; i++)
        if (p->walls.items[i].name) gw_nearest_offer(&nearest, p->walls.items[i].name);
    for (size_t i = 0; i < p->elevations.n; i++)
        if (p->elevations.items[i].name) gw_nearest_offer(&nearest, p->elevations.items[i].name);
    FAULT(model, o->node, "wall", "there is no wall '%s' under 'walls' or 'elevations'%s", o->wall,
          gw_nearest_question(model->arena, &nearest));
}

static bool exceeds(double value, double limit) { return value > limit && !gw_same_length(value, limit); }

static void check_across(struct gw_model *model, const struct gw_opening *o, const struct gw_face *face)
{
    if (exceeds(o->width, face->width))
        FAULT(model, o->node, "width", "the opening is %s wide, its wall '%s' %s", gw_feet(model, o->width), o->wall,
              gw_feet(model, face->width));
    else if (exceeds(o->offset + o->width, face->width))
        FAULT(model, o->node, "offset", "the opening ends at %s, beyond the right end of '%s', %s",
              gw_feet(model, o->offset + o->width), o->wall, gw_feet(model, face->width));
}

static void check_up(struct gw_model *model, const struct gw_opening *o, const struct gw_face *face)
{
    if (exceeds(o->height, face->top - face->bottom))
        FAULT(model, o->node, "height", "the opening is %s high, its wall '%s' %s", gw_feet(model, o->height), o->wall,
              gw_feet(model, face->top - face->bottom));
    else if (exceeds(o->sill + o->height, face->top) || exceeds(face->bottom, o->sill))
        FAULT(model, o->node, "sill", "the opening runs from %s to %s, its wall '%s' from %s to %s",
              gw_feet(model, o->sill), gw_feet(model, o->sill + o->height), o->wall, gw_feet(model, face->bottom),
              gw_feet(model, face->top));
}

static void check_roof(struct gw_model *model, const struct gw_opening *o, const struct gw_building *b)
{
    if (exceeds(o->sill + o->height, b->roof_height))
        FAULT(model, o->node, "sill", "the opening ends at %s, above the roof of '%s', %s",
              gw_feet(model, o->sill + o->height), b->name, gw_feet(model, b->roof_height));
    if (!gw_given(o->sill) && o->height > b->roof_height)
        FAULT(model, o->node, "height", "the opening is taller than '%s'", b->name);
}

static void check_opening(struct gw_model *model, const struct gw_opening *o)
{
    struct gw_face face = {.building = NULL};
    const bool found = gw_model_face(model, o->wall, &face);
    if (o->wall && !found) unknown_wall(model, o);
    if (!o->wall || o->building) gw_check_building(model, o->node, o->building);
    if (o->lite) gw_check_lite(model, o->node, o->lite);
    const struct gw_building *b = gw_model_opening_building(model, o);
    if (found && o->building && b && b != gw_model_building(model, face.building))
        FAULT(model, o->node, "building", "its wall '%s' belongs to another building", o->wall);
    if (found) check_across(model, o, &face);
    if (found) check_up(model, o, &face);
    if (b) check_roof(model, o, b);
}

static int by_mark(const void *left, const void *right)
{
    const struct gw_opening *a = *(const struct gw_opening *const *)left, *b = *(const struct gw_opening *const *)right;
    const int order = strcmp(a->mark, b->mark);
    return order ? order : (a > b) - (a < b);
}

/* A mark can stand for a type that occurs at several places, or be counted twice: that is for the reader to tell. */
static void warn_of_mark(struct gw_model *model, const struct gw_opening *const *rows, size_t n)
{
    bool alike = true;
    for (size_t i = 1; i < n; i++)
        alike =
            alike && gw_same_length(rows[i]->width, rows[0]->width) && gw_same_length(rows[i]->height, rows[0]->height);
    gw_diag_node(model->diags, GW_WARNING, "duplicate", "mark", gw_at_key(rows[1]->node, "mark"),
                 "mark '%s' stands in %zu rows, the first in line %u%s: all of them are counted", rows[0]->mark, n,
                 rows[0]->node->line, alike ? "" : ", of more than one size");
}

static void check_marks(struct gw_model *model)
{
    const struct gw_opening **rows = gw_alloc(model->arena, model->openings.n + 1, sizeof(const struct gw_opening *));
    size_t n = 0;
    for (size_t i = 0; i < model->openings.n; i++)
        if (model->openings.items[i].node && model->openings.items[i].mark) rows[n++] = &model->openings.items[i];
    qsort(rows, n, sizeof(const struct gw_opening *), by_mark);
    for (size_t i = 0, next; i < n; i = next) {
        for (next = i + 1; next < n && strcmp(rows[next]->mark, rows[i]->mark) == 0;) next++;
        if (next > i + 1) warn_of_mark(model, rows + i, next - i);
    }
}

void gw_validate_openings(struct gw_model *model)
{
    for (size_t i = 0; i < model->openings.n; i++)
        if (model->openings.items[i].node) check_opening(model, &model->openings.items[i]);
    check_marks(model);
    gw_doubt_openings(model);
}
