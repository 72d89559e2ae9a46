/* What a specification writer needs of a project: the requirements as rows of a set, the pressures behind them by area,
 * and what is still open. Whoever makes the wall; nothing of a candidate enters. */
#ifndef GALEWARD_SPECIFY_H
#define GALEWARD_SPECIFY_H

#include "galeward/answers.h"
#include "galeward/report.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Pressures of one area, Pa, magnitudes; absent: the method gives none. */
struct gw_area_pressure {
    double area; /* m2, effective */
    double inward, outward, inward_asd, outward_asd;
    struct gw_pressure_source inward_by, outward_by; /* who says the greatest; no source: none */
};

/* One wall, zone and part: its greatest pressures each way, magnitudes, and what they would be at other areas. */
struct gw_specified_pressure {
    const struct gw_required *row; /* NULL: no pressure is known there */
    const struct gw_element *first;
    bool framing; /* above the roof line, or where no lite stands */
    long count;   /* elements */
    double bottom, top, least_area, greatest_area;
    double inward, outward, inward_asd, outward_asd;
    struct gw_pressure_source inward_by, outward_by;
    GW_LIST(struct gw_area_pressure) areas;
};

/* The proof load of a wall's lites below or above the roof line, or of its framing: at the greatest pressures of its
 * zones. */
struct gw_specified_proof {
    const struct gw_element *first; /* one of them: wall, parapet */
    bool framing;
    double inward, outward; /* Pa, allowable stress, magnitudes */
    double set_limit;       /* m, permanent, on the wall's longest span between anchors; above the roof line, where
                               framing stands free, absent */
};

/* What the project leaves open, once, with whom to ask in its words. */
struct gw_open_question {
    const char *check;
    const char *where; /* the first of the places */
    struct gw_message question;
    long places;
};

struct gw_specification {
    const struct gw_answer *answer;
    GW_LIST(struct gw_specified_pressure) pressures;
    struct gw_requirement_set set;
    GW_LIST(struct gw_open_question) questions;
    GW_LIST(struct gw_specified_proof) proofs; /* in the order of the pressures; of those that are known */
    struct gw_message proof_fault;
    double field_water, field_leakage; /* of the first row of each; absent: none */
    struct gw_used used;
};

/* `answer` holds the demands (gw_answer_demand); in units of `shown` a set is written. */
void gw_specify(struct gw_specification *out, const struct gw_answer *answer, struct gw_ask *ask, enum gw_units shown);
/* Its parts. */
void gw_specify_pressures(struct gw_specification *out, struct gw_ask *ask);
void gw_specify_rows(struct gw_specification *out, struct gw_ask *ask);
void gw_specify_questions(struct gw_specification *out, struct gw_ask *ask);

struct gw_specified {
    const struct gw_results *results;
    const struct gw_specification *specification;
};
/* What is assumed of candidates, which a specification does not speak of, is left out of results. */
void gw_leave_out_systems(struct gw_results *results);
struct gw_result gw_result_specify(struct gw_arena *arena, const struct gw_specified *specified);

#ifdef __cplusplus
}
#endif

#endif
