/* The list of the items, in the order of the sheet: one line each. Each, gw_item_ID, stands in item/. */
#ifndef GALEWARD_JUDGE_ITEMS_H
#define GALEWARD_JUDGE_ITEMS_H

#include "judge/item.h"

#define GW_DECLARE_NUMBER_ITEM(id_, dim_) extern const struct gw_item gw_item_##id_;
#define GW_DECLARE_WORD_ITEM(id_) extern const struct gw_item gw_item_##id_;
GW_NUMBER_ITEMS(GW_DECLARE_NUMBER_ITEM)
GW_WORD_ITEMS(GW_DECLARE_WORD_ITEM)
#undef GW_DECLARE_NUMBER_ITEM
#undef GW_DECLARE_WORD_ITEM

#endif
