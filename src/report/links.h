/* Where words of a page lead: "D2" to the derivation of that number. One rule for every format that has links. */
#ifndef REPORT_LINKS_H
#define REPORT_LINKS_H

#include "galeward/report.h"

/* Of a heading "D2 Plover 60: ...": 2; else 0. */
long gw_derivation_number(const struct gw_block *block);
/* D1, D2 ... that a page has. */
long gw_count_derivations(const struct gw_report *report);

/* A name of a derivation in words: bytes from `at` up to `end`. */
struct gw_reference {
    size_t at, end;
    long number;
};
/* The first at `from` or after it that the page has; false: none. */
bool gw_next_reference(struct gw_reference *out, const char *text, size_t from, long derivations);

#endif
