/* Formats, blocks, and that data hold whatever a page shows. */
#include "support.h"

#include "galeward/report.h"
#include "report/captions.h"
#include "report/links.h"
#include "report/long_names.h"

/* Formats ---------------------------------------------------------------------------------------------------------- */

static void formats_go_by_what_a_result_has(void **state)
{
    struct world *w = *state;
    assert_string_equal(gw_format_names(&w->arena, GW_HAS_DATA | GW_HAS_PAGE, false),
                        "text, json, csv, md, html or pdf");
    assert_string_equal(gw_format_names(&w->arena, GW_HAS_DATA | GW_HAS_FIGURE, true), ".json or .svg");
    assert_string_equal(gw_format_names(&w->arena, GW_HAS_SCHEMA, false), "json or md");
    assert_string_equal(gw_format_names(&w->arena, 0, false), "");
    assert_string_equal(gw_format_first(GW_HAS_DATA | GW_HAS_PAGE)->name, "text");
    assert_string_equal(gw_format_first(GW_HAS_SCHEMA)->name, "json");
    assert_null(gw_format_first(0));
}

static void formats_by_name_and_by_ending(void **state)
{
    (void)state;
    size_t n;
    const struct gw_format *formats = gw_formats(&n);
    for (size_t i = 0; i < n; i++) {
        assert_ptr_equal(gw_format_named(formats[i].name), &formats[i]);
        assert_ptr_equal(gw_format_of_file(formats[i].ending), &formats[i]);
    }
    assert_string_equal(gw_format_of_file("a.b/cases.jsonl")->name, "json");
    assert_null(gw_format_of_file("a.b/report"));
    assert_null(gw_format_of_file("report.xyz"));
    assert_null(gw_format_named("JSON"));
}

/* Blocks ----------------------------------------------------------------------------------------------------------- */

static void all_blocks(struct gw_report *report)
{
    static const char *const names[] = {"a", "b"};
    const struct gw_arg args[] = {{"a", 3, GW_RATIO}, {"b", 4, GW_RATIO}};
    struct gw_step product = {
        .symbol = "c", .formula = "a*b", .clause = "Eq. 1", .value = 12, .args = {args[0], args[1]}, .n_args = 2};
    product.tree = gw_formula_parse(report->arena, product.formula, names, 2);
    struct gw_step value = {.symbol = "a", .formula = "a", .value = 3, .args = {args[0]}, .n_args = 1};
    struct gw_step decision = {.symbol = "case", .note = {.format = "the first"}, .clause = "1.2", .value = GW_ABSENT};
    const struct gw_figure figure = {"Plate", "a square, deepest at its center", NULL, NULL};
    gw_report_heading(report, 2, "Steps");
    gw_report_equation(report, &product, 1, GW_US);
    gw_report_equation(report, &value, 2, GW_US);
    gw_report_equation(report, &decision, 3, GW_US);
    gw_report_figure(report, &figure);
    gw_report_definition(report, "lite", "a piece of glass");
    gw_report_page_break(report);
    gw_report_line(report, "end");
}

static void blocks_as_text(void **state)
{
    struct world *w = *state;
    struct gw_report report;
    struct gw_text text;
    gw_report_init(&report, &w->arena);
    all_blocks(&report);
    gw_text_init(&text, &w->arena);
    gw_render_text(&text, &report, false);
    assert_string_equal(text.at,
                        "Steps\n-----\n1. c = a*b = 3*4 = 12   [Eq. 1]\n2. a = 3\n3. case: the first   [1.2]\n"
                        "Figure: Plate. a square, deepest at its center\nlite\n      a piece of glass\n\fend\n");
}

static void blocks_as_markdown(void **state)
{
    struct world *w = *state;
    struct gw_report report;
    struct gw_text text;
    gw_report_init(&report, &w->arena);
    all_blocks(&report);
    gw_text_init(&text, &w->arena);
    gw_render_markdown(&text, &report);
    assert_string_equal(text.at, "## Steps\n\n1. c = a\\*b = 3\\*4 = 12   \\[Eq. 1\\]\n\n2. a = 3\n\n"
                                 "3. case: the first   \\[1.2\\]\n\n**Plate** a square, deepest at its center\n\n"
                                 "- **lite**: a piece of glass\n\n---\n\nend\n");
}

/* Data and page ---------------------------------------------------------------------------------------------------- */

static void open_project(struct world *w, const char *path, struct gw_results *results)
{
    bool good = gw_model_load(&w->model, &w->arena, &w->diags, path, NULL, 0) &&
                gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags);
    if (!good) print_diags(&w->diags);
    assert_true(good);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_answer_check(&w->answer, &w->ask);
    gw_results_of(results, &w->arena, &w->answer, GW_US);
}

/* What a program reads: JSON is YAML. */
static const struct gw_node *data_of(struct world *w, const struct gw_result *result)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    assert_int_equal(gw_format_named("json")->render(&text, result, NULL, false), GW_OK);
    const struct gw_node *root =
        gw_yaml_read(&w->arena, gw_source_from(&w->arena, "result", text.at, text.length), &w->diags);
    if (!root) print_diags(&w->diags);
    assert_non_null(root);
    return root;
}

