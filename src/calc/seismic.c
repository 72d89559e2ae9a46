/* Of 'galeward calc seismic_force', 'story_drift', 'clearance', 'silicone_racking'. */
#include "kinds.h"

#include "base/fields.h"
#include "base/tolerance.h"

#include "galeward/model.h"

/* Force --------------------------------------------------------------------------------------------------------------
 */

static const struct gw_choice PARTS[] = {{"wall_element", GW_PART_WALL_ELEMENT, ""},
                                         {"connection_body", GW_PART_CONNECTION_BODY, "of wall panel connections"},
                                         {"fasteners", GW_PART_FASTENERS, "of the connecting system"},
                                         {0}};

static const struct gw_field FORCE[] = {
    PICK(gw_seismic_force_case, edition, gw_edition_choices, .also = gw_edition_words, .flags = GW_REQUIRED,
         .help = "edition of ASCE 7"),
    NUM(gw_seismic_force_case, sds, GW_RATIO, .flags = GW_REQUIRED, LIMITS(0.001, 5), .help = "S_DS of the site"),
    NUM(gw_seismic_force_case, weight, GW_FORCE, .flags = GW_REQUIRED, LIMITS(1e-6, 1e9),
        .help = "W_p, a force: what the part or connection holds"),
    NUM(gw_seismic_force_case, height_ratio, GW_RATIO, .flags = GW_REQUIRED, LIMITS(0, 10),
        .help = "z/h of the attachment; 0: at or below grade; above 1 counts as 1"),
    NUM(gw_seismic_force_case, importance, GW_RATIO, .flags = GW_REQUIRED, LIMITS(1, 1.5),
        .help = "I_p, of the component"),
    PICK(gw_seismic_force_case, part, PARTS, .help = "whose coefficients stand in for those not given"),
    NUM(gw_seismic_force_case, ap, GW_RATIO, LIMITS(0.1, 10), .help = "7-10, 7-16; absent: by part"),
    NUM(gw_seismic_force_case, rp, GW_RATIO, LIMITS(0.1, 20), .help = "7-10, 7-16; absent: by part"),
    NUM(gw_seismic_force_case, car, GW_RATIO, LIMITS(0.1, 10), .help = "C_AR, 7-22; absent: by part, second-hand"),
    NUM(gw_seismic_force_case, rpo, GW_RATIO, LIMITS(0.1, 20), .help = "R_po, 7-22; absent: by part, second-hand"),
    NUM(gw_seismic_force_case, period, GW_TIME, LIMITS(0.01, 30),
        .help = "T_a of the structure, 7-22; absent: unknown"),
    NUM(gw_seismic_force_case, response_modification, GW_RATIO, LIMITS(0.1, 20),
        .help = "R of the structure, 7-22; absent: unknown"),
    NUM(gw_seismic_force_case, overstrength, GW_RATIO, LIMITS(0.1, 10), .help = "Omega_0, with R"),
    NUM(gw_seismic_force_case, structure_importance, GW_RATIO, LIMITS(1, 1.5), .help = "I_e, with R"),
};
static const struct gw_record SEISMIC_FORCE_RECORD = RECORD("seismic_force", gw_seismic_force_case, FORCE);

static const struct gw_field FORCE_OUT[] = {
    OUT(gw_seismic_force_result, "force", force, GW_FORCE, "F_p, horizontal: in plane or out of plane"),
    OUT(gw_seismic_force_result, "minimum", minimum, GW_FORCE, "least F_p"),
    OUT(gw_seismic_force_result, "maximum", maximum, GW_FORCE, "F_p need not exceed it"),
    OUT(gw_seismic_force_result, "computed", computed, GW_FORCE, "before the two limits"),
    OUT(gw_seismic_force_result, "vertical", vertical, GW_FORCE, "with F_p, up or down"),
    OUT(gw_seismic_force_result, "hf", hf, GW_RATIO, "7-22"),
    OUT(gw_seismic_force_result, "rmu", rmu, GW_RATIO, "7-22"),
    OUT(gw_seismic_force_result, "ap", ap, GW_RATIO, "used"),
    OUT(gw_seismic_force_result, "rp", rp, GW_RATIO, "used"),
    OUT(gw_seismic_force_result, "car", car, GW_RATIO, "used"),
    OUT(gw_seismic_force_result, "rpo", rpo, GW_RATIO, "used"),
    OUT_TEXT(gw_seismic_force_result, "governs", governs, "formula, minimum or maximum"),
};
static const struct gw_record SEISMIC_FORCE_ANSWER_RECORD =
    RECORD("seismic_force result", gw_seismic_force_result, FORCE_OUT);

