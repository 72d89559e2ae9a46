/* The frame kinds of 'galeward calc', for the registry in calc.c. */
#ifndef GALEWARD_CALC_FRAME_H
#define GALEWARD_CALC_FRAME_H

#include "galeward/model.h"

extern const struct gw_record gw_beam_case_record, gw_beam_answer_record;
enum gw_status gw_run_beam(void *out, const void *in, struct gw_engine *engine);
extern const struct gw_record gw_member_case_record, gw_member_answer_record;
enum gw_status gw_run_member(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_beam_notes(const void *out, size_t *n);

#endif
