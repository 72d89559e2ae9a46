/* Glass of every lite under its own pressure; whether its make-up fits the candidate's pocket. */
#include "judge_internal.h"

#include "tables_data.h"

#include <string.h>

static const struct gw_glass_rules *rules_of(const struct gw_model *model)
{
    static const struct gw_glass_rules none = {.deflection_limit = GW_ABSENT,
                                               .deflection_ratio = GW_ABSENT,
                                               .probability = GW_ABSENT,
                                               .interlayer_temperature = GW_ABSENT};
    return model->project.glass ? model->project.glass : &none;
}

/* The lite takes the element's whole rectangle: no smaller than the clear opening. */
enum gw_status gw_lite_of(struct gw_lite *out, const struct gw_model *model, const struct gw_element *e,
                          const struct gw_lite_type *type, struct gw_engine *engine)
{
    const struct gw_glass_rules *rules = rules_of(model);
    *out = (struct gw_lite){.width = e->width,
                            .height = e->pane,
                            .edges = type->support,
                            .span = type->span,
                            .finish = type->edge_finish,
                            .temperature = rules->interlayer_temperature,
                            .probability = rules->probability,
                            .edition = model->project.codes->glass,
                            .basis = rules->basis,
                            .climate = rules->sealing && rules->service.n,
                            .use_only = true};
    enum gw_status status = gw_make_up_from(&out->make_up, type->layers.items, type->layers.n, engine);
    if (status == GW_OK && out->climate) status = gw_air_from(&out->sealing, rules->sealing, "sealing", engine);
    return status;
}

static void keep_most_bent(struct gw_glass_judged *out, const struct gw_lite_verdict *v, bool first)
{
    for (int i = 0; i < v->n; i++) {
        if (!(first && i == 0) && !(v->results[i].deflection > out->bent.deflection)) continue;
        out->bent = v->results[i];
        out->bent_load = i;
    }
}

/* Under every state of the gas in service; the worst for strength and the worst for deflection are kept. */
static enum gw_status judge_states(struct gw_glass_judged *out, const struct gw_glass_rules *rules,
                                   struct gw_engine *engine)
{
    struct gw_lite lite = out->lite;
    for (size_t i = 0; i < rules->service.n; i++) {
        struct gw_lite_verdict v;
        enum gw_status status = gw_air_from(&lite.service, &rules->service.items[i], "service", engine);
        if (status == GW_OK) status = gw_lite_check(&v, &lite, &out->demand, engine);
        if (status != GW_OK) return status;
        keep_most_bent(out, &v, i == 0);
        if (i && !(v.strength_use > out->verdict.strength_use)) continue;
        out->verdict = v;
        out->lite.service = lite.service;
    }
    return GW_OK;
}

enum gw_status gw_judge_glass(struct gw_glass_judged *out, const struct gw_model *model, const struct gw_element *e,
                              const struct gw_lite_type *type, struct gw_engine *engine)
{
    const struct gw_glass_rules *rules = rules_of(model);
    enum gw_status status = gw_lite_of(&out->lite, model, e, type, engine);
    if (status != GW_OK) return status;
    out->demand = (struct gw_lite_demand){.loads = {{"inward wind", fmax(e->inward_asd.pa, 0), GW_ABSENT},
                                                    {"outward wind", fmin(e->outward_asd.pa, 0), GW_ABSENT}},
                                          .n = 2,
                                          .deflection_limit = gw_lite_deflection_limit(
                                              rules->deflection_limit, rules->deflection_ratio, e->width, e->pane)};
    if (out->lite.climate && out->lite.make_up.n_panes > 1) return judge_states(out, rules, engine);
    out->lite.climate = false;
    status = gw_lite_check(&out->verdict, &out->lite, &out->demand, engine);
    if (status == GW_OK) keep_most_bent(out, &out->verdict, true);
    return status;
}

/* Strength and deflection ------------------------------------------------------------------------------------------ */

static void unknown(struct gw_demand *out, const char *message)
{
    out->status = GW_NOT_SHOWN;
    out->message = message;
}

static const char *fault_text(struct gw_judging *j, const struct gw_lite_type *type, const struct gw_engine *engine)
{
    const char *how = engine->fault.status == GW_OUTSIDE_METHOD ? "outside the method: " : "";
    return gw_format(j->model->arena, "lite %s: %s%s", type->name, how, engine->fault.message);
}

/* The judged lite of an element, worked out once for both checks; NULL: `out` says why. */
static const struct gw_glass_judged *judged(struct gw_demand *out, struct gw_judging *j, const struct gw_element *e)
{
    struct gw_arena *arena = j->model->arena;
    const size_t at = (size_t)(e - j->takeoff->elements.items);
    const struct gw_lite_type *type = e->lite ? gw_model_lite(j->model, e->lite) : NULL;
    struct gw_engine engine;
    if (!j->glass) j->glass = gw_alloc(arena, j->takeoff->elements.n, sizeof(void *));
    if (e->outside) unknown(out, gw_format(arena, "%s; ask the structural engineer for the pressure", e->outside));
    else if (!type || !type->layers.n) unknown(out, "which glass is in it? Ask the architect (lites: layers)");
    if (out->status == GW_NOT_SHOWN) return NULL;
    if (j->glass[at]) gw_used_merge(&out->used, &j->glass[at]->used);
    if (j->glass[at]) return j->glass[at];
    if (!j->workspace) j->workspace = gw_alloc(arena, 1, GW_PLATE_WORKSPACE);
    gw_engine_init(&engine, j->model->tables, NULL);
    engine.workspace = j->workspace;
    struct gw_glass_judged *one = gw_alloc(arena, 1, sizeof *one);
    if (gw_judge_glass(one, j->model, e, type, &engine) != GW_OK) {
        unknown(out, fault_text(j, type, &engine));
        return NULL;
    }
    one->used = engine.used;
    gw_used_merge(&out->used, &one->used);
    return j->glass[at] = one;
}

