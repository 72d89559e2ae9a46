/* Pictures that the rows of drawings.c are made from. `id` (NULL: none) is the mark that the case gives. */
#ifndef REPORT_DRAW_DRAWINGS_H
#define REPORT_DRAW_DRAWINGS_H

#include "galeward/canvas.h"
#include "galeward/plate.h"
#include "galeward/report.h"
#include "report/draw/sheet.h"

struct plate_drawing {
    const char *name, *id;             /* "Plate" */
    const struct gw_plate_case *plate; /* of the thickness for stress */
    double deflection_thickness;       /* m; of a laminated pane another one */
    const char *const *lines;          /* what it is part of, and what that asks; under the title */
    size_t n_lines;
    const char *verdict; /* NULL: none */
    bool passes;
    double deflection_limit; /* m; absent: none asked */
};
enum gw_status gw_draw_plate(struct gw_canvas *canvas, const struct plate_drawing *drawing, enum gw_units shown,
                             struct gw_engine *engine);

struct beam_drawing {
    const char *name, *id;
    const struct gw_beam *beam;
    const struct gw_beam_result *result;
    const struct gw_member_chart *member; /* NULL: a beam */
    /* Of a project's element: what is said of it, and that the limits of its spans are drawn, with a cap; absent: none.
     */
    const char *title, *const *said;
    size_t n_said;
    bool limited, loose; /* loose: its stiffness is not known, so no deflection */
    double cap;
    const char *const *notes;
    size_t n_notes;
};
void gw_draw_beam(struct gw_canvas *canvas, const struct beam_drawing *drawing, enum gw_units shown,
                  struct gw_engine *engine);

/* The plane of pressure and impulse. Of a project's lite: whose it is and what is said of it, a verdict with its mark
 * (NULL: none), the name of the rating (NULL), and why there is no curve (NULL: there is one). */
struct isodamage_drawing {
    const struct gw_response_chart *chart; /* without a curve its members of the curve are not read */
    const char *id, *title;                /* title NULL: "Lite W1: 5 ft by 8 ft under blast" */
    const char *const *said;
    size_t n_said;
    const char *verdict, *rating, *no_curve;
    enum sheet_mark mark;
};
enum gw_status gw_draw_isodamage(struct gw_canvas *canvas, const struct isodamage_drawing *drawing, enum gw_units shown,
                                 struct gw_engine *engine);

#endif
