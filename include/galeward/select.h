/* The least-cost plan of each candidate: what is chosen at each place, so that every check passes there. */
#ifndef GALEWARD_SELECT_H
#define GALEWARD_SELECT_H

#include "galeward/answers.h"
#include "galeward/plan.h"

#ifdef __cplusplus
extern "C" {
#endif

/* What a place holds, for prices: m2, m, pieces. Members and panes that the roof line cuts count once; so do the
 * mullion and the anchors of a corner where two walls meet by name, with the wall that the project names first. */
struct gw_quantities {
    double wall_area, mullion_length, transom_length;
    long screws; /* as far apart as they are hung with what is chosen: the wall's, else the option's, the system's */
    long anchors;
    double *lite_area; /* by lite type of the project, m2 */
    long *lites;       /* the same, pieces */
};
/* What one option, or one lite type, comes to at a place. */
struct gw_selected_option {
    const struct gw_system_option *option;
    double quantity; /* m2, m or pieces that its cost counts; of a corner that is counted with another wall, which does
                        not take it, too */
    double cost;     /* of the place; 0 where it has none */
};
struct gw_selected_lite {
    const struct gw_lite_type *type; /* of the project, that stands at the place */
    const char *name;                /* of the alternative; NULL: its own make-up */
    double area, cost;
    long count;
};
/* What is chosen at one place of a plan, and what it comes to. */
struct gw_selected {
    const struct gw_plan_place *place;
    const struct gw_plan_choice *choice;
    struct gw_quantities quantities;
    double cost;                        /* without what is paid once */
    const struct gw_finding *governing; /* of its elements; NULL */
    /* What the cost is made of; the wall itself costs `wall_cost`. Empty where there is no plan. */
    double wall_cost;
    GW_LIST(struct gw_selected_option) options; /* in the file's order */
    GW_LIST(struct gw_selected_lite) lites;
    GW_LIST(const char *) option_names; /* the same options, for records */
    struct gw_described lite_names;     /* the same lite types, each with the name; for records */
};
/* A check that fails at a place for which there is no choice. */
struct gw_blocked {
    const struct gw_finding *finding;
    const struct gw_plan_place *place;
    const char *choice;  /* what is chosen there, so that what else blocks the place passes; "" nothing; NULL: it fails
                            whatever is chosen */
    const char *nearest; /* of such a one the choice that comes nearest, with which it stands; "" nothing; NULL: it
                            hangs on none */
    bool together;       /* what is chosen is a plan that satisfies what else blocks it: places that have to agree */
};
struct gw_margins;
struct gw_bid {
    const struct gw_system *candidate;
    enum gw_verdict verdict; /* of its plan: pass; not shown: nothing fails; fail: no such plan */
    struct gw_plan plan;     /* fail: nothing chosen anywhere */
    double cost;             /* with what is paid once; absent: no plan */
    double once;
    double mass; /* kg, metal and glass; absent: not known */
    /* Of the cheapest plan of this verdict with the same choices in every place, and what this plan saves against it;
     * absent: there is none. */
    double everywhere_cost, saving;
    double everywhere_mass; /* kg, where the least mass is chosen */
    GW_LIST(struct gw_selected) places;
    /* Of no plan, place by place: each check that fails whatever is chosen there; and where the others are not
     * satisfied together, a least set of them, each with a choice that satisfies the others. Then, but for these: where
     * places have choices and no plan has all of them, `blocked_together`, a least such set of the whole, and the rule
     * that keeps them apart ("": none of the options), or, where nobody looked, NULL and what fails with nothing
     * chosen. */
    GW_LIST(struct gw_blocked) blocked;
    size_t blocked_room;
    bool blocked_together;
    const char *blocked_rule;
    struct gw_finding *findings; /* of the plan, judged as a whole: by demand */
    struct gw_summary summary;
    struct gw_summary offered; /* with nothing chosen anywhere: as 'check' has it without a plan */
    long examined;             /* choices of single places and whole plans that were judged */
    bool complete; /* false: stopped; `cost` is that of the best plan so far, absent without one; none is cheaper than
                      `bound` */
    double bound;
    long mismatches;                  /* with `recompute`: remembered values that came out otherwise */
    const struct gw_margins *margins; /* what would change it (galeward/margins.h); NULL: not looked at */
};
struct gw_select_limits {
    long most;                               /* of `examined` for a candidate; 0: a million */
    bool (*stop)(void *user);                /* asked now and then; NULL. A stopped search gives the best plan so far */
    void (*tell)(void *user, long examined); /* how far it is; NULL */
    void *user;
    struct gw_arena *scratch; /* for what is remembered of one candidate; rewound. NULL: the ask's */
    bool recompute;           /* a test: each remembered value is worked out anew and compared */
};
struct gw_bids {
    const struct gw_model *model;
    const struct gw_takeoff *takeoff;
    struct gw_plan_places places;
    struct gw_judgement demands;
    bool shares_corners;            /* walls that meet by name share mullions or anchors */
    bool by_mass;                   /* nothing has a cost: the least mass is chosen, and every cost is 0 */
    GW_LIST(const char *) unpriced; /* options and make-ups without a cost, which count 0, where others have one */
    GW_LIST(struct gw_bid) items;   /* best first: pass by cost, not shown by cost, fail */
};
void gw_select(struct gw_bids *out, struct gw_ask *ask, const struct gw_select_limits *limits);
/* The plans as an answer: what they come to, in the bids' order, and what is missing to show it. */
void gw_answer_bids(struct gw_answer *out, struct gw_ask *ask, const struct gw_bids *bids);

#ifdef __cplusplus
}
#endif

#endif
