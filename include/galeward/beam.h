/* Straight beams under any piecewise linear load: simple, cantilevered, overhanging, continuous, hinged, stepped.
 *
 * Every piece between two changes (of load, stiffness, support, hinge) is a polynomial, integrated exactly; the moments
 * and deflections where the pieces of the beam meet follow from one linear system (moments over the supports, slopes
 * equal on both sides of them). Bending only: no shear deformation, small slopes.
 *
 * x runs along the beam from 0 to its length. Loads and deflections are positive in one direction, reactions in the
 * other. Moments are positive where the far side is in tension (sagging under positive load); shear is positive where
 * the moment grows with x. A couple is positive where it raises the moment after it: clockwise, for load that acts
 * downward and x to the right. */
#ifndef GALEWARD_BEAM_H
#define GALEWARD_BEAM_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

enum { GW_BEAM_SUPPORTS = 128, GW_BEAM_HINGES = 128, GW_BEAM_LOADS = 256, GW_BEAM_SEGMENTS = 64 };
/* Every load may begin and end in a place of its own. */
enum { GW_BEAM_PIECES = 2 * GW_BEAM_LOADS + GW_BEAM_SUPPORTS + GW_BEAM_HINGES + GW_BEAM_SEGMENTS + 1 };

/* Spread: N/m at `from` and at `to`, linear between. Force (N) and couple (N m): `start`, at `from`. */
enum gw_beam_load_kind { GW_BEAM_SPREAD, GW_BEAM_FORCE, GW_BEAM_COUPLE };
struct gw_beam_load {
    enum gw_beam_load_kind kind;
    double from, to, start, end;
};

/* From the end of the segment before, or 0. */
struct gw_beam_segment {
    double to;              /* m; the last one's is the beam's length */
    double elastic_modulus; /* Pa */
    double inertia;         /* m4 */
};

/* The lists stay the caller's. Supports, clamps and hinges rise with x. */
struct gw_beam {
    double length;
    const double *supports, *clamps,
        *hinges; /* clamps are supports that hold rotation too; listed once, here or there */
    size_t n_supports, n_clamps, n_hinges;
    const struct gw_beam_load *loads;
    size_t n_loads;
    const struct gw_beam_segment *segments;
    size_t n_segments;
};

struct gw_beam_point {
    double shear, moment, slope, deflection; /* N, N m, 1, m */
};

struct gw_beam_extreme {
    double value, at;
};

/* Between two changes. */
struct gw_beam_piece {
    double from, to;            /* m */
    double load_from, load_to;  /* N/m */
    double stiffness;           /* E I, N m2 */
    struct gw_beam_point start; /* just after `from` */
};

/* The lists hold so many as their counts say; what lies behind is not touched. */
struct gw_beam_result {
    /* Supports and clamps, in order. */
    double supports[GW_BEAM_SUPPORTS], reactions[GW_BEAM_SUPPORTS], couples[GW_BEAM_SUPPORTS]; /* couples: of clamps */
    size_t n_supports;
    struct gw_beam_extreme shear_max;              /* magnitude */
    struct gw_beam_extreme moment_max, moment_min; /* with sign */
    struct gw_beam_extreme deflection_max;         /* of the largest magnitude, with its sign */
    struct gw_beam_extreme deflection_back;        /* the largest the other way; 0, at a support, where there is none */
    struct gw_beam_piece pieces[GW_BEAM_PIECES];
    size_t n_pieces;
};

/* Refuses (GW_OUTSIDE_METHOD) a beam that can move without bending, and more of anything than the lists hold. */
enum gw_status gw_beam_solve(struct gw_beam_result *out, const struct gw_beam *in, struct gw_engine *engine);
/* The same without the extremes of the whole beam, which stay absent, and without derivation: for those who ask of
 * parts of it only. Finding the extremes takes longer than all the rest. */
enum gw_status gw_beam_solve_pieces(struct gw_beam_result *out, const struct gw_beam *in, struct gw_engine *engine);

/* Where a force, a couple or a hinge makes a jump, `x` has two sides. Off the beam everything is absent. */
enum gw_beam_side { GW_BEAM_AFTER, GW_BEAM_BEFORE };
struct gw_beam_point gw_beam_at(const struct gw_beam_result *beam, double x, enum gw_beam_side side);
/* The largest deflection, by magnitude, between two places from the straight line through both. */
struct gw_beam_extreme gw_beam_from_chord(const struct gw_beam_result *beam, double from, double to);
/* The same from the undeflected axis. */
struct gw_beam_extreme gw_beam_deflection_between(const struct gw_beam_result *beam, double from, double to);
/* Between two places, their inner sides included. */
struct gw_beam_forces {
    struct gw_beam_extreme shear;                  /* of the largest magnitude, with its sign */
    struct gw_beam_extreme moment_max, moment_min; /* with sign */
};
struct gw_beam_forces gw_beam_forces_between(const struct gw_beam_result *beam, double from, double to);

#ifdef __cplusplus
}
#endif

#endif
