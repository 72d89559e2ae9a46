/* What '--against' writes: inputs, verdicts, elements that are new or gone, then values merged by where they stand. */
#include "galeward/against.h"

#include "base/fields.h"
#include "report/page.h"
#include "report/results.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const struct gw_field CHANGE[] = {
    F(gw_change, what, GW_T_TEXT,
      .help = "input, summary, verdict, element, demand, reaction, member, mock-up, difference or reach"),
    F(gw_change, where, GW_T_TEXT, .help = "file, candidate, element, wall, lite type, project, zone or test"),
    F(gw_change, candidate, GW_T_TEXT, .help = "name of the system"),
    F(gw_change, check, GW_T_TEXT, .help = "id of the check"),
    F(gw_change, direction, GW_T_TEXT, .help = "inward or outward, where it matters"),
    F(gw_change, key, GW_T_TEXT, .help = "of the result, with its unit; in a list its item too: terms.2.value"),
    F(gw_change, was, GW_T_EITHER, .help = "there; null: nothing, as of what is new"),
    F(gw_change, is, GW_T_EITHER, .help = "computed anew; null: nothing, as of what is gone"),
};
static const struct gw_record CHANGE_RECORD = RECORD("change", gw_change, CHANGE, .help = "one value that differs");
static const struct gw_field AGAINST[] = {
    {.key = "remarks",
     .type = GW_T_RECORD,
     .record = &gw_remarks_record,
     .flags = GW_FLAT,
     .offset = offsetof(struct gw_against, results)},
    FIELD(gw_against, "against", file, GW_T_TEXT, .help = "the result that was read"),
    FIELD(gw_against, "against_version", version, GW_T_TEXT, .help = "of the program that wrote it"),
    F(gw_against, unchanged, GW_T_COUNT, .help = "values that are the same"),
    F(gw_against, changes, GW_T_RECORD, .flags = GW_MANY, .record = &CHANGE_RECORD, .help = "what differs"),
};
const struct gw_record gw_against_record = RECORD("against", gw_against, AGAINST, .help = "what '--against' writes");

/* Rows of the page --------------------------------------------------------------------------------------------------
 */

/* Changes that share a row: the one that is shown, and how many they are. */
struct merged {
    const struct gw_change *shown;
    double size; /* of its difference */
    size_t n, first, wall;
};

typedef int order_of(const struct gw_change *a, const struct gw_change *b);

static int compare_words(const char *a, const char *b) { return strcmp(a ? a : "", b ? b : ""); }

static int by_verdict(const struct gw_change *a, const struct gw_change *b)
{
    int order = compare_words(a->candidate, b->candidate);
    if (!order) order = compare_words(a->check, b->check);
    if (!order) order = compare_words(a->was.words, b->was.words);
    return order ? order : compare_words(a->is.words, b->is.words);
}

static int by_place(const struct gw_change *a, const struct gw_change *b)
{
    int order = compare_words(a->wall, b->wall);
    if (!order) order = compare_words(a->kind, b->kind);
    if (!order) order = (a->zone > b->zone) - (a->zone < b->zone);
    return order ? order : compare_words(a->mark, b->mark);
}

static int by_lone_place(const struct gw_change *a, const struct gw_change *b)
{
    const int order = by_place(a, b);
    return order ? order : (a->is_gone > b->is_gone) - (a->is_gone < b->is_gone);
}

static int by_value(const struct gw_change *a, const struct gw_change *b)
{
    int order = by_place(a, b);
    if (!order) order = compare_words(a->what, b->what);
    if (!order) order = compare_words(a->check, b->check);
    return order ? order : compare_words(a->key, b->key);
}

/* How much it differs: of verdicts by the use that they have now. */
static double size_of(const struct gw_change *c)
{
    if (gw_given(c->was.number) && gw_given(c->is.number))
        return fabs(c->is.number - c->was.number) / fmax(fabs(c->is.number), fabs(c->was.number));
    return gw_given(c->use) ? c->use : 0;
}

struct table {
    struct merged *rows;
    size_t n;
};

static void merge(struct table *t, const struct gw_change *change, order_of *same)
{
    const double size = size_of(change);
    for (size_t i = 0; same && i < t->n; i++) {
        struct merged *row = &t->rows[i];
        if (same(row->shown, change)) continue;
        if (size > row->size) row->shown = change;
        if (size > row->size) row->size = size;
        row->n++;
        return;
    }
    t->rows[t->n] = (struct merged){.shown = change, .size = size, .n = 1, .first = t->n};
    t->n++;
}