static enum gw_status run_seismic_force(void *out, const void *in, struct gw_engine *engine)
{
    return gw_seismic_force(out, in, engine);
}

static const char *const *give_notes(const struct gw_seismic_notes *notes, size_t *n)
{
    *n = notes->n;
    return notes->items;
}

static const char *const *seismic_force_notes(const void *out, size_t *n)
{
    return give_notes(&((const struct gw_seismic_force_result *)out)->notes, n);
}

const struct gw_calc_kind gw_kind_seismic_force = {
    .name = "seismic_force",
    .help = "force of an earthquake on a wall, its connections or their fasteners, ASCE 7-10, 7-16 or 7-22",
    .example = "edition=asce7-16 sds=1.0 weight='650 lb' height_ratio=1 importance=1 part=fasteners",
    .input = &SEISMIC_FORCE_RECORD,
    .output = &SEISMIC_FORCE_ANSWER_RECORD,
    .run = run_seismic_force,
    .notes = seismic_force_notes};

/* Story drift --------------------------------------------------------------------------------------------------------
 */

struct drift_case {
    double drift_ratio, drift, drift_with_importance, importance;
    enum gw_risk risk_category;
    enum gw_drift_structure structure;
    double story_height, redundancy;
    enum gw_drift_path distribution;
    double frame_height, slip, unit_width, fallout_tested;
};
struct drift_answer {
    struct gw_drift_result story;
    struct gw_lite_drift_result lite; /* by D_p */
    double in_lite_with_importance, slip_with_importance, lift_with_importance;
    struct gw_fallout_result fallout;
    struct gw_seismic_notes notes;
};

static const struct gw_field DRIFT[] = {
    NUM(drift_case, drift, GW_THICKNESS, LIMITS(0, 5), .help = "D_p between two floors, without I_e"),
    NUM(drift_case, drift_ratio, GW_RATIO, LIMITS(0, 0.1), .help = "D_p over story_height, in place of drift"),
    NUM(drift_case, drift_with_importance, GW_THICKNESS, LIMITS(0, 5), .help = "D_pI, in place of drift"),
    NUM(drift_case, importance, GW_RATIO, LIMITS(1, 1.5), .help = "I_e; absent: by risk_category"),
    PICK(drift_case, risk_category, gw_risk_choices, .also = gw_risk_words, .help = "for I_e and the allowable drift"),
    PICK(drift_case, structure, gw_drift_structure_choices, .help = "without a drift: whose allowable one is taken"),
    NUM(drift_case, story_height, GW_LENGTH, LIMITS(0.1, 50), .help = "between the floors"),
    NUM(drift_case, redundancy, GW_RATIO, LIMITS(1, 2),
        .help = "rho of a moment frame in category D to F: divides the allowable drift"),
    PICK(drift_case, distribution, gw_drift_path_choices,
         .help = "how the wall takes the drift; absent: nothing about the lite"),
    NUM(drift_case, frame_height, GW_LENGTH, LIMITS(0.01, 50), .help = "frame opening; racking, sliding_head"),
    NUM(drift_case, slip, GW_THICKNESS, LIMITS(0, 5), .help = "that the head can slide each way; sliding_head"),
    NUM(drift_case, unit_width, GW_LENGTH, LIMITS(0.01, 50), .help = "of a unit; tilting"),
    NUM(drift_case, fallout_tested, GW_THICKNESS, LIMITS(0, 5),
        .help = "fallout drift of the glass by test or analysis"),
};
static const struct gw_record STORY_DRIFT_RECORD = RECORD("story_drift", drift_case, DRIFT);

static const struct gw_field DRIFT_OUT[] = {
    OUT(drift_answer, "drift", story.drift, GW_THICKNESS, "D_p"),
    OUT(drift_answer, "importance", story.importance, GW_RATIO, "I_e"),
    OUT(drift_answer, "drift_with_importance", story.drift_with_importance, GW_THICKNESS, "D_pI"),
    OUT(drift_answer, "allowable_ratio", story.allowable, GW_RATIO, "of the story's height"),
    OUT(drift_answer, "connection", story.connection, GW_THICKNESS, "that connections and joints must allow"),
    OUT(drift_answer, "drift_in_lite", lite.in_lite, GW_THICKNESS, "of D_p"),
    OUT(drift_answer, "drift_in_lite_with_importance", in_lite_with_importance, GW_THICKNESS, "of D_pI"),
    OUT(drift_answer, "slip", slip_with_importance, GW_THICKNESS, "at head or stack joint under D_pI"),
    OUT(drift_answer, "lift", lift_with_importance, GW_THICKNESS,
        "of a tilting unit under D_pI; as much slips along each vertical joint"),
    OUT(drift_answer, "fallout_required", fallout.required, GW_THICKNESS, "least fallout drift of the glass"),
    OUT_YES_NO(drift_answer, "passes", fallout.passes, "fallout_tested reaches it"),
};
static const struct gw_record STORY_DRIFT_ANSWER_RECORD = RECORD("story_drift result", drift_answer, DRIFT_OUT);

