/* The choice of each candidate, as it is written. */
#ifndef REPORT_SELECT_H
#define REPORT_SELECT_H

#include "galeward/select.h"
#include "report/page.h"

struct selection {
    const struct gw_bid *bid;
    GW_LIST(const struct gw_request) missing; /* of its plan */
};
struct selections {
    const struct gw_results *results; /* of gw_answer_bids */
    const struct gw_bids *bids;
    GW_LIST(struct selection) items;
    struct gw_pictures pictures;
};
/* A place of a candidate, for tables. */
struct place_row {
    const struct gw_bid *bid;
    const struct gw_selected *place;
    const struct gw_finding *governing; /* whose figures decide; NULL */
    const char *options, *lites;        /* in words */
    long lite_count;
    double lite_area, lite_cost, option_cost;
};
extern const struct gw_record gw_place_row_record;

void gw_place_row(struct place_row *out, struct gw_arena *arena, const struct gw_bid *bid,
                  const struct gw_selected *place);
/* select_first.c: who passes, as offered or with its plan, at which cost, how near to failing; a story a selection. */
struct verdict_story;
void gw_select_first(struct page *page, const struct selections *s, const struct verdict_story *stories);
/* How a candidate stands as offered, and its least margins: of the i-th whether the first page has room for it. */
void gw_tell_offered(struct page *page, const struct gw_bid *bid);
bool gw_is_told_first(const struct page *page, size_t i);
const char *gw_select_mass(struct page *page, double kg); /* "not known" */
/* select_choices.c: each option and make-up that the plan takes, where, and what it comes to. */
void gw_tell_choices(struct page *page, const struct selections *s, const struct gw_bid *bid);
/* Of what layers make-ups are that any plan takes, where lites have a choice of them. */
void gw_tell_make_ups(struct page *page, const struct selections *s);
void gw_add_plan_place(struct gw_text *out, const struct gw_plan_place *place); /* "zone 5 of east" */
/* select_blocked.c */
void gw_tell_blocked(struct page *page, const struct gw_bid *bid);
void gw_sheet_of_places(struct gw_report *sheet, const struct gw_result *result);
void gw_write_plan(struct gw_text *out, const struct gw_result *result);
void gw_select_page(struct gw_report *report, const struct gw_result *result);

#endif
