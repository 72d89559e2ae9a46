/* The page of demand by height: what is one row, what is not, where the edge zone lies, how much glass there is. */
#include "support.h"

#include "galeward/report.h"

#define HEAD                                                                                                           \
    "galeward: 1\nproject: {name: Pages}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                               \
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"                                                                 \
    "buildings: [{name: low, roof_height: 70 ft, least_width: 80 ft, enclosure: enclosed, parapet_height: 4 ft}]\n"    \
    "lites: {a: {layers: [{glass: 6 mm}]}, b: {layers: [{glass: 6 mm}], component: spandrel}}\n"

/* From one heading to another. */
static const char *page_of(struct world *w, bool all, const char *from, const char *to)
{
    struct gw_text text;
    struct gw_report report;
    struct gw_results results;
    gw_results_of(&results, &w->arena, &w->answer, GW_US);
    results.all = all;
    const struct gw_result result = gw_result_demand(&results);
    gw_report_init(&report, &w->arena);
    result.page(&report, &result);
    gw_text_init(&text, &w->arena);
    gw_render_text(&text, &report, false);
    const char *start = strstr(text.at, from), *end = start ? strstr(start + 1, to) : NULL;
    assert_non_null(start);
    assert_non_null(end);
    return gw_strndup(&w->arena, start, (size_t)(end - start));
}

/* Lines of a text that begin so. */
static size_t rows(const char *text, const char *start)
{
    size_t n = 0;
    for (const char *line = text; line; line = strchr(line, '\n')) {
        line += *line == '\n';
        n += strncmp(line, start, strlen(start)) == 0;
    }
    return n;
}

#define WALL                                                                                                           \
    "walls:\n  - {name: s, width: 40 ft, floors: [0 ft, 10 ft, 20 ft, 30 ft, 40 ft, 50 ft, 60 ft], top: 74 ft,\n"      \
    "     ends: [corner, {corner_at: 3 ft}], columns: {count: 8, width: 5 ft},\n"                                      \
    "     rows: [{height: 2 ft, lite: b}, {height: rest, lite: a}]}\n"

/* Above ground level 15 ft the inward pressure grows with height: floors 2 to 7 differ, and given ones make them one.
 * a = 8 ft (a tenth of 80 ft): columns 1 and 2 begin within it; at the right 8 - 3 = 5 ft are left, column 8. */
static void equal_floors_are_one_row(void **state)
{
    struct world *w = *state;
    must_judge(w,
               HEAD WALL "given:\n"
                         "  - {zone: 4, area: 1 ft2, inward: 90 psf, outward: 95 psf, level: strength, source: S}\n"
                         "  - {zone: 5, area: 1 ft2, inward: 90 psf, outward: 99 psf, level: strength, source: S}\n");
    const char *wall = page_of(w, true, "Wall s, building low", "Glass and pieces");
    assert_non_null(strstr(wall, "a = 8 ft: columns 1 to 2 and 8, 0 to 8 ft and 35 to 40 ft from the left end"));
    assert_non_null(strstr(wall, "roof line at 70 ft"));
    assert_non_null(strstr(wall, "right end: 3 ft short of an"));
    assert_int_equal(rows(wall, "b "), 1);
    assert_int_equal(rows(wall, "a "), 1);
    assert_int_equal(rows(wall, "a, parapet"), 1); /* never over the roof line */
    assert_non_null(
        strstr(wall, "0.0 to 62.0  1 to 7      35   90.0 / 54.0  95.0 / 57.0      21   90.0 / 54.0  99.0 / 59.4"));
}

/* Without them every floor above 15 ft is a row of its own, and a tall stack of rows a few, each with its worst. */
static void steps_are_parted_on_demand(void **state)
{
    struct world *w = *state;
    must_judge(w, HEAD WALL);
    const char *all = page_of(w, true, "Wall s, building low", "Glass and pieces"),
               *some = page_of(w, false, "Wall s, building low", "Glass and pieces");
    assert_int_equal(rows(all, "a "), 7);
    assert_true(rows(some, "a ") >= 2 && rows(some, "a ") <= 4);
    /* A row of several floors has the pressure of the highest. */
    assert_non_null(strstr(all, "2.0 to 10.0       1       5   26.5 / 15.9"));
    assert_non_null(strstr(all, "12.0 to 20.0       2       5   27.8 / 16.7"));
    assert_non_null(strstr(some, "2.0 to 20.0  1 to 2      10   27.8 / 16.7"));
    assert_non_null(strstr(all, "62.0 to 70.0       7       5   34.4 / 20.6"));
    assert_non_null(strstr(some, "42.0 to 70.0  5 to 7      15   34.4 / 20.6"));
}

/* 8 columns of 5 ft; b 2 ft high on 7 floors; a 8 ft on 6 and, to the top of the parapet, 12 ft on the last. */
static void glass_is_counted_once(void **state)
{
    struct world *w = *state;
    must_judge(w, HEAD WALL);
    const char *glass = page_of(w, false, "Glass and pieces", "What framing must bring");
    assert_non_null(strstr(glass, "b              5.00       2.00     56      10.0     560.0    784.00"));
    assert_non_null(strstr(glass, "a              5.00       8.00     48      40.0    1920.0   1248.00"));
    assert_non_null(strstr(glass, "a              5.00      12.00      8      60.0     480.0    272.00"));
    assert_non_null(strstr(glass, "56              2400.0   1520.00"));
    assert_non_null(strstr(glass, "In all: 112 lites, "));
}

