/* Places on a wall to the elements that stand there: whole ones, ones that are said in part, ones that are not there.
 */
#include "support.h"

#include "galeward/inspect.h"

/* Columns 4, 5, 6, 5 ft; two stories of 3 ft and 9 ft rows; outside corners; the roof line cuts the upper row of the
 * second story. */
#define WALLS                                                                                                          \
    "galeward: 1\nunits: us\nproject: {name: W}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                        \
    "site: {basic_wind_speed: 115, exposure: C}\n"                                                                     \
    "buildings: [{name: low, roof_height: 20 ft, least_width: 80 ft, enclosure: enclosed, parapet_height: 4 ft}]\n"    \
    "walls:\n"                                                                                                         \
    "  - {name: south, width: 60 ft, floors: [0 ft, 12 ft], top: 24 ft, ends: [corner, corner],\n"                     \
    "     splices: [13 ft], columns: {widths: [4 ft, 10 ft, 6 ft, 10 ft, 10 ft, 10 ft, 6 ft, 4 ft]},\n"                \
    "     rows: [{height: 3 ft, lite: a}, {height: rest, lite: b}]}\n"                                                 \
    "  - {name: north, width: 20 ft, floors: [0 ft], top: 12 ft, ends: [none, none], columns: {count: 4, width: 5 "    \
    "ft},\n"                                                                                                           \
    "     rows: [{height: rest, lite: a}]}\n"                                                                          \
    "lites:\n  a: {layers: [{glass: 6 mm, treatment: tempered}]}\n"                                                    \
    "  b: {layers: [{glass: 6 mm, treatment: tempered}]}\n"                                                            \
    "candidates: [x.yaml]\n"

static void open_walls(struct world *w)
{
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n");
    must_take_off(w, WALLS);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
}

static struct gw_spot place(const char *wall, int column, int story, int row, int line, int edge)
{
    struct gw_spot s = gw_spot_on(wall);
    s.column = column;
    s.story = story;
    s.row = row;
    s.line = line;
    s.edge = edge;
    return s;
}

enum { NO = GW_NO_INTEGER };

static struct gw_spot found(struct world *w, struct gw_spot s, enum gw_item_on on)
{
    struct gw_message why;
    const bool there = gw_spot_find(&s, &why, &w->ask, on);
    if (!there) print_error("%s\n", words(&why));
    assert_true(there);
    return s;
}

static void refused(struct world *w, struct gw_spot s, enum gw_item_on on, const char *says)
{
    struct gw_message why;
    assert_false(gw_spot_find(&s, &why, &w->ask, on));
    if (!strstr(words(&why), says)) print_error("'%s' lacks '%s'\n", words(&why), says);
    assert_non_null(strstr(words(&why), says));
}

static void whole_places(void **state)
{
    struct world *w = *state;
    open_walls(w);
    struct gw_spot s = found(w, place("south", 2, 1, 2, NO, GW_EDGE_LEFT), GW_ON_SCREWS);
    assert_ptr_equal(s.lite, gw_takeoff_at(&w->takeoff, "south", 2, 1, 2));
    assert_ptr_equal(s.screws, gw_takeoff_edge(&w->takeoff, "south", 2, 1, 2, GW_EDGE_LEFT, true));
    assert_ptr_equal(s.member, gw_takeoff_edge(&w->takeoff, "south", 2, 1, 2, GW_EDGE_LEFT, false));
    assert_false(s.worst);
    s = found(w, place("south", 2, 1, 2, NO, GW_EDGE_HEAD), GW_ON_EDGE);
    assert_ptr_equal(s.member, gw_takeoff_edge(&w->takeoff, "south", 2, 1, 2, GW_EDGE_HEAD, false));
    s = found(w, place("south", 2, 1, 2, NO, -1), GW_ON_POCKET);
    assert_int_equal(s.edge, GW_EDGE_SILL);
    assert_false(s.worst);
}

/* The right edge of one column is the left edge of the next; a head the sill above: one line of screws. */
static void one_thing_under_two_names(void **state)
{
    struct world *w = *state;
    open_walls(w);
    struct gw_spot a = found(w, place("south", 2, 1, 2, NO, GW_EDGE_RIGHT), GW_ON_SCREWS);
    struct gw_spot b = found(w, place("south", 3, 1, 2, NO, GW_EDGE_LEFT), GW_ON_SCREWS);
    struct gw_spot c = found(w, place("south", NO, 1, 2, 2, -1), GW_ON_SCREWS);
    assert_true(a.upright && b.upright && c.upright);
    assert_true(a.across == b.across && a.up == b.up && a.across == c.across && a.up == c.up);
    assert_ptr_equal(a.screws, c.screws);
    assert_false(c.worst);
    a = found(w, place("south", 2, 1, 2, NO, GW_EDGE_HEAD), GW_ON_SCREWS);
    b = found(w, place("south", 2, 2, 1, NO, GW_EDGE_SILL), GW_ON_SCREWS);
    assert_true(!a.upright && a.across == b.across && a.up == b.up);
    /* but the bite there is of two panes */
    a = found(w, place("south", 2, 1, 2, NO, GW_EDGE_RIGHT), GW_ON_EDGE);
    b = found(w, place("south", 3, 1, 2, NO, GW_EDGE_LEFT), GW_ON_EDGE);
    assert_false(a.across == b.across && a.up == b.up);
}

