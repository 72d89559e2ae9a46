/* A specimen beside what is built: what was compared, and whether its lite is made and held alike. */
#ifndef GALEWARD_JUDGE_SPECIMEN_H
#define GALEWARD_JUDGE_SPECIMEN_H

#include "judge/check.h"

/* For who wants to see what a verdict rests on: nothing is kept without a derivation. Each thing once, the worst of
 * them. */
void gw_compare(struct gw_ask *ask, const struct gw_compared *one);
void gw_compare_number(struct gw_ask *ask, const char *what, enum gw_dim dim, double tested, double needed, bool holds);
void gw_compare_words(struct gw_ask *ask, const char *what, const char *tested, const char *needed, bool holds);

/* One reason more, after the others; one that is not said adds nothing. */
void gw_specimen_add(struct gw_ask *ask, struct gw_message *why, struct gw_message one);
/* The same but for figures. */
bool gw_specimen_alike(struct gw_ask *ask, const struct gw_message *a, const struct gw_message *b);

/* Of make-ups that the record names or gives: that none of them is the one here; of one that gives none: not said. */
struct gw_message gw_made_otherwise(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e);
bool gw_same_make_up(const struct gw_ask *ask, const struct gw_tested_lite *lite, const struct gw_lite_type *type);
/* As the system is glazed, where the record says nothing; a mixed system is as its record says. */
bool gw_held_alike(const struct gw_tested_hold *hold, enum gw_glazing glazing);

/* Screws of the plate at least as far apart and from its end, and no thinner than here. NULL: not recorded. */
struct gw_message gw_specimen_fastened(struct gw_ask *ask, const struct gw_tested_fastening *t, double spacing);
/* The same at the edges of a lite, of a rating that records how its plate was fastened; of one that does not, nothing.
 */
struct gw_message gw_specimen_fastened_otherwise(struct gw_ask *ask, const struct gw_rating *rating,
                                                 const struct gw_element *lite);
/* The same of the joints of a wall: what its screws press. */
struct gw_message gw_specimen_pressed_otherwise(struct gw_ask *ask, const struct gw_rating *rating,
                                                const struct gw_wall_grid *grid);

#endif
