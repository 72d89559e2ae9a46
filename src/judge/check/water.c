/* Water penetration of each wall and component, by test. */
#include "judge/checks.h"
#include "judge/coverage.h"

/* What the project says besides the pressure; without `own` by the rule's own share, floor and cap. */
static struct gw_water_case water_case(const struct gw_water_requirement *w, const struct gw_judged_wall *wall,
                                       bool own)
{
    const bool stated = w && own;
    return (struct gw_water_case){.positive = {wall->greatest_inward},
                                  .rule = w && w->rule ? w->rule : GW_WATER_CURTAIN_WALL,
                                  .region = GW_WATER_US,
                                  .share = stated ? w->share : GW_ABSENT,
                                  .floor = stated ? w->floor : GW_ABSENT,
                                  .cap = stated ? w->cap : GW_ABSENT};
}

/* Where the wind on some lites is not known more may be asked, but no more than the cap. */
static bool is_all(const struct gw_judged_wall *wall, const struct gw_water_result *water)
{
    return !wall->outside || !(water->pressure < water->cap);
}

static const char *percent_of(struct gw_ask *ask, double share)
{
    struct gw_text percent;
    gw_text_init(&percent, ask->arena);
    gw_text_fixed(&percent, share * 100, 0);
    return percent.at;
}

static struct gw_message how(struct gw_ask *ask, const struct gw_water_result *water, enum gw_water_rule rule)
{
    static const char *const governs[] = {[GW_WATER_GOVERNS_UNSET] = "",
                                          [GW_BY_SHARE] = "the share governs",
                                          [GW_BY_FLOOR] = "the floor governs",
                                          [GW_BY_CAP] = "the cap governs"};
    return GW_SAY(ask->arena, "{} % of the greatest inward pressure, {}; floor {}, cap {}: {} (basis {})",
                  gw_of_text(percent_of(ask, water->share)), gw_of_demand(GW_PRESSURE, water->shared),
                  gw_of_quantity(GW_PRESSURE, water->floor), gw_of_quantity(GW_PRESSURE, water->cap),
                  gw_of_text(governs[water->governs]), gw_of_text(gw_choice_name(gw_water_rule_choices, (int)rule)));
}

/* "20 % of the greatest inward pressure", "the floor of curtain_wall" */
static struct gw_message briefly(struct gw_ask *ask, const struct gw_water_result *water, enum gw_water_rule rule)
{
    if (water->governs != GW_BY_SHARE)
        return GW_SAY(ask->arena, "the {} of {}", gw_of_text(water->governs == GW_BY_FLOOR ? "floor" : "cap"),
                      gw_of_text(gw_choice_name(gw_water_rule_choices, (int)rule)));
    return GW_SAY(ask->arena, "{} % of the greatest inward pressure", gw_of_text(percent_of(ask, water->share)));
}

/* By a pressure, or by a share, floor or cap of its own, a project may ask for less than the rule does. The verdict
 * does not rest on that: an engine of its own, whose rows are not the demand's. */
static void compare_with_site(struct gw_demand *out, struct gw_ask *ask, const struct gw_water_requirement *w,
                              const struct gw_judged_wall *wall)
{
    struct gw_water_result site;
    struct gw_engine engine;
    const double asked = gw_term_of(out, 0)->value;
    const struct gw_water_case in = water_case(w, wall, false);
    gw_engine_init(&engine, ask->model->tables, NULL);
    if (!w || gw_required_water(&site, &in, &engine) != GW_OK) return;
    if (!(asked < site.pressure * (1 - GW_HAIR))) return;
    const struct gw_message why = briefly(ask, &site, in.rule);
    struct gw_below *below = gw_alloc(ask->arena, 1, sizeof *below);
    below->value = site.pressure;
    below->said = GW_SAY(ask->arena, "the project asks {}, less than the site's {}{}, {}",
                         gw_of_quantity(GW_PRESSURE, asked), gw_of_demand(GW_PRESSURE, site.pressure),
                         gw_of_text(is_all(wall, &site) ? "" : " or more"), gw_of_message(&why));
    out->below = below;
}

static struct gw_message no_wind(struct gw_ask *ask, const struct gw_judged_wall *wall,
                                 const struct gw_water_result *water)
{
    return GW_SAY(ask->arena,
                  "the wind on lites of this wall is {}: which water pressure does the project ask (requirements: "
                  "water)? By the rule {} at least, {} at most",
                  gw_of_message(wall->outside), gw_of_quantity(GW_PRESSURE, water->pressure),
                  gw_of_quantity(GW_PRESSURE, water->cap));
}

static void by_rule(struct gw_demand *out, struct gw_ask *ask, const struct gw_water_requirement *w,
                    const struct gw_judged_wall *wall)
{
    struct gw_water_result water;
    const struct gw_water_case in = water_case(w, wall, true);
    const bool allowed = gw_required_water(&water, &in, &ask->engine) == GW_OK, known = allowed && is_all(wall, &water);
    gw_demand_term(out, ask, GW_PRESSURE, GW_NO_DIRECTION, known ? water.pressure : GW_ABSENT);
    if (known) gw_used_merge(&ask->engine.used, &wall->used);
    if (known) out->message = how(ask, &water, in.rule);
    else gw_demand_unknown(out, allowed ? no_wind(ask, wall, &water) : gw_fault_message(ask));
}

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_requirements *r = ask->model->project.requirements;
    const struct gw_water_requirement *w = r ? r->water : NULL;
    out->by_report = w && w->evidence.n;
    if (w && gw_given(w->pressure)) {
        gw_demand_term(out, ask, GW_PRESSURE, GW_NO_DIRECTION, w->pressure);
        out->message = GW_PLAINLY(out->by_report ? "required by the project, by a test" : "required by the project");
    } else {
        by_rule(out, ask, w, place->wall);
    }
    compare_with_site(out, ask, w, place->wall);
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
