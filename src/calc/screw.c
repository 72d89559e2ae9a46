/* Of 'galeward calc': screw; what other cases say of a screw. */
#include "screw.h"

#include "base/fields.h"

#include "galeward/fastener.h"
#include "galeward/model.h"

const struct gw_choice gw_head_choices[] = {{"flat", GW_HEAD_FLAT, "bears flat, head or washer"},
                                            {"hex_washer", GW_HEAD_HEX_WASHER, "flat; brings the size's diameter"},
                                            {"countersunk", GW_HEAD_COUNTERSUNK, "82 degrees"},
                                            {0}};
static const struct gw_choice PULLOVERS[] = {{"adm-2015", GW_PULLOVER_2015, ""},
                                             {"adm-2010-valley", GW_PULLOVER_2010_VALLEY, "screw in a valley"},
                                             {"adm-2010-crown", GW_PULLOVER_2010_CROWN, "screw in a crown"},
                                             {0}};

double gw_pitch(double threads_per_inch)
{
    const double inch = 0.0254;
    return inch / threads_per_inch;
}

enum gw_status gw_case_metal(struct gw_metal_strength *out, const char *alloy, double ultimate, double yield,
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

struct sheet {
    double thickness, ultimate, yield;
    const char *alloy;
};
struct screw_case {
    double diameter, threads_per_inch, engagement, metal_ultimate, metal_yield, head_diameter, hole_diameter;
    double edge_distance, ultimate, yield, tested_tension, tested_shear, safety_factor, metal_safety_factor, tension;
    double shear, stripping_area, minor_diameter, tested_pullout;
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
    NUM(screw_case, tested_tension, GW_FORCE, LIMITS(1, 1e7),
        .help = "nominal of the screw by test, before ultimate; not an allowable one, which holds the factor"),
    NUM(screw_case, tested_shear, GW_FORCE, LIMITS(1, 1e7),
        .help = "nominal of the screw by test, before ultimate; not an allowable one, which holds the factor"),
    NUM(screw_case, tested_pullout, GW_FORCE, LIMITS(1, 1e7),
        .help = "nominal pull-out by test, before the formula; wanted of a chase or slot"),
    NUM(screw_case, metal_safety_factor, GW_RATIO, LIMITS(1, 10),
        .help = "pull-out, pull-over, bearing, tilting; absent: safety_factor, at least 3.0 (bolts: 1.95)"),
    NUM(screw_case, tension, GW_FORCE, .flags = GW_MAGNITUDE, LIMITS(0, 1e8), .help = "demand"),
    NUM(screw_case, shear, GW_FORCE, .flags = GW_MAGNITUDE, LIMITS(0, 1e8), .help = "demand"),
};
static const struct gw_record SCREW_CASE_RECORD = RECORD("screw", screw_case, SCREW);

struct screw_answer {
    struct gw_screw_result result;
    struct gw_screw_hold hold;
};
#define S(key_, member_, dim_, help_) OUT(screw_answer, key_, result.member_, dim_, help_)
static const struct gw_field SCREW_ANSWER[] = {
    S("tension_area", areas.tension, GW_SECTION_AREA, "stress area; spaced: at the minor diameter"),
    S("root_area", areas.root, GW_SECTION_AREA, "for shear"),
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
    S("utilisation", utilization, GW_RATIO, "largest; the interaction by its root"),
    OUT_TEXT(screw_answer, "governing", result.governing, "screw, pull-out, pull-over, bearing or tilting"),
    OUT(screw_answer, "hold", hold.allowable, GW_FORCE,
        "what it clamps a plate with: least of screw, pull-over and pull-out; absent where one is not known"),
    OUT_TEXT(screw_answer, "hold_by", hold.by, "which; of an absent one what is not known"),
};
static const struct gw_record SCREW_ANSWER_RECORD = RECORD("screw result", screw_answer, SCREW_ANSWER);

enum gw_status gw_case_screw(double *ultimate, double *yield, const char *grade, double diameter,
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

static enum gw_status run_screw(void *out, const void *in, struct gw_engine *engine)
{
    const struct screw_case *given = in;
    struct screw_answer *answer = out;
    struct gw_metal_strength metal;
    struct gw_sheet sheet;
    struct gw_screw_case screw = {.screw = {given->thread, given->diameter, gw_pitch(given->threads_per_inch),
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
    enum gw_status status = gw_case_screw(&screw.ultimate, &screw.yield, given->grade, given->diameter, engine);
    if (!status) status = gw_case_metal(&metal, given->alloy, given->metal_ultimate, given->metal_yield, engine);
    if (!status && given->sheet) {
        sheet.thickness = given->sheet->thickness;
        status = gw_case_metal(&sheet.metal, given->sheet->alloy, given->sheet->ultimate, given->sheet->yield, engine);
        screw.sheet = &sheet;
    }
    if (status) return status;
    if (gw_given(metal.ultimate) || gw_given(metal.yield)) screw.metal = &metal;
    status = gw_screw_solve(&answer->result, &screw, engine);
    return status ? status : gw_screw_hold(&answer->hold, &answer->result, given->tested_pullout, engine);
}

static const char *const *screw_notes(const void *out, size_t *n)
{
    const struct screw_answer *answer = out;
    *n = answer->result.n_notes;
    return answer->result.notes;
}

const struct gw_calc_kind gw_kind_screw = {
    .name = "screw",
    .help = "one screw: areas, tension, shear, pull-out, pull-over, bearing, tilting, interaction",
    .example =
        "diameter='1/4 in' threads_per_inch=20 thread=coarse engagement='1/8 in' alloy=6063-T6 ultimate='100 ksi'",
    .input = &SCREW_CASE_RECORD,
    .output = &SCREW_ANSWER_RECORD,
    .run = run_screw,
    .notes = screw_notes};
