/* The records that JSON, CSV and the results schema are written from. */
#ifndef REPORT_RESULTS_H
#define REPORT_RESULTS_H

#include "galeward/json.h"
#include "galeward/report.h"

struct element_out {
    const char *id, *wall, *building, *kind, *mark, *columns, *component, *lite;
    int count;
    double width, height, bottom, top, span;
    int zone;
    enum gw_bool parapet, place_unknown;
    double corner_distance, effective_area, inward, outward, inward_asd, outward_asd;
    const char *governs, *basis;
};

struct demand_out {
    const char *check, *title, *name, *element, *status, *unit, *clause, *basis, *message;
    double value, value_outward, at;
    enum gw_bool at_most;
};

struct reaction_out {
    const char *element, *wall, *mark;
    int count, zone;
    double inward_asd, outward_asd, inward, outward, area;
};

struct member_out {
    const char *element, *kind, *wall, *mark;
    int count, zone;
    double moment_asd, shear_asd, deflection_limit, inertia_needed;
};

struct reach_out {
    const char *candidate;
    int zone;
    double mullion_span, at_width, mullion_width, at_span, screw_spacing, screw_width;
};

struct step_out {
    const char *test, *method;
    enum gw_bool again;
    double pressure, leakage, racking, limit;
};

struct verdict_out {
    const char *candidate, *check, *name, *verdict, *evidence, *element, *unit, *direction, *basis, *message;
    double utilisation, demand, capacity;
};

struct summary_out {
    const char *candidate, *verdict, *governing_check, *governing_element;
    int pass, fail, not_shown, not_required;
    double utilisation;
};

struct input_out {
    const char *file, *sha256;
};
struct text_out {
    const char *where, *text;
};

struct results_out {
    int galeward;
    const char *version, *project;
    GW_LIST(struct input_out) inputs;
    GW_LIST(struct text_out) assumptions;
    GW_LIST(struct text_out) warnings;
    GW_LIST(struct text_out) not_checked;
    const char *caution;
    GW_LIST(struct element_out) elements;
    GW_LIST(struct demand_out) demands;
    GW_LIST(struct reaction_out) reactions;
    GW_LIST(struct member_out) members;
    GW_LIST(struct step_out) mock_up;
    GW_LIST(struct verdict_out) verdicts;
    GW_LIST(struct summary_out) summaries;
    GW_LIST(struct reach_out) reaches;
};

/* What 'demand' writes; gw_results_record is what 'check' writes. */
extern const struct gw_record gw_demand_results_record;
extern const struct gw_record gw_element_out_record, gw_verdict_out_record;

void gw_element_out_of(struct element_out *out, const struct gw_element *e);
void gw_verdict_out_of(struct verdict_out *out, const struct gw_finding *f);

#endif
