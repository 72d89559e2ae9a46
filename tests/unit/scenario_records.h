/* What stands in a file of scenarios (the format: DEVELOPERS.md), as records that the library reads. */
#ifndef GALEWARD_TESTS_SCENARIO_RECORDS_H
#define GALEWARD_TESTS_SCENARIO_RECORDS_H

#include "base/fields.h"
#include "galeward/inspection.h"
#include "support.h"

/* A file that a project names; the scenario's key is its name. */
struct named_text {
    const char *name, *text;
};
/* What a base and a scenario have in common. `system` is short for the one in systems that is called system.yaml. */
struct parts {
    const char *project, *system;
    GW_LIST(struct named_text) systems;
    GW_LIST(struct named_text) files;
    GW_LIST(const char *) settings;
};
struct governing {
    const char *check, *where;
};
/* Findings that are picked, by what is given of the first block, and what they say. */
struct expectation {
    const char *check, *where, *name, *candidate, *wall, *mark, *lite;
    int kind, zone, component, count;
    double bottom;
    enum gw_bool corner, parapet;

    int verdict, evidence, direction, basis, candidate_verdict;
    double tolerance;
    const char *utilization, *required, *provided, *link;
    const struct governing *governing;
    GW_LIST(const char *) asks;
    GW_LIST(const char *) says;
    GW_LIST(const char *) says_not;
    GW_LIST(const char *) demand_says;
    GW_LIST(const char *) remark_says;

    /* of readings: the line of the sheet; of a share: an item alone */
    int reading, places, outside;
    const char *item, *mechanism, *limit_basis, *remaining, *remaining_worst, *at_least, *at_most, *least, *most;
    enum gw_bool enough;
    GW_LIST(const char *) action_says;
    GW_LIST(const char *) next;

    /* of a sheet to be filled in: an item, on the wall that is named or any; `where`, `at_least`, `at_most` where most
     * is carried, `says` why its limit does not hold, `others` its other limits */
    const char *sheet;
    GW_LIST(const char *) others;

    /* of comments of a review, picked by item and subject */
    const char *comment, *subject, *consequence, *disposition, *status;
    int number;
    const struct gw_node *node;
};
struct refusal {
    const char *code, *says;
};
struct scenario {
    const char *name, *source, *base;
    int basis;
    struct parts parts;
    const char *set;      /* a requirement set to judge by */
    const char *readings; /* a sheet of readings */
    /* to be reviewed; `offer`: keys over those of system.yaml, as offer.yaml; `previous`: an earlier submittal */
    const char *submittal, *offer, *previous, *review_verdict, *review_disposition, *review_because;
    GW_LIST(const char *) complete; /* "item, subject: what", of what raises no comment; parts */
    GW_LIST(struct expectation) expect;
    GW_LIST(const char *) warnings;
    GW_LIST(const char *) warns_not;
    GW_LIST(const char *) assumptions;
    GW_LIST(const char *) asked;
    GW_LIST(struct refusal) errors;
    const struct gw_node *node;
};
struct scenario_file {
    const char *source, *base;
    int basis;
    GW_LIST(struct scenario) scenarios;
};

/* Choices count from 1: 0 is not given. */
static const struct gw_choice BASES[] = {{"published", 1, ""}, {"second_hand", 2, ""}, {"memory", 3, ""},
                                         {"derived", 4, ""},   {"practice", 5, ""},    {NULL, 0, NULL}};
static const struct gw_choice ROW_BASES[] = {{"none", 1 + GW_BASIS_NONE, ""},   {"published", 1 + GW_PUBLISHED, ""},
                                             {"derived", 1 + GW_DERIVED, ""},   {"memory", 1 + GW_MEMORY, ""},
                                             {"practice", 1 + GW_PRACTICE, ""}, {NULL, 0, NULL}};
enum { READ = 100 }; /* verdicts of readings */
static const struct gw_choice VERDICTS[] = {{"not shown", 1 + GW_NOT_SHOWN, ""},
                                            {"pass", 1 + GW_PASS, ""},
                                            {"fail", 1 + GW_FAIL, ""},
                                            {"not required", 1 + GW_NOT_REQUIRED, ""},
                                            {"unknown", READ + GW_ITEM_UNKNOWN, ""},
                                            {"within", READ + GW_ITEM_WITHIN, ""},
                                            {"outside, holds", READ + GW_ITEM_OUTSIDE_HOLDS, ""},
                                            {"not met", READ + GW_ITEM_NOT_MET, ""},
                                            {NULL, 0, NULL}};
