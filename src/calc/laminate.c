/* Of 'galeward calc laminate'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/model.h"

/* The stream's shape of a laminate; the engine's is flat. */
struct interlayer_case {
    double thickness, shear_modulus;
    enum gw_interlayer material;
    double duration, temperature;
};
struct laminate_case {
    GW_LIST(double) plies;
    const struct interlayer_case *interlayer;
    double length, elastic_modulus;
};
struct laminate_answer {
    struct gw_laminate_result result;
    GW_LIST(double) stress;
};

static const struct gw_field INTERLAYER[] = {
    NUM(interlayer_case, thickness, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0001, 0.02), .help = "nominal"),
    NUM(interlayer_case, shear_modulus, GW_STRESS, .help = "from test data; or material, duration and temperature"),
    PICK(interlayer_case, material, gw_interlayer_choices, .also = gw_interlayer_words, .help = "whose table"),
    NUM(interlayer_case, duration, GW_TIME, .help = "of the load"),
    NUM(interlayer_case, temperature, GW_TEMPERATURE, .help = "of the interlayer"),
};
static const struct gw_record INTERLAYER_RECORD = RECORD("interlayer", interlayer_case, INTERLAYER);

static const struct gw_field LAMINATE[] = {
    NUM(laminate_case, plies, GW_THICKNESS, .flags = GW_REQUIRED | GW_MANY, LIMITS(0.001, 0.03),
        .help = "two minimum thicknesses, outer and inner"),
    F(laminate_case, interlayer, GW_T_RECORD, .record = &INTERLAYER_RECORD, .flags = GW_REQUIRED,
      .help = "thickness and stiffness"),
    NUM(laminate_case, length, GW_LENGTH, .flags = GW_REQUIRED, .help = "shorter bending length"),
    NUM(laminate_case, elastic_modulus, GW_STRESS, .help = "of glass; absent: the table's"),
};
static const struct gw_record LAMINATE_RECORD = RECORD("laminate", laminate_case, LAMINATE);

static const struct gw_field LAMINATE_OUT[] = {
    OUT(laminate_answer, "gamma", result.gamma, GW_RATIO, "shear transfer, 0 layered to 1 monolithic"),
    OUT(laminate_answer, "shear_modulus", result.shear_modulus, GW_STRESS, "of the interlayer, used"),
    OUT(laminate_answer, "effective_thickness_deflection", result.deflection, GW_THICKNESS, "for deflection"),
    OUT_MANY(laminate_answer, "effective_thickness_stress", stress, GW_THICKNESS, "for the stress of each ply"),
};
static const struct gw_record LAMINATE_ANSWER_RECORD = RECORD("laminate result", laminate_answer, LAMINATE_OUT);

static enum gw_status run_laminate(void *out, const void *in, struct gw_engine *engine)
{
    const struct laminate_case *given = in;
    struct laminate_answer *answer = out;
    if (given->plies.n != 2)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "plies", "the effective thickness holds for two plies; here are {}",
                         gw_of_count((long)given->plies.n));
    struct gw_laminate laminate = {.plies = {given->plies.items[0], given->plies.items[1]},
                                   .interlayer = given->interlayer->thickness,
                                   .shear_modulus = given->interlayer->shear_modulus,
                                   .material = given->interlayer->material,
                                   .duration = given->interlayer->duration,
                                   .temperature = given->interlayer->temperature,
                                   .length = given->length,
                                   .elastic_modulus = given->elastic_modulus};
    enum gw_status status = gw_laminate_thickness(&answer->result, &laminate, engine);
    answer->stress.items = answer->result.stress;
    answer->stress.n = COUNT(answer->result.stress);
    return status;
}

const struct gw_calc_kind gw_kind_laminate = {
    .name = "laminate",
    .help = "effective thicknesses of laminated glass, two plies",
    .example = "plies='[5.56 mm, 5.56 mm]' interlayer.thickness='1.52 mm' interlayer.shear_modulus='7.1 MPa' "
               "length='1500 mm'",
    .input = &LAMINATE_RECORD,
    .output = &LAMINATE_ANSWER_RECORD,
    .run = run_laminate};
