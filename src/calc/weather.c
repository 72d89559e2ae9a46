/* Field tables of the kinds of 'galeward calc' about water, air and structural tests. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/model.h"

#define ASD(struct_, key_, member_, ...) FIELD(struct_, key_, member_.pa, GW_T_NUMBER, .dim = GW_PRESSURE, __VA_ARGS__)

/* Water ----------------------------------------------------------------------------------------------------------- */

struct water_case {
    struct gw_water_case required;
    double upstand, end_dam;
};
struct water_answer {
    struct gw_water_result required;
    double head, dynamic_speed, field, upstand_needed;
    enum gw_bool upstand_enough, end_dam_enough;
    const char *notes[2];
    size_t n_notes;
};
static const struct gw_choice REGIONS[] = {{"US", GW_WATER_US, ""}, {"CA", GW_WATER_CANADA, ""}, {0}};
static const struct gw_choice GOVERNS[] = {
    {"share", GW_BY_SHARE, ""}, {"floor", GW_BY_FLOOR, ""}, {"cap", GW_BY_CAP, ""}, {0}};
static const struct gw_field WATER_CASE[] = {
    ASD(water_case, "positive_pressure", required.positive, .flags = GW_REQUIRED, LIMITS(0, 1e6),
        .help = "greatest inward design pressure, allowable-stress level"),
    FIELD(water_case, "basis", required.rule, GW_T_CHOICE, .choices = gw_water_rule_choices, .flags = GW_REQUIRED,
          .help = "performance class, or curtain_wall"),
    FIELD(water_case, "region", required.region, GW_T_CHOICE, .choices = REGIONS, .fallback = "US",
          .help = "whose cap"),
    FIELD(water_case, "share", required.share, GW_T_NUMBER, LIMITS(0, 1), .help = "instead of the rule's"),
    FIELD(water_case, "floor", required.floor, GW_T_NUMBER, .dim = GW_PRESSURE, .help = "instead of the rule's"),
    FIELD(water_case, "cap", required.cap, GW_T_NUMBER, .dim = GW_PRESSURE, .help = "instead of the rule's"),
    NUM(water_case, upstand, GW_THICKNESS, LIMITS(0, 10), .help = "of the sill, or climb to the inner air seal"),
    NUM(water_case, end_dam, GW_THICKNESS, LIMITS(0, 10), .help = "height"),
};
static const struct gw_record WATER_CASE_RECORD = RECORD("water", water_case, WATER_CASE);
static const struct gw_field WATER_ANSWER[] = {
    OUT(water_answer, "pressure", required.pressure, GW_PRESSURE, "of the static test, and of the dynamic one"),
    OUT_PICK(water_answer, "governs", required.governs, GOVERNS, "share, floor or cap"),
    OUT(water_answer, "head", head, GW_THICKNESS, "of water that it holds up"),
    OUT(water_answer, "upstand_needed", upstand_needed, GW_THICKNESS, "the head and a margin"),
    F(water_answer, upstand_enough, GW_T_BOOL, .help = "with an upstand"),
    F(water_answer, end_dam_enough, GW_T_BOOL, .help = "with an end dam"),
    OUT(water_answer, "dynamic_speed", dynamic_speed, GW_SPEED, "air stream of the dynamic test"),
    OUT(water_answer, "field", field, GW_PRESSURE, "of a test of the installed wall, unless the project says more"),
};
static const struct gw_record WATER_ANSWER_RECORD = RECORD("water result", water_answer, WATER_ANSWER);

static void note_field(struct water_answer *answer, bool below_least)
{
    answer->n_notes = 0;
    answer->notes[answer->n_notes++] = "a pass at the field pressure does not show the full one";
    if (below_least)
        answer->notes[answer->n_notes++] =
            "the field pressure lies below the least that the field standard is recalled "
            "to test at: see field_test";
}

