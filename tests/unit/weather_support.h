/* What the tests of water and air share. */
#ifndef GALEWARD_TESTS_WEATHER_SUPPORT_H
#define GALEWARD_TESTS_WEATHER_SUPPORT_H

#include "support.h"

static inline struct gw_engine an_engine(void)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    return engine;
}

#endif
