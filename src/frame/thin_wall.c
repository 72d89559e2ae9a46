/* Sections from the center lines of thin walls: torsion with any number of cells, shear center, warping.
 *
 * Twisted by a unit rate about a pole, a wall's center line is sheared by W' + h: W the axial warping, h the distance
 * of the wall's line from the pole. The shear flow q = G t (W' + h) is constant along a wall and adds up to zero where
 * walls join, which gives W at the joints; around cells, J = sum q h L/G. Walls in no cell carry no flow: W' = -h. */
#include "section_internal.h"

#include "tables_data.h"

static const char CLAUSE[] = "thin walls by their center lines";
/* Inertia and determinant below this part are the rounding of zero. */
static const double ROUNDING = 1e-9;

struct wall {
    unsigned from, to;
    double length, thickness;
    double reach; /* m, h about the centroid of the center lines */
    bool in_cell;
};

struct frame {
    struct gw_section_point nodes[GW_STRIP_NODES];
    double warping[GW_STRIP_NODES]; /* m2, W about the pole */
    struct wall walls[GW_STRIPS];
    unsigned n_nodes, n_walls;
    double near, width, depth; /* m, of the center lines */
    /* Of the center lines without thickness: area, centroid, inertia about it. */
    double area, ix, iy, ixy;
    struct gw_section_point centroid;
};

/* Joints ------------------------------------------------------------------------------------------------------------
 */

static enum gw_status measure(struct frame *f, const struct gw_strip *strips, size_t n, struct gw_engine *engine)
{
    double left = INFINITY, right = -INFINITY, bottom = INFINITY, top = -INFINITY;
    for (size_t i = 0; i < n; i++) {
        const struct gw_section_point a = strips[i].from, b = strips[i].to;
        if (!isfinite(a.x) || !isfinite(a.y) || !isfinite(b.x) || !isfinite(b.y))
            return gw_refuse(engine, GW_MISSING, "walls", "wall {} lacks a coordinate", gw_of_count((long)(i + 1)));
        if (!(strips[i].thickness > 0 && isfinite(strips[i].thickness)))
            return gw_refuse(engine, GW_BAD_VALUE, "walls", "the thickness of wall {} must be positive",
                             gw_of_count((long)(i + 1)));
        left = fmin(left, fmin(a.x, b.x)), right = fmax(right, fmax(a.x, b.x));
        bottom = fmin(bottom, fmin(a.y, b.y)), top = fmax(top, fmax(a.y, b.y));
    }
    f->width = right - left;
    f->depth = top - bottom;
    /* Ends nearer than this are one. */
    f->near = GW_HAIR_DRAWN * hypot(f->width, f->depth);
    return GW_OK;
}

static unsigned node_at(struct frame *f, struct gw_section_point p)
{
    unsigned i = 0;
    while (i < f->n_nodes && hypot(p.x - f->nodes[i].x, p.y - f->nodes[i].y) > f->near) i++;
    if (i == f->n_nodes && i < GW_STRIP_NODES) f->nodes[f->n_nodes++] = p;
    return i;
}

static enum gw_status join(struct frame *f, const struct gw_strip *strips, size_t n, struct gw_engine *engine)
{
    if (n == 0) return gw_refuse(engine, GW_MISSING, "walls", "no walls");
    if (n > GW_STRIPS)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "walls", "more than {} walls", gw_of_count(GW_STRIPS));
    enum gw_status status = measure(f, strips, n, engine);
    if (status) return status;
    for (size_t i = 0; i < n; i++) {
        struct wall *w = &f->walls[f->n_walls++];
        *w = (struct wall){
            .from = node_at(f, strips[i].from), .to = node_at(f, strips[i].to), .thickness = strips[i].thickness};
        if (w->from == GW_STRIP_NODES || w->to == GW_STRIP_NODES)
            return gw_refuse(engine, GW_OUTSIDE_METHOD, "walls", "more than {} joints", gw_of_count(GW_STRIP_NODES));
        if (w->from == w->to)
            return gw_refuse(engine, GW_BAD_VALUE, "walls", "wall {} has no length", gw_of_count((long)(i + 1)));
        w->length = hypot(f->nodes[w->to].x - f->nodes[w->from].x, f->nodes[w->to].y - f->nodes[w->from].y);
    }
    return GW_OK;
}

