/* Of 'galeward calc debris' and 'galeward calc cycles'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/model.h"

static const struct gw_field CASE[] = {
    PICK(gw_debris_case, edition, gw_debris_edition_choices, .also = gw_edition_words, .flags = GW_REQUIRED,
         .help = "edition of ASCE 7"),
    NUM(gw_debris_case, basic_wind_speed, GW_SPEED, .flags = GW_REQUIRED, LIMITS(1, 300), LIKELY(36, 100),
        .help = "from the building's own map; asce7-05: nominal, later: strength level"),
    NUM(gw_debris_case, region_wind_speed, GW_SPEED, LIMITS(1, 300),
        .help = "Risk Category III: from the Category II map, which the region goes by"),
    NUM(gw_debris_case, coast_distance, GW_LENGTH, LIMITS(0, 1e7), .help = "from the coastal mean high water line"),
    PICK(gw_debris_case, risk_category, gw_risk_choices, .also = gw_risk_words, .flags = GW_REQUIRED,
         .help = "risk category"),
    F(gw_debris_case, health_care, GW_T_BOOL, .help = "Risk Category III: health care facility, with a map of its own"),
    NUM(gw_debris_case, height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0, 1000),
        .help = "lowest edge of the glazing above ground"),
    F(gw_debris_case, hurricane_prone, GW_T_BOOL, .help = "absent: taken as true, with a note"),
    F(gw_debris_case, exposure_d_at_shore, GW_T_BOOL,
      .help = "asce7-22: Exposure D upwind at the water; absent: taken as true, with a note"),
    F(gw_debris_case, high_velocity_zone, GW_T_BOOL, .fallback = "false", .help = "Florida's, with rules of its own"),
    F(gw_debris_case, hawaii, GW_T_BOOL, .fallback = "false", .help = "all of it in the region under asce7-05"),
    NUM(gw_debris_case, aggregate_roof_height, GW_LENGTH, LIMITS(0, 1000),
        .help = "highest roof with gravel within 1,500 ft; absent: none"),
};
static const struct gw_record DEBRIS_CASE_RECORD = RECORD("debris", gw_debris_case, CASE);

static const struct gw_field ANSWER[] = {
    F(gw_debris_result, region, GW_T_BOOL, .help = "in the wind-borne debris region"),
    F(gw_debris_result, required, GW_T_BOOL, .help = "protection of this glazing"),
    F(gw_debris_result, reason, GW_T_TEXT, .help = "why, or why not"),
    F(gw_debris_result, map, GW_T_TEXT, .help = "figure that the region goes by"),
    F(gw_debris_result, wind_zone, GW_T_INTEGER, .help = "of the impact standard; null: none"),
    PICK(gw_debris_result, protection, gw_protection_choices, .help = "null: high-velocity hurricane zone"),
    PICK(gw_debris_result, missile, gw_missile_choices, .help = "level"),
    PICK(gw_debris_result, size, gw_missile_size_choices, .help = "small: balls; large: lumber"),
    F(gw_debris_result, description, GW_T_TEXT, .help = "of the missile"),
    F(gw_debris_result, impacts, GW_T_INTEGER, .help = "of a large missile, on each specimen"),
    OUT(gw_debris_result, "missile_mass", mass, GW_MASS, "of one ball, or the lumber"),
    OUT(gw_debris_result, "missile_speed", speed, GW_VELOCITY, "at the glazing"),
    OUT(gw_debris_result, "missile_momentum", momentum, GW_MOMENTUM, "of one ball, or the lumber"),
    OUT(gw_debris_result, "missile_energy", energy, GW_ENERGY, "of one ball, or the lumber"),
};
static const struct gw_record DEBRIS_ANSWER_RECORD = RECORD("debris result", gw_debris_result, ANSWER);

static enum gw_status run_debris(void *out, const void *in, struct gw_engine *engine)
{
    return gw_debris(out, in, engine);
}

static const char *const *debris_notes(const void *out, size_t *n)
{
    const struct gw_debris_result *result = out;
    *n = result->n_notes;
    return result->notes;
}

const struct gw_calc_kind gw_kind_debris = {
    .name = "debris",
    .help = "wind-borne debris: is protection required, which wind zone, which missile",
    .example = "edition=asce7-16 basic_wind_speed='145 mph' coast_distance='0.5 mi' risk_category=II height='12 ft' "
               "hurricane_prone=true",
    .input = &DEBRIS_CASE_RECORD,
    .output = &DEBRIS_ANSWER_RECORD,
    .run = run_debris,
    .notes = debris_notes};

/* Cycles ---------------------------------------------------------------------------------------------------------- */

