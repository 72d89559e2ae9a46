/* What can be measured: titles, words and ranges of its values. */
#include "galeward/items.h"

#include "base/fields.h"
#include "base/spelling.h"

#include <math.h>
#include <string.h>

/* Words: the sound one first, `unknown` last. */
#define SENSES(...)                                                                                                    \
    (const enum gw_word_sense[]) { __VA_ARGS__ }
#define WORDS(id_, ...) static const struct gw_choice WORDS_##id_[] = {__VA_ARGS__, {0}};
#define YES_NO_UNKNOWN(id_, yes_, no_) WORDS(id_, {"yes", 1, yes_}, {"no", 2, no_}, {"unknown", 3, "not looked at"})
WORDS(anchor_fastened, {"yes", 1, "as drawn, a slotted one too"}, {"no", 2, "not fastened"},
      {"loose", 3, "fastened, not tight, where it is drawn tight"}, {"unknown", 4, "not looked at"})
WORDS(frame_joint, {"sealed", 1, "metal bedded in sealant"}, {"open", 2, "not sealed"}, {"unknown", 3, "not looked at"})
WORDS(joint_plug, {"bedded", 1, "in sealant on all sides"}, {"loose", 2, "there, not bedded"},
      {"missing", 3, "not there"}, {"unknown", 4, "not looked at"})
WORDS(blocks_and_weeps, {"clear", 1, "blocks leave the weeps and the way of the water free"},
      {"covered", 2, "a block covers a weep or stops the water"}, {"unknown", 3, "not looked at"})
WORDS(gasket_place, {"as_drawn", 1, "inner and outer gasket each in its place"},
      {"exchanged", 2, "in each other's place, or another gasket"}, {"unknown", 3, "not looked at"})
WORDS(gasket_corner, {"sealed", 1, "butted and sealed"}, {"open", 2, "a gap"}, {"unknown", 3, "not looked at"})
YES_NO_UNKNOWN(driver_checked, "checked on a meter that day", "not checked, or without a limit of torque")
WORDS(screw_type, {"as_supplied", 1, "the system's own screw"}, {"other", 2, "another screw"},
      {"unknown", 3, "not known which"})
WORDS(screw_head, {"bears", 1, "all round on the plate"}, {"gap", 2, "not all round, or the shank shows"},
      {"unknown", 3, "not looked at"})
WORDS(weep_place, {"pocket_bottom", 1, "the plate's slots drain the bottom of the pocket"},
      {"pocket_head", 2, "they sit at the head of the pocket below: the plate is upside down"},
      {"unknown", 3, "not looked at"})
YES_NO_UNKNOWN(weep_clear, "free", "blocked")
YES_NO_UNKNOWN(cover_weep_clear, "free", "blocked")
YES_NO_UNKNOWN(sealant_under_cover, "sealant closes the cover's lower edge or a weep", "none")
WORDS(substrate, {"clean", 1, "clean, and primed where the sealant asks it"}, {"dirty", 2, "not clean, or not primed"},
      {"unknown", 3, "not looked at"})
WORDS(sealant_adhesion, {"holds", 1, "the sealant tears before it peels"}, {"peels", 2, "it comes off"},
      {"unknown", 3, "not tried"})
WORDS(air_barrier, {"joined", 1, "runs on to the frame's line of tightness"}, {"open", 2, "a gap"},
      {"unknown", 3, "not looked at"})

