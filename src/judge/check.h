/* What a check is made of: the contract between the judge and the files of check/.
 *
 * A check never writes a verdict. It says what a place asks (demand), what a system has there (capacity), and what one
 * rating shows of a demand (test); the judge compares. Engines are run with `&ask->engine`, which the judge opened and
 * whose rows it gathers afterwards. */
#ifndef GALEWARD_JUDGE_CHECK_H
#define GALEWARD_JUDGE_CHECK_H

#include "base/tolerance.h"
#include "galeward/judge.h"

/* One wall and one component that is tested on its own: what water and air demands need, gathered in one pass. */
struct gw_judged_wall {
    const char *wall;
    enum gw_component component;
    double greatest_inward; /* Pa, allowable-stress level, of its lites below the roof; it has none there: of all */
    bool below;             /* some of them stand below the roof */
    const struct gw_message *outside; /* NULL; else why the method gives some of those none: it may be greater */
    struct gw_used used;
};

/* Where a demand is worked out: the members that the check's scope gives are set. */
struct gw_place {
    const char *where;
    const struct gw_element *element;
    const struct gw_judged_wall *wall;
    enum gw_component component;
    const struct gw_other_requirement *other;
    const struct gw_lite_type *lite;
};

/* Something that must be known about the project; while it is not, the row is not shown, with the question. */
struct gw_need {
    bool (*present)(const struct gw_model *model);
    const char *question;
};

/* One limit of a system at a place, against one of the demand's terms. */
struct gw_limit {
    unsigned term;    /* whose dimension and direction it has, unless `dim` or `direction` say otherwise */
    unsigned group;   /* uses of one group add up: loads that act together */
    double provided;  /* SI; absent: not known, and `message` asks for it */
    double required;  /* where the comparison is made in another quantity than the term's; absent: the term's */
    double use;       /* where it is no plain quotient of the two; absent: it is */
    enum gw_bool met; /* where the engine compares by a rule of its own; unsaid: by the use */
    enum gw_dim dim;  /* of `required`; only with it */
    enum gw_load_direction direction; /* only with `turned` */
    bool turned;
    double safety;             /* factor in `provided` against failure; 0: none is stated */
    struct gw_message message; /* which limit state it is */
};

enum gw_capacity_state { GW_CAPACITY_KNOWN, GW_CAPACITY_UNKNOWN, GW_CAPACITY_NOT_CONCERNED };
enum { GW_LIMITS = 8 };
struct gw_capacity {
    enum gw_capacity_state state;
    struct gw_message message; /* unknown: the question; not concerned: why */
    enum gw_evidence evidence;
    struct gw_limit limits[GW_LIMITS];
    unsigned n;
    bool open; /* the numbers are known, and still nothing is shown: the limit's message says why */
};

/* What one rating shows of one demand. */
struct gw_showing {
    bool applies;       /* it is a rating of this check and component */
    bool covers;        /* the test reaches this place; else `why` */
    bool foreign;       /* it says nothing here, not even by a number too small */
    bool weight;        /* it shows the wind there; the weight besides, which no wind test shows, is calculated */
    bool adverse;       /* what it says against the system counts, whatever calculation shows */
    bool lesser;        /* of another level than is asked: what is of it, though it shows nothing here, goes before */
    bool presumed;      /* adverse: of a size that is not recorded, or scaled up; not enough to fail what else passes */
    double proof;       /* the pressure that it held over what is asked, in the direction with more; absent */
    double as_stiff;    /* what the place bends if it is as stiff as the specimen that was measured; absent */
    double provided[2]; /* by term */
    double required;    /* where it is not the first term's; absent */
    enum gw_bool met;   /* where the engine compares by a rule of its own; unsaid: by the numbers */
    struct {
        double asked, held; /* where it held less, in the terms of the test; absent: by the terms of the demand */
        enum gw_dim dim;
        enum gw_load_direction direction;
    } low;
    struct gw_message why;        /* what is not covered, or a condition to confirm */
    struct gw_message how;        /* of a cover: how its number follows from what was measured; not said: as recorded */
    struct gw_message confirm;    /* besides a cover by a link's test: what to confirm of it */
    struct gw_message unmeasured; /* what the record leaves out, so that it outweighs no calculation that is short */
};

