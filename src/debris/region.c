/* Where glazing must be protected: region, relief, and the whole decision. */
#include "debris_internal.h"

static const char IN_ZONE[] = "every glazed opening of the high-velocity hurricane zone is protected, at any height";
static const char OUT_OF_REGION[] = "the site is not in the wind-borne debris region";
static const char NOT_PRONE[] = "the site is not in the hurricane-prone region";
static const char CATEGORY_I[] = "Risk Category I needs no protection";
static const char HIGH_UP[] = "the glazing is high above the ground and above any gravel roof nearby";
static const char IN_REGION[] = "the site is in the wind-borne debris region";

static const char NOTE_PRONE[] = "hurricane_prone is not given: taken as yes";
static const char NOTE_EXPOSURE[] = "exposure_d_at_shore is not given: taken as yes, which protects more sites";
static const char NOTE_BORROWED[] =
    "Risk Category III other than health care: the region goes by the Category II map; the speed given is taken for "
    "it, "
    "which protects more sites if it is the Category III map's (region_wind_speed gives the other)";
static const char NOTE_ZONE_SPEED[] =
    "the wind zone goes by basic_wind_speed, the larger of the two: whether it follows the region's map is not said";
static const char NOTE_NEAR[] = "the speed is less than half a meter a second below a limit that stands in mph: metric "
                                "maps are rounded, so read the map's mph";
static const char NOTE_PRINTED[] =
    "the speed is the whole meters a second that stand beside a limit in mph: taken as that "
    "limit, which protects more sites; the map's mph decides";
static const char NOTE_HVHZ_IV[] = "high-velocity hurricane zone, Risk Category IV: the 2023 Florida text may ask for "
                                   "more; ask the authority having jurisdiction";
static const char NOTE_HVHZ_HIGH[] =
    "high-velocity hurricane zone, above the large missile's height: the large missile is accepted in its place";
static const char NOTE_ENHANCED[] = "above the large missile's height the building code alone asks for the small "
                                    "missile; the test standard's enhanced protection asks for more and is taken";
static const char NOTE_NO_GRAVEL[] = "no gravel roof nearby is given: taken as none within the standard's radius";

static void note(struct gw_debris_result *out, const char *text)
{
    if (out->n_notes < GW_DEBRIS_NOTES) out->notes[out->n_notes++] = text;
}

const struct gw_debris_region *gw_debris_region_row(enum gw_debris_edition edition, struct gw_engine *engine)
{
    for (size_t i = 0; i < GW_N_DEBRIS_REGION; i++) {
        const struct gw_debris_region *row = &engine->tables->debris_region[i];
        if (row->debris_edition == (int)edition) return GW_USE(engine, row);
    }
    gw_refuse(engine, GW_MISSING, "edition", "edition of ASCE 7 is not given");
    return NULL;
}

