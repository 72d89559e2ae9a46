/* What people and their programs type for the marks and units that the reader knows. */
#ifndef GALEWARD_SPELLING_H
#define GALEWARD_SPELLING_H

#include "galeward/units.h"

enum { GW_PLAIN_SIZE = 96 };

/* A value in ASCII, where a word processor or a spreadsheet put its own spaces, quotes, dashes and fractions. */
struct gw_plain {
    char text[GW_PLAIN_SIZE];
    size_t length;
    size_t from[GW_PLAIN_SIZE]; /* the byte of the original that each byte, and the end, stands for */
};

/* False where the text is plain already, or longer than any value: then `out` holds nothing. */
bool gw_plain_text(struct gw_plain *out, const char *text, size_t length);

/* The unit of that dimension that is written so but for capitals, full stops, '^', and hyphens or spaces between its
 * parts; NULL where there is none or more than one, and where a capital would be a thousand million: 'mPa' is no MPa.
 */
const struct gw_unit *gw_unit_alike(struct gw_unit_list units, enum gw_dim dim, const char *name, size_t length);

/* What a value that was not understood probably is, and what to write instead: "", or a sentence without a stop. */
const char *gw_value_hint(struct gw_arena *arena, enum gw_dim dim, enum gw_units units, const char *text);
/* The same of a number that is out of range and may be the count of days by which a spreadsheet keeps a date. */
const char *gw_serial_hint(struct gw_arena *arena, const char *text);
/* A formula that failed: "#REF!". A date in the place of a mark or a fraction: "4-Jan". */
bool gw_is_spreadsheet_error(const char *text);
bool gw_is_date(const char *text);
/* "n/a", "TBD", "-", "none": a word in the place of a name that there is not. */
bool gw_names_nothing(const char *text);

#endif
