/* Of 'galeward calc': pressure_plate. */
#include "screw.h"

#include "base/fields.h"

#include "galeward/fastener.h"
#include "galeward/model.h"

struct clamping_plate {
    double width, thickness, section_modulus, inertia, ultimate, yield, elastic_modulus, hole, arm;
    const char *alloy;
};
struct plate_screw {
    double diameter, threads_per_inch, minor_diameter, head_diameter, ultimate, safety_factor;
    enum gw_thread thread;
    enum gw_head head;
    const char *grade;
};
struct pressure_plate_case {
    double pressure, tributary_width, width_left, width_right, spacing, length, end_distance, gasket_load, preload;
    double screw_allowable, chase_tested, safety_factor;
    const struct clamping_plate *plate;
    const struct plate_screw *screw;
};
struct pressure_plate_answer {
    struct gw_pressure_plate_result result;
    double screw_allowable, plate_suction;
};

static const struct gw_field CLAMPING_PLATE[] = {
    NUM(clamping_plate, width, GW_THICKNESS, LIMITS(0.001, 1),
        .help = "of a flat plate; with thickness gives its section"),
    NUM(clamping_plate, thickness, GW_THICKNESS, LIMITS(0.0001, 0.1), .help = "on the line of screws"),
    NUM(clamping_plate, section_modulus, GW_SECTION_MODULUS, LIMITS(1e-12, 1e-3), .help = "instead of the width"),
    NUM(clamping_plate, inertia, GW_INERTIA, LIMITS(1e-15, 1e-3), .help = "instead of the width"),
    F(clamping_plate, alloy, GW_T_TEXT, .help = "alloy and temper, 6063-T6"),
    NUM(clamping_plate, ultimate, GW_STRESS, STRENGTH, .help = "absent: the alloy's"),
    NUM(clamping_plate, yield, GW_STRESS, STRENGTH, .help = "absent: the alloy's"),
    NUM(clamping_plate, elastic_modulus, GW_STRESS, LIMITS(1e8, 1e12), .help = "absent: the alloy's"),
    NUM(clamping_plate, hole, GW_THICKNESS, SIZE, .help = "of the screws, taken off across the plate"),
    NUM(clamping_plate, arm, GW_THICKNESS, LIMITS(0.001, 0.5), .help = "from the screws to a gasket"),
};
static const struct gw_record CLAMPING_PLATE_RECORD = RECORD("plate", clamping_plate, CLAMPING_PLATE);
static const struct gw_field PLATE_SCREW[] = {SCREW_FIELDS(plate_screw)};
static const struct gw_record PLATE_SCREW_RECORD = RECORD("screw", plate_screw, PLATE_SCREW);
static const struct gw_field PRESSURE_PLATE[] = {
    NUM(pressure_plate_case, pressure, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, PRESSURE_RANGE,
        .help = "suction, allowable-stress level"),
    NUM(pressure_plate_case, tributary_width, GW_LENGTH, LIMITS(0, 20), .help = "instead of the two widths"),
    NUM(pressure_plate_case, width_left, GW_LENGTH, LIMITS(0, 20), .help = "of the lite; 0: no glass"),
    NUM(pressure_plate_case, width_right, GW_LENGTH, LIMITS(0, 20), .help = "of the lite; 0: no glass"),
    NUM(pressure_plate_case, spacing, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.01, 2),
        .help = "of the screws; with a length: at most"),
    NUM(pressure_plate_case, length, GW_LENGTH, LIMITS(0.01, 30), .help = "of the plate; absent: long"),
    NUM(pressure_plate_case, end_distance, GW_THICKNESS, LIMITS(0, 2),
        .help = "from an end to its screw; absent: far from the ends"),
    NUM(pressure_plate_case, gasket_load, GW_LINE_LOAD, LIMITS(0, 1e5), .help = "each line, from clamping"),
    NUM(pressure_plate_case, preload, GW_FORCE, LIMITS(0, 1e6), .help = "of a screw; gives tension_upper"),
    F(pressure_plate_case, plate, GW_T_RECORD, .record = &CLAMPING_PLATE_RECORD,
      .help = "its section and metal; absent: forces only"),
    F(pressure_plate_case, screw, GW_T_RECORD, .record = &PLATE_SCREW_RECORD,
      .help = "its tension and its pull-over of the plate give screw_allowable"),
    NUM(pressure_plate_case, screw_allowable, GW_FORCE, LIMITS(1, 1e7), .help = "instead of the screw"),
    NUM(pressure_plate_case, chase_tested, GW_FORCE, LIMITS(1, 1e7),
        .help = "nominal pull-out of a screw from its chase, by test: no formula holds"),
    NUM(pressure_plate_case, safety_factor, GW_RATIO, LIMITS(1, 10),
        .help = "of chase_tested; absent: the screw's, 3.0"),
};
static const struct gw_record PRESSURE_PLATE_CASE_RECORD =
    RECORD("pressure plate", pressure_plate_case, PRESSURE_PLATE);

