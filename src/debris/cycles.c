/* Pressure cycles after the missile: shares of the design pressure. */
#include "debris_internal.h"

static enum gw_status magnitude(const char *key, double pa, struct gw_engine *engine)
{
    if (!gw_given(pa)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (pa >= 0 && isfinite(pa)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must be a magnitude", gw_of_text(key));
}

static double pressure_for(enum gw_cycle_direction direction, struct gw_asd inward, struct gw_asd outward)
{
    if (direction == GW_CYCLE_INWARD) return inward.pa;
    return direction == GW_CYCLE_OUTWARD ? outward.pa : fmax(inward.pa, outward.pa);
}

static void add_step(struct gw_cycles *out, const struct gw_debris_cycles *row, double pressure,
                     struct gw_engine *engine)
{
    struct gw_cycle_step *step = &out->steps[out->n++];
    *step = (struct gw_cycle_step){.direction = (enum gw_cycle_direction)row->direction,
                                   .low = row->low * pressure,
                                   .high = row->high * pressure,
                                   .cycles = (int)row->cycles};
    out->total += step->cycles;
    GW_STEP(engine, "p_low", GW_PRESSURE, step->low, row->row.source, "c*P", {"c", row->low, GW_RATIO},
            {"P|p_", pressure, GW_PRESSURE});
    GW_STEP(engine, "p_high", GW_PRESSURE, step->high, row->row.source, "c*P", {"c", row->high, GW_RATIO},
            {"P|p_", pressure, GW_PRESSURE});
}

enum gw_status gw_debris_cycles(struct gw_cycles *out, struct gw_asd inward, struct gw_asd outward,
                                enum gw_cycle_schedule schedule, struct gw_engine *engine)
{
    *out = (struct gw_cycles){.n = 0};
    enum gw_status status = magnitude("pressure_positive", inward.pa, engine);
    if (!status) status = magnitude("pressure_negative", outward.pa, engine);
    if (status) return status;
    for (size_t i = 0; i < GW_N_DEBRIS_CYCLES && out->n < GW_CYCLE_STEPS; i++) {
        const struct gw_debris_cycles *row = &engine->tables->debris_cycles[i];
        if (row->schedule != (int)schedule) continue;
        add_step(out, GW_USE(engine, row), pressure_for((enum gw_cycle_direction)row->direction, inward, outward),
                 engine);
    }
    if (out->n) return GW_OK;
    return gw_refuse(engine, GW_MISSING, "schedule", "which schedule of cycles is not given");
}

int gw_debris_cycles_total(enum gw_cycle_schedule schedule, struct gw_engine *engine)
{
    int total = 0;
    for (size_t i = 0; i < GW_N_DEBRIS_CYCLES; i++) {
        const struct gw_debris_cycles *row = &engine->tables->debris_cycles[i];
        if (row->schedule == (int)schedule) total += (int)GW_USE(engine, row)->cycles;
    }
    return total;
}
