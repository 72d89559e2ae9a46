/* What 'galeward calc lite' answers: its field tables, and the answer from the engine's verdict. */
#include "lite.h"

#include "base/fields.h"

static const struct gw_field PANE_PRINCIPLES[] = {
    OUT(gw_pane_by_principles, "effective_thickness_deflection", deflection_thickness, GW_THICKNESS, ""),
    OUT(gw_pane_by_principles, "effective_thickness_stress", stress_thickness, GW_THICKNESS, "of the ply that governs"),
    OUT(gw_pane_by_principles, "glass_type_factor", type_factor, GW_RATIO, "of that ply"),
    OUT(gw_pane_by_principles, "capacity", capacity, GW_PRESSURE, "net load that the pane takes"),
    OUT(gw_pane_by_principles, "net", net, GW_PRESSURE, "its part of the load, toward indoors"),
    OUT(gw_pane_by_principles, "deflection", deflection, GW_THICKNESS, "center deflection, toward indoors"),
    OUT(gw_pane_by_principles, "stress_max", stress_max, GW_STRESS, "of the ply that governs"),
    OUT(gw_pane_by_principles, "probability", breakage, GW_RATIO, "of breakage"),
};
static const struct gw_record PANE_PRINCIPLES_RECORD =
    RECORD("pane by first principles", gw_pane_by_principles, PANE_PRINCIPLES);
#define PANE(key_, member_, dim_, help_) OUT(pane_answer, key_, result.standard.member_, dim_, help_)
static const struct gw_field PANE_ANSWER[] = {
    OUT_TEXT(pane_answer, "pane", name, "lite 1 is the outermost"),
    PANE("thickness", thickness, GW_THICKNESS, "minimum of the designation"),
    PANE("nonfactored_load", nonfactored_load, GW_PRESSURE,
         "annealed, 3 s where the type factor has the duration, else at it"),
    PANE("glass_type_factor", type_factor, GW_RATIO, "with the frit's"),
    PANE("load_share", share, GW_RATIO, "of the unit's load"),
    PANE("load_resistance", load_resistance, GW_PRESSURE, "of the unit by this pane"),
    PANE("deflection", deflection, GW_THICKNESS, "center deflection, under its share"),
    PANE("stress_max", stress_max, GW_STRESS, "largest tension, unloaded face, under its share"),
    PANE("probability", breakage, GW_RATIO, "of breakage under its share"),
    OUT(pane_answer, "utilisation", utilization, GW_RATIO, "pressure over load resistance"),
    OUT_TEXT(pane_answer, "governing", governing, "the route by which this pane governs the lite"),
    OUT_TEXT(pane_answer, "basis", route, "of the figures beside this"),
    OUT(pane_answer, "weight", result.weight, GW_PRESSURE, "laid flat"),
    OUT_PART(pane_answer, "first_principles", principles, &PANE_PRINCIPLES_RECORD, "the other route"),
};
static const struct gw_record PANE_ANSWER_RECORD = RECORD("pane result", pane_answer, PANE_ANSWER);

static const struct gw_field LOAD_ANSWER[] = {
    OUT_TEXT(load_answer, "load", name, ""),
    OUT(load_answer, "pressure", pressure, GW_PRESSURE, "toward indoors"),
    OUT(load_answer, "duration", duration, GW_TIME, ""),
    OUT(load_answer, "load_resistance", load_resistance, GW_PRESSURE, "by the route that governs"),
    OUT(load_answer, "utilisation", utilization, GW_RATIO, ""),
    OUT(load_answer, "deflection", deflection, GW_THICKNESS, "the larger of the two routes"),
    OUT_TEXT(load_answer, "basis", route, "that governs"),
};
static const struct gw_record LOAD_ANSWER_RECORD = RECORD("load result", load_answer, LOAD_ANSWER);

