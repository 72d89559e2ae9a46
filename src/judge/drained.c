#include "judge/drained.h"

#include "galeward/weather.h"
#include "judge/checks.h"
#include "judge/judge_internal.h"

#include "tables_data.h"

#include <string.h>

/* Water pressure -------------------------------------------------------------------------------------------------- */

/* Unset where no lite was said: a wall's own test and dams serve all that stand there. */
static enum gw_component component_of(const struct gw_spot *spot)
{
    if (!spot->lite || spot->worst || spot->column == GW_NO_INTEGER) return GW_COMPONENT_UNSET;
    return spot->lite->component == GW_SPANDREL ? GW_FIXED : spot->lite->component;
}

static void take_demand(struct gw_water_there *out, struct gw_ask *ask, const struct gw_judged_wall *wall)
{
    struct gw_demand *d = gw_alloc(ask->arena, 1, sizeof *d); /* its message may be kept */
    const struct gw_engine own = ask->engine;
    const char *group = gw_trace_group(&ask->engine, NULL);
    gw_judge_demand(d, ask, &gw_check_water,
                    &(struct gw_place){.where = wall->wall, .wall = wall, .component = wall->component});
    ask->engine = own;
    gw_trace_group(&ask->engine, group);
    gw_used_merge(&ask->engine.used, d->used);
    if (d->state != GW_ASKED) {
        *out = (struct gw_water_there){.pressure = GW_ABSENT, .message = d->message};
        return;
    }
    const double pressure = gw_term_of(d, 0)->value;
    if (gw_given(out->pressure) && pressure <= out->pressure) return;
    const struct gw_below *below = d->below ? d->below : d->below_row;
    *out = (struct gw_water_there){pressure, d->message, below ? below->said : GW_PLAINLY(NULL)};
}

/* Of a wall without a lite named: the most that any of its components is asked. */
void gw_water_at(struct gw_water_there *out, struct gw_ask *ask, const struct gw_spot *spot)
{
    size_t n;
    const enum gw_component component = component_of(spot);
    const struct gw_judged_wall *walls = gw_judged_walls(ask, &n);
    bool known = true;
    *out = (struct gw_water_there){.pressure = GW_ABSENT, .message = GW_PLAINLY("which wall it is")};
    for (size_t i = 0; known && i < n; i++) {
        if (!spot->wall || strcmp(walls[i].wall, spot->wall) != 0) continue;
        if (component && component != walls[i].component) continue;
        take_demand(out, ask, &walls[i]);
        known = gw_given(out->pressure);
    }
}

/* What was read ---------------------------------------------------------------------------------------------------- */

bool gw_reads(const struct gw_as_read *read, enum gw_item_id item, const char *word)
{
    return read->of[item].word && strcmp(gw_item_word(item, read->of[item]), word) == 0;
}

struct gw_drainage_spec gw_drainage_of(const struct gw_system *system)
{
    if (system->drainage) return *system->drainage;
    return (struct gw_drainage_spec){.slots = GW_ABSENT,
                                     .slot_length = GW_ABSENT,
                                     .slot_height = GW_ABSENT,
                                     .pocket_depth = GW_ABSENT,
                                     .upstand = GW_ABSENT,
                                     .leak_share = GW_ABSENT};
}

/* The openings lead nowhere, whatever their size. */
static const char *what_shuts(const struct gw_as_read *read)
{
    if (gw_reads(read, GW_ITEM_weep_place, "pocket_head"))
        return "the plate's slots sit at the head of the pocket below: nothing drains here";
    if (gw_reads(read, GW_ITEM_weep_clear, "no")) return "the plate's weeps are blocked: nothing drains";
    if (gw_reads(read, GW_ITEM_cover_weep_clear, "no"))
        return "the cover's weeps are blocked, and the plate's behind them: nothing drains";
    if (gw_reads(read, GW_ITEM_blocks_and_weeps, "covered"))
        return "a setting block covers a weep or stops the water: nothing drains";
    return NULL;
}

/* Sealant across a weep or under the cover, whose weeps nobody looked at. */
static bool perhaps_shut(const struct gw_as_read *read)
{
    return gw_reads(read, GW_ITEM_sealant_under_cover, "yes") && !gw_reads(read, GW_ITEM_cover_weep_clear, "yes");
}

/* What lets the pocket's pressure out, or NULL. */
static const char *what_opens(const struct gw_as_read *read)
{
    if (gw_reads(read, GW_ITEM_joint_plug, "missing")) return "a plug is missing";
    if (gw_reads(read, GW_ITEM_joint_plug, "loose")) return "a plug is loose";
    if (gw_reads(read, GW_ITEM_frame_joint, "open")) return "a joint of the frame is open";
    if (gw_reads(read, GW_ITEM_gasket_corner, "open")) return "a corner of the gaskets is open";
    return read->pocket_open ? "a plug, corner, joint or weep of the pocket is open or blocked" : NULL;
}

