/* Field tables of 'galeward calc lite'. */
#include "glass.h"

#include "base/fields.h"

#include "galeward/calc.h"
#include "galeward/model.h"

#include "tables_data.h"

#include <string.h>

/* What may be listed: make-ups, each tried with every thickness and treatment where those are given. */
struct listed {
    GW_LIST(struct gw_layer) layers;
};
struct lite_case {
    double width, height;
    GW_LIST(struct gw_layer) layers;
    int support;
    enum gw_lite_span span;
    enum gw_edge_finish edge_finish;
    double duration, temperature, probability, pressure, pressure_out;
    double slope, snow;
    double deflection_limit, deflection_ratio;
    enum gw_glass_standard edition;
    enum gw_glass_basis basis;
    const struct gw_air_state *sealing, *service;
    GW_LIST(struct listed) lightest_of;
    GW_LIST(double) thicknesses;
    struct gw_many treatments; /* enum gw_treatment */
    enum gw_bool greatest_width;
};

struct pane_answer {
    struct gw_pane_result result;
    const struct gw_pane_by_principles *principles; /* NULL: not covered */
    double utilisation;
    const char *name, *governing, *basis;
};
struct load_answer {
    const char *name;
    double pressure, duration, load_resistance, utilisation, deflection;
    const char *basis;
};
struct choice_answer {
    int make_up;
    double thickness;
    const char *treatment;
    double weight, utilisation, load_resistance, deflection;
};
struct lite_answer {
    struct gw_lite_verdict verdict;
    const struct gw_lite_result *result; /* of the load that governs */
    double nonfactored_load, type_factor, load_resistance, deflection, stress_max, breakage, utilisation, weight;
    double governing_resistance, deflection_use;
    const char *governing, *basis, *why, *standard_limit, *principles_limit;
    const struct gw_lite_basis *principles;
    struct pane_answer panes[GW_PANES];
    struct load_answer each_load[GW_LITE_LOADS];
    struct choice_answer chosen[GW_CHOICES];
    GW_LIST(struct pane_answer) layers;
    GW_LIST(struct load_answer) loads;
    GW_LIST(struct choice_answer) choices;
    int tried, failed, refused;
    double greatest_pressure, greatest_width;
};

/* In ----------------------------------------------------------------------------------------------------------------
 */

static const struct gw_field LISTED[] = {
    F(listed, layers, GW_T_RECORD, .record = &gw_layer_record, .flags = GW_REQUIRED | GW_MANY, .help = "as of a lite"),
};
static const struct gw_record LISTED_RECORD = RECORD("make-up", listed, LISTED, .list_key = "layers");
#define L(key_, dim_, ...) NUM(lite_case, key_, dim_, __VA_ARGS__)
static const struct gw_field LITE[] = {
    L(width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "clear opening"),
    L(height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "clear opening"),
    F(lite_case, layers, GW_T_RECORD, .record = &gw_layer_record, .flags = GW_MANY,
      .help = "from outside to inside: glass, and between two glasses a cavity or an interlayer"),
    F(lite_case, support, GW_T_INTEGER, .fallback = "4", LIMITS(1, 4), .help = "edges held"),
    PICK(lite_case, span, gw_span_choices,
         .help = "fewer than four edges: the side that runs across the free edges, or out from the only held one"),
    PICK(lite_case, edge_finish, gw_edge_finish_choices, .help = "of free edges"),
    L(pressure, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e6), .help = "inward, allowable-stress level"),
    L(pressure_out, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e6), .help = "outward, allowable-stress level"),
    L(duration, GW_TIME, LIMITS(1e-3, 1e10), .help = "of the load; absent: 3 s"),
    L(temperature, GW_TEMPERATURE, LIMITS(200, 400), .help = "of interlayers; absent: 50 degC"),
    L(probability, GW_RATIO, .help = "of breakage; absent: 0.008"),
    L(slope, GW_ANGLE, LIMITS(0, 1.5707964), .help = "from horizontal; absent: vertical"),
    L(snow, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e5), .help = "on sloped glass"),
    L(deflection_limit, GW_LENGTH, LIMITS(0.0001, 1), .help = "center of glass, at most"),
    L(deflection_ratio, GW_RATIO, LIMITS(10, 500), .help = "short side over deflection, at least"),
    PICK(lite_case, edition, gw_glass_standard_choices, .fallback = "e1300-16", .help = "of ASTM E1300"),
    PICK(lite_case, basis, gw_glass_basis_choices, .fallback = "lower", .help = "which basis governs"),
    F(lite_case, sealing, GW_T_RECORD, .record = &gw_air_record, .help = "of cavities; with service: climatic load"),
    F(lite_case, service, GW_T_RECORD, .record = &gw_air_record, .help = "state of the gas in service"),
    F(lite_case, lightest_of, GW_T_RECORD, .record = &LISTED_RECORD, .flags = GW_MANY,
      .help = "make-ups to choose from, instead of layers"),
    L(thicknesses, GW_THICKNESS, .flags = GW_MANY, LIMITS(0.001, 0.1), .help = "try each listed make-up with these"),
    PICK(lite_case, treatments, gw_treatment_choices, .flags = GW_MANY, .help = "try each listed make-up with these"),
    F(lite_case, greatest_width, GW_T_BOOL, .help = "find the greatest width at this height"),
};
const struct gw_record gw_lite_case_record = RECORD("lite", lite_case, LITE);

