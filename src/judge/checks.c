/* The registry of the checks; the list is in checks.h. */
#include "judge/checks.h"

#include <string.h>

#define ROW(name_) &gw_check_##name_,
static const struct gw_check *const CHECKS[] = {GW_CHECKS(ROW)};

const struct gw_check *const *gw_check_list(size_t *n)
{
    *n = sizeof CHECKS / sizeof *CHECKS;
    return CHECKS;
}

const struct gw_check *gw_check_find(const char *id)
{
    for (size_t i = 0; i < sizeof CHECKS / sizeof *CHECKS; i++)
        if (strcmp(CHECKS[i]->id, id) == 0) return CHECKS[i];
    return NULL;
}
