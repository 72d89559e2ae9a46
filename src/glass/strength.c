/* The surface-flaw failure model on the plate solution. */
#include "galeward/glass.h"

#include "tables_data.h"

static const char MODEL[] = "ASTM E1300 failure model";

const struct gw_glass_thickness *gw_glass_designation(const struct gw_tables *tables, double nominal)
{
    const double near =
        1e-4; /* m: 0.1 mm tells every designation from its neighbors, and 1/4 in from 6 mm is a spelling */
    for (size_t i = 0; i < GW_N_GLASS_THICKNESS; i++) {
        const struct gw_glass_thickness *row = &tables->glass_thickness[i];
        if (fabs(nominal - row->metric_m) < near || fabs(nominal - row->inch_m) < near) return row;
    }
    return NULL;
}

enum gw_status gw_glass_minimum(double *out, double nominal, struct gw_engine *engine)
{
    const struct gw_glass_thickness *row = gw_glass_designation(engine->tables, nominal);
    if (!row)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "glass",
                         "no nominal thickness of the standard: 'galeward tables glass_thickness' lists them");
    gw_used_add(&engine->used, &row->row);
    GW_STEP(engine, "t", GW_THICKNESS, row->minimum_m, row->row.source, "t_min",
            {"t_min", row->minimum_m, GW_THICKNESS});
    *out = row->minimum_m;
    return GW_OK;
}

/* ln B of the lite under a pressure; the plate solution is kept in `plate`. */
static enum gw_status log_risk(double *out, struct gw_plate_result *plate, const struct gw_plate_case *lite,
                               double duration, struct gw_engine *engine)
{
    const struct gw_glass_flaws *flaws = &engine->tables->glass_flaws[0];
    const struct gw_glass_material *glass = &engine->tables->glass_material[0];
    enum gw_status status = gw_plate(plate, lite, engine);
    if (status != GW_OK) return status;
    double t = lite->thickness;
    *out = log(flaws->k) + (1 - flaws->m) * log(lite->width * lite->height) +
           flaws->m * log(glass->elastic_modulus_pa * t * t) +
           flaws->m / flaws->n * log(duration / flaws->reference_duration_s) + log(plate->risk);
    return GW_OK;
}

static struct gw_plate_case plate_case(double width, double height, double thickness, double pressure)
{
    return (struct gw_plate_case){.width = width,
                                  .height = height,
                                  .thickness = thickness,
                                  .pressure = pressure,
                                  .elastic_modulus = GW_ABSENT,
                                  .poissons_ratio = GW_ABSENT,
                                  .terms = GW_NO_INTEGER,
                                  .want = GW_PLATE_RISK};
}

static enum gw_status breakage(double *out, struct gw_plate_result *plate, const struct gw_plate_case *lite,
                               double duration, struct gw_engine *engine)
{
    double log_b;
    enum gw_status status = log_risk(&log_b, plate, lite, duration, engine);
    if (status == GW_OK) *out = -expm1(-exp(log_b));
    return status;
}

enum gw_status gw_glass_breakage(double *out, double width, double height, double thickness, double pressure,
                                 double duration, struct gw_engine *engine)
{
    struct gw_plate_result plate;
    struct gw_plate_case lite = plate_case(width, height, thickness, pressure);
    return breakage(out, &plate, &lite, duration, engine);
}

/* Pressure at a given q*. */
static double pressure_at(double q_star, const struct gw_plate_case *lite, const struct gw_engine *engine)
{
    double ratio = lite->thickness / lite->width * (lite->thickness / lite->height);
    return q_star * engine->tables->glass_material[0].elastic_modulus_pa * ratio * ratio;
}

