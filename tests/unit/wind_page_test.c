/* What the pages of demand and check say of given pressures and of what is waived against the code. */
#include "support.h"

#include "galeward/report.h"

#define HEAD                                                                                                           \
    "galeward: 1\nproject: {name: Pages}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                               \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "lites: {a: {layers: [{glass: 6 mm}]}}\n"

static const char *page_of(struct world *w, bool check)
{
    struct gw_text text;
    struct gw_report report;
    struct gw_results results;
    gw_results_of(&results, &w->arena, &w->answer, GW_US);
    const struct gw_result result = check ? gw_result_check(&results) : gw_result_demand(&results);
    gw_report_init(&report, &w->arena);
    result.page(&report, &result);
    gw_text_init(&text, &w->arena);
    gw_render_text(&text, &report, false);
    return text.at;
}

/* The first line that holds a part. */
static const char *line_with(struct world *w, const char *text, const char *part)
{
    const char *found = strstr(text, part);
    if (!found) return NULL;
    while (found > text && found[-1] != '\n') found--;
    return gw_strndup(&w->arena, found, strcspn(found, "\n"));
}

/* Two walls of the same lites of 45 ft2: computed +29.32, -32.02 psf in zone 4, -37.02 in zone 5. Inward 40 psf is 36 %
 * more; outward 24 psf 25 % and 35 % less. One line for both walls, the worst of it ahead; what is higher is a sentence
 * a zone. */
static void too_low_comes_first(void **state)
{
    struct world *w = *state;
    must_judge(w,
               HEAD "site: {basic_wind_speed: 115 mph, exposure: C}\n"
                    "walls:\n  - {name: s, width: 20 ft, floors: [0 ft], top: 9 ft, ends: [corner, none],\n"
                    "     columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}\n"
                    "  - {name: n, width: 20 ft, floors: [0 ft], top: 9 ft, ends: [none, corner],\n"
                    "     columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}\n"
                    "given:\n  - {zone: 4, area: 40 ft2, inward: 40 psf, outward: 24 psf, level: strength, source: S}\n"
                    "  - {zone: 5, area: 40 ft2, inward: 40 psf, outward: 24 psf, level: strength, source: S}\n");
    const char *list = strstr(page_of(w, false), "Given pressures that differ");
    assert_non_null(list);
    list = gw_strndup(&w->arena, list, (size_t)(strstr(list, "Assumptions") - list));
    const char *first = strstr(list, "s/lite/1 "), *second = strstr(list, "s/lite/2 ");
    assert_non_null(first);
    assert_non_null(second);
    assert_true(first < second);
    assert_non_null(strstr(line_with(w, list, "s/lite/1 "), "-35 %, too low"));
    assert_non_null(strstr(line_with(w, list, "s/lite/2 "), "-25 %, too low"));
    const char *more = strstr(list, "zone 4: given S is 23 to 36 % above computed, 128 elements");
    assert_true(more > second);
    assert_null(strstr(list, "n/lite/1 "));
    assert_null(strstr(list, "n/lite/2 "));
}

/* Before the first table: nobody reads on to find out. */
static void a_waiver_stands_on_the_first_screen(void **state)
{
    struct world *w = *state;
    must_judge(w,
               HEAD "site: {basic_wind_speed: 160 mph, exposure: C, hurricane_prone: true, coast_distance: 20000 ft, "
                    "impact: none}\n"
                    "walls:\n  - {name: s, width: 20 ft, floors: [0 ft], top: 9 ft, ends: [corner, none],\n"
                    "     columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}\n");
    for (int check = 0; check < 2; check++) {
        const char *page = page_of(w, check);
        const char *said = strstr(page, "Waived against the code"),
                   *table = strstr(page, check ? "No candidates" : "Building ");
        assert_non_null(said);
        assert_true(said < table);
    }
    struct gw_results results;
    gw_results_of(&results, &w->arena, &w->answer, GW_US);
    bool warned = false;
    for (size_t i = 0; i < results.warnings.n; i++)
        warned = warned || strstr(results.warnings.items[i]->message, "waived against the code");
    assert_true(warned);
}

int main(void)
{
    const struct CMUnitTest tests[] = {WORLD_TEST(too_low_comes_first),
                                       WORLD_TEST(a_waiver_stands_on_the_first_screen)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
