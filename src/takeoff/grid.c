/* Walls and openings as lines and rows. */
#include "takeoff_internal.h"

#include "tables_data.h"

#include <string.h>

static double default_screw_spacing(const struct gw_model *model)
{
    return model->tables->takeoff_defaults[GW_ROW_TAKEOFF_DEFAULTS_SCREW_SPACING].value_m;
}

static bool rises_above_roof(const struct gw_wall_grid *g)
{
    return g->lines.has_roof && gw_above(g->lines.top, g->lines.roof);
}

static void say_strip(struct gw_builder *b, const struct gw_wind_case *in, const struct gw_building *building)
{
    struct gw_engine engine;
    gw_engine_init(&engine, b->model->tables, NULL);
    if (!gw_wind_strip_capped(in, &engine)) return;
    const char *text = in->strip_cap == GW_STRIP_CAP_EDITION
                           ? "strip_cap: edition: the edge strip is no wider than 0.8 h, if the cap is the cladding "
                             "figure's too, which is to be confirmed"
                           : "strip_cap: none: the edge strip may be wider than 0.8 h, which is safe";
    gw_takeoff_assume(b, gw_format(b->arena, "buildings.%s", building->name), GW_PLAINLY(text));
}

static bool set_strip(struct gw_room *room, struct gw_builder *b)
{
    struct gw_engine engine;
    struct gw_wind_case in;
    struct gw_wind_parapet parapet;
    gw_engine_init(&engine, b->model->tables, NULL);
    gw_building_case(b->model, room->grid.building, &in);
    room->grid.strip = gw_wind_zone_width(&in, &engine);
    gw_building_parapet(room->grid.building, &parapet);
    in.parapet = &parapet;
    say_strip(b, &in, room->grid.building);
    room->grid.roof_corner = rises_above_roof(&room->grid) ? gw_wind_roof_corner(&in, &engine) : 0;
    if (engine.fault.status == GW_OK) return true;
    gw_report_fault(b, room->node, room->grid.wall, &engine.fault);
    return false;
}

static size_t column_count(const struct gw_columns *columns)
{
    return columns->widths.n ? columns->widths.n : (size_t)columns->count;
}

static void set_columns(struct gw_room *room, const struct gw_columns *columns)
{
    bool listed = columns->widths.n > 0;
    for (size_t i = 0; i < room->grid.n_columns; i++)
        room->x[i + 1] = listed ? room->x[i] + columns->widths.items[i] : (double)(i + 1) * columns->width;
}

static double rest_of(const struct gw_story *story, double height)
{
    for (size_t i = 0; i < story->rows.n; i++)
        if (!story->rows.items[i].rest) height -= story->rows.items[i].height;
    return height;
}

static void add_story(struct gw_room *room, const struct gw_model *model, const struct gw_story *story, int number,
                      double bottom, double top)
{
    double z = bottom, rest = rest_of(story, top - bottom);
    for (size_t i = 0; i < story->rows.n; i++) {
        const struct gw_row_spec *row = &story->rows.items[i];
        bool last = i + 1 == story->rows.n;
        double next = last ? top : z + (row->rest ? rest : row->height);
        room->levels[room->n_rows] = z;
        room->rows[room->n_rows++] = (struct gw_row_line){z, next, gw_model_lite(model, row->lite), number, (int)i + 1};
        z = next;
    }
}

static const struct gw_story *story_of(const struct gw_wall *wall, size_t floor)
{
    return &wall->rows.items[wall->rows.n == 1 ? 0 : floor];
}

static size_t row_count(const struct gw_wall *wall)
{
    size_t rows = 0;
    for (size_t f = 0; f < wall->floors.n; f++) rows += story_of(wall, f)->rows.n;
    return rows;
}

static void set_rows(struct gw_room *room, const struct gw_model *model, const struct gw_wall *wall)
{
    const size_t floors = wall->floors.n;
    for (size_t f = 0; f < floors; f++) {
        double top = f + 1 < floors ? wall->floors.items[f + 1] : wall->top;
        room->rows_below[f] = (unsigned)room->n_rows;
        add_story(room, model, story_of(wall, f), (int)f + 1, wall->floors.items[f], top);
    }
    room->rows_below[floors] = (unsigned)room->n_rows;
    room->levels[room->n_rows] = wall->top;
}

/* Anchors stand at the floors and at the roof, or at the head where the wall ends below it. */
static void set_anchors(struct gw_wall_lines *lines, struct gw_arena *arena, const struct gw_wall *wall)
{
    double *at = gw_alloc(arena, wall->floors.n + wall->anchors.n + 1, sizeof *at);
    for (size_t i = 0; i < wall->anchors.n; i++) at[i] = wall->anchors.items[i].at;
    if (wall->anchors.n) {
        lines->anchors = at;
        lines->n_anchors = wall->anchors.n;
        return;
    }
    memcpy(at, wall->floors.items, wall->floors.n * sizeof *at);
    lines->anchors = at;
    lines->n_anchors = wall->floors.n;
    double head = wall->top > lines->roof ? lines->roof : wall->top;
    if (gw_above(head, at[lines->n_anchors - 1])) at[lines->n_anchors++] = head;
}