static enum gw_status run_water(void *out, const void *in, struct gw_engine *engine)
{
    const struct water_case *given = in;
    struct water_answer *answer = out;
    bool below_least;
    enum gw_status status = gw_required_water(&answer->required, &given->required, engine);
    if (status) return status;
    const double pressure = answer->required.pressure;
    answer->head = gw_water_head(pressure, engine);
    answer->upstand_needed = gw_upstand_needed(pressure, engine);
    answer->upstand_enough = answer->end_dam_enough = GW_UNSAID;
    if (gw_given(given->upstand)) answer->upstand_enough = gw_upstand_enough(given->upstand, pressure, engine);
    if (gw_given(given->end_dam)) answer->end_dam_enough = gw_upstand_enough(given->end_dam, pressure, engine);
    answer->dynamic_speed = gw_dynamic_water_speed(pressure, engine);
    answer->field = gw_field_water(pressure, &below_least, engine);
    note_field(answer, below_least);
    return GW_OK;
}

static const char *const *water_notes(const void *out, size_t *n)
{
    const struct water_answer *answer = out;
    *n = answer->n_notes;
    return answer->notes;
}

const struct gw_calc_kind gw_kind_water = {
    .name = "water",
    .help = "water test pressure from the design pressure; head, upstand, dynamic test, field test",
    .example = "positive_pressure='47 psf' basis=curtain_wall upstand='2 in'",
    .input = &WATER_CASE_RECORD,
    .output = &WATER_ANSWER_RECORD,
    .run = run_water,
    .notes = water_notes};

/* Proof ----------------------------------------------------------------------------------------------------------- */

static const struct gw_field PROOF_CASE[] = {
    ASD(gw_proof_case, "pressure_positive", positive, .flags = GW_REQUIRED, LIMITS(0, 1e6),
        .help = "design pressure inward, allowable-stress level"),
    ASD(gw_proof_case, "pressure_negative", negative, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(0, 1e6),
        .help = "outward, magnitude"),
    NUM(gw_proof_case, span, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 100), .help = "clear span of the member"),
    FIELD(gw_proof_case, "basis", rule, GW_T_CHOICE, .choices = gw_water_rule_choices, .flags = GW_REQUIRED,
          .help = "performance class, or curtain_wall"),
    PICK(gw_proof_case, protocol, gw_proof_protocol_choices, .fallback = "e330", .help = "e330 or tas202"),
};
static const struct gw_record PROOF_CASE_RECORD = RECORD("proof", gw_proof_case, PROOF_CASE);
static const struct gw_field PROOF_ANSWER[] = {
    OUT(gw_proof_result, "preload", preload, GW_PRESSURE, "inward, before the gauges are set"),
    OUT(gw_proof_result, "proof_positive", proof_positive, GW_PRESSURE, "inward"),
    OUT(gw_proof_result, "proof_negative", proof_negative, GW_PRESSURE, "outward, magnitude"),
    OUT(gw_proof_result, "hold", hold, GW_TIME, "each load"),
    OUT(gw_proof_result, "set_limit", set_limit, GW_THICKNESS, "permanent, after proof"),
    OUT(gw_proof_result, "deflection_limit", deflection_limit, GW_THICKNESS,
        "of the class, at design pressure; null: reported only"),
    OUT(gw_proof_result, "framing_limit", framing_limit, GW_THICKNESS,
        "of framing that supports glass, under allowable-stress wind; in long spans below that of a class"),
};
static const struct gw_record PROOF_ANSWER_RECORD = RECORD("proof result", gw_proof_result, PROOF_ANSWER);

static enum gw_status run_proof(void *out, const void *in, struct gw_engine *engine)
{
    return gw_proof(out, in, engine);
}

const struct gw_calc_kind gw_kind_proof = {
    .name = "proof",
    .help = "structural test: preload, proof loads, permanent set, deflection",
    .example = "pressure_positive='45 psf' pressure_negative='60 psf' span='12 ft 6 in' basis=curtain_wall",
    .input = &PROOF_CASE_RECORD,
    .output = &PROOF_ANSWER_RECORD,
    .run = run_proof};

/* Weep ------------------------------------------------------------------------------------------------------------ */

