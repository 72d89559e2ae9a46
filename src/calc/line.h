/* Kinds of 'galeward calc' for members in a wall, for the registry in calc.c. */
#ifndef GALEWARD_CALC_LINE_H
#define GALEWARD_CALC_LINE_H

#include "galeward/model.h"

extern const struct gw_record gw_shedding_case_record, gw_shedding_answer_record;
enum gw_status gw_run_shedding(void *out, const void *in, struct gw_engine *engine);

#endif
