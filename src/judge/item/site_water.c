/* Water on site: flashing and end dams that hold it out, and the test of the installed wall. */
#include "galeward/weather.h"
#include "judge/drained.h"
#include "judge/items.h"

#include "base/tolerance.h"
#include "tables_data.h"

#define LIMIT_OF(name)                                                                                                 \
    static void name(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,                        \
                     const struct gw_system *system)
#define LEFT_OF(name)                                                                                                  \
    static void name(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,                              \
                     const struct gw_as_read *read, const struct gw_system *system)

/* End dams --------------------------------------------------------------------------------------------------------- */

LIMIT_OF(limit_of_dam)
{
    struct gw_water_there water;
    (void)system;
    gw_water_at(&water, ask, spot);
    if (!gw_given(water.pressure)) return;
    out->at_least = gw_upstand_needed(water.pressure, &ask->engine);
    out->basis = GW_LIMIT_DEMAND;
    out->note = GW_SAY(ask->arena, "the static head of {} of water pressure, and a margin of practice",
                       gw_of_quantity(GW_PRESSURE, water.pressure));
}

/* The height over the static head; the margin is the limit's. */
static void left_by_head(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, double height)
{
    struct gw_water_there water;
    gw_water_at(&water, ask, spot);
    if (!gw_given(water.pressure)) {
        gw_left_unknown(out, water.message);
        return;
    }
    const double head = gw_water_head(water.pressure, &ask->engine), left = head > 0 ? height / head : INFINITY;
    gw_left_by(out, "head", left, left, 1,
               GW_SAY(ask->arena, "{} of upstand, {} of static head at the water pressure of {}",
                      gw_of_quantity(GW_THICKNESS, height), gw_of_quantity(GW_THICKNESS, head),
                      gw_of_quantity(GW_PRESSURE, water.pressure)));
    out->remark = water.below;
}

LEFT_OF(left_of_dam)
{
    (void)system;
    left_by_head(out, ask, spot, read->of[GW_ITEM_end_dam_height].number);
}

/* Slope of the flashing -------------------------------------------------------------------------------------------- */

LIMIT_OF(limit_of_slope)
{
    const struct gw_sill_fall *row = &ask->engine.tables->sill_fall[GW_ROW_SILL_FALL_RECOMMENDED];
    (void)spot;
    (void)system;
    out->at_least = GW_USE(&ask->engine, row)->slope;
    out->basis = GW_LIMIT_PRACTICE;
}

/* A slope holds no water out: it takes it away. One that is too small leaves it standing while pressure lasts, and then
 * the upstand behind is all that holds it. */
LEFT_OF(left_of_slope)
{
    struct gw_item_limit limit;
    const double slope = read->of[GW_ITEM_sill_slope].number, dam = read->of[GW_ITEM_end_dam_height].number;
    out->lost = !(slope > GW_HAIR);
    if (out->lost) {
        out->remark = slope < -GW_HAIR ? GW_PLAINLY("the flashing falls inward: it feeds water to the wall")
                                       : GW_PLAINLY("the flashing is flat: water stands on it");
        return;
    }
    gw_item_limit_at(&limit, ask, &gw_item_sill_slope, spot, system);
    if (!(slope < limit.at_least * (1 - GW_HAIR))) return;
    if (gw_given(dam)) left_by_head(out, ask, spot, dam);
    else
        gw_left_unknown(out,
                        GW_PLAINLY("water that is slow to run off is held by the upstand behind alone: how high is "
                                   "it there (end_dam_height)"));
}

/* Test of the installed wall --------------------------------------------------------------------------------------- */

/* What the site test asks of that wall: a share of the laboratory's pressure. */
struct site_test {
    struct gw_water_there water;
    double share; /* Pa; absent: not known */
    bool below_least;
};

static struct site_test site_test_at(struct gw_ask *ask, const struct gw_spot *spot)
{
    struct site_test t = {.share = GW_ABSENT};
    gw_water_at(&t.water, ask, spot);
    if (gw_given(t.water.pressure)) t.share = gw_field_water(t.water.pressure, &t.below_least, &ask->engine);
    return t;
}

