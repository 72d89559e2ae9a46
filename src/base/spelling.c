/* Marks of word processors and spreadsheets in ASCII; units but for their capitals, stops and hyphens. */
#include "base/spelling.h"

#include <string.h>

struct stand_in {
    unsigned long first, last;
    const char *ascii;
};

static const struct stand_in STAND_INS[] = {
    {0x00A0, 0x00A0, " "},   {0x00B4, 0x00B4, "'"},   {0x00B2, 0x00B2, "2"},   {0x00B3, 0x00B3, "3"},
    {0x00B7, 0x00B7, "-"},   {0x00BC, 0x00BC, "1/4"}, {0x00BD, 0x00BD, "1/2"}, {0x00BE, 0x00BE, "3/4"},
    {0x02B9, 0x02B9, "'"},   {0x02BA, 0x02BA, "\""},  {0x02BC, 0x02BC, "'"},   {0x2000, 0x200A, " "},
    {0x200B, 0x200B, ""},    {0x2010, 0x2015, "-"},   {0x2018, 0x201B, "'"},   {0x201C, 0x201F, "\""},
    {0x202F, 0x202F, " "},   {0x2032, 0x2032, "'"},   {0x2033, 0x2033, "\""},  {0x2044, 0x2044, "/"},
    {0x205F, 0x205F, " "},   {0x2153, 0x2153, "1/3"}, {0x2154, 0x2154, "2/3"}, {0x215B, 0x215B, "1/8"},
    {0x215C, 0x215C, "3/8"}, {0x215D, 0x215D, "5/8"}, {0x215E, 0x215E, "7/8"}, {0x2212, 0x2212, "-"},
    {0x2215, 0x2215, "/"},   {0x22C5, 0x22C5, "-"},   {0x3000, 0x3000, " "},   {0xFEFF, 0xFEFF, ""},
};

static const char *ascii_of(unsigned long character)
{
    for (size_t i = 0; i < sizeof STAND_INS / sizeof *STAND_INS; i++)
        if (character >= STAND_INS[i].first && character <= STAND_INS[i].last) return STAND_INS[i].ascii;
    return NULL;
}

static bool is_plain(const char *text, size_t length)
{
    for (size_t i = 0; i < length; i++)
        if ((unsigned char)text[i] >= 0x80 || (text[i] == '\'' && i + 1 < length && text[i + 1] == '\'')) return false;
    return true;
}

static bool is_digit(char c) { return c >= '0' && c <= '9'; }

static bool put(struct gw_plain *out, const char *bytes, size_t n, size_t from)
{
    if (out->length + n >= GW_PLAIN_SIZE) return false;
    for (size_t i = 0; i < n; i++) {
        out->from[out->length] = from;
        out->text[out->length++] = bytes[i];
    }
    return true;
}

/* "5½" is 5 1/2, not 51/2. */
static bool put_stand_in(struct gw_plain *out, const char *ascii, size_t from)
{
    bool parts = strchr(ascii, '/') && out->length && is_digit(out->text[out->length - 1]) && ascii[1];
    return (!parts || put(out, " ", 1, from)) && put(out, ascii, strlen(ascii), from);
}

bool gw_plain_text(struct gw_plain *out, const char *text, size_t length)
{
    if (is_plain(text, length)) return false;
    out->length = 0;
    for (size_t i = 0; i < length;) {
        unsigned long character;
        size_t n = gw_utf8_read(text + i, length - i, &character);
        const char *ascii = n ? ascii_of(character) : NULL;
        bool inches = text[i] == '\'' && i + 1 < length && text[i + 1] == '\'';
        n = inches ? 2 : n ? n : 1;
        bool room = inches ? put(out, "\"", 1, i) : ascii ? put_stand_in(out, ascii, i) : put(out, text + i, n, i);
        if (!room) return false;
        i += n;
    }
    out->text[out->length] = '\0';
    out->from[out->length] = length;
    return true;
}

static char lower(char c) { return (char)(c >= 'A' && c <= 'Z' ? c + ('a' - 'A') : c); }

static bool is_skipped(char c) { return c == '.' || c == '^'; }

static char folded(char c) { return c == ' ' ? '-' : lower(c); }

/* The next letter that counts of either; "sq. ft." is "sq ft". */
static size_t past_stops(const char *text, size_t length, size_t i)
{
    while (i < length && is_skipped(text[i])) i++;
    return i;
}

static bool is_alike(const char *name, const char *written, size_t length)
{
    size_t n = strlen(name), i = 0, k = 0;
    for (;; i++, k++) {
        i = past_stops(name, n, i);
        k = past_stops(written, length, k);
        if (i == n || k == length) return i == n && k == length;
        if (folded(name[i]) != folded(written[k])) return false;
    }
}

/* 'm' is a thousandth and 'M' a million. Only a word all in capitals, as on drawings, is beyond doubt. */
static bool prefix_differs(const char *name, const char *written, size_t length)
{
    if (name[0] == 'M' && written[0] == 'm') return true;
    bool small = name[0] == 'm' && name[1] && strchr("msb", name[1]); /* mm, ms, mbar */
    return small && written[0] == 'M' && length > 1 && written[1] == lower(written[1]);
}

const struct gw_unit *gw_unit_alike(struct gw_unit_list units, enum gw_dim dim, const char *name, size_t length)
{
    const struct gw_unit *found = NULL;
    for (size_t i = 0; i < units.n; i++) {
        const struct gw_unit *u = &units.items[i];
        if (u->dim != dim || !is_alike(u->name, name, length)) continue;
        if (prefix_differs(u->name, name, length)) return NULL;
        if (found && (found->factor < u->factor || found->factor > u->factor)) return NULL;
        found = u;
    }
    return found;
}
