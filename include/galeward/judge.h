/* Whether a system on offer answers what the site asks: one row a check.
 *
 * A row has two functions. demand() says what a place asks, whoever makes the wall; capacity() says what a system has
 * there. Neither knows a verdict: the judge opens the context, asks for what must be known, tries the tests, calls,
 * compares, and gathers the rows of tables that were used. A system or an element can be a copy with other numbers and
 * be judged again by gw_judge_place. */
#ifndef GALEWARD_JUDGE_H
#define GALEWARD_JUDGE_H

#include "galeward/message.h"
#include "galeward/movement.h"
#include "galeward/takeoff.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_verdict { GW_NOT_SHOWN, GW_PASS, GW_FAIL, GW_NOT_REQUIRED };
enum gw_evidence { GW_EVIDENCE_NONE, GW_BY_TEST, GW_BY_CALCULATION, GW_BY_STATEMENT };
enum gw_load_direction { GW_NO_DIRECTION, GW_INWARD, GW_OUTWARD };
const char *gw_verdict_name(enum gw_verdict verdict);                 /* "not shown" */
const char *gw_evidence_name(enum gw_evidence evidence);              /* "test" */
const char *gw_load_direction_name(enum gw_load_direction direction); /* "inward"; "" for none */
/* How grave: not required, pass, not shown, fail (0 to 3). The one order of verdicts. */
int gw_verdict_rank(enum gw_verdict verdict);

/* What stands at a place where make-ups are chosen; NULL in the ask: each lite type as the project has it. */
struct gw_chosen {
    size_t place;                            /* that is being judged */
    const size_t *place_of;                  /* by element of the take-off */
    const struct gw_lite_type *const *lites; /* by place, then by lite type of the project: what stands for it there */
    /* By elevation of the take-off, then by lite type: the heaviest that is chosen anywhere on that wall. */
    const struct gw_lite_type *const *heaviest;
};

/* What a test was compared by, at one place: its specimen against what is there. */
struct gw_compared {
    const char *what;                  /* "span" */
    enum gw_dim dim;                   /* of the two numbers */
    double tested, needed;             /* SI; absent: not recorded, or words */
    const char *tested_as, *needed_as; /* words; NULL: numbers */
    bool at_most;                      /* the specimen's is not to be greater */
    bool holds;
};
struct gw_comparisons {
    GW_LIST(struct gw_compared) list;
    size_t capacity;
    const struct gw_rating *rating; /* whose specimen it is; NULL: nothing was compared */
};

/* The context of one answer: what functions of the judge pass around. */
struct gw_plans;
struct gw_ask {
    const struct gw_model *model;
    const struct gw_takeoff *takeoff;
    struct gw_arena *arena;          /* results and what is remembered live as long as it */
    const struct gw_system *system;  /* on offer, while one is judged */
    const struct gw_plans *plans;    /* what each candidate is judged with (galeward/plan.h); NULL: as they are */
    const struct gw_chosen *choice;  /* of make-ups; NULL: the project's own */
    struct gw_reads *reads;          /* which make-ups were looked at is marked there; NULL: nobody asks */
    struct gw_trace *trace;          /* NULL: no derivation wanted */
    struct gw_comparisons *compared; /* with a derivation: what its test was compared by; NULL: not wanted */
    struct gw_engine engine;         /* opened by the judge for each call of a check; gathers the rows used */
    struct gw_judge_memory *memory;  /* what was worked out already; the judge's own */
};
void gw_ask_init(struct gw_ask *ask, const struct gw_model *model, const struct gw_takeoff *takeoff,
                 struct gw_arena *arena);

enum gw_scope { GW_PER_ELEMENT, GW_PER_WALL, GW_PER_LITE_TYPE, GW_PER_NAME, GW_PER_PROJECT };
struct gw_functions; /* the judge's own */
struct gw_check {
    const char *id, *title, *clause;
    enum gw_scope scope;
    unsigned kinds; /* per element: bits 1 << enum gw_kind */
    bool link;      /* of the load path by which calculation shows a pressure that no test reaches */
    bool path;      /* answered along the load path where no test reaches */
    bool own_glass; /* whoever the candidate is: the glass is the project's */
    const struct gw_functions *does;
};
const struct gw_check *const *gw_check_list(size_t *n);
const struct gw_check *gw_check_find(const char *id); /* or NULL */

