/* SARIF 2.1.0: what the standard requires of a log (OASIS, SARIF 2.1.0, 3.13 version, 3.14 run, 3.18 tool, 3.27 result,
 * 3.29 physical location), of what the renderer writes and of a whole review. The standard's own schema is not at
 * hand. */
#include "support.h"

#include "base/json_read.h"
#include "report/page.h"

#include <ctype.h>

static const char *word_of(const struct gw_json_value *value, const char *key)
{
    const char *text = gw_json_words(gw_json_get(value, key));
    assert_non_null(text);
    return text;
}

static bool among(const char *word, const char *const *list)
{
    while (*list && strcmp(*list, word) != 0) list++;
    return *list;
}

/* Printable ASCII without what a URI may not hold. */
static void check_uri(const char *uri)
{
    assert_true(*uri);
    for (; *uri; uri++) {
        assert_true(isgraph((unsigned char)*uri) && !strchr("\\\"<>^`{|}", *uri));
        if (*uri == '%') assert_true(isxdigit((unsigned char)uri[1]) && isxdigit((unsigned char)uri[2]));
    }
}

static void check_location(const struct gw_json_value *location)
{
    const struct gw_json_value *physical = gw_json_get(location, "physicalLocation");
    const struct gw_json_value *region = gw_json_get(physical, "region");
    check_uri(word_of(gw_json_get(physical, "artifactLocation"), "uri"));
    if (region) assert_true(gw_json_double(gw_json_get(region, "startLine")) >= 1);
}

static void check_result(const struct gw_json_value *result, const struct gw_json_value *rules)
{
    static const char *const levels[] = {"none", "note", "warning", "error", NULL};
    static const char *const states[] = {"new", "unchanged", "updated", "absent", NULL};
    const double index = gw_json_double(gw_json_get(result, "ruleIndex"));
    assert_true(*word_of(gw_json_get(result, "message"), "text"));
    assert_true(among(word_of(result, "level"), levels));
    assert_true(among(word_of(result, "baselineState"), states));
    assert_true(index >= 0 && index < (double)gw_json_count(rules));
    assert_string_equal(word_of(result, "ruleId"), word_of(gw_json_item(rules, (size_t)index), "id"));
    const struct gw_json_value *locations = gw_json_get(result, "locations");
    assert_true(gw_json_is_list(locations));
    for (size_t i = 0; i < gw_json_count(locations); i++) check_location(gw_json_item(locations, i));
}

static void check_log(void *context, const struct gw_json_value *root)
{
    size_t *results = context;
    assert_string_equal(word_of(root, "version"), "2.1.0");
    const struct gw_json_value *run = gw_json_item(gw_json_get(root, "runs"), 0);
    const struct gw_json_value *driver = gw_json_get(gw_json_get(run, "tool"), "driver");
    const struct gw_json_value *rules = gw_json_get(driver, "rules"), *list = gw_json_get(run, "results");
    assert_string_equal(word_of(driver, "name"), "galeward");
    assert_true(gw_json_is_list(rules) && gw_json_is_list(list));
    for (size_t i = 0; i < gw_json_count(rules); i++)
        for (size_t k = 0; k < i; k++)
            assert_string_not_equal(word_of(gw_json_item(rules, i), "id"), word_of(gw_json_item(rules, k), "id"));
    for (size_t i = 0; i < gw_json_count(list); i++) check_result(gw_json_item(list, i), rules);
    *results = gw_json_count(list);
}

static size_t checked(struct gw_arena *arena, const struct gw_source *source)
{
    struct gw_diags diags;
    size_t results = 0;
    gw_diags_init(&diags, arena);
    assert_true(gw_json_use(arena, source, &diags, check_log, &results));
    return results;
}

static void findings_of_every_kind(void **state)
{
    struct gw_arena arena;
    struct gw_text out;
    struct gw_logged list[] = {
        {.rule = "glass",
         .rule_text = "glass",
         .level = GW_LOG_ERROR,
         .message = "a \"quoted\"\n line",
         .line = 3,
         .file = "a b/ü{1}.yaml",
         .fingerprint = "glass|1",
         .state = GW_LOG_NEW},
        {.rule = "span",
         .rule_text = "span",
         .level = GW_LOG_WARNING,
         .message = "m",
         .file = "/x/y/../z.yaml",
         .fingerprint = "span|2",
         .state = GW_LOG_ABSENT},
        {.rule = "glass",
         .rule_text = "glass",
         .level = GW_LOG_NOTE,
         .message = "m",
         .fingerprint = "glass|3",
         .state = GW_LOG_UNCHANGED,
         .accepted = "R. Example: seen"},
    };
    const struct gw_log log = {.list = {list, 3}};
    (void)state;
    gw_arena_init(&arena, gw_system_host());
    gw_text_init(&out, &arena);
    gw_render_sarif(&out, &log);
    assert_int_equal(checked(&arena, gw_source_from(&arena, "log", out.at, out.length)), 3);
    assert_non_null(strstr(out.at, "\"a%20b/%C3%BC%7B1%7D.yaml\""));
    assert_non_null(strstr(out.at, "\"file:///x/z.yaml\""));
    assert_non_null(strstr(out.at, "\"justification\": \"R. Example: seen\""));
    gw_arena_release(&arena);
}

static void no_findings(void **state)
{
    struct gw_arena arena;
    struct gw_text out;
    const struct gw_log log = {.capacity = 0};
    (void)state;
    gw_arena_init(&arena, gw_system_host());
    gw_text_init(&out, &arena);
    gw_render_sarif(&out, &log);
    assert_int_equal(checked(&arena, gw_source_from(&arena, "log", out.at, out.length)), 0);
    gw_arena_release(&arena);
}

static void a_whole_review(void **state)
{
    struct gw_arena arena;
    struct gw_diags diags;
    (void)state;
    gw_arena_init(&arena, gw_system_host());
    gw_diags_init(&diags, &arena);
    const struct gw_source *source = gw_source_read(&arena, "tests/golden/review.sarif", &diags);
    assert_non_null(source);
    assert_true(checked(&arena, source) > 5);
    gw_arena_release(&arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(findings_of_every_kind), cmocka_unit_test(no_findings),
                                       cmocka_unit_test(a_whole_review)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
