/* HTML: its parts, in files by what they write. */
#ifndef GALEWARD_REPORT_RENDER_HTML_H
#define GALEWARD_REPORT_RENDER_HTML_H

#include "galeward/report.h"

/* What every part is given. */
struct html {
    struct gw_text *out;
    struct gw_arena *arena;
    const struct gw_report *report;
    struct gw_engine *engine; /* drawings compute */
    enum gw_units shown;
    enum gw_status status; /* of the last drawing that refused */
    int tables, figures;   /* for ids */
    long derivations;      /* that the page has: D1, D2 ... */
};

/* html_style.c: the sheet of styles, colors light and dark, print, small screens. */
extern const char *const gw_html_style;
/* Words; what names a derivation of this page leads to it. */
void gw_html_words(struct html *html, const char *text);
/* html_table.c */
void gw_html_table(struct html *html, const struct gw_block *table);
/* The mark of a verdict before its word, hidden from readers who hear the word. */
void gw_html_mark(struct gw_text *out, enum gw_tone tone);
/* html_steps.c: a run of equations as a list. */
void gw_html_steps(struct html *html, const struct gw_block *first, size_t n);

#endif
