/* Plans: what is chosen at each place of a project, and the judgement of a candidate with it.
 *
 * A place is one wall, one zone, below or above the roof line. A piece of mullion or a transom that lies on the roof
 * line counts with the part below; a pane that it cuts keeps one make-up. */
#ifndef GALEWARD_PLAN_H
#define GALEWARD_PLAN_H

#include "galeward/judge.h"
#include "galeward/memo.h"

#ifdef __cplusplus
extern "C" {
#endif

struct gw_plan_place {
    const char *wall; /* or elevation of a schedule */
    size_t elevation; /* its number in the take-off */
    int zone;
    bool parapet; /* above the roof line */
};
struct gw_plan_places {
    struct gw_plan_place *items; /* in the order in which the take-off meets them */
    size_t n, capacity;
    const size_t *of;   /* by element of the take-off */
    const bool *stands; /* by place, then by lite type of the project: it has such lites */
};
void gw_plan_places_of(struct gw_plan_places *out, const struct gw_model *model, const struct gw_takeoff *takeoff,
                       struct gw_arena *arena);

/* At one place: options of the system, and of each lite type of the project which make-up: 0 its own, else the
 * alternative of that number from 1. */
struct gw_plan_choice {
    gw_option_set options;
    const unsigned *lites;
};
struct gw_plan {
    const struct gw_system *candidate;
    const struct gw_plan_places *places;
    const struct gw_plan_choice *choices; /* by place */
};
/* The type that an alternative's number stands for. */
const struct gw_lite_type *gw_lite_numbered(const struct gw_lite_type *type, unsigned number);
/* Of a lite type's make-ups that are chosen on each wall the heaviest, in the form of struct gw_chosen; a make-up whose
 * weight is not known is heavier than any. */
void gw_plan_chosen(struct gw_chosen *out, const struct gw_plan *plan, const struct gw_model *model,
                    struct gw_arena *arena);

/* Systems with options taken, made once each. NULL: together they make no valid file. */
struct gw_offers {
    struct gw_model *model; /* a copy, with diagnostics of its own: a combination that is no file is no fault */
    struct gw_diags diags;
    const struct gw_system *base;
    struct gw_memo made;
};
void gw_offers_init(struct gw_offers *out, const struct gw_model *model, const struct gw_system *base,
                    struct gw_arena *arena);
struct gw_system *gw_offer_with(struct gw_offers *offers, gw_option_set taken);

/* What the project, or a plan beside it, chooses for each candidate. */
struct gw_planned {
    bool chosen;             /* anything; else the candidate is judged as it is */
    struct gw_plan plan;     /* with nothing chosen where nothing is */
    struct gw_offers offers; /* `chosen` alone: these two */
    struct gw_chosen make_ups;
};
struct gw_plans {
    struct gw_plan_places places;
    struct gw_planned *items; /* by candidate of the model */
};
/* From the model's `project.chosen` and `withs`; `*out` NULL: nothing is chosen. False after a diagnostic of the model:
 * a name that nothing has, a place named twice, a plan that breaks `choose`, `group` or `requires`. What is chosen is
 * listed among the assumptions; a candidate without an option of `withs` is warned of. */
bool gw_plans_read(struct gw_plans **out, struct gw_model *model, const struct gw_takeoff *takeoff,
                   struct gw_arena *arena);
/* NULL: nothing is chosen for it. */
struct gw_planned *gw_planned_of(const struct gw_ask *ask, const struct gw_system *candidate);
/* The candidate with the options of the element's place. */
struct gw_system *gw_planned_offer(struct gw_planned *planned, const struct gw_element *element);
/* "steel insert; vision: thicker outer pane"; "" */
const char *gw_choice_words(const struct gw_plan *plan, size_t place, const struct gw_model *model,
                            struct gw_arena *arena);

/* Every demand against the candidate with what is chosen at its place. A check of a wall, a lite type or the project
 * holds with every choice within it: the gravest finding stands. `demands` are those of gw_judge_demands. */
void gw_judge_plan(struct gw_finding *findings, struct gw_summary *summary, const struct gw_judgement *demands,
                   struct gw_ask *ask, const struct gw_plan *plan, struct gw_offers *offers);
/* One of these at one place, its load path left out; what it was worked out from is marked in `reads`. The demand is
 * made anew where it hangs on what is chosen. */
void gw_judge_at(struct gw_finding *out, struct gw_ask *ask, const struct gw_demand *demand,
                 const struct gw_system *candidate, struct gw_system *offered, struct gw_chosen *chosen, size_t place,
                 struct gw_reads *reads);
/* Whether a demand of a wall, a lite type or the project speaks of that place too. */
bool gw_demand_is_at(const struct gw_demand *demand, const struct gw_ask *ask, const struct gw_plan_places *places,
                     size_t place);

#ifdef __cplusplus
}
#endif

#endif
