/* What the pages of 'inspect' share. */
#ifndef REPORT_INSPECT_H
#define REPORT_INSPECT_H

#include "galeward/inspection.h"
#include "report/page.h"

struct gw_inspected_results {
    const struct gw_results *results;
    const struct gw_inspection *inspection; /* NULL: the sheet */
    const struct gw_inspection_sheet *sheet;
};
extern const struct gw_record gw_inspected_record, gw_item_share_record, gw_sheet_item_record;

#endif
