/* Captions of tables on pages that are filed. */
#ifndef REPORT_CAPTIONS_H
#define REPORT_CAPTIONS_H

#include "galeward/report.h"

/* Of every table, by its own caption, else by the heading above it: after everything is on the page. */
void gw_report_captions(struct gw_report *report);

#endif
