/* Screws of the pressure plate: where they stand, what they are, how they clamp. */
#include "judge/items.h"

#include "judge/checks.h"
#include "judge/plated.h"
#include "judge/screw_line.h"

#include "base/tolerance.h"
#include "galeward/clamp.h"
#include "tables_data.h"

static const char *without(const struct gw_ask *ask, const struct gw_system *system)
{
    (void)ask;
    return gw_without_plates(system);
}

/* Where they stand ------------------------------------------------------------------------------------------------- */

static void place_limit(struct gw_item_limit *out, struct gw_ask *ask, double own, size_t row)
{
    const struct gw_plate_fastening *practice = &ask->model->tables->plate_fastening[row];
    out->at_most = own;
    out->basis = GW_LIMIT_SYSTEM;
    if (gw_given(own)) return;
    gw_used_add(&ask->engine.used, &practice->row);
    out->at_most = practice->distance_m;
    out->basis = GW_LIMIT_PRACTICE;
}

/* The system's own and what the wall's drawing says of it: the tighter one. */
static void spacing_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                          const struct gw_system *system)
{
    const double own = system->screw ? system->screw->spacing : GW_ABSENT;
    const double drawn = spot->screws && spot->screws->grid->screws_given ? spot->screws->height : GW_ABSENT;
    if (gw_given(drawn) && !(own <= drawn)) {
        out->at_most = drawn;
        out->basis = GW_LIMIT_PROJECT;
        return;
    }
    place_limit(out, ask, own, GW_ROW_PLATE_FASTENING_SPACING);
}

static void end_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                      const struct gw_system *system)
{
    (void)spot;
    place_limit(out, ask, system->screw ? system->screw->end_distance : GW_ABSENT, GW_ROW_PLATE_FASTENING_END);
}

static void left_of_place(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                          const struct gw_as_read *read, const struct gw_system *system)
{
    gw_left_clamp(out, ask, spot, read, system);
    gw_left_link(out, ask, "plate", &gw_check_plate, spot, read, system);
    gw_left_link(out, ask, "pull-out", &gw_check_screw, spot, read, system);
    gw_left_ratings(out, ask, spot, read, system);
}

/* How they clamp --------------------------------------------------------------------------------------------------- */

static void torque_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_system *system)
{
    (void)spot;
    gw_torque_limit(out, ask, system);
}

static void doubt(struct gw_left *out, const char *question)
{
    out->undecided = true;
    gw_left_unknown(out, GW_PLAINLY(question));
}

static void left_of_torque(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_as_read *read, const struct gw_system *system)
{
    struct gw_item_limit limit;
    gw_item_limit_at(&limit, ask, &gw_item_screw_torque, spot, system);
    gw_torque_expected(&limit, ask, read, system);
    if (gw_said(&limit.note)) out->limit = limit;
    const bool tight = read->of[GW_ITEM_screw_torque].number > limit.at_most * (1 + GW_HAIR);
    const struct gw_message gap = GW_PLAINLY(
                                "a torque tells no load on the gaskets: look at the gap that the plate closes to"),
                            edge = gw_edge_said(ask, spot, system);
    out->remark = gw_say_both(ask->arena, &gap, "; ", &edge);
    if (read->of[GW_ITEM_screw_type].word > 1)
        doubt(out, "which screw is it? A torque says nothing of a screw that is not the system's");
    else if (!gw_given(limit.at_least) && !gw_given(limit.at_most))
        doubt(out, "which torque does the manufacturer ask of these screws? (installation: screw_torque)");
    else if (gw_torque_age_of(ask, read, system) == GW_TORQUE_UNSURE)
        doubt(out, "when was it fastened? Of an old screw so much is left, a new one was too loose (installed, date)");
    gw_left_clamp(out, ask, spot, read, system);
    if (gw_bottomed(read, system)) return;
    gw_left_over_torque(out, ask, spot, read, system, tight);
    if (tight && (!system->clamp || system->clamp->stop == GW_UNSAID))
        gw_left_unknown(out, GW_PLAINLY("does the plate land on a stop, or on the gaskets and the edge of the glass? "
                                        "(clamp: stop)"));
}

