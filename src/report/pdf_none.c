/* What stands in the library for gw_pdf_write, where no objects that know cairo and pango come before it. */
#include "galeward/pdf.h"

enum gw_status gw_pdf_write(struct gw_text *out, const struct gw_report *report, enum gw_units shown,
                            struct gw_engine *engine)
{
    (void)out, (void)report, (void)shown;
    return gw_refuse(engine, GW_MISSING, "pdf",
                     "this build writes no PDF: install libpango1.0-dev and build again, or print the HTML file");
}
