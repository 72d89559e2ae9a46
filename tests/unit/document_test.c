/* YAML and CSV as trees that know their place, and what is said of bad ones. */
#include "support.h"

/* YAML --------------------------------------------------------------------------------------------------------------
 */

struct refusal {
    const char *text;
    size_t length; /* 0: strlen */
    const char *code;
    unsigned line, column;
};

static const struct refusal REFUSALS[] = {
    {"a: 1\nb: 2\na: 3\n", 0, "duplicate_key", 3, 1},
    {"top:\n  x: 1\n  x: 2\n", 0, "duplicate_key", 3, 3},
    {"{a: 1, a: 2}", 0, "duplicate_key", 1, 8},
    {"a: 1\n---\nb: 2\n", 0, "second_document", 2, 1},
    {"a: &a [*a]\n", 0, "alias", 1, 8},
    {"a: &a {b: *a}\n", 0, "alias", 1, 11},
    {"a: &a [1]\nb: &b [*a]\nc: *b\n", 0, "alias", 3, 4},
    {"a: *nobody\n", 0, "alias", 1, 4},
    {"a: \"x\\0y\"\n", 0, "syntax", 1, 4},
    {"a: x\0y\n", 7, "syntax", 1, 5},
    {"\xFF\xFE"
     "a\0:\0",
     6, "encoding", 1, 1},
    {"\xFE\xFF\0a\0:", 6, "encoding", 1, 1},
    {"a: b\nc: \xFF\n", 0, "encoding", 2, 4},
    {"a: \xC3\xA9 \xC0\xAF\n", 0, "encoding", 1, 6},
    {"a: \xED\xA0\x80\n", 0, "encoding", 1, 4},
    {"a: \xE2\x82", 0, "encoding", 1, 4},
    {"", 0, "empty", 1, 1},
    {"# nothing but words\n", 0, "empty", 1, 1},
    {"a:\n\tb: 1\n", 0, "syntax", 2, 1},
    {"? [a, b]\n: 1\n", 0, "syntax", 1, 3},
};

static void yaml_refusals(void **state)
{
    struct world *w = *state;
    for (size_t i = 0; i < sizeof REFUSALS / sizeof *REFUSALS; i++) {
        const struct refusal *r = &REFUSALS[i];
        struct gw_diags diags;
        gw_diags_init(&diags, &w->arena);
        size_t length = r->length ? r->length : strlen(r->text);
        const struct gw_source *source = gw_source_from(&w->arena, "test", r->text, length);
        assert_null(gw_yaml_read(&w->arena, source, &diags));
        assert_true(diags.n > 0);
        const struct gw_diag *d = &diags.items[0];
        if (strcmp(d->code, r->code) != 0 || d->line != r->line || d->column != r->column)
            print_error("refusal %zu: %s %u:%u %s\n", i, d->code, d->line, d->column, d->message);
        assert_string_equal(d->code, r->code);
        assert_int_equal(d->line, r->line);
        assert_int_equal(d->column, r->column);
    }
}

static const char *nested(struct world *w, size_t depth)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_repeat(&text, '[', depth);
    gw_text_repeat(&text, ']', depth);
    return text.at;
}

static void yaml_depth(void **state)
{
    struct world *w = *state;
    assert_non_null(node_of(w, nested(w, GW_DEPTH_LIMIT)));
    assert_null(node_of(w, nested(w, GW_DEPTH_LIMIT + 1)));
    assert_string_equal(w->diags.items[0].code, "depth");
    assert_int_equal(w->diags.items[0].line, 1);
    assert_int_equal(w->diags.items[0].column, GW_DEPTH_LIMIT + 1);
}

static void yaml_all_duplicates_in_one_run(void **state)
{
    struct world *w = *state;
    assert_null(node_of(w, "a: 1\na: 2\nb: {c: 1, c: 2}\n"));
    assert_int_equal(w->diags.errors, 2);
}

static void yaml_places(void **state)
{
    struct world *w = *state;
    const struct gw_node *root = node_of(w, "é: 1\nlist:\n  - {k: 'v w'}\n  - &x 5\n  - *x\n");
    assert_non_null(root);
    const struct gw_node *list = gw_node_get(root, "list"), *item = list->first;
    assert_int_equal(root->first->column, 4);
    assert_int_equal(list->count, 3);
    assert_int_equal(gw_node_get(item, "k")->key_column, 6);
    assert_int_equal(gw_node_get(item, "k")->line, 3);
    assert_true(gw_node_get(item, "k")->quoted);
    assert_string_equal(item->next->next->text, "5");
    assert_null(gw_node_get(root, "none"));
}

static void nodes_are_set_by_path(void **state)
{
    struct world *w = *state;
    struct gw_node *root = node_of(w, "a: {b: 1}\nlist: [{x: 1}, {x: 2}]\nscalar: 3\n");
    assert_true(gw_node_set(&w->arena, root, "a.b", "7"));
    assert_true(gw_node_set(&w->arena, root, "a.c.d", "8"));
    assert_true(gw_node_set(&w->arena, root, "list.x", "9"));
    assert_true(gw_node_set(&w->arena, root, "new", "[1, 2]"));
    assert_false(gw_node_set(&w->arena, root, "scalar.x", "1"));
    assert_string_equal(text_at(gw_node_get(root, "a"), "b"), "7");
    assert_string_equal(text_at(gw_node_get(gw_node_get(root, "a"), "c"), "d"), "8");
    assert_string_equal(text_at(gw_node_get(root, "list")->first->next, "x"), "9");
    assert_int_equal(gw_node_get(root, "new")->count, 2);
}

