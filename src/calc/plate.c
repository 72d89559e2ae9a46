/* Of 'galeward calc plate'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/model.h"

/* One plate, as 'calc plate' takes it. */
static const struct gw_choice PLATE_EDGES[] = {{"free", GW_PLATE_FREE, "free to slide in plane"},
                                               {"straight", GW_PLATE_STRAIGHT, "held straight, no force on average"},
                                               {0}};
static const struct gw_choice PLATE_METHODS[] = {
    {"table", GW_PLATE_TABLE, "read from solved cases: free edges, Poisson's ratio of glass"},
    {"direct", GW_PLATE_DIRECT, "the equations solved for this case"},
    {0}};
static const struct gw_field PLATE_CASE[] = {
    NUM(gw_plate_case, width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.001, 100), LIKELY(0.1, 12),
        .help = "between the supports"),
    NUM(gw_plate_case, height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.001, 100), LIKELY(0.1, 12),
        .help = "between the supports"),
    NUM(gw_plate_case, thickness, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0001, 1), LIKELY(0.002, 0.05),
        .help = "the least one, not the nominal"),
    NUM(gw_plate_case, pressure, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(0, 1e9), .help = "uniform"),
    NUM(gw_plate_case, elastic_modulus, GW_STRESS, LIMITS(1e6, 1e13), .help = "absent: glass"),
    NUM(gw_plate_case, poissons_ratio, GW_RATIO, LIMITS(0, 0.49), .help = "absent: glass"),
    PICK(gw_plate_case, edges, PLATE_EDGES, .fallback = "free", .help = "in plane"),
    PICK(gw_plate_case, method, PLATE_METHODS, .help = "absent: table where it reaches, else direct"),
    F(gw_plate_case, terms, GW_T_INTEGER, LIMITS(GW_PLATE_TERMS_LEAST, GW_PLATE_TERMS_MOST),
      .help = "terms each way, direct only; absent: by the load"),
};
const struct gw_record gw_plate_case_record = RECORD("plate", gw_plate_case, PLATE_CASE);
#define P(key_, member_, dim_, help_) OUT(gw_plate_result, key_, member_, dim_, help_)
static const struct gw_field PLATE_RESULT[] = {
    P("deflection", deflection, GW_THICKNESS, "center deflection"),
    P("mean_deflection", mean_deflection, GW_THICKNESS, "mean over the area"),
    P("stress_max", stress_max, GW_STRESS, "largest principal tension on the unloaded face"),
    OUT_MANY(gw_plate_result, "stress_place", stress_place, GW_RATIO,
             "its place, m from the center: along the width, along the height"),
    P("stress_centre", stress_center, GW_STRESS, "unloaded face, center"),
    P("stress_loaded_face", stress_loaded_face, GW_STRESS, "largest principal tension on the loaded face"),
    P("risk_J", risk, GW_RATIO, "area mean of (c s1 a b/(E t^2))^m over the unloaded face"),
    P("q_star", q_star, GW_RATIO, "q (a b)^2/(E t^4)"),
    P("volume", volume, GW_VOLUME, "under the deflected plate"),
    P("edge_slope", edge_slope, GW_ANGLE, "largest rotation of the edge"),
    F(gw_plate_result, iterations, GW_T_INTEGER, .help = "Newton steps, 0 by table"),
    F(gw_plate_result, terms, GW_T_INTEGER, .help = "terms each way, null by table"),
    P("residual", residual, GW_RATIO, "load out of balance, over the load; null by table"),
    F(gw_plate_result, method, GW_T_TEXT, .help = "table or direct"),
};
const struct gw_record gw_plate_result_record = RECORD("plate result", gw_plate_result, PLATE_RESULT);

static enum gw_status run_plate(void *out, const void *in, struct gw_engine *engine)
{
    return gw_plate(out, in, engine);
}

static const char *const *plate_notes(const void *out, size_t *n)
{
    const struct gw_plate_result *result = out;
    *n = result->n_notes;
    return result->notes;
}

const struct gw_calc_kind gw_kind_plate = {.name = "plate",
                                           .help = "rectangular plate on four simply supported edges, large deflection",
                                           .example =
                                               "width='48 in' height='72 in' thickness='5.56 mm' pressure='40 psf'",
                                           .input = &gw_plate_case_record,
                                           .output = &gw_plate_result_record,
                                           .run = run_plate,
                                           .workspace = GW_PLATE_WORKSPACE,
                                           .notes = plate_notes};
