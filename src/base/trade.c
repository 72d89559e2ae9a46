#include "base/trade.h"

#include "galeward/message.h"
#include "galeward/table.h"
#include "galeward/text.h"

#include <math.h>
#include <stdlib.h>

enum { THIRTY_SECONDS = 32, SIXTEENTHS = 16, HALVES = 2, DIGITS = 3, EXACT_DIGITS = 4 };
static const double SAME = 1e-6; /* relative: what a unit's conversion leaves */

static bool is_whole(double value) { return fabs(value - round(value)) <= SAME * fmax(fabs(value), 1); }

/* "1 7/16" where it is a whole number of such parts; false: it is not. */
static bool put_fraction(struct gw_text *out, double value, int parts)
{
    const double limit = 1e6;
    if (!is_whole(value * parts) || !(fabs(value) < limit)) return false;
    long n = lround(fabs(value) * parts), of = parts;
    while (of > 1 && n % 2 == 0) {
        n /= 2;
        of /= 2;
    }
    if (value < 0 && n) gw_text_add(out, "-");
    if (n / of || !(n % of)) gw_text_addf(out, "%ld", n / of);
    if (n % of) gw_text_addf(out, "%s%ld/%ld", n / of ? " " : "", n % of, of);
    return true;
}

static double to_side(double value, double scale, int side)
{
    const double steps = value / scale, whole = round(steps);
    if (side == 0 || fabs(steps - whole) <= SAME * fmax(fabs(steps), 1)) return whole * scale;
    return (side > 0 ? ceil(steps) : floor(steps)) * scale;
}

static void put_digits(struct gw_text *out, double value, int side)
{
    const double size = fabs(value);
    const int before = size > 0 && isfinite(size) ? (int)floor(log10(size)) + 1 : 1;
    const double four = pow(10, fmin(before - EXACT_DIGITS, 0)), three = pow(10, fmin(before - DIGITS, 0));
    const bool exact = is_whole(value / four);
    const int room = before > EXACT_DIGITS ? before : EXACT_DIGITS;
    gw_text_number(out, isfinite(value) ? to_side(value, exact ? four : three, exact ? 0 : side) : value, room);
}

static void put_slope(struct gw_text *out, enum gw_units shown, double slope, int side)
{
    const double inches = 12;
    if (shown == GW_US) {
        if (!put_fraction(out, slope * inches, SIXTEENTHS)) put_digits(out, slope * inches, side);
        gw_text_add(out, " in per ft");
        return;
    }
    if (slope == 0) {
        gw_text_add(out, "0");
        return;
    }
    gw_text_add(out, slope < 0 ? "-1:" : "1:");
    put_digits(out, 1 / fabs(slope), slope < 0 ? side : -side);
}

/* What a tape reads on that side: thirty-seconds of an inch, halves of a millimeter. False: that leaves nothing. */
static bool put_by_tape(struct gw_text *out, enum gw_units shown, double value, int side)
{
    const double parts = shown == GW_US ? THIRTY_SECONDS : HALVES;
    const double whole = to_side(value, 1 / parts, side);
    if (!(fabs(whole) > 0)) return false;
    if (shown == GW_US) return put_fraction(out, whole, THIRTY_SECONDS);
    put_digits(out, whole, 0);
    return true;
}

void gw_trade_print(struct gw_text *out, enum gw_dim dim, enum gw_units shown, double si, int side, bool bare)
{
    const double value = gw_quantity_shown(gw_units_standard(), dim, shown, si);
    const char *unit = gw_dim_info(dim)->shown[shown];
    if (dim == GW_SLOPE) {
        put_slope(out, shown, si, (side > 0) - (side < 0));
        return;
    }
    const bool inches = shown == GW_US && dim == GW_THICKNESS, tape = dim == GW_THICKNESS && abs(side) == GW_BY_TAPE;
    const int way = (side > 0) - (side < 0);
    if (!(inches && put_fraction(out, value, THIRTY_SECONDS)) && !(tape && put_by_tape(out, shown, value, way)))
        put_digits(out, value, way);
    if (!bare && *unit) gw_text_addf(out, " %s", unit);
}
