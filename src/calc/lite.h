/* A case of 'galeward calc lite' and its answer, for the files that make it: lite.c, lite_answer.c. */
#ifndef GALEWARD_CALC_LITE_H
#define GALEWARD_CALC_LITE_H

#include "kinds.h"

#include "galeward/model.h"

/* What may be listed: make-ups, each tried with every thickness and treatment where those are given. */
struct listed {
    GW_LIST(struct gw_layer) layers;
};
struct lite_case {
    double width, height;
    GW_LIST(struct gw_layer) layers;
    int support;
    enum gw_lite_span span;
    enum gw_edge_finish edge_finish;
    double duration, temperature, probability, pressure, pressure_out;
    double slope, snow;
    double deflection_limit, deflection_ratio;
    enum gw_glass_standard edition;
    enum gw_glass_route route;
    const struct gw_air_state *sealing, *service;
    GW_LIST(struct listed) lightest_of;
    GW_LIST(double) thicknesses;
    struct gw_many treatments; /* enum gw_treatment */
    enum gw_bool greatest_width;
};

struct pane_answer {
    struct gw_pane_result result;
    const struct gw_pane_by_principles *principles; /* NULL: not covered */
    double utilization;
    const char *name, *governing, *route;
};
struct load_answer {
    const char *name;
    double pressure, duration, load_resistance, utilization, deflection;
    const char *route;
};
struct choice_answer {
    int make_up;
    double thickness;
    const char *treatment;
    double weight, utilization, load_resistance, deflection;
};
struct lite_answer {
    struct gw_lite_verdict verdict;
    const struct gw_lite_result *result; /* of the load that governs */
    double nonfactored_load, type_factor, load_resistance, deflection, stress_max, breakage, utilization, weight;
    double governing_resistance, deflection_use;
    const char *governing, *route, *why;
    struct gw_message standard_limit, principles_limit; /* of the result in hand */
    const struct gw_lite_route *principles;
    struct pane_answer panes[GW_PANES];
    struct load_answer each_load[GW_LITE_LOADS];
    struct choice_answer chosen[GW_CHOICES];
    GW_LIST(struct pane_answer) layers;
    GW_LIST(struct load_answer) loads;
    GW_LIST(struct choice_answer) choices;
    int tried, failed, refused;
    double greatest_pressure, greatest_width;
};

extern const struct gw_record gw_lite_answer_record;
/* No figure is known yet. */
void gw_lite_answer_nothing(struct lite_answer *answer);
/* Fills the answer from its verdict: the figures of the load that governs, of each pane and of each load. */
void gw_lite_answer(struct lite_answer *answer);

#endif