static void trace_load(const struct gw_plate_case *lite, const struct gw_plate_result *plate, double duration,
                       double probability, struct gw_engine *engine)
{
    const struct gw_glass_flaws *flaws = &engine->tables->glass_flaws[0];
    const double area = lite->width * lite->height, e = engine->tables->glass_material[0].elastic_modulus_pa;
    double stiffness = e * lite->thickness * lite->thickness;
    GW_STEP(engine, "q*_NFL", GW_RATIO, plate->q_star, MODEL, "q_NFL*(a*b)^2/(E*t^4)",
            {"q_NFL", lite->pressure, GW_STRESS}, {"a", fmax(lite->width, lite->height), GW_THICKNESS},
            {"b", fmin(lite->width, lite->height), GW_THICKNESS}, {"E", e, GW_STRESS},
            {"t|t|h_", lite->thickness, GW_THICKNESS});
    GW_FOUND(engine, "J", GW_RATIO, plate->risk, MODEL,
             "the risk integral of the plate at that q*_NFL and ratio of the sides",
             {"q*_NFL", plate->q_star, GW_RATIO});
    double b = exp(log(flaws->k) + (1 - flaws->m) * log(area) + flaws->m * log(stiffness) +
                   flaws->m / flaws->n * log(duration / flaws->reference_duration_s) + log(plate->risk));
    /* Numbers in N and m: k is tied to them. */
    GW_STEP(engine, "B", GW_RATIO, b, MODEL, "exp(ln(k)+(1-m)*ln(A)+m*ln(Et2)+m/n*ln(td/t0)+ln(J))",
            {"k", flaws->k, GW_RATIO}, {"m", flaws->m, GW_RATIO}, {"A", area, GW_RATIO}, {"Et2", stiffness, GW_RATIO},
            {"n", flaws->n, GW_RATIO}, {"td", duration, GW_RATIO}, {"t0", flaws->reference_duration_s, GW_RATIO},
            {"J", plate->risk, GW_RATIO});
    GW_STEP(engine, "P", GW_RATIO, probability, MODEL, "1-exp(-B)", {"B", b, GW_RATIO});
    GW_FOUND(engine, "NFL", GW_PRESSURE, lite->pressure, MODEL,
             "the q_NFL at which P is the probability that is admitted, found by secant steps",
             {"P", probability, GW_RATIO}, {"B", b, GW_RATIO});
}

enum gw_status gw_glass_load(double *out, double width, double height, double thickness, double duration,
                             double probability, struct gw_engine *engine)
{
    enum { MOST_STEPS = 40 };
    const double enough = 1e-9, first_guess = 60, second_guess = 120; /* q*: between them lie most window lites */
    const double target = log(-log1p(-probability));
    struct gw_trace *trace = engine->trace;
    struct gw_plate_result plate;
    struct gw_plate_case lite = plate_case(width, height, thickness, 0);
    double x[2] = {log(pressure_at(first_guess, &lite, engine)), log(pressure_at(second_guess, &lite, engine))}, f[2];
    enum gw_status status = GW_OK;
    engine->trace = NULL; /* the search is not part of the derivation */
    for (int i = 0; i < 2 && status == GW_OK; i++) {
        lite.pressure = exp(x[i]);
        status = log_risk(&f[i], &plate, &lite, duration, engine);
    }
    for (int step = 0; status == GW_OK && fabs(f[1] - target) > enough; step++) {
        if (step == MOST_STEPS)
            status = gw_refuse(engine, GW_OUTSIDE_METHOD, "probability", "the load was not found in {} steps",
                               gw_of_count(step));
        if (status != GW_OK) break;
        double next = x[1] + (target - f[1]) * (x[1] - x[0]) / (f[1] - f[0]);
        x[0] = x[1], f[0] = f[1], x[1] = next;
        lite.pressure = exp(next);
        status = log_risk(&f[1], &plate, &lite, duration, engine);
    }
    engine->trace = trace;
    if (status != GW_OK) return status;
    *out = exp(x[1]);
    gw_used_add(&engine->used, &engine->tables->glass_flaws[0].row);
    trace_load(&lite, &plate, duration, probability, engine);
    return GW_OK;
}

double gw_glass_weight(double nominal, struct gw_engine *engine)
{
    const struct gw_glass_weight *row = &engine->tables->glass_weight[0];
    double weight = row->pressure_pa * nominal / row->thickness_m;
    gw_used_add(&engine->used, &row->row);
    GW_STEP(engine, "weight", GW_PRESSURE, weight, row->row.source, "g*t/t_unit", {"g", row->pressure_pa, GW_PRESSURE},
            {"t", nominal, GW_THICKNESS}, {"t_unit", row->thickness_m, GW_THICKNESS});
    return weight;
}