static struct gw_message share_of(struct gw_ask *ask, const struct site_test *t)
{
    const struct gw_field_test *row = &ask->engine.tables->field_test[GW_ROW_FIELD_TEST_CURTAIN_WALL];
    return GW_SAY(ask->arena, "the site test asks {}, {} of the required {} ({})",
                  gw_of_quantity(GW_PRESSURE, t->share), gw_of_number(row->share, 3),
                  gw_of_quantity(GW_PRESSURE, t->water.pressure), gw_of_text(row->clause));
}

LIMIT_OF(limit_of_field)
{
    const struct site_test t = site_test_at(ask, spot);
    (void)system;
    if (!gw_given(t.share)) return;
    const struct gw_message share = share_of(ask, &t);
    out->at_least = t.share;
    out->basis = GW_LIMIT_DEMAND;
    out->note = share;
    if (t.below_least)
        out->note =
            GW_SAY(ask->arena, "{}; below the least that the field standard is recalled to test at: see field_test",
                   gw_of_message(&share));
}

/* Below what the project requires in full, a leak is outside; the agreed site test is what must hold. */
LIMIT_OF(limit_of_leak)
{
    const struct site_test t = site_test_at(ask, spot);
    (void)system;
    if (!gw_given(t.share)) return;
    out->at_least = t.water.pressure;
    out->not_met_at = t.share;
    out->basis = GW_LIMIT_DEMAND;
    out->note = GW_SAY(ask->arena, "the required pressure in full; the site test asks {}",
                       gw_of_quantity(GW_PRESSURE, t.share));
}

/* Nothing leaked at a pressure at which, or above one at which, water came in. */
static bool contradict(const struct gw_as_read *read)
{
    const double dry = read->of[GW_ITEM_field_water].number, leaked = read->of[GW_ITEM_leaked_at].number;
    return leaked <= dry * (1 + GW_HAIR);
}

static struct gw_message say_contradiction(struct gw_ask *ask, const struct gw_as_read *read)
{
    return GW_SAY(ask->arena,
                  "nothing leaked at {}, and water came in at {}: which of them, or what was mended between",
                  gw_of_quantity(GW_PRESSURE, read->of[GW_ITEM_field_water].number),
                  gw_of_quantity(GW_PRESSURE, read->of[GW_ITEM_leaked_at].number));
}

static void left_by_test(struct gw_left *out, struct gw_ask *ask, const struct site_test *t, double pressure,
                         const char *what)
{
    const double left = t->share > 0 ? pressure / t->share : INFINITY;
    const struct gw_message share = share_of(ask, t);
    gw_left_by(out, "field water", left, left, 1,
               GW_SAY(ask->arena, "{} at {}; {}", gw_of_text(what), gw_of_quantity(GW_PRESSURE, pressure),
                      gw_of_message(&share)));
}

static void undecided(struct gw_left *out, struct gw_message why)
{
    out->undecided = true;
    gw_left_unknown(out, why);
}

/* Dry below the share tells nothing of the share, unless water came in before it. */
static void left_below_share(struct gw_left *out, struct gw_ask *ask, const struct site_test *t, double leaked)
{
    if (leaked <= t->share * (1 + GW_HAIR)) {
        out->lost = true;
        out->remark = GW_SAY(ask->arena, "water came in at {}, not above the {} of the site test",
                             gw_of_quantity(GW_PRESSURE, leaked), gw_of_quantity(GW_PRESSURE, t->share));
        return;
    }
    const struct gw_message share = share_of(ask, t);
    undecided(out, GW_SAY(ask->arena, "{}: test on", gw_of_message(&share)));
}

LEFT_OF(left_of_field)
{
    const double dry = read->of[GW_ITEM_field_water].number, leaked = read->of[GW_ITEM_leaked_at].number;
    const struct site_test t = site_test_at(ask, spot);
    (void)system;
    if (!gw_given(t.share)) undecided(out, t.water.message);
    else if (contradict(read)) undecided(out, say_contradiction(ask, read));
    else if (dry < t.share * (1 - GW_HAIR)) left_below_share(out, ask, &t, leaked);
    else {
        left_by_test(out, ask, &t, dry, "dry");
        if (dry < t.water.pressure * (1 - GW_HAIR))
            out->remark = GW_PLAINLY("evidence of the site test only, not of the full pressure");
        out->remark = gw_say_both(ask->arena, &out->remark, "; ", &t.water.below);
    }
}

