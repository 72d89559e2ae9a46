/* Sheets: any record from a CSV file and a map of its columns. The record here is of no file: a reading on the wall. */
#include "support.h"

#include "base/fields.h"

#include "galeward/sheet.h"

struct reading {
    const char *wall, *item;
    int column;
    double value;
    const struct gw_node *node;
};
static const struct gw_field READING[] = {
    F(reading, wall, GW_T_TEXT, .flags = GW_REQUIRED, .help = "its wall"),
    F(reading, column, GW_T_INTEGER, LIMITS(1, 500), .help = "from the left"),
    F(reading, item, GW_T_TEXT, .flags = GW_REQUIRED, .help = "what was measured"),
    NUM(reading, value, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 1), .help = "what it measures"),
    PLACE(reading),
};
static const struct gw_record READING_RECORD = RECORD("reading", reading, READING);

static bool read_sheet(struct world *w, struct gw_sheet_rows *rows, const char *csv, const char *columns,
                       enum gw_units preset)
{
    struct gw_load load = {.arena = &w->arena, .diags = &w->diags, .units = gw_units_standard(), .preset = preset};
    struct gw_sheet_layout layout = {&READING_RECORD, "readings file", "readings", NULL, 0};
    layout.columns = gw_sheet_columns(&w->arena, columns ? node_of(w, columns) : NULL, &layout.n_columns);
    return gw_sheet_read(rows, &layout, gw_source_from(&w->arena, "readings.csv", csv, strlen(csv)), &load);
}

static const struct reading *at(const struct gw_sheet_rows *rows, size_t i)
{
    assert_true(i < rows->n);
    return (const struct reading *)rows->items + i;
}

static void said(const struct world *w, size_t i, unsigned line, const char *message)
{
    assert_true(i < w->diags.n);
    assert_string_equal(w->diags.items[i].message, message);
    assert_int_equal(w->diags.items[i].line, line);
}

static void keys_head_the_columns(void **state)
{
    struct world *w = *state;
    struct gw_sheet_rows rows;
    assert_true(read_sheet(w, &rows, "item,value,wall,remark\nbite,9.5 mm,east,dry\n\nstandoff,3/8 in,west,\n", NULL,
                           GW_UNITS_NONE));
    assert_int_equal(rows.n, 2);
    assert_string_equal(at(&rows, 0)->wall, "east");
    assert_string_equal(at(&rows, 0)->item, "bite");
    assert_near(at(&rows, 0)->value, 0.0095, 1e-12);
    assert_int_equal(at(&rows, 0)->column, GW_NO_INTEGER);
    assert_near(at(&rows, 1)->value, 0.375 * 0.0254, 1e-12);
    assert_int_equal(rows.rows[0].node->line, 2);
    assert_int_equal(rows.rows[1].node->line, 4);
    assert_ptr_equal(at(&rows, 1)->node, rows.rows[1].node);
}

static void a_map_names_other_columns(void **state)
{
    struct world *w = *state;
    struct gw_sheet_rows rows;
    /* The header 'value' is no longer the value's once the map says so. */
    assert_true(read_sheet(w, &rows, "Elevation;What;Measured;value\neast;bite;7;not a number\n",
                           "{wall: Elevation, item: What, value: Measured}", GW_SI));
    assert_int_equal(rows.n, 1);
    assert_string_equal(at(&rows, 0)->item, "bite");
    assert_near(at(&rows, 0)->value, 0.007, 1e-12);
}

static void a_header_names_the_unit_of_bare_numbers(void **state)
{
    struct world *w = *state;
    struct gw_sheet_rows rows;
    assert_true(read_sheet(
        w, &rows, "Readings of May\nWALL,Item,Value (mm),Column\neast,bite,7,2\nwest,bite,3/8 in,\nTotal,,,2\n", NULL,
        GW_US));
    assert_int_equal(rows.n, 2);
    assert_near(at(&rows, 0)->value, 0.007, 1e-12);
    assert_near(at(&rows, 1)->value, 0.375 * 0.0254, 1e-12);
    assert_int_equal(at(&rows, 1)->column, GW_NO_INTEGER);
    assert_int_equal(w->diags.n, 3);
    said(w, 0, 2, "the columns are headed in line 2; what stands above is not read");
    said(w, 1, 5, "a row of totals: not read");
    said(w, 2, 2, "bare numbers are in the unit of their header: 'Value (mm)'");
}

static void lines_may_end_with_a_lone_cr(void **state)
{
    struct world *w = *state;
    struct gw_sheet_rows rows;
    assert_false(read_sheet(w, &rows, "wall\titem\tvalue\reast\tbite\t7 mm\rwest\tbite\tnone\r", NULL, GW_SI));
    assert_int_equal(rows.n, 2);
    said(w, 0, 3, "'value' wants a length such as 6 mm, not 'none'");
    assert_int_equal(w->diags.items[0].column, 11);
}

