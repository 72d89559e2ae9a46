/* Wind-tunnel results against the floor of the code. */
#include "wind_internal.h"

struct gw_strength gw_wind_tunnel(struct gw_strength test, struct gw_strength code_zone_4, struct gw_engine *engine)
{
    const struct gw_wind_tunnel *row = &engine->tables->wind_tunnel[GW_ROW_WIND_TUNNEL_CLADDING];
    gw_used_add(&engine->used, &row->row);
    bool outward = code_zone_4.pa < 0;
    double magnitude = fmax(fabs(test.pa), row->share * fabs(code_zone_4.pa));
    struct gw_strength governing = {outward ? -magnitude : magnitude};
    GW_STEP(engine, "p_tunnel", GW_PRESSURE, governing.pa, row->clause,
            outward ? "-max(abs(p_given), f*abs(p_4))" : "max(abs(p_given), f*abs(p_4))",
            {"p_given", test.pa, GW_PRESSURE}, {"f", row->share, GW_RATIO}, {"p_4", code_zone_4.pa, GW_PRESSURE});
    return governing;
}
