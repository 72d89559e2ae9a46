/* One case of 'calc' as people read it: a page of its results, or a row of a spreadsheet. */
#include "galeward/calc_page.h"

#include "report/page.h"

#include <string.h>

struct answer_page {
    const struct gw_calc_kind *kind;
    const struct gw_calc_answer *answer;
    bool first;
};

/* How figures are written: in which units, to the last digit, all of them what something takes. */
struct manner {
    enum gw_units shown;
    bool exact, capacities;
};

/* Kinds whose results are strengths, whatever their keys are called. */
static bool is_of_capacities(const struct gw_calc_kind *kind)
{
    static const char *const names[] = {"bending", "member_strength", "corner"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        if (strcmp(names[i], kind->name) == 0) return true;
    return false;
}

/* Values ---------------------------------------------------------------------------------------------------------- */

/* Keys are named alike in all kinds: what a figure is stands in its key. The first list that holds a part of it counts:
 * a property or a place, a capacity, a demand. */
static const char *const NO_SIDE[] = {"_at", "modulus", "center", "flows", "levels", "span", "ratio", NULL};
static const char *const CAPACITY[] = {
    "allowable", "resistance", "capacity",   "_limit",   "limit_pressure", "nonfactored", "nominal",  "suction",
    "greatest",  "yield",      "rupture",    "local",    "torsional",      "shear_y",     "breaking", "clearance",
    "interlock", "bolts_take", "engagement", "net_head", "flow",           "retained",    NULL};
static const char *const DEMAND[] = {
    "reaction", "shear",   "moment",   "couples", "deflection", "stress",  "tension", "pressure",    "asd_",
    "raw_",     "_net",    "skin_",    "qz",      "qh",         "qp",      "bite",    "required",    "proof",
    "force",    "minimum", "vertical", "drift",   "closing",    "joint",   "needed",  "head",        "dead",
    "inward",   "outward", "combined", "bolt_",   "resultant",  "seismic", "impulse", "interaction", "probability",
    "missile",  "thermal", "slip",     "strain",  "load",       "low",     "high",    "cladding",    NULL};

static bool holds_any(const char *key, const char *const *words)
{
    while (*words && !strstr(key, *words)) words++;
    return *words != NULL;
}

static enum rounding rounding_of(const struct gw_field *field, const struct manner *m)
{
    const char *key = field->key;
    if (holds_any(key, NO_SIDE)) return NEAREST;
    return m->capacities || holds_any(key, CAPACITY) ? DOWN : holds_any(key, DEMAND) ? UP : NEAREST;
}

static bool is_use(const struct gw_field *field) { return strstr(field->key, "utilisation") != NULL; }

static void add_number(struct gw_text *out, const struct gw_field *field, double si, const struct manner *m)
{
    double value = gw_quantity_shown(gw_units_standard(), field->dim, m->shown, si);
    if (m->exact && isfinite(si)) gw_text_number(out, si, 12);
    else if (!m->exact && is_use(field)) gw_add_utilization(out, si);
    else if (!m->exact && isfinite(value)) gw_add_figure(out, value, rounding_of(field, m));
}

static void add_value(struct gw_text *out, const struct gw_field *field, const void *at, const struct manner *m)
{
    const char *words = NULL;
    if (field->type == GW_T_NUMBER) add_number(out, field, *(const double *)at, m);
    else if (field->type == GW_T_INTEGER) gw_text_addf(out, "%d", *(const int *)at);
    else if (field->type == GW_T_COUNT) gw_text_addf(out, "%ld", *(const long *)at);
    else if (field->type == GW_T_BOOL) words = *(const enum gw_bool *)at == GW_YES ? "yes" : "no";
    else if (field->type == GW_T_YES_NO) words = *(const bool *)at ? "yes" : "no";
    else words = gw_field_words(out->arena, field, at, m->shown);
    if (words) gw_text_add(out, words);
}

static size_t item_size(const struct gw_field *field)
{
    if (field->type == GW_T_NUMBER) return sizeof(double);
    return field->type == GW_T_TEXT ? sizeof(char *) : sizeof(int);
}

/* A list of plain values in one text. */
static void add_values(struct gw_text *out, const struct gw_field *field, const struct gw_many *many,
                       const struct manner *m)
{
    for (size_t i = 0; i < many->n; i++) {
        if (i) gw_text_add(out, "; ");
        add_value(out, field, (const char *)many->items + i * item_size(field), m);
    }
}

static void add_any(struct gw_text *out, const struct gw_field *field, const void *at, const struct manner *m)
{
    if (gw_field_is_absent(field, at)) return;
    if (field->flags & GW_MANY) add_values(out, field, at, m);
    else add_value(out, field, at, m);
}

static const char *text_of(struct gw_arena *arena, const struct gw_field *field, const void *at, const struct manner *m)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    add_any(&text, field, at, m);
    return text.length ? text.at : "";
}

