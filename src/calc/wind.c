/* Of 'galeward calc wind'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/model.h"

/* One wind case, as 'calc wind' takes it; what may be missing is decided by the engine. */
static const struct gw_field PARAPET[] = {
    NUM(gw_wind_parapet, top, GW_LENGTH, .flags = GW_REQUIRED, BUILDING_HEIGHT, .help = "above ground"),
    NUM(gw_wind_parapet, height, GW_LENGTH, LIMITS(0.001, 100),
        .help = "above the roof; absent: top less mean_roof_height"),
    NUM(gw_wind_parapet, gcpi, GW_RATIO, .flags = GW_MAGNITUDE, .fallback = "0", LIMITS(0, 0.55),
        .help = "inside the parapet; 0: solid"),
    F(gw_wind_parapet, perimeter, GW_T_BOOL, .fallback = "false", .help = "round the whole roof"),
    NUM(gw_wind_parapet, corner_distance, GW_LENGTH, LIMITS(0, 10000),
        .help = "from the nearest outside corner; absent: beside the roof's corner, zone 3"),
};
static const struct gw_record PARAPET_RECORD = RECORD("parapet", gw_wind_parapet, PARAPET);
static const struct gw_field WIND_CASE[] = {
    PICK(gw_wind_case, edition, gw_edition_choices, .also = gw_edition_words, .flags = GW_REQUIRED,
         .help = "edition of ASCE 7"),
    NUM(gw_wind_case, basic_wind_speed, GW_SPEED, .flags = GW_REQUIRED, LIMITS(1, 300), LIKELY(36, 100),
        .help = "3-second gust"),
    PICK(gw_wind_case, exposure, gw_exposure_choices, .also = gw_exposure_words, .flags = GW_REQUIRED,
         .help = "exposure"),
    NUM(gw_wind_case, mean_roof_height, GW_LENGTH, .flags = GW_REQUIRED, BUILDING_HEIGHT, .help = "h"),
    NUM(gw_wind_case, height, GW_LENGTH, LIMITS(0, 1000), .help = "where q_z is taken; absent: h"),
    NUM(gw_wind_case, least_width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.5, 5000), .help = "least plan dimension"),
    NUM(gw_wind_case, elevation, GW_LENGTH, LIMITS(-500, 9000), .help = "ground above sea level"),
    NUM(gw_wind_case, ke, GW_RATIO, LIMITS(0.3, 1.1), .help = "K_e given outright"),
    NUM(gw_wind_case, kzt, GW_RATIO, LIMITS(1, 10), .help = "K_zt given outright"),
    F(gw_wind_case, topography, GW_T_RECORD, .record = &gw_topography_record, .help = "hill, ridge or escarpment"),
    PICK(gw_wind_case, enclosure, gw_enclosure_choices, .flags = GW_REQUIRED, .help = "enclosure class"),
    NUM(gw_wind_case, effective_area, GW_AREA, LIMITS(0.0001, 1e6), .help = "effective wind area"),
    NUM(gw_wind_case, span, GW_LENGTH, LIMITS(0.001, 1000), .help = "instead of the area: span"),
    NUM(gw_wind_case, width, GW_LENGTH, LIMITS(0.001, 1000), .help = "and width"),
    F(gw_wind_case, zone, GW_T_INTEGER, .flags = GW_REQUIRED, LIMITS(4, 5), .help = "4 or 5"),
    NUM(gw_wind_case, roof_slope, GW_ANGLE, .fallback = "0 deg", LIMITS(0, 1.5), .help = "roof slope"),
    F(gw_wind_case, alternative_60_90, GW_T_BOOL, .fallback = "false",
      .help = "low-rise coefficients between 60 and 90 ft where permitted"),
    PICK(gw_wind_case, exposure_b_floor, gw_floor_choices, .fallback = "edition", .help = "least K_z in exposure B"),
    PICK(gw_wind_case, strip_cap, gw_strip_cap_choices, .fallback = "none",
         .help = "cap of the edge strip of wide, low buildings"),
    NUM(gw_wind_case, highest_opening, GW_LENGTH, LIMITS(0, 1000), .help = "level of the highest opening"),
    NUM(gw_wind_case, internal_volume, GW_VOLUME, LIMITS(0.001, 1e9), .help = "unpartitioned volume"),
    NUM(gw_wind_case, opening_area, GW_AREA, LIMITS(0.001, 1e6), .help = "total openings"),
    F(gw_wind_case, parapet, GW_T_RECORD, .record = &PARAPET_RECORD, .help = "parapet"),
};
const struct gw_record gw_wind_case_record = RECORD("wind", gw_wind_case, WIND_CASE);

