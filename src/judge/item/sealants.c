/* Sealant joints round the wall. */
#include "galeward/silicone.h"
#include "judge/check.h"
#include "judge/items.h"

#include "tables_data.h"

#include <string.h>

/* Width ------------------------------------------------------------------------------------------------------------ */

/* As it was installed, so without tolerances. False: `why` asks for what is missing. */
static bool joint_of(struct gw_joint_result *out, struct gw_message *why, struct gw_ask *ask,
                     const struct gw_system *system)
{
    const struct gw_perimeter_spec *p = system->perimeter;
    const struct gw_joint_case in = {.movement = p ? p->movement : GW_ABSENT,
                                     .capability = p ? p->capability : GW_ABSENT,
                                     .tolerance = 0,
                                     .slip = GW_ABSENT};
    const bool known = p && gw_sealant_joint(out, &in, &ask->engine) == GW_OK;
    if (known) return true;
    *why = p ? gw_fault_message(ask)
             : GW_PLAINLY("how far does the joint move, and what does the sealant take? Ask the manufacturer "
                          "(perimeter: movement, capability)");
    return false;
}

static void width_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                        const struct gw_system *system)
{
    const struct gw_install_length *row =
        GW_USE(&ask->engine, &ask->model->tables->install_length[GW_ROW_INSTALL_LENGTH_SEALANT_WIDTH]);
    struct gw_joint_result joint;
    struct gw_message why;
    (void)spot;
    out->at_least = row->least_m;
    out->basis = GW_LIMIT_PRACTICE;
    if (!joint_of(&joint, &why, ask, system) || !(joint.width > row->least_m)) return;
    out->at_least = joint.width;
    out->basis = GW_LIMIT_SYSTEM;
    out->note = GW_SAY(ask->arena, "moves {}, the sealant takes {} of its width",
                       gw_of_quantity(GW_THICKNESS, system->perimeter->movement),
                       gw_of_number(system->perimeter->capability, 3));
}

static void width_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                       const struct gw_as_read *read, const struct gw_system *system)
{
    const double width = read->of[GW_ITEM_sealant_width].number;
    struct gw_joint_result joint;
    struct gw_message why;
    (void)spot;
    if (!joint_of(&joint, &why, ask, system)) {
        gw_left_unknown(out, why);
        return;
    }
    gw_left_by(out, "movement", width / joint.width, width / joint.width, 1,
               GW_SAY(ask->arena, "its movement asks {}", gw_of_quantity(GW_THICKNESS, joint.width)));
}

/* Depth ------------------------------------------------------------------------------------------------------------ */

static const struct gw_sealant_shape *shape_row(struct gw_ask *ask)
{
    return GW_USE(&ask->engine, &ask->model->tables->sealant_shape[GW_ROW_SEALANT_SHAPE_SHAPE]);
}

static void depth_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                        const struct gw_system *system)
{
    const struct gw_sealant_shape *shape = shape_row(ask);
    (void)spot;
    (void)system;
    out->at_least = shape->depth_least_m;
    out->at_most = shape->depth_most_m;
    out->basis = GW_LIMIT_PRACTICE;
    out->note = GW_PLAINLY("half the width of the joint");
}

/* Half the width that was read there, within those limits. */
static void depth_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                       const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_sealant_shape *shape = shape_row(ask);
    const double slack = GW_USE(&ask->engine, &ask->model->tables->sealant_depth_slack[0])->slack_m;
    const double width = read->of[GW_ITEM_sealant_width].number;
    out->lost = !(read->of[GW_ITEM_sealant_depth].number > 0);
    if (out->lost) {
        out->remark = GW_PLAINLY("there is no sealant");
        return;
    }
    if (!gw_given(width)) {
        gw_left_unknown(out, GW_PLAINLY("how wide is the joint there?"));
        return;
    }
    const double half = fmin(fmax(shape->depth_share * width, shape->depth_least_m), shape->depth_most_m);
    depth_limit(&out->limit, ask, spot, system);
    out->limit.at_least = fmax(half - slack, shape->depth_least_m);
    out->limit.at_most = fmin(half + slack, shape->depth_most_m);
    out->limit.note = GW_SAY(ask->arena, "half of {}", gw_of_quantity(GW_THICKNESS, width));
    const double depth = read->of[GW_ITEM_sealant_depth].number, hair = GW_HAIR * depth;
    if (depth < out->limit.at_least - hair || depth > out->limit.at_most + hair)
        gw_left_unknown(out, GW_PLAINLY("does the sealant's manufacturer take that depth at that width?"));
}

