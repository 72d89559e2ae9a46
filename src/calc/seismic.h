/* The seismic and movement kinds of 'galeward calc', for the registry in calc.c. */
#ifndef GALEWARD_CALC_SEISMIC_H
#define GALEWARD_CALC_SEISMIC_H

#include "galeward/record.h"

extern const struct gw_record gw_seismic_force_record, gw_seismic_force_answer_record;
enum gw_status gw_run_seismic_force(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_seismic_force_notes(const void *out, size_t *n);
extern const struct gw_record gw_clearance_record, gw_clearance_answer_record;
enum gw_status gw_run_clearance(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_clearance_notes(const void *out, size_t *n);
extern const struct gw_record gw_racking_record, gw_racking_answer_record;
enum gw_status gw_run_racking(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_racking_notes(const void *out, size_t *n);
extern const struct gw_record gw_story_drift_record, gw_story_drift_answer_record;
enum gw_status gw_run_story_drift(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_story_drift_notes(const void *out, size_t *n);
extern const struct gw_record gw_movement_record, gw_movement_answer_record;
enum gw_status gw_run_movement(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_movement_notes(const void *out, size_t *n);

#endif
