/* The matrix of 'check --vary': its columns are the values that vary and the candidates. */
#include "galeward/variations.h"

#include "base/fields.h"
#include "report/page.h"
#include "report/results.h"

static const char *verdict_word(int verdict) { return gw_verdict_name((enum gw_verdict)verdict); }

static const struct gw_field SUMMARY[] = {
    F(gw_varied_summary, candidate, GW_T_TEXT, .help = "name of the system"),
    F(gw_varied_summary, verdict, GW_T_WORD, .word = verdict_word, .help = "of all its checks"),
    FIELD(gw_varied_summary, "utilisation", utilization, GW_T_NUMBER, .help = "of the governing check"),
};
static const struct gw_record SUMMARY_RECORD =
    RECORD("summary", gw_varied_summary, SUMMARY, .help = "one candidate in one combination");

static const struct gw_field VARIATION[] = {
    FIELD(gw_variation, "settings", by_path, GW_T_DESCRIBED, .help = "the values, by their paths in the project file"),
    NUM(gw_variation, inward, GW_PRESSURE, .help = "worst of all elements, strength level"),
    NUM(gw_variation, outward, GW_PRESSURE, .help = "the same, negative"),
    NUM(gw_variation, inward_asd, GW_PRESSURE, .help = "allowable-stress level"),
    NUM(gw_variation, outward_asd, GW_PRESSURE, .help = "the same, negative"),
    F(gw_variation, summaries, GW_T_RECORD, .flags = GW_MANY, .record = &SUMMARY_RECORD, .help = "every candidate"),
    F(gw_variation, message, GW_T_TEXT, .help = "why it was not computed"),
};
static const struct gw_record VARIATION_RECORD =
    RECORD("variation", gw_variation, VARIATION, .help = "one combination");

static const struct gw_field VARIATIONS[] = {
    F(gw_variations, project, GW_T_TEXT, .help = "project name"),
    F(gw_variations, variations, GW_T_RECORD, .flags = GW_MANY, .record = &VARIATION_RECORD,
      .help = "every combination"),
};
static const struct gw_record VARIATIONS_RECORD =
    RECORD("variations", gw_variations, VARIATIONS, .help = "what 'check --vary' writes");

/* The page --------------------------------------------------------------------------------------------------------- */

static size_t n_candidates(const struct gw_variations *v)
{
    return v->variations.n ? v->variations.items->summaries.n : 0;
}

static const char *const PRESSURES[] = {"inward", "outward", "ASD in", "ASD out"};

static void open_matrix(struct gw_report *report, const struct gw_variations *v)
{
    size_t n = 0, candidates = n_candidates(v);
    const char *unit = gw_dim_info(GW_PRESSURE)->shown[v->shown];
    struct gw_report_column *columns =
        gw_alloc(report->arena, v->variables.n + candidates + COUNT(PRESSURES), sizeof *columns);
    for (size_t i = 0; i < v->variables.n; i++) columns[n++].title = v->variables.items[i].key;
    for (size_t i = 0; i < COUNT(PRESSURES); i++)
        columns[n++] = (struct gw_report_column){gw_format(report->arena, "%s %s", PRESSURES[i], unit), true};
    for (size_t i = 0; i < candidates; i++) columns[n++].title = v->variations.items->summaries.items[i].candidate;
    gw_report_table(report, "", columns, n);
}

static void pressure_cell(struct gw_report *report, double pa, enum gw_units shown)
{
    struct gw_text text;
    gw_text_init(&text, report->arena);
    gw_add_bare(&text, GW_PRESSURE, shown, pa, UP);
    gw_report_cell(report, text.length ? text.at : "-");
}

static void verdict_cell(struct gw_report *report, const struct gw_varied_summary *s)
{
    struct gw_text text;
    gw_text_init(&text, report->arena);
    gw_text_add(&text, gw_verdict_name(s->verdict));
    if (isfinite(s->utilization) && s->verdict != GW_NOT_SHOWN) {
        gw_text_add(&text, " ");
        gw_add_utilization(&text, s->utilization);
    }
    gw_report_toned(report, gw_verdict_tone((int)s->verdict), text.at);
}

static void matrix_row(struct gw_report *report, const struct gw_variations *v, const struct gw_variation *row)
{
    const double pressures[] = {row->inward, row->outward, row->inward_asd, row->outward_asd};
    for (size_t i = 0; i < v->variables.n; i++) gw_report_cell(report, row->settings[i]);
    for (size_t i = 0; i < COUNT(pressures); i++) pressure_cell(report, pressures[i], v->shown);
    for (size_t i = 0; i < row->summaries.n; i++) verdict_cell(report, &row->summaries.items[i]);
}

