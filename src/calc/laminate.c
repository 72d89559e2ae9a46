/* Field tables of 'galeward calc laminate'. */
#include "glass.h"

#include "galeward/calc.h"
#include "galeward/model.h"

#include <string.h>

#define COUNT(array) (sizeof(array) / sizeof *(array))

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
    {.key = "thickness",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct interlayer_case, thickness),
     .dim = GW_THICKNESS,
     .flags = GW_REQUIRED,
     .least = 0.0001,
     .greatest = 0.02,
     .help = "nominal"},
    {.key = "shear_modulus",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct interlayer_case, shear_modulus),
     .dim = GW_STRESS,
     .help = "from test data; or material, duration and temperature"},
    {.key = "material",
     .type = GW_T_CHOICE,
     .offset = offsetof(struct interlayer_case, material),
     .choices = gw_interlayer_choices,
     .help = "whose table"},
    {.key = "duration",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct interlayer_case, duration),
     .dim = GW_TIME,
     .help = "of the load"},
    {.key = "temperature",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct interlayer_case, temperature),
     .dim = GW_TEMPERATURE,
     .help = "of the interlayer"},
};
static const struct gw_record INTERLAYER_RECORD = {
    .name = "interlayer", .size = sizeof(struct interlayer_case), .fields = INTERLAYER, .n = COUNT(INTERLAYER)};

static const struct gw_field LAMINATE[] = {
    {.key = "plies",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct laminate_case, plies),
     .dim = GW_THICKNESS,
     .flags = GW_REQUIRED | GW_MANY,
     .least = 0.001,
     .greatest = 0.03,
     .help = "two minimum thicknesses, outer and inner"},
    {.key = "interlayer",
     .type = GW_T_RECORD,
     .offset = offsetof(struct laminate_case, interlayer),
     .record = &INTERLAYER_RECORD,
     .flags = GW_REQUIRED,
     .help = "thickness and stiffness"},
    {.key = "length",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct laminate_case, length),
     .dim = GW_LENGTH,
     .flags = GW_REQUIRED,
     .help = "shorter bending length"},
    {.key = "elastic_modulus",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct laminate_case, elastic_modulus),
     .dim = GW_STRESS,
     .help = "of glass; absent: the table's"},
};
const struct gw_record gw_laminate_record = {
    .name = "laminate", .size = sizeof(struct laminate_case), .fields = LAMINATE, .n = COUNT(LAMINATE)};

static const struct gw_field LAMINATE_OUT[] = {
    {.key = "gamma",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct laminate_answer, result.gamma),
     .help = "shear transfer, 0 layered to 1 monolithic"},
    {.key = "shear_modulus",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct laminate_answer, result.shear_modulus),
     .dim = GW_STRESS,
     .help = "of the interlayer, used"},
    {.key = "effective_thickness_deflection",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct laminate_answer, result.deflection),
     .dim = GW_THICKNESS,
     .help = "for deflection"},
    {.key = "effective_thickness_stress",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct laminate_answer, stress),
     .dim = GW_THICKNESS,
     .flags = GW_MANY,
     .help = "for the stress of each ply"},
};
const struct gw_record gw_laminate_answer_record = {.name = "laminate result",
                                                    .size = sizeof(struct laminate_answer),
                                                    .fields = LAMINATE_OUT,
                                                    .n = COUNT(LAMINATE_OUT)};

enum gw_status gw_run_laminate(void *out, const void *in, struct gw_engine *engine)
{
    const struct laminate_case *given = in;
    struct laminate_answer *answer = out;
    if (given->plies.n != 2)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "plies",
                         "the effective thickness holds for two plies; here are %zu", given->plies.n);
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
