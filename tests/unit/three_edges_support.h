/* What the tests of lites on fewer than four edges share. */
#ifndef GALEWARD_TESTS_THREE_EDGES_SUPPORT_H
#define GALEWARD_TESTS_THREE_EDGES_SUPPORT_H

#include "support.h"

#include "galeward/support.h"

#define EACH(i, list)                                                                                                  \
    size_t i = 0;                                                                                                      \
    i < sizeof(list) / sizeof *(list);                                                                                 \
    i++

#endif