/* Of a wall and an earlier one. */
static enum gw_status check_pair(const struct frame *f, unsigned i, unsigned k, struct gw_engine *engine)
{
    const struct wall *w = &f->walls[i], *v = &f->walls[k];
    const bool same = (w->from == v->from && w->to == v->to) || (w->from == v->to && w->to == v->from);
    const bool joined = w->from == v->from || w->from == v->to || w->to == v->from || w->to == v->to;
    const bool cross =
        !joined && gw_segments(f->nodes[w->from], f->nodes[w->to], f->nodes[v->from], f->nodes[v->to], f->near);
    if (!same && !cross) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, "walls", "walls {} and {} {}", gw_of_count((long)(k + 1)),
                     gw_of_count((long)(i + 1)), gw_of_text(same ? "are one" : "cross: split them there"));
}

/* Walls meet at their ends only. */
static enum gw_status check_meetings(const struct frame *f, struct gw_engine *engine)
{
    enum gw_status status = GW_OK;
    for (unsigned i = 0; i < f->n_walls && status == GW_OK; i++) {
        const struct wall *w = &f->walls[i];
        const struct gw_section_point a = f->nodes[w->from], b = f->nodes[w->to];
        for (unsigned k = 0; k < f->n_nodes; k++)
            if (k != w->from && k != w->to && gw_point_to_segment(f->nodes[k], a, b) <= f->near)
                return gw_refuse(engine, GW_BAD_VALUE, "walls", "another wall ends on wall {}: split it there",
                                 gw_of_count((long)(i + 1)));
        for (unsigned k = 0; k < i && status == GW_OK; k++) status = check_pair(f, i, k, engine);
    }
    return status;
}

/* Marks what can be reached from `start` without the wall `left_out` (n_walls: all walls). */
static unsigned reach(const struct frame *f, unsigned start, unsigned left_out, bool seen[GW_STRIP_NODES])
{
    unsigned count = 1;
    for (unsigned i = 0; i < f->n_nodes; i++) seen[i] = i == start;
    for (bool more = true; more;) {
        more = false;
        for (unsigned i = 0; i < f->n_walls; i++) {
            const struct wall *w = &f->walls[i];
            if (i == left_out || seen[w->from] == seen[w->to]) continue;
            seen[w->from] = seen[w->to] = more = true;
            count++;
        }
    }
    return count;
}

static enum gw_status find_cells(struct frame *f, struct gw_engine *engine)
{
    bool seen[GW_STRIP_NODES];
    if (reach(f, 0, f->n_walls, seen) < f->n_nodes)
        return gw_refuse(engine, GW_BAD_VALUE, "walls",
                         "the walls are not all connected: ends that join must coincide");
    for (unsigned i = 0; i < f->n_walls; i++) {
        reach(f, f->walls[i].from, i, seen);
        f->walls[i].in_cell = seen[f->walls[i].to];
    }
    return GW_OK;
}

/* Center lines ------------------------------------------------------------------------------------------------------
 */

static void find_line_inertia(struct frame *f)
{
    const struct gw_section_point origin = f->nodes[0];
    double first_x = 0, first_y = 0;
    for (unsigned i = 0; i < f->n_walls; i++) {
        const struct wall *w = &f->walls[i];
        const double area = w->length * w->thickness;
        f->area += area;
        first_x += area * ((f->nodes[w->from].x + f->nodes[w->to].x) / 2 - origin.x);
        first_y += area * ((f->nodes[w->from].y + f->nodes[w->to].y) / 2 - origin.y);
    }
    f->centroid = (struct gw_section_point){origin.x + first_x / f->area, origin.y + first_y / f->area};
    for (unsigned i = 0; i < f->n_walls; i++) {
        struct wall *w = &f->walls[i];
        const double x0 = f->nodes[w->from].x - f->centroid.x, y0 = f->nodes[w->from].y - f->centroid.y;
        const double x1 = f->nodes[w->to].x - f->centroid.x, y1 = f->nodes[w->to].y - f->centroid.y;
        const double sixth = w->length * w->thickness / 6;
        f->ix += 2 * sixth * (y0 * y0 + y0 * y1 + y1 * y1);
        f->iy += 2 * sixth * (x0 * x0 + x0 * x1 + x1 * x1);
        f->ixy += sixth * (2 * x0 * y0 + x0 * y1 + x1 * y0 + 2 * x1 * y1);
        w->reach = (x0 * (y1 - y0) - y0 * (x1 - x0)) / w->length;
    }
}

