/* Deflection at the center of the glass, where the project sets a limit. */
#include "judge/checks.h"
#include "judge/glass_lite.h"

static const char *waived(const struct gw_model *model)
{
    const struct gw_glass_rules *rules = model->project.glass;
    const bool limited = rules && (gw_given(rules->deflection_limit) || gw_given(rules->deflection_ratio));
    return limited ? NULL : "the project sets no limit (glass: deflection_limit, deflection_ratio)";
}

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_glass_judged *g = gw_glass_of(out, ask, place->element);
    gw_demand_limit(out, ask, GW_THICKNESS, g ? g->demand.deflection_limit : GW_ABSENT, GW_ABSENT);
    if (!g) return;
    gw_pressures_on(ask, place->element);
    out->message = GW_PLAINLY("the project's limit");
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    (void)system;
    struct gw_demand known = *d;
    const struct gw_glass_judged *g = gw_glass_of(&known, ask, d->element);
    if (!g) {
        gw_capacity_unknown(out, known.message);
        return;
    }
    const struct gw_lite_result *r = &g->bent;
    struct gw_limit *limit = gw_capacity_limit(
        out, 0, 0, r->deflection, GW_SAY(ask->arena, "at {}", gw_of_demand(GW_PRESSURE, fabs(r->load.pressure))));
    limit->turned = true;
    limit->direction = g->bent_load ? GW_OUTWARD : GW_INWARD;
}

const struct gw_check gw_check_glass_deflection = {
    .id = "glass_deflection",
    .title = "Deflection at the center of glass",
    .clause = "project limit",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_LITE),
    .own_glass = true,
    .does = &(const struct gw_functions){.waived = waived, .demand = demand, .capacity = capacity}};