/* Nothing told: the top anchor of each piece. */
static void set_bearings(struct gw_room *room, struct gw_arena *arena, const struct gw_wall *wall)
{
    struct gw_wall_lines *l = &room->grid.lines;
    const struct gw_mullion_wall beam = {.bottom = l->bottom,
                                         .top = l->top,
                                         .roof = l->roof,
                                         .anchors = l->anchors,
                                         .splices = l->splices,
                                         .n_anchors = l->n_anchors,
                                         .n_splices = l->n_splices};
    const bool told = wall->anchors.n && wall->anchors.items[0].carries.n > 0;
    bool *dead = gw_alloc(arena, l->n_anchors, sizeof *dead);
    for (size_t i = 0; told && i < l->n_anchors; i++)
        dead[i] = gw_anchor_carries(&wall->anchors.items[i], GW_ANCHOR_DEAD);
    gw_mullion_bearings(room->bearings, &beam, told ? dead : NULL);
    l->bearings = room->bearings;
}

static double corner_beyond(const struct gw_end *end)
{
    if (gw_given(end->corner_at)) return end->corner_at;
    return gw_end_is_corner(end) ? 0 : GW_ABSENT;
}

static void set_wall_lines(struct gw_room *room, struct gw_arena *arena, const struct gw_wall *wall)
{
    room->grid.lines = (struct gw_wall_lines){.splices = wall->splices.items,
                                              .n_splices = wall->splices.n,
                                              .floors = wall->floors.items,
                                              .n_floors = wall->floors.n,
                                              .levels = room->levels,
                                              .n_levels = room->n_rows + 1,
                                              .bottom = wall->floors.items[0],
                                              .top = wall->top,
                                              .has_roof = true,
                                              .roof = room->grid.building->roof_height};
    set_anchors(&room->grid.lines, arena, wall);
    set_bearings(room, arena, wall);
}

struct gw_room *gw_grid_from_wall(struct gw_builder *b, const struct gw_wall *wall)
{
    const size_t floors = wall->floors.n, anchors = wall->anchors.n ? wall->anchors.n : floors + 1;
    struct gw_room *room = gw_room_new(b->arena, column_count(wall->columns), row_count(wall), anchors);
    struct gw_wall_grid *g = &room->grid;
    room->rows_below = gw_alloc(b->arena, floors + 1, sizeof *room->rows_below);
    room->node = wall->node;
    room->multiplicity = 1;
    room->screw_spacing = wall->screws ? wall->screws->spacing : default_screw_spacing(b->model);
    g->screws_given = wall->screws != NULL;
    g->wall = wall->name;
    g->building = gw_model_building(b->model, wall->building);
    g->rows_below = room->rows_below;
    g->n_stories = floors;
    g->left_corner = corner_beyond(&wall->ends.items[0]);
    g->right_corner = corner_beyond(&wall->ends.items[1]);
    g->left_meets = gw_model_meets(b->model, wall, 0);
    g->right_meets = gw_model_meets(b->model, wall, 1);
    g->goes_on_left = wall->ends.items[0].kind == GW_NO_CORNER;
    g->goes_on_right = wall->ends.items[1].kind == GW_NO_CORNER;
    set_columns(room, wall->columns);
    set_rows(room, b->model, wall);
    set_wall_lines(room, b->arena, wall);
    return set_strip(room, b) ? room : NULL;
}

/* Both ends of its wall count. Without an offset it can stand at either; without a wall its ends are not known. */
static void set_opening_corners(struct gw_wall_grid *g, const struct gw_model *model, const struct gw_opening *opening)
{
    struct gw_face face;
    const bool placed = gw_given(opening->offset);
    g->left_corner = g->right_corner = 0;
    if (!gw_model_face(model, opening->wall, &face)) return;
    const double rest = face.width - opening->offset - opening->width;
    g->left_corner = corner_beyond(&face.ends[0]) + (placed ? opening->offset : 0);
    g->right_corner = corner_beyond(&face.ends[1]) + (placed ? fmax(rest, 0) : 0);
}

bool gw_grid_from_opening(struct gw_room *room, struct gw_builder *b, const struct gw_opening *opening)
{
    static const unsigned one_row[] = {0, 1};
    struct gw_wall_grid *g = &room->grid;
    const struct gw_building *building = gw_model_opening_building(b->model, opening);
    double bottom = gw_given(opening->sill) ? opening->sill : building->roof_height - opening->height;
    room->mark = opening->mark;
    room->node = opening->node;
    room->multiplicity = opening->count;
    room->place_unknown = !gw_given(opening->offset) || !gw_given(opening->sill) || !opening->wall;
    room->height_unknown = !gw_given(opening->sill);
    room->screw_spacing = default_screw_spacing(b->model);
    room->x[1] = opening->width;
    room->levels[0] = bottom;
    room->levels[1] = bottom + opening->height;
    room->rows[0] =
        (struct gw_row_line){bottom, bottom + opening->height, gw_model_lite(b->model, opening->lite), 0, 0};
    room->n_rows = 1;
    g->wall = opening->wall ? opening->wall : GW_WALL_UNKNOWN;
    g->opening = opening;
    g->building = building;
    g->rows_below = one_row;
    g->n_stories = 1;
    set_opening_corners(g, b->model, opening);
    room->bearings[0] =
        (struct gw_mullion_bearing){opening->height, GW_BORNE_ONCE, bottom, false}; /* it stands on its sill */
    room->bearings[1] = (struct gw_mullion_bearing){.borne = GW_BORNE_ONCE};
    g->lines = (struct gw_wall_lines){.anchors = room->levels,
                                      .bearings = room->bearings,
                                      .n_anchors = 2,
                                      .levels = room->levels,
                                      .n_levels = 2,
                                      .bottom = bottom,
                                      .top = bottom + opening->height,
                                      .roof = GW_ABSENT};
    return set_strip(room, b);
}
