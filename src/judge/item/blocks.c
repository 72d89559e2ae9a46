/* What the glass stands on: setting blocks; what keeps it from the sides: edge blocks. */
#include "judge/checks.h"
#include "judge/glass_lite.h"
#include "judge/items.h"
#include "judge/lite_room.h"
#include "judge/transom_load.h"

#include "tables_data.h"

static const char WHICH_LITE[] = "which lite is it? Give its column, story and row";

static const char *without_blocks(const struct gw_ask *ask, const struct gw_system *system)
{
    const struct gw_silicone_spec *bead = gw_part(system, silicone);
    (void)ask;
    return bead && bead->carries_weight == GW_YES ? "the silicone bears the weight of the glass" : NULL;
}

/* Length ----------------------------------------------------------------------------------------------------------- */

static double area_of(const struct gw_element *lite) { return lite ? lite->width * lite->pane : GW_ABSENT; }

/* Each system of units has the rule in round numbers of its own. */
static double length_by_area(struct gw_ask *ask, const struct gw_element *lite)
{
    const struct gw_setting_block *row = GW_USE(&ask->engine, &ask->model->tables->setting_block[0]);
    return (ask->model->project.units == GW_SI ? row->per_area_si : row->per_area) * area_of(lite);
}

static void length_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_system *system)
{
    const struct gw_setting_block *row = GW_USE(&ask->engine, &ask->model->tables->setting_block[0]);
    const double area = area_of(spot->lite);
    (void)system;
    out->at_least = fmax(row->least_m, length_by_area(ask, spot->lite));
    out->basis = GW_LIMIT_PRACTICE;
    if (gw_given(area)) out->note = GW_SAY(ask->arena, "for a lite of {}", gw_of_quantity(GW_AREA, area));
}

/* N, of the whole lite; absent. */
static double weight_of(struct gw_ask *ask, const struct gw_element *lite)
{
    const struct gw_lite_type *type = gw_glazed_type(ask, lite);
    struct gw_make_up m;
    if (!type || gw_make_up_from(&m, type->layers.items, type->layers.n, &ask->engine) != GW_OK) return GW_ABSENT;
    return gw_resting_weight(gw_make_up_weight(&m, &ask->engine), lite->width, lite->pane, &ask->engine);
}

/* The rule's length for the area bears the weight; the least length is for handling and creep besides. */
static void length_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                        const struct gw_as_read *read, const struct gw_system *system)
{
    const double length = read->of[GW_ITEM_setting_block_length].number;
    (void)system;
    if (!spot->lite) {
        gw_left_unknown(out, GW_PLAINLY(WHICH_LITE));
        return;
    }
    const double weight = weight_of(ask, spot->lite), needed = length_by_area(ask, spot->lite);
    if (!gw_given(weight)) {
        gw_left_unknown(out, GW_PLAINLY(gw_unknown_weight));
        return;
    }
    gw_left_by(out, "bearing", length / needed, length / needed, 1,
               GW_SAY(ask->arena, "the lite's area asks {} of each block, which bears {}",
                      gw_item_limit_shown(GW_ITEM_setting_block_length, needed, 1),
                      gw_of_quantity(GW_FORCE, weight / 2)));
}

/* Place ------------------------------------------------------------------------------------------------------------ */

/* Of a lite too narrow for it the quarter points are left. */
static double drawn_offset(const struct gw_system *system, const struct gw_element *lite)
{
    const struct gw_member_spec *t = gw_part(system, transom);
    return t && t->block_offset < lite->width / 2 ? t->block_offset : GW_ABSENT;
}

/* At the quarter points, or as the system has it; outward to where practice lets them go. */
static void place_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                        const struct gw_system *system)
{
    const struct gw_rail_limits *row = GW_USE(&ask->engine, &ask->model->tables->rail_limits[0]);
    if (!spot->lite) return;
    const double drawn = drawn_offset(system, spot->lite), width = spot->lite->width;
    const double at = gw_given(drawn) ? drawn : width / 4;
    out->at_most = at;
    out->at_least = fmin(fmax(width / row->block_spans, row->block_least_m), at);
    out->basis = gw_given(drawn) ? GW_LIMIT_SYSTEM : GW_LIMIT_PRACTICE;
    out->note = GW_PLAINLY(gw_given(drawn) ? "as the system has it, or further outward"
                                           : "at the quarter point, or further outward");
}

static const struct gw_element *rail_under(const struct gw_ask *ask, const struct gw_spot *spot)
{
    const struct gw_element *m = spot->edge == GW_EDGE_SILL ? spot->member : NULL;
    if (m && m->kind == GW_TRANSOM) return m;
    return spot->wall
               ? gw_takeoff_edge(ask->takeoff, spot->wall, spot->column, spot->story, spot->row, GW_EDGE_SILL, false)
               : NULL;
}

