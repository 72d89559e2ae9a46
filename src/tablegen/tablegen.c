/* Build-time generator: tables/ *.yaml to typed constant structs (build/gen/tables_data.h and .c).
 *
 * tablegen OUTPUT_FOLDER units.yaml other.yaml ...
 * A malformed table stops the build with its place. Cells are converted to SI with the units of the first file. */
#include "cli/host.h"
#include "galeward/document.h"
#include "galeward/table.h"

#include <ctype.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MAX_TABLES = 200, MAX_UNITS = 400, MAX_COLUMNS = 24 };

struct column {
    const char *name, *type, *prefix, *unit_name, *member;
    enum gw_dim dim;
    const struct gw_unit *unit;
    bool key;
};

struct table {
    const struct gw_node *node, *rows;
    const char *name;
    struct column columns[MAX_COLUMNS];
    size_t n_columns;
};

struct generator {
    struct gw_arena arena;
    struct gw_diags diags;
    struct gw_unit units[MAX_UNITS];
    size_t n_units;
    struct table tables[MAX_TABLES];
    size_t n_tables;
    FILE *h, *c;
};

static void fault(struct generator *g, const struct gw_node *node, const char *what, const char *name)
{
    gw_diag_node(&g->diags, GW_ERROR, "table", name, node, "%s '%s'", what, name);
}

static const char *text_of(struct generator *g, const struct gw_node *node, const char *key, const char *otherwise)
{
    const struct gw_node *found = gw_node_get(node, key);
    if (found && found->kind == GW_SCALAR) return found->text;
    if (!otherwise) fault(g, node, "missing key", key);
    return otherwise ? otherwise : "";
}

static double number_of(struct generator *g, const struct gw_node *node)
{
    double value = 0;
    if (strcmp(node->text, "none") == 0) return NAN;
    if (gw_read_number(node->text, node->length, &value) != node->length) fault(g, node, "not a number:", node->text);
    return value;
}

static struct gw_unit_list unit_list(const struct generator *g) { return (struct gw_unit_list){g->units, g->n_units}; }

static void read_units(struct generator *g, const struct table *units)
{
    for (const struct gw_node *row = units->rows->first; row; row = row->next) {
        const struct gw_node *factor = gw_node_get(row, "factor"), *offset = gw_node_get(row, "offset");
        struct gw_unit unit = {.name = text_of(g, row, "unit", NULL),
                               .dim = gw_dim_by_key(text_of(g, row, "dim", NULL)),
                               .factor = factor ? number_of(g, factor) : 0,
                               .offset = offset ? number_of(g, offset) : 0};
        if (unit.dim == GW_DIM_COUNT || unit.factor == 0) fault(g, row, "bad unit", unit.name);
        if (g->n_units < MAX_UNITS) g->units[g->n_units++] = unit;
    }
}

static void read_column(struct generator *g, struct table *t, const struct gw_node *node)
{
    struct column *col = &t->columns[t->n_columns++];
    *col = (struct column){.name = text_of(g, node, "name", NULL),
                           .type = text_of(g, node, "type", NULL),
                           .prefix = text_of(g, node, "prefix", ""),
                           .unit_name = text_of(g, node, "unit", ""),
                           .dim = gw_dim_by_key(text_of(g, node, "dim", "ratio"))};
    if (col->dim == GW_DIM_COUNT) fault(g, node, "unknown dimension in column", col->name);
    col->key = strcmp(text_of(g, node, "key", "no"), "yes") == 0;
    col->member = col->name;
    if (strcmp(col->type, "number") == 0 && *col->unit_name) {
        col->unit = gw_unit_find(unit_list(g), col->dim, col->unit_name, strlen(col->unit_name));
        if (!col->unit) fault(g, node, "unknown unit in column", col->name);
        const char *suffix = gw_dim_info(col->dim)->suffix;
        if (*suffix) col->member = gw_format(&g->arena, "%s_%s", col->name, suffix);
    } else if (!strstr(" number numbers text symbol ", gw_format(&g->arena, " %s ", col->type))) {
        fault(g, node, "unknown column type", col->type);
    }
}

