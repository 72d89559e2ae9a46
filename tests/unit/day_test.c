/* Days of the calendar. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "galeward/day.h"

static long of(const char *text)
{
    long day = -1;
    assert_true(gw_day_read(&day, text));
    return day;
}

/* Published: POSIX counts 946684800 s from 1970 to 2000-01-01, 10957 days; the others by the calendar's rule. */
static void test_days(void **state)
{
    (void)state;
    assert_int_equal(of("1970-01-01"), 0);
    assert_int_equal(of("2000-01-01"), 10957);
    assert_int_equal(of("2000-03-01") - of("2000-02-28"), 2);
    assert_int_equal(of("2100-03-01") - of("2100-02-28"), 1);
    assert_int_equal(of("2026-09-14") - of("2025-09-14"), 365);
}

static void test_no_days(void **state)
{
    static const char *const none[] = {"",          "2026-9-14",   "2026-02-29", "2026-13-01",
                                       "14/9/2026", "2026-09-14 ", "2026-00-10"};
    long day;
    (void)state;
    for (size_t i = 0; i < sizeof none / sizeof *none; i++) assert_false(gw_day_read(&day, none[i]));
}

/* By hand; 2012, 2016, 2020 and 2024 are leap years, 2100 is none. */
static void years_go_by_the_calendar(void **state)
{
    static const struct {
        const char *from, *to;
        long years, days;
    } cases[] = {{"2016-09-14", "2026-09-14", 10, 0},  {"2016-09-14", "2026-09-13", 9, 364},
                 {"2016-09-14", "2026-09-15", 10, 1},  {"2026-09-14", "2026-09-14", 0, 0},
                 {"2016-02-29", "2026-02-28", 9, 364}, {"2016-02-29", "2026-03-01", 10, 0},
                 {"2016-02-29", "2020-02-29", 4, 0},   {"2099-12-31", "2100-12-31", 1, 0}};
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        long years, days;
        assert_true(gw_day_years(&years, &days, cases[i].from, cases[i].to));
        assert_int_equal(years, cases[i].years);
        assert_int_equal(days, cases[i].days);
    }
    long years, days;
    assert_false(gw_day_years(&years, &days, "2026-09-14", "2026-09-13"));
    assert_false(gw_day_years(&years, &days, "2026-09-14", "soon"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_days), cmocka_unit_test(test_no_days),
                                       cmocka_unit_test(years_go_by_the_calendar)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
