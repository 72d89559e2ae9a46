/* Parts of the page of demands. */
#ifndef REPORT_DEMAND_H
#define REPORT_DEMAND_H

#include "report/page.h"

void gw_page_walls(struct page *page);
void gw_page_glass(struct page *page);
void gw_page_other_demands(struct page *page);
void gw_page_members(struct page *page);
void gw_page_reactions(struct page *page);
void gw_page_given(struct page *page);

#endif
