/* Pictures that the rows of drawings.c are made from. */
#ifndef REPORT_DRAWINGS_H
#define REPORT_DRAWINGS_H

#include "galeward/plate.h"
#include "galeward/report.h"

struct plate_words {
    const char *name; /* "Plate" */
    const char *more; /* a sentence about what it is, or "" */
};
/* A laminated pane has one effective thickness for stress, `plate`'s, and another for deflection, m. */
enum gw_status gw_draw_plate(struct gw_text *out, const struct gw_plate_case *plate, double deflection_thickness,
                             const struct plate_words *words, enum gw_units shown, struct gw_engine *engine);
struct gw_beam;
struct gw_beam_result;
void gw_draw_beam(struct gw_text *out, const struct gw_beam *beam, const struct gw_beam_result *result,
                  const char *name, enum gw_units shown);
enum gw_status gw_draw_isodamage(struct gw_text *out, const struct gw_response_chart *chart, enum gw_units shown,
                                 struct gw_engine *engine);

#endif
