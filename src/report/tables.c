/* The numbers that come from outside, as they stand in the tables. */
#include "report/parts.h"

#include "galeward/json.h"

#include <string.h>

#define COUNT(array) (sizeof(array) / sizeof *(array))

/* A symbol is an enum's value; the words are those that a file uses. */
static const char *symbol_name(const char *column, int value)
{
    static const struct {
        const char *column;
        const struct gw_choice *choices;
    } kinds[] = {{"edition", gw_edition_choices},
                 {"exposure", gw_exposure_choices},
                 {"code", gw_building_code_choices},
                 {"enclosure", gw_enclosure_choices},
                 {"class", gw_water_basis_choices},
                 {"material", gw_interlayer_choices},
                 {"treatment", gw_treatment_choices},
                 {"finish", gw_edge_finish_choices},
                 {"thread", gw_thread_choices},
                 {"design", gw_design_choices},
                 {"debris_edition", gw_debris_edition_choices},
                 {"risk", gw_risk_choices},
                 {"protection", gw_protection_choices},
                 {"missile", gw_missile_choices},
                 {"basic", gw_missile_choices},
                 {"enhanced", gw_missile_choices},
                 {"size", gw_missile_size_choices},
                 {"schedule", gw_cycle_schedule_choices},
                 {"direction", gw_cycle_direction_choices},
                 {"protocol", gw_proof_protocol_choices},
                 {"step", gw_sequence_test_choices},
                 {"when", gw_sequence_when_choices}};
    for (size_t i = 0; i < COUNT(kinds); i++)
        if (strcmp(kinds[i].column, column) == 0) return gw_choice_name(kinds[i].choices, value);
    return value == GW_YES ? "yes" : value == GW_NO ? "no" : "";
}

static double number_at(const struct gw_row *row, const struct gw_column *column)
{
    return *(const double *)(const void *)((const char *)row + column->offset);
}

static const struct gw_numbers *numbers_at(const struct gw_row *row, const struct gw_column *column)
{
    return (const struct gw_numbers *)(const void *)((const char *)row + column->offset);
}

static const char *word_at(const struct gw_row *row, const struct gw_column *column)
{
    const void *at = (const char *)row + column->offset;
    if (column->type == GW_COLUMN_TEXT) return *(const char *const *)at;
    return symbol_name(column->name, *(const int *)at);
}

/* The number as the source prints it, unless the caller asks for a set of units. */
static const char *number_text(struct gw_arena *arena, const struct gw_row *row, const struct gw_column *column,
                               enum gw_units shown)
{
    struct gw_text text;
    double value = number_at(row, column);
    const char *name = column->unit ? column->unit : "";
    const struct gw_unit *unit = gw_unit_find(gw_units_standard(), column->dim, name, strlen(name));
    gw_text_init(&text, arena);
    if (!gw_given(value)) return "none";
    if (shown) value = gw_quantity_shown(gw_units_standard(), column->dim, shown, value);
    else if (unit) value = (value - unit->offset) / unit->factor;
    gw_text_number(&text, value, 7);
    return text.at;
}

static const char *cell_text(struct gw_arena *arena, const struct gw_row *row, const struct gw_column *column,
                             enum gw_units shown)
{
    if (column->type == GW_COLUMN_NUMBER) return number_text(arena, row, column, shown);
    if (column->type == GW_COLUMN_NUMBERS) return gw_format(arena, "%zu numbers", numbers_at(row, column)->n);
    return word_at(row, column);
}

static const char *title_text(struct gw_arena *arena, const struct gw_column *column, enum gw_units shown)
{
    const char *unit = column->unit;
    if (shown) unit = gw_dim_info(column->dim)->shown[shown];
    return column->type == GW_COLUMN_NUMBER && unit && *unit ? gw_format(arena, "%s %s", column->name, unit)
                                                             : column->name;
}

static void list_tables(struct gw_report *report, const struct gw_tables *tables)
{
    static const struct gw_report_column columns[] = {
        {"Table", false}, {"Rows", true}, {"Basis", false}, {"Title", false}};
    size_t n;
    const struct gw_table *list = gw_table_list(&n);
    gw_report_heading(report, 1, "Tables");
    gw_report_table(report, "Basis: the weakest of the rows. 'tables NAME' prints one.", columns, COUNT(columns));
    for (size_t i = 0; i < n; i++) {
        enum gw_basis weakest = GW_BASIS_NONE;
        for (size_t k = 0; k < list[i].n_rows; k++) {
            enum gw_basis basis = gw_table_row(tables, &list[i], k)->basis;
            if (basis > weakest) weakest = basis;
        }
        gw_report_cell(report, list[i].name);
        gw_report_cell(report, gw_format(report->arena, "%zu", list[i].n_rows));
        gw_report_cell(report, gw_basis_name(weakest));
        gw_report_cell(report, list[i].title);
    }
}

