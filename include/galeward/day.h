/* Days of the calendar, as files write them: 2026-09-14. */
#ifndef GALEWARD_DAY_H
#define GALEWARD_DAY_H

#include <stdbool.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Days since 1970-01-01 (proleptic Gregorian); false: the text is no such day. */
bool gw_day_read(long *day, const char *text);

/* Whole years of the calendar from one day to a later one, and the days beyond them; of a 29th of February the year is
 * over on the first of March. False: a text is no day, or `to` is before `from`. */
bool gw_day_years(long *years, long *days, const char *from, const char *to);

#ifdef __cplusplus
}
#endif

#endif