static void read_table(struct generator *g, const struct gw_node *node)
{
    struct table *t = &g->tables[g->n_tables++];
    t->node = node;
    t->name = text_of(g, node, "table", NULL);
    text_of(g, node, "title", NULL);
    t->rows = gw_node_get(node, "rows");
    const struct gw_node *columns = gw_node_get(node, "columns");
    if (!t->rows || !t->rows->count || !columns || columns->count > MAX_COLUMNS) {
        fault(g, node, "no rows or columns in", t->name);
        exit(2);
    }
    for (const struct gw_node *c = columns->first; c; c = c->next) read_column(g, t, c);
}

static const struct column *find_column(const struct table *t, const char *key)
{
    for (size_t i = 0; i < t->n_columns; i++)
        if (strcmp(t->columns[i].name, key) == 0) return &t->columns[i];
    return NULL;
}

/* One value, or a list of numbers. */
static void check_kind(struct generator *g, const struct column *col, const struct gw_node *cell)
{
    if (!cell) return;
    if (strcmp(col->type, "numbers") != 0) {
        if (cell->kind != GW_SCALAR) fault(g, cell, "not a single value:", col->name);
        return;
    }
    if (cell->kind != GW_SEQUENCE || !cell->first) fault(g, cell, "not a list of numbers:", col->name);
    for (const struct gw_node *item = cell->first; item; item = item->next) {
        if (item->kind != GW_SCALAR) fault(g, item, "not a number in", col->name);
        else if (isnan(number_of(g, item))) fault(g, item, "a list has no absent numbers:", col->name);
    }
}

static void check_row(struct generator *g, const struct table *t, const struct gw_node *row)
{
    text_of(g, row, "id", NULL);
    const char *basis = text_of(g, row, "basis", text_of(g, t->node, "basis", ""));
    if (!strstr(" published derived second_hand memory practice ", gw_format(&g->arena, " %s ", basis)))
        fault(g, row, "unknown basis", basis);
    if (!*text_of(g, row, "source", text_of(g, t->node, "source", ""))) fault(g, row, "no source in table", t->name);
    for (const struct gw_node *cell = row->first; cell; cell = cell->next) {
        bool known = find_column(t, cell->key) || strstr(" id basis source ", gw_format(&g->arena, " %s ", cell->key));
        if (!known) fault(g, cell, "no such column:", cell->key);
        for (const struct gw_node *other = t->rows->first; other != row && strcmp(cell->key, "id") == 0;
             other = other->next)
            if (strcmp(text_of(g, other, "id", ""), cell->text) == 0) fault(g, cell, "row id used twice:", cell->text);
    }
    for (size_t i = 0; i < t->n_columns; i++)
        if (!gw_node_get(row, t->columns[i].name) && strcmp(t->columns[i].name, "offset") != 0)
            fault(g, row, "missing cell", t->columns[i].name);
    for (size_t i = 0; i < t->n_columns; i++) check_kind(g, &t->columns[i], gw_node_get(row, t->columns[i].name));
}

static const char *symbol(struct generator *g, const char *prefix, const char *text)
{
    char *name = gw_format(&g->arena, "%s%s", prefix, text);
    for (char *c = name; *c; c++) *c = isalnum((unsigned char)*c) ? (char)toupper((unsigned char)*c) : '_';
    return name;
}

static void write_quoted(FILE *out, const char *text)
{
    fputc('"', out);
    for (; *text; text++) {
        if (*text == '"' || *text == '\\') fputc('\\', out);
        fputc(*text, out);
    }
    fputc('"', out);
}

static void write_row_type(struct generator *g, const struct table *t)
{
    fprintf(g->h, "struct gw_%s {\n    struct gw_row row;\n", t->name);
    for (size_t i = 0; i < t->n_columns; i++) {
        const struct column *col = &t->columns[i];
        const char *type = strcmp(col->type, "number") == 0    ? "double "
                           : strcmp(col->type, "numbers") == 0 ? "const double *"
                           : strcmp(col->type, "text") == 0    ? "const char *"
                                                               : "int ";
        fprintf(g->h, "    %s%s;\n", type, col->member);
        if (strcmp(col->type, "numbers") == 0) fprintf(g->h, "    size_t n_%s;\n", col->member);
    }
    fprintf(g->h, "};\nenum gw_rows_of_%s {\n", t->name);
    for (const struct gw_node *row = t->rows->first; row; row = row->next)
        fprintf(g->h, "    GW_ROW_%s_%s,\n", symbol(g, "", t->name), symbol(g, "", text_of(g, row, "id", "")));
    fprintf(g->h, "    GW_N_%s\n};\n\n", symbol(g, "", t->name));
}

