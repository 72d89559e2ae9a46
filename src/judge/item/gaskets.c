/* Gaskets: their corners, places and length. */
#include "judge/items.h"

#include "tables_data.h"

static void excess_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_system *system)
{
    const struct gw_gasket_practice *row = &ask->model->tables->gasket_practice[GW_ROW_GASKET_PRACTICE_CUT_LONG];
    (void)spot;
    (void)system;
    gw_used_add(&ask->engine.used, &row->row);
    *out =
        (struct gw_item_limit){.at_least = row->excess_least, .at_most = row->excess_most, .basis = GW_LIMIT_PRACTICE};
}

/* A stretched gasket shrinks back, whatever its corners look like today; how one that is neither stretched nor as long
 * as practice has it behaves, its corners tell. */
static void left_of_excess(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_as_read *read, const struct gw_system *system)
{
    struct gw_item_limit limit;
    const double excess = read->of[GW_ITEM_gasket_excess].number;
    gw_item_limit_at(&limit, ask, &gw_item_gasket_excess, spot, system);
    out->lost = excess < 0;
    if (out->lost) out->remark = GW_PLAINLY("stretched: it shrinks back and opens the corners");
    else if (excess < limit.at_least || excess > limit.at_most)
        gw_left_unknown(out, GW_PLAINLY("does it fill its groove to the corners without a gap and without buckling?"));
}

/* An open corner of the inner gasket lets air and water in, which nothing here computes; one of the outer gasket lets
 * water into the pocket alone, which drains. */
static const char WHICH_CORNER[] =
    "which gasket is open? An inner corner lets air and water into the room; an outer one leaves it to the pocket to "
    "drain: what do its weeps read";
static const char WHICH_GASKET[] =
    "which gasket stands where? Ask what it presses on the edge of the glass and which thickness of glass it takes";

/* Rows ------------------------------------------------------------------------------------------------------------- */

const struct gw_item gw_item_gasket_excess = {
    .id = GW_ITEM_gasket_excess,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_EDGE,
    .hold = false,
    .how = "length of the gasket over that of its groove, before it is pushed in",
    .prevents = "it shrinks back and opens the corners",
    .clause = "common practice, no source",
    .if_missed = "does it reach the corners; were others of that roll stretched",
    .does = &(const struct gw_item_functions){.limit = excess_limit, .left = left_of_excess}};
const struct gw_item gw_item_gasket_place = {.id = GW_ITEM_gasket_place,
                                             .stage = GW_STAGE_GLASS,
                                             .on = GW_ON_EDGE,
                                             .hold = false,
                                             .how = "section on the drawing",
                                             .prevents = "another pressure on the glass, another seal",
                                             .clause = "common practice, no source",
                                             .if_missed = "which gasket is it; look at the lites of that crew",
                                             .does = &(const struct gw_item_functions){.then = WHICH_GASKET}};
const struct gw_item gw_item_gasket_corner = {.id = GW_ITEM_gasket_corner,
                                              .stage = GW_STAGE_GLASS,
                                              .on = GW_ON_EDGE,
                                              .hold = true,
                                              .how = "eye, thumb at each corner",
                                              .prevents = "water and air at every corner",
                                              .clause = "common practice, no source",
                                              .if_missed = "look at the other corners of the lite and of its neighbors",
                                              .does = &(const struct gw_item_functions){.then = WHICH_CORNER}};
