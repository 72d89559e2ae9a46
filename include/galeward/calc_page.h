/* What one case of 'calc' answered, for people: a page, or a row of a spreadsheet. JSON (galeward/calc.h) is for
 * programs. Figures have four digits: what a person designs to is rounded to the safe side, the rest to the nearest. */
#ifndef GALEWARD_CALC_PAGE_H
#define GALEWARD_CALC_PAGE_H

#include "galeward/report.h"

#ifdef __cplusplus
extern "C" {
#endif

/* A result without data. Its page holds the results that there are, their units, the notes and the steps, or what was
 * wrong with the case; its table a line: `id`, every result, `notes`, `error`, in US units rounded with the unit in the
 * heading, in SI exact under the keys of JSON; a list's items stand in one cell, with "; " between. The headings come
 * with the `first` of several cases. `answer` must outlive it. */
struct gw_result gw_result_calc(struct gw_arena *arena, const struct gw_calc_kind *kind,
                                const struct gw_calc_answer *answer, bool first, enum gw_units shown);
/* "outside_method: height: ..." of an answer with an error. */
const char *gw_calc_error_text(struct gw_arena *arena, const struct gw_calc_answer *answer);

#ifdef __cplusplus
}
#endif

#endif
