/* The sheet of a solved beam: beam.c (page), beam_loads.c, beam_curve.c (its strips). */
#ifndef REPORT_DRAW_BEAM_SHEET_H
#define REPORT_DRAW_BEAM_SHEET_H

#include "galeward/beam.h"
#include "galeward/calc.h"
#include "report/draw/sheet.h"

/* From the page's edge to the beam's ends, pixels. */
enum { BEAM_SIDE = 63 };

/* Between supports; before the first and after the last: an overhang. */
struct bay {
    double from, to, limit; /* m; absent: no limit is asked */
    bool overhang;
};
struct beam_sheet {
    struct sheet page;
    const struct gw_beam *beam;
    const struct gw_beam_result *result;
    double scale; /* pixels a meter */
    struct bay bays[GW_BEAM_SUPPORTS + 1];
    size_t n_bays;
};

static inline double beam_across(const struct beam_sheet *s, double x) { return BEAM_SIDE + x * s->scale; }
/* Faint lines at supports, circles at splices, so that the eye finds them again. */
void gw_beam_places(struct beam_sheet *s, double zero, double top, double bottom);
/* Strips: from the top to the lower end that they return. */
double gw_beam_load_strip(struct beam_sheet *s, double top);
enum beam_curve { BEAM_SHEAR, BEAM_MOMENT, BEAM_DEFLECTION };
double gw_beam_curve_strip(struct beam_sheet *s, enum beam_curve kind, double top);

#endif