/* Out ---------------------------------------------------------------------------------------------------------------
 */

static const struct gw_field PANE_PRINCIPLES[] = {
    OUT(gw_pane_by_principles, "effective_thickness_deflection", deflection_thickness, GW_THICKNESS, ""),
    OUT(gw_pane_by_principles, "effective_thickness_stress", stress_thickness, GW_THICKNESS, "of the ply that governs"),
    OUT(gw_pane_by_principles, "glass_type_factor", type_factor, GW_RATIO, "of that ply"),
    OUT(gw_pane_by_principles, "capacity", capacity, GW_PRESSURE, "net load that the pane takes"),
    OUT(gw_pane_by_principles, "net", net, GW_PRESSURE, "its part of the load, toward indoors"),
    OUT(gw_pane_by_principles, "deflection", deflection, GW_THICKNESS, "center, toward indoors"),
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
    PANE("deflection", deflection, GW_THICKNESS, "center, under its share"),
    PANE("stress_max", stress_max, GW_STRESS, "largest tension, unloaded face, under its share"),
    PANE("probability", breakage, GW_RATIO, "of breakage under its share"),
    OUT(pane_answer, "utilisation", utilisation, GW_RATIO, "pressure over load resistance"),
    OUT_TEXT(pane_answer, "governing", governing, "the basis by which this pane governs the lite"),
    OUT_TEXT(pane_answer, "basis", basis, "of the figures beside this"),
    OUT(pane_answer, "weight", result.weight, GW_PRESSURE, "laid flat"),
    OUT_PART(pane_answer, "first_principles", principles, &PANE_PRINCIPLES_RECORD, "the other basis"),
};
static const struct gw_record PANE_ANSWER_RECORD = RECORD("pane result", pane_answer, PANE_ANSWER);

static const struct gw_field LOAD_ANSWER[] = {
    OUT_TEXT(load_answer, "load", name, ""),
    OUT(load_answer, "pressure", pressure, GW_PRESSURE, "toward indoors"),
    OUT(load_answer, "duration", duration, GW_TIME, ""),
    OUT(load_answer, "load_resistance", load_resistance, GW_PRESSURE, "by the basis that governs"),
    OUT(load_answer, "utilisation", utilisation, GW_RATIO, ""),
    OUT(load_answer, "deflection", deflection, GW_THICKNESS, "the larger of the two bases"),
    OUT_TEXT(load_answer, "basis", basis, "that governs"),
};
static const struct gw_record LOAD_ANSWER_RECORD = RECORD("load result", load_answer, LOAD_ANSWER);

static const struct gw_field CHOICE_ANSWER[] = {
    OUT_WHOLE(choice_answer, "make_up", make_up, "in the list"),
    OUT(choice_answer, "thickness", thickness, GW_THICKNESS, "of every glass, where thicknesses are given"),
    OUT_TEXT(choice_answer, "treatment", treatment, "of every glass, where treatments are given"),
    OUT(choice_answer, "weight", weight, GW_PRESSURE, "laid flat"),
    OUT(choice_answer, "utilisation", utilisation, GW_RATIO, "strength or deflection, the larger"),
    OUT(choice_answer, "load_resistance", load_resistance, GW_PRESSURE, "by the basis that governs"),
    OUT(choice_answer, "deflection", deflection, GW_THICKNESS, ""),
};
static const struct gw_record CHOICE_ANSWER_RECORD = RECORD("choice", choice_answer, CHOICE_ANSWER);

