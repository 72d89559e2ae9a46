/* How walls lie, from the ends of the file: never more than they say. */
#include "report/draw/key_plan.h"

#include "base/tolerance.h"

#include <math.h>
#include <string.h>

enum { SIDES = 4 };
static const char CROSSING[] = "at right angles they would cross each other";
static const char OPEN_RING[] = "they meet all round, and their widths do not close at right angles";

double gw_plan_width(const struct gw_wall_grid *grid) { return grid->x[grid->n_columns]; }

double gw_plan_edge(const struct gw_wall_grid *grid, bool left)
{
    const double corner = left ? grid->left_corner : grid->right_corner, within = grid->strip - corner;
    if (!gw_given(corner) || !(within > 0)) return 0;
    return fmin(within, gw_plan_width(grid));
}

/* Of the same building; NULL. */
static const struct gw_wall_grid *met(const struct gw_takeoff *t, const struct gw_wall_grid *g, bool left)
{
    const char *name = left ? g->left_meets : g->right_meets;
    const struct gw_wall_grid *other = name ? gw_takeoff_wall(t, name) : NULL;
    return other && other->building == g->building ? other : NULL;
}

/* The first wall of the row that this one stands in; itself where the row is a ring. */
static const struct gw_wall_grid *row_start(const struct gw_takeoff *t, const struct gw_wall_grid *g, bool *ring)
{
    const struct gw_wall_grid *first = g, *before;
    while ((before = met(t, first, true)) && before != g) first = before;
    *ring = before != NULL;
    return *ring ? g : first;
}

/* From the left, each at a right angle to the one before it, as outside corners turn. */
static void lay(struct plan_shape *shape)
{
    struct gw_point at = {0, 0}, along = {1, 0};
    for (size_t i = 0; i < shape->n; i++) {
        struct plan_wall *w = &shape->walls[i];
        const double width = gw_plan_width(w->grid);
        w->from = at;
        at.x += along.x * width, at.y += along.y * width;
        w->to = at;
        along = (struct gw_point){-along.y, along.x};
    }
}

double gw_plan_beyond(const struct gw_wall_grid *grid, bool left)
{
    const double corner = left ? grid->left_corner : grid->right_corner;
    return gw_plan_edge(grid, left) > 0 ? corner : 0;
}

static void take_in(struct gw_box *reach, struct gw_point p)
{
    reach->left = fmin(reach->left, p.x), reach->right = fmax(reach->right, p.x);
    reach->bottom = fmin(reach->bottom, p.y), reach->top = fmax(reach->top, p.y);
}

static void find_reach(struct plan_shape *shape)
{
    shape->reach = (struct gw_box){0, 0, 0, 0};
    for (size_t i = 0; i < shape->n; i++) {
        const struct plan_wall *w = &shape->walls[i];
        const double width = gw_plan_width(w->grid), before = gw_plan_beyond(w->grid, true) / width,
                     after = gw_plan_beyond(w->grid, false) / width;
        const struct gw_point along = {w->to.x - w->from.x, w->to.y - w->from.y};
        take_in(&shape->reach, (struct gw_point){w->from.x - before * along.x, w->from.y - before * along.y});
        take_in(&shape->reach, (struct gw_point){w->to.x + after * along.x, w->to.y + after * along.y});
    }
}

/* Why that many walls do not stand so; NULL: they do. */
static const char *why_not(const struct plan_shape *shape)
{
    if (shape->n == 1) return NULL;
    if (shape->n > SIDES || (shape->ring && shape->n < SIDES)) return CROSSING;
    if (shape->n < SIDES) return NULL;
    const struct gw_point end = shape->walls[SIDES - 1].to;
    const bool closed = fabs(end.x) < GW_HAIR_M && fabs(end.y) < GW_HAIR_M;
    if (shape->ring) return closed ? NULL : OPEN_RING;
    const bool passes = end.x > -GW_HAIR_M && end.y < GW_HAIR_M; /* the first one runs from there to the right */
    return passes && !closed ? CROSSING : NULL;
}

static void add_shape(struct plan_layout *out, const struct plan_shape *shape)
{
    struct plan_shape *kept = &out->shapes.items[out->shapes.n++];
    *kept = *shape;
    lay(kept);
    find_reach(kept);
}

static void add_alone(struct plan_layout *out, struct gw_arena *arena, const struct plan_shape *row, const char *why)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    for (size_t i = 0; i < row->n; i++) {
        struct plan_shape one = {.building = row->building, .walls = &row->walls[i], .n = 1};
        add_shape(out, &one);
        gw_text_addf(&text, "%s%zu", i == 0 ? "Walls " : i + 1 < row->n ? ", " : " and ", row->walls[i].number);
    }
    gw_text_addf(&text, " stand apart: %s.", why);
    out->apart.items[out->apart.n++] = text.at;
}

/* The row of a wall that stands in none yet. */
static void add_row(struct plan_layout *out, struct gw_arena *arena, const struct gw_takeoff *t,
                    const struct gw_wall_grid *g, bool *taken)
{
    struct plan_shape row = {.building = g->building, .walls = gw_alloc(arena, t->n_walls, sizeof *row.walls)};
    const struct gw_wall_grid *at = row_start(t, g, &row.ring);
    for (; at && !taken[at->index]; at = met(t, at, false)) {
        taken[at->index] = true;
        row.walls[row.n++] = (struct plan_wall){.grid = at, .number = at->index + 1};
    }
    lay(&row);
    const char *why = why_not(&row);
    if (why) add_alone(out, arena, &row, why);
    else add_shape(out, &row);
}

void gw_plan_layout(struct plan_layout *out, struct gw_arena *arena, const struct gw_takeoff *t)
{
    bool *taken = gw_alloc(arena, t->n_walls + 1, sizeof *taken);
    *out = (struct plan_layout){.shapes = {.n = 0}};
    out->shapes.items = gw_alloc(arena, t->n_walls + 1, sizeof *out->shapes.items);
    out->apart.items = gw_alloc(arena, t->n_walls + 1, sizeof *out->apart.items);
    for (size_t i = 0; i < t->n_walls; i++)
        for (size_t k = i; k < t->n_walls; k++) {
            const struct gw_wall_grid *g = t->grids.items[k];
            if (!taken[g->index] && g->building == t->grids.items[i]->building) add_row(out, arena, t, g, taken);
        }
}
