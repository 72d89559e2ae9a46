/* Field tables of 'galeward calc': screw, pressure_plate, connection, rail_dead_load. */
#include "fastener.h"

#include "base/fields.h"

#include "galeward/fastener.h"
#include "galeward/model.h"

static const double INCH = 0.0254;

#define SIZE LIMITS(0.0001, 0.1)
#define STRENGTH LIMITS(1e6, 1e10)

static const struct gw_choice HEADS[] = {{"flat", GW_HEAD_FLAT, "bears flat, head or washer"},
                                         {"hex_washer", GW_HEAD_HEX_WASHER, "flat; brings the size's diameter"},
                                         {"countersunk", GW_HEAD_COUNTERSUNK, "82 degrees"},
                                         {0}};
static const struct gw_choice PULLOVERS[] = {{"adm-2015", GW_PULLOVER_2015, ""},
                                             {"adm-2010-valley", GW_PULLOVER_2010_VALLEY, "screw in a valley"},
                                             {"adm-2010-crown", GW_PULLOVER_2010_CROWN, "screw in a crown"},
                                             {0}};

/* An alloy's strengths, each replaced by the one given. */
static enum gw_status metal_of(struct gw_metal_strength *out, const char *alloy, double ultimate, double yield,
                               struct gw_engine *engine)
{
    *out = (struct gw_metal_strength){GW_ABSENT, GW_ABSENT, GW_ABSENT, GW_ABSENT};
    enum gw_status status = alloy ? gw_fastener_alloy(out, alloy, engine) : GW_OK;
    if (status) return status;
    if (gw_given(ultimate) || gw_given(yield)) out->thickness = GW_ABSENT;
    if (gw_given(ultimate)) out->ultimate = ultimate;
    if (gw_given(yield)) out->yield = yield;
    return GW_OK;
}

static double pitch_of(double threads_per_inch) { return INCH / threads_per_inch; }

/* screw */

struct sheet {
    double thickness, ultimate, yield;
    const char *alloy;
};
struct screw_case {
    double diameter, threads_per_inch, engagement, metal_ultimate, metal_yield, head_diameter, hole_diameter;
    double edge_distance, ultimate, yield, tested_tension, tested_shear, safety_factor, metal_safety_factor, tension;
    double shear, stripping_area, minor_diameter;
    enum gw_thread thread;
    enum gw_head head;
    enum gw_pullover pullover;
    const char *alloy, *grade;
    const struct sheet *sheet;
};

static const struct gw_field SHEET[] = {
    NUM(sheet, thickness, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0001, 0.1), .help = "under the head"),
    F(sheet, alloy, GW_T_TEXT, .help = "alloy and temper, 6063-T6"),
    NUM(sheet, ultimate, GW_STRESS, STRENGTH, .help = "tensile strength; absent: the alloy's"),
    NUM(sheet, yield, GW_STRESS, STRENGTH, .help = "yield strength; absent: the alloy's"),
};
static const struct gw_record SHEET_RECORD = RECORD("sheet", sheet, SHEET);

#define SCREW_FIELDS(struct_)                                                                                          \
    NUM(struct_, diameter, GW_THICKNESS, .flags = GW_REQUIRED, SIZE, .help = "nominal"),                               \
        NUM(struct_, threads_per_inch, GW_RATIO, .flags = GW_REQUIRED, LIMITS(1, 120), .help = "a count"),             \
        PICK(struct_, thread, gw_thread_choices, .flags = GW_REQUIRED, .help = "coarse or spaced"),                    \
        NUM(struct_, minor_diameter, GW_THICKNESS, SIZE, .help = "smallest, of a spaced thread; absent: the size's"),  \
        NUM(struct_, head_diameter, GW_THICKNESS, SIZE, .help = "head or washer; absent: no pull-over"),               \
        PICK(struct_, head, HEADS, .help = "flat, hex_washer or countersunk; absent: flat"),                           \
        F(struct_, grade, GW_T_TEXT,                                                                                   \
          .help = "of the screw: stainless_cw, stainless_a, stainless_af, grade_2, grade_5, a307, a325"),              \
        NUM(struct_, ultimate, GW_STRESS, STRENGTH, .help = "tensile strength of the screw; absent: the grade's"),     \
        NUM(struct_, safety_factor, GW_RATIO, LIMITS(1, 10), .help = "absent: the screw's, 3.0")

