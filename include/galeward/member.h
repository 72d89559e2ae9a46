/* Mullions and rails under the wind on their lites: what load reaches the member, the member as a beam, and the
 * deflection that framing which supports glass may have.
 *
 * Two-way: a lite gives each edge the load inside the 45-degree lines from its corners, to a vertical directly and by
 * way of the rails, whose end reactions are forces on it. Uniform: the pressure times half the lites' widths. x runs
 * from the lower (or left) end; the pressure is a magnitude. */
#ifndef GALEWARD_MEMBER_H
#define GALEWARD_MEMBER_H

#include "galeward/beam.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_orientation { GW_ORIENTATION_UNSET, GW_VERTICAL, GW_HORIZONTAL };
enum gw_shedding { GW_SHEDDING_UNSET, GW_TWO_WAY, GW_UNIFORM };

/* Lites on one side of a vertical. */
enum { GW_MEMBER_LITES = 24 };
struct gw_lite_column {
    double width; /* m; 0: no glass on this side */
    const double *heights;
    size_t n; /* from the bottom */
};

struct gw_member {
    enum gw_orientation orientation;
    enum gw_shedding shedding;
    double span, pressure;                    /* m, of the whole member; Pa */
    struct gw_lite_column left, right;        /* vertical */
    double height_above, height_below;        /* m, horizontal, whose lites are as wide as it is long; 0: no glass */
    const double *supports, *clamps, *hinges; /* as of a beam; neither supports nor clamps: a support at each end */
    size_t n_supports, n_clamps, n_hinges;
    const struct gw_beam_segment *segments;
    size_t n_segments;
    bool limited, capped; /* compare the deflection with its limit; with the absolute cap */
};

enum { GW_MEMBER_RAILS = 2 * GW_MEMBER_LITES + 2, GW_MEMBER_EDGES = 2 * GW_MEMBER_LITES };
struct gw_member_result {
    struct gw_beam beam; /* as solved; its lists are the member's, or below */
    struct gw_beam_result solution;
    double ends[2];
    struct gw_beam_load loads[GW_BEAM_LOADS];
    double rail_levels[GW_MEMBER_RAILS], rail_loads[GW_MEMBER_RAILS]; /* m, N; two-way verticals, both sides together */
    size_t n_rails;
    double
        edges[GW_MEMBER_EDGES]; /* m, of each lite's edge from the line through its ends: left, right; above, below */
    size_t n_edges;
    /* Where the deflection comes nearest to its limit; absent when not compared. */
    double limit_span;       /* m, between supports; of an overhang its length */
    double limit_deflection; /* m, the largest there */
    double limit;            /* m */
    double utilization;
    double inertia_required; /* m4, for that limit; absent where the member is stepped */
};

enum gw_status gw_member_solve(struct gw_member_result *out, const struct gw_member *in, struct gw_engine *engine);

/* Of framing that supports glass, under the wind that levels.c names. A cantilever counts with more than its length. */
double gw_deflection_limit(double span, bool cantilever, bool capped, struct gw_engine *engine);
/* What a stretch of member bends from the line through its own ends, at most: of a simple span under a uniform load
 * that bends by `deflection`, the stretch in its middle; of any member under no more than that moment, as if it stood
 * over all of the stretch; m, E I of 1 N m2. */
double gw_edge_of_simple_span(double deflection, double length, double span);
double gw_edge_under_moment(double moment, double length);
/* A simple span under a uniform line load, N/m: at midspan, at an end, at midspan with E I of `stiffness`, N m2. */
struct gw_simple_span {
    double moment, shear, deflection; /* Nm, N, m */
};
void gw_simple_span(struct gw_simple_span *out, double line_load, double span, double stiffness);
/* For such a span: so that it deflects, or is stressed, by no more. */
double gw_required_inertia(double line_load, double span, double elastic_modulus, double deflection,
                           struct gw_engine *engine);
double gw_required_modulus(double line_load, double span, double allowable_stress, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
