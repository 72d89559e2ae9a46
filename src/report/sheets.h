/* Tables of data in the units of people, for spreadsheets. */
#ifndef REPORT_SHEETS_H
#define REPORT_SHEETS_H

#include "galeward/report.h"

void gw_sheet_of_elements(struct gw_report *report, const struct gw_result *result);
void gw_sheet_of_verdicts(struct gw_report *report, const struct gw_result *result);
void gw_sheet_of_readings(struct gw_report *report, const struct gw_result *result);
void gw_sheet_of_flips(struct gw_report *report, const struct gw_result *result);

#endif