/* Those that `takes`, merged where `same` finds no order between them; NULL: each for itself. */
static struct table rows_of(struct page *page, const struct gw_against *a, bool (*takes)(const struct gw_change *),
                            order_of *same)
{
    struct table table = {.rows = gw_alloc(page->arena, a->changes.n + 1, sizeof *table.rows)};
    for (size_t i = 0; i < a->changes.n; i++)
        if (takes(&a->changes.items[i])) merge(&table, &a->changes.items[i], same);
    return table;
}

/* The first row of the wall: walls stand in the order of the result. */
static size_t wall_of(const struct table *t, const struct merged *row)
{
    size_t i = 0;
    while (compare_words(t->rows[i].shown->wall, row->shown->wall)) i++;
    return i;
}

static int by_place_then_order(const void *a, const void *b)
{
    const struct merged *x = a, *y = b;
    const int order = x->wall != y->wall ? (x->wall > y->wall) - (x->wall < y->wall) : by_place(x->shown, y->shown);
    return order ? order : (x->first > y->first) - (x->first < y->first);
}

static void sort_by_place(struct table *t)
{
    for (size_t i = 0; i < t->n; i++) t->rows[i].wall = wall_of(t, &t->rows[i]);
    if (t->n) qsort(t->rows, t->n, sizeof *t->rows, by_place_then_order);
}

static bool is(const struct gw_change *c, const char *what) { return strcmp(c->what, what) == 0; }
static bool is_key(const struct gw_change *c, const char *key) { return strcmp(c->key, key) == 0; }
static bool is_input(const struct gw_change *c) { return is(c, "input"); }
static bool is_candidate(const struct gw_change *c) { return is(c, "summary") && is_key(c, "verdict"); }
static bool is_verdict(const struct gw_change *c) { return is(c, "verdict") && is_key(c, "verdict"); }
static bool is_use(const struct gw_change *c) { return is(c, "verdict") && is_key(c, "utilisation"); }
static bool is_lone_element(const struct gw_change *c) { return is(c, "element") && (c->is_new || c->is_gone); }

static bool is_judged(const struct gw_change *c) { return is(c, "verdict") || is(c, "summary"); }

static bool is_value(const struct gw_change *c)
{
    return !is_judged(c) && !c->is_new && !c->is_gone && gw_given(c->was.number) && gw_given(c->is.number);
}

/* Allowable-stress pressures go with those at strength level, reactions at strength level with the others, the
 * response of a unit stiffness with the inertia that is needed. */
static bool is_page_value(const struct gw_change *c)
{
    const bool twice = (is(c, "element") && (is_key(c, "inward_asd_pa") || is_key(c, "outward_asd_pa"))) ||
                       (is(c, "reaction") && (is_key(c, "inward_n") || is_key(c, "outward_n"))) ||
                       strstr(c->key, "response");
    return is_value(c) && !twice && !is(c, "difference");
}

/* What no table shows. */
static bool is_other(const struct gw_change *c)
{
    return !is_input(c) && !is_candidate(c) && !is_verdict(c) && !is_use(c) && !is_lone_element(c) && !is_value(c);
}

/* Cells -------------------------------------------------------------------------------------------------------------
 */

static void cell(struct page *page, const char *text) { gw_report_cell(page->report, text ? text : "-"); }
static void number_cell(struct page *page, size_t n) { cell(page, gw_format(page->arena, "%zu", n)); }

static void use_cell(struct page *page, double use)
{
    struct gw_text text;
    gw_text_init(&text, page->arena);
    gw_add_utilization(&text, use);
    cell(page, text.length ? text.at : "-");
}

static enum gw_tone tone_of(const char *verdict)
{
    return !verdict                       ? GW_PLAIN
           : strcmp(verdict, "pass") == 0 ? GW_GOOD
           : strcmp(verdict, "fail") == 0 ? GW_BAD
                                          : GW_DOUBTFUL;
}

static void verdict_cell(struct page *page, const char *verdict)
{
    gw_report_toned(page->report, tone_of(verdict), verdict ? verdict : "-");
}

static const char *spaced(struct gw_arena *arena, const char *key, size_t length)
{
    char *words = gw_strndup(arena, key, length);
    for (char *at = words; *at; at++) *at = *at == '_' ? ' ' : *at;
    return words;
}