static void join_notes(struct gw_seismic_notes *notes, const struct gw_seismic_notes *more)
{
    for (unsigned i = 0; i < more->n && notes->n < GW_SEISMIC_NOTES; i++) notes->items[notes->n++] = more->items[i];
}

static struct gw_lite_drift_case lite_of(const struct drift_case *given, double drift)
{
    return (struct gw_lite_drift_case){.path = given->distribution,
                                       .drift = drift,
                                       .story_height = given->story_height,
                                       .frame_height = given->frame_height,
                                       .slip = given->slip,
                                       .unit_width = given->unit_width};
}

/* Both drifts go through the wall by themselves: a head that slides takes the same length from either. */
static enum gw_status share_drift(struct drift_answer *answer, const struct drift_case *given, struct gw_engine *engine)
{
    struct gw_lite_drift_result with;
    const struct gw_lite_drift_case plain = lite_of(given, answer->story.drift),
                                    counted = lite_of(given, answer->story.drift_with_importance);
    enum gw_status status = gw_lite_drift(&answer->lite, &plain, engine);
    if (!status) status = gw_lite_drift(&with, &counted, engine);
    if (status) return status;
    answer->in_lite_with_importance = with.in_lite;
    answer->slip_with_importance = with.slip;
    answer->lift_with_importance = with.lift;
    join_notes(&answer->notes, &with.notes);
    return gw_fallout(&answer->fallout, with.in_lite, given->fallout_tested, engine);
}

static enum gw_status story_drift(double *out, const struct drift_case *given, struct gw_engine *engine)
{
    *out = given->drift;
    if (!gw_given(given->drift_ratio)) return GW_OK;
    if (gw_given(given->drift) || gw_given(given->drift_with_importance))
        return gw_refuse(engine, GW_BAD_VALUE, "drift_ratio", "give the drift or its ratio, not both");
    if (!gw_given(given->story_height))
        return gw_refuse(engine, GW_MISSING, "story_height", "a drift ratio wants the story's height");
    *out = gw_drift_of_ratio(given->drift_ratio, given->story_height, engine);
    return GW_OK;
}

static enum gw_status run_story_drift(void *out, const void *in, struct gw_engine *engine)
{
    const struct drift_case *given = in;
    struct drift_answer *answer = out;
    double drift;
    enum gw_status status = story_drift(&drift, given, engine);
    if (status) return status;
    const struct gw_drift_case story = {.drift = drift,
                                        .drift_with_importance = given->drift_with_importance,
                                        .importance = given->importance,
                                        .risk = given->risk_category,
                                        .structure = given->structure,
                                        .story_height = given->story_height,
                                        .redundancy = given->redundancy};
    answer->lite.in_lite = answer->in_lite_with_importance = answer->slip_with_importance = GW_ABSENT;
    answer->lift_with_importance = answer->fallout.required = GW_ABSENT;
    answer->fallout.passes = GW_UNSAID;
    status = gw_story_drift(&answer->story, &story, engine);
    answer->notes = answer->story.notes;
    if (status) return status;
    if (given->distribution != GW_PATH_UNSET) return share_drift(answer, given, engine);
    if (gw_given(given->fallout_tested))
        return gw_refuse(engine, GW_MISSING, "distribution",
                         "a fallout drift is compared with the drift in the lite: how does the wall take the story's?");
    return GW_OK;
}

static const char *const *story_drift_notes(const void *out, size_t *n)
{
    return give_notes(&((const struct drift_answer *)out)->notes, n);
}

const struct gw_calc_kind gw_kind_story_drift = {
    .name = "story_drift",
    .help = "drift of a story, what of it reaches a lite and its connections, fallout drift of the glass",
    .example = "risk_category=IV structure=other story_height='13 ft' distribution=racking frame_height='73 in'",
    .input = &STORY_DRIFT_RECORD,
    .output = &STORY_DRIFT_ANSWER_RECORD,
    .run = run_story_drift,
    .notes = story_drift_notes};

