/* The kinds of 'galeward calc' about water, air and structural tests, for the registry in calc.c. */
#ifndef GALEWARD_CALC_WEATHER_H
#define GALEWARD_CALC_WEATHER_H

#include "galeward/model.h"

extern const struct gw_record gw_water_case_record, gw_water_answer_record;
enum gw_status gw_run_water(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_water_notes(const void *out, size_t *n);
extern const struct gw_record gw_proof_case_record, gw_proof_answer_record;
enum gw_status gw_run_proof(void *out, const void *in, struct gw_engine *engine);
extern const struct gw_record gw_weep_case_record, gw_weep_answer_record;
enum gw_status gw_run_weep(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_weep_notes(const void *out, size_t *n);
extern const struct gw_record gw_equalization_case_record, gw_equalization_answer_record;
enum gw_status gw_run_equalization(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_equalization_notes(const void *out, size_t *n);
extern const struct gw_record gw_leakage_case_record, gw_leakage_answer_record;
enum gw_status gw_run_leakage(void *out, const void *in, struct gw_engine *engine);
extern const struct gw_record gw_sequence_case_record, gw_sequence_answer_record;
enum gw_status gw_run_sequence(void *out, const void *in, struct gw_engine *engine);

#endif