/* Keys as people read them: a few are fixed in another spelling. */
static const char *words_of(struct gw_arena *arena, const char *key)
{
    static const char *const fixed[][2] = {{"utilisation", "utilization"}, {"centre", "center"}, {"asd_", "ASD "}};
    const size_t n = sizeof fixed / sizeof *fixed;
    struct gw_text text;
    gw_text_init(&text, arena);
    while (*key) {
        size_t k = 0;
        while (k < n && strncmp(key, fixed[k][0], strlen(fixed[k][0])) != 0) k++;
        if (k < n) gw_text_add(&text, fixed[k][1]);
        else gw_text_bytes(&text, *key == '_' ? " " : key, 1);
        key += k < n ? strlen(fixed[k][0]) : 1;
    }
    return text.length ? text.at : "";
}

static const char *unit_of(const struct gw_field *field, enum gw_units shown)
{
    return field->type == GW_T_NUMBER ? gw_dim_info(field->dim)->shown[shown] : "";
}

static bool is_list_of_records(const struct gw_field *field)
{
    return field->type == GW_T_RECORD && field->flags & GW_MANY;
}

/* The page --------------------------------------------------------------------------------------------------------- */

struct sheet {
    struct gw_report *report;
    struct manner manner;
};

static void result_row(const struct sheet *page, const char *name, const struct gw_field *field, const char *value)
{
    gw_report_cell(page->report, name);
    gw_report_cell(page->report, value);
    gw_report_cell(page->report, unit_of(field, page->manner.shown));
    gw_report_cell(page->report, field->help);
}

static void sentence(const struct sheet *page, const char *name, const struct gw_field *field, const char *value)
{
    const char *unit = unit_of(field, page->manner.shown);
    gw_report_item(page->report, gw_format(page->report->arena, "%s%s%s: %s", name, *unit ? " " : "", unit, value));
}

/* A sentence would push the figures off the page: it stands below the table. */
static bool is_long(const char *value)
{
    enum { SHORT = 30 };
    return gw_text_width(value) > SHORT;
}

/* What is not there has no row. */
static void result_rows(const struct sheet *page, const struct gw_record *record, const void *value, const char *lead,
                        bool sentences)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        const void *at = gw_field_at(field, value);
        if (!gw_field_is_written(field) || is_list_of_records(field) || gw_field_is_absent(field, at)) continue;
        const char *name = gw_format(page->report->arena, "%s%s", lead, words_of(page->report->arena, field->key)),
                   *value_text;
        if (field->type == GW_T_RECORD) {
            result_rows(page, field->record, gw_field_struct(field, at), gw_format(page->report->arena, "%s: ", name),
                        sentences);
            continue;
        }
        value_text = text_of(page->report->arena, field, at, &page->manner);
        if (!*value_text || is_long(value_text) != sentences) continue;
        if (sentences) sentence(page, name, field, value_text);
        else result_row(page, name, field, value_text);
    }
}

/* Of a list of records: a field of theirs, or of a record that lies in them (`outer`). */
struct column {
    const struct gw_field *outer, *field;
};

static const void *column_at(const struct column *c, const void *item)
{
    if (c->outer) item = gw_field_struct(c->outer, gw_field_at(c->outer, item));
    return gw_field_at(c->field, item);
}

static size_t columns_of(struct gw_arena *arena, const struct gw_record *record, const struct column **out)
{
    size_t n = 0, room = record->n;
    for (size_t i = 0; i < record->n; i++)
        if (record->fields[i].type == GW_T_RECORD) room += record->fields[i].record->n;
    struct column *columns = gw_alloc(arena, room + 1, sizeof *columns);
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        if (!gw_field_is_written(field) || is_list_of_records(field)) continue;
        const bool part = field->type == GW_T_RECORD;
        for (size_t k = 0; k < (part ? field->record->n : 1); k++)
            columns[n++] = part ? (struct column){field, &field->record->fields[k]} : (struct column){NULL, field};
    }
    *out = columns;
    return n;
}

/* The columns that some item fills. */
static size_t filled_columns(struct gw_arena *arena, const struct gw_field *list, const struct gw_many *many,
                             const struct column **out)
{
    size_t n = columns_of(arena, list->record, out), kept = 0;
    struct column *columns = gw_alloc(arena, n + 1, sizeof *columns);
    for (size_t c = 0; c < n; c++) {
        const struct column *column = &(*out)[c];
        size_t i = 0;
        while (i < many->n && gw_field_is_absent(column->field, column_at(column, gw_field_item(list, many, i)))) i++;
        if (i < many->n) columns[kept++] = *column;
    }
    *out = columns;
    return kept;
}

