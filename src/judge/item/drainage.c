/* Weeps and pockets: what lets water in, holds it, and lets it out. */
#include "judge/drained.h"
#include "judge/items.h"
#include "judge/plated.h"

#include "base/tolerance.h"
#include "tables_data.h"

/* Systems that have none ------------------------------------------------------------------------------------------- */

static const char *without_plate(const struct gw_ask *ask, const struct gw_system *system)
{
    (void)ask;
    return gw_without_plates(system);
}

/* A pocket of a silicone system drains where the system says how. */
static const char *without_weeps(const struct gw_ask *ask, const struct gw_system *system)
{
    (void)ask;
    return system->system->glazing == GW_SILICONE && !system->drainage
               ? "silicone holds the glass, and the system states no pocket that drains (drainage)"
               : NULL;
}

/* Words ------------------------------------------------------------------------------------------------------------ */

#define LEFT_OF(name)                                                                                                  \
    static void name(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,                              \
                     const struct gw_as_read *read, const struct gw_system *system)

/* What a word that leaves nothing means. */
static void say_if(struct gw_left *out, const struct gw_as_read *read, enum gw_item_id item, const char *word,
                   const char *means)
{
    if (gw_reads(read, item, word)) out->remark = GW_PLAINLY(means);
}

#define PLAIN_WORD(name, item, word, means)                                                                            \
    LEFT_OF(name)                                                                                                      \
    {                                                                                                                  \
        (void)ask;                                                                                                     \
        (void)spot;                                                                                                    \
        (void)system;                                                                                                  \
        say_if(out, read, item, word, means);                                                                          \
    }
PLAIN_WORD(left_of_frame_joint, GW_ITEM_frame_joint, "open",
           "an open joint of the frame lets water into the wall past the pocket")
PLAIN_WORD(left_of_weep_place, GW_ITEM_weep_place, "pocket_head",
           "the slots sit at the head of the pocket below: water stays in this one, and air blows on the edge of the "
           "unit below")
PLAIN_WORD(left_of_weep_clear, GW_ITEM_weep_clear, "no", "blocked weeps drain nothing")

/* A plug that is not bedded lets the pressure out, and water past it into the next pocket: how much, nothing tells. */
LEFT_OF(left_of_joint_plug)
{
    say_if(out, read, GW_ITEM_joint_plug, "missing",
           "without its plug the pocket loses its pressure, and water travels to the next lite");
    if (!gw_reads(read, GW_ITEM_joint_plug, "loose")) return;
    gw_left_by_flow(out, ask, spot, read, system);
    gw_left_unknown(out, GW_PLAINLY("does water poured into the pocket run past the plug to the next lite"));
}

/* Whatever leaves the plate's weeps leaves by the cover's. */
LEFT_OF(left_of_cover_weep_clear)
{
    (void)ask;
    (void)spot;
    (void)system;
    out->lost = gw_reads(read, GW_ITEM_cover_weep_clear, "no");
    say_if(out, read, GW_ITEM_cover_weep_clear, "no", "a cover whose weeps are blocked blocks the plate's behind it");
}

/* With the cover's weeps free water has a way out; how much stands behind the lower edge, nothing tells. */
LEFT_OF(left_of_sealant)
{
    if (!gw_reads(read, GW_ITEM_sealant_under_cover, "yes")) return;
    out->lost = gw_reads(read, GW_ITEM_cover_weep_clear, "no");
    if (out->lost) {
        out->remark = GW_PLAINLY("the cover's weeps are blocked, its lower edge is sealed: no way out is left");
        return;
    }
    gw_left_by_flow(out, ask, spot, read, system);
    gw_left_unknown(out, gw_reads(read, GW_ITEM_cover_weep_clear, "yes")
                             ? GW_PLAINLY("does water poured behind the cover run out of its weeps")
                             : GW_PLAINLY("are the cover's weeps free of sealant"));
}

/* Number and size of the weeps ------------------------------------------------------------------------------------- */

static void at_least(struct gw_item_limit *out, double by_system, double by_practice)
{
    out->at_least = gw_given(by_system) ? by_system : by_practice;
    out->basis = gw_given(by_system) ? GW_LIMIT_SYSTEM : GW_LIMIT_PRACTICE;
}

#define LIMIT_OF(name)                                                                                                 \
    static void name(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,                        \
                     const struct gw_system *system)

static double least_size(struct gw_ask *ask, int row)
{
    return GW_USE(&ask->engine, &ask->engine.tables->weep_least[row])->size_m;
}

LIMIT_OF(limit_of_count)
{
    (void)spot;
    const struct gw_weep_number *row = &ask->engine.tables->weep_number[GW_ROW_WEEP_NUMBER_SLOTS];
    const double own = gw_drainage_of(system).slots;
    at_least(out, own, gw_given(own) ? GW_ABSENT : GW_USE(&ask->engine, row)->least);
}