static void write_header(struct generator *g)
{
    fputs("/* Generated from tables/ by src/tablegen; do not edit. */\n#ifndef GALEWARD_TABLES_DATA_H\n"
          "#define GALEWARD_TABLES_DATA_H\n\n#include \"galeward/table.h\"\n\n",
          g->h);
    for (size_t i = 0; i < g->n_tables; i++) write_row_type(g, &g->tables[i]);
    fputs("struct gw_tables {\n", g->h);
    size_t rows = 0;
    for (size_t i = 0; i < g->n_tables; rows += g->tables[i++].rows->count)
        fprintf(g->h, "    struct gw_%s %s[GW_N_%s];\n", g->tables[i].name, g->tables[i].name,
                symbol(g, "", g->tables[i].name));
    fprintf(g->h,
            "};\n\nenum { GW_TABLE_COUNT = %zu, GW_ROW_COUNT = %zu };\nextern const struct gw_tables gw_tables_data;\n"
            "extern const struct gw_table gw_table_infos[GW_TABLE_COUNT];\n"
            "extern const struct gw_unit gw_units_data[GW_N_UNIT_SPELLINGS];\n\n#endif\n",
            g->n_tables, rows);
}

static const char *list_name(struct generator *g, const struct table *t, const struct column *col,
                             const struct gw_node *row)
{
    return symbol(g, "", gw_format(&g->arena, "%s_%s_%s", t->name, text_of(g, row, "id", ""), col->name));
}

/* A list of numbers stands outside its row, which points to it. */
static void write_lists(struct generator *g, const struct table *t)
{
    for (size_t i = 0; i < t->n_columns; i++) {
        const struct column *col = &t->columns[i];
        if (strcmp(col->type, "numbers") != 0) continue;
        for (const struct gw_node *row = t->rows->first; row; row = row->next) {
            fprintf(g->c, "static const double %s[] = {", list_name(g, t, col, row));
            for (const struct gw_node *cell = gw_node_get(row, col->name)->first; cell; cell = cell->next)
                fprintf(g->c, "%.17g, ", number_of(g, cell));
            fputs("};\n", g->c);
        }
    }
}

static void write_cell(struct generator *g, const struct column *col, const struct gw_node *cell)
{
    if (strcmp(col->type, "text") == 0) {
        write_quoted(g->c, cell ? cell->text : "");
    } else if (strcmp(col->type, "symbol") == 0) {
        fputs(symbol(g, col->prefix, cell->text), g->c);
    } else {
        double value = cell ? number_of(g, cell) : 0;
        if (isnan(value)) {
            fputs("NAN", g->c);
        } else {
            if (col->unit) value = value * col->unit->factor + col->unit->offset;
            fprintf(g->c, "%.17g", value);
        }
    }
    fputs(", ", g->c);
}

/* `index`: of the table's first row among all rows. */
static void write_rows(struct generator *g, const struct table *t, size_t index)
{
    fprintf(g->c, "    .%s = {\n", t->name);
    for (const struct gw_node *row = t->rows->first; row; row = row->next) {
        const char *basis = text_of(g, row, "basis", text_of(g, t->node, "basis", ""));
        fprintf(g->c, "        {{\"%s\", ", t->name);
        write_quoted(g->c, text_of(g, row, "id", ""));
        fprintf(g->c, ", %s, %zu, ", symbol(g, "GW_", basis), index++);
        write_quoted(g->c, text_of(g, row, "source", text_of(g, t->node, "source", "")));
        fputs("}, ", g->c);
        for (size_t i = 0; i < t->n_columns; i++) {
            const struct column *col = &t->columns[i];
            const struct gw_node *cell = gw_node_get(row, col->name);
            if (strcmp(col->type, "numbers") == 0) fprintf(g->c, "%s, %zu, ", list_name(g, t, col, row), cell->count);
            else write_cell(g, col, cell);
        }
        fputs("},\n", g->c);
    }
    fputs("    },\n", g->c);
}

