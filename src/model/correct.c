/* A project's corrections to the program's tables: a patched copy, each listed in every report. */
#include "model_internal.h"

#include <string.h>

static const struct gw_column *find_column(const struct gw_table *table, const char *name)
{
    for (size_t i = 0; i < table->n_columns; i++)
        if (strcmp(table->columns[i].name, name) == 0) return &table->columns[i];
    return NULL;
}

static struct gw_row *find_row(struct gw_tables *tables, const struct gw_table *table, const char *id)
{
    for (size_t i = 0; i < table->n_rows; i++) {
        size_t offset = table->offset + i * table->row_size;
        struct gw_row *row = (struct gw_row *)(void *)((char *)tables + offset);
        if (strcmp(row->id, id) == 0) return row;
    }
    return NULL;
}

static void fault(struct gw_model *model, const struct gw_correction *c, const char *key, const char *what,
                  const char *name, const char *question)
{
    const struct gw_node *at = gw_node_get(c->node, key);
    gw_diag_node(model->diags, GW_ERROR, "bad_value", key, at ? at : c->node, "%s '%s'%s%s", what, name, question,
                 *question ? "" : "; see 'galeward tables'");
}

static void no_table(struct gw_model *model, const struct gw_correction *c)
{
    size_t n;
    struct gw_nearest nearest;
    const struct gw_table *tables = gw_table_list(&n);
    gw_nearest_start(&nearest, c->table);
    for (size_t i = 0; i < n; i++) gw_nearest_offer(&nearest, tables[i].name);
    fault(model, c, "table", "there is no table", c->table, gw_nearest_question(model->arena, &nearest));
}

static void no_row(struct gw_model *model, const struct gw_correction *c, const struct gw_table *table)
{
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, c->row);
    for (size_t i = 0; i < table->n_rows; i++)
        gw_nearest_offer(&nearest, gw_table_row(gw_tables_standard(), table, i)->id);
    fault(model, c, "row", gw_format(model->arena, "table %s has no row", table->name), c->row,
          gw_nearest_question(model->arena, &nearest));
}

static void no_column(struct gw_model *model, const struct gw_correction *c, const struct gw_table *table)
{
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, c->column);
    for (size_t i = 0; i < table->n_columns; i++)
        if (table->columns[i].type == GW_COLUMN_NUMBER) gw_nearest_offer(&nearest, table->columns[i].name);
    fault(model, c, "column", gw_format(model->arena, "table %s has no column of numbers", table->name), c->column,
          gw_nearest_question(model->arena, &nearest));
}

static void bad_number(struct gw_model *model, const struct gw_correction *c, const struct gw_column *column)
{
    const struct gw_node *at = gw_node_get(c->node, "value");
    const char *wanted = *column->unit ? gw_format(model->arena, " in %s, or with its unit, such as %s,", column->unit,
                                                   gw_dim_info(column->dim)->example)
                                       : ",";
    gw_diag_node(model->diags, GW_ERROR, "bad_value", "value", at ? at : c->node, "'value' wants a number%s not '%s'",
                 wanted, c->value);
}

/* A table with lists was computed as a whole: a number beside them says how they are read. */
static bool is_computed(const struct gw_table *table)
{
    for (size_t i = 0; i < table->n_columns; i++)
        if (table->columns[i].type == GW_COLUMN_NUMBERS) return true;
    return false;
}

static void computed(struct gw_model *model, const struct gw_correction *c)
{
    const struct gw_node *at = gw_node_get(c->node, "table");
    gw_diag_node(model->diags, GW_ERROR, "bad_value", "table", at ? at : c->node,
                 "table '%s' holds lists of numbers computed together; none of its cells can be corrected", c->table);
}

/* In the column's own unit, or with a unit of its dimension. */
static bool read_value(const struct gw_correction *c, const struct gw_column *column, double *value)
{
    struct gw_unit_list units = gw_units_standard();
    const struct gw_unit *own = gw_unit_find(units, column->dim, column->unit, strlen(column->unit));
    size_t length = strlen(c->value), at;
    if (gw_read_number(c->value, length, value) == length) {
        if (own) *value = *value * own->factor + own->offset;
        return isfinite(*value);
    }
    return gw_quantity_read(units, column->dim, GW_UNITS_NONE, c->value, length, value, &at) == GW_QUANTITY_OK;
}

static void apply(struct gw_model *model, struct gw_tables *tables, const struct gw_correction *c)
{
    double value;
    const struct gw_table *table = gw_table_find(c->table);
    if (!table) {
        no_table(model, c);
        return;
    }
    struct gw_row *row = find_row(tables, table, c->row);
    const struct gw_column *column = find_column(table, c->column);
    if (is_computed(table)) {
        computed(model, c);
    } else if (!row) {
        no_row(model, c, table);
    } else if (!column || column->type != GW_COLUMN_NUMBER) {
        no_column(model, c, table);
    } else if (!read_value(c, column, &value)) {
        bad_number(model, c, column);
    } else {
        *(double *)(void *)((char *)row + column->offset) = value;
        row->source = gw_format(model->arena, "corrected to %s by %s: %s", c->value, c->by, c->reason);
        gw_assume(model->arena, &model->assumptions, "correction",
                  GW_SAY(model->arena, "table {}, row {}, {} = {}, by {}: {}", gw_of_text(c->table), gw_of_text(c->row),
                         gw_of_text(c->column), gw_of_text(c->value), gw_of_text(c->by), gw_of_text(c->reason)));
    }
}

static bool is_whole(const struct gw_correction *c)
{
    return c->table && c->row && c->column && c->value && c->reason && c->by;
}

void gw_correct_tables(struct gw_model *model)
{
    const struct gw_project *p = &model->project;
    if (!p->assume.n) return;
    struct gw_tables *tables = gw_alloc(model->arena, 1, gw_tables_size());
    memcpy(tables, model->tables, gw_tables_size());
    for (size_t i = 0; i < p->assume.n; i++)
        if (is_whole(&p->assume.items[i])) apply(model, tables, &p->assume.items[i]);
    model->tables = tables;
}
