/* What is to be asked, and what to be done, of a sentence that says both. */
#ifndef REPORT_ASKING_H
#define REPORT_ASKING_H

#include "galeward/arena.h"

/* "look at those beside it; what blocks them" as "Do: look at those beside it. Ask: what blocks them?"; what neither
 * asks nor orders stands as it is, with its stop. */
const char *gw_ask_and_do(struct gw_arena *arena, const char *sentence);
/* The same after "If missed". */
const char *gw_if_missed(struct gw_arena *arena, const char *sentence);

#endif
