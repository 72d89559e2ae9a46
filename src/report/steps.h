/* Steps of a derivation as a page puts them down. */
#ifndef REPORT_STEPS_H
#define REPORT_STEPS_H

#include "report/page.h"

/* Those that lead to its results, or all where all are wanted; numbered from `number` + 1 on. Returns the last. */
size_t gw_put_steps(struct page *page, const struct gw_trace *trace, size_t number);

#endif
