/* The glass kinds of 'galeward calc', for the registry in calc.c. */
#ifndef GALEWARD_CALC_GLASS_H
#define GALEWARD_CALC_GLASS_H

#include "galeward/laminate.h"
#include "galeward/model.h"

extern const struct gw_record gw_laminate_record, gw_laminate_answer_record;
enum gw_status gw_run_laminate(void *out, const void *in, struct gw_engine *engine);

enum { GW_LITE_MAKE_UPS = 400 }; /* that `lightest_of` may list */
#define GW_LITE_WORKSPACE (GW_PLATE_WORKSPACE + GW_LITE_MAKE_UPS * sizeof(struct gw_make_up))
extern const struct gw_record gw_lite_case_record, gw_lite_answer_record;
enum gw_status gw_run_lite(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_lite_notes(const void *out, size_t *n);
extern const struct gw_record gw_cavity_case_record, gw_cavity_answer_record;
enum gw_status gw_run_cavity(void *out, const void *in, struct gw_engine *engine);
extern const struct gw_record gw_support_case_record, gw_support_answer_record;
enum gw_status gw_run_support(void *out, const void *in, struct gw_engine *engine);
const char *const *gw_support_notes(const void *out, size_t *n);

#endif
