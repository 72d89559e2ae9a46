/* What `inspect` leaves at a place and what `check` says there of the same system, changed by an option as the reading
 * says, are one capacity: remaining is 1 over use, of the mechanism that the item says.
 *
 * Each case is two worlds of one text: in the first the item is judged as it was read, in the second the option is
 * chosen and the wall is checked. */
#include "item_support.h"

#include "galeward/plan.h"

static const char PLATED[] =
    "mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 7 in, flange: 0.25 in, web: 0.125 in}}\n"
    "transom: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 5 in, flange: 0.125 in, web: 0.125 in}, eccentricity: 0 "
    "in}\n"
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 3/16 in, hole: 0.281 in}\n"
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in,\n"
    "  tested_pullout: 1800 lb, report: C}\n"
    "clamp: {nut_factor: 0.20, forming_torque: 10 in-lb, stop: true, stack: 3/4 in, chase: 1/2 in, tip: 0 in,\n"
    "  retained: 0.80}\n"
    "drift: {path: racking, side_gap: 3/8 in, end_gap: 3/8 in, bite: 1/2 in}\n"
    "stack_joint: {width: 2 in, least_gap: 0 in, engagement: 3 in, least_overlap: 0 in}\n";
static const char BONDED[] = "silicone: {bite: 5/8 in, thickness: 3/8 in, edge_seal: {bite: 5/8 in}}\n";
/* Set at 70 degF, as it was read, without tolerances: the budget of a joint as built. */
#define MOVES                                                                                                          \
    "movement: {live_load: 1/2 in, coldest: 0 degF, hottest: 150 degF, set_coldest: 70 degF, set_warmest: 70 degF, "   \
    "fabrication: 0 in, erection: 0 in}"
#define QUAKE SITE(", seismic: {category: D, sds: 1.0, story_drift: 1.0 in}")
#define CHOSEN "chosen: [{wall: s, zone: 4, options: [as read]}]"

struct agreement {
    const char *project, *glazing, *system;
    const char *change; /* what an option sets of the system */
    enum gw_item_id item;
    int row, edge;
    double read; /* in */
    const char *mechanism;
    const char *check[2]; /* of which the worse one is meant */
};

static struct gw_item_result read_at(struct world *w, const struct agreement *a)
{
    const struct gw_spot spot = spot_at(w, gw_item_of(a->item)->on, a->row, a->edge);
    struct gw_as_read read = nothing_read();
    read.of[a->item].number = a->read * IN;
    read.temperature_least = read.temperature_most = (70 + 459.67) / 1.8;
    return judge_at(w, a->item, &spot, &read);
}

static void choose(struct world *w)
{
    struct gw_plans *plans = NULL;
    assert_true(gw_plans_read(&plans, &w->model, &w->takeoff, &w->arena));
    w->ask.plans = plans;
    gw_answer_check(&w->answer, &w->ask);
}

/* Of the checks at what stands there: the greatest use. */
static double use_there(struct world *w, const struct agreement *a)
{
    const struct gw_spot spot = spot_at(w, gw_item_of(a->item)->on, a->row, a->edge);
    double most = 0;
    for (size_t i = 0; i < 2 && a->check[i]; i++) {
        const char *const c = a->check[i];
        const bool screws = strcmp(c, "screw") == 0 || strcmp(c, "plate") == 0;
        const struct gw_element *e = screws ? spot.screws
                                     : strncmp(c, "transom", 7) == 0
                                         ? gw_takeoff_edge(&w->takeoff, "s", 1, 2, 2, GW_EDGE_SILL, false)
                                         : spot.lite;
        most = fmax(most, finding(w, c, strcmp(c, "movement") == 0 ? "project" : e->id)->utilization);
    }
    return most;
}

static void agrees(void **state, const struct agreement *a)
{
    struct world *w = *state;
    const char *const system = gw_format(&w->arena, "%soptions: [{name: as read, change: {%s}}]", a->system, a->change);
    hang(w, a->project, a->glazing, system);
    const struct gw_item_result r = read_at(w, a);
    assert_non_null(r.mechanism);
    assert_string_equal(r.mechanism, a->mechanism);
    assert_near(r.remaining, r.remaining_worst, 1e-12);
    world_close(w);
    world_open(w);
    const char *const again = gw_format(&w->arena, "%soptions: [{name: as read, change: {%s}}]", a->system, a->change);
    hang(w, gw_format(&w->arena, "%s\n" CHOSEN, a->project), a->glazing, again);
    const double before = use_there(w, a);
    choose(w);
    const double use = use_there(w, a);
    assert_near(r.remaining, 1 / use, 1e-9 / use);
    assert_true(fabs(use - before) > 1e-3 * use); /* the option does change it */
}

