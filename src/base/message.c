#include "galeward/message.h"

#include "base/trade.h"
#include "galeward/table.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static struct gw_value kept(struct gw_arena *arena, struct gw_value value)
{
    if (value.kind != GW_V_MESSAGE && value.kind != GW_V_ABROAD) return value;
    struct gw_message *copy = gw_alloc(arena, 1, sizeof *copy);
    *copy = *value.as.message;
    value.as.message = copy;
    return value;
}

struct gw_message gw_say_values(struct gw_arena *arena, const char *format, const struct gw_value *values, unsigned n)
{
    struct gw_value *copies = gw_alloc(arena, n + 1, sizeof *copies);
    for (unsigned i = 0; i < n; i++) copies[i] = kept(arena, values[i]);
    return (struct gw_message){.format = format, .values = copies, .n = n};
}

struct gw_message gw_say_both(struct gw_arena *arena, const struct gw_message *first, const char *between,
                              const struct gw_message *second)
{
    if (!gw_said(first)) return *second;
    if (!gw_said(second)) return *first;
    return GW_SAY(arena, "{}{}{}", gw_of_message(first), gw_of_text(between), gw_of_message(second));
}

/* To so many digits, and large numbers without a power of ten: 28000 Pa. */
static void add_plain(struct gw_text *out, double value, int digits)
{
    enum { PLAIN = 12 };
    const double size = fabs(value), scale = size > 0 ? pow(10, floor(log10(size)) + 1 - digits) : 0;
    const bool large = scale > 1 && isfinite(value);
    gw_text_number(out, large ? round(value / scale) * scale : value, large ? PLAIN : digits);
}

/* What `digits` of a quantity say: away from zero, toward it, to the nearest. */
static int digits_of(int digits) { return abs(digits) % GW_ROUND_DOWN; }

/* To so many digits, away from zero (below 0) or toward it (above GW_ROUND_DOWN); a figure that has no more but for the
 * last bits of a double stays. */
static double rounded(double value, int digits)
{
    const double slack = 1e-7, scale = pow(10, floor(log10(fabs(value))) + 1 - digits_of(digits));
    const double size = fabs(value) / scale;
    if (!isnormal(value) || (digits > 0 && digits < GW_ROUND_DOWN)) return value;
    return copysign((digits < 0 ? ceil(size - slack) : floor(size + slack)) * scale, value);
}

static void print_quantity(struct gw_text *out, const struct gw_value *value, enum gw_units shown)
{
    const char *unit = gw_dim_info(value->dim)->shown[shown];
    if (!value->digits) {
        gw_quantity_print(out, gw_units_standard(), value->dim, shown, value->as.number);
        return;
    }
    const double number = gw_quantity_shown(gw_units_standard(), value->dim, shown, value->as.number);
    add_plain(out, rounded(number, value->digits), digits_of(value->digits));
    if (*unit) gw_text_addf(out, " %s", unit);
}

static void print_bare(struct gw_text *out, const struct gw_value *value, enum gw_units shown)
{
    const double number = gw_quantity_shown(gw_units_standard(), value->dim, shown, value->as.number);
    if (value->digits) gw_text_number(out, rounded(number, value->digits), digits_of(value->digits));
    else gw_text_fixed(out, number, gw_dim_info(value->dim)->decimals[shown]);
}

static void print_value(struct gw_text *out, const struct gw_value *value, enum gw_units shown)
{
    switch (value->kind) {
    case GW_V_TEXT:
        gw_text_add(out, value->as.text ? value->as.text : "");
        return;
    case GW_V_COUNT:
        gw_text_addf(out, "%ld", value->as.count);
        return;
    case GW_V_NUMBER:
        gw_text_number(out, value->as.number, value->digits);
        return;
    case GW_V_QUANTITY:
        print_quantity(out, value, shown);
        return;
    case GW_V_BARE:
        print_bare(out, value, shown);
        return;
    case GW_V_TRADE:
    case GW_V_TRADE_BARE:
        gw_trade_print(out, value->dim, shown, value->as.number, value->digits, value->kind == GW_V_TRADE_BARE);
        return;
    case GW_V_ABROAD:
        if (shown == value->home) return;
        gw_message_print(out, value->as.message, shown);
        return;
    case GW_V_MESSAGE:
        gw_message_print(out, value->as.message, shown);
        return;
    }
}