static bool says(const struct gw_node *item, const char *key, const char *text)
{
    const struct gw_node *value = gw_node_get(item, key);
    return value && value->kind == GW_SCALAR && strcmp(value->text, text) == 0;
}

static size_t places_of(const struct gw_node *demands, const char *check)
{
    size_t n = 0;
    for (const struct gw_node *d = demands->first; d; d = d->next) {
        if (!says(d, "check", check)) continue;
        size_t elements = gw_node_get(d, "elements")->count;
        n += elements ? elements : 1;
    }
    return n;
}

/* Every demand that the page lists is in the data, for every element that it is asked of. */
static void data_hold_every_demand(void **state)
{
    struct world *w = *state;
    struct gw_results results;
    open_project(w, "projects/gull-point.yaml", &results);
    const struct gw_result result = gw_result_demand(&results);
    const struct gw_node *demands = gw_node_get(data_of(w, &result), "demands");
    static const char *const checks[] = {"air",           "water",  "pocket", "movement",        "seismic_force",
                                         "seismic_glass", "debris", "blast",  "seismic_silicone"};
    for (size_t i = 0; i < sizeof checks / sizeof *checks; i++) {
        size_t wanted = 0;
        for (size_t k = 0; k < w->answer.judgement.demands.n; k++)
            wanted += strcmp(w->answer.judgement.demands.items[k].check->id, checks[i]) == 0;
        assert_true(wanted > 0);
        assert_int_equal(places_of(demands, checks[i]), wanted);
    }
}

/* `value_outward` is no other quantity than `value`: a mullion's shear is no moment. */
static void outward_values_are_of_the_same_quantity(void **state)
{
    struct world *w = *state;
    struct gw_results results;
    open_project(w, "projects/gull-point.yaml", &results);
    const struct gw_result result = gw_result_demand(&results);
    size_t pairs = 0;
    for (const struct gw_node *d = gw_node_get(data_of(w, &result), "demands")->first; d; d = d->next) {
        const struct gw_node *terms = gw_node_get(d, "terms");
        if (says(d, "value_outward", "null")) continue;
        assert_true(terms->count >= 2);
        assert_true(says(terms->first, "direction", "inward"));
        assert_true(says(terms->first->next, "direction", "outward"));
        assert_true(says(terms->first->next, "unit", gw_node_get(terms->first, "unit")->text));
        pairs++;
    }
    assert_true(pairs > 0); /* debris asks for both */
}

/* The verdicts in one format and one set of units. */
static const char *verdicts_as(struct world *w, const char *format, enum gw_units shown)
{
    struct gw_results results;
    struct gw_text text;
    gw_results_of(&results, &w->arena, &w->answer, shown);
    const struct gw_result result = gw_result_check(&results);
    gw_text_init(&text, &w->arena);
    assert_int_equal(gw_format_named(format)->render(&text, &result, NULL, false), GW_OK);
    return text.at;
}

/* Sentences too: of data and of pages. */
static void messages_are_in_the_units_shown(void **state)
{
    struct world *w = *state;
    struct gw_results results;
    open_project(w, "projects/gull-point.yaml", &results);
    static const char *const formats[] = {"json", "csv", "text", "md"};
    for (size_t i = 0; i < sizeof formats / sizeof *formats; i++) {
        const char *us = verdicts_as(w, formats[i], GW_US), *si = verdicts_as(w, formats[i], GW_SI);
        assert_non_null(strstr(us, " psf"));
        assert_null(strstr(si, " psf"));
        assert_null(strstr(si, " ft,"));
    }
}

static size_t equations_of(const struct gw_report *page)
{
    size_t n = 0;
    for (size_t i = 0; i < page->n; i++) n += page->blocks[i].kind == GW_EQUATION;
    return n;
}

static size_t steps_of(const struct gw_node *root)
{
    size_t n = gw_node_get(root, "trace")->count + gw_node_get(root, "glass_trace")->count;
    for (const struct gw_node *link = gw_node_get(root, "links")->first; link; link = link->next)
        n += gw_node_get(link, "trace")->count + gw_node_get(link, "calculation")->count;
    return n;
}

/* Every step that the page derives is in the data: of the pressure, of the glass, of every link. */
static void data_hold_every_step(void **state)
{
    struct world *w = *state;
    struct gw_results results;
    static const char *const elements[] = {"seaward/lite/1", "seaward/mullion/1", "seaward/transom/1",
                                           "seaward/screw/1", "seaward/anchor/1"};
    open_project(w, "projects/gull-point.yaml", &results);
    results.all = true;
    for (size_t i = 0; i < sizeof elements / sizeof *elements; i++) {
        struct gw_report page;
        const struct gw_element *element = gw_takeoff_find(&w->takeoff, elements[i]);
        assert_non_null(element);
        struct gw_explanation explanation;
        gw_explain(&explanation, &w->ask, &w->answer.judgement, element);
        const struct gw_result result = gw_result_explain(&w->arena, &results, &explanation);
        gw_report_init(&page, &w->arena);
        result.page(&page, &result);
        const struct gw_node *root = data_of(w, &result);
        assert_true(gw_node_get(root, "links")->count > 0);
        assert_true(gw_node_get(root, "rows")->count > 0);
        assert_int_equal(steps_of(root), equations_of(&page));
    }
}