static const char *column_name(struct gw_arena *arena, const struct column *c)
{
    const char *own = words_of(arena, c->field->key);
    return c->outer ? gw_format(arena, "%s: %s", words_of(arena, c->outer->key), own) : own;
}

static void item_cell(const struct sheet *page, const struct column *c, const void *item)
{
    gw_report_cell(page->report, text_of(page->report->arena, c->field, column_at(c, item), &page->manner));
}

/* A row an item. */
static void upright_table(const struct sheet *page, const struct gw_field *list, const struct gw_many *many,
                          const struct column *of, size_t n)
{
    struct gw_arena *arena = page->report->arena;
    struct gw_report_column *columns = gw_alloc(arena, n, sizeof *columns);
    for (size_t c = 0; c < n; c++) {
        const char *unit = unit_of(of[c].field, page->manner.shown);
        columns[c].title = gw_format(arena, "%s%s%s", column_name(arena, &of[c]), *unit ? " " : "", unit);
        columns[c].right = of[c].field->type == GW_T_NUMBER || of[c].field->type == GW_T_INTEGER;
    }
    gw_report_table(page->report, words_of(arena, list->key), columns, n);
    for (size_t k = 0; k < many->n; k++)
        for (size_t c = 0; c < n; c++) item_cell(page, &of[c], gw_field_item(list, many, k));
}

/* A column an item, where the rows would run off the page. */
static void turned_table(const struct sheet *page, const struct gw_field *list, const struct gw_many *many,
                         const struct column *of, size_t n)
{
    struct gw_arena *arena = page->report->arena;
    struct gw_report_column *columns = gw_alloc(arena, many->n + 2, sizeof *columns);
    columns[0].title = words_of(arena, list->key);
    for (size_t k = 0; k < many->n; k++)
        columns[k + 1] = (struct gw_report_column){.title = gw_format(arena, "%zu", k + 1), .right = true};
    columns[many->n + 1].title = "Unit";
    gw_report_table(page->report, "", columns, many->n + 2);
    for (size_t c = 0; c < n; c++) {
        gw_report_cell(page->report, column_name(arena, &of[c]));
        for (size_t k = 0; k < many->n; k++) item_cell(page, &of[c], gw_field_item(list, many, k));
        gw_report_cell(page->report, unit_of(of[c].field, page->manner.shown));
    }
}

static void list_table(const struct sheet *page, const struct gw_field *list, const struct gw_many *many)
{
    enum { PAGE = 110, AN_ITEM = 24, GAP = 2 }; /* characters */
    struct gw_arena *arena = page->report->arena;
    const struct column *of;
    size_t n = filled_columns(arena, list, many, &of), width = 0;
    for (size_t c = 0; c < n; c++)
        width += gw_text_width(column_name(arena, &of[c])) + gw_text_width(unit_of(of[c].field, page->manner.shown)) +
                 GAP + 1;
    bool turned = width > PAGE && many->n * AN_ITEM < PAGE;
    (turned ? turned_table : upright_table)(page, list, many, of, n);
}

static void lists(const struct sheet *page, const struct gw_record *record, const void *value)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        const void *at = gw_field_at(field, value);
        if (is_list_of_records(field) && !gw_field_is_absent(field, at)) list_table(page, field, at);
    }
}

static bool has_rows(const struct gw_record *record)
{
    for (size_t i = 0; i < record->n; i++)
        if (gw_field_is_written(&record->fields[i]) && !is_list_of_records(&record->fields[i])) return true;
    return false;
}

const char *gw_calc_error_text(struct gw_arena *arena, const struct gw_calc_answer *answer)
{
    const char *key = answer->error_key ? answer->error_key : "";
    return gw_format(arena, "%s: %s%s%s", answer->error_code, key, *key ? ": " : "", answer->error);
}

static void answer_page(struct gw_report *report, const struct gw_result *result)
{
    static const struct gw_report_column columns[] = {
        {.title = "Result"}, {.title = "Value", .right = true}, {.title = "Unit"}, {.title = "What it is"}};
    const struct answer_page *of = result->value;
    const struct sheet page = {report, {result->shown, false, is_of_capacities(of->kind)}};
    if (!of->first) gw_report_line(report, "");
    gw_report_heading(report, 1, gw_format(report->arena, "%s: %s", of->kind->name, of->kind->help));
    if (of->answer->id) gw_report_line(report, gw_format(report->arena, "Case %s", of->answer->id));
    if (of->answer->error) {
        gw_report_line(report, gw_calc_error_text(report->arena, of->answer));
        return;
    }
    if (has_rows(of->kind->output)) gw_report_table(report, "", columns, sizeof columns / sizeof *columns);
    result_rows(&page, of->kind->output, of->answer->out, "", false);
    result_rows(&page, of->kind->output, of->answer->out, "", true);
    lists(&page, of->kind->output, of->answer->out);
    for (size_t i = 0; i < of->answer->notes.n; i++) gw_report_item(report, of->answer->notes.items[i]);
    if (of->answer->trace.n) gw_report_heading(report, 2, "Steps");
    for (size_t i = 0; i < of->answer->trace.n; i++)
        gw_report_equation(report, &of->answer->trace.steps[i], i + 1, result->shown);
}

