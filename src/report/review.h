/* Shared by the files that write a review. */
#ifndef REPORT_REVIEW_H
#define REPORT_REVIEW_H

#include "galeward/review.h"

/* Comments, one a row, for spreadsheets. */
void gw_review_sheet(struct gw_report *sheet, const struct gw_result *result);
void gw_review_page(struct gw_report *page, const struct gw_result *result);
/* review_log.c */
void gw_review_log(struct gw_log *out, struct gw_arena *arena, const struct gw_result *result);
/* "a dimension of a drawing": what comments of that item are about. */
const char *gw_comment_about(const char *item);

#endif
