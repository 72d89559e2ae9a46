/* One case in, one result out: the registry behind 'galeward calc', the reference cases and the field reference. */
#ifndef GALEWARD_CALC_H
#define GALEWARD_CALC_H

#include "galeward/blast.h"
#include "galeward/json.h"
#include "galeward/lite.h"

#ifdef __cplusplus
extern "C" {
#endif

struct gw_calc_kind {
    const char *name, *help, *example; /* example: arguments of a working command line */
    const struct gw_record *input, *output;
    /* `in` and `out` are the records' structs. */
    enum gw_status (*run)(void *out, const void *in, struct gw_engine *engine);
    size_t workspace; /* bytes that `run` finds at engine->workspace */
    /* Constant strings about the result, NULL where the kind has none. */
    const char *const *(*notes)(const void *out, size_t *n);
};

extern const struct gw_record gw_wind_case_record, gw_wind_result_record, gw_plate_case_record, gw_plate_result_record;

const struct gw_calc_kind *const *gw_calc_kinds(size_t *n);
const struct gw_calc_kind *gw_calc_find(const char *name);

/* Runs one case from a mapping node and writes its JSON object, without a line end. Besides the kind's keys a case may
 * hold `units`, `id` (comes back) and `trace: true`. False when the object is an error. */
bool gw_calc_case(struct gw_text *out, struct gw_arena *arena, const struct gw_calc_kind *kind,
                  const struct gw_node *node, const struct gw_tables *tables);
/* The same case for those who show it otherwise than as JSON: what it was read as and answered with, in the arena. Of a
 * case with an error (false) only the error, in the units shown; none: in the case's, else in SI. */
struct gw_calc_answer {
    const void *in, *out; /* the kind's records */
    enum gw_units units;  /* that the case named */
    const char *id;       /* that the case named, as text; NULL */
    const char *error_code, *error_key, *error;
    GW_LIST(const char *) notes;
    struct gw_trace trace; /* with `trace: true` */
};
bool gw_calc_run(struct gw_calc_answer *answer, struct gw_arena *arena, const struct gw_calc_kind *kind,
                 const struct gw_node *node, const struct gw_tables *tables, enum gw_units shown);
/* Of a 'lite' answer: the plate of the pane that governs under its part of the load, of its thickness for stress; its
 * thickness for deflection, m, which differs where it is laminated; and what the pane is called. Refuses a lite without
 * a pressure, or on fewer than four edges. */
struct gw_plate_case;
enum gw_status gw_lite_plate(struct gw_plate_case *plate, double *deflection_thickness, const char **pane,
                             const void *in, const void *out, struct gw_engine *engine);
/* What else a drawing of it says: the make-up (of a choice, the lightest that passes), the loads and how far each is
 * used, what limits it. */
struct gw_layer;
struct gw_lite_chart {
    const struct gw_layer *layers;
    size_t n_layers;
    const struct gw_lite_verdict *verdict;
    double deflection_limit; /* m; absent: none asked */
};
void gw_lite_chart(struct gw_lite_chart *chart, struct gw_arena *arena, const void *in, const void *out);
/* Of a 'beam' or 'member' answer: the beam that was solved, and its solution. */
struct gw_beam;
struct gw_beam_result;
void gw_answer_beam(const struct gw_beam **beam, const struct gw_beam_result **solution, const void *out);
/* Of a 'member' answer, besides: as given, and the span nearest to its limit (member.h; absent where not compared). */
struct gw_member_chart {
    const char *orientation, *shedding; /* words of the file */
    double pressure;                    /* Pa */
    bool limited, capped;
    double limit_span, limit_deflection, limit, use;
};
void gw_member_chart(struct gw_member_chart *chart, const void *in, const void *out);
/* Of a 'response' answer: what its chart shows. Pairs are absent where they are not given, or not found. */
struct gw_response_chart {
    const struct gw_blast_curve *curve;
    const struct gw_layer *layers;
    size_t n_layers;
    double probability; /* absent: the standard's */
    struct gw_blast_pair demand, breaking, least, rating;
    bool breaks;
    double use;
    const char *const *notes;
    size_t n_notes;
};
void gw_response_chart(struct gw_response_chart *chart, const void *in, const void *out);
/* A derivation as a JSON array of {symbol, formula, substituted, result, unit, clause, note}. */
void gw_calc_trace(struct gw_json *json, const struct gw_trace *trace, enum gw_units shown);

#ifdef __cplusplus
}
#endif

#endif
