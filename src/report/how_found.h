/* Of figures whose steps the page itself has not: the command that prints them, and who gives the others. */
#ifndef REPORT_HOW_FOUND_H
#define REPORT_HOW_FOUND_H

#include "report/page.h"

/* Where the steps of a figure are: "D2", of the same check at the same place; with a link on which it leans "D2 and D3,
 * of east/mullion/21, on which it leans"; else "explain east/lite/1"; NULL: nothing is worked out. */
const char *gw_steps_of(struct page *page, const struct gw_finding *finding);
/* "D2, D3": all of a candidate's that the report has; NULL: none. */
const char *gw_derivations_of(struct page *page, const struct gw_system *candidate);
/* "galeward explain projects/clinic.yaml east/lite/1"; NULL: "... ELEMENT". */
const char *gw_explain_command(struct page *page, const struct gw_element *element);
/* Under a table of a page that is filed, a line: the command for `example`, of the table (NULL: none), then `rest`: who
 * gives what is not worked out. */
void gw_page_how_found(struct page *page, const struct gw_element *example, const char *rest);
/* The same under a table of plans. */
void gw_page_how_planned(struct page *page);

#endif
