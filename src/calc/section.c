/* Of 'galeward calc section'.
 *
 * A point is [x, y] or {x: , y: }; an outline a list of points; voids a list of such lists; a wall {from, to,
 * thickness}. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/model.h"

struct point {
    double x, y;
    GW_LIST(double) pair;
};
enum { VOIDS = 64, POINTS = 2048 }; /* that a case may hold */

struct void_case {
    GW_LIST(struct point) points;
};
struct wall_case {
    const struct point *from, *to;
    double thickness;
};
struct section_case {
    const struct gw_tube *tube;
    GW_LIST(struct point) outline;
    GW_LIST(struct void_case) voids;
    GW_LIST(struct wall_case) walls;
};
struct section_answer {
    struct gw_section section;
    double modulus_x, modulus_y;
    double places[2][2];
    GW_LIST(double) centroid, shear_center;
};

static const struct gw_field POINT[] = {
    NUM(point, x, GW_THICKNESS, LIMITS(-10, 10), .help = "along the face of the wall"),
    NUM(point, y, GW_THICKNESS, LIMITS(-10, 10), .help = "along the depth"),
    NUM(point, pair, GW_THICKNESS, .flags = GW_MANY | GW_HIDDEN, LIMITS(-10, 10), .help = "x and y"),
};
static const struct gw_record POINT_RECORD = RECORD("point", point, POINT, .list_key = "pair");
static const struct gw_field VOID[] = {
    F(void_case, points, GW_T_RECORD, .record = &POINT_RECORD, .flags = GW_REQUIRED | GW_MANY, .help = "of one void"),
};
static const struct gw_record VOID_RECORD = RECORD("void", void_case, VOID, .list_key = "points");
static const struct gw_field WALL[] = {
    F(wall_case, from, GW_T_RECORD, .record = &POINT_RECORD, .flags = GW_REQUIRED, .help = "end of its center line"),
    F(wall_case, to, GW_T_RECORD, .record = &POINT_RECORD, .flags = GW_REQUIRED, .help = "other end"),
    NUM(wall_case, thickness, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0001, 0.2), .help = "of this wall"),
};
static const struct gw_record WALL_RECORD = RECORD("thin wall", wall_case, WALL);
static const struct gw_field CASE[] = {
    F(section_case, tube, GW_T_RECORD, .record = &gw_tube_record,
      .help = "rectangular tube, walls as given (of welded steel: the design wall); depth bends about x"),
    F(section_case, outline, GW_T_RECORD, .record = &POINT_RECORD, .flags = GW_MANY,
      .help = "polygon: [[x, y], ...], y along the depth"),
    F(section_case, voids, GW_T_RECORD, .record = &VOID_RECORD, .flags = GW_MANY,
      .help = "polygons inside the outline: [[[x, y], ...], ...]"),
    F(section_case, walls, GW_T_RECORD, .record = &WALL_RECORD, .flags = GW_MANY,
      .help = "center lines; alone the section, with an outline its torsion"),
};
static const struct gw_record SECTION_CASE_RECORD = RECORD("section", section_case, CASE);

#define A(key_, member_, dim_, help_) OUT(section_answer, key_, member_, dim_, help_)
#define PAIR(key_, help_) OUT_MANY(section_answer, #key_, key_, GW_THICKNESS, help_)
static const struct gw_field ANSWER[] = {
    A("area", section.area, GW_SECTION_AREA, "of the metal"),
    A("inertia_x", section.inertia_x, GW_INERTIA, "about the centroid; wind bends about x"),
    A("inertia_y", section.inertia_y, GW_INERTIA, "about the centroid"),
    A("inertia_xy", section.inertia_xy, GW_INERTIA, "product of inertia"),
    A("section_modulus_x", modulus_x, GW_SECTION_MODULUS, "elastic, the lesser face"),
    A("section_modulus_top", section.modulus_top, GW_SECTION_MODULUS, "about x, face of greater y"),
    A("section_modulus_bottom", section.modulus_bottom, GW_SECTION_MODULUS, "about x, face of lesser y"),
    A("section_modulus_y", modulus_y, GW_SECTION_MODULUS, "elastic, the lesser face"),
    A("section_modulus_left", section.modulus_left, GW_SECTION_MODULUS, "about y, face of lesser x"),
    A("section_modulus_right", section.modulus_right, GW_SECTION_MODULUS, "about y, face of greater x"),
    A("plastic_modulus_x", section.plastic_x, GW_SECTION_MODULUS, "about the line along x that halves the area"),
    A("plastic_modulus_y", section.plastic_y, GW_SECTION_MODULUS, "about the line along y that halves the area"),
    A("torsion_constant", section.torsion, GW_INERTIA, "J; tubes and walls"),
    A("warping_constant", section.warping, GW_WARPING, "C_w; open walls"),
    PAIR(centroid, "x and y"),
    PAIR(shear_center, "x and y; tubes and walls"),
    A("bottom", section.bottom, GW_THICKNESS, "extreme fiber, y"),
    A("top", section.top, GW_THICKNESS, "extreme fiber, y"),
    A("left", section.left, GW_THICKNESS, "extreme fiber, x"),
    A("right", section.right, GW_THICKNESS, "extreme fiber, x"),
    A("inertia_major", section.principal_major, GW_INERTIA, "principal"),
    A("inertia_minor", section.principal_minor, GW_INERTIA, "principal"),
    A("principal_angle", section.principal_angle, GW_ANGLE, "from x to the major axis"),
    OUT_WHOLE(section_answer, "cells", section.cells, "closed by the walls; -1: no walls given"),
};
static const struct gw_record SECTION_ANSWER_RECORD = RECORD("section result", section_answer, ANSWER);

