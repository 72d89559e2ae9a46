/* The kinds of 'galeward calc' for fasteners, anchors and silicone, for the registry in calc.c. */
#ifndef GALEWARD_CALC_FASTENER_H
#define GALEWARD_CALC_FASTENER_H

#include "galeward/record.h"

extern const struct gw_record gw_screw_case_record, gw_screw_answer_record;
enum gw_status gw_run_screw(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_screw_notes(const void *out, size_t *n);

extern const struct gw_record gw_pressure_plate_case_record, gw_pressure_plate_answer_record;
enum gw_status gw_run_pressure_plate(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_pressure_plate_notes(const void *out, size_t *n);

extern const struct gw_record gw_connection_case_record, gw_connection_answer_record;
enum gw_status gw_run_connection(void *out, const void *in, struct gw_engine *engine);

extern const struct gw_record gw_rail_case_record, gw_rail_answer_record;
enum gw_status gw_run_rail(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_rail_notes(const void *out, size_t *n);

extern const struct gw_record gw_anchor_case_record, gw_anchor_answer_record;
enum gw_status gw_run_anchor(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_anchor_notes(const void *out, size_t *n);

extern const struct gw_record gw_silicone_case_record, gw_silicone_answer_record;
enum gw_status gw_run_silicone(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_silicone_notes(const void *out, size_t *n);

extern const struct gw_record gw_joint_case_record, gw_joint_answer_record;
enum gw_status gw_run_joint(void *out, const void *in, struct gw_engine *engine);

#endif
