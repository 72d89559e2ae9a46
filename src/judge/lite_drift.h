/* A lite in a frame that racks, by all that was read of its edges and of its opening. For items. */
#ifndef GALEWARD_JUDGE_LITE_DRIFT_H
#define GALEWARD_JUDGE_LITE_DRIFT_H

#include "judge/lite_room.h"

/* How deep the pocket is at an edge (enum gw_edge; below 0: of one that is not said the least), m; absent: the system
 * states no such pocket. */
double gw_pocket_depth(int edge, const struct gw_system *system);
/* What such a bite leaves of it, m: above 0. Absent: none, or it is not known, since a bead may hold that edge. */
double gw_gap_left_by(double bite, int edge, const struct gw_system *system);
/* The gap at an edge, m, at its narrowest and at its widest: as it was read, else what the bite leaves that was. */
double gw_narrow_gap(const struct gw_as_read *read, int edge, const struct gw_system *system);
double gw_wide_gap(const struct gw_as_read *read, int edge, const struct gw_system *system);

/* Shows what is not enough, or not known. */
bool gw_left_is_open(const struct gw_left *left);
/* All that `more` has to say, but for its remark and its limit. */
void gw_left_append(struct gw_left *out, struct gw_ask *ask, const struct gw_left *more);
/* The head stands so far beside the sill, e, where the diagonals of b by h differ by d: d = 2 e b / sqrt(b2 + h2), m.
 */
double gw_skew_of(const struct gw_element *lite, double difference);
/* What is left to the drift of the story by gaps that were read at the lite's edges and the skew of its opening that
 * was; what holds by each of the two and not by both is asked: a gap may have been read where the skew shows. */
void gw_left_by_room(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                     const struct gw_system *system);
/* Of a bonded lite: its bead has sheared by the skew, unless it was bonded after. */
void gw_left_by_skewed_bead(struct gw_left *out, struct gw_ask *ask, const struct gw_element *lite,
                            const struct gw_system *system, double skew);

#endif