/* "moment_asd_nm": "moment ASD"; of a demand, whose values have no name: "screw, force". */
static const char *name_of_value(struct page *page, const struct gw_change *c)
{
    struct gw_arena *arena = page->arena;
    const struct gw_dim_info *dim = gw_dim_info(c->dim);
    if (is(c, "demand"))
        return gw_format(
            arena, "%s, %s%s%s", c->check, strstr(c->key, "at_pa") ? "at " : "",
            strstr(c->key, "response") ? "deflection response" : dim->name,
            strstr(c->key, "outward") || (c->direction && strcmp(c->direction, "outward") == 0) ? " outward" : "");
    size_t length = strlen(c->key), end = strlen(dim->suffix);
    if (end && length > end + 1 && strcmp(c->key + length - end, dim->suffix) == 0) length -= end + 1;
    const bool asd = length > 4 && memcmp(c->key + length - 4, "_asd", 4) == 0;
    return gw_format(arena, "%s%s%s", is(c, "reaction") ? "reaction " : "",
                     spaced(arena, c->key, asd ? length - 4 : length), asd ? " ASD" : "");
}

static const char *percent(struct page *page, const struct gw_change *c)
{
    struct gw_text text;
    gw_text_init(&text, page->arena);
    if (c->was.number == 0) return "-";
    const bool turned = c->was.number * c->is.number < 0; /* else of the magnitudes: positive is inward */
    const double now = turned ? c->is.number : fabs(c->is.number), then = turned ? c->was.number : fabs(c->was.number);
    const double share = 100 * (now - then) / fabs(c->was.number);
    if (share > 0) gw_text_add(&text, "+");
    gw_text_fixed(&text, share, fabs(share) < 10 ? 1 : 0);
    gw_text_add(&text, " %");
    return text.at;
}

/* Sections ----------------------------------------------------------------------------------------------------------
 */

static void inputs(struct page *page, const struct gw_against *a)
{
    const struct table t = rows_of(page, a, is_input, NULL);
    gw_report_heading(page->report, 2, "Files");
    if (!t.n) gw_report_line(page->report, "The same bytes in every file; --set, or the program, made what differs.");
    for (size_t i = 0; i < t.n; i++) {
        const struct gw_change *c = t.rows[i].shown;
        gw_report_item(page->report, gw_format(page->arena, "%s: %s", c->where,
                                               c->is_new    ? "new"
                                               : c->is_gone ? "no longer read"
                                                            : "changed"));
    }
}

static void candidates(struct page *page, const struct gw_against *a)
{
    static const struct gw_report_column columns[] = {{.title = "Candidate"},
                                                      {.title = "Was"},
                                                      {.title = "Is"},
                                                      {.title = "Use was", .right = true},
                                                      {.title = "Use is", .right = true}};
    const struct table t = rows_of(page, a, is_candidate, NULL);
    if (!t.n) return;
    gw_report_table(page->report, "Candidates whose verdict changed.", columns, COUNT(columns));
    for (size_t i = 0; i < t.n; i++) {
        const struct gw_change *c = t.rows[i].shown;
        cell(page, c->candidate);
        verdict_cell(page, c->was.words);
        verdict_cell(page, c->is.words);
        use_cell(page, c->was_use);
        use_cell(page, c->use);
    }
}

static void verdict_rows(struct page *page, const struct table *t)
{
    static const struct gw_report_column columns[] = {{.title = "Candidate"},
                                                      {.title = "Check"},
                                                      {.title = "Element"},
                                                      {.title = "Was"},
                                                      {.title = "Is"},
                                                      {.title = "Use was", .right = true},
                                                      {.title = "Use is", .right = true},
                                                      {.title = "Places", .right = true}};
    gw_report_table(page->report, "Checks whose verdict changed; of alike ones the place of the greatest use.", columns,
                    COUNT(columns));
    for (size_t i = 0; i < t->n; i++) {
        const struct gw_change *c = t->rows[i].shown;
        cell(page, c->candidate);
        cell(page, c->direction ? gw_format(page->arena, "%s, %s", c->check, c->direction) : c->check);
        cell(page, c->where);
        verdict_cell(page, c->was.words);
        verdict_cell(page, c->is.words);
        use_cell(page, c->was_use);
        use_cell(page, c->use);
        number_cell(page, t->rows[i].n);
    }
}

static void verdicts(struct page *page, const struct gw_against *a)
{
    const struct table t = rows_of(page, a, is_verdict, page->results->all ? NULL : by_verdict);
    size_t uses = 0;
    for (size_t i = 0; i < a->changes.n; i++) uses += is_use(&a->changes.items[i]);
    if (!page->results->answer->judgement.summaries.n) return;
    gw_report_heading(page->report, 2, "Verdicts");
    candidates(page, a);
    if (t.n) verdict_rows(page, &t);
    else gw_report_line(page->report, "No verdict of a check changed.");
    if (uses) gw_report_line(page->report, gw_format(page->arena, "%zu verdicts have another use.", uses));
}