static const struct gw_field CHOICE_ANSWER[] = {
    OUT_WHOLE(choice_answer, "make_up", make_up, "in the list"),
    OUT(choice_answer, "thickness", thickness, GW_THICKNESS, "of every glass, where thicknesses are given"),
    OUT_TEXT(choice_answer, "treatment", treatment, "of every glass, where treatments are given"),
    OUT(choice_answer, "weight", weight, GW_PRESSURE, "laid flat"),
    OUT(choice_answer, "utilisation", utilization, GW_RATIO, "strength or deflection, the larger"),
    OUT(choice_answer, "load_resistance", load_resistance, GW_PRESSURE, "by the route that governs"),
    OUT(choice_answer, "deflection", deflection, GW_THICKNESS, ""),
};
static const struct gw_record CHOICE_ANSWER_RECORD = RECORD("choice", choice_answer, CHOICE_ANSWER);

static const struct gw_field PRINCIPLES[] = {
    OUT(gw_lite_route, "load_resistance", resistance, GW_PRESSURE, ""),
    OUT(gw_lite_route, "deflection", deflection, GW_THICKNESS, "largest of any pane"),
    OUT(gw_lite_route, "stress_max", stress_max, GW_STRESS, "largest of any pane"),
    OUT(gw_lite_route, "probability", breakage, GW_RATIO, "of breakage, of the weakest pane"),
    OUT(gw_lite_route, "utilisation", utilization, GW_RATIO, "net load over capacity"),
};
static const struct gw_record PRINCIPLES_RECORD = RECORD("lite by first principles", gw_lite_route, PRINCIPLES);

#define A(key_, member_, dim_, help_) OUT(lite_answer, key_, member_, dim_, help_)
static const struct gw_field LITE_ANSWER[] = {
    A("nonfactored_load", nonfactored_load, GW_PRESSURE, "of the governing pane, as beside it in layers"),
    A("glass_type_factor", type_factor, GW_RATIO, "of the governing pane, on its 3 s load"),
    A("load_resistance", load_resistance, GW_PRESSURE, "by the standard's factors, else by first principles"),
    A("deflection", deflection, GW_THICKNESS, "center deflection, by the standard's share, else by first principles"),
    A("stress_max", stress_max, GW_STRESS, "largest tension, the same way"),
    A("probability", breakage, GW_RATIO, "of breakage under the pressure, the same way"),
    A("governing_resistance", governing_resistance, GW_PRESSURE, "by the route that governs"),
    A("utilisation", utilization, GW_RATIO, "by the route that governs"),
    A("deflection_utilisation", deflection_use, GW_RATIO, "larger deflection over the limit"),
    OUT_TEXT(lite_answer, "governing", governing, "pane"),
    OUT_TEXT(lite_answer, "basis", route, "that governs"),
    OUT_TEXT(lite_answer, "why", why, ""),
    OUT_SENTENCE(lite_answer, "standard_limit", standard_limit, "why the standard's factors do not cover the lite"),
    OUT_SENTENCE(lite_answer, "first_principles_limit", principles_limit, "why first principles do not cover it"),
    A("weight", weight, GW_PRESSURE, "of the glass, laid flat"),
    A("greatest_pressure", greatest_pressure, GW_PRESSURE, "for strength and the deflection limit"),
    A("greatest_width", greatest_width, GW_LENGTH, "at this height"),
    OUT_PART(lite_answer, "first_principles", principles, &PRINCIPLES_RECORD, "the other route"),
    OUT_PARTS(lite_answer, "layers", layers, &PANE_ANSWER_RECORD, "each pane, from outside, under the governing load"),
    OUT_PARTS(lite_answer, "loads", loads, &LOAD_ANSWER_RECORD, "each load"),
    OUT_PARTS(lite_answer, "choices", choices, &CHOICE_ANSWER_RECORD, "the lightest that pass, lightest first"),
    OUT_WHOLE(lite_answer, "tried", tried, "make-ups"),
    OUT_WHOLE(lite_answer, "failed", failed, "make-ups"),
    OUT_WHOLE(lite_answer, "refused", refused, "make-ups outside the method"),
};
const struct gw_record gw_lite_answer_record = RECORD("lite result", lite_answer, LITE_ANSWER);

static const char *route_name(const struct gw_lite_result *r)
{
    return r->governing == GW_ROUTE_STANDARD ? "standard's factors" : "first principles";
}

