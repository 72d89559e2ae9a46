/* What was measured of a specimen, as it speaks against the system. */
#ifndef GALEWARD_JUDGE_MEASURED_H
#define GALEWARD_JUDGE_MEASURED_H

#include "judge/member.h"

#include "galeward/beam.h"

/* What a specimen of equal spans felt under a line load, N/m, with E I of 1, its splice passing on what the mullion
 * does; false: its beam is not known. */
bool gw_specimen_feels(struct gw_beam_result *out, struct gw_ask *ask, const struct gw_tested *tested,
                       double line_load);
/* The greatest moment and deflection of its spans under a line load, N/m, with E I of 1, N m and m: the least of what a
 * hinge and a stiff joint where its splice lay make of them, its overhang past one end or both. */
double gw_specimen_moment(struct gw_ask *ask, const struct gw_tested *tested, double line_load);
double gw_specimen_deflection(struct gw_ask *ask, const struct gw_tested *tested, double line_load);
/* The splice whose place is recorded may have made that moment less than its spans alone had. */
bool gw_specimen_relieved(struct gw_ask *ask, const struct gw_tested *tested);
/* N, across the splice of a specimen under `pressure`, Pa: as recorded, else by the beam from where it lay; absent. */
double gw_splice_carried(struct gw_ask *ask, const struct gw_tested *tested, double pressure);

/* A deflection says how stiff the specimen was: what it felt with E I of 1 N m2 (`felt`, m) over what was measured. A
 * piece so stiff is held to the limit here, whatever the pressure and the width were; one beyond it counts against the
 * system. `scaled`: under less load than here, so that it is presumed only. */
void gw_reading_against(struct gw_showing *out, struct gw_ask *ask, const struct gw_measured *measured,
                        const struct gw_framing_bend *bend, double felt, bool scaled);
/* The same of a transom of the same span, whose specimen records the heights beside it. `asked`: Pa, at the level of
 * the limit. */
void gw_transom_against(struct gw_showing *out, struct gw_ask *ask, const struct gw_tested_transom *tested,
                        const struct gw_element *e, double asked);

#endif
