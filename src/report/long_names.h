/* Names of people's files have no end. A page that is filed says a very long one by its beginning, and whole once. */
#ifndef REPORT_LONG_NAMES_H
#define REPORT_LONG_NAMES_H

#include "galeward/report.h"

/* Every text of the project and its candidates that is longer than a line. */
struct gw_long_names gw_long_names_of(struct gw_arena *arena, const struct gw_model *model);
/* The text with each of them (NULL: none) by its beginning. */
const char *gw_shortened(struct gw_arena *arena, const struct gw_long_names *names, const char *text);
/* The first `most` characters, and a mark where that is not all. */
const char *gw_beginning(struct gw_arena *arena, const char *text, int most);
/* A figure of a page on a new canvas, its names as the page has them; GW_MISSING: it has no drawing. */
enum gw_status gw_draw_figure(struct gw_canvas *canvas, const struct gw_report *report, const struct gw_figure *figure,
                              bool small, enum gw_units shown, struct gw_engine *engine);

#endif
