/* What every engine is given and gives back: tables, an optional trace, the rows used, a fault. */
#ifndef GALEWARD_ENGINE_H
#define GALEWARD_ENGINE_H

#include "galeward/formula.h"
#include "galeward/message.h"
#include "galeward/table.h"

#include <math.h>

#ifdef __cplusplus
extern "C" {
#endif

/* A number that was not given. Quantities read from files are never NaN, so this cannot be mistaken. */
#define GW_ABSENT ((double)NAN)
static inline bool gw_given(double value) { return !isnan(value); }
/* A yes or no that may be absent. */
enum gw_bool { GW_UNSAID = -1, GW_NO = 0, GW_YES = 1 };

/* Pressures of the two levels are different types; galeward/wind.h has the only conversion. */
struct gw_strength {
    double pa;
};
struct gw_asd {
    double pa;
};

enum gw_status { GW_OK, GW_OUTSIDE_METHOD, GW_MISSING, GW_BAD_VALUE };
const char *gw_status_code(enum gw_status status); /* "outside_method" */

/* A refusal keeps its sentence as a format and values, so that no engine allocates and the reader's units print it.
 * Texts among the values must outlive the fault: constants, or what the input points to. */
enum { GW_FAULT_VALUES = 6 };
struct gw_fault {
    enum gw_status status;
    const char *key;    /* the input concerned */
    const char *format; /* names the limit; NULL: there is no fault */
    struct gw_value values[GW_FAULT_VALUES];
    unsigned n;
};
/* What the fault says. It looks into the fault and lives no longer; gw_fault_kept copies it into an arena. */
static inline struct gw_message gw_fault_said(const struct gw_fault *fault)
{
    struct gw_message message;
    message.format = fault->format;
    message.values = fault->values;
    message.n = fault->n;
    return message;
}
struct gw_message gw_fault_kept(struct gw_arena *arena, const struct gw_fault *fault);
/* In words. */
const char *gw_fault_text(struct gw_arena *arena, const struct gw_fault *fault, enum gw_units shown);

struct gw_arg {
    const char *name;
    double value;
    enum gw_dim dim;
};

/* One step as an engineer writes it. `formula` is an expression in the names of `args` (+ - * / ^ ( ) , and the
 * functions exp ln log10 sqrt abs min max); printing puts the values in their places. A step with no formula is a
 * value that was found otherwise, from its `args`: its `note` says how; or, with no value, a decision: its `note` says
 * what was chosen and why. Homogeneous in units: any consistent set of units gives the same equation. */
enum { GW_STEP_ARGS = 10 };
/* Of values in printed equations: enough that they still give the printed result. */
enum { GW_STEP_DIGITS = 7 };
struct gw_step {
    const char *symbol, *formula;
    struct gw_formula *tree; /* of the formula (galeward/formula.h), by the places of `args`; NULL: it has none */
    struct gw_message note;
    const char *clause;
    double value; /* absent: a decision */
    enum gw_dim dim;
    struct gw_arg args[GW_STEP_ARGS];
    unsigned n_args;
    const char *like[GW_STEP_ARGS]; /* how the symbol begins that an argument may go by; NULL: by its own name */
    size_t from[GW_STEP_ARGS];      /* settled: 1 + the step that gives the argument; 0: none, it is given */
    const char *group;              /* the title that it stands under; NULL */
    const char *place;              /* where it is worked out, as a subscript; NULL */
    enum gw_bool leads;             /* settled: to a result */
};

struct gw_trace {
    struct gw_arena *arena;
    struct gw_step *steps;
    size_t n, capacity;
    const char **groups; /* titles, in the order in which they are read */
    size_t n_groups, groups_capacity;
    const char *group, *place; /* of the steps recorded now */
};

struct gw_engine {
    const struct gw_tables *tables;
    struct gw_trace *trace; /* NULL: no derivation wanted */
    struct gw_used used;
    struct gw_fault fault;
    void *workspace; /* the caller's memory for an engine that needs some; its header says how much */
};

void gw_engine_init(struct gw_engine *engine, const struct gw_tables *tables, struct gw_trace *trace);
void gw_trace_init(struct gw_trace *trace, struct gw_arena *arena);
/* Records a step; does nothing without a trace. `args` is copied. Strings must outlive the trace (constants). */
void gw_trace_step(struct gw_engine *engine, const char *symbol, enum gw_dim dim, double value, const char *clause,
                   const char *formula, const struct gw_arg *args, unsigned n_args);
void gw_trace_note(struct gw_engine *engine, const char *symbol, const char *clause, const char *note);
/* A decision that names quantities; values are copied. */
#define GW_TRACE_SAY(engine, symbol, clause, format, ...)                                                              \
    gw_trace_say(engine, symbol, clause, format, (const struct gw_value[]){__VA_ARGS__},                               \
                 sizeof((const struct gw_value[]){__VA_ARGS__}) / sizeof(struct gw_value))
void gw_trace_say(struct gw_engine *engine, const char *symbol, const char *clause, const char *format,
                  const struct gw_value *values, unsigned n);
/* A value found by other means than a formula, from `args`. */
void gw_trace_found(struct gw_engine *engine, const char *symbol, enum gw_dim dim, double value, const char *clause,
                    const char *note, const struct gw_arg *args, unsigned n_args);
#define GW_FOUND(engine, symbol, dim, value, clause, note, ...)                                                        \
    gw_trace_found(engine, symbol, dim, value, clause, note, (const struct gw_arg[]){__VA_ARGS__},                     \
                   sizeof((const struct gw_arg[]){__VA_ARGS__}) / sizeof(struct gw_arg))
/* Steps recorded from now on stand under this title, in the order in which titles came; NULL: under none. Returns the
 * title before. */
const char *gw_trace_group(struct gw_engine *engine, const char *title);
/* Where steps recorded from now on are worked out, as a subscript ("h", "1"); NULL: nowhere in particular. Returns the
 * place before. An argument means the quantity of its own place before that of another. */
const char *gw_trace_at(struct gw_engine *engine, const char *place);
/* Makes a derivation of what was recorded. Steps stand by groups; one that repeats another is left out; each argument
 * is tied to the step that gives it; a name that has several values gets its place as a subscript, or a number, so that
 * it means one thing. What leads to one of `results` (values, whatever their sign) `leads`; everything where none of
 * them is among the steps. */
void gw_trace_settle(struct gw_trace *trace, const double *results, size_t n);
/* gw_step(e, "q_h", GW_PRESSURE, q, clause, "c*k*v^2", {"c", c, GW_WIND_CONSTANT}, {"k", k, GW_RATIO}, {"v", v,
 * GW_SPEED}); a formula that serves several places: {"K_z=K_h", k, GW_RATIO} prints K_h where it says K_z, and
 * {"Mn|Mn", m, GW_BENDING} what begins with Mn and has that value: Mny. */
#define GW_STEP(engine, symbol, dim, value, clause, formula, ...)                                                      \
    gw_trace_step(engine, symbol, dim, value, clause, formula, (const struct gw_arg[]){__VA_ARGS__},                   \
                  sizeof((const struct gw_arg[]){__VA_ARGS__}) / sizeof(struct gw_arg))
/* Marks a row as used and returns it. */
#define GW_USE(engine, row_pointer) (gw_used_add(&(engine)->used, &(row_pointer)->row), (row_pointer))
/* Fills the fault and returns `status`: gw_refuse(engine, GW_BAD_VALUE, "cb", "cb must be 1 or more"), or with up to
 * GW_FAULT_VALUES values for the slots of the format: gw_refuse(engine, status, key, "up to {}",
 * gw_of_quantity(GW_LENGTH, limit)). */
#define gw_refuse(engine, status, key, ...)                                                                            \
    gw_refuse_values(engine, status, key, GW_FORMAT_OF(__VA_ARGS__, 0), GW_VALUES_OF(__VA_ARGS__, gw_of_text(NULL)),   \
                     sizeof GW_VALUES_OF(__VA_ARGS__, gw_of_text(NULL)) / sizeof(struct gw_value) - 1)
#define GW_FORMAT_OF(format, ...) format
/* With one more at the end: an array without elements is no C. */
#define GW_VALUES_OF(format, ...) ((const struct gw_value[]){__VA_ARGS__})
enum gw_status gw_refuse_values(struct gw_engine *engine, enum gw_status status, const char *key, const char *format,
                                const struct gw_value *values, unsigned n);

/* "0.002560*1.04360*..." : the formula with its values, six digits, in the units shown. */
void gw_step_substituted(struct gw_text *out, const struct gw_step *step, enum gw_units shown);
/* Gives the arguments other names, here and in the formula. */
void gw_step_rename(struct gw_step *step, const char *const *names, struct gw_arena *arena);
/* "GC_pi = g" says no more than the value does. */
bool gw_step_is_plain(const struct gw_step *step);

#ifdef __cplusplus
}
#endif

#endif
