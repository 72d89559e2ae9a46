/* The strips of a grid, sort by sort, each cut at the roof line. */
#include "takeoff_internal.h"

bool gw_above(double height, double other) { return height > other + GW_HAIR_M; }

bool gw_below_roof(const struct gw_wall_lines *lines, double height)
{
    return !lines->has_roof || gw_above(lines->roof, height);
}

bool gw_cut_at_roof(const struct gw_wall_lines *lines, double bottom, double top)
{
    return lines->has_roof && gw_above(lines->roof, bottom) && gw_above(top, lines->roof);
}

static void add(struct gw_room *room, enum gw_sort sort, struct gw_grid_strip strip)
{
    struct gw_grid_layer *layer = &room->grid.layers[sort];
    const struct gw_wall_lines *l = &room->grid.lines;
    if (gw_cut_at_roof(l, strip.bottom, strip.top)) {
        struct gw_grid_strip below = strip;
        below.top = strip.bottom = l->roof;
        layer->n_below++;
        layer->cut = true;
        layer->cut_member = strip.member;
        room->strips[sort][layer->n_strips++] = below;
    }
    strip.parapet = !gw_below_roof(l, strip.bottom);
    layer->n_below += !strip.parapet;
    room->strips[sort][layer->n_strips++] = strip;
}

static void add_rows(struct gw_room *room, enum gw_sort sort)
{
    for (size_t i = 0; i < room->n_rows; i++) {
        const struct gw_row_line *row = &room->rows[i];
        add(room, sort, (struct gw_grid_strip){row->bottom, row->top, false, (unsigned)i, row->story, row->row});
    }
}

/* The story in which a height lies, walking up. */
static int story_at(const struct gw_wall_lines *l, int story, double height)
{
    while ((size_t)story < l->n_floors && l->floors[story] <= height) story++;
    return story;
}

static void add_stretch(struct gw_room *room, double bottom, double top, bool overhang)
{
    if (!gw_above(top, bottom)) return;
    const unsigned member = (unsigned)room->n_stretches;
    int story = member ? room->strips[GW_SORT_MULLION][room->grid.layers[GW_SORT_MULLION].n_strips - 1].story : 1;
    story = story_at(&room->grid.lines, story, bottom);
    room->stretches[room->n_stretches++] = (struct gw_stretch_line){bottom, top, overhang};
    add(room, GW_SORT_MULLION, (struct gw_grid_strip){bottom, top, false, member, story, 0});
}

static void add_stretches(struct gw_room *room)
{
    const struct gw_wall_lines *l = &room->grid.lines;
    room->n_stretches = 0;
    add_stretch(room, l->bottom, l->anchors[0], true);
    for (size_t i = 1; i < l->n_anchors; i++) add_stretch(room, l->anchors[i - 1], l->anchors[i], false);
    add_stretch(room, l->anchors[l->n_anchors - 1], l->top, true);
}

/* A horizontal member carries half of the row below and half of the row above. */
static void add_levels(struct gw_room *room, enum gw_sort sort)
{
    const struct gw_wall_lines *l = &room->grid.lines;
    for (size_t k = 0; k < l->n_levels; k++) {
        const double z = l->levels[k];
        bool head = k == room->n_rows;
        add(room, sort,
            (struct gw_grid_strip){.bottom = k ? (l->levels[k - 1] + z) / 2 : z,
                                   .top = k + 1 < l->n_levels ? (z + l->levels[k + 1]) / 2 : z,
                                   .member = (unsigned)k,
                                   .story = head ? 0 : room->rows[k].story,
                                   .row = head ? 0 : room->rows[k].row});
    }
}

static void add_anchors(struct gw_room *room)
{
    const struct gw_wall_lines *l = &room->grid.lines;
    int story = 1;
    for (size_t a = 0; a < l->n_anchors; a++) {
        story = story_at(l, story, l->anchors[a]);
        add(room, GW_SORT_ANCHOR,
            (struct gw_grid_strip){.bottom = a ? (l->anchors[a - 1] + l->anchors[a]) / 2 : l->bottom,
                                   .top = a + 1 < l->n_anchors ? (l->anchors[a] + l->anchors[a + 1]) / 2 : l->top,
                                   .member = (unsigned)a,
                                   .story = story});
    }
}

void gw_room_strips(struct gw_room *room)
{
    for (int i = 0; i < GW_SORT_COUNT; i++) {
        room->grid.layers[i].n_strips = room->grid.layers[i].n_below = 0;
        room->grid.layers[i].cut = false;
    }
    add_rows(room, GW_SORT_LITE);
    add_stretches(room);
    add_levels(room, GW_SORT_TRANSOM);
    add_levels(room, GW_SORT_TRANSOM_SCREW);
    add_rows(room, GW_SORT_MULLION_SCREW);
    add_anchors(room);
}
