/* Rectangular plate, four edges simply supported and free to slide in plane, uniform pressure, large deflection.
 *
 * The von Karman equations by a Galerkin method on a quarter of the plate, even Legendre polynomials both ways; Newton
 * steps with load continuation. Pure: all memory is the caller's. Methods and limits: docs/methods.md. */
#ifndef GALEWARD_PLATE_H
#define GALEWARD_PLATE_H

#include "galeward/engine.h"
#include "galeward/record.h"

#ifdef __cplusplus
extern "C" {
#endif

enum { GW_PLATE_TERMS_LEAST = 6, GW_PLATE_TERMS_MOST = 16 };

/* Without units. Lengths along the plate over sqrt(ab), deflection over t, stress S = sigma ab/(E t^2). */
struct gw_plate_problem {
    double aspect; /* long side over short side, >= 1 */
    double q_star; /* q (ab)^2/(E t^4), >= 0 */
    double poissons_ratio;
    double flaw_exponent; /* m of the failure model */
    int terms;            /* each way; 0: by the load, for 0.1 % */
    bool straight_edges;  /* held straight in plane, with no force on average; else free to slide in plane */
};

struct gw_plate_solution {
    double deflection, mean_deflection; /* center, area mean; over t */
    double stress_max, stress_x,
        stress_y; /* S on the unloaded face; the place over the half-sides, x along the long side */
    double stress_center, stress_loaded_face;
    double risk;       /* J: area mean of (c S_1)^m over the unloaded face */
    double edge_slope; /* largest slope at the edge, times sqrt(ab)/t */
    double residual;   /* out-of-balance load over the load */
    int iterations, terms;
};

/* Bytes of workspace for `terms` each way; for the greatest number of them. */
size_t gw_plate_workspace(int terms);
#define GW_PLATE_WORKSPACE ((size_t)2400000)
int gw_plate_default_terms(double q_star);
/* False when the Newton steps did not converge: `*out` then holds iterations and residual only. `workspace` is aligned
 * for double. */
bool gw_plate_solve(struct gw_plate_solution *out, const struct gw_plate_problem *in, void *workspace);

/* The same answers from a table of the solutions, for edges free to slide in plane and the table's own Poisson's ratio
 * and flaw exponent (row plate_response_range). Fills what is wanted and nothing else of `*out`; false, and nothing
 * filled, outside the table: 1 <= aspect <= 5, q* up to 10 000. How near: table plate_response_error. */
enum gw_plate_want {
    GW_PLATE_DEFLECTION = 1,
    GW_PLATE_MEAN = 2,
    GW_PLATE_RISK = 4,
    GW_PLATE_STRESS = 8,        /* stress_max and its place */
    GW_PLATE_OTHER_STRESS = 16, /* stress_center, stress_loaded_face */
    GW_PLATE_EDGE_SLOPE = 32,
    GW_PLATE_ALL = 63
};
bool gw_plate_response(struct gw_plate_solution *out, double aspect, double q_star, unsigned want,
                       const struct gw_tables *tables);

/* Mean over all directions in the surface of the normal stress to the power m, where it is tension; principal stresses
 * s1 >= s2. This is (c s1)^m with the biaxial correction c. */
double gw_biaxial_mean(double s1, double s2, double m);

enum { GW_PLATE_NOTES = 4 };
enum gw_plate_edges { GW_PLATE_EDGES_UNSET, GW_PLATE_FREE, GW_PLATE_STRAIGHT };
/* Unset: the table where it reaches, else the equations. */
enum gw_plate_method { GW_PLATE_METHOD_UNSET, GW_PLATE_TABLE, GW_PLATE_DIRECT };

struct gw_plate_case {
    double width, height, thickness; /* m; the thickness is the minimum one */
    double pressure;                 /* Pa */
    double elastic_modulus;          /* Pa; absent: glass */
    double poissons_ratio;           /* absent: glass */
    enum gw_plate_edges edges;       /* in plane */
    enum gw_plate_method method;
    int terms;     /* GW_NO_INTEGER: by the load; any other number: not by table */
    unsigned want; /* of enum gw_plate_want, for searches: by the table nothing else is looked up; 0: everything */
};

struct gw_plate_result {
    double deflection, mean_deflection; /* m */
    double stress_max;                  /* Pa, largest principal tension on the unloaded face */
    GW_LIST(double)
    stress_place; /* m, x along the width and y along the height from the center: &place of this struct */
    double stress_center, stress_loaded_face; /* Pa */
    double risk, q_star;
    double volume;                     /* m3 */
    double edge_slope;                 /* rad */
    int iterations, terms;             /* 0 and GW_NO_INTEGER by table */
    double residual;                   /* GW_ABSENT by table */
    const char *method;                /* "table" or "direct": which it was */
    const char *notes[GW_PLATE_NOTES]; /* constant strings */
    unsigned n_notes;
    double place[2];
};

/* engine->workspace: GW_PLATE_WORKSPACE bytes. GW_OK fills `*out`; else engine->fault says which input and which limit.
 */
enum gw_status gw_plate(struct gw_plate_result *out, const struct gw_plate_case *in, struct gw_engine *engine);

/* Fields over the whole plate at nx x ny points in equal steps from edge to edge, row by row from the lower left
 * corner; each array holds nx * ny numbers, or is NULL where it is not wanted. `deflection` in m, `stress` the largest
 * principal one on the unloaded face in Pa. Always the direct solution, whatever in->method says; `*out` is its result,
 * as gw_plate gives it. nx and ny from 2; the workspace is gw_plate's. */
enum gw_status gw_plate_sample(struct gw_plate_result *out, const struct gw_plate_case *in, int nx, int ny,
                               double *deflection, double *stress, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