/* Points and walls in the engine's shape, in the caller's memory. */
struct room {
    struct gw_section_point *points;
    struct gw_polygon *polygons; /* the outline, then the voids */
    struct gw_strip *strips;
    size_t used;
};

static void open_room(struct room *room, void *workspace)
{
    room->points = workspace;
    room->polygons = (void *)(room->points + POINTS);
    room->strips = (void *)(room->polygons + VOIDS + 1);
    room->used = 0;
}

static enum gw_status take_point(struct gw_section_point *out, const struct point *p, const char *key,
                                 struct gw_engine *engine)
{
    const bool named = gw_given(p->x) && gw_given(p->y), paired = p->pair.n == 2;
    if (named == paired || p->pair.n > 2)
        return gw_refuse(engine, GW_BAD_VALUE, key, "a point is [x, y] or {x: , y: }");
    *out =
        named ? (struct gw_section_point){p->x, p->y} : (struct gw_section_point){p->pair.items[0], p->pair.items[1]};
    return GW_OK;
}

static enum gw_status take_polygon(struct gw_polygon *out, const struct point *points, size_t n, const char *key,
                                   struct room *room, struct gw_engine *engine)
{
    if (n > POINTS - room->used)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, key, "more than {} points", gw_of_count(POINTS));
    *out = (struct gw_polygon){room->points + room->used, n};
    enum gw_status status = GW_OK;
    for (size_t i = 0; i < n && !status; i++) status = take_point(&room->points[room->used++], &points[i], key, engine);
    return status;
}

static enum gw_status take_walls(const struct section_case *given, struct room *room, struct gw_engine *engine)
{
    if (given->walls.n > GW_STRIPS)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "walls", "more than {} walls", gw_of_count(GW_STRIPS));
    enum gw_status status = GW_OK;
    for (size_t i = 0; i < given->walls.n && !status; i++) {
        const struct wall_case *w = &given->walls.items[i];
        room->strips[i].thickness = w->thickness;
        status = take_point(&room->strips[i].from, w->from, "walls", engine);
        if (!status) status = take_point(&room->strips[i].to, w->to, "walls", engine);
    }
    return status;
}

static enum gw_status run_polygon(struct gw_section *out, const struct section_case *given, struct room *room,
                                  struct gw_engine *engine)
{
    if (given->voids.n > VOIDS)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "voids", "more than {} voids", gw_of_count(VOIDS));
    enum gw_status status =
        take_polygon(&room->polygons[0], given->outline.items, given->outline.n, "outline", room, engine);
    for (size_t i = 0; i < given->voids.n && !status; i++)
        status = take_polygon(&room->polygons[i + 1], given->voids.items[i].points.items,
                              given->voids.items[i].points.n, "voids", room, engine);
    if (!status) status = gw_section_polygon(out, room->polygons, room->polygons + 1, given->voids.n, engine);
    if (!status && given->walls.n) return gw_section_walls(out, room->strips, given->walls.n, engine);
    return status;
}

static enum gw_status run_shape(struct gw_section *out, const struct section_case *given, struct gw_engine *engine)
{
    struct room room;
    const bool outline = given->outline.n > 0, walls = given->walls.n > 0;
    if (given->tube && (outline || walls))
        return gw_refuse(engine, GW_BAD_VALUE, "tube", "give a tube, an outline or walls");
    if (given->voids.n && !outline) return gw_refuse(engine, GW_MISSING, "outline", "voids go with an outline");
    if (given->tube) return gw_section_tube(out, given->tube, engine);
    open_room(&room, engine->workspace);
    enum gw_status status = take_walls(given, &room, engine);
    if (status) return status;
    if (outline) return run_polygon(out, given, &room, engine);
    if (walls) return gw_section_strips(out, room.strips, given->walls.n, engine);
    return gw_refuse(engine, GW_MISSING, "tube", "give a tube, an outline or walls");
}

static const char NO_TORSION[] =
    "no torsion constant and shear center from an outline alone: give the center lines of its "
    "walls besides";

static enum gw_status run_section(void *out, const void *in, struct gw_engine *engine)
{
    struct section_answer *answer = out;
    struct gw_section *s = &answer->section;
    const struct section_case *given = in;
    enum gw_status status = run_shape(s, given, engine);
    if (status) return status;
    if (given->outline.n && !given->walls.n && s->n_notes < GW_SECTION_NOTES) s->notes[s->n_notes++] = NO_TORSION;
    answer->modulus_x = gw_section_modulus_x(s);
    answer->modulus_y = gw_section_modulus_y(s);
    answer->places[0][0] = s->centroid.x, answer->places[0][1] = s->centroid.y;
    answer->places[1][0] = s->shear_center.x, answer->places[1][1] = s->shear_center.y;
    answer->centroid.items = answer->places[0];
    answer->shear_center.items = answer->places[1];
    answer->centroid.n = 2;
    answer->shear_center.n = gw_given(s->shear_center.x) ? 2 : 0;
    return GW_OK;
}

static const char *const *section_notes(const void *out, size_t *n)
{
    const struct section_answer *answer = out;
    *n = answer->section.n_notes;
    return answer->section.notes;
}

const struct gw_calc_kind gw_kind_section = {
    .name = "section",
    .help = "properties of a cross section as given: tube, polygon with voids, or center lines of thin walls",
    .example = "tube='{width: 2.5 in, depth: 6 in, flange: 0.125 in, web: 0.125 in}'",
    .input = &SECTION_CASE_RECORD,
    .output = &SECTION_ANSWER_RECORD,
    .run = run_section,
    .workspace = POINTS * sizeof(struct gw_section_point) + (VOIDS + 1) * sizeof(struct gw_polygon) +
                 GW_STRIPS * sizeof(struct gw_strip),
    .notes = section_notes};
