/* Air leakage of each wall and component, by test. */
#include "judge/checks.h"
#include "judge/coverage.h"

#include "tables_data.h"

static const struct gw_air_default *usual(const struct gw_ask *ask)
{
    return &ask->model->tables->air_default[GW_ROW_AIR_DEFAULT_CURTAIN_WALL];
}

/* A wall that leaks as much as the project allows: does it show the usual limit? Vents and doors have limits of their
 * own, which are not known here. */
static void compare_with_usual(struct gw_demand *out, struct gw_ask *ask, const struct gw_air_requirement *air)
{
    const struct gw_air_default *row = usual(ask);
    const struct gw_air_claim claim = {air->leakage, air->at, row->leakage_m_s, row->at_pa};
    const bool looser = air->leakage > row->leakage_m_s * (1 + GW_HAIR);
    if (out->component != GW_FIXED) return;
    if (!looser && gw_air_shows(NULL, &claim, &ask->engine) == GW_AIR_SHOWS) return;
    struct gw_below *below = gw_alloc(ask->arena, 1, sizeof *below);
    below->value = row->leakage_m_s;
    below->said = GW_SAY(
        ask->arena, "the project allows {} at {}, which does not show the usual limit of fixed curtain wall, {} at {}",
        gw_of_quantity(GW_LEAKAGE, air->leakage), gw_of_quantity(GW_PRESSURE, air->at),
        gw_of_quantity(GW_LEAKAGE, row->leakage_m_s), gw_of_quantity(GW_PRESSURE, row->at_pa));
    out->below = below;
}

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_requirements *r = ask->model->project.requirements;
    (void)place;
    out->at_most = true;
    if (r && r->air) {
        gw_demand_term(out, ask, GW_LEAKAGE, GW_NO_DIRECTION, r->air->leakage);
        out->at = r->air->at;
        out->by_report = r->air->evidence.n > 0;
        out->message = GW_SAY(ask->arena, "required by the project{}, at {}",
                              gw_of_text(out->by_report ? ", by a test" : ""), gw_of_quantity(GW_PRESSURE, out->at));
        compare_with_usual(out, ask, r->air);
        return;
    }
    const struct gw_air_default *row = usual(ask);
    gw_used_add(&ask->engine.used, &row->row);
    gw_demand_term(out, ask, GW_LEAKAGE, GW_NO_DIRECTION, row->leakage_m_s);
    out->at = row->at_pa;
    out->message = GW_SAY(ask->arena, "usual limit of fixed curtain wall, at {}; the project gives none",
                          gw_of_quantity(GW_PRESSURE, out->at));
}

static struct gw_message too_hard(struct gw_ask *ask, const struct gw_air_claim *claim)
{
    return GW_SAY(ask->arena,
                  "tested at {}, above the required {}, where it leaks more than the limit; ask for the result at the "
                  "required pressure",
                  gw_of_quantity(GW_PRESSURE, claim->tested_at), gw_of_quantity(GW_PRESSURE, claim->limit_at));
}

static struct gw_message too_soft(struct gw_ask *ask, const struct gw_air_claim *claim, double estimate)
{
    return GW_SAY(ask->arena,
                  "tested at {}, required at {}: a lower pressure does not show it (about {} there, for information)",
                  gw_of_quantity(GW_PRESSURE, claim->tested_at), gw_of_quantity(GW_PRESSURE, claim->limit_at),
                  gw_of_quantity(GW_LEAKAGE, estimate));
}

static void test(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    double estimate;
    out->applies = rating->test == GW_TEST_AIR && gw_same_component(rating, d->component);
    if (!out->applies) return;
    const struct gw_air_claim claim = {rating->leakage, rating->at, gw_term_of(d, 0)->value, d->at};
    const enum gw_air_evidence evidence = gw_air_shows(&estimate, &claim, &ask->engine);
    out->provided[0] = rating->leakage;
    out->covers = evidence == GW_AIR_SHOWS;
    if (evidence == GW_AIR_TOO_HARD) out->why = too_hard(ask, &claim);
    if (evidence == GW_AIR_TOO_SOFT) out->why = too_soft(ask, &claim, estimate);
    if (out->covers && !gw_is_short(out, d)) gw_ask_joints(out, ask, d, rating);
}

const struct gw_check gw_check_air = {.id = "air",
                                      .title = "Air leakage",
                                      .clause = "ASTM E283",
                                      .scope = GW_PER_WALL,
                                      .does = &(const struct gw_functions){.demand = demand, .test = test}};