/* What they are ---------------------------------------------------------------------------------------------------- */

static bool geometry_known(const struct gw_system *s)
{
    const struct gw_clamp_spec *c = s->clamp;
    return c && gw_given(c->stack) && gw_given(c->chase) && s->pressure_plate && s->screw;
}

/* Neither on the bottom of its chase nor short of the thread that is to hold it. */
static void length_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_system *system)
{
    const struct gw_screw_length_practice *row = &ask->model->tables->screw_length_practice[0];
    const struct gw_clamp_spec *c = system->clamp;
    (void)spot;
    if (!geometry_known(system)) return;
    gw_used_add(&ask->engine.used, &row->row);
    const double to_chase = system->pressure_plate->thickness + c->stack, tip = gw_given(c->tip) ? c->tip : 0;
    const double engaged = gw_engagement_asked(ask, system);
    out->at_least = to_chase + tip + engaged;
    out->at_most = to_chase + c->chase - row->tip_clearance_m;
    out->basis = GW_LIMIT_GEOMETRY;
    out->note = GW_SAY(ask->arena, "{} of full thread engaged{}, {} left between the tip and the bottom of the chase",
                       gw_of_quantity(GW_THICKNESS, engaged),
                       gw_of_text(gw_given(system->screw->engagement) ? " as the system states" : ""),
                       gw_of_quantity(GW_THICKNESS, row->tip_clearance_m));
}

/* Of a head that stands off though the screw is no longer than it may be the length is not the cause. */
#define OTHER_CAUSE "a gap was read under its head, but so long a screw does not bottom: look why the head stands off"

static void left_by_length(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_as_read *read, const struct gw_system *system)
{
    const double engaged = gw_engagement_read(ask, read, system);
    if (!geometry_known(system)) {
        doubt(out, "how thick is what lies between plate and chase, and how deep is the chase? Ask the manufacturer "
                   "(pressure_plate, screw, clamp: stack, chase, tip)");
        return;
    }
    out->lost = gw_bottomed(read, system) || !(engaged > 0);
    if (!(engaged > 0)) {
        out->remark = GW_PLAINLY("no thread holds it: none of full thread reaches into the chase");
        return;
    }
    gw_left_clamp(out, ask, spot, read, system);
    if (out->lost) return;
    if (read->of[GW_ITEM_screw_type].word > 1) {
        doubt(out, "which screw is it? How much thread it needs, and what it holds, are those of the system's own");
        return;
    }
    gw_left_link(out, ask, "pull-out", &gw_check_screw, spot, read, system);
    gw_left_ratings(out, ask, spot, read, system);
}

static void left_of_length(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_as_read *read, const struct gw_system *system)
{
    struct gw_as_read bears = *read;
    const bool other = read->of[GW_ITEM_screw_head].word == 2 && gw_clears_bottom(ask, read, system);
    if (other) bears.of[GW_ITEM_screw_head].word = 0;
    left_by_length(out, ask, spot, &bears, system);
    if (other && !gw_said(&out->remark)) out->remark = GW_PLAINLY(OTHER_CAUSE);
}

/* No tool tells the torque of a screw that stands on its tip from that of one that clamps. */
static void left_of_head(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_as_read *read, const struct gw_system *system)
{
    (void)spot;
    if (!gw_bottomed(read, system)) return;
    if (gw_clears_bottom(ask, read, system)) {
        out->remark = GW_PLAINLY("by its length the screw does not bottom: look why the head stands off");
        out->action = GW_PLAINLY("look at every screw of that plate");
    } else out->remark = GW_PLAINLY("it may stand on the bottom of its chase: full torque and no clamp");
}

/* Rows ------------------------------------------------------------------------------------------------------------- */

