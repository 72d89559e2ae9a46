/* Inside of the plate solver. Quarter plate, x and y from 0 (center) to 1 (edge); x along the long side. */
#ifndef GLASS_INTERNAL_H
#define GLASS_INTERNAL_H

#include "galeward/plate.h"

static const double PI = 3.14159265358979323846;

enum {
    PLATE_N = GW_PLATE_TERMS_MOST,
    PLATE_UNKNOWNS = PLATE_N * PLATE_N,
    PLATE_GAUSS = 3 * PLATE_N + 4, /* points of the exact rule for the integrals of three basis functions */
    PLATE_GRID = 32,               /* intervals of the grid on which stresses are taken */
    PLATE_NODES = PLATE_GRID + 1
};

/* Values of the basis at one coordinate: deflection and stress function, and their first two derivatives. */
struct plate_shape {
    double w[3][PLATE_N], f[3][PLATE_N];
};

/* Integrals over 0..1 of products of basis functions; d: order of derivative. */
struct plate_integrals {
    double w_load[PLATE_N];
    double ww[3][PLATE_N][PLATE_N], ff[3][PLATE_N][PLATE_N]; /* both factors differentiated d times */
    /* [k][i][j]: f_k, w_i and w_j differentiated 2 0 0, 0 1 1, 1 1 0 and 1 0 1 times. */
    double triple[4][PLATE_N][PLATE_N][PLATE_N];
};

struct plate_system {
    int n, unknowns;
    bool straight;         /* edges held straight in plane */
    double half_x, half_y; /* half-sides over sqrt(ab) */
    struct plate_integrals one;
    double load[PLATE_UNKNOWNS], w[PLATE_UNKNOWNS], f[PLATE_UNKNOWNS], residual[PLATE_UNKNOWNS], step[PLATE_UNKNOWNS];
    double kept[PLATE_UNKNOWNS];
    double half[4][PLATE_N * PLATE_N * PLATE_N]; /* contractions half done */
    double *membrane;                            /* Cholesky factor of the stress function's matrix */
    double *stiffness;                           /* linear bending */
    double *coupling;                            /* d(quadratic term)/dw, one row a stress-function term */
    double *tangent;
    double error; /* relative residual */
    int iterations;
};

/* polynomials.c */
void gw_plate_gauss(int points, double *x, double *weight); /* on -1..1; the upper half, x > 0, comes first */
void gw_plate_grid(double x[PLATE_NODES], double weight[PLATE_NODES]);
void gw_plate_shape_at(struct plate_shape *out, int n, bool straight, double x);
void gw_plate_integrate(struct plate_integrals *out, int n, bool straight);

/* dense.c */
/* out += the four rows times their factors; where the time goes. */
static inline void plate_add_rows(double *restrict out, const double factor[4], const double *const row[4], ptrdiff_t n)
{
    const double p = factor[0], q = factor[1], r = factor[2], s = factor[3];
    const double *a = row[0], *b = row[1], *c = row[2], *d = row[3];
    ptrdiff_t j = 0;
    for (; j + 2 <= n; j += 2) {
        double one = out[j] + p * a[j] + q * b[j] + r * c[j] + s * d[j];
        double two = out[j + 1] + p * a[j + 1] + q * b[j + 1] + r * c[j + 1] + s * d[j + 1];
        out[j] = one;
        out[j + 1] = two;
    }
    if (j < n) out[j] += p * a[j] + q * b[j] + r * c[j] + s * d[j];
}
/* Lower triangles, row by row */
bool gw_plate_factor(double *a, ptrdiff_t n);
void gw_plate_forward(const double *factor, double *right, ptrdiff_t n, ptrdiff_t columns);
void gw_plate_backward(const double *factor, double *right, ptrdiff_t n);

/* equations.c */
void gw_plate_assemble(struct plate_system *s, int n, double aspect, bool straight);
void gw_plate_couple(struct plate_system *s);             /* coupling, f from w */
void gw_plate_residual(struct plate_system *s, double q); /* after gw_plate_couple */
bool gw_plate_tangent(struct plate_system *s);            /* after gw_plate_residual; factored */

/* plate.c */
/* Absent material values become those of glass. */
void gw_plate_complete(struct gw_plate_case *in, struct gw_engine *engine);

/* newton.c */
bool gw_plate_converge(struct plate_system *s, const struct gw_plate_problem *in, int terms);

/* biaxial.c */
static inline double plate_power(double base, double m)
{
    double square = base * base;
    return m == 7 ? square * square * square * base : pow(base, m); /* 7: the usual exponent, and exact in doubles */
}

/* field.c */
struct plate_principal {
    double first, second;
};
struct plate_stress {
    double x, y, shear;
};
struct plate_peak {
    double x, y, value; /* first principal stress */
};

/* A converged system, ready to be read at any place; S and W without units, as in struct gw_plate_solution. */
struct plate_field {
    const struct plate_system *s;
    double nu, m;
    double x[PLATE_NODES], weight[PLATE_NODES];
    struct plate_shape shape[PLATE_NODES];
    double largest[2][PLATE_NODES][PLATE_NODES]; /* first principal stress: unloaded face, loaded face */
    double risk;
};

void gw_plate_open_field(struct plate_field *f, const struct plate_system *s, const struct gw_plate_problem *in);
/* x and y from 0 (center) to 1 (edge). face: 1 the unloaded one, -1 the loaded one. */
double gw_plate_deflection_at(const struct plate_field *f, double x, double y);
struct plate_principal gw_plate_stress_at(const struct plate_field *f, double x, double y, double face);
struct plate_stress gw_plate_components_at(const struct plate_field *f, double x, double y, double face);
/* From peak->x and y to the top of that hill; peak->value is the stress where it starts. */
void gw_plate_walk_uphill(const struct plate_field *f, struct plate_peak *peak, double step, double face);
void gw_plate_read_fields(struct gw_plate_solution *out, const struct plate_system *s,
                          const struct gw_plate_problem *in);

#endif
