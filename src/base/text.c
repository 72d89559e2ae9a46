#include "galeward/text.h"

#include <float.h>
#include <locale.h>
#include <math.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Grown where it stands, while nothing else is asked of the arena. */
enum { FIRST_ROOM = 32 };

void gw_text_init(struct gw_text *text, struct gw_arena *arena)
{
    *text = (struct gw_text){.arena = arena, .at = gw_alloc(arena, FIRST_ROOM, 1), .capacity = FIRST_ROOM};
}

static void reserve(struct gw_text *text, size_t more)
{
    size_t needed = text->length + more + 1;
    if (needed <= text->capacity) return;
    size_t capacity = text->capacity;
    while (capacity < needed) capacity *= 2;
    if (gw_extend(text->arena, text->at, text->capacity, capacity)) {
        text->capacity = capacity;
        return;
    }
    char *moved = gw_alloc_bare(text->arena, capacity);
    memcpy(moved, text->at, text->length);
    text->at = moved;
    text->capacity = capacity;
}

void gw_text_bytes(struct gw_text *text, const char *bytes, size_t length)
{
    reserve(text, length);
    memcpy(text->at + text->length, bytes, length);
    text->length += length;
    text->at[text->length] = '\0';
}

void gw_text_add(struct gw_text *text, const char *string) { gw_text_bytes(text, string, strlen(string)); }

void gw_text_addf(struct gw_text *text, const char *format, ...)
{
    char usual[128]; /* most fit at the first try */
    va_list args, again;
    va_start(args, format);
    va_copy(again, args);
    const int length = vsnprintf(usual, sizeof usual, format, args);
    va_end(args);
    if (length > 0 && (size_t)length < sizeof usual) gw_text_bytes(text, usual, (size_t)length);
    else if (length > 0) {
        reserve(text, (size_t)length);
        vsnprintf(text->at + text->length, (size_t)length + 1, format, again);
        text->length += (size_t)length;
    }
    va_end(again);
}

void gw_text_count(struct gw_text *text, long count)
{
    char digits[24], *at = digits + sizeof digits;
    unsigned long rest = count < 0 ? 0 - (unsigned long)count : (unsigned long)count;
    do *--at = (char)('0' + rest % 10);
    while (rest /= 10);
    if (count < 0) *--at = '-';
    gw_text_bytes(text, at, (size_t)(digits + sizeof digits - at));
}

void gw_text_repeat(struct gw_text *text, char c, size_t times)
{
    reserve(text, times);
    memset(text->at + text->length, c, times);
    text->length += times;
    text->at[text->length] = '\0';
}

/* Whatever the host's locale put between the digits becomes a point. */
static size_t with_point(char *out, int printed)
{
    size_t length = printed < 0 ? 0 : (size_t)printed;
    const char *point = localeconv()->decimal_point;
    size_t width = strlen(point);
    if (width == 1 && point[0] == '.') return length;
    char *found = strstr(out, point);
    if (!found) return length;
    *found = '.';
    memmove(found + 1, found + width, length - (size_t)(found - out) - width + 1);
    return length - width + 1;
}

#if LDBL_MANT_DIG >= 64
/* `digits` decimal digits with the point after the first `whole`; trailing zeros of the fraction are left out. */
static size_t put_digits(char *out, uint64_t number, int digits, int whole)
{
    char text[24];
    size_t n = 0;
    const uint32_t half = 1000000; /* 32-bit divisions are the cheap ones */
    uint32_t low = (uint32_t)(number % half), high = (uint32_t)(number / half);
    for (int i = digits; i-- > 0;) {
        uint32_t *part = digits - i > 6 ? &high : &low;
        text[i] = (char)('0' + *part % 10);
        *part /= 10;
    }
    while (digits > whole && digits > 1 && text[digits - 1] == '0') digits--;
    if (whole <= 0) {
        out[n++] = '0';
        out[n++] = '.';
        for (int i = whole; i < 0; i++) out[n++] = '0';
    }
    for (int i = 0; i < digits; i++) {
        if (i == whole && i) out[n++] = '.';
        out[n++] = text[i];
    }
    out[n] = '\0';
    return n;
}

/* What printf prints, for the usual sizes: the digits are those of value x 10^k, an exact power of ten, in 64 bits.
 * Where the product lies too near a tie to be sure of the last digit, 0: the C library decides. */
