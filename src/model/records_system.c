/* Field tables of the system file. */
#include "base/fields.h"

#include "galeward/model.h"

/* What is measured, hung and fastened in practice, SI: outside it a typing error is likelier. */
#define A_SPAN LIKELY(1.2, 12)
#define A_MODULE LIKELY(0.3, 4)
#define A_LITE LIKELY(0.1, 8)
#define A_DEFLECTION LIKELY(1e-4, 0.1)
#define A_TEST_PRESSURE LIKELY(200, 12000)
#define A_REACTION LIKELY(200, 200000)
#define A_CAPACITY LIKELY(100, 100000)

static const struct gw_choice SYSTEM_KINDS[] = {
    {"stick", GW_STICK, ""}, {"unitized", GW_UNITIZED, ""}, {"window_wall", GW_WINDOW_WALL, ""}, {0}};
static const struct gw_choice GLAZINGS[] = {
    {"captured", GW_CAPTURED, ""}, {"silicone", GW_SILICONE, ""}, {"mixed", GW_MIXED, ""}, {0}};

static const struct gw_choice SWAYS[] = {{"static", GW_SWAY_STATIC, "AAMA 501.4: a drift of the story, in service"},
                                         {"dynamic", GW_SWAY_DYNAMIC, "AAMA 501.6: the drift at which glass fell out"},
                                         {0}};
static const struct gw_choice EDGE_HOLDS[] = {{"plate", GW_EDGE_PLATE, "a pressure plate or bead"},
                                              {"silicone", GW_EDGE_SILICONE, "structural silicone"},
                                              {"none", GW_EDGE_FREE, "a free edge"},
                                              {0}};
static const struct gw_field TESTED_HOLD[] = {
    PICK(gw_tested_hold, all, EDGE_HOLDS, .flags = GW_HIDDEN, .help = "every edge"),
    PICK(gw_tested_hold, head, EDGE_HOLDS, .help = "how it was held"),
    PICK(gw_tested_hold, sill, EDGE_HOLDS, .help = "the same"),
    PICK(gw_tested_hold, left, EDGE_HOLDS, .help = "the same"),
    PICK(gw_tested_hold, right, EDGE_HOLDS, .help = "the same"),
};
static const struct gw_record TESTED_HOLD_RECORD = RECORD("hold", gw_tested_hold, TESTED_HOLD, .scalar_key = "all");
static const struct gw_field TESTED_LITE[] = {
    NUM(gw_tested_lite, width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.05, 100), A_LITE,
        .help = "of the lite tested"),
    NUM(gw_tested_lite, height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.05, 100), A_LITE, .help = "its height"),
    F(gw_tested_lite, layers, GW_T_RECORD, .record = &gw_layer_record, .flags = GW_MANY | GW_ORDERED,
      .help = "its make-up, from outside to inside"),
    F(gw_tested_lite, support, GW_T_INTEGER, LIMITS(1, 4), .help = "edges held; absent: four"),
    F(gw_tested_lite, hold, GW_T_RECORD, .record = &TESTED_HOLD_RECORD,
      .help = "of its edges: one word, or by edge; absent: as the system is glazed"),
    PICK(gw_tested_lite, component, gw_component_choices, .help = "absent: fixed"),
};
static const struct gw_record TESTED_LITE_RECORD = RECORD("tested lite", gw_tested_lite, TESTED_LITE);
static const struct gw_field MEASURED[] = {
    NUM(gw_measured, value, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(1e-5, 1), A_DEFLECTION, .help = "measured"),
    NUM(gw_measured, at, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(1, 1e6), A_TEST_PRESSURE,
        .help = "at this pressure"),
};
static const struct gw_record MEASURED_RECORD = RECORD("deflection", gw_measured, MEASURED);
static const struct gw_field TESTED_TRANSOM[] = {
    NUM(gw_tested_transom, span, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.05, 100), A_MODULE,
        .help = "of the transom tested"),
    NUM(gw_tested_transom, above, GW_LENGTH, LIMITS(0, 100), .help = "height of the lite above it"),
    NUM(gw_tested_transom, below, GW_LENGTH, LIMITS(0, 100), .help = "height of the lite below it"),
    F(gw_tested_transom, deflection, GW_T_RECORD, .record = &MEASURED_RECORD, .help = "of the transom under wind"),
};
static const struct gw_record TESTED_TRANSOM_RECORD = RECORD("tested transom", gw_tested_transom, TESTED_TRANSOM);
static const struct gw_field TESTED_FASTENING[] = {
    NUM(gw_tested_fastening, diameter, GW_THICKNESS, LIMITS(0.002, 0.03), .help = "of the screws tested"),
    NUM(gw_tested_fastening, spacing, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.01, 2),
        .help = "between them along the plate"),
    NUM(gw_tested_fastening, end_distance, GW_THICKNESS, LIMITS(0.005, 1), .help = "of the last one from the end"),
};
const struct gw_record gw_tested_fastening_record = RECORD("tested fastening", gw_tested_fastening, TESTED_FASTENING);
static const struct gw_choice INCLUDED[] = {
    {"anchors", GW_INCLUDES_ANCHORS, "as they hang in the building"},
    {"splice", GW_INCLUDES_SPLICE, "of mullions"},
    {"stack_joint", GW_INCLUDES_STACK_JOINT, "between units"},
    {"corner", GW_INCLUDES_CORNER, "an outside corner"},
    {"parapet", GW_INCLUDES_PARAPET, "framing above the roof"},
    {"jamb", GW_INCLUDES_JAMB, "the last half mullion of units, under half of the end bay"},
    {0}};
