/* Wind zones, missile levels, and what a missile carries. */
#include "debris_internal.h"

bool gw_debris_in_zone(const struct gw_debris_zone *row, double speed)
{
    bool over =
        row->from_included == GW_YES ? debris_reaches(speed, row->from_m_s) : !debris_within(speed, row->from_m_s);
    if (!over || !gw_given(row->to_m_s)) return over;
    return row->to_included == GW_YES ? debris_within(speed, row->to_m_s) : !debris_reaches(speed, row->to_m_s);
}

static const struct gw_debris_zone *zone_row(int nominal, double speed, bool shore, struct gw_engine *engine)
{
    for (size_t i = 0; i < GW_N_DEBRIS_ZONE; i++) {
        const struct gw_debris_zone *row = &engine->tables->debris_zone[i];
        bool here = (shore ? row->shore : row->inland) == GW_YES;
        if (here && row->nominal == nominal && gw_debris_in_zone(row, speed)) return row;
    }
    return NULL;
}

/* Below the zones' first speed only Hawaii under the nominal speeds is in one. */
static enum gw_status below_zones(int *zone, const struct gw_debris_region *region, enum gw_bool hawaii,
                                  struct gw_engine *engine)
{
    if (region->hawaii != GW_YES || hawaii != GW_YES)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "basic_wind_speed",
                         "the wind zones of the impact standard begin at the least speed of the debris region; this is "
                         "less");
    const bool nominal = region->nominal == GW_YES;
    *zone =
        (int)GW_USE(engine,
                    &engine->tables->debris_zone[nominal ? GW_ROW_DEBRIS_ZONE_NOMINAL_1 : GW_ROW_DEBRIS_ZONE_ZONE_1])
            ->zone;
    return GW_OK;
}

enum gw_status gw_debris_zone(int *zone, enum gw_debris_edition edition, double speed, double coast_distance,
                              enum gw_bool hawaii, struct gw_engine *engine)
{
    const struct gw_debris_region *region = gw_debris_region_row(edition, engine);
    if (!region) return engine->fault.status;
    const struct gw_debris_zone *inland = zone_row(region->nominal, speed, false, engine);
    const struct gw_debris_zone *shore = zone_row(region->nominal, speed, true, engine);
    if (!inland || !shore) return below_zones(zone, region, hawaii, engine);
    if ((int)inland->zone != (int)shore->zone && !gw_given(coast_distance))
        return gw_refuse(engine, GW_MISSING, "coast_distance",
                         "at this speed the wind zone hangs on the distance to the coast: coast_distance is needed");
    const bool near = gw_given(coast_distance) && debris_within(coast_distance, region->shore_m);
    const struct gw_debris_zone *row = near ? shore : inland;
    *zone = (int)GW_USE(engine, row)->zone;
    GW_TRACE_SAY(engine, "wind zone", row->row.source, "{}: by the speed of {}, {}", gw_of_count(*zone),
                 gw_of_quantity(GW_SPEED, speed),
                 gw_of_text(near ? "within a mile of the coast" : "away from the coast"));
    return GW_OK;
}

static bool is_high(double height, struct gw_engine *engine)
{
    const struct gw_debris_height *row = GW_USE(engine, &engine->tables->debris_height[GW_ROW_DEBRIS_HEIGHT_LOW]);
    return !debris_within(height, row->height_m);
}

enum gw_status gw_debris_missile(enum gw_missile *missile, int zone, enum gw_protection protection, double height,
                                 struct gw_engine *engine)
{
    const bool high = is_high(height, engine);
    if (protection != GW_PROTECTION_BASIC && protection != GW_PROTECTION_ENHANCED)
        return gw_refuse(engine, GW_BAD_VALUE, "protection", "protection must be basic or enhanced");
    for (size_t i = 0; i < GW_N_DEBRIS_LEVEL; i++) {
        const struct gw_debris_level *row = &engine->tables->debris_level[i];
        if ((int)row->zone != zone || (row->high == GW_YES) != high) continue;
        const bool enhanced = protection == GW_PROTECTION_ENHANCED;
        *missile = (enum gw_missile)(enhanced ? row->enhanced : row->basic);
        GW_TRACE_SAY(engine, "missile", GW_USE(engine, row)->row.source,
                     "by zone {} and the height of {}, {} protection", gw_of_count(zone),
                     gw_of_quantity(GW_LENGTH, height), gw_of_text(enhanced ? "enhanced" : "basic"));
        return GW_OK;
    }
    return gw_refuse(engine, GW_BAD_VALUE, "wind_zone", "wind zones go from 1 to 4");
}

enum gw_status gw_debris_missile_hvhz(enum gw_missile *missile, double height, struct gw_engine *engine)
{
    const bool high = is_high(height, engine);
    const struct gw_debris_hvhz *row =
        &engine->tables->debris_hvhz[high ? GW_ROW_DEBRIS_HVHZ_HIGH : GW_ROW_DEBRIS_HVHZ_LOW];
    *missile = (enum gw_missile)GW_USE(engine, row)->missile;
    GW_TRACE_SAY(engine, "missile", row->clause, "high-velocity hurricane zone, by the height of {} alone",
                 gw_of_quantity(GW_LENGTH, height));
    return GW_OK;
}

static const struct gw_debris_missile *missile_row(enum gw_missile missile, struct gw_engine *engine)
{
    for (size_t i = 0; i < GW_N_DEBRIS_MISSILE; i++)
        if (engine->tables->debris_missile[i].missile == (int)missile) return &engine->tables->debris_missile[i];
    return NULL;
}

/* Weight over gravity is mass: so the equations hold in pounds of force, feet and seconds too. */
static void step_missile(const struct gw_debris_result *out, const char *clause, struct gw_engine *engine)
{
    const struct gw_water_properties *nature = &engine->tables->water_properties[GW_ROW_WATER_PROPERTIES_WATER];
    const double weight = out->mass * nature->gravity_m_s2;
    GW_STEP(engine, "momentum", GW_MOMENTUM, out->momentum, clause, "W/g*v", {"W", weight, GW_FORCE},
            {"g", nature->gravity_m_s2, GW_ACCELERATION}, {"v", out->speed, GW_VELOCITY});
    GW_STEP(engine, "energy", GW_ENERGY, out->energy, clause, "W/g*v^2/2", {"W", weight, GW_FORCE},
            {"g", nature->gravity_m_s2, GW_ACCELERATION}, {"v", out->speed, GW_VELOCITY});
}

void gw_debris_describe(struct gw_debris_result *out, struct gw_engine *engine)
{
    const struct gw_debris_missile *row = missile_row(out->missile, engine);
    if (!row) return;
    gw_used_add(&engine->used, &row->row);
    out->size = (enum gw_missile_size)row->size;
    out->description = row->description;
    out->mass = row->mass_kg;
    out->speed = row->speed_m_s;
    out->momentum = out->mass * out->speed;
    out->energy = out->mass * out->speed * out->speed / 2;
    step_missile(out, row->row.source, engine);
}