static const struct gw_field SCREW[] = {
    SCREW_FIELDS(screw_case),
    NUM(screw_case, engagement, GW_THICKNESS, LIMITS(0.0001, 0.1), .help = "thread in the metal; absent: no pull-out"),
    F(screw_case, alloy, GW_T_TEXT, .help = "of the metal that holds the thread, 6063-T6"),
    NUM(screw_case, metal_ultimate, GW_STRESS, STRENGTH, .help = "its tensile strength; absent: the alloy's"),
    NUM(screw_case, metal_yield, GW_STRESS, STRENGTH, .help = "its yield strength; absent: the alloy's"),
    NUM(screw_case, stripping_area, GW_THICKNESS, LIMITS(0.001, 0.1),
        .help = "internal thread, area per length engaged; absent: the size's"),
    F(screw_case, sheet, GW_T_RECORD, .record = &SHEET_RECORD, .help = "metal under the head"),
    PICK(screw_case, pullover, PULLOVERS, .help = "edition of the pull-over form; absent: adm-2015"),
    NUM(screw_case, hole_diameter, GW_THICKNESS, SIZE, .help = "in the sheet, for the 2010 form"),
    NUM(screw_case, edge_distance, GW_THICKNESS, LIMITS(0.0001, 1),
        .help = "to the end of the sheet in the load's direction"),
    NUM(screw_case, yield, GW_STRESS, STRENGTH, .help = "of the screw; absent: the grade's"),
    NUM(screw_case, tested_tension, GW_FORCE, LIMITS(1, 1e7), .help = "nominal of the screw by test, before ultimate"),
    NUM(screw_case, tested_shear, GW_FORCE, LIMITS(1, 1e7), .help = "nominal of the screw by test, before ultimate"),
    NUM(screw_case, metal_safety_factor, GW_RATIO, LIMITS(1, 10),
        .help = "pull-out, pull-over, bearing, tilting; absent: safety_factor, at least 3.0 (bolts: 1.95)"),
    NUM(screw_case, tension, GW_FORCE, .flags = GW_MAGNITUDE, LIMITS(0, 1e8), .help = "demand"),
    NUM(screw_case, shear, GW_FORCE, .flags = GW_MAGNITUDE, LIMITS(0, 1e8), .help = "demand"),
};
const struct gw_record gw_screw_case_record = RECORD("screw", screw_case, SCREW);

#define S(key_, member_, dim_, help_) OUT(gw_screw_result, key_, member_, dim_, help_)
static const struct gw_field SCREW_ANSWER[] = {
    S("tension_area", areas.tension, GW_AREA, "stress area; spaced: at the minor diameter"),
    S("root_area", areas.root, GW_AREA, "for shear"),
    S("safety_factor", safety_factor, GW_RATIO, "used for the screw"),
    S("metal_safety_factor", metal_safety_factor, GW_RATIO, "used for the metal around it"),
    S("tension_allowable", tension, GW_FORCE, "of the screw"),
    S("shear_allowable", shear, GW_FORCE, "of the screw"),
    S("tension_yield", tension_yield, GW_FORCE, "at which the screw yields, no factor"),
    S("pullout_nominal", pullout_nominal, GW_FORCE, "thread from its metal"),
    S("pullout_allowable", pullout, GW_FORCE, ""),
    S("pullover_nominal", pullover_nominal, GW_FORCE, "sheet over the head"),
    S("pullover_allowable", pullover, GW_FORCE, ""),
    S("bearing_nominal", bearing_nominal, GW_FORCE, "on the sheet"),
    S("bearing_allowable", bearing, GW_FORCE, ""),
    S("tilting_nominal", tilting_nominal, GW_FORCE, "where the thread's metal is no thicker than the sheet"),
    S("tilting_allowable", tilting, GW_FORCE, ""),
    S("interaction", interaction, GW_RATIO, "(T/Ta)^2 + (V/Va)^2 of the screw"),
    S("utilisation", utilisation, GW_RATIO, "largest; the interaction by its root"),
    OUT_TEXT(gw_screw_result, "governing", governing, "screw, pull-out, pull-over, bearing or tilting"),
};
const struct gw_record gw_screw_answer_record = RECORD("screw result", gw_screw_result, SCREW_ANSWER);