static void elements(struct page *page, const struct gw_against *a)
{
    static const struct gw_report_column columns[] = {
        {.title = "Wall"},  {.title = "Kind"},  {.title = "Zone", .right = true},  {.title = "Part"},
        {.title = "State"}, {.title = "First"}, {.title = "Groups", .right = true}};
    const struct table t = rows_of(page, a, is_lone_element, page->results->all ? NULL : by_lone_place);
    if (!t.n) return;
    gw_report_heading(page->report, 2, "Elements");
    gw_report_table(page->report, "New, or gone; by place and size, whatever their number.", columns, COUNT(columns));
    for (size_t i = 0; i < t.n; i++) {
        const struct gw_change *c = t.rows[i].shown;
        cell(page, c->wall);
        cell(page, c->kind);
        cell(page, c->zone ? gw_format(page->arena, "%d", c->zone) : NULL);
        cell(page, c->mark);
        cell(page, c->is_new ? "new" : "gone");
        cell(page, c->where);
        number_cell(page, t.rows[i].n);
    }
}

/* What a person designs to is rounded to the safe side. */
static enum rounding rounding_of(enum gw_dim dim)
{
    return dim == GW_PRESSURE || dim == GW_FORCE || dim == GW_MOMENT || dim == GW_INERTIA ? UP : NEAREST;
}

static void value_row(struct page *page, const struct merged *row)
{
    const struct gw_change *c = row->shown;
    cell(page, c->wall ? c->wall : c->where);
    cell(page, c->kind);
    cell(page, c->zone ? gw_format(page->arena, "%d", c->zone) : NULL);
    cell(page, c->mark);
    cell(page, name_of_value(page, c));
    cell(page, gw_quantity_text(page, c->dim, c->was.number, rounding_of(c->dim)));
    cell(page, gw_quantity_text(page, c->dim, c->is.number, rounding_of(c->dim)));
    cell(page, percent(page, c));
    cell(page, c->where);
    number_cell(page, row->n);
}

static void values(struct page *page, const struct gw_against *a)
{
    static const struct gw_report_column columns[] = {{.title = "Wall"},
                                                      {.title = "Kind"},
                                                      {.title = "Zone", .right = true},
                                                      {.title = "Part"},
                                                      {.title = "Value"},
                                                      {.title = "Was", .right = true},
                                                      {.title = "Is", .right = true},
                                                      {.title = "Change", .right = true},
                                                      {.title = "Where"},
                                                      {.title = "Groups", .right = true}};
    const bool all = page->results->all;
    struct table t = rows_of(page, a, all ? is_value : is_page_value, all ? NULL : by_value);
    if (!t.n) return;
    if (!all) sort_by_place(&t);
    gw_report_heading(page->report, 2, "Demands and pressures");
    gw_report_table(page->report, "The greatest change of alike ones; pressures at strength level unless they say ASD.",
                    columns, COUNT(columns));
    for (size_t i = 0; i < t.n; i++) value_row(page, &t.rows[i]);
}

static void rest(struct page *page, const struct gw_against *a)
{
    size_t n = 0;
    for (size_t i = 0; i < a->changes.n; i++) n += is_other(&a->changes.items[i]);
    if (n)
        gw_report_line(page->report,
                       gw_format(page->arena, "%zu more words and values differ: --format csv or json.", n));
}

static void against_page(struct gw_report *report, const struct gw_result *result)
{
    const struct gw_against *a = result->value;
    struct page page = gw_page_of(report, a->results);
    gw_page_head(&page, "What differs");
    gw_report_line(report, gw_format(report->arena, "Against %s, written by galeward %s.", a->file, a->version));
    if (strcmp(a->version, GW_VERSION) != 0)
        gw_report_item(report, gw_format(report->arena, "It was written by another version; this is " GW_VERSION
                                                        ". What both have is compared."));
    if (!a->changes.n) {
        gw_report_line(report, gw_format(report->arena, "Nothing differs: %ld values are the same.", a->unchanged));
        return;
    }
    inputs(&page, a);
    verdicts(&page, a);
    elements(&page, a);
    values(&page, a);
    rest(&page, a);
    gw_report_line(report, gw_caution_text());
}

struct gw_result gw_result_against(const struct gw_against *against)
{
    return (struct gw_result){.shown = against->results->shown,
                              .record = &gw_against_record,
                              .value = against,
                              .rows = "changes",
                              .page = against_page};
}
