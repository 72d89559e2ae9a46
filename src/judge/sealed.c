#include "judge/sealed.h"

#include "judge/judge_internal.h"

/* The story whose first row it is begins there. */
static bool begins_story(const struct gw_wall_grid *g, size_t row)
{
    for (size_t story = 0; story < g->n_stories; story++)
        if (g->rows_below[story] == row) return true;
    return false;
}

static bool has_sealant_at_end(const struct gw_wall_grid *g, int edge)
{
    return edge == GW_EDGE_LEFT ? !g->goes_on_left && !g->left_meets : !g->goes_on_right && !g->right_meets;
}

bool gw_has_sealant(const struct gw_ask *ask, const struct gw_wall_grid *grid, size_t column, size_t row, int edge)
{
    const struct gw_system_head *head = ask->system ? ask->system->system : NULL;
    if (head && head->glazing != GW_CAPTURED) return true;
    if (edge == GW_EDGE_LEFT || edge == GW_EDGE_RIGHT)
        return (edge == GW_EDGE_LEFT ? !column : column + 1 == grid->n_columns) && has_sealant_at_end(grid, edge);
    const size_t level = row + (edge == GW_EDGE_HEAD);
    return !level || level == grid->rows_below[grid->n_stories] ||
           (head && head->kind == GW_WINDOW_WALL && begins_story(grid, level));
}

long gw_sealed_edges(const struct gw_ask *ask, const struct gw_wall_grid *grid)
{
    long n = 0;
    for (size_t row = 0; row < grid->rows_below[grid->n_stories]; row++)
        for (size_t column = 0; column < grid->n_columns; column++)
            for (int edge = GW_EDGE_HEAD; edge <= GW_EDGE_RIGHT; edge++)
                n += gw_has_sealant(ask, grid, column, row, edge);
    return n;
}
