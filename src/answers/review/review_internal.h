/* Shared by the files of src/answers/review only. */
#ifndef GALEWARD_REVIEW_INTERNAL_H
#define GALEWARD_REVIEW_INTERNAL_H

#include "galeward/plan.h"
#include "galeward/review.h"
#include "judge/check.h"

/* A report that something of the system names, or that is listed; how its evidence stands. */
struct named_report {
    const char *name;
    const struct gw_submitted_report *entry; /* NULL: not among the reports */
    unsigned tests;                          /* ratings that name it, by enum gw_test */
    unsigned asked;                          /* those that something here asks for, or may */
    bool capacities;                         /* stated ones do: */
    bool capacities_asked;                   /* the same of them */
    bool tested_capacities;                  /* such as a test alone shows */
    GW_LIST(const char *) stated;            /* keys of the system file */
    size_t stated_capacity;
};

/* What a report states, that ratings then record. */
enum fact { NO_FACT, MAKE_UP_FACT, REINFORCEMENT_FACT, FASTENING_FACT };

/* Evidence taken away: of each report the ratings of these tests; stated capacities besides. */
enum out_of_use { NO_CAPACITY, TESTED_CAPACITIES, EVERY_CAPACITY };
struct voided {
    unsigned *tests;             /* by named report */
    enum out_of_use *capacities; /* the same */
    bool unnamed;                /* ratings that name no report besides */
};

/* What of a system is other than in the specimens of reports that were of another system. */
struct otherness {
    uint32_t parts; /* by number */
    bool joints;    /* what water and air tests are of */
};

/* The system as it is looked at: of one base what is altered, whatever options are taken. */
struct look {
    const struct gw_system *base;
    bool facts;               /* ratings record what their reports state */
    enum fact favored;        /* but this fact, of this report, is as the wall needs it */
    size_t report;            /* among the named ones */
    const struct voided *out; /* NULL: nothing is taken away */
    struct otherness other;   /* of ratings whose report was of the accepted system */
    bool other_all;           /* of every rating, whatever its report */
    size_t part;              /* field of the system record that is the offered one's; NO_PART */
    double mullion_depth;     /* of its tube; absent: its own */
    bool named;               /* every stated capacity names a report, */
    const char *unnamed;      /* but that of this key; NULL: none */
};
#define NO_PART SIZE_MAX

/* Several looks judged at once, for one take-off. */
struct bench {
    struct gw_model model;
    const struct gw_takeoff *takeoff;
    struct gw_ask ask;
    struct gw_judgement judgement;
    const struct look *looks;
    size_t n;
};

/* What is judged as it stands somewhere: with the options that the project takes there. */
struct built {
    gw_option_set set; /* as the judged system numbers them */
    const struct gw_system *system;
};

struct reviewing {
    struct gw_review *out;
    struct gw_ask *ask; /* of the project */
    struct gw_arena *arena;
    const struct gw_submittal *submittal;
    const struct gw_system *accepted, *judged;
    const struct gw_planned *planned; /* what the project chooses for it; NULL */
    struct {
        struct built *items;
        size_t n;
    } built; /* each once */
    struct {
        const struct gw_rating **items;
        size_t n, capacity;
    } ratings; /* of those, each once */
    struct {
        struct named_report *items;
        size_t n, capacity;
    } reports;
    struct bench bench;
    struct otherness substituted; /* all that is offered otherwise than accepted */
    const char *lines_short_by;   /* the mechanism by which a substitution's screw lines fail; NULL: none does */
    bool *explained;              /* by demand: what a comment says already */
    bool *stated;                 /* by demand: a comment says that it stands on a statement */
};

/* bench.c */
struct look gw_look_of(const struct gw_system *base);
struct voided gw_nothing_voided(struct reviewing *r);
void gw_bench_judge(struct reviewing *r, struct bench *bench, const struct gw_model *model,
                    const struct gw_takeoff *takeoff, const struct look *looks, size_t n);
struct effect;
/* What it comes to where the elements that are `is_other` are as that look and take-off have them, the rest as is, and
 * what leans on them too; false: that take-off is of other elements. */
bool gw_bench_judge_partly(struct effect *out, struct reviewing *r, const struct gw_takeoff *takeoff,
                           const struct look *look, bool (*is_other)(const void *user, const struct gw_element *e),
                           const void *user);
