/* The least-cost plan of each candidate: what is chosen at each place, so that every check passes there. */
#ifndef GALEWARD_SELECT_H
#define GALEWARD_SELECT_H

#include "galeward/plan.h"

#ifdef __cplusplus
extern "C" {
#endif

/* What a place holds, for prices: m2, m, pieces. Members and panes that the roof line cuts count once. */
struct gw_quantities {
    double wall_area, mullion_length, transom_length;
    long screws, anchors;
    double *lite_area; /* by lite type of the project, m2 */
    long *lites;       /* the same, pieces */
};
/* What is chosen at one place of a plan, and what it comes to. */
struct gw_selected {
    const struct gw_plan_place *place;
    const struct gw_plan_choice *choice;
    struct gw_quantities quantities;
    double cost;                        /* without what is paid once */
    const struct gw_finding *governing; /* of its elements; NULL */
};
/* A check that no choice satisfies. */
struct gw_blocked {
    const struct gw_finding *finding;
};
struct gw_bid {
    const struct gw_system *candidate;
    enum gw_verdict verdict; /* of its plan: pass; not shown: nothing fails; fail: no such plan */
    struct gw_plan plan;     /* fail: nothing chosen anywhere */
    double cost;             /* with what is paid once; absent: no plan */
    double once;
    double mass; /* kg, metal and glass; absent: not known */
    double
        everywhere_cost; /* of the cheapest plan of this verdict with the same choices in every place; absent: none */
    GW_LIST(struct gw_selected) places;
    GW_LIST(struct gw_blocked) blocked;
    struct gw_finding *findings; /* of the plan, judged as a whole: by demand */
    struct gw_summary summary;
    long examined; /* choices of single places and whole plans that were judged */
    bool complete; /* false: stopped; `cost` is that of the best plan so far, none is cheaper than `bound` */
    double bound;
    long mismatches; /* with `recompute`: remembered values that came out otherwise */
};
struct gw_select_limits {
    long most;                /* of `examined` for a candidate; 0: a million */
    bool (*stop)(void *user); /* asked now and then; NULL */
    void *user;
    bool recompute; /* a test: each remembered value is worked out anew and compared */
};
struct gw_bids {
    const struct gw_model *model;
    const struct gw_takeoff *takeoff;
    struct gw_plan_places places;
    struct gw_judgement demands;
    bool by_mass;                 /* nothing has a cost: the least mass is chosen */
    GW_LIST(struct gw_bid) items; /* best first: pass by cost, not shown by cost, fail */
};
void gw_select(struct gw_bids *out, struct gw_ask *ask, const struct gw_select_limits *limits);

#ifdef __cplusplus
}
#endif

#endif
