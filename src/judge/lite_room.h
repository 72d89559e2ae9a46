/* A lite in its pocket as it was read: what its edges leave of bite and clearance, and which tests no longer reach it.
 * For items. */
#ifndef GALEWARD_JUDGE_LITE_ROOM_H
#define GALEWARD_JUDGE_LITE_ROOM_H

#include "judge/item.h"

/* What was read, or follows from it; absent: as the system has it. m */
struct gw_room {
    double side_gap, end_gap; /* averages of two opposite edges */
    double bite;              /* in the pocket; of the bead where one holds the lite all round */
};
/* A copy of the system with that room. */
const struct gw_system *gw_with_room(struct gw_ask *ask, const struct gw_system *system, const struct gw_room *room);

/* By a check at an element, ratings and all: what it comes to `as_read`. A test that shows it as offered, and does not
 * as it was read, is taken away; `named` says why, where the check does not. */
void gw_left_by_verdict(struct gw_left *out, struct gw_ask *ask, const char *name, const struct gw_check *check,
                        const struct gw_element *element, const struct gw_system *offered,
                        const struct gw_system *as_read, struct gw_message named);
/* By a check at an element where it may be `as_read` or as `offered`: enough `as_read`, short as offered, or else
 * asked. */
void gw_left_by_either(struct gw_left *out, struct gw_ask *ask, const char *name, const struct gw_check *check,
                       const struct gw_element *element, const struct gw_system *offered,
                       const struct gw_system *as_read, struct gw_message question);
/* The drift of the story, with such room: its clearance, or a racking test that had no more of it. */
void gw_left_by_drift(struct gw_left *out, struct gw_ask *ask, const struct gw_element *lite,
                      const struct gw_system *system, const struct gw_room *room);
/* An earthquake's drift is asked of it, or may be: what the project has of it is not known. */
bool gw_may_drift(struct gw_ask *ask, const struct gw_element *lite, const struct gw_system *system);
/* Tests of any hazard that show the lite as offered, and had more bite. */
void gw_left_by_tests_of_bite(struct gw_left *out, struct gw_ask *ask, const struct gw_element *lite,
                              const struct gw_system *system, double bite, bool below_drawn);
/* What is needed at the ends of ranges. */
struct gw_needed {
    double least; /* at the good end of every range */
    double known; /* at the bad end of those that were stated, or that no reading can narrow; of facts that nobody read
                     or stated, and could, at the good end */
    double most;  /* at the bad end of every range */
};
/* Short of `known`: short at the bad end, and `measure` says what would narrow it. In between a fact alone decides:
 * `question` asks for it. */
void gw_left_by_range(struct gw_left *out, const char *name, double has, const struct gw_needed *needed,
                      struct gw_message how, const char *measure, const char *question);

/* Practice for such a lite; NULL: its glass is not known. */
struct gw_glazing_room;
const struct gw_glazing_room *gw_practice_room(struct gw_ask *ask, const struct gw_element *lite);
/* Its overall thickness, m, nominal; absent. */
double gw_lite_thickness(struct gw_ask *ask, const struct gw_element *lite);

/* How the message begins of what the system is short of as it is drawn, too, and a test could still show. */
extern const char gw_short_as_drawn[];

#endif
