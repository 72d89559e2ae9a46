/* Joints between pieces of mullion one above the other, as they were found. */
#include "judge/items.h"
#include "judge/joint_budget.h"
#include "judge/line.h"

/* Pieces of a window wall stand between slabs, and meet where splices are named. */
static const char *without(const struct gw_ask *ask, const struct gw_system *system)
{
    if (system->system->kind != GW_WINDOW_WALL) return NULL;
    for (size_t i = 0; i < ask->model->project.walls.n; i++)
        if (ask->model->project.walls.items[i].splices.n) return NULL;
    return "a window wall stands between slabs, and no wall names a splice";
}

/* The joint at that spot; of one that is not told the one into which most moves. False: which wall is not known. */
static bool joint_at(struct gw_mullion_joint *out, struct gw_ask *ask, const struct gw_spot *spot)
{
    const struct gw_wall_lines *l = spot->grid ? &spot->grid->lines : spot->member ? spot->member->lines : NULL;
    size_t n = 0;
    const struct gw_mullion_joint *joints = l && l->n_floors ? gw_joints_of(&n, ask, l) : NULL;
    if (!n) return false;
    *out = joints[spot->grid && spot->up < n ? spot->up : 0];
    for (size_t i = 0; i < n && !spot->grid; i++)
        if (joints[i].length > out->length) *out = joints[i];
    return true;
}

/* What the joint still moves, m. */
struct moves {
    double closes, opens;
};

/* False: `why` asks for what is missing. */
static bool moves_of(struct moves *out, struct gw_message *why, struct gw_ask *ask, const struct gw_spot *spot,
                     const struct gw_built_joint *built)
{
    struct gw_mullion_joint joint;
    struct gw_movement_result r;
    *why = (struct gw_message){0};
    if (!gw_knows_movement(ask->model)) *why = GW_PLAINLY(gw_unknown_movement);
    else if (!joint_at(&joint, ask, spot))
        *why = GW_PLAINLY("on which wall is it, and how long are its pieces of mullion?");
    else if (gw_joint_budget(&r, ask, &joint, built, 0, GW_ABSENT) != GW_OK) *why = gw_fault_message(ask);
    if (gw_said(why)) return false;
    *out = (struct moves){r.closing.arithmetic, r.opening.arithmetic};
    return true;
}

static bool has_leg(const struct gw_stack_spec *s) { return gw_given(s->engagement) && gw_given(s->least_overlap); }

/* From the gap that the joint keeps and what it still closes, to the leg that it keeps and what it still opens: a leg
 * as long as drawn is engaged by so much less as its joint is wider. */
static void width_between(struct gw_item_limit *out, const struct gw_stack_spec *s, const struct moves *m)
{
    out->at_least = s->least_gap + m->closes;
    out->at_most = has_leg(s) ? s->width + s->engagement - s->least_overlap - m->opens : GW_ABSENT;
    out->basis = GW_LIMIT_DEMAND;
}

static void engaged_by(struct gw_item_limit *out, const struct gw_stack_spec *s, const struct moves *m)
{
    out->at_least = s->least_overlap + m->opens;
    out->at_most = GW_ABSENT;
    out->basis = GW_LIMIT_DEMAND;
}

static const struct gw_built_joint ANY_TEMPERATURE = {GW_ABSENT, GW_ABSENT, false},
                                   NO_TEMPERATURE = {GW_ABSENT, GW_ABSENT, true};
static const char AT_ANY[] = "at any temperature of the metal; less is asked at the temperature that was read";

static void width_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                        const struct gw_system *system)
{
    const struct gw_stack_spec *s = gw_part(system, stack_joint);
    struct gw_message why;
    struct moves m;
    if (!s || !moves_of(&m, &why, ask, spot, &ANY_TEMPERATURE)) return;
    width_between(out, s, &m);
    out->note = GW_PLAINLY(AT_ANY);
    if (!(out->at_least > out->at_most)) return;
    out->at_least = out->at_most = GW_ABSENT;
    out->note = GW_PLAINLY("no width serves at every temperature of the metal: it hangs on the day's");
}

static void engagement_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                             const struct gw_system *system)
{
    const struct gw_stack_spec *s = gw_part(system, stack_joint);
    struct gw_message why;
    struct moves m;
    if (!s || !gw_given(s->least_overlap) || !moves_of(&m, &why, ask, spot, &ANY_TEMPERATURE)) return;
    engaged_by(out, s, &m);
    out->note = GW_PLAINLY(AT_ANY);
}

/* False: `out` asks for what is missing. */
static bool at_that_temperature(struct gw_left *out, struct moves *m, struct gw_ask *ask, const struct gw_spot *spot,
                                const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_built_joint built = {read->temperature_least, read->temperature_most, false};
    struct gw_message why = {0};
    if (!gw_part(system, stack_joint))
        why = GW_PLAINLY("what does the joint keep when it is closed, and how far must its leg stay engaged? Ask the "
                         "manufacturer (stack_joint)");
    else if (!read->drawn && (!gw_given(built.coldest) || !gw_given(built.warmest)))
        why = GW_PLAINLY("at what temperature of the metal was it measured?");
    const bool known = !gw_said(&why) && moves_of(m, &why, ask, spot, read->drawn ? NULL : &built);
    out->undecided = !known;
    if (!known) gw_left_unknown(out, why);
    return known;
}

