#include "galeward/engine.h"

#include <string.h>

const char *gw_status_code(enum gw_status status)
{
    switch (status) {
    case GW_OK:
        return "ok";
    case GW_OUTSIDE_METHOD:
        return "outside_method";
    case GW_MISSING:
        return "missing";
    case GW_BAD_VALUE:
        return "bad_value";
    }
    return "unknown";
}

void gw_engine_init(struct gw_engine *engine, const struct gw_tables *tables, struct gw_trace *trace)
{
    *engine = (struct gw_engine){.tables = tables, .trace = trace};
}

enum gw_status gw_refuse_values(struct gw_engine *engine, enum gw_status status, const char *key, const char *format,
                                const struct gw_value *values, unsigned n)
{
    struct gw_fault *fault = &engine->fault;
    *fault = (struct gw_fault){.status = status, .key = key, .format = format};
    fault->n = n < GW_FAULT_VALUES ? n : GW_FAULT_VALUES;
    memcpy(fault->values, values, fault->n * sizeof *values);
    return status;
}

struct gw_message gw_fault_kept(struct gw_arena *arena, const struct gw_fault *fault)
{
    return gw_say_values(arena, fault->format, fault->values, fault->n);
}

const char *gw_fault_text(struct gw_arena *arena, const struct gw_fault *fault, enum gw_units shown)
{
    const struct gw_message said = gw_fault_said(fault);
    return gw_message_text(arena, &said, shown);
}
