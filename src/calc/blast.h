/* The blast kinds of 'galeward calc', for the registry in calc.c. */
#ifndef GALEWARD_CALC_BLAST_H
#define GALEWARD_CALC_BLAST_H

#include "galeward/calc.h"

extern const struct gw_record gw_blast_case_record, gw_blast_answer_record;
enum gw_status gw_run_blast(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_blast_notes(const void *out, size_t *n);

extern const struct gw_record gw_response_case_record, gw_response_answer_record;
enum gw_status gw_run_response(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_response_notes(const void *out, size_t *n);

#endif
