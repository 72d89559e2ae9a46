/* Texts of people in XML and HTML: SVG, MathML, HTML. */
#ifndef GALEWARD_REPORT_MARKUP_H
#define GALEWARD_REPORT_MARKUP_H

#include "galeward/text.h"

/* With < > & and " as references: between tags, and in an attribute's quotes. */
void gw_markup_text(struct gw_text *out, const char *text);

#endif