/* The spreadsheet -------------------------------------------------------------------------------------------------- */

/* Headings first, or a case's values: the record is walked alike for both. */
struct row {
    struct gw_text *out;
    struct manner manner;
    bool heading;
};

static void cell(struct row *row, const char *text) { gw_csv_cell(row->out, text, false); }

static void heading_cell(struct row *row, const struct gw_field *field, const char *lead)
{
    struct gw_arena *arena = row->out->arena;
    struct gw_text text;
    const char *unit = unit_of(field, row->manner.shown);
    gw_text_init(&text, arena);
    gw_text_add(&text, lead);
    if (row->manner.shown == GW_SI) gw_field_json_key(&text, field);
    else gw_text_addf(&text, "%s%s%s", words_of(arena, field->key), *unit ? " " : "", unit);
    cell(row, text.at);
}

static void value_cell(struct row *row, const struct gw_field *field, const void *at)
{
    struct gw_text text;
    gw_text_init(&text, row->out->arena);
    if (at) add_any(&text, field, at, &row->manner);
    cell(row, text.length ? text.at : "");
}

/* The items' values of one column in one cell. */
static void items_cell(struct row *row, const struct gw_field *list, const struct gw_many *many,
                       const struct column *column)
{
    struct gw_text text;
    gw_text_init(&text, row->out->arena);
    for (size_t i = 0; many && i < many->n; i++) {
        if (i) gw_text_add(&text, "; ");
        add_any(&text, column->field, column_at(column, gw_field_item(list, many, i)), &row->manner);
    }
    cell(row, text.length ? text.at : "");
}

static const char *lead_of(struct row *row, const char *lead, const struct gw_field *field)
{
    bool si = row->manner.shown == GW_SI;
    return gw_format(row->out->arena, "%s%s%s", lead, si ? field->key : words_of(row->out->arena, field->key),
                     si ? "." : ": ");
}

static void list_cells(struct row *row, const struct gw_field *list, const struct gw_many *many, const char *lead)
{
    const struct column *of;
    size_t n = columns_of(row->out->arena, list->record, &of);
    for (size_t c = 0; c < n; c++) {
        if (row->heading) heading_cell(row, of[c].field, of[c].outer ? lead_of(row, lead, of[c].outer) : lead);
        else items_cell(row, list, many, &of[c]);
    }
}

static void cells(struct row *row, const struct gw_record *record, const void *value, const char *lead)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        const void *at = gw_field_at(field, value);
        if (!gw_field_is_written(field)) continue;
        const char *inner = lead_of(row, lead, field);
        if (is_list_of_records(field)) list_cells(row, field, at, inner);
        else if (field->type == GW_T_RECORD) cells(row, field->record, at ? gw_field_struct(field, at) : NULL, inner);
        else if (row->heading) heading_cell(row, field, lead);
        else value_cell(row, field, at);
    }
}

static void notes_cell(struct row *row, const struct gw_calc_answer *answer)
{
    struct gw_text text;
    gw_text_init(&text, row->out->arena);
    for (size_t i = 0; i < answer->notes.n; i++) gw_text_addf(&text, "%s%s", i ? "; " : "", answer->notes.items[i]);
    cell(row, text.length ? text.at : "");
}

static void answer_table(struct gw_text *out, const struct gw_result *result)
{
    const struct answer_page *of = result->value;
    const struct gw_calc_answer *answer = of->answer;
    struct row row = {out, {result->shown, result->shown == GW_SI, is_of_capacities(of->kind)}, true};
    if (of->first) {
        gw_csv_cell(out, "id", true);
        cells(&row, of->kind->output, NULL, "");
        gw_text_add(out, ",notes,error\n");
    }
    row.heading = false;
    gw_csv_cell(out, answer->id ? answer->id : "", true);
    cells(&row, of->kind->output, answer->error ? NULL : answer->out, "");
    notes_cell(&row, answer);
    cell(&row, answer->error ? gw_calc_error_text(out->arena, answer) : "");
    gw_text_add(out, "\n");
}

struct gw_result gw_result_calc(struct gw_arena *arena, const struct gw_calc_kind *kind,
                                const struct gw_calc_answer *answer, bool first, enum gw_units shown)
{
    struct answer_page *of = gw_alloc(arena, 1, sizeof *of);
    *of = (struct answer_page){kind, answer, first};
    return (struct gw_result){.shown = shown, .value = of, .page = answer_page, .table = answer_table};
}