static const struct gw_field TESTED[] = {
    NUM(gw_tested, module, GW_LENGTH, LIMITS(0.05, 100), A_MODULE,
        .help = "width that loaded an interior mullion free between its anchors; absent: there was none"),
    NUM(gw_tested, span, GW_LENGTH, LIMITS(0.05, 100), A_SPAN, .help = "mullion span tested"),
    F(gw_tested, spans, GW_T_INTEGER, .fallback = "1", .flags = GW_SILENT, LIMITS(1, 50),
      .help = "number of spans tested"),
    NUM(gw_tested, overhang, GW_LENGTH, LIMITS(0, 100), .help = "mullion overhang tested; absent: 0"),
    F(gw_tested, lites, GW_T_RECORD, .record = &TESTED_LITE_RECORD, .flags = GW_MANY,
      .help = "every lite of the specimen; one of them alone covers a lite"),
    NUM(gw_tested, lite_width, GW_LENGTH, LIMITS(0.05, 100), A_LITE, .help = "of one lite, instead of lites"),
    NUM(gw_tested, lite_height, GW_LENGTH, LIMITS(0.05, 100), A_LITE, .help = "its height"),
    PICK(gw_tested, component, gw_component_choices, .help = "component tested"),
    F(gw_tested, make_up, GW_T_TEXT, .help = "of that lite: a lite type of the project with the same make-up"),
    F(gw_tested, layers, GW_T_RECORD, .record = &gw_layer_record, .flags = GW_MANY | GW_ORDERED,
      .help = "the make-up itself, from outside to inside"),
    NUM(gw_tested, side_gap, GW_THICKNESS, LIMITS(0, 0.1), .help = "sway: glass to metal at each side, average"),
    NUM(gw_tested, end_gap, GW_THICKNESS, LIMITS(0, 0.1), .help = "sway: glass to metal, average of head and sill"),
    NUM(gw_tested, bite, GW_THICKNESS, LIMITS(0.001, 0.2), .help = "sway: of the glass in its pocket, or of the bead"),
    NUM(gw_tested, bead_thickness, GW_THICKNESS, LIMITS(0.001, 0.1), .help = "sway: of structural silicone"),
    NUM(gw_tested, story_height, GW_LENGTH, LIMITS(0.5, 50), LIKELY(2, 10),
        .help = "sway: over which the drift was applied"),
    F(gw_tested, transom, GW_T_RECORD, .record = &TESTED_TRANSOM_RECORD, .help = "span, and the lites on both sides"),
    F(gw_tested, fastening, GW_T_RECORD, .record = &gw_tested_fastening_record, .help = "of the pressure plate"),
    NUM(gw_tested, splice_shear, GW_FORCE, .flags = GW_MAGNITUDE, LIMITS(0, 1e6),
        .help = "force across the splice in the specimen at its design pressure; absent: not recorded"),
    NUM(gw_tested, splice_at, GW_LENGTH, LIMITS(0.005, 100),
        .help = "instead of splice_shear: where that splice lay, from the anchor between two spans that is nearest"),
    F(gw_tested, reinforcement, GW_T_TEXT, .help = "of the mullion: none, or what; absent: as the system has it"),
    F(gw_tested, includes, GW_T_CHOICE, .choices = INCLUDED, .flags = GW_MANY,
      .help = "what hung in the specimen besides: a test shows none of these unsaid"),
};
#define LITE_SIZE "write lite_width and lite_height, or lites: [{width: 5 ft, height: 10 ft}]"
static const struct gw_also TESTED_OTHERS[] = {{"size", NULL, LITE_SIZE, GW_NOTE},
                                               {"width", NULL, LITE_SIZE, GW_NOTE},
                                               {"height", NULL, LITE_SIZE, GW_NOTE},
                                               {"specimen", NULL, LITE_SIZE, GW_NOTE},
                                               {0}};
const struct gw_record gw_tested_record =
    RECORD("tested", gw_tested, TESTED, .others = TESTED_OTHERS, .example = "{lite_width: 5 ft, lite_height: 10 ft}");

bool gw_same_specimen(const struct gw_tested *a, const struct gw_tested *b)
{
    return !a || !b || gw_record_alike(&gw_tested_record, a, b);
}