static void write_columns(struct generator *g, const struct table *t)
{
    fprintf(g->c, "static const struct gw_column %s_columns[] = {\n", t->name);
    for (size_t i = 0; i < t->n_columns; i++) {
        const struct column *col = &t->columns[i];
        fprintf(g->c, "    {\"%s\", %s, (enum gw_dim)%d, ", col->name, symbol(g, "GW_COLUMN_", col->type),
                (int)col->dim);
        write_quoted(g->c, col->unit_name);
        fprintf(g->c, ", offsetof(struct gw_%s, %s), %s},\n", t->name, col->member, col->key ? "true" : "false");
    }
    fputs("};\n", g->c);
}

static void write_infos(struct generator *g)
{
    for (size_t i = 0; i < g->n_tables; i++) write_columns(g, &g->tables[i]);
    fputs("const struct gw_table gw_table_infos[GW_TABLE_COUNT] = {\n", g->c);
    size_t first = 0;
    for (size_t i = 0; i < g->n_tables; i++) {
        const struct table *t = &g->tables[i];
        fprintf(g->c, "    {\"%s\", ", t->name);
        write_quoted(g->c, text_of(g, t->node, "title", ""));
        fprintf(g->c, ", %s_columns, %zu, GW_N_%s, sizeof(struct gw_%s), offsetof(struct gw_tables, %s), %zu},\n",
                t->name, t->n_columns, symbol(g, "", t->name), t->name, t->name, first);
        first += t->rows->count;
    }
    fputs("};\nconst struct gw_unit gw_units_data[GW_N_UNIT_SPELLINGS] = {\n", g->c);
    for (size_t i = 0; i < g->n_units; i++) {
        fputs("    {", g->c);
        write_quoted(g->c, g->units[i].name);
        fprintf(g->c, ", (enum gw_dim)%d, %.17g, %.17g},\n", (int)g->units[i].dim, g->units[i].factor,
                g->units[i].offset);
    }
    fputs("};\n", g->c);
}

static void write_source(struct generator *g)
{
    fputs("/* Generated from tables/ by src/tablegen; do not edit. */\n#include \"galeward/model.h\"\n"
          "#include \"tables_data.h\"\n\n#include <math.h>\n#include <stddef.h>\n\n",
          g->c);
    for (size_t i = 0; i < g->n_tables; i++) write_lists(g, &g->tables[i]);
    fputs("const struct gw_tables gw_tables_data = {\n", g->c);
    size_t index = 0;
    for (size_t i = 0; i < g->n_tables; index += g->tables[i++].rows->count) write_rows(g, &g->tables[i], index);
    fputs("};\n\n", g->c);
    write_infos(g);
}

static void read_file(struct generator *g, const char *path, bool is_units)
{
    const struct gw_source *source = gw_source_read(&g->arena, path, &g->diags);
    const struct gw_node *root = source ? gw_yaml_read(&g->arena, source, &g->diags) : NULL;
    const struct gw_node *tables = gw_node_get(root, "tables");
    if (!tables) {
        if (root) fault(g, root, "missing key", "tables");
        return;
    }
    for (const struct gw_node *t = tables->first; t && g->n_tables < MAX_TABLES; t = t->next) {
        read_table(g, t);
        const struct table *read = &g->tables[g->n_tables - 1];
        for (const struct gw_node *row = read->rows->first; row; row = row->next) check_row(g, read, row);
    }
    if (is_units) read_units(g, &g->tables[0]);
}

static FILE *open_output(struct generator *g, const char *folder, const char *name)
{
    FILE *file = fopen(gw_format(&g->arena, "%s/%s", folder, name), "w");
    if (!file) perror(name);
    return file;
}

static int report(struct generator *g)
{
    struct gw_text text;
    gw_text_init(&text, &g->arena);
    for (size_t i = 0; i < g->diags.n; i++) gw_diag_print(&text, &g->diags.items[i]);
    fputs(text.at, stderr);
    return g->diags.errors ? 1 : 0;
}

int main(int argc, char **argv)
{
    static struct generator g;
    if (argc < 3) return 2;
    gw_arena_init(&g.arena, gw_system_host());
    gw_diags_init(&g.diags, &g.arena);
    for (int i = 2; i < argc; i++) read_file(&g, argv[i], i == 2);
    if (report(&g)) return 1;
    g.h = open_output(&g, argv[1], "tables_data.h");
    g.c = open_output(&g, argv[1], "tables_data.c");
    if (!g.h || !g.c) return 1;
    write_header(&g);
    write_source(&g);
    int status = report(&g);
    if (fclose(g.h) | fclose(g.c)) status = 1;
    gw_arena_release(&g.arena);
    return status;
}
