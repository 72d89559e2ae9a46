/* What a price assumes: sentences that are pasted into a bid. */
#ifndef REPORT_QUALIFICATIONS_H
#define REPORT_QUALIFICATIONS_H

#include "report/page.h"

/* Numbers go on: those of the whole bid first, then each candidate's from the next number on, so that the first list
 * and that of one candidate are one. */
struct gw_qualification {
    int number;
    const struct gw_system *candidate; /* NULL: of the whole bid */
    const char *kind, *text;           /* "assumed"; a sentence */
};
struct gw_qualifications {
    const struct gw_results *results;
    GW_LIST(struct gw_qualification) items;
    size_t capacity;
};

void gw_qualify(struct gw_qualifications *out, struct gw_arena *arena, const struct gw_results *results);

#endif