static const struct gw_field BOTH_WAYS[] = {
    NUM(gw_both_ways, positive, GW_PRESSURE, .flags = GW_MAGNITUDE | GW_NO_MINUS, LIMITS(0, 1e6), A_TEST_PRESSURE,
        .help = "inward"),
    NUM(gw_both_ways, negative, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e6), A_TEST_PRESSURE,
        .help = "outward, magnitude"),
};
static const struct gw_record BOTH_WAYS_RECORD = RECORD("pressures", gw_both_ways, BOTH_WAYS);
static const struct gw_field RATING[] = {
    PICK(gw_rating, test, gw_test_choices, .help = "which test; absent: a rating by its name"),
    F(gw_rating, name, GW_T_TEXT, .help = "name of a rating with test other"),
    NUM(gw_rating, positive, GW_PRESSURE, .flags = GW_MAGNITUDE | GW_NO_MINUS, LIMITS(0, 1e6), LIKELY(200, 12000),
        .help = "inward design pressure, allowable-stress level"),
    NUM(gw_rating, negative, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e6), LIKELY(200, 12000),
        .help = "outward design pressure, magnitude"),
    F(gw_rating, held, GW_T_RECORD, .record = &BOTH_WAYS_RECORD,
      .help = "structural: greatest pressures held; design pressures are proved at 1.5 times"),
    F(gw_rating, failed_at, GW_T_RECORD, .record = &BOTH_WAYS_RECORD,
      .help = "structural: pressures at which the specimen failed, or the test was stopped by damage"),
    F(gw_rating, deflection, GW_T_RECORD, .record = &MEASURED_RECORD,
      .help = "structural: of the mullion between its anchors"),
    NUM(gw_rating, pressure, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e8), .help = "water or blast: pressure"),
    NUM(gw_rating, impulse, GW_IMPULSE, .flags = GW_MAGNITUDE, LIMITS(0, 1e7), .help = "blast: reflected impulse"),
    PICK(gw_rating, hazard, gw_hazard_choices, .help = "blast: hazard rating reached"),
    PICK(gw_rating, condition, gw_condition_choices, .help = "blast: performance condition reached"),
    NUM(gw_rating, leakage, GW_LEAKAGE, LIMITS(0, 1), LIKELY(1e-6, 0.01), .help = "air leakage"),
    NUM(gw_rating, at, GW_PRESSURE, LIMITS(1, 5000), LIKELY(50, 800), .help = "air: at this pressure difference"),
    NUM(gw_rating, value, GW_RATIO, .help = "other: the number"),
    NUM(gw_rating, drift, GW_LENGTH, LIMITS(0, 10), LIKELY(0.002, 0.4),
        .help = "sway: of the story; dynamic: at which glass fell out, the least of the specimens"),
    PICK(gw_rating, kind, SWAYS, .help = "sway: static or dynamic"),
    PICK(gw_rating, component, gw_component_choices, .fallback = "fixed", .flags = GW_SILENT,
         .help = "component that was rated"),
    F(gw_rating, tested, GW_T_RECORD, .record = &gw_tested_record, .help = "what the test specimen measured"),
    F(gw_rating, report, GW_T_TEXT, .flags = GW_REPORT,
      .help = "report number; absent, or a word such as none, TBD or brochure: a statement"),
    F(gw_rating, mended, GW_T_TEXT,
      .help = "what was mended since another report of the same specimen, which then governs no longer"),
    PICK(gw_rating, missile, gw_missile_choices, .help = "impact: missile level"),
    F(gw_rating, wind_zone, GW_T_INTEGER, LIMITS(1, 4), .help = "impact: wind zone"),
    NUM(gw_rating, bite, GW_THICKNESS, LIMITS(0.001, 0.2), .help = "impact: glass bite tested"),
    F(gw_rating, cycles, GW_T_INTEGER, LIMITS(1, 1000000),
      .help = "impact: pressure cycles in all; absent: the schedule after an impact test"),
    F(gw_rating, small_missile_shown, GW_T_BOOL,
      .help = "impact: the report or the local code lets the large missile stand for the small one"),
    F(gw_rating, after_structural, GW_T_BOOL,
      .help = "water, air: measured after the structural load of the same specimen; absent: not known"),
    F(gw_rating, high_velocity_zone, GW_T_BOOL, .help = "impact: tested by TAS 201, 202 and 203"),
    PLACE(gw_rating),
};
#define SPECIMEN "what the specimen measured stands under tested: {module: 5 ft, span: 14 ft, lite_width: 5 ft, ...}"
static const struct gw_also RATING_OTHERS[] = {{"size", NULL, SPECIMEN, GW_NOTE},
                                               {"width", NULL, SPECIMEN, GW_NOTE},
                                               {"height", NULL, SPECIMEN, GW_NOTE},
                                               {"span", NULL, SPECIMEN, GW_NOTE},
                                               {"module", NULL, SPECIMEN, GW_NOTE},
                                               {"lite_width", NULL, SPECIMEN, GW_NOTE},
                                               {"lite_height", NULL, SPECIMEN, GW_NOTE},
                                               {"design_pressure", NULL, "write positive and negative", GW_NOTE},
                                               {"dp", NULL, "write positive and negative", GW_NOTE},
                                               {"inward", NULL, "write positive", GW_NOTE},
                                               {"outward", NULL, "write negative", GW_NOTE},
                                               {0}};
static const struct gw_record RATING_RECORD = RECORD("rating", gw_rating, RATING, .others = RATING_OTHERS);
static const struct gw_field TUBE[] = {
    NUM(gw_tube, width, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.005, 2), .help = "face"),
    NUM(gw_tube, depth, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.005, 2), .help = "depth"),
    NUM(gw_tube, flange, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0005, 0.1), .help = "flange thickness"),
    NUM(gw_tube, web, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0005, 0.1), .help = "web thickness"),
};
const struct gw_record gw_tube_record = RECORD("tube", gw_tube, TUBE);
static const struct gw_choice INSERT_METALS[] = {
    {"steel", GW_INSERT_STEEL, ""}, {"aluminum", GW_INSERT_ALUMINUM, ""}, {0}};
