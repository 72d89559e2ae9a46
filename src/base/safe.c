/* UTF-8, and which of its characters may go out as they came. */
#include "galeward/text.h"

#include <string.h>

/* Bytes of the UTF-8 sequence that a lead byte opens; 0 where it opens none. */
static size_t sequence_length(unsigned char lead)
{
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead < 0xE0) return 2;
    if (lead >= 0xE0 && lead < 0xF0) return 3;
    return lead >= 0xF0 && lead < 0xF5 ? 4 : 0;
}

/* Shortest form only, no surrogates, not beyond U+10FFFF. */
static bool second_byte_fits(unsigned char lead, unsigned char second)
{
    if (lead == 0xE0) return second >= 0xA0;
    if (lead == 0xED) return second <= 0x9F;
    if (lead == 0xF0) return second >= 0x90;
    return lead != 0xF4 || second <= 0x8F;
}

size_t gw_utf8_read(const char *text, size_t length, unsigned long *character)
{
    static const unsigned char lead_bits[] = {0, 0x7F, 0x1F, 0x0F, 0x07};
    const unsigned char *s = (const unsigned char *)text;
    size_t n = length ? sequence_length(s[0]) : 0;
    if (!n || n > length || (n > 1 && !second_byte_fits(s[0], s[1]))) return 0;
    *character = s[0] & lead_bits[n];
    for (size_t k = 1; k < n; k++) {
        if ((s[k] & 0xC0) != 0x80) return 0;
        *character = *character << 6 | (s[k] & 0x3F);
    }
    return n;
}

/* Controls, C0 and C1; what turns the direction of the text around it; the two separators that some take for line ends.
 */
static bool is_control(unsigned long c)
{
    return c < 0x20 || (c >= 0x7F && c < 0xA0) || c == 0x061C || c == 0x200E || c == 0x200F ||
           (c >= 0x2028 && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
}

size_t gw_safe_span(const char *text, size_t length, size_t *unsafe)
{
    size_t i = 0;
    *unsafe = 0;
    while (i < length) {
        unsigned long c;
        if (text[i] >= 0x20 && text[i] < 0x7F) {
            i++;
            continue;
        }
        size_t n = gw_utf8_read(text + i, length - i, &c);
        if (!n || is_control(c)) {
            *unsafe = n ? n : 1;
            return i;
        }
        i += n;
    }
    return i;
}

const char *gw_safe_instead(const char *unsafe) { return strchr("\t\n\r", *unsafe) ? " " : "\xEF\xBF\xBD"; }

void gw_text_add_safe(struct gw_text *text, const char *string, size_t length)
{
    while (length) {
        size_t unsafe, span = gw_safe_span(string, length, &unsafe);
        gw_text_bytes(text, string, span);
        if (unsafe) gw_text_add(text, gw_safe_instead(string + span));
        string += span + unsafe;
        length -= span + unsafe;
    }
}

const char *gw_safe(struct gw_arena *arena, const char *string)
{
    size_t unsafe, length = strlen(string);
    if (gw_safe_span(string, length, &unsafe) == length) return string;
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_text_add_safe(&text, string, length);
    return text.at;
}
