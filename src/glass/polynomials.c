/* Quadrature rules, the polynomials and their integrals. */
#include "glass/glass_internal.h"

#include <string.h>

/* P_n and its derivative at |x| < 1. */
static double legendre(int n, double x, double *derivative)
{
    double before = 1, now = x;
    for (int k = 1; k < n; k++) {
        double next = ((2 * k + 1) * x * now - k * before) / (k + 1);
        before = now;
        now = next;
    }
    *derivative = n * (before - x * now) / (1 - x * x);
    return now;
}

void gw_plate_gauss(int points, double *x, double *weight)
{
    for (int i = 0; i < points; i++) {
        double at = cos(PI * (i + 0.75) / (points + 0.5)), slope = 1;
        for (int k = 0; k < 20; k++) {
            double move = legendre(points, at, &slope) / slope;
            at -= move;
            if (fabs(move) < 1e-15) break;
        }
        legendre(points, at, &slope);
        x[i] = at;
        weight[i] = 2 / ((1 - at * at) * slope * slope);
    }
}

/* The closed rule on the Chebyshev points, for even functions: it has the center and the edges among its points. */
void gw_plate_grid(double x[PLATE_NODES], double weight[PLATE_NODES])
{
    const int n = 2 * PLATE_GRID;
    for (int j = 0; j <= PLATE_GRID; j++) {
        double angle = PI * (PLATE_GRID - j) / n, sum = 1;
        for (int k = 1; k <= n / 2; k++) sum -= (k == n / 2 ? 1 : 2) * cos(2 * k * angle) / (4.0 * k * k - 1);
        x[j] = cos(angle);
        weight[j] = sum * (j == PLATE_GRID ? 1 : 2) / n;
    }
    x[0] = 0;
    x[PLATE_GRID] = 1;
    weight[0] /= 2; /* half of the center belongs to this half */
}

/* f = p_k - second p_(k+2) + third p_(k+4): clamped (no value and no slope at the edge) where the edges are free in
 * plane; no slope only, and a constant first, where they are held straight. */
static void combine(double *second, double *third, int k, bool straight)
{
    *second = straight ? (double)k * (k + 1) / ((k + 2) * (k + 3)) : 2.0 * (2 * k + 5) / (2 * k + 7);
    *third = straight ? 0 : (2.0 * k + 3) / (2 * k + 7);
}

/* w = P_k - P_(k+2) vanishes at the edge. k even. */
void gw_plate_shape_at(struct plate_shape *out, int n, bool straight, double x)
{
    double p[3][2 * PLATE_N + 4] = {{0}};
    p[0][0] = 1;
    p[0][1] = x;
    p[1][0] = p[2][0] = p[2][1] = 0;
    p[1][1] = 1;
    for (int k = 1; k < 2 * n + 3; k++) {
        p[0][k + 1] = ((2 * k + 1) * x * p[0][k] - k * p[0][k - 1]) / (k + 1);
        p[1][k + 1] = p[1][k - 1] + (2 * k + 1) * p[0][k];
        p[2][k + 1] = p[2][k - 1] + (2 * k + 1) * p[1][k];
    }
    for (int j = 0; j < n; j++) {
        const int k = 2 * j;
        double second, third;
        combine(&second, &third, k, straight);
        for (int d = 0; d < 3; d++) {
            out->w[d][j] = p[d][k] - p[d][k + 2];
            out->f[d][j] = p[d][k] - second * p[d][k + 2] + third * p[d][k + 4];
        }
    }
}

static void add_pairs(struct plate_integrals *out, const struct plate_shape *at, int n, double weight)
{
    for (int i = 0; i < n; i++) {
        out->w_load[i] += weight * at->w[0][i];
        for (int j = 0; j < n; j++)
            for (int d = 0; d < 3; d++) {
                out->ww[d][i][j] += weight * at->w[d][i] * at->w[d][j];
                out->ff[d][i][j] += weight * at->f[d][i] * at->f[d][j];
            }
    }
}

static void add_triples(struct plate_integrals *out, const struct plate_shape *at, int n, double weight)
{
    static const int ORDERS[4][3] = {{2, 0, 0}, {0, 1, 1}, {1, 1, 0}, {1, 0, 1}};
    for (int t = 0; t < 4; t++)
        for (int k = 0; k < n; k++)
            for (int i = 0; i < n; i++) {
                const double *w = at->w[ORDERS[t][2]];
                double factor = weight * at->f[ORDERS[t][0]][k] * at->w[ORDERS[t][1]][i];
                for (int j = 0; j < n; j++) out->triple[t][k][i][j] += factor * w[j];
            }
}

/* Exact: the products are even polynomials of degree 6n + 2 at most, the rule has 3n + 2 points. */
void gw_plate_integrate(struct plate_integrals *out, int n, bool straight)
{
    double x[PLATE_GAUSS] = {0}, weight[PLATE_GAUSS] = {0};
    const int points = (3 * n + 3) / 2 * 2;
    struct plate_shape at;
    memset(out, 0, sizeof *out);
    gw_plate_gauss(points, x, weight);
    for (int i = 0; i < points / 2; i++) {
        gw_plate_shape_at(&at, n, straight, x[i]);
        add_pairs(out, &at, n, weight[i]);
        add_triples(out, &at, n, weight[i]);
    }
}