static const struct gw_field INSERT[] = {
    PICK(gw_insert_spec, metal, INSERT_METALS, .flags = GW_REQUIRED, .help = "of the insert: steel or aluminum"),
    NUM(gw_insert_spec, inertia_x, GW_INERTIA, .flags = GW_REQUIRED, LIMITS(1e-12, 1),
        .help = "about its own axis; of a welded steel tube by its design wall"),
    NUM(gw_insert_spec, section_modulus_x, GW_SECTION_MODULUS, .flags = GW_REQUIRED, LIMITS(1e-9, 1),
        .help = "about its own axis"),
    NUM(gw_insert_spec, yield, GW_STRESS, .flags = GW_REQUIRED, LIMITS(1e7, 2e9), .help = "least yield strength"),
};
static const struct gw_record INSERT_RECORD = RECORD("insert", gw_insert_spec, INSERT);
#define MEMBER_NUMBER(key_, dim_, ...) NUM(gw_member_spec, key_, dim_, __VA_ARGS__)
static const struct gw_field MEMBER[] = {
    PICK(gw_member_spec, alloy, gw_metal_choices, .help = "alloy and temper"),
    F(gw_member_spec, tube, GW_T_RECORD, .record = &gw_tube_record,
      .help =
          "rectangular tube by its nominal walls (steel is judged by the design wall of its grade); or the properties"),
    MEMBER_NUMBER(area, GW_AREA, LIMITS(1e-6, 1), .help = "of the section"),
    MEMBER_NUMBER(inertia_x, GW_INERTIA, LIMITS(1e-12, 1), .help = "about the axis that wind bends it"),
    MEMBER_NUMBER(inertia_y, GW_INERTIA, LIMITS(1e-12, 1), .help = "about the other axis"),
    MEMBER_NUMBER(section_modulus_x, GW_SECTION_MODULUS, LIMITS(1e-9, 1), .help = "elastic"),
    MEMBER_NUMBER(section_modulus_y, GW_SECTION_MODULUS, LIMITS(1e-9, 1), .help = "elastic"),
    MEMBER_NUMBER(torsion_constant, GW_INERTIA, LIMITS(1e-13, 1), .help = "J"),
    MEMBER_NUMBER(allowable_moment, GW_MOMENT, LIMITS(1, 1e7),
                  .help = "of a shape that is no tube, by test or by the manufacturer's engineer, both directions"),
    MEMBER_NUMBER(allowable_torque, GW_MOMENT, LIMITS(0.1, 1e7),
                  .help = "of a shape that is no tube: twisting moment, as stated"),
    MEMBER_NUMBER(unbraced_length, GW_LENGTH, LIMITS(0.05, 50),
                  .help = "of the compression flange; absent: the span (glass does not brace the inner flange)"),
    F(gw_member_spec, insert, GW_T_RECORD, .record = &INSERT_RECORD,
      .help = "reinforcement that bends with it, over the whole length"),
    MEMBER_NUMBER(block_offset, GW_LENGTH, LIMITS(0.01, 5),
                  .help = "transom: setting blocks from each end; absent: quarter points"),
    MEMBER_NUMBER(eccentricity, GW_LENGTH, LIMITS(0, 1),
                  .help = "transom: vertical line of the glass's weight from the shear center; 0: through it"),
    F(gw_member_spec, report, GW_T_TEXT, .flags = GW_REPORT,
      .help = "of the test or calculation that gives allowable_moment and allowable_torque; absent: a statement"),
};
static const struct gw_record MEMBER_RECORD = RECORD("member", gw_member_spec, MEMBER);
static const struct gw_field PLATE[] = {
    PICK(gw_plate_spec, alloy, gw_metal_choices, .flags = GW_REQUIRED, .help = "alloy and temper"),
    NUM(gw_plate_spec, width, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.005, 1), .help = "of the plate"),
    NUM(gw_plate_spec, thickness, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0005, 0.1), .help = "of the plate"),
    NUM(gw_plate_spec, hole, GW_THICKNESS, LIMITS(0.001, 0.1), .help = "diameter of the screw holes; absent: 0"),
};
static const struct gw_record PLATE_RECORD = RECORD("pressure plate", gw_plate_spec, PLATE);
static const struct gw_choice HOLDS[] = {{"tapped", GW_HOLD_TAPPED, "a tapped or pilot hole through a wall"},
                                         {"chase", GW_HOLD_CHASE, "a continuous chase or slot: needs tested_pullout"},
                                         {0}};
static const struct gw_field SCREW[] = {
    NUM(gw_screw_spec, diameter, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.002, 0.03), .help = "nominal"),
    NUM(gw_screw_spec, threads_per_inch, GW_RATIO, .flags = GW_REQUIRED, LIMITS(4, 80), .help = "n"),
    PICK(gw_screw_spec, thread, gw_thread_choices, .fallback = "coarse", .flags = GW_SILENT, .help = "kind of thread"),
    PICK(gw_screw_spec, hold, HOLDS, .flags = GW_REQUIRED, .help = "what it is driven into"),
    PICK(gw_screw_spec, alloy, gw_metal_choices, .help = "of the metal that holds the thread"),
    NUM(gw_screw_spec, engagement, GW_THICKNESS, LIMITS(0.0005, 0.1), .help = "thickness that holds the thread"),
    NUM(gw_screw_spec, ultimate, GW_STRESS, .flags = GW_REQUIRED, LIMITS(1e8, 2e9), .help = "of the screw"),
    NUM(gw_screw_spec, head_diameter, GW_THICKNESS, LIMITS(0.002, 0.05), .help = "head or washer, on the plate"),
    NUM(gw_screw_spec, tested_pullout, GW_FORCE, LIMITS(1, 1e6), A_CAPACITY, .help = "nominal pull-out by test"),
    F(gw_screw_spec, report, GW_T_TEXT, .flags = GW_REPORT, .help = "of that test"),
    NUM(gw_screw_spec, spacing, GW_LENGTH, LIMITS(0.02, 2), .help = "along the plate; a wall's screws go before it"),
    NUM(gw_screw_spec, end_distance, GW_LENGTH, LIMITS(0.005, 1),
        .help = "of the last screw from the end of the plate; a wall's screws go before it"),
};
static const struct gw_record SCREW_RECORD = RECORD("screw", gw_screw_spec, SCREW);
static const struct gw_field CAPACITY[] = {
    NUM(gw_capacity_spec, capacity, GW_FORCE, .flags = GW_REQUIRED, LIMITS(1, 1e7), A_CAPACITY,
        .help = "allowable, by test"),
    F(gw_capacity_spec, report, GW_T_TEXT, .flags = GW_REPORT, .help = "of that test"),
};
static const struct gw_record CAPACITY_RECORD = RECORD("capacity", gw_capacity_spec, CAPACITY);
static const struct gw_choice ENDS[] = {{"spline", GW_END_SPLINE, "screws into a spline: a test alone shows them"},
                                        {"chase", GW_END_CHASE, "screws into a chase: the same"},
                                        {"clip", GW_END_CLIP, "a clip and its screws: a calculation shows them too"},
                                        {0}};