/* A transom stands where it stands, an anchor too: not where the band begins that it carries. */
static void pieces_have_their_own_height(void **state)
{
    struct world *w = *state;
    must_judge(w, HEAD WALL);
    size_t transoms = 0, anchors = 0;
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        const double foot = 0.3048, hair = 1e-9;
        if (e->kind == GW_LITE || e->kind == GW_MULLION || e->sort == GW_SORT_MULLION_SCREW) {
            assert_false(gw_given(e->elevation));
        } else if (e->kind == GW_TRANSOM && fabs(e->bottom - 6 * foot) < hair) {
            assert_true(fabs(e->elevation - 10 * foot) < hair); /* carries 6 to 11 ft */
            transoms++;
        } else if (e->kind == GW_ANCHOR && fabs(e->bottom - 15 * foot) < hair) {
            assert_true(fabs(e->elevation - 20 * foot) < hair); /* carries 15 to 25 ft */
            anchors++;
        }
    }
    assert_true(transoms > 0);
    assert_true(anchors > 0);
}

/* Jambs hang on anchors as others do: one row of equal reactions with the sum of their counts. */
static void equal_reactions_are_one_row(void **state)
{
    struct world *w = *state;
    must_judge(w,
               HEAD WALL "given:\n"
                         "  - {zone: 4, area: 1 ft2, inward: 190 psf, outward: 195 psf, level: strength, source: S}\n"
                         "  - {zone: 5, area: 1 ft2, inward: 190 psf, outward: 199 psf, level: strength, source: S}\n");
    const char *list = page_of(w, false, "Reactions of the anchors", "Other demands");
    /* Anchors at 10 to 60 ft carry 10 x 5 ft: 190 x 50 = 9500 lb; 4 lines in zone 4, 6 floors. */
    assert_non_null(strstr(list, "s: interior  10.0 to 60.0      50.0      24  9500 / 5700  9750 / 5850"));
}

/* Marks of a schedule share rows of framing, on the page of elements each has its own; a = 8 ft at both ends. */
static void openings_share_rows(void **state)
{
    struct world *w = *state;
    put_file(w, "schedule.csv",
             "Tag,wall,width,height,count,sill,offset,lite\nA,n,5 ft,6 ft,4,10 ft,20 ft,a\n"
             "B,n,5 ft,6 ft,2,10 ft,30 ft,a\nA,m,5 ft,6 ft,2,10 ft,30 ft,a\nB,n,5 ft,6 ft,1,10 ft,1 ft,a\n"
             "C,n,5 ft,6 ft,3,10 ft,,b\n");
    must_judge(w, HEAD "elevations: [{name: n, width: 90 ft, ends: [corner, corner]}, {name: m, width: 90 ft, ends: "
                       "[none, none]}]\nopenings: {file: schedule.csv, columns: {mark: Tag}}\n");
    const char *face = page_of(w, false, "Wall n, building low", "Wall m"),
               *members = page_of(w, false, "What framing must", "Reactions");
    assert_non_null(strstr(face, "a = 8 ft: 0 to 8 ft and 82 to 90 ft from the left end"));
    assert_int_equal(rows(face, "a "), 1); /* at one height, in either zone */
    assert_int_equal(rows(face, "b, place unknown"), 1);
    assert_int_equal(rows(members, "n: mullion"), 1);
    assert_int_equal(rows(members, "m: mullion"), 1);
    assert_non_null(strstr(members, "n: mullion      12")); /* two jambs of six openings in zone 4 */
}

/* Lites of 5 x 8 ft are 40 ft2 on every floor, whatever the last bits of their heights: the row of 40 ft2 speaks of
 * them all. */
static void equal_sizes_take_one_given_row(void **state)
{
    struct world *w = *state;
    must_judge(w,
               HEAD WALL "given:\n"
                         "  - {zone: 4, area: 10 ft2, inward: 98 psf, outward: 99 psf, level: strength, source: S}\n"
                         "  - {zone: 5, area: 10 ft2, inward: 98 psf, outward: 99 psf, level: strength, source: S}\n"
                         "  - {zone: 4, area: 40 ft2, inward: 90 psf, outward: 95 psf, level: strength, source: S}\n"
                         "  - {zone: 5, area: 40 ft2, inward: 90 psf, outward: 95 psf, level: strength, source: S}\n");
    const char *wall = page_of(w, true, "Wall s, building low", "Glass and pieces");
    assert_int_equal(rows(wall, "a "), 1);
    assert_non_null(strstr(wall, "2.0 to 70.0  1 to 7      35   90.0 / 54.0  95.0 / 57.0      21   90.0 / 54.0"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(equal_floors_are_one_row),      WORLD_TEST(steps_are_parted_on_demand),
        WORLD_TEST(glass_is_counted_once),         WORLD_TEST(pieces_have_their_own_height),
        WORLD_TEST(equal_reactions_are_one_row),   WORLD_TEST(openings_share_rows),
        WORLD_TEST(equal_sizes_take_one_given_row)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
