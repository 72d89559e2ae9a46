/* The review of a submittal: each claim against what is asked, what was accepted, the evidence, the project's glass and
 * the drawings' dimensions, as numbered comments. Rules: docs/methods.md, "Submittals".
 *
 * Nothing here decides: a comment says what was submitted, what is needed, why, what the difference does when the
 * checks are run again with it, and how the trade would answer. The reviewer's own decisions stand in the project. */
#ifndef GALEWARD_REVIEW_H
#define GALEWARD_REVIEW_H

#include "galeward/answers.h"
#include "galeward/inspect.h"
#include "galeward/report.h"
#include "galeward/submittal.h"

#ifdef __cplusplus
extern "C" {
#endif

/* In the order in which comments stand. */
enum gw_consequence { GW_IT_FAILS, GW_IT_IS_NOT_SHOWN, GW_IT_DIFFERS, GW_A_REMARK, GW_CONSEQUENCES };
const char *gw_consequence_name(enum gw_consequence consequence); /* "not shown" */

enum gw_comment_status {
    GW_COMMENT_NEW,
    GW_COMMENT_OPEN,    /* it stood in the previous result */
    GW_COMMENT_CLOSED,  /* the same, and nothing says it now */
    GW_COMMENT_ACCEPTED /* by a decision in the project */
};
const char *gw_comment_status_name(enum gw_comment_status status);

/* One cause. Who it is: `item` and `subject`, by which its number persists. */
struct gw_comment {
    int number;
    const char *item;    /* "screw_spacing", "report_pages", "mullion", "water" ... */
    const char *subject; /* report, glass mark, part of the system, or wall and zone */
    struct gw_message where, submitted, needed, basis;
    struct gw_message effect; /* what the checks come to with it; not said: nothing changes, or nothing to run */
    struct gw_message ask;    /* what to ask; not said */
    enum gw_consequence consequence;
    enum gw_disposition disposition;
    enum gw_evidence evidence; /* that the claim rests on */
    enum gw_comment_status status;
    GW_LIST(const char *) places;       /* of what repeats over places; empty: one */
    const char *file;                   /* where it stands in the submittal, or in what that names */
    unsigned line, column;              /* 0: nowhere in particular */
    const struct gw_decision *decision; /* NULL: none */
    bool stood;                         /* in the previous result */
};

/* What is complete and raises no comment. */
struct gw_complete {
    const char *item, *subject;
    struct gw_message said;
};

struct gw_previous; /* comments of an earlier result */
struct gw_review {
    const struct gw_submittal *submittal;
    const struct gw_answer *answer;
    const struct gw_system *judged;      /* what is offered; NULL: no system is known */
    struct gw_summary as_claimed;        /* of it, if every report held */
    struct gw_summary as_evidenced;      /* with what does not hold taken away */
    GW_LIST(struct gw_comment) comments; /* by consequence, then number; closed ones last */
    size_t capacity;
    GW_LIST(struct gw_complete) complete;
    size_t complete_capacity;
    GW_LIST(struct gw_complete) confirm; /* questions that change no verdict: by check and wall */
    size_t confirm_capacity;
    long counts[GW_CONSEQUENCES]; /* of comments that are not closed */
    /* Of the whole: the gravest of those, as decided where the project decides, and of which comments it is. */
    enum gw_disposition disposition;
    struct gw_message because;
    const char *previous; /* the result that they are compared with; NULL */
};

/* `answer` holds the demands of the project (gw_answer_demand). `scratch` may be NULL. */
void gw_review_submittal(struct gw_review *out, struct gw_ask *ask, const struct gw_answer *answer,
                         const struct gw_submittal *submittal, const struct gw_previous *previous);
/* The comments of a result that 'review' wrote of that project and submittal, of no later revision, as JSON; NULL after
 * a diagnostic, which holds no word of the text. */
const struct gw_previous *gw_review_previous(struct gw_arena *arena, const struct gw_source *source,
                                             const char *project, const struct gw_submittal_head *now,
                                             struct gw_diags *diags);
struct gw_reviewed {
    const struct gw_results *results;
    const struct gw_review *review;
};
struct gw_result gw_result_review(struct gw_arena *arena, const struct gw_reviewed *reviewed);
/* What 'review' writes as data. */
extern const struct gw_record gw_review_record;
/* The gravest consequence of a comment that is not closed; GW_CONSEQUENCES: there is none. */
enum gw_consequence gw_review_worst(const struct gw_review *review);

#ifdef __cplusplus
}
#endif

#endif