/* The pocket ------------------------------------------------------------------------------------------------------- */

/* One end of what is not known better. */
struct end {
    double share, adverse; /* of the rain; Pa, against the weeps */
    double flow, demand, net, ratio;
};
struct pocket {
    double count, length, height, depth, area; /* as read, else the system's */
    unsigned of_system;                        /* bits: count, length, height */
    bool narrow;                               /* read as less than guidance and the system have it */
    const struct gw_element *lite;
    struct end good, bad;
    double pressure;     /* Pa, that stands against the weeps at the bad end; 0: none */
    const char *because; /* why it does */
    const char *share_of;
};

static double take(struct pocket *p, unsigned bit, double number, double otherwise)
{
    if (!gw_given(number)) p->of_system |= bit;
    return gw_given(number) ? number : otherwise;
}

/* Of a pane that the roof line cuts the whole. */
static double area_of(const struct gw_element *lite)
{
    return lite->width * (gw_given(lite->pane) ? lite->pane : lite->height);
}

/* As it was read: less than guidance has slots high, and than the system has it. */
static bool is_narrow(struct gw_ask *ask, double read, double drawn)
{
    const struct gw_weep_least *row = &ask->engine.tables->weep_least[GW_ROW_WEEP_LEAST_SLOT_HEIGHT];
    if (!(read < row->size_m * (1 - GW_HAIR)) || read >= drawn * (1 - GW_HAIR)) return false;
    gw_used_add(&ask->engine.used, &row->row);
    return true;
}

static void find_pocket(struct pocket *p, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                        const struct gw_drainage_spec *d)
{
    *p = (struct pocket){.lite = spot->lite, .depth = d->pocket_depth};
    p->count = floor(take(p, 1, read->of[GW_ITEM_weep_count].number, d->slots) + GW_HAIR);
    p->length = take(p, 2, read->of[GW_ITEM_weep_length].number, d->slot_length);
    p->height = take(p, 4, read->of[GW_ITEM_weep_height].number, d->slot_height);
    p->narrow = is_narrow(ask, read->of[GW_ITEM_weep_height].number, d->slot_height) ||
                is_narrow(ask, read->of[GW_ITEM_weep_length].number, d->slot_length);
    p->area = p->lite ? area_of(p->lite) : GW_ABSENT;
}

/* NULL: all is known. */
static const char *what_misses(const struct pocket *p)
{
    if (!p->lite) return "which lite stands above that pocket (column, story, row)";
    if (p->lite->component == GW_VENT || p->lite->component == GW_DOOR)
        return "a vent or a door drains by openings of its own: what does its report say of them";
    if (!gw_given(p->count)) return "how many weep slots has the pocket of one lite (drainage: {slots})";
    if (!gw_given(p->length)) return "how long is a weep slot (drainage: {slot_length})";
    if (!gw_given(p->height)) return "how high is a weep slot (drainage: {slot_height})";
    if (!gw_given(p->depth)) return "how deep can water stand in the pocket (drainage: {pocket_depth})";
    return NULL;
}

/* How much of the rain comes in. False: it is not known. */
static bool find_shares(struct pocket *p, struct gw_left *out, struct gw_ask *ask, const struct gw_as_read *read,
                        const struct gw_drainage_spec *d)
{
    const struct gw_leak_share *row = &ask->engine.tables->leak_share[GW_ROW_LEAK_SHARE_OUTER_SEALS];
    p->good.share = p->bad.share = d->leak_share;
    p->share_of = "the system's share";
    if (gw_given(d->leak_share) && !(d->leak_share > 0)) {
        gw_left_unknown(out, GW_PLAINLY("what shows that the outer seals let in no rain at all (drainage: "
                                        "{leak_share})"));
        return false;
    }
    if (!gw_given(d->leak_share)) {
        p->good.share = GW_USE(&ask->engine, row)->least;
        p->bad.share = row->most;
        p->share_of = "a share of practice";
    }
    if (gw_reads(read, GW_ITEM_gasket_corner, "open")) {
        p->bad.share = GW_USE(&ask->engine, row)->all;
        p->share_of = "all of it at an open corner";
    }
    return true;
}

