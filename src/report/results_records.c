/* The keys of a result file: what each is, in which unit. */
#include "report/results.h"

#include "base/fields.h"

#define LIST(member_, record_, help_) OUT_PARTS(results_out, #member_, member_, record_, help_)

#define E(type_, member_, ...) type_(element_out, #member_, member_, __VA_ARGS__)
static const struct gw_field ELEMENT[] = {
    E(OUT_TEXT, id, "name of the group, for 'explain'"),
    E(OUT_TEXT, wall, "wall, or elevation of the schedule"),
    E(OUT_TEXT, building, "its building"),
    E(OUT_TEXT, kind, "lite, mullion, transom, screw or anchor"),
    E(OUT_TEXT, mark, "lite type, mark of an opening, or place in the frame"),
    E(OUT_TEXT, columns, "columns or grid lines of the wall, from the left"),
    E(OUT_TEXT, component, "fixed, vent, door or spandrel"),
    E(OUT_TEXT, lite, "lite type"),
    E(OUT_WHOLE, count, "how many"),
    E(OUT, width, GW_LENGTH, "width carried"),
    E(OUT, height, GW_LENGTH, "height carried"),
    E(OUT, bottom, GW_LENGTH, "lowest edge above ground"),
    E(OUT, top, GW_LENGTH, "highest edge above ground"),
    E(OUT, span, GW_LENGTH, "span, framing"),
    E(OUT_WHOLE, zone, "4 or 5"),
    E(OUT_YES_NO, parapet, "stands above the roof line"),
    E(OUT_YES_NO, place_unknown, "taken at the worst place"),
    E(OUT, corner_distance, GW_LENGTH, "nearest edge to the nearest outside corner"),
    E(OUT, effective_area, GW_AREA, "effective wind area"),
    E(OUT, inward, GW_PRESSURE, "design pressure, strength level, positive"),
    E(OUT, outward, GW_PRESSURE, "design pressure, strength level, negative"),
    E(OUT, inward_asd, GW_PRESSURE, "allowable-stress level, positive"),
    E(OUT, outward_asd, GW_PRESSURE, "allowable-stress level, negative"),
    E(OUT_TEXT, governs, "where the governing pressure comes from"),
    E(OUT_TEXT, basis, "the weakest basis of the numbers behind it"),
};
const struct gw_record gw_element_out_record =
    RECORD("element", element_out, ELEMENT, .help = "a group of like elements");

#define D(type_, member_, ...) type_(demand_out, #member_, member_, __VA_ARGS__)
static const struct gw_field DEMAND[] = {
    D(OUT_TEXT, check, "id of the check"),
    D(OUT_TEXT, title, "what it is about"),
    D(OUT_TEXT, name, "name of a free-form rating"),
    D(OUT_TEXT, element, "element, wall, or project"),
    D(OUT_TEXT, status, "required, not required, or not shown"),
    D(OUT, value, GW_RATIO, "demand in `unit`; structural: inward, allowable-stress level"),
    D(OUT, value_outward, GW_RATIO, "structural: outward, magnitude"),
    D(OUT, at, GW_PRESSURE, "air: at this pressure difference"),
    D(OUT_TEXT, unit, "SI unit of the values, as the end of a key"),
    D(OUT_YES_NO, at_most, "the rating must not be above the value"),
    D(OUT_TEXT, clause, "where it is asked for"),
    D(OUT_TEXT, basis, "the weakest basis of the numbers behind it"),
    D(OUT_TEXT, message, "how it came about"),
};
static const struct gw_record DEMAND_RECORD =
    RECORD("demand", demand_out, DEMAND, .help = "what one check asks at one place");

#define V(type_, member_, ...) type_(verdict_out, #member_, member_, __VA_ARGS__)
static const struct gw_field VERDICT[] = {
    V(OUT_TEXT, candidate, "name of the system"),
    V(OUT_TEXT, check, "id of the check"),
    V(OUT_TEXT, name, "name of a free-form rating"),
    V(OUT_TEXT, verdict, "pass, fail, not shown or not required"),
    V(OUT, utilisation, GW_RATIO, "required over provided"),
    V(OUT_TEXT, evidence, "test, calculation, statement or none"),
    V(OUT_TEXT, element, "element, wall, or project"),
    V(OUT, demand, GW_RATIO, "required, in `unit`"),
    V(OUT, capacity, GW_RATIO, "provided, in `unit`"),
    V(OUT_TEXT, unit, "SI unit of the values, as the end of a key"),
    V(OUT_TEXT, direction, "inward or outward, where it matters"),
    V(OUT_TEXT, basis, "the weakest basis of the numbers behind it"),
    V(OUT_TEXT, message, "why"),
};
const struct gw_record gw_verdict_out_record =
    RECORD("verdict", verdict_out, VERDICT, .help = "one check of one candidate at one place");

#define S(type_, member_, ...) type_(summary_out, #member_, member_, __VA_ARGS__)
static const struct gw_field SUMMARY[] = {
    S(OUT_TEXT, candidate, "name of the system"),
    S(OUT_TEXT, verdict, "fail if any check fails; else not shown if any is; else pass"),
    S(OUT_WHOLE, pass, "how many"),
    S(OUT_WHOLE, fail, "how many"),
    S(OUT_WHOLE, not_shown, "how many"),
    S(OUT_WHOLE, not_required, "how many"),
    S(OUT_TEXT, governing_check, "the check that governs"),
    S(OUT_TEXT, governing_element, "where it governs"),
    S(OUT, utilisation, GW_RATIO, "of the governing check"),
};
static const struct gw_record SUMMARY_RECORD = RECORD("summary", summary_out, SUMMARY, .help = "one candidate");

