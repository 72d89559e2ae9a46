/* The matrix of 'check --vary': its columns are the values that vary and the candidates. */
#include "galeward/variations.h"

#include "base/fields.h"
#include "report/page.h"
#include "report/results.h"

#include <stdlib.h>
#include <string.h>

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

/* The candidates of all combinations, each name as often as one combination has it. */
struct lineup {
    GW_LIST(const char *) names;
    size_t capacity;
};

/* Which of that name it is: 0 for the first of the row. */
static size_t ordinal(const char *const *names, size_t at)
{
    size_t n = 0;
    for (size_t i = 0; i < at; i++) n += strcmp(names[i], names[at]) == 0;
    return n;
}

/* The summary in that column; NULL: the combination has no such candidate. */
static const struct gw_varied_summary *in_column(const struct gw_variation *row, const struct lineup *l, size_t column)
{
    size_t left = ordinal(l->names.items, column);
    for (size_t i = 0; i < row->summaries.n; i++)
        if (strcmp(row->summaries.items[i].candidate, l->names.items[column]) == 0 && left-- == 0)
            return &row->summaries.items[i];
    return NULL;
}

static void add_row(struct lineup *l, struct gw_arena *arena, const struct gw_variation *row)
{
    for (size_t i = 0; i < row->summaries.n; i++) {
        const char *name = row->summaries.items[i].candidate;
        size_t in_row = 1, there = 0;
        for (size_t k = 0; k < i; k++) in_row += strcmp(row->summaries.items[k].candidate, name) == 0;
        for (size_t k = 0; k < l->names.n; k++) there += strcmp(l->names.items[k], name) == 0;
        if (there >= in_row) continue;
        l->names.items = gw_grow(arena, l->names.items, l->names.n, &l->capacity, sizeof *l->names.items);
        l->names.items[l->names.n++] = name;
    }
}

static struct lineup lineup_of(struct gw_arena *arena, const struct gw_variations *v)
{
    struct lineup l = {.capacity = 0};
    for (size_t i = 0; i < v->variations.n; i++) add_row(&l, arena, &v->variations.items[i]);
    return l;
}

static const char *const PRESSURES[] = {"inward", "outward", "ASD in", "ASD out"};

static void open_matrix(struct gw_report *report, const struct gw_variations *v, const struct lineup *l)
{
    size_t n = 0;
    const char *unit = gw_dim_info(GW_PRESSURE)->shown[v->shown];
    struct gw_report_column *columns =
        gw_alloc(report->arena, v->variables.n + l->names.n + COUNT(PRESSURES), sizeof *columns);
    for (size_t i = 0; i < v->variables.n; i++) columns[n++].title = v->variables.items[i].key;
    for (size_t i = 0; i < COUNT(PRESSURES); i++)
        columns[n++] =
            (struct gw_report_column){.title = gw_format(report->arena, "%s %s", PRESSURES[i], unit), .right = true};
    for (size_t i = 0; i < l->names.n; i++) columns[n++].title = l->names.items[i];
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
    if (!s) {
        gw_report_cell(report, "");
        return;
    }
    gw_text_add(&text, gw_verdict_name(s->verdict));
    if (isfinite(s->utilization) && s->verdict != GW_NOT_SHOWN) {
        gw_text_add(&text, " ");
        gw_add_utilization(&text, s->utilization);
    }
    gw_report_toned(report, gw_verdict_tone((int)s->verdict), text.at);
}

static void matrix_row(struct gw_report *report, const struct gw_variations *v, const struct gw_variation *row,
                       const struct lineup *l)
{
    const double pressures[] = {row->inward, row->outward, row->inward_asd, row->outward_asd};
    for (size_t i = 0; i < v->variables.n; i++) gw_report_cell(report, row->settings[i]);
    for (size_t i = 0; i < COUNT(pressures); i++) pressure_cell(report, pressures[i], v->shown);
    for (size_t i = 0; i < l->names.n; i++) verdict_cell(report, in_column(row, l, i));
}

/* What moves ---------------------------------------------------------------------------------------------------------
 */

/* The greatest use of one check of one candidate: least and most of the combinations. */
struct moved {
    const char *candidate;
    const struct gw_check *check;
    double low, high;
    size_t at_low, at_high;
};

static struct moved moved_of(const struct gw_variations *v, const struct lineup *l, size_t column, size_t check)
{
    struct moved m = {.candidate = l->names.items[column], .low = GW_ABSENT, .high = GW_ABSENT};
    for (size_t i = 0; i < v->variations.n; i++) {
        const struct gw_varied_summary *s = in_column(&v->variations.items[i], l, column);
        const double use = s && s->uses ? s->uses[check] : GW_ABSENT;
        if (!gw_given(use) || isinf(use)) continue;
        if (!(use >= m.low)) m.low = use, m.at_low = i;
        if (!(use <= m.high)) m.high = use, m.at_high = i;
    }
    return m;
}

static int by_spread(const void *left, const void *right)
{
    const struct moved *a = left, *b = right;
    const double x = a->high - a->low, y = b->high - b->low;
    return x > y ? -1 : x < y;
}