void gw_message_print(struct gw_text *out, const struct gw_message *message, enum gw_units shown)
{
    unsigned next = 0;
    const char *at = message->format ? message->format : "";
    while (*at) {
        const char *slot = strstr(at, "{}");
        gw_text_bytes(out, at, slot ? (size_t)(slot - at) : strlen(at));
        if (!slot) return;
        if (next < message->n) print_value(out, &message->values[next++], shown);
        at = slot + 2;
    }
}

const char *gw_message_text(struct gw_arena *arena, const struct gw_message *message, enum gw_units shown)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_message_print(&text, message, shown);
    return text.length ? text.at : "";
}

void gw_message_shape(struct gw_text *out, const struct gw_message *message)
{
    gw_text_add(out, message->format ? message->format : "");
    for (unsigned i = 0; i < message->n; i++) {
        const struct gw_value *value = &message->values[i];
        gw_text_add(out, "|");
        if (value->kind == GW_V_TEXT) gw_text_add(out, value->as.text ? value->as.text : "");
        else if (value->kind == GW_V_MESSAGE || value->kind == GW_V_ABROAD) gw_message_shape(out, value->as.message);
    }
}

static bool same_text(const char *a, const char *b) { return a == b || (a && b && strcmp(a, b) == 0); }

/* But for the last bits: the same figure worked out along another way. */
static bool same_number(double a, double b)
{
    if (isnan(a) || isnan(b)) return isnan(a) && isnan(b);
    return fabs(a - b) <= 1e-12 * fmax(fabs(a), fabs(b));
}

static bool same_value(const struct gw_value *a, const struct gw_value *b)
{
    if (a->kind != b->kind || a->dim != b->dim || a->digits != b->digits || a->home != b->home) return false;
    switch (a->kind) {
    case GW_V_TEXT:
        return same_text(a->as.text, b->as.text);
    case GW_V_COUNT:
        return a->as.count == b->as.count;
    case GW_V_NUMBER:
    case GW_V_QUANTITY:
    case GW_V_BARE:
    case GW_V_TRADE:
    case GW_V_TRADE_BARE:
        return same_number(a->as.number, b->as.number);
    case GW_V_MESSAGE:
    case GW_V_ABROAD:
        return gw_message_same(a->as.message, b->as.message);
    }
    return false;
}

bool gw_message_same(const struct gw_message *a, const struct gw_message *b)
{
    if (!same_text(a->format, b->format) || a->n != b->n) return false;
    for (unsigned i = 0; i < a->n; i++)
        if (!same_value(&a->values[i], &b->values[i])) return false;
    return true;
}

/* Hashes ---------------------------------------------------------------------------------------------------------- */

static uint64_t mixed(uint64_t hash, uint64_t word)
{
    hash = (hash ^ word) * UINT64_C(0x9e3779b97f4a7c15);
    return hash ^ hash >> 29;
}

static uint64_t text_hash(uint64_t hash, const char *text)
{
    uint64_t word = 0;
    unsigned n = 0;
    for (; text && *text; text++) {
        word = word << 8 | (unsigned char)*text;
        if (++n % 8 == 0) hash = mixed(hash, word);
    }
    return mixed(hash, word ^ n);
}

/* Without the last bits, in which figures that are the same may differ. */
static uint64_t number_hash(uint64_t hash, double number)
{
    const float rough = isnan(number) ? -1.0F : (float)number;
    uint32_t bits;
    memcpy(&bits, &rough, sizeof bits);
    return mixed(hash, bits);
}

uint64_t gw_message_hash(const struct gw_message *message)
{
    uint64_t hash = text_hash(0, message->format);
    for (unsigned i = 0; i < message->n; i++) {
        const struct gw_value *v = &message->values[i];
        if (v->kind == GW_V_TEXT) hash = text_hash(hash, v->as.text);
        else if (v->kind == GW_V_COUNT) hash = mixed(hash, (uint64_t)v->as.count);
        else if (v->kind == GW_V_MESSAGE || v->kind == GW_V_ABROAD) hash = mixed(hash, gw_message_hash(v->as.message));
        else hash = number_hash(hash, v->as.number);
    }
    return hash;
}
