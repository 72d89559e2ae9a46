/* The answers: what a person asks of a project, one struct each, described by records for every format.
 *
 * Each stands on what the judge asks and finds; none computes physics of its own. */
#ifndef GALEWARD_ANSWERS_H
#define GALEWARD_ANSWERS_H

#include "galeward/judge.h"

#ifdef __cplusplus
extern "C" {
#endif

/* What an anchor hands to the structure: wind both ways at both levels, N, magnitudes, and the wall that hangs on it.
 * At an outside corner: of each face. */
struct gw_reaction {
    const struct gw_element *element;
    double inward, outward;                   /* allowable-stress level */
    double inward_strength, outward_strength; /* strength level */
    double area;             /* m2, the piece that hangs on it times the width carried: for the dead load; 0: slotted */
    bool cut;                /* with the part above the roof line */
    const char *shared_with; /* at a corner: the same anchors, told of the wall that meets this one; NULL */
    struct gw_message fault; /* not said; else why the reactions are absent */
};

/* What the wind asks of a mullion or a transom, allowable-stress level, whoever makes it. */
struct gw_member_demand {
    const struct gw_element *element;
    double moment, shear;    /* Nm, N, largest magnitudes */
    double deflection_limit; /* m */
    double inertia;          /* m4, needed of aluminum for that limit */
    const char *shared_with; /* the same mullions, told of the other face; NULL: of this one alone */
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

/* What is missing to show something: each question once. */
struct gw_request {
    const struct gw_system *candidate;
    const struct gw_finding *first; /* the first finding that asks it; NULL: of given pressures that are too low */
    const char *where;              /* its place; of pressures the element where they are lowest by comparison */
    struct gw_message question;
    long places; /* how many ask it */
};

/* A thing the program does not compute, printed with every result. */
struct gw_not_checked {
    const char *what, *ask;
    bool applies; /* to this project for certain: it may govern */
};

/* A requirement of the project, or of its requirement set, that asks for less than the site: a warning, and seen first.
 */
struct gw_below_site {
    struct gw_message said;
    const struct gw_required *row; /* of the set; NULL: the project's own */
    const struct gw_node *node;    /* where it is required */
};

/* A test with specimens of its own, or apart from the mock-up's sequence. */
struct gw_test_apart {
    const char *title, *method;
    struct gw_message asked;
};

struct gw_answer {
    const struct gw_model *model;
    const struct gw_takeoff *takeoff;
    const struct gw_plans *plans;             /* what candidates were judged with; NULL: as they are */
    struct gw_judgement judgement;            /* 'demand': findings and summaries are empty */
    GW_LIST(struct gw_reaction) reactions;    /* of every group of anchors */
    GW_LIST(struct gw_member_demand) members; /* of every group of mullions and transoms */
    GW_LIST(struct gw_reach) reaches;
    GW_LIST(struct gw_request) missing; /* by candidate: pressures, then in the order of the checks */
    struct gw_sequence mock_up;         /* tests of a laboratory mock-up, in their order */
    struct gw_message mock_up_fault;    /* not said; else why there is no sequence */
    struct gw_message racking_fault;    /* not said; else why it lacks the racking that is asked for */
    GW_LIST(struct gw_test_apart) apart;
    double above_roof_inward, above_roof_outward; /* Pa, magnitudes, of lites that the mock-up leaves out; 0: none */
    GW_LIST(struct gw_not_checked) not_checked;
    GW_LIST(struct gw_below_site) below_site; /* each is a warning too */
};

/* What the site asks of every element, and what any system must bring. */
void gw_answer_demand(struct gw_answer *out, struct gw_ask *ask);
/* The same, then what each candidate answers, and how far it goes. */
void gw_answer_check(struct gw_answer *out, struct gw_ask *ask);

/* Its parts, each into an empty list. */
void gw_find_reactions(struct gw_answer *out, struct gw_ask *ask);
void gw_find_member_demands(struct gw_answer *out, struct gw_ask *ask);
void gw_find_missing(struct gw_answer *out, struct gw_ask *ask);
void gw_find_reaches(struct gw_answer *out, struct gw_ask *ask);
void gw_find_mock_up(struct gw_answer *out, struct gw_ask *ask);
void gw_find_tests_apart(struct gw_answer *out, struct gw_ask *ask);
void gw_find_below_site(struct gw_answer *out, struct gw_ask *ask);
/* The same of the rows of a requirement set, after those of the project. */
void gw_find_below_rows(struct gw_answer *out, struct gw_ask *ask, size_t *capacity);
/* The set asks for less than the site somewhere, and the project does not say who accepts that. */
bool gw_below_unaccepted(const struct gw_answer *answer);
void gw_list_not_checked(struct gw_answer *out, struct gw_ask *ask);

#ifdef __cplusplus
}
#endif

#endif