/* When the judge asks a system's ratings. */
enum gw_route {
    GW_BY_RATING,         /* they answer; where none applies, calculation, if the row has one */
    GW_RATING_OR_LIMITS,  /* one that covers at its pressures answers; anything less is as if it were not there */
    GW_LIMITS_THEN_RATING /* calculation first; where it is short, the ratings */
};

struct gw_functions {
    const struct gw_need *needs; /* ends with a NULL function; may be NULL */
    /* A reason why the project does not ask for it, or NULL. */
    const char *(*waived)(const struct gw_model *model);
    void (*demand)(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place);
    /* Why such a system is not concerned, or NULL: it has no part of this kind. May be NULL. */
    const char *(*without)(const struct gw_system *system);
    void (*capacity)(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *demand,
                     const struct gw_system *system); /* NULL: tests alone answer it */
    void (*test)(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                 const struct gw_rating *rating); /* NULL: no test answers it */
    enum gw_route route;
    bool levels;         /* a rating is one level that was survived: a lower one says nothing against a higher */
    const char *unrated; /* what to ask where no rating applies; NULL: "no ID rating ..." */
};

#define GW_KIND_BIT(kind) (1u << (kind))

/* Parts of demands. */
void gw_demand_unknown(struct gw_demand *out, struct gw_message message);
void gw_demand_not_asked(struct gw_demand *out, struct gw_message message);
void gw_demand_term(struct gw_demand *out, struct gw_ask *ask, enum gw_dim dim, enum gw_load_direction direction,
                    double value);
/* A limit for the response of a member whose stiffness is 1. */
void gw_demand_limit(struct gw_demand *out, struct gw_ask *ask, enum gw_dim dim, double limit, double response);
/* The engine's refusal as a sentence. */
struct gw_message gw_fault_message(const struct gw_ask *ask);

/* It is the take-off's own element, not a changed copy: what it is remembered by is its index. */
bool gw_is_taken_off(const struct gw_ask *ask, const struct gw_element *e);

/* m, spacing of the system's screws on that wall: what was read there, else, where the wall says none, the system's
 * own; absent: the take-off's stands. */
double gw_screw_spacing(const struct gw_system *system, const struct gw_wall_grid *grid);
/* m, from the end of the plate to its last screw, as read or as the system has it; absent: not known. */
double gw_screw_end_distance(const struct gw_system *system);
/* The element with that spacing of its screws; else the same. */
const struct gw_element *gw_as_fastened(struct gw_ask *ask, const struct gw_system *system, const struct gw_element *e);

/* Allowable-stress pressures of an element, Pa, magnitudes; marks the rows that they rest on. */
struct gw_pressures {
    double inward, outward;
};
struct gw_pressures gw_pressures_on(struct gw_ask *ask, const struct gw_element *e);
double gw_greater(struct gw_pressures p);
/* False: the method gives none there, and `out` says so. */
bool gw_pressures_known(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e);
/* The pressures as a demand's terms; false: none are known, and `out` says so. */
bool gw_demand_wind(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e, struct gw_pressures *p);

/* Parts of capacities. */
void gw_capacity_unknown(struct gw_capacity *out, struct gw_message question);
void gw_capacity_not_concerned(struct gw_capacity *out, struct gw_message why);
struct gw_limit *gw_capacity_limit(struct gw_capacity *out, unsigned term, unsigned group, double provided,
                                   struct gw_message message);
/* The same with a requirement of its own. */
struct gw_limit *gw_capacity_instead(struct gw_capacity *out, enum gw_dim dim, double required, double provided,
                                     struct gw_message message);

/* What a stated capacity is evidence of: one whose report is named is part of a calculation. */
enum gw_evidence gw_stated_evidence(const char *report);

/* Why a captured system has no structural bead, or NULL. */
const char *gw_without_bead(const struct gw_system *system);

/* Parts of tests. A spandrel is glazed like any fixed lite; vents and doors are tested on their own. */
bool gw_same_component(const struct gw_rating *rating, enum gw_component component);
const char *gw_report_name(const struct gw_rating *rating);
/* What is to be asked where a mere statement shows a check to a project that takes none. */
struct gw_message gw_ask_for_report(const struct gw_ask *ask, const struct gw_check *check);

#endif
