/* Causes that are looked at one by one: each becomes a look at the system, and then a comment. */
#ifndef GALEWARD_REVIEW_CAUSES_H
#define GALEWARD_REVIEW_CAUSES_H

#include "review_internal.h"

/* Why the evidence of one report does not hold, or is to be remarked on. */
struct cause {
    const char *item;           /* "report_pages" */
    size_t report;              /* among the named ones */
    unsigned tests;             /* ratings that do not hold by it, by enum gw_test */
    enum out_of_use capacities; /* stated ones do not either */
    enum fact fact;             /* of one that the record now says: judged against one as the wall needs it */
    bool gone;                  /* the evidence does not hold, or is not known to: less than a remark where asked for */
    /* At which demands what it takes away counts; NULL: wherever. */
    bool (*counts)(const struct reviewing *r, const struct gw_demand *d);
    bool answered;            /* another report may answer for it: said only where something gets worse */
    bool unsaid;              /* and nothing does */
    enum gw_consequence none; /* where nothing gets worse */
    enum gw_consequence most; /* never graver: an open question is no failure */
    struct gw_message submitted, needed, basis, ask;
    struct cause_looks {
        size_t favored, voided; /* NO_PART: none */
    } offered, accepted;        /* of either system; of the accepted one where something is offered otherwise */
    struct voided out;
};
struct causes {
    struct cause *items;
    size_t n, capacity;
};
/* evidence.c: of every report. */
void gw_find_causes(struct causes *out, struct reviewing *r);
/* evidence_facts.c: what reports state of make-up, reinforcement and fastening. */
void gw_find_fact_causes(struct causes *out, struct reviewing *r, size_t report);
struct cause *gw_cause_add(struct causes *out, struct reviewing *r, const char *item, size_t report);
/* asked.c: something here asks for what it is of, or may; and what the checks come to without it. */
bool gw_cause_is_asked(const struct reviewing *r, const struct cause *c);
struct gw_message gw_without_it(struct reviewing *r, const struct cause *c, const struct gw_finding *findings,
                                const struct gw_finding *all_gone);
/* The demand takes a test alone. */
bool gw_takes_test_alone(const struct reviewing *r, const struct gw_demand *d);
/* asked.c: the rating is one of what the demand asks, whether it is high enough or not. */
bool gw_rating_answers(const struct gw_demand *d, const struct gw_rating *rating);
/* "the ratings structural, water and a stated capacity" */
const char *gw_ratings_words(struct reviewing *r, size_t report, unsigned tests);

/* unnamed.c: stated capacities that name no report, as comments; a system in which all name one but `except`. */
void gw_tell_unnamed(struct reviewing *r);
void gw_name_reports(struct reviewing *r, struct gw_system *system, const char *except);

/* substitution.c: a field of the system record that differs. */
struct substitution {
    size_t part;
    struct gw_record_differences differences;
    struct otherness other;
};
struct substitutions {
    struct substitution *items;
    size_t n;
};
void gw_find_substitutions(struct substitutions *out, struct reviewing *r);
/* Either system: the accepted one, and it with that part of the offered one. */
void gw_tell_substitution(struct reviewing *r, const struct substitution *s, const struct effect *effect,
                          const struct gw_system *accepted, const struct gw_system *offered);
/* lines_offered.c: what the part does to screw lines, said with the comment. */
void gw_lines_as_offered(struct gw_comment *c, struct reviewing *r, const char *part, const struct gw_system *accepted,
                         const struct gw_system *offered);

/* checks.c: what the checks say of the system as it is claimed. */
struct told_by {
    const struct gw_finding *claimed;
    const struct gw_finding *reported; /* with the evidence of reports that does not hold taken away */
    const struct gw_finding *named;    /* without the ratings that name no report */
};
void gw_tell_checks(struct reviewing *r, const struct told_by *by);

#endif