/* How much more a joint opens from where it stood when its value was read than from where it stood when the other one
 * was, m: warmer metal closes it, and engages its leg. */
static double apart_by(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                       const struct moves *m)
{
    const struct gw_built_joint built = {read->other_least, read->other_most, false};
    struct gw_message why;
    struct moves other;
    const bool known = gw_given(built.coldest) && gw_given(built.warmest) && moves_of(&other, &why, ask, spot, &built);
    return known ? m->opens - other.opens : 0;
}

static void say_day(struct gw_item_limit *limit, struct gw_ask *ask, const struct gw_as_read *read)
{
    const struct gw_value low = gw_of_quantity(GW_TEMPERATURE, read->temperature_least),
                          high = gw_of_quantity(GW_TEMPERATURE, read->temperature_most);
    if (read->drawn) limit->note = GW_PLAINLY("as it is set, with tolerances");
    else
        limit->note = read->temperature_most > read->temperature_least
                          ? GW_SAY(ask->arena, "metal at {} to {}", low, high)
                          : GW_SAY(ask->arena, "metal at {}", low);
}

static double over(double room, double movement) { return movement > 0 ? fmax(room, 0) / movement : INFINITY; }

static void opens_by(struct gw_left *out, struct gw_ask *ask, double engaged, const struct gw_stack_spec *s,
                     const struct moves *m)
{
    const double left = over(engaged - s->least_overlap, m->opens);
    if (engaged < s->least_overlap) out->lost = true;
    gw_left_by(out, "opening", left, left, 1,
               GW_SAY(ask->arena, "engaged {}, to keep {}; it still opens {}", gw_of_quantity(GW_THICKNESS, engaged),
                      gw_of_quantity(GW_THICKNESS, s->least_overlap), gw_of_quantity(GW_THICKNESS, m->opens)));
}

/* A leg as long as drawn is as much less engaged as its joint is wider: its joint and what is engaged of it are
 * together no more than drawn. Of two readings that are more the one that leaves less may be the true one, and one that
 * was read alone may have used up the other. */
static void more_than_the_leg(struct gw_left *out, struct gw_ask *ask, const struct gw_as_read *read,
                              const struct gw_stack_spec *s, const struct moves *m)
{
    const double width = read->of[GW_ITEM_joint_width].number, leg = read->of[GW_ITEM_splice_engagement].number;
    const double whole = s->width + s->engagement, left = whole - leg;
    if (!gw_given(whole) || !gw_given(leg) || width + leg <= whole * (1 + GW_HAIR)) return;
    const bool closed = left < (s->least_gap + m->closes) * (1 - GW_HAIR);
    const bool apart = has_leg(s) && whole - width < (s->least_overlap + m->opens) * (1 - GW_HAIR);
    if (!closed && !apart) return;
    out->undecided = true;
    if (gw_given(width))
        gw_left_unknown(out, GW_SAY(ask->arena,
                                    "{} wide and {} engaged are more than the {} that its leg is drawn for: which of "
                                    "the two is right, or is that leg longer",
                                    gw_of_quantity(GW_THICKNESS, width), gw_of_quantity(GW_THICKNESS, leg),
                                    gw_of_quantity(GW_THICKNESS, whole)));
    else
        gw_left_unknown(out,
                        GW_SAY(ask->arena,
                               "a leg as long as drawn leaves {} of joint, which still closes {}: measure the "
                               "joint's width there",
                               gw_of_quantity(GW_THICKNESS, fmax(left, 0)), gw_of_quantity(GW_THICKNESS, m->closes)));
}

/* Of a joint whose temperature is not known: short of what floors and columns alone move. */
static void lost_at_any(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                        const struct gw_as_read *read, const struct gw_system *system)
{
    const double width = read->of[GW_ITEM_joint_width].number, leg = read->of[GW_ITEM_splice_engagement].number;
    const struct gw_stack_spec *s = gw_part(system, stack_joint);
    struct gw_message why;
    struct moves m;
    if (!s || !moves_of(&m, &why, ask, spot, &NO_TEMPERATURE)) return;
    const double opens = gw_given(s->least_overlap) ? s->least_overlap + m.opens : m.opens;
    const bool closed = width < (s->least_gap + m.closes) * (1 - GW_HAIR), apart = leg < opens * (1 - GW_HAIR);
    if (!closed && !apart) return;
    out->lost = true;
    out->unknown = GW_PLAINLY(NULL); /* whatever it was */
    out->remark =
        GW_SAY(ask->arena, "at any temperature: floors and columns alone {} by {}, and it is to keep {}",
               gw_of_text(closed ? "close it" : "open it"), gw_of_quantity(GW_THICKNESS, closed ? m.closes : m.opens),
               gw_of_quantity(GW_THICKNESS, closed ? s->least_gap : opens - m.opens));
}