static const struct gw_field INPUT[] = {OUT_TEXT(input_out, "file", file, "as it was named"),
                                        OUT_TEXT(input_out, "sha256", sha256, "of its bytes")};
static const struct gw_record INPUT_RECORD = RECORD("input", input_out, INPUT, .help = "a file that was read");
static const struct gw_field REMARK[] = {OUT_TEXT(text_out, "where", where, "what it concerns"),
                                         OUT_TEXT(text_out, "text", text, "what is said")};
static const struct gw_record REMARK_RECORD = RECORD("remark", text_out, REMARK, .help = "a remark");

#define R(type_, member_, ...) type_(reaction_out, #member_, member_, __VA_ARGS__)
static const struct gw_field REACTION[] = {
    R(OUT_TEXT, element, "name of the group of anchors"),
    R(OUT_TEXT, wall, "its wall"),
    R(OUT_TEXT, mark, "jamb or interior, or mark of an opening"),
    R(OUT_WHOLE, count, "how many"),
    R(OUT_WHOLE, zone, "4 or 5"),
    R(OUT, inward_asd, GW_FORCE, "of each, allowable-stress level"),
    R(OUT, outward_asd, GW_FORCE, "of each, magnitude"),
    R(OUT, inward, GW_FORCE, "of each, strength level"),
    R(OUT, outward, GW_FORCE, "of each, magnitude"),
    R(OUT, area, GW_AREA, "of the wall that hangs on it, for the dead load"),
};
static const struct gw_record REACTION_RECORD =
    RECORD("reaction", reaction_out, REACTION, .help = "a group of anchors");
#define M(type_, member_, ...) type_(member_out, #member_, member_, __VA_ARGS__)
static const struct gw_field MEMBER[] = {
    M(OUT_TEXT, element, "name of the group"),
    M(OUT_TEXT, kind, "mullion or transom"),
    M(OUT_TEXT, wall, "its wall"),
    M(OUT_TEXT, mark, "its place in the frame"),
    M(OUT_WHOLE, count, "how many"),
    M(OUT_WHOLE, zone, "4 or 5"),
    M(OUT, moment_asd, GW_MOMENT, "largest under wind, allowable-stress level"),
    M(OUT, shear_asd, GW_FORCE, "the same"),
    M(OUT, deflection_limit, GW_LENGTH, "under wind"),
    M(OUT, inertia_needed, GW_INERTIA, "of aluminum, for that limit"),
};
static const struct gw_record MEMBER_RECORD =
    RECORD("member", member_out, MEMBER, .help = "a group of mullions or transoms");

#define T(type_, member_, ...) type_(step_out, #member_, member_, __VA_ARGS__)
static const struct gw_field STEP[] = {
    T(OUT_TEXT, test, "what is done"),
    T(OUT_TEXT, method, "standard"),
    T(OUT_YES_NO, again, "a repetition"),
    T(OUT, pressure, GW_PRESSURE, "outward negative"),
    T(OUT, leakage, GW_LEAKAGE, "at most"),
    T(OUT, racking, GW_LENGTH, "displacement"),
    T(OUT, limit, GW_LENGTH, "deflection at design pressure, permanent set after proof, at most"),
};
static const struct gw_record STEP_RECORD = RECORD("step", step_out, STEP, .help = "a test of a laboratory mock-up");

#define G(type_, member_, ...) type_(reach_out, #member_, member_, __VA_ARGS__)
static const struct gw_field REACH[] = {
    G(OUT_TEXT, candidate, "name of the system"),
    G(OUT_WHOLE, zone, "4 or 5: at the pressures of its worst element"),
    G(OUT, mullion_span, GW_LENGTH, "greatest simple span by calculation"),
    G(OUT, at_width, GW_LENGTH, "width that it carries"),
    G(OUT, mullion_width, GW_LENGTH, "greatest width carried, by calculation"),
    G(OUT, at_span, GW_LENGTH, "over that span"),
    G(OUT, screw_spacing, GW_LENGTH, "greatest spacing of pressure-plate screws, by calculation"),
    G(OUT, screw_width, GW_LENGTH, "width that they carry"),
};
static const struct gw_record REACH_RECORD = RECORD("reach", reach_out, REACH, .help = "how far a candidate goes");

static const struct gw_field RESULTS[] = {
    OUT_WHOLE(results_out, "galeward", galeward, "version of the format"),
    OUT_TEXT(results_out, "version", version, "version of the program"),
    OUT_TEXT(results_out, "project", project, "project name"),
    LIST(inputs, &INPUT_RECORD, "files that were read"),
    LIST(assumptions, &REMARK_RECORD, "defaults taken, corrections, conventions"),
    LIST(warnings, &REMARK_RECORD, "implausible values"),
    LIST(not_checked, &REMARK_RECORD, "what is not checked here, and whom to ask"),
    OUT_TEXT(results_out, "caution", caution, "what the results are good for"),
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
    RECORD("results", results_out, RESULTS, .help = "what 'check' writes; 'demand' leaves out verdicts and summaries");
