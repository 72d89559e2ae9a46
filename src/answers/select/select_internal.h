/* Shared by the files of src/answers/select.
 *
 * A variable is one option or one lite type within the part where it is chosen everywhere or nowhere (a place, a wall,
 * the project), or the heaviest make-up of a type on a wall, which what is chosen at every place of it must keep
 * within, or what an option costs of a corner that two places share, 1 where either takes it. Its values: an option 0
 * or 1; a lite type 0 (its own) or the number of an alternative; a heaviest make-up the same. What a check read of the
 * system and of make-ups tells which variables its verdict hangs on: where it is not good enough, no plan gives all of
 * these the values that they had (a nogood). */
#ifndef GALEWARD_SELECT_INTERNAL_H
#define GALEWARD_SELECT_INTERNAL_H

#include "galeward/select.h"

/* Millionths, so that sums are exact and ties are ties. */
typedef int64_t money;

enum var_kind { VAR_OPTION, VAR_LITE, VAR_HEAVIEST, VAR_SHARED };
struct var {
    enum var_kind kind;
    size_t index;    /* option; lite type */
    size_t wall;     /* VAR_HEAVIEST: its elevation; VAR_SHARED: which of `shared` */
    unsigned n;      /* values */
    uint32_t likely; /* VAR_HEAVIEST: taken where it costs nothing, so that places agree */
};
typedef uint64_t values; /* a set of them */

struct literal {
    uint32_t var, value;
};
struct nogood {
    const struct literal *literals;
    size_t n;
    const struct gw_finding *why; /* NULL: a rule of the options */
};
struct nogoods {
    struct nogood *items;
    size_t n, capacity;
    struct gw_memo known;
};

/* What one value of a variable costs at one place. */
struct price {
    money cost;
    int options; /* taken by it */
};
/* A demand, and which place of the plan it is looked at. */
struct placed_demand {
    size_t demand, place;
};
/* Values of a place's variables that were found good, and which of them any check hung on. */
struct good {
    struct good *next;
    const uint32_t *value;
    const bool *matters;
};
/* A place of the plan; where one choice is made for the whole project, all of them together. */
struct place {
    const size_t *members; /* places of the plan */
    size_t n_members;
    const size_t *vars; /* that concern it, in the order of ties: options, lite types, then the heaviest */
    size_t n;
    struct price **prices;         /* by its variables, then by value */
    const size_t *spaced;          /* its variables that say how far apart screws stand, where another's cost counts */
    size_t n_spaced;               /* them; none does: 0 */
    money **by_spacing;            /* by variable; of such a one what it costs if taken: with none of `spaced`, then
                                      with each; else NULL */
    money fixed;                   /* the wall itself */
    struct placed_demand *demands; /* of its elements, its wall, its lite types, the project */
    size_t n_demands, demands_capacity;
    size_t n_hard; /* the first so many: likely to rule out what is tried, looked at before the others */
    struct nogoods nogoods;
    struct gw_memo solved; /* by the sets of values that its variables may have */
    struct good *good;     /* values that satisfy every check that looks at this place alone */
};

/* A plan in variables: for each place the values of its variables. */
struct total {
    money cost;
    int options;
};
struct local {
    bool found;
    struct total total;
    const uint32_t *value; /* by the place's variables */
};

/* The mullion and the anchors of a corner that two walls share, by the places of the plan where they stand: `first` is
 * of the wall that the project names first, where they are counted. */
struct gw_shared {
    size_t first, second;
    double mullion_length;
    long anchors;
};
struct gw_shared_list {
    struct gw_shared *items;
    size_t n, capacity;
};

struct known; /* what a demand came to, by what it was worked out from */
struct search {
    struct gw_ask *ask;
    struct gw_arena *arena; /* of the search; what its result holds is the ask's */
    const struct gw_judgement *demands;
    const struct gw_plan_places *places;
    const struct gw_shared_list *shared;
    const struct gw_system *candidate;
    const struct gw_select_limits *limits;
    struct gw_offers offers;
    struct gw_chosen chosen; /* arrays of our own, set before each call */
    const struct gw_lite_type **lites, **heaviest;
    size_t n_types, n_walls;
    struct var *vars;
    size_t n_vars;
    struct place *at; /* what is chosen by itself */
    size_t n_at;
    const size_t *at_of; /* by place of the plan: where in `at` */
    gw_option_set touching[GW_SYSTEM_PART_COUNT];
    gw_option_set priced_once;
    gw_option_set spacing; /* options that say how far apart screws stand */
    long *screws;          /* with none of these, then with each option: by place of the plan */
    struct known **known;  /* by demand */
    struct nogoods across;
    struct gw_finding *whole; /* room for those of a plan as a whole, by demand */
    const struct gw_quantities *quantities;
    bool by_mass;
    const bool *aside;    /* by demand: not looked at; NULL: all are */
    enum gw_verdict need; /* the least that is good enough: pass, or not shown */
    bool everywhere;      /* one choice for the whole project */
    bool stopped, guessing;
    long examined, mismatches;
};

/* vars.c: the variables of a candidate and their places; false: more than can be told apart. */
void gw_search_vars(struct search *s, const struct gw_quantities *quantities, bool by_mass);
/* What the values come to at one place of the plan that they make. */
money gw_place_cost(struct search *s, const struct gw_plan *plan, size_t place, const struct gw_quantities *q,
                    bool by_mass, const uint32_t *value);
