/* Blast through calc: units and cautions. */
#include "blast_support.h"

static const struct gw_node *result_of(struct world *w, const char *kind, const char *yaml)
{
    struct gw_text out;
    gw_text_init(&out, &w->arena);
    gw_calc_case(&out, &w->arena, gw_calc_find(kind), node_of(w, yaml), gw_tables_standard());
    return node_of(w, out.at);
}

static double number_at(const struct gw_node *result, const char *key)
{
    double value = GW_ABSENT;
    const char *text = text_at(result, key);
    if (gw_read_number(text, strlen(text), &value) != strlen(text)) print_error("%s: '%s'\n", key, text);
    return value;
}

#define LITE "width: 1.2 m, height: 1.8 m, layers: [{glass: 6 mm, treatment: annealed}]"

static void units_do_not_matter(void **state)
{
    struct world *w = *state;
    const struct gw_node *si = result_of(w, "blast", "{charge: 45.359237 kg, standoff: 30.48 m, angle: 30 deg}");
    const struct gw_node *us = result_of(w, "blast", "{units: us, charge: 100, standoff: 100, angle: 30 deg}");
    const char *const keys[] = {"reflected_pressure_pa", "reflected_impulse_pa_s", "arrival_s", "face_pressure_pa"};
    for (size_t i = 0; i < 4; i++) assert_near(number_at(us, keys[i]) / number_at(si, keys[i]), 1, 1e-10);
    si = result_of(w, "response", "{" LITE ", pressure: 27.579029 kPa, impulse: 193.0532 Pa-s}");
    us = result_of(w, "response", "{" LITE ", pressure: 4 psi, impulse: 28 psi-ms}");
    const struct gw_node *psf = result_of(w, "response", "{" LITE ", pressure: 576 psf, impulse: 28 psi-ms}");
    assert_near(number_at(us, "deflection_max_m") / number_at(si, "deflection_max_m"), 1, 1e-6);
    assert_near(number_at(psf, "deflection_max_m") / number_at(us, "deflection_max_m"), 1, 1e-12);
    assert_near(number_at(us, "duration_s"), 0.014, 1e-12);
}

/* A bare number of a US file is psf, as for wind: 4 for 4 psi is said to be implausible. */
static void pounds_per_square_foot_for_inch(void **state)
{
    struct world *w = *state;
    const struct gw_node *r = result_of(w, "response", "{units: us, " LITE ", pressure: 4, impulse: 28}"), *note;
    bool warned = false;
    for (note = gw_node_get(r, "notes")->first; note; note = note->next)
        if (strstr(note->text, "pressure") && strstr(note->text, "psf")) warned = true;
    assert_true(warned);
    assert_near(number_at(r, "pressure_pa"), 4 * PSF, 1e-9);
}

/* Everything that a chart or a project shows says whose load it is, and that an engineer signs. */
static void cautions_are_there(void **state)
{
    struct world *w = *state;
    const char *const cases[][2] = {{"blast", "{charge: 100 kg, standoff: 15 m}"},
                                    {"response", "{" LITE ", pressure: 4 psi, impulse: 28 psi-ms}"},
                                    {"response", "{" LITE ", pressure: 400 Pa, impulse: 10 Pa-s}"}};
    for (size_t i = 0; i < 3; i++) {
        const struct gw_node *first = gw_node_get(result_of(w, cases[i][0], cases[i][1]), "notes")->first;
        assert_non_null(strstr(first->text, "security consultant"));
        assert_non_null(strstr(first->text, "licensed engineer"));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(units_do_not_matter),
        WORLD_TEST(pounds_per_square_foot_for_inch),
        WORLD_TEST(cautions_are_there),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
