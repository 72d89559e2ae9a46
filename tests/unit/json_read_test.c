/* JSON as nodes that know their place and their digits, as values, and what is said of bad text. */
#include "support.h"

#include "base/json_read.h"

struct refusal {
    const char *text, *code;
    unsigned line, column;
    const char *says;
};

static const struct refusal REFUSALS[] = {
    {"{\"a\": 1, \"a\": 2}", "duplicate_key", 1, 10, "'a' is given twice"},
    {"{\"a\": {\"\xC3\xA9\\n\": 1,\n  \"\xC3\xA9\\u000a\": 2}}", "duplicate_key", 2, 3, "is given twice"},
    {"{\"a\": \"1\" \"b\": 2}", "syntax", 1, 11, "expected ',' or '}'"},
    {"{\"\xC3\xA9\": nul}", "syntax", 1, 7, "no JSON value"},
    {"{\"a\": 01}", "syntax", 1, 7, "no JSON value"},
    {"{\"a\": .5}", "syntax", 1, 7, "no JSON value"},
    {"{\"a\": NaN}", "syntax", 1, 7, "no JSON value"},
    {"{a: 1}", "syntax", 1, 2, "a key in double quotes"},
    {"{\"a\": 1,}", "syntax", 1, 9, "a key in double quotes"},
    {"{\"a\" 1}", "syntax", 1, 6, "a key without ':'"},
    {"{\"a\":\n 1} 2", "syntax", 2, 5, "text after the end"},
    {"{\"a\": [1, 2", "syntax", 1, 12, "never closed"},
    {"{\"a\": \"b", "syntax", 1, 9, "never closed"},
    {"{\"a\": \"\t\"}", "syntax", 1, 8, "a control character"},
    {"{\"a\": \"\\x\"}", "syntax", 1, 7, "a backslash"},
    {"{\"a\": \"\\ud800\"}", "syntax", 1, 7, "half of a pair"},
    {"{\"a\": \"\\u0000\"}", "encoding", 1, 7, "a zero byte"},
    {"{\"a\": \"\xFF\"}", "encoding", 1, 8, "not UTF-8"},
    {"{\"a\": 1e999}", "number", 1, 7, "beyond 1.8e308"},
    {"", "empty", 1, 1, "the file is empty"},
    {" \n", "empty", 1, 1, "the file is empty"},
    {"3", "syntax", 1, 1, "expected '{' or '['"},
};

static void refusals(void **state)
{
    struct world *w = *state;
    for (size_t i = 0; i < sizeof REFUSALS / sizeof *REFUSALS; i++) {
        const struct refusal *r = &REFUSALS[i];
        struct gw_diags diags;
        gw_diags_init(&diags, &w->arena);
        const struct gw_source *source = gw_source_from(&w->arena, "test", r->text, strlen(r->text));
        assert_null(gw_json_read(&w->arena, source, &diags));
        assert_int_equal(diags.n, 1);
        const struct gw_diag *d = &diags.items[0];
        if (strcmp(d->code, r->code) != 0 || d->line != r->line || d->column != r->column ||
            !strstr(d->message, r->says))
            print_error("refusal %zu: %s %u:%u %s\n", i, d->code, d->line, d->column, d->message);
        assert_string_equal(d->code, r->code);
        assert_int_equal(d->line, r->line);
        assert_int_equal(d->column, r->column);
        assert_non_null(strstr(d->message, r->says));
    }
}

static struct gw_node *read_text(struct world *w, const char *text)
{
    struct gw_diags diags;
    gw_diags_init(&diags, &w->arena);
    return gw_json_read(&w->arena, gw_source_from(&w->arena, "test", text, strlen(text)), &diags);
}

static void expect_node(const struct gw_node *node, const char *text, bool is_quoted, unsigned line, unsigned column)
{
    assert_non_null(node);
    assert_string_equal(node->text, text);
    assert_int_equal(node->length, strlen(text));
    assert_int_equal(node->quoted, is_quoted);
    assert_int_equal(node->line, line);
    assert_int_equal(node->column, column);
}

