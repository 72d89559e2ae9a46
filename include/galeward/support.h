/* Lites held on three edges, two opposite ones, or one: linear deflection and stress under uniform pressure, the
 * stresses that edges and surfaces may reach, and the pressure at which they do.
 *
 * Three edges: simply supported plate with one free edge, by a single sine series. Two: simply supported beam. One:
 * clamped cantilever. Free edges are stressed, so their finish counts. Pure. Methods and limits: docs/methods.md. */
#ifndef GALEWARD_SUPPORT_H
#define GALEWARD_SUPPORT_H

#include "galeward/glass.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_edge_finish { GW_EDGE_FINISH_UNSET, GW_CLEAN_CUT, GW_SEAMED, GW_POLISHED };

struct gw_support_case {
    int edges;        /* held: 3, 2 (opposite) or 1 */
    double span;      /* m. 2: between the held edges; 1: of the cantilever; 3: from the held edge to the free one */
    double breadth;   /* m, along the free edges; two edges or one: may be absent */
    double thickness; /* m, minimum; laminated: effective for deflection */
    double stress_thickness;                  /* m; absent: thickness; laminated: effective for stress */
    double pressure;                          /* Pa, magnitude; absent: limits only */
    double elastic_modulus, poissons_ratio;   /* Pa; absent: glass */
    double edge_allowable, surface_allowable; /* Pa; both or neither: no limit pressure */
};

enum { GW_SUPPORT_NOTES = 4 };

/* Absent: what the pressure, the allowable stresses or the number of edges do not give. */
struct gw_support_result {
    double alpha, beta;                  /* w = alpha q l^4/(E t^3), edge stress = beta q l^2/t^2 */
    double length;                       /* m, l: the span; three edges: the free edge */
    double deflection;                   /* m, largest; two edges: of the beam */
    double deflection_cylindrical;       /* m, middle of a wide strip on two edges */
    double stress_edge;                  /* Pa, middle of a free edge; one edge: at the clamp */
    double stress_edge_bound;            /* Pa, at most: with the plate action that the formula leaves out */
    double stress_surface;               /* Pa, largest anywhere on either face */
    double surface_place[2];             /* m, three edges: along the free edge from its end, from the held edge */
    double pullout;                      /* m, draws in at each end of a free edge */
    double limit_pressure;               /* Pa, least of: edge, surface, end of the method */
    double limit_pressure_bound;         /* Pa, the same with stress_edge_bound */
    double utilization;                  /* larger of the stresses over their allowable */
    const char *governing;               /* of limit_pressure: "edge", "surface", "method"; NULL */
    const char *notes[GW_SUPPORT_NOTES]; /* constant strings */
    unsigned n_notes;
};

/* Refuses a ratio below the standard's, and a deflection beyond the range of the linear formula. */
enum gw_status gw_support_solve(struct gw_support_result *out, const struct gw_support_case *in,
                                struct gw_engine *engine);

/* Allowable stresses, for a breakage probability of 8 in 1000. Duration in s, absent: 3 s. Annealed: falls with
 * duration^(1/16); heat-treated: up to 30 days. */
enum gw_status gw_edge_allowable(double *out, enum gw_treatment treatment, enum gw_edge_finish finish, double duration,
                                 double probability, struct gw_engine *engine);
enum gw_status gw_surface_allowable(double *out, enum gw_treatment treatment, double duration, double probability,
                                    struct gw_engine *engine);

/* How far each end of a span draws in when its edges slide freely: half of the parabola's shortening, m. */
double gw_edge_pullout(double deflection, double span);

/* The series without units: the free edge is 1 long, x runs along it, y from the held edge (0) to the free one (ratio).
 * Deflection over q b^4/(E t^3), bending stresses over q b^2/t^2, edge reactions over q b, corner force over q b^2. */
struct gw_three_edge_point {
    double deflection, stress_x, stress_y, stress_xy;
    double reaction_x, reaction_y; /* shear with the twist's share, on lines across x and across y */
    double corner;                 /* 2 M_xy */
};
enum { GW_THREE_EDGE_TERMS = 100 };
void gw_three_edge_at(struct gw_three_edge_point *out, double ratio, double poissons_ratio, double x, double y,
                      int terms);

struct gw_three_edge {
    double alpha, beta;   /* middle of the free edge: deflection, stress along it */
    double largest, x, y; /* largest principal stress of either face, and its place */
};
void gw_three_edge(struct gw_three_edge *out, double ratio, double poissons_ratio);

#ifdef __cplusplus
}
#endif

#endif
