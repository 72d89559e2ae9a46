/* A slope as people write it. */
#include "base/slope.h"

#include <math.h>
#include <string.h>

/* The bytes before the word; `length` where it does not stand there. */
static size_t before(const char *text, size_t length, const char *word)
{
    const size_t n = strlen(word);
    for (size_t i = 0; i + n <= length; i++)
        if (memcmp(text + i, word, n) == 0) return i;
    return length;
}

static bool quantity(double *out, struct gw_unit_list units, enum gw_dim dim, const char *text, size_t length)
{
    size_t at;
    return gw_quantity_read(units, dim, GW_UNITS_NONE, text, length, out, &at) == GW_QUANTITY_OK;
}

/* "1/4 in per ft", "20 mm per 1 m" */
static bool read_per(double *out, struct gw_unit_list units, const char *text, size_t length)
{
    static const char PER[] = " per ";
    const size_t rise = before(text, length, PER);
    double up, along;
    if (rise == length || !quantity(&up, units, GW_LENGTH, text, rise)) return false;
    const char *run = text + rise + strlen(PER);
    const size_t rest = length - rise - strlen(PER);
    const struct gw_unit *one = gw_unit_written(units, GW_LENGTH, run, rest);
    if (one) along = one->factor;
    else if (!quantity(&along, units, GW_LENGTH, run, rest)) return false;
    *out = up / along;
    return along > 0;
}

/* "1:7", "-1:20", "1 in 7" */
static bool read_one_in(double *out, struct gw_unit_list units, const char *text, size_t length)
{
    static const char *const BETWEEN[] = {":", " in "};
    for (size_t i = 0; i < sizeof BETWEEN / sizeof *BETWEEN; i++) {
        const size_t rise = before(text, length, BETWEEN[i]), begin = rise + strlen(BETWEEN[i]);
        double up, along;
        if (rise == length) continue;
        if (!quantity(&up, units, GW_RATIO, text, rise) ||
            !quantity(&along, units, GW_RATIO, text + begin, length - begin) || !(along > 0))
            return false;
        *out = up / along;
        return true;
    }
    return false;
}

bool gw_slope_read(double *out, struct gw_unit_list units, const char *text, size_t length)
{
    double angle;
    if (read_per(out, units, text, length) || read_one_in(out, units, text, length)) return true;
    if (!quantity(&angle, units, GW_ANGLE, text, length)) return false;
    *out = tan(angle);
    return true;
}