/* Strengths of the screw itself: the grade's, each replaced by the one given. */
static enum gw_status screw_metal(double *ultimate, double *yield, const char *grade, double diameter,
                                  struct gw_engine *engine)
{
    struct gw_metal_strength metal;
    if (!grade) return GW_OK;
    enum gw_status status = gw_fastener_grade(&metal, grade, diameter, engine);
    if (status) return status;
    if (!gw_given(*ultimate)) *ultimate = metal.ultimate;
    if (!gw_given(*yield)) *yield = metal.yield;
    return GW_OK;
}

enum gw_status gw_run_screw(void *out, const void *in, struct gw_engine *engine)
{
    const struct screw_case *given = in;
    struct gw_metal_strength metal;
    struct gw_sheet sheet;
    struct gw_screw_case screw = {.screw = {given->thread, given->diameter, pitch_of(given->threads_per_inch),
                                            given->stripping_area, given->minor_diameter},
                                  .head = {given->head, given->pullover, given->head_diameter, given->hole_diameter},
                                  .engagement = given->engagement,
                                  .edge_distance = given->edge_distance,
                                  .ultimate = given->ultimate,
                                  .yield = given->yield,
                                  .tested_tension = given->tested_tension,
                                  .tested_shear = given->tested_shear,
                                  .safety_factor = given->safety_factor,
                                  .metal_safety_factor = given->metal_safety_factor,
                                  .demand_tension = given->tension,
                                  .demand_shear = given->shear};
    enum gw_status status = screw_metal(&screw.ultimate, &screw.yield, given->grade, given->diameter, engine);
    if (!status) status = metal_of(&metal, given->alloy, given->metal_ultimate, given->metal_yield, engine);
    if (!status && given->sheet) {
        sheet.thickness = given->sheet->thickness;
        status = metal_of(&sheet.metal, given->sheet->alloy, given->sheet->ultimate, given->sheet->yield, engine);
        screw.sheet = &sheet;
    }
    if (status) return status;
    if (gw_given(metal.ultimate) || gw_given(metal.yield)) screw.metal = &metal;
    return gw_screw_solve(out, &screw, engine);
}

const char *const *gw_screw_notes(const void *out, size_t *n)
{
    const struct gw_screw_result *result = out;
    *n = result->n_notes;
    return result->notes;
}

/* pressure_plate */

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
    double screw_allowable;
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
const struct gw_record gw_pressure_plate_case_record = RECORD("pressure plate", pressure_plate_case, PRESSURE_PLATE);

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
    A("deflection", result.deflection, GW_THICKNESS, "largest at midspan"),
    A("deflection_end", result.deflection_end, GW_THICKNESS, "of the end, away from the glass"),
    A("end_equal_moment", result.end_equal_moment, GW_THICKNESS, "end distance of equal moments"),
    A("utilisation", result.utilisation, GW_RATIO, "of screw, chase and plate, all known"),
    OUT_TEXT(pressure_plate_answer, "governing", result.governing,
             "chase, chase under preload, screw, plate, plate across"),
};
const struct gw_record gw_pressure_plate_answer_record =
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
        out->section_modulus = w * t * t / 6;
        out->inertia = w * t * t * t / 12;
    }
    enum gw_status status = metal_of(&out->metal, given->alloy, given->ultimate, given->yield, engine);
    if (!status && gw_given(given->elastic_modulus)) out->metal.elastic_modulus = given->elastic_modulus;
    return status;
}