const struct gw_item gw_item_screw_end_distance = {
    .id = GW_ITEM_screw_end_distance,
    .stage = GW_STAGE_PLATES,
    .on = GW_ON_SCREWS,
    .hold = true,
    .how = "tape, from the end of the plate to its last screw, at every joint",
    .prevents = "lifted ends of the plate: air and water at the joint",
    .clause = "common practice, no source",
    .if_missed = "what holds the end: look at the joint on both sides",
    .does = &(const struct gw_item_functions){
        .without = without, .limit = end_limit, .left = left_of_place, .as_designed = true}};
const struct gw_item gw_item_screw_spacing = {
    .id = GW_ITEM_screw_spacing,
    .stage = GW_STAGE_PLATES,
    .on = GW_ON_SCREWS,
    .hold = true,
    .how = "tape, between screws along the plate",
    .prevents = "the plate gaps between screws; each screw carries more suction",
    .clause = "common practice, no source",
    .if_missed = "look at the plates beside it; could a screw be set between",
    .does = &(const struct gw_item_functions){
        .without = without, .limit = spacing_limit, .left = left_of_place, .as_designed = true}};
const struct gw_item gw_item_screw_torque = {
    .id = GW_ITEM_screw_torque,
    .stage = GW_STAGE_PLATES,
    .on = GW_ON_SCREWS,
    .hold = true,
    .how = "torque wrench that reads as the screw begins to turn on; with the day of fastening",
    .prevents = "pumping glass and leaks where low, crushed edge seals where high",
    .clause = "common practice, no source",
    .if_missed = "look at the whole plate and the ones beside it; was the driver checked that day",
    .does = &(const struct gw_item_functions){.without = without, .limit = torque_limit, .left = left_of_torque}};
const struct gw_item gw_item_screw_length = {
    .id = GW_ITEM_screw_length,
    .stage = GW_STAGE_PLATES,
    .on = GW_ON_SCREWS,
    .hold = true,
    .how = "one of each box, under the head",
    .prevents = "a bottomed screw takes full torque and does not clamp; a short one strips",
    .clause = "common practice, no source",
    .if_missed = "which boxes were used here; what do the screws beside it measure",
    .does = &(const struct gw_item_functions){.without = without, .limit = length_limit, .left = left_of_length}};
const struct gw_item gw_item_screw_head = {
    .id = GW_ITEM_screw_head,
    .stage = GW_STAGE_PLATES,
    .on = GW_ON_SCREWS,
    .hold = true,
    .how = "eye, feeler gauge of 0.010 in",
    .prevents = "a screw on the bottom of its chase: full torque, no clamp",
    .clause = "common practice, no source",
    .if_missed = "what length was used; look at every screw of that plate",
    .does = &(const struct gw_item_functions){.without = without, .left = left_of_head}};
const struct gw_item gw_item_screw_type = {
    .id = GW_ITEM_screw_type,
    .stage = GW_STAGE_PLATES,
    .on = GW_ON_SCREWS,
    .hold = true,
    .how = "head mark and box against the shop drawings",
    .prevents = "another thread, length or strength than was tested",
    .clause = "common practice, no source",
    .if_missed = "which screw is it: length, metal, strength; ask for its data",
    .does = &(const struct gw_item_functions){
        .without = without,
        .then =
            "which screw is it? Ask for its nut factor, length and strength: until then nothing is said of its clamp"}};
const struct gw_item gw_item_driver_checked = {
    .id = GW_ITEM_driver_checked,
    .stage = GW_STAGE_PLATES,
    .on = GW_ON_CREW,
    .hold = false,
    .how = "meter of torque, at the start of the day",
    .prevents = "torques that scatter; crushed edge seals",
    .clause = "common practice, no source",
    .if_missed = "read torques of that day anew",
    .does = &(const struct gw_item_functions){
        .without = without, .then = "the torques of that day are not sure: what do its screws read anew?"}};
