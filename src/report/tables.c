/* The numbers that come from outside, as they stand in the tables. */
#include "base/fields.h"
#include "report/page.h"

#include <string.h>

/* A symbol is an enum's value; the words are those that a file uses. */
static const struct gw_choice *choices_of(const char *column)
{
    static const struct {
        const char *column;
        const struct gw_choice *choices;
    } kinds[] = {{"edition", gw_edition_choices},
                 {"exposure", gw_exposure_choices},
                 {"code", gw_building_code_choices},
                 {"enclosure", gw_enclosure_choices},
                 {"class", gw_water_rule_choices},
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
        if (strcmp(kinds[i].column, column) == 0) return kinds[i].choices;
    return NULL;
}

static const char *yes_or_no(int value) { return value == GW_YES ? "yes" : value == GW_NO ? "no" : ""; }

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
    const struct gw_choice *choices = choices_of(column->name);
    return choices ? gw_choice_name(choices, *(const int *)at) : yes_or_no(*(const int *)at);
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
        {.title = "Table"}, {.title = "Rows", .right = true}, {.title = "Basis"}, {.title = "Title"}};
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
        gw_report_cell(report, gw_basis_words(weakest));
        gw_report_cell(report, list[i].title);
    }
}

static void row_cells(struct gw_report *report, const struct gw_table *table, const struct gw_row *row,
                      enum gw_units shown)
{
    gw_report_cell(report, row->id);
    for (size_t c = 0; c < table->n_columns; c++)
        gw_report_cell(report, cell_text(report->arena, row, &table->columns[c], shown));
    gw_report_cell(report, gw_basis_words(row->basis));
    gw_report_cell(report, row->source);
}

static void one_table(struct gw_report *report, const struct gw_tables *tables, const struct gw_table *table,
                      enum gw_units shown)
{
    size_t n = table->n_columns + 3;
    struct gw_report_column *columns = gw_alloc(report->arena, n, sizeof *columns);
    columns[0].title = "id";
    for (size_t c = 0; c < table->n_columns; c++)
        columns[c + 1] = (struct gw_report_column){.title = title_text(report->arena, &table->columns[c], shown),
                                                   .right = table->columns[c].type == GW_COLUMN_NUMBER ||
                                                            table->columns[c].type == GW_COLUMN_NUMBERS};
    columns[n - 2].title = "basis";
    columns[n - 1].title = "source";
    gw_report_heading(report, 1, gw_format(report->arena, "%s: %s", table->name, table->title));
    gw_report_table(report, "", columns, n);
    for (size_t i = 0; i < table->n_rows; i++) row_cells(report, table, gw_table_row(tables, table, i), shown);
}

/* As data: each table brings a record of its own columns. */
struct shown_table {
    const char *name, *title;
    GW_LIST(struct gw_described) rows;
};
static const struct gw_field TABLE[] = {
    FIELD(shown_table, "table", name, GW_T_TEXT, .help = "its name"),
    F(shown_table, title, GW_T_TEXT, .help = "what it holds"),
    F(shown_table, rows, GW_T_DESCRIBED, .flags = GW_MANY, .help = "id, the table's columns, basis, source"),
};
static const struct gw_record TABLE_RECORD = RECORD("table", shown_table, TABLE, .help = "a table of numbers");

struct shown_tables {
    const struct gw_tables *all;
    const char *only;
    GW_LIST(struct shown_table) tables;
};
static const struct gw_field TABLES[] = {
    F(shown_tables, tables, GW_T_RECORD, .flags = GW_MANY, .record = &TABLE_RECORD, .help = "with their rows"),
};
static const struct gw_record TABLES_RECORD = RECORD("tables", shown_tables, TABLES, .help = "what 'tables' writes");

static struct gw_field column_field(const struct gw_column *column)
{
    struct gw_field field = {.key = column->name, .offset = column->offset, .dim = column->dim};
    switch (column->type) {
    case GW_COLUMN_NUMBER:
        field.type = GW_T_NUMBER;
        break;
    case GW_COLUMN_NUMBERS: /* without a unit in the key */
        field.type = GW_T_NUMBER;
        field.flags = GW_MANY;
        field.dim = GW_RATIO;
        break;
    case GW_COLUMN_TEXT:
        field.type = GW_T_TEXT;
        break;
    case GW_COLUMN_SYMBOL:
        field.choices = choices_of(column->name);
        field.type = GW_T_WORD;
        if (!field.choices) field.word = yes_or_no;
        break;
    }
    return field;
}

static const char *basis_word(int basis) { return gw_basis_name((enum gw_basis)basis); }

static const struct gw_record *record_of(struct gw_arena *arena, const struct gw_table *table)
{
    static const struct gw_field id = F(gw_row, id, GW_T_TEXT), basis = F(gw_row, basis, GW_T_WORD, .word = basis_word),
                                 source = F(gw_row, source, GW_T_TEXT);
    struct gw_record *record = gw_alloc(arena, 1, sizeof *record);
    struct gw_field *fields = gw_alloc(arena, table->n_columns + 3, sizeof *fields);
    fields[0] = id;
    for (size_t c = 0; c < table->n_columns; c++) fields[c + 1] = column_field(&table->columns[c]);
    fields[table->n_columns + 1] = basis;
    fields[table->n_columns + 2] = source;
    *record = (struct gw_record){.name = table->name,
                                 .size = table->row_size,
                                 .fields = fields,
                                 .n = table->n_columns + 3,
                                 .help = table->title};
    return record;
}

static struct shown_table shown_table_of(struct gw_arena *arena, const struct gw_tables *tables,
                                         const struct gw_table *table)
{
    struct shown_table shown = {.name = table->name, .title = table->title};
    const struct gw_record *record = record_of(arena, table);
    shown.rows.items = gw_alloc(arena, table->n_rows + 1, sizeof *shown.rows.items);
    shown.rows.n = table->n_rows;
    for (size_t i = 0; i < table->n_rows; i++)
        shown.rows.items[i] = (struct gw_described){record, gw_table_row(tables, table, i)};
    return shown;
}

static void tables_page(struct gw_report *report, const struct gw_result *result)
{
    const struct shown_tables *shown = result->value;
    if (!shown->only) list_tables(report, shown->all);
    else one_table(report, shown->all, gw_table_find(shown->only), result->shown);
}

struct gw_result gw_result_tables(struct gw_arena *arena, const struct gw_tables *tables, const char *name,
                                  enum gw_units shown)
{
    size_t n;
    const struct gw_table *list = gw_table_list(&n);
    struct shown_tables *all = gw_alloc(arena, 1, sizeof *all);
    *all = (struct shown_tables){.all = tables, .only = name};
    all->tables.items = gw_alloc(arena, n + 1, sizeof *all->tables.items);
    for (size_t i = 0; i < n; i++)
        if (!name || strcmp(name, list[i].name) == 0)
            all->tables.items[all->tables.n++] = shown_table_of(arena, tables, &list[i]);
    return (struct gw_result){.shown = shown, .record = &TABLES_RECORD, .value = all, .page = tables_page};
}