static void screw_spacing(void **state)
{
    agrees(state, &(const struct agreement){.project = QUIET,
                                            .glazing = "captured",
                                            .system = PLATED,
                                            .change = "screw: {spacing: 18 in}",
                                            .item = GW_ITEM_screw_spacing,
                                            .row = 2,
                                            .edge = GW_EDGE_LEFT,
                                            .read = 18,
                                            .mechanism = "plate",
                                            .check = {"plate", "screw"}});
}

static void screw_end_distance(void **state)
{
    agrees(state, &(const struct agreement){.project = QUIET,
                                            .glazing = "captured",
                                            .system = PLATED,
                                            .change = "screw: {end_distance: 8 in}",
                                            .item = GW_ITEM_screw_end_distance,
                                            .row = 2,
                                            .edge = GW_EDGE_LEFT,
                                            .read = 8,
                                            .mechanism = "plate",
                                            .check = {"plate", "screw"}});
}

/* What a torque pulls is not known, so that suction alone does. */
static const char LOOSE[] =
    "mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 7 in, flange: 0.25 in, web: 0.125 in}}\n"
    "transom: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 5 in, flange: 0.125 in, web: 0.125 in}, eccentricity: 0 "
    "in}\n"
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 3/16 in, hole: 0.281 in}\n"
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in,\n"
    "  tested_pullout: 1800 lb, report: C}\n"
    "clamp: {stop: true, stack: 3/4 in, chase: 1/2 in, tip: 0 in, retained: 0.80}\n";

/* 3/16 + 3/4 in and 1/4 in of thread of the 1/2 in that was tested. */
static void screw_length(void **state)
{
    agrees(state, &(const struct agreement){.project = QUIET,
                                            .glazing = "captured",
                                            .system = LOOSE,
                                            .change = "screw: {tested_pullout: 900 lb}",
                                            .item = GW_ITEM_screw_length,
                                            .row = 2,
                                            .edge = GW_EDGE_LEFT,
                                            .read = 1.1875,
                                            .mechanism = "pull-out",
                                            .check = {"screw"}});
}

static void bite_of_silicone(void **state)
{
    agrees(state, &(const struct agreement){.project = QUIET,
                                            .glazing = "silicone",
                                            .system = BONDED,
                                            .change = "silicone: {bite: 3/8 in}",
                                            .item = GW_ITEM_glass_bite,
                                            .row = 2,
                                            .edge = GW_EDGE_LEFT,
                                            .read = 0.375,
                                            .mechanism = "silicone",
                                            .check = {"silicone"}});
}

/* One side 1/4 in, the other as drawn: what is lost here is not gained there. */
static void edge_clearance(void **state)
{
    agrees(state, &(const struct agreement){.project = QUAKE,
                                            .glazing = "captured",
                                            .system = PLATED,
                                            .change = "drift: {side_gap: 5/16 in}",
                                            .item = GW_ITEM_edge_clearance,
                                            .row = 2,
                                            .edge = GW_EDGE_LEFT,
                                            .read = 0.25,
                                            .mechanism = "drift",
                                            .check = {"seismic_glass"}});
}

/* As much as the joint is wider its leg is engaged less. */
static void joint_width(void **state)
{
    agrees(state, &(const struct agreement){.project = QUIET MOVES,
                                            .glazing = "captured",
                                            .system = PLATED,
                                            .change = "stack_joint: {width: 1 1/4 in, engagement: 3 3/4 in}",
                                            .item = GW_ITEM_joint_width,
                                            .row = 2,
                                            .edge = -1,
                                            .read = 1.25,
                                            .mechanism = "closing",
                                            .check = {"movement"}});
}

static void splice_engagement(void **state)
{
    agrees(state, &(const struct agreement){.project = QUIET MOVES,
                                            .glazing = "captured",
                                            .system = PLATED,
                                            .change = "stack_joint: {engagement: 3/4 in}",
                                            .item = GW_ITEM_splice_engagement,
                                            .row = 2,
                                            .edge = -1,
                                            .read = 0.75,
                                            .mechanism = "opening",
                                            .check = {"movement"}});
}

/* The corner of the glass may be half of the mullion's 2.5 in from the rail's end. */
static void setting_block_place(void **state)
{
    agrees(state, &(const struct agreement){.project = QUIET,
                                            .glazing = "captured",
                                            .system = PLATED,
                                            .change = "transom: {block_offset: 21.25 in}",
                                            .item = GW_ITEM_setting_block_place,
                                            .row = 2,
                                            .edge = -1,
                                            .read = 20,
                                            .mechanism = "transom deflection",
                                            .check = {"transom", "transom_deflection"}});
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(screw_spacing),     WORLD_TEST(screw_end_distance),  WORLD_TEST(screw_length),
        WORLD_TEST(bite_of_silicone),  WORLD_TEST(edge_clearance),      WORLD_TEST(joint_width),
        WORLD_TEST(splice_engagement), WORLD_TEST(setting_block_place),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
