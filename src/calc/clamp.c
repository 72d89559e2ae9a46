/* Of 'galeward calc': relaxation. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/clamp.h"

static const struct gw_field RELAXATION[] = {
    NUM(gw_relaxation_case, retained, GW_RATIO, LIMITS(0, 1), .help = "a reading: what is left of the clamp at first"),
    NUM(gw_relaxation_case, age, GW_TIME, LIMITS(0, 1e10), .help = "of the reading, since installation or retorque"),
    NUM(gw_relaxation_case, rate, GW_RATIO, LIMITS(0, 1), .help = "instead of a reading: loss per decade of time"),
    NUM(gw_relaxation_case, time, GW_TIME, .flags = GW_REQUIRED, LIMITS(0, 1e10),
        .help = "when is asked, since installation or retorque"),
};
static const struct gw_record RELAXATION_RECORD = RECORD("relaxation", gw_relaxation_case, RELAXATION);
static const struct gw_field RELAXATION_ANSWER[] = {
    OUT(gw_relaxation_result, "rate_per_decade", rate, GW_RATIO, "loss, of the clamp at first"),
    OUT(gw_relaxation_result, "retained_at_time", retained, GW_RATIO, "what is left of the clamp at first"),
};
static const struct gw_record RELAXATION_ANSWER_RECORD =
    RECORD("relaxation result", gw_relaxation_result, RELAXATION_ANSWER);

static enum gw_status run_relaxation(void *out, const void *in, struct gw_engine *engine)
{
    return gw_relaxation(out, in, engine);
}

static const char *const *relaxation_notes(const void *out, size_t *n)
{
    const struct gw_relaxation_result *result = out;
    *n = result->n_notes;
    return result->notes;
}

const struct gw_calc_kind gw_kind_relaxation = {.name = "relaxation",
                                                .help = "clamp that a gasketed pressure plate keeps with time",
                                                .example = "retained=0.81 age='9 months' time='10 years'",
                                                .input = &RELAXATION_RECORD,
                                                .output = &RELAXATION_ANSWER_RECORD,
                                                .run = run_relaxation,
                                                .notes = relaxation_notes};