struct slot {
    double length, height;
};
struct weep_case {
    double diameter;
    const struct slot *slot;
    int count;
    double head, adverse_pressure, discharge_coefficient, wet_area, leak_fraction;
};
static const struct gw_field SLOT[] = {
    NUM(slot, length, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0001, 10), .help = "along the sill"),
    NUM(slot, height, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0001, 1), .help = "upright"),
};
static const struct gw_record SLOT_RECORD = RECORD("slot", slot, SLOT);
static const struct gw_field WEEP_CASE[] = {
    NUM(weep_case, diameter, GW_THICKNESS, LIMITS(0.0001, 1), .help = "round; or slot"),
    F(weep_case, slot, GW_T_RECORD, .record = &SLOT_RECORD, .help = "length and height"),
    F(weep_case, count, GW_T_INTEGER, .fallback = "1", LIMITS(1, 100000), .help = "of them"),
    NUM(weep_case, head, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 10),
        .help = "of water above the middle of the opening"),
    NUM(weep_case, adverse_pressure, GW_PRESSURE, LIMITS(0, 1e5), .help = "of the air outside against it; absent: 0"),
    NUM(weep_case, discharge_coefficient, GW_RATIO, LIMITS(0.01, 1), .help = "absent: sharp edge"),
    NUM(weep_case, wet_area, GW_AREA, LIMITS(0.0001, 1e6), .help = "that drains to it, under the test's spray"),
    NUM(weep_case, leak_fraction, GW_RATIO, LIMITS(0.0001, 1), .help = "of the spray that the outer seals let in"),
};
static const struct gw_record WEEP_CASE_RECORD = RECORD("weep", weep_case, WEEP_CASE);
static const struct gw_field WEEP_ANSWER[] = {
    OUT(gw_weep_result, "net_head", net_head, GW_THICKNESS, "not above 0: nothing drains"),
    OUT(gw_weep_result, "velocity", velocity, GW_VELOCITY, "of the jet"),
    OUT(gw_weep_result, "flow", flow, GW_DRAINED, "of all openings"),
    OUT(gw_weep_result, "area", area, GW_SECTION_AREA, "of all openings"),
    F(gw_weep_result, part_full, GW_T_BOOL, .help = "water below the top of the opening"),
    OUT(gw_weep_result, "held_head", held_head, GW_THICKNESS, "held back by surface tension"),
    OUT(gw_weep_result, "least_size", least_size, GW_THICKNESS, "diameter, or slot height, that the net head opens"),
    OUT(gw_weep_result, "demand", demand, GW_DRAINED, "of the spray on wet_area"),
    OUT(gw_weep_result, "drainage_ratio", drainage_ratio, GW_RATIO, "flow over demand"),
};
static const struct gw_record WEEP_ANSWER_RECORD = RECORD("weep result", gw_weep_result, WEEP_ANSWER);

static enum gw_status run_weep(void *out, const void *in, struct gw_engine *engine)
{
    const struct weep_case *given = in;
    const struct gw_weep_case weep = {.diameter = given->diameter,
                                      .slot_length = given->slot ? given->slot->length : GW_ABSENT,
                                      .slot_height = given->slot ? given->slot->height : GW_ABSENT,
                                      .count = given->count,
                                      .head = given->head,
                                      .adverse_pressure = given->adverse_pressure,
                                      .discharge_coefficient = given->discharge_coefficient,
                                      .wet_area = given->wet_area,
                                      .leak_fraction = given->leak_fraction};
    return gw_weep(out, &weep, engine);
}

static const char *const *weep_notes(const void *out, size_t *n)
{
    const struct gw_weep_result *result = out;
    *n = result->n_notes;
    return result->notes;
}

const struct gw_calc_kind gw_kind_weep = {
    .name = "weep",
    .help = "flow out of weeps under net head, surface tension, drainage ratio",
    .example = "slot='{length: 2 in, height: 1/4 in}' count=2 head='1 in' adverse_pressure='2 psf' wet_area='50 ft2' "
               "leak_fraction=0.10",
    .input = &WEEP_CASE_RECORD,
    .output = &WEEP_ANSWER_RECORD,
    .run = run_weep,
    .notes = weep_notes};

/* Equalization ---------------------------------------------------------------------------------------------------- */

static const struct gw_field EQUALIZATION_CASE[] = {
    NUM(gw_equalization_case, vent_to_leak, GW_RATIO, .flags = GW_REQUIRED, LIMITS(1e-6, 1e6),
        .help = "area of the vents over area of the inner leaks"),
    NUM(gw_equalization_case, exponent, GW_RATIO, .help = "of flow by pressure; absent: 0.5"),
    NUM(gw_equalization_case, pressure, GW_PRESSURE, .help = "across the wall; absent: shares only"),
    NUM(gw_equalization_case, target_share, GW_RATIO, .help = "that the outer screen may take; gives the ratio needed"),
};
static const struct gw_record EQUALIZATION_CASE_RECORD =
    RECORD("equalization", gw_equalization_case, EQUALIZATION_CASE);