/* Suction 4 ft from the corners (zone 5) is greater, but columns 2 and 4 to 6 are 10 ft wide: a vertical between two
 * of these carries 10 ft, the one beside column 1 carries (4 + 10) / 2 = 7 ft. Worked out here from the elements. */
static void worst_of_a_story(void **state)
{
    struct world *w = *state;
    open_walls(w);
    const struct gw_spot s = found(w, place("south", NO, 1, NO, NO, -1), GW_ON_SCREWS);
    double most = 0;
    assert_true(s.worst);
    for (int c = 1; c <= 8; c++)
        for (int row = 1; row <= 2; row++)
            for (int e = GW_EDGE_HEAD; e <= GW_EDGE_RIGHT; e++) {
                const struct gw_element *o = gw_takeoff_edge(&w->takeoff, "south", c, 1, row, (enum gw_edge)e, true);
                most = fmax(most, -o->outward_asd.pa * o->width);
            }
    assert_near(-s.screws->outward_asd.pa * s.screws->width, most, 1e-9);
    assert_int_equal(s.story, 1);
    /* below the roof line alone it carries less than above it, where a parapet has both faces */
    const struct gw_spot lite = found(w, place("south", 2, 2, 2, NO, -1), GW_ON_LITE);
    const struct gw_element *below = gw_takeoff_at(&w->takeoff, "south", 2, 2, 2);
    const struct gw_element *above = gw_takeoff_other_part(&w->takeoff, below);
    assert_non_null(above);
    assert_ptr_equal(lite.lite, -above->outward_asd.pa > -below->outward_asd.pa ? above : below);
}

static void joints_and_anchors(void **state)
{
    struct world *w = *state;
    open_walls(w);
    struct gw_spot s = found(w, place("south", NO, 2, NO, 3, -1), GW_ON_JOINT);
    assert_false(s.worst);
    assert_non_null(s.member);
    assert_true(s.member->bottom < 13 * 0.3048 + 1e-6 && s.member->top > 13 * 0.3048);
    refused(w, place("south", NO, 1, NO, 3, -1), GW_ON_JOINT, "no joint between pieces of mullion");
    s = found(w, place("south", NO, 2, NO, 3, -1), GW_ON_ANCHOR);
    assert_near(s.anchor->elevation, 12 * 0.3048, 1e-6);
    assert_true(found(w, place("south", NO, 2, NO, NO, -1), GW_ON_ANCHOR).worst);
    s = found(w, place("south", NO, 1, NO, 3, -1), GW_ON_MEMBER);
    assert_int_equal(s.member->kind, GW_MULLION);
}

static void places_that_are_not_there(void **state)
{
    struct world *w = *state;
    open_walls(w);
    refused(w, place("sout", 1, 1, 1, NO, 0), GW_ON_LITE, "did you mean 'south'?");
    refused(w, place("south", 9, 1, 1, NO, 0), GW_ON_LITE, "south has no column 9: it has 8");
    refused(w, place("south", 0, 1, 1, NO, 0), GW_ON_LITE, "no column 0");
    refused(w, place("south", 1, 3, 1, NO, 0), GW_ON_LITE, "south has no story 3: it has 2");
    refused(w, place("south", 1, 1, 3, NO, 0), GW_ON_LITE, "no row 3");
    refused(w, place("south", NO, 1, 1, 9, 0), GW_ON_SCREWS, "no line 9: they run from 0 at the left end to 8");
    refused(w, place("south", 2, 1, 1, 5, -1), GW_ON_SCREWS, "not beside column 2");
    refused(w, place("south", 2, 1, 1, NO, GW_EDGE_HEAD), GW_ON_POCKET, "of which lite");
    refused(w, place(NULL, 2, 1, 1, NO, 0), GW_ON_LITE, "the wall is not said");
    /* the head of line 3 is of no vertical */
    refused(w, place("south", NO, 1, 1, 3, GW_EDGE_HEAD), GW_ON_SCREWS, "no such place");
}

static void worst_of_a_zone(void **state)
{
    struct world *w = *state;
    struct gw_spot s;
    struct gw_message why;
    struct gw_text text;
    open_walls(w);
    assert_true(gw_spot_worst(&s, &why, &w->ask, "south", 4, GW_ON_LITE));
    assert_int_equal(s.lite->zone, 4);
    assert_true(gw_spot_worst(&s, &why, &w->ask, NULL, 5, GW_ON_SCREWS));
    assert_int_equal(s.screws->zone, 5);
    assert_string_equal(s.wall, "south");
    assert_false(gw_spot_worst(&s, &why, &w->ask, "north", 5, GW_ON_LITE));
    assert_non_null(strstr(words(&why), "no such place in zone 5"));
    s = place("south", 2, 3, 1, NO, GW_EDGE_LEFT);
    gw_text_init(&text, &w->arena);
    gw_spot_say(&text, &s);
    assert_string_equal(text.at, "south, story 3, column 2 from the left, row 1, left edge");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(whole_places),       WORLD_TEST(one_thing_under_two_names), WORLD_TEST(worst_of_a_story),
        WORLD_TEST(joints_and_anchors), WORLD_TEST(places_that_are_not_there), WORLD_TEST(worst_of_a_zone),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