/* One quantity that a place asks for: SI magnitude. */
struct gw_term {
    enum gw_dim dim;
    enum gw_load_direction direction;
    double value;    /* required; or the limit that the response must keep within (at_most) */
    double response; /* at_most: the response of a member whose stiffness is 1 (N m2), m; else absent */
};

/* What debris or blast asks of a lite. */
struct gw_hazard_demand {
    enum gw_missile missile;
    int wind_zone; /* GW_NO_ZONE: none */
    enum gw_bool high_velocity_zone;
    struct gw_blast_pair blast;
};

/* What the site asks where the project asks for less: verdicts go by the project. */
struct gw_below {
    double value;           /* SI, of the demand's first term */
    struct gw_message said; /* both, and where the site's comes from */
};

enum gw_demand_state { GW_ASKED, GW_NOT_ASKED, GW_NOT_KNOWN };
enum { GW_TERM_LIMIT = 4 };

/* What one check asks at one place. */
struct gw_demand {
    const struct gw_check *check;
    const char *where;                /* element id, wall, lite type or "project" */
    const struct gw_element *element; /* NULL unless the check is an element's */
    enum gw_component component;
    const struct gw_judged_wall *wall; /* NULL unless the check is a wall's */
    const char *name;                  /* of a free-form rating; NULL */
    const struct gw_lite_type *lite;   /* NULL unless the check is a lite type's */
    enum gw_demand_state state; /* not asked, not known: `message` says why, or which value is missing, whom to ask */
    GW_LIST(struct gw_term) terms;         /* at most GW_TERM_LIMIT; values that are not known are absent */
    const struct gw_term *outward;         /* the same quantity as the first, which is inward; NULL */
    bool at_most;                          /* the candidate's number must not be above it */
    double at;                             /* air: its pressure, Pa; else absent */
    bool by_report;                        /* water, air: a test is asked for, and what was in its specimen */
    struct gw_message message;             /* how it came about */
    struct gw_message summary;             /* hazards: the part of the message that places share; else not said */
    const struct gw_hazard_demand *hazard; /* NULL unless the check is debris or blast, and asked */
    const struct gw_below *below;          /* NULL: the project asks for no less than the site */
    const struct gw_required *row;         /* of the requirement set that it goes by; NULL: the site's */
    const struct gw_below *below_row;      /* NULL: the site asks for no more than the row */
    struct gw_reads reads;                 /* make-ups that it was worked out from */
    const struct gw_used *used;            /* rows of tables; never NULL */
};

/* The i-th term; one without values where there is none. */
const struct gw_term *gw_term_of(const struct gw_demand *demand, unsigned i);

/* Of further ratings, each by itself, why it does not show what the best of them does not. */
struct gw_gap {
    struct gw_message why;
    bool stated; /* it names no report */
};
struct gw_gaps {
    GW_LIST(struct gw_gap) list;
};