static void matrix_page(struct gw_report *report, const struct gw_result *result)
{
    const struct gw_variations *v = result->value;
    gw_report_heading(report, 1, gw_format(report->arena, "Variations: %s", v->project));
    gw_report_line(report, "Worst pressures of all elements, strength and allowable-stress level; verdicts with the "
                           "use of the governing check.");
    open_matrix(report, v);
    for (size_t i = 0; i < v->variations.n; i++) matrix_row(report, v, &v->variations.items[i]);
    for (size_t i = 0; i < v->variations.n; i++)
        if (!v->variations.items[i].computed)
            gw_report_item(report, gw_format(report->arena, "not computed: %s", v->variations.items[i].message));
    gw_report_line(
        report,
        "Each combination alone is reported by 'check --set KEY=VALUE', with its assumptions and what is not checked.");
}

/* The same for a spreadsheet: a cell holds one value; in SI as exact as JSON. */
static void open_sheet(struct gw_report *report, const struct gw_variations *v)
{
    const char *unit = gw_dim_info(GW_PRESSURE)->shown[v->shown];
    const size_t candidates = n_candidates(v);
    struct gw_report_column *columns =
        gw_alloc(report->arena, v->variables.n + COUNT(PRESSURES) + 2 * candidates + 1, sizeof *columns);
    size_t n = 0;
    for (size_t i = 0; i < v->variables.n; i++) columns[n++].title = v->variables.items[i].key;
    for (size_t i = 0; i < COUNT(PRESSURES); i++)
        columns[n++].title = gw_format(report->arena, "%s %s", PRESSURES[i], unit);
    for (size_t i = 0; i < candidates; i++) {
        const char *name = v->variations.items->summaries.items[i].candidate;
        columns[n++].title = name;
        columns[n++].title = gw_format(report->arena, "%s utilization", name);
    }
    columns[n++].title = "not computed";
    gw_report_table(report, "", columns, n);
}

static const char *exact_or_shown(struct gw_report *report, const struct gw_variations *v, double pa)
{
    struct gw_text text;
    gw_text_init(&text, report->arena);
    if (v->shown != GW_SI) gw_add_bare(&text, GW_PRESSURE, v->shown, pa, UP);
    else if (gw_given(pa)) gw_text_number(&text, pa, 12);
    return text.length ? text.at : "";
}

static const char *use_text(struct gw_report *report, const struct gw_variations *v, const struct gw_varied_summary *s)
{
    struct gw_text text;
    gw_text_init(&text, report->arena);
    if (s->verdict == GW_NOT_SHOWN) return "";
    if (v->shown != GW_SI || isinf(s->utilization)) gw_add_utilization(&text, s->utilization);
    else if (gw_given(s->utilization)) gw_text_number(&text, s->utilization, 12);
    return text.length ? text.at : "";
}

static void matrix_sheet(struct gw_report *report, const struct gw_result *result)
{
    const struct gw_variations *v = result->value;
    open_sheet(report, v);
    for (size_t k = 0; k < v->variations.n; k++) {
        const struct gw_variation *row = &v->variations.items[k];
        const double pressures[] = {row->inward, row->outward, row->inward_asd, row->outward_asd};
        for (size_t i = 0; i < v->variables.n; i++) gw_report_cell(report, row->settings[i]);
        for (size_t i = 0; i < COUNT(pressures); i++) gw_report_cell(report, exact_or_shown(report, v, pressures[i]));
        for (size_t i = 0; i < row->summaries.n; i++) {
            gw_report_cell(report, gw_verdict_name(row->summaries.items[i].verdict));
            gw_report_cell(report, use_text(report, v, &row->summaries.items[i]));
        }
        gw_report_cell(report, row->message ? row->message : "");
    }
}

/* A text field for every variable, keyed by its path; the settings are an array of texts. */
static const struct gw_record *record_of_settings(struct gw_arena *arena, const struct gw_variations *v)
{
    struct gw_field *fields = gw_alloc(arena, v->variables.n + 1, sizeof *fields);
    struct gw_record *record = gw_alloc(arena, 1, sizeof *record);
    for (size_t i = 0; i < v->variables.n; i++)
        fields[i] = (struct gw_field){
            .key = v->variables.items[i].path, .type = GW_T_TEXT, .offset = i * sizeof(const char *), .help = ""};
    *record = (struct gw_record){
        .name = "settings", .size = v->variables.n * sizeof(const char *), .fields = fields, .n = v->variables.n};
    return record;
}

struct gw_result gw_result_variations(struct gw_arena *arena, struct gw_variations *v)
{
    const struct gw_record *record = record_of_settings(arena, v);
    for (size_t i = 0; i < v->variations.n; i++)
        v->variations.items[i].by_path = (struct gw_described){record, v->variations.items[i].settings};
    return (struct gw_result){
        .shown = v->shown, .record = &VARIATIONS_RECORD, .value = v, .page = matrix_page, .sheet = matrix_sheet};
}
