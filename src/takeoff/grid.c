/* Walls and openings as lines and bands. */
#include "takeoff_internal.h"

#include "tables_data.h"

#include <string.h>

static double default_screw_spacing(const struct gw_model *model)
{
    return model->tables->takeoff_defaults[GW_ROW_TAKEOFF_DEFAULTS_SCREW_SPACING].value_m;
}

static bool set_strip(struct gw_grid *grid, const struct gw_builder *b)
{
    struct gw_engine engine;
    struct gw_wind_case in;
    gw_engine_init(&engine, b->model->tables, NULL);
    gw_building_case(b->model, grid->building, &in);
    grid->strip = gw_wind_zone_width(&in, &engine);
    if (engine.fault.status == GW_OK) return true;
    gw_report_fault(b->diags, grid->node, grid->wall, &engine.fault);
    return false;
}

static void set_columns(struct gw_grid *grid, const struct gw_builder *b, const struct gw_columns *columns)
{
    bool listed = columns->widths.n > 0;
    grid->n_columns = listed ? columns->widths.n : (size_t)columns->count;
    grid->x = gw_alloc(b->arena, grid->n_columns + 1, sizeof *grid->x);
    for (size_t i = 0; i < grid->n_columns; i++)
        grid->x[i + 1] = listed ? grid->x[i] + columns->widths.items[i] : (double)(i + 1) * columns->width;
}

static void add_band(struct gw_grid *grid, double bottom, double top, const struct gw_lite_type *type)
{
    const double pane = top - bottom;
    bool crosses = bottom < grid->roof && top > grid->roof;
    if (crosses) {
        grid->bands[grid->n_bands++] = (struct gw_band){bottom, grid->roof, pane, type, false};
        bottom = grid->roof;
    }
    grid->bands[grid->n_bands++] = (struct gw_band){bottom, top, pane, type, bottom >= grid->roof};
}

static double rest_of(const struct gw_story *story, double height)
{
    for (size_t i = 0; i < story->rows.n; i++)
        if (!isinf(story->rows.items[i].height)) height -= story->rows.items[i].height;
    return height;
}

static void add_story(struct gw_grid *grid, const struct gw_model *model, const struct gw_story *story, double bottom,
                      double top)
{
    double z = bottom, rest = rest_of(story, top - bottom);
    for (size_t i = 0; i < story->rows.n; i++) {
        const struct gw_row_spec *row = &story->rows.items[i];
        bool last = i + 1 == story->rows.n;
        double next = last ? top : z + (isinf(row->height) ? rest : row->height);
        grid->levels[grid->n_levels++] = z;
        add_band(grid, z, next, gw_model_lite(model, row->lite));
        z = next;
    }
}

static void set_rows(struct gw_grid *grid, const struct gw_builder *b, const struct gw_wall *wall)
{
    size_t rows = 0, floors = wall->floors.n;
    for (size_t i = 0; i < wall->rows.n; i++) rows += wall->rows.items[i].rows.n;
    if (wall->rows.n == 1) rows *= floors;
    grid->bands = gw_alloc(b->arena, rows + 1, sizeof *grid->bands);
    grid->levels = gw_alloc(b->arena, rows + 1, sizeof *grid->levels);
    for (size_t f = 0; f < floors; f++) {
        double top = f + 1 < floors ? wall->floors.items[f + 1] : wall->top;
        add_story(grid, b->model, &wall->rows.items[wall->rows.n == 1 ? 0 : f], wall->floors.items[f], top);
    }
    grid->levels[grid->n_levels++] = wall->top;
}

/* Anchors stand at the floors and at the roof, or at the head where the wall ends below it. */
static void set_anchors(struct gw_grid *grid, const struct gw_builder *b, const struct gw_wall *wall)
{
    if (wall->anchors.n) {
        grid->anchors = wall->anchors.items;
        grid->n_anchors = wall->anchors.n;
        return;
    }
    double *at = gw_alloc(b->arena, wall->floors.n + 1, sizeof *at);
    memcpy(at, wall->floors.items, wall->floors.n * sizeof *at);
    grid->anchors = at;
    grid->n_anchors = wall->floors.n;
    double head = wall->top > grid->roof ? grid->roof : wall->top;
    if (head > at[grid->n_anchors - 1]) at[grid->n_anchors++] = head;
}

static double corner_beyond(const struct gw_end *end)
{
    if (gw_given(end->corner_at)) return end->corner_at;
    return end->kind == GW_CORNER ? 0 : GW_ABSENT;
}

bool gw_grid_from_wall(struct gw_grid *grid, const struct gw_builder *b, const struct gw_wall *wall)
{
    *grid = (struct gw_grid){.wall = wall->name,
                             .building = gw_model_building(b->model, wall->building),
                             .node = wall->node,
                             .splices = wall->splices.items,
                             .n_splices = wall->splices.n,
                             .floors = wall->floors.items,
                             .n_floors = wall->floors.n,
                             .bottom = wall->floors.items[0],
                             .top = wall->top,
                             .left_corner = corner_beyond(&wall->ends.items[0]),
                             .right_corner = corner_beyond(&wall->ends.items[1]),
                             .screw_spacing = wall->screws ? wall->screws->spacing : default_screw_spacing(b->model),
                             .multiplicity = 1};
    grid->roof = grid->building->roof_height;
    set_columns(grid, b, wall->columns);
    set_rows(grid, b, wall);
    set_anchors(grid, b, wall);
    return set_strip(grid, b);
}

bool gw_grid_from_opening(struct gw_grid *grid, const struct gw_builder *b, const struct gw_opening *opening)
{
    const struct gw_building *building = gw_model_building(b->model, opening->building);
    double bottom = gw_given(opening->sill) ? opening->sill : building->roof_height - opening->height;
    *grid = (struct gw_grid){.wall = opening->wall ? opening->wall : "schedule",
                             .mark = opening->mark,
                             .building = building,
                             .node = opening->node,
                             .n_columns = 1,
                             .bottom = bottom,
                             .top = bottom + opening->height,
                             .roof = GW_KEYWORD,
                             .left_corner = gw_given(opening->offset) ? opening->offset : 0,
                             .right_corner = GW_ABSENT,
                             .screw_spacing = default_screw_spacing(b->model),
                             .multiplicity = opening->count,
                             .place_unknown = !gw_given(opening->offset) || !gw_given(opening->sill)};
    grid->x = gw_alloc(b->arena, 2, sizeof *grid->x);
    grid->x[1] = opening->width;
    grid->bands = gw_alloc(b->arena, 1, sizeof *grid->bands);
    grid->bands[grid->n_bands++] =
        (struct gw_band){grid->bottom, grid->top, opening->height, gw_model_lite(b->model, opening->lite), false};
    grid->levels = gw_alloc(b->arena, 2, sizeof *grid->levels);
    grid->levels[0] = grid->bottom;
    grid->levels[1] = grid->top;
    grid->n_levels = 2;
    grid->anchors = grid->levels;
    grid->n_anchors = 2;
    return set_strip(grid, b);
}
