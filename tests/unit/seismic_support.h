/* What the seismic tests share. */
#ifndef GALEWARD_TESTS_SEISMIC_SUPPORT_H
#define GALEWARD_TESTS_SEISMIC_SUPPORT_H

#include "support.h"

#define EACH(i, list)                                                                                                  \
    size_t i = 0;                                                                                                      \
    i < sizeof(list) / sizeof *(list);                                                                                 \
    i++

static const double IN = 0.0254, LB = 4.4482216152605;

static inline struct gw_engine engine_new(void)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    return engine;
}

static inline bool noted(struct gw_seismic_notes notes, const char *part)
{
    for (unsigned i = 0; i < notes.n; i++)
        if (strstr(notes.items[i], part)) return true;
    return false;
}

static const enum gw_edition EDITIONS[] = {GW_ASCE7_10, GW_ASCE7_16, GW_ASCE7_22};

#endif
