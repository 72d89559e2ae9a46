/* What every engine is given and gives back: tables, an optional trace, the rows used, a fault. */
#ifndef GALEWARD_ENGINE_H
#define GALEWARD_ENGINE_H

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

struct gw_fault {
    enum gw_status status;
    const char *key;   /* the input concerned */
    char message[240]; /* names the limit */
};

struct gw_arg {
    const char *name;
    double value;
    enum gw_dim dim;
};

/* One step as an engineer writes it. `formula` is an expression in the names of `args` (+ - * / ^ ( ) , and the
 * functions exp ln log10 sqrt abs min max); printing puts the values in their places. A step with no formula is a
 * decision: its `note` says what was chosen and why. Homogeneous in units: any consistent set of units gives the same
 * equation. */
struct gw_step {
    const char *symbol, *formula, *note, *clause;
    double value;
    enum gw_dim dim;
    struct gw_arg args[10];
    unsigned n_args;
};

struct gw_trace {
    struct gw_arena *arena;
    struct gw_step *steps;
    size_t n, capacity;
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
/* gw_step(e, "q_h", GW_PRESSURE, q, clause, "c*k*v^2", {"c", c, GW_WIND_CONSTANT}, {"k", k, GW_RATIO}, {"v", v,
 * GW_SPEED}); */
#define GW_STEP(engine, symbol, dim, value, clause, formula, ...)                                                      \
    gw_trace_step(engine, symbol, dim, value, clause, formula, (const struct gw_arg[]){__VA_ARGS__},                   \
                  sizeof((const struct gw_arg[]){__VA_ARGS__}) / sizeof(struct gw_arg))
/* Marks a row as used and returns it. */
#define GW_USE(engine, row_pointer) (gw_used_add(&(engine)->used, &(row_pointer)->row), (row_pointer))
/* Fills the fault and returns `status`. */
enum gw_status gw_refuse(struct gw_engine *engine, enum gw_status status, const char *key, const char *format, ...)
    __attribute__((format(printf, 4, 5)));

/* "0.002560*1.04360*..." : the formula with its values, six digits, in the units shown. */
void gw_step_substituted(struct gw_text *out, const struct gw_step *step, enum gw_units shown);

#ifdef __cplusplus
}
#endif

#endif
