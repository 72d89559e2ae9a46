/* Of 'galeward calc cavity'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/cavity.h"
#include "galeward/model.h"

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

static const struct gw_field LITE[] = {NUM(lite_thickness, thickness, GW_THICKNESS, .flags = GW_REQUIRED,
                                           LIMITS(0.001, 0.03), .help = "minimum thickness")};
static const struct gw_record LITE_RECORD = RECORD("lite", lite_thickness, LITE, .scalar_key = "thickness");
static const struct gw_field SEALING[] = {
    NUM(sealing, atmospheric_pressure, GW_PRESSURE, .flags = GW_REQUIRED, LIMITS(30000, 120000),
        .help = "where and when the unit was sealed"),
    NUM(sealing, temperature, GW_TEMPERATURE, .flags = GW_REQUIRED, LIMITS(200, 400), .help = "of the gas at sealing"),
};
static const struct gw_record SEALING_RECORD = RECORD("sealing", sealing, SEALING);
static const struct gw_field CASE[] = {
    NUM(cavity_case, width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "clear opening"),
    NUM(cavity_case, height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "clear opening"),
    F(cavity_case, lites, GW_T_RECORD, .record = &LITE_RECORD, .flags = GW_REQUIRED | GW_MANY,
      .help = "two or three, from outside"),
    NUM(cavity_case, gaps, GW_THICKNESS, .flags = GW_REQUIRED | GW_MANY, LIMITS(0.001, 0.2),
        .help = "cavity widths at sealing"),
    NUM(cavity_case, pressure_outdoor, GW_PRESSURE, .fallback = "0 Pa", .help = "on the outer lite, toward indoors"),
    NUM(cavity_case, pressure_indoor, GW_PRESSURE, .fallback = "0 Pa", .help = "on the inner lite, toward indoors"),
    NUM(cavity_case, atmospheric_pressure, GW_PRESSURE, .flags = GW_REQUIRED, LIMITS(30000, 120000),
        .help = "in service"),
    NUM(cavity_case, temperature, GW_TEMPERATURE, .flags = GW_REQUIRED, LIMITS(200, 400),
        .help = "of the gas in service"),
    F(cavity_case, sealing, GW_T_RECORD, .record = &SEALING_RECORD, .flags = GW_REQUIRED, .help = "state at sealing"),
};
static const struct gw_record CAVITY_CASE_RECORD = RECORD("cavity", cavity_case, CASE);

#define EACH(key_, member_, dim_, help_) OUT_MANY(cavity_answer, key_, member_, dim_, help_)
static const struct gw_field ANSWER[] = {
    EACH("cavity_gauge", gauge, GW_PRESSURE, "above the atmosphere"),
    EACH("net", net, GW_PRESSURE, "on each lite, toward indoors"),
    EACH("deflection", deflection, GW_THICKNESS, "center deflection, toward indoors"),
    EACH("stress_max", stress_max, GW_STRESS, "largest tension of each lite"),
    EACH("share", share, GW_RATIO, "of the applied pressure"),
    OUT_WHOLE(cavity_answer, "iterations", result.iterations, "Newton steps"),
    OUT(cavity_answer, "residual", result.residual, GW_RATIO, "of the gas law, relative"),
};
static const struct gw_record CAVITY_ANSWER_RECORD = RECORD("cavity result", cavity_answer, ANSWER);

static enum gw_status run_cavity(void *out, const void *in, struct gw_engine *engine)
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
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "lites", "two or three lites; here are {}",
                         gw_of_count((long)given->lites.n));
    if (given->gaps.n + 1 != given->lites.n)
        return gw_refuse(engine, GW_BAD_VALUE, "gaps", "{} gaps between {} lites", gw_of_count((long)given->gaps.n),
                         gw_of_count((long)given->lites.n));
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

const struct gw_calc_kind gw_kind_cavity = {
    .name = "cavity",
    .help = "sealed insulating unit of two or three monolithic lites: cavity pressures, load sharing, stresses",
    .example = "width='1800 mm' height='1200 mm' lites='[5.56 mm, 5.56 mm]' gaps='[13.2 mm]' pressure_outdoor='2 kPa' "
               "atmospheric_pressure='101.325 kPa' temperature='288.15 K' "
               "sealing='{atmospheric_pressure: 101.325 kPa, temperature: 288.15 K}'",
    .input = &CAVITY_CASE_RECORD,
    .output = &CAVITY_ANSWER_RECORD,
    .run = run_cavity,
    .workspace = GW_PLATE_WORKSPACE};
