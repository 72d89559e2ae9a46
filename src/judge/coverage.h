/* What a structural test shows of each link: what it measured, on what was tested, up to its pressure. */
#ifndef GALEWARD_JUDGE_COVERAGE_H
#define GALEWARD_JUDGE_COVERAGE_H

#include "judge/check.h"

#define GW_NO_SPECIMEN "the report's tested dimensions are not given; ask the manufacturer for them"

struct gw_dimension {
    const char *name;
    double tested, needed; /* m */
};
/* The first that is not recorded or is less than needed; not said: none. */
struct gw_message gw_specimen_short_of(struct gw_ask *ask, const struct gw_dimension *dimensions, size_t n);

/* Design pressures that a test proves: of the greatest pressure held, where that is recorded, over the proof factor.
 * Pa, magnitudes; absent: not given. */
struct gw_pressures gw_proved(struct gw_ask *ask, const struct gw_rating *rating);
/* Why the specimen reaches no lite of that size and make-up; not said: one lite of it does. */
struct gw_message gw_specimen_short_of_lite(struct gw_ask *ask, const struct gw_rating *rating,
                                            const struct gw_element *lite);
/* The same of a stretch of mullion, with its continuity. */
struct gw_message gw_specimen_short_of_mullion(struct gw_ask *ask, const struct gw_rating *rating,
                                               const struct gw_element *mullion);
/* A make-up named by a lite type of the project, and that of another: the same name or the same layers. */
bool gw_is_type(const struct gw_lite_type *a, const struct gw_lite_type *b); /* or a copy with the same glass */
bool gw_made_alike(const struct gw_ask *ask, const char *named, const struct gw_lite_type *here);
/* A specimen with that recorded hung in it. */
bool gw_specimen_includes(const struct gw_rating *rating, enum gw_included what);

/* Its number fails, whatever was in the specimen. */
bool gw_is_short(const struct gw_showing *showing, const struct gw_demand *demand);
/* Of a water or air rating that is good enough: whether it holds for the joints of the wall and after the structural
 * load; what is not recorded is asked, as a condition, or where the project asks for a test, before it is shown. */
void gw_ask_joints(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                   const struct gw_rating *rating);

/* Tests of links, for their rows: lites' edges, transoms, mullions, their deflection, splices, anchors. */
void gw_test_edges(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                   const struct gw_rating *rating);
void gw_test_transom(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                     const struct gw_rating *rating);
void gw_test_transom_deflection(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                                const struct gw_rating *rating);
void gw_test_mullion(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                     const struct gw_rating *rating);
void gw_test_mullion_deflection(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                                const struct gw_rating *rating);
void gw_test_splice(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                    const struct gw_rating *rating);
void gw_test_anchor(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                    const struct gw_rating *rating);

#endif
