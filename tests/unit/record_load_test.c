/* The record loader: what it takes, refuses and assumes; the rows that a result rests on. */
#include "support.h"

static const char GOOD_CASE[] = "{edition: asce7-16, basic_wind_speed: 115 mph, exposure: C, mean_roof_height: 40 ft, "
                                "least_width: 80 ft, enclosure: enclosed, effective_area: 50 ft2, zone: 5}";

static bool load_case(struct world *w, const char *yaml, struct gw_assumptions *assumptions, struct gw_wind_case *out)
{
    struct gw_load load = {
        .arena = &w->arena, .diags = &w->diags, .assumptions = assumptions, .units = gw_units_standard()};
    const struct gw_node *node = node_of(w, yaml);
    assert_non_null(node);
    return gw_record_load(&load, &gw_wind_case_record, node, "case", out);
}

static bool assumed(const struct gw_assumptions *list, const char *text)
{
    for (size_t i = 0; i < list->n; i++)
        if (strcmp(words(&list->items[i].text), text) == 0) return true;
    return false;
}

static void record_loads(void **state)
{
    struct world *w = *state;
    struct gw_assumptions assumptions = {0};
    struct gw_wind_case in;
    assert_true(load_case(w, GOOD_CASE, &assumptions, &in));
    assert_int_equal(in.edition, GW_ASCE7_16);
    assert_near(in.mean_roof_height, 12.192, 1e-12);
    assert_false(gw_given(in.kzt));
    assert_null(in.topography);
    assert_near(in.roof_slope, 0, 0);
    assert_int_equal(in.alternative_60_90, GW_NO);
    assert_true(assumed(&assumptions, "roof_slope: 0 deg (default)"));
}

struct record_fault {
    const char *yaml, *code, *key, *part; /* part of the message */
};

static const struct record_fault RECORD_FAULTS[] = {
    {"{editon: asce7-16}", "unknown_key", "editon", "did you mean 'edition'?"},
    {"{nothing_like_it: 1}", "unknown_key", "nothing_like_it", "is not a key of"},
    {"{edition: asce7-17}", "bad_value", "edition", "asce7-10 | asce7-16 | asce7-22"},
    {"{basic_wind_speed: 115}", "no_unit", "basic_wind_speed", "has no unit"},
    {"{basic_wind_speed: 115 psf}", "wrong_dimension", "basic_wind_speed", "wants a speed"},
    {"{basic_wind_speed: fast}", "wrong_type", "basic_wind_speed", "not 'fast'"},
    {"{basic_wind_speed: [115 mph]}", "wrong_type", "basic_wind_speed", "not a list"},
    {"{basic_wind_speed: 115 mhp}", "unknown_unit", "basic_wind_speed", "'mhp' is not a unit"},
    {"{basic_wind_speed: 900 mph}", "bad_value", "basic_wind_speed", "must lie between"},
    {"{basic_wind_speed: }", "wrong_type", "basic_wind_speed", "not nothing"},
    {"{zone: 4.5}", "wrong_type", "zone", "whole number"},
    {"{zone: 6}", "bad_value", "zone", "must lie between"},
    {"{alternative_60_90: maybe}", "wrong_type", "alternative_60_90", "true or false"},
    {"{topography: steep}", "wrong_type", "", "wants a mapping"},
};

static void record_faults(void **state)
{
    struct world *w = *state;
    for (size_t i = 0; i < sizeof RECORD_FAULTS / sizeof *RECORD_FAULTS; i++) {
        const struct record_fault *f = &RECORD_FAULTS[i];
        struct gw_wind_case in;
        w->diags.n = w->diags.errors = 0;
        assert_false(load_case(w, f->yaml, NULL, &in));
        const struct gw_diag *d = &w->diags.items[0];
        if (strcmp(d->code, f->code) != 0 || !strstr(d->message, f->part))
            print_error("%s: %s %s\n", f->yaml, d->code, d->message);
        assert_string_equal(d->code, f->code);
        assert_string_equal(d->key, f->key);
        assert_non_null(strstr(d->message, f->part));
    }
}

static void record_names_all_that_is_missing(void **state)
{
    struct world *w = *state;
    struct gw_wind_case in;
    assert_false(load_case(w, "{roof_slope: 1 deg}", NULL, &in));
    static const char *const required[] = {"edition",     "basic_wind_speed", "exposure", "mean_roof_height",
                                           "least_width", "enclosure",        "zone"};
    assert_int_equal(w->diags.errors, sizeof required / sizeof *required);
    for (size_t i = 0; i < w->diags.n; i++) {
        assert_string_equal(w->diags.items[i].code, "missing");
        assert_string_equal(w->diags.items[i].key, required[i]);
    }
}