static const struct gw_field PRINCIPLES[] = {
    OUT(gw_lite_basis, "load_resistance", resistance, GW_PRESSURE, ""),
    OUT(gw_lite_basis, "deflection", deflection, GW_THICKNESS, "largest of any pane"),
    OUT(gw_lite_basis, "stress_max", stress_max, GW_STRESS, "largest of any pane"),
    OUT(gw_lite_basis, "probability", breakage, GW_RATIO, "of breakage, of the weakest pane"),
    OUT(gw_lite_basis, "utilisation", utilisation, GW_RATIO, "net load over capacity"),
};
static const struct gw_record PRINCIPLES_RECORD = RECORD("lite by first principles", gw_lite_basis, PRINCIPLES);

#define A(key_, member_, dim_, help_) OUT(lite_answer, key_, member_, dim_, help_)
static const struct gw_field LITE_ANSWER[] = {
    A("nonfactored_load", nonfactored_load, GW_PRESSURE, "of the governing pane, as beside it in layers"),
    A("glass_type_factor", type_factor, GW_RATIO, "of the governing pane, on its 3 s load"),
    A("load_resistance", load_resistance, GW_PRESSURE, "by the standard's factors, else by first principles"),
    A("deflection", deflection, GW_THICKNESS, "center, by the standard's share, else by first principles"),
    A("stress_max", stress_max, GW_STRESS, "largest tension, the same way"),
    A("probability", breakage, GW_RATIO, "of breakage under the pressure, the same way"),
    A("governing_resistance", governing_resistance, GW_PRESSURE, "by the basis that governs"),
    A("utilisation", utilisation, GW_RATIO, "by the basis that governs"),
    A("deflection_utilisation", deflection_use, GW_RATIO, "larger deflection over the limit"),
    OUT_TEXT(lite_answer, "governing", governing, "pane"),
    OUT_TEXT(lite_answer, "basis", basis, "that governs"),
    OUT_TEXT(lite_answer, "why", why, ""),
    OUT_TEXT(lite_answer, "standard_limit", standard_limit, "why the standard's factors do not cover the lite"),
    OUT_TEXT(lite_answer, "first_principles_limit", principles_limit, "why first principles do not cover it"),
    A("weight", weight, GW_PRESSURE, "of the glass, laid flat"),
    A("greatest_pressure", greatest_pressure, GW_PRESSURE, "for strength and the deflection limit"),
    A("greatest_width", greatest_width, GW_LENGTH, "at this height"),
    OUT_PART(lite_answer, "first_principles", principles, &PRINCIPLES_RECORD, "the other basis"),
    OUT_PARTS(lite_answer, "layers", layers, &PANE_ANSWER_RECORD, "each pane, from outside, under the governing load"),
    OUT_PARTS(lite_answer, "loads", loads, &LOAD_ANSWER_RECORD, "each load"),
    OUT_PARTS(lite_answer, "choices", choices, &CHOICE_ANSWER_RECORD, "the lightest that pass, lightest first"),
    OUT_WHOLE(lite_answer, "tried", tried, "make-ups"),
    OUT_WHOLE(lite_answer, "failed", failed, "make-ups"),
    OUT_WHOLE(lite_answer, "refused", refused, "make-ups outside the method"),
};
const struct gw_record gw_lite_answer_record = RECORD("lite result", lite_answer, LITE_ANSWER);

/* Run ---------------------------------------------------------------------------------------------------------------
 */

static double deflection_limit(const struct lite_case *given)
{
    double limit = given->deflection_limit;
    double by_side =
        gw_given(given->deflection_ratio) ? fmin(given->width, given->height) / given->deflection_ratio : GW_ABSENT;
    return gw_given(limit) && !(by_side < limit) ? limit : by_side;
}

static enum gw_status find_air(struct gw_lite *lite, const struct lite_case *given, struct gw_engine *engine)
{
    lite->climate = given->sealing || given->service;
    if (!lite->climate) return GW_OK;
    if (!given->sealing || !given->service)
        return gw_refuse(engine, GW_MISSING, given->sealing ? "service" : "sealing",
                         "sealing and service are given together");
    enum gw_status status = gw_air_from(&lite->sealing, given->sealing, "sealing", engine);
    return status ? status : gw_air_from(&lite->service, given->service, "service", engine);
}

