/* What is counted once is the same to whoever counts it: the page of demands, the plans of 'select'. */
#include "support.h"

#include "galeward/select.h"

static void once(struct world *w, long counts[GW_KIND_COUNT])
{
    for (int kind = 0; kind < GW_KIND_COUNT; kind++) counts[kind] = 0;
    for (size_t i = 0; i < w->takeoff.elements.n; i++)
        counts[w->takeoff.elements.items[i].kind] += gw_pieces_once(&w->takeoff, &w->takeoff.elements.items[i]);
}

/* The plans of the first candidate, which is hung as the project says. */
static void planned(struct world *w, long counts[GW_KIND_COUNT])
{
    struct gw_bids bids;
    gw_select(&bids, &w->ask, &(struct gw_select_limits){.most = 0});
    const struct gw_bid *bid = &bids.items.items[0];
    for (int kind = 0; kind < GW_KIND_COUNT; kind++) counts[kind] = 0;
    for (size_t p = 0; p < bid->places.n; p++) {
        const struct gw_quantities *q = &bid->places.items[p].quantities;
        for (size_t k = 0; k < w->model.project.lites.n; k++) counts[GW_LITE] += q->lites[k];
        counts[GW_SCREW] += q->screws;
        counts[GW_ANCHOR] += q->anchors;
    }
}

static void check_same(struct world *w)
{
    long told[GW_KIND_COUNT], plan[GW_KIND_COUNT];
    once(w, told);
    planned(w, plan);
    assert_int_equal(told[GW_LITE], plan[GW_LITE]);
    assert_int_equal(told[GW_SCREW], plan[GW_SCREW]);
    assert_int_equal(told[GW_ANCHOR], plan[GW_ANCHOR]);
}

static void take_off(struct world *w, const char *path)
{
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, path, NULL, 0) &&
                gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags));
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
}

/* By hand of Tern Street, whose east wall has 24 columns that the roof line cuts in their uppermost row: lites east
 * 24 x (4 x 2 + 2), north 13 x (4 x 2 + 2), plant room 8. Each column of lites has a transom more than lites, less the
 * cut row's second telling: 24 x 11 + 13 x 11 + 8 x 2. */
static void demos_count_alike(void **state)
{
    struct world *w = *state;
    long told[GW_KIND_COUNT];
    take_off(w, "projects/tern-street.yaml");
    check_same(w);
    once(w, told);
    assert_int_equal(told[GW_LITE], 24 * 10 + 13 * 10 + 8);
    assert_int_equal(told[GW_TRANSOM], 24 * 11 + 13 * 11 + 8 * 2);
    take_off(w, "projects/gull-point.yaml");
    check_same(w);
}

/* Each tells the other; of all that tell the same pieces one counts them. */
static void one_of_those_that_are_the_same_counts(void **state)
{
    struct world *w = *state;
    size_t shared = 0;
    take_off(w, "projects/tern-street.yaml");
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i], *others[GW_SAME_PIECES];
        const size_t n = gw_same_pieces(others, &w->takeoff, e);
        long counted = gw_pieces_once(&w->takeoff, e);
        for (size_t k = 0; k < n; k++) {
            const struct gw_element *back[GW_SAME_PIECES];
            assert_int_equal(gw_same_pieces(back, &w->takeoff, others[k]), n);
            assert_int_equal(others[k]->count, e->count);
            counted += gw_pieces_once(&w->takeoff, others[k]);
        }
        assert_int_equal(counted, e->count);
        shared += n > 0;
    }
    assert_true(shared > 0);
}

/* Two walls of three verticals each that meet by name: five mullions, at two levels ten anchors. Where the second has
 * its head lower, the anchors there are two. */
static void corners_are_counted_once(void **state)
{
    struct world *w = *state;
    long told[GW_KIND_COUNT];
    static const char *const tops[] = {"10 ft", "9 ft"};
    for (int i = 0; i < 2; i++) {
        must_take_off(w, gw_format(&w->arena,
                                   "galeward: 1\nunits: us\nproject: {name: S}\n"
                                   "codes: {building: ibc-2021, wind: asce7-16}\n"
                                   "site: {basic_wind_speed: 115 mph, exposure: C}\n"
                                   "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: "
                                   "enclosed}]\nlites: {a: {}}\nwalls:\n"
                                   "  - {name: s, width: 8 ft, floors: [0 ft], top: 10 ft, ends: [none, {corner: t}], "
                                   "columns: {count: 2, width: 4 ft}, rows: [{height: rest, lite: a}]}\n"
                                   "  - {name: t, width: 8 ft, floors: [0 ft], top: %s, ends: [{corner: s}, none], "
                                   "columns: {count: 2, width: 4 ft}, rows: [{height: rest, lite: a}]}\n",
                                   tops[i]));
        gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
        once(w, told);
        assert_int_equal(told[GW_MULLION], 5);
        assert_int_equal(told[GW_ANCHOR], i ? 11 : 10);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(demos_count_alike),
        WORLD_TEST(one_of_those_that_are_the_same_counts),
        WORLD_TEST(corners_are_counted_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
