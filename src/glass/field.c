/* Stresses on both faces: largest, at the center, and the risk integral. */
#include "glass/glass_internal.h"

#include <string.h>

/* Second derivatives of deflection and stress function: xx, xy, yy. */
struct curvature {
    double w[3], f[3];
};

/* face: 1 the unloaded one, -1 the loaded one. */
static struct plate_stress components(const struct plate_field *f, const struct curvature *c, double face)
{
    const double x2 = f->s->half_x * f->s->half_x, y2 = f->s->half_y * f->s->half_y, xy = f->s->half_x * f->s->half_y;
    const double plate = face / (2 * (1 - f->nu * f->nu)), twist = face / (2 * (1 + f->nu));
    double wxx = c->w[0] / x2, wyy = c->w[2] / y2;
    double sx = c->f[2] / y2 - plate * (wxx + f->nu * wyy), sy = c->f[0] / x2 - plate * (wyy + f->nu * wxx);
    return (struct plate_stress){sx, sy, -c->f[1] / xy - twist * c->w[1] / xy};
}

static struct plate_principal stress(const struct plate_field *f, const struct curvature *c, double face)
{
    struct plate_stress s = components(f, c, face);
    double mean = (s.x + s.y) / 2, radius = hypot((s.x - s.y) / 2, s.shear);
    return (struct plate_principal){mean + radius, mean - radius};
}

/* rows[d][b] = sum over a of the coefficients times the d-th derivative along x. */
static void along_x(double rows[3][PLATE_N], const double *coefficients, const double shape[3][PLATE_N], int n)
{
    for (int d = 0; d < 3; d++)
        for (int b = 0; b < n; b++) {
            double sum = 0;
            for (int a = 0; a < n; a++) sum += coefficients[a * n + b] * shape[d][a];
            rows[d][b] = sum;
        }
}

static void along_y(double out[3], const double rows[3][PLATE_N], const double shape[3][PLATE_N], int n)
{
    out[0] = out[1] = out[2] = 0;
    for (int b = 0; b < n; b++) {
        out[0] += rows[2][b] * shape[0][b];
        out[1] += rows[1][b] * shape[1][b];
        out[2] += rows[0][b] * shape[2][b];
    }
}

static void scan(struct plate_field *f)
{
    const int n = f->s->n;
    double w[3][PLATE_N], phi[3][PLATE_N];
    f->risk = 0;
    for (int i = 0; i < PLATE_NODES; i++) {
        along_x(w, f->s->w, f->shape[i].w, n);
        along_x(phi, f->s->f, f->shape[i].f, n);
        for (int j = 0; j < PLATE_NODES; j++) {
            struct curvature c = {{0}, {0}};
            along_y(c.w, w, f->shape[j].w, n);
            along_y(c.f, phi, f->shape[j].f, n);
            struct plate_principal tension = stress(f, &c, 1);
            f->largest[0][i][j] = tension.first;
            f->largest[1][i][j] = stress(f, &c, -1).first;
            f->risk += f->weight[i] * f->weight[j] * gw_biaxial_mean(tension.first, tension.second, f->m);
        }
    }
}

double gw_plate_deflection_at(const struct plate_field *f, double x, double y)
{
    struct plate_shape sx, sy;
    double sum = 0;
    gw_plate_shape_at(&sx, f->s->n, f->s->straight, x);
    gw_plate_shape_at(&sy, f->s->n, f->s->straight, y);
    for (int a = 0; a < f->s->n; a++)
        for (int b = 0; b < f->s->n; b++) sum += f->s->w[a * f->s->n + b] * sx.w[0][a] * sy.w[0][b];
    return sum;
}

static struct curvature curvature_at(const struct plate_field *f, double x, double y)
{
    struct plate_shape sx, sy;
    struct curvature c = {{0}, {0}};
    double rows[3][PLATE_N];
    gw_plate_shape_at(&sx, f->s->n, f->s->straight, x);
    gw_plate_shape_at(&sy, f->s->n, f->s->straight, y);
    along_x(rows, f->s->w, sx.w, f->s->n);
    along_y(c.w, rows, sy.w, f->s->n);
    along_x(rows, f->s->f, sx.f, f->s->n);
    along_y(c.f, rows, sy.f, f->s->n);
    return c;
}

struct plate_principal gw_plate_stress_at(const struct plate_field *f, double x, double y, double face)
{
    struct curvature c = curvature_at(f, x, y);
    return stress(f, &c, face);
}

struct plate_stress gw_plate_components_at(const struct plate_field *f, double x, double y, double face)
{
    struct curvature c = curvature_at(f, x, y);
    return components(f, &c, face);
}

