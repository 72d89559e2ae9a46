/* The page of candidates answers on its first lines, and does not grow with what is alike. */
#include "support.h"

#include "galeward/report.h"

static const char *page_as(struct world *w, const char *format, bool all)
{
    struct gw_results results;
    struct gw_text text;
    gw_results_of(&results, &w->arena, &w->answer, GW_US);
    results.all = all;
    const struct gw_result result = gw_result_check(&results);
    gw_text_init(&text, &w->arena);
    assert_int_equal(gw_format_named(format)->render(&text, &result, NULL, false), GW_OK);
    return text.at;
}

static void open_file(struct world *w, const char *path)
{
    const bool good = gw_model_load(&w->model, &w->arena, &w->diags, path, NULL, 0) &&
                      gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags);
    if (!good) print_diags(&w->diags);
    assert_true(good);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_answer_check(&w->answer, &w->ask);
}

static size_t lines_of(const char *text)
{
    size_t n = 0;
    for (; *text; text++) n += *text == '\n';
    return n;
}

static const char *first_lines(struct world *w, const char *text, size_t n)
{
    const char *end = text;
    for (size_t i = 0; i < n && *end; i++) end += strcspn(end, "\n") + 1;
    return gw_strndup(&w->arena, text, (size_t)(end - text));
}

/* Words as one line, whatever the column where they were broken. */
static const char *unwrapped(struct world *w, const char *text)
{
    struct gw_text out;
    gw_text_init(&out, &w->arena);
    for (bool gap = false; *text; text++) {
        if (*text != ' ' && *text != '\n') gw_text_bytes(&out, text, 1);
        else if (!gap) gw_text_add(&out, " ");
        gap = *text == ' ' || *text == '\n';
    }
    return out.at;
}

static void holds(const char *text, const char *part)
{
    if (!strstr(text, part)) print_error("not there: %s\n", part);
    assert_non_null(strstr(text, part));
}

/* Who passes, why the others do not, by how much, where, what to ask whom. */
static void first_lines_of_the_demo_answer(void **state)
{
    struct world *w = *state;
    open_file(w, "projects/tern-street.yaml");
    const char *text = page_as(w, "text", false);
    const char *first = unwrapped(w, first_lines(w, text, 50));
    static const char *const parts[] = {
        "Heron 75 PASS 1.00",
        "Heron 75 passes: nearest to its limit: Water penetration (water), rated exactly what is asked, 12 psf",
        "Plover 60 FAIL 1.14 443.5 lb 390 lb",
        "Plover 60 fails by 14 %: Ends of transoms (transom_connection): 390 lb provided, 443.5 lb asked",
        "20 transoms (east, north) in the edge strips (zone 5) only; 40 lites lean on them",
        "Plover 60 fails by 6 %: Structural test against wind pressure (structural): its test is short: L-0877: 50 "
        "psf, "
        "here 52.8 psf is asked; no complete calculation shows more; 4 mullions (east, north)",
        "Sandpiper U NOT SHOWN 122.5 psf tested 75 psf",
        "Sandpiper U is not shown: tested 75 psf, here 122.5 psf inward",
        ("tested lite height 9 ft, here 10 ft to 14 ft; the report records no make-up of its lites; ask the "
         "manufacturer for it (193 lites)"),
        "ask the manufacturer what was tested",
        "423 which section is the transom? Ask the manufacturer",
        " more below. Below: each candidate",
        "--all adds",
    };
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) holds(first, parts[i]);
    holds(unwrapped(w, text), "6 lites lean on them"); /* of 60 whose groups hold one that does */
    assert_true(lines_of(text) < 300);
    assert_true(lines_of(page_as(w, "text", true)) > 2 * lines_of(text));
    const char *markdown = page_as(w, "md", false);
    holds(markdown, "- Plover 60 fails by 14 %: Ends of transoms (transom_connection)");
}

