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

void gw_trace_init(struct gw_trace *trace, struct gw_arena *arena) { *trace = (struct gw_trace){.arena = arena}; }

static struct gw_step *next_step(struct gw_trace *trace)
{
    trace->steps = gw_grow(trace->arena, trace->steps, trace->n, &trace->capacity, sizeof *trace->steps);
    return &trace->steps[trace->n++];
}

void gw_trace_step(struct gw_engine *engine, const char *symbol, enum gw_dim dim, double value, const char *clause,
                   const char *formula, const struct gw_arg *args, unsigned n_args)
{
    if (!engine->trace) return;
    struct gw_step *step = next_step(engine->trace);
    const unsigned room = sizeof step->args / sizeof step->args[0];
    *step = (struct gw_step){.symbol = symbol, .formula = formula, .clause = clause, .value = value, .dim = dim};
    step->n_args = n_args < room ? n_args : room;
    memcpy(step->args, args, step->n_args * sizeof *args);
}

void gw_trace_note(struct gw_engine *engine, const char *symbol, const char *clause, const char *note)
{
    gw_trace_say(engine, symbol, clause, note, NULL, 0);
}

void gw_trace_say(struct gw_engine *engine, const char *symbol, const char *clause, const char *format,
                  const struct gw_value *values, unsigned n)
{
    if (!engine->trace) return;
    const struct gw_message note = gw_say_values(engine->trace->arena, format, values, n);
    *next_step(engine->trace) = (struct gw_step){.symbol = symbol, .note = note, .clause = clause, .value = GW_ABSENT};
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

static bool starts_name(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }

static bool is_digit(char c) { return c >= '0' && c <= '9'; }

static size_t name_span(const char *text)
{
    size_t i = 0;
    while (starts_name(text[i]) || is_digit(text[i])) i++;
    return i;
}

/* A literal of the formula, kept whole: the 'e' of 1e3 is no name. */
static size_t number_span(const char *text)
{
    double ignored;
    return is_digit(*text) || *text == '.' ? gw_read_number(text, strlen(text), &ignored) : 0;
}

static const struct gw_arg *arg_named(const struct gw_step *step, const char *name, size_t length)
{
    for (unsigned i = 0; i < step->n_args; i++)
        if (strlen(step->args[i].name) == length && memcmp(step->args[i].name, name, length) == 0)
            return &step->args[i];
    return NULL;
}

static void add_value(struct gw_text *out, const struct gw_arg *arg, enum gw_units shown)
{
    const int digits = 7; /* enough that the printed equation still gives the printed result */
    double value = gw_quantity_shown(gw_units_standard(), arg->dim, shown, arg->value);
    bool negative = value < 0; /* "1-(-0.9)", not "1--0.9" */
    if (negative) gw_text_add(out, "(");
    gw_text_number(out, value, digits);
    if (negative) gw_text_add(out, ")");
}

void gw_step_substituted(struct gw_text *out, const struct gw_step *step, enum gw_units shown)
{
    for (const char *at = step->formula; at && *at;) {
        size_t length = number_span(at);
        const struct gw_arg *arg = NULL;
        if (!length && starts_name(*at)) {
            length = name_span(at);
            arg = arg_named(step, at, length);
        }
        if (!length) length = 1;
        if (arg) {
            add_value(out, arg, shown);
        } else {
            gw_text_bytes(out, at, length);
        }
        at += length;
    }
}