static const struct gw_field TRANSOM_END[] = {
    NUM(gw_capacity_spec, capacity, GW_FORCE, .flags = GW_REQUIRED, LIMITS(1, 1e7), A_CAPACITY,
        .help = "allowable, by test; of a clip by calculation too"),
    PICK(gw_capacity_spec, hold, ENDS, .help = "what holds it; absent: what a test alone shows"),
    F(gw_capacity_spec, report, GW_T_TEXT, .flags = GW_REPORT, .help = "of that test or calculation"),
};
static const struct gw_record TRANSOM_END_RECORD = RECORD("transom connection", gw_capacity_spec, TRANSOM_END);
static const struct gw_field SEAT[] = {
    NUM(gw_seat_spec, capacity, GW_FORCE, LIMITS(1, 1e6), .help = "allowable, of each; or its figures"),
    PICK(gw_seat_spec, alloy, gw_metal_choices, .help = "figures of a flat leg or chair: its metal"),
    NUM(gw_seat_spec, length, GW_THICKNESS, LIMITS(0.005, 2), .help = "along the transom"),
    NUM(gw_seat_spec, thickness, GW_THICKNESS, LIMITS(0.0005, 0.05), .help = "of the leg"),
    NUM(gw_seat_spec, arm, GW_THICKNESS, LIMITS(0.0005, 0.5), .help = "of the weight from its root"),
    F(gw_seat_spec, report, GW_T_TEXT, .flags = GW_REPORT, .help = "of the capacity"),
};
static const struct gw_record SEAT_RECORD = RECORD("glass seat", gw_seat_spec, SEAT);
static const struct gw_choice INTERACTIONS[] = {
    {"none", GW_INTERACTION_NONE, "each for itself, by the report"},
    {"linear", GW_INTERACTION_LINEAR, "straight sum of the ratios"},
    {"elliptic", GW_INTERACTION_ELLIPTIC, "root of the sum of their squares, by the report"},
    {0}};
