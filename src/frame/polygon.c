/* Sections from an outline with voids. */
#include "section_internal.h"

static const char CLAUSE[] = "section, Green's theorem";

static double cross(struct gw_section_point o, struct gw_section_point a, struct gw_section_point b)
{
    return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

double gw_point_to_segment(struct gw_section_point p, struct gw_section_point a, struct gw_section_point b)
{
    const double dx = b.x - a.x, dy = b.y - a.y, length2 = dx * dx + dy * dy;
    double along = length2 > 0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2 : 0;
    along = fmin(1, fmax(0, along));
    return hypot(p.x - a.x - along * dx, p.y - a.y - along * dy);
}

enum gw_crossing gw_segments(struct gw_section_point a, struct gw_section_point b, struct gw_section_point c,
                             struct gw_section_point d, double near)
{
    const double nearest = fmin(fmin(gw_point_to_segment(a, c, d), gw_point_to_segment(b, c, d)),
                                fmin(gw_point_to_segment(c, a, b), gw_point_to_segment(d, a, b)));
    if (nearest <= near) return GW_TOUCHING;
    const bool crossing = cross(a, b, c) * cross(a, b, d) < 0 && cross(c, d, a) * cross(c, d, b) < 0;
    return crossing ? GW_CROSSING : GW_APART;
}

/* All lines one after the other. */
struct lines {
    const struct gw_polygon *outline, *voids;
    size_t n; /* of voids, and the outline */
    double near;
};

static const struct gw_polygon *line_at(const struct lines *lines, size_t i)
{
    return i ? &lines->voids[i - 1] : lines->outline;
}

static const char *key_of(size_t line) { return line ? "voids" : "outline"; }

static bool is_inside(struct gw_section_point p, const struct gw_polygon *polygon)
{
    bool inside = false;
    for (size_t i = 0, j = polygon->n - 1; i < polygon->n; j = i++) {
        const struct gw_section_point a = polygon->points[i], b = polygon->points[j];
        if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) inside = !inside;
    }
    return inside;
}

/* Neighbors share a point; they must not fold back onto each other. */
static bool folds(const struct gw_polygon *line, size_t i, double near)
{
    const struct gw_section_point a = line->points[i], b = line->points[(i + 1) % line->n],
                                  c = line->points[(i + 2) % line->n];
    return gw_point_to_segment(c, a, b) <= near || gw_point_to_segment(a, b, c) <= near;
}

static enum gw_status check_folds(const struct lines *lines, size_t at, struct gw_engine *engine)
{
    const struct gw_polygon *line = line_at(lines, at);
    if (line->n < 3) return gw_refuse(engine, GW_BAD_VALUE, key_of(at), "a polygon has three points or more");
    for (size_t i = 0; i < line->n; i++)
        if (folds(line, i, lines->near))
            return gw_refuse(
                engine, GW_BAD_VALUE, key_of(at),
                "points {} to {} repeat a point or fold back; the first point is not given again at the end",
                gw_of_count((long)(i + 1)), gw_of_count((long)((i + 2) % line->n + 1)));
    return GW_OK;
}

static enum gw_status check_line(const struct lines *lines, size_t at, struct gw_engine *engine)
{
    const struct gw_polygon *line = line_at(lines, at);
    enum gw_status status = check_folds(lines, at, engine);
    if (status) return status;
    for (size_t i = 0; i + 2 < line->n; i++)
        for (size_t j = i + 2; j < line->n - (i == 0); j++)
            if (gw_segments(line->points[i], line->points[i + 1], line->points[j], line->points[(j + 1) % line->n],
                            lines->near))
                return gw_refuse(engine, GW_BAD_VALUE, key_of(at),
                                 "the line crosses or touches itself: its edges {} and {}", gw_of_count((long)(i + 1)),
                                 gw_of_count((long)(j + 1)));
    return GW_OK;
}