/* What stands against the weeps. False: the water pressure is not known. */
static bool find_adverse(struct pocket *p, struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_as_read *read, const struct gw_drainage_spec *d)
{
    struct gw_water_there water;
    const char *open = d->equalized == GW_NO ? "by the system the pocket is not equalized" : what_opens(read);
    if (!open && !perhaps_shut(read)) return true;
    gw_water_at(&water, ask, spot);
    if (!gw_given(water.pressure)) {
        gw_left_unknown(out, water.message);
        return false;
    }
    p->pressure = p->bad.adverse = water.pressure;
    p->good.adverse = open ? water.pressure : 0;
    p->because = open ? open : "sealant may close a weep";
    return true;
}

/* Water does not leave an opening before it overcomes the tension along its edge: perimeter over area. */
static double held_by_tension(struct gw_ask *ask, const struct pocket *p)
{
    const double along = gw_capillary_slot(p->length, &ask->engine),
                 upright = gw_capillary_slot(p->height, &ask->engine), both = along + upright;
    GW_STEP(&ask->engine, "h_shut", GW_LENGTH, both, "tension along all edges of the opening", "h_1+h_2",
            {"h_1|h_held", along, GW_LENGTH}, {"h_2|h_held", upright, GW_LENGTH});
    return both;
}

/* A slot higher than the water stands is as high as the water. False: refused. */
static bool run_end(struct end *end, struct gw_ask *ask, const struct pocket *p, double held, const char *place)
{
    struct gw_weep_result flow;
    const double height = fmin(p->height, p->depth);
    const struct gw_weep_case in = {.diameter = GW_ABSENT,
                                    .slot_length = p->length,
                                    .slot_height = height,
                                    .count = (int)p->count,
                                    .head = p->depth - height / 2,
                                    .adverse_pressure = end->adverse,
                                    .discharge_coefficient = GW_ABSENT,
                                    .wet_area = p->area,
                                    .leak_fraction = end->share};
    const char *outer = gw_trace_at(&ask->engine, place);
    const enum gw_status status = gw_weep(&flow, &in, &ask->engine);
    gw_trace_at(&ask->engine, outer);
    if (status != GW_OK) return false;
    end->net = flow.net_head;
    end->flow = flow.net_head > held ? flow.flow : 0;
    end->demand = flow.demand;
    end->ratio = end->flow / end->demand;
    return true;
}

/* Words -------------------------------------------------------------------------------------------------------------
 */

static struct gw_message say_openings(struct gw_ask *ask, const struct pocket *p)
{
    static const char *const whose[] = {"as read",
                                        "number by the system",
                                        "length by the system",
                                        "number and length by the system",
                                        "height by the system",
                                        "number and height by the system",
                                        "length and height by the system",
                                        "by the system"};
    return GW_SAY(ask->arena, "weeps: {} of {} by {} ({})", gw_of_count((long)p->count),
                  gw_of_quantity(GW_THICKNESS, p->length), gw_of_quantity(GW_THICKNESS, p->height),
                  gw_of_text(whose[p->of_system & 7]));
}

static struct gw_message say_head(struct gw_ask *ask, const struct pocket *p, double held)
{
    const struct gw_value net = gw_of_quantity(GW_THICKNESS, p->bad.net);
    struct gw_message against = GW_PLAINLY("the pocket equalized");
    if (p->pressure > 0)
        against = GW_SAY(ask->arena, "net of the full water pressure of {}: {}",
                         gw_of_quantity(GW_PRESSURE, p->pressure), gw_of_text(p->because));
    if (!(p->bad.net > 0)) return GW_SAY(ask->arena, "no head is left, {}: nothing drains", gw_of_message(&against));
    if (p->bad.net <= held)
        return GW_SAY(ask->arena, "surface tension holds {}, the head is {}, {}: nothing drains",
                      gw_of_quantity(GW_THICKNESS, held), net, gw_of_message(&against));
    return GW_SAY(ask->arena, "they drain {} under a head of {}, {}", gw_of_quantity(GW_DRAINED, p->bad.flow), net,
                  gw_of_message(&against));
}

static struct gw_message say_rain(struct gw_ask *ask, const struct pocket *p)
{
    return GW_SAY(ask->arena, "the test's spray on {} of glass brings {} ({} % let in, {})",
                  gw_of_quantity(GW_AREA, p->area), gw_of_quantity(GW_DRAINED, p->bad.demand),
                  gw_of_number(100 * p->bad.share, 3), gw_of_text(p->share_of));
}

static struct gw_message say_flow(struct gw_ask *ask, const struct pocket *p, double held)
{
    const struct gw_message openings = say_openings(ask, p), head = say_head(ask, p, held), rain = say_rain(ask, p);
    return GW_SAY(ask->arena, "{}; {}; {}", gw_of_message(&openings), gw_of_message(&head), gw_of_message(&rain));
}

/* The flow --------------------------------------------------------------------------------------------------------- */

static void left_shut(struct gw_left *out, const char *why) { gw_left_by(out, "flow", 0, 0, 1, GW_PLAINLY(why)); }

