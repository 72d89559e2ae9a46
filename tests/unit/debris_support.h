/* A case of wind-borne debris, for its tests. */
#ifndef GALEWARD_TESTS_DEBRIS_SUPPORT_H
#define GALEWARD_TESTS_DEBRIS_SUPPORT_H

#include "support.h"

static const double MI = 1609.344;

static inline struct gw_engine an_engine(void)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    return engine;
}

/* A site in the middle of everything: region, zone 3, basic, low. */
static inline struct gw_debris_case a_case(void)
{
    struct gw_debris_case in;
    gw_record_clear(gw_calc_find("debris")->input, &in);
    in.edition = GW_DEBRIS_ASCE7_16;
    in.basic_wind_speed = 155 * MPH;
    in.coast_distance = 0.4 * MI;
    in.risk_category = GW_RISK_II;
    in.height = 17 * FT;
    in.hurricane_prone = GW_YES;
    return in;
}

static inline struct gw_debris_result solve(const struct gw_debris_case *in)
{
    struct gw_debris_result out;
    struct gw_engine engine = an_engine();
    enum gw_status status = gw_debris(&out, in, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

static inline void refused(const struct gw_debris_case *in, enum gw_status status, const char *key)
{
    struct gw_debris_result out;
    struct gw_engine engine = an_engine();
    assert_int_equal(gw_debris(&out, in, &engine), status);
    assert_string_equal(engine.fault.key, key);
    assert_non_null(engine.fault.format);
}

#endif
