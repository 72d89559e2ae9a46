/* Field tables of the glass kinds of 'galeward calc'. */
#include "records_glass.h"

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

static const struct gw_choice MATERIALS[] = {
    {"pvb", GW_INTERLAYER_PVB, ""}, {"ionoplast", GW_INTERLAYER_IONOPLAST, ""}, {0}};

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
     .choices = MATERIALS,
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

/* A lite as the stream gives it: layers from outside to inside. */
struct lite_layer {
    double glass;
    enum gw_treatment treatment;
    double cavity;
    const char *interlayer;
};
struct lite_case {
    double width, height;
    GW_LIST(struct lite_layer) layers;
    int support;
    double duration, temperature, probability, pressure;
};
enum { LITE_GLASSES = 2 };
struct lite_answer {
    struct gw_lite_result result; /* of the layer that governs */
    struct gw_lite_result each[LITE_GLASSES];
    GW_LIST(struct gw_lite_result) layers;
    const char *governing, *basis;
    const char *notes[2];
    size_t n_notes;
};

static const struct gw_field LITE_LAYER[] = {
    {.key = "glass",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct lite_layer, glass),
     .dim = GW_THICKNESS,
     .least = 0.001,
     .greatest = 0.03,
     .help = "nominal designation"},
    {.key = "treatment",
     .type = GW_T_CHOICE,
     .offset = offsetof(struct lite_layer, treatment),
     .choices = gw_treatment_choices,
     .help = "heat treatment"},
    {.key = "cavity",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct lite_layer, cavity),
     .dim = GW_THICKNESS,
     .least = 0.001,
     .greatest = 0.2,
     .help = "sealed cavity"},
    {.key = "interlayer",
     .type = GW_T_TEXT,
     .offset = offsetof(struct lite_layer, interlayer),
     .help = "interlayer (not built yet)"},
};
static const struct gw_record LITE_LAYER_RECORD = {
    .name = "layer", .size = sizeof(struct lite_layer), .fields = LITE_LAYER, .n = COUNT(LITE_LAYER)};
#define LITE_NUMBER(key_, dim_, ...)                                                                                   \
    {                                                                                                                  \
        .key = #key_, .type = GW_T_NUMBER, .offset = offsetof(struct lite_case, key_), .dim = dim_, __VA_ARGS__        \
    }
static const struct gw_field LITE[] = {
    LITE_NUMBER(width, GW_LENGTH, .flags = GW_REQUIRED, .least = 0.01, .greatest = 20, .help = "clear opening"),
    LITE_NUMBER(height, GW_LENGTH, .flags = GW_REQUIRED, .least = 0.01, .greatest = 20, .help = "clear opening"),
    {.key = "layers",
     .type = GW_T_RECORD,
     .offset = offsetof(struct lite_case, layers),
     .record = &LITE_LAYER_RECORD,
     .flags = GW_REQUIRED | GW_MANY,
     .help = "from outside to inside; one glass, or glass, cavity, glass"},
    {.key = "support",
     .type = GW_T_INTEGER,
     .offset = offsetof(struct lite_case, support),
     .fallback = "4",
     .least = 1,
     .greatest = 4,
     .help = "edges held; 4 in this version"},
    LITE_NUMBER(duration, GW_TIME, .help = "of the load; absent: 3 s"),
    LITE_NUMBER(temperature, GW_TEMPERATURE, .help = "of interlayers"),
    LITE_NUMBER(probability, GW_RATIO, .help = "of breakage; absent: 0.008"),
    LITE_NUMBER(pressure, GW_PRESSURE, .flags = GW_MAGNITUDE, .help = "allowable-stress level"),
};
const struct gw_record gw_lite_case_record = {
    .name = "lite", .size = sizeof(struct lite_case), .fields = LITE, .n = COUNT(LITE)};

