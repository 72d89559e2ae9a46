/* Strength of the glass of each lite under its own pressure. */
#include "judge/checks.h"
#include "judge/glass_lite.h"

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_pressures p = {GW_ABSENT, GW_ABSENT};
    if (gw_demand_wind(out, ask, place->element, &p)) gw_glass_of(out, ask, place->element);
    gw_demand_term(out, ask, GW_PRESSURE, GW_INWARD, p.inward);
    gw_demand_term(out, ask, GW_PRESSURE, GW_OUTWARD, p.outward);
}

static struct gw_message by_what(struct gw_ask *ask, const struct gw_lite_result *r)
{
    const bool standard = r->governing == GW_ROUTE_STANDARD;
    const int pane = standard ? r->standard.pane : r->principles.pane;
    const char *route = standard ? "the standard's factors" : "first principles";
    if (r->n_panes < 2) return GW_SAY(ask->arena, "by {}", gw_of_text(route));
    return GW_SAY(ask->arena, "by {}, lite {} of {}", gw_of_text(route), gw_of_count(pane + 1),
                  gw_of_count(r->n_panes));
}

static struct gw_message and_not(struct gw_arena *arena, const struct gw_message *said, const char *route,
                                 const struct gw_fault *why)
{
    const struct gw_message limit = gw_fault_kept(arena, why);
    return GW_SAY(arena, "{}; {}: {}", gw_of_message(said), gw_of_text(route), gw_of_message(&limit));
}

static struct gw_message how(struct gw_ask *ask, const struct gw_lite_result *r)
{
    struct gw_arena *arena = ask->arena;
    struct gw_message m = by_what(ask, r);
    if (r->standard.covered && r->principles.covered && r->why)
        m = GW_SAY(arena, "{} ({})", gw_of_message(&m), gw_of_text(r->why));
    if (!r->standard.covered) m = and_not(arena, &m, "standard's factors", &r->standard.why_not);
    if (!r->principles.covered) m = and_not(arena, &m, "first principles", &r->principles.why_not);
    return GW_SAY(arena, "{}; bends {}", gw_of_message(&m), gw_of_quantity(GW_THICKNESS, r->deflection));
}

/* Whoever the candidate is. */
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
    const struct gw_lite_result *r = &g->verdict.results[g->verdict.governing];
    struct gw_limit *limit = gw_capacity_instead(out, GW_PRESSURE, fabs(r->load.pressure), r->resistance, how(ask, r));
    limit->use = r->utilization;
    limit->turned = true;
    limit->direction = g->verdict.governing ? GW_OUTWARD : GW_INWARD;
}

const struct gw_check gw_check_glass = {.id = "glass",
                                        .title = "Glass strength",
                                        .clause = "ASTM E1300",
                                        .scope = GW_PER_ELEMENT,
                                        .kinds = GW_KIND_BIT(GW_LITE),
                                        .link = true,
                                        .own_glass = true,
                                        .does = &(const struct gw_functions){.demand = demand, .capacity = capacity}};
