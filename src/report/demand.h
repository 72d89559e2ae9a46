/* Parts of the page of demands. */
#ifndef REPORT_DEMAND_H
#define REPORT_DEMAND_H

#include "report/page.h"

void gw_page_walls(struct page *page);
/* What each wall is and where its edge zone lies, without its pressures: an item each. */
void gw_page_wall_keys(struct page *page);
void gw_page_glass(struct page *page);
void gw_page_other_demands(struct page *page);
void gw_page_members(struct page *page);
void gw_page_reactions(struct page *page);
void gw_page_given(struct page *page);
/* Without their headings. */
void gw_page_mock_up_table(struct page *page);
void gw_page_apart_table(struct page *page);

#endif