static const struct gw_choice EVIDENCE[] = {{"none", 1 + GW_EVIDENCE_NONE, ""},
                                            {"test", 1 + GW_BY_TEST, ""},
                                            {"calculation", 1 + GW_BY_CALCULATION, ""},
                                            {"statement", 1 + GW_BY_STATEMENT, ""},
                                            {NULL, 0, NULL}};
static const struct gw_choice DIRECTIONS[] = {
    {"none", 1 + GW_NO_DIRECTION, ""}, {"inward", 1 + GW_INWARD, ""}, {"outward", 1 + GW_OUTWARD, ""}, {NULL, 0, NULL}};
static const struct gw_choice KINDS[] = {{"lite", 1 + GW_LITE, ""},       {"mullion", 1 + GW_MULLION, ""},
                                         {"transom", 1 + GW_TRANSOM, ""}, {"screw", 1 + GW_SCREW, ""},
                                         {"anchor", 1 + GW_ANCHOR, ""},   {NULL, 0, NULL}};

#define TEXT_OF(struct_, member_) F(struct_, member_, GW_T_TEXT, .help = #member_)
#define TEXTS_OF(struct_, member_) F(struct_, member_, GW_T_TEXT, .flags = GW_MANY, .help = #member_)
#define WORD_OF(struct_, member_, choices_) PICK(struct_, member_, choices_, .help = #member_)
#define NAMED_TEXTS(struct_, key_, member_)                                                                            \
    FIELD(struct_, key_, member_, GW_T_RECORD, .record = &named_text_record, .flags = GW_MANY | GW_NAMED, .help = key_)
#define PARTS(struct_, in_)                                                                                            \
    FIELD(struct_, "project", in_ project, GW_T_TEXT, .help = "project"),                                              \
        FIELD(struct_, "system", in_ system, GW_T_TEXT, .help = "system"),                                             \
        FIELD(struct_, "settings", in_ settings, GW_T_TEXT, .flags = GW_MANY, .help = "settings"),                     \
        NAMED_TEXTS(struct_, "systems", in_ systems), NAMED_TEXTS(struct_, "files", in_ files)

static const struct gw_field NAMED_TEXT_FIELDS[] = {TEXT_OF(named_text, name), TEXT_OF(named_text, text)};
static const struct gw_record named_text_record =
    RECORD("a file", named_text, NAMED_TEXT_FIELDS, .scalar_key = "text", .help = "");

static const struct gw_field PARTS_FIELDS[] = {PARTS(parts, )};
static const struct gw_record base_record = RECORD("a base", parts, PARTS_FIELDS, .help = "");

static const struct gw_field GOVERNING_FIELDS[] = {
    F(governing, check, GW_T_TEXT, .flags = GW_REQUIRED, .help = "check"), TEXT_OF(governing, where)};
static const struct gw_record governing_record = RECORD("governing", governing, GOVERNING_FIELDS, .help = "");