static size_t print_quick(char *out, double value, int significant)
{
    static const long double powers[] = {1e0L, 1e1L,  1e2L,  1e3L,  1e4L,  1e5L,  1e6L,  1e7L, 1e8L,
                                         1e9L, 1e10L, 1e11L, 1e12L, 1e13L, 1e14L, 1e15L, 1e16L};
    static const double steps[] = {1e-2, 1e-1, 1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};
    double size = fabs(value);
    if (!(size >= 1e-3 && size < 1e9) || significant < 1 || significant > 12) return 0;
    int whole = -2; /* digits before the point; negative: zeros after it */
    while (size >= steps[whole + 2]) whole++;
    int shift = significant - whole;
    if (shift < 0 || shift > 16) return 0;
    long double scaled = (long double)size * powers[shift];
    uint64_t number = (uint64_t)scaled;
    long double part = scaled - (long double)number;
    const long double unsure = 1e-5L;
    if (part > 0.5L - unsure && part < 0.5L + unsure) return 0;
    if (part > 0.5L) number++;
    if (number >= (uint64_t)powers[significant] || number < (uint64_t)powers[significant - 1]) return 0;
    size_t sign = value < 0;
    if (sign) out[0] = '-';
    return sign + put_digits(out + sign, number, significant, whole);
}
#else
static size_t print_quick(char *out, double value, int significant)
{
    (void)out, (void)value, (void)significant;
    return 0;
}
#endif

size_t gw_print_number(char out[GW_NUMBER_SIZE], double value, int significant)
{
    if (value == 0) {
        memcpy(out, "0", 2); /* no "-0" */
        return 1;
    }
    size_t quick = print_quick(out, value, significant);
    if (quick) return quick;
    return with_point(out, snprintf(out, GW_NUMBER_SIZE, "%.*g", significant, value));
}

size_t gw_print_fixed(char out[GW_NUMBER_SIZE], double value, int decimals)
{
    size_t length = with_point(out, snprintf(out, GW_NUMBER_SIZE, "%.*f", decimals, value));
    if (out[0] != '-' || strspn(out, "-0.") != length) return length;
    memmove(out, out + 1, length); /* no "-0.00" */
    return length - 1;
}

void gw_text_number(struct gw_text *text, double value, int significant)
{
    char out[GW_NUMBER_SIZE];
    gw_text_bytes(text, out, gw_print_number(out, value, significant));
}

void gw_text_fixed(struct gw_text *text, double value, int decimals)
{
    char out[GW_NUMBER_SIZE];
    gw_text_bytes(text, out, gw_print_fixed(out, value, decimals));
}

static bool is_digit(char c) { return c >= '0' && c <= '9'; }

static size_t digits_at(const char *text, size_t length, size_t from)
{
    size_t i = from;
    while (i < length && is_digit(text[i])) i++;
    return i - from;
}

/* Length of [+-]digits[.digits][e[+-]digits] at the start of the text; 0 for none. */
static size_t number_span(const char *text, size_t length)
{
    size_t i = 0;
    if (i < length && (text[i] == '-' || text[i] == '+')) i++;
    size_t whole = digits_at(text, length, i), fraction = 0;
    i += whole;
    if (i < length && text[i] == '.') {
        fraction = digits_at(text, length, i + 1);
        if (whole + fraction) i += 1 + fraction;
    }
    if (whole + fraction == 0) return 0;
    if (i < length && (text[i] == 'e' || text[i] == 'E')) {
        size_t e = i + 1;
        if (e < length && (text[e] == '-' || text[e] == '+')) e++;
        size_t power = digits_at(text, length, e);
        if (power) i = e + power;
    }
    return i;
}

/* Up to 15 digits and a power of ten up to 22 are exact in double arithmetic, which is nearly every number that a
 * person writes; the C library, locale and all, is only needed for the rest. */
static bool read_exact(const char *text, size_t span, double *value)
{
    static const double powers[] = {1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10};
    uint64_t mantissa = 0;
    size_t i = (text[0] == '-' || text[0] == '+'), digits = 0, decimals = 0;
    bool after_point = false;
    for (; i < span; i++) {
        if (text[i] == '.') {
            after_point = true;
            continue;
        }
        if (!is_digit(text[i]) || ++digits > 15) return false;
        mantissa = mantissa * 10 + (uint64_t)(text[i] - '0');
        decimals += after_point;
    }
    if (decimals > 10) return false;
    *value = (double)mantissa / powers[decimals];
    if (text[0] == '-') *value = -*value;
    return true;
}

/* The exponent as written, held where sums of it and of any file's digits stay in range. */
static long written_exponent(const char *text, size_t length)
{
    const long most = 1000000000;
    long exponent = 0;
    size_t i = length > 0 && (text[0] == '-' || text[0] == '+');
    for (; i < length; i++)
        if (exponent < most) exponent = exponent * 10 + (text[i] - '0');
    return length > 0 && text[0] == '-' ? -exponent : exponent;
}

/* For strtod as a whole number and an exponent, so that no locale's point is needed. No more than 767 digits decide how
 * a double is rounded, and then whether anything but zeros follows. */
