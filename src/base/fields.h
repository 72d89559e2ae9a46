/* Short forms for field tables: of files, of calc cases and their answers, of results. */
#ifndef GALEWARD_FIELDS_H
#define GALEWARD_FIELDS_H

#include "galeward/record.h"

#define COUNT(array) (sizeof(array) / sizeof *(array))
#define F(struct_, key_, type_, ...)                                                                                   \
    {                                                                                                                  \
        .key = #key_, .type = type_, .offset = offsetof(struct struct_, key_), __VA_ARGS__                             \
    }
#define NUM(struct_, key_, dim_, ...) F(struct_, key_, GW_T_NUMBER, .dim = dim_, __VA_ARGS__)
#define PICK(struct_, key_, choices_, ...) F(struct_, key_, GW_T_CHOICE, .choices = choices_, __VA_ARGS__)
#define PLACE(struct_)                                                                                                 \
    {                                                                                                                  \
        .type = GW_T_NODE, .offset = offsetof(struct struct_, node)                                                    \
    }
#define RECORD(name_, struct_, fields_, ...)                                                                           \
    {                                                                                                                  \
        .name = name_, .size = sizeof(struct struct_), .fields = fields_, .n = COUNT(fields_), __VA_ARGS__             \
    }
#define LIMITS(a, b) .least = (a), .greatest = (b)
#define LIKELY(a, b) .likely_least = (a), .likely_most = (b)
/* Plausible sizes, m. */
#define BUILDING_HEIGHT LIMITS(0.1, 1000), LIKELY(2.4, 450)
#define PRESSURE_RANGE LIMITS(0, 1e6), LIKELY(100, 15000)

#endif