/* Symmetric, positive definite, row by row; the right-hand side becomes the solution. */
static void solve(double (*a)[GW_STRIP_NODES], double *b, unsigned n)
{
    for (unsigned k = 0; k < n; k++)
        for (unsigned i = k + 1; i < n; i++) {
            const double factor = a[i][k] / a[k][k];
            for (unsigned j = k; j < n; j++) a[i][j] -= factor * a[k][j];
            b[i] -= factor * b[k];
        }
    for (unsigned k = n; k-- > 0;) {
        for (unsigned j = k + 1; j < n; j++) b[k] -= a[k][j] * b[j];
        b[k] /= a[k][k];
    }
}

/* Equilibrium of the shear flows at each joint, W about the centroid; joint 0, where W is 0, comes last and is left
 * out.
 */
static void find_warping(struct frame *f)
{
    double a[GW_STRIP_NODES][GW_STRIP_NODES] = {{0}}, b[GW_STRIP_NODES] = {0};
    for (unsigned i = 0; i < f->n_walls; i++) {
        const struct wall *w = &f->walls[i];
        const unsigned from = f->n_nodes - 1 - w->from, to = f->n_nodes - 1 - w->to;
        const double stiffness = w->thickness / w->length, flow = w->thickness * w->reach;
        a[from][from] += stiffness, a[to][to] += stiffness;
        a[from][to] -= stiffness, a[to][from] -= stiffness;
        b[from] += flow, b[to] -= flow;
    }
    solve(a, b, f->n_nodes - 1);
    for (unsigned i = 0; i < f->n_nodes; i++) f->warping[i] = i ? b[f->n_nodes - 1 - i] : 0;
}

/* Results -----------------------------------------------------------------------------------------------------------
 */

static void find_torsion(struct gw_section *out, const struct frame *f, struct gw_engine *engine)
{
    double cells = 0, open = 0;
    for (unsigned i = 0; i < f->n_walls; i++) {
        const struct wall *w = &f->walls[i];
        const double warped = (f->warping[w->to] - f->warping[w->from]) / w->length;
        if (w->in_cell) cells += w->thickness * (warped + w->reach) * w->reach * w->length;
        else open += w->length * pow(w->thickness, 3) / 3;
    }
    out->torsion = cells + open;
    gw_trace_note(engine, "J_cells, J_open", CLAUSE,
                  "shear flow of unit twist around the cells; sum of L t^3/3 of the walls in none");
    GW_STEP(engine, "J", GW_INERTIA, out->torsion, CLAUSE, "J_cells+J_open", {"J_cells", cells, GW_INERTIA},
            {"J_open", open, GW_INERTIA});
}

/* The thickest wall over the least breadth of the cells' center lines, or over the length of all walls. */
static bool thin_enough(const struct frame *f, int cells, struct gw_engine *engine)
{
    double thickest_cell = 0, thickest_open = 0, length = 0;
    for (unsigned i = 0; i < f->n_walls; i++) {
        const struct wall *w = &f->walls[i];
        length += w->length;
        if (w->in_cell) thickest_cell = fmax(thickest_cell, w->thickness);
        else thickest_open = fmax(thickest_open, w->thickness);
    }
    const struct gw_thin_wall *closed = &engine->tables->thin_wall[GW_ROW_THIN_WALL_CLOSED],
                              *open = &engine->tables->thin_wall[GW_ROW_THIN_WALL_OPEN];
    if (cells) gw_used_add(&engine->used, &closed->row);
    if (thickest_open > 0) gw_used_add(&engine->used, &open->row);
    if (cells && thickest_cell > closed->thickness * fmin(f->width, f->depth)) return false;
    return thickest_open <= open->thickness * length;
}

/* Bending about either axis twists nothing when W about the pole has no moments with x and y. */
static void find_shear_center(struct gw_section *out, const struct frame *f)
{
    double wx = 0, wy = 0;
    for (unsigned i = 0; i < f->n_walls; i++) {
        const struct wall *w = &f->walls[i];
        const double sixth = w->length * w->thickness / 6, w0 = f->warping[w->from], w1 = f->warping[w->to];
        const double x0 = f->nodes[w->from].x - f->centroid.x, y0 = f->nodes[w->from].y - f->centroid.y;
        const double x1 = f->nodes[w->to].x - f->centroid.x, y1 = f->nodes[w->to].y - f->centroid.y;
        wx += sixth * (2 * w0 * x0 + w0 * x1 + w1 * x0 + 2 * w1 * x1);
        wy += sixth * (2 * w0 * y0 + w0 * y1 + w1 * y0 + 2 * w1 * y1);
    }
    const double determinant = f->ix * f->iy - f->ixy * f->ixy;
    out->shear_center = f->centroid;
    if (determinant <= ROUNDING * pow(f->ix + f->iy, 2)) return; /* one straight line */
    out->shear_center.x += (wx * f->ixy - wy * f->iy) / determinant;
    out->shear_center.y += (wx * f->ix - wy * f->ixy) / determinant;
}