static const struct gw_field EQUALIZATION_ANSWER[] = {
    OUT(gw_equalization_result, "cladding_share", cladding_share, GW_RATIO, "of the pressure, on the outer screen"),
    OUT(gw_equalization_result, "cladding", cladding, GW_PRESSURE, "on the outer screen"),
    OUT(gw_equalization_result, "cavity_share", cavity_share, GW_RATIO, "on the inner seals"),
    OUT(gw_equalization_result, "vent_to_leak_needed", vent_to_leak_needed, GW_RATIO, "for target_share"),
};
static const struct gw_record EQUALIZATION_ANSWER_RECORD =
    RECORD("equalization result", gw_equalization_result, EQUALIZATION_ANSWER);

static enum gw_status run_equalization(void *out, const void *in, struct gw_engine *engine)
{
    return gw_equalization(out, in, engine);
}

static const char *const *equalization_notes(const void *out, size_t *n)
{
    static const char *const notes[] = {
        "steady pressure: gusts and pressures that differ along the wall leave more on the "
        "outer screen; design the drainage for the full head"};
    (void)out;
    *n = COUNT(notes);
    return notes;
}

const struct gw_calc_kind gw_kind_equalization = {
    .name = "equalization",
    .help = "steady share of the pressure on the outer screen of a vented cavity",
    .example = "vent_to_leak=5 pressure='30 psf'",
    .input = &EQUALIZATION_CASE_RECORD,
    .output = &EQUALIZATION_ANSWER_RECORD,
    .run = run_equalization,
    .notes = equalization_notes};

/* Leakage --------------------------------------------------------------------------------------------------------- */

struct leakage_case {
    double leakage, at, to, exponent, limit;
};
struct leakage_answer {
    double estimate, field_limit;
    enum gw_air_evidence evidence;
    const char *shows;
};
static const struct gw_field LEAKAGE_CASE[] = {
    NUM(leakage_case, leakage, GW_LEAKAGE, .flags = GW_REQUIRED, LIMITS(1e-9, 1), .help = "measured"),
    NUM(leakage_case, at, GW_PRESSURE, .flags = GW_REQUIRED, LIMITS(1, 1e5), .help = "at this pressure"),
    NUM(leakage_case, to, GW_PRESSURE, .flags = GW_REQUIRED, LIMITS(1, 1e5), .help = "asked for at this one"),
    NUM(leakage_case, exponent, GW_RATIO, LIMITS(0.5, 1), .help = "absent: the usual one"),
    NUM(leakage_case, limit, GW_LEAKAGE, LIMITS(1e-9, 1), .help = "at `to`; absent: no verdict"),
};
static const struct gw_record LEAKAGE_CASE_RECORD = RECORD("leakage", leakage_case, LEAKAGE_CASE);
static const struct gw_field LEAKAGE_ANSWER[] = {
    OUT(leakage_answer, "estimate", estimate, GW_LEAKAGE, "at `to`, by the power law; no test result"),
    OUT(leakage_answer, "field_limit", field_limit, GW_LEAKAGE, "of the installed wall"),
    F(leakage_answer, shows, GW_T_TEXT, .help = "pass, fail or not shown"),
};
static const struct gw_record LEAKAGE_ANSWER_RECORD = RECORD("leakage result", leakage_answer, LEAKAGE_ANSWER);

static enum gw_status run_leakage(void *out, const void *in, struct gw_engine *engine)
{
    const struct leakage_case *given = in;
    struct leakage_answer *answer = out;
    const struct gw_air_claim claim = {given->leakage, given->at, given->limit, given->to};
    answer->estimate = gw_air_convert(given->leakage, given->at, given->to, given->exponent, engine);
    answer->field_limit = GW_ABSENT;
    answer->shows = NULL;
    if (!gw_given(given->limit)) return GW_OK;
    answer->field_limit = gw_field_air(given->limit, engine);
    answer->shows = gw_air_shows(NULL, &claim, engine) != GW_AIR_SHOWS ? "not shown"
                    : given->leakage > given->limit                    ? "fail"
                                                                       : "pass";
    return GW_OK;
}

