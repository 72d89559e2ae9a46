/* What 'check --sensitivity' writes: a line a moved number, candidate and check. */
#include "galeward/sensitivity.h"

#include "base/fields.h"
#include "report/page.h"
#include "report/results.h"
#include "report/sheets.h"

static const char *verdict_word(int verdict) { return gw_verdict_name((enum gw_verdict)verdict); }
static const char *sign_of(double share) { return share < 1 ? "-10 %" : "+10 %"; }

#define MOVED(struct_)                                                                                                 \
    FIELD(gw_row, "table", table, GW_T_TEXT, .help = "of the number that was moved", THROUGH(struct_, row)),           \
        FIELD(gw_row, "row", id, GW_T_TEXT, .help = "its row", THROUGH(struct_, row)),                                 \
        F(struct_, column, GW_T_TEXT, .help = "its column"),                                                           \
        NUM(struct_, share, GW_RATIO, .help = "moved to so much of its value")
static const struct gw_field FLIP[] = {
    MOVED(gw_flip),
    F(gw_flip, candidate, GW_T_TEXT, .help = "name of the system"),
    F(gw_flip, check, GW_T_TEXT, .help = "check, or name of a free-form rating"),
    FIELD(gw_flip, "element", where, GW_T_TEXT, .help = "first place: element, wall, lite type or project"),
    F(gw_flip, count, GW_T_COUNT, .help = "places"),
    FIELD(gw_flip, "verdict_was", was, GW_T_WORD, .word = verdict_word, .help = "with the table as it is"),
    FIELD(gw_flip, "verdict", is, GW_T_WORD, .word = verdict_word, .help = "with the number moved"),
    FIELD(gw_flip, "utilisation_was", was_utilization, GW_T_NUMBER, .dim = GW_RATIO, .help = "of the first place"),
    FIELD(gw_flip, "utilisation", utilization, GW_T_NUMBER, .dim = GW_RATIO, .help = "the same, with the number moved"),
};
const struct gw_record gw_flip_record = RECORD("flip", gw_flip, FLIP, .help = "verdicts that a number decides");
static const struct gw_field UNMOVED[] = {
    MOVED(gw_unmoved), F(gw_unmoved, message, GW_T_TEXT, .help = "why nothing could be computed with it")};
static const struct gw_record UNMOVED_RECORD =
    RECORD("unmoved", gw_unmoved, UNMOVED, .help = "a move that was not computed");
static const struct gw_field SENSITIVITY[] = {
    F(gw_sensitivity, project, GW_T_TEXT, .help = "project name"),
    F(gw_sensitivity, rows, GW_T_COUNT, .help = "recalled rows behind a verdict whose numbers were moved"),
    F(gw_sensitivity, values, GW_T_COUNT, .help = "numbers in them"),
    F(gw_sensitivity, words, GW_T_COUNT, .help = "recalled rows behind a verdict without a number to move"),
    F(gw_sensitivity, unmatched, GW_T_COUNT, .help = "findings that could not be compared"),
    F(gw_sensitivity, flips, GW_T_RECORD, .flags = GW_MANY, .record = &gw_flip_record, .help = "what flips"),
    F(gw_sensitivity, unmoved, GW_T_RECORD, .flags = GW_MANY, .record = &UNMOVED_RECORD, .help = "not computed"),
};
static const struct gw_record SENSITIVITY_RECORD =
    RECORD("sensitivity", gw_sensitivity, SENSITIVITY, .help = "what 'check --sensitivity' writes");

/* The page --------------------------------------------------------------------------------------------------------- */

static void verdict_cell(struct gw_report *report, enum gw_verdict verdict, double utilization)
{
    struct gw_text text;
    gw_text_init(&text, report->arena);
    gw_text_addf(&text, "%s%s", gw_verdict_name(verdict), gw_given(utilization) ? " " : "");
    gw_add_utilization(&text, utilization);
    gw_report_toned(report, gw_verdict_tone((int)verdict), text.at);
}

static void flip_row(struct gw_report *report, const struct gw_flip *f)
{
    gw_report_cell(report, gw_format(report->arena, "%s/%s %s", f->row->table, f->row->id, f->column));
    gw_report_cell(report, sign_of(f->share));
    gw_report_cell(report, f->candidate);
    gw_report_cell(report, f->check);
    gw_report_cell(report, f->where);
    gw_report_cell(report, gw_format(report->arena, "%ld", f->count));
    verdict_cell(report, f->was, f->was_utilization);
    verdict_cell(report, f->is, f->utilization);
}

static void flips(struct gw_report *report, const struct gw_sensitivity *s)
{
    static const struct gw_report_column columns[] = {
        {.title = "Recalled value"}, {.title = "Moved", .right = true},  {.title = "Candidate"}, {.title = "Check"},
        {.title = "First"},          {.title = "Places", .right = true}, {.title = "Was"},       {.title = "Is"}};
    if (!s->flips.n) {
        gw_report_line(report, "Nothing flips.");
        return;
    }
    gw_report_table(report, "Verdicts that flip, with the use of the first place.", columns, COUNT(columns));
    for (size_t i = 0; i < s->flips.n; i++) flip_row(report, &s->flips.items[i]);
}

static void sensitivity_page(struct gw_report *report, const struct gw_result *result)
{
    const struct gw_sensitivity *s = result->value;
    gw_report_heading(report, 1, gw_format(report->arena, "Sensitivity: %s", s->project));
    gw_report_line(report, gw_format(report->arena,
                                     "%ld recalled values of %ld rows stand behind verdicts. Each was moved by 10 %% "
                                     "either way, alone, and everything computed anew.",
                                     s->values, s->rows));
    flips(report, s);
    for (size_t i = 0; i < s->unmoved.n; i++) {
        const struct gw_unmoved *u = &s->unmoved.items[i];
        gw_report_item(report, gw_format(report->arena, "not computed: %s/%s %s %s: %s", u->row->table, u->row->id,
                                         u->column, sign_of(u->share), u->message));
    }
    if (s->words)
        gw_report_item(report,
                       gw_format(report->arena, "Recalled rows of words, which were not moved: %ld.", s->words));
    if (s->unmatched)
        gw_report_item(report, gw_format(report->arena, "Findings that could not be compared: %ld.", s->unmatched));
}

struct gw_result gw_result_sensitivity(const struct gw_sensitivity *sensitivity)
{
    return (struct gw_result){.shown = sensitivity->shown,
                              .record = &SENSITIVITY_RECORD,
                              .value = sensitivity,
                              .rows = "flips",
                              .sheet = gw_sheet_of_flips,
                              .page = sensitivity_page};
}
