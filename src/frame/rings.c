/* Area, inertia and plastic moduli of what closed lines bound, by integrals along their edges (Green's theorem). */
#include "section_internal.h"

struct edge {
    double x0, y0, x1, y1;
};

static struct edge edge_at(const struct gw_ring *ring, size_t i, struct gw_section_point origin)
{
    const struct gw_section_point a = ring->points[i], b = ring->points[(i + 1) % ring->n];
    return (struct edge){a.x - origin.x, a.y - origin.y, b.x - origin.x, b.y - origin.y};
}

/* About the ring's first point, so that a distant origin costs no digits. */
double gw_ring_area(const struct gw_ring *ring)
{
    double sum = 0;
    for (size_t i = 0; i < ring->n; i++) {
        const struct edge e = edge_at(ring, i, ring->points[0]);
        sum += e.x0 * e.y1 - e.x1 * e.y0;
    }
    return sum / 2;
}

/* +1 or -1, so that metal adds and voids take away whichever way their lines run. */
static double turn(const struct gw_ring *ring) { return gw_ring_area(ring) < 0 ? -ring->sign : ring->sign; }

static void add_extent(struct gw_section *out, const struct gw_ring *ring)
{
    for (size_t i = 0; i < ring->n; i++) {
        const struct gw_section_point p = ring->points[i];
        out->left = fmin(out->left, p.x), out->right = fmax(out->right, p.x);
        out->bottom = fmin(out->bottom, p.y), out->top = fmax(out->top, p.y);
    }
}

static void find_centroid(struct gw_section *out, const struct gw_ring *rings, size_t n)
{
    const struct gw_section_point origin = rings[0].points[0];
    double area = 0, first_x = 0, first_y = 0;
    for (size_t r = 0; r < n; r++) {
        const double sign = turn(&rings[r]);
        for (size_t i = 0; i < rings[r].n; i++) {
            const struct edge e = edge_at(&rings[r], i, origin);
            const double c = sign * (e.x0 * e.y1 - e.x1 * e.y0);
            area += c / 2;
            first_x += c * (e.x0 + e.x1) / 6;
            first_y += c * (e.y0 + e.y1) / 6;
        }
    }
    out->area = area;
    out->centroid = (struct gw_section_point){origin.x + first_x / area, origin.y + first_y / area};
}

static void find_inertia(struct gw_section *out, const struct gw_ring *rings, size_t n)
{
    for (size_t r = 0; r < n; r++) {
        const double sign = turn(&rings[r]);
        for (size_t i = 0; i < rings[r].n; i++) {
            const struct edge e = edge_at(&rings[r], i, out->centroid);
            const double c = sign * (e.x0 * e.y1 - e.x1 * e.y0);
            out->inertia_x += c * (e.y0 * e.y0 + e.y0 * e.y1 + e.y1 * e.y1) / 12;
            out->inertia_y += c * (e.x0 * e.x0 + e.x0 * e.x1 + e.x1 * e.x1) / 12;
            out->inertia_xy += c * (e.x0 * e.y1 + 2 * e.x0 * e.y0 + 2 * e.x1 * e.y1 + e.x1 * e.y0) / 24;
        }
    }
}

/* What an axis halves: the axis along x, or along y and all turned over the diagonal. */
struct halving {
    const struct gw_ring *rings;
    size_t n;
    struct gw_section_point origin;
    bool about_x;
};

static struct edge turned(struct edge e) { return (struct edge){e.y0, e.x0, e.y1, e.x1}; }

/* The part of the edge with y up to the level; false where there is none. */
static bool cut(struct edge *e, double level)
{
    if (e->y0 >= level && e->y1 >= level) return false;
    if (e->y0 <= level && e->y1 <= level) return true;
    const double x = e->x0 + (e->x1 - e->x0) * (level - e->y0) / (e->y1 - e->y0);
    if (e->y0 > level) e->x0 = x, e->y0 = level;
    else e->x1 = x, e->y1 = level;
    return true;
}

/* Area below the level, and its first moment about the level. A cut along the level adds nothing to integrals over dy,
 * so each edge is only shortened. */
static void below(const struct halving *h, double level, double *area, double *moment)
{
    *area = *moment = 0;
    for (size_t r = 0; r < h->n; r++) {
        const double sign = turn(&h->rings[r]) * (h->about_x ? 1 : -1);
        for (size_t i = 0; i < h->rings[r].n; i++) {
            struct edge e = edge_at(&h->rings[r], i, h->origin);
            if (!h->about_x) e = turned(e);
            if (!cut(&e, level)) continue;
            const double a = level - e.y0, b = level - e.y1;
            *area += sign * (e.y1 - e.y0) * (e.x0 + e.x1) / 2;
            *moment += sign * (e.y1 - e.y0) * (e.x0 * (2 * a + b) + e.x1 * (a + 2 * b)) / 6;
        }
    }
}

/* The integral of the distance to the axis that halves the area. Halving the interval until it has no middle left: the
 * modulus is stationary there, so its last digits are good. */
static double plastic(const struct halving *h, double total, double low, double high)
{
    double area, moment, level = (low + high) / 2;
    while (level > low && level < high) {
        below(h, level, &area, &moment);
        if (area < total / 2) low = level;
        else high = level;
        level = (low + high) / 2;
    }
    below(h, level, &area, &moment);
    return 2 * moment - total * level; /* the centroid is at 0 */
}

void gw_rings_section(struct gw_section *out, const struct gw_ring *rings, size_t n)
{
    out->left = out->right = rings[0].points[0].x;
    out->bottom = out->top = rings[0].points[0].y;
    for (size_t r = 0; r < n; r++)
        if (rings[r].sign > 0) add_extent(out, &rings[r]);
    find_centroid(out, rings, n);
    find_inertia(out, rings, n);
    struct halving halving = {.rings = rings, .n = n, .origin = out->centroid, .about_x = true};
    out->plastic_x = plastic(&halving, out->area, out->bottom - out->centroid.y, out->top - out->centroid.y);
    halving.about_x = false;
    out->plastic_y = plastic(&halving, out->area, out->left - out->centroid.x, out->right - out->centroid.x);
}
