/* A report as PDF, through cairo and pango: objects of their own (src/report/pdf), which the program is linked with
 * where both were there when it was built. The library by itself writes none, and says so. */
#ifndef GALEWARD_PDF_H
#define GALEWARD_PDF_H

#include "galeward/report.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Pages of A4 whose live area letter holds too: 180 x 250 mm. Fonts are embedded; headings are bookmarks; head and foot
 * of the report stand on each page. The same report gives the same bytes with the same versions of the libraries.
 * GW_MISSING, with the engine's fault: this build has no PDF. */
enum gw_status gw_pdf_write(struct gw_text *out, const struct gw_report *report, enum gw_units shown,
                            struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