struct gw_finding {
    const struct gw_system *candidate;
    const struct gw_system *offered; /* with the options that are chosen there; NULL: the candidate as it is */
    const struct gw_demand *demand;
    enum gw_verdict verdict;
    enum gw_evidence evidence;
    enum gw_load_direction direction;
    double required, provided; /* SI; absent where there is none */
    enum gw_dim dim;           /* of these two */
    bool at_most;              /* the provided one is not to exceed the required one */
    bool adverse;              /* a test speaks against it, whatever calculation shows */
    bool wind_tested;          /* calculated for its weight alone: a test shows its wind */
    bool as_rated;             /* what the test of a link says, whose own verdict is by calculation: see `rated` */
    double utilization;        /* required / provided in the sense of the check; absent where unknown */
    struct gw_message message;
    struct gw_message remark;   /* what a reader must see first although it changes no verdict; not said: nothing */
    struct gw_message question; /* where `message` tells more: what alone is to be asked; not said: the message */
    struct gw_message untested; /* of a link, or what stands on links: why no test of those recorded shows it; not said:
                                   one does, or none is */
    const struct gw_gaps *gaps; /* besides `untested`: of every other rating; NULL: there is none */
    struct gw_message
        confirm; /* of a pass: what of the test is to be confirmed, which report to ask for; not said: nothing */
    const struct gw_finding *rated; /* a rating that covers and is too low, though something else decides; NULL */
    const struct gw_finding *link;  /* the link of the load path that governs, where one does; NULL */
    long lean;                      /* how many of the elements here lean on that link */
    long share;                     /* of the elements here those that its verdict is of, where not all are; 0: all */
    /* Of lites that `share` counts: which of the element's pieces, a bit each in the order of its places; of the others
     * those that are not shown, where the verdict fails. NULL: all are of the verdict. */
    const uint64_t *pieces, *open;
    const struct gw_used *used; /* never NULL */
};
/* The verdict of such a piece, from 0. */
enum gw_verdict gw_verdict_of_piece(const struct gw_finding *finding, size_t piece);

struct gw_summary {
    const struct gw_system *candidate;
    long counts[4];                     /* by enum gw_verdict */
    enum gw_verdict verdict;            /* fail if any fails; else not shown if any is, or `held` is said; else pass */
    struct gw_message held;             /* what holds it back where no finding does; not said: nothing */
    const struct gw_finding *governing; /* of the worst verdict, the greatest utilization; NULL */
};

struct gw_judgement {
    GW_LIST(struct gw_demand) demands;
    size_t demands_capacity;
    GW_LIST(struct gw_finding) findings; /* by candidate, then by demand */
    GW_LIST(struct gw_summary) summaries;
};

/* Every row over every place. */
void gw_judge_demands(struct gw_judgement *out, struct gw_ask *ask);
/* The demands, then every candidate, with what the ask's plans choose, against each. */
void gw_judge(struct gw_judgement *out, struct gw_ask *ask);
/* The same where nothing leans on anything: the findings that gw_judge_leaning is then given, changed or not. */
void gw_judge_apart(struct gw_judgement *out, struct gw_ask *ask);
/* What the findings of one candidate, by demand, come to where elements lean on others. `chosen`: make-ups of its plan;
 * NULL: the project's own. The findings stay where they are. */
void gw_judge_leaning(struct gw_finding *findings, size_t n, struct gw_ask *ask, const struct gw_chosen *chosen);
/* One check at one element for one system, either of which may be a copy with other numbers; a candidate of the ask's
 * plans is taken with what is chosen there. The caller keeps `demand` as long as the finding. With `ask->trace` set,
 * with the derivation of both sides. */
void gw_judge_element(struct gw_finding *out, struct gw_demand *demand, struct gw_ask *ask,
                      const struct gw_check *check, const struct gw_element *element, const struct gw_system *system);
/* The same by calculation alone, whatever the ratings are; the check has limits. */
void gw_judge_limits(struct gw_finding *out, struct gw_demand *demand, struct gw_ask *ask, const struct gw_check *check,
                     const struct gw_element *element, const struct gw_system *system);

/* Limits of a check by calculation, each weighed by itself: for whoever shows all of them. */
struct gw_weighed {
    struct gw_message message; /* which limit it is; where nothing is provided what to ask */
    enum gw_dim dim;
    double required, provided; /* SI; absent: not known */
    enum gw_verdict verdict;
};
enum { GW_WEIGHED = 8 };
struct gw_weighed_limits {
    struct gw_weighed items[GW_WEIGHED];
    unsigned n;
    enum gw_verdict verdict; /* where there are none */
    struct gw_message message;
};
/* The check has limits. */
void gw_weigh_limits(struct gw_weighed_limits *out, struct gw_ask *ask, const struct gw_check *check,
                     const struct gw_element *element, const struct gw_system *system);

/* How the joints between pieces of mullion move on one wall, as they are designed: at the worst of them, of a wall
 * without joints as if its longest piece met another. */
