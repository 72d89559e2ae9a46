/* What would change a choice, as data and as a table. */
#ifndef REPORT_MARGINS_H
#define REPORT_MARGINS_H

#include "galeward/margins.h"
#include "report/page.h"

/* The list "margins" of a result: numbers in SI with their unit, words as words. Fills `rows`. */
extern const struct gw_field gw_margins_field; /* of struct gw_margins */
void gw_margins_rows(struct gw_margins *margins, struct gw_arena *arena);
/* A table: the value now, where the verdict is another one, and what it is then. */
void gw_page_margins(struct page *page, const struct gw_margins *margins);

#endif
