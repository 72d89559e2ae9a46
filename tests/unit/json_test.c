/* Edit distance; JSON written, and read back. */
#include "support.h"

static void edit_distance(void **state)
{
    (void)state;
    assert_int_equal(gw_edit_distance("kitten", "sitting", 5), 3);
    assert_int_equal(gw_edit_distance("kitten", "sitting", 2), 3);
    assert_int_equal(gw_edit_distance("", "abc", 5), 3);
    assert_int_equal(gw_edit_distance("width", "width", 5), 0);
    assert_int_equal(gw_edit_distance("widht", "width", 5), 2);
    assert_int_equal(gw_edit_distance("abc", "xyzuvw", 2), 3);
    char longer[200];
    memset(longer, 'a', sizeof longer - 1);
    longer[sizeof longer - 1] = '\0';
    assert_int_equal(gw_edit_distance(longer, "a", 4), 5);
}

static void json_writing(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    struct gw_json json;
    gw_text_init(&text, &w->arena);
    gw_json_init(&json, &text, false);
    gw_json_open(&json, '{');
    gw_json_key(&json, "a\"b");
    gw_json_text(&json, "5'-6\" \\ \n\t\x01 é:");
    gw_json_key(&json, "list");
    gw_json_open(&json, '[');
    gw_json_number(&json, 0.1);
    gw_json_number(&json, GW_ABSENT);
    gw_json_number(&json, 1e300 * 1e300);
    gw_json_integer(&json, -3);
    gw_json_bool(&json, true);
    gw_json_null(&json);
    gw_json_open(&json, '{');
    gw_json_close(&json, '}');
    gw_json_close(&json, ']');
    gw_json_key(&json, "none");
    gw_json_text(&json, NULL);
    gw_json_close(&json, '}');
    assert_string_equal(text.at, "{\"a\\\"b\":\"5'-6\\\" \\\\ \\n\\u0009\\u0001 é:\","
                                 "\"list\":[0.1,null,null,-3,true,null,{}],\"none\":null}");
}

/* To the letter, whatever a double would make of it. */
static void nodes_come_back_as_they_came(void **state)
{
    struct world *w = *state;
    static const struct {
        const char *yaml, *json;
    } cases[] = {
        {"12345678901234567890", "12345678901234567890"},
        {"0.10000000000000000555", "0.10000000000000000555"},
        {"-1.50e+03", "-1.50e+03"},
        {"true", "true"},
        {"null", "null"},
        {"'true'", "\"true\""},
        {"\"7\"", "\"7\""},
        {"007", "\"007\""}, /* no number of JSON's */
        {".5", "\".5\""},
        {"1.", "\"1.\""},
        {"+1", "\"+1\""},
        {"--", "\"--\""},
        {"1e", "\"1e\""},
        {"nan", "\"nan\""},
        {"[1.0, {b: false, c: ~}, \"\", 'null']", "[1.0,{\"b\":false,\"c\":null},\"\",\"null\"]"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_text text;
        struct gw_json json;
        const struct gw_node *root = node_of(w, gw_format(&w->arena, "id: %s\n", cases[i].yaml));
        gw_text_init(&text, &w->arena);
        gw_json_init(&json, &text, false);
        gw_json_node(&json, gw_node_get(root, "id"));
        assert_string_equal(text.at, cases[i].json);
    }
}

/* A text that ends in a colon is not a key. */
static void json_text_that_looks_like_a_key(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    struct gw_json json;
    gw_text_init(&text, &w->arena);
    gw_json_init(&json, &text, false);
    gw_json_open(&json, '[');
    gw_json_text(&json, "a:");
    gw_json_text(&json, ":");
    gw_json_close(&json, ']');
    assert_string_equal(text.at, "[\"a:\",\":\"]");
}

static void json_reads_back(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    struct gw_json json;
    gw_text_init(&text, &w->arena);
    gw_json_init(&json, &text, true);
    gw_json_node(&json, node_of(w, "a: [1, '2', {b: x}]\nc: \"tab\\there\"\n"));
    const struct gw_node *back = node_of(w, text.at);
    assert_non_null(back);
    assert_int_equal(gw_node_get(back, "a")->count, 3);
    assert_false(gw_node_get(back, "a")->first->quoted);
    assert_true(gw_node_get(back, "a")->first->next->quoted);
    assert_string_equal(text_at(back, "c"), "tab\there");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(edit_distance),
        WORLD_TEST(json_writing),
        WORLD_TEST(nodes_come_back_as_they_came),
        WORLD_TEST(json_text_that_looks_like_a_key),
        WORLD_TEST(json_reads_back),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
