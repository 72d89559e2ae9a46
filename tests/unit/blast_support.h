/* What the tests of blast share. */
#ifndef GALEWARD_TESTS_BLAST_SUPPORT_H
#define GALEWARD_TESTS_BLAST_SUPPORT_H

#include "support.h"

#include "galeward/blast.h"
#include "tables_data.h"

static const double PSI = 6894.757293168361;

static inline int setup(void **state)
{
    struct gw_engine *engine = malloc(sizeof *engine);
    if (!engine) return -1;
    gw_engine_init(engine, gw_tables_standard(), NULL);
    engine->workspace = malloc(GW_PLATE_WORKSPACE);
    *state = engine;
    return engine->workspace ? 0 : -1;
}

static inline int teardown(void **state)
{
    struct gw_engine *engine = *state;
    free(engine->workspace);
    free(engine);
    return 0;
}

#define ENGINE_TEST(function) cmocka_unit_test_setup_teardown(function, setup, teardown)

#endif
