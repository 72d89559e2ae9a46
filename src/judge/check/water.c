/* Water penetration of each wall and component, by test. */
#include "judge/checks.h"
#include "judge/coverage.h"

static struct gw_water_case water_case(const struct gw_water_requirement *w, const struct gw_judged_wall *wall)
{
    return (struct gw_water_case){.positive = {wall->greatest_inward},
                                  .rule = w && w->rule ? w->rule : GW_WATER_CURTAIN_WALL,
                                  .region = GW_WATER_US,
                                  .share = w ? w->share : GW_ABSENT,
                                  .floor = w ? w->floor : GW_ABSENT,
                                  .cap = w ? w->cap : GW_ABSENT};
}

static struct gw_message how(struct gw_ask *ask, const struct gw_water_result *water, enum gw_water_rule rule)
{
    static const char *const governs[] = {[GW_WATER_GOVERNS_UNSET] = "",
                                          [GW_BY_SHARE] = "the share governs",
                                          [GW_BY_FLOOR] = "the floor governs",
                                          [GW_BY_CAP] = "the cap governs"};
    struct gw_text percent;
    gw_text_init(&percent, ask->arena);
    gw_text_fixed(&percent, water->share * 100, 0);
    return GW_SAY(ask->arena, "{} % of the greatest inward pressure, {}; floor {}, cap {}: {} (basis {})",
                  gw_of_text(percent.at), gw_of_quantity(GW_PRESSURE, water->shared),
                  gw_of_quantity(GW_PRESSURE, water->floor), gw_of_quantity(GW_PRESSURE, water->cap),
                  gw_of_text(governs[water->governs]), gw_of_text(gw_choice_name(gw_water_rule_choices, (int)rule)));
}

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_requirements *r = ask->model->project.requirements;
    const struct gw_water_requirement *w = r ? r->water : NULL;
    struct gw_water_result water;
    out->by_report = w && w->evidence.n;
    if (w && gw_given(w->pressure)) {
        gw_demand_term(out, ask, GW_PRESSURE, GW_NO_DIRECTION, w->pressure);
        out->message = GW_PLAINLY(out->by_report ? "required by the project, by a test" : "required by the project");
        return;
    }
    const struct gw_water_case in = water_case(w, place->wall);
    const bool known = gw_required_water(&water, &in, &ask->engine) == GW_OK;
    gw_demand_term(out, ask, GW_PRESSURE, GW_NO_DIRECTION, known ? water.pressure : GW_ABSENT);
    if (known) gw_used_merge(&ask->engine.used, &place->wall->used);
    if (known) out->message = how(ask, &water, in.rule);
    else gw_demand_unknown(out, gw_fault_message(ask));
}

static void test(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    out->applies = rating->test == GW_TEST_WATER && gw_same_component(rating, d->component);
    if (!out->applies) return;
    out->provided[0] = rating->pressure;
    gw_ask_joints(out, ask, d, rating);
}

const struct gw_check gw_check_water = {.id = "water",
                                        .title = "Water penetration",
                                        .clause = "ASTM E331",
                                        .scope = GW_PER_WALL,
                                        .does = &(const struct gw_functions){.demand = demand, .test = test}};
