/* Shared by member.c and deflection.c. */
#ifndef FRAME_MEMBER_INTERNAL_H
#define FRAME_MEMBER_INTERNAL_H

#include "base/tolerance.h"
#include "galeward/member.h"
#include "tables_data.h"

/* Fills the limit's part of a solved member. */
void gw_member_limit(struct gw_member_result *out, const struct gw_member *in, struct gw_engine *engine);

#endif