/* The glass begins within the mullion's face, so its corner is at most half of that from the rail's end. */
static const struct gw_system *with_blocks_at(struct gw_ask *ask, const struct gw_system *system, double place,
                                              double span)
{
    const struct gw_member_spec *mullion = gw_part(system, mullion);
    struct gw_system *copy = gw_alloc(ask->arena, 1, sizeof *copy);
    struct gw_member_spec *transom = gw_alloc(ask->arena, 1, sizeof *transom);
    const double face = mullion && mullion->tube ? mullion->tube->width / 2 : 0;
    *copy = *system;
    *transom = *system->transom;
    transom->block_offset = fmin(place + face, span / 2);
    copy->transom = transom;
    return copy;
}

/* Such a block has another's room. */
static bool meets_the_other(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                            const struct gw_system *system)
{
    const double place = read->of[GW_ITEM_setting_block_place].number;
    const double length = read->of[GW_ITEM_setting_block_length].number;
    struct gw_item_limit least;
    gw_item_limit_at(&least, ask, &gw_item_setting_block_length, spot, system);
    return spot->lite->width - 2 * place < (gw_given(length) ? length : least.at_least) * (1 - GW_HAIR);
}

/* No block stands farther from its corner than the middle of the glass; two that meet there are one, and the lite
 * stands on a point. Within the limit, of a lite too narrow for two, they may meet. */
static bool past_the_middle(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                            const struct gw_as_read *read, const struct gw_system *system, bool outside)
{
    const double place = read->of[GW_ITEM_setting_block_place].number, width = spot->lite->width;
    const bool off = place >= width * (1 - GW_HAIR), beyond = place > width / 2 * (1 + GW_HAIR);
    if (!off && !beyond && !(outside && meets_the_other(ask, spot, read, system))) return false;
    out->undecided = true;
    gw_left_unknown(out,
                    GW_SAY(ask->arena,
                           off ? "the glass is {} wide: from where was it measured, and on what does the lite stand?"
                           : beyond ? "beyond the middle of the glass, which is {} wide: from which corner was it "
                                      "measured, and where is the other block?"
                                    : "two blocks meet there in the middle of the glass, which is {} wide: it stands "
                                      "on one point. Where is the other block?",
                           gw_of_quantity(GW_LENGTH, width)));
    return off || beyond;
}

static void place_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                       const struct gw_as_read *read, const struct gw_system *system)
{
    const double place = read->of[GW_ITEM_setting_block_place].number;
    const struct gw_element *rail = spot->lite ? rail_under(ask, spot) : NULL;
    struct gw_item_limit limit;
    gw_item_limit_at(&limit, ask, &gw_item_setting_block_place, spot, system);
    out->lost = !(place > 0);
    if (out->lost) {
        out->remark = GW_PLAINLY("the block stands at the corner of the glass");
        return;
    }
    if (place < limit.at_least * (1 - GW_HAIR)) {
        gw_left_unknown(out, GW_PLAINLY("nearer to the corner of the glass than practice lets a block go: does the "
                                        "glass supplier take it there?"));
        return;
    }
    const bool outside = place > limit.at_most * (1 + GW_HAIR);
    if (spot->lite && past_the_middle(out, ask, spot, read, system, outside)) return;
    if (!outside) return;
    if (!rail || !gw_part(system, transom)) {
        gw_left_unknown(out, GW_PLAINLY(rail ? "what is the member under it? Ask the manufacturer (transom)"
                                             : "which horizontal is under it? Give column, story and row"));
        return;
    }
    const struct gw_system *as_read = with_blocks_at(ask, system, place, rail->span);
    const struct gw_message none = {0};
    gw_left_by_verdict(out, ask, "transom", &gw_check_transom, rail, system, as_read, none);
    gw_left_by_verdict(out, ask, "transom deflection", &gw_check_transom_deflection, rail, system, as_read, none);
}

/* Width, hardness, edge blocks ------------------------------------------------------------------------------------- */

static void width_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                        const struct gw_system *system)
{
    const struct gw_setting_block *row = GW_USE(&ask->engine, &ask->model->tables->setting_block[0]);
    const double thickness = gw_lite_thickness(ask, spot->lite);
    (void)system;
    out->at_least = thickness - row->less_m;
    if (gw_given(thickness)) out->basis = GW_LIMIT_PRACTICE;
}

static void hard(struct gw_item_limit *out, struct gw_ask *ask, int which)
{
    const struct gw_block_hardness *row = GW_USE(&ask->engine, &ask->model->tables->block_hardness[which]);
    out->at_least = row->least;
    out->at_most = row->most;
    out->basis = GW_LIMIT_PRACTICE;
}

