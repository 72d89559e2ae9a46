/* What would change a choice, as data and as a table. */
#ifndef REPORT_MARGINS_H
#define REPORT_MARGINS_H

#include "galeward/margins.h"
#include "report/page.h"

/* The list "margins" of a result, where `rows` of struct gw_margins lies: numbers in SI with their unit, words as
 * words.
 */
#define MARGINS(...)                                                                                                   \
    FIELD(gw_margins, "margins", rows, GW_T_DESCRIBED, .flags = GW_MANY,                                               \
          .help = "what would change the verdict, of the first that pass: input, of (which building), value, "         \
                  "flips_at, unit (of numbers), verdict, check, element, message",                                     \
          __VA_ARGS__)
/* Fills `rows`. */
void gw_margins_rows(struct gw_margins *margins, struct gw_arena *arena);
/* A table: the value now, where the verdict is another one, and what it is then. */
void gw_page_margins(struct page *page, const struct gw_margins *margins);

/* "fails at wind speed 131.5 mph (now 130 mph); ...": of each number the nearest value with a graver verdict, the
 * `most` (three) that move least, least first; "" without one. */
const char *gw_least_margins(struct page *page, const struct gw_margins *m, size_t most);

#endif