/* Its own limit lets a leak pass that the project's pressure does not. */
static void ask_of_system(struct gw_left *out, struct gw_ask *ask, const struct site_test *t,
                          const struct gw_item_limit *limit, double leaked)
{
    if (limit->basis != GW_LIMIT_SYSTEM || leaked < limit->at_least * (1 - GW_HAIR)) return;
    undecided(out, GW_SAY(ask->arena, "the system allows a leak at {}, the project asks {}: which of them holds",
                          gw_of_quantity(GW_PRESSURE, leaked), gw_of_quantity(GW_PRESSURE, t->water.pressure)));
}

/* A leak below the share counts, whatever else is said. */
static void say_contradicted(struct gw_left *out, struct gw_ask *ask, const struct gw_as_read *read, bool leaks)
{
    const struct gw_message both = say_contradiction(ask, read);
    if (leaks) out->remark = gw_say_both(ask->arena, &out->remark, "; ", &both);
    else undecided(out, both);
}

LEFT_OF(left_of_leak)
{
    const double leaked = read->of[GW_ITEM_leaked_at].number;
    struct gw_item_limit limit;
    const struct site_test t = site_test_at(ask, spot);
    if (!gw_given(t.share)) {
        undecided(out, t.water.message);
        return;
    }
    const bool leaks = leaked <= t.share * (1 + GW_HAIR); /* at the share itself nothing is short by the numbers */
    left_by_test(out, ask, &t, leaked, "water came in");
    out->lost = leaks && !(leaked < t.share * (1 - GW_HAIR));
    if (out->lost) out->remark = GW_PLAINLY("water came in at the very pressure of the site test");
    if (contradict(read)) say_contradicted(out, ask, read, leaks);
    if (leaks || out->undecided) return;
    if (leaked < t.water.pressure * (1 - GW_HAIR)) {
        out->remark = GW_PLAINLY("the site test passes at its share; water came in below the required pressure");
        gw_item_limit_at(&limit, ask, &gw_item_leaked_at, spot, system);
        ask_of_system(out, ask, &t, &limit, leaked);
    }
    if (!gw_was_read(read, GW_ITEM_field_water))
        out->action = GW_PLAINLY("was the share held for its time before water came in (field_water)");
}

/* The list --------------------------------------------------------------------------------------------------------- */

const struct gw_item gw_item_sill_slope = {
    .id = GW_ITEM_sill_slope,
    .stage = GW_STAGE_FRAME,
    .on = GW_ON_WALL,
    .hold = true,
    .how = "level and wedge",
    .prevents = "water is fed back to the wall",
    .clause = "common practice, no source",
    .if_missed = "look at the whole flashing",
    .does = &(const struct gw_item_functions){.limit = limit_of_slope, .left = left_of_slope}};
const struct gw_item gw_item_end_dam_height = {
    .id = GW_ITEM_end_dam_height,
    .stage = GW_STAGE_FRAME,
    .on = GW_ON_WALL,
    .hold = true,
    .how = "tape",
    .prevents = "water runs over it into the wall",
    .clause = "common practice, no source",
    .if_missed = "look at the other end",
    .does = &(const struct gw_item_functions){.limit = limit_of_dam, .left = left_of_dam}};
const struct gw_item gw_item_field_water = {
    .id = GW_ITEM_field_water,
    .stage = GW_STAGE_TEST,
    .on = GW_ON_WALL,
    .hold = true,
    .how = "water test of the installed wall (ASTM E1105, AAMA 501.1, 503)",
    .prevents = "",
    .clause = "common practice, no source",
    .if_missed = "where did the water come in, at which pressure",
    .does = &(const struct gw_item_functions){.limit = limit_of_field, .left = left_of_field}};
const struct gw_item gw_item_leaked_at = {
    .id = GW_ITEM_leaked_at,
    .stage = GW_STAGE_TEST,
    .on = GW_ON_WALL,
    .hold = true,
    .how = "pressure at which water was first seen inside",
    .prevents = "",
    .clause = "common practice, no source",
    .if_missed = "where did it come in; look at the same joint elsewhere",
    .does = &(const struct gw_item_functions){.limit = limit_of_leak, .left = left_of_leak}};
