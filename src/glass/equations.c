/* The discrete equations. With w and f the coefficients of the deflection and of the stress function:
 *   L f = -N(w),   N_k = 1/2 sum T_kij w_i w_j        (compatibility)
 *   K w - q F - sum f_k T_kij w_j = 0                 (equilibrium)
 * T_kij, the integral of -f_k,yy w_i,x w_j,x - f_k,xx w_i,y w_j,y + f_k,xy (w_i,x w_j,y + w_i,y w_j,x), is symmetric in
 * i and j and independent of the aspect; it is never stored, only its factors along x and y are. The bending energy
 * needs no term in Poisson's ratio: w = 0 along straight edges makes that integral vanish, and w_nn = 0 is the natural
 * condition. In the membrane energy the same integral of f vanishes with the slope f_n. */
#include "glass/glass_internal.h"

#include <string.h>

/* Over the quarter plate: jacobian half_x half_y = 1/4, and two derivatives each way. */
static const double T_SCALE = 4;

/* T is a sum of four products: which triple integral along x, which along y, and the sign. */
static const struct product {
    int x, y;
    double sign;
} PRODUCTS[4] = {{0, 1, -1}, {1, 0, -1}, {2, 3, 1}, {3, 2, 1}};

static void biharmonic(double *out, const struct plate_system *s, const double pair[3][PLATE_N][PLATE_N])
{
    const ptrdiff_t n = s->n;
    const double area = s->half_x * s->half_y, x2 = s->half_x * s->half_x, y2 = s->half_y * s->half_y;
    for (ptrdiff_t i = 0; i < s->unknowns; i++)
        for (ptrdiff_t j = 0; j < n * n; j++) {
            ptrdiff_t a = i / n, b = i % n, c = j / n, d = j % n;
            out[i * n * n + j] =
                area * (pair[2][a][c] * pair[0][b][d] / (x2 * x2) + 2 * pair[1][a][c] * pair[1][b][d] / (x2 * y2) +
                        pair[0][a][c] * pair[2][b][d] / (y2 * y2));
        }
}

/* The caller sets the four pointers to n^4 doubles each. The linear stiffness still lacks its factor. */
void gw_plate_assemble(struct plate_system *s, int n, double aspect, bool straight)
{
    s->n = n;
    s->straight = straight;
    s->unknowns = n * n;
    s->half_x = sqrt(aspect) / 2;
    s->half_y = 1 / sqrt(aspect) / 2;
    gw_plate_integrate(&s->one, n, straight);
    biharmonic(s->stiffness, s, s->one.ww);
    biharmonic(s->membrane, s, s->one.ff);
    if (straight) s->membrane[0] = 1; /* the constant, which has no stress */
    gw_plate_factor(s->membrane, s->unknowns);
    for (ptrdiff_t i = 0; i < s->unknowns; i++)
        s->load[i] = s->half_x * s->half_y * s->one.w_load[i / n] * s->one.w_load[i % n];
}

/* half[t][k][c][b] = sum over a of the integral along x times w. */
static void contract_w(struct plate_system *s, ptrdiff_t t)
{
    const ptrdiff_t n = s->n;
    memset(s->half[t], 0, (size_t)(n * n * n) * sizeof(double));
    for (ptrdiff_t k = 0; k < n; k++)
        for (ptrdiff_t a = 0; a < n; a++)
            for (ptrdiff_t c = 0; c < n; c++) {
                const double factor = PRODUCTS[t].sign * T_SCALE * s->one.triple[PRODUCTS[t].x][k][a][c];
                double *out = s->half[t] + (k * n + c) * n;
                for (ptrdiff_t b = 0; b < n; b++) out[b] += factor * s->w[a * n + b];
            }
}

/* out[d] += sum over b and the products of half[t][at + b] times the integral along y. */
static void contract_y(struct plate_system *s, double *out, ptrdiff_t at, ptrdiff_t row, bool by_stress)
{
    for (ptrdiff_t b = 0; b < s->n; b++) {
        double factor[4];
        const double *along[4];
        for (ptrdiff_t t = 0; t < 4; t++) {
            factor[t] = s->half[t][at + b];
            along[t] = by_stress ? s->one.triple[PRODUCTS[t].y][b][row] : s->one.triple[PRODUCTS[t].y][row][b];
        }
        plate_add_rows(out, factor, along, s->n);
    }
}

