/* Of 'galeward calc': anchor, silicone, sealant_joint. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/anchor.h"
#include "galeward/fastener.h"
#include "galeward/model.h"
#include "galeward/movement.h"
#include "galeward/silicone.h"

/* anchor */

static const char NOTE_SHEAR[] = "the utilization is not shown: the bolts carry the weight in shear, give "
                                 "bolt_shear_capacity";
static const char NOTE_PRYING[] = "bolt tension before prying";
static const char NOTE_ALONG[] =
    "seismic force out of the plane; the same force along the slab edge, one direction at a "
    "time, shears the bolts of the anchors that carry the weight and is not in here";
static const char NOTE_VERTICAL[] = "no seismic_vertical given: dead load and shear of the bolts are too low by it";

struct anchor_case {
    enum gw_carries carries;
    double pressure_in, pressure_out, wall_weight, spacing, tributary_height, eccentricity, bolt_arm, prying, clip_arm;
    int bolts;
    enum gw_level level;
    enum gw_design design;
    double seismic_body, seismic_fasteners, seismic_vertical, bolt_tension_capacity, bolt_shear_capacity;
    double bolt_diameter, movement, erection_tolerance;
};
enum { ANCHOR_NOTES = 4 };
struct anchor_answer {
    struct gw_anchor_reactions plain;
    struct gw_anchor_combined combined;
    GW_LIST(struct gw_anchor_combination) combinations;
    const char *governing;
    double slot, interaction, utilization;
    const char *notes[ANCHOR_NOTES];
    unsigned n_notes;
};

static const struct gw_choice CARRIES[] = {
    {"dead_and_wind", GW_CARRIES_DEAD_AND_WIND, "fixed"}, {"wind", GW_CARRIES_WIND, "slotted, free up and down"}, {0}};
static const struct gw_choice LEVELS[] = {{"strength", GW_LEVEL_STRENGTH, ""}, {"asd", GW_LEVEL_ASD, ""}, {0}};

static const struct gw_field ANCHOR[] = {
    PICK(anchor_case, carries, CARRIES, .help = "dead_and_wind or wind; absent: both"),
    NUM(anchor_case, pressure_in, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, PRESSURE_RANGE, .help = "inward"),
    NUM(anchor_case, pressure_out, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, PRESSURE_RANGE,
        .help = "outward, a magnitude"),
    NUM(anchor_case, wall_weight, GW_PRESSURE, .flags = GW_REQUIRED, LIMITS(0, 1e5), LIKELY(100, 2000),
        .help = "per area of wall"),
    NUM(anchor_case, spacing, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 50), .help = "of the anchors"),
    NUM(anchor_case, tributary_height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 100),
        .help = "half the spans above and below"),
    NUM(anchor_case, eccentricity, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(-5, 5),
        .help = "of the weight, outside of the bearing; 0: none"),
    NUM(anchor_case, bolt_arm, GW_THICKNESS, LIMITS(0.001, 5), .help = "lever arm of the bolts against the weight"),
    F(anchor_case, bolts, GW_T_INTEGER, .flags = GW_REQUIRED, LIMITS(1, 64), .help = "of one anchor"),
    NUM(anchor_case, prying, GW_RATIO, LIMITS(0.01, 10), .help = "bolt pull over that without prying; absent: 1"),
    NUM(anchor_case, clip_arm, GW_THICKNESS, LIMITS(0.001, 5), .help = "from the bolts to the bend of a clip"),
    PICK(anchor_case, design, gw_design_choices, .help = "asd or lrfd; absent: no combinations"),
    PICK(anchor_case, level, LEVELS, .also = gw_level_words,
         .help = "of the pressures, goes with design: strength or asd"),
    NUM(anchor_case, seismic_body, GW_FORCE, .flags = GW_MAGNITUDE, LIMITS(0, 1e7),
        .help = "of the connection's body, out of the plane, strength level"),
    NUM(anchor_case, seismic_fasteners, GW_FORCE, .flags = GW_MAGNITUDE, LIMITS(0, 1e7),
        .help = "of its fasteners: a higher force of their own"),
    NUM(anchor_case, seismic_vertical, GW_FORCE, .flags = GW_MAGNITUDE, LIMITS(0, 1e7),
        .help = "up or down with them, strength level"),
    NUM(anchor_case, bolt_tension_capacity, GW_FORCE, LIMITS(1, 1e8), .help = "each, of the design's kind"),
    NUM(anchor_case, bolt_shear_capacity, GW_FORCE, LIMITS(1, 1e8), .help = "each, of the design's kind"),
    NUM(anchor_case, bolt_diameter, GW_THICKNESS, LIMITS(0.001, 0.1), .help = "with movement: the slot"),
    NUM(anchor_case, movement, GW_THICKNESS, LIMITS(0, 1), .help = "one way"),
    NUM(anchor_case, erection_tolerance, GW_THICKNESS, LIMITS(0, 1), .help = "one way"),
};
static const struct gw_record ANCHOR_CASE_RECORD = RECORD("anchor", anchor_case, ANCHOR);

