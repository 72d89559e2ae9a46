/* What pages say of the rows that nobody here saw in their source. */
#include "support.h"

#include "galeward/report.h"

/* One lite of 5 x 9 ft, 3 mm heat strengthened, at 150 mph, too weak: its strength rests on the recalled flaw model and
 * factor.
 */
static const char PROJECT[] = "galeward: 1\nproject: {name: Rested}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
                              "site: {basic_wind_speed: 150 mph, exposure: C}\n"
                              "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
                              "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 9 ft, ends: [none, none],\n"
                              "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"
                              "lites: {a: {layers: [{glass: 3 mm, treatment: heat_strengthened}]}}\n"
                              "candidates: [x.yaml]\n";
static const char SYSTEM[] = "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n";
static const char FLAWS[] = "(glass_flaws:",
                  LISTED[] = "recalled: Surface-flaw failure model: glass_flaws / weathered-annealed";

static const char *page(struct world *w, bool sources, const char *format)
{
    struct gw_answer answer;
    struct gw_results results;
    struct gw_text text;
    struct gw_engine engine;
    put_file(w, "x.yaml", SYSTEM);
    must_judge(w, PROJECT);
    gw_answer_check(&answer, &w->ask);
    gw_results_of(&results, &w->arena, &answer, GW_US);
    results.sources = sources;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    gw_text_init(&text, &w->arena);
    const struct gw_result result = gw_result_check(&results);
    assert_int_equal(gw_format_named(format)->render(&text, &result, &engine, false), GW_OK);
    return text.at;
}

static unsigned times(const char *text, const char *part)
{
    unsigned n = 0;
    for (const char *at = strstr(text, part); at; at = strstr(at + 1, part)) n++;
    return n;
}

static void first_screen_names_what_governs(void **state)
{
    struct world *w = *state;
    const char *text = page(w, false, "text");
    const char *first = strstr(text, "What governs X rests on recalled numbers");
    assert_non_null(first);
    assert_int_equal(times(text, FLAWS), 1); /* glass governs, and its checks do not repeat it */
    assert_int_equal(times(text, LISTED), 0);
    assert_non_null(strstr(text, "recalled, not seen in their source; --sources lists them"));
    assert_int_equal(times(text, "wind_terrain"), 0); /* second-hand, not recalled */
}

static void sources_lists_every_row(void **state)
{
    struct world *w = *state;
    const char *text = page(w, true, "text");
    assert_true(times(text, FLAWS) > 1);
    assert_int_equal(times(text, LISTED), 1);
    assert_int_equal(times(text, "second-hand: Terrain exposure constants: wind_terrain / asce7-16-C"), 1);
    assert_int_equal(times(text, "--sources"), 0);
}

static void data_keep_all(void **state)
{
    struct world *w = *state;
    assert_true(times(page(w, false, "json"), "\"weathered-annealed\"") > 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(first_screen_names_what_governs),
        WORLD_TEST(sources_lists_every_row),
        WORLD_TEST(data_keep_all),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