static const struct gw_field PAST_ANCHOR[] = {
    NUM(gw_past_anchor_spec, moment, GW_MOMENT, .flags = GW_REQUIRED, LIMITS(1, 1e7),
        .help = "allowable there, with the holes of the anchor, without a reaction"),
    NUM(gw_past_anchor_spec, reaction, GW_FORCE, .flags = GW_REQUIRED, LIMITS(1, 1e7),
        .help = "allowable there without a moment: crushing, bearing"),
    F(gw_past_anchor_spec, report, GW_T_TEXT, .flags = GW_REPORT, .help = "of that test or calculation"),
};
static const struct gw_record PAST_ANCHOR_RECORD = RECORD("past anchor", gw_past_anchor_spec, PAST_ANCHOR);
static const struct gw_field ANCHOR[] = {
    NUM(gw_anchor_spec, inward, GW_FORCE, LIMITS(1, 1e7), A_REACTION, .help = "allowable reaction"),
    NUM(gw_anchor_spec, outward, GW_FORCE, LIMITS(1, 1e7), A_REACTION, .help = "allowable reaction, magnitude"),
    NUM(gw_anchor_spec, along, GW_FORCE, LIMITS(1, 1e7), A_REACTION,
        .help = "allowable force along the slab edge: earthquakes"),
    NUM(gw_anchor_spec, dead, GW_FORCE, LIMITS(1, 1e7), A_REACTION, .help = "allowable vertical load"),
    PICK(gw_anchor_spec, interaction, INTERACTIONS,
         .help = "of wind or earthquake with the dead load, by the report; absent: linear"),
    NUM(gw_anchor_spec, eccentricity, GW_LENGTH, LIMITS(-2, 2),
        .help = "of the dead load from the bolts' plane, outside of the bearing; minus: inside, its couple presses"),
    NUM(gw_anchor_spec, bolt_arm, GW_LENGTH, LIMITS(0.005, 2), .help = "lever arm of the bolts"),
    F(gw_anchor_spec, bolts, GW_T_INTEGER, LIMITS(1, 20), .help = "that share the tension"),
    NUM(gw_anchor_spec, bolt_tension, GW_FORCE, LIMITS(1, 1e7), .help = "allowable, of each bolt"),
    NUM(gw_anchor_spec, bolt_shear, GW_FORCE, LIMITS(1, 1e7), .help = "allowable, of each bolt: the dead load"),
    PICK(gw_anchor_spec, bolt_interaction, gw_bolt_interaction_choices,
         .help = "of a bolt's tension with its shear, by the report; absent: linear"),
    F(gw_anchor_spec, report, GW_T_TEXT, .flags = GW_REPORT, .help = "calculation or test"),
};
static const struct gw_record ANCHOR_RECORD = RECORD("anchor", gw_anchor_spec, ANCHOR);
static const struct gw_field EDGE_SEAL[] = {
    NUM(gw_edge_seal_spec, bite, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.001, 0.1), .help = "width of the seal"),
    NUM(gw_edge_seal_spec, design_stress, GW_STRESS, LIMITS(1e4, 1e6),
        .help = "absent: 20 psi; what is above counts with a report only"),
    F(gw_edge_seal_spec, report, GW_T_TEXT, .flags = GW_REPORT,
      .help = "of the sealant's manufacturer, that approves design_stress"),
};
static const struct gw_record EDGE_SEAL_RECORD = RECORD("edge_seal", gw_edge_seal_spec, EDGE_SEAL);
static const struct gw_field SILICONE_BEAD[] = {
    NUM(gw_silicone_spec, bite, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.001, 0.2), .help = "width of the bead"),
    NUM(gw_silicone_spec, thickness, GW_THICKNESS, LIMITS(0.001, 0.1), .help = "of the bead"),
    NUM(gw_silicone_spec, design_stress, GW_STRESS, LIMITS(1e4, 1e6),
        .help = "absent: 20 psi; what is above counts with a report only"),
    NUM(gw_silicone_spec, shear_strain, GW_RATIO, LIMITS(0.01, 3),
        .help = "allowed of the sealant, slip over thickness"),
    F(gw_silicone_spec, carries_weight, GW_T_BOOL,
      .help = "the bead carries the weight of the glass; absent: no, setting blocks do"),
    F(gw_silicone_spec, report, GW_T_TEXT, .flags = GW_REPORT,
      .help = "of the sealant's manufacturer, that approves design_stress"),
    F(gw_silicone_spec, edge_seal, GW_T_RECORD, .record = &EDGE_SEAL_RECORD,
      .help = "outer seal of insulating units, which holds the outer pane"),
};
static const struct gw_field DRIFT_SPEC[] = {
    PICK(gw_drift_spec, path, gw_drift_path_choices, .flags = GW_REQUIRED, .help = "how the wall takes it"),
    NUM(gw_drift_spec, slip, GW_LENGTH, LIMITS(0, 1), LIKELY(0.002, 0.2), .help = "that a sliding head takes each way"),
    NUM(gw_drift_spec, side_gap, GW_THICKNESS, LIMITS(0, 0.1), LIKELY(0.001, 0.04),
        .help = "glass to metal at each side, average"),
    NUM(gw_drift_spec, end_gap, GW_THICKNESS, LIMITS(0, 0.1), LIKELY(0.001, 0.05),
        .help = "glass to metal, average of head and sill"),
    NUM(gw_drift_spec, bite, GW_THICKNESS, LIMITS(0.001, 0.2), LIKELY(0.004, 0.06),
        .help = "of the glass in its pocket: what a racking test covers"),
};
static const struct gw_record DRIFT_SPEC_RECORD = RECORD("drift", gw_drift_spec, DRIFT_SPEC);
static const struct gw_field STACK[] = {
    NUM(gw_stack_spec, width, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.001, 0.2), .help = "nominal, as installed"),
    NUM(gw_stack_spec, least_gap, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 0.1),
        .help = "what the closed joint keeps"),
    NUM(gw_stack_spec, engagement, GW_THICKNESS, LIMITS(0, 0.3), .help = "of the male leg, as installed"),
    NUM(gw_stack_spec, least_overlap, GW_THICKNESS, LIMITS(0, 0.1), .help = "what the open joint keeps engaged"),
};
static const struct gw_record STACK_RECORD = RECORD("stack joint", gw_stack_spec, STACK);
static const struct gw_field CLAMP[] = {
    NUM(gw_clamp_spec, nut_factor, GW_RATIO, .flags = GW_MANY | GW_ALONE, LIMITS(0.01, 1), LIKELY(0.08, 0.55),
        .help = "K of T = K D F, above the torque that forms the thread: one value, or the least and the most"),
    NUM(gw_clamp_spec, forming_torque, GW_MOMENT, .flags = GW_MANY | GW_ALONE, LIMITS(0, 100),
        .help = "torque that forms the thread, 0 of a tapped one: one value, or the least and the most"),
    F(gw_clamp_spec, stop, GW_T_BOOL, .help = "the plate lands on a stop, so that its place sets the gasket's load"),
    NUM(gw_clamp_spec, stack, GW_THICKNESS, LIMITS(0, 0.3), .help = "between the plate and the chase"),
    NUM(gw_clamp_spec, chase, GW_THICKNESS, LIMITS(0.001, 0.2), .help = "depth of the chase or boss"),
    NUM(gw_clamp_spec, tip, GW_THICKNESS, LIMITS(0, 0.05), .help = "of the screw that does not hold: its taper"),
    NUM(gw_clamp_spec, retained, GW_RATIO, LIMITS(0.01, 1), .help = "of the clamp at first, after a year"),
    NUM(gw_clamp_spec, service_life, GW_TIME, LIMITS(86400, 1e10), .example = "10 years",
        .help = "for which the clamp is to hold; absent: a year"),
};
static const struct gw_record CLAMP_RECORD = RECORD("clamp", gw_clamp_spec, CLAMP);
static const struct gw_field DRAINAGE[] = {
    NUM(gw_drainage_spec, slots, GW_RATIO, LIMITS(0, 50), .help = "weep slots of the pocket under one lite"),
    NUM(gw_drainage_spec, slot_length, GW_THICKNESS, LIMITS(0.001, 1), .help = "of each"),
    NUM(gw_drainage_spec, slot_height, GW_THICKNESS, LIMITS(0.0005, 0.1), .help = "of each"),
    NUM(gw_drainage_spec, pocket_depth, GW_THICKNESS, LIMITS(0.001, 0.2),
        .help = "of water that can stand in the pocket before it reaches the glass"),
    NUM(gw_drainage_spec, upstand, GW_THICKNESS, LIMITS(0, 0.5), .help = "from the pocket to the inner air seal"),
    NUM(gw_drainage_spec, leak_share, GW_RATIO, LIMITS(0, 1), .help = "of the rain that the outer seals let in"),
    F(gw_drainage_spec, equalized, GW_T_BOOL,
      .help = "the pocket has the pressure of the air outside; absent: yes; no: the water test's pressure stands "
              "against the weeps"),
};
static const struct gw_record DRAINAGE_RECORD = RECORD("drainage", gw_drainage_spec, DRAINAGE);
static const struct gw_field GASKET[] = {
    NUM(gw_gasket_spec, edge_load, GW_SHEAR_FLOW, .flags = GW_MANY | GW_ALONE, LIMITS(0, 20000),
        .help = "on the edge of the glass, as installed: one value, or the least and the most"),
    NUM(gw_gasket_spec, stiffness_share, GW_RATIO, LIMITS(0.01, 0.99), .help = "of the inner gasket in both"),
};
static const struct gw_record GASKET_RECORD = RECORD("gasket", gw_gasket_spec, GASKET);
static const struct gw_field PERIMETER[] = {
    NUM(gw_perimeter_spec, movement, GW_THICKNESS, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(1e-4, 0.1),
        .help = "one way from the width at installation"),
    NUM(gw_perimeter_spec, capability, GW_RATIO, .flags = GW_REQUIRED, LIMITS(0.01, 1),
        .help = "of the sealant: 0.25 for class 25"),
};
static const struct gw_record PERIMETER_RECORD = RECORD("perimeter", gw_perimeter_spec, PERIMETER);
static const struct gw_record SILICONE_RECORD = RECORD("silicone", gw_silicone_spec, SILICONE_BEAD);
static const struct gw_field ADDS[] = {
    NUM(gw_adds, inertia_x, GW_INERTIA, LIMITS(0, 1), .help = "added inertia"),
    NUM(gw_adds, section_modulus_x, GW_SECTION_MODULUS, LIMITS(0, 1), .help = "added modulus")};