#define K(key_, member_, dim_, help_) OUT(gw_anchor_combination, key_, member_, dim_, help_)
static const struct gw_field COMBINATION[] = {
    OUT_TEXT(gw_anchor_combination, "name", name, ""),
    K("in", in, GW_FORCE, "toward the structure"),
    K("out", out, GW_FORCE, ""),
    K("dead", dead, GW_FORCE, ""),
    K("bolt_tension", bolt_tension, GW_FORCE, "each"),
    K("bolt_shear", bolt_shear, GW_FORCE, "each"),
};
static const struct gw_record COMBINATION_RECORD = RECORD("combination", gw_anchor_combination, COMBINATION);
#define A(key_, member_, dim_, help_) OUT(anchor_answer, key_, member_, dim_, help_)
static const struct gw_field ANCHOR_ANSWER[] = {
    A("reaction_in", plain.in, GW_FORCE, "of the pressures as given"),
    A("reaction_out", plain.out, GW_FORCE, ""),
    A("dead", plain.dead, GW_FORCE, "0 for a wind anchor"),
    A("dead_moment", plain.dead_moment, GW_MOMENT, ""),
    A("bolt_tension", plain.bolt_tension, GW_FORCE, "each, outward with the couple of the weight"),
    A("bolt_shear", plain.bolt_shear, GW_FORCE, "each"),
    A("clip_moment", plain.clip_moment, GW_MOMENT, ""),
    OUT_PARTS(anchor_answer, "combinations", combinations, &COMBINATION_RECORD, "with a design"),
    A("combined_in", combined.in, GW_FORCE, "largest of the combinations"),
    A("combined_out", combined.out, GW_FORCE, ""),
    A("combined_dead", combined.dead, GW_FORCE, ""),
    A("combined_bolt_tension", combined.bolt_tension, GW_FORCE, ""),
    A("combined_bolt_shear", combined.bolt_shear, GW_FORCE, ""),
    OUT_TEXT(anchor_answer, "governing", governing, "combination of the largest bolt tension"),
    A("slot_length", slot, GW_THICKNESS, "bolt + 2 (movement + tolerance)"),
    A("interaction", interaction, GW_RATIO, "(T/Ta)^2 + (V/Va)^2 of a bolt, worst combination"),
    A("utilisation", utilization, GW_RATIO, "of a bolt: root of the interaction"),
};
static const struct gw_record ANCHOR_ANSWER_RECORD = RECORD("anchor result", anchor_answer, ANCHOR_ANSWER);