static enum gw_status positive(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (value > 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must be positive", gw_of_text(key));
}

static enum gw_status distance(const char *key, double value, bool needed, struct gw_engine *engine)
{
    if (!gw_given(value) && !needed) return GW_OK;
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (value >= 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must not be negative", gw_of_text(key));
}

const char *gw_debris_map(enum gw_debris_edition edition, enum gw_risk risk, bool health_care, bool *borrowed,
                          struct gw_engine *engine)
{
    *borrowed = false;
    for (size_t i = 0; i < GW_N_DEBRIS_MAP; i++) {
        const struct gw_debris_map *row = &engine->tables->debris_map[i];
        bool same = row->debris_edition == (int)edition && row->risk == (int)risk;
        bool care = risk == GW_RISK_III && health_care;
        if (!same || (row->health_care == GW_YES) != care) continue;
        *borrowed = row->borrowed == GW_YES;
        return GW_USE(engine, row)->figure;
    }
    return NULL;
}

static bool borrows(const struct gw_debris_case *in, struct gw_engine *engine)
{
    bool borrowed;
    gw_debris_map(in->edition, in->risk_category, in->health_care == GW_YES, &borrowed, engine);
    return borrowed;
}

static enum gw_status check_region_speed(const struct gw_debris_case *in, struct gw_engine *engine)
{
    if (!gw_given(in->region_wind_speed)) return GW_OK;
    enum gw_status status = positive("region_wind_speed", in->region_wind_speed, engine);
    if (status) return status;
    if (!borrows(in, engine))
        return gw_refuse(engine, GW_BAD_VALUE, "region_wind_speed",
                         "the region goes by the building's own map: region_wind_speed is only for Risk Category III "
                         "other than health care, from ASCE 7-10 on");
    if (debris_within(in->region_wind_speed, in->basic_wind_speed)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, "region_wind_speed",
                     "the Category II map nowhere shows more wind than the Category III map");
}

static enum gw_status check(const struct gw_debris_case *in, struct gw_engine *engine)
{
    if (!gw_debris_region_row(in->edition, engine)) return engine->fault.status;
    enum gw_status status = positive("basic_wind_speed", in->basic_wind_speed, engine);
    if (!status) status = distance("height", in->height, true, engine);
    if (!status) status = distance("coast_distance", in->coast_distance, false, engine);
    if (!status) status = distance("aggregate_roof_height", in->aggregate_roof_height, false, engine);
    if (status) return status;
    if (in->risk_category == GW_RISK_UNSET)
        return gw_refuse(engine, GW_MISSING, "risk_category", "risk_category is needed");
    if (in->hurricane_prone == GW_NO && in->hawaii == GW_YES)
        return gw_refuse(engine, GW_BAD_VALUE, "hurricane_prone", "Hawaii is hurricane-prone by definition");
    if (in->hurricane_prone == GW_NO && in->high_velocity_zone == GW_YES)
        return gw_refuse(engine, GW_BAD_VALUE, "hurricane_prone", "the high-velocity zone is hurricane-prone");
    return check_region_speed(in, engine);
}

/* Limits ---------------------------------------------------------------------------------------------------------- */

/* What the standard prints beside a limit in mph, where that is less than the limit: the limit itself. */
static bool is_printed(double speed, double limit)
{
    const double printed = round(limit);
    return !debris_reaches(speed, limit) && fabs(speed - printed) <= DEBRIS_HAIR * printed;
}

static double as_printed(double speed, const struct gw_debris_region *row, const struct gw_engine *engine)
{
    if (is_printed(speed, row->near_shore_m_s)) return row->near_shore_m_s;
    if (is_printed(speed, row->anywhere_m_s)) return row->anywhere_m_s;
    for (size_t i = 0; i < GW_N_DEBRIS_ZONE; i++) {
        const struct gw_debris_zone *zone = &engine->tables->debris_zone[i];
        if (zone->nominal == row->nominal && is_printed(speed, zone->from_m_s)) return zone->from_m_s;
    }
    return speed;
}

static double region_speed(const struct gw_debris_case *in)
{
    return gw_given(in->region_wind_speed) ? in->region_wind_speed : in->basic_wind_speed;
}

/* Between the speed that counts near the shore and the one that counts anywhere. */
static enum gw_status near_shore(enum gw_bool *region, const struct gw_debris_region *row,
                                 const struct gw_debris_case *in, struct gw_engine *engine)
{
    if (!gw_given(in->coast_distance))
        return gw_refuse(engine, GW_MISSING, "coast_distance",
                         "at this speed the region reaches only so far from the coast: coast_distance is needed");
    bool open = row->exposure_d != GW_YES || in->exposure_d_at_shore != GW_NO;
    *region = debris_within(in->coast_distance, row->shore_m) && open ? GW_YES : GW_NO;
    return GW_OK;
}

enum gw_status gw_debris_region(enum gw_bool *region, const struct gw_debris_case *in, struct gw_engine *engine)
{
    const struct gw_debris_region *row = gw_debris_region_row(in->edition, engine);
    if (!row) return engine->fault.status;
    const double speed = as_printed(region_speed(in), row, engine);
    *region = GW_NO;
    if (in->hurricane_prone == GW_NO) return GW_OK;
    if (!debris_reaches(speed, row->near_shore_m_s)) {
        if (row->hawaii == GW_YES && in->hawaii == GW_YES) *region = GW_YES;
        return GW_OK;
    }
    if (debris_reaches(speed, row->anywhere_m_s) || (row->hawaii == GW_YES && in->hawaii == GW_YES)) {
        *region = GW_YES;
        return GW_OK;
    }
    return near_shore(region, row, in, engine);
}

/* Both: above ground, and above the gravel roofs. */
static bool relieved(struct gw_debris_result *out, const struct gw_debris_case *in, struct gw_engine *engine)
{
    const struct gw_debris_relief *row = &engine->tables->debris_relief[GW_ROW_DEBRIS_RELIEF_HIGH_GLAZING];
    if (debris_within(in->height, row->ground_m)) return false;
    gw_used_add(&engine->used, &row->row);
    if (!gw_given(in->aggregate_roof_height)) {
        note(out, NOTE_NO_GRAVEL);
        return true;
    }
    return !debris_within(in->height, in->aggregate_roof_height + row->roof_m);
}

static void just_below(double *nearest, double speed, double limit, double doubt)
{
    if (!debris_reaches(speed, limit) && speed > limit - doubt) *nearest = limit;
}

static void note_near(struct gw_debris_result *out, const struct gw_debris_region *row, double speed, double own_speed,
                      struct gw_engine *engine)
{
    const double doubt = engine->tables->debris_doubt[GW_ROW_DEBRIS_DOUBT_METRIC_MAPS].speed_m_s;
    double nearest = GW_ABSENT;
    just_below(&nearest, speed, row->near_shore_m_s, doubt);
    just_below(&nearest, speed, row->anywhere_m_s, doubt);
    for (size_t i = 0; i < GW_N_DEBRIS_ZONE; i++) {
        const struct gw_debris_zone *zone = &engine->tables->debris_zone[i];
        if (zone->nominal != row->nominal || zone->from_included != GW_YES) continue;
        just_below(&nearest, own_speed, zone->from_m_s, doubt);
    }
    if (!gw_given(nearest)) return;
    if (!out->limit_note) out->limit = nearest;
    if (!out->limit_note) out->limit_note = NOTE_NEAR;
    note(out, NOTE_NEAR);
}

/* The decision ---------------------------------------------------------------------------------------------------- */

static void clear(struct gw_debris_result *out)
{
    *out = (struct gw_debris_result){.region = GW_UNSAID, .required = GW_NO, .protection = GW_PROTECTION_NONE};
    out->wind_zone = out->impacts = GW_NO_ZONE;
    out->limit = out->mass = out->speed = out->momentum = out->energy = GW_ABSENT;
}

static enum gw_status in_high_velocity_zone(struct gw_debris_result *out, const struct gw_debris_case *in,
                                            struct gw_engine *engine)
{
    const struct gw_debris_impacts *impacts = &engine->tables->debris_impacts[GW_ROW_DEBRIS_IMPACTS_HIGH_VELOCITY_ZONE];
    out->region = out->required = GW_YES;
    out->protection = GW_PROTECTION_UNSET;
    out->reason = IN_ZONE;
    enum gw_status status = gw_debris_missile_hvhz(&out->missile, in->height, engine);
    if (status) return status;
    gw_debris_describe(out, engine);
    if (out->size == GW_LARGE_MISSILE) out->impacts = (int)GW_USE(engine, impacts)->impacts;
    else note(out, NOTE_HVHZ_HIGH);
    if (in->risk_category == GW_RISK_IV) note(out, NOTE_HVHZ_IV);
    return GW_OK;
}

static const struct gw_debris_protection *protection_row(enum gw_risk risk, struct gw_engine *engine)
{
    const struct gw_debris_protection *row = engine->tables->debris_protection;
    while (row->risk != (int)risk) row++; /* every category has a row; check() let no other through */
    return GW_USE(engine, row);
}

/* Sets the reason; the steps cite what it rests on. */
static bool is_relieved(struct gw_debris_result *out, const struct gw_debris_case *in, const char *clause,
                        struct gw_engine *engine)
{
    out->reason = IN_REGION;
    if (out->region != GW_YES) {
        out->reason = in->hurricane_prone == GW_NO ? NOT_PRONE : OUT_OF_REGION;
    } else if (protection_row(in->risk_category, engine)->protection == GW_PROTECTION_NONE) {
        out->reason = CATEGORY_I;
        clause = protection_row(in->risk_category, engine)->row.source;
    } else if (relieved(out, in, engine)) {
        out->reason = HIGH_UP;
        clause = engine->tables->debris_relief[GW_ROW_DEBRIS_RELIEF_HIGH_GLAZING].clause;
    }
    GW_TRACE_SAY(engine, "protection", clause, "at {}: {}", gw_of_quantity(GW_SPEED, region_speed(in)),
                 gw_of_text(out->reason));
    return out->reason != IN_REGION;
}

static int impacts_in(int zone, struct gw_engine *engine)
{
    const struct gw_debris_impacts *best = NULL;
    for (size_t i = 0; i < GW_N_DEBRIS_IMPACTS; i++) {
        const struct gw_debris_impacts *row = &engine->tables->debris_impacts[i];
        if (gw_given(row->from_zone) && zone >= (int)row->from_zone) best = row;
    }
    return best ? (int)GW_USE(engine, best)->impacts : GW_NO_ZONE;
}

static enum gw_status choose_missile(struct gw_debris_result *out, const struct gw_debris_case *in,
                                     struct gw_engine *engine)
{
    enum gw_status status =
        gw_debris_zone(&out->wind_zone, in->edition, in->basic_wind_speed, in->coast_distance, in->hawaii, engine);
    if (status) return status;
    out->required = GW_YES;
    out->protection = (enum gw_protection)protection_row(in->risk_category, engine)->protection;
    status = gw_debris_missile(&out->missile, out->wind_zone, out->protection, in->height, engine);
    if (status) return status;
    gw_debris_describe(out, engine);
    if (out->size == GW_LARGE_MISSILE) out->impacts = impacts_in(out->wind_zone, engine);
    bool high = !debris_within(in->height, engine->tables->debris_height[GW_ROW_DEBRIS_HEIGHT_LOW].height_m);
    if (high && out->size == GW_LARGE_MISSILE) note(out, NOTE_ENHANCED);
    return GW_OK;
}

static void note_assumed(struct gw_debris_result *out, const struct gw_debris_region *row,
                         const struct gw_debris_case *in, bool borrowed, struct gw_engine *engine)
{
    bool may = debris_reaches(region_speed(in), row->near_shore_m_s);
    bool shore = may && !debris_reaches(region_speed(in), row->anywhere_m_s) && out->region == GW_YES;
    if (may && in->hurricane_prone == GW_UNSAID && in->hawaii != GW_YES) note(out, NOTE_PRONE);
    if (shore && row->exposure_d == GW_YES && in->exposure_d_at_shore == GW_UNSAID) note(out, NOTE_EXPOSURE);
    if (may && borrowed) note(out, gw_given(in->region_wind_speed) ? NOTE_ZONE_SPEED : NOTE_BORROWED);
    if (in->hurricane_prone != GW_NO) note_near(out, row, region_speed(in), in->basic_wind_speed, engine);
}

/* With the limits that its speeds stand for. */
static struct gw_debris_case printed_case(struct gw_debris_result *out, const struct gw_debris_case *in,
                                          const struct gw_debris_region *row, const struct gw_engine *engine)
{
    struct gw_debris_case own = *in;
    own.basic_wind_speed = as_printed(in->basic_wind_speed, row, engine);
    if (gw_given(in->region_wind_speed)) own.region_wind_speed = as_printed(in->region_wind_speed, row, engine);
    const bool taken = own.basic_wind_speed > in->basic_wind_speed || own.region_wind_speed > in->region_wind_speed;
    if (!taken || in->hurricane_prone == GW_NO) return own;
    out->limit = own.region_wind_speed > in->region_wind_speed ? own.region_wind_speed : own.basic_wind_speed;
    out->limit_note = NOTE_PRINTED;
    note(out, NOTE_PRINTED);
    return own;
}

enum gw_status gw_debris(struct gw_debris_result *out, const struct gw_debris_case *given, struct gw_engine *engine)
{
    bool borrowed;
    clear(out);
    enum gw_status status = check(given, engine);
    if (status) return status;
    if (given->high_velocity_zone == GW_YES) return in_high_velocity_zone(out, given, engine);
    const struct gw_debris_region *row = gw_debris_region_row(given->edition, engine);
    const struct gw_debris_case own = printed_case(out, given, row, engine), *in = &own;
    out->map = gw_debris_map(in->edition, in->risk_category, in->health_care == GW_YES, &borrowed, engine);
    status = gw_debris_region(&out->region, in, engine);
    if (status) return status;
    note_assumed(out, row, in, borrowed, engine);
    return is_relieved(out, in, row->clause, engine) ? GW_OK : choose_missile(out, in, engine);
}