/* The step is halved when no neighbor is higher. */
void gw_plate_walk_uphill(const struct plate_field *f, struct plate_peak *peak, double step, double face)
{
    static const int WAYS[4][2] = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
    while (step > 2e-5) {
        bool moved = false;
        for (int i = 0; i < 4; i++) {
            double x = fmin(fmax(peak->x + step * WAYS[i][0], 0), 1), y = fmin(fmax(peak->y + step * WAYS[i][1], 0), 1);
            if (x == peak->x && y == peak->y) continue;
            double value = gw_plate_stress_at(f, x, y, face).first;
            if (!(value > peak->value * (1 + 1e-12))) continue;
            *peak = (struct plate_peak){x, y, value};
            moved = true;
        }
        if (!moved) step /= 2;
    }
}

static bool is_top(const double grid[PLATE_NODES][PLATE_NODES], int i, int j)
{
    for (int k = i - 1; k <= i + 1; k++)
        for (int l = j - 1; l <= j + 1; l++)
            if (k >= 0 && l >= 0 && k < PLATE_NODES && l < PLATE_NODES && grid[k][l] > grid[i][j]) return false;
    return true;
}

/* Every grid maximum that the refinement could lift above the others. */
static struct plate_peak find_peak(const struct plate_field *f, int face)
{
    struct plate_peak best = {0, 0, f->largest[face][0][0]};
    double highest = best.value;
    for (int i = 0; i < PLATE_NODES; i++)
        for (int j = 0; j < PLATE_NODES; j++) highest = fmax(highest, f->largest[face][i][j]);
    for (int i = 0; i < PLATE_NODES; i++)
        for (int j = 0; j < PLATE_NODES; j++) {
            if (f->largest[face][i][j] < 0.97 * highest || !is_top(f->largest[face], i, j)) continue;
            struct plate_peak peak = {f->x[i], f->x[j], f->largest[face][i][j]};
            int next = i < PLATE_GRID ? i + 1 : i, other = j < PLATE_GRID ? j + 1 : j;
            gw_plate_walk_uphill(f, &peak, fmax(f->x[next] - f->x[i], f->x[other] - f->x[j]) / 2 + 1e-3, face ? -1 : 1);
            if (peak.value > best.value) best = peak;
        }
    return best;
}

static double edge_slope(const struct plate_field *f)
{
    const int n = f->s->n, edge = PLATE_GRID;
    double most = 0;
    for (int i = 0; i < PLATE_NODES; i++) {
        double end = 0, side = 0;
        for (int a = 0; a < n; a++)
            for (int b = 0; b < n; b++) {
                const double w = f->s->w[a * n + b];
                end += w * f->shape[edge].w[1][a] * f->shape[i].w[0][b] / f->s->half_x;
                side += w * f->shape[i].w[0][a] * f->shape[edge].w[1][b] / f->s->half_y;
            }
        most = fmax(most, fmax(fabs(end), fabs(side)));
    }
    return most;
}

static void read_deflection(struct gw_plate_solution *out, const struct plate_field *f)
{
    const int n = f->s->n;
    for (int a = 0; a < n; a++)
        for (int b = 0; b < n; b++) {
            const double w = f->s->w[a * n + b];
            out->deflection += w * f->shape[0].w[0][a] * f->shape[0].w[0][b];
            out->mean_deflection += w * f->s->one.w_load[a] * f->s->one.w_load[b];
        }
}

void gw_plate_open_field(struct plate_field *f, const struct plate_system *s, const struct gw_plate_problem *in)
{
    *f = (struct plate_field){.s = s, .nu = in->poissons_ratio, .m = in->flaw_exponent};
    gw_plate_grid(f->x, f->weight);
    for (int i = 0; i < PLATE_NODES; i++) gw_plate_shape_at(&f->shape[i], s->n, s->straight, f->x[i]);
}

void gw_plate_read_fields(struct gw_plate_solution *out, const struct plate_system *s,
                          const struct gw_plate_problem *in)
{
    struct plate_field f;
    gw_plate_open_field(&f, s, in);
    scan(&f);
    struct plate_peak peak = find_peak(&f, 0);
    out->stress_max = peak.value;
    out->stress_x = peak.x;
    out->stress_y = peak.y;
    out->stress_center = f.largest[0][0][0];
    out->stress_loaded_face = find_peak(&f, 1).value;
    out->risk = f.risk;
    out->edge_slope = edge_slope(&f);
    read_deflection(out, &f);
}
