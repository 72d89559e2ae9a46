/* Comma-separated values: the tables of a page, or a list of records. */
#include "galeward/report.h"
#include "report/page.h"

#include <string.h>

/* A spreadsheet takes a cell that begins so for a formula, and may run it. */
static bool begins_formula(const char *text)
{
    double value;
    return *text && strchr("=+-@\t\r", *text) && gw_read_number(text, strlen(text), &value) != strlen(text);
}

/* Quoted where it must be, safe to show, and no formula to a spreadsheet; numbers stay as they are. */
void gw_csv_cell(struct gw_text *out, const char *text, bool first)
{
    const char *mark = begins_formula(text) ? "'" : ""; /* shown as text, the mark left out */
    if (!first) gw_text_add(out, ",");
    text = gw_safe(out->arena, text);
    if (!text[strcspn(text, ",;\"\r\n")]) {
        gw_text_addf(out, "%s%s", mark, text);
        return;
    }
    gw_text_addf(out, "\"%s", mark);
    for (; *text; text++) gw_text_bytes(out, *text == '"' ? "\"\"" : text, *text == '"' ? 2 : 1);
    gw_text_add(out, "\"");
}

static void put_table(struct gw_text *out, const struct gw_block *table)
{
    if (!table->n_columns) return;
    for (size_t c = 0; c < table->n_columns; c++) gw_csv_cell(out, table->columns[c].title, c == 0);
    gw_text_add(out, "\n");
    for (size_t i = 0; i < table->n_cells; i++) {
        gw_csv_cell(out, table->cells[i].text, i % table->n_columns == 0);
        if ((i + 1) % table->n_columns == 0) gw_text_add(out, "\n");
    }
}

static void put_step(struct gw_text *out, const char *of, const struct gw_equation *e)
{
    const char *const cells[] = {of,
                                 gw_format(out->arena, "%zu", e->number),
                                 e->symbol,
                                 e->formula,
                                 e->substituted,
                                 e->result,
                                 e->unit,
                                 e->clause,
                                 e->note};
    for (size_t i = 0; i < sizeof cells / sizeof *cells; i++) gw_csv_cell(out, cells[i], i == 0);
    gw_text_add(out, "\n");
}

/* Every derivation of the page in one table, each line with the heading that it stands under. */
static bool put_steps(struct gw_text *out, const struct gw_report *report)
{
    const char *of = "", *part = "";
    bool any = false;
    for (size_t i = 0; i < report->n; i++) {
        const struct gw_block *block = &report->blocks[i];
        if (block->kind == GW_HEADING) part = block->level > 2 ? block->text : "";
        if (block->kind == GW_HEADING && block->level <= 2) of = block->text;
        if (block->kind != GW_EQUATION) continue;
        if (!any) gw_text_add(out, "of,step,symbol,formula,values,result,unit,clause,note\n");
        any = true;
        put_step(out, *part ? gw_format(report->arena, "%s: %s", of, part) : of, &block->equation);
    }
    return any;
}

void gw_render_csv(struct gw_text *out, const struct gw_report *report)
{
    bool first = !put_steps(out, report);
    for (size_t i = 0; i < report->n; i++) {
        if (report->blocks[i].kind != GW_TABLE) continue;
        if (!first) gw_text_add(out, "\n");
        first = false;
        put_table(out, &report->blocks[i]);
    }
}

/* Keys carry their units; what stands flat in the record has its columns among ours. */
static void put_keys(struct gw_text *out, const struct gw_record *record, bool *first)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        if (!gw_field_is_written(field) || field->flags & GW_MANY) continue;
        if (field->flags & GW_FLAT) {
            put_keys(out, field->record, first);
            continue;
        }
        if (!*first) gw_text_add(out, ",");
        *first = false;
        gw_field_json_key(out, field);
    }
}

static void put_number(struct gw_text *out, const struct gw_field *field, const void *at)
{
    double value = field->type == GW_T_FIGURE   ? field->figure(at, GW_SI)
                   : field->type == GW_T_EITHER ? ((const struct gw_either *)at)->number
                                                : *(const double *)at;
    if (isfinite(value)) gw_text_number(out, value, 12);
}

static void put_value(struct gw_text *out, const struct gw_field *field, const void *at, bool first)
{
    const char *words = gw_field_words(out->arena, field, at, GW_SI);
    bool absent = gw_field_is_absent(field, at);
    if (!absent && field->type == GW_T_BOOL) words = *(const enum gw_bool *)at == GW_YES ? "true" : "false";
    if (!absent && field->type == GW_T_YES_NO) words = *(const bool *)at ? "true" : "false";
    gw_csv_cell(out, words ? words : "", first);
    if (absent || words) return;
    if (field->type == GW_T_INTEGER) gw_text_addf(out, "%d", *(const int *)at);
    if (field->type == GW_T_COUNT) gw_text_addf(out, "%ld", *(const long *)at);
    if (field->type == GW_T_NUMBER || field->type == GW_T_FIGURE || field->type == GW_T_EITHER)
        put_number(out, field, at);
}

static void put_values(struct gw_text *out, const struct gw_record *record, const void *row, bool *first)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        const void *at = gw_field_at(field, row);
        if (!gw_field_is_written(field) || field->flags & GW_MANY) continue;
        if (field->flags & GW_FLAT) {
            put_values(out, field->record, gw_field_struct(field, at), first);
            continue;
        }
        put_value(out, field, at, *first);
        *first = false;
    }
}

void gw_csv_records(struct gw_text *out, const struct gw_field *list, const void *value)
{
    const struct gw_many *many = gw_field_at(list, value);
    bool first = true;
    put_keys(out, list->record, &first);
    gw_text_add(out, "\n");
    for (size_t i = 0; many && i < many->n; i++) {
        first = true;
        put_values(out, list->record, gw_field_item(list, many, i), &first);
        gw_text_add(out, "\n");
    }
}