static bool lines_meet(const struct gw_polygon *a, const struct gw_polygon *b, double near)
{
    for (size_t i = 0; i < a->n; i++)
        for (size_t j = 0; j < b->n; j++)
            if (gw_segments(a->points[i], a->points[(i + 1) % a->n], b->points[j], b->points[(j + 1) % b->n], near))
                return true;
    return false;
}

static enum gw_status check_pair(const struct lines *lines, size_t i, size_t j, struct gw_engine *engine)
{
    const struct gw_polygon *a = line_at(lines, i), *b = line_at(lines, j);
    if (lines_meet(a, b, lines->near))
        return gw_refuse(engine, GW_BAD_VALUE, "voids", "void {} crosses or touches {}", gw_of_count((long)j),
                         gw_of_text(i ? "another" : "the outline"));
    if (i == 0 && !is_inside(b->points[0], a))
        return gw_refuse(engine, GW_BAD_VALUE, "voids", "void {} lies outside the outline", gw_of_count((long)j));
    if (i > 0 && (is_inside(b->points[0], a) || is_inside(a->points[0], b)))
        return gw_refuse(engine, GW_BAD_VALUE, "voids", "voids {} and {} lie in one another", gw_of_count((long)i),
                         gw_of_count((long)j));
    return GW_OK;
}

static enum gw_status check_lines(const struct lines *lines, struct gw_engine *engine)
{
    size_t points = 0;
    for (size_t i = 0; i < lines->n; i++) points += line_at(lines, i)->n;
    if (points > GW_POLYGON_POINTS || lines->n > GW_POLYGON_POINTS / 3)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "outline", "more than {} points", gw_of_count(GW_POLYGON_POINTS));
    for (size_t i = 0; i < lines->n; i++) {
        enum gw_status status = check_line(lines, i, engine);
        for (size_t j = 0; j < i && !status; j++) status = check_pair(lines, j, i, engine);
        if (status) return status;
    }
    return GW_OK;
}

static double size_of(const struct gw_polygon *outline)
{
    double size = 0;
    for (size_t i = 1; i < outline->n; i++)
        size =
            fmax(size, hypot(outline->points[i].x - outline->points[0].x, outline->points[i].y - outline->points[0].y));
    return size;
}

static enum gw_status check_finite(const struct lines *lines, struct gw_engine *engine)
{
    for (size_t i = 0; i < lines->n; i++)
        for (size_t k = 0; k < line_at(lines, i)->n; k++) {
            const struct gw_section_point p = line_at(lines, i)->points[k];
            if (!isfinite(p.x) || !isfinite(p.y))
                return gw_refuse(engine, GW_MISSING, key_of(i), "point {} lacks a coordinate",
                                 gw_of_count((long)(k + 1)));
        }
    return GW_OK;
}

enum gw_status gw_section_polygon(struct gw_section *out, const struct gw_polygon *outline,
                                  const struct gw_polygon *voids, size_t n_voids, struct gw_engine *engine)
{
    struct gw_ring rings[GW_POLYGON_POINTS / 3];
    /* What is nearer than a hair of the outline's size touches: below what drawings hold. */
    struct lines lines = {outline, voids, n_voids + 1, GW_HAIR * size_of(outline)};
    gw_section_clear(out);
    enum gw_status status = check_finite(&lines, engine);
    if (!status) status = check_lines(&lines, engine);
    if (status) return status;
    for (size_t i = 0; i < lines.n; i++)
        rings[i] = (struct gw_ring){line_at(&lines, i)->points, line_at(&lines, i)->n, i ? -1 : 1};
    gw_rings_section(out, rings, lines.n);
    gw_trace_note(engine, "A, Ix, Iy, Ixy", CLAUSE,
                  "integrals along the edges of the outline less those of the voids, about the centroid");
    gw_trace_note(engine, "Zx, Zy", CLAUSE, "first moments of both halves about the line that halves the area");
    gw_section_finish(out, engine);
    return GW_OK;
}
