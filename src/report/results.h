/* The records that results are written from: structs of the domain, described where they lie. */
#ifndef REPORT_RESULTS_H
#define REPORT_RESULTS_H

#include "galeward/report.h"

/* What 'demand' writes; gw_results_record is what 'check' writes. */
extern const struct gw_record gw_demand_results_record;
extern const struct gw_record gw_element_record, gw_finding_record, gw_demand_record, gw_summary_record,
    gw_reaction_record, gw_member_record, gw_reach_record, gw_request_record, gw_mock_up_record, gw_test_apart_record,
    gw_difference_record, gw_row_record, gw_flip_record;
/* project, inputs, assumptions, warnings, not_checked, caution: of struct gw_results. */
extern const struct gw_record gw_remarks_record;

/* What gw_json_result opens every result with, for schemas. */
extern const struct gw_record gw_result_head_record;

/* What words of a demand and of a finding are: the name of a free-form rating or the id of the check. */
const char *gw_check_name(const struct gw_demand *demand);
const char *gw_verdict_loud(int verdict); /* "NOT SHOWN" */
/* The utilization where it stands for itself: not beside what is not shown, nor below 1 beside what fails. */
void gw_add_use(struct gw_text *out, const struct gw_finding *finding);

#endif
