/* Memory of a grid, at most as much as it can need. */
#include "takeoff_internal.h"

static const enum gw_axis_name AXIS_OF[GW_SORT_COUNT] = {
    [GW_SORT_LITE] = GW_AXIS_LITES,
    [GW_SORT_MULLION] = GW_AXIS_MULLIONS,
    [GW_SORT_TRANSOM] = GW_AXIS_TRANSOMS,
    [GW_SORT_TRANSOM_SCREW] = GW_AXIS_TRANSOM_SCREWS,
    [GW_SORT_MULLION_SCREW] = GW_AXIS_MULLION_SCREWS,
    [GW_SORT_ANCHOR] = GW_AXIS_MULLIONS,
};

enum gw_axis_name gw_axis_of(enum gw_sort sort) { return AXIS_OF[sort]; }

static void axis_room(struct gw_room *room, struct gw_arena *arena, enum gw_axis_name name, size_t columns)
{
    bool lines = name == GW_AXIS_MULLIONS || name == GW_AXIS_MULLION_SCREWS;
    const size_t n = columns + lines;
    room->classes[name] = gw_alloc(arena, n, sizeof *room->classes[name]);
    room->class_of[name] = gw_alloc(arena, n, sizeof *room->class_of[name]);
    room->members[name] = gw_alloc(arena, n, sizeof *room->members[name]);
    room->first[name] = gw_alloc(arena, n + 1, sizeof *room->first[name]);
    room->columns[name] = gw_alloc(arena, n, sizeof *room->columns[name]);
    room->axes[name] = (struct gw_grid_axis){.lines = lines,
                                             .n_places = n,
                                             .class_of = room->class_of[name],
                                             .members = room->members[name],
                                             .first = room->first[name],
                                             .columns = room->columns[name]};
}

struct gw_room *gw_room_new(struct gw_arena *arena, size_t columns, size_t rows, size_t anchors)
{
    const size_t cut = 1; /* the roof line makes one member two strips */
    const size_t strips[GW_SORT_COUNT] = {
        [GW_SORT_LITE] = rows + cut,          [GW_SORT_MULLION] = anchors + 1 + cut,
        [GW_SORT_TRANSOM] = rows + 1 + cut,   [GW_SORT_TRANSOM_SCREW] = rows + 1 + cut,
        [GW_SORT_MULLION_SCREW] = rows + cut, [GW_SORT_ANCHOR] = anchors + cut};
    struct gw_room *room = gw_alloc(arena, 1, sizeof *room);
    room->x = gw_alloc(arena, columns + 1, sizeof *room->x);
    room->levels = gw_alloc(arena, rows + 1, sizeof *room->levels);
    room->rows = gw_alloc(arena, rows, sizeof *room->rows);
    room->bearings = gw_alloc(arena, anchors, sizeof *room->bearings);
    room->stretches = gw_alloc(arena, anchors + 1, sizeof *room->stretches);
    for (int i = 0; i < GW_AXIS_COUNT; i++) axis_room(room, arena, (enum gw_axis_name)i, columns);
    for (int i = 0; i < GW_SORT_COUNT; i++) {
        room->strips[i] = gw_alloc(arena, strips[i], sizeof *room->strips[i]);
        room->grid.layers[i] = (struct gw_grid_layer){.axis = &room->axes[AXIS_OF[i]], .strips = room->strips[i]};
    }
    room->grid.x = room->x;
    room->grid.n_columns = columns;
    return room;
}