static void other_rows_go_on(void **state)
{
    struct world *w = *state;
    struct gw_sheet_rows rows;
    assert_false(read_sheet(
        w, &rows, "wall,column,item,value\neast,0,bite,7 mm\neast,2,bite,7\neast,3,bite,7 mm\n,4,bite,7 psf\n", NULL,
        GW_UNITS_NONE));
    assert_int_equal(rows.n, 4);
    assert_int_equal(w->diags.errors, 4);
    said(w, 0, 2, "'column' is 0; it must lie between 1 and 500");
    said(w, 1, 3, "'7' has no unit: write one (1/4 in), or 'units: us' or 'units: si' at the top");
    assert_int_equal(w->diags.items[2].line, 5);
    assert_int_equal(w->diags.items[3].line, 5);
    const bool good[] = {false, false, true, false};
    for (size_t i = 0; i < rows.n; i++) assert_int_equal(rows.rows[i].good, good[i]);
    assert_int_equal(at(&rows, 2)->column, 3);
}

static void needed_columns_are_missed_once(void **state)
{
    struct world *w = *state;
    struct gw_sheet_rows rows;
    assert_false(read_sheet(w, &rows, "wall,item,values\neast,bite,7 mm\nwest,bite,8 mm\n", NULL, GW_SI));
    assert_int_equal(rows.n, 0);
    assert_int_equal(w->diags.n, 1);
    said(w, 0, 1,
         "no column is headed 'value'; name the one in the project: readings: {file: ..., columns: {value: values}}");
}

static void a_header_that_names_nothing(void **state)
{
    struct world *w = *state;
    struct gw_sheet_rows rows;
    assert_false(read_sheet(w, &rows, "east,bite,7 mm\n", NULL, GW_SI));
    assert_int_equal(rows.n, 0);
    said(w, 0, 1,
         "the first line names no columns: it must head them wall, item, value and so on, or as 'readings: columns' "
         "maps them");
}

static void a_mapped_header_must_be_there(void **state)
{
    struct world *w = *state;
    struct gw_sheet_rows rows;
    assert_false(read_sheet(w, &rows, "wall,item,Measured\neast,bite,7 mm\n", "{value: Measurd}", GW_SI));
    assert_int_equal(rows.n, 0);
    assert_int_equal(w->diags.n, 1);
    said(w, 0, 1, "the readings file has no column headed 'Measurd'; did you mean 'Measured'?");
    assert_string_equal(w->diags.items[0].source->name, "test"); /* at the map, not in the sheet */
}

static void columns_without_a_place_are_blamed_in_the_sheet(void **state)
{
    struct world *w = *state;
    const char *csv = "wall,item,value\neast,bite,7 mm\n";
    struct gw_load load = {.arena = &w->arena, .diags = &w->diags, .units = gw_units_standard(), .preset = GW_SI};
    const struct gw_sheet_column columns[] = {{"value", "Reading", NULL}};
    const struct gw_sheet_layout layout = {&READING_RECORD, "readings file", "readings", columns, COUNT(columns)};
    struct gw_sheet_rows rows;
    assert_false(gw_sheet_read(&rows, &layout, gw_source_from(&w->arena, "readings.csv", csv, strlen(csv)), &load));
    said(w, 0, 1, "the readings file has no column headed 'Reading'");
    assert_string_equal(w->diags.items[0].source->name, "readings.csv");
}

static void a_sheet_of_a_header_alone(void **state)
{
    struct world *w = *state;
    struct gw_sheet_rows rows;
    assert_false(read_sheet(w, &rows, "wall,item,value\n", NULL, GW_SI));
    assert_int_equal(rows.n, 0);
    said(w, 0, 1, "the readings file has no readings below its header");
    assert_false(read_sheet(w, &rows, "", NULL, GW_SI));
    assert_false(read_sheet(w, &rows, "wall,item,value\neast,\xFF,7 mm\n", NULL, GW_SI));
    assert_int_equal(rows.n, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(keys_head_the_columns),
        WORLD_TEST(a_map_names_other_columns),
        WORLD_TEST(a_header_names_the_unit_of_bare_numbers),
        WORLD_TEST(lines_may_end_with_a_lone_cr),
        WORLD_TEST(other_rows_go_on),
        WORLD_TEST(needed_columns_are_missed_once),
        WORLD_TEST(a_header_that_names_nothing),
        WORLD_TEST(a_mapped_header_must_be_there),
        WORLD_TEST(columns_without_a_place_are_blamed_in_the_sheet),
        WORLD_TEST(a_sheet_of_a_header_alone),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