static struct gw_anchor_case anchor_of(const struct anchor_case *given)
{
    return (struct gw_anchor_case){.carries = given->carries,
                                   .pressure_in = given->pressure_in,
                                   .pressure_out = given->pressure_out,
                                   .wall_weight = given->wall_weight,
                                   .spacing = given->spacing,
                                   .tributary_height = given->tributary_height,
                                   .eccentricity = given->eccentricity,
                                   .bolt_arm = given->bolt_arm,
                                   .bolts = given->bolts,
                                   .prying = given->prying,
                                   .clip_arm = given->clip_arm};
}

static struct gw_strength at_strength(double pressure, enum gw_level level, struct gw_engine *engine)
{
    if (level == GW_LEVEL_STRENGTH) return (struct gw_strength){pressure};
    return gw_to_strength((struct gw_asd){pressure}, engine);
}

static enum gw_status combine(struct anchor_answer *answer, const struct anchor_case *given,
                              const struct gw_anchor_case *anchor, struct gw_engine *engine)
{
    if (given->design == GW_DESIGN_UNSET) {
        if (!gw_given(given->seismic_body) && !gw_given(given->seismic_fasteners) && !gw_given(given->seismic_vertical))
            return GW_OK;
        return gw_refuse(engine, GW_MISSING, "design", "seismic forces come in with the combinations of a design");
    }
    if (given->level == GW_LEVEL_UNSET)
        return gw_refuse(engine, GW_MISSING, "level", "combinations want the level of the pressures: strength or asd");
    const struct gw_anchor_loads loads = {.in = at_strength(given->pressure_in, given->level, engine),
                                          .out = at_strength(given->pressure_out, given->level, engine),
                                          .seismic_body = given->seismic_body,
                                          .seismic_fasteners = given->seismic_fasteners,
                                          .seismic_vertical = given->seismic_vertical};
    enum gw_status status = gw_anchor_combine(&answer->combined, anchor, &loads, given->design, engine);
    if (status) return status;
    answer->combinations.items = answer->combined.each;
    answer->combinations.n = answer->combined.n;
    answer->governing = answer->combined.each[answer->combined.worst].name;
    return GW_OK;
}

static void use_bolt(struct anchor_answer *answer, double tension, double shear, const struct anchor_case *given,
                     struct gw_engine *engine)
{
    /* No shear where the capacity in shear is not given: compare() asks for it otherwise. */
    const double sum =
        gw_given(given->bolt_shear_capacity)
            ? gw_fastener_interaction(tension, given->bolt_tension_capacity, shear, given->bolt_shear_capacity, engine)
            : pow(tension / given->bolt_tension_capacity, 2);
    if (gw_given(answer->interaction) && sum <= answer->interaction) return;
    answer->interaction = sum;
    answer->utilization = sqrt(sum);
}

static void compare(struct anchor_answer *answer, const struct anchor_case *given, struct gw_engine *engine)
{
    if (!gw_given(given->bolt_tension_capacity)) return;
    if (answer->plain.bolt_shear > 0 && !gw_given(given->bolt_shear_capacity)) {
        answer->notes[answer->n_notes++] = NOTE_SHEAR;
        return;
    }
    if (!answer->combinations.n) use_bolt(answer, answer->plain.bolt_tension, answer->plain.bolt_shear, given, engine);
    for (size_t i = 0; i < answer->combinations.n; i++)
        use_bolt(answer, answer->combined.each[i].bolt_tension, answer->combined.each[i].bolt_shear, given, engine);
}

static enum gw_status find_slot(struct anchor_answer *answer, const struct anchor_case *given, struct gw_engine *engine)
{
    const int n = gw_given(given->bolt_diameter) + gw_given(given->movement) + gw_given(given->erection_tolerance);
    if (!n) return GW_OK;
    if (n < 3)
        return gw_refuse(engine, GW_MISSING, "movement", "a slot wants bolt_diameter, movement and erection_tolerance");
    return gw_anchor_slot(&answer->slot, given->bolt_diameter, given->movement, given->erection_tolerance, engine);
}