static enum gw_status find_lite(struct gw_lite *lite, const struct lite_case *given, struct gw_engine *engine)
{
    *lite = (struct gw_lite){.width = given->width,
                             .height = given->height,
                             .temperature = given->temperature,
                             .probability = given->probability,
                             .edges = given->support,
                             .span = given->span,
                             .finish = given->edge_finish,
                             .edition = given->edition,
                             .basis = given->basis};
    enum gw_status status = find_air(lite, given, engine);
    if (status != GW_OK || given->lightest_of.n) return status;
    if (!given->layers.n) return gw_refuse(engine, GW_MISSING, "layers", "give layers, or lightest_of to choose from");
    return gw_make_up_from(&lite->make_up, given->layers.items, given->layers.n, engine);
}

static enum gw_status find_demand(struct gw_lite_demand *demand, const struct lite_case *given, double dead,
                                  struct gw_engine *engine)
{
    enum gw_status status = GW_OK;
    demand->n = 0;
    demand->deflection_limit = deflection_limit(given);
    if (gw_given(given->slope)) {
        const struct gw_sloped sloped = {given->pressure, given->pressure_out, given->snow, given->slope, dead};
        if (gw_given(given->duration))
            return gw_refuse(engine, GW_BAD_VALUE, "duration", "sloped glass has the durations of its combinations");
        return gw_lite_sloped(demand, &sloped, engine);
    }
    if (gw_given(given->snow))
        return gw_refuse(engine, GW_MISSING, "slope", "snow rests on sloped glass: give its slope from horizontal");
    if (gw_given(given->pressure) || !gw_given(given->pressure_out))
        demand->loads[demand->n++] = (struct gw_lite_load){"inward", given->pressure, given->duration};
    if (gw_given(given->pressure_out))
        demand->loads[demand->n++] = (struct gw_lite_load){"outward", -given->pressure_out, given->duration};
    return status;
}

static const char *basis_name(const struct gw_lite_result *r)
{
    return r->governing == GW_BASIS_STANDARD ? "standard's factors" : "first principles";
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
        *p = (struct pane_answer){.result = r->panes[i], .name = PANE_NAMES[i], .utilisation = GW_ABSENT};
        p->result.standard.nonfactored_load = nonfactored(r, i);
        p->principles = r->principles.covered ? &r->panes[i].principles : NULL;
        p->basis = r->standard.covered ? "standard's factors" : NULL;
        if (gw_given(r->load.pressure)) p->utilisation = fabs(r->load.pressure) / p->result.standard.load_resistance;
        bool standard = r->standard.covered && r->standard.pane == i;
        bool principles = r->principles.covered && r->principles.pane == i;
        p->governing = standard && principles ? "both bases"
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
                                                    r->utilisation, r->deflection,    basis_name(r)};
    }
    answer->loads.items = answer->each_load;
    answer->loads.n = (size_t)v->n;
}

static void answer_lite(struct lite_answer *answer)
{
    const struct gw_lite_verdict *v = &answer->verdict;
    const struct gw_lite_result *r = answer->result = &v->results[v->governing];
    const struct gw_lite_basis *shown = r->standard.covered ? &r->standard : &r->principles;
    const struct gw_lite_basis *governs = r->governing == GW_BASIS_STANDARD ? &r->standard : &r->principles;
    answer->nonfactored_load = nonfactored(r, shown->pane);
    answer->type_factor =
        r->standard.covered ? r->panes[shown->pane].standard.type_factor : r->panes[shown->pane].principles.type_factor;
    answer->load_resistance = shown->resistance;
    answer->deflection = shown->deflection;
    answer->stress_max = shown->stress_max;
    answer->breakage = shown->breakage;
    answer->governing_resistance = r->resistance;
    answer->utilisation = r->utilisation;
    answer->deflection_use = v->deflection_use;
    answer->governing = PANE_NAMES[governs->pane];
    answer->basis = basis_name(r);
    answer->why = r->why;
    answer->standard_limit = r->standard.covered ? NULL : r->standard.why_not;
    answer->principles_limit = r->principles.covered ? NULL : r->principles.why_not;
    answer->weight = r->weight;
    answer->principles = r->principles.covered ? &r->principles : NULL;
    answer_panes(answer, r);
    answer_loads(answer, v);
}