static void row_cells(struct gw_report *report, const struct gw_table *table, const struct gw_row *row,
                      enum gw_units shown)
{
    gw_report_cell(report, row->id);
    for (size_t c = 0; c < table->n_columns; c++)
        gw_report_cell(report, cell_text(report->arena, row, &table->columns[c], shown));
    gw_report_cell(report, gw_basis_name(row->basis));
    gw_report_cell(report, row->source);
}

static void one_table(struct gw_report *report, const struct gw_tables *tables, const struct gw_table *table,
                      enum gw_units shown)
{
    size_t n = table->n_columns + 3;
    struct gw_report_column *columns = gw_alloc(report->arena, n, sizeof *columns);
    columns[0].title = "id";
    for (size_t c = 0; c < table->n_columns; c++)
        columns[c + 1] = (struct gw_report_column){title_text(report->arena, &table->columns[c], shown),
                                                   table->columns[c].type == GW_COLUMN_NUMBER ||
                                                       table->columns[c].type == GW_COLUMN_NUMBERS};
    columns[n - 2].title = "basis";
    columns[n - 1].title = "source";
    gw_report_heading(report, 1, gw_format(report->arena, "%s: %s", table->name, table->title));
    gw_report_table(report, "", columns, n);
    for (size_t i = 0; i < table->n_rows; i++) row_cells(report, table, gw_table_row(tables, table, i), shown);
}

void gw_report_tables(struct gw_report *report, const struct gw_tables *tables, const char *name, enum gw_units shown)
{
    const struct gw_table *table = name ? gw_table_find(name) : NULL;
    if (!name) list_tables(report, tables);
    else if (table) one_table(report, tables, table, shown);
}

static void json_member(struct gw_json *json, const char *key, const char *text)
{
    gw_json_key(json, key);
    gw_json_text(json, text);
}

static void json_numbers(struct gw_json *json, const struct gw_numbers *list)
{
    gw_json_open(json, '[');
    for (size_t i = 0; i < list->n; i++) gw_json_number(json, list->items[i]);
    gw_json_close(json, ']');
}

static void json_row(struct gw_json *json, const struct gw_table *table, const struct gw_row *row)
{
    gw_json_open(json, '{');
    json_member(json, "id", row->id);
    for (size_t c = 0; c < table->n_columns; c++) {
        const struct gw_column *column = &table->columns[c];
        const char *suffix = gw_dim_info(column->dim)->suffix;
        bool number = column->type == GW_COLUMN_NUMBER;
        gw_json_key(json,
                    number && *suffix ? gw_format(json->out->arena, "%s_%s", column->name, suffix) : column->name);
        if (number) gw_json_number(json, number_at(row, column));
        else if (column->type == GW_COLUMN_NUMBERS) json_numbers(json, numbers_at(row, column));
        else gw_json_text(json, word_at(row, column));
    }
    json_member(json, "basis", gw_basis_name(row->basis));
    json_member(json, "source", row->source);
    gw_json_close(json, '}');
}

static void json_table(struct gw_json *json, const struct gw_tables *tables, const struct gw_table *table)
{
    gw_json_open(json, '{');
    json_member(json, "table", table->name);
    json_member(json, "title", table->title);
    gw_json_key(json, "rows");
    gw_json_open(json, '[');
    for (size_t i = 0; i < table->n_rows; i++) json_row(json, table, gw_table_row(tables, table, i));
    gw_json_close(json, ']');
    gw_json_close(json, '}');
}

void gw_json_tables(struct gw_text *out, const struct gw_tables *tables, const char *name)
{
    struct gw_json json;
    size_t n;
    const struct gw_table *list = gw_table_list(&n);
    gw_json_init(&json, out, true);
    gw_json_result(&json, NULL);
    gw_json_key(&json, "tables");
    gw_json_open(&json, '[');
    for (size_t i = 0; i < n; i++)
        if (!name || strcmp(name, list[i].name) == 0) json_table(&json, tables, &list[i]);
    gw_json_close(&json, ']');
    gw_json_close(&json, '}');
    gw_text_add(out, "\n");
}