static const struct gw_field EXPECTATION_FIELDS[] = {
    TEXT_OF(expectation, check),
    TEXT_OF(expectation, where),
    TEXT_OF(expectation, name),
    TEXT_OF(expectation, candidate),
    TEXT_OF(expectation, wall),
    TEXT_OF(expectation, mark),
    TEXT_OF(expectation, lite),
    WORD_OF(expectation, kind, KINDS),
    F(expectation, zone, GW_T_INTEGER, .help = "zone"),
    PICK(expectation, component, gw_component_choices, .help = "component"),
    F(expectation, count, GW_T_INTEGER, .help = "count"),
    NUM(expectation, bottom, GW_LENGTH, .help = "bottom"),
    F(expectation, corner, GW_T_BOOL, .help = "corner"),
    F(expectation, parapet, GW_T_BOOL, .help = "parapet"),
    WORD_OF(expectation, verdict, VERDICTS),
    WORD_OF(expectation, evidence, EVIDENCE),
    WORD_OF(expectation, direction, DIRECTIONS),
    WORD_OF(expectation, basis, ROW_BASES),
    WORD_OF(expectation, candidate_verdict, VERDICTS),
    NUM(expectation, tolerance, GW_RATIO, .fallback = "1e-4", .help = "tolerance"),
    TEXT_OF(expectation, utilization),
    TEXT_OF(expectation, required),
    TEXT_OF(expectation, provided),
    TEXT_OF(expectation, link),
    TEXT_OF(expectation, comment),
    TEXT_OF(expectation, subject),
    TEXT_OF(expectation, consequence),
    TEXT_OF(expectation, disposition),
    TEXT_OF(expectation, status),
    F(expectation, number, GW_T_INTEGER, .help = "number"),
    F(expectation, governing, GW_T_RECORD, .record = &governing_record, .help = "governing"),
    TEXTS_OF(expectation, asks),
    TEXTS_OF(expectation, says),
    TEXTS_OF(expectation, says_not),
    TEXTS_OF(expectation, demand_says),
    TEXTS_OF(expectation, remark_says),
    F(expectation, reading, GW_T_INTEGER, .help = "reading"),
    F(expectation, places, GW_T_INTEGER, .help = "places"),
    F(expectation, outside, GW_T_INTEGER, .help = "outside"),
    TEXT_OF(expectation, item),
    TEXT_OF(expectation, mechanism),
    TEXT_OF(expectation, limit_basis),
    TEXT_OF(expectation, remaining),
    TEXT_OF(expectation, remaining_worst),
    TEXT_OF(expectation, at_least),
    TEXT_OF(expectation, at_most),
    TEXT_OF(expectation, least),
    TEXT_OF(expectation, most),
    F(expectation, enough, GW_T_BOOL, .help = "enough"),
    TEXTS_OF(expectation, action_says),
    TEXTS_OF(expectation, next),
    TEXT_OF(expectation, sheet),
    TEXTS_OF(expectation, others),
    PLACE(expectation),
};
static const struct gw_record expectation_record =
    RECORD("an expectation", expectation, EXPECTATION_FIELDS, .help = "");

static const struct gw_field REFUSAL_FIELDS[] = {F(refusal, code, GW_T_TEXT, .flags = GW_REQUIRED, .help = "code"),
                                                 F(refusal, says, GW_T_TEXT, .flags = GW_REQUIRED, .help = "says")};
static const struct gw_record refusal_record = RECORD("an error", refusal, REFUSAL_FIELDS, .help = "");

static const struct gw_field SCENARIO_FIELDS[] = {
    F(scenario, name, GW_T_TEXT, .flags = GW_REQUIRED, .help = "name"),
    TEXT_OF(scenario, source),
    WORD_OF(scenario, basis, BASES),
    TEXT_OF(scenario, base),
    PARTS(scenario, parts.),
    F(scenario, expect, GW_T_RECORD, .record = &expectation_record, .flags = GW_MANY, .help = "expect"),
    TEXT_OF(scenario, set),
    TEXT_OF(scenario, readings),
    TEXT_OF(scenario, submittal),
    TEXT_OF(scenario, offer),
    TEXT_OF(scenario, previous),
    TEXT_OF(scenario, review_verdict),
    TEXT_OF(scenario, review_disposition),
    TEXT_OF(scenario, review_because),
    TEXTS_OF(scenario, complete),
    TEXTS_OF(scenario, warnings),
    TEXTS_OF(scenario, warns_not),
    TEXTS_OF(scenario, assumptions),
    TEXTS_OF(scenario, asked),
    F(scenario, errors, GW_T_RECORD, .record = &refusal_record, .flags = GW_MANY, .help = "errors"),
    PLACE(scenario),
};
static const struct gw_record scenario_record = RECORD("a scenario", scenario, SCENARIO_FIELDS, .help = "");

static const struct gw_field FILE_FIELDS[] = {
    TEXT_OF(scenario_file, source),
    WORD_OF(scenario_file, basis, BASES),
    TEXT_OF(scenario_file, base),
    F(scenario_file, scenarios, GW_T_RECORD, .record = &scenario_record, .flags = GW_MANY | GW_REQUIRED,
      .help = "scenarios"),
};
static const struct gw_record scenario_file_record =
    RECORD("a file of scenarios", scenario_file, FILE_FIELDS, .help = "");

#endif
