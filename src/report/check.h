/* Parts of the page of candidates. */
#ifndef REPORT_CHECK_H
#define REPORT_CHECK_H

#include "galeward/memo.h"
#include "report/page.h"

/* Where something is so: the elements by kind, each counted once however many checks meet there, or the walls, the lite
 * types, the project. */
struct places {
    bool *seen;         /* by element; NULL: none is one */
    const char **walls; /* their names by the take-off's elevations; NULL: not there */
    long counts[GW_KIND_COUNT];
    bool zone_4, zone_5, parapet, below;
    double bottom, top;
    bool project;                /* all of it: nothing is said of the place */
    long untold;                 /* that stand in what is said */
    GW_LIST(const char *) named; /* walls, lite types */
    size_t named_capacity;
};

struct figure_range {
    double low, high;
};

/* Findings of one candidate that have one cause. */
struct cause {
    const struct gw_finding *worst;       /* where it stands itself; the gravest */
    const struct gw_message *words;       /* the worst's; NULL: none */
    GW_LIST(struct figure_range) figures; /* of the words, over all that are alike */
    GW_LIST(const char *) checks;         /* that meet it */
    size_t checks_capacity;
    struct places at; /* where it stands itself */
    unsigned *lean;   /* by element: how many of it lean on the cause; NULL: none */
    long held;        /* findings, with those that lean on it */
    bool path;        /* some are of a whole load path */
    bool project;     /* what is asked is not known of the project, whoever the candidate is */
    bool stated;      /* a gap of what names no report, besides those of reports */
    size_t number;    /* in the order of the checks */
};

/* A list of them, found again by what they have in common. */
struct causes {
    struct cause **items;
    size_t n, capacity;
    struct gw_memo known;
};

/* What one candidate's findings come to: what fails, gravest first; what to ask and what its tests do not reach, most
 * held back first. */
struct verdict_story {
    const struct gw_summary *summary;
    const struct gw_finding *findings;
    size_t n;
    struct causes fails, questions, untested;
};
/* `*at`: the candidate's first finding; moves past its last. */
void gw_story_of(struct verdict_story *out, struct page *page, const struct gw_summary *summary, size_t *at);

/* check_words.c: how they read. */
/* "A, B, C, D and 3 more" */
void gw_add_names(struct gw_text *out, const char *const *names, size_t n);
const char *gw_cause_words(struct page *page, const struct cause *cause);
/* "20 transoms (east, north) in the edge strips (zone 5) only" */
const char *gw_places_words(struct page *page, const struct places *places, bool heights);
/* "; 20 transoms (east) in zone 4 only, 3 ft to 16 ft; 43 lites lean on them"; "" */
const char *gw_where_words(struct page *page, const struct cause *cause, bool heights);
const char *gw_kinds_words(struct page *page, const struct places *places); /* "20 transoms" */
long gw_places_count(const struct places *places);
/* "Ends of transoms (transom_connection)" */
const char *gw_titled(struct page *page, const struct gw_finding *finding);
/* " at east/lite/3"; "" of the project */
const char *gw_where_text(struct page *page, const struct gw_demand *demand); /* with the mark of an opening */
const char *gw_at_text(struct page *page, const struct gw_finding *finding);
/* "" where something else than these figures fails. */
const char *gw_required_text(struct page *page, const struct gw_finding *finding);
const char *gw_provided_text(struct page *page, const struct gw_finding *finding);
const char *gw_use_text(struct page *page, const struct gw_finding *finding);

/* "air, water": the checks that meet it. */
const char *gw_checks_words(struct page *page, const struct cause *cause);
/* "Ends of transoms (transom_connection): 390 lb provided, 443.5 lb asked (capacity by L-1); 20 transoms": a failure.
 */
const char *gw_failure_words(struct page *page, const struct cause *cause);

/* check_first.c: who passes, why the others do not, what is missing. */
void gw_check_first(struct page *page, const struct verdict_story *stories, size_t n);
/* check_questions.c: the part of it that asks. */
void gw_check_questions(struct page *page, const struct verdict_story *stories, size_t n);
/* check_one.c: a candidate, merged. */
void gw_check_one(struct page *page, const struct verdict_story *story);
/* A line of the checks that the project does not ask for; of any candidate's findings. */
void gw_check_not_asked(struct page *page, const struct verdict_story *story);
/* What of its tests is to be confirmed, and what rests on a statement without a report, each once. */
struct words {
    const char **items;
    size_t n;
};
struct words gw_confirm_words(struct page *page, const struct verdict_story *story);
struct words gw_stated_words(struct page *page, const struct verdict_story *story);
/* check_rows.c: a candidate, every check and every row. */
void gw_check_rows(struct page *page, const struct verdict_story *story);

bool gw_same_check(const struct gw_demand *a, const struct gw_demand *b);
bool gw_is_of_project(const struct gw_demand *demand);
/* What of the tests is to be confirmed, each condition once. */
void gw_gather_confirmed(struct causes *out, struct page *page, const struct verdict_story *story);
/* Of each check the remark at the place nearest to its limit: it changes no verdict and must be seen first. */
void gw_check_remarks(struct page *page, const struct verdict_story *story);
/* Of the first check from the finding at `*at` on that has one; NULL: none has. Moves past it. */
const char *gw_next_remark(struct page *page, const struct verdict_story *story, size_t *at);
/* Passes that rest on a statement without a report, each once. */
void gw_gather_stated(struct causes *out, struct page *page, const struct verdict_story *story);

#endif