static const char *const PANE_NAMES[GW_PANES] = {"lite 1", "lite 2", "lite 3"};

/* Of a single annealed pane the failure model gives the load at any duration: with no factor, what the pane takes. */
static double nonfactored(const struct gw_lite_result *r, int pane)
{
    const struct gw_pane_result *p = &r->panes[pane];
    bool plain = r->n_panes == 1 && r->principles.covered && fabs(p->principles.type_factor - 1) < 1e-12 &&
                 fabs(p->principles.stress_thickness - p->standard.thickness) < 1e-12;
    return plain ? p->principles.capacity : p->standard.nonfactored_load;
}

static void answer_panes(struct lite_answer *answer, const struct gw_lite_result *r)
{
    for (int i = 0; i < r->n_panes; i++) {
        struct pane_answer *p = &answer->panes[i];
        *p = (struct pane_answer){.result = r->panes[i], .name = PANE_NAMES[i], .utilization = GW_ABSENT};
        p->result.standard.nonfactored_load = nonfactored(r, i);
        p->principles = r->principles.covered ? &r->panes[i].principles : NULL;
        p->route = r->standard.covered ? "standard's factors" : NULL;
        if (gw_given(r->load.pressure)) p->utilization = fabs(r->load.pressure) / p->result.standard.load_resistance;
        bool standard = r->standard.covered && r->standard.pane == i;
        bool principles = r->principles.covered && r->principles.pane == i;
        p->governing = standard && principles ? "both routes"
                       : standard             ? "standard's factors"
                       : principles           ? "first principles"
                                              : NULL;
    }
    answer->layers.items = answer->panes;
    answer->layers.n = (size_t)r->n_panes;
}

static void answer_loads(struct lite_answer *answer, const struct gw_lite_verdict *v)
{
    for (int i = 0; i < v->n; i++) {
        const struct gw_lite_result *r = &v->results[i];
        answer->each_load[i] = (struct load_answer){r->load.name,   r->load.pressure, r->load.duration, r->resistance,
                                                    r->utilization, r->deflection,    route_name(r)};
    }
    answer->loads.items = answer->each_load;
    answer->loads.n = (size_t)v->n;
}

void gw_lite_answer(struct lite_answer *answer)
{
    const struct gw_lite_verdict *v = &answer->verdict;
    const struct gw_lite_result *r = answer->result = &v->results[v->governing];
    const struct gw_lite_route *shown = r->standard.covered ? &r->standard : &r->principles;
    const struct gw_lite_route *governs = r->governing == GW_ROUTE_STANDARD ? &r->standard : &r->principles;
    answer->nonfactored_load = nonfactored(r, shown->pane);
    answer->type_factor =
        r->standard.covered ? r->panes[shown->pane].standard.type_factor : r->panes[shown->pane].principles.type_factor;
    answer->load_resistance = shown->resistance;
    answer->deflection = shown->deflection;
    answer->stress_max = shown->stress_max;
    answer->breakage = shown->breakage;
    answer->governing_resistance = r->resistance;
    answer->utilization = r->utilization;
    answer->deflection_use = v->deflection_use;
    answer->governing = PANE_NAMES[governs->pane];
    answer->route = route_name(r);
    answer->why = r->why;
    answer->standard_limit = gw_fault_said(&r->standard.why_not);
    answer->principles_limit = gw_fault_said(&r->principles.why_not);
    answer->weight = r->weight;
    answer->principles = r->principles.covered ? &r->principles : NULL;
    answer_panes(answer, r);
    answer_loads(answer, v);
}

void gw_lite_answer_nothing(struct lite_answer *answer)
{
    *answer = (struct lite_answer){.result = NULL};
    answer->nonfactored_load = answer->type_factor = answer->load_resistance = answer->deflection = GW_ABSENT;
    answer->stress_max = answer->breakage = answer->utilization = answer->weight = GW_ABSENT;
    answer->governing_resistance = answer->deflection_use = GW_ABSENT;
    answer->greatest_pressure = answer->greatest_width = GW_ABSENT;
    answer->tried = answer->failed = answer->refused = GW_NO_INTEGER;
}
