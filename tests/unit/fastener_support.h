/* What the tests of fasteners share. */
#ifndef GALEWARD_TESTS_FASTENER_SUPPORT_H
#define GALEWARD_TESTS_FASTENER_SUPPORT_H

#include "support.h"

#include "galeward/fastener.h"

static const double IN = 0.0254, LB = 4.4482216152605, KSI = 6894757.293168361;

#define COUNT_OF(list) (sizeof(list) / sizeof *(list))

static inline struct gw_engine start(void)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    return engine;
}

#endif