/* The least of the screw's tension and of its pull-over of the plate. */
static enum gw_status screw_and_head(double *out, const struct plate_screw *given,
                                     const struct gw_plate_section *section, struct gw_engine *engine)
{
    struct gw_screw_result result;
    double ultimate = given->ultimate, yield = GW_ABSENT;
    enum gw_status status = screw_metal(&ultimate, &yield, given->grade, given->diameter, engine);
    if (status) return status;
    if (!section || !gw_given(section->thickness))
        return gw_refuse(engine, GW_MISSING, "plate.thickness", "pull-over wants the plate's thickness and alloy");
    const struct gw_sheet sheet = {section->thickness, section->metal};
    const struct gw_screw_case screw = {
        .screw = {given->thread, given->diameter, pitch_of(given->threads_per_inch), GW_ABSENT, given->minor_diameter},
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

enum gw_status gw_run_pressure_plate(void *out, const void *in, struct gw_engine *engine)
{
    const struct pressure_plate_case *given = in;
    struct pressure_plate_answer *answer = out;
    struct gw_plate_section section;
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
    return status;
}

const char *const *gw_pressure_plate_notes(const void *out, size_t *n)
{
    const struct pressure_plate_answer *answer = out;
    *n = answer->result.n_notes;
    return answer->result.notes;
}

/* connection */

struct connection_case {
    enum gw_rail_end connection;
    double wind, dead, diameter, allowable, spline_tested, safety_factor;
    const struct gw_fastener_place *load;
    GW_LIST(struct gw_fastener_place) fasteners;
};

static const struct gw_choice CONNECTIONS[] = {{"shear_block", GW_SHEAR_BLOCK, "block screwed to the vertical"},
                                               {"screw_spline", GW_SCREW_SPLINE, "screws into slots of the horizontal"},
                                               {0}};
static const struct gw_field PLACE_FIELDS[] = {
    NUM(gw_fastener_place, x, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(-10, 10), .help = "into the wall"),
    NUM(gw_fastener_place, y, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(-10, 10), .help = "up"),
};
static const struct gw_record PLACE_RECORD = RECORD("place", gw_fastener_place, PLACE_FIELDS);
static const struct gw_field CONNECTION[] = {
    PICK(connection_case, connection, CONNECTIONS, .flags = GW_REQUIRED, .help = "shear_block or screw_spline"),
    NUM(connection_case, wind, GW_FORCE, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(0, 1e7),
        .help = "reaction at this end, either way"),
    NUM(connection_case, dead, GW_FORCE, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(0, 1e7),
        .help = "reaction at this end"),
    F(connection_case, load, GW_T_RECORD, .record = &PLACE_RECORD, .flags = GW_REQUIRED, .help = "where the two act"),
    F(connection_case, fasteners, GW_T_RECORD, .record = &PLACE_RECORD, .flags = GW_REQUIRED | GW_MANY,
      .help = "places, seen along the horizontal"),
    NUM(connection_case, diameter, GW_THICKNESS, SIZE, .help = "of a fastener; checks the spacing"),
    NUM(connection_case, allowable, GW_FORCE, LIMITS(1, 1e7),
        .help = "in shear of one: least of screw, bearing in each part, tilting"),
    NUM(connection_case, spline_tested, GW_FORCE, LIMITS(1, 1e7),
        .help = "nominal in shear of one screw in its slot, by test: no formula holds"),
    NUM(connection_case, safety_factor, GW_RATIO, LIMITS(1, 10), .help = "of spline_tested; absent: the screw's, 3.0"),
};
const struct gw_record gw_connection_case_record = RECORD("connection", connection_case, CONNECTION);

#define C(key_, member_, dim_, help_) OUT(gw_connection_result, key_, member_, dim_, help_)
static const struct gw_field CONNECTION_ANSWER[] = {
    C("resultant", resultant, GW_FORCE, "of wind and dead load"),
    C("moment", moment, GW_MOMENT, "about the middle of the fasteners"),
    C("fastener_shear", fastener, GW_FORCE, "of the most loaded one"),
    OUT_WHOLE(gw_connection_result, "fastener", worst, "which, from 0"),
    C("fastener_allowable", allowable, GW_FORCE, "of one"),
    C("utilisation", utilisation, GW_RATIO, ""),
};
const struct gw_record gw_connection_answer_record =
    RECORD("connection result", gw_connection_result, CONNECTION_ANSWER);

enum gw_status gw_run_connection(void *out, const void *in, struct gw_engine *engine)
{
    const struct connection_case *given = in;
    const struct gw_connection_case end = {.kind = given->connection,
                                           .wind = given->wind,
                                           .dead = given->dead,
                                           .load = *given->load,
                                           .fasteners = given->fasteners.items,
                                           .n_fasteners = given->fasteners.n,
                                           .diameter = given->diameter,
                                           .allowable = given->allowable,
                                           .tested = given->spline_tested,
                                           .safety_factor = given->safety_factor};
    return gw_connection(out, &end, engine);
}

/* rail_dead_load */

struct rail_case {
    double glass_weight, span, block_offset, elastic_modulus, inertia, shear_modulus, torsion_constant, eccentricity;
};

static const struct gw_field RAIL[] = {
    NUM(rail_case, glass_weight, GW_FORCE, .flags = GW_REQUIRED, LIMITS(0, 1e6), .help = "of the whole lite"),
    NUM(rail_case, span, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "between verticals"),
    NUM(rail_case, block_offset, GW_LENGTH, LIMITS(0.001, 20),
        .help = "of a setting block from its end; absent: quarter points"),
    NUM(rail_case, elastic_modulus, GW_STRESS, LIMITS(1e8, 1e12), .help = "absent: no deflection"),
    NUM(rail_case, inertia, GW_INERTIA, LIMITS(1e-12, 1), .help = "about the horizontal axis in the wall's plane"),
    NUM(rail_case, shear_modulus, GW_STRESS, LIMITS(1e8, 1e12), .help = "absent: no twist"),
    NUM(rail_case, torsion_constant, GW_INERTIA, LIMITS(1e-14, 1), .help = "goes with shear_modulus"),
    NUM(rail_case, eccentricity, GW_THICKNESS, LIMITS(-1, 1), .help = "glass from the shear center"),
};
const struct gw_record gw_rail_case_record = RECORD("horizontal", rail_case, RAIL);

#define R(key_, member_, dim_, help_) OUT(gw_rail_result, key_, member_, dim_, help_)
static const struct gw_field RAIL_ANSWER[] = {
    R("block_offset", offset, GW_LENGTH, ""),
    R("moment", moment, GW_MOMENT, "between the blocks"),
    R("deflection", deflection, GW_THICKNESS, "midspan"),
    R("deflection_limit", deflection_limit, GW_THICKNESS, "smaller of span/360 and 1/8 in"),
    R("twist", twist, GW_ANGLE, "at a block, ends held"),
    R("twist_limit", twist_limit, GW_ANGLE, ""),
};
const struct gw_record gw_rail_answer_record = RECORD("horizontal result", gw_rail_result, RAIL_ANSWER);

enum gw_status gw_run_rail(void *out, const void *in, struct gw_engine *engine)
{
    const struct rail_case *given = in;
    const struct gw_rail_case rail = {.weight = given->glass_weight,
                                      .span = given->span,
                                      .offset = given->block_offset,
                                      .elastic_modulus = given->elastic_modulus,
                                      .inertia = given->inertia,
                                      .shear_modulus = given->shear_modulus,
                                      .torsion_constant = given->torsion_constant,
                                      .eccentricity = given->eccentricity};
    return gw_rail_dead_load(out, &rail, engine);
}

const char *const *gw_rail_notes(const void *out, size_t *n)
{
    const struct gw_rail_result *result = out;
    *n = result->n_notes;
    return result->notes;
}