static void record_warns_of_the_implausible(void **state)
{
    struct world *w = *state;
    struct gw_wind_case in;
    load_case(w, "{basic_wind_speed: 300 mph}", NULL, &in);
    assert_int_equal(w->diags.items[0].severity, GW_WARNING);
    assert_string_equal(w->diags.items[0].code, "implausible");
    assert_non_null(strstr(w->diags.items[0].message, "usual values"));
}

/* What was seen in another's reading of a source is neither published nor recalled, and stands between the two. */
static void bases_in_their_order(void **state)
{
    (void)state;
    static const struct {
        const char *table, *id, *basis;
    } rows[] = {{"debris_zone", "nominal-1", "published"},        /* a reproduced table */
                {"code_glass_edition", "ibc-2021", "published"},  /* the code's own text */
                {"glass_type_factor", "annealed", "derived"},     /* of the published exponent 16 */
                {"wind_terrain", "asce7-22-C", "second_hand"},    /* an open program that cites the table */
                {"thermal_expansion", "aluminum", "second_hand"}, /* the same, and corrected by it */
                {"wind_terrain", "asce7-22-B", "memory"},         /* not found */
                {"wind_roof_gcp", "asce7-16-low-2", "memory"}};   /* contested */
    enum gw_basis last = GW_PUBLISHED;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const struct gw_table *table = gw_table_find(rows[i].table);
        const struct gw_row *row = NULL;
        for (size_t k = 0; k < table->n_rows && !row; k++) {
            const struct gw_row *one = gw_table_row(gw_tables_standard(), table, k);
            if (strcmp(one->id, rows[i].id) == 0) row = one;
        }
        assert_non_null(row);
        assert_string_equal(gw_basis_name(row->basis), rows[i].basis);
        assert_true(row->basis >= last);
        last = row->basis;
    }
}

/* Every row of every table is found by its index, and the set loses none. */
static void used_rows_are_exact(void **state)
{
    (void)state;
    size_t n_tables;
    unsigned count = 0, seen = 0;
    const struct gw_table *list = gw_table_list(&n_tables);
    struct gw_used used = {.words = {0}}, every_third = used;
    assert_int_equal(gw_used_weakest(&used), GW_BASIS_NONE);
    for (size_t t = 0; t < n_tables; t++)
        for (size_t i = 0; i < list[t].n_rows; i++, count++) {
            const struct gw_row *row = gw_table_row(gw_tables_standard(), &list[t], i);
            assert_int_equal(row->index, count);
            assert_ptr_equal(gw_table_row_at(gw_tables_standard(), count), row);
            gw_used_add(count % 3 ? &used : &every_third, row);
            gw_used_add(count % 3 ? &used : &every_third, row);
        }
    for (unsigned i = 0; gw_used_next(&every_third, &i); i++, seen++) assert_int_equal(i, 3 * seen);
    assert_int_equal(seen, (count + 2) / 3);
    gw_used_merge(&used, &every_third);
    for (unsigned i = seen = 0; gw_used_next(&used, &i); i++, seen++) assert_int_equal(i, seen);
    assert_int_equal(seen, count);
}

static void the_weakest_of_used_rows(void **state)
{
    (void)state;
    const struct gw_row *best = NULL, *worst = NULL;
    struct gw_used used = {.words = {0}};
    size_t n_tables;
    const struct gw_table *list = gw_table_list(&n_tables);
    for (size_t t = 0; t < n_tables; t++) {
        const struct gw_row *row = gw_table_row(gw_tables_standard(), &list[t], 0);
        if (!best || row->basis < best->basis) best = row;
        if (!worst || row->basis > worst->basis) worst = row;
    }
    assert_true(best->basis < worst->basis);
    gw_used_add(&used, best);
    assert_int_equal(gw_used_weakest(&used), best->basis);
    gw_used_add(&used, worst);
    assert_int_equal(gw_used_weakest(&used), worst->basis);
    gw_used_remove(&used, worst);
    assert_int_equal(gw_used_weakest(&used), best->basis);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bases_in_their_order),
        cmocka_unit_test(used_rows_are_exact),
        cmocka_unit_test(the_weakest_of_used_rows),
        WORLD_TEST(record_loads),
        WORLD_TEST(record_faults),
        WORLD_TEST(record_names_all_that_is_missing),
        WORLD_TEST(record_warns_of_the_implausible),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