#define A(key_, member_, dim_, help_) OUT(pressure_plate_answer, key_, member_, dim_, help_)
static const struct gw_field PRESSURE_PLATE_ANSWER[] = {
    OUT_WHOLE(pressure_plate_answer, "fasteners", result.fasteners, "of a plate with a length"),
    A("spacing", result.spacing, GW_THICKNESS, "as laid out"),
    A("line_load", result.line_load, GW_LINE_LOAD, "suction of both lites"),
    A("gasket_left", result.gasket_left, GW_LINE_LOAD, "plate on gasket: clamping and half the lite's suction"),
    A("gasket_right", result.gasket_right, GW_LINE_LOAD, ""),
    A("screw_tension", result.tension, GW_FORCE, "by tributary area"),
    A("screw_tension_most", result.tension_most, GW_FORCE, "most loaded screw of the continuous plate"),
    A("tension_upper", result.tension_upper, GW_FORCE, "with the whole preload"),
    A("screw_allowable", screw_allowable, GW_FORCE, "least of the screw and its pull-over"),
    A("chase_allowable", result.chase, GW_FORCE, "tested value over the safety factor"),
    A("moment", result.moment, GW_MOMENT, "largest over a screw"),
    A("moment_end", result.moment_end, GW_MOMENT, "over the end screw"),
    A("stress", result.stress, GW_STRESS, "along the plate"),
    A("stress_across", result.stress_across, GW_STRESS, "from the gaskets to the screws"),
    A("stress_allowable", result.stress_allowable, GW_STRESS, ""),
    A("plate_suction", plate_suction, GW_PRESSURE, "under which the plate is bent to its allowable stress by itself"),
    A("deflection", result.deflection, GW_THICKNESS, "largest at midspan"),
    A("deflection_end", result.deflection_end, GW_THICKNESS, "of the end, away from the glass"),
    A("end_equal_moment", result.end_equal_moment, GW_THICKNESS, "end distance of equal moments"),
    A("utilisation", result.utilization, GW_RATIO, "of screw, chase and plate, all known"),
    OUT_TEXT(pressure_plate_answer, "governing", result.governing,
             "chase, chase under preload, screw, plate, plate across"),
};
static const struct gw_record PRESSURE_PLATE_ANSWER_RECORD =
    RECORD("pressure plate result", pressure_plate_answer, PRESSURE_PLATE_ANSWER);

static enum gw_status plate_section(struct gw_plate_section *out, const struct clamping_plate *given,
                                    struct gw_engine *engine)
{
    const double w = given->width, t = given->thickness;
    *out = (struct gw_plate_section){.section_modulus = given->section_modulus,
                                     .inertia = given->inertia,
                                     .thickness = t,
                                     .hole = given->hole,
                                     .arm = given->arm};
    if (gw_given(w) && (gw_given(given->section_modulus) || gw_given(given->inertia)))
        return gw_refuse(engine, GW_BAD_VALUE, "plate.width", "give the width or the section, not both");
    if (gw_given(w) && !gw_given(t))
        return gw_refuse(engine, GW_MISSING, "plate.thickness", "a flat plate wants its thickness");
    if (gw_given(w)) {
        struct gw_plate_section flat;
        gw_plate_flat(&flat, w, GW_ABSENT, t);
        out->section_modulus = flat.section_modulus;
        out->inertia = flat.inertia;
    }
    enum gw_status status = gw_case_metal(&out->metal, given->alloy, given->ultimate, given->yield, engine);
    if (!status && gw_given(given->elastic_modulus)) out->metal.elastic_modulus = given->elastic_modulus;
    return status;
}