static const char *settings_text(struct gw_report *report, const struct gw_variations *v, size_t i)
{
    struct gw_text out;
    gw_text_init(&out, report->arena);
    for (size_t k = 0; k < v->variables.n; k++)
        gw_text_addf(&out, "%s%s=%s", k ? ", " : "", v->variables.items[k].key, v->variations.items[i].settings[k]);
    return out.at;
}

static const char *use_of(struct gw_report *report, double use)
{
    struct gw_text out;
    gw_text_init(&out, report->arena);
    gw_add_utilization(&out, use);
    return out.at;
}

static void moved_row(struct gw_report *report, const struct gw_variations *v, const struct moved *m)
{
    gw_report_cell(report, m->candidate);
    gw_report_cell(report, m->check->id);
    gw_report_cell(report, use_of(report, m->low));
    gw_report_cell(report, settings_text(report, v, m->at_low));
    gw_report_cell(report, use_of(report, m->high));
    gw_report_cell(report, settings_text(report, v, m->at_high));
}

/* Of each candidate the checks whose greatest use moves most, whether they govern or not. */
static void what_moves(struct gw_report *report, const struct gw_variations *v, const struct lineup *l)
{
    enum { SHOWN = 4 };
    static const struct gw_report_column columns[] = {{.title = "What moves most"},          {.title = "Check"},
                                                      {.title = "Least use", .right = true}, {.title = "with"},
                                                      {.title = "Most", .right = true},      {.title = "with"}};
    const double seen = 0.005; /* less is not printed */
    size_t n, shown = 0;
    const struct gw_check *const *checks = gw_check_list(&n);
    struct moved *all = gw_alloc(report->arena, n + 1, sizeof *all);
    for (size_t c = 0; c < l->names.n; c++) {
        size_t moved = 0;
        for (size_t k = 0; k < n; k++) {
            all[moved] = moved_of(v, l, c, k);
            all[moved].check = checks[k];
            if (all[moved].high - all[moved].low > seen) moved++;
        }
        qsort(all, moved, sizeof *all, by_spread);
        for (size_t i = 0; i < moved && i < SHOWN; i++) {
            if (!shown++)
                gw_report_table(report, "Greatest use of a check: where it is least, where most", columns,
                                COUNT(columns));
            moved_row(report, v, &all[i]);
        }
    }
}

static void matrix_page(struct gw_report *report, const struct gw_result *result)
{
    const struct gw_variations *v = result->value;
    gw_report_heading(report, 1, gw_format(report->arena, "Variations: %s", v->project));
    gw_report_line(report, "Worst pressures of all elements, strength and allowable-stress level; verdicts with the "
                           "use of the governing check.");
    const struct lineup l = lineup_of(report->arena, v);
    open_matrix(report, v, &l);
    for (size_t i = 0; i < v->variations.n; i++) matrix_row(report, v, &v->variations.items[i], &l);
    what_moves(report, v, &l);
    for (size_t i = 0; i < v->variations.n; i++)
        if (!v->variations.items[i].computed)
            gw_report_item(report, gw_format(report->arena, "not computed: %s", v->variations.items[i].message));
    gw_report_line(
        report,
        "Each combination alone is reported by 'check --set KEY=VALUE', with its assumptions and what is not checked.");
}

/* The same for a spreadsheet: a cell holds one value; in SI as exact as JSON. */
static void open_sheet(struct gw_report *report, const struct gw_variations *v, const struct lineup *l)
{
    const char *unit = gw_dim_info(GW_PRESSURE)->shown[v->shown];
    const size_t candidates = l->names.n;
    struct gw_report_column *columns =
        gw_alloc(report->arena, v->variables.n + COUNT(PRESSURES) + 2 * candidates + 1, sizeof *columns);
    size_t n = 0;
    for (size_t i = 0; i < v->variables.n; i++) columns[n++].title = v->variables.items[i].key;
    for (size_t i = 0; i < COUNT(PRESSURES); i++)
        columns[n++].title = gw_format(report->arena, "%s %s", PRESSURES[i], unit);
    for (size_t i = 0; i < candidates; i++) {
        const char *name = l->names.items[i];
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
    const struct lineup l = lineup_of(report->arena, v);
    open_sheet(report, v, &l);
    for (size_t k = 0; k < v->variations.n; k++) {
        const struct gw_variation *row = &v->variations.items[k];
        const double pressures[] = {row->inward, row->outward, row->inward_asd, row->outward_asd};
        for (size_t i = 0; i < v->variables.n; i++) gw_report_cell(report, row->settings[i]);
        for (size_t i = 0; i < COUNT(pressures); i++) gw_report_cell(report, exact_or_shown(report, v, pressures[i]));
        for (size_t i = 0; i < l.names.n; i++) {
            const struct gw_varied_summary *s = in_column(row, &l, i);
            gw_report_cell(report, s ? gw_verdict_name(s->verdict) : "");
            gw_report_cell(report, s ? use_text(report, v, s) : "");
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
