/* One line of a plate's screws as it was read: what its torque still clamps, what plate and thread hold, and which
 * ratings recorded it otherwise. */
#ifndef GALEWARD_JUDGE_SCREW_LINE_H
#define GALEWARD_JUDGE_SCREW_LINE_H

#include "judge/item.h"

/* Of the clamp: how a torque counts by its age. */
enum gw_torque_age {
    GW_TORQUE_FRESH,   /* of the day of fastening; or not read, and at the least that the limits ask */
    GW_TORQUE_AGED,    /* of a later day */
    GW_TORQUE_UNDATED, /* read, nobody says how long after */
    GW_TORQUE_UNSURE   /* so, between what is left by now of the limits and the limits: old and sound, or new and low */
};
enum gw_torque_age gw_torque_age_of(struct gw_ask *ask, const struct gw_as_read *read, const struct gw_system *system);
/* Of the clamp at first, what is left after so long, s: along the line through what is left after a year. */
double gw_clamp_retained(struct gw_ask *ask, const struct gw_system *system, double age);
/* The limits of a torque on the day of fastening; absent: neither the system nor practice says any. */
void gw_torque_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_system *system);
/* The limits of a torque at its age. */
void gw_torque_expected(struct gw_item_limit *limit, struct gw_ask *ask, const struct gw_as_read *read,
                        const struct gw_system *system);

/* Nm, what is left of a torque when it is to hold, beyond what forms the thread at most; of an age that is not known as
 * little as of one of the day. */
double gw_torque_left(struct gw_ask *ask, const struct gw_system *system, double torque, double age);

/* The system with what was read of its screws alone: what else was read at that edge is not theirs. */
const struct gw_system *gw_line_as_read(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                                        const struct gw_system *system);
/* The screws cannot clamp: a head that does not bear, a length that stands on the bottom of its chase. */
bool gw_bottomed(const struct gw_as_read *read, const struct gw_system *system);
/* The length that was read leaves its tip clear of the bottom by as much as practice asks: under such a screw's head a
 * gap has another cause. */
bool gw_clears_bottom(const struct gw_ask *ask, const struct gw_as_read *read, const struct gw_system *system);

/* "clamp": what is left of it, when it is to hold, over the suction on a screw. */
void gw_left_clamp(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                   const struct gw_system *system);
/* m2, of a screw's thread in tension; absent: it is not known. */
double gw_screw_tension_area(struct gw_ask *ask, const struct gw_screw_spec *screw);
/* What one torque pulls, with the suction on its screw. */
struct gw_pull {
    double most, least; /* N, tension at either end of the ranges */
    double torque;      /* Nm */
    double suction;     /* N; absent: not known */
    bool stopped;  /* the plate lands on a stop: suction takes from what presses it, and adds nothing to the screw */
    bool was_read; /* else it is the least that is asked */
    bool tight;    /* read above its limits */
};
/* "thread" that strips and "breaking" of the screw under its torque and suction: of a torque within its limits, and of
 * as much thread as is asked, only where it is too much; `as_read`: the system with the screws that were read. */
void gw_left_strengths(struct gw_left *out, struct gw_ask *ask, const struct gw_pull *pull,
                       const struct gw_system *system, const struct gw_system *as_read);
/* "yield" of the screw and, where the plate lands on no stop, "edge" of the glass, under the torque that was read;
 * `tight`: it is above its limit. */
void gw_left_over_torque(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_as_read *read, const struct gw_system *system, bool tight);
/* Where the plate lands on a stop and the system states what its gaskets press: that suction on the spot's lite opens
 * the inner one, which leaks air and changes no verdict; not said: it does not, or is not known. */
struct gw_message gw_edge_said(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_system *system);
/* "plate" and "pull-out", by calculation or by a test that covers the line as it was read; and the ratings that it
 * takes away. */
void gw_left_link(struct gw_left *out, struct gw_ask *ask, const char *name, const struct gw_check *check,
                  const struct gw_spot *spot, const struct gw_as_read *read, const struct gw_system *system);
void gw_left_ratings(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                     const struct gw_system *system);

#endif
