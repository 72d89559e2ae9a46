/* The kinds of 'galeward calc' for sections and their strength, for the registry in calc.c. */
#ifndef GALEWARD_CALC_SECTION_H
#define GALEWARD_CALC_SECTION_H

#include "galeward/model.h"

extern const struct gw_record gw_section_case_record, gw_section_answer_record;
enum { GW_SECTION_VOIDS = 64, GW_SECTION_POINTS = 2048 }; /* that a case may hold */
#define GW_SECTION_WORKSPACE                                                                                           \
    (GW_SECTION_POINTS * sizeof(struct gw_section_point) + (GW_SECTION_VOIDS + 1) * sizeof(struct gw_polygon) +        \
     GW_STRIPS * sizeof(struct gw_strip))
enum gw_status gw_run_section(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_section_notes(const void *out, size_t *n);

extern const struct gw_record gw_bending_case_record, gw_bending_answer_record;
enum gw_status gw_run_bending(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_bending_notes(const void *out, size_t *n);

extern const struct gw_record gw_share_case_record, gw_share_answer_record;
enum gw_status gw_run_share(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_share_notes(const void *out, size_t *n);

#endif
