/* The run: walls, then openings, into groups. */
#include "takeoff_internal.h"

#include <string.h>

const char *const gw_kind_names[GW_KIND_COUNT] = {"lite", "mullion", "transom", "screw", "anchor"};

struct named {
    const struct gw_builder *b;
    const char *name;
};

static bool is_name(const void *context, size_t item)
{
    const struct named *n = context;
    return strcmp(n->b->numbers.items[item].wall, n->name) == 0;
}

/* Elements of all openings of one elevation are numbered together, wherever they stand in the schedule. */
static size_t name_of(struct gw_builder *b, const char *wall)
{
    const unsigned hash = gw_hash_text(1, wall);
    size_t item;
    if (gw_index_find(&item, &b->names, hash, is_name, &(struct named){b, wall})) return item;
    b->numbers.items =
        gw_grow(b->arena, b->numbers.items, b->numbers.n, &b->numbers_capacity, sizeof *b->numbers.items);
    b->numbers.items[b->numbers.n] = (struct gw_elevation){.wall = wall};
    gw_index_add(&b->names, b->arena, hash, b->numbers.n);
    return b->numbers.n++;
}

static void add_grid(struct gw_takeoff *t, struct gw_wall_grid *grid, struct gw_arena *arena)
{
    t->grids.items =
        gw_grow(arena, t->grids.items, t->grids.n, &t->grids_capacity, sizeof(const struct gw_wall_grid *));
    grid->index = t->grids.n;
    t->grids.items[t->grids.n++] = grid;
}

static size_t group_count(const struct gw_grid_layer *layer) { return layer->n_strips * layer->axis->n_classes; }

/* An opening's room is filled again for the next one, whose classes may be more: as many as its places. */
static void groups_room(struct gw_room *room, struct gw_arena *arena, bool spare)
{
    for (int i = 0; i < GW_SORT_COUNT; i++) {
        struct gw_grid_layer *layer = &room->grid.layers[i];
        const size_t n = spare ? layer->n_strips * layer->axis->n_places : group_count(layer);
        if (!room->groups[i]) room->groups[i] = gw_alloc(arena, n, sizeof *room->groups[i]);
        layer->groups = room->groups[i];
    }
}

static void fill(struct gw_builder *b, struct gw_room *room)
{
    b->room = room;
    room->grid.elevation = name_of(b, room->grid.wall);
    room->grid.first_element = b->takeoff->elements.n;
    gw_room_elements(b);
    room->grid.n_elements = b->takeoff->elements.n - room->grid.first_element;
}

/* All walls first, so that the list of elements is made as long as it gets. */
static void add_walls(struct gw_builder *b)
{
    struct gw_takeoff *t = b->takeoff;
    const size_t n = b->model->project.walls.n;
    struct gw_room **rooms = gw_alloc(b->arena, n, sizeof(struct gw_room *));
    size_t groups = 0;
    for (size_t i = 0; i < n; i++) {
        struct gw_room *room = gw_grid_from_wall(b, &b->model->project.walls.items[i]);
        if (!room) continue;
        gw_room_axes(room, b);
        gw_room_strips(room);
        groups_room(room, b->arena, false);
        for (int s = 0; s < GW_SORT_COUNT; s++) groups += group_count(&room->grid.layers[s]);
        add_grid(t, &room->grid, b->arena);
        rooms[t->n_walls++] = room;
    }
    t->elements.items = gw_alloc(b->arena, groups, sizeof *t->elements.items);
    t->capacity = groups;
    for (size_t i = 0; i < t->n_walls && !b->failed; i++) fill(b, rooms[i]);
    t->n_wall_elements = t->elements.n;
}

static void add_opening(struct gw_builder *b, const struct gw_opening *opening)
{
    enum { COLUMNS = 1, ROWS = 1, ANCHORS = 2 };
    if (!b->room || b->room->claimed || !b->opening) b->room = gw_room_new(b->arena, COLUMNS, ROWS, ANCHORS);
    b->opening = opening;
    if (!gw_grid_from_opening(b->room, b, opening)) return;
    gw_room_axes(b->room, b);
    gw_room_strips(b->room);
    groups_room(b->room, b->arena, true);
    fill(b, b->room);
    if (b->room->claimed) add_grid(b->takeoff, &b->room->grid, b->arena);
}

static void add_openings(struct gw_builder *b)
{
    for (size_t i = 0; i < b->model->openings.n && !b->failed; i++) {
        const struct gw_opening *opening = &b->model->openings.items[i];
        add_opening(b, opening);
        if (!gw_given(opening->offset)) b->takeoff->no_offset += opening->count;
        else if (!opening->wall) b->takeoff->no_wall += opening->count;
        if (!gw_given(opening->sill)) b->takeoff->no_sill += opening->count;
    }
}

static void assume_openings(struct gw_builder *b)
{
    const struct gw_takeoff *t = b->takeoff;
    if (t->no_offset)
        gw_takeoff_assume(b, "openings",
                          GW_SAY(b->arena, "{} without an offset: in the edge zone", gw_of_count(t->no_offset)));
    if (t->no_wall)
        gw_takeoff_assume(b, "openings",
                          GW_SAY(b->arena, "{} without a wall: in the edge zone", gw_of_count(t->no_wall)));
    if (t->no_sill)
        gw_takeoff_assume(b, "openings",
                          GW_SAY(b->arena, "{} without a sill: at the top of the building", gw_of_count(t->no_sill)));
}

static void index_walls(struct gw_takeoff *t, struct gw_arena *arena)
{
    gw_index_reset(&t->walls, arena, t->n_walls);
    for (size_t i = 0; i < t->n_walls; i++) gw_index_add(&t->walls, arena, gw_hash_text(1, t->grids.items[i]->wall), i);
}

bool gw_takeoff_run(struct gw_takeoff *out, const struct gw_model *model, struct gw_arena *arena,
                    struct gw_diags *diags)
{
    struct gw_builder b = {.model = model, .takeoff = out, .arena = arena, .diags = diags};
    size_t errors = diags->errors;
    *out = (struct gw_takeoff){.diags = diags};
    add_walls(&b);
    add_openings(&b);
    assume_openings(&b);
    gw_group_finish(&b);
    index_walls(out, arena);
    if (diags->errors == errors) gw_find_remarks(&b);
    if (diags->errors == errors) gw_take_by_set(&b);
    out->n_elevations = b.numbers.n;
    return diags->errors == errors;
}
