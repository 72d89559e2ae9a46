/* Parts of the page of candidates. */
#ifndef REPORT_CHECK_H
#define REPORT_CHECK_H

#include "report/page.h"

/* A finding that fails or is not shown, with the place of its group in reading order; merged, a line of them. */
struct trouble {
    const struct gw_finding *finding; /* of a line, the worst */
    size_t check, wall, index;
    const char *why; /* its message, as it is read */
    long count;      /* elements of a line, and their extent */
    double bottom, top;
};
/* Of one candidate. Sorts them. */
void gw_page_troubles(struct page *page, struct trouble *troubles, size_t n);

#endif