struct cycles_case {
    double pressure_positive, pressure_negative;
    enum gw_cycle_schedule schedule;
};
struct cycles_answer {
    GW_LIST(struct gw_cycle_step) steps;
    int total;
    struct gw_cycles result;
    const char *notes[1];
    size_t n_notes;
};
static const struct gw_field CYCLES_CASE[] = {
    NUM(cycles_case, pressure_positive, GW_PRESSURE, .flags = GW_REQUIRED, LIMITS(0, 1e6),
        .help = "design pressure inward, allowable-stress level"),
    NUM(cycles_case, pressure_negative, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(0, 1e6),
        .help = "outward, magnitude"),
    PICK(cycles_case, schedule, gw_cycle_schedule_choices, .fallback = "impact", .help = "impact or fatigue"),
};
static const struct gw_record CYCLES_CASE_RECORD = RECORD("cycles", cycles_case, CYCLES_CASE);
static const struct gw_field STEP[] = {
    PICK(gw_cycle_step, direction, gw_cycle_direction_choices, .help = "null: the schedule does not say"),
    NUM(gw_cycle_step, low, GW_PRESSURE, .help = "magnitude"),
    NUM(gw_cycle_step, high, GW_PRESSURE, .help = "magnitude"),
    F(gw_cycle_step, cycles, GW_T_INTEGER, .help = "how often"),
};
static const struct gw_record STEP_RECORD = RECORD("step", gw_cycle_step, STEP);
static const struct gw_field CYCLES_ANSWER[] = {
    F(cycles_answer, steps, GW_T_RECORD, .flags = GW_MANY, .record = &STEP_RECORD, .help = "in their order"),
    F(cycles_answer, total, GW_T_INTEGER, .help = "cycles in all"),
};
static const struct gw_record CYCLES_ANSWER_RECORD = RECORD("cycles result", cycles_answer, CYCLES_ANSWER);

static enum gw_status run_cycles(void *out, const void *in, struct gw_engine *engine)
{
    const struct cycles_case *given = in;
    struct cycles_answer *answer = out;
    enum gw_status status = gw_debris_cycles(&answer->result, (struct gw_asd){given->pressure_positive},
                                             (struct gw_asd){given->pressure_negative}, given->schedule, engine);
    answer->steps.items = answer->result.steps;
    answer->steps.n = answer->result.n;
    answer->total = answer->result.total;
    answer->n_notes = given->schedule == GW_CYCLES_FATIGUE ? 1 : 0;
    answer->notes[0] =
        "the fatigue schedule of cladding shows no impact rating; its directions are not recalled, so the "
        "larger pressure is taken";
    return status;
}

static const char *const *cycles_notes(const void *out, size_t *n)
{
    const struct cycles_answer *answer = out;
    *n = answer->n_notes;
    return answer->notes;
}

const struct gw_calc_kind gw_kind_cycles = {.name = "cycles",
                                            .help = "pressure cycles after an impact test",
                                            .example = "pressure_positive='45 psf' pressure_negative='60 psf'",
                                            .input = &CYCLES_CASE_RECORD,
                                            .output = &CYCLES_ANSWER_RECORD,
                                            .run = run_cycles,
                                            .notes = cycles_notes};
