/* What a project's specification asks: the keys of `requirements`. */
#include "base/fields.h"

#include "model_internal.h"

/* No calculation shows water or air. */
static const struct gw_choice TEST_ALONE[] = {
    {"test", GW_ASKS_TEST, "by a report that says which joints the specimen had, and in which order it was tested"},
    {0}};
#define TESTED(struct_)                                                                                                \
    F(struct_, evidence, GW_T_CHOICE, .choices = TEST_ALONE, .flags = GW_MANY | GW_ALONE,                              \
      .help = "test: what the report leaves unsaid of joints and order is not shown; absent: asked, and it stands")
static const struct gw_field WATER[] = {
    NUM(gw_water_requirement, pressure, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(1, 5000), LIKELY(100, 1000),
        .help = "required test pressure"),
    NUM(gw_water_requirement, share, GW_RATIO, LIMITS(0.01, 1), .help = "share of the positive design pressure"),
    NUM(gw_water_requirement, floor, GW_PRESSURE, LIMITS(0, 5000), .help = "not below"),
    NUM(gw_water_requirement, cap, GW_PRESSURE, LIMITS(1, 5000), .help = "not above"),
    FIELD(gw_water_requirement, "basis", rule, GW_T_CHOICE, .choices = gw_water_rule_choices,
          .help = "whose share, floor and cap: a performance class or curtain_wall"),
    F(gw_water_requirement, dynamic, GW_T_BOOL, .help = "by the dynamic test too, at the same pressure"),
    TESTED(gw_water_requirement),
};
static const struct gw_record WATER_RECORD =
    RECORD("water requirement", gw_water_requirement, WATER, .scalar_key = "pressure");
static const struct gw_field AIR[] = {
    NUM(gw_air_requirement, leakage, GW_LEAKAGE, .flags = GW_REQUIRED, LIMITS(1e-7, 1), LIKELY(1e-5, 0.01),
        .help = "greatest leakage"),
    NUM(gw_air_requirement, at, GW_PRESSURE, .flags = GW_REQUIRED, LIMITS(1, 5000), LIKELY(50, 800),
        .help = "at this pressure difference"),
    TESTED(gw_air_requirement),
};
static const struct gw_record AIR_RECORD =
    RECORD("air requirement", gw_air_requirement, AIR, .example = "{leakage: 0.06 cfm/ft2, at: 6.24 psf}");
static const struct gw_field OTHER[] = {
    F(gw_other_requirement, name, GW_T_TEXT, .flags = GW_REQUIRED, .help = "name of the rating"),
    NUM(gw_other_requirement, at_least, GW_RATIO, .help = "least value"),
    NUM(gw_other_requirement, at_most, GW_RATIO, .help = "greatest value"),
    PLACE(gw_other_requirement),
};
static const struct gw_record OTHER_RECORD = RECORD("requirement", gw_other_requirement, OTHER);
static const struct gw_choice EVIDENCE_RULES[] = {
    {"test", GW_ASKS_TEST, "a test of each link"}, {"calculation", GW_ASKS_CALCULATION, ""}, {0}};
static const struct gw_field STRUCTURAL[] = {
    F(gw_structural_requirement, evidence, GW_T_CHOICE, .choices = EVIDENCE_RULES, .flags = GW_MANY | GW_ALONE,
      .help = "evidence that counts; absent: test or calculation"),
};
static const struct gw_record STRUCTURAL_RECORD =
    RECORD("structural requirement", gw_structural_requirement, STRUCTURAL);
static const struct gw_field REQUIREMENTS[] = {
    F(gw_requirements, structural, GW_T_RECORD, .record = &STRUCTURAL_RECORD,
      .help = "how it is to be shown: {evidence: test}, or a list"),
    F(gw_requirements, water, GW_T_RECORD, .record = &WATER_RECORD, .help = "a pressure, or share, floor and cap"),
    F(gw_requirements, air, GW_T_RECORD, .record = &AIR_RECORD, .help = "leakage with its pressure"),
    F(gw_requirements, other, GW_T_RECORD, .record = &OTHER_RECORD, .flags = GW_MANY,
      .help = "any other number with a name"),
};
static const struct gw_also NO_REQUIREMENTS[] = {
    {"drift", NULL, "site: seismic: story_drift, or story_drift_ratio", 0},
    {"story_drift", NULL, "site: seismic: story_drift", 0},
    {"seismic", NULL, "site: seismic", 0},
    {"impact", NULL, "site: impact", 0},
    {"blast", NULL, "site: blast", 0},
    {"movement", NULL, "movement, beside requirements", 0},
    {"deflection", NULL, "framing: deflection_cap, or glass: deflection_limit", 0},
    {0}};
const struct gw_record gw_requirements_record =
    RECORD("requirements", gw_requirements, REQUIREMENTS, .elsewhere = NO_REQUIREMENTS);
