/* Names of a stranger's making on their way to a terminal, a spreadsheet, a page. */
#include "support.h"

#include "galeward/report.h"

static void what_is_replaced(void **state)
{
    struct world *w = *state;
    static const struct {
        const char *text, *safe;
    } cases[] = {
        {"", ""},
        {"Überlicht 5'-6 1/2\" \xE6\x9D\xB1 \xF0\x9F\x8F\xA2", "Überlicht 5'-6 1/2\" \xE6\x9D\xB1 \xF0\x9F\x8F\xA2"},
        {"a\tb\r\nc", "a b  c"},
        {"\x1B[31mred\x07\x7F", "�[31mred��"},
        {"\xC2\x9B"
         "31m\xC2\xA0",
         "�31m\xC2\xA0"}, /* C1; the no-break space next to it stays */
        {"a\xE2\x80\xAE"
         "b\xE2\x81\xA6"
         "c\xE2\x80\x8E\xD8\x9C",
         "a�b�c��"},                                                           /* U+202E 2066 200E 061C */
        {"\xE2\x80\xA8\xE2\x80\xA7\xE2\x80\x93", "�\xE2\x80\xA7\xE2\x80\x93"}, /* U+2028; 2027 and the dash stay */
        {"x\xFF\xC3(\xE2\x80", "x��(��"},                                      /* cut and stray bytes */
        {"\xED\xA0\x80\xC0\xAF", "�����"},                                     /* a surrogate, an overlong '/' */
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const char *safe = gw_safe(&w->arena, cases[i].text);
        assert_string_equal(safe, cases[i].safe);
        assert_int_equal(safe == cases[i].text, strcmp(cases[i].text, cases[i].safe) == 0);
    }
}

/* A table of one cell, without its header and line end. */
static const char *cell(struct world *w, const char *text)
{
    static const struct gw_report_column column = {.title = "x"};
    struct gw_report report;
    struct gw_text out;
    gw_report_init(&report, &w->arena);
    gw_report_table(&report, "", &column, 1);
    gw_report_cell(&report, text);
    gw_text_init(&out, &w->arena);
    gw_render_csv(&out, &report);
    out.at[out.length - 1] = '\0';
    return out.at + 2;
}

static void no_cell_is_a_formula(void **state)
{
    struct world *w = *state;
    assert_string_equal(cell(w, "=1+1"), "'=1+1");
    assert_string_equal(cell(w, "=HYPERLINK(\"x\",1)"), "\"'=HYPERLINK(\"\"x\"\",1)\"");
    assert_string_equal(cell(w, "+cmd"), "'+cmd");
    assert_string_equal(cell(w, "-2+3"), "'-2+3");
    assert_string_equal(cell(w, "@SUM(A1)"), "'@SUM(A1)");
    assert_string_equal(cell(w, "\t=1"), " =1");    /* what made it one is gone */
    assert_string_equal(cell(w, "-55.0"), "-55.0"); /* a number */
    assert_string_equal(cell(w, "+1e3"), "+1e3");
    assert_string_equal(cell(w, "W-1=2"), "W-1=2");
    assert_string_equal(cell(w, "a\x1B,b"), "\"a�,b\"");
}

static void report_of(struct gw_report *report, struct world *w, const char *name)
{
    static const struct gw_report_column columns[] = {{.title = "Name"}, {.title = "psf", .right = true}};
    gw_report_init(report, &w->arena);
    gw_report_heading(report, 1, name);
    gw_report_line(report, name);
    gw_report_item(report, name);
    gw_report_table(report, name, columns, 2);
    gw_report_cell(report, name);
    gw_report_cell(report, "-55.0");
}

static void reports_are_safe(void **state)
{
    struct world *w = *state;
    struct gw_report report;
    struct gw_text text, csv;
    report_of(&report, w, "=a\x1B]0;b\x07\xE2\x80\xAE");
    gw_text_init(&text, &w->arena);
    gw_render_text(&text, &report, false);
    gw_render_markdown(&text, &report);
    gw_text_init(&csv, &w->arena);
    gw_render_csv(&csv, &report);
    assert_string_equal(csv.at, "Name,psf\n\"'=a�]0;b��\",-55.0\n");
    assert_null(strpbrk(text.at, "\x1B\x07"));
    assert_null(strstr(text.at, "\xE2\x80\xAE"));
}

static const char *markdown(struct world *w, const char *line)
{
    struct gw_report report;
    struct gw_text text;
    gw_report_init(&report, &w->arena);
    gw_report_line(&report, line);
    gw_text_init(&text, &w->arena);
    gw_render_markdown(&text, &report);
    text.at[text.length - 1] = '\0'; /* the line end */
    return text.at;
}

static void markdown_is_escaped(void **state)
{
    struct world *w = *state;
    assert_string_equal(markdown(w, "[a](b) ![c] <i> *d* `e` f|g ~h~ \\"),
                        "\\[a\\](b) !\\[c\\] \\<i> \\*d\\* \\`e\\` f\\|g \\~h\\~ \\\\");
    assert_string_equal(markdown(w, "story_drift_ratio _x_ &lt; R&D & &#60;"),
                        "story_drift_ratio \\_x\\_ \\&lt; R\\&D & \\&#60;");
    assert_string_equal(markdown(w, "# a"), "\\# a");
    assert_string_equal(markdown(w, "12. a"), "12\\. a");
    assert_string_equal(markdown(w, "12.5 ft - 1"), "12.5 ft - 1");
    assert_string_equal(markdown(w, "- a"), "\\- a");
}

/* In JSON they are written as escapes, so nothing is lost. */
static void json_is_safe(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    struct gw_json json;
    gw_text_init(&text, &w->arena);
    gw_json_init(&json, &text, false);
    gw_json_text(&json, "a\x1B\xC2\x9B\xE2\x80\xAE\"\\\n\xFF");
    assert_string_equal(text.at, "\"a\\u001b\\u009b\\u202e\\\"\\\\\\n\\ufffd\"");
}

static void diagnostics_are_safe(void **state)
{
    struct world *w = *state;
    const char source_text[] = "a\xE2\x80\xAE: 1\nb: 2\n";
    const struct gw_source *source = gw_source_from(&w->arena, "x\x1Bm.yaml", source_text, sizeof source_text - 1);
    struct gw_text text;
    gw_diag_add(&w->diags, GW_ERROR, "bad_value", NULL, source, 1, 3, "'%s' is odd", "a\xE2\x80\xAE");
    gw_text_init(&text, &w->arena);
    gw_diag_print(&text, &w->diags.items[0]);
    assert_string_equal(text.at, "x�m.yaml:1:3: error: 'a�' is odd\n    a�: 1\n      ^\n");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(what_is_replaced),    WORLD_TEST(no_cell_is_a_formula), WORLD_TEST(reports_are_safe),
        WORLD_TEST(markdown_is_escaped), WORLD_TEST(json_is_safe),         WORLD_TEST(diagnostics_are_safe),
    };
    return cmocka_run_group_tests_name("safe", tests, NULL, NULL);
}
