/* Field tables of 'galeward calc cavity'. */
#include "glass.h"

#include "galeward/cavity.h"
#include "galeward/model.h"

#define COUNT(array) (sizeof(array) / sizeof *(array))
#define NUMBER(struct_, key_, dim_, ...)                                                                               \
    {                                                                                                                  \
        .key = #key_, .type = GW_T_NUMBER, .offset = offsetof(struct struct_, key_), .dim = dim_, __VA_ARGS__          \
    }

struct lite_thickness {
    double thickness;
};
struct sealing {
    double atmospheric_pressure, temperature;
};
struct cavity_case {
    double width, height;
    GW_LIST(struct lite_thickness) lites;
    GW_LIST(double) gaps;
    double pressure_outdoor, pressure_indoor, atmospheric_pressure, temperature;
    const struct sealing *sealing;
};
struct cavity_answer {
    struct gw_cavity_result result;
    GW_LIST(double) gauge, net, deflection, stress_max, share;
};

static const struct gw_field LITE[] = {NUMBER(lite_thickness, thickness, GW_THICKNESS, .flags = GW_REQUIRED,
                                              .least = 0.001, .greatest = 0.03, .help = "minimum thickness")};
static const struct gw_record LITE_RECORD = {
    .name = "lite", .size = sizeof(struct lite_thickness), .fields = LITE, .n = COUNT(LITE), .scalar_key = "thickness"};
static const struct gw_field SEALING[] = {
    NUMBER(sealing, atmospheric_pressure, GW_PRESSURE, .flags = GW_REQUIRED, .least = 30000, .greatest = 120000,
           .help = "where and when the unit was sealed"),
    NUMBER(sealing, temperature, GW_TEMPERATURE, .flags = GW_REQUIRED, .least = 200, .greatest = 400,
           .help = "of the gas at sealing"),
};
static const struct gw_record SEALING_RECORD = {
    .name = "sealing", .size = sizeof(struct sealing), .fields = SEALING, .n = COUNT(SEALING)};
static const struct gw_field CASE[] = {
    NUMBER(cavity_case, width, GW_LENGTH, .flags = GW_REQUIRED, .least = 0.01, .greatest = 20, .help = "clear opening"),
    NUMBER(cavity_case, height, GW_LENGTH, .flags = GW_REQUIRED, .least = 0.01, .greatest = 20,
           .help = "clear opening"),
    {.key = "lites",
     .type = GW_T_RECORD,
     .offset = offsetof(struct cavity_case, lites),
     .record = &LITE_RECORD,
     .flags = GW_REQUIRED | GW_MANY,
     .help = "two or three, from outside"},
    NUMBER(cavity_case, gaps, GW_THICKNESS, .flags = GW_REQUIRED | GW_MANY, .least = 0.001, .greatest = 0.2,
           .help = "cavity widths at sealing"),
    NUMBER(cavity_case, pressure_outdoor, GW_PRESSURE, .fallback = "0 Pa", .help = "on the outer lite, toward indoors"),
    NUMBER(cavity_case, pressure_indoor, GW_PRESSURE, .fallback = "0 Pa", .help = "on the inner lite, toward indoors"),
    NUMBER(cavity_case, atmospheric_pressure, GW_PRESSURE, .flags = GW_REQUIRED, .least = 30000, .greatest = 120000,
           .help = "in service"),
    NUMBER(cavity_case, temperature, GW_TEMPERATURE, .flags = GW_REQUIRED, .least = 200, .greatest = 400,
           .help = "of the gas in service"),
    {.key = "sealing",
     .type = GW_T_RECORD,
     .offset = offsetof(struct cavity_case, sealing),
     .record = &SEALING_RECORD,
     .flags = GW_REQUIRED,
     .help = "state at sealing"},
};
const struct gw_record gw_cavity_case_record = {
    .name = "cavity", .size = sizeof(struct cavity_case), .fields = CASE, .n = COUNT(CASE)};

#define LIST(key_, member_, dim_, help_)                                                                               \
    {                                                                                                                  \
        .key = key_, .type = GW_T_NUMBER, .offset = offsetof(struct cavity_answer, member_), .dim = dim_,              \
        .flags = GW_MANY, .help = help_                                                                                \
    }
static const struct gw_field ANSWER[] = {
    LIST("cavity_gauge", gauge, GW_PRESSURE, "above the atmosphere"),
    LIST("net", net, GW_PRESSURE, "on each lite, toward indoors"),
    LIST("deflection", deflection, GW_THICKNESS, "center, toward indoors"),
    LIST("stress_max", stress_max, GW_STRESS, "largest tension of each lite"),
    LIST("share", share, GW_RATIO, "of the applied pressure"),
    {.key = "iterations",
     .type = GW_T_INTEGER,
     .offset = offsetof(struct cavity_answer, result.iterations),
     .help = "Newton steps"},
    {.key = "residual",
     .type = GW_T_NUMBER,
     .offset = offsetof(struct cavity_answer, result.residual),
     .help = "of the gas law, relative"},
};
const struct gw_record gw_cavity_answer_record = {
    .name = "cavity result", .size = sizeof(struct cavity_answer), .fields = ANSWER, .n = COUNT(ANSWER)};

enum gw_status gw_run_cavity(void *out, const void *in, struct gw_engine *engine)
{
    const struct cavity_case *given = in;
    struct cavity_answer *answer = out;
    struct gw_cavity cavity = {.width = given->width,
                               .height = given->height,
                               .n_lites = (int)given->lites.n,
                               .pressure_outdoor = given->pressure_outdoor,
                               .pressure_indoor = given->pressure_indoor,
                               .atmospheric_pressure = given->atmospheric_pressure,
                               .temperature = given->temperature,
                               .sealing_pressure = given->sealing->atmospheric_pressure,
                               .sealing_temperature = given->sealing->temperature};
    if (given->lites.n < 2 || given->lites.n > GW_CAVITY_LITES)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "lites", "two or three lites; here are %zu", given->lites.n);
    if (given->gaps.n + 1 != given->lites.n)
        return gw_refuse(engine, GW_BAD_VALUE, "gaps", "%zu gaps between %zu lites", given->gaps.n, given->lites.n);
    for (size_t i = 0; i < given->lites.n; i++) cavity.thickness[i] = given->lites.items[i].thickness;
    for (size_t i = 0; i < given->gaps.n; i++) cavity.gaps[i] = given->gaps.items[i];
    enum gw_status status = gw_cavity_solve(&answer->result, &cavity, engine);
    struct gw_cavity_result *r = &answer->result;
    answer->gauge.items = r->gauge, answer->net.items = r->net, answer->deflection.items = r->deflection;
    answer->stress_max.items = r->stress_max, answer->share.items = r->share;
    answer->gauge.n = given->gaps.n;
    answer->net.n = answer->deflection.n = answer->stress_max.n = answer->share.n = given->lites.n;
    return status;
}