/* In the order of those words, from the first. */
#define FAILS_THEN_UNKNOWN SENSES(GW_WORD_SOUND, GW_WORD_NOT_MET, GW_WORD_UNKNOWN)
#define JUDGED_THEN_UNKNOWN SENSES(GW_WORD_SOUND, GW_WORD_JUDGED, GW_WORD_UNKNOWN)
#define WORD_ITEM(id_, title_, means_)                                                                                 \
    [GW_ITEM_##                                                                                                        \
        id_] = {#id_, title_, {.key = "value", .type = GW_T_CHOICE, .choices = WORDS_##id_, .help = title_}, means_}

/* A title that a table's column takes, and what it says in full. */
#define NUMBER_HELPED(id_, dim_, title_, help_, ...)                                                                   \
    [GW_ITEM_##                                                                                                        \
        id_] = {#id_, title_, {.key = "value", .type = GW_T_NUMBER, .dim = dim_, .help = help_, __VA_ARGS__}, NULL}
#define NUMBER_ITEM(id_, dim_, title_, ...) NUMBER_HELPED(id_, dim_, title_, title_, __VA_ARGS__)

const struct gw_item_kind gw_item_kinds[GW_ITEM_COUNT] = {
    NUMBER_ITEM(location, GW_THICKNESS, "distance of a member from where it is drawn", LIMITS(0, 1)),
    NUMBER_ITEM(anchor_clearance, GW_THICKNESS, "room between frame and structure at an anchor", LIMITS(0, 2)),
    NUMBER_ITEM(plumb, GW_THICKNESS, "mullion out of plumb over its length", LIMITS(0, 1)),
    NUMBER_ITEM(level, GW_THICKNESS, "horizontal out of level over its length", LIMITS(0, 1)),
    NUMBER_ITEM(squareness, GW_THICKNESS, "difference of an opening's diagonals", LIMITS(0, 1)),
    NUMBER_ITEM(member_offset, GW_THICKNESS, "offset of members in line", LIMITS(0, 0.2)),
    NUMBER_ITEM(splice_engagement, GW_THICKNESS, "engagement of a splice or of a unit's male leg", LIMITS(0, 1)),
    NUMBER_HELPED(joint_width, GW_THICKNESS, "joint between pieces one above the other",
                  "width of the joint between pieces one above the other", LIMITS(0, 0.5)),
    NUMBER_ITEM(glass_thickness, GW_THICKNESS, "thickness of the unit, measured", LIMITS(1e-3, 0.3)),
    NUMBER_ITEM(glass_bite, GW_THICKNESS, "bite of the glass", LIMITS(0, 0.2)),
    NUMBER_ITEM(edge_clearance, GW_THICKNESS, "clearance at the edge of the glass", LIMITS(0, 0.2)),
    NUMBER_ITEM(face_clearance, GW_THICKNESS, "clearance at the face of the glass", LIMITS(0, 0.1)),
    NUMBER_ITEM(setting_block_length, GW_THICKNESS, "length of each setting block", LIMITS(0, 1)),
    NUMBER_ITEM(setting_block_place, GW_LENGTH, "middle of a setting block from the corner of the glass",
                LIMITS(0, 10)),
    NUMBER_ITEM(setting_block_width, GW_THICKNESS, "width of the setting blocks, across the glass", LIMITS(0, 0.3)),
    NUMBER_ITEM(setting_block_hardness, GW_RATIO, "hardness of the setting blocks, Shore A", LIMITS(1, 100)),
    NUMBER_ITEM(edge_block_length, GW_THICKNESS, "length of each side block", LIMITS(0, 1)),
    NUMBER_ITEM(edge_block_hardness, GW_RATIO, "hardness of the side blocks, Shore A", LIMITS(1, 100)),
    NUMBER_HELPED(gasket_excess, GW_RATIO, "excess of a gasket over its groove, as a share",
                  "gasket longer than its groove, as a share of it; below 0 it is stretched", LIMITS(-1, 1)),
    NUMBER_ITEM(screw_spacing, GW_THICKNESS, "spacing of the plate's screws", LIMITS(0.005, 10)),
    NUMBER_ITEM(screw_end_distance, GW_THICKNESS, "last screw from the end of the plate", LIMITS(0, 10)),
    NUMBER_ITEM(screw_torque, GW_MOMENT, "torque of a plate screw", LIMITS(0, 1000)),
    NUMBER_ITEM(screw_length, GW_THICKNESS, "length of a plate screw under its head", LIMITS(1e-3, 0.5)),
    NUMBER_ITEM(weep_count, GW_RATIO, "weep slots of a pocket", LIMITS(0, 100)),
    NUMBER_ITEM(weep_length, GW_THICKNESS, "length of a plate's weep slot", LIMITS(0, 2)),
    NUMBER_ITEM(weep_height, GW_THICKNESS, "height of a plate's weep slot", LIMITS(0, 0.2)),
    NUMBER_HELPED(weep_offset, GW_THICKNESS, "plate's slot to the nearest of the cover's",
                  "from the middle of a plate's slot to that of the nearest of the cover's, along the member",
                  LIMITS(0, 10)),
    NUMBER_ITEM(cover_weep_length, GW_THICKNESS, "length of a cover's weep slot", LIMITS(0, 2)),
    NUMBER_HELPED(sill_slope, GW_SLOPE, "fall of the sill flashing, outward above 0",
                  "fall of the sill flashing, rise over run, outward above 0", LIMITS(-2, 2)),
    NUMBER_ITEM(end_dam_height, GW_THICKNESS, "height of an end dam or upstand", LIMITS(0, 1)),
    NUMBER_ITEM(sealant_width, GW_THICKNESS, "width of a sealant joint", LIMITS(0, 0.2)),
    NUMBER_ITEM(sealant_depth, GW_THICKNESS, "depth of a sealant joint", LIMITS(0, 0.2)),
    NUMBER_ITEM(field_water, GW_PRESSURE, "water test on site: pressure at which nothing leaked", .flags = GW_MAGNITUDE,
                LIMITS(0, 10000)),
    NUMBER_ITEM(leaked_at, GW_PRESSURE, "water test on site: pressure at which water came in", .flags = GW_MAGNITUDE,
                LIMITS(0, 10000)),
    WORD_ITEM(anchor_fastened, "anchor as it is drawn",
              SENSES(GW_WORD_SOUND, GW_WORD_NOT_MET, GW_WORD_NOT_MET, GW_WORD_UNKNOWN)),
    WORD_ITEM(frame_joint, "joint of metal with metal", FAILS_THEN_UNKNOWN),
    WORD_ITEM(joint_plug, "plug or zone dam of a pocket",
              SENSES(GW_WORD_SOUND, GW_WORD_JUDGED, GW_WORD_NOT_MET, GW_WORD_UNKNOWN)),
    WORD_ITEM(blocks_and_weeps, "setting blocks beside the weeps", JUDGED_THEN_UNKNOWN),
    WORD_ITEM(gasket_place, "inner and outer gasket", JUDGED_THEN_UNKNOWN),
    WORD_ITEM(gasket_corner, "corner of the gaskets", JUDGED_THEN_UNKNOWN),
    WORD_ITEM(driver_checked, "driver with a limit of torque, checked", JUDGED_THEN_UNKNOWN),
    WORD_ITEM(screw_type, "kind of plate screw", SENSES(GW_WORD_SOUND, GW_WORD_UNKNOWN, GW_WORD_UNKNOWN)),
    WORD_ITEM(screw_head, "head of a plate screw", FAILS_THEN_UNKNOWN),
    WORD_ITEM(weep_place, "where the plate's slots drain", FAILS_THEN_UNKNOWN),
    WORD_ITEM(weep_clear, "plate's weep slots free", FAILS_THEN_UNKNOWN),
    WORD_ITEM(cover_weep_clear, "cover's weep slots free", JUDGED_THEN_UNKNOWN),
    WORD_ITEM(sealant_under_cover, "sealant across weeps or under the cover",
              SENSES(GW_WORD_JUDGED, GW_WORD_SOUND, GW_WORD_UNKNOWN)),
    WORD_ITEM(substrate, "surface under the sealant", JUDGED_THEN_UNKNOWN),
    WORD_ITEM(sealant_adhesion, "pull of the sealant by hand", FAILS_THEN_UNKNOWN),
    WORD_ITEM(air_barrier, "air barrier joined to the frame", JUDGED_THEN_UNKNOWN),
};

enum gw_item_id gw_item_named(const char *id)
{
    int i = 0;
    while (i < GW_ITEM_COUNT && !gw_words_alike(gw_item_kinds[i].id, id)) i++;
    return (enum gw_item_id)i;
}

const char *gw_item_nearest(const char *id)
{
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, id);
    for (int i = 0; i < GW_ITEM_COUNT; i++) gw_nearest_offer(&nearest, gw_item_kinds[i].id);
    return gw_nearest_word(&nearest);
}

bool gw_item_read(struct gw_item_value *out, struct gw_load *load, enum gw_item_id item, const struct gw_node *node)
{
    const struct gw_field *field = &gw_item_kinds[item].value;
    *out = (struct gw_item_value){GW_ABSENT, 0};
    return gw_field_load(load, field, node, field->choices ? (void *)&out->word : (void *)&out->number);
}

const char *gw_item_word(enum gw_item_id item, struct gw_item_value value)
{
    const struct gw_choice *words = gw_item_kinds[item].value.choices;
    return words && value.word ? gw_choice_name(words, value.word) : "";
}

struct gw_value gw_item_shown(enum gw_item_id item, struct gw_item_value value)
{
    const struct gw_field *field = &gw_item_kinds[item].value;
    if (field->choices || !gw_given(value.number)) return gw_of_text(gw_item_word(item, value));
    return gw_item_limit_shown(item, value.number, 0);
}

/* Of other ratios people say counts and shares. */
struct gw_value gw_item_limit_shown(enum gw_item_id item, double limit, int side)
{
    const enum gw_dim dim = gw_item_kinds[item].value.dim;
    if (dim == GW_RATIO) return gw_of_quantity(dim, limit);
    return gw_of_trade(dim == GW_LENGTH ? GW_THICKNESS : dim, limit, side);
}

/* Limits ----------------------------------------------------------------------------------------------------------- */

#define LIMITS_IN(name_, dim_)                                                                                         \
    static const struct gw_field name_##_FIELDS[] = {                                                                  \
        NUM(gw_own_limits, at_least, dim_, .help = "not less"),                                                        \
        NUM(gw_own_limits, at_most, dim_, .help = "not more"),                                                         \
    };                                                                                                                 \
    static const struct gw_record name_ = RECORD("limits", gw_own_limits, name_##_FIELDS);
LIMITS_IN(LIMITS_GW_RATIO, GW_RATIO)
LIMITS_IN(LIMITS_GW_SLOPE, GW_SLOPE)
LIMITS_IN(LIMITS_GW_LENGTH, GW_LENGTH)
LIMITS_IN(LIMITS_GW_THICKNESS, GW_THICKNESS)
LIMITS_IN(LIMITS_GW_MOMENT, GW_BENDING)
LIMITS_IN(LIMITS_GW_PRESSURE, GW_PRESSURE)

#define LIMIT_FIELD(id_, dim_)                                                                                         \
    {.key = #id_,                                                                                                      \
     .type = GW_T_RECORD,                                                                                              \
     .offset = offsetof(struct gw_installation, of[GW_ITEM_##id_]),                                                    \
     .record = &LIMITS_##dim_,                                                                                         \
     .help = "its own limits of that item"},
static const struct gw_field INSTALLATION[] = {GW_NUMBER_ITEMS(LIMIT_FIELD)};
const struct gw_record gw_installation_record = RECORD("installation", gw_installation, INSTALLATION);
