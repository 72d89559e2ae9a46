/* Shared by the files of src/seismic only. */
#ifndef GALEWARD_SEISMIC_INTERNAL_H
#define GALEWARD_SEISMIC_INTERNAL_H

#include "galeward/seismic.h"

#include "tables_data.h"

/* Drifts are reached by arithmetic on both sides of a comparison: equal ones must count as equal. */
static inline bool seismic_reaches(double value, double limit)
{
    const double hair = 1e-9;
    return value >= limit * (1 - hair);
}
void gw_seismic_note(struct gw_seismic_notes *notes, const char *text);
/* Also where nobody here saw the row in its source: second-hand or recalled. */
void gw_seismic_note_unseen(struct gw_seismic_notes *notes, const struct gw_row *row, const char *text);
enum gw_status gw_seismic_positive(const char *key, double value, struct gw_engine *engine);
enum gw_status gw_seismic_not_negative(const char *key, double value, struct gw_engine *engine);

#endif
