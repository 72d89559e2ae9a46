/* Spans of mullions between anchors and splices, and the options that change zones and areas of the take-off. */
#include "takeoff_walls.h"

static void spans_and_overhang(void **state)
{
    struct world *w = *state;
    must_take_off(w, HEAD TOWER);
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind != GW_MULLION) continue;
        assert_int_equal(e->overhang, strcmp(e->wall, "east") == 0 && near_feet(e->bottom, 120));
        assert_int_equal(e->spans, e->overhang ? 0 : 1);
        assert_near(e->span, e->top - e->bottom, 1e-12);
    }
}

/* Splices at 0, 24: one piece over two spans, then one over one. */
static void spans_of_spliced_pieces(void **state)
{
    struct world *w = *state;
    must_take_off(w, HEAD LOW_BUILDING
                  "walls: [{name: s, width: 5 ft, floors: [0 ft, 12 ft, 24 ft], top: 36 ft, splices: [24 ft],\n"
                  "  ends: [none, none], columns: {count: 1, width: 5 ft}, rows: [{height: rest, lite: vision}]}]\n");
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        assert_false(gw_given(e->corner_distance));
        assert_int_equal(e->zone, 4);
        if (e->kind == GW_MULLION) assert_int_equal(e->spans, near_feet(e->bottom, 24) ? 1 : 2);
    }
}

static long count_of(const struct world *w, enum gw_kind kind, const char *mark, double width, int zone)
{
    long n = 0;
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind == kind && e->zone == zone && near_feet(e->width, width) && strcmp(e->mark, mark) == 0)
            n += e->count;
    }
    return n;
}

/* The second column runs from 7 to 12 ft from the corner, its middle at 9.5 ft: its transoms leave the strip of 8 ft,
 * its lites don't. */
static void option_by_area(void **state)
{
    struct world *w = *state;
    must_take_off(w, HEAD LOW_BUILDING LOW_WALL "options: {edge_zone: by_area}\n");
    assert_int_equal(count_of(w, GW_TRANSOM, "sill", 5, 5), 0);
    assert_int_equal(count_of(w, GW_TRANSOM, "sill", 5, 4), 3);
    assert_int_equal(count_of(w, GW_TRANSOM, "sill", 3, 5), 1);
    assert_int_equal(count_of(w, GW_MULLION, "interior", 4, 5), 2);
    assert_int_equal(count_of(w, GW_LITE, "vision", 5, 5), 2);
}

static void option_tributary(void **state)
{
    struct world *w = *state;
    must_take_off(w, HEAD TOWER "options: {anchor_area: tributary}\n");
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind == GW_ANCHOR) assert_near(e->effective_area, e->width * e->height, 1e-12);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(spans_and_overhang),
        WORLD_TEST(spans_of_spliced_pieces),
        WORLD_TEST(option_by_area),
        WORLD_TEST(option_tributary),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