const struct gw_calc_kind gw_kind_leakage = {
    .name = "leakage",
    .help = "air leakage at another pressure, and what a test shows of a limit there",
    .example = "leakage='0.06 cfm/ft2' at='1.57 psf' to='6.24 psf' limit='0.06 cfm/ft2'",
    .input = &LEAKAGE_CASE_RECORD,
    .output = &LEAKAGE_ANSWER_RECORD,
    .run = run_leakage};

/* Sequence -------------------------------------------------------------------------------------------------------- */

struct sequence_answer {
    GW_LIST(struct gw_sequence_step) steps;
    struct gw_sequence result;
};
static const struct gw_field SEQUENCE_CASE[] = {
    ASD(gw_sequence_case, "pressure_positive", positive, .flags = GW_REQUIRED, LIMITS(0, 1e6),
        .help = "design pressure inward, allowable-stress level"),
    ASD(gw_sequence_case, "pressure_negative", negative, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(0, 1e6),
        .help = "outward, magnitude"),
    NUM(gw_sequence_case, span, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 100), .help = "clear span of the member"),
    FIELD(gw_sequence_case, "basis", rule, GW_T_CHOICE, .choices = gw_water_rule_choices, .fallback = "curtain_wall",
          .help = "performance class, or curtain_wall"),
    OUT(gw_sequence_case, "water_pressure", water, GW_PRESSURE, "absent: by the rule"),
    OUT(gw_sequence_case, "air_leakage", air_leakage, GW_LEAKAGE, "limit; absent: the usual one"),
    OUT(gw_sequence_case, "air_pressure", air_at, GW_PRESSURE, "at which it holds; goes with air_leakage"),
    F(gw_sequence_case, dynamic, GW_T_BOOL, .fallback = "true", .help = "water under an air stream"),
    F(gw_sequence_case, thermal, GW_T_BOOL, .fallback = "false", .help = "thermal cycling"),
    NUM(gw_sequence_case, drift, GW_LENGTH, .help = "of the story; absent: by story_height"),
    NUM(gw_sequence_case, story_height, GW_LENGTH, LIMITS(0.1, 100), .help = "absent, and no drift: no racking"),
};
static const struct gw_record SEQUENCE_CASE_RECORD = RECORD("sequence", gw_sequence_case, SEQUENCE_CASE);
static const struct gw_field SEQUENCE_STEP[] = {
    PICK(gw_sequence_step, test, gw_sequence_test_choices, .help = "what is done"),
    F(gw_sequence_step, method, GW_T_TEXT, .help = "standard"),
    F(gw_sequence_step, again, GW_T_BOOL, .help = "a repetition after what went before"),
    NUM(gw_sequence_step, pressure, GW_PRESSURE, .help = "outward negative"),
    NUM(gw_sequence_step, hold, GW_TIME, .help = "how long"),
    NUM(gw_sequence_step, leakage, GW_LEAKAGE, .help = "at most"),
    NUM(gw_sequence_step, limit, GW_THICKNESS, .help = "at most: deflection at design, permanent set after proof"),
    NUM(gw_sequence_step, displacement, GW_THICKNESS, .help = "racking"),
};
static const struct gw_record SEQUENCE_STEP_RECORD = RECORD("step", gw_sequence_step, SEQUENCE_STEP);
static const struct gw_field SEQUENCE_ANSWER[] = {
    F(sequence_answer, steps, GW_T_RECORD, .flags = GW_MANY, .record = &SEQUENCE_STEP_RECORD, .help = "in their order"),
};
static const struct gw_record SEQUENCE_ANSWER_RECORD = RECORD("sequence result", sequence_answer, SEQUENCE_ANSWER);

static enum gw_status run_sequence(void *out, const void *in, struct gw_engine *engine)
{
    struct sequence_answer *answer = out;
    enum gw_status status = gw_test_sequence(&answer->result, in, engine);
    answer->steps.items = answer->result.steps;
    answer->steps.n = answer->result.n;
    return status;
}

const struct gw_calc_kind gw_kind_sequence = {
    .name = "sequence",
    .help = "tests of a mock-up in their order, with their pressures",
    .example = "pressure_positive='45 psf' pressure_negative='60 psf' span='12 ft 6 in' story_height='13 ft'",
    .input = &SEQUENCE_CASE_RECORD,
    .output = &SEQUENCE_ANSWER_RECORD,
    .run = run_sequence};