#define LAYER_OUT(key_, member_, dim_, help_)                                                                          \
    {                                                                                                                  \
        .key = key_, .type = GW_T_NUMBER, .offset = offsetof(struct gw_lite_result, member_), .dim = dim_,             \
        .help = help_                                                                                                  \
    }
static const struct gw_field LAYER_ANSWER[] = {
    LAYER_OUT("thickness", thickness, GW_THICKNESS, "minimum of the designation"),
    LAYER_OUT("nonfactored_load", nonfactored_load, GW_PRESSURE, "annealed, at the duration and probability"),
    LAYER_OUT("glass_type_factor", type_factor, GW_RATIO, ""),
    LAYER_OUT("load_share", share, GW_RATIO, "of the unit's load"),
    LAYER_OUT("load_resistance", load_resistance, GW_PRESSURE, "of the unit by this layer"),
    LAYER_OUT("deflection", deflection, GW_THICKNESS, "center, under its share"),
    LAYER_OUT("stress_max", stress_max, GW_STRESS, "largest tension, unloaded face"),
    LAYER_OUT("probability", breakage, GW_RATIO, "of breakage under the pressure"),
    LAYER_OUT("utilisation", utilisation, GW_RATIO, "pressure over load resistance"),
    LAYER_OUT("weight", weight, GW_PRESSURE, "of the layer"),
};
static const struct gw_record LAYER_ANSWER_RECORD = {
    .name = "layer result", .size = sizeof(struct gw_lite_result), .fields = LAYER_ANSWER, .n = COUNT(LAYER_ANSWER)};
#define LITE_OUT(key_, member_, dim_, help_)                                                                           \
    {                                                                                                                  \
        .key = key_, .type = GW_T_NUMBER, .offset = offsetof(struct lite_answer, member_), .dim = dim_, .help = help_  \
    }
static const struct gw_field LITE_ANSWER[] = {
    LITE_OUT("thickness", result.thickness, GW_THICKNESS, "minimum of the designation"),
    LITE_OUT("nonfactored_load", result.nonfactored_load, GW_PRESSURE, "annealed, at the duration and probability"),
    LITE_OUT("glass_type_factor", result.type_factor, GW_RATIO, ""),
    LITE_OUT("load_resistance", result.load_resistance, GW_PRESSURE, "allowable-stress level"),
    LITE_OUT("deflection", result.deflection, GW_THICKNESS, "center, under the pressure"),
    LITE_OUT("stress_max", result.stress_max, GW_STRESS, "largest tension, unloaded face"),
    LITE_OUT("probability", result.breakage, GW_RATIO, "of breakage under the pressure"),
    LITE_OUT("utilisation", result.utilisation, GW_RATIO, "pressure over load resistance"),
    {.key = "governing",
     .type = GW_T_TEXT,
     .offset = offsetof(struct lite_answer, governing),
     .help = "layer that governs"},
    {.key = "basis",
     .type = GW_T_TEXT,
     .offset = offsetof(struct lite_answer, basis),
     .help = "first principles or the standard's factors"},
    LITE_OUT("weight", result.weight, GW_PRESSURE, "of the glass"),
    {.key = "layers",
     .type = GW_T_RECORD,
     .offset = offsetof(struct lite_answer, layers),
     .record = &LAYER_ANSWER_RECORD,
     .flags = GW_MANY,
     .help = "each glass layer"},
};
const struct gw_record gw_lite_answer_record = {
    .name = "lite result", .size = sizeof(struct lite_answer), .fields = LITE_ANSWER, .n = COUNT(LITE_ANSWER)};

static bool is_glass(const struct lite_layer *layer)
{
    return gw_given(layer->glass) && !gw_given(layer->cavity) && !layer->interlayer;
}

static bool is_cavity(const struct lite_layer *layer)
{
    return gw_given(layer->cavity) && !gw_given(layer->glass) && !layer->interlayer;
}

