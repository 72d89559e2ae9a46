/* The discrete equations. With w and f the coefficients of the deflection and of the stress function:
 *   L f = -N(w),   N_k = 1/2 sum T_kij w_i w_j        (compatibility)
 *   K w - q F - sum f_k T_kij w_j = 0                 (equilibrium)
 * T_kij, the integral of f_k (w_i,xx w_j,yy + w_i,yy w_j,xx - 2 w_i,xy w_j,xy), is symmetric in i and j and independent
 * of the aspect; it is never stored, only its factors along x and y are. The bending energy needs no term in Poisson's
 * ratio: w = 0 along straight edges makes that integral vanish, and w_nn = 0 is the natural condition. */
#include "glass/glass_internal.h"

#include <string.h>

/* Over the quarter plate: jacobian half_x half_y = 1/4, and two derivatives each way. */
static const double T_SCALE = 4;

static void biharmonic(double *out, const struct plate_system *s, const double pair[3][PLATE_N][PLATE_N])
{
    const int n = s->n;
    const double area = s->half_x * s->half_y, x2 = s->half_x * s->half_x, y2 = s->half_y * s->half_y;
    for (int i = 0; i < n * n; i++)
        for (int j = 0; j < n * n; j++) {
            int a = i / n, b = i % n, c = j / n, d = j % n;
            out[i * n * n + j] =
                area * (pair[2][a][c] * pair[0][b][d] / (x2 * x2) + 2 * pair[1][a][c] * pair[1][b][d] / (x2 * y2) +
                        pair[0][a][c] * pair[2][b][d] / (y2 * y2));
        }
}

/* The caller sets the four pointers to n^4 doubles each. The linear stiffness still lacks its factor. */
void plate_assemble(struct plate_system *s, int n, double aspect)
{
    s->n = n;
    s->unknowns = n * n;
    s->half_x = sqrt(aspect) / 2;
    s->half_y = 1 / sqrt(aspect) / 2;
    plate_integrate(&s->one, n);
    biharmonic(s->stiffness, s, s->one.ww);
    biharmonic(s->membrane, s, s->one.ff);
    plate_factor(s->membrane, s->unknowns);
    for (int i = 0; i < n * n; i++) s->load[i] = s->half_x * s->half_y * s->one.w_load[i / n] * s->one.w_load[i % n];
}

/* half[k][c][b] = sum over a of the x factor times w; `order`: 0 [f][w''][.], 1 [f][.][w''], 2 twist. */
static void contract_w(struct plate_system *s, int order)
{
    const int n = s->n;
    for (int k = 0; k < n; k++)
        for (int c = 0; c < n; c++) {
            double *out = s->half + (k * n + c) * n;
            memset(out, 0, (size_t)n * sizeof *out);
            for (int a = 0; a < n; a++) {
                double factor = order == 0   ? s->one.bend[k][a][c]
                                : order == 1 ? s->one.bend[k][c][a]
                                             : -2 * s->one.twist[k][a][c];
                for (int b = 0; b < n; b++) out[b] += factor * s->w[a * n + b];
            }
        }
}

static double along(const double *half, const struct plate_integrals *one, int order, int l, int d, int n)
{
    double sum = 0;
    if (order == 0)
        for (int b = 0; b < n; b++) sum += half[b] * one->bend[l][d][b];
    else if (order == 1)
        for (int b = 0; b < n; b++) sum += half[b] * one->bend[l][b][d];
    else
        for (int b = 0; b < n; b++) sum += half[b] * one->twist[l][b][d];
    return sum;
}

static void add_coupling(struct plate_system *s, int order)
{
    const int n = s->n;
    contract_w(s, order);
    for (int k = 0; k < n; k++)
        for (int l = 0; l < n; l++)
            for (int c = 0; c < n; c++) {
                double *out = s->coupling + (k * n + l) * n * n + c * n;
                const double *half = s->half + (k * n + c) * n;
                for (int d = 0; d < n; d++) out[d] += T_SCALE * along(half, &s->one, order, l, d, n);
            }
}

