/* Of 'galeward calc support': lites held on fewer than four edges. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/model.h"
#include "galeward/support.h"

struct support_case {
    int edges;
    double span, breadth, thickness, stress_thickness, pressure, elastic_modulus, poissons_ratio;
    enum gw_treatment treatment;
    enum gw_edge_finish edge_finish;
    double duration, probability;
};
struct support_answer {
    struct gw_support_result result;
    double edge_allowable, surface_allowable;
    GW_LIST(double) place;
};

static const struct gw_field CASE[] = {
    F(support_case, edges, GW_T_INTEGER, .flags = GW_REQUIRED, .least = 1, .greatest = 4,
      .help = "held: 3, 2 (opposite) or 1 (clamped)"),
    NUM(support_case, span, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20),
        .help = "between the held edges; 1: cantilever; 3: from the held edge to the free one"),
    NUM(support_case, breadth, GW_LENGTH, LIMITS(0.01, 20), .help = "along the free edges; needed for 3"),
    NUM(support_case, thickness, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.001, 0.1),
        .help = "minimum; laminated: effective for deflection"),
    NUM(support_case, stress_thickness, GW_THICKNESS, LIMITS(0.001, 0.1),
        .help = "laminated: effective for stress; absent: thickness"),
    NUM(support_case, pressure, GW_PRESSURE, .flags = GW_MAGNITUDE,
        .help = "allowable-stress level; absent: limits only"),
    NUM(support_case, elastic_modulus, GW_STRESS, .help = "absent: glass"),
    NUM(support_case, poissons_ratio, GW_RATIO, .help = "absent: glass"),
    PICK(support_case, treatment, gw_treatment_choices, .also = gw_treatment_words,
         .help = "heat treatment; absent: no allowable stresses"),
    PICK(support_case, edge_finish, gw_edge_finish_choices, .help = "of the free edges; goes with treatment"),
    NUM(support_case, duration, GW_TIME, .help = "of the load; absent: 3 s"),
    NUM(support_case, probability, GW_RATIO, .help = "of breakage: 0.008"),
};
static const struct gw_record SUPPORT_CASE_RECORD = RECORD("support", support_case, CASE);

#define A(key_, member_, dim_, help_) OUT(support_answer, key_, member_, dim_, help_)
static const struct gw_field ANSWER[] = {
    A("deflection", result.deflection, GW_THICKNESS, "largest"),
    A("deflection_cylindrical", result.deflection_cylindrical, GW_THICKNESS,
      "two edges: middle of a strip wider than its span"),
    A("stress_edge", result.stress_edge, GW_STRESS, "middle of a free edge; one edge: at the clamp"),
    A("stress_edge_bound", result.stress_edge_bound, GW_STRESS, "at most, with what the formula leaves out"),
    A("stress_surface", result.stress_surface, GW_STRESS, "largest anywhere on either face"),
    OUT_MANY(support_answer, "surface_place", place, GW_LENGTH,
             "three edges: of stress_surface, along the free edge from its end, from the held edge"),
    A("alpha", result.alpha, GW_RATIO, "deflection over q l^4/(E t^3)"),
    A("beta", result.beta, GW_RATIO, "edge stress over q l^2/t^2"),
    A("length", result.length, GW_LENGTH, "l: span; three edges: breadth"),
    A("pullout", result.pullout, GW_THICKNESS, "draws in at each end of a free edge"),
    A("edge_allowable", edge_allowable, GW_STRESS, "of the free edges"),
    A("surface_allowable", surface_allowable, GW_STRESS, "away from the edges"),
    A("limit_pressure", result.limit_pressure, GW_PRESSURE, "where a stress reaches its allowable, or the method ends"),
    A("limit_pressure_bound", result.limit_pressure_bound, GW_PRESSURE, "the same by stress_edge_bound"),
    OUT_TEXT(support_answer, "governing", result.governing, "edge, surface or method"),
    A("utilisation", result.utilization, GW_RATIO, "larger of the stresses over their allowable"),
};
static const struct gw_record SUPPORT_ANSWER_RECORD = RECORD("support result", support_answer, ANSWER);

static enum gw_status find_allowables(struct support_answer *answer, const struct support_case *given,
                                      struct gw_engine *engine)
{
    answer->edge_allowable = answer->surface_allowable = GW_ABSENT;
    if (given->treatment == GW_TREATMENT_UNSET) {
        if (given->edge_finish == GW_EDGE_FINISH_UNSET && !gw_given(given->duration) && !gw_given(given->probability))
            return GW_OK;
        return gw_refuse(engine, GW_MISSING, "treatment", "edge_finish, duration and probability go with a treatment");
    }
    enum gw_status status = gw_edge_allowable(&answer->edge_allowable, given->treatment, given->edge_finish,
                                              given->duration, given->probability, engine);
    if (status) return status;
    return gw_surface_allowable(&answer->surface_allowable, given->treatment, given->duration, given->probability,
                                engine);
}

static enum gw_status run_support(void *out, const void *in, struct gw_engine *engine)
{
    const struct support_case *given = in;
    struct support_answer *answer = out;
    enum gw_status status = find_allowables(answer, given, engine);
    if (status) return status;
    const struct gw_support_case lite = {.edges = given->edges,
                                         .span = given->span,
                                         .breadth = given->breadth,
                                         .thickness = given->thickness,
                                         .stress_thickness = given->stress_thickness,
                                         .pressure = given->pressure,
                                         .elastic_modulus = given->elastic_modulus,
                                         .poissons_ratio = given->poissons_ratio,
                                         .edge_allowable = answer->edge_allowable,
                                         .surface_allowable = answer->surface_allowable};
    status = gw_support_solve(&answer->result, &lite, engine);
    answer->place.items = answer->result.surface_place;
    answer->place.n = given->edges == 3 ? 2 : 0;
    return status;
}

static const char *const *support_notes(const void *out, size_t *n)
{
    const struct support_answer *answer = out;
    *n = answer->result.n_notes;
    return answer->result.notes;
}

const struct gw_calc_kind gw_kind_support = {
    .name = "support",
    .help = "lite held on three edges, two or one: linear deflection, edge stress, limit pressure",
    .example = "edges=2 span='48 in' breadth='72 in' thickness='9.02 mm' pressure='30 psf' treatment=tempered "
               "edge_finish=polished",
    .input = &SUPPORT_CASE_RECORD,
    .output = &SUPPORT_ANSWER_RECORD,
    .run = run_support,
    .notes = support_notes};
