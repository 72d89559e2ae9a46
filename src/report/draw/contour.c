/* Marching squares. The grid gets a frame of nodes below every level, which lie on the border itself: so every outline
 * closes. Each edge between two nodes carries one crossing at most, and each crossing has one outline segment that
 * leaves it: following them gives the rings, in an order that only the grid decides. */
#include "report/draw/contour.h"

#include <math.h>

enum { NOWHERE = -1 };

/* Nodes from -1 to nx and from -1 to ny. */
struct tracer {
    const struct contour_grid *grid;
    double level;
    int width, height; /* nodes with the frame */
    int *next;         /* by edge: the edge that the outline crosses next */
};

static int clamp(int i, int n) { return i < 0 ? 0 : i >= n ? n - 1 : i; }

static double value_at(const struct tracer *t, int i, int j)
{
    const struct contour_grid *g = t->grid;
    return i < 0 || j < 0 || i >= g->nx || j >= g->ny ? -INFINITY : g->values[j * g->nx + i];
}

static bool is_high(const struct tracer *t, int i, int j) { return value_at(t, i, j) >= t->level; }

/* The edge that runs right (0) or up (1) from a node. */
static int edge_of(const struct tracer *t, int i, int j, int up) { return 2 * ((j + 1) * t->width + i + 1) + up; }

static struct gw_point crossing(const struct tracer *t, int edge)
{
    const int up = edge % 2, i = edge / 2 % t->width - 1, j = edge / 2 / t->width - 1;
    const double from = value_at(t, i, j), to = value_at(t, i + !up, j + up);
    const double x = clamp(i, t->grid->nx), y = clamp(j, t->grid->ny);
    if (isinf(from) || isinf(to)) return (struct gw_point){x, y}; /* to the frame: at the node inside */
    const double part = (t->level - from) / (to - from);
    return (struct gw_point){up ? x : x + part, up ? y + part : y};
}

/* Corners 0 to 3 counter-clockwise from the lower left; side s lies between corners s and s + 1. Going round, an
 * outline enters the cell on the side where low turns to high and leaves it on one where high turns to low. */
static void link_cell(struct tracer *t, int i, int j)
{
    const bool high[] = {is_high(t, i, j), is_high(t, i + 1, j), is_high(t, i + 1, j + 1), is_high(t, i, j + 1)};
    const int edges[] = {edge_of(t, i, j, 0), edge_of(t, i + 1, j, 1), edge_of(t, i, j + 1, 0), edge_of(t, i, j, 1)};
    const bool saddle = high[0] == high[2] && high[1] == high[3] && high[0] != high[1];
    double mean = 0;
    if (saddle)
        mean = (value_at(t, i, j) + value_at(t, i + 1, j) + value_at(t, i + 1, j + 1) + value_at(t, i, j + 1)) / 4;
    for (int side = 0; side < 4; side++) {
        if (!high[side] || high[(side + 1) % 4]) continue;
        /* The outline with the high side on its left comes in where high ends and goes out where high begins: past the
         * low corner, or, across a saddle whose middle is low, round the high one. */
        int out = (side + 1) % 4;
        while (high[out] || !high[(out + 1) % 4]) out = (out + 1) % 4;
        if (saddle && mean < t->level) out = (side + 3) % 4;
        t->next[edges[side]] = edges[out];
    }
}

static void link_all(struct tracer *t)
{
    for (int k = 0; k < 2 * t->width * t->height; k++) t->next[k] = NOWHERE;
    for (int j = -1; j < t->grid->ny; j++)
        for (int i = -1; i < t->grid->nx; i++) link_cell(t, i, j);
}

static bool same(struct gw_point a, struct gw_point b) { return a.x == b.x && a.y == b.y; }

static void add_ring(struct contour *out, struct gw_arena *arena, struct tracer *t, int start)
{
    struct gw_outline ring = {NULL, 0};
    size_t capacity = 0;
    for (int edge = start; edge != NOWHERE;) {
        const struct gw_point p = crossing(t, edge);
        const int next = t->next[edge];
        t->next[edge] = NOWHERE;
        edge = next;
        if (ring.n && same(p, ring.points[ring.n - 1])) continue;
        ring.points = gw_grow(arena, ring.points, ring.n, &capacity, sizeof *ring.points);
        ring.points[ring.n++] = p;
    }
    while (ring.n > 1 && same(ring.points[0], ring.points[ring.n - 1])) ring.n--;
    if (ring.n < 3) return; /* the level touches a node: no area */
    out->rings = gw_grow(arena, out->rings, out->n, &out->capacity, sizeof *out->rings);
    out->rings[out->n++] = ring;
}

void gw_contour_trace(struct contour *out, struct gw_arena *arena, const struct contour_grid *grid, double level)
{
    struct tracer t = {grid, level, grid->nx + 2, grid->ny + 2, NULL};
    const int edges = 2 * t.width * t.height;
    *out = (struct contour){NULL, 0, 0};
    t.next = gw_alloc(arena, (size_t)edges, sizeof *t.next);
    link_all(&t);
    for (int edge = 0; edge < edges; edge++)
        if (t.next[edge] != NOWHERE) add_ring(out, arena, &t, edge);
}

bool gw_contour_on_border(const struct contour_grid *grid, struct gw_point a, struct gw_point b)
{
    const double right = grid->nx - 1, top = grid->ny - 1;
    return (a.x == b.x && (a.x == 0 || a.x == right)) || (a.y == b.y && (a.y == 0 || a.y == top));
}

/* From the line between a and b, its ends included. */
static double distance(struct gw_point p, struct gw_point a, struct gw_point b)
{
    const double x = b.x - a.x, y = b.y - a.y, length2 = x * x + y * y;
    const double along = length2 > 0 ? fmin(fmax(((p.x - a.x) * x + (p.y - a.y) * y) / length2, 0), 1) : 0;
    return hypot(p.x - a.x - along * x, p.y - a.y - along * y);
}

/* From a point that stays, the farthest one that a straight line may reach. */
static size_t reach(const struct gw_point *points, size_t n, size_t from, double tolerance)
{
    for (size_t to = from + 2; to < n; to++)
        for (size_t k = from + 1; k < to; k++)
            if (distance(points[k], points[from], points[to]) > tolerance) return to - 1;
    return n - 1;
}

size_t gw_contour_thin(struct gw_point *points, size_t n, double tolerance)
{
    size_t kept = 0;
    if (n < 3) return n;
    for (size_t at = 0;;) {
        const struct gw_point p = points[at];
        const bool last = at + 1 >= n;
        if (!last) at = reach(points, n, at, tolerance);
        points[kept++] = p; /* never ahead of what is still read */
        if (last) return kept;
    }
}
