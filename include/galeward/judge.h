/* The check registry, and what it says about each candidate.
 *
 * One row a check; 'demand' and 'check' both iterate the rows. A row without an engine says so: "not built yet" is not
 * shown, "not checked here" names whom to ask. */
#ifndef GALEWARD_JUDGE_H
#define GALEWARD_JUDGE_H

#include "galeward/takeoff.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_verdict { GW_NOT_SHOWN, GW_PASS, GW_FAIL, GW_NOT_REQUIRED };
enum gw_evidence { GW_EVIDENCE_NONE, GW_BY_TEST, GW_BY_CALCULATION, GW_BY_STATEMENT };
const char *gw_verdict_name(enum gw_verdict verdict);    /* "not shown" */
const char *gw_evidence_name(enum gw_evidence evidence); /* "test" */

/* What a calculation shows, the same for every candidate. */
struct gw_calculated {
    enum gw_verdict verdict;
    const char *direction;
    double required, provided, utilisation;
    const char *message;
};

/* What debris or blast asks of a lite. */
struct gw_hazard_demand {
    enum gw_missile missile;
    int wind_zone; /* GW_NO_ZONE: none */
    enum gw_bool high_velocity_zone;
    struct gw_blast_pair blast;
};

/* What one check asks at one place. */
struct gw_demand {
    const char *check, *title, *clause;
    const char *where;                /* element id, wall, or "project" */
    const struct gw_element *element; /* NULL unless the check is an element's */
    enum gw_component component;
    const char *name; /* of a free-form rating */
    enum gw_verdict
        status; /* GW_NOT_REQUIRED, GW_NOT_SHOWN (message: which value is missing, whom to ask), else GW_PASS: known */
    double value,
        value_out; /* SI; structural: inward and outward, magnitudes, allowable-stress level; else value only */
    double at;     /* air: its pressure */
    bool at_most;  /* the candidate's number must not be above it */
    enum gw_dim dim;
    const char *message;                    /* how it came about */
    const struct gw_calculated *calculated; /* NULL: ratings answer it */
    const struct gw_lite_type *lite;        /* NULL unless the check is a lite type's */
    const struct gw_hazard_demand *hazard;  /* NULL unless the check is debris or blast, and required */
    const char *summary;                    /* hazards: the part of the message that places share; NULL otherwise */
    struct gw_used used;
};

struct gw_finding {
    const struct gw_system *candidate;
    const struct gw_demand *demand;
    enum gw_verdict verdict;
    enum gw_evidence evidence;
    const char *direction;     /* "inward", "outward" or "" */
    double required, provided; /* SI; absent where there is none */
    enum gw_dim dim;           /* of these two */
    bool at_most;              /* the provided one is not to exceed the required one */
    double utilisation;        /* required / provided in the sense of the check; absent where unknown */
    const char *message;
    struct gw_used used;
};

struct gw_summary {
    const struct gw_system *candidate;
    long counts[4];                     /* by enum gw_verdict */
    enum gw_verdict verdict;            /* fail if any fails; else not shown if any is; else pass */
    const struct gw_finding *governing; /* of the worst verdict, the greatest utilisation; NULL */
};

/* What an anchor hands to the structure: wind both ways at both levels, N, magnitudes, and the wall that hangs on it.
 * At an outside corner: of each face. */
struct gw_reaction {
    const struct gw_element *element;
    double inward, outward;                   /* allowable-stress level */
    double inward_strength, outward_strength; /* strength level */
    double area;       /* m2, the longest piece of mullion times the width carried: for the dead load */
    bool cut;          /* with the part above the roof line */
    const char *fault; /* NULL; else why the reactions are absent */
};

/* What the wind asks of a mullion or a transom, allowable-stress level, whoever makes it. */
struct gw_member_demand {
    const struct gw_element *element;
    double moment, shear;    /* Nm, N, largest magnitudes */
    double deflection_limit; /* m */
    double inertia;          /* m4, needed of aluminum for that limit */
};

/* How far a candidate goes in a zone by calculation, at the pressures of the worst element there; absent: not known, or
 * not at all. Whoever buys by a test goes no further than the test. */
struct gw_reach {
    const struct gw_system *candidate;
    int zone;
    double span, at_width;       /* m, of a mullion that carries that width, simple span */
    double width, at_span;       /* m, that a mullion of that span can carry */
    double spacing, screw_width; /* m, of screws that carry that width */
};

struct gw_judgement {
    GW_LIST(struct gw_demand) demands;
    size_t demands_capacity;
    GW_LIST(struct gw_reaction) reactions;    /* of every group of anchors */
    GW_LIST(struct gw_member_demand) members; /* of every group of mullions and transoms */
    GW_LIST(struct gw_reach) reaches;
    struct gw_sequence mock_up;          /* tests of a laboratory mock-up, in their order */
    const char *mock_up_fault;           /* NULL; else why there is no sequence */
    GW_LIST(struct gw_finding) findings; /* by candidate, then by demand */
    GW_LIST(struct gw_summary) summaries;
};

/* A thing the program does not compute, printed with every result. */
struct gw_not_checked {
    const char *what, *ask;
};
const struct gw_not_checked *gw_not_checked_list(size_t *n, const struct gw_model *model);

/* The lite of an element as it is judged, and the verdict of the climatic state that governs. */
struct gw_glass_judged {
    struct gw_lite lite; /* in the state of the gas that uses its strength most */
    struct gw_lite_demand demand;
    struct gw_lite_verdict verdict; /* in that state */
    struct gw_lite_result bent;     /* the load and the state that bend it most */
    int bent_load;                  /* that load, of the demand */
    struct gw_used used;            /* the rows that all of it rests on */
};
/* `type` is the element's lite type. The rows used are in the engine; it needs GW_PLATE_WORKSPACE. */
enum gw_status gw_judge_glass(struct gw_glass_judged *out, const struct gw_model *model,
                              const struct gw_element *element, const struct gw_lite_type *type,
                              struct gw_engine *engine);

void gw_judge_demands(struct gw_judgement *out, const struct gw_model *model, const struct gw_takeoff *takeoff);
/* One link of the chain at one element for one candidate, with its derivation. False: the check is no link of such an
 * element. */
bool gw_judge_derive(struct gw_finding *out, const struct gw_model *model, const struct gw_takeoff *takeoff,
                     const struct gw_judgement *judgement, const struct gw_finding *finding, struct gw_trace *trace);
/* Demands, then every candidate against each. */
void gw_judge(struct gw_judgement *out, const struct gw_model *model, const struct gw_takeoff *takeoff);

#ifdef __cplusplus
}
#endif

#endif