static void diagnostics_show_the_line(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    node_of(w, "a: 1\nbé: 2\na: 3\n");
    gw_text_init(&text, &w->arena);
    gw_diag_print(&text, &w->diags.items[0]);
    assert_string_equal(text.at, "test:3:1: error: 'a' is given twice; first on line 1\n    a: 3\n    ^\n");
}

static void sources_that_cannot_be_read(void **state)
{
    struct world *w = *state;
    assert_null(gw_source_read(&w->arena, w->directory, &w->diags));
    assert_null(gw_source_read(&w->arena, gw_format(&w->arena, "%s/none", w->directory), &w->diags));
    assert_int_equal(w->diags.errors, 2);
    assert_string_equal(w->diags.items[0].code, "unreadable");
    assert_string_equal(w->diags.items[1].code, "unreadable");
}

static void diagnostics_stop_at_the_limit(void **state)
{
    struct world *w = *state;
    const struct gw_source *source = gw_source_from(&w->arena, "test", "x", 1);
    for (int i = 0; i < GW_DIAG_LIMIT + 5; i++)
        gw_diag_add(&w->diags, GW_ERROR, "syntax", NULL, source, 1, 1, "number %d", i);
    assert_int_equal(w->diags.n, GW_DIAG_LIMIT);
    assert_int_equal(w->diags.dropped, 5);
    assert_int_equal(w->diags.errors, GW_DIAG_LIMIT + 5);
}

/* CSV ---------------------------------------------------------------------------------------------------------------
 */

static const char *same_name(void *context, const char *header)
{
    (void)context;
    return strcmp(header, "skip") == 0 ? NULL : header;
}

static const struct gw_node *csv_of(struct world *w, const char *text)
{
    return gw_csv_read(&w->arena, gw_source_from(&w->arena, "test.csv", text, strlen(text)), same_name, NULL,
                       &w->diags);
}

static void csv_forms(void **state)
{
    struct world *w = *state;
    static const char *const forms[] = {
        "mark,width,height\nW1,\"5'-6\"\"\",7'-0\"\nW2,4 ft,\"6 ft, 2 in\"\n",
        "\xEF\xBB\xBFmark,width,height\r\nW1,\"5'-6\"\"\",7'-0\"\r\nW2,4 ft,\"6 ft, 2 in\"\r\n",
        "mark;width;height\nW1;\"5'-6\"\"\";7'-0\"\nW2;4 ft;6 ft, 2 in",
        "mark , skip, width,height\n\nW1,x,5'-6\",7'-0\"\n,,,\nW2,,4 ft , \"6 ft, 2 in\"\n",
    };
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
        const struct gw_node *rows = csv_of(w, forms[i]);
        assert_non_null(rows);
        assert_int_equal(rows->count, 2);
        assert_string_equal(text_at(rows->first, "mark"), "W1");
        assert_string_equal(text_at(rows->first, "width"), "5'-6\"");
        assert_string_equal(text_at(rows->first, "height"), "7'-0\"");
        assert_null(gw_node_get(rows->first, "skip"));
        assert_string_equal(text_at(rows->first->next, "width"), "4 ft");
        assert_string_equal(text_at(rows->first->next, "height"), "6 ft, 2 in");
    }
}

static void csv_refusals(void **state)
{
    struct world *w = *state;
    static const struct refusal cases[] = {
        {"", 0, "empty", 1, 1},
        {"a,b\n1,\"2\n", 0, "syntax", 2, 3},
        {"a,b\n1,2,3\n", 0, "syntax", 2, 5},
        {"a,b,a\n1,2,3\n", 0, "duplicate_key", 1, 5},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        w->diags.n = w->diags.errors = 0;
        assert_null(csv_of(w, cases[i].text));
        assert_string_equal(w->diags.items[0].code, cases[i].code);
        assert_int_equal(w->diags.items[0].line, cases[i].line);
        assert_int_equal(w->diags.items[0].column, cases[i].column);
    }
}

static void csv_places(void **state)
{
    struct world *w = *state;
    const struct gw_node *rows = csv_of(w, "mark,width\nW1,é\n\nWé, 4 ft\n");
    const struct gw_node *width = gw_node_get(rows->first->next, "width");
    assert_int_equal(width->line, 4);
    assert_int_equal(width->column, 5);
    assert_null(gw_node_get(csv_of(w, "mark,width\nW1\n")->first, "width"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(yaml_refusals),
        WORLD_TEST(yaml_depth),
        WORLD_TEST(yaml_all_duplicates_in_one_run),
        WORLD_TEST(yaml_places),
        WORLD_TEST(nodes_are_set_by_path),
        WORLD_TEST(diagnostics_show_the_line),
        WORLD_TEST(sources_that_cannot_be_read),
        WORLD_TEST(diagnostics_stop_at_the_limit),
        WORLD_TEST(csv_forms),
        WORLD_TEST(csv_refusals),
        WORLD_TEST(csv_places),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