/* The least of the screw's tension and of its pull-over of the plate. */
static enum gw_status screw_and_head(double *out, const struct plate_screw *given,
                                     const struct gw_plate_section *section, struct gw_engine *engine)
{
    struct gw_screw_result result;
    double ultimate = given->ultimate, yield = GW_ABSENT;
    enum gw_status status = gw_case_screw(&ultimate, &yield, given->grade, given->diameter, engine);
    if (status) return status;
    if (!section || !gw_given(section->thickness))
        return gw_refuse(engine, GW_MISSING, "plate.thickness", "pull-over wants the plate's thickness and alloy");
    const struct gw_sheet sheet = {section->thickness, section->metal};
    const struct gw_screw_case screw = {
        .screw = {given->thread, given->diameter, gw_pitch(given->threads_per_inch), GW_ABSENT, given->minor_diameter},
        .head = {given->head, GW_PULLOVER_2015, given->head_diameter, GW_ABSENT},
        .engagement = GW_ABSENT,
        .sheet = &sheet,
        .edge_distance = GW_ABSENT,
        .ultimate = ultimate,
        .yield = GW_ABSENT,
        .tested_tension = GW_ABSENT,
        .tested_shear = GW_ABSENT,
        .safety_factor = given->safety_factor,
        .metal_safety_factor = GW_ABSENT,
        .demand_tension = GW_ABSENT,
        .demand_shear = GW_ABSENT};
    status = gw_screw_solve(&result, &screw, engine);
    if (status) return status;
    if (!gw_given(result.tension))
        return gw_refuse(engine, GW_MISSING, "screw.ultimate", "the screw wants ultimate or grade, and a known thread");
    if (!gw_given(result.pullover))
        return gw_refuse(engine, GW_MISSING, "screw.head_diameter", "pull-over wants the head's diameter");
    *out = fmin(result.tension, result.pullover);
    return GW_OK;
}

static enum gw_status widths(struct gw_pressure_plate_case *out, const struct pressure_plate_case *given,
                             struct gw_engine *engine)
{
    const bool both = gw_given(given->width_left) && gw_given(given->width_right);
    const bool any = gw_given(given->width_left) || gw_given(given->width_right);
    if (gw_given(given->tributary_width) ? any : !both)
        return gw_refuse(engine, GW_MISSING, "width_left", "give width_left and width_right, or tributary_width");
    out->width_left = both ? given->width_left : given->tributary_width;
    out->width_right = both ? given->width_right : given->tributary_width;
    return GW_OK;
}

static enum gw_status run_pressure_plate(void *out, const void *in, struct gw_engine *engine)
{
    const struct pressure_plate_case *given = in;
    struct pressure_plate_answer *answer = out;
    struct gw_plate_section section;
    struct gw_engine untraced; /* its steps are those of the case */
    struct gw_pressure_plate_case plate = {.pressure = given->pressure,
                                           .spacing = given->spacing,
                                           .length = given->length,
                                           .end_distance = given->end_distance,
                                           .gasket_load = given->gasket_load,
                                           .preload = given->preload,
                                           .screw_allowable = given->screw_allowable,
                                           .chase_tested = given->chase_tested,
                                           .safety_factor = given->safety_factor};
    enum gw_status status = widths(&plate, given, engine);
    if (!status && given->plate) status = plate_section(&section, given->plate, engine);
    if (!status && given->plate) plate.section = &section;
    if (!status && given->screw && gw_given(given->screw_allowable))
        return gw_refuse(engine, GW_BAD_VALUE, "screw_allowable", "give the screw or screw_allowable, not both");
    if (!status && given->screw) status = screw_and_head(&plate.screw_allowable, given->screw, plate.section, engine);
    if (status) return status;
    answer->screw_allowable = plate.screw_allowable;
    status = gw_pressure_plate(&answer->result, &plate, engine);
    if (!answer->result.fasteners) answer->result.fasteners = GW_NO_INTEGER;
    answer->plate_suction = GW_ABSENT;
    gw_engine_init(&untraced, engine->tables, NULL);
    if (status == GW_OK && plate.section) status = gw_plate_suction(&answer->plate_suction, &plate, &untraced);
    return status;
}

static const char *const *pressure_plate_notes(const void *out, size_t *n)
{
    const struct pressure_plate_answer *answer = out;
    *n = answer->result.n_notes;
    return answer->result.notes;
}

const struct gw_calc_kind gw_kind_pressure_plate = {
    .name = "pressure_plate",
    .help = "plate that clamps glass on a line of screws: screw tension, chase, bending along and across",
    .example = "pressure='42 psf' tributary_width='5 ft' spacing='9 in' plate='{width: 2 in, thickness: 1/4 in, alloy: "
               "6063-T6, arm: 7/8 in}' screw_allowable='500 lb' chase_tested='1500 lb'",
    .input = &PRESSURE_PLATE_CASE_RECORD,
    .output = &PRESSURE_PLATE_ANSWER_RECORD,
    .run = run_pressure_plate,
    .notes = pressure_plate_notes};