/* A verdict that is not shown has no utilization beside it: what was tested and what is asked here stand there. */
#define WALL                                                                                                           \
    "galeward: 1\nunits: us\nproject: {name: W}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                        \
    "site: {basic_wind_speed: 115, exposure: C}\n"                                                                     \
    "buildings: [{name: low, roof_height: 90 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "lites: {a: {layers: [{glass: 6 mm, treatment: tempered}]}}\ncandidates: [x.yaml]\n"                               \
    "walls: [{name: s, width: 20 ft, top: 72 ft, ends: [corner, corner],\n"                                            \
    "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}], "

static void given_too_low_are_asked_first(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n");
    must_judge(w, WALL "floors: [0 ft, 36 ft]}]\n"
                       "pressures: given\ngiven: [{zone: 4, area: 40 ft2, inward: 10 psf, outward: 10 psf, level: "
                       "strength, source: S},\n"
                       "  {zone: 5, area: 40 ft2, inward: 10 psf, outward: 10 psf, level: strength, source: S}]\n");
    const char *text = page_as(w, "text", false), *missing = strstr(text, "What is missing, whom to ask");
    assert_non_null(missing);
    holds(unwrapped(w, gw_strndup(&w->arena, missing, 600)), "ask the structural engineer which holds");
}

/* A statement that shows more hides no gap of a report; what is limited says so beside its figures. */
static void each_rating_has_its_own_gaps(void **state)
{
    struct world *w = *state;
    put_file(
        w, "x.yaml",
        "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\nratings:\n"
        "  - {test: structural, positive: 90 psf, negative: 90 psf}\n"
        "  - {test: structural, positive: 60 psf, negative: 60 psf, report: Q-9, tested: {module: 5 ft, span: 12 ft, "
        "lite_width: 5 ft, lite_height: 12 ft, make_up: a}}\n"
        "  - {test: air, leakage: 0.09 cfm/ft2, at: 6.24 psf, report: Q-10}\n");
    must_judge(w, WALL "floors: [0 ft, 36 ft]}]\nrequirements: {air: {leakage: 0.06 cfm/ft2, at: 6.24 psf}}\n");
    const char *text = page_as(w, "text", false), *gaps = strstr(text, "Its tests do not show");
    assert_non_null(gaps);
    const char *words = unwrapped(w, gaps), *report = strstr(words, "Q-9: tested lite height 12 ft, here 36 ft"),
               *stated = strstr(words, "report not named: the report's tested dimensions are not given");
    assert_non_null(report);
    assert_non_null(stated);
    assert_true(report < stated);
    holds(words, "Q-9: tested span 12 ft, here 36 ft");
    holds(unwrapped(w, text), "limit 0.06 cfm/ft2 here 0.09 cfm/ft2");
}

/* Glass that the project chose is no candidate's fault: told once, and beside it what each is without it. */
static void the_glass_of_the_project_is_told_once(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\npocket: [1/4 in]\n");
    put_file(w, "y.yaml",
             "galeward: 1\nsystem: {name: Y, kind: stick, glazing: captured}\npocket: [1/4 in]\nratings:\n"
             "  - {test: air, leakage: 0.09 cfm/ft2, at: 6.24 psf, report: Q-10}\n");
    must_judge(w, "galeward: 1\nunits: us\nproject: {name: W}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
                  "site: {basic_wind_speed: 115, exposure: C}\n"
                  "buildings: [{name: low, roof_height: 90 ft, least_width: 80 ft, enclosure: enclosed}]\n"
                  "lites: {a: {layers: [{glass: 6 mm, treatment: annealed}]}}\ncandidates: [x.yaml, y.yaml]\n"
                  "walls: [{name: s, width: 20 ft, top: 72 ft, ends: [corner, corner], floors: [0 ft, 12 ft],\n"
                  "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"
                  "requirements: {air: {leakage: 0.06 cfm/ft2, at: 6.24 psf}}\n");
    const char *text = page_as(w, "text", false), *missing = strstr(text, "What is missing");
    assert_non_null(missing);
    const char *first = unwrapped(w, gw_strndup(&w->arena, text, (size_t)(missing - text)));
    const char *sentence = strstr(first, "The project's glass fails, for every system,");
    assert_non_null(sentence);
    assert_null(strstr(sentence + 1, "The project's glass fails"));
    holds(first, "change lites.a");
    holds(first, "X FAIL NOT SHOWN");
    holds(first, "Y FAIL FAIL 1.50 limit 0.06 cfm/ft2 here 0.09 cfm/ft2");
    holds(first, "X is not shown: ");
    holds(first, "Y fails by 50 %: Air leakage");
    /* what the project's own people know is asked once, before what the manufacturers know */
    const char *asked = unwrapped(w, gw_strndup(&w->arena, missing, 3000)), *own = strstr(asked, "the project 1 "),
               *maker = strstr(asked, "the manufacturer");
    assert_non_null(own);
    assert_non_null(maker);
    assert_true(own < maker);
}

static void not_shown_has_no_use(void **state)
{
    struct world *w = *state;
    open_file(w, "projects/tern-street.yaml");
    const char *text = page_as(w, "text", false);
    assert_true(w->answer.judgement.summaries.items[2].governing->utilization > 1.6);
    assert_null(strstr(text, " 1.64"));
}

/* Each candidate of many has its verdict, and its reason where it does not pass, before the first of them is told. */
static void many_candidates_are_told_first(void **state)
{
    struct world *w = *state;
    open_file(w, "projects/gull-point.yaml");
    const char *text = page_as(w, "text", false);
    const char *end = strstr(text, "Below: each candidate");
    assert_non_null(end);
    const char *first = gw_strndup(&w->arena, text, (size_t)(end - text));
    assert_true(lines_of(first) < 70);
    for (size_t i = 0; i < w->answer.judgement.summaries.n; i++) {
        const struct gw_summary *s = &w->answer.judgement.summaries.items[i];
        const bool pass = s->verdict == GW_PASS;
        holds(first, gw_format(&w->arena, "- %s %s", s->candidate->name, pass ? "passes: " : "fails"));
    }
    assert_null(strstr(first, " 0.38")); /* debris: the missile is too small, whatever the pressure */
}

/* What is asked of two floors and of six is asked once, with the places counted. */
static void stories_add_no_lines(void **state)
{
    struct world *w = *state;
    static const char SYSTEM[] =
        "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n"
        "ratings: [{test: structural, positive: 60 psf, negative: 60 psf, tested: {span: 9 ft}, report: R-1}]\n";
    put_file(w, "x.yaml", SYSTEM);
    must_judge(w, WALL "floors: [0 ft, 36 ft]}]\n");
    const size_t low = lines_of(page_as(w, "text", false));
    must_judge(w, WALL "floors: [0 ft, 12 ft, 24 ft, 36 ft, 48 ft, 60 ft]}]\n");
    const char *text = unwrapped(w, page_as(w, "text", false));
    const char *section = "which section is the mullion? Ask the manufacturer";
    assert_true(lines_of(page_as(w, "text", false)) <= low + 6);
    holds(text, section);
    /* once on the first screen, once with its places */
    const char *again = strstr(strstr(text, section) + 1, section);
    assert_non_null(again);
    assert_null(strstr(again + 1, section));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(first_lines_of_the_demo_answer), WORLD_TEST(given_too_low_are_asked_first),
        WORLD_TEST(not_shown_has_no_use),           WORLD_TEST(many_candidates_are_told_first),
        WORLD_TEST(each_rating_has_its_own_gaps),   WORLD_TEST(the_glass_of_the_project_is_told_once),
        WORLD_TEST(stories_add_no_lines),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
