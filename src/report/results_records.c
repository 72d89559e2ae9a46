/* The keys of a result file: what each is, in which unit. */
#include "report/results.h"

#define COUNT(array) (sizeof(array) / sizeof *(array))
#define OUT(struct_, member_, type_, help_)                                                                            \
    {                                                                                                                  \
        .key = #member_, .type = type_, .offset = offsetof(struct struct_, member_), .help = help_                     \
    }
#define TEXT(struct_, member_, help_) OUT(struct_, member_, GW_T_TEXT, help_)
#define WHOLE(struct_, member_, help_) OUT(struct_, member_, GW_T_INTEGER, help_)
#define YES_NO(struct_, member_, help_) OUT(struct_, member_, GW_T_BOOL, help_)
#define NUM(struct_, member_, dim_, help_)                                                                             \
    {                                                                                                                  \
        .key = #member_, .type = GW_T_NUMBER, .offset = offsetof(struct struct_, member_), .dim = dim_, .help = help_  \
    }
#define LIST(member_, record_, help_)                                                                                  \
    {                                                                                                                  \
        .key = #member_, .type = GW_T_RECORD, .offset = offsetof(struct results_out, member_), .flags = GW_MANY,       \
        .record = record_, .help = help_                                                                               \
    }
#define RECORD(struct_, name_, fields_, help_)                                                                         \
    {                                                                                                                  \
        .name = name_, .size = sizeof(struct struct_), .fields = fields_, .n = COUNT(fields_), .help = help_           \
    }

#define E(type_, member_, ...) type_(element_out, member_, __VA_ARGS__)
static const struct gw_field ELEMENT[] = {
    E(TEXT, id, "name of the group, for 'explain'"),
    E(TEXT, wall, "wall, or elevation of the schedule"),
    E(TEXT, building, "its building"),
    E(TEXT, kind, "lite, mullion, transom, screw or anchor"),
    E(TEXT, mark, "lite type, mark of an opening, or place in the frame"),
    E(TEXT, columns, "columns or grid lines of the wall, from the left"),
    E(TEXT, component, "fixed, vent, door or spandrel"),
    E(TEXT, lite, "lite type"),
    E(WHOLE, count, "how many"),
    E(NUM, width, GW_LENGTH, "width carried"),
    E(NUM, height, GW_LENGTH, "height carried"),
    E(NUM, bottom, GW_LENGTH, "lowest edge above ground"),
    E(NUM, top, GW_LENGTH, "highest edge above ground"),
    E(NUM, span, GW_LENGTH, "span, framing"),
    E(WHOLE, zone, "4 or 5"),
    E(YES_NO, parapet, "stands above the roof line"),
    E(YES_NO, place_unknown, "taken at the worst place"),
    E(NUM, corner_distance, GW_LENGTH, "nearest edge to the nearest outside corner"),
    E(NUM, effective_area, GW_AREA, "effective wind area"),
    E(NUM, inward, GW_PRESSURE, "design pressure, strength level, positive"),
    E(NUM, outward, GW_PRESSURE, "design pressure, strength level, negative"),
    E(NUM, inward_asd, GW_PRESSURE, "allowable-stress level, positive"),
    E(NUM, outward_asd, GW_PRESSURE, "allowable-stress level, negative"),
    E(TEXT, governs, "where the governing pressure comes from"),
    E(TEXT, basis, "the weakest basis of the numbers behind it"),
};
const struct gw_record gw_element_out_record = RECORD(element_out, "element", ELEMENT, "a group of like elements");

