/* Screws of the pressure plate: where they stand, what they are, how they clamp. */
#include "judge/items.h"

const struct gw_item gw_item_screw_end_distance = {
    .id = GW_ITEM_screw_end_distance,
    .stage = GW_STAGE_PLATES,
    .on = GW_ON_SCREWS,
    .hold = true,
    .how = "tape, from the end of the plate to its last screw, at every joint",
    .prevents = "lifted ends of the plate: air and water at the joint",
    .clause = "common practice, no source",
    .if_missed = "what holds the end: look at the joint on both sides",
    .does = &(const struct gw_item_functions){.then = NULL}};
const struct gw_item gw_item_screw_spacing = {.id = GW_ITEM_screw_spacing,
                                              .stage = GW_STAGE_PLATES,
                                              .on = GW_ON_SCREWS,
                                              .hold = true,
                                              .how = "tape, between screws along the plate",
                                              .prevents =
                                                  "the plate gaps between screws; each screw carries more suction",
                                              .clause = "common practice, no source",
                                              .if_missed = "look at the plates beside it; could a screw be set between",
                                              .does = &(const struct gw_item_functions){.then = NULL}};
const struct gw_item gw_item_screw_torque = {
    .id = GW_ITEM_screw_torque,
    .stage = GW_STAGE_PLATES,
    .on = GW_ON_SCREWS,
    .hold = true,
    .how = "torque wrench that reads as the screw begins to turn on; with the day of fastening",
    .prevents = "pumping glass and leaks where low, crushed edge seals where high",
    .clause = "common practice, no source",
    .if_missed = "look at the whole plate and the ones beside it; was the driver checked that day",
    .does = &(const struct gw_item_functions){.then = NULL}};
const struct gw_item gw_item_screw_length = {
    .id = GW_ITEM_screw_length,
    .stage = GW_STAGE_PLATES,
    .on = GW_ON_SCREWS,
    .hold = true,
    .how = "one of each box, under the head",
    .prevents = "a bottomed screw takes full torque and does not clamp; a short one strips",
    .clause = "common practice, no source",
    .if_missed = "which boxes were used here; what do the screws beside it measure",
    .does = &(const struct gw_item_functions){.then = NULL}};
const struct gw_item gw_item_screw_head = {.id = GW_ITEM_screw_head,
                                           .stage = GW_STAGE_PLATES,
                                           .on = GW_ON_SCREWS,
                                           .hold = true,
                                           .how = "eye, feeler gauge of 0.010 in",
                                           .prevents = "a screw on the bottom of its chase: full torque, no clamp",
                                           .clause = "common practice, no source",
                                           .if_missed = "what length was used; look at every screw of that plate",
                                           .does = &(const struct gw_item_functions){.then = NULL}};
const struct gw_item gw_item_screw_type = {.id = GW_ITEM_screw_type,
                                           .stage = GW_STAGE_PLATES,
                                           .on = GW_ON_SCREWS,
                                           .hold = true,
                                           .how = "head mark and box against the shop drawings",
                                           .prevents = "another thread, length or strength than was tested",
                                           .clause = "common practice, no source",
                                           .if_missed = "which screw is it: length, metal, strength; ask for its data",
                                           .does = &(const struct gw_item_functions){.then = NULL}};
const struct gw_item gw_item_driver_checked = {.id = GW_ITEM_driver_checked,
                                               .stage = GW_STAGE_PLATES,
                                               .on = GW_ON_CREW,
                                               .hold = false,
                                               .how = "meter of torque, at the start of the day",
                                               .prevents = "torques that scatter; crushed edge seals",
                                               .clause = "common practice, no source",
                                               .if_missed = "read torques of that day anew",
                                               .does = &(const struct gw_item_functions){.then = NULL}};
