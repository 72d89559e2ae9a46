/* Shared by the files of src/weather only. */
#ifndef GALEWARD_WEATHER_INTERNAL_H
#define GALEWARD_WEATHER_INTERNAL_H

#include "galeward/weather.h"

#include "tables_data.h"

static inline enum gw_status weather_magnitude(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (value >= 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must not be negative", gw_of_text(key));
}

static inline enum gw_status weather_positive(const char *key, double value, struct gw_engine *engine)
{
    if (gw_given(value) && !(value > 0 && isfinite(value)))
        return gw_refuse(engine, GW_BAD_VALUE, key, "{} must be positive", gw_of_text(key));
    return weather_magnitude(key, value, engine);
}

static inline enum gw_status weather_if_given(const char *key, double value, struct gw_engine *engine)
{
    return gw_given(value) ? weather_positive(key, value, engine) : GW_OK;
}

static inline const struct gw_water_properties *weather_water(struct gw_engine *engine)
{
    return GW_USE(engine, &engine->tables->water_properties[GW_ROW_WATER_PROPERTIES_WATER]);
}

#endif