/* What is left of the head where tension still holds its part moves less water, and an opening that was made narrower
 * than guidance and the system have it lets go of some late: a pocket of which all of the head is wanted, water alone
 * tells. */
static void tell_tension(struct gw_left *out, struct gw_ask *ask, const struct pocket *p, double held)
{
    struct gw_trace *trace = ask->engine.trace;
    struct end slow = p->bad;
    ask->engine.trace = NULL;
    slow.adverse += gw_water_pressure(held, &ask->engine);
    const bool known = run_end(&slow, ask, p, 0, "bad"), late = known && slow.ratio < 1 - GW_HAIR;
    ask->engine.trace = trace;
    if (!late && !p->narrow) return;
    out->undecided = out->undecided || late;
    gw_left_unknown(out, GW_SAY(ask->arena,
                                "surface tension holds {} of the {} of head in so narrow an opening: does water poured "
                                "into the pocket run out",
                                gw_of_quantity(GW_THICKNESS, held), gw_of_quantity(GW_THICKNESS, p->bad.net)));
}

static void run_flow(struct gw_left *out, struct gw_ask *ask, struct pocket *p)
{
    const double held = held_by_tension(ask, p);
    if (!run_end(&p->bad, ask, p, held, "bad") || !run_end(&p->good, ask, p, held, "good")) {
        gw_left_unknown(out, gw_fault_message(ask));
        return;
    }
    struct gw_mechanism *m = gw_left_by(out, "flow", p->good.ratio, p->bad.ratio, 1, say_flow(ask, p, held));
    m->measure = p->good.adverse < p->bad.adverse
                     ? "are the cover's weeps free of sealant"
                     : "what share of the rain do the outer seals let in (drainage: {leak_share})";
    if (p->bad.ratio >= 1 - GW_HAIR) tell_tension(out, ask, p, held);
}

/* Slots side by side that are longer than their lite, or a part of one, were not counted. */
static bool is_counted(struct gw_left *out, struct gw_ask *ask, const struct pocket *p, const struct gw_as_read *read)
{
    const double count = read->of[GW_ITEM_weep_count].number;
    if (gw_given(count) && fabs(count - round(count)) > GW_HAIR) {
        gw_left_unknown(out, GW_PLAINLY("a part of a weep is none: how many are there"));
    } else if ((p->of_system & 3) != 3 && p->count * p->length > p->lite->width * (1 + GW_HAIR)) {
        gw_left_unknown(out, GW_SAY(ask->arena,
                                    "{} slots of {} have no room side by side under a lite {} wide: how many are "
                                    "there, and how long is one",
                                    gw_of_count((long)p->count), gw_of_quantity(GW_THICKNESS, p->length),
                                    gw_of_quantity(GW_LENGTH, p->lite->width)));
    } else return true;
    out->undecided = true;
    return false;
}

/* Nobody could tell whether something shuts the openings, or lets the pressure out. */
static void tell_unseen(struct gw_left *out, struct gw_ask *ask, const struct gw_as_read *read)
{
    static const enum gw_item_id items[] = {GW_ITEM_weep_place,       GW_ITEM_weep_clear, GW_ITEM_cover_weep_clear,
                                            GW_ITEM_blocks_and_weeps, GW_ITEM_joint_plug, GW_ITEM_sealant_under_cover,
                                            GW_ITEM_gasket_corner,    GW_ITEM_frame_joint};
    for (size_t i = 0; i < sizeof items / sizeof *items; i++) {
        const int word = read->of[items[i]].word;
        if (!word || gw_item_kinds[items[i]].means[word - 1] != GW_WORD_UNKNOWN) continue;
        gw_left_unknown(
            out, GW_SAY(ask->arena, "{} was read as not known: look there", gw_of_text(gw_item_kinds[items[i]].title)));
    }
}

void gw_left_by_flow(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                     const struct gw_system *system)
{
    struct pocket p;
    const struct gw_drainage_spec d = gw_drainage_of(system);
    const char *shut = what_shuts(read);
    find_pocket(&p, ask, spot, read, &d);
    const bool no_opening = p.count < 1 || p.length <= 0 || p.height <= 0;
    const char *misses = what_misses(&p);
    if (shut) left_shut(out, shut);
    else if (no_opening) left_shut(out, "there is no opening: nothing drains");
    else if (misses) gw_left_unknown(out, GW_PLAINLY(misses));
    else if (!is_counted(out, ask, &p, read)) return;
    else if (find_shares(&p, out, ask, read, &d) && find_adverse(&p, out, ask, spot, read, &d)) run_flow(out, ask, &p);
    if (!shut) tell_unseen(out, ask, read);
}
