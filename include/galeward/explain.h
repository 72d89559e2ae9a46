/* Everything behind one element: how its pressure came about, its glass, and every link of every candidate there. */
#ifndef GALEWARD_EXPLAIN_H
#define GALEWARD_EXPLAIN_H

#include "galeward/judge.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The glass of a lite under the load that governs it. */
struct gw_explained_glass {
    enum gw_status status; /* not GW_OK: the engine's fault says where the computation stops */
    struct gw_glass_judged judged;
    struct gw_lite_result result;
    struct gw_trace trace;
    struct gw_engine engine; /* the rows used, the fault */
    const struct gw_lite_type *type;
    const struct gw_system *candidate; /* for which this make-up is chosen; NULL: the project's own */
};

/* A check of one candidate at the element, with its derivation. Where a test answers and the check can be calculated,
 * the calculation stands beside it: it does not change the verdict. */
struct gw_explained_link {
    struct gw_finding finding;
    struct gw_trace trace;
    struct gw_comparisons compared; /* what the best of its tests was compared by; empty: none was */
    struct gw_finding *calculated;  /* NULL: the finding is the calculation, or there is none */
    struct gw_trace calculation;
    /* Of what stands on links: those on its path that no test of the candidate shows, of the judgement. */
    GW_LIST(const struct gw_finding *) untested;
    size_t untested_capacity;
};

struct gw_explanation {
    const struct gw_element *element;
    GW_LIST(const struct gw_judged_line *) lines; /* of a mullion, by candidate */
    enum gw_status status;                        /* of the pressure's derivation */
    struct gw_trace trace;
    const struct gw_explained_glass *glass; /* NULL: no lite whose make-up is known */
    GW_LIST(struct gw_explained_link) links;
    size_t links_capacity;
    struct gw_used used; /* rows behind all of it */
};

/* The derivation behind one figure of a report, told beside it as D1, D2 ... */
struct gw_derivation {
    const struct gw_finding *finding; /* whose steps they are; NULL: of a pressure */
    const struct gw_element *element;
    const struct gw_explanation *of;
    const struct gw_explained_link *link; /* of the finding's check and candidate; NULL: of a pressure */
};
struct gw_derivations {
    GW_LIST(struct gw_derivation) list;
};
/* Of an answer: the lite with the greatest pressure outward, and what decides each candidate (gw_deciding)
 * where an element does, then the link on which that leans. */
void gw_find_derivations(struct gw_derivations *out, struct gw_ask *ask, const struct gw_takeoff *takeoff,
                         const struct gw_judgement *judgement);

/* `judgement` holds the findings of the candidates, or none. Everything lives in the arena of `ask`. */
void gw_explain(struct gw_explanation *out, struct gw_ask *ask, const struct gw_judgement *judgement,
                const struct gw_element *element);

#ifdef __cplusplus
}
#endif

#endif
