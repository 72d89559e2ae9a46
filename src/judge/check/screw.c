/* Screws of the pressure plate: tension, pull-over, what holds the thread. */
#include "judge/checks.h"
#include "judge/coverage.h"
#include "judge/plated.h"

static const double INCH = 0.0254; /* m, exact */

static const char *missing(const struct gw_system *s)
{
    const struct gw_screw_spec *k = gw_part(s, screw);
    if (!k) return "which screws hold the pressure plate? Ask the manufacturer (screw)";
    if (k->hold == GW_HOLD_CHASE && !gw_given(k->tested_pullout))
        return "a chase or slot has no pull-out formula: ask the manufacturer for a test (screw: tested_pullout)";
    if (k->hold == GW_HOLD_TAPPED && !(k->alloy && gw_given(k->engagement)) && !gw_given(k->tested_pullout))
        return "what holds the screw's thread? Ask the manufacturer (screw: alloy, engagement)";
    if (!gw_part(s, pressure_plate) || !gw_given(k->head_diameter))
        return "does the head pull through the plate? Ask the manufacturer (pressure_plate; screw: head_diameter)";
    return NULL;
}

static void set_case(struct gw_screw_case *in, const struct gw_screw_spec *k, const struct gw_sheet *sheet)
{
    *in = (struct gw_screw_case){.screw = {.thread = k->thread,
                                           .diameter = k->diameter,
                                           .pitch = INCH / k->threads_per_inch,
                                           .stripping = GW_ABSENT,
                                           .minor = GW_ABSENT},
                                 .head = {.diameter = k->head_diameter, .hole = GW_ABSENT},
                                 .engagement = k->engagement,
                                 .sheet = sheet,
                                 .edge_distance = GW_ABSENT,
                                 .ultimate = k->ultimate,
                                 .yield = GW_ABSENT,
                                 .tested_tension = GW_ABSENT,
                                 .tested_shear = GW_ABSENT,
                                 .safety_factor = GW_ABSENT,
                                 .metal_safety_factor = GW_ABSENT,
                                 .demand_tension = GW_ABSENT,
                                 .demand_shear = GW_ABSENT};
}

static bool by_formula(const struct gw_screw_spec *k)
{
    return k->hold == GW_HOLD_TAPPED && !gw_given(k->tested_pullout);
}

/* The thread by formula where it is tapped and no test says more. */
static enum gw_status solve(struct gw_screw_result *out, const struct gw_system *s, struct gw_engine *engine)
{
    const struct gw_screw_spec *k = gw_part(s, screw);
    struct gw_metal_strength holder;
    struct gw_sheet sheet = {.thickness = gw_part(s, pressure_plate)->thickness};
    struct gw_screw_case in;
    set_case(&in, k, &sheet);
    enum gw_status status =
        gw_metal_strength_of(&sheet.metal, gw_part(s, pressure_plate)->alloy, sheet.thickness, engine);
    if (status == GW_OK && by_formula(k)) status = gw_metal_strength_of(&holder, k->alloy, k->engagement, engine);
    if (by_formula(k)) in.metal = &holder;
    else in.engagement = GW_ABSENT; /* a test says all of the thread */
    return status == GW_OK ? gw_screw_solve(out, &in, engine) : status;
}

static enum gw_status find(struct gw_screw_hold *out, const struct gw_system *s, struct gw_engine *engine)
{
    struct gw_screw_result r;
    const enum gw_status status = solve(&r, s, engine);
    return status == GW_OK ? gw_screw_hold(out, &r, gw_part(s, screw)->tested_pullout, engine) : status;
}

/* As it was read, it does not reach its thread. */
static bool is_loose(const struct gw_screw_spec *k) { return k && (k->engagement <= 0 || k->tested_pullout <= 0); }

double gw_thread_strips_at(struct gw_ask *ask, const struct gw_system *system)
{
    const struct gw_screw_spec *k = gw_part(system, screw);
    struct gw_engine untold = ask->engine; /* its derivation is the check's */
    struct gw_screw_result r;
    untold.trace = NULL;
    if (is_loose(k)) return 0;
    if (!k || gw_given(k->tested_pullout)) return k ? k->tested_pullout : GW_ABSENT;
    if (missing(system) || solve(&r, system, &untold) != GW_OK) return GW_ABSENT;
    ask->engine.used = untold.used;
    return r.pullout_nominal;
}

/* The plate's overhang beyond its last screw, where it loads that screw more than a screw between two others. */
static void look_at_end(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                        const struct gw_system *system, double allowable)
{
    const double pull = gw_term_of(d, 0)->value, most = gw_end_screw_pull(ask, d->element, system, pull);
    if (!(most > pull)) return;
    gw_capacity_instead(out, GW_FORCE, most, allowable, GW_PLAINLY("the last screw, with the end of the plate"))
        ->safety = gw_screw_safety(&ask->engine);
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const char *question = missing(system);
    struct gw_screw_hold hold;
    /* one that is tested is no test that a reviewer can read while nobody names its report */
    if (gw_part(system, screw) && gw_given(gw_part(system, screw)->tested_pullout))
        out->evidence = gw_stated_evidence(gw_part(system, screw)->report);
    if (question) gw_capacity_unknown(out, GW_PLAINLY(question));
    else if (is_loose(gw_part(system, screw))) gw_capacity_limit(out, 0, 0, 0, GW_PLAINLY("no thread holds it"));
    else if (find(&hold, system, &ask->engine) != GW_OK) gw_capacity_unknown(out, gw_fault_message(ask));
    else if (!gw_given(hold.allowable))
        gw_capacity_unknown(
            out, GW_SAY(ask->arena, "the {} is not known: ask the manufacturer for it by test", gw_of_text(hold.by)));
    else {
        gw_capacity_limit(out, 0, 0, hold.allowable, GW_PLAINLY(hold.by))->safety = gw_screw_safety(&ask->engine);
        look_at_end(out, ask, d, system, hold.allowable);
    }
}

const struct gw_check gw_check_screw = {.id = "screw",
                                        .title = "Screws of the pressure plate",
                                        .clause = "Aluminum Design Manual J.5",
                                        .scope = GW_PER_ELEMENT,
                                        .kinds = GW_KIND_BIT(GW_SCREW),
                                        .link = true,
                                        .does = &(const struct gw_functions){.demand = gw_demand_screw,
                                                                             .without = gw_without_plates,
                                                                             .capacity = capacity,
                                                                             .test = gw_test_edges,
                                                                             .route = GW_RATING_OR_LIMITS}};
