/* Water held up by air pressure, and by surface tension. */
#include "weather_internal.h"

#include "base/tolerance.h"

double gw_water_head(double pressure, struct gw_engine *engine)
{
    const double weight = weather_water(engine)->unit_weight_n_m3, head = pressure / weight;
    GW_STEP(engine, "h", GW_LENGTH, head, "static head", "p/gamma", {"p", pressure, GW_PRESSURE},
            {"gamma", weight, GW_UNIT_WEIGHT});
    return head;
}

double gw_water_pressure(double head, struct gw_engine *engine)
{
    const double weight = weather_water(engine)->unit_weight_n_m3, pressure = head * weight;
    GW_STEP(engine, "p", GW_PRESSURE, pressure, "static head", "h*gamma", {"h", head, GW_LENGTH},
            {"gamma", weight, GW_UNIT_WEIGHT});
    return pressure;
}

double gw_upstand_needed(double pressure, struct gw_engine *engine)
{
    const struct gw_water_margin *row = GW_USE(engine, &engine->tables->water_margin[GW_ROW_WATER_MARGIN_UPSTAND]);
    const double head = gw_water_head(pressure, engine), needed = head + fmax(row->share * head, row->least_m);
    GW_STEP(engine, "h_needed", GW_LENGTH, needed, row->row.source, "h+max(s*h,h_least)", {"h", head, GW_LENGTH},
            {"s", row->share, GW_RATIO}, {"h_least", row->least_m, GW_LENGTH});
    return needed;
}

enum gw_bool gw_upstand_enough(double upstand, double pressure, struct gw_engine *engine)
{
    return upstand >= gw_upstand_needed(pressure, engine) * (1 - GW_HAIR) ? GW_YES : GW_NO;
}

/* sigma/gamma is an area, so that the equation holds in any units. */
static double capillary(double factor, const char *formula, double size, struct gw_engine *engine)
{
    const struct gw_water_properties *water = weather_water(engine);
    const double constant = water->surface_tension_n_m / water->unit_weight_n_m3, head = factor * constant / size;
    GW_STEP(engine, "h_held", GW_LENGTH, head, "surface tension over unit weight, clean water", formula,
            {"a2", constant, GW_AREA}, {"d", size, GW_LENGTH});
    return head;
}

double gw_capillary_slot(double gap, struct gw_engine *engine) { return capillary(2, "2*a2/d", gap, engine); }

double gw_capillary_hole(double diameter, struct gw_engine *engine) { return capillary(4, "4*a2/d", diameter, engine); }