static void width_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                       const struct gw_as_read *as_read, const struct gw_system *system)
{
    struct gw_as_read here = *as_read, *read = &here;
    const double width = read->of[GW_ITEM_joint_width].number;
    const struct gw_stack_spec *s = gw_part(system, stack_joint);
    struct moves m;
    if (!at_that_temperature(out, &m, ask, spot, read, system)) {
        lost_at_any(out, ask, spot, read, system);
        return;
    }
    width_between(&out->limit, s, &m);
    const double leg = read->of[GW_ITEM_splice_engagement].number += apart_by(ask, spot, read, &m);
    if (gw_given(leg)) /* absent without an overlap; fmin takes what is given */
        out->limit.at_most = fmin(width + leg, s->width + s->engagement) - s->least_overlap - m.opens;
    say_day(&out->limit, ask, read);
    if (out->limit.at_least > out->limit.at_most) {
        out->limit.at_least = out->limit.at_most = GW_ABSENT;
        out->limit.note = GW_PLAINLY("no width serves: it closes and opens by more than it has");
    }
    const double left = over(width - s->least_gap, m.closes);
    if (width < s->least_gap) out->lost = true;
    gw_left_by(out, "closing", left, left, 1,
               GW_SAY(ask->arena, "{} wide, to keep {}; it still closes {}", gw_of_quantity(GW_THICKNESS, width),
                      gw_of_quantity(GW_THICKNESS, s->least_gap), gw_of_quantity(GW_THICKNESS, m.closes)));
    more_than_the_leg(out, ask, read, s, &m);
    const double engaged = gw_given(leg) ? leg : s->width + s->engagement - width;
    if (gw_given(engaged) && gw_given(s->least_overlap)) {
        opens_by(out, ask, engaged, s, &m);
        return;
    }
    out->undecided = true;
    gw_left_unknown(out,
                    GW_PLAINLY("how far is the leg engaged, and how far must it stay? Measure it there, and ask the "
                               "manufacturer (stack_joint: engagement, least_overlap)"));
}

/* A leg whose temperature nobody read may be long enough whatever it was. False: it is not, or the temperature is
 * known. */
static bool is_enough_at_any(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                             const struct gw_as_read *read, const struct gw_system *system)
{
    const double leg = read->of[GW_ITEM_splice_engagement].number;
    const struct gw_stack_spec *s = gw_part(system, stack_joint);
    const bool known = read->drawn || (gw_given(read->temperature_least) && gw_given(read->temperature_most));
    struct gw_message why;
    struct moves m;
    if (known || !s || !gw_given(s->least_overlap) || !moves_of(&m, &why, ask, spot, &ANY_TEMPERATURE)) return false;
    if (leg < (s->least_overlap + m.opens) * (1 - GW_HAIR)) return false;
    engaged_by(&out->limit, s, &m);
    out->limit.note = GW_PLAINLY("at any temperature of the metal");
    more_than_the_leg(out, ask, read, s, &m);
    opens_by(out, ask, leg, s, &m);
    return true;
}

static void engagement_left(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                            const struct gw_as_read *as_read, const struct gw_system *system)
{
    struct gw_as_read here = *as_read, *read = &here;
    const struct gw_stack_spec *s = gw_part(system, stack_joint);
    struct moves m;
    if (is_enough_at_any(out, ask, spot, read, system)) return;
    if (!at_that_temperature(out, &m, ask, spot, read, system)) {
        lost_at_any(out, ask, spot, read, system);
        return;
    }
    if (!gw_given(s->least_overlap)) {
        out->undecided = true;
        gw_left_unknown(out, GW_PLAINLY("how far must the leg stay engaged? Ask the manufacturer (stack_joint: "
                                        "least_overlap)"));
        return;
    }
    engaged_by(&out->limit, s, &m);
    say_day(&out->limit, ask, read);
    read->of[GW_ITEM_joint_width].number -= apart_by(ask, spot, read, &m);
    more_than_the_leg(out, ask, read, s, &m);
    opens_by(out, ask, read->of[GW_ITEM_splice_engagement].number, s, &m);
}

/* Rows ------------------------------------------------------------------------------------------------------------- */

const struct gw_item gw_item_splice_engagement = {
    .id = GW_ITEM_splice_engagement,
    .stage = GW_STAGE_FRAME,
    .on = GW_ON_JOINT,
    .hold = true,
    .how = "mark on the sleeve or leg",
    .prevents = "the joint comes apart when it opens",
    .clause = "sum of movements",
    .if_missed = "measure the joint's width too",
    .does = &(const struct gw_item_functions){.without = without, .limit = engagement_limit, .left = engagement_left}};
const struct gw_item gw_item_joint_width = {
    .id = GW_ITEM_joint_width,
    .stage = GW_STAGE_FRAME,
    .on = GW_ON_JOINT,
    .hold = true,
    .how = "gauge, with the temperature of the metal",
    .prevents = "closes onto metal, or opens past its leg",
    .clause = "sum of movements",
    .if_missed = "measure its neighbors on that floor",
    .does = &(const struct gw_item_functions){.without = without, .limit = width_limit, .left = width_left}};
