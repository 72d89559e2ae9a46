/* Glass when the story drifts: its clearance in a pocket, else, and always where it is bonded, the drift at which a
 * test saw glass fall out. */
#include "judge/checks.h"
#include "judge/drift.h"

#include "judge/glass_lite.h"
#include "judge/hazards.h"
#include "judge/racking.h"

/* Of a lite type: one layer of glass, laminated, the same treatment throughout. */
static void set_glass(struct gw_exemption_case *in, const struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_lite_type *type = gw_glazed_type(ask, e);
    struct gw_make_up m;
    struct gw_engine engine;
    gw_engine_init(&engine, ask->model->tables, NULL);
    if (!type || gw_make_up_from(&m, type->layers.items, type->layers.n, &engine) != GW_OK) return;
    const struct gw_pane *p = &m.panes[0];
    in->monolithic = m.n_panes == 1 && p->n_plies == 1 ? GW_YES : GW_NO;
    in->single_thickness = m.n_panes == 1 && p->n_plies > 1 ? GW_YES : GW_NO;
    in->treatment = p->plies[0].treatment;
    for (unsigned i = 1; i < (unsigned)p->n_plies; i++)
        if (p->plies[i].treatment != in->treatment) in->treatment = GW_TREATMENT_UNSET; /* the least of them counts */
    in->interlayer = p->n_plies > 1 ? p->bonds[0].thickness : GW_ABSENT;
}

/* Of the glass; its clearance is weighed apart. NULL: by none. */
static const char *exempt_by(struct gw_ask *ask, const struct gw_element *e, const struct gw_system *system)
{
    struct gw_exemptions all;
    struct gw_exemption_case in = {.edition = ask->model->project.codes->wind,
                                   .category = gw_seismic_of(ask)->category,
                                   .risk = gw_risk_of(ask),
                                   .parapet = e->parapet ? GW_YES : GW_NO,
                                   .clearance_passes = GW_UNSAID,
                                   .monolithic = GW_UNSAID,
                                   .height_above_walk = e->top,
                                   .single_thickness = GW_UNSAID,
                                   .interlayer = GW_ABSENT,
                                   .captured = system->system->glazing == GW_CAPTURED ? GW_YES : GW_NO,
                                   .bead = GW_ABSENT,
                                   .other_anchorage = GW_UNSAID};
    if (gw_importance_of(&in.importance, ask) != GW_OK) return NULL;
    set_glass(&in, ask, e);
    if (gw_seismic_exemptions(&all, &in, &ask->engine) != GW_OK) return NULL;
    return all.glass == GW_EXEMPT_COUNT || all.glass == GW_EXEMPT_CLEARANCE ? NULL : all.of[all.glass].title;
}

/* The demand has derived the drift; here only its importance is wanted. */
static enum gw_status importance_in(double *out, struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_drift_result drift = {.importance = GW_ABSENT};
    struct gw_trace *trace = ask->engine.trace;
    ask->engine.trace = NULL;
    const enum gw_status status = gw_drift_of(&drift, ask, e);
    ask->engine.trace = trace;
    *out = drift.importance;
    return status;
}

static enum gw_status clearance_of(struct gw_clearance_result *out, struct gw_ask *ask, const struct gw_demand *d,
                                   const struct gw_drift_spec *spec)
{
    const struct gw_element *e = d->element;
    double in_lite = 0, importance = GW_ABSENT;
    enum gw_status status = importance_in(&importance, ask, e);
    if (status == GW_OK) status = gw_drift_in_lite(&in_lite, ask, e, spec, gw_term_of(d, 0)->value);
    if (status != GW_OK) return status;
    const struct gw_clearance_case in = {.lite_width = e->width,
                                         .lite_height = e->pane,
                                         .side_gap = spec->side_gap,
                                         .end_gap = spec->end_gap,
                                         .drift_in_lite =
                                             gw_drift_without_importance(in_lite, importance, &ask->engine),
                                         .importance = importance,
                                         .edition = ask->model->project.codes->wind};
    return gw_clearance(out, &in, &ask->engine);
}

/* None: a test is asked. What of the drift reaches the lite does not count, as in the test. */
static void bonded(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d)
{
    struct gw_fallout_result fallout;
    if (gw_fallout(&fallout, gw_term_of(d, 0)->value, GW_ABSENT, &ask->engine) != GW_OK) {
        gw_capacity_unknown(out, gw_fault_message(ask));
        return;
    }
    struct gw_limit *limit = gw_capacity_instead(out, GW_THICKNESS, fallout.required, 0,
                                                 GW_PLAINLY("bonded glass has no clearance in a pocket"));
    limit->met = GW_NO;
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_drift_spec *spec = gw_part(system, drift);
    struct gw_clearance_result c;
    const char *exempt = exempt_by(ask, d->element, system);
    if (exempt) {
        gw_capacity_not_concerned(out, GW_SAY(ask->arena, "exempt: {} (as recalled; confirm)", gw_of_text(exempt)));
    } else if (gw_is_bonded(system)) {
        bonded(out, ask, d);
    } else if (!spec || !gw_given(spec->side_gap) || !gw_given(spec->end_gap)) {
        gw_capacity_unknown(out, GW_PLAINLY("how does the system take drift, and how much room has the glass? Ask the "
                                            "manufacturer (drift: path, side_gap, end_gap)"));
    } else if (clearance_of(&c, ask, d, spec) != GW_OK) {
        gw_capacity_unknown(out, gw_fault_message(ask));
    } else {
        const bool enough = c.passes == GW_YES;
        struct gw_limit *limit = gw_capacity_instead(
            out, GW_THICKNESS, c.edition_counts_importance == GW_NO ? c.required_without : c.required_with_importance,
            c.clearance,
            enough ? GW_PLAINLY("clearance of the glass in its pocket")
                   : GW_SAY(ask->arena, "the clearance of {} is short", gw_of_quantity(GW_THICKNESS, c.clearance)));
        if (!enough) limit->met = GW_NO;
    }
}

const struct gw_check gw_check_seismic_glass = {
    .id = "seismic_glass",
    .title = "Glass in its pocket when the story drifts",
    .clause = "ASCE 7 13.5.9",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_LITE),
    .does = &(const struct gw_functions){.needs = gw_drift_needs,
                                         .waived = gw_seismic_waived,
                                         .demand = gw_demand_drift,
                                         .capacity = capacity,
                                         .test = gw_test_racking,
                                         .route = GW_LIMITS_THEN_RATING,
                                         .unrated = "ask the manufacturer for the drift at which glass falls out "
                                                    "(AAMA 501.6; ratings: test sway, kind dynamic, drift)"}};

bool gw_is_story_drift(const struct gw_demand *demand) { return demand->check == &gw_check_seismic_glass; }