static enum gw_status run_anchor(void *out, const void *in, struct gw_engine *engine)
{
    const struct anchor_case *given = in;
    struct anchor_answer *answer = out;
    const struct gw_anchor_case anchor = anchor_of(given);
    *answer = (struct anchor_answer){.slot = GW_ABSENT, .interaction = GW_ABSENT, .utilization = GW_ABSENT};
    answer->combined.in = answer->combined.out = answer->combined.dead = GW_ABSENT;
    answer->combined.bolt_tension = answer->combined.bolt_shear = GW_ABSENT;
    enum gw_status status = gw_anchor_reactions(&answer->plain, &anchor, engine);
    if (!status) status = combine(answer, given, &anchor, engine);
    if (!status) status = find_slot(answer, given, engine);
    if (status) return status;
    if (gw_given(given->seismic_body) && anchor.carries != GW_CARRIES_WIND) {
        answer->notes[answer->n_notes++] = NOTE_ALONG;
        if (!gw_given(given->seismic_vertical)) answer->notes[answer->n_notes++] = NOTE_VERTICAL;
    }
    if (!gw_given(given->prying)) answer->notes[answer->n_notes++] = NOTE_PRYING;
    compare(answer, given, engine);
    return GW_OK;
}

static const char *const *anchor_notes(const void *out, size_t *n)
{
    const struct anchor_answer *answer = out;
    *n = answer->n_notes;
    return answer->notes;
}

const struct gw_calc_kind gw_kind_anchor = {
    .name = "anchor",
    .help = "anchor of a vertical: reactions, bolts, load combinations",
    .example =
        "pressure_in='30 psf' pressure_out='42 psf' wall_weight='10 psf' spacing='5 ft' tributary_height='13 ft' "
        "eccentricity='4 in' bolt_arm='5 in' bolts=1",
    .input = &ANCHOR_CASE_RECORD,
    .output = &ANCHOR_ANSWER_RECORD,
    .run = run_anchor,
    .notes = anchor_notes};

/* silicone */

static const struct gw_field SILICONE[] = {
    NUM(gw_silicone_case, width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "of the largest lite"),
    NUM(gw_silicone_case, height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = ""),
    NUM(gw_silicone_case, pressure, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, PRESSURE_RANGE,
        .help = "suction, allowable-stress level"),
    NUM(gw_silicone_case, allowable, GW_STRESS, LIMITS(1e3, 1e6), .help = "under wind; absent: 20 psi"),
    NUM(gw_silicone_case, weight, GW_FORCE, LIMITS(0, 1e6), .help = "that the bead carries; absent: on setting blocks"),
    NUM(gw_silicone_case, dead_allowable, GW_STRESS, LIMITS(100, 1e6), .help = "in shear; absent: 1 psi"),
    NUM(gw_silicone_case, movement, GW_THICKNESS, .flags = GW_MAGNITUDE, LIMITS(0, 0.1),
        .help = "differential, along the bead; absent: none"),
    NUM(gw_silicone_case, strain, GW_RATIO, LIMITS(0.001, 5),
        .help = "of the sealant at allowable; goes with movement"),
    NUM(gw_silicone_case, bite, GW_THICKNESS, LIMITS(0.001, 0.2), .help = "as offered; absent: as designed"),
    NUM(gw_silicone_case, thickness, GW_THICKNESS, LIMITS(0.001, 0.1), .help = "as offered; absent: as designed"),
};
static const struct gw_record SILICONE_CASE_RECORD = RECORD("silicone", gw_silicone_case, SILICONE);

