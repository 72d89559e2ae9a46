/* What a value that was not understood probably is: a comma for a point, feet and inches without their marks, a date
 * or a failed formula of a spreadsheet. Nothing is read by a hint; it says what to write. */
#include "base/spelling.h"

#include "galeward/record.h"

#include <stdlib.h>
#include <string.h>

static bool is_digit(char c) { return c >= '0' && c <= '9'; }

static bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

static size_t run_of(const char *text, bool (*holds)(char))
{
    size_t n = 0;
    while (holds(text[n])) n++;
    return n;
}

/* A pattern: '9' a run of digits, 'a' a run of letters, '-' any one of " -/", any other character itself. */
static bool looks_like(const char *text, const char *pattern)
{
    for (; *pattern; pattern++) {
        size_t n = *text == *pattern;
        if (*pattern == '9') n = run_of(text, is_digit);
        if (*pattern == 'a') n = run_of(text, is_letter);
        if (*pattern == '-') n = *text && strchr(" -/", *text);
        if (!n) return false;
        text += n;
    }
    return !*text;
}

bool gw_is_spreadsheet_error(const char *text)
{
    static const char *const errors[] = {"#REF!", "#N/A",   "#VALUE!", "#DIV/0!", "#NAME?",
                                         "#NUM!", "#NULL!", "#SPILL!", "#CALC!"};
    if (text[0] != '#') return false;
    for (size_t i = 0; i < sizeof errors / sizeof *errors; i++)
        if (strcmp(text, errors[i]) == 0) return true;
    return text[1] == '#' && strspn(text, "#") == strlen(text);
}

static const char *const MONTHS[] = {"january", "february", "march",     "april",   "may",      "june",
                                     "july",    "august",   "september", "october", "november", "december"};

/* 1 to 12, or 0. */
static int month_at(const char *text)
{
    size_t n = run_of(text, is_letter);
    for (int month = 0; month < 12 && n >= 3; month++) {
        size_t i = 0;
        while (i < n && MONTHS[month][i] == (text[i] | 0x20)) i++;
        if (i == n || (i == 4 && n == 4 && month == 8)) return month + 1;
    }
    return 0;
}

struct date {
    int month, number; /* and what stands beside it: a day or a year */
};