/* The integral of W^2 about the shear center, with W's mean taken off. */
static double warping_constant(const struct frame *f, struct gw_section_point pole)
{
    double about[GW_STRIP_NODES], mean = 0, sum = 0;
    for (unsigned i = 0; i < f->n_nodes; i++)
        about[i] = f->warping[i] + (pole.x - f->centroid.x) * (f->nodes[i].y - f->centroid.y) -
                   (pole.y - f->centroid.y) * (f->nodes[i].x - f->centroid.x);
    for (unsigned i = 0; i < f->n_walls; i++)
        mean += f->walls[i].length * f->walls[i].thickness * (about[f->walls[i].from] + about[f->walls[i].to]) / 2;
    mean /= f->area;
    for (unsigned i = 0; i < f->n_walls; i++) {
        const struct wall *w = &f->walls[i];
        const double w0 = about[w->from] - mean, w1 = about[w->to] - mean;
        sum += w->length * w->thickness * (w0 * w0 + w0 * w1 + w1 * w1) / 3;
    }
    return sum;
}

static enum gw_status analyze(struct gw_section *out, const struct gw_strip *strips, size_t n, struct frame *f,
                              struct gw_engine *engine)
{
    *f = (struct frame){.n_nodes = 0};
    enum gw_status status = join(f, strips, n, engine);
    if (!status) status = check_meetings(f, engine);
    if (!status) status = find_cells(f, engine);
    if (status) return status;
    out->cells = (int)f->n_walls - (int)f->n_nodes + 1;
    find_line_inertia(f);
    find_warping(f);
    find_shear_center(out, f);
    gw_trace_note(engine, "shear center", CLAUSE, "pole about which the warping has no moments with x and y");
    if (!out->cells) out->warping = warping_constant(f, out->shear_center);
    if (thin_enough(f, out->cells, engine)) {
        find_torsion(out, f, engine);
        return GW_OK;
    }
    gw_section_note(out, "no torsion constant: walls this thick are beyond the thin-walled formulas");
    gw_trace_note(engine, "J", CLAUSE, "walls too thick for the thin-walled formulas: not given");
    return GW_OK;
}

/* Walls as rectangles. */
static void fill_rings(struct gw_ring *rings, struct gw_section_point (*corners)[4], const struct gw_strip *strips,
                       size_t n)
{
    for (size_t i = 0; i < n; i++) {
        const struct gw_section_point a = strips[i].from, b = strips[i].to;
        const double half = strips[i].thickness / 2 / hypot(b.x - a.x, b.y - a.y);
        const double nx = -(b.y - a.y) * half, ny = (b.x - a.x) * half;
        corners[i][0] = (struct gw_section_point){a.x - nx, a.y - ny};
        corners[i][1] = (struct gw_section_point){b.x - nx, b.y - ny};
        corners[i][2] = (struct gw_section_point){b.x + nx, b.y + ny};
        corners[i][3] = (struct gw_section_point){a.x + nx, a.y + ny};
        rings[i] = (struct gw_ring){corners[i], 4, 1};
    }
}

enum gw_status gw_section_strips(struct gw_section *out, const struct gw_strip *strips, size_t n,
                                 struct gw_engine *engine)
{
    struct frame f;
    struct gw_section_point corners[GW_STRIPS][4];
    struct gw_ring rings[GW_STRIPS];
    gw_section_clear(out);
    enum gw_status status = analyze(out, strips, n, &f, engine);
    if (status) return status;
    fill_rings(rings, corners, strips, n);
    gw_rings_section(out, rings, n);
    gw_trace_note(engine, "A, Ix, Iy, Ixy, Zx, Zy", CLAUSE, "walls as rectangles about their center lines");
    gw_section_finish(out, engine);
    return GW_OK;
}

enum gw_status gw_section_walls(struct gw_section *section, const struct gw_strip *strips, size_t n,
                                struct gw_engine *engine)
{
    struct frame f;
    enum gw_status status = analyze(section, strips, n, &f, engine);
    if (status) return status;
    const double match = engine->tables->wall_match[0].within;
    gw_used_add(&engine->used, &engine->tables->wall_match[0].row);
    if (fabs(f.area - section->area) <= match * section->area) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, "walls",
                     "the walls' area differs from the outline's by more than {} %: they are not its center lines",
                     gw_of_number(100 * match, 4));
}
