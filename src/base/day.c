#include "galeward/day.h"

#include <ctype.h>
#include <string.h>

/* Of exactly n digits; below zero: they are none. */
static int digits(const char *text, int n)
{
    int value = 0;
    for (int i = 0; i < n; i++) {
        if (!isdigit((unsigned char)text[i])) return -1;
        value = value * 10 + (text[i] - '0');
    }
    return value;
}

static bool is_leap(int year) { return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0; }

static int days_in(int year, int month)
{
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return days[month - 1] + (month == 2 && is_leap(year));
}

/* Before the first of January of that year, from the year 1. */
static long days_before(int year)
{
    const long full = year - 1;
    return full * 365 + full / 4 - full / 100 + full / 400;
}

bool gw_day_read(long *day, const char *text)
{
    enum { LENGTH = 10, EPOCH = 1970, MONTH_AT = 5, DAY_AT = 8, MONTHS = 12 };
    if (strlen(text) != LENGTH || text[4] != '-' || text[7] != '-') return false;
    const int year = digits(text, 4), month = digits(text + MONTH_AT, 2), of_month = digits(text + DAY_AT, 2);
    if (year < 1 || month < 1 || month > MONTHS || of_month < 1 || of_month > days_in(year, month)) return false;
    *day = days_before(year) - days_before(EPOCH) + of_month - 1;
    for (int m = 1; m < month; m++) *day += days_in(year, m);
    return true;
}

/* A day that the month has not is the one after its last. */
static long anniversary(const char *from, long years)
{
    enum { LENGTH = 10 };
    const int year = digits(from, 4) + (int)years;
    const bool moved = strcmp(from + 4, "-02-29") == 0 && !is_leap(year);
    char text[LENGTH + 1] = {(char)('0' + year / 1000 % 10), (char)('0' + year / 100 % 10),
                             (char)('0' + year / 10 % 10), (char)('0' + year % 10)};
    long day = 0;
    memcpy(text + 4, moved ? "-03-01" : from + 4, LENGTH - 4);
    gw_day_read(&day, text);
    return day;
}

bool gw_day_years(long *years, long *days, const char *from, const char *to)
{
    long first, last;
    if (!gw_day_read(&first, from) || !gw_day_read(&last, to) || last < first) return false;
    *years = digits(to, 4) - digits(from, 4);
    if (anniversary(from, *years) > last) --*years;
    *days = last - anniversary(from, *years);
    return true;
}
