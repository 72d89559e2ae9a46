/* Which reading of a line of screws, or of a pocket, makes the others not met that are in their own limits. */
#include "answers/inspect/inspect_internal.h"

/* The row's own value, and none of the others' of which it can do without. */
static struct gw_as_read by_itself(const struct gw_inspected *row, const struct gw_company *c)
{
    struct gw_as_read read = c->read;
    for (size_t i = 0; i < GW_ITEM_COUNT; i++)
        if (i != row->item->id) read.of[i] = (struct gw_item_value){GW_ABSENT, 0};
    if (row->item->id != GW_ITEM_screw_torque) read.torque_age = GW_ABSENT;
    read.pocket_open = false;
    return read;
}

/* What one of the others alone makes of it. */
static const struct gw_item_result *with_one(struct gw_inspecting *in, const struct gw_inspected *row,
                                             const struct gw_company *c, size_t item)
{
    struct gw_as_read read = by_itself(row, c);
    read.of[item] = c->read.of[item];
    if (item == GW_ITEM_screw_torque) read.torque_age = c->read.torque_age;
    read.pocket_open =
        c->read.pocket_open && c->with[item] && (gw_opens_pocket(c->with[item]) || item == GW_ITEM_sealant_under_cover);
    return &gw_inspect_again(in, row, &read)->result;
}

struct decisive {
    const struct gw_item_result *result; /* NULL: none */
    size_t item;
    bool beyond; /* its own limit, or a word that is not sound */
};

/* The gravest; of equally grave ones what is beyond its own limit. */
static void keep_graver(struct decisive *d, const struct gw_item_result *result, size_t item, bool beyond)
{
    const bool graver = !d->result || gw_item_graver(result, d->result);
    const bool as_grave = d->result && !graver && !gw_item_graver(d->result, result);
    if (graver || (as_grave && beyond && !d->beyond)) *d = (struct decisive){result, item, beyond};
}

/* Which may not be judged yet. */
static bool is_out_of_order(struct gw_inspecting *in, const struct gw_inspected *with)
{
    struct gw_inspected row;
    struct gw_item_result result;
    if (!with) return false;
    row = *with;
    row.result = &result;
    gw_inspect_limit(&result.limit, in, row.item, &row.spot);
    return gw_is_beyond(&row);
}

static void leave_one(struct gw_company *c, size_t item)
{
    for (size_t i = 0; i < GW_ITEM_COUNT; i++)
        if (i != item) c->with[i] = NULL;
    if (item != GW_ITEM_screw_spacing) c->share = GW_ABSENT;
    c->decided = true;
}

static bool hangs_together(const struct gw_inspected *row)
{
    return row->item->on == GW_ON_SCREWS || row->item->on == GW_ON_POCKET;
}

void gw_find_decisive(struct gw_inspecting *in, struct gw_inspected *row, struct gw_company *c)
{
    struct decisive d = {0};
    if (row->verdict != GW_ITEM_NOT_MET || gw_is_beyond(row) || !hangs_together(row)) return;
    const struct gw_as_read own = by_itself(row, c);
    row->elsewhere = gw_inspect_again(in, row, &own)->result.verdict != GW_ITEM_NOT_MET;
    for (size_t i = 0; row->elsewhere && i < GW_ITEM_COUNT; i++) {
        const bool shared = i == GW_ITEM_screw_spacing && gw_given(c->share);
        if (i == row->item->id || (!c->with[i] && !shared)) continue;
        const struct gw_item_result *one = with_one(in, row, c, i);
        if (one->verdict == GW_ITEM_NOT_MET) keep_graver(&d, one, i, is_out_of_order(in, c->with[i]));
    }
    if (d.result) leave_one(c, d.item);
}