/* Clearance ----------------------------------------------------------------------------------------------------------
 */

static const struct gw_choice DISTRIBUTIONS[] = {
    {"racking", GW_PATH_RACKING, "the frame racks evenly over the story"},
    {"all_in_lite", GW_PATH_ALL_IN_LITE, "stiff bands above and below the glazed one"},
    {0}};

struct clearance_case {
    double lite_width, lite_height, side_gap, end_gap;
    double drift, importance, story_height, frame_height;
    enum gw_drift_path distribution;
    enum gw_edition edition;
};
struct clearance_answer {
    struct gw_clearance_result result;
    double drift_in_lite;
    struct gw_seismic_notes notes;
};

static const struct gw_field CLEARANCE[] = {
    NUM(clearance_case, lite_width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "of the glass"),
    NUM(clearance_case, lite_height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "of the glass"),
    NUM(clearance_case, side_gap, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 0.5),
        .help = "c_1, hard clearance, average of the two sides"),
    NUM(clearance_case, end_gap, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 0.5),
        .help = "c_2, average of head and sill (the setting block's height)"),
    NUM(clearance_case, drift, GW_THICKNESS, LIMITS(0, 5), .help = "D_p of the story, without I_e"),
    NUM(clearance_case, importance, GW_RATIO, LIMITS(1, 1.5), .help = "I_e; needed with drift"),
    NUM(clearance_case, story_height, GW_LENGTH, LIMITS(0.1, 50), .help = "racking"),
    NUM(clearance_case, frame_height, GW_LENGTH, LIMITS(0.01, 50), .help = "frame opening; racking"),
    PICK(clearance_case, distribution, DISTRIBUTIONS,
         .help = "of the drift; absent: racking where both heights are given"),
    PICK(clearance_case, edition, gw_edition_choices, .also = gw_edition_words,
         .help = "of ASCE 7, for passes; absent: both wordings only"),
};
static const struct gw_record CLEARANCE_RECORD = RECORD("clearance", clearance_case, CLEARANCE);

static const struct gw_field CLEARANCE_OUT[] = {
    OUT(clearance_answer, "clearance_drift", result.clearance, GW_THICKNESS, "D_clear"),
    OUT(clearance_answer, "drift_in_lite", drift_in_lite, GW_THICKNESS, "of D_p"),
    OUT(clearance_answer, "required_with_importance", result.required_with_importance, GW_THICKNESS, "1.25 D_pI"),
    OUT(clearance_answer, "required_without_importance", result.required_without, GW_THICKNESS, "1.25 D_p"),
    OUT_YES_NO(clearance_answer, "passes_with_importance", result.passes_with_importance, "D_clear reaches 1.25 D_pI"),
    OUT_YES_NO(clearance_answer, "passes_without_importance", result.passes_without, "D_clear reaches 1.25 D_p"),
    OUT_YES_NO(clearance_answer, "passes", result.passes, "by the wording of the edition, as recalled"),
    OUT(clearance_answer, "fallout_required", result.fallout_required, GW_THICKNESS,
        "fallout drift to be shown where the clearance is short"),
};
static const struct gw_record CLEARANCE_ANSWER_RECORD = RECORD("clearance result", clearance_answer, CLEARANCE_OUT);

static const char NOTE_RACKING[] =
    "no distribution given: the frame racks evenly over the story, which stiff bands above "
    "and below the glass would make too low";

static const char NOTE_NO_DRIFT[] = "importance, story_height, frame_height and distribution go with a drift: not used";

static enum gw_status find_drift_in_lite(struct clearance_answer *answer, const struct clearance_case *given,
                                         struct gw_engine *engine)
{
    struct gw_lite_drift_result share;
    struct gw_lite_drift_case lite = {.path = given->distribution,
                                      .drift = given->drift,
                                      .story_height = given->story_height,
                                      .frame_height = given->frame_height,
                                      .slip = GW_ABSENT,
                                      .unit_width = GW_ABSENT};
    if (!gw_given(given->drift)) {
        if (gw_given(given->importance) || gw_given(given->story_height) || gw_given(given->frame_height) ||
            given->distribution)
            answer->notes.items[answer->notes.n++] = NOTE_NO_DRIFT;
        return GW_OK;
    }
    if (lite.path == GW_PATH_UNSET) {
        lite.path = GW_PATH_RACKING;
        answer->notes.items[answer->notes.n++] = NOTE_RACKING;
    }
    if (gw_given(lite.frame_height) && lite.frame_height < given->lite_height * (1 - GW_HAIR))
        return gw_refuse(engine, GW_BAD_VALUE, "frame_height",
                         "the frame opening is lower than the lite that it holds");
    enum gw_status status = gw_lite_drift(&share, &lite, engine);
    if (!status) answer->drift_in_lite = share.in_lite;
    return status;
}