static void answer_nothing(struct lite_answer *answer)
{
    *answer = (struct lite_answer){.result = NULL};
    answer->nonfactored_load = answer->type_factor = answer->load_resistance = answer->deflection = GW_ABSENT;
    answer->stress_max = answer->breakage = answer->utilisation = answer->weight = GW_ABSENT;
    answer->governing_resistance = answer->deflection_use = GW_ABSENT;
    answer->greatest_pressure = answer->greatest_width = GW_ABSENT;
    answer->tried = answer->failed = answer->refused = GW_NO_INTEGER;
}

static void note(struct lite_answer *answer, const char *constant)
{
    struct gw_lite_result *r = &answer->verdict.results[answer->verdict.governing];
    if (r->n_notes < GW_LITE_NOTES) r->notes[r->n_notes++] = constant;
}

static enum gw_status run_one(struct lite_answer *answer, const struct gw_lite *lite, const struct lite_case *given,
                              struct gw_engine *engine)
{
    struct gw_lite_demand demand;
    struct gw_trace *trace = engine->trace;
    bool sloped = gw_given(given->slope);
    enum gw_status status =
        find_demand(&demand, given, sloped ? gw_make_up_weight(&lite->make_up, engine) : GW_ABSENT, engine);
    if (status == GW_OK) status = gw_lite_check(&answer->verdict, lite, &demand, engine);
    if (status != GW_OK) return status;
    answer_lite(answer);
    engine->trace = NULL; /* searches are not part of the derivation */
    if (!sloped)
        status = gw_lite_greatest_pressure(&answer->greatest_pressure, lite, &answer->result->load,
                                           demand.deflection_limit, engine);
    if (status == GW_OK && given->greatest_width == GW_YES)
        status = gw_given(given->pressure) || gw_given(given->pressure_out)
                     ? gw_lite_greatest_width(&answer->greatest_width, lite, &demand, engine)
                     : gw_refuse(engine, GW_MISSING, "pressure", "the greatest width needs a pressure");
    engine->trace = trace;
    if (status == GW_OK && answer->greatest_width >= gw_lite_widest(lite, engine))
        note(answer, "the greatest width is where the method ends, sides 5 : 1: the lite may take more");
    return status;
}

/* A make-up of the list with all its glass of one thickness and treatment; absent, 0: as listed. */
static enum gw_status vary(struct gw_make_up *out, const struct listed *listed, double thickness,
                           enum gw_treatment treatment, struct gw_engine *engine)
{
    enum gw_status status = gw_make_up_from(out, listed->layers.items, listed->layers.n, engine);
    for (int i = 0; i < out->n_panes; i++)
        for (int k = 0; k < out->panes[i].n_plies; k++) {
            if (gw_given(thickness)) out->panes[i].plies[k].nominal = thickness;
            if (treatment) out->panes[i].plies[k].treatment = treatment;
        }
    return status;
}

struct variant {
    size_t listed, thickness, treatment;
};

static struct variant variant_of(const struct lite_case *given, size_t i)
{
    size_t thicknesses = given->thicknesses.n ? given->thicknesses.n : 1,
           treatments = given->treatments.n ? given->treatments.n : 1;
    return (struct variant){i / (thicknesses * treatments), i / treatments % thicknesses, i % treatments};
}

static double thickness_of(const struct lite_case *given, struct variant v)
{
    return given->thicknesses.n ? given->thicknesses.items[v.thickness] : GW_ABSENT;
}

static enum gw_treatment treatment_of(const struct lite_case *given, struct variant v)
{
    return given->treatments.n ? (enum gw_treatment)((const int *)given->treatments.items)[v.treatment]
                               : GW_TREATMENT_UNSET;
}

static size_t count_variants(const struct lite_case *given)
{
    size_t n = given->lightest_of.n;
    if (given->thicknesses.n) n *= given->thicknesses.n;
    return given->treatments.n ? n * given->treatments.n : n;
}