static void hardness_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_system *system)
{
    (void)spot;
    (void)system;
    hard(out, ask, GW_ROW_BLOCK_HARDNESS_SETTING);
}

static void edge_hardness_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                                const struct gw_system *system)
{
    (void)spot;
    (void)system;
    hard(out, ask, GW_ROW_BLOCK_HARDNESS_EDGE);
}

static void edge_length_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                              const struct gw_system *system)
{
    (void)spot;
    (void)system;
    out->at_least =
        GW_USE(&ask->engine, &ask->model->tables->install_length[GW_ROW_INSTALL_LENGTH_EDGE_BLOCK])->least_m;
    out->basis = GW_LIMIT_PRACTICE;
}

/* Whatever the other weeps carry: water stands against the edge of the glass. */
static void covered_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_as_read *read, const struct gw_system *system)
{
    (void)ask;
    (void)spot;
    (void)system;
    out->lost = read->of[GW_ITEM_blocks_and_weeps].word == 2;
    if (out->lost) out->remark = GW_PLAINLY("water of the pocket stands behind the block");
}

/* Rows ------------------------------------------------------------------------------------------------------------- */

const struct gw_item gw_item_setting_block_length = {
    .id = GW_ITEM_setting_block_length,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_LITE,
    .hold = true,
    .how = "tape, each of the two",
    .prevents = "crushed edge, sheared seal",
    .clause = "guidance on setting blocks: 0.1 in per ft2 of the lite, or 27 mm per m2, 4 in at least",
    .if_missed = "look at the other block",
    .does = &(const struct gw_item_functions){.without = without_blocks, .limit = length_limit, .left = length_left}};
const struct gw_item gw_item_setting_block_place = {
    .id = GW_ITEM_setting_block_place,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_LITE,
    .hold = true,
    .how = "tape, corner of the glass to the middle of the block",
    .prevents = "a sagging horizontal, a dropped lite",
    .clause = "common practice, no source",
    .if_missed = "look at the other block",
    .does = &(const struct gw_item_functions){.without = without_blocks, .limit = place_limit, .left = place_left}};
const struct gw_item gw_item_setting_block_width = {
    .id = GW_ITEM_setting_block_width,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_LITE,
    .hold = false,
    .how = "tape across the glass",
    .prevents = "a pane without support",
    .clause = "guidance on setting blocks: as wide as the unit, or 1/16 in less",
    .if_missed = "look at the other block",
    .does = &(const struct gw_item_functions){
        .without = without_blocks, .limit = width_limit, .then = "does every pane of the unit stand on it"}};
const struct gw_item gw_item_setting_block_hardness = {
    .id = GW_ITEM_setting_block_hardness,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_LITE,
    .hold = false,
    .how = "Shore A gauge, one of a lot",
    .prevents = "creep, or a point load",
    .clause = "guidance on setting blocks: 80 to 90",
    .if_missed = "which lot is it from",
    .does = &(const struct gw_item_functions){.without = without_blocks,
                                              .limit = hardness_limit,
                                              .then = "which block does the system ask for: ask the manufacturer"}};
const struct gw_item gw_item_edge_block_length = {
    .id = GW_ITEM_edge_block_length,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_LITE,
    .hold = false,
    .how = "tape",
    .prevents = "glass walks sideways onto metal",
    .clause = "common practice, no source",
    .if_missed = "look at the other side",
    .does = &(const struct gw_item_functions){.limit = edge_length_limit,
                                              .then = "which block does the system ask for: ask the manufacturer"}};
const struct gw_item gw_item_edge_block_hardness = {
    .id = GW_ITEM_edge_block_hardness,
    .stage = GW_STAGE_GLASS,
    .on = GW_ON_LITE,
    .hold = false,
    .how = "Shore A gauge, one of a lot",
    .prevents = "glass walks sideways onto metal",
    .clause = "common practice, no source",
    .if_missed = "which lot is it from",
    .does = &(const struct gw_item_functions){.limit = edge_hardness_limit,
                                              .then = "which block does the system ask for: ask the manufacturer"}};
const struct gw_item gw_item_blocks_and_weeps = {.id = GW_ITEM_blocks_and_weeps,
                                                 .stage = GW_STAGE_GLASS,
                                                 .on = GW_ON_LITE,
                                                 .hold = true,
                                                 .how = "eye",
                                                 .prevents = "standing water, a failed seal",
                                                 .clause = "guidance on setting blocks",
                                                 .if_missed = "can the block be moved",
                                                 .does = &(const struct gw_item_functions){.left = covered_left}};