static const struct gw_field PARAPET_OUT[] = {
    OUT(gw_parapet_result, "qp", qp, GW_PRESSURE, "velocity pressure at the top"),
    OUT(gw_parapet_result, "windward_net", windward_net, GW_PRESSURE, "case A, both faces, magnitude"),
    OUT(gw_parapet_result, "leeward_net", leeward_net, GW_PRESSURE, "case B, both faces, magnitude"),
    OUT(gw_parapet_result, "skin_positive", skin_positive, GW_PRESSURE, "outer face, inward"),
    OUT(gw_parapet_result, "skin_negative", skin_negative, GW_PRESSURE, "outer face, outward"),
};
static const struct gw_record PARAPET_OUT_RECORD = RECORD("parapet", gw_parapet_result, PARAPET_OUT);
#define W(key_, member_, dim_, help_) OUT(gw_wind_result, key_, member_, dim_, help_)
static const struct gw_field WIND_RESULT[] = {
    W("kz", kz, GW_RATIO, "K_z"),
    W("kh", kh, GW_RATIO, "K_h"),
    W("kzt_z", kzt_z, GW_RATIO, "K_zt at z"),
    W("kzt_h", kzt_h, GW_RATIO, "K_zt at h"),
    W("ke", ke, GW_RATIO, "K_e"),
    W("kd", kd, GW_RATIO, "K_d"),
    W("qz", qz, GW_PRESSURE, "velocity pressure at z, the edition's own"),
    W("qh", qh, GW_PRESSURE, "at h"),
    W("gcp_positive", gcp_positive, GW_RATIO, ""),
    W("gcp_negative", gcp_negative, GW_RATIO, ""),
    W("gcpi", gcpi, GW_RATIO, "magnitude"),
    W("zone_width", zone_width, GW_LENGTH, "edge strip a"),
    W("effective_area", effective_area, GW_AREA, ""),
    W("raw_positive", raw_positive.pa, GW_PRESSURE, "before the minimum"),
    W("raw_negative", raw_negative.pa, GW_PRESSURE, ""),
    W("pressure_positive", positive.pa, GW_PRESSURE, "strength level"),
    W("pressure_negative", negative.pa, GW_PRESSURE, ""),
    W("asd_positive", asd_positive.pa, GW_PRESSURE, "0.6 of it"),
    W("asd_negative", asd_negative.pa, GW_PRESSURE, ""),
    OUT_PART(gw_wind_result, "parapet", parapet_result, &PARAPET_OUT_RECORD, "with a parapet"),
};
const struct gw_record gw_wind_result_record = RECORD("wind result", gw_wind_result, WIND_RESULT);

static enum gw_status run_wind(void *out, const void *in, struct gw_engine *engine)
{
    return gw_wind_pressure(out, in, engine);
}

static const char *const *wind_notes(const void *out, size_t *n)
{
    const struct gw_wind_result *result = out;
    *n = result->n_notes;
    return result->notes;
}

const struct gw_calc_kind gw_kind_wind = {
    .name = "wind",
    .help = "wind pressure on a piece of wall, ASCE 7-10, 7-16 or 7-22",
    .example = "edition=asce7-16 basic_wind_speed='120 mph' exposure=C mean_roof_height='48 ft' least_width='75 ft' "
               "enclosure=enclosed effective_area='24 ft2' zone=5",
    .input = &gw_wind_case_record,
    .output = &gw_wind_result_record,
    .run = run_wind,
    .notes = wind_notes};
