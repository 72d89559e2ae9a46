/* Water, weeps and proof tests through calc in both systems of units; no key of any kind is without help. */
#include "weather_support.h"

/* The same cases in pounds and in pascals. */
static void units_do_not_matter(void **state)
{
    struct world *w = *state;
    static const char *const pairs[][3] = {
        {"water", "{positive_pressure: 40 psf, basis: CW, upstand: 2 in}",
         "{positive_pressure: 1.9152103592134336 kPa, basis: CW, upstand: 50.8 mm}"},
        {"proof", "{pressure_positive: 40 psf, pressure_negative: 60 psf, span: 12.5 ft, basis: AW}",
         "{pressure_positive: 1915.2103592134336 Pa, pressure_negative: 2872.8155388201504 Pa, span: 3810 mm, basis: "
         "AW}"},
        {"weep", "{diameter: 3/8 in, head: 1 1/2 in, adverse_pressure: 3 psf, wet_area: 50 ft2, leak_fraction: 10 %}",
         "{diameter: 9.525 mm, head: 38.1 mm, adverse_pressure: 143.64077694100752 Pa, wet_area: 4.645152 m2, "
         "leak_fraction: 0.1}"},
        {"equalization", "{vent_to_leak: 5, pressure: 30 psf}", "{vent_to_leak: 5, pressure: 1436.4077694100752 Pa}"}};
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        struct gw_text a, b;
        gw_text_init(&a, &w->arena);
        gw_text_init(&b, &w->arena);
        const struct gw_calc_kind *kind = gw_calc_find(pairs[i][0]);
        assert_true(gw_calc_case(&a, &w->arena, kind, node_of(w, pairs[i][1]), gw_tables_standard()));
        assert_true(gw_calc_case(&b, &w->arena, kind, node_of(w, pairs[i][2]), gw_tables_standard()));
        assert_string_equal(a.at, b.at);
    }
}

/* --help prints every field's help: one without would be a null pointer. Nested records too. */
static void must_explain(const struct gw_record *record)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        if (field->type != GW_T_NODE && !field->help) print_error("%s: %s has no help\n", record->name, field->key);
        assert_true(field->type == GW_T_NODE || field->help);
        if (field->type == GW_T_RECORD) must_explain(field->record);
    }
}

static void every_key_is_explained(void **state)
{
    (void)state;
    size_t n;
    const struct gw_calc_kind *const *kinds = gw_calc_kinds(&n);
    for (size_t i = 0; i < n; i++) {
        must_explain(kinds[i]->input);
        must_explain(kinds[i]->output);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(units_do_not_matter),
        cmocka_unit_test(every_key_is_explained),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