static void answer_choices(struct lite_answer *answer, const struct gw_lite_choices *found,
                           const struct lite_case *given)
{
    for (int i = 0; i < found->n; i++) {
        const struct gw_lite_choice *c = &found->items[i];
        const struct gw_lite_result *r = &c->verdict.results[c->verdict.governing];
        struct variant v = variant_of(given, (size_t)c->index);
        enum gw_treatment treatment = treatment_of(given, v);
        answer->chosen[i] =
            (struct choice_answer){.make_up = (int)v.listed + 1,
                                   .thickness = thickness_of(given, v),
                                   .treatment = treatment ? gw_choice_name(gw_treatment_choices, (int)treatment) : NULL,
                                   .weight = c->weight,
                                   .utilisation = c->use,
                                   .load_resistance = r->resistance,
                                   .deflection = r->deflection};
    }
    answer->choices.items = answer->chosen;
    answer->choices.n = (size_t)found->n;
    answer->tried = found->tried;
    answer->failed = found->failed;
    answer->refused = found->refused;
}

/* The lightest becomes the lite whose figures are shown. */
static enum gw_status run_choice(struct lite_answer *answer, struct gw_lite *lite, const struct lite_case *given,
                                 struct gw_engine *engine)
{
    struct gw_make_up *list = (void *)((char *)engine->workspace + GW_PLATE_WORKSPACE);
    struct gw_lite_choices found;
    struct gw_lite_demand demand;
    struct gw_trace *trace = engine->trace;
    const size_t n = count_variants(given);
    if (given->layers.n) return gw_refuse(engine, GW_BAD_VALUE, "layers", "layers or lightest_of, not both");
    if (gw_given(given->slope))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "slope", "a sloped lite is checked make-up by make-up");
    if (!gw_given(given->pressure) && !gw_given(given->pressure_out))
        return gw_refuse(engine, GW_MISSING, "pressure", "choosing needs a pressure");
    if (n > GW_LITE_MAKE_UPS)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "lightest_of", "at most %d make-ups", GW_LITE_MAKE_UPS);
    enum gw_status status = find_demand(&demand, given, GW_ABSENT, engine);
    for (size_t i = 0; i < n && status == GW_OK; i++) {
        struct variant v = variant_of(given, i);
        status =
            vary(&list[i], &given->lightest_of.items[v.listed], thickness_of(given, v), treatment_of(given, v), engine);
    }
    engine->trace = NULL; /* the derivation is that of the lightest */
    if (status == GW_OK) status = gw_lite_lightest(&found, lite, list, n, &demand, engine);
    engine->trace = trace;
    if (status != GW_OK) return status;
    answer_choices(answer, &found, given);
    if (!found.n) return GW_OK;
    lite->make_up = list[found.items[0].index];
    return run_one(answer, lite, given, engine);
}

enum gw_status gw_run_lite(void *out, const void *in, struct gw_engine *engine)
{
    const struct lite_case *given = in;
    struct lite_answer *answer = out;
    struct gw_lite lite;
    answer_nothing(answer);
    enum gw_status status = find_lite(&lite, given, engine);
    if (status != GW_OK) return status;
    return given->lightest_of.n ? run_choice(answer, &lite, given, engine) : run_one(answer, &lite, given, engine);
}

const char *const *gw_lite_notes(const void *out, size_t *n)
{
    const struct lite_answer *answer = out;
    *n = answer->result ? (size_t)answer->result->n_notes : 0;
    return answer->result ? answer->result->notes : NULL;
}

enum gw_status gw_lite_plate(struct gw_plate_case *plate, const char **pane, const void *in, const void *out,
                             struct gw_engine *engine)
{
    const struct lite_case *given = in;
    const struct lite_answer *answer = out;
    const struct gw_lite_result *r = answer->result;
    if (!r) return gw_refuse(engine, GW_OUTSIDE_METHOD, "lightest_of", "none of the make-ups passes: nothing to draw");
    if (!gw_given(r->load.pressure))
        return gw_refuse(engine, GW_MISSING, "pressure", "a drawing shows the lite under a pressure: give one");
    if (given->support != 4)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "support", "drawings show lites on four edges");
    bool standard = r->governing == GW_BASIS_STANDARD;
    const struct gw_pane_result *p = &r->panes[standard ? r->standard.pane : r->principles.pane];
    *pane = answer->governing;
    *plate = (struct gw_plate_case){.width = given->width,
                                    .height = given->height,
                                    .thickness = standard ? p->standard.thickness : p->principles.stress_thickness,
                                    .pressure =
                                        standard ? fabs(r->load.pressure) * p->standard.share : fabs(p->principles.net),
                                    .elastic_modulus = GW_ABSENT,
                                    .poissons_ratio = GW_ABSENT,
                                    .method = GW_PLATE_DIRECT,
                                    .terms = GW_NO_INTEGER};
    return GW_OK;
}
