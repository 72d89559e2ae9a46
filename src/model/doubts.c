/* What can be meant so and is likelier an error of typing or of reading: warnings, never refusals. */
#include "model_internal.h"

#include <string.h>

#define DOUBT(model, node, key, ...)                                                                                   \
    gw_diag_node((model)->diags, GW_WARNING, "implausible", key, gw_at_key(node, key), __VA_ARGS__)

static const double HIGHEST_STORY = 9.15; /* m: plausible, no limit */

/* Once a wall, at its highest story. */
static void doubt_stories(struct gw_model *model, const struct gw_wall *wall)
{
    const size_t n = wall->floors.n;
    size_t at = 0;
    double highest = 0;
    for (size_t i = 0; i < n; i++) {
        const double next = i + 1 < n ? wall->floors.items[i + 1] : wall->top, height = next - wall->floors.items[i];
        if (height > highest) {
            highest = height;
            at = i;
        }
    }
    if (highest > HIGHEST_STORY)
        DOUBT(model, wall->node, "floors",
              "the story from %s to %s is %s high: is a floor missing? 'floors' are levels above ground",
              gw_feet(model, wall->floors.items[at]), gw_feet(model, wall->floors.items[at] + highest),
              gw_feet(model, highest));
}

/* A penthouse's wall with levels of its own: about as high as the one building stands above the other. */
static void doubt_ground(struct gw_model *model, const struct gw_wall *wall)
{
    const struct gw_project *p = &model->project;
    const struct gw_building *own = gw_model_building(model, wall->building);
    const double low = 0.5, hair = 1; /* m */
    if (!own || !wall->floors.n || fabs(wall->floors.items[0]) > low) return;
    for (size_t i = 0; i < p->buildings.n; i++) {
        const struct gw_building *below = &p->buildings.items[i];
        const double above = own->roof_height - below->roof_height;
        if (!below->name || !(above > low) || !(wall->top < below->roof_height)) continue;
        if (fabs(wall->top - above) > 0.35 * above + hair) continue;
        DOUBT(model, wall->node, "floors",
              "the wall runs from %s to %s, far below the roof of '%s', %s: levels count from the ground, so on top of "
              "'%s' they begin at %s",
              gw_feet(model, wall->floors.items[0]), gw_feet(model, wall->top), own->name,
              gw_feet(model, own->roof_height), below->name, gw_feet(model, below->roof_height));
        return;
    }
}

void gw_doubt_wall(struct gw_model *model, const struct gw_wall *wall)
{
    if (!gw_given(wall->top) || gw_holds_fault(model, wall->node)) return;
    doubt_stories(model, wall);
    doubt_ground(model, wall);
}

static bool is_used(const struct gw_model *model, const struct gw_building *b)
{
    const struct gw_project *p = &model->project;
    for (size_t i = 0; i < p->walls.n; i++)
        if (gw_model_building(model, p->walls.items[i].building) == b) return true;
    for (size_t i = 0; i < model->openings.n; i++)
        if (gw_model_opening_building(model, &model->openings.items[i]) == b) return true;
    return false;
}

/* Of a project without faults, in which every wall and opening has found its building. */
static void doubt_buildings(struct gw_model *model)
{
    const struct gw_project *p = &model->project;
    for (size_t i = 0; !model->diags->errors && p->buildings.n > 1 && i < p->buildings.n; i++)
        if (!is_used(model, &p->buildings.items[i]))
            gw_diag_node(model->diags, GW_WARNING, "unused", "buildings", p->buildings.items[i].node,
                         "no wall and no opening stands in '%s': nothing is asked of it", p->buildings.items[i].name);
}

/* Openings --------------------------------------------------------------------------------------------------------- */

static bool placed(const struct gw_opening *o)
{
    return o->node && o->wall && gw_given(o->offset) && gw_given(o->sill) && gw_given(o->width) && gw_given(o->height);
}

static bool cover(const struct gw_opening *a, const struct gw_opening *b)
{
    const double hair = 1e-3; /* m */
    return strcmp(a->wall, b->wall) == 0 && a->offset + a->width > b->offset + hair &&
           b->offset + b->width > a->offset + hair && a->sill + a->height > b->sill + hair &&
           b->sill + b->height > a->sill + hair;
}

static const char *mark_of(const struct gw_opening *o) { return o->mark ? o->mark : "?"; }

/* At its first partner. */
static void doubt_place(struct gw_model *model, const struct gw_opening *o)
{
    if (!placed(o)) return;
    if (o->count > 1)
        DOUBT(model, o->node, "count", "%d openings '%s' at one offset and one sill: they would lie on each other",
              o->count, mark_of(o));
    for (const struct gw_opening *other = model->openings.items; other < o; other++) {
        if (!placed(other) || !cover(o, other)) continue;
        DOUBT(model, o->node, "offset", "'%s' and '%s' (line %u) lie on each other in '%s'", mark_of(o), mark_of(other),
              other->node->line, o->wall);
        return;
    }
}

