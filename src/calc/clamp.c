/* Of 'galeward calc': clamp, gasket, screw_length, relaxation. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/clamp.h"

static const struct gw_field RELAXATION[] = {
    NUM(gw_relaxation_case, retained, GW_RATIO, LIMITS(0, 1), .help = "a reading: what is left of the clamp at first"),
    NUM(gw_relaxation_case, age, GW_TIME, LIMITS(0, 1e10), .help = "of the reading, since installation or retorque"),
    NUM(gw_relaxation_case, rate, GW_RATIO, LIMITS(0, 1), .help = "instead of a reading: loss per decade of time"),
    NUM(gw_relaxation_case, time, GW_TIME, .flags = GW_REQUIRED, LIMITS(0, 1e10),
        .help = "when is asked, since installation or retorque"),
};
static const struct gw_record RELAXATION_RECORD = RECORD("relaxation", gw_relaxation_case, RELAXATION);
static const struct gw_field RELAXATION_ANSWER[] = {
    OUT(gw_relaxation_result, "rate_per_decade", rate, GW_RATIO, "loss, of the clamp at first"),
    OUT(gw_relaxation_result, "retained_at_time", retained, GW_RATIO, "what is left of the clamp at first"),
};
static const struct gw_record RELAXATION_ANSWER_RECORD =
    RECORD("relaxation result", gw_relaxation_result, RELAXATION_ANSWER);

static enum gw_status run_relaxation(void *out, const void *in, struct gw_engine *engine)
{
    return gw_relaxation(out, in, engine);
}

static const char *const *relaxation_notes(const void *out, size_t *n)
{
    const struct gw_relaxation_result *result = out;
    *n = result->n_notes;
    return result->notes;
}

const struct gw_calc_kind gw_kind_relaxation = {.name = "relaxation",
                                                .help = "clamp that a gasketed pressure plate keeps with time",
                                                .example = "retained=0.81 age='9 months' time='10 years'",
                                                .input = &RELAXATION_RECORD,
                                                .output = &RELAXATION_ANSWER_RECORD,
                                                .run = run_relaxation,
                                                .notes = relaxation_notes};

static const struct gw_field CLAMP[] = {
    NUM(gw_clamp_case, diameter, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.002, 0.03), .help = "of the screw"),
    NUM(gw_clamp_case, nut_factor, GW_RATIO, .flags = GW_REQUIRED, LIMITS(0.05, 1), .help = "K of T = K D F"),
    NUM(gw_clamp_case, torque, GW_MOMENT, .flags = GW_REQUIRED, LIMITS(0, 1000), .help = "at installation"),
    NUM(gw_clamp_case, torque_later, GW_MOMENT, LIMITS(0, 1000), .help = "read later; or retained"),
    NUM(gw_clamp_case, forming_torque, GW_MOMENT, LIMITS(0, 1000), .help = "that forms the thread; absent: 0"),
    NUM(gw_clamp_case, forming_torque_later, GW_MOMENT, LIMITS(0, 1000),
        .help = "at the later reading; absent: as at first"),
    NUM(gw_clamp_case, retained, GW_RATIO, LIMITS(0, 1), .help = "instead of torque_later: what is left"),
    NUM(gw_clamp_case, spacing, GW_THICKNESS, LIMITS(0, 5), .help = "of the screws; with pressure"),
    NUM(gw_clamp_case, tributary_width, GW_LENGTH, LIMITS(0, 50), .help = "of suction on the plate; with pressure"),
    NUM(gw_clamp_case, pressure, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e6), .help = "suction, magnitude"),
    NUM(gw_clamp_case, safety_factor, GW_RATIO, LIMITS(0.1, 20),
        .help = "in torque_required and spacing_max; absent: 1.5, common practice"),
};
static const struct gw_record CLAMP_RECORD = RECORD("clamp", gw_clamp_case, CLAMP);
static const struct gw_field CLAMP_ANSWER[] = {
    OUT(gw_clamp_result, "preload", preload, GW_FORCE, "tension at first"),
    OUT(gw_clamp_result, "preload_later", preload_later, GW_FORCE, "what is left of it"),
    OUT(gw_clamp_result, "retained", retained, GW_RATIO, "later over first"),
    OUT(gw_clamp_result, "suction_per_fastener", suction, GW_FORCE, "on each screw"),
    OUT(gw_clamp_result, "ratio_start", ratio_start, GW_RATIO, "tension over suction, without a factor"),
    OUT(gw_clamp_result, "ratio_later", ratio_later, GW_RATIO, "the same later"),
    OUT(gw_clamp_result, "torque_required", torque_required, GW_MOMENT, "at installation, with the factor"),
    OUT(gw_clamp_result, "spacing_max", spacing_max, GW_THICKNESS, "with the factor"),
    OUT(gw_clamp_result, "fastener_upper", screw_upper, GW_FORCE, "most tension, where the joint is soft"),
    OUT(gw_clamp_result, "gasket_lower", clamp_lower, GW_FORCE, "least that is left on the plate; below 0: it lifts"),
};
static const struct gw_record CLAMP_ANSWER_RECORD = RECORD("clamp result", gw_clamp_result, CLAMP_ANSWER);

static enum gw_status run_clamp(void *out, const void *in, struct gw_engine *engine)
{
    return gw_clamp(out, in, engine);
}

const struct gw_calc_kind gw_kind_clamp = {
    .name = "clamp",
    .help = "tension of a plate's screws from their torque, against suction",
    .example = "diameter='1/4 in' nut_factor=0.25 torque='95 in-lb' torque_later='78 in-lb' spacing='9 in' "
               "tributary_width='5 ft' pressure='60 psf'",
    .input = &CLAMP_RECORD,
    .output = &CLAMP_ANSWER_RECORD,
    .run = run_clamp};

static const struct gw_field GASKET[] = {
    NUM(gw_gasket_case, edge_load, GW_LINE_LOAD, .flags = GW_REQUIRED, LIMITS(0, 1e5),
        .help = "on the edge of the glass at installation"),
    NUM(gw_gasket_case, retained, GW_RATIO, LIMITS(0, 1), .help = "what is left of it; absent: all"),
    NUM(gw_gasket_case, pressure, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(0, 1e6),
        .help = "suction, magnitude"),
    NUM(gw_gasket_case, lite_width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0, 50), .help = "across the edge"),
    NUM(gw_gasket_case, stiffness_share, GW_RATIO, LIMITS(0, 1),
        .help = "of the inner gasket in both; absent: 0.5, alike"),
};
static const struct gw_record GASKET_RECORD = RECORD("gasket", gw_gasket_case, GASKET);
static const struct gw_field GASKET_ANSWER[] = {
    OUT(gw_gasket_result, "edge_load_later", edge_load_later, GW_LINE_LOAD, "on the edge, without suction"),
    OUT(gw_gasket_result, "suction_edge", suction_edge, GW_LINE_LOAD, "on one edge"),
    OUT(gw_gasket_result, "inner", inner, GW_LINE_LOAD, "on the inner gasket under suction"),
    OUT(gw_gasket_result, "outer", outer, GW_LINE_LOAD, "on the outer gasket under suction"),
    FIELD(gw_gasket_result, "inner_opens", inner_opens, GW_T_YES_NO, .help = "the inner air seal is open"),
};
static const struct gw_record GASKET_ANSWER_RECORD = RECORD("gasket result", gw_gasket_result, GASKET_ANSWER);

static enum gw_status run_gasket(void *out, const void *in, struct gw_engine *engine)
{
    return gw_gasket_load(out, in, engine);
}

const struct gw_calc_kind gw_kind_gasket = {.name = "gasket",
                                            .help = "load on the gaskets of a glass edge under suction",
                                            .example = "edge_load='6 lb/in' retained=0.8 pressure='40 psf' "
                                                       "lite_width='5 ft'",
                                            .input = &GASKET_RECORD,
                                            .output = &GASKET_ANSWER_RECORD,
                                            .run = run_gasket};

static const struct gw_field LENGTHS[] = {
    NUM(gw_screw_length_case, length, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 1), .help = "under the head"),
    NUM(gw_screw_length_case, plate, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 0.1), .help = "thickness"),
    NUM(gw_screw_length_case, stack, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 1),
        .help = "between plate and chase"),
    NUM(gw_screw_length_case, chase, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 0.2), .help = "depth"),
    NUM(gw_screw_length_case, tip, GW_THICKNESS, LIMITS(0, 0.05), .help = "taper that does not hold; absent: 0"),
    NUM(gw_screw_length_case, engagement_required, GW_THICKNESS, LIMITS(0, 0.2), .help = "absent: none is asked"),
};
static const struct gw_record LENGTHS_RECORD = RECORD("screw length", gw_screw_length_case, LENGTHS);
static const struct gw_field LENGTHS_ANSWER[] = {
    OUT(gw_screw_length_result, "tip_clearance", tip_clearance, GW_THICKNESS, "at 0 or below it is bottomed"),
    FIELD(gw_screw_length_result, "bottomed", bottomed, GW_T_YES_NO, .help = "full torque, no clamp"),
    OUT(gw_screw_length_result, "engagement", engagement, GW_THICKNESS, "of full thread; 0: it does not reach"),
    OUT_YES_NO(gw_screw_length_result, "engagement_enough", engagement_enough, "for what is asked"),
};
static const struct gw_record LENGTHS_ANSWER_RECORD =
    RECORD("screw length result", gw_screw_length_result, LENGTHS_ANSWER);

static enum gw_status run_screw_length(void *out, const void *in, struct gw_engine *engine)
{
    return gw_screw_length(out, in, engine);
}

const struct gw_calc_kind gw_kind_screw_length = {
    .name = "screw_length",
    .help = "whether a plate's screw clamps, stands on the bottom of its chase, or hardly reaches it",
    .example = "length='1 1/2 in' plate='1/8 in' stack='3/4 in' chase='3/4 in' tip='1/16 in' "
               "engagement_required='3/8 in'",
    .input = &LENGTHS_RECORD,
    .output = &LENGTHS_ANSWER_RECORD,
    .run = run_screw_length};
