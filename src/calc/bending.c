/* Of 'galeward calc bending'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/model.h"

struct webs_case {
    int count;
    double depth, clear, thickness;
};
struct bending_case {
    enum gw_metal alloy;
    enum gw_adm edition;
    const struct gw_tube *tube;
    double unbraced_length, cb;
    GW_LIST(double) quarter_moments;
    enum gw_bool welded, compact;
    double thickness, plastic_modulus_x, section_modulus_x, section_modulus_compression, section_modulus_tension;
    double area, inertia_y, torsion_constant, warping_constant, elastic_moment, compression_flange_share;
    enum gw_profile shape;
    double flange_inertia, flange_distance, web_inertia, web_distance;
    GW_LIST(struct gw_flat_element) elements;
    const struct webs_case *webs;
};
struct bending_answer {
    struct gw_bending_result result;
};

static const struct gw_choice EDITIONS[] = {{"adm-2015", GW_ADM_2015, ""}, {"adm-2020", GW_ADM_2020, ""}, {0}};
static const struct gw_choice SHAPES[] = {
    {"closed", GW_PROFILE_CLOSED, ""}, {"open", GW_PROFILE_OPEN, "symmetric about x or about its center"}, {0}};
static const struct gw_choice STRESSES[] = {
    {"compression", GW_ELEMENT_COMPRESSION, "uniform: a flange"}, {"bending", GW_ELEMENT_BENDING, "a web"}, {0}};

static const struct gw_field ELEMENT[] = {
    PICK(gw_flat_element, stress, STRESSES, .flags = GW_REQUIRED,
         .help = "uniform compression, or bending in its plane"),
    NUM(gw_flat_element, width, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0005, 2),
        .help = "clear, between what supports it"),
    NUM(gw_flat_element, thickness, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0001, 0.2), .help = "of the element"),
    F(gw_flat_element, edges, GW_T_INTEGER, .fallback = "2", LIMITS(1, 2), .help = "supported"),
    NUM(gw_flat_element, stress_ratio, GW_RATIO,
        .help = "bending: stress of the other edge over the edge most compressed; absent: -1, symmetric"),
};
static const struct gw_record ELEMENT_RECORD = RECORD("flat element", gw_flat_element, ELEMENT);
static const struct gw_field WEBS[] = {
    F(webs_case, count, GW_T_INTEGER, .flags = GW_REQUIRED, LIMITS(1, 20), .help = "that carry shear"),
    NUM(webs_case, depth, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.001, 2), .help = "whole depth of the section"),
    NUM(webs_case, clear, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.001, 2), .help = "clear height of a web"),
    NUM(webs_case, thickness, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0001, 0.2), .help = "of one web"),
};
static const struct gw_record WEBS_RECORD = RECORD("webs", webs_case, WEBS);

#define B(key_, dim_, ...) NUM(bending_case, key_, dim_, __VA_ARGS__)
static const struct gw_field CASE[] = {
    PICK(bending_case, alloy, gw_metal_choices, .flags = GW_REQUIRED, .help = "alloy and temper, or grade of steel"),
    PICK(bending_case, edition, EDITIONS, .fallback = "adm-2020", .help = "of the Aluminum Design Manual"),
    F(bending_case, tube, GW_T_RECORD, .record = &gw_tube_record,
      .help = "rectangular tube by its nominal walls (steel goes by the design wall of its grade); or the "
              "properties below"),
    B(unbraced_length, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0, 50),
      .help = "of the compression flange; 0: braced throughout"),
    B(cb, GW_RATIO, .help = "variation of the moment along the unbraced length; absent: 1"),
    B(quarter_moments, GW_MOMENT, .flags = GW_MANY | GW_MAGNITUDE,
      .help = "instead of cb: the greatest moment, and those at 1/4, 1/2, 3/4 of the unbraced length"),
    F(bending_case, welded, GW_T_BOOL, .help = "affected by welding where the moment is looked at"),
    F(bending_case, compact, GW_T_BOOL, .help = "no elements: shown elsewhere not to buckle before they yield"),
    B(thickness, GW_THICKNESS, LIMITS(0.0001, 0.2), .help = "of the thickest metal"),
    B(plastic_modulus_x, GW_SECTION_MODULUS, .help = "Z"),
    B(section_modulus_x, GW_SECTION_MODULUS, .help = "elastic, of both faces"),
    B(section_modulus_compression, GW_SECTION_MODULUS, .help = "elastic, compressed face, where the faces differ"),
    B(section_modulus_tension, GW_SECTION_MODULUS, .help = "elastic, face in tension"),
    B(inertia_y, GW_INERTIA, .help = "about the axis along the depth"),
    B(torsion_constant, GW_INERTIA, .help = "J"),
    B(warping_constant, GW_WARPING, .help = "C_w, of open shapes"),
    PICK(bending_case, shape, SHAPES, .help = "for lateral-torsional buckling"),
    B(elastic_moment, GW_MOMENT, .help = "of lateral-torsional buckling, from an analysis: any shape"),
    B(compression_flange_share, GW_RATIO, .help = "of Iy; near 0 or 1, cb is 1"),
    B(flange_inertia, GW_INERTIA, .help = "of all flange elements, about the axis of bending"),
    B(flange_distance, GW_THICKNESS, .help = "from the axis to the center of the compressed flange"),
    B(web_inertia, GW_INERTIA, .help = "of all web elements, about the axis of bending"),
    B(web_distance, GW_THICKNESS, .help = "from the axis to the compressed edge of the web"),
    F(bending_case, elements, GW_T_RECORD, .record = &ELEMENT_RECORD, .flags = GW_MANY,
      .help = "flat elements on the compression side"),
    F(bending_case, webs, GW_T_RECORD, .record = &WEBS_RECORD, .help = "for shear"),
};
static const struct gw_record BENDING_CASE_RECORD = RECORD("bending", bending_case, CASE);

#define A(key_, member_, dim_, help_) OUT(bending_answer, key_, result.member_, dim_, help_)
static const struct gw_field ANSWER[] = {
    A("yielding", yielding, GW_MOMENT, "allowable"),
    A("rupture", rupture, GW_MOMENT, "allowable; aluminum"),
    A("local", local, GW_MOMENT, "allowable, by buckling of elements"),
    A("lateral_torsional", lateral, GW_MOMENT, "allowable, at the unbraced length"),
    A("allowable", allowable, GW_MOMENT, "least of them; null where one is not known"),
    OUT_TEXT(bending_answer, "governing", result.governing, "yielding, rupture, local or lateral_torsional"),
    A("shear_allowable", shear_allowable, GW_FORCE, "of the webs"),
    A("nominal_yielding", nominal_yielding, GW_MOMENT, "before the safety factor"),
    A("nominal_rupture", nominal_rupture, GW_MOMENT, "before the safety factor"),
    A("nominal_local", nominal_local, GW_MOMENT, "before the safety factor"),
    A("nominal_lateral_torsional", nominal_lateral, GW_MOMENT, "before the safety factor"),
    A("nominal_shear", shear_nominal, GW_FORCE, "before the safety factor"),
    A("flange_stress", flange_stress, GW_STRESS, "nominal, weakest flange element"),
    A("web_stress", web_stress, GW_STRESS, "nominal, weakest web element"),
    A("shear_stress", shear_stress, GW_STRESS, "nominal"),
    A("slenderness", slenderness, GW_RATIO, "of lateral-torsional buckling, lambda"),
    A("slenderness_limit", slenderness_limit, GW_RATIO, "C_c: beyond it buckling is elastic"),
    A("cb", cb, GW_RATIO, "used"),
};
static const struct gw_record BENDING_ANSWER_RECORD = RECORD("bending result", bending_answer, ANSWER);

static const char *property_given(const struct bending_case *c)
{
    const struct {
        const char *key;
        bool given;
    } properties[] = {{"thickness", gw_given(c->thickness)},
                      {"plastic_modulus_x", gw_given(c->plastic_modulus_x)},
                      {"section_modulus_x", gw_given(c->section_modulus_x)},
                      {"section_modulus_compression", gw_given(c->section_modulus_compression)},
                      {"section_modulus_tension", gw_given(c->section_modulus_tension)},
                      {"inertia_y", gw_given(c->inertia_y)},
                      {"torsion_constant", gw_given(c->torsion_constant)},
                      {"warping_constant", gw_given(c->warping_constant)},
                      {"elastic_moment", gw_given(c->elastic_moment)},
                      {"compression_flange_share", gw_given(c->compression_flange_share)},
                      {"flange_inertia", gw_given(c->flange_inertia)},
                      {"flange_distance", gw_given(c->flange_distance)},
                      {"web_inertia", gw_given(c->web_inertia)},
                      {"web_distance", gw_given(c->web_distance)},
                      {"shape", c->shape != GW_PROFILE_UNSET},
                      {"compact", c->compact == GW_YES},
                      {"elements", c->elements.n > 0},
                      {"webs", c->webs != NULL}};
    for (size_t i = 0; i < COUNT(properties); i++)
        if (properties[i].given) return properties[i].key;
    return NULL;
}

static enum gw_status take_moduli(struct gw_bending *out, const struct bending_case *c, struct gw_engine *engine)
{
    const bool faces = gw_given(c->section_modulus_compression) || gw_given(c->section_modulus_tension);
    if (faces && gw_given(c->section_modulus_x))
        return gw_refuse(engine, GW_BAD_VALUE, "section_modulus_x", "give one modulus for both faces, or one for each");
    out->plastic = c->plastic_modulus_x;
    out->modulus_compression = faces ? c->section_modulus_compression : c->section_modulus_x;
    out->modulus_tension = faces ? c->section_modulus_tension : c->section_modulus_x;
    return GW_OK;
}

static enum gw_status take_elements(struct gw_bending *out, const struct bending_case *c, struct gw_engine *engine)
{
    if (c->elements.n > GW_FLAT_ELEMENTS)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "elements", "more than {} elements", gw_of_count(GW_FLAT_ELEMENTS));
    out->n_elements = (unsigned)c->elements.n;
    for (size_t i = 0; i < c->elements.n; i++) out->elements[i] = c->elements.items[i];
    out->flange_inertia = c->flange_inertia;
    out->flange_distance = c->flange_distance;
    out->web_inertia = c->web_inertia;
    out->web_distance = c->web_distance;
    if (!c->webs) return GW_OK;
    out->webs = c->webs->count;
    out->web_depth = c->webs->depth;
    out->web_clear = c->webs->clear;
    out->web_thickness = c->webs->thickness;
    return GW_OK;
}

static enum gw_status take_properties(struct gw_bending *out, const struct bending_case *c, struct gw_engine *engine)
{
    out->thickness = c->thickness;
    out->inertia_y = c->inertia_y;
    out->torsion = c->torsion_constant;
    out->warping = c->warping_constant;
    out->elastic_moment = c->elastic_moment;
    out->compression_flange_share = c->compression_flange_share;
    out->profile = c->shape;
    out->compact = c->compact == GW_YES;
    enum gw_status status = take_moduli(out, c, engine);
    return status ? status : take_elements(out, c, engine);
}

static enum gw_status take_moments(struct gw_bending *out, const struct bending_case *c, struct gw_engine *engine)
{
    if (!c->quarter_moments.n) return GW_OK;
    if (c->quarter_moments.n != 4)
        return gw_refuse(engine, GW_BAD_VALUE, "quarter_moments",
                         "quarter_moments are four magnitudes: the greatest, then those at 1/4, 1/2 and 3/4");
    for (size_t i = 0; i < 4; i++) out->quarter_moments[i] = c->quarter_moments.items[i];
    return GW_OK;
}

static enum gw_status run_bending(void *out, const void *in, struct gw_engine *engine)
{
    const struct bending_case *given = in;
    struct bending_answer *answer = out;
    struct gw_bending bending;
    const char *property = property_given(given);
    gw_bending_clear(&bending);
    if (given->tube && property)
        return gw_refuse(engine, GW_BAD_VALUE, property, "give a tube, or the section's properties, not both");
    enum gw_status status =
        given->tube ? gw_bending_tube(&bending, given->tube, engine) : take_properties(&bending, given, engine);
    if (!status) status = take_moments(&bending, given, engine);
    if (status) return status;
    bending.metal = given->alloy;
    bending.edition = given->edition;
    bending.unbraced_length = given->unbraced_length;
    bending.cb = given->cb;
    bending.welded = given->welded == GW_YES;
    return gw_bending_strength(&answer->result, &bending, engine);
}

static const char *const *bending_notes(const void *out, size_t *n)
{
    const struct bending_answer *answer = out;
    *n = answer->result.n_notes;
    return answer->result.notes;
}

const struct gw_calc_kind gw_kind_bending = {
    .name = "bending",
    .help = "allowable moment and shear of an aluminum or steel member; steel tubes by their design wall",
    .example = "alloy=6063-T6 tube='{width: 2.5 in, depth: 6 in, flange: 0.125 in, web: 0.125 in}' "
               "unbraced_length='12 ft'",
    .input = &BENDING_CASE_RECORD,
    .output = &BENDING_ANSWER_RECORD,
    .run = run_bending,
    .notes = bending_notes};