/* Parts, captions, names ---------------------------------------------------------------------------------------------
 */

static const struct gw_report_column TWO[] = {{.title = "Part"}, {.title = "Out psf", .right = true}};

/* Whoever writes first: a page has its parts in one order, and within a part nothing moves. */
static void parts_stand_in_their_order(void **state)
{
    struct world *w = *state;
    struct gw_report report;
    gw_report_init(&report, &w->arena);
    gw_report_heading(&report, 1, "title");
    gw_report_section(&report, GW_PART_CAUTIONS, "caution");
    gw_report_section(&report, GW_PART_DERIVATIONS, "D1");
    gw_report_line(&report, "of D1");
    gw_report_section(&report, GW_PART_DEMANDS, "demands");
    gw_report_section(&report, GW_PART_DERIVATIONS, "D2");
    gw_report_section(&report, GW_PART_FIRST, "why");
    gw_report_arrange(&report);
    static const char *const wanted[] = {"title", "why", "demands", "D1", "of D1", "D2", "caution"};
    assert_int_equal(report.n, sizeof wanted / sizeof *wanted);
    for (size_t i = 0; i < report.n; i++) assert_string_equal(report.blocks[i].text, wanted[i]);
    gw_report_line(&report, "more"); /* there is room for what follows */
    assert_string_equal(report.blocks[report.n - 1].text, "more");
}

static void tables_say_what_they_are(void **state)
{
    struct world *w = *state;
    struct gw_report report;
    gw_report_init(&report, &w->arena);
    gw_report_heading(&report, 2, "Heron 75: PASS (of 3)");
    gw_report_table(&report, "", TWO, 2);
    for (int i = 0; i < 4; i++) gw_report_cell(&report, "x");
    gw_report_table(&report, "All of it.", TWO, 2);
    for (int i = 0; i < 2; i++) gw_report_cell(&report, "x");
    report.blocks[report.n - 1].rounds = true;
    gw_report_captions(&report);
    assert_string_equal(report.blocks[1].text, "Heron 75: PASS, by part: 2 rows.");
    assert_string_equal(report.blocks[2].text, "All of it. 1 row. Demands and use are rounded up, capacities down.");
}

static char *letters(struct world *w, size_t n, char letter)
{
    char *out = gw_alloc(&w->arena, n + 1, 1);
    memset(out, letter, n);
    return out;
}

static void long_names_stand_by_their_beginnings(void **state)
{
    enum { LENGTH = 500, SHORT = 24 };
    struct world *w = *state;
    struct gw_report report;
    gw_report_init(&report, &w->arena);
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, "projects/tern-street.yaml", NULL, 0));
    struct gw_info *info = gw_alloc(&w->arena, 1, sizeof *info);
    *info = *w->model.project.project;
    info->name = letters(w, LENGTH, 'N');
    info->number = letters(w, SHORT, 'K');
    w->model.project.project = info;
    report.long_names = gw_long_names_of(&w->arena, &w->model);
    assert_int_equal(report.long_names.n, 1);
    gw_report_line(&report, gw_format(&w->arena, "%s and %s/lite/1, %s", info->number, info->name, info->name));
    const char *cut = letters(w, SHORT, 'N');
    assert_string_equal(report.blocks[0].text, gw_format(&w->arena, "%s and %s…/lite/1, %s…", info->number, cut, cut));
    assert_string_equal(gw_beginning(&w->arena, "äöü", 2), "äö…");
    assert_string_equal(gw_beginning(&w->arena, "äöü", 3), "äöü");
}

static void names_of_derivations_are_found(void **state)
{
    (void)state;
    struct gw_reference to;
    static const char text[] = "D3, XD1 D1x D0 D2. D12";
    assert_true(gw_next_reference(&to, text, 0, 12));
    assert_int_equal(to.number, 3);
    assert_true(gw_next_reference(&to, text, to.end, 12));
    assert_int_equal(to.number, 2);
    assert_true(gw_next_reference(&to, text, to.end, 12));
    assert_int_equal(to.number, 12);
    assert_int_equal(to.end, sizeof text - 1);
    assert_false(gw_next_reference(&to, text, to.end, 12));
    assert_false(gw_next_reference(&to, text, 0, 1));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(formats_go_by_what_a_result_has),
        cmocka_unit_test(formats_by_name_and_by_ending),
        WORLD_TEST(blocks_as_text),
        WORLD_TEST(blocks_as_markdown),
        WORLD_TEST(data_hold_every_demand),
        WORLD_TEST(outward_values_are_of_the_same_quantity),
        WORLD_TEST(messages_are_in_the_units_shown),
        WORLD_TEST(data_hold_every_step),
        WORLD_TEST(parts_stand_in_their_order),
        WORLD_TEST(tables_say_what_they_are),
        WORLD_TEST(long_names_stand_by_their_beginnings),
        cmocka_unit_test(names_of_derivations_are_found),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
