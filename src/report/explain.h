/* An explanation as it is written. */
#ifndef REPORT_EXPLAIN_H
#define REPORT_EXPLAIN_H

#include "galeward/explain.h"
#include "galeward/report.h"

/* The explanation, with the remarks of every result and the rows that it rests on. */
struct explained {
    const struct gw_results *results;
    const struct gw_explanation *of;
    GW_LIST(const struct gw_row *) rows;
    const char *make_up; /* of the glass, in the units shown; NULL */
    struct gw_pictures pictures;
};
extern const struct gw_record gw_row_record;

#endif
