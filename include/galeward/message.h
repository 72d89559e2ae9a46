/* A sentence that is worded only when somebody reads it: a format and typed values.
 *
 * "{}" in the format stands for the next value. Quantities are kept in SI with their dimension and printed in the
 * reader's units, so one result serves every reader; nothing is ever recovered from the printed text. A message that
 * was never said has no format and prints nothing. */
#ifndef GALEWARD_MESSAGE_H
#define GALEWARD_MESSAGE_H

#include "galeward/units.h"

#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

struct gw_message;

enum gw_value_kind {
    GW_V_TEXT,
    GW_V_COUNT,
    GW_V_NUMBER,
    GW_V_QUANTITY,
    GW_V_MESSAGE,
    GW_V_ABROAD,
    GW_V_BARE,
    GW_V_TRADE,
    GW_V_TRADE_BARE
};

struct gw_value {
    enum gw_value_kind kind;
    enum gw_dim dim;    /* quantities */
    int digits;         /* significant ones; of a quantity below 0: so many, rounded up, GW_ROUND_DOWN and so many:
                           rounded down; 0: the decimals that its dimension has; as the trade says it: what is not exact is
                           rounded up (1), down (-1) or to the         nearest (0) */
    enum gw_units home; /* of GW_V_ABROAD: who needs it not */
    union {
        const char *text;
        long count;
        double number; /* numbers, quantities: SI */
        const struct gw_message *message;
    } as;
};

struct gw_message {
    const char *format; /* NULL: nothing was said */
    const struct gw_value *values;
    unsigned n;
};

/* Plain assignments, so that the header serves C++ as well. */
static inline struct gw_value gw_value_of(enum gw_value_kind kind, enum gw_dim dim, int digits)
{
    struct gw_value value;
    value.kind = kind;
    value.dim = dim;
    value.digits = digits;
    value.home = GW_UNITS_NONE;
    value.as.text = NULL;
    return value;
}
static inline struct gw_value gw_of_text(const char *text)
{
    struct gw_value value = gw_value_of(GW_V_TEXT, GW_RATIO, 0);
    value.as.text = text;
    return value;
}
static inline struct gw_value gw_of_count(long count)
{
    struct gw_value value = gw_value_of(GW_V_COUNT, GW_RATIO, 0);
    value.as.count = count;
    return value;
}
static inline struct gw_value gw_of_number(double number, int digits)
{
    struct gw_value value = gw_value_of(GW_V_NUMBER, GW_RATIO, digits);
    value.as.number = number;
    return value;
}
/* Four digits: "12.5 ft". */
static inline struct gw_value gw_of_quantity(enum gw_dim dim, double si)
{
    struct gw_value value = gw_value_of(GW_V_QUANTITY, dim, 4);
    value.as.number = si;
    return value;
}
/* A demand: four digits, rounded up as on every page. */
static inline struct gw_value gw_of_demand(enum gw_dim dim, double si)
{
    struct gw_value value = gw_of_quantity(dim, si);
    value.digits = -value.digits;
    return value;
}
/* A capacity, what a test shows: four digits, rounded down. */
enum { GW_ROUND_DOWN = 32 };
static inline struct gw_value gw_of_capacity(enum gw_dim dim, double si)
{
    struct gw_value value = gw_of_quantity(dim, si);
    value.digits += GW_ROUND_DOWN;
    return value;
}
/* As tables print it: "12.50 ft". */
static inline struct gw_value gw_of_shown(enum gw_dim dim, double si)
{
    struct gw_value value = gw_value_of(GW_V_QUANTITY, dim, 0);
    value.as.number = si;
    return value;
}
/* As the trade says it: "1 7/16 in", a slope as "1/4 in per ft", in SI "1:48"; other figures to three digits,
 * or four where they are exact. `side`: what is not exact is rounded up (1: a limit that is not to be below), down
 * (-1), or to the nearest (0); a thickness of GW_BY_TAPE times these to what a tape reads, where that leaves anything.
 */
enum { GW_BY_TAPE = 2 };
static inline struct gw_value gw_of_trade(enum gw_dim dim, double si, int side)
{
    struct gw_value value = gw_value_of(GW_V_TRADE, dim, side);
    value.as.number = si;
    return value;
}
/* A quantity without its unit, beside another one of the same. */
static inline struct gw_value gw_of_bare(struct gw_value quantity)
{
    quantity.kind = quantity.kind == GW_V_TRADE ? GW_V_TRADE_BARE : GW_V_BARE;
    return quantity;
}
/* `message` itself must outlive the message that holds it; gw_say copies what it is given one level deep. */
static inline struct gw_value gw_of_message(const struct gw_message *message)
{
    struct gw_value value = gw_value_of(GW_V_MESSAGE, GW_RATIO, 0);
    value.as.message = message;
    return value;
}
/* For readers of other units than `home` alone: what the words before it say in those, as a standard wrote them. */
static inline struct gw_value gw_of_abroad(enum gw_units home, const struct gw_message *message)
{
    struct gw_value value = gw_value_of(GW_V_ABROAD, GW_RATIO, 0);
    value.home = home;
    value.as.message = message;
    return value;
}

/* A constant sentence, without values. */
#define GW_PLAINLY(sentence) ((struct gw_message){.format = (sentence)})
static inline bool gw_said(const struct gw_message *message) { return message->format != NULL; }

/* Values, and the messages among them, are copied into the arena; format and texts must outlive it. */
struct gw_message gw_say_values(struct gw_arena *arena, const char *format, const struct gw_value *values, unsigned n);
/* GW_SAY(arena, "tested {} {}, here {}", gw_of_text(name), gw_of_quantity(GW_LENGTH, a), ...) */
#define GW_SAY(arena, format, ...)                                                                                     \
    gw_say_values(arena, format, (const struct gw_value[]){__VA_ARGS__},                                               \
                  sizeof((const struct gw_value[]){__VA_ARGS__}) / sizeof(struct gw_value))

/* One message after the other, with `between` where both said something. */
struct gw_message gw_say_both(struct gw_arena *arena, const struct gw_message *first, const char *between,
                              const struct gw_message *second);

void gw_message_print(struct gw_text *out, const struct gw_message *message, enum gw_units shown);
/* The same as a string of the arena; "" where nothing was said. */
const char *gw_message_text(struct gw_arena *arena, const struct gw_message *message, enum gw_units shown);
/* What alike messages share: words, without the figures. A key to group them by, not for readers. */
void gw_message_shape(struct gw_text *out, const struct gw_message *message);
/* Whether two messages say the same: the same words and values. */
bool gw_message_same(const struct gw_message *a, const struct gw_message *b);
uint64_t gw_message_hash(const struct gw_message *message); /* equal for such as are the same, but for rare figures */

#ifdef __cplusplus
}
#endif

#endif
