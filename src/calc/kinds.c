/* The registry of the kinds of 'galeward calc'; the list is in kinds.h. */
#include "kinds.h"

#include "base/fields.h"

#include <string.h>

#define ROW(name_) &gw_kind_##name_,
static const struct gw_calc_kind *const KINDS[] = {GW_CALC_KINDS(ROW)};

const struct gw_calc_kind *const *gw_calc_kinds(size_t *n)
{
    *n = COUNT(KINDS);
    return KINDS;
}

const struct gw_calc_kind *gw_calc_find(const char *name)
{
    for (size_t i = 0; i < COUNT(KINDS); i++)
        if (strcmp(KINDS[i]->name, name) == 0) return KINDS[i];
    return NULL;
}