/* By demand. */
const struct gw_finding *gw_bench_findings(const struct bench *bench, size_t look);
/* Systems with the options that the project chooses anywhere, each once, and without any: of those of `base`. */
size_t gw_options_used(struct reviewing *r, const struct gw_system *base, gw_option_set **sets);

/* `built` and `ratings` of a review whose judged system is known. */
void gw_find_built(struct reviewing *r);
const struct gw_system *gw_built_at(const struct reviewing *r, const struct gw_element *e);

/* NULL: together they make no valid system. */
const struct gw_system *gw_with_options(struct reviewing *r, const struct gw_system *base, gw_option_set set);

/* alter.c: the copy of a system that a look sees; `offered` has the same options taken. */
void gw_alter(struct reviewing *r, struct gw_system *system, const struct gw_system *offered, const struct look *look);
void gw_find_named_reports(struct reviewing *r);
size_t gw_report_index(const struct reviewing *r, const char *name); /* reports.n: none */
/* Lite types of the project that stand in a wall or an opening, whose layers are known, with their alternatives. */
struct make_ups {
    const struct gw_lite_type **items;
    size_t n;
};
struct make_ups gw_make_ups_built(struct reviewing *r);
bool gw_report_made_of(const struct reviewing *r, const struct gw_submitted_report *report,
                       const struct gw_layer *layers, size_t n);

/* alter.c: what to ask of an insert that may not fit in a tube; not said: it fits, there is none, or is not known. */
struct gw_message gw_ask_if_it_fits(struct reviewing *r, const struct gw_member_spec *spec);
/* otherness.c: adds what differs in one field of the system record. */
void gw_otherness_of(struct otherness *out, struct reviewing *r, size_t part,
                     const struct gw_record_differences *differences);
/* All that differs in that part is a number of design. */
bool gw_is_assumption(const char *part, const struct gw_record_differences *differences);
/* A report that ratings of the accepted system name: its specimen was that system. */
bool gw_report_is_accepted(const struct reviewing *r, const char *name);

/* asked.c: whether something here asks for it, or may. */
const char *gw_check_of_test(enum gw_test test);
bool gw_rating_is_asked(const struct reviewing *r, const struct gw_rating *rating);
bool gw_capacity_is_asked(const struct reviewing *r, const char *key);

/* effect.c: what gets worse from one judgement to another. */
struct effect {
    size_t n;              /* demands that do */
    enum gw_verdict worst; /* what they come to; pass: none does */
    const struct gw_finding *first;
    bool computed;          /* something that fails does so by calculation, not by a rating that is too low */
    struct gw_message said; /* not said: nothing does */
    GW_LIST(const char *) places;
    const bool *at; /* by demand */
};
void gw_effect_of(struct effect *out, struct reviewing *r, const struct gw_finding *was, const struct gw_finding *is,
                  size_t n);
/* How many elements the verdict is of; what two walls share at a corner counts with the first of them. */
size_t gw_places_of(const struct reviewing *r, const struct gw_finding *f);
/* fails, not shown, or `none` where nothing gets worse. */
enum gw_consequence gw_consequence_of(const struct effect *effect, enum gw_consequence none);
/* That comment says what happens there. */
void gw_comment_tells(struct reviewing *r, const struct effect *effect);

/* comments.c */
struct gw_comment *gw_comment_add(struct reviewing *r, const char *item, const char *subject,
                                  enum gw_consequence consequence);
void gw_comment_at(struct gw_comment *comment, const struct gw_node *node);
void gw_comment_effect(struct gw_comment *comment, const struct effect *effect);
void gw_complete_add(struct reviewing *r, const char *item, const char *subject, struct gw_message said);
void gw_confirm_add(struct reviewing *r, const char *item, const char *subject, struct gw_message said);
void gw_comments_settle(struct reviewing *r, const struct gw_previous *previous);
struct gw_message gw_layers_message(struct reviewing *r, const struct gw_layer *layers, size_t n);

/* whole.c: of comments that are settled and counted. */
void gw_dispose_of_whole(struct reviewing *r);

struct gw_past_comment;
/* answered.c: why a comment stays open although nothing is said of it; not said: what it was of is there, and sound. */
struct gw_message gw_review_unanswered(const struct reviewing *r, const struct gw_past_comment *past);

/* The parts of the review. */
void gw_review_systems(struct reviewing *r); /* substitutions, evidence, what the checks then say */
void gw_review_glass(struct reviewing *r);
void gw_review_drawings(struct reviewing *r);
void gw_review_missing(struct reviewing *r);

#endif