static enum gw_status run_clearance(void *out, const void *in, struct gw_engine *engine)
{
    const struct clearance_case *given = in;
    struct clearance_answer *answer = out;
    answer->drift_in_lite = GW_ABSENT;
    answer->notes.n = 0;
    enum gw_status status = find_drift_in_lite(answer, given, engine);
    if (status) return status;
    const struct gw_clearance_case glass = {.lite_width = given->lite_width,
                                            .lite_height = given->lite_height,
                                            .side_gap = given->side_gap,
                                            .end_gap = given->end_gap,
                                            .drift_in_lite = answer->drift_in_lite,
                                            .importance = given->importance,
                                            .edition = given->edition};
    status = gw_clearance(&answer->result, &glass, engine);
    join_notes(&answer->notes, &answer->result.notes);
    return status;
}

static const char *const *clearance_notes(const void *out, size_t *n)
{
    return give_notes(&((const struct clearance_answer *)out)->notes, n);
}

const struct gw_calc_kind gw_kind_clearance = {
    .name = "clearance",
    .help = "drift at which glass meets its frame, against the drift that it must stand",
    .example = "lite_width='60 in' lite_height='72 in' side_gap='3/8 in' end_gap='1/2 in' drift='1.56 in' "
               "importance=1.5 story_height='156 in' frame_height='73 in' distribution=racking",
    .input = &CLEARANCE_RECORD,
    .output = &CLEARANCE_ANSWER_RECORD,
    .run = run_clearance,
    .notes = clearance_notes};

/* Bonded lites -------------------------------------------------------------------------------------------------------
 */

static const struct gw_field RACKING[] = {
    NUM(gw_racking_case, drift_in_lite, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 5),
        .help = "over the height of the lite"),
    NUM(gw_racking_case, lite_width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20),
        .help = "between the middles of the beads"),
    NUM(gw_racking_case, lite_height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20),
        .help = "between the middles of the beads"),
    NUM(gw_racking_case, thickness, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.001, 0.1),
        .help = "of the bead, glass to frame"),
};
static const struct gw_record RACKING_RECORD = RECORD("silicone_racking", gw_racking_case, RACKING);

static const struct gw_field RACKING_OUT[] = {
    OUT(gw_racking_result, "frame_angle", frame_angle, GW_ANGLE, "drift over height"),
    OUT(gw_racking_result, "lite_rotation", lite_rotation, GW_ANGLE, "by least shear energy of the bead"),
    OUT(gw_racking_result, "slip_horizontal", slip_horizontal, GW_THICKNESS, "along head and sill"),
    OUT(gw_racking_result, "slip_vertical", slip_vertical, GW_THICKNESS, "along the sides"),
    OUT(gw_racking_result, "slip_corner", slip_corner, GW_THICKNESS, "vector sum of the two"),
    OUT(gw_racking_result, "strain_corner", strain_corner, GW_RATIO, "shear: slip_corner over thickness"),
    OUT(gw_racking_result, "extension_corner", extension_corner, GW_RATIO,
        "sqrt(thickness^2 + slip_corner^2)/thickness - 1"),
};
static const struct gw_record RACKING_ANSWER_RECORD = RECORD("silicone_racking result", gw_racking_result, RACKING_OUT);

static enum gw_status run_racking(void *out, const void *in, struct gw_engine *engine)
{
    return gw_silicone_racking(out, in, engine);
}

static const char *const *racking_notes(const void *out, size_t *n)
{
    return give_notes(&((const struct gw_racking_result *)out)->notes, n);
}

const struct gw_calc_kind gw_kind_silicone_racking = {
    .name = "silicone_racking",
    .help = "a lite bonded on four edges in a frame that racks: its turn, slips and strain of the bead",
    .example = "drift_in_lite='0.73 in' lite_width='60 in' lite_height='72 in' thickness='3/8 in'",
    .input = &RACKING_RECORD,
    .output = &RACKING_ANSWER_RECORD,
    .run = run_racking,
    .notes = racking_notes};
