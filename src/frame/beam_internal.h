/* Shared by the beam's files only. A solution goes: check (beam_check.c), cut and solve (beam.c), extremes
 * (beam_shape.c), steps (beam_steps.c). */
#ifndef FRAME_BEAM_INTERNAL_H
#define FRAME_BEAM_INTERNAL_H

#include "base/tolerance.h"
#include "galeward/beam.h"

/* Both ends, supports, hinges. Between two nodes the beam is a simple beam with moments and deflections at its ends. */
enum { BEAM_NODES = GW_BEAM_SUPPORTS + GW_BEAM_HINGES + 2 };
struct beam_node {
    double at;
    bool support, clamp, hinge;
    size_t piece;                     /* the one that begins here; at the last node: the number of pieces */
    double before, after;             /* N m, moments on both sides of it */
    double shear_before, shear_after; /* N */
    double deflection;
};

struct beam_run {
    const struct gw_beam *in;
    struct gw_beam_result *out;
    struct gw_engine *engine;
    struct beam_node nodes[BEAM_NODES];
    size_t n_nodes;
    double forces[GW_BEAM_PIECES + 1], couples[GW_BEAM_PIECES + 1]; /* where a piece begins; last: at the beam's end */
};

/* Places closer than a hair of the length are one place. */
static inline bool beam_same(const struct gw_beam *in, double a, double b)
{
    return fabs(a - b) <= GW_HAIR * in->length;
}

enum gw_status gw_beam_check(const struct gw_beam *in, struct gw_engine *engine);
/* After the nodes are known. */
enum gw_status gw_beam_check_stable(const struct beam_run *run);

/* On the piece, a distance from its start. */
struct gw_beam_point gw_beam_on_piece(const struct gw_beam_piece *piece, double distance);
static inline double beam_piece_length(const struct gw_beam_piece *piece) { return piece->to - piece->from; }
void gw_beam_find_extremes(struct gw_beam_result *out);
void gw_beam_steps(const struct beam_run *run);

#endif