struct silicone_answer {
    struct gw_silicone_result result;
    double suction;
};
#define L(key_, member_, dim_, help_) OUT(silicone_answer, key_, result.member_, dim_, help_)
static const struct gw_field SILICONE_ANSWER[] = {
    L("bite_wind", bite_wind, GW_THICKNESS, "needed, not rounded"),
    L("bite_dead", bite_dead, GW_THICKNESS, "needed, not rounded"),
    L("thickness_movement", thickness_movement, GW_THICKNESS, "needed, not rounded"),
    L("bite", bite, GW_THICKNESS, "designed, rounded up to 1/8 in"),
    L("thickness", thickness, GW_THICKNESS, "designed, rounded up to 1/16 in"),
    L("aspect", aspect, GW_RATIO, "bite over thickness, 1 to 3"),
    L("stress_wind", stress_wind, GW_STRESS, "of the bead offered, else designed"),
    L("stress_dead", stress_dead, GW_STRESS, ""),
    L("strain", strain, GW_RATIO, "of the diagonal"),
    L("utilisation", utilization, GW_RATIO, ""),
    OUT_YES_NO(silicone_answer, "fits", result.fits, "within the proportions"),
    OUT_TEXT(silicone_answer, "governing", result.governing, "wind, dead or movement"),
    OUT(silicone_answer, "suction", suction, GW_PRESSURE, "that the bite offered takes; absent without one"),
};
static const struct gw_record SILICONE_ANSWER_RECORD = RECORD("silicone result", silicone_answer, SILICONE_ANSWER);

static enum gw_status run_silicone(void *out, const void *in, struct gw_engine *engine)
{
    const struct gw_silicone_case *given = in;
    struct silicone_answer *answer = out;
    enum gw_status status = gw_silicone(&answer->result, given, engine);
    answer->suction = GW_ABSENT;
    if (status == GW_OK && gw_given(given->bite))
        answer->suction = gw_silicone_suction(given->bite, given->allowable, given->width, given->height, engine);
    return status;
}

static const char *const *silicone_notes(const void *out, size_t *n)
{
    const struct silicone_answer *answer = out;
    *n = answer->result.n_notes;
    return answer->result.notes;
}

const struct gw_calc_kind gw_kind_silicone = {
    .name = "silicone",
    .help = "structural silicone: bite, thickness, stresses",
    .example = "width='5 ft' height='8 ft' pressure='42 psf' movement='0.1 in' strain=0.2",
    .input = &SILICONE_CASE_RECORD,
    .output = &SILICONE_ANSWER_RECORD,
    .run = run_silicone,
    .notes = silicone_notes};

/* sealant_joint */

static const struct gw_field JOINT[] = {
    NUM(gw_joint_case, movement, GW_THICKNESS, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(0, 1),
        .help = "one way from the installed width; the whole range if the set temperature is not known"),
    NUM(gw_joint_case, capability, GW_RATIO, .flags = GW_REQUIRED, LIMITS(0.01, 1), .help = "0.25 for class 25"),
    NUM(gw_joint_case, tolerance, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 1), .help = "of construction"),
    NUM(gw_joint_case, slip, GW_THICKNESS, .flags = GW_MAGNITUDE, LIMITS(0, 1), .help = "along the joint"),
};
static const struct gw_record JOINT_CASE_RECORD = RECORD("sealant joint", gw_joint_case, JOINT);
static const struct gw_field JOINT_ANSWER[] = {
    OUT(gw_joint_result, "width", width, GW_THICKNESS, "not rounded"),
    OUT(gw_joint_result, "depth", depth, GW_THICKNESS, "half the width, 1/4 to 1/2 in"),
    OUT(gw_joint_result, "extension", extension, GW_THICKNESS, "of the sealant by the slip"),
};
static const struct gw_record JOINT_ANSWER_RECORD = RECORD("sealant joint result", gw_joint_result, JOINT_ANSWER);

static enum gw_status run_joint(void *out, const void *in, struct gw_engine *engine)
{
    return gw_sealant_joint(out, in, engine);
}

const struct gw_calc_kind gw_kind_sealant_joint = {.name = "sealant_joint",
                                                   .help = "width of a sealant joint that moves",
                                                   .example = "movement='1/4 in' capability=0.25 tolerance='1/8 in'",
                                                   .input = &JOINT_CASE_RECORD,
                                                   .output = &JOINT_ANSWER_RECORD,
                                                   .run = run_joint};
