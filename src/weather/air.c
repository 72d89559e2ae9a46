/* Air leakage at one pressure and another: the number means nothing without its pressure. */
#include "weather_internal.h"

double gw_air_convert(double leakage, double from, double to, double exponent, struct gw_engine *engine)
{
    const struct gw_air_conversion *row = &engine->tables->air_conversion[GW_ROW_AIR_CONVERSION_TYPICAL];
    const double n = gw_given(exponent) ? exponent : GW_USE(engine, row)->exponent;
    const double carried = leakage * pow(to / from, n);
    GW_STEP(engine, "q_2", GW_LEAKAGE, carried, "power law", "q_1*(p_2/p_1)^n", {"q_1", leakage, GW_LEAKAGE},
            {"p_2", to, GW_PRESSURE}, {"p_1", from, GW_PRESSURE}, {"n", n, GW_RATIO});
    return carried;
}

/* Leakage grows with pressure: a test at the higher pressure also shows the lower, never the other way round. */
enum gw_air_evidence gw_air_shows(double *estimate, const struct gw_air_claim *claim, struct gw_engine *engine)
{
    const double hair = 0.005; /* 6.24 psf and 300 Pa are the same test */
    const bool leaks = claim->tested > claim->limit;
    const bool same = fabs(claim->tested_at - claim->limit_at) <= hair * claim->limit_at; /* nothing to carry over */
    if (estimate && same) *estimate = claim->tested;
    else if (estimate) *estimate = gw_air_convert(claim->tested, claim->tested_at, claim->limit_at, GW_ABSENT, engine);
    if (claim->tested_at > claim->limit_at * (1 + hair) && leaks) return GW_AIR_TOO_HARD;
    if (claim->tested_at >= claim->limit_at * (1 - hair)) return GW_AIR_SHOWS;
    return leaks ? GW_AIR_SHOWS : GW_AIR_TOO_SOFT; /* at a lower pressure already: more still at the required one */
}
