/* Gaskets: their corners, places and length. */
#include "judge/items.h"

const struct gw_item gw_item_gasket_excess = {
    .id = GW_ITEM_gasket_excess,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_EDGE,
    .hold = false,
    .how = "length of the gasket over that of its groove, before it is pushed in",
    .prevents = "it shrinks back and opens the corners",
    .clause = "common practice, no source",
    .if_missed = "does it reach the corners; were others of that roll stretched",
    .does = &(const struct gw_item_functions){.then = NULL}};
const struct gw_item gw_item_gasket_place = {.id = GW_ITEM_gasket_place,
                                             .stage = GW_STAGE_GLASS,
                                             .on = GW_ON_EDGE,
                                             .hold = false,
                                             .how = "section on the drawing",
                                             .prevents = "another pressure on the glass, another seal",
                                             .clause = "common practice, no source",
                                             .if_missed = "which gasket is it; look at the lites of that crew",
                                             .does = &(const struct gw_item_functions){.then = NULL}};
const struct gw_item gw_item_gasket_corner = {.id = GW_ITEM_gasket_corner,
                                              .stage = GW_STAGE_GLASS,
                                              .on = GW_ON_EDGE,
                                              .hold = true,
                                              .how = "eye, thumb at each corner",
                                              .prevents = "water and air at every corner",
                                              .clause = "common practice, no source",
                                              .if_missed = "look at the other corners of the lite and of its neighbors",
                                              .does = &(const struct gw_item_functions){.then = NULL}};
