/* Shared by the files of src/model only. */
#ifndef GALEWARD_MODEL_INTERNAL_H
#define GALEWARD_MODEL_INTERNAL_H

#include "galeward/model.h"

/* What no single field can tell: references, sums, orders. Faults go to the model's diagnostics. */
void gw_validate_project(struct gw_model *model);
void gw_validate_openings(struct gw_model *model);
void gw_validate_system(struct gw_model *model, const struct gw_system *system);
/* validate_system.c: its framing. */
void gw_validate_framing(struct gw_model *model, const struct gw_system *system);
/* settle.c: editions and options where they are not given; then the conventions, once the project has been validated.
 */
void gw_settle_project(struct gw_model *model);
void gw_assume_conventions(struct gw_model *model);
/* The project's `assume` rows into a copy of the tables. */
void gw_correct_tables(struct gw_model *model);

#endif
