/* What 'check --vary' found: the worst pressures and each candidate's verdict for every combination of some values. */
#ifndef GALEWARD_VARIATIONS_H
#define GALEWARD_VARIATIONS_H

#include "galeward/report.h"

#ifdef __cplusplus
extern "C" {
#endif

/* One candidate in one combination. */
struct gw_varied_summary {
    const char *candidate;
    enum gw_verdict verdict;
    double utilization; /* of the governing check; absent: none */
    const double *uses; /* the greatest by check, in the order of gw_check_list; absent: none; NULL: not computed */
};

struct gw_variation {
    const char **settings; /* value of each variable */
    bool computed;
    const char *message;                             /* why not */
    double inward, outward, inward_asd, outward_asd; /* Pa, worst of all elements; absent where not computed */
    GW_LIST(struct gw_varied_summary) summaries;     /* not shown where not computed */
    struct gw_described by_path;                     /* the settings as a record; gw_result_variations fills it */
};

struct gw_variable {
    const char *key, *path; /* as the user named it; in full */
};

struct gw_variations {
    const char *project;
    GW_LIST(struct gw_variable) variables;
    GW_LIST(struct gw_variation) variations;
    enum gw_units shown;
};

struct gw_result gw_result_variations(struct gw_arena *arena, struct gw_variations *variations);

#ifdef __cplusplus
}
#endif

#endif
