/* The structural test against the wind pressure of lites and mullions. */
#include "judge/checks.h"
#include "judge/coverage.h"
#include "judge/specimen.h"

#include "tables_data.h"

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_pressures p = {GW_ABSENT, GW_ABSENT};
    const bool known = gw_demand_wind(out, ask, place->element, &p);
    gw_demand_term(out, ask, GW_PRESSURE, GW_INWARD, known ? p.inward : GW_ABSENT);
    gw_demand_term(out, ask, GW_PRESSURE, GW_OUTWARD, known ? p.outward : GW_ABSENT);
}

enum fit { LARGER, PERHAPS, NO_LARGER };

static enum fit fit_of(double tested, double here)
{
    if (!gw_given(tested)) return PERHAPS;
    return tested > here + GW_HAIR_M ? LARGER : NO_LARGER;
}

static enum fit both(enum fit a, enum fit b) { return a < b ? a : b; }

/* Whether the specimen was no larger than the element; what is not recorded may have been no larger. Of several lites
 * the smallest. */
static enum fit specimen_fit(const struct gw_tested *t, const struct gw_element *e)
{
    if (!t) return PERHAPS;
    if (e->kind == GW_MULLION) return both(fit_of(t->module, e->width), fit_of(t->span, e->span));
    enum fit best = t->lites.n ? LARGER : both(fit_of(t->lite_width, e->width), fit_of(t->lite_height, e->pane));
    for (size_t i = 0; i < t->lites.n; i++) {
        const struct gw_tested_lite *lite = &t->lites.items[i];
        const enum fit one = both(fit_of(lite->width, e->width), fit_of(lite->height, e->pane));
        if (one > best) best = one;
    }
    return best;
}

static bool stopped_short(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e)
{
    const struct gw_both_ways *at = rating->failed_at;
    const double proof = ask->model->tables->proof_loads[GW_ROW_PROOF_LOADS_E330].proof;
    const struct gw_pressures p = gw_pressures_on(ask, e);
    return at && (at->positive < p.inward * proof || at->negative < p.outward * proof);
}

/* A failure recorded of a specimen no larger than the element speaks against it, over the proof factor; a size left out
 * of the record does not erase it. */
static void speak_against(struct gw_showing *out, struct gw_ask *ask, const struct gw_rating *rating,
                          const struct gw_element *e)
{
    const enum fit fit = stopped_short(ask, rating, e) ? specimen_fit(rating->tested, e) : LARGER;
    if (fit == LARGER) return;
    out->adverse = true;
    out->presumed = fit == PERHAPS;
    out->foreign = out->presumed;
    out->covers = out->covers && !out->presumed;
    out->met = GW_NO;
    out->why =
        GW_PLAINLY(out->presumed ? "a specimen failed below the proof of what is asked here, and its size is not "
                                   "recorded: ask the manufacturer what failed (tested)"
                                 : "the specimen failed below the proof of what is asked here");
}

static void test(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    const struct gw_element *e = d->element;
    out->applies = rating->test == GW_TEST_STRUCTURAL && gw_same_component(rating, e->component);
    if (!out->applies) return;
    const struct gw_pressures proved = gw_proved(ask, rating);
    out->provided[0] = proved.inward;
    out->provided[1] = proved.outward;
    gw_compare_number(ask, "pressure inward", GW_PRESSURE, proved.inward, gw_term_of(d, 0)->value,
                      proved.inward >= gw_term_of(d, 0)->value * (1 - GW_HAIR));
    gw_compare_number(ask, "pressure outward", GW_PRESSURE, proved.outward, gw_term_of(d, 1)->value,
                      proved.outward >= gw_term_of(d, 1)->value * (1 - GW_HAIR));
    out->why =
        e->kind == GW_LITE ? gw_specimen_short_of_lite(ask, rating, e) : gw_specimen_short_of_mullion(ask, rating, e);
    out->covers = !gw_said(&out->why);
    out->foreign = !out->covers;
    speak_against(out, ask, rating, e);
}

const struct gw_check gw_check_structural = {.id = "structural",
                                             .title = "Structural test against wind pressure",
                                             .clause = "ASTM E330",
                                             .scope = GW_PER_ELEMENT,
                                             .kinds = GW_KIND_BIT(GW_LITE) | GW_KIND_BIT(GW_MULLION),
                                             .path = true,
                                             .does = &(const struct gw_functions){.demand = demand, .test = test}};
