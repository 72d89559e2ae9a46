/* Pages of readings: what is not met stands on each of them, whole; how questions and orders are told apart. */
#include "support.h"

#include "galeward/inspection.h"
#include "galeward/report.h"
#include "report/asking.h"

#define PROJECT                                                                                                        \
    "galeward: 1\nunits: us\nproject: {name: W}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                        \
    "site: {basic_wind_speed: 115, exposure: C}\n"                                                                     \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 160 ft, floors: [0 ft, 12 ft], top: 24 ft, ends: [corner, corner],\n"                    \
    "  columns: {count: 32, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"                                         \
    "lites: {a: {layers: [{glass: 6 mm, treatment: tempered}]}}\ncandidates: [x.yaml]\n"

enum { EACH = 20 };

/* Falls inward of as many slopes, which nothing merges, and an anchor loose at 20 places, which are one entry. */
static const char *sheet_of_readings(struct world *w)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_add(&text, "wall,column,story,row,edge,line,item,value\n");
    for (int i = 1; i <= EACH; i++) {
        gw_text_addf(&text, "s,%d,1,1,sill,,sill_slope,-%d in per ft\n", i, i);
        gw_text_addf(&text, "s,,1,,,%d,anchor_fastened,loose\n", i);
    }
    return text.at;
}

static const char *page_as(struct world *w, const struct gw_inspection *inspection, const char *format)
{
    struct gw_results results;
    struct gw_text text;
    gw_results_of(&results, &w->arena, &w->answer, GW_US);
    const struct gw_result result = gw_result_inspection(&w->arena, &results, inspection);
    gw_text_init(&text, &w->arena);
    assert_int_equal(gw_format_named(format)->render(&text, &result, NULL, false), GW_OK);
    return text.at;
}

static void nothing_missed_is_left_out(void **state)
{
    static const char *const formats[] = {"md", "html"};
    struct world *w = *state;
    struct gw_readings readings;
    struct gw_inspection inspection;
    const char *csv = sheet_of_readings(w);
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n");
    must_take_off(w, PROJECT);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_answer_check(&w->answer, &w->ask);
    assert_true(gw_readings_read(&readings, &w->model, gw_source_from(&w->arena, "r.csv", csv, strlen(csv))));
    gw_inspect(&inspection, &w->ask, &readings, &w->model.systems.items[0]);
    assert_int_equal(inspection.counts[GW_ITEM_NOT_MET], 2 * EACH);
    for (size_t f = 0; f < sizeof formats / sizeof *formats; f++) {
        const char *page = page_as(w, &inspection, formats[f]);
        for (int i = 1; i <= EACH; i++) {
            const char *slope = gw_format(&w->arena, "column %d from the left, row 1, sill (row", i);
            const char *anchor = gw_format(&w->arena, "story 1, line %d from the left end", i);
            if (!strstr(page, slope) || !strstr(page, anchor)) fail_msg("%s: %d is left out", formats[f], i);
        }
        assert_true(strstr(page, "Where to open next") < strstr(page, "What the readings say"));
        assert_non_null(strstr(page, gw_format(&w->arena, "%ld more beside what is outside", inspection.next_more)));
        assert_true(inspection.next_more > 0);
    }
}

static void asked_and_ordered(void **state)
{
    static const char *const cases[][2] = {
        {"look at the other block", "Do: look at the other block."},
        {"which lot is it from", "Ask: which lot is it from?"},
        {"look at those beside it; what blocks them", "Do: look at those beside it. Ask: what blocks them?"},
        {"which screw is it: length, metal; ask for its data",
         "Ask: which screw is it: length, metal? Do: ask for its data."},
        {"does it reach the corners; were others stretched", "Ask: does it reach the corners? Were others stretched?"},
        {"the joint moves with the metal: what was its temperature",
         "The joint moves with the metal. Ask: what was its temperature?"},
        {"within the 1/8 in, which clearance takes for granted",
         "Within the 1/8 in, which clearance takes for granted."},
        {"it tells no load: look at the gap; the gasket opens at 3 lb/in; judged with 9 in (line 4); look at its plate",
         "It tells no load; the gasket opens at 3 lb/in; judged with 9 in (line 4). Do: look at the gap. Look at its "
         "plate."},
        {"do blocks keep it?; judged with a gap of 1/4 in; measure the other edges",
         "Judged with a gap of 1/4 in. Ask: do blocks keep it? Do: measure the other edges."},
        {"a clamp of 5 lb (read there; how old is not said) is left; a fact",
         "A clamp of 5 lb (read there; how old is not said) is left; a fact."},
        {"what do they read anew?", "Ask: what do they read anew?"},
        {"", ""}};
    struct world *w = *state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_string_equal(gw_ask_and_do(&w->arena, cases[i][0]), cases[i][1]);
    assert_string_equal(gw_if_missed(&w->arena, "look at it"), "If missed: look at it.");
    assert_string_equal(gw_if_missed(&w->arena, "which lot"), "If missed, ask: which lot?");
}

int main(void)
{
    const struct CMUnitTest tests[] = {WORLD_TEST(nothing_missed_is_left_out), WORLD_TEST(asked_and_ordered)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
