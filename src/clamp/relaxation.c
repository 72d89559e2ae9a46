/* Loss of clamp with the logarithm of time. */
#include "clamp/clamp_internal.h"

#include "tables_data.h"

static const double HOUR = 3600; /* s */
static const char NOTE_SAME_WALL[] = "at the temperatures and with the gasket of the reading: heat and a poor compound "
                                     "lose more, a retorque starts the line anew";
static const char NOTE_BEYOND[] = "more than a decade of time beyond the reading: read again before relying on it";

enum gw_status gw_clamp_positive(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (value > 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must be positive", gw_of_text(key));
}

enum gw_status gw_clamp_not_below_zero(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value) || (value >= 0 && isfinite(value))) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must not be negative", gw_of_text(key));
}

static enum gw_status check_reading(const struct gw_relaxation_case *in, double start, struct gw_engine *engine)
{
    enum gw_status status = gw_clamp_positive("retained", in->retained, engine);
    if (!status) status = gw_clamp_positive("age", in->age, engine);
    if (status) return status;
    if (in->retained > 1)
        return gw_refuse(engine, GW_BAD_VALUE, "retained", "retained is what is left of 1: 0.8 or 80 %");
    if (in->age > start) return GW_OK;
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "age", "a reading tells a rate only after {} h: the line begins there",
                     gw_of_number(start / HOUR, 4));
}

/* From what is given: a reading or a rate, not both. */
static enum gw_status find_rate(double *out, const struct gw_relaxation_case *in,
                                const struct gw_clamp_relaxation *line, struct gw_engine *engine)
{
    const bool reading = gw_given(in->retained) || gw_given(in->age);
    *out = in->rate;
    if (gw_given(in->rate)) {
        if (reading) return gw_refuse(engine, GW_BAD_VALUE, "rate", "give retained and its age, or rate, not both");
        if (in->rate >= 0 && isfinite(in->rate)) return GW_OK;
        return gw_refuse(engine, GW_BAD_VALUE, "rate", "rate must not be negative");
    }
    if (!reading) return gw_refuse(engine, GW_MISSING, "retained", "give retained and its age, or rate");
    enum gw_status status = check_reading(in, line->start_s, engine);
    if (status) return status;
    *out = (1 - in->retained) / log10(in->age / line->start_s);
    GW_STEP(engine, "k", GW_RATIO, *out, line->row.source, "(1-R)/log10(t/t_0)", {"R", in->retained, GW_RATIO},
            {"t", in->age, GW_TIME}, {"t_0", line->start_s, GW_TIME});
    return GW_OK;
}

enum gw_status gw_relaxation(struct gw_relaxation_result *out, const struct gw_relaxation_case *in,
                             struct gw_engine *engine)
{
    const struct gw_clamp_relaxation *line =
        GW_USE(engine, &engine->tables->clamp_relaxation[GW_ROW_CLAMP_RELAXATION_LINE]);
    *out = (struct gw_relaxation_result){.rate = GW_ABSENT, .retained = GW_ABSENT};
    enum gw_status status = gw_clamp_positive("time", in->time, engine);
    if (!status) status = find_rate(&out->rate, in, line, engine);
    if (status) return status;
    if (in->time < line->start_s)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "time", "the line begins {} h after installation",
                         gw_of_number(line->start_s / HOUR, 4));
    out->retained = 1 - out->rate * log10(in->time / line->start_s);
    if (!(out->retained > 0))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "time", "the line has come to nothing by then: it ends before");
    GW_STEP(engine, "R_t", GW_RATIO, out->retained, line->row.source, "1-k*log10(t/t_0)", {"k", out->rate, GW_RATIO},
            {"t", in->time, GW_TIME}, {"t_0", line->start_s, GW_TIME});
    out->notes[out->n_notes++] = NOTE_SAME_WALL;
    if (gw_given(in->age) && in->time > 10 * in->age) out->notes[out->n_notes++] = NOTE_BEYOND;
    return GW_OK;
}