#define D(type_, member_, ...) type_(demand_out, member_, __VA_ARGS__)
static const struct gw_field DEMAND[] = {
    D(TEXT, check, "id of the check"),
    D(TEXT, title, "what it is about"),
    D(TEXT, name, "name of a free-form rating"),
    D(TEXT, element, "element, wall, or project"),
    D(TEXT, status, "required, not required, or not shown"),
    D(NUM, value, GW_RATIO, "demand in `unit`; structural: inward, allowable-stress level"),
    D(NUM, value_outward, GW_RATIO, "structural: outward, magnitude"),
    D(NUM, at, GW_PRESSURE, "air: at this pressure difference"),
    D(TEXT, unit, "SI unit of the values, as the end of a key"),
    D(YES_NO, at_most, "the rating must not be above the value"),
    D(TEXT, clause, "where it is asked for"),
    D(TEXT, basis, "the weakest basis of the numbers behind it"),
    D(TEXT, message, "how it came about"),
};
static const struct gw_record DEMAND_RECORD = RECORD(demand_out, "demand", DEMAND, "what one check asks at one place");

#define V(type_, member_, ...) type_(verdict_out, member_, __VA_ARGS__)
static const struct gw_field VERDICT[] = {
    V(TEXT, candidate, "name of the system"),
    V(TEXT, check, "id of the check"),
    V(TEXT, name, "name of a free-form rating"),
    V(TEXT, verdict, "pass, fail, not shown or not required"),
    V(NUM, utilisation, GW_RATIO, "required over provided"),
    V(TEXT, evidence, "test, calculation, statement or none"),
    V(TEXT, element, "element, wall, or project"),
    V(NUM, demand, GW_RATIO, "required, in `unit`"),
    V(NUM, capacity, GW_RATIO, "provided, in `unit`"),
    V(TEXT, unit, "SI unit of the values, as the end of a key"),
    V(TEXT, direction, "inward or outward, where it matters"),
    V(TEXT, basis, "the weakest basis of the numbers behind it"),
    V(TEXT, message, "why"),
};
const struct gw_record gw_verdict_out_record =
    RECORD(verdict_out, "verdict", VERDICT, "one check of one candidate at one place");

#define S(type_, member_, ...) type_(summary_out, member_, __VA_ARGS__)
static const struct gw_field SUMMARY[] = {
    S(TEXT, candidate, "name of the system"),
    S(TEXT, verdict, "fail if any check fails; else not shown if any is; else pass"),
    S(WHOLE, pass, "how many"),
    S(WHOLE, fail, "how many"),
    S(WHOLE, not_shown, "how many"),
    S(WHOLE, not_required, "how many"),
    S(TEXT, governing_check, "the check that governs"),
    S(TEXT, governing_element, "where it governs"),
    S(NUM, utilisation, GW_RATIO, "of the governing check"),
};
static const struct gw_record SUMMARY_RECORD = RECORD(summary_out, "summary", SUMMARY, "one candidate");

static const struct gw_field INPUT[] = {TEXT(input_out, file, "as it was named"),
                                        TEXT(input_out, sha256, "of its bytes")};
static const struct gw_record INPUT_RECORD = RECORD(input_out, "input", INPUT, "a file that was read");
static const struct gw_field REMARK[] = {TEXT(text_out, where, "what it concerns"),
                                         TEXT(text_out, text, "what is said")};
static const struct gw_record REMARK_RECORD = RECORD(text_out, "remark", REMARK, "a remark");

#define R(type_, member_, ...) type_(reaction_out, member_, __VA_ARGS__)
static const struct gw_field REACTION[] = {
    R(TEXT, element, "name of the group of anchors"),
    R(TEXT, wall, "its wall"),
    R(TEXT, mark, "jamb or interior, or mark of an opening"),
    R(WHOLE, count, "how many"),
    R(WHOLE, zone, "4 or 5"),
    R(NUM, inward_asd, GW_FORCE, "of each, allowable-stress level"),
    R(NUM, outward_asd, GW_FORCE, "of each, magnitude"),
    R(NUM, inward, GW_FORCE, "of each, strength level"),
    R(NUM, outward, GW_FORCE, "of each, magnitude"),
    R(NUM, area, GW_AREA, "of the wall that hangs on it, for the dead load"),
};
static const struct gw_record REACTION_RECORD = RECORD(reaction_out, "reaction", REACTION, "a group of anchors");
#define M(type_, member_, ...) type_(member_out, member_, __VA_ARGS__)
static const struct gw_field MEMBER[] = {
    M(TEXT, element, "name of the group"),
    M(TEXT, kind, "mullion or transom"),
    M(TEXT, wall, "its wall"),
    M(TEXT, mark, "its place in the frame"),
    M(WHOLE, count, "how many"),
    M(WHOLE, zone, "4 or 5"),
    M(NUM, moment_asd, GW_MOMENT, "largest under wind, allowable-stress level"),
    M(NUM, shear_asd, GW_FORCE, "the same"),
    M(NUM, deflection_limit, GW_LENGTH, "under wind"),
    M(NUM, inertia_needed, GW_INERTIA, "of aluminum, for that limit"),
};
static const struct gw_record MEMBER_RECORD = RECORD(member_out, "member", MEMBER, "a group of mullions or transoms");