LIMIT_OF(limit_of_length)
{
    (void)spot;
    const double own = gw_drainage_of(system).slot_length;
    at_least(out, own, gw_given(own) ? GW_ABSENT : least_size(ask, GW_ROW_WEEP_LEAST_SLOT_LENGTH));
}

LIMIT_OF(limit_of_height)
{
    (void)spot;
    const double own = gw_drainage_of(system).slot_height;
    at_least(out, own, gw_given(own) ? GW_ABSENT : least_size(ask, GW_ROW_WEEP_LEAST_SLOT_HEIGHT));
}

/* The system states none but by `installation`. */
LIMIT_OF(limit_of_cover_length)
{
    (void)spot;
    (void)system;
    at_least(out, GW_ABSENT, least_size(ask, GW_ROW_WEEP_LEAST_SLOT_LENGTH));
}

/* Cover and plate -------------------------------------------------------------------------------------------------- */

LEFT_OF(left_of_cover_length)
{
    struct gw_item_limit limit;
    const double length = read->of[GW_ITEM_cover_weep_length].number;
    out->lost = !(length > 0);
    if (out->lost) {
        out->remark = GW_PLAINLY("a cover without an opening drains nothing");
        return;
    }
    gw_item_limit_at(&limit, ask, &gw_item_cover_weep_length, spot, system);
    if (length < limit.at_least * (1 - GW_HAIR))
        gw_left_unknown(out, GW_PLAINLY("does the cover pass what the plate does: how many slots has it, how high"));
}

/* Half of what both slots measure along the member; `least`: of what is known of them. */
struct overlap {
    double least;
    bool plate, cover; /* its slots are known */
};

static struct overlap overlap_of(const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_own_limits none = {GW_ABSENT, GW_ABSENT};
    const struct gw_own_limits *own =
        system->installation ? system->installation->of[GW_ITEM_cover_weep_length] : &none;
    if (!own) own = &none;
    const double plate = gw_read_or(read, GW_ITEM_weep_length, gw_drainage_of(system).slot_length),
                 cover = gw_read_or(read, GW_ITEM_cover_weep_length, own->at_most),
                 some = gw_given(cover) ? cover : own->at_least;
    return (struct overlap){((gw_given(plate) ? plate : 0) + (gw_given(some) ? some : 0)) / 2, gw_given(plate),
                            gw_given(cover)};
}

/* Where the slots are clear of each other nothing is driven straight through; where they are not, no figure tells how
 * much is. */
LEFT_OF(left_of_offset)
{
    struct gw_item_limit limit;
    const struct overlap o = overlap_of(read, system);
    const double offset = read->of[GW_ITEM_weep_offset].number;
    const struct gw_value apart = gw_of_quantity(GW_THICKNESS, offset), half = gw_of_quantity(GW_THICKNESS, o.least);
    out->lost = !(offset > 0) || offset < o.least * (1 - GW_HAIR);
    if (!(offset > 0)) {
        out->remark = GW_PLAINLY("the slots of plate and cover are in line: wind drives water straight through");
        return;
    }
    if (out->lost) {
        out->remark = GW_SAY(ask->arena,
                             "the slots of plate and cover are in line, {} from middle to middle where they are clear "
                             "of each other at {}: wind drives water straight through",
                             apart, half);
        return;
    }
    if (!o.plate || !o.cover) {
        gw_left_unknown(out, GW_SAY(ask->arena,
                                    "how long are the slots of {}: they are clear of each other where their middles "
                                    "are half of both apart",
                                    gw_of_text(o.plate   ? "the cover"
                                               : o.cover ? "the plate"
                                                         : "plate and cover")));
        return;
    }
    out->limit = (struct gw_item_limit){.at_least = o.least,
                                        .at_most = GW_ABSENT,
                                        .basis = GW_LIMIT_GEOMETRY,
                                        .note = GW_PLAINLY("half of both slots: no direct path")};
    gw_item_limit_at(&limit, ask, &gw_item_weep_offset, spot, system);
    if (offset < limit.at_least * (1 - GW_HAIR))
        gw_left_unknown(
            out, GW_PLAINLY("no direct path, but nearer than the system asks: does it stay dry in a water test there"));
}

/* The list --------------------------------------------------------------------------------------------------------- */

const struct gw_item gw_item_frame_joint = {.id = GW_ITEM_frame_joint,
                                            .stage = GW_STAGE_FRAME,
                                            .on = GW_ON_POCKET,
                                            .hold = true,
                                            .how = "eye, mirror: every joint of metal, those that glass will hide too",
                                            .prevents = "water into the wall past the pocket",
                                            .clause = "common practice, no source",
                                            .if_missed = "look at the other joints of that frame",
                                            .does = &(const struct gw_item_functions){.left = left_of_frame_joint}};