size_t gw_search_var(const struct search *s, const struct place *p, enum var_kind kind, size_t index, size_t wall);
/* screws.c: counts them; at a place of the plan with these options. */
void gw_search_screws(struct search *s);
long gw_search_screws_at(const struct search *s, size_t place, gw_option_set taken);
/* costs.c */
/* The upper part of a member or a pane that the roof line cuts: its pieces are counted with the lower one. */
bool gw_is_upper_part(const struct gw_takeoff *t, const struct gw_element *e);
/* All but screws, which the system and its options space. */
void gw_quantities_of(struct gw_quantities *out, struct gw_ask *ask, const struct gw_plan_places *places);
/* corners.c: what walls share at their corners, taken out of the quantities of the second. */
void gw_share_corners(struct gw_shared_list *out, struct gw_quantities *q, struct gw_ask *ask,
                      const struct gw_plan_places *places);
/* A place's quantities without what it shares with a later wall. */
struct gw_quantities gw_apart(const struct gw_quantities *q, const struct gw_shared_list *shared, size_t place);
/* What an option that is taken there counts there: of a shared corner where the first side does not take it, too. */
struct gw_quantities gw_counted_at(const struct gw_quantities *q, const struct gw_shared_list *shared,
                                   const struct gw_plan *plan, size_t place, size_t option);
/* m or pieces of a shared corner that the option's cost counts. */
double gw_shared_quantity(const struct gw_shared *s, const struct gw_system_option *o);
bool gw_anything_priced(const struct gw_model *model);
/* m2, m or pieces that the option's cost counts at a place. */
double gw_option_quantity(const struct gw_system_option *o, const struct gw_quantities *q, size_t types);
money gw_option_cost(const struct gw_system_option *o, const struct gw_quantities *q, size_t types);
money gw_lite_cost(const struct gw_price *price, const struct gw_quantities *q, size_t type);
/* kg; absent where a weight is not known. */
enum { GW_MASS_UNKNOWN = 100000000 }; /* kg, for each option with which nobody knows it: more than any wall */
double gw_lite_mass(const struct gw_lite_type *type, const struct gw_model *model, double area);
double gw_frame_mass(const struct gw_system *system, const struct gw_model *model, double area);
money gw_to_money(double value);
double gw_of_money(money m);

/* evaluate.c: one demand where the place's variables have these values; remembered by what was read. `beyond`: it
 * looked at another place, of which nothing is set. */
struct seen {
    const struct gw_finding *finding;
    const struct gw_reads *reads;
    gw_option_set relevant; /* options that touch what it read */
};
struct seen gw_search_see(struct search *s, size_t place, size_t demand, gw_option_set taken);
/* Whether what a check looked at hangs on the variable. */
bool gw_hangs_on(const struct seen *seen, const struct var *v);
bool gw_good_enough(const struct search *s, const struct gw_finding *f);
/* The variables of a place that a finding hangs on, with their values, into `nogoods`. */
void gw_learn(struct search *s, struct nogoods *nogoods, size_t place, const struct seen *seen, const uint32_t *value);
void gw_add_nogood(struct search *s, struct nogoods *nogoods, const struct literal *literals, size_t n,
                   const struct gw_finding *why);
/* Sets what is chosen at a place from the values of its variables; the heaviest make-ups too. */
gw_option_set gw_search_set(struct search *s, size_t place, const uint32_t *value);

/* local.c: the cheapest values of a place's variables within the sets that satisfy every check that looks at this place
 * alone. */
/* Guesses the heaviest make-ups from the checks of lites and those that ask most; nothing hangs on the guess but time.
 */
void gw_guess_heaviest(struct search *s, const values *domains);
const struct local *gw_solve_place(struct search *s, size_t place, const values *domains);
/* bid.c: what each place of a plan is made of; what has no cost where others have one. */
void gw_itemize(struct gw_bid *bid, const struct gw_model *model, const struct gw_shared_list *shared,
                struct gw_arena *arena);
void gw_list_unpriced(struct gw_bids *out, struct gw_arena *arena);
/* blocked.c: of a search that found no plan, what blocks it place by place, and what keeps places from agreeing
 * besides; nothing where it is stopped. `out->findings` are those of nothing chosen. */
void gw_search_blocked(struct gw_bid *out, struct search *s);
void gw_add_blocked(struct gw_bid *out, struct gw_arena *arena, struct gw_blocked blocked);
/* What fails least first, what does not (NULL) before it. */
void gw_order_by_gravity(const struct gw_check **checks, const struct gw_finding **worst, size_t n);
/* agree.c: the same of all places together, but for these demands; the search is begun again. */
void gw_search_agreement(struct gw_bid *out, struct search *s, const bool *before);
/* select.c: forgets what was learned; what checks came to stays. */
void gw_search_begin(struct search *s);
/* What is chosen at each place of the plan; NULL: nothing. */
struct gw_plan_choice *gw_search_choices(const struct search *s, const struct local *const *best);
/* search.c: the cheapest plan; false: none. `best` by place. */
bool gw_search_plan(struct search *s, const struct local **best, money *once, money *bound);
/* Orders two sets of values of one place's variables as ties are told: the fewest options, then the file's order. */
int gw_compare_ties(const struct search *s, const struct place *p, const uint32_t *a, const uint32_t *b);

#endif