/* Adhesion --------------------------------------------------------------------------------------------------------- */

static bool reads(const struct gw_as_read *read, enum gw_item_id item, const char *word)
{
    return strcmp(gw_item_word(item, read->of[item]), word) == 0;
}

/* What was pulled there tells whether the sealant holds on such a surface. */
static void substrate_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_as_read *read, const struct gw_system *system)
{
    (void)ask;
    (void)spot;
    (void)system;
    if (reads(read, GW_ITEM_substrate, "clean")) return;
    if (reads(read, GW_ITEM_sealant_adhesion, "holds"))
        gw_left_by(out, "adhesion", INFINITY, INFINITY, 1, GW_PLAINLY("the sealant holds there when it is pulled"));
    else if (reads(read, GW_ITEM_sealant_adhesion, "peels")) out->lost = true;
    else gw_left_unknown(out, GW_PLAINLY("does the sealant hold there: pull it by hand when it has cured"));
}

static void barrier_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_as_read *read, const struct gw_system *system)
{
    (void)ask;
    (void)spot;
    (void)system;
    out->lost = reads(read, GW_ITEM_air_barrier, "open");
    if (out->lost) out->remark = GW_PLAINLY("air and water pass beside the frame, whatever the wall's own rating is");
}

/* Rows ------------------------------------------------------------------------------------------------------------- */

const struct gw_item gw_item_sealant_width = {
    .id = GW_ITEM_sealant_width,
    .stage = GW_STAGE_SEALS,
    .on = GW_ON_SEALANT,
    .hold = true,
    .how = "tape or gauge",
    .prevents = "tearing",
    .clause = "ASTM C1193, C1472",
    .if_missed = "measure along the joint",
    .does = &(const struct gw_item_functions){.limit = width_limit, .left = width_left}};
const struct gw_item gw_item_sealant_depth = {
    .id = GW_ITEM_sealant_depth,
    .stage = GW_STAGE_SEALS,
    .on = GW_ON_SEALANT,
    .hold = true,
    .how = "probe beside the backer rod",
    .prevents = "failure in the sealant or at its sides",
    .clause = "ASTM C1193, recalled",
    .if_missed = "measure along the joint",
    .does = &(const struct gw_item_functions){.limit = depth_limit, .left = depth_left}};
const struct gw_item gw_item_substrate = {.id = GW_ITEM_substrate,
                                          .stage = GW_STAGE_SEALS,
                                          .on = GW_ON_SEALANT,
                                          .hold = true,
                                          .how = "eye, wipe; primer as the sealant asks",
                                          .prevents = "peeling",
                                          .clause = "common practice, no source",
                                          .if_missed = "pull the sealant by hand there",
                                          .does = &(const struct gw_item_functions){.left = substrate_left}};
const struct gw_item gw_item_sealant_adhesion = {.id = GW_ITEM_sealant_adhesion,
                                                 .stage = GW_STAGE_SEALS,
                                                 .on = GW_ON_SEALANT,
                                                 .hold = true,
                                                 .how = "pull by hand (ASTM C1521), each lot",
                                                 .prevents = "peeling",
                                                 .clause = "ASTM C1521",
                                                 .if_missed = "pull on both sides of it; which lot",
                                                 .does = &(const struct gw_item_functions){.then = NULL}};
const struct gw_item gw_item_air_barrier = {.id = GW_ITEM_air_barrier,
                                            .stage = GW_STAGE_SEALS,
                                            .on = GW_ON_SEALANT,
                                            .hold = true,
                                            .how = "eye, before trim covers it",
                                            .prevents = "air and water past the frame",
                                            .clause = "common practice, no source",
                                            .if_missed = "look along that edge",
                                            .does = &(const struct gw_item_functions){.left = barrier_left}};
