/* Joints between pieces one above the other: what closes them and what opens them. */
#include "judge/checks.h"
#include "judge/joint_budget.h"
#include "judge/line.h"
#include "judge/outcome.h"

static bool knows_movement(const struct gw_model *m) { return !m->project.walls.n || gw_knows_movement(m); }

static const char *waived(const struct gw_model *m)
{
    return m->project.walls.n ? NULL : "no walls, so no joints between pieces one above the other";
}

static const struct gw_need NEEDS[] = {{knows_movement, gw_unknown_movement}, {0}};

/* Of a wall: the most that moves into one of its joints; of one without joints its piece. */
static struct gw_mullion_joint worst_of(struct gw_ask *ask, const struct gw_wall_lines *l)
{
    size_t n;
    const struct gw_mullion_joint *joints = gw_joints_of(&n, ask, l);
    const struct gw_mullion_piece piece = gw_longest_piece(l);
    struct gw_mullion_joint worst = {.at = GW_ABSENT, .length = n ? 0 : piece.length, .stories = n ? 1 : piece.stories};
    for (size_t i = 0; i < n; i++) {
        if (joints[i].length > worst.length) worst.at = joints[i].at;
        worst.length = fmax(worst.length, joints[i].length);
        if (joints[i].stories > worst.stories) worst.stories = joints[i].stories;
    }
    return worst;
}

/* The same of all walls. Elements of a wall follow each other. */
static struct gw_mullion_joint worst_joint(struct gw_ask *ask)
{
    struct gw_mullion_joint worst = {.stories = 1};
    const struct gw_wall_lines *last = NULL;
    for (size_t i = 0; i < ask->takeoff->elements.n; i++) {
        const struct gw_wall_lines *l = ask->takeoff->elements.items[i].lines;
        if (l == last || !l->n_floors) continue; /* an opening of a schedule is one piece */
        last = l;
        const struct gw_mullion_joint one = worst_of(ask, l);
        worst.length = fmax(worst.length, one.length);
        if (one.stories > worst.stories) worst.stories = one.stories;
    }
    return worst;
}

static enum gw_status find(struct gw_movement_result *out, struct gw_ask *ask, double least_gap, double least_overlap)
{
    const struct gw_mullion_joint joint = worst_joint(ask);
    return gw_joint_budget(out, ask, &joint, NULL, least_gap, least_overlap);
}

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_movement_result r;
    (void)place;
    const bool known = find(&r, ask, 0, GW_ABSENT) == GW_OK;
    gw_demand_term(out, ask, GW_THICKNESS, GW_NO_DIRECTION, known ? r.closing.arithmetic : GW_ABSENT);
    if (!known) {
        gw_demand_unknown(out, gw_fault_message(ask));
        return;
    }
    out->message =
        GW_SAY(ask->arena,
               "room between pieces of mullion one above the other, without the gasket's least gap: closes {} "
               "arithmetic, {} with tolerances by root sum of squares, {} all by root sum of squares; opens {}, {}, "
               "{}; the arithmetic sums govern",
               gw_of_demand(GW_THICKNESS, r.closing.arithmetic), gw_of_demand(GW_THICKNESS, r.closing.mixed),
               gw_of_demand(GW_THICKNESS, r.closing.srss), gw_of_demand(GW_THICKNESS, r.opening.arithmetic),
               gw_of_demand(GW_THICKNESS, r.opening.mixed), gw_of_demand(GW_THICKNESS, r.opening.srss));
}

static const char WHICH_JOINT[] = "how wide is the joint between pieces, and what does it keep when closed? Ask the "
                                  "manufacturer (stack_joint: width, least_gap, engagement, least_overlap)";

/* The joint closes onto its gasket; the leg stays engaged where the joint opens. */
static void limits_of(struct gw_capacity *out, const struct gw_stack_spec *s, const struct gw_movement_result *r)
{
    const bool leg = gw_given(s->engagement) && gw_given(s->least_overlap);
    gw_capacity_instead(out, GW_THICKNESS, r->joint.arithmetic, s->width, GW_PLAINLY("closing and the least gap"));
    gw_capacity_instead(out, GW_THICKNESS, leg ? r->engagement.arithmetic : 0, leg ? s->engagement : GW_ABSENT,
                        GW_PLAINLY(leg ? "opening and the least overlap"
                                       : "it closes safely; how far is the male leg engaged, and how far must it stay? "
                                         "Ask the manufacturer (stack_joint: engagement, least_overlap)"));
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_stack_spec *s = gw_part(system, stack_joint);
    struct gw_movement_result r;
    (void)d;
    if (!s) gw_capacity_unknown(out, GW_PLAINLY(WHICH_JOINT));
    else if (find(&r, ask, s->least_gap, s->least_overlap) != GW_OK) gw_capacity_unknown(out, gw_fault_message(ask));
    else limits_of(out, s, &r);
}

void gw_judge_joint(struct gw_judged_joint *out, struct gw_ask *ask, const struct gw_wall_grid *grid,
                    const struct gw_system *system)
{
    const struct gw_stack_spec *s = gw_part(system, stack_joint);
    struct gw_capacity c = {.evidence = GW_BY_CALCULATION};
    const struct gw_demand d = {.at_most = false};
    *out = (struct gw_judged_joint){.n = 0};
    gw_ask_open(ask);
    out->joint = worst_of(ask, &grid->lines);
    if (!gw_knows_movement(ask->model)) {
        out->fault = GW_PLAINLY(gw_unknown_movement);
        return;
    }
    enum gw_status status = gw_joint_parts(out->items, &out->n, ask, &out->joint, NULL);
    if (status == GW_OK)
        status = gw_movement_sum(&out->moves, out->items, out->n, s ? s->least_gap : 0,
                                 s ? s->least_overlap : GW_ABSENT, &ask->engine);
    if (status != GW_OK) out->fault = gw_fault_message(ask);
    else if (s) limits_of(&c, s, &out->moves);
    else gw_capacity_unknown(&c, GW_PLAINLY(WHICH_JOINT));
    gw_weigh_each(&out->limits, &c, &d);
}

const struct gw_check gw_check_movement = {
    .id = "movement",
    .title = "Joints between pieces one above the other",
    .clause = "sum of movements",
    .scope = GW_PER_PROJECT,
    .does = &(const struct gw_functions){.needs = NEEDS, .waived = waived, .demand = demand, .capacity = capacity}};