void plate_couple(struct plate_system *s)
{
    const int n = s->unknowns;
    memset(s->coupling, 0, (size_t)(n * n) * sizeof *s->coupling);
    for (int order = 0; order < 3; order++) add_coupling(s, order);
    for (int k = 0; k < n; k++) {
        double sum = 0;
        for (int j = 0; j < n; j++) sum += s->coupling[k * n + j] * s->w[j];
        s->f[k] = -sum / 2;
    }
    plate_forward(s->membrane, s->f, n, 1);
    plate_backward(s->membrane, s->f, n);
}

/* The relative size weighs each equation by its stiffness. */
void plate_residual(struct plate_system *s, double q)
{
    const int n = s->unknowns;
    double out = 0, in = 0;
    for (int i = 0; i < n; i++) {
        double sum = -q * s->load[i];
        for (int j = 0; j < n; j++) sum += s->stiffness[i * n + j] * s->w[j];
        for (int k = 0; k < n; k++) sum -= s->f[k] * s->coupling[k * n + i];
        s->residual[i] = sum;
        out += sum * sum / s->stiffness[i * n + i];
        in += q * s->load[i] * q * s->load[i] / s->stiffness[i * n + i];
    }
    s->error = sqrt(out / in);
}

/* half[a][c][l] = sum over k of f times the x factor. */
static void contract_f(struct plate_system *s, int order)
{
    const int n = s->n;
    for (int a = 0; a < n; a++)
        for (int c = 0; c < n; c++) {
            double *out = s->half + (a * n + c) * n;
            memset(out, 0, (size_t)n * sizeof *out);
            for (int k = 0; k < n; k++) {
                double factor = order ? -2 * s->one.twist[k][a][c] : s->one.bend[k][a][c];
                for (int l = 0; l < n; l++) out[l] += factor * s->f[k * n + l];
            }
        }
}

/* Takes sum f_k T_kij off the lower triangle. */
static void take_off_stress(struct plate_system *s)
{
    const int n = s->n;
    contract_f(s, 0);
    for (int i = 0; i < n * n; i++)
        for (int j = 0; j <= i; j++) {
            int a = i / n, b = i % n, c = j / n, d = j % n;
            const double *one = s->half + (a * n + c) * n, *other = s->half + (c * n + a) * n;
            double sum = 0;
            for (int l = 0; l < n; l++) sum += one[l] * s->one.bend[l][d][b] + other[l] * s->one.bend[l][b][d];
            s->tangent[i * n * n + j] -= T_SCALE * sum;
        }
    contract_f(s, 1);
    for (int i = 0; i < n * n; i++)
        for (int j = 0; j <= i; j++) {
            const double *one = s->half + (i / n * n + j / n) * n;
            double sum = 0;
            for (int l = 0; l < n; l++) sum += one[l] * s->one.twist[l][i % n][j % n];
            s->tangent[i * n * n + j] -= T_SCALE * sum;
        }
}

/* K - f.T + G' L^-1 G, G the coupling; leaves the forward-solved coupling behind. */
bool plate_tangent(struct plate_system *s)
{
    const int n = s->unknowns;
    memcpy(s->tangent, s->stiffness, (size_t)(n * n) * sizeof *s->tangent);
    take_off_stress(s);
    plate_forward(s->membrane, s->coupling, n, n);
    for (int i = 0; i < n; i++) {
        double *row = s->tangent + i * n;
        for (int k = 0; k + 4 <= n; k += 4) {
            const double *a = s->coupling + k * n, *b = a + n, *c = b + n, *d = c + n;
            double p = a[i], q = b[i], r = c[i], t = d[i];
            for (int j = 0; j <= i; j++) row[j] += p * a[j] + q * b[j] + r * c[j] + t * d[j];
        }
        for (int k = n / 4 * 4; k < n; k++)
            for (int j = 0; j <= i; j++) row[j] += s->coupling[k * n + i] * s->coupling[k * n + j];
    }
    return plate_factor(s->tangent, n);
}