const struct gw_item gw_item_joint_plug = {.id = GW_ITEM_joint_plug,
                                           .stage = GW_STAGE_FRAME,
                                           .on = GW_ON_POCKET,
                                           .hold = true,
                                           .how = "eye, thumb: bedded on all sides",
                                           .prevents = "water travels to the next lite; the pocket loses its pressure",
                                           .clause = "common practice, no source",
                                           .if_missed = "look at the plugs beside it",
                                           .does = &(const struct gw_item_functions){.left = left_of_joint_plug}};
const struct gw_item gw_item_weep_place = {
    .id = GW_ITEM_weep_place,
    .stage = GW_STAGE_COVERS,
    .on = GW_ON_POCKET,
    .hold = true,
    .how = "eye: the slot stands above the horizontal that it drains",
    .prevents = "dry slots, wet pockets, air on the edge of the unit",
    .clause = "common practice, no source",
    .if_missed = "look at every plate of that row: was it hung upside down",
    .does = &(const struct gw_item_functions){.without = without_weeps, .left = left_of_weep_place}};
const struct gw_item gw_item_weep_count = {
    .id = GW_ITEM_weep_count,
    .stage = GW_STAGE_COVERS,
    .on = GW_ON_POCKET,
    .hold = true,
    .how = "count the plate's slots under one lite",
    .prevents = "water stays in the pocket",
    .clause = "common practice, no source",
    .if_missed = "count those beside it",
    .does =
        &(const struct gw_item_functions){.without = without_weeps, .limit = limit_of_count, .left = gw_left_by_flow}};
const struct gw_item gw_item_weep_length = {
    .id = GW_ITEM_weep_length,
    .stage = GW_STAGE_COVERS,
    .on = GW_ON_POCKET,
    .hold = true,
    .how = "tape",
    .prevents = "water stays in the pocket",
    .clause = "common practice, no source",
    .if_missed = "measure those beside it",
    .does =
        &(const struct gw_item_functions){.without = without_weeps, .limit = limit_of_length, .left = gw_left_by_flow}};
const struct gw_item gw_item_weep_height = {
    .id = GW_ITEM_weep_height,
    .stage = GW_STAGE_COVERS,
    .on = GW_ON_POCKET,
    .hold = true,
    .how = "tape or gauge",
    .prevents = "water stays in the pocket; surface tension closes it",
    .clause = "common practice, no source",
    .if_missed = "measure those beside it",
    .does =
        &(const struct gw_item_functions){.without = without_weeps, .limit = limit_of_height, .left = gw_left_by_flow}};
const struct gw_item gw_item_weep_clear = {
    .id = GW_ITEM_weep_clear,
    .stage = GW_STAGE_COVERS,
    .on = GW_ON_POCKET,
    .hold = true,
    .how = "eye, light, a wire through it",
    .prevents = "water stays in the pocket",
    .clause = "common practice, no source",
    .if_missed = "look at those beside it; what blocks them",
    .does = &(const struct gw_item_functions){.without = without_weeps, .left = left_of_weep_clear}};
const struct gw_item gw_item_weep_offset = {
    .id = GW_ITEM_weep_offset,
    .stage = GW_STAGE_COVERS,
    .on = GW_ON_POCKET,
    .hold = true,
    .how = "tape, from the middle of a plate's slot to the middle of the nearest of the cover's",
    .prevents = "wind drives water straight through",
    .clause = "common practice, no source",
    .if_missed = "how were covers and plates matched in that row",
    .does = &(const struct gw_item_functions){.without = without_plate, .left = left_of_offset}};
const struct gw_item gw_item_cover_weep_length = {
    .id = GW_ITEM_cover_weep_length,
    .stage = GW_STAGE_COVERS,
    .on = GW_ON_POCKET,
    .hold = false,
    .how = "tape",
    .prevents = "the cover holds water back",
    .clause = "common practice, no source",
    .if_missed = "measure those beside it",
    .does = &(const struct gw_item_functions){
        .without = without_plate, .limit = limit_of_cover_length, .left = left_of_cover_length}};
const struct gw_item gw_item_cover_weep_clear = {
    .id = GW_ITEM_cover_weep_clear,
    .stage = GW_STAGE_COVERS,
    .on = GW_ON_POCKET,
    .hold = false,
    .how = "eye, light",
    .prevents = "water stands behind the cover",
    .clause = "common practice, no source",
    .if_missed = "look at those beside it",
    .does = &(const struct gw_item_functions){.without = without_plate, .left = left_of_cover_weep_clear}};
const struct gw_item gw_item_sealant_under_cover = {
    .id = GW_ITEM_sealant_under_cover,
    .stage = GW_STAGE_COVERS,
    .on = GW_ON_POCKET,
    .hold = false,
    .how = "eye: no sealant across a weep or under the cover's lower edge",
    .prevents = "trapped water",
    .clause = "common practice, no source",
    .if_missed = "can it be cut free; look along that row",
    .does = &(const struct gw_item_functions){.without = without_plate, .left = left_of_sealant}};