/* Number of glass layers of the make-ups that are built: one glass, or glass, cavity, glass; 0 for others. */
static int glasses_of(const struct lite_case *given)
{
    const struct lite_layer *l = given->layers.items;
    if (given->layers.n == 1 && is_glass(l)) return 1;
    return given->layers.n == 3 && is_glass(l) && is_cavity(l + 1) && is_glass(l + 2) ? 2 : 0;
}

static const struct lite_layer *glass_layer(const struct lite_case *given, int i)
{
    return &given->layers.items[2 * i];
}

static enum gw_status find_shares(double shares[LITE_GLASSES], const struct lite_case *given, int n,
                                  struct gw_engine *engine)
{
    double thickness[LITE_GLASSES] = {0};
    enum gw_status status = GW_OK;
    shares[0] = 1;
    if (n == 1) return GW_OK;
    for (int i = 0; i < n && status == GW_OK; i++)
        status = gw_glass_minimum(&thickness[i], glass_layer(given, i)->glass, engine);
    if (status == GW_OK) gw_glass_shares(shares, thickness, engine);
    return status;
}

enum gw_status gw_run_lite(void *out, const void *in, struct gw_engine *engine)
{
    const struct lite_case *given = in;
    struct lite_answer *answer = out;
    double shares[LITE_GLASSES], weight = 0;
    int n = glasses_of(given), governing = 0;
    if (given->support != 4)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "support", "support on fewer than four edges is not built yet");
    if (!n)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "layers",
                         "laminated and triple make-ups are not built yet: give one glass, or glass, cavity, glass");
    enum gw_status status = find_shares(shares, given, n, engine);
    for (int i = 0; i < n && status == GW_OK; i++) {
        const struct gw_lite lite = {.width = given->width,
                                     .height = given->height,
                                     .nominal = glass_layer(given, i)->glass,
                                     .treatment = glass_layer(given, i)->treatment,
                                     .other = n == 2 ? glass_layer(given, 1 - i)->treatment : GW_TREATMENT_UNSET,
                                     .share = shares[i],
                                     .duration = given->duration,
                                     .probability = given->probability,
                                     .pressure = given->pressure};
        status = gw_lite_strength(&answer->each[i], &lite, engine);
        if (status != GW_OK) return status;
        if (answer->each[i].load_resistance < answer->each[governing].load_resistance) governing = i;
        weight += answer->each[i].weight;
    }
    if (status != GW_OK) return status;
    answer->result = answer->each[governing];
    answer->result.weight = weight;
    answer->layers.items = answer->each;
    answer->layers.n = (size_t)n;
    answer->governing = governing ? "layer 2" : "layer 1";
    bool model_only = n == 1 && glass_layer(given, 0)->treatment == GW_ANNEALED;
    answer->basis = model_only ? "failure model"
                    : n == 1   ? "failure model with the standard's glass type factor"
                               : "failure model with the standard's factors and load share";
    answer->n_notes = 0;
    if (answer->result.beyond_charts)
        answer->notes[answer->n_notes++] = "the load lies beyond the standard's charts, which end at 15 kPa";
    return GW_OK;
}

const char *const *gw_lite_notes(const void *out, size_t *n)
{
    const struct lite_answer *answer = out;
    *n = answer->n_notes;
    return answer->notes;
}

bool gw_lite_plate(struct gw_plate_case *plate, const char **layer, const void *in, const void *out)
{
    const struct lite_case *given = in;
    const struct lite_answer *answer = out;
    if (!gw_given(given->pressure)) return false;
    *layer = answer->governing;
    *plate = (struct gw_plate_case){.width = given->width,
                                    .height = given->height,
                                    .thickness = answer->result.thickness,
                                    .pressure = given->pressure * answer->result.share,
                                    .elastic_modulus = GW_ABSENT,
                                    .poissons_ratio = GW_ABSENT,
                                    .edges = GW_PLATE_EDGES_UNSET,
                                    .method = GW_PLATE_DIRECT,
                                    .terms = GW_NO_INTEGER};
    return true;
}