static const struct gw_record ADDS_RECORD = RECORD("adds", gw_adds, ADDS);
static const struct gw_choice COUNTED[] = {{"wall", GW_COUNTS_WALL, "its area"},
                                           {"lite", GW_COUNTS_LITE, "their area, or each"},
                                           {"mullion", GW_COUNTS_MULLION, "their length"},
                                           {"transom", GW_COUNTS_TRANSOM, "their length"},
                                           {"screw", GW_COUNTS_SCREW, "each"},
                                           {"anchor", GW_COUNTS_ANCHOR, "each"},
                                           {0}};
static const struct gw_field OPTION[] = {
    F(gw_system_option, name, GW_T_TEXT, .flags = GW_REQUIRED, .help = "name"),
    F(gw_system_option, change, GW_T_TREE,
      .help = "keys of the system file: mappings merge key by key, lists and values replace; other metal with its "
              "frame_weight, else no anchor is shown with it"),
    F(gw_system_option, adds, GW_T_RECORD, .record = &ADDS_RECORD,
      .help = "to the mullion, after every change; beside a tube it counts as an aluminum insert"),
    PICK(gw_system_option, of, COUNTED,
         .help = "what the cost counts; absent: the wall, or for a cost by length of what `adds` the mullion"),
    F(gw_system_option, cost, GW_T_TEXT,
      .help = "per ft or m of a mullion or transom, per ft2 or m2 of a wall or lite, each of a lite, screw or anchor"),
    NUM(gw_system_option, once, GW_COST, LIMITS(0, 1e12),
        .help = "where it is used at all: a die, a test, an engineer"),
    PICK(gw_system_option, choose, gw_choose_choices, .fallback = "zone", .flags = GW_SILENT,
         .help = "the part within which it is taken everywhere or nowhere"),
    F(gw_system_option, group, GW_T_TEXT, .help = "of one group at most one is taken"),
    F(gw_system_option, requires, GW_T_TEXT, .flags = GW_MANY | GW_ALONE, .help = "only together with these options"),
    PLACE(gw_system_option),
};
static const struct gw_record OPTION_RECORD = RECORD("option", gw_system_option, OPTION);
#define STICK_OR_UNITIZED "stick where it is put together on the wall, unitized where in the shop"
static const struct gw_also KIND_WORDS[] = {{"storefront", NULL, "as a storefront is framed, write stick", GW_NOTE},
                                            {"curtain wall", NULL, STICK_OR_UNITIZED, GW_NOTE},
                                            {"curtainwall", NULL, STICK_OR_UNITIZED, GW_NOTE},
                                            {0}};
