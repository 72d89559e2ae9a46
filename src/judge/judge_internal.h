/* Shared by the files of src/judge only; the checks see check.h and what.h files they name. */
#ifndef GALEWARD_JUDGE_INTERNAL_H
#define GALEWARD_JUDGE_INTERNAL_H

#include "galeward/memo.h"
#include "galeward/plan.h"
#include "judge/check.h"

struct gw_leaning;

/* What an answer has worked out already. */
struct gw_judge_memory {
    struct gw_memo sets; /* of rows used */
    struct gw_judged_wall *walls;
    size_t n_walls, walls_capacity;
    void *workspace;      /* of the plate solver, once one was needed */
    struct gw_memo glass; /* lites by make-up, size, pressures */
    struct gw_line_memory *lines;
    const struct gw_leaning **leaning; /* by element, as far as worked out */
    struct gw_memo chains;             /* of pieces of mullion, by the lines of the wall */
    bool *placed_types;                /* by elevation and lite type */
    struct gw_memo members;            /* by what their strength hangs on */
    struct gw_memo blasts;             /* by lite type and size */
    struct gw_memo specimens;          /* what a specimen felt, by its record */
    struct gw_memo fastened;           /* groups of screws at other spacings */
    struct gw_memo lines_read;         /* systems with screws as they were read */
    struct gw_memo links_read;         /* findings by check, element and such a system */
    struct gw_memo suctions;           /* the same of the check of screws, by calculation alone */
    double *drifts;                    /* by row of the requirement set: the site's greatest; absent: not found yet */
};

/* context.c: around each call of a check. */
void gw_ask_open(struct gw_ask *ask);
/* The rows used since, with those of `more` (may be NULL); equal sets are one. */
const struct gw_used *gw_ask_close(struct gw_ask *ask, const struct gw_used *more);

/* demands.c */
void gw_demand_clear(struct gw_demand *out, const struct gw_check *check, const struct gw_place *place);
void gw_judge_demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_check *check,
                     const struct gw_place *place);
void gw_find_demands(struct gw_judgement *out, struct gw_ask *ask);
/* What demands per wall are worked out at: each wall once for every component that it has. */
const struct gw_judged_wall *gw_judged_walls(struct gw_ask *ask, size_t *n);
/* judge.c: what a candidate's findings come to; `too_low`: given pressures that govern are. */
void gw_summarize(struct gw_summary *summary, const struct gw_finding *findings, size_t n, bool too_low);
/* plan.c: every demand by what a plan chooses there, before anything leans on anything. */
void gw_find_by_plan(struct gw_finding *findings, const struct gw_judgement *demands, struct gw_ask *ask,
                     const struct gw_plan *plan, struct gw_offers *offers, struct gw_chosen *chosen);
/* fastened.c: a demand of screws for the spacing of the system, where the wall has none of its own. */
void gw_fasten(struct gw_finding *finding, struct gw_ask *ask);
/* altered.c: an option made the part another than the one that was tested, so that its tests are of something else; or
 * it is another than in the specimen of this rating. */
bool gw_is_altered(struct gw_ask *ask, const struct gw_demand *demand, const struct gw_rating *rating);
/* compare.c: one demand that is asked and known, one system. */
void gw_find(struct gw_finding *finding, struct gw_ask *ask);
/* The same by the row's limits alone, whatever the ratings are. */
void gw_find_by_limits(struct gw_finding *finding, struct gw_ask *ask);
void gw_find_each_limit(struct gw_weighed_limits *out, const struct gw_finding *finding, struct gw_ask *ask);
/* path.c: what no test reaches is shown by calculation where every link of its wall is. `findings` are one candidate's,
 * by demand, and stay where they are; the links of an element's path are found by an index made of them. */
struct gw_paths;
const struct gw_paths *gw_paths_of(const struct gw_finding *findings, size_t n, struct gw_ask *ask);
void gw_judge_paths(struct gw_finding *findings, size_t n, struct gw_ask *ask, const struct gw_paths *paths);
/* Which of the findings are links that this one's element leans on. */
void gw_path_visit(const struct gw_paths *paths, struct gw_ask *ask, const struct gw_finding *finding,
                   void (*visit)(void *user, size_t index), void *user);

#endif
