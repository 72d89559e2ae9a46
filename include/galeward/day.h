/* Days of the calendar, as files write them: 2026-09-14. */
#ifndef GALEWARD_DAY_H
#define GALEWARD_DAY_H

#include <stdbool.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Days since 1970-01-01 (proleptic Gregorian); false: the text is no such day. */
bool gw_day_read(long *day, const char *text);

#ifdef __cplusplus
}
#endif

#endif
