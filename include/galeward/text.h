/* Text that grows, and numbers printed and read the same in every locale. */
#ifndef GALEWARD_TEXT_H
#define GALEWARD_TEXT_H

#include "galeward/arena.h"

#include <stdbool.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Always NUL-terminated once anything was added. Storage comes from the arena. */
struct gw_text {
    struct gw_arena *arena;
    char *at;
    size_t length, capacity;
};

void gw_text_init(struct gw_text *text, struct gw_arena *arena);
void gw_text_bytes(struct gw_text *text, const char *bytes, size_t length);
void gw_text_add(struct gw_text *text, const char *string);
/* As printf, but no floating-point conversions: those go through gw_text_number or gw_text_fixed. */
void gw_text_addf(struct gw_text *text, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* A whole number in digits. */
void gw_text_count(struct gw_text *text, long count);
void gw_text_repeat(struct gw_text *text, char c, size_t times);
void gw_text_number(struct gw_text *text, double value, int significant);
void gw_text_fixed(struct gw_text *text, double value, int decimals);

enum { GW_NUMBER_SIZE = 400 }; /* enough for any double printed with %f */
/* `significant` digits, shortest form, '.' as decimal point. Returns the length. */
size_t gw_print_number(char out[GW_NUMBER_SIZE], double value, int significant);
size_t gw_print_fixed(char out[GW_NUMBER_SIZE], double value, int decimals);

/* Reads a decimal number at the start of `text`, correctly rounded, whatever the locale. Returns how many bytes
 * were read; 0 where there is no number. No hexadecimal, no "inf", no "nan". Overflow gives an infinity. */
size_t gw_read_number(const char *text, size_t length, double *value);

/* The character at the start of the text: its bytes, 0 where there is no well-formed UTF-8. */
size_t gw_utf8_read(const char *text, size_t length, unsigned long *character);

/* Text that came from a file or a command line and goes to a person, on a terminal, in a table or on a page. Control
 * characters (an escape sequence begins with one), those that turn the direction of the text around them, and bytes
 * that are no UTF-8 would show something else than what is there. Each is replaced: a tab or line end by a space, the
 * rest by U+FFFD, one column each. */
void gw_text_add_safe(struct gw_text *text, const char *string, size_t length);
/* The string itself, where nothing is to be replaced. */
const char *gw_safe(struct gw_arena *arena, const char *string);
/* Bytes before the first such character, and its own; `*unsafe` 0: none. What stands in its place. */
size_t gw_safe_span(const char *text, size_t length, size_t *unsafe);
const char *gw_safe_instead(const char *unsafe);

/* Columns that the text takes on a terminal, one a code point. */
size_t gw_text_width(const char *utf8);

/* Edit distance, for "did you mean": at most `limit`, else limit + 1. */
size_t gw_edit_distance(const char *a, const char *b, size_t limit);
/* The nearest to a written word among words offered one at a time. Case does not count; a word that only begins with or
 * holds the written one is taken where none is near. */
struct gw_nearest {
    const char *written, *best, *holding;
    size_t least;
};
void gw_nearest_start(struct gw_nearest *nearest, const char *written);
void gw_nearest_offer(struct gw_nearest *nearest, const char *word);
const char *gw_nearest_word(const struct gw_nearest *nearest); /* or NULL */
/* "; did you mean 'word'?", or "" */
const char *gw_nearest_question(struct gw_arena *arena, const struct gw_nearest *nearest);

#ifdef __cplusplus
}
#endif

#endif