/* Side by side at one sill, and at any sill. */
static void doubt_room(struct gw_model *model, const struct gw_opening *o, const struct gw_face *face)
{
    const struct gw_building *b = gw_model_building(model, face->building);
    double across = 0, area = 0;
    for (size_t i = 0; i < model->openings.n; i++) {
        const struct gw_opening *other = &model->openings.items[i];
        if (!other->node || !other->wall || strcmp(other->wall, o->wall) != 0 || other->count < 1) continue;
        if (other < o && (!gw_given(o->sill) || (gw_given(other->sill) && gw_same_length(other->sill, o->sill))))
            return; /* said at the first */
        if (gw_given(o->sill) && gw_given(other->sill) && gw_same_length(other->sill, o->sill))
            across += other->count * other->width;
        area += other->count * other->width * other->height;
    }
    const double high = gw_given(face->top) ? face->top - face->bottom : b ? b->roof_height : GW_ABSENT;
    if (across > face->width && !gw_same_length(across, face->width))
        DOUBT(model, o->node, "width", "the openings at a sill of %s are %s wide together, their wall '%s' %s",
              gw_feet(model, o->sill), gw_feet(model, across), o->wall, gw_feet(model, face->width));
    else if (area > face->width * high)
        DOUBT(model, o->node, "count", "the openings of '%s' cover %s together, the wall %s", o->wall,
              gw_shown(model, GW_AREA, area), gw_shown(model, GW_AREA, face->width * high));
}

static bool is_first_in(const struct gw_model *model, const struct gw_opening *o)
{
    for (const struct gw_opening *other = model->openings.items; other < o; other++)
        if (other->wall && strcmp(other->wall, o->wall) == 0) return false;
    return true;
}

static void doubt_grid(struct gw_model *model, const struct gw_opening *o, const struct gw_face *face)
{
    if (!gw_given(face->top) || !is_first_in(model, o)) return;
    DOUBT(
        model, o->node, "wall",
        "'%s' is a wall on a grid, whose columns and rows fill it: '%s' is counted besides; should it stand in one of "
        "'elevations'?",
        o->wall, mark_of(o));
}

static void doubt_lites(struct gw_model *model)
{
    const struct gw_opening *first = NULL;
    size_t n = 0, without = 0;
    for (size_t i = 0; i < model->openings.n; i++) {
        const struct gw_opening *o = &model->openings.items[i];
        if (!o->node) continue;
        n++;
        if (o->lite || gw_node_get(o->node, "lite")) continue;
        first = first ? first : o;
        without++;
    }
    if (first && without < n)
        gw_diag_node(
            model->diags, GW_WARNING, "default", "lite", first->node,
            "'lite' is empty in %zu row%s, this the first: no lite type is taken, so the glass there cannot be "
            "shown",
            without, without == 1 ? "" : "s");
}

void gw_doubt_openings(struct gw_model *model)
{
    for (size_t i = 0; i < model->openings.n; i++) {
        const struct gw_opening *o = &model->openings.items[i];
        struct gw_face face;
        if (!o->node || !o->wall || gw_holds_fault(model, o->node) || !gw_model_face(model, o->wall, &face)) continue;
        doubt_place(model, o);
        doubt_grid(model, o, &face);
        doubt_room(model, o, &face);
    }
    doubt_lites(model);
    doubt_buildings(model);
}

/* Inserts ---------------------------------------------------------------------------------------------------------- */

double gw_insert_depth(const struct gw_insert_spec *insert)
{
    return insert->added ? GW_ABSENT : 2 * insert->inertia_x / insert->section_modulus_x;
}

bool gw_insert_too_deep(const struct gw_member_spec *spec)
{
    const double rounding = 0.01; /* of numbers that are written to three digits */
    if (!spec || !spec->insert || !spec->tube) return false;
    return gw_insert_depth(spec->insert) * (1 - rounding) > spec->tube->depth - 2 * spec->tube->flange;
}

enum { MEMBERS = 4 };
static const struct gw_member_spec *member(const struct gw_system *system, size_t i)
{
    const struct gw_member_spec *const of[MEMBERS] = {system->mullion, system->corner_mullion, system->jamb_mullion,
                                                      system->transom};
    return of[i];
}

void gw_doubt_inserts(struct gw_model *model, const struct gw_system *system, const struct gw_system *without,
                      const struct gw_node *at)
{
    static const char *const keys[MEMBERS] = {"mullion", "corner_mullion", "jamb_mullion", "transom"};
    for (size_t i = 0; i < MEMBERS; i++) {
        const struct gw_member_spec *m = member(system, i);
        if (!gw_insert_too_deep(m) || (without && gw_insert_too_deep(member(without, i)))) continue;
        DOUBT(model, at, keys[i],
              "its insert is about %s deep by its inertia and section modulus (2 I/S), and the tube is %s deep inside: "
              "does it fit? Ask the manufacturer for the sections",
              gw_shown(model, GW_THICKNESS, gw_insert_depth(m->insert)),
              gw_shown(model, GW_THICKNESS, m->tube->depth - 2 * m->tube->flange));
    }
}
