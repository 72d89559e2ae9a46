/* The debris kinds of 'galeward calc', for the registry in calc.c. */
#ifndef GALEWARD_CALC_DEBRIS_H
#define GALEWARD_CALC_DEBRIS_H

#include "galeward/model.h"

extern const struct gw_record gw_debris_case_record, gw_debris_answer_record;
enum gw_status gw_run_debris(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_debris_notes(const void *out, size_t *n);
extern const struct gw_record gw_cycles_case_record, gw_cycles_answer_record;
enum gw_status gw_run_cycles(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_cycles_notes(const void *out, size_t *n);

#endif
