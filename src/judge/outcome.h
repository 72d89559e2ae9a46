/* What the routes of one comparison, by ratings or by calculation, hand to each other. */
#ifndef GALEWARD_JUDGE_OUTCOME_H
#define GALEWARD_JUDGE_OUTCOME_H

#include "judge/judge_internal.h"

/* What one route says; a finding is filled from the one that is taken. */
struct gw_outcome {
    enum gw_verdict verdict;
    enum gw_evidence evidence;
    double required, provided, use;
    enum gw_dim dim;
    enum gw_load_direction direction;
    struct gw_message message, remark, question, unmeasured;
    struct gw_message untested;       /* why the best of its tests does not show it */
    struct gw_message how;            /* of a test: see gw_showing */
    const struct gw_gaps *gaps;       /* of the other ratings, where none shows it; NULL */
    struct gw_message confirm;        /* a condition of what it shows */
    const struct gw_rating *rating;   /* NULL: by calculation */
    const struct gw_rating *beside;   /* of the same specimen, which shows more; NULL */
    const struct gw_outcome *too_low; /* of a calculation: the test that covers and is short; NULL */
    bool foreign;                     /* of a rating that says nothing here */
    bool own_component;               /* of a rating of the component itself: a spandrel's is one of fixed lites too */
    bool lesser;                      /* of a rating of another level */
    bool covers, adverse, presumed, weight;
    double as_stiff;      /* of a test: see gw_showing; else absent */
    double proof, safety; /* of a test: held over asked; of a limit: its factor */
    const struct gw_used *used;
};

/* Of what is asked, the part used up: above 1 fails. Nothing provided of something asked is an infinite use. */
double gw_use_of(double required, double provided, bool at_most);
/* By the engine's own rule where it has one, else by the use. */
enum gw_verdict gw_verdict_of(double use, enum gw_bool met);
bool gw_outcome_graver(const struct gw_outcome *a, const struct gw_outcome *b);
/* rated.c: the best of the ratings; false: none applies. Only the one that is taken leaves its derivation. */
bool gw_best_rating(struct gw_outcome *best, struct gw_ask *ask, const struct gw_demand *d,
                    const struct gw_system *system);
/* Why it does not show it. */
struct gw_message gw_lacking(struct gw_ask *ask, const struct gw_demand *d, const struct gw_outcome *tested);
/* Why the other ratings do not show it either, each by itself. */
const struct gw_gaps *gw_gaps_of_others(struct gw_ask *ask, const struct gw_demand *d, const struct gw_system *system,
                                        const struct gw_outcome *best);
/* A pass names the reports of other specimens that are short. */
void gw_name_short_ones(struct gw_outcome *best, struct gw_ask *ask, const struct gw_demand *d,
                        const struct gw_system *system);
/* limits.c: what the system's limits show, all rows used gathered. */
struct gw_outcome gw_calculate(struct gw_ask *ask, const struct gw_demand *d, const struct gw_system *system);
/* The same, each limit by itself; those that act together are one. */
void gw_calculate_each(struct gw_weighed_limits *out, struct gw_ask *ask, const struct gw_demand *d,
                       const struct gw_system *system);
void gw_weigh_each(struct gw_weighed_limits *out, const struct gw_capacity *c, const struct gw_demand *d);

#endif
