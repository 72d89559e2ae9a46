/* Field tables of 'galeward calc member_strength'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/member_strength.h"
#include "galeward/model.h"

enum insert_metal { INSERT_UNSET, INSERT_STEEL, INSERT_ALUMINUM };
struct insert_case {
    enum insert_metal metal;
    double inertia_x, section_modulus_x, yield;
};
struct strength_case {
    enum gw_metal alloy;
    const struct gw_tube *tube;
    double unbraced_length, allowable_moment, inertia_x, inertia_y, torsion_constant, allowable_torque;
    const struct insert_case *insert;
};

static const struct gw_choice METALS[] = {{"steel", INSERT_STEEL, ""}, {"aluminum", INSERT_ALUMINUM, ""}, {0}};
static const struct gw_field INSERT[] = {
    PICK(insert_case, metal, METALS, .flags = GW_REQUIRED, .help = "of the insert: steel or aluminum"),
    NUM(insert_case, inertia_x, GW_INERTIA, .flags = GW_REQUIRED, LIMITS(1e-12, 1),
        .help = "about its own axis; of a welded steel tube by its design wall"),
    NUM(insert_case, section_modulus_x, GW_SECTION_MODULUS, .flags = GW_REQUIRED, LIMITS(1e-9, 1),
        .help = "about its own axis"),
    NUM(insert_case, yield, GW_STRESS, .flags = GW_REQUIRED, LIMITS(1e7, 2e9), .help = "least yield strength"),
};
static const struct gw_record INSERT_RECORD = RECORD("insert", insert_case, INSERT);
#define S(key_, dim_, ...) NUM(strength_case, key_, dim_, __VA_ARGS__)
static const struct gw_field CASE[] = {
    PICK(strength_case, alloy, gw_metal_choices, .flags = GW_REQUIRED, .help = "alloy and temper, or grade of steel"),
    F(strength_case, tube, GW_T_RECORD, .record = &gw_tube_record,
      .help = "rectangular tube by its nominal walls; or the properties"),
    S(unbraced_length, GW_LENGTH, LIMITS(0, 50), .help = "tubes: of the compression flange"),
    S(allowable_moment, GW_MOMENT, LIMITS(1, 1e7), .help = "instead of a tube: about x, as stated"),
    S(inertia_x, GW_INERTIA, LIMITS(1e-12, 1), .help = "instead of a tube: about x"),
    S(inertia_y, GW_INERTIA, LIMITS(1e-12, 1), .help = "instead of a tube: about y"),
    S(torsion_constant, GW_INERTIA, LIMITS(1e-13, 1), .help = "instead of a tube: J"),
    S(allowable_torque, GW_MOMENT, LIMITS(0.1, 1e7), .help = "instead of a tube: twisting moment, as stated"),
    F(strength_case, insert, GW_T_RECORD, .record = &INSERT_RECORD, .help = "that bends with it about x"),
};
static const struct gw_record CASE_RECORD = RECORD("member strength", strength_case, CASE);

static const struct gw_field ANSWER[] = {
    OUT(gw_member_strength, "moment", moment, GW_MOMENT, "allowable about x, of all parts together"),
    OUT_TEXT(gw_member_strength, "governing", governing, "its limit state"),
    OUT(gw_member_strength, "moment_y", moment_y, GW_MOMENT, "allowable about y; tubes"),
    OUT(gw_member_strength, "shear", shear, GW_FORCE, "allowable along the webs; tubes"),
    OUT(gw_member_strength, "shear_y", shear_y, GW_FORCE, "across; tubes"),
    OUT(gw_member_strength, "torque", torque, GW_MOMENT, "allowable twisting moment"),
    OUT(gw_member_strength, "elastic_modulus", elastic_modulus, GW_STRESS, "of the member itself"),
    OUT(gw_member_strength, "shear_modulus", shear_modulus, GW_STRESS, "of aluminum"),
    OUT(gw_member_strength, "equivalent_inertia", stiffness, GW_INERTIA,
        "about x, of all parts, in the member's modulus"),
    OUT(gw_member_strength, "inertia_y", inertia_y, GW_INERTIA, "of the member itself"),
    OUT(gw_member_strength, "torsion_constant", torsion, GW_INERTIA, "the same"),
};
static const struct gw_record ANSWER_RECORD = RECORD("member strength result", gw_member_strength, ANSWER);

static const char *property_given(const struct strength_case *given)
{
    if (gw_given(given->allowable_moment)) return "allowable_moment";
    if (gw_given(given->inertia_x)) return "inertia_x";
    if (gw_given(given->inertia_y)) return "inertia_y";
    if (gw_given(given->allowable_torque)) return "allowable_torque";
    return gw_given(given->torsion_constant) ? "torsion_constant" : NULL;
}

static enum gw_status check(const struct strength_case *given, struct gw_engine *engine)
{
    const char *property = property_given(given);
    if (given->tube && property)
        return gw_refuse(engine, GW_BAD_VALUE, property, "give a tube, or the section's properties, not both");
    if (given->tube && !gw_given(given->unbraced_length))
        return gw_refuse(engine, GW_MISSING, "unbraced_length", "a tube's strength wants its unbraced length");
    if (given->tube || (gw_given(given->allowable_moment) && gw_given(given->inertia_x))) return GW_OK;
    return gw_refuse(engine, GW_MISSING, "tube", "a tube is needed, or allowable_moment and inertia_x");
}

static enum gw_status run_member_strength(void *out, const void *in, struct gw_engine *engine)
{
    const struct strength_case *given = in;
    struct gw_member_strength *answer = out;
    struct gw_member_insert insert;
    struct gw_member_section section = {.metal = given->alloy,
                                        .tube = given->tube,
                                        .unbraced_length = given->unbraced_length,
                                        .allowable_moment = given->allowable_moment,
                                        .inertia_x = given->inertia_x,
                                        .inertia_y = given->inertia_y,
                                        .torsion = given->torsion_constant,
                                        .allowable_torque = given->allowable_torque};
    enum gw_status status = check(given, engine);
    if (status != GW_OK) return status;
    if (given->insert) {
        insert = (struct gw_member_insert){given->insert->metal == INSERT_STEEL, given->insert->inertia_x,
                                           given->insert->section_modulus_x, given->insert->yield};
        section.insert = &insert;
    }
    status = gw_member_strength(answer, &section, engine);
    if (status == GW_OK) answer->stiffness /= answer->elastic_modulus; /* as an inertia: no unit for E I */
    return status;
}

const struct gw_calc_kind gw_kind_member_strength = {
    .name = "member_strength",
    .help =
        "what a member takes both ways, and its stiffness: a tube (steel: by its design wall) or stated properties, "
        "with an insert",
    .example = "alloy=6063-T6 tube='{width: 2.5 in, depth: 6 in, flange: 0.125 in, web: 0.125 in}' "
               "unbraced_length='12 ft' insert='{metal: steel, inertia_x: 2.5 in4, section_modulus_x: 1.25 in3, "
               "yield: 36 ksi}'",
    .input = &CASE_RECORD,
    .output = &ANSWER_RECORD,
    .run = run_member_strength};