void gw_plate_couple(struct plate_system *s)
{
    const ptrdiff_t n = s->unknowns, m = s->n;
    memset(s->coupling, 0, (size_t)(n * n) * sizeof *s->coupling);
    for (ptrdiff_t t = 0; t < 4; t++) contract_w(s, t);
    for (ptrdiff_t k = 0; k < m; k++)
        for (ptrdiff_t l = 0; l < m; l++)
            for (ptrdiff_t c = 0; c < m; c++)
                contract_y(s, s->coupling + (k * m + l) * n + c * m, (k * m + c) * m, l, false);
    for (ptrdiff_t k = 0; k < n; k++) {
        double sum = 0;
        for (ptrdiff_t j = 0; j < n; j++) sum += s->coupling[k * n + j] * s->w[j];
        s->f[k] = -sum / 2;
    }
    gw_plate_forward(s->membrane, s->f, n, 1);
    gw_plate_backward(s->membrane, s->f, n);
}

/* The relative size weighs each equation by its stiffness. */
void gw_plate_residual(struct plate_system *s, double q)
{
    const ptrdiff_t n = s->unknowns;
    double out = 0, in = 0;
    for (ptrdiff_t i = 0; i < n; i++) {
        double sum = -q * s->load[i];
        for (ptrdiff_t j = 0; j < n; j++) sum += s->stiffness[i * n + j] * s->w[j];
        for (ptrdiff_t k = 0; k < n; k++) sum -= s->f[k] * s->coupling[k * n + i];
        s->residual[i] = sum;
        out += sum * sum / s->stiffness[i * n + i];
        in += q * s->load[i] * q * s->load[i] / s->stiffness[i * n + i];
    }
    s->error = sqrt(out / in);
}

/* half[t][a][c][l] = less the sum over k of f times the integral along x. */
static void contract_f(struct plate_system *s, ptrdiff_t t)
{
    const ptrdiff_t n = s->n;
    memset(s->half[t], 0, (size_t)(n * n * n) * sizeof(double));
    for (ptrdiff_t k = 0; k < n; k++)
        for (ptrdiff_t a = 0; a < n; a++)
            for (ptrdiff_t c = 0; c < n; c++) {
                const double factor = -PRODUCTS[t].sign * T_SCALE * s->one.triple[PRODUCTS[t].x][k][a][c];
                double *out = s->half[t] + (a * n + c) * n;
                for (ptrdiff_t l = 0; l < n; l++) out[l] += factor * s->f[k * n + l];
            }
}

/* Takes sum f_k T_kij off the lower triangle, and off what else lies in its blocks. */
static void take_off_stress(struct plate_system *s)
{
    const ptrdiff_t n = s->n;
    for (ptrdiff_t t = 0; t < 4; t++) contract_f(s, t);
    for (ptrdiff_t a = 0; a < n; a++)
        for (ptrdiff_t c = 0; c <= a; c++)
            for (ptrdiff_t b = 0; b < n; b++)
                contract_y(s, s->tangent + (a * n + b) * n * n + c * n, (a * n + c) * n, b, true);
}

/* K - f.T + G' L^-1 G, G the coupling; leaves the forward-solved coupling behind. */
bool gw_plate_tangent(struct plate_system *s)
{
    const ptrdiff_t n = s->unknowns;
    memcpy(s->tangent, s->stiffness, (size_t)(n * n) * sizeof *s->tangent);
    take_off_stress(s);
    gw_plate_forward(s->membrane, s->coupling, n, n);
    for (ptrdiff_t i = 0; i < n; i++) {
        double *row = s->tangent + i * n;
        for (ptrdiff_t k = 0; k + 4 <= n; k += 4) {
            const double *a = s->coupling + k * n, *b = a + n, *c = b + n, *d = c + n;
            plate_add_rows(row, (const double[4]){a[i], b[i], c[i], d[i]}, (const double *const[4]){a, b, c, d}, i + 1);
        }
        for (ptrdiff_t k = n / 4 * 4; k < n; k++)
            for (ptrdiff_t j = 0; j <= i; j++) row[j] += s->coupling[k * n + i] * s->coupling[k * n + j];
    }
    return gw_plate_factor(s->tangent, n);
}
