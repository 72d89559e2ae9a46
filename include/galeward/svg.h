/* A drawing as SVG text.
 *
 * Coordinates are printed to a tenth of a pixel, so that rounding noise of a computation does not show; the same canvas
 * gives the same bytes in every locale. Characters that XML cannot hold become U+FFFD. */
#ifndef GALEWARD_SVG_H
#define GALEWARD_SVG_H

#include "galeward/canvas.h"

#ifdef __cplusplus
extern "C" {
#endif

void gw_svg_write(struct gw_text *out, const struct gw_canvas *canvas);
/* The same as an element of a page: its ids begin with `prefix`, so that drawings of one page do not meet. */
void gw_svg_inline(struct gw_text *out, const struct gw_canvas *canvas, const char *prefix);
/* The same beside words that say what it is: without its own, and not there for those who do not see it. */
void gw_svg_swatch(struct gw_text *out, const struct gw_canvas *canvas, const char *prefix);

#ifdef __cplusplus
}
#endif

#endif
