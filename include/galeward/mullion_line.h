/* The mullions of a wall as one beam from its bottom to its top: anchors hold it, splices are hinges.
 *
 * A wall that names no splices has one at every anchor but its first and last, past which an overhang goes on. Each
 * stretch carries its own pressure times the width carried, evenly: a lite that sheds two ways gives no more. Both
 * directions, each twice: everything loaded, and without the load that would relieve the stretch (overhangs beside a
 * span, spans beside an overhang). Allowable-stress level or any other: what comes out is of the level that went in.
 *
 * The whole line is solved at once for all stretches under one set of loads: the caller keeps the answer for the
 * mullions of a wall that are loaded alike. What a stretch feels does not hang on the member: deflections are with
 * E I of 1 N m2. Heights are above ground, m. SI, pure. */
#ifndef GALEWARD_MULLION_LINE_H
#define GALEWARD_MULLION_LINE_H

#include "galeward/beam.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The lists rise with height and stay the caller's. */
struct gw_mullion_wall {
    double bottom, top;
    double roof; /* the anchors' shares are told apart here; above the top: nothing lies beyond it */
    const double *anchors, *splices;
    size_t n_anchors, n_splices;
};

/* As many as the spans and overhangs of a beam, two of them cut by a roof line. */
enum { GW_MULLION_STRETCHES = GW_BEAM_SUPPORTS + 4 };
struct gw_mullion_stretch {
    double from, to;               /* that carries the load */
    double member_from, member_to; /* of the span or overhang of which it is a part, cut by the roof line or not */
    double inward, outward;        /* N/m, magnitudes; both absent: not known */
    bool overhang;
};

enum gw_mullion_pattern {
    GW_PATTERN_UNSET,
    GW_INWARD_ALL,
    GW_INWARD_ALONE, /* spans, or overhangs, whichever the stretch is one of */
    GW_OUTWARD_ALL,
    GW_OUTWARD_ALONE,
    GW_MULLION_PATTERNS
};
static inline bool gw_mullion_outward(enum gw_mullion_pattern pattern) { return pattern >= GW_OUTWARD_ALL; }

/* Over the whole member of the stretch, largest magnitudes of all patterns; at its ends of either side of the jump that
 * an anchor makes. */
struct gw_mullion_forces {
    double moment, shear;            /* Nm, N */
    double splice_shear;             /* N, of the splices in it; 0: none */
    double deflection;               /* m, with E I of 1 N m2, from the undeflected axis */
    enum gw_mullion_pattern pattern; /* of the moment; unset: there is none */
    size_t unknown; /* 0; else 1 + the first stretch without a load that bends this one: nothing else is set */
};

/* One answer a stretch, in their order. `room` is overwritten. Refuses more anchors, splices or loads than a beam
 * holds, and what gw_beam_solve refuses. */
enum gw_status gw_mullion_line(struct gw_mullion_forces *out, const struct gw_mullion_wall *wall,
                               const struct gw_mullion_stretch *stretches, size_t n, struct gw_beam_result *room,
                               struct gw_engine *engine);
/* m, of a member with that E I, N m2. */
double gw_mullion_deflection(const struct gw_mullion_forces *of, double stiffness, struct gw_engine *engine);
/* Stretch `i` once more, with the derivation of its largest moment. */
enum gw_status gw_mullion_derive(const struct gw_mullion_forces *of, const struct gw_mullion_wall *wall,
                                 const struct gw_mullion_stretch *stretches, size_t n, size_t i,
                                 struct gw_beam_result *room, struct gw_engine *engine);

/* The same beam under that pattern, with E I of `stiffness`, N m2, solved into `result`: for those who show it. x from
 * the wall's bottom; the beam's lists are the struct's own. */
struct gw_mullion_beam {
    struct gw_beam beam;
    double supports[GW_BEAM_SUPPORTS], hinges[GW_BEAM_HINGES];
    struct gw_beam_load loads[GW_MULLION_STRETCHES];
    struct gw_beam_segment segment;
};
enum gw_status gw_mullion_solved(struct gw_mullion_beam *out, struct gw_beam_result *result,
                                 const struct gw_mullion_forces *of, const struct gw_mullion_wall *wall,
                                 const struct gw_mullion_stretch *stretches, size_t n, size_t i, double stiffness,
                                 struct gw_engine *engine);

/* What the beam hands to an anchor: the heights of wall below and above the roof line whose load it takes, m, from all
 * spans and from the overhangs that do not relieve it; and the longest piece that can hang on it, since which of its
 * anchors bears a piece is not told. */
struct gw_mullion_anchor {
    double below, above, piece;
};
double gw_mullion_piece_at(const struct gw_mullion_wall *wall, double height);
/* One answer an anchor; of the wall alone, whatever its loads. */
enum gw_status gw_mullion_anchors(struct gw_mullion_anchor *out, const struct gw_mullion_wall *wall,
                                  struct gw_beam_result *room, struct gw_engine *engine);

/* Which anchors bear the weight, of the wall alone. A piece hangs on one anchor that carries dead load; where two
 * pieces meet over an anchor it bears one of them, and the other slides in it. `dead`: by anchor; NULL: the top one of
 * each piece. Pieces take theirs from the bottom up, the lowest that is free. */
enum gw_borne {
    GW_BORNE_ONCE,
    GW_BORNE_BY_NONE, /* nothing is told that bears a piece held here */
    GW_BORNE_TWICE    /* two anchors bear the piece: heat locks a force in */
};
struct gw_mullion_bearing {
    double piece; /* m, of the piece that it bears; 0: it is slotted and takes wind alone */
    enum gw_borne borne;
    double from; /* m above ground, the lower end of that piece */
    bool told;   /* false: of the wall it is not told, and taken so */
};
/* One answer an anchor. */
void gw_mullion_bearings(struct gw_mullion_bearing *out, const struct gw_mullion_wall *wall, const bool *dead);

/* The longest piece between splices, m, and the most floors that one passes, at least 1. `floors`: their heights. */
struct gw_mullion_piece {
    double length;
    size_t stories;
};
void gw_mullion_longest(struct gw_mullion_piece *out, const struct gw_mullion_wall *wall, const double *floors,
                        size_t n_floors);

/* Where two pieces meet, and what moves into the joint: of each piece what lies between the joint and the anchor that
 * bears it, all of a piece that none bears. Where the wall does not tell what bears them, the most of: each on its top
 * anchor, the lower one on its lowest alone, the upper one on its top alone. */
struct gw_mullion_joint {
    double at;      /* m above ground */
    double length;  /* m, of both pieces */
    size_t stories; /* of columns between what bears them, at least 1 */
    bool told;
};
/* From the bottom up; NULL: counts only. Returns how many: the splices; without any, each anchor but the first and the
 * last. `bearings`: as gw_mullion_bearings has them. */
size_t gw_mullion_joints(struct gw_mullion_joint *out, const struct gw_mullion_wall *wall,
                         const struct gw_mullion_bearing *bearings, const double *floors, size_t n_floors);

#ifdef __cplusplus
}
#endif

#endif