static void places_and_digits(void **state)
{
    struct world *w = *state;
    const struct gw_node *root =
        read_text(w, "\xEF\xBB\xBF{ \"\xC3\xA9\" : 1.50e+00,\n\t\"b\":[ ],\"c\" :{ } , \"d\": "
                     "[\"x,]\\\"\", true,null , -0],\n\"e\\/\":123456789012345678901234567890}");
    assert_non_null(root);
    assert_int_equal(root->kind, GW_MAPPING);
    assert_int_equal(root->count, 5);
    expect_node(gw_node_get(root, "\xC3\xA9"), "1.50e+00", false, 1, 9);
    assert_int_equal(root->first->key_column, 3);
    const struct gw_node *list = gw_node_get(root, "d");
    assert_int_equal(gw_node_get(root, "b")->kind, GW_SEQUENCE);
    assert_int_equal(gw_node_get(root, "c")->kind, GW_MAPPING);
    assert_int_equal(list->count, 4);
    expect_node(list->first, "x,]\"", true, 2, 27);
    expect_node(list->first->next, "true", false, 2, 36);
    expect_node(list->first->next->next, "null", false, 2, 41);
    expect_node(list->first->next->next->next, "-0", false, 2, 48);
    expect_node(gw_node_get(root, "e/"), "123456789012345678901234567890", false, 3, 7);
}

static const char *nested(struct world *w, size_t depth)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_repeat(&text, '[', depth);
    gw_text_repeat(&text, ']', depth);
    return text.at;
}

static void depth(void **state)
{
    struct world *w = *state;
    const size_t refused[] = {GW_DEPTH_LIMIT + 1, 2000, 3000, 1000000};
    assert_non_null(read_text(w, nested(w, GW_DEPTH_LIMIT)));
    for (size_t i = 0; i < sizeof refused / sizeof *refused; i++) assert_null(read_text(w, nested(w, refused[i])));
}

static void look(void *context, const struct gw_json_value *root)
{
    *(bool *)context = true;
    assert_int_equal(gw_json_count(gw_json_get(root, "list")), 3);
    assert_false(gw_json_is_list(root));
    assert_true(gw_json_double(gw_json_item(gw_json_get(root, "list"), 0)) == 0.1);
    assert_true(gw_json_double(gw_json_item(gw_json_get(root, "list"), 1)) == 5e-324);
    assert_true(gw_json_double(gw_json_item(gw_json_get(root, "list"), 2)) == 1.7976931348623157e308);
    assert_string_equal(gw_json_words(gw_json_get(root, "yes")), "true");
    assert_string_equal(gw_json_words(gw_json_get(root, "text")), "1");
    assert_false(gw_given(gw_json_double(gw_json_get(root, "text"))));
    assert_non_null(gw_json_get(root, "null"));
    assert_null(gw_json_words(gw_json_get(root, "null")));
    assert_null(gw_json_get(root, "other"));
    assert_null(gw_json_get(gw_json_get(root, "list"), "yes"));
    assert_null(gw_json_item(root, 0));
    assert_null(gw_json_item(gw_json_get(root, "list"), 3));
}

static void values(void **state)
{
    struct world *w = *state;
    static const char text[] =
        "{\"list\": [0.1, 5e-324, 1.7976931348623157e308], \"yes\": true, \"text\": \"1\", \"null\": null}";
    struct gw_diags diags;
    bool looked = false;
    gw_diags_init(&diags, &w->arena);
    assert_true(gw_json_use(&w->arena, gw_source_from(&w->arena, "test", text, strlen(text)), &diags, look, &looked));
    assert_true(looked);
    assert_false(gw_json_use(&w->arena, gw_source_from(&w->arena, "test", text, 20), &diags, look, &looked));
    assert_int_equal(diags.n, 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(refusals),
        WORLD_TEST(places_and_digits),
        WORLD_TEST(depth),
        WORLD_TEST(values),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