struct gw_judged_joint {
    struct gw_mullion_joint joint; /* `at` absent: the wall has none */
    struct gw_movement_item items[GW_JOINT_ITEMS];
    size_t n;
    struct gw_movement_result moves; /* with what the system keeps closed and engaged */
    struct gw_weighed_limits limits; /* of its width, then of its engagement */
    struct gw_message fault;         /* not said; else why there are no figures */
};
void gw_judge_joint(struct gw_judged_joint *out, struct gw_ask *ask, const struct gw_wall_grid *grid,
                    const struct gw_system *system);

/* How far framing that holds glass may bend: by which rule, from where, and what the project says besides. */
struct gw_message gw_framing_rule(const struct gw_model *model, struct gw_arena *arena);

/* The line of mullions that an element is a stretch of, under the loads that bend it most, allowable-stress level. */
struct gw_judged_line {
    const struct gw_system *system;
    struct gw_mullion_beam line;
    struct gw_beam_result result;
    enum gw_load_direction direction;
    double bottom;             /* m above ground, of the beam's x = 0 */
    bool stiff;                /* the member's stiffness is known; else deflections are of no use */
    struct gw_message unknown; /* why it is not */
    double cap;                /* m, of the project, on every deflection limit; absent: none */
    struct gw_message fault;   /* not said; else why there is no line */
};
void gw_judge_line(struct gw_judged_line *out, struct gw_ask *ask, const struct gw_element *element,
                   const struct gw_system *system);

/* The lite of an element as it is judged, and the verdict of the climatic state that governs. */
struct gw_glass_judged {
    struct gw_lite lite; /* in the state of the gas that uses its strength most */
    struct gw_lite_demand demand;
    struct gw_lite_verdict verdict; /* in that state */
    struct gw_lite_result bent;     /* the load and the state that bend it most */
    int bent_load;                  /* that load, of the demand */
};
/* `type` is the element's lite type. The rows used are in the engine; it needs GW_PLATE_WORKSPACE. */
enum gw_status gw_judge_glass(struct gw_glass_judged *out, const struct gw_model *model,
                              const struct gw_element *element, const struct gw_lite_type *type,
                              struct gw_engine *engine);
/* The lite of a finding of blast under what is asked of it, whatever a test shows: the pairs that break it. Without a
 * curve `fault` says why: no glass is known, an insulating unit, a strength beyond the plate's solution. */
struct gw_judged_blast {
    const struct gw_element *element;
    const struct gw_lite_type *type; /* with what is chosen there; NULL: not known */
    const struct gw_rating *rating;  /* of blast with both its numbers, that comes nearest to the demand; NULL: none */
    const struct gw_blast_curve *curve; /* NULL: none */
    struct gw_blast_response response;
    struct gw_blast_pair demand, least, breaking; /* least and breaking absent without a curve */
    struct gw_message fault;
};
void gw_judge_blast(struct gw_judged_blast *out, struct gw_ask *ask, const struct gw_finding *finding);

/* Pieces counted once: an element's count, or 0 where another element tells the same pieces and is named first. What
 * the roof line cuts counts with the part below; what two walls share at a corner, of mullions and of anchors at one
 * level, with the wall that the project names first. Screws along a vertical that the roof line cuts are parted with
 * it. */
long gw_pieces_once(const struct gw_takeoff *takeoff, const struct gw_element *element);
/* The other elements that tell the same pieces; how many there are. */
#define GW_SAME_PIECES 3
size_t gw_same_pieces(const struct gw_element *others[GW_SAME_PIECES], const struct gw_takeoff *takeoff,
                      const struct gw_element *element);

/* Of two findings the graver one by verdict, then by utilization; NULL is graver than nothing. */
bool gw_graver(const struct gw_finding *a, const struct gw_finding *b);
/* The link on which a finding leans, where its failure or its pass is what governs and the finding has no figures of
 * its own: its figures and its derivation are those that decide; else the finding itself. NULL of NULL. */
const struct gw_finding *gw_deciding(const struct gw_finding *finding);

#ifdef __cplusplus
}
#endif

#endif