static const char *panes_text(struct gw_judging *j, const struct gw_lite_result *r)
{
    bool standard = r->governing == GW_BASIS_STANDARD;
    int pane = standard ? r->standard.pane : r->principles.pane;
    const char *which = r->n_panes > 1 ? gw_format(j->model->arena, ", lite %d of %d", pane + 1, r->n_panes) : "";
    return gw_format(j->model->arena, "by %s%s", standard ? "the standard's factors" : "first principles", which);
}

static const char *bases_text(struct gw_judging *j, const struct gw_lite_result *r)
{
    struct gw_text text;
    gw_text_init(&text, j->model->arena);
    gw_text_add(&text, panes_text(j, r));
    if (r->standard.covered && r->principles.covered && r->why) gw_text_addf(&text, " (%s)", r->why);
    if (!r->standard.covered) gw_text_addf(&text, "; standard's factors: %s", r->standard.why_not);
    if (!r->principles.covered) gw_text_addf(&text, "; first principles: %s", r->principles.why_not);
    gw_text_addf(&text, "; bends %s", gw_judge_say(j, GW_THICKNESS, r->deflection));
    return text.at;
}

void gw_demand_glass(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    const struct gw_element *e = place->element;
    out->dim = GW_PRESSURE;
    const struct gw_glass_judged *g = judged(out, j, e);
    if (!g) return;
    const struct gw_lite_result *r = &g->verdict.results[g->verdict.governing];
    struct gw_calculated *c = gw_alloc(j->model->arena, 1, sizeof *c);
    out->value = fmax(e->inward_asd.pa, 0);
    out->value_out = fmax(-e->outward_asd.pa, 0);
    out->message = e->governs;
    gw_used_merge(&out->used, &e->used);
    *c = (struct gw_calculated){.verdict = r->utilisation <= 1 ? GW_PASS : GW_FAIL,
                                .direction = g->verdict.governing ? "outward" : "inward",
                                .required = fabs(r->load.pressure),
                                .provided = r->resistance,
                                .utilisation = r->utilisation,
                                .message = bases_text(j, r)};
    out->calculated = c;
}

void gw_demand_glass_deflection(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    out->dim = GW_THICKNESS;
    out->at_most = true;
    const struct gw_glass_judged *g = judged(out, j, place->element);
    if (!g) return;
    const struct gw_lite_result *r = &g->bent;
    struct gw_calculated *c = gw_alloc(j->model->arena, 1, sizeof *c);
    out->value = g->demand.deflection_limit;
    out->message = "the project's limit";
    gw_used_merge(&out->used, &place->element->used);
    *c = (struct gw_calculated){
        .verdict = r->deflection <= out->value ? GW_PASS : GW_FAIL,
        .direction = g->bent_load ? "outward" : "inward",
        .required = out->value,
        .provided = r->deflection,
        .utilisation = r->deflection / out->value,
        .message = gw_format(j->model->arena, "at %s", gw_judge_say(j, GW_PRESSURE, fabs(r->load.pressure)))};
    out->calculated = c;
}

void gw_settle_calculated(struct gw_finding *finding, struct gw_judging *j, const struct gw_check *check)
{
    (void)j;
    (void)check;
    const struct gw_calculated *c = finding->demand->calculated;
    finding->verdict = c->verdict;
    finding->evidence = GW_BY_CALCULATION;
    finding->direction = c->direction;
    finding->required = c->required;
    finding->provided = c->provided;
    finding->utilisation = c->utilisation;
    finding->message = c->message;
}

/* Pocket -------------------------------------------------------------------------------------------------------------
 */

void gw_demand_pocket(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    out->dim = GW_THICKNESS;
    out->lite = place->lite;
    out->value = gw_layers_thickness(place->lite->layers.items, place->lite->layers.n);
    if (!place->lite->layers.n) unknown(out, "which glass is in it? Ask the architect (lites: layers)");
    else if (!gw_given(out->value))
        unknown(out, "how thick is the interlayer? Ask the glass supplier (lites: thickness)");
    else out->message = gw_format(j->model->arena, "overall, nominal");
}

void gw_settle_pocket(struct gw_finding *finding, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_glazing_pocket *rule = &j->model->tables->glazing_pocket[0];
    const struct gw_system *system = finding->candidate;
    const double needed = finding->demand->value;
    double nearest = GW_ABSENT;
    (void)check;
    gw_used_add(&finding->used, &rule->row);
    for (size_t i = 0; i < system->pocket.n; i++)
        if (!(fabs(system->pocket.items[i] - needed) >= fabs(nearest - needed))) nearest = system->pocket.items[i];
    finding->required = needed;
    finding->provided = nearest;
    if (!gw_given(nearest)) {
        finding->verdict = GW_NOT_SHOWN;
        finding->message = "which overall glass thicknesses does the pocket take? Ask the maker (pocket)";
        return;
    }
    bool fits = fabs(nearest - needed) <= rule->tolerance_m * (1 + 1e-9);
    finding->verdict = fits ? GW_PASS : GW_FAIL;
    finding->evidence = GW_BY_STATEMENT;
    finding->message = fits ? "the nearest of the system's pockets; face clearance to be confirmed"
                            : "no pocket of the system takes this make-up";
}
