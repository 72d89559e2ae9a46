/* What recalled numbers decide: each is moved by a tenth either way, alone, and everything is computed anew. */
#ifndef GALEWARD_SENSITIVITY_H
#define GALEWARD_SENSITIVITY_H

#include "galeward/report.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Places of one check of one candidate whose verdict one moved number changes. */
struct gw_flip {
    const struct gw_row *row;
    const char *column;
    double share; /* of its value: 0.9 or 1.1, in the unit of the table */
    const char *candidate, *check;
    const char *where; /* the first: as the check itself names it, before the move */
    long count;        /* places */
    enum gw_verdict was, is;
    double was_utilization, utilization; /* of the first; absent where unknown */
};

/* A move after which the project no longer loads or is taken off. */
struct gw_unmoved {
    const struct gw_row *row;
    const char *column, *message;
    double share;
};

struct gw_sensitivity {
    const char *project;
    enum gw_units shown;
    long rows, values; /* recalled rows with numbers behind a verdict, and how many numbers were moved */
    long words;        /* recalled rows behind a verdict without a number to move */
    long unmatched;    /* findings after a move whose place before it was not found: not compared */
    GW_LIST(struct gw_flip) flips;
    GW_LIST(struct gw_unmoved) unmoved;
    size_t flips_capacity, unmoved_capacity;
};

/* Of an answer of gw_answer_check, on which the result leans: rows of basis memory that a finding rests on and the
 * project does not correct; not the numbers by which rows are found (struct gw_column). The project's files are read
 * anew for each move. `scratch` is rewound. */
void gw_find_sensitivity(struct gw_sensitivity *out, const struct gw_answer *answer, struct gw_arena *arena,
                         struct gw_arena *scratch);
struct gw_result gw_result_sensitivity(const struct gw_sensitivity *sensitivity);

#ifdef __cplusplus
}
#endif

#endif