#define T(type_, member_, ...) type_(step_out, member_, __VA_ARGS__)
static const struct gw_field STEP[] = {
    T(TEXT, test, "what is done"),
    T(TEXT, method, "standard"),
    T(YES_NO, again, "a repetition"),
    T(NUM, pressure, GW_PRESSURE, "outward negative"),
    T(NUM, leakage, GW_LEAKAGE, "at most"),
    T(NUM, racking, GW_LENGTH, "displacement"),
    T(NUM, limit, GW_LENGTH, "deflection at design pressure, permanent set after proof, at most"),
};
static const struct gw_record STEP_RECORD = RECORD(step_out, "step", STEP, "a test of a laboratory mock-up");

#define G(type_, member_, ...) type_(reach_out, member_, __VA_ARGS__)
static const struct gw_field REACH[] = {
    G(TEXT, candidate, "name of the system"),
    G(WHOLE, zone, "4 or 5: at the pressures of its worst element"),
    G(NUM, mullion_span, GW_LENGTH, "greatest simple span by calculation"),
    G(NUM, at_width, GW_LENGTH, "width that it carries"),
    G(NUM, mullion_width, GW_LENGTH, "greatest width carried, by calculation"),
    G(NUM, at_span, GW_LENGTH, "over that span"),
    G(NUM, screw_spacing, GW_LENGTH, "greatest spacing of pressure-plate screws, by calculation"),
    G(NUM, screw_width, GW_LENGTH, "width that they carry"),
};
static const struct gw_record REACH_RECORD = RECORD(reach_out, "reach", REACH, "how far a candidate goes");

static const struct gw_field RESULTS[] = {
    WHOLE(results_out, galeward, "version of the format"),
    TEXT(results_out, version, "version of the program"),
    TEXT(results_out, project, "project name"),
    LIST(inputs, &INPUT_RECORD, "files that were read"),
    LIST(assumptions, &REMARK_RECORD, "defaults taken, corrections, conventions"),
    LIST(warnings, &REMARK_RECORD, "implausible values"),
    LIST(not_checked, &REMARK_RECORD, "what is not checked here, and whom to ask"),
    TEXT(results_out, caution, "what the results are good for"),
    LIST(elements, &gw_element_out_record, "groups of like elements"),
    LIST(demands, &DEMAND_RECORD, "demands other than pressures on elements"),
    LIST(reactions, &REACTION_RECORD, "of the anchors under wind"),
    LIST(members, &MEMBER_RECORD, "what wind asks of mullions and transoms"),
    LIST(mock_up, &STEP_RECORD, "tests of a laboratory mock-up, in their order"),
    LIST(verdicts, &gw_verdict_out_record, "every check of every candidate"),
    LIST(summaries, &SUMMARY_RECORD, "every candidate"),
    LIST(reaches, &REACH_RECORD, "how far each candidate goes"),
};
enum { CHECK_ONLY = 3 /* the last lists */ };
const struct gw_record gw_demand_results_record = {.name = "results",
                                                   .size = sizeof(struct results_out),
                                                   .fields = RESULTS,
                                                   .n = COUNT(RESULTS) - CHECK_ONLY,
                                                   .help = "what 'demand' writes"};
const struct gw_record gw_results_record =
    RECORD(results_out, "results", RESULTS, "what 'check' writes; 'demand' leaves out verdicts and summaries");