static double read_long(const char *text, size_t span)
{
    enum { DECIDING = 800 };
    char copy[DECIDING + 32];
    size_t n = 0, i = 0, digits = 0;
    long exponent = 0;
    bool after_point = false, more = false;
    if (text[0] == '-' || text[0] == '+') copy[n++] = text[i++];
    for (; i < span && text[i] != 'e' && text[i] != 'E'; i++) {
        if (text[i] == '.') {
            after_point = true;
        } else if (digits < DECIDING) {
            digits += digits || text[i] != '0';
            if (digits) copy[n++] = text[i];
            exponent -= after_point;
        } else {
            more = more || text[i] != '0';
            exponent += !after_point;
        }
    }
    if (!digits) copy[n++] = '0';
    if (more) copy[n++] = '1', exponent--;
    if (i < span) exponent += written_exponent(text + i + 1, span - i - 1);
    snprintf(copy + n, sizeof copy - n, "e%ld", exponent);
    return strtod(copy, NULL);
}

size_t gw_read_number(const char *text, size_t length, double *value)
{
    size_t span = number_span(text, length);
    if (span && !read_exact(text, span, value)) *value = read_long(text, span);
    return span;
}

size_t gw_text_width(const char *utf8)
{
    size_t width = 0;
    for (; *utf8; utf8++) width += ((unsigned char)*utf8 & 0xC0) != 0x80;
    return width;
}

static size_t min3(size_t a, size_t b, size_t c)
{
    size_t least = a < b ? a : b;
    return least < c ? least : c;
}

size_t gw_edit_distance(const char *a, const char *b, size_t limit)
{
    enum { LONGEST = 63 };
    size_t na = strlen(a), nb = strlen(b);
    if (na > LONGEST || nb > LONGEST) return limit + 1;
    size_t row[LONGEST + 1];
    for (size_t j = 0; j <= nb; j++) row[j] = j;
    for (size_t i = 1; i <= na; i++) {
        size_t diagonal = row[0];
        row[0] = i;
        for (size_t j = 1; j <= nb; j++) {
            size_t above = row[j];
            size_t differs =
                a[i - 1] != b[j - 1]; // NOLINT(clang-analyzer-core.UndefinedBinaryOperatorResult): inside both
            row[j] = min3(above + 1, row[j - 1] + 1, diagonal + differs);
            diagonal = above;
        }
    }
    return row[nb] < limit + 1 ? row[nb] : limit + 1;
}

void gw_nearest_start(struct gw_nearest *nearest, const char *written)
{
    enum { SHORT = 5 }; /* in so few letters two others make another word */
    const size_t length = strlen(written);
    *nearest = (struct gw_nearest){.written = written, .least = length <= SHORT ? 2 : length / 3 + 2};
}

static void lower(char *out, size_t size, const char *text)
{
    size_t i = 0;
    for (; text[i] && i + 1 < size; i++)
        out[i] = (char)(text[i] >= 'A' && text[i] <= 'Z' ? text[i] + ('a' - 'A') : text[i]);
    out[i] = '\0';
}

/* "6005-T5" and "6105-T5" are two things. */
static bool same_digits(const char *a, const char *b)
{
    for (;; a++, b++) {
        a += strcspn(a, "0123456789");
        b += strcspn(b, "0123456789");
        if (*a != *b) return false;
        if (!*a) return true;
    }
}

/* "mian", "main": one slip of the fingers. */
static bool is_swapped(const char *a, const char *b)
{
    while (*a && *a == *b) a++, b++;
    return a[0] && a[1] && b[0] && a[0] == b[1] && a[1] == b[0] && strcmp(a + 2, b + 2) == 0;
}

static bool has_digit(const char *text) { return text[strcspn(text, "0123456789")] != '\0'; }

void gw_nearest_offer(struct gw_nearest *nearest, const char *word)
{
    enum { LONG = 100, PREFIX = 2, PART = 4 };
    char a[LONG], b[LONG];
    lower(a, sizeof a, nearest->written);
    lower(b, sizeof b, word);
    size_t distance = is_swapped(a, b) ? 1 : gw_edit_distance(a, b, nearest->least), length = strlen(a);
    const bool other_number = has_digit(a) && has_digit(b) && !same_digits(a, b);
    bool near = distance < nearest->least && !other_number && (distance == 0 || distance < strlen(b));
    const char *inside = strstr(b, a);
    bool holds = inside && length >= (inside == b ? PREFIX : PART);
    if (near) nearest->least = distance;
    if (near) nearest->best = word;
    if (holds && !nearest->holding) nearest->holding = word;
}

const char *gw_nearest_word(const struct gw_nearest *nearest)
{
    return nearest->best ? nearest->best : nearest->holding;
}

const char *gw_nearest_question(struct gw_arena *arena, const struct gw_nearest *nearest)
{
    const char *word = gw_nearest_word(nearest);
    return word ? gw_format(arena, "; did you mean '%s'?", word) : "";
}
