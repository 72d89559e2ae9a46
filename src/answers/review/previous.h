/* Comments of an earlier result, as they stand in it. */
#ifndef GALEWARD_REVIEW_PREVIOUS_H
#define GALEWARD_REVIEW_PREVIOUS_H

#include "galeward/review.h"

struct gw_past_comment {
    int number;
    const char *item, *subject, *where, *submitted, *needed, *basis;
    enum gw_consequence consequence;
    enum gw_disposition disposition;
    enum gw_evidence evidence;
    bool closed;
    GW_LIST(const char *) places;
};
struct gw_previous {
    const char *file;
    struct gw_past_comment *items;
    size_t n;
};

#endif