#define BONDED "silicone where all edges are bonded, mixed where two are"
static const struct gw_also GLAZING_WORDS[] = {{"SSG", NULL, BONDED, GW_NOTE},
                                               {"structural silicone", NULL, BONDED, GW_NOTE},
                                               {"structurally glazed", NULL, BONDED, GW_NOTE},
                                               {"4-sided SSG", "silicone", NULL, GW_NOTE},
                                               {"2-sided SSG", "mixed", NULL, GW_NOTE},
                                               {0}};
static const struct gw_field SYSTEM_HEAD[] = {
    F(gw_system_head, name, GW_T_TEXT, .flags = GW_REQUIRED, .help = "name of the system"),
    PICK(gw_system_head, kind, SYSTEM_KINDS, .also = KIND_WORDS, .flags = GW_REQUIRED, .help = "how it is built"),
    PICK(gw_system_head, glazing, GLAZINGS, .also = GLAZING_WORDS, .flags = GW_REQUIRED,
         .help = "how the glass is held"),
};
static const struct gw_record SYSTEM_HEAD_RECORD = RECORD("system", gw_system_head, SYSTEM_HEAD);
static const struct gw_field SYSTEM[] = {
    PICK(gw_system, galeward, gw_version_choices, .flags = GW_REQUIRED, .help = "version of the file format: 1"),
    PICK(gw_system, units, gw_units_choices, .help = "unit of bare numbers; absent: every number carries its unit"),
    F(gw_system, system, GW_T_RECORD, .record = &SYSTEM_HEAD_RECORD, .flags = GW_REQUIRED, .help = "name and kind"),
    NUM(gw_system, pocket, GW_THICKNESS, .flags = GW_MANY, LIMITS(0.001, 0.2),
        .help = "overall glass thicknesses that the pocket takes"),
    F(gw_system, ratings, GW_T_RECORD, .record = &RATING_RECORD, .flags = GW_MANY, .help = "what was tested"),
    F(gw_system, mullion, GW_T_RECORD, .record = &MEMBER_RECORD, .help = "mullion section"),
    F(gw_system, corner_mullion, GW_T_RECORD, .record = &MEMBER_RECORD, .help = "mullion at an outside corner"),
    F(gw_system, jamb_mullion, GW_T_RECORD, .record = &MEMBER_RECORD,
      .help = "unitized: last half mullion at an end of a wall that is no corner; where the halves at the two ends "
              "differ, the "
              "lesser; a stick system has its mullion there"),
    F(gw_system, transom, GW_T_RECORD, .record = &MEMBER_RECORD, .help = "transom section"),
    F(gw_system, pressure_plate, GW_T_RECORD, .record = &PLATE_RECORD, .help = "of captured glazing"),
    F(gw_system, screw, GW_T_RECORD, .record = &SCREW_RECORD, .help = "of the pressure plate"),
    F(gw_system, silicone, GW_T_RECORD, .record = &SILICONE_RECORD, .help = "structural silicone"),
    F(gw_system, transom_connection, GW_T_RECORD, .record = &TRANSOM_END_RECORD, .help = "end of a transom"),
    F(gw_system, glass_seat, GW_T_RECORD, .record = &SEAT_RECORD,
      .help = "what bears each setting block beyond the transom's section"),
    F(gw_system, past_anchor, GW_T_RECORD, .record = &PAST_ANCHOR_RECORD,
      .help = "the mullion where it runs past an anchor: continuous pieces, overhangs"),
    F(gw_system, splice, GW_T_RECORD, .record = &CAPACITY_RECORD, .help = "splice of the mullion, in shear"),
    F(gw_system, anchor, GW_T_RECORD, .record = &ANCHOR_RECORD, .help = "anchor to the structure"),
    F(gw_system, corner_anchor, GW_T_RECORD, .record = &ANCHOR_RECORD,
      .help = "anchor at an outside corner: inward and outward of each face with the other's at once"),
    F(gw_system, jamb_anchor, GW_T_RECORD, .record = &ANCHOR_RECORD,
      .help =
          "unitized: anchor at an end of a wall that is no corner, where one unit alone hangs; where its two halves "
          "differ, the lesser"),
    F(gw_system, drift, GW_T_RECORD, .record = &DRIFT_SPEC_RECORD, .help = "of a story, in an earthquake"),
    F(gw_system, stack_joint, GW_T_RECORD, .record = &STACK_RECORD, .help = "between pieces one above the other"),
    NUM(gw_system, frame_weight, GW_PRESSURE, LIMITS(0, 5000), LIKELY(40, 1000),
        .help = "of framing without glass, per area of wall; in a change: with the option and what it requires"),
    F(gw_system, clamp, GW_T_RECORD, .record = &CLAMP_RECORD, .help = "of the plate by its screws"),
    F(gw_system, drainage, GW_T_RECORD, .record = &DRAINAGE_RECORD, .help = "of the glazing pocket"),
    F(gw_system, gasket, GW_T_RECORD, .record = &GASKET_RECORD, .help = "of the pressure plate's glazing"),
    F(gw_system, perimeter, GW_T_RECORD, .record = &PERIMETER_RECORD, .help = "sealant joints round the wall"),
    F(gw_system, installation, GW_T_RECORD, .record = &gw_installation_record,
      .help = "its own limits of what is measured at installation, by item: {at_least, at_most}"),
    F(gw_system, options, GW_T_RECORD, .record = &OPTION_RECORD, .flags = GW_MANY,
      .help = "reinforcement and other options"),
    NUM(gw_system, cost, GW_COST_PER_AREA, LIMITS(0, 1e9), .help = "cost per area"),
    PLACE(gw_system),
};
const struct gw_record gw_system_record = RECORD("the system file", gw_system, SYSTEM);