static bool read_date(const char *text, struct date *out)
{
    const char *word = text + strcspn(text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ");
    bool day_first = looks_like(text, "9-a") || looks_like(text, "9-a-9");
    bool named = (day_first || looks_like(text, "a-9")) && month_at(word);
    if (named) {
        const char *number = day_first ? text : text + run_of(text, is_letter) + 1;
        *out = (struct date){.month = month_at(word), .number = (int)strtol(number, NULL, 10)};
        return true;
    }
    size_t first = run_of(text, is_digit);
    bool iso = first == 4 && text[4] == '-' && looks_like(text, "9-9-9");
    bool slashed = first <= 2 && text[first] == '/' && looks_like(text, "9/9/9");
    if (!iso && !slashed) return false;
    const char *second = text + first + 1;
    const char *third = second + run_of(second, is_digit) + 1;
    out->month = (int)strtol(iso ? second : text, NULL, 10);
    out->number = (int)strtol(iso ? third : second, NULL, 10);
    return true;
}

bool gw_is_date(const char *text)
{
    struct date date;
    const bool parted =
        strchr(text, '-') || strchr(text, '/') || strchr(text, ' '); /* quick, for every cell of a sheet */
    return parted && read_date(text, &date);
}

static const char *made_of(struct gw_arena *arena, const struct date *date, enum gw_dim dim, enum gw_units units)
{
    return gw_format(
        arena,
        "a spreadsheet made a date of it, perhaps of %d/%d, %d-%d or %d-%d; make the column text there and "
        "enter the value again%s%s",
        date->month, date->number, date->month, date->number, date->number, date->month,
        dim == GW_RATIO ? "" : ", for example ", dim == GW_RATIO ? "" : gw_dim_example(dim, units));
}

/* Days from the end of 1899 to a day of the calendar (Fliegel and Van Flandern's way, shifted). */
static struct date date_of_serial(long serial)
{
    long days = serial - 25569 + 719468; /* to 1970, then from 1 March of the year 0 */
    long era = days / 146097, day_of_era = days - era * 146097;
    long year = (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / 146096) / 365;
    long day_of_year = day_of_era - (365 * year + year / 4 - year / 100), shifted = (5 * day_of_year + 2) / 153;
    return (struct date){.month = (int)(shifted < 10 ? shifted + 3 : shifted - 9),
                         .number = (int)(day_of_year - (153 * shifted + 2) / 5 + 1)};
}

const char *gw_serial_hint(struct gw_arena *arena, const char *text)
{
    const long first = 40179, last = 54788; /* 2010 to 2049 */
    if (!looks_like(text, "9") || strlen(text) != 5) return "";
    long serial = strtol(text, NULL, 10);
    if (serial < first || serial > last) return "";
    struct date date = date_of_serial(serial);
    return gw_format(arena,
                     "; a spreadsheet keeps a date as such a number: perhaps it made one of %d/%d or %d-%d; make the "
                     "column text there and enter the value again",
                     date.month, date.number, date.month, date.number);
}

/* "1,5 m": the text without its commas and stops but for the last, which becomes the point. */
static const char *with_point(struct gw_arena *arena, const char *text, size_t mark)
{
    struct gw_text out;
    gw_text_init(&out, arena);
    for (size_t i = 0; text[i]; i++) {
        if (i == mark) gw_text_add(&out, ".");
        else if (i > mark || !strchr(".,", text[i])) gw_text_bytes(&out, text + i, 1);
    }
    return out.at;
}

static const char *without_commas(struct gw_arena *arena, const char *text)
{
    struct gw_text out;
    gw_text_init(&out, arena);
    for (; *text; text++)
        if (*text != ',') gw_text_bytes(&out, text, 1);
    return out.at;
}

static size_t count_in(const char *text, size_t span, char c)
{
    size_t n = 0;
    for (size_t i = 0; i < span; i++) n += text[i] == c;
    return n;
}

static const char *comma_hint(struct gw_arena *arena, const char *text)
{
    const size_t sign = strchr("+-", text[0]) && text[0], span = sign + strspn(text + sign, "0123456789.,");
    const char *comma = memchr(text, ',', span), *point = memchr(text, '.', span);
    if (!comma || comma == text + sign || !is_digit(comma[1])) return NULL;
    const size_t before = (size_t)(comma - text) - sign, after = run_of(comma + 1, is_digit);
    if (count_in(text, span, ',') > 1 || (point && point > comma)) return "commas in the number: write it without them";
    const char *decimal = with_point(arena, text, (size_t)(comma - text));
    if (point || after != 3 || before > 3 || text[sign] == '0')
        return gw_format(arena, "a comma for a point: write %s", decimal);
    return gw_format(arena, "the comma may part thousands or stand for a point: write %s or %s",
                     without_commas(arena, text), decimal);
}

/* "5-6", "5 6", "5-6 1/2", "5-6\"": in feet and inches it would be so. */
static const char *feet_hint(struct gw_arena *arena, const char *text)
{
    static const char *const shapes[] = {"9", "9.9", "9-9/9"};
    size_t length = strlen(text), feet = run_of(text, is_digit), gap = strspn(text + feet, " -");
    while (length && strchr("\" in.", text[length - 1]) && !is_digit(text[length - 1])) length--;
    const char *bare = gw_strndup(arena, text, length), *inches = bare + feet + gap;
    bool shaped = false;
    for (size_t i = 0; i < sizeof shapes / sizeof *shapes; i++) shaped = shaped || looks_like(inches, shapes[i]);
    if (!feet || !gap || !shaped || strtol(inches, NULL, 10) >= 12) return NULL;
    return gw_format(arena, "did you mean %.*s'-%s\"? Write the marks, or ft and in", (int)feet, text, inches);
}

static const char *spaced_hint(struct gw_arena *arena, const char *text)
{
    size_t n = run_of(text, is_digit), rest = n;
    if (!n || n > 3) return NULL;
    while (text[rest] == ' ' && run_of(text + rest + 1, is_digit) == 3) rest += 4;
    if (rest == n) return NULL;
    struct gw_text out;
    gw_text_init(&out, arena);
    for (size_t i = 0; text[i]; i++)
        if (i >= rest || text[i] != ' ') gw_text_bytes(&out, text + i, 1);
    return gw_format(arena, "a space in the number: write %s", out.at);
}

static bool is_one_of(const char *const *words, const char *text)
{
    for (; *words; words++)
        if (gw_words_alike(*words, text)) return true;
    return false;
}

static bool is_unknown_word(const char *text)
{
    static const char *const words[] = {"n/a", "na", "tbd", "tba", "-", "--", "?", "unknown", NULL};
    return is_one_of(words, text);
}

bool gw_names_nothing(const char *text)
{
    static const char *const words[] = {"none",
                                        "nil",
                                        "no",
                                        "not applicable",
                                        "not available",
                                        "tbc",
                                        "pending",
                                        "missing",
                                        "to be determined",
                                        "to follow",
                                        "n.a.",
                                        "???",
                                        "??",
                                        "n/k",
                                        "product sheet",
                                        "data sheet",
                                        "datasheet",
                                        "brochure",
                                        "catalog",
                                        "website",
                                        "per website",
                                        "literature",
                                        NULL};
    return is_unknown_word(text) || is_one_of(words, text);
}

static bool holds_two_sizes(const char *text)
{
    for (const char *x = strpbrk(text, "xX*"); x; x = strpbrk(x + 1, "xX*"))
        if (x > text && strchr(" 0123456789'\"tnm", x[-1]) && is_digit(x[1 + strspn(x + 1, " ")])) return true;
    return strstr(text, "\xC3\x97") != NULL;
}

/* "15 %" */
static const char *share_hint(struct gw_arena *arena, enum gw_dim dim, const char *text)
{
    const size_t n = strlen(text);
    char *end;
    const double part = strtod(text, &end) / 100;
    struct gw_text out;
    if (!n || text[n - 1] != '%' || end == text || strspn(end, " %") != strlen(end)) return NULL;
    gw_text_init(&out, arena);
    gw_text_number(&out, part, 6);
    if (dim == GW_RATIO) return gw_format(arena, "a part, not per cent: write %s", out.at);
    if (dim == GW_PRESSURE) return gw_format(arena, "a share of the design pressure: write {share: %s}", out.at);
    return NULL;
}

/* "+/-40 psf" */
static const char *both_ways_hint(enum gw_dim dim, const char *text)
{
    static const char plus_minus[] = "\xC2\xB1";
    const bool both = strncmp(text, "+/-", 3) == 0 || strncmp(text, "+-", 2) == 0 || strncmp(text, plus_minus, 2) == 0;
    if (!both) return NULL;
    return dim == GW_PRESSURE ? "give each direction its own key, without a sign" : "write it without the sign";
}

static const char *any_hint(struct gw_arena *arena, enum gw_dim dim, enum gw_units units, const char *text)
{
    struct date date;
    if (gw_is_spreadsheet_error(text))
        return text[1] == '#' ? "the spreadsheet's column was too narrow: widen it and save again"
                              : "a formula failed in the spreadsheet: enter the value itself there";
    if (read_date(text, &date)) return made_of(arena, &date, dim, units);
    const char *hint = share_hint(arena, dim, text);
    if (!hint) hint = both_ways_hint(dim, text);
    if (!hint) hint = comma_hint(arena, text);
    const bool length = strcmp(gw_dim_info(dim)->name, gw_dim_info(GW_LENGTH)->name) == 0;
    if (!hint && length) hint = feet_hint(arena, text);
    if (!hint) hint = spaced_hint(arena, text);
    if (!hint && is_unknown_word(text)) hint = "leave it out where it is not known";
    if (!hint && length && is_digit(text[0]) && holds_two_sizes(text))
        hint = "two sizes in one value: write the width and the height apart";
    return hint;
}

const char *gw_value_hint(struct gw_arena *arena, enum gw_dim dim, enum gw_units units, const char *text)
{
    struct gw_plain plain;
    const char *hint = any_hint(arena, dim, units, gw_plain_text(&plain, text, strlen(text)) ? plain.text : text);
    return hint ? hint : "";
}
