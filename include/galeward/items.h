/* What can be measured on a drawing or on the wall: the names and the kinds of value, as files write them.
 *
 * What a value means stands in the registry (galeward/inspect.h). A number is SI; a word is one of the item's own, or
 * `unknown`. Help and words: src/model/items.c. */
#ifndef GALEWARD_ITEMS_H
#define GALEWARD_ITEMS_H

#include "galeward/record.h"

#ifdef __cplusplus
extern "C" {
#endif

/* X(id, dimension) of numbers, X(id) of words. The order is that of the sheet within a stage. */
#define GW_NUMBER_ITEMS(X)                                                                                             \
    X(location, GW_THICKNESS)                                                                                          \
    X(anchor_clearance, GW_THICKNESS)                                                                                  \
    X(plumb, GW_THICKNESS)                                                                                             \
    X(level, GW_THICKNESS)                                                                                             \
    X(squareness, GW_THICKNESS)                                                                                        \
    X(member_offset, GW_THICKNESS)                                                                                     \
    X(splice_engagement, GW_THICKNESS)                                                                                 \
    X(joint_width, GW_THICKNESS)                                                                                       \
    X(glass_thickness, GW_THICKNESS)                                                                                   \
    X(glass_bite, GW_THICKNESS)                                                                                        \
    X(edge_clearance, GW_THICKNESS)                                                                                    \
    X(face_clearance, GW_THICKNESS)                                                                                    \
    X(setting_block_length, GW_THICKNESS)                                                                              \
    X(setting_block_place, GW_LENGTH)                                                                                  \
    X(setting_block_width, GW_THICKNESS)                                                                               \
    X(setting_block_hardness, GW_RATIO)                                                                                \
    X(edge_block_length, GW_THICKNESS)                                                                                 \
    X(edge_block_hardness, GW_RATIO)                                                                                   \
    X(gasket_excess, GW_RATIO)                                                                                         \
    X(screw_spacing, GW_THICKNESS)                                                                                     \
    X(screw_end_distance, GW_THICKNESS)                                                                                \
    X(screw_torque, GW_MOMENT)                                                                                         \
    X(screw_length, GW_THICKNESS)                                                                                      \
    X(weep_count, GW_RATIO)                                                                                            \
    X(weep_length, GW_THICKNESS)                                                                                       \
    X(weep_height, GW_THICKNESS)                                                                                       \
    X(weep_offset, GW_THICKNESS)                                                                                       \
    X(cover_weep_length, GW_THICKNESS)                                                                                 \
    X(sill_slope, GW_SLOPE)                                                                                            \
    X(end_dam_height, GW_THICKNESS)                                                                                    \
    X(sealant_width, GW_THICKNESS)                                                                                     \
    X(sealant_depth, GW_THICKNESS)                                                                                     \
    X(field_water, GW_PRESSURE)                                                                                        \
    X(leaked_at, GW_PRESSURE)
#define GW_WORD_ITEMS(X)                                                                                               \
    X(anchor_fastened)                                                                                                 \
    X(frame_joint)                                                                                                     \
    X(joint_plug)                                                                                                      \
    X(blocks_and_weeps)                                                                                                \
    X(gasket_place)                                                                                                    \
    X(gasket_corner)                                                                                                   \
    X(driver_checked)                                                                                                  \
    X(screw_type)                                                                                                      \
    X(screw_head)                                                                                                      \
    X(weep_place)                                                                                                      \
    X(weep_clear)                                                                                                      \
    X(cover_weep_clear)                                                                                                \
    X(sealant_under_cover)                                                                                             \
    X(substrate)                                                                                                       \
    X(sealant_adhesion)                                                                                                \
    X(air_barrier)

#define GW_ITEM_NUMBER_OF(id, dim) GW_ITEM_##id,
#define GW_ITEM_WORD_OF(id) GW_ITEM_##id,
enum gw_item_id { GW_NUMBER_ITEMS(GW_ITEM_NUMBER_OF) GW_WORD_ITEMS(GW_ITEM_WORD_OF) GW_ITEM_COUNT };
#undef GW_ITEM_NUMBER_OF
#undef GW_ITEM_WORD_OF

/* What a word says by itself. */
enum gw_word_sense {
    GW_WORD_UNKNOWN, /* not looked at, or not to be seen */
    GW_WORD_SOUND,   /* as it must be */
    GW_WORD_NOT_MET, /* nothing is left of what the item is for */
    GW_WORD_JUDGED   /* wrong; the item's function says what is left */
};

struct gw_item_kind {
    const char *id, *title;          /* "screw_spacing", "spacing of the plate's screws" */
    struct gw_field value;           /* how a value is read: a number of its dimension and range, or a word */
    const enum gw_word_sense *means; /* by word, from the value 1; NULL: a number */
};
extern const struct gw_item_kind gw_item_kinds[GW_ITEM_COUNT];
/* GW_ITEM_COUNT where no item has that id. */
enum gw_item_id gw_item_named(const char *id);
/* The nearest id, or NULL; for "did you mean". */
const char *gw_item_nearest(const char *id);

struct gw_item_value {
    double number; /* SI; absent: a word, or not read */
    int word;      /* from 1, of the item's words; 0: a number, or not read */
};
/* Reads a value of the item at the node; every fault is reported there. True when there was none. */
bool gw_item_read(struct gw_item_value *out, struct gw_load *load, enum gw_item_id item, const struct gw_node *node);
/* "gap", or "" where it is a number. */
const char *gw_item_word(enum gw_item_id item, struct gw_item_value value);
/* As people read it: "9 1/2 in", "1/4 in per ft", "gap"; nothing where it was not read. */
struct gw_value gw_item_shown(enum gw_item_id item, struct gw_item_value value);
/* The same of a limit: `side` 1: not to be below, -1: not above. What is not exact is rounded to the strict side. */
struct gw_value gw_item_limit_shown(enum gw_item_id item, double limit, int side);

/* Limits of one item: of the system's own, or of practice. SI; absent: none on that side. */
struct gw_own_limits {
    double at_least, at_most;
};
/* What a system states of its own limits (`installation`). */
struct gw_installation {
    const struct gw_own_limits *of[GW_ITEM_COUNT]; /* NULL: it states none */
};
extern const struct gw_record gw_installation_record;

#ifdef __cplusplus
}
#endif

#endif
